//! A value as it stands on a page: its text, and how far the page can be held to it.

use crate::units::{Dimension, ReadError, Unit, number, read};
use std::fmt;

/// A value as it stands on a page.
#[derive(Debug, Clone, PartialEq)]
pub struct Printed {
    text: String,
    unit: String,
    si: f64,
    per_unit: f64,
    place: i32,
    dimension: Dimension,
}

/// Why a text is no printed value.
#[derive(Debug, Clone, PartialEq)]
pub enum PrintedError {
    /// It cannot be read.
    Unreadable(ReadError),
    /// It is more than one number and its unit, so that no digit of it is the last.
    NotOneNumber {
        /// As written.
        text: String,
    },
    /// It ends in noughts without a point, and nothing says which of them count.
    NeedsDigits {
        /// As written.
        text: String,
        /// The least number of digits that may count.
        least: u32,
        /// The greatest.
        greatest: u32,
    },
    /// So many digits cannot count.
    WrongDigits {
        /// As written.
        text: String,
        /// What was said.
        digits: u32,
        /// The least number of digits that may count.
        least: u32,
        /// The greatest.
        greatest: u32,
    },
    /// Every digit counts as it is, and yet it is said how many do.
    DigitsNotNeeded {
        /// As written.
        text: String,
    },
}

impl fmt::Display for PrintedError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unreadable(error) => error.fmt(f),
            Self::NotOneNumber { text } => {
                write!(f, "\"{text}\" has no last digit: write one number and its unit, as in \"8.08 ft\"")
            }
            Self::NeedsDigits { text, least, greatest } => write!(
                f,
                "\"{text}\" ends in noughts without a point: say how many of its digits count with \
                 digits = {least} to {greatest}"
            ),
            Self::WrongDigits { text, digits, least, greatest } => {
                write!(f, "digits = {digits} cannot be for \"{text}\": write {least} to {greatest}")
            }
            Self::DigitsNotNeeded { text } => write!(
                f,
                "every digit of \"{text}\" counts as it is: leave digits out, it is for noughts without a point"
            ),
        }
    }
}

impl std::error::Error for PrintedError {}

impl Printed {
    /// Reads a value as it stands on a page; `digits` says how many of its figures count where it ends in
    /// noughts without a point.
    ///
    /// # Errors
    /// A [`PrintedError`] that says what to write.
    pub fn read(text: &str, dimension: Dimension, digits: Option<u32>) -> Result<Self, PrintedError> {
        let text = text.trim();
        let si = read(text, dimension).map_err(PrintedError::Unreadable)?;
        let bare = text.trim_start_matches(['-', '−']).trim_start();
        if dimension == Dimension::Ratio && is_quotient(bare) {
            if digits.is_some() {
                return Err(PrintedError::DigitsNotNeeded { text: text.to_owned() });
            }
            let place = QUOTIENT_PLACE;
            return Ok(Self {
                text: text.to_owned(),
                unit: String::new(),
                si,
                per_unit: 1.0,
                place,
                dimension,
            });
        }
        let end = bare.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(bare.len());
        let (figures, unit) = (&bare[..end], bare[end..].trim());
        let per_unit = match Unit::named(unit) {
            Some(unit) => unit.si,
            None if unit.is_empty() => 1.0,
            None => return Err(PrintedError::NotOneNumber { text: text.to_owned() }),
        };
        let place = last_place(figures, text, digits)?;
        Ok(Self { text: text.to_owned(), unit: unit.to_owned(), si, per_unit, place, dimension })
    }

    /// As on the page.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The value in SI units.
    #[must_use]
    pub const fn si(&self) -> f64 {
        self.si
    }

    /// What it measures.
    #[must_use]
    pub const fn dimension(&self) -> Dimension {
        self.dimension
    }

    /// Half a unit in the last digit, in SI units.
    #[must_use]
    pub fn half_a_unit(&self) -> f64 {
        0.5 * 10_f64.powi(-self.place) * self.per_unit
    }

    /// Another value in the same unit, with the digits of print and two more.
    #[must_use]
    pub fn beside(&self, si: f64) -> String {
        let decimals = usize::try_from(self.place + 2).unwrap_or(0);
        let figure = number(si / self.per_unit, decimals);
        if self.unit.is_empty() { figure } else { format!("{figure} {}", self.unit) }
    }

    /// How far another value lies from this one: in hundredths of it, or in its unit where it is nought.
    #[must_use]
    pub fn apart(&self, si: f64) -> String {
        let sign = |value: f64, decimals, unit: &str| {
            let text = number(value.abs(), decimals);
            format!("{}{text}{unit}", if value < 0.0 { '−' } else { '+' })
        };
        if self.si == 0.0 {
            let decimals = usize::try_from(self.place + 2).unwrap_or(0);
            let unit = if self.unit.is_empty() { String::new() } else { format!(" {}", self.unit) };
            sign((si - self.si) / self.per_unit, decimals, &unit)
        } else {
            sign((si / self.si - 1.0) * 100.0, 2, " %")
        }
    }
}

/// To how many decimals a quotient of whole numbers is held; it is exact on the page.
const QUOTIENT_PLACE: i32 = 6;

/// Whether a text is one whole number over another, as in 3/28.
fn is_quotient(text: &str) -> bool {
    let is_whole = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    text.split_once('/').is_some_and(|(over, under)| is_whole(over) && is_whole(under))
}

