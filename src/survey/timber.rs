//! Timber posts in a survey: size, species and grade, wet or dry, incised or not.

use super::layers::{Layers, Missing, Reader};
use super::post::at;
use super::reading::{Extreme, Reading};
use super::settle::weaker;
use super::{Open, TimberSurvey};
use crate::caution::Remark;
use crate::member::nds_2018::{Service, Timber, TimberInService, WIND_DURATION, timbers};
use crate::member::{TimberPost, TimberSizes};
use crate::units::{Length, Quantity};
use crate::workings::{Blank, nearest};

const ABOUT_SIZE: &str = "its name, \"4x4\" or \"6x6\", or the side as it measures";

/// Southern Pine takes treatment without being incised.
///
/// # Source
/// NDS 2018 4.3.8, second-hand: two open libraries keep the incising factor from it.
const NEVER_INCISED: &str = "Southern Pine";

/// A timber post from its keys; `name` is that of its kind.
pub(super) fn timber_of(name: &str, layers: &Layers<'_>, reader: &mut Reader) -> Option<TimberSurvey> {
    let side = side_of(layers, reader);
    let species =
        one_of(layers, "species", "the wood, by the grade stamp, or \"unknown\"", reader, |row| &row.species);
    let grade = one_of(layers, "grade", "by the grade stamp, or \"unknown\"", reader, |row| &row.grade);
    let answer = |key: &str, words: &[&str], about: &str, usual: &'static str, reader: &mut Reader| {
        let found = reader.choice(layers, key, words, about, Missing::Means(usual))?;
        let reading = match found {
            0 => Reading::Measured(false),
            1 => Reading::Measured(true),
            _ => Reading::Unknown,
        };
        Some(Open { key: format!("post.{name}.{key}"), reading })
    };
    let about = "whether the post stands wet: in the ground or in concrete it does";
    let wet = answer("service", &["dry", "wet", "unknown"], about, "wet", reader);
    let about = "whether its faces were slit for treatment: yes, no or \"unknown\"";
    let incised = answer("incised", &["no", "yes", "unknown"], about, "unknown", reader);
    let (side, species, grade) = (side?, species?, grade?);
    let candidates: Vec<&'static Timber> = timbers()
        .iter()
        .filter(|row| species.as_ref().is_none_or(|species| *species == row.species))
        .filter(|row| grade.as_ref().is_none_or(|grade| *grade == row.grade))
        .collect();
    let survey = TimberSurvey {
        side: Open { key: format!("post.{name}.timber"), reading: side },
        key: format!("post.{name}.species"),
        candidates,
        wet: wet?,
        incised: incised?,
    };
    for end in [Extreme::Worst, Extreme::Best] {
        if survey.found(&|_| end).is_none() {
            reader.mistake(
                at("timber", layers),
                format!(
                    "{}: the catalogue has no such timber of this size; it has 4 in (3 to 4 in thick) and posts \
                     of 5 in (4.5 in dressed) and larger",
                    layers.name
                ),
                "give moment = \"…\" from an engineer, or another size",
            );
            return None;
        }
    }
    Some(survey)
}

/// The side of a square timber: by its name, or measured.
fn side_of(layers: &Layers<'_>, reader: &mut Reader) -> Option<Reading<Length>> {
    let measured = super::keys::small("timber", ABOUT_SIZE, "\"6x6\"", true);
    if let Some((value, origin)) = reader.find(layers, "timber")
        && let Some(text) = value.get_ref().as_str()
        && let name = text.trim().to_lowercase().replace(' ', "")
        && let Some((breadth, depth)) = name.split_once('x')
        && breadth.parse::<f64>().is_ok()
        && depth.parse::<f64>().is_ok()
    {
        let Some(post) = TimberPost::dressed(&name) else {
            reader.mistake(
                value.span(),
                format!("no dressed size of a \"{name}\" is at hand: {ABOUT_SIZE}"),
                "measure it: timber = \"5.5 in\"",
            );
            return None;
        };
        reader.note(layers, "timber", text.to_owned(), origin);
        return Some(Reading::Measured(post.breadth()));
    }
    let side = reader.quantity::<Length>(layers, measured, Missing::IsMistake)?;
    if matches!(side, Reading::Unknown) {
        reader.mistake(
            at("timber", layers),
            "the size of a timber cannot be unknown: measure it",
            "like \"6x6\"",
        );
        return None;
    }
    Some(side)
}

