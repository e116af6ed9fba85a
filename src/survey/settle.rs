//! From a survey to a fence: what is not known is settled at one end.
//!
//! This is the only way from a [`Survey`] to a [`Fence`]: a fence holds a value or nothing.

use super::layers::shortened;
use super::reading::{Extreme, Reading};
use super::{Open, PostSurvey, SiteReading, Survey, WallBasis};
use crate::fence::{Fence, PostKind, Wall};
use crate::member::{aisc360_16, pipe};
use crate::units::{Length, Moment, Pressure, Quantity};
use crate::wind::{KeyKind, Site, SiteValue, SiteValues};
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
            add(
                !post.diameter.reading.is_point(),
                &post.diameter.key,
                format!("the girth of posts \"{name}\", with a tape above the concrete"),
            );
            if matches!(post.wall.reading, Reading::Unknown) {
                add(
                    true,
                    &post.wall.key,
                    format!(
                        "wall and grade of posts \"{name}\": wall with a caliper at an open top, grade by the mill's paper"
                    ),
                );
            } else {
                add(
                    !post.wall.reading.is_point(),
                    &post.wall.key,
                    format!("the wall of posts \"{name}\", with a caliper at an open top"),
                );
                add(
                    !post.yield_strength.reading.is_point(),
                    &post.yield_strength.key,
                    format!("the grade of posts \"{name}\", by the mill's paper"),
                );
            }
            add(
                !post.rust.reading.is_point(),
                &post.rust.key,
                format!("rust of posts \"{name}\" at grade: scrape it clean and measure what is left"),
            );
        }
        for run in &self.runs {
            if let Some(solidity) = &run.solidity {
                add(
                    !solidity.reading.is_point(),
                    &solidity.key,
                    format!("the open area of the cloth on {}, from its maker", shortened(&run.run.name)),
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
        add(
            matches!(self.site.wind_speed.reading, Reading::Between(..)),
            &self.site.wind_speed.key,
            "the design wind speed, from the building department".to_owned(),
        );
        for value in &self.site.values {
            add(
                !value.reading.is_point(),
                &value.key,
                format!("the site's {}", value.key.trim_start_matches("site.").replace('_', " ")),
            );
        }
        keys
    }

    /// The fence with each open value at the end that `end` says for its key.
    #[must_use]
    pub fn settle(&self, end: &dyn Fn(&str) -> Extreme) -> Settled {
        let kinds = self.posts.iter().map(|post| kind(post, end)).collect();
        let runs = self
            .runs
            .iter()
            .map(|survey| {
                let mut run = survey.run.clone();
                if let (Some(screen), Some(solidity)) = (&mut run.screen, &survey.solidity) {
                    let settled = |open| heavier(open, end, |value| value).unwrap_or(1.0);
                    screen.solidity = settled(solidity);
                    screen.over = survey.over.iter().map(|over| settled(&over.solidity)).collect();
                }
                run
            })
            .collect();
        let values = self
            .site
            .values
            .iter()
            .zip(self.site.code.site_keys())
            .map(|(value, key)| {
                let whole = match key.kind {
                    // Unknown among choices: from the lightest to the heaviest.
                    KeyKind::Choice(choices) => {
                        (SiteReading::Choice(0), SiteReading::Choice(choices.len() - 1))
                    }
                    KeyKind::Quantity(_, default) => {
                        let taken = SiteReading::Quantity(default.map_or(0.0, |default| default.si));
                        (taken, taken)
                    }
                };
                let (low, high) = match value.reading {
                    Reading::Measured(value) => (value, value),
                    Reading::Between(low, high) => (low, high),
                    Reading::Unknown => whole,
                };
                // Elevation thins the air: the lower ground is the heavier.
                let lighter_upwards = key.key == "ground_elevation";
                let worst = if lighter_upwards { low } else { high };
                let best = if lighter_upwards { high } else { low };
                match if end(&value.key) == Extreme::Worst { worst } else { best } {
                    SiteReading::Choice(choice) => SiteValue::Choice(choice),
                    SiteReading::Quantity(si) => SiteValue::Quantity(si),
                }
            })
            .collect();
        let wind_speed = heavier(&self.site.wind_speed, end, |speed| speed);
        Settled {
            fence: Fence { kinds, runs },
            site: self.site.code.site(&SiteValues { wind_speed, values }),
        }
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

/// A value that is the worse the greater it is.
fn heavier<T: Copy, U>(open: &Open<T>, end: &dyn Fn(&str) -> Extreme, of: impl Fn(T) -> U) -> Option<U> {
    match end(&open.key) {
        Extreme::Worst => open.reading.high().map(of),
        Extreme::Best => open.reading.low().map(of),
    }
}

/// A value that is the worse the lesser it is.
fn weaker<T: Copy>(open: &Open<T>, end: &dyn Fn(&str) -> Extreme) -> Option<T> {
    match end(&open.key) {
        Extreme::Worst => open.reading.low(),
        Extreme::Best => open.reading.high(),
    }
}

pub(super) fn kind(post: &PostSurvey, end: &dyn Fn(&str) -> Extreme) -> PostKind {
    let rust = heavier(&post.rust, end, |rust| rust).unwrap_or_default();
    if matches!(post.wall.reading, Reading::Unknown) {
        return catalogue_kind(post, rust, end);
    }
    let wall = weaker(&post.wall, end).unwrap_or_default();
    let yield_strength = weaker(&post.yield_strength, end).unwrap_or_else(|| {
        let (low, high) = pipe::UNKNOWN_YIELD;
        if end(&post.yield_strength.key) == Extreme::Worst { low.value } else { high.value }
    });
    let girth =
        post.girth.and_then(|girth| weaker(&Open { key: post.diameter.key.clone(), reading: girth }, end));
    PostKind {
        name: post.name.clone(),
        girth,
        diameter: weaker(&post.diameter, end).unwrap_or_default(),
        wall: match post.basis {
            WallBasis::Nominal => Wall::Nominal(wall),
            WallBasis::Seamless => Wall::Seamless(wall),
            WallBasis::Measured => Wall::Measured(wall),
        },
        yield_strength,
        rust,
    }
}

/// Wall unknown: every catalogue pipe of the diameter, wall and grade taken together, the weakest or the
/// strongest. A grade that is known is kept. The catalogue's own diameter is taken, so that a tape's reading
/// does not make a pipe stronger than it is.
fn catalogue_kind(post: &PostSurvey, rust: Length, end: &dyn Fn(&str) -> Extreme) -> PostKind {
    let mut candidates: Vec<(Option<Moment>, PostKind)> = Vec::new();
    for pipe in post.pipes() {
        let grades: [Pressure; 2] = match post.yield_strength.reading {
            Reading::Unknown => [pipe.yield_low, pipe.yield_high],
            Reading::Measured(known) => [known, known],
            Reading::Between(low, high) => [low, high],
        };
        for yield_strength in grades {
            let kind = PostKind {
                name: post.name.clone(),
                girth: None,
                diameter: pipe.diameter,
                wall: if post.basis == WallBasis::Seamless {
                    Wall::Seamless(pipe.wall)
                } else {
                    Wall::Nominal(pipe.wall)
                },
                yield_strength,
                rust,
            };
            let strength = kind
                .tube(&mut Blank)
                .ok()
                .and_then(|tube| aisc360_16::design_moment(tube, yield_strength, &mut Blank).ok())
                .map(|(moment, _)| moment);
            candidates.push((strength, kind));
        }
    }
    // A pipe that rust has gone through has no strength and is the weakest of all.
    let strength =
        |candidate: &(Option<Moment>, PostKind)| candidate.0.map_or(f64::NEG_INFINITY, Quantity::si);
    let order = |one: &(Option<Moment>, PostKind), other: &(Option<Moment>, PostKind)| {
        strength(one).total_cmp(&strength(other))
    };
    let chosen = match end(&post.wall.key) {
        Extreme::Worst => candidates.into_iter().min_by(order),
        Extreme::Best => candidates.into_iter().max_by(order),
    };
    chosen.expect("reading a survey refuses an unknown wall without a catalogue pipe").1
}
