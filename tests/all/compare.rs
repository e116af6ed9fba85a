//! Cloths side by side, what helps, and the highest cloth for a gust.

use crate::command::vector;
use crate::support::{run, run_with};
use serde_json::Value;

const COURT: &str = r#"{ mesh = "1-3/4 in", wire = "9 gauge" }"#;
const EXAMPLE: &str = "examples/tarnwick-green.toml";

fn json(arguments: &[&str], input: &str) -> Value {
    let out = run_with(arguments, input);
    assert_eq!(out.code, 0, "{}", out.err);
    serde_json::from_str(&out.text).unwrap()
}

fn share(answer: &Value, column: usize) -> f64 {
    answer["columns"][column]["runs"][0]["load_share_of_heaviest"].as_f64().unwrap()
}

#[test]
fn open_mesh_saves_six_to_nine_per_cent_by_the_code_with_chain_link_counted() {
    let cloth = |solidity: &str| vector("12 x 10 ft", solidity, COURT);
    let inside = |solidity: &str| {
        let (answer, _) = crate::support::json_of(&cloth(solidity));
        answer["runs"][0]["posts"][6]["base_moment_n_m"].as_f64().unwrap()
    };
    let closed = inside("0.95");
    let (least, most) = (1.0 - inside("0.80") / closed, 1.0 - inside("0.75") / closed);
    assert!((0.055..0.065).contains(&least), "{least}");
    assert!((0.085..0.095).contains(&most), "{most}");
    let text =
        run_with(&["compare", "-", "--cloth", "open mesh", "--cloth", "closed mesh"], &cloth("0.95")).text;
    let text = text.replace("\n  ", " ");
    assert!(
        text.contains("open mesh instead of closed mesh saves 6 to 9 % of the load by the code"),
        "{text}"
    );
    assert!(text.contains("(4 to 7 % by the loss-coefficient model"), "{text}");
    assert!(text.replace("\n  ", " ").contains("sold as 20 to 25 % open"), "{text}");
}

#[test]
fn a_comparison_says_in_each_format_what_check_says_of_each_cloth() {
    let survey = vector("12 x 10 ft", "0.95", COURT);
    let answer =
        json(&["compare", "-", "--cloth", "none", "--cloth", "closed mesh", "--format", "json"], &survey);
    assert_eq!(answer["format"], "compare");
    let closed = &answer["columns"][1]["runs"][0];
    let (check, _) = crate::support::json_of(&survey);
    let run = &check["runs"][0];
    assert_eq!(closed["limit_gust_near_ends_m_s"], run["limit_gust_m_s"]);
    // The largest of two posts that are alike but for the last digit of their sums.
    let (ours, theirs) =
        (closed["base_moment_n_m"].as_f64().unwrap(), run["posts"][1]["base_moment_n_m"].as_f64().unwrap());
    assert!((ours / theirs - 1.0).abs() < 1e-12);
    assert_eq!(closed["pressure_pa"], run["bays"][0]["pressure_pa"]);
    assert_eq!(answer["columns"][0]["runs"][0]["limit_gust_inside_m_s"], run["bare_limit_gust_m_s"]);
    assert_eq!(share(&answer, 1), 1.0);
    assert!(share(&answer, 0) < 0.25);
    let csv =
        run_with(&["compare", "-", "--cloth", "none", "--cloth", "closed mesh", "--format", "csv"], &survey)
            .text;
    let lines: Vec<&str> = csv.lines().collect();
    assert_eq!(lines.len(), 3);
    assert!(lines[0].starts_with("cloth,run,solidity,pressure_pa"));
    assert!(lines[2].starts_with("closed mesh,run,0.957"));
}

#[test]
fn lower_cloth_loads_less_and_whole_surveys_stand_side_by_side() {
    let survey = vector("12 x 10 ft", "0.95", COURT);
    let answer = json(
        &["compare", "-", "--height", "4 ft", "--height", "6 ft", "--height", "10 ft", "--format", "json"],
        &survey,
    );
    assert!(share(&answer, 0) < share(&answer, 1) && share(&answer, 1) < share(&answer, 2));
    let both = run(&["compare", EXAMPLE, EXAMPLE]);
    assert_eq!(both.code, 0, "{}", both.err);
    assert!(both.text.contains("the same in all of them"));
}

