//! The catalogues the program holds, each row with its sizes in both systems of units, how well it is known and where
//! it stands; where two rows disagree about one thing, that is told.
//!
//! A catalogue kept in files is one entry of [`CATALOGUES`].

mod print;

pub use print::{catalogue_csv, catalogue_json, catalogue_text};

use crate::member::pipe;
use crate::screen;
use crate::source::{Catalogue, CatalogueError, Row, Seen};
use crate::units::{Dimension, Length, Measure, Quantity, ReadError, System, Unit, Value, inches, trimmed};
use crate::workings::nearest;
use std::f64::consts::PI;
use std::fmt;

/// A catalogue the program holds.
#[derive(Debug, Clone, Copy)]
pub struct Held {
    /// By which it is asked for.
    pub name: &'static str,
    /// What it lists.
    pub about: &'static str,
    /// Columns by which two rows speak of one thing.
    one_thing: &'static [&'static str],
    /// Columns in which rows that speak of one thing may disagree, as they are printed: a range is one.
    told_of_it: &'static [&'static str],
    /// Whether its diameters are those of round posts, which a tape finds by their girth.
    is_of_posts: bool,
    sheets: Sheets,
}

#[derive(Debug, Clone, Copy)]
enum Sheets {
    /// Catalogue files, one a publication.
    Files(&'static [&'static str]),
    /// Values that stand in the program.
    Made(fn() -> Vec<Sheet>),
}

/// Every catalogue the program holds.
pub const CATALOGUES: &[Held] = &[
    Held {
        name: "pipe",
        about: "fence pipe, by outside diameter and wall",
        one_thing: &["name", "diameter"],
        told_of_it: &["wall", "yield"],
        is_of_posts: true,
        sheets: Sheets::Files(&[
            include_str!("../member/catalogue/astm-f1083-2018.csv"),
            include_str!("../member/catalogue/astm-f1043-2022.csv"),
            include_str!("../member/catalogue/light-fence-tube-trade.csv"),
        ]),
    },
    Held {
        name: "building pipe",
        about: "pipe of buildings and highways, to be named, never guessed",
        one_thing: &["name", "diameter"],
        told_of_it: &["wall", "yield"],
        is_of_posts: false,
        sheets: Sheets::Files(&[
            include_str!("../member/catalogue/aisc-shapes-v15.csv"),
            include_str!("../member/catalogue/highway-table-710-03-1m.csv"),
        ]),
    },
    Held {
        name: "timber",
        about: "timber of posts, by species, grade and table",
        one_thing: &["name"],
        told_of_it: &["bending", "shear"],
        is_of_posts: false,
        sheets: Sheets::Files(&[include_str!("../member/catalogue/nds-supplement-2018.csv")]),
    },
    Held {
        name: "cloth",
        about: "cloth, by its generic name",
        one_thing: &["name"],
        told_of_it: &["solidity"],
        is_of_posts: false,
        sheets: Sheets::Files(&[include_str!("../screen/catalogue/cloths-2026.csv")]),
    },
    Held {
        name: "tie",
        about: "cable ties, by the loop strength they are declared with",
        one_thing: &["name"],
        told_of_it: &["strength"],
        is_of_posts: false,
        sheets: Sheets::Files(&[include_str!("../fastening/catalogue/cable-tie-classes-trade-undated.csv")]),
    },
    Held {
        name: "rope",
        about: "fibre rope, by thickness: breaking load, new and without a knot",
        one_thing: &["name"],
        told_of_it: &["breaking"],
        is_of_posts: false,
        sheets: Sheets::Files(&[
            include_str!("../fastening/catalogue/fibre-rope-arborist-note-undated.csv"),
            include_str!("../fastening/catalogue/fibre-rope-engineering-reference-undated.csv"),
            include_str!("../fastening/catalogue/fibre-rope-supplier-undated.csv"),
        ]),
    },
    Held {
        name: "steel wire",
        about: "strength of chain-link wire and of tie wire",
        one_thing: &["name"],
        told_of_it: &["breaking", "strength"],
        is_of_posts: false,
        sheets: Sheets::Files(&[
            include_str!("../fastening/catalogue/chain-link-wire-rr-f-191-1f-undated.csv"),
            include_str!("../fastening/catalogue/tie-wire-astm-f626-2014.csv"),
        ]),
    },
    Held {
        name: "chain link",
        about: "chain link by mesh, gauge and coat",
        one_thing: &["name"],
        told_of_it: &["mesh"],
        is_of_posts: false,
        sheets: Sheets::Files(&[include_str!("../screen/catalogue/chain-link-2026.csv")]),
    },
    Held {
        name: "wire",
        about: "wire of chain link, by its gauge",
        one_thing: &["name"],
        told_of_it: &["diameter"],
        is_of_posts: false,
        sheets: Sheets::Made(gauges),
    },
];

