//! The rules as people ask them: every rule with a case is worked by the command on that case's own texts.

use crate::support::run;
use fencegust::rules::embedded::CASES;
use fencegust::rules::examples::{WITHOUT_EXAMPLE, examples_of, families};
use fencegust::rules::verify::{read_all, work_all};
use fencegust::rules::{Case, all};
use fencegust::units::{Dimension, System, Unit, read};
use std::collections::BTreeSet;

fn cases() -> Vec<Case> {
    read_all(CASES.iter().copied()).0
}

/// The result in the first line of a worked rule, in SI units: "key (symbol) = figure unit (figure unit)".
fn result(text: &str, dimension: Dimension) -> f64 {
    let line = text.lines().next().unwrap();
    let (_, figure) = line.split_once(" = ").unwrap_or_else(|| panic!("{text}"));
    // What stands in brackets after the figure is the other system; a unit may have brackets of its own.
    let figure = figure.rsplit_once(" (").map_or(figure, |(first, rest)| {
        if rest.starts_with(|sign: char| sign.is_ascii_digit() || sign == '-') { first } else { figure }
    });
    let figure = figure.replace(',', "");
    read(&figure, dimension).unwrap_or_else(|error| panic!("{figure}: {error}"))
}

#[test]
fn every_rule_with_a_case_is_worked_by_the_command_on_the_texts_of_the_case() {
    let cases = cases();
    let (outcomes, not_worked) = work_all(&cases);
    assert!(not_worked.is_empty());
    let mut worked: BTreeSet<&str> = BTreeSet::new();
    let mut runs = 0;
    for outcome in &outcomes {
        let card = outcome.case.rule.card;
        let is_result = outcome.expectation.of.name == card.name;
        // Of a table the first row and the last.
        let last = outcome.readings.len() - 1;
        let shown: BTreeSet<usize> = [0, last].into();
        for reading in shown.iter().map(|at| &outcome.readings[*at]) {
            let inputs: Vec<String> =
                reading.trial.given.iter().map(|(key, text)| format!("{key}={text}")).collect();
            let mut arguments = vec!["rule", card.name];
            arguments.extend(inputs.iter().map(String::as_str));
            for (system, option) in [(System::Us, None), (System::Si, Some("--si"))] {
                let out = run(&[&arguments[..], option.as_slice()].concat());
                let file = &outcome.case.file;
                assert_eq!((out.code, out.err.as_str()), (0, ""), "{file}: {arguments:?}");
                runs += 1;
                if !is_result {
                    continue;
                }
                let found = result(&out.text, card.measure.dimension());
                let (unit, decimals) = card.measure.printed(system);
                let shown = 0.5
                    * 10_f64.powi(-i32::try_from(decimals).unwrap())
                    * Unit::named(unit).map_or(1.0, |unit| unit.si);
                assert!(
                    (found - reading.ours).abs() <= 1.000_001 * shown,
                    "{file}: {} and {found}",
                    reading.ours
                );
                let off = (found - reading.trial.printed.si()).abs();
                if outcome.case.disputed.is_none() {
                    assert!(off <= reading.trial.allowed + 1.000_001 * shown, "{file}: {}", out.text);
                }
                assert!(out.text.contains(&format!("WORKINGS: {}", card.name)), "{file}");
                worked.insert(card.name);
            }
        }
    }
    assert!(runs > 400, "{runs}");
    // What is left are rules held only on the way of another, whose case was run above.
    let held = all().filter(|listed| !examples_of(listed.card, &outcomes).is_empty());
    for name in held.map(|listed| listed.card.name).filter(|name| !worked.contains(name)) {
        assert!(outcomes.iter().all(|outcome| outcome.case.rule.card.name != name), "{name} was not asked");
    }
    assert!(worked.len() >= 40, "{}", worked.len());
}

#[test]
fn the_list_has_every_rule_under_its_family_with_what_holds_it() {
    let text = run(&["rules"]).text;
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for listed in all() {
        assert!(text.lines().any(|line| line.trim() == listed.card.name), "{}", listed.card.name);
    }
    for family in families() {
        assert_eq!(text.matches(&format!("\n{family}: ")).count() + usize::from(text.starts_with(family)), 1);
    }
    for (name, why) in WITHOUT_EXAMPLE {
        let (_, after) = flat.split_once(&format!("{name} ")).unwrap_or_else(|| panic!("{name}"));
        let end = after.find("published example").unwrap();
        assert!(after[end..].starts_with(&format!("published example: {why}")), "{name}");
    }
    assert!(text.lines().all(|line| line.chars().count() <= 100), "{text}");
}

#[test]
fn a_card_has_the_inputs_units_place_formula_and_examples_of_its_rule() {
    let text = run(&["rules", "asce7-16/velocity-pressure"]).text;
    for said in [
        "ASCE 7-16 26.10.2, Eq. 26.10-1",
        "the page was not read; through",
        "q = c × K_z × K_zt × K_d × K_e × V²",
        "speed (V): basic wind speed; a speed in mph, m/s, km/h, knots",
        "wind/precast-fence-undated-velocity-pressure.toml: agrees (1 value)",
        "permit-document",
        "fencegust rule asce7-16/velocity-pressure constant=\"0.00256 psf/mph2\"",
    ] {
        assert!(text.contains(said), "{said}:\n{text}");
    }
    let table = run(&["rules", "asce7-16/wall-coefficient"]).text;
    assert!(table.contains("none alone") && table.contains("B/s"), "{table}");
    let without = run(&["rules", "verdict/corner-moment"]).text;
    assert!(without.contains("no published example: a judgement of this project"), "{without}");
    assert!(run(&["rules", "aisc360-16/g5-2"]).text.contains("known     from memory"));
}

