//! What a screen holds back of a solid wall's load, by the wind that passes through it.
//!
//! A layer has a loss coefficient k: the pressure it takes from the wind, in units of ½ρu² with u the mean wind
//! *through its gross area*. From k the load factor R follows: net load over that of the same screen solid, so that
//! the net pressure is q_h times the code's solid coefficient times R.
//!
//! This stands beside a code's own factor and never below it: for dense cloth it says how little a more open mesh
//! relieves, with a band of what it may be wrong by.
//!
//! # Range
//! A long, taut, even screen of solidity 0.1 to 0.95 on the ground, holes much smaller than its height, wind within
//! about 30° of square on, wires above a Reynolds number of 400: mean flow, gusts coming in with q.

use crate::numerics::linear;
use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{
    Measure, Powers, Pressure, PressurePerSpeedSquared, Pure, Quantity, Value, Velocity,
    pascals_per_speed_squared,
};
use crate::workings::{Blank, Entry, Ledger, Listed, OutOfRange, within, within_as};
use std::f64::consts::FRAC_PI_4;

static WIRE_SCREENS: Document = Document {
    short: "Barlow 1999",
    title: "Loss of woven wire screens in wind tunnels, after Barlow 1999",
    seen: Seen::SecondHand("source text in a public repository that credits it"),
};
static IDELCHIK: Document = Document {
    short: "Idelchik",
    title: "I. E. Idelchik, Handbook of Hydraulic Resistance, edition not recorded",
    seen: Seen::Memory,
};
static OBLIQUE: Document = Document {
    short: "Richards and Robinson 1999",
    title: "Richards and Robinson, Journal of Wind Engineering and Industrial Aerodynamics 83 (1999) 455-465",
    seen: Seen::SecondHand("its abstract"),
};
/// A sheet of sources before its mirror in the ground, a wake slowed as mass asks, and the suction in the wake that
/// makes the pressure on the screen equal to what the wind loses.
static MODEL: Document = Document {
    short: "porous-screen model",
    title: "Through-flow model of a porous screen on the ground: ours, derived, beside a code and never below it",
    seen: Seen::FirstHand,
};

const BALANCE: Clause = MODEL.at("momentum of the through-flow");
const SERIES: Clause = MODEL.at("one mean wind through layers in series");
const PARALLEL: Clause = MODEL.at("one pressure over openings side by side");
const SQUARED_COSINE: Clause = OBLIQUE.at("k cos²θ");
const TEST: Clause = MODEL.at("definition of k");
const BAND_PLACE: Clause = MODEL.at("band");
const ALIKE: Clause = MODEL.at("round wire of equal loss");

const MESH_FACTOR: Stated<f64> = Stated {
    value: 1.3,
    because: "Barlow 1999: round metal wire as it usually is (1.0 new wire, 2.1 thread); the factor of the Reynolds \
              number is 1 above 400, from memory",
};
const DISCHARGE: Stated<f64> = Stated { value: 0.6, because: "ours: wind through a hole with sharp edges" };
const AIR: Stated<PressurePerSpeedSquared> = Stated {
    value: pascals_per_speed_squared(1.2),
    because: "ours: air of 20 °C at sea level, in which a test of air permeability is run; common practice, no source",
};
const BAND: &str = "ours: what the model may be off by, from the spread of rules, measurements and k itself at that \
solidity of all layers: 25 % up to 0.3, 15 % at 0.5, 7 % at 0.7, 3 % from 0.85";

