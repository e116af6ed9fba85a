//! Chapter H: torsion of round and rectangular tube, H3.1.

use super::{DOCUMENT, ELASTIC_MODULUS, flat_width};
use crate::member::{RoundTube, SquareTube};
use crate::rule;
use crate::source::Clause;
use crate::units::{Length, Moment, Powers, Pressure, Pure, SectionModulus};
use crate::workings::{Ledger, OutOfRange, within};
use std::f64::consts::PI;

/// Torsion of round tube.
pub const H3_2: Clause = DOCUMENT.at("H3.1(a), Eqs. H3-1, H3-2a, H3-2b");
/// Torsion of rectangular tube whose walls yield.
pub const H3_3: Clause = DOCUMENT.at("H3.1(b), Eqs. H3-1, H3-3");
/// Torsion of rectangular tube whose walls buckle.
pub const H3_4: Clause = DOCUMENT.at("H3.1(b), Eqs. H3-1, H3-4, H3-5").from_memory();
const USER_NOTE: Clause = DOCUMENT.at("H3.1, user note");

rule! {
    /// Torsional constant of a round tube by the closed form of the specification, beside the exact one.
    ///
    /// # Departure
    /// Called careful where it stands, it is above the exact 2 J/D, which the published tables list, by nearly t/D:
    /// 4.6 % of a tube of 5 in by 0.233 in. Strength is worked with 2 J/D.
    ClosedForm, "aisc360-16/h3-closed-form-round", USER_NOTE;
    /// outside diameter
    diameter: Length as Small = "D";
    /// wall that strength is reckoned with
    wall: Length as Small = "t";
    constant "C": SectionModulus = PI / 2.0 * (diameter - wall).squared() * wall
}
rule! {
    /// Torsional constant of a rectangular tube.
    RectangularConstant, "aisc360-16/h3-closed-form-rectangular", USER_NOTE;
    /// outside width
    width: Length as Small = "B";
    /// outside height
    height: Length as Small = "H";
    /// wall that strength is reckoned with
    wall: Length as Small = "t";
    constant "C": SectionModulus =
        2.0 * (width - wall) * (height - wall) * wall - 4.5 * (4.0 - PI) * wall.cubed()
}
rule! {
    /// Critical stress in torsion of a round tube of this length.
    RoundStressOfLength, "aisc360-16/h3-2a", DOCUMENT.at("H3.1(a), Eq. H3-2a");
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// length
    length: Length as Distance = "L";
    /// outside diameter
    diameter: Length as Small = "D";
    /// diameter over wall
    slenderness: f64 = "D/t";
    stress "F_cr": Pressure as Stress =
        1.23 * elastic / ((length / diameter).pure().sqrt() * slenderness.powf(1.25))
}
rule! {
    /// Critical stress in torsion of a round tube of any length.
    RoundStress, "aisc360-16/h3-2b", DOCUMENT.at("H3.1(a), Eq. H3-2b");
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// diameter over wall
    slenderness: f64 = "D/t";
    stress "F_cr": Pressure as Stress = 0.60 * elastic / slenderness.powf(1.5)
}
rule! {
    /// The greater of two critical stresses, no more than the yield in shear.
    GreaterStress, "aisc360-16/h3-2", DOCUMENT.at("H3.1(a)");
    /// critical stress of this length
    of_length: Pressure as Stress = "F_cr,a";
    /// critical stress of any length
    of_any: Pressure as Stress = "F_cr,b";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    stress "F_cr": Pressure as Stress = of_length.max(of_any).min(0.6 * yield_strength)
}
rule! {
    /// Critical stress in torsion of a rectangular tube whose walls yield.
    WallYielding, "aisc360-16/h3-3", DOCUMENT.at("H3.1(b), Eq. H3-3");
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    stress "F_cr": Pressure as Stress = 0.6 * yield_strength
}
rule! {
    /// Critical stress in torsion of a rectangular tube whose walls buckle past their elastic range.
    WallInelastic, "aisc360-16/h3-4", DOCUMENT.at("H3.1(b), Eq. H3-4").from_memory();
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// flat width over wall
    slenderness: f64 = "h/t";
    stress "F_cr": Pressure as Stress =
        0.6 * yield_strength * 2.45 * (elastic / yield_strength).pure().sqrt() / slenderness
}
rule! {
    /// Critical stress in torsion of a rectangular tube whose walls buckle in their elastic range.
    WallElastic, "aisc360-16/h3-5", DOCUMENT.at("H3.1(b), Eq. H3-5").from_memory();
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// flat width over wall
    slenderness: f64 = "h/t";
    stress "F_cr": Pressure as Stress = 0.458 * PI.squared() * elastic / slenderness.squared()
}
rule! {
    /// Torsional strength.
    Torsion, "aisc360-16/h3-1", DOCUMENT.at("H3.1, Eq. H3-1");
    /// critical stress
    stress: Pressure as Stress = "F_cr";
    /// torsional constant
    constant: SectionModulus = "C";
    moment "T_n": Moment = stress * constant
}
rule! {
    /// Torsional strength with its resistance factor.
    DesignTorsion, "aisc360-16/design-torsion", DOCUMENT.at("H3.1");
    /// resistance factor
    resistance: f64 = "φ";
    /// nominal strength
    nominal: Moment = "T_n";
    moment "φT_n": Moment = resistance * nominal
}
rule! {
    /// Torsional strength allowed by the other format of the specification.
    AllowableTorsion, "aisc360-16/allowable-torsion", DOCUMENT.at("H3.1");
    /// nominal strength
    nominal: Moment = "T_n";
    /// safety factor
    safety: f64 = "Ω";
    moment "T_n/Ω": Moment = nominal / safety
}
rule! {
    /// Torsional strength of a round tube in both formats, from its torsional constant.
    RoundTorsionInBothFormats, "aisc360-16/h3-both-formats", DOCUMENT.at("H3.1(a)");
    /// outside diameter
    diameter: Length as Small = "D";
    /// wall that strength is reckoned with
    wall: Length as Small = "t";
    /// length
    length: Length as Distance = "L";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// torsional constant
    constant: SectionModulus = "C";
    moment "φT_n": Moment
}
impl RoundTorsionInBothFormats {
    /// Works H3.1(a) and both formats of it.
    ///
    /// # Errors
    /// If the diameter, wall or length is not above 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Moment, OutOfRange> {
        let Self { diameter, wall, length, yield_strength, constant } = self;
        let stress = round_stress(diameter, wall, length, yield_strength, ledger)?;
        let nominal = Torsion { stress, constant }.work(ledger);
        let _ = super::Format::Asd.available_torsion(nominal, ledger);
        let design = super::Format::Lrfd.available_torsion(nominal, ledger);
        Ok(self.keep(ledger, design))
    }
}
rule! {
    /// Torsional strength of a rectangular tube whose walls yield, in both formats, from its torsional constant.
    RectangularTorsionInBothFormats, "aisc360-16/h3-3-both-formats", H3_3;
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// torsional constant
    constant: SectionModulus = "C";
    moment "φT_n": Moment
}
impl RectangularTorsionInBothFormats {
    /// Works Eqs. H3-1 and H3-3 and both formats of them.
    ///
    /// # Errors
    /// None; the signature is that of every rule worked by hand.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Moment, OutOfRange> {
        let Self { yield_strength, constant } = self;
        let stress = WallYielding { yield_strength }.work(ledger);
        let nominal = Torsion { stress, constant }.work(ledger);
        let _ = super::Format::Asd.available_torsion(nominal, ledger);
        let design = super::Format::Lrfd.available_torsion(nominal, ledger);
        Ok(self.keep(ledger, design))
    }
}

