//! The reference cases: every file on disk is worked, and the working of them can fail.

use fencegust::rules::Case;
use fencegust::rules::embedded::CASES;
use fencegust::rules::verify::{
    Outcome, Reading, Summary, Verdict, WIDTH, outcomes, read_all, status_table, status_table_of, text,
    work_all,
};
use std::fs;
use std::path::Path;

/// The case files on disk: name under `reference-cases` and text, in order.
fn on_disk() -> Vec<(String, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference-cases");
    let (mut found, mut folders) = (Vec::new(), vec![root.clone()]);
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let name = path.strip_prefix(&root).unwrap().to_str().unwrap().replace('\\', "/");
                found.push((name, fs::read_to_string(path).unwrap()));
            }
        }
    }
    found.sort();
    found
}

fn cases() -> Vec<Case> {
    cases_of(&on_disk())
}

fn cases_of(files: &[(String, String)]) -> Vec<Case> {
    let (cases, unread) = read_all(files.iter().map(|(name, text)| (name.as_str(), text.as_str())));
    assert!(unread.is_empty(), "{}", text(&[], &unread));
    cases
}

#[test]
fn every_case_holds() {
    let cases = cases();
    let (found, not_worked) = work_all(&cases);
    assert!(not_worked.is_empty(), "{}", text(&[], &not_worked));
    let wrong: Vec<_> = found
        .iter()
        .filter(|outcome| outcome.verdict.fails())
        .map(|outcome| {
            let telling = outcome.telling().unwrap();
            format!(
                "{}: {} {}: ours {}, printed {}",
                outcome.case.file,
                outcome.name(),
                outcome.verdict.words(),
                telling.ours_text(),
                telling.trial.printed.text()
            )
        })
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    let Summary { published, other_programs, .. } = Summary::of(&found);
    assert!(published.values >= 380 && published.works >= 100, "{published:?}");
    assert!(published.cells >= 1000 && published.disputed >= 35, "{published:?}");
    assert!(other_programs.values >= 80, "{other_programs:?}");
}

#[test]
fn the_cases_in_the_program_are_those_on_disk() {
    let files = on_disk();
    let names: Vec<_> = files.iter().map(|(name, _)| name.as_str()).collect();
    let inside: Vec<_> = CASES.iter().map(|(name, _)| *name).collect();
    assert_eq!(inside, names);
    for ((_, inside), (name, text)) in CASES.iter().zip(&files) {
        assert_eq!(inside, text, "{name}");
    }
}

#[test]
fn the_table_of_the_readme_is_made_from_the_cases_in_the_program() {
    let cases = cases();
    let (found, _) = work_all(&cases);
    assert_eq!(status_table(), status_table_of(&found));
    assert!(status_table().contains(&format!("| together | {} |", Summary::of(&found).published.values)));
}

#[test]
fn a_file_is_named_by_its_subject_and_its_work() {
    for (name, _) in on_disk() {
        let (subject, rest) = name.split_once('/').unwrap();
        let plain =
            |text: &str| text.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-');
        assert!(plain(subject) && rest.strip_suffix(".toml").is_some_and(plain), "{name}");
    }
}

#[test]
fn the_text_of_all_cases_is_no_wider_than_it_may_be_and_shows_every_file() {
    let cases = cases();
    let (found, _) = work_all(&cases);
    let error =
        Case::read("a-file-with-a-long-name.toml", "case = 1\nchecks = \"asce7-16/wall\"").unwrap_err();
    let text = text(&found, &[error]);
    for line in text.lines() {
        assert!(line.chars().count() <= WIDTH, "{line}");
    }
    for case in &cases {
        assert!(text.lines().any(|line| line == case.file), "{}", case.file);
    }
    assert!(text.contains("a-file-with-a-long-name.toml, line 1:"), "{text}");
    assert!(text.contains("1 file could not be worked."), "{text}");
}

/// A printed text with so many units in its last digit more; `noughts` of its last digits do not count.
fn more(printed: &str, steps: u64, noughts: u32) -> String {
    // Away from nought: a sign stays.
    if let Some(size) = printed.strip_prefix('-') {
        return format!("-{}", more(size, steps, noughts));
    }
    let end = printed.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(printed.len());
    let (figures, unit) = printed.split_at(end);
    let decimals = figures.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let number: u64 = figures.replace('.', "").parse().unwrap();
    let digits = format!("{:0>width$}", number + steps * 10_u64.pow(noughts), width = decimals + 1);
    let (whole, decimals) = digits.split_at(digits.len() - decimals);
    if decimals.is_empty() { format!("{whole}{unit}") } else { format!("{whole}.{decimals}{unit}") }
}

