//! The site of a survey.

use super::file::File;
use super::keys::*;
use super::layers::{Key, Layers, Missing, Node, Reader, Sign};
use super::reading::Reading;
use super::{Open, Origin, SiteReading, SiteSurvey};
use crate::member::Format;
use crate::units::{Length, Measure, Quantity, System, Velocity};
use crate::wind::{Code, KeyKind, Leaf, SiteKey};
use toml::de::DeValue;

impl<'t> File<'t> {
    pub(super) fn site(&self, reader: &mut Reader) -> Option<SiteSurvey> {
        let (table, span) = if self.top.contains_key("site") {
            self.table("site", reader)?
        } else {
            reader.mistake(
                0..0,
                "the survey has no [site]: the wind code, the wind speed and what lies upwind",
                "add [site] with wind_code, wind_speed and exposure",
            );
            return None;
        };
        let layers = self.layers(table, "[site]", "site", span.clone());
        let codes: Vec<&str> = Code::ALL.iter().map(|code| code.key()).collect();
        let code = reader
            .text(&layers, "wind_code", "the wind code in force, such as asce7-16", Missing::IsMistake)
            .and_then(|(name, at)| match Code::named(&name) {
                Ok(code) => Some(code),
                Err(near) => {
                    let write = near.map_or_else(
                        || format!("known are {}", codes.join(", ")),
                        |near| format!("perhaps \"{near}\""),
                    );
                    reader.mistake(
                        at,
                        format!("wind_code \"{name}\" is none of {}", codes.join(", ")),
                        write,
                    );
                    None
                }
            });
        // Without a code its keys cannot be told apart from slips: every code's keys pass.
        let own: Vec<&str> = match code {
            Some(code) => code.site_keys().iter().map(|key| key.key).collect(),
            None => Code::ALL.iter().flat_map(|code| code.site_keys()).map(|key| key.key).collect(),
        };
        let known: Vec<&str> = SITE_KEYS.iter().copied().chain(own).collect();
        let above =
            (&["survey", "units"][..], "at the top of the file, above the first [table]", "move it up");
        reader.check_keys(table, &known, "[site]", &[above], &["also"]);
        let wind_speed = reader.quantity::<Velocity>(
            &layers,
            Key {
                key: "wind_speed",
                measure: Measure::Speed,
                about: "the design wind speed of the code, from the building department, or \"unknown\"",
                example: "\"115 mph\"",
                sign: Sign::Positive,
                open: true,
            },
            Missing::IsMistake,
        );
        let text = |reader: &mut Reader, key| {
            reader.text(&layers, key, "a line of text", Missing::IsFine).map(|(text, _)| text)
        };
        let wind_speed_source = text(reader, "wind_speed_source");
        let about = "of the structure, as the map of the wind speed names it: I, II, III or IV";
        let categories = ["I", "II", "III", "IV"];
        let risk_category = reader
            .choice(&layers, "risk_category", &categories, about, Missing::IsFine)
            .map(|at| categories[at].to_owned());
        let mut note = text(reader, "note");
        self.from(&layers, reader);
        let coast = "whether hurricanes make the strongest winds here: yes or no";
        let hurricane_coast = reader
            .choice(&layers, "hurricane_coast", &["no", "yes"], coast, Missing::IsFine)
            .map(|found| found == 1);
        let formats = Format::ALL.map(Format::key);
        let format = reader
            .choice(
                &layers,
                "design",
                &formats,
                "the format steel is checked in: lrfd, strength design, or asd, allowable stress design",
                Missing::Means(Format::Lrfd.key()),
            )
            .map(|at| Format::ALL[at]);
        let soil = self.soil(&layers, reader);
        let footing_method = self.footing_method(&layers, reader);
        let code = code?;
        let mut values = Vec::new();
        for key in code.site_keys() {
            if let KeyKind::Table(keys) = key.kind {
                let found = self.site_table(&layers, key, keys, reader);
                note =
                    [note, found.note].into_iter().flatten().reduce(|one, other| format!("{one}; {other}"));
                values.extend(found.values);
            } else {
                let described = self.stands_for(&layers, code, key);
                let reading = match described {
                    Some(table) => {
                        reader.note(&layers, key.key, format!("by {}", table.key), Origin::Default);
                        Some(Reading::Measured(SiteReading::Absent))
                    }
                    None => self.site_value(&layers, &Leaf { table: None, key }, reader),
                };
                values.push(reading.map(|reading| Open { key: format!("site.{}", key.key), reading }));
            }
        }
        let values: Option<Vec<_>> = values.into_iter().collect();
        Some(SiteSurvey {
            code,
            wind_speed: Open { key: "site.wind_speed".to_owned(), reading: wind_speed? },
            wind_speed_source,
            risk_category,
            hurricane_coast,
            format: format?,
            values: values?,
            soil: soil?,
            footing_method: footing_method?,
            note,
        })
    }

