//! What to order and to bring for the cloth of a survey, screen by screen and in all.
//!
//! What the survey does not say is told and not made up; where it gives a range, the end that takes more is ordered.
//! Every amount is rounded up as it is printed, so that sums are the sums of their rows.

use super::check::{Check, CheckError, check};
use crate::fastening::FasteningError;
use crate::fastening::lacing::{Style, WASTE, Wrap};
use crate::fastening::order::{
    ClothArea, END_GAP, HemLength, JOINT, KNOT, LONGEST, RopeLength, SPARES, STYLE, TOP_GAP, WithSpares,
    grommets,
};
use crate::fastening::rope::Fibre;
use crate::fastening::ties::{Hold, Panel, Row};
use crate::fence::{Fence, Role, Run, Screen, Section, Shape, TiedTo};
use crate::screen;
use crate::source::Stated;
use crate::survey::{FasteningSurvey, HeldBy, OrderSurvey, Price, Reading, RunSurvey, Survey};
use crate::units::{Area, Force, Length, Measure, Pressure, Pure, Quantity, System, Time, Value};
use crate::verdict::Flag;
use crate::workings::Blank;
use std::fmt;

/// What to order for some surveys.
#[derive(Debug, Clone)]
pub struct OrderList {
    /// The units its amounts are rounded in: those of the first survey.
    pub system: System,
    /// Survey by survey.
    pub sites: Vec<SiteOrder>,
    /// Like items of all screens together, in the order in which they first stand.
    pub sums: Vec<Item>,
}

/// What to order for one survey.
#[derive(Debug, Clone)]
pub struct SiteOrder {
    /// The survey as it was named.
    pub file: String,
    /// What was asked.
    pub survey: Survey,
    /// Whether the fence carries it, by the check; an order list does not say.
    pub check: Result<Box<Check>, CheckError>,
    /// Allowances: by the survey, or taken.
    pub allowances: Vec<Allowance>,
    /// Each run that has cloth.
    pub screens: Vec<ScreenOrder>,
}

/// An allowance as it was used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Allowance {
    /// Its key in `[order]`.
    pub key: &'static str,
    /// Its value with its unit.
    pub written: String,
    /// Why it was taken; nothing where the survey gives it.
    pub because: Option<&'static str>,
}

/// What to order for the cloth of one run.
#[derive(Debug, Clone, PartialEq)]
pub struct ScreenOrder {
    /// The run by index.
    pub run: usize,
    /// Its name.
    pub name: String,
    /// Its cloth.
    pub cloth: String,
    /// Its panels from left to right, seen from inside.
    pub panels: Vec<PanelOrder>,
    /// What to order.
    pub items: Vec<Item>,
    /// What the crew takes, if the survey says so.
    pub crew_time: Option<Time>,
    /// What a reader must know.
    pub notes: Vec<OrderNote>,
}

/// One panel of cloth: it ends at a post on either side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PanelOrder {
    /// The first bay it hangs on, by index.
    pub first_bay: usize,
    /// One past the last.
    pub end_bay: usize,
    /// From the start of the run to its left edge.
    pub from: Length,
    /// Its finished size.
    pub size: Panel,
}

/// Something to order.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// What.
    pub what: What,
    /// How much, rounded up.
    pub amount: Amount,
    /// How many of a count are needed, without spares.
    pub needed: Option<u64>,
    /// Pieces of rope and the longest of them.
    pub pieces: Option<(u64, Length)>,
    /// What it weighs at least and at most, if known.
    pub weight: Option<(Force, Force)>,
    /// What it costs, by the prices of the survey.
    pub cost: Option<Cost>,
}

/// What is ordered.
#[derive(Debug, Clone, PartialEq)]
#[allow(missing_docs)]
pub enum What {
    /// A panel, finished.
    Panel { cloth: String, size: Panel },
    /// The cloth of the panels.
    Cloth { cloth: String },
    /// Their hem.
    Hem { cloth: String },
    /// Their grommets.
    Grommets,
    /// Ties.
    Ties,
    /// Rope along one row.
    Rope { rope: String, row: Row },
}

/// How much.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    /// So many.
    Count(u64),
    /// So much cloth.
    Area(Area),
    /// So much rope or hem.
    Length(Length),
}

/// A cost in the survey's own money, which is its only unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Cost {
    /// So much, to the hundredth.
    pub money: f64,
    /// In which money, if the survey says so.
    pub currency: Option<String>,
}

