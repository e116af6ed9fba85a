//! Loads on joints and members.

use super::model::{Joint, Member, Triple};
use crate::units::{Force, Length, LineLoad, Moment};

/// A force and a moment, along and about the axes of the frame.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Action {
    /// The force.
    pub force: Triple<Force>,
    /// The moment.
    pub moment: Triple<Moment>,
}

impl Action {
    /// Neither force nor moment.
    #[must_use]
    pub fn none() -> Self {
        Self { force: Triple::none(), moment: Triple::none() }
    }
}

/// Whose axes a load is told in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Axes {
    /// Those of the frame.
    Frame,
    /// Those of the member.
    Member,
}

/// A load on a member. Places are measured along it from its start; line loads are for each length of the member, not
/// of its projection.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MemberLoad {
    /// Even over the whole member.
    Even {
        /// The load.
        load: Triple<LineLoad>,
        /// Whose axes.
        axes: Axes,
    },
    /// Straight from one place to another, nothing outside.
    Part {
        /// Where it begins.
        from: Length,
        /// Where it ends.
        to: Length,
        /// The load where it begins.
        at_from: Triple<LineLoad>,
        /// The load where it ends.
        at_to: Triple<LineLoad>,
        /// Whose axes.
        axes: Axes,
    },
    /// At one place.
    Point {
        /// The place.
        at: Length,
        /// The force.
        force: Triple<Force>,
        /// The moment.
        moment: Triple<Moment>,
        /// Whose axes.
        axes: Axes,
    },
}

/// The loads of one case, which act at once.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Loads {
    pub(super) joints: Vec<(Joint, Action)>,
    pub(super) members: Vec<(Member, MemberLoad)>,
}

impl Loads {
    /// No loads yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a load on a joint.
    pub fn on_joint(&mut self, joint: Joint, action: Action) -> &mut Self {
        self.joints.push((joint, action));
        self
    }

    /// Adds a load on a member.
    pub fn on_member(&mut self, member: Member, load: MemberLoad) -> &mut Self {
        self.members.push((member, load));
        self
    }
}
