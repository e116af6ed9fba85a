//! One footing by every method, as text, JSON and CSV.

use super::figures::{gust_figure, ratio_up, speed_unit};
use super::footings::{self, depth};
use super::spreadsheet::{self, Cell};
use super::text::{rule, wrapped};
use crate::answers::{ByMethod, Check, FootingsCompared};
use crate::footing::FootingError;
use crate::units::{Quantity, System, trimmed};
use crate::verdict::{FootingVerdict, FootingWhy, WidthIs};
use comfy_table::{CellAlignment, Table, presets};
use serde::Serialize;
use std::io::{self, Write};

/// What must be known of figures that stand side by side here.
const NEVER_MIXED: &str = "The depths differ threefold from method to method, since each has its own level of wind and its own \
                           factors on load and soil. Take one method whole, the one your code or engineer names; never mix \
                           them, and never pick the shallowest.";

/// Whether a method can be worked with what is known of the soil.
fn applies(one: &ByMethod) -> bool {
    one.found.refused.is_none()
}

/// What a method would need, or why it gives nothing.
fn asks(one: &ByMethod) -> Option<String> {
    Some(match one.found.refused.as_ref()? {
        FootingError::SoilUnknown { missing, .. } => format!("needs {}", missing.words()),
        error => error.to_string(),
    })
}

fn runs<'a>(check: &'a Check, one: &FootingsCompared) -> Vec<&'a str> {
    one.runs.iter().map(|run| check.settled.fence.runs[*run].name.as_str()).collect()
}

/// What stands there, as far as it is known.
fn standing(footing: &FootingVerdict, system: System) -> String {
    let deep = footing.depth.map_or_else(
        || "how deep it goes is not known".to_owned(),
        |deep| format!("{} deep", depth(deep, system)),
    );
    let wide = footing.width.map_or_else(
        || "how wide it is is not known".to_owned(),
        |width| match width.is {
            WidthIs::Surveyed => format!("{} wide", depth(width.across, system)),
            WidthIs::OfPost => format!("the driven post itself, {} wide", depth(width.across, system)),
            WidthIs::Dug => {
                format!("taken {} wide, as an installer digs by ASTM F567", depth(width.across, system))
            }
        },
    );
    let shape = footing.shape.map_or_else(|| "footing not known".to_owned(), |shape| shape.word().to_owned());
    format!("{shape}, {wide}, {deep}")
}

/// Writes footings by every method as text.
///
/// # Errors
/// If the writer fails.
pub fn footings_text(check: &Check, all: &[FootingsCompared], out: &mut impl Write) -> io::Result<()> {
    let system = check.survey.units;
    wrapped(out, "", check.survey.job.title.as_deref().unwrap_or("Fence survey"))?;
    wrapped(out, "", &super::told::wind(check).join(" · "))?;
    writeln!(out)?;
    wrapped(out, "NEVER MIX: ", NEVER_MIXED)?;
    for one in all {
        let Some(first) = one.by.first() else { continue };
        writeln!(out)?;
        rule(out, &format!("{}, post {}", runs(check, one).join(", "), one.post + 1))?;
        wrapped(out, "", &standing(&first.found, system))?;
        if let Some(dug) = first.found.dug {
            wrapped(
                out,
                "",
                &format!(
                    "An installer digs {} by {} wide by ASTM F567, which knows no wind.",
                    depth(dug.depth, system),
                    depth(dug.width, system)
                ),
            )?;
        }
        if one.by.iter().any(applies) {
            writeln!(out, "\n{}", table(one, system).trim_fmt())?;
        }
        // Methods that need the same are told together.
        let mut lacking: Vec<(String, Vec<&str>)> = Vec::new();
        for row in &one.by {
            let Some(asks) = asks(row) else { continue };
            match lacking.iter_mut().find(|(before, _)| *before == asks) {
                Some((_, names)) => names.push(row.method.name()),
                None => lacking.push((asks, vec![row.method.name()])),
            }
        }
        if !lacking.is_empty() {
            writeln!(out)?;
        }
        for (asks, names) in lacking {
            wrapped(out, "◇ ", &format!("{}: not worked: {asks}.", names.join("; ")))?;
        }
        for row in one.by.iter().filter(|row| applies(row)) {
            if let Err(FootingWhy::Refused(error)) = &row.found.checked {
                wrapped(out, "◇ ", &format!("{}: {error}.", row.method.name()))?;
            }
        }
    }
    writeln!(out)?;
    wrapped(
        out,
        "",
        "Each for the governing post of the run at the design wind, at the worst end of what is not known. \"Wind\" is the \
         share of the wind code's load at the level of the method, \"load\" and \"soil\" its own factors. Methods marked * \
         belong with another kind of wind code. The concrete itself, slopes, frost and a soft top: not checked.",
    )?;
    wrapped(
        out,
        "WARNING ",
        "The local code and a licensed engineer decide which method holds and how deep to dig.",
    )
}

