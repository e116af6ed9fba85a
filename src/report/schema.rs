//! The published schema of a survey, so that editors complete and check one: JSON Schema, draft 2020-12.
//!
//! It is built by hand from the keys the crew's form, the draft and the questions share, since the survey is read by a
//! reader of its own that keeps every mistake with its place: there is no type to derive a schema from. What the
//! schema says of each key is the sentence of [`fields`]; a test holds its keys against those the reader knows. It never
//! refuses a survey that the program takes; what hangs together across tables the program alone tells.

mod figures;

use super::fields::{self, Field, job, order, post, run, screen, site};
use super::ordered::Json;
use crate::fastening::rope::Fibre;
use crate::fence::FootingShape;
use crate::footing::Method;
use crate::member::Format;
use crate::units::{Dimension, Measure, System, Unit};
use crate::wind::{Code, KeyKind, SiteKey};
use figures::{Open, figure, in_any_case, number, one_of, pattern, units};
use std::io::{self, Write};

/// The format of the survey that the schema is for.
const FORMAT: u64 = 1;

type Keys = Vec<(String, Json)>;

/// Writes the schema.
///
/// # Errors
/// If the writer fails.
pub fn schema(out: &mut impl Write) -> io::Result<()> {
    serde_json::to_writer_pretty(&mut *out, &survey())?;
    writeln!(out)
}

fn reference(name: &str) -> Json {
    Json::keys([("$ref", format!("#/$defs/{name}").into())])
}

fn text() -> Json {
    Json::keys([("type", "string".into())])
}

fn any_of(all: impl IntoIterator<Item = Json>) -> Json {
    Json::keys([("anyOf", Json::List(all.into_iter().collect()))])
}

fn list_of(items: Json) -> Json {
    Json::keys([("type", "array".into()), ("minItems", Json::Count(1)), ("items", items)])
}

/// One of some words, as they are written or in capitals.
fn choice(words: &[&str]) -> Json {
    Json::keys([
        ("type", "string".into()),
        (
            "anyOf",
            Json::List(vec![
                Json::keys([("enum", Json::words(words.iter().copied()))]),
                Json::keys([("pattern", format!(r"^\s*{}\s*$", one_of(words.iter().copied())).into())]),
            ]),
        ),
    ])
}

/// One of some words, as they are written.
fn exactly(words: &[&str]) -> Json {
    Json::keys([("enum", Json::words(words.iter().copied()))])
}

fn yes_or_no() -> Json {
    any_of([Json::keys([("type", "boolean".into())]), choice(&["yes", "no"])])
}

/// The word "none" or "unknown", beside what else may stand there.
fn word(word: &str) -> Json {
    choice(&[word])
}

/// A key with its sentence and examples in both systems of units.
fn key(field: &Field, value: Json) -> (String, Json) {
    let (us, si) = (field.example(System::Us), field.example(System::Si));
    let examples = if us == si { vec![us] } else { vec![us, si] };
    let examples = examples.into_iter().filter(|example| !example.is_empty()).map(Json::from).collect();
    key_like(field, value, examples)
}

/// The same with examples of its own.
fn key_like(field: &Field, value: Json, examples: Vec<Json>) -> (String, Json) {
    (field.key.to_owned(), about(&field.sentence(), value, examples))
}

fn about(sentence: &str, value: Json, examples: Vec<Json>) -> Json {
    let mut keys: Keys = vec![("description".to_owned(), sentence.into())];
    match value {
        // The sentence of a key goes before what is said of any figure of its kind.
        Json::Keys(value) => keys.extend(value.into_iter().filter(|(key, _)| key != "description")),
        other => keys.push(("const".to_owned(), other)),
    }
    if !examples.is_empty() {
        keys.push(("examples".to_owned(), Json::List(examples)));
    }
    Json::Keys(keys)
}

/// A key that this version does not read, or that belongs elsewhere: nothing may stand there.
fn never(name: &str, why: &str) -> (String, Json) {
    (name.to_owned(), Json::keys([("description", why.into()), ("not", Json::Keys(Vec::new()))]))
}

fn reserved(name: &str, what: &str) -> (String, Json) {
    never(name, &format!("reserved and not read by this version: {what}"))
}

/// A table with these keys and no others.
fn table(keys: Keys, required: &[&str]) -> Json {
    let mut table = vec![("type".to_owned(), "object".into()), ("properties".to_owned(), Json::Keys(keys))];
    if !required.is_empty() {
        table.push(("required".to_owned(), Json::words(required.iter().copied())));
    }
    table.push(("additionalProperties".to_owned(), Json::Truth(false)));
    Json::Keys(table)
}

