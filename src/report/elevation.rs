//! The fence to scale: from above with its runs joined at their corners, and each run as one faces it.

use super::document::{BLACK, BURNT_ORANGE, DARK_RED, colour};
use super::drawing::{Anchor, At, Drawing, Element, Hatching, Room, Way};
use super::figures::{gust, length};
use super::measure::{BOLD, clipped, shown, width};
use super::text::spans;
use super::told::cloth;
use crate::answers::{Check, own_flag_over_both};
use crate::fence::{End, Role, Run};
use crate::units::{Measure, Quantity, System, metres};
use crate::verdict::Flag;
use std::f64::consts::FRAC_1_SQRT_2;

/// Cloth seen from above.
const CLOTH: f64 = 1.1;
/// Bare fence seen from above.
const BARE: f64 = 0.3;
/// A fence is drawn at least so high; where the scale makes it less, heights are stretched and that is said.
const LEAST_FENCE: f64 = 5.5;
/// Posts nearer to each other than this run together, in millimetres.
const LEAST_APART: f64 = 0.55;
/// What measured sides may miss each other by before it is told, in metres.
const MISS_M: f64 = 0.3;
/// From above nothing is drawn larger, in millimetres a metre.
const LARGEST_SCALE: f64 = 12.0;
/// Grey of wires and of ground.
const GREY: &str = "#777777";

/// How a drawing is laid out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sheet<'a> {
    /// The id of the drawing on its page.
    pub id: &'a str,
    /// The room there is; a drawing may take less height.
    pub room: Room,
    /// How high its letters are, in millimetres.
    pub letters: f64,
}

/// The flag of what was checked of each post of a run.
fn post_flags(check: &Check, run: usize) -> Vec<Flag> {
    let answer = &check.runs[run];
    let best = |at: usize| answer.best.as_ref().map(|best| &best.posts[at]);
    answer
        .worst
        .posts
        .iter()
        .enumerate()
        .map(|(at, post)| own_flag_over_both(post, best(at)).unwrap_or(Flag::NotChecked))
        .collect()
}

/// The post of a run that reaches its limit first; of several alike the leftmost, whatever the last digits of
/// their sums. Corner posts of a bare run that carry the cloth of the other side are told with that side.
fn governing(check: &Check, run: usize) -> usize {
    let answer = &check.runs[run];
    let elsewhere = answer.corners.as_ref().map_or(&[][..], |group| &group.posts);
    let own = || answer.worst.posts.iter().enumerate().filter(|(at, _)| !elsewhere.contains(at));
    let least = own().map(|(_, post)| post.limit_gust.si()).fold(f64::INFINITY, f64::min) * (1.0 + 1e-9);
    own().find(|(_, post)| post.limit_gust.si() <= least).map_or(0, |(at, _)| at)
}

/// The lines that stand for a flag: told apart without colour.
const fn hatching(flag: Flag) -> Hatching {
    let (step, run, crossed, thick) = match flag {
        Flag::Over => (0.9, Way::Falling, true, 0.15),
        Flag::Depends => (1.0, Way::Upright, false, 0.15),
        Flag::NearLimit => (1.0, Way::Falling, false, 0.25),
        Flag::Within => (1.2, Way::Level, false, 0.15),
        Flag::NotChecked => (0.9, Way::Rising, false, 0.15),
    };
    Hatching { colour: colour(flag), thick, step, run, crossed }
}

/// A text of a drawing in bold, a word of a flag in its colour.
fn bold(at: At, letters: f64, anchor: Anchor, text: &str, colour: &str) -> Element {
    Element::text(at, letters, anchor, text).with("font-weight", "bold").with("fill", colour)
}

/// How wide a text comes out in letters so high.
fn wide(text: &str, letters: f64) -> f64 {
    width(text) * letters
}

/// The round length nearest below so many millimetres at a scale, in metres with its name.
fn scale_bar(most: f64, scale: f64, system: System) -> (f64, String) {
    let unit = 1.0 / Measure::Distance.in_unit(1.0, system);
    let mut best = (unit * 0.1, 0.1);
    for power in [0.1, 1.0, 10.0, 100.0, 1000.0] {
        for step in [1.0, 2.0, 5.0] {
            if unit * power * step * scale <= most {
                best = (unit * power * step, power * step);
            }
        }
    }
    (best.0, format!("{} {}", best.1, Measure::Distance.printed(system).0))
}

/// A place on the ground in metres, east and south of somewhere.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Ground {
    east: f64,
    south: f64,
}

impl Ground {
    fn beyond(self, way: Self, metres: f64) -> Self {
        Self { east: self.east + way.east * metres, south: self.south + way.south * metres }
    }
}

/// The way towards a compass side, in eighths clockwise from north.
fn towards(side: usize) -> Ground {
    const D: f64 = FRAC_1_SQRT_2;
    let (east, south) =
        [(0.0, -1.0), (D, -D), (1.0, 0.0), (D, D), (0.0, 1.0), (-D, D), (-1.0, 0.0), (-D, -D)][side % 8];
    Ground { east, south }
}

