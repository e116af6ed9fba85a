//! What holds the cloth, in a survey: ties or lacing, their rows, spacing, strength and age.

use super::keys::*;
use super::layers::{Key, Layers, Missing, Reader, Sign};
use super::reading::{Extreme, Reading};
use super::run::RunReader;
use super::settle::{heavier, weaker};
use super::{FasteningSurvey, HeldBy, Open};
use crate::fastening::FasteningError;
use crate::fastening::order::{LONGEST, PanelCount};
use crate::fastening::rope::{Fibre, breaking};
use crate::fastening::ties::{Age, Hold, Panel, Row, Rows};
use crate::fence::{ClothStiffness, Fastening, FasteningKind, TiedTo};
use crate::source::Stated;
use crate::units::{Dimension, Force, Length, LineLoad, Measure, Quantity, Value, inches, read};
use crate::workings::{Blank, nearest};
use toml::de::{DeTable, DeValue};

const WRITE: &str =
    "{ kind = \"ties\", strength = \"50 lbf\", spacing = \"12 in\", rows = [\"top\", \"bottom\"] }";

/// How far a grommet stands off the rail it is laced to, where nobody measured it.
const OFFSET: Stated<Length> =
    Stated { value: inches(1.0), because: "ours: a grommet stands about 1 in off the rail it is laced to" };

