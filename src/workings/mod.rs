//! The ledger of named steps: a formula is written once, as the expression that works it, and its text, its
//! symbols, its clause and its place in the list of rules all come from there.

mod arguments;
mod formula;
mod ledger;
mod rule;

pub(crate) use arguments::nearest;
pub use arguments::{Arguments, Mistake};
pub use formula::{Formula, FormulaError, symbol_mathml};
pub use ledger::{Blank, Card, Entry, Field, Ledger, Listed, OutOfRange, Rule, Work, within, within_as};
