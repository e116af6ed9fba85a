//! A footing put to a method: the depth a load needs, the load a depth carries, and their ratio.

use super::asabe_ep486;
use super::method::LEVEL_RULES;
use super::{Basis, ClayOrSand, FootingError, Ground, Method, Missing};
use super::{above_nought, brinch_hansen, broms, ibc_1807_3, nzbc_b1_vm4, pd_6547};
use crate::rule;
use crate::source::{Clause, OURS, STATICS, Stated};
use crate::units::{Force, Length, Moment, Pressure, PressurePerDepth, Pure, Quantity, metres, pascals};
use crate::workings::{Ledger, Listed, OutOfRange, within};

const LEVEL: Clause = OURS.at("load at the level of the method");
const FACTORED: Clause = OURS.at("factor of the method on the load");
const FORCE: Clause = STATICS.at("force and moment at the ground");
const NO_COHESION: Stated<Pressure> =
    Stated { value: pascals(0.0), because: "ours: no cohesion is given beside friction, so none is counted" };

rule! {
    /// Height over the ground of a force that has a given moment there.
    ForceHeight, "footing/force-height", FORCE;
    /// moment at the ground
    moment: Moment = "M";
    /// lateral force
    force: Force = "V";
    height "h": Length as Distance = moment / force
}
rule! {
    /// Lateral force at the level a method wants.
    ForceAtLevel, "footing/load-at-level", LEVEL;
    /// share of the given load
    share: f64 = "s";
    /// lateral force as the wind code gives it
    force: Force = "W";
    at_level "P": Force = share * force
}
rule! {
    /// Lateral force with the factor of its method.
    FactoredForce, "footing/factored-force", FACTORED;
    /// factor
    factor: f64 = "γ_F";
    /// lateral force at the level of the method
    force: Force = "P";
    factored "γ_F P": Force = factor * force
}
rule! {
    /// Lateral force at the level of the method that a footing carries.
    CapacityAtLevel, "footing/capacity-at-level", FACTORED;
    /// lateral force at which the ground is at its limit
    resistance: Force = "H_u";
    /// factor
    factor: f64 = "γ_F";
    capacity "P_c": Force = resistance / factor
}
rule! {
    /// Lateral force over the force a footing carries at that height.
    Ratio, "footing/ratio", STATICS.at("demand over capacity");
    /// lateral force at the level of the method
    force: Force = "P";
    /// force that the footing carries
    capacity: Force = "P_c";
    ratio "P/P_c": f64 = (force / capacity).pure()
}

/// The rules of footings in general by name; each method has its own beside.
pub const RULES: &[Listed] = &[
    LEVEL_RULES[0],
    Listed::of::<ForceHeight>(),
    Listed::of::<ForceAtLevel>(),
    Listed::of::<FactoredForce>(),
    Listed::of::<CapacityAtLevel>(),
    Listed::of::<Ratio>(),
];

/// A lateral force and its height over the ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Load {
    /// The force.
    pub force: Force,
    /// How high it acts.
    pub height: Length,
}

impl Load {
    /// The load of a shear and a moment at the ground.
    ///
    /// # Errors
    /// If the shear is not above 0, or the moment below it.
    pub fn try_of(shear: Force, moment: Moment, ledger: &mut impl Ledger) -> Result<Self, OutOfRange> {
        above_nought("shear at the ground", FORCE, shear)?;
        within("moment at the ground", FORCE, moment, Moment::from_si(0.0), Moment::from_si(f64::MAX))?;
        Ok(Self { force: shear, height: ForceHeight { moment, force: shear }.work(ledger) })
    }
}

/// What stands in the ground: a pier of concrete, or the post itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pier {
    /// Round.
    Round {
        /// Its diameter.
        diameter: Length,
    },
    /// Square, the load upon a face.
    Square {
        /// Its side.
        side: Length,
    },
}

