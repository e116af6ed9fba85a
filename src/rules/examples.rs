//! Which rules are held against published examples, and which are not and why.

use super::all;
use super::verify::Outcome;
use crate::workings::Card;

const FOUND_NONE: &str = "none of this value was found";
const FACTOR: &str =
    "a resistance factor times a strength that is held by its own rule; no printed example was found";
const OURS: &str = "a judgement of this project: no publication prints a value";
const SUM: &str = "pressure, or force, over a length by plain statics; no example prints this step alone";
const CIRCLE: &str = "geometry of the circle and the ring; no example prints this step alone";
const LAW: &str = "a quotient within the law of return periods; no example prints this step alone";

/// Rules without a published example of their own value, each with the reason.
pub const WITHOUT_EXAMPLE: &[(&str, &str)] = &[
    ("aisc360-16/design-moment", FACTOR),
    ("aisc360-16/design-shear", FACTOR),
    ("aisc360-16/f8-2", FOUND_NONE),
    ("aisc360-16/f8-3", FOUND_NONE),
    ("aisc360-16/f8-noncompact-limit", FOUND_NONE),
    ("aisc360-16/g5-2", FOUND_NONE),
    ("asce7-10/exposure-coefficient", FOUND_NONE),
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
    ("screen/combined-solidity", "shares of areas; no example prints two layers by this overlay alone"),
    ("screen/load-factor-of-through-velocity", "the same value is held as the result of screen/load-factor"),
    ("screen/loss-series", "a sum of coefficients; examples print the load factor that follows from it"),
    ("screen/windowed-solidity", "shares of areas; no example prints this step alone"),
    ("section/girth-diameter", CIRCLE),
    ("section/rusted-diameter", CIRCLE),
    ("section/rusted-wall", CIRCLE),
    ("section/tube-inner-diameter", CIRCLE),
    ("section/tube-plastic-modulus", "the same value is held as the result of section/round-tube"),
    (
        "statics/post-share",
        "the lever rule as an integral; no example prints a post's share of a stretch alone",
    ),
    ("verdict/corner-moment", OURS),
    ("verdict/corner-shear", OURS),
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
