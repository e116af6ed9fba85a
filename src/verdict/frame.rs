//! Posts held against what the frame asks of them: of that and of hand statics the worse counts.

use super::braces::{self, BraceVerdict, PulledPost};
use super::{
    Demand, Flag, LimitGust, Part, PartKind, PostVerdict, REFERENCE_GUST, RunVerdict, Standing, VerdictError,
    WorkedPost, heading, ratios, run_of, strength, worked,
};
use crate::fence::{Face, Fence, Guy, GuyKind, GuyStrength};
use crate::frame::Order;
use crate::loads::frame::{
    Base, CONTINUOUS, FrameRun, FrameWhy, OnFrame, RailMoment, SoftUnknown, WAYS, Way, frame_loads, soft_foot,
};
use crate::loads::{PostLoad, at_level};
use crate::rule;
use crate::source::{Clause, OURS};
use crate::units::{Force, Length, Moment, Pure, Quantity, Velocity};
use crate::verdict::footing::Foot;
use crate::verdict::rails::{bending, moment_of};
use crate::wind::{Case, Event, Level, Site};
use crate::workings::{Blank, Entry, Ledger};

rule! {
    /// The moment of a post on the frame over that by hand statics.
    FrameOverHand, "verdict/frame-over-hand", OURS.at("largest moment of either");
    /// largest moment of the post on the frame
    frame: Moment = "M_f";
    /// moment at its foot by hand statics
    hand: Moment = "M";
    times "M_f/M": f64 as Coefficient = (frame / hand).pure().abs()
}

rule! {
    /// Demand over capacity along a back brace or guy.
    AxialRatio, "verdict/axial-ratio", OURS.at("demand over capacity");
    /// demand
    demand: Force = "N";
    /// capacity
    capacity: Force = "φP_n";
    ratio "ratio": f64 as Coefficient = (demand / capacity).pure().abs()
}

/// What was found of a run on the frame.
#[derive(Debug, Clone, PartialEq)]
pub struct RunFrame {
    /// The runs that stand in one frame with it, itself among them, by index.
    pub with: Vec<usize>,
    /// Whether soft feet were worked, or why not.
    pub soft: Result<(), SoftUnknown>,
    /// How the frame was solved.
    pub method: &'static str,
    /// The greatest number of rounds that a loading took.
    pub rounds: usize,
    /// The greatest force out of balance at any joint, as a share of the greatest force.
    pub residual: f64,
    /// How far the feet are off the whole load, as a share of it.
    pub out_of_balance: f64,
    /// The least limit gust of its posts by hand statics alone.
    pub hand_limit_gust: Velocity,
    /// Its back braces and guys, in the order of the run.
    pub guys: Vec<GuyVerdict>,
    /// The braces of its posts, in the order of the run.
    pub braces: Vec<BraceVerdict>,
    /// The posts that the cloth pulls along the fence and no brace holds.
    pub pulled_posts: Vec<PulledPost>,
    /// The largest moment of each of its rails but those along the ground, bay by bay, at the design event; without a
    /// speed at the gust that ratios are worked at.
    pub rails: Vec<RailMoment>,
}

/// What was found of a back brace or guy, at the design event; without a speed at the gust that ratios are worked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GuyVerdict {
    /// The post it holds, by index.
    pub post: usize,
    /// Its name.
    pub name: &'static str,
    /// The largest force that presses it; nothing for a guy.
    pub pressed: Option<Force>,
    /// The largest force that pulls it.
    pub pulled: Force,
    /// The side to which the wind pushes when it is slack.
    pub slack: Option<Face>,
    /// What it can carry pressed, and its rule.
    pub compression: Option<(Force, Clause)>,
    /// What it can carry pulled, and its rule.
    pub tension: Option<(Force, Clause)>,
    /// The larger ratio of both; nothing without a speed or where what it carries is not known.
    pub ratio: Option<f64>,
    /// Its flag.
    pub flag: Flag,
    /// The gust at which it reaches its limit, where that is known.
    pub limit_gust: Option<Velocity>,
    /// The most that it pulls its own foot up.
    pub foot_uplift: Force,
    /// The most that the foot of its post is pulled up.
    pub post_uplift: Force,
}