rule! {
    /// Loss coefficient of woven round wire or round yarn.
    ///
    /// # Range
    /// Solidity below 1, where it grows without end; wires above a Reynolds number of 400. Any k is good to ±30 %.
    WireLoss, "screen/loss-wire", WIRE_SCREENS.at("K");
    /// solid area over gross area
    solidity: f64 as Coefficient = "s";
    /// factor of the mesh
    mesh_factor: f64 = "K_m";
    loss "k": f64 as Coefficient = mesh_factor * solidity + (solidity / (1.0 - solidity)).squared()
}
rule! {
    /// Loss coefficient of a thin plate with sharp-edged holes: punched sheet, slats, flat tape.
    ///
    /// # Range
    /// Solidity below 1, where it grows without end; high Reynolds numbers. Any k is good to ±30 %.
    PlateLoss, "screen/loss-plate", IDELCHIK.at("thin sharp-edged plate").from_memory();
    /// solid area over gross area
    solidity: f64 as Coefficient = "s";
    loss "k": f64 as Coefficient = ((0.707 * solidity.sqrt() + solidity) / (1.0 - solidity)).squared()
}
rule! {
    /// Loss coefficient of two layers one behind the other, a few meshes apart.
    SeriesLoss, "screen/loss-series", SERIES;
    /// loss coefficient of the first layer
    first: f64 as Coefficient = "k_1";
    /// loss coefficient of the second layer
    second: f64 as Coefficient = "k_2";
    loss "k": f64 as Coefficient = first + second
}
rule! {
    /// Loss coefficient of cloth with windows cut in: what passes cloth and windows adds up.
    ///
    /// A flap that can blow shut is no window. For large holes the model understates what they relieve.
    ///
    /// # Range
    /// Cloth with k above 1/C², 2.8: a hole in cloth more open than that holds back more than the cloth it takes,
    /// which is on the heavy side.
    VentedLoss, "screen/loss-vents", PARALLEL;
    /// loss coefficient of the cloth
    loss: f64 as Coefficient = "k";
    /// share cut away
    share: f64 as Coefficient = "a";
    /// wind through a window over √(2Δp/ρ)
    discharge: f64 = "C";
    vented "k'": f64 as Coefficient = 1.0 / ((1.0 - share) / loss.sqrt() + share * discharge).squared()
}
rule! {
    /// Loss coefficient from a test of air permeability.
    ///
    /// A slow test gives k too high, which is on the heavy side.
    PermeabilityLoss, "screen/permeability-loss", TEST;
    /// pressure of the test
    pressure: Pressure = "Δp";
    /// density of the air
    density: PressurePerSpeedSquared = "ρ";
    /// air permeability
    permeability: Velocity as AirPermeability = "u";
    loss "k": f64 as Coefficient = (2.0 * pressure / (density * permeability.squared())).pure()
}
rule! {
    /// Loss coefficient for wind that comes at an angle to square on.
    ///
    /// # Range
    /// 0 to 45°.
    ObliqueLoss, "screen/loss-oblique", SQUARED_COSINE;
    /// loss coefficient for wind square on
    loss: f64 as Coefficient = "k";
    /// angle from square on
    angle: f64 as Angle = "θ";
    oblique "k_θ": f64 as Coefficient
}
impl ObliqueLoss {
    /// Works k cos²θ.
    ///
    /// # Errors
    /// If the angle is below 0 or above 45°.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { loss, angle } = self;
        within_as(
            Measure::Angle,
            "angle from square on",
            SQUARED_COSINE,
            angle,
            0.0,
            FRAC_PI_4 * (1.0 + 1e-12),
        )?;
        Ok(self.keep(ledger, loss * angle.cos().squared()))
    }
}
rule! {
    /// Solid over open area of the round wire that loses as much: one round towards K_m x/(1 + x) + x² = k.
    ///
    /// By Newton's method.
    EquivalentRound, "screen/equivalent-round", ALIKE;
    /// loss coefficient
    loss: f64 as Coefficient = "k";
    /// factor of the mesh
    mesh_factor: f64 = "K_m";
    /// the round before
    guess: f64 as Coefficient = "x_0";
    quotient "x": f64 as Coefficient = guess
        - (mesh_factor * guess / (1.0 + guess) + guess.squared() - loss)
            / (mesh_factor / (1.0 + guess).squared() + 2.0 * guess)
}
rule! {
    /// Solidity from solid over open.
    SolidOverAll, "screen/solidity-of-quotient", ALIKE;
    /// solid area over open area
    quotient: f64 as Coefficient = "x";
    solidity "s": f64 as Coefficient = quotient / (1.0 + quotient)
}
rule! {
    /// Solidity of the round wire that loses as much: what a test of air permeability means, in the model's terms.
    ///
    /// It is no open area: yarn that gives way, slow air and holes of another form all go into it.
    EquivalentSolidity, "screen/equivalent-solidity", ALIKE;
    /// loss coefficient
    loss: f64 as Coefficient = "k";
    solidity "s_e": f64 as Coefficient
}
impl EquivalentSolidity {
    /// Finds solid over open, then the solidity.
    ///
    /// # Errors
    /// If the loss coefficient is below 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { loss } = self;
        within("loss coefficient", ALIKE, loss, 0.0, f64::INFINITY)?;
        if loss.is_infinite() || loss <= 0.0 {
            return Ok(self.keep(ledger, if loss > 0.0 { 1.0 } else { 0.0 }));
        }
        let mesh_factor = ledger.judge("K_m", MESH_FACTOR);
        let guess = quotient(loss, mesh_factor);
        let quotient = EquivalentRound { loss, mesh_factor, guess }.work(ledger);
        let solidity = SolidOverAll { quotient }.work(ledger);
        Ok(self.keep(ledger, solidity))
    }
}

/// The root by rounds on the ledger that keeps nothing, from where all of the loss were the square.
fn quotient(loss: f64, mesh_factor: f64) -> f64 {
    let mut guess = loss.sqrt();
    for _ in 0..50 {
        let next = EquivalentRound { loss, mesh_factor, guess }.work(&mut Blank);
        let done = (next - guess).abs() <= 1e-15 * guess;
        guess = next;
        if done {
            break;
        }
    }
    guess
}

