//! Posts that are no round tube: square tube, a modulus, a moment, timber; and the two formats of strength.

use crate::support::{json_of, run_on};
use serde_json::Value;

const TUBE: &str = "diameter = \"2.875 in\"\nnominal_wall = \"0.203 in\"\nyield = \"30 ksi\"";

/// Twelve bays of closed mesh on court fabric between posts of one kind, with what the site says beside.
fn survey(post: &str, site: &str) -> String {
    format!(
        r#"survey = 1
units = "us"
[site]
wind_code = "asce7-16"
wind_speed = "115 mph"
exposure = "C"
{site}
[post.one]
{post}
[[run]]
name = "run"
height = "10 ft"
chain_link = {{ mesh = "1-3/4 in", wire = "9 gauge" }}
line_post = "one"
end_post = "one"
bays = ["12 x 10 ft"]
ends = "free"
screen = {{ solidity = 0.95, bottom = "0 ft", height = "10 ft" }}
"#
    )
}

/// The second post of the run.
fn second_post(post: &str, site: &str) -> Value {
    let (json, code) = json_of(&survey(post, site));
    assert_eq!(code, 1);
    json["runs"][0]["posts"][1].clone()
}

/// What check prints, without its line ends.
fn in_one_line(survey: &str) -> String {
    run_on("-", survey).text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn part<'p>(post: &'p Value, name: &str) -> &'p Value {
    post["parts"].as_array().unwrap().iter().find(|part| part["part"] == name).unwrap()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

fn near(one: f64, other: f64, to: f64) {
    assert!((one / other - 1.0).abs() <= to, "{one} is not {other}");
}

#[test]
fn allowable_stress_takes_six_tenths_of_the_wind_and_comes_out_a_tenth_lower() {
    let (lrfd, asd) = (second_post(TUBE, ""), second_post(TUBE, "design = \"asd\""));
    assert_eq!(second_post(TUBE, "design = \"lrfd\""), lrfd);
    let bending = |post| part(post, "post bending").clone();
    let (strength, stress) = (bending(&lrfd), bending(&asd));
    near(number(&stress["demand"]), 0.6 * number(&strength["demand"]), 1e-12);
    near(number(&stress["capacity"]), number(&strength["capacity"]) / (0.9 * 1.67), 1e-12);
    near(number(&strength["ratio"]) / number(&stress["ratio"]), 1.0 / (0.9 * 0.6 * 1.67), 1e-12);
    // The moment at grade is the wind's own and knows no format.
    assert_eq!(lrfd["base_moment_n_m"], asd["base_moment_n_m"]);
    let said = in_one_line(&survey(TUBE, "design = \"asd\""));
    assert!(said.contains("0.6 of the wind") && said.contains("11 % higher"), "{said}");
    assert!(said.contains("exposure C · allowable stress design"), "{said}");
}

#[test]
fn the_limit_gust_and_the_ratio_hold_the_identity_in_both_formats() {
    for site in ["", "design = \"asd\""] {
        let post = second_post(TUBE, site);
        let gust = number(&post["limit_gust_m_s"]) / (115.0 * 0.44704);
        let ratio = number(&part(&post, "post bending")["ratio"]);
        near(gust * gust * ratio, 0.85, 1e-9);
    }
}

#[test]
fn a_post_given_by_the_moment_of_a_tube_bends_as_that_tube_and_its_shear_is_not_checked() {
    let tube = second_post(TUBE, "");
    let capacity = number(&part(&tube, "post bending")["capacity"]);
    for (is, share) in [("design", 1.0), ("allowable", 1.0 / (0.9 * 1.67))] {
        let given = second_post(
            &format!(
                "moment = \"{} N m\"\nmoment_is = \"{is}\"\nface_width = \"2.875 in\"",
                capacity * share
            ),
            "",
        );
        let format = if is == "design" { "" } else { "design = \"asd\"" };
        let same = second_post(TUBE, format);
        near(
            number(&part(&given, "post bending")["ratio"]),
            number(&part(&same, "post bending")["ratio"]),
            1e-9,
        );
        near(number(&given["base_moment_n_m"]), number(&tube["base_moment_n_m"]), 1e-12);
        let shear = part(&given, "post shear");
        assert_eq!(shear["flag"], "not checked");
        assert!(shear["ratio"].is_null() && shear["why"].as_str().unwrap().contains("moment"));
    }
}