/// Runs joined at their corners.
struct Joined {
    /// Run, compass side, where its first post stands.
    runs: Vec<(usize, usize, Ground)>,
    /// By how much the sides miss each other where they should close, in metres.
    miss: Option<(Ground, Ground)>,
    low: Ground,
    high: Ground,
}

/// How far sides that should close miss each other, in words.
fn miss_in_words((from, to): (Ground, Ground), system: System) -> String {
    let missed = metres((from.east - to.east).hypot(from.south - to.south));
    let missed = Measure::Distance.in_unit(missed.si(), system);
    format!("sides miss by {missed:.1} {}", Measure::Distance.printed(system).0)
}

/// Courts whose sides should close and do not, each in a sentence.
pub(super) fn misses(check: &Check) -> Vec<String> {
    let (courts, _) = joined(check);
    let told = |court: &Joined| {
        let miss = miss_in_words(court.miss?, check.survey.units);
        let name = clipped(&shown(&check.survey.runs[court.runs[0].0].court), 30.0);
        Some(if name.is_empty() {
            format!("By the bays the {miss}.")
        } else {
            format!("{name}: by the bays the {miss}.")
        })
    };
    courts.iter().filter_map(told).collect()
}

/// The runs that are joined, and those that cannot be.
fn joined(check: &Check) -> (Vec<Joined>, Vec<usize>) {
    let (fence, survey) = (&check.settled.fence, &check.survey);
    let (mut taken, mut all, mut straight) = (vec![false; fence.runs.len()], Vec::new(), Vec::new());
    for first in 0..fence.runs.len() {
        if taken[first] {
            continue;
        }
        // Back to where the chain begins, or once round.
        let mut begin = first;
        for _ in 0..fence.runs.len() {
            let End::Corner(before) = fence.runs[begin].start else { break };
            begin = before.run;
            if begin == first {
                break;
            }
        }
        let (mut runs, mut place) = (Vec::new(), Ground { east: 0.0, south: 0.0 });
        let (mut low, mut high) = (place, place);
        let (mut run, mut closes) = (begin, false);
        while let (false, Some(side)) = (taken[run], survey.runs[run].side()) {
            taken[run] = true;
            runs.push((run, side, place));
            place = place.beyond(towards(side + 2), fence.runs[run].length().si());
            low = Ground { east: low.east.min(place.east), south: low.south.min(place.south) };
            high = Ground { east: high.east.max(place.east), south: high.south.max(place.south) };
            let End::Corner(next) = fence.runs[run].finish else { break };
            run = next.run;
            closes = run == begin;
        }
        let missed = place.east.hypot(place.south);
        let miss = (closes && missed > MISS_M).then_some((place, Ground { east: 0.0, south: 0.0 }));
        match runs.len() {
            0 => {
                taken[first] = true;
                straight.push(first);
            }
            1 => straight.push(runs[0].0),
            _ => all.push(Joined { runs, miss, low, high }),
        }
    }
    (all, straight)
}

/// The least height a drawing from above needs, with letters so high, and the height beyond which more is of no
/// use, in millimetres.
#[must_use]
pub fn from_above_heights(check: &Check, letters: f64) -> (f64, f64) {
    let (joined, straight) = joined(check);
    let lines = straight.len().min(MOST_STRAIGHT) as f64 * STRAIGHT * letters;
    let rows = (joined.len() as f64 / 2.0).ceil();
    let least = rows * 8.0 * letters + lines + STRIP * letters;
    (least, least + 18.0 * letters * rows)
}

/// Height of a straight run from above, in letters.
const STRAIGHT: f64 = 2.5;
/// Height of the line with scale and signs, in letters.
const STRIP: f64 = 2.2;
/// Room for names round a court, in letters.
const ROUND: f64 = 2.0;
/// More straight runs are not drawn; that is said.
const MOST_STRAIGHT: usize = 12;

