//! Who goes first, cloth or posts, in wind from either side?
//!
//! Wind that presses cloth *onto* the fence leaves its ties idle: the posts take all, and no tie will relieve them. Wind
//! that pulls it *off* asks the ties first. As the wind turns every run sees both.

use crate::fence::{Face, RailPlace};
use crate::loads::Push;
use crate::source::Stated;
use crate::survey::{RunSurvey, Survey};
use crate::units::Velocity;
use crate::verdict::{FasteningVerdict, RunVerdict, Then};

/// The answer for one run with cloth whose face is known or not.
#[derive(Debug, Clone, PartialEq)]
pub struct Winds {
    /// Where the wind that presses the cloth onto the fence comes from.
    pub onto_from: Side,
    /// Where the wind that pulls it off comes from.
    pub off_from: Side,
    /// The run on the other side of the court, by index: one wind presses one of the two and pulls off the other.
    pub opposite: Option<usize>,
    /// The gust in which what holds the cloth starts to go when it is pulled off, at the worst and the best end of what
    /// is not known; nothing where no strength is known.
    pub fastening: Option<(Velocity, Velocity)>,
    /// The gust in which the weakest post of the run is at its limit, in either direction, at both ends.
    pub posts: (Velocity, Velocity),
    /// The rail that reaches its limit first when the cloth is pulled off; nothing where none was checked.
    pub rail_off: Option<RailGust>,
    /// The same when it is pressed on.
    pub rail_onto: Option<RailGust>,
    /// Who goes first when it is pulled off.
    pub first: First,
    /// What follows the first tie, at the worst end.
    pub then: Option<Then>,
}

/// A rail and the gust in which it is at its limit, at the worst and the best end of what is not known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RailGust {
    /// Which rail.
    pub place: RailPlace,
    /// The bay by index.
    pub bay: usize,
    /// The gusts.
    pub gusts: (Velocity, Velocity),
}

impl RailGust {
    /// Of the rails of a run, that with the least limit gust when the wind acts this way; either way if none is asked for.
    pub(crate) fn of(worst: &RunVerdict, best: Option<&RunVerdict>, push: Option<Push>) -> Option<Self> {
        let first = |verdict: &RunVerdict| match push {
            Some(push) => verdict.rails.first_when(push).copied(),
            None => verdict.rails.first().copied(),
        };
        let found = first(worst)?;
        let low = found.limit_gust?;
        let high = best.and_then(first).and_then(|best| best.limit_gust).unwrap_or(low);
        Some(Self { place: found.place, bay: found.bay, gusts: (low, high) })
    }
}

/// A side from which the wind comes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Side {
    /// A compass side.
    Compass(&'static str),
    /// From inside the court, where no compass side was noted.
    Inside,
    /// From outside.
    Outside,
    /// One of the two, since nobody noted on which face the cloth hangs.
    NotKnown,
}

impl Side {
    /// In words.
    #[must_use]
    pub const fn in_words(&self) -> &'static str {
        match self {
            Self::Compass(word) => word,
            Self::Inside => "inside the court",
            Self::Outside => "outside the court",
            Self::NotKnown => "one of the two sides",
        }
    }
}

/// Who goes first as the wind rises.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum First {
    /// What holds the cloth.
    Fastening,
    /// A rail.
    Rail(RailPlace),
    /// The posts.
    Posts,
    /// Their gusts lie too close, or overlap in what is not known.
    TooClose,
    /// The strength of what holds the cloth is not known.
    NotKnown,
}

/// How far apart two gusts must lie before one is said to come first.
pub const MARGIN: Stated<f64> = Stated {
    value: 0.15,
    because: "ours: 15 % in the gust, 30 % in load, about what the strength of ties and of posts scatters by",
};

/// The two directions of each run with cloth; nothing for a bare one.
pub(crate) fn winds(
    survey: &Survey,
    run: usize,
    worst: &RunVerdict,
    best: Option<&RunVerdict>,
    then: Option<Then>,
) -> Option<Winds> {
    let this = &survey.runs[run];
    let screen = this.run.screen.as_ref()?;
    let (onto_from, off_from) = sides(this, screen.face);
    let gust = |verdict: &RunVerdict| {
        verdict.fastening.as_ref().ok().and_then(|found: &FasteningVerdict| found.first).map(|(gust, _)| gust)
    };
    let low = gust(worst);
    let fastening = low.map(|low| (low, best.and_then(gust).unwrap_or(low)));
    let posts = (worst.limit_gust, best.map_or(worst.limit_gust, |best| best.limit_gust));
    let rail = |push| RailGust::of(worst, best, Some(push));
    let rail_off = rail(Push::Off);
    Some(Winds {
        onto_from,
        off_from,
        opposite: opposite(survey, run),
        fastening,
        posts,
        first: first(fastening, rail_off, posts),
        rail_off,
        rail_onto: rail(Push::Onto),
        then,
    })
}