rule! {
    /// Wind through a screen over the wind before it: one round of Newton's method towards k τ² = 4/3 (1 − τ²/(2 − τ)).
    ThroughVelocity, "screen/through-velocity", BALANCE;
    /// loss coefficient
    loss: f64 as Coefficient = "k";
    /// the round before
    guess: f64 as Coefficient = "τ_0";
    through "τ": f64 as Coefficient = guess
        + (1.0 / guess.squared() - 1.0 / (2.0 - guess) - 0.75 * loss)
            / (2.0 / guess.cubed() + 1.0 / (2.0 - guess).squared())
}
rule! {
    /// Load factor of a screen that lets a share of the wind through.
    ThroughFactor, "screen/load-factor-of-through-velocity", BALANCE;
    /// wind through the screen over the wind before it
    through: f64 as Coefficient = "τ";
    factor "R": f64 as Coefficient = 1.0 - through.squared() / (2.0 - through)
}
rule! {
    /// Load factor of a porous screen: its net load over that of the same screen solid.
    ///
    /// With the net coefficient C_d of the screen, k τ² = C_d = 4/3 R and R = 1 − τ²/(2 − τ); τ is the one root
    /// between 0 and 1 of k τ³ − (2k + 4/3) τ² − 4/3 τ + 8/3 = 0.
    ///
    /// # Range
    /// Any k from 0; a screen without openings has k without end and R 1.
    LoadFactor, "screen/load-factor", BALANCE;
    /// loss coefficient
    loss: f64 as Coefficient = "k";
    factor "R": f64 as Coefficient
}
impl LoadFactor {
    /// Finds the wind through the screen, then the factor.
    ///
    /// # Errors
    /// If the loss coefficient is below 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { loss } = self;
        within("loss coefficient", BALANCE, loss, 0.0, f64::INFINITY)?;
        if loss.is_infinite() {
            return Ok(self.keep(ledger, 1.0));
        }
        let guess = through(loss);
        let through = ThroughVelocity { loss, guess }.work(ledger);
        let factor = ThroughFactor { through }.work(ledger);
        Ok(self.keep(ledger, factor))
    }
}

/// The root by rounds on the ledger that keeps nothing. The start lies at or below it, from where each round rises
/// towards it: 1/τ² − 1/(2 − τ) falls and is hollow upwards between 0 and 1.
fn through(loss: f64) -> f64 {
    let mut guess = 1.0 / (1.0 + 0.75 * loss).sqrt();
    for _ in 0..50 {
        let next = ThroughVelocity { loss, guess }.work(&mut Blank);
        let done = (next - guess).abs() <= 1e-15 * guess;
        guess = next;
        if done {
            break;
        }
    }
    guess
}

rule! {
    /// Drag coefficient of a long screen on the ground, on its gross area, from its load factor.
    DragCoefficient, "screen/drag-coefficient", BALANCE;
    /// load factor
    factor: f64 as Coefficient = "R";
    drag "C_d": f64 as Coefficient = 4.0 / 3.0 * factor
}
rule! {
    /// Share of the load square on that is left for wind at an angle.
    ShareAtAngle, "screen/share-at-angle", SQUARED_COSINE;
    /// load factor at the angle
    oblique: f64 as Coefficient = "R_θ";
    /// load factor square on
    square: f64 as Coefficient = "R";
    share "R_θ/R": f64 as Coefficient = oblique / square
}
rule! {
    /// Load across a screen in wind at an angle, over its load in the same wind square on.
    ///
    /// For a dense screen next to nothing is gained: nobody may count on the wind to come from the side.
    ///
    /// # Range
    /// Loss coefficients above 0; 0 to 45°.
    ObliqueShare, "screen/oblique-share", SQUARED_COSINE;
    /// loss coefficient for wind square on
    loss: f64 as Coefficient = "k";
    /// angle from square on
    angle: f64 as Angle = "θ";
    share "R_θ/R": f64 as Coefficient
}
impl ObliqueShare {
    /// Works both load factors.
    ///
    /// # Errors
    /// If the loss coefficient is not above 0 or the angle is below 0 or above 45°.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { loss, angle } = self;
        within("loss coefficient", SQUARED_COSINE, loss, f64::MIN_POSITIVE, f64::INFINITY)?;
        let at_angle = ObliqueLoss { loss, angle }.work(ledger)?;
        let square = LoadFactor { loss }.work(ledger)?;
        let oblique = LoadFactor { loss: at_angle }.work(ledger)?;
        let share = ShareAtAngle { oblique, square }.work(ledger);
        Ok(self.keep(ledger, share))
    }
}

