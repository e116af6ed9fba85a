//! Catalogues as text, as a table for a spreadsheet and as JSON.

use super::{Answer, Cell, Sheet, other_system};
use crate::report::ordered::Json;
use crate::report::spreadsheet;
use crate::report::text::{rule, wrapped};
use crate::units::{Measure, System, Unit, trimmed};
use std::f64::consts::PI;
use std::io::{self, Write};

const CONFLICTS: &str = "CONFLICTS";
/// How wide the name of a thing may stand before it is wrapped.
/// The widest a table may be.
const WIDEST: usize = 100;
const NAME_WIDTH: usize = 26;

/// Writes catalogues as text.
///
/// # Errors
/// If the writer fails.
pub fn catalogue_text(answers: &[Answer], out: &mut impl Write) -> io::Result<()> {
    for (at, answer) in answers.iter().enumerate() {
        if at > 0 {
            writeln!(out)?;
        }
        rule(out, &format!("{}: {}", answer.name, answer.about))?;
        if let Some(head) = &answer.head {
            wrapped(out, "", head)?;
        }
        for sheet in &answer.sheets {
            writeln!(out)?;
            wrapped(out, "", &sheet.title)?;
            wrapped(out, "  known: ", &sheet.known)?;
            writeln!(out)?;
            rows(answer, sheet, out)?;
        }
        for (title, lines) in [(CONFLICTS, &answer.conflicts), ("NAMES THAT MISLEAD", &answer.misleading)] {
            if lines.is_empty() {
                continue;
            }
            writeln!(out, "\n{title}")?;
            for line in lines {
                wrapped(out, "  - ", line)?;
            }
            if title == CONFLICTS && answer.is_of_posts {
                wrapped(
                    out,
                    "  ",
                    "The wall tells such pipes apart: by the label, or a caliper at an open top. The grade is on the \
                     mill's paper.",
                )?;
            }
        }
    }
    Ok(())
}

/// The girth of a row in both systems, where it is a round post.
fn girth(answer: &Answer, sheet: &Sheet, row: &[Cell]) -> Option<(f64, f64)> {
    let si = sheet.cell(row, "diameter").filter(|_| answer.is_of_posts)?.si()? * PI;
    Some((Measure::Small.in_unit(si, System::Us), Measure::Small.in_unit(si, System::Si)))
}