/// What a back brace or guy has to bear over all loadings.
#[derive(Clone, Copy)]
struct Borne {
    pressed: Force,
    pulled: Force,
    slack: Option<Face>,
    foot_uplift: Force,
    post_uplift: Force,
}

fn borne(found: &FrameRun, at: usize) -> Borne {
    let nothing = Force::from_si(0.0);
    let mut all =
        Borne { pressed: nothing, pulled: nothing, slack: None, foot_uplift: nothing, post_uplift: nothing };
    let most = |one: Force, other: Force| if other > one { other } else { one };
    for loading in &found.loadings {
        let guy = loading.guys[at];
        all.pressed = most(all.pressed, -guy.axial);
        all.pulled = most(all.pulled, guy.axial);
        all.foot_uplift = most(all.foot_uplift, guy.foot_uplift);
        all.post_uplift = most(all.post_uplift, guy.post_uplift);
        if guy.is_slack && loading.on == found.run {
            all.slack = Some(loading.pushes);
        }
    }
    all
}

/// Demand over capacity along a back brace or guy, the larger of pressed and pulled; nothing where either is not known.
fn along(
    guy: &Guy,
    borne: Borne,
    strength: &GuyStrength,
    level: Level,
    ledger: &mut impl Ledger,
) -> Option<f64> {
    let mut ratio = |demand: Force, (capacity, _): (Force, Clause)| {
        let (_, demand) = at_level(level, guy.format, (Moment::from_si(0.0), demand), ledger);
        AxialRatio { demand, capacity }.work(ledger)
    };
    let pulled = ratio(borne.pulled, strength.tension?);
    let pressed = strength.compression.map(|compression| ratio(borne.pressed, compression));
    Some(pressed.map_or(pulled, |pressed| pressed.max(pulled)))
}

/// The back braces and guys of a run.
fn guys(fence: &Fence, design: Option<&FrameRun>, gust: &FrameRun, site: &Site) -> Vec<GuyVerdict> {
    let level = site.code().level();
    let of = |(at, guy): (usize, &Guy)| {
        let told = borne(design.unwrap_or(gust), at);
        // Its strength was worked when the survey was read; a fence made by hand may hold one that is out of range.
        let strength = guy.strength(&mut Blank).unwrap_or(GuyStrength { compression: None, tension: None });
        let ratio = design.and_then(|_| along(guy, told, &strength, level, &mut Blank));
        let at_gust = along(guy, borne(gust, at), &strength, level, &mut Blank);
        GuyVerdict {
            post: guy.post,
            name: guy.kind.name(),
            pressed: matches!(guy.kind, GuyKind::BackBrace(_)).then_some(told.pressed),
            pulled: told.pulled,
            slack: told.slack,
            compression: strength.compression,
            tension: strength.tension,
            ratio,
            flag: ratio.map_or(Flag::NotChecked, Flag::of),
            limit_gust: at_gust
                .filter(|ratio| *ratio > 0.0)
                .map(|ratio| LimitGust { gust: REFERENCE_GUST, ratio }.work(&mut Blank)),
            foot_uplift: told.foot_uplift,
            post_uplift: told.post_uplift,
        }
    };
    fence.runs[gust.run].guys.iter().enumerate().map(of).collect()
}

/// What a post does with one kind of feet and one way of the load, in the case with its largest moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InOneWay {
    /// What the feet do.
    pub base: Base,
    /// How the load gets in.
    pub way: Way,
    /// The case.
    pub case: Case,
    /// The case in the code's words.
    pub place: &'static str,
    /// What the post does.
    pub found: OnFrame,
}

/// What was found of a post on the frame.
#[derive(Debug, Clone, PartialEq)]
pub struct PostFrame {
    /// With each kind of feet and each way of the load, at the design event; without a speed at the gust that ratios are
    /// worked at.
    pub ways: Vec<InOneWay>,
    /// Its moment at the foot by hand statics in the same wind.
    pub hand: Moment,
    /// The largest ratio of its parts on the frame alone, and by hand statics alone.
    pub ratios: Option<(f64, f64)>,
    /// The gust at which it reaches its limit on the frame alone.
    pub limit_gust: Velocity,
    /// The same by hand statics alone.
    pub hand_limit_gust: Velocity,
}

