//! What can be wrong with a case file, and what to write instead.

use super::case::{FORMAT, Kind, SEEN};
use super::printed::PrintedError;
use crate::units::ReadError;
use crate::workings::Mistake;
use std::fmt;

/// What is wrong with a case file: every mistake with its line.
#[derive(Debug, Clone, PartialEq)]
pub struct CaseError {
    /// The file.
    pub file: String,
    /// The mistakes in the order of the file.
    pub mistakes: Vec<CaseMistake>,
}

/// One mistake and the line it stands in.
#[derive(Debug, Clone, PartialEq)]
pub struct CaseMistake {
    /// The line, from 1.
    pub line: usize,
    /// What is wrong.
    pub what: Wrong,
}

/// What can be wrong with a case file.
#[derive(Debug, Clone, PartialEq)]
pub enum Wrong {
    /// It is no file of this shape, in the words of the reader of its format.
    Shape(String),
    /// A key that no case file has at this place.
    UnknownKey {
        /// As written.
        found: String,
        /// The table it stands in.
        table: String,
        /// The keys of that table.
        known: &'static [&'static str],
        /// The nearest of them.
        nearest: Option<&'static str>,
        /// Where a key of this name belongs, if anywhere.
        belongs: Option<&'static str>,
    },
    /// Another format number, or none.
    Format(Option<i64>),
    /// A key that must be there is not, or holds nothing.
    Missing {
        /// The key.
        key: &'static str,
        /// What it is for.
        what: &'static str,
    },
    /// An unknown kind of work.
    UnknownKind {
        /// As written.
        found: String,
        /// The nearest there is.
        nearest: Option<&'static str>,
    },
    /// An unknown way of having seen the page.
    UnknownSeen {
        /// As written.
        found: String,
    },
    /// A place of a retelling beside a page that was read itself or not at all.
    ViaNotSecondHand,
    /// No rule has this name.
    UnknownRule {
        /// As written.
        found: String,
        /// The nearest there is.
        nearest: Option<&'static str>,
    },
    /// Neither the result nor a rule has this name.
    UnknownValue {
        /// As written.
        found: String,
        /// The name of the result.
        result: &'static str,
        /// The nearest rule there is.
        nearest: Option<&'static str>,
    },
    /// A rule that was not worked on the way.
    NotWorked {
        /// The rule.
        rule: &'static str,
        /// The rule the case checks.
        checks: &'static str,
    },
    /// An input.
    Input(Mistake),
    /// The printed value.
    Printed(PrintedError),
    /// A pinned value or an allowance.
    Unreadable {
        /// Its key.
        key: &'static str,
        /// Why.
        error: ReadError,
    },
    /// An allowance that does not reach beyond half a unit in the last digit.
    AllowsNothing,
    /// An allowance without its reason.
    NoBecause,
    /// A reason without an allowance.
    NoAllow,
    /// Nothing is expected.
    NothingExpected,
    /// Values and a table in one file.
    BothExpected,
    /// A table without its values.
    NoPrintedColumn,
    /// A column twice.
    ColumnTwice {
        /// Its name.
        column: String,
    },
    /// A row that is longer or shorter than the columns.
    RowLength {
        /// How many cells it has.
        found: usize,
        /// How many columns there are.
        wanted: usize,
    },
    /// A table without rows.
    NoRows,
    /// A number where the text of the page belongs.
    PrintedNumber {
        /// The number.
        number: String,
    },
}

impl fmt::Display for Wrong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let or_nearest = |f: &mut fmt::Formatter<'_>, nearest: &Option<&str>| match nearest {
            Some(nearest) => write!(f, "; the nearest is \"{nearest}\""),
            None => Ok(()),
        };
        match self {
            Self::Shape(message) => f.write_str(message),
            Self::UnknownKey { found, table, belongs: Some(place), .. } => {
                write!(f, "{found} stands in {table} but belongs {place}")
            }
            Self::UnknownKey { found, table, known, nearest, .. } => {
                write!(f, "{table} has no key {found}: known are {}", known.join(", "))?;
                or_nearest(f, nearest)
            }
            Self::Format(Some(found)) => {
                write!(f, "case = {found} is a format this program does not know: write case = {FORMAT}")
            }
            Self::Format(None) => write!(f, "the number of the format is missing: write case = {FORMAT}"),
            Self::Missing { key, what } => write!(f, "{key} is missing: write {what}"),
            Self::UnknownKind { found, nearest } => {
                let kinds = Kind::ALL.map(Kind::key).join(", ");
                write!(f, "there is no kind of work \"{found}\": write one of {kinds}")?;
                or_nearest(f, nearest)
            }
            Self::UnknownSeen { found } => {
                write!(f, "a page is not seen \"{found}\": write one of {}", SEEN.join(", "))
            }
            Self::ViaNotSecondHand => f.write_str(
                "via says where a retelling stands: leave it out, or write seen = \"second-hand\"",
            ),
            Self::UnknownRule { found, nearest } => {
                write!(f, "there is no rule \"{found}\"")?;
                match nearest {
                    Some(_) => or_nearest(f, nearest),
                    None => f.write_str("; fencegust rules lists them"),
                }
            }
            Self::UnknownValue { found, result, nearest } => {
                write!(
                    f,
                    "there is no value \"{found}\": the result is \"{result}\", a value on the way goes by the \
                     name of its rule"
                )?;
                or_nearest(f, nearest)
            }
            Self::NotWorked { rule, checks } => write!(
                f,
                "\"{checks}\" does not work \"{rule}\" on its way, so it has no value to hold against the page"
            ),
            Self::Input(mistake) => mistake.fmt(f),
            Self::Printed(error) => error.fmt(f),
            Self::Unreadable { key, error } => write!(f, "{key}: {error}"),
            Self::AllowsNothing => {
                f.write_str("allow is above nought and beyond half a unit in the last digit, or left out")
            }
            Self::NoBecause => {
                f.write_str("allow without a reason: write because = \"why the page may lie further off\"")
            }
            Self::NoAllow => f.write_str("because without allow: write allow, or leave because out"),
            Self::NothingExpected => {
                f.write_str("nothing is expected: write [expect.NAME] with printed, or [table]")
            }
            Self::BothExpected => f.write_str("[expect] beside [table]: write two files"),
            Self::NoPrintedColumn => {
                f.write_str("no column \"printed\": it holds the values as they stand on the page")
            }
            Self::ColumnTwice { column } => write!(f, "column \"{column}\" stands twice"),
            Self::RowLength { found, wanted } => {
                let cells = if *found == 1 { "cell" } else { "cells" };
                write!(f, "a row of {found} {cells} in a table of {wanted} columns: write one cell for each")
            }
            Self::NoRows => f.write_str("the table has no rows"),
            Self::PrintedNumber { number } => write!(
                f,
                "printed is the number {number}: write it in quotes, with every nought that the page has"
            ),
        }
    }
}

impl fmt::Display for CaseError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, CaseMistake { line, what }) in self.mistakes.iter().enumerate() {
            let end = if at == 0 { "" } else { "\n" };
            write!(f, "{end}{}, line {line}: {what}", self.file)?;
        }
        Ok(())
    }
}

impl std::error::Error for CaseError {}
