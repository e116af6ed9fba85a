//! Order lists: counted by hand, held against themselves in three forms, and refused where the survey is wrong.

use crate::support::{Output, run, run_with};
use fencegust::answers::{Amount, What, order as order_of};
use fencegust::survey::Survey;
use fencegust::units::{Quantity, feet};
use proptest::prelude::*;
use serde_json::Value;
use std::collections::BTreeMap;
use std::fs;
use tempfile::tempdir;

const FOUR_EDGES: &str =
    r#"{ kind = "ties", strength = "50 lbf", spacing = "12 in", rows = ["top", "bottom", "sides"] }"#;

/// One run of court fence: posts 2.875 in, 10 ft high, cloth of 9 ft from 1 ft up.
fn survey(bays: &str, fastening: &str, order: &str) -> String {
    format!(
        r#"survey = 1
[job]
title = "Tarnwick Green court 1"
[site]
wind_code = "asce7-16"
wind_speed = "115 mph"
exposure = "C"
[post.line]
diameter = "2.875 in"
nominal_wall = "0.203 in"
yield = "30 ksi"
[order]
{order}
[all_runs]
height = "10 ft"
chain_link = {{ mesh = "1-3/4 in", wire = "9 gauge" }}
top_rail = {{ diameter = "1.625 in" }}
bottom_rail = {{ diameter = "1.625 in" }}
line_post = "line"
end_post = "line"
ends = "free"
[[run]]
name = "north end"
bays = [{bays}]
screen = {{ cloth = "closed mesh", bottom = "1 ft", height = "9 ft", fastening = {fastening} }}
"#
    )
}

fn order(survey: &str, format: &str) -> Output {
    run_with(&["order", "-", "--format", format], survey)
}

fn json(survey: &str) -> Value {
    let out = order(survey, "json");
    assert!(out.err.is_empty(), "{}", out.err);
    serde_json::from_str(&out.text).unwrap()
}

fn item<'a>(items: &'a Value, name: &str) -> &'a Value {
    items.as_array().unwrap().iter().find(|item| item["item"] == name).unwrap_or_else(|| panic!("{name}"))
}

fn table(text: &str) -> Vec<BTreeMap<String, String>> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let head = reader.headers().unwrap().clone();
    let row =
        |row: csv::StringRecord| head.iter().zip(row.iter()).map(|(a, b)| (a.into(), b.into())).collect();
    reader.records().map(|record| row(record.unwrap())).collect()
}

#[test]
fn sixty_by_nine_feet_tied_all_round_at_twelve_inches_takes_138_ties_and_their_spares() {
    // Rows: 61 each along 60 spaces; sides: 8 each between the rows. 2 × 61 + 2 × 8 = 138.
    let json = json(&survey("\"6 x 10 ft\"", FOUR_EDGES, "end_gap = \"0 in\"\nspares = \"10 %\""));
    let ties = item(&json["sums"], "ties");
    assert_eq!(ties["needed"], 138);
    assert_eq!(ties["quantity"], 152);
    assert_eq!(item(&json["sums"], "grommets")["quantity"], 138);
    // From face to face of two posts of 2.875 in.
    let panel = item(&json["sums"], "panel");
    assert!((panel["length_m"].as_f64().unwrap() - (18.288 - 0.073_025)).abs() < 1e-9);
    assert!((panel["height_m"].as_f64().unwrap() - 2.7432).abs() < 1e-9);
    // Six inches off each end take a space off each row.
    let usual = self::json(&survey("\"6 x 10 ft\"", FOUR_EDGES, ""));
    assert_eq!(item(&usual["sums"], "ties")["needed"], 136);
}

