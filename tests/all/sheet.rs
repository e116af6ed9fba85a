//! The client's caution sheet: what stands on it, that its figures are those of the answer, that nothing is lost.

use crate::command::vector;
use crate::support::{json_of, run, run_with};
use serde_json::Value;
use std::fs;
use tempfile::tempdir;

const EXAMPLE: &str = "examples/tarnwick-green.toml";
const COURT: &str = r#"{ mesh = "1-3/4 in", wire = "9 gauge" }"#;
const SURVEYS: [&str; 5] = [
    EXAMPLE,
    "tests/surveys/one-bay.toml",
    "tests/surveys/sixty-bays.toml",
    "tests/surveys/eight-runs.toml",
    "tests/surveys/seventy-runs.toml",
];

/// A survey of the list in one system of units.
fn survey(name: &str, units: &str) -> String {
    let text = fs::read_to_string(name).unwrap();
    assert!(text.contains("units  = \"us\""));
    text.replace("units  = \"us\"", &format!("units = \"{units}\""))
}

fn sheet_of(survey: &str) -> String {
    let out = run_with(&["sheet", "-", "--for", "client"], survey);
    assert!(out.err.is_empty(), "{}", out.err);
    out.text
}

fn example() -> String {
    sheet_of(&survey(EXAMPLE, "us"))
}

/// Text without marks, references resolved, with plain spaces.
fn plain(html: &str) -> String {
    let mut text = String::new();
    let mut rest = html;
    while let Some((before, after)) = rest.split_once('<') {
        text.push_str(before);
        rest = after.split_once('>').expect("a mark is closed").1;
    }
    text.push_str(rest);
    for (reference, letter) in [("&lt;", "<"), ("&gt;", ">"), ("&quot;", "\""), ("&amp;", "&")] {
        text = text.replace(reference, letter);
    }
    text.replace('\u{a0}', " ").replace('\u{2060}', "")
}

/// What stands between each two marks.
fn between<'t>(text: &'t str, open: &str, close: &str) -> Vec<&'t str> {
    text.split(open).skip(1).map(|part| part.split_once(close).expect("it is closed").0).collect()
}

/// The body without its drawings.
fn words(html: &str) -> String {
    let body = html.split_once("<body>").unwrap().1;
    let mut text = String::new();
    let mut rest = body;
    while let Some((before, after)) = rest.split_once("<svg") {
        text.push_str(before);
        rest = after.split_once("</svg>").unwrap().1;
    }
    text.push_str(rest);
    text
}

/// The cells of each row of figures.
fn rows(html: &str) -> Vec<Vec<String>> {
    let body = between(html, "<tbody>", "</tbody>")[0];
    body.split("<tr")
        .skip(1)
        .filter(|row| row.contains("class=\"figure\""))
        .map(|row| row.split("<td").skip(1).map(|cell| plain(&format!("<td{cell}"))).collect())
        .collect()
}

/// A speed as a report prints it: rounded down.
fn gust(metres_a_second: &Value, units: &str) -> String {
    let si = metres_a_second.as_f64().expect("it was worked");
    if units == "us" {
        format!("{:.0} mph", (si / 0.44704 + 1e-9).floor())
    } else {
        format!("{:.1} m/s", (si * 10.0 + 1e-9).floor() / 10.0)
    }
}

fn largest_ratio(run: &Value) -> f64 {
    let posts = run["posts"].as_array().unwrap().iter();
    posts
        .flat_map(|post| post["parts"].as_array().unwrap())
        // What holds the cloth is told apart.
        .filter(|part| part["part"] != "ties and lacing")
        .filter_map(|part| part["ratio"].as_f64())
        .fold(0.0, f64::max)
}

fn up(ratio: f64) -> String {
    format!("{:.2}", (ratio * 100.0 - 1e-9).ceil() / 100.0)
}

