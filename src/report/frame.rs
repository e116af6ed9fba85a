//! What the reports say of posts and rails as one frame.

use super::figures::{gust as told_gust, gust_figures, ratio_up};
use super::told::Alike;
use crate::answers::{Check, RunAnswer};
use crate::fence::RailPlace;
use crate::loads::frame::{Base, FrameWhy, RailMoment};
use crate::member::aisc360_16::ADVISED_SLENDERNESS;
use crate::units::{Force, Measure, Moment, Quantity, System, number};
use crate::verdict::{BraceVerdict, Flag, GuyVerdict, PostVerdict, PulledPost, RunFrame, RunVerdict};

/// The frames of all runs with the names of those runs.
fn frames(check: &Check) -> impl Iterator<Item = (&str, &Result<RunFrame, FrameWhy>)> {
    let runs = check.settled.fence.runs.iter().zip(&check.runs);
    runs.filter_map(|(run, answer)| Some((run.name.as_str(), answer.worst.frame.as_ref()?)))
}

/// How the frame was worked, in a sentence or two; nothing where it was not asked.
pub(super) fn how(check: &Check) -> Option<String> {
    if !check.by_frame {
        return None;
    }
    let mut said = Vec::new();
    if frames(check).any(|(_, frame)| frame.is_ok()) {
        said.push(
            "posts and rails also as one frame, the load on the posts and through the rails; of that and of hand statics \
             the worse counts"
                .to_owned(),
        );
    }
    if has_guys(check) {
        said.push(
            "◇ Uplift of footings of back braces and guys, and of their posts, is not checked".to_owned(),
        );
    }
    let mut told: Vec<(String, Vec<&str>)> = Vec::new();
    for (name, frame) in frames(check) {
        let why = match frame {
            // A run that is named with its reason is not named twice.
            Err(why) => format!("◇ not on the frame: {why}").replace(&format!(" of run \"{name}\""), ""),
            Ok(RunFrame { soft: Err(why), .. }) => {
                format!("◇ on feet that do not give only, where soft ones may be worse: {}", why.why())
            }
            Ok(_) => continue,
        };
        match told.iter_mut().find(|(before, _)| *before == why) {
            Some((_, names)) => names.push(name),
            None => told.push((why, vec![name])),
        }
    }
    let all = frames(check).count();
    for (why, names) in told {
        let whose = if names.len() == all { String::new() } else { format!(" ({})", names.join(", ")) };
        said.push(format!("{why}{whose}"));
    }
    Some(format!("{}.", said.join(". ")))
}

/// The runs that could not be worked on the frame, by index.
pub(super) fn not_worked(check: &Check) -> impl Iterator<Item = usize> {
    let runs = check.runs.iter().enumerate();
    runs.filter(|(_, answer)| matches!(answer.worst.frame, Some(Err(_)))).map(|(at, _)| at)
}

/// Whether a back brace or guy counts, so that the uplift of footings is open.
pub(super) fn has_guys(check: &Check) -> bool {
    frames(check).any(|(_, frame)| frame.as_ref().is_ok_and(|frame| !frame.guys.is_empty()))
}

/// The least and the greatest moment on the frame over that by hand statics, of all posts of a run.
fn spread(answer: &RunAnswer) -> Option<(f64, f64)> {
    let posts = answer.worst.posts.iter().filter_map(|post| post.frame.as_ref()?.times_hand());
    posts.reduce(|one, other| (one.0.min(other.0), one.1.max(other.1)))
}

