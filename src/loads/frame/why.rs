//! Why a fence is not worked on a frame, in words of fences.

use super::model::{MemberIs, Model, Spot};
use crate::fence::{Fence, PostError};
use crate::frame::{FrameError, Freedom};
use crate::wind::WindError;
use std::fmt;

/// Why a run is not worked on a frame.
#[derive(Debug, Clone, PartialEq)]
pub enum FrameWhy {
    /// How stiff a kind of post is is not known.
    Post {
        /// The kind.
        kind: String,
        /// Why.
        error: PostError,
    },
    /// How stiff a rail is is not known.
    Rail {
        /// As "top rail of run \"north end\"".
        rail: String,
        /// Why.
        error: PostError,
    },
    /// How stiff a back brace is is not known.
    Guy {
        /// As "back brace of post 1 of run \"north end\"".
        guy: String,
        /// Why.
        error: PostError,
    },
    /// The wind code refuses.
    Wind(WindError),
    /// A part that can move and meets no resistance.
    Loose {
        /// As "the top of post 3 of run \"north end\"".
        spot: String,
        /// How it moves.
        moves: &'static str,
    },
    /// A part that buckles under what presses it.
    Buckles {
        /// As "post 3 of run \"north end\"".
        part: String,
    },
    /// The equations did not settle or balance.
    Unsolved {
        /// As the solver tells it.
        error: FrameError,
    },
}

impl fmt::Display for FrameWhy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Post { kind, error } => write!(f, "posts \"{kind}\": {error}"),
            Self::Rail { rail: part, error } | Self::Guy { guy: part, error } => write!(f, "{part}: {error}"),
            Self::Wind(error) => error.fmt(f),
            Self::Loose { spot, moves } => {
                write!(f, "{spot} is free to {moves}: nothing holds it; look at its rails and its foot")
            }
            Self::Buckles { part } => write!(f, "{part} buckles, or leans without end, under these loads"),
            Self::Unsolved { error } => error.fmt(f),
        }
    }
}

impl std::error::Error for FrameWhy {}

impl From<WindError> for FrameWhy {
    fn from(error: WindError) -> Self {
        Self::Wind(error)
    }
}

/// How far a foot gives is not known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SoftUnknown {
    /// The footing, or its depth.
    Footing,
    /// How dense the sand lies, or the strength of the clay.
    Soil,
}

impl SoftUnknown {
    /// In words, with what to ask.
    #[must_use]
    pub const fn why(self) -> &'static str {
        match self {
            Self::Footing => {
                "how far the feet give is not known: it hangs on the footings' depth and the soil"
            }
            Self::Soil => {
                "how far the feet give is not known: ask how dense the sand lies, or the strength of the clay"
            }
        }
    }
}

impl Spot {
    fn in_words(&self, fence: &Fence) -> String {
        format!("{} of post {} of run \"{}\"", self.part, self.post + 1, fence.runs[self.run].name)
    }
}

impl MemberIs {
    fn in_words(&self, fence: &Fence) -> String {
        match self {
            Self::Post { run, post } => format!("post {} of run \"{}\"", post + 1, fence.runs[*run].name),
            Self::Guy { run, post, name } => {
                format!("the {name} of post {} of run \"{}\"", post + 1, fence.runs[*run].name)
            }
            Self::Rail { run, bay, place } => {
                format!("the {} of bay {} of run \"{}\"", place.name(), bay + 1, fence.runs[*run].name)
            }
        }
    }
}

const fn moves(freedom: Freedom) -> &'static str {
    match freedom {
        Freedom::AlongX | Freedom::AlongY => "lean",
        Freedom::AlongZ => "move up and down",
        Freedom::AboutX | Freedom::AboutY | Freedom::AboutZ => "turn",
    }
}

/// What the solver tells, in words of the fence.
pub(super) fn told(error: FrameError, model: &Model, fence: &Fence) -> FrameWhy {
    match error {
        FrameError::Mechanism { joint, freedom, .. } => {
            FrameWhy::Loose { spot: model.spots[joint.number() - 1].in_words(fence), moves: moves(freedom) }
        }
        FrameError::Buckled { joint, .. } => {
            let spot = &model.spots[joint.number() - 1];
            FrameWhy::Buckles { part: MemberIs::Post { run: spot.run, post: spot.post }.in_words(fence) }
        }
        FrameError::BuckledMember { member, .. } => {
            FrameWhy::Buckles { part: model.members[member.number() - 1].in_words(fence) }
        }
        error => FrameWhy::Unsolved { error },
    }
}
