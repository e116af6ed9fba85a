//! Charts as SVG, drawn by plotters.
//!
//! The drawing library works in whole pixels: a chart is drawn at eight times its size and shown through a
//! smaller window, so that lines stand where they belong.

use super::figures::{gust_figures, speed_unit};
use crate::answers::{Check, Comparison};
use crate::rules::verify::Outcome;
use crate::survey::Reading;
use crate::units::{Measure, Quantity, Velocity, trimmed};
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, Pos, VPos};
use std::fmt;
use std::sync::Once;

/// How many drawn pixels make one shown.
const SCALE: i32 = 8;
const WIDTH: i32 = 720;
const FONT: &str = "Open Sans";
static FONT_FILE: &[u8] = include_bytes!("font/OpenSans-Regular.ttf");

const BLUE: RGBColor = RGBColor(0x00, 0x72, 0xB2);
const RED: RGBColor = RGBColor(0x93, 0x21, 0x3A);
const ORANGE: RGBColor = RGBColor(0xD5, 0x5E, 0x00);
const INK: RGBColor = RGBColor(0x22, 0x22, 0x22);
const FAINT: RGBColor = RGBColor(0xBB, 0xBB, 0xBB);

/// Why a chart could not be drawn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChartError(String);

impl fmt::Display for ChartError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "the chart could not be drawn: {}", self.0)
    }
}

impl std::error::Error for ChartError {}

fn told(error: impl fmt::Display) -> ChartError {
    ChartError(error.to_string())
}

/// One bar of the chart of limit gusts.
#[derive(Debug, Clone, PartialEq)]
struct Bar {
    label: String,
    kind: Kind,
    worst: Velocity,
    best: Option<Velocity>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Bare,
    Inside,
    Ends,
}

/// Bars of one run under its name.
#[derive(Debug, Clone, PartialEq)]
struct Group {
    name: String,
    bars: Vec<Bar>,
}

/// The chart of limit gusts of one answer, run by run, with the cloth and bare.
///
/// # Errors
/// If the drawing library fails.
pub fn limit_gusts(check: &Check) -> Result<String, ChartError> {
    let mut groups: Vec<Group> = Vec::new();
    for (run, answer) in check.settled.fence.runs.iter().zip(&check.runs) {
        let best = answer.best.as_ref();
        let mut bars = vec![Bar {
            label: "bare".to_owned(),
            kind: Kind::Bare,
            worst: answer.worst.bare_limit_gust,
            best: best.map(|best| best.bare_limit_gust),
        }];
        for (group, kind, label) in [
            (&answer.inside, Kind::Inside, "cloth, inside"),
            (&answer.near_ends, Kind::Ends, "cloth, near the ends"),
        ] {
            bars.extend(group.as_ref().map(|group| Bar {
                label: label.to_owned(),
                kind,
                worst: group.limit_gust,
                best: group.limit_gust_best,
            }));
        }
        add_alike(&mut groups, &run.name, bars);
    }
    draw(&groups, check)
}

/// The chart of limit gusts of a comparison, run by run and cloth by cloth.
///
/// # Errors
/// If the drawing library fails.
pub fn compared_limit_gusts(comparison: &Comparison) -> Result<String, ChartError> {
    let first = &comparison.columns[0].check;
    let mut groups: Vec<Group> = Vec::new();
    for (at, run) in first.settled.fence.runs.iter().enumerate() {
        let mut bars = Vec::new();
        for column in &comparison.columns {
            let Some(answer) = column.check.runs.get(at) else { continue };
            match (&answer.inside, &answer.near_ends) {
                (None, None) => {
                    let (worst, best) = (&answer.worst, answer.best.as_ref());
                    bars.push(Bar {
                        label: column.named().trim_start_matches("the ").to_owned(),
                        kind: Kind::Bare,
                        worst: worst.limit_gust,
                        best: best.map(|best| best.limit_gust),
                    });
                }
                (inside, ends) => {
                    for (group, kind, place) in
                        [(inside, Kind::Inside, "inside"), (ends, Kind::Ends, "near the ends")]
                    {
                        bars.extend(group.as_ref().map(|group| Bar {
                            label: format!("{}, {place}", column.label),
                            kind,
                            worst: group.limit_gust,
                            best: group.limit_gust_best,
                        }));
                    }
                }
            }
        }
        // A run without cloth in every column has one bar.
        if bars.iter().all(|bar| bar.kind == Kind::Bare) {
            bars.truncate(1);
        }
        add_alike(&mut groups, &run.name, bars);
    }
    draw(&groups, first)
}

