//! From a survey to a fence: what is not known is settled at one end.
//!
//! This is the only way from a [`Survey`] to a [`Fence`]: a fence holds a value or nothing.

use super::layers::shortened;
use super::reading::{Extreme, Reading};
use super::{
    Open, PostSurvey, RailSurvey, RunSurvey, SectionSurvey, SiteReading, Survey, TubeSurvey, WallBasis,
};
use crate::fence::{
    Condition, Fence, GuyKind, PostKind, RailPlace, Rails, Run, Screen, Section, Shape, Tube, Wall,
};
use crate::loads::{Dress, run_loads};
use crate::member::Format;
use crate::numerics::between;
use crate::screen::CombinedSolidity;
use crate::units::{Length, Moment, Pressure, Quantity, Velocity, mph};
use crate::wind::{Case, Event, Heavier, KeyKind, Leaf, Site, SiteValue, SiteValues, Strip};
use crate::workings::Blank;

/// A fence and its site with one value for everything.
#[derive(Debug, Clone, PartialEq)]
pub struct Settled {
    /// The fence.
    pub fence: Fence,
    /// The site.
    pub site: Site,
}

/// A value that is not known to a point.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenKey {
    /// Where it stands, such as `post.newer.wall`.
    pub key: String,
    /// What to measure, in words.
    pub measure_next: String,
}

impl Survey {
    /// Everything that is not known to a point, the posts first.
    #[must_use]
    pub fn open_keys(&self) -> Vec<OpenKey> {
        let mut keys = Vec::new();
        let mut add = |open: bool, key: &str, measure_next: String| {
            if open {
                keys.push(OpenKey { key: key.to_owned(), measure_next });
            }
        };
        for post in &self.posts {
            let name = &post.name;
            match &post.section {
                SectionSurvey::Tube(tube) => tube.open_keys(name, &mut add),
                SectionSurvey::Modulus(shape) => {
                    add(
                        !shape.modulus.reading.is_point(),
                        &shape.modulus.key,
                        format!("the section modulus of posts \"{name}\", from their maker"),
                    );
                    add(
                        !shape.yield_strength.reading.is_point(),
                        &shape.yield_strength.key,
                        format!("the grade of posts \"{name}\", by the mill's paper"),
                    );
                }
                SectionSurvey::Moment(post) => add(
                    !post.moment.reading.is_point(),
                    &post.moment.key,
                    format!("the moment that posts \"{name}\" may carry, from their maker"),
                ),
                SectionSurvey::Timber(timber) => timber.open_keys(name, &mut add),
            }
        }
        for run in &self.runs {
            if let Some(solidity) = &run.solidity {
                add(
                    !solidity.reading.is_point(),
                    &solidity.key,
                    format!("the open area of the cloth on {}, from its maker", shortened(&run.run.name)),
                );
            }
            if let Some(condition) = &run.condition {
                add(
                    !condition.reading.is_point(),
                    &condition.key,
                    format!("whether ice may close the cloth on {}", shortened(&run.run.name)),
                );
            }
            for over in &run.over {
                add(
                    !over.solidity.reading.is_point(),
                    &over.solidity.key,
                    format!(
                        "the open area of the cloth over the cloth on {}, from its maker",
                        shortened(&run.run.name)
                    ),
                );
            }
        }
        for run in &self.runs {
            for (place, rail) in RailPlace::ALL.into_iter().zip(&run.rails) {
                if let Some(rail) = rail {
                    rail.open_keys(&run.run.name, place, &mut add);
                }
            }
            if let Some(fastening) = &run.fastening {
                fastening.open_keys(&run.run.name, &mut add);
            }
        }
        for footing in &self.footings {
            footing.open_keys(&mut add);
        }
        self.site.soil.open_keys(&mut add);
        add(
            matches!(self.site.wind_speed.reading, Reading::Between(..)),
            &self.site.wind_speed.key,
            "the design wind speed, from the building department".to_owned(),
        );
        for value in &self.site.values {
            add(
                !value.reading.is_point(),
                &value.key,
                format!("the site's {}", value.key.trim_start_matches("site.").replace(['_', '.'], " ")),
            );
        }
        keys
    }

    /// Whether a key is of a rail.
    #[must_use]
    pub fn is_of_rail(&self, key: &str) -> bool {
        let tubes =
            self.runs.iter().flat_map(|run| &run.rails).flatten().filter_map(|rail| rail.tube.as_ref());
        tubes.flat_map(|tube| [&tube.wall.key, &tube.yield_strength.key]).any(|of_rail| of_rail == key)
    }

