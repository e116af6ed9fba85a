//! Reference cases worked: ours beside printed, and what that comes to.

use super::all;
use super::case::{Case, Expectation, Kind, Source, Trial};
use super::embedded;
use super::examples::{families, family};
use super::wrong::{CaseError, CaseMistake, Wrong};
use crate::workings::{Arguments, Entry};
use std::fmt::Write;

/// What is said of one value or one table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// As near as the page can tell.
    Agrees,
    /// Further off than the page allows: a failure.
    Differs,
    /// The source is believed wrong, and ours differs from it as before.
    DisputedStillDiffers,
    /// The source is believed wrong, and yet ours agrees now: a failure.
    DisputedButAgrees,
    /// No longer our own value of before: a failure.
    Moved,
}

impl Verdict {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Agrees => "agrees",
            Self::Differs => "differs",
            Self::DisputedStillDiffers => "disputed, still differs",
            Self::DisputedButAgrees => "disputed but now agrees",
            Self::Moved => "off its pinned value",
        }
    }

    /// Whether something is wrong here.
    #[must_use]
    pub const fn fails(self) -> bool {
        matches!(self, Self::Differs | Self::DisputedButAgrees | Self::Moved)
    }
}

/// A value at exactly half a unit rounds to the page; what arithmetic adds to that is far below this share.
const SLACK: f64 = 1e-9;
/// How far our own value may lie from the one that was pinned, as a share of it.
const PIN: f64 = 1e-9;

/// One value of a page and ours.
#[derive(Debug, Clone, Copy)]
pub struct Reading<'c> {
    /// The page.
    pub trial: &'c Trial,
    /// Ours, in SI units.
    pub ours: f64,
}

impl Reading<'_> {
    /// How far ours lies off, as a share of what is allowed.
    #[must_use]
    pub fn share_of_allowed(&self) -> f64 {
        (self.ours - self.trial.printed.si()).abs() / self.trial.allowed
    }

    /// Whether ours lies as near as is allowed.
    #[must_use]
    pub fn agrees(&self) -> bool {
        self.share_of_allowed() <= 1.0 + SLACK
    }

    /// Ours over printed; nothing where the page has nought.
    #[must_use]
    pub fn quotient(&self) -> Option<f64> {
        let printed = self.trial.printed.si();
        (printed != 0.0).then(|| self.ours / printed)
    }

    /// Ours in the unit of the page, with two digits more.
    #[must_use]
    pub fn ours_text(&self) -> String {
        self.trial.printed.beside(self.ours)
    }

    /// How far ours lies off, as text.
    #[must_use]
    pub fn difference(&self) -> String {
        self.trial.printed.apart(self.ours)
    }

    fn has_moved(&self) -> bool {
        self.trial.pinned.is_some_and(|pinned| (self.ours - pinned).abs() > PIN * pinned.abs())
    }
}

/// One value, or one table, of a case and what was found.
#[derive(Debug, Clone)]
pub struct Outcome<'c> {
    /// The case.
    pub case: &'c Case,
    /// What it expects.
    pub expectation: &'c Expectation,
    /// One for a value, one a row for a table.
    pub readings: Vec<Reading<'c>>,
    /// What is said of it.
    pub verdict: Verdict,
}

impl Outcome<'_> {
    /// The reading that lies off furthest for what it is allowed; for a disputed value the one that lies
    /// off least, since that is the one to watch.
    #[must_use]
    pub fn telling(&self) -> Option<&Reading<'_>> {
        let by = |one: &&Reading<'_>, other: &&Reading<'_>| {
            one.share_of_allowed().total_cmp(&other.share_of_allowed())
        };
        match self.case.disputed {
            Some(_) => self.readings.iter().min_by(by),
            None => self.readings.iter().max_by(by),
        }
    }

    /// The name of the value: the result's own, or the rule that made it.
    #[must_use]
    pub fn name(&self) -> &'static str {
        let card = self.expectation.of;
        if card.name == self.case.rule.card.name { card.key } else { card.name }
    }
}

