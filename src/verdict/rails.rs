//! What rails are asked to carry from either side of the cloth, and when they reach their limit.
//!
//! A rail is no part of a post: its limit gust is told beside that of the posts and neither lowers nor lifts it.

use super::Flag;
use super::{
    LimitGust, MomentRatio, NO_SPEED, Part, PartKind, REFERENCE_GUST, ShearRatio, VerdictError, unchecked,
};
use crate::fastening::rail::Span;
use crate::fence::{Fence, PostStrength, Rail, RailPlace, Run, Splice};
use crate::loads::frame::RailMoment;
use crate::loads::{Dress, OnRail, Push, RailLine, at_level, on_rails, rail_lines, rail_workings};
use crate::numerics::ROUNDING;
use crate::source::Stated;
use crate::units::{Force, Length, Moment, Pure, Quantity, Value, Velocity};
use crate::wind::{Event, Level, Site};
use crate::workings::{Blank, Entry, Ledger};

/// A splice that nobody ruled out stands beside every span.
pub const SPLICED: Stated<f64> = Stated {
    value: 1.0,
    because: "ours: chain-link rails are sleeved where their lengths meet; unless the survey says that none is, each \
              span is taken to stand alone, whichever side of it the sleeve stands",
};

/// Bays of one width over which a rail without a splice is taken to go on.
const GOES_ON: usize = 4;

/// One rail in one bay, pushed one way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RailCheck {
    /// Which rail.
    pub place: RailPlace,
    /// The bay by index.
    pub bay: usize,
    /// Which way.
    pub push: Push,
    /// From post to post.
    pub span: Length,
    /// At the design event, if there is a speed and a strength.
    pub design: Option<RailDesign>,
    /// The same by hand statics, where the frame bends it more and counts.
    pub by_hand: Option<RailDesign>,
    /// What it can carry with its factor, if its tube is known.
    pub strength: Option<PostStrength>,
    /// The gust at which it reaches its limit.
    pub limit_gust: Option<Velocity>,
    /// Why it was not checked.
    pub why: Option<&'static str>,
}

/// What a rail must carry at the design event.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RailDesign {
    /// The load in the case with the largest.
    pub line: RailLine,
    /// Moment at the level its strength is held against.
    pub moment: Moment,
    /// Shear at that level.
    pub shear: Force,
    /// The larger of both over their strengths.
    pub ratio: f64,
    /// Whether that is the ratio of shear.
    pub by_shear: bool,
}

impl RailCheck {
    /// Its flag.
    #[must_use]
    pub fn flag(&self) -> Flag {
        match (self.why, self.design) {
            (None, Some(design)) => Flag::of(design.ratio),
            _ => Flag::NotChecked,
        }
    }

    /// Its ratio at the design event.
    #[must_use]
    pub fn ratio(&self) -> Option<f64> {
        self.design.map(|design| design.ratio)
    }

    const fn not(place: RailPlace, bay: usize, push: Push, span: Length, why: &'static str) -> Self {
        let (design, by_hand, strength, limit_gust, why) = (None, None, None, None, Some(why));
        Self { place, bay, push, span, design, by_hand, strength, limit_gust, why }
    }

    /// With its moment on the frame where that is the worse; a moment of the frame belongs to wind from either side.
    fn or_on_frame(self, gust: Option<Moment>, design: Option<Moment>, level: Level) -> Self {
        let Some(strength) = self.strength else { return self };
        let bends = |moment: Moment| bending(moment, &strength, level, &mut Blank);
        let mut both = self;
        if let Some((hand, (moment, ratio))) = self.design.zip(design.map(bends))
            && ratio > hand.ratio
        {
            both.design = Some(RailDesign { moment, ratio, by_shear: false, ..hand });
            both.by_hand = Some(hand);
        }
        if let Some((_, ratio)) = gust.map(bends).filter(|(_, ratio)| *ratio > 0.0) {
            let limit = LimitGust { gust: REFERENCE_GUST, ratio }.work(&mut Blank);
            both.limit_gust = Some(self.limit_gust.filter(|hand| *hand < limit).unwrap_or(limit));
        }
        both
    }

    fn part(&self) -> Part {
        let Some((design, strength)) = self.design.zip(self.strength) else {
            return unchecked(PartKind::Rails, self.why.unwrap_or(NO_SPEED));
        };
        let (demand, capacity, rule) = match strength.shear {
            Ok((shear, clause)) if design.by_shear => (Value::of(design.shear), Value::of(shear), clause),
            _ => (Value::of(design.moment), Value::of(strength.moment), strength.moment_clause),
        };
        Part {
            kind: PartKind::Rails,
            demand: Some(demand),
            capacity: Some(capacity),
            ratio: Some(design.ratio),
            flag: self.flag(),
            rule: Some(rule),
            why: None,
        }
    }
}

