//! From a survey to a fence: what is not known is settled at one end.
//!
//! This is the only way from a [`Survey`] to a [`Fence`]: a fence holds a value or nothing.

use super::layers::shortened;
use super::reading::{Extreme, Reading};
use super::{Open, PostSurvey, SectionSurvey, SiteReading, Survey, TubeSurvey, WallBasis};
use crate::fence::{Fence, PostKind, Section, Shape, Tube, Wall};
use crate::member::Format;
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
        }
        for run in &self.runs {
            if let Some(fastening) = &run.fastening {
                fastening.open_keys(&run.run.name, &mut add);
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
        let kinds = self.posts.iter().map(|post| kind(post, self.site.format, end)).collect();
        let runs = self
            .runs
            .iter()
            .map(|survey| {
                let mut run = survey.run.clone();
                if let (Some(screen), Some(solidity)) = (&mut run.screen, &survey.solidity) {
                    screen.solidity = heavier(solidity, end, |value| value).unwrap_or(1.0);
                }
                if let (Some(screen), Some(fastening)) = (&mut run.screen, &survey.fastening) {
                    screen.fastening = Some(fastening.settled(end));
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
        SectionSurvey::Tube(tube) => Section::Tube(if matches!(tube.wall.reading, Reading::Unknown) {
            catalogue_tube(tube, end)
        } else {
            tube.settled(end)
        }),
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
