//! Ledgers, entries and cards.

use super::arguments::{Arguments, Mistake};
use crate::source::{Clause, Stated};
use crate::units::{Measure, Quantity, System, Value};
use std::fmt;

/// Where a calculation is written down, or not.
pub trait Ledger {
    /// Writes one step; the step is made only if it is kept.
    fn write(&mut self, entry: impl FnOnce() -> Entry);

    /// Uses a judgement, so that it cannot be used unprinted.
    #[inline(always)]
    fn judge<Q: Quantity>(&mut self, symbol: &'static str, stated: Stated<Q>) -> Q {
        self.write(|| Entry::Judged { symbol, value: Value::of(stated.value), because: stated.because });
        stated.value
    }

    /// The same for a value that is not printed as its kind is: a wall in inches, a weight of cloth for each area.
    fn judge_as<Q: Quantity>(&mut self, measure: Measure, symbol: &'static str, stated: Stated<Q>) -> Q {
        let value = Value::new(stated.value, measure);
        self.write(|| Entry::Judged { symbol, value, because: stated.because });
        stated.value
    }
}

/// The ledger that keeps nothing and costs nothing.
#[derive(Debug, Clone, Copy, Default)]
pub struct Blank;

impl Ledger for Blank {
    #[inline(always)]
    fn write(&mut self, _: impl FnOnce() -> Entry) {}
}

impl Ledger for Vec<Entry> {
    fn write(&mut self, entry: impl FnOnce() -> Entry) {
        self.push(entry());
    }
}

/// One input of a rule.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// The name in the expression and on the command line.
    pub key: &'static str,
    /// The symbol in the source.
    pub symbol: &'static str,
    /// What it is.
    pub about: &'static str,
    /// How it is read and written.
    pub measure: Measure,
}

/// A rule's card: what a reader must know to work it by hand.
#[derive(Debug, Clone, Copy)]
pub struct Card {
    /// The name by which it is asked.
    pub name: &'static str,
    /// One sentence.
    pub about: &'static str,
    /// Where it stands.
    pub clause: Clause,
    /// The inputs.
    pub given: &'static [Field],
    /// The name of the result.
    pub key: &'static str,
    /// The result's symbol.
    pub symbol: &'static str,
    /// How the result is written.
    pub measure: Measure,
    /// The expression, if the rule is one formula.
    pub source: Option<&'static str>,
}

/// One step of a calculation.
#[derive(Debug, Clone)]
pub enum Entry {
    /// A rule was worked.
    Worked {
        /// The rule.
        card: &'static Card,
        /// Its inputs, in the card's order.
        given: Vec<Value>,
        /// Its result.
        result: Value,
    },
    /// A judgement was used.
    Judged {
        /// Its symbol.
        symbol: &'static str,
        /// Its value.
        value: Value,
        /// Why.
        because: &'static str,
    },
    /// The results of several steps were added up.
    Added {
        /// The symbol of the sum.
        symbol: &'static str,
        /// What was added up.
        about: &'static str,
        /// How many terms.
        terms: usize,
        /// The sum.
        result: Value,
    },
    /// An equation was solved by rounds, or a system of them; its result is written as that of a rule.
    Solved {
        /// What was solved for.
        symbol: &'static str,
        /// The equation and how it was solved.
        method: &'static str,
        /// How many rounds it took; 1 where it took none.
        rounds: usize,
        /// What is left of the equation, as a share of its largest term.
        residual: f64,
    },
    /// A line between parts.
    Heading(String),
}

impl Entry {
    /// Whether what it writes down is no number.
    fn is_no_number(&self) -> bool {
        match self {
            Self::Worked { given, result, .. } => given.iter().chain([result]).any(|value| value.si.is_nan()),
            Self::Judged { value, .. } => value.si.is_nan(),
            Self::Added { result, .. } => result.si.is_nan(),
            Self::Solved { residual, .. } => residual.is_nan(),
            Self::Heading(_) => false,
        }
    }
}