/// The same with what must hold besides.
fn table_where(keys: Keys, required: &[&str], more: Keys) -> Json {
    match table(keys, required) {
        Json::Keys(mut table) => {
            table.extend(more);
            Json::Keys(table)
        }
        other => other,
    }
}

fn requires(keys: &[&str]) -> Json {
    Json::keys([("required", Json::words(keys.iter().copied()))])
}

fn note() -> (String, Json) {
    key(&fields::NOTE, text())
}

fn from() -> (String, Json) {
    key(&fields::FROM, choice(&fields::FROM_WAYS))
}

fn like() -> (String, Json) {
    key(&fields::LIKE, text())
}

/// The kinds of figures a survey holds, each under its name among the definitions.
const FIGURES: [(&str, Dimension, Open, bool); 18] = [
    ("length", Dimension::Length, Open::No, false),
    ("length-or-range", Dimension::Length, Open::Range, false),
    ("length-or-unknown", Dimension::Length, Open::Unknown, false),
    ("height-above-the-sea", Dimension::Length, Open::Range, true),
    ("speed-or-unknown", Dimension::Speed, Open::Unknown, false),
    ("stress-or-unknown", Dimension::Pressure, Open::Unknown, false),
    ("force", Dimension::Force, Open::No, false),
    ("force-or-unknown", Dimension::Force, Open::Unknown, false),
    ("pressure-per-depth-or-unknown", Dimension::PressurePerDepth, Open::Unknown, false),
    ("angle-or-unknown", Dimension::Angle, Open::Unknown, false),
    ("section-modulus-or-range", Dimension::SectionModulus, Open::Range, false),
    ("moment-or-range", Dimension::Moment, Open::Range, false),
    ("line-load", Dimension::LineLoad, Open::No, false),
    ("pressure", Dimension::Pressure, Open::No, false),
    ("air-permeability-or-unknown", Dimension::AirPermeability, Open::Unknown, false),
    ("number-of-either-sign", Dimension::Ratio, Open::No, true),
    ("number", Dimension::Ratio, Open::No, false),
    ("number-or-unknown", Dimension::Ratio, Open::Unknown, false),
];

/// What the text of a figure is, in words.
fn figure_in_words(dimension: Dimension, open: Open) -> String {
    let one = match dimension {
        Dimension::Ratio => {
            format!("{}, bare or as text, or with {}", dimension.in_words(), Unit::accepted(dimension))
        }
        _ => format!("{} as text with its unit: {}", dimension.in_words(), Unit::accepted(dimension)),
    };
    match open {
        Open::No => one,
        Open::Range => format!("{one}; or a range, its lesser end first, with .. between"),
        Open::Unknown => format!("{one}; or a range, its lesser end first, with .. between; or \"unknown\""),
    }
}

fn figure_schema(dimension: Dimension, open: Open, below_nought: bool) -> Json {
    let written = ("pattern", pattern(dimension, open, below_nought).into());
    let words = ("description", figure_in_words(dimension, open).into());
    match dimension {
        // A bare number is its own unit.
        Dimension::Ratio if below_nought => {
            Json::keys([words, ("type", Json::words(["number", "string"])), written])
        }
        Dimension::Ratio => Json::keys([
            words,
            ("type", Json::words(["number", "string"])),
            ("exclusiveMinimum", Json::Count(0)),
            written,
        ]),
        _ => Json::keys([words, ("type", "string".into()), written]),
    }
}

