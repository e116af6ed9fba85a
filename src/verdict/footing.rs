//! What a post stands in, held against the wind by one method: the force a depth carries, the depth a force needs.

use super::{
    CornerMoment, CornerShear, LimitGust, REFERENCE_GUST, SquareCornerMoment, SquareCornerShear, absolute,
};
use crate::fence::{Fence, FootingShape, PostKind, Section, Shape};
use crate::footing::astm_f567::{HoleDepth, HoleDiameter};
use crate::footing::driven::{BelowGrade, largest_moment};
use crate::footing::{Asked, Basis, Checked, Choices, Embedment, FootingError, Load, Method, Missing, Pier};
use crate::loads::PostLoad;
use crate::source::Stated;
use crate::units::{Force, Length, Moment, Velocity};
use crate::wind::Level;
use crate::workings::{Blank, Ledger};
use std::fmt;

/// What was found of the ground about a post.
#[derive(Debug, Clone, PartialEq)]
pub struct FootingVerdict {
    /// The method it was put to.
    pub method: Method,
    /// How the wind code gives its load.
    pub basis: Basis,
    /// The share of that load at the level of the method.
    pub share: f64,
    /// The factor of the method on the load.
    pub load_factor: Stated<f64>,
    /// What stands in the ground, if it is known.
    pub shape: Option<FootingShape>,
    /// How deep it goes, if that is known.
    pub depth: Option<Length>,
    /// The width that the depth needed is for.
    pub width: Option<Width>,
    /// The depth that the design wind needs, or why there is none.
    pub needed: Result<Length, FootingWhy>,
    /// What an installer would have dug for a bare fence of this height.
    pub dug: Option<Dug>,
    /// The load and what the depth carries at the design wind, or why that is not known.
    pub checked: Result<FootingCheck, FootingWhy>,
    /// Why the method cannot be worked with what is known of the soil; nothing where it can.
    pub refused: Option<FootingError>,
    /// Load over what the depth carries in the gust that ratios are worked at, with the cloth and without.
    pub(super) at_gust: Option<(f64, f64)>,
    /// What it carries at the height of the load in that gust.
    pub(super) capacity_at_gust: Option<Force>,
}

impl FootingVerdict {
    /// Whether it was held against a gust; without a design wind its limit gust stands all the same.
    #[must_use]
    pub const fn is_worked(&self) -> bool {
        self.at_gust.is_some()
    }

    /// The gust in which it reaches its limit, where its depth is known.
    #[must_use]
    pub fn limit_gust(&self) -> Option<Velocity> {
        let (ratio, _) = self.at_gust?;
        Some(LimitGust { gust: REFERENCE_GUST, ratio }.work(&mut Blank))
    }
}

/// A width, and whose.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Width {
    /// Across it, of a square one its side.
    pub across: Length,
    /// Whose it is.
    pub is: WidthIs,
}

/// Whose width a depth is worked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum WidthIs {
    /// That of the concrete as surveyed.
    Surveyed,
    /// That of the post itself, which is driven.
    OfPost,
    /// That of the hole an installer digs by ASTM F567.
    Dug,
}

impl WidthIs {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Surveyed => "as surveyed",
            Self::OfPost => "the post itself",
            Self::Dug => "as dug by ASTM F567",
        }
    }
}

/// A hole by ASTM F567: it knows no wind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dug {
    /// How deep.
    pub depth: Length,
    /// How wide.
    pub width: Length,
}

/// A footing under the design wind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FootingCheck {
    /// The load at the level of the method.
    pub demand: Load,
    /// The force at that height which the depth carries.
    pub capacity: Force,
    /// Force over capacity; without end where the depth carries nothing.
    pub ratio: f64,
}