rule! {
    /// Load factor of two layers of round wire or round yarn, one behind the other.
    WireLoadFactor, "screen/load-factor-wire", BALANCE;
    /// solidity of the first layer
    first: f64 as Coefficient = "s_1";
    /// solidity of the second layer, 0 for none
    second: f64 as Coefficient = "s_2";
    factor "R": f64 as Coefficient
}
impl WireLoadFactor {
    /// Works [`load_factor`].
    ///
    /// # Errors
    /// If a solidity is not between 0 and 1.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let layers = [self.first, self.second].map(|solidity| Layer::whole(MadeOf::Wire(solidity)));
        let model = load_factor(&layers, ledger)?;
        Ok(self.keep(ledger, model.factor))
    }
}
rule! {
    /// Drag coefficient of one layer of round wire or round yarn, on its gross area.
    WireDrag, "screen/drag-of-wire", BALANCE;
    /// solid area over gross area
    solidity: f64 as Coefficient = "s";
    drag "C_d": f64 as Coefficient
}
impl WireDrag {
    /// Works [`load_factor`].
    ///
    /// # Errors
    /// If the solidity is not between 0 and 1.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let model = load_factor(&[Layer::whole(MadeOf::Wire(self.solidity))], ledger)?;
        let drag = DragCoefficient { factor: model.factor }.work(ledger);
        Ok(self.keep(ledger, drag))
    }
}
rule! {
    /// Load factor of one layer of flat tape, slats or punched sheet.
    PlateLoadFactor, "screen/load-factor-plate", BALANCE;
    /// solid area over gross area
    solidity: f64 as Coefficient = "s";
    factor "R": f64 as Coefficient
}
impl PlateLoadFactor {
    /// Works [`load_factor`].
    ///
    /// # Errors
    /// If the solidity is not between 0 and 1.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let model = load_factor(&[Layer::whole(MadeOf::Plate(self.solidity))], ledger)?;
        Ok(self.keep(ledger, model.factor))
    }
}
rule! {
    /// Load factor of one layer by its test of air permeability.
    TestedLoadFactor, "screen/load-factor-tested", BALANCE;
    /// pressure of the test
    pressure: Pressure = "Δp";
    /// air permeability
    permeability: Velocity as AirPermeability = "u";
    factor "R": f64 as Coefficient
}
impl TestedLoadFactor {
    /// Works [`load_factor`].
    ///
    /// # Errors
    /// If nothing passes or there is no pressure.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let test = PermeabilityTest { pressure: self.pressure, flow: self.permeability };
        let model = load_factor(&[Layer::whole(MadeOf::Tested(test))], ledger)?;
        Ok(self.keep(ledger, model.factor))
    }
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<WireLoss>(),
    Listed::of::<PlateLoss>(),
    Listed::of::<SeriesLoss>(),
    Listed::of::<VentedLoss>(),
    Listed::of::<PermeabilityLoss>(),
    Listed::of::<ObliqueLoss>(),
    Listed::of::<EquivalentRound>(),
    Listed::of::<SolidOverAll>(),
    Listed::of::<EquivalentSolidity>(),
    Listed::of::<ThroughVelocity>(),
    Listed::of::<ThroughFactor>(),
    Listed::of::<LoadFactor>(),
    Listed::of::<DragCoefficient>(),
    Listed::of::<ShareAtAngle>(),
    Listed::of::<ObliqueShare>(),
    Listed::of::<WireLoadFactor>(),
    Listed::of::<WireDrag>(),
    Listed::of::<PlateLoadFactor>(),
    Listed::of::<TestedLoadFactor>(),
];

/// A test of air permeability as its maker reports it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PermeabilityTest {
    /// Pressure over the cloth.
    pub pressure: Pressure,
    /// Air that passes, volume for each area and time.
    pub flow: Velocity,
}

impl PermeabilityTest {
    /// The loss coefficient it means.
    ///
    /// # Errors
    /// If nothing passes or there is no pressure.
    pub fn loss(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { pressure, flow } = self;
        let above = f64::MIN_POSITIVE;
        within_as(Measure::Pressure, "pressure of the test", TEST, pressure.si(), above, f64::MAX)?;
        within_as(Measure::AirPermeability, "air permeability", TEST, flow.si(), above, f64::MAX)?;
        let density = ledger.judge("ρ", AIR);
        Ok(PermeabilityLoss { pressure, density, permeability: flow }.work(ledger))
    }

    /// The solidity of round wire that it means.
    ///
    /// # Errors
    /// If nothing passes or there is no pressure.
    pub fn solidity(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let loss = self.loss(ledger)?;
        EquivalentSolidity { loss }.work(ledger)
    }
}

/// What a layer is made of, as its loss coefficient sees it, with its solid area over gross area, windows apart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MadeOf {
    /// Round wire or round yarn, woven or knitted.
    Wire(f64),
    /// Flat tape, slats or punched sheet: sharp edges.
    Plate(f64),
    /// Whatever it is, air was blown through it.
    Tested(PermeabilityTest),
}

/// One layer of a screen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layer {
    /// What it is made of.
    pub made_of: MadeOf,
    /// Share that windows cut away; 0 for none.
    pub cut_away: f64,
}

impl Layer {
    /// A layer without windows.
    #[must_use]
    pub const fn whole(made_of: MadeOf) -> Self {
        Self { made_of, cut_away: 0.0 }
    }

    /// Its loss coefficient; without end where nothing is open.
    ///
    /// # Errors
    /// If the solidity or the share cut away is not between 0 and 1, or a test is none.
    pub fn loss(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { made_of, cut_away } = self;
        within("share cut away", PARALLEL, cut_away, 0.0, 1.0)?;
        let loss = match made_of {
            MadeOf::Wire(solidity) => {
                within("solidity", BALANCE, solidity, 0.0, 1.0)?;
                let mesh_factor = ledger.judge("K_m", MESH_FACTOR);
                WireLoss { solidity, mesh_factor }.work(ledger)
            }
            MadeOf::Plate(solidity) => {
                within("solidity", BALANCE, solidity, 0.0, 1.0)?;
                PlateLoss { solidity }.work(ledger)
            }
            MadeOf::Tested(test) => test.loss(ledger)?,
        };
        if cut_away > 0.0 {
            let discharge = ledger.judge("C", DISCHARGE);
            Ok(VentedLoss { loss, share: cut_away, discharge }.work(ledger))
        } else {
            Ok(loss)
        }
    }

    /// Its solidity with the windows counted as open; that of round wire of equal loss where it was tested.
    ///
    /// # Errors
    /// If a test is none.
    pub fn left(self) -> Result<f64, OutOfRange> {
        let solidity = match self.made_of {
            MadeOf::Wire(solidity) | MadeOf::Plate(solidity) => solidity,
            MadeOf::Tested(test) => test.solidity(&mut Blank)?,
        };
        Ok(solidity * (1.0 - self.cut_away))
    }
}