/// What a reader of an order must know.
#[derive(Debug, Clone, PartialEq)]
#[allow(missing_docs)]
pub enum OrderNote {
    /// What holds the cloth is not known.
    FasteningUnknown,
    /// The spacing is not known.
    SpacingUnknown { held_by: &'static str },
    /// The spacing is a range: counted at its lesser end.
    SpacingRange { low: Length, high: Length, grommets_at_high: u64 },
    /// The rope is not known.
    RopeUnknown,
    /// Laced to the mesh, whose wires no wrap is worked for.
    LacedToMesh,
    /// The survey has no rail at a row that is laced.
    NoRail { row: Row },
    /// Nobody says what the cloth weighs.
    WeightUnknown,
    /// Its weight is the catalogue's.
    WeightFromCatalogue { known: String },
    /// As surveyed the cloth reaches above the underside of the top rail.
    AboveRail { height: Length, to_rail: Length, rail: Length },
    /// Sizes of posts are open.
    PostsOpen,
    /// A post that is no round tube is laced as a round one round its corners.
    NotRound,
    /// Windows are no item of the list.
    Windows,
    /// A gate has a panel of its own.
    Gate,
    /// One cloth was measured, and no panel is longer.
    MeasuredPanel { panel: Length },
    /// How far a grommet stands off what it is laced to.
    Offset { offset: Length },
}

impl OrderNote {
    /// A name for programs.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        match self {
            Self::FasteningUnknown => "fastening-unknown",
            Self::SpacingUnknown { .. } => "spacing-unknown",
            Self::SpacingRange { .. } => "spacing-range",
            Self::RopeUnknown => "rope-unknown",
            Self::LacedToMesh => "laced-to-mesh",
            Self::NoRail { .. } => "no-rail",
            Self::WeightUnknown => "weight-unknown",
            Self::WeightFromCatalogue { .. } => "weight-from-catalogue",
            Self::AboveRail { .. } => "above-rail",
            Self::PostsOpen => "posts-open",
            Self::NotRound => "post-not-round",
            Self::Windows => "windows",
            Self::Gate => "gate",
            Self::MeasuredPanel { .. } => "measured-panel",
            Self::Offset { .. } => "offset",
        }
    }

    /// The wording.
    #[must_use]
    pub fn text(&self, system: System) -> String {
        let length = |length: &Length| tape(*length, system);
        let small = |length: &Length| Value::new(*length, Measure::Small).written(system);
        match self {
            Self::FasteningUnknown => {
                "what holds the cloth is unknown: grommets, ties and rope are NOT COUNTED".to_owned()
            }
            Self::SpacingUnknown { held_by } => {
                format!("the spacing of the {held_by} is unknown: grommets, ties and rope are NOT COUNTED")
            }
            Self::SpacingRange { low, high, grommets_at_high } => format!(
                "spacing {} to {}: counted at {}, which takes more; at {} it is {grommets_at_high} grommets",
                small(low),
                small(high),
                small(low),
                small(high)
            ),
            Self::RopeUnknown => "the thickness of the rope is unknown: rope is NOT COUNTED".to_owned(),
            Self::LacedToMesh => {
                "laced to the chain link: no wrap round its wires is worked, and rope is NOT COUNTED"
                    .to_owned()
            }
            Self::NoRail { row } => format!(
                "row {}: the survey has no rail there to lace to; its rope is NOT COUNTED",
                row.name()
            ),
            Self::MeasuredPanel { panel } => {
                format!("no panel is longer than {}, which one cloth measures by the survey", length(panel))
            }
            Self::Offset { offset } => format!(
                "rope for grommets {} off what they are laced to (1 in, 25.4 mm, is ours where the survey has no offset)",
                small(offset)
            ),
            Self::WeightUnknown => "the weight of the cloth is unknown: ask its maker".to_owned(),
            Self::WeightFromCatalogue { known } => {
                format!("weight by the generic name of the cloth, {known}")
            }
            Self::AboveRail { height, to_rail, rail } => format!(
                "as surveyed the cloth is {} high and reaches above the underside of the top rail; hung to the \
                 underside of a rail of {} it is {} high. Measure there before it is made",
                length(height),
                small(rail),
                length(to_rail)
            ),
            Self::PostsOpen => {
                "sizes of posts are open: the thinnest was taken for length, the thickest for rope".to_owned()
            }
            Self::NotRound => {
                "a post that is no round tube: rope counted for a circle round its corners, which is more"
                    .to_owned()
            }
            Self::Windows => "windows cut in the cloth are no item of this list".to_owned(),
            Self::Gate => {
                "cloth on a gate is a panel of its own, with a gap on either side, so that the gate opens"
                    .to_owned()
            }
        }
    }
}