fn add_alike(groups: &mut Vec<Group>, name: &str, bars: Vec<Bar>) {
    match groups.iter_mut().find(|group| group.bars == bars) {
        Some(group) => group.name = format!("{}, {name}", group.name),
        None => groups.push(Group { name: name.to_owned(), bars }),
    }
}

fn register_font() {
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        // A font that cannot be registered makes the drawing fail with its own message.
        let _ = plotters::style::register_font(FONT, plotters::style::FontStyle::Normal, FONT_FILE);
    });
}

fn text_style(size: i32, colour: RGBColor, horizontal: HPos) -> TextStyle<'static> {
    let pos = Pos::new(horizontal, VPos::Center);
    TextStyle { font: (FONT, size * SCALE).into_font(), color: colour.to_backend_color(), pos }
}

/// A name cut to so many characters, with an ellipsis where it was longer.
pub(super) fn clipped(name: &str, most: usize) -> String {
    if name.chars().count() <= most {
        return name.to_owned();
    }
    let cut: String = name.chars().take(most.saturating_sub(1)).collect();
    format!("{}…", cut.trim_end())
}

const TOP: i32 = 64;
const BAR: i32 = 20;
const HEAD: i32 = 26;
const BOTTOM: i32 = 56;
const LEFT: i32 = 210;
const RIGHT: i32 = 90;