/// The rails of a run.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RailsVerdict {
    /// Bay by bay, from the top, onto before off.
    pub checks: Vec<RailCheck>,
}

impl RailsVerdict {
    /// The one that reaches its limit in the least gust.
    #[must_use]
    pub fn first(&self) -> Option<&RailCheck> {
        self.first_of(|_| true)
    }

    /// The one that does so when the wind acts this way.
    #[must_use]
    pub fn first_when(&self, push: Push) -> Option<&RailCheck> {
        self.first_of(|check| check.push == push)
    }

    fn first_of(&self, wanted: impl Fn(&RailCheck) -> bool) -> Option<&RailCheck> {
        let known = self.checks.iter().filter(|check| wanted(check) && check.limit_gust.is_some());
        known.min_by(|one, other| gust_of(one).total_cmp(&gust_of(other)))
    }

    /// The one with the worst flag, and of these the largest ratio.
    #[must_use]
    pub fn worst(&self) -> Option<&RailCheck> {
        worst(self.checks.iter())
    }

    /// The largest ratio of those that were checked.
    #[must_use]
    pub fn ratio(&self) -> Option<f64> {
        self.checks.iter().filter_map(RailCheck::ratio).max_by(f64::total_cmp)
    }

    /// Why some were not checked, each once.
    #[must_use]
    pub fn not_checked(&self) -> Vec<&'static str> {
        let mut why: Vec<&'static str> = Vec::new();
        for one in self.checks.iter().filter_map(|check| check.why) {
            if !why.contains(&one) {
                why.push(one);
            }
        }
        why
    }

    /// Each rail with its moments on the frame in the gust that ratios are worked at and at the design event, where those
    /// are the worse.
    pub(super) fn or_on_frame(
        &self,
        gust: &[RailMoment],
        design: Option<&[RailMoment]>,
        level: Level,
    ) -> Self {
        let worse = |check: &RailCheck| {
            let of = |all: &[RailMoment]| moment_of(all, check);
            check.or_on_frame(of(gust), design.and_then(of), level)
        };
        Self { checks: self.checks.iter().map(worse).collect() }
    }

    /// The rails in the two bays beside a post.
    pub(super) fn part(&self, post: usize) -> Part {
        let beside = |check: &&RailCheck| check.bay == post || check.bay + 1 == post;
        let worst = worst(self.checks.iter().filter(beside));
        worst.map_or_else(|| unchecked(PartKind::Rails, NO_RAIL), RailCheck::part)
    }
}

/// The moment of a rail in its bay among those of the frame.
pub(super) fn moment_of(all: &[RailMoment], check: &RailCheck) -> Option<Moment> {
    all.iter().find(|rail| (rail.bay, rail.place) == (check.bay, check.place)).map(|rail| rail.moment)
}

/// A moment of the frame at the level of a strength, and over it.
pub(super) fn bending(
    moment: Moment,
    strength: &PostStrength,
    level: Level,
    ledger: &mut impl Ledger,
) -> (Moment, f64) {
    let (demand, _) = at_level(level, strength.format, (moment, Force::from_si(0.0)), ledger);
    (demand, MomentRatio { demand, capacity: strength.moment }.work(ledger))
}

fn gust_of(check: &RailCheck) -> f64 {
    check.limit_gust.map_or(f64::INFINITY, Quantity::si)
}

/// The worst flag; of equal ones the largest ratio, and of these the first.
fn worst<'c>(checks: impl Iterator<Item = &'c RailCheck>) -> Option<&'c RailCheck> {
    let rank = |check: &RailCheck| (check.flag(), check.ratio().unwrap_or(0.0));
    checks.reduce(|one, other| {
        let ((flag, ratio), (other_flag, other_ratio)) = (rank(one), rank(other));
        if other_flag > flag || other_flag == flag && other_ratio > ratio { other } else { one }
    })
}

/// Why a rail whose tube nobody looked at is not checked.
pub const NO_WALL: &str = "the wall of the rail is not known: measure it with a caliper at an open end";
const NO_RAIL: &str = "there is no rail: what the wires and the posts do instead is not worked";
const WIRE_BELOW: &str = "no bottom rail: the lower part of the cloth hangs on a wire, which is not worked";
const WIRE_ABOVE: &str = "no top rail: the upper part of the cloth hangs on a wire, which is not worked";
/// Why cloth is not checked where a wire stands for a rail.
pub const HANGS_ON_WIRE: [&str; 2] = [WIRE_BELOW, WIRE_ABOVE];
const NO_ROWS: &str = "what the cloth is tied to is not known, so its pull on the rails is not";
const LEAF: &str = "a gate: the frame of its own leaf is not known";
const REFUSED: &str = "the sizes of the rail lie outside the rule of its strength";

