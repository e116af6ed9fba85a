//! How fast a post sways by itself, at least, and whether that is fast enough for the gust factor of the check.
//!
//! A code takes a structure as rigid from a frequency on; one that sways more slowly answers gusts with up to 1.6 times
//! more, which is not worked here. A post of unknown footing is told with its foot clamped, and is not checked.

use crate::fence::{Fence, PostError, Rail, RailPlace, Run};
use crate::footing::FootingError;
use crate::footing::base_stiffness::base_stiffness;
use crate::member::TubeWeight;
use crate::member::stiffness::STEEL_WEIGHT;
use crate::member::sway::{Hung, Swaying};
use crate::rule;
use crate::screen::ChainLinkWeight;
use crate::source::{Clause, OURS, Stated};
use crate::units::{
    Force, Frequency, Length, LineLoad, Measure, Moment, Pressure, Pure, Quantity, inches,
    ounces_per_square_yard,
};
use crate::wind::Code;
use crate::workings::Ledger;

/// Where air that moves along stands.
const AIR: Clause = OURS.at("air that moves along with cloth");

const WITH_CLOTH: Stated<f64> = Stated {
    value: 0.7,
    because: "ours: air that moves along with cloth weighs about as much as all that sways, which takes three \
              tenths off the frequency",
};
const WITHOUT_CLOTH: Stated<f64> =
    Stated { value: 1.0, because: "ours: without cloth hardly any air moves along" };
const CLOTH_WEIGHT: Stated<Pressure> = Stated {
    value: ounces_per_square_yard(18.0),
    because: "ours: each cloth weighs as the heaviest of the catalogue of cloths, wet ones apart",
};
const RAIL_WALL: Stated<Length> = Stated {
    value: inches(0.154),
    because: "ours: a rail of unknown wall weighs as one of this wall; it sways little by it",
};

rule! {
    /// First frequency with the air that moves along.
    WithAir, "verdict/frequency-with-air", AIR;
    /// first frequency by the weights alone
    frequency: Frequency = "n_w";
    /// what the air leaves of it
    share: f64 = "c_a";
    slowest "n_1": Frequency = share * frequency
}
rule! {
    /// The frequency from which a structure counts as rigid, over that of a post.
    FrequencyRatio, "verdict/frequency-ratio", OURS.at("least frequency over frequency");
    /// frequency from which a structure counts as rigid
    least: Frequency = "n_r";
    /// first frequency, at least
    frequency: Frequency = "n_1";
    ratio "ratio": f64 as Coefficient = (least / frequency).pure()
}

/// How fast a post sways by itself, at least.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sway {
    /// With a foot that does not give.
    pub clamped: Frequency,
    /// With a foot as soft as it may be; or why that is not known.
    pub soft: Result<Frequency, SwayUnknown>,
    /// From which frequency on the wind code takes a structure as rigid.
    pub rigid_from: Frequency,
}

impl Sway {
    /// The frequency from which a structure is rigid over the slowest it may have; nothing where that is not known.
    #[must_use]
    pub fn ratio(&self) -> Option<f64> {
        self.soft.ok().map(|frequency| (self.rigid_from / frequency).pure())
    }

    /// Whether gusts count as the check takes them.
    #[must_use]
    pub fn is_rigid(&self) -> bool {
        self.ratio().is_some_and(|ratio| ratio <= 1.0)
    }
}

/// Why it is not known how far a foot gives, or how a post sways.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SwayUnknown {
    /// The post's section is not given.
    Section,
    /// The footing or its depth.
    Footing,
    /// How dense the sand lies, or the strength of the clay.
    Soil,
}

impl SwayUnknown {
    /// In words, with what to ask.
    #[must_use]
    pub const fn why(self) -> &'static str {
        match self {
            Self::Section => {
                "how fast the post sways is not known: only what it carries is given, not its section"
            }
            Self::Footing => {
                "how fast the post sways is not known: it hangs on the footing's depth and the soil"
            }
            Self::Soil => {
                "how fast the post sways is not known: ask how dense the sand lies, or the strength of the clay"
            }
        }
    }
}

