//! IBC 1807.3: posts and poles set in earth, or in concrete in earth, by allowable lateral bearing of the soil.
//!
//! The code's equations are empirical: under its load the pressure of a rigid pole at a third of the depth is 1.4 to
//! 1.6 times S₁ by the theory of a modulus that rises with depth, so no safety is left to be counted twice.

use super::{FootingError, above_nought};
use crate::rule;
use crate::source::{Clause, Document, STATICS, Seen, Stated};
use crate::units::{Force, Length, Powers, Pressure, PressurePerDepth, Pure, feet, metres, psf_per_foot};
use crate::workings::{Blank, Entry, Ledger, Listed, OutOfRange, within};

/// The document.
pub static DOCUMENT: Document = Document {
    short: "IBC",
    title: "International Building Code, 2009 to 2024 editions, chapter 18 (1805.7 in the editions of 2000 to 2006)",
    seen: Seen::SecondHand(
        "a state's reproduction of chapter 18 (780 CMR) and seven other places; the text is the same in every edition",
    ),
};

/// Not constrained at the ground.
pub const NONCONSTRAINED: Clause = DOCUMENT.at("1807.3.2.1, Eq. 18-1");
/// Constrained at the ground by a slab or beam that can take the reaction.
pub const CONSTRAINED: Clause = DOCUMENT.at("1807.3.2.2, Eqs. 18-2, 18-3");
/// Presumptive lateral bearing.
pub const TABLE: Clause = DOCUMENT.at("Table 1806.2");
/// Twice the lateral bearing for isolated poles.
pub const ISOLATED: Clause = DOCUMENT.at("1806.3.4");
/// The depth over which lateral pressure may be computed. Published sheets read the limit as one on d/3; the words
/// limit d, and so does this.
pub const DEPTH_LIMIT: Clause = DOCUMENT.at("1807.3.2.1, \"d\"");

const GREATEST_DEPTH: Length = feet(12.0);
/// Feet turned to metres and back are not always the feet they were.
const SLACK: f64 = 1.0 + 1e-12;

/// Use of 1806.3.4, as it is printed when it is chosen.
pub const DOUBLING: Stated<f64> = Stated {
    value: 2.0,
    because: "IBC 1806.3.4, chosen: an isolated pole that half an inch of movement at the ground does not harm; \
              whether a post of a row is isolated is a judgement",
};

/// Soil by the words of Table 1806.2.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SoilClass {
    /// Class 1, crystalline bedrock.
    CrystallineBedrock,
    /// Class 2, sedimentary and foliated rock.
    SedimentaryRock,
    /// Class 3, sandy gravel and gravel (GW, GP).
    Gravel,
    /// Class 4, sand, silty and clayey sand, silty and clayey gravel (SW, SP, SM, SC, GM, GC).
    Sand,
    /// Class 5, clay, sandy and silty clay, clayey silt, silt, sandy silt (CL, ML, MH, CH).
    Clay,
    /// Mud: the table gives no value.
    Mud,
    /// Organic silt, organic clay or peat: the table gives no value.
    Organic,
    /// Loose fill, placed without compaction: the table gives no value.
    LooseFill,
}

