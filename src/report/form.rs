//! A blank survey form to print: one page for the site and the kinds of posts, then one page a run.
//!
//! The page is whole in itself: no script, nothing loaded, black lines on white. Each place to write carries the
//! name its key has in the survey file.

use super::document::Paper;
use super::fields::{self, Field, job, order, post, run, screen, site};
use super::sketches;
use super::svg::Svg;
use crate::caution::{CLIMBING, Caution, DIGGING, STEEL, WIND};
use crate::screen::cloths;
use crate::units::System;
use crate::wind::{Code, KeyKind, SiteKey};
use maud::{DOCTYPE, Markup, PreEscaped, html};
use std::io::{self, Write};

/// How high and wide a page is between its margins of 10 mm, a little less than the paper leaves.
const fn page_mm(paper: Paper) -> (u16, u16) {
    match paper {
        Paper::Letter => (257, 194),
        Paper::A4 => (275, 189),
    }
}

/// Which form is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Form {
    /// How many runs have a page.
    pub runs: usize,
    /// What it is printed on.
    pub paper: Paper,
    /// In which units the crew measures.
    pub system: System,
}

/// How many kinds of posts have a column.
const KINDS: usize = 3;
/// How many bays have a box on the page of a run.
const BAYS: usize = 24;

/// Writes a blank form as HTML.
///
/// # Errors
/// If the writer fails.
pub fn form(form: Form, out: &mut impl Write) -> io::Result<()> {
    out.write_all(form.page().into_string().as_bytes())
}

/// A place to tick.
fn tick(word: &str) -> Markup {
    html! { span.tick { i.box {} (word) } }
}

fn key(field: &Field) -> Markup {
    html! { code { (field.key) } }
}

fn drawing(drawing: &Svg) -> Markup {
    PreEscaped(drawing.to_string())
}

fn warning(caution: &Caution) -> Markup {
    html! { p.warning { b { "⚠ " (caution.word) } " " (caution.text) } }
}

