//! Tables of a survey as layers: a run's own keys over `[all_runs]`, changed keys over the kind they are like.

use super::keys::FROM;
use super::mistake::Mistake;
use super::reading::Reading;
use super::{AsRead, Found, Origin};
use crate::units::{Measure, Quantity, System, Unit, read};
use crate::workings::nearest;
use std::ops::Range;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// A value of a file with its place.
pub(super) type Node<'t> = &'t Spanned<DeValue<'t>>;

/// What a quantity must be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sign {
    Positive,
    NotNegative,
    Any,
}

/// What a key is for, as the messages tell it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Key {
    pub(super) key: &'static str,
    pub(super) measure: Measure,
    /// What it is for and how to measure it.
    pub(super) about: &'static str,
    /// What to write, as an example.
    pub(super) example: &'static str,
    pub(super) sign: Sign,
    /// Whether a range or "unknown" may stand.
    pub(super) open: bool,
}

/// What happens where a key is missing.
#[derive(Debug, Clone, Copy)]
pub(super) enum Missing {
    IsMistake,
    IsFine,
    /// Taken as this text.
    Means(&'static str),
}

/// A table and those behind it.
#[derive(Clone)]
pub(super) struct Layers<'t> {
    /// How messages name it.
    pub(super) name: String,
    /// The path for `--as-read`.
    pub(super) path: String,
    /// Where a missing key is told.
    pub(super) place: Range<usize>,
    pub(super) tables: Vec<(&'t DeTable<'t>, Origin)>,
    /// Which of how many alike runs this is.
    pub(super) deal: Option<(usize, usize)>,
}

/// The least and the greatest size, in SI units, that a thing measured on a fence can have; far wider than any real one,
/// so that a slip of the unit is found and nothing else.
fn plausible(measure: Measure) -> (f64, f64) {
    match measure {
        Measure::Speed => (2.0, 200.0),
        Measure::Length | Measure::Distance => (1e-3, 1000.0),
        Measure::Small => (1e-6, 3.0),
        Measure::Stress => (1e7, 3e9),
        Measure::Force => (0.1, 1e6),
        Measure::Pressure => (0.1, 1e6),
        // From 10 g to 20 kg on a square metre.
        Measure::WeightPerArea => (0.1, 200.0),
        _ => (0.0, f64::MAX),
    }
}

/// A text that is not echoed in full where it is long.
pub(super) fn shortened(text: &str) -> String {
    if text.chars().count() <= 60 {
        text.to_owned()
    } else {
        text.chars().take(57).chain("…".chars()).collect()
    }
}

/// A message without the name of the run it tells of.
fn of_any_run(what: &str) -> String {
    match what.split_once("run \"") {
        Some((before, after)) => {
            format!("{before}run{}", after.split_once('"').map_or("", |(_, rest)| rest))
        }
        None => what.to_owned(),
    }
}

/// A table as the pages name it: `screen of run "north"` is the cloth of north, `[post.newer]` posts "newer".
fn in_words(name: &str) -> String {
    if let Some(kind) = name.strip_prefix("[post.").and_then(|rest| rest.strip_suffix(']')) {
        return format!("posts \"{kind}\"");
    }
    if let Some(kind) = name.strip_prefix("[footing.").and_then(|rest| rest.strip_suffix(']')) {
        return format!("footing \"{kind}\"");
    }
    if let Some(table) = name.strip_prefix('[').and_then(|rest| rest.strip_suffix(']')) {
        return table.strip_prefix("site.").unwrap_or(table).to_owned();
    }
    let Some((things, run)) = name.split_once("run \"") else { return name.replace('_', " ") };
    let things: String = things
        .split(' ')
        .map(|thing| if thing == "screen" { "cloth".to_owned() } else { thing.replace('_', " ") })
        .collect::<Vec<_>>()
        .join(" ");
    let run = run.strip_suffix('"').unwrap_or(run);
    if things.is_empty() { format!("run {run}") } else { format!("{things}{run}") }
}

/// Reads a file and notes what is wrong with it.
pub(super) struct Reader {
    pub(super) mistakes: Vec<Mistake>,
    pub(super) as_read: Vec<AsRead>,
    /// Notes of small tables, and how things were found.
    pub(super) notes: Vec<(String, String)>,
    pub(super) found: Vec<(String, Found)>,
    /// Values whose list had the wrong length, told once.
    told: Vec<usize>,
}