impl PostFrame {
    /// The one with the largest moment.
    #[must_use]
    pub fn worst(&self) -> Option<&InOneWay> {
        self.ways.iter().max_by(|one, other| one.found.greatest.si().total_cmp(&other.found.greatest.si()))
    }

    /// The one with the largest moment on these feet.
    #[must_use]
    pub fn on(&self, base: Base) -> Option<&InOneWay> {
        let these = self.ways.iter().filter(|one| one.base == base);
        these.max_by(|one, other| one.found.greatest.si().total_cmp(&other.found.greatest.si()))
    }

    /// Its largest moment on the frame over that by hand statics, over kinds of feet and ways of the load: the least and
    /// the greatest. Nothing where hand statics gives it no moment.
    #[must_use]
    pub fn times_hand(&self) -> Option<(f64, f64)> {
        let times = |one: &InOneWay| over_hand(one.found.greatest, self.hand, &mut Blank);
        let all = self.ways.iter().map(times).filter(|times| times.is_finite());
        all.fold(None, |so_far: Option<(f64, f64)>, times| {
            Some(so_far.map_or((times, times), |(least, most)| (least.min(times), most.max(times))))
        })
    }

    /// The furthest that its top moves with these feet.
    #[must_use]
    pub fn top(&self, base: Base) -> Option<Length> {
        let tops = self.ways.iter().filter(|one| one.base == base).map(|one| one.found.top);
        tops.max_by(|one, other| one.si().total_cmp(&other.si()))
    }
}

fn over_hand(frame: Moment, hand: Moment, ledger: &mut impl Ledger) -> f64 {
    FrameOverHand { frame, hand }.work(ledger)
}

/// The verdicts of all runs by hand statics, with the frame counted where it is worse.
///
/// # Errors
/// As for [`super::run_verdict`]. What cannot be worked on the frame is no error: it is told in the verdict.
pub fn on_frame(fence: &Fence, site: &Site, hand: Vec<RunVerdict>) -> Result<Vec<RunVerdict>, VerdictError> {
    let gust = frame_loads(fence, site, Event::Gust(REFERENCE_GUST), Order::Second);
    let design = site.wind_speed().map(|_| frame_loads(fence, site, Event::Design, Order::Second));
    let mut all = Vec::with_capacity(hand.len());
    for (run, mut hand) in hand.into_iter().enumerate() {
        let at = |loads: &[Result<FrameRun, FrameWhy>], run: usize| loads[run].clone();
        let both = at(&gust, run)
            .and_then(|gust| Ok((gust, design.as_ref().map(|design| at(design, run)).transpose()?)));
        let (frame, posts) = match both {
            Err(why) => (Err(why), hand.posts.into_iter().map(left_open).collect()),
            Ok((own_gust, own_design)) => {
                let level = site.code().level();
                let bent = (own_gust.rails(), own_design.as_ref().map(FrameRun::rails));
                hand = with_rails(hand, bent.0, bent.1, level);
                let held = guys(fence, own_design.as_ref(), &own_gust, site);
                let found = Frames { gust: &gust, design: design.as_deref() };
                let pull = hand.fastening.as_ref().ok().and_then(|fastening| fastening.in_plane);
                let braces = braces::braces(fence, run, site.code().level(), pull);
                let posts = found.posts(fence, run, site, &hand, (&held, &braces))?;
                let told = own_design.as_ref().unwrap_or(&own_gust);
                let frame = RunFrame {
                    with: told.with.clone(),
                    soft: told.soft,
                    method: told.method,
                    rounds: told.rounds.max(own_gust.rounds),
                    residual: told.residual.max(own_gust.residual),
                    out_of_balance: told.out_of_balance.max(own_gust.out_of_balance),
                    hand_limit_gust: hand.limit_gust,
                    guys: held,
                    braces,
                    pulled_posts: braces::pulled_posts(fence, run, pull),
                    rails: told.rails(),
                };
                (Ok(frame), posts)
            }
        };
        let mut verdict = run_of(&fence.runs[run], posts, hand.bays, hand.fastening, hand.rails);
        verdict.frame = Some(frame);
        all.push(verdict);
    }
    Ok(all)
}