impl SoilClass {
    /// Every class.
    pub const ALL: [Self; 8] = [
        Self::CrystallineBedrock,
        Self::SedimentaryRock,
        Self::Gravel,
        Self::Sand,
        Self::Clay,
        Self::Mud,
        Self::Organic,
        Self::LooseFill,
    ];

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::CrystallineBedrock => "crystalline bedrock",
            Self::SedimentaryRock => "sedimentary or foliated rock",
            Self::Gravel => "gravel",
            Self::Sand => "sand, or silty or clayey sand or gravel",
            Self::Clay => "clay or silt",
            Self::Mud => "mud",
            Self::Organic => "organic soil",
            Self::LooseFill => "loose fill",
        }
    }

    /// The names by which a survey may give it: the words of the table, one soil at a time.
    #[must_use]
    pub const fn names(self) -> &'static [&'static str] {
        match self {
            Self::CrystallineBedrock => &["crystalline bedrock", "bedrock"],
            Self::SedimentaryRock => {
                &["sedimentary rock", "foliated rock", "sedimentary and foliated rock", "rock"]
            }
            Self::Gravel => &["gravel", "sandy gravel", "sandy gravel and gravel", "GW", "GP"],
            Self::Sand => &[
                "sand",
                "silty sand",
                "clayey sand",
                "silty gravel",
                "clayey gravel",
                "SW",
                "SP",
                "SM",
                "SC",
                "GM",
                "GC",
            ],
            Self::Clay => &[
                "clay",
                "sandy clay",
                "silty clay",
                "clayey silt",
                "silt",
                "sandy silt",
                "CL",
                "ML",
                "MH",
                "CH",
            ],
            Self::Mud => &["mud"],
            Self::Organic => &["organic", "organic silt", "organic clay", "peat", "OL", "OH", "PT"],
            Self::LooseFill => &["fill", "loose fill", "unprepared fill"],
        }
    }

    /// The class of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        let is_named = |class: &Self| class.names().iter().any(|one| one.eq_ignore_ascii_case(name.trim()));
        Self::ALL.into_iter().find(is_named)
    }

    /// The number of the class in the table; none where the table gives no value.
    #[must_use]
    pub const fn number(self) -> Option<f64> {
        match self {
            Self::CrystallineBedrock => Some(1.0),
            Self::SedimentaryRock => Some(2.0),
            Self::Gravel => Some(3.0),
            Self::Sand => Some(4.0),
            Self::Clay => Some(5.0),
            Self::Mud | Self::Organic | Self::LooseFill => None,
        }
    }

    /// Allowable lateral bearing for each depth.
    ///
    /// # Errors
    /// For a class without a presumptive value.
    pub fn lateral_bearing(self, ledger: &mut impl Ledger) -> Result<PressurePerDepth, FootingError> {
        let class = self.number().ok_or(FootingError::NoPresumptiveValue { class: self })?;
        Ok(PresumptiveBearing { class }.work(ledger)?)
    }
}