fn draw(groups: &[Group], check: &Check) -> Result<String, ChartError> {
    register_font();
    let system = check.survey.units;
    let rows: i32 = groups.iter().map(|group| HEAD + BAR * group.bars.len() as i32).sum();
    let height = TOP + rows + BOTTOM;
    let design = match check.survey.site.wind_speed.reading {
        Reading::Measured(speed) | Reading::Between(_, speed) => Some(speed),
        Reading::Unknown => None,
    };
    let in_unit = |speed: Velocity| Measure::Speed.in_unit(speed.si(), system);
    let fastest = groups
        .iter()
        .flat_map(|group| &group.bars)
        .map(|bar| in_unit(bar.best.unwrap_or(bar.worst)))
        .chain(design.map(in_unit))
        .fold(1.0, f64::max);
    let step = nice_step(fastest);
    let end = (fastest / step).ceil() * step;
    let x = |speed: f64| {
        LEFT * SCALE + ((WIDTH - LEFT - RIGHT) as f64 * f64::from(SCALE) * speed / end).round() as i32
    };
    let mut svg = String::new();
    {
        let size = ((WIDTH * SCALE) as u32, (height * SCALE) as u32);
        let root = SVGBackend::with_string(&mut svg, size).into_drawing_area();
        root.fill(&WHITE).map_err(told)?;
        let line = |points: Vec<(i32, i32)>, colour: RGBColor, width: i32| {
            PathElement::new(
                points,
                ShapeStyle {
                    color: colour.to_rgba(),
                    filled: false,
                    stroke_width: (width * SCALE / 2) as u32,
                },
            )
        };
        let text =
            |words: String, place: (i32, i32), style: TextStyle<'static>| Text::new(words, place, style);
        let title = clipped(check.survey.job.title.as_deref().unwrap_or("Fence survey"), 70);
        root.draw(&text(title, (12 * SCALE, 18 * SCALE), text_style(15, INK, HPos::Left))).map_err(told)?;
        let ranges = groups.iter().flat_map(|group| &group.bars).any(|bar| bar.best.is_some());
        let most = super::footings::at_most(super::footings::posts(check)).replace(" at", ", at");
        let worked = || super::footings::posts(check).map(super::footings::is_worked);
        let (first, unshown) = match (worked().any(|is| is), worked().all(|is| is)) {
            (true, true) => ("post or footing", "Rails, ties: not shown."),
            (true, false) => ("post or footing", "Some footings: not checked. Rails, ties: not shown."),
            _ => ("post", "Footings: not checked. Rails, ties: not shown."),
        };
        let ends = if ranges { ": full at the worst of what is not known, outline at the best" } else { "" };
        let about = format!("Gust at which the first {first} reaches its limit{most}{ends}. {unshown}");
        root.draw(&text(about, (12 * SCALE, 38 * SCALE), text_style(10, INK, HPos::Left))).map_err(told)?;
        let (plot_top, plot_end) = (TOP * SCALE, (TOP + rows) * SCALE);
        let mut tick = 0.0;
        while tick <= end + 1e-9 {
            root.draw(&line(vec![(x(tick), plot_top), (x(tick), plot_end)], FAINT, 1)).map_err(told)?;
            let place = (x(tick), plot_end + 12 * SCALE);
            root.draw(&text(trimmed(tick, 1), place, text_style(11, INK, HPos::Center))).map_err(told)?;
            tick += step;
        }
        let place = ((x(0.0) + x(end)) / 2, plot_end + 32 * SCALE);
        let axis = format!("3-second gust, 33 ft (10 m) up over open ground, {}", speed_unit(system));
        root.draw(&text(axis, place, text_style(11, INK, HPos::Center))).map_err(told)?;
        let mut y = TOP * SCALE;
        for group in groups {
            let place = (12 * SCALE, y + HEAD * SCALE / 2 + 2 * SCALE);
            root.draw(&text(clipped(&group.name, 90), place, text_style(13, INK, HPos::Left)))
                .map_err(told)?;
            y += HEAD * SCALE;
            for bar in &group.bars {
                let middle = y + BAR * SCALE / 2;
                let place = ((LEFT - 8) * SCALE, middle);
                root.draw(&text(clipped(&bar.label, 30), place, text_style(11, INK, HPos::Right)))
                    .map_err(told)?;
                let colour = match bar.kind {
                    Kind::Bare => BLUE,
                    Kind::Inside => ORANGE,
                    Kind::Ends => RED,
                };
                let worst = x(in_unit(bar.worst));
                let (upper, lower) = (y + 4 * SCALE, y + (BAR - 4) * SCALE);
                root.draw(&Rectangle::new([(x(0.0), upper), (worst, lower)], colour.filled()))
                    .map_err(told)?;
                let mut reach = worst;
                if let Some(best) = bar.best.filter(|best| *best > bar.worst) {
                    reach = x(in_unit(best));
                    let outline =
                        vec![(worst, upper), (reach, upper), (reach, lower), (worst, lower), (worst, upper)];
                    root.draw(&line(outline, colour, 3)).map_err(told)?;
                }
                let figure = format!("{} {}", gust_figures(bar.worst, bar.best, system), speed_unit(system));
                let place = (reach + 5 * SCALE, middle);
                root.draw(&text(figure, place, text_style(11, INK, HPos::Left))).map_err(told)?;
                y += BAR * SCALE;
            }
        }
        if let Some(design) = design {
            let at = x(in_unit(design));
            let mut dash = plot_top;
            while dash < plot_end {
                let to = (dash + 5 * SCALE).min(plot_end);
                root.draw(&line(vec![(at, dash), (at, to)], INK, 3)).map_err(told)?;
                dash += 9 * SCALE;
            }
            let label = format!("design wind {} {}", trimmed(in_unit(design), 1), speed_unit(system));
            let place = (at, plot_top - 8 * SCALE);
            root.draw(&text(label, place, text_style(11, INK, HPos::Center))).map_err(told)?;
        }
        root.present().map_err(told)?;
    }
    let desc: Vec<String> = groups
        .iter()
        .map(|group| {
            let bars: Vec<String> = group
                .bars
                .iter()
                .map(|bar| {
                    format!(
                        "{} {} {}",
                        bar.label,
                        gust_figures(bar.worst, bar.best, system),
                        speed_unit(system)
                    )
                })
                .collect();
            format!("{}: {}", group.name, bars.join("; "))
        })
        .collect();
    Ok(framed(&svg, WIDTH, height, "Limit gusts by run and cloth", &desc.join(". ")))
}