/// The runs of each court from above, joined at their corners by their compass sides; those that cannot be joined
/// as straight lines below each other. `marks` names each run by a letter.
#[must_use]
pub fn from_above(check: &Check, marks: &[String], sheet: &Sheet<'_>) -> Drawing {
    let (courts, mut straight) = joined(check);
    let (fence, system) = (&check.settled.fence, check.survey.units);
    let Sheet { id, room, letters } = *sheet;
    let left_out = straight.len().saturating_sub(MOST_STRAIGHT);
    straight.truncate(MOST_STRAIGHT);
    let lines = straight.len() as f64 * STRAIGHT * letters;
    let high = room.height - lines - STRIP * letters;
    let around = ROUND * letters;
    // The columns that let the courts be drawn largest.
    let scale_in = |columns: usize| {
        let (cell_wide, cell_high) =
            (room.width / columns as f64, high / (courts.len() as f64 / columns as f64).ceil());
        courts
            .iter()
            .map(|court| {
                let (east, south) = (court.high.east - court.low.east, court.high.south - court.low.south);
                ((cell_wide - 2.0 * around) / east).min((cell_high - 2.0 * around) / south)
            })
            .fold(f64::INFINITY, f64::min)
    };
    let columns = (1..=courts.len().max(1)).max_by(|a, b| scale_in(*a).total_cmp(&scale_in(*b))).unwrap_or(1);
    let longest = straight.iter().map(|run| fence.runs[*run].length().si()).fold(0.0, f64::max);
    let scale = scale_in(columns)
        .min(if longest > 0.0 { (room.width - 3.0) / longest } else { f64::INFINITY })
        .min(LARGEST_SCALE);
    let rows = courts.len().div_ceil(columns);
    let tallest = courts.iter().map(|court| court.high.south - court.low.south).fold(0.0, f64::max);
    let cell = Room { width: room.width / columns as f64, height: tallest * scale + 2.0 * around };
    let courts_high = if courts.is_empty() { 0.0 } else { rows as f64 * cell.height };
    let used = Room { width: room.width, height: courts_high + lines + STRIP * letters };
    let mut drawing = Drawing::new(id, used, "The fence from above", &described(check, &courts, &straight));
    for (at, court) in courts.iter().enumerate() {
        let (east, south) = (court.high.east - court.low.east, court.high.south - court.low.south);
        let corner = At {
            x: (at % columns) as f64 * cell.width + (cell.width - east * scale) / 2.0,
            y: (at / columns) as f64 * cell.height + (cell.height - south * scale) / 2.0,
        };
        let place = |ground: Ground| At {
            x: corner.x + (ground.east - court.low.east) * scale,
            y: corner.y + (ground.south - court.low.south) * scale,
        };
        court_from_above(check, court, marks, letters, scale, &place, &mut drawing);
    }
    for (at, run) in straight.iter().enumerate() {
        let y = courts_high + at as f64 * STRAIGHT * letters;
        let along = |metres: f64| At { x: 1.5 + metres * scale, y: y + 1.75 * letters };
        let side =
            check.survey.runs[*run].faces.as_ref().map_or(String::new(), |side| format!(", faces {side}"));
        let name = format!("{} {}{side}", marks[*run], shown(&fence.runs[*run].name));
        let name = clipped(&name, (room.width - 3.0) / letters / BOLD);
        drawing.draw(bold(At { x: 1.5, y: y + letters }, letters, Anchor::Start, &name, BLACK));
        run_from_above(check, *run, &along, Ground { east: 0.0, south: -1.0 }, &mut drawing);
    }
    strip(&mut drawing, courts_high + lines, scale, letters, system, !courts.is_empty(), left_out);
    drawing
}

fn described(check: &Check, courts: &[Joined], straight: &[usize]) -> String {
    let name = |run: usize| shown(&clipped(&check.settled.fence.runs[run].name, 40.0));
    let mut told = Vec::new();
    for court in courts {
        let names: Vec<_> = court.runs.iter().map(|(run, ..)| name(*run)).collect();
        told.push(format!("Joined at their corners, clockwise: {}.", names.join(", ")));
    }
    if !straight.is_empty() {
        let names: Vec<_> = straight.iter().map(|run| name(*run)).collect();
        told.push(format!("Each by itself: {}.", names.join(", ")));
    }
    told.push("Thick lines are cloth, thin ones fence without cloth, gaps gates.".to_owned());
    told.join(" ")
}

fn court_from_above(
    check: &Check,
    court: &Joined,
    marks: &[String],
    letters: f64,
    scale: f64,
    place: &dyn Fn(Ground) -> At,
    drawing: &mut Drawing,
) {
    for (run, side, start) in &court.runs {
        let (way, out) = (towards(side + 2), towards(*side));
        let along = |metres: f64| place(start.beyond(way, metres));
        run_from_above(check, *run, &along, out, drawing);
        let long = check.settled.fence.runs[*run].length().si();
        let middle = along(long / 2.0);
        // Text reads to the right or upwards; it stands outside, above or below its line.
        let turned = match side {
            0 | 4 => 0.0_f64,
            1 | 5 => 45.0,
            3 | 7 => -45.0,
            _ => -90.0,
        };
        let up = Ground { east: turned.to_radians().sin(), south: -turned.to_radians().cos() };
        let above = up.east * out.east + up.south * out.south > 0.0;
        let off = letters * if above { 0.7 } else { 1.4 };
        let at = At { x: middle.x + out.east * off, y: middle.y + out.south * off };
        let mark = &marks[*run];
        // Names that read upwards may pass the corners: beside them the others end.
        let past = if turned == -90.0 { 1.5 * ROUND * letters } else { 0.0 };
        let name = clipped(
            &format!("{mark} {}", shown(&check.settled.fence.runs[*run].name)),
            (long * scale + past).max(0.0) / letters / BOLD,
        );
        let name = if name.chars().count() > mark.chars().count() + 2 { name } else { mark.clone() };
        let text = bold(at, letters, Anchor::Middle, &name, BLACK);
        let text = if turned == 0.0 {
            text
        } else {
            text.with("transform", format!("rotate({turned} {:.2} {:.2})", at.x, at.y))
        };
        drawing.draw(text);
    }
    let middle = place(Ground {
        east: (court.low.east + court.high.east) / 2.0,
        south: (court.low.south + court.high.south) / 2.0,
    });
    let inside = ((court.high.east - court.low.east) * scale - 2.0 * letters) / letters;
    let deep = (court.high.south - court.low.south) * scale;
    let mut told = Vec::new();
    let name = shown(&check.survey.runs[court.runs[0].0].court);
    if inside > 4.0 && deep > 2.0 * letters && !name.is_empty() {
        told.push((clipped(&name, inside), GREY));
    }
    if let Some((from, to)) = court.miss {
        let said = miss_in_words((from, to), check.survey.units);
        drawing.draw(
            Element::line(place(from), place(to), BURNT_ORANGE, 0.4).with("stroke-dasharray", "0.8 0.8"),
        );
        if width(&said) <= inside && deep > 4.0 * letters {
            told.push((said, BLACK));
        }
    }
    for (at, (text, colour)) in told.iter().enumerate() {
        let y = middle.y + (at as f64 * 1.3 + 0.35) * letters;
        drawing
            .draw(Element::text(At { x: middle.x, y }, letters, Anchor::Middle, text).with("fill", *colour));
    }
}

