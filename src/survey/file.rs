//! The survey file: reads the tables of a TOML file into a [`Survey`], noting every mistake.

use super::layers::{Key, Layers, Missing, Node, Reader, Sign};
use super::mistake::{Mistake, Mistakes};
use super::reading::Reading;
use super::{Job, Open, Origin, PostSurvey, RunSurvey, SiteReading, SiteSurvey, Survey, WallBasis};
use crate::caution::Remark;
use crate::fence::{Bay, CornerTo, End, Post, Rails, Role, Run, Screen, Shared, Windows};
use crate::member::{RoundTube, TubeSizes, pipe};
use crate::screen::{self, ChainLink, wire_of_gauge};
use crate::units::{Length, Measure, Pressure, Quantity, System, Value, Velocity};
use crate::wind::{Code, KeyKind};
use crate::workings::{Blank, nearest};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::ops::Range;
use toml::de::{DeTable, DeValue};

const TOP_KEYS: &[&str] = &["survey", "units", "job", "site", "post", "screen", "footing", "all_runs", "run"];
const JOB_KEYS: &[&str] = &["title", "prepared_for", "measured_by", "date", "note"];
const SITE_KEYS: &[&str] =
    &["wind_code", "wind_speed", "wind_speed_source", "risk_category", "soil", "note", "from"];
const POST_KEYS: &[&str] = &[
    "girth",
    "diameter",
    "section",
    "nominal_wall",
    "measured_wall",
    "seamless",
    "yield",
    "rust_at_grade",
    "note",
    "from",
    "like",
];
const POST_RESERVED: &[&str] = &["width", "modulus", "moment", "design", "condition"];
const SCREEN_KEYS: &[&str] = &[
    "cloth",
    "solidity",
    "density",
    "colour",
    "height",
    "bottom",
    "top",
    "face",
    "fastening",
    "vents",
    "bays",
    "note",
    "from",
    "like",
];
const FASTENING_KEYS: &[&str] = &["kind", "strength", "rope", "spacing", "rows", "note", "from"];
const VENT_KEYS: &[&str] = &["width", "height", "per_bay", "note"];
const FOOTING_KEYS: &[&str] = &["shape", "width", "depth", "note", "from", "like"];
const RUN_ONLY_KEYS: &[&str] = &["name", "court", "faces", "bays", "other_posts", "start", "finish"];
const RUN_KEYS: &[&str] = &[
    "name",
    "court",
    "faces",
    "bays",
    "ends",
    "start",
    "finish",
    "screen",
    "other_posts",
    "height",
    "top_rail",
    "mid_rail",
    "bottom_rail",
    "chain_link",
    "footing",
    "line_post",
    "end_post",
    "corner_post",
    "gate_post",
    "note",
    "from",
];
const RUN_RESERVED: &[&str] = &["base_above_ground", "brace", "guy", "condition"];
const FROM: &[&str] = &["tape", "caliper", "drawing", "told", "guess"];
/// More bays than any fence has: a slip of the finger, not a run.
const MOST_BAYS: usize = 2000;

const HEIGHT: Key = Key {
    key: "height",
    measure: Measure::Length,
    about: "from the ground to the top rail, with a tape",
    example: "\"10 ft\"",
    sign: Sign::Positive,
    open: false,
};
const SMALL: Key = Key {
    key: "diameter",
    measure: Measure::Small,
    about: "outside diameter, with a caliper, or a tape round it divided by 3.1416",
    example: "\"1.660 in\"",
    sign: Sign::Positive,
    open: false,
};

const fn length(key: &'static str, about: &'static str, example: &'static str) -> Key {
    Key { key, about, example, ..HEIGHT }
}
const fn small(key: &'static str, about: &'static str, example: &'static str, open: bool) -> Key {
    Key { key, about, example, open, ..SMALL }
}

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
            });
            None
        } else {
            read_text(text, &mut reader)
        };
        let mut mistakes = reader.mistakes;
        match survey {
            Some(survey) if mistakes.is_empty() => Ok(survey),
            _ => {
                mistakes.sort_by_key(|mistake| mistake.at.as_ref().map_or(0, |at| at.start));
                Err(Mistakes { file: file.to_owned(), text: text.to_owned(), mistakes })
            }
        }
    }
}

fn read_text(text: &str, reader: &mut Reader) -> Option<Survey> {
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
struct File<'t> {
    top: &'t DeTable<'t>,
    empty: &'t DeTable<'t>,
}

type Kinds<'t> = Vec<(String, &'t DeTable<'t>, Range<usize>)>;

static EMPTY: std::sync::LazyLock<DeTable<'static>> = std::sync::LazyLock::new(DeTable::new);

impl<'t> File<'t> {
    fn new(top: &'t DeTable<'t>, reader: &mut Reader) -> Self {
        reader.check_keys(top, TOP_KEYS, "the survey", &[], &["judgement", "seen"]);
        Self { top, empty: &EMPTY }
    }

    fn table(&self, key: &str, reader: &mut Reader) -> Option<(&'t DeTable<'t>, Range<usize>)> {
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
    fn kinds(&self, key: &str, reader: &mut Reader) -> Kinds<'t> {
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

    fn survey(&self, text: &str, reader: &mut Reader) -> Option<Survey> {
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
        let mut remarks = Vec::new();
        let post_kinds = self.kinds("post", reader);
        let posts = self.posts(&post_kinds, reader, &mut remarks);
        let names: Vec<String> = post_kinds.iter().map(|(name, ..)| name.clone()).collect();
        let runs = self.runs(&names, reader, &mut remarks);
        let site = site?;
        if !self.top.get("site").is_some_and(
            |site| matches!(site.get_ref(), DeValue::Table(site) if site.contains_key("topographic_factor")),
        ) && site.code.site_keys().iter().any(|key| key.key == "topographic_factor")
        {
            remarks.push(Remark::Hill);
        }
        if matches!(site.wind_speed.reading, Reading::Unknown) {
            remarks.push(Remark::NoSpeed);
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
            runs: runs?,
            as_read: std::mem::take(&mut reader.as_read),
            remarks,
            hash,
        })
    }

