//! The kinds of posts of a survey.

use super::file::{File, Kinds};
use super::keys::*;
use super::layers::{Key, Layers, Missing, Reader, Sign};
use super::reading::{Extreme, Reading};
use super::{Open, PostSurvey, WallBasis};
use crate::caution::Remark;
use crate::member::aisc360_16::nominal_moment;
use crate::member::{RoundTube, TubeSizes, pipe};
use crate::units::{Length, Measure, Pressure, Quantity, System, Value};
use crate::workings::{Blank, nearest};
use std::ops::Range;

impl<'t> File<'t> {
    pub(super) fn posts(
        &self,
        kinds: &Kinds<'t>,
        reader: &mut Reader,
        remarks: &mut Vec<Remark>,
    ) -> Vec<Option<PostSurvey>> {
        if kinds.is_empty() && !self.top.contains_key("post") {
            reader.mistake(
                0..0,
                "the survey has no [post.NAME]: each kind of post, measured once",
                "add [post.line] with girth, nominal_wall and yield",
            );
        }
        let mut posts = Vec::new();
        for (name, table, place) in kinds {
            reader.check_keys(
                table,
                POST_KEYS,
                &format!("[post.{name}]"),
                &[(RUN_ONLY_KEYS, "in a [[run]]", "move it below its [[run]]")],
                POST_RESERVED,
            );
            let layers =
                self.layers(table, &format!("[post.{name}]"), &format!("post.{name}"), place.clone());
            let post = self
                .stack("post", layers, kinds, reader)
                .and_then(|layers| post_of(name, &layers, reader, remarks));
            posts.push(post);
        }
        posts
    }
}

