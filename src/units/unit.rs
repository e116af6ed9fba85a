//! The units, exact to their definitions.

use std::f64::consts::PI;

/// What kind of quantity a unit measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Dimension {
    Ratio,
    Length,
    Area,
    SectionModulus,
    SecondMoment,
    PerLength,
    Speed,
    Force,
    Moment,
    Pressure,
    LineLoad,
    PressurePerDepth,
    PressurePerSpeedSquared,
    Time,
    Years,
    Angle,
    AirPermeability,
    Frequency,
    Acceleration,
    RotationalStiffness,
    WeightPerArea,
}

impl Dimension {
    /// The kind in words, with its article: "a speed".
    #[must_use]
    pub const fn in_words(self) -> &'static str {
        match self {
            Self::Ratio => "a plain number",
            Self::Length => "a length",
            Self::Area => "an area",
            Self::SectionModulus => "a section modulus",
            Self::SecondMoment => "a second moment of area",
            Self::PerLength => "one over a length",
            Self::Speed => "a speed",
            Self::Force => "a force",
            Self::Moment => "a moment",
            Self::Pressure => "a pressure or stress",
            Self::LineLoad => "a force per length",
            Self::PressurePerDepth => "a pressure per depth",
            Self::PressurePerSpeedSquared => "a pressure per speed squared",
            Self::Time => "a time",
            Self::Years => "a number of years",
            Self::Angle => "an angle",
            Self::AirPermeability => "an air permeability",
            Self::Frequency => "a frequency",
            Self::Acceleration => "an acceleration",
            Self::RotationalStiffness => "a rotational stiffness",
            Self::WeightPerArea => "a weight for each area",
        }
    }
}

/// One unit: how it is written, what else people write, and how many SI units it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unit {
    /// As it is printed.
    pub symbol: &'static str,
    /// Other ways it is written; compared without regard to case.
    pub also: &'static [&'static str],
    /// What it measures.
    pub dimension: Dimension,
    /// How many SI units it is.
    pub si: f64,
}

const INCH: f64 = 0.0254; // m, by definition (international yard and pound, 1959)
const FOOT: f64 = 0.3048; // m, by definition
pub(super) const GRAVITY: f64 = 9.806_65; // m/s²: standard gravity, by definition
const POUND_FORCE: f64 = 0.453_592_37 * GRAVITY; // N: avoirdupois pound, by definition, × standard gravity
const KILOGRAM_FORCE: f64 = GRAVITY; // N: kilogram × standard gravity; makers state ties in it
const MPH: f64 = 0.447_04; // m/s: 5280 ft in 3600 s
const KNOT: f64 = 1852.0 / 3600.0; // m/s: the international nautical mile

