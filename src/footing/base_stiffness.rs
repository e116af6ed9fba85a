//! How far a rigid pole gives at the ground: rotation, movement and rotational stiffness.
//!
//! A rigid pole of depth d under shear V and moment M = V h in soil whose reaction for each length and movement is
//! n_h z (sand, and clay that hardens with depth) or E_s (stiff clay). Force and moment of the linear reaction give
//! both answers exactly; what is not exact is the soil, and the range is printed with the figure.

use super::{Load, above_nought};
use crate::rule;
use crate::source::{Clause, Document, STATICS, Seen, Stated};
use crate::units::{
    Force, Length, Moment, Powers, Pressure, PressurePerDepth, Pure, metres, pounds_per_cubic_inch,
};
use crate::workings::{Ledger, Listed, OutOfRange, within};

static MODULI: Document = Document {
    short: "GEC 12",
    title: "FHWA-NHI-16-009, Geotechnical Engineering Circular 12, Design and Construction of Driven Pile Foundations, \
            2016, after AASHTO 2014",
    seen: Seen::SecondHand("an open library's transcription (geotech-references 1.4.1)"),
};
/// Moduli of sand.
pub const SAND_TABLE: Clause = MODULI.at("Table 8-4");
/// Modulus of clay from its strength.
pub const CLAY_MODULUS: Clause = MODULI.at("Eq. 8-7, as UFC 3-220-20, Eq. 6-77");
const RIGID: Clause = STATICS.at("rigid pole on linear springs");

/// How far the stiffness may be off, either way.
pub const RANGE: Stated<f64> = Stated {
    value: 2.5,
    because: "ours: soil moduli from class or strength are uncertain by a factor of 2 to 3; stiffness × and ÷ 2.5",
};
const CLAY_RATIO: Stated<f64> =
    Stated { value: 67.0, because: "UFC 3-220-20, Eq. 6-77 (Davisson 1970): E_s = 67 S_u" };

/// How dense sand lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SandDensity {
    /// Loose.
    Loose,
    /// Medium.
    Medium,
    /// Dense.
    Dense,
}

impl SandDensity {
    /// Every density.
    pub const ALL: [Self; 3] = [Self::Loose, Self::Medium, Self::Dense];

    /// Its name in one word, for files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Loose => "loose",
            Self::Medium => "medium",
            Self::Dense => "dense",
        }
    }

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Loose => "loose sand",
            Self::Medium => "medium sand",
            Self::Dense => "dense sand",
        }
    }
}

/// Rise with depth of the modulus of sand, n_h, above water or below it.
///
/// # Source
/// GEC 12, Table 8-4 (AASHTO 2014): 0.417, 1.110, 2.780 ksi/ft dry and 0.208, 0.556, 1.390 ksi/ft submerged.
#[must_use]
pub const fn sand_modulus(density: SandDensity, under_water: bool) -> Stated<PressurePerDepth> {
    let (ksi_per_foot, because) = match (density, under_water) {
        (SandDensity::Loose, false) => (0.417, "GEC 12, Table 8-4: loose sand, dry"),
        (SandDensity::Medium, false) => (1.110, "GEC 12, Table 8-4: medium sand, dry"),
        (SandDensity::Dense, false) => (2.780, "GEC 12, Table 8-4: dense sand, dry"),
        (SandDensity::Loose, true) => (0.208, "GEC 12, Table 8-4: loose sand, submerged"),
        (SandDensity::Medium, true) => (0.556, "GEC 12, Table 8-4: medium sand, submerged"),
        (SandDensity::Dense, true) => (1.390, "GEC 12, Table 8-4: dense sand, submerged"),
    };
    Stated { value: pounds_per_cubic_inch(ksi_per_foot * 1000.0 / 12.0), because }
}

