//! Odd surveys: what they print is figures or words, and what is refused says why.

use crate::command::vector;
use crate::support::{run_on, run_with};
use fencegust::Survey;
use std::fs;

const COURT: &str = r#"{ mesh = "1-3/4 in", wire = "9 gauge" }"#;

/// The vector with another cloth, the fence with or without wire.
fn with_cloth(cloth: &str, chain_link: &str) -> String {
    vector("12 x 10 ft", "0.95", chain_link).replace("solidity = 0.95", cloth)
}

/// Words that a figure becomes when it is none.
fn no_figures(text: &str) -> Vec<&str> {
    text.split(|sign: char| !sign.is_alphanumeric())
        .filter(|word| ["nan", "inf", "infinity"].contains(&word.to_lowercase().as_str()))
        .collect()
}

const CLOTHS: [&str; 30] = [
    "solidity = 0",
    "solidity = -0.0",
    "solidity = 1e-300",
    "solidity = 0.001",
    "solidity = 1",
    "solidity = \"1 .. 1\"",
    "solidity = \"0.001 .. 1\"",
    "solidity = \"0 .. 1\"",
    "solidity = 1.0000001",
    "solidity = nan",
    "solidity = inf",
    "solidity = \"0.5 .. inf\"",
    "solidity = \"unknown\", condition = \"unknown\"",
    "density = 80, colour = \"green\"",
    "density = 80, colour = \"black\"",
    "density = \"50 % .. 200 %\", colour = \"green\"",
    "density = 1, colour = \"green\"",
    "density = 0.0001, colour = \"white\"",
    "density = \"unknown\", colour = \"white\"",
    "density = \"100 % .. 100 %\", colour = \"white\"",
    "solidity = 0.9, over = { density = 80, colour = \"green\" }",
    "solidity = 1, over = { solidity = 1 }",
    "solidity = 0.001, over = [{ solidity = 0.001 }, { solidity = 0.001 }]",
    "solidity = 0.9, vents = { width = \"8 in\", height = \"5 in\", per_bay = 431 }",
    "solidity = 0.9, vents = { width = \"8 in\", height = \"5 in\", per_bay = 432 }",
    "solidity = 0.9, vents = { width = \"8 in\", height = \"5 in\", per_bay = 999 }",
    "solidity = 1, air_permeability = { flow = \"1e-9 cfm/ft2\", at = \"125 Pa\" }",
    "solidity = 1, air_permeability = { flow = \"1e9 cfm/ft2\", at = \"125 Pa\" }",
    "solidity = 1, condition = \"iced\"",
    "solidity = 1, bays = \"1\"",
];

#[test]
fn no_odd_cloth_prints_a_figure_that_is_none() {
    let mut worked = 0;
    for cloth in CLOTHS {
        for chain_link in [COURT, "\"none\""] {
            let survey = with_cloth(cloth, chain_link);
            for arguments in [
                &["check", "-", "--all"][..],
                &["check", "-", "--format", "json"],
                &["check", "-", "--format", "csv"],
                &["check", "-", "--workings", "run/1"],
                &["compare", "-", "--cloth", "open mesh", "--cloth", "solid", "--cloth", "none"],
                &["compare", "-", "--levers"],
                &["compare", "-", "--cloth", "open mesh", "--format", "json"],
                &["sheet", "-", "--for", "client"],
                &["sheet", "-", "--for", "engineer"],
                &["order", "-"],
            ] {
                let out = run_with(arguments, &survey);
                assert!(out.code != 2 || out.text.is_empty() && out.err.contains("line 1"), "{}", out.err);
                let found = no_figures(&out.text);
                assert!(found.is_empty(), "{cloth} {chain_link} {arguments:?}: {found:?}\n{}", out.text);
                worked += usize::from(out.code != 2);
            }
        }
    }
    assert!(worked > 180, "{worked}");
}

/// What is told of a cloth that is refused.
fn refused(cloth: &str) -> String {
    let out = run_on("-", &with_cloth(cloth, COURT));
    assert_eq!((out.code, out.text.as_str()), (2, ""), "{cloth}: {}", out.err);
    assert_eq!(out.err.matches("standard input").count(), 1, "{cloth}: {}", out.err);
    out.err
}

#[test]
fn a_density_above_one_is_refused_whatever_the_colour() {
    for colour in ["green", "black"] {
        for density in ["80", "\"50 % .. 200 %\"", "\"101 %\""] {
            let told = refused(&format!("density = {density}, colour = \"{colour}\""));
            assert!(told.contains("density is the share of the light") && told.contains("80 %"), "{told}");
        }
    }
    assert_eq!(run_on("-", &with_cloth("density = \"100 %\", colour = \"green\"", COURT)).code, 1);
}

#[test]
fn windows_leave_some_cloth_in_the_narrowest_bay() {
    // A window of 8 in by 5 in is 40 in², a bay of 10 ft by 10 ft is 14 400 in²: 360 of them.
    let cut = |count: u32| {
        format!("solidity = 0.9, vents = {{ width = \"8 in\", height = \"5 in\", per_bay = {count} }}")
    };
    assert!(refused(&cut(360)).contains("leave no cloth in the narrowest bay"));
    assert_eq!(run_on("-", &with_cloth(&cut(359), COURT)).code, 1);
    let narrow = |screen: &str| {
        with_cloth(&format!("{}{screen}", cut(200)), COURT).replace("12 x 10 ft", "11 x 10 ft\", \"5 ft")
    };
    assert_eq!(run_on("-", &narrow("")).code, 2);
    assert_eq!(run_on("-", &narrow(", bays = \"1..11\"")).code, 1);
}