#[test]
fn the_decision_stands_first_and_everything_a_client_must_know_is_on_the_sheet() {
    let html = example();
    let text = plain(&words(&html));
    let place = |what: &str| text.find(what).unwrap_or_else(|| panic!("does not say {what}:\n{text}"));
    let order = [
        "Tarnwick Green courts 1-3",
        "DECISION",
        "Do not hang the cloth on north end, south end (A) and east side (B).",
        "Hang nothing on west side (C).",
        "What may hang where",
        "Take down:",
        "NOT CHECKED Footings, rails, sway in gusts, ties and lacing.",
        "WARNING A fence that fails with cloth on it can fall on people and kill.",
        "This sheet is not an engineer's design.",
        "licensed engineer",
        "local building code",
        "What to measure next",
        "Client",
        "Crew",
        "design wind 115 mph (city handout, risk category II)",
        "AISC 360-16",
        "fencegust 0.1.0",
    ]
    .map(place);
    assert!(order.is_sorted(), "{order:?}");
    for said in
        ["multiply it by at least 1.4, inland by 1.6, in a tropical cyclone by 1.75", "our own judgement"]
    {
        place(said);
    }
    let (json, _) = json_of(&survey(EXAMPLE, "us"));
    place(json["survey_hash"].as_str().unwrap());
    for caution in json["cautions"].as_array().unwrap() {
        place(caution["text"].as_str().unwrap());
    }
    for left_out in json["not_covered"].as_array().unwrap() {
        place(left_out["text"].as_str().unwrap());
    }
}

#[test]
fn nothing_on_a_sheet_is_called_safe() {
    for name in SURVEYS {
        let text = plain(&words(&sheet_of(&survey(name, "us")))).to_lowercase();
        let said = "nothing here calls a fence safe";
        assert!(text.contains(said));
        assert!(!text.replace(said, "").contains("safe"), "{name}");
    }
}

#[test]
fn each_row_holds_the_figures_of_its_run_in_the_json() {
    for units in ["us", "si"] {
        let text = survey(EXAMPLE, units);
        let (json, _) = json_of(&text);
        let rows = rows(&sheet_of(&text));
        let runs = json["runs"].as_array().unwrap();
        // The north and the south end are told together.
        for (row, run) in rows.iter().zip([&runs[0], &runs[2], &runs[3]]) {
            let plan = &run["plan"];
            let of = |group: &str, key: &str| match &plan[group] {
                Value::Null => "–".to_owned(),
                group => gust(&group[key], units),
            };
            assert!(row[0].contains(run["name"].as_str().unwrap()), "{row:?}");
            assert!(row[2].contains(run["own_flag_of_checked"].as_str().unwrap()), "{row:?}");
            // Corner posts of a bare run that carry the cloth of the other side are told with that side.
            assert!(row[2].contains(&up(run["own_ratio"].as_f64().unwrap())), "{row:?}");
            assert_eq!(row[3], gust(&run["bare_limit_gust_m_s"], units));
            assert_eq!(row[4], of("near_ends", "limit_gust_m_s"));
            assert_eq!(row[5], of("inside", "limit_gust_m_s"));
            assert_eq!(row[6], of("whole", "warn_gust_m_s"));
            assert!(row[7].ends_with(&of("whole", "act_gust_m_s")), "{row:?}");
        }
        assert_eq!(rows.len(), 3);
    }
}

#[test]
fn no_speed_stands_on_a_sheet_that_the_json_does_not_hold() {
    fn speeds(value: &Value, units: &str, found: &mut Vec<String>) {
        match value {
            Value::Object(map) => {
                for (key, value) in map {
                    if key.ends_with("_m_s") && value.is_number() {
                        found.push(gust(value, units));
                    }
                    speeds(value, units, found);
                }
            }
            Value::Array(all) => all.iter().for_each(|value| speeds(value, units, found)),
            _ => {}
        }
    }
    for (units, least) in [("us", "30 mph"), ("si", "13.4 m/s")] {
        for name in [EXAMPLE, "tests/surveys/one-bay.toml", "tests/surveys/sixty-bays.toml"] {
            let text = survey(name, units);
            let (json, _) = json_of(&text);
            let mut known = vec![least.to_owned()];
            speeds(&json, units, &mut known);
            // The design wind is printed as it was given.
            if let Some(design) = json["wind_speed_m_s"].as_f64() {
                known.push(if units == "us" {
                    format!("{:.0} mph", design / 0.44704)
                } else {
                    format!("{design:.1} m/s")
                });
            }
            let html = sheet_of(&text);
            let sheet = plain(html.split_once("<body>").unwrap().1);
            let unit = if units == "us" { " mph" } else { " m/s" };
            let mut count = 0;
            for (at, _) in sheet.match_indices(unit) {
                let figure = sheet[..at].rsplit(|c: char| !c.is_ascii_digit() && c != '.').next().unwrap();
                let speed = format!("{figure}{unit}");
                assert!(known.contains(&speed), "{name}: {speed} is in no answer: {known:?}");
                count += 1;
            }
            assert!(count >= 8, "{name}: {count} speeds");
        }
    }
}