    /// The table that describes what this key would say, where one stands.
    fn stands_for(&self, layers: &Layers<'t>, code: Code, key: &SiteKey) -> Option<&'static SiteKey> {
        let given = |key: &str| layers.tables.iter().find_map(|(table, _)| table.get(key));
        if given(key.key).is_some() {
            return None;
        }
        code.site_keys().iter().find(|other| {
            other.instead_of.is_some_and(|(name, _)| name == key.key)
                && given(other.key).is_some_and(|value| matches!(value.get_ref(), DeValue::Table(_)))
        })
    }

    /// The values of a table below the site; each is absent where the table is left out or "none".
    fn site_table(
        &self,
        layers: &Layers<'t>,
        table: &'static SiteKey,
        keys: &'static [SiteKey],
        reader: &mut Reader,
    ) -> SiteTable {
        let path = |key: &'static SiteKey| format!("site.{}", Leaf { table: Some(table), key }.path());
        let all = |reading: Option<Reading<SiteReading>>| SiteTable {
            values: keys.iter().map(|key| reading.map(|reading| Open { key: path(key), reading })).collect(),
            note: None,
        };
        let absent = all(Some(Reading::Measured(SiteReading::Absent)));
        let Some((value, origin)) = reader.find(layers, table.key) else {
            reader.note(layers, table.key, "none".to_owned(), Origin::Default);
            return absent;
        };
        if let Some((other, keep)) = table.instead_of
            && layers.tables.iter().any(|(table, _)| table.contains_key(other))
        {
            reader.mistake(
                value.span(),
                format!("{other} and {} both say what the ground does to the wind", table.key),
                keep,
            );
            return all(None);
        }
        let names = keys.iter().map(|key| key.key).collect::<Vec<_>>();
        match value.get_ref() {
            DeValue::String(text) if text.trim().eq_ignore_ascii_case("none") => {
                reader.note(layers, table.key, "none".to_owned(), origin);
                absent
            }
            DeValue::Table(given) => {
                let name = format!("[site.{}]", table.key);
                let known: Vec<&str> = names.iter().copied().chain(["note", "from"]).collect();
                reader.check_keys(given, &known, &name, &[], &[]);
                let own = self.layers(given, &name, &format!("site.{}", table.key), value.span());
                let note = reader.text(&own, "note", "a line of text", Missing::IsFine);
                self.from(&own, reader);
                let values = keys
                    .iter()
                    .map(|key| {
                        self.site_value(&own, &Leaf { table: Some(table), key }, reader)
                            .map(|reading| Open { key: path(key), reading })
                    })
                    .collect();
                SiteTable { values, note: note.map(|(note, _)| format!("{}: {note}", table.key)) }
            }
            _ => {
                reader.mistake(
                    value.span(),
                    format!(
                        "{} is a table with {}, or \"none\": {}",
                        table.key,
                        names.join(", "),
                        table.about
                    ),
                    format!("write [site.{}] and its keys below", table.key),
                );
                all(None)
            }
        }
    }

    pub(super) fn site_value(
        &self,
        layers: &Layers<'t>,
        leaf: &Leaf,
        reader: &mut Reader,
    ) -> Option<Reading<SiteReading>> {
        let (key, path) = (leaf.key, leaf.path());
        match key.kind {
            // Tables stand on their own; none stands in another.
            KeyKind::Table(_) => None,
            KeyKind::Choice(choices) => {
                let words: Vec<&str> = choices.iter().map(|(word, _)| *word).collect();
                let (text, at) = reader.text(layers, key.key, key.about, Missing::IsMistake)?;
                if text.eq_ignore_ascii_case("unknown") {
                    return Some(Reading::Unknown);
                }
                let mut found = Vec::new();
                for part in text.split(" or ") {
                    match words.iter().position(|word| word.eq_ignore_ascii_case(part.trim())) {
                        Some(choice) => found.push(choice),
                        None => {
                            reader.mistake(
                                at,
                                format!("{path} \"{text}\" is none of {}", words.join(", ")),
                                key.about,
                            );
                            return None;
                        }
                    }
                }
                let (low, high) = (*found.iter().min()?, *found.iter().max()?);
                Some(if low == high {
                    Reading::Measured(SiteReading::Choice(low))
                } else {
                    Reading::Between(SiteReading::Choice(low), SiteReading::Choice(high))
                })
            }
            KeyKind::Quantity(measure, default) => {
                let what = Key {
                    key: key.key,
                    measure,
                    about: key.about,
                    example: key.example[0],
                    sign: Sign::Any,
                    open: true,
                };
                let Some((value, origin)) = reader.find(layers, key.key) else {
                    let Some(default) = default else {
                        reader.told_missing(layers, key.key, key.about, what.example);
                        return None;
                    };
                    reader.note(layers, key.key, default.written(System::Us), Origin::Default);
                    return Some(Reading::Measured(SiteReading::Quantity(default.si)));
                };
                let reading = quantity_in_si(reader, layers, value, origin, what)?;
                if matches!(reading, Reading::Unknown) {
                    reader.mistake(
                        value.span(),
                        format!("{path} cannot be unknown: {}", key.about),
                        if measure == Measure::Ratio {
                            "a range, like \"1.0 .. 1.3\", or ask an engineer"
                        } else {
                            "a range, like \"200 ft .. 340 ft\", from a map"
                        },
                    );
                    return None;
                }
                if let (Some((least, greatest)), Some(low), Some(high)) =
                    (key.range, reading.low(), reading.high())
                    && !(least <= low && high <= greatest)
                {
                    let written = |si| measure.write(si, System::Us);
                    reader.mistake(
                        value.span(),
                        format!("{path} must lie between {} and {}", written(least), written(greatest)),
                        key.about,
                    );
                    return None;
                }
                Some(reading.map(SiteReading::Quantity))
            }
        }
    }
}

/// What was read of a table below the site.
struct SiteTable {
    values: Vec<Option<Open<SiteReading>>>,
    note: Option<String>,
}

pub(super) fn quantity_in_si(
    reader: &mut Reader,
    layers: &Layers<'_>,
    value: Node<'_>,
    origin: Origin,
    key: Key,
) -> Option<Reading<f64>> {
    if key.measure.dimension() == crate::units::Dimension::Ratio {
        reader.quantity_of::<f64>(layers, value, origin, key)
    } else {
        reader.quantity_of::<Length>(layers, value, origin, key).map(|reading| reading.map(Length::si))
    }
}
