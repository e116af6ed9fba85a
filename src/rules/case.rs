//! The reference case: a published value, where it stands, and what a rule must be given to meet it.
//!
//! ```toml
//! case = 1
//! checks = "aisc360-16/f8-compact-limit"
//!
//! [source]
//! work = "…title, edition, publisher, year"
//! place = "section 6.2, example 1"
//! kind = "textbook"
//! seen = "second-hand"
//! via = "where the retelling stands"
//!
//! [given]
//! modulus = "29000 ksi"
//! yield_strength = "50 ksi"
//!
//! [expect.limit]
//! printed = "40.6"
//! ```
//!
//! The result goes by its own name, an intermediate value by the name of the rule that made it, as in
//! `[expect."section/tube-area"]`. A printed table stands in `[table]`, with the names of inputs and `printed` as
//! its columns, and `allow` or `digits` where single rows need them; `of` names the rule whose value the page
//! prints, if it is not the result.

use super::named;
use super::printed::Printed;
use super::wrong::{CaseError, CaseMistake, Wrong};
use crate::units::{Dimension, ReadError, read};
use crate::workings::{Card, Listed, Mistake, nearest};
use serde::Deserialize;
use serde::de::{Deserializer, Error, Visitor};
use std::collections::BTreeMap;
use std::fmt;
use std::ops::Range;
use toml::Spanned;
use toml::de::DeTable;

/// The number of the format that is read here.
pub const FORMAT: i64 = 1;

/// What sort of work a value was printed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// A standard or code, or a reprint of one.
    Standard,
    /// A textbook.
    Textbook,
    /// A guide for designers.
    Guide,
    /// A paper.
    Paper,
    /// A measurement.
    Measurement,
    /// A calculation that was handed in for a permit.
    PermitDocument,
    /// A fact of the trade.
    Practice,
    /// Derived from statics or geometry on another way.
    Analytic,
    /// The result of another program.
    OtherProgram,
}

impl Kind {
    /// Every kind there is.
    pub const ALL: [Self; 9] = [
        Self::Standard,
        Self::Textbook,
        Self::Guide,
        Self::Paper,
        Self::Measurement,
        Self::PermitDocument,
        Self::Practice,
        Self::Analytic,
        Self::OtherProgram,
    ];

    /// Its name in a case file.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Standard => "standard",
            Self::Textbook => "textbook",
            Self::Guide => "guide",
            Self::Paper => "paper",
            Self::Measurement => "measurement",
            Self::PermitDocument => "permit-document",
            Self::Practice => "practice",
            Self::Analytic => "analytic",
            Self::OtherProgram => "other-program",
        }
    }
}

/// How well a page is known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Seen {
    /// The page itself was read.
    FirstHand,
    /// Read in a retelling, and where that stands.
    SecondHand(String),
    /// From memory; not seen.
    Memory,
}

impl Seen {
    /// In words, with the place of a retelling.
    #[must_use]
    pub fn in_words(&self) -> String {
        match self {
            Self::FirstHand => "first-hand".to_owned(),
            Self::SecondHand(via) => format!("second-hand: {via}"),
            Self::Memory => "from memory, not seen".to_owned(),
        }
    }
}

/// The columns of a table that are no inputs.
pub(crate) const OWN_COLUMNS: [&str; 3] = ["printed", "allow", "digits"];

pub(super) const SEEN: [&str; 3] = ["first-hand", "second-hand", "memory"];

/// Where a value stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    /// Title, edition, publisher, year, as far as they are known.
    pub work: String,
    /// The place in it.
    pub place: String,
    /// What sort of work it is.
    pub kind: Kind,
    /// How well the page is known.
    pub seen: Seen,
}

/// One value of a page and what it is printed for.
#[derive(Debug, Clone, PartialEq)]
pub struct Trial {
    /// The inputs by name, as text.
    pub given: Vec<(String, String)>,
    /// The value.
    pub printed: Printed,
    /// How far ours may lie from it, in SI units.
    pub allowed: f64,
    /// Our own value in SI units, to notice change.
    pub pinned: Option<f64>,
    /// The line of the file it stands in.
    pub line: usize,
}

/// One value, or one printed table, that a case expects.
#[derive(Debug, Clone)]
pub struct Expectation {
    /// The rule whose value it is.
    pub of: &'static Card,
    /// One trial for a value, one a row for a table.
    pub trials: Vec<Trial>,
    /// Whether it is a table.
    pub is_table: bool,
    /// Why more than half a unit in the last digit is allowed, where it is.
    pub because: Option<String>,
}