rule! {
    /// Modulus of clay from its undrained strength.
    ClayModulus, "footing/clay-modulus", CLAY_MODULUS;
    /// ratio
    ratio: f64 = "C";
    /// undrained shear strength
    strength: Pressure = "S_u";
    modulus "E_s": Pressure as Stress = ratio * strength
}
rule! {
    /// Movement at the ground of a rigid pole in soil whose modulus rises with depth.
    RisingMovement, "footing/rising-movement", RIGID;
    /// lateral force
    force: Force = "V";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// depth of the pole
    depth: Length as Distance = "d";
    /// rise of the modulus with depth
    modulus: PressurePerDepth = "n_h";
    movement "y_0": Length as Small = force * (18.0 + 24.0 * (height / depth).pure()) / (modulus * depth.squared())
}
rule! {
    /// Rotation of a rigid pole in soil whose modulus rises with depth.
    RisingRotation, "footing/rising-rotation", RIGID;
    /// lateral force
    force: Force = "V";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// depth of the pole
    depth: Length as Distance = "d";
    /// rise of the modulus with depth
    modulus: PressurePerDepth = "n_h";
    rotation "θ": f64 as Angle = (force * (24.0 * depth + 36.0 * height) / (modulus * depth.to_the_fourth())).pure()
}
rule! {
    /// Rotational stiffness M/θ of a rigid pole in soil whose modulus rises with depth.
    ///
    /// # Range
    /// Force above grade: without a moment there is no M/θ.
    RisingStiffness, "footing/rising-stiffness", RIGID;
    /// depth of the pole
    depth: Length as Distance = "d";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// rise of the modulus with depth
    modulus: PressurePerDepth = "n_h";
    stiffness "k_θ": Moment as RotationalStiffness =
        modulus * depth.to_the_fourth() / (36.0 + 24.0 * (depth / height).pure())
}
rule! {
    /// Movement at the ground of a rigid pole in soil of one modulus.
    ConstantMovement, "footing/constant-movement", RIGID;
    /// lateral force
    force: Force = "V";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// depth of the pole
    depth: Length as Distance = "d";
    /// modulus
    modulus: Pressure as Stress = "E_s";
    movement "y_0": Length as Small = force * (4.0 + 6.0 * (height / depth).pure()) / (modulus * depth)
}
rule! {
    /// Rotation of a rigid pole in soil of one modulus.
    ConstantRotation, "footing/constant-rotation", RIGID;
    /// lateral force
    force: Force = "V";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// depth of the pole
    depth: Length as Distance = "d";
    /// modulus
    modulus: Pressure as Stress = "E_s";
    rotation "θ": f64 as Angle = (force * (6.0 * depth + 12.0 * height) / (modulus * depth.cubed())).pure()
}
rule! {
    /// Rotational stiffness M/θ of a rigid pole in soil of one modulus.
    ///
    /// # Range
    /// Force above grade: without a moment there is no M/θ.
    ConstantStiffness, "footing/constant-stiffness", RIGID;
    /// depth of the pole
    depth: Length as Distance = "d";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// modulus
    modulus: Pressure as Stress = "E_s";
    stiffness "k_θ": Moment as RotationalStiffness =
        modulus * depth.cubed() / (12.0 + 6.0 * (depth / height).pure())
}
rule! {
    /// Rotational stiffness at the soft end of its range.
    Softest, "footing/softest-base", RIGID;
    /// rotational stiffness
    stiffness: Moment as RotationalStiffness = "k_θ";
    /// how far it may be off
    factor: f64 = "c";
    softest "k_min": Moment as RotationalStiffness = stiffness / factor
}
rule! {
    /// Rotational stiffness at the stiff end of its range.
    Stiffest, "footing/stiffest-base", RIGID;
    /// rotational stiffness
    stiffness: Moment as RotationalStiffness = "k_θ";
    /// how far it may be off
    factor: f64 = "c";
    stiffest "k_max": Moment as RotationalStiffness = stiffness * factor
}

/// The reaction of the soil for each length of pole and each movement.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Modulus {
    /// Rising with depth from nought at the ground: n_h.
    Rising(PressurePerDepth),
    /// The same at every depth: E_s.
    Constant(Pressure),
}

