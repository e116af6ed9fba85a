//! What ties, lacing and grommets are asked to carry when the wind pulls cloth off the fence, and when they go.
//!
//! Pressed onto the fence they carry nothing. As the wind turns every run sees both, and nothing found here relieves a
//! post.

use super::{LimitGust, REFERENCE_GUST, VerdictError};
use crate::fastening::lacing::Wrap;
use crate::fastening::membrane::Strip;
use crate::fastening::order::{LONGEST, PanelCount};
use crate::fastening::ties::{Hold, Panel, Row, strength};
use crate::fastening::unzip::{GREATEST, LEAST, Tie, after_the_first};
use crate::fastening::{FasteningError, Part, Ratio, rope};
use crate::fence::{Fastening, FasteningKind, Fence, Screen};
use crate::loads::cloth_peaks;
use crate::source::{Clause, OURS};
use crate::units::{Force, Pressure, Pure, Quantity, Velocity};
use crate::wind::{Event, Site};
use crate::workings::{Blank, Entry, Ledger};

/// The rule of the check: no document says what a tie of a screen must carry.
pub const PULL: Clause = OURS.at("pull over the strength its maker declares, without a factor");

/// The pull on one tie, one grommet or one turn of the rope.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pull {
    /// The row with the largest.
    pub row: Row,
    /// The largest pressure anywhere on the cloth of the bay.
    pub pressure: Pressure,
    /// The pull square to the edge.
    pub force: Force,
    /// Twice the pull by share of the cloth, after BS 8410:2007 6.1.2; nothing for cloth held at its sides only.
    pub twice: Option<Force>,
}

/// A pull held against the weakest of what is known to carry it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// Which part.
    pub part: Part,
    /// What it has to carry: the pull, or the tension of the rope.
    pub demand: Force,
    /// What it carries.
    pub capacity: Force,
    /// The one over the other.
    pub ratio: f64,
}

/// What holds the cloth of one bay.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BayFastening {
    /// At the design event, if there is a speed.
    pub design: Option<Pull>,
    /// The same against what carries it, where that is known.
    pub held: Option<Held>,
    /// The gust at which it starts to go, and which part.
    pub first: Option<(Velocity, Part)>,
    /// The row with the largest pull.
    pub row: Row,
}

/// What follows when the first tie of a row has gone in steady wind.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Then {
    /// Every tie of the row goes.
    AllGo,
    /// It stops.
    Stops {
        /// How many go at the least.
        gone: usize,
        /// How many there are.
        of: usize,
    },
    /// It stops or all go, as the neighbours take the load.
    Either,
}

/// What holds the cloth of a run.
#[derive(Debug, Clone, PartialEq)]
pub struct FasteningVerdict {
    /// Bay by bay; nothing where no cloth hangs.
    pub bays: Vec<Option<BayFastening>>,
    /// The gust at which it starts to go, and in which bay.
    pub first: Option<(Velocity, usize)>,
    /// Parts without a known strength.
    pub unknown: Vec<Part>,
    /// The pull in the plane of the cloth on each of its upright edges at the design event, for cloth held at its sides
    /// only.
    pub in_plane: Option<Force>,
}

/// Why a run's fastening is not worked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotWorked {
    /// No cloth hangs there.
    NoCloth,
    /// Nothing is known of what holds it.
    NotKnown,
    /// The spacing is not known.
    NoSpacing,
    /// Cloth held at its sides only, whose stiffness and slack are not known.
    NoStiffness,
    /// The sizes do not go together.
    Refused,
}

impl NotWorked {
    /// In words, with what to do.
    #[must_use]
    pub const fn why(self) -> &'static str {
        match self {
            Self::NoCloth => "no cloth hangs beside this post",
            Self::NotKnown => {
                "what holds the cloth is not known: ties or lacing, how strong, how far apart, at which edges"
            }
            Self::NoSpacing => "the spacing of what holds the cloth is not known: measure the widest",
            Self::NoStiffness => {
                "cloth held at its upright edges only pulls harder the tighter it hangs: ask its maker for the \
                 stiffness, and measure its slack"
            }
            Self::Refused => "cloth of this slack never goes taut, or its ties stand wider than its edges",
        }
    }
}

