//! Runs, bays, posts, gates and screens as data: every value is known here or left out.
//!
//! Posts share kinds by index, so that a changed wall recomputes one section.

mod fastening;
mod post;

pub use fastening::{ClothStiffness, Face, Fastening, FasteningKind, TiedTo};
pub use post::{PostError, PostKind, PostStrength, Section, Shape, Tube, Wall};

use crate::numerics::{ROUNDING, on_bound};
use crate::screen::{ChainLink, CombinedSolidity};
use crate::source::Stated;
use crate::units::{Area, Length, Quantity};
use crate::workings::{Blank, Ledger};

/// A fence of one or more runs.
#[derive(Debug, Clone, PartialEq)]
pub struct Fence {
    /// The kinds of posts.
    pub kinds: Vec<PostKind>,
    /// The runs.
    pub runs: Vec<Run>,
}

/// A straight side of fence.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// Its name.
    pub name: String,
    /// Height of the fence above the foot of its posts.
    pub height: Length,
    /// How far the foot of its posts stands above the ground of the upwind side, on a bank or a wall.
    pub base_above_ground: Length,
    /// The steel mesh, if any.
    pub chain_link: Option<ChainLink>,
    /// Diameters of the rails there are.
    pub rails: Rails,
    /// From left to right, standing inside.
    pub bays: Vec<Bay>,
    /// One more than bays.
    pub posts: Vec<Post>,
    /// The cloth, if any.
    pub screen: Option<Screen>,
    /// What stands at the left end.
    pub start: End,
    /// What stands at the right end.
    pub finish: End,
}

/// Diameters of rails; nothing where there is none.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Rails {
    /// Top rail.
    pub top: Option<Length>,
    /// Rail at half height.
    pub middle: Option<Length>,
    /// Bottom rail.
    pub bottom: Option<Length>,
}

/// Between two neighbouring posts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bay {
    /// Width, centre to centre.
    pub width: Length,
    /// Whether it is a gate.
    pub gate: bool,
    /// Whether the gate has two leaves that meet in the middle.
    pub double: bool,
}

impl Bay {
    /// A bay without a gate.
    #[must_use]
    pub const fn of(width: Length) -> Self {
        Self { width, gate: false, double: false }
    }

    /// How many leaves its gate has; none where it is no gate.
    #[must_use]
    pub const fn leaves(&self) -> usize {
        match (self.gate, self.double) {
            (false, _) => 0,
            (true, false) => 1,
            (true, true) => 2,
        }
    }
}

/// One post of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Post {
    /// Its place from the start of the run.
    pub at: Length,
    /// What it does.
    pub role: Role,
    /// Its kind by index.
    pub kind: usize,
    /// The post of another run that is the same post.
    pub shared_with: Option<Shared>,
}

/// A post of another run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Shared {
    /// The run by index.
    pub run: usize,
    /// The post by index.
    pub post: usize,
}

/// What a post does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// Between two bays.
    Line,
    /// At a free end, without a gate beside it.
    End,
    /// Where the fence turns a corner, with or without a gate beside it.
    Corner,
    /// Beside a gate.
    Gate,
}

impl Role {
    /// In one word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Line => "line",
            Self::End => "end",
            Self::Corner => "corner",
            Self::Gate => "gate",
        }
    }
}

/// Cloth on a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Screen {
    /// Its name.
    pub name: String,
    /// Solid area over gross area of the cloth alone, dry.
    pub solidity: f64,
    /// The same where it is reckoned as the return of another run, if it is not known to be that one.
    pub solidity_as_return: Option<f64>,
    /// What it is in.
    pub condition: Condition,
    /// The solidity of cloths hung over it, as wide and as high as it.
    pub over: Vec<f64>,
    /// Lower edge above the foot of the posts.
    pub bottom: Length,
    /// Top above the foot of the posts.
    pub top: Length,
    /// The first bay it hangs on, by index.
    pub first_bay: usize,
    /// One past the last bay it hangs on.
    pub end_bay: usize,
    /// Windows cut in, if any.
    pub windows: Option<Windows>,
    /// The side of the fence it hangs on, if known.
    pub face: Option<Face>,
    /// What holds it, if known.
    pub fastening: Option<Fastening>,
}

/// What may close the openings of cloth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Condition {
    /// Nothing.
    #[default]
    Dry,
    /// Ice, or water that froze in it.
    Iced,
}

impl Condition {
    /// Both, the one with the lighter load first.
    pub const ALL: [Self; 2] = [Self::Dry, Self::Iced];

    /// In one word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Dry => "dry",
            Self::Iced => "iced",
        }
    }
}

const ICED: Stated<f64> =
    Stated { value: 1.0, because: "ours: iced or wet-frozen cloth lets no wind through and counts as solid" };

impl Screen {
    /// Solid area over gross area of all cloth, the chain link apart, in the condition it is in.
    pub fn own_solidity(&self, ledger: &mut impl Ledger) -> f64 {
        match self.condition {
            Condition::Dry => {
                let mut all = self.solidity;
                for second in &self.over {
                    all = CombinedSolidity { first: all, second: *second }.work(ledger);
                }
                all
            }
            Condition::Iced => ledger.judge("ε_c", ICED),
        }
    }
}

