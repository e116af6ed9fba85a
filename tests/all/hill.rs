//! A hill in the survey: its factor at each height, what is told of it, and what is not known of it.

use crate::command::vector;
use crate::support::{json_of, run_with};
use fencegust::survey::{Extreme, Settled, Survey};
use fencegust::units::feet;
use serde_json::Value;

/// The worked vector on a hill, its table given by lines.
fn on(hill: &str) -> String {
    vector("12 x 10 ft", "1.0", "\"none\"")
        .replace("[post.line]", &format!("[site.hill]\n{hill}\n[post.line]"))
}

const RIDGE: &str = "shape = \"ridge\"\nheight = \"100 ft\"\nhalf_length = \"250 ft\"\ndistance = \"0 ft\"\nside = \"upwind\"";
const BANK: &str = "shape = \"escarpment\"\nheight = \"40 ft\"\nhalf_length = \"60 ft\"\ndistance = \"50 ft\"\nside = \"downwind\"";

fn remarks(answer: &Value) -> Vec<(&str, &str)> {
    let all = answer["remarks"].as_array().unwrap();
    all.iter().map(|one| (one["id"].as_str().unwrap(), one["text"].as_str().unwrap())).collect()
}

fn has(answer: &Value, id: &str) -> bool {
    remarks(answer).iter().any(|(name, _)| *name == id)
}

fn read(text: &str) -> Survey {
    Survey::read(text, "survey").unwrap_or_else(|mistakes| panic!("{mistakes}"))
}

/// K_zt of a settled site at the top of the fence.
fn factor(settled: &Settled) -> f64 {
    settled.site.on_hill(feet(10.0)).unwrap().factor
}

#[test]
fn a_survey_on_a_ridge_is_one_with_its_factor_at_the_top_of_the_cloth() {
    // (1 + 0.58 e^(−3 × 10 ÷ 250))² at 10 ft; at 5 ft, where cloth as open work is worked, 2.390 807.
    let (ridge, _) = json_of(&on(RIDGE));
    let level = |factor: &str| {
        json_of(
            &vector("12 x 10 ft", "1.0", "\"none\"")
                .replace("exposure = \"C\"", &format!("exposure = \"C\"\ntopographic_factor = {factor}")),
        )
        .0
    };
    let figure =
        |answer: &Value, post: usize, key: &str| answer["runs"][0]["posts"][post][key].as_f64().unwrap();
    let with = level("2.2934493190546914");
    for post in 0..13 {
        for key in ["base_moment_n_m", "limit_gust_m_s"] {
            let (ours, theirs) = (figure(&ridge, post, key), figure(&with, post, key));
            assert!((ours / theirs - 1.0).abs() < 1e-12, "{post} {key}: {ours} {theirs}");
        }
    }
    // Bare, the wire and posts are worked lower down, where the wind of a hill is the stronger.
    let times = figure(&ridge, 6, "bare_base_moment_n_m") / figure(&level("1.0"), 6, "bare_base_moment_n_m");
    assert!((times - 2.390_806_9).abs() < 1e-6, "{times}");
}

#[test]
fn the_question_whether_there_is_a_hill_goes_away_once_it_is_answered() {
    let flat = json_of(&vector("12 x 10 ft", "1.0", "\"none\"")).0;
    assert!(has(&flat, "hill") && !has(&flat, "on-a-hill"));
    for hill in [RIDGE, BANK] {
        let told = json_of(&on(hill)).0;
        assert!(!has(&told, "hill") && has(&told, "on-a-hill"), "{told}");
    }
    let none = vector("12 x 10 ft", "1.0", "\"none\"")
        .replace("exposure = \"C\"", "exposure = \"C\"\nhill = \"none\"");
    let none = json_of(&none).0;
    assert!(!has(&none, "hill") && !has(&none, "on-a-hill"));
    assert_eq!(none["runs"][0]["posts"], flat["runs"][0]["posts"]);
}

#[test]
fn what_was_taken_of_the_hill_and_where_it_stands_are_told() {
    let (answer, _) = json_of(&on(BANK));
    let text = remarks(&answer).into_iter().find(|(id, _)| *id == "on-a-hill").unwrap().1.to_owned();
    for said in [
        "1.59 times",
        "10 ft",
        "ASCE 7-16 26.8.2, Eq. 26.8-1",
        "taken as met without being asked",
        "100 times its height or 2 miles",
        "upper half or near the crest",
    ] {
        assert!(text.contains(said), "does not say {said}: {text}");
    }
    let brief = run_with(&["check", "--brief", "-"], &on(BANK)).text;
    assert!(brief.replace('\n', " ").contains("hill: escarpment"), "{brief}");
    let workings = run_with(&["check", "--workings", "run/7", "-"], &on(BANK)).text;
    for said in [
        "K_1 = k_1 × min(H / L_h, 0.5)",
        "K_zt = (1 + K_1 × K_2 × K_3)²",
        "ASCE 7-16 26.8.2, Fig. 26.8-1",
        "without being asked",
    ] {
        assert!(workings.contains(said), "does not say {said}:\n{workings}");
    }
}

