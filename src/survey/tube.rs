//! Steel tube in a survey: its size, wall, grade and rust.

use super::keys::*;
use super::layers::{Key, Layers, Missing, Reader, Sign};
use super::post::at;
use super::reading::Reading;
use super::{Open, TubeSurvey, WallBasis};
use crate::caution::Remark;
use crate::fence::{PostError, Tube, Wall};
use crate::member::{MemberError, RoundTube, SquareSizes, SquareTube, TubeSizes, pipe};
use crate::source::Stated;
use crate::units::{Length, Measure, Pressure, Quantity, System, Value};
use crate::workings::{Blank, nearest};
use std::ops::Range;

/// A tube from its keys; `name` is that of its kind.
pub(super) fn tube_of(
    name: &str,
    layers: &Layers<'_>,
    by_caliper: bool,
    reader: &mut Reader,
) -> Option<TubeSurvey> {
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
    let width = reader.quantity::<Length>(
        layers,
        small("width", "outside width of a square tube, with a caliper", "\"2.5 in\"", true),
        Missing::IsFine,
    );
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
    let (basis, wall) = match wall_of(layers, wall_of_section, reader) {
        WallRead::Is(basis, wall) => (basis, Some(wall)),
        WallRead::Wrong => return None,
        WallRead::Lacks => {
            reader.lacking(
                layers,
                &["nominal_wall", "measured_wall"],
                format!(
                    "{} has no wall: by the label of the pipe, or with a caliper at an open top",
                    layers.name
                ),
                "add nominal_wall = \"unknown\" or measured_wall = \"0.192 in\"",
            );
            (WallBasis::Measured, None)
        }
    };
    let yield_strength = reader.quantity::<Pressure>(layers, YIELD, Missing::Means("unknown"));
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
    let (across, wall, yield_strength, rust) = (diameter.or(width)?, wall?, yield_strength?, rust?);
    if matches!(across, Reading::Unknown) {
        reader.mistake(
            layers.place.clone(),
            if width.is_some() {
                format!("{} has no known width: a caliper across the post finds it", layers.name)
            } else {
                format!("{} has no known diameter: a tape round the post finds it", layers.name)
            },
            if width.is_some() { "add width = \"2.5 in\"" } else { "add girth = \"9-1/16 in\"" },
        );
        return None;
    }
    let tube = TubeSurvey {
        is_square: width.is_some(),
        girth,
        across: Open {
            key: format!("post.{name}.{}", if width.is_some() { "width" } else { "diameter" }),
            reading: across,
        },
        basis,
        wall: Open { key: format!("post.{name}.wall"), reading: wall },
        yield_strength: Open { key: format!("post.{name}.yield"), reading: yield_strength },
        rust: Open { key: format!("post.{name}.rust_at_grade"), reading: rust },
    };
    tube_is_one(&tube, layers, reader)?;
    Some(tube)
}

/// The wall of a tube, as far as it was written.
pub(super) enum WallRead {
    Is(WallBasis, Reading<Length>),
    /// None was written.
    Lacks,
    /// What was written was told as a mistake.
    Wrong,
}

/// The wall of a tube from its keys; `of_section` is that of a pipe of the catalogue named there.
pub(super) fn wall_of(layers: &Layers<'_>, of_section: Option<Length>, reader: &mut Reader) -> WallRead {
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
    match (of_section, has("nominal_wall"), has("measured_wall")) {
        (Some(wall), false, false) => WallRead::Is(WallBasis::Nominal, Reading::Measured(wall)),
        (None, true, false) => nominal.map_or(WallRead::Wrong, |nominal| {
            WallRead::Is(if seamless { WallBasis::Seamless } else { WallBasis::Nominal }, nominal)
        }),
        (None, false, true) => {
            measured.map_or(WallRead::Wrong, |measured| WallRead::Is(WallBasis::Measured, measured))
        }
        (None, false, false) => WallRead::Lacks,
        _ => {
            reader.mistake(
                layers.place.clone(),
                format!("{} has two walls: by the label or measured, one of the two", layers.name),
                "keep one",
            );
            WallRead::Wrong
        }
    }
}

