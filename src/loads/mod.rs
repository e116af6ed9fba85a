//! Which part takes which load: the pressures of a wind code on a run, and their share at each post.
//!
//! Cases act one at a time over the whole run, each in equilibrium. A post takes the case with its largest base
//! moment, a bay shows the case with its largest mean pressure.

mod factors;
pub mod frame;
mod pieces;
mod rails;
mod statics;

pub use factors::{RULES as FACTOR_RULES, ServiceMoment, ServiceShear, at_level};
pub use rails::{OnRail, Push, RailLine, on_rails, rail_lines, rail_workings};
pub use statics::{
    BaseMoment, ClothLoad, MeshLoad, PostFace, PostShare, PressureAtHeight, RULES, RailLoad, RowShare,
    SharedLoad,
};

use crate::fence::Fence;
use crate::units::{Force, Moment, Pressure, Quantity, System, Value};
use crate::wind::{Case, Event, Site, WindError};
use crate::workings::{Blank, Entry, Ledger};
use pieces::Pieces;

/// The load on a post in the case with its largest base moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PostLoad {
    /// Shear at grade.
    pub shear: Force,
    /// Moment at grade.
    pub moment: Moment,
    /// The case.
    pub case: Case,
    /// The case in the code's words.
    pub place: &'static str,
}

/// The pressure on a bay in the case with its largest mean pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BayLoad {
    /// Mean net pressure over the cloth of the bay, or over the height of a bare bay.
    pub pressure: Pressure,
    /// That pressure times the area it is the mean over.
    pub force: Force,
    /// The case.
    pub case: Case,
    /// The case in the code's words.
    pub place: &'static str,
    /// The zone that covers most of the bay; empty if the code names none.
    pub zone: &'static str,
}

/// One case over a whole run.
#[derive(Debug, Clone, PartialEq)]
pub struct CaseLoads {
    /// The case.
    pub case: Case,
    /// The case in the code's words.
    pub place: &'static str,
    /// Shear at grade, post by post.
    pub shears: Vec<Force>,
    /// Moment at grade, post by post.
    pub moments: Vec<Moment>,
    /// The whole force on the run.
    pub force: Force,
    /// The sum of load times place from the start.
    pub about_start: Moment,
}

/// The loads on a run.
#[derive(Debug, Clone, PartialEq)]
pub struct RunLoads {
    /// Every case the code has for this run.
    pub cases: Vec<CaseLoads>,
    /// Post by post, the governing case.
    pub posts: Vec<PostLoad>,
    /// Bay by bay, the governing case.
    pub bays: Vec<BayLoad>,
}

/// Whether the cloth hangs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dress {
    /// As surveyed.
    AsHung,
    /// With the cloth taken off.
    Bare,
}

/// The loads on a run of a fence.
///
/// # Errors
/// Outside the range of the code, or without a speed for the design event.
pub fn run_loads(
    fence: &Fence,
    run: usize,
    dress: Dress,
    site: &Site,
    event: Event,
) -> Result<RunLoads, WindError> {
    let this = &fence.runs[run];
    let mut loads = RunLoads {
        cases: Vec::with_capacity(Case::ALL.len()),
        posts: Vec::with_capacity(this.posts.len()),
        bays: Vec::with_capacity(this.bays.len()),
    };
    let mut pieces = Pieces::new(fence, run, dress);
    for case in Case::ALL {
        if !pieces.lay(site, case, event, &mut Blank)? {
            continue;
        }
        let count = this.posts.len();
        let mut one = CaseLoads {
            case,
            place: pieces.place,
            shears: vec![Force::from_si(0.0); count],
            moments: vec![Moment::from_si(0.0); count],
            force: Force::from_si(0.0),
            about_start: Moment::from_si(0.0),
        };
        pieces.share_out(&mut one);
        let place = pieces.place;
        let on_posts = one.shears.iter().zip(&one.moments);
        let on_posts = on_posts.map(|(&shear, &moment)| PostLoad { shear, moment, case, place });
        keep_larger(&mut loads.posts, on_posts, |load| load.moment.si().abs());
        let on_bays = (0..this.bays.len()).map(|bay| pieces.bay(bay));
        keep_larger(&mut loads.bays, on_bays, |load| load.pressure.si().abs());
        loads.cases.push(one);
    }
    Ok(loads)
}

/// The largest pressure anywhere on the cloth of each bay, over all cases and from both sides, and where it stands in
/// the code; nothing for a bay without cloth.
///
/// # Errors
/// As for [`run_loads`].
pub fn cloth_peaks(
    fence: &Fence,
    run: usize,
    site: &Site,
    event: Event,
) -> Result<Vec<Option<(Pressure, &'static str)>>, WindError> {
    let this = &fence.runs[run];
    let mut peaks: Vec<Option<(Pressure, &'static str)>> = vec![None; this.bays.len()];
    let mut pieces = Pieces::new(fence, run, Dress::AsHung);
    for case in Case::ALL {
        if !pieces.lay(site, case, event, &mut Blank)? {
            continue;
        }
        for (bay, peak) in peaks.iter_mut().enumerate().filter(|(bay, _)| this.has_cloth(*bay)) {
            let found = pieces.peak(bay);
            if peak.is_none_or(|(before, _)| found > before) {
                *peak = Some((found, pieces.place));
            }
        }
    }
    Ok(peaks)
}

/// Keeps the larger load at every place; of equal ones the earlier.
fn keep_larger<T>(kept: &mut Vec<T>, found: impl Iterator<Item = T>, size: impl Fn(&T) -> f64) {
    if kept.is_empty() {
        kept.extend(found);
        return;
    }
    for (before, load) in kept.iter_mut().zip(found) {
        if size(&load) > size(before) {
            *before = load;
        }
    }
}

/// Writes down how one post gets its load in one case.
///
/// # Errors
/// As for [`run_loads`].
pub fn post_workings(
    fence: &Fence,
    run: usize,
    post: usize,
    case: Case,
    site: &Site,
    event: Event,
    ledger: &mut Vec<Entry>,
) -> Result<(), WindError> {
    let mut pieces = Pieces::new(fence, run, Dress::AsHung);
    if let Some(link) = fence.runs[run].chain_link
        && fence.runs[run].screen.is_none()
    {
        let _ = link.solidity(ledger);
    }
    let _ = fence.runs[run].solidity(ledger);
    if pieces.lay(site, case, event, ledger)? {
        let base = fence.runs[run].base_above_ground;
        ledger.write(|| {
            let head = "Share of the post, by statics from its two bays";
            Entry::Heading(if base.si() > 0.0 {
                let (us, si) = (Value::of(base).written(System::Us), Value::of(base).written(System::Si));
                format!("{head}; arms from its own foot, which stands {us} ({si}) above the ground")
            } else {
                head.to_owned()
            })
        });
        pieces.share_of(post, ledger);
    }
    if let Some(link) = fence.runs[run].chain_link {
        let heading =
            "Not used: the solidity of the same chain link by the two other definitions of its mesh";
        ledger.write(|| Entry::Heading(heading.to_owned()));
        let _ = link.definitions(ledger);
    }
    Ok(())
}
