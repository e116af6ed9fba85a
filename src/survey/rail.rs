//! The rails of a survey.

use super::keys::*;
use super::layers::{Layers, Missing, Reader, shortened};
use super::post::at;
use super::reading::{Extreme, Reading};
use super::run::RunReader;
use super::tube::{WallRead, tube_is_one, wall_of, with_sizes};
use super::{Open, Origin, RailSurvey, TubeSurvey};
use crate::caution::Remark;
use crate::fence::{Rail, RailPlace, Splice};
use crate::member::Format;
use crate::units::{Length, Pressure, Quantity};
use crate::workings::Blank;
use toml::de::DeValue;

/// The key of a rail.
const fn key_of(place: RailPlace) -> &'static str {
    match place {
        RailPlace::Top => "top_rail",
        RailPlace::Middle => "mid_rail",
        RailPlace::Bottom => "bottom_rail",
    }
}

impl RunReader<'_, '_> {
    /// A rail; nothing where there is none or it cannot be read.
    pub(super) fn rail(
        &self,
        name: &str,
        place: RailPlace,
        reader: &mut Reader,
        remarks: &mut Vec<Remark>,
    ) -> Option<RailSurvey> {
        let key = key_of(place);
        let Some((value, origin)) = reader.find(&self.layers, key) else {
            if !self.has(key) {
                reader.note(&self.layers, key, "none".to_owned(), Origin::Default);
            }
            return None;
        };
        match value.get_ref() {
            DeValue::String(text) if text.trim().eq_ignore_ascii_case("none") => {
                reader.note(&self.layers, key, "none".to_owned(), origin);
                None
            }
            DeValue::Table(table) => {
                reader.check_keys(table, RAIL_KEYS, key, &[], &[]);
                let layers =
                    Layers { tables: vec![(table, origin)], deal: None, ..self.part(key, value.span()) };
                reader.noted(&layers);
                let rail = rail_of(&format!("run.{name}.{key}"), &layers, reader)?;
                let tube = rail.tube.iter();
                for remark in tube.flat_map(|tube| tube.remarks(&format!("{name}: the {}", place.name()))) {
                    // One publication is told once.
                    if !remarks.contains(&remark) {
                        remarks.push(remark);
                    }
                }
                Some(rail)
            }
            _ => {
                reader.mistake(
                    value.span(),
                    format!("{key} is {{ diameter = \"…\" }} or \"none\""),
                    "{ diameter = \"1.660 in\" }",
                );
                None
            }
        }
    }
}

fn rail_of(key: &str, layers: &Layers<'_>, reader: &mut Reader) -> Option<RailSurvey> {
    let diameter = reader.quantity::<Length>(layers, SMALL, Missing::IsMistake);
    let wall = wall_of(layers, None, reader);
    // Without a wall the grade says nothing.
    let missing = if matches!(wall, WallRead::Is(..)) { Missing::Means("unknown") } else { Missing::IsFine };
    let yield_strength = reader.quantity::<Pressure>(layers, YIELD, missing);
    let splice = reader.choice(
        layers,
        "splice",
        &Splice::SAID.map(Splice::word),
        "how its lengths are joined: \"sleeve\", or \"none\" where no joint stands in the run",
        Missing::IsFine,
    );
    // A word that is none was told; a grade that cannot be read too.
    let has = |key: &str| layers.tables.iter().any(|(table, _)| table.contains_key(key));
    if has("splice") && splice.is_none() || has("yield") && yield_strength.is_none() {
        return None;
    }
    let splice = splice.map_or(Splice::NotSaid, |at| Splice::SAID[at]);
    let diameter = diameter?.low()?;
    let (basis, wall) = match wall {
        WallRead::Is(basis, wall) => (basis, wall),
        WallRead::Lacks => return Some(RailSurvey { diameter, tube: None, splice }),
        WallRead::Wrong => return None,
    };
    let open = |part: &str| format!("{key}.{part}");
    let tube = TubeSurvey {
        is_square: false,
        girth: None,
        across: Open { key: open("diameter"), reading: Reading::Measured(diameter) },
        basis,
        wall: Open { key: open("wall"), reading: wall },
        yield_strength: Open { key: open("yield"), reading: yield_strength.unwrap_or(Reading::Unknown) },
        rust: Open { key: open("rust"), reading: Reading::Measured(Length::from_si(0.0)) },
    };
    tube_is_one(&tube, layers, reader)?;
    let rail = RailSurvey { diameter, tube: Some(tube), splice };
    strength_is_one(&rail, layers, reader)?;
    Some(rail)
}

/// Whether the strength rule can be worked at both ends of what is known.
fn strength_is_one(rail: &RailSurvey, layers: &Layers<'_>, reader: &mut Reader) -> Option<()> {
    for end in [Extreme::Worst, Extreme::Best] {
        for format in Format::ALL {
            let rail = rail.settled(format, &|_| end);
            // Shear asks for the span, and is given at any.
            let Err(error) = rail.strength(Length::from_si(1.0), &mut Blank) else { continue };
            let wall =
                ["measured_wall", "nominal_wall"].into_iter().find(|key| at(key, layers) != layers.place);
            reader.mistake(
                wall.map_or(layers.place.clone(), |key| at(key, layers)),
                format!("{}: {}", layers.name, with_sizes(rail.tube.as_ref(), &error)),
                "measure wall and diameter again",
            );
            return None;
        }
    }
    Some(())
}

impl RailSurvey {
    /// The rail at the ends asked for.
    pub(super) fn settled(&self, format: Format, end: &dyn Fn(&str) -> Extreme) -> Rail {
        let tube = self.tube.as_ref().map(|tube| tube.at_ends(end));
        Rail { diameter: self.diameter, tube, splice: self.splice, format }
    }

    pub(super) fn open_keys(&self, run: &str, place: RailPlace, add: &mut impl FnMut(bool, &str, String)) {
        let (Some(tube), name, run) = (&self.tube, place.name(), shortened(run)) else { return };
        let unknown = matches!(tube.wall.reading, Reading::Unknown);
        add(
            !tube.wall.reading.is_point(),
            &tube.wall.key,
            if unknown {
                format!(
                    "wall and grade of the {name} on {run}: wall with a caliper at an open end, grade by the mill's paper"
                )
            } else {
                format!("the wall of the {name} on {run}, with a caliper at an open end")
            },
        );
        add(
            !unknown && !tube.yield_strength.reading.is_point(),
            &tube.yield_strength.key,
            format!("the grade of the {name} on {run}, by the mill's paper"),
        );
    }
}