/// The load factor of a screen by the model, and how far it may be off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ModelFactor {
    /// Loss coefficient of all layers.
    pub loss: f64,
    /// Net load over that of the same screen solid.
    pub factor: f64,
    /// Share of the factor by which it may be off, either way.
    pub band: f64,
}

impl ModelFactor {
    /// The factor at the light end of the band.
    #[must_use]
    pub fn least(self) -> f64 {
        self.factor * (1.0 - self.band)
    }

    /// The factor at the heavy end of the band; above 1 for dense cloth, as measurements have been.
    #[must_use]
    pub fn greatest(self) -> f64 {
        self.factor * (1.0 + self.band)
    }
}

/// The load factor of layers one behind the other, loss coefficients added.
///
/// # Errors
/// If a solidity or a share cut away is not between 0 and 1, or a test is none.
pub fn load_factor(layers: &[Layer], ledger: &mut impl Ledger) -> Result<ModelFactor, OutOfRange> {
    let mut sum: Option<f64> = None;
    for layer in layers {
        let second = layer.loss(ledger)?;
        sum = Some(match sum {
            Some(first) => SeriesLoss { first, second }.work(ledger),
            None => second,
        });
    }
    let loss = sum.unwrap_or(0.0);
    let factor = LoadFactor { loss }.work(ledger)?;
    let mut open = 1.0;
    for layer in layers {
        open *= 1.0 - layer.left()?;
    }
    Ok(ModelFactor { loss, factor, band: band(1.0 - open, ledger)? })
}

