//! What holds cloth to a fence, as data.

use crate::fastening::ties::{Age, Rows};
use crate::units::{Force, Length, LineLoad};

/// The side of the fence that cloth hangs on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Face {
    /// The side of the court.
    Inside,
    /// The other side.
    Outside,
}

impl Face {
    /// Both, as a survey lists them.
    pub const ALL: [Self; 2] = [Self::Inside, Self::Outside];

    /// In one word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Inside => "inside",
            Self::Outside => "outside",
        }
    }
}

/// What the rows of cloth are tied to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TiedTo {
    /// Rails, posts and tension bars.
    Rails,
    /// The steel mesh alone.
    ChainLink,
}

/// What holds the cloth of a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Fastening {
    /// Ties or lacing.
    pub kind: FasteningKind,
    /// The edges it is held at.
    pub rows: Rows,
    /// From tie to tie, or from grommet to grommet; nothing if not known.
    pub spacing: Option<Length>,
    /// What it is tied to.
    pub to: TiedTo,
    /// Length of one cloth, from upright edge to upright edge; nothing where it was not measured.
    pub panel: Option<Length>,
    /// The pull at which a grommet tears out of the hem, if its maker says so.
    pub grommet: Option<Force>,
    /// Stiffness of the cloth and its slack as a share of the span, which cloth held at its sides only is worked with.
    pub cloth: Option<ClothStiffness>,
}

/// How cloth stretches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClothStiffness {
    /// Force for each width over stretch.
    pub stiffness: LineLoad,
    /// By how much it is longer than its span, as a share of it.
    pub slack: f64,
}

/// Ties or lacing, and how strong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FasteningKind {
    /// Ties, one at each grommet.
    Ties {
        /// The strength a tie is declared with, if known.
        declared: Option<Force>,
        /// Its age.
        age: Age,
    },
    /// A rope laced through the grommets and round a rail.
    Lacing {
        /// Its thickness.
        rope: Length,
        /// The least breaking load of the tables, new; nothing where no table has it.
        breaking: Option<Force>,
        /// Years outdoors.
        years: f64,
        /// Outside diameter of what it is laced to.
        rail: Length,
        /// From the rail to the grommet.
        offset: Length,
    },
}

impl FasteningKind {
    /// What it is called.
    #[must_use]
    pub const fn word(&self) -> &'static str {
        match self {
            Self::Ties { .. } => "ties",
            Self::Lacing { .. } => "lacing",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::inches;

    #[test]
    fn the_sides_of_a_fence_and_what_holds_cloth_have_their_words() {
        assert_eq!(Face::ALL.map(Face::word), ["inside", "outside"]);
        assert_eq!(FasteningKind::Ties { declared: None, age: Age::New }.word(), "ties");
        let (rope, rail) = (inches(0.25), inches(1.66));
        let lacing = FasteningKind::Lacing { rope, breaking: None, years: 0.0, rail, offset: inches(1.0) };
        assert_eq!(lacing.word(), "lacing");
    }
}
