//! A demand held against a strength, or against none that is known.

use crate::rule;
use crate::source::STATICS;
use crate::units::{Force, Pure};
use crate::workings::{Ledger, Listed};

rule! {
    /// Pull over the strength of what carries it.
    Ratio, "fastening/ratio", STATICS.at("quotient");
    /// pull
    demand: Force = "F";
    /// strength
    capacity: Force = "R";
    ratio "F/R": f64 = (demand / capacity).pure()
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[Listed::of::<Ratio>()];

/// A part that holds cloth, or that the cloth pulls at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Part {
    /// A tie of plastic or elastic.
    Tie,
    /// A grommet in its hem.
    Grommet,
    /// The hem and its seam.
    Hem,
    /// Lacing rope.
    Rope,
    /// A wire tie.
    WireTie,
}

impl Part {
    /// Every part there is.
    pub const ALL: [Self; 5] = [Self::Tie, Self::Grommet, Self::Hem, Self::Rope, Self::WireTie];

    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Tie => "tie",
            Self::Grommet => "grommet",
            Self::Hem => "hem",
            Self::Rope => "rope",
            Self::WireTie => "wire tie",
        }
    }

    /// What to ask its maker for where the strength is not known.
    #[must_use]
    pub const fn ask(self) -> &'static str {
        match self {
            Self::Tie => {
                "the loop strength the tie is declared with, new, and what is left of it after the sun (type 1 or 2 \
                 of UL/IEC 62275)"
            }
            Self::Grommet => {
                "the pull at which one grommet tears out of this hem, square to the edge and 45° off the cloth, by \
                 test, with the number of tests and their scatter"
            }
            Self::Hem => {
                "the strength of the hem and its seam for each foot of edge, by test, new and after the sun"
            }
            Self::Rope => "the breaking load of the rope, new and wet, its fibre and its diameter",
            Self::WireTie => {
                "the pull at which the tie opens as it is hooked, by test; the wire's own strength says only that it \
                 is no more"
            }
        }
    }
}

/// What came of holding a pull against a strength.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Checked {
    /// The strength is known.
    Against {
        /// The part.
        part: Part,
        /// The pull on it.
        demand: Force,
        /// Its strength.
        capacity: Force,
        /// The one over the other.
        ratio: f64,
    },
    /// Only a strength is known that it cannot pass, so that the ratio is this or more.
    AtLeast {
        /// The part.
        part: Part,
        /// The pull on it.
        demand: Force,
        /// The strength it cannot pass.
        at_most: Force,
        /// The one over the other.
        ratio: f64,
    },
    /// No strength is known.
    NotChecked {
        /// The part.
        part: Part,
        /// The pull on it.
        demand: Force,
    },
}

impl Checked {
    /// Whether the pull is more than the part carries; nothing where that is not known.
    #[must_use]
    pub fn is_over(self) -> Option<bool> {
        match self {
            Self::Against { ratio, .. } => Some(ratio > 1.0),
            Self::AtLeast { ratio, .. } => (ratio > 1.0).then_some(true),
            Self::NotChecked { .. } => None,
        }
    }

    /// What to ask the maker for, where the part was not checked.
    #[must_use]
    pub fn ask(self) -> Option<&'static str> {
        match self {
            Self::Against { .. } => None,
            Self::AtLeast { part, .. } | Self::NotChecked { part, .. } => Some(part.ask()),
        }
    }
}

/// Holds a pull against the strength of a part; without a strength it is not checked.
///
/// # Errors
/// If the pull is below 0 or the strength not above it.
pub fn checked(
    part: Part,
    demand: Force,
    capacity: Option<Force>,
    ledger: &mut impl Ledger,
) -> Result<Checked, super::FasteningError> {
    let demand = super::not_below_nought("the pull", demand)?;
    let Some(capacity) = capacity else { return Ok(Checked::NotChecked { part, demand }) };
    let capacity = super::above_nought("the strength", capacity)?;
    let ratio = Ratio { demand, capacity }.work(ledger);
    Ok(Checked::Against { part, demand, capacity, ratio })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fastening::FasteningError;
    use crate::units::pounds;
    use crate::workings::Blank;

    #[test]
    fn a_part_of_unknown_strength_is_not_checked_and_says_what_to_ask() {
        for part in Part::ALL {
            let found = checked(part, pounds(124.0), None, &mut Blank).unwrap();
            assert_eq!(found, Checked::NotChecked { part, demand: pounds(124.0) });
            assert_eq!(found.is_over(), None);
            assert!(found.ask().unwrap().len() > 40, "{part:?}");
        }
        assert!(Part::Grommet.ask().contains("tears out of this hem"));
    }

    #[test]
    fn at_its_strength_a_part_holds_and_beyond_it_does_not() {
        let is_over = |pull: f64| {
            checked(Part::Tie, pounds(pull), Some(pounds(50.0)), &mut Blank).unwrap().is_over().unwrap()
        };
        assert!(!is_over(0.0) && !is_over(50.0) && is_over(50.1));
        assert_eq!(checked(Part::Tie, pounds(1.0), Some(pounds(2.0)), &mut Blank).unwrap().ask(), None);
    }

    #[test]
    fn a_strength_that_is_none_is_refused() {
        for (pull, strength) in [(-1.0, 50.0), (f64::NAN, 50.0), (1.0, 0.0), (1.0, -50.0), (1.0, f64::NAN)] {
            let error = checked(Part::Tie, pounds(pull), Some(pounds(strength)), &mut Blank).unwrap_err();
            assert!(
                matches!(error, FasteningError::BelowNought { .. } | FasteningError::NotAboveNought { .. }),
                "{error}"
            );
        }
    }
}
