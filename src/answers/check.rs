//! Does this fence carry this cloth, and up to which gust?

use super::levers::{Pulled, levers};
use super::often::{Often, often};
use super::winds::{Winds, winds};
use crate::caution::Remark;
use crate::fastening::wire::OWN_TIES;
use crate::fence::{Run, Screen, TiedTo, Windows};
use crate::footing::Method;
use crate::loads::{Dress, run_loads};
use crate::screen::{WindowShare, WindowedSolidity};
use crate::survey::{Extreme, Reading, Settled, Survey};
use crate::units::{Area, Length, LineLoad, Pure, Quantity, Velocity, inches, mph};
use crate::verdict::{
    Flag, HANGS_ON_WIRE, PostVerdict, RunVerdict, VerdictError, after_the_first_tie, basis_of,
    fastening_workings, frame_workings, on_frame, post_workings, rails_workings, run_verdict,
};
use crate::wind::{Case, Event, Panel};
use crate::workings::{Blank, Entry};
use std::fmt;

/// The answer to a survey.
#[derive(Debug, Clone)]
pub struct Check {
    /// What was asked.
    pub survey: Survey,
    /// Everything at its worst end.
    pub settled: Settled,
    /// Run by run.
    pub runs: Vec<RunAnswer>,
    /// The worst of the runs.
    pub flag: Flag,
    /// The worst of what was checked.
    pub flag_of_checked: Option<Flag>,
    /// What a reader must know.
    pub remarks: Vec<Remark>,
    /// What to measure next, the most telling first.
    pub measure_next: Vec<MeasureNext>,
    /// What helps and what does not, run by run and by hand statics; nothing for a bare run.
    pub levers: Vec<Option<Vec<Pulled>>>,
    /// Whether posts and rails were also worked as one frame.
    pub by_frame: bool,
}

/// Something not known, and what knowing it could change.
#[derive(Debug, Clone, PartialEq)]
pub struct MeasureNext {
    /// Where it stands in the survey.
    pub key: String,
    /// What to measure.
    pub what: String,
    /// How much the least limit gust of a run could rise if it turns out at its best.
    pub gain: Velocity,
    /// The run that gains most; nothing if none does.
    pub run: Option<String>,
}

/// The answer for one run.
#[derive(Debug, Clone)]
pub struct RunAnswer {
    /// At the worst end of what is not known.
    pub worst: RunVerdict,
    /// At the best end, where anything is open.
    pub best: Option<RunVerdict>,
    /// Its flag over both ends.
    pub flag: Flag,
    /// The same over what was checked.
    pub flag_of_checked: Option<Flag>,
    /// Wind from either side of the cloth, and who goes first; nothing for a bare run.
    pub winds: Option<Winds>,
    /// Posts within three cloth heights of an end of the cloth.
    pub near_ends: Option<Group>,
    /// The other posts under cloth.
    pub inside: Option<Group>,
    /// Posts without cloth beside them.
    pub bare: Option<Group>,
    /// Corner posts without cloth on this side that carry the cloth of the other side.
    pub corners: Option<Group>,
}

impl RunAnswer {
    /// The flag of what was checked, leaving out corner posts that carry the cloth of another run: those are told
    /// with that run.
    #[must_use]
    pub fn own_flag_of_checked(&self) -> Option<Flag> {
        let groups = [&self.near_ends, &self.inside, &self.bare];
        groups.into_iter().flatten().filter_map(|group| group.flag_of_checked).max()
    }

    /// The least gust at which something but the run's own posts and their footings reaches its limit: a rail, what holds
    /// the cloth, a back brace or guy, a corner post with the cloth of the other side.
    #[must_use]
    pub fn other_limit_gust(&self) -> Option<Velocity> {
        let rail = self.worst.rails.first().and_then(|rail| rail.limit_gust);
        let fastening = self.winds.as_ref().and_then(|winds| winds.fastening).map(|(low, _)| low);
        let corner = self.corners.as_ref().map(|corners| corners.limit_gust);
        let guys = self.worst.frame.iter().flatten().flat_map(|frame| &frame.guys);
        let guys = guys.filter_map(|guy| guy.limit_gust);
        rail.into_iter()
            .chain(fastening)
            .chain(corner)
            .chain(guys)
            .min_by(|one, other| one.si().total_cmp(&other.si()))
    }

