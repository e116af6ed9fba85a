//! How often a gust comes at the site of a survey.

use crate::survey::{Reading, Survey};
use crate::units::Velocity;
use crate::wind::climate::{HowOften, how_often};
use crate::workings::Blank;

/// How often a gust comes, or why that is not known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Often {
    /// By the code's own law of return periods.
    Law(HowOften),
    /// Rarer than anything the law was seen for.
    Rarer,
    /// Not known, and why.
    Unknown(&'static str),
}

/// The longest return period the law was seen for.
pub const RAREST_YEARS: f64 = 3000.0;

const NO_SPEED: &str = "no design wind speed is given";
const NO_CATEGORY: &str = "no risk_category is given, so the return period of the design wind is not known";
const HURRICANES: &str = "the site is on a hurricane coast, where the law does not hold";
const OUTSIDE: &str = "the gust is outside the range of the law";

/// How often a gust comes at a site, at the worse end of its design wind.
#[must_use]
pub fn often(survey: &Survey, gust: Velocity) -> Often {
    let site = &survey.site;
    if site.hurricane_coast == Some(true) {
        return Often::Unknown(HURRICANES);
    }
    let design = match site.wind_speed.reading {
        Reading::Measured(speed) | Reading::Between(_, speed) => speed,
        Reading::Unknown => return Often::Unknown(NO_SPEED),
    };
    let Some(period) =
        site.risk_category.as_deref().and_then(|category| site.code.design_return_period(category))
    else {
        return Often::Unknown(NO_CATEGORY);
    };
    match how_often(gust, design, period, &mut Blank) {
        Ok(found) => Often::Law(found),
        Err(error) if error.above && gust > design * 0.5 => Often::Rarer,
        Err(_) => Often::Unknown(OUTSIDE),
    }
}

/// A number to one significant figure, as an order of magnitude deserves.
fn rough(value: f64) -> f64 {
    let size = 10.0_f64.powf(value.log10().floor());
    (value / size).round() * size
}

impl Often {
    /// In words: "about once in 40 years", "10 to 40 days a year".
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::Unknown(why) => format!("how often is not known: {why}"),
            Self::Rarer => format!("rarer than once in {RAREST_YEARS} years"),
            Self::Law(HowOften { days_a_year: Some((fewest, most)), .. }) => {
                let (fewest, most) = (rough(*fewest), rough(*most));
                if most >= 300.0 {
                    "most days of the year".to_owned()
                } else if most < 1.0 {
                    "less than once a year".to_owned()
                } else if fewest < 1.0 {
                    format!("up to {most} days a year")
                } else {
                    format!("some {fewest} to {most} days a year")
                }
            }
            Self::Law(HowOften { years, exact: false, .. }) if *years < 1.0 => {
                let times = rough(1.0 / years);
                if times < 2.0 {
                    "about once a year".to_owned()
                } else if times < 3.0 {
                    "about twice a year".to_owned()
                } else {
                    format!("about {times} times a year")
                }
            }
            Self::Law(HowOften { years, exact: false, .. }) => {
                let years = years.round().max(1.0);
                if years < 1.5 {
                    "about once a year".to_owned()
                } else {
                    format!("about once in {years} years")
                }
            }
            Self::Law(HowOften { years, .. }) => {
                let step = if *years < 20.0 {
                    1.0
                } else if *years < 200.0 {
                    10.0
                } else {
                    100.0
                };
                format!("about once in {} years", (years / step).round() * step)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn law(years: f64, days: Option<(f64, f64)>) -> Often {
        Often::Law(HowOften {
            years,
            in_one_year: 0.0,
            in_ten_years: 0.0,
            days_a_year: days,
            exact: years >= 5.0,
        })
    }

    #[test]
    fn an_order_of_magnitude_is_told_as_one() {
        assert_eq!(law(0.1, Some((11.3, 45.2))).words(), "some 10 to 50 days a year");
        assert_eq!(law(0.001, Some((900.0, 3600.0))).words(), "most days of the year");
        assert_eq!(law(0.4, None).words(), "about 3 times a year");
        assert_eq!(law(0.5, None).words(), "about twice a year");
        assert_eq!(law(3.2, None).words(), "about once in 3 years");
        assert_eq!(law(47.0, None).words(), "about once in 50 years");
        assert_eq!(law(723.0, None).words(), "about once in 700 years");
    }
}