/// Why there is no order.
#[derive(Debug, Clone, PartialEq)]
pub enum OrderError {
    /// The cloth cannot be held as the survey says.
    Fastening {
        /// The run.
        run: String,
        /// Why.
        error: FasteningError,
    },
    /// A bay is wider than the longest panel.
    BayTooWide {
        /// The run.
        run: String,
        /// The bay, counted from 1.
        bay: usize,
        /// What a panel on it measures.
        length: Length,
        /// The longest there is.
        longest: Length,
    },
    /// The gaps leave no cloth.
    NothingLeft {
        /// The run.
        run: String,
        /// Which measure.
        what: &'static str,
    },
}

impl fmt::Display for OrderError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let length = |length: &Length| Value::new(*length, Measure::Length).written(System::Us);
        match self {
            Self::Fastening { run, error } => write!(f, "{run}: {error}"),
            Self::BayTooWide { run, bay, length: found, longest } => write!(
                f,
                "{run}, bay {bay}: a panel there is {} long, and the longest is {}. Panels end at posts: give a \
                 longest_panel in [order] that its maker makes",
                length(found),
                length(longest)
            ),
            Self::NothingLeft { run, what } => write!(
                f,
                "{run}: the gaps leave nothing of the {what} of the cloth; look at end_gap, joint_gap and top_gap in \
                 [order]"
            ),
        }
    }
}

impl std::error::Error for OrderError {}

/// What to order for surveys, each with the name it was given under.
///
/// # Errors
/// The first reason why there is no list, with the name of its survey; half a list would be taken for a whole one.
pub fn order(surveys: Vec<(String, Survey)>) -> Result<OrderList, (String, OrderError)> {
    let system = surveys.first().map_or_else(System::default, |(_, survey)| survey.units);
    let mut sites = Vec::new();
    for (file, survey) in surveys {
        match site_order(survey, system) {
            Ok((survey, check, allowances, screens)) => {
                sites.push(SiteOrder { file, survey, check, allowances, screens });
            }
            Err(error) => return Err((file, error)),
        }
    }
    let items = sites.iter().flat_map(|site| &site.screens).flat_map(|screen| &screen.items);
    let sums = sums(items);
    Ok(OrderList { system, sites, sums })
}

impl OrderList {
    /// What everything costs, by currency: items without a price are not in it.
    #[must_use]
    pub fn costs(&self) -> Vec<Cost> {
        let mut costs: Vec<Cost> = Vec::new();
        for cost in self.sums.iter().filter_map(|item| item.cost.as_ref()) {
            match costs.iter_mut().find(|before| before.currency == cost.currency) {
                Some(before) => before.money = hundredths(before.money + cost.money),
                None => costs.push(cost.clone()),
            }
        }
        costs
    }

    /// The crew's time, where the survey says what a panel takes; nothing if a screen has none.
    #[must_use]
    pub fn crew_time(&self) -> Option<Time> {
        let mut screens = self.sites.iter().flat_map(|site| &site.screens).peekable();
        screens.peek()?;
        screens.try_fold(Time::from_si(0.0), |sum, screen| Some(sum + screen.crew_time?))
    }
}

impl SiteOrder {
    /// The worst flag of what was checked of the runs with cloth, and these runs by name; nothing where the check could
    /// not be worked.
    #[must_use]
    pub fn flags(&self) -> Option<Vec<(&str, Flag)>> {
        let check = self.check.as_ref().ok()?;
        let flag = |screen: &ScreenOrder| {
            let flag = check.runs[screen.run].flag_of_checked;
            let no_speed = check.settled.site.wind_speed().is_none();
            if no_speed { Flag::NotChecked } else { flag.unwrap_or(Flag::NotChecked) }
        };
        Some(self.screens.iter().map(|screen| (screen.name.as_str(), flag(screen))).collect())
    }
}

type Worked = (Survey, Result<Box<Check>, CheckError>, Vec<Allowance>, Vec<ScreenOrder>);

fn site_order(survey: Survey, system: System) -> Result<Worked, OrderError> {
    let terms = Terms::of(&survey, system);
    let (thin, thick) = (survey.at_worst().fence, survey.at_best().fence);
    let mut screens = Vec::new();
    for (at, run) in survey.runs.iter().enumerate() {
        if let Some(screen) = &run.run.screen {
            screens.push(
                ScreenAt { survey: run, run: &run.run, at, screen, terms: &terms, ends: [&thin, &thick] }
                    .order()?,
            );
        }
    }
    let allowances = if screens.is_empty() { Vec::new() } else { terms.used(&survey) };
    Ok((survey.clone(), check(survey).map(Box::new), allowances, screens))
}

