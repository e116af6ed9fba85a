//! What bears on the rails of a bay, from either side of the cloth.
//!
//! Pressed *onto* the fence, cloth and chain link bear on what is nearest: a rail takes half the distance to the next
//! rail, or to the wire that stands for one. Pulled *off*, the cloth hands itself to the rows it is tied in, and a row to
//! the rail there; where there is none, or the cloth is tied to the chain link alone, a row hangs on the mesh between two
//! supports and is shared by the lever rule. The chain link beside the cloth, and a bare bay, bear in both directions.

use super::Dress;
use super::pieces::Pieces;
use crate::fastening::ties::Row;
use crate::fence::{Fence, RailPlace, Run, TiedTo};
use crate::units::{Length, LineLoad, Quantity};
use crate::wind::{Case, Event, Site, WindError};
use crate::workings::{Blank, Entry};

/// The way the wind acts on cloth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Push {
    /// It presses the cloth onto the fence.
    Onto,
    /// It pulls the cloth off.
    Off,
    /// Either way: no cloth hangs there.
    Either,
}

impl Push {
    /// In words.
    #[must_use]
    pub const fn in_words(self) -> &'static str {
        match self {
            Self::Onto => "presses on",
            Self::Off => "pulls off",
            Self::Either => "either way",
        }
    }

    /// In one word, for programs.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Onto => "onto",
            Self::Off => "off",
            Self::Either => "either",
        }
    }
}

/// Part of the height of the cloth that a rail takes, whole or by the lever rule.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct ClothShare {
    pub(super) low: Length,
    pub(super) high: Length,
    /// From the row to the other support, and from support to support; nothing where the rail takes all of it.
    pub(super) of: Option<(Length, Length)>,
    /// Why this part.
    pub(super) because: &'static str,
}

const HALFWAY: &str = "common practice, no source: pressed on, a rail takes the cloth from halfway to the rail below it up to \
                       halfway to the one above; a wire, or the ground, stands for one that is not there";
const OF_ROW: &str = "common practice, no source: pulled off, a row takes the cloth up to halfway to the next row, and beyond \
                      the last to the edge";
/// Why a rail takes this much of the chain link.
pub(super) const OF_MESH: &str = "common practice, no source: a rail takes the chain link up to halfway to the next rail; a \
                                  wire, or the ground, stands for one that is not there";

/// What bears on one rail.
#[derive(Debug, Clone, PartialEq)]
pub struct OnRail {
    /// Which rail.
    pub place: RailPlace,
    pub(super) cloth: Vec<ClothShare>,
    /// The height of chain link nearest to it.
    pub(super) mesh: (Length, Length),
}

/// The load on a rail in the case with the largest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RailLine {
    /// For each length of rail.
    pub load: LineLoad,
    /// The case.
    pub case: Case,
    /// The case in the code's words.
    pub place: &'static str,
}

/// The rails of a run and their heights above the foot of the posts, from below; a wire along the ground, or along the top,
/// stands for a rail that is not there.
fn supports(run: &Run) -> Vec<(Option<RailPlace>, Length)> {
    let rails = &run.rails;
    let mut supports = vec![(rails.bottom.map(|_| RailPlace::Bottom), Length::from_si(0.0))];
    if rails.middle.is_some() {
        supports.push((Some(RailPlace::Middle), run.height * 0.5));
    }
    supports.push((rails.top.map(|_| RailPlace::Top), run.height));
    supports
}

/// What bears on each rail of a run; nothing for a pull whose rows are not known.
#[must_use]
pub fn on_rails(run: &Run, push: Push) -> Option<Vec<OnRail>> {
    let supports = supports(run);
    let far = run.height * 2.0;
    let nearest = |at: usize| {
        let here = supports[at].1;
        let low = at.checked_sub(1).map_or(-far, |below| (supports[below].1 + here) * 0.5);
        let high = supports.get(at + 1).map_or(far, |above| (above.1 + here) * 0.5);
        (low, high)
    };
    let mut rails = Vec::new();
    for (at, (place, _)) in supports.iter().enumerate() {
        let Some(place) = *place else { continue };
        let mesh = nearest(at);
        let cloth = match push {
            Push::Onto => vec![ClothShare { low: mesh.0, high: mesh.1, of: None, because: HALFWAY }],
            Push::Off => rows_on(run, &supports, at)?,
            Push::Either => Vec::new(),
        };
        rails.push(OnRail { place, cloth, mesh });
    }
    Some(rails)
}