/// A nominal torsional strength and the equations that gave it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NominalTorsion {
    /// The strength without its factor.
    pub nominal: Moment,
    /// The equations that govern.
    pub clause: Clause,
}

fn round_stress(
    diameter: Length,
    wall: Length,
    length: Length,
    yield_strength: Pressure,
    ledger: &mut impl Ledger,
) -> Result<Pressure, OutOfRange> {
    let (slenderness, times) = ((diameter / wall).pure(), (length / diameter).pure());
    within("D/t", H3_2, slenderness, f64::MIN_POSITIVE, f64::MAX)?;
    within("L/D", H3_2, times, f64::MIN_POSITIVE, f64::MAX)?;
    let elastic = ELASTIC_MODULUS;
    let of_length = RoundStressOfLength { elastic, length, diameter, slenderness }.work(ledger);
    let of_any = RoundStress { elastic, slenderness }.work(ledger);
    Ok(GreaterStress { of_length, of_any, yield_strength }.work(ledger))
}

/// Torsional strength of a round tube without its factor, with C = 2 J/D.
///
/// # Errors
/// If the length is not above 0.
pub fn nominal_torsion(
    tube: RoundTube,
    yield_strength: Pressure,
    length: Length,
    ledger: &mut impl Ledger,
) -> Result<NominalTorsion, OutOfRange> {
    let stress = round_stress(tube.diameter(), tube.wall(), length, yield_strength, ledger)?;
    let constant = tube.torsional_modulus(ledger);
    Ok(NominalTorsion { nominal: Torsion { stress, constant }.work(ledger), clause: H3_2 })
}

