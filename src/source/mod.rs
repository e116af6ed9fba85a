//! Where a number comes from: documents, clauses, stated judgements, and the reader of catalogue files.

mod catalogue;

pub use catalogue::{Catalogue, CatalogueError, Row};

use std::fmt;

/// How well a place in a document is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Seen {
    /// The page itself was read.
    FirstHand,
    /// Read in a retelling, named here.
    SecondHand(&'static str),
    /// From memory; not seen in a source.
    Memory,
}

/// A standard, handbook, paper or dataset, in one edition.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Document {
    /// As it is cited.
    pub short: &'static str,
    /// The title and publisher.
    pub title: &'static str,
    /// How well it is known where a clause says nothing else.
    pub seen: Seen,
}

impl Document {
    /// A place in this document.
    #[must_use]
    pub const fn at(&'static self, place: &'static str) -> Clause {
        Clause { document: self, place, seen: self.seen }
    }
}

/// A place in a document.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Clause {
    /// The document.
    pub document: &'static Document,
    /// The clause, equation, figure or table.
    pub place: &'static str,
    /// How well this place is known.
    pub seen: Seen,
}

impl Clause {
    /// The same place, known from a retelling.
    #[must_use]
    pub const fn through(self, retelling: &'static str) -> Self {
        Self { seen: Seen::SecondHand(retelling), ..self }
    }
    /// The same place, from memory.
    #[must_use]
    pub const fn from_memory(self) -> Self {
        Self { seen: Seen::Memory, ..self }
    }
    /// The words to print when the place was not seen in a source.
    #[must_use]
    pub const fn caveat(self) -> &'static str {
        match self.seen {
            Seen::Memory => " (from memory)",
            Seen::FirstHand | Seen::SecondHand(_) => "",
        }
    }
}

impl fmt::Display for Clause {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.document.short)?;
        if !self.place.is_empty() {
            write!(f, " {}", self.place)?;
        }
        f.write_str(self.caveat())
    }
}

/// A value that is a judgement, with its reason; it is printed as one and never as a clause.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stated<T> {
    /// The value.
    pub value: T,
    /// Why this value.
    pub because: &'static str,
}

/// Geometry, statics and the definitions of units: what needs no document.
pub static STATICS: Document = Document {
    short: "statics",
    title: "Statics and geometry; derived, checked in the tests against a second derivation",
    seen: Seen::FirstHand,
};

/// What a survey gives as it is; whoever gave it stands for it.
pub static SURVEY: Document = Document {
    short: "the survey",
    title: "A value that the survey gives as it is; whoever gave it stands for it",
    seen: Seen::FirstHand,
};

/// Judgements of this project, printed as such.
pub static OURS: Document =
    Document { short: "ours", title: "A judgement of this project; no document", seen: Seen::FirstHand };

/// What the trade does without a document that says so.
pub static PRACTICE: Document = Document {
    short: "common practice, no source",
    title: "Facts of the trade for which no source was found",
    seen: Seen::FirstHand,
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_is_known_as_its_document_is_but_where_it_says_otherwise() {
        let plain = PRACTICE.at("table 1");
        assert_eq!(plain.seen, Seen::FirstHand);
        assert_eq!(plain.through("a reprint").seen, Seen::SecondHand("a reprint"));
        assert_eq!(plain.from_memory().seen, Seen::Memory);
        for other in [plain.through("a reprint"), plain.from_memory()] {
            assert_eq!((other.document, other.place), (plain.document, plain.place));
        }
    }

    #[test]
    fn a_clause_is_cited_with_its_place_if_it_has_one_and_says_so_where_it_is_from_memory() {
        assert_eq!(STATICS.at("lever rule").to_string(), "statics lever rule");
        assert_eq!(STATICS.at("").to_string(), "statics");
        assert_eq!(STATICS.at("lever rule").through("a reprint").to_string(), "statics lever rule");
        assert_eq!(STATICS.at("lever rule").from_memory().to_string(), "statics lever rule (from memory)");
    }
}
