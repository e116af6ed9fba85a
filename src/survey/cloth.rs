//! The cloth of a run: what it is, how it hangs, how it is tied.

use super::FasteningSurvey;
use super::file::{File, unknown_kind};
use super::keys::*;
use super::layers::{Key, Layers, Missing, Reader, Sign};
use super::reading::{Extreme, Reading};
use super::run::RunReader;
use super::{AirTest, Origin};
use crate::caution::Remark;
use crate::fence::{Bay, Condition, Face, Screen, Windows};
use crate::screen;
use crate::units::{Length, Measure, Pressure, Pure, Quantity, System, Value, Velocity};
use crate::workings::Blank;
use std::ops::Range;
use toml::de::{DeTable, DeValue};

impl<'t> File<'t> {
    pub(super) fn screen_keys(&self, table: &'t DeTable<'t>, name: &str, reader: &mut Reader) {
        reader.check_keys(
            table,
            SCREEN_KEYS,
            name,
            &[
                (RUN_ONLY_KEYS, "to the run, above the screen's own table", "move it up"),
                (
                    &[
                        "ends",
                        "line_post",
                        "end_post",
                        "corner_post",
                        "gate_post",
                        "chain_link",
                        "top_rail",
                        "mid_rail",
                        "bottom_rail",
                        "footing",
                        "base_above_ground",
                    ],
                    "to the run, above the screen's own table",
                    "move it up",
                ),
                (&["iced", "frozen"], "in its condition", "condition = \"iced\""),
            ],
            &[],
        );
    }
}