#[test]
fn the_decision_prints_the_worst_ratio_and_the_load_against_the_bare_fence_as_the_json_has_them() {
    let (json, _) = json_of(&survey(EXAMPLE, "us"));
    let runs = json["runs"].as_array().unwrap();
    let worst = runs.iter().map(largest_ratio).fold(0.0, f64::max);
    let times = runs.iter().map(|run| run["load_times_bare"].as_f64().unwrap()).fold(0.0, f64::max);
    let text = plain(&words(&example()));
    assert!(text.contains(&format!("up to {} times", up(worst))), "{text}");
    assert!(text.contains(&format!("up to {times:.1} times what it is bare")), "{text}");
    let lowest = runs.iter().map(|run| run["limit_gust_m_s"].as_f64().unwrap()).fold(f64::INFINITY, f64::min);
    let said = format!("reaches its limit in a gust of {} at most", gust(&lowest.into(), "us"));
    assert!(text.contains(&said), "{text}");
}

#[test]
fn a_sheet_made_twice_is_the_same_to_the_byte() {
    for name in SURVEYS {
        let text = survey(name, "us");
        assert_eq!(sheet_of(&text), sheet_of(&text), "{name}");
    }
}

#[test]
fn a_sheet_needs_no_other_file_no_script_and_shows_no_green() {
    for name in [EXAMPLE, "tests/surveys/one-bay.toml", "tests/surveys/sixty-bays.toml"] {
        let html = sheet_of(&survey(name, "us"));
        for word in
            ["http", "<script", "<link", "<img", "<iframe", "@import", "url(", " src=", " href=", " on"]
        {
            let marks: Vec<&str> = between(&html, "<", ">");
            let style = between(&html, "<style>", "</style>")[0];
            let in_marks = marks.iter().any(|mark| format!("<{mark}").contains(word));
            assert!(!style.contains(word) && !in_marks, "{name} has {word}");
        }
        let colours: Vec<&str> = html
            .match_indices('#')
            .map(|(at, _)| &html[at + 1..at + 7])
            .filter(|text| text.chars().all(|c| c.is_ascii_hexdigit()))
            .collect();
        assert!(colours.len() > 10);
        for colour in colours {
            let part = |at: usize| u8::from_str_radix(&colour[at..at + 2], 16).unwrap();
            let (red, green, blue) = (part(0), part(2), part(4));
            assert!(!(green > red && green > blue), "{name}: #{colour} is green");
        }
        let style = between(&html, "<style>", "</style>")[0];
        for named in ["green", "lime", "olive", "teal", "rgb(", "hsl("] {
            assert!(!style.contains(named) && !html.contains(&format!("\"{named}")), "{name} has {named}");
        }
    }
}

#[test]
fn the_warning_is_orange_with_black_text_and_not_checked_is_framed_and_hatched_in_black() {
    let html = example();
    let style = between(&html, "<style>", "</style>")[0];
    assert!(style.contains(".warning>.lead{background:#F28C28;color:#000000}"), "{style}");
    assert!(style.contains(".panel{border:0.6mm solid #000000"), "{style}");
    let hatched = style.lines().find(|line| line.starts_with(".not-checked>.lead{")).unwrap();
    assert!(hatched.contains("repeating-linear-gradient"), "{hatched}");
    for panel in ["panel found over", "panel not-checked", "panel warning"] {
        assert_eq!(html.matches(&format!("<section class=\"{panel}\">")).count(), 1, "{panel}");
    }
    // Backgrounds are printed whatever the reader's settings are.
    assert!(style.contains("print-color-adjust:exact"));
}