/// The line of a run: how far frame and hand statics lie apart, and the limit gust of either.
pub(super) fn of_run(alike: &Alike<'_>, system: System) -> Option<String> {
    let frame = alike.answer.worst.frame.as_ref()?.as_ref().ok()?;
    let (least, most) = spread(alike.answer)?;
    let percent = |times: f64| format!("{:.0}", 100.0 * times);
    let first = alike
        .answer
        .worst
        .posts
        .iter()
        .filter_map(|post| post.frame.as_ref())
        .map(|frame| frame.limit_gust)
        .min_by(|one, other| one.si().total_cmp(&other.si()))?;
    let apart = if percent(least) == percent(most) {
        format!("moments {} % of hand statics", percent(most))
    } else {
        format!("moments {} to {} % of hand statics", percent(least), percent(most))
    };
    Some(format!(
        "{apart}; limit gust {}, by hand {}",
        told_gust(first, system),
        told_gust(frame.hand_limit_gust, system)
    ))
}

/// What the table of posts in the text holds.
pub(super) const FIRST_TABLE: &str = "Shear and moment of the first table are by hand statics; ratio, limit gust and flag are the worse of both.";

/// What the table of posts for the engineer holds.
pub(super) const ENGINEERS_TABLE: &str = "Moment, strength, ratio and limit gust of the posts are the worse of hand statics and frame; the case there is \
                                          that of hand statics.";

/// Why frame and hand statics differ.
pub(super) const WHY: &str = "Rails hand load from a post that leans more to one that leans less, so the frame takes from some \
                              posts and gives to others; corner posts are held by the run round the corner. Load on the posts \
                              is by bay shares, through the rails by the lever rule; each figure is the larger. How far a top \
                              moves at the design wind is reckoned as if nothing yielded.";

/// How a post that is braced was held against its footing.
pub(super) const BRACED: &str = "Of a braced post the frame alone counts, with the back brace or guy that holds it. Uplift is not checked.";

/// The largest moment of a rail in a bay by hand statics, where it was worked.
pub(super) fn by_hand(worst: &RunVerdict, rail: &RailMoment) -> Option<Moment> {
    let these = worst.rails.checks.iter().filter(|one| (one.bay, one.place) == (rail.bay, rail.place));
    let moments = these.filter_map(|one| one.by_hand.or(one.design).map(|design| design.moment));
    moments.max_by(|one, other| one.si().total_cmp(&other.si()))
}

/// The largest moment of the rails of a run on the frame, a line a rail.
pub(super) fn rails(answer: &RunAnswer, system: System) -> Vec<String> {
    let Some(Ok(frame)) = &answer.worst.frame else { return Vec::new() };
    let moment = |moment: Moment| moment_text(moment, system);
    let largest = |place: RailPlace| {
        let these = frame.rails.iter().filter(|rail| rail.place == place);
        these.max_by(|one, other| one.moment.si().total_cmp(&other.moment.si()))
    };
    let told = |rail: &RailMoment| {
        let hand = by_hand(&answer.worst, rail).map_or_else(
            || "not worked by hand statics".to_owned(),
            |hand| format!("by hand statics {}", moment(hand)),
        );
        format!(
            "On the frame the {} bends at most with {} in bay {}, {hand}; the larger is held against its strength.",
            rail.place.name(),
            moment(rail.moment),
            rail.bay + 1
        )
    };
    RailPlace::ALL.into_iter().filter_map(largest).map(told).collect()
}

/// Whether a table of it can be made of a run.
pub(super) fn is_worked(answer: &RunAnswer) -> bool {
    answer.worst.posts.iter().any(|post| post.frame.is_some())
}

/// "92-108 %" of a post's moment by hand statics.
fn percents(post: &PostVerdict) -> Option<String> {
    let (least, most) = post.frame.as_ref()?.times_hand()?;
    let (least, most) = (format!("{:.0}", 100.0 * least), format!("{:.0}", 100.0 * most));
    Some(if least == most { most } else { format!("{least}-{most}") })
}

/// What governs a post on the frame, in short.
fn governs(post: &PostVerdict) -> Option<String> {
    let worst = post.frame.as_ref()?.worst()?;
    let feet = match worst.base {
        Base::Rigid => "stiff feet",
        Base::Soft => "soft feet",
    };
    Some(format!("{feet}, {}", worst.way.words()))
}

