//! Figures from text, in the ways people write them: `11 ft 1 in`, `11'-1"`, `2-3/8 in`, `3.05 m`,
//! `115 mph`, `150 psf/ft`.

use super::unit::{Dimension, Unit};
use std::fmt;

/// Why a figure could not be read.
#[derive(Debug, Clone, PartialEq)]
pub enum ReadError {
    /// Nothing was written.
    Empty(Dimension),
    /// A number stands alone.
    NoUnit {
        /// The number as written.
        number: String,
        /// What was wanted.
        wanted: Dimension,
    },
    /// A unit that is not in the list.
    UnknownUnit {
        /// The unit as written.
        unit: String,
        /// What was wanted.
        wanted: Dimension,
    },
    /// A unit of another kind of quantity.
    WrongDimension {
        /// The unit as written.
        unit: String,
        /// What that unit measures.
        found: Dimension,
        /// What was wanted.
        wanted: Dimension,
    },
    /// No number where one belongs.
    NotANumber {
        /// What stands there.
        text: String,
    },
    /// Not a finite number.
    NotFinite {
        /// What stands there.
        text: String,
    },
    /// Units of one length that do not get smaller, such as inches before feet.
    NotDescending {
        /// The text.
        text: String,
    },
    /// A comma in a number.
    Comma {
        /// What stands there.
        text: String,
    },
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty(wanted) => {
                write!(f, "nothing is written where {} belongs", wanted.in_words())
            }
            Self::NoUnit { number, wanted } => write!(
                f,
                "{number} has no unit where {} belongs: add one of {}",
                wanted.in_words(),
                Unit::accepted(*wanted)
            ),
            Self::UnknownUnit { unit, wanted } => write!(
                f,
                "\"{unit}\" is no unit known here: {} is given in {}",
                wanted.in_words(),
                Unit::accepted(*wanted)
            ),
            Self::WrongDimension { unit, found, wanted } => write!(
                f,
                "{unit} is {}, and {} belongs here: give it in {}",
                found.in_words(),
                wanted.in_words(),
                Unit::accepted(*wanted)
            ),
            Self::NotANumber { text } => write!(f, "\"{text}\" is not a number"),
            Self::NotFinite { text } => write!(f, "\"{text}\" is not a finite number"),
            Self::NotDescending { text } => {
                write!(
                    f,
                    "in \"{text}\" the parts do not get smaller: feet before inches, each once, inches below 12"
                )
            }
            Self::Comma { text } => write!(f, "\"{text}\" has a comma: write 1250 or 1.25"),
        }
    }
}

impl std::error::Error for ReadError {}

const FRACTIONS: &[(char, f64)] =
    &[('½', 0.5), ('¼', 0.25), ('¾', 0.75), ('⅛', 0.125), ('⅜', 0.375), ('⅝', 0.625), ('⅞', 0.875)];

/// Reads one figure with its unit and returns it in SI units.
///
/// # Errors
/// A [`ReadError`] that says what stands there and what to write.
pub fn read(text: &str, wanted: Dimension) -> Result<f64, ReadError> {
    let mut rest = text.trim();
    if rest.is_empty() {
        return Err(ReadError::Empty(wanted));
    }
    let mut total = 0.0;
    let mut last: Option<f64> = None;
    let negative = rest.starts_with('-') || rest.starts_with('−');
    if negative {
        rest = rest.trim_start_matches(['-', '−']).trim_start();
    }
    while !rest.is_empty() {
        let (number, after) = leading_number(rest, text)?;
        let (unit_text, after) = leading_unit(after);
        if unit_text.is_empty() {
            if wanted == Dimension::Ratio {
                total += number;
                rest = after;
                continue;
            }
            return Err(ReadError::NoUnit { number: text.trim().to_owned(), wanted });
        }
        // "kn" is knots where a speed belongs and kilonewtons elsewhere.
        let unit_text = if wanted == Dimension::Speed && unit_text.eq_ignore_ascii_case("kn") {
            "knots"
        } else {
            unit_text
        };
        // Air that passes a cloth is a volume for each area and time, which is a speed.
        let unit_text = if wanted == Dimension::AirPermeability && unit_text.eq_ignore_ascii_case("m/s") {
            "m³/(m² s)"
        } else {
            unit_text
        };
        let Some(unit) = Unit::named(unit_text) else {
            return Err(ReadError::UnknownUnit { unit: unit_text.to_owned(), wanted });
        };
        if unit.dimension != wanted {
            return Err(ReadError::WrongDimension {
                unit: unit_text.to_owned(),
                found: unit.dimension,
                wanted,
            });
        }
        if last.is_some_and(|last| unit.si >= last || wanted != Dimension::Length) {
            return Err(ReadError::NotDescending { text: text.trim().to_owned() });
        }
        // Twelve inches are a foot, whatever the last bit of their product says.
        if last.is_some_and(|last| number * unit.si >= last * (1.0 - 1e-9)) {
            return Err(ReadError::NotDescending { text: text.trim().to_owned() });
        }
        last = Some(unit.si);
        total += number * unit.si;
        // A dash between feet and inches joins them and is no minus.
        rest = after.trim_start().trim_start_matches(['-', '–']).trim_start();
    }
    let total = if negative { -total } else { total };
    if total.is_finite() { Ok(total) } else { Err(ReadError::NotFinite { text: text.trim().to_owned() }) }
}