    /// The largest ratio at the design wind, leaving out the same corner posts.
    #[must_use]
    pub fn own_ratio(&self) -> Option<f64> {
        let groups = [&self.near_ends, &self.inside, &self.bare];
        groups.into_iter().flatten().filter_map(|group| group.ratio).max_by(f64::total_cmp)
    }
}

/// Posts that are told together.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// By index.
    pub posts: Vec<usize>,
    /// The least limit gust among them.
    pub limit_gust: Velocity,
    /// The same at the best end.
    pub limit_gust_best: Option<Velocity>,
    /// The same without cloth.
    pub bare_limit_gust: Velocity,
    /// Without cloth at the best end.
    pub bare_limit_gust_best: Option<Velocity>,
    /// The largest ratio among them at the design wind.
    pub ratio: Option<f64>,
    /// The same at the best end.
    pub ratio_best: Option<f64>,
    /// The worst flag of the posts' own checked parts, over both ends; what holds the cloth is told apart.
    pub flag_of_checked: Option<Flag>,
    /// How often its limit gust comes.
    pub often: Often,
    /// How often its limit gust comes without cloth.
    pub bare_often: Often,
}

/// Why there is no answer.
#[derive(Debug, Clone, PartialEq)]
pub enum CheckError {
    /// A run has no verdict.
    Verdict(VerdictError),
    /// The post asked for is not there.
    NoSuchPost {
        /// What was asked.
        asked: String,
        /// What there is.
        there: Vec<String>,
    },
}

impl fmt::Display for CheckError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Verdict(error) => error.fmt(f),
            Self::NoSuchPost { asked, there } => {
                write!(f, "there is no post \"{asked}\": ask for RUN/NUMBER, as in {}", there.join(", "))
            }
        }
    }
}

impl std::error::Error for CheckError {}

impl From<VerdictError> for CheckError {
    fn from(error: VerdictError) -> Self {
        Self::Verdict(error)
    }
}

/// End zones reach three heights of the cloth from its ends before they settle.
const NEAR_END: f64 = 3.0;

/// Answers a survey by hand statics.
///
/// # Errors
/// If a run cannot be worked; see [`CheckError`].
pub fn check(survey: Survey) -> Result<Check, CheckError> {
    checked(survey, false)
}

/// Answers a survey by hand statics and on the frame: of both the worse counts.
///
/// # Errors
/// As for [`check`]; a run that cannot be worked on the frame is told so in its verdict.
pub fn check_on_frame(survey: Survey) -> Result<Check, CheckError> {
    checked(survey, true)
}

fn checked(survey: Survey, by_frame: bool) -> Result<Check, CheckError> {
    let settled = survey.at_worst();
    let best = if survey.open_keys().is_empty() { None } else { Some(survey.at_best()) };
    let by_hand = |settled: &Settled| -> Result<Vec<RunVerdict>, VerdictError> {
        (0..settled.fence.runs.len()).map(|run| run_verdict(&settled.fence, run, &settled.site)).collect()
    };
    let hand = by_hand(&settled)?;
    let measure_next = measure_next(&survey, &hand)?;
    let pull = |(at, run): (usize, &RunVerdict)| {
        let fence = &settled.fence;
        fence.runs[at].screen.as_ref().map(|_| levers(fence, at, &settled.site, run)).transpose()
    };
    let levers = hand.iter().enumerate().map(pull).collect::<Result<_, _>>()?;
    let counted = |settled: &Settled, hand: Vec<RunVerdict>| {
        if by_frame { on_frame(&settled.fence, &settled.site, hand) } else { Ok(hand) }
    };
    let worst = counted(&settled, hand)?;
    let mut best = match &best {
        Some(best) => counted(best, by_hand(best)?)?.into_iter().map(Some).collect(),
        None => vec![None; worst.len()],
    };
    let mut runs = Vec::new();
    for (run, worst) in worst.into_iter().enumerate() {
        let best = best[run].take();
        let then = after_the_first_tie(&settled.fence, run, &settled.site)?;
        let winds = winds(&survey, run, &worst, best.as_ref(), then);
        runs.push(run_answer(&survey, &settled.fence.runs, run, (worst, best), winds));
    }
    let mut remarks = survey.remarks.clone();
    remarks.extend(remarks_of(&settled, &runs));
    let has_rails = |run: &Run| run.rails.top.is_some() || run.rails.middle.is_some();
    if !by_frame && settled.fence.runs.iter().any(has_rails) {
        remarks.push(Remark::HandStatics);
    }
    if !by_frame && settled.fence.runs.iter().any(|run| !run.guys.is_empty()) {
        remarks.push(Remark::GuysNotCounted);
    }
    Ok(Check {
        flag: runs.iter().map(|run| run.flag).max().unwrap_or(Flag::NotChecked),
        flag_of_checked: runs.iter().filter_map(|run| run.flag_of_checked).max(),
        survey,
        settled,
        runs,
        remarks,
        measure_next,
        levers,
        by_frame,
    })
}