/// A word of a column of the catalogue, or nothing where it is not known.
fn one_of(
    layers: &Layers<'_>,
    key: &str,
    about: &str,
    reader: &mut Reader,
    column: fn(&'static Timber) -> &'static String,
) -> Option<Option<String>> {
    let (text, at) = reader.text(layers, key, about, Missing::Means("unknown"))?;
    if text.eq_ignore_ascii_case("unknown") {
        return Some(None);
    }
    let mut words: Vec<&str> = timbers().iter().map(|row| column(row).as_str()).collect();
    words.sort_unstable();
    words.dedup();
    if let Some(word) = words.iter().find(|word| word.eq_ignore_ascii_case(&text)) {
        return Some(Some((*word).to_owned()));
    }
    let near = nearest(&text, words.iter().copied());
    reader.mistake(
        at,
        format!("{key} of {} is \"{text}\"; the catalogue has {}", layers.name, words.join(", ")),
        near.map_or_else(
            || "or give moment = \"…\" from an engineer".to_owned(),
            |near| format!("perhaps \"{near}\""),
        ),
    );
    None
}

impl TimberSurvey {
    /// The timber at the ends asked for: of what it may be, the weakest or the strongest.
    pub(super) fn settled(&self, end: &dyn Fn(&str) -> Extreme) -> TimberInService {
        self.found(end).expect("reading a survey refuses a timber that is not in the catalogue")
    }

    fn found(&self, end: &dyn Fn(&str) -> Extreme) -> Option<TimberInService> {
        let side = weaker(&self.side, end)?;
        let post = TimberPost::try_new(TimberSizes { breadth: side, depth: side }).ok()?;
        let answer = |open: &Open<bool>| match open.reading {
            Reading::Measured(is) => is,
            _ => end(&open.key) == Extreme::Worst,
        };
        let candidates = self.candidates.iter().filter_map(|row| {
            let never = row.species == NEVER_INCISED && self.incised.reading == Reading::Unknown;
            let timber = TimberInService {
                post,
                values: row.values,
                service: if answer(&self.wet) { Service::Wet } else { Service::Dry },
                incised: answer(&self.incised) && !never,
                duration: WIND_DURATION,
            };
            // A row whose table is for other sizes is no candidate.
            let moment = timber.allowable_moment(&mut Blank).ok()?;
            Some((moment.si(), timber))
        });
        let order = |one: &(f64, TimberInService), other: &(f64, TimberInService)| one.0.total_cmp(&other.0);
        let chosen = match end(&self.key) {
            Extreme::Worst => candidates.min_by(order),
            Extreme::Best => candidates.max_by(order),
        };
        chosen.map(|(_, timber)| timber)
    }

    pub(super) fn open_keys(&self, name: &str, add: &mut impl FnMut(bool, &str, String)) {
        add(
            !self.side.reading.is_point(),
            &self.side.key,
            format!("the side of posts \"{name}\", above the concrete"),
        );
        add(
            self.found(&|_| Extreme::Worst).map(|timber| timber.values)
                != self
                    .found(&|key| if key == self.key { Extreme::Best } else { Extreme::Worst })
                    .map(|timber| timber.values),
            &self.key,
            format!("species and grade of posts \"{name}\", by their grade stamp"),
        );
        add(!self.wet.reading.is_point(), &self.wet.key, format!("whether posts \"{name}\" stand wet"));
        let never = self.candidates.iter().all(|row| row.species == NEVER_INCISED);
        add(
            !self.incised.reading.is_point() && !never,
            &self.incised.key,
            format!("whether posts \"{name}\" were incised: rows of small slits in their faces"),
        );
    }

    /// What reading it raises.
    pub(super) fn remarks(&self, kind: &str) -> Vec<Remark> {
        let mut rows: Vec<String> = Vec::new();
        for end in [Extreme::Worst, Extreme::Best] {
            let Some(timber) = self.found(&|_| end) else { continue };
            let row = self.candidates.iter().find(|row| row.values == timber.values);
            let told = row.map(|row| format!("{} {} ({})", row.species, row.grade, row.known));
            rows.extend(told.filter(|told| !rows.contains(told)));
        }
        vec![Remark::Timber { kind: kind.to_owned(), rows }]
    }
}
