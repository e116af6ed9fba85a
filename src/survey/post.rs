//! The kinds of posts of a survey.

use super::file::{File, Kinds};
use super::keys::*;
use super::layers::{Key, Layers, Missing, Reader, Sign};
use super::reading::{Extreme, Reading};
use super::{Found, ModulusSurvey, MomentSurvey, Open, PostSurvey, SectionSurvey};
use crate::caution::Remark;
use crate::fence::Section;
use crate::member::Format;
use crate::units::{Length, Measure, Moment, Pressure, Quantity, SectionModulus};
use crate::workings::Blank;
use std::ops::Range;
use toml::de::{DeTable, DeValue};

/// What the size of a post makes of it, and with it which other keys belong to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Family {
    Tube,
    Modulus,
    Moment,
    Timber,
}

impl Family {
    const ALL: [Self; 4] = [Self::Tube, Self::Modulus, Self::Moment, Self::Timber];

    fn of(size: &str) -> Self {
        match size {
            "modulus" => Self::Modulus,
            "moment" => Self::Moment,
            "timber" => Self::Timber,
            _ => Self::Tube,
        }
    }

    /// The keys that belong to it beside its size.
    const fn keys(self) -> &'static [&'static str] {
        match self {
            Self::Tube => &["nominal_wall", "measured_wall", "seamless", "yield", "rust_at_grade"],
            Self::Modulus => &["yield", "face_width"],
            Self::Moment => &["moment_is", "face_width"],
            Self::Timber => &["species", "grade", "service", "incised"],
        }
    }
}

impl<'t> File<'t> {
    pub(super) fn posts(
        &self,
        kinds: &Kinds<'t>,
        reader: &mut Reader,
        remarks: &mut Vec<Remark>,
    ) -> Vec<Option<PostSurvey>> {
        let stands = self.top.get("post").map(|value| (value.span(), value.get_ref()));
        // Of anything but a table it was told that it is none.
        let is_told = stands
            .as_ref()
            .is_some_and(|(_, value)| !matches!(value, DeValue::Table(table) if table.is_empty()));
        if kinds.is_empty() && !is_told && !self.has_posts_in_place() {
            reader.mistake(
                stands.map_or(0..0, |(at, _)| at),
                "the survey has no [post.NAME]: each kind of post, measured once",
                "add [post.line] with girth, nominal_wall and yield",
            );
        }
        let mut posts = Vec::new();
        for (name, table, place) in kinds {
            self.post_keys(table, &format!("[post.{name}]"), reader);
            let layers =
                self.layers(table, &format!("[post.{name}]"), &format!("post.{name}"), place.clone());
            let post = self
                .stack("post", layers, kinds, reader)
                .and_then(|layers| post_of(name, &layers, reader, remarks));
            posts.push(post);
        }
        posts
    }

    /// Whether a run writes a post where it stands.
    pub(super) fn has_posts_in_place(&self) -> bool {
        let runs = self.top.get("run").and_then(|runs| runs.get_ref().as_array());
        let all = self.top.get("all_runs");
        runs.into_iter().flatten().chain(all).filter_map(|run| run.get_ref().as_table()).any(|run| {
            POSTS_OF_A_RUN.iter().any(|key| run.get(*key).is_some_and(|post| is_in_place(post.get_ref())))
        })
    }

    fn post_keys(&self, table: &'t DeTable<'t>, name: &str, reader: &mut Reader) {
        reader.check_keys(
            table,
            POST_KEYS,
            name,
            &[
                (RUN_ONLY_KEYS, "in a [[run]]", "move it below its [[run]]"),
                (&["design"], "in [site]", "move it below [site]: one format for the whole fence"),
            ],
            POST_RESERVED,
        );
    }

    /// A post that a run writes in place, or of a kind with some keys changed: a kind of its own, read once however
    /// many runs it is dealt to.
    pub(super) fn post_in_place(
        &self,
        layers: Layers<'t>,
        key: &str,
        known: &mut PostKinds<'t>,
        reader: &mut Reader,
    ) -> Option<usize> {
        if let Some(before) = known.in_place.iter().position(|(at, _)| *at == layers.place) {
            return known.in_place[before].1;
        }
        let (table, _) = layers.tables.first()?;
        self.post_keys(table, &layers.name, reader);
        let like = table.get("like").and_then(|like| like.get_ref().as_str());
        let name =
            known.free_name(&like.map_or_else(|| key.replace('_', " "), |like| format!("{like}, changed")));
        let place = layers.place.clone();
        let layers = Layers { path: format!("post.{name}"), ..layers };
        let post = self
            .stack("post", layers, &known.kinds, reader)
            .and_then(|layers| post_of(&name, &layers, reader, &mut known.remarks));
        let found = post.map(|post| {
            known.names.push(name);
            known.surveys.push(Some(post));
            known.names.len() - 1
        });
        known.in_place.push((place, found));
        found
    }
}

