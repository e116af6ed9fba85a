//! The command as people run it.

use crate::support::{json_of, run, run_on, run_with};
use fencegust::survey::Survey;
use serde_json::Value;
use std::fs;
use tempfile::tempdir;

/// The worked vector as a survey, cloth over the whole height.
pub fn vector(bays: &str, solidity: &str, chain_link: &str) -> String {
    format!(
        r#"survey = 1
[site]
wind_code = "asce7-16"
wind_speed = "115 mph"
exposure = "C"
[post.line]
diameter = "2.875 in"
nominal_wall = "0.203 in"
yield = "30 ksi"
[[run]]
name = "run"
height = "10 ft"
chain_link = {chain_link}
bays = ["{bays}"]
ends = "free"
screen = {{ solidity = {solidity}, bottom = "0 ft", height = "10 ft" }}
"#
    )
}

const COURT: &str = r#"{ mesh = "1-3/4 in", wire = "9 gauge" }"#;
const LB_FT: f64 = 4.448_221_615_260_5 * 0.3048;
const PSF: f64 = 4.448_221_615_260_5 / (0.3048 * 0.3048);

fn near(found: &Value, printed: f64, half: f64) {
    let found = found.as_f64().unwrap();
    assert!((found - printed).abs() <= half, "{found} is not {printed}");
}

#[test]
fn the_solid_vector_comes_out_of_a_survey_file() {
    let (json, code) = json_of(&vector("20 x 10 ft", "1.0", "\"none\""));
    assert_eq!(code, 1);
    let run = &json["runs"][0];
    for (post, printed) in [(0, 18_573.0), (1, 30_400.0), (2, 20_914.0), (3, 16_288.0), (10, 14_847.0)] {
        near(&run["posts"][post]["base_moment_n_m"], printed * LB_FT, 0.5 * LB_FT);
    }
    near(&run["bays"][0]["pressure_pa"], 67.537 * PSF, 0.0005 * PSF);
    near(&run["bays"][9]["pressure_pa"], 26.994 * PSF, 0.0005 * PSF);
}

#[test]
fn the_closed_mesh_vector_comes_out_of_a_survey_file() {
    let (json, _) = json_of(&vector("12 x 10 ft", "0.95", COURT));
    let run = &json["runs"][0];
    near(&run["solidity"], 0.95749, 5e-6);
    for (post, printed) in [(0, 17_735.0), (1, 29_282.0), (2, 20_377.0), (3, 14_792.0), (6, 14_717.0)] {
        near(&run["posts"][post]["base_moment_n_m"], printed * LB_FT, 0.5 * LB_FT);
    }
    let bending = &run["posts"][0]["parts"][0];
    assert_eq!(bending["part"], "post bending");
    near(&bending["capacity"], 4162.0, 0.5 * LB_FT);
    near(&bending["ratio"], 5.777, 1e-3);
    near(&run["posts"][0]["base_shear_n"], 14_343.0, 1.0);
    near(&run["posts"][0]["base_moment_n_m"], 24_045.0, 1.0);
    near(&run["bays"][0]["pressure_pa"], 3_087.9, 0.05);
    near(&run["bays"][0]["force_n"], 28_687.0, 1.0);
    near(&run["limit_gust_m_s"], 15.3, 0.05);
    near(&run["posts"][0]["limit_gust_m_s"], 19.7, 0.05);
    near(&run["posts"][6]["limit_gust_m_s"], 48.4265 * 0.44704, 1e-3);
    assert_eq!(run["bays"][0]["governs"], "asce7-16 Fig. 29.3-1 Case C, 0 to s, wind from the start");
    assert_eq!(run["posts"][0]["kind"], "end");
    assert_eq!(run["limit_gust_is"], "at most");
    assert_eq!(json["format"], "check");
    assert_eq!((&json["flag"], &json["flag_of_checked"]), (&"over".into(), &"over".into()));
    let footing = &run["posts"][0]["parts"][2];
    assert_eq!(
        (&footing["part"], &footing["flag"], &footing["ratio"]),
        (&"footing".into(), &"not checked".into(), &Value::Null)
    );
    assert!(footing["why"].as_str().unwrap().len() > 10);
}