/// Rails with what the frame makes of them where that is the worse, and the posts beside them.
fn with_rails(
    mut hand: RunVerdict,
    gust: Vec<RailMoment>,
    design: Option<Vec<RailMoment>>,
    level: Level,
) -> RunVerdict {
    hand.rails = hand.rails.or_on_frame(&gust, design.as_deref(), level);
    for (at, post) in hand.posts.iter_mut().enumerate() {
        for part in post.parts.iter_mut().filter(|part| part.kind == PartKind::Rails) {
            *part = hand.rails.part(at);
        }
        post.flag = post.parts.iter().map(|part| part.flag).max().unwrap_or(post.flag);
        let checked = post.parts.iter().filter(|part| part.ratio.is_some());
        post.flag_of_checked = checked.map(|part| part.flag).max();
    }
    hand
}

/// A post that was asked about on the frame and could not be worked there.
fn left_open(hand: PostVerdict) -> PostVerdict {
    let flag = hand.flag.max(Flag::NotChecked);
    PostVerdict { flag, frame_is_open: true, limit_is_at_most: true, ..hand }
}

/// A post at a brace: the pull along the fence is checked with the brace, and never with the wind across.
fn beside_brace(post: PostVerdict, brace: &BraceVerdict) -> PostVerdict {
    let of_brace = brace.found.as_ref().ok().and_then(|found| found.flag_of_checked());
    left_open(PostVerdict {
        flag: post.flag.max(brace.flag),
        flag_of_checked: post.flag_of_checked.max(of_brace),
        guys_flag: post.guys_flag.max(of_brace),
        ..post
    })
}

/// Which load of a post a frame is asked for.
type Of = fn(&FrameRun, &Fence, usize) -> Option<PostLoad>;

struct Frames<'f> {
    gust: &'f [Result<FrameRun, FrameWhy>],
    design: Option<&'f [Result<FrameRun, FrameWhy>]>,
}

