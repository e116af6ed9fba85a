//! Workings as text: symbol, formula, numbers, unit and clause of every step.

use super::told;
use crate::source::Seen;
use crate::units::{System, Value};
use crate::workings::{Card, Entry, Formula};
use std::io::{self, Write};

/// Writes the steps of one calculation, then the sources they rest on.
///
/// # Errors
/// If the writer fails.
pub fn workings(title: &str, entries: &[Entry], system: System, out: &mut impl Write) -> io::Result<()> {
    writeln!(out, "WORKINGS: {title}")?;
    for entry in entries {
        match entry {
            Entry::Heading(text) => writeln!(out, "\n{text}\n")?,
            Entry::Worked { card, given, result } => worked(card, given, *result, system, out)?,
            Entry::Judged { symbol, value, because } => {
                writeln!(out, "  {symbol} = {}", value.written(system))?;
                writeln!(out, "      taken: {because}")?;
            }
            Entry::Added { symbol, about, terms, result } => {
                writeln!(out, "  {symbol} = {}", result.written(system))?;
                writeln!(out, "      sum of {terms}: {about}")?;
            }
            Entry::Solved { symbol, method, rounds, residual } => {
                writeln!(out, "  {symbol} solved: {method}")?;
                writeln!(out, "      {}", told::rounds(*rounds, *residual))?;
            }
        }
    }
    writeln!(out, "\nSources\n")?;
    let mut told: Vec<&str> = Vec::new();
    for entry in entries {
        let Entry::Worked { card, .. } = entry else { continue };
        let document = card.clause.document;
        if told.contains(&document.short) {
            continue;
        }
        told.push(document.short);
        writeln!(out, "  {}: {}", document.short, document.title)?;
        match document.seen {
            Seen::FirstHand => {}
            Seen::SecondHand(through) => {
                writeln!(out, "      the page was not read; known through {through}")?
            }
            Seen::Memory => writeln!(out, "      from memory; not seen")?,
        }
    }
    Ok(())
}

fn worked(
    card: &Card,
    given: &[Value],
    result: Value,
    system: System,
    out: &mut impl Write,
) -> io::Result<()> {
    let place = |key: &str| card.given.iter().position(|field| field.key == key);
    match card.source.map(Formula::read) {
        Some(Ok(formula)) => {
            let symbols = formula.text(&|key| match place(key) {
                Some(at) => card.given[at].symbol.to_owned(),
                None if key == "PI" => "π".to_owned(),
                None => key.to_owned(),
            });
            let numbers = formula.text(&|key| match place(key) {
                Some(at) => given[at].written(system),
                None => "π".to_owned(),
            });
            writeln!(out, "  {} = {symbols}", card.symbol)?;
            writeln!(out, "      = {numbers}")?;
            writeln!(out, "      = {}", result.written(system))?;
        }
        _ => {
            let inputs: Vec<String> = card
                .given
                .iter()
                .zip(given)
                .map(|(field, value)| format!("{} = {}", field.symbol, value.written(system)))
                .collect();
            writeln!(out, "  {} for {}", card.symbol, inputs.join(", "))?;
            writeln!(out, "      = {}", result.written(system))?;
        }
    }
    writeln!(out, "      {}  [{}]", card.about.trim(), card.clause)
}
