//! A survey from questions and answers, one at a time: lines go in, questions and at last the survey come out.
//!
//! There is no terminal in it. What was answered is a list; the questions are a walk along that list, so that going
//! back is taking the last answer away. Before an answer is taken, the survey so far is read as any file is read,
//! with stand-ins for what is still to come: what the reader would say of the file is said at the question.

use super::draft::{bare_or_quoted, quoted, site_value};
use super::fields::{self, Field, job, order, post, run, screen, site};
use crate::caution::{CLIMBING, Caution, DIGGING, WIND};
use crate::fence::FootingShape;
use crate::screen::named;
use crate::survey::{Mistake, Mistakes, RUN_KEYS, Survey};
use crate::units::{Dimension, Measure, System};
use crate::wind::{Code, KeyKind, SiteKey};
use std::fmt;
use std::ops::Range;

/// What whoever answers should know first.
pub const INTRODUCTION: &str = "\
Questions for a survey, one at a time. Answer as you would say it: 11 ft 1 in, 2-3/8 in, 3.05 m, 115 mph.
don't know (or ? or an empty line) stands wherever a question says so; a range is 0.01 in .. 0.03 in.
back goes one question back. Nothing is written before the last answer.
You stand inside the court, facing the fence: post 1 is at your left, bay 1 lies between posts 1 and 2.";

/// A question.
#[derive(Debug, Clone, PartialEq)]
pub struct Question {
    /// What it belongs to: the site, a kind of post, a run.
    pub place: String,
    /// The key of the survey that the answer fills.
    pub key: String,
    /// What is asked, and how to find it out.
    pub ask: String,
    /// An answer as people write it.
    pub example: String,
    /// What an empty line means; nothing where an answer must be given.
    pub empty: Option<String>,
    /// Whether "don't know" is an answer.
    pub unknown: bool,
    /// The words to choose from; none where anything may be written.
    pub words: Vec<String>,
    /// What to heed before measuring.
    pub warning: Option<Caution>,
    /// Whether any text is an answer and not to know is none, of which the reader would not complain.
    text: bool,
    /// Whether not to know is the same as to leave out.
    unknown_is_empty: bool,
    /// Whether it puts right a corner that was not found.
    corner: bool,
}

impl Question {
    fn new(place: &str, key: &str, ask: String, example: &str) -> Self {
        Self {
            place: place.to_owned(),
            key: key.to_owned(),
            ask,
            example: example.to_owned(),
            empty: None,
            unknown: false,
            words: Vec::new(),
            warning: None,
            text: false,
            unknown_is_empty: false,
            corner: false,
        }
    }
    fn words<T: ToString>(self, words: &[T]) -> Self {
        Self { words: words.iter().map(T::to_string).collect(), ..self }
    }
    fn or(self, empty: impl Into<String>) -> Self {
        Self { empty: Some(empty.into()), ..self }
    }
    fn text(self) -> Self {
        Self { text: true, ..self }
    }
    fn warning(self, caution: Caution) -> Self {
        Self { warning: Some(caution), ..self }
    }

    /// What a line means as an answer, or why it is none.
    fn take(&self, line: &str) -> Result<String, String> {
        let line = line.trim();
        if line.chars().any(|letter| letter.is_control() && letter != '\t') {
            return Err("a key that is no letter got into this line (an arrow?): type it again".to_owned());
        }
        let line = line.replace('\t', " ");
        if line.is_empty() {
            return match (self.unknown, &self.empty) {
                (true, _) => Ok(UNKNOWN.to_owned()),
                (false, Some(_)) => Ok(String::new()),
                (false, None) => Err(format!("{} needs an answer, like {}", self.key, self.example)),
            };
        }
        if means_unknown(&line) {
            if self.unknown || self.words.iter().any(|word| word == UNKNOWN) {
                return Ok(UNKNOWN.to_owned());
            }
            if self.unknown_is_empty {
                return Ok(String::new());
            }
            if self.text || !self.words.is_empty() {
                return Err(format!("{} cannot be unknown: {}", self.key, self.ask));
            }
            // The reader says why it cannot be unknown.
            return Ok(UNKNOWN.to_owned());
        }
        if self.words.is_empty() { Ok(line) } else { self.word(&line) }
    }

    /// One of the words: as it stands, without regard to case, or by its first letters.
    fn word(&self, line: &str) -> Result<String, String> {
        let lower = line.to_lowercase();
        let same = |word: &&String| **word == line;
        let alike = |word: &&String| word.to_lowercase() == lower;
        if let Some(word) = self.words.iter().find(same).or_else(|| self.words.iter().find(alike)) {
            return Ok(word.clone());
        }
        let mut begun = self.words.iter().filter(|word| word.to_lowercase().starts_with(&lower));
        match (begun.next(), begun.next()) {
            (Some(word), None) => Ok(word.clone()),
            _ => Err(format!("\"{}\" is none of {}", short(line), self.choices())),
        }
    }

    fn choices(&self) -> String {
        self.words.iter().map(|word| short(word)).collect::<Vec<_>>().join(", ")
    }

    /// An answer that goes on without telling anything, where there is one.
    fn easiest(&self) -> String {
        if self.unknown || self.empty.is_some() { String::new() } else { self.example.clone() }
    }
}

impl fmt::Display for Question {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{} · {}", self.place, self.key)?;
        if let Some(caution) = self.warning {
            writeln!(f, "  {}: {}", caution.word, caution.text)?;
        }
        writeln!(f, "  {}", self.ask)?;
        let mut ways = Vec::new();
        if self.words.is_empty() {
            ways.push(format!("like {}", self.example));
        } else {
            ways.push(self.choices());
        }
        if self.unknown {
            ways.push("don't know".to_owned());
        }
        if let Some(empty) = &self.empty {
            ways.push(format!("empty line: {empty}"));
        }
        write!(f, "  {}", ways.join(" · "))
    }
}

const UNKNOWN: &str = "unknown";

fn means_unknown(line: &str) -> bool {
    let line = line.trim_end_matches(['.', '!']).to_lowercase().replace(['’', '‘', '`'], "'");
    [
        "don't know",
        "dont know",
        "do not know",
        "dunno",
        "i don't know",
        "i dont know",
        "not known",
        UNKNOWN,
        "?",
    ]
    .contains(&line.as_str())
}

/// A name for a prompt, cut where it is long.
fn short(name: &str) -> String {
    const LONGEST: usize = 40;
    if name.chars().count() <= LONGEST {
        return name.to_owned();
    }
    let head: String = name.chars().take(LONGEST - 1).collect();
    head + "…"
}

