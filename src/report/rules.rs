//! The rules as text: the list by family, the card of one, and one worked.

use super::text::wrapped_to;
use super::workings::workings;
use crate::rules::examples::{examples_of, families, family, without_example};
use crate::rules::verify::Outcome;
use crate::source::{Clause, Seen};
use crate::units::{Dimension, System, Unit, Value};
use crate::workings::{Card, Entry, Formula};
use std::io::{self, Write};

/// How wide the text may be.
const WIDTH: usize = 100;

fn wrapped(out: &mut impl Write, head: &str, text: &str) -> io::Result<()> {
    wrapped_to(WIDTH, out, head, text)
}

/// How well a place is known, in words.
fn known(clause: Clause) -> String {
    match clause.seen {
        Seen::FirstHand => "at first hand".to_owned(),
        Seen::SecondHand(through) => format!("the page was not read; through {through}"),
        Seen::Memory => "from memory; the page was not seen".to_owned(),
    }
}

fn plural(count: usize, one: &str) -> String {
    if count == 1 { format!("1 {one}") } else { format!("{count} {one}s") }
}

/// What holds a rule, in a few words.
fn held(card: &Card, outcomes: &[Outcome<'_>]) -> String {
    match (examples_of(card, outcomes).len(), without_example(card.name)) {
        (0, Some(why)) => format!("no published example: {why}"),
        (0, None) => "no published example".to_owned(),
        (count, _) => plural(count, "published example"),
    }
}

/// Writes a list of rules by family, each with its place and what holds it.
///
/// # Errors
/// If the writer fails.
pub fn rules_list(cards: &[&Card], outcomes: &[Outcome<'_>], out: &mut impl Write) -> io::Result<()> {
    for name in families() {
        let own: Vec<&&Card> = cards.iter().filter(|card| family(card.name) == name).collect();
        if own.is_empty() {
            continue;
        }
        let checked = own.iter().filter(|card| !examples_of(card, outcomes).is_empty()).count();
        writeln!(out, "{name}: {}, {checked} held against published examples", plural(own.len(), "rule"))?;
        for card in own {
            writeln!(out, "  {}", card.name)?;
            wrapped(out, "      ", card.about.trim())?;
            wrapped(out, "      ", &format!("[{}] {}", card.clause, held(card, outcomes)))?;
        }
        writeln!(out)?;
    }
    writeln!(out, "One of them with its inputs, formula and examples: fencegust rules NAME")
}

/// The units in which a value of this kind may be given.
fn in_units(dimension: Dimension) -> String {
    let units = Unit::accepted(dimension);
    let words = dimension.in_words();
    match dimension {
        Dimension::Ratio => format!("{words}, or in {units}"),
        _ => format!("{words} in {units}"),
    }
}

/// Writes the card of a rule: its place, how well that is known, formula, inputs, and the examples it is held against.
///
/// # Errors
/// If the writer fails.
pub fn rule_card(card: &Card, outcomes: &[Outcome<'_>], out: &mut impl Write) -> io::Result<()> {
    writeln!(out, "{}", card.name)?;
    wrapped(out, "  ", card.about.trim())?;
    writeln!(out)?;
    wrapped(out, "  place     ", &card.clause.to_string())?;
    wrapped(out, "  document  ", card.clause.document.title)?;
    wrapped(out, "  known     ", &known(card.clause))?;
    match card.source.map(Formula::read) {
        Some(Ok(formula)) => {
            let symbol = |key: &str| {
                let field = card.given.iter().find(|field| field.key == key);
                field.map_or_else(
                    || if key == "PI" { "π" } else { key }.to_owned(),
                    |field| field.symbol.to_owned(),
                )
            };
            wrapped(out, "  formula   ", &format!("{} = {}", card.symbol, formula.text(&symbol)))?;
        }
        _ => wrapped(
            out,
            "  formula   ",
            "none alone: a table, a choice or several steps; fencegust rule prints those it takes",
        )?,
    }
    writeln!(out, "\n  inputs")?;
    for field in card.given {
        wrapped(
            out,
            "    ",
            &format!(
                "{} ({}): {}; {}",
                field.key,
                field.symbol,
                field.about.trim(),
                in_units(field.measure.dimension())
            ),
        )?;
    }
    writeln!(out, "  gives")?;
    let result = card.measure.dimension().in_words();
    wrapped(out, "    ", &format!("{} ({}), {result}", card.key, card.symbol))?;
    let examples = examples_of(card, outcomes);
    writeln!(out, "\n  held against")?;
    for outcome in &examples {
        let source = &outcome.case.source;
        wrapped(
            out,
            "    ",
            &format!(
                "{}: {} ({}). {}, {}; {}, {}",
                outcome.case.file,
                outcome.verdict.words(),
                plural(outcome.readings.len(), "value"),
                source.work,
                source.place,
                source.kind.key(),
                source.seen.in_words()
            ),
        )?;
    }
    if examples.is_empty() {
        let why = without_example(card.name).map_or_else(String::new, |why| format!(": {why}"));
        wrapped(out, "    ", &format!("no published example{why}"))?;
    }
    writeln!(out, "\n  to work it")?;
    let own = examples.iter().find(|outcome| outcome.case.rule.card.name == card.name);
    let given =
        own.and_then(|outcome| outcome.expectation.trials.first()).map(|trial| trial.given.as_slice());
    writeln!(out, "    {}", asked(card, given))
}

/// The command that works a rule, on the inputs of an example or with places for them.
fn asked(card: &Card, given: Option<&[(String, String)]>) -> String {
    let mut text = format!("fencegust rule {}", card.name);
    for field in card.given {
        let value = given.and_then(|given| given.iter().find(|(key, _)| key == field.key));
        let value = value.map_or("…", |(_, value)| value.as_str());
        // Quotes of the shell; an inch sign inside is kept by the other kind.
        let quote = if value.contains('"') { '\'' } else { '"' };
        let plain = value.chars().all(|sign| sign.is_alphanumeric() || matches!(sign, '.' | '-' | '…'));
        text.push_str(&if plain {
            format!(" {}={value}", field.key)
        } else {
            format!(" {}={quote}{value}{quote}", field.key)
        });
    }
    text
}

/// Writes a rule that was worked: its result in both systems of units, then every step.
///
/// # Errors
/// If the writer fails.
pub fn rule_worked(
    card: &Card,
    result: Value,
    entries: &[Entry],
    system: System,
    out: &mut impl Write,
) -> io::Result<()> {
    let other = if system == System::Us { System::Si } else { System::Us };
    let (first, second) = (result.written(system), result.written(other));
    let beside = if first == second { String::new() } else { format!(" ({second})") };
    writeln!(out, "{} ({}) = {first}{beside}\n", card.key, card.symbol)?;
    workings(card.name, entries, system, out)
}
