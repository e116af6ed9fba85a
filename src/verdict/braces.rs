//! Braces held against the pull of the cloth along the fence, and the posts that it pulls where no brace stands.

use super::frame::AxialRatio;
use super::{Flag, MomentRatio, RunVerdict, heading, strength};
use crate::fence::{Brace, Fence};
use crate::loads::frame::{ALONE, FrameWhy, OnBrace, Pull, TWO_FEET, braced, pull_into};

use crate::loads::{BaseMoment, at_level};
use crate::source::Clause;
use crate::units::{Force, Moment, Quantity};
use crate::wind::Level;
use crate::workings::{Blank, Entry, Ledger};
use std::fmt;

/// What was found of a brace, at the design event.
#[derive(Debug, Clone, PartialEq)]
pub struct BraceVerdict {
    /// The post it stands at, by index.
    pub post: usize,
    /// The bay it stands in, by index.
    pub bay: usize,
    /// What it does, or why that is not checked.
    pub found: Result<BraceFound, BraceOpen>,
    /// Its flag.
    pub flag: Flag,
}

/// What a brace does under the pull of the cloth along the fence, each figure the larger of both feet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BraceFound {
    /// The pull.
    pub pull: Pull,
    /// What it does.
    pub does: OnBrace,
    /// How slender its rail is, K L/r.
    pub slenderness: f64,
    /// What its rail can carry pressed, and its rule.
    pub compression: Option<(Force, Clause)>,
    /// What its rod can carry, and its rule; nothing where its steel is not known.
    pub tension: Option<(Force, Clause)>,
    /// The ratio of its rail.
    pub rail: Option<f64>,
    /// The ratio of its rod.
    pub rod: Option<f64>,
    /// The ratio of its post in bending along the fence alone.
    pub post: Option<f64>,
}

impl BraceFound {
    /// The worst flag of what was checked.
    #[must_use]
    pub fn flag_of_checked(&self) -> Option<Flag> {
        [self.rail, self.rod, self.post].into_iter().flatten().map(Flag::of).max()
    }
}

/// Why a brace is not checked.
#[derive(Debug, Clone, PartialEq)]
pub enum BraceOpen {
    /// No pull along the fence is known.
    NoPull,
    /// No cloth pulls its post one way.
    NotPulled,
    /// It has no rod.
    NoRod,
    /// It cannot be worked.
    NotWorked(FrameWhy),
}

impl fmt::Display for BraceOpen {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoPull => f.write_str(
                "nothing that loads it is known; the cloth's pull along the fence is worked where the cloth is held at its \
                 upright edges alone, its stiffness and slack are known, and there is a design wind",
            ),
            Self::NotPulled => f.write_str(
                "no cloth pulls its post one way: there is none in its bay, or it goes on at the other side",
            ),
            Self::NoRod => {
                f.write_str("without a truss rod its rail leans on the next post, which is not checked for that")
            }
            Self::NotWorked(why) => why.fmt(f),
        }
    }
}

/// A post that the cloth pulls along the fence and no brace holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PulledPost {
    /// The post by index.
    pub post: usize,
    /// The bay that it is pulled into, by index.
    pub bay: usize,
    /// The pull.
    pub pull: Pull,
    /// The moment at its foot along the fence, as it stands alone.
    pub moment: Moment,
}

fn pull_of(fence: &Fence, run: usize, brace: &Brace, pull: Option<Force>) -> Result<Pull, BraceOpen> {
    let force = pull.ok_or(BraceOpen::NoPull)?;
    pull_into(fence, run, (brace.post, brace.bay), force).ok_or(BraceOpen::NotPulled)
}

fn larger<Q: Quantity>(one: Q, other: Q) -> Q {
    if other.si() > one.si() { other } else { one }
}

/// The worse of both feet, figure by figure.
fn worse(one: OnBrace, other: OnBrace) -> OnBrace {
    OnBrace {
        rail: larger(one.rail, other.rail),
        rod: larger(one.rod, other.rod),
        foot_moment: larger(one.foot_moment, other.foot_moment),
        greatest: larger(one.greatest, other.greatest),
        uplift: larger(one.uplift, other.uplift),
        press: larger(one.press, other.press),
        method: one.method,
        rounds: one.rounds.max(other.rounds),
        residual: one.residual.max(other.residual),
    }
}

