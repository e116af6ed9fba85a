//! A survey to fill in: every key with what it is and how to measure it, and invented values where one must stand.

use super::fields::{self, Field, job, order, post, run, screen, site};
use crate::caution::{CLIMBING, Caution, DIGGING, WIND};
use crate::units::{Measure, System};
use crate::wind::{Code, KeyKind, SiteKey};
use std::fmt::Write as _;
use std::io::{self, Write};

/// Which draft is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Draft {
    /// How many runs.
    pub runs: usize,
    /// In which units its values stand and its results are written.
    pub system: System,
}

/// The mark of an invented value.
const MARK: &str = "# REPLACE";
/// The sides of a court in the order in which each meets the next at its right end, seen from inside.
const SIDES: [&str; 4] = ["north", "east", "south", "west"];

/// Writes a draft.
///
/// # Errors
/// If the writer fails.
pub fn draft(draft: Draft, out: &mut impl Write) -> io::Result<()> {
    let mut page = Page { text: String::new(), system: draft.system };
    page.head();
    page.job();
    page.site(Code::Asce7_16);
    page.kinds();
    page.order();
    page.all_runs();
    for at in 0..draft.runs {
        page.run(at, draft.runs);
    }
    out.write_all(page.text.as_bytes())
}

/// Text as TOML writes it, in quotes.
pub(super) fn quoted(text: &str) -> String {
    let mut quoted = String::with_capacity(text.len() + 2);
    quoted.push('"');
    for letter in text.chars() {
        match letter {
            '"' => quoted.push_str("\\\""),
            '\\' => quoted.push_str("\\\\"),
            control if control.is_control() => {
                let _ = write!(quoted, "\\u{:04X}", u32::from(control));
            }
            other => quoted.push(other),
        }
    }
    quoted.push('"');
    quoted
}

/// A name as a part of a key, in quotes where it needs them.
pub(super) fn bare_or_quoted(name: &str) -> String {
    let bare = |letter: char| letter.is_ascii_alphanumeric() || letter == '-' || letter == '_';
    if !name.is_empty() && name.chars().all(bare) { name.to_owned() } else { quoted(name) }
}

struct Page {
    text: String,
    system: System,
}

impl Page {
    fn line(&mut self, line: &str) {
        self.text.push_str(line);
        self.text.push('\n');
    }

    fn warning(&mut self, caution: &Caution) {
        for line in textwrap::wrap(&format!("{}: {}", caution.word, caution.text), 96) {
            self.line(&format!("# {line}"));
        }
    }

    fn about(&mut self, name: &str, sentence: &str) {
        self.line(&format!("# {name}: {sentence}."));
    }

    /// A key whose value must be measured: an invented one stands for now.
    fn invented(&mut self, field: &Field, value: &str) {
        self.about(field.key, &field.sentence());
        self.marked(&format!("{} = {value}", field.key));
    }

    fn marked(&mut self, line: &str) {
        self.line(&format!("{line:<44} {MARK}"));
    }

    /// A key that may stay as it is until more is known.
    fn unknown(&mut self, field: &Field) {
        let example = quoted(field.example(self.system));
        self.about(field.key, &format!("{}; like {example}", field.sentence()));
        self.line(&format!("{} = \"unknown\"", field.key));
    }

    /// A key that may be left out: taking its `# ` away puts it in.
    fn left_out(&mut self, field: &Field, value: &str) {
        self.about(field.key, &field.sentence());
        self.line(&format!("# {} = {value}", field.key));
    }

    fn text_of(&self, field: &Field) -> String {
        quoted(field.example(self.system))
    }

