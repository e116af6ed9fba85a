//! The commands that begin a survey: a form to print, a draft to fill in, questions to answer.

use super::whole::{Existing, could_write, write_whole};
use super::{Arguments, Command, FAILED, check_surveys, trouble};
use crate::report::{self, Draft, Form, Interview, Paper};
use crate::units::System;
use clap::{Parser, ValueEnum, ValueHint};
use std::io::{self, BufRead, IsTerminal, Read, Write};

/// More runs than any site has: a slip of the finger.
const MOST_RUNS: i64 = 200;

#[derive(clap::Args)]
pub(super) struct FormArguments {
    /// How many runs have a page: the straight sides of fence.
    #[arg(long, value_name = "N", default_value = "4", value_parser = clap::value_parser!(u16).range(1..=MOST_RUNS))]
    runs: u16,
    /// The paper in the printer.
    #[arg(long, value_enum, default_value = "letter")]
    paper: PaperName,
    /// In which units the crew measures.
    #[arg(long, value_enum, default_value = "us")]
    units: Units,
    /// The file to write, for a browser to open and print; - or nothing is standard output.
    #[arg(long, value_name = "FILE", value_hint = ValueHint::FilePath)]
    out: Option<String>,
}

#[derive(clap::Args)]
pub(super) struct NewArguments {
    /// How many runs the draft has: the straight sides of fence.
    #[arg(long, value_name = "N", default_value = "4", conflicts_with = "ask", value_parser = clap::value_parser!(u16).range(1..=MOST_RUNS))]
    runs: u16,
    /// In which units its values stand and results are written [default: us]; with --ask it is asked.
    #[arg(long, value_enum)]
    units: Option<Units>,
    /// Ask one question at a time, write the survey and check it.
    ///
    /// Prompts go to standard output where that is a terminal, else to standard error.
    #[arg(long)]
    ask: bool,
    /// The file to write; - or nothing is standard output. With --ask it is asked where it is not given.
    #[arg(long, value_name = "FILE", value_hint = ValueHint::FilePath)]
    out: Option<String>,
    /// Replace the file if it is there already.
    #[arg(long)]
    force: bool,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum PaperName {
    Letter,
    A4,
}

impl PaperName {
    /// The paper of this name.
    pub(super) const fn paper(self) -> Paper {
        match self {
            Self::Letter => Paper::Letter,
            Self::A4 => Paper::A4,
        }
    }
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Units {
    Us,
    Si,
}

impl From<Units> for System {
    fn from(units: Units) -> Self {
        match units {
            Units::Us => Self::Us,
            Units::Si => Self::Si,
        }
    }
}

pub(super) fn write_form(arguments: &FormArguments, out: &mut impl Write) -> io::Result<u8> {
    let paper = arguments.paper.paper();
    let form = Form { runs: usize::from(arguments.runs), paper, system: arguments.units.into() };
    let mut bytes = Vec::new();
    report::form(form, &mut bytes)?;
    deliver(&bytes, arguments.out.as_deref(), Existing::Replaced, out)
}

pub(super) fn new(arguments: &NewArguments, out: &mut impl Write) -> io::Result<u8> {
    let system = arguments.units.map(System::from);
    let existing = if arguments.force { Existing::Replaced } else { Existing::Kept };
    if arguments.ask {
        let input = io::stdin().lock();
        return if io::stdout().is_terminal() {
            let mut prompts = anstream::stdout();
            ask(arguments.out.as_deref(), system, existing, &mut Lines { input }, &mut prompts, out)
        } else {
            let mut prompts = anstream::stderr();
            ask(arguments.out.as_deref(), system, existing, &mut Lines { input }, &mut prompts, out)
        };
    }
    let draft = Draft { runs: usize::from(arguments.runs), system: system.unwrap_or_default() };
    let mut bytes = Vec::new();
    report::draft(draft, &mut bytes)?;
    deliver(&bytes, arguments.out.as_deref(), existing, out)
}

/// To the file that is named, else to standard output.
fn deliver(bytes: &[u8], name: Option<&str>, existing: Existing, out: &mut impl Write) -> io::Result<u8> {
    let Some(name) = name.filter(|name| *name != "-") else {
        out.write_all(bytes)?;
        return Ok(0);
    };
    if let Err(told) = write_whole(name, bytes, existing) {
        trouble(&told);
        return Ok(FAILED);
    }
    Ok(0)
}

/// The lines somebody answers with.
struct Lines<R> {
    input: R,
}

/// What came where a line was waited for.
enum Line {
    Text(String),
    /// A line that is no answer, and why.
    Bad(&'static str),
    End,
}

impl<R: BufRead> Lines<R> {
    fn next(&mut self) -> io::Result<Line> {
        /// Longer than any answer.
        const LONGEST: u64 = 64 << 10;
        let mut bytes = Vec::new();
        if (&mut self.input).take(LONGEST).read_until(b'\n', &mut bytes)? == 0 {
            return Ok(Line::End);
        }
        if bytes.len() as u64 == LONGEST && !bytes.ends_with(b"\n") {
            self.input.skip_until(b'\n')?;
            return Ok(Line::Bad("this line is too long for an answer"));
        }
        Ok(String::from_utf8(bytes).map_or(Line::Bad("this line is no UTF-8 text"), Line::Text))
    }
}

/// Asks, writes the survey and checks it.
fn ask<R: BufRead>(
    name: Option<&str>,
    system: Option<System>,
    existing: Existing,
    lines: &mut Lines<R>,
    prompts: &mut impl Write,
    out: &mut impl Write,
) -> io::Result<u8> {
    writeln!(prompts, "{}\n", report::INTRODUCTION)?;
    let Some(name) = file_of(name, existing, lines, prompts)? else { return Ok(FAILED) };
    let mut interview = Interview::new(system);
    while let Some(question) = interview.question() {
        write!(prompts, "{question}\n> ")?;
        prompts.flush()?;
        let told = match lines.next()? {
            Line::Text(line) => interview.answer(&line).err(),
            Line::Bad(why) => Some(why.to_owned()),
            Line::End => {
                writeln!(prompts)?;
                trouble(&format!(
                    "the answers ended before the survey was complete; nothing was written. Still missing: {}",
                    interview.missing().join("; ")
                ));
                return Ok(FAILED);
            }
        };
        match told {
            Some(told) => writeln!(prompts, "  ? {told}\n")?,
            None => writeln!(prompts)?,
        }
    }
    let text = interview.survey().unwrap_or_default();
    if let Err(told) = write_whole(&name, text.as_bytes(), existing) {
        trouble(&format!("{told}. The survey is printed instead, so that no answer is lost."));
        out.write_all(text.as_bytes())?;
        return Ok(FAILED);
    }
    writeln!(prompts, "{name} is written. Its first check:\n")?;
    prompts.flush()?;
    // The answer as the command gives it on the file as it was written.
    match Arguments::try_parse_from(["fencegust", "check", "--brief", "--", &name]) {
        Ok(Arguments { command: Command::Check(check) }) => check_surveys(&check, out),
        _ => Ok(FAILED),
    }
}

/// The file the survey goes into: the one that was named, or the one somebody answers.
fn file_of<R: BufRead>(
    name: Option<&str>,
    existing: Existing,
    lines: &mut Lines<R>,
    prompts: &mut impl Write,
) -> io::Result<Option<String>> {
    const USUAL: &str = "survey.toml";
    const NO_FILE: &str =
        "the questions need a file for the survey, standard output has the answer: name one with --out FILE";
    if let Some(name) = name {
        let told = if name == "-" { Err(NO_FILE.to_owned()) } else { could_write(name, existing) };
        return Ok(match told {
            Ok(()) => Some(name.to_owned()),
            Err(told) => {
                trouble(&told);
                None
            }
        });
    }
    loop {
        write!(prompts, "file\n  Which file is the survey written to?\n  empty line: {USUAL}\n> ")?;
        prompts.flush()?;
        let told = match lines.next()? {
            Line::Text(line) => {
                let line = line.trim();
                let name = if line.is_empty() { USUAL } else { line };
                if name == "-" {
                    NO_FILE.to_owned()
                } else {
                    match could_write(name, existing) {
                        Ok(()) => {
                            writeln!(prompts)?;
                            return Ok(Some(name.to_owned()));
                        }
                        Err(told) => told,
                    }
                }
            }
            Line::Bad(why) => why.to_owned(),
            Line::End => {
                writeln!(prompts)?;
                trouble("the answers ended before a file was named; nothing was written");
                return Ok(None);
            }
        };
        writeln!(prompts, "  ? {told}\n")?;
    }
}