impl Form {
    fn page(self) -> Markup {
        let (height, width) = page_mm(self.paper);
        let pages = self.runs + 1;
        html! {
            (DOCTYPE)
            html lang="en" {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    title { "Survey form for a court fence" }
                    style {
                        (PreEscaped(format!(
                            "@page {{ size: {}; margin: 10mm; }}\n.page {{ height: {height}mm; width: {width}mm; }}\n",
                            self.paper.name()
                        )))
                        (PreEscaped(STYLE))
                    }
                }
                body {
                    section.page {
                        (self.head("Site and kinds of posts", &format!("page 1 of {pages}")))
                        (self.job_and_site())
                        (self.kinds())
                        (self.other_kinds())
                        (self.order())
                    }
                    @for number in 1..=self.runs {
                        section.page {
                            (self.head(&format!("Run {number} of {}", self.runs), &format!("page {} of {pages}", number + 1)))
                            (self.run(number + 1))
                        }
                    }
                }
            }
        }
    }

    fn head(self, title: &str, page: &str) -> Markup {
        let units = match self.system {
            System::Us => "feet and inches",
            System::Si => "metres and millimetres",
        };
        html! {
            header {
                h1 { (title) }
                span { "fencegust survey form · " (units) " · " (page) }
            }
        }
    }

    /// The unit a figure is written in, for the end of its line.
    fn unit(self, field: &Field) -> &'static str {
        let example = field.example(self.system);
        if let Some(at) = example.find("per ") {
            return &example[at..];
        }
        if example.ends_with("N m") {
            return "N m";
        }
        match example.rsplit(' ').next().unwrap_or_default() {
            "gauge" => "gauge or in",
            "ft" => "ft in",
            unit if unit.starts_with(|letter: char| letter.is_alphabetic() || letter == '%')
                && unit.chars().all(|letter| letter.is_alphanumeric() || "/%-".contains(letter)) =>
            {
                unit
            }
            _ => "",
        }
    }

    /// A line to write on, with the key and what it is.
    fn line(self, path: &str, field: &Field) -> Markup {
        html! {
            div.field data-key=(path) {
                (key(field)) small { (field.what) }
                i.line {} (self.end(field))
            }
        }
    }

    /// The same with no more than the key.
    fn short(self, path: &str, field: &Field) -> Markup {
        html! { div.field data-key=(path) { (key(field)) i.line {} (self.end(field)) } }
    }

    fn end(self, field: &Field) -> Markup {
        let unit = self.unit(field);
        html! {
            @if !unit.is_empty() && field.us_and_si_differ() { small.unit { (unit) } }
            @if field.unknown { (tick("unknown")) }
        }
    }

    /// Words to tick.
    fn ticks(self, path: &str, field: &Field, words: &[&str]) -> Markup {
        html! {
            div.field data-key=(path) {
                (key(field)) small { (field.what) }
                span.ticks { @for word in words { (tick(word)) } }
            }
        }
    }

    fn job_and_site(self) -> Markup {
        let codes: Vec<&str> = Code::ALL.iter().map(|code| code.key()).collect();
        html! {
            div.row { (self.line("job.title", &job::TITLE)) }
            div.row { (self.line("job.prepared_for", &job::PREPARED_FOR)) (self.line("job.measured_by", &job::MEASURED_BY)) }
            div.row {
                (self.line("job.date", &job::DATE))
                div.field data-key="units" {
                    (key(&fields::UNITS)) small { (fields::UNITS.what) }
                    span.ticks { (tick("us")) (tick("si")) }
                }
            }
            div.row { (self.line("job.note", &fields::NOTE)) }
            h2 { "[site]" }
            div.row { (self.ticks("site.wind_code", &site::WIND_CODE, &codes)) }
            div.row {
                (self.line("site.wind_speed", &site::WIND_SPEED))
                (self.ticks("site.risk_category", &site::RISK_CATEGORY, &["I", "II", "III", "IV"]))
            }
            div.row { (self.line("site.wind_speed_source", &site::WIND_SPEED_SOURCE)) }
            (self.code_keys())
            div.row data-key="site.soil" {
                code { "soil" }
                (self.line("site.soil.lateral_bearing", &site::LATERAL_BEARING))
                (self.short("site.soil.class", &site::SOIL_CLASS))
            }
            div.row { (self.line("site.note", &fields::NOTE)) }
        }
    }

    /// The keys each wind code reads from the site, each once.
    fn code_keys(self) -> Markup {
        let mut keys: Vec<&SiteKey> = Vec::new();
        for key in Code::ALL.iter().flat_map(|code| code.site_keys()) {
            if !keys.iter().any(|before| before.key == key.key) {
                keys.push(key);
            }
        }
        let (tables, keys): (Vec<&SiteKey>, Vec<&SiteKey>) =
            keys.into_iter().partition(|key| matches!(key.kind, KeyKind::Table(_)));
        let (ticked, written): (Vec<&SiteKey>, Vec<_>) =
            keys.into_iter().partition(|key| matches!(key.kind, KeyKind::Choice(_)));
        html! {
            @for key in ticked {
                @if let KeyKind::Choice(choices) = key.kind {
                    div.row {
                        div.field data-key=(format!("site.{}", key.key)) {
                            code { (key.key) } small { "what lies upwind" }
                            span.ticks {
                                @for (word, meaning) in choices {
                                    span.tick { i.box {} b { (word) } " " (meaning) }
                                }
                                (tick("unknown"))
                            }
                        }
                    }
                }
            }
            @for key in written {
                div.row {
                    div.field data-key=(format!("site.{}", key.key)) {
                        code { (key.key) } small { (key.about) } i.line {}
                        @if let KeyKind::Quantity(measure, _) = key.kind {
                            small.unit { (measure.printed(self.system).0) }
                        }
                    }
                }
            }
            @for table in tables {
                @if let KeyKind::Table(keys) = table.kind {
                    (self.code_table(table, keys))
                }
            }
        }
    }

    /// A table a wind code reads from the site: its words to tick in one line, its figures in the next.
    fn code_table(self, table: &SiteKey, keys: &[SiteKey]) -> Markup {
        let path = |key: &SiteKey| format!("site.{}.{}", table.key, key.key);
        html! {
            div.row data-key=(format!("site.{}", table.key)) {
                code { (table.key) } (tick("none"))
                @for key in keys {
                    @if let KeyKind::Choice(choices) = key.kind {
                        div.field data-key=(path(key)) {
                            code { (key.key) } span.ticks { @for (word, _) in choices { (tick(word)) } }
                        }
                    }
                }
            }
            div.row {
                small { "of the " (table.key) }
                @for key in keys {
                    @if let KeyKind::Quantity(measure, _) = key.kind {
                        div.field data-key=(path(key)) {
                            code { (key.key) } i.line {} small.unit { (measure.printed(self.system).0) }
                        }
                    }
                }
            }
        }
    }

    fn kinds(self) -> Markup {
        let rows = [
            ("girth", post::GIRTH),
            ("diameter", post::DIAMETER),
            ("width", post::WIDTH),
            ("nominal_wall", post::NOMINAL_WALL),
            ("measured_wall", post::MEASURED_WALL),
            ("yield", post::YIELD),
            ("rust_at_grade", post::RUST),
        ];
        html! {
            h2 { "[post.NAME]  kinds of posts, each measured once" }
            div.sketches {
                (drawing(&sketches::girth())) (drawing(&sketches::wall())) (drawing(&sketches::rust()))
            }
            (warning(&WIND))
            (warning(&CLIMBING))
            (warning(&STEEL))
            table {
                tr data-key="post.NAME" {
                    th { code { "NAME" } small { "what you call this kind: line, end, gate, old" } }
                    @for _ in 0..KINDS { td {} }
                }
                @for (name, field) in &rows {
                    tr data-key=(format!("post.{name}")) {
                        th { (key(field)) small { (field.sentence()) } }
                        @for _ in 0..KINDS {
                            td.figure { span { @if field.unknown { (tick("unknown")) } } small { (self.unit(field)) } }
                        }
                    }
                }
                tr data-key="post.seamless" {
                    th { (key(&post::SEAMLESS)) small { (post::SEAMLESS.sentence()) } }
                    @for _ in 0..KINDS { td { (tick("no")) (tick("yes")) } }
                }
                tr data-key="post.from" {
                    th { (key(&fields::FROM)) small { (fields::FROM.what) } }
                    @for _ in 0..KINDS { td.dense { @for way in fields::FROM_WAYS { (tick(way)) } } }
                }
                tr.tall data-key="post.note" {
                    th { (key(&fields::NOTE)) small { (fields::NOTE.what) } }
                    @for _ in 0..KINDS { td {} }
                }
            }
        }
    }

    /// What says the size of a post that is no tube by girth, diameter or width.
    fn other_kinds(self) -> Markup {
        let short = |field: &Field| self.short(&format!("post.{}", field.key), field);
        html! {
            div.row.tight {
                small { "another size:" } (short(&post::SECTION)) (short(&post::MODULUS)) (short(&post::FACE_WIDTH))
                (short(&post::MOMENT)) (self.words("post.moment_is", &post::MOMENT_IS, &["design", "allowable"]))
            }
            div.row.tight {
                small { "of wood:" } (short(&post::TIMBER)) (short(&post::SPECIES)) (short(&post::GRADE))
                (self.words("post.service", &post::SERVICE, &["wet", "dry"]))
                (self.words("post.incised", &post::INCISED, &["yes", "no"]))
            }
        }
    }

    /// What an order list is asked for, in short: each key may stay empty.
    fn order(self) -> Markup {
        html! {
            h2 { "[order]  where a list is wanted; each may stay empty" }
            @for line in order::FIELDS.chunks(6) {
                div.row.tight {
                    @for field in line { (self.short(&format!("order.{}", field.key), field)) }
                }
            }
        }
    }

    /// Words to tick, with no more than the key.
    fn words(self, path: &str, field: &Field, words: &[&str]) -> Markup {
        html! {
            div.field data-key=(path) { (key(field)) span.ticks { @for word in words { (tick(word)) } } }
        }
    }

    fn run(self, page: usize) -> Markup {
        html! {
            div.sketches.seen { (drawing(&sketches::elevation(page))) (drawing(&sketches::standing(page))) }
            p { "You stand inside the court, facing the fence: post 1 is at your left, bay 1 lies between posts 1 and 2." }
            div.row {
                (self.line("run.name", &run::NAME)) (self.line("run.court", &run::COURT))
            }
            div.row { (self.ticks("run.faces", &run::FACES, &fields::COMPASS)) }
            div.row data-key="run.bays" {
                (key(&run::BAYS)) small { (run::BAYS.what) "; write G before a gate, 2G before a double gate" }
            }
            div.bays { @for bay in 1..=BAYS { div { small { (bay) } } } }
            div.columns {
                div { (self.run_fields()) }
                div { (self.cloth_fields()) (self.guy_fields()) }
            }
            div.sketches.three {
                (drawing(&sketches::mesh(page))) (drawing(&sketches::footing(page))) (drawing(&sketches::ties(page)))
            }
            (warning(&WIND))
            (warning(&CLIMBING))
            (warning(&DIGGING))
            div.row data-key="run.from" {
                (key(&fields::FROM)) small { (fields::FROM.what) }
                span.ticks { @for way in fields::FROM_WAYS { (tick(way)) } }
            }
            div.note data-key="run.note" {
                (key(&fields::NOTE)) small { (fields::NOTE.what) "; the cloth width from tension bar to tension bar" }
            }
        }
    }

    fn run_fields(self) -> Markup {
        html! {
            h2 { "[[run]]" }
            @for (path, field) in [("run.start", &run::START), ("run.finish", &run::FINISH)] {
                div.field data-key=(path) {
                    (key(field)) span.ticks { (tick("free")) (tick("corner")) (tick("return")) } i.line {}
                    small.unit { (self.unit(field)) }
                }
            }
            (self.line("run.height", &run::HEIGHT))
            (self.line("run.base_above_ground", &run::BASE))
            div.field data-key="run.top_rail" { code { "top_rail" } (self.short("run.top_rail.diameter", &run::RAIL)) (tick("none")) }
            div.pair {
                (self.short("run.top_rail.nominal_wall", &run::RAIL_NOMINAL_WALL)) (self.short("run.top_rail.yield", &post::YIELD))
            }
            div.field data-key="run.mid_rail" { code { "mid_rail" } (self.short("run.mid_rail.diameter", &run::RAIL)) (tick("none")) }
            div.pair {
                (self.short("run.mid_rail.nominal_wall", &run::RAIL_NOMINAL_WALL)) (self.short("run.mid_rail.yield", &post::YIELD))
            }
            div.field data-key="run.bottom_rail" { code { "bottom_rail" } (self.short("run.bottom_rail.diameter", &run::RAIL)) (tick("none")) }
            div.pair {
                (self.short("run.bottom_rail.nominal_wall", &run::RAIL_NOMINAL_WALL)) (self.short("run.bottom_rail.yield", &post::YIELD))
            }
            div.pair {
                (self.short("run.line_post", &run::LINE_POST)) (self.short("run.end_post", &run::END_POST))
            }
            div.pair {
                (self.short("run.corner_post", &run::CORNER_POST)) (self.short("run.gate_post", &run::GATE_POST))
            }
            div.pair data-key="run.other_posts" {
                code { "other_posts" }
                (self.short("run.other_posts.numbers", &run::NUMBERS)) (self.short("run.other_posts.post", &run::OTHER_POST))
            }
            div.pair data-key="run.chain_link" {
                code { "chain_link" } (tick("none"))
                (self.short("run.chain_link.mesh", &run::MESH)) (self.short("run.chain_link.wire", &run::WIRE))
            }
            (self.ticks("run.chain_link.face", &run::MESH_FACE, &fields::FACES))
            div.field data-key="run.footing" {
                code { "footing" }
                div.field data-key="run.footing.shape" { (key(&run::SHAPE)) span.ticks { (tick("round")) (tick("square")) (tick("driven")) } }
            }
            (self.line("run.footing.width", &run::WIDTH))
            (self.line("run.footing.depth", &run::DEPTH))
        }
    }

    /// What holds posts from the side, in short: on most runs nothing does.
    fn guy_fields(self) -> Markup {
        let short = |field: &Field| self.short(&format!("run.guy.{}", field.key), field);
        html! {
            div.pair.narrow data-key="run.guy" {
                code { "guy" } (tick("none")) (short(&run::GUY_POSTS))
                (self.words("run.guy.kind", &run::GUY_KIND, &crate::survey::GUY_KINDS))
            }
            div.pair.narrow {
                (short(&run::GUY_HEIGHT)) (short(&run::GUY_BACK))
                (self.words("run.guy.side", &run::GUY_SIDE, &fields::FACES))
            }
            div.pair { (short(&run::GUY_DIAMETER)) (short(&run::GUY_WALL)) }
            div.pair { (short(&run::GUY_YIELD)) (short(&run::GUY_ALLOWED)) }
        }
    }

    fn cloth_fields(self) -> Markup {
        let catalogue: Vec<&str> = cloths().iter().map(|cloth| cloth.name.as_str()).collect();
        html! {
            h2 data-key="run.screen" { "screen " (tick("none")) }
            div.field.two data-key="run.screen.cloth" {
                (key(&screen::CLOTH)) span.ticks { @for name in catalogue { (tick(name)) } }
            }
            div.field { small { "another, in its maker's words" } i.line {} }
            (self.line("run.screen.solidity", &screen::SOLIDITY))
            div.pair {
                (self.short("run.screen.density", &screen::DENSITY)) small.unit { "%" }
                (self.short("run.screen.colour", &screen::COLOUR))
            }
            (self.line("run.screen.bottom", &screen::BOTTOM))
            div.pair {
                (self.short("run.screen.height", &screen::HEIGHT)) small { "or" } (self.short("run.screen.top", &screen::TOP))
            }
            div.pair.narrow {
                (self.short("run.screen.weight", &screen::WEIGHT.known()))
                (self.words("run.screen.condition", &screen::CONDITION, &["dry", "iced", "unknown"]))
            }
            (self.ticks("run.screen.face", &screen::FACE, &fields::FACES))
            (self.line("run.screen.bays", &screen::BAYS))
            div.field data-key="run.screen.fastening" {
                code { "fastening" }
                div.field data-key="run.screen.fastening.kind" { (key(&screen::KIND)) span.ticks { (tick("ties")) (tick("lacing")) (tick("unknown")) } }
            }
            div.pair {
                (self.short("run.screen.fastening.strength", &screen::STRENGTH))
                (self.short("run.screen.fastening.spacing", &screen::SPACING))
            }
            (self.line("run.screen.fastening.rope", &screen::ROPE))
            (self.ticks("run.screen.fastening.rows", &screen::ROWS, &screen::ROW_WAYS))
            div.pair data-key="run.screen.vents" {
                code { "vents" }
                (self.short("run.screen.vents.width", &screen::VENT_WIDTH))
                (self.short("run.screen.vents.height", &screen::VENT_HEIGHT))
                (self.short("run.screen.vents.per_bay", &screen::PER_BAY))
            }
        }
    }
}

