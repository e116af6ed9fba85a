//! The published schema of a survey, held against the reader of surveys: neither knows a key that the other does not.

use crate::support::run;
use fencegust::Survey;
use fencegust::wind::{Code, KeyKind};
use regex_lite::Regex;
use serde_json::{Map, Value, json};
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;

/// Judges JSON by the keywords the schema uses; a keyword it does not know fails the test.
struct Judge {
    root: Value,
    patterns: RefCell<BTreeMap<String, Regex>>,
    judged: RefCell<BTreeMap<(String, String), bool>>,
}

const SILENT: [&str; 5] = ["$schema", "$defs", "title", "description", "examples"];

impl Judge {
    fn new() -> Self {
        let text = fs::read_to_string("schema/survey-1.schema.json").unwrap();
        Self {
            root: serde_json::from_str(&text).unwrap(),
            patterns: RefCell::default(),
            judged: RefCell::default(),
        }
    }

    fn resolve<'s>(&'s self, schema: &'s Value) -> &'s Value {
        match schema.get("$ref").and_then(Value::as_str) {
            Some(name) => &self.root["$defs"][name.strip_prefix("#/$defs/").unwrap()],
            None => schema,
        }
    }

    fn takes(&self, value: &Value) -> bool {
        self.is_valid(&self.root, value)
    }

    /// Whether a text is as a pattern says; the same texts come again and again, and are judged once.
    fn matches(&self, pattern: &str, text: &str) -> bool {
        let mut judged = self.judged.borrow_mut();
        *judged.entry((pattern.to_owned(), text.to_owned())).or_insert_with(|| {
            let mut patterns = self.patterns.borrow_mut();
            let made = || Regex::new(pattern).unwrap_or_else(|error| panic!("{pattern}: {error}"));
            patterns.entry(pattern.to_owned()).or_insert_with(made).is_match(text)
        })
    }

    fn is_valid(&self, schema: &Value, value: &Value) -> bool {
        let keywords = schema.as_object().unwrap_or_else(|| panic!("{schema}"));
        keywords.iter().all(|(keyword, wanted)| self.holds(keywords, keyword, wanted, value))
    }

    fn holds(&self, all: &Map<String, Value>, keyword: &str, wanted: &Value, value: &Value) -> bool {
        let each = || wanted.as_array().unwrap().iter();
        let count = || usize::try_from(wanted.as_u64().unwrap()).unwrap();
        match keyword {
            silent if SILENT.contains(&silent) => true,
            "$ref" => self.is_valid(self.resolve(&json!({ "$ref": wanted })), value),
            "type" => match wanted {
                Value::Array(types) => types.iter().any(|one| is_of_type(one, value)),
                one => is_of_type(one, value),
            },
            "const" => value == wanted,
            "enum" => each().any(|one| one == value),
            "pattern" => value.as_str().is_none_or(|text| self.matches(wanted.as_str().unwrap(), text)),
            "minimum" => value.as_f64().is_none_or(|figure| figure >= wanted.as_f64().unwrap()),
            "maximum" => value.as_f64().is_none_or(|figure| figure <= wanted.as_f64().unwrap()),
            "exclusiveMinimum" => value.as_f64().is_none_or(|figure| figure > wanted.as_f64().unwrap()),
            "minItems" => value.as_array().is_none_or(|list| list.len() >= count()),
            "minProperties" => value.as_object().is_none_or(|table| table.len() >= count()),
            "uniqueItems" => value
                .as_array()
                .is_none_or(|list| list.iter().enumerate().all(|(at, one)| !list[..at].contains(one))),
            "items" => value.as_array().is_none_or(|list| list.iter().all(|one| self.is_valid(wanted, one))),
            "properties" => value.as_object().is_none_or(|table| {
                table.iter().all(|(key, value)| wanted.get(key).is_none_or(|own| self.is_valid(own, value)))
            }),
            "required" => value
                .as_object()
                .is_none_or(|table| each().all(|key| table.contains_key(key.as_str().unwrap()))),
            "additionalProperties" => value.as_object().is_none_or(|table| {
                let known = |key: &str| all.get("properties").is_some_and(|own| own.get(key).is_some());
                table.iter().filter(|(key, _)| !known(key)).all(|(_, value)| match wanted {
                    Value::Bool(any) => *any,
                    schema => self.is_valid(schema, value),
                })
            }),
            "allOf" => each().all(|one| self.is_valid(one, value)),
            "anyOf" => each().any(|one| self.is_valid(one, value)),
            "oneOf" => each().filter(|one| self.is_valid(one, value)).count() == 1,
            "not" => !self.is_valid(wanted, value),
            "if" => {
                let branch = if self.is_valid(wanted, value) { "then" } else { "else" };
                all.get(branch).is_none_or(|schema| self.is_valid(schema, value))
            }
            "then" | "else" => {
                assert!(all.contains_key("if"));
                true
            }
            other => panic!("the judge does not know the keyword {other}"),
        }
    }

