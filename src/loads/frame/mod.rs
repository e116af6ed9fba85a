//! A fence as a frame: posts that lean on one another through their rails.
//!
//! Hand statics gives each post the load of its own two bays. On the frame posts stand in feet that do not give, or in feet
//! as soft as their soil may be, and rails go through from post to post: they are held to each post in its movement and
//! pass it neither bending nor torsion. A gate breaks them, and each gate post takes half of the shut leaf. A rail along
//! the ground lies at the feet and changes nothing. Corners are right angles; runs that meet there stand in one frame.
//!
//! The load of the wind gets into the frame somewhere between two ways, and both are worked: wholly on the posts, by bay
//! shares and straight over the height of what it bears on; or wholly through the rails, by the lever rule between the
//! rails and the ground. Back braces and guys hold posts from the side, pinned at both ends; a guy goes slack instead of
//! being pressed, and where any stands the wind is worked from both sides. A brace in the plane of the fence stands in a
//! plane frame of its own under the pull of the cloth along the fence, and takes none of the wind across it. Axial force counts in bending (P-Δ) with the weight of the posts themselves.

mod bearing;
mod brace;
mod model;
mod why;

pub use brace::{ALONE, FootAlong, OnBrace, Pull, TWO_FEET, braced, pull_into};
pub use why::{FrameWhy, SoftUnknown};

use super::pieces::Pieces;
use super::{Dress, PostLoad, run_loads};
use crate::fence::{Face, Fence, RailPlace, Run};
use crate::footing::FootingError;
use crate::footing::base_stiffness::base_stiffness;
use crate::frame::{FrameError, Order, Solution};
use crate::source::Stated;
use crate::units::{Force, Length, Moment, Quantity, mph};
use crate::wind::{Case, Event, Site};
use crate::workings::{Blank, Ledger};
use bearing::put_down;
use model::{Column, Feet, Group, GuyOf, LaidRun, Model, groups};

/// Whether rails pass bending from bay to bay.
pub const CONTINUOUS: Stated<f64> = Stated {
    value: 1.0,
    because: "ours: rails go through over the posts, sleeved or not; where a rail passes no bending at all, the frame is \
              hand statics itself, and the worse of the two counts",
};
/// How the load of cloth and mesh gets into the frame.
pub const WAYS: Stated<f64> = Stated {
    value: 2.0,
    because: "ours: mesh hangs between posts and rails, so that its load gets in between two ways; both are worked, on the \
              posts by bay shares and through the rails by the lever rule, and the worse counts",
};

/// What the feet of the posts do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Base {
    /// They do not give.
    Rigid,
    /// They turn as far as they may by the soil, at the soft end of its range.
    Soft,
}

impl Base {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Rigid => "feet that do not give",
            Self::Soft => "feet as soft as they may be",
        }
    }

    /// In one word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Rigid => "rigid",
            Self::Soft => "soft",
        }
    }
}

/// How the load of the wind gets into the frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Way {
    /// Wholly on the posts.
    Posts,
    /// Wholly through the rails.
    Rails,
}

impl Way {
    /// Both, the one that needs no rail first.
    pub const ALL: [Self; 2] = [Self::Posts, Self::Rails];

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Posts => "load on the posts",
            Self::Rails => "load through the rails",
        }
    }

    /// In one word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Posts => "posts",
            Self::Rails => "rails",
        }
    }
}

/// What one post does in one loading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnFrame {
    /// Shear at its foot.
    pub base_shear: Force,
    /// Moment at its foot.
    pub base_moment: Moment,
    /// The greatest moment anywhere along it.
    pub greatest: Moment,
    /// The height of that moment above the foot.
    pub at: Length,
    /// How far its top moves.
    pub top: Length,
}

/// What a back brace or guy does in one loading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnGuy {
    /// The force along it, tension positive.
    pub axial: Force,
    /// Whether it is a guy gone slack.
    pub is_slack: bool,
    /// How hard it pulls its own foot up; below nought it presses it down.
    pub foot_uplift: Force,
    /// How hard it and all else pull the foot of the post up.
    pub post_uplift: Force,
}

/// The largest bending moment of a rail in one bay in one loading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RailMoment {
    /// The bay by index.
    pub bay: usize,
    /// Which rail.
    pub place: RailPlace,
    /// The moment.
    pub moment: Moment,
}