    /// The fence with each open value at the end that `end` says for its key.
    #[must_use]
    pub fn settle(&self, end: &dyn Fn(&str) -> Extreme) -> Settled {
        let kinds = self.posts.iter().map(|post| kind(post, self.site.format, end)).collect();
        let runs = self.runs.iter().map(|survey| hung(survey, self.site.format, end)).collect();
        let wind_speed = heavier(&self.site.wind_speed, end, |speed| speed);
        let site = self.site.code.site(&SiteValues { wind_speed, values: self.site_values(end) });
        let footings = self.footings.iter().map(|footing| footing.settled(end)).collect();
        let ground = self.site.soil.settled(end);
        let mut fence = Fence { kinds, runs, footings, ground, footing_method: self.site.footing_method };
        for (at, survey) in self.runs.iter().enumerate() {
            settle_solidity(survey, at, &mut fence, &site, end);
        }
        Settled { fence, site }
    }

    /// The values of the code's keys, each at its end; where no end is the heavier for sure, what lies between is tried.
    fn site_values(&self, end: &dyn Fn(&str) -> Extreme) -> Vec<SiteValue> {
        let (mut values, mut tried) = (Vec::new(), Vec::new());
        for (at, (open, leaf)) in self.site.values.iter().zip(self.site.code.leaves()).enumerate() {
            let (low, high) = ends_of(open, &leaf);
            let worst = if leaf.key.heavier == Heavier::Lesser { low } else { high };
            let best = if leaf.key.heavier == Heavier::Lesser { high } else { low };
            let extreme = end(&open.key);
            values.push(if extreme == Extreme::Worst { worst } else { best });
            if leaf.key.heavier == Heavier::Between && low != high {
                tried.push(Tried { at, low, high, extreme });
            }
        }
        // What is best is chosen against the worst of the rest.
        tried.sort_by_key(|one| one.extreme == Extreme::Worst);
        self.try_all(&tried, &mut values);
        values
    }

    /// Tries what lies between and keeps the extreme one; its wind.
    ///
    /// The wind is that at the top of the highest run. How far a hill's effect reaches shifts the extreme a little
    /// from height to height, by far less than a hundredth over the heights of fences.
    fn try_all(&self, tried: &[Tried], values: &mut Vec<SiteValue>) -> f64 {
        let Some((first, rest)) = tried.split_first() else { return self.probe(values) };
        let mut found: Option<(f64, Vec<SiteValue>)> = None;
        let mut take = |value: SiteValue, values: &mut Vec<SiteValue>| {
            values[first.at] = value;
            let wind = self.try_all(rest, values);
            let farther = found.as_ref().is_none_or(|(before, _)| match first.extreme {
                Extreme::Worst => wind > *before,
                Extreme::Best => wind < *before,
            });
            if farther {
                found = Some((wind, values.clone()));
            }
            farther
        };
        match (first.low, first.high) {
            (SiteValue::Choice(low), SiteValue::Choice(high)) => {
                for choice in low..=high {
                    take(SiteValue::Choice(choice), values);
                }
            }
            (SiteValue::Quantity(mut low), SiteValue::Quantity(mut high)) => {
                // From the whole range ever closer round what was found.
                for _ in 0..ROUNDS {
                    let step = |at: u32| between(low, high, f64::from(at) / f64::from(STEPS));
                    let mut nearest = None;
                    for at in 0..=STEPS {
                        if take(SiteValue::Quantity(step(at)), values) {
                            nearest = Some(at);
                        }
                    }
                    let Some(nearest) = nearest else { break };
                    (low, high) = (step(nearest.saturating_sub(1)), step((nearest + 1).min(STEPS)));
                }
            }
            _ => {}
        }
        let Some((wind, kept)) = found else { return self.probe(values) };
        *values = kept;
        wind
    }

    /// The pressure of one gust at the top of the highest run; nothing where the code gives none.
    fn probe(&self, values: &[SiteValue]) -> f64 {
        let site = self.site.code.site(&SiteValues { wind_speed: None, values: values.to_vec() });
        let tops = self.runs.iter().map(|survey| survey.run.top_above_ground());
        let centroid = Length::from_si(tops.map(Length::si).fold(0.0, f64::max));
        let strip = Strip { centroid, solidity: 0.5 };
        let pressure = site.open_pressure(&strip, Case::Open, Event::Gust(PROBE), &mut Blank);
        pressure.ok().flatten().map_or(0.0, Pressure::si)
    }