impl Frames<'_> {
    /// The loads of one post, those of the frame in place of those of hand statics.
    fn worked(
        &self,
        fence: &Fence,
        (run, post): (usize, usize),
        hand: WorkedPost,
        of: Of,
    ) -> Option<WorkedPost> {
        let load = |frames: &[Result<FrameRun, FrameWhy>]| of(frames[run].as_ref().ok()?, fence, post);
        let hung = load(self.gust)?;
        let design = self.design.and_then(load);
        Some(WorkedPost { hung, design, ..hand })
    }

    fn posts(
        &self,
        fence: &Fence,
        run: usize,
        site: &Site,
        hand: &RunVerdict,
        (guys, braces): (&[GuyVerdict], &[BraceVerdict]),
    ) -> Result<Vec<PostVerdict>, VerdictError> {
        let this = &fence.runs[run];
        let level = site.code().level();
        let own = worked(fence, run, site)?;
        let mut posts = Vec::with_capacity(this.posts.len());
        for (at, (post, by_hand)) in this.posts.iter().zip(&hand.posts).enumerate() {
            let hands = match post.shared_with {
                Some(shared) => Some((shared, worked(fence, shared.run, site)?.post(shared.post))),
                None => None,
            };
            let other = |of: Of| {
                let (shared, hand) = hands?;
                self.worked(fence, (shared.run, shared.post), hand, of).or(Some(hand))
            };
            let at_most = self.worked(fence, (run, at), own.post(at), FrameRun::post_load);
            let at_foot = self.worked(fence, (run, at), own.post(at), FrameRun::foot_load);
            let (Some(loads), Some(at_foot)) = (at_most, at_foot) else {
                posts.push(left_open(by_hand.clone()));
                continue;
            };
            let strength = strength(fence, post.kind, this, &mut Blank)?;
            let foot = Foot::of(fence, post.footing, post.kind, this.height, level);
            let standing = Standing { fence, strength: &strength, foot: &foot, level };
            let beside = [PartKind::Rails, PartKind::Fastening].map(|kind| by_hand.part(kind));
            let others = other(FrameRun::post_load);
            let mut framed = standing.verdict(loads, others, beside, by_hand.sway);
            // A footing takes what comes to the foot, which where something holds the post higher up is not the most.
            let standing_in = standing.verdict(at_foot, other(FrameRun::foot_load), beside, by_hand.sway);
            for part in framed.parts.iter_mut().filter(|part| part.kind == PartKind::Footing) {
                *part = standing_in.part(PartKind::Footing);
            }
            framed.footing = standing_in.footing;
            let demand = standing.demand(loads.hung, others.map(|other| other.hung), &mut Blank);
            let of_footing = framed.footing.at_gust.map(|(hung, _)| hung);
            let first = standing
                .limits(demand, of_footing, &mut Blank)
                .reduce(|one, other| if other.1 > one.1 { other } else { one });
            if let Some((part, ratio)) = first {
                framed.limited_by = part;
                framed.limit_gust = LimitGust { gust: REFERENCE_GUST, ratio }.work(&mut Blank);
            }
            let held: Vec<&GuyVerdict> = guys.iter().filter(|guy| guy.post == at).collect();
            let worse = self.worse(fence, (run, at), (by_hand.clone(), framed), &held);
            posts.push(braces.iter().filter(|brace| brace.post == at).fold(worse, beside_brace));
        }
        Ok(posts)
    }

    /// Part by part the worse of hand statics and frame. Hand statics knows no back brace and no guy: of a post that one
    /// holds, the frame alone counts, with what holds it, whose own footing is not checked.
    fn worse(
        &self,
        fence: &Fence,
        (run, post): (usize, usize),
        (hand, frame): (PostVerdict, PostVerdict),
        held: &[&GuyVerdict],
    ) -> PostVerdict {
        let frames = self.design.unwrap_or(self.gust);
        let told = frames[run].as_ref().ok();
        let soft_is_open = told.is_none_or(|told| told.soft.is_err());
        let ways = told.map_or_else(Vec::new, |told| ways(fence, told, post));
        let found = PostFrame {
            ways,
            hand: hand.design.unwrap_or(hand.at_reference_gust).moment,
            ratios: frame.ratio().zip(hand.ratio()),
            limit_gust: frame.limit_gust,
            hand_limit_gust: hand.limit_gust,
        };
        let mut both = hand;
        for (part, other) in both.parts.iter_mut().zip(frame.parts) {
            let counts = matches!(part.kind, PartKind::PostBending | PartKind::PostShear | PartKind::Footing);
            if counts && (other.ratio > part.ratio || !held.is_empty()) {
                *part = other;
                if part.kind == PartKind::PostBending {
                    both.below_grade = frame.below_grade.clone();
                }
            }
        }
        let at_gust = |post: &PostVerdict| post.footing.at_gust.map(|(hung, _)| hung);
        if at_gust(&frame) > at_gust(&both) || !held.is_empty() {
            both.footing = frame.footing;
        }
        if frame.limit_gust < both.limit_gust || !held.is_empty() {
            (both.limit_gust, both.limited_by) = (frame.limit_gust, frame.limited_by);
        }
        for gust in held.iter().filter_map(|guy| guy.limit_gust) {
            if gust < both.limit_gust {
                (both.limit_gust, both.limited_by) = (gust, PartKind::Guy);
            }
        }
        let flags = |parts: &[Part]| parts.iter().map(|part| part.flag).max().unwrap_or(Flag::NotChecked);
        let of_guys = held.iter().filter(|guy| guy.ratio.is_some()).map(|guy| guy.flag).max();
        both.flag = flags(&both.parts).max(of_guys.unwrap_or(Flag::Within));
        let checked = both.parts.iter().filter(|part| part.ratio.is_some()).map(|part| part.flag);
        both.flag_of_checked = checked.chain(of_guys).max();
        both.frame = Some(found);
        both.guys_flag = of_guys;
        if soft_is_open || !held.is_empty() { left_open(both) } else { both }
    }
}

