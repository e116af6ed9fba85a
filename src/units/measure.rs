//! How each kind of figure is read and written in either system.

use super::unit::{Dimension, Unit};
use super::write;

/// The system in which results are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum System {
    /// Feet, inches, pounds-force, miles an hour.
    #[default]
    Us,
    /// Metres, millimetres, newtons, metres a second.
    Si,
}

impl System {
    /// The name as a survey writes it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Us => "us",
            Self::Si => "si",
        }
    }
}

/// How a figure is read and written: two lengths may be of one type and yet one stands in inches, the other
/// in feet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// A pure number.
    Ratio,
    /// A pure number to more digits, for coefficients.
    Coefficient,
    /// A share, read and written in per cent.
    Percent,
    /// A height, spacing or run, in feet and inches or metres.
    Length,
    /// A length along a calculation, in decimal feet or metres.
    Distance,
    /// A diameter, wall or wire, in inches or millimetres.
    Small,
    /// Height above the sea.
    Elevation,
    /// A speed.
    Speed,
    /// A pressure of wind.
    Pressure,
    /// A stress or strength of material.
    Stress,
    /// A force.
    Force,
    /// A bending moment.
    Moment,
    /// A force per length.
    LineLoad,
    /// An area of a section.
    Area,
    /// An area of a fence.
    LargeArea,
    /// A section modulus.
    SectionModulus,
    /// A second moment of area.
    SecondMoment,
    /// One over a length.
    PerLength,
    /// Pressure per depth.
    PressurePerDepth,
    /// Pressure per speed squared.
    PressurePerSpeedSquared,
    /// A time over which a wind is averaged.
    Time,
    /// A return period or a span of years, counted in years.
    Years,
    /// An angle.
    Angle,
    /// Air that passes a cloth under a test pressure, volume for each area and time.
    AirPermeability,
    /// A frequency.
    Frequency,
    /// An acceleration.
    Acceleration,
    /// A moment for each radian turned.
    RotationalStiffness,
    /// Weight of cloth for each area.
    WeightPerArea,
    /// A weight to be carried.
    Weight,
}

impl Measure {
    /// What is measured.
    #[must_use]
    pub const fn dimension(self) -> Dimension {
        match self {
            Self::Ratio | Self::Coefficient | Self::Percent => Dimension::Ratio,
            Self::Length | Self::Distance | Self::Small | Self::Elevation => Dimension::Length,
            Self::Speed => Dimension::Speed,
            Self::Pressure | Self::Stress => Dimension::Pressure,
            Self::Force => Dimension::Force,
            Self::Moment => Dimension::Moment,
            Self::LineLoad => Dimension::LineLoad,
            Self::Area | Self::LargeArea => Dimension::Area,
            Self::SectionModulus => Dimension::SectionModulus,
            Self::SecondMoment => Dimension::SecondMoment,
            Self::PerLength => Dimension::PerLength,
            Self::PressurePerDepth => Dimension::PressurePerDepth,
            Self::PressurePerSpeedSquared => Dimension::PressurePerSpeedSquared,
            Self::Time => Dimension::Time,
            Self::Years => Dimension::Years,
            Self::Angle => Dimension::Angle,
            Self::AirPermeability => Dimension::AirPermeability,
            Self::Frequency => Dimension::Frequency,
            Self::Acceleration => Dimension::Acceleration,
            Self::RotationalStiffness => Dimension::RotationalStiffness,
            Self::WeightPerArea => Dimension::WeightPerArea,
            Self::Weight => Dimension::Force,
        }
    }