/// A conversation as far as it has come.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Interview {
    system: Option<System>,
    answers: Vec<String>,
}

impl Interview {
    /// A conversation that begins; it asks for the units unless they are given.
    #[must_use]
    pub const fn new(system: Option<System>) -> Self {
        Self { system, answers: Vec::new() }
    }

    /// What is asked now; nothing once the survey is complete.
    #[must_use]
    pub fn question(&self) -> Option<Question> {
        self.walk(&self.answers).asked
    }

    /// Takes a line as the answer to the question, or goes back on the word `back`.
    ///
    /// # Errors
    /// Why the line is no answer, in words; the question then stands.
    pub fn answer(&mut self, line: &str) -> Result<(), String> {
        let Some(question) = self.question() else { return Ok(()) };
        if line.trim().eq_ignore_ascii_case("back") {
            return self.answers.pop().map(|_| ()).ok_or_else(|| "this is the first question".to_owned());
        }
        let mut answers = self.answers.clone();
        answers.push(question.take(line)?);
        let walk = self.walk(&answers);
        if let Some(told) = walk.sheet.told {
            return Err(told);
        }
        if let Err(mistakes) = Survey::read(&walk.sheet.text(Corners::Later).0, "your answers") {
            return Err(first_of(&mistakes));
        }
        match walk.asked {
            Some(next) if next.corner && (&next.place, &next.key) == (&question.place, &question.key) => {
                Err(next.ask)
            }
            _ => {
                self.answers = answers;
                Ok(())
            }
        }
    }

    /// What must still be answered, in the order in which it would be asked.
    #[must_use]
    pub fn missing(&self) -> Vec<String> {
        let mut rest = self.clone();
        let mut missing = Vec::new();
        // A conversation that takes every short way has some forty questions left at most.
        for _ in 0..100 {
            let Some(question) = rest.question() else { break };
            if missing.is_empty() || !(question.unknown || question.empty.is_some()) {
                missing.push(format!("{} · {}", question.place, question.key));
            }
            if rest.answer(&question.easiest()).is_err() {
                break;
            }
        }
        missing
    }

    /// The survey, once it is complete.
    #[must_use]
    pub fn survey(&self) -> Option<String> {
        let walk = self.walk(&self.answers);
        walk.asked.is_none().then(|| walk.sheet.text(Corners::Asked).0)
    }

    fn walk<'a>(&self, answers: &'a [String]) -> Walk<'a> {
        let mut walk = Walk { system: self.system, answers, at: 0, asked: None, sheet: Sheet::new() };
        let _ = walk.all();
        walk
    }
}

fn in_words(mistake: &Mistake) -> String {
    match &mistake.write {
        Some(write) => format!("{} ({write})", mistake.what),
        None => mistake.what.clone(),
    }
}

fn first_of(mistakes: &Mistakes) -> String {
    mistakes.mistakes.first().map_or_else(|| "this cannot be read".to_owned(), in_words)
}

/// How corners are written: as they were answered, or as free ends while the runs round them are to come.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Corners {
    Asked,
    Later,
}

/// Keys with their values as TOML writes them.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
struct Entries(Vec<(String, String)>);

impl Entries {
    fn set(&mut self, key: &str, value: String) {
        match self.0.iter_mut().find(|(name, _)| name == key) {
            Some((_, before)) => *before = value,
            None => self.0.push((key.to_owned(), value)),
        }
    }
    fn take_out(&mut self, key: &str) {
        self.0.retain(|(name, _)| name != key);
    }
    fn get(&self, key: &str) -> Option<&str> {
        self.0.iter().find(|(name, _)| name == key).map(|(_, value)| value.as_str())
    }
    /// As an inline table.
    fn inline(&self) -> String {
        let parts: Vec<String> = self.0.iter().map(|(key, value)| format!("{key} = {value}")).collect();
        format!("{{ {} }}", parts.join(", "))
    }
}

/// The survey as it grows. What must stand and is not yet answered is held by stand-ins.
struct Sheet {
    units: System,
    job: Entries,
    site: Entries,
    posts: Vec<(String, Entries)>,
    screens: Vec<(String, Entries)>,
    order: Entries,
    runs: Vec<Entries>,
    /// What was seen to be wrong before the reader sees it.
    told: Option<String>,
}