/// Reads a plain number, with a fraction if one is written.
///
/// # Errors
/// If it is no finite number, or something follows it.
pub fn read_number(text: &str) -> Result<f64, ReadError> {
    read(text, Dimension::Ratio)
}

/// The number at the head of a text: `12`, `0.154`, `1/2`, `2-3/8`, `2 3/8`, `2½`, `1e3`.
fn leading_number<'a>(text: &'a str, whole: &str) -> Result<(f64, &'a str), ReadError> {
    let (first, mut rest) = plain_number(text, whole)?;
    if let Some((value, after)) = vulgar(rest) {
        return Ok((first + value, after));
    }
    if let Some(after) = rest.strip_prefix('/') {
        let (under, after) = plain_number(after, whole)?;
        return quotient(first, under, whole).map(|value| (value, after));
    }
    // A whole number followed by a dash or blanks and a fraction: 2-3/8, 2 3/8.
    let joined = rest.trim_start_matches(['-', '–', ' ']);
    if joined.len() < rest.len() {
        if let Some((value, after)) = vulgar(joined) {
            return Ok((first + value, after));
        }
        if let Ok((over, after)) = plain_number(joined, whole)
            && let Some(after) = after.strip_prefix('/')
            && let Ok((under, after)) = plain_number(after, whole)
        {
            rest = after;
            return quotient(over, under, whole).map(|value| (first + value, rest));
        }
    }
    Ok((first, rest))
}

fn quotient(over: f64, under: f64, whole: &str) -> Result<f64, ReadError> {
    let value = over / under;
    if value.is_finite() { Ok(value) } else { Err(ReadError::NotFinite { text: whole.trim().to_owned() }) }
}

fn vulgar(text: &str) -> Option<(f64, &str)> {
    let first = text.chars().next()?;
    let (_, value) = FRACTIONS.iter().find(|(sign, _)| *sign == first)?;
    Some((*value, &text[first.len_utf8()..]))
}

fn plain_number<'a>(text: &'a str, whole: &str) -> Result<(f64, &'a str), ReadError> {
    if let Some(found) = vulgar(text) {
        return Ok(found);
    }
    let bytes = text.as_bytes();
    let digits = |mut at: usize| {
        while at < bytes.len() && bytes[at].is_ascii_digit() {
            at += 1;
        }
        at
    };
    let mut end = digits(0);
    if bytes.get(end) == Some(&b',') && bytes.get(end + 1).is_some_and(u8::is_ascii_digit) {
        return Err(ReadError::Comma { text: whole.trim().to_owned() });
    }
    if bytes.get(end) == Some(&b'.') {
        end = digits(end + 1);
    }
    if matches!(bytes.get(end), Some(b'e' | b'E')) {
        let mut at = end + 1;
        if matches!(bytes.get(at), Some(b'+' | b'-')) {
            at += 1;
        }
        if digits(at) > at {
            end = digits(at);
        }
    }
    match text[..end].parse::<f64>() {
        Ok(value) if value.is_finite() => Ok((value, &text[end..])),
        Ok(_) => Err(ReadError::NotFinite { text: text[..end].to_owned() }),
        Err(_) => {
            let text = whole.trim();
            let lower = text.to_lowercase();
            if lower.starts_with("nan") || lower.starts_with("inf") {
                Err(ReadError::NotFinite { text: text.to_owned() })
            } else {
                Err(ReadError::NotANumber { text: text.to_owned() })
            }
        }
    }
}