/// A reference case.
#[derive(Debug, Clone)]
pub struct Case {
    /// The file it was read from.
    pub file: String,
    /// The rule it checks.
    pub rule: &'static Listed,
    /// Where its values stand.
    pub source: Source,
    /// Why the source is believed wrong, where it is: then every value must keep differing.
    pub disputed: Option<String>,
    /// What a reader should know beside.
    pub note: Option<String>,
    /// What is expected.
    pub expects: Vec<Expectation>,
}

/// A cell: text, or a plain number as it is written.
#[derive(Debug, Clone, PartialEq)]
struct Cell {
    text: String,
    is_number: bool,
}

impl<'de> Deserialize<'de> for Cell {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct CellVisitor;
        impl Visitor<'_> for CellVisitor {
            type Value = Cell;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("text or a plain number")
            }
            fn visit_str<E: Error>(self, text: &str) -> Result<Cell, E> {
                Ok(Cell { text: text.to_owned(), is_number: false })
            }
            fn visit_i64<E: Error>(self, number: i64) -> Result<Cell, E> {
                Ok(Cell { text: number.to_string(), is_number: true })
            }
            fn visit_f64<E: Error>(self, number: f64) -> Result<Cell, E> {
                Ok(Cell { text: number.to_string(), is_number: true })
            }
        }
        deserializer.deserialize_any(CellVisitor)
    }
}

#[derive(Deserialize)]
struct FormatOnly {
    case: Option<Spanned<i64>>,
}

/// The keys of the file, and of the tables in it; their structures below have the same.
const FILE_KEYS: &[&str] = &["case", "checks", "disputed", "note", "source", "given", "expect", "table"];
const SOURCE_KEYS: &[&str] = &["work", "place", "kind", "seen", "via"];
const EXPECT_KEYS: &[&str] = &["printed", "digits", "pinned", "allow", "because"];
const TABLE_KEYS: &[&str] = &["of", "columns", "rows", "allow", "because"];

/// Where a key belongs that stands in another table.
fn belongs(key: &str) -> Option<&'static str> {
    match key {
        "checks" | "disputed" | "note" => Some("at the top of the file, above the first [table]"),
        "work" | "place" | "kind" | "seen" | "via" => Some("below [source]"),
        "printed" | "digits" | "pinned" => Some("below [expect.NAME]"),
        "columns" | "rows" | "of" => Some("below [table]"),
        _ => None,
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    #[serde(rename = "case")]
    _case: Option<i64>,
    checks: Option<Spanned<String>>,
    disputed: Option<Spanned<String>>,
    note: Option<String>,
    source: Option<Spanned<SourceTable>>,
    #[serde(default)]
    given: BTreeMap<Spanned<String>, Cell>,
    #[serde(default)]
    expect: BTreeMap<Spanned<String>, ExpectTable>,
    table: Option<Spanned<Table>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SourceTable {
    work: Option<String>,
    place: Option<String>,
    kind: Option<Spanned<String>>,
    seen: Option<Spanned<String>>,
    via: Option<Spanned<String>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct ExpectTable {
    printed: Option<Spanned<Cell>>,
    digits: Option<Spanned<u32>>,
    pinned: Option<Spanned<Cell>>,
    allow: Option<Spanned<Cell>>,
    because: Option<Spanned<String>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    of: Option<Spanned<String>>,
    columns: Vec<Spanned<String>>,
    rows: Vec<Spanned<Vec<Cell>>>,
    allow: Option<Spanned<Cell>>,
    because: Option<Spanned<String>>,
}

/// An input's place in the file.
struct GivenCell<'f> {
    key: &'f str,
    cell: &'f Cell,
    at: usize,
}

struct Reader<'t> {
    text: &'t str,
    mistakes: Vec<(usize, Wrong)>,
}