/// What is asked of what holds the cloth of a run, and when it goes.
///
/// # Errors
/// If the wind code refuses.
pub fn fastening_verdict(
    fence: &Fence,
    run: usize,
    site: &Site,
) -> Result<Result<FasteningVerdict, NotWorked>, VerdictError> {
    let this = &fence.runs[run];
    let hung = match Hung::of(fence, run) {
        Ok(hung) => hung,
        Err(why) => return Ok(Err(why)),
    };
    let peaks = |event| {
        cloth_peaks(fence, run, site, event)
            .map_err(|error| VerdictError::Wind { run: this.name.clone(), error })
    };
    let at_gust = peaks(Event::Gust(REFERENCE_GUST))?;
    let at_design = if site.wind_speed().is_some() { Some(peaks(Event::Design)?) } else { None };
    let mut bays = Vec::with_capacity(at_gust.len());
    let mut in_plane: Option<Force> = None;
    for (bay, peak) in at_gust.iter().enumerate() {
        let Some((peak, _)) = *peak else {
            bays.push(None);
            continue;
        };
        let design = at_design.as_ref().and_then(|design| design[bay]).map(|(pressure, _)| pressure);
        let worked = hung.bay(peak, design);
        let Ok(found) = worked else { return Ok(Err(NotWorked::Refused)) };
        if let (Some(pressure), Some(strip)) = (design, hung.strip(design.unwrap_or_default()))
            && pressure.si() > 0.0
        {
            let pull =
                strip.held(&mut Blank).and_then(|held| held.in_plane(hung.hold.panel().height, &mut Blank));
            let Ok(pull) = pull else { return Ok(Err(NotWorked::Refused)) };
            in_plane = Some(in_plane.map_or(pull, |before| before.max(pull)));
        }
        bays.push(Some(found));
    }
    let first = bays
        .iter()
        .enumerate()
        .filter_map(|(bay, found)| found.and_then(|found| found.first).map(|(gust, _)| (gust, bay)))
        .min_by(|one, other| one.0.si().total_cmp(&other.0.si()));
    Ok(Ok(FasteningVerdict { bays, first, unknown: hung.unknown(), in_plane }))
}

/// What follows when the first tie of a run's longest row has gone, in the gust in which it goes; nothing for lacing, for
/// cloth held at its sides only, and where no strength is known.
///
/// The pulls are those of the largest pressure in each bay: ours, since they do not all come in one case.
///
/// # Errors
/// If the wind code refuses.
pub fn after_the_first_tie(fence: &Fence, run: usize, site: &Site) -> Result<Option<Then>, VerdictError> {
    let this = &fence.runs[run];
    let Ok(hung) = Hung::of(fence, run) else { return Ok(None) };
    let FasteningKind::Ties { declared, age } = hung.fastening.kind else { return Ok(None) };
    let (Ok(Some(strength)), Some(row)) =
        (strength(declared, age, &mut Blank), hung.hold.rows().level().next())
    else {
        return Ok(None);
    };
    let peaks = cloth_peaks(fence, run, site, Event::Gust(REFERENCE_GUST))
        .map_err(|error| VerdictError::Wind { run: this.name.clone(), error })?;
    let Some((from, to)) = this.screened() else { return Ok(None) };
    let spacing = hung.hold.spacing();
    let count = ((to - from) / spacing).pure().floor() as usize + 1;
    let mut ties = Vec::with_capacity(count);
    let mut bay = 0;
    for tie in 0..count {
        let at = from + spacing * tie as f64;
        while bay + 1 < this.bays.len() && this.posts[bay + 1].at < at {
            bay += 1;
        }
        let Some((pressure, _)) = peaks[bay] else { continue };
        let Ok(pull) = hung.hold.pull(row, pressure, &mut Blank) else { return Ok(None) };
        ties.push(Tie { pull: pull.nominal, strength });
    }
    let ends = |spread: f64| after_the_first(&ties, spread, &mut Blank).ok();
    let (Some((_, least)), Some((_, greatest))) = (ends(LEAST.value), ends(GREATEST.value)) else {
        return Ok(None);
    };
    Ok(Some(match (least.runs_out(), greatest.runs_out()) {
        (true, true) => Then::AllGo,
        (false, false) => Then::Stops { gone: least.gone().count(), of: ties.len() },
        _ => Then::Either,
    }))
}

