//! The methods, each with its name, its clause, the load level it wants and its factors.

use super::{FootingError, asabe_ep486, brinch_hansen, broms, ibc_1807_3, nzbc_b1_vm4, pd_6547};
use crate::rule;
use crate::source::{Clause, Document, OURS, Seen, Stated};
use crate::units::{Powers, Pure, Velocity};
use crate::workings::{Ledger, Listed};

/// A method by which a footing may be worked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Method {
    /// IBC 1807.3.2.1, free at the ground.
    IbcNonconstrained,
    /// IBC 1807.3.2.2, held at the ground by a slab or beam that can take the reaction.
    IbcConstrained,
    /// Broms with the factors of UFC 3-220-20 on load and soil.
    BromsUfc,
    /// Broms with one factor on the load.
    BromsOneFactor,
    /// Brinch Hansen.
    BrinchHansen,
    /// New Zealand's B1/VM4.
    NzbcB1Vm4,
    /// PD 6547.
    Pd6547,
    /// ASAE EP486, free at the ground.
    AsabeNonconstrained,
    /// ASAE EP486, held at the ground.
    AsabeConstrained,
}

/// The level of wind load at which a method compares.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Level {
    /// W_s.
    Working,
    /// W_k.
    Characteristic,
    /// W_u.
    Ultimate,
}

impl Level {
    /// Its symbol.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Working => "W_s",
            Self::Characteristic => "W_k",
            Self::Ultimate => "W_u",
        }
    }

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Working => "wind at working level, W_s",
            Self::Characteristic => "characteristic wind, W_k",
            Self::Ultimate => "ultimate wind, W_u",
        }
    }
}

/// How a wind load is given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Basis {
    /// W at strength level, as ASCE 7-10 and later give it.
    Strength,
    /// W_k, as EN 1991-1-4 gives it.
    Characteristic,
    /// W_u, as AS/NZS 1170.2 gives it, with the speeds that tell it from W_s.
    Ultimate {
        /// Speed of a fifty-year wind, V_50.
        service: Velocity,
        /// Speed the load is for, V_R.
        ultimate: Velocity,
    },
    /// W_s already.
    Working,
}

impl Basis {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Strength => "wind at strength level, W",
            Self::Characteristic => "characteristic wind, W_k",
            Self::Ultimate { .. } => "ultimate wind, W_u",
            Self::Working => "wind at working level, W_s",
        }
    }
}

static ASCE: Document = Document {
    short: "ASCE 7-16",
    title: "ASCE/SEI 7-16, Minimum Design Loads and Associated Criteria for Buildings and Other Structures",
    seen: Seen::Memory,
};
/// Where the wind of allowable-stress design stands.
pub const WORKING_CLAUSE: Clause = ASCE.at("2.4.1");
/// Working level from strength level.
pub const WORKING_OF_STRENGTH: Stated<f64> = Stated {
    value: 0.6,
    because: "ASCE 7-16 2.4.1 (from memory): combinations D + 0.6 W and 0.6 D + 0.6 W of allowable-stress design",
};
const WORKING_OF_CHARACTERISTIC: Stated<f64> =
    Stated { value: 1.0, because: "the characteristic wind W_k of a Eurocode is its working level" };
const AS_GIVEN: Stated<f64> =
    Stated { value: 1.0, because: "the load is given at the level the method wants" };
const CHARACTERISTIC_OF_STRENGTH: Stated<f64> = Stated {
    value: 0.6,
    because: "ours: outside the Eurocodes the working level 0.6 W stands in the place of W_k",
};
const ULTIMATE_OF_STRENGTH: Stated<f64> =
    Stated { value: 1.0, because: "ours: W at strength level stands in the place of W_u" };
const ULTIMATE_OF_CHARACTERISTIC: Stated<f64> = Stated {
    value: 1.5,
    because: "ours: W_k times the partial factor of EN 1990 stands in the place of W_u",
};
const NO_FACTOR_IBC: Stated<f64> = Stated {
    value: 1.0,
    because: "IBC Table 1806.2 holds allowable values: no factor on a load at working level",
};
const NO_FACTOR_NZ: Stated<f64> =
    Stated { value: 1.0, because: "NZBC B1/VM4: no factor on W_u; the strength has its own" };