const STYLE: &str = "\
* { box-sizing: border-box; }
body { margin: 0; color: #000; background: #fff; font: 8pt/1.25 sans-serif; }
.page { display: flex; flex-direction: column; margin: 0 auto; break-after: page; }
.page:last-child { break-after: auto; }
header { display: flex; justify-content: space-between; align-items: baseline; border-bottom: 0.5mm solid #000; }
h1 { font-size: 14pt; margin: 0; }
h2 { font: bold 9.5pt/1.2 monospace; margin: 2mm 0 0; white-space: pre-wrap; }
p { margin: 1mm 0 0; }
code { font: bold 8.5pt monospace; white-space: nowrap; }
small { font-size: 7pt; }
.row, .pair, .field { display: flex; align-items: flex-end; gap: 1.2mm; min-height: 6mm; }
.row { gap: 4mm; }
.tight { gap: 2mm; min-height: 5mm; }
.tight .field { min-height: 5mm; flex: 1 0 auto !important; }
.row .field small:not(.unit) { white-space: nowrap; }
.row > small, .row > code, .pair > code { margin-right: -2.8mm; }
.pair > code, .tight > small { margin-right: 0; }
.tight .ticks, .narrow .ticks { flex-wrap: nowrap; gap: 0 1.5mm; }
.page:first-of-type .row { min-height: 5.4mm; }
.page:first-of-type .tight { min-height: 5mm; }
.page:first-of-type .sketches svg { max-height: 25mm; }
.page:first-of-type .tall td { height: 6mm; }
.two { min-height: 9mm; align-items: center; }
.row > .field, .pair > .field, .field > .field { flex: 1; }
.line { flex: 1; min-width: 8mm; border-bottom: 0.25mm solid #000; align-self: flex-end; }
.unit { white-space: nowrap; }
.ticks { display: inline-flex; flex-wrap: wrap; gap: 0 2.5mm; }
.tick { display: inline-flex; align-items: center; gap: 0.8mm; white-space: nowrap; font-size: 7.5pt; }
.tick b { font-size: 8pt; }
.box { width: 3mm; height: 3mm; border: 0.25mm solid #000; background: #fff; flex: none; }
.warning { border-left: 1.6mm solid #000; padding-left: 1.5mm; font-size: 8pt; }
.sketches { display: flex; justify-content: space-between; gap: 4mm; margin-top: 1.5mm; }
.sketches svg { flex: 1; min-width: 0; max-height: 40mm; }
.seen svg { max-height: 51mm; }
.seen svg:first-child { flex: 2; }
.three svg { max-height: 26mm; }
.columns .field, .columns .pair { min-height: 5mm; }
.columns .two { min-height: 8mm; }
.columns { display: flex; gap: 6mm; }
.columns > div { flex: 1; min-width: 0; }
.bays { display: grid; grid-template-columns: repeat(12, 1fr); border: 0.25mm solid #000; border-width: 0.25mm 0 0 0.25mm; margin-top: 1mm; }
.bays div { height: 8.5mm; border: 0.25mm solid #000; border-width: 0 0.25mm 0.25mm 0; padding: 0 0.6mm; }
table { border-collapse: collapse; width: 100%; flex: 1; margin-top: 1.5mm; }
th, td { border: 0.25mm solid #000; text-align: left; font-weight: normal; padding: 0.3mm 1mm; width: 20%; }
th { width: 40%; line-height: 1.15; }
th code { margin-right: 1mm; }
td.figure { vertical-align: bottom; text-align: right; }
td.figure span { float: left; }
td .tick { margin-right: 2mm; }
td.dense .tick { margin-right: 1mm; }
.tall td { height: 9mm; }
.note code { margin-right: 1mm; }
.note { flex: 1; border: 0.25mm solid #000; padding: 0.4mm 1mm; margin-top: 1.5mm; min-height: 7mm; }
@media screen { .page { margin: 8mm auto; outline: 0.3mm solid #999; padding: 4mm; height: auto; } }
";