/// Whether every end of what was measured is a tube.
pub(super) fn tube_is_one(post: &TubeSurvey, layers: &Layers<'_>, reader: &mut Reader) -> Option<()> {
    if matches!(post.wall.reading, Reading::Unknown) {
        catalogue_has_it(post, layers, reader)?;
    } else {
        let across = post.across.reading.low()?;
        for wall in [post.wall.reading.high()?, post.wall.reading.low()?] {
            let Err(error) = post.tube(across, wall) else { continue };
            let key = if matches!(error, MemberError::RustedThrough { .. }) {
                "rust_at_grade"
            } else if post.basis == WallBasis::Measured {
                "measured_wall"
            } else {
                "nominal_wall"
            };
            reader.mistake(at(key, layers), format!("{}: {error}", layers.name), "measure again");
            return None;
        }
    }
    if matches!(post.rust.reading, Reading::Unknown) {
        reader.mistake(
            at("rust_at_grade", layers),
            "rust_at_grade cannot be unknown: scrape it clean and measure, or give a range",
            "like \"0.01 in .. 0.03 in\"",
        );
        return None;
    }
    Some(())
}

/// Whether the catalogue has pipe of this size, so that its walls can be tried.
fn catalogue_has_it(post: &TubeSurvey, layers: &Layers<'_>, reader: &mut Reader) -> Option<()> {
    let key = if post.basis == WallBasis::Measured { "measured_wall" } else { "nominal_wall" };
    if post.is_square {
        reader.mistake(
            at(key, layers),
            format!("{key} of {} cannot be unknown: no catalogue of square tube is at hand", layers.name),
            "measure it with a caliper, or give a range",
        );
        return None;
    }
    if !post.pipes().is_empty() {
        return Some(());
    }
    let diameter = post.across.reading.low()?;
    let (below, above) = pipe::neighbours(diameter);
    let sizes: Vec<String> = [below, above]
        .into_iter()
        .flatten()
        .map(|size| Value::new(size, Measure::Small).written(System::Us))
        .collect();
    reader.mistake(
        at("nominal_wall", layers),
        format!(
            "the catalogue has no pipe of {}, so an unknown wall cannot be worked; its next sizes are {}",
            Value::new(diameter, Measure::Small).written(System::Us),
            sizes.join(" and ")
        ),
        "measure the girth again, or the wall",
    );
    None
}

/// Why a post or a rail has no strength, with the sizes that a rule refuses.
pub(super) fn with_sizes(tube: Option<&Tube>, error: &PostError) -> String {
    let (Some(tube), PostError::OutOfRange(_)) = (tube, error) else { return error.to_string() };
    let (Wall::Nominal(wall) | Wall::Seamless(wall) | Wall::Measured(wall)) = tube.wall;
    format!(
        "{error}, for a wall of {} and a yield of {}",
        Value::new(wall, Measure::Small).written(System::Us),
        Value::new(tube.yield_strength, Measure::Stress).written(System::Us)
    )
}

fn trade_mistake(trade: pipe::TradeSize, at: Range<usize>, reader: &mut Reader) {
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

impl TubeSurvey {
    /// Whether these sizes are a tube when rust has done its worst.
    fn tube(&self, across: Length, wall: Length) -> Result<(), MemberError> {
        let rust = self.rust.reading.high().unwrap_or_default();
        if self.is_square {
            let sizes = SquareSizes { width: across, wall, corner: None };
            SquareTube::try_new(sizes)?.rusted(rust, &mut Blank).map(|_| ())
        } else {
            let sizes = TubeSizes { diameter: across, wall };
            RoundTube::try_new(sizes)?.rusted(rust, &mut Blank).map(|_| ())
        }
    }

    /// The yields it may have where no grade is known.
    pub(super) const fn unknown_yield(&self) -> (Stated<Pressure>, Stated<Pressure>) {
        if self.is_square { pipe::UNKNOWN_YIELD_OF_SQUARE } else { pipe::UNKNOWN_YIELD }
    }

    /// The catalogue pipes this post may be.
    #[must_use]
    pub fn pipes(&self) -> Vec<&'static pipe::Pipe> {
        let (Some(low), Some(high)) = (self.across.reading.low(), self.across.reading.high()) else {
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

    /// What reading it raises; `kind` is what it is called there.
    pub(super) fn remarks(&self, kind: &str) -> Vec<Remark> {
        let kind = kind.to_owned();
        if !matches!(self.wall.reading, Reading::Unknown) {
            return if matches!(self.yield_strength.reading, Reading::Unknown) {
                vec![Remark::UnknownYield { kind, because: self.unknown_yield().0.because }]
            } else {
                Vec::new()
            };
        }
        let pipes = self.pipes();
        let names: Vec<&str> = pipes.iter().map(|pipe| pipe.name.as_str()).collect();
        let mut remarks = vec![Remark::PipeFromCatalogue { kind, names: names.join(", ") }];
        for pipe in pipes {
            let known = Remark::Catalogue { title: pipe.title.clone(), known: pipe.known.clone() };
            if !remarks.contains(&known) {
                remarks.push(known);
            }
        }
        remarks
    }
}