/// What the rows of the cloth hand to one support.
fn rows_on(run: &Run, supports: &[(Option<RailPlace>, Length)], at: usize) -> Option<Vec<ClothShare>> {
    let screen = run.screen.as_ref()?;
    let fastening = screen.fastening.as_ref()?;
    let rows: Vec<(Row, Length)> = fastening
        .rows
        .level()
        .map(|row| match row {
            Row::Top => (row, screen.top),
            Row::Bottom => (row, screen.bottom),
            Row::Middle | Row::Sides => (row, (screen.bottom + screen.top) * 0.5),
        })
        .collect();
    let mut shares = Vec::new();
    for (number, (row, height)) in rows.iter().enumerate() {
        let high = number.checked_sub(1).map_or(screen.top, |above| (rows[above].1 + *height) * 0.5);
        let low = rows.get(number + 1).map_or(screen.bottom, |below| (below.1 + *height) * 0.5);
        let of = match row {
            Row::Top => RailPlace::Top,
            Row::Bottom => RailPlace::Bottom,
            Row::Middle | Row::Sides => RailPlace::Middle,
        };
        let rail = supports.iter().position(|(place, _)| *place == Some(of));
        let of = match rail.filter(|_| fastening.to == TiedTo::Rails) {
            Some(rail) if rail == at => None,
            Some(_) => continue,
            None => match lever(supports, at, *height) {
                Some(of) => of,
                None => continue,
            },
        };
        shares.push(ClothShare { low, high, of, because: OF_ROW });
    }
    Some(shares)
}

/// The share of a support in what hangs on the mesh at a height: all of it at the support and beyond the last, by the
/// lever rule between two, else nothing.
fn lever(
    supports: &[(Option<RailPlace>, Length)],
    at: usize,
    height: Length,
) -> Option<Option<(Length, Length)>> {
    let here = supports[at].1;
    if height == here {
        return Some(None);
    }
    let other = if height < here { at.checked_sub(1) } else { Some(at + 1) };
    match other.and_then(|other| supports.get(other)) {
        None => Some(None),
        Some((_, there)) => {
            let (apart, to_other) = if *there > here {
                (*there - here, *there - height)
            } else {
                (here - *there, height - *there)
            };
            (to_other.si() > 0.0).then_some(Some((to_other, apart)))
        }
    }
}

/// The largest load on each of the rails that are wanted in a bay, bay by bay, over all cases.
///
/// # Errors
/// As for [`run_loads`](super::run_loads).
pub fn rail_lines<'r, Rails: Iterator<Item = &'r OnRail>>(
    fence: &Fence,
    run: usize,
    dress: Dress,
    site: &Site,
    event: Event,
    wanted: impl Fn(usize) -> Rails,
) -> Result<Vec<Vec<Option<RailLine>>>, WindError> {
    let bays = fence.runs[run].bays.len();
    let mut lines: Vec<Vec<Option<RailLine>>> =
        (0..bays).map(|bay| vec![None; wanted(bay).count()]).collect();
    let mut pieces = Pieces::new(fence, run, dress);
    for case in Case::ALL {
        if !pieces.lay(site, case, event, &mut Blank)? {
            continue;
        }
        for (bay, lines) in lines.iter_mut().enumerate() {
            for (rail, line) in wanted(bay).zip(lines) {
                let load = pieces.on_rail(bay, rail, &mut Blank);
                if line.is_none_or(|before| load.si().abs() > before.load.si().abs()) {
                    *line = Some(RailLine { load, case, place: pieces.place });
                }
            }
        }
    }
    Ok(lines)
}

/// Writes down how one rail gets its load in one case, from the pressures of that case.
///
/// # Errors
/// As for [`run_loads`](super::run_loads).
pub fn rail_workings(
    fence: &Fence,
    run: usize,
    (bay, rail): (usize, &OnRail),
    case: Case,
    site: &Site,
    event: Event,
    ledger: &mut Vec<Entry>,
) -> Result<(), WindError> {
    let mut pieces = Pieces::new(fence, run, Dress::AsHung);
    if pieces.lay(site, case, event, &mut Blank)? {
        let _ = pieces.on_rail(bay, rail, ledger);
    }
    Ok(())
}