#[test]
fn the_same_fence_in_feet_and_in_metres_gives_the_same_json() {
    let us = vector("12 x 10 ft", "0.95", COURT);
    let si = us
        .replace("12 x 10 ft", "12 x 3.048 m")
        .replace("115 mph", "51.4096 m/s")
        .replace("2.875 in", "73.025 mm")
        .replace("0.203 in", "5.1562 mm")
        .replace("30 ksi", "206.842718795040 MPa")
        .replace("10 ft", "3.048 m")
        .replace("0 ft", "0 m")
        .replace("1-3/4 in", "44.45 mm")
        .replace("9 gauge", "3.7592 mm");
    assert!(!si.contains("ft\"") && !si.contains("in\""));
    let ((us, _), (si, _)) = (json_of(&us), json_of(&si));
    same(&us, &si, "");
    fn same(one: &Value, other: &Value, at: &str) {
        match (one, other) {
            (Value::Number(a), Value::Number(b)) => {
                let (a, b) = (a.as_f64().unwrap(), b.as_f64().unwrap());
                assert!((a - b).abs() <= 1e-9 * a.abs().max(1.0), "{at}: {a} and {b}");
            }
            (Value::Object(a), Value::Object(b)) => {
                assert_eq!(a.len(), b.len());
                for (key, value) in a.iter().filter(|(key, _)| *key != "survey_hash" && *key != "remarks") {
                    same(value, &b[key], &format!("{at}.{key}"));
                }
            }
            (Value::Array(a), Value::Array(b)) => {
                assert_eq!(a.len(), b.len());
                a.iter().zip(b).for_each(|(a, b)| same(a, b, at));
            }
            _ => assert_eq!(one, other, "{at}"),
        }
    }
}

#[test]
fn the_example_is_answered_in_lines_that_can_be_photographed() {
    let out = run(&["check", "examples/tarnwick-green.toml", "--brief"]);
    assert_eq!(out.code, 1, "{}", out.err);
    assert!(out.err.is_empty());
    assert!(out.text.lines().all(|line| line.chars().count() <= 72), "{}", out.text);
    for said in [
        "Tarnwick Green courts 1-3",
        "ASCE 7-16",
        "115 mph",
        "◇ NOT CHECKED: footings, rails, sway in gusts, ties and lacing",
        "DO NOT HANG",
        "north end, south end",
        "west side: no cloth",
        "near the ends",
        "inside",
        "bare, at most",
        "WARNING",
        "licensed",
        "MEASURE NEXT",
        "airport",
    ] {
        assert!(out.text.contains(said), "does not say {said}:\n{}", out.text);
    }
    assert!(!out.text.contains("is safe"));
    let usual = run(&["check", "examples/tarnwick-green.toml"]);
    assert!(usual.text.starts_with(&out.text));
    let all = run(&["check", "examples/tarnwick-green.toml", "--all"]);
    assert!(all.text.lines().count() > usual.text.lines().count() + 20);
}

#[test]
fn a_gap_below_is_told_with_the_figures_of_statics_and_code() {
    let text = vector("60 x 10 ft", "0.95", COURT)
        .replace("bottom = \"0 ft\", height = \"10 ft\"", "bottom = \"1 ft\", height = \"9 ft\"");
    let (json, _) = json_of(&text);
    let remark =
        json["remarks"].as_array().unwrap().iter().find(|remark| remark["id"] == "gap-below").unwrap();
    let text = remark["text"].as_str().unwrap();
    assert!(
        text.contains("0.99 times by statics") && text.contains("1.01 in the middle and 1.05 at the ends"),
        "{text}"
    );
}

#[test]
fn as_read_tells_where_each_value_came_from() {
    let out = run(&["check", "--as-read", "examples/tarnwick-green.toml"]);
    let line = |key: &str| {
        out.text
            .lines()
            .find(|line| line.starts_with(&format!("{key} ")))
            .unwrap_or_else(|| panic!("{key}:\n{}", out.text))
            .to_owned()
    };
    assert!(line("run.north end.height").ends_with("all_runs"));
    assert!(line("run.north end.bays").ends_with("as written"));
    assert!(line("run.south end.screen.height").ends_with("kind \"closed9\""));
    assert!(line("run.south end.screen.bottom").ends_with("as written"));
    assert!(line("run.north end.bottom_rail").ends_with("default"));
    assert!(line("run.south end.faces").contains("south"));
    assert!(line("run.east side.screen.solidity").contains("0.75 .. 0.8"));
}

#[test]
fn workings_name_every_step_with_its_clause() {
    let out = run(&["check", "examples/tarnwick-green.toml", "--workings", "north end/3"]);
    for said in [
        "WORKINGS: north end, post 3",
        "ASCE 7-16 26.10.2, Eq. 26.10-1",
        "φM_n",
        "AISC 360-16 F8, Eq. F8-1",
        "K_z = 2.01",
        "psf/mph²",
        "V_lim",
        "Sources",
    ] {
        assert!(out.text.contains(said), "does not say {said}");
    }
    let governing = run(&["check", "examples/tarnwick-green.toml", "--workings"]);
    assert_eq!(governing.text.matches("WORKINGS: ").count(), 4);
    let nobody = run(&["check", "examples/tarnwick-green.toml", "--workings", "north end/99"]);
    assert_eq!(nobody.code, 2);
    assert!(nobody.err.contains("north end/1"), "{}", nobody.err);
}