/// Whether this is a post written in place, or holds one: other posts stand one table deeper.
fn is_in_place(value: &DeValue<'_>) -> bool {
    match value {
        DeValue::Array(list) => list.iter().any(|item| is_in_place(item.get_ref())),
        DeValue::Table(table) if table.contains_key("numbers") => {
            table.get("post").is_some_and(|post| is_in_place(post.get_ref()))
        }
        value => matches!(value, DeValue::Table(_)),
    }
}

/// The kinds of posts that are known so far: those below `[post]`, and after them those that runs write in place.
pub(super) struct PostKinds<'t> {
    pub(super) kinds: Kinds<'t>,
    pub(super) names: Vec<String>,
    pub(super) surveys: Vec<Option<PostSurvey>>,
    /// What those written in place raise.
    pub(super) remarks: Vec<Remark>,
    in_place: Vec<(Range<usize>, Option<usize>)>,
}

impl<'t> PostKinds<'t> {
    pub(super) fn new(kinds: Kinds<'t>, surveys: Vec<Option<PostSurvey>>) -> Self {
        let names = kinds.iter().map(|(name, ..)| name.clone()).collect();
        Self { kinds, names, surveys, remarks: Vec::new(), in_place: Vec::new() }
    }

    /// The only kind that has a name, if there is but one.
    pub(super) fn only(&self) -> Option<usize> {
        (self.kinds.len() == 1).then_some(0)
    }

    pub(super) fn named(&self, name: &str) -> Option<usize> {
        self.kinds.iter().position(|(kind, ..)| kind == name)
    }

    fn free_name(&self, wanted: &str) -> String {
        let mut name = wanted.to_owned();
        for number in 2.. {
            if !self.names.contains(&name) {
                break;
            }
            name = format!("{wanted} {number}");
        }
        name
    }
}

fn post_of(
    name: &str,
    layers: &Layers<'_>,
    reader: &mut Reader,
    remarks: &mut Vec<Remark>,
) -> Option<PostSurvey> {
    let size = size_of(layers, reader)?;
    let by_caliper = reader.found(layers) == Some(Found::Caliper);
    let family = Family::of(size);
    foreign_keys(family, size, layers, reader);
    let section = match family {
        Family::Tube => super::tube::tube_of(name, layers, by_caliper, reader).map(SectionSurvey::Tube),
        Family::Modulus => modulus_of(name, layers, reader).map(SectionSurvey::Modulus),
        Family::Moment => moment_of(name, layers, reader).map(SectionSurvey::Moment),
        Family::Timber => super::timber::timber_of(name, layers, reader).map(SectionSurvey::Timber),
    };
    let note = reader.text(layers, "note", "a line of text", Missing::IsFine).map(|(text, _)| text);
    let post = PostSurvey { name: name.to_owned(), section: section?, note };
    strength_is_one(&post, layers, reader)?;
    for remark in post.remarks() {
        // One publication is told once.
        if !remarks.contains(&remark) {
            remarks.push(remark);
        }
    }
    Some(post)
}

/// The one key that says the size.
fn size_of<'k>(layers: &Layers<'_>, reader: &mut Reader) -> Option<&'k str> {
    let given: Vec<_> = POST_SIZES
        .iter()
        .filter(|key| layers.tables.iter().any(|(table, _)| table.contains_key(**key)))
        .copied()
        .collect();
    match given.as_slice() {
        [one] => return Some(one),
        [] => reader.lacking(
            layers,
            POST_SIZES,
            format!("{} has no size: lay a tape round the post, or take its outside diameter", layers.name),
            "add girth = \"9-1/16 in\" or diameter = \"2.875 in\"",
        ),
        several => reader.mistake(
            layers.place.clone(),
            format!("{} has {}: one of them says the size", layers.name, several.join(" and ")),
            "keep one",
        ),
    }
    // What else is wrong with a tube is told all the same.
    if given.iter().all(|size| Family::of(size) == Family::Tube) {
        let _ = super::tube::tube_of("", layers, false, reader);
    }
    None
}

/// Keys that belong to a post of another size.
fn foreign_keys(family: Family, size: &str, layers: &Layers<'_>, reader: &mut Reader) {
    let other = |key: &str| {
        Family::ALL.iter().any(|other| other.keys().contains(&key)) && !family.keys().contains(&key)
    };
    for (table, _) in &layers.tables {
        for (key, _) in *table {
            if other(key.get_ref()) {
                reader.mistake(
                    key.span(),
                    format!("{} does not go with {size}, which says what {} is", key.get_ref(), layers.name),
                    "take one of them out",
                );
            }
        }
    }
}

