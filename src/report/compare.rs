//! A comparison as text, JSON and CSV; what helps and what does not; the highest cloth for a gust.

use super::figures::{gust, gust_figure, length, ratio_up, speed_unit};
use super::footings;
use super::spreadsheet::{self, Cell};
use super::text::{rule, wrapped};
use super::told;
use crate::answers::{Check, Comparison, Figures, HighestCloth, Lever, Often, Pulled};
use crate::screen::loss::ModelFactor;
use crate::units::{Measure, Quantity, System, Velocity, number, trimmed};
use comfy_table::{CellAlignment, Table, presets};
use serde::Serialize;
use std::io::{self, Write};

/// Runs of a comparison that come out alike in every column.
struct AlikeRuns<'a> {
    names: Vec<&'a str>,
    run: usize,
    figures: Vec<Figures>,
}

fn alike_runs(comparison: &Comparison) -> Vec<AlikeRuns<'_>> {
    let first = &comparison.columns[0];
    let runs = first.runs();
    let mut all: Vec<AlikeRuns<'_>> = Vec::new();
    for run in 0..runs {
        let name = first.run_name(run);
        let figures: Vec<Figures> = comparison.columns.iter().map(|column| column.figures(run)).collect();
        let like = |one: &&mut AlikeRuns<'_>| one.figures.iter().zip(&figures).all(|(a, b)| a.is_like(b));
        match all.iter_mut().find(like) {
            Some(one) => one.names.push(name),
            None => all.push(AlikeRuns { names: vec![name], run, figures }),
        }
    }
    all
}

fn percent(change: f64) -> String {
    let figure = trimmed((change * 100.0).abs(), if change.abs() < 0.0095 { 1 } else { 0 });
    match figure.as_str() {
        "0" => "nothing".to_owned(),
        _ => format!("{figure} %"),
    }
}

/// Two shares in per cent, the lesser first: "6 to 9 %".
fn percents(one: f64, other: f64) -> String {
    let (least, most) = (percent(one.min(other)), percent(one.max(other)));
    if least == most { least } else { format!("{} to {most}", least.trim_end_matches(" %")) }
}

/// "a half", "a seventh" of a share; per cent where no such word fits.
fn share_in_words(share: f64) -> String {
    const WORDS: [&str; 11] = [
        "half",
        "a third",
        "a quarter",
        "a fifth",
        "a sixth",
        "a seventh",
        "an eighth",
        "a ninth",
        "a tenth",
        "an eleventh",
        "a twelfth",
    ];
    let parts = (1.0 / share).round();
    if (2.0..=12.0).contains(&parts) && (share * parts - 1.0).abs() < 0.12 {
        WORDS[parts as usize - 2].to_owned()
    } else {
        format!("{} %", number(share * 100.0, 0))
    }
}

/// What the columns say of each other, in sentences: against the heaviest.
fn sentences(comparison: &Comparison, alike: &AlikeRuns<'_>) -> Vec<String> {
    if !comparison.one_fence {
        return Vec::new();
    }
    let heaviest = (0..alike.figures.len())
        .max_by(|a, b| alike.figures[*a].inside_moment.total_cmp(&alike.figures[*b].inside_moment))
        .unwrap_or(0);
    let base = &comparison.columns[heaviest];
    let mut lines = Vec::new();
    for (at, column) in comparison.columns.iter().enumerate() {
        let share = alike.figures[at].inside_moment / alike.figures[heaviest].inside_moment;
        if at == heaviest || (share - 1.0).abs() < 1e-9 {
            continue;
        }
        let by_model = alike.figures[at].model.zip(alike.figures[heaviest].model);
        let mut line = if share < 0.55 {
            format!("{} carries {} of the load of {}", column.named(), share_in_words(share), base.named())
        } else {
            let open = alike.figures[at].inside_moment_open / alike.figures[heaviest].inside_moment;
            let saved = percents(1.0 - share, 1.0 - open);
            format!("{} instead of {} saves {saved} of the load", column.named(), base.named())
        };
        if let Some((ours, theirs)) = by_model {
            let saved = |ours: ModelFactor| 1.0 - ours.factor / theirs.factor;
            let open = alike.figures[at].model_open.unwrap_or(ours);
            line.push_str(&format!(
                " by the code ({} by the loss-coefficient model, whose factors are good to {} or so)",
                percents(saved(ours), saved(open)),
                percent(open.band.max(theirs.band))
            ));
        }
        if let Some((low, high)) = column.sold_open.filter(|(_, high)| *high > 0.0) {
            let open = if low == high {
                format!("{} %", trimmed(low * 100.0, 0))
            } else {
                format!("{} to {} %", trimmed(low * 100.0, 0), trimmed(high * 100.0, 0))
            };
            line.push_str(&format!(
                "; it is sold as {open} open, and the saving is the rules', not the seller's"
            ));
        }
        line.push('.');
        lines.push(line);
    }
    lines
}