/// Why a footing is not checked, or no depth is given.
#[derive(Debug, Clone, PartialEq)]
pub enum FootingWhy {
    /// What is not known of it.
    NotKnown {
        /// How deep it goes.
        depth: bool,
        /// How wide it is.
        width: bool,
        /// The soil, as the method needs it.
        soil: bool,
    },
    /// The method refuses.
    Refused(FootingError),
    /// No design wind speed is given.
    NoSpeed,
}

impl From<FootingError> for FootingWhy {
    fn from(error: FootingError) -> Self {
        Self::Refused(error)
    }
}

impl fmt::Display for FootingWhy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotKnown { depth, width, soil } => {
                let all = [(*depth, "how deep it goes"), (*width, "how wide it is"), (*soil, "the soil")];
                let all: Vec<&str> = all.iter().filter(|(open, _)| *open).map(|(_, what)| *what).collect();
                match all.split_last() {
                    Some((last, [])) => write!(f, "not known: {last}"),
                    Some((last, rest)) => write!(f, "not known: {} and {last}", rest.join(", ")),
                    None => f.write_str("not known"),
                }
            }
            Self::Refused(error) => error.fmt(f),
            Self::NoSpeed => f.write_str(super::NO_SPEED),
        }
    }
}

impl FootingWhy {
    /// The same in one line, for a table of parts.
    pub(super) const fn short(&self) -> &'static str {
        match self {
            Self::NotKnown { .. } => "not known: ask how deep, how wide, in what soil",
            Self::Refused(FootingError::SoilUnknown { .. }) => "the soil is not known as the method needs it",
            Self::Refused(FootingError::NoPresumptiveValue { .. }) => {
                "the soil has no presumptive value: a geotechnical engineer is asked"
            }
            Self::Refused(_) => "outside the range of the method",
            Self::NoSpeed => super::NO_SPEED,
        }
    }
}

/// How a wind code gives its load.
#[must_use]
pub const fn basis_of(level: Level) -> Basis {
    match level {
        Level::Strength => Basis::Strength,
    }
}

/// What one kind of post stands in, put to its method.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Foot {
    pub(super) method: Method,
    basis: Basis,
    share: f64,
    shape: Option<FootingShape>,
    /// Whether wind on both faces of a corner adds up as vectors do.
    is_round: bool,
    depth: Option<Length>,
    width: Option<Width>,
    dug: Option<Dug>,
    asked: Option<Asked>,
    embedment: Result<Embedment, FootingError>,
    /// The width of a driven post.
    driven: Option<Length>,
}

impl Foot {
    /// The footing of a kind of post in a fence of some height, by index; nothing where it is not known.
    pub(super) fn of(
        fence: &Fence,
        footing: Option<usize>,
        kind: usize,
        height: Length,
        level: Level,
    ) -> Self {
        let (known, kind) = (footing.map(|at| &fence.footings[at]), &fence.kinds[kind]);
        let basis = basis_of(level);
        let method = fence.footing_method.unwrap_or(Method::IbcNonconstrained);
        let method = if known.is_some_and(|foot| foot.is_held) { method.held() } else { method };
        let dug = dug(kind, height);
        let shape = known.map(|foot| foot.shape);
        let driven = shape == Some(FootingShape::Driven);
        let width = match known.and_then(|foot| foot.width) {
            _ if driven => Some(Width { across: kind.face(), is: WidthIs::OfPost }),
            Some(across) => Some(Width { across, is: WidthIs::Surveyed }),
            None => dug.map(|dug| Width { across: dug.width, is: WidthIs::Dug }),
        };
        let pier = width.map(|width| match shape {
            Some(FootingShape::Driven) => driven_pier(kind),
            // A hole that an installer digs is round.
            Some(shape) if width.is == WidthIs::Surveyed => {
                shape.pier(width.across).unwrap_or(Pier::Round { diameter: width.across })
            }
            _ => Pier::Round { diameter: width.across },
        });
        let choices =
            Choices { isolated_pole: known.is_some_and(|foot| foot.is_isolated), ..Choices::default() };
        let asked = pier.map(|pier| Asked { method, basis, pier, ground: fence.ground, choices });
        let embedment = match asked {
            Some(asked) => Embedment::try_new(asked, &mut Blank),
            None => Err(FootingError::SoilUnknown { asked: method.name(), missing: Missing::LateralBearing }),
        };
        let is_round = match shape {
            Some(FootingShape::Driven) => is_round(kind),
            Some(shape) => shape == FootingShape::Round,
            None => true,
        };
        Self {
            method,
            basis,
            share: method.share(basis, &mut Blank).unwrap_or(1.0),
            shape,
            is_round,
            depth: known.and_then(|foot| foot.depth),
            width,
            dug,
            asked,
            embedment,
            driven: driven.then(|| kind.face()),
        }
    }