    fn head(&mut self) {
        let invented = format!(
            "A line with {MARK} at its end holds an invented value: write yours and take the mark away."
        );
        for line in [
            "A draft of a survey. Nothing in it was measured.",
            &invented,
            "\"unknown\" may stay where it stands: the check then works the worst and the best it could be.",
            "A line like  # key = value  is left out: take its \"# \" away where it applies.",
            "Figures stand in quotes with their unit: \"11 ft 1 in\", \"2-3/8 in\", \"3.05 m\", \"115 mph\".",
            "A range stands where a figure is not known to a point: \"0.109 in .. 0.154 in\".",
        ] {
            self.line(&format!("# {line}"));
        }
        self.line("");
        self.about("survey", "the format of this file; leave it");
        self.line("survey = 1");
        self.about("units", &fields::UNITS.sentence());
        self.line(&format!("units = {}", quoted(self.system.key())));
    }

    fn job(&mut self) {
        self.line("\n[job]");
        // The title stands at the head of every result: nobody takes a draft for a survey.
        self.invented(&job::TITLE, "\"NOT MEASURED: a draft, courts at Tarnwick Green\"");
        self.left_out(&job::PREPARED_FOR, &self.text_of(&job::PREPARED_FOR));
        self.left_out(&job::MEASURED_BY, &self.text_of(&job::MEASURED_BY));
        self.left_out(&job::DATE, job::DATE.example(self.system));
        self.left_out(&fields::NOTE, "\"client asks about windows in the cloth\"");
    }

    fn site(&mut self, code: Code) {
        self.line("\n[site]");
        let codes: Vec<&str> = Code::ALL.iter().map(|code| code.key()).collect();
        self.about("wind_code", &format!("{}; one of {}", site::WIND_CODE.sentence(), codes.join(", ")));
        self.marked(&format!("wind_code = {}", quoted(code.key())));
        self.unknown(&site::WIND_SPEED);
        self.left_out(&site::WIND_SPEED_SOURCE, &self.text_of(&site::WIND_SPEED_SOURCE));
        for key in code.site_keys() {
            if let KeyKind::Table(keys) = key.kind {
                self.site_table(key, keys);
                continue;
            }
            self.about(key.key, key.about);
            match key.kind {
                KeyKind::Choice(_) => self.line(&format!("{} = \"unknown\"", key.key)),
                KeyKind::Quantity(_, default) => {
                    let line = format!("{} = {}", key.key, site_value(key, self.system));
                    // What has no usual value must be given.
                    if default.is_some() { self.line(&format!("# {line}")) } else { self.marked(&line) }
                }
                KeyKind::Table(_) => {}
            }
        }
        self.left_out(&site::RISK_CATEGORY, &self.text_of(&site::RISK_CATEGORY));
        self.left_out(&site::DESIGN, &self.text_of(&site::DESIGN));
        self.about("soil", "a table with one of the next two, or \"unknown\"; more keys for other methods");
        for field in [site::LATERAL_BEARING, site::SOIL_CLASS] {
            self.about(
                field.key,
                &format!("{}; {{ {} = {} }}", field.sentence(), field.key, self.text_of(&field)),
            );
        }
        self.line("soil = \"unknown\"");
        self.left_out(&fields::NOTE, "\"houses to the south, fields to the west\"");
    }

    /// A table below the site, left out.
    fn site_table(&mut self, table: &SiteKey, keys: &[SiteKey]) {
        self.line(&format!("# {}: {}; or \"none\":", table.key, table.about));
        let mut values = Vec::new();
        for key in keys {
            self.line(&format!("#   {}: {}.", key.key, key.about));
            let value = match key.kind {
                KeyKind::Choice(_) => key.example[0].to_owned(),
                _ => site_value(key, self.system),
            };
            values.push(format!("{} = {value}", key.key));
        }
        self.line(&format!("# {} = {{ {} }}", table.key, values.join(", ")));
    }