/// What the model leaves of the load in wind that does not come square on, cloth by cloth.
fn oblique(comparison: &Comparison, alike: &AlikeRuns<'_>) -> Option<String> {
    let mut all: Vec<String> = Vec::new();
    for (column, figures) in comparison.columns.iter().zip(&alike.figures) {
        if let Some(share) = figures.model_at_45_degrees {
            all.push(format!("{} % with {}", number(share * 100.0, 0), column.named()));
        }
    }
    if all.is_empty() {
        return None;
    }
    Some(format!(
        "In wind 45° from square on, the loss-coefficient model leaves of the load {}. No credit is taken for it.",
        all.join(", ")
    ))
}

fn table(head: Vec<String>, rows: Vec<Vec<String>>) -> Table {
    let mut table = Table::new();
    table.load_style(presets::NOTHING).set_header(head);
    for row in rows {
        table.add_row(row);
    }
    for (at, column) in table.column_iter_mut().enumerate() {
        column.set_padding((0, 2));
        if at > 0 {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    table
}

/// Writes a comparison as text.
///
/// # Errors
/// If the writer fails.
pub fn compare_text(comparison: &Comparison, out: &mut impl Write) -> io::Result<()> {
    let first = &comparison.columns[0].check;
    let system = first.survey.units;
    wrapped(out, "", first.survey.job.title.as_deref().unwrap_or("Fence survey"))?;
    writeln!(out)?;
    wrapped(
        out,
        "◇ NOT CHECKED: ",
        &format!(
            "{}. {} Nothing here calls a fence safe.",
            unchecked(comparison),
            if at_most(comparison).is_empty() {
                "Limit gusts are those of posts and footings."
            } else {
                "Every limit gust is \"at most\"."
            }
        ),
    )?;
    let unit = |measure: Measure| measure.printed(system).0;
    for alike in alike_runs(comparison) {
        writeln!(out)?;
        rule(out, &alike.names.join(", "))?;
        if alike.figures.windows(2).all(|two| two[0].is_like(&two[1])) {
            let bare = comparison.columns[0].solidity(alike.run).is_none();
            let why = if bare { "no cloth in any of them" } else { "the same in all of them" };
            let figures = &alike.figures[0];
            wrapped(
                out,
                "",
                &format!("{why}: limit gust {}{}.", gust(figures.least(), system), at_most(comparison)),
            )?;
            continue;
        }
        let head = vec![
            comparison.column_is.to_owned(),
            "solid".to_owned(),
            format!("pressure {}", unit(Measure::Pressure)),
            format!("moment {}", unit(Measure::Moment)),
            "ratio".to_owned(),
            format!("limit gust {}: ends", speed_unit(system)),
            "inside".to_owned(),
            "it comes".to_owned(),
        ];
        let rows = comparison
            .columns
            .iter()
            .zip(&alike.figures)
            .map(|(column, figures)| {
                let figure = |measure: Measure, si: Option<f64>, decimals| {
                    si.map_or_else(|| "-".to_owned(), |si| number(measure.in_unit(si, system), decimals))
                };
                vec![
                    column.label.clone(),
                    column
                        .solidity(alike.run)
                        .map_or_else(|| "-".to_owned(), |solidity| format!("{solidity:.3}")),
                    figure(
                        Measure::Pressure,
                        figures.pressure.map(Quantity::si),
                        usize::from(system == System::Us),
                    ),
                    figure(Measure::Moment, figures.moment.map(Quantity::si), 0),
                    figures.ratio.map_or_else(|| "-".to_owned(), ratio_up),
                    gust_figure(figures.limit_gust_ends, system),
                    gust_figure(figures.limit_gust_inside, system),
                    figures.often.words(),
                ]
            })
            .collect();
        writeln!(out, "{}", table(head, rows).trim_fmt())?;
        let bare = comparison.columns.iter().all(|column| column.solidity(alike.run).is_none());
        if comparison.one_fence && bare {
            wrapped(
                out,
                "- ",
                "no cloth here in any of them; ratio and limit gust are those of its corner posts, which carry the \
                 cloth of the other run as well. Pressure and moment are this run's own.",
            )?;
        }
        for sentence in sentences(comparison, &alike) {
            wrapped(out, "- ", &sentence)?;
        }
        if let Some(sentence) = oblique(comparison, &alike) {
            wrapped(out, "- ", &sentence)?;
        }
    }
    for (column, name) in comparison.unpaired() {
        writeln!(out)?;
        wrapped(out, "", &format!("{name}: stands in {column} only and is not compared."))?;
    }
    writeln!(out)?;
    for note in &comparison.notes {
        wrapped(out, "", note)?;
    }
    let mut posts = comparison.columns.iter().flat_map(|column| footings::posts(&column.check));
    let worst = if posts.any(footings::is_worked) {
        "moment that of the worst post, ratio that of the worst post or footing"
    } else {
        "moment and ratio those of the worst post"
    };
    let savings = if comparison.one_fence { " Savings are those of an inside post." } else { "" };
    wrapped(
        out,
        "",
        &format!(
            "Pressure is the largest mean over a bay, {worst}, at the design wind and the worst end of what is not \
             known.{savings}"
        ),
    )?;
    wrapped(out, "WARNING ", "The local code and a licensed engineer decide what may hang.")
}

#[derive(Serialize)]
struct ComparisonJson<'a> {
    format: &'static str,
    version: u32,
    program: String,
    columns: Vec<ColumnJson<'a>>,
    remarks: Vec<String>,
}

#[derive(Serialize)]
struct ColumnJson<'a> {
    label: &'a str,
    sold_open_from: Option<f64>,
    sold_open_to: Option<f64>,
    runs: Vec<ComparedRunJson<'a>>,
}