/// A publication and its rows.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// The publication.
    title: String,
    /// How well its values are known.
    known: String,
    columns: Vec<Column>,
    rows: Vec<Vec<Cell>>,
}

/// What stands in a column beside the name of the thing.
#[derive(Debug, Clone, PartialEq)]
struct Column {
    name: String,
    /// The unit of its publication and how it is written in the other system; nothing for words and pure numbers.
    unit: Option<(&'static Unit, Measure)>,
}

/// A column as it is printed.
#[derive(Debug, Clone, PartialEq)]
struct Shown {
    name: String,
    at: usize,
    /// The column of the upper end, where it is a range.
    high: Option<usize>,
}

/// One cell.
#[derive(Debug, Clone, PartialEq)]
enum Cell {
    /// Words.
    Words(String),
    /// A figure as it stands in the publication, and in SI units.
    Figure { printed: String, si: f64 },
}

impl Cell {
    fn si(&self) -> Option<f64> {
        match self {
            Self::Words(_) => None,
            Self::Figure { si, .. } => Some(*si),
        }
    }

    fn is_like(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Words(one), Self::Words(other)) => one.trim().eq_ignore_ascii_case(other.trim()),
            (Self::Figure { si: one, .. }, Self::Figure { si: other, .. }) => {
                (one - other).abs() <= 1e-9 * one.abs().max(other.abs())
            }
            _ => false,
        }
    }
}

/// How a figure of this kind is written beside that of its publication.
const fn measure_of(dimension: Dimension) -> Measure {
    match dimension {
        Dimension::Ratio => Measure::Ratio,
        Dimension::Length => Measure::Small,
        Dimension::Area => Measure::Area,
        Dimension::SectionModulus => Measure::SectionModulus,
        Dimension::SecondMoment => Measure::SecondMoment,
        Dimension::PerLength => Measure::PerLength,
        Dimension::Speed => Measure::Speed,
        Dimension::Force => Measure::Force,
        Dimension::Moment => Measure::Moment,
        Dimension::Pressure => Measure::Stress,
        Dimension::LineLoad => Measure::LineLoad,
        Dimension::PressurePerDepth => Measure::PressurePerDepth,
        Dimension::PressurePerSpeedSquared => Measure::PressurePerSpeedSquared,
        Dimension::Time => Measure::Time,
        Dimension::Years => Measure::Years,
        Dimension::Angle => Measure::Angle,
        Dimension::AirPermeability => Measure::AirPermeability,
        Dimension::Frequency => Measure::Frequency,
        Dimension::Acceleration => Measure::Acceleration,
        Dimension::RotationalStiffness => Measure::RotationalStiffness,
        Dimension::WeightPerArea => Measure::WeightPerArea,
    }
}