    fn layers(&self, table: &'t DeTable<'t>, name: &str, path: &str, place: Range<usize>) -> Layers<'t> {
        Layers {
            name: name.to_owned(),
            path: path.to_owned(),
            place,
            tables: vec![(table, Origin::Here)],
            deal: None,
        }
    }

    fn format(&self, reader: &mut Reader) {
        match self.top.get("survey") {
            None => reader.mistakes.push(Mistake {
                at: Some(0..0),
                what: "the survey has no survey: the format of the file".to_owned(),
                write: Some("add survey = 1 as the first line".to_owned()),
            }),
            Some(value) => match value.get_ref() {
                DeValue::Integer(number) if number.to_string() == "1" => {}
                _ => reader.mistake(value.span(), "this version reads surveys of format 1", "survey = 1"),
            },
        }
    }

    fn job(&self, reader: &mut Reader) -> Job {
        let Some((table, span)) = self.table("job", reader) else { return Job::default() };
        reader.check_keys(
            table,
            JOB_KEYS,
            "[job]",
            &[(&["survey", "units"], "at the top of the file, above the first [table]")],
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

    fn site(&self, reader: &mut Reader) -> Option<SiteSurvey> {
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
        let above = (&["survey", "units"][..], "at the top of the file, above the first [table]");
        reader.check_keys(table, &known, "[site]", &[above], &["also", "hill", "design"]);
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
        let risk_category = text(reader, "risk_category");
        let note = text(reader, "note");
        self.from(&layers, reader);
        let soil = self.soil(&layers, reader);
        let code = code?;
        let mut values = Vec::new();
        for key in code.site_keys() {
            values.push(Open {
                key: format!("site.{}", key.key),
                reading: self.site_value(&layers, key, reader)?,
            });
        }
        Some(SiteSurvey {
            code,
            wind_speed: Open { key: "site.wind_speed".to_owned(), reading: wind_speed? },
            wind_speed_source,
            risk_category,
            values,
            soil,
            note,
        })
    }

    fn site_value(
        &self,
        layers: &Layers<'t>,
        key: &crate::wind::SiteKey,
        reader: &mut Reader,
    ) -> Option<Reading<SiteReading>> {
        match key.kind {
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
                                format!("{} \"{text}\" is none of {}", key.key, words.join(", ")),
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
                    example: if measure == Measure::Ratio { "1.0" } else { "\"340 ft\"" },
                    sign: Sign::Any,
                    open: true,
                };
                let Some((value, origin)) = reader.find(layers, key.key) else {
                    let default = default?;
                    reader.note(layers, key.key, default.written(System::Us), Origin::Default);
                    return Some(Reading::Measured(SiteReading::Quantity(default.si)));
                };
                let reading = quantity_in_si(reader, layers, value, origin, what)?;
                if let (Some((least, greatest)), Some(low), Some(high)) =
                    (key.range, reading.low(), reading.high())
                    && !(least <= low && high <= greatest)
                {
                    let written = |si| measure.write(si, System::Us);
                    reader.mistake(
                        value.span(),
                        format!("{} must lie between {} and {}", key.key, written(least), written(greatest)),
                        key.about,
                    );
                    return None;
                }
                Some(reading.map(SiteReading::Quantity))
            }
        }
    }

    fn soil(&self, layers: &Layers<'t>, reader: &mut Reader) -> Option<String> {
        let (value, origin) = reader.find(layers, "soil")?;
        match value.get_ref() {
            DeValue::String(text) => {
                reader.note(layers, "soil", text.to_string(), origin);
                Some(text.to_string())
            }
            DeValue::Table(table) => {
                reader.check_keys(table, &["lateral_bearing", "class", "note", "from"], "soil", &[], &[]);
                let soil = self.layers(table, "soil", "site.soil", value.span());
                let bearing = Key {
                    key: "lateral_bearing",
                    measure: Measure::PressurePerDepth,
                    about: "lateral bearing of the soil for each depth, from the code's table or a report",
                    example: "\"150 psf/ft\"",
                    sign: Sign::Positive,
                    open: true,
                };
                let _ = reader.quantity::<crate::units::PressurePerDepth>(&soil, bearing, Missing::IsFine);
                reader
                    .find(&soil, "lateral_bearing")
                    .or_else(|| reader.find(&soil, "class"))
                    .and_then(|(value, _)| value.get_ref().as_str().map(str::to_owned))
            }
            _ => {
                reader.mistake(
                    value.span(),
                    "soil is { lateral_bearing = \"…\" }, { class = \"…\" } or \"unknown\"",
                    "",
                );
                None
            }
        }
    }

    fn from(&self, layers: &Layers<'t>, reader: &mut Reader) -> Option<usize> {
        reader.choice(
            layers,
            "from",
            FROM,
            "how it was found: tape, caliper, drawing, told or guess",
            Missing::IsFine,
        )
    }

    /// A table and those it is like, in one stack; a circle or a name that is nowhere is a mistake.
    fn stack(
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

    fn posts(
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
                &[(RUN_ONLY_KEYS, "in a [[run]]")],
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

    fn runs(
        &self,
        posts: &[String],
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
            reader.check_keys(table, RUN_KEYS, "[all_runs]", &[], RUN_RESERVED);
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
                &[
                    (&["survey", "units"], "at the top of the file"),
                    (&["solidity", "cloth"], "in its screen"),
                ],
                RUN_RESERVED,
            );
            let names = run_names(table, &shown, item.span(), reader);
            for (which, name) in names.iter().enumerate() {
                let layers = Layers {
                    name: format!("run \"{name}\""),
                    path: format!("run.{name}"),
                    place: item.span(),
                    tables: std::iter::once((table, Origin::Here))
                        .chain(all.map(|all| (all, Origin::AllRuns)))
                        .collect(),
                    deal: (names.len() > 1).then_some((which, names.len())),
                };
                let draft = RunReader { file: self, layers, posts, screens: &screens, footings: &footings }
                    .draft(name, reader, remarks);
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
        corners(drafts, reader, remarks)
    }

    fn screen_keys(&self, table: &'t DeTable<'t>, name: &str, reader: &mut Reader) {
        reader.check_keys(
            table,
            SCREEN_KEYS,
            name,
            &[
                (RUN_ONLY_KEYS, "to the run, above the screen's own table"),
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
                    ],
                    "to the run, above the screen's own table",
                ),
            ],
            &["iced"],
        );
    }
}