impl<'t> RunReader<'_, 't> {
    /// The cloth: nothing wrong and nothing hung is `Some(None)`.
    pub(super) fn screen(
        &self,
        fence_height: Option<Length>,
        bays: Option<&[Bay]>,
        top_rail: Option<Length>,
        reader: &mut Reader,
        remarks: &mut Vec<Remark>,
    ) -> Option<Option<ReadScreen>> {
        let Some((value, origin)) = reader.find(&self.layers, "screen") else {
            if self.has("screen") {
                return None;
            }
            reader.note(&self.layers, "screen", "none".to_owned(), Origin::Default);
            return Some(None);
        };
        let (layers, name) = match value.get_ref() {
            DeValue::String(text) if text.trim().eq_ignore_ascii_case("none") => {
                reader.note(&self.layers, "screen", "none".to_owned(), origin);
                return Some(None);
            }
            DeValue::String(name) => {
                let name = name.trim();
                let Some((_, table, _)) = self.screens.iter().find(|(kind, ..)| kind == name) else {
                    unknown_kind(
                        "screen",
                        name,
                        self.screens.iter().map(|(name, ..)| name.as_str()),
                        value.span(),
                        reader,
                    );
                    return None;
                };
                (
                    Layers {
                        tables: vec![(table, Origin::Kind(name.to_owned()))],
                        ..self.part("screen", value.span())
                    },
                    name.to_owned(),
                )
            }
            DeValue::Table(table) => {
                self.file.screen_keys(table, &format!("the screen of {}", self.layers.name), reader);
                let name =
                    table.get("like").and_then(|like| like.get_ref().as_str()).unwrap_or("own").to_owned();
                (Layers { tables: vec![(table, origin)], ..self.part("screen", value.span()) }, name)
            }
            _ => {
                reader.mistake(
                    value.span(),
                    "screen is a name, a table or \"none\"",
                    "screen = { like = \"closed9\", bottom = \"1 ft\" }",
                );
                return None;
            }
        };
        let layers = self.file.stack("screen", layers, self.screens, reader)?;
        let known = |key: &str| layers.tables.iter().any(|(table, _)| table.contains_key(key));
        // Cloth that a run writes in place goes by its own words, or by the run's name.
        let words = || layers.tables.iter().find_map(|(table, _)| table.get("cloth")?.get_ref().as_str());
        let called = if name == "own" {
            words().unwrap_or_else(|| self.layers.path.trim_start_matches("run.")).to_owned()
        } else {
            name.clone()
        };
        let ReadCloth { cloth, solidity, tested } = solidity_of(&layers, &called, reader, remarks);
        let over = over_of(&layers, &called, reader, remarks);
        let about_bottom = "the lower edge of the cloth above the ground";
        let bottom = reader.quantity::<Length>(
            &layers,
            Key { sign: Sign::NotNegative, ..length("bottom", about_bottom, "\"1 ft\"") },
            Missing::IsMistake,
        );
        let height = reader.quantity::<Length>(
            &layers,
            length("height", "height of the cloth as it hangs", "\"9 ft\""),
            Missing::IsFine,
        );
        let top = reader.quantity::<Length>(
            &layers,
            length("top", "the top of the cloth above the ground", "\"10 ft\""),
            Missing::IsFine,
        );
        let weight = reader.quantity::<Pressure>(
            &layers,
            Key {
                key: "weight",
                measure: Measure::WeightPerArea,
                about: "weight of the cloth for each area, by its maker, or \"unknown\"",
                example: "\"7 oz/yd2\"",
                sign: Sign::Positive,
                open: true,
            },
            Missing::IsFine,
        );
        let face = reader
            .choice(
                &layers,
                "face",
                &Face::ALL.map(Face::word),
                "the side of the fence the cloth hangs on",
                Missing::IsFine,
            )
            .map(|at| Face::ALL[at]);
        let condition = reader.choice(
            &layers,
            "condition",
            &["dry", "iced", "unknown"],
            "whether ice may close its openings: dry, iced or unknown",
            Missing::Means("dry"),
        );
        let fastening = self.fastening(&layers, top_rail, reader);
        let windows = self.windows(&layers, reader);
        let hung_on = self.hung_on(&layers, bays.map(<[Bay]>::len), reader);
        let note = reader.text(&layers, "note", "a line of text", Missing::IsFine).map(|(text, _)| text);
        self.file.from(&layers, reader);
        if !known("height") && !known("top") {
            reader.lacking(
                &layers,
                &["height", "top"],
                format!("{} has no height: the height of the cloth as it hangs", layers.name),
                "add height = \"9 ft\" or top = \"10 ft\"",
            );
        }
        let bottom = bottom?.low()?;
        let top = match (height, top) {
            (Some(height), None) => bottom + height.low()?,
            (None, Some(top)) => top.low()?,
            (None, None) => return None,
            (Some(height), Some(top)) => {
                let (height, top) = (height.low()?, top.low()?);
                if (bottom + height - top).si().abs() > 1e-6 {
                    reader.mistake(
                        layers.place.clone(),
                        format!("{}: bottom and height make another top than top says", layers.name),
                        "give bottom with height, or bottom and top",
                    );
                    return None;
                }
                top
            }
        };
        let place = |key: &str| {
            layers
                .tables
                .iter()
                .find_map(|(table, _)| table.get(key))
                .map_or(layers.place.clone(), toml::Spanned::span)
        };
        let written = |length: Length| Value::new(length, Measure::Length).written(System::Us);
        if top <= bottom {
            reader.mistake(
                place("top"),
                format!(
                    "the top of the cloth ({}) is not above its lower edge ({})",
                    written(top),
                    written(bottom)
                ),
                "",
            );
            return None;
        }
        if let Some(fence) = fence_height
            && top > fence + Length::from_si(1e-9)
        {
            let key = if known("top") { "top" } else { "height" };
            let at = layers.tables[0]
                .0
                .get(key)
                .or_else(|| layers.tables[0].0.get("bottom"))
                .map_or(layers.place.clone(), toml::Spanned::span);
            reader.mistake(
                at,
                format!(
                    "the cloth of {} reaches {}, above the fence of {}",
                    self.layers.name,
                    written(top),
                    written(fence)
                ),
                format!("its top is {} at most", written(fence)),
            );
            return None;
        }
        let top = fence_height.map_or(top, |fence| if top > fence { fence } else { top });
        if let Some(Some(cut)) = windows
            && (cut.height >= top - bottom || cut.per_bay < 1.0 || cut.per_bay > 1000.0)
        {
            let at = place("vents");
            reader.mistake(
                at,
                "vents: windows fit in the cloth, from 1 to 1000 in a bay",
                "{ width = \"8 in\", height = \"5 in\", per_bay = 2 }",
            );
            return None;
        }
        let (first_bay, end_bay) = hung_on?;
        if let (Some(Some(cut)), Some(bays)) = (windows, bays)
            && bays[first_bay..end_bay]
                .iter()
                .any(|bay| (cut.area() * cut.per_bay / ((top - bottom) * bay.width)).pure() >= 1.0)
        {
            let per_bay = cut.per_bay;
            reader.mistake(
                place("vents"),
                format!(
                    "vents: {per_bay} windows of this size leave no cloth in the narrowest bay it hangs on"
                ),
                "count them in one bay",
            );
            return None;
        }
        let fastening_at = place("fastening");
        let (solidity, over) = (solidity?, over?);
        let condition = match condition? {
            0 => Reading::Measured(Condition::Dry),
            1 => Reading::Measured(Condition::Iced),
            _ => Reading::Unknown,
        };
        let screen = Screen {
            name,
            solidity: solidity.high().unwrap_or(1.0),
            solidity_as_return: None,
            over: over.iter().map(|cloth| cloth.solidity.high().unwrap_or(1.0)).collect(),
            condition: if condition == Reading::Measured(Condition::Dry) {
                Condition::Dry
            } else {
                Condition::Iced
            },
            bottom,
            top,
            first_bay,
            end_bay,
            windows: windows?,
            face,
            fastening: None,
        };
        Some(Some(ReadScreen {
            screen,
            solidity,
            condition,
            cloth,
            tested,
            over,
            weight,
            fastening: fastening?.map(|fastening| (fastening, fastening_at)),
            note,
        }))
    }

    pub(super) fn windows(&self, layers: &Layers<'t>, reader: &mut Reader) -> Option<Option<Windows>> {
        let Some((value, origin)) = reader.find(layers, "vents") else { return Some(None) };
        let DeValue::Table(table) = value.get_ref() else {
            reader.mistake(
                value.span(),
                "vents is a table",
                "{ width = \"8 in\", height = \"5 in\", per_bay = 2 }",
            );
            return None;
        };
        reader.check_keys(table, VENT_KEYS, "vents", &[], &[]);
        let own = Layers { tables: vec![(table, origin)], ..self.part("vents", value.span()) };
        reader.noted(&own);
        let width = reader.quantity::<Length>(
            &own,
            small("width", "across one window", "\"8 in\"", false),
            Missing::IsMistake,
        );
        let height = reader.quantity::<Length>(
            &own,
            small("height", "height of one window", "\"5 in\"", false),
            Missing::IsMistake,
        );
        let count = Key {
            key: "per_bay",
            measure: Measure::Ratio,
            about: "how many in a bay",
            example: "2",
            sign: Sign::Positive,
            open: false,
        };
        let per_bay = reader.quantity::<f64>(&own, count, Missing::IsMistake);
        Some(Some(Windows { width: width?.low()?, height: height?.low()?, per_bay: per_bay?.low()? }))
    }

    pub(super) fn hung_on(
        &self,
        layers: &Layers<'t>,
        bays: Option<usize>,
        reader: &mut Reader,
    ) -> Option<(usize, usize)> {
        let Some((value, _)) = reader.find(layers, "bays") else { return bays.map(|bays| (0, bays)) };
        let text = match value.get_ref() {
            DeValue::String(text) => text.to_string(),
            DeValue::Array(_) => {
                reader.mistake(
                    value.span(),
                    format!("bays with a list stands in {} but belongs to the run", layers.name),
                    "move it up, above the screen's own table",
                );
                return None;
            }
            _ => {
                reader.mistake(
                    value.span(),
                    "bays of a screen says which bays it hangs on",
                    "bays = \"2..11\"",
                );
                return None;
            }
        };
        let (first, last) = text.split_once("..").unwrap_or((&text, &text));
        let count = bays?;
        match (first.trim().parse::<usize>(), last.trim().parse::<usize>()) {
            (Ok(first), Ok(last)) if 1 <= first && first <= last && last <= count => Some((first - 1, last)),
            _ => {
                reader.mistake(
                    value.span(),
                    format!("bays \"{text}\" of the screen: {} has bays 1 to {count}", self.layers.name),
                    "like \"2..11\"",
                );
                None
            }
        }
    }
}

