//! Ratio, flag, what governs, and the limit gust, post by post.

mod fastening;
mod rails;

pub use fastening::{
    BayFastening, FasteningVerdict, Held, NotWorked, PULL, Pull, Then, after_the_first_tie,
    fastening_verdict, fastening_workings,
};
pub use rails::{
    HANGS_ON_WIRE, NO_WALL, RailCheck, RailDesign, RailsVerdict, SPLICED, rails_verdict, rails_workings,
};

use crate::fence::{Fence, PostError, PostStrength, Run};
use crate::loads::{BayLoad, Dress, PostLoad, RunLoads, at_level, run_loads};
use crate::rule;
use crate::source::{Clause, OURS};
use crate::units::{Force, Moment, Pure, Quantity, Value, Velocity, mph};
use crate::wind::{Event, Level, Site, WindError};
use crate::workings::{Blank, Ledger, Listed};
use std::fmt;

/// What is said of a part, a post, a run; the worst stands last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Flag {
    /// A ratio up to 0.9.
    Within,
    /// A ratio above 0.9 and up to 1.0.
    NearLimit,
    /// Not checked, which is never a pass.
    NotChecked,
    /// Over at the worst end of what is not known, not so at the best.
    Depends,
    /// A ratio above 1.0.
    Over,
}

impl Flag {
    /// Up to here a ratio is within.
    pub const NEAR_FROM: f64 = 0.9;

    /// The flag of a ratio, which is compared unrounded.
    #[must_use]
    pub fn of(ratio: f64) -> Self {
        if ratio <= Self::NEAR_FROM {
            Self::Within
        } else if ratio <= 1.0 {
            Self::NearLimit
        } else {
            Self::Over
        }
    }

    /// The word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Within => "within",
            Self::NearLimit => "near limit",
            Self::NotChecked => "not checked",
            Self::Depends => "depends",
            Self::Over => "over",
        }
    }

    /// The shape that goes with the word.
    #[must_use]
    pub const fn shape(self) -> &'static str {
        match self {
            Self::Within => "●",
            Self::NearLimit => "▲",
            Self::NotChecked => "◇",
            Self::Depends => "◐",
            Self::Over => "■",
        }
    }

    /// What is said when the worst end says this and the best end that.
    #[must_use]
    pub fn of_both_ends(worst: Self, best: Self) -> Self {
        if worst == best { worst } else { Self::Depends }
    }
}

impl fmt::Display for Flag {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.shape(), self.word())
    }
}

rule! {
    /// Demand over capacity.
    MomentRatio, "verdict/moment-ratio", OURS.at("demand over capacity");
    /// demand
    demand: Moment = "M";
    /// capacity
    capacity: Moment = "φM_n";
    ratio "ratio": f64 as Coefficient = (demand / capacity).pure().abs()
}
rule! {
    /// Demand over capacity.
    ShearRatio, "verdict/shear-ratio", OURS.at("demand over capacity");
    /// demand
    demand: Force = "V";
    /// capacity
    capacity: Force = "φV_n";
    ratio "ratio": f64 as Coefficient = (demand / capacity).pure().abs()
}
rule! {
    /// The gust at which a part reaches its limit, from its ratio at another gust: pressure goes with the square.
    LimitGust, "verdict/limit-gust", OURS.at("pressure goes with the square of the gust");
    /// a gust
    gust: Velocity = "V";
    /// ratio at that gust
    ratio: f64 as Coefficient = "ratio";
    limit "V_lim": Velocity = gust * (1.0 / ratio).sqrt()
}

rule! {
    /// Moment at the foot of a round corner post with wind on both of its faces at once.
    CornerMoment, "verdict/corner-moment", OURS.at("0.75 of each face's own, at right angles");
    /// moment from the first face alone
    first: Moment = "M_1";
    /// moment from the second face alone
    second: Moment = "M_2";
    moment "M": Moment = 0.75 * (first * first + second * second).sqrt()
}
rule! {
    /// Shear at the foot of a round corner post with wind on both of its faces at once.
    CornerShear, "verdict/corner-shear", OURS.at("0.75 of each face's own, at right angles");
    /// shear from the first face alone
    first: Force = "V_1";
    /// shear from the second face alone
    second: Force = "V_2";
    shear "V": Force = 0.75 * (first * first + second * second).sqrt()
}

