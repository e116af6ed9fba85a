//! What is wrong with a survey, and where.

use annotate_snippets::{AnnotationKind, Level, Renderer, Snippet};
use std::fmt;
use std::ops::Range;

/// One mistake in a survey.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mistake {
    /// Where it stands in the text, in bytes; nothing for the file as a whole.
    pub at: Option<Range<usize>>,
    /// What is wrong, and what to do.
    pub what: String,
    /// What to write, if that can be shown.
    pub write: Option<String>,
    /// The key that a slip of the pen stood for, a table's in brackets; that key is then not told as missing.
    pub meant: Option<String>,
}

impl Mistake {
    /// The key that this mistake tells as missing.
    pub(super) fn lacks(&self) -> Option<&str> {
        let rest = self.write.as_deref()?.strip_prefix("add ")?;
        let word = rest.trim_start_matches('[').split([' ', '.', ']']).next()?;
        Some(word)
    }
}

/// Every mistake in a survey, told at once.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mistakes {
    /// The file, as it was named.
    pub file: String,
    /// Its text.
    pub text: String,
    /// The mistakes, in the order of the text.
    pub mistakes: Vec<Mistake>,
}

impl Mistakes {
    /// The line of a place in the text, counted from 1.
    #[must_use]
    pub fn line(&self, mistake: &Mistake) -> Option<usize> {
        let at = mistake.at.as_ref()?.start.min(self.text.len());
        Some(self.text.as_bytes()[..at].iter().filter(|byte| **byte == b'\n').count() + 1)
    }

    fn told(&self, mistake: &Mistake) -> String {
        let Some(line) = self.line(mistake) else {
            return format!("{}: {}", self.file, mistake.what);
        };
        let head = format!("{}, line {line}: {}", self.file, mistake.what);
        let span = self.one_line(mistake);
        // The renderer numbers lines itself; only the line in question is handed to it, so that a long file
        // costs nothing and a stray carriage return shows nothing.
        let (from, to) = self.line_around(span.start);
        let shown = &self.text[from..to];
        let label = mistake.write.clone().unwrap_or_default();
        let annotation = AnnotationKind::Primary.span(span.start - from..span.end - from).label(label);
        let report = [Level::ERROR
            .no_name()
            .primary_title(&head)
            .element(Snippet::source(shown).line_start(line).annotation(annotation))];
        Renderer::plain().render(&report).to_string()
    }

    /// The span kept within its first line, and at least one character.
    fn one_line(&self, mistake: &Mistake) -> Range<usize> {
        let span = mistake.at.clone().unwrap_or(0..0);
        let start = span.start.min(self.text.len());
        let (from, to) = self.line_around(start);
        let end = span.end.clamp(start, to);
        if end > start {
            return start..end;
        }
        // At the end of a line: its last character.
        let last = self.text[from..to].char_indices().next_back().map_or(start, |(at, _)| from + at);
        last.min(start)..to.max(last)
    }

    fn line_around(&self, at: usize) -> (usize, usize) {
        let from = self.text[..at].rfind('\n').map_or(0, |end| end + 1);
        let to = self.text[at..].find('\n').map_or(self.text.len(), |end| at + end);
        let to = from + self.text[from..to].trim_end_matches('\r').len();
        (from, to.max(from))
    }
}

impl fmt::Display for Mistakes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let told: Vec<_> = self.mistakes.iter().map(|mistake| self.told(mistake)).collect();
        f.write_str(&told.join("\n\n"))
    }
}

impl std::error::Error for Mistakes {}