impl Reader {
    pub(super) const fn new() -> Self {
        Self {
            mistakes: Vec::new(),
            as_read: Vec::new(),
            notes: Vec::new(),
            found: Vec::new(),
            told: Vec::new(),
        }
    }

    pub(super) fn mistake(&mut self, at: Range<usize>, what: impl Into<String>, write: impl Into<String>) {
        let (what, write) = (what.into(), write.into());
        let write = if write.is_empty() { None } else { Some(write) };
        // One place is told once, however many runs it was dealt to.
        let alike = |before: &Mistake| {
            before.at.as_ref() == Some(&at) && of_any_run(&before.what) == of_any_run(&what)
        };
        if !self.mistakes.iter().any(alike) {
            self.mistakes.push(Mistake { at: Some(at), what, write, meant: None });
        }
    }

    /// Tells that a table has none of some keys, unless a slip in one of its own keys stands for one of them: that
    /// was told already.
    pub(super) fn lacking(
        &mut self,
        layers: &Layers<'_>,
        keys: &[&str],
        what: impl Into<String>,
        write: impl Into<String>,
    ) {
        if !layers.tables.iter().any(|(table, _)| self.slipped(table, keys)) {
            self.mistake(layers.place.clone(), what, write);
        }
    }

    /// Whether a key of this table was told as a slip for one of these keys.
    pub(super) fn slipped(&self, table: &DeTable<'_>, keys: &[&str]) -> bool {
        table.iter().any(|(key, _)| {
            self.mistakes.iter().any(|told| {
                told.at == Some(key.span())
                    && told.meant.as_deref().is_some_and(|meant| keys.contains(&meant))
            })
        })
    }

    pub(super) fn note(&mut self, layers: &Layers<'_>, key: &str, text: String, origin: Origin) {
        self.as_read.push(AsRead { key: format!("{}.{key}", layers.path), text, origin });
    }

    /// How the thing of a table was found, kept to be printed.
    pub(super) fn found(&mut self, layers: &Layers<'_>) -> Option<Found> {
        self.found_of(&layers.name, layers)
    }

    fn found_of(&mut self, name: &str, layers: &Layers<'_>) -> Option<Found> {
        let about = "how it was found: tape, caliper, drawing, told or guess";
        let found = Found::ALL[self.choice(layers, "from", FROM, about, Missing::IsFine)?];
        let told = (in_words(name), found);
        if !self.found.contains(&told) {
            self.found.push(told);
        }
        Some(found)
    }

    /// The note of a small table and how it was found, both kept to be printed.
    pub(super) fn noted(&mut self, layers: &Layers<'_>) -> Option<String> {
        self.noted_of(&layers.name, layers)
    }

    /// The same under another name than the messages have for the table.
    pub(super) fn noted_of(&mut self, name: &str, layers: &Layers<'_>) -> Option<String> {
        let note = self.text(layers, "note", "a line of text", Missing::IsFine).map(|(note, _)| note);
        if let Some(note) = &note {
            let told = (in_words(name), note.clone());
            if !self.notes.contains(&told) {
                self.notes.push(told);
            }
        }
        self.found_of(name, layers);
        note
    }