rule! {
    /// Moment at the foot of a square corner post with wind on both of its faces at once: its ratios add up.
    SquareCornerMoment, "verdict/square-corner-moment", OURS.at("0.75 of each face's own, ratios added");
    /// moment from the first face alone
    first: Moment = "M_1";
    /// moment from the second face alone
    second: Moment = "M_2";
    moment "M": Moment = 0.75 * (first + second)
}
rule! {
    /// Shear at the foot of a square corner post with wind on both of its faces at once: its ratios add up.
    SquareCornerShear, "verdict/square-corner-shear", OURS.at("0.75 of each face's own, ratios added");
    /// shear from the first face alone
    first: Force = "V_1";
    /// shear from the second face alone
    second: Force = "V_2";
    shear "V": Force = 0.75 * (first + second)
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<MomentRatio>(),
    Listed::of::<ShearRatio>(),
    Listed::of::<LimitGust>(),
    Listed::of::<CornerMoment>(),
    Listed::of::<CornerShear>(),
    Listed::of::<SquareCornerMoment>(),
    Listed::of::<SquareCornerShear>(),
];

/// The gust at which ratios are worked to find the limit gust; the result does not depend on it.
const REFERENCE_GUST: Velocity = mph(100.0);

/// A part of a fence that a post's flag is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PartKind {
    /// Bending of the post at grade.
    PostBending,
    /// Shear of the post at grade.
    PostShear,
    /// The post in the ground.
    Footing,
    /// The rails beside it.
    Rails,
    /// Ties and lacing beside it.
    Fastening,
}

impl PartKind {
    /// Whether it is the post itself or what it stands in, and not what hangs on it.
    #[must_use]
    pub const fn is_of_post(self) -> bool {
        matches!(self, Self::PostBending | Self::PostShear | Self::Footing)
    }

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::PostBending => "post bending",
            Self::PostShear => "post shear",
            Self::Footing => "footing",
            Self::Rails => "rails",
            Self::Fastening => "ties and lacing",
        }
    }
}

/// One part and what was found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// Which.
    pub kind: PartKind,
    /// Demand after load factors, at the design event.
    pub demand: Option<Value>,
    /// Capacity with its resistance factor.
    pub capacity: Option<Value>,
    /// Demand over capacity, unrounded.
    pub ratio: Option<f64>,
    /// The flag.
    pub flag: Flag,
    /// The rule of the capacity.
    pub rule: Option<Clause>,
    /// Why it was not checked.
    pub why: Option<&'static str>,
}

const NO_SPEED: &str = "no design wind speed is given";
const FOOTING: &str = "footings are not worked yet: ask how deep, how wide, in what soil";

/// What was found of one post.
#[derive(Debug, Clone, PartialEq)]
pub struct PostVerdict {
    /// The load at the design event, if there is a speed.
    pub design: Option<PostLoad>,
    /// The same with the cloth taken off.
    pub bare_design: Option<PostLoad>,
    /// The parts.
    pub parts: [Part; 5],
    /// The worst of the parts.
    pub flag: Flag,
    /// The worst of the parts that were checked; nothing if none was.
    pub flag_of_checked: Option<Flag>,
    /// The gust at which the first of the post's own checked parts reaches its limit. What holds the cloth never
    /// lowers nor lifts it.
    pub limit_gust: Velocity,
    /// The same with the cloth taken off.
    pub bare_limit_gust: Velocity,
    /// Base moment with the cloth over base moment without, in one gust.
    pub times_bare: f64,
    /// The load at the gust that ratios were worked at, for whoever compares.
    pub at_reference_gust: PostLoad,
}