/// The allowances of a survey, each given or taken.
struct Terms<'a> {
    order: &'a OrderSurvey,
    system: System,
    end_gap: Length,
    joint_gap: Length,
    top_gap: Length,
    longest: Length,
    hem: Length,
    spares: f64,
    style: Style,
    knot: Length,
    waste: f64,
}

impl<'a> Terms<'a> {
    fn of(survey: &'a Survey, system: System) -> Self {
        let order = &survey.order;
        Self {
            order,
            system,
            end_gap: order.end_gap.unwrap_or(END_GAP.value),
            joint_gap: order.joint_gap.unwrap_or(JOINT.value),
            top_gap: order.top_gap.unwrap_or(TOP_GAP.value),
            longest: order.longest_panel.unwrap_or(LONGEST.value),
            hem: order.hem_allowance.unwrap_or_default(),
            spares: order.spares.unwrap_or(SPARES.value),
            style: order.lacing.unwrap_or(STYLE.0),
            knot: order.knot_end.unwrap_or(KNOT.value),
            waste: order.rope_waste.unwrap_or(WASTE.value),
        }
    }

    /// What was used: of ties and rope only where there are any.
    fn used(&self, survey: &Survey) -> Vec<Allowance> {
        let Self { order, system, .. } = *self;
        let small = |length: Length| Value::new(length, Measure::Small).written(system);
        let long = |length: Length| Value::new(length, Measure::Length).written(system);
        let percent = |share: f64| Value::new(share, Measure::Percent).written(system);
        let because = |given: bool, because: &'static str| (!given).then_some(because);
        let length =
            |key, given: Option<Length>, stated: Stated<Length>, write: &dyn Fn(Length) -> String| {
                Allowance {
                    key,
                    written: write(given.unwrap_or(stated.value)),
                    because: because(given.is_some(), stated.because),
                }
            };
        let share = |key, given: Option<f64>, stated: Stated<f64>| Allowance {
            key,
            written: percent(given.unwrap_or(stated.value)),
            because: because(given.is_some(), stated.because),
        };
        let mut used = vec![
            length("end_gap", order.end_gap, END_GAP, &small),
            length("joint_gap", order.joint_gap, JOINT, &small),
            length("top_gap", order.top_gap, TOP_GAP, &small),
            length("longest_panel", order.longest_panel, LONGEST, &long),
        ];
        used.push(Allowance {
            key: "hem_allowance",
            written: small(self.hem),
            because: because(
                order.hem_allowance.is_some(),
                "ours: the cloth comes as finished panels; give what hems turn in where it is cut",
            ),
        });
        let held = |laced: bool| {
            survey
                .runs
                .iter()
                .filter_map(|run| run.fastening.as_ref())
                .any(|fastening| matches!(fastening.by, HeldBy::Lacing { .. }) == laced)
        };
        if held(false) {
            used.push(share("spares", order.spares, SPARES));
        }
        if held(true) {
            let style = if self.style == Style::Plain { "plain" } else { "locked" };
            used.push(Allowance {
                key: "lacing",
                written: style.to_owned(),
                because: because(order.lacing.is_some(), STYLE.1),
            });
            used.push(length("knot_end", order.knot_end, KNOT, &small));
            used.push(share("rope_waste", order.rope_waste, WASTE));
        }
        used
    }

    fn cost(&self, price: Option<Price>, of: impl Fn(Price) -> f64) -> Option<Cost> {
        let money = hundredths(of(price?));
        Some(Cost { money, currency: self.order.prices.currency.clone() })
    }

    /// A length up to the next whole foot or tenth of a metre.
    fn length_up(&self, length: Length) -> Length {
        let step =
            if self.system == System::Us { crate::units::feet(1.0) } else { crate::units::metres(0.1) };
        step * up((length / step).pure())
    }

    /// An area up to the next whole square foot or tenth of a square metre.
    fn area_up(&self, area: Area) -> Area {
        let step = match self.system {
            System::Us => crate::units::feet(1.0) * crate::units::feet(1.0),
            System::Si => crate::units::metres(1.0) * crate::units::metres(0.1),
        };
        step * up((area / step).pure())
    }
}

/// A length as a tape reads it, to the sixteenth of an inch or the millimetre.
pub(crate) fn tape(length: Length, system: System) -> String {
    let step =
        if system == System::Us { crate::units::inches(1.0 / 16.0) } else { crate::units::millimetres(1.0) };
    let steps = (length / step).pure().round();
    Value::new(step * steps, Measure::Length).written(system)
}

/// Up to a whole number, one that is whole but for rounding being itself.
fn up(value: f64) -> f64 {
    crate::numerics::on_bound(value, &[value.round()]).ceil()
}

