//! Posts that a run writes where they stand, whole or like a kind.

use crate::command::vector;
use crate::support::{json_of, run_with};
use fencegust::Survey;
use serde_json::Value;

/// Twelve bays whose kinds are `[post.line]` and, where a test adds it, another.
fn with(kinds: &str, run: &str) -> String {
    let court = r#"{ mesh = "1-3/4 in", wire = "9 gauge" }"#;
    vector("12 x 10 ft", "0.95", court)
        .replace("[[run]]", &format!("{kinds}[[run]]"))
        .replace("ends = \"free\"", &format!("ends = \"free\"\n{run}"))
}

/// What every post carries, in N m.
fn strengths(survey: &str) -> Vec<f64> {
    let (json, _) = json_of(survey);
    let posts = json["runs"][0]["posts"].as_array().unwrap().clone();
    posts.iter().map(|post| post["parts"][0]["capacity"].as_f64().unwrap()).collect()
}

const STRONGER: &str = "[post.stronger]\nlike = \"line\"\nyield = \"60 ksi\"\n";

#[test]
fn a_kind_with_a_key_changed_is_the_kind_written_out() {
    let out = with(STRONGER, "line_post = \"stronger\"\nend_post = \"line\"");
    let place = with("", "line_post = { like = \"line\", yield = \"60 ksi\" }\nend_post = \"line\"");
    let whole = with(
        "",
        "line_post = { diameter = \"2.875 in\", nominal_wall = \"0.203 in\", yield = \"60 ksi\" }\nend_post = \"line\"",
    );
    let found = strengths(&place);
    assert_eq!(found, strengths(&out));
    assert_eq!(found, strengths(&whole));
    // A compact tube carries in the proportion of its yield: AISC 360-16 Eq. F8-1, F8-2.
    assert!((found[5] / found[0] - 2.0).abs() < 0.05, "{found:?}");
}

#[test]
fn every_key_that_names_a_post_takes_one_in_place() {
    let usual = strengths(&with("", ""));
    let other = "{ like = \"line\", yield = \"60 ksi\" }";
    let rest = "\nbays = [\"10 ft\", \"gate 10 ft\", \"10 x 10 ft\"]";
    let gated = |line: &str| with("", line).replace("\nbays = [\"12 x 10 ft\"]", rest);
    for (line, changed) in [
        (format!("end_post = {other}\ngate_post = \"line\""), vec![0, 12]),
        (format!("gate_post = {other}"), vec![1, 2]),
        (format!("line_post = {other}"), (3..12).collect()),
        (format!("other_posts = [{{ numbers = [5, 7], post = {other} }}]"), vec![4, 6]),
    ] {
        let found = strengths(&gated(&line));
        let stronger: Vec<usize> = (0..13).filter(|at| found[*at] > 1.5 * usual[*at]).collect();
        assert_eq!(stronger, changed, "{line}");
    }
    let corner = with("", &format!("corner_post = {other}"))
        .replace("ends = \"free\"", "start = { return = \"60 ft\" }\nfinish = \"free\"");
    let found = strengths(&corner);
    assert!(found[0] > 1.5 * usual[0] && found[12] == usual[12], "{found:?}");
}

#[test]
fn a_post_that_is_dealt_to_several_runs_is_one_kind_and_each_written_one_has_its_name() {
    let run = "line_post = { like = \"line\", yield = \"60 ksi\" }\nend_post = { girth = \"9 in\", nominal_wall = \"unknown\" }";
    let survey = with("", run).replace("name = \"run\"", "name = [\"north\", \"south\"]");
    let read = Survey::read(&survey, "survey").unwrap();
    let names: Vec<&str> = read.posts.iter().map(|post| post.name.as_str()).collect();
    assert_eq!(names, ["line", "line, changed", "end post"]);
    let twice =
        with("", "line_post = { like = \"line\", yield = \"60 ksi\" }\nend_post = { like = \"line\" }");
    let read = Survey::read(&twice, "survey").unwrap();
    let names: Vec<&str> = read.posts.iter().map(|post| post.name.as_str()).collect();
    assert_eq!(names, ["line", "line, changed", "line, changed 2"]);
    // What is not known of it is asked for by that name.
    let told = run_with(&["check", "-"], &survey).text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(told.contains("wall and grade of posts \"end post\""), "{told}");
}

#[test]
fn a_survey_needs_no_kind_where_its_runs_write_their_posts() {
    let survey = with(
        "",
        "line_post = { diameter = \"2.875 in\", nominal_wall = \"0.203 in\", yield = \"30 ksi\" }\nend_post = { diameter = \"2.875 in\", nominal_wall = \"0.203 in\", yield = \"30 ksi\" }",
    );
    let kinds = "[post.line]\ndiameter = \"2.875 in\"\nnominal_wall = \"0.203 in\"\nyield = \"30 ksi\"\n";
    assert!(survey.contains(kinds));
    let without = survey.replace(kinds, "");
    assert_eq!(strengths(&without), strengths(&survey));
    let half = without.replace("end_post", "corner_post");
    let out = run_with(&["check", "-"], &half);
    assert_eq!((out.code, out.err.matches("standard input").count()), (2, 1), "{}", out.err);
    assert!(out.err.contains("has no end_post"), "{}", out.err);
}

#[test]
fn what_is_wrong_with_a_post_in_place_is_told_where_it_stands() {
    for (post, said) in [
        ("{ like = \"lime\" }", "there is no [post.lime]"),
        ("{ like = \"line\", yeild = \"36 ksi\" }", "line_post of run \"run\" has no key yeild"),
        ("{ girth = \"9 in\" }", "line_post of run \"run\" has no wall"),
        ("{}", "line_post of run \"run\" has no size"),
        ("{ like = \"line\", girth = \"9 in\" }", "has girth and diameter"),
        ("7", "line_post of run \"run\" is text"),
    ] {
        let survey = with("", &format!("end_post = \"line\"\nline_post = {post}"));
        let line = 1 + survey[..survey.find("line_post").unwrap()].matches('\n').count();
        let out = run_with(&["check", "-"], &survey);
        assert_eq!((out.code, out.text.as_str()), (2, ""), "{post}: {}", out.err);
        assert!(out.err.contains(said), "{post}: {}", out.err);
        assert!(out.err.contains(&format!("line {line}: ")), "{post}: {}", out.err);
    }
}

#[test]
fn what_was_read_says_whose_keys_they_are() {
    let survey = with("", "line_post = { like = \"line\", yield = \"60 ksi\" }\nend_post = \"line\"");
    let told = run_with(&["check", "-", "--as-read"], &survey).text;
    let line = |key: &str| {
        told.lines().find(|line| line.contains(key)).unwrap_or_else(|| panic!("{key}: {told}")).to_owned()
    };
    assert!(line("run.run.line_post").contains("line, changed"), "{told}");
    assert!(line("post.line, changed.yield").contains("60 ksi"), "{told}");
    assert!(line("post.line, changed.diameter").contains("kind \"line\""), "{told}");
    let json: Value = json_of(&survey).0;
    assert_eq!(json["runs"][0]["posts"][3]["kind"], "line");
}