fn survey() -> Json {
    let mut definitions: Keys = FIGURES
        .iter()
        .map(|(name, dimension, open, below)| ((*name).to_owned(), figure_schema(*dimension, *open, *below)))
        .collect();
    definitions.extend([
        ("wire".to_owned(), wire()),
        ("bay".to_owned(), bay()),
        ("rail".to_owned(), rail()),
        ("chain-link".to_owned(), chain_link()),
        ("footing".to_owned(), footing(true)),
        ("footing-or-name".to_owned(), any_of([reference("footing"), text()])),
        ("end".to_owned(), end()),
        ("other-posts".to_owned(), other_posts()),
        ("guys".to_owned(), guys()),
        ("braces".to_owned(), braces()),
        ("vents".to_owned(), vents()),
        ("air-permeability".to_owned(), air_permeability()),
        ("fastening".to_owned(), any_of([word("unknown"), fastening()])),
        ("screen".to_owned(), screen_table(true)),
        ("screen-or-name".to_owned(), any_of([reference("screen"), text()])),
        ("post".to_owned(), post_table()),
        ("post-or-name".to_owned(), any_of([reference("post"), text()])),
        (
            "one".to_owned(),
            Json::keys([
                ("description", "one value: a list is dealt out to runs of several names".into()),
                ("not", Json::keys([("type", "array".into())])),
            ]),
        ),
        ("run".to_owned(), run_table()),
        ("all-runs".to_owned(), all_runs()),
    ]);
    let kinds = |what: &str, value: Json| {
        about(
            what,
            Json::keys([
                ("type", "object".into()),
                ("minProperties", Json::Count(1)),
                ("additionalProperties", value),
            ]),
            Vec::new(),
        )
    };
    let format = Json::keys([("const", Json::Count(FORMAT))]);
    let top: Keys = vec![
        ("survey".to_owned(), about("the format of this file", format, Vec::new())),
        key(&fields::UNITS, choice(&["us", "si"])),
        ("job".to_owned(), about("what the survey is for", job_table(), Vec::new())),
        (
            "order".to_owned(),
            about("what an order list is asked for beside the fence", order_table(), Vec::new()),
        ),
        (
            "site".to_owned(),
            about("where the fence stands: its wind code and wind", site_table(), Vec::new()),
        ),
        (
            "post".to_owned(),
            kinds("kinds of posts, each measured once: [post.NAME]; a run names one", reference("post")),
        ),
        ("screen".to_owned(), kinds("kinds of cloth: [screen.NAME]; a run names one", screen_table(false))),
        ("footing".to_owned(), kinds("kinds of footings: [footing.NAME]; a run names one", footing(false))),
        (
            "all_runs".to_owned(),
            about("what holds for every run; a run's own key wins", reference("all-runs"), Vec::new()),
        ),
        (
            "run".to_owned(),
            about("each straight side of fence, under a line [[run]]", list_of(reference("run")), Vec::new()),
        ),
        reserved("judgement", "a judgement of the program, replaced with its reason"),
        reserved("seen", "gusts that the fence has stood, and what they did"),
    ];
    let given_for_all = ["height", "chain_link"].map(|key| {
        Json::keys([
            (
                "if",
                Json::keys([
                    ("properties", Json::keys([("all_runs", requires(&[key]))])),
                    ("required", Json::words(["all_runs"])),
                ]),
            ),
            (
                "else",
                Json::keys([(
                    "properties",
                    Json::keys([("run", Json::keys([("items", requires(&[key]))]))]),
                )]),
            ),
        ])
    });
    let mut all: Keys = vec![
        ("$schema".to_owned(), "https://json-schema.org/draft/2020-12/schema".into()),
        ("title".to_owned(), "fencegust survey, format 1".into()),
        (
            "description".to_owned(),
            "What a crew measured of a screened fence, what hangs or is to hang on it, and where it stands. Figures are \
             text with their unit, as people write them. The program tells more than this schema can: every mistake of a \
             survey, each with its line."
                .into(),
        ),
    ];
    match table(top, &["survey", "site", "run"]) {
        Json::Keys(table) => all.extend(table),
        other => all.push(("const".to_owned(), other)),
    }
    all.push(("allOf".to_owned(), Json::List(given_for_all.into())));
    all.push(("$defs".to_owned(), Json::Keys(definitions)));
    Json::Keys(all)
}

fn job_table() -> Json {
    let mut keys: Keys =
        [job::TITLE, job::PREPARED_FOR, job::MEASURED_BY, job::DATE].map(|field| key(&field, text())).into();
    keys.push(note());
    table(keys, &[])
}

/// What is asked of an order list.
fn order_table() -> Json {
    let money = format!(r"\s*{}\s*", number());
    let price = |per: Option<Dimension>| {
        let unit = per.map_or_else(
            || format!("(?:{}.*)?", in_any_case(" each")),
            |per| format!(r"(?: per |/)\s*{}\s*", units(per)),
        );
        let text = Json::keys([("type", "string".into()), ("pattern", format!("^{money}{unit}$").into())]);
        if per.is_some() { text } else { any_of([Json::keys([("type", "number".into())]), text]) }
    };
    let value = |name: &str| match name {
        "end_gap" | "joint_gap" | "top_gap" | "longest_panel" | "hem_allowance" | "knot_end" => {
            reference("length")
        }
        "spares" | "rope_waste" => {
            Json::keys([("$ref", "#/$defs/number".into()), ("maximum", Json::Count(1))])
        }
        "lacing" => choice(&["plain", "locked"]),
        "cloth_price" => price(Some(Dimension::Area)),
        "rope_price" => price(Some(Dimension::Length)),
        "tie_price" | "grommet_price" => price(None),
        "crew_time" => figure_schema(Dimension::Time, Open::No, false),
        _ => text(),
    };
    table(order::FIELDS.iter().map(|field| key(field, value(field.key))).collect(), &[])
}