#[test]
fn plain_lacing_on_a_rail_of_1_5_8_in_takes_1_17_feet_a_foot_and_locked_more_than_twice_that() {
    let laced = r#"{ kind = "lacing", rope = "1/4 in polypropylene", spacing = "12 in", rows = ["top", "bottom", "sides"] }"#;
    let rope = |style: &str| {
        let order = format!("end_gap = \"0 in\"\nlacing = \"{style}\"\nknot_end = \"0 in\"\nrope_waste = 0");
        let json = json(&survey("\"6 x 10 ft\"", laced, &order));
        let screen = &json["surveys"][0]["screens"][0];
        let ropes: Vec<Value> = screen["items"]
            .as_array()
            .unwrap()
            .iter()
            .filter(|item| item["item"] == "rope")
            .cloned()
            .collect();
        let rows: Vec<&str> = ropes.iter().map(|rope| rope["row"].as_str().unwrap()).collect();
        assert_eq!(rows, ["top", "bottom", "sides"]);
        // One piece a bay along each row, one a side.
        let pieces: Vec<u64> = ropes.iter().map(|rope| rope["pieces"].as_u64().unwrap()).collect();
        assert_eq!(pieces, [6, 6, 2]);
        // An inner bay of 10 ft is the longest piece: rope a foot of edge.
        ropes[0]["longest_piece_m"].as_f64().unwrap() / 3.048
    };
    let plain = rope("plain");
    assert!((plain - 1.17).abs() < 0.005, "{plain}");
    assert!(rope("locked") > 2.0 * plain);
}