/// What is said of a value or a table once one printed text of its file is changed; the change is told how
/// many of the last digits do not count.
fn changed(
    files: &[(String, String)],
    outcome: &Outcome<'_>,
    row_at: usize,
    change: impl Fn(&str, u32) -> String,
) -> Verdict {
    let file = &outcome.case.file;
    let (_, text) = files.iter().find(|(name, _)| name == file).unwrap();
    let mut edited: toml::Table = text.parse().unwrap();
    if outcome.expectation.is_table {
        let table = edited["table"].as_table_mut().unwrap();
        let columns = table["columns"].as_array().unwrap();
        let place = |name: &str| columns.iter().position(|column| column.as_str() == Some(name));
        let (column, digits) = (place("printed").unwrap(), place("digits"));
        let row = table["rows"].as_array_mut().unwrap()[row_at].as_array_mut().unwrap();
        let before = row[column].as_str().unwrap().to_owned();
        let figures = |text: &str| text.split(' ').next().unwrap().trim_start_matches('-').to_owned();
        let counting = digits.and_then(|digits| row[digits].as_integer());
        let uncounted =
            counting.map_or(0, |digits| figures(&before).len() - usize::try_from(digits).unwrap());
        let printed = change(&before, u32::try_from(uncounted).unwrap());
        let now = figures(&printed);
        let noughts = now.ends_with('0') && !now.contains(['.', '/']);
        row[column] = printed.into();
        let none = || toml::Value::String(String::new());
        let count = if noughts { i64::try_from(now.len() - uncounted).unwrap().into() } else { none() };
        match digits {
            Some(digits) => row[digits] = count,
            // The change has made noughts where the page had none.
            None if noughts => {
                table["columns"].as_array_mut().unwrap().push("digits".into());
                for (at, row) in table["rows"].as_array_mut().unwrap().iter_mut().enumerate() {
                    let count = if at == row_at { count.clone() } else { none() };
                    row.as_array_mut().unwrap().push(count);
                }
            }
            None => {}
        }
    } else {
        let expect = edited["expect"].as_table_mut().unwrap()[outcome.name()].as_table_mut().unwrap();
        let figures = |text: &str| text.split(' ').next().unwrap().to_owned();
        let printed = expect["printed"].as_str().unwrap().to_owned();
        let digits = expect.remove("digits").map(|digits| digits.as_integer().unwrap());
        let count = |text: &str| i64::try_from(figures(text).len()).unwrap();
        let noughts = digits.map_or(0, |digits| count(&printed) - digits);
        let printed = change(&printed, u32::try_from(noughts).unwrap());
        if figures(&printed).ends_with('0') && !printed.contains('.') {
            expect.insert("digits".into(), (count(&printed) - noughts).into());
        }
        expect["printed"] = printed.into();
    }
    let case = Case::read(file, &edited.to_string()).unwrap_or_else(|error| panic!("{error}\n{edited}"));
    let found = outcomes(&case).unwrap_or_else(|error| panic!("{error}"));
    found.iter().find(|other| other.name() == outcome.name()).unwrap().verdict
}

#[test]
fn one_more_in_the_last_digit_of_any_printed_value_is_noticed() {
    let files = on_disk();
    let cases = cases_of(&files);
    let (found, _) = work_all(&cases);
    let mut edits = 0;
    for outcome in found.iter().filter(|outcome| outcome.verdict == Verdict::Agrees) {
        for (row, reading) in outcome.readings.iter().enumerate() {
            let half = reading.trial.printed.half_a_unit();
            // Where more than half a unit is allowed, so many that ours is left behind.
            let allowed = reading.trial.allowed;
            let steps = if allowed > half { (2.0 * allowed / half).ceil() as u64 } else { 1 };
            let verdict = changed(&files, outcome, row, |text, noughts| more(text, steps, noughts));
            let (file, printed) = (&outcome.case.file, reading.trial.printed.text());
            assert_eq!(verdict, Verdict::Differs, "{file}: {printed} and {steps} more");
            edits += 1;
        }
    }
    assert!(edits > 400, "{edits}");
}

