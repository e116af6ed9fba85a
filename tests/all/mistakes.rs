//! Wrong surveys: each mistake is told with its line and what to do, and nothing is half written.

use crate::command::vector;
use crate::support::{run, run_on};
use std::fs;
use tempfile::tempdir;

const COURT: &str = r#"{ mesh = "1-3/4 in", wire = "9 gauge" }"#;

fn good() -> String {
    vector("12 x 10 ft", "0.95", COURT)
}

/// The message for a survey in which `from` was changed to `to`, which must be wrong once.
fn told(from: &str, to: &str) -> String {
    let text = good();
    assert!(text.contains(from), "{from}");
    told_of(&text.replacen(from, to, 1), 1)
}

fn told_of(text: &str, mistakes: usize) -> String {
    let out = run_on("-", text);
    assert_eq!(out.code, 2, "{}\n{}", out.text, out.err);
    assert_eq!(out.text, "", "something was written");
    assert_eq!(out.err.matches("standard input").count(), mistakes, "{}", out.err);
    assert!(!out.err.contains("panicked"), "{}", out.err);
    out.err
}

fn says(message: &str, all: &[&str]) {
    for said in all {
        assert!(message.contains(said), "does not say \"{said}\":\n{message}");
    }
}

#[test]
fn a_good_survey_is_no_mistake() {
    let out = run_on("-", &good());
    assert_eq!(out.code, 1, "{}", out.err);
    assert_eq!(run_on("-", &format!("\u{feff}{}", good())).code, 1);
    assert_eq!(run_on("-", &good().replace('\n', "\r\n")).code, 1);
}

#[test]
fn a_missing_key_says_what_it_is_for() {
    says(
        &told("height = \"10 ft\"\nchain", "chain"),
        &["run \"run\" has no height", "from the ground to the top rail", "\"10 ft\""],
    );
    says(&told("wind_speed = \"115 mph\"\n", ""), &["[site] has no wind_speed", "building department"]);
    says(&told("exposure = \"C\"\n", ""), &["has no exposure", "open fields"]);
    says(&told("ends = \"free\"\n", ""), &["has no ends", "\"free\""]);
    says(&told("nominal_wall = \"0.203 in\"\n", ""), &["has no wall", "caliper"]);
    says(&told("survey = 1\n", ""), &["survey = 1"]);
    says(&told("bottom = \"0 ft\", ", ""), &["has no bottom", "lower edge"]);
}

#[test]
fn a_slip_that_looks_like_a_table_hides_no_other_mistake() {
    let without = good().replace("ends = \"free\"\n", "");
    assert_ne!(without, good());
    for (from, slip) in [("survey = 1\n", "sitee = \"x\""), ("height = \"10 ft\"\n", "scren = \"x\"")] {
        let told = told_of(&without.replacen(from, &format!("{from}{slip}\n"), 1), 2);
        says(&told, &["has no ends", "has no key s", "perhaps s"]);
    }
    let told = told_of(&without.replace("[site]", "[sitee]"), 1);
    says(&told, &["has no key sitee", "perhaps site"]);
}

#[test]
fn a_slip_in_one_run_does_not_hide_the_same_key_missing_in_another() {
    let first = good();
    let run = &first[first.find("[[run]]").unwrap()..];
    let two = format!("{first}{}", run.replace("name = \"run\"", "name = \"other\""));
    assert_eq!(run_on("-", &two).code, 1);
    let (with_slip, without) = two.split_at(first.len());
    let told = told_of(
        &format!("{}{}", with_slip.replace("ends =", "enda ="), without.replace("ends = \"free\"\n", "")),
        2,
    );
    says(&told, &["has no key enda", "perhaps ends", "run \"other\" has no ends"]);
}

#[test]
fn a_key_above_its_table_is_told_where_it_belongs() {
    let at_the_top = |line: &str| told("survey = 1\n", &format!("survey = 1\n{line}\n"));
    says(
        &at_the_top("title = \"x\""),
        &["line 2", "title stands in the survey but belongs to [job]", "below [job]"],
    );
    says(&at_the_top("wind_speed = \"115 mph\""), &["belongs to [site]", "write it below [site]"]);
    says(&at_the_top("height = \"10 ft\""), &["belongs to a run", "below [[run]]"]);
}

