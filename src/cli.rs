//! The command: arguments, files, standard streams.

mod catalogue;
mod manual;
mod new;
mod order;
mod sheet;
mod verify;
mod whole;

use crate::answers::{
    Check, CheckError, Comparison, HighestCloth, Variant, by_codes, check, check_on_frame, compare,
    footings_compared, highest_cloths, side_by_side, workings,
};
use crate::report::{self, Detail};
use crate::rules::verify::status_table;
use crate::survey::{Mistakes, Survey};
use crate::units::{Dimension, Length, Quantity, System, Velocity, read};
use crate::wind::Code;
use clap::{Parser, Subcommand, ValueEnum, ValueHint};
use std::fs::File;
use std::io::{self, Read, Write};
use std::path::Path;
use std::process::ExitCode;

/// Wind on screened fences: the gust at which each post reaches its limit, with the cloth and bare.
///
/// Nothing it prints calls a fence safe. The local code and a licensed engineer decide.
#[derive(Parser)]
#[command(name = "fencegust", version, arg_required_else_help = true)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Check a surveyed fence: limit gusts with and without cloth, and the flag at the design wind.
    ///
    /// Exit: 0 nothing over and nothing unchecked; 1 something over, near its limit or depending on what is not
    /// known; 3 none of these but parts not checked; 2 could not be worked out.
    Check(CheckArguments),
    /// Compare cloths on one fence, what helps and what does not, or whole surveys side by side.
    ///
    /// Exit: 0 compared, whatever the flags; 2 could not be worked out.
    Compare(CompareArguments),
    /// What to order and bring in the van for the cloth of surveys: panels, ties, grommets, rope, screen by screen.
    ///
    /// It counts and approves nothing: what check says of the fence stands at its top, and the exit codes are those of
    /// check. Half a list is never written: one survey that cannot be read stops it.
    Order(order::OrderArguments),
    /// Write a sheet to hand over: one page of HTML to print, the decision first.
    ///
    /// Exit codes are those of check.
    Sheet(sheet::SheetArguments),
    /// Draw the limit gusts of a survey as a chart in SVG, with the cloth and bare, or cloth by cloth.
    ///
    /// Exit: 0 drawn, whatever the flags; 2 could not be worked out.
    Charts(ChartArguments),
    /// Hold the program against published examples: those built in, or case files and folders of your own.
    ///
    /// Exit: 0 all agree or differ as disputed; 1 one differs; 2 a file could not be read or worked.
    Verify {
        /// Case files or folders of them.
        #[arg(value_name = "FILE or DIR", value_hint = ValueHint::AnyPath)]
        files: Vec<String>,
        /// The cases built in, counted by rule in a table for a page.
        #[arg(long, conflicts_with = "files")]
        status: bool,
    },
    /// Work one published rule on given inputs and print its workings.
    ///
    /// Exit: 0 it is worked; 2 an input is missing, unknown or outside the range of the rule.
    Rule(verify::RuleArguments),
    /// List the rules by family, with their places and what holds them; or the card of one.
    ///
    /// Exit: 0 something is listed; 1 no rule speaks of the words searched for; 2 there is no such rule.
    Rules(verify::RulesArguments),
    /// List what the program holds of pipe, cloth and wire: sizes, how well they are known, where they disagree.
    ///
    /// Exit: 0 something is listed; 1 the catalogue has nothing of that size; 2 it could not be asked.
    Catalogue(catalogue::CatalogueArguments),
    /// Write a blank survey form to print: one page for the site and the kinds of posts, then one page a run.
    Form(new::FormArguments),
    /// Write a survey to fill in, with every key explained; or, with --ask, one from questions and answers.
    New(new::NewArguments),
    /// Print the schema of a survey file, by which an editor completes and checks one.
    ///
    /// It is a JSON Schema of draft 2020-12. It takes every survey that check takes; check tells more of what is wrong.
    Schema,
    /// Print what a shell needs to complete commands, options and the names of rules.
    ///
    /// For bash: fencegust completions bash > ~/.local/share/bash-completion/completions/fencegust
    Completions(manual::CompletionsArguments),
    /// Print a page of the manual, in the form that man reads.
    ///
    /// To read it: fencegust manual check | man -l -
    Manual(manual::ManualArguments),
}