#[test]
fn levers_are_worked_and_ordered_and_gaps_below_and_windows_do_not_help() {
    let (answer, _) = crate::support::json_of(&vector("12 x 10 ft", "0.95", COURT));
    let levers = answer["runs"][0]["levers"].as_array().unwrap();
    let times: Vec<f64> = levers.iter().map(|lever| lever["limit_gust_times"].as_f64().unwrap()).collect();
    assert!(times.windows(2).all(|two| two[0] >= two[1]), "{times:?}");
    let of = |id: &str| levers.iter().find(|lever| lever["id"] == id).unwrap_or_else(|| panic!("{id}"));
    let moment = |id: &str| of(id)["largest_moment_times"].as_f64().unwrap();
    // Two windows of 8 in by 5 in in 10 ft by 10 ft of cloth: 0.56 % cut away.
    assert!((moment("windows") - 1.0).abs() < 0.003 && moment("windows") < 1.0);
    assert!((moment("gap-below") - 1.0).abs() < 0.05);
    assert!(moment("half-height") < 0.5);
    assert!(moment("no-cloth") < 0.25);
    // L_r/s 2 on the first zone only: the second post takes the next zone too.
    assert!((0.6..0.9).contains(&moment("screened-returns")));
    let text = run(&["compare", EXAMPLE, "--levers"]).text;
    assert!(text.contains("helps         half its height"), "{text}");
    assert!(text.contains("does not help windows cut in the cloth"), "{text}");
}

#[test]
fn the_highest_cloth_for_a_gust_is_the_last_that_carries_it() {
    let survey = vector("12 x 10 ft", "0.95", COURT);
    let text = run_with(&["compare", "-", "--gust", "60 mph"], &survey).text;
    let line = text.lines().find(|line| line.starts_with("run: ")).unwrap();
    let height = line.strip_prefix("run: ").unwrap().split(" (").next().unwrap();
    let metres = fencegust::units::read(height, fencegust::units::Dimension::Length).unwrap();
    let gust_at = |metres: f64| {
        let hung = survey.replace("height = \"10 ft\" }", &format!("height = \"{metres} m\" }}"));
        crate::support::json_of(&hung).0["runs"][0]["limit_gust_m_s"].as_f64().unwrap() / 0.44704
    };
    assert!(gust_at(metres) >= 60.0);
    assert!(gust_at(metres + 0.0254) < 60.0);
    assert!(run_with(&["compare", "-", "--gust", "200 mph"], &survey).text.contains("none: the bare fence"));
    assert!(run_with(&["compare", "-", "--gust", "10 mph"], &survey).text.contains("the whole 10 ft"));
}

#[test]
fn a_comparison_that_cannot_be_is_told_with_what_to_write() {
    let told = |arguments: &[&str], input: &str| {
        let out = run_with(arguments, input);
        assert_eq!((out.code, out.text.as_str()), (2, ""), "{}", out.err);
        out.err
    };
    let bare = vector("12 x 10 ft", "0.95", COURT)
        .replace("screen = { solidity = 0.95, bottom = \"0 ft\", height = \"10 ft\" }", "screen = \"none\"");
    assert!(told(&["compare", EXAMPLE, "--cloth", "opn mesh"], "").contains("perhaps \"open mesh\""));
    assert!(told(&["compare", "-", "--cloth", "open mesh"], &bare).contains("no run has cloth"));
    assert!(told(&["compare", EXAMPLE], "").contains("nothing to compare"));
    assert!(
        told(&["compare", EXAMPLE, "--cloth", "none", "--height", "12 ft"], "").contains("above the fence")
    );
    assert!(told(&["compare", EXAMPLE, "--height", "6"], "").contains("no unit"));
    assert!(told(&["compare", EXAMPLE, "--gust", "-5 mph"], "").contains("above 0"));
    assert!(told(&["compare", EXAMPLE, EXAMPLE, "--cloth", "none"], "").contains("side by side"));
    let hung = run_with(&["compare", "-", "--cloth", "open mesh", "--height", "6 ft"], &bare);
    assert_eq!(hung.code, 0, "{}", hung.err);
}

#[test]
fn a_side_without_cloth_differs_by_its_corner_posts_and_the_comparison_says_so() {
    let text =
        run(&["compare", EXAMPLE, "--cloth", "none", "--cloth", "closed mesh"]).text.replace("\n  ", " ");
    let (_, west) = text.split_once("west side").unwrap();
    assert!(
        west.contains("those of its corner posts, which carry the cloth of the other run as well"),
        "{west}"
    );
    let (before, _) = text.split_once("west side").unwrap();
    assert!(!before.contains("corner posts"), "{before}");
}

