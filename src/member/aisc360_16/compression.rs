//! Chapter E: compression of round and square tube, E3, and of slender round tube, E7.

use super::square_flexure::FlangeNoncompactLimit;
use super::{DOCUMENT, ELASTIC_MODULUS, flat_width};
use crate::member::{RoundTube, SquareTube};
use crate::rule;
use crate::source::{Clause, Stated};
use crate::units::{Area, Force, Length, Powers, Pressure, Pure};
use crate::workings::{Blank, Ledger, OutOfRange, within};
use std::f64::consts::PI;

/// Compression where yielding has a part in buckling.
pub const E3_2: Clause = DOCUMENT.at("E3, Eqs. E3-1, E3-2");
/// Compression of members so slender that they buckle in their elastic range.
pub const E3_3: Clause = DOCUMENT.at("E3, Eqs. E3-1, E3-3").from_memory();
/// Compression of slender round tube.
pub const E7_7: Clause = DOCUMENT.at("E7.2, Eq. E7-7").from_memory();
/// The slenderness L_c/r that columns had better not pass, as a note advises.
pub const ADVISED_SLENDERNESS: (f64, Clause) = (200.0, DOCUMENT.at("E2, user note").from_memory());
const SQUARE_WALL: Clause = DOCUMENT.at("Table B4.1a, case 6, walls that are not slender");

/// Effective length factor of a post that stands free.
pub const FREE_STANDING: Stated<f64> = Stated {
    value: 2.1,
    because: "AISC 360-16 Commentary, Table C-A-7.1: held at the foot and free at the top, the value recommended \
              where theory says 2.0 (from memory)",
};

rule! {
    /// Effective length of a member over its radius of gyration.
    LengthRatio, "aisc360-16/e2-length-ratio", DOCUMENT.at("E2");
    /// effective length factor
    factor: f64 = "K";
    /// length
    length: Length as Distance = "L";
    /// radius of gyration
    radius: Length as Small = "r";
    ratio "L_c/r": f64 = factor * (length / radius).pure()
}
rule! {
    /// Elastic buckling stress.
    ElasticBuckling, "aisc360-16/e3-4", DOCUMENT.at("E3, Eq. E3-4");
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// effective length over radius of gyration
    ratio: f64 = "L_c/r";
    stress "F_e": Pressure as Stress = PI.squared() * elastic / ratio.squared()
}
rule! {
    /// Greatest L_c/r at which yielding has a part in buckling.
    InelasticLimit, "aisc360-16/e3-limit", DOCUMENT.at("E3");
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    limit "λ_c": f64 = 4.71 * (elastic / yield_strength).pure().sqrt()
}
rule! {
    /// Critical stress where yielding has a part in buckling.
    InelasticBuckling, "aisc360-16/e3-2", DOCUMENT.at("E3, Eq. E3-2");
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// elastic buckling stress
    buckling: Pressure as Stress = "F_e";
    stress "F_cr": Pressure as Stress = 0.658_f64.powf((yield_strength / buckling).pure()) * yield_strength
}
rule! {
    /// Critical stress in the elastic range.
    SlenderBuckling, "aisc360-16/e3-3", DOCUMENT.at("E3, Eq. E3-3").from_memory();
    /// elastic buckling stress
    buckling: Pressure as Stress = "F_e";
    stress "F_cr": Pressure as Stress = 0.877 * buckling
}
rule! {
    /// Greatest D/t of a round tube that is not slender in compression.
    RoundSlenderLimit, "aisc360-16/e7-limit", DOCUMENT.at("Table B4.1a, case 9");
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    limit "λ_r": f64 = 0.11 * (elastic / yield_strength).pure()
}
rule! {
    /// Effective area of a slender round tube.
    ///
    /// # Departure
    /// The equation gives 1.2 % more than the whole area where it begins; the whole area is the most here.
    RoundEffectiveArea, "aisc360-16/e7-7", E7_7;
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// diameter over wall
    slenderness: f64 = "D/t";
    /// area
    area: Area = "A_g";
    effective "A_e": Area =
        (0.038 / slenderness * (elastic / yield_strength).pure() + 2.0 / 3.0).min(1.0) * area
}
rule! {
    /// Compressive strength.
    Compression, "aisc360-16/e3-1", DOCUMENT.at("E3, Eq. E3-1");
    /// critical stress
    stress: Pressure as Stress = "F_cr";
    /// area that counts
    area: Area = "A_g";
    force "P_n": Force = stress * area
}
rule! {
    /// Compressive strength with its resistance factor.
    DesignCompression, "aisc360-16/design-compression", DOCUMENT.at("E1");
    /// resistance factor
    resistance: f64 = "φ";
    /// nominal strength
    nominal: Force = "P_n";
    force "φP_n": Force = resistance * nominal
}
rule! {
    /// Compressive strength allowed by the other format of the specification.
    AllowableCompression, "aisc360-16/allowable-compression", DOCUMENT.at("E1");
    /// nominal strength
    nominal: Force = "P_n";
    /// safety factor
    safety: f64 = "Ω";
    force "P_n/Ω": Force = nominal / safety
}
rule! {
    /// Compressive strength of a member in both formats, from its area, radius of gyration and length.
    CompressionInBothFormats, "aisc360-16/e3-both-formats", DOCUMENT.at("E1 to E3");
    /// area
    area: Area = "A_g";
    /// radius of gyration
    radius: Length as Small = "r";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// effective length factor
    factor: f64 = "K";
    /// length
    length: Length as Distance = "L";
    force "φP_n": Force
}
impl CompressionInBothFormats {
    /// Works E3 and both formats of it; walls are taken as not slender.
    ///
    /// # Errors
    /// If the length, radius, factor or yield is not above 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let Self { area, radius, yield_strength, factor, length } = self;
        let column = Column { factor, length };
        let (stress, _) = column.critical_stress(radius, yield_strength, ledger)?;
        let nominal = Compression { stress, area }.work(ledger);
        let _ = super::Format::Asd.available_compression(nominal, ledger);
        let design = super::Format::Lrfd.available_compression(nominal, ledger);
        Ok(self.keep(ledger, design))
    }
}