    /// Every table the schema describes, by its path, with the keys it names.
    fn tables(&self) -> BTreeMap<String, BTreeMap<String, &Value>> {
        let mut found = BTreeMap::new();
        self.walk("", &self.root, &mut found);
        found
    }

    fn walk<'s>(
        &'s self,
        path: &str,
        schema: &'s Value,
        found: &mut BTreeMap<String, BTreeMap<String, &'s Value>>,
    ) {
        let schema = self.resolve(schema);
        for one in schema.get("anyOf").and_then(Value::as_array).into_iter().flatten() {
            self.walk(path, one, found);
        }
        // Lists of tables are the runs and the posts that differ; other lists deal out what stands there alone.
        let is_list = path == "run" || path.ends_with("other_posts");
        if let Some(items) = schema.get("items").filter(|_| is_list) {
            self.walk(path, items, found);
        }
        let dot = if path.is_empty() { "" } else { "." };
        if let Some(kind) = schema.get("additionalProperties").filter(|kind| kind.is_object()) {
            self.walk(&format!("{path}{dot}x"), kind, found);
        }
        if let Some(keys) = schema.get("properties").and_then(Value::as_object) {
            let own = found.entry(path.to_owned()).or_default();
            own.extend(keys.iter().map(|(key, value)| (key.clone(), value)));
            for (key, value) in keys {
                self.walk(&format!("{path}{dot}{key}"), value, found);
            }
        }
    }
}

fn is_of_type(wanted: &Value, value: &Value) -> bool {
    match wanted.as_str().unwrap() {
        "object" => value.is_object(),
        "array" => value.is_array(),
        "string" => value.is_string(),
        "boolean" => value.is_boolean(),
        "number" => value.is_number(),
        "integer" => value.is_u64() || value.is_i64(),
        other => panic!("the judge does not know the type {other}"),
    }
}

/// Whether a key's schema lets nothing stand there.
fn is_never(schema: &Value) -> bool {
    schema.get("not").is_some_and(|not| *not == json!({}))
}

/// A survey as JSON; dates are text.
fn json_of(value: &toml::Value) -> Value {
    match value {
        toml::Value::Table(table) => {
            Value::Object(table.iter().map(|(key, value)| (key.clone(), json_of(value))).collect())
        }
        toml::Value::Array(list) => Value::Array(list.iter().map(json_of).collect()),
        toml::Value::String(text) => text.as_str().into(),
        toml::Value::Integer(number) => (*number).into(),
        toml::Value::Float(number) => (*number).into(),
        toml::Value::Boolean(truth) => (*truth).into(),
        toml::Value::Datetime(date) => date.to_string().into(),
    }
}

/// Every survey of the tests and the examples, and the drafts the program writes.
fn surveys() -> Vec<(String, toml::Value)> {
    let mut texts = Vec::new();
    for folder in ["tests/surveys", "examples"] {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.extension().is_some_and(|end| end == "toml") {
                texts.push((path.display().to_string(), fs::read_to_string(path).unwrap()));
            }
        }
    }
    for units in ["us", "si"] {
        texts.push((format!("new --units {units}"), run(&["new", "--units", units, "--runs", "2"]).text));
    }
    assert!(texts.len() >= 7, "{}", texts.len());
    texts.into_iter().map(|(name, text)| (name, toml::Value::Table(text.parse().unwrap()))).collect()
}

fn read(survey: &toml::Value) -> Result<Survey, fencegust::survey::Mistakes> {
    Survey::read(&toml::to_string(survey).unwrap(), "survey")
}

