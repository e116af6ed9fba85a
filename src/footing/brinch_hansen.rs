//! Brinch Hansen: ultimate resistance of a rigid pile in soil with friction and cohesion.
//!
//! Soil presses with p(z) = (γ z K_q + c K_c) D one way down to the depth x, about which the pile turns, and the other
//! way below. K_q and K_c grow with z/D from a value at the surface (K_s) to one at great depth. With t = z/D their
//! integrals over depth are closed, so force and moment need no slices.

use super::{DEEPEST, DEPTHS, SHALLOWEST, Wanted, above_nought, depth_for, friction};
use crate::numerics::root;
use crate::rule;
use crate::source::{Clause, Document, STATICS, Seen, Stated};
use crate::units::{
    Force, Length, Measure, Moment, Powers, Pressure, PressurePerDepth, Pure, Quantity, metres,
};
use crate::workings::{Blank, Entry, Ledger, Listed, OutOfRange, within, within_as};
use std::f64::consts::PI;

/// The document.
pub static DOCUMENT: Document = Document {
    short: "Brinch Hansen 1961",
    title: "J. Brinch Hansen, The ultimate resistance of rigid piles against transversal forces, Danish Geotechnical \
            Institute, Bulletin 12, 1961",
    seen: Seen::Memory,
};

/// Pressure coefficients.
pub const COEFFICIENTS: Clause = DOCUMENT.at("K_q, K_c");
/// Force and moment on a rigid pile.
pub const BALANCE: Clause = DOCUMENT.at("rotation about x");
const INTEGRAL: Clause = STATICS.at("integral of K_s + (K_∞ − K_s) a t / (1 + a t) over t = z/D");
/// Below this, in radians, soil counts as without friction: the formulas meet their limits there to four digits.
const NO_FRICTION: f64 = 1e-4;

/// The factor on a wind that a Eurocode gives.
pub const EUROCODE_LOAD: Stated<f64> = Stated {
    value: 1.5,
    because: "EN 1990: partial factor of a variable action, on the wind W_k; the soil has its own factor beside",
};
/// The factor on the strength of the soil where none is chosen.
pub const SOIL: Stated<f64> =
    Stated { value: 1.0, because: "ours: no partial factor on the soil unless one is chosen" };
const UNDRAINED_SURFACE: Stated<f64> = Stated {
    value: 1.0 + PI / 2.0,
    because: "Brinch Hansen 1961 (from memory): K_c at the surface for φ = 0, 1 + π/2",
};
const UNDRAINED_CAPACITY: Stated<f64> =
    Stated { value: 2.0 + PI, because: "Brinch Hansen 1961 (from memory): N_c for φ = 0, 2 + π" };
const UNDRAINED_FRICTION: Stated<f64> =
    Stated { value: 0.0, because: "Brinch Hansen 1961 (from memory): K_q for φ = 0, at every depth" };

