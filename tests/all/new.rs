//! A new survey: the draft to fill in, and the one from questions and answers.

use crate::form::{RUN_KEYS, SITE_KEYS};
use crate::support::{Output, run, run_on, run_with};
use fencegust::fence::End;
use fencegust::report::{Draft, Interview, draft};
use fencegust::survey::{Reading, Survey};
use fencegust::units::{System, psf_per_foot};
use proptest::prelude::*;
use std::fs;
use std::path::Path;
use tempfile::tempdir;

const MARK: &str = "# REPLACE";
const SYSTEMS: [System; 2] = [System::Us, System::Si];

fn draft_of(runs: usize, system: System) -> String {
    let mut bytes = Vec::new();
    draft(Draft { runs, system }, &mut bytes).unwrap();
    String::from_utf8(bytes).unwrap()
}

fn read(text: &str) -> Survey {
    Survey::read(text, "draft").unwrap_or_else(|mistakes| panic!("{mistakes}\n{text}"))
}

/// The key and the value of a line that sets one.
fn setting(line: &str) -> Option<(&str, &str)> {
    let (key, value) = line.split_once(" = ")?;
    let word =
        |key: &str| !key.is_empty() && key.chars().all(|letter| letter.is_ascii_lowercase() || letter == '_');
    word(key).then_some((key, value))
}

#[test]
fn a_draft_of_any_size_in_either_system_reads_without_a_mistake() {
    for runs in [1, 2, 3, 4, 5, 8] {
        for system in SYSTEMS {
            let survey = read(&draft_of(runs, system));
            assert_eq!((survey.runs.len(), survey.units), (runs, system));
            let corners = survey
                .runs
                .iter()
                .flat_map(|run| [run.run.start, run.run.finish])
                .filter(|end| matches!(end, End::Corner(_)))
                .count();
            // Four sides close a court; fewer meet at the corners between them.
            assert_eq!(corners, runs / 4 * 8 + [0, 0, 2, 4][runs % 4], "{runs} runs");
        }
    }
}

#[test]
fn a_draft_explains_every_key_a_crew_fills_in() {
    let text = draft_of(1, System::Us);
    let about = |key: &str| {
        text.lines().any(|line| {
            let comment = line.strip_prefix("# ").unwrap_or_default().trim_start();
            let names = comment.split_once(": ").map(|(names, about)| (names, about.trim()));
            names.is_some_and(|(names, about)| about.len() > 10 && names.split(", ").any(|name| name == key))
        })
    };
    for key in SITE_KEYS.iter().chain(RUN_KEYS) {
        let name = key.rsplit('.').next().unwrap();
        // A rail's one key is told with the rail, as the fields of the other posts are.
        if !key.contains("_rail.") && !key.contains("other_posts.") {
            assert!(about(name), "{key} is not explained");
        }
    }
    assert!(!about("girt"));
    for line in text.lines() {
        if let Some((key, _)) = setting(line) {
            assert!(about(key), "{key} is not explained");
        }
    }
}

#[test]
fn what_a_draft_invents_is_marked_and_all_else_is_unknown() {
    for system in SYSTEMS {
        let (mut marked, mut unknown) = (0, 0);
        for line in draft_of(4, system).lines() {
            let Some((key, value)) = setting(line) else { continue };
            if value.ends_with(MARK) {
                marked += 1;
            } else if value == "\"unknown\"" {
                unknown += 1;
            } else {
                assert!(["survey", "units"].contains(&key), "{line}");
            }
        }
        assert!(marked > 30 && unknown > 8, "{marked} {unknown}");
    }
}

#[test]
fn a_line_that_is_left_out_reads_once_its_mark_is_taken_away() {
    for system in SYSTEMS {
        let text = draft_of(1, system);
        let lines: Vec<&str> = text.lines().collect();
        let mut tried = 0;
        for (at, line) in lines.iter().enumerate() {
            let Some((key, _)) = line.strip_prefix("# ").and_then(setting) else { continue };
            // In its own table the key stands once.
            let from = lines[..at].iter().rposition(|line| line.starts_with('[')).unwrap();
            let to =
                lines[at..].iter().position(|line| line.starts_with('[')).map_or(lines.len(), |to| at + to);
            let changed: Vec<&str> = lines
                .iter()
                .enumerate()
                .filter(|(other, line)| {
                    !(from..to).contains(other) || setting(line).is_none_or(|(other, _)| other != key)
                })
                .map(|(other, line)| if other == at { &line[2..] } else { line })
                .collect();
            let survey = read(&changed.join("\n"));
            assert_ne!(survey.hash, read(&text).hash);
            tried += 1;
        }
        assert!(tried > 25, "only {tried} lines are left out");
    }
}

