//! Checks as a table for a spreadsheet, held against the JSON of the same surveys.

use crate::command::vector;
use crate::support::{json_of, run, run_with};
use serde_json::Value;
use std::collections::BTreeMap;
use std::fs;
use tempfile::tempdir;

const EXAMPLE: &str = "examples/tarnwick-green.toml";
const COURT: &str = r#"{ mesh = "1-3/4 in", wire = "9 gauge" }"#;
/// SI units in the units of a column name.
const UNITS: [(&str, f64); 9] = [
    ("_mph", 0.44704),
    ("_m_s", 1.0),
    ("_lb_ft", 4.448_221_615_260_5 * 0.3048),
    ("_n_m", 1.0),
    ("_lbf", 4.448_221_615_260_5),
    ("_n", 1.0),
    ("_psf", 4.448_221_615_260_5 / (0.3048 * 0.3048)),
    ("_pa", 1.0),
    ("_ft", 0.3048),
];

type Row = BTreeMap<String, String>;

/// The rows of a table, each cell by the name of its column.
fn rows(text: &str) -> Vec<Row> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let head: Vec<String> = reader.headers().unwrap().iter().map(str::to_owned).collect();
    let record = |record: csv::StringRecord| {
        assert_eq!(record.len(), head.len());
        head.iter().cloned().zip(record.iter().map(str::to_owned)).collect()
    };
    reader.records().map(|found| record(found.unwrap())).collect()
}

/// A cell in SI units, from the column whose name begins so and ends in a unit; nothing where the cell is empty.
fn si(row: &Row, name: &str) -> Option<f64> {
    let (column, unit) = UNITS
        .iter()
        .map(|(unit, si)| (format!("{name}{unit}"), *si))
        .chain([(format!("{name}_m"), 1.0), (name.to_owned(), 1.0)])
        .find(|(column, _)| row.contains_key(column))
        .unwrap_or_else(|| panic!("no column {name} in {row:?}"));
    (!row[&column].is_empty()).then(|| row[&column].parse::<f64>().unwrap() * unit)
}

fn same(row: &Row, name: &str, json: &Value) {
    match (si(row, name), json.as_f64()) {
        (Some(cell), Some(json)) => {
            assert!((cell - json).abs() <= 1e-9 * json.abs().max(1.0), "{name}: {cell} and {json}");
        }
        (None, None) => {}
        (cell, json) => panic!("{name}: {cell:?} and {json:?}"),
    }
}

/// Every figure and flag of the table is that of the JSON, post by post and bay by bay.
fn holds(csv: &str, json: &Value) {
    let rows = rows(csv);
    let mut at = 0;
    for run in json["runs"].as_array().unwrap() {
        let bays = run["bays"].as_array().unwrap();
        for (number, post) in run["posts"].as_array().unwrap().iter().enumerate() {
            let row = &rows[at];
            at += 1;
            for (name, json) in [
                ("run", &run["name"]),
                ("court", &run["court"]),
                ("kind", &post["kind"]),
                ("post", &post["post"]),
                ("governs", &post["governs"]),
                ("limit_gust_is", &post["limit_gust_is"]),
                ("flag", &post["flag"]),
                ("flag_of_checked", &post["flag_of_checked"]),
                ("flag_best", &post["flag_best"]),
            ] {
                assert_eq!(row[name], json.as_str().unwrap_or_default(), "{name}");
            }
            for (name, json) in [
                ("number", &post["number"]),
                ("at", &post["at_m"]),
                ("solidity", &run["solidity"]),
                ("base_shear", &post["base_shear_n"]),
                ("base_moment", &post["base_moment_n_m"]),
                ("bare_base_moment", &post["bare_base_moment_n_m"]),
                ("limit_gust", &post["limit_gust_m_s"]),
                ("limit_gust_best", &post["limit_gust_best_m_s"]),
                ("bare_limit_gust", &post["bare_limit_gust_m_s"]),
                ("load_times_bare", &post["load_times_bare"]),
            ] {
                same(row, name, json);
            }
            let parts = post["parts"].as_array().unwrap();
            let worst = parts
                .iter()
                .filter(|part| part["ratio"].is_number() && part["part"] != "ties and lacing")
                .max_by(|a, b| a["ratio"].as_f64().unwrap().total_cmp(&b["ratio"].as_f64().unwrap()));
            same(row, "ratio", worst.map_or(&Value::Null, |part| &part["ratio"]));
            assert_eq!(row["ratio_of"], worst.map_or("", |part| part["part"].as_str().unwrap()));
            let open: Vec<&str> = parts
                .iter()
                .filter(|part| part["ratio"].is_null())
                .map(|part| part["part"].as_str().unwrap())
                .collect();
            assert_eq!(row["not_checked"], open.join("; "));
            match bays.get(number) {
                None => {
                    for name in ["bay", "bay_width", "bay_pressure", "bay_force"] {
                        same(row, name, &Value::Null);
                    }
                    assert_eq!((row["bay_is_gate"].as_str(), row["bay_governs"].as_str()), ("", ""));
                }
                Some(bay) => {
                    same(row, "bay", &bay["number"]);
                    same(row, "bay_pressure", &bay["pressure_pa"]);
                    same(row, "bay_force", &bay["force_n"]);
                    let width = bay["to_m"].as_f64().unwrap() - bay["from_m"].as_f64().unwrap();
                    assert!((si(row, "bay_width").unwrap() - width).abs() < 1e-9);
                    assert_eq!(row["bay_governs"], bay["governs"].as_str().unwrap_or_default());
                    let word = |yes: &Value| if yes.as_bool().unwrap() { "yes" } else { "no" };
                    assert_eq!(row["bay_is_gate"], word(&bay["gate"]));
                    assert_eq!(row["bay_has_cloth"], word(&bay["cloth"]));
                }
            }
        }
    }
    assert_eq!(at, rows.len());
}

