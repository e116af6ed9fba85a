//! Why a frame cannot be solved.

use super::model::{End, Freedom, Joint, Member, Triple};
use crate::units::{Force, Length, Measure, System, Value};
use std::fmt;

/// Why a frame cannot be solved.
#[derive(Debug, Clone, PartialEq)]
pub enum FrameError {
    /// A joint that is none of this frame's.
    UnknownJoint {
        /// As asked.
        joint: Joint,
    },
    /// A member that is none of this frame's.
    UnknownMember {
        /// As asked.
        member: Member,
    },
    /// A property that is not above 0, or a spring below it, or no number.
    BadValue {
        /// What of what, as "area of member 3".
        what: String,
        /// Its value.
        value: Value,
    },
    /// A member between two joints at one place.
    NoLength {
        /// The member.
        member: Member,
    },
    /// A member that faces along itself.
    FacingAlong {
        /// The member.
        member: Member,
    },
    /// Two joints that move together though they stand apart, which would turn without a moment.
    HeldApart {
        /// One.
        one: Joint,
        /// The other.
        other: Joint,
        /// How far apart.
        distance: Length,
    },
    /// A place off a member.
    OffMember {
        /// The member.
        member: Member,
        /// The place.
        at: Length,
        /// Its length.
        length: Length,
    },
    /// A load between the ends of a bar, which bends under none.
    LoadOnBar {
        /// The bar.
        member: Member,
    },
    /// Releases that let a member move by itself.
    LooseMember {
        /// The member.
        member: Member,
        /// The end.
        end: End,
        /// In its own axes.
        freedom: Freedom,
    },
    /// A joint that can move and meets no resistance.
    Mechanism {
        /// The joint that moves most.
        joint: Joint,
        /// Where it stands.
        at: Triple<Length>,
        /// How it moves most.
        freedom: Freedom,
    },
    /// Axial forces beyond those at which the frame buckles.
    Buckled {
        /// The joint that moves most.
        joint: Joint,
        /// Where it stands.
        at: Triple<Length>,
        /// How it moves most.
        freedom: Freedom,
    },
    /// A member that buckles between its joints.
    BuckledMember {
        /// The member.
        member: Member,
        /// Its compression.
        compression: Force,
        /// What it would buckle under with both ends clamped: four times Euler's load.
        clamped: Force,
    },
    /// Tension so great that a member is a string, and its bending lost in rounding.
    TooTaut {
        /// The member.
        member: Member,
        /// Its tension.
        tension: Force,
        /// The greatest that is reckoned.
        limit: Force,
    },
    /// Slack bars, or axial forces, that changed to the last round.
    NotSettled {
        /// How many rounds were worked.
        rounds: usize,
        /// The member that changed most in the last.
        member: Member,
    },
    /// Forces that do not balance: too stiff beside too soft.
    Unbalanced {
        /// The greatest force out of balance, as a share of the greatest force.
        residual: f64,
        /// The greatest share that is let pass.
        limit: f64,
    },
}

fn both(value: Value) -> String {
    let (us, si) = (value.written(System::Us), value.written(System::Si));
    if us == si { us } else { format!("{us} ({si})") }
}

fn place(at: &Triple<Length>) -> String {
    let metres = |length: Length| Value::new(length, Measure::Distance).written(System::Si);
    format!("({}, {}, {})", metres(at.x), metres(at.y), metres(at.z))
}

impl fmt::Display for FrameError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::UnknownJoint { joint } => {
                write!(f, "there is no {joint} in this frame: use what its own builder gave")
            }
            Self::UnknownMember { member } => {
                write!(f, "there is no {member} in this frame: use what its own builder gave")
            }
            Self::BadValue { what, value } => {
                write!(f, "the {what} is {}: it must be above 0, and a number", both(*value))
            }
            Self::NoLength { member } => {
                write!(f, "{member} has no length: its joints stand at one place; hold them together instead")
            }
            Self::FacingAlong { member } => {
                write!(f, "{member} faces along itself: let it face across")
            }
            Self::HeldApart { one, other, distance } => write!(
                f,
                "{one} and {other} are held to move together but stand {} apart: put them at one place, with a \
                 member between where there is a distance",
                both(Value::of(*distance))
            ),
            Self::OffMember { member, at, length } => write!(
                f,
                "{} is off {member}, which is {} long: places are measured along it from its start",
                both(Value::new(*at, Measure::Distance)),
                both(Value::new(*length, Measure::Distance))
            ),
            Self::LoadOnBar { member } => {
                write!(
                    f,
                    "{member} is a bar and bends under no load: put the load on its joints, or make it a beam"
                )
            }
            Self::LooseMember { member, end, freedom } => write!(
                f,
                "the releases of {member} leave it free to {} in its own axes ({end}): release one end only",
                freedom.in_words()
            ),
            Self::Mechanism { joint, at, freedom } => write!(
                f,
                "{joint} at {} is free to {}: nothing resists it; add a support, a spring or a member",
                place(at),
                freedom.in_words()
            ),
            Self::Buckled { joint, at, freedom } => write!(
                f,
                "the frame buckles under these loads: {joint} at {} would {} without end; it needs more stiffness or \
                 less compression",
                place(at),
                freedom.in_words()
            ),
            Self::BuckledMember { member, compression, clamped } => write!(
                f,
                "{member} buckles between its joints: its compression is {}, and with both ends clamped it would \
                 carry {}",
                both(Value::of(*compression)),
                both(Value::of(*clamped))
            ),
            Self::TooTaut { member, tension, limit } => write!(
                f,
                "the tension of {member} is {}, above {}: it works as a string; make it a bar",
                both(Value::of(*tension)),
                both(Value::of(*limit))
            ),
            Self::NotSettled { rounds, member } => write!(
                f,
                "slack and axial forces did not settle in {rounds} rounds: {member} still changed in the last"
            ),
            Self::Unbalanced { residual, limit } => write!(
                f,
                "forces are out of balance by {residual:.1e} of the greatest, more than {limit:.0e}: something very \
                 stiff stands beside something very soft; make them more alike"
            ),
        }
    }
}

impl std::error::Error for FrameError {}
