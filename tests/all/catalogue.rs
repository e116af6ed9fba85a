//! The catalogues as the command prints them.

use crate::support::run;
use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};

fn json(arguments: &[&str]) -> Value {
    let out = run(&[&["catalogue"], arguments, &["--format", "json"]].concat());
    assert_eq!((out.code, out.err.as_str()), (0, ""));
    serde_json::from_str(&out.text).unwrap()
}

/// Every row of an answer, with the name of its catalogue.
fn rows(json: &Value) -> Vec<(String, Value)> {
    let mut found = Vec::new();
    for catalogue in json["catalogues"].as_array().unwrap() {
        for sheet in catalogue["publications"].as_array().unwrap() {
            for row in sheet["rows"].as_array().unwrap() {
                found.push((catalogue["name"].as_str().unwrap().to_owned(), row.clone()));
            }
        }
    }
    found
}

fn catalogue_files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            catalogue_files(&path, found);
        } else if path.extension().is_some_and(|end| end == "csv") {
            found.push(path);
        }
    }
}

#[test]
fn every_catalogue_file_of_the_program_is_listed_with_all_its_rows() {
    let mut files = Vec::new();
    catalogue_files(Path::new("src"), &mut files);
    assert!(files.len() >= 4, "{files:?}");
    let json = json(&[]);
    let sheets: Vec<&Value> = json["catalogues"]
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|catalogue| catalogue["publications"].as_array().unwrap())
        .collect();
    for file in files {
        let text = fs::read_to_string(&file).unwrap();
        let title = text.lines().find_map(|line| line.strip_prefix("# title: ")).unwrap();
        let sheet = sheets
            .iter()
            .find(|sheet| sheet["title"] == title)
            .unwrap_or_else(|| panic!("{} is not listed: add it to CATALOGUES", file.display()));
        let rows = text.lines().filter(|line| !line.starts_with('#') && !line.is_empty()).count() - 1;
        assert_eq!(sheet["rows"].as_array().unwrap().len(), rows, "{}", file.display());
    }
}

#[test]
fn each_row_says_what_it_is_known_by_and_is_printed_in_both_systems() {
    let text = run(&["catalogue"]).text;
    for (_, row) in rows(&json(&[])) {
        let name = row["name"].as_str().unwrap();
        assert!(text.replace("\n  ", " ").contains(name.split(' ').next().unwrap()), "{name}");
        if let Some(printed) = row["printed"]["diameter"].as_str() {
            assert!(text.contains(printed), "{printed}");
        }
    }
    for said in
        ["2.875 in", "73.02 mm", "9.03 in", "229.4 mm", "0.203 in", "5.16 mm", "from memory", "second-hand"]
    {
        assert!(text.contains(said), "{said}");
    }
    let json = json(&[]);
    let catalogues = json["catalogues"].as_array().unwrap();
    let publications =
        catalogues.iter().map(|one| one["publications"].as_array().unwrap().len()).sum::<usize>();
    assert!(publications > 5);
    assert_eq!(text.matches("\n  known: ").count(), publications);
    assert!(text.lines().all(|line| line.chars().count() <= 100), "{text}");
}

