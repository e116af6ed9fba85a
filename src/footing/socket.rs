//! A post set in a pier of concrete: how deep it must sit for the concrete beside it to bear.
//!
//! A practitioner's method, in allowable stresses: the bearing over the depth set in is that of a section modulus b d²/6.

use crate::rule;
use crate::source::{Clause, Document, Seen};
use crate::units::{Length, Moment, Pressure};
use crate::workings::Listed;

static LIST: Document = Document {
    short: "SEAINT 2003",
    title: "SEAINT list of structural engineers, archive of September 2003, message 01294",
    seen: Seen::FirstHand,
};
const BEARING: Clause = LIST.at("embedment of a column in a pier");

rule! {
    /// Depth to which a post must be set in concrete.
    SetInDepth, "footing/set-in-depth", BEARING;
    /// moment at the top of the concrete
    moment: Moment = "M";
    /// diameter or flange of the post
    width: Length as Small = "b";
    /// allowable bearing of the concrete
    bearing: Pressure as Stress = "F_p";
    depth "d": Length as Small = (6.0 * moment / (width * bearing)).sqrt()
}

/// The rules of posts in concrete by name.
pub const RULES: &[Listed] = &[Listed::of::<SetInDepth>()];