    /// The symbol of the unit and the decimals printed in one system.
    #[must_use]
    pub const fn printed(self, system: System) -> (&'static str, usize) {
        match (self, system) {
            (Self::Ratio, _) => ("", 3),
            (Self::Coefficient, _) => ("", 4),
            (Self::Percent, _) => ("%", 1),
            (Self::Length, System::Us) => ("ft", 2),
            (Self::Length, System::Si) => ("m", 3),
            (Self::Distance, System::Us) => ("ft", 3),
            (Self::Distance, System::Si) => ("m", 4),
            (Self::Small, System::Us) => ("in", 4),
            (Self::Small, System::Si) => ("mm", 2),
            (Self::Elevation, System::Us) => ("ft", 0),
            (Self::Elevation, System::Si) => ("m", 0),
            (Self::Speed, System::Us) => ("mph", 1),
            (Self::Speed, System::Si) => ("m/s", 1),
            (Self::Pressure, System::Us) => ("psf", 3),
            (Self::Pressure, System::Si) => ("Pa", 1),
            (Self::Stress, System::Us) => ("ksi", 2),
            (Self::Stress, System::Si) => ("MPa", 1),
            (Self::Force, System::Us) => ("lbf", 1),
            (Self::Force, System::Si) => ("N", 1),
            (Self::Moment, System::Us) => ("lb-ft", 1),
            (Self::Moment, System::Si) => ("N m", 1),
            (Self::LineLoad, System::Us) => ("lb/ft", 2),
            (Self::LineLoad, System::Si) => ("N/m", 1),
            (Self::Area, System::Us) => ("in²", 4),
            (Self::Area, System::Si) => ("mm²", 1),
            (Self::LargeArea, System::Us) => ("ft²", 2),
            (Self::LargeArea, System::Si) => ("m²", 3),
            (Self::SectionModulus, System::Us) => ("in³", 4),
            (Self::SectionModulus, System::Si) => ("mm³", 0),
            (Self::SecondMoment, System::Us) => ("in⁴", 4),
            (Self::SecondMoment, System::Si) => ("mm⁴", 0),
            (Self::PerLength, System::Us) => ("/ft", 7),
            (Self::PerLength, System::Si) => ("/m", 7),
            (Self::PressurePerDepth, System::Us) => ("psf/ft", 1),
            (Self::PressurePerDepth, System::Si) => ("kPa/m", 2),
            (Self::PressurePerSpeedSquared, System::Us) => ("psf/mph²", 5),
            (Self::PressurePerSpeedSquared, System::Si) => ("Pa/(m/s)²", 4),
            (Self::Time, _) => ("s", 2),
            (Self::Years, _) => ("years", 2),
            (Self::Angle, _) => ("°", 1),
            (Self::AirPermeability, System::Us) => ("cfm/ft²", 0),
            (Self::AirPermeability, System::Si) => ("L/(m² s)", 0),
            (Self::Frequency, _) => ("Hz", 3),
            (Self::Acceleration, System::Us) => ("ft/s²", 3),
            (Self::Acceleration, System::Si) => ("m/s²", 4),
            (Self::RotationalStiffness, System::Us) => ("lb-ft/rad", 0),
            (Self::RotationalStiffness, System::Si) => ("N m/rad", 0),
            (Self::WeightPerArea, System::Us) => ("oz/yd²", 1),
            (Self::WeightPerArea, System::Si) => ("g/m²", 0),
            (Self::Weight, System::Us) => ("lbf", 0),
            (Self::Weight, System::Si) => ("kgf", 0),
        }
    }

    /// The figure in the system's unit, without the unit.
    #[must_use]
    pub fn in_unit(self, si: f64, system: System) -> f64 {
        let (symbol, _) = self.printed(system);
        Unit::named(symbol).map_or(si, |unit| si / unit.si)
    }