/// The bays of a run that are drawn alike from above, as stretches: from, to, and what is there.
fn stretches(run: &Run) -> Vec<(f64, f64, Option<bool>)> {
    let mut all: Vec<(f64, f64, Option<bool>)> = Vec::new();
    for (at, bay) in run.bays.iter().enumerate() {
        let (from, to) = (run.posts[at].at.si(), run.posts[at + 1].at.si());
        let what = (!bay.gate).then(|| run.has_cloth(at));
        match all.last_mut() {
            Some(last) if last.2 == what && what.is_some() => last.1 = to,
            _ => all.push((from, to, what)),
        }
    }
    all
}

fn run_from_above(check: &Check, run: usize, along: &dyn Fn(f64) -> At, out: Ground, drawing: &mut Drawing) {
    let this = &check.settled.fence.runs[run];
    let worst = check.runs[run].own_flag_of_checked().unwrap_or(Flag::NotChecked);
    for (from, to, what) in stretches(this) {
        let (from, to) = (along(from), along(to));
        match what {
            Some(true) => {
                drawing.draw(Element::line(from, to, colour(worst), CLOTH).with("stroke-linecap", "round"))
            }
            Some(false) => drawing.draw(Element::line(from, to, BLACK, BARE)),
            // A gap between two ticks.
            None => {
                for at in [from, to] {
                    let tick = |off: f64| At { x: at.x + out.east * off, y: at.y + out.south * off };
                    drawing.draw(Element::line(tick(-0.8), tick(0.8), BLACK, BARE));
                }
            }
        }
    }
}

/// Scale, signs and north under a drawing from above.
fn strip(
    drawing: &mut Drawing,
    top: f64,
    scale: f64,
    letters: f64,
    system: System,
    has_north: bool,
    left_out: usize,
) {
    let (middle, base) = (top + 1.2 * letters, top + 1.55 * letters);
    let right = drawing.room().width;
    let (long, named) = scale_bar(20.0, scale, system);
    let end = 1.5 + long * scale;
    let line = |from: f64, to: f64, colour: &str, thick: f64| {
        Element::line(At { x: from, y: middle }, At { x: to, y: middle }, colour, thick)
    };
    drawing.draw(line(1.5, end, BLACK, 0.25));
    for x in [1.5, end] {
        drawing.draw(Element::line(At { x, y: middle - 0.7 }, At { x, y: middle + 0.7 }, BLACK, 0.25));
    }
    let mut x = end + 1.0;
    let say = |drawing: &mut Drawing, x: &mut f64, text: &str| {
        drawing.draw(Element::text(At { x: *x, y: base }, letters, Anchor::Start, text));
        *x += wide(text, letters) + 2.0;
    };
    say(drawing, &mut x, &named);
    for (text, thick) in [("cloth", Some(CLOTH)), ("no cloth", Some(BARE)), ("gate", None)] {
        if x + 6.0 + wide(text, letters) > right - 5.0 {
            break;
        }
        match thick {
            Some(thick) => drawing.draw(line(x, x + 4.0, BLACK, thick)),
            None => {
                for x in [x + 0.6, x + 3.4] {
                    drawing.draw(Element::line(
                        At { x, y: middle - 0.8 },
                        At { x, y: middle + 0.8 },
                        BLACK,
                        BARE,
                    ));
                }
            }
        }
        x += 5.0;
        say(drawing, &mut x, text);
    }
    if left_out > 0 {
        let text = format!("and {left_out} more");
        if x + wide(&text, letters) < right - 5.0 {
            say(drawing, &mut x, &text);
        }
    }
    if has_north {
        let (x, tip) = (right - 1.5, top + 0.2 * letters);
        drawing.draw(Element::line(At { x, y: tip + 0.8 }, At { x, y: top + 2.0 * letters }, BLACK, 0.25));
        let tip = [At { x, y: tip }, At { x: x - 0.8, y: tip + 1.6 }, At { x: x + 0.8, y: tip + 1.6 }];
        drawing.draw(Element::polygon(&tip, BLACK));
        drawing.draw(bold(At { x: x - 1.4, y: base }, letters, Anchor::End, "N", BLACK));
    }
}

/// Height of an elevation beside the fence itself, in letters: name, mark, numbers twice, length.
const BESIDE: f64 = 7.2;

/// The least height an elevation needs, with letters so high, in millimetres.
#[must_use]
pub fn elevation_least(letters: f64) -> f64 {
    BESIDE * letters + LEAST_FENCE
}

