//! ASCE/SEI 7-10: velocity pressure without a ground elevation factor; walls, open frames and least pressure as 7-16
//! prints them, in other places.

use super::asce7_16::hill::{FACTOR_KEY, HILL_KEY, PLACE, Topography};
use super::asce7_16::{
    self, CONSTANT, DIRECTIONALITY, EXPOSURE_KEY, Edition, Exposure, LEAST_HEIGHT, Places,
};
use super::{Case, Event, Level, OnHill, Panel, Pressures, SiteKey, SiteValues, Strip, WindError};
use crate::rule;
use crate::source::{Clause, Document, Seen};
use crate::units::{Frequency, Length, Powers, Pressure, PressurePerSpeedSquared, Pure, Quantity, Velocity};
use crate::workings::{Entry, Ledger, Listed, within};

/// The name in a survey.
pub const KEY: &str = "asce7-10";
/// What the speed is.
pub const SPEED_IS: &str = "3-second gust, 33 ft up over open ground, from the map of the risk category";
/// Strength level.
pub const LEVEL: Level = Level::Strength;
/// The case of open strips.
pub const OPEN_PLACE: &str = "Fig. 29.5-2 open frame";
/// Where the least pressure stands.
pub const LEAST_CLAUSE: Clause = DOCUMENT.at("29.8").from_memory();
/// From which first frequency on a structure is rigid and answers gusts by their factor alone: 26.2, "rigid", and 26.9 (from memory).
pub const RIGID_FROM: Frequency = asce7_16::RIGID_FROM;

/// The document.
pub static DOCUMENT: Document = Document {
    short: "ASCE 7-10",
    title: "ASCE/SEI 7-10, Minimum Design Loads for Buildings and Other Structures",
    seen: Seen::SecondHand("a general structural library's tables of this edition and permit documents"),
};

rule! {
    /// Velocity pressure exposure coefficient.
    ExposureCoefficient, "asce7-10/exposure-coefficient", DOCUMENT.at("29.3.1, Table 29.3-1, note 1");
    /// height above ground, not below 15 ft
    height: Length as Distance = "z";
    /// gradient height of the exposure (Table 26.9-1)
    gradient_height: Length as Elevation = "z_g";
    /// power of the exposure (Table 26.9-1)
    power: f64 = "α";
    coefficient "K_z": f64 as Coefficient = 2.01 * (height / gradient_height).pure().powf(2.0 / power)
}
rule! {
    /// Velocity pressure.
    VelocityPressure, "asce7-10/velocity-pressure", DOCUMENT.at("29.3.2, Eq. 29.3-1").from_memory();
    /// constant of the equation
    constant: PressurePerSpeedSquared = "c";
    /// velocity pressure exposure coefficient
    exposure_coefficient: f64 as Coefficient = "K_z";
    /// topographic factor
    topographic_factor: f64 as Coefficient = "K_zt";
    /// wind directionality factor
    directionality: f64 = "K_d";
    /// basic wind speed
    speed: Velocity = "V";
    pressure "q": Pressure = constant * exposure_coefficient * topographic_factor * directionality * speed.squared()
}

/// The rules this edition makes known by name beside those of 7-16.
pub const RULES: &[Listed] = &[Listed::of::<ExposureCoefficient>(), Listed::of::<VelocityPressure>()];

/// The keys this edition reads from a site: those of 7-16 but the ground elevation, which it does not know.
pub const SITE_KEYS: &[SiteKey] = &[EXPOSURE_KEY, FACTOR_KEY, HILL_KEY];

/// Solidities at which loads may step.
pub const SOLIDITY_STEPS: &[f64] = asce7_16::SOLIDITY_STEPS;

/// The return period of the map of a risk category; III and IV share one.
#[must_use]
pub fn design_return_period(risk_category: &str) -> Option<f64> {
    asce7_16::design_return_period(risk_category).map(|years| years.min(1700.0))
}

/// A site by this edition.
#[derive(Debug, Clone, PartialEq)]
pub struct Site {
    /// Basic wind speed, if known.
    pub wind_speed: Option<Velocity>,
    /// Upwind terrain.
    pub exposure: Exposure,
    /// What the ground does to the wind.
    pub topography: Topography,
}

