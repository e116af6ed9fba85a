//! PD 6547: planted columns by a ground factor, as lighting columns, signs and hoardings are set in Britain.
//!
//! Ground that presses with G z and turns the column about P/√2 resists with (2 − √2)/6 G D P³, 0.0976, which the
//! document rounds to a tenth; so the load's moment is taken about that depth, not about the ground.

use super::{Wanted, above_nought, depth_for};
use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{Force, Length, Moment, Powers, PressurePerDepth, kilopascals_per_metre, metres, newtons};
use crate::workings::{Blank, Ledger, Listed, OutOfRange, within};

/// The document.
pub static DOCUMENT: Document = Document {
    short: "PD 6547",
    title: "PD 6547:2004+A1:2009, Guidance on the use of BS EN 40-3-1 and BS EN 40-3-3, British Standards Institution",
    seen: Seen::SecondHand("its contents page, and makers' leaflets that reprint a line of Table 2"),
};

/// The resistance of the ground. A later edition, of 2023, was not seen.
pub const GROUND: Clause = DOCUMENT.at("6").from_memory();
/// Ground factors.
pub const TABLE_2: Clause = DOCUMENT.at("Table 2");

/// The factor on the wind.
pub const LOAD: Stated<f64> = Stated {
    value: 1.5,
    because: "EN 1990: partial factor of a variable action, on the wind W_k; PD 6547 puts none on the ground",
};

/// Ground by the words of Table 2.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum GroundQuality {
    /// Compact, well graded sand and gravel, hard clay.
    Good,
    /// Compact fine sand, medium clay, well drained sandy loam.
    Average,
    /// Soft clay, clay loam, poorly compacted sand, clay with much silt.
    Poor,
}

impl GroundQuality {
    /// Every quality.
    pub const ALL: [Self; 3] = [Self::Good, Self::Average, Self::Poor];

    /// Its name in one word, for files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Good => "good",
            Self::Average => "average",
            Self::Poor => "poor",
        }
    }

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Good => "good ground: compact, well graded sand and gravel, hard clay",
            Self::Average => "average ground: compact fine sand, medium clay, well drained sandy loam",
            Self::Poor => "poor ground: soft clay, clay loam, poorly compacted sand, clay with much silt",
        }
    }

    /// Its ground factor, written down as the table's or as one from memory.
    pub fn factor(self, ledger: &mut impl Ledger) -> PressurePerDepth {
        ledger.judge(
            "G",
            match self {
                Self::Good => Stated {
                    value: kilopascals_per_metre(630.0),
                    because: "PD 6547:2004, Table 2: good ground",
                },
                Self::Average => Stated {
                    value: kilopascals_per_metre(390.0),
                    because: "PD 6547:2004, Table 2 (from memory): average ground",
                },
                Self::Poor => Stated {
                    value: kilopascals_per_metre(230.0),
                    because: "PD 6547:2004, Table 2 (from memory): poor ground",
                },
            },
        )
    }
}

rule! {
    /// Moment that the ground resists about the point the column turns on.
    GroundMoment, "footing/pd6547-mg", GROUND;
    /// ground factor
    factor: PressurePerDepth = "G";
    /// diameter below ground
    width: Length as Distance = "D";
    /// planting depth
    depth: Length as Distance = "P";
    moment "M_G": Moment = factor * width * depth.cubed() / 10.0
}
rule! {
    /// Height of the load over the point the column turns on, P/√2 down.
    Arm, "footing/pd6547-arm", GROUND;
    /// height of the force over grade
    height: Length as Distance = "h";
    /// planting depth
    depth: Length as Distance = "P";
    arm "h_P": Length as Distance = height + (depth.squared() / 2.0).sqrt()
}
rule! {
    /// Force whose moment the ground resists.
    GroundForce, "footing/pd6547-force", GROUND;
    /// moment that the ground resists
    moment: Moment = "M_G";
    /// height of the load over the point the column turns on
    arm: Length as Distance = "h_P";
    force "H": Force = moment / arm
}
rule! {
    /// Lateral force that a planted column resists, factors apart.
    Capacity, "footing/pd6547-capacity", GROUND;
    /// planting depth
    depth: Length as Distance = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// diameter below ground
    width: Length as Distance = "D";
    /// ground factor
    factor: PressurePerDepth = "G";
    force "H": Force
}
impl Capacity {
    /// Works it.
    ///
    /// # Errors
    /// If depth, diameter or ground factor is not above 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let Self { depth, height, width, factor } = self;
        above_nought("depth", GROUND, depth)?;
        ground(height, width, factor)?;
        let moment = GroundMoment { factor, width, depth }.work(ledger);
        let arm = Arm { height, depth }.work(ledger);
        let force = GroundForce { moment, arm }.work(ledger);
        Ok(self.keep(ledger, force))
    }
}
rule! {
    /// Planting depth for a load, factors applied before.
    Depth, "footing/pd6547", GROUND;
    /// lateral force
    force: Force = "H";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// diameter below ground
    width: Length as Distance = "D";
    /// ground factor
    factor: PressurePerDepth = "G";
    depth "P": Length as Distance
}
impl Depth {
    /// Finds the depth at which G D P³ / 10 = H (h + P/√2).
    ///
    /// # Errors
    /// If force, diameter or ground factor is not above 0, or the depth beyond what a post's footing is.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { force, height, width, factor } = self;
        above_nought("force", GROUND, force)?;
        ground(height, width, factor)?;
        let of = |depth| Capacity { depth, height, width, factor };
        let capacity = |depth| of(depth).work(&mut Blank).unwrap_or(newtons(0.0));
        let method = "G D P³ / 10 = H (h + P/√2)";
        let depth = depth_for(Wanted { force, width, method }, ledger, capacity)?;
        of(depth).work(ledger)?;
        Ok(self.keep(ledger, depth))
    }
}

fn ground(height: Length, width: Length, factor: PressurePerDepth) -> Result<(), OutOfRange> {
    within("height", GROUND, height, metres(0.0), metres(f64::MAX))?;
    above_nought("diameter", GROUND, width)?;
    above_nought("ground factor", GROUND, factor)
}

/// The rules of this document by name.
pub const RULES: &[Listed] = &[
    Listed::of::<GroundMoment>(),
    Listed::of::<Arm>(),
    Listed::of::<GroundForce>(),
    Listed::of::<Capacity>(),
    Listed::of::<Depth>(),
];