/// What is chosen, not measured.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Choices {
    /// Twice the lateral bearing by IBC 1806.3.4; off unless chosen.
    pub isolated_pole: bool,
    /// Another factor on the load, for the methods with one factor: Broms and Brinch Hansen.
    pub load_factor: Option<Stated<f64>>,
    /// A factor that divides the strength of the soil in Brinch Hansen's method.
    pub soil_factor: Option<Stated<f64>>,
}

/// All that is asked of a footing but load and depth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked {
    /// The method.
    pub method: Method,
    /// How loads will be given.
    pub basis: Basis,
    /// What stands in the ground.
    pub pier: Pier,
    /// What is known of the ground.
    pub ground: Ground,
    /// What is chosen.
    pub choices: Choices,
}

/// The soil as the method takes it, its factor applied.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Soil {
    Bearing(PressurePerDepth),
    Clay(Pressure),
    Sand { angle: f64, weight: PressurePerDepth },
    Mixed { cohesion: Pressure, angle: f64, weight: PressurePerDepth },
    GroundFactor(PressurePerDepth),
}

/// A footing put to a method, with all that the method must be told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Embedment {
    method: Method,
    basis: Basis,
    width: Length,
    soil: Soil,
    load_factor: Stated<f64>,
}

/// A footing of one depth under one load.
#[derive(Debug, Clone, PartialEq)]
pub struct Checked {
    /// The load at the level of the method, before its factor.
    pub demand: Load,
    /// The depth that load needs; refused where the method gives none so deep.
    pub needed: Result<Length, OutOfRange>,
    /// The force at that height which the depth carries, at the same level.
    pub capacity: Force,
    /// Force over capacity; without end where the depth carries nothing.
    pub ratio: f64,
}

impl Embedment {
    /// Puts a footing to a method, and writes down what of the soil it takes.
    ///
    /// # Errors
    /// If a value of the soil is not known, has no presumptive value, or is out of range.
    pub fn try_new(asked: Asked, ledger: &mut impl Ledger) -> Result<Self, FootingError> {
        let Asked { method, basis, pier, choices, .. } = asked;
        let soil = soil(&asked, ledger)?;
        let is_ibc = matches!(method, Method::IbcNonconstrained | Method::IbcConstrained);
        let width = match pier {
            Pier::Round { diameter } => diameter,
            Pier::Square { side } if is_ibc => {
                above_nought("side", method.clause(), side)?;
                ibc_1807_3::Diagonal { side }.work(ledger)
            }
            Pier::Square { side } => side,
        };
        above_nought("width", method.clause(), width)?;
        let load_factor = match (method, choices.load_factor) {
            (Method::BromsOneFactor | Method::BrinchHansen, Some(chosen)) => {
                within("factor on the load", FACTORED, chosen.value, 1.0, f64::MAX)?;
                chosen
            }
            _ => method.load_factor(basis),
        };
        Ok(Self { method, basis, width, soil, load_factor })
    }

    /// The method.
    #[must_use]
    pub const fn method(&self) -> Method {
        self.method
    }

    /// The width it resists with.
    #[must_use]
    pub const fn width(&self) -> Length {
        self.width
    }

    /// The factor it puts on a load.
    #[must_use]
    pub const fn load_factor(&self) -> Stated<f64> {
        self.load_factor
    }

    /// A load as the wind code gives it, at the level of the method.
    ///
    /// # Errors
    /// If there is no way from the one to the other.
    pub fn demand(&self, given: Load, ledger: &mut impl Ledger) -> Result<Load, FootingError> {
        let share = self.method.share(self.basis, ledger)?;
        let force = ForceAtLevel { share, force: given.force }.work(ledger);
        Ok(Load { force, height: given.height })
    }