/// A nominal compressive strength and the equation that gave it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NominalCompression {
    /// The strength without its factor.
    pub nominal: Force,
    /// The equation that governs.
    pub clause: Clause,
}

/// A member in compression: how long it is and how it is held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    /// Effective length factor; [`FREE_STANDING`] for a post held at its foot alone.
    pub factor: f64,
    /// Length.
    pub length: Length,
}

impl Column {
    fn critical_stress(
        self,
        radius: Length,
        yield_strength: Pressure,
        ledger: &mut impl Ledger,
    ) -> Result<(Pressure, Clause), OutOfRange> {
        let above_nought =
            |what, value: f64| within(what, DOCUMENT.at("E2 and E3"), value, f64::MIN_POSITIVE, f64::MAX);
        let elastic = ELASTIC_MODULUS;
        above_nought("E/F_y", (elastic / yield_strength).pure())?;
        above_nought("L_c/r", self.factor * (self.length / radius).pure())?;
        let ratio = LengthRatio { factor: self.factor, length: self.length, radius }.work(ledger);
        let buckling = ElasticBuckling { elastic, ratio }.work(ledger);
        let limit = InelasticLimit { elastic, yield_strength }.work(ledger);
        Ok(if ratio <= limit {
            (InelasticBuckling { yield_strength, buckling }.work(ledger), E3_2)
        } else {
            (SlenderBuckling { buckling }.work(ledger), E3_3)
        })
    }
}

/// Compressive strength of a round tube without its factor.
///
/// # Errors
/// If D/t is 0.45 E/F_y or more, or the column has no length.
pub fn nominal_compression(
    tube: RoundTube,
    yield_strength: Pressure,
    column: Column,
    ledger: &mut impl Ledger,
) -> Result<NominalCompression, OutOfRange> {
    let elastic = ELASTIC_MODULUS;
    let slenderness = (tube.diameter() / tube.wall()).pure();
    within("D/t", DOCUMENT.at("E7.2"), slenderness, 0.0, 0.45 * (elastic / yield_strength).pure())?;
    let radius = tube.radius_of_gyration(ledger);
    let (stress, clause) = column.critical_stress(radius, yield_strength, ledger)?;
    let whole = tube.area(ledger);
    let limit = RoundSlenderLimit { elastic, yield_strength }.work(ledger);
    let (area, clause) = if slenderness <= limit {
        (whole, clause)
    } else {
        let area = RoundEffectiveArea { elastic, yield_strength, slenderness, area: whole }.work(ledger);
        (area, E7_7)
    };
    Ok(NominalCompression { nominal: Compression { stress, area }.work(ledger), clause })
}