#[test]
fn what_is_too_open_to_be_cloth_is_refused() {
    for cloth in
        ["solidity = 0.0005", "density = \"0.01 %\", colour = \"white\"", "solidity = \"0.0001 .. 1\""]
    {
        assert!(refused(cloth).contains("no cloth is so open"), "{cloth}");
    }
}

#[test]
fn a_runs_own_ends_stand_before_the_start_and_finish_of_all_runs() {
    let survey = |all: &str, own: &str| {
        let run = vector("12 x 10 ft", "0.95", COURT).replace("ends = \"free\"", own);
        run.replace("[[run]]", &format!("[all_runs]\n{all}\n[[run]]"))
    };
    let ends = |all: &str, own: &str| {
        let read = Survey::read(&survey(all, own), "survey").unwrap_or_else(|error| panic!("{error}"));
        let kinds: Vec<&str> = [0, 12].map(|at| read.runs[0].run.posts[at].role.word()).into();
        kinds.join(" ")
    };
    let all = "start = { return = \"60 ft\" }\nfinish = { return = \"60 ft\" }";
    assert_eq!(ends(all, ""), "corner corner");
    assert_eq!(ends(all, "ends = \"free\""), "end end");
    assert_eq!(ends(all, "start = \"free\""), "end corner");
    assert_eq!(ends(all, "ends = \"free\"\nstart = { return = \"9 ft\" }"), "corner end");
    assert_eq!(ends("ends = \"free\"", "finish = { return = \"9 ft\" }"), "end corner");
}

/// What is told of a survey, which must be refused with the line of each mistake.
fn told(survey: &str, mistakes: usize) -> String {
    let out = run_on("-", survey);
    assert_eq!((out.code, out.text.as_str()), (2, ""), "{survey}\n{}", out.err);
    assert_eq!(out.err.matches("standard input").count(), mistakes, "{survey}\n{}", out.err);
    out.err
}

#[test]
fn empty_tables_are_refused_with_what_to_write() {
    let good = vector("12 x 10 ft", "0.95", COURT);
    let post = &good[good.find("[post.line]").unwrap()..good.find("[[run]]").unwrap()];
    let screen = "{ solidity = 0.95, bottom = \"0 ft\", height = \"10 ft\" }";
    assert!(good.contains(screen));
    for (survey, mistakes, said) in [
        (good.replace(post, "[post]\n"), 1, "line 6: the survey has no [post.NAME]"),
        (good.replace(post, ""), 1, "the survey has no [post.NAME]"),
        (good.replace(post, "[post.x]\n"), 2, "line 6: [post.x] has no size"),
        (format!("{good}[[run]]\n"), 5, "run 2 has no name"),
        (good.replace(screen, "{}"), 3, "has no cloth"),
        (good.replace(COURT, "{}"), 2, "has no mesh"),
        (good.replace("ends = \"free\"", "ends = {}"), 1, "has no return"),
        (good.replace("ends = \"free\"", "ends = \"free\"\nother_posts = [{}]"), 2, "has no numbers"),
        (good.replace("solidity = 0.95", "solidity = 0.95, vents = {}"), 3, "has no per_bay"),
        (good.replace("solidity = 0.95", "solidity = 0.95, over = {}"), 1, "has no cloth"),
        ("# nothing yet\n".to_owned(), 4, "add survey = 1"),
        ("survey = 1\n".to_owned(), 3, "add [[run]]"),
    ] {
        let told = told(&survey, mistakes);
        assert!(told.contains(said), "{said}: {told}");
    }
    for empty in ["", "\n \n", "\u{feff}"] {
        assert!(told(empty, 1).contains("survey = 1"));
    }
}

#[test]
fn every_survey_that_is_refused_is_told_why() {
    let odd = [
        toml::Value::Integer(7),
        toml::Value::Boolean(true),
        toml::Value::String(String::new()),
        toml::Value::Array(Vec::new()),
        toml::Value::Table(toml::Table::new()),
    ];
    let mut refused = 0;
    for name in ["every-key", "every-other-key"] {
        let text = fs::read_to_string(format!("tests/surveys/{name}.toml")).unwrap();
        let survey: toml::Table = text.parse().unwrap();
        for (key, value) in &survey {
            for other in &odd {
                let mut changed = vec![survey.clone()];
                changed[0].insert(key.clone(), other.clone());
                for (inner, _) in value.as_table().into_iter().flatten() {
                    let mut one = survey.clone();
                    one[key].as_table_mut().unwrap().insert(inner.clone(), other.clone());
                    changed.push(one);
                }
                for one in changed {
                    let Err(mistakes) = Survey::read(&toml::to_string(&one).unwrap(), "survey") else {
                        continue;
                    };
                    refused += 1;
                    assert!(!mistakes.mistakes.is_empty(), "{name}: {key} = {other} is refused in silence");
                }
            }
        }
    }
    assert!(refused > 150, "{refused}");
}

#[test]
fn reserved_keys_are_refused_and_told_to_be_reserved() {
    let good = vector("12 x 10 ft", "0.95", COURT);
    for (survey, key) in [
        (
            format!("{good}[judgement]\nG = {{ value = 0.85, because = \"stiff\", by = \"an engineer\" }}\n"),
            "judgement",
        ),
        (format!("{good}[[seen]]\ndate = 2026-01-10\ngust = \"60 mph\"\n"), "seen"),
        (good.replace("[post.line]", "[[site.also]]\nwind_code = \"asce7-22\"\n[post.line]"), "also"),
    ] {
        let told = told(&survey, 1);
        assert!(told.contains(&format!("{key} of ")) && told.contains("is reserved"), "{told}");
        assert!(told.contains("not read by this version"), "{told}");
    }
}
