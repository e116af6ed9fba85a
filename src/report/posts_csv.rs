//! Checks of any number of surveys as one table for a spreadsheet: a row a post.

use super::json::governs;
use super::spreadsheet::{Cell, table};
use crate::answers::{Check, RunAnswer, flag_over_both};
use crate::fence::{FootingShape, Post, Run};
use crate::loads::frame::Base;
use crate::loads::{BayLoad, PostLoad};
use crate::survey::RunSurvey;
use crate::units::{Measure, Quantity, System};
use crate::verdict::{Flag, Part, PartKind, PostVerdict};
use std::io::{self, Write};

/// A column of the table: its name, to which a unit is added, and what stands in it.
struct Column {
    name: &'static str,
    measure: Option<Measure>,
    about: &'static str,
    cell: fn(&Row<'_>) -> Cell,
}

/// What a row is made from.
struct Row<'a> {
    /// The name of the survey, as it was given.
    file: &'a str,
    check: &'a Check,
    survey: &'a RunSurvey,
    run: &'a Run,
    answer: &'a RunAnswer,
    number: usize,
    post: &'a Post,
    worst: &'a PostVerdict,
    best: Option<&'a PostVerdict>,
    /// The units of the table.
    system: System,
}

impl Row<'_> {
    fn figure(&self, quantity: impl Quantity, measure: Measure) -> Cell {
        Cell::Figure(measure.in_unit(quantity.si(), self.system))
    }

    fn any<Q: Quantity>(&self, quantity: Option<Q>, measure: Measure) -> Cell {
        quantity.map_or(Cell::Empty, |quantity| self.figure(quantity, measure))
    }

    fn load<Q: Quantity>(&self, of: fn(&PostLoad) -> Q) -> Option<f64> {
        self.worst.design.as_ref().map(|load| of(load).si().abs())
    }

    /// The bay at the right hand of the post, seen from inside.
    fn bay(&self) -> Option<usize> {
        (self.number < self.run.bays.len()).then_some(self.number)
    }

    fn bay_load(&self) -> Option<&BayLoad> {
        Some(&self.answer.worst.bays.as_ref()?[self.bay()?])
    }
}