#[derive(clap::Args)]
#[command(after_long_help = csv_help())]
struct CheckArguments {
    /// Survey files; - is standard input.
    #[arg(required = true, value_name = "SURVEY", value_hint = ValueHint::FilePath)]
    surveys: Vec<String>,
    /// How the answer is written; several surveys make a list in JSON and one table in CSV.
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
    /// Stop after the answer.
    #[arg(long, conflicts_with = "all")]
    brief: bool,
    /// Every post and bay in a row of its own.
    #[arg(long)]
    all: bool,
    /// The survey with everything filled in, and where each value came from.
    #[arg(long, conflicts_with_all = ["brief", "all", "workings"])]
    as_read: bool,
    /// Posts and rails also worked as one frame, on feet that do not give and on soft ones: of that and of hand statics the
    /// worse counts.
    #[arg(long, conflicts_with = "as_read")]
    frame: bool,
    /// Every step of a post, such as "north end/3"; without a name the governing post of each run.
    #[arg(long, value_name = "RUN/POST", num_args = 0..=1, default_missing_value = "", conflicts_with_all = ["brief", "all"])]
    workings: Option<String>,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Format {
    /// For people.
    Text,
    /// For programs: SI figures, the unit in the key.
    Json,
    /// For a spreadsheet: one table, after RFC 4180.
    Csv,
}

/// What the table of `check --format csv` holds.
fn csv_help() -> String {
    let mut text = String::from(
        "With --format csv: one table of all surveys after RFC 4180, a row a post, in the order of the surveys. Figures \
         stand to twelve digits in the units of the first survey and belong to the worst end of what is not known; an empty \
         cell was not checked or is not known. Words that a spreadsheet would work as a formula have an apostrophe \
         before them. Its columns, for a survey in feet and for one in metres where they differ:\n",
    );
    for ((us, about), (si, _)) in
        report::csv_columns(System::Us).into_iter().zip(report::csv_columns(System::Si))
    {
        let name = if us == si { us } else { format!("{us}, {si}") };
        text.push_str(&format!("\n  {name}\n      {about}"));
    }
    text
}

#[derive(clap::Args)]
struct CompareArguments {
    /// One survey with --cloth or --height, or several side by side; - is standard input.
    #[arg(required = true, value_name = "SURVEY", value_hint = ValueHint::FilePath)]
    surveys: Vec<String>,
    /// A cloth as fencegust catalogue cloth lists it, or none; may be given several times.
    #[arg(long, value_name = "CLOTH")]
    cloth: Vec<String>,
    /// A height of cloth from the ground; may be given several times.
    #[arg(long, value_name = "HEIGHT", allow_hyphen_values = true)]
    height: Vec<String>,
    /// A wind code; may be given several times: the survey by each of them.
    #[arg(long, value_name = "CODE")]
    code: Vec<String>,
    /// What helps and what does not, each change worked on its own.
    #[arg(long)]
    levers: bool,
    /// The footing of the governing post of each run by every method that the soil allows, side by side.
    #[arg(long, conflicts_with_all = ["cloth", "height", "code", "levers", "gust"])]
    footings: bool,
    /// The highest cloth from the ground for this gust, run by run.
    #[arg(long, value_name = "GUST", allow_hyphen_values = true)]
    gust: Option<String>,
    /// How the comparison is written; in CSV a row a cloth and run, SI figures with the unit in the head.
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
}

#[derive(clap::Args)]
struct ChartArguments {
    /// A survey; - is standard input.
    #[arg(value_name = "SURVEY", required_unless_present = "cases", value_hint = ValueHint::FilePath)]
    survey: Option<String>,
    /// A cloth as fencegust catalogue cloth lists it, or none; may be given several times.
    #[arg(long, value_name = "CLOTH")]
    cloth: Vec<String>,
    /// Our values over the printed ones of the reference cases instead.
    #[arg(long, conflicts_with_all = ["survey", "cloth"])]
    cases: bool,
}

/// Could not be worked out.
const FAILED: u8 = 2;
/// A survey or a case is a few thousand bytes; what is larger is another file.
const LARGEST_FILE: u64 = 4 << 20;

/// Runs the command on the arguments of the process.
#[must_use]
pub fn main() -> ExitCode {
    let arguments = Arguments::parse();
    let mut out = Output { inner: anstream::stdout(), closed: false };
    let outcome = match arguments.command {
        Command::Check(arguments) => check_surveys(&arguments, &mut out),
        Command::Compare(arguments) => compare_surveys(&arguments, &mut out),
        Command::Verify { status: true, .. } => out.write_all(status_table().as_bytes()).map(|()| 0),
        Command::Verify { files, .. } => verify::verify(&files, &mut out),
        Command::Rule(arguments) => verify::rule(&arguments, &mut out),
        Command::Rules(arguments) => verify::rules(&arguments, &mut out),
        Command::Order(arguments) => order::order(&arguments, &mut out),
        Command::Sheet(arguments) => sheet::sheet(&arguments, &mut out),
        Command::Charts(arguments) => write_or_tell(chart(&arguments), &mut out),
        Command::Catalogue(arguments) => catalogue::catalogue(&arguments, &mut out),
        Command::Form(arguments) => new::write_form(&arguments, &mut out),
        Command::Schema => report::schema(&mut out).map(|()| 0),
        Command::Completions(arguments) => manual::completions(&arguments, &mut out),
        Command::Manual(arguments) => manual::manual(&arguments, &mut out),
        Command::New(arguments) => new::new(&arguments, &mut out),
    };
    let code = match outcome.and_then(|code| out.flush().map(|()| code)) {
        Ok(code) => code,
        Err(error) => {
            trouble(&format!("the result could not be written: {error}"));
            FAILED
        }
    };
    ExitCode::from(code)
}

fn trouble(text: &str) {
    // Nothing is left to be done where standard error is closed too.
    let _ = writeln!(anstream::stderr(), "{text}");
}

/// Standard output; a reader that has gone away ends the writing and is no trouble.
struct Output<W: Write> {
    inner: W,
    closed: bool,
}

impl<W: Write> Write for Output<W> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        if self.closed {
            return Ok(bytes.len());
        }
        match self.inner.write(bytes) {
            Err(error) if error.kind() == io::ErrorKind::BrokenPipe => {
                self.closed = true;
                Ok(bytes.len())
            }
            other => other,
        }
    }
    fn flush(&mut self) -> io::Result<()> {
        match self.inner.flush() {
            Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(()),
            other => other,
        }
    }
}