pub(super) fn post_of(
    name: &str,
    layers: &Layers<'_>,
    reader: &mut Reader,
    remarks: &mut Vec<Remark>,
) -> Option<PostSurvey> {
    let sizes = ["girth", "diameter", "section"];
    let given: Vec<_> = sizes
        .iter()
        .filter(|key| layers.tables.iter().any(|(table, _)| table.contains_key(**key)))
        .copied()
        .collect();
    let reserved = POST_RESERVED.iter().any(|key| layers.tables[0].0.contains_key(*key));
    match given.as_slice() {
        [_] => {}
        // A width or modulus was told already.
        [] if reserved => return None,
        [] => reader.mistake(
            layers.place.clone(),
            format!("{} has no size: lay a tape round the post, or take its outside diameter", layers.name),
            "add girth = \"9-1/16 in\" or diameter = \"2.875 in\"",
        ),
        several => reader.mistake(
            layers.place.clone(),
            format!("{} has {}: one of them says the size", layers.name, several.join(" and ")),
            "keep one",
        ),
    }
    let by_caliper = reader.choice(
        layers,
        "from",
        FROM,
        "how it was found: tape, caliper, drawing, told or guess",
        Missing::IsFine,
    ) == Some(1);
    let girth = reader.quantity::<Length>(
        layers,
        small("girth", "a tape round the post, above the concrete", "\"9-1/16 in\"", true),
        Missing::IsFine,
    );
    let mut diameter = reader.quantity::<Length>(
        layers,
        small("diameter", "outside diameter, with a caliper", "\"2.875 in\"", true),
        Missing::IsFine,
    );
    if let (Some(Reading::Measured(size)), Some((value, _))) = (diameter, reader.find(layers, "diameter"))
        && !by_caliper
        && let Some(trade) = pipe::trade_size(size)
    {
        trade_mistake(trade, value.span(), reader);
        return None;
    }
    let section = reader.text(layers, "section", "a pipe of the catalogue", Missing::IsFine);
    let mut wall_of_section = None;
    if let Some((text, at)) = section {
        let sizes =
            crate::units::read(text.trim_end_matches("post").trim_end(), crate::units::Dimension::Length)
                .ok();
        if let Some(trade) = sizes.and_then(|size| pipe::trade_size(Length::from_si(size))) {
            trade_mistake(trade, at, reader);
            return None;
        }
        let Some(pipe) = pipe::named(&text) else {
            let near = nearest(&text, pipe::all().iter().map(|pipe| pipe.name.as_str()));
            reader.mistake(
                at,
                format!("the catalogue has no pipe \"{text}\""),
                near.map_or_else(
                    || "give diameter and nominal_wall".to_owned(),
                    |near| format!("perhaps \"{near}\""),
                ),
            );
            return None;
        };
        diameter = Some(Reading::Measured(pipe.diameter));
        wall_of_section = Some(pipe.wall);
    }
    if let Some(girth) = girth {
        diameter = Some(girth.map(|girth| girth / std::f64::consts::PI));
    }
    let seamless = reader.choice(
        layers,
        "seamless",
        &["no", "yes"],
        "whether the pipe is seamless: yes or no",
        Missing::IsFine,
    ) == Some(1);
    let nominal = reader.quantity::<Length>(
        layers,
        small("nominal_wall", "wall by the label, or \"unknown\"", "\"0.203 in\"", true),
        Missing::IsFine,
    );
    let measured = reader.quantity::<Length>(
        layers,
        small("measured_wall", "wall with a caliper at an open top, or \"unknown\"", "\"0.192 in\"", true),
        Missing::IsFine,
    );
    let has = |key: &str| layers.tables.iter().any(|(table, _)| table.contains_key(key));
    let walls = usize::from(has("nominal_wall"))
        + usize::from(has("measured_wall"))
        + usize::from(wall_of_section.is_some());
    if walls > 1 {
        reader.mistake(
            layers.place.clone(),
            format!("{} has two walls: by the label or measured, one of the two", layers.name),
            "keep one",
        );
        return None;
    }
    if walls == 0 {
        reader.mistake(
            layers.place.clone(),
            format!(
                "{} has no wall: by the label of the pipe, or with a caliper at an open top",
                layers.name
            ),
            "add nominal_wall = \"unknown\" or measured_wall = \"0.192 in\"",
        );
    }
    let (basis, wall) = match (wall_of_section, nominal, measured) {
        (Some(wall), ..) => (WallBasis::Nominal, Some(Reading::Measured(wall))),
        (None, Some(nominal), _) => {
            (if seamless { WallBasis::Seamless } else { WallBasis::Nominal }, Some(nominal))
        }
        (None, None, measured) => (WallBasis::Measured, measured),
    };
    let yield_strength = reader.quantity::<Pressure>(
        layers,
        Key {
            key: "yield",
            measure: Measure::Stress,
            about: "yield strength of the steel by the mill's paper, or \"unknown\"",
            example: "\"30 ksi\"",
            sign: Sign::Positive,
            open: true,
        },
        Missing::Means("unknown"),
    );
    let rust = reader.quantity::<Length>(
        layers,
        Key {
            sign: Sign::NotNegative,
            ..small(
                "rust_at_grade",
                "thickness lost to rust at the concrete, scraped and measured",
                "\"0.01 in\"",
                true,
            )
        },
        Missing::Means("0 in"),
    );
    let note = reader.text(layers, "note", "a line of text", Missing::IsFine).map(|(text, _)| text);
    let (diameter, wall, yield_strength, rust) = (diameter?, wall?, yield_strength?, rust?);
    if matches!(diameter, Reading::Unknown) {
        reader.mistake(
            layers.place.clone(),
            format!("{} has no known diameter: a tape round the post finds it", layers.name),
            "add girth = \"9-1/16 in\"",
        );
        return None;
    }
    let post = PostSurvey {
        name: name.to_owned(),
        girth,
        diameter: Open { key: format!("post.{name}.diameter"), reading: diameter },
        basis,
        wall: Open { key: format!("post.{name}.wall"), reading: wall },
        yield_strength: Open { key: format!("post.{name}.yield"), reading: yield_strength },
        rust: Open { key: format!("post.{name}.rust_at_grade"), reading: rust },
        note,
    };
    tube_is_one(&post, layers, reader)?;
    strength_is_one(&post, layers, reader)?;
    if matches!(post.wall.reading, Reading::Unknown) {
        let pipes = post.pipes();
        let names: Vec<&str> = pipes.iter().map(|pipe| pipe.name.as_str()).collect();
        remarks.push(Remark::PipeFromCatalogue { kind: name.to_owned(), names: names.join(", ") });
        for pipe in pipes {
            let known = Remark::Catalogue { title: pipe.title.clone(), known: pipe.known.clone() };
            if !remarks.contains(&known) {
                remarks.push(known);
            }
        }
    } else if matches!(post.yield_strength.reading, Reading::Unknown) {
        remarks.push(Remark::UnknownYield { kind: name.to_owned(), because: pipe::UNKNOWN_YIELD.0.because });
    }
    Some(post)
}

