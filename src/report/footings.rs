//! What reports for reading say of footings, in the same words.

use super::figures::{listed, ratio_spread, ratio_up};
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
    let allowable = if told.iter().any(|method| method.starts_with("IBC")) {
        " Its values of the soil are allowable ones: a footing at its limit begins to lean. It may stand more, which is \
         nothing to count on."
    } else {
        ""
    };
    Some(format!(
        "checked{some}, by {}.{allowable} Another method may ask for a third of that depth, or three times it: never mix \
         them.",
        listed(&told)
    ))
}

/// The posts of a run by index, leaving out corner posts that carry the cloth of another run: those are told with it.
fn own_posts(answer: &RunAnswer) -> impl Iterator<Item = usize> {
    [&answer.near_ends, &answer.inside, &answer.bare]
        .into_iter()
        .flatten()
        .flat_map(|group| group.posts.iter().copied())
}

/// The flag of a ratio over both ends of what is not known.
fn flag_of(worst: f64, best: Option<f64>) -> Flag {
    best.map_or(Flag::of(worst), |best| Flag::of_both_ends(Flag::of(worst), Flag::of(best)))
}

/// Posts and what they stand in, told apart.
#[derive(Debug, Clone, Copy)]
pub(super) struct Apart {
    posts: Option<Found>,
    feet: Option<Found>,
    /// Whether the bending of one of them was left unchecked.
    some_bending: bool,
    /// Whether every footing was held against the wind.
    all_feet: bool,
    /// Whether a footing is the first to reach its limit.
    foot_first: bool,
}

/// The largest ratio of some parts, and the worst flag over both ends of what is not known.
#[derive(Debug, Clone, Copy)]
struct Found {
    ratio: f64,
    flag: Flag,
}

impl Found {
    fn worse(one: Option<Self>, ratio: Option<f64>, best: Option<f64>) -> Option<Self> {
        let Some(ratio) = ratio else { return one };
        let other = Self { ratio, flag: flag_of(ratio, best) };
        Some(
            one.map_or(other, |one| Self {
                ratio: one.ratio.max(other.ratio),
                flag: one.flag.max(other.flag),
            }),
        )
    }
}

impl Apart {
    /// Of the own posts of some runs.
    pub(super) fn of<'a>(answers: impl Iterator<Item = &'a RunAnswer>) -> Self {
        let mut apart =
            Self { posts: None, feet: None, some_bending: false, all_feet: true, foot_first: false };
        let mut first: Option<&PostVerdict> = None;
        for answer in answers {
            for at in own_posts(answer) {
                let post = &answer.worst.posts[at];
                let best = answer.best.as_ref().map(|best| &best.posts[at]);
                let foot = |post: &PostVerdict| post.footing.checked.as_ref().ok().map(|found| found.ratio);
                apart.posts = Found::worse(
                    apart.posts,
                    post.ratio_of_post(),
                    best.and_then(PostVerdict::ratio_of_post),
                );
                apart.feet = Found::worse(apart.feet, foot(post), best.and_then(foot));
                apart.some_bending |= post.is_bending_unchecked();
                apart.all_feet &= is_worked(post);
                if first.is_none_or(|first| post.limit_gust < first.limit_gust) {
                    first = Some(post);
                }
            }
        }
        apart.foot_first = first.is_some_and(|post| post.limited_by == PartKind::Footing);
        apart
    }

    /// Those of which a flag is said: "posts", "footings", or both.
    pub(super) fn who(&self, flag: Flag, between: &str) -> String {
        let is = |found: Option<Found>| found.is_some_and(|found| found.flag == flag);
        match (is(self.posts), is(self.feet)) {
            (true, true) => format!("posts {between} footings"),
            (false, true) => "footings".to_owned(),
            _ => "posts".to_owned(),
        }
    }

    /// Those that were checked: "posts alone", where that is all.
    pub(super) const fn checked(&self) -> &'static str {
        match (self.some_bending, self.feet.is_some(), self.all_feet) {
            (true, ..) => "parts that were checked",
            (false, false, _) => "posts alone",
            (false, true, true) => "posts and footings",
            (false, true, false) => "posts and those footings that were checked",
        }
    }

    /// How far they are over their limit, the posts and what they stand in each.
    pub(super) fn times(&self) -> String {
        let is_over = |found: &Found| found.flag == Flag::Over;
        let beside = |other: Option<Found>, who: &str| match other {
            Some(Found { flag: Flag::Depends, .. }) => {
                format!("; whether the {who} carry it depends on what is not known")
            }
            Some(found) => format!("; the {who} come to {} of what they carry", ratio_up(found.ratio)),
            None => String::new(),
        };
        match (self.posts.filter(is_over), self.feet.filter(is_over)) {
            (Some(posts), Some(feet)) => format!(
                "{} times what the posts carry and {} times what the footings do",
                ratio_up(posts.ratio),
                ratio_up(feet.ratio)
            ),
            (None, Some(feet)) => {
                let who = if self.some_bending { "posts that were checked" } else { "posts themselves" };
                format!("{} times what they carry{}", ratio_up(feet.ratio), beside(self.posts, who))
            }
            (posts, None) => {
                let who = if self.all_feet { "footings" } else { "footings that were checked" };
                let ratio = posts.or(self.posts).map_or(0.0, |posts| posts.ratio);
                format!("{} times what they carry{}", ratio_up(ratio), beside(self.feet, who))
            }
        }
    }

    /// Whether a footing is the first to reach its limit, and the posts were checked.
    pub(super) const fn is_foot_before_post(&self) -> bool {
        self.foot_first && !self.some_bending
    }

    /// What reaches its limit first: "post" or "footing".
    pub(super) const fn first(&self) -> &'static str {
        if self.foot_first { "footing" } else { "post" }
    }
}