/// Cloth as it was read.
pub(super) struct ReadScreen {
    pub(super) screen: Screen,
    pub(super) solidity: Reading<f64>,
    pub(super) condition: Reading<Condition>,
    pub(super) cloth: Option<String>,
    pub(super) tested: Option<AirTest>,
    pub(super) over: Vec<ReadOver>,
    pub(super) weight: Option<Reading<Pressure>>,
    /// What holds it, and where that stands.
    pub(super) fastening: Option<(FasteningSurvey, Range<usize>)>,
    pub(super) note: Option<String>,
}

/// Cloth over cloth as it was read.
pub(super) struct ReadOver {
    pub(super) cloth: Option<String>,
    pub(super) solidity: Reading<f64>,
    pub(super) tested: Option<AirTest>,
}

/// One cloth as it was read, without how it hangs.
#[derive(Default)]
pub(super) struct ReadCloth {
    pub(super) cloth: Option<String>,
    pub(super) solidity: Option<Reading<f64>>,
    pub(super) tested: Option<AirTest>,
}

/// What cloth it is, its solidity and its test: the solidity is what is given, else by its density, else by the
/// catalogue. A test alone leaves it unknown: it is no open area.
pub(super) fn solidity_of(
    layers: &Layers<'_>,
    name: &str,
    reader: &mut Reader,
    remarks: &mut Vec<Remark>,
) -> ReadCloth {
    let has = |key: &str| layers.tables.iter().find_map(|(table, _)| table.get(key)).map(toml::Spanned::span);
    let tested = air_test(layers, reader);
    let cloth = reader.text(layers, "cloth", "open mesh, closed mesh or solid", Missing::IsFine);
    let own_figure = ["solidity", "density", "air_permeability"].iter().any(|key| has(key).is_some());
    let entry = match &cloth {
        None => None,
        Some((text, at)) => {
            let entry = screen::named(text);
            if entry.is_none() && !own_figure {
                no_such_cloth(text, at.clone(), reader);
                return ReadCloth::default();
            }
            entry
        }
    };
    if cloth.is_none() && has("cloth").is_some() {
        // That it is no text was told already.
        return ReadCloth::default();
    }
    let cloth = cloth.map(|(text, _)| text);
    let least = screen::cloths().iter().map(|cloth| cloth.solidity_low).fold(1.0, f64::min);
    let mut unknown = |reader: &mut Reader| {
        remarks.push(Remark::SolidityUnknown { screen: name.to_owned(), low: least });
        reader.note(layers, "solidity taken", format!("{least} .. 1"), Origin::Default);
        Reading::Between(least, 1.0)
    };
    let told = if let Some(at) = has("solidity") {
        match reader.quantity::<f64>(
            layers,
            ratio("solidity", "solid area over gross area, 0 to 1", "0.95"),
            Missing::IsFine,
        ) {
            Some(Reading::Unknown) => Some((unknown(reader), at)),
            Some(reading) => Some((reading, at)),
            None => return ReadCloth { cloth, solidity: None, tested },
        }
    } else if let Some(at) = has("density") {
        let density = reader.quantity::<f64>(
            layers,
            ratio("density", "how much light the cloth stops", "\"95 %\""),
            Missing::IsFine,
        );
        let colour = reader.text(
            layers,
            "colour",
            "colour of the yarn: black and dark yarn stop light and wind alike",
            Missing::IsMistake,
        );
        let (Some(density), Some((colour, _))) = (density, colour) else {
            return ReadCloth { cloth, solidity: None, tested };
        };
        let density = match density {
            Reading::Unknown => Reading::Between(least, 1.0),
            known => known,
        };
        // Light yarn forgets the upper end below, so that a density that is none is told here.
        if density.high().is_some_and(|high| high > 1.0) {
            reader.mistake(
                at,
                "density is the share of the light that the cloth stops and lies between 0 and 1",
                "like \"80 %\"",
            );
            return ReadCloth { cloth, solidity: None, tested };
        }
        let dark = ["black", "dark"].iter().any(|word| colour.to_lowercase().contains(word));
        if dark {
            remarks.push(Remark::DensityTaken { screen: name.to_owned() });
            Some((density, at))
        } else {
            remarks.push(Remark::DensityOfLightYarn { screen: name.to_owned(), colour });
            Some((Reading::Between(density.low().unwrap_or(0.7), 1.0), at))
        }
    } else if let Some(entry) = entry {
        Some((of_catalogue(entry, layers, reader, remarks), layers.place.clone()))
    } else if let Some(at) = has("air_permeability") {
        Some((unknown(reader), at))
    } else {
        reader.lacking(
            layers,
            &["cloth", "solidity", "density"],
            format!("{} has no cloth: which cloth it is, or how solid", layers.name),
            "add cloth = \"closed mesh\" or solidity = 0.95",
        );
        None
    };
    let solidity = told.and_then(|(reading, at)| {
        if reading.high()? > 1.0 {
            reader.mistake(
                at,
                "solidity is solid area over gross area and lies between 0 and 1",
                "like 0.95 or \"95 %\"",
            );
            return None;
        }
        if reading.low()? < LEAST_SOLIDITY {
            reader.mistake(
                at,
                format!("no cloth is so open: its solidity is {LEAST_SOLIDITY} or more"),
                "write screen = \"none\" where no cloth hangs",
            );
            return None;
        }
        Some(reading)
    });
    if let (Some(test), Some(solidity)) = (tested, solidity) {
        let of = |end| {
            let test = test.at_end(end)?;
            test.solidity(&mut Blank).ok()
        };
        if let (Some(low), Some(high)) = (of(Extreme::Best), of(Extreme::Worst)) {
            let taken = solidity.high().unwrap_or(1.0);
            remarks.push(Remark::AirPermeability { screen: name.to_owned(), low, high, taken });
        }
    }
    ReadCloth { cloth, solidity, tested }
}