/// A place in a survey: names of keys and numbers of items.
#[derive(Debug, Clone, PartialEq)]
enum Step {
    Key(String),
    Item(usize),
}

/// Every place of a survey at which something stands, tables before what is in them.
fn places(value: &toml::Value) -> Vec<Vec<Step>> {
    let mut found = Vec::new();
    let mut below = |step: Step, value: &toml::Value| {
        found.push(vec![step.clone()]);
        for rest in places(value) {
            found.push(std::iter::once(step.clone()).chain(rest).collect());
        }
    };
    match value {
        toml::Value::Table(table) => {
            table.iter().for_each(|(key, value)| below(Step::Key(key.clone()), value))
        }
        toml::Value::Array(list) => {
            list.iter().enumerate().for_each(|(at, value)| below(Step::Item(at), value))
        }
        _ => {}
    }
    found
}

fn at<'v>(survey: &'v mut toml::Value, place: &[Step]) -> &'v mut toml::Value {
    place.iter().fold(survey, |value, step| match step {
        Step::Key(key) => &mut value[key.as_str()],
        Step::Item(item) => &mut value[*item],
    })
}

/// A name of a kind is the crew's own, and no key.
fn is_name_of_a_kind(place: &[Step]) -> bool {
    let kinds = ["post", "screen", "footing"];
    matches!(place, [Step::Key(key), Step::Key(_)] if kinds.contains(&key.as_str()))
}

/// A place without the crew's own names and without the numbers of items.
fn shape(place: &[Step]) -> String {
    let mut shape = String::new();
    for (at, step) in place.iter().enumerate() {
        match step {
            Step::Key(_) if is_name_of_a_kind(&place[..=at]) => shape.push_str(".NAME"),
            Step::Key(key) => shape.push_str(&format!(".{key}")),
            Step::Item(_) => shape.push_str(".."),
        }
    }
    shape
}

/// The places of some surveys, each kind of place once: the survey by index, and the place.
fn unlike_places(surveys: &[(String, toml::Value)]) -> Vec<(usize, Vec<Step>)> {
    let mut seen = BTreeSet::new();
    let mut found = Vec::new();
    for (at, (_, survey)) in surveys.iter().enumerate() {
        found.extend(
            places(survey).into_iter().filter(|place| seen.insert(shape(place))).map(|place| (at, place)),
        );
    }
    assert!(found.len() > 120, "{}", found.len());
    found
}

#[test]
fn the_schema_that_is_published_is_the_one_the_program_prints() {
    let printed = run(&["schema"]);
    assert_eq!((printed.code, printed.err.as_str()), (0, ""));
    let published = fs::read_to_string("schema/survey-1.schema.json").unwrap();
    assert!(published == printed.text, "write it again: fencegust schema > schema/survey-1.schema.json");
    let judge = Judge::new();
    assert_eq!(judge.root["$schema"], "https://json-schema.org/draft/2020-12/schema");
    let defined: BTreeSet<&str> =
        judge.root["$defs"].as_object().unwrap().keys().map(String::as_str).collect();
    let used: BTreeSet<&str> =
        published.split("\"$ref\": \"#/$defs/").skip(1).map(|rest| rest.split('"').next().unwrap()).collect();
    assert_eq!(defined, used);
}

#[test]
fn every_survey_is_valid() {
    let judge = Judge::new();
    for (name, survey) in surveys() {
        read(&survey).unwrap_or_else(|error| panic!("{name}: {error}"));
        assert!(judge.takes(&json_of(&survey)), "{name}");
    }
}

#[test]
fn every_key_of_the_schema_stands_in_a_survey_of_the_tests() {
    let surveys = surveys();
    let used: BTreeSet<String> = unlike_places(&surveys)
        .into_iter()
        .map(|(_, place)| {
            shape(&place).replace(".NAME", ".x").replace("..", "").replace(".all_runs.", ".run.")
        })
        .collect();
    let of_codes: Vec<&str> = Code::ALL.iter().flat_map(|code| code.site_keys()).map(|key| key.key).collect();
    let mut missing = BTreeSet::new();
    for (path, keys) in Judge::new().tables() {
        for (key, _) in keys.iter().filter(|(_, schema)| !is_never(schema)) {
            let key = if path.is_empty() { format!(".{key}") } else { format!(".{path}.{key}") };
            let key = key.replace(".all_runs.", ".run.");
            // A post that a run writes in place has the keys of a kind.
            let key = match key.rsplit_once("post.") {
                Some((place, key)) if place.starts_with(".run.") => format!(".post.x.{key}"),
                _ => key,
            };
            let is_of_code = key.strip_prefix(".site.").is_some_and(|key| of_codes.contains(&key));
            if !used.contains(&key) && !is_of_code {
                missing.insert(key);
            }
        }
    }
    assert!(missing.is_empty(), "write them into tests/surveys/every-key.toml: {missing:?}");
}