impl PostVerdict {
    /// The largest ratio of the post's own checked parts; ties and lacing are told apart.
    #[must_use]
    pub fn ratio(&self) -> Option<f64> {
        self.own_parts().filter_map(|part| part.ratio).max_by(f64::total_cmp)
    }
    /// The parts that are the post itself and what it stands in.
    pub fn own_parts(&self) -> impl Iterator<Item = &Part> {
        self.parts.iter().filter(|part| part.kind.is_of_post())
    }
    /// Whether a part of the post was left unchecked, so that the limit gust is "at most".
    #[must_use]
    pub fn is_at_most(&self) -> bool {
        self.own_parts().any(|part| part.ratio.is_none())
    }
}

/// What was found of a run.
#[derive(Debug, Clone, PartialEq)]
pub struct RunVerdict {
    /// Post by post.
    pub posts: Vec<PostVerdict>,
    /// Bay by bay at the design event, if there is a speed.
    pub bays: Option<Vec<BayLoad>>,
    /// What holds the cloth, or why it is not worked.
    pub fastening: Result<FasteningVerdict, NotWorked>,
    /// Its rails.
    pub rails: RailsVerdict,
    /// Solidity of all layers, if there is cloth.
    pub solidity: Option<f64>,
    /// The worst of its posts.
    pub flag: Flag,
    /// The worst of what was checked.
    pub flag_of_checked: Option<Flag>,
    /// The least limit gust of its posts.
    pub limit_gust: Velocity,
    /// The same with the cloth taken off.
    pub bare_limit_gust: Velocity,
    /// The largest of its posts' moments with the cloth over without.
    pub times_bare: f64,
}

/// Why a run has no verdict.
#[derive(Debug, Clone, PartialEq)]
pub enum VerdictError {
    /// The wind code refuses.
    Wind {
        /// The run.
        run: String,
        /// Why.
        error: WindError,
    },
    /// A post has no strength.
    Post {
        /// The kind of post.
        kind: String,
        /// Why.
        error: PostError,
    },
}

impl fmt::Display for VerdictError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Wind { run, error } => write!(f, "run \"{run}\": {error}"),
            Self::Post { kind, error } => write!(f, "post \"{kind}\": {error}"),
        }
    }
}

impl std::error::Error for VerdictError {}

/// The loads on a run that a verdict is made of.
struct Worked {
    hung: RunLoads,
    bare: RunLoads,
    design: Option<RunLoads>,
    bare_design: Option<RunLoads>,
}

fn worked(fence: &Fence, run: usize, site: &Site) -> Result<Worked, VerdictError> {
    let this = &fence.runs[run];
    let loads = |dress, event| {
        run_loads(fence, run, dress, site, event)
            .map_err(|error| VerdictError::Wind { run: this.name.clone(), error })
    };
    let gust = Event::Gust(REFERENCE_GUST);
    let hung = loads(Dress::AsHung, gust)?;
    let dressed = this.screen.is_some();
    let bare = if dressed { loads(Dress::Bare, gust)? } else { hung.clone() };
    let (design, bare_design) = if site.wind_speed().is_some() {
        let design = loads(Dress::AsHung, Event::Design)?;
        let bare = if dressed { loads(Dress::Bare, Event::Design)? } else { design.clone() };
        (Some(design), Some(bare))
    } else {
        (None, None)
    };
    Ok(Worked { hung, bare, design, bare_design })
}

impl Worked {
    fn post(&self, at: usize) -> WorkedPost {
        let load = |loads: &Option<RunLoads>| loads.as_ref().map(|loads| loads.posts[at]);
        WorkedPost {
            hung: self.hung.posts[at],
            bare: self.bare.posts[at],
            design: load(&self.design),
            bare_design: load(&self.bare_design),
        }
    }
}

/// The loads on one post from one run.
#[derive(Clone, Copy)]
struct WorkedPost {
    hung: PostLoad,
    bare: PostLoad,
    design: Option<PostLoad>,
    bare_design: Option<PostLoad>,
}

