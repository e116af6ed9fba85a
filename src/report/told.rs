//! What every report for reading says in the same words: the runs told together, their cloth, the wind, what was
//! not checked, what to measure next.

use super::figures::{gust, length, speed_unit};
use crate::answers::{Check, RunAnswer};
use crate::fence::Run;
use crate::survey::{Reading, RunSurvey, SiteReading};
use crate::units::{Measure, Quantity, System, Velocity, metres_per_second, trimmed};
use crate::verdict::PartKind;
use crate::wind::KeyKind;

/// Runs that are told together.
pub(super) struct Alike<'a> {
    pub(super) names: Vec<&'a str>,
    /// By index.
    pub(super) runs: Vec<usize>,
    /// The first of them by index.
    pub(super) at: usize,
    pub(super) answer: &'a RunAnswer,
    pub(super) run: &'a Run,
    pub(super) survey: &'a RunSurvey,
}

/// Runs in the order of the survey, those with the same cloth and the same figures at every post together.
pub(super) fn alike(check: &Check) -> Vec<Alike<'_>> {
    together(check, |one, other| one.worst == other.worst && one.best == other.best)
}

/// The same, those together that have the same figures near the ends, inside and bare; their corner posts may differ
/// by what stands round the corner.
pub(super) fn alike_in_groups(check: &Check) -> Vec<Alike<'_>> {
    together(check, |one, other| {
        one.near_ends == other.near_ends && one.inside == other.inside && one.bare == other.bare
    })
}

fn together(check: &Check, same: fn(&RunAnswer, &RunAnswer) -> bool) -> Vec<Alike<'_>> {
    let mut all: Vec<Alike<'_>> = Vec::new();
    for (at, answer) in check.runs.iter().enumerate() {
        let (run, survey) = (&check.settled.fence.runs[at], &check.survey.runs[at]);
        let like = all.iter_mut().find(|one| {
            one.run.bays == run.bays
                && one.run.screen == run.screen
                && one.run.height == run.height
                && one.survey.cloth == survey.cloth
                && one.survey.fastening == survey.fastening
                && one.run.start.is_like(run.start)
                && one.run.finish.is_like(run.finish)
                && same(one.answer, answer)
        });
        match like {
            Some(one) => {
                one.names.push(&run.name);
                one.runs.push(at);
            }
            None => all.push(Alike { names: vec![&run.name], runs: vec![at], at, answer, run, survey }),
        }
    }
    all
}

/// How an equation was solved: its rounds and what is left of it.
pub(super) fn rounds(rounds: usize, residual: f64) -> String {
    let times = if rounds == 1 { "1 round".to_owned() } else { format!("{rounds} rounds") };
    format!("in {times}; of the equation is left {residual:.0e} of its largest term")
}

/// A wind speed that was given.
pub(super) fn speed(speed: Velocity, system: System) -> String {
    format!("{} {}", trimmed(Measure::Speed.in_unit(speed.si(), system), 1), speed_unit(system))
}

/// The design wind and where it was looked up.
pub(super) fn design_wind(check: &Check) -> String {
    let (site, system) = (&check.survey.site, check.survey.units);
    let text = match site.wind_speed.reading {
        Reading::Measured(one) => format!("design wind {}", speed(one, system)),
        Reading::Between(low, high) => {
            format!("design wind {} to {}", speed(low, system), speed(high, system))
        }
        Reading::Unknown => return "design wind UNKNOWN".to_owned(),
    };
    match &site.wind_speed_source {
        Some(source) => format!("{text} ({source})"),
        None => format!("{text} (source not given)"),
    }
}

/// The code, the design wind and what the code asks of the site, for joining in one line.
pub(super) fn wind(check: &Check) -> Vec<String> {
    let site = &check.survey.site;
    let mut wind = vec![site.code.document().short.to_owned(), design_wind(check)];
    let told = |category: &&String| {
        let category = format!("risk category {category}");
        !site.wind_speed_source.as_ref().is_some_and(|source| source.contains(&category))
    };
    wind.extend(site.risk_category.as_ref().filter(told).map(|category| format!("risk category {category}")));
    for (value, key) in site.values.iter().zip(site.code.site_keys()) {
        if let KeyKind::Choice(choices) = key.kind {
            let word = |reading: SiteReading| match reading {
                SiteReading::Choice(at) => choices[at].0,
                SiteReading::Quantity(_) => "",
            };
            wind.push(match (value.reading.low(), value.reading.high()) {
                (Some(low), Some(high)) if low == high => format!("{} {}", key.key, word(low)),
                (Some(low), Some(high)) => format!("{} {} or {}", key.key, word(low), word(high)),
                _ => format!("{} unknown", key.key),
            });
        }
    }
    wind
}

/// What was not checked of the fence, in the order of the parts.
pub(super) fn unchecked_parts(check: &Check) -> Vec<&'static str> {
    let unchecked = |kind: PartKind| {
        check
            .runs
            .iter()
            .flat_map(|run| &run.worst.posts)
            .any(|post| post.parts.iter().any(|part| part.kind == kind && part.ratio.is_none()))
    };
    let mut parts = Vec::new();
    if !check.has_speed() {
        parts.push("any post at the design wind (no speed is given)");
    }
    for (kind, name) in [
        (PartKind::Footing, "footings"),
        (PartKind::Rails, "rails"),
        (PartKind::Fastening, "ties and lacing"),
    ] {
        if unchecked(kind) {
            parts.push(name);
        }
    }
    parts
}

/// What the cloth of a run is called, where it has any; by its solidity where nobody named it.
pub(super) fn cloth_name(run: &Run, survey: &RunSurvey) -> String {
    match (&run.screen, &survey.cloth) {
        (_, Some(name)) => name.clone(),
        (Some(screen), None) if screen.name == "own" => format!("cloth {:.2} solid", screen.solidity),
        (Some(screen), None) => screen.name.clone(),
        (None, None) => String::new(),
    }
}

/// The cloth of a run and where it hangs.
pub(super) fn cloth(run: &Run, survey: &RunSurvey, system: System) -> String {
    let Some(screen) = &run.screen else { return "no cloth".to_owned() };
    let name = cloth_name(run, survey);
    let bays = if screen.first_bay == 0 && screen.end_bay == run.bays.len() {
        String::new()
    } else {
        format!(", bays {} to {}", screen.first_bay + 1, screen.end_bay)
    };
    format!(
        "{name} from {} to {} above the ground{bays}",
        length(screen.bottom, system),
        length(screen.top, system)
    )
}

/// What is not checked at all until it is measured.
pub(super) const FOOTINGS: &str = "the footings: how deep, how wide, and the soil";
/// Stands after what is little worth measuring.
pub(super) const LITTLE: &str = "(little to gain)";

/// What to measure next, the most telling first.
pub(super) fn measure_next(check: &Check) -> Vec<String> {
    let mut lines: Vec<String> = check
        .measure_next
        .iter()
        .map(|next| {
            if next.gain >= metres_per_second(0.45) {
                format!(
                    "{} (at best it lifts the limit gust of {} by {})",
                    next.what,
                    super::chart::clipped(next.run.as_deref().unwrap_or("a run"), 40),
                    gust(next.gain, check.survey.units)
                )
            } else {
                format!("{} {LITTLE}", next.what)
            }
        })
        .collect();
    if check.survey.runs.iter().any(|run| run.footing.is_none()) {
        lines.push(FOOTINGS.to_owned());
    }
    lines
}