/// The decimal place of the last digit that counts: 2 for hundredths, 0 for ones, -2 for hundreds.
fn last_place(figures: &str, text: &str, digits: Option<u32>) -> Result<i32, PrintedError> {
    let text = || text.to_owned();
    let count = |length: usize| u32::try_from(length).unwrap_or(u32::MAX);
    let place = |digits: u32| i32::try_from(digits).unwrap_or(i32::MAX);
    if let Some((_, decimals)) = figures.split_once('.') {
        return match digits {
            None => Ok(place(count(decimals.len()))),
            Some(_) => Err(PrintedError::DigitsNotNeeded { text: text() }),
        };
    }
    let significant = figures.trim_start_matches('0');
    let noughts = significant.len() - significant.trim_end_matches('0').len();
    let (least, greatest) = (count(significant.len() - noughts), count(significant.len()));
    match digits {
        None if noughts == 0 => Ok(0),
        None => Err(PrintedError::NeedsDigits { text: text(), least, greatest }),
        Some(_) if noughts == 0 => Err(PrintedError::DigitsNotNeeded { text: text() }),
        Some(digits) if (least..=greatest).contains(&digits) => Ok(-place(greatest - digits)),
        Some(digits) => Err(PrintedError::WrongDigits { text: text(), digits, least, greatest }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn printed(text: &str, dimension: Dimension, digits: Option<u32>) -> Printed {
        Printed::read(text, dimension, digits).unwrap_or_else(|error| panic!("{text}: {error}"))
    }

    #[test]
    fn half_a_unit_is_that_of_the_last_digit_that_counts() {
        let near = |one: f64, other: f64| assert!((one / other - 1.0).abs() < 1e-12, "{one} {other}");
        near(printed("8.08 ft", Dimension::Length, None).half_a_unit(), 0.005 * 0.3048);
        near(printed("8.0 ft", Dimension::Length, None).half_a_unit(), 0.05 * 0.3048);
        near(printed("599 N/m2", Dimension::Pressure, None).half_a_unit(), 0.5);
        near(printed("19 %", Dimension::Ratio, None).half_a_unit(), 0.005);
        near(printed("0 %", Dimension::Ratio, None).half_a_unit(), 0.005);
        near(printed("0.85", Dimension::Ratio, None).half_a_unit(), 0.005);
        near(printed("43220 mm4", Dimension::SecondMoment, Some(4)).half_a_unit(), 5e-12);
        near(printed("43220 mm4", Dimension::SecondMoment, Some(5)).half_a_unit(), 0.5e-12);
        near(printed("1000 ft", Dimension::Length, Some(1)).half_a_unit(), 500.0 * 0.3048);
        near(printed("-3 ft", Dimension::Length, None).half_a_unit(), 0.5 * 0.3048);
    }

    #[test]
    fn noughts_without_a_point_need_digits_and_nothing_else_takes_them() {
        let read = |text, digits| Printed::read(text, Dimension::Length, digits).unwrap_err();
        assert_eq!(
            read("1200 ft", None),
            PrintedError::NeedsDigits { text: "1200 ft".into(), least: 2, greatest: 4 }
        );
        for digits in [1, 5] {
            assert!(matches!(read("1200 ft", Some(digits)), PrintedError::WrongDigits { .. }));
        }
        for text in ["12.0 ft", "12 ft", "0 ft"] {
            assert!(matches!(read(text, Some(2)), PrintedError::DigitsNotNeeded { .. }), "{text}");
        }
    }

    #[test]
    fn a_quotient_of_whole_numbers_is_exact_where_no_unit_follows() {
        let quotient = printed("3/28", Dimension::Ratio, None);
        assert!((quotient.si() - 3.0 / 28.0).abs() < 1e-15);
        assert!((quotient.half_a_unit() - 0.5e-6).abs() < 1e-15);
        assert_eq!(quotient.beside(3.0 / 28.0), "0.10714286");
        assert!(matches!(
            Printed::read("3/28", Dimension::Ratio, Some(2)).unwrap_err(),
            PrintedError::DigitsNotNeeded { .. }
        ));
        for text in ["1 3/28", "3.0/28", "3/28 %"] {
            let error = Printed::read(text, Dimension::Ratio, None).unwrap_err();
            assert!(matches!(error, PrintedError::NotOneNumber { .. }), "{text}: {error}");
        }
    }

    #[test]
    fn more_than_one_number_has_no_last_digit() {
        for text in ["11 ft 1 in", "2-3/8 in", "1e3 ft", "1/2 in"] {
            let error = Printed::read(text, Dimension::Length, None).unwrap_err();
            assert!(matches!(error, PrintedError::NotOneNumber { .. }), "{text}");
        }
        assert!(matches!(
            Printed::read("8.08 psf", Dimension::Length, None).unwrap_err(),
            PrintedError::Unreadable(ReadError::WrongDimension { .. })
        ));
    }

    #[test]
    fn a_value_beside_has_the_unit_of_the_page_and_two_digits_more() {
        assert_eq!(printed("8.08 ft", Dimension::Length, None).beside(2.462_496_2), "8.0791 ft");
        assert_eq!(printed("19 %", Dimension::Ratio, None).beside(0.166_116), "16.61 %");
        assert_eq!(
            printed("43220 mm4", Dimension::SecondMoment, Some(4)).beside(43_215.7e-12),
            "43,215.7 mm4"
        );
        assert_eq!(printed("1.30", Dimension::Ratio, None).beside(1.3), "1.3000");
        assert_eq!(printed("1200 ft", Dimension::Length, Some(2)).beside(365.5), "1199 ft");
    }

    #[test]
    fn the_distance_is_in_hundredths_or_in_the_unit_where_the_page_has_nought() {
        assert_eq!(printed("2.00 ft", Dimension::Length, None).apart(0.3048), "−50.00 %");
        assert_eq!(printed("2.00 ft", Dimension::Length, None).apart(0.6096), "+0.00 %");
        assert_eq!(printed("0 %", Dimension::Ratio, None).apart(-0.002), "−0.20 %");
        assert_eq!(printed("0.0", Dimension::Ratio, None).apart(0.02), "+0.020");
    }
}