/// A rule that can be worked.
pub trait Rule: Sized {
    /// Its card.
    const CARD: &'static Card;
    /// What it results in.
    type Output: Quantity;
    /// Its inputs from text.
    ///
    /// # Errors
    /// Every mistake in the inputs.
    fn read(arguments: &mut Arguments<'_>) -> Result<Self, Vec<Mistake>>;
}

/// A rule worked on its own, with its range checked.
pub trait Work: Rule {
    /// Works it.
    ///
    /// # Errors
    /// If an input is outside the range the source gives.
    fn try_work(self, ledger: &mut impl Ledger) -> Result<Self::Output, OutOfRange>;
}

type Worker = fn(&mut Arguments<'_>, &mut Vec<Entry>) -> Result<Value, Vec<Mistake>>;

/// A rule that can be asked by name.
#[derive(Debug, Clone, Copy)]
pub struct Listed {
    /// Its card.
    pub card: &'static Card,
    work: Worker,
}

impl Listed {
    /// The listing of a rule.
    #[must_use]
    pub const fn of<R: Work>() -> Self {
        Self {
            card: R::CARD,
            work: |arguments, ledger| {
                let before = ledger.len();
                let no_number = || Err(vec![Mistake::NoNumber(R::CARD.key)]);
                match R::read(arguments)?.try_work(ledger) {
                    Ok(result) => {
                        let value = Value::new(result, R::CARD.measure);
                        let steps = &ledger[before..];
                        // A result through a step that is no number would be a chance one.
                        if value.si.is_finite() && !steps.iter().any(Entry::is_no_number) {
                            Ok(value)
                        } else {
                            no_number()
                        }
                    }
                    Err(error) if error.value.si.is_nan() || error.limit.si.is_nan() => no_number(),
                    Err(error) => Err(vec![Mistake::OutOfRange(error)]),
                }
            },
        }
    }

    /// Works the rule on inputs from text and writes down every step.
    ///
    /// # Errors
    /// Every mistake in the inputs, or the range that was left.
    pub fn work(
        &self,
        arguments: &mut Arguments<'_>,
        ledger: &mut Vec<Entry>,
    ) -> Result<Value, Vec<Mistake>> {
        (self.work)(arguments, ledger)
    }
}

/// A value outside the range a source gives.
#[derive(Debug, Clone, PartialEq)]
pub struct OutOfRange {
    /// What was given.
    pub what: &'static str,
    /// Its value.
    pub value: Value,
    /// The limit it passes.
    pub limit: Value,
    /// Whether it lies above the limit, not below.
    pub above: bool,
    /// Where the limit stands.
    pub clause: Clause,
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let both = |value: Value| {
            let (us, si) = (value.written(System::Us), value.written(System::Si));
            if us == si { us } else { format!("{us} ({si})") }
        };
        if self.limit.si == f64::MIN_POSITIVE {
            return write!(f, "{} is {}: it must be above 0 ({})", self.what, both(self.value), self.clause);
        }
        if self.value.si.is_nan() || self.limit.si.is_nan() {
            return write!(
                f,
                "{} cannot be held against its limit ({}): these inputs give no number for it; is one of them below 0?",
                self.what, self.clause
            );
        }
        let (side, end) = if self.above { ("above", "greatest") } else { ("below", "least") };
        write!(
            f,
            "{} {} is {side} {}, the {end} in {}; nothing is given there",
            self.what,
            both(self.value),
            both(self.limit),
            self.clause
        )
    }
}

impl std::error::Error for OutOfRange {}

/// Refuses a value outside the range a clause gives.
///
/// # Errors
/// [`OutOfRange`] with the limit that was passed.
pub fn within<Q: Quantity>(
    what: &'static str,
    clause: Clause,
    value: Q,
    least: Q,
    greatest: Q,
) -> Result<(), OutOfRange> {
    within_as(Q::MEASURE, what, clause, value, least, greatest)
}

/// The same for a value that is written otherwise than its kind is, such as a number of years.
///
/// # Errors
/// [`OutOfRange`] with the limit that was passed.
pub fn within_as<Q: Quantity>(
    measure: Measure,
    what: &'static str,
    clause: Clause,
    value: Q,
    least: Q,
    greatest: Q,
) -> Result<(), OutOfRange> {
    let written = |quantity: Q| Value::new(quantity, measure);
    let out = |limit: Q, above| {
        Err(OutOfRange { what, value: written(value), limit: written(limit), above, clause })
    };
    // A limit that is no number, as a root of something below 0, limits nothing: it is refused like one that is passed.
    if greatest.si().is_nan() || value.si() > greatest.si() {
        out(greatest, true)
    } else if value.si() >= least.si() {
        Ok(())
    } else {
        out(least, false)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::{OURS, STATICS};
    use crate::units::{Length, feet};

    const PLACE: Clause = STATICS.at("here");
    static CARD: Card = Card {
        name: "a/b",
        about: "c",
        clause: PLACE,
        given: &[],
        key: "d",
        symbol: "e",
        measure: Measure::Ratio,
        source: None,
    };

    fn told(value: Length, least: Length, greatest: Length) -> String {
        within("height", PLACE, value, least, greatest).unwrap_err().to_string()
    }

    #[test]
    fn a_value_at_either_limit_is_within_and_one_beyond_is_told_with_the_limit_it_passes() {
        for height in [1.0, 1.5, 2.0] {
            assert_eq!(within("height", PLACE, feet(height), feet(1.0), feet(2.0)), Ok(()));
        }
        assert_eq!(
            told(feet(2.5), feet(1.0), feet(2.0)),
            "height 2 ft 6 in (0.762 m) is above 2 ft (0.61 m), the greatest in statics here; nothing is given there"
        );
        assert_eq!(
            told(feet(0.5), feet(1.0), feet(2.0)),
            "height 6 in (0.152 m) is below 1 ft (0.305 m), the least in statics here; nothing is given there"
        );
        assert_eq!(
            told(feet(0.0), Length::from_si(f64::MIN_POSITIVE), feet(2.0)),
            "height is 0 ft (0 m): it must be above 0 (statics here)"
        );
        let ratio = within("ratio", OURS.at("x").from_memory(), 3.0, 0.0, 2.0).unwrap_err().to_string();
        assert_eq!(
            ratio,
            "ratio 3.000 is above 2.000, the greatest in ours x (from memory); nothing is given there"
        );
    }

    #[test]
    fn neither_a_value_nor_a_limit_that_is_no_number_lets_anything_by() {
        let none = Length::from_si(f64::NAN);
        for (value, least, greatest) in
            [(none, feet(1.0), feet(2.0)), (feet(1.5), none, feet(2.0)), (feet(1.5), feet(1.0), none)]
        {
            let told = told(value, least, greatest);
            assert!(told.starts_with("height cannot be held against its limit (statics here)"), "{told}");
        }
    }

    crate::rule! {
        /// One part over another, neither of them the whole.
        ShareOf, "test/share", PLACE;
        /// part
        part: f64 = "a";
        /// whole
        whole: f64 = "b";
        share "s": f64
    }
    impl ShareOf {
        fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
            let share = self.part / self.whole;
            within("share", PLACE, share, 0.0, 1.0)?;
            Ok(self.keep(ledger, share))
        }
    }

    #[test]
    fn what_cannot_be_held_against_a_limit_is_no_number_and_what_passes_it_is_out_of_range() {
        let share = |part, whole| {
            Listed::of::<ShareOf>()
                .work(&mut Arguments::new(vec![("part", part), ("whole", whole)]), &mut Vec::new())
        };
        assert_eq!(share("1", "4").unwrap().si, 0.25);
        assert_eq!(share("0", "0").unwrap_err(), [Mistake::NoNumber("share")]);
        assert!(matches!(share("5", "4").unwrap_err()[..], [Mistake::OutOfRange(_)]));
    }

    #[test]
    fn a_judgement_is_used_and_written() {
        let mut ledger = Vec::new();
        assert_eq!(ledger.judge("G", Stated { value: 0.85, because: "ours" }), 0.85);
        assert!(matches!(ledger[..], [Entry::Judged { symbol: "G", because: "ours", .. }]));
        assert_eq!(Blank.judge("G", Stated { value: 0.85, because: "ours" }), 0.85);
    }

    #[test]
    fn a_step_is_no_number_if_anything_in_it_is_none() {
        let value = |si| Value { si, measure: Measure::Ratio };
        let worked =
            |given, result| Entry::Worked { card: &CARD, given: vec![value(given)], result: value(result) };
        let judged = |si| Entry::Judged { symbol: "a", value: value(si), because: "b" };
        let added = |si| Entry::Added { symbol: "a", about: "b", terms: 1, result: value(si) };
        let solved = |residual| Entry::Solved { symbol: "a", method: "b", rounds: 1, residual };
        for number in [0.0, f64::INFINITY] {
            for step in
                [worked(number, 1.0), worked(1.0, number), judged(number), added(number), solved(number)]
            {
                assert!(!step.is_no_number(), "{step:?}");
            }
        }
        let none = f64::NAN;
        for step in [worked(none, 1.0), worked(1.0, none), judged(none), added(none), solved(none)] {
            assert!(step.is_no_number(), "{step:?}");
        }
        assert!(!Entry::Heading(String::new()).is_no_number());
    }
}
