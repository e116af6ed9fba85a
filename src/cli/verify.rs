//! The commands of the rules: `verify`, `rule`, `rules`.

use super::{FAILED, shown, text_of, trouble};
use crate::report;
use crate::rules::embedded::CASES;
use crate::rules::examples::family;
use crate::rules::verify::{Verdict, read_all, text, work_all};
use crate::rules::{all, named};
use crate::units::System;
use crate::workings::{Arguments, Card, Mistake};
use std::collections::BTreeSet;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// Case files, each once, in the order in which they are named and then of their names.
#[derive(Default)]
struct CaseFiles {
    found: Vec<PathBuf>,
    /// Folders and files as they really are, so that a link in a circle ends and nothing is counted twice.
    seen: BTreeSet<PathBuf>,
    trouble: Vec<String>,
}

impl CaseFiles {
    /// Takes a file, or every case file below a folder.
    fn take(&mut self, path: &Path) {
        if path.canonicalize().is_ok_and(|real| !self.seen.insert(real)) {
            return;
        }
        if !path.is_dir() {
            // What is not there or cannot be read is told by whoever reads it.
            self.found.push(path.to_owned());
            return;
        }
        match inside(path) {
            Ok(inside) => inside.iter().for_each(|path| self.take(path)),
            Err(error) => self.trouble.push(format!("{}: {error}", path.display())),
        }
    }
}

/// The folders and case files in a folder, in the order of their names.
fn inside(folder: &Path) -> io::Result<Vec<PathBuf>> {
    let mut inside: Vec<PathBuf> =
        folder.read_dir()?.map(|entry| entry.map(|entry| entry.path())).collect::<io::Result<_>>()?;
    inside.retain(|path| path.is_dir() || path.extension().is_some_and(|end| end == "toml"));
    inside.sort();
    Ok(inside)
}

/// Works the reference cases, those built in or those named.
pub(super) fn verify(files: &[String], out: &mut impl Write) -> io::Result<u8> {
    let mut texts: Vec<(String, String)> = Vec::new();
    if files.is_empty() {
        texts.extend(CASES.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())));
    }
    let mut told: Vec<String> = Vec::new();
    let mut all = CaseFiles::default();
    for name in files {
        let before = (all.found.len(), all.trouble.len(), all.seen.len());
        if name == "-" {
            all.found.push(PathBuf::from("-"));
        } else {
            all.take(Path::new(name));
        }
        // A folder named twice holds nothing new the second time.
        let nothing =
            all.found.len() == before.0 && all.trouble.len() == before.1 && all.seen.len() > before.2;
        if nothing {
            told.push(format!("{name}: no case file (NAME.toml) stands below it"));
        }
    }
    told.append(&mut all.trouble);
    for path in &all.found {
        let name = path.display().to_string();
        match text_of(&name) {
            Ok(text) => texts.push((shown(&name).to_owned(), text)),
            Err(error) => told.push(error),
        }
    }
    let (cases, mut unread) = read_all(texts.iter().map(|(name, text)| (name.as_str(), text.as_str())));
    let (outcomes, not_worked) = work_all(&cases);
    unread.extend(not_worked);
    if !cases.is_empty() || !unread.is_empty() {
        out.write_all(text(&outcomes, &unread).as_bytes())?;
    }
    told.iter().for_each(|told| trouble(told));
    let differs = outcomes.iter().any(|outcome| Verdict::fails(outcome.verdict));
    Ok(if !told.is_empty() || !unread.is_empty() { FAILED } else { u8::from(differs) })
}

/// The chart of the reference cases built in.
pub(super) fn chart() -> Result<String, String> {
    let (cases, _) = read_all(CASES.iter().copied());
    let (outcomes, _) = work_all(&cases);
    report::ours_over_printed(&outcomes).map_err(|error| error.to_string())
}

/// Nothing is found.
const NOTHING: u8 = 1;

#[derive(clap::Args)]
pub(super) struct RuleArguments {
    /// Its name, as `fencegust rules` lists it.
    #[arg(value_name = "NAME")]
    name: String,
    /// Inputs, such as height="10 ft"; `fencegust rules NAME` tells which.
    #[arg(value_name = "KEY=VALUE")]
    inputs: Vec<String>,
    /// The steps in SI units.
    #[arg(long)]
    si: bool,
}