    /// The depth that a load at the level of the method needs.
    ///
    /// # Errors
    /// If the load is not above 0, or the depth beyond what the method gives.
    pub fn needed_depth(&self, demand: Load, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Load { force, height } = demand;
        above_nought("force", self.method.clause(), force)?;
        let factor = ledger.judge("γ_F", self.load_factor);
        let force = FactoredForce { factor, force }.work(ledger);
        let width = self.width;
        match (self.method, self.soil) {
            (Method::IbcConstrained, Soil::Bearing(bearing)) => {
                ibc_1807_3::Constrained { force, height, width, bearing }.work(ledger)
            }
            (Method::AsabeNonconstrained, Soil::Bearing(bearing)) => {
                asabe_ep486::NonconstrainedDepth { force, height, width, bearing }.work(ledger)
            }
            (Method::AsabeConstrained, Soil::Bearing(bearing)) => {
                above_nought("height", asabe_ep486::CONSTRAINED, height)?;
                Ok(asabe_ep486::ConstrainedDepth { force, height, width, bearing }.work(ledger))
            }
            (_, Soil::Bearing(bearing)) => {
                ibc_1807_3::Nonconstrained { force, height, width, bearing }.work(ledger)
            }
            (Method::NzbcB1Vm4, Soil::Clay(strength)) => {
                nzbc_b1_vm4::Depth { force, height, width, strength }.work(ledger)
            }
            (_, Soil::Clay(strength)) => broms::ClayDepth { force, height, width, strength }.work(ledger),
            (_, Soil::Sand { angle, weight }) => {
                broms::SandDepth { force, height, width, angle, weight }.work(ledger)
            }
            (_, Soil::Mixed { cohesion, angle, weight }) => {
                brinch_hansen::Depth { force, height, width, cohesion, angle, weight }.work(ledger)
            }
            (_, Soil::GroundFactor(factor)) => pd_6547::Depth { force, height, width, factor }.work(ledger),
        }
    }

    /// The force at a height, at the level of the method, that a depth carries.
    ///
    /// # Errors
    /// If the depth is not one the method gives anything for.
    pub fn capacity(
        &self,
        depth: Length,
        height: Length,
        ledger: &mut impl Ledger,
    ) -> Result<Force, OutOfRange> {
        let width = self.width;
        let resistance = match (self.method, self.soil) {
            (Method::IbcConstrained, Soil::Bearing(bearing)) => {
                ibc_1807_3::ConstrainedCapacity { depth, height, width, bearing }.work(ledger)?
            }
            (Method::AsabeNonconstrained, Soil::Bearing(bearing)) => {
                above_nought("depth", asabe_ep486::NONCONSTRAINED, depth)?;
                within("height", asabe_ep486::NONCONSTRAINED, height, metres(0.0), metres(f64::MAX))?;
                asabe_ep486::NonconstrainedCapacity { depth, height, width, bearing }.work(ledger)
            }
            (Method::AsabeConstrained, Soil::Bearing(bearing)) => {
                above_nought("depth", asabe_ep486::CONSTRAINED, depth)?;
                above_nought("height", asabe_ep486::CONSTRAINED, height)?;
                asabe_ep486::ConstrainedCapacity { depth, height, width, bearing }.work(ledger)
            }
            (_, Soil::Bearing(bearing)) => {
                ibc_1807_3::NonconstrainedCapacity { depth, height, width, bearing }.work(ledger)?
            }
            (Method::NzbcB1Vm4, Soil::Clay(strength)) => {
                nzbc_b1_vm4::Capacity { depth, height, width, strength }.work(ledger)?
            }
            (_, Soil::Clay(strength)) => {
                broms::ClayCapacity { depth, height, width, strength }.work(ledger)?
            }
            (_, Soil::Sand { angle, weight }) => {
                broms::SandCapacity { depth, height, width, angle, weight }.work(ledger)?
            }
            (_, Soil::Mixed { cohesion, angle, weight }) => {
                brinch_hansen::Capacity { depth, height, width, cohesion, angle, weight }.work(ledger)?
            }
            (_, Soil::GroundFactor(factor)) => {
                pd_6547::Capacity { depth, height, width, factor }.work(ledger)?
            }
        };
        let factor = ledger.judge("γ_F", self.load_factor);
        Ok(CapacityAtLevel { resistance, factor }.work(ledger))
    }

