//! The caution sheet for the client: one page, the decision first.
//!
//! Everything stands on one page of the paper chosen. Letters get smaller, drawings smaller and fewer, long names
//! shorter, until it fits by the reckoning of the HTML writer; whatever is left out is said on the page.

use super::compare::helps;
use super::document::{Block, Column, Document, Panel, Paper, Row, Signature, Style, Table, Text, Tone};
use super::drawing::{Drawing, Room};
use super::elevation::{
    Sheet as DrawingSheet, elevation, elevation_least, from_above, from_above_heights, misses,
};
use super::figures::{self, listed, ratio_up};
use super::footings::{self, Apart};
use super::frame;
use super::html::{BETWEEN, height_mm, inner_mm};
use super::measure::{clipped, shown, width};
use super::told::{self, Alike, LITTLE};
use crate::answers::{
    Check, First, GroupPlan, LEAST_WORKABLE, Lever, MEAN_TO_GUST_CYCLONE, MEAN_TO_GUST_INLAND,
    MEAN_TO_GUST_LEAST, RunAnswer, RunPlan, TAKE_DOWN_AT, WARN_AT, plan,
};
use crate::caution::{CAUTIONS, NOT_CHECKED, Remark};
use crate::survey::Reading;
use crate::units::{Length, Quantity, System, Velocity, trimmed};
use crate::verdict::{Flag, PostVerdict, RunFrame, RunVerdict};

/// A name in full, in em: some two hundred letters of the widest scripts.
const FULL_NAME: f64 = 230.0;
/// Names of one row of the table together.
const FULL_NAMES: f64 = 480.0;
/// Names longer than this stand over their row of the table.
const LONG_NAMES: f64 = 22.0;
/// A name in a sentence.
const NAME_IN_TEXT: f64 = 12.0;
/// So many rows of names at most in one sentence.
const ROWS_IN_TEXT: usize = 4;
/// Names of one row in a sentence.
const NAMES_IN_TEXT: usize = 2;
/// Rows whose end panels are told one by one.
const END_PANELS_IN_TEXT: usize = 2;
/// What to measure next: the most telling ones.
const MOST_TO_MEASURE: usize = 5;
/// So many notes are told where there is room.
const MOST_NOTES: usize = 4;
/// Part of the page that is left free, since no font is at hand to measure with.
const SLACK: f64 = 0.015;

/// How a sheet is made to fit, best first.
#[derive(Debug, Clone, Copy)]
struct Fit {
    /// Letters in points.
    letters: f64,
    /// Letters of drawings in millimetres.
    drawing_letters: f64,
    /// So many rows are drawn.
    drawn: usize,
    /// Whether the fence is drawn from above.
    is_from_above: bool,
    /// Names of the table, in em.
    name: f64,
    /// So many rows stand in the table.
    rows: usize,
    /// How much more than the least the drawings get.
    ease: f64,
    /// Whether it says what helps and what does not.
    has_help: bool,
    /// Whether it says what hand statics leaves out.
    has_statics: bool,
}

impl Fit {
    /// How long what somebody wrote may be where room is short, in times of where it is not.
    const fn words(self) -> f64 {
        if self.letters < 8.0 { 0.5 } else { 1.0 }
    }
}

/// Runs of one row.
struct Group<'a> {
    /// Its letter.
    mark: String,
    alike: Alike<'a>,
    plan: RunPlan,
}

/// What is said where the rails are left out of it; the figures are those of the remark on hand statics.
const HAND_STATICS: &str = "Each post was worked with the load of its own two bays, by hand statics: rails can make a \
                            post's moment larger, on soft ground up to 11 %, with stout end posts, stout rails or short \
                            bays by half (ours).";

struct Sheet<'a> {
    check: &'a Check,
    system: System,
    groups: Vec<Group<'a>>,
}

/// The caution sheet of a survey for the client: a document of one page.
#[must_use]
pub fn client_sheet(check: &Check, paper: Paper) -> Document {
    let sheet = Sheet { groups: groups(check), check, system: check.survey.units };
    let (width, height) = inner_mm(paper);
    let most = height * (1.0 - SLACK);
    let mut last = None;
    for fit in sheet.fits() {
        if let Some(blocks) = sheet.page(fit, width, most) {
            last = Some((fit, blocks));
            break;
        }
    }
    let (fit, blocks) = last.unwrap_or_else(|| {
        let least = sheet.least();
        (least, sheet.blocks(least, None))
    });
    let title = clipped(&sheet.title(), 60.0);
    Document { title: format!("Wind caution sheet: {title}"), paper, letters_pt: fit.letters, blocks }
}

/// The rows of a sheet.
fn groups(check: &Check) -> Vec<Group<'_>> {
    let plans = plan(check);
    told::alike_in_groups(check)
        .into_iter()
        .enumerate()
        .map(|(at, alike)| Group { mark: mark(at), plan: plans[alike.at], alike })
        .collect()
}

/// "A" to "Z", then "AA".
fn mark(at: usize) -> String {
    let letter = char::from(b'A' + (at % 26) as u8);
    if at < 26 { letter.to_string() } else { format!("{}{letter}", mark(at / 26 - 1)) }
}

/// A figure that is not broken from its unit at the end of a line.
fn unbroken(figure: &str) -> String {
    figure.replace(' ', "\u{a0}").replace('/', "/\u{2060}")
}

/// A gust, rounded down.
fn gust(gust: Velocity, system: System) -> String {
    unbroken(&figures::gust(gust, system))
}

/// A length as a tape reads it.
fn length(length: Length, system: System) -> String {
    unbroken(&figures::length(length, system))
}

/// Text that somebody wrote, as it can be shown in so many em.
fn written(text: &str, room: f64) -> String {
    clipped(&shown(text), room)
}

/// What of a run is over at the design wind beside its posts, and keeps cloth from being hung.
fn over_of_others(answer: &RunAnswer) -> Vec<&'static str> {
    let rails = (told::rails_flag(answer) == Some(Flag::Over)).then_some("rails");
    let guy = told::guy_over(answer).map(|guy| if guy.pressed.is_some() { "back braces" } else { "guys" });
    rails.into_iter().chain(guy).collect()
}