/// A unit by the end of a column's name, as in `diameter_in` and `weight_lb_per_ft`; the longest that is one.
fn name_and_unit(column: &str) -> (String, Option<(&'static Unit, Measure)>) {
    for (at, _) in column.match_indices('_') {
        if let Some(unit) = Unit::named(&column[at + 1..].replace("_per_", "/")) {
            // Pounds a foot of pipe are what it weighs.
            return (column[..at].replace('_', " "), Some((unit, measure_of(unit.dimension))));
        }
    }
    (column.replace('_', " "), None)
}

impl Sheet {
    fn of_file(text: &str) -> Result<Self, CatalogueError> {
        let catalogue = Catalogue::read(text)?;
        let columns: Vec<(String, Column)> = catalogue
            .columns
            .iter()
            .map(|written| {
                let (name, unit) = name_and_unit(written);
                (written.clone(), Column { name, unit })
            })
            .collect();
        let cell = |row: &Row, written: &str, column: &Column| {
            let printed = row.text(written)?.to_owned();
            Ok(match column.unit {
                // What a row does not say.
                Some(_) if printed.trim().is_empty() => Cell::Words("–".to_owned()),
                Some((unit, _)) => Cell::Figure { si: row.number(written)? * unit.si, printed },
                None => match row.number(written) {
                    Ok(si) => Cell::Figure { printed, si },
                    Err(_) => Cell::Words(printed),
                },
            })
        };
        let rows = catalogue
            .rows
            .iter()
            .map(|row| columns.iter().map(|(written, column)| cell(row, written, column)).collect())
            .collect::<Result<_, CatalogueError>>()?;
        let columns = columns.into_iter().map(|(_, column)| column).collect();
        Ok(Self { title: catalogue.title, known: catalogue.known, columns, rows })
    }

    fn column(&self, name: &str) -> Option<usize> {
        self.columns.iter().position(|column| column.name == name)
    }

    fn cell<'s>(&self, row: &'s [Cell], name: &str) -> Option<&'s Cell> {
        row.get(self.column(name)?)
    }

    /// A figure of a row as it stands in the publication, with its unit.
    fn printed(&self, row: &[Cell], at: usize) -> String {
        match (&row[at], self.columns[at].unit) {
            (Cell::Figure { printed, .. }, Some((unit, _))) => format!("{printed} {}", unit.symbol),
            (Cell::Figure { printed, .. }, None) => printed.clone(),
            (Cell::Words(words), _) => words.clone(),
        }
    }

    /// The same in the other system of units than that of the publication, where it has a unit.
    fn in_other_units(&self, row: &[Cell], at: usize) -> Option<String> {
        let ((unit, measure), si) = (self.columns[at].unit?, row[at].si()?);
        let (symbol, decimals) = measure.printed(other_system(unit, measure));
        let figure = measure.in_unit(si, other_system(unit, measure));
        Some(format!("{} {symbol}", trimmed(figure, decimals)))
    }

    /// The columns as they are printed: two that hold the ends of a range stand as one.
    fn shown(&self) -> Vec<Shown> {
        let high = |name: &str| self.column(&format!("{name} high"));
        let is_high = |name: &str| {
            let low = name.strip_suffix(" high");
            low.is_some_and(|low| self.column(low).is_some() || self.column(&format!("{low} low")).is_some())
        };
        self.columns
            .iter()
            .enumerate()
            .filter(|(_, column)| !is_high(&column.name))
            .map(|(at, column)| {
                let name = column.name.strip_suffix(" low").unwrap_or(&column.name);
                Shown { name: name.to_owned(), at, high: high(name) }
            })
            .collect()
    }

    /// What stands in a printed column: in the units of the publication, and in the other system.
    fn both(&self, row: &[Cell], shown: &Shown) -> [String; 2] {
        let range = |low: String, high: Option<String>| match high {
            Some(high) if high != low => match (low.split_once(' '), high.split_once(' ')) {
                (Some((figure, unit)), Some((_, other))) if unit == other => format!("{figure} to {high}"),
                _ => format!("{low} to {high}"),
            },
            _ => low,
        };
        [
            range(self.printed(row, shown.at), shown.high.map(|at| self.printed(row, at))),
            range(
                self.in_other_units(row, shown.at).unwrap_or_default(),
                shown.high.and_then(|at| self.in_other_units(row, at)),
            ),
        ]
    }

    /// What a row goes by: its name, or what stands first in it.
    fn name_of<'s>(&self, row: &'s [Cell]) -> &'s str {
        match self.cell(row, "name").or(row.first()) {
            Some(Cell::Words(name)) => name,
            Some(Cell::Figure { printed, .. }) => printed,
            None => "",
        }
    }
}

