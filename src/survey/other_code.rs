//! The same survey by another wind code, as far as its site says what that code asks.

use super::{Open, Reading, SiteReading, SiteSurvey, Survey};
use crate::wind::{Code, Heavier, KeyKind, Leaf};
use std::fmt;

/// A survey by another code.
#[derive(Debug, Clone, PartialEq)]
pub struct Recoded {
    /// The survey.
    pub survey: Survey,
    /// Keys given that the code does not read; what they say takes load off and no more than that.
    pub left_out: Vec<String>,
}

/// Why a survey cannot be worked by another code.
#[derive(Debug, Clone, PartialEq)]
pub enum OtherCode {
    /// Its design wind speed is another kind of speed.
    Speed {
        /// The code asked for.
        code: Code,
        /// The survey's own.
        own: Code,
    },
    /// The code asks for a key that the survey does not give.
    Lacks {
        /// The code asked for.
        code: Code,
        /// The key.
        key: String,
        /// What it is.
        about: &'static str,
    },
    /// The survey gives a key that the code does not read, and leaving it out could take load off.
    NotRead {
        /// The code asked for.
        code: Code,
        /// The key.
        key: String,
    },
}

impl fmt::Display for OtherCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Speed { code, own } => write!(
                f,
                "the survey's wind_speed is that of {} ({}), and {} takes another ({}): write a survey of its own for it",
                own.key(),
                own.speed_is(),
                code.key(),
                code.speed_is()
            ),
            Self::Lacks { code, key, about } => write!(
                f,
                "{} asks for {key} ({about}), which the survey does not give: write a survey of its own for it",
                code.key()
            ),
            Self::NotRead { code, key } => write!(
                f,
                "{} does not read {key}, which the survey gives, and without it the load could come out too small",
                code.key()
            ),
        }
    }
}

impl std::error::Error for OtherCode {}

/// Whether two keys hold the same: the same words, or the same measure.
fn same(one: &Leaf, other: &Leaf) -> bool {
    one.path() == other.path()
        && match (one.key.kind, other.key.kind) {
            (KeyKind::Choice(one), KeyKind::Choice(other)) => {
                one.iter().map(|(word, _)| word).eq(other.iter().map(|(word, _)| word))
            }
            (KeyKind::Quantity(one, _), KeyKind::Quantity(other, _)) => one == other,
            _ => false,
        }
}

/// What a key is taken as where nothing is given; nothing where it must be given.
fn left_out(leaf: &Leaf) -> Option<SiteReading> {
    match (leaf.table, leaf.key.kind) {
        (Some(_), _) => Some(SiteReading::Absent),
        (None, KeyKind::Quantity(_, Some(default))) => Some(SiteReading::Quantity(default.si)),
        _ => None,
    }
}

/// Whether a key may go unread without taking load off: it says what it is taken as without it, or less wind.
fn may_go(open: &Open<SiteReading>, leaf: &Leaf) -> bool {
    let Some(taken) = left_out(leaf) else { return false };
    let (Some(low), Some(high)) = (open.reading.low(), open.reading.high()) else { return false };
    let lighter = |value: SiteReading| match (value, taken) {
        (SiteReading::Quantity(value), SiteReading::Quantity(taken)) => match leaf.key.heavier {
            Heavier::Greater => value <= taken,
            Heavier::Lesser => value >= taken,
            Heavier::Between => value == taken,
        },
        (value, taken) => value == taken,
    };
    // Nothing at all is said where a table that is given says it in its place.
    [low, high].into_iter().all(|value| value == SiteReading::Absent || lighter(value))
}

impl Survey {
    /// The same survey by another code.
    ///
    /// # Errors
    /// If the code takes another wind speed, asks for what the survey does not give, or does not read what it gives.
    pub fn by_code(&self, code: Code) -> Result<Recoded, OtherCode> {
        let site = &self.site;
        let own = site.code;
        if own == code {
            return Ok(Recoded { survey: self.clone(), left_out: Vec::new() });
        }
        if own.speed_is() != code.speed_is() && !matches!(site.wind_speed.reading, Reading::Unknown) {
            return Err(OtherCode::Speed { code, own });
        }
        let mut values = Vec::new();
        for leaf in code.leaves() {
            let given = site.values.iter().zip(own.leaves()).find(|(_, theirs)| same(theirs, &leaf));
            let reading = match (given, left_out(&leaf)) {
                (Some((open, _)), _) => open.reading,
                (None, Some(taken)) => Reading::Measured(taken),
                (None, None) => {
                    return Err(OtherCode::Lacks { code, key: leaf.path(), about: leaf.key.about });
                }
            };
            values.push(Open { key: format!("site.{}", leaf.path()), reading });
        }
        let mut unread = Vec::new();
        for (open, leaf) in site.values.iter().zip(own.leaves()) {
            if code.leaves().any(|theirs| same(&theirs, &leaf)) {
                continue;
            }
            if !may_go(open, &leaf) {
                return Err(OtherCode::NotRead { code, key: leaf.path() });
            }
            let says = open.reading.low().is_some_and(|low| low != SiteReading::Absent);
            if says && open.reading.low() != left_out(&leaf) {
                unread.push(leaf.path());
            }
        }
        let site = SiteSurvey { code, values, ..site.clone() };
        Ok(Recoded { survey: Self { site, ..self.clone() }, left_out: unread })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Measure, Value};
    use crate::wind::SiteKey;

    const fn key(kind: KeyKind, heavier: Heavier) -> SiteKey {
        SiteKey { key: "k", about: "", kind, example: ["", ""], range: None, heavier, instead_of: None }
    }
    static LESS: SiteKey = key(
        KeyKind::Quantity(Measure::Elevation, Some(Value { si: 0.0, measure: Measure::Elevation })),
        Heavier::Lesser,
    );
    static MORE: SiteKey = key(
        KeyKind::Quantity(Measure::Ratio, Some(Value { si: 1.0, measure: Measure::Ratio })),
        Heavier::Greater,
    );
    static CHOICE: SiteKey = key(KeyKind::Choice(&[("a", ""), ("b", "")]), Heavier::Greater);

    fn goes(key: &'static SiteKey, reading: Reading<SiteReading>) -> bool {
        may_go(&Open { key: String::new(), reading }, &Leaf { table: None, key })
    }

    #[test]
    fn only_what_takes_load_off_may_go_unread() {
        let quantity = |si| Reading::Measured(SiteReading::Quantity(si));
        assert!(goes(&LESS, quantity(0.0)) && goes(&LESS, quantity(1000.0)));
        assert!(!goes(&LESS, quantity(-10.0)));
        assert!(goes(&MORE, quantity(1.0)) && !goes(&MORE, quantity(1.2)));
        assert!(!goes(&MORE, Reading::Between(SiteReading::Quantity(1.0), SiteReading::Quantity(1.3))));
        assert!(!goes(&CHOICE, Reading::Measured(SiteReading::Choice(0))));
        assert!(!goes(&LESS, Reading::Unknown));
    }
}
