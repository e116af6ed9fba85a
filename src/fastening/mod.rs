//! What holds cloth: ties and grommets, lacing, cloth held at two edges only, the rails it is tied to, and how much of
//! each to order.
//!
//! The module is asked about a panel of cloth under a pressure. It knows no post and no wind: whoever knows them gives
//! the pressure at a row, the span between two uprights, and what the maker says of a tie. Ties and lacing carry cloth
//! that the wind pulls *off* what it hangs on; pressed *onto* it they carry nothing, and nothing here is asked.
//!
//! - [`ties`]: the pull on one tie or grommet of each row, twice that of BS 8410 beside it, classes of ties and age.
//! - [`unzip`]: what the neighbours of a tie that failed do, and whether it stops.
//! - [`membrane`]: the tension of cloth held at two edges, the pull at each grommet, the pull in the plane of the cloth.
//! - [`rope`], [`lacing`]: breaking loads, knots, sun; the tension of lacing and how much rope an edge takes.
//! - [`wire`]: chain-link wire and wire ties.
//! - [`rail`]: what a row of cloth asks of a rail.
//! - [`order`]: ties, grommets, rope, cloth and hem.
//!
//! What a maker has not said of a part is [`Checked::NotChecked`] with what to ask; no strength is made up.

pub mod lacing;
pub mod membrane;
pub mod order;
pub mod rail;
pub mod rope;
mod strength;
pub mod ties;
pub mod unzip;
pub mod wire;

pub use strength::{Checked, Part, RULES, Ratio, checked};

use crate::units::{Length, Measure, Quantity, System, Value};
use crate::workings::OutOfRange;
use rope::Fibre;
use std::fmt;
use ties::Row;

/// Why a question about what holds cloth cannot be answered.
#[derive(Debug, Clone, PartialEq)]
pub enum FasteningError {
    /// A value that must be above 0 and finite is not.
    NotAboveNought {
        /// Which.
        what: &'static str,
        /// Its value.
        value: Value,
    },
    /// A value that must not be below 0 is, or is no number.
    BelowNought {
        /// Which.
        what: &'static str,
        /// Its value.
        value: Value,
    },
    /// No row of ties is named.
    NoRows,
    /// A row is named twice.
    RowTwice {
        /// Which.
        row: Row,
    },
    /// A row is asked about at which the cloth is not held.
    RowNotHeld {
        /// Which.
        row: Row,
    },
    /// Ties stand further apart than the edge is long.
    SpacingWiderThanEdge {
        /// Along which row.
        row: Row,
        /// From tie to tie.
        spacing: Length,
        /// Length of the edge.
        edge: Length,
    },
    /// Cloth so slack that this pressure never draws it taut.
    NeverTaut {
        /// Slack, as a share of the span.
        slack: f64,
        /// The greatest slack that still goes taut; nothing where no pressure acts.
        greatest: Option<f64>,
    },
    /// No table of ropes has this one.
    RopeNotListed {
        /// Its fibre.
        fibre: Fibre,
        /// Its diameter.
        diameter: Length,
        /// The next smaller one that is listed.
        below: Option<Length>,
        /// The next larger one.
        above: Option<Length>,
    },
    /// A row without ties.
    NoTies,
    /// A tie is asked about that the row does not have.
    NoSuchTie {
        /// Its number, the first being 0.
        tie: usize,
        /// How many the row has.
        ties: usize,
    },
    /// A value is outside the range of a source.
    OutOfRange(OutOfRange),
}

impl fmt::Display for FasteningError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let written = |value: &Value| value.written(System::Us);
        let length = |length: Length| Value::new(length, Measure::Length).written(System::Us);
        let small = |length: Length| Value::new(length, Measure::Small).written(System::Us);
        let percent = |share: f64| Value::new(share, Measure::Percent).written(System::Us);
        match self {
            Self::NotAboveNought { what, value } => {
                write!(f, "{what} is {}: it must be a number above 0", written(value))
            }
            Self::BelowNought { what, value } => {
                write!(f, "{what} is {}: it must be 0 or above", written(value))
            }
            Self::NoRows => f.write_str(
                "no row is named: say along which edges the cloth is held, top, middle, bottom or sides",
            ),
            Self::RowTwice { row } => write!(f, "the row \"{}\" is named twice: name it once", row.name()),
            Self::RowNotHeld { row } => write!(f, "the cloth is not held at the row \"{}\"", row.name()),
            Self::SpacingWiderThanEdge { row, spacing, edge } => write!(
                f,
                "ties every {} do not fit the row \"{}\", which is {} long: put them closer, or leave the row out",
                length(*spacing),
                row.name(),
                length(*edge)
            ),
            Self::NeverTaut { slack, greatest: Some(greatest) } => write!(
                f,
                "cloth with {} of slack never goes taut under this pressure: it would hang as more than half a \
                 circle between its edges, which begins at {}; measure the cloth and the span again",
                percent(*slack),
                percent(*greatest)
            ),
            Self::NeverTaut { slack, greatest: None } => write!(
                f,
                "cloth with {} of slack has no tension without a pressure on it: it never goes taut",
                percent(*slack)
            ),
            Self::RopeNotListed { fibre, diameter, below, above } => {
                write!(f, "no table here has {} rope of {}", fibre.name(), small(*diameter))?;
                match (below, above) {
                    (Some(below), Some(above)) => {
                        write!(f, ": the nearest are {} and {}", small(*below), small(*above))?;
                    }
                    (Some(nearest), None) | (None, Some(nearest)) => {
                        write!(f, ": the nearest is {}", small(*nearest))?;
                    }
                    (None, None) => {}
                }
                f.write_str("; ask the maker for its breaking load")
            }
            Self::NoTies => f.write_str("the row has no ties"),
            Self::NoSuchTie { tie, ties } => {
                write!(f, "there is no tie {tie}, counted from 0: the row has {ties}")
            }
            Self::OutOfRange(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for FasteningError {}

impl From<OutOfRange> for FasteningError {
    fn from(error: OutOfRange) -> Self {
        Self::OutOfRange(error)
    }
}

/// Refuses what is not above 0 and finite.
fn above_nought<Q: Quantity>(what: &'static str, value: Q) -> Result<Q, FasteningError> {
    if value.si() > 0.0 && value.si().is_finite() {
        Ok(value)
    } else {
        Err(FasteningError::NotAboveNought { what, value: Value::of(value) })
    }
}

/// Refuses what is below 0 or not finite.
fn not_below_nought<Q: Quantity>(what: &'static str, value: Q) -> Result<Q, FasteningError> {
    if value.si() >= 0.0 && value.si().is_finite() {
        Ok(value)
    } else {
        Err(FasteningError::BelowNought { what, value: Value::of(value) })
    }
}