rule! {
    /// Working level from ultimate level by the speeds of both.
    ServiceShare, "footing/service-share", OURS.at("W_s = W_u (V_50 / V_R)²");
    /// speed of a fifty-year wind
    service: Velocity = "V_50";
    /// speed the load is for
    ultimate: Velocity = "V_R";
    share "s": f64 = (service / ultimate).pure().squared()
}

/// The rules of load levels by name.
pub(super) const LEVEL_RULES: &[Listed] = &[Listed::of::<ServiceShare>()];

impl Method {
    /// Every method.
    pub const ALL: [Self; 9] = [
        Self::IbcNonconstrained,
        Self::IbcConstrained,
        Self::BromsUfc,
        Self::BromsOneFactor,
        Self::BrinchHansen,
        Self::NzbcB1Vm4,
        Self::Pd6547,
        Self::AsabeNonconstrained,
        Self::AsabeConstrained,
    ];

    /// Its name as it is printed beside every figure.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::IbcNonconstrained => "IBC 1807.3.2.1, free at the ground",
            Self::IbcConstrained => "IBC 1807.3.2.2, held at the ground",
            Self::BromsUfc => "Broms with the factors of UFC 3-220-20",
            Self::BromsOneFactor => "Broms with one factor on the load",
            Self::BrinchHansen => "Brinch Hansen 1961",
            Self::NzbcB1Vm4 => "NZBC B1/VM4",
            Self::Pd6547 => "PD 6547",
            Self::AsabeNonconstrained => "ASAE EP486, free at the ground",
            Self::AsabeConstrained => "ASAE EP486, held at the ground",
        }
    }

    /// Its name in one word, for files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::IbcNonconstrained => "ibc-1807.3.2.1",
            Self::IbcConstrained => "ibc-1807.3.2.2",
            Self::BromsUfc => "broms-ufc-3-220-20",
            Self::BromsOneFactor => "broms-one-factor",
            Self::BrinchHansen => "brinch-hansen-1961",
            Self::NzbcB1Vm4 => "nzbc-b1-vm4",
            Self::Pd6547 => "pd-6547",
            Self::AsabeNonconstrained => "asae-ep486-free",
            Self::AsabeConstrained => "asae-ep486-held",
        }
    }

    /// The method of that name in one word.
    #[must_use]
    pub fn named(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|method| method.key() == key.trim())
    }

    /// The same method for a post held at the ground; those without one such stay as they are.
    #[must_use]
    pub const fn held(self) -> Self {
        match self {
            Self::IbcNonconstrained => Self::IbcConstrained,
            Self::AsabeNonconstrained => Self::AsabeConstrained,
            other => other,
        }
    }

    /// Where it stands.
    #[must_use]
    pub const fn clause(self) -> Clause {
        match self {
            Self::IbcNonconstrained => ibc_1807_3::NONCONSTRAINED,
            Self::IbcConstrained => ibc_1807_3::CONSTRAINED,
            Self::BromsUfc => broms::FACTORS,
            Self::BromsOneFactor => broms::CLAY,
            Self::BrinchHansen => brinch_hansen::BALANCE,
            Self::NzbcB1Vm4 => nzbc_b1_vm4::COHESIVE,
            Self::Pd6547 => pd_6547::GROUND,
            Self::AsabeNonconstrained => asabe_ep486::NONCONSTRAINED,
            Self::AsabeConstrained => asabe_ep486::CONSTRAINED,
        }
    }

    /// The level of load it wants, before its own factor.
    #[must_use]
    pub const fn level(self) -> Level {
        match self {
            Self::IbcNonconstrained
            | Self::IbcConstrained
            | Self::BromsUfc
            | Self::BromsOneFactor
            | Self::BrinchHansen
            | Self::AsabeNonconstrained
            | Self::AsabeConstrained => Level::Working,
            Self::NzbcB1Vm4 => Level::Ultimate,
            Self::Pd6547 => Level::Characteristic,
        }
    }

    /// The factor it puts on a load of that level.
    #[must_use]
    pub const fn load_factor(self, basis: Basis) -> Stated<f64> {
        match (self, basis) {
            (Self::IbcNonconstrained | Self::IbcConstrained, _) => NO_FACTOR_IBC,
            (Self::BromsUfc, _) => broms::LIVE_LOAD,
            (Self::BrinchHansen, Basis::Characteristic) => brinch_hansen::EUROCODE_LOAD,
            (Self::BromsOneFactor | Self::BrinchHansen, _) => broms::ONE_FACTOR,
            (Self::NzbcB1Vm4, _) => NO_FACTOR_NZ,
            (Self::Pd6547, _) => pd_6547::LOAD,
            (Self::AsabeNonconstrained | Self::AsabeConstrained, _) => asabe_ep486::SOIL,
        }
    }

    /// The factor it puts on the soil, where it has one of its own: on S_u and tan φ, or on H_u in B1/VM4.
    #[must_use]
    pub const fn soil_factor(self) -> Option<Stated<f64>> {
        match self {
            Self::BromsUfc => Some(broms::SOIL),
            Self::NzbcB1Vm4 => Some(nzbc_b1_vm4::STRENGTH_FACTOR),
            Self::BrinchHansen => Some(brinch_hansen::SOIL),
            Self::IbcNonconstrained
            | Self::IbcConstrained
            | Self::BromsOneFactor
            | Self::Pd6547
            | Self::AsabeNonconstrained
            | Self::AsabeConstrained => None,
        }
    }

    /// Whether the method belongs with a wind load given so; one that does not is worked only when it is asked for.
    #[must_use]
    pub const fn belongs_with(self, basis: Basis) -> bool {
        match self {
            Self::BromsOneFactor | Self::BrinchHansen => true,
            Self::IbcNonconstrained
            | Self::IbcConstrained
            | Self::BromsUfc
            | Self::AsabeNonconstrained
            | Self::AsabeConstrained => matches!(basis, Basis::Strength | Basis::Working),
            Self::Pd6547 => matches!(basis, Basis::Characteristic),
            Self::NzbcB1Vm4 => matches!(basis, Basis::Ultimate { .. }),
        }
    }

    /// The share of a given load that is at the level the method wants.
    ///
    /// # Errors
    /// If there is no way from the one to the other.
    pub fn share(self, basis: Basis, ledger: &mut impl Ledger) -> Result<f64, FootingError> {
        let stated = match (self.level(), basis) {
            (Level::Working, Basis::Strength) => WORKING_OF_STRENGTH,
            (Level::Characteristic, Basis::Strength) => CHARACTERISTIC_OF_STRENGTH,
            (Level::Ultimate, Basis::Strength) => ULTIMATE_OF_STRENGTH,
            (Level::Working, Basis::Characteristic) => WORKING_OF_CHARACTERISTIC,
            (Level::Characteristic, Basis::Characteristic)
            | (Level::Ultimate, Basis::Ultimate { .. })
            | (Level::Working | Level::Characteristic, Basis::Working) => AS_GIVEN,
            (Level::Ultimate, Basis::Characteristic) => ULTIMATE_OF_CHARACTERISTIC,
            (Level::Working | Level::Characteristic, Basis::Ultimate { service, ultimate }) => {
                super::above_nought("speed of a fifty-year wind", WORKING_CLAUSE, service)?;
                super::above_nought("speed the load is for", WORKING_CLAUSE, ultimate)?;
                return Ok(ServiceShare { service, ultimate }.work(ledger));
            }
            (Level::Ultimate, Basis::Working) => {
                return Err(FootingError::NoLevel { method: self, basis });
            }
        };
        Ok(ledger.judge("s", stated))
    }
}