#[derive(clap::Args)]
pub(super) struct RulesArguments {
    /// One rule, for its card; or a family of rules, such as asce7-16.
    #[arg(value_name = "NAME", conflicts_with = "search")]
    name: Option<String>,
    /// Only rules that speak of this, in their names, sentences, inputs or places.
    #[arg(long, value_name = "WORD")]
    search: Option<String>,
}

fn no_rule(name: &str, nearest: Option<&str>) -> String {
    let near = nearest.map_or_else(String::new, |near| format!(", perhaps {near}"));
    format!("there is no rule \"{name}\"{near}; fencegust rules lists them")
}

/// Works one rule by name on inputs from the command line.
pub(super) fn rule(arguments: &RuleArguments, out: &mut impl Write) -> io::Result<u8> {
    let listed = match named(&arguments.name) {
        Ok(listed) => listed,
        Err(nearest) => {
            trouble(&no_rule(&arguments.name, nearest));
            return Ok(FAILED);
        }
    };
    let (name, fields) = (listed.card.name, listed.card.given);
    let mut given = Vec::new();
    for input in &arguments.inputs {
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
        Ok(result) => {
            let system = if arguments.si { System::Si } else { System::Us };
            report::rule_worked(listed.card, result, &entries, system, out)?;
            Ok(0)
        }
        Err(mistakes) => {
            let mut of_inputs = false;
            for mistake in mistakes {
                of_inputs |= !matches!(mistake, Mistake::OutOfRange(_) | Mistake::NoNumber(_));
                // Who writes the symbol of the page means the input that goes by it.
                let by_symbol = match &mistake {
                    Mistake::Unknown { key, .. } => fields.iter().find(|field| field.symbol == key),
                    _ => None,
                };
                match by_symbol {
                    Some(field) => {
                        trouble(&format!("{name}: {} goes by the name {}", field.symbol, field.key))
                    }
                    None => trouble(&format!("{name}: {mistake}")),
                }
            }
            if of_inputs {
                trouble(&format!("fencegust rules {name} tells what each input is"));
            }
            Ok(FAILED)
        }
    }
}

/// Whether a rule speaks of every word.
fn speaks_of(card: &Card, words: &str) -> bool {
    let mut said = format!("{} {} {} {} {}", card.name, card.about, card.clause, card.key, card.symbol);
    for field in card.given {
        said.push_str(&format!(" {} {} {}", field.key, field.symbol, field.about));
    }
    let said = said.to_lowercase();
    words.to_lowercase().split_whitespace().all(|word| said.contains(word))
}

/// The card of a rule, with the cases that speak of it.
fn card(card: &Card, out: &mut impl Write) -> io::Result<u8> {
    let (cases, _) = read_all(CASES.iter().copied().filter(|(_, text)| text.contains(card.name)));
    report::rule_card(card, &work_all(&cases).0, out).map(|()| 0)
}

/// Lists rules, or writes the card of one.
pub(super) fn rules(arguments: &RulesArguments, out: &mut impl Write) -> io::Result<u8> {
    let all: Vec<&Card> = all().map(|listed| listed.card).collect();
    let found: Vec<&Card> = match (&arguments.name, &arguments.search) {
        (Some(name), _) => {
            let of_family: Vec<&Card> =
                all.iter().copied().filter(|card| family(card.name) == name).collect();
            if of_family.is_empty() {
                match named(name) {
                    Ok(listed) => return card(listed.card, out),
                    Err(nearest) => {
                        trouble(&no_rule(name, nearest));
                        return Ok(FAILED);
                    }
                }
            }
            of_family
        }
        (None, Some(words)) => all.into_iter().filter(|card| speaks_of(card, words)).collect(),
        (None, None) => all,
    };
    match (found.as_slice(), &arguments.search) {
        ([], Some(words)) => {
            trouble(&format!("no rule speaks of \"{words}\"; fencegust rules lists them all"));
            Ok(NOTHING)
        }
        ([one], Some(_)) => card(one, out),
        (found, _) => {
            let (cases, _) = read_all(CASES.iter().copied());
            report::rules_list(found, &work_all(&cases).0, out).map(|()| 0)
        }
    }
}
