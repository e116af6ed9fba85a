//! The pressures of one case as stretches of load along a run, and their share at each post.

use super::rails::{OF_MESH, OnRail};
use super::statics::{
    BaseMoment, ClothLoad, MeshLoad, PostFace, PostShare, PressureAtHeight, RailLoad, RowShare, SharedLoad,
};
use super::{BayLoad, CaseLoads, Dress};
use crate::fence::{Fence, Rail, Run, Screen};
use crate::numerics::ROUNDING;
use crate::source::Stated;
use crate::units::{Force, Length, LineLoad, Measure, Moment, Pressure, Pure, Quantity, System, Value};
use crate::wind::{Case, Event, Panel, Pressures, Site, Strip, WindError, Zone};
use crate::workings::{Blank, Entry, Ledger};

/// A stretch of load within one bay, straight between its ends, with its resultant at one height.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    pub(super) bay: usize,
    pub(super) from: Length,
    pub(super) to: Length,
    pub(super) load_from: LineLoad,
    pub(super) load_to: LineLoad,
    pub(super) arm: Length,
    /// The heights it is spread over; a rail's own face stands at one.
    pub(super) over: (Length, Length),
}

/// The load on one post's own face.
#[derive(Debug, Clone, Copy)]
pub(super) struct Point {
    pub(super) post: usize,
    pub(super) face: PostFace,
    pub(super) arm: Length,
    /// The heights it is spread over.
    pub(super) over: (Length, Length),
}

/// A load for each length of run.
#[derive(Debug, Clone, Copy)]
struct Line {
    load: LineLoad,
    arm: Length,
    over: (Length, Length),
}

/// A rectangle of the run without cloth: bays `first..end`, from `low` to `high`.
#[derive(Debug, Clone, Copy)]
struct Region {
    first: usize,
    end: usize,
    low: Length,
    high: Length,
}

/// One case laid out along a run.
pub(super) struct Pieces<'a> {
    fence: &'a Fence,
    run: &'a Run,
    screen: Option<&'a Screen>,
    panel: Option<Panel>,
    regions: Vec<Region>,
    pub(super) pieces: Vec<Piece>,
    /// How many of them, from the first, are cloth.
    cloth: usize,
    pub(super) points: Vec<Point>,
    /// The pressure on the solid area of each region.
    open: Vec<(Region, Pressure)>,
    /// How far the resultant of the cloth stands above its middle.
    eccentricity: Length,
    /// Mean pressure and zone of each bay.
    bays: Vec<(Pressure, &'static str)>,
    case: Case,
    /// The case in the code's words.
    pub(super) place: &'static str,
}

const NOTHING: f64 = 0.0;

impl<'a> Pieces<'a> {
    pub(super) fn new(fence: &'a Fence, at: usize, dress: Dress) -> Self {
        let run = &fence.runs[at];
        let screen = run.screen.as_ref().filter(|_| dress == Dress::AsHung);
        let panel = screen.map(|screen| Panel {
            bottom: run.base_above_ground + screen.bottom,
            height: screen.top - screen.bottom,
            length: run.posts[screen.end_bay].at - run.posts[screen.first_bay].at,
            solidity: run.solidity(&mut Blank).unwrap_or_else(|| screen.own_solidity(&mut Blank)),
            return_at_start: fence.return_length(at, true),
            return_at_finish: fence.return_length(at, false),
        });
        let (ground, top, count) = (Length::from_si(0.0), run.height, run.bays.len());
        let regions: Vec<Region> = match screen {
            None => vec![Region { first: 0, end: count, low: ground, high: top }],
            Some(screen) => {
                let (first, end) = (screen.first_bay, screen.end_bay);
                [
                    Region { first: 0, end: first, low: ground, high: top },
                    Region { first, end, low: ground, high: screen.bottom },
                    Region { first, end, low: screen.top, high: top },
                    Region { first: end, end: count, low: ground, high: top },
                ]
                .into_iter()
                .filter(|region| region.end > region.first && region.high > region.low)
                .collect()
            }
        };
        let faces = regions.iter().map(|region| region.end - region.first + 1).sum();
        Self {
            fence,
            run,
            screen,
            panel,
            regions,
            pieces: Vec::with_capacity(4 * count),
            cloth: 0,
            points: Vec::with_capacity(faces),
            open: Vec::new(),
            eccentricity: Length::from_si(NOTHING),
            bays: vec![(Pressure::from_si(NOTHING), ""); count],
            case: Case::Square,
            place: "",
        }
    }