/// What a run may have in common with the one before.
const IN_COMMON: [&str; 9] = [
    "height",
    "base_above_ground",
    "top_rail",
    "mid_rail",
    "bottom_rail",
    "chain_link",
    "footing",
    "line_post",
    "end_post",
];
/// Where a corner stands in the text: the run and the key.
type CornerPlace = (Range<usize>, usize, &'static str);

impl Sheet {
    fn new() -> Self {
        let mut site = Entries::default();
        site.set("wind_code", quoted(Code::Asce7_16.key()));
        site.set("wind_speed", quoted(UNKNOWN));
        let mut sheet = Self {
            units: System::Us,
            job: Entries::default(),
            site,
            posts: Vec::new(),
            screens: Vec::new(),
            order: Entries::default(),
            runs: Vec::new(),
            told: None,
        };
        sheet.stand_in_for(Code::Asce7_16.site_keys());
        sheet
    }

    fn stand_in_for(&mut self, keys: &[SiteKey]) {
        // Tables may be left out.
        for key in keys.iter().filter(|key| !matches!(key.kind, KeyKind::Table(_))) {
            self.site.set(key.key, site_value(key, self.units));
        }
    }

    /// A run that stands for one still to come; tall, so that any cloth hangs on it.
    fn run_to_come(&self) -> Entries {
        let mut run = Entries::default();
        run.set("name", quoted("·"));
        run.set("height", quoted("1000 m"));
        run.set("chain_link", quoted("none"));
        if let [(first, _), _, ..] = self.posts.as_slice() {
            run.set("line_post", quoted(first));
            run.set("end_post", quoted(first));
        }
        run.set("bays", "[\"1 m\"]".to_owned());
        run.set("start", quoted("free"));
        run.set("finish", quoted("free"));
        run
    }

    /// The survey as text, and where its corners stand in it.
    fn text(&self, corners: Corners) -> (String, Vec<CornerPlace>) {
        let mut text = "# Written from questions and answers.\nsurvey = 1\n".to_owned();
        let mut places = Vec::new();
        let line = |text: &mut String, key: &str, value: &str| {
            text.push_str(key);
            text.push_str(" = ");
            let from = text.len();
            text.push_str(value);
            let place = from..text.len();
            text.push('\n');
            place
        };
        let table = |text: &mut String, head: &str, entries: &Entries| {
            text.push('\n');
            text.push_str(head);
            text.push('\n');
            for (key, value) in &entries.0 {
                line(text, key, value);
            }
        };
        line(&mut text, "units", &quoted(self.units.key()));
        if !self.job.0.is_empty() {
            table(&mut text, "[job]", &self.job);
        }
        table(&mut text, "[site]", &self.site);
        if self.posts.is_empty() {
            table(&mut text, "[post.line]", &post_to_come());
        }
        for (kind, all) in [("post", &self.posts), ("screen", &self.screens)] {
            for (name, entries) in all {
                table(&mut text, &format!("[{kind}.{}]", bare_or_quoted(name)), entries);
            }
        }
        if !self.order.0.is_empty() {
            table(&mut text, "[order]", &self.order);
        }
        let mut to_come = self.run_to_come();
        if let Some((name, _)) = self.screens.last() {
            to_come.set("screen", format!("{{ like = {}, bottom = \"0 m\" }}", quoted(name)));
        }
        let to_come = [to_come];
        let runs = if self.runs.is_empty() { &to_come[..] } else { &self.runs };
        text.push_str(
            "\n# You stand inside the court, facing the fence: post 1 is at your left, bay 1 lies between posts 1 and 2.\n",
        );
        for (at, run) in runs.iter().enumerate() {
            text.push_str("[[run]]\n");
            let mut keys: Vec<&(String, String)> = run.0.iter().collect();
            keys.sort_by_key(|(key, _)| RUN_KEYS.iter().position(|name| name == key));
            for (key, value) in keys {
                let end = [run::START.key, run::FINISH.key].into_iter().find(|end| end == key);
                let corner = end.filter(|_| value == "\"corner\"");
                // Without its compass side no corner is found, whatever runs come: the reader says so at once.
                let later = corners == Corners::Later && corner.is_some() && run.get("faces").is_some();
                let place = line(&mut text, key, if later { "\"free\"" } else { value });
                places.extend(corner.map(|end| (place, at, end)));
            }
            text.push('\n');
        }
        (text.trim_end().to_owned() + "\n", places)
    }
}

fn post_to_come() -> Entries {
    let mut post = Entries::default();
    post.set("diameter", quoted("73 mm"));
    // So thin that it fits any tube.
    post.set("measured_wall", quoted("1 mm"));
    post
}

/// A number bare, anything else in quotes.
fn number_or_text(text: &str) -> String {
    let (whole, rest) = text.split_once('.').unwrap_or((text, "0"));
    let digits = |text: &str| !text.is_empty() && text.chars().all(|letter| letter.is_ascii_digit());
    let plain = digits(whole) && digits(rest) && (whole == "0" || !whole.starts_with('0')) && text.len() < 16;
    if plain { text.to_owned() } else { quoted(text) }
}

/// What stands between commas, each part as TOML writes it.
fn list(text: &str, of: impl Fn(&str) -> String) -> String {
    let parts: Vec<String> =
        text.split([',', ';']).map(str::trim).filter(|part| !part.is_empty()).map(of).collect();
    format!("[{}]", parts.join(", "))
}

/// A figure of the site as TOML writes it.
fn site_quantity(measure: Measure, answer: &str) -> String {
    if measure.dimension() == Dimension::Ratio { number_or_text(answer) } else { quoted(answer) }
}

/// The question for a choice of the site; the reader knows its words, and "or" between two.
fn site_choice(place: &str, name: &str, key: &SiteKey) -> Question {
    let example = key.example[0].trim_matches('"');
    Question { unknown: true, ..Question::new(place, name, key.about.to_owned(), example) }
}

/// How a run ends: a word, or the length of cloth round the corner.
fn end_value(text: &str) -> String {
    let lower = text.to_lowercase();
    if lower == "free" || lower == "corner" {
        return quoted(&lower);
    }
    let length = lower.strip_prefix("return").map_or(text, |_| text["return".len()..].trim());
    if length.starts_with(|letter: char| letter.is_ascii_digit() || letter == '.') {
        return format!("{{ return = {} }}", quoted(length));
    }
    quoted(text)
}

/// The questions along the answers given.
struct Walk<'a> {
    system: Option<System>,
    answers: &'a [String],
    at: usize,
    asked: Option<Question>,
    sheet: Sheet,
}