fn site_table() -> Json {
    let codes: Vec<&str> = Code::ALL.iter().map(|code| code.key()).collect();
    let soil = table(
        vec![
            key(&site::LATERAL_BEARING, reference("pressure-per-depth-or-unknown")),
            key(&site::SOIL_CLASS, text()),
            key(&site::UNDRAINED_STRENGTH, reference("stress-or-unknown")),
            key(&site::FRICTION, reference("angle-or-unknown")),
            key(&site::COHESION, reference("stress-or-unknown")),
            key(&site::UNIT_WEIGHT, reference("pressure-per-depth-or-unknown")),
            key(&site::DENSITY, text()),
            key(&site::UNDER_WATER, any_of([yes_or_no(), word("unknown")])),
            key(&site::QUALITY, text()),
            key(&site::GROUND_FACTOR, reference("pressure-per-depth-or-unknown")),
            note(),
            from(),
        ],
        &[],
    );
    let mut keys: Keys = vec![
        key(&site::WIND_CODE, exactly(&codes)),
        key(&site::WIND_SPEED, reference("speed-or-unknown")),
        key(&site::WIND_SPEED_SOURCE, text()),
        key(&site::RISK_CATEGORY, choice(&["I", "II", "III", "IV"])),
        key(&site::HURRICANE_COAST, yes_or_no()),
        key(&site::DESIGN, choice(&Format::ALL.map(Format::key))),
    ];
    for (at, code) in Code::ALL.iter().enumerate() {
        for own in code.site_keys() {
            let before = || Code::ALL[..at].iter().flat_map(|code| code.site_keys());
            if before().any(|other| other.key == own.key) {
                continue;
            }
            let first = site_key(own);
            let all = Code::ALL.iter().flat_map(|code| code.site_keys()).filter(|other| other.key == own.key);
            // A key that the codes read in different ways is told under each.
            let alike = all.map(site_key).all(|other| other == first);
            let value =
                if alike { first } else { Json::keys([("description", "as wind_code has it".into())]) };
            keys.push((own.key.to_owned(), value));
        }
    }
    keys.extend([
        key(&site::SOIL, any_of([soil, word("unknown")])),
        key(&site::FOOTING_METHOD, exactly(&Method::ALL.map(Method::key))),
        note(),
        from(),
        reserved("also", "a second wind code and its site data"),
    ]);
    let by_code = Code::ALL.iter().map(|code| of_code(*code)).collect();
    table_where(keys, &["wind_code", "wind_speed"], vec![("allOf".to_owned(), Json::List(by_code))])
}

/// The keys of the site in one wind code: what they are, which must stand, and which belong to other codes.
fn of_code(code: Code) -> Json {
    let own = code.site_keys();
    let speed = Json::keys([("description", format!("design wind speed: {}", code.speed_is()).into())]);
    let mut keys: Keys = vec![(site::WIND_SPEED.key.to_owned(), speed)];
    keys.extend(own.iter().map(|key| (key.key.to_owned(), site_key(key))));
    for other in Code::ALL.iter().flat_map(|code| code.site_keys()) {
        if !keys.iter().any(|(name, _)| name == other.key) {
            keys.push(never(other.key, &format!("no key of {}", code.key())));
        }
    }
    let required: Vec<&str> = own
        .iter()
        .filter(|key| matches!(key.kind, KeyKind::Choice(_) | KeyKind::Quantity(_, None)))
        .map(|key| key.key)
        .collect();
    let then = match required.as_slice() {
        [] => Json::keys([("properties", Json::Keys(keys))]),
        required => Json::keys([
            ("properties", Json::Keys(keys)),
            ("required", Json::words(required.iter().copied())),
        ]),
    };
    Json::keys([
        (
            "if",
            Json::keys([
                ("properties", Json::keys([("wind_code", Json::keys([("const", code.key().into())]))])),
                ("required", Json::words(["wind_code"])),
            ]),
        ),
        ("then", then),
    ])
}