#[test]
fn several_surveys_are_answered_at_once_and_a_bad_one_stops_nobody() {
    let folder = tempdir().unwrap();
    let bad = folder.path().join("bad.toml");
    fs::write(&bad, "survey = 1\n").unwrap();
    let bad = bad.to_str().unwrap();
    let out = run(&["check", "examples/tarnwick-green.toml", bad, "examples/tarnwick-green.toml", "--brief"]);
    assert_eq!(out.code, 2);
    assert_eq!(out.text.matches("DO NOT HANG").count(), 2);
    assert!(out.err.contains("bad.toml"));
    let json =
        run(&["check", "--format", "json", "examples/tarnwick-green.toml", "examples/tarnwick-green.toml"]);
    let list: Value = serde_json::from_str(&json.text).unwrap();
    assert_eq!(list.as_array().unwrap().len(), 2);
}

#[test]
fn an_unknown_wind_speed_leaves_the_limit_gusts_and_checks_nothing_at_the_design_wind() {
    let text = vector("12 x 10 ft", "0.95", COURT).replace("115 mph", "unknown");
    let (json, code) = json_of(&text);
    assert_eq!(code, 3);
    near(&json["runs"][0]["limit_gust_m_s"], 34.3308 * 0.44704, 1e-3);
    assert_eq!(json["flag"], "not checked");
    assert_eq!(json["flag_of_checked"], Value::Null);
    let post = &json["runs"][0]["posts"][0];
    assert_eq!(post["base_moment_n_m"], Value::Null);
    assert!(post["why"].as_str().unwrap().contains("design wind speed"));
    let out = run_on("-", &text);
    assert!(out.text.contains("design wind UNKNOWN"));
}

#[test]
fn unknown_wall_and_grade_are_worked_over_every_pipe_of_the_diameter() {
    let open = vector("12 x 10 ft", "0.95", COURT)
        .replace("nominal_wall = \"0.203 in\"", "nominal_wall = \"unknown\"")
        .replace("yield = \"30 ksi\"", "yield = \"unknown\"");
    let (json, _) = json_of(&open);
    let bending = &json["runs"][0]["posts"][0]["parts"][0];
    // Schedule 40 of 30 ksi at worst, of 50 ksi at best; the light pipe of 50 ksi lies between.
    near(&bending["capacity"], 3_070.12 * LB_FT, 0.5);
    near(&bending["ratio"], 5.7767, 1e-3);
    near(&bending["ratio_best"], 5.7767 * 30.0 / 50.0, 1e-3);
    assert_eq!(json["measure_next"][0]["key"], "post.line.wall");
    let known = open.replace("yield = \"unknown\"", "yield = \"50 ksi\"");
    let (json, _) = json_of(&known);
    // Wall unknown with the grade known: the light pipe is the weakest.
    let light = json["runs"][0]["posts"][0]["parts"][0]["capacity"].as_f64().unwrap();
    let design = 0.93 * 0.160_f64;
    let modulus = (2.875_f64.powi(3) - (2.875 - 2.0 * design).powi(3)) / 6.0;
    assert!((light / LB_FT - 0.9 * 50_000.0 * modulus / 12.0).abs() < 0.5);
}

#[test]
fn exposure_b_or_c_and_a_range_of_solidity_are_worked_at_both_ends() {
    let text =
        vector("12 x 10 ft", "\"0.75 .. 0.95\"", COURT).replace("exposure = \"C\"", "exposure = \"B or C\"");
    let (json, _) = json_of(&text);
    let run = &json["runs"][0];
    near(&run["solidity"], 0.95749, 5e-6);
    let (worst, best) =
        (run["limit_gust_m_s"].as_f64().unwrap(), run["limit_gust_best_m_s"].as_f64().unwrap());
    let only = |solidity: &str, exposure: &str| {
        let text = vector("12 x 10 ft", solidity, COURT)
            .replace("exposure = \"C\"", &format!("exposure = \"{exposure}\""));
        json_of(&text).0["runs"][0]["limit_gust_m_s"].as_f64().unwrap()
    };
    assert_eq!(worst, only("0.95", "C"));
    assert_eq!(best, only("0.75", "B"));
}

