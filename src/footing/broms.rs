//! Broms, short rigid piles free to turn at the head: clay by undrained strength, sand by friction.
//!
//! Clay resists with 9 S_u below 1.5 widths and not at all above; sand with three times Rankine's passive pressure,
//! turning about the toe. Both are in doubt for posts: field tests of poles in stiff clay fit about 3 S_u over the whole
//! depth (Rodgers and Pender, 18th NZGS Symposium, 2008, abstract), and turning about the toe overrates sand (Wood, NZ
//! Geomechanics News, June 2021, abstract). What is worked here is Broms' method as it is printed.

use super::{Wanted, above_nought, depth_for, friction};
use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{Force, Length, Moment, Powers, Pressure, PressurePerDepth, metres, newtons};
use crate::workings::{Blank, Ledger, Listed, OutOfRange, within};
use std::f64::consts::PI;

/// The manual whose factors and equations are used.
pub static DOCUMENT: Document = Document {
    short: "UFC 3-220-20",
    title: "Unified Facilities Criteria 3-220-20, Foundations and Earth Structures, 16 January 2025, after Broms 1964, 1965",
    seen: Seen::SecondHand(
        "the equations as an open library transcribes them (geotech-references 1.4.1), agreeing with \
         FHWA-HIF-18-031, Eqs. 6-8 to 6-17, and with a worked sheet to the sign supports of AASHTO",
    ),
};

/// Clay.
pub const CLAY: Clause = DOCUMENT.at("6-6.4.1.1, Eqs. 6-59 to 6-61");
/// Sand.
pub const SAND: Clause = DOCUMENT.at("6-6.4.1.2, Eqs. 6-62 to 6-65");
/// Factors on load and soil.
pub const FACTORS: Clause = DOCUMENT.at("6-6.4.1, Eqs. 6-55 to 6-58");

/// The factor on a load that comes and goes.
pub const LIVE_LOAD: Stated<f64> = Stated {
    value: 2.0,
    because: "UFC 3-220-20, Eqs. 6-55, 6-56, after Broms 1965: live load × 2.0, together with soil × 0.75; that wind \
              counts as live load is ours",
};
/// The factor on the strength of the soil.
pub const SOIL: Stated<f64> = Stated {
    value: 0.75,
    because: "UFC 3-220-20, Eqs. 6-57, 6-58, after Broms 1965: S_u and tan φ × 0.75, together with load × 2.0",
};
/// The one factor where load and soil are not factored apart.
pub const ONE_FACTOR: Stated<f64> = Stated {
    value: 2.0,
    because: "ours: one factor on the load and none on the soil; 2 to 3 is common in sheets for signs",
};

