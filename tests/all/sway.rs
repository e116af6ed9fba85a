//! How fast posts sway by themselves, at least, and when that is not checked.

use crate::support::{json_of, run_on, run_with};
use serde_json::Value;

const PIPE: &str = "diameter = \"2.875 in\"\nnominal_wall = \"0.203 in\"\nyield = \"30 ksi\"";
const SAND: &str = "soil = { density = \"medium\" }";
const FOOTING: &str = "footing = { shape = \"round\", width = \"12 in\", depth = \"42 in\" }";

/// Six bays of ten feet of chain link of 1-3/4 in and 9 gauge, without rails.
fn survey(height: &str, post: &str, site: &str, run: &str) -> String {
    format!(
        "survey = 1\n[site]\nwind_code = \"asce7-16\"\nwind_speed = \"115 mph\"\nexposure = \"C\"\n{site}\n\
         [post.line]\n{post}\n[[run]]\nname = \"north\"\nheight = \"{height}\"\nbays = [\"6 x 10 ft\"]\n\
         ends = \"free\"\nchain_link = {{ mesh = \"1-3/4 in\", wire = \"9 gauge\" }}\n{run}\n"
    )
}

/// The third post, and its part of sway.
fn inner(survey: &str) -> (Value, Value) {
    let post = json_of(survey).0["runs"][0]["posts"][2].clone();
    let parts = post["parts"].as_array().unwrap();
    let sway = parts.iter().find(|part| part["part"] == "sway in gusts").unwrap().clone();
    (post, sway)
}

fn near(found: &Value, wanted: f64) {
    let found = found.as_f64().unwrap();
    assert!((found / wanted - 1.0).abs() < 5e-5, "{found} {wanted}");
}

#[test]
fn a_bare_post_sways_by_its_own_weight_that_of_its_mesh_and_the_give_of_its_foot() {
    // By hand, in pounds and inches: 490 lb/ft³ × 1.7041 in² = 5.799 lb/ft of pipe; of mesh 490 π 0.148² / (2 × 1.898 × 144)
    // = 0.7402 lb/ft², 7.402 lb/ft over ten feet; 29e6 × 1.4441 = 4.1879e7 lb in²;
    // y = 13.201/12 × 120⁴ / (12 × 4.1879e7) = 0.45391 in; √(386.09 / 0.45391) / 2π = 4.6417 Hz.
    // The foot: 92.5 × 42⁴ / (36 + 24 × 42/60) / 2.5 = 2.1805e6 lb in; it adds 13.201/12 × 120³ / (3 × 2.1805e6) =
    // 0.29060 in; √(386.09 / 0.74451) / 2π = 3.6244 Hz.
    let (post, sway) = inner(&survey("10 ft", PIPE, SAND, FOOTING));
    near(&post["frequency_clamped_hz"], 4.6417);
    near(&post["frequency_hz"], 3.6244);
    near(&sway["ratio"], 1.0 / 3.6244);
    assert_eq!((sway["flag"].as_str(), sway["unit"].as_str()), (Some("within"), Some("Hz")));
    // It is no load: the post's ratio is not that of its sway.
    assert_eq!(post["limited_by"], "post bending");
}

#[test]
fn cloth_sways_along_with_its_weight_and_with_the_air() {
    // 18 oz/yd² is 0.125 lb/ft²: 1.25 lb/ft more; the air takes three tenths off.
    let cloth = "screen = { solidity = 0.9, bottom = \"0 ft\", height = \"10 ft\" }";
    let (post, _) = inner(&survey("10 ft", PIPE, "", cloth));
    near(&post["frequency_clamped_hz"], 0.7 * 4.6417 * (13.201_f64 / 14.451).sqrt());
}

#[test]
fn without_footing_or_kind_of_soil_sway_is_not_checked_and_says_what_to_ask() {
    for (site, run, asks) in [
        (SAND, "", "footing"),
        (SAND, "footing = { shape = \"round\", width = \"12 in\", depth = \"unknown\" }", "footing"),
        ("soil = { class = \"sand\" }", FOOTING, "how dense"),
    ] {
        let (post, sway) = inner(&survey("10 ft", PIPE, site, run));
        near(&post["frequency_clamped_hz"], 4.6417);
        assert!(post["frequency_hz"].is_null() && sway["ratio"].is_null());
        assert_eq!((&sway["flag"], &post["limit_gust_is"]), (&"not checked".into(), &"at most".into()));
        assert!(sway["why"].as_str().unwrap().contains(asks), "{sway}");
    }
    let given = "moment = \"3 kip-ft\"\nface_width = \"3 in\"\nmoment_is = \"design\"";
    let (post, sway) = inner(&survey("10 ft", given, SAND, FOOTING));
    assert!(post["frequency_clamped_hz"].is_null());
    assert!(sway["why"].as_str().unwrap().contains("only what it carries is given"), "{sway}");
}

#[test]
fn a_post_that_sways_more_slowly_than_once_a_second_is_not_checked_whatever_it_carries() {
    // Stout posts of 24 ft: frequency goes with one over the square of the height.
    let (post, sway) = inner(&survey("24 ft", PIPE, "", ""));
    near(&post["frequency_clamped_hz"], 4.6417 / 2.4 / 2.4);
    assert_eq!(sway["flag"], "not checked");
    assert!(sway["why"].as_str().unwrap().contains("once a second"), "{sway}");
    let text = run_on("-", &survey("24 ft", PIPE, "", "")).text;
    let first = text.split("\n\n").find(|block| block.contains("NOT CHECKED")).unwrap();
    assert!(first.contains("sway in gusts"), "{first}");
}

#[test]
fn the_workings_tell_how_fast_a_post_sways() {
    let with = |site: &str, run: &str| {
        run_with(&["check", "-", "--workings", "north/3"], &survey("10 ft", PIPE, site, run)).text
    };
    let known = with(SAND, FOOTING);
    assert!(known.contains("How fast the post sways by itself, at least") && known.contains("3.624 Hz"));
    let unknown = with("", "");
    assert!(unknown.contains("4.642 Hz") && unknown.contains("Sway is not checked"), "{unknown}");
}