#[derive(Serialize)]
struct ComparedRunJson<'a> {
    name: &'a str,
    solidity: Option<f64>,
    pressure_pa: Option<f64>,
    base_moment_n_m: Option<f64>,
    ratio: Option<f64>,
    limit_gust_near_ends_m_s: f64,
    limit_gust_inside_m_s: f64,
    limit_gust_is: &'static str,
    load_share_of_heaviest: f64,
    model_load_factor: Option<f64>,
    model_band: Option<f64>,
    model_load_share_at_45_degrees: Option<f64>,
    comes: String,
    return_period_years: Option<f64>,
    flag: &'static str,
}

fn rows(comparison: &Comparison) -> Vec<ColumnJson<'_>> {
    let runs = comparison.columns[0].runs();
    let heaviest: Vec<f64> = (0..runs)
        .map(|run| {
            comparison.columns.iter().map(|column| column.figures(run).inside_moment).fold(0.0, f64::max)
        })
        .collect();
    comparison
        .columns
        .iter()
        .map(|column| ColumnJson {
            label: &column.label,
            sold_open_from: column.sold_open.map(|(low, _)| low),
            sold_open_to: column.sold_open.map(|(_, high)| high),
            runs: (0..runs)
                .map(|run| {
                    let figures = column.figures(run);
                    ComparedRunJson {
                        name: column.run_name(run),
                        solidity: column.solidity(run),
                        pressure_pa: figures.pressure.map(Quantity::si),
                        base_moment_n_m: figures.moment.map(Quantity::si),
                        ratio: figures.ratio,
                        limit_gust_near_ends_m_s: figures.limit_gust_ends.si(),
                        limit_gust_inside_m_s: figures.limit_gust_inside.si(),
                        limit_gust_is: if at_most(comparison).is_empty() { "exactly" } else { "at most" },
                        load_share_of_heaviest: figures.inside_moment / heaviest[run],
                        model_load_factor: figures.model.map(|model| model.factor),
                        model_band: figures.model.map(|model| model.band),
                        model_load_share_at_45_degrees: figures.model_at_45_degrees,
                        comes: figures.often.words(),
                        return_period_years: match figures.often {
                            Often::Law(law) => Some(law.years),
                            Often::Rarer | Often::Unknown(_) => None,
                        },
                        flag: column.flag(run).word(),
                    }
                })
                .collect(),
        })
        .collect()
}

