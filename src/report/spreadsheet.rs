//! Tables for a spreadsheet: comma-separated values after RFC 4180, with no cell that a spreadsheet would work as a
//! formula.

use std::io::{self, Write};

/// What stands in a cell.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Cell {
    /// Nothing: not known, or not checked.
    Empty,
    /// Words, from the survey or of the program.
    Words(String),
    /// A figure, to twelve digits: far finer than anything it is made from, and free of what arithmetic adds.
    Figure(f64),
}

impl Cell {
    /// Words.
    pub(super) fn words(words: impl Into<String>) -> Self {
        Self::Words(words.into())
    }

    /// Words, if there are any.
    pub(super) fn any_words(words: Option<impl Into<String>>) -> Self {
        words.map_or(Self::Empty, |words| Self::Words(words.into()))
    }

    /// A figure, if there is one.
    pub(super) fn any_figure(figure: Option<f64>) -> Self {
        figure.map_or(Self::Empty, Self::Figure)
    }

    fn text(&self) -> String {
        match self {
            Self::Empty => String::new(),
            Self::Words(words) => harmless(words),
            // No figure, as JSON has none.
            Self::Figure(figure) if !figure.is_finite() => String::new(),
            Self::Figure(figure) => {
                let twelve = format!("{figure:.11e}");
                twelve.parse::<f64>().unwrap_or(*figure).to_string()
            }
        }
    }
}

/// Words that no spreadsheet works as a formula: an apostrophe stands before those that begin like one.
///
/// # Source
/// The signs at which spreadsheets begin a formula, their full-width forms, and the blanks they skip before one:
/// common practice, no source.
fn harmless(words: &str) -> String {
    let first =
        words.trim_start_matches(|sign: char| sign.is_whitespace() || sign.is_control()).chars().next();
    match first {
        Some('=' | '+' | '-' | '@' | '＝' | '＋' | '－' | '＠') => format!("'{words}"),
        _ => words.to_owned(),
    }
}

/// Writes a table: its head, then its rows.
///
/// # Errors
/// If the writer fails.
pub(super) fn table(
    head: &[String],
    rows: impl IntoIterator<Item = Vec<Cell>>,
    out: &mut impl Write,
) -> io::Result<()> {
    let mut csv = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(&mut *out);
    csv.write_record(head)?;
    for row in rows {
        csv.write_record(row.iter().map(Cell::text))?;
    }
    csv.flush()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_that_begin_like_a_formula_are_kept_from_being_one() {
        for words in ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", " =1", "\r\n=1", "＝1"] {
            assert_eq!(harmless(words), format!("'{words}"));
        }
        for words in ["", "north end", "1 = 2", "'=1", "−4"] {
            assert_eq!(harmless(words), words);
        }
    }

    #[test]
    fn a_table_is_written_as_the_rfc_says_and_a_figure_below_nought_stays_a_figure() {
        let mut out = Vec::new();
        let head = ["a".to_owned(), "b".to_owned()];
        let rows = vec![
            vec![Cell::words("said \"no\", twice"), Cell::Figure(-1.5)],
            vec![Cell::words("two\nlines"), Cell::Empty],
            vec![Cell::Figure(33.400_999_999_999_996), Cell::Figure(24_045.123_456_7)],
        ];
        table(&head, rows, &mut out).unwrap();
        let text = String::from_utf8(out).unwrap();
        assert_eq!(
            text,
            "a,b\r\n\"said \"\"no\"\", twice\",-1.5\r\n\"two\nlines\",\r\n33.401,24045.1234567\r\n"
        );
    }
}