/// Works a case.
///
/// # Errors
/// If the rule refuses its inputs, or does not work a value that is expected of it.
pub fn outcomes(case: &Case) -> Result<Vec<Outcome<'_>>, CaseError> {
    let mut mistakes = Vec::new();
    let mut found = Vec::new();
    for expectation in &case.expects {
        let mut readings = Vec::with_capacity(expectation.trials.len());
        for trial in &expectation.trials {
            match ours(case, expectation, trial) {
                Ok(ours) => readings.push(Reading { trial, ours }),
                Err(wrong) => {
                    mistakes.extend(wrong.into_iter().map(|what| CaseMistake { line: trial.line, what }));
                }
            }
        }
        found.push(Outcome { case, expectation, verdict: verdict(case, &readings), readings });
    }
    if mistakes.is_empty() { Ok(found) } else { Err(CaseError { file: case.file.clone(), mistakes }) }
}

fn verdict(case: &Case, readings: &[Reading<'_>]) -> Verdict {
    if readings.iter().any(Reading::has_moved) {
        return Verdict::Moved;
    }
    match case.disputed {
        None if readings.iter().all(Reading::agrees) => Verdict::Agrees,
        None => Verdict::Differs,
        Some(_) if readings.iter().any(Reading::agrees) => Verdict::DisputedButAgrees,
        Some(_) => Verdict::DisputedStillDiffers,
    }
}

/// The last value that the rule of an expectation made on the way.
fn ours(case: &Case, expectation: &Expectation, trial: &Trial) -> Result<f64, Vec<Wrong>> {
    let given = trial.given.iter().map(|(key, text)| (key.as_str(), text.as_str())).collect();
    let mut ledger = Vec::new();
    case.rule
        .work(&mut Arguments::new(given), &mut ledger)
        .map_err(|mistakes| mistakes.into_iter().map(Wrong::Input).collect::<Vec<_>>())?;
    let of = expectation.of.name;
    ledger
        .iter()
        .rev()
        .find_map(|entry| match entry {
            Entry::Worked { card, result, .. } if card.name == of => Some(result.si),
            _ => None,
        })
        .ok_or_else(|| vec![Wrong::NotWorked { rule: of, checks: case.rule.card.name }])
}

/// Works every case, and tells apart those that cannot be worked.
#[must_use]
pub fn work_all(cases: &[Case]) -> (Vec<Outcome<'_>>, Vec<CaseError>) {
    let (mut found, mut not_worked) = (Vec::new(), Vec::new());
    for case in cases {
        match outcomes(case) {
            Ok(outcomes) => found.extend(outcomes),
            Err(error) => not_worked.push(error),
        }
    }
    (found, not_worked)
}

/// Reads case files, name and text each, and tells apart those that cannot be read.
#[must_use]
pub fn read_all<'f>(files: impl IntoIterator<Item = (&'f str, &'f str)>) -> (Vec<Case>, Vec<CaseError>) {
    let (mut cases, mut unread) = (Vec::new(), Vec::new());
    for (file, text) in files {
        match Case::read(file, text) {
            Ok(case) => cases.push(case),
            Err(error) => unread.push(error),
        }
    }
    (cases, unread)
}

/// How many values, cells and works there are, and what is said of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Count {
    /// Values; a table is one.
    pub values: usize,
    /// Tables among them.
    pub tables: usize,
    /// Cells of the tables.
    pub cells: usize,
    /// Works they stand in; common practice is none.
    pub works: usize,
    /// Values that agree.
    pub agreeing: usize,
    /// Values that are disputed and differ as before.
    pub disputed: usize,
    /// Values that fail.
    pub failing: usize,
}

impl Count {
    /// Counts some outcomes.
    #[must_use]
    pub fn of(outcomes: &[&Outcome<'_>]) -> Self {
        let mut count = Self { values: outcomes.len(), ..Self::default() };
        let mut works: Vec<&str> = Vec::new();
        for outcome in outcomes {
            if outcome.expectation.is_table {
                count.tables += 1;
                count.cells += outcome.readings.len();
            }
            let Source { work, kind, .. } = &outcome.case.source;
            if *kind != Kind::Practice && !works.contains(&work.as_str()) {
                works.push(work);
            }
            match outcome.verdict {
                Verdict::Agrees => count.agreeing += 1,
                Verdict::DisputedStillDiffers => count.disputed += 1,
                Verdict::Differs | Verdict::DisputedButAgrees | Verdict::Moved => count.failing += 1,
            }
        }
        count.works = works.len();
        count
    }
}

/// What a set of outcomes comes to; other programs are counted apart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Summary {
    /// Everything but other programs.
    pub published: Count,
    /// Other programs.
    pub other_programs: Count,
    /// How many values of each kind of work there are, other programs left out.
    pub by_kind: Vec<(Kind, usize)>,
}