/// The flag of a post over both ends.
#[must_use]
pub(crate) fn flag_over_both(worst: &PostVerdict, best: Option<&PostVerdict>) -> (Flag, Option<Flag>) {
    let Some(best) = best else { return (worst.flag, worst.flag_of_checked) };
    let parts = worst.parts.iter().zip(&best.parts);
    let flags = parts.map(|(worst, best)| (Flag::of_both_ends(worst.flag, best.flag), worst.ratio.is_some()));
    let of_checked = flags.clone().filter(|(_, checked)| *checked).map(|(flag, _)| flag).max();
    let open = worst.frame_is_open.then_some(Flag::NotChecked);
    let of_guys = match (worst.guys_flag, best.guys_flag) {
        (Some(worst), Some(best)) => Some(Flag::of_both_ends(worst, best)),
        (one, other) => one.or(other),
    };
    let all = flags.map(|(flag, _)| flag).chain(open).chain(of_guys).max();
    (all.unwrap_or(worst.flag), of_checked.max(of_guys))
}

/// The flag of a post's own checked parts over both ends; ties and lacing are told apart.
#[must_use]
pub(crate) fn own_flag_over_both(worst: &PostVerdict, best: Option<&PostVerdict>) -> Option<Flag> {
    let flag = |post: &PostVerdict, kind| {
        post.own_parts().find(|part| part.kind == kind && part.ratio.is_some()).map(|part| part.flag)
    };
    let kinds = worst.own_parts().map(|part| part.kind);
    let flags = kinds.filter_map(|kind| {
        let worst = flag(worst, kind)?;
        Some(best.and_then(|best| flag(best, kind)).map_or(worst, |best| Flag::of_both_ends(worst, best)))
    });
    flags.max()
}

fn run_answer(
    survey: &Survey,
    runs: &[Run],
    at: usize,
    (worst, best): (RunVerdict, Option<RunVerdict>),
    winds: Option<Winds>,
) -> RunAnswer {
    let run = &runs[at];
    let flags: Vec<_> = worst
        .posts
        .iter()
        .enumerate()
        .map(|(at, post)| flag_over_both(post, best.as_ref().map(|best| &best.posts[at])))
        .collect();
    let (mut near, mut inside, mut bare, mut corners) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for (at, post) in run.posts.iter().enumerate() {
        match (run.screened(), &run.screen) {
            (Some((from, to)), Some(screen)) if post.at >= from && post.at <= to => {
                let reach = (screen.top - screen.bottom) * NEAR_END;
                let end = post.at - from < reach || to - post.at < reach;
                if end { near.push(at) } else { inside.push(at) }
            }
            _ if post.shared_with.is_some_and(|shared| runs[shared.run].screen.is_some()) => corners.push(at),
            _ => bare.push(at),
        }
    }
    let own =
        |post: &usize| own_flag_over_both(&worst.posts[*post], best.as_ref().map(|best| &best.posts[*post]));
    let group = |posts: Vec<usize>| {
        let of_checked = posts.iter().filter_map(own).max();
        group(survey, posts, of_checked, &worst, best.as_ref())
    };
    RunAnswer {
        flag: flags.iter().map(|(flag, _)| *flag).max().unwrap_or(Flag::NotChecked),
        flag_of_checked: flags.iter().filter_map(|(_, checked)| *checked).max(),
        near_ends: group(near),
        inside: group(inside),
        bare: group(bare),
        corners: group(corners),
        winds,
        worst,
        best,
    }
}