rule! {
    /// Cohesion with the soil's factor.
    FactoredCohesion, "footing/hansen-factored-cohesion", BALANCE;
    /// cohesion, or undrained strength with no friction
    cohesion: Pressure = "c";
    /// factor on the soil
    factor: f64 = "γ_M";
    factored "c'": Pressure = cohesion / factor
}
rule! {
    /// Angle of friction with the soil's factor on its tangent.
    FactoredFriction, "footing/hansen-factored-friction", BALANCE;
    /// angle of friction
    angle: f64 as Angle = "φ";
    /// factor on the soil
    factor: f64 = "γ_M";
    factored "φ'": f64 as Angle = (angle.tan() / factor).atan()
}
rule! {
    /// Coefficient of overburden at the surface.
    OverburdenSurface, "footing/hansen-kq0", COEFFICIENTS;
    /// angle of friction
    angle: f64 as Angle = "φ";
    coefficient "K_q0": f64 as Coefficient =
        ((PI / 2.0 + angle) * angle.tan()).exp() * angle.cos() * (PI / 4.0 + angle / 2.0).tan()
            - (-(PI / 2.0 - angle) * angle.tan()).exp() * angle.cos() * (PI / 4.0 - angle / 2.0).tan()
}
rule! {
    /// Coefficient of cohesion at the surface.
    CohesionSurface, "footing/hansen-kc0", COEFFICIENTS;
    /// angle of friction
    angle: f64 as Angle = "φ";
    coefficient "K_c0": f64 as Coefficient =
        (((PI / 2.0 + angle) * angle.tan()).exp() * angle.cos() * (PI / 4.0 + angle / 2.0).tan() - 1.0) / angle.tan()
}
rule! {
    /// Bearing-capacity factor of cohesion.
    CapacityFactor, "footing/hansen-nc", COEFFICIENTS;
    /// angle of friction
    angle: f64 as Angle = "φ";
    factor "N_c": f64 as Coefficient =
        ((PI * angle.tan()).exp() * (PI / 4.0 + angle / 2.0).tan().squared() - 1.0) / angle.tan()
}
rule! {
    /// Coefficient of cohesion at great depth.
    CohesionDeep, "footing/hansen-kc-deep", COEFFICIENTS;
    /// angle of friction
    angle: f64 as Angle = "φ";
    /// bearing-capacity factor
    factor: f64 as Coefficient = "N_c";
    coefficient "K_c∞": f64 as Coefficient = factor * (1.58 + 4.09 * angle.tan().to_the_fourth())
}
rule! {
    /// Coefficient of earth pressure at rest.
    AtRest, "footing/hansen-k0", COEFFICIENTS;
    /// angle of friction
    angle: f64 as Angle = "φ";
    coefficient "K_0": f64 as Coefficient = 1.0 - angle.sin()
}
rule! {
    /// Coefficient of overburden at great depth.
    OverburdenDeep, "footing/hansen-kq-deep", COEFFICIENTS;
    /// coefficient of cohesion at great depth
    cohesion: f64 as Coefficient = "K_c∞";
    /// coefficient at rest
    at_rest: f64 as Coefficient = "K_0";
    /// angle of friction
    angle: f64 as Angle = "φ";
    coefficient "K_q∞": f64 as Coefficient = cohesion * at_rest * angle.tan()
}
rule! {
    /// How fast the coefficient of overburden grows with depth.
    OverburdenGrowth, "footing/hansen-aq", COEFFICIENTS;
    /// coefficient at the surface
    surface: f64 as Coefficient = "K_q0";
    /// coefficient at great depth
    deep: f64 as Coefficient = "K_q∞";
    /// coefficient at rest
    at_rest: f64 as Coefficient = "K_0";
    /// angle of friction
    angle: f64 as Angle = "φ";
    growth "a_q": f64 as Coefficient =
        surface / (deep - surface) * at_rest * angle.sin() / (PI / 4.0 + angle / 2.0).sin()
}
rule! {
    /// How fast the coefficient of cohesion grows with depth.
    CohesionGrowth, "footing/hansen-ac", COEFFICIENTS;
    /// coefficient at the surface
    surface: f64 as Coefficient = "K_c0";
    /// coefficient at great depth
    deep: f64 as Coefficient = "K_c∞";
    /// angle of friction
    angle: f64 as Angle = "φ";
    growth "a_c": f64 as Coefficient = surface / (deep - surface) * 2.0 * (PI / 4.0 + angle / 2.0).sin()
}
rule! {
    /// Integral of a coefficient from the ground down.
    Sum, "footing/hansen-j0", INTEGRAL;
    /// depth over width
    reach: f64 as Coefficient = "t";
    /// coefficient at the surface
    surface: f64 as Coefficient = "K_s";
    /// coefficient at great depth
    deep: f64 as Coefficient = "K_∞";
    /// how fast it grows
    growth: f64 as Coefficient = "a";
    sum "J_0": f64 as Coefficient =
        surface * reach + (deep - surface) * (reach - (growth * reach).ln_1p() / growth)
}
rule! {
    /// Integral of a coefficient times depth over width.
    FirstSum, "footing/hansen-j1", INTEGRAL;
    /// depth over width
    reach: f64 as Coefficient = "t";
    /// coefficient at the surface
    surface: f64 as Coefficient = "K_s";
    /// coefficient at great depth
    deep: f64 as Coefficient = "K_∞";
    /// how fast it grows
    growth: f64 as Coefficient = "a";
    sum "J_1": f64 as Coefficient = surface * reach.squared() / 2.0
        + (deep - surface)
            * (reach.squared() / 2.0 - reach / growth + (growth * reach).ln_1p() / growth.squared())
}
rule! {
    /// Integral of a coefficient times the square of depth over width.
    SecondSum, "footing/hansen-j2", INTEGRAL;
    /// depth over width
    reach: f64 as Coefficient = "t";
    /// coefficient at the surface
    surface: f64 as Coefficient = "K_s";
    /// coefficient at great depth
    deep: f64 as Coefficient = "K_∞";
    /// how fast it grows
    growth: f64 as Coefficient = "a";
    sum "J_2": f64 as Coefficient = surface * reach.cubed() / 3.0
        + (deep - surface)
            * (reach.cubed() / 3.0 - reach.squared() / (2.0 * growth) + reach / growth.squared()
                - (growth * reach).ln_1p() / growth.cubed())
}
rule! {
    /// Force of the soil from the ground down to a depth, all one way.
    Thrust, "footing/hansen-thrust", BALANCE;
    /// width of the pile
    width: Length as Distance = "D";
    /// cohesion
    cohesion: Pressure = "c";
    /// integral of the coefficient of cohesion
    of_cohesion: f64 as Coefficient = "J_c0";
    /// unit weight of the soil
    weight: PressurePerDepth = "γ";
    /// integral of the coefficient of overburden times depth over width
    of_overburden: f64 as Coefficient = "J_q1";
    force "R": Force = width.squared() * (cohesion * of_cohesion + weight * width * of_overburden)
}
rule! {
    /// Moment of that force about the ground.
    ThrustMoment, "footing/hansen-thrust-moment", BALANCE;
    /// width of the pile
    width: Length as Distance = "D";
    /// cohesion
    cohesion: Pressure = "c";
    /// integral of the coefficient of cohesion times depth over width
    of_cohesion: f64 as Coefficient = "J_c1";
    /// unit weight of the soil
    weight: PressurePerDepth = "γ";
    /// integral of the coefficient of overburden times the square of depth over width
    of_overburden: f64 as Coefficient = "J_q2";
    moment "Q": Moment = width.cubed() * (cohesion * of_cohesion + weight * width * of_overburden)
}
rule! {
    /// Moment about x of the soil above it, pressing one way, and below it, pressing the other.
    Resisting, "footing/hansen-resisting-moment", BALANCE;
    /// moment of the soil down to the toe about the ground, were it all one way
    whole_moment: Moment = "Q_L";
    /// the same down to x
    moment_above: Moment = "Q_x";
    /// depth about which the pile turns
    turn: Length as Distance = "x";
    /// force of the soil down to x
    above: Force = "R_x";
    /// force of the soil down to the toe, were it all one way
    whole: Force = "R_L";
    moment "M_x": Moment = whole_moment - 2.0 * moment_above + turn * (2.0 * above - whole)
}
rule! {
    /// Lateral force whose moment about x the soil takes up.
    Balance, "footing/hansen-balance", BALANCE;
    /// moment of the soil about x
    moment: Moment = "M_x";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// depth about which the pile turns
    turn: Length as Distance = "x";
    force "H_u": Force = moment / (height + turn)
}
rule! {
    /// Depth about which a rigid pile turns when the soil gives way.
    Rotation, "footing/brinch-hansen-rotation", BALANCE;
    /// depth of the pile
    depth: Length as Distance = "L";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the pile
    width: Length as Distance = "D";
    /// cohesion, or undrained strength with no friction
    cohesion: Pressure = "c";
    /// angle of friction
    angle: f64 as Angle = "φ";
    /// unit weight of the soil
    weight: PressurePerDepth = "γ";
    rotation "x": Length as Distance
}
impl Rotation {
    /// Finds where force and moment balance.
    ///
    /// # Errors
    /// As for [`Capacity`].
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { depth, height, width, cohesion, angle, weight } = self;
        let soil = Soil::try_new(width, cohesion, angle, weight, ledger)?;
        reach(depth, height, width)?;
        let turn = soil.rotation(depth, height, ledger);
        Ok(self.keep(ledger, turn))
    }
}
rule! {
    /// Lateral force at which the soil about a rigid pile gives way.
    ///
    /// # Range
    /// Friction from 0 to 50°; level ground, one soil.
    /// # Checked by
    /// `reference-cases/footing/hansen-sheet-undated-*.toml`, whose thirty slices leave a few per cent
    Capacity, "footing/brinch-hansen-capacity", BALANCE;
    /// depth of the pile
    depth: Length as Distance = "L";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the pile
    width: Length as Distance = "D";
    /// cohesion, or undrained strength with no friction
    cohesion: Pressure = "c";
    /// angle of friction
    angle: f64 as Angle = "φ";
    /// unit weight of the soil
    weight: PressurePerDepth = "γ";
    force "H_u": Force
}
impl Capacity {
    /// Works it.
    ///
    /// # Errors
    /// If depth or width is not above 0, cohesion or unit weight below 0, the soil without any strength, or the angle of
    /// friction not from 0 to 50°.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let Self { depth, height, width, cohesion, angle, weight } = self;
        let soil = Soil::try_new(width, cohesion, angle, weight, ledger)?;
        reach(depth, height, width)?;
        let force = soil.capacity(depth, height, ledger);
        Ok(self.keep(ledger, force))
    }
}
rule! {
    /// Depth of a rigid pile for a load, factors applied before.
    Depth, "footing/brinch-hansen", BALANCE;
    /// lateral force
    force: Force = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the pile
    width: Length as Distance = "D";
    /// cohesion, or undrained strength with no friction
    cohesion: Pressure = "c";
    /// angle of friction
    angle: f64 as Angle = "φ";
    /// unit weight of the soil
    weight: PressurePerDepth = "γ";
    depth "L": Length as Distance
}
impl Depth {
    /// Finds the depth whose capacity is the load.
    ///
    /// # Errors
    /// As for [`Capacity`]; if the force is not above 0, or the depth beyond what a post's footing is.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { force, height, width, cohesion, angle, weight } = self;
        above_nought("force", BALANCE, force)?;
        within("height", BALANCE, height, metres(0.0), metres(f64::MAX))?;
        let soil = Soil::try_new(width, cohesion, angle, weight, ledger)?;
        let method = "the depth at which the soil gives way under the force";
        let capacity = |depth| soil.capacity(depth, height, &mut Blank);
        let depth = depth_for(Wanted { force, width, method }, ledger, capacity)?;
        let _ = soil.capacity(depth, height, ledger);
        Ok(self.keep(ledger, depth))
    }
}
rule! {
    /// Moment in the pile where the soil above has taken up the force.
    MomentAtNoShear, "footing/hansen-moment-at-no-shear", BALANCE;
    /// lateral force
    force: Force = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// moment of the soil above about the ground
    of_soil: Moment = "Q";
    moment "M": Moment = force * height + of_soil
}
rule! {
    /// Largest moment in the pile when the soil gives way: where the soil above has taken up the force.
    LargestMoment, "footing/brinch-hansen-moment", BALANCE;
    /// lateral force
    force: Force = "P";
    /// height of the force over grade
    height: Length as Distance = "h";
    /// width of the pile
    width: Length as Distance = "D";
    /// cohesion, or undrained strength with no friction
    cohesion: Pressure = "c";
    /// angle of friction
    angle: f64 as Angle = "φ";
    /// unit weight of the soil
    weight: PressurePerDepth = "γ";
    moment "M_max": Moment
}
impl LargestMoment {
    /// Finds the depth of no shear, then P h and the moment of the soil above it about the ground.
    ///
    /// # Errors
    /// As for [`Depth`].
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Moment, OutOfRange> {
        let Self { force, height, width, cohesion, angle, weight } = self;
        above_nought("force", BALANCE, force)?;
        within("height", BALANCE, height, metres(0.0), metres(f64::MAX))?;
        let soil = Soil::try_new(width, cohesion, angle, weight, ledger)?;
        let method = "the depth at which the soil above has taken up the force";
        let taken = |depth| soil.thrust(depth, &mut Blank);
        let depth = depth_for(Wanted { force, width, method }, ledger, taken)?;
        let _ = soil.thrust(depth, ledger);
        let of_soil = soil.thrust_moment(depth, ledger);
        let moment = MomentAtNoShear { force, height, of_soil }.work(ledger);
        Ok(self.keep(ledger, moment))
    }
}