/// A survey in which one key has a letter too many; nothing where a place is no key.
fn mistyped(survey: &toml::Value, place: &[Step]) -> Option<toml::Value> {
    let (Step::Key(key), table) = place.split_last()? else { return None };
    if is_name_of_a_kind(place) {
        return None;
    }
    let mut survey = survey.clone();
    let keys = at(&mut survey, table).as_table_mut()?;
    let value = keys.remove(key)?;
    keys.insert(format!("{key}x"), value);
    Some(survey)
}

#[test]
fn every_key_of_every_survey_written_wrong_is_refused_by_the_schema() {
    let judge = Judge::new();
    let mut wrong = 0;
    for (name, survey) in surveys() {
        for place in places(&survey) {
            let Some(mistyped) = mistyped(&survey, &place) else { continue };
            assert!(!judge.takes(&json_of(&mistyped)), "{name}: {place:?}");
            wrong += 1;
        }
    }
    assert!(wrong > 500, "{wrong}");
}

#[test]
fn each_kind_of_key_written_wrong_is_refused_by_the_reader_too() {
    let surveys = surveys();
    let mut wrong = 0;
    for (at, place) in unlike_places(&surveys) {
        let Some(mistyped) = mistyped(&surveys[at].1, &place) else { continue };
        assert!(read(&mistyped).is_err(), "{}: {place:?}", surveys[at].0);
        wrong += 1;
    }
    assert!(wrong > 60, "{wrong}");
}

/// A survey in which every table can be put in its place.
fn base(code: Code) -> toml::Value {
    let text = format!(
        r#"survey = 1
[site]
wind_code = "{}"
wind_speed = "unknown"
[post.x]
girth = "9 in"
nominal_wall = "unknown"
[screen.x]
cloth = "solid"
bottom = "0 ft"
height = "6 ft"
[footing.x]
shape = "round"
width = "12 in"
depth = "36 in"
[all_runs]
height = "10 ft"
chain_link = "none"
ends = "free"
screen = "x"
footing = "x"
[[run]]
name = "run"
bays = ["3 x 10 ft"]
"#,
        code.key()
    );
    toml::Value::Table(text.parse().unwrap())
}

/// Puts a key into the table of a path, which is made where it does not stand.
fn put(survey: &mut toml::Value, path: &str, key: &str, value: toml::Value) {
    let empty = || toml::Value::Table(toml::Table::new());
    let mut table = survey;
    for step in path.split('.').filter(|step| !step.is_empty()) {
        let keys = table.as_table_mut().unwrap();
        let is_list = step == "run" || step == "other_posts";
        let next = keys.entry(step).or_insert_with(empty);
        if is_list && !next.is_array() {
            *next = toml::Value::Array(vec![empty()]);
        } else if !is_list && !next.is_table() {
            *next = empty();
        }
        table = if is_list { &mut next[0] } else { next };
    }
    table.as_table_mut().unwrap().insert(key.to_owned(), value);
}

/// The keys that the reader says it knows in the table of a path.
fn known_to_the_reader(code: Code, path: &str) -> BTreeSet<String> {
    // So unlike any key that the reader names all it knows.
    const UNLIKE: &str = "zzqq";
    let mut survey = base(code);
    put(&mut survey, path, UNLIKE, toml::Value::Integer(1));
    let error = read(&survey).expect_err(path);
    let told = error
        .mistakes
        .iter()
        .find(|mistake| mistake.what.ends_with(&format!("has no key {UNLIKE}")))
        .unwrap_or_else(|| panic!("{path}: the reader says nothing of {UNLIKE}:\n{error}"));
    let known = told.write.as_ref().unwrap().strip_prefix("known are ").unwrap();
    known.split(", ").map(str::to_owned).collect()
}