/// A run as one faces it, laid out on a drawing.
struct Facing<'a> {
    run: &'a Run,
    system: System,
    letters: f64,
    /// Where the first post stands, and the ground.
    left: f64,
    foot: f64,
    /// Millimetres a metre, and how many times as large heights are.
    scale: f64,
    stretched: f64,
}

impl Facing<'_> {
    fn x(&self, metres: f64) -> f64 {
        self.left + metres * self.scale
    }
    fn y(&self, metres: f64) -> f64 {
        self.foot - metres * self.scale * self.stretched
    }
    fn post(&self, at: usize) -> f64 {
        self.x(self.run.posts[at].at.si())
    }
    fn top(&self) -> f64 {
        self.y(self.run.height.si())
    }

    /// Cloth by flag; the stretches of one flag.
    fn cloth(&self, flags: &[Flag], drawing: &mut Drawing) -> Vec<(f64, f64, Flag)> {
        let Some(screen) = &self.run.screen else { return Vec::new() };
        let mut cloths: Vec<(f64, f64, Flag)> = Vec::new();
        for bay in screen.first_bay..screen.end_bay {
            let worst = flags[bay].max(flags[bay + 1]);
            match cloths.last_mut() {
                Some(last) if last.2 == worst => last.1 = self.post(bay + 1),
                _ => cloths.push((self.post(bay), self.post(bay + 1), worst)),
            }
        }
        let (bottom, over) = (self.y(screen.bottom.si()), self.y(screen.top.si()));
        for (from, to, flag) in &cloths {
            let (corner, area) = (At { x: *from, y: over }, Room { width: to - from, height: bottom - over });
            drawing.draw(Element::hatched(corner, area, hatching(*flag)));
            let edge = Element::rectangle(corner, area, "none");
            drawing.draw(edge.with("stroke", colour(*flag)).at("stroke-width", 0.25));
        }
        cloths
    }

    /// The edges of the cloth, measured at the right.
    fn edges(&self, drawing: &mut Drawing) {
        let Some(screen) = &self.run.screen else { return };
        let place = self.x(self.run.length().si()) + 0.5 * self.letters;
        let (bottom, over) = (self.y(screen.bottom.si()), self.y(screen.top.si()));
        // At the top of the fence the figure stands below its line, clear of the mark over the posts.
        let lower = if over - self.top() < self.letters { 0.8 } else { 0.36 };
        let mut told = vec![(over, lower, screen.top)];
        if bottom - over >= (0.75 + lower) * self.letters {
            told.push((bottom, 0.36, screen.bottom));
        }
        for (edge, lower, height) in told {
            tick(drawing, At { x: place, y: edge }, 0.8 * self.letters);
            let at = At { x: place + self.letters, y: edge + lower * self.letters };
            drawing.draw(Element::text(at, self.letters, Anchor::Start, &length(height, self.system)));
        }
    }

    /// Ground, top rail and gates.
    fn rails(&self, drawing: &mut Drawing) {
        let (from, to) = (self.x(0.0), self.x(self.run.length().si()));
        let level = |from: f64, to: f64, y: f64, thick: f64| {
            Element::line(At { x: from, y }, At { x: to, y }, GREY, thick)
        };
        drawing.draw(level(from - self.letters, to + self.letters, self.foot, 0.35));
        drawing.draw(level(from, to, self.top(), 0.25));
        for (at, _) in self.run.bays.iter().enumerate().filter(|(_, bay)| bay.gate) {
            let (from, to) = (self.post(at), self.post(at + 1));
            for (one, other) in [(from, to), (to, from)] {
                let corners = (At { x: one, y: self.top() }, At { x: other, y: self.foot });
                drawing.draw(Element::line(corners.0, corners.1, GREY, 0.25));
            }
            let said = wide("gate", self.letters);
            if to - from > said + 0.5 {
                let at = At { x: (from + to) / 2.0, y: (self.top() + self.foot) / 2.0 + 0.36 * self.letters };
                let corner = At { x: at.x - said / 2.0, y: at.y - 0.9 * self.letters };
                let back = Room { width: said, height: 1.2 * self.letters };
                drawing.draw(Element::rectangle(corner, back, "#ffffff"));
                drawing.draw(Element::text(at, self.letters, Anchor::Middle, "gate"));
            }
        }
    }

    /// One post in so many is drawn, so that they do not run together.
    fn one_in(&self) -> usize {
        let apart = self.run.length().si() * self.scale / self.run.bays.len() as f64;
        (LEAST_APART / apart).ceil().max(1.0) as usize
    }

    fn posts(&self, first: usize, drawing: &mut Drawing) {
        let one_in = self.one_in();
        for (at, post) in self.run.posts.iter().enumerate() {
            if at != first && post.role == Role::Line && at % one_in != 0 {
                continue;
            }
            let (ink, thick) = if at == first { (DARK_RED, 0.9) } else { (BLACK, 0.3) };
            let x = self.post(at);
            drawing.draw(Element::line(At { x, y: self.top() }, At { x, y: self.foot + 0.6 }, ink, thick));
        }
    }

    /// The flag of each stretch of cloth, where its word has room.
    fn flags(&self, cloths: &[(f64, f64, Flag)], drawing: &mut Drawing) {
        let Some(screen) = &self.run.screen else { return };
        let (bottom, over) = (self.y(screen.bottom.si()), self.y(screen.top.si()));
        for (from, to, flag) in cloths {
            let said = flag.to_string();
            let chip = wide(&said, self.letters) * BOLD + self.letters;
            if to - from <= chip + 1.0 || bottom - over <= 1.5 * self.letters {
                continue;
            }
            let (centre, middle) = ((from + to) / 2.0, (bottom + over) / 2.0);
            let corner = At { x: centre - chip / 2.0, y: middle - 0.75 * self.letters };
            let back = Room { width: chip, height: 1.5 * self.letters };
            drawing.draw(Element::rectangle(corner, back, "#ffffff"));
            let at = At { x: centre, y: middle + 0.36 * self.letters };
            drawing.draw(bold(at, self.letters, Anchor::Middle, &said, ink(*flag)));
        }
    }

    fn numbers(&self, numbers: &[(usize, f64, usize)], first: usize, drawing: &mut Drawing) {
        for (number, place, row) in numbers {
            let at = At { x: *place, y: self.foot + (1.15 + 1.2 * *row as f64) * self.letters };
            let text = number.to_string();
            drawing.draw(if number - 1 == first {
                bold(at, self.letters, Anchor::Middle, &text, DARK_RED)
            } else {
                Element::text(at, self.letters, Anchor::Middle, &text)
            });
        }
    }

    /// The height of the fence, measured at the left.
    fn height(&self, drawing: &mut Drawing) {
        let x = self.x(0.0) - 0.9 * self.letters;
        for y in [self.top(), self.foot] {
            tick(drawing, At { x: x - 0.4 * self.letters, y }, 0.8 * self.letters);
        }
        drawing.draw(Element::line(At { x, y: self.top() }, At { x, y: self.foot }, BLACK, 0.2));
        let at = At { x: x - 0.6 * self.letters, y: (self.top() + self.foot) / 2.0 + 0.36 * self.letters };
        let said = length(self.run.height, self.system);
        drawing.draw(Element::text(at, self.letters, Anchor::End, &said));
    }

    /// Its length, and what of the drawing is not as it stands.
    fn length_in_words(&self) -> String {
        let mut apart = Vec::new();
        if self.stretched > 1.0 {
            apart.push(format!("heights drawn {} times as large", self.stretched));
        }
        if self.one_in() > 1 {
            apart.push(format!("one line post in {} drawn", self.one_in()));
        }
        let said = length(self.run.length(), self.system);
        if apart.is_empty() { said } else { format!("{said} ({})", apart.join("; ")) }
    }
}