#[test]
fn one_survey_by_three_codes_stands_side_by_side_as_three_surveys_do() {
    let codes = ["asce7-10", "asce7-16", "asce7-22"];
    let asked = ["compare", EXAMPLE, "--code", codes[0], "--code", codes[1], "--code", codes[2]];
    let answer = json(&[&asked[..], &["--format", "json"]].concat(), "");
    let text = std::fs::read_to_string(EXAMPLE).unwrap();
    for (at, code) in codes.iter().enumerate() {
        assert_eq!(answer["columns"][at]["label"], *code);
        // 7-10 knows no ground elevation: without it, as a survey by that edition is written.
        let mut survey = text.replace("asce7-16", code);
        if *code == "asce7-10" {
            survey = survey
                .lines()
                .filter(|line| !line.starts_with("ground_elevation"))
                .collect::<Vec<_>>()
                .join("\n");
        }
        let (check, _) = crate::support::json_of(&survey);
        for (run, theirs) in
            answer["columns"][at]["runs"].as_array().unwrap().iter().zip(check["runs"].as_array().unwrap())
        {
            assert_eq!(run["name"], theirs["name"]);
            let largest = theirs["posts"]
                .as_array()
                .unwrap()
                .iter()
                .map(|post| post["base_moment_n_m"].as_f64().unwrap());
            assert_eq!(run["base_moment_n_m"], largest.fold(0.0, f64::max), "{code}");
        }
    }
    let notes: Vec<&str> =
        answer["remarks"].as_array().unwrap().iter().map(|note| note.as_str().unwrap()).collect();
    assert!(notes.contains(&"asce7-10 does not read ground_elevation: left out."), "{notes:?}");
    assert!(notes.iter().any(|note| note.contains("maps of its own")));

    let out = run(&asked);
    assert_eq!(out.code, 0, "{}", out.err);
    // By hand: 7-16 is 7-10 with K_e = e^(−0.000 036 2 × 340) = 0.987 767 besides.
    let moment = |column: usize| answer["columns"][column]["runs"][0]["base_moment_n_m"].as_f64().unwrap();
    assert!((moment(1) / moment(0) - 0.987_767).abs() < 1e-6);
    assert!(out.text.contains("code ") && !out.text.contains("cloth "), "{}", out.text);
    assert!(out.text.lines().any(|line| line.starts_with("asce7-22 ")), "{}", out.text);
    assert!(!out.text.contains("Savings"), "{}", out.text);
    let csv = run(&[&asked[..], &["--format", "csv"]].concat()).text;
    assert!(csv.starts_with("code,run,solidity") && csv.lines().count() == 13, "{csv}");

    // Three surveys that differ in their code alone say the same.
    let folder = tempfile::tempdir().unwrap();
    let files: Vec<String> = codes
        .iter()
        .map(|code| {
            let path = folder.path().join(format!("{code}.toml"));
            let survey = text.replace("asce7-16", code).replace("ground_elevation   = \"340 ft\"\n", "");
            std::fs::write(&path, survey).unwrap();
            path.to_str().unwrap().to_owned()
        })
        .collect();
    let side = run(&["compare", &files[0], &files[1], &files[2]]);
    assert_eq!(side.code, 0, "{}", side.err);
    assert!(side.text.contains("survey ") && side.text.contains("asce7-22.toml"), "{}", side.text);
}

#[test]
fn one_other_code_stands_beside_the_surveys_own_and_a_hill_goes_along() {
    let hill = vector("12 x 10 ft", "0.95", COURT).replace(
        "[post.line]",
        "[site.hill]\nshape = \"ridge\"\nheight = \"100 ft\"\nhalf_length = \"250 ft .. 300 ft\"\ndistance = \"0 ft\"\n\
         side = \"upwind\"\n[post.line]",
    );
    let answer = json(&["compare", "-", "--code", "asce7-22", "--format", "json"], &hill);
    let labels: Vec<&str> = answer["columns"]
        .as_array()
        .unwrap()
        .iter()
        .map(|column| column["label"].as_str().unwrap())
        .collect();
    assert_eq!(labels, ["asce7-16", "asce7-22"]);
    let moment = |column: usize| answer["columns"][column]["runs"][0]["base_moment_n_m"].as_f64().unwrap();
    // K_z at 15 ft: 0.8512 by 7-22, 0.8489 by 7-16; the hill is the same.
    assert!((moment(1) / moment(0) - 0.851_168 / 0.848_884).abs() < 1e-4, "{}", moment(1) / moment(0));
    let flat = json(
        &["compare", "-", "--code", "asce7-22", "--format", "json"],
        &vector("12 x 10 ft", "0.95", COURT),
    );
    assert!(moment(0) / flat["columns"][0]["runs"][0]["base_moment_n_m"].as_f64().unwrap() > 1.9);
}

