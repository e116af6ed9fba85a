//! The gust factor of a structure that sways: what gusts count above 0.85 where the first frequency is below 1 Hz.
//!
//! The check of a fence takes 0.85 and says that its frequency was not checked; these rules are for the engineer who has
//! a frequency and a damping. The constants of the terrain are given with each use, because editions print them in
//! their own units.

use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{Frequency, Length, Powers, Pure, Quantity, Time, Velocity, hertz, metres, seconds};
use crate::workings::{Ledger, Listed, OutOfRange, within};

static DOCUMENT: Document = Document {
    short: "ASCE 7-05",
    title: "ASCE/SEI 7-05, Minimum Design Loads for Buildings and Other Structures, 6.5.8; ASCE 7-16 has it in 26.11",
    seen: Seen::SecondHand("calculation sheets that print its equations' numbers and results"),
};
const TURBULENCE: Clause = DOCUMENT.at("6.5.8.1, Eq. 6-5");
const FLEXIBLE: Clause = DOCUMENT.at("6.5.8.2, Eq. 6-8").from_memory();

const REFERENCE: Stated<Length> = Stated {
    value: metres(10.0),
    because: "ASCE 7-05 6.5.8: height the terrain's constants are given for (33 ft)",
};
const PEAK: Stated<f64> = Stated {
    value: 3.4,
    because: "ASCE 7-05 6.5.8.1: peak factor of the background and of the wind, from memory",
};
const HOUR: Stated<Time> = Stated { value: seconds(3600.0), because: "ASCE 7-05 6.5.8.2, Eq. 6-9: one hour" };