/// What a post must carry, at the level its strength is held against: from its own run, and from the other where it
/// stands at a corner.
#[derive(Clone, Copy)]
struct Demand {
    moment: Moment,
    shear: Force,
}

impl Demand {
    /// The worst of each run alone and 0.75 of both at once.
    fn of(
        (own, other): (PostLoad, Option<PostLoad>),
        level: Level,
        strength: &PostStrength,
        ledger: &mut impl Ledger,
    ) -> Self {
        let (moment, shear) = (absolute(own.moment), absolute(own.shear));
        let both = other.map(|other| {
            let (second, second_shear) = (absolute(other.moment), absolute(other.shear));
            let (both, both_shear) = if strength.is_round {
                (
                    CornerMoment { first: moment, second }.work(ledger),
                    CornerShear { first: shear, second: second_shear }.work(ledger),
                )
            } else {
                (
                    SquareCornerMoment { first: moment, second }.work(ledger),
                    SquareCornerShear { first: shear, second: second_shear }.work(ledger),
                )
            };
            (largest([moment, second, both]), largest([shear, second_shear, both_shear]))
        });
        let whole = both.unwrap_or((moment, shear));
        let (moment, shear) = at_level(level, strength.format, whole, ledger);
        Self { moment, shear }
    }
}

fn largest<Q: Quantity>(all: [Q; 3]) -> Q {
    Q::from_si(all.iter().map(|one| one.si()).fold(0.0, f64::max))
}

/// What is found of one run of a fence; a corner post is judged with the loads of both of its runs.
///
/// # Errors
/// A [`VerdictError`] that names the run or the kind of post.
pub fn run_verdict(fence: &Fence, run: usize, site: &Site) -> Result<RunVerdict, VerdictError> {
    let this = &fence.runs[run];
    let own = worked(fence, run, site)?;
    let mut strengths: Vec<Option<PostStrength>> = vec![None; fence.kinds.len()];
    let fastening = fastening_verdict(fence, run, site)?;
    let rails = rails_verdict(fence, run, site)?;
    let mut posts = Vec::with_capacity(this.posts.len());
    for (at, post) in this.posts.iter().enumerate() {
        let strength = match strengths[post.kind] {
            Some(known) => known,
            None => {
                let found = strength(fence, post.kind, this, &mut Blank)?;
                *strengths[post.kind].insert(found)
            }
        };
        let other = match post.shared_with {
            Some(shared) => Some(worked(fence, shared.run, site)?.post(shared.post)),
            None => None,
        };
        let beside = [rails.part(at), fastening_part(&fastening, at)];
        posts.push(post_verdict(&strength, site.code().level(), own.post(at), other, beside));
    }
    Ok(run_of(this, posts, own.design.map(|design| design.bays), fastening, rails))
}

/// Ties, lacing and grommets in the two bays beside a post: the worst of them.
fn fastening_part(fastening: &Result<FasteningVerdict, NotWorked>, post: usize) -> Part {
    let unchecked = |why| unchecked(PartKind::Fastening, why);
    let found = match fastening {
        Ok(found) => found,
        Err(why) => return unchecked(why.why()),
    };
    let beside = post.saturating_sub(1)..(post + 1).min(found.bays.len());
    let mut beside = found.bays[beside].iter().flatten().peekable();
    if beside.peek().is_none() {
        return unchecked(NotWorked::NoCloth.why());
    }
    let worst = beside
        .filter_map(|bay| bay.held)
        .reduce(|one, other| if other.ratio > one.ratio { other } else { one });
    match worst {
        Some(Held { demand, capacity, ratio, .. }) => Part {
            kind: PartKind::Fastening,
            demand: Some(Value::of(demand)),
            capacity: Some(Value::of(capacity)),
            ratio: Some(ratio),
            flag: Flag::of(ratio),
            rule: Some(PULL),
            why: None,
        },
        None if found.first.is_some() => unchecked(NO_SPEED),
        None => unchecked(found.unknown.first().map_or(NO_SPEED, |part| part.ask())),
    }
}