    /// Everything at its worst end.
    #[must_use]
    pub fn at_worst(&self) -> Settled {
        self.settle(&|_| Extreme::Worst)
    }

    /// Everything at its best end.
    #[must_use]
    pub fn at_best(&self) -> Settled {
        self.settle(&|_| Extreme::Best)
    }
}

/// A site key whose extreme may lie between its ends.
struct Tried {
    at: usize,
    low: SiteValue,
    high: SiteValue,
    extreme: Extreme,
}

/// A gust to compare winds by; the result does not depend on it.
const PROBE: Velocity = mph(100.0);
/// Into how many steps a range is cut, and how often what was found is looked at more closely.
const STEPS: u32 = 64;
const ROUNDS: u32 = 3;

/// Both ends of a site key, the lesser first.
fn ends_of(open: &Open<SiteReading>, leaf: &Leaf) -> (SiteValue, SiteValue) {
    let value = |reading| match reading {
        SiteReading::Choice(choice) => SiteValue::Choice(choice),
        SiteReading::Quantity(si) => SiteValue::Quantity(si),
        SiteReading::Absent => SiteValue::Absent,
    };
    match (open.reading.low(), open.reading.high(), leaf.key.kind) {
        (Some(low), Some(high), _) => (value(low), value(high)),
        // Unknown among choices: any of them.
        (.., KeyKind::Choice(choices)) => (SiteValue::Choice(0), SiteValue::Choice(choices.len() - 1)),
        (.., KeyKind::Quantity(_, default)) => {
            let taken = SiteValue::Quantity(default.map_or(0.0, |default| default.si));
            (taken, taken)
        }
        (.., KeyKind::Table(_)) => (SiteValue::Absent, SiteValue::Absent),
    }
}

/// A run with its cloth at one end of its solidity and condition.
///
/// Dense cloth is the heavier on its own run and the lighter round the corner of another, whose ends it shelters: as
/// a return it stands at the other end.
fn hung(survey: &RunSurvey, format: Format, end: &dyn Fn(&str) -> Extreme) -> Run {
    let mut run = survey.run.clone();
    let rail = |rail: &Option<RailSurvey>| rail.as_ref().map(|rail| rail.settled(format, end));
    let [top, middle, bottom] = &survey.rails;
    for guy in &mut run.guys {
        // What a maker allows is held against allowable-stress loads, whatever the steel is designed by.
        guy.format = match guy.kind {
            GuyKind::Guy { .. } => Format::Asd,
            GuyKind::BackBrace(_) => format,
        };
    }
    run.rails = Rails { top: rail(top), middle: rail(middle), bottom: rail(bottom) };
    if let (Some(screen), Some(fastening)) = (&mut run.screen, &survey.fastening) {
        screen.fastening = Some(fastening.settled(end));
    }
    let (Some(screen), Some(solidity)) = (&mut run.screen, &survey.solidity) else { return run };
    let other = |key: &str| match end(key) {
        Extreme::Worst => Extreme::Best,
        Extreme::Best => Extreme::Worst,
    };
    let settled = |open, end: &dyn Fn(&str) -> Extreme| heavier(open, end, |value| value).unwrap_or(1.0);
    screen.solidity = settled(solidity, end);
    screen.over = survey.over.iter().map(|over| settled(&over.solidity, end)).collect();
    let mut as_return = survey.over.iter().fold(settled(solidity, &other), |first, over| {
        CombinedSolidity { first, second: settled(&over.solidity, &other) }.work(&mut Blank)
    });
    if let Some(condition) = &survey.condition {
        screen.condition = condition_at(condition, end);
        if condition_at(condition, &other) == Condition::Iced {
            as_return = 1.0;
        }
    }
    let condition = survey.condition.as_ref().is_some_and(|condition| !condition.reading.is_point());
    let open =
        survey.over.iter().map(|over| &over.solidity).chain([solidity]).any(|open| !open.reading.is_point());
    screen.solidity_as_return = (condition || open).then_some(as_return);
    run
}