    /// The value of a key, from the first layer that has it, dealt out where it is a list of as many.
    pub(super) fn find<'t>(&mut self, layers: &Layers<'t>, key: &str) -> Option<(Node<'t>, Origin)> {
        let (value, origin) = layers
            .tables
            .iter()
            .find_map(|(table, origin)| table.get(key).map(|value| (value, origin.clone())))?;
        let Some((which, count)) = layers.deal else { return Some((value, origin)) };
        let DeValue::Array(list) = value.get_ref() else { return Some((value, origin)) };
        let lists_of_lists = matches!(key, "bays" | "other_posts");
        if lists_of_lists && !list.iter().all(|item| matches!(item.get_ref(), DeValue::Array(_))) {
            return Some((value, origin));
        }
        if list.len() != count {
            if !self.told.contains(&value.span().start) {
                self.told.push(value.span().start);
                self.mistake(
                    value.span(),
                    format!("{key} has {} values for the {count} runs of {}", list.len(), layers.name),
                    format!("one value for all, or a list of {count}"),
                );
            }
            return None;
        }
        list.get(which).map(|item| (item, origin))
    }

    pub(super) fn told_missing<'t>(&mut self, layers: &Layers<'t>, key: &str, about: &str, example: &str) {
        // A list of the wrong length was told already.
        if layers.tables.iter().any(|(table, _)| table.get(key).is_some()) {
            return;
        }
        let example = if example.is_empty() { String::new() } else { format!("add {key} = {example}") };
        self.lacking(layers, &[key], format!("{} has no {key}: {about}", layers.name), example);
    }

    /// Text of a key.
    pub(super) fn text(
        &mut self,
        layers: &Layers<'_>,
        key: &str,
        about: &str,
        missing: Missing,
    ) -> Option<(String, Range<usize>)> {
        let Some((value, origin)) = self.find(layers, key) else {
            match missing {
                Missing::IsMistake => self.told_missing(layers, key, about, "\"…\""),
                Missing::IsFine => {}
                Missing::Means(text) => {
                    self.note(layers, key, text.to_owned(), Origin::Default);
                    return Some((text.to_owned(), layers.place.clone()));
                }
            }
            return None;
        };
        match value.get_ref() {
            DeValue::String(text) => {
                self.note(layers, key, text.to_string(), origin);
                Some((text.trim().to_owned(), value.span()))
            }
            DeValue::Datetime(date) => {
                self.note(layers, key, date.to_string(), origin);
                Some((date.to_string(), value.span()))
            }
            _ => {
                self.mistake(
                    value.span(),
                    format!("{key} of {} is text: {about}", layers.name),
                    "text in quotes",
                );
                None
            }
        }
    }

    /// A quantity of a key.
    pub(super) fn quantity<Q: Quantity>(
        &mut self,
        layers: &Layers<'_>,
        key: Key,
        missing: Missing,
    ) -> Option<Reading<Q>> {
        let Some((value, origin)) = self.find(layers, key.key) else {
            match missing {
                Missing::IsMistake => self.told_missing(layers, key.key, key.about, key.example),
                Missing::IsFine => {}
                Missing::Means(text) => {
                    self.note(layers, key.key, text.to_owned(), Origin::Default);
                    return self.reading(text, key, &layers.place);
                }
            }
            return None;
        };
        self.quantity_of(layers, value, origin, key)
    }

    /// A quantity from a value that was found.
    pub(super) fn quantity_of<Q: Quantity>(
        &mut self,
        layers: &Layers<'_>,
        value: Node<'_>,
        origin: Origin,
        key: Key,
    ) -> Option<Reading<Q>> {
        let dimension = key.measure.dimension();
        match value.get_ref() {
            DeValue::String(text) => {
                self.note(layers, key.key, text.to_string(), origin);
                self.reading(text, key, &value.span())
            }
            DeValue::Integer(_) | DeValue::Float(_) => {
                let text = match value.get_ref() {
                    DeValue::Integer(number) => number.to_string(),
                    DeValue::Float(number) => number.to_string(),
                    _ => String::new(),
                };
                if dimension == crate::units::Dimension::Ratio {
                    self.note(layers, key.key, text.clone(), origin);
                    return self.reading(&text, key, &value.span());
                }
                self.mistake(
                    value.span(),
                    format!(
                        "{} of {} is a bare number; {} needs its unit ({})",
                        key.key,
                        layers.name,
                        dimension.in_words(),
                        Unit::accepted(dimension)
                    ),
                    format!("write it in quotes, like {}", key.example),
                );
                None
            }
            _ => {
                self.mistake(
                    value.span(),
                    format!("{} of {} is {}: {}", key.key, layers.name, dimension.in_words(), key.about),
                    format!("write it in quotes, like {}", key.example),
                );
                None
            }
        }
    }

    /// A reading from its text: a value, a range, or "unknown".
    fn reading<Q: Quantity>(&mut self, text: &str, key: Key, at: &Range<usize>) -> Option<Reading<Q>> {
        let text = text.trim();
        if text.eq_ignore_ascii_case("unknown") {
            if key.open {
                return Some(Reading::Unknown);
            }
            self.mistake(
                at.clone(),
                format!("{} cannot be unknown here: {}", key.key, key.about),
                format!("measure it; like {}", key.example),
            );
            return None;
        }
        if let Some((low, high)) = text.split_once("..") {
            if !key.open {
                self.mistake(
                    at.clone(),
                    format!("{} is one value, not a range: {}", key.key, key.about),
                    "measure it, or write the less favourable end".to_owned(),
                );
                return None;
            }
            let (low, high) = (self.one(low, key, at)?, self.one(high, key, at)?);
            if low > high {
                self.mistake(
                    at.clone(),
                    format!("the range of {} runs downwards", key.key),
                    "the lesser end first",
                );
                return None;
            }
            let (low, high) = (Q::from_si(low), Q::from_si(high));
            return Some(if low.si() == high.si() {
                Reading::Measured(low)
            } else {
                Reading::Between(low, high)
            });
        }
        Some(Reading::Measured(Q::from_si(self.one(text, key, at)?)))
    }

    fn one(&mut self, text: &str, key: Key, at: &Range<usize>) -> Option<f64> {
        let si = match read(text, key.measure.dimension()) {
            Ok(si) => si,
            Err(error) => {
                self.mistake(at.clone(), format!("{}: {error}", key.key), format!("like {}", key.example));
                return None;
            }
        };
        let fits = match key.sign {
            Sign::Positive => si > 0.0,
            Sign::NotNegative => si >= 0.0,
            Sign::Any => true,
        };
        let (least, greatest) = plausible(key.measure);
        if fits && si.abs() <= greatest && (si == 0.0 || si.abs() >= least) {
            return Some(si);
        }
        if fits {
            // Three metres in inches are nobody's figure.
            let measure = match key.measure {
                Measure::Small if si > least => Measure::Length,
                measure => measure,
            };
            let written = |si| measure.write(si, System::Us);
            let bound = if si.abs() > greatest {
                format!("at most {}", written(greatest))
            } else {
                format!("at least {}", written(least))
            };
            self.mistake(
                at.clone(),
                format!("{} is {}, which no fence has: it is {bound}", key.key, shortened(text.trim())),
                "measure again, or look at the unit",
            );
            return None;
        }
        let wanted = if key.sign == Sign::Positive { "above 0" } else { "0 or more" };
        self.mistake(
            at.clone(),
            format!("{} is {}: it must be {wanted}", key.key, shortened(text.trim())),
            "measure again",
        );
        None
    }

    /// One of some words.
    pub(super) fn choice(
        &mut self,
        layers: &Layers<'_>,
        key: &str,
        words: &[&str],
        about: &str,
        missing: Missing,
    ) -> Option<usize> {
        if words.contains(&"yes")
            && let Some((value, origin)) = self.find(layers, key)
            && let DeValue::Boolean(yes) = value.get_ref()
        {
            let word = if *yes { "yes" } else { "no" };
            self.note(layers, key, word.to_owned(), origin);
            return words.iter().position(|one| *one == word);
        }
        let (text, at) = self.text(layers, key, about, missing)?;
        if let Some(found) = words.iter().position(|word| word.eq_ignore_ascii_case(&text)) {
            return Some(found);
        }
        let near = nearest(&text, words.iter().copied());
        self.mistake(
            at,
            format!("{key} of {} is \"{text}\", which is none of {}", layers.name, words.join(", ")),
            near.map_or_else(|| about.to_owned(), |near| format!("perhaps \"{near}\"")),
        );
        None
    }

    /// Tells every key of a table that is not known, with the nearest that is.
    ///
    /// `elsewhere` lists keys that belong to another table, with that place and what to do.
    pub(super) fn check_keys(
        &mut self,
        table: &DeTable<'_>,
        known: &[&str],
        name: &str,
        elsewhere: &[(&[&str], &str, &str)],
        reserved: &[&str],
    ) {
        for (key, _) in table {
            let (word, at) = (key.get_ref().as_ref(), key.span());
            if known.contains(&word) {
                continue;
            }
            if reserved.contains(&word) {
                self.mistake(
                    at,
                    format!("{word} of {name} is reserved and is not read by this version"),
                    "take it out; where the fence cannot be told without it, an engineer decides",
                );
            } else if let Some((_, place, write)) = elsewhere.iter().find(|(keys, ..)| keys.contains(&word)) {
                self.mistake(at, format!("{word} stands in {name} but belongs {place}"), *write);
            } else {
                let near = nearest(word, known.iter().copied());
                self.mistake(
                    at,
                    format!("{name} has no key {word}"),
                    near.map_or_else(
                        || format!("known are {}", known.join(", ")),
                        |near| format!("perhaps {near}"),
                    ),
                );
                if let Some(last) = self.mistakes.last_mut() {
                    last.meant = near.map(str::to_owned);
                }
            }
        }
    }
}
