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