/// Below this nothing hangs there that stops wind: a slip of the pen, not a cloth.
const LEAST_SOLIDITY: f64 = 0.001;

/// A share between 0 and 1, or what is known of it.
const fn ratio(key: &'static str, about: &'static str, example: &'static str) -> Key {
    Key { key, measure: Measure::Ratio, about, example, sign: Sign::Positive, open: true }
}

/// A maker's test of air permeability, if there is one.
fn air_test(layers: &Layers<'_>, reader: &mut Reader) -> Option<AirTest> {
    let (value, origin) = reader.find(layers, "air_permeability")?;
    let DeValue::Table(table) = value.get_ref() else {
        reader.mistake(
            value.span(),
            "air_permeability is a table: the air that passes, and the pressure of the test",
            AIR_TEST,
        );
        return None;
    };
    reader.check_keys(table, AIR_TEST_KEYS, "air_permeability", &[], &[]);
    let own = Layers {
        name: format!("air_permeability of {}", layers.name),
        path: format!("{}.air_permeability", layers.path),
        place: value.span(),
        tables: vec![(table, origin)],
        deal: None,
    };
    let flow = Key {
        key: "flow",
        measure: Measure::AirPermeability,
        about: "air that passes the cloth in its maker's test, for each area and time",
        example: "\"500 cfm/ft2\"",
        sign: Sign::Positive,
        open: true,
    };
    let at = Key {
        key: "at",
        measure: Measure::Pressure,
        about: "pressure over the cloth in that test; its maker's sheet has both",
        example: "\"125 Pa\"",
        sign: Sign::Positive,
        open: false,
    };
    reader.noted(&own);
    let flow = reader.quantity::<Velocity>(&own, flow, Missing::IsMistake);
    let at = reader.quantity::<Pressure>(&own, at, Missing::IsMistake);
    match flow? {
        Reading::Unknown => None,
        flow => Some(AirTest { flow, at: at?.low()? }),
    }
}