/// One run as one faces it from inside, post 1 at the left; `name` stands over it.
#[must_use]
pub fn elevation(check: &Check, run: usize, name: &str, sheet: &Sheet<'_>) -> Drawing {
    let system = check.survey.units;
    let (this, answer) = (&check.settled.fence.runs[run], &check.runs[run]);
    let Sheet { id, room, letters } = *sheet;
    let left = wide(&length(this.height, system), letters) + 1.8 * letters;
    let right = this.screen.as_ref().map_or(letters, |screen| {
        let edge = |edge| wide(&length(edge, system), letters);
        edge(screen.bottom).max(edge(screen.top)) + 1.8 * letters
    });
    let (long, high) = (this.length().si(), this.height.si());
    let most = (room.height - BESIDE * letters).max(LEAST_FENCE);
    let scale = ((room.width - left - right) / long).min(most / high);
    let stretched = if high * scale >= LEAST_FENCE {
        1.0
    } else {
        (LEAST_FENCE / (high * scale)).ceil().min((most / (high * scale)).floor()).max(1.0)
    };
    let foot = 3.0 * letters + high * scale * stretched;
    let facing = Facing { run: this, system, letters, left, foot, scale, stretched };

    let flags = post_flags(check, run);
    let first = governing(check, run);
    let numbers = post_numbers(this, first, letters, &|metres| facing.x(metres));
    let rows = 1.25 + 1.2 * numbers.iter().map(|(.., row)| *row).max().unwrap_or(0) as f64;
    let used = Room { width: room.width, height: foot + (rows + 1.75) * letters };
    let title = format!("{}, as one faces it from inside", clipped(&shown(name), 60.0));
    let mut drawing = Drawing::new(id, used, &title, &told(check, run, &flags, first));
    let cloths = facing.cloth(&flags, &mut drawing);
    facing.edges(&mut drawing);
    facing.rails(&mut drawing);
    facing.posts(first, &mut drawing);
    facing.flags(&cloths, &mut drawing);
    facing.numbers(&numbers, first, &mut drawing);
    facing.height(&mut drawing);
    mark(check, run, first, facing.post(first), facing.top(), letters, &mut drawing);
    over_it(name, answer.own_flag_of_checked().unwrap_or(Flag::NotChecked), letters, &mut drawing);
    let line = foot + (rows + 0.85) * letters;
    below(&mut drawing, facing.x(0.0), facing.x(long), line, letters, &facing.length_in_words());
    drawing
}