impl Site {
    /// A site from the values of [`SITE_KEYS`], in their order, those of a table in its place.
    #[must_use]
    pub fn new(values: &SiteValues) -> Self {
        Self {
            wind_speed: values.wind_speed,
            exposure: Exposure::ALL[values.choice(0).min(2)],
            topography: Topography::of(values, 1, 2),
        }
    }

    /// K_d, which a gust taken as it is does without.
    #[must_use]
    pub fn direction_factor(&self) -> f64 {
        DIRECTIONALITY.value
    }

    /// What a hill does at a height above the ground.
    #[must_use]
    pub fn on_hill(&self, height: Length) -> Option<OnHill> {
        self.topography.told(self.exposure, height, DOCUMENT.at(PLACE))
    }

    /// The pressures on a panel in one case.
    ///
    /// # Errors
    /// Outside the range of the figure, or without a speed for the design event.
    pub fn pressures(
        &self,
        panel: &Panel,
        case: Case,
        event: Event,
        ledger: &mut impl Ledger,
    ) -> Result<Option<Pressures>, WindError> {
        reprinted(ledger);
        asce7_16::pressures(self, panel, case, event, ledger)
    }

    /// The pressure on the solid area of wires, rails and posts.
    ///
    /// # Errors
    /// Outside the range of the table, or without a speed for the design event.
    pub fn open_pressure(
        &self,
        strip: &Strip,
        case: Case,
        event: Event,
        ledger: &mut impl Ledger,
    ) -> Result<Option<Pressure>, WindError> {
        reprinted(ledger);
        asce7_16::open_pressure(self, strip, case, event, ledger)
    }
}

/// Says where this edition prints what the steps cite by 7-16.
fn reprinted(ledger: &mut impl Ledger) {
    ledger.write(|| {
        Entry::Heading(
            "ASCE 7-10 prints in 29.4.1, Fig. 29.4-1 (walls), in 29.5, Fig. 29.5-2 (open frames, from memory), in 29.8 \
             (least pressure, from memory) and, under the same number, in 26.8, Fig. 26.8-1 (hills) what the steps cite \
             by ASCE 7-16"
                .to_owned(),
        )
    });
}

impl Edition for Site {
    const PLACES: &'static Places = &Places {
        square: "Fig. 29.4-1 Case A",
        skewed: "Fig. 29.4-1 Case B",
        zoned: "Fig. 29.4-1 Case C",
        open: OPEN_PLACE,
        dense: "Fig. 29.5-2 open frame at 0.70",
        least: "29.8 least pressure",
    };

    fn velocity_pressure(
        &self,
        height: Length,
        event: Event,
        ledger: &mut impl Ledger,
    ) -> Result<Pressure, WindError> {
        let (power, gradient_height) = self.exposure.constants();
        within("height", DOCUMENT.at("26.9, Table 26.9-1"), height, Length::from_si(0.0), gradient_height)?;
        let topographic_factor = self.topography.factor(self.exposure, height, ledger)?;
        let height = if height < LEAST_HEIGHT { LEAST_HEIGHT } else { height };
        let exposure_coefficient = ExposureCoefficient { height, gradient_height, power }.work(ledger);
        let (speed, directionality) = asce7_16::speed_of(event, self.wind_speed, ledger)?;
        Ok(VelocityPressure {
            constant: CONSTANT,
            exposure_coefficient,
            topographic_factor,
            directionality,
            speed,
        }
        .work(ledger))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{feet, mph};
    use crate::workings::Blank;

    #[test]
    fn at_sea_level_this_edition_and_7_16_have_one_velocity_pressure() {
        let speed = Some(mph(115.0));
        let ours = Site { wind_speed: speed, exposure: Exposure::C, topography: Topography::Factor(1.0) };
        let later = asce7_16::Site {
            wind_speed: speed,
            exposure: Exposure::C,
            topography: Topography::Factor(1.0),
            ground_elevation: feet(0.0),
        };
        for height in [5.0, 15.0, 40.0] {
            let ours = ours.velocity_pressure(feet(height), Event::Design, &mut Blank).unwrap();
            let later = later.velocity_pressure(feet(height), Event::Design, &mut Blank).unwrap();
            assert!((ours / later).pure() == 1.0);
        }
        assert_eq!(design_return_period("IV"), Some(1700.0));
    }
}