/// The system of units that a unit does not belong to.
fn other_system(unit: &Unit, measure: Measure) -> System {
    let is_us = [
        Measure::printed(measure, System::Us).0,
        "psi",
        "kip",
        "lb-in",
        "kip-ft",
        "kip-in",
        "ft",
        "in",
        "yd",
    ]
    .contains(&unit.symbol);
    if is_us { System::Si } else { System::Us }
}

/// The steel wire gauges, each as the program reads it.
fn gauges() -> Vec<Sheet> {
    let mut sheets: Vec<Sheet> = Vec::new();
    // By halves: the trade sells 11-1/2 gauge.
    for gauge in (0..=80).map(|half| f64::from(half) / 2.0) {
        let Some((wire, clause)) = screen::wire_of_gauge(gauge) else { continue };
        let title = clause.document.title.to_owned();
        let known = match clause.seen {
            Seen::FirstHand => "the page was read".to_owned(),
            Seen::SecondHand(through) => format!("second-hand: {through}"),
            Seen::Memory => "from memory, not seen".to_owned(),
        };
        let inch = Unit::named("in").expect("the inch stands in the list of units");
        let columns = vec![
            Column { name: "name".to_owned(), unit: None },
            Column { name: "diameter".to_owned(), unit: Some((inch, Measure::Small)) },
        ];
        let printed = trimmed((wire.si() / inch.si * 1e6).round() / 1e6, 6);
        let name = if gauge.fract() == 0.0 {
            format!("{gauge} gauge")
        } else {
            format!("{}-1/2 gauge", gauge.trunc())
        };
        let row = vec![Cell::Words(name), Cell::Figure { printed, si: wire.si() }];
        match sheets.iter_mut().find(|sheet| sheet.title == title) {
            Some(sheet) => sheet.rows.push(row),
            None => sheets.push(Sheet { title, known, columns, rows: vec![row] }),
        }
    }
    sheets
}

/// What is asked of one catalogue, or of all.
#[derive(Debug, Clone, PartialEq)]
pub enum Asked {
    /// Every row.
    All,
    /// The rows of a diameter, as it was written and as it is.
    Diameter {
        /// As it was written.
        written: String,
        /// The diameter.
        diameter: Length,
        /// Whether a girth was written, which no trade name is.
        by_girth: bool,
    },
    /// The rows whose names have these words.
    Words(String),
}

impl Asked {
    /// What a size or a name asks of a catalogue: words of a name where a row has them, else a diameter.
    ///
    /// # Errors
    /// If it is neither.
    pub fn read(held: &Held, written: &str) -> Result<Self, NothingHeld> {
        let written = written.trim();
        let words = Self::Words(written.to_owned());
        if !found(held, &words)?.is_empty() {
            return Ok(words);
        }
        match crate::units::read(written, Dimension::Length) {
            Ok(diameter) if held.is_of_posts && diameter > 0.0 => {
                let diameter = Length::from_si(diameter);
                return Ok(Self::Diameter { written: written.to_owned(), diameter, by_girth: false });
            }
            Err(error @ (ReadError::NoUnit { .. } | ReadError::WrongDimension { .. }))
                if held.is_of_posts =>
            {
                return Err(NothingHeld::NoSize { written: written.to_owned(), error });
            }
            _ => {}
        }
        let sheets = sheets(held)?;
        let names = sheets.iter().flat_map(|sheet| sheet.rows.iter().map(|row| sheet.name_of(row)));
        let nearest = nearest(written, names).map(str::to_owned);
        Err(NothingHeld::NoSuchName { catalogue: held.name, written: written.to_owned(), nearest })
    }

    /// The rows of posts with this girth.
    #[must_use]
    pub fn of_girth(written: &str, girth: Length) -> Self {
        Self::Diameter { written: written.trim().to_owned(), diameter: girth / PI, by_girth: true }
    }
}