/// The text of a file, or what is wrong with the file.
fn text_of(name: &str) -> Result<String, String> {
    let mut bytes = Vec::new();
    let too_large = || {
        format!(
            "{name}: larger than {} MB. What is read here is a few thousand bytes: is this the right file?",
            LARGEST_FILE >> 20
        )
    };
    if name == "-" {
        io::stdin()
            .lock()
            .take(LARGEST_FILE + 1)
            .read_to_end(&mut bytes)
            .map_err(|error| format!("standard input: {error}"))?;
    } else {
        let path = Path::new(name);
        let about = path.metadata().map_err(|error| match error.kind() {
            io::ErrorKind::NotFound => format!("{name}: there is no such file"),
            _ => format!("{name}: {error}"),
        })?;
        if about.is_dir() {
            return Err(format!("{name}: this is a directory; name the survey file in it"));
        }
        if about.is_file() && about.len() > LARGEST_FILE {
            return Err(too_large());
        }
        let file = File::open(path).map_err(|error| format!("{name}: {error}"))?;
        file.take(LARGEST_FILE + 1).read_to_end(&mut bytes).map_err(|error| format!("{name}: {error}"))?;
    }
    if bytes.len() as u64 > LARGEST_FILE {
        return Err(too_large());
    }
    String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        let line = error.as_bytes()[..at].iter().filter(|byte| **byte == b'\n').count() + 1;
        format!("{name}, line {line}: this is no UTF-8 text; save it as plain text in UTF-8")
    })
}

fn shown(name: &str) -> &str {
    if name == "-" { "standard input" } else { name }
}

fn survey_of(name: &str) -> Result<Survey, String> {
    let text = text_of(name)?;
    Survey::read(&text, shown(name)).map_err(|mistakes: Mistakes| mistakes.to_string())
}

fn check_surveys(arguments: &CheckArguments, out: &mut impl Write) -> io::Result<u8> {
    if arguments.format != Format::Text && (arguments.as_read || arguments.workings.is_some()) {
        trouble("--as-read and --workings are written as text only");
        return Ok(FAILED);
    }
    let mut code = None;
    let mut checks: Vec<(&str, Check)> = Vec::new();
    let several = arguments.surveys.len() > 1;
    let mut first = true;
    for name in &arguments.surveys {
        let survey = match survey_of(name) {
            Ok(survey) => survey,
            Err(text) => {
                trouble(&text);
                code = worse(code, FAILED);
                continue;
            }
        };
        if several && arguments.format == Format::Text {
            if !first {
                writeln!(out)?;
            }
            writeln!(out, "═══ {}", shown(name))?;
        }
        first = false;
        if arguments.as_read {
            report::as_read(&survey, out)?;
            code = worse(code, 0);
            continue;
        }
        let answer = if arguments.frame { check_on_frame(survey) } else { check(survey) };
        let answer = match answer {
            Ok(answer) => answer,
            Err(error) => {
                trouble(&format!("{}: {error}", shown(name)));
                code = worse(code, FAILED);
                continue;
            }
        };
        code = worse(code, report::exit_code(answer.flag, answer.flag_of_checked));
        if let Some(post) = &arguments.workings {
            code = worse(code, write_workings(name, &answer, post, out)?);
        } else if arguments.format == Format::Text {
            let detail = match (arguments.brief, arguments.all) {
                (true, _) => Detail::Brief,
                (_, true) => Detail::All,
                _ => Detail::Usual,
            };
            report::text(&answer, detail, out)?;
        } else {
            checks.push((shown(name), answer));
        }
    }
    write_checks(&checks, arguments.format, several, out)?;
    Ok(code.unwrap_or(FAILED))
}