#[test]
fn a_disputed_page_that_is_put_right_is_noticed() {
    let files = on_disk();
    let cases = cases_of(&files);
    let (found, _) = work_all(&cases);
    let mut edits = 0;
    for outcome in found.iter().filter(|outcome| outcome.verdict == Verdict::DisputedStillDiffers) {
        for (row, reading) in outcome.readings.iter().enumerate() {
            let verdict = changed(&files, outcome, row, |_, _| reading.ours_text());
            assert_eq!(verdict, Verdict::DisputedButAgrees, "{}", outcome.case.file);
            edits += 1;
        }
    }
    assert!(edits >= 8, "{edits}");
}

#[test]
fn no_more_is_allowed_than_a_page_needs() {
    let files = on_disk();
    let mut allowed = 0;
    for case in &cases_of(&files) {
        let own_column = files.iter().any(|(name, text)| *name == case.file && text.contains("\"allow\""));
        for outcome in outcomes(case).unwrap() {
            let needs = |reading: &&Reading<'_>| {
                let off = (reading.ours - reading.trial.printed.si()).abs();
                off > reading.trial.printed.half_a_unit() && reading.share_of_allowed() > 0.5
            };
            let more: Vec<_> = outcome
                .readings
                .iter()
                .filter(|reading| reading.trial.allowed > reading.trial.printed.half_a_unit())
                .collect();
            if more.is_empty() {
                continue;
            }
            allowed += 1;
            let needed = more.iter().copied().filter(needs).count();
            let enough = if own_column { needed == more.len() } else { needed > 0 };
            assert!(enough, "{}: {needed} of {} need what is allowed", case.file, more.len());
        }
    }
    assert!(allowed >= 5, "{allowed}");
}

const PLAIN: &str = r#"case = 1
checks = "aisc360-16/f8-compact-limit"
note = "an invented case"

[source]
work = "An invented handbook"
place = "page 1"
kind = "textbook"
seen = "second-hand"
via = "an invented retelling"

[given]
modulus = "29000 ksi"
yield_strength = "50 ksi"

[expect.limit]
printed = "40.6"
"#;

const TABLE: &str = r#"case = 1
checks = "aisc360-16/f8-compact-limit"

[source]
work = "An invented handbook"
place = "page 1"
kind = "textbook"
seen = "first-hand"

[given]
modulus = "29000 ksi"

[table]
columns = ["yield_strength", "printed"]
rows = [
    ["50 ksi", "40.6"],
    ["35 ksi", "58.0"],
]
"#;

/// What is said of a file with one passage changed: one mistake, in this line, in these words.
fn said(before: &str, from: &str, to: &str, line: usize, words: &[&str]) {
    assert_eq!(before.matches(from).count(), 1, "{from}");
    let after = before.replace(from, to);
    let error = match Case::read("made-up.toml", &after) {
        Err(error) => error,
        Ok(case) => outcomes(&case).err().unwrap_or_else(|| panic!("{after}\nis taken as it stands")),
    };
    let said = error.to_string();
    assert_eq!(error.mistakes.len(), 1, "{said}");
    assert!(said.starts_with(&format!("made-up.toml, line {line}: ")), "{said}");
    for words in words {
        assert!(said.contains(words), "{words} is not in: {said}");
    }
}

#[test]
fn the_two_invented_files_hold() {
    for text in [PLAIN, TABLE] {
        let case = Case::read("made-up.toml", text).unwrap_or_else(|error| panic!("{error}"));
        assert_eq!(outcomes(&case).unwrap()[0].verdict, Verdict::Agrees);
    }
}

#[test]
fn a_file_of_another_format_is_told_by_its_number_and_nothing_else() {
    said(PLAIN, "case = 1\n", "case = 2\n", 1, &["case = 2", "write case = 1"]);
    said(PLAIN, "case = 1\nchecks", "case = 2\nholds", 1, &["case = 2", "write case = 1"]);
    said(PLAIN, "case = 1\n", "", 1, &["missing", "write case = 1"]);
    said(PLAIN, "case = 1", "case = ", 1, &[]);
    said(PLAIN, "case = 1", "case = \"1\"", 1, &["invalid type"]);
}