/// Windows cut in the cloth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Windows {
    /// Width of one.
    pub width: Length,
    /// Height of one.
    pub height: Length,
    /// How many in a bay.
    pub per_bay: f64,
}

impl Windows {
    /// Area of one.
    #[must_use]
    pub fn area(&self) -> Area {
        self.width * self.height
    }
}

/// What stands at an end of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum End {
    /// It stops in the open.
    Free,
    /// The fence turns a corner and its cloth goes on for so long, as high as here.
    Return(Length),
    /// The fence turns a corner into a run of this fence.
    Corner(CornerTo),
}

impl End {
    /// Whether it ends in the same manner, whichever run stands round the corner.
    #[must_use]
    pub fn is_like(self, other: Self) -> bool {
        match (self, other) {
            (Self::Return(one), Self::Return(other)) => one == other,
            (one, other) => std::mem::discriminant(&one) == std::mem::discriminant(&other),
        }
    }
}

/// The run round a corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CornerTo {
    /// The run by index.
    pub run: usize,
    /// Whether that run meets the corner with its start.
    pub at_its_start: bool,
}

/// A return counts as one from this solidity of all its layers on: the wall rule's own bound on openings.
const RETURN_SOLIDITY: f64 = 0.70;

impl Run {
    /// Its length, first post to last.
    #[must_use]
    pub fn length(&self) -> Length {
        self.posts.last().map_or_else(|| Length::from_si(0.0), |post| post.at)
    }

    /// Solidity of all layers where the cloth hangs.
    pub fn solidity(&self, ledger: &mut impl Ledger) -> Option<f64> {
        let own = self.screen.as_ref()?.own_solidity(ledger);
        Some(self.all_layers(own, ledger))
    }

    /// Solidity of all layers where cloth of this solidity hangs.
    pub fn all_layers(&self, cloth: f64, ledger: &mut impl Ledger) -> f64 {
        match self.chain_link {
            Some(link) => CombinedSolidity { first: cloth, second: link.solidity(ledger) }.work(ledger),
            None => cloth,
        }
    }

    /// Solidity of all layers that counts where the cloth is the return of another run.
    fn solidity_as_return(&self) -> Option<f64> {
        let screen = self.screen.as_ref()?;
        let own = screen.solidity_as_return.unwrap_or_else(|| screen.own_solidity(&mut Blank));
        Some(self.all_layers(own, &mut Blank))
    }

    /// The top of the fence above the ground of the upwind side.
    #[must_use]
    pub fn top_above_ground(&self) -> Length {
        self.base_above_ground + self.height
    }

    /// Where the cloth begins and ends along the run.
    #[must_use]
    pub fn screened(&self) -> Option<(Length, Length)> {
        let screen = self.screen.as_ref()?;
        Some((self.posts[screen.first_bay].at, self.posts[screen.end_bay].at))
    }

    /// Whether cloth hangs on a bay.
    #[must_use]
    pub fn has_cloth(&self, bay: usize) -> bool {
        self.screen.as_ref().is_some_and(|screen| (screen.first_bay..screen.end_bay).contains(&bay))
    }

    /// The same run with its cloth taken off.
    #[must_use]
    pub fn bare(&self) -> Self {
        Self { screen: None, ..self.clone() }
    }
}

impl Fence {
    /// How long the cloth of a run goes on round the corner at one of its ends: the unbroken screened length
    /// of the return, with a solidity of 0.70 or more over at least this cloth's height; else nothing.
    #[must_use]
    pub fn return_length(&self, run: usize, at_start: bool) -> Length {
        let nothing = Length::from_si(0.0);
        let this = &self.runs[run];
        let Some(screen) = &this.screen else { return nothing };
        let reaches = if at_start { screen.first_bay == 0 } else { screen.end_bay == this.bays.len() };
        if !reaches {
            return nothing;
        }
        match if at_start { this.start } else { this.finish } {
            End::Free => nothing,
            End::Return(length) => length,
            End::Corner(CornerTo { run, at_its_start }) => {
                let other = &self.runs[run];
                let (Some(cloth), Some((from, to))) = (&other.screen, other.screened()) else {
                    return nothing;
                };
                let touches =
                    if at_its_start { cloth.first_bay == 0 } else { cloth.end_bay == other.bays.len() };
                let short = ROUNDING * screen.top.si();
                // Both runs measure from the foot of the post they share.
                let covers =
                    (cloth.bottom - screen.bottom).si() <= short && (screen.top - cloth.top).si() <= short;
                let dense = other
                    .solidity_as_return()
                    .is_some_and(|solidity| on_bound(solidity, &[RETURN_SOLIDITY]) >= RETURN_SOLIDITY);
                if touches && covers && dense { to - from } else { nothing }
            }
        }
    }
}