/// Torsional strength of a square tube without its factor.
///
/// # Errors
/// If h/t is above 260.
pub fn square_torsion(
    tube: SquareTube,
    yield_strength: Pressure,
    ledger: &mut impl Ledger,
) -> Result<NominalTorsion, OutOfRange> {
    let (elastic, width, wall) = (ELASTIC_MODULUS, tube.width(), tube.wall());
    let slenderness = (flat_width(tube, ledger) / wall).pure();
    within("h/t", H3_4, slenderness, f64::MIN, 260.0)?;
    let root = (elastic / yield_strength).pure().sqrt();
    let (stress, clause) = if slenderness <= 2.45 * root {
        (WallYielding { yield_strength }.work(ledger), H3_3)
    } else if slenderness <= 3.07 * root {
        (WallInelastic { elastic, yield_strength, slenderness }.work(ledger), H3_4)
    } else {
        (WallElastic { elastic, slenderness }.work(ledger), H3_4)
    };
    let constant = RectangularConstant { width, height: width, wall }.work(ledger);
    Ok(NominalTorsion { nominal: Torsion { stress, constant }.work(ledger), clause })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::member::{SquareSizes, TubeSizes};
    use crate::units::{Quantity, feet, inches, ksi, pound_feet};
    use crate::workings::Blank;
    use proptest::prelude::*;

    fn square(slenderness: f64) -> f64 {
        let wall = 6.0 / (slenderness + 3.0);
        let sizes = SquareSizes { width: inches(6.0), wall: inches(wall), corner: None };
        let found = square_torsion(SquareTube::try_new(sizes).unwrap(), ksi(50.0), &mut Blank).unwrap();
        let constant = 2.0 * (6.0 - wall).powi(2) * wall - 4.5 * (4.0 - PI) * wall.powi(3);
        (found.nominal / pound_feet(1.0)).pure() * 12.0 / 1000.0 / constant
    }

    #[test]
    fn a_stout_tube_yields_in_torsion_by_its_constant() {
        let asked = RoundTorsionInBothFormats {
            diameter: inches(4.0),
            wall: inches(0.2),
            length: feet(10.0),
            yield_strength: ksi(50.0),
            constant: SectionModulus::from_si(2.0 * 0.0254_f64.powi(3)),
        };
        // 0.90 × 0.6 × 50 × 2 kip-in.
        let found = (asked.work(&mut Blank).unwrap() / pound_feet(54_000.0 / 12.0)).pure();
        assert!((found - 1.0).abs() < 1e-9, "{found}");
    }

    #[test]
    fn the_stress_of_a_square_wall_meets_where_its_equations_do() {
        let root = (29_000.0_f64 / 50.0).sqrt();
        // To 2.45 √(E/F_y), 59.0, yielding; to 73.9 as one over h/t, beyond as one over its square.
        for slenderness in [5.0, 20.0, 40.0, 58.9] {
            assert!((square(slenderness) - 30.0).abs() < 1e-9, "{slenderness}");
        }
        for slenderness in [59.1, 66.0, 73.8] {
            assert!((square(slenderness) * slenderness - 30.0 * 2.45 * root).abs() < 1e-9, "{slenderness}");
        }
        for slenderness in [74.0, 120.0, 259.0] {
            let elastic = 0.458 * PI * PI * 29_000.0 / slenderness / slenderness;
            assert!((square(slenderness) - elastic).abs() < 1e-9, "{slenderness}");
        }
        assert!((square(2.45 * root * 1.0001) / 30.0 - 1.0).abs() < 2e-4);
        // 0.458 π²/3.07² against 0.6 × 2.45/3.07 where elastic buckling begins.
        let step = square(3.07 * root * 1.00001) / square(3.07 * root * 0.99999);
        assert!((step - 1.0).abs() < 2e-3, "{step}");
        let sizes = SquareSizes { width: inches(6.0), wall: inches(6.0 / 264.0), corner: None };
        assert!(square_torsion(SquareTube::try_new(sizes).unwrap(), ksi(50.0), &mut Blank).is_err());
    }

    #[test]
    fn a_length_that_is_none_is_refused() {
        let tube = RoundTube::try_new(TubeSizes { diameter: inches(3.0), wall: inches(0.2) }).unwrap();
        assert!(nominal_torsion(tube, ksi(30.0), feet(0.0), &mut Blank).is_err());
        assert!(nominal_torsion(tube, ksi(30.0), feet(-1.0), &mut Blank).is_err());
    }

    proptest! {
        /// With n = t/D the closed form is (1 − n) / ((1 − n)² + n²) of 2 J/D.
        #[test]
        fn the_closed_form_is_above_the_exact_constant_by_less_than_the_wall_over_the_diameter(
            diameter in 1.0..9.0_f64, share in 0.01..0.15_f64
        ) {
            let (diameter, wall) = (inches(diameter), inches(diameter * share));
            let tube = RoundTube::try_new(TubeSizes { diameter, wall }).unwrap();
            let closed = ClosedForm { diameter, wall }.work(&mut Blank);
            let above = (closed / tube.torsional_modulus(&mut Blank)).pure() - 1.0;
            prop_assert!(above > 0.0 && above <= share, "{}", above);
        }

        #[test]
        fn a_thicker_wall_or_a_higher_yield_never_weakens_in_torsion(
            diameter in 1.0..9.0_f64, share in 0.01..0.5_f64, yield_ksi in 25.0..60.0_f64, height in 2.0..20.0_f64
        ) {
            let at = |wall: f64, yield_ksi: f64| {
                let sizes = TubeSizes { diameter: inches(diameter), wall: inches(wall) };
                nominal_torsion(RoundTube::try_new(sizes).unwrap(), ksi(yield_ksi), feet(height), &mut Blank)
                    .unwrap()
                    .nominal
            };
            let wall = diameter / 2.0 * share;
            prop_assert!(at(wall * 1.001, yield_ksi) > at(wall, yield_ksi));
            prop_assert!(at(wall, yield_ksi * 1.001) >= at(wall, yield_ksi));
        }
    }
}