    /// The words over its workings.
    pub(super) fn heading(&self) -> String {
        format!("The footing by {}", self.method.name())
    }

    /// What must be known to hold a depth against a load.
    fn standing(&self) -> Result<(&Embedment, Length), FootingWhy> {
        let width = self.width.is_some_and(|width| width.is != WidthIs::Dug);
        match (&self.embedment, self.depth) {
            (Ok(embedment), Some(depth)) if width => Ok((embedment, depth)),
            (Err(error), Some(_)) if width => Err(error.clone().into()),
            (embedment, depth) => {
                Err(FootingWhy::NotKnown { depth: depth.is_none(), width: !width, soil: embedment.is_err() })
            }
        }
    }

    /// The footing under the worst of a load of its own run, one of the other run at a corner, and 0.75 of both.
    pub(super) fn check(
        &self,
        own: PostLoad,
        other: Option<PostLoad>,
        ledger: &mut impl Ledger,
    ) -> Result<Checked, FootingWhy> {
        let (embedment, depth) = self.standing()?;
        let mut worst: Option<(f64, WindOn)> = None;
        for wind in WindOn::all(other.is_some()) {
            let load = self.load(wind, own, other, &mut Blank)?;
            let found = embedment.check(load, depth, &mut Blank)?;
            if worst.is_none_or(|(before, _)| found.ratio > before) {
                worst = Some((found.ratio, wind));
            }
        }
        let wind = worst.map_or(WindOn::Own, |(_, wind)| wind);
        let load = self.load(wind, own, other, ledger)?;
        // What is taken of the soil is written with the figures.
        if let Some(asked) = self.asked {
            let _ = Embedment::try_new(asked, ledger)?;
        }
        Ok(embedment.check(load, depth, ledger)?)
    }

    /// The greatest depth that any of those loads needs.
    fn needed(&self, own: PostLoad, other: Option<PostLoad>) -> Result<Length, FootingWhy> {
        let embedment = self.embedment.as_ref().map_err(|error| FootingWhy::from(error.clone()))?;
        let mut deepest = Length::default();
        for wind in WindOn::all(other.is_some()) {
            let load = self.load(wind, own, other, &mut Blank)?;
            let demand = embedment.demand(load, &mut Blank)?;
            let needed = embedment.needed_depth(demand, &mut Blank).map_err(FootingError::from)?;
            if needed > deepest {
                deepest = needed;
            }
        }
        Ok(deepest)
    }

    fn load(
        &self,
        wind: WindOn,
        own: PostLoad,
        other: Option<PostLoad>,
        ledger: &mut impl Ledger,
    ) -> Result<Load, FootingError> {
        let of = |load: PostLoad| (absolute(load.shear), absolute(load.moment));
        let (shear, moment) = match (wind, other) {
            (WindOn::Own, _) | (_, None) => of(own),
            (WindOn::Other, Some(other)) => of(other),
            (WindOn::Both, Some(other)) => {
                let ((first, first_moment), (second, second_moment)) = (of(own), of(other));
                if self.is_round {
                    (
                        CornerShear { first, second }.work(ledger),
                        CornerMoment { first: first_moment, second: second_moment }.work(ledger),
                    )
                } else {
                    (
                        SquareCornerShear { first, second }.work(ledger),
                        SquareCornerMoment { first: first_moment, second: second_moment }.work(ledger),
                    )
                }
            }
        };
        Ok(Load::try_of(shear, moment, ledger)?)
    }