/// Writes a comparison as JSON.
///
/// # Errors
/// If the writer fails.
pub fn compare_json(comparison: &Comparison, out: &mut impl Write) -> io::Result<()> {
    let mut remarks = comparison.notes.clone();
    for alike in alike_runs(comparison) {
        for sentence in sentences(comparison, &alike) {
            remarks.push(format!("{}: {sentence}", alike.names.join(", ")));
        }
    }
    let answer = ComparisonJson {
        format: "compare",
        version: 1,
        program: concat!("fencegust ", env!("CARGO_PKG_VERSION")).to_owned(),
        columns: rows(comparison),
        remarks,
    };
    serde_json::to_writer_pretty(&mut *out, &answer)?;
    writeln!(out)
}

/// Writes a comparison as CSV: one row a column and run, SI figures with the unit in the head.
///
/// # Errors
/// If the writer fails.
pub fn compare_csv(comparison: &Comparison, out: &mut impl Write) -> io::Result<()> {
    let head = [
        comparison.column_is,
        "run",
        "solidity",
        "pressure_pa",
        "base_moment_n_m",
        "ratio",
        "limit_gust_near_ends_m_s",
        "limit_gust_inside_m_s",
        "limit_gust_is",
        "load_share_of_heaviest",
        "model_load_factor",
        "return_period_years",
        "flag",
    ]
    .map(str::to_owned);
    let rows = rows(comparison).into_iter().flat_map(|column| {
        column.runs.into_iter().map(move |run| {
            vec![
                Cell::words(column.label),
                Cell::words(run.name),
                Cell::any_figure(run.solidity),
                Cell::any_figure(run.pressure_pa),
                Cell::any_figure(run.base_moment_n_m),
                Cell::any_figure(run.ratio),
                Cell::Figure(run.limit_gust_near_ends_m_s),
                Cell::Figure(run.limit_gust_inside_m_s),
                Cell::words(run.limit_gust_is),
                Cell::Figure(run.load_share_of_heaviest),
                Cell::any_figure(run.model_load_factor),
                Cell::any_figure(run.return_period_years),
                Cell::words(run.flag),
            ]
        })
    });
    spreadsheet::table(&head, rows, out)
}

/// One lever in words: what it does to the limit gust and to the largest moment.
pub(super) fn lever_line(pulled: &Pulled, system: System) -> String {
    let change = pulled.moment_times - 1.0;
    let moment = if change.abs() < 5e-4 {
        "moment unchanged".to_owned()
    } else {
        let sign = if change < 0.0 { "−" } else { "+" };
        format!("moment {sign}{}", percent(change))
    };
    format!(
        "{}: limit gust {} to {}, {moment}",
        pulled.lever.words(),
        gust(pulled.limit_gust_before, system),
        gust(pulled.limit_gust, system)
    )
}