fn condition_at(open: &Open<Condition>, end: &dyn Fn(&str) -> Extreme) -> Condition {
    match (open.reading, end(&open.key)) {
        (Reading::Measured(condition), _) => condition,
        (_, Extreme::Worst) => Condition::Iced,
        (_, Extreme::Best) => Condition::Dry,
    }
}

/// What stands just below a step of the code, and is told from it.
const BELOW: f64 = 1.0 - 1e-6;

/// Where load does not rise with solidity all the way, the extreme is looked for: at both ends and on either side of
/// every step of the code between them, by the largest base moment in one gust.
///
/// Between two steps load rises (a test sweeps it). Where the least pressure governs at the design wind it rises over
/// the steps too: there a range that ends just above a step may be up to a tenth heavier than what is taken.
fn settle_solidity(
    survey: &RunSurvey,
    at: usize,
    fence: &mut Fence,
    site: &Site,
    end: &dyn Fn(&str) -> Extreme,
) {
    let Some(Open { key, reading: Reading::Between(low, high) }) = &survey.solidity else { return };
    let run = &fence.runs[at];
    if run.screen.as_ref().is_none_or(|screen| screen.condition == Condition::Iced) {
        return;
    }
    let link = run.all_layers(0.0, &mut Blank);
    let cloth = |all: f64| 1.0 - (1.0 - all) / (1.0 - link);
    let steps = site.code().solidity_steps().iter().flat_map(|step| [cloth(step * BELOW), cloth(*step)]);
    let inner: Vec<f64> = steps.filter(|solidity| low < solidity && solidity < high).collect();
    if inner.is_empty() {
        return;
    }
    let mut trial = fence.clone();
    let mut hang = |solidity: f64| {
        if let Some(screen) = &mut trial.runs[at].screen {
            *screen = Screen { solidity, ..screen.clone() };
        }
        let loads = run_loads(&trial, at, Dress::AsHung, site, Event::Gust(PROBE)).ok()?;
        let largest = loads.posts.iter().map(|post| post.moment.si().abs()).fold(0.0, f64::max);
        Some((largest, solidity))
    };
    let found = [*low, *high].into_iter().chain(inner).filter_map(&mut hang);
    let found = match end(key) {
        Extreme::Worst => found.max_by(|one, other| one.0.total_cmp(&other.0)),
        Extreme::Best => found.min_by(|one, other| one.0.total_cmp(&other.0)),
    };
    if let (Some((_, solidity)), Some(screen)) = (found, &mut fence.runs[at].screen) {
        screen.solidity = solidity;
    }
}

/// A value that is the worse the greater it is.
pub(super) fn heavier<T: Copy, U>(
    open: &Open<T>,
    end: &dyn Fn(&str) -> Extreme,
    of: impl Fn(T) -> U,
) -> Option<U> {
    match end(&open.key) {
        Extreme::Worst => open.reading.high().map(of),
        Extreme::Best => open.reading.low().map(of),
    }
}

/// A value that is the worse the lesser it is.
pub(super) fn weaker<T: Copy>(open: &Open<T>, end: &dyn Fn(&str) -> Extreme) -> Option<T> {
    match end(&open.key) {
        Extreme::Worst => open.reading.low(),
        Extreme::Best => open.reading.high(),
    }
}

pub(super) fn kind(post: &PostSurvey, format: Format, end: &dyn Fn(&str) -> Extreme) -> PostKind {
    let section = match &post.section {
        SectionSurvey::Tube(tube) => Section::Tube(tube.at_ends(end)),
        SectionSurvey::Modulus(shape) => Section::Modulus {
            face: shape.face,
            modulus: weaker(&shape.modulus, end).unwrap_or_default(),
            yield_strength: weaker(&shape.yield_strength, end).unwrap_or_default(),
        },
        SectionSurvey::Moment(post) => Section::Moment {
            face: post.face,
            moment: weaker(&post.moment, end).unwrap_or_default(),
            format: post.format,
        },
        SectionSurvey::Timber(timber) => Section::Timber(timber.settled(end)),
    };
    PostKind { name: post.name.clone(), section, format }
}