impl Modulus {
    /// That of sand of a given density.
    #[must_use]
    pub fn of_sand(density: SandDensity, under_water: bool, ledger: &mut impl Ledger) -> Self {
        Self::Rising(ledger.judge("n_h", sand_modulus(density, under_water)))
    }

    /// That of clay of a given undrained strength.
    ///
    /// # Errors
    /// If the strength is not above 0.
    pub fn of_clay(strength: Pressure, ledger: &mut impl Ledger) -> Result<Self, OutOfRange> {
        above_nought("undrained strength", CLAY_MODULUS, strength)?;
        let ratio = ledger.judge("C", CLAY_RATIO);
        Ok(Self::Constant(ClayModulus { ratio, strength }.work(ledger)))
    }
}

/// Rotational stiffness with the range it may lie in, each a moment for each radian.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BaseStiffness {
    /// At the soft end.
    pub softest: Moment,
    /// As worked.
    pub stated: Moment,
    /// At the stiff end.
    pub stiffest: Moment,
}

/// How a rigid pole gives at the ground under a load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Give {
    /// Movement at the ground.
    pub movement: Length,
    /// Rotation in radians.
    pub rotation: f64,
}

/// Rotational stiffness at the ground of a rigid pole loaded at a height above it.
///
/// # Errors
/// If depth, height or modulus is not above 0.
pub fn base_stiffness(
    depth: Length,
    height: Length,
    modulus: Modulus,
    ledger: &mut impl Ledger,
) -> Result<BaseStiffness, OutOfRange> {
    above_nought("height", RIGID, height)?;
    check(depth, modulus)?;
    let stated = match modulus {
        Modulus::Rising(modulus) => RisingStiffness { depth, height, modulus }.work(ledger),
        Modulus::Constant(modulus) => ConstantStiffness { depth, height, modulus }.work(ledger),
    };
    let factor = ledger.judge("c", RANGE);
    let softest = Softest { stiffness: stated, factor }.work(ledger);
    let stiffest = Stiffest { stiffness: stated, factor }.work(ledger);
    Ok(BaseStiffness { softest, stated, stiffest })
}

/// Movement and rotation at the ground of a rigid pole under a load.
///
/// # Errors
/// If depth or modulus is not above 0, or the height below it.
pub fn give(
    load: Load,
    depth: Length,
    modulus: Modulus,
    ledger: &mut impl Ledger,
) -> Result<Give, OutOfRange> {
    let Load { force, height } = load;
    within("height", RIGID, height, metres(0.0), metres(f64::MAX))?;
    check(depth, modulus)?;
    Ok(match modulus {
        Modulus::Rising(modulus) => Give {
            movement: RisingMovement { force, height, depth, modulus }.work(ledger),
            rotation: RisingRotation { force, height, depth, modulus }.work(ledger),
        },
        Modulus::Constant(modulus) => Give {
            movement: ConstantMovement { force, height, depth, modulus }.work(ledger),
            rotation: ConstantRotation { force, height, depth, modulus }.work(ledger),
        },
    })
}

fn check(depth: Length, modulus: Modulus) -> Result<(), OutOfRange> {
    above_nought("depth", RIGID, depth)?;
    match modulus {
        Modulus::Rising(modulus) => above_nought("modulus", RIGID, modulus),
        Modulus::Constant(modulus) => above_nought("modulus", RIGID, modulus),
    }
}

/// The rules of base stiffness by name.
pub const RULES: &[Listed] = &[
    Listed::of::<ClayModulus>(),
    Listed::of::<RisingMovement>(),
    Listed::of::<RisingRotation>(),
    Listed::of::<RisingStiffness>(),
    Listed::of::<ConstantMovement>(),
    Listed::of::<ConstantRotation>(),
    Listed::of::<ConstantStiffness>(),
    Listed::of::<Softest>(),
    Listed::of::<Stiffest>(),
];