/// What helps a run and what does not, in one sentence each.
pub(super) fn levers_in_short(pulled: &[Pulled], system: System) -> (String, String) {
    let told = |wanted: bool| {
        let all: Vec<String> = pulled
            .iter()
            .filter(|one| helps(one) == wanted && one.lever != Lever::NoCloth)
            .map(|one| format!("{} ({})", one.lever.words(), gust(one.limit_gust, system)))
            .collect();
        if all.is_empty() { "nothing that was tried".to_owned() } else { all.join(", ") }
    };
    (told(true), told(false))
}

/// A lever helps if it lifts the limit gust by a twentieth or more; windows get no credit in the check and never do.
pub(super) fn helps(pulled: &Pulled) -> bool {
    pulled.gust_times() >= 1.05 && pulled.lever != Lever::Windows
}

/// Writes what helps and what does not, run by run.
///
/// # Errors
/// If the writer fails.
pub fn levers_text(check: &Check, out: &mut impl Write) -> io::Result<()> {
    let system = check.survey.units;
    for ((run, pulled), answer) in check.settled.fence.runs.iter().zip(&check.levers).zip(&check.runs) {
        let Some(pulled) = pulled else { continue };
        writeln!(out)?;
        rule(out, &format!("{}: what helps and what does not", run.name))?;
        for (title, wanted) in [("helps", true), ("does not help", false)] {
            for one in pulled.iter().filter(|one| helps(one) == wanted) {
                wrapped(out, &format!("{title:<14}"), &lever_line(one, system))?;
            }
        }
        if let Some(first) = footings::goes_first(answer) {
            wrapped(out, "first         ", first)?;
        }
    }
    writeln!(out)?;
    wrapped(
        out,
        "",
        "Each change alone, at the worst end of what is not known; moment is the largest at the foot of a post. Windows \
         are shown as the code's factor would have it and get no credit in the check. Not checked: those parts that \
         the check lists.",
    )
}

/// What is not checked in any of the columns.
fn unchecked(comparison: &Comparison) -> String {
    let mut parts: Vec<&str> = Vec::new();
    for part in comparison.columns.iter().flat_map(|column| told::unchecked_parts(&column.check)) {
        if part != told::NO_DESIGN_WIND && !parts.contains(&part) {
            parts.push(part);
        }
    }
    parts.join(", ")
}

/// " at most" where a part of a post was left unchecked in any of the columns.
fn at_most(comparison: &Comparison) -> &'static str {
    footings::at_most(comparison.columns.iter().flat_map(|column| footings::posts(&column.check)))
}

/// Writes the highest cloth from the ground for a gust, run by run.
///
/// # Errors
/// If the writer fails.
pub fn highest_text(
    check: &Check,
    heights: &[HighestCloth],
    asked: Velocity,
    out: &mut impl Write,
) -> io::Result<()> {
    let system = check.survey.units;
    writeln!(out)?;
    let by =
        if footings::posts(check).all(footings::is_worked) { "posts and footings" } else { "posts alone" };
    rule(out, &format!("Highest cloth from the ground for a gust of {}, by the {by}", gust(asked, system)))?;
    for (run, HighestCloth { solidity, height }) in check.settled.fence.runs.iter().zip(heights) {
        let text = match height {
            None => "none: the bare fence reaches its limit before".to_owned(),
            Some(height) if height.si() <= 0.0 => "none: an inch of cloth is too much".to_owned(),
            Some(height) if *height >= run.height => format!("the whole {}", length(run.height, system)),
            Some(height) => length(*height, system),
        };
        wrapped(out, &format!("{}: ", run.name), &format!("{text} (all layers {solidity:.3} solid)"))?;
    }
    let parts = told::unchecked_parts(check);
    let parts: Vec<&str> = parts.into_iter().filter(|part| *part != told::NO_DESIGN_WIND).collect();
    wrapped(
        out,
        "◇ NOT CHECKED: ",
        &format!("{}; each may ask for less. An engineer decides.", parts.join(", ")),
    )
}