/// The unit at the head of a text: up to the next number that starts a new part.
fn leading_unit(text: &str) -> (&str, &str) {
    let text = text.trim_start();
    if Unit::named(text.trim_end()).is_some() {
        return (text.trim_end(), "");
    }
    for (at, sign) in text.char_indices() {
        if !sign.is_ascii_digit() && !FRACTIONS.iter().any(|(fraction, _)| *fraction == sign) {
            continue;
        }
        // "lb/ft2" and "in3" keep their digit; in "ft 1", "ft1in" and "'-1" a new number starts.
        let (so_far, after) = text.split_at(at + sign.len_utf8());
        if after.chars().next().is_none_or(|next| !next.is_alphanumeric()) && Unit::named(so_far).is_some() {
            continue;
        }
        let unit = text[..at].trim_end().trim_end_matches(['-', '–']).trim_end();
        return (unit, &text[at..]);
    }
    (text.trim_end(), "")
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    fn length(text: &str) -> f64 {
        read(text, Dimension::Length).unwrap_or_else(|error| panic!("{text}: {error}"))
    }

    #[test]
    fn lengths_are_read_as_people_write_them() {
        for text in
            ["11 ft 1 in", "11'-1\"", "11' 1\"", "11′ 1″", "11’ 1”", "11ft1in", "11 feet 1 inch", "133 in"]
        {
            assert_relative_eq!(length(text), 3.3782, max_relative = 1e-15);
        }
        assert_relative_eq!(length("2-3/8 in"), 0.060_325, max_relative = 1e-15);
        assert_relative_eq!(length("2 3/8 in"), 0.060_325, max_relative = 1e-15);
        assert_relative_eq!(length("2⅜\""), 0.060_325, max_relative = 1e-15);
        assert_relative_eq!(length("9-1/16 in"), 9.0625 * 0.0254, max_relative = 1e-15);
        assert_relative_eq!(length("6 ft 4-1/2 in"), 76.5 * 0.0254, max_relative = 1e-15);
        assert_relative_eq!(length("6'-4 1/2\""), 76.5 * 0.0254, max_relative = 1e-15);
        assert_relative_eq!(length("0.154 in"), 0.003_911_6, max_relative = 1e-15);
        assert_relative_eq!(length("1/2 in"), 0.0127, max_relative = 1e-15);
        assert_relative_eq!(length("2½ in"), 0.0635, max_relative = 1e-15);
        assert_relative_eq!(length("2 ½ in"), 0.0635, max_relative = 1e-15);
        assert_relative_eq!(length("2-½ in"), 0.0635, max_relative = 1e-15);
        assert_relative_eq!(length("½ in"), 0.0127, max_relative = 1e-15);
        assert_relative_eq!(length("1.5e2 mm"), 0.15, max_relative = 1e-15);
        assert_relative_eq!(length("15E+1 mm"), 0.15, max_relative = 1e-15);
        assert_relative_eq!(length("1500e-1 mm"), 0.15, max_relative = 1e-15);
        assert_relative_eq!(length("3.05 m"), 3.05);
        assert_relative_eq!(length("-3 ft"), -0.9144, max_relative = 1e-15);
    }

    #[test]
    fn other_quantities_are_read_with_their_units() {
        assert_relative_eq!(read("115 mph", Dimension::Speed).unwrap(), 51.4096, max_relative = 1e-15);
        assert_relative_eq!(read("38 m/s", Dimension::Speed).unwrap(), 38.0);
        assert_relative_eq!(read("1.2 kPa", Dimension::Pressure).unwrap(), 1200.0);
        assert_relative_eq!(
            read("25 lb/ft2", Dimension::Pressure).unwrap(),
            25.0 * 47.880_258_980_335_84,
            max_relative = 1e-14
        );
        assert_relative_eq!(
            read("150 psf/ft", Dimension::PressurePerDepth).unwrap(),
            150.0 * 157.087_463_846_245_26,
            max_relative = 1e-14
        );
        assert_relative_eq!(
            read("1.37 in3", Dimension::SectionModulus).unwrap(),
            1.37 * 0.0254_f64.powi(3),
            max_relative = 1e-14
        );
        assert_relative_eq!(read("10 min", Dimension::Time).unwrap(), 600.0);
        assert_relative_eq!(read("700 years", Dimension::Years).unwrap(), 700.0);
        assert_relative_eq!(read("45°", Dimension::Angle).unwrap().tan(), 1.0, max_relative = 1e-15);
        assert_relative_eq!(
            read("100 cfm/ft2", Dimension::AirPermeability).unwrap(),
            0.508,
            max_relative = 1e-14
        );
        assert_relative_eq!(read("508 L/m²/s", Dimension::AirPermeability).unwrap(), 0.508);
        for text in ["508 l/m2/s", "508 mm/s", "0.508 m/s", "0.508 m³/(m² s)"] {
            assert_relative_eq!(read(text, Dimension::AirPermeability).unwrap(), 0.508);
        }
        assert!(matches!(read("0.508 m/s", Dimension::Frequency), Err(ReadError::WrongDimension { .. })));
        assert_relative_eq!(read("0.8 Hz", Dimension::Frequency).unwrap(), 0.8);
        // An ounce over a square yard is 33.906 g over a square metre.
        assert_relative_eq!(
            read("1 oz/yd2", Dimension::WeightPerArea).unwrap(),
            read("33.905747 g/m²", Dimension::WeightPerArea).unwrap(),
            max_relative = 1e-7
        );
        assert_relative_eq!(read("3.4 kg/m", Dimension::LineLoad).unwrap(), 33.342_61, max_relative = 1e-12);
        assert_relative_eq!(read("95 %", Dimension::Ratio).unwrap(), 0.95);
        assert_relative_eq!(read("0.95", Dimension::Ratio).unwrap(), 0.95);
    }

    #[test]
    fn what_cannot_be_read_says_why() {
        use ReadError as E;
        let fails = |text| read(text, Dimension::Length).unwrap_err();
        assert!(matches!(fails("10"), E::NoUnit { .. }));
        assert!(matches!(fails("115 mph"), E::WrongDimension { .. }));
        assert!(matches!(fails("10 cubits"), E::UnknownUnit { .. }));
        assert!(matches!(fails("NaN ft"), E::NotFinite { .. }));
        assert!(matches!(fails("inf ft"), E::NotFinite { .. }));
        assert!(matches!(fails("1e999 ft"), E::NotFinite { .. }));
        assert!(matches!(fails("1/0 in"), E::NotFinite { .. }));
        assert!(matches!(fails("1/1e999 in"), E::NotFinite { .. }));
        assert!(matches!(fails("1e308 ft 1e308 in"), E::NotDescending { .. }));
        assert!(matches!(fails("1e ft"), E::UnknownUnit { .. }));
        assert!(matches!(fails("1.5.5/2 in"), E::UnknownUnit { .. }));
        assert!(matches!(fails("10 ft 12 in"), E::NotDescending { .. }));
        assert!(matches!(fails("1 yd 3 ft"), E::NotDescending { .. }));
        assert!(matches!(fails("10 ft,"), E::UnknownUnit { .. }));
        assert!(matches!(fails("ten ft"), E::NotANumber { .. }));
        assert!(matches!(fails("1 in 11 ft"), E::NotDescending { .. }));
        assert!(matches!(fails("1 ft 2 ft"), E::NotDescending { .. }));
        assert!(matches!(fails("1,250 ft"), E::Comma { .. }));
        assert!(matches!(fails("  "), E::Empty(_)));
        assert!(matches!(read("3 mph 2 mph", Dimension::Speed).unwrap_err(), E::NotDescending { .. }));
        assert!(matches!(read("3 mph 2 knots", Dimension::Speed).unwrap_err(), E::NotDescending { .. }));
        assert!(matches!(read("3 knots 2 mph", Dimension::Speed).unwrap_err(), E::NotDescending { .. }));
        assert!(matches!(fails("1 ft 0.5 ft"), E::NotDescending { .. }));
    }

    #[test]
    fn inches_below_twelve_follow_feet_and_no_unit_comes_twice() {
        assert_relative_eq!(length("10 ft 11.9 in"), 131.9 * 0.0254, max_relative = 1e-15);
        assert_relative_eq!(length("1 yd 2 ft 3 in"), 63.0 * 0.0254, max_relative = 1e-15);
        assert_relative_eq!(length("10 ft - 6 in"), 126.0 * 0.0254, max_relative = 1e-15);
        assert_relative_eq!(length("10ft2in"), 122.0 * 0.0254, max_relative = 1e-15);
    }

    #[test]
    fn kn_is_knots_where_a_speed_belongs_and_a_force_elsewhere() {
        assert_relative_eq!(read("36 kn", Dimension::Speed).unwrap(), 18.52, max_relative = 1e-15);
        assert_relative_eq!(read("36 kn", Dimension::Force).unwrap(), 36_000.0);
    }

    #[test]
    fn what_is_told_of_a_figure_says_what_stands_there_and_what_to_write() {
        let told = |text, dimension| read(text, dimension).unwrap_err().to_string();
        for (text, dimension, said) in [
            (" ", Dimension::Speed, "nothing is written where a speed belongs"),
            (
                "38",
                Dimension::Speed,
                "38 has no unit where a speed belongs: add one of mph, m/s, km/h, knots",
            ),
            (
                "38 mach",
                Dimension::Speed,
                "\"mach\" is no unit known here: a speed is given in mph, m/s, km/h, knots",
            ),
            (
                "38 psf",
                Dimension::Force,
                "psf is a pressure or stress, and a force belongs here: give it in lbf, kip, N, kN, kgf",
            ),
            ("ten mph", Dimension::Speed, "\"ten mph\" is not a number"),
            ("infinity mph", Dimension::Speed, "\"infinity mph\" is not a finite number"),
            ("1e999 mph", Dimension::Speed, "\"1e999\" is not a finite number"),
            (
                "3 in 2 ft",
                Dimension::Length,
                "in \"3 in 2 ft\" the parts do not get smaller: feet before inches, each once, inches below 12",
            ),
            ("1,250 lbf", Dimension::Force, "\"1,250 lbf\" has a comma: write 1250 or 1.25"),
        ] {
            assert_eq!(told(text, dimension), said);
        }
    }
}
