//! The engineer's calculation.

use crate::support::run;

const EXAMPLE: &str = "examples/tarnwick-green.toml";

#[test]
fn the_engineers_calculation_has_each_formula_in_mathml_with_numbers_clause_and_source() {
    let out = run(&["sheet", EXAMPLE, "--for", "engineer"]);
    assert_eq!(out.code, 1, "{}", out.err);
    let workings = run(&["check", EXAMPLE, "--workings"]);
    for said in [
        "<math display=\"block\">",
        "<msub><mi>K</mi><mi>z</mi></msub>",
        "<mfrac>",
        "ASCE 7-16 26.10.2, Eq. 26.10-1",
        "AISC 360-16 F8, Eq. F8-1",
        "the page was not read",
        "NOT CHECKED",
        "role=\"img\"",
        "Engineer",
    ] {
        assert!(out.text.contains(said), "does not have {said}");
    }
    // The same steps as the terminal's: one formula a worked formula.
    let formulas = workings
        .text
        .lines()
        .filter(|line| line.starts_with("  ") && !line.starts_with("   ") && line.contains(" = "))
        .count();
    let steps = out.text.matches("class=\"step\"").count();
    assert!(steps > 200 && formulas > 200, "{steps} {formulas}");
    let results = workings.text.matches("      = ").count();
    assert!(results > 0);
}

#[test]
fn on_the_frame_the_engineer_sees_the_table_of_the_text_the_braces_and_the_workings() {
    const BRACED: &str = "examples/braced.toml";
    let out = run(&["sheet", BRACED, "--for", "engineer", "--frame"]);
    assert_eq!((out.err.as_str(), out.code), ("", 1));
    let text = run(&["check", BRACED, "--frame", "--all"]).text;
    // Each row of posts on the frame in the text stands on the sheet cell by cell.
    let table = text.split("by hand lb-ft").nth(1).expect("the text has a table of the frame");
    let rows: Vec<Vec<&str>> = table
        .lines()
        .map(|line| line.split("  ").map(str::trim).filter(|cell| !cell.is_empty()).collect::<Vec<_>>())
        .filter(|cells| cells.len() == 9)
        .take(8)
        .collect();
    assert_eq!(rows.len(), 8, "{table}");
    for row in rows {
        let cells: String = row[1..].iter().map(|cell| format!("<td class=\"figure\">{cell}</td>")).collect();
        let (figures, _) = cells.rsplit_once("<td").unwrap();
        assert!(out.text.contains(figures), "{row:?} does not stand on the sheet");
    }
    for said in [
        "Posts and rails as one frame",
        "stiff feet lb-ft",
        "soft feet lb-ft",
        "% of hand",
        "worst with",
        "back brace of post 1: ",
        "guy of post 7: ",
        "pulls its own footing up with",
        "On the frame the top rail bends at most with",
        "On the frame of north end, east side",
        "Demand over capacity on the frame",
    ] {
        assert!(out.text.contains(said), "does not have {said}");
    }
    let plain = run(&["sheet", BRACED, "--for", "engineer"]).text;
    assert!(plain.contains("11 % larger") && !plain.contains("stiff feet"));
    assert!(!out.text.contains("11 % larger"));
}