/// Writes down the largest pull on what holds the cloth of a run and what it is held against.
///
/// # Errors
/// If the wind code refuses.
pub fn fastening_workings(
    fence: &Fence,
    run: usize,
    site: &Site,
    ledger: &mut Vec<Entry>,
) -> Result<(), VerdictError> {
    let this = &fence.runs[run];
    let Ok(hung) = Hung::of(fence, run) else { return Ok(()) };
    let event = if site.wind_speed().is_some() { Event::Design } else { Event::Gust(REFERENCE_GUST) };
    let peaks = cloth_peaks(fence, run, site, event)
        .map_err(|error| VerdictError::Wind { run: this.name.clone(), error })?;
    let largest = peaks
        .iter()
        .enumerate()
        .filter_map(|(bay, peak)| peak.map(|(pressure, place)| (bay, pressure, place)))
        .max_by(|one, other| one.1.si().total_cmp(&other.1.si()));
    let Some((bay, pressure, place)) = largest else { return Ok(()) };
    ledger.push(Entry::Heading(format!(
        "What holds the cloth, pulled off in bay {} under the largest pressure there ({place})",
        bay + 1
    )));
    // That it can be worked was seen when the run was judged.
    let _ = hung.pull(pressure, ledger).and_then(|pull| hung.against(pull.force, ledger));
    Ok(())
}

/// Cloth and what holds it, ready to be asked.
struct Hung<'a> {
    fastening: &'a Fastening,
    hold: Hold,
}

impl<'a> Hung<'a> {
    fn of(fence: &'a Fence, run: usize) -> Result<Self, NotWorked> {
        let this = &fence.runs[run];
        let screen: &Screen = this.screen.as_ref().ok_or(NotWorked::NoCloth)?;
        let fastening = screen.fastening.as_ref().ok_or(NotWorked::NotKnown)?;
        let spacing = fastening.spacing.ok_or(NotWorked::NoSpacing)?;
        if fastening.rows.is_sides_only() && fastening.cloth.is_none() {
            return Err(NotWorked::NoStiffness);
        }
        let (from, to) = this.screened().ok_or(NotWorked::NoCloth)?;
        let length = match fastening.panel {
            Some(panel) => panel,
            None => {
                let panels = PanelCount { length: to - from, longest: LONGEST.value }
                    .work(&mut Blank)
                    .map_err(|_| NotWorked::Refused)?;
                (to - from) / panels
            }
        };
        let panel = Panel { length, height: screen.top - screen.bottom };
        let hold = Hold::try_new(panel, fastening.rows.clone(), spacing).map_err(|_| NotWorked::Refused)?;
        Ok(Self { fastening, hold })
    }

    /// The strip between two upright edges, for cloth held at its sides only.
    fn strip(&self, pressure: Pressure) -> Option<Strip> {
        let cloth = self.fastening.cloth.filter(|_| self.hold.rows().is_sides_only())?;
        Some(Strip {
            pressure,
            span: self.hold.panel().length,
            stiffness: cloth.stiffness,
            slack: cloth.slack,
            width: self.hold.spacing(),
        })
    }

