//! The survey file: its tables, the kinds and the runs, noting every mistake.

use super::corners::corners;
use super::keys::*;
use super::layers::{Layers, Missing, Node, Reader};
use super::mistake::{Mistake, Mistakes};
use super::post::PostKinds;
use super::reading::Reading;
use super::run::RunReader;
use super::{FootingSurvey, Job, Origin, PostSurvey, RunSurvey, Survey};
use crate::caution::Remark;
use crate::member::Format;
use crate::units::System;
use crate::wind::SiteKey;
use crate::workings::nearest;
use sha2::{Digest, Sha256};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::ops::Range;
use toml::de::{DeTable, DeValue};

impl Survey {
    /// Reads a survey from the text of its file; `file` is how messages name it.
    ///
    /// # Errors
    /// Every mistake, each with its line.
    pub fn read(text: &str, file: &str) -> Result<Self, Mistakes> {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let mut reader = Reader::new();
        let survey = if text.trim().is_empty() {
            reader.mistakes.push(Mistake {
                at: None,
                what: "the file is empty: a survey begins with the line  survey = 1".to_owned(),
                write: None,
                meant: None,
            });
            None
        } else {
            read_text(text, &mut reader)
        };
        let mut mistakes = reader.mistakes;
        // Where a slip stands for a whole table, what that table holds is not missing as well.
        let meant: Vec<String> = mistakes.iter().filter_map(|mistake| mistake.meant.clone()).collect();
        let all = meant
            .iter()
            .any(|key| ["[all_runs]", "[run]", "[post]", "[screen]", "[site]"].contains(&key.as_str()));
        mistakes.retain(|mistake| {
            mistake.lacks().is_none_or(|lacks| !all && !meant.iter().any(|key| key == &format!("[{lacks}]")))
        });
        match survey {
            Some(survey) if mistakes.is_empty() => Ok(survey),
            _ => {
                mistakes.sort_by_key(|mistake| mistake.at.as_ref().map_or(0, |at| at.start));
                Err(Mistakes { file: file.to_owned(), text: text.to_owned(), mistakes })
            }
        }
    }
}

pub(super) fn read_text(text: &str, reader: &mut Reader) -> Option<Survey> {
    let (table, errors) = DeTable::parse_recoverable(text);
    let line_of =
        |at: usize| text.as_bytes()[..at.min(text.len())].iter().filter(|byte| **byte == b'\n').count();
    let mut broken: Vec<usize> = Vec::new();
    for error in &errors {
        let at = error.span().unwrap_or(0..0);
        if broken.contains(&line_of(at.start)) {
            continue;
        }
        broken.push(line_of(at.start));
        let from = text[..at.start].rfind('\n').map_or(0, |end| end + 1);
        let line = text[from..].lines().next().unwrap_or_default();
        if line.contains(['“', '”', '„', '‘', '’']) {
            reader.mistake(at, "curly quotes stand round a value", "type straight quotes: \" \"");
        } else {
            reader.mistake(at, format!("this is no TOML: {}", error.message()), "");
        }
    }
    let before = reader.mistakes.len();
    let survey = File::new(table.get_ref(), reader).survey(text, reader);
    if !broken.is_empty() {
        // What a broken line leaves out is not missing, and what stands on it was told.
        let mut at = 0;
        reader.mistakes.retain(|mistake| {
            at += 1;
            let line = mistake.at.as_ref().map(|at| line_of(at.start));
            at <= before
                || !(mistake.what.contains(" has no ")
                    && mistake.write.as_deref().is_none_or(|write| write.starts_with("add ")))
                    && line.is_none_or(|line| !broken.contains(&line))
        });
    }
    survey
}

/// The tables of the file.
pub(super) struct File<'t> {
    pub(super) top: &'t DeTable<'t>,
    pub(super) empty: &'t DeTable<'t>,
}

pub(super) type Kinds<'t> = Vec<(String, &'t DeTable<'t>, Range<usize>)>;

static EMPTY: std::sync::LazyLock<DeTable<'static>> = std::sync::LazyLock::new(DeTable::new);

impl<'t> File<'t> {
    pub(super) fn new(top: &'t DeTable<'t>, reader: &mut Reader) -> Self {
        reader.check_keys(top, TOP_KEYS, "the survey", NOT_AT_THE_TOP, &["judgement", "seen"]);
        // A slip stands for a table only where a table stands.
        for (key, value) in top {
            let is_table = matches!(value.get_ref(), DeValue::Table(_) | DeValue::Array(_));
            if let Some(slip) = reader.mistakes.iter_mut().find(|mistake| mistake.at == Some(key.span())) {
                slip.meant =
                    slip.meant.take().map(|meant| if is_table { format!("[{meant}]") } else { meant });
            }
        }
        Self { top, empty: &EMPTY }
    }