/// One case on one run, put down in one way, on one kind of feet.
#[derive(Debug, Clone, PartialEq)]
pub struct Loading {
    /// The run that the wind bears on, by index.
    pub on: usize,
    /// The case.
    pub case: Case,
    /// The case in the code's words.
    pub place: &'static str,
    /// How the load gets in.
    pub way: Way,
    /// What the feet do.
    pub base: Base,
    /// The side to which the wind pushes; both are worked where a back brace or guy stands.
    pub pushes: Face,
    /// Post by post of the run that is told of.
    pub posts: Vec<OnFrame>,
    /// Its back braces and guys, in the order of the run.
    pub guys: Vec<OnGuy>,
    /// Its rails but for those along the ground, bay by bay; of another run's wind none is told.
    pub rails: Vec<RailMoment>,
}

/// What a run does on the frame.
#[derive(Debug, Clone, PartialEq)]
pub struct FrameRun {
    /// The run by index.
    pub run: usize,
    /// The runs that stand in one frame with it, itself among them, by index.
    pub with: Vec<usize>,
    /// Every loading of all of those runs.
    pub loadings: Vec<Loading>,
    /// Whether soft feet were worked, or why not.
    pub soft: Result<(), SoftUnknown>,
    /// How the frame was solved.
    pub method: &'static str,
    /// The greatest number of rounds that a loading took.
    pub rounds: usize,
    /// The greatest force out of balance in any loading, as a share of the greatest force.
    pub residual: f64,
    /// How far the feet of all posts are off the whole load in any loading, as a share of it.
    pub out_of_balance: f64,
}

impl FrameRun {
    /// The loading in which a post has its largest moment, of those with these feet and this way where they are named. A
    /// corner post is told with the wind on this run alone.
    #[must_use]
    pub fn worst(
        &self,
        fence: &Fence,
        post: usize,
        base: Option<Base>,
        way: Option<Way>,
    ) -> Option<(&Loading, &OnFrame)> {
        self.largest(
            fence,
            post,
            |one| one.greatest,
            |one| base.is_none_or(|base| one.base == base) && way.is_none_or(|way| one.way == way),
        )
    }

    fn largest(
        &self,
        fence: &Fence,
        post: usize,
        of: impl Fn(&OnFrame) -> Moment,
        wanted: impl Fn(&Loading) -> bool,
    ) -> Option<(&Loading, &OnFrame)> {
        let is_corner = fence.runs[self.run].posts[post].shared_with.is_some();
        self.loadings
            .iter()
            .filter(|one| wanted(one) && (one.on == self.run || !is_corner))
            .map(|one| (one, &one.posts[post]))
            .reduce(|one, other| if of(other.1) > of(one.1) { other } else { one })
    }

    /// The largest moment of each rail over all loadings, bay by bay.
    #[must_use]
    pub fn rails(&self) -> Vec<RailMoment> {
        let mut largest: Vec<RailMoment> = Vec::new();
        // Every loading of this run's own wind tells the same rails in the same order.
        for loading in self.loadings.iter().filter(|loading| loading.on == self.run) {
            if largest.is_empty() {
                largest.clone_from(&loading.rails);
            }
            for (most, rail) in largest.iter_mut().zip(&loading.rails) {
                if rail.moment > most.moment {
                    *most = *rail;
                }
            }
        }
        largest
    }

    /// The same as a load on the post: its largest moment anywhere and the shear at its foot.
    #[must_use]
    pub fn post_load(&self, fence: &Fence, post: usize) -> Option<PostLoad> {
        let (Loading { case, place, .. }, found) = self.worst(fence, post, None, None)?;
        Some(PostLoad { shear: found.base_shear, moment: found.greatest, case: *case, place })
    }

    /// The load on its footing: the largest moment at its foot, and the shear there.
    #[must_use]
    pub fn foot_load(&self, fence: &Fence, post: usize) -> Option<PostLoad> {
        let (Loading { case, place, .. }, found) =
            self.largest(fence, post, |one| one.base_moment, |_| true)?;
        Some(PostLoad { shear: found.base_shear, moment: found.base_moment, case: *case, place })
    }
}