#[test]
fn figures_of_the_table_for_a_spreadsheet_are_those_of_the_json() {
    let text = run(&["catalogue", "--format", "csv"]).text;
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let head: Vec<String> = reader.headers().unwrap().iter().map(str::to_owned).collect();
    let records: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let json = json(&[]);
    let rows = rows(&json);
    assert_eq!(records.len(), rows.len());
    let mut figures = 0;
    for (record, (catalogue, row)) in records.iter().zip(&rows) {
        let cell = |name: &str| {
            let at = head
                .iter()
                .position(|column| column == name)
                .unwrap_or_else(|| panic!("no {name}: {head:?}"));
            record[at].to_owned()
        };
        assert_eq!(
            (cell("catalogue"), cell("name")),
            (catalogue.clone(), row["name"].as_str().unwrap().to_owned())
        );
        assert!(!cell("known").is_empty() && !cell("title").is_empty());
        for (column, key, si) in [
            ("diameter_in", "diameter_m", 0.0254),
            ("diameter_mm", "diameter_m", 0.001),
            ("wall_in", "wall_m", 0.0254),
            ("wall_mm", "wall_m", 0.001),
            ("girth_in", "girth_m", 0.0254),
            ("girth_mm", "girth_m", 0.001),
            ("yield_ksi", "yield_pa", 4_448.221_615_260_5 / (0.0254 * 0.0254)),
            ("yield_mpa", "yield_pa", 1e6),
            ("weight_lb_per_ft", "weight_n_per_m", 4.448_221_615_260_5 / 0.3048),
            ("solidity_low", "solidity_low", 1.0),
        ] {
            match row[key].as_f64() {
                Some(json) => {
                    let cell = cell(column).parse::<f64>().unwrap() * si;
                    assert!((cell / json - 1.0).abs() < 1e-9, "{column}: {cell} and {json}");
                    figures += 1;
                }
                None => assert_eq!(cell(column), ""),
            }
        }
    }
    assert!(figures > 180, "{figures}");
}

#[test]
fn a_size_a_girth_and_a_name_of_the_trade_are_answered() {
    let names = |arguments: &[&str]| {
        rows(&json(arguments))
            .iter()
            .map(|(_, row)| row["name"].as_str().unwrap().to_owned())
            .collect::<Vec<_>>()
    };
    let two = ["pipe 2-1/2 std", "light pipe 2-1/2"];
    assert_eq!(names(&["pipe", "2-7/8 in"]), two);
    assert_eq!(names(&["--girth", "9-1/16 in"]), two);
    assert_eq!(names(&["--girth", "230 mm"]), two);
    assert_eq!(names(&["wire", "9 gauge"]), ["9 gauge"]);
    assert!(names(&["cloth", "mesh"]).len() >= 4);
    let text = run(&["catalogue", "pipe", "2-1/2 in"]).text;
    for said in
        ["It is a name of the trade", "CONFLICTS", "NAMES THAT MISLEAD", "girth 7.46 in", "girth 9.03 in"]
    {
        assert!(text.replace("\n", " ").contains(said), "{said}:\n{text}");
    }
    let text = run(&["catalogue", "pipe", "2-7/8 in"]).text;
    assert!(text.contains("\"3 in\" is a name") && !text.contains("\"2 in\" is a name"), "{text}");
}

#[test]
fn what_the_catalogue_has_not_is_told_with_what_to_do() {
    let out = run(&["catalogue", "pipe", "2.6 in"]);
    assert_eq!((out.code, out.err.as_str()), (1, ""));
    assert!(
        out.text.replace("\n", " ").contains("sizes are 2.375 in (girth 7.46 in) and 2.875 in"),
        "{}",
        out.text
    );
    let out = run(&["catalogue", "pipe", "12 in"]);
    assert!(out.text.replace("\n", " ").contains("next size is 8.625 in"), "{}", out.text);
    let told = |arguments: &[&str]| {
        let out = run(&[&["catalogue"], arguments].concat());
        assert_eq!((out.code, out.text.as_str()), (2, ""), "{arguments:?}");
        out.err
    };
    assert!(told(&["pipe", "2-7/8"]).contains("has no unit"));
    assert!(told(&["pipe", "3 psf"]).contains("a length belongs here"));
    assert!(told(&["cloth", "closd"]).contains("perhaps \"closed mesh\""));
    assert!(told(&["cloth", "--girth", "9 in"]).contains("no posts"));
    assert!(told(&["--girth", "-9 in"]).contains("above 0"));
    assert!(told(&["--girth", "nine"]).contains("not a number"));
    assert!(told(&["pip"]).contains("'pipe'"));
    assert!(told(&["pipe", "4 in", "--girth", "9 in"]).contains("cannot be used with"));
}