    /// What is found at the design wind, if there is one, and in the gust that ratios are worked at, as hung and bare.
    pub(super) fn verdict(
        &self,
        design: Option<(PostLoad, Option<PostLoad>)>,
        hung: (PostLoad, Option<PostLoad>),
        bare: (PostLoad, Option<PostLoad>),
    ) -> FootingVerdict {
        let at = |(own, other): (PostLoad, Option<PostLoad>)| self.check(own, other, &mut Blank);
        let at_hung = at(hung);
        let checked = match (&at_hung, design) {
            (Err(why), _) => Err(why.clone()),
            (Ok(_), None) => Err(FootingWhy::NoSpeed),
            (Ok(_), Some(design)) => at(design).map(|found| FootingCheck {
                demand: found.demand,
                capacity: found.capacity,
                ratio: found.ratio,
            }),
        };
        let needed = match design {
            Some((own, other)) => self.needed(own, other),
            None => Err(FootingWhy::NoSpeed),
        };
        let load_factor = match &self.embedment {
            Ok(embedment) => embedment.load_factor(),
            Err(_) => self.method.load_factor(self.basis),
        };
        let at_gust = at_hung.as_ref().ok().zip(at(bare).ok()).map(|(hung, bare)| (hung.ratio, bare.ratio));
        FootingVerdict {
            method: self.method,
            basis: self.basis,
            share: self.share,
            load_factor,
            shape: self.shape,
            depth: self.depth,
            width: self.width,
            needed,
            dug: self.dug,
            checked,
            refused: self.embedment.as_ref().err().cloned(),
            at_gust,
            capacity_at_gust: at_hung.ok().map(|found| found.capacity),
        }
    }

    /// The largest moment of a driven post, which is below grade; nothing for a post in concrete.
    pub(super) fn below_grade(
        &self,
        fence: &Fence,
        (shear, moment): (Force, Moment),
        ledger: &mut impl Ledger,
    ) -> Option<Result<BelowGrade, FootingError>> {
        let width = self.driven?;
        let load = Load::try_of(shear, moment, ledger).map_err(FootingError::from);
        Some(load.and_then(|load| largest_moment(load, width, &fence.ground, ledger)))
    }
}

/// Which face of a corner the wind stands on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum WindOn {
    Own,
    Other,
    Both,
}

impl WindOn {
    fn all(at_a_corner: bool) -> impl Iterator<Item = Self> {
        [Self::Own, Self::Other, Self::Both].into_iter().take(if at_a_corner { 3 } else { 1 })
    }
}

/// The hole for a post of this kind by ASTM F567; it names no driven post and no shape but a tube or timber.
fn dug(kind: &PostKind, height: Length) -> Option<Dug> {
    let depth = HoleDepth { height }.work(&mut Blank).ok()?;
    let width = HoleDiameter { post: kind.face() }.work(&mut Blank).ok()?;
    Some(Dug { depth, width })
}

fn is_round(kind: &PostKind) -> bool {
    matches!(&kind.section, Section::Tube(tube) if matches!(tube.shape, Shape::Round { .. }))
}

/// A driven post as it stands in the ground; of an open shape only what the wind sees of it counts.
fn driven_pier(kind: &PostKind) -> Pier {
    let face = kind.face();
    match &kind.section {
        Section::Tube(tube) if matches!(tube.shape, Shape::Square { .. }) => Pier::Square { side: face },
        Section::Timber(_) => Pier::Square { side: face },
        Section::Tube(_) | Section::Modulus { .. } | Section::Moment { .. } => Pier::Round { diameter: face },
    }
}