#[test]
fn a_slip_in_a_key_names_the_nearest_known_one() {
    says(
        &told("exposure = \"C\"", "exposure = \"C\"\nwind_sped_source = \"x\""),
        &["line 6", "[site] has no key wind_sped_source", "perhaps wind_speed_source"],
    );
    says(&told("name = \"run\"", "name = \"run\"\nnoet = \"x\""), &["run 1 has no key noet", "perhaps note"]);
    says(&told("[site]", "[job]\ntitel = \"x\"\n[site]"), &["[job] has no key titel", "perhaps title"]);
}

#[test]
fn a_wrong_dimension_says_what_belongs_there() {
    says(
        &told("115 mph", "115 psf"),
        &["line 4", "psf is a pressure or stress, and a speed belongs here", "mph, m/s"],
    );
    says(&told("\"10 ft\"\nchain", "\"10 psf\"\nchain"), &["a length belongs here"]);
    says(&told("30 ksi", "30 ft"), &["a pressure or stress belongs here"]);
}

#[test]
fn a_bare_number_asks_for_its_unit() {
    says(&told("\"10 ft\"\nchain", "10\nchain"), &["bare number", "needs its unit", "ft, in"]);
    says(&told("\"10 ft\"\nchain", "\"10\"\nchain"), &["has no unit"]);
    says(&told("\"12 x 10 ft\"", "\"12 x 10\""), &["has no unit"]);
    says(&told("\"12 x 10 ft\"", "120"), &["a bay needs its unit"]);
}

#[test]
fn sizes_not_above_nought_nan_and_infinity_are_refused() {
    says(&told("\"10 ft\"\nchain", "\"0 ft\"\nchain"), &["must be above 0"]);
    says(&told("\"10 ft\"\nchain", "\"-10 ft\"\nchain"), &["must be above 0"]);
    says(&told("\"12 x 10 ft\"", "\"12 x 0 ft\""), &["must be above 0"]);
    says(&told("115 mph", "NaN mph"), &["not a finite number"]);
    says(&told("115 mph", "inf mph"), &["not a finite number"]);
    says(&told("115 mph", "1e999 mph"), &["not a finite number"]);
    says(&told("solidity = 0.95", "solidity = nan"), &["not a finite number"]);
    says(&told("\"12 x 10 ft\"", "\"0 x 10 ft\""), &["from 1 to"]);
    says(&told("\"12 x 10 ft\"", "\"99999999999 x 10 ft\""), &["from 1 to"]);
}

#[test]
fn a_post_that_is_no_tube_is_refused() {
    says(&told("0.203 in", "1.5 in"), &["wall of 1.5 in does not fit"]);
    says(
        &told("yield = \"30 ksi\"", "yield = \"30 ksi\"\nrust_at_grade = \"0.3 in\""),
        &["leaves nothing of a wall"],
    );
}

#[test]
fn solidity_lies_between_nought_and_one() {
    says(&told("solidity = 0.95", "solidity = 1.2"), &["between 0 and 1"]);
    says(&told("solidity = 0.95", "solidity = -0.2"), &["must be above 0"]);
    says(&told("solidity = 0.95", "solidity = 95"), &["between 0 and 1"]);
    says(&told("solidity = 0.95", "solidity = \"0 .. 0.5\""), &["must be above 0"]);
    says(&told("solidity = 0.95", "solidity = \"0.5 .. 1.01\""), &["between 0 and 1"]);
    says(&told("solidity = 0.95", "solidity = \"0.6 .. 0.2\""), &["runs downwards"]);
}

#[test]
fn cloth_above_the_fence_is_refused() {
    says(&told("bottom = \"0 ft\"", "bottom = \"1 ft\""), &["reaches 11 ft", "above the fence of 10 ft"]);
}

#[test]
fn like_that_points_nowhere_or_in_a_circle_is_refused() {
    let screen = "screen = { solidity = 0.95, bottom = \"0 ft\", height = \"10 ft\" }";
    says(&told(screen, "screen = { like = \"closd\", bottom = \"0 ft\" }"), &["there is no [screen.closd]"]);
    let kinds = "[screen.a]\nlike = \"b\"\n[screen.b]\nlike = \"a\"\nheight = \"9 ft\"\n[[run]]";
    let text =
        good().replace("[[run]]", kinds).replace(screen, "screen = { like = \"a\", bottom = \"0 ft\" }");
    says(&told_of(&text, 1), &["like goes in a circle"]);
    says(
        &told("ends = \"free\"", "ends = \"free\"\nend_post = \"lien\""),
        &["there is no [post.lien]", "perhaps \"line\""],
    );
}

