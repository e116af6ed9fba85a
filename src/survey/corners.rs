//! Which run stands round which corner.

use super::layers::Reader;
use super::run::{Draft, DraftEnd};
use super::{FootingSurvey, RunSurvey};
use crate::caution::Remark;
use crate::fence::{CornerTo, End, Shared};
use std::ops::Range;

pub(super) const COMPASS: &[&str] =
    &["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];

pub(super) fn compass(side: &str) -> Option<usize> {
    COMPASS.iter().position(|name| name.eq_ignore_ascii_case(side.trim()))
}
/// Finds the runs round each corner and joins their posts.
pub(super) fn corners(
    drafts: Vec<Draft>,
    feet: &[FootingSurvey],
    reader: &mut Reader,
    remarks: &mut Vec<Remark>,
) -> Option<Vec<RunSurvey>> {
    let mut fine = true;
    let mut ends: Vec<[End; 2]> = Vec::new();
    for (at, draft) in drafts.iter().enumerate() {
        let mut both = [End::Free; 2];
        for (which, end) in [&draft.start, &draft.finish].into_iter().enumerate() {
            both[which] = match end {
                DraftEnd::Free => End::Free,
                DraftEnd::Return(length) => End::Return(*length),
                DraftEnd::Corner(place) => match round_the_corner(&drafts, at, which == 0, place, reader) {
                    Some(corner) => End::Corner(corner),
                    None => {
                        fine = false;
                        End::Free
                    }
                },
            };
        }
        ends.push(both);
    }
    if !fine {
        return None;
    }
    let lasts: Vec<usize> = drafts.iter().map(|draft| draft.survey.run.posts.len() - 1).collect();
    let kinds: Vec<[usize; 2]> = drafts
        .iter()
        .map(|draft| {
            let posts = &draft.survey.run.posts;
            [posts[0].kind, posts[posts.len() - 1].kind]
        })
        .collect();
    let footings: Vec<[Option<usize>; 2]> = drafts
        .iter()
        .map(|draft| {
            let posts = &draft.survey.run.posts;
            [posts[0].footing, posts[posts.len() - 1].footing]
        })
        .collect();
    let names: Vec<String> = drafts.iter().map(|draft| draft.survey.run.name.clone()).collect();
    let (mut runs, mut corners) = (Vec::new(), Vec::new());
    for (at, draft) in drafts.into_iter().enumerate() {
        let mut survey = draft.survey;
        [survey.run.start, survey.run.finish] = ends[at];
        for (which, end) in ends[at].iter().enumerate() {
            let End::Corner(corner) = end else { continue };
            let post = if which == 0 { 0 } else { lasts[at] };
            let theirs = if corner.at_its_start { 0 } else { lasts[corner.run] };
            survey.run.posts[post].shared_with = Some(Shared { run: corner.run, post: theirs });
            let (own, other) = (kinds[at][which], kinds[corner.run][usize::from(!corner.at_its_start)]);
            if at < corner.run && own != other {
                reader.mistake(
                    draft.place.clone(),
                    format!(
                        "the corner post of \"{}\" and \"{}\" is one post, but it has one kind in one run and another in the other",
                        names[at], names[corner.run]
                    ),
                    "give both runs the same kind there: corner_post, end_post or other_posts",
                );
            }
            let there = usize::from(!corner.at_its_start);
            let (footing, theirs) = (footings[at][which], footings[corner.run][there]);
            // Of one post, one run may tell what the other does not know.
            survey.run.posts[post].footing = footing.or(theirs);
            let differ = footing.zip(theirs).is_some_and(|(one, other)| !feet[one].is_like(&feet[other]));
            if at < corner.run && differ {
                reader.mistake(
                    draft.place.clone(),
                    format!(
                        "the corner post of \"{}\" and \"{}\" is one post, but it has one footing in one run and another \
                         in the other",
                        names[at], names[corner.run]
                    ),
                    "give both runs the same footing there: corner_footing, end_footing or footing",
                );
            }
            if at < corner.run {
                corners.push(format!("{} with {}", names[at], names[corner.run]));
            }
        }
        runs.push(survey);
    }
    if !corners.is_empty() {
        remarks.push(Remark::CornerPosts { corners });
    }
    Some(runs)
}

/// The run of the same court that stands at one's left hand (for the start) or right hand (for the finish),
/// standing inside and facing the fence; it meets the corner with its other end.
pub(super) fn round_the_corner(
    drafts: &[Draft],
    at: usize,
    start: bool,
    place: &Range<usize>,
    reader: &mut Reader,
) -> Option<CornerTo> {
    let draft = &drafts[at];
    let name = &draft.survey.run.name;
    let Some(side) = draft.survey.faces.as_deref().and_then(compass) else {
        reader.mistake(
            place.clone(),
            format!("the corner of run \"{name}\" cannot be found without its compass side"),
            "add faces = \"north\" and court, or write { return = \"60 ft\" }",
        );
        return None;
    };
    let turned = if start { (side + 6) % 8 } else { (side + 2) % 8 };
    let court = &draft.survey.court;
    let there: Vec<usize> = (0..drafts.len())
        .filter(|other| {
            drafts[*other].survey.court == *court
                && drafts[*other].survey.faces.as_deref().and_then(compass) == Some(turned)
        })
        .collect();
    let end = if start { "start" } else { "finish" };
    let [run] = there[..] else {
        let many = if there.is_empty() { "no run" } else { "more than one run" };
        let of_court = if court.is_empty() { String::new() } else { format!(" of court \"{court}\"") };
        reader.mistake(
            place.clone(),
            format!(
                "the {end} of run \"{name}\" is a corner, but {many}{of_court} faces {}",
                COMPASS[turned]
            ),
            "survey that side too, or write { return = \"60 ft\" } for its cloth, or \"free\"",
        );
        return None;
    };
    let theirs = if start { &drafts[run].finish } else { &drafts[run].start };
    if !matches!(theirs, DraftEnd::Corner(_)) {
        reader.mistake(
            place.clone(),
            format!(
                "the {end} of run \"{name}\" is the corner with run \"{}\", but that run's {} is no corner",
                drafts[run].survey.run.name,
                if start { "finish" } else { "start" }
            ),
            "write \"corner\" for both",
        );
        return None;
    }
    Some(CornerTo { run, at_its_start: !start })
}