/// The rows of a publication: each in its own units, and in the other system below.
fn rows(answer: &Answer, sheet: &Sheet, out: &mut impl Write) -> io::Result<()> {
    let mut head = Vec::new();
    let mut table: Vec<Vec<[String; 2]>> = vec![Vec::new(); sheet.rows.len()];
    let mut words: Vec<Vec<String>> = vec![Vec::new(); sheet.rows.len()];
    for shown in sheet.shown().iter().filter(|shown| shown.name != "name") {
        if sheet.rows.iter().any(|row| matches!(row[shown.at], Cell::Words(_))) {
            for (words, row) in words.iter_mut().zip(&sheet.rows) {
                let own = sheet.both(row, shown)[0].clone();
                words.push(if shown.name == "known" { own } else { format!("{}: {own}", shown.name) });
            }
            continue;
        }
        head.push(shown.name.clone());
        for (line, row) in table.iter_mut().zip(&sheet.rows) {
            line.push(sheet.both(row, shown));
        }
        if shown.name == "diameter" && answer.is_of_posts {
            head.push("girth".to_owned());
            for (line, row) in table.iter_mut().zip(&sheet.rows) {
                let (us, si) = girth(answer, sheet, row).unwrap_or_default();
                line.push([format!("{us:.2} in"), format!("{} mm", trimmed(si, 1))]);
            }
        }
    }
    let widths: Vec<usize> = (0..head.len())
        .map(|at| {
            let cells = table.iter().flat_map(|line| line[at].iter()).map(|cell| cell.chars().count());
            cells.chain([head[at].chars().count()]).max().unwrap_or_default()
        })
        .collect();
    if NAME_WIDTH + 2 + widths.iter().map(|width| width + 2).sum::<usize>() > WIDEST {
        // Too wide for a table: a row is told in lines of its own.
        for ((row, cells), words) in sheet.rows.iter().zip(&table).zip(&words) {
            writeln!(out, "  {}", sheet.name_of(row))?;
            let figures: Vec<String> = head
                .iter()
                .zip(cells)
                .filter(|(_, [own, _])| !own.is_empty())
                .map(|(head, [own, other])| {
                    let other = if other.is_empty() { String::new() } else { format!(" ({other})") };
                    format!("{head} {own}{other}")
                })
                .collect();
            wrapped(out, "      ", &figures.join(" · "))?;
            for words in words {
                wrapped(out, "      ", words)?;
            }
        }
        return Ok(());
    }
    let line = |name: &str, cells: Vec<&str>, out: &mut dyn Write| {
        let mut text = format!("  {name:<NAME_WIDTH$}");
        for (cell, width) in cells.iter().zip(&widths) {
            text.push_str(&format!("  {cell:>width$}"));
        }
        writeln!(out, "{}", text.trim_end())
    };
    line("", head.iter().map(String::as_str).collect(), out)?;
    for ((row, cells), words) in sheet.rows.iter().zip(&table).zip(&words) {
        let name = textwrap::wrap(sheet.name_of(row), NAME_WIDTH);
        let has_other = cells.iter().any(|cell| !cell[1].is_empty());
        for at in 0..name.len().max(if has_other { 2 } else { 1 }) {
            let figures = cells.iter().map(|cell| cell.get(at).map_or("", String::as_str)).collect();
            line(name.get(at).map_or("", |name| name), figures, out)?;
        }
        for words in words {
            wrapped(out, "      ", words)?;
        }
    }
    Ok(())
}

/// A unit as it ends the name of a column or a key: `in`, `lb_per_ft`, `n_per_m`.
fn in_name(symbol: &str) -> String {
    symbol.replace('/', "_per_").to_lowercase().replace(|sign: char| !sign.is_alphanumeric(), "_")
}

/// Writes catalogues as one table for a spreadsheet: a row a thing, figures as they stand in the publication and in the
/// other system of units, unrounded there, the unit in the name of the column.
///
/// # Errors
/// If the writer fails.
pub fn catalogue_csv(answers: &[Answer], out: &mut impl Write) -> io::Result<()> {
    let mut head: Vec<String> = ["catalogue", "name", "title", "known"].map(str::to_owned).into();
    let mut lines: Vec<Vec<(String, spreadsheet::Cell)>> = Vec::new();
    for answer in answers {
        for sheet in &answer.sheets {
            for row in &sheet.rows {
                let line = csv_line(answer, sheet, row);
                for (name, _) in &line {
                    if !head.contains(name) {
                        head.push(name.clone());
                    }
                }
                lines.push(line);
            }
        }
    }
    let rows = lines.into_iter().map(|line| {
        let cell = |name: &String| line.iter().find(|(own, _)| own == name).map(|(_, cell)| cell.clone());
        head.iter().map(|name| cell(name).unwrap_or(spreadsheet::Cell::Empty)).collect()
    });
    spreadsheet::table(&head, rows, out)
}