/// A key that a wind code declares, as the code describes it.
fn site_key(key: &SiteKey) -> Json {
    match key.kind {
        KeyKind::Choice(choices) => {
            let words: Vec<&str> = choices.iter().map(|(word, _)| *word).chain(["unknown"]).collect();
            let one = one_of(choices.iter().map(|(word, _)| *word));
            let either = format!(r"^\s*(?:{one}(?:\s* or \s*{one})*|{})\s*$", in_any_case("unknown"));
            let value = Json::keys([
                ("type", "string".into()),
                (
                    "anyOf",
                    Json::List(vec![
                        Json::keys([("enum", Json::words(words))]),
                        Json::keys([("pattern", either.into())]),
                    ]),
                ),
            ]);
            let sentence = format!("{}; two of them with or between, or \"unknown\"", key.about);
            let examples = match choices {
                [(one, _), (other, _), ..] => vec![(*one).into(), format!("{one} or {other}").into()],
                choices => choices.iter().map(|(word, _)| Json::from(*word)).collect(),
            };
            about(&sentence, value, examples)
        }
        KeyKind::Table(keys) => {
            let inside = keys.iter().map(|key| (key.key.to_owned(), site_key(key)));
            let inside = inside.chain([note(), from()]).collect();
            let needed: Vec<&str> = keys.iter().map(|key| key.key).collect();
            let table = table(inside, &needed);
            about(key.about, any_of([table, word("none")]), Vec::new())
        }
        KeyKind::Quantity(measure, default) => {
            let left_out = default
                .map_or_else(String::new, |default| format!("; left out: {}", default.written(System::Us)));
            let range = key.range.map_or_else(String::new, |(least, greatest)| {
                let written = |si| measure.write(si, System::Us);
                format!("; from {} to {}", written(least), written(greatest))
            });
            let mut value = site_figure(measure);
            if let (Dimension::Ratio, Some((least, greatest)), Json::Keys(value)) =
                (measure.dimension(), key.range, &mut value)
            {
                value.push(("minimum".to_owned(), Json::Figure(least)));
                value.push(("maximum".to_owned(), Json::Figure(greatest)));
            }
            let example = default.map(|default| match measure.dimension() {
                Dimension::Ratio => Json::Figure(default.si),
                _ => default.written(System::Us).into(),
            });
            about(&format!("{}{range}{left_out}", key.about), value, example.into_iter().collect())
        }
    }
}

/// A figure of a wind code's key: one or a range, never unknown.
fn site_figure(measure: Measure) -> Json {
    let dimension = measure.dimension();
    let named =
        FIGURES.iter().find(|(_, own, open, below)| *own == dimension && *open == Open::Range && *below);
    match named {
        Some((name, ..)) => reference(name),
        None => figure_schema(dimension, Open::Range, true),
    }
}

/// Keys of which one says the size of a post.
const SIZES: [&str; 7] = ["girth", "diameter", "width", "section", "modulus", "moment", "timber"];

fn post_table() -> Json {
    let small = |field: &Field| key(field, reference("length-or-range"));
    let wall = |field: &Field| key(field, reference("length-or-unknown"));
    let keys: Keys = vec![
        small(&post::GIRTH),
        small(&post::DIAMETER),
        small(&post::WIDTH),
        key(&post::SECTION, text()),
        wall(&post::NOMINAL_WALL),
        wall(&post::MEASURED_WALL),
        key(&post::SEAMLESS, yes_or_no()),
        key(&post::YIELD, reference("stress-or-unknown")),
        small(&post::RUST),
        key(&post::MODULUS, reference("section-modulus-or-range")),
        key(&post::MOMENT, reference("moment-or-range")),
        key(&post::MOMENT_IS, choice(&["design", "allowable"])),
        key(&post::FACE_WIDTH, reference("length")),
        key(&post::TIMBER, timber()),
        key(&post::SPECIES, text()),
        key(&post::GRADE, text()),
        key(&post::SERVICE, choice(&["dry", "wet", "unknown"])),
        key(&post::INCISED, any_of([yes_or_no(), word("unknown")])),
        note(),
        from(),
        like(),
        reserved("condition", "bent, loose or rotten posts"),
    ];
    let one_size = Json::List(SIZES.iter().map(|size| requires(&[size])).collect());
    table_where(
        keys,
        &[],
        vec![
            ("if".to_owned(), Json::keys([("not", requires(&["like"]))])),
            ("then".to_owned(), Json::keys([("oneOf", one_size)])),
        ],
    )
}

/// A timber by its name, or by its side.
fn timber() -> Json {
    any_of([
        Json::keys([("type", "string".into()), ("pattern", r"^\s*\d+\s*[xX]\s*\d+\s*$".into())]),
        reference("length-or-range"),
    ])
}

fn wire() -> Json {
    let gauge = format!(r"\s*{}\s*{}\s*", number(), one_of(["gauge", "ga"]));
    Json::keys([
        ("description", "a steel wire gauge such as \"9 gauge\", or a length as text with its unit".into()),
        ("type", "string".into()),
        ("pattern", format!(r"^(?:{gauge}|\s*{}\s*)$", figure(Dimension::Length)).into()),
    ])
}

fn bay() -> Json {
    Json::keys([
        (
            "description",
            "the width of a bay as text with its unit, centre to centre of its posts; before it the count of bays alike \
             and x, gate or double gate"
                .into(),
        ),
        ("type", "string".into()),
        ("pattern", format!(r"^\s*(?:\d+\s*[xX×]\s*)?(?:(?:double\s+)?gate\s*)?{}\s*$", figure(Dimension::Length)).into()),
    ])
}