/// The solidity of a cloth of the catalogue.
fn of_catalogue(
    entry: &screen::Cloth,
    layers: &Layers<'_>,
    reader: &mut Reader,
    remarks: &mut Vec<Remark>,
) -> Reading<f64> {
    remarks.push(Remark::SolidityFromCatalogue { cloth: entry.name.clone(), known: entry.known.clone() });
    let (low, high) = (entry.solidity_low, entry.solidity_high);
    let one = low == high;
    reader.note(
        layers,
        "solidity",
        if one { format!("{high}") } else { format!("{low} .. {high}") },
        Origin::Kind(entry.name.clone()),
    );
    if one { Reading::Measured(high) } else { Reading::Between(low, high) }
}

/// Tells that the catalogue has no such cloth, or no solidity for it.
fn no_such_cloth(text: &str, at: Range<usize>, reader: &mut Reader) {
    if let Some(cloth) = screen::unmeasured(text) {
        reader.mistake(
            at,
            format!("the catalogue knows \"{}\" without a solidity ({})", cloth.name, cloth.known),
            "give solidity = \"unknown\", or its density and colour",
        );
        return;
    }
    let names: Vec<_> = screen::all_cloths().map(|cloth| cloth.name.as_str()).collect();
    let near = screen::nearest_name(text);
    reader.mistake(
        at,
        format!("the catalogue has no cloth \"{text}\": {}", names.join(", ")),
        near.map_or_else(
            || "or give solidity = 0.95".to_owned(),
            |near| format!("perhaps \"{near}\", or give solidity = 0.95"),
        ),
    );
}