rule! {
    /// Allowable lateral bearing of a class of soil, for each depth below natural grade.
    ///
    /// # Range
    /// Classes 1 to 5. The value may rise with depth to fifteen times itself (1806.3.3), which no depth up to 12 ft
    /// reaches.
    PresumptiveBearing, "footing/ibc-table-1806-2", TABLE;
    /// class of soil
    class: f64 = "class";
    bearing "k": PressurePerDepth
}
impl PresumptiveBearing {
    /// Reads the table.
    ///
    /// # Errors
    /// If the class is not one of 1 to 5.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<PressurePerDepth, OutOfRange> {
        within("class of soil", TABLE, self.class, 1.0, 5.0)?;
        within("part of a class of soil", TABLE, self.class.fract(), 0.0, 0.0)?;
        let bearing = match self.class as u8 {
            1 => 1200.0,
            2 => 400.0,
            3 => 200.0,
            4 => 150.0,
            _ => 100.0,
        };
        Ok(self.keep(ledger, psf_per_foot(bearing)))
    }
}
rule! {
    /// Lateral bearing for isolated poles.
    DoubledBearing, "footing/ibc-1806-3-4", ISOLATED;
    /// factor
    factor: f64 = "F";
    /// allowable lateral bearing for each depth
    bearing: PressurePerDepth = "k";
    doubled "k'": PressurePerDepth = factor * bearing
}
rule! {
    /// Width of a square post or footing as Eq. 18-1 takes it: its diagonal.
    Diagonal, "footing/ibc-diagonal", STATICS.at("diagonal of a square");
    /// side
    side: Length as Distance = "a";
    diagonal "b": Length as Distance = (2.0 * side.squared()).sqrt()
}
rule! {
    /// Allowable lateral bearing at a third of the depth.
    BearingAtThird, "footing/ibc-s1", NONCONSTRAINED;
    /// allowable lateral bearing for each depth
    bearing: PressurePerDepth = "k";
    /// depth of embedment
    depth: Length as Distance = "d";
    pressure "S_1": Pressure = bearing * depth / 3.0
}
rule! {
    /// The length A of Eq. 18-1.
    LengthA, "footing/ibc-a", NONCONSTRAINED;
    /// lateral force
    force: Force = "P";
    /// allowable lateral bearing at a third of the depth
    pressure: Pressure = "S_1";
    /// diameter, or diagonal of a square
    width: Length as Distance = "b";
    a "A": Length as Distance = 2.34 * force / (pressure * width)
}
rule! {
    /// Depth of embedment for a given A.
    DepthOfA, "footing/ibc-18-1", NONCONSTRAINED;
    /// length A
    a: Length as Distance = "A";
    /// height of the force over grade
    height: Length as Distance = "h";
    depth "d": Length as Distance = 0.5 * a * (1.0 + (1.0 + 4.36 * (height / a).pure()).sqrt())
}
rule! {
    /// Depth that Eq. 18-1 asks when S₁ is taken at a third of a trial depth, as sheets check a footing that is there.
    ///
    /// # Range
    /// Trial depth up to 12 ft, load at working level.
    /// # Checked by
    /// `reference-cases/footing/florida-sign-undated-*.toml`, `light-pole-2009-nonconstrained.toml`
    TrialDepth, "footing/ibc-trial", NONCONSTRAINED;
    /// trial depth
    trial: Length as Distance = "d_0";
    /// lateral force
    force: Force = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// diameter, or diagonal of a square
    width: Length as Distance = "b";
    /// allowable lateral bearing for each depth
    bearing: PressurePerDepth = "k";
    depth "d": Length as Distance
}
impl TrialDepth {
    /// Works one round.
    ///
    /// # Errors
    /// If trial depth, force, width or bearing is not above 0, or the trial depth is above 12 ft.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { trial, force, height, width, bearing } = self;
        above_nought("force", NONCONSTRAINED, force)?;
        shape(trial, height, width, bearing, NONCONSTRAINED)?;
        let depth = Nonconstrained { force, height, width, bearing }.round(trial, ledger);
        Ok(self.keep(ledger, depth))
    }
}
rule! {
    /// Depth of embedment of a post that is not constrained at the ground: Eq. 18-1 with S₁ at a third of that depth.
    ///
    /// # Range
    /// Depth up to 12 ft, load at working level.
    /// # Checked by
    /// `reference-cases/footing/hand-note-2026-*.toml`, `christy-2006-pole-nonconstrained.toml`
    Nonconstrained, "footing/ibc-nonconstrained", NONCONSTRAINED;
    /// lateral force
    force: Force = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// diameter, or diagonal of a square
    width: Length as Distance = "b";
    /// allowable lateral bearing for each depth
    bearing: PressurePerDepth = "k";
    depth "d": Length as Distance
}
impl Nonconstrained {
    /// Iterates, and writes the last round.
    ///
    /// Eq. 18-1 answers a depth that is too great with one that is too small, so each round starts from the geometric
    /// mean of the last two.
    ///
    /// # Errors
    /// If force, width or bearing is not above 0, or the depth is above 12 ft.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        above_nought("force", NONCONSTRAINED, self.force)?;
        within("height", NONCONSTRAINED, self.height, metres(0.0), metres(f64::MAX))?;
        above_nought("width", NONCONSTRAINED, self.width)?;
        above_nought("lateral bearing", NONCONSTRAINED, self.bearing)?;
        let (mut depth, mut rounds) = (feet(4.0), 0);
        loop {
            let next = self.round(depth, &mut Blank);
            rounds += 1;
            let off = (next / depth).pure() - 1.0;
            if off.abs() < 4.0 * f64::EPSILON || rounds == 200 {
                within("depth of embedment", DEPTH_LIMIT, depth, metres(0.0), GREATEST_DEPTH * SLACK)?;
                ledger.write(|| Entry::Solved {
                    symbol: "d",
                    method: "Eq. 18-1 with S_1 at d/3, each round from the geometric mean of the last two depths",
                    rounds,
                    residual: off.abs(),
                });
                let depth = self.round(depth, ledger);
                return Ok(self.keep(ledger, depth));
            }
            depth = metres((next / metres(1.0)).pure().sqrt() * (depth / metres(1.0)).pure().sqrt());
        }
    }

    fn round(self, depth: Length, ledger: &mut impl Ledger) -> Length {
        let Self { force, height, width, bearing } = self;
        let pressure = BearingAtThird { bearing, depth }.work(ledger);
        let a = LengthA { force, pressure, width }.work(ledger);
        DepthOfA { a, height }.work(ledger)
    }
}
rule! {
    /// The length A that Eq. 18-1 has at a given depth: the equation turned round.
    AOfDepth, "footing/ibc-a-of-depth", NONCONSTRAINED;
    /// depth of embedment
    depth: Length as Distance = "d";
    /// height of the force over grade
    height: Length as Distance = "h";
    a "A": Length as Distance = depth.squared() / (depth + 1.09 * height)
}
rule! {
    /// The force that goes with a length A: its definition turned round.
    ForceOfA, "footing/ibc-force", NONCONSTRAINED;
    /// length A
    a: Length as Distance = "A";
    /// allowable lateral bearing at a third of the depth
    pressure: Pressure = "S_1";
    /// diameter, or diagonal of a square
    width: Length as Distance = "b";
    force "P": Force = a * pressure * width / 2.34
}
rule! {
    /// Lateral force that a post of given depth may carry, not constrained at the ground.
    ///
    /// # Range
    /// Depth up to 12 ft, load at working level.
    NonconstrainedCapacity, "footing/ibc-nonconstrained-capacity", NONCONSTRAINED;
    /// depth of embedment
    depth: Length as Distance = "d";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// diameter, or diagonal of a square
    width: Length as Distance = "b";
    /// allowable lateral bearing for each depth
    bearing: PressurePerDepth = "k";
    force "P": Force
}
impl NonconstrainedCapacity {
    /// Works it.
    ///
    /// # Errors
    /// If depth, width or bearing is not above 0, or the depth is above 12 ft.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let Self { depth, height, width, bearing } = self;
        shape(depth, height, width, bearing, NONCONSTRAINED)?;
        let pressure = BearingAtThird { bearing, depth }.work(ledger);
        let a = AOfDepth { depth, height }.work(ledger);
        let force = ForceOfA { a, pressure, width }.work(ledger);
        Ok(self.keep(ledger, force))
    }
}
rule! {
    /// Allowable lateral bearing at the full depth.
    BearingAtDepth, "footing/ibc-s3", CONSTRAINED;
    /// allowable lateral bearing for each depth
    bearing: PressurePerDepth = "k";
    /// depth of embedment
    depth: Length as Distance = "d";
    pressure "S_3": Pressure = bearing * depth
}
rule! {
    /// Depth of embedment for a given S₃.
    DepthOfS3, "footing/ibc-18-2", CONSTRAINED;
    /// lateral force
    force: Force = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// allowable lateral bearing at the full depth
    pressure: Pressure = "S_3";
    /// diameter, or diagonal of a square
    width: Length as Distance = "b";
    depth "d": Length as Distance = (4.25 * force * height / (pressure * width)).sqrt()
}
rule! {
    /// Depth of embedment of a post that is constrained at the ground: Eq. 18-2 with S₃ at that depth.
    ///
    /// A slab or beam must be there that can take the reaction; a mow strip or loose asphalt is not accepted everywhere.
    ///
    /// # Range
    /// Depth up to 12 ft, load at working level, force above grade.
    /// # Checked by
    /// `reference-cases/footing/flagpole-2018-constrained.toml`, `hand-note-2026-*.toml`
    Constrained, "footing/ibc-constrained", CONSTRAINED;
    /// lateral force
    force: Force = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// diameter, or diagonal of a square
    width: Length as Distance = "b";
    /// allowable lateral bearing for each depth
    bearing: PressurePerDepth = "k";
    depth "d": Length as Distance
}
impl Constrained {
    /// Works it: with S₃ = k d the equation closes as d³ = 4.25 P h / (k b).
    ///
    /// # Errors
    /// If force, height, width or bearing is not above 0, or the depth is above 12 ft.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { force, height, width, bearing } = self;
        above_nought("force", CONSTRAINED, force)?;
        above_nought("height", CONSTRAINED, height)?;
        above_nought("width", CONSTRAINED, width)?;
        above_nought("lateral bearing", CONSTRAINED, bearing)?;
        let cube = 4.25 * force * height / (bearing * width) / metres(1.0).cubed();
        let depth = metres(cube.pure().cbrt());
        within("depth of embedment", DEPTH_LIMIT, depth, metres(0.0), GREATEST_DEPTH * SLACK)?;
        let pressure = BearingAtDepth { bearing, depth }.work(ledger);
        let depth = DepthOfS3 { force, height, pressure, width }.work(ledger);
        Ok(self.keep(ledger, depth))
    }
}
rule! {
    /// The force that Eq. 18-2 gives at a given depth: the equation turned round.
    ForceOfS3, "footing/ibc-18-2-force", CONSTRAINED;
    /// depth of embedment
    depth: Length as Distance = "d";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// allowable lateral bearing at the full depth
    pressure: Pressure = "S_3";
    /// diameter, or diagonal of a square
    width: Length as Distance = "b";
    force "P": Force = pressure * width * depth.squared() / (4.25 * height)
}
rule! {
    /// Lateral force that a post of given depth may carry, constrained at the ground.
    ///
    /// # Range
    /// Depth up to 12 ft, load at working level, force above grade.
    ConstrainedCapacity, "footing/ibc-constrained-capacity", CONSTRAINED;
    /// depth of embedment
    depth: Length as Distance = "d";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// diameter, or diagonal of a square
    width: Length as Distance = "b";
    /// allowable lateral bearing for each depth
    bearing: PressurePerDepth = "k";
    force "P": Force
}
impl ConstrainedCapacity {
    /// Works it.
    ///
    /// # Errors
    /// If depth, height, width or bearing is not above 0, or the depth is above 12 ft.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let Self { depth, height, width, bearing } = self;
        above_nought("height", CONSTRAINED, height)?;
        shape(depth, height, width, bearing, CONSTRAINED)?;
        let pressure = BearingAtDepth { bearing, depth }.work(ledger);
        let force = ForceOfS3 { depth, height, pressure, width }.work(ledger);
        Ok(self.keep(ledger, force))
    }
}