/// Why a catalogue has no answer.
#[derive(Debug, Clone, PartialEq)]
pub enum NothingHeld {
    /// No row has such a name, and it is no size.
    NoSuchName {
        /// The catalogue.
        catalogue: &'static str,
        /// As it was written.
        written: String,
        /// The nearest name there is.
        nearest: Option<String>,
    },
    /// A figure that is no size.
    NoSize {
        /// As it was written.
        written: String,
        /// Why.
        error: ReadError,
    },
    /// A girth was asked of what is no post.
    NoGirth {
        /// The catalogue.
        catalogue: &'static str,
    },
    /// A file of the catalogue cannot be read.
    File(CatalogueError),
}

impl fmt::Display for NothingHeld {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSuchName { catalogue, written, nearest } => {
                write!(f, "the catalogue {catalogue} has no \"{written}\"")?;
                match nearest {
                    Some(nearest) => write!(f, ", perhaps \"{nearest}\""),
                    None => write!(f, "; fencegust catalogue {catalogue} lists what it has"),
                }
            }
            Self::NoSize { written, error } => write!(f, "size \"{written}\": {error}"),
            Self::NoGirth { catalogue } => {
                write!(f, "the catalogue {catalogue} has no posts, and a girth is a tape round a post")
            }
            Self::File(error) => write!(f, "a catalogue in the program: {error}"),
        }
    }
}

impl std::error::Error for NothingHeld {}

impl From<CatalogueError> for NothingHeld {
    fn from(error: CatalogueError) -> Self {
        Self::File(error)
    }
}

fn sheets(held: &Held) -> Result<Vec<Sheet>, CatalogueError> {
    match held.sheets {
        Sheets::Files(files) => files.iter().map(|text| Sheet::of_file(text)).collect(),
        Sheets::Made(made) => Ok(made()),
    }
}

/// Whether each word stands in a name: figures whole, others at least as they begin.
fn has_words(name: &str, asked: &str) -> bool {
    let name = name.to_lowercase();
    let mut any = false;
    let all = asked.to_lowercase().split_whitespace().all(|word| {
        any = true;
        name.split_whitespace()
            .any(|own| own == word || word.starts_with(char::is_alphabetic) && own.starts_with(word))
    });
    all && any
}

/// The rows that are asked for, by publication.
fn found(held: &Held, asked: &Asked) -> Result<Vec<Sheet>, CatalogueError> {
    let mut sheets = sheets(held)?;
    let of_diameter: Vec<Length> = match asked {
        Asked::Diameter { diameter, by_girth, .. } => match pipe::trade_size(*diameter) {
            Some(trade) if !by_girth => vec![trade.smaller, trade.larger],
            _ => vec![*diameter],
        },
        Asked::All | Asked::Words(_) => Vec::new(),
    };
    for sheet in &mut sheets {
        let wanted: Vec<bool> = sheet
            .rows
            .iter()
            .map(|row| match asked {
                Asked::All => true,
                Asked::Words(words) => has_words(sheet.name_of(row), words),
                Asked::Diameter { .. } => of_diameter
                    .iter()
                    .any(|diameter| pipe::of_diameter(*diameter).any(|pipe| pipe.name == sheet.name_of(row))),
            })
            .collect();
        let mut wanted = wanted.iter();
        sheet.rows.retain(|_| *wanted.next().unwrap_or(&false));
    }
    sheets.retain(|sheet| !sheet.rows.is_empty());
    Ok(sheets)
}

/// What a catalogue answers.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// The name of the catalogue.
    pub name: &'static str,
    about: &'static str,
    is_of_posts: bool,
    /// What was asked and what is to be said of it first.
    head: Option<String>,
    sheets: Vec<Sheet>,
    /// Where rows disagree about one thing.
    conflicts: Vec<String>,
    /// Names of the trade that mislead.
    misleading: Vec<String>,
}

impl Answer {
    /// Whether it has no row for what was asked.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.sheets.is_empty()
    }
}