/// The cloths hung over this one: a name of the catalogue, a table, or a list of either.
fn over_of(
    layers: &Layers<'_>,
    name: &str,
    reader: &mut Reader,
    remarks: &mut Vec<Remark>,
) -> Option<Vec<ReadOver>> {
    let Some((value, origin)) = reader.find(layers, "over") else { return Some(Vec::new()) };
    let items: Vec<_> = match value.get_ref() {
        DeValue::String(text) if text.trim().eq_ignore_ascii_case("none") => return Some(Vec::new()),
        DeValue::Array(list) if list.is_empty() => {
            reader.mistake(value.span(), "over is an empty list: which cloths hang over this one", OVER);
            return None;
        }
        DeValue::Array(list) => list.iter().collect(),
        _ => vec![value],
    };
    let mut all = Vec::new();
    let count = items.len();
    for (at, item) in items.iter().enumerate() {
        let number = if at == 0 { String::new() } else { format!(" {}", at + 1) };
        let mut own = Layers {
            name: format!("over {name}"),
            path: format!("{}.over{number}", layers.path),
            place: item.span(),
            tables: Vec::new(),
            deal: None,
        };
        let read = match item.get_ref() {
            DeValue::String(text) => match screen::named(text) {
                Some(entry) => {
                    reader.note(layers, &format!("over{number}"), text.to_string(), origin.clone());
                    let solidity = Some(of_catalogue(entry, &own, reader, remarks));
                    ReadCloth { cloth: Some(entry.name.clone()), solidity, tested: None }
                }
                None => {
                    no_such_cloth(text, item.span(), reader);
                    ReadCloth::default()
                }
            },
            DeValue::Table(table) => {
                reader.check_keys(table, OVER_KEYS, "over", &[], &[]);
                own.tables = vec![(table, origin.clone())];
                reader.noted_of(&format!("over {}", layers.name), &own);
                solidity_of(&own, &own.name, reader, remarks)
            }
            _ => {
                reader.mistake(
                    item.span(),
                    "over is a cloth of the catalogue, a table or a list of them",
                    OVER,
                );
                ReadCloth::default()
            }
        };
        let ReadCloth { cloth, solidity, tested } = read;
        all.extend(solidity.map(|solidity| ReadOver { cloth, solidity, tested }));
    }
    (all.len() == count).then_some(all)
}