fn quantity_in_si(
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

fn unknown_kind<'n>(
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

fn run_names(table: &DeTable<'_>, shown: &str, place: Range<usize>, reader: &mut Reader) -> Vec<String> {
    let Some(value) = table.get("name") else {
        reader.mistake(
            place,
            format!("{shown} has no name: what the crew calls this side"),
            "add name = \"north end\"",
        );
        return vec![shown.to_owned()];
    };
    let mut names = Vec::new();
    let mut take = |value: Node<'_>, reader: &mut Reader| match value.get_ref().as_str().map(str::trim) {
        Some(name) if !name.is_empty() => names.push(name.to_owned()),
        _ => reader.mistake(value.span(), format!("the name of {shown} is text"), "name = \"north end\""),
    };
    match value.get_ref() {
        DeValue::Array(list) => list.iter().for_each(|item| take(item, reader)),
        _ => take(value, reader),
    }
    if names.is_empty() { vec![shown.to_owned()] } else { names }
}

fn post_of(
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

/// Whether every end of what was measured is a tube.
fn tube_is_one(post: &PostSurvey, layers: &Layers<'_>, reader: &mut Reader) -> Option<()> {
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

/// One run, as it is read.
struct RunReader<'f, 't> {
    file: &'f File<'t>,
    layers: Layers<'t>,
    posts: &'f [String],
    screens: &'f Kinds<'t>,
    footings: &'f Kinds<'t>,
}

/// A run whose corners are not yet found.
struct Draft {
    survey: RunSurvey,
    start: DraftEnd,
    finish: DraftEnd,
    place: Range<usize>,
}

#[derive(Clone)]
enum DraftEnd {
    Free,
    Corner(Range<usize>),
    Return(Length),
}

impl<'t> RunReader<'_, 't> {
    fn draft(self, name: &str, reader: &mut Reader, remarks: &mut Vec<Remark>) -> Option<Draft> {
        let layers = &self.layers;
        let court = reader
            .text(layers, "court", "which court it belongs to", Missing::IsFine)
            .map_or_else(String::new, |(text, _)| text);
        let faces = self.faces(reader);
        let height =
            reader.quantity::<Length>(layers, HEIGHT, Missing::IsMistake).and_then(|reading| reading.low());
        let chain_link = self.chain_link(reader);
        let rails = Rails {
            top: self.rail("top_rail", reader),
            middle: self.rail("mid_rail", reader),
            bottom: self.rail("bottom_rail", reader),
        };
        let footing = self.footing(reader);
        let bays = self.bays(reader);
        let line = self.post("line_post", "the kind of post between the ends", reader);
        let end = self.post("end_post", "the kind of post at the ends and corners", reader);
        let corner = if self.has("corner_post") {
            self.post("corner_post", "the kind of post at corners", reader)
        } else {
            end
        };
        let gate = if self.has("gate_post") {
            self.post("gate_post", "the kind of post beside gates", reader)
        } else {
            end
        };
        let start = self.end("start", reader);
        let finish = self.end("finish", reader);
        let others = self.others(bays.as_ref().map_or(0, |bays| bays.len() + 1), bays.is_some(), reader);
        let note = reader.text(layers, "note", "a line of text", Missing::IsFine);
        self.file.from(layers, reader);
        let screen = self.screen(height, bays.as_ref().map(Vec::len), reader, remarks);
        let (height, bays, chain_link) = (height?, bays?, chain_link?);
        let (line, end, corner, gate) = (line?, end?, corner?, gate?);
        let (start, finish, screen, others) = (start?, finish?, screen?, others?);
        let mut posts = vec![Length::default()];
        for bay in &bays {
            posts.push(*posts.last()? + bay.width);
        }
        let last = posts.len() - 1;
        let role = |at: usize| {
            let terminal =
                |end: &DraftEnd| if matches!(end, DraftEnd::Free) { Role::End } else { Role::Corner };
            match at {
                0 => terminal(&start),
                at if at == last => terminal(&finish),
                at if bays[at - 1].gate || bays[at].gate => Role::Gate,
                _ => Role::Line,
            }
        };
        let posts = posts
            .iter()
            .enumerate()
            .map(|(at, place)| {
                let role = role(at);
                let kind = match role {
                    Role::Line => line,
                    Role::End => end,
                    Role::Corner => corner,
                    Role::Gate => gate,
                };
                let kind =
                    others.iter().find(|(number, _)| *number == at + 1).map_or(kind, |(_, kind)| *kind);
                Post { at: *place, role, kind, shared_with: None }
            })
            .collect();
        if bays.iter().any(|bay| bay.gate) {
            remarks.push(Remark::Gate { run: name.to_owned() });
        }
        let mut notes = Vec::new();
        if let Some((note, _)) = note {
            notes.push((format!("run {name}"), note));
        }
        let (cloth, solidity, fastening, hung) =
            match screen {
                None => (None, None, None, None),
                Some(read) => {
                    if bays.iter().enumerate().any(|(at, bay)| {
                        bay.gate && (read.screen.first_bay..read.screen.end_bay).contains(&at)
                    }) {
                        remarks.push(Remark::ClothOnGate { run: name.to_owned() });
                    }
                    notes.extend(read.note.map(|note| (format!("cloth of {name}"), note)));
                    (
                        read.cloth,
                        Some(Open { key: format!("run.{name}.solidity"), reading: read.solidity }),
                        read.fastening,
                        Some(read.screen),
                    )
                }
            };
        let run = Run {
            name: name.to_owned(),
            height,
            chain_link,
            rails,
            bays,
            posts,
            screen: hung,
            start: End::Free,
            finish: End::Free,
        };
        Some(Draft {
            survey: RunSurvey { court, faces, run, solidity, cloth, notes, footing, fastening },
            start,
            finish,
            place: self.layers.place.clone(),
        })
    }

    fn has(&self, key: &str) -> bool {
        self.layers.tables.iter().any(|(table, _)| table.contains_key(key))
    }

    fn faces(&self, reader: &mut Reader) -> Option<String> {
        let (text, at) =
            reader.text(&self.layers, "faces", "the compass side the fence looks out to", Missing::IsFine)?;
        if compass(&text).is_some() {
            return Some(text.to_lowercase());
        }
        reader.mistake(
            at,
            format!("faces \"{text}\" is no compass side"),
            format!("one of {}", COMPASS.join(", ")),
        );
        None
    }

    fn chain_link(&self, reader: &mut Reader) -> Option<Option<ChainLink>> {
        const ABOUT: &str = "the steel mesh: clear between two parallel wires, and the wire's gauge or its thickness over the coating";
        let Some((value, origin)) = reader.find(&self.layers, "chain_link") else {
            if !self.has("chain_link") {
                reader.mistake(
                    self.layers.place.clone(),
                    format!("{} has no chain_link: {ABOUT}", self.layers.name),
                    "add chain_link = { mesh = \"1-3/4 in\", wire = \"9 gauge\" } or \"none\"",
                );
            }
            return None;
        };
        let table = match value.get_ref() {
            DeValue::String(text) if text.trim().eq_ignore_ascii_case("none") => {
                reader.note(&self.layers, "chain_link", "none".to_owned(), origin);
                return Some(None);
            }
            DeValue::Table(table) => table,
            _ => {
                reader.mistake(
                    value.span(),
                    format!("chain_link is a table or \"none\": {ABOUT}"),
                    "{ mesh = \"1-3/4 in\", wire = \"9 gauge\" }",
                );
                return None;
            }
        };
        reader.check_keys(table, &["mesh", "wire", "face", "note", "from"], "chain_link", &[], &[]);
        let layers =
            Layers { tables: vec![(table, origin)], deal: None, ..self.part("chain_link", value.span()) };
        let _ = reader.choice(
            &layers,
            "face",
            &["inside", "outside"],
            "the side of the posts it hangs on",
            Missing::IsFine,
        );
        let mesh = reader.quantity::<Length>(
            &layers,
            small("mesh", "clear between two parallel wires", "\"1-3/4 in\"", false),
            Missing::IsMistake,
        );
        let wire = self.wire(&layers, reader);
        Some(Some(ChainLink { mesh: mesh?.low()?, wire: wire? }))
    }

    fn wire(&self, layers: &Layers<'t>, reader: &mut Reader) -> Option<Length> {
        let (text, at) = reader.text(
            layers,
            "wire",
            "its gauge, or its thickness over the coating",
            Missing::IsMistake,
        )?;
        let lower = text.to_lowercase();
        if let Some(gauge) = lower.strip_suffix("gauge").or_else(|| lower.strip_suffix("ga")) {
            let found = crate::units::read_number(gauge.trim()).ok().and_then(wire_of_gauge);
            if found.is_none() {
                reader.mistake(
                    at,
                    format!("wire \"{text}\": gauges known are 6, 9, 11 and 11-1/2"),
                    "measure it: \"0.148 in\"",
                );
            }
            return found.map(|(wire, _)| wire);
        }
        match crate::units::read(&text, crate::units::Dimension::Length) {
            Ok(si) if si > 0.0 => Some(Length::from_si(si)),
            Ok(_) => {
                reader.mistake(at, format!("wire is {text}: it must be above 0"), "");
                None
            }
            Err(error) => {
                reader.mistake(at, format!("wire: {error}"), "like \"9 gauge\" or \"0.148 in\"");
                None
            }
        }
    }

    fn rail(&self, key: &'static str, reader: &mut Reader) -> Option<Length> {
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
                reader.check_keys(
                    table,
                    &["diameter", "note", "from"],
                    key,
                    &[],
                    &["wall", "nominal_wall", "yield", "splice"],
                );
                let layers =
                    Layers { tables: vec![(table, origin)], deal: None, ..self.part(key, value.span()) };
                reader.quantity::<Length>(&layers, SMALL, Missing::IsMistake)?.low()
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

    fn footing(&self, reader: &mut Reader) -> Option<String> {
        let (value, origin) = reader.find(&self.layers, "footing")?;
        let layers = match value.get_ref() {
            DeValue::String(text) if text.trim().eq_ignore_ascii_case("unknown") => {
                reader.note(&self.layers, "footing", "unknown".to_owned(), origin);
                return None;
            }
            DeValue::String(name) => {
                let Some((_, table, _)) =
                    self.footings.iter().find(|(kind, ..)| kind.as_str() == name.trim())
                else {
                    unknown_kind(
                        "footing",
                        name.trim(),
                        self.footings.iter().map(|(name, ..)| name.as_str()),
                        value.span(),
                        reader,
                    );
                    return None;
                };
                Layers {
                    tables: vec![(table, Origin::Kind(name.to_string()))],
                    deal: None,
                    ..self.part("footing", value.span())
                }
            }
            DeValue::Table(table) => {
                reader.check_keys(table, FOOTING_KEYS, "footing", &[], &[]);
                Layers { tables: vec![(table, origin)], deal: None, ..self.part("footing", value.span()) }
            }
            _ => {
                reader.mistake(value.span(), "footing is { shape = \"round\", width = \"12 in\", depth = \"42 in\" }, a name or \"unknown\"", "");
                return None;
            }
        };
        let layers = self.file.stack("footing", layers, self.footings, reader)?;
        let shape =
            reader.choice(&layers, "shape", &["round", "square"], "round or square", Missing::IsMistake);
        let width = reader.quantity::<Length>(
            &layers,
            small("width", "across the concrete", "\"12 in\"", true),
            Missing::IsMistake,
        );
        let depth = reader.quantity::<Length>(
            &layers,
            small("depth", "from the ground to the bottom of the concrete", "\"42 in\"", true),
            Missing::IsMistake,
        );
        let (shape, width, depth) = (shape?, width?, depth?);
        let one = |reading: Reading<Length>| {
            reading.low().map_or_else(
                || "unknown".to_owned(),
                |length| Value::new(length, Measure::Small).written(System::Us),
            )
        };
        Some(format!("{} {} wide, {} deep", ["round", "square"][shape], one(width), one(depth)))
    }

    fn part(&self, key: &str, place: Range<usize>) -> Layers<'t> {
        Layers {
            name: format!("{key} of {}", self.layers.name),
            path: format!("{}.{key}", self.layers.path),
            place,
            tables: vec![(self.file.empty, Origin::Here)],
            deal: None,
        }
    }

    fn bays(&self, reader: &mut Reader) -> Option<Vec<Bay>> {
        const ABOUT: &str = "bay by bay from the left, centre to centre of the posts";
        let Some((value, origin)) = reader.find(&self.layers, "bays") else {
            if !self.has("bays") {
                reader.mistake(
                    self.layers.place.clone(),
                    format!("{} has no bays: {ABOUT}", self.layers.name),
                    "add bays = [\"9 ft 8 in\", \"14 x 10 ft\"]",
                );
            }
            return None;
        };
        let DeValue::Array(list) = value.get_ref() else {
            reader.mistake(
                value.span(),
                format!("bays is a list: {ABOUT}"),
                "bays = [\"9 ft 8 in\", \"14 x 10 ft\"]",
            );
            return None;
        };
        let (mut bays, mut fine, mut written) = (Vec::new(), true, Vec::new());
        for item in list {
            let DeValue::String(text) = item.get_ref() else {
                reader.mistake(
                    item.span(),
                    format!("a bay needs its unit: {ABOUT}"),
                    "like \"10 ft\" or \"14 x 10 ft\"",
                );
                fine = false;
                continue;
            };
            written.push(text.to_string());
            let (count, rest) = counted(text);
            let (gate, width) = rest.strip_prefix("gate").map_or((false, rest), |width| (true, width.trim()));
            let key = length("bays", ABOUT, "\"10 ft\"");
            let Some(width) = reader.width(width, key, &item.span()) else {
                fine = false;
                continue;
            };
            match count {
                Some(count) if (1..=MOST_BAYS).contains(&count) && bays.len() + count <= MOST_BAYS => {
                    bays.extend(std::iter::repeat_n(Bay { width, gate }, count));
                }
                _ => {
                    reader.mistake(
                        item.span(),
                        format!("a run has from 1 to {MOST_BAYS} bays"),
                        "like \"14 x 10 ft\"",
                    );
                    fine = false;
                }
            }
        }
        if list.is_empty() {
            reader.mistake(value.span(), format!("{} has no bay", self.layers.name), "like [\"10 ft\"]");
            fine = false;
        }
        reader.note(&self.layers, "bays", written.join(", "), origin);
        fine.then_some(bays)
    }

    fn post(&self, key: &'static str, about: &str, reader: &mut Reader) -> Option<usize> {
        if !self.has(key) && self.posts.len() == 1 {
            reader.note(&self.layers, key, self.posts[0].clone(), Origin::Default);
            return Some(0);
        }
        if self.posts.is_empty() {
            // That there are no kinds was told already.
            return None;
        }
        let (name, at) = reader.text(&self.layers, key, about, Missing::IsMistake)?;
        let found = self.posts.iter().position(|post| *post == name);
        if found.is_none() {
            unknown_kind("post", &name, self.posts.iter().map(String::as_str), at, reader);
        }
        found
    }

    fn end(&self, key: &'static str, reader: &mut Reader) -> Option<DraftEnd> {
        const ABOUT: &str = "\"corner\" where the fence turns into another run, \"free\" where it stops, or { return = \"60 ft\" }";
        let own = self.layers.tables.iter().any(|(table, _)| table.contains_key(key));
        let key = if own { key } else { "ends" };
        let Some((value, origin)) = reader.find(&self.layers, key) else {
            if !self.has("ends") {
                reader.mistake(
                    self.layers.place.clone(),
                    format!("{} has no ends: {ABOUT}", self.layers.name),
                    "add ends = \"free\"",
                );
            }
            return None;
        };
        match value.get_ref() {
            DeValue::String(text) => {
                reader.note(&self.layers, key, text.to_string(), origin);
                match text.trim() {
                    "free" => Some(DraftEnd::Free),
                    "corner" => Some(DraftEnd::Corner(value.span())),
                    other => {
                        reader.mistake(
                            value.span(),
                            format!("{key} \"{other}\" is neither \"corner\" nor \"free\""),
                            ABOUT,
                        );
                        None
                    }
                }
            }
            DeValue::Table(table) => {
                reader.check_keys(table, &["return", "note"], key, &[], &[]);
                let layers =
                    Layers { tables: vec![(table, origin)], deal: None, ..self.part(key, value.span()) };
                let about = "how long the cloth goes on round the corner, at least as high as here";
                reader
                    .quantity::<Length>(&layers, length("return", about, "\"60 ft\""), Missing::IsMistake)?
                    .low()
                    .map(DraftEnd::Return)
            }
            _ => {
                reader.mistake(value.span(), format!("{key} is {ABOUT}"), "");
                None
            }
        }
    }

    /// Posts that differ: number and kind.
    fn others(&self, posts: usize, counted: bool, reader: &mut Reader) -> Option<Vec<(usize, usize)>> {
        const WRITE: &str = "other_posts = [{ numbers = [4, 9], post = \"newer\" }]";
        let Some((value, origin)) = reader.find(&self.layers, "other_posts") else {
            return if self.has("other_posts") { None } else { Some(Vec::new()) };
        };
        let DeValue::Array(list) = value.get_ref() else {
            reader.mistake(value.span(), "other_posts is a list of tables", WRITE);
            return None;
        };
        let (mut others, mut fine) = (Vec::new(), true);
        for item in list {
            let DeValue::Table(table) = item.get_ref() else {
                reader.mistake(item.span(), "other_posts is a list of tables", WRITE);
                fine = false;
                continue;
            };
            reader.check_keys(table, &["numbers", "post", "note"], "other_posts", &[], &[]);
            let layers = Layers {
                tables: vec![(table, origin.clone())],
                deal: None,
                ..self.part("other_posts", item.span())
            };
            let kind = self.kind_of(&layers, reader);
            let Some(DeValue::Array(numbers)) = table.get("numbers").map(toml::Spanned::get_ref) else {
                reader.mistake(
                    item.span(),
                    "other_posts has no numbers: post 1 is the leftmost, seen from inside",
                    WRITE,
                );
                fine = false;
                continue;
            };
            for number in numbers {
                let at = match number.get_ref() {
                    DeValue::Integer(at) => at.to_string().parse::<usize>().ok(),
                    _ => None,
                };
                match at {
                    Some(at) if at >= 1 && (at <= posts || !counted) => {
                        others.extend(kind.map(|kind| (at, kind)))
                    }
                    _ => {
                        let posts = if counted {
                            format!("has posts 1 to {posts}")
                        } else {
                            "counts posts from 1".to_owned()
                        };
                        reader.mistake(
                            number.span(),
                            format!("{} {posts}, seen from inside", self.layers.name),
                            "",
                        );
                        fine = false;
                    }
                }
            }
            fine &= kind.is_some();
        }
        fine.then_some(others)
    }

    fn kind_of(&self, layers: &Layers<'t>, reader: &mut Reader) -> Option<usize> {
        let (name, at) = reader.text(layers, "post", "the kind of these posts", Missing::IsMistake)?;
        let found = self.posts.iter().position(|post| *post == name);
        if found.is_none() {
            unknown_kind("post", &name, self.posts.iter().map(String::as_str), at, reader);
        }
        found
    }

    /// The cloth: nothing wrong and nothing hung is `Some(None)`.
    fn screen(
        &self,
        fence_height: Option<Length>,
        bays: Option<usize>,
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
        let (cloth, solidity) = solidity_of(&layers, &name, reader, remarks);
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
        let _ = reader.choice(
            &layers,
            "face",
            &["inside", "outside"],
            "the side of the fence the cloth hangs on",
            Missing::IsFine,
        );
        let fastening = self.fastening(&layers, reader);
        let windows = self.windows(&layers, reader);
        let hung_on = self.hung_on(&layers, bays, reader);
        let note = reader.text(&layers, "note", "a line of text", Missing::IsFine).map(|(text, _)| text);
        self.file.from(&layers, reader);
        let bottom = bottom?.low()?;
        let top = match (height, top) {
            (Some(height), None) => bottom + height.low()?,
            (None, Some(top)) => top.low()?,
            (None, None) => {
                if !known("height") && !known("top") {
                    reader.mistake(
                        layers.place.clone(),
                        format!("{} has no height: the height of the cloth as it hangs", layers.name),
                        "add height = \"9 ft\" or top = \"10 ft\"",
                    );
                }
                return None;
            }
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
        let (first_bay, end_bay) = hung_on?;
        let solidity = solidity?;
        let screen = Screen {
            name,
            solidity: solidity.high().unwrap_or(1.0),
            bottom,
            top,
            first_bay,
            end_bay,
            windows: windows?,
        };
        Some(Some(ReadScreen { screen, solidity, cloth, fastening, note }))
    }

    fn fastening(&self, layers: &Layers<'t>, reader: &mut Reader) -> Option<String> {
        let (value, origin) = reader.find(layers, "fastening")?;
        let table = match value.get_ref() {
            DeValue::Table(table) => table,
            DeValue::String(text) if text.trim().eq_ignore_ascii_case("unknown") => {
                reader.note(layers, "fastening", "unknown".to_owned(), origin);
                return None;
            }
            _ => {
                reader.mistake(value.span(), "fastening is a table or \"unknown\"", "{ kind = \"ties\", strength = \"50 lbf\", spacing = \"12 in\", rows = [\"top\", \"bottom\"] }");
                return None;
            }
        };
        reader.check_keys(table, FASTENING_KEYS, "fastening", &[], &[]);
        let own = Layers { tables: vec![(table, origin)], ..self.part("fastening", value.span()) };
        let kind = reader.choice(&own, "kind", &["ties", "lacing"], "ties or lacing", Missing::IsMistake);
        let strength = Key {
            key: "strength",
            measure: Measure::Force,
            about: "strength of one tie by its maker, or \"unknown\"",
            example: "\"50 lbf\"",
            sign: Sign::Positive,
            open: true,
        };
        let _ = reader.quantity::<crate::units::Force>(&own, strength, Missing::IsFine);
        let _ = reader.text(&own, "rope", "thickness and fibre of the rope", Missing::IsFine);
        let spacing = reader.quantity::<Length>(
            &own,
            small("spacing", "from tie to tie", "\"12 in\"", true),
            Missing::IsMistake,
        );
        let mut rows = Vec::new();
        match table.get("rows").map(|rows| (rows.get_ref(), rows.span())) {
            Some((DeValue::Array(list), _)) => {
                for row in list {
                    match row.get_ref().as_str() {
                        Some(word) if ["top", "middle", "bottom", "sides"].contains(&word) => {
                            if rows.contains(&word.to_owned()) {
                                reader.mistake(
                                    row.span(),
                                    format!("the row \"{word}\" is named twice"),
                                    "name it once",
                                );
                            }
                            rows.push(word.to_owned());
                        }
                        _ => reader.mistake(
                            row.span(),
                            "rows are top, middle, bottom and sides",
                            "rows = [\"top\", \"bottom\"]",
                        ),
                    }
                }
            }
            Some((_, at)) => reader.mistake(at, "rows is a list", "rows = [\"top\", \"bottom\"]"),
            None => reader.mistake(
                value.span(),
                format!("{} has no rows: along which edges it is tied", own.name),
                "add rows = [\"top\", \"bottom\"]",
            ),
        }
        let spacing = spacing?.low().map_or_else(
            || "unknown spacing".to_owned(),
            |spacing| Value::new(spacing, Measure::Small).written(System::Us),
        );
        Some(format!("{} every {spacing}, {}", ["ties", "lacing"][kind?], rows.join(", ")))
    }

    fn windows(&self, layers: &Layers<'t>, reader: &mut Reader) -> Option<Option<Windows>> {
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

    fn hung_on(
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
struct ReadScreen {
    screen: Screen,
    solidity: Reading<f64>,
    cloth: Option<String>,
    fastening: Option<String>,
    note: Option<String>,
}

/// What cloth it is, and its solidity: what is given, else by its density, else by the catalogue.
fn solidity_of(
    layers: &Layers<'_>,
    name: &str,
    reader: &mut Reader,
    remarks: &mut Vec<Remark>,
) -> (Option<String>, Option<Reading<f64>>) {
    let ratio = |key, about, example| Key {
        key,
        measure: Measure::Ratio,
        about,
        example,
        sign: Sign::Positive,
        open: true,
    };
    let has = |key: &str| layers.tables.iter().find_map(|(table, _)| table.get(key)).map(toml::Spanned::span);
    let cloth = reader.text(layers, "cloth", "open mesh, closed mesh or solid", Missing::IsFine);
    let entry = match &cloth {
        None => None,
        Some((text, at)) => {
            let entry = screen::named(text);
            if entry.is_none() && has("solidity").is_none() && has("density").is_none() {
                let names: Vec<_> = screen::cloths().iter().map(|cloth| cloth.name.as_str()).collect();
                let near = screen::nearest_name(text);
                reader.mistake(
                    at.clone(),
                    format!("the catalogue has no cloth \"{text}\": {}", names.join(", ")),
                    near.map_or_else(
                        || "or give solidity = 0.95".to_owned(),
                        |near| format!("perhaps \"{near}\", or give solidity = 0.95"),
                    ),
                );
                return (None, None);
            }
            entry
        }
    };
    let cloth = cloth.map(|(text, _)| text);
    let told = if let Some(at) = has("solidity") {
        let solidity = reader.quantity::<f64>(
            layers,
            ratio("solidity", "solid area over gross area, 0 to 1", "0.95"),
            Missing::IsFine,
        );
        match solidity {
            Some(Reading::Unknown) => Some((
                Reading::Between(
                    screen::cloths().iter().map(|cloth| cloth.solidity_low).fold(1.0, f64::min),
                    1.0,
                ),
                at,
            )),
            Some(reading) => Some((reading, at)),
            None => return (cloth, None),
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
        let (Some(density), Some((colour, _))) = (density, colour) else { return (cloth, None) };
        let dark = ["black", "dark"].iter().any(|word| colour.to_lowercase().contains(word));
        if dark {
            remarks.push(Remark::DensityTaken { screen: name.to_owned() });
            Some((density, at))
        } else {
            remarks.push(Remark::DensityOfLightYarn { screen: name.to_owned(), colour });
            Some((Reading::Between(density.low().unwrap_or(0.7), 1.0), at))
        }
    } else if let Some(entry) = entry {
        remarks.push(Remark::SolidityFromCatalogue { cloth: entry.name.clone(), known: entry.known.clone() });
        let (low, high) = (entry.solidity_low, entry.solidity_high);
        let reading = if low == high { Reading::Measured(high) } else { Reading::Between(low, high) };
        reader.note(
            layers,
            "solidity",
            if low == high { format!("{high}") } else { format!("{low} .. {high}") },
            Origin::Kind(entry.name.clone()),
        );
        Some((reading, layers.place.clone()))
    } else {
        reader.mistake(
            layers.place.clone(),
            format!("{} has no cloth: which cloth it is, or how solid", layers.name),
            "add cloth = \"closed mesh\" or solidity = 0.95",
        );
        None
    };
    let solidity = told.and_then(|(reading, at)| {
        let (low, high) = (reading.low()?, reading.high()?);
        if high > 1.0 {
            reader.mistake(
                at,
                "solidity is solid area over gross area and lies between 0 and 1",
                "like 0.95 or \"95 %\"",
            );
            return None;
        }
        if low < high && low < 0.30 {
            reader.mistake(
                at,
                "a range of solidity cannot begin below 0.30, where load does not rise with it",
                "give one value",
            );
            return None;
        }
        Some(reading)
    });
    (cloth, solidity)
}

const COMPASS: &[&str] =
    &["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];

fn compass(side: &str) -> Option<usize> {
    COMPASS.iter().position(|name| name.eq_ignore_ascii_case(side.trim()))
}

/// "14 x 10 ft" is 14 of "10 ft"; without a count it is one.
fn counted(text: &str) -> (Option<usize>, &str) {
    let text = text.trim();
    let split = text.split_once(['x', '×', 'X']);
    match split {
        Some((count, rest))
            if count.trim().chars().all(|c| c.is_ascii_digit()) && !count.trim().is_empty() =>
        {
            (count.trim().parse().ok(), rest.trim())
        }
        _ => (Some(1), text),
    }
}

impl Reader {
    /// A width from its text.
    fn width(&mut self, text: &str, key: Key, at: &Range<usize>) -> Option<Length> {
        match crate::units::read(text, key.measure.dimension()) {
            Ok(si) if si > 0.0 => Some(Length::from_si(si)),
            Ok(_) => {
                self.mistake(at.clone(), format!("a bay is {text}: it must be above 0"), "");
                None
            }
            Err(error) => {
                self.mistake(at.clone(), format!("a bay: {error}"), format!("like {}", key.example));
                None
            }
        }
    }
}

/// Finds the runs round each corner and joins their posts.
fn corners(drafts: Vec<Draft>, reader: &mut Reader, remarks: &mut Vec<Remark>) -> Option<Vec<RunSurvey>> {
    let mut fine = true;
    let mut ends: Vec<[End; 2]> = Vec::new();
    for (at, draft) in drafts.iter().enumerate() {
        let mut both = [End::Free; 2];
        for (which, end) in [&draft.start, &draft.finish].into_iter().enumerate() {
            both[which] = match end {
                DraftEnd::Free => End::Free,
                DraftEnd::Return(length) => End::Return(*length),
                DraftEnd::Corner(place) => match round_the_corner(&drafts, at, which == 0, place, reader) {
                    Some(corner) => End::Corner(corner),
                    None => {
                        fine = false;
                        End::Free
                    }
                },
            };
        }
        ends.push(both);
    }
    if !fine {
        return None;
    }
    let lasts: Vec<usize> = drafts.iter().map(|draft| draft.survey.run.posts.len() - 1).collect();
    let names: Vec<String> = drafts.iter().map(|draft| draft.survey.run.name.clone()).collect();
    let (mut runs, mut corners) = (Vec::new(), Vec::new());
    for (at, draft) in drafts.into_iter().enumerate() {
        let mut survey = draft.survey;
        [survey.run.start, survey.run.finish] = ends[at];
        for (which, end) in ends[at].iter().enumerate() {
            let End::Corner(corner) = end else { continue };
            let post = if which == 0 { 0 } else { lasts[at] };
            let theirs = if corner.at_its_start { 0 } else { lasts[corner.run] };
            survey.run.posts[post].shared_with = Some(Shared { run: corner.run, post: theirs });
            if at < corner.run {
                corners.push(format!("{} with {}", names[at], names[corner.run]));
            }
        }
        runs.push(survey);
    }
    if !corners.is_empty() {
        remarks.push(Remark::CornerPosts { corners });
    }
    Some(runs)
}

/// The run of the same court that stands at one's left hand (for the start) or right hand (for the finish),
/// standing inside and facing the fence; it meets the corner with its other end.
fn round_the_corner(
    drafts: &[Draft],
    at: usize,
    start: bool,
    place: &Range<usize>,
    reader: &mut Reader,
) -> Option<CornerTo> {
    let draft = &drafts[at];
    let name = &draft.survey.run.name;
    let Some(side) = draft.survey.faces.as_deref().and_then(compass) else {
        reader.mistake(
            place.clone(),
            format!("the corner of run \"{name}\" cannot be found without its compass side"),
            "add faces = \"north\" and court, or write { return = \"60 ft\" }",
        );
        return None;
    };
    let turned = if start { (side + 6) % 8 } else { (side + 2) % 8 };
    let court = &draft.survey.court;
    let there: Vec<usize> = (0..drafts.len())
        .filter(|other| {
            drafts[*other].survey.court == *court
                && drafts[*other].survey.faces.as_deref().and_then(compass) == Some(turned)
        })
        .collect();
    let end = if start { "start" } else { "finish" };
    let [run] = there[..] else {
        let many = if there.is_empty() { "no run" } else { "more than one run" };
        let of_court = if court.is_empty() { String::new() } else { format!(" of court \"{court}\"") };
        reader.mistake(
            place.clone(),
            format!(
                "the {end} of run \"{name}\" is a corner, but {many}{of_court} faces {}",
                COMPASS[turned]
            ),
            "survey that side too, or write { return = \"60 ft\" } for its cloth, or \"free\"",
        );
        return None;
    };
    let theirs = if start { &drafts[run].finish } else { &drafts[run].start };
    if !matches!(theirs, DraftEnd::Corner(_)) {
        reader.mistake(
            place.clone(),
            format!(
                "the {end} of run \"{name}\" is the corner with run \"{}\", but that run's {} is no corner",
                drafts[run].survey.run.name,
                if start { "finish" } else { "start" }
            ),
            "write \"corner\" for both",
        );
        return None;
    }
    Some(CornerTo { run, at_its_start: !start })
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