    pub(super) fn table(&self, key: &str, reader: &mut Reader) -> Option<(&'t DeTable<'t>, Range<usize>)> {
        let value = self.top.get(key)?;
        match value.get_ref() {
            DeValue::Table(table) => Some((table, value.span())),
            _ => {
                reader.mistake(
                    value.span(),
                    format!("{key} is a table: its keys stand below the line [{key}]"),
                    "",
                );
                None
            }
        }
    }

    /// The kinds under a key, in the order of the file.
    pub(super) fn kinds(&self, key: &str, reader: &mut Reader) -> Kinds<'t> {
        let Some((table, _)) = self.table(key, reader) else { return Vec::new() };
        let mut kinds = Kinds::new();
        for (name, value) in table {
            match value.get_ref() {
                DeValue::Table(table) => kinds.push((name.get_ref().to_string(), table, name.span())),
                _ => reader.mistake(
                    name.span(),
                    format!("{key} has names below it: [{key}.NAME], and {} is none", name.get_ref()),
                    format!("write [{key}.{}] or move it below one", name.get_ref()),
                ),
            }
        }
        kinds.sort_by_key(|(_, _, span)| span.start);
        kinds
    }

    pub(super) fn survey(&self, text: &str, reader: &mut Reader) -> Option<Survey> {
        self.format(reader);
        let top = self.layers(self.top, "the survey", "survey", 0..0);
        let units = match reader.choice(
            &top,
            "units",
            &["us", "si"],
            "how results are written: us or si",
            Missing::Means("us"),
        ) {
            Some(1) => System::Si,
            _ => System::Us,
        };
        let job = self.job(reader);
        let site = self.site(reader);
        let order = self.order(reader);
        let mut remarks = Vec::new();
        let post_kinds = self.kinds("post", reader);
        let posts = self.posts(&post_kinds, reader, &mut remarks);
        let posts = RefCell::new(PostKinds::new(post_kinds, posts));
        let mut footings = Vec::new();
        let runs = self.runs(&posts, &mut footings, reader, &mut remarks);
        let PostKinds { surveys: posts, remarks: in_place, .. } = posts.into_inner();
        for remark in in_place {
            if !remarks.contains(&remark) {
                remarks.push(remark);
            }
        }
        let site = site?;
        let given = |key: &str| {
            self.top
                .get("site")
                .is_some_and(|site| matches!(site.get_ref(), DeValue::Table(site) if site.contains_key(key)))
        };
        // Neither a factor nor a hill: nobody looked whether there is one.
        let silent =
            |key: &SiteKey| key.instead_of.is_some_and(|(factor, _)| !given(factor)) && !given(key.key);
        if site.code.site_keys().iter().any(silent) {
            remarks.push(Remark::Hill);
        }
        if matches!(site.wind_speed.reading, Reading::Unknown) {
            remarks.push(Remark::NoSpeed);
        }
        if site.format == Format::Asd {
            remarks.push(Remark::AllowableStress);
        }
        let posts: Option<Vec<PostSurvey>> = posts.into_iter().collect();
        let digest = Sha256::digest(text.as_bytes());
        let hash = digest.iter().take(8).fold(String::new(), |mut hash, byte| {
            let _ = write!(hash, "{byte:02x}");
            hash
        });
        Some(Survey {
            units,
            job,
            site,
            posts: posts?,
            footings,
            runs: runs?,
            order: order?,
            as_read: std::mem::take(&mut reader.as_read),
            notes: std::mem::take(&mut reader.notes),
            found: std::mem::take(&mut reader.found),
            remarks,
            hash,
        })
    }

    /// In which units results are written; what is wrong with the key is told where it is read.
    pub(super) fn system(&self) -> System {
        let units = self.top.get("units").and_then(|units| units.get_ref().as_str()).unwrap_or_default();
        if units.trim().eq_ignore_ascii_case(System::Si.key()) { System::Si } else { System::Us }
    }

    pub(super) fn layers(
        &self,
        table: &'t DeTable<'t>,
        name: &str,
        path: &str,
        place: Range<usize>,
    ) -> Layers<'t> {
        Layers {
            name: name.to_owned(),
            path: path.to_owned(),
            place,
            tables: vec![(table, Origin::Here)],
            deal: None,
        }
    }

    pub(super) fn format(&self, reader: &mut Reader) {
        match self.top.get("survey") {
            None => reader.mistakes.push(Mistake {
                at: Some(0..0),
                what: "the survey does not say its format".to_owned(),
                write: Some("add survey = 1 as the first line".to_owned()),
                meant: None,
            }),
            Some(value) => match value.get_ref() {
                DeValue::Integer(number) if number.to_string() == "1" => {}
                _ => reader.mistake(value.span(), "this version reads surveys of format 1", "survey = 1"),
            },
        }
    }

    pub(super) fn job(&self, reader: &mut Reader) -> Job {
        let Some((table, span)) = self.table("job", reader) else { return Job::default() };
        reader.check_keys(
            table,
            JOB_KEYS,
            "[job]",
            &[(&["survey", "units"], "at the top of the file, above the first [table]", "move it up")],
            &[],
        );
        let layers = self.layers(table, "[job]", "job", span);
        let mut text =
            |key| reader.text(&layers, key, "a line of text", Missing::IsFine).map(|(text, _)| text);
        Job {
            title: text("title"),
            prepared_for: text("prepared_for"),
            measured_by: text("measured_by"),
            date: text("date"),
            note: text("note"),
        }
    }
    pub(super) fn from(&self, layers: &Layers<'t>, reader: &mut Reader) {
        reader.found(layers);
    }

    /// A table and those it is like, in one stack; a circle or a name that is nowhere is a mistake.
    pub(super) fn stack(
        &self,
        what: &str,
        layers: Layers<'t>,
        kinds: &Kinds<'t>,
        reader: &mut Reader,
    ) -> Option<Layers<'t>> {
        let mut layers = layers;
        let mut seen: Vec<String> = Vec::new();
        loop {
            let (table, _) = layers.tables.last()?;
            let Some(like) = table.get("like") else { return Some(layers) };
            let DeValue::String(name) = like.get_ref() else {
                reader.mistake(
                    like.span(),
                    format!("like names a kind of {what}"),
                    format!("like = \"NAME\" of [{what}.NAME]"),
                );
                return None;
            };
            let name = name.to_string();
            if seen.contains(&name) {
                reader.mistake(
                    like.span(),
                    format!("like goes in a circle: {} is like {}", name, seen.join(", which is like ")),
                    "let one of them stand for itself",
                );
                return None;
            }
            let Some((_, table, _)) = kinds.iter().find(|(kind, ..)| *kind == name) else {
                unknown_kind(what, &name, kinds.iter().map(|(name, ..)| name.as_str()), like.span(), reader);
                return None;
            };
            layers.tables.push((table, Origin::Kind(name.clone())));
            seen.push(name);
        }
    }
    pub(super) fn runs(
        &self,
        posts: &RefCell<PostKinds<'t>>,
        feet: &mut Vec<FootingSurvey>,
        reader: &mut Reader,
        remarks: &mut Vec<Remark>,
    ) -> Option<Vec<RunSurvey>> {
        let screens = self.kinds("screen", reader);
        for (name, table, _) in &screens {
            self.screen_keys(table, &format!("[screen.{name}]"), reader);
        }
        let footings = self.kinds("footing", reader);
        for (name, table, _) in &footings {
            reader.check_keys(table, FOOTING_KEYS, &format!("[footing.{name}]"), &[], &[]);
        }
        let all = self.table("all_runs", reader).map(|(table, _)| {
            reader.check_keys(table, RUN_KEYS, "[all_runs]", &[IN_ITS_SCREEN], &[]);
            for key in ["name", "bays"] {
                if let Some((key, _)) = table.get_key_value(key) {
                    reader.mistake(
                        key.span(),
                        format!("{} belongs to one run", key.get_ref()),
                        "move it to its [[run]]",
                    );
                }
            }
            table
        });
        let list = match self.top.get("run") {
            Some(value) => match value.get_ref() {
                DeValue::Array(list) => list,
                _ => {
                    reader.mistake(
                        value.span(),
                        "each run begins with the line [[run]], in double brackets",
                        "[[run]]",
                    );
                    return None;
                }
            },
            None => {
                reader.mistake(
                    0..0,
                    "the survey has no [[run]]: each straight side of fence",
                    "add [[run]] with name, bays and ends",
                );
                return None;
            }
        };
        if list.is_empty() {
            let run = self.top.get("run").map_or(0..0, toml::Spanned::span);
            reader.mistake(
                run,
                "the survey has no run: each straight side of fence is one",
                "add [[run]] with name, bays and ends",
            );
            return None;
        }
        let mut drafts = Vec::new();
        let mut whole = true;
        for (at, item) in list.iter().enumerate() {
            let DeValue::Table(table) = item.get_ref() else {
                reader.mistake(
                    item.span(),
                    "each run begins with the line [[run]], in double brackets",
                    "[[run]]",
                );
                whole = false;
                continue;
            };
            let shown = format!("run {}", at + 1);
            reader.check_keys(
                table,
                RUN_KEYS,
                &shown,
                &[(&["survey", "units"], "at the top of the file", "move it up"), IN_ITS_SCREEN],
                &[],
            );
            let names = run_names(table, &shown, item.span(), reader);
            let listed = table.get("name").is_some_and(|name| matches!(name.get_ref(), DeValue::Array(_)));
            for (which, name) in names.iter().enumerate() {
                let layers = Layers {
                    name: format!("run \"{name}\""),
                    path: format!("run.{name}"),
                    place: item.span(),
                    tables: std::iter::once((table, Origin::Here))
                        .chain(all.map(|all| (all, Origin::AllRuns)))
                        .collect(),
                    deal: listed.then_some((which, names.len())),
                };
                let draft = RunReader { file: self, layers, posts, screens: &screens, footings: &footings }
                    .draft(name, feet, reader, remarks);
                match draft {
                    Some(draft) => drafts.push(draft),
                    None => whole = false,
                }
            }
        }
        let mut seen: BTreeMap<String, ()> = BTreeMap::new();
        for draft in &drafts {
            if seen.insert(draft.survey.run.name.clone(), ()).is_some() {
                reader.mistake(
                    draft.place.clone(),
                    format!("two runs are called \"{}\"", draft.survey.run.name),
                    "give each its own name",
                );
                whole = false;
            }
        }
        // A corner can be looked for only when every run was read.
        if !whole {
            return None;
        }
        corners(drafts, feet, reader, remarks)
    }
}