#[test]
fn a_corner_that_points_nowhere_is_refused() {
    says(
        &told("ends = \"free\"", "start = \"corner\"\nfinish = \"free\""),
        &["cannot be found without its compass side"],
    );
    says(
        &told("ends = \"free\"", "start = \"corner\"\nfinish = \"free\"\nfaces = \"north\""),
        &["the start of run \"run\" is a corner, but no run faces west", "{ return = \"60 ft\" }"],
    );
}

#[test]
fn post_numbers_past_the_end_are_refused() {
    let text = "ends = \"free\"\nother_posts = [{ numbers = [14], post = \"line\" }]";
    says(&told("ends = \"free\"", text), &["run \"run\" has posts 1 to 13"]);
    says(&told("ends = \"free\"", &text.replace("14", "0")), &["has posts 1 to 13"]);
}

#[test]
fn a_run_key_below_a_screen_table_is_told_to_move_up() {
    let text = good().replace("ends = \"free\"\n", "").replace(
        "screen = { solidity = 0.95, bottom = \"0 ft\", height = \"10 ft\" }",
        "ends = \"free\"\n[run.screen]\nsolidity = 0.95\nbottom = \"0 ft\"\nheight = \"10 ft\"\nfaces = \"north\"",
    );
    says(
        &told_of(&text, 1),
        &["faces stands in the screen of run \"run\" but belongs to the run", "move it up"],
    );
}

#[test]
fn curly_quotes_are_told_as_such() {
    says(&told("\"115 mph\"", "“115 mph”"), &["line 4", "curly quotes", "straight quotes"]);
}

#[test]
fn a_trade_size_names_both_pipes_and_their_girths() {
    for size in ["diameter = \"2-1/2 in\"", "section = \"2-1/2 in post\""] {
        let text = good().replace(
            "diameter = \"2.875 in\"\nnominal_wall = \"0.203 in\"",
            &format!("{size}\nnominal_wall = \"unknown\""),
        );
        says(&told_of(&text, 1), &["two pipes", "2.375 in (girth 7.46 in)", "2.875 in (girth 9.03 in)"]);
    }
}

#[test]
fn an_unknown_code_or_exposure_names_what_there_is() {
    says(&told("asce7-16", "asce7-61"), &["asce7-61", "asce7-16"]);
    says(&told("exposure = \"C\"", "exposure = \"E\""), &["none of B, C, D"]);
}

#[test]
fn a_height_outside_the_rule_names_its_clause() {
    let text = good().replace("\"10 ft\"\nchain", "\"950 ft\"\nchain");
    let out = run_on("-", &text.replace("height = \"10 ft\" }", "height = \"950 ft\" }"));
    assert_eq!((out.code, out.text.as_str()), (2, ""));
    says(&out.err, &["height 950 ft", "900 ft", "ASCE 7-16 26.11"]);
}

#[test]
fn three_mistakes_give_three_messages_in_one_go() {
    let text = good()
        .replace("115 mph", "115 psf")
        .replace("exposure = \"C\"", "exposure = \"E\"")
        .replace("ends = \"free\"", "end = \"free\"\nends = \"free\"");
    let message = told_of(&text, 3);
    says(&message, &["line 4", "line 5", "line 15", "perhaps ends"]);
}

#[test]
fn a_broken_line_does_not_hide_the_others_nor_raise_a_second_message() {
    let text =
        good().replace("wind_code = \"asce7-16\"", "wind_code = \"asce7-16").replace("0.203 in", "0.203 ft");
    let message = told_of(&text, 2);
    says(&message, &["line 3", "line 8"]);
}

