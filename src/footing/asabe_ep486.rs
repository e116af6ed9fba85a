//! ASAE EP486, posts of post-frame buildings: allowable lateral soil pressure that grows with depth.
//!
//! The editions of 1991 to 1998; EP486.2 of 2012 and EP486.3 of 2017 replaced them by ultimate methods and are not
//! covered. Not constrained, the pressure under working load begins with a slope of three times the allowable one;
//! constrained, it reaches the allowable pressure at the toe and not above.

use super::{Wanted, above_nought, depth_for};
use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{Force, Length, Powers, PressurePerDepth, Pure, metres};
use crate::workings::{Blank, Ledger, Listed, OutOfRange, within};

/// The document.
pub static DOCUMENT: Document = Document {
    short: "ASAE EP486",
    title: "ASAE EP486 (1991, reaffirmed to 1998), Post and Pole Foundation Design",
    seen: Seen::SecondHand("the first page of the edition of December 1998, which holds 3.4.2"),
};

/// Not constrained at the ground.
pub const NONCONSTRAINED: Clause = DOCUMENT.at("nonconstrained posts").from_memory();
/// Constrained at the ground.
pub const CONSTRAINED: Clause = DOCUMENT.at("constrained posts").from_memory();

/// Why no factor is put on load or soil here.
pub const SOIL: Stated<f64> = Stated {
    value: 1.0,
    because: "ASAE EP486 3.4.2: the allowable soil pressure S' is to hold its safety factor of 2.5 to 3 already",
};

rule! {
    /// Lateral force that a post of given depth may carry, not constrained at the ground: d² = (6 V + 8 V h / d) / (S' b)
    /// turned round.
    NonconstrainedCapacity, "footing/ep486-nonconstrained-capacity", NONCONSTRAINED;
    /// depth of embedment
    depth: Length as Distance = "d";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the post or its footing
    width: Length as Distance = "b";
    /// allowable lateral soil pressure for each depth
    bearing: PressurePerDepth = "S'";
    force "V_a": Force = bearing * width * depth.cubed() / (6.0 * depth + 8.0 * height)
}
rule! {
    /// Depth of a post that is not constrained at the ground: d² = (6 V_a + 8 M_a / d) / (S' b).
    NonconstrainedDepth, "footing/ep486-nonconstrained", NONCONSTRAINED;
    /// lateral force
    force: Force = "V_a";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the post or its footing
    width: Length as Distance = "b";
    /// allowable lateral soil pressure for each depth
    bearing: PressurePerDepth = "S'";
    depth "d": Length as Distance
}
impl NonconstrainedDepth {
    /// Solves the cubic.
    ///
    /// # Errors
    /// If force, width or pressure is not above 0, or the depth beyond what a post's footing is.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { force, height, width, bearing } = self;
        above_nought("force", NONCONSTRAINED, force)?;
        within("height", NONCONSTRAINED, height, metres(0.0), metres(f64::MAX))?;
        above_nought("width", NONCONSTRAINED, width)?;
        above_nought("soil pressure", NONCONSTRAINED, bearing)?;
        let of = |depth| NonconstrainedCapacity { depth, height, width, bearing };
        let method = "the cubic S' b d³ − 6 V d − 8 V h = 0";
        let depth = depth_for(Wanted { force, width, method }, ledger, |depth| of(depth).work(&mut Blank))?;
        let _ = of(depth).work(ledger);
        Ok(self.keep(ledger, depth))
    }
}
rule! {
    /// Lateral force that a post of given depth may carry, constrained at the ground: d³ = 4 V h / (S' b) turned round.
    ConstrainedCapacity, "footing/ep486-constrained-capacity", CONSTRAINED;
    /// depth of embedment
    depth: Length as Distance = "d";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the post or its footing
    width: Length as Distance = "b";
    /// allowable lateral soil pressure for each depth
    bearing: PressurePerDepth = "S'";
    force "V_a": Force = bearing * width * depth.cubed() / (4.0 * height)
}
rule! {
    /// Depth of a post that is constrained at the ground: d³ = 4 M_a / (S' b), in widths.
    ConstrainedDepth, "footing/ep486-constrained", CONSTRAINED;
    /// lateral force
    force: Force = "V_a";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the post or its footing
    width: Length as Distance = "b";
    /// allowable lateral soil pressure for each depth
    bearing: PressurePerDepth = "S'";
    depth "d": Length as Distance =
        width * (4.0 * force * height / (bearing * width.to_the_fourth())).pure().powf(1.0 / 3.0)
}

/// The rules of this document by name.
pub const RULES: &[Listed] = &[
    Listed::of::<NonconstrainedCapacity>(),
    Listed::of::<NonconstrainedDepth>(),
    Listed::of::<ConstrainedCapacity>(),
    Listed::of::<ConstrainedDepth>(),
];