/// The colour a flag's word is written in: dark enough to be read on white.
fn ink(flag: Flag) -> &'static str {
    if flag == Flag::NearLimit { BLACK } else { colour(flag) }
}

fn tick(drawing: &mut Drawing, at: At, long: f64) {
    drawing.draw(Element::line(at, At { x: at.x + long, y: at.y }, BLACK, 0.2));
}

/// The run's name and after it its flag.
fn over_it(name: &str, flag: Flag, letters: f64, drawing: &mut Drawing) {
    let said = flag.to_string();
    let beside = wide(&said, letters) * BOLD + 1.5 * letters;
    let name = clipped(&shown(name), (drawing.room().width - beside) / letters / BOLD);
    let y = 1.05 * letters;
    drawing.draw(bold(At { x: 0.0, y }, letters, Anchor::Start, &name, BLACK));
    let x = wide(&name, letters) * BOLD + letters;
    drawing.draw(bold(At { x, y }, letters, Anchor::Start, &said, ink(flag)));
}

/// The mark over the post that reaches its limit first.
fn mark(check: &Check, run: usize, first: usize, x: f64, top: f64, letters: f64, drawing: &mut Drawing) {
    let post = &check.runs[run].worst.posts[first];
    let most = if post.is_at_most() { " at most" } else { "" };
    let figure = gust(post.limit_gust, check.survey.units);
    let tip = [
        At { x, y: top - 0.1 * letters },
        At { x: x - 0.5 * letters, y: top - 0.95 * letters },
        At { x: x + 0.5 * letters, y: top - 0.95 * letters },
    ];
    drawing.draw(Element::polygon(&tip, DARK_RED));
    let right = drawing.room().width;
    let room = (right - x).max(x) - letters;
    let said = [
        format!("post {} reaches its limit first: {figure}{most}", first + 1),
        format!("post {} first: {figure}{most}", first + 1),
        format!("post {}: {figure}{most}", first + 1),
        format!("post {}", first + 1),
    ];
    let said = said.iter().find(|text| wide(text, letters) <= room).unwrap_or(&said[3]);
    let (off, anchor) = if right - x >= x { (0.8, Anchor::Start) } else { (-0.8, Anchor::End) };
    drawing.draw(Element::text(At { x: x + off * letters, y: top - 0.4 * letters }, letters, anchor, said));
}

/// A measure along the foot.
fn below(drawing: &mut Drawing, from: f64, to: f64, y: f64, letters: f64, said: &str) {
    drawing.draw(Element::line(At { x: from, y }, At { x: to, y }, BLACK, 0.2));
    for x in [from, to] {
        drawing.draw(Element::line(
            At { x, y: y - 0.5 * letters },
            At { x, y: y + 0.5 * letters },
            BLACK,
            0.2,
        ));
    }
    let chip = wide(said, letters) + 0.6 * letters;
    let right = drawing.room().width;
    if to - from > chip + letters {
        let centre = (from + to) / 2.0;
        let back = Room { width: chip, height: 1.2 * letters };
        drawing.draw(Element::rectangle(
            At { x: centre - chip / 2.0, y: y - 0.6 * letters },
            back,
            "#ffffff",
        ));
        drawing.draw(Element::text(At { x: centre, y: y + 0.36 * letters }, letters, Anchor::Middle, said));
    } else if right - to > chip {
        let at = At { x: to + 0.5 * letters, y: y + 0.36 * letters };
        drawing.draw(Element::text(at, letters, Anchor::Start, said));
    } else {
        drawing.draw(Element::text(At { x: 0.0, y: y + 0.9 * letters }, letters, Anchor::Start, said));
    }
}

/// The numbers under the posts, thinned out so that none runs into another: number, place and row; the first, the
/// last and the governing one always stand, the governing one a row lower where it would run into them.
fn post_numbers(
    run: &Run,
    governing: usize,
    letters: f64,
    x: &dyn Fn(f64) -> f64,
) -> Vec<(usize, f64, usize)> {
    let last = run.posts.len() - 1;
    let half = |number: usize| (wide(&number.to_string(), letters) * BOLD + 0.7 * letters) / 2.0;
    let place = |at: usize| x(run.posts[at].at.si());
    let mut taken: Vec<(f64, f64)> = Vec::new();
    let mut numbers: Vec<(usize, f64, usize)> = Vec::new();
    let free = |taken: &[(f64, f64)], at: usize| {
        let (from, to) = (place(at) - half(at + 1), place(at) + half(at + 1));
        taken.iter().all(|(low, high)| to <= *low || from >= *high).then_some((from, to))
    };
    let spacing = run.posts.windows(2).map(|two| (two[1].at - two[0].at).si()).fold(f64::INFINITY, f64::min);
    let narrow = x(spacing) - x(0.0);
    let step = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000]
        .into_iter()
        .find(|step| *step as f64 * narrow >= 2.0 * half(run.posts.len()))
        .unwrap_or(2000);
    let rounds = (1..=last).filter(|at| (at + 1) % step == 0);
    for at in [0, last].into_iter().chain([governing]).chain(rounds) {
        if numbers.iter().any(|(number, ..)| *number == at + 1) {
            continue;
        }
        match free(&taken, at) {
            Some(stretch) => {
                taken.push(stretch);
                numbers.push((at + 1, place(at), 0));
            }
            None if at == last || at == governing => {
                let row = numbers.iter().map(|(.., row)| row + 1).max().unwrap_or(0);
                numbers.push((at + 1, place(at), row));
            }
            None => {}
        }
    }
    numbers
}

