//! A small solver of frames in space: joints, members, springs, loads; it knows nothing of what they are part of.
//!
//! ```
//! use fencegust::frame::{Action, Beam, Freedoms, FrameBuilder, Loads, Material, Order, Section, Triple};
//! use fencegust::units::{Quantity, feet, inches, ksi, pounds};
//!
//! let mut builder = FrameBuilder::new();
//! let foot = builder.joint(Triple::along_z(feet(0.0)));
//! let top = builder.joint(Triple::along_z(feet(10.0)));
//! builder.fix(foot, Freedoms::ALL);
//! let fourth = inches(1.0) * inches(1.0) * inches(1.0) * inches(1.0);
//! let section = Section::round(inches(1.0) * inches(1.6), fourth * 1.45);
//! let material = Material { elastic: ksi(29_000.0), shear: ksi(11_200.0) };
//! let post = builder.beam(foot, top, Beam::of(section, material));
//! let frame = builder.build()?;
//!
//! let mut loads = Loads::new();
//! loads.on_joint(top, Action { force: Triple::along_y(pounds(100.0)), ..Action::none() });
//! let solution = frame.solve(&loads, Order::First)?;
//! assert!((solution.reaction(foot)?.force.y + pounds(100.0)).si().abs() < 1e-9);
//! assert!(solution.residual() < 1e-9);
//! let greatest = solution.along(post)?.greatest_moment();
//! assert!((greatest.value - pounds(1000.0) * feet(1.0)).si().abs() < 1e-6);
//! assert_eq!(greatest.at, feet(0.0));
//! # Ok::<(), fencegust::frame::FrameError>(())
//! ```
//!
//! # Axes and signs
//! Right-handed axes x, y, z; moments and turns are positive by the right hand. A member's own x runs from its start to
//! its finish; its y faces as [`Beam::facing`] says, by default as near to z as it can, and to y where the member
//! itself stands along z. Inner forces: tension positive, `shear_y` is the force along the member's y that the part
//! beyond a section needs from the part before it, `moment_z` is positive where it stretches the side that faces away
//! from y, so that its slope along the member is `shear_y`; the same for z.
//!
//! # What is reckoned
//! Straight, uniform members that bend as Euler and Bernoulli say, without shear deflection or warping; springs and
//! members linear. [`Order::Second`] adds what axial forces do to bending: end stiffness, clamped-end forces, shapes
//! and inner forces come from EI v⁗ + P v″ = q itself, with the mean axial force of each member taken from the round
//! before until it settles, so that one member is exact for sway (P-Δ) and bow (P-δ) alike. Where the axial force
//! changes along a member, as under its own weight, the mean of its ends errs to the heavy side: cut it where that
//! matters. Members do not shorten by their bow, torsion is not softened by thrust, and a load keeps its direction.
//!
//! # Cost
//! Factors are kept by profile ([`crate::numerics::Profile`]): number the joints along the run, all those of one place
//! together, and cost and memory grow in line with its length. There is no renumbering: it would hide the joint that a
//! pivot names, and a closed ring numbered round needs none, since the members that close it cost one long row for
//! each freedom of the last joint and fill nothing else.

mod along;
mod column;
mod element;
mod error;
mod load;
mod model;
mod solve;
#[cfg(test)]
mod tests;
pub mod textbook;

pub use along::{AlongMember, Extreme, InnerForces, Range, Station};
pub use error::FrameError;
pub use load::{Action, Axes, Loads, MemberLoad};
pub use model::{
    Axis, Bar, Beam, End, Frame, FrameBuilder, Freedom, Freedoms, Joint, Material, Member, Section, Triple,
};
pub use solve::{Limits, Movement, Order, Solution};
pub use textbook::RULES;