#[test]
fn the_table_of_the_example_is_its_json_in_feet_and_in_metres() {
    let us = fs::read_to_string(EXAMPLE).unwrap();
    let si = us.replace("units  = \"us\"", "units  = \"si\"");
    assert_ne!(us, si);
    for (survey, column) in [(&us, "base_moment_lb_ft"), (&si, "base_moment_n_m")] {
        let out = run_with(&["check", "-", "--format", "csv"], survey);
        assert_eq!((out.code, out.err.as_str()), (1, ""));
        assert!(out.text.lines().next().unwrap().split(',').any(|name| name == column), "{column}");
        holds(&out.text, &json_of(survey).0);
    }
}

#[test]
fn a_fence_without_a_design_speed_has_empty_cells_and_its_limit_gusts() {
    let survey = vector("3 x 10 ft", "0.95", COURT).replace("115 mph", "unknown");
    let out = run_with(&["check", "-", "--format", "csv"], &survey);
    assert_eq!(out.code, 3);
    holds(&out.text, &json_of(&survey).0);
    let rows = rows(&out.text);
    assert_eq!(rows.len(), 4);
    for row in &rows {
        assert_eq!((row["wind_speed_mph"].as_str(), row["base_moment_lb_ft"].as_str()), ("", ""));
        assert!(row["not_checked"].starts_with("post bending; post shear; "), "{}", row["not_checked"]);
        assert!(row["limit_gust_mph"].parse::<f64>().unwrap() > 10.0);
    }
}

#[test]
fn what_posts_do_on_the_frame_stands_at_the_end_and_is_empty_where_it_was_not_asked() {
    const LAST: [&str; 4] =
        ["frame_moment_stiff_lb_ft", "frame_moment_soft_lb_ft", "top_stiff_in", "top_soft_in"];
    let survey = fs::read_to_string("examples/braced.toml").unwrap();
    let asked = |format: &str| run_with(&["check", "-", "--frame", "--format", format], &survey).text;
    let (csv, json) = (asked("csv"), serde_json::from_str::<Value>(&asked("json")).unwrap());
    assert!(csv.lines().next().unwrap().ends_with(&LAST.join(",")), "{csv}");
    let runs = json["runs"].as_array().unwrap();
    let posts: Vec<&Value> = runs.iter().flat_map(|run| run["posts"].as_array().unwrap()).collect();
    let rows = rows(&csv);
    assert_eq!(rows.len(), posts.len());
    for (row, post) in rows.iter().zip(posts) {
        for (feet, name) in [("rigid", "stiff"), ("soft", "soft")] {
            let of = &post["frame"][feet];
            assert!(of["greatest_moment_n_m"].as_f64() > Some(0.0));
            same(row, &format!("frame_moment_{name}"), &of["greatest_moment_n_m"]);
            let inches = row[&format!("top_{name}_in")].parse::<f64>().unwrap();
            assert!((inches * 0.0254 - of["top_moves_m"].as_f64().unwrap()).abs() < 1e-9);
        }
    }
    let plain = run_with(&["check", "-", "--format", "csv"], &survey).text;
    for row in self::rows(&plain) {
        assert_eq!(LAST.map(|name| row[name].as_str()), [""; 4]);
    }
}