#[test]
fn a_source_says_work_place_kind_and_how_it_was_seen() {
    said(
        PLAIN,
        "place = \"page 1\"\n",
        "",
        5,
        &["source.place is missing", "section, table, example or page"],
    );
    said(PLAIN, "\"page 1\"", "\" \"", 5, &["source.place is missing"]);
    said(PLAIN, "work = \"An invented handbook\"\n", "", 5, &["source.work is missing", "publisher"]);
    said(PLAIN, "kind = \"textbook\"\n", "", 5, &["source.kind is missing"]);
    said(PLAIN, "seen = \"second-hand\"\n", "", 5, &["source.seen is missing"]);
    said(
        PLAIN,
        "\"textbook\"",
        "\"textboook\"",
        8,
        &["\"textboook\"", "permit-document", "nearest is \"textbook\""],
    );
    said(PLAIN, "\"second-hand\"", "\"hearsay\"", 9, &["\"hearsay\"", "first-hand, second-hand, memory"]);
    said(PLAIN, "via = \"an invented retelling\"\n", "", 9, &["source.via is missing", "retelling"]);
    said(PLAIN, "\"second-hand\"", "\"memory\"", 10, &["via", "leave it out"]);
    said(PLAIN, "place = \"page 1\"", "plase = \"page 1\"", 7, &["plase", "place"]);
    said(PLAIN, "note = \"an invented case\"", "disputed = \"\"", 3, &["disputed", "why"]);
}

#[test]
fn a_rule_an_input_or_a_value_that_is_not_known_finds_its_nearest() {
    said(
        PLAIN,
        "f8-compact-limit",
        "f8-compact-limmit",
        2,
        &["no rule", "nearest is \"aisc360-16/f8-compact-limit\""],
    );
    said(PLAIN, "checks = \"aisc360-16/f8-compact-limit\"\n", "", 1, &["checks is missing"]);
    said(PLAIN, "[expect.limit]", "[expect.limmit]", 16, &["\"limmit\"", "the result is \"limit\""]);
    said(
        PLAIN,
        "[expect.limit]",
        "[expect.\"aisc360-16/f8-noncompact-limit\"]",
        17,
        &["does not work \"aisc360-16/f8-noncompact-limit\""],
    );
    said(PLAIN, "modulus = ", "modulis = ", 13, &["no input modulis", "nearest is modulus"]);
    said(
        TABLE,
        "\"yield_strength\"",
        "\"yield_strenght\"",
        14,
        &["yield_strenght", "nearest is yield_strength"],
    );
}

#[test]
fn an_input_that_is_missing_or_of_another_kind_is_told_once() {
    said(PLAIN, "modulus = \"29000 ksi\"\n", "", 15, &["modulus is missing", "a pressure or stress"]);
    said(PLAIN, "50 ksi", "50 ft", 14, &["yield_strength", "ft is a length", "ksi"]);
    said(PLAIN, "\"50 ksi\"", "50", 14, &["50 has no unit", "ksi"]);
    said(PLAIN, "\"50 ksi\"", "[50]", 14, &["text or a plain number"]);
    said(TABLE, "29000 ksi", "29000 mph", 11, &["modulus", "mph is a speed"]);
    said(TABLE, "35 ksi", "35 mph", 17, &["yield_strength", "mph is a speed"]);
    said(TABLE, "modulus = \"29000 ksi\"\n", "", 12, &["modulus is missing"]);
}

#[test]
fn a_printed_value_is_text_of_the_right_kind_with_a_last_digit() {
    said(PLAIN, "\"40.6\"", "40.6", 17, &["printed is the number 40.6", "in quotes"]);
    said(PLAIN, "\"40.6\"", "\"40.6 ft\"", 17, &["ft is a length", "a plain number"]);
    said(PLAIN, "\"40.6\"", "\"forty\"", 17, &["\"forty\" is not a number"]);
    said(PLAIN, "\"40.6\"", "\"40\"", 17, &["\"40\" ends in noughts", "digits = 1 to 2"]);
    said(PLAIN, "\"40.6\"", "\"40\"\ndigits = 3", 17, &["digits = 3", "write 1 to 2"]);
    said(PLAIN, "\"40.6\"", "\"40.6\"\ndigits = 3", 17, &["leave digits out"]);
    said(PLAIN, "\"40.6\"", "\"40 3/5\"", 17, &["no last digit"]);
    said(PLAIN, "printed = \"40.6\"", "pinned = \"40.6\"", 16, &["printed is missing"]);
    said(
        PLAIN,
        "printed = \"40.6\"",
        "printed = \"40.6\"\npinned = \"40.6 ft\"",
        18,
        &["pinned: ft is a length"],
    );
    said(PLAIN, "printed", "prinetd", 17, &["prinetd", "printed"]);
    said(TABLE, "\"40.6\"", "40.6", 16, &["printed is the number 40.6"]);
    said(TABLE, "\"40.6\"", "\"40\"", 16, &["ends in noughts"]);
}

