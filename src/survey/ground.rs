//! What posts stand in, in a survey: the soil, the footings, and the method by which they are worked.

use super::file::{File, unknown_kind};
use super::keys::*;
use super::layers::{Key, Layers, Missing, Reader, Sign, shortened};
use super::reading::{Extreme, Reading};
use super::run::RunReader;
use super::settle::weaker;
use super::{FootingSurvey, Open, Origin, SoilSurvey};
use crate::fence::{Footing, FootingShape};
use crate::footing::{Ground, GroundQuality, Method, SandDensity, SoilClass};
use crate::units::{Length, Measure, System, Value};
use crate::workings::nearest;
use std::ops::Range;
use toml::de::DeValue;

const SOIL: &str = "{ lateral_bearing = \"150 psf/ft\" }, { class = \"sand\" } or \"unknown\"";
const FOOTING: &str = "{ shape = \"round\", width = \"12 in\", depth = \"42 in\" }, a name or \"unknown\"";
/// How deep; how deep a method goes is for the method to say.
const DEPTH: Key = Key {
    open: true,
    ..length("depth", "from the ground to the bottom of the concrete, or of a driven post", "\"42 in\"")
};

impl SoilSurvey {
    /// Of which nothing is known.
    fn unknown() -> Self {
        fn open<T>(key: &str) -> Open<T> {
            Open { key: format!("site.soil.{key}"), reading: Reading::Unknown }
        }
        Self {
            class: open("class"),
            lateral_bearing: open("lateral_bearing"),
            undrained_strength: open("undrained_strength"),
            friction: open("friction"),
            cohesion: open("cohesion"),
            unit_weight: open("unit_weight"),
            quality: open("quality"),
            ground_factor: open("ground_factor"),
            density: open("density"),
            under_water: open("under_water"),
            note: None,
        }
    }

    pub(super) fn settled(&self, end: &dyn Fn(&str) -> Extreme) -> Ground {
        // Where some of it may have no value there is none at either end.
        let without_value = self.class.reading.low().filter(|class| class.number().is_none());
        Ground {
            class: without_value.or_else(|| weaker(&self.class, end)),
            lateral_bearing: weaker(&self.lateral_bearing, end),
            undrained_strength: weaker(&self.undrained_strength, end),
            friction_angle: weaker(&self.friction, end),
            cohesion: weaker(&self.cohesion, end),
            unit_weight: weaker(&self.unit_weight, end),
            quality: weaker(&self.quality, end),
            ground_factor: weaker(&self.ground_factor, end),
            density: weaker(&self.density, end),
            is_under_water: weaker(&self.under_water, end).unwrap_or(false),
        }
    }

    pub(super) fn open_keys(&self, add: &mut impl FnMut(bool, &str, String)) {
        fn between<T>(open: &Open<T>) -> bool {
            matches!(open.reading, Reading::Between(..))
        }
        let engineer = |what: &str| format!("{what} of the soil, from a geotechnical engineer");
        add(
            between(&self.class) && self.lateral_bearing.reading == Reading::Unknown,
            &self.class.key,
            "the class of the soil: what the post holes brought up".to_owned(),
        );
        add(between(&self.lateral_bearing), &self.lateral_bearing.key, engineer("the lateral bearing"));
        add(
            between(&self.undrained_strength),
            &self.undrained_strength.key,
            engineer("the undrained strength"),
        );
        add(between(&self.friction), &self.friction.key, engineer("the angle of friction"));
        add(between(&self.cohesion), &self.cohesion.key, engineer("the cohesion"));
        add(between(&self.unit_weight), &self.unit_weight.key, engineer("the unit weight"));
        add(between(&self.quality), &self.quality.key, engineer("the quality"));
        add(between(&self.ground_factor), &self.ground_factor.key, engineer("the ground factor"));
        add(between(&self.density), &self.density.key, engineer("the density"));
    }
}

impl FootingSurvey {
    pub(super) fn settled(&self, end: &dyn Fn(&str) -> Extreme) -> Footing {
        Footing {
            name: self.name.clone(),
            shape: self.shape,
            width: weaker(&self.width, end),
            depth: weaker(&self.depth, end),
            is_held: self.is_held,
            is_isolated: self.is_isolated,
        }
    }

    pub(super) fn open_keys(&self, add: &mut impl FnMut(bool, &str, String)) {
        let name = shortened(&self.name);
        let between = |open: &Open<Length>| matches!(open.reading, Reading::Between(..));
        add(
            between(&self.depth),
            &self.depth.key,
            format!("how deep footing \"{name}\" goes: from a drawing, or a hole beside one"),
        );
        add(
            between(&self.width),
            &self.width.key,
            format!("how wide footing \"{name}\" is, with a tape where its top is bare"),
        );
    }

