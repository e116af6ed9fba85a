//! A rule's inputs from text.

use super::ledger::OutOfRange;
use crate::units::{Measure, Quantity, ReadError, read};
use std::fmt;

/// What is wrong with the inputs of a rule.
#[derive(Debug, Clone, PartialEq)]
pub enum Mistake {
    /// An input is missing.
    Missing {
        /// Its name.
        key: &'static str,
        /// What it measures.
        measure: Measure,
    },
    /// An input could not be read.
    Unreadable {
        /// Its name.
        key: String,
        /// Why.
        error: ReadError,
    },
    /// There is no such input.
    Unknown {
        /// As written.
        key: String,
        /// The nearest that there is.
        nearest: Option<&'static str>,
    },
    /// An input was given twice.
    Twice {
        /// Its name.
        key: String,
    },
    /// A value is outside the range of the source.
    OutOfRange(OutOfRange),
    /// The inputs give no finite number for this result.
    NoNumber(&'static str),
}

impl fmt::Display for Mistake {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Missing { key, measure } => {
                write!(f, "{key} is missing: it is {}", measure.dimension().in_words())
            }
            Self::Unreadable { key, error } => write!(f, "{key}: {error}"),
            Self::Unknown { key, nearest: Some(nearest) } => {
                write!(f, "there is no input {key}; the nearest is {nearest}")
            }
            Self::Unknown { key, nearest: None } => write!(f, "there is no input {key}"),
            Self::Twice { key } => write!(f, "{key} is given twice"),
            Self::OutOfRange(error) => error.fmt(f),
            Self::NoNumber(key) => {
                write!(
                    f,
                    "these inputs give no number for {key}: is one of them below 0, or 0 where it divides?"
                )
            }
        }
    }
}

impl std::error::Error for Mistake {}

/// Inputs as `name` and text, taken one by one.
#[derive(Debug, Clone)]
pub struct Arguments<'a> {
    given: Vec<(&'a str, &'a str)>,
    asked: Vec<&'static str>,
    mistakes: Vec<Mistake>,
}

impl<'a> Arguments<'a> {
    /// Inputs to be taken.
    #[must_use]
    pub fn new(given: Vec<(&'a str, &'a str)>) -> Self {
        let mut mistakes = Vec::new();
        for (at, (key, _)) in given.iter().enumerate() {
            if given[..at].iter().any(|(before, _)| before == key) {
                mistakes.push(Mistake::Twice { key: (*key).to_owned() });
            }
        }
        Self { given, asked: Vec::new(), mistakes }
    }

    /// Takes one input; what is wrong with it is told by [`Self::close`].
    pub fn take<Q: Quantity>(&mut self, key: &'static str, measure: Measure) -> Option<Q> {
        self.asked.push(key);
        let Some((_, text)) = self.given.iter().find(|(name, _)| *name == key) else {
            self.mistakes.push(Mistake::Missing { key, measure });
            return None;
        };
        match read(text, measure.dimension()) {
            Ok(si) => Some(Q::from_si(si)),
            Err(error) => {
                self.mistakes.push(Mistake::Unreadable { key: key.to_owned(), error });
                None
            }
        }
    }

    /// Ends the taking.
    ///
    /// # Errors
    /// Every mistake, inputs nobody asked for among them.
    pub fn close(&mut self) -> Result<(), Vec<Mistake>> {
        for (key, _) in &self.given {
            if !self.asked.contains(key) {
                let nearest = nearest(key, self.asked.iter().copied());
                // A slip in a name is one mistake: the name it was meant for is not missing as well.
                self.mistakes
                    .retain(|told| !matches!(told, Mistake::Missing { key, .. } if nearest == Some(*key)));
                self.mistakes.push(Mistake::Unknown { key: (*key).to_owned(), nearest });
            }
        }
        if self.mistakes.is_empty() { Ok(()) } else { Err(std::mem::take(&mut self.mistakes)) }
    }
}

/// The name nearest to what somebody wrote, if any is near.
pub(crate) fn nearest<'n>(written: &str, names: impl Iterator<Item = &'n str>) -> Option<&'n str> {
    let lower = written.to_lowercase();
    names
        .map(|name| (strsim::jaro_winkler(&lower, &name.to_lowercase()), name))
        .filter(|(likeness, _)| *likeness > 0.75)
        .max_by(|one, other| one.0.total_cmp(&other.0))
        .map(|(_, name)| name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Length;

    #[test]
    fn a_slip_in_a_name_is_told_once_with_the_name_it_was_meant_for() {
        let mut arguments = Arguments::new(vec![("hieght", "10 ft")]);
        assert_eq!(arguments.take::<Length>("height", Measure::Length), None);
        let told = arguments.close().unwrap_err();
        assert_eq!(told, [Mistake::Unknown { key: "hieght".into(), nearest: Some("height") }]);
    }

    #[test]
    fn every_mistake_in_the_inputs_is_told() {
        let mut arguments = Arguments::new(vec![("a", "1 psf"), ("a", "2 ft"), ("z", "1")]);
        let _ = arguments.take::<Length>("a", Measure::Length);
        let _ = arguments.take::<Length>("bottom", Measure::Length);
        assert_eq!(arguments.close().unwrap_err().len(), 4);
    }

    #[test]
    fn what_is_wrong_with_an_input_is_said_in_words() {
        let told = |given: Vec<(&str, &str)>| -> Vec<String> {
            let mut arguments = Arguments::new(given);
            let _ = arguments.take::<Length>("height", Measure::Length);
            arguments.close().unwrap_err().iter().map(ToString::to_string).collect()
        };
        assert_eq!(told(vec![]), ["height is missing: it is a length"]);
        assert_eq!(told(vec![("height", "ten")]), ["height: \"ten\" is not a number"]);
        assert_eq!(told(vec![("hieght", "10 ft")]), ["there is no input hieght; the nearest is height"]);
        assert_eq!(told(vec![("height", "10 ft"), ("%", "1")]), ["there is no input %"]);
        assert_eq!(told(vec![("height", "10 ft"), ("height", "9 ft")]), ["height is given twice"]);
        let no_number = Mistake::NoNumber("load").to_string();
        assert!(no_number.starts_with("these inputs give no number for load"), "{no_number}");
    }

    #[test]
    fn an_input_is_taken_by_its_own_name_and_each_is_asked_for() {
        let mut arguments = Arguments::new(vec![("height", "10 ft"), ("width", "2 m")]);
        assert_eq!(arguments.take("width", Measure::Length), Some(crate::units::metres(2.0)));
        assert_eq!(arguments.take("height", Measure::Length), Some(crate::units::feet(10.0)));
        assert_eq!(arguments.close(), Ok(()));
    }

    #[test]
    fn the_nearest_name_is_the_most_alike_and_none_where_none_is_alike() {
        let of = |written| nearest(written, ["height", "width", "weight"].into_iter());
        assert_eq!(of("Hieght"), Some("height"));
        assert_eq!(of("widht"), Some("width"));
        assert_eq!(of("wieght"), Some("weight"));
        assert_eq!(of("q"), None);
    }
}
