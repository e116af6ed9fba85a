//! Why a footing cannot be worked.

use super::{Basis, Method, Missing, SoilClass};
use crate::workings::OutOfRange;
use std::fmt;

/// Why a footing cannot be worked.
#[derive(Debug, Clone, PartialEq)]
pub enum FootingError {
    /// A value is outside the range of the source.
    OutOfRange(OutOfRange),
    /// A class of soil for which the table gives no value.
    NoPresumptiveValue {
        /// The class.
        class: SoilClass,
    },
    /// A value of the soil is not known.
    SoilUnknown {
        /// What was to be worked.
        asked: &'static str,
        /// What it needs.
        missing: Missing,
    },
    /// Strengths of clay and of sand are given at once.
    TwoSoils {
        /// What was to be worked.
        asked: &'static str,
    },
    /// The load that is given cannot be brought to the level the method wants.
    NoLevel {
        /// The method.
        method: Method,
        /// How the load is given.
        basis: Basis,
    },
}

impl From<OutOfRange> for FootingError {
    fn from(error: OutOfRange) -> Self {
        Self::OutOfRange(error)
    }
}

impl fmt::Display for FootingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange(error) => error.fmt(f),
            Self::NoPresumptiveValue { class } => write!(
                f,
                "IBC Table 1806.2 gives no lateral bearing for {}: ask a geotechnical engineer for the allowable lateral \
                 bearing of this ground for each foot of depth",
                class.words()
            ),
            Self::SoilUnknown { asked, missing } => {
                write!(f, "{asked} needs {}, which is not known: {}", missing.words(), missing.ask())
            }
            Self::TwoSoils { asked } => write!(
                f,
                "{asked} takes clay or sand, and both an undrained strength and an angle of friction are given: give the \
                 one that the ground about the post has"
            ),
            Self::NoLevel { method, basis } => write!(
                f,
                "{} wants {}, which cannot be had from {}: give the load at that level",
                method.name(),
                method.level().words(),
                basis.words()
            ),
        }
    }
}

impl std::error::Error for FootingError {}
