//! Posts and piers in the ground: how deep they must be for a load, what load a depth carries, how far they give.
//!
//! One method a file. Depths differ threefold by method, since each has its own load level and its own factors; so a
//! [`Method`] carries both, and a figure is never told without its method. An [`Embedment`] is a method with all it
//! must be told of pier and ground: it answers the depth a load needs, the load a depth carries, and their ratio.
//! A value of the soil that is not known is an error that says what to ask; nothing is guessed.
//!
//! ```
//! use fencegust::footing::{Asked, Basis, Choices, Embedment, Ground, Load, Method, Pier, SoilClass};
//! use fencegust::units::{feet, pounds};
//! use fencegust::workings::Blank;
//!
//! let ground = Ground { class: Some(SoilClass::Sand), ..Ground::default() };
//! let pier = Pier::Round { diameter: feet(1.0) };
//! let (method, basis) = (Method::IbcNonconstrained, Basis::Strength);
//! let asked = Asked { method, basis, pier, ground, choices: Choices::default() };
//! let wind = Load { force: pounds(1000.0), height: feet(5.0) };
//! let checked = Embedment::try_new(asked, &mut Blank)?.check(wind, feet(6.0), &mut Blank)?;
//! assert!(checked.ratio > 1.0 && checked.needed? > feet(7.0));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! Not covered: the pier's own concrete beyond the depth a post is set in it, base plates, a soft top foot, slopes,
//! frost, neighbours closer than some three widths.

pub mod asabe_ep486;
pub mod astm_f567;
pub mod base_stiffness;
pub mod brinch_hansen;
pub mod broms;
pub mod driven;
mod embedment;
mod error;
mod ground;
pub mod ibc_1807_3;
mod method;
pub mod nzbc_b1_vm4;
pub mod pd_6547;
pub mod socket;

pub use base_stiffness::SandDensity;
pub use embedment::{Asked, Checked, Choices, Embedment, Load, Pier, RULES};
pub use error::FootingError;
pub use ground::{ClayOrSand, Ground, Missing};
pub use ibc_1807_3::SoilClass;
pub use method::{Basis, Level, Method};
pub use pd_6547::GroundQuality;

use crate::numerics::root;
use crate::source::{Clause, OURS};
use crate::units::{Force, Length, Measure, Pure, Quantity, Value, metres};
use crate::workings::{Entry, Ledger, OutOfRange, within, within_as};

/// Between which depths a post's footing is looked for.
const DEPTHS: Clause = OURS.at("a post's footing, a twentieth of its width to 30 m (98 ft) deep");
/// In widths.
const SHALLOWEST: f64 = 0.05;
const DEEPEST: Length = metres(30.0);
/// Up to which angle soil is taken to have friction.
const FRICTION: Clause = OURS.at("soil's angle of friction, up to 50°");
const STEEPEST: f64 = 50.0 * std::f64::consts::PI / 180.0 * (1.0 + 1e-12);

/// Refuses a value that is not above nought.
fn above_nought<Q: Quantity>(what: &'static str, clause: Clause, value: Q) -> Result<(), OutOfRange> {
    within(what, clause, value, Q::from_si(f64::MIN_POSITIVE), Q::from_si(f64::MAX))
}

/// Refuses an angle of friction that is none.
fn friction(clause: Clause, angle: f64) -> Result<(), OutOfRange> {
    within_as(Measure::Angle, "angle of friction", clause, angle, f64::MIN_POSITIVE, f64::MAX)?;
    within_as(Measure::Angle, "angle of friction", FRICTION, angle, 0.0, STEEPEST)
}

/// A force for which a depth is looked for.
struct Wanted {
    force: Force,
    width: Length,
    /// The equation, as it is printed.
    method: &'static str,
}

/// The depth whose capacity is a force; capacity rises with depth.
fn depth_for(
    wanted: Wanted,
    ledger: &mut impl Ledger,
    capacity: impl Fn(Length) -> Force,
) -> Result<Length, OutOfRange> {
    let Wanted { force, width, method } = wanted;
    let least = SHALLOWEST * width;
    let out = |limit: Length, above| OutOfRange {
        what: "force",
        value: Value::of(force),
        limit: Value::of(capacity(limit)),
        above,
        clause: DEPTHS,
    };
    if least >= DEEPEST || capacity(least) > force {
        return Err(out(least, false));
    }
    let off = |depth: f64| (capacity(metres(depth)) / force).pure() - 1.0;
    let found = root(off, least.si(), DEEPEST.si()).ok_or_else(|| out(DEEPEST, true))?;
    ledger.write(|| Entry::Solved {
        symbol: "depth",
        method,
        rounds: found.rounds,
        residual: off(found.at).abs(),
    });
    Ok(metres(found.at))
}

#[cfg(test)]
mod tests;