fn reach(depth: Length, height: Length, width: Length) -> Result<(), OutOfRange> {
    within("depth", DEPTHS, depth, SHALLOWEST * width, DEEPEST)?;
    within("height", BALANCE, height, metres(0.0), metres(f64::MAX))
}

/// A coefficient at the surface, at great depth, and how fast it grows between.
#[derive(Debug, Clone, Copy)]
struct Growing {
    surface: f64,
    deep: f64,
    growth: f64,
}

/// Soil about a pile, its coefficients worked.
#[derive(Debug, Clone, Copy)]
struct Soil {
    width: Length,
    cohesion: Pressure,
    weight: PressurePerDepth,
    of_cohesion: Growing,
    /// None without friction: soil then presses by cohesion alone.
    of_overburden: Option<Growing>,
}

impl Soil {
    fn try_new(
        width: Length,
        cohesion: Pressure,
        angle: f64,
        weight: PressurePerDepth,
        ledger: &mut impl Ledger,
    ) -> Result<Self, OutOfRange> {
        above_nought("width", BALANCE, width)?;
        within_as(Measure::Angle, "angle of friction", BALANCE, angle, 0.0, f64::MAX)?;
        within("cohesion", BALANCE, cohesion, Pressure::from_si(0.0), Pressure::from_si(f64::MAX))?;
        if angle < NO_FRICTION {
            above_nought("cohesion of soil without friction", BALANCE, cohesion)?;
            let surface = ledger.judge("K_c0", UNDRAINED_SURFACE);
            let factor = ledger.judge("N_c", UNDRAINED_CAPACITY);
            let _ = ledger.judge("K_q", UNDRAINED_FRICTION);
            let deep = CohesionDeep { angle: 0.0, factor }.work(ledger);
            let growth = CohesionGrowth { surface, deep, angle: 0.0 }.work(ledger);
            let of_cohesion = Growing { surface, deep, growth };
            return Ok(Self { width, cohesion, weight, of_cohesion, of_overburden: None });
        }
        friction(BALANCE, angle)?;
        above_nought("unit weight", BALANCE, weight)?;
        let surface = CohesionSurface { angle }.work(ledger);
        let factor = CapacityFactor { angle }.work(ledger);
        let deep = CohesionDeep { angle, factor }.work(ledger);
        let growth = CohesionGrowth { surface, deep, angle }.work(ledger);
        let of_cohesion = Growing { surface, deep, growth };
        let at_rest = AtRest { angle }.work(ledger);
        let deep = OverburdenDeep { cohesion: deep, at_rest, angle }.work(ledger);
        let surface = OverburdenSurface { angle }.work(ledger);
        let growth = OverburdenGrowth { surface, deep, at_rest, angle }.work(ledger);
        let of_overburden = Some(Growing { surface, deep, growth });
        Ok(Self { width, cohesion, weight, of_cohesion, of_overburden })
    }