fn unchecked(kind: PartKind, why: &'static str) -> Part {
    Part {
        kind,
        demand: None,
        capacity: None,
        ratio: None,
        flag: Flag::NotChecked,
        rule: None,
        why: Some(why),
    }
}

fn run_of(
    run: &Run,
    posts: Vec<PostVerdict>,
    bays: Option<Vec<BayLoad>>,
    fastening: Result<FasteningVerdict, NotWorked>,
    rails: RailsVerdict,
) -> RunVerdict {
    let least = |of: fn(&PostVerdict) -> Velocity| {
        posts.iter().map(of).min_by(|a, b| a.si().total_cmp(&b.si())).unwrap_or(REFERENCE_GUST)
    };
    RunVerdict {
        solidity: run.solidity(&mut Blank),
        flag: posts.iter().map(|post| post.flag).max().unwrap_or(Flag::NotChecked),
        flag_of_checked: posts.iter().filter_map(|post| post.flag_of_checked).max(),
        limit_gust: least(|post| post.limit_gust),
        bare_limit_gust: least(|post| post.bare_limit_gust),
        times_bare: posts.iter().map(|post| post.times_bare).max_by(f64::total_cmp).unwrap_or(1.0),
        posts,
        bays,
        fastening,
        rails,
    }
}

fn strength(
    fence: &Fence,
    kind: usize,
    run: &Run,
    ledger: &mut impl Ledger,
) -> Result<PostStrength, VerdictError> {
    let kind = &fence.kinds[kind];
    let told = |error| VerdictError::Post { kind: kind.name.clone(), error };
    kind.strength(run.height, ledger).map_err(told)
}

fn post_verdict(
    strength: &PostStrength,
    level: Level,
    own: WorkedPost,
    other: Option<WorkedPost>,
    [rails, cloth]: [Part; 2],
) -> PostVerdict {
    let WorkedPost { hung, bare, design, bare_design } = own;
    let demand = |own, of: fn(&WorkedPost) -> PostLoad| {
        Demand::of((own, other.as_ref().map(of)), level, strength, &mut Blank)
    };
    let at_design = design.map(|own| {
        let other = other.as_ref().and_then(|other| other.design);
        Demand::of((own, other), level, strength, &mut Blank)
    });
    let checked = |kind, demand: Option<Value>, capacity, ratio: Option<f64>, rule| Part {
        kind,
        demand,
        capacity: Some(capacity),
        ratio,
        flag: ratio.map_or(Flag::NotChecked, Flag::of),
        rule: Some(rule),
        why: if ratio.is_none() { Some(NO_SPEED) } else { None },
    };
    let at_design_ratios = at_design.map(|demand| ratios(demand, strength, &mut Blank));
    let parts = [
        checked(
            PartKind::PostBending,
            at_design.map(|demand| Value::of(demand.moment)),
            Value::of(strength.moment),
            at_design_ratios.map(|ratios| ratios.bending),
            strength.moment_clause,
        ),
        match strength.shear {
            Ok((shear, clause)) => checked(
                PartKind::PostShear,
                at_design.map(|demand| Value::of(demand.shear)),
                Value::of(shear),
                at_design_ratios.and_then(|ratios| ratios.shear),
                clause,
            ),
            Err(why) => unchecked(PartKind::PostShear, why),
        },
        unchecked(PartKind::Footing, FOOTING),
        rails,
        cloth,
    ];
    PostVerdict {
        design,
        bare_design,
        flag: parts.iter().map(|part| part.flag).max().unwrap_or(Flag::NotChecked),
        flag_of_checked: parts.iter().filter(|part| part.ratio.is_some()).map(|part| part.flag).max(),
        parts,
        limit_gust: limit_gust(demand(hung, |other| other.hung), strength, &mut Blank),
        bare_limit_gust: limit_gust(demand(bare, |other| other.bare), strength, &mut Blank),
        times_bare: (hung.moment / bare.moment).pure().abs(),
        at_reference_gust: hung,
    }
}

