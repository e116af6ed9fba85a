//! Chapter G: shear of round tube, G5, and of square tube, G4.

use super::square_flexure::B4_1;
use super::{DOCUMENT, ELASTIC_MODULUS, Format, flat_width};
use crate::member::{RoundTube, SquareSizes, SquareTube};
use crate::rule;
use crate::source::Clause;
use crate::units::{Area, Force, Length, Pressure, Pure, Quantity};
use crate::workings::{Ledger, OutOfRange, within};

/// Shear of round tube.
pub const G5_1: Clause = DOCUMENT.at("G5, Eq. G5-1");
/// Shear of square tube.
pub const G4_1: Clause = DOCUMENT.at("G4, Eq. G4-1");
const G5_2: Clause = DOCUMENT.at("G5, Eqs. G5-2a, G5-2b").from_memory();

rule! {
    /// Critical stress in shear of a round tube.
    ShearStress, "aisc360-16/g5-2", G5_2;
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// length from the largest shear to none
    length: Length as Distance = "L_v";
    /// outside diameter
    diameter: Length as Small = "D";
    /// diameter over wall
    slenderness: f64 = "D/t";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    stress "F_cr": Pressure as Stress = (1.60 * elastic / ((length / diameter).pure().sqrt() * slenderness.powf(1.25)))
        .max(0.78 * elastic / slenderness.powf(1.5))
        .min(0.6 * yield_strength)
}
rule! {
    /// Shear strength of a round tube.
    Shear, "aisc360-16/g5-1", G5_1;
    /// critical stress in shear
    stress: Pressure as Stress = "F_cr";
    /// area
    area: Area = "A_g";
    shear "V_n": Force = stress * area / 2.0
}
rule! {
    /// Area of the two webs of a square tube.
    WebArea, "aisc360-16/g4-web-area", DOCUMENT.at("G4");
    /// flat width of a web
    flat: Length as Small = "h";
    /// wall
    wall: Length as Small = "t";
    area "A_w": Area = 2.0 * flat * wall
}
rule! {
    /// Greatest h/t of a web that yields in shear before it buckles, with k_v 5.
    WebYieldingLimit, "aisc360-16/g2-9-limit", DOCUMENT.at("G4 and G2.2, Eq. G2-9");
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    limit "λ_v": f64 = 1.10 * (5.0 * elastic / yield_strength).pure().sqrt()
}
rule! {
    /// Greatest h/t of a web that buckles in shear past its elastic range, with k_v 5.
    WebInelasticLimit, "aisc360-16/g2-10-limit", DOCUMENT.at("G4 and G2.2, Eq. G2-10").from_memory();
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    limit "λ_vr": f64 = 1.37 * (5.0 * elastic / yield_strength).pure().sqrt()
}
rule! {
    /// Shear buckling coefficient of a web that buckles past its elastic range, with k_v 5.
    WebCoefficientBuckling, "aisc360-16/g2-10", DOCUMENT.at("G4 and G2.2, Eq. G2-10").from_memory();
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// flat width over wall
    slenderness: f64 = "h/t";
    coefficient "C_v2": f64 as Coefficient = 1.10 * (5.0 * elastic / yield_strength).pure().sqrt() / slenderness
}
rule! {
    /// Shear buckling coefficient of a web that buckles in its elastic range, with k_v 5.
    WebCoefficientBuckled, "aisc360-16/g2-11", DOCUMENT.at("G4 and G2.2, Eq. G2-11").from_memory();
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// flat width over wall
    slenderness: f64 = "h/t";
    coefficient "C_v2": f64 as Coefficient =
        1.51 * (5.0 * elastic / yield_strength).pure() / (slenderness * slenderness)
}
rule! {
    /// Shear strength of a square tube.
    SquareShear, "aisc360-16/g4-1", G4_1;
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// area of the webs
    area: Area = "A_w";
    /// shear buckling coefficient of the webs
    coefficient: f64 as Coefficient = "C_v2";
    shear "V_n": Force = 0.6 * yield_strength * area * coefficient
}
rule! {
    /// Shear strength of a square tube whose corners were not measured.
    SquareTubeShear, "aisc360-16/square-tube-shear", DOCUMENT.at("G4");
    /// outside width
    width: Length as Small = "B";
    /// wall that strength is reckoned with
    wall: Length as Small = "t";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    shear "V_n": Force
}
impl SquareTubeShear {
    /// Works it.
    ///
    /// # Errors
    /// If the sizes are no tube: a wall not above 0 or thicker than a quarter of the width.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let Self { width, wall, yield_strength } = self;
        let (least, greatest) = (Length::from_si(f64::MIN_POSITIVE), Length::from_si(f64::MAX));
        within("width", B4_1, width, least, greatest)?;
        within("wall", B4_1, wall, least, width / 4.0)?;
        let tube = SquareTube::try_new(SquareSizes { width, wall, corner: None })
            .expect("a wall of a quarter of the width is a tube");
        let shear = square_shear(tube, yield_strength, ledger);
        Ok(self.keep(ledger, shear.nominal))
    }
}

/// A nominal shear strength and the equation that gave it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NominalShear {
    /// The strength without its factor.
    pub nominal: Force,
    /// The equation that governs.
    pub clause: Clause,
}