    /// The figure with its unit, as a reader sees it.
    #[must_use]
    pub fn write(self, si: f64, system: System) -> String {
        let (symbol, decimals) = self.printed(system);
        let figure = self.in_unit(si, system);
        match self {
            Self::Ratio | Self::Coefficient => write::number(figure, decimals),
            Self::Percent => format!("{} %", write::trimmed(figure, decimals)),
            Self::Length if system == System::Us => write::feet_and_inches(figure),
            Self::Length
            | Self::Small
            | Self::PerLength
            | Self::PressurePerSpeedSquared
            | Self::Time
            | Self::Years
            | Self::Frequency => format!("{} {symbol}", write::trimmed(figure, decimals)),
            Self::Angle => format!("{}{symbol}", write::trimmed(figure, decimals)),
            _ => format!("{} {symbol}", write::number(figure, decimals)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::read;

    /// Each kind of figure, what it is in SI units, and its text in either system, worked by hand.
    const WRITTEN: &[(Measure, f64, &str, &str)] = &[
        (Measure::Ratio, 0.123_456, "0.123", "0.123"),
        (Measure::Coefficient, 0.123_456, "0.1235", "0.1235"),
        (Measure::Percent, 0.123_456, "12.3 %", "12.3 %"),
        (Measure::Percent, 0.12, "12 %", "12 %"),
        (Measure::Length, 3.048, "10 ft", "3.048 m"),
        (Measure::Length, 3.2004, "10 ft 6 in", "3.2 m"),
        (Measure::Distance, 3.2004, "10.500 ft", "3.2004 m"),
        (Measure::Small, 0.005_156_2, "0.203 in", "5.16 mm"),
        (Measure::Elevation, 1609.344, "5280 ft", "1609 m"),
        (Measure::Speed, 44.704, "100.0 mph", "44.7 m/s"),
        (Measure::Pressure, 478.802_589_803, "10.000 psf", "478.8 Pa"),
        (Measure::Stress, 206_842_718.795, "30.00 ksi", "206.8 MPa"),
        (Measure::Force, 4_448.221_615, "1000.0 lbf", "4448.2 N"),
        (Measure::Moment, 1_355.817_948, "1000.0 lb-ft", "1355.8 N m"),
        (Measure::LineLoad, 1_459.390_294, "100.00 lb/ft", "1459.4 N/m"),
        (Measure::Area, 0.001_290_32, "2.0000 in²", "1290.3 mm²"),
        (Measure::LargeArea, 9.290_304, "100.00 ft²", "9.290 m²"),
        (Measure::SectionModulus, 1.638_706_4e-5, "1.0000 in³", "16,387 mm³"),
        (Measure::SecondMoment, 4.162_314_256e-7, "1.0000 in⁴", "416,231 mm⁴"),
        (Measure::PerLength, 1.25, "0.381 /ft", "1.25 /m"),
        (Measure::PressurePerDepth, 15_708.746_385, "100.0 psf/ft", "15.71 kPa/m"),
        (Measure::PressurePerSpeedSquared, 0.613_343_387, "0.00256 psf/mph²", "0.6133 Pa/(m/s)²"),
        (Measure::Time, 3.0, "3 s", "3 s"),
        (Measure::Years, 700.0, "700 years", "700 years"),
        (Measure::Angle, std::f64::consts::FRAC_PI_4, "45°", "45°"),
        (Measure::AirPermeability, 0.508, "100 cfm/ft²", "508 L/(m² s)"),
        (Measure::WeightPerArea, 1.961_33, "5.9 oz/yd²", "200 g/m²"),
        (Measure::Weight, 98.0665, "22 lbf", "10 kgf"),
        (Measure::Frequency, 1.25, "1.25 Hz", "1.25 Hz"),
        (Measure::Acceleration, 3.048, "10.000 ft/s²", "3.0480 m/s²"),
        (Measure::RotationalStiffness, 13_558.179_48, "10,000 lb-ft/rad", "13,558 N m/rad"),
    ];

    #[test]
    fn each_kind_of_figure_is_written_as_either_system_writes_it() {
        for (measure, si, us, metric) in WRITTEN {
            assert_eq!(measure.write(*si, System::Us), *us);
            assert_eq!(measure.write(*si, System::Si), *metric);
        }
    }

    #[test]
    fn what_is_written_is_read_back_but_for_the_digits_left_out() {
        for (measure, si, us, metric) in WRITTEN {
            for text in [us, metric] {
                let back = read(&text.replace(',', ""), measure.dimension()).unwrap();
                assert!((back / si - 1.0).abs() < 5e-3, "{text} is {back}, not {si}");
            }
        }
    }

    #[test]
    fn a_figure_in_its_unit_stands_without_the_unit() {
        assert!((Measure::Speed.in_unit(44.704, System::Us) - 100.0).abs() < 1e-12);
        assert!((Measure::Small.in_unit(0.0254, System::Si) - 25.4).abs() < 1e-12);
        assert_eq!(Measure::Ratio.in_unit(0.5, System::Us), 0.5);
    }

    #[test]
    fn a_system_is_named_as_a_survey_names_it() {
        assert_eq!([System::Us, System::Si].map(System::key), ["us", "si"]);
        assert_eq!(System::default(), System::Us);
    }
}