    /// Lays one case out; false if the code has no such case for this run.
    pub(super) fn lay(
        &mut self,
        site: &Site,
        case: Case,
        event: Event,
        ledger: &mut impl Ledger,
    ) -> Result<bool, WindError> {
        self.pieces.clear();
        self.cloth = 0;
        self.points.clear();
        self.open.clear();
        self.bays.fill((Pressure::from_si(NOTHING), ""));
        self.case = case;
        self.place = site.open_place();
        match self.panel {
            // Open work alone knows no square and no skewed wind: one case and the least pressure.
            None if !matches!(case, Case::Open | Case::Least) => return Ok(false),
            None => {}
            Some(panel) => {
                let Some(pressures) = site.pressures(&panel, case, event, ledger)? else { return Ok(false) };
                self.place = pressures.place;
                self.lay_cloth(&panel, &pressures, ledger);
                self.cloth = self.pieces.len();
            }
        }
        for region in 0..self.regions.len() {
            if !self.lay_open(self.regions[region], site, case, event, ledger)? {
                return Ok(false);
            }
        }
        if self.panel.is_none() && case == Case::Least {
            self.place = site.least_clause().place;
        }
        Ok(true)
    }

    fn lay_cloth(&mut self, panel: &Panel, pressures: &Pressures, ledger: &mut impl Ledger) {
        let Some(screen) = self.screen else { return };
        let arm = pressures.resultant - self.run.base_above_ground;
        self.eccentricity = pressures.resultant - (panel.bottom + panel.height * 0.5);
        let start = self.run.posts[screen.first_bay].at;
        let mut bay = screen.first_bay;
        let mut widest = Length::from_si(NOTHING);
        for zone in &pressures.zones {
            let (zone_from, zone_to) = (start + zone.from, start + zone.to);
            let load = |pressure, ledger: &mut _| ClothLoad { pressure, height: panel.height }.work(ledger);
            let load_from = load(zone.pressure_from, ledger);
            let load_to = if zone.pressure_to == zone.pressure_from {
                load_from
            } else {
                load(zone.pressure_to, ledger)
            };
            while bay < screen.end_bay {
                let (bay_from, bay_to) = (self.run.posts[bay].at, self.run.posts[bay + 1].at);
                let (from, to) = (larger(zone_from, bay_from), smaller(zone_to, bay_to));
                if to > from {
                    let at = |place: Length| along(zone, place - start);
                    let piece = Piece {
                        bay,
                        from,
                        to,
                        load_from: between(load_from, load_to, at(from)),
                        load_to: between(load_from, load_to, at(to)),
                        arm,
                        over: (screen.bottom, screen.top),
                    };
                    self.pieces.push(piece);
                    let (mean, name) = &mut self.bays[bay];
                    let mid = (piece.load_from + piece.load_to) * 0.5 / panel.height;
                    *mean += mid * ((to - from) / (bay_to - bay_from)).pure();
                    if from == bay_from || to - from > widest {
                        (*name, widest) = (zone.name, to - from);
                    }
                }
                if zone_to < bay_to {
                    break;
                }
                bay += 1;
            }
        }
    }

    fn lay_open(
        &mut self,
        region: Region,
        site: &Site,
        case: Case,
        event: Event,
        ledger: &mut impl Ledger,
    ) -> Result<bool, WindError> {
        let Region { first, end, low, high } = region;
        let run = self.run;
        let (height, middle) = (high - low, (low + high) * 0.5);
        let length = run.posts[end].at - run.posts[first].at;
        let mesh = run.chain_link.map_or(NOTHING, |link| link.solidity(&mut Blank));
        let rails = rails_in(run, low, high);
        let mut solid = length * height * mesh;
        let mut first_moment = solid * middle;
        for (diameter, at) in rails.iter().flatten() {
            solid += length * *diameter;
            first_moment += length * *diameter * *at;
        }
        // A post between two regions side by side shows half of its face in each.
        let shown = |post: usize| {
            if (post == first && first > 0) || (post == end && end < run.bays.len()) { 0.5 } else { 1.0 }
        };
        for post in first..=end {
            let face = self.fence.kinds[run.posts[post].kind].face() * height * shown(post);
            solid += face;
            first_moment += face * middle;
        }
        if solid.si() <= NOTHING {
            return Ok(true);
        }
        ledger.write(|| {
            let written = |length: Length| {
                let value = Value::of(length);
                format!("{} ({})", value.written(System::Us), value.written(System::Si))
            };
            let base = run.base_above_ground;
            Entry::Heading(format!(
                "Open work from {} to {} above the ground, bays {} to {}",
                written(base + low),
                written(base + high),
                first + 1,
                end
            ))
        });
        let centroid = run.base_above_ground + first_moment / solid;
        let strip = Strip { centroid, solidity: (solid / (length * height)).pure() };
        let Some(pressure) = site.open_pressure(&strip, case, event, ledger)? else { return Ok(false) };
        self.open.push((region, pressure));
        let mut lines: [Option<Line>; 4] = [None; 4];
        if mesh > NOTHING {
            let load = MeshLoad { pressure, solidity: mesh, height }.work(ledger);
            lines[0] = Some(Line { load, arm: middle, over: (low, high) });
        }
        for (at, rail) in rails.iter().enumerate() {
            lines[at + 1] = rail.map(|(diameter, place)| {
                let load = RailLoad { pressure, diameter }.work(ledger);
                Line { load, arm: place, over: (place, place) }
            });
        }
        for bay in first..end {
            for Line { load, arm, over } in lines.iter().flatten().copied() {
                let (from, to) = (run.posts[bay].at, run.posts[bay + 1].at);
                self.pieces.push(Piece { bay, from, to, load_from: load, load_to: load, arm, over });
                if !self.panel.is_some_and(|_| run.has_cloth(bay)) {
                    self.bays[bay].0 += load / height;
                }
            }
        }
        for post in first..=end {
            let diameter = self.fence.kinds[run.posts[post].kind].face();
            let face = PostFace { pressure, diameter, height, share: shown(post) };
            self.points.push(Point { post, face, arm: middle, over: (low, high) });
        }
        Ok(true)
    }