#[test]
fn codes_that_cannot_be_compared_are_told_in_one_line() {
    let told = |arguments: &[&str]| {
        let out = run(arguments);
        assert_eq!((out.code, out.text.as_str()), (2, ""), "{}", out.err);
        assert_eq!(out.err.trim().lines().count(), 1, "{}", out.err);
        out.err
    };
    assert!(told(&["compare", EXAMPLE, "--code", "asce7-16"]).contains("by asce7-16 already"));
    assert!(
        told(&["compare", EXAMPLE, "--code", "asce7-61"])
            .contains("none of asce7-10, asce7-16, asce7-22, perhaps asce7-")
    );
    assert!(told(&["compare", EXAMPLE, EXAMPLE, "--code", "asce7-22"]).contains("goes with one survey"));
    assert!(
        told(&["compare", EXAMPLE, "--code", "asce7-22", "--cloth", "none"]).contains("goes with one survey")
    );
    // Ground below the sea makes the air heavier, and 7-10 does not know it.
    let below =
        vector("12 x 10 ft", "0.95", COURT).replace("exposure", "ground_elevation = \"-200 ft\"\nexposure");
    let out = run_with(&["compare", "-", "--code", "asce7-10"], &below);
    assert_eq!((out.code, out.text.as_str()), (2, ""));
    assert!(
        out.err.contains("asce7-10 does not read ground_elevation") && out.err.contains("too small"),
        "{}",
        out.err
    );
}

/// A survey of one run whose screen table has `more` in it.
fn screened(more: &str) -> String {
    let text = vector("12 x 10 ft", "0.75", COURT);
    let screen = "screen = { solidity = 0.75,";
    assert!(text.contains(screen), "{text}");
    text.replacen(screen, &format!("screen = {{ {more},"), 1)
}

/// The first run with its cloth as surveyed, from the ground up.
fn first_run(survey: &str) -> Value {
    json(&["compare", "-", "--height", "10 ft", "--format", "json"], survey)["columns"][0]["runs"][0].clone()
}

const TEST: &str = r#"air_permeability = { flow = "500 cfm/ft2", at = "125 Pa" }"#;

#[test]
fn a_test_of_air_permeability_moves_the_model_and_never_the_check() {
    let (without, with) = (screened("solidity = 0.75"), screened(&format!("solidity = 0.75, {TEST}")));
    assert_eq!(crate::support::json_of(&without).0["runs"], crate::support::json_of(&with).0["runs"]);
    let (before, after) = (first_run(&without), first_run(&with));
    assert_eq!(before["solidity"], after["solidity"]);
    assert_eq!(before["base_moment_n_m"], after["base_moment_n_m"]);
    let factor = |run: &Value| run["model_load_factor"].as_f64().unwrap();
    // k 32.29 by the test and 0.226 by the chain link; 9.975 and 0.226 by solidity.
    assert!((factor(&after) - 0.9777).abs() < 5e-5 && (factor(&before) - 0.9267).abs() < 5e-5);
    let text = run_with(&["check", "-"], &with).text.replace("\n  ", " ");
    assert!(text.contains("round wire mesh 0.85 solid does"), "{text}");
    assert!(text.contains("denser than the 0.75 the check takes"), "{text}");
}