#[test]
fn the_paper_follows_the_units_unless_it_is_named() {
    let paper = |units: &str, arguments: &[&str]| {
        let out =
            run_with(&[&["sheet", "-", "--for", "client"], arguments].concat(), &survey(EXAMPLE, units));
        between(&out.text, "@page{size:", " ")[0].to_owned()
    };
    assert_eq!(paper("us", &[]), "letter");
    assert_eq!(paper("si", &[]), "A4");
    assert_eq!(paper("us", &["--paper", "a4"]), "A4");
    assert_eq!(paper("si", &["--paper", "letter"]), "letter");
}

#[test]
fn exit_codes_are_those_of_check() {
    assert_eq!(run(&["sheet", EXAMPLE, "--for", "client"]).code, 1);
    assert_eq!(run(&["sheet", "tests/surveys/one-bay.toml", "--for", "client"]).code, 3);
    assert_eq!(run(&["sheet", "tests/surveys/sixty-bays.toml", "--for", "client"]).code, 3);
    let wrong = run_with(&["sheet", "-", "--for", "client"], "survey = 1\n");
    assert_eq!((wrong.code, wrong.text.as_str()), (2, ""));
    assert!(!wrong.err.is_empty());
    assert_eq!(run(&["sheet", EXAMPLE]).code, 2);
}

#[test]
fn a_file_is_written_whole_and_never_over_another_unless_forced() {
    let folder = tempdir().unwrap();
    let file = folder.path().join("sheet.html");
    let name = file.to_str().unwrap();
    let arguments = ["sheet", EXAMPLE, "--for", "client", "--out", name];
    let out = run(&arguments);
    assert_eq!((out.code, out.text.as_str(), out.err.as_str()), (1, "", ""));
    let written = fs::read_to_string(&file).unwrap();
    assert_eq!(written, run(&["sheet", EXAMPLE, "--for", "client"]).text);
    fs::write(&file, "mine").unwrap();
    let refused = run(&arguments);
    assert_eq!(refused.code, 2);
    assert!(refused.err.contains("--force"), "{}", refused.err);
    assert_eq!(fs::read_to_string(&file).unwrap(), "mine");
    assert_eq!(run(&[&arguments[..], &["--force"]].concat()).code, 1);
    assert_eq!(fs::read_to_string(&file).unwrap(), written);
    let nowhere = folder.path().join("no/such/place.html");
    assert_eq!(run(&["sheet", EXAMPLE, "--for", "client", "--out", nowhere.to_str().unwrap()]).code, 2);
    assert_eq!(run(&["sheet", EXAMPLE, "--for", "client", "--out", folder.path().to_str().unwrap()]).code, 2);
    let left: Vec<_> = fs::read_dir(folder.path()).unwrap().collect();
    assert_eq!(left.len(), 1, "{left:?}");
}

#[test]
fn markup_in_names_is_shown_as_typed_and_a_title_of_ten_thousand_letters_is_cut_with_an_ellipsis() {
    let hostile = "<script>alert(1)</script> & <b>\\\"x\\\"</b>";
    let text = survey(EXAMPLE, "us")
        .replace("\"east side\"", &format!("\"{hostile}\""))
        .replace("Tarnwick Green courts 1-3, new cloth", &"Tarnwick ".repeat(1111))
        .replace("Parks office", "</title></style><h1>\\u0000\\u202E office");
    let html = sheet_of(&text);
    assert!(!html.contains("<script") && !html.contains("<b>\"x") && html.matches("<h1>").count() == 1);
    assert_eq!(html.matches("</title>").count(), 1 + html.matches("<svg").count());
    assert!(!html.contains('\u{0}') && !html.contains('\u{202e}'));
    let row = rows(&html).remove(1);
    let names = plain(&html);
    assert!(names.contains("<script>alert(1)</script> & <b>\"x\"</b>"), "{row:?}");
    let title = between(&html, "<h1>", "</h1>")[0];
    assert!(title.ends_with("…</bdi>") && title.len() < 150, "{title}");
    assert!(between(&html, "<title>", "</title>")[0].ends_with('…'));
}