#[test]
fn several_surveys_are_one_table_in_the_units_of_the_first_and_a_bad_one_stops_nobody() {
    let folder = tempdir().unwrap();
    let write = |name: &str, text: &str| {
        let path = folder.path().join(name);
        fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let us = vector("3 x 10 ft", "0.95", COURT);
    let metres = write("metres.toml", &us.replacen("survey = 1", "survey = 1\nunits = \"si\"", 1));
    let feet = write("feet.toml", &us);
    let bad = write("bad.toml", "survey = 2\n");
    let out = run(&["check", "--format", "csv", &metres, &bad, &feet]);
    assert_eq!(out.code, 2);
    assert!(out.err.contains("bad.toml"), "{}", out.err);
    let rows = rows(&out.text);
    assert_eq!(out.text.matches("base_moment_n_m").count(), 2, "the head once: with and without the cloth");
    let of = |file: &str| rows.iter().filter(|row| row["survey"] == file).collect::<Vec<_>>();
    let (metres, feet) = (of(&metres), of(&feet));
    assert_eq!((metres.len(), feet.len()), (4, 4));
    for (one, other) in metres.iter().zip(&feet) {
        assert_eq!(one["base_moment_n_m"], other["base_moment_n_m"]);
    }
    let only = run(&["check", "--format", "csv", &bad]);
    assert_eq!((only.code, only.text.as_str()), (2, ""));
}

#[test]
fn a_name_that_begins_like_a_formula_is_words_in_a_spreadsheet() {
    let survey = vector("3 x 10 ft", "0.95", COURT)
        .replace("name = \"run\"", "name = \"=HYPERLINK(1)\"\ncourt = \"@court\"")
        .replace("[site]", "[job]\ntitle = '+1, \"quoted\"'\n[site]")
        .replace("[post.line]", "[post.\"-line\"]");
    for row in rows(&run_with(&["check", "-", "--format", "csv"], &survey).text) {
        assert_eq!(row["run"], "'=HYPERLINK(1)");
        assert_eq!(row["court"], "'@court");
        assert_eq!(row["site"], "'+1, \"quoted\"");
        assert_eq!(row["post"], "'-line");
    }
    let compared =
        run_with(&["compare", "-", "--cloth", "solid", "--cloth", "none", "--format", "csv"], &survey);
    let rows = rows(&compared.text);
    assert_eq!(rows.len(), 2, "{}", compared.err);
    for row in rows {
        assert_eq!(row["run"], "'=HYPERLINK(1)");
    }
}

#[test]
fn lines_end_as_the_rfc_says_and_every_column_is_told_in_the_help() {
    let text = run(&["check", EXAMPLE, "--format", "csv"]).text;
    assert_eq!(text.matches('\n').count(), text.matches("\r\n").count());
    let help = run(&["check", "--help"]).text;
    let told: Vec<&str> = help.split([',', ' ', '\n']).collect();
    let head = text.lines().next().unwrap();
    assert!(head.split(',').count() > 30);
    for name in head.split(',') {
        assert!(told.contains(&name), "the help has no column {name}:\n{help}");
    }
}

#[test]
fn what_is_written_as_text_only_is_not_asked_for_in_another_format() {
    for format in ["csv", "json"] {
        for asked in ["--as-read", "--workings"] {
            let out = run(&["check", EXAMPLE, "--format", format, asked]);
            assert_eq!((out.code, out.text.as_str()), (2, ""));
            assert!(out.err.contains("text only"), "{}", out.err);
        }
    }
}