#[test]
fn a_test_alone_leaves_the_solidity_unknown() {
    let (tested, unknown) = (screened(TEST), screened("solidity = \"unknown\""));
    assert_eq!(crate::support::json_of(&tested).0["runs"], crate::support::json_of(&unknown).0["runs"]);
    let remarks = |survey: &str| {
        let answer = crate::support::json_of(survey).0;
        let all = answer["remarks"].as_array().unwrap().clone();
        all.iter().map(|one| one["id"].as_str().unwrap().to_owned()).collect::<Vec<_>>()
    };
    let told = remarks(&tested);
    assert!(told.iter().any(|id| id == "air-permeability") && told.iter().any(|id| id == "solidity-unknown"));
    assert!(!remarks(&unknown).iter().any(|id| id == "air-permeability"));
    let range = screened(r#"air_permeability = { flow = "400 cfm/ft2 .. 700 cfm/ft2", at = "125 Pa" }"#);
    let text = run_with(&["check", "-"], &range).text.replace("\n  ", " ");
    assert!(text.contains("round wire mesh 0.80 to 0.88 solid does"), "{text}");
    // The tighter end is the heavier.
    let (tight, given) = (
        first_run(&screened(r#"air_permeability = { flow = "400 cfm/ft2", at = "125 Pa" }"#)),
        first_run(&range),
    );
    assert_eq!(tight["model_load_factor"], given["model_load_factor"]);
}

#[test]
fn cloth_over_cloth_is_one_denser_cloth_to_the_check_and_two_losses_to_the_model() {
    // 1 - 0.25 x 0.20 is 0.95.
    let (two, one) = (screened("solidity = 0.75, over = { solidity = 0.80 }"), screened("solidity = 0.95"));
    let figure =
        |survey: &str, key: &str| crate::support::json_of(survey).0["runs"][0][key].as_f64().unwrap();
    for key in ["solidity", "limit_gust_m_s"] {
        let (two, one) = (figure(&two, key), figure(&one, key));
        assert!((two / one - 1.0).abs() < 1e-12, "{key}: {two} {one}");
    }
    let factor = |survey: &str| first_run(survey)["model_load_factor"].as_f64().unwrap();
    // k 9.975 + 17.04 + 0.226 = 27.24 beside 362.2 of the one denser cloth.
    assert!((factor(&two) - 0.9733).abs() < 1e-4, "{}", factor(&two));
    assert!(factor(&two) < factor(&one));
    let text = run_with(&["check", "-"], &two).text.replace("\n  ", " ");
    assert!(text.contains("2 cloths hang one over the other"), "{text}");
    assert!(text.contains("under cloth 0.80 solid"), "{text}");
}

#[test]
fn cloth_over_cloth_may_stand_in_any_form_and_order() {
    let solidity = |over: &str| {
        let answer = crate::support::json_of(&screened(&format!("solidity = 0.5, over = {over}"))).0;
        answer["runs"][0]["solidity"].as_f64().unwrap()
    };
    let bare = {
        let answer = crate::support::json_of(&screened("solidity = 0.5")).0;
        answer["runs"][0]["solidity"].as_f64().unwrap()
    };
    let open = |solidity: f64| 1.0 - solidity;
    assert!((open(solidity("\"closed mesh\"")) / open(bare) - 0.05).abs() < 1e-9);
    assert_eq!(solidity("\"closed mesh\""), solidity("[\"Closed Mesh\"]"));
    assert_eq!(solidity("\"none\""), bare);
    let (forth, back) =
        (solidity("[\"open mesh\", { solidity = 0.3 }]"), solidity("[{ solidity = 0.3 }, \"open mesh\"]"));
    assert!((forth - back).abs() < 1e-12 && (open(forth) / open(bare) - 0.2 * 0.7).abs() < 1e-9);
    let answer = crate::support::json_of(&screened("solidity = 0.5, over = \"open mesh\"")).0;
    let open_keys = answer["measure_next"].to_string();
    assert!(open_keys.contains("the cloth over the cloth on run"), "{open_keys}");
}

#[test]
fn another_cloth_or_none_takes_what_hung_over_it_away_too() {
    let survey = screened(&format!("solidity = 0.75, {TEST}, over = \"solid\""));
    let plain = screened("solidity = 0.75");
    let of = |survey: &str| {
        json(
            &[
                "compare",
                "-",
                "--cloth",
                "open mesh",
                "--cloth",
                "none",
                "--cloth",
                "tight woven mesh",
                "--format",
                "json",
            ],
            survey,
        )["columns"]
            .clone()
    };
    assert_eq!(of(&survey), of(&plain));
    let as_it_hangs = first_run(&survey);
    assert_eq!(as_it_hangs["solidity"], 1.0);
    assert_eq!(as_it_hangs["model_load_factor"], 1.0);
}

#[test]
fn wind_from_the_side_is_told_and_gives_no_credit() {
    let survey = screened("solidity = 0.95");
    let answer =
        json(&["compare", "-", "--cloth", "none", "--cloth", "closed mesh", "--format", "json"], &survey);
    let share = |column: usize| &answer["columns"][column]["runs"][0]["model_load_share_at_45_degrees"];
    assert!(share(0).is_null());
    assert!((share(1).as_f64().unwrap() - 0.9981).abs() < 2e-4, "{}", share(1));
    let text = run_with(&["compare", "-", "--cloth", "none", "--cloth", "closed mesh"], &survey).text;
    let text = text.replace("\n  ", " ");
    assert!(text.contains("leaves of the load 100 % with closed mesh. No credit is taken"), "{text}");
}