impl Sheet<'_> {
    fn title(&self) -> String {
        shown(self.check.survey.job.title.as_deref().unwrap_or("Fence survey"))
    }

    /// Ways to make it fit, the best to read first.
    fn fits(&self) -> Vec<Fit> {
        let rows = self.groups.len();
        let fit = Fit {
            letters: 9.0,
            drawing_letters: 2.3,
            drawn: rows,
            is_from_above: true,
            name: FULL_NAME,
            rows,
            ease: 1.35,
            has_help: true,
            has_statics: true,
        };
        let mut fits = Vec::new();
        let fewer = |most: usize| rows.min(most);
        for drawn in [fewer(10), fewer(6), fewer(4)] {
            // What it says counts for more than the size of its letters, down to the last of them.
            let sizes = [(9.0, 2.3, 1.2), (8.5, 2.3, 1.1), (8.0, 2.2, 1.0)];
            for sizes in [&sizes[..], &[(7.5, 2.1, 1.0)]] {
                for (has_help, has_statics) in [(true, true), (true, false), (false, true), (false, false)] {
                    fits.extend(sizes.iter().map(|&(letters, drawing_letters, ease)| Fit {
                        letters,
                        drawing_letters,
                        drawn,
                        ease,
                        has_help,
                        has_statics,
                        ..fit
                    }));
                }
            }
        }
        let fit = Fit { has_help: false, has_statics: false, ..fit };
        for drawn in [fewer(8), fewer(4), fewer(2), fewer(1)] {
            for letters in [7.5, 7.0, 6.5] {
                let fit = Fit { letters, drawing_letters: 2.0, drawn, ease: 1.0, ..fit };
                fits.push(Fit { has_help: true, ..fit });
                fits.push(fit);
            }
        }
        let tight = Fit { letters: 6.5, drawing_letters: 2.0, drawn: 0, ease: 1.0, ..fit };
        for name in [FULL_NAME, 60.0, 30.0] {
            let sizes = [7.5, 7.0, 6.5, 6.2];
            fits.extend(sizes.map(|letters| Fit { letters, name, ..tight }));
            fits.extend(sizes.map(|letters| Fit { letters, name, is_from_above: false, ..tight }));
        }
        fits.extend((1..rows).rev().map(|rows| Fit { rows, ..self.least() }));
        fits
    }

    /// As little as a sheet can say.
    const fn least(&self) -> Fit {
        Fit {
            letters: 6.0,
            drawing_letters: 2.0,
            drawn: 0,
            is_from_above: false,
            name: 30.0,
            rows: 1,
            ease: 1.0,
            has_help: false,
            has_statics: false,
        }
    }

    /// The page, if it fits this way.
    fn page(&self, fit: Fit, width: f64, most: f64) -> Option<Vec<Block>> {
        let text = height_mm(&self.blocks(fit, None), width, fit.letters);
        if !fit.is_from_above && fit.drawn == 0 {
            return (text <= most).then(|| self.blocks(fit, None));
        }
        // Room after the drawings as after every block.
        let left = most - text - 0.5 * fit.letters;
        let figures = self.figures(fit, width, left)?;
        let blocks = self.blocks(fit, Some(figures));
        (height_mm(&blocks, width, fit.letters) <= most).then_some(blocks)
    }

    /// The rows with the lowest limit gusts first, as they are drawn.
    fn lowest_first(&self) -> Vec<&Group<'_>> {
        let mut order: Vec<&Group<'_>> = self.groups.iter().collect();
        order.sort_by(|a, b| {
            let gust = |group: &Group<'_>| group.alike.answer.worst.limit_gust.si();
            gust(a).total_cmp(&gust(b))
        });
        order
    }

    /// The drawings in one column or two, if they fit.
    fn figures(&self, fit: Fit, width: f64, height: f64) -> Option<Vec<Vec<Drawing>>> {
        let letters = fit.drawing_letters;
        let mut drawn: Vec<&Group<'_>> = self.lowest_first().into_iter().take(fit.drawn).collect();
        drawn.sort_by_key(|group| group.alike.at);
        let (above, above_most) =
            if fit.is_from_above { from_above_heights(self.check, letters) } else { (0.0, 0.0) };
        let long = drawn.iter().any(|group| group.alike.run.bays.len() > 24);
        let one = drawn.is_empty() || drawn.len() == 1 && above_most == above || long && drawn.len() <= 2;
        let columns = if one { 1 } else { 2 };
        let column = (width - (columns - 1) as f64 * BETWEEN * 2.0) / columns as f64;
        // From above first, then each elevation where there is most room.
        let least = elevation_least(letters);
        let mut slots: Vec<Vec<Option<&Group<'_>>>> = vec![Vec::new(); columns];
        let mut used = vec![0.0_f64; columns];
        if fit.is_from_above {
            slots[0].push(None);
            used[0] = above;
        }
        for group in drawn {
            let at = (0..columns).min_by(|a, b| used[*a].total_cmp(&used[*b])).unwrap_or(0);
            used[at] += least + if slots[at].is_empty() { 0.0 } else { BETWEEN };
            slots[at].push(Some(group));
        }
        let highest = used.iter().copied().fold(0.0, f64::max);
        if highest * fit.ease > height {
            return None;
        }
        let marks = self.marks();
        let mut number = 0;
        let mut all = Vec::new();
        for (slots, used) in slots.into_iter().zip(used) {
            // What is left goes to the drawing from above, else to the elevations alike.
            let has_above = slots.iter().any(Option::is_none);
            let to_above = if has_above { (height - used).min(above_most - above) } else { 0.0 };
            let elevations = slots.iter().flatten().count();
            let to_each = (height - used - to_above) / elevations.max(1) as f64;
            let mut drawings = Vec::new();
            for slot in slots {
                number += 1;
                let id = format!("drawing{number}");
                let sheet = |height| DrawingSheet { id: &id, room: Room { width: column, height }, letters };
                drawings.push(match slot {
                    None => from_above(self.check, &marks, &sheet(above + to_above)),
                    Some(group) => {
                        let name = format!("{} {}", group.mark, group.alike.names.join(", "));
                        elevation(self.check, group.alike.at, &name, &sheet(least + to_each.min(20.0)))
                    }
                });
            }
            all.push(drawings);
        }
        Some(all)
    }

    /// The letter of each run.
    fn marks(&self) -> Vec<String> {
        let mut marks = vec![String::new(); self.check.runs.len()];
        for group in &self.groups {
            for run in &group.alike.runs {
                marks[*run].clone_from(&group.mark);
            }
        }
        marks
    }

    fn blocks(&self, fit: Fit, figures: Option<Vec<Vec<Drawing>>>) -> Vec<Block> {
        let mut blocks = vec![self.heading(fit), self.about(fit), Block::Panel(self.decision())];
        let drawings = figures.is_some();
        blocks.extend(figures.map(Block::Figures));
        if let Some(text) = self.about_drawings(fit, drawings) {
            blocks.push(Block::Small(text));
        }
        blocks.push(Block::Heading(Text::new().plain(format!(
            "What may hang where, and up to which gust{}",
            if self.is_at_most() { " at most" } else { "" }
        ))));
        blocks.push(Block::Table(self.table(fit)));
        blocks.extend(self.plan_in_words().into_iter().map(Block::Paragraph));
        if fit.has_help {
            blocks.extend(self.what_helps().map(Block::Paragraph));
        }
        blocks.push(Block::Panel(self.not_checked()));
        blocks.push(Block::Panel(self.warning()));
        let next = self.measure_next(fit);
        if !next.is_empty() {
            blocks.push(Block::Heading(Text::new().plain("What to measure next")));
            blocks.push(Block::List(next));
        }
        let line = |who: &str| Signature { who: who.to_owned() };
        blocks.push(Block::Signatures(vec![line("Client"), line("Crew")]));
        blocks.extend(self.foot(fit).into_iter().filter(|text| !text.is_empty()).map(Block::Small));
        blocks
    }

    fn heading(&self, fit: Fit) -> Block {
        let title = written(&self.title(), 70.0 * fit.words());
        Block::Title(Text::new().plain("Wind caution sheet: ").with(title, Style::Name))
    }

    fn about(&self, fit: Fit) -> Block {
        let job = &self.check.survey.job;
        let mut text = Text::new();
        let mut add = |before: &str, what: &Option<String>, room: f64| {
            if let Some(what) = what {
                let dot = if text.is_empty() { "" } else { " · " };
                text = std::mem::take(&mut text)
                    .plain(format!("{dot}{before}"))
                    .name(written(what, room * fit.words()));
            }
        };
        add("for ", &job.prepared_for, 40.0);
        add("surveyed ", &job.date, 20.0);
        add("by ", &job.measured_by, 40.0);
        add("note: ", &job.note, 80.0);
        if text.is_empty() {
            text = text.plain("For the client");
        }
        Block::Small(text)
    }

    /// Whether something of a post was not checked, so that limit gusts are "at most".
    fn is_at_most(&self) -> bool {
        self.check.runs.iter().flat_map(|run| &run.worst.posts).any(PostVerdict::is_at_most)
    }

    fn at_most(&self) -> &'static str {
        if self.is_at_most() { " at most" } else { "" }
    }

    /// The runs of some rows in a sentence: names cut short, the letter of each row.
    fn named(&self, wanted: &dyn Fn(&Group<'_>) -> bool) -> Option<Text> {
        let all: Vec<&Group<'_>> = self.groups.iter().filter(|group| wanted(group)).collect();
        let told = if all.len() > ROWS_IN_TEXT + 1 { ROWS_IN_TEXT } else { all.len() };
        let mut text = Text::new();
        for (at, group) in all[..told].iter().enumerate() {
            let between = match at {
                0 => "",
                _ if at + 1 == all.len() => " and ",
                _ => ", ",
            };
            text = text.plain(between);
            let names = &group.alike.names;
            let shown = if names.len() > NAMES_IN_TEXT + 1 { NAMES_IN_TEXT } else { names.len() };
            for (at, name) in names[..shown].iter().enumerate() {
                text = text.plain(if at == 0 { "" } else { ", " }).name(written(name, NAME_IN_TEXT));
            }
            if shown < names.len() {
                text = text.plain(format!(", {} more", names.len() - shown));
            }
            text = text.plain(format!(" ({})", group.mark));
        }
        if told < all.len() {
            text = text.plain(format!(" and {} more kinds of run", all.len() - told));
        }
        (!text.is_empty()).then_some(text)
    }

    /// "the design wind of 115 mph".
    fn design_wind(&self) -> String {
        match self.check.survey.site.wind_speed.reading {
            Reading::Measured(speed) => {
                format!("the design wind of {}", unbroken(&told::speed(speed, self.system)))
            }
            Reading::Between(low, high) => format!(
                "the design wind of {} to {}",
                unbroken(&told::speed(low, self.system)),
                unbroken(&told::speed(high, self.system))
            ),
            Reading::Unknown => "the design wind".to_owned(),
        }
    }

    /// What is decided of the runs, the worst first: its flag, the sentence, what is said beside it.
    fn decisions(&self) -> Vec<(Flag, Text, Text)> {
        let hung = |group: &Group<'_>| group.alike.run.screen.is_some();
        let bold = |before: &str, names: Text, after: &str| {
            let spans = names.spans.into_iter().map(|mut span| {
                span.style = if span.style == Style::Name { Style::StrongName } else { Style::Strong };
                span
            });
            Text::new().strong(before).then(Text { spans: spans.collect() }).strong(after)
        };
        if !self.check.has_speed() {
            let beside = Text::new().plain(
                "Nobody can say yet whether the posts carry it at the design wind. Ask the building department for that \
                 wind. The gusts in the table stand.",
            );
            let lead = match self.named(&hung) {
                Some(names) => bold("No design wind is known. Do not hang cloth yet on ", names, "."),
                None => Text::new().strong("No design wind is known."),
            };
            return vec![(Flag::NotChecked, lead, beside)];
        }
        // Named in full once, with the first that is decided.
        let mut full = Some(self.design_wind());
        let mut wind = move || full.take().unwrap_or_else(|| "that wind".to_owned());
        let mut all = Vec::new();
        // Where posts or footings are over as well, not to hang it is said with them.
        let others_over = |group: &Group<'_>| {
            hung(group)
                && group.alike.answer.own_flag_of_checked() != Some(Flag::Over)
                && !over_of_others(group.alike.answer).is_empty()
        };
        for flag in [Flag::Over, Flag::Depends, Flag::NotChecked, Flag::NearLimit, Flag::Within] {
            if flag == Flag::Depends
                && let Some(names) = self.named(&others_over)
            {
                let wind = wind();
                let groups = || self.groups.iter().filter(|group| others_over(group));
                let mut what: Vec<&str> = Vec::new();
                for one in groups().flat_map(|group| over_of_others(group.alike.answer)) {
                    if !what.contains(&one) {
                        what.push(one);
                    }
                }
                let least = groups().filter_map(|group| {
                    let answer = group.alike.answer;
                    let rail = answer.worst.rails.first().and_then(|rail| rail.limit_gust);
                    let guy = told::guy_over(answer).and_then(|guy| guy.limit_gust);
                    [rail, guy].into_iter().flatten().min_by(|one, other| one.si().total_cmp(&other.si()))
                });
                let least = least.min_by(|one, other| one.si().total_cmp(&other.si())).unwrap_or_default();
                let beside = format!(
                    "At {wind} {} would be over the limit there: the first goes in a gust of {}. A stronger post does not \
                     help.",
                    listed(&what),
                    gust(least, self.system)
                );
                all.push((
                    Flag::Over,
                    bold("Do not hang the cloth on ", names, "."),
                    Text::new().plain(beside),
                ));
            }
            for with_cloth in [true, false] {
                let wanted = |group: &Group<'_>| {
                    hung(group) == with_cloth
                        && group.alike.answer.own_flag_of_checked() == Some(flag)
                        && !others_over(group)
                };
                let Some(names) = self.named(&wanted) else { continue };
                let wind = wind();
                let apart = self.apart(&wanted);
                let (posts, alone) = (apart.who(flag, "and"), apart.checked());
                let (before, beside) = match (flag, with_cloth) {
                    (Flag::Over, true) => ("Do not hang the cloth on ", self.over(&wind, &wanted)),
                    (Flag::Depends | Flag::NotChecked, true) => (
                        "Do not hang the cloth yet on ",
                        format!(
                            "Whether the {posts} carry it at {wind} depends on what is not known. Measure first."
                        ),
                    ),
                    (Flag::NearLimit, true) => (
                        "An engineer decides before cloth hangs on ",
                        format!("With it the {posts} come near their limit at {wind}."),
                    ),
                    (Flag::Within, true) => (
                        "An engineer decides before cloth hangs on ",
                        format!("At {wind} the {alone} stay within their limit. The rest was not checked."),
                    ),
                    (Flag::Over, false) => (
                        "Hang nothing on ",
                        format!("The {posts} there are over their limit at {wind} even without cloth."),
                    ),
                    (Flag::Depends | Flag::NotChecked, false) => (
                        "Hang nothing on ",
                        format!(
                            "Whether the {posts} there stand {wind} without cloth depends on what is not known."
                        ),
                    ),
                    (Flag::NearLimit, false) => (
                        "Hang nothing on ",
                        format!("The {posts} there are near their limit at {wind} without cloth."),
                    ),
                    (Flag::Within, false) => (
                        "No cloth was asked for on ",
                        if alone == "posts alone" {
                            format!("At {wind} the posts there, alone and bare, stay within their limit.")
                        } else {
                            format!("At {wind} the {alone} there, bare, stay within their limit.")
                        },
                    ),
                };
                all.push((flag, bold(before, names, "."), Text::new().plain(beside)));
            }
        }
        all
    }

    /// Posts and footings of some rows, told apart.
    fn apart(&self, wanted: &dyn Fn(&Group<'_>) -> bool) -> Apart {
        Apart::of(self.groups.iter().filter(|group| wanted(group)).map(|group| group.alike.answer))
    }

    /// What is said of runs that are over with their cloth.
    fn over(&self, wind: &str, wanted: &dyn Fn(&Group<'_>) -> bool) -> String {
        let runs = || self.groups.iter().filter(|group| wanted(group)).map(|group| group.alike.answer);
        let apart = Apart::of(runs());
        let least = |of: fn(&RunVerdict) -> Velocity| {
            runs().map(|run| of(&run.worst)).min_by(|a, b| a.si().total_cmp(&b.si())).unwrap_or_default()
        };
        let either = if self.check.has_ranges() { ", whatever the unknowns turn out to be" } else { "" };
        let most = self.at_most();
        format!(
            "At {wind} the {} would be over their limit{either}: up to {}. With the cloth the first {} reaches its limit \
             in a gust of {}{most}, bare in one of {}{most}.{}",
            apart.who(Flag::Over, "and"),
            apart.times().trim_end_matches(" what they carry"),
            apart.first(),
            gust(least(|verdict| verdict.limit_gust), self.system),
            gust(least(|verdict| verdict.bare_limit_gust), self.system),
            if apart.is_foot_before_post() { " A stronger post alone does not help." } else { "" },
        )
    }

    fn decision(&self) -> Panel {
        let mut decisions = self.decisions().into_iter();
        let (flag, lead, beside) = decisions.next().unwrap_or((
            Flag::NotChecked,
            Text::new().plain("There is no run."),
            Text::new(),
        ));
        let mut lines = vec![beside];
        for (flag, lead, beside) in decisions {
            lines.push(
                Text::new().flag(flag, format!("{} ", flag.shape())).then(lead).plain(" ").then(beside),
            );
        }
        let times = self.check.runs.iter().map(|run| run.worst.times_bare).fold(0.0, f64::max);
        if self.groups.iter().any(|group| group.alike.run.screen.is_some()) {
            lines.push(Text::new().plain(format!(
                "Cloth makes the wind load on a post up to {times:.1} times what it is bare. Rules for existing \
                 buildings ask for a full check from 10\u{a0}% more."
            )));
        }
        Panel { tone: Tone::Found(flag), word: format!("{} DECISION", flag.shape()), lead, lines, columns: 1 }
    }

    fn about_drawings(&self, fit: Fit, are_drawn: bool) -> Option<Text> {
        let rows = self.groups.len();
        let mut told = Vec::new();
        if are_drawn || fit.is_from_above || fit.drawn > 0 {
            told.push(
                "To scale, heights larger where it says so. Post 1 is at your left when you stand inside the court and face \
                 the fence."
                    .to_owned(),
            );
            told.extend(misses(self.check));
            if fit.drawn < rows {
                let some = match fit.drawn {
                    0 => "No side is drawn by itself for want of room".to_owned(),
                    one => {
                        format!("Of {rows} kinds of run {one} are drawn, those with the lowest limit gusts")
                    }
                };
                told.push(format!("{some}; the table has them all."));
            }
        } else {
            told.push("There is no room for drawings on this page.".to_owned());
        }
        let is_cut = |name: &&str| width(&shown(name)) > fit.name;
        if self.groups.iter().any(|group| group.alike.names.iter().any(is_cut)) {
            told.push("Long names are cut short; the survey has them in full.".to_owned());
        }
        (!told.is_empty()).then(|| Text::new().plain(told.join(" ")))
    }

    /// All names of a row.
    fn names(&self, group: &Group<'_>, room: f64) -> Text {
        let mut text = Text::new().strong(format!("{} ", group.mark));
        let mut used = 0.0;
        for (at, name) in group.alike.names.iter().enumerate() {
            let name = written(name, room);
            used += width(&name);
            if at > 0 && used > FULL_NAMES.min(room * 4.0) {
                return text.plain(format!(" and {} more", group.alike.names.len() - at));
            }
            text = text.plain(if at == 0 { "" } else { ", " }).name(name);
        }
        text
    }

    fn table(&self, fit: Fit) -> Table {
        let column = |head: &str, share, is_figures| Column { head: head.to_owned(), share, is_figures };
        let columns = vec![
            column("Run", 0.15, false),
            column("Cloth", 0.17, false),
            column("Load ÷ limit at the design wind", 0.19, false),
            column("Cloth off", 0.09, true),
            column("Cloth on, near ends", 0.095, true),
            column("Cloth on, inside", 0.09, true),
            column("Warn at", 0.09, true),
            column("Take down at", 0.125, true),
        ];
        let shown: Vec<&Group<'_>> = if fit.rows < self.groups.len() {
            self.lowest_first().into_iter().take(fit.rows).collect()
        } else {
            self.groups.iter().collect()
        };
        let mut rows = Vec::new();
        for group in &shown {
            let names = self.names(group, fit.name);
            let mut cells = self.cells(group);
            // Long names stand over their row.
            if width(&names.letters()) > LONG_NAMES {
                rows.push(Row::Name(names));
                cells.insert(0, Text::new());
            } else {
                cells.insert(0, names);
            }
            rows.push(Row::Cells(cells));
        }
        if shown.len() < self.groups.len() {
            rows.push(Row::Spanning(self.left_out(shown.len())));
        }
        Table { caption: "Runs, what may hang on them, and their limit gusts".to_owned(), columns, rows }
    }

    /// What is said of rows for which there is no room.
    fn left_out(&self, shown: usize) -> Text {
        let out: Vec<&Group<'_>> = self.lowest_first().into_iter().skip(shown).collect();
        let worst = out
            .iter()
            .map(|group| group.alike.answer.own_flag_of_checked().unwrap_or(Flag::NotChecked))
            .max()
            .unwrap_or(Flag::NotChecked);
        let lowest = out.first().map_or_else(Velocity::default, |group| group.alike.answer.worst.limit_gust);
        Text::new()
            .strong(format!("{} more kinds of run do not fit on this page. ", out.len()))
            .plain("The worst of them: ")
            .flag(worst, worst.to_string())
            .plain(format!(
                "; the lowest limit gust of them {}{}. Ask for the full check.",
                gust(lowest, self.system),
                self.at_most()
            ))
    }

    fn cells(&self, group: &Group<'_>) -> Vec<Text> {
        let Group { alike, plan, .. } = group;
        let cloth = match &alike.run.screen {
            None => Text::new().plain("no cloth"),
            Some(screen) => {
                let name = told::cloth_name(alike.run, alike.survey);
                let bays = if screen.first_bay == 0 && screen.end_bay == alike.run.bays.len() {
                    String::new()
                } else {
                    format!(", bays {} to {}", screen.first_bay + 1, screen.end_bay)
                };
                let condition = told::condition(alike.run, alike.survey);
                Text::new().name(written(&name, 22.0)).plain(format!(
                    "{condition}, {} to {}{bays}",
                    length(screen.bottom, self.system),
                    length(screen.top, self.system)
                ))
            }
        };
        let figure = |gust_of: Option<Velocity>| match gust_of {
            Some(found) => Text::new().plain(gust(found, self.system)),
            None => Text::new().plain("–"),
        };
        let limit = |group: Option<GroupPlan>| figure(group.map(|group| group.limit_gust));
        let whole = plan.whole();
        let act = match whole {
            Some(found) if !plan.has_cloth() => {
                Text::new().plain(format!("keep clear {}", gust(found.act, self.system)))
            }
            Some(found) if found.is_workable => Text::new().strong(gust(found.act, self.system)),
            Some(found) => Text::new().plain("◇ ").strong(gust(found.act, self.system)),
            None => Text::new(),
        };
        vec![
            cloth,
            self.decision_cell(group),
            figure(Some(alike.answer.worst.bare_limit_gust)),
            limit(plan.near_ends),
            limit(plan.inside),
            figure(whole.map(|whole| whole.warn)),
            act,
        ]
    }

    fn decision_cell(&self, group: &Group<'_>) -> Text {
        let answer = group.alike.answer;
        let flag = answer.own_flag_of_checked().unwrap_or(Flag::NotChecked);
        let others = over_of_others(answer);
        if group.alike.run.screen.is_some() && flag != Flag::Over && !others.is_empty() {
            return Text::new()
                .flag(Flag::Over, Flag::Over.to_string())
                .plain(format!(": {}; do not hang", listed(&others)));
        }
        let ratio = answer.own_ratio();
        let text = Text::new().flag(flag, flag.to_string());
        let text = match ratio {
            Some(ratio) => text.plain(format!(" {}", ratio_up(ratio))),
            None => text,
        };
        let then = match (group.alike.run.screen.is_some(), flag) {
            (true, Flag::Over) => "do not hang",
            (true, Flag::Depends) => "measure first",
            (true, Flag::NotChecked) => "do not hang yet",
            (true, Flag::NearLimit | Flag::Within) => "an engineer decides",
            (false, Flag::Within) => Apart::of(std::iter::once(answer)).checked(),
            (false, Flag::NotChecked) => "no wind is known",
            (false, _) => "hang nothing",
        };
        text.plain(format!(": {then}"))
    }

    /// The marks of some rows: "A and B".
    fn marked(&self, wanted: &dyn Fn(&Group<'_>) -> bool) -> Option<String> {
        let marks: Vec<&str> =
            self.groups.iter().filter(|group| wanted(group)).map(|group| group.mark.as_str()).collect();
        match marks.len() {
            0 => None,
            1..=8 => Some(listed(&marks)),
            all => Some(format!("{} and {} more", marks[..6].join(", "), all - 6)),
        }
    }

    /// Wind from either side, and who goes first.
    fn winds_in_words(&self) -> Text {
        let of = |first: First| {
            let is = |group: &Group<'_>| {
                group.alike.answer.winds.as_ref().is_some_and(|winds| winds.first == first)
            };
            let gusts = self.groups.iter().filter(|group| is(group));
            let least = gusts
                .filter_map(|group| group.alike.answer.winds.as_ref()?.fastening)
                .map(|(low, _)| low)
                .min_by(|one, other| one.si().total_cmp(&other.si()));
            self.marked(&is).map(|marks| (marks, least))
        };
        let mut text = Text::new().strong("Wind from either side: ").plain(
            "one way it presses the cloth onto the fence, and what holds it relieves no post; the other way it pulls \
             the cloth off.",
        );
        let at = |least: Option<Velocity>| least.map_or_else(String::new, |least| gust(least, self.system));
        if let Some((marks, least)) = of(First::Fastening) {
            text = text.plain(format!(
                " Pulled off, what holds the cloth on {marks} goes first, from {}.",
                at(least)
            ));
        }
        let first_rail = |group: &Group<'_>| {
            group.alike.answer.winds.as_ref().is_some_and(|winds| matches!(winds.first, First::Rail(_)))
        };
        let either_way =
            |group: &Group<'_>| group.alike.answer.worst.rails.first().and_then(|first| first.limit_gust);
        let off = |group: &Group<'_>| {
            group.alike.answer.winds.as_ref().and_then(|winds| winds.rail_off).map(|rail| rail.gusts.0)
        };
        let least_of = |wanted: &dyn Fn(&Group<'_>) -> bool,
                        rails: &dyn Fn(&Group<'_>) -> Option<Velocity>| {
            let gusts = self.groups.iter().filter(|group| wanted(group)).filter_map(rails);
            at(gusts.min_by(|one, other| one.si().total_cmp(&other.si())))
        };
        if let Some(marks) = self.marked(&first_rail) {
            let gust = least_of(&first_rail, &off);
            text = text.plain(format!(" Pulled off, a rail on {marks} goes first, from {gust}."));
        }
        let over = |group: &Group<'_>| told::rails_flag(group.alike.answer) == Some(Flag::Over);
        if let Some(marks) = self.marked(&over) {
            let gust = least_of(&over, &either_way);
            text = text.plain(format!(" ■ Rails on {marks} are over at the design wind: from {gust}."));
        }
        let loose = |group: &Group<'_>| told::fastening_over(group.alike.answer).is_some();
        if let Some(marks) = self.marked(&loose) {
            let gust = least_of(&loose, &|group| told::fastening_over(group.alike.answer));
            text = text.plain(format!(
                " ■ What holds the cloth on {marks} is over at the design wind: from {gust}."
            ));
        }
        if let Some((marks, _)) = of(First::Posts) {
            text = text.plain(format!(" On {marks} the posts go first either way."));
        }
        if let Some((marks, _)) = of(First::TooClose) {
            text = text
                .plain(format!(" On {marks} it is too close to say what goes first, posts, rails or cloth."));
        }
        if let Some((marks, _)) = of(First::NotKnown) {
            text = text.plain(format!(" On {marks} what goes first is ◇ not known."));
        }
        text
    }

    /// The plan in sentences.
    fn plan_in_words(&self) -> Vec<Text> {
        let mut all = Vec::new();
        let worst =
            if self.check.has_ranges() { " They hold for the worst case of what is not known." } else { "" };
        all.push(Text::new().plain(format!(
            "All these are 3-second gusts, 33 ft (10 m) up over open ground, close to what an airport reports.{worst} A \
             hand meter beside the fence reads lower. If a forecast gives only a mean wind, multiply it by at least \
             {}, inland by {}, in a tropical cyclone by {}.",
            trimmed(MEAN_TO_GUST_LEAST.value, 2),
            trimmed(MEAN_TO_GUST_INLAND.value, 2),
            trimmed(MEAN_TO_GUST_CYCLONE.value, 2),
        )));
        let has_cloth = self.groups.iter().any(|group| group.plan.has_cloth());
        let shares = format!(
            "Warning at {} and acting at {} of the lowest limit gust, of posts or of what else was checked, is our own \
             judgement: the rest is for the error of a forecast.",
            trimmed(WARN_AT.value, 2),
            trimmed(TAKE_DOWN_AT.value, 2),
        );
        if !has_cloth {
            all.push(Text::new().plain(shares));
            return all;
        }
        let mut text = Text::new()
            .strong("Take down: ")
            .plain("when a forecast gives the gust of the last column or more, all cloth of that run comes down before it comes. ")
            .plain(shares);
        if let Some(marks) = self.marked(&|group| group.plan.end_panels.is_some_and(|panels| !panels.helps)) {
            text = text.plain(format!(
                " On {marks} taking down the end panels alone is not worth it: the wind pushes about as hard on the new ends."
            ));
        }
        let lifted: Vec<_> = self
            .groups
            .iter()
            .filter_map(|group| Some((group, group.plan.end_panels.filter(|panels| panels.helps)?)))
            .collect();
        if lifted.len() > END_PANELS_IN_TEXT {
            let marks = self.marked(&|group| group.plan.end_panels.is_some_and(|panels| panels.helps));
            text = text
                .plain(format!(" On {} it helps; the full check says how far.", marks.unwrap_or_default()));
        } else {
            for (group, panels) in lifted {
                text = text.plain(format!(
                    " On {} taking down the end panels lifts the limit gust of the rest to {}{}{}; the rest then comes down \
                     at {}.",
                    group.mark,
                    gust(panels.rest.limit_gust, self.system),
                    self.at_most(),
                    self.by_hand(),
                    gust(panels.rest.act, self.system),
                ));
            }
        }
        if self.groups.iter().any(|group| !group.plan.has_cloth()) {
            text = text.plain(" Where no cloth hangs, people keep clear from that gust on.");
        }
        all.push(text);
        all.push(self.winds_in_words());
        let hopeless = |group: &Group<'_>| {
            group.plan.has_cloth() && group.plan.whole().is_some_and(|whole| !whole.is_workable)
        };
        if let Some(marks) = self.marked(&hopeless) {
            all.push(Text::new().strong(format!("No workable plan on {marks}: ")).plain(format!(
                "cloth there (◇) would have to come down on less than {}. Such gusts come too often for that.",
                gust(LEAST_WORKABLE.value, self.system)
            )));
        }
        all.extend(self.corners_in_words());
        all
    }

    /// Corner posts of a side without cloth that carry the cloth of the other.
    fn corners_in_words(&self) -> Option<Text> {
        let corners = |group: &Group<'_>| self.check.runs[group.alike.at].corners.as_ref();
        let marks = self.marked(&|group| corners(group).is_some())?;
        let first = self
            .groups
            .iter()
            .filter_map(|group| Some(corners(group)?.limit_gust))
            .min_by(|one, other| one.si().total_cmp(&other.si()))?;
        Some(Text::new().strong(format!("Corner posts of {marks}: ")).plain(format!(
            "they carry the cloth round the corner as well; with it the first reaches its limit in a gust of {}{}.",
            gust(first, self.system),
            self.at_most()
        )))
    }

    /// What helps and what does not, on the run with the lowest limit gust.
    fn what_helps(&self) -> Option<Text> {
        let group = self.lowest_first().into_iter().find(|group| group.alike.run.screen.is_some())?;
        let pulled = self.check.levers[group.alike.at].as_ref()?;
        let told = |wanted: bool, most: usize| {
            let all: Vec<String> = pulled
                .iter()
                .filter(|one| {
                    helps(one) == wanted && !matches!(one.lever, Lever::NoCloth | Lever::EndPanelsOff)
                })
                .filter(|one| wanted || matches!(one.lever, Lever::OpenMesh | Lever::GapBelow))
                .take(most)
                .map(|one| format!("{} ({})", one.lever.words(), gust(one.limit_gust, self.system)))
                .collect();
            all.join("; ")
        };
        let (helps, little) = (told(true, 3), told(false, 2));
        let helps = if helps.is_empty() { "nothing that was tried".to_owned() } else { helps };
        let mut text = Text::new()
            .strong(format!(
                "What helps on {} (limit gust{}{}): ",
                group.mark,
                self.at_most(),
                self.by_hand()
            ))
            .plain(format!("{helps}."));
        if !little.is_empty() {
            text = text.strong(" Little or no help: ").plain(format!("{little}."));
        }
        let name = &group.alike.run.name;
        for remark in &self.check.remarks {
            if let Remark::Windows { run, share, change, .. } = remark
                && run == name
            {
                text = text.plain(format!(
                    " Windows cut in {}\u{a0}% of the cloth change the load by {}\u{a0}%.",
                    trimmed(share * 100.0, 2),
                    trimmed(change * 100.0, 2)
                ));
                break;
            }
        }
        Some(text)
    }

    fn not_checked(&self) -> Panel {
        let parts = told::unchecked_parts(self.check);
        let lead = if parts.is_empty() {
            Text::new().plain("What stands in the list here.")
        } else {
            let mut listed = parts.join(", ");
            if let Some(first) = listed.get_mut(..1) {
                first.make_ascii_uppercase();
            }
            let so = match footings::then_gusts(self.check) {
                "" => "The gusts on this sheet are those of posts and footings.",
                "every gust" => "So every gust on this sheet is “at most”.",
                _ => "So the gusts on this sheet are “at most”.",
            };
            Text::new().plain(format!("{listed}. Any of them may give way first. {so}"))
        };
        let mut also: Vec<&str> = Vec::new();
        for remark in &self.check.remarks {
            let what = match remark {
                Remark::ClothOnGate { .. } => "frame, hinges and latch of a gate with cloth",
                Remark::Gate { .. } => "an open gate in wind",
                Remark::GuysNotCounted => "back braces and guys, which hand statics leaves out",
                Remark::Hill => "whether the fence stands on a hill or the edge of a bank",
                _ => continue,
            };
            if !also.contains(&what) {
                also.push(what);
            }
        }
        if frame::has_guys(self.check) {
            also.push("the uplift of footings of back braces and guys, and of their posts");
        }
        also.extend(NOT_CHECKED.iter().map(|(_, text)| *text));
        let lines = vec![Text::new().plain(format!("Nor were these: {}.", also.join(" · ")))];
        Panel { tone: Tone::NotChecked, word: "◇ NOT CHECKED".to_owned(), lead, lines, columns: 1 }
    }

    fn warning(&self) -> Panel {
        let mut cautions = CAUTIONS.iter();
        let (word, lead) = cautions.next().map_or(("WARNING", ""), |first| (first.word, first.text));
        // What this sheet is not stands before who decides.
        let mut before = Text::new().strong("This sheet is not an engineer's design. ");
        let lines = cautions.map(|caution| std::mem::take(&mut before).plain(caution.text)).collect();
        Panel { tone: Tone::Warning, word: word.to_owned(), lead: Text::new().plain(lead), lines, columns: 2 }
    }

    fn measure_next(&self, fit: Fit) -> Vec<Text> {
        let all = told::measure_next(self.check);
        // What nothing is known of comes first; what has little to gain is counted, not told.
        let (little, mut telling): (Vec<&String>, Vec<&String>) =
            all.iter().partition(|line| line.ends_with(LITTLE));
        telling.sort_by_key(|line| !footings::is_of_footings(line));
        let told = telling.len().min((MOST_TO_MEASURE as f64 * fit.words()).ceil() as usize);
        let mut lines: Vec<Text> =
            telling[..told].iter().map(|line| Text::new().plain(written(line, 115.0))).collect();
        let more = telling.len() - told + little.len();
        if more > 0 {
            let more = if told == 0 {
                "Little to gain by measuring: the full check has what is left".to_owned()
            } else {
                format!("{more} more with less to gain: ask for the full check")
            };
            lines.push(Text::new().plain(more));
        }
        lines
    }

    /// Whether posts and rails were worked as one frame; where they were not, what that leaves out, as far as there is
    /// room.
    fn statics(&self, fit: Fit) -> Option<String> {
        if !self.check.by_frame {
            let is_told = fit.has_statics && self.check.remarks.contains(&Remark::HandStatics);
            return is_told.then(|| HAND_STATICS.to_owned());
        }
        let of = |group: &Group<'_>, is: fn(&RunFrame) -> bool| {
            let frames = group.alike.runs.iter().map(|run| self.check.runs[*run].worst.frame.as_ref());
            frames.flatten().any(|frame| frame.as_ref().is_ok_and(is))
        };
        let left =
            |group: &Group<'_>| frame::not_worked(self.check).any(|run| group.alike.runs.contains(&run));
        if !self.groups.iter().any(|group| of(group, |_| true)) {
            return Some(
                "◇ Posts and rails could not be worked as one frame; every gust is by hand statics."
                    .to_owned(),
            );
        }
        let mut said =
            "Posts and rails were also worked as one frame: of that and of hand statics the worse counts"
                .to_owned();
        if let Some(marks) = self.marked(&|group| of(group, |frame| frame.soft.is_err())) {
            said.push_str(&format!("; on {marks} ◇ with feet that do not give only"));
        }
        if let Some(marks) = self.marked(&left) {
            said.push_str(&format!("; ◇ not so on {marks}, where it could not be worked"));
        }
        Some(format!("{said}."))
    }

    /// What is said of a figure that is by hand statics where the others are the worse of both.
    const fn by_hand(&self) -> &'static str {
        if self.check.by_frame { " by hand statics" } else { "" }
    }

    /// What the crew noted, as far as there is room; that of the job stands at the top.
    fn notes(&self, fit: Fit) -> Text {
        let notes = told::notes(&self.check.survey);
        let of_job = |line: &&String| !line.starts_with("note, job: ");
        let (mut text, mut told) = (Text::new(), 0);
        let notes: Vec<&String> = notes.iter().filter(of_job).collect();
        let most = (MOST_NOTES as f64 * fit.words()).floor() as usize;
        for line in notes.iter().take(most) {
            text = text.plain(if told == 0 { "" } else { " · " }).plain(written(line, 90.0 * fit.words()));
            told += 1;
        }
        if notes.len() > told {
            let more = notes.len() - told;
            let dot = if told == 0 { "" } else { " · " };
            text = text.plain(format!("{dot}{more} more notes: ask for the full check"));
        }
        text
    }

    fn foot(&self, fit: Fit) -> Vec<Text> {
        let code = self.check.survey.site.code.document();
        let wind: Vec<String> =
            told::wind(self.check).iter().map(|part| written(part, 90.0 * fit.words())).collect();
        vec![
            Text::new().plain(format!(
                "{}: {}. Strength of posts by {}.{}",
                code.title,
                wind[1..].join(" · "),
                told::strength_documents(self.check),
                self.statics(fit).map_or_else(String::new, |said| format!(" {said}")),
            )),
            self.notes(fit),
            Text::new().plain(format!(
                "Survey {}, fencegust {}.",
                self.check.survey.hash,
                env!("CARGO_PKG_VERSION")
            )),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::answers;
    use crate::survey::Survey;

    const SURVEYS: [&str; 5] = [
        include_str!("../../examples/tarnwick-green.toml"),
        include_str!("../../tests/surveys/one-bay.toml"),
        include_str!("../../tests/surveys/sixty-bays.toml"),
        include_str!("../../tests/surveys/eight-runs.toml"),
        include_str!("../../tests/surveys/seventy-runs.toml"),
    ];

    const RAILED: &str = include_str!("../../examples/braced.toml");

    fn checked(text: &str) -> Check {
        answers::check(Survey::read(text, "survey").unwrap()).unwrap()
    }

    /// How much of the page is filled.
    fn filled(check: &Check, paper: Paper) -> f64 {
        let document = client_sheet(check, paper);
        let (width, height) = inner_mm(paper);
        assert!(!document.blocks.contains(&Block::PageBreak));
        height_mm(&document.blocks, width, document.letters_pt) / height
    }

    #[test]
    fn every_sheet_fits_its_page_by_the_reckoning_and_uses_most_of_it() {
        for text in SURVEYS {
            for units in ["\"us\"", "\"si\""] {
                let check = checked(&text.replacen("\"us\"", units, 1));
                for paper in [Paper::Letter, Paper::A4] {
                    let filled = filled(&check, paper);
                    assert!((0.6..=1.0).contains(&filled), "{filled}");
                }
            }
        }
    }

    #[test]
    fn a_sheet_made_on_the_frame_says_so_in_a_sentence_and_fits_its_page() {
        for text in SURVEYS.into_iter().chain([RAILED]) {
            let check = answers::check_on_frame(Survey::read(text, "survey").unwrap()).unwrap();
            for paper in [Paper::Letter, Paper::A4] {
                let filled = filled(&check, paper);
                assert!((0.6..=1.0).contains(&filled), "{filled}");
                let told = format!("{:?}", client_sheet(&check, paper).blocks);
                assert!(told.contains("worked as one frame"), "{told}");
                assert!(!told.contains(HAND_STATICS), "{told}");
            }
        }
    }

    #[test]
    fn what_hand_statics_leaves_out_is_told_where_there_is_room() {
        let told = |check: &Check| format!("{:?}", client_sheet(check, Paper::Letter).blocks);
        assert!(!told(&checked(SURVEYS[1])).contains(HAND_STATICS), "it has no rails");
        let rail = "top_rail = { diameter = \"1.66 in\", nominal_wall = \"0.14 in\", yield = \"30 ksi\" }\n";
        let check = checked(&format!("{}{rail}", SURVEYS[1]));
        assert!(check.remarks.contains(&Remark::HandStatics));
        assert!(told(&check).contains(HAND_STATICS));
        assert!(Remark::HandStatics.text(System::Us).contains("11 %"));
        assert!(Remark::HandStatics.text(System::Us).contains("17 %"));
        // The least sheet has no room for it.
        let sheet = Sheet { groups: groups(&check), check: &check, system: check.survey.units };
        assert_eq!(sheet.statics(sheet.least()), None);
        assert_eq!(sheet.statics(sheet.fits()[0]), Some(HAND_STATICS.to_owned()));
    }

    #[test]
    fn names_of_ten_thousand_letters_and_a_court_of_as_many_words_fit_one_page() {
        let long = "long and longer ".repeat(625);
        let text = SURVEYS[0]
            .replace("\"north end\"", &format!("\"{long}\""))
            .replace("Tarnwick Green courts 1-3, new cloth", &long)
            .replace("city handout, risk category II", &long)
            .replace("\"courts 1-3\"", &format!("\"{long}\""));
        assert!(text.len() > 40_000);
        assert!(filled(&checked(&text), Paper::Letter) <= 1.0);
    }

    #[test]
    fn the_least_sheet_fits_however_many_runs_there_are() {
        let mut check = checked(SURVEYS[4]);
        let sheet = Sheet { groups: groups(&check), check: &check, system: check.survey.units };
        let (width, height) = inner_mm(Paper::Letter);
        let least = sheet.least();
        assert!(height_mm(&sheet.blocks(least, None), width, least.letters) < height * 0.8);
        drop(sheet);
        check.runs.clear();
        check.levers.clear();
        check.settled.fence.runs.clear();
        check.survey.runs.clear();
        assert!(filled(&check, Paper::Letter) <= 1.0);
    }

    #[test]
    fn rows_are_lettered_on_beyond_z() {
        assert_eq!([0, 25, 26, 51, 52, 701, 702].map(mark), ["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]);
    }
}
