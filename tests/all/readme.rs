//! What the README shows is what the program prints.

use crate::support::run;
use std::fs;

fn block(name: &str) -> String {
    let text = fs::read_to_string("README.md").unwrap();
    let (open, close) = (format!("<!-- {name} -->\n"), format!("<!-- /{name} -->"));
    let from = text.find(&open).unwrap_or_else(|| panic!("no block {name}")) + open.len();
    let to = text.find(&close).unwrap();
    text[from..to].to_owned()
}

#[test]
fn the_answer_in_the_readme_is_the_answer_of_the_command() {
    let shown = block("answer");
    let shown = shown.trim().trim_start_matches("```text").trim_end_matches("```").trim();
    let printed = run(&["check", "examples/tarnwick-green.toml", "--brief"]).text;
    assert!(shown == printed.trim(), "run .ci/generated: the README shows another answer");
}

#[test]
fn the_status_in_the_readme_is_that_of_the_cases() {
    let printed = run(&["verify", "--status"]).text;
    assert!(block("status").trim() == printed.trim(), "run .ci/generated: the README shows another status");
}

#[test]
fn the_charts_are_those_the_program_draws() {
    let example = "examples/tarnwick-green.toml";
    let cloths = ["charts", example, "--cloth", "none", "--cloth", "open mesh", "--cloth", "closed mesh"];
    for (file, arguments) in [
        ("charts/limit-gusts.svg", &["charts", example][..]),
        ("charts/cloths.svg", &cloths[..]),
        ("charts/ours-over-printed.svg", &["charts", "--cases"][..]),
    ] {
        let drawn = run(arguments).text;
        for said in ["role=\"img\"", "<title>", "<desc>", "viewBox"] {
            assert!(drawn.contains(said), "{file} has no {said}");
        }
        assert!(fs::read_to_string(file).unwrap() == drawn, "run .ci/generated: {file} is another drawing");
    }
}