impl Case {
    /// Reads a case file; `file` is its name, for messages.
    ///
    /// # Errors
    /// Every mistake with its line and what to write.
    pub fn read(file: &str, text: &str) -> Result<Self, CaseError> {
        let mut reader = Reader { text, mistakes: Vec::new() };
        match reader.case(file) {
            Some(case) if reader.mistakes.is_empty() => Ok(case),
            _ => {
                reader.mistakes.sort_by_key(|(at, _)| *at);
                let mistakes = std::mem::take(&mut reader.mistakes)
                    .into_iter()
                    .map(|(at, what)| CaseMistake { line: reader.line(at), what })
                    .collect();
                Err(CaseError { file: file.to_owned(), mistakes })
            }
        }
    }
}

/// Text that says something.
fn filled(text: Option<String>) -> Option<String> {
    text.map(|text| text.trim().to_owned()).filter(|text| !text.is_empty())
}

impl Reader<'_> {
    fn line(&self, at: usize) -> usize {
        1 + self.text.bytes().take(at).filter(|byte| *byte == b'\n').count()
    }

    fn wrong(&mut self, at: usize, what: Wrong) {
        self.mistakes.push((at, what));
    }

    fn parse<T: for<'de> Deserialize<'de>>(&mut self) -> Option<T> {
        match toml::from_str(self.text) {
            Ok(value) => Some(value),
            Err(error) => {
                let at = error.span().map_or(0, |span: Range<usize>| span.start);
                let broken = DeTable::parse(self.text).is_err();
                let told = if broken { "this is no TOML: " } else { "" };
                self.wrong(at, Wrong::Shape(format!("{told}{}", error.message())));
                None
            }
        }
    }

    /// Tells the keys that no case file has where they stand.
    fn unknown_keys(&mut self) {
        let Ok(file) = DeTable::parse(self.text) else { return };
        let file = file.get_ref();
        self.unknown_keys_of(file, "a case file", FILE_KEYS);
        let table = |key: &str| file.get(key).and_then(|value| value.get_ref().as_table());
        if let Some(source) = table("source") {
            self.unknown_keys_of(source, "[source]", SOURCE_KEYS);
        }
        if let Some(printed) = table("table") {
            self.unknown_keys_of(printed, "[table]", TABLE_KEYS);
        }
        for (name, value) in table("expect").into_iter().flatten() {
            if let Some(expected) = value.get_ref().as_table() {
                self.unknown_keys_of(expected, &format!("[expect.{}]", name.get_ref()), EXPECT_KEYS);
            }
        }
    }

    fn unknown_keys_of(&mut self, table: &DeTable<'_>, name: &str, known: &'static [&'static str]) {
        for key in table.keys() {
            let found = key.get_ref().as_ref();
            if !known.contains(&found) {
                let what = Wrong::UnknownKey {
                    found: found.to_owned(),
                    table: name.to_owned(),
                    known,
                    nearest: nearest(found, known.iter().copied()),
                    belongs: belongs(found),
                };
                self.wrong(key.span().start, what);
            }
        }
    }

    fn case(&mut self, file: &str) -> Option<Case> {
        // A file of another format is told by its number alone, whatever else it holds.
        match self.parse::<FormatOnly>()?.case {
            Some(case) if *case.get_ref() == FORMAT => {}
            Some(case) => {
                self.wrong(case.span().start, Wrong::Format(Some(*case.get_ref())));
                return None;
            }
            None => {
                self.wrong(0, Wrong::Format(None));
                return None;
            }
        }
        self.unknown_keys();
        if !self.mistakes.is_empty() {
            return None;
        }
        let File { checks, disputed, note, source, given, expect, table, .. } = self.parse::<File>()?;
        let source = self.source(source);
        let disputed = match disputed {
            Some(why) if why.get_ref().trim().is_empty() => {
                let what = "why the source is believed wrong, or leave it out";
                self.wrong(why.span().start, Wrong::Missing { key: "disputed", what });
                None
            }
            other => other.map(Spanned::into_inner),
        };
        let rule = self.rule(checks)?;
        let mut given: Vec<_> = given
            .iter()
            .map(|(key, cell)| GivenCell { key: key.get_ref(), cell, at: key.span().start })
            .collect();
        given.sort_by_key(|cell| cell.at);
        let expects = match table {
            Some(table) => {
                if let Some((key, _)) = expect.first_key_value() {
                    self.wrong(key.span().start, Wrong::BothExpected);
                }
                self.table(rule, &given, table).into_iter().collect()
            }
            None if expect.is_empty() => {
                self.wrong(self.text.trim_end().len(), Wrong::NothingExpected);
                return None;
            }
            None => self.expects(rule, &given, expect),
        };
        Some(Case { file: file.to_owned(), rule, source: source?, disputed, note: filled(note), expects })
    }

    fn source(&mut self, source: Option<Spanned<SourceTable>>) -> Option<Source> {
        let Some(source) = source else {
            let what = "[source] with the work, the place in it, its kind and how it was seen";
            self.wrong(0, Wrong::Missing { key: "source", what });
            return None;
        };
        let at = source.span().start;
        let SourceTable { work, place, kind, seen, via } = source.into_inner();
        let mut must = |value: Option<String>, key, what| {
            if value.is_none() {
                self.wrong(at, Wrong::Missing { key, what });
            }
            value
        };
        let work = must(filled(work), "source.work", "the title, edition, publisher and year of the work");
        let place = must(filled(place), "source.place", "the section, table, example or page of the work");
        let key = |text: &Option<Spanned<String>>| text.as_ref().map(|text| text.get_ref().clone());
        must(key(&kind), "source.kind", "what sort of work it is, as in kind = \"textbook\"");
        must(key(&seen), "source.seen", "first-hand, second-hand with via, or memory");
        let kind = kind.and_then(|kind| {
            let found = kind.get_ref();
            let known = Kind::ALL.into_iter().find(|known| known.key() == found);
            if known.is_none() {
                let nearest = nearest(found, Kind::ALL.iter().map(|kind| kind.key()));
                self.wrong(kind.span().start, Wrong::UnknownKind { found: found.clone(), nearest });
            }
            known
        });
        let via_at = via.as_ref().map(|via| via.span().start);
        let via = filled(via.map(Spanned::into_inner));
        let seen = seen.and_then(|seen| {
            let known = match seen.get_ref().as_str() {
                "second-hand" => match via {
                    Some(via) => return Some(Seen::SecondHand(via)),
                    None => {
                        let what = "where the retelling stands that the page was read in";
                        self.wrong(seen.span().start, Wrong::Missing { key: "source.via", what });
                        return None;
                    }
                },
                "first-hand" => Seen::FirstHand,
                "memory" => Seen::Memory,
                other => {
                    self.wrong(seen.span().start, Wrong::UnknownSeen { found: other.to_owned() });
                    return None;
                }
            };
            if let Some(at) = via_at {
                self.wrong(at, Wrong::ViaNotSecondHand);
            }
            Some(known)
        });
        Some(Source { work: work?, place: place?, kind: kind?, seen: seen? })
    }

    fn rule(&mut self, checks: Option<Spanned<String>>) -> Option<&'static Listed> {
        let Some(checks) = checks else {
            self.wrong(0, Wrong::Missing { key: "checks", what: "the name of the rule that is checked" });
            return None;
        };
        self.named(&checks)
    }

    fn named(&mut self, name: &Spanned<String>) -> Option<&'static Listed> {
        named(name.get_ref())
            .map_err(|nearest| {
                let found = name.get_ref().clone();
                self.wrong(name.span().start, Wrong::UnknownRule { found, nearest });
            })
            .ok()
    }

    /// The names of the inputs: none missing, none unknown. Returns the names that slips of the pen were
    /// meant for, which are not told as missing too.
    fn keys(
        &mut self,
        rule: &Listed,
        keys: &[(&str, usize)],
        own: &'static [&'static str],
        table_at: usize,
    ) -> Vec<&'static str> {
        let names = || rule.card.given.iter().map(|field| field.key).chain(own.iter().copied());
        let mut meant = Vec::new();
        for (key, at) in keys {
            if !rule.card.given.iter().any(|field| field.key == *key) {
                let nearest = nearest(key, names());
                meant.extend(nearest);
                self.wrong(*at, Wrong::Input(Mistake::Unknown { key: (*key).to_owned(), nearest }));
            }
        }
        for field in rule.card.given {
            if !meant.contains(&field.key) && !keys.iter().any(|(key, _)| *key == field.key) {
                let missing = Mistake::Missing { key: field.key, measure: field.measure };
                self.wrong(table_at, Wrong::Input(missing));
            }
        }
        meant
    }

    /// Inputs that can be read as what the rule asks for.
    fn inputs(&mut self, rule: &Listed, cells: &[GivenCell<'_>]) -> Vec<(String, String)> {
        for GivenCell { key, cell, at } in cells {
            let field = rule.card.given.iter().find(|field| field.key == *key);
            if let Some(Err(error)) = field.map(|field| read(&cell.text, field.measure.dimension())) {
                self.wrong(*at, Wrong::Input(Mistake::Unreadable { key: (*key).to_owned(), error }));
            }
        }
        cells.iter().map(|given| (given.key.to_owned(), given.cell.text.clone())).collect()
    }

    fn printed(
        &mut self,
        at: usize,
        cell: &Cell,
        dimension: Dimension,
        digits: Option<u32>,
    ) -> Option<Printed> {
        if cell.is_number {
            self.wrong(at, Wrong::PrintedNumber { number: cell.text.clone() });
            return None;
        }
        Printed::read(&cell.text, dimension, digits)
            .map_err(|error| self.wrong(at, Wrong::Printed(error)))
            .ok()
    }

    /// How far ours may lie off: a share of the printed value where it is given in per cent, else a value
    /// of the same kind; never less than half a unit in the last digit.
    fn allowed(&mut self, at: usize, cell: Option<&Cell>, printed: &Printed) -> Option<f64> {
        let half = printed.half_a_unit();
        let Some(Cell { text, .. }) = cell else { return Some(half) };
        let share = text.trim().ends_with('%');
        let dimension = if share { Dimension::Ratio } else { printed.dimension() };
        match read(text, dimension) {
            Ok(allow) => Some(half.max(if share { allow * printed.si().abs() } else { allow })),
            Err(error) => {
                self.wrong(at, Wrong::Unreadable { key: "allow", error });
                None
            }
        }
    }

    fn reason(&mut self, allowed_at: Option<usize>, because: Option<Spanned<String>>) -> Option<String> {
        let because_at = because.as_ref().map(|because| because.span().start);
        let because = filled(because.map(Spanned::into_inner));
        match (allowed_at, &because) {
            (Some(at), None) => self.wrong(at, Wrong::NoBecause),
            (None, Some(_)) => self.wrong(because_at.unwrap_or(0), Wrong::NoAllow),
            _ => {}
        }
        because
    }

    fn expects(
        &mut self,
        rule: &'static Listed,
        given: &[GivenCell<'_>],
        expect: BTreeMap<Spanned<String>, ExpectTable>,
    ) -> Vec<Expectation> {
        let first = expect.keys().map(|key| key.span().start).min().unwrap_or(0);
        let keys: Vec<_> = given.iter().map(|given| (given.key, given.at)).collect();
        self.keys(rule, &keys, &[], first);
        let inputs = self.inputs(rule, given);
        let mut expect: Vec<_> = expect.into_iter().collect();
        expect.sort_by_key(|(key, _)| key.span().start);
        expect
            .into_iter()
            .filter_map(|(key, table)| {
                let at = key.span().start;
                let of = self.value(rule, &key)?;
                let ExpectTable { printed, digits, pinned, allow, because } = table;
                let because = self.reason(allow.as_ref().map(|allow| allow.span().start), because);
                let Some(printed) = printed else {
                    let what = "the value with its unit as it stands on the page, in quotes";
                    self.wrong(at, Wrong::Missing { key: "printed", what });
                    return None;
                };
                let digits = digits.map(Spanned::into_inner);
                let dimension = of.measure.dimension();
                let at = printed.span().start;
                let printed = self.printed(at, printed.get_ref(), dimension, digits)?;
                let allow_at = allow.as_ref().map_or(at, |allow| allow.span().start);
                let allowed = self.allowed(allow_at, allow.as_ref().map(Spanned::get_ref), &printed)?;
                if allow.is_some() && allowed <= printed.half_a_unit() {
                    self.wrong(allow_at, Wrong::AllowsNothing);
                }
                let pinned = pinned.and_then(|pinned| {
                    read(&pinned.get_ref().text, dimension)
                        .map_err(|error| {
                            let key = "pinned";
                            self.wrong(pinned.span().start, Wrong::Unreadable { key, error });
                        })
                        .ok()
                });
                let line = self.line(at);
                let trial = Trial { given: inputs.clone(), printed, allowed, pinned, line };
                Some(Expectation { of, trials: vec![trial], is_table: false, because })
            })
            .collect()
    }

    /// The rule whose value a name means.
    fn value(&mut self, rule: &'static Listed, name: &Spanned<String>) -> Option<&'static Card> {
        if name.get_ref() == rule.card.key {
            return Some(rule.card);
        }
        match named(name.get_ref()) {
            Ok(listed) => Some(listed.card),
            Err(nearest) => {
                let (found, result) = (name.get_ref().clone(), rule.card.key);
                self.wrong(name.span().start, Wrong::UnknownValue { found, result, nearest });
                None
            }
        }
    }

    fn table(
        &mut self,
        rule: &'static Listed,
        given: &[GivenCell<'_>],
        table: Spanned<Table>,
    ) -> Option<Expectation> {
        let at = table.span().start;
        let Table { of, columns, rows, allow, because } = table.into_inner();
        let of = match &of {
            Some(of) => self.value(rule, of),
            None => Some(rule.card),
        };
        let names: Vec<_> = columns.iter().map(|column| column.get_ref().as_str()).collect();
        let mut keys: Vec<_> = given.iter().map(|given| (given.key, given.at)).collect();
        for (place, column) in columns.iter().enumerate() {
            let (name, at) = (names[place], column.span().start);
            if names[..place].contains(&name) || keys.iter().any(|(key, _)| *key == name) {
                self.wrong(at, Wrong::ColumnTwice { column: name.to_owned() });
            } else if !OWN_COLUMNS.contains(&name) {
                keys.push((name, at));
            }
        }
        let before = self.mistakes.len();
        let meant = self.keys(rule, &keys, &OWN_COLUMNS, at);
        let known = self.mistakes.len() == before;
        let column = |own: &str| names.iter().position(|name| *name == own);
        let allow_at = allow.as_ref().map(|allow| allow.span().start);
        let allow_column_at = column("allow").map(|column| columns[column].span().start);
        let because = self.reason(allow_at.or(allow_column_at), because);
        if column("printed").is_none() && !meant.contains(&"printed") {
            self.wrong(columns.first().map_or(at, |first| first.span().start), Wrong::NoPrintedColumn);
        }
        if rows.is_empty() {
            self.wrong(at, Wrong::NoRows);
        }
        let (of, printed_column) = (of.filter(|_| known)?, column("printed")?);
        let fixed = self.inputs(rule, given);
        let allow = allow.as_ref().map(Spanned::get_ref);
        let mut trials = Vec::with_capacity(rows.len());
        for row in &rows {
            let (at, cells) = (row.span().start, row.get_ref());
            if cells.len() != names.len() {
                self.wrong(at, Wrong::RowLength { found: cells.len(), wanted: names.len() });
                continue;
            }
            let own = |name| column(name).map(|column| &cells[column]).filter(|cell| !cell.text.is_empty());
            let inputs: Vec<_> = names
                .iter()
                .zip(cells)
                .filter(|(name, _)| !OWN_COLUMNS.contains(*name))
                .map(|(key, cell)| GivenCell { key, cell, at })
                .collect();
            let mut given = fixed.clone();
            given.extend(self.inputs(rule, &inputs));
            let Some(digits) = self.digits(at, own("digits")) else { continue };
            let dimension = of.measure.dimension();
            let Some(printed) = self.printed(at, &cells[printed_column], dimension, digits) else { continue };
            let (cell, allowed_at) = match own("allow") {
                Some(cell) => (Some(cell), at),
                None => (allow, allow_at.unwrap_or(at)),
            };
            let Some(allowed) = self.allowed(allowed_at, cell, &printed) else { continue };
            if own("allow").is_some() && allowed <= printed.half_a_unit() {
                self.wrong(at, Wrong::AllowsNothing);
            }
            let line = self.line(at);
            trials.push(Trial { given, printed, allowed, pinned: None, line });
        }
        let reaches = trials.iter().any(|trial| trial.allowed > trial.printed.half_a_unit());
        match allow_at.or(allow_column_at) {
            Some(at) if !reaches && self.mistakes.is_empty() => self.wrong(at, Wrong::AllowsNothing),
            _ => {}
        }
        Some(Expectation { of, trials, is_table: true, because })
    }

    fn digits(&mut self, at: usize, cell: Option<&Cell>) -> Option<Option<u32>> {
        let Some(cell) = cell else { return Some(None) };
        match cell.text.parse() {
            Ok(digits) => Some(Some(digits)),
            Err(_) => {
                let error = ReadError::NotANumber { text: cell.text.clone() };
                self.wrong(at, Wrong::Unreadable { key: "digits", error });
                None
            }
        }
    }
}