    /// A footing of one depth under a load as the wind code gives it.
    ///
    /// # Errors
    /// As for [`Self::demand`] and [`Self::capacity`]; a depth needed beyond what the method gives is no error here.
    pub fn check(
        &self,
        given: Load,
        depth: Length,
        ledger: &mut impl Ledger,
    ) -> Result<Checked, FootingError> {
        let demand = self.demand(given, ledger)?;
        let needed = self.needed_depth(demand, ledger);
        let capacity = self.capacity(depth, demand.height, ledger)?;
        let ratio = Ratio { force: demand.force, capacity }.work(ledger);
        Ok(Checked { demand, needed, capacity, ratio })
    }
}

/// What a method takes of the ground, its factor on the soil applied.
fn soil(asked: &Asked, ledger: &mut impl Ledger) -> Result<Soil, FootingError> {
    let Asked { method, ground, choices, .. } = *asked;
    let name = method.name();
    let unknown = |missing| FootingError::SoilUnknown { asked: name, missing };
    Ok(match method {
        Method::IbcNonconstrained
        | Method::IbcConstrained
        | Method::AsabeNonconstrained
        | Method::AsabeConstrained => {
            let bearing = match (ground.lateral_bearing, ground.class) {
                (Some(bearing), _) => bearing,
                (None, Some(class)) => class.lateral_bearing(ledger)?,
                (None, None) => return Err(unknown(Missing::LateralBearing)),
            };
            above_nought("lateral bearing", method.clause(), bearing)?;
            let is_ibc = matches!(method, Method::IbcNonconstrained | Method::IbcConstrained);
            Soil::Bearing(if is_ibc && choices.isolated_pole {
                let factor = ledger.judge("F", ibc_1807_3::DOUBLING);
                ibc_1807_3::DoubledBearing { factor, bearing }.work(ledger)
            } else {
                bearing
            })
        }
        Method::BromsUfc => {
            let factor = ledger.judge("m", broms::SOIL);
            match ground.clay_or_sand(name)? {
                ClayOrSand::Clay(strength) => {
                    Soil::Clay(broms::ReducedStrength { factor, strength }.work(ledger))
                }
                ClayOrSand::Sand { angle, weight } => {
                    super::friction(broms::SAND, angle)?;
                    Soil::Sand { angle: broms::ReducedFriction { factor, angle }.work(ledger), weight }
                }
            }
        }
        Method::BromsOneFactor => match ground.clay_or_sand(name)? {
            ClayOrSand::Clay(strength) => Soil::Clay(strength),
            ClayOrSand::Sand { angle, weight } => Soil::Sand { angle, weight },
        },
        Method::NzbcB1Vm4 => {
            Soil::Clay(ground.undrained_strength.ok_or_else(|| unknown(Missing::UndrainedStrength))?)
        }
        Method::BrinchHansen => {
            let stated = choices.soil_factor.unwrap_or(brinch_hansen::SOIL);
            within("factor on the soil", brinch_hansen::BALANCE, stated.value, 1.0, f64::MAX)?;
            let factor = ledger.judge("γ_M", stated);
            let (cohesion, angle, weight) = match ground.clay_or_sand(name)? {
                ClayOrSand::Clay(strength) => (strength, 0.0, PressurePerDepth::from_si(0.0)),
                ClayOrSand::Sand { angle, weight } => {
                    super::friction(brinch_hansen::BALANCE, angle)?;
                    let angle = brinch_hansen::FactoredFriction { angle, factor }.work(ledger);
                    let cohesion = match ground.cohesion {
                        Some(cohesion) => cohesion,
                        None => ledger.judge("c", NO_COHESION),
                    };
                    (cohesion, angle, weight)
                }
            };
            let cohesion = brinch_hansen::FactoredCohesion { cohesion, factor }.work(ledger);
            Soil::Mixed { cohesion, angle, weight }
        }
        Method::Pd6547 => Soil::GroundFactor(match (ground.ground_factor, ground.quality) {
            (Some(factor), _) => factor,
            (None, Some(quality)) => quality.factor(ledger),
            (None, None) => return Err(unknown(Missing::GroundFactor)),
        }),
    })
}
