//! Ratio, flag, what governs, and the limit gust, post by post.

mod braces;
mod fastening;
mod footing;
mod frame;
mod rails;
mod sway;

pub use braces::{BraceFound, BraceOpen, BraceVerdict, PulledPost};
pub use fastening::{
    BayFastening, FasteningVerdict, Held, NotWorked, PULL, Pull, Then, after_the_first_tie,
    fastening_verdict, fastening_workings,
};
pub use footing::{Dug, FootingCheck, FootingVerdict, FootingWhy, Width, WidthIs, basis_of};
pub use frame::{
    AxialRatio, FrameOverHand, GuyVerdict, InOneWay, PostFrame, RunFrame, frame_workings, on_frame,
};
pub use rails::{
    HANGS_ON_WIRE, NO_WALL, RailCheck, RailDesign, RailsVerdict, SPLICED, rails_verdict, rails_workings,
};
pub use sway::{FrequencyRatio, Sway, SwayUnknown, WithAir, sway};

use crate::fence::{Fence, PostError, PostStrength, Run};
use crate::footing::FootingError;
use crate::footing::driven::BelowGrade;
use crate::loads::frame::FrameWhy;
use crate::loads::{BayLoad, Dress, PostLoad, RunLoads, at_level, run_loads};
use crate::numerics::root;
use crate::rule;
use crate::source::{Clause, OURS};
use crate::units::{Force, Frequency, Length, Moment, Pure, Quantity, Value, Velocity, mph};
use crate::wind::{Event, Level, Site, WindError};
use crate::workings::{Blank, Entry, Ledger, Listed};
use footing::Foot;
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
    Listed::of::<WithAir>(),
    Listed::of::<FrequencyRatio>(),
    Listed::of::<FrameOverHand>(),
    Listed::of::<AxialRatio>(),
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
    /// How fast the post sways in gusts.
    Sway,
    /// A back brace or guy that holds it; it has no row of its own among the parts.
    Guy,
}