    /// Whether it is the same, whatever it is called.
    pub(super) fn is_like(&self, other: &Self) -> bool {
        self.shape == other.shape
            && self.width.reading == other.width.reading
            && self.depth.reading == other.depth.reading
            && self.is_held == other.is_held
            && self.is_isolated == other.is_isolated
    }

    /// In words, as it is known.
    #[must_use]
    pub fn text(&self, system: System) -> String {
        let one = |open: &Open<Length>| match open.reading {
            Reading::Measured(length) => Value::new(length, Measure::Small).written(system),
            Reading::Between(low, high) => {
                let written = |length| Value::new(length, Measure::Small).written(system);
                format!("{} to {}", written(low), written(high))
            }
            Reading::Unknown => "unknown".to_owned(),
        };
        let depth = one(&self.depth);
        match self.shape {
            FootingShape::Driven => format!("driven without concrete, {depth} deep"),
            shape => format!("{} {} wide, {depth} deep", shape.word(), one(&self.width)),
        }
    }
}

impl<'t> File<'t> {
    /// The soil about the posts.
    pub(super) fn soil(&self, layers: &Layers<'t>, reader: &mut Reader) -> Option<SoilSurvey> {
        let mut soil = SoilSurvey::unknown();
        let Some((value, origin)) = reader.find(layers, "soil") else { return Some(soil) };
        let table = match value.get_ref() {
            DeValue::String(text) if text.trim().eq_ignore_ascii_case("unknown") => {
                reader.note(layers, "soil", text.to_string(), origin);
                return Some(soil);
            }
            DeValue::Table(table) => table,
            _ => {
                reader.mistake(value.span(), format!("soil is {SOIL}"), format!("soil = {SOIL}"));
                return None;
            }
        };
        reader.check_keys(table, SOIL_KEYS, "soil", &[], &[]);
        let own = self.layers(table, "soil", "site.soil", value.span());
        let before = reader.mistakes.len();
        read_into(&mut soil.lateral_bearing, &own, LATERAL_BEARING, reader);
        read_into(&mut soil.undrained_strength, &own, UNDRAINED_STRENGTH, reader);
        read_into(&mut soil.friction, &own, FRICTION, reader);
        read_into(&mut soil.cohesion, &own, COHESION, reader);
        read_into(&mut soil.unit_weight, &own, UNIT_WEIGHT, reader);
        read_into(&mut soil.ground_factor, &own, GROUND_FACTOR, reader);
        words_into(&mut soil.class, &own, SoilClass::named, &class_names(), reader);
        let qualities = GroundQuality::ALL.map(GroundQuality::key);
        let quality = |word: &str| GroundQuality::ALL.into_iter().find(|one| one.key() == word);
        words_into(&mut soil.quality, &own, quality, &qualities, reader);
        let densities = SandDensity::ALL.map(SandDensity::key);
        let density = |word: &str| SandDensity::ALL.into_iter().find(|one| one.key() == word);
        words_into(&mut soil.density, &own, density, &densities, reader);
        let about = "whether it lies under water: yes or no";
        let wet = reader.choice(&own, "under_water", &["no", "yes", "unknown"], about, Missing::IsFine);
        soil.under_water.reading = match wet {
            Some(0) => Reading::Measured(false),
            Some(1) => Reading::Measured(true),
            // The lesser first: under water the soil gives more.
            Some(_) => Reading::Between(true, false),
            None => Reading::Unknown,
        };
        soil.note = reader.noted(&own);
        (reader.mistakes.len() == before).then_some(soil)
    }

    /// The method by which footings are worked; nothing wrong and nothing asked for is `Some(None)`.
    pub(super) fn footing_method(&self, layers: &Layers<'t>, reader: &mut Reader) -> Option<Option<Method>> {
        let about = "the method by which footings are worked; left out, that of the wind code's family";
        let Some((text, at)) = reader.text(layers, "footing_method", about, Missing::IsFine) else {
            return Some(None);
        };
        let found = Method::named(&text);
        if found.is_none() {
            let known = Method::ALL.map(Method::key);
            reader.mistake(
                at,
                format!("footing_method \"{}\" is none of {}", shortened(&text), known.join(", ")),
                nearest(&text, known.into_iter())
                    .map_or_else(|| about.to_owned(), |near| format!("perhaps \"{near}\"")),
            );
            return None;
        }
        Some(found)
    }
}

/// Every name of a class of soil, the shortest of each class first.
fn class_names() -> Vec<&'static str> {
    SoilClass::ALL.iter().flat_map(|class| class.names()).copied().collect()
}