fn rail() -> Json {
    let keys = vec![
        key(&run::RAIL, reference("length")),
        key(&run::RAIL_NOMINAL_WALL, reference("length-or-unknown")),
        key(&run::RAIL_MEASURED_WALL, reference("length-or-unknown")),
        key(&post::SEAMLESS, yes_or_no()),
        key(&post::YIELD, reference("stress-or-unknown")),
        key(&run::SPLICE, choice(&["sleeve", "none"])),
        note(),
        from(),
    ];
    any_of([word("none"), table(keys, &["diameter"])])
}

fn chain_link() -> Json {
    let keys = vec![
        key(&run::MESH, reference("length")),
        key(&run::WIRE, reference("wire")),
        key(&run::MESH_FACE, choice(&fields::FACES)),
        note(),
        from(),
    ];
    any_of([word("none"), table(keys, &["mesh", "wire"])])
}

/// A footing: of a run it may be like a kind, and has all its keys where it is not.
fn footing(of_a_run: bool) -> Json {
    let keys = vec![
        key(&run::SHAPE, choice(&FootingShape::ALL.map(FootingShape::word))),
        key(&run::WIDTH, reference("length-or-unknown")),
        key(&run::DEPTH, reference("length-or-unknown")),
        key(&run::HELD, yes_or_no()),
        key(&run::ISOLATED, yes_or_no()),
        note(),
        from(),
        like(),
    ];
    if !of_a_run {
        return table(keys, &[]);
    }
    let whole = requires(&["shape", "width", "depth"]);
    let driven = Json::keys([("shape", word(FootingShape::Driven.word()))]);
    let driven = Json::keys([
        ("properties", driven),
        ("required", Json::words(["shape", "depth"])),
        ("not", requires(&["width"])),
    ]);
    table_where(keys, &[], vec![("anyOf".to_owned(), Json::List(vec![requires(&["like"]), whole, driven]))])
}

fn end() -> Json {
    let keys = vec![key(&run::RETURN, reference("length")), note(), from()];
    any_of([exactly(&["corner", "free"]), table(keys, &["return"])])
}

fn other_posts() -> Json {
    let number = Json::keys([("type", "integer".into()), ("minimum", Json::Count(1))]);
    let numbers = Json::keys([("type", "array".into()), ("items", number)]);
    let keys = vec![
        key_like(&run::NUMBERS, numbers, vec![Json::List(vec![Json::Count(4), Json::Count(9)])]),
        key(&run::OTHER_POST, reference("post-or-name")),
        note(),
        from(),
    ];
    Json::keys([("type", "array".into()), ("items", table(keys, &["numbers", "post"]))])
}

fn guys() -> Json {
    let number = Json::keys([("type", "integer".into()), ("minimum", Json::Count(1))]);
    let numbers = Json::keys([("type", "array".into()), ("items", number)]);
    let keys = vec![
        key_like(&run::GUY_POSTS, numbers, vec![Json::List(vec![Json::Count(1), Json::Count(7)])]),
        key(&run::GUY_KIND, choice(&crate::survey::GUY_KINDS)),
        key(&run::GUY_HEIGHT, reference("length")),
        key(&run::GUY_BACK, reference("length")),
        key(&run::GUY_SIDE, choice(&fields::FACES)),
        key(&run::GUY_DIAMETER, reference("length")),
        key(&run::GUY_WALL, reference("length")),
        key(&run::GUY_YIELD, reference("pressure")),
        key(&run::GUY_ALLOWED, reference("force")),
        note(),
        from(),
    ];
    let required = ["posts", "kind", "height", "back", "side", "diameter"];
    Json::keys([("type", "array".into()), ("items", table(keys, &required))])
}

fn braces() -> Json {
    let number = Json::keys([("type", "integer".into()), ("minimum", Json::Count(1))]);
    let numbers = Json::keys([("type", "array".into()), ("items", number)]);
    let keys = vec![
        key_like(&run::BRACE_POSTS, numbers, vec![Json::List(vec![Json::Count(1), Json::Count(7)])]),
        key(&run::BRACE_HEIGHT, reference("length")),
        key(&run::BRACE_DIAMETER, reference("length")),
        key(&run::BRACE_WALL, reference("length")),
        key(&run::BRACE_YIELD, reference("pressure")),
        key(&run::BRACE_ROD, any_of([word("none"), reference("length")])),
        key(&run::BRACE_ROD_YIELD, reference("pressure")),
        note(),
        from(),
    ];
    let required = ["posts", "height", "diameter", "nominal_wall", "yield", "rod"];
    Json::keys([("type", "array".into()), ("items", table(keys, &required))])
}