impl PartKind {
    /// Whether it is the post itself or what it stands in, and not what hangs on it.
    #[must_use]
    pub const fn is_of_post(self) -> bool {
        matches!(self, Self::PostBending | Self::PostShear | Self::Sway | Self::Footing)
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
            Self::Sway => "sway in gusts",
            Self::Guy => "back brace or guy",
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
const DRIVEN: &str = "the post is driven, so its largest moment is below the ground, and the strength of the soil there is \
                      not known: ask a geotechnical engineer for S_u of clay, or for φ and γ of sand";
const DRIVEN_MORE: &str =
    "at the ground; the post is driven, and below the ground its moment is larger still";
const SLOW: &str = "the post may sway more slowly than once a second, where gusts count up to 1.6 times more: an engineer \
                    works its gust factor";
/// By which rule a post counts as rigid.
const SWAY: Clause = OURS.at("first frequency, at least: weights, section, softest foot, air");

/// What was found of one post.
#[derive(Debug, Clone, PartialEq)]
pub struct PostVerdict {
    /// The load at the design event, if there is a speed.
    pub design: Option<PostLoad>,
    /// The same with the cloth taken off.
    pub bare_design: Option<PostLoad>,
    /// The parts.
    pub parts: [Part; 6],
    /// The worst of the parts.
    pub flag: Flag,
    /// The worst of the parts that were checked; nothing if none was.
    pub flag_of_checked: Option<Flag>,
    /// What it stands in.
    pub footing: FootingVerdict,
    /// Of a driven post, its largest moment at the design wind or, without a speed, at the gust that ratios were worked
    /// at; or why it is not known. Nothing for a post in concrete.
    pub below_grade: Option<Result<BelowGrade, FootingError>>,
    /// The gust at which the first of the post's own checked parts reaches its limit. What holds the cloth never
    /// lowers nor lifts it.
    pub limit_gust: Velocity,
    /// The part that reaches its limit then.
    pub limited_by: PartKind,
    /// Whether a part of the post was left unchecked, so that the limit gust is "at most".
    pub limit_is_at_most: bool,
    /// The same with the cloth taken off.
    pub bare_limit_gust: Velocity,
    /// Base moment with the cloth over base moment without, in one gust.
    pub times_bare: f64,
    /// The load at the gust that ratios were worked at, for whoever compares.
    pub at_reference_gust: PostLoad,
    /// How fast it sways by itself, at least.
    pub sway: Result<Sway, SwayUnknown>,
    /// What it does on the frame, where that was asked and worked; then each part is the worse of frame and hand statics.
    pub frame: Option<PostFrame>,
    /// Whether the frame was asked and not worked, or not on soft feet, or something holds it whose footing is not
    /// checked, or a brace, beside whose pull along the fence the wind across it is not checked.
    pub frame_is_open: bool,
    /// The worst of the back braces, guys and braces that hold it and were checked, on the frame.
    pub guys_flag: Option<Flag>,
}

impl PostVerdict {
    /// The largest ratio of what the post's own checked parts carry; ties and lacing are told apart.
    #[must_use]
    pub fn ratio(&self) -> Option<f64> {
        self.load_bearing().filter_map(|part| part.ratio).max_by(f64::total_cmp)
    }

    /// The largest ratio of the post itself, whatever it stands in; nothing where its bending was left unchecked, unless
    /// another part is over.
    #[must_use]
    pub fn ratio_of_post(&self) -> Option<f64> {
        let parts = || self.load_bearing().filter(|part| part.kind != PartKind::Footing);
        let ratio = parts().filter_map(|part| part.ratio).max_by(f64::total_cmp)?;
        (ratio > 1.0 || !self.is_bending_unchecked()).then_some(ratio)
    }

    /// Whether its bending cannot be held against any wind.
    #[must_use]
    pub fn is_bending_unchecked(&self) -> bool {
        self.parts.iter().any(|part| part.kind == PartKind::PostBending && part.capacity.is_none())
    }

    /// The parts of the post itself that carry a load: all but its sway.
    pub fn load_bearing(&self) -> impl Iterator<Item = &Part> {
        self.own_parts().filter(|part| part.kind != PartKind::Sway)
    }

    /// The parts that are the post itself and what it stands in.
    pub fn own_parts(&self) -> impl Iterator<Item = &Part> {
        self.parts.iter().filter(|part| part.kind.is_of_post())
    }

    /// One of its parts.
    fn part(&self, kind: PartKind) -> Part {
        let found = self.parts.iter().find(|part| part.kind == kind);
        found.copied().unwrap_or_else(|| unchecked(kind, NO_SPEED))
    }

    /// Whether a part of the post was left unchecked, so that the limit gust is "at most".
    #[must_use]
    pub const fn is_at_most(&self) -> bool {
        self.limit_is_at_most
    }

    /// Why one of its parts was not checked, in full.
    #[must_use]
    pub fn why(&self, part: &Part) -> Option<String> {
        match (part.kind, &self.footing.checked, &self.below_grade) {
            (PartKind::Footing, Err(why), _) => Some(why.to_string()),
            (PartKind::PostBending, _, Some(Err(error))) if part.ratio.is_none() => {
                Some(format!("the post is driven, so its largest moment is below the ground: {error}"))
            }
            _ => part.why.map(str::to_owned),
        }
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
    /// How it was worked on the frame, or why not; nothing where that was not asked.
    pub frame: Option<Result<RunFrame, FrameWhy>>,
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
    let mut feet: Vec<((Option<usize>, usize), Foot)> = Vec::new();
    let level = site.code().level();
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
        let stands = (post.footing, post.kind);
        let foot = match feet.iter().position(|(known, _)| *known == stands) {
            Some(known) => &feet[known].1,
            None => {
                feet.push((stands, Foot::of(fence, post.footing, post.kind, this.height, level)));
                &feet[feet.len() - 1].1
            }
        };
        let beside = [rails.part(at), fastening_part(&fastening, at)];
        let standing = Standing { fence, strength: &strength, foot, level };
        let loads = own.post(at);
        let arm = arm(loads.hung);
        let sway = sway(fence, this, at, arm, site.code(), &mut Blank);
        posts.push(standing.verdict(loads, other, beside, sway));
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
        frame: None,
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

/// A post with what it can carry and what it stands in.
struct Standing<'f> {
    fence: &'f Fence,
    strength: &'f PostStrength,
    foot: &'f Foot,
    level: Level,
}

impl Standing<'_> {
    fn demand(&self, own: PostLoad, other: Option<PostLoad>, ledger: &mut impl Ledger) -> Demand {
        Demand::of((own, other), self.level, self.strength, ledger)
    }

    fn below_grade(
        &self,
        demand: Demand,
        ledger: &mut impl Ledger,
    ) -> Option<Result<BelowGrade, FootingError>> {
        self.foot.below_grade(self.fence, (demand.shear, demand.moment), ledger)
    }

    fn verdict(
        &self,
        own: WorkedPost,
        other: Option<WorkedPost>,
        [rails, cloth]: [Part; 2],
        sway: Result<Sway, SwayUnknown>,
    ) -> PostVerdict {
        let strength = self.strength;
        let WorkedPost { hung, bare, design, bare_design } = own;
        let both = |own: PostLoad, of: fn(&WorkedPost) -> PostLoad| (own, other.as_ref().map(of));
        let (at_hung, at_bare) = (both(hung, |other| other.hung), both(bare, |other| other.bare));
        let at_design = design.map(|own| (own, other.as_ref().and_then(|other| other.design)));
        let footing = self.foot.verdict(at_design, at_hung, at_bare);
        let demand = at_design.map(|(own, other)| self.demand(own, other, &mut Blank));
        let (hung_demand, bare_demand) =
            (self.demand(at_hung.0, at_hung.1, &mut Blank), self.demand(at_bare.0, at_bare.1, &mut Blank));
        let below_grade = self.below_grade(demand.unwrap_or(hung_demand), &mut Blank);
        let parts = [
            self.bending(demand, below_grade.as_ref()),
            match strength.shear {
                Ok((shear, clause)) => checked(
                    PartKind::PostShear,
                    demand.map(|demand| Value::of(demand.shear)),
                    Value::of(shear),
                    demand.and_then(|demand| ratios(demand, strength, &mut Blank).shear),
                    clause,
                ),
                Err(why) => unchecked(PartKind::PostShear, why),
            },
            footing_part(&footing),
            rails,
            cloth,
            sway_part(sway),
        ];
        let of_post = || parts.iter().filter(|part| part.kind.is_of_post());
        let unknown_below = matches!(below_grade, Some(Err(_)));
        let limit_is_at_most = unknown_below || of_post().any(|part| part.capacity.is_none());
        let limits = |demand: Demand, footing: Option<f64>| {
            self.limits(demand, footing, &mut Blank)
                .reduce(|one, other| if other.1 > one.1 { other } else { one })
        };
        let (limited_by, ratio) = limits(hung_demand, footing.at_gust.map(|(hung, _)| hung))
            .unwrap_or((PartKind::PostBending, 0.0));
        let bare_ratio =
            limits(bare_demand, footing.at_gust.map(|(_, bare)| bare)).map_or(0.0, |(_, ratio)| ratio);
        let gust = |ratio| LimitGust { gust: REFERENCE_GUST, ratio }.work(&mut Blank);
        PostVerdict {
            design,
            bare_design,
            flag: parts.iter().map(|part| part.flag).max().unwrap_or(Flag::NotChecked),
            flag_of_checked: parts.iter().filter(|part| part.ratio.is_some()).map(|part| part.flag).max(),
            parts,
            footing,
            below_grade,
            limit_gust: gust(ratio),
            limited_by,
            limit_is_at_most,
            bare_limit_gust: gust(bare_ratio),
            times_bare: (hung.moment / bare.moment).pure().abs(),
            at_reference_gust: hung,
            sway,
            frame: None,
            frame_is_open: false,
            guys_flag: None,
        }
    }

    /// Bending at grade, or below it where the post is driven.
    fn bending(&self, demand: Option<Demand>, below: Option<&Result<BelowGrade, FootingError>>) -> Part {
        let of = |moment: Option<Moment>| {
            let ratio = |demand| MomentRatio { demand, capacity: self.strength.moment }.work(&mut Blank);
            checked(
                PartKind::PostBending,
                moment.map(Value::of),
                Value::of(self.strength.moment),
                moment.map(ratio),
                self.strength.moment_clause,
            )
        };
        let at_grade = of(demand.map(|demand| demand.moment));
        match below {
            None => at_grade,
            Some(Ok(below)) => of(demand.map(|_| below.largest)),
            // What is over at the ground is over below it.
            Some(Err(_)) if at_grade.flag == Flag::Over => Part { why: Some(DRIVEN_MORE), ..at_grade },
            Some(Err(_)) => unchecked(PartKind::PostBending, DRIVEN),
        }
    }

    /// Each of the post's own parts with the ratio that says in which gust it is at its limit, from a demand in the gust
    /// that ratios are worked at.
    fn limits(
        &self,
        demand: Demand,
        footing: Option<f64>,
        ledger: &mut impl Ledger,
    ) -> impl Iterator<Item = (PartKind, f64)> {
        let Ratios { bending, shear } = ratios(demand, self.strength, ledger);
        let bending = self.ratio_below_grade(demand, ledger).unwrap_or(bending);
        [(PartKind::PostBending, Some(bending)), (PartKind::PostShear, shear), (PartKind::Footing, footing)]
            .into_iter()
            .filter_map(|(kind, ratio)| Some((kind, ratio?)))
    }

    /// Of a driven post, one over the growth of its load that brings the largest moment to its strength: that moment
    /// grows faster than the load.
    fn ratio_below_grade(&self, demand: Demand, ledger: &mut impl Ledger) -> Option<f64> {
        let largest = |times: f64| -> Option<Moment> {
            let grown = Demand { moment: demand.moment * times, shear: demand.shear * times };
            self.below_grade(grown, &mut Blank)?.ok().map(|below| below.largest)
        };
        largest(1.0)?;
        let capacity = self.strength.moment;
        let off = |times: f64| largest(times).map_or(f64::NAN, |moment| (moment / capacity).pure() - 1.0);
        // The moment at grade alone is at the strength there, so below grade it is past it.
        let most = (capacity / demand.moment).pure();
        let found = root(off, most * 1e-9, most)?;
        ledger.write(|| Entry::Solved {
            symbol: "ratio",
            method: "one over the growth of the load that brings the largest moment below the ground to φM_n",
            rounds: found.rounds,
            residual: off(found.at).abs(),
        });
        Some(1.0 / found.at)
    }
}

fn checked(kind: PartKind, demand: Option<Value>, capacity: Value, ratio: Option<f64>, rule: Clause) -> Part {
    Part {
        kind,
        demand,
        capacity: Some(capacity),
        ratio,
        flag: ratio.map_or(Flag::NotChecked, Flag::of),
        rule: Some(rule),
        why: if ratio.is_none() { Some(NO_SPEED) } else { None },
    }
}

/// The height over the foot at which a load acts.
fn arm(load: PostLoad) -> Length {
    absolute(load.moment) / absolute(load.shear)
}

/// How fast a post sways, as one of its parts: rigid, or not checked.
fn sway_part(sway: Result<Sway, SwayUnknown>) -> Part {
    let slow =
        |frequency: Frequency| Part { demand: Some(Value::of(frequency)), ..unchecked(PartKind::Sway, SLOW) };
    match sway {
        Ok(Sway { soft: Ok(frequency), rigid_from, .. }) if sway.is_ok_and(|sway| sway.is_rigid()) => Part {
            kind: PartKind::Sway,
            demand: Some(Value::of(rigid_from)),
            capacity: Some(Value::of(frequency)),
            ratio: Some(FrequencyRatio { least: rigid_from, frequency }.work(&mut Blank)),
            flag: Flag::Within,
            rule: Some(SWAY),
            why: None,
        },
        Ok(Sway { soft: Ok(_), rigid_from, .. }) => slow(rigid_from),
        Ok(Sway { clamped, rigid_from, .. }) if clamped < rigid_from => slow(rigid_from),
        Ok(Sway { soft: Err(why), .. }) | Err(why) => unchecked(PartKind::Sway, why.why()),
    }
}

/// What a post stands in, as one of its parts.
fn footing_part(footing: &FootingVerdict) -> Part {
    let (kind, rule) = (PartKind::Footing, footing.method.clause());
    match (&footing.checked, footing.capacity_at_gust) {
        (Ok(FootingCheck { demand, capacity, ratio }), _) => {
            checked(kind, Some(Value::of(demand.force)), Value::of(*capacity), Some(*ratio), rule)
        }
        (Err(FootingWhy::NoSpeed), Some(capacity)) => checked(kind, None, Value::of(capacity), None, rule),
        (Err(why), _) => unchecked(kind, why.short()),
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

impl Standing<'_> {
    /// Writes down the largest moment of a driven post; nothing for a post in concrete, or where it is not known.
    fn write_below_grade(&self, demand: Demand, ledger: &mut Vec<Entry>) -> Option<Moment> {
        match self.below_grade(demand, &mut Blank)? {
            Ok(_) => {
                heading(ledger, "Largest moment of the driven post, below the ground".to_owned());
                self.below_grade(demand, ledger)?.ok().map(|below| below.largest)
            }
            Err(error) => {
                heading(
                    ledger,
                    format!("The post is driven; its moment below the ground is not checked: {error}"),
                );
                None
            }
        }
    }
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
    ledger: &mut Vec<Entry>,
) -> Result<(), VerdictError> {
    let this = &fence.runs[run];
    let own = worked(fence, run, site)?.post(post);
    let shared = this.posts[post].shared_with;
    let other = match shared {
        Some(shared) => Some(worked(fence, shared.run, site)?.post(shared.post)),
        None => None,
    };
    let (kind, level) = (this.posts[post].kind, site.code().level());
    let foot = Foot::of(fence, this.posts[post].footing, kind, this.height, level);
    let corner = |ledger: &mut Vec<Entry>| {
        if let Some(shared) = shared {
            let name = &fence.runs[shared.run].name;
            heading(
                ledger,
                format!("Both faces of the corner with {name}: its own governing case, then both at once"),
            );
        }
    };
    heading(ledger, "How fast the post sways by itself, at least".to_owned());
    match sway(fence, this, post, arm(own.hung), site.code(), ledger) {
        Ok(Sway { soft: Ok(_), .. }) => {}
        Ok(Sway { soft: Err(why), .. }) => {
            heading(ledger, format!("Above, the foot does not give. Sway is not checked: {}", why.why()));
        }
        Err(why) => heading(ledger, format!("Sway is not checked: {}", why.why())),
    }
    if let Some(design) = own.design {
        heading(ledger, format!("Wind at the design event: {}", design.place));
        let wind = |error| VerdictError::Wind { run: this.name.clone(), error };
        crate::loads::post_workings(fence, run, post, design.case, site, Event::Design, ledger)
            .map_err(wind)?;
        corner(ledger);
        let strength = strength(fence, kind, this, &mut Blank)?;
        let standing = Standing { fence, strength: &strength, foot: &foot, level };
        let there = other.and_then(|other| other.design);
        let demand = standing.demand(design, there, ledger);
        let demand = match standing.write_below_grade(demand, ledger) {
            Some(moment) => Demand { moment, ..demand },
            None => demand,
        };
        write_strength(fence, kind, this, ledger)?;
        heading(ledger, "Demand over capacity".to_owned());
        let _ = ratios(demand, &strength, ledger);
        heading(ledger, foot.heading());
        if let Err(why) = foot.check(design, there, ledger) {
            heading(ledger, format!("The footing is not checked: {why}"));
        }
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
    let standing = Standing { fence, strength: &strength, foot: &foot, level };
    let there = other.map(|other| other.hung);
    let demand = standing.demand(gust, there, ledger);
    let mut footing = None;
    if foot.check(gust, there, &mut Blank).is_ok() {
        heading(ledger, format!("{}, in that gust", foot.heading()));
        footing = foot.check(gust, there, ledger).ok().map(|found| found.ratio);
    }
    heading(ledger, "The first of its parts to reach its limit".to_owned());
    let ratio = standing.limits(demand, footing, ledger).map(|(_, ratio)| ratio).fold(0.0, f64::max);
    let _ = LimitGust { gust: REFERENCE_GUST, ratio }.work(ledger);
    Ok(())
}

fn write_strength(
    fence: &Fence,
    kind: usize,
    run: &Run,
    ledger: &mut Vec<Entry>,
) -> Result<(), VerdictError> {
    heading(ledger, format!("Strength of the post, \"{}\", at grade", fence.kinds[kind].name));
    strength(fence, kind, run, ledger).map(|_| ())
}

fn heading(ledger: &mut Vec<Entry>, text: String) {
    ledger.push(Entry::Heading(text));
}
