//! A rule gives the same answer whatever units its inputs are written in.

use fencegust::rules::Case;
use fencegust::rules::embedded::CASES;
use fencegust::units::{Dimension, UNITS, read};
use fencegust::workings::Arguments;

/// The same quantity written in every other unit of its kind in turn.
fn rewritten(text: &str, dimension: Dimension) -> Vec<String> {
    let si = read(text, dimension).unwrap();
    UNITS
        .iter()
        .filter(|unit| unit.dimension == dimension)
        .map(|unit| format!("{} {}", si / unit.si, unit.symbol))
        .collect()
}

#[test]
fn every_case_has_one_answer_whatever_units_its_inputs_are_in() {
    let mut worked = 0;
    for (name, text) in CASES {
        let case = Case::read(name, text).unwrap();
        let work = |given: &[(String, String)]| {
            let given = given.iter().map(|(key, text)| (key.as_str(), text.as_str())).collect();
            case.rule.work(&mut Arguments::new(given), &mut Vec::new()).unwrap().si
        };
        let Some(trial) = case.expects.first().and_then(|expects| expects.trials.first()) else {
            panic!("{name} expects nothing")
        };
        let expected = work(&trial.given);
        for (at, (key, text)) in trial.given.iter().enumerate() {
            let field = case.rule.card.given.iter().find(|field| field.key == key).unwrap();
            let dimension = field.measure.dimension();
            if dimension == Dimension::Ratio {
                continue;
            }
            for other in rewritten(text, dimension) {
                let mut given = trial.given.clone();
                given[at].1.clone_from(&other);
                let found = work(&given);
                let off = (found - expected).abs();
                assert!(off <= 1e-9 * expected.abs(), "{name}: {key} {text} as {other}: {found} {expected}");
                worked += 1;
            }
        }
    }
    assert!(worked > 1000, "{worked}");
}