/// Writes the answers that stand together: in JSON one, or a list where several surveys were named; in CSV one table.
fn write_checks(
    checks: &[(&str, Check)],
    format: Format,
    several: bool,
    out: &mut impl Write,
) -> io::Result<()> {
    match (format, checks) {
        (_, []) | (Format::Text, _) => Ok(()),
        (Format::Json, [(_, check)]) if !several => report::json(check, out),
        (Format::Json, checks) => report::json_list(checks.iter().map(|(_, check)| check), out),
        (Format::Csv, checks) => report::csv(checks, out),
    }
}

fn write_workings(name: &str, answer: &Check, post: &str, out: &mut impl Write) -> io::Result<u8> {
    let asked = (!post.is_empty()).then_some(post);
    match workings(answer, asked) {
        Ok(all) => {
            for (title, entries) in all {
                report::workings(&title, &entries, answer.survey.units, out)?;
                writeln!(out)?;
            }
            Ok(0)
        }
        Err(error @ (CheckError::NoSuchPost { .. } | CheckError::Verdict(_))) => {
            trouble(&format!("{}: {error}", shown(name)));
            Ok(FAILED)
        }
    }
}

/// Footings by every method, of one survey.
fn compare_footings(arguments: &CompareArguments, out: &mut impl Write) -> io::Result<u8> {
    let found = || -> Result<_, String> {
        let [name] = &arguments.surveys[..] else { return Err("--footings goes with one survey".to_owned()) };
        let check = check(survey_of(name)?).map_err(|error| format!("{}: {error}", shown(name)))?;
        let all = footings_compared(&check).map_err(|error| format!("{}: {error}", shown(name)))?;
        Ok((check, all))
    };
    match found() {
        Ok((check, all)) => {
            match arguments.format {
                Format::Text => report::footings_text(&check, &all, out)?,
                Format::Json => report::footings_json(&check, &all, out)?,
                Format::Csv => report::footings_csv(&check, &all, out)?,
            }
            Ok(0)
        }
        Err(text) => {
            trouble(&text);
            Ok(FAILED)
        }
    }
}

fn compare_surveys(arguments: &CompareArguments, out: &mut impl Write) -> io::Result<u8> {
    if arguments.footings {
        return compare_footings(arguments, out);
    }
    match comparison(arguments) {
        Ok(Compared { comparison, checked, highest }) => {
            match (&comparison, arguments.format) {
                (Some(comparison), Format::Text) => report::compare_text(comparison, out)?,
                (Some(comparison), Format::Json) => report::compare_json(comparison, out)?,
                (Some(comparison), Format::Csv) => report::compare_csv(comparison, out)?,
                (None, _) => {}
            }
            if let (Some(check), true) = (&checked, arguments.levers) {
                report::levers_text(check, out)?;
            }
            if let (Some(check), Some((gust, heights))) = (&checked, &highest) {
                report::highest_text(check, heights, *gust, out)?;
            }
            Ok(0)
        }
        Err(text) => {
            trouble(&text);
            Ok(FAILED)
        }
    }
}

/// Writes a text, or tells why there is none.
fn write_or_tell(text: Result<String, String>, out: &mut impl Write) -> io::Result<u8> {
    match text {
        Ok(text) => out.write_all(text.as_bytes()).map(|()| 0),
        Err(text) => {
            trouble(&text);
            Ok(FAILED)
        }
    }
}