/// Asks a catalogue.
///
/// # Errors
/// If it cannot answer such a question.
pub fn ask(held: &Held, asked: &Asked) -> Result<Answer, NothingHeld> {
    if let Asked::Diameter { by_girth: true, .. } = asked
        && !held.is_of_posts
    {
        return Err(NothingHeld::NoGirth { catalogue: held.name });
    }
    let sheets = found(held, asked)?;
    Ok(Answer {
        name: held.name,
        about: held.about,
        is_of_posts: held.is_of_posts,
        head: head(asked, sheets.is_empty()),
        conflicts: conflicts(held, &sheets),
        misleading: if held.is_of_posts { misleading(asked) } else { Vec::new() },
        sheets,
    })
}

/// A length in both systems, the inches to the hundredth.
fn in_both(length: Length) -> String {
    let (us, si) =
        (Measure::Small.in_unit(length.si(), System::Us), Measure::Small.in_unit(length.si(), System::Si));
    format!("{} in ({} mm)", trimmed(us, 3), trimmed(si, 1))
}

fn girth_of(diameter: Length) -> String {
    let inches = Measure::Small.in_unit((diameter * PI).si(), System::Us);
    format!("girth {inches:.2} in")
}

fn head(asked: &Asked, is_empty: bool) -> Option<String> {
    match asked {
        Asked::All => None,
        Asked::Words(words) => Some(format!("\"{words}\"")),
        Asked::Diameter { written, diameter, by_girth } => {
            let is_trade_name = !by_girth && pipe::trade_size(*diameter).is_some();
            let mut text = if is_trade_name {
                format!(
                    "{written}: no pipe of the catalogue measures so. It is a name of the trade; both pipes are listed."
                )
            } else if *by_girth {
                format!("Girth {written}: {} outside diameter.", in_both(*diameter))
            } else {
                format!("{written} outside diameter: {}, {}.", in_both(*diameter), girth_of(*diameter))
            };
            if is_empty {
                let (below, above) = pipe::neighbours(*diameter);
                let sizes: Vec<String> = [below, above]
                    .into_iter()
                    .flatten()
                    .map(|size| {
                        format!(
                            "{} ({})",
                            Value::new(size, Measure::Small).written(System::Us),
                            girth_of(size)
                        )
                    })
                    .collect();
                let next = if sizes.len() == 1 { "size is" } else { "sizes are" };
                text.push_str(&format!(
                    " No pipe of the catalogue measures so; its next {next} {}. Measure the bare post again.",
                    sizes.join(" and ")
                ));
            }
            Some(text)
        }
    }
}

/// Where rows of one thing differ in what is told of it.
fn conflicts(held: &Held, sheets: &[Sheet]) -> Vec<String> {
    let rows: Vec<(&Sheet, &[Cell])> =
        sheets.iter().flat_map(|sheet| sheet.rows.iter().map(move |row| (sheet, row.as_slice()))).collect();
    let mut told: Vec<String> = Vec::new();
    for thing in held.one_thing {
        let mut seen: Vec<&Cell> = Vec::new();
        for (sheet, row) in &rows {
            let Some(own) = sheet.cell(row, thing) else { continue };
            if seen.iter().any(|before| before.is_like(own)) {
                continue;
            }
            seen.push(own);
            let alike: Vec<_> = rows
                .iter()
                .filter(|(sheet, row)| sheet.cell(row, thing).is_some_and(|cell| cell.is_like(own)))
                .collect();
            let differing: Vec<String> =
                held.told_of_it.iter().filter_map(|column| differing(column, &alike)).collect();
            if !differing.is_empty() {
                let at = sheet.column(thing).unwrap_or_default();
                let name = if *thing == "name" { String::new() } else { format!(" {thing}") };
                told.push(format!("{}{name}: {}", sheet.printed(row, at), differing.join("; ")));
            }
        }
    }
    told
}

