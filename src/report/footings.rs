//! What reports for reading say of footings, in the same words.

use super::figures::{listed, ratio_spread};
use super::told::Alike;
use crate::answers::{Check, RunAnswer};
use crate::fence::Role;
use crate::footing::FootingError;
use crate::numerics::ROUNDING;
use crate::units::{Dimension, Length, Measure, Quantity, System, number, trimmed};
use crate::verdict::{Flag, FootingVerdict, FootingWhy, PartKind, PostVerdict, WidthIs};

/// " at most" where a part of one of these posts was left unchecked.
pub(super) fn at_most<'a>(mut posts: impl Iterator<Item = &'a PostVerdict>) -> &'static str {
    if posts.any(PostVerdict::is_at_most) { " at most" } else { "" }
}

/// Every post of a check, at the worst end of what is not known.
pub(super) fn posts(check: &Check) -> impl Iterator<Item = &PostVerdict> {
    check.runs.iter().flat_map(|run| &run.worst.posts)
}

/// Whether a footing was held against a gust.
pub(super) fn is_worked(post: &PostVerdict) -> bool {
    post.footing.is_worked()
}

/// What a depth is in words: inches, or metres.
pub(super) fn depth(depth: Length, system: System) -> String {
    match system {
        System::Us => format!("{} in", trimmed(Measure::Small.in_unit(depth.si(), system), 1)),
        System::Si => format!("{} m", number(depth.si(), 2)),
    }
}

/// A depth that is needed, rounded up: to the inch, or to the hundredth of a metre.
pub(super) fn depth_up(depth: Length, system: System) -> String {
    match system {
        System::Us => format!("{:.0} in", (Measure::Small.in_unit(depth.si(), system) - 1e-9).ceil()),
        System::Si => format!("{:.2} m", (depth.si() * 100.0 - 1e-9).ceil() / 100.0),
    }
}

/// The depth that the design wind needs; nothing where none can be worked.
pub(super) fn needed(footing: &FootingVerdict, system: System) -> Option<String> {
    match &footing.needed {
        Ok(needed) => Some(depth_up(*needed, system)),
        Err(FootingWhy::Refused(FootingError::OutOfRange(error)))
            if error.limit.measure.dimension() == Dimension::Length =>
        {
            Some(format!("more than {}", depth(Length::from_si(error.limit.si), system)))
        }
        Err(FootingWhy::Refused(FootingError::OutOfRange(_))) => {
            Some("more than the method gives".to_owned())
        }
        Err(_) => None,
    }
}

/// By which method footings were worked, at which level of the wind; nothing where none was.
pub(super) fn methods(check: &Check) -> Option<String> {
    let mut told: Vec<String> = Vec::new();
    let mut all = 0;
    let mut worked = 0;
    for post in posts(check) {
        all += 1;
        if !is_worked(post) {
            continue;
        }
        worked += 1;
        let footing = &post.footing;
        let factor = if footing.load_factor.value == 1.0 {
            String::new()
        } else {
            format!(" × {}", trimmed(footing.load_factor.value, 2))
        };
        let of = format!("{} ({} of the wind{factor})", footing.method.name(), trimmed(footing.share, 2));
        if !told.contains(&of) {
            told.push(of);
        }
    }
    if worked == 0 {
        return None;
    }
    let told: Vec<&str> = told.iter().map(String::as_str).collect();
    let some = if worked == all { "" } else { " where they are known" };
    Some(format!(
        "checked{some}, by {}. Another method may ask for a third of that depth, or three times it: never mix them.",
        listed(&told)
    ))
}