/// Shear strength of a round tube without its factor; `length` is that from the largest shear to none.
pub fn nominal_shear(
    tube: RoundTube,
    yield_strength: Pressure,
    length: Length,
    ledger: &mut impl Ledger,
) -> NominalShear {
    let slenderness = (tube.diameter() / tube.wall()).pure();
    let stress = ShearStress {
        elastic: ELASTIC_MODULUS,
        length,
        diameter: tube.diameter(),
        slenderness,
        yield_strength,
    }
    .work(ledger);
    let nominal = Shear { stress, area: tube.area(ledger) }.work(ledger);
    NominalShear { nominal, clause: G5_1 }
}

/// Shear strength of a round tube with its resistance factor; `length` is that from the largest shear to none.
pub fn design_shear(
    tube: RoundTube,
    yield_strength: Pressure,
    length: Length,
    ledger: &mut impl Ledger,
) -> Force {
    let NominalShear { nominal, .. } = nominal_shear(tube, yield_strength, length, ledger);
    Format::Lrfd.available_shear(nominal, ledger)
}

/// Shear strength of a square tube without its factor, the shear along one side.
pub fn square_shear(tube: SquareTube, yield_strength: Pressure, ledger: &mut impl Ledger) -> NominalShear {
    let (elastic, wall) = (ELASTIC_MODULUS, tube.wall());
    let flat = flat_width(tube, ledger);
    let area = WebArea { flat, wall }.work(ledger);
    let slenderness = (flat / wall).pure();
    let coefficient = if slenderness <= (WebYieldingLimit { elastic, yield_strength }).work(ledger) {
        1.0
    } else if slenderness <= (WebInelasticLimit { elastic, yield_strength }).work(ledger) {
        WebCoefficientBuckling { elastic, yield_strength, slenderness }.work(ledger)
    } else {
        WebCoefficientBuckled { elastic, yield_strength, slenderness }.work(ledger)
    };
    let nominal = SquareShear { yield_strength, area, coefficient }.work(ledger);
    NominalShear { nominal, clause: G4_1 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::member::TubeSizes;
    use crate::units::{inches, ksi, pounds};
    use crate::workings::Blank;
    use proptest::prelude::*;

    fn square(width: f64, wall: f64, yield_ksi: f64) -> f64 {
        let sizes = SquareSizes { width: inches(width), wall: inches(wall), corner: None };
        let tube = SquareTube::try_new(sizes).unwrap();
        (square_shear(tube, ksi(yield_ksi), &mut Blank).nominal / pounds(1000.0)).pure()
    }

    #[test]
    fn a_tube_of_thick_walls_yields_over_both_webs() {
        // 0.6 × 50 × 2 × (2.5 − 3 × 0.116) × 0.116.
        assert!((square(2.5, 0.116, 50.0) - 14.978).abs() < 5e-4);
        let by_sizes = |wall: f64| {
            SquareTubeShear { width: inches(2.5), wall: inches(wall), yield_strength: ksi(50.0) }
                .work(&mut Blank)
        };
        assert!(((by_sizes(0.116).unwrap() / pounds(1000.0)).pure() - 14.978).abs() < 5e-4);
        assert!(by_sizes(0.625).is_ok() && by_sizes(0.626).is_err() && by_sizes(0.0).is_err());
    }

    #[test]
    fn a_tube_of_thick_walls_yields_over_half_its_area() {
        let tube = RoundTube::try_new(TubeSizes { diameter: inches(4.0), wall: inches(0.2) }).unwrap();
        let found = (design_shear(tube, ksi(50.0), inches(60.0), &mut Blank) / pounds(1000.0)).pure();
        // 0.90 × 0.6 × 50 × ½ π (2² − 1.8²).
        assert!((found - 0.9 * 30.0 * 0.5 * std::f64::consts::PI * (4.0 - 3.24)).abs() < 1e-9, "{found}");
    }

    #[test]
    fn the_coefficient_of_a_web_has_no_jump_but_the_one_of_the_equations() {
        // 1.51 against 1.10 × 1.37 where elastic buckling begins: two in a thousand.
        let yield_ksi = 50.0;
        let at = |slenderness: f64| {
            let wall = 6.0 / (slenderness + 3.0);
            square(6.0, wall, yield_ksi) / (0.6 * yield_ksi * 2.0 * (6.0 - 3.0 * wall) * wall)
        };
        let root = (5.0 * 29_000.0 / yield_ksi).sqrt();
        assert!((at(1.10 * root * 1.0001) / at(1.10 * root * 0.9999) - 1.0).abs() < 3e-4);
        let step = at(1.37 * root * 1.00001) / at(1.37 * root * 0.99999);
        assert!((step - 1.51 / (1.10 * 1.37)).abs() < 1e-4, "{step}");
    }

    proptest! {
        #[test]
        fn a_thicker_wall_or_a_higher_yield_never_weakens_in_shear(
            width in 1.0..9.0_f64, share in 0.004..0.16_f64, yield_ksi in 25.0..60.0_f64
        ) {
            let here = square(width, width * share, yield_ksi);
            // The step of the equations where elastic buckling begins is upwards to the thin side.
            prop_assert!(square(width, width * share * 1.01, yield_ksi) >= here * (1.0 - 1e-12));
            prop_assert!(square(width, width * share, yield_ksi * 1.01) >= here * (1.0 - 2.1e-3));
        }
    }
}