/// What is asked of the rails of a run, and when they reach their limit.
///
/// # Errors
/// If the wind code refuses.
pub fn rails_verdict(fence: &Fence, run: usize, site: &Site) -> Result<RailsVerdict, VerdictError> {
    let this = &fence.runs[run];
    let pushed = |push| on_rails(this, push).map(|rails| rails.into_iter().map(move |rail| (push, rail)));
    let rows_are_known = on_rails(this, Push::Off).is_some();
    let hung: Vec<_> = [Push::Onto, Push::Off].into_iter().filter_map(pushed).flatten().collect();
    let bare: Vec<_> = pushed(Push::Either).into_iter().flatten().collect();
    let of = |bay: usize| match (this.bays[bay].gate, this.has_cloth(bay)) {
        (true, _) => &[],
        (false, true) => hung.as_slice(),
        (false, false) => bare.as_slice(),
    };
    let is_known =
        RailPlace::ALL.iter().any(|place| this.rails.at(*place).is_some_and(|rail| rail.tube.is_some()));
    let lines = |event| {
        rail_lines(fence, run, Dress::AsHung, site, event, |bay| of(bay).iter().map(|(_, rail)| rail))
            .map_err(|error| VerdictError::Wind { run: this.name.clone(), error })
    };
    let at_gust = if is_known { Some(lines(Event::Gust(REFERENCE_GUST))?) } else { None };
    let at_design = if is_known && site.wind_speed().is_some() { Some(lines(Event::Design)?) } else { None };
    let level = site.code().level();
    let mut checks = Vec::new();
    for (bay, width) in this.bays.iter().map(|bay| bay.width).enumerate() {
        let line = |lines: &Option<Vec<Vec<Option<RailLine>>>>, number: usize| {
            lines.as_ref().and_then(|lines| lines[bay][number])
        };
        for (number, (push, on_rail)) in of(bay).iter().enumerate() {
            let Some(asked) = Asked::of(this, bay, on_rail, level) else { continue };
            checks.push(match line(&at_gust, number) {
                Some(gust) => asked.check(*push, gust, line(&at_design, number)),
                None => asked.not(*push, NO_WALL),
            });
        }
        checks.extend(
            without_rail(this, bay, rows_are_known)
                .map(|(place, push, why)| RailCheck::not(place, bay, push, width, why)),
        );
    }
    checks.sort_by_key(|check| (check.bay, check.place));
    Ok(RailsVerdict { checks })
}

