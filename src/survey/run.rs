//! One run of a survey.

use super::at_posts::ListOf;
use super::brace;
use super::corners::{COMPASS, compass};
use super::file::{File, Kinds, unknown_kind};
use super::keys::*;
use super::layers::{Key, Layers, Missing, Reader, shortened};
use super::post::PostKinds;
use super::reading::Reading;
use super::{FootingSurvey, Open, Origin, OverCloth, RailSurvey, RunSurvey};
use crate::caution::Remark;
use crate::fence::{Bay, Condition, End, Post, Rail, RailPlace, Rails, Role, Run};
use crate::screen::{ChainLink, wire_of_gauge};
use crate::units::{Length, Quantity};
use crate::workings::nearest;
use std::cell::RefCell;
use std::ops::Range;
use toml::de::DeValue;

/// One run, as it is read.
pub(super) struct RunReader<'f, 't> {
    pub(super) file: &'f File<'t>,
    pub(super) layers: Layers<'t>,
    pub(super) posts: &'f RefCell<PostKinds<'t>>,
    pub(super) screens: &'f Kinds<'t>,
    pub(super) footings: &'f Kinds<'t>,
}

/// A run whose corners are not yet found.
pub(super) struct Draft {
    pub(super) survey: RunSurvey,
    pub(super) start: DraftEnd,
    pub(super) finish: DraftEnd,
    pub(super) place: Range<usize>,
}

#[derive(Clone)]
pub(super) enum DraftEnd {
    Free,
    Corner(Range<usize>),
    Return(Length),
}