    /// All pressure from the ground to a depth, one way.
    fn thrust(&self, depth: Length, ledger: &mut impl Ledger) -> Force {
        let Self { width, cohesion, weight, of_cohesion, of_overburden } = *self;
        let reach = (depth / width).pure();
        let Growing { surface, deep, growth } = of_cohesion;
        let of_cohesion = Sum { reach, surface, deep, growth }.work(ledger);
        let of_overburden = of_overburden.map_or(0.0, |Growing { surface, deep, growth }| {
            FirstSum { reach, surface, deep, growth }.work(ledger)
        });
        Thrust { width, cohesion, of_cohesion, weight, of_overburden }.work(ledger)
    }

    /// Its moment about the ground.
    fn thrust_moment(&self, depth: Length, ledger: &mut impl Ledger) -> Moment {
        let Self { width, cohesion, weight, of_cohesion, of_overburden } = *self;
        let reach = (depth / width).pure();
        let Growing { surface, deep, growth } = of_cohesion;
        let of_cohesion = FirstSum { reach, surface, deep, growth }.work(ledger);
        let of_overburden = of_overburden.map_or(0.0, |Growing { surface, deep, growth }| {
            SecondSum { reach, surface, deep, growth }.work(ledger)
        });
        ThrustMoment { width, cohesion, of_cohesion, weight, of_overburden }.work(ledger)
    }