#[test]
fn files_that_are_no_survey_are_told_as_what_they_are() {
    let folder = tempdir().unwrap();
    let file = |name: &str, bytes: &[u8]| {
        let path = folder.path().join(name);
        fs::write(&path, bytes).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let of = |path: &str| {
        let out = run(&["check", path]);
        assert_eq!((out.code, out.text.as_str()), (2, ""), "{}", out.err);
        out.err
    };
    says(&of(&file("empty.toml", b"")), &["empty.toml: the file is empty", "survey = 1"]);
    says(&of(&file("blank.toml", b"\n  \n")), &["the file is empty"]);
    says(&of(&file("latin.toml", b"survey = 1\n# caf\xe9\n")), &["latin.toml, line 2", "UTF-8"]);
    says(&of("no-such-file.toml"), &["no-such-file.toml: there is no such file"]);
    says(&of(folder.path().to_str().unwrap()), &["this is a directory"]);
    let large = folder.path().join("large.toml");
    fs::File::create(&large).unwrap().set_len(100 << 20).unwrap();
    says(&of(large.to_str().unwrap()), &["larger than 4 MB"]);
    let out = run_on("-", &"#\n".repeat(3 << 20));
    assert_eq!(out.code, 2);
    says(&out.err, &["larger than 4 MB"]);
}

#[test]
fn a_misspelt_key_is_one_mistake_and_not_missing_as_well() {
    for (from, to, near) in [
        ("wind_speed", "wind_sped", "perhaps wind_speed"),
        ("nominal_wall", "nominal_wal", "perhaps nominal_wall"),
        ("bays", "bay", "perhaps bays"),
        ("exposure", "exposur", "perhaps exposure"),
        ("chain_link", "chain_lnk", "perhaps chain_link"),
        ("[site]", "[sites]", "perhaps site"),
    ] {
        says(&told(from, to), &[near]);
    }
}

#[test]
fn sizes_that_no_fence_has_and_slips_of_the_tape_are_refused() {
    says(&told("115 mph", "1e6 mph"), &["which no fence has: it is at most 447.4 mph", "look at the unit"]);
    says(&told("115 mph", "0.1 mph"), &["which no fence has: it is at least 4.5 mph"]);
    says(&told("30 ksi", "1e9 ksi"), &["which no fence has"]);
    says(&told("\"12 x 10 ft\"", "\"3 ft 14 in\""), &["inches below 12"]);
    says(
        &told("yield = \"30 ksi\"", "yield = \"30 ksi\"\nrust_at_grade = \"0.1888 in\""),
        &["line 10", "rust"],
    );
    says(
        &told("exposure = \"C\"", "exposure = \"C\"\ntopographic_factor = \"unknown\""),
        &["cannot be unknown"],
    );
    says(&told("exposure = \"C\"", "exposure = \"C\"\nrisk_category = \"V\""), &["none of I, II, III, IV"]);
    says(&told("name = \"run\"", "name = []"), &["empty list of names"]);
    says(&told("name = \"run\"", "name = \"a\\u202Eb\""), &["cannot be printed"]);
    says(&told("ends = \"free\"", "start = \"free\""), &["has no finish"]);
}

#[test]
fn no_run_at_all_is_told_and_two_kinds_for_one_corner_post_are_a_mistake() {
    let text = good();
    let from = text.find("[[run]]").unwrap();
    says(&told_of(&format!("run = []\n{}", &text[..from]), 1), &["has no run"]);
    let court = good()
        .replace("[[run]]", "[post.big]\ndiameter = \"4 in\"\nnominal_wall = \"0.226 in\"\n[[run]]\nfaces = \"north\"\nline_post = \"line\"\nend_post = \"line\"")
        .replace("ends = \"free\"", "start = \"corner\"\nfinish = \"free\"")
        + "[[run]]\nname = \"west\"\nfaces = \"west\"\nheight = \"10 ft\"\nchain_link = \"none\"\nbays = [\"3 x 10 ft\"]\nstart = \"free\"\nfinish = \"corner\"\nline_post = \"line\"\nend_post = \"big\"\n";
    says(&told_of(&court, 1), &["one post, but it has one kind in one run and another in the other"]);
}

const HILL: &str = "[site.hill]
shape = \"ridge\"
height = \"40 ft\"
half_length = \"100 ft\"
distance = \"20 ft\"
side = \"upwind\"
";

/// The message for a survey on a hill in which `from` was changed to `to`.
fn on_a_hill(from: &str, to: &str) -> String {
    assert!(HILL.contains(from), "{from}");
    told("[post.line]", &format!("{}[post.line]", HILL.replacen(from, to, 1)))
}

#[test]
fn a_hill_that_is_no_hill_is_told_key_by_key() {
    let good = good().replacen("[post.line]", &format!("{HILL}[post.line]"), 1);
    assert_eq!(run_on("-", &good).code, 1, "{}", run_on("-", &good).err);
    says(
        &on_a_hill("shape = \"ridge\"", "shape = \"rigde\""),
        &["line 7", "hill.shape \"rigde\"", "none of escarpment, hill, ridge"],
    );
    says(
        &on_a_hill("side = \"upwind\"", "side = \"left\""),
        &["line 11", "hill.side", "none of upwind, downwind"],
    );
    says(
        &on_a_hill("half_length", "half_lenght"),
        &["line 9", "[site.hill] has no key half_lenght", "perhaps half_length"],
    );
    says(
        &on_a_hill("height = \"40 ft\"\n", ""),
        &["[site.hill] has no height", "over the country upwind", "add height = \"40 ft\""],
    );
    says(&on_a_hill("side = \"upwind\"\n", ""), &["[site.hill] has no side"]);
    says(
        &on_a_hill("\"20 ft\"", "20"),
        &["line 10", "distance of [site.hill] is a bare number", "needs its unit"],
    );
    says(&on_a_hill("\"20 ft\"", "\"20\""), &["line 10", "has no unit"]);
    says(&on_a_hill("\"20 ft\"", "\"20 psf\""), &["a length belongs here"]);
    says(&on_a_hill("\"20 ft\"", "\"-20 ft\""), &["line 10", "hill.distance must lie between 0 ft and"]);
    says(&on_a_hill("\"100 ft\"", "\"0 ft\""), &["line 9", "hill.half_length must lie between 1 ft and"]);
    says(&on_a_hill("\"40 ft\"", "\"-40 ft\""), &["line 8", "hill.height must lie between 1 ft and"]);
    says(&on_a_hill("\"40 ft\"", "\"0 ft .. 40 ft\""), &["hill.height must lie between"]);
    says(&on_a_hill("\"40 ft\"", "\"60 ft .. 40 ft\""), &["the range of height runs downwards"]);
    says(&on_a_hill("\"40 ft\"", "\"unknown\""), &["hill.height cannot be unknown", "a range, like"]);
    says(&on_a_hill("\"40 ft\"", "\"NaN ft\""), &["not a finite number"]);
}

#[test]
fn a_hill_and_its_factor_together_and_a_hill_that_is_no_table_are_one_mistake_each() {
    let exposure = "exposure = \"C\"";
    let both = format!("{exposure}\ntopographic_factor = 1.3\n{HILL}");
    says(
        &told(exposure, &both),
        &[
            "topographic_factor and hill both say what the ground does",
            "keep topographic_factor if an engineer found it",
        ],
    );
    let inline = "hill = { shape = \"hill\", height = \"40 ft\", half_length = \"100 ft\", distance = \"0 ft\", side = \"upwind\" }";
    says(
        &told(exposure, &format!("{exposure}\ntopographic_factor = 1.0\n{inline}")),
        &["line 7", "both say"],
    );
    says(
        &told(exposure, &format!("{exposure}\nhill = \"yes\"")),
        &["line 6", "hill is a table with shape, height", "or \"none\""],
    );
    says(
        &told(exposure, &format!("{exposure}\nhill = \"unknown\"")),
        &["hill is a table with shape, height"],
    );
    says(
        &told("survey = 1\n", &format!("survey = 1\n{}", HILL.replace("site.hill", "hill"))),
        &["hill stands in the survey but belongs to [site]", "write [site.hill]"],
    );
    // Two mistakes in the table are two messages, and the runs are read all the same.
    let two = HILL.replace("\"ridge\"", "\"crest\"").replace("\"20 ft\"", "\"20\"");
    let text = good()
        .replacen("[post.line]", &format!("{two}[post.line]"), 1)
        .replace("ends = \"free\"", "ends = \"fee\"");
    says(&told_of(&text, 3), &["hill.shape", "distance", "neither \"corner\" nor \"free\""]);
}

#[test]
fn a_bank_below_the_fence_is_a_length_from_nought_up() {
    let with = |base: &str| told("bays = ", &format!("base_above_ground = {base}\nbays = "));
    says(&with("\"-1 ft\""), &["base_above_ground is -1 ft: it must be 0 or more"]);
    says(&with("3"), &["base_above_ground of run \"run\" is a bare number", "\"3 ft\""]);
    says(&with("\"3 psf\""), &["a length belongs here"]);
    says(&with("\"1 ft .. 3 ft\""), &["is one value, not a range"]);
    says(&with("\"unknown\""), &["cannot be unknown here", "on the side where it is lower"]);
    says(&with("\"5 mi\""), &["base_above_ground"]);
    says(&told("bays = ", "base_above_grond = \"3 ft\"\nbays = "), &["perhaps base_above_ground"]);
    says(
        &told("bottom = \"0 ft\"", "base_above_ground = \"3 ft\", bottom = \"0 ft\""),
        &["belongs to the run", "move it up"],
    );
    // As high as that no code goes.
    let text = good().replace("bays = ", "base_above_ground = \"900 ft\"\nbays = ");
    let out = run_on("-", &text);
    assert_eq!((out.code, out.text.as_str()), (2, ""));
    says(&out.err, &["height 910 ft", "900 ft", "ASCE 7-16 26.11"]);
}

#[test]
fn the_condition_of_cloth_is_dry_iced_or_unknown_and_stands_in_its_screen() {
    let with =
        |condition: &str| told("bottom = \"0 ft\"", &format!("condition = {condition}, bottom = \"0 ft\""));
    says(&with("\"icd\""), &["condition", "none of dry, iced, unknown", "perhaps \"iced\""]);
    says(&with("\"wet\""), &["none of dry, iced, unknown"]);
    says(&with("1.0"), &["condition", "is text"]);
    says(&told("bottom = \"0 ft\"", "conditon = \"iced\", bottom = \"0 ft\""), &["perhaps condition"]);
    says(
        &told("bottom = \"0 ft\"", "iced = true, bottom = \"0 ft\""),
        &["in its condition", "condition = \"iced\""],
    );
    says(
        &told("bays = ", "condition = \"iced\"\nbays = "),
        &["condition stands in run 1 but belongs in its screen"],
    );
}

#[test]
fn a_bay_is_a_width_or_a_gate_or_a_double_gate() {
    let with = |bay: &str| told("\"12 x 10 ft\"", &format!("\"10 ft\", \"{bay}\""));
    says(&with("gaet 4 ft"), &["\"gaet 4 ft\" is none", "perhaps \"gate 4 ft\""]);
    says(&with("duble gate 8 ft"), &["perhaps \"double gate 8 ft\""]);
    says(&with("opening 8 ft"), &["a bay is a width, a gate or a double gate"]);
    says(&with("double gate"), &["a bay"]);
    says(&with("double gate 8"), &["has no unit"]);
    says(&with("double gate 0 ft"), &["must be above 0"]);
    says(&with("gate -4 ft"), &["must be above 0"]);
    says(&with("gate 4 psf"), &["a length belongs here"]);
    says(&with("0 x double gate 8 ft"), &["from 1 to"]);
}

#[test]
fn a_slip_in_a_second_cloth_or_a_test_of_air_is_told() {
    let screen = "screen = { solidity = 0.95,";
    let of = |more: &str| told(screen, &format!("{screen} {more},"));
    for over in ["\"closd mesh\"", "{ cloth = \"closd mesh\" }", "[\"solid\", \"closd mesh\"]"] {
        says(&of(&format!("over = {over}")), &["the catalogue has no cloth", "perhaps \"closed mesh\""]);
    }
    for over in ["\"debris netting\"", "{ cloth = \"shade cloth\" }"] {
        says(&of(&format!("over = {over}")), &["without a solidity (second-hand", "solidity = \"unknown\""]);
    }
    says(&of("over = []"), &["over is an empty list", "over = \"closed mesh\""]);
    says(&of("over = 3"), &["over is a cloth of the catalogue, a table or a list of them"]);
    says(&of("over = {}"), &["over run has no cloth: which cloth it is, or how solid"]);
    says(&of("over = { solidity = 1.2 }"), &["lies between 0 and 1"]);
    says(&of("over = { solidity = 0.9, heigt = \"3 ft\" }"), &["over has no key heigt"]);
    let test = |inside: &str| of(&format!("air_permeability = {inside}"));
    says(&test("\"500 cfm/ft2\""), &["air_permeability is a table", "at = \"125 Pa\""]);
    says(&test("{ flow = \"500 cfm/ft2\" }"), &["has no at: pressure over the cloth in that test"]);
    says(&test("{ at = \"125 Pa\" }"), &["has no flow: air that passes the cloth"]);
    says(&test("{ flow = 500, at = \"125 Pa\" }"), &["flow", "is a bare number; an air permeability"]);
    says(&test("{ flow = \"0 cfm/ft2\", at = \"125 Pa\" }"), &["it must be above 0"]);
    says(&test("{ flow = \"500 ft\", at = \"125 Pa\" }"), &["flow", "air permeability"]);
}