impl<'t> RunReader<'_, 't> {
    pub(super) fn draft(
        self,
        name: &str,
        feet: &mut Vec<FootingSurvey>,
        reader: &mut Reader,
        remarks: &mut Vec<Remark>,
    ) -> Option<Draft> {
        let layers = &self.layers;
        let court = reader
            .text(layers, "court", "which court it belongs to", Missing::IsFine)
            .map_or_else(String::new, |(text, _)| text);
        let faces = self.faces(reader);
        let height =
            reader.quantity::<Length>(layers, HEIGHT, Missing::IsMistake).and_then(|reading| reading.low());
        let base = match reader.quantity::<Length>(layers, BASE, Missing::IsFine) {
            Some(reading) => reading.low(),
            None if self.has(BASE.key) => None,
            None => {
                reader.note(layers, BASE.key, "0 ft".to_owned(), Origin::Default);
                Some(Length::from_si(0.0))
            }
        };
        let chain_link = self.chain_link(reader);
        let [top, middle, bottom] = RailPlace::ALL.map(|place| self.rail(name, place, reader, remarks));
        let outside = |rail: &Option<RailSurvey>| rail.as_ref().map(|rail| Rail::of(rail.diameter));
        let rails = Rails { top: outside(&top), middle: outside(&middle), bottom: outside(&bottom) };
        let footing = self.footing("footing", feet, reader);
        let end_footing = self.footing("end_footing", feet, reader);
        let corner_footing = self.footing("corner_footing", feet, reader);
        let gate_footing = self.footing("gate_footing", feet, reader);
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
        let posts = bays.as_ref().map(|bays| bays.len() + 1);
        let others = self.others(posts, reader);
        let guys = self.guys(posts, height, reader);
        let braces = self.braces(posts, height, reader);
        let note = reader.text(layers, "note", "a line of text", Missing::IsFine);
        self.file.from(layers, reader);
        let screen =
            self.screen(height, bays.as_deref(), rails.top.map(|rail| rail.diameter), reader, remarks);
        let (height, base, bays, chain_link) = (height?, base?, bays?, chain_link?);
        let (line, end, corner, gate) = (line?, end?, corner?, gate?);
        let (start, finish, screen, others) = (start?, finish?, screen?, others?);
        let (footing, guys, braces) = (footing?, guys?, braces?);
        let end_footing = end_footing?.or(footing);
        let (corner_footing, gate_footing) = (corner_footing?.or(end_footing), gate_footing?.or(end_footing));
        let mut posts = vec![Length::default()];
        for bay in &bays {
            posts.push(*posts.last()? + bay.width);
        }
        let last = posts.len() - 1;
        let beside_gate = |at: usize| at > 0 && bays[at - 1].gate || bays.get(at).is_some_and(|bay| bay.gate);
        let role = |at: usize| {
            let end = match at {
                0 => Some(&start),
                at if at == last => Some(&finish),
                _ => None,
            };
            match end {
                Some(DraftEnd::Corner(_) | DraftEnd::Return(_)) => Role::Corner,
                _ if beside_gate(at) => Role::Gate,
                Some(DraftEnd::Free) => Role::End,
                None => Role::Line,
            }
        };
        let braces = brace::stood(braces, &bays, role, reader)?;
        let named = |at: usize| others.iter().find(|(number, _)| *number == at + 1).map(|(_, kind)| *kind);
        if self.has("gate_post") && gate != corner {
            for at in [0, last] {
                if role(at) == Role::Corner && beside_gate(at) && named(at).is_none() {
                    self.told_twice(at + 1, [corner, gate], reader);
                    return None;
                }
            }
        }
        let posts = posts
            .iter()
            .enumerate()
            .map(|(at, place)| {
                let role = role(at);
                let (kind, footing) = match role {
                    Role::Line => (line, footing),
                    Role::End => (end, end_footing),
                    Role::Corner => (corner, corner_footing),
                    Role::Gate => (gate, gate_footing),
                };
                let kind = named(at).unwrap_or(kind);
                Post { at: *place, role, kind, footing: footing.index(), shared_with: None }
            })
            .collect();
        if bays.iter().any(|bay| bay.gate) {
            remarks.push(Remark::Gate { run: name.to_owned() });
        }
        let mut notes = Vec::new();
        if let Some((note, _)) = note {
            notes.push((format!("run {name}"), note));
        }
        if base.si() > 0.0 {
            remarks.push(Remark::Raised { run: name.to_owned(), base });
        }
        let (mut cloth, mut solidity, mut condition, mut fastening, mut hung) =
            (None, None, None, None, None);
        let (mut air_test, mut over, mut weight) = (None, Vec::new(), None);
        if let Some(read) = screen {
            if bays
                .iter()
                .enumerate()
                .any(|(at, bay)| bay.gate && (read.screen.first_bay..read.screen.end_bay).contains(&at))
            {
                remarks.push(Remark::ClothOnGate { run: name.to_owned() });
            }
            if read.condition != Reading::Measured(Condition::Dry) {
                let known = read.condition.is_point();
                remarks.push(Remark::IcedCloth { run: name.to_owned(), known });
            }
            notes.extend(read.note.map(|note| (format!("cloth of {name}"), note)));
            (air_test, weight) = (read.tested, read.weight);
            over.extend(read.over.into_iter().enumerate().map(|(at, over)| OverCloth {
                cloth: over.cloth,
                solidity: Open { key: format!("run.{name}.over {}", at + 1), reading: over.solidity },
                air_test: over.tested,
            }));
            if !over.is_empty() {
                remarks.push(Remark::ClothOverCloth { run: name.to_owned(), count: over.len() + 1 });
            }
            solidity = Some(Open { key: format!("run.{name}.solidity"), reading: read.solidity });
            condition = Some(Open { key: format!("run.{name}.condition"), reading: read.condition });
            if let Some((held, at)) = read.fastening {
                let bays = &bays[read.screen.first_bay..read.screen.end_bay];
                let screened = bays.iter().fold(Length::default(), |sum, bay| sum + bay.width);
                if let Err(error) = held.fits(screened, read.screen.top - read.screen.bottom) {
                    reader.mistake(at, format!("fastening: {error}"), "measure the spacing again");
                    return None;
                }
                fastening = Some(held);
            }
            (cloth, hung) = (read.cloth, Some(read.screen));
        }
        let run = Run {
            name: name.to_owned(),
            height,
            base_above_ground: base,
            chain_link,
            rails,
            bays,
            posts,
            screen: hung,
            start: End::Free,
            finish: End::Free,
            guys,
            braces,
        };
        Some(Draft {
            survey: RunSurvey {
                court,
                faces,
                run,
                rails: [top, middle, bottom],
                solidity,
                condition,
                cloth,
                air_test,
                over,
                weight,
                notes,
                footing: footing.index().map(|at| feet[at].text(self.file.system())),
                fastening,
            },
            start,
            finish,
            place: self.layers.place.clone(),
        })
    }

    pub(super) fn has(&self, key: &str) -> bool {
        self.layers.tables.iter().any(|(table, _)| table.contains_key(key))
    }

    pub(super) fn faces(&self, reader: &mut Reader) -> Option<String> {
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

    pub(super) fn chain_link(&self, reader: &mut Reader) -> Option<Option<ChainLink>> {
        const ABOUT: &str = "the steel mesh: clear between two parallel wires, and the wire's gauge or its thickness over the coating";
        let Some((value, origin)) = reader.find(&self.layers, "chain_link") else {
            if !self.has("chain_link") {
                reader.lacking(
                    &self.layers,
                    &["chain_link"],
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
        reader.noted(&layers);
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

    pub(super) fn wire(&self, layers: &Layers<'t>, reader: &mut Reader) -> Option<Length> {
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

    pub(super) fn part(&self, key: &str, place: Range<usize>) -> Layers<'t> {
        Layers {
            name: format!("{key} of {}", self.layers.name),
            path: format!("{}.{key}", self.layers.path),
            place,
            tables: vec![(self.file.empty, Origin::Here)],
            deal: None,
        }
    }

    pub(super) fn bays(&self, reader: &mut Reader) -> Option<Vec<Bay>> {
        const ABOUT: &str = "bay by bay from the left, centre to centre of the posts";
        let Some((value, origin)) = reader.find(&self.layers, "bays") else {
            if !self.has("bays") {
                reader.lacking(
                    &self.layers,
                    &["bays"],
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
            let (word, width) = worded(rest);
            let (gate, double) = match word.to_lowercase().as_str() {
                "" => (false, false),
                GATE => (true, false),
                DOUBLE_GATE => (true, true),
                other => {
                    let near = nearest(other, [GATE, DOUBLE_GATE].into_iter());
                    reader.mistake(
                        item.span(),
                        format!("a bay is a width, a gate or a double gate; \"{}\" is none", shortened(text)),
                        near.map_or_else(
                            || "like \"10 ft\", \"gate 4 ft\" or \"double gate 8 ft\"".to_owned(),
                            |near| format!("perhaps \"{near} {width}\""),
                        ),
                    );
                    fine = false;
                    continue;
                }
            };
            let key = length("bays", ABOUT, "\"10 ft\"");
            let Some(width) = reader.width(width, key, &item.span()) else {
                fine = false;
                continue;
            };
            match count {
                Some(count) if (1..=MOST_BAYS).contains(&count) && bays.len() + count <= MOST_BAYS => {
                    bays.extend(std::iter::repeat_n(Bay { width, gate, double }, count));
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

    pub(super) fn post(&self, key: &'static str, about: &str, reader: &mut Reader) -> Option<usize> {
        if !self.has(key) {
            let posts = self.posts.borrow();
            if let Some(only) = posts.only() {
                reader.note(&self.layers, key, posts.names[only].clone(), Origin::Default);
                return Some(only);
            }
            let example = posts.kinds.first().map_or_else(
                || "{ girth = \"9-1/16 in\", nominal_wall = \"unknown\" }".to_owned(),
                |(first, ..)| format!("\"{first}\""),
            );
            // That there are no posts at all was told already.
            if !posts.kinds.is_empty() || self.file.has_posts_in_place() {
                reader.told_missing(&self.layers, key, about, &example);
            }
            return None;
        }
        self.kind_of(&self.layers, key, about, key, reader)
    }

    /// A post at a corner and beside a gate has two kinds.
    fn told_twice(&self, number: usize, [corner, gate]: [usize; 2], reader: &mut Reader) {
        let posts = self.posts.borrow();
        let at = self.layers.tables.iter().find_map(|(table, _)| table.get("bays"));
        reader.mistake(
            at.map_or(self.layers.place.clone(), toml::Spanned::span),
            format!(
                "post {number} of {} stands at a corner and beside a gate: it is of kind \"{}\" as a corner post and of \
                 kind \"{}\" as a gate post",
                self.layers.name, posts.names[corner], posts.names[gate]
            ),
            format!("say which in other_posts = [{{ numbers = [{number}], post = \"…\" }}]"),
        );
    }

    pub(super) fn end(&self, key: &'static str, reader: &mut Reader) -> Option<DraftEnd> {
        const ABOUT: &str = "\"corner\" where the fence turns into another run, \"free\" where it stops, or { return = \"60 ft\" }";
        // A run's own `ends` stands before the `start` of all runs, and its own `start` before its `ends`.
        let nearest = self
            .layers
            .tables
            .iter()
            .find_map(|(table, _)| [key, "ends"].into_iter().find(|key| table.contains_key(*key)));
        let key = nearest.unwrap_or("ends");
        let Some((value, origin)) = reader.find(&self.layers, key) else {
            if !self.has("ends") {
                let (start, finish) = (self.has("start"), self.has("finish"));
                let lacks = if start {
                    "finish"
                } else if finish {
                    "start"
                } else {
                    "ends"
                };
                reader.lacking(
                    &self.layers,
                    &["ends", key],
                    format!("{} has no {lacks}: {ABOUT}", self.layers.name),
                    format!("add {lacks} = \"free\""),
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
                reader.check_keys(table, &["return", "note", "from"], key, &[], &[]);
                let layers =
                    Layers { tables: vec![(table, origin)], deal: None, ..self.part(key, value.span()) };
                reader.noted(&layers);
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
    fn others(&self, posts: Option<usize>, reader: &mut Reader) -> Option<Vec<(usize, usize)>> {
        const OTHERS: ListOf = ListOf {
            key: "other_posts",
            is: "other_posts is a list of tables",
            numbers: "numbers",
            without: "other_posts has no numbers: post 1 is the leftmost, seen from inside",
            keys: &["numbers", "post", "note", "from"],
            write: "other_posts = [{ numbers = [4, 9], post = \"newer\" }]",
        };
        let all = self.at_posts(&OTHERS, posts, reader, |layers, reader| {
            self.kind_of(layers, "post", "the kind of these posts", "other post", reader)
        })?;
        Some(all.iter().flat_map(|one| one.posts.iter().map(|at| (*at, one.found))).collect())
    }

    /// The kind that a key names, changes or writes in place.
    fn kind_of(
        &self,
        layers: &Layers<'t>,
        key: &'static str,
        about: &str,
        called: &str,
        reader: &mut Reader,
    ) -> Option<usize> {
        let posts = &mut *self.posts.borrow_mut();
        if let Some((value, origin)) = reader.find(layers, key)
            && let DeValue::Table(table) = value.get_ref()
        {
            let own = Layers {
                name: format!("{} of {}", called.replace(' ', "_"), self.layers.name),
                path: String::new(),
                place: value.span(),
                tables: vec![(table, origin.clone())],
                deal: None,
            };
            let found = self.file.post_in_place(own, called, posts, reader)?;
            reader.note(layers, key, posts.names[found].clone(), origin);
            return Some(found);
        }
        let (name, at) = reader.text(layers, key, about, Missing::IsMistake)?;
        let found = posts.named(&name);
        if found.is_none() && (!posts.kinds.is_empty() || self.file.has_posts_in_place()) {
            unknown_kind("post", &name, posts.kinds.iter().map(|(name, ..)| name.as_str()), at, reader);
        }
        found
    }
}

/// How a bay with a gate begins, and one with two leaves.
const GATE: &str = "gate";
const DOUBLE_GATE: &str = "double gate";

/// The words before the figures of a bay, and the rest.
fn worded(text: &str) -> (String, &str) {
    let end =
        text.find(|letter: char| !letter.is_alphabetic() && !letter.is_whitespace()).unwrap_or(text.len());
    let (words, rest) = text.split_at(end);
    (words.split_whitespace().collect::<Vec<_>>().join(" "), rest.trim())
}

/// "14 x 10 ft" is 14 of "10 ft"; without a count it is one.
pub(super) fn counted(text: &str) -> (Option<usize>, &str) {
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
    pub(super) fn width(&mut self, text: &str, key: Key, at: &Range<usize>) -> Option<Length> {
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