/// By what share the load factor may be off, either way, at a solidity of all layers together.
///
/// # Errors
/// If the solidity is not between 0 and 1.
pub fn band(solidity: f64, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
    within("solidity", BAND_PLACE, solidity, 0.0, 1.0)?;
    let share = linear(&[0.3, 0.5, 0.7, 0.85], &[0.25, 0.15, 0.07, 0.03], solidity.clamp(0.3, 0.85))
        .expect("the solidity was held between the ends");
    ledger.write(|| Entry::Judged {
        symbol: "±R",
        value: Value::new(share, Measure::Percent),
        because: BAND,
    });
    Ok(share)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screen::{ChainLink, wire_of_gauge};
    use crate::units::inches;
    use proptest::prelude::*;

    const TEST_PRESSURE: Pressure = crate::units::pascals(125.0);

    fn tested(flow: f64) -> PermeabilityTest {
        PermeabilityTest { pressure: TEST_PRESSURE, flow: Velocity::from_si(flow) }
    }

    fn equivalent(loss: f64) -> f64 {
        EquivalentSolidity { loss }.work(&mut Blank).unwrap()
    }

    fn factor(loss: f64) -> f64 {
        LoadFactor { loss }.work(&mut Blank).unwrap()
    }

    fn wire(solidity: f64) -> Layer {
        Layer::whole(MadeOf::Wire(solidity))
    }

    fn together(layers: &[Layer]) -> ModelFactor {
        load_factor(layers, &mut Blank).unwrap()
    }

    /// A second way: the cubic itself, halved down to its one root between 0 and 1.
    fn by_halving(loss: f64) -> f64 {
        let cubic =
            |t: f64| loss * t.powi(3) - (2.0 * loss + 4.0 / 3.0) * t.powi(2) - 4.0 / 3.0 * t + 8.0 / 3.0;
        let (mut low, mut high) = (0.0, 1.0);
        for _ in 0..200 {
            let middle = 0.5 * (low + high);
            if cubic(middle) > 0.0 { low = middle } else { high = middle }
        }
        1.0 - low * low / (2.0 - low)
    }

    #[test]
    fn open_mesh_takes_four_to_seven_per_cent_less_than_closed_with_the_court_fabric_behind_either() {
        let (wire_diameter, _) = wire_of_gauge(9.0).unwrap();
        let fabric = wire(ChainLink { mesh: inches(1.75), wire: wire_diameter }.solidity(&mut Blank));
        let closed = together(&[wire(0.95), fabric]).factor;
        let less = |solidity| 100.0 * (1.0 - together(&[wire(solidity), fabric]).factor / closed);
        assert_eq!((less(0.80).round(), less(0.75).round()), (4.0, 7.0));
    }

    #[test]
    fn bare_chain_link_carries_about_a_seventh_of_a_solid_wall_and_cloth_behind_it_six_to_eight_times_that() {
        let (wire_diameter, _) = wire_of_gauge(9.0).unwrap();
        let fabric = wire(ChainLink { mesh: inches(2.0), wire: wire_diameter }.solidity(&mut Blank));
        let bare = together(&[fabric]).factor;
        assert!((bare * 4.0 / 3.0 - 0.178).abs() < 0.002, "{bare}");
        for solidity in [0.75, 0.95] {
            let times = together(&[wire(solidity), fabric]).factor / bare;
            assert!((6.0..8.0).contains(&times), "{times}");
        }
    }

    #[test]
    fn four_windows_relieve_a_bay_by_less_than_a_third_of_a_per_cent() {
        // Four windows of 8 in by 5 in in 10 ft of cloth 6 ft high.
        let share = 4.0 * 40.0 / (120.0 * 72.0);
        for (solidity, greatest) in [(0.75, 0.0030), (0.95, 0.0010), (1.0, 0.0003)] {
            let with = together(&[Layer { cut_away: share, ..wire(solidity) }]).factor;
            let less = 1.0 - with / together(&[wire(solidity)]).factor;
            assert!(less > 0.0 && less < greatest, "{solidity}: {less}");
        }
    }

    #[test]
    fn a_solid_screen_has_no_end_of_loss_and_the_load_of_a_wall() {
        for made_of in [MadeOf::Wire as fn(f64) -> MadeOf, MadeOf::Plate] {
            let solid = together(&[Layer::whole(made_of(1.0))]);
            assert_eq!((solid.loss, solid.factor, solid.band), (f64::INFINITY, 1.0, 0.03));
        }
        assert_eq!(together(&[]).factor, 0.0);
    }

    /// An actuator disc, another theory: for slight screens the load is k/(1 + k/4)² in free wind.
    #[test]
    fn a_slight_screen_meets_the_actuator_disc() {
        for loss in [0.01, 0.05, 0.1, 0.2, 0.4] {
            let disc: f64 = loss / (1.0 + loss / 4.0_f64).powi(2) / (4.0 / 3.0);
            assert!((factor(loss) / disc - 1.0).abs() < 0.005, "{loss}");
        }
    }

    #[test]
    fn sharp_plates_lose_two_to_three_times_what_round_wire_does_at_equal_solidity() {
        for solidity in [0.4, 0.5, 0.6, 0.7, 0.8, 0.9] {
            let loss = |made_of: fn(f64) -> MadeOf| Layer::whole(made_of(solidity)).loss(&mut Blank).unwrap();
            let times = loss(MadeOf::Plate) / loss(MadeOf::Wire);
            assert!((2.0..=3.1).contains(&times), "{solidity}: {times}");
        }
    }

    #[test]
    fn the_band_is_as_stated_at_its_corners_and_straight_between() {
        let of = |solidity| band(solidity, &mut Blank).unwrap();
        for (solidity, share) in [
            (0.0, 0.25),
            (0.3, 0.25),
            (0.4, 0.20),
            (0.5, 0.15),
            (0.6, 0.11),
            (0.7, 0.07),
            (0.775, 0.05),
            (0.85, 0.03),
            (1.0, 0.03),
        ] {
            assert!((of(solidity) - share).abs() < 1e-12, "{solidity}");
        }
        assert!(band(1.01, &mut Blank).is_err() && band(f64::NAN, &mut Blank).is_err());
        let model = together(&[wire(0.5)]);
        assert!((model.least() - 0.85 * model.factor).abs() < 1e-12);
        assert!((model.greatest() - 1.15 * model.factor).abs() < 1e-12);
    }

    #[test]
    fn the_band_is_that_of_all_layers_and_windows_count_as_open() {
        let two = together(&[wire(0.5), wire(0.4)]);
        assert!((two.band - 0.07).abs() < 1e-12);
        let windowed = together(&[Layer { cut_away: 0.5, ..wire(1.0) }]);
        assert!((windowed.band - 0.15).abs() < 1e-12);
    }

    #[test]
    fn a_loss_of_a_permeability_test_is_the_pressure_over_that_of_its_own_speed() {
        // 500 cfm/ft² under 125 Pa is 2.54 m/s, whose ½ρu² is 3.871 Pa.
        let asked = PermeabilityLoss {
            pressure: TEST_PRESSURE,
            density: pascals_per_speed_squared(1.2),
            permeability: Velocity::from_si(2.54),
        };
        assert!((asked.work(&mut Blank) - 32.29).abs() < 0.005);
    }

    #[test]
    fn a_tested_cloth_is_worked_by_its_test_and_its_band_by_round_wire_of_equal_loss() {
        let loss = tested(2.54).loss(&mut Blank).unwrap();
        let model = together(&[Layer::whole(MadeOf::Tested(tested(2.54)))]);
        assert!((model.loss - loss).abs() < 1e-12 && (model.factor - 0.9776).abs() < 5e-5);
        assert!((model.band - band(equivalent(loss), &mut Blank).unwrap()).abs() < 1e-12);
        assert!((equivalent(loss) - 0.848).abs() < 5e-4);
        let mut ledger = Vec::new();
        tested(2.54).loss(&mut ledger).unwrap();
        assert!(
            matches!(&ledger[0], Entry::Judged { symbol: "ρ", value, .. } if (value.si - 1.2).abs() < 1e-12),
            "{ledger:?}"
        );
    }

    #[test]
    fn what_a_layer_carries_by_name_runs_from_nothing_to_a_solid_wall() {
        let wire = |solidity| WireLoadFactor { first: solidity, second: 0.0 }.work(&mut Blank).unwrap();
        let drag = |solidity| WireDrag { solidity }.work(&mut Blank).unwrap();
        let plate = |solidity| PlateLoadFactor { solidity }.work(&mut Blank).unwrap();
        assert_eq!([wire(0.0), drag(0.0), plate(0.0)], [0.0; 3]);
        assert_eq!([wire(1.0), plate(1.0)], [1.0; 2]);
        // The net coefficient of a long solid wall on the ground is taken as 4/3.
        assert!((drag(1.0) - 4.0 / 3.0).abs() < 1e-15 && (drag(0.5) / wire(0.5) - 4.0 / 3.0).abs() < 1e-15);
        assert!(plate(0.5) > wire(0.5));
        // 125 Pa over ½ × 1.2 × 2.54².
        let asked = TestedLoadFactor { pressure: TEST_PRESSURE, permeability: Velocity::from_si(2.54) };
        let loss = 125.0 / (0.6 * 2.54 * 2.54);
        assert!((asked.work(&mut Blank).unwrap() - by_halving(loss)).abs() < 1e-12);
    }

    #[test]
    fn a_test_without_flow_or_pressure_is_refused() {
        for flow in [0.0, -1.0, f64::NAN] {
            assert!(tested(flow).loss(&mut Blank).is_err(), "{flow}");
            assert!(
                load_factor(&[Layer::whole(MadeOf::Tested(tested(flow)))], &mut Blank).is_err(),
                "{flow}"
            );
        }
        let none = PermeabilityTest { pressure: Pressure::from_si(0.0), flow: Velocity::from_si(1.0) };
        assert!(none.loss(&mut Blank).is_err());
    }

    #[test]
    fn wind_from_the_side_relieves_open_mesh_and_hardly_dense_cloth() {
        let of = |loss: f64, degrees: f64| {
            ObliqueShare { loss, angle: degrees.to_radians() }.work(&mut Blank).unwrap()
        };
        let loss = |solidity| wire(solidity).loss(&mut Blank).unwrap();
        assert!((of(loss(0.133), 45.0) - 0.525).abs() < 5e-4);
        assert!((of(loss(0.9), 45.0) - 0.991).abs() < 5e-4);
        assert_eq!((of(1.65, 0.0), of(f64::INFINITY, 45.0)), (1.0, 1.0));
        assert!(ObliqueShare { loss: 0.0, angle: 0.0 }.work(&mut Blank).is_err());
        assert!(ObliqueShare { loss: 1.0, angle: 46_f64.to_radians() }.work(&mut Blank).is_err());
    }

    #[test]
    fn wind_at_45_degrees_halves_the_loss_and_beyond_nothing_is_given() {
        let of = |degrees: f64| ObliqueLoss { loss: 2.0, angle: degrees.to_radians() }.work(&mut Blank);
        assert_eq!(of(0.0).unwrap(), 2.0);
        assert!((of(45.0).unwrap() - 1.0).abs() < 1e-12);
        assert!((of(30.0).unwrap() - 1.5).abs() < 1e-12);
        let beyond = of(46.0).unwrap_err().to_string();
        assert!(beyond.contains("46° is above 45°"), "{beyond}");
        assert!(of(-1.0).is_err() && of(f64::NAN).is_err());
    }

    #[test]
    fn shares_that_are_none_are_refused() {
        for layer in [
            wire(-0.01),
            wire(1.01),
            wire(f64::NAN),
            Layer { cut_away: -0.01, ..wire(0.5) },
            Layer { cut_away: 1.01, ..wire(0.5) },
        ] {
            assert!(load_factor(&[layer], &mut Blank).is_err(), "{layer:?}");
        }
        for loss in [-0.01, f64::NEG_INFINITY, f64::NAN] {
            assert!(LoadFactor { loss }.work(&mut Blank).is_err(), "{loss}");
        }
    }

    #[test]
    fn the_last_round_is_written_down_and_moves_nothing_more() {
        let mut ledger = Vec::new();
        LoadFactor { loss: 9.975 }.work(&mut ledger).unwrap();
        let rounds: Vec<(f64, f64)> = ledger
            .iter()
            .filter_map(|entry| match entry {
                Entry::Worked { card, given, result } if card.name == "screen/through-velocity" => {
                    Some((given[1].si, result.si))
                }
                _ => None,
            })
            .collect();
        assert_eq!(rounds.len(), 1);
        assert!((rounds[0].0 - rounds[0].1).abs() < 1e-14);
        assert!((rounds[0].1 - 0.352).abs() < 5e-4);
    }

    #[test]
    fn the_factor_at_the_worked_losses() {
        for (loss, printed) in [(0.2, 0.136), (1.65, 0.616), (2.0, 0.6667), (10.0, 0.925), (100.0, 0.993)] {
            assert!((factor(loss) - printed).abs() < 5e-4, "{loss}");
        }
    }

    proptest! {
        #[test]
        fn the_factor_is_the_root_of_the_cubic(power in -6.0..6.0_f64) {
            let loss = 10_f64.powf(power);
            prop_assert!((factor(loss) - by_halving(loss)).abs() < 1e-12);
        }

        #[test]
        fn the_load_is_the_screens_own_pressure_drop(power in -3.0..12.0_f64) {
            let loss = 10_f64.powf(power);
            let tau = through(loss);
            prop_assert!((loss * tau * tau / (4.0 / 3.0 * factor(loss)) - 1.0).abs() < 1e-9);
        }

        #[test]
        fn the_quotient_of_squares_fits_within_a_thousandth(power in -2.0..3.0_f64) {
            let k = 10_f64.powf(power);
            let fit = (k * k + 1.7657 * k) / (k * k + 2.4745 * k + 2.3565);
            prop_assert!((fit / factor(k) - 1.0).abs() < 1.05e-3, "{} {}", fit, factor(k));
        }

        #[test]
        fn a_vanishing_loss_is_its_own_load_and_an_endless_one_a_walls(small in 4.0..9.0_f64, great in 5.0..300.0_f64) {
            let (small, great) = (10_f64.powf(-small), 10_f64.powf(great));
            prop_assert!((factor(small) / (0.75 * small) - 1.0).abs() < 2e-4);
            prop_assert!((1.0 - factor(great)).abs() < 1e-5 && factor(great) <= 1.0);
        }

        #[test]
        fn round_wire_of_equal_loss_is_found_again(solidity in 0.001..0.99_f64) {
            let loss = wire(solidity).loss(&mut Blank).unwrap();
            prop_assert!((equivalent(loss) - solidity).abs() < 1e-12, "{}", equivalent(loss));
        }

        #[test]
        fn equivalent_solidity_runs_from_nothing_to_all_and_rises(power in -9.0..9.0_f64) {
            let loss = 10_f64.powf(power);
            let solidity = equivalent(loss);
            prop_assert!((0.0..=1.0).contains(&solidity) && equivalent(loss * 1.1) > solidity);
            prop_assert_eq!((equivalent(0.0), equivalent(f64::INFINITY)), (0.0, 1.0));
        }

        #[test]
        fn layers_in_any_order_lose_alike(first in 0.0..0.98_f64, second in 0.0..0.98_f64, flow in 0.1..8.0_f64) {
            let (one, other) = (wire(first), Layer::whole(MadeOf::Plate(second)));
            let tested = Layer::whole(MadeOf::Tested(tested(flow)));
            let (forth, back) = (together(&[one, other, tested]), together(&[tested, other, one]));
            prop_assert!((forth.loss / back.loss - 1.0).abs() < 1e-12);
            prop_assert!((forth.factor - back.factor).abs() < 1e-12 && (forth.band - back.band).abs() < 1e-12);
        }

        /// Cloth and window side by side are one opening split in two: either may be called the window.
        #[test]
        fn openings_side_by_side_may_be_named_either_way(loss in 3.0..1000.0_f64, share in 0.01..0.99_f64) {
            let hole = 1.0 / (0.6_f64 * 0.6);
            let one = VentedLoss { loss, share, discharge: 0.6 }.work(&mut Blank);
            let other =
                VentedLoss { loss: hole, share: 1.0 - share, discharge: 1.0 / loss.sqrt() }.work(&mut Blank);
            prop_assert!((one / other - 1.0).abs() < 1e-12);
        }

        #[test]
        fn more_air_is_less_load(flow in 0.02..8.0_f64, more in 1.01..2.0_f64) {
            let of = |flow| together(&[Layer::whole(MadeOf::Tested(tested(flow)))]);
            prop_assert!(of(flow * more).factor < of(flow).factor);
            prop_assert!(of(flow * more).band >= of(flow).band);
        }

        #[test]
        fn wind_further_from_square_on_is_never_more_load(loss in 0.001..1000.0_f64, degrees in 0.0..44.0_f64) {
            let of = |degrees: f64| {
                ObliqueShare { loss, angle: degrees.to_radians() }.work(&mut Blank).unwrap()
            };
            prop_assert!(of(degrees + 1.0) < of(degrees) && of(degrees) <= 1.0);
            // Not less than the square of the cosine, which is what a slight screen keeps.
            prop_assert!(of(degrees) >= degrees.to_radians().cos().powi(2) - 1e-12);
        }

        #[test]
        fn more_loss_is_more_load(power in -3.0..4.0_f64, more in 1.001..2.0_f64) {
            let loss = 10_f64.powf(power);
            prop_assert!(factor(loss * more) > factor(loss));
        }

        #[test]
        fn more_cloth_is_more_load_and_a_second_layer_adds_less_than_it_carries_alone(
            solidity in 0.0..0.98_f64, more in 0.001..0.01_f64, second in 0.01..0.98_f64
        ) {
            for made_of in [MadeOf::Wire as fn(f64) -> MadeOf, MadeOf::Plate] {
                let layer = |solidity| Layer::whole(made_of(solidity));
                let one = together(&[layer(solidity)]);
                prop_assert!(together(&[layer(solidity + more)]).factor > one.factor);
                let both = together(&[layer(solidity), layer(second)]);
                prop_assert!(both.factor > one.factor && both.factor < 1.0);
                prop_assert!(both.factor < one.factor + together(&[layer(second)]).factor);
            }
        }

        #[test]
        fn windows_never_add_load(solidity in 0.3..=1.0_f64, cut_away in 0.0..0.9_f64) {
            let plain = together(&[wire(solidity)]).factor;
            let with = |cut_away| together(&[Layer { cut_away, ..wire(solidity) }]).factor;
            // In cloth more open than a hole is, a hole adds.
            prop_assume!(wire(solidity).loss(&mut Blank).unwrap() > 1.0 / (0.6 * 0.6));
            prop_assert!(with(cut_away) <= plain + 1e-15);
            prop_assert!(with(cut_away + 0.05) < with(cut_away));
        }
    }
}
