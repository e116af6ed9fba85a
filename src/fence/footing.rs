//! What a post stands in.

use crate::footing::Pier;
use crate::units::Length;

/// What posts stand in, shared by index as their kinds are.
#[derive(Debug, Clone, PartialEq)]
pub struct Footing {
    /// Its name, or where it stands in the survey.
    pub name: String,
    /// Concrete or none.
    pub shape: FootingShape,
    /// Across the concrete, or the side of a square one, if known; nothing for a post without concrete.
    pub width: Option<Length>,
    /// From the ground to its bottom, if known.
    pub depth: Option<Length>,
    /// Whether a slab or beam holds the post at the ground.
    pub is_held: bool,
    /// Whether the soil may count twice, as about an isolated pole (IBC 1806.3.4).
    pub is_isolated: bool,
}

/// Concrete, as seen from above, or none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FootingShape {
    /// Round concrete.
    Round,
    /// Square concrete.
    Square,
    /// The post is driven, without concrete.
    Driven,
}

impl FootingShape {
    /// Every shape.
    pub const ALL: [Self; 3] = [Self::Round, Self::Square, Self::Driven];

    /// In one word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Round => "round",
            Self::Square => "square",
            Self::Driven => "driven",
        }
    }

    /// The concrete of that shape and width; nothing for a post without concrete.
    #[must_use]
    pub const fn pier(self, width: Length) -> Option<Pier> {
        match self {
            Self::Round => Some(Pier::Round { diameter: width }),
            Self::Square => Some(Pier::Square { side: width }),
            Self::Driven => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::inches;

    #[test]
    fn concrete_is_as_wide_as_it_is_said_to_be_and_a_driven_post_has_none() {
        let piers = FootingShape::ALL.map(|shape| shape.pier(inches(10.0)));
        let (diameter, side) = (inches(10.0), inches(10.0));
        assert_eq!(piers, [Some(Pier::Round { diameter }), Some(Pier::Square { side }), None]);
        assert_eq!(FootingShape::ALL.map(FootingShape::word), ["round", "square", "driven"]);
    }
}
