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