#[test]
fn a_post_given_by_its_modulus_yields_at_its_edge() {
    let post = second_post("modulus = \"1.08 in3\"\nyield = \"50 ksi\"\nface_width = \"2.25 in\"", "");
    // 0.9 × 1.08 in³ × 50 000 psi ÷ 12 = 4 050 lb-ft.
    near(number(&part(&post, "post bending")["capacity"]), 4050.0 * 1.355_817_948_331_4, 1e-12);
    assert_eq!(part(&post, "post shear")["flag"], "not checked");
    let said =
        in_one_line(&survey("modulus = \"1.08 in3\"\nyield = \"50 ksi\"\nface_width = \"2.25 in\"", ""));
    assert!(said.contains("Twist of an open post") && said.contains("shear of some posts"), "{said}");
    assert!(said.contains("strength of posts by AISI S100-16."), "{said}");
}

#[test]
fn square_tube_is_judged_by_its_own_clauses_and_a_thicker_wall_lifts_the_gust() {
    let post = |wall: &str| {
        second_post(&format!("width = \"2.5 in\"\nmeasured_wall = \"{wall}\"\nyield = \"46 ksi\""), "")
    };
    let thin = post("0.125 in");
    assert!(part(&thin, "post bending")["rule"].as_str().unwrap().starts_with("AISC 360-16 F7"));
    assert!(part(&thin, "post shear")["rule"].as_str().unwrap().starts_with("AISC 360-16 G4"));
    assert!(number(&post("0.188 in")["limit_gust_m_s"]) > number(&thin["limit_gust_m_s"]));
}

/// What is told of a survey with this post, in one line, and how many mistakes.
fn told(post: &str, site: &str) -> (String, usize) {
    let out = run_on("-", &survey(post, site));
    assert_eq!((out.code, out.text.as_str()), (2, ""), "{}", out.err);
    (out.err.split_whitespace().collect::<Vec<_>>().join(" "), out.err.matches("standard input").count())
}

#[test]
fn each_mistake_in_a_post_is_told_once_with_its_line_and_what_to_do() {
    const MODULUS: &str = "modulus = \"1.08 in3\"\nyield = \"50 ksi\"\nface_width = \"2.25 in\"";
    const MOMENT: &str = "moment = \"2100 lb-ft\"\nmoment_is = \"design\"\nface_width = \"2.25 in\"";
    let without = |all: &str, key: &str| -> String {
        let kept: Vec<&str> = all.lines().filter(|line| !line.starts_with(key)).collect();
        assert!(kept.len() + 1 == all.lines().count());
        kept.join("\n")
    };
    for (post, says) in [
        (format!("{TUBE}\nwidth = \"3 in\""), vec!["has diameter and width", "keep one"]),
        (format!("{MODULUS}\nmoment = \"2100 lb-ft\""), vec!["modulus and moment"]),
        (
            format!("{MODULUS}\nnominal_wall = \"0.1 in\""),
            vec!["nominal_wall does not go with modulus", "line 12"],
        ),
        (format!("{MOMENT}\nyield = \"50 ksi\""), vec!["yield does not go with moment"]),
        (format!("{TUBE}\nface_width = \"3 in\""), vec!["face_width does not go with diameter"]),
        (without(MODULUS, "yield"), vec!["has no yield", "mill's paper"]),
        (without(MODULUS, "face_width"), vec!["has no face_width", "the wind sees"]),
        (without(MOMENT, "moment_is"), vec!["has no moment_is", "allowable"]),
        (MOMENT.replace("\"design\"", "\"desing\""), vec!["none of design, allowable", "perhaps \"design\""]),
        (MODULUS.replace("in3", "in2"), vec!["modulus:", "line 9"]),
        (MODULUS.replace("\"1.08 in3\"", "1.08"), vec!["bare number", "in³"]),
        (MODULUS.replace("1.08 in3", "unknown"), vec!["modulus of [post.one] cannot be unknown"]),
        (MODULUS.replace("1.08 in3", "-1.08 in3"), vec!["must be above 0"]),
        (MOMENT.replace("2100 lb-ft", "2100 psf"), vec!["moment:"]),
        (
            "width = \"3 in\"\nnominal_wall = \"unknown\"".to_owned(),
            vec!["no catalogue of square tube", "caliper"],
        ),
        ("width = \"3 in\"\nmeasured_wall = \"1.6 in\"".to_owned(), vec!["1.6 in", "measure again"]),
        ("width = \"3 in\"\nnominal_wall = \"0.01 in\"".to_owned(), vec!["h/t", "AISC 360-16"]),
        ("widht = \"3 in\"\nnominal_wall = \"0.1 in\"".to_owned(), vec!["no key widht", "perhaps width"]),
        (format!("{TUBE}\ndesign = \"asd\""), vec!["belongs in [site]"]),
    ] {
        let (text, mistakes) = told(&post, "");
        for said in says {
            assert!(text.contains(said), "{post}\ndoes not say \"{said}\":\n{text}");
        }
        assert_eq!(mistakes, 1, "{post}\n{text}");
    }
    let (text, mistakes) = told(TUBE, "design = \"lfrd\"");
    assert!(text.contains("none of lrfd, asd") && text.contains("perhaps \"lrfd\""), "{text}");
    assert_eq!(mistakes, 1);
}

