//! Chapter F: bending of round tube, F8.

use super::{
    AllowableMoment, DOCUMENT, DesignMoment, ELASTIC_MODULUS, MOMENT_RESISTANCE, MOMENT_SAFETY, NominalMoment,
};
use crate::member::{RoundTube, TubeSizes};
use crate::rule;
use crate::source::Clause;
use crate::units::{Length, Moment, Pressure, Pure, Quantity, SectionModulus};
use crate::workings::{Ledger, OutOfRange, within};

/// Where compact tube stands.
pub const F8_1: Clause = DOCUMENT.at("F8, Eq. F8-1");
/// Where tube that is not compact stands.
pub const F8_2: Clause = DOCUMENT.at("F8, Eq. F8-2");
/// Where slender tube stands.
pub const F8_3: Clause = DOCUMENT.at("F8, Eqs. F8-3, F8-4");

rule! {
    /// Greatest D/t of a compact round tube.
    CompactLimit, "aisc360-16/f8-compact-limit", DOCUMENT.at("F8 and Table B4.1b, case 20");
    /// modulus of elasticity
    modulus: Pressure as Stress = "E";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    limit "λ_p": f64 = 0.07 * (modulus / yield_strength).pure()
}
rule! {
    /// Greatest D/t of a round tube that is not slender.
    NoncompactLimit, "aisc360-16/f8-noncompact-limit", DOCUMENT.at("Table B4.1b, case 20").from_memory();
    /// modulus of elasticity
    modulus: Pressure as Stress = "E";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    limit "λ_r": f64 = 0.31 * (modulus / yield_strength).pure()
}
rule! {
    /// Bending strength by yielding.
    Plastic, "aisc360-16/f8-1", F8_1;
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// plastic section modulus
    modulus: SectionModulus = "Z";
    moment "M_n": Moment = yield_strength * modulus
}
rule! {
    /// Bending strength of a tube that is not compact.
    Noncompact, "aisc360-16/f8-2", F8_2;
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// diameter over wall
    slenderness: f64 = "D/t";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// elastic section modulus
    modulus: SectionModulus = "S";
    moment "M_n": Moment = (0.021 * elastic / slenderness + yield_strength) * modulus
}
rule! {
    /// Bending strength of a slender tube.
    Slender, "aisc360-16/f8-3", F8_3;
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// diameter over wall
    slenderness: f64 = "D/t";
    /// elastic section modulus
    modulus: SectionModulus = "S";
    moment "M_n": Moment = 0.33 * elastic / slenderness * modulus
}
rule! {
    /// Bending strength by yielding with its resistance factor, and beside it the moment allowed.
    YieldingInBothFormats, "aisc360-16/f8-1-both-formats", DOCUMENT.at("F1 and F8, Eq. F8-1");
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// plastic section modulus
    modulus: SectionModulus = "Z";
    moment "φM_n": Moment
}
impl YieldingInBothFormats {
    /// Works Eq. F8-1 and both formats of it.
    ///
    /// # Errors
    /// None; the signature is that of every rule worked by hand.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Moment, OutOfRange> {
        let Self { yield_strength, modulus } = self;
        let nominal = Plastic { yield_strength, modulus }.work(ledger);
        let safety = ledger.judge("Ω", MOMENT_SAFETY);
        let _ = AllowableMoment { nominal, safety }.work(ledger);
        let resistance = ledger.judge("φ", MOMENT_RESISTANCE);
        let design = DesignMoment { resistance, nominal }.work(ledger);
        Ok(self.keep(ledger, design))
    }
}
rule! {
    /// Bending strength of a round tube: yielding where compact, the least of the equations where they meet.
    TubeMoment, "aisc360-16/tube-moment", DOCUMENT.at("F8");
    /// outside diameter
    diameter: Length as Small = "D";
    /// wall that strength is reckoned with
    wall: Length as Small = "t";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    moment "M_n": Moment
}
impl TubeMoment {
    /// Works it.
    ///
    /// # Errors
    /// If D/t is 0.45 E/F_y or more, or the sizes are no tube (told as D/t below 2).
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Moment, OutOfRange> {
        let above_nought = Length::from_si(f64::MIN_POSITIVE);
        within("diameter", DOCUMENT.at("F8"), self.diameter, above_nought, Length::from_si(f64::MAX))?;
        within("wall", DOCUMENT.at("F8"), self.wall, above_nought, Length::from_si(f64::MAX))?;
        let slenderness = (self.diameter / self.wall).pure();
        let limit = 0.45 * (ELASTIC_MODULUS / self.yield_strength).pure();
        within("D/t", DOCUMENT.at("F8"), slenderness, 2.0, limit)?;
        let tube = RoundTube::try_new(TubeSizes { diameter: self.diameter, wall: self.wall })
            .expect("a D/t of 2 or more is a tube");
        let moment = nominal_moment(tube, self.yield_strength, ledger)?;
        Ok(self.keep(ledger, moment.nominal))
    }
}
/// Bending strength of a round tube without its resistance factor.
///
/// Equations F8-1 and F8-2 do not join at the compact limit; the lesser of the two is taken (ours).
///
/// # Errors
/// If D/t is 0.45 E/F_y or more.
pub fn nominal_moment(
    tube: RoundTube,
    yield_strength: Pressure,
    ledger: &mut impl Ledger,
) -> Result<NominalMoment, OutOfRange> {
    let slenderness = (tube.diameter() / tube.wall()).pure();
    let ratio = (ELASTIC_MODULUS / yield_strength).pure();
    within("D/t", DOCUMENT.at("F8"), slenderness, 0.0, 0.45 * ratio)?;
    let compact = CompactLimit { modulus: ELASTIC_MODULUS, yield_strength }.work(ledger);
    let plastic =
        |ledger: &mut _| Plastic { yield_strength, modulus: tube.plastic_modulus(ledger) }.work(ledger);
    if slenderness <= compact {
        return Ok(NominalMoment { nominal: plastic(ledger), clause: F8_1 });
    }
    let slender_from = NoncompactLimit { modulus: ELASTIC_MODULUS, yield_strength }.work(ledger);
    let modulus = tube.elastic_modulus(ledger);
    if slenderness <= slender_from {
        let noncompact =
            Noncompact { elastic: ELASTIC_MODULUS, slenderness, yield_strength, modulus }.work(ledger);
        let plastic = plastic(ledger);
        return Ok(if plastic < noncompact {
            NominalMoment { nominal: plastic, clause: F8_1 }
        } else {
            NominalMoment { nominal: noncompact, clause: F8_2 }
        });
    }
    let nominal = Slender { elastic: ELASTIC_MODULUS, slenderness, modulus }.work(ledger);
    Ok(NominalMoment { nominal, clause: F8_3 })
}