const fn soil_key(key: &'static str, measure: Measure, about: &'static str, example: &'static str) -> Key {
    Key { key, measure, about, example, sign: Sign::Positive, open: true }
}
const LATERAL_BEARING: Key = soil_key(
    "lateral_bearing",
    Measure::PressurePerDepth,
    "allowable lateral bearing of the soil for each depth, from the code's table or a report",
    "\"150 psf/ft\"",
);
const UNDRAINED_STRENGTH: Key = soil_key(
    "undrained_strength",
    Measure::Pressure,
    "undrained shear strength of clay, from a geotechnical engineer",
    "\"1000 psf\"",
);
const FRICTION: Key = soil_key(
    "friction",
    Measure::Angle,
    "angle of friction of sand or gravel, from a geotechnical engineer",
    "\"32 deg\"",
);
const COHESION: Key = soil_key(
    "cohesion",
    Measure::Pressure,
    "cohesion beside friction, from a geotechnical engineer; left out, none is counted",
    "\"100 psf\"",
);
const UNIT_WEIGHT: Key = soil_key(
    "unit_weight",
    Measure::PressurePerDepth,
    "unit weight of the soil, under water the buoyant one",
    "\"120 pcf\"",
);
const GROUND_FACTOR: Key = soil_key(
    "ground_factor",
    Measure::PressurePerDepth,
    "ground factor of PD 6547, from its table or an engineer",
    "\"390 kPa/m\"",
);

fn read_into<Q: crate::units::Quantity>(
    open: &mut Open<Q>,
    layers: &Layers<'_>,
    key: Key,
    reader: &mut Reader,
) {
    if let Some(reading) = reader.quantity::<Q>(layers, key, Missing::IsFine) {
        open.reading = reading;
    }
}

/// One word, or several between "or", the weakest soil of them first.
fn words_into<T>(
    open: &mut Open<T>,
    layers: &Layers<'_>,
    named: impl Fn(&str) -> Option<T>,
    known: &[&'static str],
    reader: &mut Reader,
) where
    T: Copy + PartialEq + Weaker,
{
    let key = open.key.rsplit('.').next().unwrap_or_default().to_owned();
    let Some((text, at)) =
        reader.text(layers, &key, "a word, several with \"or\" between, or \"unknown\"", Missing::IsFine)
    else {
        return;
    };
    if text.eq_ignore_ascii_case("unknown") {
        return;
    }
    let mut found = Vec::new();
    for word in text.split(" or ") {
        match named(word.trim()) {
            Some(one) => found.push(one),
            None => {
                let near = nearest(word.trim(), known.iter().copied());
                reader.mistake(
                    at,
                    format!(
                        "{key} of soil is \"{}\", which is none of {}",
                        shortened(word.trim()),
                        known.join(", ")
                    ),
                    near.map_or_else(
                        || "ask what the post holes brought up".to_owned(),
                        |near| format!("perhaps \"{near}\""),
                    ),
                );
                return;
            }
        }
    }
    let of = |pick: fn(usize, usize) -> bool| {
        found
            .iter()
            .copied()
            .reduce(|one, other| if pick(other.strength(), one.strength()) { other } else { one })
    };
    open.reading = match (of(|one, other| one < other), of(|one, other| one > other)) {
        (Some(weakest), Some(strongest)) if weakest == strongest => Reading::Measured(weakest),
        (Some(weakest), Some(strongest)) => Reading::Between(weakest, strongest),
        _ => Reading::Unknown,
    };
}

/// Words of which some say weaker soil than others.
trait Weaker {
    /// The greater the stronger.
    fn strength(self) -> usize;
}
impl Weaker for SoilClass {
    /// The table goes from the strongest down to those without a value.
    fn strength(self) -> usize {
        let at = Self::ALL.iter().position(|class| *class == self);
        Self::ALL.len() - at.unwrap_or(Self::ALL.len())
    }
}
impl Weaker for GroundQuality {
    fn strength(self) -> usize {
        match self {
            Self::Poor => 0,
            Self::Average => 1,
            Self::Good => 2,
        }
    }
}
impl Weaker for SandDensity {
    fn strength(self) -> usize {
        match self {
            Self::Loose => 0,
            Self::Medium => 1,
            Self::Dense => 2,
        }
    }
}

/// What a run says of a footing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Said {
    /// Nothing: what stands for it is taken.
    Nothing,
    /// That it is not known.
    Unknown,
    /// A footing, by index.
    Footing(usize),
}

impl Said {
    /// This, or what stands for it.
    pub(super) fn or(self, other: Self) -> Self {
        if self == Self::Nothing { other } else { self }
    }

    pub(super) const fn index(self) -> Option<usize> {
        match self {
            Self::Footing(at) => Some(at),
            Self::Nothing | Self::Unknown => None,
        }
    }
}