pub(super) fn unknown_kind<'n>(
    what: &str,
    name: &str,
    known: impl Iterator<Item = &'n str> + Clone,
    at: Range<usize>,
    reader: &mut Reader,
) {
    let near = nearest(name, known.clone());
    let all: Vec<_> = known.collect();
    let write = match (near, all.is_empty()) {
        (Some(near), _) => format!("perhaps \"{near}\""),
        (None, true) => format!("add [{what}.{name}]"),
        (None, false) => format!("known are {}", all.join(", ")),
    };
    reader.mistake(at, format!("there is no [{what}.{name}]"), write);
}

/// Signs that turn the direction of a line and would shuffle what is printed after them.
fn turns_the_line(sign: char) -> bool {
    matches!(sign, '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}

/// Signs of no width.
fn is_invisible(sign: char) -> bool {
    matches!(sign, '\u{200B}'..='\u{200F}' | '\u{2060}' | '\u{FEFF}')
}

pub(super) fn run_names(
    table: &DeTable<'_>,
    shown: &str,
    place: Range<usize>,
    reader: &mut Reader,
) -> Vec<String> {
    let Some(value) = table.get("name") else {
        if !reader.slipped(table, &["name"]) {
            reader.mistake(
                place,
                format!("{shown} has no name: what the crew calls this side"),
                "add name = \"north end\"",
            );
        }
        return vec![shown.to_owned()];
    };
    let mut names = Vec::new();
    let mut take = |value: Node<'_>, reader: &mut Reader| match value.get_ref().as_str().map(str::trim) {
        Some(name) if name.chars().any(|sign| sign.is_control() || turns_the_line(sign)) => {
            reader.mistake(
                value.span(),
                format!("the name of {shown} has a sign that cannot be printed"),
                "one line of text",
            );
        }
        Some(name) if name.chars().any(|sign| !sign.is_whitespace() && !is_invisible(sign)) => {
            names.push(name.to_owned())
        }
        _ => reader.mistake(
            value.span(),
            format!("the name of {shown} is text a crew can read"),
            "name = \"north end\"",
        ),
    };
    match value.get_ref() {
        DeValue::Array(list) if list.is_empty() => {
            reader.mistake(
                value.span(),
                format!("{shown} has an empty list of names"),
                "name = \"north end\"",
            );
        }
        DeValue::Array(list) => list.iter().for_each(|item| take(item, reader)),
        _ => take(value, reader),
    }
    if names.is_empty() { vec![shown.to_owned()] } else { names }
}