    fn kinds(&mut self) {
        let ways = fields::FROM_WAYS.join(", ");
        self.line("\n# Kinds of posts, each measured once; a run names them.");
        self.warning(&WIND);
        self.warning(&CLIMBING);
        self.line("# A post that is no round tube says its size by one of these in place of girth:");
        for field in [
            post::WIDTH,
            post::SECTION,
            post::MODULUS,
            post::MOMENT,
            post::MOMENT_IS,
            post::FACE_WIDTH,
            post::TIMBER,
            post::SPECIES,
            post::GRADE,
            post::SERVICE,
            post::INCISED,
        ] {
            self.line(&format!("#   {}: {}; like {}.", field.key, field.sentence(), self.text_of(&field)));
        }
        for (name, us, si) in [("line", "9-1/16 in", "230 mm"), ("end", "12-9/16 in", "319 mm")] {
            self.line(&format!("\n[post.{name}]"));
            let girth = if self.system == System::Us { us } else { si };
            self.invented(&post::GIRTH, &quoted(girth));
            self.about(
                post::DIAMETER.key,
                &format!("{}; like {}", post::DIAMETER.sentence(), self.text_of(&post::DIAMETER)),
            );
            self.unknown(&post::NOMINAL_WALL);
            self.about(
                post::MEASURED_WALL.key,
                &format!("{}; like {}", post::MEASURED_WALL.sentence(), self.text_of(&post::MEASURED_WALL)),
            );
            self.unknown(&post::YIELD);
            self.left_out(&post::RUST, &self.text_of(&post::RUST));
            self.left_out(&post::SEAMLESS, &self.text_of(&post::SEAMLESS));
            self.about("from", &format!("how it was found; one of {ways}"));
            self.line("# from = \"tape\"");
            self.left_out(&fields::NOTE, &self.text_of(&fields::NOTE));
        }
        self.line("\n# Kinds of cloth; a run names one and says how high it hangs.");
        self.line("\n[screen.cloth]");
        self.invented(&screen::CLOTH, &self.text_of(&screen::CLOTH));
        self.about(
            screen::SOLIDITY.key,
            &format!("{}; left out: as the catalogue has it for the cloth", screen::SOLIDITY.sentence()),
        );
        self.line(&format!("# solidity = {}", screen::SOLIDITY.example(self.system)));
        self.about(
            screen::DENSITY.key,
            &format!("{}; like \"95 %\", {} like \"black\"", screen::DENSITY.sentence(), screen::COLOUR.key),
        );
        self.about(screen::COLOUR.key, &screen::COLOUR.sentence());
        self.line("# air_permeability: its maker's test; like { flow = \"500 cfm/ft2\", at = \"125 Pa\" }");
        self.line("# over: cloth hung over this cloth; like \"closed mesh\" or { solidity = 0.9 }");
        self.left_out(&screen::WEIGHT, &self.text_of(&screen::WEIGHT));
        self.invented(&screen::HEIGHT, &self.text_of(&screen::HEIGHT));
        self.left_out(&screen::CONDITION, &self.text_of(&screen::CONDITION));
        self.line("# fastening: what holds the cloth, or \"unknown\":");
        for field in [
            screen::KIND,
            screen::STRENGTH,
            screen::AGE,
            screen::ROPE,
            screen::YEARS,
            screen::SPACING,
            screen::ROWS,
            screen::TIED_TO,
            screen::PANEL,
            screen::GROMMET,
            screen::OFFSET,
            screen::STIFFNESS,
            screen::SLACK,
        ] {
            self.line(&format!("#   {}: {}; like {}.", field.key, field.sentence(), self.text_of(&field)));
        }
        let (spacing, rope) = (self.text_of(&screen::SPACING), self.text_of(&screen::ROPE));
        self.line("fastening = \"unknown\"");
        self.line(&format!(
            "# fastening = {{ kind = \"ties\", strength = \"unknown\", spacing = {spacing}, rows = [\"top\", \"bottom\"] }}"
        ));
        self.line(&format!(
            "# fastening = {{ kind = \"lacing\", rope = {rope}, spacing = {spacing}, rows = [\"top\", \"bottom\"] }}"
        ));
        self.left_out(&fields::NOTE, "\"hem torn at the north end\"");
    }