/// The chart of our values over the printed ones, case by case: one stroke a value or cell, a ring where the page is
/// disputed.
///
/// # Errors
/// If the drawing library fails.
pub fn ours_over_printed(outcomes: &[Outcome<'_>]) -> Result<String, ChartError> {
    register_font();
    let mut subjects: Vec<(&str, Vec<(f64, bool)>)> = Vec::new();
    for outcome in outcomes {
        let name = outcome.case.rule.card.name;
        let family = name.split_once('/').map_or(name, |(family, _)| family);
        let disputed = outcome.case.disputed.is_some();
        let found = outcome.readings.iter().filter_map(|reading| Some((reading.quotient()?, disputed)));
        match subjects.iter_mut().find(|(subject, _)| *subject == family) {
            Some((_, values)) => values.extend(found),
            None => subjects.push((family, found.collect())),
        }
    }
    subjects.retain(|(_, values)| !values.is_empty());
    subjects.sort_by_key(|(subject, _)| *subject);
    let (low, high) = (0.97, 1.03);
    let height = TOP + BAR * 2 * subjects.len() as i32 + BOTTOM;
    let x = |quotient: f64| {
        let share = ((quotient - low) / (high - low)).clamp(0.0, 1.0);
        LEFT * SCALE + (f64::from((WIDTH - LEFT - RIGHT) * SCALE) * share).round() as i32
    };
    let mut svg = String::new();
    let mut told_of = Vec::new();
    {
        let root = SVGBackend::with_string(&mut svg, ((WIDTH * SCALE) as u32, (height * SCALE) as u32))
            .into_drawing_area();
        root.fill(&WHITE).map_err(told)?;
        let line = |points: Vec<(i32, i32)>, colour: RGBColor, width: i32| {
            let style = ShapeStyle {
                color: colour.to_rgba(),
                filled: false,
                stroke_width: (width * SCALE / 2) as u32,
            };
            PathElement::new(points, style)
        };
        let text =
            |words: String, place: (i32, i32), style: TextStyle<'static>| Text::new(words, place, style);
        let title = "Reference cases: our value over the printed one".to_owned();
        root.draw(&text(title, (12 * SCALE, 18 * SCALE), text_style(15, INK, HPos::Left))).map_err(told)?;
        let about = "One stroke a value or table cell, as far off as the last printed digit lets it be; a ring: the page \
                     is disputed. Beyond the edges: at the edge.";
        root.draw(&text(about.to_owned(), (12 * SCALE, 38 * SCALE), text_style(10, INK, HPos::Left)))
            .map_err(told)?;
        let (plot_top, plot_end) = (TOP * SCALE, (height - BOTTOM) * SCALE);
        for tick in [0.97, 0.98, 0.99, 1.0, 1.01, 1.02, 1.03] {
            let colour = if tick == 1.0 { INK } else { FAINT };
            root.draw(&line(vec![(x(tick), plot_top), (x(tick), plot_end)], colour, 1)).map_err(told)?;
            let place = (x(tick), plot_end + 12 * SCALE);
            root.draw(&text(format!("{tick:.2}"), place, text_style(11, INK, HPos::Center))).map_err(told)?;
        }
        for (row, (subject, values)) in subjects.iter().enumerate() {
            let middle = (TOP + BAR * 2 * row as i32 + BAR) * SCALE;
            root.draw(&text(
                (*subject).to_owned(),
                ((LEFT - 8) * SCALE, middle),
                text_style(12, INK, HPos::Right),
            ))
            .map_err(told)?;
            let agreeing = values.iter().filter(|(_, disputed)| !disputed).count();
            let label = format!("{agreeing} of {}", values.len());
            let place = ((WIDTH - RIGHT + 10) * SCALE, middle);
            root.draw(&text(label.clone(), place, text_style(11, INK, HPos::Left))).map_err(told)?;
            told_of.push(format!("{subject}: {label} values agree"));
            for (quotient, disputed) in values {
                if *disputed {
                    let style =
                        ShapeStyle { color: RED.to_rgba(), filled: false, stroke_width: SCALE as u32 };
                    root.draw(&Circle::new((x(*quotient), middle), 5 * SCALE, style)).map_err(told)?;
                } else {
                    let stroke = vec![(x(*quotient), middle - 8 * SCALE), (x(*quotient), middle + 8 * SCALE)];
                    root.draw(&line(stroke, BLUE, 2)).map_err(told)?;
                }
            }
        }
        root.present().map_err(told)?;
    }
    Ok(framed(&svg, WIDTH, height, "Our values over printed ones", &told_of.join("; ")))
}

/// A step that makes between four and eight ticks.
fn nice_step(greatest: f64) -> f64 {
    let rough = greatest / 6.0;
    let magnitude = 10.0_f64.powf(rough.log10().floor());
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|step| step * magnitude)
        .find(|step| greatest / step <= 8.0)
        .unwrap_or(magnitude * 10.0)
}

/// The drawing shown at its size, named and described for readers who do not see it.
fn framed(svg: &str, width: i32, height: i32, title: &str, desc: &str) -> String {
    let inner = svg.split_once('>').map_or("", |(_, rest)| rest);
    let fonts =
        inner.replace(&format!("font-family=\"{FONT}\""), "font-family=\"Open Sans, Arial, sans-serif\"");
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {} {}\">\n<title>{}</title>\n<desc>{}</desc>{fonts}",
        width * SCALE,
        height * SCALE,
        escaped(title),
        escaped(desc)
    )
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
