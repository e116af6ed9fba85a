//! Rails as data: what the wind sees of them, what they are made of, how they are joined.

use super::post::{PostError, PostStrength, Tube};
use crate::member::Format;
use crate::member::stiffness::Stiffness;
use crate::units::{Length, Quantity};
use crate::workings::Ledger;

/// The rails of a run; nothing where there is none.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Rails {
    /// Top rail.
    pub top: Option<Rail>,
    /// Rail at half height.
    pub middle: Option<Rail>,
    /// Bottom rail.
    pub bottom: Option<Rail>,
}

/// A rail, alike in every bay of its run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rail {
    /// Outside diameter: what the wind sees.
    pub diameter: Length,
    /// The tube it is; nothing where nobody looked at its wall.
    pub tube: Option<Tube>,
    /// How its lengths are joined.
    pub splice: Splice,
    /// The format its steel is checked in.
    pub format: Format,
}

/// How the lengths of a rail are joined.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Splice {
    /// By sleeves, which pass on no moment that can be counted on.
    Sleeve,
    /// There is none: the rail is whole over its supports.
    Whole,
    /// Nobody said: a sleeve is not ruled out.
    #[default]
    NotSaid,
}

impl Splice {
    /// Those that a survey says, in its order.
    pub const SAID: [Self; 2] = [Self::Sleeve, Self::Whole];

    /// Its word in a survey.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Sleeve => "sleeve",
            Self::Whole => "none",
            Self::NotSaid => "not said",
        }
    }
}

/// Which rail.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum RailPlace {
    /// Along the top.
    Top,
    /// At half height.
    Middle,
    /// Along the bottom.
    Bottom,
}

impl RailPlace {
    /// All, from the top.
    pub const ALL: [Self; 3] = [Self::Top, Self::Middle, Self::Bottom];

    /// As "top rail".
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Top => "top rail",
            Self::Middle => "middle rail",
            Self::Bottom => "bottom rail",
        }
    }
}

impl Rails {
    /// The rail at a place.
    #[must_use]
    pub const fn at(&self, place: RailPlace) -> Option<Rail> {
        match place {
            RailPlace::Top => self.top,
            RailPlace::Middle => self.middle,
            RailPlace::Bottom => self.bottom,
        }
    }
}

const NO_WALL: &str = "the wall of the rail is not known: measure it with a caliper at an open end";

impl Rail {
    /// A rail of which only the outside is known.
    #[must_use]
    pub const fn of(diameter: Length) -> Self {
        Self { diameter, tube: None, splice: Splice::NotSaid, format: Format::Lrfd }
    }

    /// What it can carry over a span, if its tube is known.
    ///
    /// # Errors
    /// If its wall is not known, its sizes are no tube, or it lies outside the range of the rule.
    pub fn strength(&self, span: Length, ledger: &mut impl Ledger) -> Result<PostStrength, PostError> {
        let tube = self.tube.ok_or(PostError::NotGiven { why: NO_WALL })?;
        tube.strength(self.format, Length::from_si(span.si() / 2.0), ledger)
    }

    /// How stiff it is and what it weighs.
    ///
    /// # Errors
    /// If its wall is not known, or its sizes are no tube.
    pub fn stiffness(&self, ledger: &mut impl Ledger) -> Result<Stiffness, PostError> {
        self.tube.ok_or(PostError::NotGiven { why: NO_WALL })?.stiffness(ledger)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fence::{Shape, Wall};
    use crate::units::{Pure, feet, inches, ksi, pound_feet};
    use crate::workings::Blank;

    #[test]
    fn a_rail_of_unknown_wall_has_neither_strength_nor_stiffness() {
        let rail = Rail::of(inches(1.66));
        for told in [
            rail.strength(feet(10.0), &mut Blank).unwrap_err().to_string(),
            rail.stiffness(&mut Blank).unwrap_err().to_string(),
        ] {
            assert_eq!(told, "the wall of the rail is not known: measure it with a caliper at an open end");
        }
    }

    #[test]
    fn a_pipe_of_1_66_by_0_140_in_carries_what_its_plastic_modulus_makes() {
        let (diameter, wall) = (inches(1.66), Wall::Nominal(inches(0.140)));
        let shape = Shape::Round { girth: None, diameter };
        let tube = Tube { shape, wall, yield_strength: ksi(30.0), rust: inches(0.0) };
        let rail = Rail { tube: Some(tube), ..Rail::of(diameter) };
        // By hand: t 0.1302, Z (1.66³ − 1.3996³)/6 = 0.3054 in³, φM_n 0.9 × 30 × 0.3054 / 12 = 0.687 kip-ft.
        let moment = rail.strength(feet(10.0), &mut Blank).unwrap().moment;
        assert!(((moment / pound_feet(687.0)).pure() - 1.0).abs() < 2e-3, "{moment:?}");
        let rails = Rails { top: Some(rail), ..Rails::default() };
        assert_eq!(RailPlace::ALL.map(|place| rails.at(place).is_some()), [true, false, false]);
        assert_eq!(RailPlace::ALL.map(RailPlace::name), ["top rail", "middle rail", "bottom rail"]);
        assert_eq!(Splice::SAID.map(Splice::word), ["sleeve", "none"]);
        assert_eq!(Splice::default().word(), "not said");
    }
}