    fn order(&mut self) {
        self.line("\n# What an order list is asked for; no check reads it, and each line may stay out.");
        self.line("[order]");
        for field in order::FIELDS {
            self.left_out(field, &self.text_of(field));
        }
    }

    fn all_runs(&mut self) {
        self.line("\n# What holds for every run; a run that differs writes the key again for itself.");
        self.line("[all_runs]");
        self.invented(&run::HEIGHT, &self.text_of(&run::HEIGHT));
        self.left_out(&run::BASE, &self.text_of(&run::BASE));
        let rail = format!("{{ diameter = {} }}", self.text_of(&run::RAIL));
        self.line(&format!("# top_rail, mid_rail, bottom_rail: {}.", run::RAIL.sentence()));
        for field in [run::RAIL_NOMINAL_WALL, run::RAIL_MEASURED_WALL, post::YIELD, run::SPLICE] {
            self.line(&format!("#   {}: {}.", field.key, field.sentence()));
        }
        self.marked(&format!("top_rail = {rail}"));
        self.line(&format!("# mid_rail = {rail}"));
        self.line(&format!("# bottom_rail = {rail}"));
        self.line("# chain_link: the steel mesh, or \"none\":");
        for field in [run::MESH, run::WIRE, run::MESH_FACE] {
            self.line(&format!("#   {}: {}.", field.key, field.sentence()));
        }
        let (mesh, wire) = (self.text_of(&run::MESH), self.text_of(&run::WIRE));
        self.marked(&format!("chain_link = {{ mesh = {mesh}, wire = {wire}, face = \"inside\" }}"));
        self.line("# footing: the concrete round a post, or \"unknown\":");
        self.warning(&DIGGING);
        for field in [run::SHAPE, run::WIDTH, run::DEPTH] {
            self.line(&format!("#   {}: {}; like {}.", field.key, field.sentence(), self.text_of(&field)));
        }
        self.line("footing = \"unknown\"");
        let (width, depth) = (self.text_of(&run::WIDTH), self.text_of(&run::DEPTH));
        self.line(&format!("# footing = {{ shape = \"round\", width = {width}, depth = {depth} }}"));
        self.invented(&run::LINE_POST, "\"line\"");
        self.invented(&run::END_POST, "\"end\"");
        self.left_out(&run::CORNER_POST, "\"end\"");
        self.left_out(&run::GATE_POST, "\"end\"");
        self.line("\n# You stand inside the court, facing the fence: post 1 is at your left, bay 1 lies between posts 1 and 2.");
    }