impl<'t> RunReader<'_, 't> {
    /// What holds the cloth; nothing wrong and nothing known is `Some(None)`.
    pub(super) fn fastening(
        &self,
        layers: &Layers<'t>,
        top_rail: Option<Length>,
        reader: &mut Reader,
    ) -> Option<Option<FasteningSurvey>> {
        let Some((value, origin)) = reader.find(layers, "fastening") else { return Some(None) };
        let table = match value.get_ref() {
            DeValue::Table(table) => table,
            DeValue::String(text) if text.trim().eq_ignore_ascii_case("unknown") => {
                reader.note(layers, "fastening", "unknown".to_owned(), origin);
                return Some(None);
            }
            _ => {
                reader.mistake(value.span(), "fastening is a table or \"unknown\"", WRITE);
                return None;
            }
        };
        reader.check_keys(table, FASTENING_KEYS, "fastening", &[], &[]);
        let own = Layers { tables: vec![(table, origin)], ..self.part("fastening", value.span()) };
        reader.noted(&own);
        let run = self.layers.path.clone();
        let key = |key: &str| format!("{run}.fastening.{key}");
        let kind = reader.choice(&own, "kind", &["ties", "lacing"], "ties or lacing", Missing::IsMistake);
        let strength = reader.quantity::<Force>(
            &own,
            force(
                "strength",
                "strength of one tie, or breaking load of the rope, by its maker, or \"unknown\"",
                "\"50 lbf\"",
            ),
            Missing::IsFine,
        );
        let grommet = reader.quantity::<Force>(
            &own,
            force(
                "grommet",
                "pull at which one grommet tears out of the hem, by the maker's test",
                "\"120 lbf\"",
            ),
            Missing::IsFine,
        );
        let spacing = reader.quantity::<Length>(
            &own,
            small("spacing", "from tie to tie", "\"12 in\"", true),
            Missing::IsMistake,
        );
        let to = reader.choice(
            &own,
            "tied_to",
            &["rails", "chain link"],
            "what the rows are tied to: rails (and posts or tension bars), or chain link alone",
            Missing::Means("rails"),
        );
        let panel = reader.quantity::<Length>(
            &own,
            length(
                "panel",
                "length of one cloth, from upright edge to upright edge; left out: equal parts of 60 ft at most",
                "\"10 ft\"",
            ),
            Missing::IsFine,
        );
        let rows = rows_of(table, &own, reader);
        let cloth = cloth_of(&own, reader);
        let by = match kind {
            Some(0) => self.ties(&own, key("age"), reader),
            Some(_) => self.lacing(&own, top_rail, key("years"), reader),
            None => None,
        };
        let (Some(kind), Some(spacing), Some((rows, named))) = (kind, spacing, rows) else { return None };
        let written = spacing.low().map_or_else(
            || "at an unknown spacing".to_owned(),
            |spacing| format!("every {}", Value::new(spacing, Measure::Small).written(self.file.system())),
        );
        Some(Some(FasteningSurvey {
            text: format!("{} {written}, {}", ["ties", "lacing"][kind], named.join(", ")),
            by: by?,
            strength: Open { key: key("strength"), reading: strength.unwrap_or(Reading::Unknown) },
            grommet: Open { key: key("grommet"), reading: grommet.unwrap_or(Reading::Unknown) },
            spacing: Open { key: key("spacing"), reading: spacing },
            rows,
            to: [TiedTo::Rails, TiedTo::ChainLink][to?],
            panel: panel.and_then(|panel| panel.low()),
            cloth: cloth?,
        }))
    }

    fn ties(&self, own: &Layers<'t>, key: String, reader: &mut Reader) -> Option<HeldBy> {
        for foreign in ["rope", "years", "offset"] {
            foreign_key(foreign, "ties", own, reader);
        }
        let about = "\"new\", \"aged\" (a season or more in the sun), or \"aged type 2\" where the maker says that aged \
                     ties keep their strength";
        let age = reader.choice(
            own,
            "age",
            &["new", "aged", "aged type 2", "unknown"],
            about,
            Missing::Means("unknown"),
        )?;
        let reading = match age {
            0 => Reading::Measured(Age::New),
            1 => Reading::Measured(Age::Aged),
            2 => Reading::Measured(Age::AgedOfType2),
            _ => Reading::Unknown,
        };
        Some(HeldBy::Ties { age: Open { key, reading } })
    }

    fn lacing(
        &self,
        own: &Layers<'t>,
        top_rail: Option<Length>,
        key: String,
        reader: &mut Reader,
    ) -> Option<HeldBy> {
        foreign_key("age", "lacing", own, reader);
        let (text, at) =
            reader.text(own, "rope", "thickness and fibre of the rope", Missing::Means("unknown"))?;
        let rope =
            if text.eq_ignore_ascii_case("unknown") { None } else { Some(rope_of(&text, at, reader)?) };
        let years = reader.quantity::<f64>(
            own,
            Key {
                key: "years",
                measure: Measure::Ratio,
                about: "years the rope has been outdoors",
                example: "2",
                sign: Sign::NotNegative,
                open: true,
            },
            Missing::Means("0"),
        )?;
        let offset = reader.quantity::<Length>(
            own,
            small("offset", "how far a grommet stands off the rail it is laced to", "\"1 in\"", false),
            Missing::IsFine,
        );
        let Some(rail) = top_rail else {
            reader.mistake(
                own.place.clone(),
                format!("{} is lacing, but there is no rail to lace it to", self.layers.name),
                "add top_rail = { diameter = \"1.660 in\" }, or hold the cloth with ties",
            );
            return None;
        };
        Some(HeldBy::Lacing {
            rope,
            years: Open { key, reading: years },
            rail,
            offset: offset.and_then(|offset| offset.low()).unwrap_or(OFFSET.value),
        })
    }
}

const fn force(key: &'static str, about: &'static str, example: &'static str) -> Key {
    Key { key, measure: Measure::Force, about, example, sign: Sign::Positive, open: true }
}

fn foreign_key(key: &str, kind: &str, own: &Layers<'_>, reader: &mut Reader) {
    if let Some((key, _)) = own.tables[0].0.get_key_value(key) {
        reader.mistake(key.span(), format!("{} does not go with {kind}", key.get_ref()), "take it out");
    }
}