fn found(
    fence: &Fence,
    run: usize,
    brace: &Brace,
    (level, pull): (Level, Option<Force>),
    ledger: &mut impl Ledger,
) -> Result<BraceFound, BraceOpen> {
    let this = &fence.runs[run];
    let pull = pull_of(fence, run, brace, pull)?;
    let both = braced(fence, run, brace, pull).map_err(BraceOpen::NotWorked)?.ok_or(BraceOpen::NoRod)?;
    let does = worse(both[0].1, both[1].1);
    let _ = ledger.judge("n_f", TWO_FEET);
    let _ = ledger.judge("c_P", ALONE);
    let OnBrace { method, rounds, residual, .. } = does;
    ledger.write(|| Entry::Solved { symbol: "N", method, rounds, residual });
    let bay = this.bays[brace.bay].width;
    let refused = |error| {
        let guy = format!("brace of post {} of run \"{}\"", brace.post + 1, this.name);
        BraceOpen::NotWorked(FrameWhy::Guy { guy, error })
    };
    let slenderness = brace.slenderness(bay, &mut Blank).map_err(refused)?;
    let under = |what: &str| Entry::Heading(format!("{what}, under the pull of the cloth along the fence"));
    ledger.write(|| under("The rail of its brace"));
    let compression = brace.rail_strength(bay, ledger).map_err(refused)?.compression;
    let along = |force: Force, (capacity, _): (Force, Clause), ledger: &mut _| {
        let (_, demand) = at_level(level, brace.format, (Moment::from_si(0.0), force), ledger);
        AxialRatio { demand, capacity }.work(ledger)
    };
    let rail = compression.map(|capacity| along(does.rail, capacity, ledger));
    ledger.write(|| under("The rod of its brace"));
    let tension = brace.rod_strength(ledger);
    let rod = tension.map(|capacity| along(does.rod, capacity, ledger));
    ledger.write(|| under("The post along the fence alone"));
    let post = strength(fence, this.posts[brace.post].kind, this, &mut Blank).ok().map(|strength| {
        let (demand, _) = at_level(level, strength.format, (does.greatest, Force::from_si(0.0)), ledger);
        MomentRatio { demand, capacity: strength.moment }.work(ledger)
    });
    Ok(BraceFound { pull, does, slenderness, compression, tension, rail, rod, post })
}

/// The braces of a run under a pull.
pub(super) fn braces(fence: &Fence, run: usize, level: Level, pull: Option<Force>) -> Vec<BraceVerdict> {
    let of = |brace: &Brace| {
        let found = found(fence, run, brace, (level, pull), &mut Blank);
        let flag = match &found {
            Ok(found) => {
                let all_known = found.rail.is_some() && found.rod.is_some() && found.post.is_some();
                let open = (!all_known).then_some(Flag::NotChecked);
                found.flag_of_checked().max(open).unwrap_or(Flag::NotChecked)
            }
            Err(_) => Flag::NotChecked,
        };
        BraceVerdict { post: brace.post, bay: brace.bay, found, flag }
    };
    fence.runs[run].braces.iter().map(of).collect()
}

/// The posts of a run that a pull bends along the fence, without a brace.
pub(super) fn pulled_posts(fence: &Fence, run: usize, pull: Option<Force>) -> Vec<PulledPost> {
    let this = &fence.runs[run];
    let Some(force) = pull else { return Vec::new() };
    let alone = |post: &usize| !this.braces.iter().any(|brace| brace.post == *post);
    let beside =
        |post: usize| [post.checked_sub(1), Some(post)].into_iter().flatten().map(move |bay| (post, bay));
    let of = |(post, bay): (usize, usize)| {
        let pull = pull_into(fence, run, (post, bay), force)?;
        let moment = BaseMoment { force: pull.force, arm: pull.at }.work(&mut Blank);
        Some(PulledPost { post, bay, pull, moment })
    };
    (0..this.posts.len()).filter(alone).flat_map(beside).filter_map(of).collect()
}

/// Writes down what the pull along the fence does to one post.
pub(super) fn workings(
    fence: &Fence,
    (run, post): (usize, usize),
    level: Level,
    verdict: &RunVerdict,
    ledger: &mut Vec<Entry>,
) {
    let this = &fence.runs[run];
    let pull = verdict.fastening.as_ref().ok().and_then(|fastening| fastening.in_plane);
    for brace in this.braces.iter().filter(|brace| brace.post == post) {
        heading(ledger, "The brace of the post, under the pull of the cloth along the fence".to_owned());
        if let Err(why) = found(fence, run, brace, (level, pull), ledger) {
            heading(ledger, format!("Not checked: {why}"));
        }
    }
    for found in pulled_posts(fence, run, pull).into_iter().filter(|found| found.post == post) {
        heading(
            ledger,
            "The pull of the cloth along the fence; the post has no brace: not checked".to_owned(),
        );
        let _ = BaseMoment { force: found.pull.force, arm: found.pull.at }.work(ledger);
    }
}