    /// The largest pressure anywhere on the cloth of a bay, whichever way it acts.
    pub(super) fn peak(&self, bay: usize) -> Pressure {
        let Some(panel) = self.panel else { return Pressure::from_si(NOTHING) };
        let cloth = self.pieces[..self.cloth].iter().filter(|piece| piece.bay == bay);
        let largest = cloth
            .flat_map(|piece| [piece.load_from, piece.load_to])
            .map(|load| load.si().abs())
            .fold(NOTHING, f64::max);
        LineLoad::from_si(largest) / panel.height
    }

    /// The load on one rail of a bay: its share of the cloth at the largest pressure there, of the chain link beside the
    /// cloth, and its own face where no cloth covers it.
    pub(super) fn on_rail(&self, bay: usize, rail: &OnRail, ledger: &mut impl Ledger) -> LineLoad {
        let mut load = LineLoad::from_si(NOTHING);
        let mut terms = 0;
        if let (Some(panel), Some(screen)) = (self.panel, self.screen)
            && self.run.has_cloth(bay)
        {
            let (mean, height, eccentricity) = (self.peak(bay), panel.height, self.eccentricity);
            let middle = screen.bottom + height * 0.5;
            for share in &rail.cloth {
                let Some((low, high)) = overlap((screen.bottom, screen.top), (share.low, share.high)) else {
                    continue;
                };
                let above = (low + high) * 0.5 - middle;
                let pressure = if eccentricity.si().abs() > ROUNDING * height.si() {
                    PressureAtHeight { mean, eccentricity, height, above }.work(ledger)
                } else {
                    mean
                };
                let because = share.because;
                let share = match share.of {
                    Some((to_other, apart)) => RowShare { to_other, apart }.work(ledger),
                    None => 1.0,
                };
                let strip = ledger.judge_as(Measure::Distance, "b", Stated { value: high - low, because });
                load += SharedLoad { pressure, strip, share }.work(ledger);
                terms += 1;
            }
        }
        let mesh = self.run.chain_link.map_or(NOTHING, |link| link.solidity(&mut Blank));
        for (region, pressure) in &self.open {
            let pressure = *pressure;
            if !(region.first..region.end).contains(&bay) {
                continue;
            }
            if let Some((low, high)) = overlap((region.low, region.high), rail.mesh)
                && mesh > NOTHING
            {
                let stated = Stated { value: high - low, because: OF_MESH };
                let height = ledger.judge_as(Measure::Distance, "Δz", stated);
                load += MeshLoad { pressure, solidity: mesh, height }.work(ledger);
                terms += 1;
            }
            let faces = rails_in(self.run, region.low, region.high);
            if let Some((diameter, _)) = faces[rail.place as usize] {
                load += RailLoad { pressure, diameter }.work(ledger);
                terms += 1;
            }
        }
        let sum = Entry::Added {
            symbol: "w",
            about: "cloth, chain link and its own face",
            terms,
            result: Value::of(load),
        };
        if terms > 1 {
            ledger.write(|| sum);
        }
        load
    }