rule! {
    /// Height at which the turbulence is taken.
    EquivalentHeight, "gust/equivalent-height", DOCUMENT.at("6.5.8.1");
    /// height of the structure
    height: Length = "h";
    /// least height of the terrain
    least: Length = "z_min";
    equivalent "z": Length = (0.6 * height).max(least)
}
rule! {
    /// Intensity of turbulence.
    TurbulenceIntensity, "gust/turbulence-intensity", TURBULENCE;
    /// factor of the terrain
    factor: f64 = "c";
    /// height the constants are given for
    reference: Length = "z_10";
    /// equivalent height
    equivalent: Length = "z";
    intensity "I_z": f64 as Coefficient = factor * (reference / equivalent).pure().powf(1.0 / 6.0)
}
rule! {
    /// Length scale of turbulence.
    LengthScale, "gust/length-scale", DOCUMENT.at("6.5.8.1, Eq. 6-7");
    /// length of the terrain
    length: Length as Distance = "l";
    /// equivalent height
    equivalent: Length = "z";
    /// height the constants are given for
    reference: Length = "z_10";
    /// power of the terrain
    power: f64 = "p_l";
    scale "L_z": Length as Distance = length * (equivalent / reference).pure().powf(power)
}
rule! {
    /// Mean wind of an hour at the equivalent height, from the basic 3-second gust.
    MeanHourlySpeed, "gust/mean-hourly-speed", DOCUMENT.at("6.5.8.2, Eq. 6-14");
    /// factor of the terrain
    factor: f64 = "b";
    /// equivalent height
    equivalent: Length = "z";
    /// height the constants are given for
    reference: Length = "z_10";
    /// power of the terrain
    power: f64 = "a";
    /// basic wind speed
    speed: Velocity = "V";
    mean "V_z": Velocity = factor * (equivalent / reference).pure().powf(power) * speed
}
rule! {
    /// Background response: gusts do not strike the whole structure at once.
    BackgroundResponse, "gust/background-response", DOCUMENT.at("6.5.8.1, Eq. 6-6").from_memory();
    /// breadth across the wind
    breadth: Length = "B";
    /// height of the structure
    height: Length = "h";
    /// length scale of turbulence
    scale: Length as Distance = "L_z";
    response "Q": f64 as Coefficient = (1.0 / (1.0 + 0.63 * ((breadth + height) / scale).pure().powf(0.63))).sqrt()
}
rule! {
    /// Frequency of the structure over that of the gusts.
    ReducedFrequency, "gust/reduced-frequency", DOCUMENT.at("6.5.8.2, Eq. 6-12");
    /// first natural frequency
    frequency: Frequency = "n_1";
    /// length scale of turbulence
    scale: Length as Distance = "L_z";
    /// mean wind of an hour
    mean: Velocity = "V_z";
    reduced "N_1": f64 as Coefficient = (frequency * scale / mean).pure()
}
rule! {
    /// Peak factor of the resonant response.
    ///
    /// # Range
    /// More than one sway an hour.
    ResonantPeak, "gust/resonant-peak-factor", DOCUMENT.at("6.5.8.2, Eq. 6-9");
    /// first natural frequency
    frequency: Frequency = "n_1";
    /// time in which the peak comes
    time: Time = "T";
    peak "g_R": f64 as Coefficient = (2.0 * (frequency * time).pure().ln()).sqrt()
        + 0.577 / (2.0 * (frequency * time).pure().ln()).sqrt()
}
rule! {
    /// How much of the gusts' energy lies at the structure's frequency.
    Spectrum, "gust/spectrum", DOCUMENT.at("6.5.8.2, Eq. 6-11").from_memory();
    /// frequency of the structure over that of the gusts
    reduced: f64 as Coefficient = "N_1";
    spectrum "R_n": f64 as Coefficient = 7.47 * reduced / (1.0 + 10.3 * reduced).powf(5.0 / 3.0)
}
rule! {
    /// Size of the structure beside the gusts that shake it.
    SizeRatio, "gust/size-ratio", DOCUMENT.at("6.5.8.2, under Eq. 6-13").from_memory();
    /// 4.6 for height and breadth, 15.4 for depth along the wind
    factor: f64 = "f";
    /// first natural frequency
    frequency: Frequency = "n_1";
    /// height, breadth or depth
    size: Length = "b";
    /// mean wind of an hour
    mean: Velocity = "V_z";
    ratio "η": f64 as Coefficient = factor * (frequency * size / mean).pure()
}
rule! {
    /// How much of a gust counts over one size of the structure.
    ///
    /// # Range
    /// A size above 0, of which all counts.
    Admittance, "gust/admittance", DOCUMENT.at("6.5.8.2, Eq. 6-13").from_memory();
    /// size of the structure beside the gusts
    ratio: f64 as Coefficient = "η";
    admittance "R_l": f64 as Coefficient = 1.0 / ratio - 1.0 / (2.0 * ratio.squared()) * (1.0 - (-2.0 * ratio).exp())
}
rule! {
    /// Resonant response.
    ResonantResponse, "gust/resonant-response", DOCUMENT.at("6.5.8.2, Eq. 6-10").from_memory();
    /// damping, share of critical
    damping: f64 as Coefficient = "β";
    /// energy of the gusts at the structure's frequency
    spectrum: f64 as Coefficient = "R_n";
    /// what counts over the height
    over_height: f64 as Coefficient = "R_h";
    /// what counts over the breadth
    over_breadth: f64 as Coefficient = "R_B";
    /// what counts over the depth
    over_depth: f64 as Coefficient = "R_L";
    response "R": f64 as Coefficient =
        (1.0 / damping * spectrum * over_height * over_breadth * (0.53 + 0.47 * over_depth)).sqrt()
}
rule! {
    /// Gust factor of a structure that does not sway, by its size.
    RigidFactor, "gust/rigid-factor", DOCUMENT.at("6.5.8.1, Eq. 6-4").from_memory();
    /// peak factor of background and wind
    peak: f64 = "g_Q";
    /// intensity of turbulence
    intensity: f64 as Coefficient = "I_z";
    /// background response
    background: f64 as Coefficient = "Q";
    factor "G": f64 as Coefficient =
        0.925 * (1.0 + 1.7 * peak * intensity * background) / (1.0 + 1.7 * peak * intensity)
}
rule! {
    /// Gust factor of a structure that sways.
    FlexibleFactor, "gust/flexible-factor", FLEXIBLE;
    /// intensity of turbulence
    intensity: f64 as Coefficient = "I_z";
    /// peak factor of background and wind
    peak: f64 = "g_Q";
    /// background response
    background: f64 as Coefficient = "Q";
    /// peak factor of the resonant response
    resonant_peak: f64 as Coefficient = "g_R";
    /// resonant response
    resonant: f64 as Coefficient = "R";
    factor "G_f": f64 as Coefficient = 0.925
        * (1.0 + 1.7 * intensity * (peak.squared() * background.squared() + resonant_peak.squared() * resonant.squared()).sqrt())
        / (1.0 + 1.7 * peak * intensity)
}
rule! {
    /// Gust factor of a structure that sways, with every step before it.
    ///
    /// # Range
    /// First frequency up to 1 Hz; above, the code takes the structure as rigid.
    SwayingStructure, "gust/swaying-structure", FLEXIBLE;
    /// height of the structure
    height: Length = "h";
    /// breadth across the wind
    breadth: Length = "B";
    /// depth along the wind
    depth: Length = "L";
    /// first natural frequency
    frequency: Frequency = "n_1";
    /// damping, share of critical
    damping: f64 as Coefficient = "β";
    /// basic wind speed
    speed: Velocity = "V";
    /// terrain: factor of the mean wind
    mean_factor: f64 = "b";
    /// terrain: power of the mean wind
    mean_power: f64 = "a";
    /// terrain: factor of turbulence
    turbulence_factor: f64 = "c";
    /// terrain: length of turbulence
    length: Length as Distance = "l";
    /// terrain: power of that length
    length_power: f64 = "p_l";
    /// terrain: least height
    least: Length = "z_min";
    factor "G_f": f64 as Coefficient
}
impl SwayingStructure {
    /// Works the steps in their order.
    ///
    /// # Errors
    /// If a size, the damping or the speed is not above 0, or the frequency is not above 0 and up to 1 Hz.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { height, breadth, depth, frequency, damping, speed, .. } = self;
        let above = f64::MIN_POSITIVE;
        for (what, size) in
            [("height", height), ("breadth", breadth), ("depth", depth), ("least height", self.least)]
        {
            within(what, FLEXIBLE, size, Length::from_si(above), Length::from_si(f64::MAX))?;
        }
        within("damping", FLEXIBLE, damping, above, f64::MAX)?;
        within("basic wind speed", FLEXIBLE, speed, Velocity::from_si(above), Velocity::from_si(f64::MAX))?;
        within("first natural frequency", FLEXIBLE, frequency, SLOWEST, hertz(1.0))?;
        let reference = ledger.judge("z_10", REFERENCE);
        let peak = ledger.judge("g_Q", PEAK);
        let time = ledger.judge("T", HOUR);
        let equivalent = EquivalentHeight { height, least: self.least }.work(ledger);
        let intensity =
            TurbulenceIntensity { factor: self.turbulence_factor, reference, equivalent }.work(ledger);
        let scale =
            LengthScale { length: self.length, equivalent, reference, power: self.length_power }.work(ledger);
        let mean = MeanHourlySpeed {
            factor: self.mean_factor,
            equivalent,
            reference,
            power: self.mean_power,
            speed,
        }
        .work(ledger);
        let background = BackgroundResponse { breadth, height, scale }.work(ledger);
        let resonant_peak = ResonantPeak { frequency, time }.work(ledger);
        let reduced = ReducedFrequency { frequency, scale, mean }.work(ledger);
        let spectrum = Spectrum { reduced }.work(ledger);
        let mut counts = |factor, size| {
            let ratio = SizeRatio { factor, frequency, size, mean }.work(ledger);
            Admittance { ratio }.work(ledger)
        };
        let (over_height, over_breadth, over_depth) =
            (counts(4.6, height), counts(4.6, breadth), counts(15.4, depth));
        let resonant =
            ResonantResponse { damping, spectrum, over_height, over_breadth, over_depth }.work(ledger);
        let factor = FlexibleFactor { intensity, peak, background, resonant_peak, resonant }.work(ledger);
        Ok(self.keep(ledger, factor))
    }
}

