//! Case files that people bring: every one that is wrong is told with its line, and stops no other.

use crate::support::{Output, run, run_with};
use std::fs;
use std::path::Path;
use tempfile::{TempDir, tempdir};

const GOOD: &str = r#"case = 1
checks = "section/round-tube"
[source]
work = "An invented handbook"
place = "page 1"
kind = "textbook"
seen = "first-hand"
[given]
diameter = "2 in"
wall = "0.5 in"
[expect.modulus]
printed = "1.17 in3"
"#;

/// A folder with these files.
fn folder(files: &[(&str, &str)]) -> TempDir {
    let folder = tempdir().unwrap();
    for (name, text) in files {
        let path = folder.path().join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }
    folder
}

fn verify(path: &Path) -> Output {
    let out = run(&["verify", path.to_str().unwrap()]);
    assert!(!out.err.contains("panicked"), "{}", out.err);
    out
}

/// Words as they stand in one line, wherever the text was wrapped.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What is said of the good file with one passage changed.
fn told(from: &str, to: &str, line: usize, words: &[&str]) {
    assert_eq!(GOOD.matches(from).count(), 1, "{from}");
    let folder = folder(&[("wrong.toml", &GOOD.replace(from, to))]);
    let out = verify(folder.path());
    assert_eq!((out.code, out.err.as_str()), (2, ""), "{}", out.text);
    let text = flat(&out.text);
    assert!(text.starts_with("Not worked: "), "nothing is worked and yet a table begins: {}", out.text);
    assert!(text.contains(&format!("wrong.toml, line {line}: ")), "{}", out.text);
    assert_eq!(text.matches("wrong.toml, line").count(), 1, "{}", out.text);
    assert!(text.ends_with("1 file could not be worked."), "{}", out.text);
    for words in words {
        assert!(text.contains(words), "does not say {words}:\n{}", out.text);
    }
}

#[test]
fn a_wrong_file_is_told_with_its_line_and_what_to_write() {
    told("case = 1", "case = 2", 1, &["case = 2 is a format this program does not know", "write case = 1"]);
    told("case = 1\n", "", 1, &["write case = 1"]);
    told("place = \"page 1\"\n", "", 3, &["source.place is missing", "section, table, example or page"]);
    told(
        "work = \"An invented handbook\"\n",
        "",
        3,
        &["source.work is missing", "title, edition, publisher"],
    );
    told("textbook", "textbok", 6, &["no kind of work \"textbok\"", "the nearest is \"textbook\""]);
    told("first-hand", "hearsay", 7, &["\"hearsay\"", "first-hand, second-hand, memory"]);
    told("first-hand", "second-hand", 7, &["source.via is missing"]);
    told("1.17 in3", "1200 mm3", 12, &["ends in noughts without a point", "digits = 2 to 4"]);
    told(
        "round-tube",
        "round-tub",
        2,
        &["no rule \"section/round-tub\"", "the nearest is \"section/round-tube\""],
    );
    told("section/round-tube", "zzz", 2, &["no rule \"zzz\"; fencegust rules lists them"]);
    told("diameter =", "diametr =", 9, &["no input diametr; the nearest is diameter"]);
    told("\"2 in\"", "\"2 psf\"", 9, &["psf is a pressure or stress, and a length belongs here"]);
    told("\"2 in\"", "2", 9, &["2 has no unit"]);
    told("wall = \"0.5 in\"\n", "", 10, &["wall is missing: it is a length"]);
    told("1.17 in3", "about one", 12, &["\"about one\" is not a number"]);
    told("\"1.17 in3\"", "1.17", 12, &["printed is the number 1.17", "in quotes"]);
    told("1.17 in3", "1.17 ft", 12, &["a section modulus belongs here"]);
    told("[expect.modulus]\nprinted = \"1.17 in3\"\n", "", 10, &["nothing is expected"]);
    told("0.5 in", "1.5 in", 12, &["wall 1-1/2 in", "is above 1 in"]);
}

#[test]
fn a_key_that_is_unknown_or_in_the_wrong_table_is_told_with_its_place() {
    told(
        "checks",
        "colour = \"red\"\nchecks",
        2,
        &["a case file has no key colour", "known are case, checks, disputed"],
    );
    told("checks", "chekcs", 2, &["no key chekcs", "the nearest is \"checks\""]);
    told("kind =", "knid =", 6, &["[source] has no key knid", "the nearest is \"kind\""]);
    told("printed =", "printd =", 12, &["[expect.modulus] has no key printd", "the nearest is \"printed\""]);
    told(
        "printed = \"1.17 in3\"",
        "printed = \"1.17 in3\"\ndisputed = \"why\"",
        13,
        &["disputed stands in [expect.modulus] but belongs at the top of the file"],
    );
    told(
        "[given]",
        "disputed = \"why\"\n[given]",
        8,
        &["disputed stands in [source] but belongs at the top"],
    );
    told(
        "case = 1\n",
        "case = 1\nprinted = \"1 ft\"\n",
        2,
        &["printed stands in a case file but belongs below [expect"],
    );
    told("checks = ", "checks ", 2, &["this is no TOML"]);
    told("wall =", "diameter =", 10, &["this is no TOML: duplicate key"]);
}

