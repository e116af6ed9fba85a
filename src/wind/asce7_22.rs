//! ASCE/SEI 7-22: velocity pressure with its own exposure constants and K_d beside it; walls, open frames and least
//! pressure as 7-16 prints them.
//!
//! That Fig. 29.3-1 is the same is known from secondary transcriptions only.

use super::asce7_16::hill::{PLACE, Topography};
use super::asce7_16::{
    self, CONSTANT, DIRECTIONALITY, ELEVATION_RATE, Edition, ElevationFactor, Exposure, LEAST_HEIGHT, Places,
};
use super::{Case, Event, Level, OnHill, Panel, Pressures, SiteKey, SiteValues, Strip, WindError};
use crate::rule;
use crate::source::{Clause, Document, Seen};
use crate::units::{
    Frequency, Length, Powers, Pressure, PressurePerSpeedSquared, Pure, Quantity, Velocity, feet,
};
use crate::workings::{Ledger, Listed, within};

/// The name in a survey.
pub const KEY: &str = "asce7-22";
/// What the speed is.
pub const SPEED_IS: &str = "3-second gust, 33 ft up over open ground, from the map of the risk category";
/// Strength level.
pub const LEVEL: Level = Level::Strength;
/// The case of open strips.
pub const OPEN_PLACE: &str = "Fig. 29.4-2 open frame";
/// Where the least pressure stands.
pub const LEAST_CLAUSE: Clause = DOCUMENT.at("29.7").from_memory();
/// From which first frequency on a structure is rigid and answers gusts by their factor alone: 26.2, "rigid", and 26.11 (from memory).
pub const RIGID_FROM: Frequency = asce7_16::RIGID_FROM;

/// The document.
pub static DOCUMENT: Document = Document {
    short: "ASCE 7-22",
    title: "ASCE/SEI 7-22, Minimum Design Loads and Associated Criteria for Buildings and Other Structures",
    seen: Seen::SecondHand("public building-load modules for this edition, one of them with tests"),
};

rule! {
    /// Velocity pressure exposure coefficient.
    ExposureCoefficient, "asce7-22/exposure-coefficient", DOCUMENT.at("26.10.1, Table 26.10-1, note 1");
    /// height above ground, not below 15 ft
    height: Length as Distance = "z";
    /// gradient height of the exposure (Table 26.11-1)
    gradient_height: Length as Elevation = "z_g";
    /// power of the exposure (Table 26.11-1)
    power: f64 = "α";
    coefficient "K_z": f64 as Coefficient = 2.41 * (height / gradient_height).pure().powf(2.0 / power)
}
rule! {
    /// Velocity pressure, without directionality.
    VelocityPressure, "asce7-22/velocity-pressure", DOCUMENT.at("26.10.2, Eq. 26.10-1");
    /// constant of the equation
    constant: PressurePerSpeedSquared = "c";
    /// velocity pressure exposure coefficient
    exposure_coefficient: f64 as Coefficient = "K_z";
    /// topographic factor
    topographic_factor: f64 as Coefficient = "K_zt";
    /// ground elevation factor
    elevation_factor: f64 as Coefficient = "K_e";
    /// basic wind speed
    speed: Velocity = "V";
    pressure "q": Pressure = constant * exposure_coefficient * topographic_factor * elevation_factor * speed.squared()
}
rule! {
    /// Velocity pressure with the directionality that this edition puts into the force.
    DirectedPressure, "asce7-22/directed-pressure", DOCUMENT.at("29.3.1, Eq. 29.3-1, and 29.4, Eq. 29.4-1").from_memory();
    /// velocity pressure
    velocity_pressure: Pressure = "q";
    /// wind directionality factor
    directionality: f64 = "K_d";
    pressure "q K_d": Pressure = velocity_pressure * directionality
}

/// The rules this edition makes known by name beside those of 7-16.
pub const RULES: &[Listed] = &[
    Listed::of::<ExposureCoefficient>(),
    Listed::of::<VelocityPressure>(),
    Listed::of::<DirectedPressure>(),
];

/// The keys this edition reads from a site.
pub const SITE_KEYS: &[SiteKey] = asce7_16::SITE_KEYS;