/// Keys that the reader knows and refuses with words of their own.
const BELONG_TO_ONE_RUN: [&str; 2] = ["name", "bays"];

#[test]
fn the_keys_of_every_table_are_those_the_reader_knows() {
    let judge = Judge::new();
    let tables = judge.tables();
    assert!(tables.len() > 30, "{:?}", tables.keys());
    for (path, keys) in &tables {
        for code in Code::ALL {
            let read: BTreeSet<String> = known_to_the_reader(*code, path);
            let of_code: BTreeSet<&str> = code.site_keys().iter().map(|key| key.key).collect();
            let others = |key: &str| {
                path == "site"
                    && !of_code.contains(key)
                    && Code::ALL.iter().any(|code| code.site_keys().iter().any(|own| own.key == key))
            };
            let described: BTreeSet<String> = keys
                .iter()
                .filter(|(key, schema)| !is_never(schema) && !others(key))
                .map(|(key, _)| key.clone())
                .collect();
            let read: BTreeSet<String> = read
                .into_iter()
                .filter(|key| !(path == "all_runs" && BELONG_TO_ONE_RUN.contains(&key.as_str())))
                .collect();
            assert_eq!(
                described,
                read,
                "the schema (left) and the reader (right) know other keys of [{path}] in {}: see src/report/schema.rs",
                code.key()
            );
        }
    }
}

#[test]
fn what_the_schema_holds_back_the_reader_refuses_and_says_so() {
    let judge = Judge::new();
    let mut held = 0;
    for (path, keys) in judge.tables() {
        for key in keys.iter().filter(|(_, schema)| is_never(schema)).map(|(key, _)| key) {
            let mut survey = base(Code::Asce7_16);
            put(&mut survey, &path, key, toml::Value::String("1 ft".to_owned()));
            let told = read(&survey).unwrap_err().to_string();
            let said = told.contains(&format!("{key} of ")) && told.contains("is not read by this version")
                || told.contains(&format!("{key} belongs to one run"));
            assert!(said, "{path}.{key}: {told}");
            held += 1;
        }
    }
    assert!(held >= 8, "{held}");
}

#[test]
fn every_key_has_its_sentence_and_its_examples_are_valid() {
    let judge = Judge::new();
    let mut examples = 0;
    for (path, keys) in judge.tables() {
        for (key, schema) in keys {
            let about =
                schema["description"].as_str().unwrap_or_else(|| panic!("{path}.{key} has no sentence"));
            assert!(about.len() > 8, "{path}.{key}: {about}");
            for example in schema.get("examples").and_then(Value::as_array).into_iter().flatten() {
                assert!(judge.is_valid(schema, example), "{path}.{key}: {example}");
                examples += 1;
            }
        }
    }
    assert!(examples > 150, "{examples}");
}

#[test]
fn wind_codes_take_their_own_keys_and_no_others() {
    let judge = Judge::new();
    for code in Code::ALL {
        let mut survey = base(*code);
        let bare = judge.takes(&json_of(&survey));
        let needs = code
            .site_keys()
            .iter()
            .any(|key| matches!(key.kind, KeyKind::Choice(_) | KeyKind::Quantity(_, None)));
        assert_eq!(bare, !needs, "{}", code.key());
        for key in code.site_keys() {
            let schema = &judge.root["properties"]["site"]["properties"][key.key];
            // A table of keys may be left out; the surveys of the tests have it.
            if matches!(key.kind, KeyKind::Table(_)) {
                continue;
            }
            let example = schema["examples"][0].clone();
            let value = match &example {
                Value::String(text) => toml::Value::String(text.clone()),
                Value::Number(figure) => toml::Value::Float(figure.as_f64().unwrap()),
                other => panic!("{other}"),
            };
            put(&mut survey, "site", key.key, value);
        }
        assert!(judge.takes(&json_of(&survey)), "{}", code.key());
        read(&survey).unwrap_or_else(|error| panic!("{}: {error}", code.key()));
        for other in Code::ALL.iter().flat_map(|code| code.site_keys()) {
            if !code.site_keys().iter().any(|own| own.key == other.key) {
                let mut foreign = survey.clone();
                put(&mut foreign, "site", other.key, toml::Value::String("B".to_owned()));
                assert!(!judge.takes(&json_of(&foreign)), "{}: {}", code.key(), other.key);
            }
        }
    }
}