const fn unit(symbol: &'static str, also: &'static [&'static str], dimension: Dimension, si: f64) -> Unit {
    Unit { symbol, also, dimension, si }
}

/// Every unit that can be read or written.
pub const UNITS: &[Unit] = {
    use Dimension as D;
    &[
        unit("ft", &["foot", "feet", "ft.", "'", "′", "’"], D::Length, FOOT),
        unit("in", &["inch", "inches", "in.", "\"", "″", "”", "''"], D::Length, INCH),
        unit("yd", &["yard", "yards"], D::Length, 3.0 * FOOT),
        unit("m", &["metre", "metres", "meter", "meters"], D::Length, 1.0),
        unit("cm", &["centimetre", "centimetres", "centimeter", "centimeters"], D::Length, 0.01),
        unit("mm", &["millimetre", "millimetres", "millimeter", "millimeters"], D::Length, 0.001),
        unit("ft²", &["ft2", "sq ft", "sqft"], D::Area, FOOT * FOOT),
        unit("in²", &["in2", "sq in", "sqin"], D::Area, INCH * INCH),
        unit("m²", &["m2"], D::Area, 1.0),
        unit("cm²", &["cm2"], D::Area, 1e-4),
        unit("mm²", &["mm2"], D::Area, 1e-6),
        unit("in³", &["in3"], D::SectionModulus, INCH * INCH * INCH),
        unit("cm³", &["cm3"], D::SectionModulus, 1e-6),
        unit("mm³", &["mm3"], D::SectionModulus, 1e-9),
        unit("m³", &["m3"], D::SectionModulus, 1.0),
        unit("in⁴", &["in4"], D::SecondMoment, INCH * INCH * INCH * INCH),
        unit("cm⁴", &["cm4"], D::SecondMoment, 1e-8),
        unit("mm⁴", &["mm4"], D::SecondMoment, 1e-12),
        unit("m⁴", &["m4"], D::SecondMoment, 1.0),
        unit("/ft", &["1/ft"], D::PerLength, 1.0 / FOOT),
        unit("/m", &["1/m"], D::PerLength, 1.0),
        unit("mph", &["mi/h", "miles per hour", "mile/h"], D::Speed, MPH),
        unit("m/s", &["mps"], D::Speed, 1.0),
        unit("km/h", &["kph", "kmh"], D::Speed, 1.0 / 3.6),
        unit("knots", &["kt", "kts", "knot"], D::Speed, KNOT),
        unit("lbf", &["lb", "lbs", "pound", "pounds", "pound-force", "pounds-force"], D::Force, POUND_FORCE),
        unit("kip", &["kips"], D::Force, 1000.0 * POUND_FORCE),
        unit("N", &["newton", "newtons"], D::Force, 1.0),
        unit("kN", &["kilonewton", "kilonewtons"], D::Force, 1000.0),
        unit("kgf", &["kg", "kilogram-force"], D::Force, KILOGRAM_FORCE),
        unit(
            "lb-ft",
            &["lbf-ft", "ft-lb", "ft-lbf", "lb ft", "ft lb", "lbf ft"],
            D::Moment,
            POUND_FORCE * FOOT,
        ),
        unit("lb-in", &["lbf-in", "in-lb", "in-lbf", "lb in", "in lb"], D::Moment, POUND_FORCE * INCH),
        unit("kip-ft", &["ft-kip", "kip ft", "k-ft"], D::Moment, 1000.0 * POUND_FORCE * FOOT),
        unit("kip-in", &["in-kip", "kip in", "k-in"], D::Moment, 1000.0 * POUND_FORCE * INCH),
        unit("N m", &["nm", "n-m", "n·m"], D::Moment, 1.0),
        unit("kN m", &["knm", "kn-m", "kn·m"], D::Moment, 1000.0),
        unit("psf", &["lb/ft2", "lb/ft²", "lbf/ft2", "lbf/ft²"], D::Pressure, POUND_FORCE / (FOOT * FOOT)),
        unit("ksf", &["kip/ft2", "kip/ft²"], D::Pressure, 1000.0 * POUND_FORCE / (FOOT * FOOT)),
        unit("psi", &["lb/in2", "lb/in²", "lbf/in2", "lbf/in²"], D::Pressure, POUND_FORCE / (INCH * INCH)),
        unit("ksi", &["kip/in2", "kip/in²"], D::Pressure, 1000.0 * POUND_FORCE / (INCH * INCH)),
        unit("Pa", &["pascal", "pascals", "n/m2", "n/m²"], D::Pressure, 1.0),
        // Weights of cloth: what an ounce or a gram of it weighs.
        unit("kPa", &["kn/m2", "kn/m²"], D::Pressure, 1e3),
        unit("MPa", &["n/mm2", "n/mm²"], D::Pressure, 1e6),
        unit("lb/ft", &["plf", "lbf/ft"], D::LineLoad, POUND_FORCE / FOOT),
        unit("N/m", &[], D::LineLoad, 1.0),
        unit("kN/m", &[], D::LineLoad, 1e3),
        unit("kip/ft", &["klf", "kips/ft"], D::LineLoad, 1000.0 * POUND_FORCE / FOOT),
        // The weight of so many kilograms a metre, as pipe tables have it.
        unit("kgf/m", &["kg/m"], D::LineLoad, KILOGRAM_FORCE),
        unit("psf/ft", &["pcf", "lb/ft3", "lb/ft³"], D::PressurePerDepth, POUND_FORCE / (FOOT * FOOT * FOOT)),
        unit("kPa/m", &["kn/m3", "kn/m³"], D::PressurePerDepth, 1e3),
        unit(
            "lb/in³",
            &["lb/in3", "lbf/in3", "lbf/in³", "pci", "psi/in"],
            D::PressurePerDepth,
            POUND_FORCE / (INCH * INCH * INCH),
        ),
        unit("ksi/ft", &[], D::PressurePerDepth, 1000.0 * POUND_FORCE / (INCH * INCH) / FOOT),
        unit(
            "psf/mph²",
            &["psf/mph2"],
            D::PressurePerSpeedSquared,
            POUND_FORCE / (FOOT * FOOT) / (MPH * MPH),
        ),
        unit("Pa/(m/s)²", &["pa/(m/s)2", "kg/m3", "kg/m³"], D::PressurePerSpeedSquared, 1.0),
        unit("s", &["sec", "second", "seconds"], D::Time, 1.0),
        unit("min", &["minute", "minutes"], D::Time, 60.0),
        unit("h", &["hr", "hour", "hours"], D::Time, 3600.0),
        // Counted, not measured: a return period in years stays a plain number of them.
        unit("years", &["year", "yr", "yrs"], D::Years, 1.0),
        unit("°", &["deg", "degree", "degrees"], D::Angle, PI / 180.0),
        unit("rad", &["radian", "radians"], D::Angle, 1.0),
        unit("cfm/ft²", &["cfm/ft2", "ft³/min/ft²"], D::AirPermeability, FOOT / 60.0),
        unit("L/(m² s)", &["l/m²/s", "l/m2/s", "l/(m²·s)", "l/(m2 s)", "mm/s"], D::AirPermeability, 1e-3),
        unit("m³/(m² s)", &["m³/m²/s", "m3/m2/s"], D::AirPermeability, 1.0),
        // The weight of a gram or an ounce under standard gravity, as cloth is sold by.
        unit(
            "oz/yd²",
            &["oz/yd2", "oz/sq yd", "osy"],
            D::WeightPerArea,
            POUND_FORCE / 16.0 / (9.0 * FOOT * FOOT),
        ),
        unit("g/m²", &["g/m2", "gsm"], D::WeightPerArea, KILOGRAM_FORCE / 1000.0),
        unit("Hz", &["hertz", "/s", "1/s"], D::Frequency, 1.0),
        unit("ft/s²", &["ft/s2"], D::Acceleration, FOOT),
        unit("m/s²", &["m/s2"], D::Acceleration, 1.0),
        unit("lb-ft/rad", &["ft-lb/rad", "lbf-ft/rad"], D::RotationalStiffness, POUND_FORCE * FOOT),
        unit("lb-in/rad", &["in-lb/rad", "lbf-in/rad"], D::RotationalStiffness, POUND_FORCE * INCH),
        unit("N m/rad", &["nm/rad"], D::RotationalStiffness, 1.0),
        unit("kN m/rad", &["knm/rad"], D::RotationalStiffness, 1e3),
        unit("%", &["percent", "per cent"], D::Ratio, 0.01),
    ]
};

/// SI units in the unit with this symbol, for constants.
pub(super) const fn si_of(symbol: &str) -> f64 {
    let mut at = 0;
    while at < UNITS.len() {
        if same(UNITS[at].symbol, symbol) {
            return UNITS[at].si;
        }
        at += 1;
    }
    panic!("a symbol that stands in the list")
}

const fn same(one: &str, other: &str) -> bool {
    let (one, other) = (one.as_bytes(), other.as_bytes());
    if one.len() != other.len() {
        return false;
    }
    let mut at = 0;
    while at < one.len() {
        if one[at] != other[at] {
            return false;
        }
        at += 1;
    }
    true
}

impl Unit {
    /// The unit somebody wrote, if it is one of the list; the printed symbol first, then any other way
    /// of writing it without regard to case.
    #[must_use]
    pub fn named(text: &str) -> Option<&'static Self> {
        let lower = text.to_lowercase();
        UNITS.iter().find(|unit| unit.symbol == text).or_else(|| {
            UNITS.iter().find(|unit| {
                unit.symbol.to_lowercase() == lower || unit.also.iter().any(|name| *name == lower)
            })
        })
    }

    /// So many of a unit in SI units, if the unit is one of this kind.
    #[must_use]
    pub fn in_si(number: f64, unit: &str, dimension: Dimension) -> Option<f64> {
        let unit = Self::named(unit)?;
        (unit.dimension == dimension).then_some(number * unit.si)
    }

    /// The symbols in which a quantity of this kind may be given, for messages.
    #[must_use]
    pub fn accepted(dimension: Dimension) -> String {
        let symbols: Vec<_> =
            UNITS.iter().filter(|unit| unit.dimension == dimension).map(|unit| unit.symbol).collect();
        symbols.join(", ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Units as tables of conversion print them, to seven digits: NIST SP 811, Appendix B.8, through public tables and
    /// tests that quote it. The prefixes, and what divides one row by another, are worked by hand.
    const PRINTED: &[(&str, f64)] = &[
        ("ft", 0.3048),
        ("in", 0.0254),
        ("yd", 0.9144),
        ("m", 1.0),
        ("cm", 0.01),
        ("mm", 0.001),
        ("ft²", 0.092_903_04),
        ("in²", 6.4516e-4),
        ("m²", 1.0),
        ("cm²", 1e-4),
        ("mm²", 1e-6),
        ("in³", 1.638_706e-5),
        ("cm³", 1e-6),
        ("mm³", 1e-9),
        ("m³", 1.0),
        ("in⁴", 4.162_314e-7),
        ("cm⁴", 1e-8),
        ("mm⁴", 1e-12),
        ("m⁴", 1.0),
        ("/ft", 3.280_840),
        ("/m", 1.0),
        ("mph", 0.447_04),
        ("m/s", 1.0),
        ("km/h", 0.277_777_8),
        ("knots", 0.514_444_4),
        ("lbf", 4.448_222),
        ("kip", 4448.222),
        ("N", 1.0),
        ("kN", 1e3),
        ("kgf", 9.806_65),
        ("lb-ft", 1.355_818),
        ("lb-in", 0.112_984_8),
        ("kip-ft", 1355.818),
        ("kip-in", 112.984_8),
        ("N m", 1.0),
        ("kN m", 1e3),
        ("psf", 47.880_26),
        ("ksf", 47_880.26),
        ("psi", 6894.757),
        ("ksi", 6.894_757e6),
        ("Pa", 1.0),
        ("kPa", 1e3),
        ("MPa", 1e6),
        ("lb/ft", 14.593_90),
        ("N/m", 1.0),
        ("kN/m", 1e3),
        ("kip/ft", 14_593.90),
        ("kgf/m", 9.806_65),
        ("psf/ft", 157.087_5),
        ("kPa/m", 1e3),
        ("lb/in³", 271_447.1),
        ("ksi/ft", 2.262_059e7),
        ("psf/mph²", 239.587_3),
        ("Pa/(m/s)²", 1.0),
        ("s", 1.0),
        ("min", 60.0),
        ("h", 3600.0),
        ("years", 1.0),
        ("°", 0.017_453_29),
        ("rad", 1.0),
        ("cfm/ft²", 5.08e-3),
        ("L/(m² s)", 1e-3),
        ("m³/(m² s)", 1.0),
        ("oz/yd²", 0.332_501_8),
        ("g/m²", 9.806_65e-3),
        ("Hz", 1.0),
        ("ft/s²", 0.304_8),
        ("m/s²", 1.0),
        ("lb-ft/rad", 1.355_818),
        ("lb-in/rad", 0.112_984_8),
        ("N m/rad", 1.0),
        ("kN m/rad", 1e3),
        ("%", 0.01),
    ];

    #[test]
    fn every_unit_is_what_tables_of_conversion_print() {
        let symbols: Vec<_> = UNITS.iter().map(|unit| unit.symbol).collect();
        assert_eq!(symbols, PRINTED.iter().map(|(symbol, _)| *symbol).collect::<Vec<_>>());
        for (unit, (symbol, printed)) in UNITS.iter().zip(PRINTED) {
            assert!((unit.si / printed - 1.0).abs() < 5e-7, "{symbol}: {} is not {printed}", unit.si);
            assert_eq!(si_of(symbol), unit.si);
        }
    }

    #[test]
    fn a_kind_of_quantity_is_named_in_words_of_its_own() {
        assert_eq!(Dimension::Ratio.in_words(), "a plain number");
        let mut seen = Vec::new();
        for dimension in UNITS.iter().map(|unit| unit.dimension) {
            let words = dimension.in_words();
            assert!(["a ", "an ", "one "].iter().any(|article| words.starts_with(article)), "{words}");
            assert!(seen.iter().all(|(other, said)| (*other == dimension) == (*said == words)), "{words}");
            seen.push((dimension, words));
        }
    }

    #[test]
    fn a_unit_is_found_by_any_of_its_spellings_and_turns_only_its_own_kind() {
        for (written, symbol) in
            [("ft", "ft"), ("Feet", "ft"), ("KN", "kN"), ("N/MM2", "MPa"), ("kt", "knots")]
        {
            assert_eq!(Unit::named(written).map(|unit| unit.symbol), Some(symbol), "{written}");
        }
        assert!(Unit::named("cubit").is_none());
        assert_eq!(Unit::in_si(2.0, "kN", Dimension::Force), Some(2000.0));
        assert_eq!(Unit::in_si(2.0, "kN", Dimension::Moment), None);
        assert_eq!(Unit::in_si(2.0, "cubit", Dimension::Length), None);
        assert_eq!(Unit::accepted(Dimension::Length), "ft, in, yd, m, cm, mm");
        assert_eq!(Unit::accepted(Dimension::Ratio), "%");
    }

    #[test]
    fn no_two_units_share_a_spelling() {
        let mut seen: Vec<String> = Vec::new();
        for unit in UNITS {
            for name in std::iter::once(unit.symbol).chain(unit.also.iter().copied()) {
                let name = name.to_lowercase();
                assert!(!seen.contains(&name), "{name} stands twice");
                seen.push(name);
            }
        }
    }
}
