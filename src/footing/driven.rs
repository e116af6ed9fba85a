//! Posts driven into the ground without concrete: the largest moment is below grade, and the post may bend before the
//! soil gives way.

use super::{ClayOrSand, FootingError, Ground, Load, above_nought, base_stiffness::Modulus, broms, friction};
use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{Length, Moment, Powers, Pressure, PressurePerDepth, Pure, SecondMoment, metres};
use crate::workings::{Ledger, Listed, OutOfRange, within};

static LENGTHS: Document = Document {
    short: "FHWA-HI-97-013",
    title: "FHWA-HI-97-013, Design and Construction of Driven Pile Foundations, 1997, after Broms",
    seen: Seen::SecondHand("worked sheets that follow its 9.7.3.2, and UFC 3-220-20, 6-6.2"),
};
/// How long a pile is beside its stiffness.
pub const LENGTH_FACTOR: Clause = LENGTHS.at("9.7.3.2");

/// Up to which length factor a pile in clay turns as one piece.
pub const SHORT_IN_CLAY: Stated<f64> =
    Stated { value: 2.25, because: "FHWA-HI-97-013, 9.7.3.2, after Broms: short in clay up to β L = 2.25" };
/// Up to which length factor a pile in sand turns as one piece.
pub const SHORT_IN_SAND: Stated<f64> =
    Stated { value: 2.0, because: "FHWA-HI-97-013, 9.7.3.2, after Broms: short in sand up to η L = 2" };

rule! {
    /// Length factor of a pile in clay.
    ClayLengthFactor, "footing/length-factor-clay", LENGTH_FACTOR;
    /// depth of the pile
    depth: Length as Distance = "L";
    /// reaction of the soil for each length and movement, k_h b
    modulus: Pressure as Stress = "E_s";
    /// modulus of elasticity of the pile
    elastic: Pressure as Stress = "E";
    /// second moment of area of the pile
    second_moment: SecondMoment = "I";
    factor "β L": f64 = (modulus * depth.to_the_fourth() / (4.0 * elastic * second_moment)).pure().powf(0.25)
}
rule! {
    /// Length factor of a pile in sand.
    SandLengthFactor, "footing/length-factor-sand", LENGTH_FACTOR;
    /// depth of the pile
    depth: Length as Distance = "L";
    /// rise of the soil's modulus with depth
    modulus: PressurePerDepth = "n_h";
    /// modulus of elasticity of the pile
    elastic: Pressure as Stress = "E";
    /// second moment of area of the pile
    second_moment: SecondMoment = "I";
    factor "η L": f64 = (modulus * depth * depth.to_the_fourth() / (elastic * second_moment)).pure().powf(0.2)
}
rule! {
    /// What a moment below grade is more than the moment at grade.
    Added, "footing/driven-added", broms::CLAY;
    /// largest moment
    largest: Moment = "M_max";
    /// moment at grade
    at_grade: Moment = "M";
    added "ΔM": Moment = largest - at_grade
}

/// Where the largest moment of a driven post is, and what it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BelowGrade {
    /// How far below grade.
    pub depth: Length,
    /// The largest moment.
    pub largest: Moment,
    /// How much of it is not there at grade: P (1.5 D + f/2) in clay.
    pub added: Moment,
}

/// The largest moment of a post driven without concrete, by Broms for the soil that is known.
///
/// Load and soil are taken as they are given: the strength of the post has its own factors.
///
/// # Errors
/// If neither clay's undrained strength nor sand's friction and weight is known, or both are: then the post below
/// grade is not checked. Values out of range.
pub fn largest_moment(
    load: Load,
    width: Length,
    ground: &Ground,
    ledger: &mut impl Ledger,
) -> Result<BelowGrade, FootingError> {
    const ASKED: &str = "the moment below grade of a driven post";
    let Load { force, height } = load;
    above_nought("force", broms::CLAY, force)?;
    within("height", broms::CLAY, height, metres(0.0), metres(f64::MAX))?;
    above_nought("width", broms::CLAY, width)?;
    let (depth, largest) = match ground.clay_or_sand(ASKED)? {
        ClayOrSand::Clay(strength) => {
            above_nought("undrained strength", broms::CLAY, strength)?;
            let length = broms::ClayShearLength { force, strength, width }.work(ledger);
            (1.5 * width + length, broms::ClayMoment { force, height, width, length }.work(ledger))
        }
        ClayOrSand::Sand { angle, weight } => {
            friction(broms::SAND, angle)?;
            above_nought("unit weight", broms::SAND, weight)?;
            let passive = broms::Passive { angle }.work(ledger);
            let depth = broms::SandShearDepth { force, weight, width, passive }.work(ledger);
            (depth, broms::SandMoment { force, height, depth, weight, width, passive }.work(ledger))
        }
    };
    let added = Added { largest, at_grade: force * height }.work(ledger);
    Ok(BelowGrade { depth, largest, added })
}

/// Whether a pile turns as one piece, as Broms' short pile does; a longer one bends before the soil gives way.
///
/// # Errors
/// If a value is not above 0.
pub fn is_short(
    depth: Length,
    modulus: Modulus,
    elastic: Pressure,
    second_moment: SecondMoment,
    ledger: &mut impl Ledger,
) -> Result<bool, OutOfRange> {
    above_nought("depth", LENGTH_FACTOR, depth)?;
    above_nought("modulus of elasticity", LENGTH_FACTOR, elastic)?;
    above_nought("second moment of area", LENGTH_FACTOR, second_moment)?;
    Ok(match modulus {
        Modulus::Constant(modulus) => {
            above_nought("modulus", LENGTH_FACTOR, modulus)?;
            let factor = ClayLengthFactor { depth, modulus, elastic, second_moment }.work(ledger);
            factor <= ledger.judge("β L", SHORT_IN_CLAY)
        }
        Modulus::Rising(modulus) => {
            above_nought("modulus", LENGTH_FACTOR, modulus)?;
            let factor = SandLengthFactor { depth, modulus, elastic, second_moment }.work(ledger);
            factor <= ledger.judge("η L", SHORT_IN_SAND)
        }
    })
}

/// The rules of driven posts by name.
pub const RULES: &[Listed] =
    &[Listed::of::<ClayLengthFactor>(), Listed::of::<SandLengthFactor>(), Listed::of::<Added>()];