/// What rows of one thing have in a column, each figure with the names it goes by; nothing where all have the same.
fn differing(column: &str, rows: &[&(&Sheet, &[Cell])]) -> Option<String> {
    let mut values: Vec<(Vec<&Cell>, String, Vec<&str>)> = Vec::new();
    for (sheet, row) in rows {
        let Some(shown) = sheet.shown().into_iter().find(|shown| shown.name == column) else { continue };
        // Rows of one name are told apart by their publications.
        let same_name = rows.iter().all(|(other, cells)| other.name_of(cells) == sheet.name_of(row));
        let name = if same_name { sheet.title.as_str() } else { sheet.name_of(row) };
        let low = &row[shown.at];
        let ends = vec![low, shown.high.map_or(low, |at| &row[at])];
        let like = |cells: &[&Cell]| cells.iter().zip(&ends).all(|(one, other)| one.is_like(other));
        match values.iter_mut().find(|(cells, ..)| like(cells)) {
            Some((.., names)) => names.push(name),
            None => {
                let [printed, _] = sheet.both(row, &shown);
                values.push((ends, printed, vec![name]));
            }
        }
    }
    if values.len() < 2 {
        return None;
    }
    let each: Vec<String> =
        values.iter().map(|(_, printed, names)| format!("{printed} ({})", names.join(", "))).collect();
    Some(format!("{column} {}", each.join(" or ")))
}