/// What is said of the posts of a run themselves, where what they stand in is told beside; nothing where that is all
/// there is to tell.
pub(super) fn of_posts(alike: &Alike<'_>) -> Option<String> {
    let (worst, best) = (&alike.answer.worst.posts, alike.answer.best.as_ref().map(|best| &best.posts));
    let own = || own_posts(alike.answer);
    let unchecked = own().find(|at| worst[*at].is_bending_unchecked());
    if !own().any(|at| is_worked(&worst[at])) && unchecked.is_none() {
        return None;
    }
    let ratio = |at: usize| worst[at].ratio_of_post().map(|ratio| (at, ratio));
    // Of two that mirror one another the first.
    let governing = own()
        .filter_map(ratio)
        .reduce(|one, other| if other.1 * (1.0 - ROUNDING) > one.1 { other } else { one });
    let mut told = Vec::new();
    if let Some((at, ratio)) = governing {
        let lightest = best.and_then(|best| best[at].ratio_of_post());
        let flag = flag_of(ratio, lightest);
        told.push(format!("{flag}: ratio {} at post {}", ratio_spread(ratio, lightest), at + 1));
    }
    if let Some(at) = unchecked {
        let post = &worst[at];
        let of_soil = matches!(&post.below_grade, Some(Err(FootingError::SoilUnknown { .. })));
        let bending = post.parts.iter().find(|part| part.kind == PartKind::PostBending);
        let why = match bending.and_then(|part| post.why(part)) {
            Some(why) if !of_soil => why,
            _ => "a driven post bends most below the ground; ask a geotechnical engineer for S_u of clay, or for φ and γ \
                  of sand"
                .to_owned(),
        };
        told.push(format!("◇ bending of post {} not checked: {why}", at + 1));
    }
    (!told.is_empty()).then(|| told.join(". "))
}

/// What is said of the footings of a run.
pub(super) fn of_run(check: &Check, alike: &Alike<'_>, system: System) -> Vec<String> {
    let (worst, best) = (&alike.answer.worst.posts, alike.answer.best.as_ref().map(|best| &best.posts));
    let mut told = Vec::new();
    let own: Vec<usize> = own_posts(alike.answer).collect();
    let worked: Vec<usize> = (0..worst.len()).filter(|at| is_worked(&worst[*at])).collect();
    let ratio = |at: &usize| worst[*at].footing.checked.as_ref().ok().map(|found| found.ratio);
    // Of two that mirror one another the first.
    let weight = |at: &usize| ratio(at).unwrap_or_default() * (1.0 - ROUNDING);
    let governing = |all: &mut dyn Iterator<Item = usize>| {
        all.filter(|at| ratio(at).is_some())
            .reduce(|one, other| if weight(&other) > ratio(&one).unwrap_or_default() { other } else { one })
    };
    let of_own = governing(&mut worked.iter().copied().filter(|at| own.contains(at)));
    let of_corners = governing(&mut worked.iter().copied().filter(|at| !own.contains(at)));
    let no_speed = !worked.is_empty() && !check.has_speed();
    for (at, of) in [(of_own, ""), (of_corners, ", a corner with cloth round it")] {
        let Some(at) = at else { continue };
        let footing = &worst[at].footing;
        let found = ratio(&at).unwrap_or_default();
        let lightest = best.and_then(|best| best[at].footing.checked.as_ref().ok()).map(|best| best.ratio);
        let flag = flag_of(found, lightest);
        let goes =
            footing.depth.map_or_else(String::new, |deep| format!("goes {} deep", depth(deep, system)));
        let wants = needed(footing, system)
            .map_or_else(String::new, |needed| format!(", the design wind needs {needed}"));
        told.push(format!(
            "{flag}: ratio {} at post {}{of}: it {goes}{wants}",
            ratio_spread(found, lightest),
            at + 1
        ));
    }
    if no_speed {
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

/// What is said where the footing is the first part of a run's weakest post to reach its limit, and the post itself was
/// checked.
pub(super) fn goes_first(answer: &RunAnswer) -> Option<&'static str> {
    Apart::of(std::iter::once(answer))
        .is_foot_before_post()
        .then_some("The footing reaches its limit before the post does: a stronger post alone does not help")
}