/// Thickness and fibre, such as "1/4 in polypropylene".
fn rope_of(text: &str, at: std::ops::Range<usize>, reader: &mut Reader) -> Option<(Length, Option<Fibre>)> {
    const LIKE: &str = "like \"1/4 in polypropylene\"";
    let (thickness, fibre) = text
        .rsplit_once(' ')
        .filter(|(_, last)| Fibre::named(last).is_some())
        .map_or_else(|| (text, None), |(thickness, fibre)| (thickness, Fibre::named(fibre)));
    let diameter = match read(thickness, Dimension::Length) {
        Ok(si) if si > 0.0 => Length::from_si(si),
        Ok(_) => {
            reader.mistake(at, format!("rope is {text}: its thickness must be above 0"), LIKE);
            return None;
        }
        Err(error) => {
            let known = Fibre::ALL.map(Fibre::name).join(", ");
            reader.mistake(at, format!("rope: {error}, then its fibre ({known})"), LIKE);
            return None;
        }
    };
    // A rope that no table lists has no strength until its maker gives one.
    Some((diameter, fibre))
}

/// The rows, and their names as they were written.
fn rows_of(table: &DeTable<'_>, own: &Layers<'_>, reader: &mut Reader) -> Option<(Rows, Vec<String>)> {
    const LIKE: &str = "rows = [\"top\", \"bottom\"]";
    let (rows, at) = match table.get("rows").map(|rows| (rows.get_ref(), rows.span())) {
        Some((DeValue::Array(list), at)) if list.is_empty() => {
            reader.mistake(at, "rows is empty: along which edges the cloth is tied", LIKE);
            return None;
        }
        Some((DeValue::Array(list), at)) => (list, at),
        Some((_, at)) => {
            reader.mistake(at, "rows is a list", LIKE);
            return None;
        }
        None => {
            reader.lacking(
                own,
                &["rows"],
                format!("{} has no rows: along which edges it is tied", own.name),
                format!("add {LIKE}"),
            );
            return None;
        }
    };
    let (mut found, mut fine) = (Vec::new(), true);
    for row in rows {
        let word = row.get_ref().as_str().unwrap_or_default();
        match Row::named(word) {
            Some(row_found) if found.contains(&row_found) => {
                reader.mistake(row.span(), format!("the row \"{word}\" is named twice"), "name it once");
                fine = false;
            }
            Some(row) => found.push(row),
            None => {
                let near = nearest(word, Row::ALL.iter().map(|row| row.name()));
                reader.mistake(
                    row.span(),
                    "rows are top, middle, bottom and sides",
                    near.map_or_else(|| LIKE.to_owned(), |near| format!("perhaps \"{near}\"")),
                );
                fine = false;
            }
        }
    }
    if !fine {
        return None;
    }
    let named = found.iter().map(|row| row.name().to_owned()).collect();
    match Rows::try_new(&found) {
        Ok(rows) => Some((rows, named)),
        Err(error) => {
            reader.mistake(at, error.to_string(), LIKE);
            None
        }
    }
}

/// Stiffness and slack of the cloth, both or neither.
fn cloth_of(own: &Layers<'_>, reader: &mut Reader) -> Option<Option<ClothStiffness>> {
    let stiffness = reader.quantity::<LineLoad>(
        own,
        Key {
            key: "stiffness",
            measure: Measure::LineLoad,
            about: "stiffness of the cloth: force on each foot of width over its stretch, by its maker",
            example: "\"5000 lb/ft\"",
            sign: Sign::Positive,
            open: false,
        },
        Missing::IsFine,
    );
    let slack = reader.quantity::<f64>(
        own,
        Key {
            key: "slack",
            measure: Measure::Ratio,
            about: "by how much the cloth is longer than from edge to edge, as a share of it",
            example: "\"1 %\"",
            sign: Sign::Any,
            open: false,
        },
        Missing::IsFine,
    );
    let has = |key: &str| own.tables[0].0.contains_key(key);
    match (has("stiffness"), has("slack")) {
        (true, true) => Some(Some(ClothStiffness { stiffness: stiffness?.low()?, slack: slack?.low()? })),
        (false, false) => Some(None),
        (stiff, _) => {
            let (given, lacks) = if stiff { ("stiffness", "slack") } else { ("slack", "stiffness") };
            reader.mistake(
                own.place.clone(),
                format!("{} has {given} and no {lacks}: the cloth is worked with both", own.name),
                format!("add {lacks}, or take {given} out"),
            );
            None
        }
    }
}