    /// The depth about which moments about the force balance.
    fn rotation(&self, depth: Length, height: Length, ledger: &mut impl Ledger) -> Length {
        let about =
            |depth: Length| self.thrust_moment(depth, &mut Blank) + height * self.thrust(depth, &mut Blank);
        let whole = about(depth);
        let unbalanced = |share: f64| ((2.0 * about(share * depth) - whole) / whole).pure();
        // Halves of a moment are always found, unless the figures are beyond what numbers hold.
        let Some(found) = root(unbalanced, 0.0, 1.0) else { return metres(f64::NAN) };
        ledger.write(|| Entry::Solved {
            symbol: "x",
            method: "moments about the force of the soil above and below x are equal",
            rounds: found.rounds,
            residual: unbalanced(found.at).abs(),
        });
        found.at * depth
    }

    fn capacity(&self, depth: Length, height: Length, ledger: &mut impl Ledger) -> Force {
        let turn = self.rotation(depth, height, ledger);
        let above = self.thrust(turn, ledger);
        let whole = self.thrust(depth, ledger);
        let moment_above = self.thrust_moment(turn, ledger);
        let whole_moment = self.thrust_moment(depth, ledger);
        let moment = Resisting { whole_moment, moment_above, turn, above, whole }.work(ledger);
        Balance { moment, height, turn }.work(ledger)
    }
}

/// The rules of this method by name.
pub const RULES: &[Listed] = &[
    Listed::of::<FactoredCohesion>(),
    Listed::of::<FactoredFriction>(),
    Listed::of::<OverburdenSurface>(),
    Listed::of::<CohesionSurface>(),
    Listed::of::<CapacityFactor>(),
    Listed::of::<CohesionDeep>(),
    Listed::of::<AtRest>(),
    Listed::of::<OverburdenDeep>(),
    Listed::of::<OverburdenGrowth>(),
    Listed::of::<CohesionGrowth>(),
    Listed::of::<Sum>(),
    Listed::of::<FirstSum>(),
    Listed::of::<SecondSum>(),
    Listed::of::<Thrust>(),
    Listed::of::<ThrustMoment>(),
    Listed::of::<Resisting>(),
    Listed::of::<Balance>(),
    Listed::of::<Rotation>(),
    Listed::of::<Capacity>(),
    Listed::of::<Depth>(),
    Listed::of::<MomentAtNoShear>(),
    Listed::of::<LargestMoment>(),
];