/// Works every run of a fence on the frame it stands in.
#[must_use]
pub fn frame_loads(
    fence: &Fence,
    site: &Site,
    event: Event,
    order: Order,
) -> Vec<Result<FrameRun, FrameWhy>> {
    let mut found: Vec<Option<Result<FrameRun, FrameWhy>>> = vec![None; fence.runs.len()];
    for group in groups(fence) {
        match group_loads(fence, &group, site, event, order) {
            Ok(runs) => {
                for run in runs {
                    let at = run.run;
                    found[at] = Some(Ok(run));
                }
            }
            Err(why) => {
                for run in &group.runs {
                    found[*run] = Some(Err(why.clone()));
                }
            }
        }
    }
    found.into_iter().flatten().collect()
}

fn group_loads(
    fence: &Fence,
    group: &Group,
    site: &Site,
    event: Event,
    order: Order,
) -> Result<Vec<FrameRun>, FrameWhy> {
    let (soft, feet) = match soft_feet(fence, group, site)? {
        Ok(springs) => (Ok(()), vec![(Base::Rigid, Feet::Rigid), (Base::Soft, Feet::Soft(springs))]),
        Err(why) => (Err(why), vec![(Base::Rigid, Feet::Rigid)]),
    };
    let empty = |run: &usize| FrameRun {
        run: *run,
        with: group.runs.clone(),
        loadings: Vec::new(),
        soft,
        method: "",
        rounds: 0,
        residual: 0.0,
        out_of_balance: 0.0,
    };
    let mut found: Vec<FrameRun> = group.runs.iter().map(empty).collect();
    let has_guys = group.runs.iter().any(|run| !fence.runs[*run].guys.is_empty());
    // What stands alike from both sides is worked with the wind from one.
    let sides = if has_guys { vec![Face::Outside, Face::Inside] } else { vec![Face::Outside] };
    for (base, feet) in &feet {
        let model = Model::try_new(fence, group, feet)?;
        for laid in &model.runs {
            let run = &fence.runs[laid.run];
            let mut pieces = Pieces::new(fence, laid.run, Dress::AsHung);
            for case in Case::ALL {
                if !pieces.lay(site, case, event, &mut Blank)? {
                    continue;
                }
                for (way, side) in
                    Way::ALL.into_iter().flat_map(|way| sides.iter().map(move |side| (way, *side)))
                {
                    let laid = if side == Face::Inside { laid.turned() } else { laid.clone() };
                    let Some(borne) = put_down(&model, &laid, run, &pieces, way) else { continue };
                    let told = |error| why::told(error, &model, fence);
                    let solution = model.frame.solve(&borne.loads, order).map_err(told)?;
                    let read = |column: &Column| column_on(&solution, column);
                    let columns =
                        model.columns.iter().map(read).collect::<Result<Vec<_>, _>>().map_err(told)?;
                    let off = off_balance(&model, &solution, laid.across, borne.force).map_err(told)?;
                    for (found, other) in found.iter_mut().zip(&model.runs) {
                        let guys = other.guys.iter().map(|guy| guy_on(&model, &solution, guy));
                        let loading = Loading {
                            on: laid.run,
                            case,
                            place: pieces.place,
                            way,
                            base: *base,
                            pushes: side,
                            posts: other.columns.iter().map(|column| columns[*column]).collect(),
                            guys: guys.collect::<Result<Vec<_>, _>>().map_err(told)?,
                            rails: if other.run == laid.run {
                                rails_on(&solution, other).map_err(told)?
                            } else {
                                Vec::new()
                            },
                        };
                        found.loadings.push(loading);
                        found.method = solution.method();
                        found.rounds = found.rounds.max(solution.rounds());
                        found.residual = found.residual.max(solution.residual());
                        found.out_of_balance = found.out_of_balance.max(off);
                    }
                }
            }
        }
    }
    Ok(found)
}

/// How much moment each foot of a group takes for each radian, at the soft end; or what is not known.
fn soft_feet(
    fence: &Fence,
    group: &Group,
    site: &Site,
) -> Result<Result<Vec<Vec<Moment>>, SoftUnknown>, FrameWhy> {
    let mut all = Vec::new();
    for run in &group.runs {
        let this = &fence.runs[*run];
        // The height of the load hardly differs from gust to gust.
        let loads = run_loads(fence, *run, Dress::AsHung, site, Event::Gust(mph(100.0)))?;
        let mut springs = Vec::new();
        for (post, load) in loads.posts.iter().enumerate() {
            match soft_foot(fence, this, post, arm(*load, this), &mut Blank) {
                Ok(stiffness) => springs.push(stiffness),
                Err(why) => return Ok(Err(why)),
            }
        }
        all.push(springs);
    }
    Ok(Ok(all))
}