/// What an elevation shows, for those who do not see it.
fn told(check: &Check, run: usize, flags: &[Flag], first: usize) -> String {
    let system = check.survey.units;
    let (this, survey) = (&check.settled.fence.runs[run], &check.survey.runs[run]);
    let mut all = vec![format!(
        "{} bays, {} long, {} high, {}.",
        this.bays.len(),
        length(this.length(), system),
        length(this.height, system),
        shown(&clipped(&cloth(this, survey, system), 60.0)),
    )];
    all.push(format!("Post {} reaches its limit first.", first + 1));
    for flag in [Flag::Over, Flag::Depends, Flag::NotChecked, Flag::NearLimit, Flag::Within] {
        let numbers: Vec<_> =
            flags.iter().enumerate().filter(|(_, one)| **one == flag).map(|(at, _)| at + 1).collect();
        if !numbers.is_empty() {
            all.push(format!("Posts {}: {}.", flag.word(), spans(&numbers)));
        }
    }
    all.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::answers;
    use crate::survey::Survey;

    fn checked(bays: &str, faces: &str) -> Check {
        let text = format!(
            r#"survey = 1
[site]
wind_code = "asce7-16"
wind_speed = "115 mph"
exposure = "C"
topographic_factor = 1.0
[post.line]
diameter = "2.875 in"
nominal_wall = "0.203 in"
yield = "30 ksi"
[[run]]
name = "run"
height = "10 ft"
chain_link = "none"
bays = {bays}
{faces}
ends = "free"
screen = {{ solidity = 1.0, bottom = "0 ft", height = "10 ft" }}
"#
        );
        answers::check(Survey::read(&text, "survey").unwrap()).unwrap()
    }

    #[test]
    fn post_numbers_never_meet_and_the_first_the_last_and_the_governing_one_always_stand() {
        for (bays, posts) in [
            (r#"["10 ft"]"#, 2),
            (r#"["16 x 10 ft"]"#, 17),
            (r#"["60 x 10 ft"]"#, 61),
            (r#"["900 x 8 ft"]"#, 901),
        ] {
            let check = checked(bays, "");
            let run = &check.settled.fence.runs[0];
            for wide_mm in [30.0, 70.0, 170.0] {
                let scale = wide_mm / run.length().si();
                for first in [0, 1, posts / 2, posts - 2, posts - 1] {
                    let numbers = post_numbers(run, first, 2.3, &|metres| metres * scale);
                    for must in [1, posts, first + 1] {
                        assert!(
                            numbers.iter().any(|(number, ..)| *number == must),
                            "{posts}, {wide_mm}: {must}"
                        );
                    }
                    for (at, (number, place, row)) in numbers.iter().enumerate() {
                        for (other, elsewhere, same) in &numbers[at + 1..] {
                            let apart = (place - elsewhere).abs();
                            let need = (wide(&number.to_string(), 2.3) + wide(&other.to_string(), 2.3)) / 2.0;
                            assert!(
                                row != same || apart > need,
                                "{number} meets {other} of {posts}, {wide_mm}"
                            );
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn a_run_is_drawn_to_one_scale_and_where_heights_are_stretched_it_says_so() {
        let room = Room { width: 180.0, height: 40.0 };
        let sheet = Sheet { id: "d", room, letters: 2.3 };
        let short = elevation(&checked(r#"["4 x 10 ft"]"#, ""), 0, "A run", &sheet).to_string();
        assert!(!short.contains("heights drawn"));
        let long = elevation(&checked(r#"["60 x 10 ft"]"#, ""), 0, "A run", &sheet);
        assert!(long.to_string().contains("600 ft (heights drawn 3 times as large)"));
        assert!(long.room().height <= room.height);
    }

    #[test]
    fn every_flag_has_a_hatching_of_its_own_that_shows_without_colour() {
        let all = [Flag::Within, Flag::NearLimit, Flag::NotChecked, Flag::Depends, Flag::Over];
        for (at, one) in all.iter().enumerate() {
            for other in &all[at + 1..] {
                let (one, other) = (hatching(*one), hatching(*other));
                assert_ne!((one.run, one.crossed), (other.run, other.crossed));
            }
        }
    }

    #[test]
    fn a_run_by_itself_is_a_straight_line_with_the_side_it_faces() {
        let sheet = Sheet { id: "d", room: Room { width: 90.0, height: 40.0 }, letters: 2.3 };
        let drawing =
            from_above(&checked(r#"["4 x 10 ft"]"#, "faces = \"south\""), &["A".to_owned()], &sheet);
        let text = drawing.to_string();
        assert!(text.contains("A run, faces south"), "{text}");
        assert!(!text.contains(">N</text>"), "north is drawn for a line that is not laid by the compass");
        assert!(drawing.room().height < 20.0);
    }
}