/// Compressive strength of a square tube without its factor.
///
/// # Errors
/// If the walls are slender, or the column has no length.
pub fn square_compression(
    tube: SquareTube,
    yield_strength: Pressure,
    column: Column,
    ledger: &mut impl Ledger,
) -> Result<NominalCompression, OutOfRange> {
    let slenderness = (flat_width(tube, ledger) / tube.wall()).pure();
    let limit = FlangeNoncompactLimit { modulus: ELASTIC_MODULUS, yield_strength }.work(&mut Blank);
    within("b/t", SQUARE_WALL, slenderness, f64::MIN, limit)?;
    let radius = tube.radius_of_gyration(ledger);
    let (stress, clause) = column.critical_stress(radius, yield_strength, ledger)?;
    Ok(NominalCompression { nominal: Compression { stress, area: tube.area(ledger) }.work(ledger), clause })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::member::{SquareSizes, TubeSizes};
    use crate::units::{feet, inches, ksi, pounds};
    use proptest::prelude::*;

    fn round(diameter: f64, wall: f64) -> RoundTube {
        RoundTube::try_new(TubeSizes { diameter: inches(diameter), wall: inches(wall) }).unwrap()
    }

    fn strength(tube: RoundTube, yield_ksi: f64, height_ft: f64) -> (f64, Clause) {
        let column = Column { factor: FREE_STANDING.value, length: feet(height_ft) };
        let found = nominal_compression(tube, ksi(yield_ksi), column, &mut Blank).unwrap();
        ((found.nominal / pounds(1.0)).pure(), found.clause)
    }

    #[test]
    fn a_free_standing_post_of_ten_feet_buckles_in_its_elastic_range() {
        // By hand: r 0.952 in, 2.1 × 120 / 0.952 = 264.7, π² 29 000 / 264.7² × 0.877 × 1.593 in².
        let (force, clause) = strength(round(2.875, 0.18879), 30.0, 10.0);
        assert_eq!(clause, E3_3);
        assert!((force / 5_707.0 - 1.0).abs() < 2e-3, "{force}");
    }

    #[test]
    fn no_step_where_elastic_buckling_begins() {
        // 0.658^(4.71²/π²) against 0.877 π²/4.71²: the equations meet within one in a thousand.
        let tube = round(2.875, 0.2);
        let radius = tube.radius_of_gyration(&mut Blank);
        let at = |times: f64| {
            let length = radius * times * 4.71 * (29_000.0_f64 / 30.0).sqrt();
            let column = Column { factor: 1.0, length };
            nominal_compression(tube, ksi(30.0), column, &mut Blank).unwrap()
        };
        let (below, above) = (at(0.99999), at(1.00001));
        assert_eq!((below.clause, above.clause), (E3_2, E3_3));
        assert!(((below.nominal / above.nominal).pure() - 1.0).abs() < 1e-3);
    }

    #[test]
    fn a_slender_round_tube_loses_area_from_where_its_equation_falls_below_the_whole() {
        let ratio = |slenderness: f64| {
            let tube = round(6.0, 6.0 / slenderness);
            let whole = tube.area(&mut Blank);
            let area = RoundEffectiveArea {
                elastic: ELASTIC_MODULUS,
                yield_strength: ksi(50.0),
                slenderness,
                area: whole,
            };
            (area.work(&mut Blank) / whole).pure()
        };
        assert_eq!(ratio(0.111 * 580.0), 1.0);
        assert!((ratio(0.20 * 580.0) - (0.19 + 2.0 / 3.0)).abs() < 1e-12);
        assert_eq!(strength(round(6.0, 6.0 / 100.0), 50.0, 3.0).1, E7_7);
        let beyond = nominal_compression(
            round(6.0, 6.0 / 262.0),
            ksi(50.0),
            Column { factor: 1.0, length: feet(3.0) },
            &mut Blank,
        );
        assert!(beyond.unwrap_err().to_string().contains("E7.2"));
    }

    #[test]
    fn square_tube_of_slender_walls_and_a_column_of_no_length_are_refused() {
        let square = |wall: f64, length: f64| {
            let sizes = SquareSizes { width: inches(3.0), wall: inches(wall), corner: None };
            let tube = SquareTube::try_new(sizes).unwrap();
            square_compression(tube, ksi(50.0), Column { factor: 1.0, length: feet(length) }, &mut Blank)
        };
        assert!(square(0.116, 8.0).is_ok());
        assert!(square(0.05, 8.0).unwrap_err().to_string().contains("case 6"));
        assert!(square(0.116, 0.0).is_err() && square(0.116, -1.0).is_err());
    }

    proptest! {
        /// Of tube that is not slender: the area of Eq. E7-7 falls with a higher yield though the stress may not rise.
        #[test]
        fn a_longer_column_never_carries_more_nor_a_thicker_or_stronger_one_less(
            diameter in 1.3..6.0_f64, share in 0.04..0.3_f64, yield_ksi in 25.0..60.0_f64, height in 2.0..20.0_f64
        ) {
            let at = |wall: f64, yield_ksi: f64, height: f64| strength(round(diameter, wall), yield_ksi, height).0;
            let wall = diameter / 2.0 * share;
            let here = at(wall, yield_ksi, height);
            prop_assert!(at(wall, yield_ksi, height * 1.01) < here);
            prop_assert!(at(wall * 1.01, yield_ksi, height) > here);
            prop_assert!(at(wall, yield_ksi * 1.01, height) >= here * (1.0 - 1e-3));
        }
    }
}