/// What stands over the columns of a table of posts on the frame, after that of the posts.
pub(super) fn heads(system: System) -> [String; 8] {
    let unit = |measure: Measure| measure.printed(system).0;
    let (moment, small) = (unit(Measure::Moment), unit(Measure::Small));
    [
        format!("by hand {moment}"),
        format!("stiff feet {moment}"),
        format!("soft feet {moment}"),
        "% of hand".to_owned(),
        format!("top moves {small}"),
        format!("soft {small}"),
        format!("limit gust {}", unit(Measure::Speed)),
        "worst with".to_owned(),
    ]
}

/// What stands in them for a post; nothing where it was not worked.
pub(super) fn cells(post: &PostVerdict, system: System) -> Option<[String; 8]> {
    let none = || "-".to_owned();
    let found = post.frame.as_ref()?;
    let moment = |si: f64| number(Measure::Moment.in_unit(si.abs(), system), 0);
    let on = |base| found.on(base).map_or_else(none, |one| moment(one.found.greatest.si()));
    let decimals = if system == System::Us { 1 } else { 0 };
    let moves = |base| {
        let top = found.top(base).map(|top| Measure::Small.in_unit(top.si(), system));
        top.map_or_else(none, |top| number(top, decimals))
    };
    Some([
        moment(found.hand.si()),
        on(Base::Rigid),
        on(Base::Soft),
        percents(post).unwrap_or_else(none),
        moves(Base::Rigid),
        moves(Base::Soft),
        gust_figures(found.limit_gust, None, system),
        governs(post).unwrap_or_else(none),
    ])
}

/// Why the footing of a brace or guy is told and not checked.
pub(super) const GUY_FOOTING: &str = "uplift is not checked, neither at its own footing nor at the post's: it needs their weight and the soil's grip";

/// The lines of the back braces and guys of a run, those alike together.
pub(super) fn guys(answer: &RunAnswer, system: System) -> Vec<(String, String)> {
    let Some(Ok(frame)) = &answer.worst.frame else { return Vec::new() };
    alike_together(frame.guys.iter().map(|guy| (guy.name, guy_text(guy, system), guy.post + 1)))
}

/// The lines of the braces of a run, and of the posts that are pulled and have none, those alike together.
pub(super) fn braces(answer: &RunAnswer, system: System) -> Vec<(String, String)> {
    let Some(Ok(frame)) = &answer.worst.frame else { return Vec::new() };
    let braces = frame.braces.iter().map(|brace| ("brace", brace_text(brace, system), brace.post + 1));
    let pulled = frame.pulled_posts.iter();
    let pulled = pulled.map(|post| ("pull along the fence", pulled_text(post, system), post.post + 1));
    alike_together(braces.chain(pulled))
}