/// Mistakes that a schema can see: those in a single value.
const SEEN_IN_ONE_VALUE: [&str; 9] = [
    "is a bare number",
    "has no unit where",
    "belongs here",
    "is no unit known here",
    "cannot be unknown here",
    "is one value, not a range",
    "has no key",
    "is not a number",
    "needs its unit",
];

#[test]
fn what_the_reader_takes_the_schema_takes_and_what_is_wrong_in_one_value_neither_takes() {
    let judge = Judge::new();
    let text = |text: &str| toml::Value::String(text.to_owned());
    let others = [
        toml::Value::Integer(7),
        toml::Value::Float(0.5),
        toml::Value::Float(-0.5),
        toml::Value::Boolean(true),
        text("7"),
        text("7 in"),
        text("7 m"),
        text("80 %"),
        text("7 psf/ft"),
        text("70 mph"),
        text("UNKNOWN"),
        text("None"),
        text("1 in .. 2 in"),
        text("90 mph .. 40 m/s"),
        text("0.75 .. 0.9"),
        text("B or C"),
        text("Inside"),
        text("YES"),
        toml::Value::Array(Vec::new()),
        toml::Value::Array(vec![text("7 in")]),
        toml::Value::Table(toml::Table::new()),
    ];
    let (mut taken, mut refused) = (0, 0);
    let surveys = surveys();
    for (which, place) in unlike_places(&surveys) {
        let (name, survey) = &surveys[which];
        for other in &others {
            let mut changed = survey.clone();
            *at(&mut changed, &place) = other.clone();
            match (judge.takes(&json_of(&changed)), read(&changed)) {
                (schema, Ok(_)) => {
                    assert!(schema, "{name}: {place:?} = {other} is read and refused by the schema");
                    taken += 1;
                }
                (true, Err(error)) => {
                    let told: Vec<&str> =
                        error.mistakes.iter().map(|mistake| mistake.what.as_str()).collect();
                    let seen =
                        told.iter().find(|told| SEEN_IN_ONE_VALUE.iter().any(|words| told.contains(words)));
                    assert_eq!(seen, None, "{name}: {place:?} = {other} passes the schema");
                }
                (false, Err(_)) => refused += 1,
            }
        }
    }
    assert!(taken > 200 && refused > 1000, "{taken} {refused}");
}

#[test]
fn what_the_reader_does_without_the_schema_does_without() {
    let judge = Judge::new();
    let (mut without, mut missed) = (0, 0);
    let surveys = surveys();
    for (which, place) in unlike_places(&surveys) {
        let (name, survey) = &surveys[which];
        let Some((Step::Key(key), table)) = place.split_last() else { continue };
        let mut less = survey.clone();
        at(&mut less, table).as_table_mut().unwrap().remove(key);
        let schema = judge.takes(&json_of(&less));
        if read(&less).is_ok() {
            assert!(schema, "{name}: without {place:?} it is read and refused by the schema");
            without += 1;
        } else {
            missed += usize::from(!schema);
        }
    }
    assert!(without > 60 && missed > 30, "{without} {missed}");
}

#[test]
fn lists_are_dealt_out_to_runs_of_several_names_and_to_no_other() {
    let judge = Judge::new();
    let mut survey = base(Code::Asce7_16);
    put(&mut survey, "site", "exposure", toml::Value::String("C".to_owned()));
    let words = |all: &[&str]| {
        toml::Value::Array(all.iter().map(|one| toml::Value::String((*one).to_owned())).collect())
    };
    for (key, value) in [
        ("faces", words(&["north", "south"])),
        ("height", words(&["10 ft", "12 ft"])),
        ("screen", words(&["x", "none"])),
        ("bays", toml::Value::Array(vec![words(&["10 ft"]), words(&["12 ft"])])),
    ] {
        let mut one = survey.clone();
        put(&mut one, "run", key, value);
        assert!(!judge.takes(&json_of(&one)) && read(&one).is_err(), "{key}");
        put(&mut one, "run", "name", words(&["north end", "south end"]));
        assert!(judge.takes(&json_of(&one)), "{key}");
        read(&one).unwrap_or_else(|error| panic!("{key}: {error}"));
    }
}