/// Bending strength with its resistance factor, and the equation that governs.
///
/// # Errors
/// As for [`nominal_moment`].
pub fn design_moment(
    tube: RoundTube,
    yield_strength: Pressure,
    ledger: &mut impl Ledger,
) -> Result<(Moment, Clause), OutOfRange> {
    let NominalMoment { nominal, clause } = nominal_moment(tube, yield_strength, ledger)?;
    let resistance = ledger.judge("φ", MOMENT_RESISTANCE);
    Ok((DesignMoment { resistance, nominal }.work(ledger), clause))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::member::aisc360_16::DesignWall;
    use crate::units::{inches, ksi, pound_feet};
    use crate::workings::Blank;
    use proptest::prelude::*;

    fn strength(diameter: f64, wall: f64, yield_ksi: f64) -> f64 {
        let tube = RoundTube::try_new(TubeSizes { diameter: inches(diameter), wall: inches(wall) }).unwrap();
        (design_moment(tube, ksi(yield_ksi), &mut Blank).unwrap().0 / pound_feet(1.0)).pure()
    }

    #[test]
    fn a_nominal_wall_and_a_measured_one_differ_by_the_design_wall() {
        let nominal = DesignWall { nominal: inches(0.203) }.work(&mut Blank);
        let nominal = strength(2.875, (nominal / inches(1.0)).pure(), 30.0);
        let measured = strength(2.875, 0.203, 30.0);
        assert!((nominal - 3070.0).abs() < 0.5, "{nominal}");
        assert!((measured - 3267.0).abs() < 0.5, "{measured}");
        assert!((nominal / measured - 0.940).abs() < 5e-4);
    }

    #[test]
    fn a_tube_by_its_sizes_carries_its_plastic_moment_up_to_slender_and_is_refused_from_0_45_e_over_yield() {
        let asked = |slenderness: f64| {
            let wall = inches(4.0 / slenderness);
            TubeMoment { diameter: inches(4.0), wall, yield_strength: ksi(50.0) }.work(&mut Blank)
        };
        // 4 in by 0.2 in of 50 ksi: 50 × (4³ − 3.6³)/6 kip-in.
        let by_hand = 50_000.0 * (64.0 - 3.6 * 3.6 * 3.6) / 6.0 / 12.0;
        assert!(((asked(20.0).unwrap() / pound_feet(by_hand)).pure() - 1.0).abs() < 1e-9);
        // 0.45 × 29 000 ÷ 50 = 261.
        assert!(asked(260.9).is_ok());
        for slenderness in [261.1, 1.9, f64::NAN] {
            assert!(asked(slenderness).is_err(), "{slenderness}");
        }
    }

    /// Just past compact, D/t 0.07 × 29 000 ÷ 35 = 58, Eq. F8-2 gives 1 + 0.021 × 29 000/(35 × 58.5) = 1.297 times the
    /// elastic moment; a thin ring of D/t 58.5 has 1.295 times as its plastic one.
    #[test]
    fn just_past_compact_a_thin_tube_carries_no_more_than_its_plastic_moment() {
        let wall = 4.0 / 58.5;
        let tube = RoundTube::try_new(TubeSizes { diameter: inches(4.0), wall: inches(wall) }).unwrap();
        let found = nominal_moment(tube, ksi(35.0), &mut Blank).unwrap();
        assert_eq!(found.clause, F8_1);
        let plastic = 35_000.0 * (64.0 - (4.0 - 2.0 * wall).powi(3)) / 6.0 / 12.0;
        assert!(((found.nominal / pound_feet(plastic)).pure() - 1.0).abs() < 1e-9);
    }

    proptest! {
        /// Up to where a tube of 60 ksi becomes slender; beyond it see the next test.
        #[test]
        fn a_thicker_wall_or_a_higher_yield_never_weakens(diameter in 1.0..9.0_f64, share in 0.0137..0.8_f64, fy in 25.0..60.0_f64) {
            let wall = diameter / 2.0 * share;
            let here = strength(diameter, wall, fy);
            prop_assert!(strength(diameter, wall * 1.001, fy) >= here * (1.0 - 1e-12));
            prop_assert!(strength(diameter, wall, fy * 1.001) >= here * (1.0 - 1e-12));
        }
    }

    #[test]
    fn where_a_tube_becomes_slender_the_equations_themselves_step_down_by_three_in_a_thousand() {
        // 0.33/0.31 against 1 + 0.021/0.31, times F_y S.
        let wall = 4.0 / (0.31 * 29_000.0 / 50.0);
        let (below, above) = (strength(4.0, wall, 50.0 * 0.9999), strength(4.0, wall, 50.0 * 1.0001));
        let step = above / below;
        assert!((step - (0.33 / 0.31) / (1.0 + 0.021 / 0.31)).abs() < 3e-4, "{step}");
    }

    #[test]
    fn a_tube_beyond_the_range_is_refused_with_its_clause() {
        let tube = RoundTube::try_new(TubeSizes { diameter: inches(4.0), wall: inches(0.008) }).unwrap();
        let error = nominal_moment(tube, ksi(30.0), &mut Blank).unwrap_err();
        assert!(error.to_string().contains("AISC 360-16 F8"));
    }
}