/// What takes the place of a rail in a bay, and is not worked.
fn without_rail(
    run: &Run,
    bay: usize,
    rows_are_known: bool,
) -> impl Iterator<Item = (RailPlace, Push, &'static str)> {
    let (rails, half) = (&run.rails, run.height * 0.5);
    let cloth = run.screen.as_ref().filter(|_| run.has_cloth(bay));
    let push = if cloth.is_some() { Push::Onto } else { Push::Either };
    let has_any = RailPlace::ALL.iter().any(|place| rails.at(*place).is_some());
    let (top, bottom) = (RailPlace::Top, RailPlace::Bottom);
    let found: [Option<(RailPlace, Push, &'static str)>; 3] = match cloth {
        _ if run.bays[bay].gate => [Some((top, push, LEAF)), None, None],
        None => [(!has_any).then_some((top, push, NO_RAIL)), None, None],
        Some(cloth) => [
            (rails.top.is_none() && cloth.top > half).then_some((top, push, WIRE_ABOVE)),
            (rails.bottom.is_none() && cloth.bottom < half).then_some((bottom, push, WIRE_BELOW)),
            (has_any && !rows_are_known).then_some((top, Push::Off, NO_ROWS)),
        ],
    };
    found.into_iter().flatten()
}

/// One rail in one bay, ready to be asked.
struct Asked {
    rail: Rail,
    place: RailPlace,
    bay: usize,
    span: Length,
    which: Span,
    level: Level,
}

impl Asked {
    fn of(run: &Run, bay: usize, on_rail: &OnRail, level: Level) -> Option<Self> {
        let rail = run.rails.at(on_rail.place)?;
        let which =
            if rail.splice == Splice::Whole && goes_on(run, bay) { Span::Inside } else { Span::BesideSplice };
        Some(Self { rail, place: on_rail.place, bay, span: run.bays[bay].width, which, level })
    }

    const fn not(&self, push: Push, why: &'static str) -> RailCheck {
        RailCheck::not(self.place, self.bay, push, self.span, why)
    }

    fn check(&self, push: Push, gust: RailLine, design: Option<RailLine>) -> RailCheck {
        let not = |why| self.not(push, why);
        if self.rail.tube.is_none() {
            return not(NO_WALL);
        }
        let Ok(strength) = self.rail.strength(self.span, &mut Blank) else { return not(REFUSED) };
        let limit = |line| {
            let ratio = self.design(line, &strength, &mut Blank).ratio;
            LimitGust { gust: REFERENCE_GUST, ratio }.work(&mut Blank)
        };
        RailCheck {
            design: design.map(|line| self.design(line, &strength, &mut Blank)),
            strength: Some(strength),
            limit_gust: (gust.load.si() != 0.0).then(|| limit(gust)),
            why: None,
            ..not(NO_SPEED)
        }
    }

    fn design(&self, line: RailLine, strength: &PostStrength, ledger: &mut impl Ledger) -> RailDesign {
        if self.which == Span::BesideSplice && self.rail.splice == Splice::NotSaid {
            let _ = ledger.judge("spans", SPLICED);
        }
        let load = crate::units::LineLoad::from_si(line.load.si().abs());
        let whole = (self.which.moment(load, self.span, ledger), self.which.shear(load, self.span, ledger));
        let (moment, shear) = at_level(self.level, strength.format, whole, ledger);
        let bending = MomentRatio { demand: moment, capacity: strength.moment }.work(ledger);
        let shearing =
            strength.shear.map_or(0.0, |(capacity, _)| ShearRatio { demand: shear, capacity }.work(ledger));
        let by_shear = shearing > bending;
        RailDesign { line, moment, shear, ratio: if by_shear { shearing } else { bending }, by_shear }
    }
}

/// Whether a rail goes on through four bays or more of one width, of which this is one, without a gate between.
fn goes_on(run: &Run, bay: usize) -> bool {
    let bays = &run.bays;
    let from = (0..bay).rev().take_while(|at| !bays[*at].gate).last().unwrap_or(bay);
    let to = (bay..bays.len()).take_while(|at| !bays[*at].gate).last().map_or(bay, |last| last + 1);
    let width = bays[bay].width;
    let one_width = bays[from..to].iter().all(|one| ((one.width - width) / width).pure().abs() < ROUNDING);
    to - from >= GOES_ON && one_width
}

/// Writes down the rail of a run that reaches its limit first: its load, its strength, its ratio and limit gust.
///
/// # Errors
/// If the wind code refuses.
pub fn rails_workings(
    fence: &Fence,
    run: usize,
    site: &Site,
    ledger: &mut Vec<Entry>,
) -> Result<(), VerdictError> {
    let this = &fence.runs[run];
    let found = rails_verdict(fence, run, site)?;
    let Some(first) = found.first() else { return Ok(()) };
    let rails = on_rails(this, first.push).unwrap_or_default();
    let Some(on_rail) = rails.iter().find(|rail| rail.place == first.place) else { return Ok(()) };
    let Some(asked) = Asked::of(this, first.bay, on_rail, site.code().level()) else { return Ok(()) };
    let Some(strength) = first.strength else { return Ok(()) };
    let event = if first.design.is_some() { Event::Design } else { Event::Gust(REFERENCE_GUST) };
    let wind = |error| VerdictError::Wind { run: this.name.clone(), error };
    let wanted = |bay: usize| (bay == first.bay).then_some(on_rail).into_iter();
    let way = match first.push {
        Push::Onto => ", the cloth pressed onto it",
        Push::Off => ", the cloth pulled off",
        Push::Either => "",
    };
    for (event, last) in [(event, false), (Event::Gust(REFERENCE_GUST), true)] {
        let lines = rail_lines(fence, run, Dress::AsHung, site, event, wanted).map_err(wind)?;
        let Some(line) = lines[first.bay][0] else { continue };
        ledger.push(Entry::Heading(if last {
            format!(
                "Limit gust of the {}, from a 3-second gust taken as it is: {}",
                first.place.name(),
                line.place
            )
        } else {
            format!(
                "The {} in bay {}{way}, under the largest pressure there ({})",
                first.place.name(),
                first.bay + 1,
                line.place
            )
        }));
        rail_workings(fence, run, (first.bay, on_rail), line.case, site, event, ledger).map_err(wind)?;
        if !last {
            ledger.push(Entry::Heading(format!("Strength of the {}", first.place.name())));
            // That it can be worked was seen when the run was judged.
            let _ = asked.rail.strength(asked.span, ledger);
        }
        ledger.push(Entry::Heading(format!(
            "Moment and shear of the {}, over its strength",
            first.place.name()
        )));
        let RailDesign { ratio, .. } = asked.design(line, &strength, ledger);
        if last {
            let _ = LimitGust { gust: REFERENCE_GUST, ratio }.work(ledger);
        }
    }
    Ok(())
}