/// What is told of posts, name by name and text by text.
fn alike_together(all: impl Iterator<Item = (&'static str, String, usize)>) -> Vec<(String, String)> {
    let mut told: Vec<(&'static str, String, Vec<usize>)> = Vec::new();
    for (name, text, post) in all {
        match told.iter_mut().find(|(other, before, _)| *other == name && *before == text) {
            Some((.., posts)) => posts.push(post),
            None => told.push((name, text, vec![post])),
        }
    }
    let line = |(name, text, posts): (&'static str, String, Vec<usize>)| {
        let whose = if posts.len() == 1 { "post" } else { "posts" };
        (name.to_owned(), format!("{whose} {}: {text}", super::text::spans(&posts)))
    };
    told.into_iter().map(line).collect()
}

fn guy_text(guy: &GuyVerdict, system: System) -> String {
    let (unit, _) = Measure::Force.printed(system);
    let force = |force: Force| format!("{} {unit}", number(Measure::Force.in_unit(force.si(), system), 0));
    let mut said = Vec::new();
    match (guy.ratio, guy.compression.is_some() || guy.tension.is_some()) {
        (Some(ratio), _) => said.push(format!("{}: ratio {}", guy.flag, ratio_up(ratio))),
        (None, true) => said.push(format!("{}: no design wind", guy.flag)),
        (None, false) => said.push(format!("{}: ask its maker what pull is allowed", guy.flag)),
    }
    if let Some(gust) = guy.limit_gust {
        said.push(format!("its limit in a gust of {}", told_gust(gust, system)));
    }
    said.extend(guy.pressed.map(|pressed| format!("pressed with {}", force(pressed))));
    said.push(format!("pulled with {}", force(guy.pulled)));
    let slack = guy.slack.map(|side| format!("slack when the wind pushes to the {}", side.word()));
    said.extend(slack);
    let lifted = |up: Force| up.si() > 0.0;
    let up = match (lifted(guy.foot_uplift), lifted(guy.post_uplift)) {
        (true, true) => format!(
            "◇ at the design wind pulls its own footing up with {} and the post's with {}: not checked; what it holds \
             hangs on that",
            force(guy.foot_uplift),
            force(guy.post_uplift)
        ),
        (true, false) => {
            format!(
                "◇ at the design wind pulls its own footing up with {}: not checked; what it holds hangs on that",
                force(guy.foot_uplift)
            )
        }
        (false, _) => {
            format!(
                "◇ at the design wind pulls the post's footing up with {}: not checked",
                force(guy.post_uplift)
            )
        }
    };
    format!("{}. {up}.", said.join(", "))
}

/// What is not checked of a brace that is.
pub(super) const BRACE_OPEN: &str = "not checked: the post bent along the fence and across it at once, uplift of its footing, the next post, threads and \
                                     bands of the rod, how hard the rod was turned tight, wind on a run round the corner";
/// What is not checked of a post without a brace.
pub(super) const PULLED_OPEN: &str =
    "the post has no brace: its bending along the fence, and along and across it at once, is not checked";

fn brace_text(brace: &BraceVerdict, system: System) -> String {
    let found = match &brace.found {
        Ok(found) => found,
        Err(why) => return format!("{}: {why}.", brace.flag),
    };
    let (unit, _) = Measure::Force.printed(system);
    let force = |force: Force| format!("{} {unit}", number(Measure::Force.in_unit(force.si(), system), 0));
    let ratio = |ratio: Option<f64>, unknown: &str| {
        ratio.map_or_else(|| unknown.to_owned(), |ratio| format!("ratio {}", ratio_up(ratio)))
    };
    format!(
        "{}: the cloth pulls the post along the fence with {} at the design wind. Rail pressed with {}, {}, slenderness {}; \
         rod pulled with {}, {}; post bent along the fence with {}, at its foot {}, {}. Its footing is pulled up with {}. ◇ \
         {BRACE_OPEN}.",
        brace.flag,
        force(found.pull.force),
        force(found.does.rail),
        ratio(found.rail, "not checked"),
        slenderness(found.slenderness),
        force(found.does.rod),
        ratio(found.rod, "◇ not checked: the yield strength of its steel is not known"),
        moment_text(found.does.greatest, system),
        moment_text(found.does.foot_moment, system),
        ratio(found.post, "not checked"),
        force(found.does.uplift),
    )
}

fn slenderness(found: f64) -> String {
    let (advised, note) = ADVISED_SLENDERNESS;
    let above = if found > advised { format!(" above the {advised:.0} of {note}") } else { String::new() };
    format!("{}{above}", number(found, 0))
}

fn pulled_text(found: &PulledPost, system: System) -> String {
    let (unit, _) = Measure::Force.printed(system);
    format!(
        "{}: the cloth pulls with {} {unit} at the design wind, {} at the foot; {PULLED_OPEN}.",
        Flag::NotChecked,
        number(Measure::Force.in_unit(found.pull.force.si(), system), 0),
        moment_text(found.moment, system),
    )
}

fn moment_text(moment: Moment, system: System) -> String {
    let (unit, _) = Measure::Moment.printed(system);
    format!("{} {unit}", number(Measure::Moment.in_unit(moment.si(), system), 0))
}