fn hundredths(money: f64) -> f64 {
    (money * 100.0).round() / 100.0
}

/// In whole micrometres, so that a size is the same whichever unit it was measured in.
fn micrometres(length: Length) -> i128 {
    (length.si() * 1e6).round() as i128
}

/// The rope of one row: what is ordered, its pieces and the longest of them.
struct RopeOfRow {
    length: Length,
    pieces: (u64, Length),
}

/// The cloth of one run and what its order is worked from.
struct ScreenAt<'a> {
    survey: &'a RunSurvey,
    run: &'a Run,
    at: usize,
    screen: &'a Screen,
    terms: &'a Terms<'a>,
    /// The fence with its posts at the one and at the other end of what is not known.
    ends: [&'a Fence; 2],
}

impl ScreenAt<'_> {
    fn order(&self) -> Result<ScreenOrder, OrderError> {
        let mut notes = Vec::new();
        let cloth = self.survey.cloth.clone().unwrap_or_else(|| match self.screen.name.as_str() {
            // Written in place and told by its figure alone.
            "own" => format!("cloth {:.2} solid", self.screen.solidity),
            kind => kind.to_owned(),
        });
        let panels = self.panels()?;
        let posts = self.screen.first_bay..=self.screen.end_bay;
        if posts.clone().any(|post| self.widths(post)[0] != self.widths(post)[1]) {
            notes.push(OrderNote::PostsOpen);
        }
        if (self.screen.first_bay..self.screen.end_bay).any(|bay| self.run.bays[bay].gate) {
            notes.push(OrderNote::Gate);
        }
        if let (None, Some(panel)) = (self.terms.order.longest_panel, self.measured()) {
            notes.push(OrderNote::MeasuredPanel { panel });
        }
        if let Some(rail) = self.run.rails.top.map(|rail| rail.diameter) {
            let (height, to_rail) = (panels[0].size.height, self.run.height - rail - self.screen.bottom);
            let underside = to_rail - self.terms.top_gap;
            if height > underside * (1.0 + crate::numerics::ROUNDING) && underside.si() > 0.0 {
                notes.push(OrderNote::AboveRail { height, to_rail: underside, rail });
            }
        }
        let mut items = Vec::new();
        self.cloth(&cloth, &panels, &mut items, &mut notes);
        self.fixings(&panels, &mut items, &mut notes)?;
        if self.screen.windows.is_some() {
            notes.push(OrderNote::Windows);
        }
        let crew_time = self.terms.order.crew_time.map(|time| time * panels.len() as f64);
        Ok(ScreenOrder { run: self.at, name: self.run.name.clone(), cloth, panels, items, crew_time, notes })
    }

    /// The width of a post, the least it may be and the greatest.
    fn widths(&self, post: usize) -> [Length; 2] {
        let [one, other] = self.ends.map(|fence| fence.kinds[self.run.posts[post].kind].face());
        if one < other { [one, other] } else { [other, one] }
    }

    /// What is left free beside a panel at a post: to the face of the post and the gap where cloth ends, half the joint
    /// where it goes on.
    fn gap(&self, post: usize, joins: bool) -> Length {
        if joins { 0.5 * self.terms.joint_gap } else { 0.5 * self.widths(post)[0] + self.terms.end_gap }
    }

    /// Whether cloth goes on past a post: inside the screen, and neither bay a gate.
    fn joins(&self, post: usize) -> bool {
        post > self.screen.first_bay
            && post < self.screen.end_bay
            && !self.run.bays[post - 1].gate
            && !self.run.bays[post].gate
            && self.run.posts[post].role == Role::Line
    }

    fn panel(&self, first_bay: usize, end_bay: usize, height: Length) -> PanelOrder {
        let from = self.run.posts[first_bay].at + self.gap(first_bay, self.joins(first_bay));
        let to = self.run.posts[end_bay].at - self.gap(end_bay, self.joins(end_bay));
        PanelOrder { first_bay, end_bay, from, size: Panel { length: to - from, height } }
    }

    /// The length of one cloth, where it was measured.
    fn measured(&self) -> Option<Length> {
        self.survey.fastening.as_ref().and_then(|fastening| fastening.panel)
    }

    /// The panels: as few as may be, each no longer than the longest, of lengths as equal as the posts allow.
    fn panels(&self) -> Result<Vec<PanelOrder>, OrderError> {
        let run = || self.run.name.clone();
        let height = self.screen.top - self.screen.bottom - self.terms.top_gap;
        if height.si() <= 0.0 {
            return Err(OrderError::NothingLeft { run: run(), what: "height" });
        }
        let longest = match (self.terms.order.longest_panel, self.measured()) {
            (None, Some(measured)) => measured,
            _ => self.terms.longest,
        };
        let most = micrometres(longest);
        let (first, end) = (self.screen.first_bay, self.screen.end_bay);
        // The best way to reach each post: fewest panels, then the least sum of squares, which is the most equal.
        let mut best: Vec<Option<(usize, i128, usize)>> = vec![None; end - first + 1];
        best[0] = Some((0, 0, first));
        for to in first + 1..=end {
            for from in (first..to).rev() {
                let panel = self.panel(from, to, height);
                let length = micrometres(panel.size.length);
                if length > most {
                    if from + 1 == to {
                        let (bay, length) = (to, panel.size.length);
                        return Err(OrderError::BayTooWide { run: run(), bay, length, longest });
                    }
                    break;
                }
                // A bay that the gaps fill hangs with its neighbour or not at all.
                if let Some((panels, squares, _)) = best[from - first].filter(|_| length > 0) {
                    let here = (panels + 1, squares + length * length, from);
                    let better =
                        |(panels, squares, _): (usize, i128, usize)| (here.0, here.1) < (panels, squares);
                    if best[to - first].is_none_or(better) {
                        best[to - first] = Some(here);
                    }
                }
                // No panel reaches across a gate or another end of the cloth.
                if !self.joins(from) {
                    break;
                }
            }
        }
        let (mut panels, mut to) = (Vec::new(), end);
        while to > first {
            let Some((_, _, from)) = best[to - first] else {
                return Err(OrderError::NothingLeft { run: run(), what: "length" });
            };
            panels.push(self.panel(from, to, height));
            to = from;
        }
        panels.reverse();
        Ok(panels)
    }

    /// Panels, cloth and hem.
    fn cloth(&self, cloth: &str, panels: &[PanelOrder], items: &mut Vec<Item>, notes: &mut Vec<OrderNote>) {
        let terms = self.terms;
        let mut area = Area::from_si(0.0);
        let mut finished = Area::from_si(0.0);
        let mut hem = Length::from_si(0.0);
        let middle = self.survey.fastening.as_ref().is_some_and(|fastening| fastening.rows.has(Row::Middle));
        let bands = if middle { 1.0 } else { 0.0 };
        for panel in panels {
            let Panel { length, height } = panel.size;
            finished += ClothArea { length, height }.work(&mut Blank);
            let cut = ClothArea { length: length + 2.0 * terms.hem, height: height + 2.0 * terms.hem };
            area += cut.work(&mut Blank);
            hem += HemLength { length, height, bands }.work(&mut Blank);
            let item = Item {
                amount: Amount::Count(1),
                ..item(What::Panel { cloth: cloth.to_owned(), size: panel.size })
            };
            match items.iter_mut().find(|before| before.what.is_like(&item.what)) {
                Some(Item { amount: Amount::Count(count), .. }) => *count += 1,
                _ => items.push(item),
            }
        }
        let per_area =
            match (self.survey.weight, screen::named(cloth).and_then(|cloth| cloth.weight.as_ref())) {
                (Some(Reading::Measured(one)), _) => Some((one, one)),
                (Some(Reading::Between(low, high)), _) => Some((low, high)),
                (_, Some((low, high, known))) => {
                    notes.push(OrderNote::WeightFromCatalogue { known: known.clone() });
                    Some((*low, *high))
                }
                (_, None) => {
                    notes.push(OrderNote::WeightUnknown);
                    None
                }
            };
        let area = terms.area_up(area);
        let hem = terms.length_up(hem);
        items.push(Item {
            amount: Amount::Area(area),
            weight: per_area.map(|(low, high): (Pressure, Pressure)| {
                (self.whole_weight(low * finished, f64::floor), self.whole_weight(high * finished, f64::ceil))
            }),
            cost: terms.cost(terms.order.prices.cloth, |price| price.of(area)),
            ..item(What::Cloth { cloth: cloth.to_owned() })
        });
        items.push(Item { amount: Amount::Length(hem), ..item(What::Hem { cloth: cloth.to_owned() }) });
    }

    /// A weight in whole pounds or kilograms, which is how it is printed.
    fn whole_weight(&self, weight: Force, whole: fn(f64) -> f64) -> Force {
        let one = Force::from_si(1.0 / Measure::Weight.in_unit(1.0, self.terms.system));
        one * whole((weight / one).pure())
    }

    /// Grommets, ties and rope.
    fn fixings(
        &self,
        panels: &[PanelOrder],
        items: &mut Vec<Item>,
        notes: &mut Vec<OrderNote>,
    ) -> Result<(), OrderError> {
        let Some(fastening) = &self.survey.fastening else {
            notes.push(OrderNote::FasteningUnknown);
            return Ok(());
        };
        let Some(spacing) = fastening.spacing.reading.low() else {
            let held_by = match fastening.by {
                HeldBy::Ties { .. } => "ties",
                HeldBy::Lacing { .. } => "lacing",
            };
            notes.push(OrderNote::SpacingUnknown { held_by });
            return Ok(());
        };
        let counted = self.grommets(fastening, panels, spacing)?;
        if let Reading::Between(low, high) = fastening.spacing.reading
            && let Ok(grommets_at_high) = self.grommets(fastening, panels, high)
        {
            notes.push(OrderNote::SpacingRange { low, high, grommets_at_high });
        }
        let (terms, prices) = (self.terms, &self.terms.order.prices);
        items.push(Item {
            amount: Amount::Count(counted),
            cost: terms.cost(prices.grommet, |price| price.of_pieces(counted)),
            ..item(What::Grommets)
        });
        match &fastening.by {
            HeldBy::Ties { .. } => {
                let ordered = WithSpares { count: counted as f64, spares: terms.spares }
                    .work(&mut Blank)
                    .map_err(|error| self.refused(error.into()))? as u64;
                items.push(Item {
                    amount: Amount::Count(ordered),
                    needed: Some(counted),
                    cost: terms.cost(prices.tie, |price| price.of_pieces(ordered)),
                    ..item(What::Ties)
                });
            }
            HeldBy::Lacing { rope: None, .. } => notes.push(OrderNote::RopeUnknown),
            HeldBy::Lacing { .. } if fastening.to == TiedTo::ChainLink => notes.push(OrderNote::LacedToMesh),
            HeldBy::Lacing { rope: Some((rope, fibre)), offset, .. } => {
                notes.push(OrderNote::Offset { offset: *offset });
                let name = rope_name(*rope, *fibre, terms.system);
                for row in fastening.rows.iter() {
                    let wrap = Wrap { rail: Length::from_si(0.0), rope: *rope, offset: *offset, spacing };
                    match self.rope(row, wrap, panels)? {
                        Some(RopeOfRow { length, pieces }) => items.push(Item {
                            amount: Amount::Length(length),
                            pieces: Some(pieces),
                            cost: terms.cost(prices.rope, |price| price.of(length)),
                            ..item(What::Rope { rope: name.clone(), row })
                        }),
                        None => notes.push(OrderNote::NoRail { row }),
                    }
                }
                if fastening.rows.has(Row::Sides) && panels.iter().any(|panel| !self.ends_are_round(panel)) {
                    notes.push(OrderNote::NotRound);
                }
            }
        }
        Ok(())
    }

    fn refused(&self, error: FasteningError) -> OrderError {
        OrderError::Fastening { run: self.run.name.clone(), error }
    }

    fn grommets(
        &self,
        fastening: &FasteningSurvey,
        panels: &[PanelOrder],
        spacing: Length,
    ) -> Result<u64, OrderError> {
        let mut counted = 0;
        for panel in panels {
            let found = Hold::try_new(panel.size, fastening.rows.clone(), spacing)
                .and_then(|hold| grommets(&hold, &mut Blank));
            counted += found.map_err(|error| self.refused(error))? as u64;
        }
        Ok(counted)
    }

    fn is_round(&self, post: usize) -> bool {
        let kind = &self.ends[0].kinds[self.run.posts[post].kind];
        matches!(&kind.section, Section::Tube(tube) if matches!(tube.shape, Shape::Round { .. }))
    }

    fn ends_are_round(&self, panel: &PanelOrder) -> bool {
        self.is_round(panel.first_bay) && self.is_round(panel.end_bay)
    }

    /// The rope of one row, up to what is ordered, its pieces and the longest; nothing where there is nothing to lace to.
    fn rope(&self, row: Row, wrap: Wrap, panels: &[PanelOrder]) -> Result<Option<RopeOfRow>, OrderError> {
        let rail = match row {
            Row::Top => self.run.rails.top,
            Row::Middle => self.run.rails.middle,
            Row::Bottom => self.run.rails.bottom,
            Row::Sides => None,
        }
        .map(|rail| rail.diameter);
        let mut total = Length::from_si(0.0);
        let (mut pieces, mut longest) = (0, Length::from_si(0.0));
        for panel in panels {
            let edges: Vec<(Length, Length)> = match (row, rail) {
                (Row::Sides, _) => [panel.first_bay, panel.end_bay]
                    .map(|post| (self.laced_round(post), panel.size.height))
                    .into(),
                (_, Some(rail)) => self.edges_by_bay(panel).into_iter().map(|edge| (rail, edge)).collect(),
                (_, None) => return Ok(None),
            };
            for (rail, edge) in edges {
                // Grommets stand evenly along the whole edge, no further apart than the spacing.
                let whole = panel.size.edge(row);
                let spacing = whole / up((whole / wrap.spacing).pure()).max(1.0);
                let per_length = Wrap { rail, spacing, ..wrap }
                    .rope_per_length(self.terms.style, &mut Blank)
                    .map_err(|error| self.refused(error))?;
                let rope =
                    |waste| RopeLength { edges: edge, per_length, ends: 2.0, tail: self.terms.knot, waste };
                total += rope(self.terms.waste).work(&mut Blank);
                let piece = rope(0.0).work(&mut Blank);
                longest = if piece > longest { piece } else { longest };
                pieces += 1;
            }
        }
        Ok(Some(RopeOfRow { length: self.terms.length_up(total), pieces: (pieces, longest) }))
    }

    /// What rope goes round at a post: a post that is not round is taken as the circle round its corners.
    fn laced_round(&self, post: usize) -> Length {
        let width = self.widths(post)[1];
        if self.is_round(post) { width } else { std::f64::consts::SQRT_2 * width }
    }

    /// A level edge of a panel, cut at each post.
    fn edges_by_bay(&self, panel: &PanelOrder) -> Vec<Length> {
        let to = panel.from + panel.size.length;
        (panel.first_bay..panel.end_bay)
            .map(|bay| {
                let from = if bay == panel.first_bay { panel.from } else { self.run.posts[bay].at };
                let end = if bay + 1 == panel.end_bay { to } else { self.run.posts[bay + 1].at };
                end - from
            })
            .collect()
    }
}