/// How fast one post of a run sways, at least: itself, half of both its bays of chain link, rails and cloth.
///
/// `arm` is the height at which its load acts, for the give of its foot.
///
/// # Errors
/// Where the post's section is not given.
pub fn sway(
    fence: &Fence,
    run: &Run,
    post: usize,
    arm: Length,
    code: Code,
    ledger: &mut impl Ledger,
) -> Result<Sway, SwayUnknown> {
    let stiff = match fence.kinds[run.posts[post].kind].stiffness(ledger) {
        Ok(stiff) => stiff,
        Err(PostError::NotGiven { .. } | PostError::Member(_) | PostError::OutOfRange(_)) => {
            return Err(SwayUnknown::Section);
        }
    };
    let hung = hung(run, post, stiff.weight_per_length, ledger);
    let share = if beside(run, post).any(|bay| run.has_cloth(bay)) { WITH_CLOTH } else { WITHOUT_CLOTH };
    let share = ledger.judge("c_a", share);
    let mut swaying = Swaying { elastic: stiff.elastic, second_moment: stiff.second_moment, foot: None };
    let slowest = |swaying: &Swaying, ledger: &mut _| {
        let frequency = swaying.first_frequency(&hung, ledger).map_err(|_| SwayUnknown::Section)?;
        Ok(WithAir { frequency, share }.work(ledger))
    };
    let clamped = slowest(&swaying, ledger)?;
    let soft = match softest_foot(fence, run, post, arm, ledger) {
        Ok(foot) => {
            swaying.foot = Some(foot);
            slowest(&swaying, ledger)
        }
        Err(why) => Err(why),
    };
    if let Ok(frequency) = soft {
        let _ = FrequencyRatio { least: code.rigid_from(), frequency }.work(ledger);
    }
    Ok(Sway { clamped, soft, rigid_from: code.rigid_from() })
}

/// The bays beside a post.
fn beside(run: &Run, post: usize) -> impl Iterator<Item = usize> {
    post.saturating_sub(1)..(post + 1).min(run.bays.len())
}

fn softest_foot(
    fence: &Fence,
    run: &Run,
    post: usize,
    height: Length,
    ledger: &mut impl Ledger,
) -> Result<Moment, SwayUnknown> {
    const ASKED: &str = "how far a foot gives";
    let footing = run.posts[post].footing.map(|at| &fence.footings[at]).ok_or(SwayUnknown::Footing)?;
    let depth = footing.depth.ok_or(SwayUnknown::Footing)?;
    let modulus = fence.ground.modulus(ASKED, ledger).map_err(|error: FootingError| match error {
        FootingError::SoilUnknown { .. } | FootingError::TwoSoils { .. } => SwayUnknown::Soil,
        _ => SwayUnknown::Footing,
    })?;
    base_stiffness(depth, height, modulus, ledger)
        .map(|stiffness| stiffness.softest)
        .map_err(|_| SwayUnknown::Footing)
}

/// What sways along with a post.
fn hung(run: &Run, post: usize, own: LineLoad, ledger: &mut impl Ledger) -> Vec<Hung> {
    let (ground, top) = (Length::from_si(0.0), run.height);
    let half = |bays: &mut dyn Iterator<Item = usize>| {
        bays.fold(Length::from_si(0.0), |sum, bay| sum + run.bays[bay].width * 0.5)
    };
    let width = half(&mut beside(run, post));
    let mut hung = vec![Hung::Even { weight: own, from: ground, to: top }];
    if let Some(link) = run.chain_link {
        let unit_weight = ledger.judge("γ", STEEL_WEIGHT);
        let weight = ChainLinkWeight { mesh: link.mesh, wire: link.wire, unit_weight }.work(ledger);
        hung.push(Hung::Even { weight: weight * width, from: ground, to: top });
    }
    for place in RailPlace::ALL {
        let Some(rail) = run.rails.at(place) else { continue };
        let height = match place {
            RailPlace::Top => top,
            RailPlace::Middle => top * 0.5,
            RailPlace::Bottom => continue,
        };
        let weight: Force = rail_weight(&rail, ledger) * width;
        hung.push(Hung::At { weight, height });
    }
    if let Some(screen) = &run.screen {
        let width = half(&mut beside(run, post).filter(|bay| run.has_cloth(*bay)));
        if width.si() > 0.0 {
            let one = ledger.judge_as(Measure::WeightPerArea, "g_c", CLOTH_WEIGHT);
            let layers = (0..=screen.over.len()).fold(Pressure::from_si(0.0), |sum, _| sum + one);
            hung.push(Hung::Even { weight: layers * width, from: screen.bottom, to: screen.top });
        }
    }
    hung
}

/// What a rail weighs; one of unknown wall as one of a thick wall.
fn rail_weight(rail: &Rail, ledger: &mut impl Ledger) -> LineLoad {
    rail.stiffness(ledger).map_or_else(
        |_| {
            let wall = ledger.judge_as(Measure::Small, "t_r", RAIL_WALL);
            let unit_weight = ledger.judge("γ", STEEL_WEIGHT);
            TubeWeight { diameter: rail.diameter, wall, unit_weight }.work(ledger)
        },
        |stiff| stiff.weight_per_length,
    )
}