impl<'t> RunReader<'_, 't> {
    /// What a run says of the footings under one of its keys; nothing where that is wrong.
    pub(super) fn footing(
        &self,
        key: &'static str,
        feet: &mut Vec<FootingSurvey>,
        reader: &mut Reader,
    ) -> Option<Said> {
        let Some((value, origin)) = reader.find(&self.layers, key) else {
            return if self.has(key) { None } else { Some(Said::Nothing) };
        };
        let (table, path, name, origin) = match value.get_ref() {
            DeValue::String(text) if text.trim().eq_ignore_ascii_case("unknown") => {
                reader.note(&self.layers, key, "unknown".to_owned(), origin);
                return Some(Said::Unknown);
            }
            DeValue::String(text) => {
                let name = text.trim();
                let Some((_, table, _)) = self.footings.iter().find(|(kind, ..)| kind.as_str() == name)
                else {
                    let known = self.footings.iter().map(|(name, ..)| name.as_str());
                    unknown_kind("footing", name, known, value.span(), reader);
                    return None;
                };
                reader.note(&self.layers, key, name.to_owned(), origin);
                (*table, format!("footing.{name}"), name.to_owned(), Origin::Kind(name.to_owned()))
            }
            DeValue::Table(table) => {
                reader.check_keys(table, FOOTING_KEYS, key, &[], &[]);
                let (path, name) = if origin == Origin::AllRuns && self.layers.deal.is_none() {
                    (format!("all_runs.{key}"), "all runs".to_owned())
                } else {
                    (
                        format!("{}.{key}", self.layers.path),
                        self.layers.path.trim_start_matches("run.").to_owned(),
                    )
                };
                (table, path, name, origin)
            }
            _ => {
                reader.mistake(value.span(), format!("{key} is {FOOTING}"), "");
                return None;
            }
        };
        let at = value.span();
        let layers = Layers {
            tables: vec![(table, origin.clone())],
            path: path.clone(),
            ..self.part(key, at.clone())
        };
        let stacked = self.file.stack("footing", layers, self.footings, reader)?;
        if let Some(known) = feet.iter().position(|foot| foot.key() == path) {
            return Some(Said::Footing(known));
        }
        let shown = match &origin {
            Origin::Kind(name) => format!("[footing.{name}]"),
            _ if name == "all runs" => format!("{key} of all runs"),
            _ => stacked.name.clone(),
        };
        let foot = foot(&stacked, (name, path), &shown, &at, reader)?;
        feet.push(foot);
        Some(Said::Footing(feet.len() - 1))
    }
}

impl FootingSurvey {
    /// The key it stands under.
    fn key(&self) -> &str {
        self.depth.key.strip_suffix(".depth").unwrap_or(&self.depth.key)
    }
}

/// One footing from its layers.
fn foot(
    layers: &Layers<'_>,
    (name, path): (String, String),
    shown: &str,
    at: &Range<usize>,
    reader: &mut Reader,
) -> Option<FootingSurvey> {
    let words = FootingShape::ALL.map(FootingShape::word);
    let about = "round or square concrete, or driven without concrete";
    let shape =
        reader.choice(layers, "shape", &words, about, Missing::IsMistake).map(|at| FootingShape::ALL[at]);
    let driven = shape == Some(FootingShape::Driven);
    let missing = if driven { Missing::IsFine } else { Missing::IsMistake };
    let width = small("width", "across the concrete", "\"12 in\"", true);
    let width = reader.quantity::<Length>(layers, width, missing);
    if driven && width.is_some() {
        reader.mistake(
            at.clone(),
            format!("{} is driven without concrete: the post itself is its width", layers.name),
            "take width out, or write shape = \"round\"",
        );
        return None;
    }
    let depth = reader.quantity::<Length>(layers, DEPTH, Missing::IsMistake);
    let about = "whether a slab or beam that can take the reaction holds the post at the ground: yes or no";
    let held = reader.choice(layers, "constrained_at_ground", &["no", "yes"], about, Missing::Means("no"));
    let about =
        "whether the lateral bearing may count twice, as about an isolated pole (IBC 1806.3.4): yes or no";
    let isolated = reader.choice(layers, "isolated", &["no", "yes"], about, Missing::Means("no"));
    let note = reader.noted_of(shown, layers);
    let open = |key: &str, reading| Open { key: format!("{path}.{key}"), reading };
    Some(FootingSurvey {
        name,
        shape: shape?,
        width: open("width", if driven { Reading::Unknown } else { width? }),
        depth: open("depth", depth?),
        is_held: held? == 1,
        is_isolated: isolated? == 1,
        note,
    })
}