fn vents() -> Json {
    let keys = vec![
        key(&screen::VENT_WIDTH, reference("length")),
        key(&screen::VENT_HEIGHT, reference("length")),
        key_like(&screen::PER_BAY, reference("number"), vec![Json::Count(2)]),
        note(),
        from(),
    ];
    table(keys, &["width", "height", "per_bay"])
}

/// A rope by its thickness and, after it, its fibre.
fn rope() -> Json {
    let fibre = one_of(Fibre::ALL.map(Fibre::name));
    let known = format!(r"\s*{}\s*(?:{fibre}\s*)?", figure(Dimension::Length));
    Json::keys([
        ("type", "string".into()),
        ("pattern", format!(r"^(?:{known}|\s*{}\s*)$", in_any_case("unknown")).into()),
    ])
}

fn fastening() -> Json {
    let rows = Json::keys([
        ("type", "array".into()),
        ("minItems", Json::Count(1)),
        ("uniqueItems", Json::Truth(true)),
        ("items", exactly(&screen::ROW_WAYS)),
    ]);
    let keys = vec![
        key(&screen::KIND, choice(&["ties", "lacing"])),
        key(&screen::STRENGTH, reference("force-or-unknown")),
        key(&screen::AGE, choice(&["new", "aged", "aged type 2", "unknown"])),
        key(&screen::ROPE, rope()),
        key(&screen::YEARS, reference("number-or-unknown")),
        key(&screen::SPACING, reference("length-or-unknown")),
        key(&screen::TIED_TO, choice(&["rails", "chain link"])),
        key(&screen::PANEL, reference("length")),
        key(&screen::GROMMET, reference("force-or-unknown")),
        key(&screen::OFFSET, reference("length")),
        key(&screen::STIFFNESS, reference("line-load")),
        key(&screen::SLACK, reference("number-of-either-sign")),
        key_like(&screen::ROWS, rows, vec![Json::words(screen::ROWS.example_list())]),
        note(),
        from(),
    ];
    table(keys, &["kind", "spacing", "rows"])
}

/// A share of 1, at most the whole.
fn share() -> Json {
    Json::keys([("$ref", "#/$defs/number-or-unknown".into()), ("maximum", Json::Count(1))])
}

/// A maker's test of air permeability.
fn air_permeability() -> Json {
    let keys = vec![
        key(&screen::FLOW, reference("air-permeability-or-unknown")),
        key(&screen::AT, reference("pressure")),
        note(),
        from(),
    ];
    table(keys, &["flow", "at"])
}

/// Cloth over cloth: a name, a table, or a list of either.
fn over() -> Json {
    let keys = vec![
        key(&screen::CLOTH, text()),
        key_like(&screen::SOLIDITY, share(), vec![Json::Figure(0.95), "0.75 .. 0.95".into()]),
        key(&screen::DENSITY, share()),
        key(&screen::COLOUR, text()),
        key(&screen::AIR_PERMEABILITY, reference("air-permeability")),
        note(),
        from(),
    ];
    let one = any_of([text(), table(keys, &[])]);
    any_of([one.clone(), list_of(one)])
}

/// Cloth: of a run it may be like a kind, and says how it hangs where it is not.
fn screen_table(of_a_run: bool) -> Json {
    let hung_on =
        Json::keys([("type", "string".into()), ("pattern", r"^\s*\+?\d+\s*(?:\.\.\s*\+?\d+\s*)?$".into())]);
    let keys = vec![
        key(&screen::CLOTH, text()),
        key_like(&screen::SOLIDITY, share(), vec![Json::Figure(0.95), "0.75 .. 0.95".into()]),
        key(&screen::DENSITY, share()),
        key(&screen::COLOUR, text()),
        key(&screen::BOTTOM, reference("length")),
        key(&screen::HEIGHT, reference("length")),
        key(&screen::TOP, reference("length")),
        key(&screen::FACE, choice(&fields::FACES)),
        key(&screen::CONDITION, choice(&["dry", "iced", "unknown"])),
        key(&screen::AIR_PERMEABILITY, reference("air-permeability")),
        key(&screen::OVER, over()),
        key(&screen::WEIGHT, figure_schema(Dimension::WeightPerArea, Open::Unknown, false)),
        key(&screen::FASTENING, reference("fastening")),
        key(&screen::VENTS, reference("vents")),
        key(&screen::BAYS, hung_on),
        note(),
        from(),
        like(),
    ];
    if !of_a_run {
        return table(keys, &[]);
    }
    let each = |keys: &[&str]| {
        Json::keys([("anyOf", Json::List(keys.iter().map(|key| requires(&[key])).collect()))])
    };
    let whole = Json::keys([(
        "allOf",
        Json::List(vec![
            requires(&["bottom"]),
            each(&["height", "top"]),
            each(&["cloth", "solidity", "density"]),
        ]),
    )]);
    table_where(keys, &[], vec![("anyOf".to_owned(), Json::List(vec![requires(&["like"]), whole]))])
}