/// Demand over capacity of bending, and of shear where it has a rule.
#[derive(Clone, Copy)]
struct Ratios {
    bending: f64,
    shear: Option<f64>,
}

fn ratios(demand: Demand, strength: &PostStrength, ledger: &mut impl Ledger) -> Ratios {
    let bending = MomentRatio { demand: demand.moment, capacity: strength.moment }.work(ledger);
    let shear =
        strength.shear.ok().map(|(capacity, _)| ShearRatio { demand: demand.shear, capacity }.work(ledger));
    Ratios { bending, shear }
}

fn limit_gust(at_reference: Demand, strength: &PostStrength, ledger: &mut impl Ledger) -> Velocity {
    let Ratios { bending, shear } = ratios(at_reference, strength, ledger);
    let ratio = shear.map_or(bending, |shear| bending.max(shear));
    LimitGust { gust: REFERENCE_GUST, ratio }.work(ledger)
}

fn absolute<Q: Quantity>(quantity: Q) -> Q {
    Q::from_si(quantity.si().abs())
}

/// Writes down how one post is judged: its load in the governing case, its strength, ratio and limit gust.
///
/// # Errors
/// As for [`run_verdict`].
pub fn post_workings(
    fence: &Fence,
    run: usize,
    post: usize,
    site: &Site,
    ledger: &mut Vec<crate::workings::Entry>,
) -> Result<(), VerdictError> {
    let this = &fence.runs[run];
    let own = worked(fence, run, site)?.post(post);
    let shared = this.posts[post].shared_with;
    let other = match shared {
        Some(shared) => Some(worked(fence, shared.run, site)?.post(shared.post)),
        None => None,
    };
    let (kind, level) = (this.posts[post].kind, site.code().level());
    let corner = |ledger: &mut Vec<crate::workings::Entry>| {
        if let Some(shared) = shared {
            let name = &fence.runs[shared.run].name;
            heading(
                ledger,
                format!("Both faces of the corner with {name}: its own governing case, then both at once"),
            );
        }
    };
    if let Some(design) = own.design {
        heading(ledger, format!("Wind at the design event: {}", design.place));
        let wind = |error| VerdictError::Wind { run: this.name.clone(), error };
        crate::loads::post_workings(fence, run, post, design.case, site, Event::Design, ledger)
            .map_err(wind)?;
        corner(ledger);
        let strength = strength(fence, kind, this, &mut Blank)?;
        let demand = Demand::of((design, other.and_then(|other| other.design)), level, &strength, ledger);
        write_strength(fence, kind, this, ledger)?;
        heading(ledger, "Demand over capacity".to_owned());
        let _ = ratios(demand, &strength, ledger);
    } else {
        write_strength(fence, kind, this, ledger)?;
    }
    let gust = own.hung;
    heading(ledger, format!("Limit gust, from a 3-second gust taken as it is: {}", gust.place));
    let wind = |error| VerdictError::Wind { run: this.name.clone(), error };
    crate::loads::post_workings(fence, run, post, gust.case, site, Event::Gust(REFERENCE_GUST), ledger)
        .map_err(wind)?;
    corner(ledger);
    let strength = strength(fence, kind, this, &mut Blank)?;
    let demand = Demand::of((gust, other.map(|other| other.hung)), level, &strength, ledger);
    let _ = limit_gust(demand, &strength, ledger);
    Ok(())
}

fn write_strength(
    fence: &Fence,
    kind: usize,
    run: &Run,
    ledger: &mut Vec<crate::workings::Entry>,
) -> Result<(), VerdictError> {
    heading(ledger, format!("Strength of the post, \"{}\", at grade", fence.kinds[kind].name));
    strength(fence, kind, run, ledger).map(|_| ())
}

fn heading(ledger: &mut Vec<crate::workings::Entry>, text: String) {
    ledger.push(crate::workings::Entry::Heading(text));
}