/// Whether one goes before the other, whatever the unknowns turn out to be.
#[must_use]
pub fn clearly_before(one: (Velocity, Velocity), other: (Velocity, Velocity)) -> bool {
    one.1 * (1.0 + MARGIN.value) <= other.0
}

fn first(
    fastening: Option<(Velocity, Velocity)>,
    rail: Option<RailGust>,
    posts: (Velocity, Velocity),
) -> First {
    let Some(fastening) = fastening else { return First::NotKnown };
    let before_rail = |one| rail.is_none_or(|rail| clearly_before(one, rail.gusts));
    if clearly_before(fastening, posts) && before_rail(fastening) {
        return First::Fastening;
    }
    if clearly_before(posts, fastening) && before_rail(posts) {
        return First::Posts;
    }
    match rail {
        Some(rail) if clearly_before(rail.gusts, fastening) && clearly_before(rail.gusts, posts) => {
            First::Rail(rail.place)
        }
        _ => First::TooClose,
    }
}

/// From where the wind presses the cloth onto the fence and from where it pulls it off.
fn sides(run: &RunSurvey, face: Option<Face>) -> (Side, Side) {
    let Some(face) = face else { return (Side::NotKnown, Side::NotKnown) };
    let (out, inside) = match run.side() {
        Some(side) => (Side::Compass(SIDES[side]), Side::Compass(SIDES[(side + 4) % 8])),
        None => (Side::Outside, Side::Inside),
    };
    match face {
        // Cloth on the inside is pressed against the mesh by wind that comes over the court.
        Face::Inside => (inside, out),
        Face::Outside => (out, inside),
    }
}

/// The compass sides in eighths of a turn clockwise.
const SIDES: [&str; 8] = [
    "the north",
    "the north-east",
    "the east",
    "the south-east",
    "the south",
    "the south-west",
    "the west",
    "the north-west",
];

/// The run of the same court that looks the other way and has cloth too.
fn opposite(survey: &Survey, run: usize) -> Option<usize> {
    let this = &survey.runs[run];
    let side = this.side()?;
    (0..survey.runs.len()).find(|other| {
        let there = &survey.runs[*other];
        *other != run
            && there.court == this.court
            && there.run.screen.is_some()
            && there.side() == Some((side + 4) % 8)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::mph;

    #[test]
    fn one_goes_first_only_where_the_gusts_lie_apart_whatever_the_unknowns() {
        let at = |low: f64, high: f64, posts: (f64, f64)| {
            first(Some((mph(low), mph(high))), None, (mph(posts.0), mph(posts.1)))
        };
        assert_eq!(at(20.0, 30.0, (34.5, 40.0)), First::Fastening);
        assert_eq!(at(20.0, 30.1, (34.5, 40.0)), First::TooClose);
        assert_eq!(at(60.0, 80.0, (34.0, 50.0)), First::Posts);
        assert_eq!(at(57.0, 80.0, (34.0, 50.0)), First::TooClose);
        // A rail goes first only where it goes before both; else it may leave it too close to say.
        let rail = |low, high| Some(RailGust { place: RailPlace::Top, bay: 0, gusts: (mph(low), mph(high)) });
        let with = |low, high| first(Some((mph(40.0), mph(50.0))), rail(low, high), (mph(60.0), mph(70.0)));
        assert_eq!(with(60.0, 70.0), First::Fastening);
        assert_eq!(with(20.0, 34.7), First::Rail(RailPlace::Top));
        assert_eq!(with(20.0, 34.8), First::TooClose);
        assert_eq!(with(45.0, 70.0), First::TooClose);
        assert_eq!(first(None, rail(20.0, 30.0), (mph(60.0), mph(70.0))), First::NotKnown);
        assert_eq!(first(None, None, (mph(34.0), mph(50.0))), First::NotKnown);
    }
}