#[test]
fn a_corner_counts_its_return_by_the_cloth_of_the_other_run_only() {
    let court = |side: &str| {
        format!(
            r#"survey = 1
[site]
wind_code = "asce7-16"
wind_speed = "115 mph"
exposure = "C"
[post.line]
diameter = "2.875 in"
nominal_wall = "0.203 in"
yield = "30 ksi"
[all_runs]
court = "one"
height = "10 ft"
chain_link = "none"
[[run]]
name = "north"
faces = "north"
bays = ["12 x 10 ft"]
start = "corner"
finish = "free"
screen = {{ solidity = 1.0, bottom = "0 ft", height = "10 ft" }}
[[run]]
name = "west"
faces = "west"
bays = ["6 x 10 ft"]
start = "free"
finish = "corner"
screen = {side}
"#
        )
    };
    let end = |side: &str| {
        let (json, _) = json_of(&court(side));
        let north = &json["runs"][0];
        assert_eq!(north["posts"][0]["shared_with"]["run"], "west");
        assert_eq!(north["posts"][0]["shared_with"]["number"], 7);
        assert_eq!(north["posts"][0]["kind"], "corner");
        (north["return_at_start_m"].as_f64().unwrap(), north["posts"][0]["base_moment_n_m"].as_f64().unwrap())
    };
    let (none, free) = end("\"none\"");
    let (full, relieved) = end(r#"{ solidity = 1.0, bottom = "0 ft", height = "10 ft" }"#);
    let (low, as_free) = end(r#"{ solidity = 1.0, bottom = "0 ft", height = "9 ft" }"#);
    let (thin, too) = end(r#"{ solidity = 0.6, bottom = "0 ft", height = "10 ft" }"#);
    assert_eq!((none, low, thin), (0.0, 0.0, 0.0));
    assert!((full - 60.0 * 0.3048).abs() < 1e-9);
    // L_r/s is 6: 0.60 on the first zone, which is the whole first bay.
    assert!((relieved / free - 0.6).abs() < 1e-9);
    assert_eq!((as_free, too), (free, free));
}

#[test]
fn a_closed_pipe_and_a_full_disk_are_no_panic() {
    use std::process::{Command, Stdio};
    let program = assert_cmd::cargo::cargo_bin!("fencegust");
    let mut child = Command::new(program)
        .args(["check", "examples/tarnwick-green.toml", "--all"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let out = child.wait_with_output().unwrap();
    assert_eq!(String::from_utf8_lossy(&out.stderr), "");
    assert_eq!(out.status.code(), Some(1));
    if let Ok(full) = fs::OpenOptions::new().write(true).open("/dev/full") {
        let out = Command::new(program)
            .args(["check", "examples/tarnwick-green.toml"])
            .stdout(full)
            .stderr(Stdio::piped())
            .output()
            .unwrap();
        assert_eq!(out.status.code(), Some(2));
        assert!(String::from_utf8_lossy(&out.stderr).contains("could not be written"));
    }
}

#[test]
fn a_corner_post_takes_the_worst_of_each_run_alone_and_three_quarters_of_both() {
    let court = |west: &str| {
        vector("12 x 10 ft", "1.0", "\"none\"")
            .replace(
                "[[run]]",
                "[all_runs]\nheight = \"10 ft\"\nchain_link = \"none\"\n[[run]]\nfaces = \"north\"",
            )
            .replace("height = \"10 ft\"\nchain_link = \"none\"\nbays", "bays")
            .replace("ends = \"free\"", "start = \"corner\"\nfinish = \"free\"")
            + &format!(
                "[[run]]\nname = \"west\"\nfaces = \"west\"\nbays = [\"12 x 10 ft\"]\nstart = \"free\"\nfinish = \"corner\"\nscreen = {west}\n"
            )
    };
    let corner = |west: &str| {
        let (json, _) = json_of(&court(west));
        let post = json["runs"][0]["posts"][0].clone();
        let other = json["runs"][1]["posts"][12].clone();
        let figure = |post: &Value, key: &str| post[key].as_f64().unwrap();
        let demand = |post: &Value| post["parts"][0]["demand"].as_f64().unwrap();
        assert_eq!(demand(&post), demand(&other));
        assert_eq!(post["limit_gust_m_s"], other["limit_gust_m_s"]);
        (figure(&post, "base_moment_n_m"), figure(&other, "base_moment_n_m"), demand(&post))
    };
    let (north, west, both) = corner(r#"{ solidity = 1.0, bottom = "0 ft", height = "10 ft" }"#);
    assert!((north / west - 1.0).abs() < 1e-12);
    assert!((both / (0.75 * 2.0_f64.sqrt() * north) - 1.0).abs() < 1e-12);
    // A low cloth on the other side adds less than its three quarters take away: the north alone.
    let (north, west, both) = corner(r#"{ solidity = 1.0, bottom = "0 ft", height = "2 ft" }"#);
    assert!(west < 0.5 * north && both == north);
}

#[test]
fn a_limit_that_is_at_most_is_one_gust_and_what_it_is_at_best_stands_beside_it() {
    for (units, unit, step) in [("us", "mph", 0.44704), ("si", "m/s", 0.1)] {
        let survey = vector("12 x 10 ft", "0.95", COURT)
            .replace("yield = \"30 ksi\"", "yield = \"30 ksi .. 50 ksi\"")
            .replace("survey = 1", &format!("survey = 1\nunits = \"{units}\""));
        let run = json_of(&survey).0["runs"][0].clone();
        let figure = |key: &str| {
            let steps = (run[key].as_f64().unwrap() / step + 1e-9).floor();
            if units == "us" { format!("{steps}") } else { format!("{:.1}", steps / 10.0) }
        };
        let out = run_on("-", &survey);
        let text = out.text.split_whitespace().collect::<Vec<_>>().join(" ");
        for (head, worst, best) in [
            ("limit gust, at most", "limit_gust_m_s", "limit_gust_best_m_s"),
            ("bare, at most", "bare_limit_gust_m_s", "bare_limit_gust_best_m_s"),
        ] {
            let said = format!("{head} {} {unit} ({} at best)", figure(worst), figure(best));
            assert!(text.contains(&said), "{said}: {text}");
        }
        assert!(text.contains("turns out well"), "{text}");
    }
    let known = run_on("-", &vector("12 x 10 ft", "0.95", COURT)).text;
    assert!(!known.to_lowercase().contains("at best"), "{known}");
}

#[test]
fn what_two_ends_print_alike_is_told_once_and_how_often_is_asked_where_it_is_not_known() {
    // A grade known to the hundredth moves no figure that is printed.
    let survey = vector("12 x 10 ft", "0.95", COURT).replace("\"30 ksi\"", "\"30 ksi .. 30.001 ksi\"");
    let with_category = survey.replace("exposure", "risk_category = \"II\"\nexposure");
    let text = run_on("-", &with_category).text;
    assert!(!text.to_lowercase().contains("at best\""), "{text}");
    assert!(text.contains("\n  it comes             some "), "{text}");
    let text = run_on("-", &survey).text;
    assert!(text.contains("\n  how often it comes   not known: no risk_category is given"), "{text}");
}

#[test]
fn a_crew_with_a_metric_tape_reads_spacings_and_footings_in_millimetres() {
    let held = "fastening = { kind = \"ties\", spacing = \"300 mm\", rows = [\"top\"] }, solidity";
    let survey = vector("4 x 3 m", "0.95", COURT)
        .replace("survey = 1", "survey = 1\nunits = \"si\"")
        .replace("solidity", held);
    let said = |survey: &str| run_on("-", survey).text.split_whitespace().collect::<Vec<_>>().join(" ");
    let text = said(&survey);
    assert!(text.contains("ties every 300 mm, top"), "{text}");
    let text = said(&survey.replace("300 mm", "unknown"));
    assert!(text.contains("ties at an unknown spacing, top"), "{text}");
    let footing = "footing = { shape = \"round\", width = \"300 mm\", depth = \"1.2 m\" }\nbays";
    let read = Survey::read(&survey.replace("bays", footing), "survey").unwrap();
    assert_eq!(read.runs[0].footing.as_deref(), Some("round 300 mm wide, 1200 mm deep"));
}

#[test]
fn cloth_that_a_run_writes_in_place_goes_by_its_own_words_or_its_figure() {
    let survey = vector("12 x 10 ft", "\"unknown\"", COURT);
    let remarks = |survey: &str| run_on("-", survey).text.split_whitespace().collect::<Vec<_>>().join(" ");
    let text = remarks(&survey.replace("solidity =", "cloth = \"net of the shop\", solidity ="));
    assert!(text.contains("cloth \"net of the shop\": solidity unknown"), "{text}");
    let text = remarks(&survey.replace("name = \"run\"", "name = \"north\""));
    assert!(text.contains("cloth \"north\": solidity unknown"), "{text}");
    let order = run_with(&["order", "-"], &vector("12 x 10 ft", "0.95", COURT)).text;
    assert!(order.contains("panels of cloth 0.95 solid") && !order.contains("own,"), "{order}");
}