rule! {
    /// Undrained strength of clay with its factor.
    ReducedStrength, "footing/broms-reduced-strength", FACTORS;
    /// factor on the soil
    factor: f64 = "m";
    /// undrained shear strength
    strength: Pressure = "S_u";
    reduced "S_u'": Pressure = factor * strength
}
rule! {
    /// Angle of friction of sand with its factor on the tangent.
    ReducedFriction, "footing/broms-reduced-friction", FACTORS;
    /// factor on the soil
    factor: f64 = "m";
    /// angle of friction
    angle: f64 as Angle = "φ";
    reduced "φ'": f64 as Angle = (factor * angle.tan()).atan()
}
rule! {
    /// Length below 1.5 widths over which clay takes up the force, to where the shear is nought.
    ClayShearLength, "footing/broms-f", CLAY;
    /// lateral force
    force: Force = "P";
    /// undrained shear strength
    strength: Pressure = "S_u";
    /// width of the pile
    width: Length as Distance = "D";
    length "f": Length as Distance = force / (9.0 * strength * width)
}
rule! {
    /// Largest moment in a pile in clay, 1.5 D + f below the ground.
    ClayMoment, "footing/broms-clay-moment", CLAY;
    /// lateral force
    force: Force = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the pile
    width: Length as Distance = "D";
    /// length to where the shear is nought
    length: Length as Distance = "f";
    moment "M_max": Moment = force * (height + 1.5 * width + 0.5 * length)
}
rule! {
    /// Length of pile in clay that takes up a moment, half of it pressing each way.
    ClayMomentLength, "footing/broms-g", CLAY;
    /// largest moment
    moment: Moment = "M_max";
    /// undrained shear strength
    strength: Pressure = "S_u";
    /// width of the pile
    width: Length as Distance = "D";
    length "g": Length as Distance = (moment / (2.25 * strength * width)).sqrt()
}
rule! {
    /// Length of pile that clay asks for.
    ClayLength, "footing/broms-length", CLAY;
    /// width of the pile
    width: Length as Distance = "D";
    /// length to where the shear is nought
    shear_length: Length as Distance = "f";
    /// length that takes up the moment
    moment_length: Length as Distance = "g";
    depth "L": Length as Distance = 1.5 * width + shear_length + moment_length
}
rule! {
    /// Depth of a short pile in clay for a load, factors applied before.
    ///
    /// A wider pile loses more of its top: below about five widths of depth, more width may ask for more depth.
    ///
    /// # Checked by
    /// `reference-cases/footing/light-pole-undated-broms-clay.toml`, `broms-sheet-undated-clay.toml`
    ClayDepth, "footing/broms-clay", CLAY;
    /// lateral force
    force: Force = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the pile
    width: Length as Distance = "D";
    /// undrained shear strength
    strength: Pressure = "S_u";
    depth "L": Length as Distance
}
impl ClayDepth {
    /// Works it.
    ///
    /// # Errors
    /// If force, width or strength is not above 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { force, height, width, strength } = self;
        above_nought("force", CLAY, force)?;
        within("height", CLAY, height, metres(0.0), metres(f64::MAX))?;
        above_nought("width", CLAY, width)?;
        above_nought("undrained strength", CLAY, strength)?;
        let shear_length = ClayShearLength { force, strength, width }.work(ledger);
        let moment = ClayMoment { force, height, width, length: shear_length }.work(ledger);
        let moment_length = ClayMomentLength { moment, strength, width }.work(ledger);
        let depth = ClayLength { width, shear_length, moment_length }.work(ledger);
        Ok(self.keep(ledger, depth))
    }
}
rule! {
    /// Lateral force that clay takes up over the length below its ignored top: f + g solved for the force.
    ClayForce, "footing/broms-clay-force", CLAY;
    /// undrained shear strength
    strength: Pressure = "S_u";
    /// width of the pile
    width: Length as Distance = "D";
    /// height of the force over where resistance begins
    arm: Length as Distance = "e'";
    /// length over which clay resists
    length: Length as Distance = "L'";
    force "H_u": Force = 9.0 * strength * width * length.squared()
        / (((2.0 * arm + length).squared() + length.squared()).sqrt() + 2.0 * arm + length)
}
rule! {
    /// Lateral force at which a short pile in clay gives way, factors apart.
    ClayCapacity, "footing/broms-clay-capacity", CLAY;
    /// depth of the pile
    depth: Length as Distance = "L";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the pile
    width: Length as Distance = "D";
    /// undrained shear strength
    strength: Pressure = "S_u";
    force "H_u": Force
}
impl ClayCapacity {
    /// Works it; nought where the pile ends within 1.5 widths.
    ///
    /// # Errors
    /// If depth, width or strength is not above 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let Self { depth, height, width, strength } = self;
        above_nought("depth", CLAY, depth)?;
        within("height", CLAY, height, metres(0.0), metres(f64::MAX))?;
        above_nought("width", CLAY, width)?;
        above_nought("undrained strength", CLAY, strength)?;
        let length = depth - 1.5 * width;
        let force = if length > metres(0.0) {
            ClayForce { strength, width, arm: height + 1.5 * width, length }.work(ledger)
        } else {
            newtons(0.0)
        };
        Ok(self.keep(ledger, force))
    }
}
rule! {
    /// Rankine's coefficient of passive pressure.
    Passive, "footing/broms-kp", SAND;
    /// angle of friction
    angle: f64 as Angle = "φ";
    passive "K_p": f64 = (PI / 4.0 + angle / 2.0).tan().squared()
}
rule! {
    /// Lateral force at which a short pile in sand gives way, by moments about the toe.
    SandForce, "footing/broms-sand-force", SAND;
    /// unit weight of the soil
    weight: PressurePerDepth = "γ";
    /// width of the pile
    width: Length as Distance = "D";
    /// depth of the pile
    depth: Length as Distance = "L";
    /// coefficient of passive pressure
    passive: f64 = "K_p";
    /// height of the force over grade
    height: Length as Distance = "h";
    force "H_u": Force = 0.5 * weight * width * depth.cubed() * passive / (height + depth)
}
rule! {
    /// Depth in sand at which the shear is nought.
    SandShearDepth, "footing/broms-sand-f", SAND;
    /// lateral force
    force: Force = "P";
    /// unit weight of the soil
    weight: PressurePerDepth = "γ";
    /// width of the pile
    width: Length as Distance = "D";
    /// coefficient of passive pressure
    passive: f64 = "K_p";
    depth "f": Length as Distance = (force / (1.5 * weight * width * passive)).sqrt()
}
rule! {
    /// Largest moment in a pile in sand, f below the ground.
    SandMoment, "footing/broms-sand-moment", SAND;
    /// lateral force
    force: Force = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// depth at which the shear is nought
    depth: Length as Distance = "f";
    /// unit weight of the soil
    weight: PressurePerDepth = "γ";
    /// width of the pile
    width: Length as Distance = "D";
    /// coefficient of passive pressure
    passive: f64 = "K_p";
    moment "M_max": Moment = force * (height + depth) - 0.5 * weight * width * passive * depth.cubed()
}
rule! {
    /// Lateral force at which a short pile in sand gives way, from the angle of friction, factors apart.
    SandCapacity, "footing/broms-sand-capacity", SAND;
    /// depth of the pile
    depth: Length as Distance = "L";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the pile
    width: Length as Distance = "D";
    /// angle of friction
    angle: f64 as Angle = "φ";
    /// unit weight of the soil
    weight: PressurePerDepth = "γ";
    force "H_u": Force
}
impl SandCapacity {
    /// Works it.
    ///
    /// # Errors
    /// If depth, width or unit weight is not above 0, or the angle of friction not above 0 and up to 50°.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let Self { depth, height, width, angle, weight } = self;
        above_nought("depth", SAND, depth)?;
        within("height", SAND, height, metres(0.0), metres(f64::MAX))?;
        sand(width, angle, weight)?;
        let passive = Passive { angle }.work(ledger);
        let force = SandForce { weight, width, depth, passive, height }.work(ledger);
        Ok(self.keep(ledger, force))
    }
}
rule! {
    /// Depth of a short pile in sand for a load, factors applied before: L³ − 2 (P L + P h) / (γ D K_p) = 0.
    SandDepth, "footing/broms-sand", SAND;
    /// lateral force
    force: Force = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the pile
    width: Length as Distance = "D";
    /// angle of friction
    angle: f64 as Angle = "φ";
    /// unit weight of the soil
    weight: PressurePerDepth = "γ";
    depth "L": Length as Distance
}
impl SandDepth {
    /// Solves the cubic, and writes the force of its root.
    ///
    /// # Errors
    /// If force, width or unit weight is not above 0, the angle of friction not above 0 and up to 50°, or the depth
    /// beyond what a post's footing is.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { force, height, width, angle, weight } = self;
        above_nought("force", SAND, force)?;
        within("height", SAND, height, metres(0.0), metres(f64::MAX))?;
        sand(width, angle, weight)?;
        let passive = Passive { angle }.work(ledger);
        let resists = |depth| SandForce { weight, width, depth, passive, height };
        let method = "the cubic L³ − 2 P (L + h) / (γ D K_p) = 0";
        let depth =
            depth_for(Wanted { force, width, method }, ledger, |depth| resists(depth).work(&mut Blank))?;
        let _ = resists(depth).work(ledger);
        Ok(self.keep(ledger, depth))
    }
}

fn sand(width: Length, angle: f64, weight: PressurePerDepth) -> Result<(), OutOfRange> {
    above_nought("width", SAND, width)?;
    friction(SAND, angle)?;
    above_nought("unit weight", SAND, weight)
}

/// The rules of this method by name.
pub const RULES: &[Listed] = &[
    Listed::of::<ReducedStrength>(),
    Listed::of::<ReducedFriction>(),
    Listed::of::<ClayShearLength>(),
    Listed::of::<ClayMoment>(),
    Listed::of::<ClayMomentLength>(),
    Listed::of::<ClayLength>(),
    Listed::of::<ClayDepth>(),
    Listed::of::<ClayForce>(),
    Listed::of::<ClayCapacity>(),
    Listed::of::<Passive>(),
    Listed::of::<SandForce>(),
    Listed::of::<SandShearDepth>(),
    Listed::of::<SandMoment>(),
    Listed::of::<SandCapacity>(),
    Listed::of::<SandDepth>(),
];
