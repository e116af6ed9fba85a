//! Speed-up over a hill, a ridge or the edge of a bank.
//!
//! A survey gives K_zt as a whole, because whether the ground counts is for an engineer to see; these rules are what that
//! engineer works it with.

use crate::rule;
use crate::source::{Clause, Document, Seen};
use crate::units::{Length, Powers, Pure, Quantity};
use crate::workings::{Ledger, Listed, OutOfRange, within};

static DOCUMENT: Document = Document {
    short: "ASCE 7-16",
    title: "ASCE/SEI 7-16, Minimum Design Loads and Associated Criteria for Buildings and Other Structures, 26.8",
    seen: Seen::SecondHand(
        "BNBC 2020, Part VI, 2.4.7 and Fig. 6.2.4, which print the same table and equation",
    ),
};
const FIGURE: Clause = DOCUMENT.at("26.8.2, Fig. 26.8-1");
const STEEP: Clause = DOCUMENT.at("26.8.2, Fig. 26.8-1, note 2");

rule! {
    /// Height over half-length as the first factor takes it: of steep ground 0.5.
    Steepness, "topography/steepness", STEEP;
    /// height of the hill or bank
    height: Length = "H";
    /// from the crest upwind to where the ground is half that high
    half_length: Length as Distance = "L_h";
    steepness "H/L_h": f64 as Coefficient = (height / half_length).pure().min(0.5)
}
rule! {
    /// Factor of the ground's form and the speed-up at its crest.
    CrestFactor, "topography/crest-factor", FIGURE;
    /// factor of the form and the exposure
    form: f64 = "c_1";
    /// height over half-length, not above 0.5
    steepness: f64 as Coefficient = "H/L_h";
    factor "K_1": f64 as Coefficient = form * steepness
}
rule! {
    /// Factor of the distance from the crest.
    DistanceFactor, "topography/distance-factor", FIGURE;
    /// distance from the crest, upwind or downwind
    distance: Length as Distance = "x";
    /// factor of the form
    reach: f64 = "μ";
    /// half-length, of steep ground 2H
    half_length: Length as Distance = "L_h";
    factor "K_2": f64 as Coefficient = (1.0 - (distance / (reach * half_length)).pure()).max(0.0)
}
rule! {
    /// Factor of the height above the ground.
    HeightFactor, "topography/height-factor", FIGURE;
    /// factor of the form
    decay: f64 = "γ";
    /// height above the ground
    height: Length = "z";
    /// half-length, of steep ground 2H
    half_length: Length as Distance = "L_h";
    factor "K_3": f64 as Coefficient = (-(decay * (height / half_length).pure())).exp()
}
rule! {
    /// Topographic factor.
    TopographicFactor, "topography/factor", DOCUMENT.at("26.8.2, Eq. 26.8-1");
    /// factor of the form and the crest
    crest: f64 as Coefficient = "K_1";
    /// factor of the distance
    distance: f64 as Coefficient = "K_2";
    /// factor of the height
    height: f64 as Coefficient = "K_3";
    factor "K_zt": f64 as Coefficient = (1.0 + crest * distance * height).squared()
}
rule! {
    /// Half-length as the factors of distance and height take it: of steep ground twice the height.
    HalfLength, "topography/half-length", STEEP;
    /// height of the hill or bank
    height: Length = "H";
    /// from the crest upwind to where the ground is half that high
    half_length: Length as Distance = "L_h";
    taken "L_h'": Length as Distance = half_length.max(2.0 * height)
}
rule! {
    /// Topographic factor of a hill, ridge or bank at one place and height.
    ///
    /// # Range
    /// Whether the ground counts at all (26.8.1) is not looked at.
    Ground, "topography/ground", FIGURE;
    /// factor of the form and the exposure
    form: f64 = "c_1";
    /// factor of the form for the distance
    reach: f64 = "μ";
    /// factor of the form for the height
    decay: f64 = "γ";
    /// height of the hill or bank
    height: Length = "H";
    /// from the crest upwind to where the ground is half that high
    half_length: Length as Distance = "L_h";
    /// distance from the crest
    distance: Length as Distance = "x";
    /// height above the ground
    above: Length = "z";
    factor "K_zt": f64 as Coefficient
}
impl Ground {
    /// Works the three factors, then the whole.
    ///
    /// # Errors
    /// If the height or the half-length is not above 0, or a distance is below 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { form, reach, decay, height, half_length, distance, above } = self;
        let (some, none, most) =
            (Length::from_si(f64::MIN_POSITIVE), Length::from_si(0.0), Length::from_si(f64::MAX));
        within("height of the ground", FIGURE, height, some, most)?;
        within("half-length", FIGURE, half_length, some, most)?;
        within("distance from the crest", FIGURE, distance, none, most)?;
        within("height above the ground", FIGURE, above, none, most)?;
        let steepness = Steepness { height, half_length }.work(ledger);
        let half_length = HalfLength { height, half_length }.work(ledger);
        let crest = CrestFactor { form, steepness }.work(ledger);
        let distance = DistanceFactor { distance, reach, half_length }.work(ledger);
        let height = HeightFactor { decay, height: above, half_length }.work(ledger);
        let factor = TopographicFactor { crest, distance, height }.work(ledger);
        Ok(self.keep(ledger, factor))
    }
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<Steepness>(),
    Listed::of::<HalfLength>(),
    Listed::of::<CrestFactor>(),
    Listed::of::<DistanceFactor>(),
    Listed::of::<HeightFactor>(),
    Listed::of::<TopographicFactor>(),
    Listed::of::<Ground>(),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::metres;
    use crate::workings::Blank;
    use proptest::prelude::*;

    /// A ridge in open country.
    fn ridge(height: f64, half_length: f64, distance: f64, above: f64) -> Ground {
        Ground {
            form: 1.45,
            reach: 1.5,
            decay: 3.0,
            height: metres(height),
            half_length: metres(half_length),
            distance: metres(distance),
            above: metres(above),
        }
    }

    fn factor(ground: Ground) -> f64 {
        ground.work(&mut Blank).unwrap()
    }

    #[test]
    fn on_the_crest_of_a_steep_ridge_the_pressure_is_three_times_that_of_the_plain() {
        assert!((factor(ridge(10.0, 20.0, 0.0, 0.0)) - 1.725_f64.powi(2)).abs() < 1e-12);
        assert_eq!(factor(ridge(10.0, 20.0, 30.0, 0.0)), 1.0);
    }

    #[test]
    fn ground_steeper_than_a_half_counts_as_a_half_with_its_length_drawn_out() {
        assert!((factor(ridge(10.0, 5.0, 6.0, 2.0)) - factor(ridge(10.0, 20.0, 6.0, 2.0))).abs() < 1e-12);
    }

    #[test]
    fn no_ground_and_no_length_are_refused() {
        for wrong in [ridge(0.0, 20.0, 0.0, 0.0), ridge(10.0, 0.0, 0.0, 0.0), ridge(10.0, 20.0, -1.0, 0.0)] {
            assert!(wrong.work(&mut Blank).is_err());
        }
    }

    proptest! {
        #[test]
        fn further_and_higher_is_never_more(
            height in 1.0..50.0_f64, half_length in 1.0..200.0_f64, distance in 0.0..400.0_f64, above in 0.0..30.0_f64
        ) {
            let here = factor(ridge(height, half_length, distance, above));
            prop_assert!(here >= 1.0);
            prop_assert!(factor(ridge(height, half_length, distance + 1.0, above)) <= here);
            prop_assert!(factor(ridge(height, half_length, distance, above + 1.0)) <= here);
        }
    }
}