fn csv_line(answer: &Answer, sheet: &Sheet, row: &[Cell]) -> Vec<(String, spreadsheet::Cell)> {
    use spreadsheet::Cell as Csv;
    let own = sheet.column("known").map(|at| sheet.printed(row, at));
    let mut line = vec![
        ("catalogue".to_owned(), Csv::words(answer.name)),
        ("name".to_owned(), Csv::words(sheet.name_of(row))),
        ("title".to_owned(), Csv::words(sheet.title.as_str())),
        ("known".to_owned(), Csv::words(own.unwrap_or_else(|| sheet.known.clone()))),
    ];
    for (at, column) in sheet.columns.iter().enumerate() {
        let name = column.name.replace(' ', "_");
        match (&row[at], column.unit) {
            _ if name == "name" || name == "known" => {}
            (Cell::Words(words), _) => line.push((name, Csv::words(words.as_str()))),
            (Cell::Figure { si, .. }, None) => line.push((name, Csv::Figure(*si))),
            (Cell::Figure { printed, si }, Some((unit, measure))) => {
                let (symbol, _) = measure.printed(other_system(unit, measure));
                let other = measure.in_unit(*si, other_system(unit, measure));
                let own = printed.parse().map_or(Csv::Empty, Csv::Figure);
                line.push((format!("{name}_{}", in_name(unit.symbol)), own));
                line.push((format!("{name}_{}", in_name(symbol)), Csv::Figure(other)));
            }
        }
        if column.name == "diameter"
            && let Some((us, si)) = girth(answer, sheet, row)
        {
            line.push(("girth_in".to_owned(), Csv::Figure(us)));
            line.push(("girth_mm".to_owned(), Csv::Figure(si)));
        }
    }
    line
}

/// Writes catalogues as JSON: SI figures with the unit in the key, and beside them the figures as they are printed.
///
/// # Errors
/// If the writer fails.
pub fn catalogue_json(answers: &[Answer], out: &mut impl Write) -> io::Result<()> {
    let catalogues = answers.iter().map(|answer| {
        let sheets = answer.sheets.iter().map(|sheet| {
            let rows = sheet.rows.iter().map(|row| row_json(answer, sheet, row));
            Json::keys([
                ("title", sheet.title.as_str().into()),
                ("known", sheet.known.as_str().into()),
                ("rows", Json::List(rows.collect())),
            ])
        });
        Json::keys([
            ("name", answer.name.into()),
            ("about", answer.about.into()),
            ("asked", answer.head.as_deref().map_or(Json::Null, Json::from)),
            ("publications", Json::List(sheets.collect())),
            ("conflicts", Json::words(answer.conflicts.iter().map(String::as_str))),
            ("misleading_names", Json::words(answer.misleading.iter().map(String::as_str))),
        ])
    });
    let all = Json::keys([
        ("format", "catalogue".into()),
        ("version", Json::Count(1)),
        ("program", concat!("fencegust ", env!("CARGO_PKG_VERSION")).into()),
        ("catalogues", Json::List(catalogues.collect())),
    ]);
    serde_json::to_writer_pretty(&mut *out, &all)?;
    writeln!(out)
}

/// The SI unit of a kind of figure, as it ends a key.
fn si_in_name(unit: &Unit, measure: Measure) -> String {
    let si = |symbol: &str| {
        Unit::named(symbol).is_some_and(|found| found.dimension == unit.dimension && found.si == 1.0)
    };
    let symbols = ["m", "Pa", "N", "N/m", "N m", "m²", "m³", "m⁴", "m/s", "kPa/m"];
    let found = symbols.into_iter().find(|symbol| si(symbol)).unwrap_or(measure.printed(System::Si).0);
    in_name(&found.replace('²', "2").replace('³', "3").replace('⁴', "4"))
}

fn row_json(answer: &Answer, sheet: &Sheet, row: &[Cell]) -> Json {
    let (mut keys, mut printed) = (Vec::new(), Vec::new());
    for (at, column) in sheet.columns.iter().enumerate() {
        let name = column.name.replace(' ', "_");
        match (&row[at], column.unit) {
            (Cell::Words(words), _) => keys.push((name, words.as_str().into())),
            (Cell::Figure { si, .. }, None) => keys.push((name, Json::Figure(*si))),
            (Cell::Figure { si, .. }, Some((unit, measure))) => {
                keys.push((format!("{name}_{}", si_in_name(unit, measure)), Json::Figure(*si)));
                printed.push((name, sheet.printed(row, at).into()));
            }
        }
        if column.name == "diameter"
            && let Some((_, si)) = girth(answer, sheet, row)
        {
            keys.push(("girth_m".to_owned(), Json::Figure(si / 1000.0)));
        }
    }
    keys.push(("printed".to_owned(), Json::Keys(printed)));
    Json::Keys(keys)
}