#[test]
fn what_a_card_says_to_type_works() {
    let mut typed = 0;
    for listed in all() {
        let card = run(&["rules", listed.card.name]);
        assert_eq!((card.code, card.err.as_str()), (0, ""));
        let line = card.text.lines().last().unwrap().trim();
        assert!(line.starts_with(&format!("fencegust rule {} ", listed.card.name)), "{line}");
        if line.contains('…') {
            continue;
        }
        // As a shell takes it apart: quotes keep blanks together.
        let mut arguments = vec![String::new()];
        let mut quote = None;
        for sign in line.strip_prefix("fencegust ").unwrap().chars() {
            match (quote, sign) {
                (Some(open), sign) if sign == open => quote = None,
                (None, '"' | '\'') => quote = Some(sign),
                (None, ' ') => arguments.push(String::new()),
                _ => arguments.last_mut().unwrap().push(sign),
            }
        }
        let out = run(&arguments.iter().map(String::as_str).collect::<Vec<_>>());
        assert_eq!((out.code, out.err.as_str()), (0, ""), "{line}");
        typed += 1;
    }
    assert!(typed >= 40, "{typed}");
}

#[test]
fn a_search_finds_by_name_sentence_input_and_place() {
    let found = |words: &str| run(&["rules", "--search", words]);
    for (words, name) in [
        ("zone-coefficient", "asce7-16/zone-coefficient"),
        ("GIRTH", "section/girth-diameter"),
        ("Eq. F8-2", "aisc360-16/f8-2"),
        ("averaging time", "climate/averaging-time"),
    ] {
        let out = found(words);
        assert_eq!((out.code, out.err.as_str()), (0, ""));
        assert!(out.text.lines().any(|line| line.trim() == name), "{words}:\n{}", out.text);
        assert!(out.text.lines().count() < 120, "{words}");
    }
    // One alone is shown as its card.
    assert!(found("f8-compact-limit").text.contains("held against"));
    let nothing = found("rainbow");
    assert_eq!((nothing.code, nothing.text.as_str()), (1, ""));
    assert!(nothing.err.contains("no rule speaks of \"rainbow\""), "{}", nothing.err);
    let family = run(&["rules", "climate"]).text;
    assert!(family.starts_with("climate: ") && !family.contains("asce7-16/"), "{family}");
}

#[test]
fn a_slip_in_the_name_of_a_rule_or_an_input_finds_the_nearest() {
    let told = |arguments: &[&str]| {
        let out = run(arguments);
        assert_eq!((out.code, out.text.as_str()), (2, ""), "{arguments:?}");
        out.err
    };
    assert!(told(&["rules", "asce7-16/wall-presure"]).contains("perhaps asce7-16/wall-pressure"));
    assert!(told(&["rules", "wall-pressure"]).contains("perhaps asce7-16/wall-pressure"));
    assert!(told(&["rule", "openings-factor", "solidity=1"]).contains("perhaps asce7-16/openings-factor"));
    assert!(told(&["rules", "%%%"]).contains("there is no rule \"%%%\"; fencegust rules lists them"));
    let rule = |inputs: &[&str]| told(&[&["rule", "section/round-tube"], inputs].concat());
    let wrong = rule(&["diamter=2.875 in", "wall=0.203 in"]);
    assert!(wrong.contains("no input diamter; the nearest is diameter"), "{wrong}");
    assert!(!wrong.contains("is missing"), "{wrong}");
    assert!(wrong.contains("fencegust rules section/round-tube tells what each input is"), "{wrong}");
    assert!(rule(&["D=2.875 in", "wall=0.203 in"]).contains("D goes by the name diameter"));
    assert!(rule(&["diameter=2.875 in"]).contains("wall is missing: it is a length"));
    assert!(
        rule(&["diameter=2.875 in", "wall=0.203 psf"]).contains("psf is a pressure or stress, and a length")
    );
    assert!(rule(&["diameter=2.875 in", "wall=0.203"]).contains("0.203 has no unit"));
    let twice = rule(&["diameter=2.875 in", "wall=0.203 in", "wall=0.2 in"]);
    assert!(twice.contains("wall is given twice"), "{twice}");
    assert!(rule(&["diameter", "2.875 in"]).contains("write NAME=VALUE"));
    let range = rule(&["diameter=2 in", "wall=1.5 in"]);
    assert!(range.contains("wall 1-1/2 in") && !range.contains("tells what each"), "{range}");
}

#[test]
fn a_result_stands_first_in_both_systems_of_units() {
    let asked = ["rule", "section/round-tube", "diameter=2.875 in", "wall=0.203 in"];
    let us = run(&asked).text;
    assert!(us.starts_with("modulus (Z) = 1.4521 in³ (23,796 mm³)\n"), "{us}");
    let si = run(&[&asked[..], &["--si"]].concat()).text;
    assert!(si.starts_with("modulus (Z) = 23,796 mm³ (1.4521 in³)\n"), "{si}");
    let metric = run(&["rule", "section/round-tube", "diameter=73.025 mm", "wall=5.1562 mm"]).text;
    assert_eq!(metric.lines().next(), us.lines().next());
    let ratio = run(&["rule", "asce7-16/openings-factor", "solidity=75 %"]).text;
    assert!(
        ratio.starts_with("factor (f) = 0.8750\n") || ratio.lines().next().unwrap().ends_with("= 0.8750")
    );
}