#[test]
fn a_page_that_differs_and_one_disputed_in_vain_fail_and_say_what_to_do() {
    let of = |from: &str, to: &str| {
        let folder = folder(&[("case.toml", &GOOD.replace(from, to))]);
        let out = verify(folder.path());
        assert_eq!(out.err, "");
        (out.code, flat(&out.text))
    };
    let (code, text) = of("1.17", "1.27");
    assert!(code == 1 && text.contains("differs 1.1667 in3 1.27 in3"), "{text}");
    let (code, text) = of("checks", "disputed = \"believed wrong\"\nchecks");
    assert!(
        code == 1 && text.contains("disputed but now agrees") && text.contains("take disputed out"),
        "{text}"
    );
    let (code, text) = of("printed = \"1.17 in3\"", "printed = \"1.17 in3\"\npinned = \"1.1666 in3\"");
    assert!(code == 1 && text.contains("pinned at 1.1666 in3, ours lies off by 5.7e-5 of it"), "{text}");
    let (code, text) = of("1.17", "1.17");
    assert!(code == 0 && text.contains("1 value of 1 work: 1 agree."), "{text}");
}

#[test]
fn a_folder_of_good_and_wrong_files_is_worked_as_far_as_it_goes() {
    let wrong = GOOD.replace("2 in", "2 psf");
    let differs = GOOD.replace("1.17", "1.27");
    let folder = folder(&[
        ("a/good.toml", GOOD),
        ("a/deeper/differs.toml", &differs),
        ("b/wrong.toml", &wrong),
        ("b/notes.txt", "no case file"),
    ]);
    let out = verify(folder.path());
    assert_eq!((out.code, out.err.as_str()), (2, ""));
    let text = flat(&out.text);
    for said in [
        "good.toml checks section/round-tube",
        "2 values of 1 work: 1 agree, 1 FAIL.",
        "wrong.toml, line 9: diameter: psf",
        "1 file could not be worked.",
    ] {
        assert!(text.contains(said), "{said}:\n{}", out.text);
    }
    assert!(!text.contains("notes.txt"));
    let only_a = verify(&folder.path().join("a"));
    assert_eq!(only_a.code, 1);
}

#[test]
fn what_is_not_there_empty_or_no_text_is_told_by_its_name() {
    let folder = folder(&[("good.toml", GOOD), ("empty.toml", "")]);
    let path = |name: &str| folder.path().join(name);
    fs::create_dir(path("nothing")).unwrap();
    fs::write(path("binary.toml"), [0xff, 0xfe, 0x00]).unwrap();
    let told = |name: &str| {
        let out = verify(&path(name));
        assert_eq!((out.code, out.text.as_str()), (2, ""), "{name}");
        out.err
    };
    assert!(told("nothing").contains("no case file (NAME.toml) stands below it"));
    assert!(told("gone.toml").contains("there is no such file"));
    assert!(told("binary.toml").contains("line 1: this is no UTF-8 text"));
    let empty = verify(&path("empty.toml"));
    assert!(
        empty.code == 2 && empty.text.contains("empty.toml, line 1: the number of the format"),
        "{}",
        empty.text
    );
    // What can be worked is worked beside it.
    let good = path("good.toml");
    let gone = path("gone.toml");
    let out = run(&["verify", gone.to_str().unwrap(), good.to_str().unwrap()]);
    assert!(out.code == 2 && out.text.contains("1 agree.") && out.err.contains("gone.toml"), "{}", out.err);
    let input = run_with(&["verify", "-"], GOOD);
    assert!(input.code == 0 && input.text.contains("\nstandard input\n"), "{}", input.text);
}

#[test]
fn a_file_named_twice_or_linked_in_a_circle_is_worked_once() {
    let folder = folder(&[("good.toml", GOOD)]);
    let path = folder.path().to_str().unwrap();
    let file = folder.path().join("good.toml");
    let out = run(&["verify", path, file.to_str().unwrap(), path]);
    assert_eq!((out.code, out.err.as_str()), (0, ""));
    assert!(out.text.contains("1 value of 1 work"), "{}", out.text);
    #[cfg(unix)]
    {
        std::os::unix::fs::symlink(folder.path(), folder.path().join("circle")).unwrap();
        std::os::unix::fs::symlink("nowhere.toml", folder.path().join("broken.toml")).unwrap();
        let out = run(&["verify", path]);
        assert_eq!(out.code, 2);
        assert!(out.text.contains("1 value of 1 work") && out.err.contains("broken.toml"), "{}", out.err);
    }
}