impl TubeSurvey {
    fn open_keys(&self, name: &str, add: &mut impl FnMut(bool, &str, String)) {
        add(
            !self.across.reading.is_point(),
            &self.across.key,
            if self.is_square {
                format!("the width of posts \"{name}\", with a caliper above the concrete")
            } else {
                format!("the girth of posts \"{name}\", with a tape above the concrete")
            },
        );
        if matches!(self.wall.reading, Reading::Unknown) {
            add(
                true,
                &self.wall.key,
                format!(
                    "wall and grade of posts \"{name}\": wall with a caliper at an open top, grade by the mill's paper"
                ),
            );
        } else {
            add(
                !self.wall.reading.is_point(),
                &self.wall.key,
                format!("the wall of posts \"{name}\", with a caliper at an open top"),
            );
            add(
                !self.yield_strength.reading.is_point(),
                &self.yield_strength.key,
                format!("the grade of posts \"{name}\", by the mill's paper"),
            );
        }
        add(
            !self.rust.reading.is_point(),
            &self.rust.key,
            format!("rust of posts \"{name}\" at grade: scrape it clean and measure what is left"),
        );
    }

    /// The tube at the ends asked for; where its wall is not known, a pipe of the catalogue.
    pub(super) fn at_ends(&self, end: &dyn Fn(&str) -> Extreme) -> Tube {
        if matches!(self.wall.reading, Reading::Unknown) {
            catalogue_tube(self, end)
        } else {
            self.settled(end)
        }
    }

    fn settled(&self, end: &dyn Fn(&str) -> Extreme) -> Tube {
        let wall = weaker(&self.wall, end).unwrap_or_default();
        let yield_strength = weaker(&self.yield_strength, end).unwrap_or_else(|| {
            let (low, high) = self.unknown_yield();
            if end(&self.yield_strength.key) == Extreme::Worst { low.value } else { high.value }
        });
        let across = weaker(&self.across, end).unwrap_or_default();
        let shape = if self.is_square {
            Shape::Square { width: across }
        } else {
            let girth = self
                .girth
                .and_then(|girth| weaker(&Open { key: self.across.key.clone(), reading: girth }, end));
            Shape::Round { girth, diameter: across }
        };
        Tube { shape, wall: self.wall_of(wall), yield_strength, rust: self.rusted(end) }
    }

    fn rusted(&self, end: &dyn Fn(&str) -> Extreme) -> Length {
        heavier(&self.rust, end, |rust| rust).unwrap_or_default()
    }

    const fn wall_of(&self, wall: Length) -> Wall {
        match self.basis {
            WallBasis::Nominal => Wall::Nominal(wall),
            WallBasis::Seamless => Wall::Seamless(wall),
            WallBasis::Measured => Wall::Measured(wall),
        }
    }
}

/// Wall unknown: every catalogue pipe of the diameter, wall and grade taken together, the weakest or the
/// strongest. A grade that is known is kept. The catalogue's own diameter is taken, so that a tape's reading
/// does not make a pipe stronger than it is.
fn catalogue_tube(post: &TubeSurvey, end: &dyn Fn(&str) -> Extreme) -> Tube {
    let mut candidates: Vec<(Option<Moment>, Tube)> = Vec::new();
    for pipe in post.pipes() {
        let grades: [Pressure; 2] = match post.yield_strength.reading {
            Reading::Unknown => [pipe.yield_low, pipe.yield_high],
            Reading::Measured(known) => [known, known],
            Reading::Between(low, high) => [low, high],
        };
        for yield_strength in grades {
            let tube = Tube {
                shape: Shape::Round { girth: None, diameter: pipe.diameter },
                wall: if post.basis == WallBasis::Seamless {
                    Wall::Seamless(pipe.wall)
                } else {
                    Wall::Nominal(pipe.wall)
                },
                yield_strength,
                rust: post.rusted(end),
            };
            // Both formats put the pipes in one order.
            let strength = tube.strength(Format::Lrfd, Length::from_si(1.0), &mut Blank).ok();
            candidates.push((strength.map(|strength| strength.moment), tube));
        }
    }
    // A pipe that rust has gone through has no strength and is the weakest of all.
    let strength = |candidate: &(Option<Moment>, Tube)| candidate.0.map_or(f64::NEG_INFINITY, Quantity::si);
    let order = |one: &(Option<Moment>, Tube), other: &(Option<Moment>, Tube)| {
        strength(one).total_cmp(&strength(other))
    };
    let chosen = match end(&post.wall.key) {
        Extreme::Worst => candidates.into_iter().min_by(order),
        Extreme::Best => candidates.into_iter().max_by(order),
    };
    chosen.expect("reading a survey refuses an unknown wall without a catalogue pipe").1
}