fn group(
    survey: &Survey,
    posts: Vec<usize>,
    flag_of_checked: Option<Flag>,
    worst: &RunVerdict,
    best: Option<&RunVerdict>,
) -> Option<Group> {
    let gust = |verdict: &RunVerdict, of: fn(&PostVerdict) -> Velocity| {
        posts.iter().map(|post| of(&verdict.posts[*post])).min_by(|a, b| a.si().total_cmp(&b.si()))
    };
    let ratio = |verdict: &RunVerdict| {
        posts.iter().filter_map(|post| verdict.posts[*post].ratio()).max_by(f64::total_cmp)
    };
    let limit_gust = gust(worst, |post| post.limit_gust)?;
    let bare_limit_gust = gust(worst, |post| post.bare_limit_gust)?;
    Some(Group {
        flag_of_checked,
        often: often(survey, limit_gust),
        bare_often: often(survey, bare_limit_gust),
        limit_gust,
        limit_gust_best: best.and_then(|best| gust(best, |post| post.limit_gust)),
        bare_limit_gust,
        bare_limit_gust_best: best.and_then(|best| gust(best, |post| post.bare_limit_gust)),
        ratio: ratio(worst),
        ratio_best: best.and_then(ratio),
        posts,
    })
}

/// What to measure next: each open value alone at its best, the rest at the worst.
fn measure_next(survey: &Survey, hand: &[RunVerdict]) -> Result<Vec<MeasureNext>, CheckError> {
    let mut found = Vec::new();
    for open in survey.open_keys() {
        let settled = survey.settle(&|key| if key == open.key { Extreme::Best } else { Extreme::Worst });
        let (mut gain, mut gains) = (mph(0.0), None);
        for (run, worst) in hand.iter().enumerate() {
            let known = run_verdict(&settled.fence, run, &settled.site)?;
            let of_rails = |verdict: &RunVerdict| verdict.rails.first().and_then(|first| first.limit_gust);
            let rise = if survey.is_of_rail(&open.key) {
                of_rails(&known).zip(of_rails(worst)).map_or(gain, |(known, worst)| known - worst)
            } else {
                known.limit_gust - worst.limit_gust
            };
            if rise > gain {
                gain = rise;
                gains = Some(settled.fence.runs[run].name.clone());
            }
        }
        // A rail behind another rail changes nothing.
        if gains.is_none() && survey.is_of_rail(&open.key) {
            continue;
        }
        found.push(MeasureNext { key: open.key, what: open.measure_next, gain, run: gains });
    }
    found.sort_by(|one, other| other.gain.si().total_cmp(&one.gain.si()));
    Ok(found)
}

fn remarks_of(settled: &Settled, runs: &[RunAnswer]) -> Vec<Remark> {
    let mut remarks = Vec::new();
    let tops = settled.fence.runs.iter().map(|run| run.top_above_ground().si());
    let top = Length::from_si(tops.fold(0.0, f64::max));
    if let Some(hill) = settled.site.on_hill(top) {
        remarks.push(match hill.none {
            Some(because) => Remark::HillWithoutFactor { because },
            None => Remark::OnHill {
                top,
                factor: hill.factor,
                clause: hill.clause.to_string(),
                taken: hill.taken,
            },
        });
    }
    let (mut case_b, mut middle, mut below, mut least) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for (at, run) in settled.fence.runs.iter().enumerate() {
        let name = || run.name.clone();
        if runs[at]
            .worst
            .posts
            .iter()
            .any(|post| post.ratio().is_some_and(|ratio| (0.85..=1.0).contains(&ratio)))
        {
            below.push(name());
        }
        if runs[at].worst.posts.iter().any(|post| post.design.is_some_and(|load| load.case == Case::Least)) {
            least.push(name());
        }
        let Some(screen) = &run.screen else { continue };
        remarks.extend(held_by(&run.name, screen, &runs[at].worst));
        if let Some(remark) = gap_below(settled, at, screen, &runs[at]) {
            remarks.push(remark);
        }
        if let Some(remark) = windows(settled, at, screen) {
            remarks.push(remark);
        }
        let (Some((from, to)), Some(solidity)) = (run.screened(), runs[at].worst.solidity) else { continue };
        if ((to - from) / (screen.top - screen.bottom)).pure() >= 2.0 && solidity >= 0.30 {
            case_b.push(name());
        }
        if (0.30..0.70).contains(&solidity) {
            middle.push(name());
        }
    }
    let checked =
        settled.fence.runs.iter().zip(runs).filter(|(_, answer)| answer.worst.rails.first().is_some());
    let checked = checked.map(|(run, _)| run.name.clone()).collect();
    let mut all = |names: Vec<String>, remark: fn(String) -> Remark| {
        if !names.is_empty() {
            remarks.push(remark(names.join(", ")));
        }
    };
    all(checked, |runs| Remark::Rails { runs });
    all(below, |run| Remark::LimitBelowDesign { run });
    if !least.is_empty() {
        let clause = settled.site.least_clause().to_string();
        remarks.push(Remark::LeastPressure { run: least.join(", "), clause });
    }
    remarks.extend(of_footings(settled, runs));
    let mut all = |names: Vec<String>, remark: fn(String) -> Remark| {
        if !names.is_empty() {
            remarks.push(remark(names.join(", ")));
        }
    };
    all(middle, |run| Remark::MiddleSolidity { run });
    all(case_b, |run| Remark::CaseB { run });
    remarks
}

