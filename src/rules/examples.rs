//! Which rules are held against published examples, and which are not and why.

use super::all;
use super::verify::Outcome;
use crate::workings::Card;

const FOUND_NONE: &str = "none of this value was found";
const OURS: &str = "a judgement of this project: no publication prints a value";
const SUM: &str = "pressure, or force, over a length by plain statics; no example prints this step alone";
const CIRCLE: &str = "geometry of the circle and the ring; no example prints this step alone";
const LAW: &str = "a quotient within the law of return periods; no example prints this step alone";

const FACTORED: &str =
    "a factor times a value that is held by its own rule; no example prints this step alone";
const STATICS: &str =
    "plain statics or geometry; no example prints this step alone, the tests hold it a second way";
const STEP: &str = "a step of a rule that is held as a whole; no example prints this step alone";
const OTHER_WAY: &str =
    "the same equation is held the other way round, or as a table worked with another program";

/// Rules without a published example of their own value, each with the reason.
pub const WITHOUT_EXAMPLE: &[(&str, &str)] = &[
    ("asce7-16/hill-reach", STEP),
    ("gust/swaying-structure", STEP),
    ("screen/chain-link-definitions", OURS),
    ("screen/chain-link-weight", STATICS),
    ("screen/equivalent-round", OTHER_WAY),
    ("screen/solidity-of-quotient", OTHER_WAY),
    ("screen/drag-coefficient", OTHER_WAY),
    ("screen/share-at-angle", OTHER_WAY),
    ("section/rusted-width", STATICS),
    ("section/square-tube-corner", STEP),
    ("section/rusted-corner", STATICS),
    ("section/square-tube-inner-width", STEP),
    ("section/square-tube-inner-corner", STEP),
    ("section/rounded-square-straight-side", STEP),
    ("section/rounded-square-area", STEP),
    ("section/rounded-square-second-moment", STEP),
    ("section/rounded-square-plastic-modulus", STEP),
    ("section/square-tube", STEP),
    ("section/square-tube-midline-width", STEP),
    ("section/square-tube-midline-corner", STEP),
    ("section/rounded-square-outline", STEP),
    ("section/square-tube-torsional-constant", FOUND_NONE),
    ("section/rectangle-torsional-constant", FOUND_NONE),
    ("section/weight", STATICS),
    ("section/timber-shear-modulus", OURS),
    ("beam/p-delta-growth", OTHER_WAY),
    ("beam/p-delta-moment", OTHER_WAY),
    ("beam/equal-spans-sag", OTHER_WAY),
    ("beam/load-moment", STATICS),
    ("sway/weight-bend", STATICS),
    ("sway/weight-turn", STATICS),
    ("sway/even-bend", STATICS),
    ("sway/even-turn", STATICS),
    ("sway/first-frequency", STATICS),
    ("aisc360-16/flat-width-of-corner", FOUND_NONE),
    ("aisc360-16/f7-web-noncompact-limit", FOUND_NONE),
    ("aisc360-16/f7-2", FOUND_NONE),
    ("aisc360-16/f7-6", FOUND_NONE),
    ("aisc360-16/square-tube-moment", FOUND_NONE),
    ("aisc360-16/g2-10-limit", FOUND_NONE),
    ("aisc360-16/g2-10", FOUND_NONE),
    ("aisc360-16/g2-11", FOUND_NONE),
    ("aisc360-16/square-tube-shear", FOUND_NONE),
    ("aisc360-16/e3-3", FOUND_NONE),
    ("aisc360-16/e7-7", FOUND_NONE),
    ("aisc360-16/design-compression", FACTORED),
    ("aisc360-16/d2-1", FOUND_NONE),
    ("aisc360-16/design-tension", FACTORED),
    ("aisc360-16/allowable-tension", FACTORED),
    ("aisc360-16/h3-4", FOUND_NONE),
    ("aisc360-16/h3-5", FOUND_NONE),
    ("aisc360-16/design-torsion", FACTORED),
    ("statics/resultant-moment", STATICS),
    ("aisc360-16/h1-1b", FOUND_NONE),
    ("aisc360-16/h3-6", FOUND_NONE),
    ("aisi-s100-16/first-yield", FOUND_NONE),
    ("aisi-s100-16/design-moment", FACTORED),
    ("aisi-s100-16/allowable-moment", FACTORED),
    ("en1993-1-1/round-class-1", FOUND_NONE),
    ("en1993-1-1/round-class-2", FOUND_NONE),
    ("en1993-1-1/round-class-3", FOUND_NONE),
    ("en1993-1-1/6-13", STEP),
    ("en1993-1-1/6-14", STEP),
    ("en1993-1-1/square-shear-area", FOUND_NONE),
    ("en1993-1-1/6-29", FOUND_NONE),
    ("nds-2018/size-factor", FOUND_NONE),
    ("fastening/row-strip", STATICS),
    ("fastening/side-strip", OURS),
    ("fastening/tie-pull", STATICS),
    ("fastening/neighbour-load", OURS),
    ("fastening/pull-to-strength", STATICS),
    ("fastening/multiplied-pull", STATICS),
    ("fastening/strip-load", STEP),
    ("fastening/strip-stiffness", STEP),
    ("fastening/slack-of-length", STATICS),
    ("fastening/slack-of-pretension", STATICS),
    ("fastening/slack-of-sag", STATICS),
    ("fastening/taut-tension", STATICS),
    ("fastening/stiff-tension", STATICS),
    ("fastening/cable-round", STEP),
    ("fastening/edge-force", STATICS),
    ("fastening/per-width", STATICS),
    ("fastening/in-plane-pull", STATICS),
    ("fastening/rest-tension", STATICS),
    ("fastening/half-circle-slack", STATICS),
    ("fastening/arc-round", STEP),
    ("fastening/arc-angle", STEP),
    ("fastening/arc-tension", STEP),
    ("fastening/knotted-rope", FACTORED),
    ("fastening/weathered-rope", FACTORED),
    ("fastening/rope-girth", STEP),
    ("fastening/wrap-radius", STEP),
    ("fastening/lacing-plain", STEP),
    ("fastening/lacing-locked", STEP),
    ("fastening/lacing-tension", STEP),
    ("fastening/rail-load", STATICS),
    ("fastening/cut-length", STATICS),
    ("fastening/spaces", STATICS),
    ("fastening/tie-count", OURS),
    ("fastening/panel-length", STEP),
    ("fastening/cloth-area", STATICS),
    ("fastening/hem-length", STATICS),
    ("fastening/rope-length", STATICS),
    ("fastening/with-spares", OURS),
    ("fastening/ratio", STATICS),
    ("footing/hole-depth-by-height", STEP),
    ("footing/hole-diameter-of-post", STEP),
    ("footing/service-share", FACTORED),
    ("footing/force-height", STATICS),
    ("footing/load-at-level", STATICS),
    ("footing/factored-force", FACTORED),
    ("footing/capacity-at-level", STATICS),
    ("footing/ratio", STATICS),
    ("footing/ibc-1806-3-4", STEP),
    ("footing/ibc-a-of-depth", STEP),
    ("footing/ibc-force", STEP),
    ("footing/ibc-nonconstrained-capacity", STEP),
    ("footing/ibc-18-2-force", STEP),
    ("footing/ibc-constrained-capacity", STEP),
    ("footing/broms-reduced-strength", FACTORED),
    ("footing/broms-reduced-friction", FACTORED),
    ("footing/broms-length", STEP),
    ("footing/broms-clay-force", STEP),
    ("footing/broms-kp", STEP),
    ("footing/broms-sand-force", STEP),
    ("footing/broms-sand-f", STEP),
    ("footing/broms-sand-moment", STEP),
    ("footing/broms-sand-capacity", STEP),
    ("footing/hansen-factored-cohesion", FACTORED),
    ("footing/hansen-factored-friction", FACTORED),
    ("footing/hansen-kq0", STEP),
    ("footing/hansen-kc0", STEP),
    ("footing/hansen-nc", STEP),
    ("footing/hansen-kc-deep", STEP),
    ("footing/hansen-k0", STEP),
    ("footing/hansen-kq-deep", STEP),
    ("footing/hansen-aq", STEP),
    ("footing/hansen-ac", STEP),
    ("footing/hansen-j0", STEP),
    ("footing/hansen-j1", STEP),
    ("footing/hansen-j2", STEP),
    ("footing/hansen-thrust", STEP),
    ("footing/hansen-thrust-moment", STEP),
    ("footing/hansen-resisting-moment", STEP),
    ("footing/hansen-balance", STEP),
    ("footing/brinch-hansen", STEP),
    ("footing/hansen-moment-at-no-shear", STEP),
    ("footing/nzbc-f0", FOUND_NONE),
    ("footing/nzbc-hu", FOUND_NONE),
    ("footing/nzbc-design-strength", FACTORED),
    ("footing/nzbc-capacity", FOUND_NONE),
    ("footing/nzbc", FOUND_NONE),
    ("footing/pd6547-mg", FOUND_NONE),
    ("footing/pd6547-arm", FOUND_NONE),
    ("footing/pd6547-force", FOUND_NONE),
    ("footing/pd6547-capacity", FOUND_NONE),
    ("footing/pd6547", FOUND_NONE),
    ("footing/ep486-nonconstrained-capacity", FOUND_NONE),
    ("footing/ep486-nonconstrained", FOUND_NONE),
    ("footing/ep486-constrained-capacity", FOUND_NONE),
    ("footing/ep486-constrained", FOUND_NONE),
    ("footing/constant-movement", STATICS),
    ("footing/constant-rotation", STATICS),
    ("footing/constant-stiffness", STATICS),
    ("footing/softest-base", OURS),
    ("footing/stiffest-base", OURS),
    ("footing/driven-added", STATICS),
    ("frame/continuous-beam-place", STEP),
    ("loads/service-moment", FACTORED),
    ("loads/service-shear", FACTORED),
    ("verdict/square-corner-moment", OURS),
    ("verdict/square-corner-shear", OURS),
    ("aisc360-16/f8-2", FOUND_NONE),
    ("aisc360-16/f8-3", FOUND_NONE),
    ("aisc360-16/f8-noncompact-limit", FOUND_NONE),
    ("aisc360-16/g5-2", FOUND_NONE),
    (
        "asce7-16/case-b-pressure",
        "a straight line of our own through the mean and the offset of the note; the note prints no pressure",
    ),
    ("asce7-16/case-c-reduction", FOUND_NONE),
    ("asce7-16/least-pressure", "a limit of the code, not a result; no example prints it at work"),
    ("asce7-16/open-cloth-pressure", FOUND_NONE),
    ("asce7-16/open-frame-pressure", FOUND_NONE),
    (
        "asce7-16/openings-factor",
        "one case of common practice works it on its way; no example prints the factor alone",
    ),
    (
        "asce7-16/resultant-height",
        "below s/h = 1 a judgement of this project; at 1 no printed example was found",
    ),
    (
        "asce7-16/zone-factor",
        "the product of two factors with rules of their own; no example prints it alone",
    ),
    (
        "asce7-22/directed-pressure",
        "a product of two values with rules of their own; no example prints it alone",
    ),
    ("asce7-22/velocity-pressure", FOUND_NONE),
    (
        "climate/asce-return-period",
        "two steps, held as climate/asce-ratio and climate/asce-inverse; no example prints both at once",
    ),
    ("climate/averaging-fit", "the same value is held as the result of climate/averaging-time"),
    ("climate/days-a-year", OURS),
    ("climate/over-fifty-year", LAW),
    ("climate/scaled-speed", "the same value is held as the result of climate/asce-speed"),
    ("loads/chain-link", SUM),
    ("loads/cloth", SUM),
    ("loads/post-face", SUM),
    ("loads/rail", SUM),
    ("loads/pressure-at-height", OURS),
    ("loads/row-share", STATICS),
    ("loads/shared-row", SUM),
    ("fastening/rail-shear-beside-splice", STATICS),
    ("fastening/rail-shear-inside", STATICS),
    ("screen/combined-solidity", "shares of areas; no example prints two layers by this overlay alone"),
    ("screen/load-factor-of-through-velocity", "the same value is held as the result of screen/load-factor"),
    ("screen/loss-series", "a sum of coefficients; examples print the load factor that follows from it"),
    ("screen/windowed-solidity", "shares of areas; no example prints this step alone"),
    ("section/girth-diameter", CIRCLE),
    ("section/rusted-diameter", CIRCLE),
    ("section/rusted-wall", CIRCLE),
    ("section/tube-inner-diameter", CIRCLE),
    (
        "statics/post-share",
        "the lever rule as an integral; no example prints a post's share of a stretch alone",
    ),
    ("verdict/corner-moment", OURS),
    ("verdict/corner-shear", OURS),
    ("verdict/axial-ratio", OURS),
    ("verdict/frame-over-hand", OURS),
    ("verdict/frequency-ratio", OURS),
    ("verdict/frequency-with-air", OURS),
    ("verdict/limit-gust", OURS),
    ("verdict/shear-ratio", "a demand over a capacity; no printed example in shear was found"),
];