#[test]
fn a_name_of_two_hundred_letters_stands_in_full_in_the_table_and_is_cut_in_drawings_and_sentences() {
    let long = format!("{}end", "the side along the lane ".repeat(9))[..200].trim_end().to_owned();
    let text = survey(EXAMPLE, "us").replace("\"east side\"", &format!("\"{long}\""));
    let html = sheet_of(&text);
    let table = plain(between(&html, "<tbody>", "</tbody>")[0]);
    assert!(table.contains(&long), "{table}");
    // In a drawing the name stands in full for those who hear it, and is cut for those who see it.
    let mut seen = html.clone();
    while let (Some(from), Some(to)) = (seen.find("<svg"), seen.find("</svg>")) {
        seen.replace_range(from..to + 6, "");
    }
    assert_eq!(plain(&seen).matches(&long).count(), 1);
    let drawings: Vec<&str> = between(&html, "<svg", "</svg>");
    let cut = "the side along the lane";
    assert!(drawings.iter().any(|drawing| {
        between(drawing, "<text", "</text>").iter().any(|text| text.contains(cut) && text.ends_with('…'))
    }));
}

#[test]
fn what_does_not_fit_is_said_with_the_worst_of_it() {
    let text = survey("tests/surveys/seventy-runs.toml", "us");
    let html = sheet_of(&text);
    let told = rows(&html).len();
    let (json, _) = json_of(&text);
    let mut gusts: Vec<f64> =
        json["runs"].as_array().unwrap().iter().map(|run| run["limit_gust_m_s"].as_f64().unwrap()).collect();
    gusts.sort_by(f64::total_cmp);
    assert_eq!(gusts.len(), 70);
    assert!((20..70).contains(&told), "{told}");
    let said = plain(&words(&html));
    let left = 70 - told;
    assert!(said.contains(&format!("{left} more kinds of run do not fit on this page.")), "{said}");
    // The lowest limit gusts stand in the table; the lowest of the others is named.
    let lowest = gust(&gusts[told].into(), "us");
    assert!(said.contains(&format!("the lowest limit gust of them {lowest} at most")), "{said}");
    assert!(said.contains("There is no room for drawings on this page."));
    for name in ["tests/surveys/one-bay.toml", EXAMPLE] {
        let said = plain(&words(&sheet_of(&survey(name, "us"))));
        assert!(!said.contains("do not fit") && !said.contains("no room"), "{name}");
    }
}

#[test]
fn runs_that_are_not_drawn_are_counted() {
    let html = sheet_of(&survey("tests/surveys/eight-runs.toml", "us"));
    let said = plain(&words(&html));
    let elevations = html.matches("as one faces it from inside</title>").count();
    assert!(elevations < 8);
    let told = if elevations == 0 {
        "No side is drawn by itself for want of room; the table has them all.".to_owned()
    } else {
        format!("Of 8 kinds of run {elevations} are drawn")
    };
    assert!(said.contains(&told), "{said}");
    assert_eq!(rows(&html).len(), 8);
}

#[test]
fn without_a_design_wind_nothing_is_decided_and_the_gusts_stand() {
    let html = sheet_of(&survey("tests/surveys/sixty-bays.toml", "us"));
    let said = plain(&words(&html));
    assert!(said.contains("No design wind is known. Do not hang cloth yet on lane side (A)."), "{said}");
    assert!(html.contains("panel found not-checked"));
    assert!(said.contains(
        "Any post at the design wind (no speed is given), footings, rails, sway in gusts, ties and lacing."
    ));
    assert!(rows(&html)[0][2].contains("◇ not checked: do not hang yet"));
    assert!(rows(&html)[0][4].ends_with(" mph"));
}