    fn run(&mut self, at: usize, runs: usize) {
        let (court, side) = (at / SIDES.len() + 1, SIDES[at % SIDES.len()]);
        let in_court = (runs - (court - 1) * SIDES.len()).min(SIDES.len());
        let closed = in_court == SIDES.len();
        let first = at.is_multiple_of(SIDES.len());
        let last = at % SIDES.len() + 1 == in_court;
        let end = |free: bool| if free && !closed { "\"free\"" } else { "\"corner\"" };
        self.line("\n[[run]]");
        self.invented(&run::NAME, &quoted(&format!("court {court}, {side} side")));
        self.invented(&run::COURT, &quoted(&format!("court {court}")));
        self.invented(&run::FACES, &quoted(side));
        let bays: Vec<String> = run::BAYS.example(self.system).split(", ").map(quoted).collect();
        self.invented(&run::BAYS, &format!("[{}]", bays.join(", ")));
        let returned = format!("{{ return = {} }}", self.text_of(&run::START));
        self.invented(&run::START, end(first));
        self.line(&format!("# start = {returned}"));
        self.invented(&run::FINISH, end(last));
        self.line(&format!("# finish = {returned}"));
        self.line(
            "# screen: the cloth on this side, or \"none\"; any key of its kind may be given again here:",
        );
        self.line("#   like: the kind of cloth, its name in [screen.NAME].");
        for field in [screen::BOTTOM, screen::FACE] {
            self.line(&format!("#   {}: {}.", field.key, field.sentence()));
        }
        self.line("#   top, bays and vents may stand there too:");
        for field in [screen::TOP, screen::BAYS] {
            self.line(&format!("#   {}: {}; like {}.", field.key, field.sentence(), self.text_of(&field)));
        }
        let (width, height) = (self.text_of(&screen::VENT_WIDTH), self.text_of(&screen::VENT_HEIGHT));
        self.line(&format!(
            "#   vents: a table; like {{ width = {width}, height = {height}, per_bay = 2 }}:"
        ));
        for field in [screen::VENT_WIDTH, screen::VENT_HEIGHT, screen::PER_BAY] {
            self.line(&format!("#     {}: {}.", field.key, field.sentence()));
        }
        let bottom = self.text_of(&screen::BOTTOM);
        self.marked(&format!("screen = {{ like = \"cloth\", bottom = {bottom}, face = \"inside\" }}"));
        self.line("# other_posts: posts that differ, by number and kind; post 1 is at your left.");
        self.line("# other_posts = [{ numbers = [2], post = \"end\" }]");
        self.line("# guy: back braces and guys, square to the run, each with the posts it holds:");
        for field in [
            run::GUY_POSTS,
            run::GUY_KIND,
            run::GUY_HEIGHT,
            run::GUY_BACK,
            run::GUY_SIDE,
            run::GUY_DIAMETER,
            run::GUY_WALL,
            run::GUY_YIELD,
            run::GUY_ALLOWED,
        ] {
            self.line(&format!("#   {}: {}.", field.key, field.sentence()));
        }
        let sizes = [run::GUY_HEIGHT, run::GUY_BACK, run::GUY_SIDE, run::GUY_DIAMETER];
        let given = |fields: &[Field]| -> String {
            fields.iter().map(|field| format!(", {} = {}", field.key, self.text_of(field))).collect()
        };
        let braced = format!(
            "kind = \"back brace\"{}",
            given(&[&sizes[..], &[run::GUY_WALL, run::GUY_YIELD]].concat())
        );
        let held = format!("kind = \"guy\"{}", given(&[&sizes[..], &[run::GUY_ALLOWED]].concat()));
        for guy in [braced, held] {
            self.line(&format!("# guy = [{{ posts = [1], {guy} }}]"));
        }
        self.left_out(&fields::NOTE, "\"gate sticks\"");
    }
}

/// A value of a site key as the file writes it: what it is when left out, or one as an example.
pub(super) fn site_value(key: &SiteKey, system: System) -> String {
    let example = match system {
        System::Us => key.example[0],
        System::Si => key.example[1],
    };
    match key.kind {
        KeyKind::Choice(_) => "\"unknown\"".to_owned(),
        KeyKind::Quantity(Measure::Ratio, default) => {
            default.map_or_else(|| example.to_owned(), |value| format!("{:?}", value.si))
        }
        KeyKind::Quantity(_, Some(default)) => quoted(&default.written(system)),
        KeyKind::Quantity(..) | KeyKind::Table(_) => example.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quotes_backslashes_and_controls_come_back_from_toml() {
        for text in ["", "Court \"A\" \\ <b>", "北側", "a\tb\r\nc\u{1}\u{7f}\u{85}", "'''", "\u{202e}x"] {
            let key = bare_or_quoted(text);
            let table: toml::Table =
                toml::from_str(&format!("value = {}\n[post.{key}]\n", quoted(text))).unwrap();
            assert_eq!(table["value"].as_str(), Some(text));
            assert!(table["post"].as_table().unwrap().contains_key(text), "{key}");
        }
        assert_eq!(bare_or_quoted("line-2"), "line-2");
    }
}