#[test]
fn an_allowance_has_its_reason_and_reaches_beyond_the_last_digit() {
    let with = |extra: &str| format!("printed = \"40.6\"\n{extra}");
    let plain = "printed = \"40.6\"";
    said(PLAIN, plain, &with("allow = \"0.1\""), 18, &["because = "]);
    said(PLAIN, plain, &with("allow = \"0.1\"\nbecause = \"\""), 18, &["because = "]);
    said(PLAIN, plain, &with("because = \"why\""), 18, &["because without allow"]);
    said(PLAIN, plain, &with("allow = \"0.05\"\nbecause = \"why\""), 18, &["beyond half a unit"]);
    said(PLAIN, plain, &with("allow = \"0.1 ft\"\nbecause = \"why\""), 18, &["allow: ft is a length"]);
    said(TABLE, "columns", "allow = \"0.05\"\nbecause = \"why\"\ncolumns", 14, &["beyond half a unit"]);
    let column = TABLE.replace("\"printed\"]", "\"printed\", \"allow\"]").replace("40.6\"]", "40.6\", \"\"]");
    let column = column.replace("58.0\"]", "58.0\", \"0.1\"]");
    said(&column, "\"0.1\"", "0.1", 14, &["allow without a reason"]);
    let reasoned = column.replace("columns", "because = \"why\"\ncolumns");
    said(&reasoned, "\"0.1\"", "\"0.05\"", 18, &["beyond half a unit"]);
    said(&reasoned, "\"0.1\"", "\"\"", 15, &["beyond half a unit"]);
    said(&reasoned, "\"0.1\"", "\"0.1 ft\"", 18, &["allow: ft is a length"]);
}

#[test]
fn a_table_has_printed_values_and_a_cell_for_each_column() {
    said(TABLE, "\"58.0\"]", "\"58.0\", 1]", 17, &["a row of 3 cells in a table of 2 columns"]);
    let with_modulus = TABLE
        .replace("ksi\", \"", "ksi\", \"29000 ksi\", \"")
        .replace("strength\", ", "strength\", \"modulos\", ");
    said(&with_modulus, "modulos", "modulus", 14, &["column \"modulus\" stands twice"]);
    said(TABLE, "\"printed\"", "\"printd\"", 14, &["printd", "nearest is printed"]);
    let given = &TABLE[TABLE.find("\"printed\"").unwrap()..];
    said(TABLE, given, "]\nrows = [[\"50 ksi\"]]\n", 14, &["no column \"printed\""]);
    said(TABLE, ", \"58.0\"]", "]", 17, &["a row of 1 cell in a table of 2 columns"]);
    let twice = TABLE.replace("40.6\"]", "40.6\", \"40.6\"]").replace("58.0\"]", "58.0\", \"58.0\"]");
    said(&twice, "\"printed\"]", "\"printed\", \"printed\"]", 14, &["column \"printed\" stands twice"]);
    let rows = &TABLE[TABLE.find("rows = [").unwrap()..];
    said(TABLE, rows, "rows = []\n", 13, &["no rows"]);
    said(PLAIN, "[expect.limit]\nprinted = \"40.6\"\n", "", 14, &["nothing is expected", "[table]"]);
    said(TABLE, "[table]", "[expect.limit]\nprinted = \"40.6\"\n[table]", 13, &["write two files"]);
    said(TABLE, "columns", "of = \"no/rule\"\ncolumns", 14, &["no value \"no/rule\""]);
}