impl Summary {
    /// Sums up some outcomes.
    #[must_use]
    pub fn of(outcomes: &[Outcome<'_>]) -> Self {
        Self::among(&outcomes.iter().collect::<Vec<_>>())
    }

    fn among(outcomes: &[&Outcome<'_>]) -> Self {
        let is = |kind, outcome: &Outcome<'_>| outcome.case.source.kind == kind;
        let (other, published): (Vec<&Outcome<'_>>, Vec<_>) =
            outcomes.iter().copied().partition(|outcome| is(Kind::OtherProgram, outcome));
        let values = |kind| published.iter().filter(|outcome| is(kind, outcome)).count();
        let by_kind = Kind::ALL
            .map(|kind| (kind, values(kind)))
            .into_iter()
            .filter(|(_, values)| *values > 0)
            .collect();
        Self { published: Count::of(&published), other_programs: Count::of(&other), by_kind }
    }

    /// Whether nothing fails.
    #[must_use]
    pub const fn holds(&self) -> bool {
        self.published.failing == 0 && self.other_programs.failing == 0
    }

    fn kinds(&self) -> String {
        let kinds: Vec<_> =
            self.by_kind.iter().map(|(kind, values)| format!("{} {values}", kind.key())).collect();
        kinds.join(", ")
    }
}

/// How wide the text may be.
pub const WIDTH: usize = 100;

const SHOWN: &str = "Of a table one cell is shown: the one furthest off for what is allowed, or the one \
nearest where the table is disputed; when a table fails, every cell that is to blame.";

/// What was found as plain text, ours beside printed, with the files that could not be worked.
#[must_use]
pub fn text(outcomes: &[Outcome<'_>], unread: &[CaseError]) -> String {
    let mut text = String::new();
    if !outcomes.is_empty() {
        wrapped(&mut text, "", SHOWN);
        text.push('\n');
        row(&mut text, ["", "ours", "printed", "off by", "value"]);
    }
    let mut before: Option<&Case> = None;
    for outcome in outcomes {
        let case = outcome.case;
        if !before.is_some_and(|before| std::ptr::eq(before, case)) {
            before = Some(case);
            text.push('\n');
            head(&mut text, case);
        }
        reading(&mut text, outcome);
        if let Some(because) = &outcome.expectation.because {
            wrapped(&mut text, "  ", &format!("allowed more because {because}"));
        }
    }
    if !unread.is_empty() {
        text.push_str(if outcomes.is_empty() { "Not worked:\n" } else { "\nNot worked:\n" });
        for error in unread {
            for line in error.to_string().lines() {
                wrapped(&mut text, "  ", line);
            }
        }
    }
    text.push('\n');
    sum(&mut text, &Summary::of(outcomes), unread.len());
    text
}

fn wrapped(text: &mut String, indent: &str, words: &str) {
    let deeper = format!("{indent}  ");
    let options = textwrap::Options::new(WIDTH)
        .initial_indent(indent)
        .subsequent_indent(&deeper)
        .word_splitter(textwrap::WordSplitter::NoHyphenation);
    for line in textwrap::wrap(words, options) {
        text.push_str(line.trim_end());
        text.push('\n');
    }
}

fn row(text: &mut String, [verdict, ours, printed, off, value]: [&str; 5]) {
    let line = format!("  {verdict:<23} {ours:>15} {printed:>15} {off:>9}  {value}");
    let fits = line.chars().count() <= WIDTH;
    let line = if fits { line } else { format!("  {verdict:<23} {ours:>15} {printed:>15} {off:>9}") };
    text.push_str(line.trim_end());
    text.push('\n');
    if !fits {
        wrapped(text, "      ", value);
    }
}

fn head(text: &mut String, case: &Case) {
    let source = &case.source;
    wrapped(text, "", &case.file);
    wrapped(text, "  ", &format!("checks {}", case.rule.card.name));
    wrapped(text, "  ", &format!("{}, {}", source.work, source.place));
    wrapped(text, "  ", &format!("{}, {}", source.kind.key(), source.seen.in_words()));
    if let Some(why) = &case.disputed {
        wrapped(text, "  ", &format!("disputed: {why}"));
    }
    if let Some(note) = &case.note {
        wrapped(text, "  ", &format!("note: {note}"));
    }
}

fn reading(text: &mut String, outcome: &Outcome<'_>) {
    let table = outcome.expectation.is_table;
    let line = |text: &mut String, reading: &Reading<'_>, verdict: &str, name: &str| {
        row(text, [verdict, &reading.ours_text(), reading.trial.printed.text(), &reading.difference(), name]);
    };
    let Some(telling) = outcome.telling() else { return };
    let name = match outcome.readings.len() {
        cells if table => format!("{}, {cells} cells", outcome.name()),
        _ => outcome.name().to_owned(),
    };
    line(text, telling, outcome.verdict.words(), &name);
    match outcome.verdict {
        Verdict::DisputedButAgrees => {
            wrapped(
                text,
                "      ",
                "the page is right after all, or ours has moved: take disputed out, or look why",
            );
        }
        Verdict::Moved => {
            for reading in outcome.readings.iter().filter(|reading| reading.has_moved()) {
                let Some(pinned) = reading.trial.pinned else { continue };
                let told = format!(
                    "pinned at {}, ours lies off by {:.1e} of it: look what moved it, then pin the new value",
                    reading.trial.printed.beside(pinned),
                    (reading.ours / pinned - 1.0).abs()
                );
                wrapped(text, "      ", &told);
            }
        }
        Verdict::Agrees | Verdict::Differs | Verdict::DisputedStillDiffers => {}
    }
    if table && outcome.verdict.fails() {
        let wrong = outcome.case.disputed.is_some();
        for reading in outcome.readings.iter().filter(|reading| reading.agrees() == wrong) {
            let given: Vec<_> =
                reading.trial.given.iter().map(|(key, text)| format!("{key} {text}")).collect();
            let name = format!("line {}: {}", reading.trial.line, given.join(", "));
            line(text, reading, if wrong { "  agrees" } else { "  differs" }, &name);
        }
    }
}

fn sum(text: &mut String, summary: &Summary, unread: usize) {
    let Summary { published, other_programs: other, .. } = summary;
    let plural =
        |count: usize, one: &str| if count == 1 { format!("1 {one}") } else { format!("{count} {one}s") };
    let found = |count: &Count| {
        let mut found = format!("{} agree", count.agreeing);
        if count.disputed > 0 {
            let _ = write!(found, ", {} disputed and still differing", count.disputed);
        }
        if count.failing > 0 {
            let _ = write!(found, ", {} FAIL", count.failing);
        }
        found
    };
    let size = |count: &Count| {
        let mut size = format!("{} of {}", plural(count.values, "value"), plural(count.works, "work"));
        if count.tables > 0 {
            let _ = write!(
                size,
                ", {} among them with {}",
                plural(count.tables, "table"),
                plural(count.cells, "cell")
            );
        }
        size
    };
    if published.values > 0 {
        wrapped(text, "", &format!("{}: {}.", size(published), found(published)));
    }
    if !summary.by_kind.is_empty() {
        wrapped(text, "", &format!("By kind of work: {}.", summary.kinds()));
    }
    if other.values > 0 {
        wrapped(text, "", &format!("Apart, other programs: {}: {}.", size(other), found(other)));
    }
    if unread > 0 {
        wrapped(text, "", &format!("{} could not be worked.", plural(unread, "file")));
    }
}

/// The table of what each family of rules is held against, in Markdown, from the cases in the program.
#[must_use]
pub fn status_table() -> String {
    let (cases, _) = read_all(embedded::CASES.iter().copied());
    status_table_of(&work_all(&cases).0)
}

/// The same from some outcomes.
#[must_use]
pub fn status_table_of(outcomes: &[Outcome<'_>]) -> String {
    let mut text = String::from("| rules | values | cells | works | how |\n|---|---:|---:|---:|---|\n");
    for name in families() {
        let own: Vec<_> =
            outcomes.iter().filter(|outcome| family(outcome.expectation.of.name) == name).collect();
        let Summary { published, other_programs, .. } = &Summary::among(&own);
        let _ = writeln!(
            text,
            "| {name} | {} | {} | {} | {} |",
            published.values,
            published.cells,
            published.works,
            how(name, &own, other_programs)
        );
    }
    let Count { values, cells, works, .. } = Summary::of(outcomes).published;
    let _ = writeln!(text, "| together | {values} | {cells} | {works} | |");
    text
}

fn how(name: &str, outcomes: &[&Outcome<'_>], other: &Count) -> String {
    let rules = || all().map(|listed| listed.card.name).filter(|rule| family(rule) == name);
    let is_checked = |rule: &&str| outcomes.iter().any(|outcome| outcome.expectation.of.name == *rule);
    let (checked, of) = (rules().filter(is_checked).count(), rules().count());
    if checked == 0 {
        return "written, unchecked".to_owned();
    }
    let mut how = format!("{checked} of {of} rules");
    let summary = Summary::among(outcomes);
    if !summary.by_kind.is_empty() {
        let _ = write!(how, ": {}", summary.kinds());
    }
    if summary.published.disputed > 0 {
        let _ = write!(how, "; {} disputed", summary.published.disputed);
    }
    if other.values > 0 {
        let _ = write!(how, "; apart, other programs {}", other.values);
    }
    how
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::Printed;
    use crate::units::Dimension;

    const CASE: &str = r#"case = 1
checks = "section/round-tube"
[source]
work = "An invented handbook"
place = "page 1"
kind = "textbook"
seen = "first-hand"
[given]
diameter = "2 in"
wall = "0.5 in"
[expect.modulus]
printed = "1.17 in3"
"#;

    fn case(from: &str, to: &str) -> Case {
        assert!(CASE.contains(from), "{from}");
        Case::read("a.toml", &CASE.replace(from, to)).unwrap_or_else(|error| panic!("{error}"))
    }

    fn verdict_of(from: &str, to: &str) -> Verdict {
        outcomes(&case(from, to)).unwrap()[0].verdict
    }

    #[test]
    fn a_value_is_held_to_half_a_unit_in_its_last_digit() {
        // Z is 7/6 = 1.1666… in³ by hand.
        for (printed, verdict) in [
            ("1.17 in3", Verdict::Agrees),
            ("1.167 in3", Verdict::Agrees),
            ("1.166 in3", Verdict::Differs),
            ("1.1667 in3", Verdict::Agrees),
            ("1.16 in3", Verdict::Differs),
            ("1.2 in3", Verdict::Agrees),
            ("1 in3", Verdict::Agrees),
            ("2 in3", Verdict::Differs),
        ] {
            assert_eq!(verdict_of("1.17 in3", printed), verdict, "{printed}");
        }
    }

    #[test]
    fn a_value_exactly_at_the_half_rounds_to_the_page_and_a_hair_beyond_does_not() {
        let head = CASE.split("[given]").next().unwrap().replace("section/round-tube", "units/length");
        for (reading, verdict) in [("0.125 m", Verdict::Agrees), ("0.124999 m", Verdict::Differs)] {
            let text =
                format!("{head}[given]\nreading = \"{reading}\"\n[expect.length]\nprinted = \"0.13 m\"\n");
            let case = Case::read("b.toml", &text).unwrap();
            assert_eq!(outcomes(&case).unwrap()[0].verdict, verdict, "{reading}");
        }
    }

    #[test]
    fn an_allowance_is_a_share_in_per_cent_or_a_value_and_reaches_no_further() {
        let allow = |printed: &str, allow: &str| {
            let because = format!("{printed} in3\"\nallow = \"{allow}\"\nbecause = \"why");
            verdict_of("1.17 in3", &because)
        };
        assert_eq!(allow("1.150", "0.017 in3"), Verdict::Agrees);
        assert_eq!(allow("1.150", "0.016 in3"), Verdict::Differs);
        assert_eq!(allow("1.150", "1.5 %"), Verdict::Agrees);
        assert_eq!(allow("1.150", "1.4 %"), Verdict::Differs);
    }

    #[test]
    fn a_disputed_value_must_keep_differing() {
        let disputed = |printed: &str| {
            let text =
                CASE.replace("case = 1\n", "case = 1\ndisputed = \"why\"\n").replace("1.17 in3", printed);
            outcomes(&Case::read("a.toml", &text).unwrap()).unwrap()[0].verdict
        };
        assert_eq!(disputed("1.27 in3"), Verdict::DisputedStillDiffers);
        assert_eq!(disputed("1.17 in3"), Verdict::DisputedButAgrees);
    }

    #[test]
    fn a_pinned_value_is_held_to_a_billionth() {
        let pinned = |pinned: f64| {
            let pinned = format!("printed = \"1.17 in3\"\npinned = \"{pinned} in3\"");
            verdict_of("printed = \"1.17 in3\"", &pinned)
        };
        assert_eq!(pinned(7.0 / 6.0), Verdict::Agrees);
        assert_eq!(pinned(7.0 / 6.0 * (1.0 + 5e-10)), Verdict::Agrees);
        assert_eq!(pinned(7.0 / 6.0 * (1.0 + 2e-9)), Verdict::Moved);
    }

    #[test]
    fn a_value_on_the_way_goes_by_its_rule_and_one_off_the_way_is_told() {
        let on = case(
            "[expect.modulus]\nprinted = \"1.17 in3\"",
            "[expect.\"section/tube-area\"]\nprinted = \"2.356 in2\"",
        );
        let found = outcomes(&on).unwrap();
        assert_eq!((found[0].name(), found[0].verdict), ("section/tube-area", Verdict::Agrees));
        let off =
            case("[expect.modulus]\nprinted = \"1.17 in3\"", "[expect.\"units/length\"]\nprinted = \"1 ft\"");
        let error = outcomes(&off).unwrap_err().to_string();
        assert!(error.starts_with("a.toml, line 12: ") && error.contains("section/round-tube"), "{error}");
    }

    #[test]
    fn of_a_rule_worked_twice_the_last_value_counts() {
        let text = CASE.split("checks").next().unwrap().to_owned()
            + r#"checks = "windows/openings-change"
source = { work = "w", place = "p", kind = "analytic", seen = "memory" }
given = { solidity = 1, window_width = "3 ft", window_height = "3 ft", windows_per_bay = 1, bay_width = "6 ft", cloth_height = "6 ft" }
[expect."asce7-16/openings-factor"]
printed = "0.8750"
[expect.change]
printed = "-12.50 %"
"#;
        let case = Case::read("a.toml", &text).unwrap_or_else(|error| panic!("{error}"));
        let found = outcomes(&case).unwrap();
        let verdicts: Vec<_> = found.iter().map(|outcome| (outcome.name(), outcome.verdict)).collect();
        // In the order of the file, not of the alphabet.
        assert_eq!(verdicts, [("asce7-16/openings-factor", Verdict::Agrees), ("change", Verdict::Agrees)]);
    }

    #[test]
    fn values_stand_in_the_order_of_the_file() {
        let case = case(
            "[expect.modulus]",
            "[expect.\"section/tube-second-moment\"]\nprinted = \"0.74 in4\"\n[expect.modulus]",
        );
        let names: Vec<_> = outcomes(&case).unwrap().iter().map(Outcome::name).collect();
        assert_eq!(names, ["section/tube-second-moment", "modulus"]);
    }

    #[test]
    fn the_quotient_is_ours_over_printed_and_none_over_nought() {
        let quotient = |printed: &str| {
            let case = case("1.17 in3", printed);
            outcomes(&case).unwrap()[0].readings[0].quotient()
        };
        assert!((quotient("1.25 in3").unwrap() - 7.0 / 6.0 / 1.25).abs() < 1e-12);
        assert_eq!(quotient("0.00 in3"), None);
    }

    #[test]
    fn what_a_rule_refuses_is_told_with_the_file_and_the_line() {
        let case = case("0.5 in", "1.5 in");
        let error = outcomes(&case).unwrap_err().to_string();
        assert!(error.starts_with("a.toml, line 12: wall 1-1/2 in"), "{error}");
    }

    #[test]
    fn no_cell_of_a_disputed_table_may_agree_and_the_nearest_is_shown() {
        let disputed = |cells: [&str; 3]| {
            let mut case = table("textbook", "0.77");
            case.disputed = Some("why".to_owned());
            for (trial, cell) in case.expects[0].trials.iter_mut().zip(cells) {
                trial.printed = Printed::read(cell, Dimension::SectionModulus, None).unwrap();
            }
            let found = outcomes(&case).unwrap();
            (found[0].verdict, found[0].telling().unwrap().trial.printed.text().to_owned())
        };
        let differs = disputed(["1.27 in3", "1.35 in3", "0.97 in3"]);
        assert_eq!(differs, (Verdict::DisputedStillDiffers, "1.35 in3".to_owned()));
        let one_agrees = disputed(["1.27 in3", "1.35 in3", "0.77 in3"]);
        assert_eq!(one_agrees, (Verdict::DisputedButAgrees, "0.77 in3".to_owned()));
    }

    fn table(kind: &str, third: &str) -> Case {
        let head = CASE.replace("textbook", kind).replace("wall = \"0.5 in\"\n", "");
        let head = head.split("[expect").next().unwrap();
        let text = format!(
            "{head}[table]\ncolumns = [\"wall\", \"printed\"]\nrows = [\n[\"0.5 in\", \"1.17 in3\"],\n\
             [\"1 in\", \"1.33 in3\"],\n[\"0.25 in\", \"{third} in3\"],\n]\n"
        );
        Case::read("t.toml", &text).unwrap_or_else(|error| panic!("{error}"))
    }

    #[test]
    fn a_table_is_one_value_and_its_cells_are_counted_apart() {
        let cases = [table("textbook", "0.77"), case("1.17 in3", "1.17 in3"), table("other-program", "0.77")];
        let (found, unread) = work_all(&cases);
        assert!(unread.is_empty());
        let Summary { published, other_programs, by_kind } = Summary::of(&found);
        let count = |count: Count| (count.values, count.tables, count.cells, count.works, count.agreeing);
        assert_eq!(count(published), (2, 1, 3, 1, 2));
        assert_eq!(count(other_programs), (1, 1, 3, 1, 1));
        assert_eq!(by_kind, [(Kind::Textbook, 2)]);
        assert!(Summary::of(&found).holds());
    }

    #[test]
    fn one_wrong_cell_fails_its_table_and_is_shown() {
        let cases = [table("textbook", "0.78"), table("other-program", "0.78")];
        let (found, _) = work_all(&cases);
        assert_eq!(found[0].verdict, Verdict::Differs);
        let summary = Summary::of(&found);
        assert_eq!((summary.published.failing, summary.other_programs.failing), (1, 1));
        let one_fails = |failing: usize| {
            let (found, _) = work_all(&cases[failing..=failing]);
            assert!(!Summary::of(&found).holds());
        };
        one_fails(0);
        one_fails(1);
        let text = text(&found, &[]);
        assert!(text.contains("differs                      0.7708 in3        0.78 in3"), "{text}");
        assert_eq!(text.matches("line 15: diameter 2 in, wall 0.25 in").count(), 2, "{text}");
        assert!(!text.contains("line 14:") && !text.contains("line 13:"), "{text}");
        assert_eq!(text.matches("1 FAIL").count(), 2, "{text}");
    }

    #[test]
    fn common_practice_is_no_work() {
        let case = case("textbook", "practice");
        let found = outcomes(&case).unwrap();
        assert_eq!(Summary::of(&found).published.works, 0);
    }

    #[test]
    fn the_status_table_has_every_family_and_says_what_is_unchecked() {
        let case = case("1.17 in3", "1.17 in3");
        let found = outcomes(&case).unwrap();
        let table = status_table_of(&found);
        let sections = all().filter(|listed| family(listed.card.name) == "section").count();
        let row = format!("| section | 1 | 0 | 1 | 1 of {sections} rules: textbook 1 |");
        assert!(table.contains(&row), "{table}");
        assert!(table.contains("| asce7-16 | 0 | 0 | 0 | written, unchecked |"), "{table}");
        assert!(table.contains("| together | 1 | 0 | 1 | |"), "{table}");
        let families: Vec<_> = all().map(|listed| family(listed.card.name)).collect();
        for family in families {
            assert_eq!(table.matches(&format!("\n| {family} |")).count(), 1, "{family}");
        }
    }
}