#[test]
fn end_panels_are_judged_by_the_run_worked_without_them_not_by_the_posts_inside() {
    let text = vector("12 x 10 ft", "0.95", COURT);
    let (json, _) = json_of(&text);
    let plan = &json["runs"][0]["plan"];
    let of = |group: &str| plan[group]["limit_gust_m_s"].as_f64().unwrap();
    // The posts inside stand far more, and yet the wind at the ends moves in with them.
    assert!(of("inside") > 1.3 * of("near_ends"));
    assert_eq!(plan["end_panels_alone_help"], false);
    let said = plain(&words(&sheet_of(&text)));
    assert!(said.contains("On A taking down the end panels alone is not worth it"), "{said}");
    // Weak end posts: without the end panels nothing hangs on them.
    let weak = text.replace(
        "[[run]]",
        "[post.weak]\ndiameter = \"1.9 in\"\nnominal_wall = \"0.12 in\"\nyield = \"30 ksi\"\n[[run]]\nline_post = \"line\"\nend_post = \"weak\"",
    );
    let (json, _) = json_of(&weak);
    let run = &json["runs"][0];
    let plan = &run["plan"];
    assert_eq!(plan["end_panels_alone_help"], true);
    let rest = plan["end_panels_off_limit_gust_m_s"].as_f64().unwrap();
    assert!(rest >= 1.1 * run["limit_gust_m_s"].as_f64().unwrap());
    let said = plain(&words(&sheet_of(&weak)));
    let told = format!(
        "On A taking down the end panels lifts the limit gust of the rest to {} at most; the rest then comes down at {}.",
        gust(&rest.into(), "us"),
        gust(&(rest * 0.8).into(), "us")
    );
    assert!(said.contains(&told), "{said}");
}

#[test]
fn a_plan_warns_at_six_tenths_acts_at_eight_and_is_no_control_below_thirty() {
    let (json, _) = json_of(&survey(EXAMPLE, "us"));
    let mut seen = (0, 0);
    for run in json["runs"].as_array().unwrap() {
        for (group, act) in [("near_ends", "take down"), ("inside", "take down"), ("bare", "keep clear")] {
            let Some(plan) = run["plan"][group].as_object() else { continue };
            let figure = |key: &str| plan[key].as_f64().unwrap();
            let limit = figure("limit_gust_m_s");
            assert!((figure("warn_gust_m_s") / limit - 0.6).abs() < 1e-12);
            assert!((figure("act_gust_m_s") / limit - 0.8).abs() < 1e-12);
            assert_eq!(plan["act"], act);
            let is_workable = figure("act_gust_m_s") >= 30.0 * 0.44704;
            assert_eq!(plan["workable"], is_workable);
            if is_workable { seen.0 += 1 } else { seen.1 += 1 }
        }
    }
    assert!(seen.0 > 0 && seen.1 > 0, "{seen:?}");
    let said = plain(&words(&example()));
    assert!(
        said.contains("No workable plan on A: cloth there (◇) would have to come down on less than 30 mph.")
    );
    let rows = rows(&example());
    assert!(rows[0][7].starts_with('◇') && !rows[1][7].contains('◇'), "{rows:?}");
}

#[test]
fn corner_posts_of_a_side_without_cloth_are_told_where_the_other_side_has_some() {
    let (answer, _) = json_of(&survey(EXAMPLE, "us"));
    let gusts = answer["runs"].as_array().unwrap().iter();
    let first = gusts.filter_map(|run| run["corners_limit_gust_m_s"].as_f64()).fold(f64::INFINITY, f64::min);
    let text = plain(&words(&example()));
    let said =
        format!("the first reaches its limit in a gust of {:.0} mph at most", (first / 0.44704).floor());
    assert!(text.contains("Corner posts of C: they carry the cloth round the corner"), "{text}");
    assert!(text.contains(&said), "{said}");
    assert!(!plain(&sheet_of(&vector("12 x 10 ft", "0.95", COURT))).contains("Corner posts"));
}