fn face_of(layers: &Layers<'_>, reader: &mut Reader) -> Option<Length> {
    let face = small("face_width", "the width of the post that the wind sees", "\"2.25 in\"", false);
    reader.quantity::<Length>(layers, face, Missing::IsMistake)?.low()
}

fn modulus_of(name: &str, layers: &Layers<'_>, reader: &mut Reader) -> Option<ModulusSurvey> {
    let modulus = reader.quantity::<SectionModulus>(
        layers,
        Key {
            key: "modulus",
            measure: Measure::SectionModulus,
            about: "effective section modulus of the post for wind square on the fence, by its maker",
            example: "\"1.08 in3\"",
            sign: Sign::Positive,
            open: true,
        },
        Missing::IsMistake,
    );
    let yield_strength = reader.quantity::<Pressure>(layers, YIELD, Missing::IsMistake);
    let face = face_of(layers, reader);
    let (modulus, yield_strength, face) = (modulus?, yield_strength?, face?);
    for (key, unknown) in [
        ("modulus", matches!(modulus, Reading::Unknown)),
        ("yield", matches!(yield_strength, Reading::Unknown)),
    ] {
        if unknown {
            told_unknown(key, layers, reader);
            return None;
        }
    }
    Some(ModulusSurvey {
        face,
        modulus: Open { key: format!("post.{name}.modulus"), reading: modulus },
        yield_strength: Open { key: format!("post.{name}.yield"), reading: yield_strength },
    })
}

fn moment_of(name: &str, layers: &Layers<'_>, reader: &mut Reader) -> Option<MomentSurvey> {
    let moment = reader.quantity::<Moment>(
        layers,
        Key {
            key: "moment",
            measure: Measure::Moment,
            about: "the bending moment the post may carry at grade, by its maker or an engineer",
            example: "\"2100 lb-ft\"",
            sign: Sign::Positive,
            open: true,
        },
        Missing::IsMistake,
    );
    let format = reader
        .choice(
            layers,
            "moment_is",
            &["design", "allowable"],
            "\"design\" for a strength with its resistance factor, \"allowable\" for a moment at service level: \
             whoever gave the moment knows which",
            Missing::IsMistake,
        )
        .map(|at| Format::ALL[at]);
    let face = face_of(layers, reader);
    let moment = moment?;
    if matches!(moment, Reading::Unknown) {
        told_unknown("moment", layers, reader);
        return None;
    }
    Some(MomentSurvey {
        face: face?,
        moment: Open { key: format!("post.{name}.moment"), reading: moment },
        format: format?,
    })
}

/// Without a catalogue to fall back on nothing can be worked.
fn told_unknown(key: &str, layers: &Layers<'_>, reader: &mut Reader) {
    reader.mistake(
        at(key, layers),
        format!("{key} of {} cannot be unknown: no catalogue has such posts", layers.name),
        "ask its maker, or give a range",
    );
}

/// The place of a key's value, or of its table.
pub(super) fn at(key: &str, layers: &Layers<'_>) -> Range<usize> {
    layers
        .tables
        .iter()
        .find_map(|(table, _)| table.get(key))
        .map_or(layers.place.clone(), toml::Spanned::span)
}

/// Whether the strength rule can be worked at both ends of what is known.
fn strength_is_one(post: &PostSurvey, layers: &Layers<'_>, reader: &mut Reader) -> Option<()> {
    // Shear asks for the height of the fence, and is given at any.
    let height = Length::from_si(1.0);
    for end in [Extreme::Worst, Extreme::Best] {
        for format in Format::ALL {
            let kind = super::settle::kind(post, format, &|_| end);
            let Err(error) = kind.strength(height, &mut Blank) else { continue };
            let at = ["rust_at_grade", "measured_wall", "nominal_wall", "timber"]
                .iter()
                .find_map(|key| layers.tables.iter().find_map(|(table, _)| table.get(*key)))
                .map_or(layers.place.clone(), toml::Spanned::span);
            let tube = if let Section::Tube(tube) = &kind.section { Some(tube) } else { None };
            let told = super::tube::with_sizes(tube, &error);
            reader.mistake(
                at,
                format!("{}: {told}", layers.name),
                if matches!(post.section, SectionSurvey::Timber(_)) {
                    "measure its sides"
                } else {
                    "measure wall, rust and diameter again"
                },
            );
            return None;
        }
    }
    Some(())
}

impl PostSurvey {
    /// What reading it raises.
    fn remarks(&self) -> Vec<Remark> {
        match &self.section {
            SectionSurvey::Tube(tube) => tube.remarks(&format!("post \"{}\"", self.name)),
            SectionSurvey::Modulus(_) => vec![Remark::OpenShape { kind: self.name.clone() }],
            SectionSurvey::Moment(moment) => {
                vec![Remark::GivenMoment { kind: self.name.clone(), format: moment.format }]
            }
            SectionSurvey::Timber(timber) => timber.remarks(&self.name),
        }
    }
}
