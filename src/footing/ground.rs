//! What is known of the ground, each value or nothing.

use super::base_stiffness::{Modulus, SandDensity};
use super::{FootingError, GroundQuality, SoilClass};
use crate::units::{Pressure, PressurePerDepth};
use crate::workings::Ledger;

/// What is known of the ground about a post; a method takes what it needs and refuses to guess the rest.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Ground {
    /// Its class by the words of IBC Table 1806.2.
    pub class: Option<SoilClass>,
    /// Allowable lateral bearing for each depth, from a geotechnical engineer; it goes before the class.
    pub lateral_bearing: Option<PressurePerDepth>,
    /// Undrained shear strength, of clay.
    pub undrained_strength: Option<Pressure>,
    /// Angle of friction in radians, of sand and gravel.
    pub friction_angle: Option<f64>,
    /// Cohesion beside friction; none is counted where none is given.
    pub cohesion: Option<Pressure>,
    /// Unit weight, under water the buoyant one.
    pub unit_weight: Option<PressurePerDepth>,
    /// Its quality by the words of PD 6547, Table 2.
    pub quality: Option<GroundQuality>,
    /// Ground factor of PD 6547; it goes before the quality.
    pub ground_factor: Option<PressurePerDepth>,
    /// How dense its sand lies, for how far a base gives.
    pub density: Option<SandDensity>,
    /// Whether it lies under water, for how far a base gives.
    pub is_under_water: bool,
}

/// The one kind of soil about a post, with its strength.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ClayOrSand {
    /// Clay, with its undrained strength.
    Clay(Pressure),
    /// Sand or gravel.
    Sand {
        /// Angle of friction in radians.
        angle: f64,
        /// Unit weight.
        weight: PressurePerDepth,
    },
}

impl Ground {
    /// The reaction it gives to a post that moves: of sand by its density, of clay by its undrained strength.
    ///
    /// # Errors
    /// If neither is known.
    pub fn modulus(&self, asked: &'static str, ledger: &mut impl Ledger) -> Result<Modulus, FootingError> {
        match (self.density, self.undrained_strength) {
            (Some(density), None) => Ok(Modulus::of_sand(density, self.is_under_water, ledger)),
            (None, Some(strength)) => Ok(Modulus::of_clay(strength, ledger)?),
            (Some(_), Some(_)) => Err(FootingError::TwoSoils { asked }),
            (None, None) => Err(FootingError::SoilUnknown { asked, missing: Missing::Modulus }),
        }
    }

    /// The strength of clay or that of sand, whichever is known.
    ///
    /// # Errors
    /// If neither is known, or both are.
    pub fn clay_or_sand(&self, asked: &'static str) -> Result<ClayOrSand, FootingError> {
        match (self.undrained_strength, self.friction_angle, self.unit_weight) {
            (Some(_), Some(_), _) => Err(FootingError::TwoSoils { asked }),
            (Some(strength), None, _) => Ok(ClayOrSand::Clay(strength)),
            (None, Some(angle), Some(weight)) => Ok(ClayOrSand::Sand { angle, weight }),
            (None, Some(_), None) => Err(FootingError::SoilUnknown { asked, missing: Missing::UnitWeight }),
            (None, None, _) => Err(FootingError::SoilUnknown { asked, missing: Missing::ClayOrSand }),
        }
    }
}

/// A value of the soil that a method needs and does not have.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Missing {
    /// Allowable lateral bearing, or the class that gives it.
    LateralBearing,
    /// Undrained strength of clay, or friction and weight of sand.
    ClayOrSand,
    /// Unit weight beside an angle of friction.
    UnitWeight,
    /// Undrained strength.
    UndrainedStrength,
    /// Ground factor, or the quality that gives it.
    GroundFactor,
    /// Density of sand or undrained strength of clay.
    Modulus,
}

impl Missing {
    /// What it is.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::LateralBearing => "the class of soil by IBC Table 1806.2, or its allowable lateral bearing",
            Self::ClayOrSand => {
                "the undrained strength of clay, or the angle of friction and unit weight of sand"
            }
            Self::UnitWeight => "the unit weight of the soil beside its angle of friction",
            Self::UndrainedStrength => "the undrained strength of clay",
            Self::GroundFactor => "the quality of the ground by PD 6547, Table 2, or its ground factor",
            Self::Modulus => "how dense the sand lies, or the undrained strength of clay",
        }
    }

    /// What to ask, and of whom.
    #[must_use]
    pub const fn ask(self) -> &'static str {
        match self {
            Self::LateralBearing => {
                "ask what the post holes brought up (rock, gravel, sand, silt or clay, or fill), or a geotechnical engineer \
                 for the allowable lateral bearing for each foot of depth"
            }
            Self::ClayOrSand => {
                "ask a geotechnical engineer for S_u of clay, or for φ and γ of sand, within the depth of the footing"
            }
            Self::UnitWeight => "ask a geotechnical engineer for γ, the buoyant one under water",
            Self::UndrainedStrength => "ask a geotechnical engineer for S_u within the depth of the footing",
            Self::GroundFactor => {
                "ask whether the ground is good, average or poor by the words of that table, or a geotechnical engineer"
            }
            Self::Modulus => {
                "ask whether the sand is loose, medium or dense, or a geotechnical engineer for S_u of the clay"
            }
        }
    }
}