/// What a reader must know of the footings that posts stand in.
fn of_footings(settled: &Settled, runs: &[RunAnswer]) -> Vec<Remark> {
    let mut remarks = Vec::new();
    let fence = &settled.fence;
    let used = |at: usize| fence.runs.iter().flat_map(|run| &run.posts).any(|post| post.footing == Some(at));
    for (at, footing) in fence.footings.iter().enumerate().filter(|(at, _)| used(*at)) {
        let name = fence.footings[at].name.clone();
        if footing.is_held {
            remarks.push(Remark::FootingHeld { footing: name.clone() });
        }
        if footing.is_isolated {
            remarks.push(Remark::FootingIsolated { footing: name });
        }
    }
    let mut methods: Vec<Method> = Vec::new();
    for footing in runs.iter().flat_map(|run| &run.worst.posts).map(|post| &post.footing) {
        if footing.is_worked() && !methods.contains(&footing.method) {
            methods.push(footing.method);
        }
    }
    let basis = basis_of(settled.site.code().level());
    for method in methods.iter().filter(|method| !method.belongs_with(basis)) {
        remarks.push(Remark::FootingMethod { method: method.name(), level: basis.words() });
    }
    if !methods.is_empty() {
        let names: Vec<&str> = methods.iter().map(|method| method.name()).collect();
        remarks.push(Remark::FootingsChecked { methods: names.join("; ") });
    }
    remarks
}

/// What a reader must know of the way cloth is held.
fn held_by(run: &str, screen: &Screen, worst: &RunVerdict) -> Vec<Remark> {
    let mut remarks = Vec::new();
    let no_rail: Vec<&str> =
        worst.rails.not_checked().into_iter().filter(|why| HANGS_ON_WIRE.contains(why)).collect();
    if !no_rail.is_empty() {
        remarks.push(Remark::HangsOnWire { run: run.to_owned(), why: no_rail });
    }
    let found = worst.fastening.as_ref().ok();
    let pulls = found.into_iter().flat_map(|found| found.bays.iter().flatten().filter_map(|bay| bay.design));
    let largest = pulls.map(|pull| pull.force).reduce(|one, other| if other > one { other } else { one });
    if let Some(fastening) = screen.fastening.as_ref().filter(|held| held.to == TiedTo::ChainLink) {
        let load = largest.zip(fastening.spacing).map(|(pull, spacing)| pull / spacing);
        let load = load.map(|load| (LineLoad::from_si(load.value), load * OWN_TIES.value));
        remarks.push(Remark::TiedToChainLink { run: run.to_owned(), load });
    }
    if let Some(pull) = found.and_then(|found| found.in_plane) {
        remarks.push(Remark::InPlane { run: run.to_owned(), pull });
    }
    remarks
}

/// Cloth hung with a gap below, against the same cloth down to the ground.
fn gap_below(settled: &Settled, at: usize, screen: &Screen, answer: &RunAnswer) -> Option<Remark> {
    if screen.bottom.si() <= 0.0 {
        return None;
    }
    let mut full = settled.fence.clone();
    full.runs[at].screen = Some(Screen { bottom: Length::from_si(0.0), ..screen.clone() });
    let gust = Event::Gust(mph(100.0));
    let down = run_loads(&full, at, Dress::AsHung, &settled.site, gust).ok()?;
    let times =
        |post: usize| (answer.worst.posts[post].at_reference_gust.moment / down.posts[post].moment).pure();
    // Inside: the post in the middle of those; near the ends: the one that gains most.
    let inside = answer.inside.as_ref().map(|group| times(group.posts[group.posts.len() / 2]));
    let ends = answer
        .near_ends
        .as_ref()
        .and_then(|group| group.posts.iter().map(|post| times(*post)).max_by(f64::total_cmp));
    let height = screen.top - screen.bottom;
    let statics = (height * (screen.bottom + height * 0.5) / (screen.top * screen.top * 0.5)).pure();
    Some(Remark::GapBelow {
        run: settled.fence.runs[at].name.clone(),
        bottom: screen.bottom,
        top: screen.top,
        statics,
        inside,
        ends,
    })
}

