//! The commands of the rules: `verify`, `rule`, `rules`.

use super::{FAILED, text_of, trouble};
use crate::report;
use crate::rules::embedded::CASES;
use crate::rules::verify::{Verdict, read_all, text, work_all};
use crate::rules::{all, named};
use crate::units::System;
use crate::workings::Arguments;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// The case files below a file or folder, in the order of their names.
fn case_files(path: &Path, found: &mut Vec<PathBuf>) -> io::Result<()> {
    if !path.is_dir() {
        found.push(path.to_owned());
        return Ok(());
    }
    let mut inside: Vec<PathBuf> =
        path.read_dir()?.map(|entry| entry.map(|entry| entry.path())).collect::<io::Result<_>>()?;
    inside.sort();
    for path in inside {
        if path.is_dir() || path.extension().is_some_and(|end| end == "toml") {
            case_files(&path, found)?;
        }
    }
    Ok(())
}

/// Works the reference cases, those built in or those named.
pub(super) fn verify(files: &[String], out: &mut impl Write) -> io::Result<u8> {
    let mut texts: Vec<(String, String)> = Vec::new();
    let mut failed = false;
    if files.is_empty() {
        texts.extend(CASES.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())));
    }
    for name in files {
        let mut found = Vec::new();
        if let Err(error) = case_files(Path::new(name), &mut found) {
            trouble(&format!("{name}: {error}"));
            failed = true;
        }
        if found.is_empty() && Path::new(name).is_dir() {
            trouble(&format!("{name}: no case file (NAME.toml) stands below it"));
            failed = true;
        }
        for path in found {
            let shown = path.display().to_string();
            match text_of(&shown) {
                Ok(text) => texts.push((shown, text)),
                Err(told) => {
                    trouble(&told);
                    failed = true;
                }
            }
        }
    }
    let (cases, mut unread) = read_all(texts.iter().map(|(name, text)| (name.as_str(), text.as_str())));
    let (outcomes, not_worked) = work_all(&cases);
    unread.extend(not_worked);
    if !cases.is_empty() || !unread.is_empty() {
        out.write_all(text(&outcomes, &unread).as_bytes())?;
    }
    let differs = outcomes.iter().any(|outcome| Verdict::fails(outcome.verdict));
    Ok(if failed || !unread.is_empty() { FAILED } else { u8::from(differs) })
}

/// The chart of the reference cases built in.
pub(super) fn chart() -> Result<String, String> {
    let (cases, _) = read_all(CASES.iter().copied());
    let (outcomes, _) = work_all(&cases);
    report::ours_over_printed(&outcomes).map_err(|error| error.to_string())
}

/// Works one rule by name on inputs from the command line.
pub(super) fn rule(name: &str, inputs: &[String], si: bool, out: &mut impl Write) -> io::Result<u8> {
    let listed = match named(name) {
        Ok(listed) => listed,
        Err(nearest) => {
            let near = nearest.map_or_else(String::new, |near| format!(", perhaps {near}"));
            trouble(&format!("there is no rule \"{name}\"{near}; fencegust rules lists them"));
            return Ok(FAILED);
        }
    };
    let mut given = Vec::new();
    for input in inputs {
        match input.split_once('=') {
            Some((key, value)) => given.push((key.trim(), value.trim())),
            None => {
                trouble(&format!("\"{input}\" is no input: write NAME=VALUE, such as height=\"10 ft\""));
                return Ok(FAILED);
            }
        }
    }
    let mut entries = Vec::new();
    match listed.work(&mut Arguments::new(given), &mut entries) {
        Ok(_) => {
            let system = if si { System::Si } else { System::Us };
            report::workings(listed.card.name, &entries, system, out)?;
            Ok(0)
        }
        Err(mistakes) => {
            for mistake in mistakes {
                trouble(&format!("{name}: {mistake}"));
            }
            Ok(FAILED)
        }
    }
}

/// Lists every rule with its inputs and its source.
pub(super) fn rules(out: &mut impl Write) -> io::Result<u8> {
    for listed in all() {
        let card = listed.card;
        writeln!(out, "{}", card.name)?;
        writeln!(out, "    {} [{}]", card.about.trim(), card.clause)?;
        for field in card.given {
            let dimension = field.measure.dimension().in_words();
            writeln!(out, "    {} ({}): {}, {dimension}", field.key, field.symbol, field.about.trim())?;
        }
        writeln!(out, "    gives {} ({}), {}", card.key, card.symbol, card.measure.dimension().in_words())?;
    }
    Ok(0)
}
