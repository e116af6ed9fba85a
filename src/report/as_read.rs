//! The survey with everything filled in, and beside each value where it came from.

use crate::survey::Survey;
use std::io::{self, Write};

/// Writes every value of a survey and its origin.
///
/// # Errors
/// If the writer fails.
pub fn as_read(survey: &Survey, out: &mut impl Write) -> io::Result<()> {
    let width = |of: fn(&crate::survey::AsRead) -> usize| survey.as_read.iter().map(of).max().unwrap_or(0);
    let (keys, texts) =
        (width(|read| read.key.chars().count()), width(|read| read.text.chars().count()).min(48));
    for (at, read) in survey.as_read.iter().enumerate() {
        // One value may be read for both ends of a run.
        if survey.as_read[..at].contains(read) {
            continue;
        }
        writeln!(out, "{:keys$}  {:texts$}  {}", read.key, read.text, read.origin)?;
    }
    Ok(())
}