    /// The largest pull of any row under a pressure.
    fn pull(&self, pressure: Pressure, ledger: &mut impl Ledger) -> Result<Pull, FasteningError> {
        if let Some(strip) = self.strip(pressure) {
            let held = strip.held(ledger)?;
            return Ok(Pull { row: Row::Sides, pressure, force: held.edge, twice: None });
        }
        let pulls = self.hold.pulls(|_| pressure, ledger)?;
        let largest =
            pulls.into_iter().reduce(|one, other| if other.nominal > one.nominal { other } else { one });
        let largest = largest.ok_or(FasteningError::NoRows)?;
        Ok(Pull { row: largest.row, pressure, force: largest.nominal, twice: Some(largest.twice) })
    }

    /// A pull against the weakest of what is known to carry it.
    fn against(&self, pull: Force, ledger: &mut impl Ledger) -> Result<Option<Held>, FasteningError> {
        let by = match self.fastening.kind {
            FasteningKind::Ties { declared, age } => {
                strength(declared, age, ledger)?.map(|capacity| (Part::Tie, pull, capacity))
            }
            FasteningKind::Lacing { rope: diameter, breaking, years, rail, offset } => {
                let wrap = Wrap { rail, rope: diameter, offset, spacing: self.hold.spacing() };
                let tension = wrap.tension(pull, ledger)?;
                match breaking {
                    Some(breaking) => Some((Part::Rope, tension, rope::left(breaking, years, ledger)?.least)),
                    None => None,
                }
            }
        };
        let grommet = self.fastening.grommet.map(|capacity| (Part::Grommet, pull, capacity));
        let mut weakest: Option<Held> = None;
        for (part, demand, capacity) in [by, grommet].into_iter().flatten() {
            let ratio = Ratio { demand, capacity }.work(ledger);
            if weakest.is_none_or(|before| ratio > before.ratio) {
                weakest = Some(Held { part, demand, capacity, ratio });
            }
        }
        Ok(weakest)
    }

    /// Parts without a known strength.
    fn unknown(&self) -> Vec<Part> {
        let by = match self.fastening.kind {
            FasteningKind::Ties { declared: None, .. } => Some(Part::Tie),
            FasteningKind::Lacing { breaking: None, .. } => Some(Part::Rope),
            _ => None,
        };
        let grommet = self.fastening.grommet.is_none().then_some(Part::Grommet);
        by.into_iter().chain(grommet).chain([Part::Hem]).collect()
    }

    fn bay(&self, at_gust: Pressure, at_design: Option<Pressure>) -> Result<BayFastening, FasteningError> {
        let pull = self.pull(at_gust, &mut Blank)?;
        let first = self.first(at_gust)?;
        let design = at_design.map(|pressure| self.pull(pressure, &mut Blank)).transpose()?;
        let held = match design {
            Some(design) => self.against(design.force, &mut Blank)?,
            None => None,
        };
        Ok(BayFastening { design, held, first, row: pull.row })
    }

    /// The gust at which the weakest of what is known is at its strength. Pressure goes with the square of the gust,
    /// and so does the pull, but for cloth held at its sides only: there it is looked for between two gusts.
    fn first(&self, at_gust: Pressure) -> Result<Option<(Velocity, Part)>, FasteningError> {
        let at = |times: f64| -> Result<Option<Held>, FasteningError> {
            self.against(self.pull(at_gust * times, &mut Blank)?.force, &mut Blank)
        };
        let Some(held) = at(1.0)? else { return Ok(None) };
        // Beyond the pressure under which cloth hangs as half a circle nothing is worked: there it is past its strength.
        let mut times = 1.0 / held.ratio;
        if self.strip(at_gust).is_some() {
            let (mut low, mut high) = (1e-9_f64, 1e3_f64);
            for _ in 0..200 {
                times = (low * high).sqrt();
                match at(times) {
                    Ok(Some(held)) if held.ratio < 1.0 => low = times,
                    _ => high = times,
                }
            }
        }
        let gust = LimitGust { gust: REFERENCE_GUST, ratio: 1.0 / times }.work(&mut Blank);
        Ok(Some((gust, held.part)))
    }
}