#[test]
fn a_check_of_a_draft_says_that_nothing_was_measured() {
    for units in ["us", "si"] {
        for runs in ["1", "2", "4", "8"] {
            let draft = run(&["new", "--units", units, "--runs", runs]);
            assert_eq!((draft.code, draft.err.as_str()), (0, ""));
            let out = run_on("-", &draft.text);
            assert_eq!((out.code, out.err.as_str()), (3, ""), "{units} {runs}");
            assert!(out.text.starts_with("NOT MEASURED"));
            let known = draft.text.replace("wind_speed = \"unknown\"", "wind_speed = \"51 m/s\"");
            assert_ne!(known, draft.text);
            let out = run_on("-", &known);
            assert_eq!(out.code, 1, "{}", out.err);
            assert!(out.text.contains("DO NOT HANG"));
        }
    }
    assert_eq!(run(&["new"]).text, draft_of(4, System::Us));
}

fn names_in(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

#[test]
fn a_file_that_is_there_is_left_alone_unless_it_is_forced() {
    let folder = tempdir().unwrap();
    let path = folder.path().join("survey.toml");
    let name = path.to_str().unwrap();
    fs::write(&path, "a day's work").unwrap();
    let out = run(&["new", "--out", name]);
    assert_eq!((out.code, out.text.as_str()), (2, ""));
    assert!(out.err.contains("survey.toml is there already") && out.err.contains("--force"), "{}", out.err);
    assert_eq!(fs::read_to_string(&path).unwrap(), "a day's work");
    let out = run(&["new", "--out", name, "--force"]);
    assert_eq!((out.code, out.err.as_str()), (0, ""));
    assert_eq!(fs::read_to_string(&path).unwrap(), draft_of(4, System::Us));
    // The questions are not asked for nothing.
    let out = run_with(&["new", "--ask", "--out", name], "us\n");
    assert_eq!((out.code, out.text.as_str()), (2, ""));
    assert!(out.err.contains("is there already") && !out.err.contains("units"), "{}", out.err);
    assert_eq!(names_in(folder.path()), ["survey.toml"]);
}

#[test]
fn what_cannot_be_written_is_told_and_nothing_is_half_written() {
    let folder = tempdir().unwrap();
    let nowhere = folder.path().join("nowhere/survey.toml");
    for arguments in [&["new", "--out"][..], &["new", "--ask", "--out"], &["form", "--out"]] {
        let to = |path: &Path| run_with(&[arguments, &[path.to_str().unwrap()]].concat(), "");
        let out = to(&nowhere);
        assert_eq!((out.code, out.text.as_str()), (2, ""));
        assert!(out.err.contains("there is no folder"), "{}", out.err);
        let out = to(folder.path());
        assert_eq!(out.code, 2);
        assert!(out.err.contains("this is a directory"), "{}", out.err);
    }
    assert!(names_in(folder.path()).is_empty());
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_device_is_told_and_stays_a_device() {
    use std::os::unix::fs::FileTypeExt;
    for command in ["new", "form"] {
        let out = run(&[command, "--out", "/dev/full"]);
        assert_eq!(out.code, 2);
        assert!(out.err.contains("/dev/full could not be written"), "{}", out.err);
        assert_eq!(run(&[command, "--out", "/dev/null"]).code, 0);
    }
    for device in ["/dev/full", "/dev/null"] {
        assert!(fs::metadata(device).unwrap().file_type().is_char_device(), "{device}");
    }
}

#[cfg(unix)]
#[test]
fn a_link_and_the_rights_of_a_file_outlive_its_replacement() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempdir().unwrap();
    let (path, link) = (folder.path().join("survey.toml"), folder.path().join("link.toml"));
    fs::write(&path, "old").unwrap();
    fs::set_permissions(&path, fs::Permissions::from_mode(0o640)).unwrap();
    std::os::unix::fs::symlink("survey.toml", &link).unwrap();
    let out = run(&["new", "--force", "--out", link.to_str().unwrap()]);
    assert_eq!(out.code, 0, "{}", out.err);
    assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    assert_eq!(fs::read_to_string(&path).unwrap(), draft_of(4, System::Us));
    assert_eq!(fs::metadata(&path).unwrap().permissions().mode() & 0o777, 0o640);
}

/// A crew that measures in feet and knows most of it; the file is asked for.
fn in_feet(file: &str) -> Vec<String> {
    [
        file,
        "us",
        "Tarnwick Green, new cloth",
        "Parks office",
        "crew 2",
        "2026-10-13",
        "",
        "",
        "115 mph",
        "city handout",
        "C",
        "",
        "340 ft",
        "II",
        "150 psf/ft",
        "",
        "",
        "girth",
        "9-1/16 in",
        "don't know",
        "don't know",
        "0.01 in .. 0.03 in",
        "flakes",
        "yes",
        "corner",
        "diameter",
        "4 in",
        "nominal",
        "0.226 in",
        "30 ksi",
        "",
        "",
        "no",
        "yes",
        "closed9",
        "closed mesh",
        "",
        "9 ft",
        "",
        "",
        "ties",
        "50 lbf",
        "12 in",
        "top, bottom",
        "8 in",
        "5 in",
        "2",
        "",
        "",
        "",
        "north end",
        "courts 1-3",
        "north",
        "10 ft",
        "",
        "1.660 in",
        "",
        "",
        "1-3/4 in",
        "9 gauge",
        "round",
        "12 in",
        "?",
        "line",
        "corner",
        "9 ft 8 in, 14 x 10 ft, 6 ft 4 in",
        "free",
        "corner",
        "",
        "4, 9",
        "corner",
        "",
        "closed9",
        "1 ft",
        "inside",
        "2..11",
        "",
        "windows asked for",
        "yes",
        "east side",
        "",
        "east",
        "",
        "5 x 10 ft, gate 4 ft, 10 ft",
        "corner",
        "60 ft",
        "",
        "corner",
        "",
        "none",
        "",
        "",
        "no",
    ]
    .map(str::to_owned)
    .to_vec()
}

/// A crew that measures in metres and knows little.
fn in_metres() -> Vec<String> {
    [
        "si",
        "Tarnwick Green",
        "",
        "",
        "",
        "",
        "",
        "don't know",
        "dont know",
        "",
        "?",
        "",
        "unknown",
        "",
        "",
        "",
        "230 mm",
        "?",
        "I don't know.",
        "",
        "",
        "",
        "",
        "",
        "knitted mesh",
        "?",
        "2.7 m",
        "",
        "",
        "Don’t know",
        "",
        "",
        "",
        "",
        "north end",
        "",
        "",
        "3.05 m",
        "",
        "42 mm",
        "",
        "",
        "none",
        "dunno",
        "12 x 3.05 m",
        "free",
        "FREE",
        "cloth",
        "0 m",
        "",
        "",
        "",
        "",
        "",
    ]
    .map(str::to_owned)
    .to_vec()
}

fn said(lines: &[String]) -> String {
    lines.join("\n") + "\n"
}

fn ask(out: &Path, lines: &[String]) -> Output {
    run_with(&["new", "--ask", "--out", out.to_str().unwrap()], &said(lines))
}

#[test]
fn a_conversation_in_feet_becomes_a_survey_with_its_first_check() {
    let folder = tempdir().unwrap();
    let path = folder.path().join("tarnwick.toml");
    let out = run_with(&["new", "--ask"], &said(&in_feet(path.to_str().unwrap())));
    assert!(out.err.ends_with("is written. Its first check:\n\n"), "{}", out.err);
    assert!(!out.err.contains("  ? "), "a question was repeated:\n{}", out.err);
    assert_eq!(out.code, 1);
    let brief = run(&["check", "--brief", path.to_str().unwrap()]);
    assert_eq!((out.text, out.code), (brief.text.clone(), brief.code));
    assert!(brief.text.contains("DO NOT HANG the cloth as surveyed on north end"), "{}", brief.text);
    assert!(
        brief.text.contains("bays 2 to 11") && brief.text.contains("east side: no cloth"),
        "{}",
        brief.text
    );

    let survey = read(&fs::read_to_string(&path).unwrap());
    assert_eq!(survey.job.date.as_deref(), Some("2026-10-13"));
    assert_eq!(survey.site.soil.lateral_bearing.reading, Reading::Measured(psf_per_foot(150.0)));
    let kinds: Vec<&str> = survey.posts.iter().map(|post| post.name.as_str()).collect();
    assert_eq!(kinds, ["line", "corner"]);
    let [north, east] = &survey.runs[..] else { panic!("{} runs", survey.runs.len()) };
    let posts = |run: &fencegust::survey::RunSurvey, kind: usize| -> Vec<usize> {
        let of = run.run.posts.iter().enumerate().filter(|(_, post)| post.kind == kind);
        of.map(|(at, _)| at + 1).collect()
    };
    assert_eq!(posts(north, 1), [1, 4, 9, 17]);
    assert_eq!(posts(east, 1), [1, 6, 7, 8]);
    assert!(matches!((north.run.start, north.run.finish), (End::Free, End::Corner(_))));
    assert!(matches!((east.run.start, east.run.finish), (End::Corner(_), End::Return(_))));
    assert_eq!((north.court.as_str(), east.court.as_str()), ("courts 1-3", "courts 1-3"));
    assert_eq!(north.run.height, east.run.height);
    assert!(north.footing.as_deref().unwrap().contains("unknown deep"));
    assert_eq!(names_in(folder.path()), ["tarnwick.toml"]);
}

#[test]
fn a_crew_on_a_hill_describes_it_in_the_place_of_the_factor() {
    let mut interview = Interview::new(None);
    let answer = |interview: &mut Interview, line: &str| {
        interview.answer(line).unwrap_or_else(|told| panic!("{line}: {told}"));
    };
    let mut lines = in_feet("").into_iter().skip(1);
    while interview.question().unwrap().key != "topographic_factor" {
        answer(&mut interview, &lines.next().unwrap());
    }
    let asked = interview.question().unwrap();
    assert!(asked.to_string().contains("\"hill\" to describe it"), "{asked}");
    let keys = ["hill.shape", "hill.height", "hill.half_length", "hill.distance", "hill.side"];
    answer(&mut interview, "hill");
    for (key, line) in
        keys.into_iter().zip(["ridge or hill", "40 ft .. 60 ft", "100 ft", "0 ft", "don't know"])
    {
        assert_eq!(interview.question().unwrap().key, key);
        assert!(interview.answer("a hill").is_err(), "{key}");
        answer(&mut interview, line);
    }
    // The answer that stood for a factor left out is skipped.
    for line in lines.skip(1) {
        answer(&mut interview, &line);
    }
    let text = interview.survey().unwrap();
    let survey = read(&text);
    assert!(text.contains("hill = { shape = \"ridge or hill\", height = \"40 ft .. 60 ft\""), "{text}");
    assert!(!text.contains("topographic_factor"));
    assert!(survey.at_worst().site.on_hill(fencegust::units::feet(10.0)).unwrap().factor > 2.0);
}

#[test]
fn a_conversation_in_metres_with_much_unknown_becomes_a_survey_that_is_answered() {
    let folder = tempdir().unwrap();
    let path = folder.path().join("survey.toml");
    let out = ask(&path, &in_metres());
    assert!(!out.err.contains("  ? "), "a question was repeated:\n{}", out.err);
    assert_eq!(out.code, 3, "{}", out.err);
    assert!(out.text.contains("design wind UNKNOWN") && out.text.contains("m/s"), "{}", out.text);
    assert!(out.text.contains("wall and grade of posts \"line\""), "{}", out.text);
    let text = fs::read_to_string(&path).unwrap();
    for line in [
        "units = \"si\"",
        "wind_speed = \"unknown\"",
        "exposure = \"unknown\"",
        "soil = \"unknown\"",
        "nominal_wall = \"unknown\"",
        "yield = \"unknown\"",
        "fastening = \"unknown\"",
        "footing = \"unknown\"",
    ] {
        assert!(text.lines().any(|there| there == line), "{line} is not in\n{text}");
    }
    // The catalogue knows this cloth: what the crew does not know is not made worse.
    assert!(!text.contains("solidity") && !text.contains("topographic_factor"));
    read(&text);
}

#[test]
fn names_in_any_script_and_with_any_sign_survive() {
    let long = "ÿ".repeat(10_000);
    for name in ["Court \"A\" \\ <b>", "北側", "#[run] = 'x' \"\"\"", "السياج الشمالي", "a.b", "none.", &long]
    {
        let folder = tempdir().unwrap();
        let path = folder.path().join("survey.toml");
        let mut lines = in_feet("");
        lines.remove(0);
        for line in &mut lines {
            // As a title, a kind of post, a kind of cloth, a run and a court.
            if ["Tarnwick Green, new cloth", "corner", "closed9", "north end", "courts 1-3"]
                .contains(&line.as_str())
            {
                *line = name.to_owned();
            }
        }
        // The ends of the runs are words and no names.
        let ends = lines.iter().enumerate().filter(|(at, line)| {
            *line == name && ["free", "5 x 10 ft, gate 4 ft, 10 ft"].contains(&lines[at - 1].as_str())
        });
        for at in ends.map(|(at, _)| at).collect::<Vec<_>>() {
            lines[at] = "corner".to_owned();
        }
        let out = ask(&path, &lines);
        assert!(!out.err.contains("  ? ") && !out.err.contains("panicked"), "{}", out.err);
        assert_eq!(out.code, 1);
        let survey = read(&fs::read_to_string(&path).unwrap());
        assert_eq!(survey.job.title.as_deref(), Some(name));
        assert_eq!(survey.posts[1].name, name);
        assert_eq!(survey.runs[0].run.name, name);
        assert_eq!(survey.runs[0].run.screen.as_ref().unwrap().name, name);
        assert_eq!(survey.runs[1].court, name);
        assert_eq!(survey.runs[1].run.posts[6].kind, 1);
    }
}

#[test]
fn an_answer_that_cannot_be_read_is_told_in_the_words_of_the_reader_and_asked_again() {
    let folder = tempdir().unwrap();
    let path = folder.path().join("survey.toml");
    let good = in_metres();
    for (at, bad, says) in [
        (0, "metric", "\"metric\" is none of us, si"),
        (7, "38", "wind_speed: 38 has no unit where a speed belongs: add one of mph, m/s"),
        (7, "38 kPa", "kPa is a pressure or stress, and a speed belongs here"),
        (8, "E", "exposure \"E\" is none of B, C, D"),
        (9, "9", "topographic_factor must lie between"),
        (16, "", "girth needs an answer, like 230 mm"),
        (16, "don't know", "has no known diameter: a tape round the post finds it"),
        (17, "perhaps", "is none of nominal, measured"),
        (19, "don't know", "rust_at_grade cannot be unknown: scrape it clean"),
        (25, "1.4", "solidity is solid area over gross area"),
        (34, "?", "name cannot be unknown"),
        (37, "unknown", "height cannot be unknown here: from the ground to the top rail"),
        (37, "2 m .. 3 m", "height is one value, not a range"),
        (44, "12 x 10", "has no unit where a length belongs"),
        (44, "0 x 3 m", "a run has from 1 to"),
        (45, "corner", "cannot be found without its compass side"),
        (45, "fee", "start \"fee\" is neither \"corner\" nor \"free\""),
        (48, "0.5 m", "above the fence of"),
        (50, "2..99", "has bays 1 to 12"),
        (16, "\u{1b}[A230 mm", "a key that is no letter"),
    ] {
        let mut lines = good.clone();
        lines.insert(at, bad.to_owned());
        let out = ask(&path, &lines);
        assert!(out.err.contains(says), "\"{bad}\" is not told \"{says}\":\n{}", out.err);
        assert_eq!(out.err.matches("  ? ").count(), 1, "{}", out.err);
        assert_eq!(out.code, 3, "{bad}");
        fs::remove_file(&path).unwrap();
    }
}

#[test]
fn an_unknown_wall_of_no_catalogue_pipe_is_told_at_the_wall() {
    let mut interview = Interview::new(Some(System::Us));
    for line in ["", "", "", "", "", "", "", "", "", "", "", "", "", "", "girth", "8.2 in"] {
        interview.answer(line).unwrap();
    }
    let told = interview.answer("don't know").unwrap_err();
    assert!(told.contains("the catalogue has no pipe of 2.61"), "{told}");
    interview.answer("back").unwrap();
    assert_eq!(interview.question().unwrap().key, "girth");
    interview.answer("9-1/16 in").unwrap();
    interview.answer("don't know").unwrap();
    assert_eq!(interview.question().unwrap().key, "yield");
}

/// The words of a survey that grew from these answers to what is asked of a kind of post, from its name on.
fn survey_with_post(answers: &[&str]) -> String {
    let mut interview = Interview::new(None);
    let lines = in_metres();
    let all = lines[..15].iter().map(String::as_str).chain(answers.iter().copied());
    for line in all.chain(lines[21..].iter().map(String::as_str)) {
        interview.answer(line).unwrap_or_else(|told| panic!("{line}: {told}"));
    }
    interview.survey().unwrap()
}

#[test]
fn a_post_that_is_no_round_tube_is_asked_for_what_its_strength_hangs_on() {
    for (answers, table) in [
        (
            &["width", "60 mm", "measured", "3 mm", "345 MPa", ""][..],
            "width = \"60 mm\"\nmeasured_wall = \"3 mm\"\nyield = \"345 MPa\"",
        ),
        (&["section", "pipe 2-1/2 std", "205 MPa", ""], "section = \"pipe 2-1/2 std\"\nyield = \"205 MPa\""),
        (
            &["modulus", "17700 mm3", "57 mm", "345 MPa"],
            "modulus = \"17700 mm3\"\nface_width = \"57 mm\"\nyield = \"345 MPa\"",
        ),
        (
            &["moment", "2850 N m", "design", "57 mm"],
            "moment = \"2850 N m\"\nmoment_is = \"design\"\nface_width = \"57 mm\"",
        ),
        (
            &["timber", "6x6", "Southern Pine", "?", "dry", "no"],
            "timber = \"6x6\"\nspecies = \"Southern Pine\"\ngrade = \"unknown\"\nservice = \"dry\"\nincised = \"no\"",
        ),
    ] {
        let text = survey_with_post(&[answers, &[""]].concat());
        let expected = format!("[post.line]\n{table}\n\n");
        assert!(text.contains(&expected), "{expected}\n{text}");
        assert_eq!(read(&text).posts.len(), 1);
    }
    let mut interview = Interview::new(None);
    for line in in_metres()[..15].iter().map(String::as_str).chain(["modulus", "17700 mm3", "57 mm"]) {
        interview.answer(line).unwrap();
    }
    let told = interview.answer("don't know").unwrap_err();
    assert!(told.contains("yield of [post.line] cannot be unknown"), "{told}");
}

#[test]
fn ice_weight_a_bank_and_what_is_ordered_are_asked_and_written() {
    let mut lines = in_metres();
    lines[38] = "0.9 m".to_owned();
    lines[27] = "?".to_owned();
    lines[28] = "240 g/m2".to_owned();
    lines[33] = "yes".to_owned();
    let order = [
        ("end_gap", "150 mm"),
        ("joint_gap", ""),
        ("top_gap", "25 mm"),
        ("longest_panel", "15 m"),
        ("hem_allowance", ""),
        ("spares", "10 %"),
        ("lacing", "plain"),
        ("knot_end", "?"),
        ("rope_waste", ""),
        ("currency", "EUR"),
        ("cloth_price", "13 per m2"),
        ("tie_price", "0.15 each"),
        ("rope_price", ""),
        ("grommet_price", ""),
        ("crew_time", "45 min"),
        ("service_life", "5 years, by its seller"),
        ("warranty", ""),
        ("note", "before the season"),
    ];
    lines.splice(34..34, order.map(|(_, line)| line.to_owned()));
    let mut interview = Interview::new(None);
    for line in &lines {
        let asked = interview.question().unwrap();
        if asked.key == "cloth_price" {
            assert!(interview.answer("13").unwrap_err().contains("cloth_price"));
        }
        interview.answer(line).unwrap_or_else(|told| panic!("{asked}: {line}: {told}"));
    }
    let text = interview.survey().unwrap();
    let given: Vec<String> = order
        .iter()
        .filter(|(_, line)| !["", "?"].contains(line))
        .map(|(key, line)| format!("{key} = \"{line}\"\n"))
        .collect();
    assert!(text.contains(&format!("[order]\n{}", given.concat())), "{text}");
    for line in ["condition = \"unknown\"", "weight = \"240 g/m2\"", "base_above_ground = \"0.9 m\""] {
        assert!(text.lines().any(|there| there == line), "{line}: {text}");
    }
    let survey = read(&text);
    assert_eq!(survey.order.spares, Some(0.1));
    assert_eq!(survey.order.prices.currency.as_deref(), Some("EUR"));
}

#[test]
fn back_braces_and_guys_are_asked_with_the_posts_they_hold_and_written() {
    let mut lines = in_metres();
    let at = lines.len() - 3;
    let given = [
        ("guy.posts", "1 13"),
        ("guy.kind", "back brace"),
        ("guy.height", "2 m"),
        ("guy.back", "1.5 m"),
        ("guy.side", "outside"),
        ("guy.diameter", "42.4 mm"),
        ("guy.nominal_wall", "3.6 mm"),
        ("guy.yield", "205 MPa"),
        ("guy.posts", "7"),
        ("guy.kind", "guy"),
        ("guy.height", "2 m"),
        ("guy.back", "2 m"),
        ("guy.side", "inside"),
        ("guy.diameter", "6 mm"),
        ("guy.allowed", "6 kN"),
    ];
    lines.splice(at..at, given.map(|(_, line)| line.to_owned()));
    let mut interview = Interview::new(None);
    for (number, line) in lines.iter().enumerate() {
        let asked = interview.question().unwrap();
        if let Some((key, _)) = number.checked_sub(at).and_then(|number| given.get(number)) {
            assert_eq!(asked.key, *key);
        }
        if asked.key == "guy.height" {
            assert!(interview.answer("4 m").unwrap_err().contains("above the fence"));
        }
        interview.answer(line).unwrap_or_else(|told| panic!("{asked}: {line}: {told}"));
    }
    let text = interview.survey().unwrap();
    let guys = "guy = [{ posts = [1, 13], kind = \"back brace\", height = \"2 m\", back = \"1.5 m\", \
                side = \"outside\", diameter = \"42.4 mm\", nominal_wall = \"3.6 mm\", yield = \"205 MPa\" }, \
                { posts = [7], kind = \"guy\", height = \"2 m\", back = \"2 m\", side = \"inside\", \
                diameter = \"6 mm\", allowed = \"6 kN\" }]";
    assert!(text.contains(guys), "{text}");
    assert_eq!(read(&text).runs[0].run.guys.len(), 3);
    // Whoever has none is asked once.
    let mut interview = Interview::new(None);
    let asked = in_metres().into_iter().map(|line| {
        let key = interview.question().unwrap().key;
        interview.answer(&line).unwrap();
        key
    });
    assert_eq!(asked.filter(|key| key.starts_with("guy")).count(), 1);
}

#[test]
fn back_returns_to_every_question_in_turn() {
    let mut interview = Interview::new(None);
    assert!(interview.answer("back").unwrap_err().contains("first question"));
    let mut asked = Vec::new();
    for line in in_metres() {
        asked.push(interview.question().unwrap());
        interview.answer(&line).unwrap();
    }
    let survey = interview.survey().unwrap();
    // From the last question on, since a complete survey asks nothing any more.
    let mut interview = Interview::new(None);
    for line in &in_metres()[..asked.len() - 1] {
        interview.answer(line).unwrap();
    }
    for question in asked.iter().rev() {
        assert_eq!(interview.question().as_ref(), Some(question));
        assert_eq!(interview.survey(), None);
        interview.answer(" BACK ").err();
    }
    for line in in_metres() {
        interview.answer(&line).unwrap();
    }
    assert_eq!(interview.survey(), Some(survey));
}

#[test]
fn answers_that_end_early_say_what_is_missing_and_write_nothing() {
    let folder = tempdir().unwrap();
    let path = folder.path().join("survey.toml");
    let lines = in_metres();
    for end in [0, 5, 16, 36, 44, lines.len() - 1] {
        let out = ask(&path, &lines[..end]);
        assert_eq!((out.code, out.text.as_str()), (2, ""), "{}", out.err);
        let told = out.err.lines().last().unwrap();
        assert!(told.contains("ended before the survey was complete; nothing was written"), "{told}");
        assert_eq!(told.contains("bays"), end <= 44, "{told}");
        assert_eq!(told.contains("finish"), end <= 44, "{told}");
        assert_eq!(told.contains("girth"), end <= 16, "{told}");
        assert!(names_in(folder.path()).is_empty());
    }
    let out = run_with(&["new", "--ask"], "");
    assert_eq!((out.code, out.text.as_str()), (2, ""));
    assert!(out.err.contains("before a file was named"), "{}", out.err);
    // No survey stands before the last answer, whatever was said.
    let mut interview = Interview::new(None);
    for line in &lines {
        assert_eq!(interview.survey(), None);
        assert!(!interview.missing().is_empty());
        interview.answer(line).unwrap();
    }
    assert!(interview.survey().is_some() && interview.missing().is_empty());
}

#[test]
fn a_corner_that_no_run_meets_is_asked_again_at_the_end() {
    let folder = tempdir().unwrap();
    let path = folder.path().join("survey.toml");
    let mut lines = in_metres();
    lines[36] = "north".to_owned();
    lines[45] = "corner".to_owned();
    lines.extend(["corner", "18 m"].map(str::to_owned));
    let out = ask(&path, &lines);
    assert_eq!(out.code, 3, "{}", out.err);
    assert!(out.err.contains("no run faces west"), "{}", out.err);
    assert_eq!(out.err.matches("  ? ").count(), 1, "the same answer again is no answer:\n{}", out.err);
    let survey = read(&fs::read_to_string(&path).unwrap());
    assert!(matches!(survey.runs[0].run.start, End::Return(_)));
}

#[test]
fn the_questions_keep_the_survey_in_a_file() {
    let out = run_with(&["new", "--ask", "--out", "-"], "us\n");
    assert_eq!((out.code, out.text.as_str()), (2, ""));
    assert!(out.err.contains("--out FILE"), "{}", out.err);
    // A file that is there is asked for again, not written over.
    let folder = tempdir().unwrap();
    let (there, path) = (folder.path().join("there.toml"), folder.path().join("survey.toml"));
    fs::write(&there, "a day's work").unwrap();
    let mut lines = vec![there.to_str().unwrap().to_owned(), path.to_str().unwrap().to_owned()];
    lines.extend(in_metres());
    let out = run_with(&["new", "--ask"], &said(&lines));
    assert_eq!(out.code, 3, "{}", out.err);
    assert!(out.err.contains("there.toml is there already"));
    assert_eq!(fs::read_to_string(&there).unwrap(), "a day's work");
    assert!(path.exists());
}

#[test]
fn a_line_that_is_no_text_or_too_long_is_asked_again() {
    let folder = tempdir().unwrap();
    let path = folder.path().join("survey.toml");
    let mut bytes = b"si\n\xff\xfe\n".to_vec();
    bytes.extend(vec![b'x'; 200_000]);
    bytes.push(b'\n');
    bytes.extend(said(&in_metres()[1..]).replace('\n', "\r\n").bytes());
    let out = assert_cmd::Command::new(assert_cmd::cargo::cargo_bin!("fencegust"))
        .args(["new", "--ask", "--out", path.to_str().unwrap()])
        .write_stdin(bytes)
        .output()
        .unwrap();
    let err = String::from_utf8(out.stderr).unwrap();
    assert!(err.contains("no UTF-8 text") && err.contains("too long"), "{err}");
    assert_eq!(err.matches("  ? ").count(), 2, "{err}");
    assert_eq!(out.status.code(), Some(3));
    read(&fs::read_to_string(&path).unwrap());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    /// Whatever is answered, a survey that comes out reads without a mistake.
    #[test]
    fn no_answers_lead_to_a_survey_with_mistakes(picks in proptest::collection::vec(0_usize..108, 120)) {
        const LINES: &[&str] = &[
            "", "back", "?", "yes", "no", "us", "si", "north", "west", "corner", "free", "10 ft", "3 m", "230 mm",
            "9-1/16 in", "4 in", "closed mesh", "my cloth", "0.9", "density", "95 %", "none", "1, 2", "line", "end",
            "cloth", "\"", "\\", "ties", "lacing", "top, bottom", "gate 4 ft, 9 ft", "12 x 10 ft", "0.2 in .. 0.3 in",
            "115 mph", "nominal", "measured", "diameter", "1..2", "北側 \u{85}", "section", "modulus", "moment", "timber",
            "6x6", "Southern Pine", "No.2", "dry", "iced", "1.08 in3", "2100 lb-ft", "0.15 each", "10 %", "7 oz/yd2",
        ];
        let mut interview = Interview::new(None);
        for pick in picks {
            // Half of the answers are the plain ones, so that the end is reached.
            let line = match interview.question() {
                None => break,
                Some(question) if pick % 2 == 0 => {
                    if question.empty.is_some() || question.unknown { String::new() } else { question.example }
                }
                Some(_) => LINES[pick / 2].to_owned(),
            };
            // Refused or taken, it never comes to a survey that cannot be read.
            let _ = interview.answer(&line);
        }
        // To the end by what is plainest and taken.
        for _ in 0..200 {
            let Some(question) = interview.question() else { break };
            let plain = if question.empty.is_some() || question.unknown { "" } else { &question.example };
            let taken = [plain, "none", "0 m", "20 ft", "measured", "0.1 mm", "1 mm", "20 mm"].iter().any(|line| interview.answer(line).is_ok());
            prop_assert!(taken, "{question}");
        }
        let text = interview.survey();
        prop_assert!(text.is_some(), "{:?}", interview.question());
        let text = text.unwrap();
        let survey = Survey::read(&text, "answers");
        prop_assert!(survey.is_ok(), "{}\n{text}", survey.unwrap_err());
    }
}