#[test]
fn rope_for_a_row_without_a_rail_or_of_unknown_thickness_is_told_and_not_made_up() {
    let laced = |rope: &str| {
        format!(r#"{{ kind = "lacing", rope = "{rope}", spacing = "12 in", rows = ["top", "middle"] }}"#)
    };
    let out = order(&survey("\"6 x 10 ft\"", &laced("1/4 in polypropylene"), ""), "text");
    assert!(out.text.contains("row middle: the survey has no rail there"), "{}", out.text);
    assert!(out.text.contains("row top"), "{}", out.text);
    assert!(!out.text.contains("rope, 0.25 in polypropylene, row middle"), "{}", out.text);
    let out = order(&survey("\"6 x 10 ft\"", &laced("unknown"), ""), "text");
    assert!(out.text.contains("rope is NOT COUNTED"), "{}", out.text);
    assert!(!out.text.contains("pieces"), "{}", out.text);
}

#[test]
fn unknown_fastening_and_spacing_are_told_in_the_first_glance() {
    for (fastening, told) in [
        ("\"unknown\"", "what holds the cloth is unknown"),
        (r#"{ kind = "ties", spacing = "unknown", rows = ["top"] }"#, "the spacing of the ties is unknown"),
    ] {
        let out = order(&survey("\"6 x 10 ft\"", fastening, ""), "text");
        let glance = out.text.split("Screen by screen").next().unwrap();
        let flat = glance.split_whitespace().collect::<Vec<_>>().join(" ");
        let told = format!("◇ north end: {told}: grommets, ties and rope are NOT COUNTED");
        assert!(flat.contains(&told), "{}", out.text);
        assert!(glance.contains("panel of closed mesh"), "{glance}");
        assert!(!glance.contains("grommets\n") && !out.text.contains("and spares"), "{}", out.text);
    }
}

#[test]
fn a_spacing_between_two_is_counted_at_the_closer_and_said() {
    let range = r#"{ kind = "ties", spacing = "12 in .. 18 in", rows = ["top"] }"#;
    let json = json(&survey("\"6 x 10 ft\"", range, "end_gap = \"0 in\""));
    // 59 ft 9-1/8 in: 60 spaces of 12 in, 40 of 18 in.
    assert_eq!(item(&json["sums"], "ties")["needed"], 61);
    let notes = json["surveys"][0]["screens"][0]["notes"].to_string();
    assert!(notes.contains("it is 41 grommets"), "{notes}");
}

#[test]
fn two_hundred_feet_are_four_panels_of_five_bays_that_end_at_posts() {
    let json = json(&survey("\"20 x 10 ft\"", FOUR_EDGES, ""));
    let panels = json["surveys"][0]["screens"][0]["panels"].as_array().unwrap();
    let bays: Vec<(u64, u64)> = panels
        .iter()
        .map(|panel| (panel["first_bay"].as_u64().unwrap(), panel["last_bay"].as_u64().unwrap()))
        .collect();
    assert_eq!(bays, [(1, 5), (6, 10), (11, 15), (16, 20)]);
    for panel in panels {
        assert!(panel["length_m"].as_f64().unwrap() <= 60.0 * 0.3048);
    }
    // The two at the ends are of one size, and so are the two between.
    let sums = json["sums"].as_array().unwrap();
    let counts: Vec<&Value> =
        sums.iter().filter(|sum| sum["item"] == "panel").map(|sum| &sum["quantity"]).collect();
    assert_eq!(counts, [2, 2]);
    // A longer one that the maker makes.
    let told = self::json(&survey("\"20 x 10 ft\"", FOUR_EDGES, "longest_panel = \"100 ft\""));
    assert_eq!(told["surveys"][0]["screens"][0]["panels"].as_array().unwrap().len(), 2);
}

#[test]
fn a_gate_has_a_panel_of_its_own() {
    let json = json(&survey("\"3 x 10 ft\", \"gate 4 ft\", \"2 x 10 ft\"", FOUR_EDGES, ""));
    let panels = json["surveys"][0]["screens"][0]["panels"].as_array().unwrap();
    let ends: Vec<u64> = panels.iter().map(|panel| panel["last_bay"].as_u64().unwrap()).collect();
    assert_eq!(ends, [3, 4, 6]);
    // Four feet between centres, less half of two posts and 6 in at either side.
    let gate = panels[1]["length_m"].as_f64().unwrap() / 0.0254;
    assert!((gate - (48.0 - 2.875 - 12.0)).abs() < 1e-6, "{gate}");
}

#[test]
fn feet_and_metres_give_the_same_counts() {
    let us = survey("\"9 ft 8 in\", \"14 x 10 ft\", \"6 ft 4 in\"", FOUR_EDGES, "");
    let si = survey("\"2946.4 mm\", \"14 x 3.048 m\", \"1930.4 mm\"", FOUR_EDGES, "")
        .replace("survey = 1\n", "survey = 1\nunits = \"si\"\n")
        .replace("2.875 in", "73.025 mm")
        .replace("\"12 in\"", "\"304.8 mm\"")
        .replace("\"9 ft\"", "\"2.7432 m\"")
        .replace("\"1 ft\"", "\"30.48 cm\"");
    let (us, si) = (json(&us), json(&si));
    let (one, other) = (us["sums"].as_array().unwrap(), si["sums"].as_array().unwrap());
    assert_eq!(one.len(), other.len());
    let mut counts = 0;
    for (one, other) in one.iter().zip(other) {
        assert_eq!((&one["item"], &one["needed"]), (&other["item"], &other["needed"]));
        if !one["quantity"].is_null() {
            assert_eq!(one["quantity"], other["quantity"]);
            counts += 1;
        }
    }
    assert_eq!(counts, 5);
}

const PRICED: &str = "currency = \"crowns\"\ncloth_price = \"1.37 per ft2\"\ntie_price = \"0.13 each\"\n\
                      grommet_price = 0.41\nrope_price = \"0.09 per ft\"\ncrew_time = \"40 min\"";

#[test]
fn text_csv_and_json_agree_and_each_sum_is_that_of_its_rows_over_several_surveys() {
    let folder = tempdir().unwrap();
    let (tied, laced) = (folder.path().join("tied.toml"), folder.path().join("laced.toml"));
    fs::write(&tied, survey("\"9 ft 8 in\", \"14 x 10 ft\"", FOUR_EDGES, PRICED)).unwrap();
    let rope =
        r#"{ kind = "lacing", rope = "1/4 in nylon", spacing = "10 in", rows = ["top", "bottom", "sides"] }"#;
    fs::write(&laced, survey("\"9 ft 8 in\", \"14 x 10 ft\"", rope, PRICED)).unwrap();
    let (tied, laced) = (tied.to_str().unwrap(), laced.to_str().unwrap());
    let of = |format: &str| run(&["order", tied, laced, tied, "--format", format]);
    let (text, csv, json) = (of("text"), of("csv"), of("json"));
    let json: Value = serde_json::from_str(&json.text).unwrap();
    let rows = table(&csv.text);
    let sums = json["sums"].as_array().unwrap();
    let mut rows_in_sums = 0;
    let glance = text.text.split("Screen by screen").next().unwrap();
    for sum in sums {
        let like = |row: &&BTreeMap<String, String>| {
            let figure = |key: &str| row[key].parse::<f64>().ok();
            let size = sum["length_m"].as_f64().map(|length| length / 0.3048);
            row["item"] == sum["item"].as_str().unwrap()
                && row["of"] == sum["of"].as_str().unwrap_or_default()
                && row["row"] == sum["row"].as_str().unwrap_or_default()
                && figure("length_ft").zip(size).is_none_or(|(one, other)| (one - other).abs() < 1e-6)
        };
        let rows: Vec<_> = rows.iter().filter(like).collect();
        assert!(!rows.is_empty(), "{sum}");
        rows_in_sums += rows.len();
        let total = |key: &str| rows.iter().filter_map(|row| row[key].parse::<f64>().ok()).sum::<f64>();
        let quantity = sum["quantity"]
            .as_f64()
            .or_else(|| sum["quantity_m"].as_f64().map(|metres| metres / 0.3048))
            .or_else(|| sum["quantity_m2"].as_f64().map(|area| area / (0.3048 * 0.3048)))
            .unwrap();
        assert!((total("quantity") - quantity).abs() < 1e-6, "{sum}");
        // Whole feet are ordered, so the printed figure is the figure.
        assert!((quantity - quantity.round()).abs() < 1e-6, "{sum}");
        let unit = match (sum["quantity_m"].is_null(), sum["quantity_m2"].is_null()) {
            (false, _) => " ft",
            (_, false) => " ft²",
            _ => "",
        };
        let printed = format!("{:.0}{unit}  ", quantity.round());
        let word = sum["of"].as_str().or_else(|| sum["item"].as_str()).unwrap();
        let line = |line: &str| {
            let line = line.trim_start().replace(',', "");
            line.starts_with(&printed) && line.contains(word)
        };
        assert!(glance.lines().any(line), "{printed}{word} of {sum} in\n{glance}");
        let cost = sum["cost"].as_f64();
        assert!((total("cost") - cost.unwrap_or(0.0)).abs() < 1e-6, "{sum}");
    }
    assert_eq!(rows_in_sums, rows.len());
    let all: f64 = sums.iter().filter_map(|sum| sum["cost"].as_f64()).sum();
    let costs = &json["costs"][0];
    assert_eq!(costs["currency"], "crowns");
    assert!((costs["money"].as_f64().unwrap() - all).abs() < 0.005);
    assert!(glance.replace(',', "").contains(&format!("crowns {all:.2} in all")), "{all} {glance}");
    // Three surveys of three panels each, 40 minutes a panel.
    assert!(glance.contains("crew: 6 h 0 min"), "{glance}");
}

#[test]
fn costs_and_crew_time_come_from_the_survey_alone() {
    let out = order(&survey("\"6 x 10 ft\"", FOUR_EDGES, ""), "text").text;
    assert!(out.contains("costs: none") && !out.contains("crew:"), "{out}");
    // 138 grommets at 0.5 are 69, 152 ties at 0.25 are 38.
    let priced = "end_gap = \"0 in\"\ncurrency = \"ducats\"\ngrommet_price = 0.5\ntie_price = \"0.25\"";
    let json = json(&survey("\"6 x 10 ft\"", FOUR_EDGES, priced));
    assert_eq!(json["costs"][0]["money"], 107.0);
    let out = order(&survey("\"6 x 10 ft\"", FOUR_EDGES, priced), "text").text;
    assert!(
        out.contains("ducats 107.00 in all") && out.contains("without a price, and not in it: cloth"),
        "{out}"
    );
}

#[test]
fn a_price_by_the_metre_is_the_price_by_the_foot() {
    let cost = |price: &str| {
        let json = json(&survey("\"6 x 10 ft\"", FOUR_EDGES, &format!("cloth_price = \"{price}\"")));
        item(&json["sums"], "cloth")["cost"].as_f64().unwrap()
    };
    // 59 ft − 2.875 in by 9 ft is 528.8 ft², ordered as 529.
    assert_eq!(cost("1.00 per ft2"), 529.0);
    assert!((cost("10.7639104167 per m2") - 529.0).abs() < 0.011);
    assert_eq!(cost("1.00/ft2"), 529.0);
}

#[test]
fn weight_is_the_makers_else_the_catalogues_and_is_said() {
    let with = |weight: &str| {
        survey("\"6 x 10 ft\"", FOUR_EDGES, "end_gap = \"0 in\"")
            .replace("cloth = \"closed mesh\"", &format!("cloth = \"closed mesh\", {weight}"))
    };
    // 59.76 ft × 9 ft at 8 oz/yd² of 16 oz and 9 ft²: 29.88 lbf.
    let given = item(&json(&with("weight = \"8 oz/yd2\""))["sums"], "cloth").clone();
    let pounds = |item: &Value, key: &str| item[key].as_f64().unwrap() / 4.448_221_615_260_5;
    assert!((pounds(&given, "weight_least_n") - 29.0).abs() < 1e-6, "{given}");
    assert!((pounds(&given, "weight_most_n") - 30.0).abs() < 1e-6, "{given}");
    let out = order(&with("face = \"inside\""), "text").text;
    assert!(out.contains("weighs 22 to 30 lbf") && out.contains("from memory"), "{out}");
    let unknown = with("solidity = 0.9").replace("\"closed mesh\"", "\"court cloth\"");
    assert!(order(&unknown, "text").text.contains("weight of the cloth is unknown"));
}

#[test]
fn no_cloth_is_no_order() {
    let bare = survey("\"6 x 10 ft\"", FOUR_EDGES, "");
    let from = bare.find("screen =").unwrap();
    let bare = format!("{}screen = \"none\"\n", &bare[..from]);
    let text = order(&bare, "text").text;
    assert!(text.contains("NOTHING TO ORDER") && !text.contains("panel"), "{text}");
    assert_eq!(table(&order(&bare, "csv").text).len(), 0);
    let json = json(&bare);
    assert_eq!(json["sums"].as_array().unwrap().len(), 0);
    assert!(json["crew_time_s"].is_null());
}

#[test]
fn what_the_check_says_stands_above_everything_that_is_ordered() {
    let out = order(&survey("\"6 x 10 ft\"", FOUR_EDGES, ""), "text");
    assert_eq!(out.code, 1);
    let (over, glance) =
        (out.text.find("■ DO NOT HANG").unwrap(), out.text.find("ORDER, all screens").unwrap());
    assert!(over < glance, "{}", out.text);
    assert!(out.text.find("whether the fence carries it").unwrap() < glance);
    let all_say = table(&order(&survey("\"6 x 10 ft\"", FOUR_EDGES, ""), "csv").text);
    assert!(!all_say.is_empty() && all_say.iter().all(|row| row["check_says"] == "over"));
    // Without a design wind nothing is checked, and no line says that anything is within.
    let calm = survey("\"6 x 10 ft\"", FOUR_EDGES, "").replace("\"115 mph\"", "\"unknown\"");
    let out = order(&calm, "text");
    assert!(out.text.contains("◇ DO NOT HANG YET") && !out.text.contains('●'), "{}", out.text);
    // Strong posts: what was checked is within, and still no word of approval.
    let strong = survey("\"6 x 10 ft\"", FOUR_EDGES, "")
        .replace("diameter = \"2.875 in\"\nnominal_wall = \"0.203 in\"", "section = \"pipe 4 std\"")
        .replace("\"115 mph\"", "\"20 mph\"")
        .replace("50 lbf", "900 lbf");
    let text = order(&strong, "text").text;
    assert!(text.contains("●") || text.contains("▲"), "{text}");
    for word in ["safe", "approved", "may be hung"] {
        assert!(!text.contains(word), "{text}");
    }
}

#[test]
fn a_list_fits_the_page_and_warns() {
    let text = order(&survey("\"20 x 10 ft\"", FOUR_EDGES, PRICED), "text").text;
    for line in text.lines() {
        assert!(line.chars().count() <= 72, "{line}");
    }
    for said in ["Nobody hangs cloth", "in wind", "buried utilities", "TAKEN, 6 in off each end"] {
        assert!(text.contains(said), "{said}: {text}");
    }
}

#[test]
fn names_that_begin_like_a_formula_stay_words() {
    let named = survey("\"6 x 10 ft\"", FOUR_EDGES, "currency = \"=1+1\"\ntie_price = 1")
        .replace("\"north end\"", "\"=SUM(A1)\"");
    let rows = table(&order(&named, "csv").text);
    assert!(rows.iter().all(|row| row["run"] == "'=SUM(A1)"));
    assert!(rows.iter().any(|row| row["currency"] == "'=1+1"));
}

/// The one message of a wrong survey.
fn refused(survey: &str) -> String {
    for format in ["text", "csv", "json"] {
        let out = order(survey, format);
        assert_eq!(out.code, 2, "{}\n{}", out.text, out.err);
        assert_eq!(out.text, "", "something was written");
        assert!(!out.err.contains("panicked"), "{}", out.err);
    }
    let err = order(survey, "text").err;
    assert_eq!(err.matches("standard input").count(), 1, "{err}");
    err
}

fn says(message: &str, all: &[&str]) {
    let flat = message.split_whitespace().collect::<Vec<_>>().join(" ");
    for said in all {
        assert!(flat.contains(said), "does not say \"{said}\":\n{message}");
    }
}

#[test]
fn wrong_surveys_are_refused_with_what_to_do() {
    let with = |order: &str| survey("\"6 x 10 ft\"", FOUR_EDGES, order);
    let held = |fastening: &str| survey("\"6 x 10 ft\"", fastening, "");
    says(
        &refused(&held(r#"{ kind = "ties", spacing = "9 ft 6 in", rows = ["sides"] }"#)),
        &["ties every 9 ft 6 in do not fit the row \"sides\"", "9 ft long"],
    );
    says(
        &refused(&held(r#"{ kind = "ties", spacing = "12 in", rows = ["top", "top"] }"#)),
        &["the row \"top\" is named twice"],
    );
    let no_rail = survey(
        "\"6 x 10 ft\"",
        r#"{ kind = "lacing", rope = "1/4 in polypropylene", spacing = "12 in", rows = ["top"] }"#,
        "",
    )
    .replace("top_rail = { diameter = \"1.625 in\" }\n", "");
    says(&refused(&no_rail), &["there is no rail to lace it to"]);
    says(&refused(&with("spares = -0.1")), &["line 13", "spares", "0 or more"]);
    says(&refused(&with("spares = 10")), &["spares of [order] is a share of 1 at most", "10 %"]);
    says(&refused(&with("longest_panel = \"0 ft\"")), &["longest_panel", "above 0"]);
    says(&refused(&with("longest_panel = \"8 ft\"")), &["bay 1", "the longest is 8 ft", "longest_panel"]);
    says(
        &refused(&survey("\"10 ft\"", FOUR_EDGES, "end_gap = \"5 ft\"")),
        &["nothing of the length", "end_gap"],
    );
    // A bay that the gap fills hangs with its neighbour.
    let json =
        json(&survey("\"1 ft\", \"5 x 10 ft\"", FOUR_EDGES, "end_gap = \"2 ft\"\nlongest_panel = \"20 ft\""));
    // Three panels: of 18.9, 10 and 17.9 ft, the most equal that end at posts.
    let panels = json["surveys"][0]["screens"][0]["panels"].as_array().unwrap();
    let ends: Vec<u64> = panels.iter().map(|panel| panel["last_bay"].as_u64().unwrap()).collect();
    assert_eq!(ends, [3, 4, 6]);
    says(&refused(&with("top_gap = \"9 ft 6 in\"")), &["nothing of the height", "top_gap"]);
    says(&refused(&with("end_gp = \"6 in\"")), &["[order] has no key end_gp", "perhaps end_gap"]);
    says(&refused(&with("crew_tim = \"45 min\"")), &["[order] has no key crew_tim", "perhaps crew_time"]);
    says(&refused(&with("end_gap = \"6 mph\"")), &["mph is a speed, and a length belongs here"]);
    says(&refused(&with("end_gap = 6")), &["end_gap of [order] is a bare number", "needs its unit"]);
    says(&refused(&with("crew_time = \"45 ft\"")), &["a time belongs here"]);
    says(&refused(&with("lacing = \"lockd\"")), &["none of plain, locked", "perhaps \"locked\""]);
    says(&refused(&with("cloth_price = \"1.20 per ft\"")), &["cloth_price", "an area", "\"ft\" is none"]);
    says(&refused(&with("cloth_price = 1.2")), &["cloth_price", "an area", "per ft2"]);
    says(&refused(&with("tie_price = \"0.15 per ft\"")), &["tie_price", "each"]);
    says(&refused(&with("tie_price = -1")), &["tie_price is -1: it must be 0 or more"]);
    says(&refused(&with("tie_price = \"$0.15\"")), &["tie_price", "the currency stands in its own key"]);
    says(&refused(&with("spacing = \"12 in\"")), &["belongs to the fastening of a screen"]);
    says(&refused(&with("").replace("[order]\n", "order = 1\n")), &["order"]);
}

#[test]
fn one_survey_that_cannot_be_read_leaves_no_half_list() {
    let folder = tempdir().unwrap();
    let good = folder.path().join("good.toml");
    fs::write(&good, survey("\"6 x 10 ft\"", FOUR_EDGES, "")).unwrap();
    let out = run(&["order", good.to_str().unwrap(), "nowhere.toml"]);
    assert_eq!((out.code, out.text.as_str()), (2, ""));
    assert!(out.err.contains("nowhere.toml"), "{}", out.err);
}

#[test]
fn several_mistakes_are_told_at_once() {
    let out = order(
        &survey("\"6 x 10 ft\"", FOUR_EDGES, "end_gap = \"-1 in\"\nspares = \"lots\"\nfoo_bar = 1"),
        "text",
    );
    assert_eq!(out.err.matches("standard input").count(), 3, "{}", out.err);
}

#[test]
fn a_measured_cloth_is_the_longest_panel_and_the_grommets_offset_is_said() {
    let tied = FOUR_EDGES.replace("rows", "panel = \"30 ft\", rows");
    let json = json(&survey("\"6 x 10 ft\"", &tied, ""));
    assert_eq!(json["surveys"][0]["screens"][0]["panels"].as_array().unwrap().len(), 2);
    assert!(json["surveys"][0]["screens"][0]["notes"].to_string().contains("longer than 30 ft"));
    let laced = r#"{ kind = "lacing", rope = "1/4 in nylon", spacing = "12 in", rows = ["top"] }"#;
    let text = order(&survey("\"6 x 10 ft\"", laced, ""), "text").text;
    assert!(text.contains("rope for grommets 1 in off"), "{text}");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    /// Every bay has its panel, none is too long, no fewer panels would do, and the rest follows from the panels.
    #[test]
    fn panels_share_the_bays_out(widths in proptest::collection::vec(4_u32..20, 1..12), longest in 20_u32..60) {
        let bays: Vec<String> = widths.iter().map(|width| format!("\"{width} ft\"")).collect();
        let text = survey(&bays.join(", "), FOUR_EDGES, &format!("end_gap = \"0 in\"\nlongest_panel = \"{longest} ft\""));
        let survey = Survey::read(&text, "survey").unwrap();
        let list = order_of(vec![("survey".to_owned(), survey)]).unwrap();
        let screen = &list.sites[0].screens[0];
        let mut at = 0;
        for panel in &screen.panels {
            prop_assert_eq!(panel.first_bay, at);
            at = panel.end_bay;
            prop_assert!(panel.size.length <= feet(f64::from(longest) + 1e-6));
        }
        prop_assert_eq!(at, widths.len());
        // Filled from the left as far as each goes, which takes the fewest; half a post is gained at either end.
        let half_post = 2.875 / 24.0;
        let (mut fewest, mut filled) = (1, -half_post);
        for (bay, width) in widths.iter().enumerate() {
            let last = if bay + 1 == widths.len() { half_post } else { 0.0 };
            if filled + f64::from(*width) - last > f64::from(longest) + 1e-9 {
                fewest += 1;
                filled = 0.0;
            }
            filled += f64::from(*width);
        }
        prop_assert_eq!(screen.panels.len(), fewest);
        let panels: u64 = list
            .sums
            .iter()
            .filter(|sum| matches!(sum.what, What::Panel { .. }))
            .map(|sum| if let Amount::Count(count) = sum.amount { count } else { 0 })
            .sum();
        prop_assert_eq!(panels, screen.panels.len() as u64);
        let whole: f64 = screen.panels.iter().map(|panel| panel.size.length.si()).sum();
        let opening = (f64::from(widths.iter().sum::<u32>()) - 2.0 * half_post) * 0.3048;
        prop_assert!((whole - opening).abs() < 1e-9);
    }
}