fn chart(arguments: &ChartArguments) -> Result<String, String> {
    let Some(survey) = &arguments.survey else { return verify::chart() };
    let name = shown(survey);
    let survey = survey_of(survey)?;
    let told = |error: &dyn std::fmt::Display| format!("{name}: {error}");
    if arguments.cloth.is_empty() {
        let checked = check(survey).map_err(|error| told(&error))?;
        return report::limit_gusts(&checked).map_err(|error| told(&error));
    }
    let variants: Vec<Variant> =
        arguments.cloth.iter().map(|cloth| Variant { cloth: Some(cloth.clone()), height: None }).collect();
    let comparison = compare(&survey, &variants).map_err(|error| told(&error))?;
    report::compared_limit_gusts(&comparison).map_err(|error| told(&error))
}

/// What a comparison is written from.
struct Compared {
    comparison: Option<Comparison>,
    checked: Option<Check>,
    highest: Option<(Velocity, Vec<HighestCloth>)>,
}

fn comparison(arguments: &CompareArguments) -> Result<Compared, String> {
    let given = |option: &str, text: &str, dimension| {
        let value = read(text, dimension).map_err(|error| format!("{option}: {error}"))?;
        if value > 0.0 { Ok(value) } else { Err(format!("{option} {text}: it must be above 0")) }
    };
    let mut surveys = Vec::new();
    for name in &arguments.surveys {
        surveys.push((shown(name).to_owned(), survey_of(name)?));
    }
    let heights = arguments
        .height
        .iter()
        .map(|text| given("--height", text, Dimension::Length).map(|height| Some(Length::from_si(height))))
        .collect::<Result<Vec<_>, _>>()?;
    let heights = if heights.is_empty() { vec![None] } else { heights };
    let cloths: Vec<Option<String>> = if arguments.cloth.is_empty() {
        vec![None]
    } else {
        arguments.cloth.iter().cloned().map(Some).collect()
    };
    let asked_for_more = arguments.levers || arguments.gust.is_some();
    let varied = !arguments.cloth.is_empty() || !arguments.height.is_empty();
    if asked_for_more && arguments.format != Format::Text {
        return Err("--levers and --gust are written as text only".to_owned());
    }
    let comparison = if !arguments.code.is_empty() {
        if varied || surveys.len() > 1 {
            return Err("--code goes with one survey, and without --cloth and --height".to_owned());
        }
        let codes = arguments.code.iter().map(|name| code_named(name)).collect::<Result<Vec<_>, _>>()?;
        Some(by_codes(&surveys[0].1, &codes))
    } else if surveys.len() > 1 {
        if varied {
            return Err(
                "--cloth and --height go with one survey; several surveys are set side by side as they are"
                    .to_owned(),
            );
        }
        Some(side_by_side(surveys.clone()))
    } else if varied {
        let variants: Vec<Variant> = cloths
            .iter()
            .flat_map(|cloth| heights.iter().map(|height| Variant { cloth: cloth.clone(), height: *height }))
            .collect();
        Some(compare(&surveys[0].1, &variants))
    } else if asked_for_more {
        None
    } else {
        return Err("nothing to compare: name cloths with --cloth, heights with --height, codes with --code, or a second survey; or ask for --levers, --gust or --footings".to_owned());
    };
    let comparison = comparison.transpose().map_err(|error| format!("{}: {error}", surveys[0].0))?;
    let mut compared = Compared { comparison, checked: None, highest: None };
    if asked_for_more {
        let (name, survey) = surveys.swap_remove(0);
        let told = |error: CheckError| format!("{name}: {error}");
        let checked = check(survey).map_err(told)?;
        if let Some(text) = &arguments.gust {
            let gust = Velocity::from_si(given("--gust", text, Dimension::Speed)?);
            compared.highest = Some((gust, highest_cloths(&checked, gust).map_err(told)?));
        }
        compared.checked = Some(checked);
    }
    Ok(compared)
}

/// A wind code by its name, or what there is.
fn code_named(name: &str) -> Result<Code, String> {
    Code::named(name).map_err(|near| {
        let all: Vec<&str> = Code::ALL.iter().map(|code| code.key()).collect();
        let perhaps = near.map_or_else(String::new, |near| format!(", perhaps {near}"));
        format!("--code {name} is none of {}{perhaps}", all.join(", "))
    })
}

/// The worse of two exit codes: could not be worked out, over, not checked, nothing.
fn worse(before: Option<u8>, code: u8) -> Option<u8> {
    let weight = |code: u8| match code {
        FAILED => 3,
        1 => 2,
        3 => 1,
        _ => 0,
    };
    match before {
        Some(before) if weight(before) >= weight(code) => Some(before),
        _ => Some(code),
    }
}