/// The names of the trade that mean two pipes; of a diameter only those that touch it.
fn misleading(asked: &Asked) -> Vec<String> {
    // A name of the trade is a size in quarters of an inch.
    let names = (1..=48)
        .filter_map(|quarter| pipe::trade_size(inches(f64::from(quarter) / 4.0)).map(|size| (quarter, size)));
    names
        .filter(|(quarter, size)| match asked {
            Asked::All => true,
            Asked::Words(_) => false,
            Asked::Diameter { diameter, .. } => {
                let near = |other: Length| pipe::of_diameter(*diameter).any(|pipe| pipe.diameter == other);
                *diameter == inches(f64::from(*quarter) / 4.0) || near(size.smaller) || near(size.larger)
            }
        })
        .map(|(_, size)| {
            let one = |length: Length| {
                format!(
                    "{} outside ({})",
                    Value::new(length, Measure::Small).written(System::Us),
                    girth_of(length)
                )
            };
            format!(
                "\"{}\" is a name of the trade for two pipes: {} and {}. A tape round the post tells which.",
                size.name,
                one(size.smaller),
                one(size.larger)
            )
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pipes() -> &'static Held {
        CATALOGUES.iter().find(|held| held.name == "pipe").unwrap()
    }

    fn invented(title: &str, wall: &str) -> Sheet {
        Sheet::of_file(&format!(
            "# title: {title}\n# known: from memory\nname,diameter_in,wall_in,yield_ksi\nPipe one,2.0,{wall},30\n"
        ))
        .unwrap()
    }

    #[test]
    fn the_pipes_are_those_that_posts_are_worked_with() {
        let answer = ask(pipes(), &Asked::All).unwrap();
        let mut known = pipe::all().iter();
        for sheet in &answer.sheets {
            for row in &sheet.rows {
                let pipe = known.next().unwrap();
                let si = |column| sheet.cell(row, column).and_then(Cell::si).unwrap();
                assert_eq!(sheet.name_of(row), pipe.name);
                assert_eq!((&sheet.title, &sheet.known), (&pipe.title, &pipe.known));
                assert_eq!((si("diameter"), si("wall")), (pipe.diameter.si(), pipe.wall.si()));
                assert_eq!((si("yield"), si("yield high")), (pipe.yield_low.si(), pipe.yield_high.si()));
            }
        }
        assert_eq!(known.next(), None);
    }

    #[test]
    fn the_cloths_are_those_that_a_survey_may_name() {
        let held = CATALOGUES.iter().find(|held| held.name == "cloth").unwrap();
        let answer = ask(held, &Asked::All).unwrap();
        let sheet = &answer.sheets[0];
        let names: Vec<_> = sheet.rows.iter().map(|row| sheet.name_of(row)).collect();
        assert!(names.len() > 5);
        for name in &names {
            assert!(screen::named(name).is_some() || screen::unmeasured(name).is_some(), "{name}");
        }
        let missing = screen::all_cloths().find(|cloth| !names.contains(&cloth.name.as_str()));
        assert_eq!(missing, None);
    }

    #[test]
    fn rows_of_one_name_or_one_diameter_that_disagree_are_a_conflict() {
        let (one, other) = (invented("A", "0.1"), invented("B", "0.12"));
        let told = conflicts(pipes(), &[one.clone(), other]);
        assert_eq!(
            told,
            ["Pipe one: wall 0.1 in (A) or 0.12 in (B)", "2.0 in diameter: wall 0.1 in (A) or 0.12 in (B)"]
        );
        let same = Sheet { title: "C".to_owned(), ..one.clone() };
        assert_eq!(conflicts(pipes(), &[one, same]), [""; 0]);
    }

    #[test]
    fn every_diameter_with_two_walls_is_told() {
        let told = ask(pipes(), &Asked::All).unwrap().conflicts;
        for diameter in ["1.66", "1.9", "2.375", "2.875", "3.5", "4.0", "8.625"] {
            let line = told.iter().find(|line| line.starts_with(&format!("{diameter} in diameter: wall ")));
            assert!(line.is_some(), "{diameter}: {told:?}");
        }
        assert!(!told.iter().any(|line| line.starts_with("5.563")), "{told:?}");
        let two = told.iter().find(|line| line.starts_with("2.875")).unwrap();
        assert_eq!(
            two,
            "2.875 in diameter: wall 0.203 in (pipe 2-1/2 std) or 0.16 in (light pipe 2-1/2); yield 30 to 50 ksi (pipe 2-1/2 \
             std) or 50 ksi (light pipe 2-1/2)"
        );
    }

    #[test]
    fn a_unit_is_read_from_the_name_of_its_column() {
        let unit = |column| {
            let (name, unit) = name_and_unit(column);
            (name, unit.map(|(unit, _)| unit.symbol))
        };
        assert_eq!(unit("diameter_in"), ("diameter".to_owned(), Some("in")));
        assert_eq!(unit("weight_lb_per_ft"), ("weight".to_owned(), Some("lb/ft")));
        assert_eq!(unit("yield_high_ksi"), ("yield high".to_owned(), Some("ksi")));
        assert_eq!(unit("solidity_low"), ("solidity low".to_owned(), None));
    }

    #[test]
    fn a_size_a_name_of_the_trade_and_a_girth_find_their_pipes() {
        let names = |asked: &Asked| {
            let answer = ask(pipes(), asked).unwrap();
            let sheets = answer.sheets.iter();
            sheets
                .flat_map(|sheet| sheet.rows.iter().map(|row| sheet.name_of(row).to_owned()))
                .collect::<Vec<_>>()
        };
        let read = |written| Asked::read(pipes(), written).unwrap();
        let two = ["pipe 2-1/2 std", "light pipe 2-1/2"];
        assert_eq!(names(&read("2-7/8 in")), two);
        assert_eq!(names(&read("73 mm")), two);
        assert_eq!(
            names(&read("2-1/2 in")),
            ["pipe 2 std", "pipe 2-1/2 std", "light pipe 2", "light pipe 2-1/2"]
        );
        assert_eq!(names(&read("2-1/2 std")), ["pipe 2-1/2 std"]);
        assert_eq!(names(&Asked::of_girth("9-1/16 in", inches(9.0625))), two);
        assert_eq!(names(&read("2.6 in")), [""; 0]);
        let error = Asked::read(pipes(), "pope 2 std").unwrap_err().to_string();
        assert!(error.contains("perhaps \"pipe 2 std\""), "{error}");
        let error = Asked::read(pipes(), "2-7/8").unwrap_err().to_string();
        assert!(error.contains("2-7/8 has no unit"), "{error}");
        assert!(Asked::read(pipes(), "115 mph").is_err());
        assert!(Asked::read(pipes(), "-2 in").is_err());
    }
}