const fn item(what: What) -> Item {
    Item { what, amount: Amount::Count(0), needed: None, pieces: None, weight: None, cost: None }
}

fn rope_name(rope: Length, fibre: Option<Fibre>, system: System) -> String {
    let thick = Value::new(rope, Measure::Small).written(system);
    fibre.map_or_else(|| format!("{thick}, fibre not said"), |fibre| format!("{thick} {}", fibre.name()))
}

impl What {
    /// Whether it is the same thing to order: of one size to the micrometre.
    #[must_use]
    pub fn is_like(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Panel { cloth, size }, Self::Panel { cloth: other_cloth, size: other }) => {
                cloth == other_cloth
                    && micrometres(size.length) == micrometres(other.length)
                    && micrometres(size.height) == micrometres(other.height)
            }
            _ => self == other,
        }
    }
}

impl Amount {
    /// Both together; two amounts of one thing are of one kind.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        match (self, other) {
            (Self::Count(one), Self::Count(other)) => Self::Count(one + other),
            (Self::Area(one), Self::Area(other)) => Self::Area(one + other),
            (Self::Length(one), Self::Length(other)) => Self::Length(one + other),
            (one, _) => one,
        }
    }
}

/// Like items together: panels, then cloth, hem, grommets, ties and rope.
fn sums<'a>(items: impl Iterator<Item = &'a Item>) -> Vec<Item> {
    let mut sums: Vec<Item> = Vec::new();
    for item in items {
        let currency = |item: &Item| item.cost.as_ref().map(|cost| cost.currency.clone());
        let alike = |sum: &&mut Item| {
            let one_money = match (currency(sum), currency(item)) {
                (Some(one), Some(other)) => one == other,
                _ => true,
            };
            sum.what.is_like(&item.what) && one_money && sum.cost.is_some() == item.cost.is_some()
        };
        match sums.iter_mut().find(alike) {
            Some(sum) => {
                sum.amount = sum.amount.with(item.amount);
                sum.needed = sum.needed.zip(item.needed).map(|(one, other)| one + other);
                sum.pieces = sum.pieces.zip(item.pieces).map(|((pieces, longest), (more, other))| {
                    (pieces + more, if other > longest { other } else { longest })
                });
                // Where one of them is not known, neither is the sum.
                sum.weight = sum
                    .weight
                    .zip(item.weight)
                    .map(|((low, high), (more_low, more_high))| (low + more_low, high + more_high));
                if let (Some(sum), Some(cost)) = (&mut sum.cost, &item.cost) {
                    sum.money = hundredths(sum.money + cost.money);
                }
            }
            None => sums.push(item.clone()),
        }
    }
    sums.sort_by_key(|item| match item.what {
        What::Panel { .. } => 0,
        What::Cloth { .. } => 1,
        What::Hem { .. } => 2,
        What::Grommets => 3,
        What::Ties => 4,
        What::Rope { .. } => 5,
    });
    sums
}