fn shape(
    depth: Length,
    height: Length,
    width: Length,
    bearing: PressurePerDepth,
    clause: Clause,
) -> Result<(), OutOfRange> {
    above_nought("depth", clause, depth)?;
    within("depth of embedment", DEPTH_LIMIT, depth, metres(0.0), GREATEST_DEPTH * SLACK)?;
    within("height", clause, height, metres(0.0), metres(f64::MAX))?;
    above_nought("width", clause, width)?;
    above_nought("lateral bearing", clause, bearing)
}

/// The rules of this code by name.
pub const RULES: &[Listed] = &[
    Listed::of::<PresumptiveBearing>(),
    Listed::of::<DoubledBearing>(),
    Listed::of::<Diagonal>(),
    Listed::of::<BearingAtThird>(),
    Listed::of::<LengthA>(),
    Listed::of::<DepthOfA>(),
    Listed::of::<TrialDepth>(),
    Listed::of::<Nonconstrained>(),
    Listed::of::<AOfDepth>(),
    Listed::of::<ForceOfA>(),
    Listed::of::<NonconstrainedCapacity>(),
    Listed::of::<BearingAtDepth>(),
    Listed::of::<DepthOfS3>(),
    Listed::of::<Constrained>(),
    Listed::of::<ForceOfS3>(),
    Listed::of::<ConstrainedCapacity>(),
];