impl FasteningSurvey {
    /// Whether it fits the cloth it holds: a spacing no wider than any edge.
    pub(super) fn fits(&self, screened: Length, height: Length) -> Result<(), FasteningError> {
        let Some(spacing) = self.spacing.reading.low() else { return Ok(()) };
        let length = match self.panel {
            Some(panel) => panel,
            None => screened / PanelCount { length: screened, longest: LONGEST.value }.work(&mut Blank)?,
        };
        Hold::try_new(Panel { length, height }, self.rows.clone(), spacing).map(|_| ())
    }

    /// What holds the cloth, at the ends asked for.
    pub(super) fn settled(&self, end: &dyn Fn(&str) -> Extreme) -> Fastening {
        let strength = weaker(&self.strength, end);
        let kind = match &self.by {
            HeldBy::Ties { age } => {
                let at_end = if end(&age.key) == Extreme::Worst { Age::Aged } else { Age::New };
                FasteningKind::Ties { declared: strength, age: age.reading.low().unwrap_or(at_end) }
            }
            HeldBy::Lacing { rope, years, rail, offset } => {
                let table = rope.and_then(|(diameter, fibre)| {
                    let found = breaking(fibre?, diameter).ok()?;
                    Some(if end(&self.strength.key) == Extreme::Worst { found.least } else { found.greatest })
                });
                FasteningKind::Lacing {
                    rope: rope.map_or(THIN_ROPE, |(diameter, _)| diameter),
                    breaking: strength.or(table),
                    years: heavier(years, end, |years| years).unwrap_or(0.0),
                    rail: *rail,
                    offset: *offset,
                }
            }
        };
        Fastening {
            kind,
            rows: self.rows.clone(),
            spacing: heavier(&self.spacing, end, |spacing| spacing),
            to: self.to,
            panel: self.panel,
            grommet: weaker(&self.grommet, end),
            cloth: self.cloth,
        }
    }

    pub(super) fn open_keys(&self, run: &str, add: &mut impl FnMut(bool, &str, String)) {
        let run = super::layers::shortened(run);
        add(
            !self.spacing.reading.is_point(),
            &self.spacing.key,
            format!("the spacing of the {} on {run}", self.by.word()),
        );
        match &self.by {
            HeldBy::Ties { age } => {
                add(
                    !self.strength.reading.is_point(),
                    &self.strength.key,
                    format!("the strength of the ties by their maker on {run}"),
                );
                add(
                    !age.reading.is_point() && self.strength.reading != Reading::Unknown,
                    &age.key,
                    format!("the age of the ties on {run}"),
                );
            }
            HeldBy::Lacing { rope, years, .. } => {
                add(
                    !self.strength.reading.is_point() && rope.is_none_or(|(_, fibre)| fibre.is_none()),
                    &self.strength.key,
                    format!("the breaking load of the rope by its maker on {run}"),
                );
                add(
                    !years.reading.is_point(),
                    &years.key,
                    format!("how many years the rope has been outdoors on {run}"),
                );
            }
        }
    }
}

impl HeldBy {
    const fn word(&self) -> &'static str {
        match self {
            Self::Ties { .. } => "ties",
            Self::Lacing { .. } => "lacing",
        }
    }
}

/// A rope of unknown thickness is taken as thin, which pulls it hardest round a rail.
const THIN_ROPE: Length = inches(0.125);