    /// Shares every stretch out to the two posts of its bay.
    pub(super) fn share_out(&self, loads: &mut CaseLoads) {
        for piece in &self.pieces {
            for (post, share) in self.shares(piece, &mut Blank) {
                loads.shears[post] += share;
                loads.moments[post] += BaseMoment { force: share, arm: piece.arm }.work(&mut Blank);
            }
            let (length, from, to) = (piece.to - piece.from, piece.load_from, piece.load_to);
            loads.force += (from + to) * length * 0.5;
            let place = piece.from * (from * 2.0 + to).si() + piece.to * (from + to * 2.0).si();
            loads.about_start += Moment::from_si(place.si() * length.si() / 6.0);
        }
        for point in &self.points {
            let force = point.face.work(&mut Blank);
            loads.shears[point.post] += force;
            loads.moments[point.post] += BaseMoment { force, arm: point.arm }.work(&mut Blank);
            loads.force += force;
            loads.about_start += force * self.run.posts[point.post].at;
        }
    }

    #[inline]
    pub(super) fn shares(&self, piece: &Piece, ledger: &mut impl Ledger) -> [(usize, Force); 2] {
        [
            (piece.bay, self.share(piece, piece.bay, ledger)),
            (piece.bay + 1, self.share(piece, piece.bay + 1, ledger)),
        ]
    }

    #[inline]
    fn share(&self, piece: &Piece, post: usize, ledger: &mut impl Ledger) -> Force {
        let at = self.run.posts[post].at;
        let bay = self.run.posts[piece.bay + 1].at - self.run.posts[piece.bay].at;
        let (near, far, load_near, load_far) = if post == piece.bay {
            (piece.from - at, piece.to - at, piece.load_from, piece.load_to)
        } else {
            (at - piece.to, at - piece.from, piece.load_to, piece.load_from)
        };
        PostShare { near, far, load_near, load_far, bay }.work(ledger)
    }

    /// Writes down the share of one post.
    pub(super) fn share_of(&self, post: usize, ledger: &mut Vec<Entry>) {
        let (mut shear, mut moment, mut terms) = (Force::from_si(NOTHING), Moment::from_si(NOTHING), 0);
        let mut add = |force: Force, arm, ledger: &mut Vec<Entry>| {
            shear += force;
            moment += BaseMoment { force, arm }.work(ledger);
            terms += 1;
        };
        for piece in self.pieces.iter().filter(|piece| piece.bay == post || piece.bay + 1 == post) {
            let share = self.share(piece, post, ledger);
            add(share, piece.arm, ledger);
        }
        for point in self.points.iter().filter(|point| point.post == post) {
            let force = point.face.work(ledger);
            add(force, point.arm, ledger);
        }
        let sum = |symbol, about, result| Entry::Added { symbol, about, terms, result };
        ledger.write(|| sum("V", "shares of both bays and the post's own face", Value::of(shear)));
        ledger.write(|| sum("M", "their moments at grade", Value::of(moment)));
    }

    /// The mean pressure on a bay.
    pub(super) fn bay(&self, bay: usize) -> BayLoad {
        let (pressure, zone) = self.bays[bay];
        let height = match self.screen {
            Some(screen) if self.run.has_cloth(bay) => screen.top - screen.bottom,
            _ => self.run.height,
        };
        let force = pressure * (height * self.run.bays[bay].width);
        BayLoad { pressure, force, case: self.case, place: self.place, zone }
    }
}

/// The rails whose face lies in a strip, with the height of their axis; a face is never higher than the strip.
fn rails_in(run: &Run, low: Length, high: Length) -> [Option<(Length, Length)>; 3] {
    let half = run.height * 0.5;
    let face = |rail: Rail| smaller(rail.diameter, high - low);
    let rails = &run.rails;
    [
        rails.top.filter(|_| high >= run.height).map(|rail| (face(rail), high - face(rail) * 0.5)),
        rails.middle.filter(|_| low < half && half <= high).map(|rail| (face(rail), half)),
        rails.bottom.filter(|_| low.si() <= NOTHING).map(|rail| (face(rail), low + face(rail) * 0.5)),
    ]
}

/// How far along a zone a place lies, 0 to 1.
fn along(zone: &Zone, place: Length) -> f64 {
    if zone.pressure_from == zone.pressure_to {
        NOTHING
    } else {
        ((place - zone.from) / (zone.to - zone.from)).pure()
    }
}

/// What two stretches of height have in common.
fn overlap(one: (Length, Length), other: (Length, Length)) -> Option<(Length, Length)> {
    let (low, high) = (larger(one.0, other.0), smaller(one.1, other.1));
    (high > low).then_some((low, high))
}

fn between(first: LineLoad, second: LineLoad, share: f64) -> LineLoad {
    first * (1.0 - share) + second * share
}

fn larger(one: Length, other: Length) -> Length {
    if one > other { one } else { other }
}

fn smaller(one: Length, other: Length) -> Length {
    if one < other { one } else { other }
}