/// The height at which a load acts; half the height of the fence where there is none.
fn arm(load: PostLoad, run: &Run) -> Length {
    let arm = Length::from_si((load.moment.si() / load.shear.si()).abs());
    if arm.si().is_finite() && arm.si() > 0.0 { arm } else { run.height * 0.5 }
}

/// How much moment the foot of a post takes for each radian, at the soft end of its range.
///
/// # Errors
/// If the footing, its depth or the soil is not known.
pub fn soft_foot(
    fence: &Fence,
    run: &Run,
    post: usize,
    arm: Length,
    ledger: &mut impl Ledger,
) -> Result<Moment, SoftUnknown> {
    const ASKED: &str = "how far a foot gives";
    let footing = run.posts[post].footing.map(|at| &fence.footings[at]).ok_or(SoftUnknown::Footing)?;
    let depth = footing.depth.ok_or(SoftUnknown::Footing)?;
    let modulus = fence.ground.modulus(ASKED, ledger).map_err(|error| match error {
        FootingError::SoilUnknown { .. } | FootingError::TwoSoils { .. } => SoftUnknown::Soil,
        _ => SoftUnknown::Footing,
    })?;
    let stiffness = base_stiffness(depth, arm, modulus, ledger).map_err(|_| SoftUnknown::Footing)?;
    Ok(stiffness.softest)
}

/// Along a member so many places are looked at before its greatest moment is searched for.
const LOOKS: usize = 8;
/// By more than rounding.
const LARGER: f64 = 1.0 + 1e-9;

fn column_on(solution: &Solution<'_>, column: &Column) -> Result<OnFrame, FrameError> {
    let at_foot = solution.reaction(column.foot)?;
    let flat = |x: f64, y: f64| x.hypot(y);
    let base_moment = Moment::from_si(flat(at_foot.moment.x.si(), at_foot.moment.y.si()));
    let base_shear = Force::from_si(flat(at_foot.force.x.si(), at_foot.force.y.si()));
    let (mut greatest, mut at) = (base_moment, Length::from_si(0.0));
    for (member, from, _) in &column.parts {
        let along = solution.along(*member)?;
        let mut larger = false;
        for look in 0..=LOOKS {
            let place = along.length() * (look as f64 / LOOKS as f64);
            larger |= along.forces(place)?.moment().si() > greatest.si() * LARGER;
        }
        if larger {
            let found = along.greatest_moment();
            if found.value.si() > greatest.si() * LARGER {
                (greatest, at) = (found.value, *from + found.at);
            }
        }
    }
    let top = solution.movement(column.top)?.shift;
    let top = Length::from_si(flat(top.x.si(), top.y.si()));
    Ok(OnFrame { base_shear, base_moment, greatest, at, top })
}

fn rails_on(solution: &Solution<'_>, laid: &LaidRun) -> Result<Vec<RailMoment>, FrameError> {
    let bays = laid.rails.iter().enumerate();
    let rails = bays.flat_map(|(bay, rails)| rails.iter().map(move |rail| (bay, rail)));
    rails
        .map(|(bay, rail)| {
            let moment = solution.along(rail.member)?.greatest_moment().value;
            Ok(RailMoment { bay, place: rail.place, moment })
        })
        .collect()
}

fn guy_on(model: &Model, solution: &Solution<'_>, guy: &GuyOf) -> Result<OnGuy, FrameError> {
    let axial = solution.along(guy.member)?.forces(Length::from_si(0.0))?.axial;
    let up = |joint| solution.reaction(joint).map(|back| Force::from_si(-back.force.z.si()));
    Ok(OnGuy {
        axial,
        is_slack: solution.is_slack(guy.member)?,
        foot_uplift: up(guy.foot)?,
        post_uplift: up(model.columns[guy.column].foot)?,
    })
}

/// How far what the feet give back is off a load, as a share of it.
fn off_balance(
    model: &Model,
    solution: &Solution<'_>,
    across: [f64; 2],
    force: Force,
) -> Result<f64, FrameError> {
    let mut sum = force.si();
    let guys = model.runs.iter().flat_map(|run| &run.guys).map(|guy| guy.foot);
    for foot in model.columns.iter().map(|column| column.foot).chain(guys) {
        let back = solution.reaction(foot)?.force;
        sum += back.x.si() * across[0] + back.y.si() * across[1];
    }
    Ok(if force.si() == 0.0 { 0.0 } else { (sum / force.si()).abs() })
}