#[test]
fn a_hill_too_low_or_too_flat_makes_no_difference_and_the_survey_is_told_why() {
    let flat = json_of(&vector("12 x 10 ft", "1.0", "\"none\"")).0;
    for (from, to, why) in
        [("\"100 ft\"", "\"14 ft\"", "H/L_h below 0.2"), ("\"100 ft\"", "\"49 ft\"", "H/L_h below 0.2")]
    {
        let (answer, _) = json_of(&on(&RIDGE.replacen(from, to, 1)));
        let told =
            remarks(&answer).into_iter().find(|(id, _)| *id == "hill-without-factor").unwrap().1.to_owned();
        assert!(told.contains(why), "{told}");
        assert_eq!(answer["runs"][0]["posts"], flat["runs"][0]["posts"]);
    }
    let low = on(&RIDGE.replace("\"100 ft\"", "\"14 ft\"").replace("\"250 ft\"", "\"30 ft\""));
    assert!(remarks(&json_of(&low).0).iter().any(|(_, text)| text.contains("below 15 ft")));
    // Among houses 60 ft are asked for.
    let houses = on(BANK).replace("exposure = \"C\"", "exposure = \"B\"");
    assert!(has(&json_of(&houses).0, "hill-without-factor"));
}

#[test]
fn each_edition_works_the_same_hill_under_its_own_clause() {
    for (code, name) in [("asce7-10", "ASCE 7-10"), ("asce7-16", "ASCE 7-16"), ("asce7-22", "ASCE 7-22")] {
        let survey = on(BANK).replace("asce7-16", code);
        let (answer, _) = json_of(&survey);
        let text = remarks(&answer).into_iter().find(|(id, _)| *id == "on-a-hill").unwrap().1.to_owned();
        assert!(text.contains("1.59 times") && text.contains(&format!("{name} 26.8.2")), "{text}");
        let level = vector("12 x 10 ft", "1.0", "\"none\"").replace("asce7-16", code);
        let moment =
            |survey: &str| json_of(survey).0["runs"][0]["posts"][6]["base_moment_n_m"].as_f64().unwrap();
        // K_3 at 10 ft is e^(−2.5 × 10 ÷ 80) = 0.731 616: (1 + 0.425 × 0.843 75 × 0.731 616)² = 1.593 535.
        assert!((moment(&survey) / moment(&level) - 1.593_534_6).abs() < 1e-6, "{code}");
    }
}

#[test]
fn what_is_not_known_of_a_hill_is_settled_at_the_worse_end_of_all_it_could_be() {
    let open = |hill: &str| {
        let survey = read(&on(hill));
        (factor(&survey.at_worst()), factor(&survey.at_best()))
    };
    let known = |shape: &str, height: f64, half_length: f64, distance: f64, side: &str| {
        let hill = format!(
            "shape = \"{shape}\"\nheight = \"{height} ft\"\nhalf_length = \"{half_length} ft\"\ndistance = \"{distance} ft\"\n\
             side = \"{side}\""
        );
        factor(&read(&on(&hill)).at_worst())
    };
    // One open key each, and all of them at once; the half length has its worst between its ends.
    for (shapes, sides, (low_height, high_height), (short, long), (near, far)) in [
        (&["ridge"][..], &["upwind"][..], (40.0, 40.0), (60.0, 600.0), (100.0, 100.0)),
        (&["escarpment"], &["upwind", "downwind"], (30.0, 60.0), (100.0, 100.0), (0.0, 300.0)),
        (&["escarpment", "hill", "ridge"], &["downwind"], (50.0, 50.0), (120.0, 260.0), (150.0, 150.0)),
        (
            &["escarpment", "hill", "ridge"],
            &["upwind", "downwind"],
            (30.0, 60.0),
            (80.0, 400.0),
            (50.0, 200.0),
        ),
    ] {
        let word = |all: &[&str]| if all.len() == 1 { all[0].to_owned() } else { "unknown".to_owned() };
        let range = |low: f64, high: f64| {
            if low == high { format!("{low} ft") } else { format!("{low} ft .. {high} ft") }
        };
        let (worst, best) = open(&format!(
            "shape = \"{}\"\nheight = \"{}\"\nhalf_length = \"{}\"\ndistance = \"{}\"\nside = \"{}\"",
            word(shapes),
            range(low_height, high_height),
            range(short, long),
            range(near, far),
            word(sides)
        ));
        let (mut most, mut least) = (1.0_f64, f64::MAX);
        for shape in shapes {
            for side in sides {
                for height in [low_height, high_height] {
                    for distance in [near, far] {
                        for step in 0..=40 {
                            let half_length = short + (long - short) * f64::from(step) / 40.0;
                            let of = known(shape, height, half_length, distance, side);
                            (most, least) = (most.max(of), least.min(of));
                        }
                    }
                }
            }
        }
        assert!(worst >= most - 1e-9, "{shapes:?}: {worst} below {most}");
        assert!(worst <= most * 1.01, "{shapes:?}: {worst} far above {most}");
        assert!(best <= least + 1e-9, "{shapes:?}: {best} above {least}");
    }
    // By hand: K_1 K_2 of a ridge is k H (1/L − x/(μ L²)), greatest at L = 2x/μ = 133.3 ft; K_3 moves it outwards.
    let survey = read(&on(&RIDGE
        .replace("\"100 ft\"", "\"20 ft\"")
        .replace("\"250 ft\"", "\"60 ft .. 100 ft\"")
        .replace("\"0 ft\"", "\"100 ft\"")));
    let end = known("ridge", 20.0, 100.0, 100.0, "upwind");
    assert!((factor(&survey.at_worst()) - end).abs() < 1e-12);
}