/// Why a rule has no published example, where it stands in the list.
#[must_use]
pub fn without_example(name: &str) -> Option<&'static str> {
    WITHOUT_EXAMPLE.iter().find(|(own, _)| *own == name).map(|(_, why)| *why)
}

/// The examples that hold the value of a rule.
pub fn examples_of<'o, 'c>(card: &Card, outcomes: &'o [Outcome<'c>]) -> Vec<&'o Outcome<'c>> {
    outcomes.iter().filter(|outcome| outcome.expectation.of.name == card.name).collect()
}

/// The family of a rule: the part of its name before the stroke.
#[must_use]
pub fn family(name: &str) -> &str {
    name.split_once('/').map_or(name, |(family, _)| family)
}

/// The families in the order of the list.
#[must_use]
pub fn families() -> Vec<&'static str> {
    let mut families: Vec<&str> = Vec::new();
    for listed in all() {
        let family = family(listed.card.name);
        if !families.contains(&family) {
            families.push(family);
        }
    }
    families
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::embedded::CASES;
    use crate::rules::verify::{read_all, work_all};

    #[test]
    fn every_rule_has_a_published_example_or_a_reason_why_not_and_never_both() {
        let (cases, _) = read_all(CASES.iter().copied());
        let (outcomes, _) = work_all(&cases);
        let mut wrong = Vec::new();
        for name in all().map(|listed| listed.card.name) {
            let held = outcomes.iter().any(|outcome| outcome.expectation.of.name == name);
            match (held, without_example(name)) {
                (false, None) => {
                    wrong.push(format!("{name} has no case: write one, or its reason in WITHOUT_EXAMPLE"))
                }
                (true, Some(_)) => {
                    wrong.push(format!("{name} has a case now: take it out of WITHOUT_EXAMPLE"))
                }
                _ => {}
            }
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    }

    #[test]
    fn every_reason_belongs_to_a_rule_and_stands_once() {
        for (at, (name, why)) in WITHOUT_EXAMPLE.iter().enumerate() {
            assert!(all().any(|listed| listed.card.name == *name), "{name} is no rule");
            assert!(!WITHOUT_EXAMPLE[..at].iter().any(|(before, _)| before == name), "{name} stands twice");
            assert!(why.len() > 20 && !why.ends_with('.'), "{name}: {why}");
        }
    }
}