#[test]
fn a_court_that_closes_is_drawn_closed_and_one_that_does_not_says_by_how_much() {
    assert!(!example().contains("sides miss by"));
    let open = survey(EXAMPLE, "us").replace(
        "[\"9 ft 8 in\", \"10 x 10 ft\", \"10 ft 4 in\"]",
        "[\"9 ft 8 in\", \"10 x 10 ft\", \"14 ft 4 in\"]",
    );
    assert!(sheet_of(&open).contains("sides miss by 4.0 ft"));
}

#[test]
fn each_drawing_says_what_it_shows_and_shares_no_name_with_another() {
    let html = example();
    let drawings: Vec<&str> = between(&html, "<svg", "</svg>");
    assert_eq!(drawings.len(), 4);
    let mut ids: Vec<&str> = between(&html, " id=\"", "\"");
    for drawing in &drawings {
        assert!(drawing.contains(" role=\"img\"") && drawing.contains(" viewBox=\"0 0 "));
        for mark in ["title", "desc"] {
            let text = between(drawing, &format!("<{mark} id="), "</")[0];
            assert!(text.split_once('>').unwrap().1.len() > 15, "{text}");
        }
    }
    let all = ids.len();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!((ids.len(), all), (8, 8));
    assert!(
        plain(&html)
            .contains("Joined at their corners, clockwise: north end, east side, south end, west side.")
    );
}

/// The grade level of a text by Kincaid, Fishburne, Rogers and Chissom, 1975 (Navy training report 8-75), the
/// constants from memory: 0.39 words a sentence + 11.8 syllables a word - 15.59.
fn grade(sentences: &[String]) -> f64 {
    let (mut words, mut syllables) = (0.0, 0.0);
    for sentence in sentences {
        for word in sentence.split_whitespace() {
            let letters: String =
                word.chars().filter(|c| c.is_alphanumeric()).collect::<String>().to_lowercase();
            if letters.is_empty() {
                continue;
            }
            words += 1.0;
            syllables += syllables_of(&letters);
        }
    }
    0.39 * words / sentences.len() as f64 + 11.8 * syllables / words - 15.59
}

/// Groups of vowels, a silent e at the end not counted; a digit is spoken as one.
fn syllables_of(word: &str) -> f64 {
    let digits = word.chars().filter(char::is_ascii_digit).count();
    let mut count = 0;
    let mut before = false;
    for letter in word.chars() {
        let vowel = "aeiouy".contains(letter);
        if vowel && !before {
            count += 1;
        }
        before = vowel;
    }
    let silent = word.ends_with('e') && !word.ends_with("le") && count > 1;
    let past = word.ends_with("ed") && !word.ends_with("ted") && !word.ends_with("ded") && count > 1;
    count -= usize::from(silent || past);
    (count.max(usize::from(digits == 0)) + digits) as f64
}

/// Whole sentences of the sheet's own words: paragraphs, points and the leads of panels.
fn sentences(html: &str) -> Vec<String> {
    let body = words(html);
    let mut found = Vec::new();
    for (open, close) in [("<p>", "</p>"), ("<li>", "</li>"), ("<p class=\"lead\">", "</p>")] {
        for block in between(&body, open, close) {
            // A full stop ends a sentence before a space or the end, not within a figure.
            found.extend(
                plain(block)
                    .split_inclusive(". ")
                    .map(str::trim)
                    .filter(|text| !text.is_empty())
                    .map(str::to_owned),
            );
        }
    }
    found
}

#[test]
fn the_grade_formula_gives_known_grades() {
    let cat = ["The cat sat on the mat.".to_owned()];
    assert!((grade(&cat) - (0.39 * 6.0 + 11.8 - 15.59)).abs() < 1e-9);
    let hard =
        ["Conformity of installations necessitates professional investigation of everything.".to_owned()];
    assert!(grade(&hard) > 20.0, "{}", grade(&hard));
    assert_eq!(["safe", "decided", "reached", "little", "post"].map(syllables_of), [1.0, 3.0, 1.0, 2.0, 1.0]);
}

#[test]
fn the_sheet_of_the_example_reads_at_twelfth_grade_or_below() {
    let sentences = sentences(&example());
    assert!(sentences.len() > 25, "{sentences:?}");
    let grade = grade(&sentences);
    assert!(grade <= 12.0, "grade {grade:.1}");
}