const fn words(name: &'static str, about: &'static str, cell: fn(&Row<'_>) -> Cell) -> Column {
    Column { name, measure: None, about, cell }
}

const fn figure(
    name: &'static str,
    measure: Measure,
    about: &'static str,
    cell: fn(&Row<'_>) -> Cell,
) -> Column {
    Column { name, measure: Some(measure), about, cell }
}

const YES: &str = "yes";
const NO: &str = "no";

fn yes(is: bool) -> Cell {
    Cell::words(if is { YES } else { NO })
}

fn largest(verdict: &PostVerdict) -> Option<&Part> {
    let checked = verdict.load_bearing().filter_map(|part| part.ratio.map(|ratio| (ratio, part)));
    checked.max_by(|one, other| one.0.total_cmp(&other.0)).map(|(_, part)| part)
}

/// Pull over strength of what holds the cloth.
fn fastening(verdict: &PostVerdict) -> Option<f64> {
    verdict.parts.iter().find(|part| part.kind == PartKind::Fastening).and_then(|part| part.ratio)
}

/// Demand over capacity of the rails beside a post.
fn rails(verdict: &PostVerdict) -> Option<f64> {
    verdict.parts.iter().find(|part| part.kind == PartKind::Rails).and_then(|part| part.ratio)
}

/// The largest moment of a post on the frame with these feet.
fn on_frame(row: &Row<'_>, base: Base) -> Cell {
    let found = row.worst.frame.as_ref().and_then(|frame| frame.on(base));
    row.any(found.map(|one| one.found.greatest), Measure::Moment)
}

/// How far the top of a post moves on the frame with these feet.
fn top(row: &Row<'_>, base: Base) -> Cell {
    row.any(row.worst.frame.as_ref().and_then(|frame| frame.top(base)), Measure::Small)
}

const COLUMNS: &[Column] = &[
    words("survey", "the survey file as it was named", |row| Cell::words(row.file)),
    words("site", "title of the job", |row| Cell::any_words(row.check.survey.job.title.as_deref())),
    words("wind_code", "wind code, in its edition", |row| Cell::words(row.check.survey.site.code.key())),
    figure("wind_speed", Measure::Speed, "design wind speed of that code; empty: unknown", |row| {
        row.any(row.check.settled.site.wind_speed(), Measure::Speed)
    }),
    words("court", "court the run belongs to", |row| Cell::words(row.survey.court.as_str())),
    words("run", "straight side of fence", |row| Cell::words(row.run.name.as_str())),
    words("faces", "compass side it looks out to", |row| Cell::any_words(row.survey.faces.as_deref())),
    words("cloth", "cloth hung on the run; empty: none", |row| {
        let name = row.run.screen.as_ref().map(|screen| screen.name.as_str());
        Cell::any_words(row.survey.cloth.as_deref().or(name))
    }),
    words("solidity", "solid area over gross area, all layers, as the load was worked", |row| {
        Cell::any_figure(row.answer.worst.solidity)
    }),
    words("number", "the post, counted from the left, seen from inside", |row| {
        Cell::Figure((row.number + 1) as f64)
    }),
    words("kind", "line, end, corner or gate", |row| Cell::words(row.post.role.word())),
    words("post", "kind of post in the survey", |row| {
        Cell::words(row.check.settled.fence.kinds[row.post.kind].name.as_str())
    }),
    figure("at", Measure::Length, "from the first post of the run", |row| {
        row.figure(row.post.at, Measure::Length)
    }),
    words("shared_with", "the same corner post in the other run, RUN/NUMBER", |row| {
        Cell::any_words(
            row.post.shared_with.map(|shared| {
                format!("{}/{}", row.check.settled.fence.runs[shared.run].name, shared.post + 1)
            }),
        )
    }),
    words("flag", "the worst of all parts: over, depends, not checked, near limit or within", |row| {
        Cell::words(flag_over_both(row.worst, row.best).0.word())
    }),
    words("flag_of_checked", "the worst of the parts that were checked", |row| {
        Cell::any_words(flag_over_both(row.worst, row.best).1.map(Flag::word))
    }),
    words("flag_best", "the flag with what is not known at its best; empty: all is known", |row| {
        Cell::any_words(row.best.map(|best| best.flag.word()))
    }),
    words("not_checked", "the parts that were not checked", |row| {
        let parts = row.worst.parts.iter().filter(|part| part.ratio.is_none());
        let names: Vec<&str> = parts.map(|part| part.kind.name()).collect();
        Cell::any_words((!names.is_empty()).then(|| names.join("; ")))
    }),
    words("ratio", "demand over capacity of the worst checked part of the post itself", |row| {
        Cell::any_figure(row.worst.ratio())
    }),
    words("ratio_best", "the same with what is not known at its best", |row| {
        Cell::any_figure(row.best.and_then(PostVerdict::ratio))
    }),
    words("ratio_of", "the part that ratio belongs to", |row| {
        Cell::any_words(largest(row.worst).map(|part| part.kind.name()))
    }),
    words(
        "fastening_ratio",
        "pull over strength of what holds the cloth beside the post; empty: not checked",
        |row| Cell::any_figure(fastening(row.worst)),
    ),
    words("rails_ratio", "demand over capacity of the rails beside the post; empty: not checked", |row| {
        Cell::any_figure(rails(row.worst))
    }),
    words("footing", "what the post stands in: round, square or driven; empty: not known", |row| {
        Cell::any_words(row.worst.footing.shape.map(FootingShape::word))
    }),
    words("footing_method", "method by which it is worked", |row| {
        Cell::words(row.worst.footing.method.key())
    }),
    words(
        "footing_ratio",
        "load over what it carries, at the level of that method; empty: not checked",
        |row| Cell::any_figure(row.worst.footing.checked.as_ref().ok().map(|found| found.ratio)),
    ),
    figure(
        "footing_width",
        Measure::Small,
        "across the concrete or the driven post, or as dug by ASTM F567",
        |row| row.any(row.worst.footing.width.map(|width| width.across), Measure::Small),
    ),
    figure("footing_depth", Measure::Small, "from the ground to its bottom; empty: not known", |row| {
        row.any(row.worst.footing.depth, Measure::Small)
    }),
    figure(
        "footing_depth_needed",
        Measure::Small,
        "the depth the design wind needs with that width",
        |row| row.any(row.worst.footing.needed.as_ref().ok().copied(), Measure::Small),
    ),
    figure(
        "footing_dug_by_standard",
        Measure::Small,
        "the depth of a hole by ASTM F567, which knows no wind",
        |row| row.any(row.worst.footing.dug.map(|dug| dug.depth), Measure::Small),
    ),
    words("footing_why", "why it is not checked; empty: it is", |row| {
        let why = row.worst.footing.checked.as_ref().err();
        why.map_or(Cell::Empty, |why| Cell::words(why.to_string()))
    }),
    figure(
        "limit_gust",
        Measure::Speed,
        "3-second gust, 33 ft (10 m) up over open ground, at its limit",
        |row| row.figure(row.worst.limit_gust, Measure::Speed),
    ),
    words("limited_by", "the part of the post that reaches its limit in that gust", |row| {
        Cell::words(row.worst.limited_by.name())
    }),
    words("limit_gust_is", "at most, while a part is not checked; else exactly", |row| {
        Cell::words(if row.worst.is_at_most() { "at most" } else { "exactly" })
    }),
    figure("limit_gust_best", Measure::Speed, "the same with what is not known at its best", |row| {
        row.any(row.best.map(|best| best.limit_gust), Measure::Speed)
    }),
    figure("bare_limit_gust", Measure::Speed, "limit gust with the cloth taken off", |row| {
        row.figure(row.worst.bare_limit_gust, Measure::Speed)
    }),
    words("load_times_bare", "base moment with the cloth over without, in one gust", |row| {
        Cell::Figure(row.worst.times_bare)
    }),
    words("governs", "load case with the largest base moment at the design wind", |row| {
        Cell::any_words(row.worst.design.map(|load| governs(row.check, load.place, "", load.case)))
    }),
    figure("base_shear", Measure::Force, "shear at grade in that case", |row| {
        row.any(row.load(|load| load.shear), Measure::Force)
    }),
    figure("base_moment", Measure::Moment, "moment at grade in that case", |row| {
        row.any(row.load(|load| load.moment), Measure::Moment)
    }),
    figure("bare_base_moment", Measure::Moment, "moment at grade with the cloth taken off", |row| {
        row.any(row.worst.bare_design.map(|load| load.moment.si().abs()), Measure::Moment)
    }),
    words("bay", "the bay at the right hand of the post, seen from inside; empty: none", |row| {
        Cell::any_figure(row.bay().map(|bay| (bay + 1) as f64))
    }),
    figure("bay_width", Measure::Length, "that bay, centre to centre of its posts", |row| {
        row.any(row.bay().map(|bay| row.run.bays[bay].width), Measure::Length)
    }),
    words("bay_is_gate", "whether it is a gate", |row| {
        row.bay().map_or(Cell::Empty, |bay| yes(row.run.bays[bay].gate))
    }),
    words("bay_has_cloth", "whether cloth hangs on it", |row| {
        row.bay().map_or(Cell::Empty, |bay| yes(row.run.has_cloth(bay)))
    }),
    figure("bay_pressure", Measure::Pressure, "largest mean pressure over it at the design wind", |row| {
        row.any(row.bay_load().map(|load| load.pressure), Measure::Pressure)
    }),
    figure("bay_force", Measure::Force, "force on it in that case", |row| {
        row.any(row.bay_load().map(|load| load.force), Measure::Force)
    }),
    words("bay_governs", "load case with that pressure", |row| {
        Cell::any_words(row.bay_load().map(|load| governs(row.check, load.place, load.zone, load.case)))
    }),
    figure(
        "frame_moment_stiff",
        Measure::Moment,
        "with --frame, its largest moment on feet that do not give; empty: not worked",
        |row| on_frame(row, Base::Rigid),
    ),
    figure(
        "frame_moment_soft",
        Measure::Moment,
        "with --frame, its largest moment on soft feet; empty: not worked",
        |row| on_frame(row, Base::Soft),
    ),
    figure(
        "top_stiff",
        Measure::Small,
        "with --frame, how far its top moves on feet that do not give",
        |row| top(row, Base::Rigid),
    ),
    figure("top_soft", Measure::Small, "with --frame, how far its top moves on soft feet", |row| {
        top(row, Base::Soft)
    }),
];

/// The name of a column in the units of a table: `base_moment_lb_ft`, `base_moment_n_m`.
fn named(column: &Column, system: System) -> String {
    let Some(measure) = column.measure else { return column.name.to_owned() };
    let unit: String = measure
        .printed(system)
        .0
        .chars()
        .map(|sign| if sign.is_alphanumeric() { sign.to_ascii_lowercase() } else { '_' })
        .collect();
    format!("{}_{unit}", column.name)
}

/// The columns of the table in one system of units, each with what stands in it.
#[must_use]
pub fn csv_columns(system: System) -> Vec<(String, &'static str)> {
    COLUMNS.iter().map(|column| (named(column, system), column.about)).collect()
}

/// Writes checks as one table, a row a post: the name of each survey and its check. Figures stand in the units of the
/// first survey, to twelve digits; what is not known or was not checked is empty.
///
/// # Errors
/// If the writer fails.
pub fn csv(checks: &[(&str, Check)], out: &mut impl Write) -> io::Result<()> {
    let system = checks.first().map_or_else(System::default, |(_, check)| check.survey.units);
    let head: Vec<String> = csv_columns(system).into_iter().map(|(name, _)| name).collect();
    let rows = checks.iter().flat_map(|(file, check)| rows(file, check, system));
    table(&head, rows, out)
}

fn rows<'a>(file: &'a str, check: &'a Check, system: System) -> impl Iterator<Item = Vec<Cell>> + 'a {
    let runs = check.settled.fence.runs.iter().zip(&check.survey.runs).zip(&check.runs);
    runs.flat_map(move |((run, survey), answer)| {
        run.posts.iter().enumerate().map(move |(number, post)| {
            let worst = &answer.worst.posts[number];
            let best = answer.best.as_ref().map(|best| &best.posts[number]);
            let row = Row { file, check, survey, run, answer, number, post, worst, best, system };
            COLUMNS.iter().map(|column| (column.cell)(&row)).collect()
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_columns_share_a_name_and_a_name_is_plain() {
        for system in [System::Us, System::Si] {
            let names: Vec<String> = csv_columns(system).into_iter().map(|(name, _)| name).collect();
            for (at, name) in names.iter().enumerate() {
                assert!(!names[..at].contains(name), "{name} stands twice");
                assert!(name.chars().all(|sign| sign.is_ascii_lowercase() || sign == '_'), "{name}");
            }
        }
    }
}