/// Whether the strength rule can be worked at both ends of what is known.
fn strength_is_one(post: &PostSurvey, layers: &Layers<'_>, reader: &mut Reader) -> Option<()> {
    for end in [Extreme::Worst, Extreme::Best] {
        let kind = super::settle::kind(post, &|_| end);
        let told = match kind.tube(&mut Blank) {
            Err(error) => error.to_string(),
            Ok(tube) => match nominal_moment(tube, kind.yield_strength, &mut Blank) {
                Ok(_) => continue,
                Err(error) => format!(
                    "{error}, for a wall of {} and a yield of {}",
                    Value::new(tube.wall(), Measure::Small).written(System::Us),
                    Value::new(kind.yield_strength, Measure::Stress).written(System::Us)
                ),
            },
        };
        let at = ["rust_at_grade", "measured_wall", "nominal_wall"]
            .iter()
            .find_map(|key| layers.tables.iter().find_map(|(table, _)| table.get(*key)))
            .map_or(layers.place.clone(), toml::Spanned::span);
        reader.mistake(at, format!("{}: {told}", layers.name), "measure wall, rust and diameter again");
        return None;
    }
    Some(())
}

/// Whether every end of what was measured is a tube.
pub(super) fn tube_is_one(post: &PostSurvey, layers: &Layers<'_>, reader: &mut Reader) -> Option<()> {
    let at = |key: &str| {
        layers
            .tables
            .iter()
            .find_map(|(table, _)| table.get(key))
            .map_or(layers.place.clone(), toml::Spanned::span)
    };
    if matches!(post.wall.reading, Reading::Unknown) {
        if post.pipes().is_empty() {
            let diameter = post.diameter.reading.low()?;
            let (below, above) = pipe::neighbours(diameter);
            let sizes: Vec<String> = [below, above]
                .into_iter()
                .flatten()
                .map(|size| Value::new(size, Measure::Small).written(System::Us))
                .collect();
            reader.mistake(
                at("nominal_wall"),
                format!(
                    "the catalogue has no pipe of {}, so an unknown wall cannot be worked; its next sizes are {}",
                    Value::new(diameter, Measure::Small).written(System::Us),
                    sizes.join(" and ")
                ),
                "measure the girth again, or the wall",
            );
            return None;
        }
    } else {
        for (diameter, wall) in [
            (post.diameter.reading.low()?, post.wall.reading.high()?),
            (post.diameter.reading.low()?, post.wall.reading.low()?),
        ] {
            let tube = RoundTube::try_new(TubeSizes { diameter, wall });
            let rusted =
                tube.and_then(|tube| tube.rusted(post.rust.reading.high().unwrap_or_default(), &mut Blank));
            if let Err(error) = rusted {
                let key = if matches!(error, crate::member::MemberError::RustedThrough { .. }) {
                    "rust_at_grade"
                } else if post.basis == WallBasis::Measured {
                    "measured_wall"
                } else {
                    "nominal_wall"
                };
                reader.mistake(at(key), format!("{}: {error}", layers.name), "measure again");
                return None;
            }
        }
    }
    if matches!(post.rust.reading, Reading::Unknown) {
        reader.mistake(
            at("rust_at_grade"),
            "rust_at_grade cannot be unknown: scrape it clean and measure, or give a range",
            "like \"0.01 in .. 0.03 in\"",
        );
        return None;
    }
    Some(())
}

pub(super) fn trade_mistake(trade: pipe::TradeSize, at: Range<usize>, reader: &mut Reader) {
    let size = |length: Length| {
        let girth = Value::new(length * std::f64::consts::PI, Measure::Small).si / 0.0254;
        format!("{} (girth {girth:.2} in)", Value::new(length, Measure::Small).written(System::Us))
    };
    reader.mistake(
        at,
        format!(
            "\"{}\" is a name of the trade for two pipes: one measures {}, the other {}",
            trade.name,
            size(trade.smaller),
            size(trade.larger)
        ),
        "lay a tape round it and give girth = \"…\"",
    );
}
impl PostSurvey {
    /// The catalogue pipes this post may be.
    #[must_use]
    pub fn pipes(&self) -> Vec<&'static pipe::Pipe> {
        let (Some(low), Some(high)) = (self.diameter.reading.low(), self.diameter.reading.high()) else {
            return Vec::new();
        };
        pipe::all()
            .iter()
            .filter(|pipe| {
                pipe::of_diameter(low).chain(pipe::of_diameter(high)).any(|found| std::ptr::eq(found, *pipe))
                    || (low..=high).contains(&pipe.diameter)
            })
            .collect()
    }
}