/// What is said of the footings of a run.
pub(super) fn of_run(check: &Check, alike: &Alike<'_>, system: System) -> Vec<String> {
    let (worst, best) = (&alike.answer.worst.posts, alike.answer.best.as_ref().map(|best| &best.posts));
    let mut told = Vec::new();
    let worked: Vec<usize> = (0..worst.len()).filter(|at| is_worked(&worst[*at])).collect();
    let ratio = |at: &usize| worst[*at].footing.checked.as_ref().ok().map(|found| found.ratio);
    let governing = worked.iter().copied().filter(|at| ratio(at).is_some());
    // Of two that mirror one another the first.
    let weight = |at: &usize| ratio(at).unwrap_or_default() * (1.0 - ROUNDING);
    let governing = governing
        .reduce(|one, other| if weight(&other) > ratio(&one).unwrap_or_default() { other } else { one });
    if let Some(at) = governing {
        let footing = &worst[at].footing;
        let found = ratio(&at).unwrap_or_default();
        let lightest = best.and_then(|best| best[at].footing.checked.as_ref().ok()).map(|best| best.ratio);
        let flag =
            lightest.map_or(Flag::of(found), |best| Flag::of_both_ends(Flag::of(found), Flag::of(best)));
        let goes =
            footing.depth.map_or_else(String::new, |deep| format!("goes {} deep", depth(deep, system)));
        let wants = needed(footing, system)
            .map_or_else(String::new, |needed| format!(", the design wind needs {needed}"));
        told.push(format!(
            "{flag}: ratio {} at post {}: it {goes}{wants}",
            ratio_spread(found, lightest),
            at + 1
        ));
    } else if !worked.is_empty() && !check.has_speed() {
        told.push("◇ not checked at the design wind: no speed is given".to_owned());
    }
    told.extend(goes_first(alike.answer).map(str::to_owned));
    // Of those that need alike, a post between the ends stands for them.
    let weight = |at: &usize| {
        let needed = worst[*at].footing.needed.as_ref().map_or(0.0, |needed| needed.si());
        (needed, alike.run.posts[*at].role == Role::Line)
    };
    let unknown = (0..worst.len())
        .filter(|at| !is_worked(&worst[*at]))
        .reduce(|one, other| if weight(&other) > weight(&one) { other } else { one });
    if let Some(at) = unknown {
        told.push(unchecked(&worst[at].footing, system));
    }
    told
}

/// What is said of a footing that is not checked: why, what it would need, what an installer digs.
fn unchecked(footing: &FootingVerdict, system: System) -> String {
    let why = footing.checked.as_ref().err().map_or_else(String::new, ToString::to_string);
    let mut told = format!("◇ not checked; {why}");
    if let (Some(needed), Some(width)) = (needed(footing, system), footing.width) {
        let at = match width.is {
            WidthIs::OfPost => "driven without concrete".to_owned(),
            WidthIs::Surveyed => format!("{} wide", depth(width.across, system)),
            WidthIs::Dug => format!("{} wide, as installers dig", depth(width.across, system)),
        };
        told.push_str(&format!(". The design wind needs {needed} deep, {at}"));
    }
    if let Some(dug) = footing.dug {
        told.push_str(&format!(
            ". An installer digs {} deep, {} wide (ASTM F567, which knows no wind)",
            depth(dug.depth, system),
            depth(dug.width, system)
        ));
    }
    told
}

/// What to find out of the footings; nothing where each was worked or refused for another reason.
pub(super) fn to_find_out(check: &Check) -> Option<String> {
    let (mut depth, mut width, mut soil) = (false, false, false);
    let mut asked: Option<String> = None;
    for why in posts(check).filter_map(|post| post.footing.checked.as_ref().err()) {
        match why {
            FootingWhy::NotKnown { depth: deep, width: wide, soil: ground } => {
                depth |= deep;
                width |= wide;
                soil |= ground;
            }
            FootingWhy::Refused(FootingError::SoilUnknown { missing, .. }) => {
                asked = Some(format!("{SOIL}: {}", missing.ask()));
            }
            FootingWhy::Refused(_) | FootingWhy::NoSpeed => {}
        }
    }
    match (depth, width, soil) {
        (true, true, true) => Some(FOOTINGS.to_owned()),
        (false, false, false) => asked,
        _ => {
            let all = [(depth, "how deep"), (width, "how wide"), (soil || asked.is_some(), "the soil")];
            let all: Vec<&str> = all.iter().filter(|(open, _)| *open).map(|(_, what)| *what).collect();
            Some(format!("{OF_FOOTINGS}{}", listed(&all)))
        }
    }
}

/// What is not checked at all until it is measured.
const FOOTINGS: &str = "the footings: how deep, how wide, and the soil";
const OF_FOOTINGS: &str = "the footings: ";
const SOIL: &str = "the soil about the footings";

/// Whether a line of what to measure is that of the footings.
pub(super) fn is_of_footings(line: &str) -> bool {
    line.starts_with(OF_FOOTINGS) || line.starts_with(SOIL)
}

/// What a list of unchecked parts says of the gusts that are told.
pub(super) fn then_gusts(check: &Check) -> &'static str {
    let (all, none) = (posts(check).all(PostVerdict::is_at_most), at_most(posts(check)).is_empty());
    match (all, none) {
        (true, _) => "every gust",
        (false, true) => "",
        (false, false) => "some gusts",
    }
}

/// What is said where the footing is the first part of a run's weakest post to reach its limit.
pub(super) fn goes_first(answer: &RunAnswer) -> Option<&'static str> {
    let order =
        |one: &&PostVerdict, other: &&PostVerdict| one.limit_gust.si().total_cmp(&other.limit_gust.si());
    let first = answer.worst.posts.iter().min_by(order)?;
    (first.limited_by == PartKind::Footing)
        .then_some("The footing reaches its limit before the post does: a stronger post alone does not help")
}