#[test]
fn a_row_says_how_many_of_its_digits_count() {
    let with_digits = TABLE
        .replace("\"printed\"]", "\"printed\", \"digits\"]")
        .replace("[\"50 ksi\", \"40.6\"]", "[\"50 ksi\", \"40.6\", \"\"]")
        .replace("[\"35 ksi\", \"58.0\"]", "[\"29 ksi\", \"70\", 2]");
    let case = Case::read("made-up.toml", &with_digits).unwrap_or_else(|error| panic!("{error}"));
    assert_eq!(outcomes(&case).unwrap()[0].verdict, Verdict::Agrees);
    assert!((case.expects[0].trials[1].allowed - 0.5).abs() < 1e-12);
    said(&with_digits, "70\", 2", "70\", \"\"", 17, &["ends in noughts", "digits = 1 to 2"]);
    said(&with_digits, "70\", 2", "70\", \"two\"", 17, &["digits: \"two\" is not a number"]);
}

#[test]
fn what_the_rule_refuses_is_told_with_the_row() {
    let wall = TABLE
        .replace("aisc360-16/f8-compact-limit", "asce7-16/open-frame-flat")
        .replace("[given]\nmodulus = \"29000 ksi\"\n", "")
        .replace("yield_strength", "solidity")
        .replace("[\"50 ksi\", \"40.6\"]", "[0.2, \"1.8\"]")
        .replace("[\"35 ksi\", \"58.0\"]", "[0.4, \"1.6\"]");
    said(&wall, "0.4", "0.8", 15, &["solidity 0.800 is above 0.700", "Fig. 29.4-2"]);
}

#[test]
fn every_mistake_is_told_at_once_in_the_order_of_the_file() {
    let wrong = PLAIN
        .replace("note = \"an invented case\"", "disputed = \"\"")
        .replace("\"page 1\"", "\"\"")
        .replace("\"textbook\"", "\"novel\"")
        .replace("50 ksi", "50 ft")
        .replace("\"40.6\"", "\"40\"");
    let said = Case::read("made-up.toml", &wrong).unwrap_err().to_string();
    let lines: Vec<_> = said.lines().map(|line| line.split(':').next().unwrap()).collect();
    let line = |number: usize| format!("made-up.toml, line {number}");
    assert_eq!(lines, [line(3), line(5), line(8), line(14), line(17)]);
}

#[test]
fn a_rule_asked_for_what_cannot_be_says_so_and_never_a_number_out_of_nothing() {
    let asked = |arguments: &[&str]| {
        let out = crate::support::run(arguments);
        assert_eq!((out.code, out.text.as_str()), (2, ""), "{}", out.err);
        assert!(!out.err.contains("panicked"), "{}", out.err);
        out.err
    };
    let tube = "aisc360-16/tube-moment";
    assert!(
        asked(&["rule", tube, "diameter=-4 in", "wall=-1 in", "yield_strength=30 ksi"]).contains("above 0")
    );
    assert!(asked(&["rule", "asce7-16/openings-factor", "solidity=1.2"]).contains("no number"));
    assert!(asked(&["rule", "verdict/limit-gust", "gust=100 mph", "ratio=-1"]).contains("no number"));
    assert!(
        asked(&["rule", "asce7-16/openings-factr", "solidity=1"])
            .contains("perhaps asce7-16/openings-factor")
    );
    assert!(asked(&["rule", "asce7-16/openings-factor", "soldity=1"]).contains("the nearest is solidity"));
    assert!(asked(&["rule", "asce7-16/openings-factor", "solidity=1 ft"]).contains("a plain number"));
    assert!(asked(&["rule", "asce7-16/openings-factor", "1"]).contains("NAME=VALUE"));
    let out = crate::support::run(&["rule", "asce7-16/openings-factor", "solidity=0.75"]);
    assert!(out.code == 0 && out.text.contains("= 0.8750"), "{}", out.text);
}

#[test]
fn the_command_verifies_its_own_cases_and_those_it_is_given() {
    let own = crate::support::run(&["verify"]);
    assert_eq!(own.code, 0, "{}", own.text);
    let on_disk = crate::support::run(&["verify", "reference-cases"]);
    assert_eq!(on_disk.code, 0);
    let count = |text: &str| text.lines().find(|line| line.contains(" values of ")).map(str::to_owned);
    assert_eq!(count(&own.text), count(&on_disk.text));
    assert_eq!(crate::support::run(&["verify", "no-such-folder"]).code, 2);
}
