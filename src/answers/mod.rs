//! The questions people bring.

mod check;

pub(crate) use check::flag_over_both;
pub use check::{Check, CheckError, Group, MeasureNext, RunAnswer, check, workings};
