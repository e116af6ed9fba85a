//! Figures as every report prints them: gusts rounded down, ratios rounded up.

use crate::units::{Length, Measure, Quantity, System, Value, Velocity, number};

/// A ratio as it is printed: rounded up at the second decimal, so that 1.001 never reads 1.00.
#[must_use]
pub fn ratio_up(ratio: f64) -> String {
    format!("{:.2}", (ratio * 100.0 - 1e-9).ceil() / 100.0)
}

/// A ratio at the worst and the best end of what is not known: "0.53 to 1.00".
#[must_use]
pub fn ratio_spread(worst: f64, best: Option<f64>) -> String {
    let worst = ratio_up(worst);
    match best.map(ratio_up) {
        Some(best) if best != worst => format!("{best} to {worst}"),
        _ => worst,
    }
}

/// A gust rounded down, to the mile an hour or to the tenth of a metre a second.
fn rounded_down(gust: Velocity, system: System) -> f64 {
    let step = if system == System::Us { 1.0 } else { 10.0 };
    (Measure::Speed.in_unit(gust.si(), system) * step + 1e-9).floor() / step
}

/// A gust rounded down, without its unit.
#[must_use]
pub fn gust_figure(gust: Velocity, system: System) -> String {
    number(rounded_down(gust, system), usize::from(system == System::Si))
}

/// A gust rounded down, with its unit.
#[must_use]
pub fn gust(gust: Velocity, system: System) -> String {
    format!("{} {}", gust_figure(gust, system), speed_unit(system))
}

/// A gust at the worst and the best end, without its unit: "31-44".
#[must_use]
pub fn gust_figures(worst: Velocity, best: Option<Velocity>, system: System) -> String {
    let worst = gust_figure(worst, system);
    match best.map(|best| gust_figure(best, system)) {
        Some(best) if best != worst => format!("{worst}-{best}"),
        _ => worst,
    }
}

/// A gust at the worst and the best end: "31 to 44 mph".
#[must_use]
pub fn gust_spread(worst: Velocity, best: Option<Velocity>, system: System) -> String {
    format!("{} {}", gust_figures(worst, best, system).replace('-', " to "), speed_unit(system))
}

/// A limit that is "at most" at the worst end, and what it is at the best: "31 mph (44 at best)".
#[must_use]
pub fn gust_at_most(worst: Velocity, best: Option<Velocity>, system: System) -> String {
    let told = gust(worst, system);
    match best.filter(|best| is_another_gust(worst, Some(*best), system)) {
        Some(best) => format!("{told} ({} at best)", gust_figure(best, system)),
        None => told,
    }
}

/// Whether the best end of a limit is printed beside the worst: where it is another figure.
#[must_use]
pub fn is_another_gust(worst: Velocity, best: Option<Velocity>, system: System) -> bool {
    best.is_some_and(|best| gust_figure(best, system) != gust_figure(worst, system))
}

/// The unit gusts are printed in.
#[must_use]
pub const fn speed_unit(system: System) -> &'static str {
    Measure::Speed.printed(system).0
}

/// A length as a tape reads it.
#[must_use]
pub fn length(length: Length, system: System) -> String {
    Value::new(length, Measure::Length).written(system)
}

/// Names in a sentence: "a, b and c".
#[must_use]
pub fn listed(names: &[&str]) -> String {
    match names {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}