/// Pound-inches in newton-metres.
const LB_IN: f64 = 4.448_221_615_260_5 * 0.0254;

#[test]
fn timber_is_held_against_six_tenths_of_the_wind_with_the_moments_of_its_tables() {
    let carries = |post: &str| {
        let post = second_post(post, "");
        let bending = part(&post, "post bending");
        near(number(&bending["demand"]), 0.6 * number(&post["base_moment_n_m"]), 1e-12);
        assert!(bending["rule"].as_str().unwrap().starts_with("NDS 2018"), "{bending}");
        assert_ne!(part(&post, "post shear")["flag"], "not checked");
        (number(&bending["capacity"]) / LB_IN).round()
    };
    let of = |size: &str, species: &str, grade: &str, rest: &str| {
        carries(&format!("timber = \"{size}\"\nspecies = \"{species}\"\ngrade = \"{grade}\"\n{rest}"))
    };
    // Figures worked by hand from the tables: F_b' S, to the tens they are printed to.
    let tens = |moment: f64| (moment / 10.0).round() * 10.0;
    assert_eq!(tens(of("4x4", "Southern Pine", "No.2", "service = \"dry\"\nincised = \"no\"")), 12_580.0);
    assert_eq!(tens(of("4x4", "Douglas Fir-Larch", "No.2", "incised = \"no\"")), 13_120.0);
    assert_eq!(tens(of("4x4", "Douglas Fir-Larch", "No.2", "incised = \"yes\"")), 10_500.0);
    assert_eq!(tens(of("6x6", "Southern Pine", "No.2", "incised = \"no\"")), 37_710.0);
    assert_eq!(tens(of("5.5 in", "douglas fir-larch", "no.2", "incised = true")), 26_620.0);
}

#[test]
fn what_is_not_known_of_a_timber_is_worked_at_both_ends() {
    let post = second_post("timber = \"6x6\"", "");
    let bending = part(&post, "post bending");
    // At worst incised Douglas Fir-Larch No.2; at best select structural of either species.
    assert_eq!((number(&bending["capacity"]) / LB_IN / 10.0).round(), 2662.0);
    assert!(number(&post["limit_gust_best_m_s"]) > number(&post["limit_gust_m_s"]));
    let said = in_one_line(&survey("timber = \"6x6\"", ""));
    assert!(said.contains("species and grade of posts \"one\", by their grade stamp"), "{said}");
    assert!(said.contains("rows of small slits"), "{said}");
    assert!(said.contains("memory"), "{said}");
    let pine = in_one_line(&survey("timber = \"6x6\"\nspecies = \"Southern Pine\"\ngrade = \"No.2\"", ""));
    assert!(!pine.contains("slits") && !pine.contains("grade stamp"), "{pine}");
}

#[test]
fn each_mistake_in_a_timber_is_told_once() {
    for (post, says) in [
        ("timber = \"8x8\"", "no dressed size of a \"8x8\""),
        ("timber = \"unknown\"", "cannot be unknown: measure it"),
        ("timber = \"4.2 in\"", "the catalogue has no such timber of this size"),
        ("timber = \"6x6\"\nspecies = \"Suthern Pine\"", "perhaps \"Southern Pine\""),
        ("timber = \"6x6\"\ngrade = \"No.7\"", "the catalogue has No.1, No.2, Select Structural"),
        ("timber = \"6x6\"\nservice = \"damp\"", "none of dry, wet, unknown"),
        ("timber = \"6x6\"\nnominal_wall = \"0.2 in\"", "nominal_wall does not go with timber"),
        ("timber = 6", "bare number"),
        ("timber = \"6 lbf\"", "timber:"),
    ] {
        let (text, mistakes) = told(post, "");
        assert!(text.contains(says), "{post}\ndoes not say \"{says}\":\n{text}");
        assert_eq!(mistakes, 1, "{post}\n{text}");
    }
}