/// Solidities at which loads may step.
pub const SOLIDITY_STEPS: &[f64] = asce7_16::SOLIDITY_STEPS;

/// Power and gradient height, Table 26.11-1. One library has the power 7.0 for exposure B; with 7.5 the coefficient
/// at 15 ft is the 0.57 of the table.
const fn constants(exposure: Exposure) -> (f64, Length) {
    match exposure {
        Exposure::B => (7.5, feet(3280.0)),
        Exposure::C => (9.8, feet(2460.0)),
        Exposure::D => (11.5, feet(1935.0)),
    }
}

/// The return period of the map of a risk category.
#[must_use]
pub fn design_return_period(risk_category: &str) -> Option<f64> {
    asce7_16::design_return_period(risk_category)
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
    /// Height of the ground above the sea.
    pub ground_elevation: Length,
}

impl Site {
    /// A site from the values of [`SITE_KEYS`], in their order.
    #[must_use]
    pub fn new(values: &SiteValues) -> Self {
        let asce7_16::Site { wind_speed, exposure, topography, ground_elevation } =
            asce7_16::Site::new(values);
        Self { wind_speed, exposure, topography, ground_elevation }
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
        asce7_16::open_pressure(self, strip, case, event, ledger)
    }
}

impl Edition for Site {
    const PLACES: &'static Places = &Places {
        square: "Fig. 29.3-1 Case A",
        skewed: "Fig. 29.3-1 Case B",
        zoned: "Fig. 29.3-1 Case C",
        open: OPEN_PLACE,
        dense: "Fig. 29.4-2 open frame at 0.70",
        least: "29.7 least pressure",
    };

    fn velocity_pressure(
        &self,
        height: Length,
        event: Event,
        ledger: &mut impl Ledger,
    ) -> Result<Pressure, WindError> {
        let (power, gradient_height) = constants(self.exposure);
        within("height", DOCUMENT.at("26.11, Table 26.11-1"), height, Length::from_si(0.0), gradient_height)?;
        let topographic_factor = self.topography.factor(self.exposure, height, ledger)?;
        let height = if height < LEAST_HEIGHT { LEAST_HEIGHT } else { height };
        let exposure_coefficient = ExposureCoefficient { height, gradient_height, power }.work(ledger);
        let elevation_factor =
            ElevationFactor { elevation: self.ground_elevation, rate: ELEVATION_RATE }.work(ledger);
        let (speed, directionality) = asce7_16::speed_of(event, self.wind_speed, ledger)?;
        let velocity_pressure = VelocityPressure {
            constant: CONSTANT,
            exposure_coefficient,
            topographic_factor,
            elevation_factor,
            speed,
        }
        .work(ledger);
        Ok(DirectedPressure { velocity_pressure, directionality }.work(ledger))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{mph, psf};
    use crate::workings::Blank;

    #[test]
    fn the_worked_vector_of_a_solid_screen_by_this_edition() {
        let site = Site {
            wind_speed: Some(mph(115.0)),
            exposure: Exposure::C,
            topography: Topography::Factor(1.0),
            ground_elevation: feet(0.0),
        };
        let none = feet(0.0);
        let panel = Panel {
            bottom: none,
            height: feet(10.0),
            length: feet(200.0),
            solidity: 1.0,
            return_at_start: none,
            return_at_finish: none,
        };
        let square = site.pressures(&panel, Case::Square, Event::Design, &mut Blank).unwrap().unwrap();
        assert!(((square.zones[0].pressure_from / psf(1.0)).pure() - 27.066).abs() < 5e-4);
    }

    #[test]
    fn exposure_coefficients_round_to_those_reported_to_match_the_table() {
        for (exposure, height, printed) in
            [(Exposure::B, 15.0, 0.57), (Exposure::C, 15.0, 0.85), (Exposure::C, 30.0, 0.98)]
        {
            let (power, gradient_height) = constants(exposure);
            let ours = ExposureCoefficient { height: feet(height), gradient_height, power }.work(&mut Blank);
            assert!((ours - printed).abs() <= 0.005, "{ours} is not {printed}");
        }
    }
}