/// The worst case of a post with each kind of feet and each way of the load.
fn ways(fence: &Fence, found: &FrameRun, post: usize) -> Vec<InOneWay> {
    let mut ways = Vec::new();
    for base in [Base::Rigid, Base::Soft] {
        for way in Way::ALL {
            let Some((loading, found)) = found.worst(fence, post, Some(base), Some(way)) else { continue };
            let (case, place) = (loading.case, loading.place);
            ways.push(InOneWay { base, way, case, place, found: *found });
        }
    }
    ways
}

/// Writes down what the frame asks of one post and what comes of it.
///
/// # Errors
/// As for [`super::run_verdict`].
pub fn frame_workings(
    fence: &Fence,
    run: usize,
    post: usize,
    site: &Site,
    verdict: &RunVerdict,
    ledger: &mut Vec<Entry>,
) -> Result<(), VerdictError> {
    let this = &fence.runs[run];
    let frame = match &verdict.frame {
        None => return Ok(()),
        Some(Err(why)) => {
            heading(ledger, format!("On the frame, not checked: {why}"));
            return Ok(());
        }
        Some(Ok(frame)) => frame,
    };
    let found = &verdict.posts[post];
    let Some(on_frame) = &found.frame else { return Ok(()) };
    let names: Vec<&str> = frame.with.iter().map(|run| fence.runs[*run].name.as_str()).collect();
    heading(ledger, format!("On the frame of {}", names.join(", ")));
    let _ = ledger.judge("c_r", CONTINUOUS);
    let _ = ledger.judge("n_w", WAYS);
    ledger.write(|| Entry::Solved {
        symbol: "u",
        method: frame.method,
        rounds: frame.rounds,
        residual: frame.residual,
    });
    match frame.soft {
        Err(why) => heading(ledger, format!("Soft feet are not worked: {}", why.why())),
        Ok(()) => {
            heading(ledger, "The foot of the post, at the soft end of its range".to_owned());
            let load = found.at_reference_gust;
            let arm = Length::from_si((load.moment.si() / load.shear.si()).abs());
            let _ = soft_foot(fence, this, post, arm, ledger);
        }
    }
    let event = if found.design.is_some() { "at the design event" } else { "in the gust of 100 mph" };
    for one in &on_frame.ways {
        heading(ledger, format!("On {}, {}, {event}: {}", one.base.words(), one.way.words(), one.place));
        let _ = over_hand(one.found.greatest, on_frame.hand, ledger);
    }
    let Some(worst) = on_frame.worst() else { return Ok(()) };
    let strength = strength(fence, this.posts[post].kind, this, &mut Blank)?;
    heading(ledger, "Demand over capacity on the frame".to_owned());
    let (moment, shear) = (worst.found.greatest, worst.found.base_shear);
    let (moment, shear) = at_level(site.code().level(), strength.format, (moment, shear), ledger);
    let _ = ratios(Demand { moment, shear }, &strength, ledger);
    // The rail that reaches its limit first.
    if let Some((first, strength)) = verdict.rails.first().and_then(|first| Some((first, first.strength?)))
        && let Some(moment) = moment_of(&frame.rails, first)
    {
        let (name, bay) = (first.place.name(), first.bay + 1);
        heading(ledger, format!("The {name} in bay {bay} on the frame, {event}"));
        let _ = bending(moment, &strength, site.code().level(), ledger);
    }
    for (at, guy) in this.guys.iter().enumerate().filter(|(_, guy)| guy.post == post) {
        heading(ledger, format!("The {} of the post, {event}", guy.kind.name()));
        let Ok(strength) = guy.strength(ledger) else { continue };
        let found = frame.guys[at];
        let told = Borne {
            pressed: found.pressed.unwrap_or(Force::from_si(0.0)),
            pulled: found.pulled,
            slack: found.slack,
            foot_uplift: found.foot_uplift,
            post_uplift: found.post_uplift,
        };
        let _ = along(guy, told, &strength, site.code().level(), ledger);
    }
    braces::workings(fence, (run, post), site.code().level(), verdict, ledger);
    Ok(())
}