/// A value, or a list of values dealt out to runs of several names.
fn dealt(value: Json) -> Json {
    any_of([value.clone(), list_of(value)])
}

/// The keys that a run and `[all_runs]` share, in the order in which they are best written.
fn shared_run_keys() -> Keys {
    let named = |field: &Field, name: &str| key(field, dealt(reference(name)));
    let of_post = |field: &Field| key(field, dealt(reference("post-or-name")));
    vec![
        key(&run::COURT, dealt(text())),
        key(&run::FACES, dealt(choice(&fields::COMPASS))),
        named(&run::HEIGHT, "length"),
        named(&run::BASE, "length"),
        named(&run::TOP_RAIL, "rail"),
        named(&run::MID_RAIL, "rail"),
        named(&run::BOTTOM_RAIL, "rail"),
        named(&run::CHAIN_LINK, "chain-link"),
        named(&run::FOOTING, "footing-or-name"),
        named(&run::END_FOOTING, "footing-or-name"),
        named(&run::CORNER_FOOTING, "footing-or-name"),
        named(&run::GATE_FOOTING, "footing-or-name"),
        of_post(&run::LINE_POST),
        of_post(&run::END_POST),
        of_post(&run::CORNER_POST),
        of_post(&run::GATE_POST),
        named(&run::ENDS, "end"),
        key_like(&run::START, dealt(reference("end")), vec!["corner".into(), "free".into()]),
        key_like(&run::FINISH, dealt(reference("end")), vec!["corner".into(), "free".into()]),
        named(&run::SCREEN, "screen-or-name"),
        named(&run::OTHER_POSTS, "other-posts"),
        named(&run::GUY, "guys"),
        named(&run::BRACE, "braces"),
        (fields::NOTE.key.to_owned(), about(&fields::NOTE.sentence(), dealt(text()), Vec::new())),
        (
            fields::FROM.key.to_owned(),
            about(&fields::FROM.sentence(), dealt(choice(&fields::FROM_WAYS)), Vec::new()),
        ),
    ]
}

fn run_table() -> Json {
    let name = Json::keys([("type", "string".into()), ("pattern", r"\S".into())]);
    let bays = list_of(reference("bay"));
    let example = |system| Json::words(run::BAYS.example(system).split(", "));
    let mut keys: Keys = vec![
        key(&run::NAME, dealt(name)),
        key_like(&run::BAYS, dealt(bays), vec![example(System::Us), example(System::Si)]),
    ];
    keys.extend(shared_run_keys());
    let one: Keys = keys
        .iter()
        .filter(|(key, value)| key != run::NAME.key && !is_never(value))
        .map(|(key, _)| {
            let is_list =
                [run::BAYS.key, run::OTHER_POSTS.key, run::GUY.key, run::BRACE.key].contains(&key.as_str());
            let one = if is_list { Json::keys([("items", reference("one"))]) } else { reference("one") };
            (key.clone(), one)
        })
        .collect();
    let named_once = Json::keys([("name", Json::keys([("type", "string".into())]))]);
    table_where(
        keys,
        &["name", "bays"],
        vec![
            ("if".to_owned(), Json::keys([("properties", named_once)])),
            ("then".to_owned(), Json::keys([("properties", Json::Keys(one))])),
        ],
    )
}

fn is_never(value: &Json) -> bool {
    matches!(value, Json::Keys(keys) if keys.iter().any(|(key, _)| key == "not"))
}

fn all_runs() -> Json {
    let mut keys = shared_run_keys();
    keys.extend(["name", "bays"].map(|key| never(key, "belongs to one run")));
    table(keys, &[])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn no_key_twice(json: &Json) {
        match json {
            Json::Keys(keys) => {
                for (at, (key, value)) in keys.iter().enumerate() {
                    assert!(
                        keys[..at].iter().all(|(before, _)| before != key),
                        "{key} stands twice in {json:?}"
                    );
                    no_key_twice(value);
                }
            }
            Json::List(list) => list.iter().for_each(no_key_twice),
            _ => {}
        }
    }

    #[test]
    fn no_key_of_the_schema_stands_twice_in_one_place() {
        no_key_twice(&survey());
    }
}