fn table(one: &FootingsCompared, system: System) -> Table {
    let head = vec![
        "method".to_owned(),
        "level".to_owned(),
        "wind".to_owned(),
        "load".to_owned(),
        "soil".to_owned(),
        "needs".to_owned(),
        "ratio".to_owned(),
        format!("limit gust {}", speed_unit(system)),
    ];
    let mut table = Table::new();
    table.load_style(presets::NOTHING).set_header(head);
    let dash = || "-".to_owned();
    for row in one.by.iter().filter(|row| applies(row)) {
        let found = &row.found;
        let star = if row.belongs { "" } else { " *" };
        table.add_row(vec![
            format!("{}{star}", row.method.name()),
            row.method.level().symbol().to_owned(),
            format!("× {}", trimmed(found.share, 2)),
            format!("× {}", trimmed(found.load_factor.value, 2)),
            row.soil_factor.map_or_else(dash, |factor| format!("× {}", trimmed(factor.value, 2))),
            footings::needed(found, system).unwrap_or_else(dash),
            found.checked.as_ref().map_or_else(|_| dash(), |found| ratio_up(found.ratio)),
            row.limit_gust.map_or_else(dash, |gust| gust_figure(gust, system)),
        ]);
    }
    for (at, column) in table.column_iter_mut().enumerate() {
        column.set_padding((0, 2));
        if at >= 2 {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    table
}

#[derive(Serialize)]
struct Json<'a> {
    format: &'static str,
    version: u32,
    program: &'static str,
    posts: Vec<PostJson<'a>>,
    remarks: [&'static str; 1],
}

#[derive(Serialize)]
struct PostJson<'a> {
    runs: Vec<&'a str>,
    number: usize,
    shape: Option<&'static str>,
    width_m: Option<f64>,
    width_is: Option<&'static str>,
    depth_m: Option<f64>,
    dug_by_standard_depth_m: Option<f64>,
    methods: Vec<MethodJson>,
}

#[derive(Serialize)]
struct MethodJson {
    method: &'static str,
    name: &'static str,
    clause: String,
    belongs_with_the_wind_code: bool,
    load_level: &'static str,
    load_share: f64,
    load_factor: f64,
    soil_factor: Option<f64>,
    depth_needed_m: Option<f64>,
    ratio: Option<f64>,
    limit_gust_m_s: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<String>,
}

fn methods(one: &FootingsCompared) -> Vec<MethodJson> {
    let row = |row: &ByMethod| {
        let found = &row.found;
        MethodJson {
            method: row.method.key(),
            name: row.method.name(),
            clause: row.method.clause().to_string(),
            belongs_with_the_wind_code: row.belongs,
            load_level: row.method.level().symbol(),
            load_share: found.share,
            load_factor: found.load_factor.value,
            soil_factor: row.soil_factor.map(|factor| factor.value),
            depth_needed_m: found.needed.as_ref().ok().map(|needed| needed.si()),
            ratio: found.checked.as_ref().ok().map(|found| found.ratio),
            limit_gust_m_s: row.limit_gust.map(|gust| gust.si()),
            why: asks(row)
                .or_else(|| found.checked.as_ref().err().map(ToString::to_string))
                .or_else(|| found.needed.as_ref().err().map(ToString::to_string)),
        }
    };
    one.by.iter().map(row).collect()
}

fn posts<'a>(check: &'a Check, all: &[FootingsCompared]) -> Vec<PostJson<'a>> {
    all.iter()
        .map(|one| {
            let found = one.by.first().map(|first| &first.found);
            let width = found.and_then(|found| found.width);
            PostJson {
                runs: runs(check, one),
                number: one.post + 1,
                shape: found.and_then(|found| found.shape).map(crate::fence::FootingShape::word),
                width_m: width.map(|width| width.across.si()),
                width_is: width.map(|width| width.is.words()),
                depth_m: found.and_then(|found| found.depth).map(|depth| depth.si()),
                dug_by_standard_depth_m: found.and_then(|found| found.dug).map(|dug| dug.depth.si()),
                methods: methods(one),
            }
        })
        .collect()
}

/// Writes footings by every method as JSON.
///
/// # Errors
/// If the writer fails.
pub fn footings_json(check: &Check, all: &[FootingsCompared], out: &mut impl Write) -> io::Result<()> {
    let answer = Json {
        format: "compare-footings",
        version: 1,
        program: concat!("fencegust ", env!("CARGO_PKG_VERSION")),
        posts: posts(check, all),
        remarks: [NEVER_MIXED],
    };
    serde_json::to_writer_pretty(&mut *out, &answer)?;
    writeln!(out)
}

/// Writes footings by every method as CSV: a row a post and method, SI figures with the unit in the head.
///
/// # Errors
/// If the writer fails.
pub fn footings_csv(check: &Check, all: &[FootingsCompared], out: &mut impl Write) -> io::Result<()> {
    let head = [
        "runs",
        "number",
        "method",
        "belongs_with_the_wind_code",
        "load_level",
        "load_share",
        "load_factor",
        "soil_factor",
        "width_m",
        "depth_m",
        "depth_needed_m",
        "ratio",
        "limit_gust_m_s",
        "why",
    ]
    .map(str::to_owned);
    let rows = posts(check, all).into_iter().flat_map(|post| {
        let (runs, number, width, depth) =
            (post.runs.join("; "), post.number as f64, post.width_m, post.depth_m);
        post.methods.into_iter().map(move |row| {
            vec![
                Cell::words(runs.as_str()),
                Cell::Figure(number),
                Cell::words(row.method),
                Cell::words(if row.belongs_with_the_wind_code { "yes" } else { "no" }),
                Cell::words(row.load_level),
                Cell::Figure(row.load_share),
                Cell::Figure(row.load_factor),
                Cell::any_figure(row.soil_factor),
                Cell::any_figure(width),
                Cell::any_figure(depth),
                Cell::any_figure(row.depth_needed_m),
                Cell::any_figure(row.ratio),
                Cell::any_figure(row.limit_gust_m_s),
                Cell::any_words(row.why),
            ]
        })
    });
    spreadsheet::table(&head, rows, out)
}
