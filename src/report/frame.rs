//! What the reports say of posts and rails as one frame.

use super::figures::gust;
use super::told::Alike;
use crate::answers::{Check, RunAnswer};
use crate::loads::frame::{Base, FrameWhy};
use crate::units::{Quantity, System};
use crate::verdict::{PostVerdict, RunFrame};

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
    let mut told: Vec<(String, Vec<&str>)> = Vec::new();
    for (name, frame) in frames(check) {
        let why = match frame {
            Err(why) => format!("◇ not on the frame: {why}"),
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
        gust(first, system),
        gust(frame.hand_limit_gust, system)
    ))
}

/// Why frame and hand statics differ.
pub(super) const WHY: &str = "Rails hand load from a post that leans more to one that leans less, so the frame takes from some posts and gives to \
     others; corner posts are held by the run round the corner. Load on the posts is by bay shares, through the rails by \
     the lever rule; each figure is the larger. \
     How far a top moves at the design wind is reckoned as if nothing yielded.";

/// Whether a table of it can be made of a run.
pub(super) fn is_worked(answer: &RunAnswer) -> bool {
    answer.worst.posts.iter().any(|post| post.frame.is_some())
}

/// "92-108 %" of a post's moment by hand statics.
pub(super) fn percents(post: &PostVerdict) -> Option<String> {
    let (least, most) = post.frame.as_ref()?.times_hand()?;
    let (least, most) = (format!("{:.0}", 100.0 * least), format!("{:.0}", 100.0 * most));
    Some(if least == most { most } else { format!("{least}-{most}") })
}

/// What governs a post on the frame, in short.
pub(super) fn governs(post: &PostVerdict) -> Option<String> {
    let worst = post.frame.as_ref()?.worst()?;
    let feet = match worst.base {
        Base::Rigid => "stiff feet",
        Base::Soft => "soft feet",
    };
    Some(format!("{feet}, {}", worst.way.words()))
}