/// Slower than any structure, and still more than one sway in the hour of the peak factor.
const SLOWEST: Frequency = hertz(1e-3);

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<EquivalentHeight>(),
    Listed::of::<TurbulenceIntensity>(),
    Listed::of::<LengthScale>(),
    Listed::of::<MeanHourlySpeed>(),
    Listed::of::<BackgroundResponse>(),
    Listed::of::<ReducedFrequency>(),
    Listed::of::<ResonantPeak>(),
    Listed::of::<Spectrum>(),
    Listed::of::<SizeRatio>(),
    Listed::of::<Admittance>(),
    Listed::of::<ResonantResponse>(),
    Listed::of::<RigidFactor>(),
    Listed::of::<FlexibleFactor>(),
    Listed::of::<SwayingStructure>(),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::metres_per_second;
    use crate::workings::Blank;
    use proptest::prelude::*;

    /// Open country with the constants of the metric print.
    fn structure(height: f64, breadth: f64, frequency: f64, damping: f64) -> SwayingStructure {
        SwayingStructure {
            height: metres(height),
            breadth: metres(breadth),
            depth: metres(0.1),
            frequency: hertz(frequency),
            damping,
            speed: metres_per_second(45.0),
            mean_factor: 0.65,
            mean_power: 0.1538,
            turbulence_factor: 0.20,
            length: metres(152.4),
            length_power: 0.2,
            least: metres(4.6),
        }
    }

    fn factor(structure: SwayingStructure) -> f64 {
        structure.work(&mut Blank).unwrap()
    }

    #[test]
    fn a_frequency_above_one_hertz_is_refused_with_the_clause() {
        let refused = structure(3.0, 10.0, 1.01, 0.01).work(&mut Blank).unwrap_err().to_string();
        assert!(refused.contains("first natural frequency 1.01 Hz is above 1 Hz"), "{refused}");
        assert!(refused.contains("Eq. 6-8"), "{refused}");
        for wrong in
            [structure(0.0, 1.0, 0.5, 0.01), structure(3.0, 1.0, 0.0, 0.01), structure(3.0, 1.0, 0.5, 0.0)]
        {
            assert!(wrong.work(&mut Blank).is_err());
        }
    }

    #[test]
    fn all_of_a_gust_counts_over_a_small_size() {
        let of = |ratio| Admittance { ratio }.work(&mut Blank);
        // The series begins 1 - 2η/3.
        assert!((of(1e-3) - (1.0 - 2e-3 / 3.0)).abs() < 1e-6);
        assert!((of(50.0) - (1.0 / 50.0 - 1.0 / 5000.0)).abs() < 1e-12);
    }

    proptest! {
        /// The admittance is the mean of a correlation that falls off as e^(-2x/b·η): a second way, by adding it up.
        #[test]
        fn the_admittance_is_what_a_falling_correlation_leaves(ratio in 0.05..8.0_f64) {
            let steps = 4000_u32;
            let sum: f64 = (0..steps)
                .map(|step| {
                    let x = (f64::from(step) + 0.5) / f64::from(steps);
                    2.0 * (1.0 - x) * (-2.0 * ratio * x).exp() / f64::from(steps)
                })
                .sum();
            let ours = Admittance { ratio }.work(&mut Blank);
            prop_assert!((ours / sum - 1.0).abs() < 1e-5);
        }

        #[test]
        fn more_damping_less_sway_and_a_structure_that_sways_is_no_lighter_than_a_rigid_one(
            height in 2.0..12.0_f64, breadth in 1.0..60.0_f64, frequency in 0.1..1.0_f64, damping in 0.005..0.2_f64
        ) {
            let given = structure(height, breadth, frequency, damping);
            let sways = factor(given);
            let damped = SwayingStructure { damping: damping * 1.1, ..given };
            prop_assert!(sways > factor(damped));
            let mut ledger = Vec::new();
            given.work(&mut ledger).unwrap();
            let of = |name: &str| {
                ledger.iter().rev().find_map(|entry| match entry {
                    crate::workings::Entry::Worked { card, result, .. } if card.name == name => Some(result.si),
                    _ => None,
                }).unwrap()
            };
            let rigid = RigidFactor {
                peak: 3.4,
                intensity: of("gust/turbulence-intensity"),
                background: of("gust/background-response"),
            };
            prop_assert!(sways > rigid.work(&mut Blank));
        }
    }
}