#[test]
fn the_worst_hill_at_the_top_of_the_highest_fence_is_the_worst_lower_down_to_a_hundredth() {
    let hill = "shape = \"unknown\"\nheight = \"30 ft .. 60 ft\"\nhalf_length = \"80 ft .. 400 ft\"\ndistance = \"100 ft\"\nside = \"unknown\"";
    let survey = read(&on(hill));
    let settled = survey.at_worst();
    for level in [1.0, 3.0, 5.0, 8.0, 10.0] {
        let ours = settled.site.on_hill(feet(level)).unwrap().factor;
        let mut most = 1.0_f64;
        for shape in ["escarpment", "hill", "ridge"] {
            for step in 0..=64 {
                let half_length = 80.0 + 320.0 * f64::from(step) / 64.0;
                let known = on(&hill
                    .replacen("unknown", shape, 1)
                    .replace("80 ft .. 400 ft", &format!("{half_length} ft"))
                    .replace("30 ft .. 60 ft", "60 ft")
                    .replace("unknown", "downwind"));
                most = most.max(read(&known).at_worst().site.on_hill(feet(level)).unwrap().factor);
            }
        }
        assert!(ours >= most * 0.99, "{level} ft: {ours} for {most}");
    }
}

#[test]
fn each_open_key_of_a_hill_is_asked_about_alone() {
    let survey =
        read(&on(&RIDGE.replace("\"100 ft\"", "\"60 ft .. 100 ft\"").replace("\"upwind\"", "\"unknown\"")));
    let keys: Vec<String> = survey.open_keys().into_iter().map(|open| open.key).collect();
    assert_eq!(keys, ["site.hill.height", "site.hill.side"]);
    let height_known_low =
        survey.settle(&|key| if key == "site.hill.height" { Extreme::Best } else { Extreme::Worst });
    assert!(factor(&height_known_low) < factor(&survey.at_worst()));
    let (answer, _) = json_of(&on(&RIDGE.replace("\"100 ft\"", "\"60 ft .. 100 ft\"")));
    let next = &answer["measure_next"][0];
    assert_eq!(next["key"], "site.hill.height");
    assert!(next["limit_gust_gain_m_s"].as_f64().unwrap() > 0.5);
}

#[test]
fn the_survey_as_read_shows_the_hill_and_that_the_factor_comes_from_it() {
    let text = run_with(&["check", "--as-read", "-"], &on(&format!("{RIDGE}\nnote = \"county map\""))).text;
    let line = |key: &str| {
        text.lines()
            .find(|line| line.starts_with(&format!("{key} ")))
            .unwrap_or_else(|| panic!("{key}:\n{text}"))
    };
    assert!(line("site.hill.height").contains("100 ft") && line("site.hill.height").ends_with("as written"));
    assert!(line("site.topographic_factor").contains("by hill"));
    let printed = run_with(&["check", "-"], &on(&format!("{RIDGE}\nnote = \"county map\""))).text;
    assert!(printed.contains("note, site: hill: county map"), "{printed}");
    let flat = run_with(&["check", "--as-read", "-"], &vector("12 x 10 ft", "1.0", "\"none\"")).text;
    assert!(
        flat.lines()
            .any(|line| line.starts_with("site.hill ") && line.contains("none") && line.ends_with("default"))
    );
}