impl Walk<'_> {
    /// The answer to a question, or nothing where it is still to be asked.
    fn ask(&mut self, question: Question) -> Option<String> {
        match self.answers.get(self.at) {
            Some(answer) => {
                self.at += 1;
                Some(answer.clone())
            }
            None => {
                self.asked = Some(question);
                None
            }
        }
    }

    fn question(&self, place: &str, field: &Field) -> Question {
        Question {
            unknown: field.unknown,
            ..Question::new(place, field.key, field.sentence(), field.example(self.sheet.units))
        }
    }

    /// A line of text that may be left out.
    fn line(&mut self, place: &str, field: &Field) -> Option<Option<String>> {
        let question =
            Question { unknown_is_empty: true, ..self.question(place, field).text().or("left out") };
        self.ask(question).map(|text| (!text.is_empty()).then_some(text))
    }

    fn yes(&mut self, place: &str, key: &str, ask: &str, or: &str) -> Option<bool> {
        let question = Question::new(place, key, ask.to_owned(), or).words(&["yes", "no"]).or(or);
        let answer = self.ask(question)?;
        Some(if answer.is_empty() { or == "yes" } else { answer == "yes" })
    }

    fn all(&mut self) -> Option<()> {
        self.sheet.units = match self.system {
            Some(system) => system,
            None => {
                let question = self.question("survey", &fields::UNITS).words(&["us", "si"]).or("us");
                if self.ask(question)? == "si" { System::Si } else { System::Us }
            }
        };
        self.sheet.stand_in_for(Code::Asce7_16.site_keys());
        self.job()?;
        self.site()?;
        loop {
            self.post()?;
            let ask = "Is there another kind of post: another size, older or newer, beside a gate?";
            if !self.yes("posts", "another kind", ask, "no")? {
                break;
            }
        }
        let ask = "Does cloth hang anywhere, or is it to hang?";
        if self.yes("cloth", "screen", ask, "yes")? {
            loop {
                self.screen()?;
                let ask = "Is there another kind of cloth, or one of another height?";
                if !self.yes("cloth", "another kind", ask, "no")? {
                    break;
                }
            }
            self.order()?;
        }
        loop {
            self.run()?;
            let ask = "Is there another run: another straight side of fence?";
            if !self.yes("runs", "another run", ask, "no")? {
                break;
            }
        }
        self.corners()
    }

    fn job(&mut self) -> Option<()> {
        for field in [job::TITLE, job::PREPARED_FOR, job::MEASURED_BY, job::DATE, fields::NOTE] {
            let Some(text) = self.line("job", &field)? else { continue };
            let date = field.key == job::DATE.key
                && text.parse::<toml::value::Datetime>().is_ok_and(|date| date.date.is_some());
            self.sheet.job.set(field.key, if date { text } else { quoted(&text) });
        }
        Some(())
    }

    fn site(&mut self) -> Option<()> {
        const PLACE: &str = "site";
        let codes: Vec<&str> = Code::ALL.iter().map(|code| code.key()).collect();
        let usual = Code::Asce7_16;
        let question = self.question(PLACE, &site::WIND_CODE).words(&codes).or(usual.key());
        let name = self.ask(question)?;
        let code = if name.is_empty() { usual } else { Code::named(&name).unwrap_or(usual) };
        self.sheet.site = Entries::default();
        self.sheet.site.set("wind_code", quoted(code.key()));
        self.sheet.site.set("wind_speed", quoted(UNKNOWN));
        self.sheet.stand_in_for(code.site_keys());
        let mut question = self.question(PLACE, &site::WIND_SPEED);
        question.ask = format!("{}. It is {}", question.ask, code.speed_is());
        let speed = self.ask(question)?;
        self.sheet.site.set("wind_speed", quoted(&speed));
        if speed != UNKNOWN
            && let Some(source) = self.line(PLACE, &site::WIND_SPEED_SOURCE)?
        {
            self.sheet.site.set("wind_speed_source", quoted(&source));
        }
        for key in code.site_keys().iter().filter(|key| !matches!(key.kind, KeyKind::Table(_))) {
            let table = code
                .site_keys()
                .iter()
                .find(|table| table.instead_of.is_some_and(|(name, _)| name == key.key));
            self.site_key(PLACE, key, table)?;
        }
        let question =
            self.question(PLACE, &site::RISK_CATEGORY).words(&["I", "II", "III", "IV"]).or("left out");
        let category = self.ask(Question { unknown_is_empty: true, ..question })?;
        if !category.is_empty() {
            self.sheet.site.set("risk_category", quoted(&category));
        }
        let mut question = self.question(PLACE, &site::LATERAL_BEARING);
        question.key = "soil".to_owned();
        question.ask = format!(
            "{}. Or its class in words, like {}",
            question.ask,
            site::SOIL_CLASS.example(self.sheet.units)
        );
        let soil = self.ask(question)?;
        let figure = soil.starts_with(|letter: char| letter.is_ascii_digit() || letter == '.');
        self.sheet.site.set(
            "soil",
            match (soil == UNKNOWN, figure) {
                (true, _) => quoted(UNKNOWN),
                (_, true) => format!("{{ lateral_bearing = {} }}", quoted(&soil)),
                (_, false) => format!("{{ class = {} }}", quoted(&soil)),
            },
        );
        if let Some(note) = self.line(PLACE, &fields::NOTE)? {
            self.sheet.site.set("note", quoted(&note));
        }
        Some(())
    }

    /// A key of the site; where a table may stand in its place, the table's name is an answer too.
    fn site_key(&mut self, place: &str, key: &SiteKey, table: Option<&SiteKey>) -> Option<()> {
        let value = site_value(key, self.sheet.units);
        match key.kind {
            KeyKind::Choice(_) => {
                let answer = self.ask(site_choice(place, key.key, key))?;
                self.sheet.site.set(key.key, quoted(&answer));
            }
            KeyKind::Quantity(measure, default) => {
                let mut question =
                    Question::new(place, key.key, key.about.to_owned(), value.trim_matches('"'));
                if let Some(table) = table {
                    question.ask = format!("{}; \"{}\" to describe it", question.ask, table.key);
                }
                let question = match default {
                    Some(_) => {
                        let taken = format!("taken as {}", value.trim_matches('"'));
                        Question { unknown_is_empty: true, ..question.or(taken) }
                    }
                    None => Question { unknown: true, ..question },
                };
                // Whether it is given or left out is not known yet.
                if default.is_some() {
                    self.sheet.site.take_out(key.key);
                }
                let answer = self.ask(question)?;
                match table {
                    Some(table) if answer.eq_ignore_ascii_case(table.key) => self.site_table(place, table)?,
                    _ if answer.is_empty() => {}
                    _ => self.sheet.site.set(key.key, site_quantity(measure, &answer)),
                }
            }
            // Asked for in the place of the key it stands for.
            KeyKind::Table(_) => {}
        }
        Some(())
    }

    /// A table below the site, with stand-ins for the keys still to come.
    fn site_table(&mut self, place: &str, table: &SiteKey) -> Option<()> {
        let KeyKind::Table(keys) = table.kind else { return Some(()) };
        let mut entries = Entries::default();
        for key in keys {
            entries.set(key.key, site_value(key, self.sheet.units));
        }
        for key in keys {
            self.sheet.site.set(table.key, entries.inline());
            let name = format!("{}.{}", table.key, key.key);
            let value = match key.kind {
                KeyKind::Quantity(measure, _) => {
                    let example = site_value(key, self.sheet.units);
                    let example = example.trim_matches('"');
                    site_quantity(
                        measure,
                        &self.ask(Question::new(place, &name, key.about.to_owned(), example))?,
                    )
                }
                _ => quoted(&self.ask(site_choice(place, &name, key))?),
            };
            entries.set(key.key, value);
        }
        self.sheet.site.set(table.key, entries.inline());
        Some(())
    }

    /// A name for one of several kinds.
    fn kind_name(&mut self, what: &str, usual: &str, taken: &[String]) -> Option<String> {
        let usual = std::iter::once(usual.to_owned())
            .chain((2..).map(|number| format!("{usual} {number}")))
            .find(|name| !taken.contains(name))
            .unwrap_or_default();
        let ask = format!("What do you call this kind of {what}? A run names it");
        let question = Question::new(what, "NAME", ask, &usual).text().or(&usual);
        let name = self.ask(question)?;
        let name = if name.is_empty() { usual } else { name };
        if taken.contains(&name) {
            self.sheet.told = Some(format!("there is a kind of {what} called \"{}\" already", short(&name)));
        } else if name.eq_ignore_ascii_case("none") {
            self.sheet.told = Some(format!("\"{name}\" says that there is no {what}: choose another name"));
        }
        Some(name)
    }

    fn post(&mut self) -> Option<()> {
        let taken: Vec<String> = self.sheet.posts.iter().map(|(name, _)| name.clone()).collect();
        let name = self.kind_name("post", if taken.is_empty() { "line" } else { "end" }, &taken)?;
        let place = format!("post \"{}\"", short(&name));
        self.sheet.posts.push((name, post_to_come()));
        let ask = "What is this post? A tube: girth, a tape round it; diameter, a caliper across; width, of a square \
                   one; section, a pipe by its name in the catalogue. No tube: modulus, another steel shape by its \
                   maker's sheet; moment, what its maker or an engineer says that it may carry; timber, a square post \
                   of wood"
            .to_owned();
        let ways = ["girth", "diameter", "width", "section", "modulus", "moment", "timber"];
        let sizes = Question::new(&place, "what it is", ask, "girth").words(&ways);
        let (field, stand_ins): (_, &[(&str, &str)]) = match self.ask(sizes.or("girth"))?.as_str() {
            // So thin that it fits any tube.
            "diameter" => (post::DIAMETER, &[("measured_wall", "1 mm")]),
            "width" => (post::WIDTH, &[("measured_wall", "1 mm")]),
            "section" => (post::SECTION, &[]),
            "modulus" => (post::MODULUS, &[("face_width", "50 mm"), ("yield", "30 ksi")]),
            "moment" => (post::MOMENT, &[("moment_is", "allowable"), ("face_width", "50 mm")]),
            "timber" => (post::TIMBER, &[]),
            _ => (post::GIRTH, &[("measured_wall", "1 mm")]),
        };
        let mut question = self.question(&place, &field);
        question.ask = question.ask.split(", in place of").next().unwrap_or_default().to_owned();
        if !field.how.is_empty() {
            question.ask = format!("{}; {}", question.ask, field.how);
        }
        let size = self.ask(question.warning(WIND))?;
        if let Some((_, entries)) = self.sheet.posts.last_mut() {
            *entries = Entries::default();
            entries.set(field.key, quoted(&size));
        }
        for (key, value) in stand_ins {
            self.set_post(key, quoted(value));
        }
        match field.key {
            "modulus" => {
                self.post_figure(&place, &post::FACE_WIDTH)?;
                self.post_figure(&place, &post::YIELD.known())?;
            }
            "moment" => {
                let question = self.question(&place, &post::MOMENT_IS).words(&["design", "allowable"]);
                let answer = self.ask(question)?;
                self.set_post("moment_is", quoted(&answer));
                self.post_figure(&place, &post::FACE_WIDTH)?;
            }
            "timber" => self.timber(&place)?,
            of_tube => {
                if of_tube != "section" {
                    self.wall(&place)?;
                }
                self.post_figure(&place, &post::YIELD)?;
                let rust = self.ask(self.question(&place, &post::RUST).or("none to see: taken as 0"))?;
                if !rust.is_empty() {
                    self.set_post("rust_at_grade", quoted(&rust));
                }
            }
        }
        if let Some(note) = self.line(&place, &fields::NOTE)? {
            self.set_post("note", quoted(&note));
        }
        Some(())
    }

    fn set_post(&mut self, key: &str, value: String) {
        if let Some((_, entries)) = self.sheet.posts.last_mut() {
            entries.set(key, value);
        }
    }

    fn post_figure(&mut self, place: &str, field: &Field) -> Option<()> {
        let answer = self.ask(self.question(place, field))?;
        self.set_post(field.key, quoted(&answer));
        Some(())
    }

    /// The wall of a tube, by the label or as measured; a stand-in holds its place until then.
    fn wall(&mut self, place: &str) -> Option<()> {
        let ask = "How is the wall known: nominal, by the label or the order, or measured, with a caliper at an open top?";
        let ways = Question::new(place, "nominal_wall or measured_wall", ask.to_owned(), "nominal");
        let ways = Question { unknown: true, ..ways.words(&["nominal", "measured"]).warning(CLIMBING) };
        let wall = match self.ask(ways)?.as_str() {
            "nominal" => Some(post::NOMINAL_WALL),
            "measured" => Some(post::MEASURED_WALL),
            _ => None,
        };
        let key = wall.map_or("nominal_wall", |field| field.key);
        let value = match wall {
            Some(field) => {
                let question = Question { ask: field.what.to_owned(), ..self.question(place, &field) };
                self.ask(question)?
            }
            None => UNKNOWN.to_owned(),
        };
        if let Some((_, entries)) = self.sheet.posts.last_mut() {
            entries.take_out("measured_wall");
        }
        self.set_post(key, quoted(&value));
        Some(())
    }

    /// What the strength of a timber hangs on beside its size; what is not known is taken at both ends.
    fn timber(&mut self, place: &str) -> Option<()> {
        for field in [post::SPECIES, post::GRADE] {
            self.post_figure(place, &field.open())?;
        }
        let question = self.question(place, &post::SERVICE).words(&["wet", "dry"]).or("wet");
        let service = self.ask(Question { unknown_is_empty: true, ..question })?;
        if !service.is_empty() {
            self.set_post("service", quoted(&service));
        }
        let question = self.question(place, &post::INCISED).words(&["yes", "no"]);
        let incised = self.ask(Question { unknown: true, ..question })?;
        self.set_post("incised", quoted(&incised));
        Some(())
    }

    fn set_screen(&mut self, key: &str, value: String) {
        if let Some((_, entries)) = self.sheet.screens.last_mut() {
            entries.set(key, value);
        }
    }

    fn screen(&mut self) -> Option<()> {
        let taken: Vec<String> = self.sheet.screens.iter().map(|(name, _)| name.clone()).collect();
        let name = self.kind_name("cloth", "cloth", &taken)?;
        let place = format!("cloth \"{}\"", short(&name));
        let mut stand_in = Entries::default();
        stand_in.set("solidity", "1.0".to_owned());
        stand_in.set("height", quoted("1 m"));
        self.sheet.screens.push((name, stand_in));
        let mut question = self.question(&place, &screen::CLOTH).text();
        let names: Vec<&str> = crate::screen::cloths().iter().map(|cloth| cloth.name.as_str()).collect();
        question.ask = format!("{}. The catalogue has {}", question.ask, names.join(", "));
        let cloth = self.ask(question)?;
        let entry = named(&cloth);
        if let Some((_, entries)) = self.sheet.screens.last_mut() {
            *entries = Entries::default();
            entries.set("cloth", quoted(&cloth));
            entries.set("solidity", "1.0".to_owned());
            entries.set("height", quoted("1 m"));
        }
        let mut question = self.question(&place, &screen::SOLIDITY);
        question.ask = format!("{}. Only a density for light? Answer: density", question.ask);
        if let Some(entry) = entry {
            let (low, high) = (entry.solidity_low, entry.solidity_high);
            let known = if low == high { low.to_string() } else { format!("{low} .. {high}") };
            question.unknown = false;
            question.unknown_is_empty = true;
            question.empty = Some(format!("as the catalogue has it, {known}"));
        }
        let solidity = self.ask(question)?;
        if solidity.eq_ignore_ascii_case("density") {
            let density = self.ask(Question {
                ask: screen::DENSITY.how.to_owned(),
                ..self.question(&place, &screen::DENSITY)
            })?;
            if let Some((_, entries)) = self.sheet.screens.last_mut() {
                entries.take_out("solidity");
            }
            self.set_screen("density", quoted(&density));
            self.set_screen("colour", quoted("black"));
            let question = self.question(&place, &screen::COLOUR).text();
            let colour = self.ask(question)?;
            self.set_screen("colour", quoted(&colour));
        } else if solidity.is_empty() {
            if let Some((_, entries)) = self.sheet.screens.last_mut() {
                entries.take_out("solidity");
            }
        } else {
            self.set_screen("solidity", number_or_text(&solidity));
        }
        let question = self.question(&place, &screen::HEIGHT);
        let height = self.ask(question)?;
        self.set_screen("height", quoted(&height));
        let question = self.question(&place, &screen::CONDITION).words(&["dry", "iced", UNKNOWN]).or("dry");
        let condition = self.ask(question)?;
        if !condition.is_empty() {
            self.set_screen("condition", quoted(&condition));
        }
        let question =
            Question { unknown: false, unknown_is_empty: true, ..self.question(&place, &screen::WEIGHT) };
        let weight = self.ask(question.or("left out"))?;
        if !weight.is_empty() {
            self.set_screen("weight", quoted(&weight));
        }
        self.fastening(&place)?;
        let question = self.question(&place, &screen::VENT_WIDTH).or("no windows");
        let width =
            self.ask(Question { key: "vents.width".to_owned(), unknown_is_empty: true, ..question })?;
        if !width.is_empty() {
            let mut vents = Entries::default();
            vents.set("width", quoted(&width));
            vents.set("height", quoted("1 mm"));
            vents.set("per_bay", "1".to_owned());
            for field in [screen::VENT_HEIGHT, screen::PER_BAY] {
                self.set_screen("vents", vents.inline());
                let question =
                    Question { key: format!("vents.{}", field.key), ..self.question(&place, &field) };
                let answer = self.ask(question)?;
                let value = if field.key == "per_bay" { number_or_text(&answer) } else { quoted(&answer) };
                vents.set(field.key, value);
            }
            self.set_screen("vents", vents.inline());
        }
        if let Some(note) = self.line(&place, &fields::NOTE)? {
            self.set_screen("note", quoted(&note));
        }
        Some(())
    }

    fn fastening(&mut self, place: &str) -> Option<()> {
        let question = self.question(place, &screen::KIND).words(&["ties", "lacing"]);
        let kind = self.ask(Question { key: "fastening.kind".to_owned(), unknown: true, ..question })?;
        if kind == UNKNOWN {
            self.set_screen("fastening", quoted(UNKNOWN));
            return Some(());
        }
        let mut fastening = Entries::default();
        fastening.set("kind", quoted(&kind));
        fastening.set("spacing", quoted(UNKNOWN));
        fastening.set("rows", "[\"top\"]".to_owned());
        self.set_screen("fastening", fastening.inline());
        let key = |field: &Field| format!("fastening.{}", field.key);
        if kind == "ties" {
            let field = screen::STRENGTH;
            let strength = self.ask(Question { key: key(&field), ..self.question(place, &field) })?;
            fastening.set("strength", quoted(&strength));
        } else {
            let field = screen::ROPE;
            let question = Question { key: key(&field), ..self.question(place, &field) };
            let rope = self.ask(Question { unknown_is_empty: true, ..question.text().or("left out") })?;
            if !rope.is_empty() {
                fastening.set("rope", quoted(&rope));
            }
        }
        self.set_screen("fastening", fastening.inline());
        let field = screen::SPACING;
        let spacing = self.ask(Question { key: key(&field), ..self.question(place, &field) })?;
        fastening.set("spacing", quoted(&spacing));
        self.set_screen("fastening", fastening.inline());
        let field = screen::ROWS;
        let rows = self.ask(Question { key: key(&field), ..self.question(place, &field) })?;
        let rows = rows.to_lowercase().replace(" and ", ",").replace(' ', ",");
        fastening.set("rows", list(&rows, quoted));
        self.set_screen("fastening", fastening.inline());
        Some(())
    }

    /// What an order list is asked for; no check reads it.
    fn order(&mut self) -> Option<()> {
        let ask =
            "Is an order list wanted with gaps, spares, prices or times of your own? Each may be left out";
        if !self.yes("order", "an order list", ask, "no")? {
            return Some(());
        }
        for field in order::FIELDS {
            let question =
                Question { unknown_is_empty: true, ..self.question("order", field).or("left out") };
            let answer = self.ask(question)?;
            if !answer.is_empty() {
                self.sheet.order.set(field.key, quoted(&answer));
            }
        }
        Some(())
    }

    fn set_run(&mut self, key: &str, value: String) {
        if let Some(run) = self.sheet.runs.last_mut() {
            run.set(key, value);
        }
    }

    fn run(&mut self) -> Option<()> {
        const USUAL: [&str; 4] = ["north end", "east side", "south end", "west side"];
        let number = self.sheet.runs.len();
        let before = self.sheet.runs.last().cloned();
        let usual = USUAL[number.min(USUAL.len())..]
            .iter()
            .map(|name| (*name).to_owned())
            .chain((number + 1..).map(|number| format!("run {number}")))
            .find(|usual| self.sheet.runs.iter().all(|run| run.get("name") != Some(&quoted(usual))))
            .unwrap_or_default();
        let question =
            Question { example: usual, ..self.question(&format!("run {}", number + 1), &run::NAME) };
        let name = self.ask(question.text())?;
        let place = format!("run \"{}\"", short(&name));
        let to_come = self.sheet.run_to_come();
        self.sheet.runs.push(to_come);
        self.set_run("name", quoted(&name));
        let court = match before.as_ref().and_then(|run| run.get("court")) {
            Some(court) => {
                let question = self.question(&place, &run::COURT).text().or("as the run before");
                let answer = self.ask(question)?;
                Some(if answer.is_empty() { court.to_owned() } else { quoted(&answer) })
            }
            None => self.line(&place, &run::COURT)?.map(|court| quoted(&court)),
        };
        if let Some(court) = court {
            self.set_run("court", court);
        }
        let question = self
            .question(&place, &run::FACES)
            .words(&fields::COMPASS)
            .or("left out; then no corner is found");
        let faces = self.ask(Question { unknown_is_empty: true, ..question })?;
        if !faces.is_empty() {
            self.set_run("faces", quoted(&faces));
        }
        let ask = "Are height, rails, steel mesh, footings and kinds of posts as on the run before?";
        match before {
            Some(before) if self.yes(&place, "as before", ask, "yes")? => {
                for key in IN_COMMON {
                    if let Some(value) = before.get(key) {
                        self.set_run(key, value.to_owned());
                    }
                }
            }
            _ => self.frame(&place)?,
        }
        let mut question = self.question(&place, &run::BAYS);
        question.ask = format!("{}; commas between", question.ask);
        let bays = self.ask(question)?;
        self.set_run("bays", list(&bays, quoted));
        let mut corner = false;
        for field in [run::START, run::FINISH] {
            let mut question = Question { example: "free".to_owned(), ..self.question(&place, &field) };
            question.ask = format!("{}, like {}", question.ask, field.example(self.sheet.units));
            let end = end_value(&self.ask(question)?);
            corner |= end == "\"corner\"";
            self.set_run(field.key, end);
        }
        self.other_kinds(&place, corner, bays.to_lowercase().contains("gate"))?;
        self.cloth(&place)?;
        self.guys(&place)?;
        if let Some(note) = self.line(&place, &fields::NOTE)? {
            self.set_run("note", quoted(&note));
        }
        Some(())
    }

    /// What stands without cloth: height, rails, mesh, footings, kinds of posts.
    fn frame(&mut self, place: &str) -> Option<()> {
        let question = self.question(place, &run::HEIGHT);
        let height = self.ask(question)?;
        self.set_run("height", quoted(&height));
        let question = Question { unknown_is_empty: true, ..self.question(place, &run::BASE) };
        let base = self.ask(question.or("0, on the ground"))?;
        if !base.is_empty() {
            self.set_run("base_above_ground", quoted(&base));
        }
        for (rail, usual) in [("top_rail", None), ("mid_rail", Some("none")), ("bottom_rail", Some("none"))] {
            let question = Question { key: rail.to_owned(), ..self.question(place, &run::RAIL) };
            let question = Question { empty: usual.map(str::to_owned), ..question };
            let answer = self.ask(question)?;
            if answer.is_empty() {
                continue;
            }
            let none = answer.eq_ignore_ascii_case("none");
            let value = if none { quoted("none") } else { format!("{{ diameter = {} }}", quoted(&answer)) };
            self.set_run(rail, value);
        }
        let question = Question { key: "chain_link.mesh".to_owned(), ..self.question(place, &run::MESH) };
        let mesh = self.ask(question)?;
        if mesh.eq_ignore_ascii_case("none") {
            self.set_run("chain_link", quoted("none"));
        } else {
            let link = |wire: &str| format!("{{ mesh = {}, wire = {} }}", quoted(&mesh), quoted(wire));
            self.set_run("chain_link", link("9 gauge"));
            let question = Question { key: "chain_link.wire".to_owned(), ..self.question(place, &run::WIRE) };
            let wire = self.ask(question)?;
            self.set_run("chain_link", link(&wire));
        }
        let question = self.question(place, &run::SHAPE).words(&FootingShape::ALL.map(FootingShape::word));
        let question = Question { key: "footing.shape".to_owned(), unknown: true, ..question };
        let shape = self.ask(question.warning(DIGGING))?;
        if shape == UNKNOWN {
            self.set_run("footing", quoted(UNKNOWN));
        } else {
            let mut footing = Entries::default();
            footing.set("shape", quoted(&shape));
            // A driven post has no concrete to be wide.
            let asked: &[Field] =
                if shape == FootingShape::Driven.word() { &[run::DEPTH] } else { &[run::WIDTH, run::DEPTH] };
            for field in asked {
                footing.set(field.key, quoted(UNKNOWN));
            }
            for field in asked {
                self.set_run("footing", footing.inline());
                let question =
                    Question { key: format!("footing.{}", field.key), ..self.question(place, field) };
                let answer = self.ask(question)?;
                footing.set(field.key, quoted(&answer));
            }
            self.set_run("footing", footing.inline());
        }
        let kinds: Vec<String> = self.sheet.posts.iter().map(|(name, _)| name.clone()).collect();
        if kinds.len() > 1 {
            for field in [run::LINE_POST, run::END_POST] {
                let example = if field.key == "end_post" { &kinds[1] } else { &kinds[0] };
                let question = Question { example: example.clone(), ..self.question(place, &field) };
                let kind = self.ask(question.words(&kinds))?;
                self.set_run(field.key, quoted(&kind));
            }
        }
        Some(())
    }

    /// Posts at corners and gates, and posts that differ, where there are kinds to choose from.
    fn other_kinds(&mut self, place: &str, corner: bool, gate: bool) -> Option<()> {
        let kinds: Vec<String> = self.sheet.posts.iter().map(|(name, _)| name.clone()).collect();
        if kinds.len() < 2 {
            return Some(());
        }
        for (wanted, field) in [(corner, run::CORNER_POST), (gate, run::GATE_POST)] {
            if !wanted {
                continue;
            }
            let question = Question { ask: field.what.to_owned(), ..self.question(place, &field) };
            let kind = self.ask(question.words(&kinds).or("as end_post"))?;
            if !kind.is_empty() {
                self.set_run(field.key, quoted(&kind));
            }
        }
        let mut others: Vec<String> = Vec::new();
        loop {
            let question = Question { key: "other_posts".to_owned(), ..self.question(place, &run::NUMBERS) };
            let numbers = self.ask(question.or(if others.is_empty() { "none" } else { "no more" }))?;
            if numbers.is_empty() {
                return Some(());
            }
            let numbers = list(&numbers.replace(' ', ","), number_or_text);
            let other = |kind: &str| format!("{{ numbers = {numbers}, post = {} }}", quoted(kind));
            let together = |others: &[String], last: String| {
                let all: Vec<String> = others.iter().cloned().chain([last]).collect();
                format!("[{}]", all.join(", "))
            };
            self.set_run("other_posts", together(&others, other(&kinds[0])));
            let question =
                Question { key: "other_posts.post".to_owned(), ..self.question(place, &run::OTHER_POST) };
            let kind = self.ask(Question { example: kinds[1].clone(), ..question.words(&kinds) })?;
            self.set_run("other_posts", together(&others, other(&kind)));
            others.push(other(&kind));
        }
    }

    fn cloth(&mut self, place: &str) -> Option<()> {
        if self.sheet.screens.is_empty() {
            self.set_run("screen", quoted("none"));
            return Some(());
        }
        let mut names: Vec<String> = self.sheet.screens.iter().map(|(name, _)| name.clone()).collect();
        names.push("none".to_owned());
        let ask = "Which kind of cloth hangs here, or is to hang?".to_owned();
        let name = self.ask(Question::new(place, "screen", ask, "none").words(&names))?;
        if name == "none" {
            self.set_run("screen", quoted("none"));
            return Some(());
        }
        let mut hung = Entries::default();
        hung.set("like", quoted(&name));
        hung.set("bottom", quoted("0 m"));
        self.set_run("screen", hung.inline());
        let question = Question { key: "screen.bottom".to_owned(), ..self.question(place, &screen::BOTTOM) };
        let bottom = self.ask(question)?;
        hung.set("bottom", quoted(&bottom));
        self.set_run("screen", hung.inline());
        let question = self.question(place, &screen::FACE).words(&fields::FACES).or("left out");
        let face =
            self.ask(Question { key: "screen.face".to_owned(), unknown_is_empty: true, ..question })?;
        if !face.is_empty() {
            hung.set("face", quoted(&face));
        }
        let mut question = self.question(place, &screen::BAYS).or("the whole side");
        question.ask = screen::BAYS.what.to_owned();
        let bays = self.ask(Question { key: "screen.bays".to_owned(), ..question })?;
        if !bays.is_empty() {
            hung.set("bays", quoted(&bays));
        }
        self.set_run("screen", hung.inline());
        Some(())
    }

    /// Back braces and guys, those alike together, with the posts they hold.
    fn guys(&mut self, place: &str) -> Option<()> {
        // What stands for the sizes until they are given.
        const BRACE: [(&str, &str); 3] =
            [("diameter", "42.4 mm"), ("nominal_wall", "3.6 mm"), ("yield", "205 MPa")];
        let mut all: Vec<String> = Vec::new();
        loop {
            let keyed = |field: &Field, question: Question| Question {
                key: format!("guy.{}", field.key),
                ..question
            };
            let mut question = self.question(place, &run::GUY_POSTS);
            question.ask = format!("back braces and guys: {}", question.ask);
            let or = if all.is_empty() { "none" } else { "no more" };
            let numbers = self.ask(keyed(&run::GUY_POSTS, question.or(or)))?;
            if numbers.is_empty() {
                return Some(());
            }
            let mut guy = Entries::default();
            guy.set("posts", list(&numbers.replace(' ', ","), number_or_text));
            for (key, value) in
                [("kind", "guy"), ("height", "0.3 m"), ("back", "0.3 m"), ("side", "outside"), BRACE[0]]
            {
                guy.set(key, quoted(value));
            }
            self.set_guys(&all, &guy);
            let question = self.question(place, &run::GUY_KIND).words(&crate::survey::GUY_KINDS);
            let kind = self.ask(keyed(&run::GUY_KIND, question))?;
            guy.set("kind", quoted(&kind));
            let is_brace = kind == crate::survey::GUY_KINDS[0];
            if is_brace {
                BRACE.iter().for_each(|(key, value)| guy.set(key, quoted(value)));
            }
            self.set_guys(&all, &guy);
            let sizes: &[Field] =
                if is_brace { &[run::GUY_WALL, run::GUY_YIELD] } else { &[run::GUY_ALLOWED] };
            let asked = [run::GUY_HEIGHT, run::GUY_BACK, run::GUY_SIDE, run::GUY_DIAMETER];
            for field in asked.iter().chain(sizes) {
                let mut question = self.question(place, field);
                if field.key == run::GUY_SIDE.key {
                    question = question.words(&fields::FACES);
                }
                if field.key == run::GUY_ALLOWED.key {
                    question = Question {
                        unknown_is_empty: true,
                        ..question.or("left out; then it is not checked")
                    };
                }
                let answer = self.ask(keyed(field, question))?;
                if !answer.is_empty() {
                    guy.set(field.key, quoted(&answer));
                }
                self.set_guys(&all, &guy);
            }
            all.push(guy.inline());
        }
    }

    fn set_guys(&mut self, before: &[String], last: &Entries) {
        let all: Vec<String> = before.iter().cloned().chain([last.inline()]).collect();
        self.set_run("guy", format!("[{}]", all.join(", ")));
    }

    /// Every corner must be met by another run: those that are not are asked again.
    fn corners(&mut self) -> Option<()> {
        loop {
            let (text, places) = self.sheet.text(Corners::Asked);
            let Err(mistakes) = Survey::read(&text, "your answers") else { return Some(()) };
            let corner = mistakes.mistakes.iter().find_map(|mistake| {
                let at = mistake.at.as_ref()?.start;
                let (_, run, key) = places.iter().find(|(place, ..)| place.contains(&at))?;
                Some((*run, *key, in_words(mistake)))
            });
            // Each answer was read when it was given, so that only corners can be left.
            let (run, key, ask) = corner.unwrap_or_else(|| (0, "start", first_of(&mistakes)));
            let place = format!("run {}", short(self.sheet.runs[run].get("name").unwrap_or_default()));
            let question = Question { corner: true, ..Question::new(&place, key, ask, "free") };
            let end = end_value(&self.ask(question)?);
            self.sheet.runs[run].set(key, end);
        }
    }
}