/// Windows cut in the cloth, those asked for or two of 8 in by 5 in a bay.
fn windows(settled: &Settled, at: usize, screen: &Screen) -> Option<Remark> {
    let run = &settled.fence.runs[at];
    let (from, to) = run.screened()?;
    let usual = Windows { width: inches(8.0), height: inches(5.0), per_bay: 2.0 };
    let cut = screen.windows.unwrap_or(usual);
    let bays = (screen.end_bay - screen.first_bay) as f64;
    let cloth: Area = (to - from) * (screen.top - screen.bottom) / bays;
    let share = WindowShare { window: cut.area(), count: cut.per_bay, cloth }.work(&mut Blank).min(1.0);
    let solidity = run.solidity(&mut Blank)?;
    let panel = |solidity| Panel {
        bottom: run.base_above_ground + screen.bottom,
        height: screen.top - screen.bottom,
        length: to - from,
        solidity,
        return_at_start: Length::from_si(0.0),
        return_at_finish: Length::from_si(0.0),
    };
    let pressure = |solidity| {
        let gust = Event::Gust(mph(100.0));
        let pressures = settled.site.pressures(&panel(solidity), Case::Square, gust, &mut Blank).ok()??;
        Some(pressures.zones.first()?.pressure_from)
    };
    let left = WindowedSolidity { solidity, share }.work(&mut Blank);
    let change = (pressure(left)? / pressure(solidity)?).pure() - 1.0;
    Some(Remark::Windows { run: run.name.clone(), share, change, asked: screen.windows.is_some() })
}

/// The workings of one post, or of the governing post of each run where none is named.
///
/// # Errors
/// If there is no such post, or a run cannot be worked.
pub fn workings(check: &Check, asked: Option<&str>) -> Result<Vec<(String, Vec<Entry>)>, CheckError> {
    let fence = &check.settled.fence;
    let mut wanted = Vec::new();
    match asked {
        None => {
            for (at, run) in check.runs.iter().enumerate() {
                let order = |one: &(usize, &PostVerdict), other: &(usize, &PostVerdict)| {
                    one.1.limit_gust.si().total_cmp(&other.1.limit_gust.si())
                };
                wanted.extend(run.worst.posts.iter().enumerate().min_by(order).map(|(post, _)| (at, post)));
            }
        }
        Some(asked) => {
            let found = asked.rsplit_once('/').and_then(|(name, number)| {
                let run = fence.runs.iter().position(|run| run.name == name.trim())?;
                let post = number.trim().parse::<usize>().ok()?.checked_sub(1)?;
                (post < fence.runs[run].posts.len()).then_some((run, post))
            });
            let there = || {
                fence.runs.iter().map(|run| format!("\"{}/1\" to {}", run.name, run.posts.len())).collect()
            };
            wanted.push(
                found.ok_or_else(|| CheckError::NoSuchPost { asked: asked.to_owned(), there: there() })?,
            );
        }
    }
    let mut all = Vec::new();
    for (run, post) in wanted {
        let mut entries = Vec::new();
        post_workings(fence, run, post, &check.settled.site, &mut entries)?;
        frame_workings(fence, run, post, &check.settled.site, &check.runs[run].worst, &mut entries)?;
        rails_workings(fence, run, &check.settled.site, &mut entries)?;
        fastening_workings(fence, run, &check.settled.site, &mut entries)?;
        all.push((format!("{}, post {}", fence.runs[run].name, post + 1), entries));
    }
    Ok(all)
}

impl Check {
    /// Whether a value of the survey is open, so that there is a best end beside the worst.
    #[must_use]
    pub fn has_ranges(&self) -> bool {
        self.runs.iter().any(|run| run.best.is_some())
    }

    /// Whether the design wind speed is known.
    #[must_use]
    pub fn has_speed(&self) -> bool {
        !matches!(self.survey.site.wind_speed.reading, Reading::Unknown)
    }
}
