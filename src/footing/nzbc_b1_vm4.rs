//! New Zealand Building Code, verification method B1/VM4: a short pile in cohesive soil, free at the head.
//!
//! The algebra is that of Broms for clay. The formula printed in Amendment 8 was wrong by an f and was corrected.

use super::{Wanted, above_nought, depth_for};
use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{Force, Length, Powers, Pressure, metres, newtons};
use crate::workings::{Blank, Ledger, Listed, OutOfRange, within};

/// The document.
pub static DOCUMENT: Document = Document {
    short: "NZBC B1/VM4",
    title: "New Zealand Building Code, clause B1 Structure, verification method B1/VM4 Foundations",
    seen: Seen::Memory,
};

/// Short piles in cohesive soil. The paragraph's number was seen in a published erratum, its formula was not.
pub const COHESIVE: Clause = DOCUMENT.at("4.3.2(a)(i)");

/// The factor on the strength of the ground.
pub const STRENGTH_FACTOR: Stated<f64> = Stated {
    value: 0.5,
    because: "NZBC B1/VM4 (from memory): strength reduction factor of piles under lateral load, against W_u",
};
/// How many widths of depth from the ground do not resist.
pub const IDLE_WIDTHS: Stated<f64> =
    Stated { value: 1.5, because: "NZBC B1/VM4 (from memory): f_0 of 1.5 widths, as in Broms" };

rule! {
    /// Depth from the ground over which the soil is taken not to resist.
    IdleDepth, "footing/nzbc-f0", COHESIVE;
    /// widths
    widths: f64 = "n";
    /// width of the pile
    width: Length as Distance = "D";
    depth "f_0": Length as Distance = widths * width
}
rule! {
    /// Lateral strength of a short pile over the length that resists.
    Strength, "footing/nzbc-hu", COHESIVE;
    /// undrained shear strength
    strength: Pressure = "s_u";
    /// width of the pile
    width: Length as Distance = "D";
    /// height of the force over where resistance begins, f + f_0
    arm: Length as Distance = "e";
    /// length that resists, L − f_0
    length: Length as Distance = "L_e";
    force "H_u": Force = 9.0 * strength * width
        * (((2.0 * arm + length).squared() + length.squared()).sqrt() - (2.0 * arm + length))
}
rule! {
    /// Lateral strength with its factor.
    DesignStrength, "footing/nzbc-design-strength", COHESIVE;
    /// strength reduction factor
    factor: f64 = "Φ_pc";
    /// lateral strength
    strength: Force = "H_u";
    design "Φ H_u": Force = factor * strength
}
rule! {
    /// Lateral force that a short pile may carry, factor included.
    ///
    /// # Range
    /// Load at ultimate level W_u.
    Capacity, "footing/nzbc-capacity", COHESIVE;
    /// depth of the pile
    depth: Length as Distance = "L";
    /// height of the force over grade
    height: Length as Distance = "f";
    /// width of the pile
    width: Length as Distance = "D";
    /// undrained shear strength
    strength: Pressure = "s_u";
    force "Φ H_u": Force
}
impl Capacity {
    /// Works it; nought where the pile ends within the depth that does not resist.
    ///
    /// # Errors
    /// If depth, width or strength is not above 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let Self { depth, height, width, strength } = self;
        above_nought("depth", COHESIVE, depth)?;
        soil(height, width, strength)?;
        let widths = ledger.judge("n", IDLE_WIDTHS);
        let idle = IdleDepth { widths, width }.work(ledger);
        let length = depth - idle;
        let ultimate = if length > metres(0.0) {
            Strength { strength, width, arm: height + idle, length }.work(ledger)
        } else {
            newtons(0.0)
        };
        let factor = ledger.judge("Φ_pc", STRENGTH_FACTOR);
        let force = DesignStrength { factor, strength: ultimate }.work(ledger);
        Ok(self.keep(ledger, force))
    }
}
rule! {
    /// Depth of a short pile for a load, factor included.
    ///
    /// # Range
    /// Load at ultimate level W_u.
    Depth, "footing/nzbc", COHESIVE;
    /// lateral force
    force: Force = "H";
    /// height of the force over grade
    height: Length as Distance = "f";
    /// width of the pile
    width: Length as Distance = "D";
    /// undrained shear strength
    strength: Pressure = "s_u";
    depth "L": Length as Distance
}
impl Depth {
    /// Finds the depth whose strength is the load.
    ///
    /// # Errors
    /// If force, width or strength is not above 0, or the depth beyond what a post's footing is.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { force, height, width, strength } = self;
        above_nought("force", COHESIVE, force)?;
        soil(height, width, strength)?;
        let of = |depth| Capacity { depth, height, width, strength };
        let method = "the depth whose Φ H_u is the force";
        let capacity = |depth| of(depth).work(&mut Blank).unwrap_or(newtons(0.0));
        let depth = depth_for(Wanted { force, width, method }, ledger, capacity)?;
        of(depth).work(ledger)?;
        Ok(self.keep(ledger, depth))
    }
}

fn soil(height: Length, width: Length, strength: Pressure) -> Result<(), OutOfRange> {
    within("height", COHESIVE, height, metres(0.0), metres(f64::MAX))?;
    above_nought("width", COHESIVE, width)?;
    above_nought("undrained strength", COHESIVE, strength)
}

/// The rules of this method by name.
pub const RULES: &[Listed] = &[
    Listed::of::<IdleDepth>(),
    Listed::of::<Strength>(),
    Listed::of::<DesignStrength>(),
    Listed::of::<Capacity>(),
    Listed::of::<Depth>(),
];
