//! The command `sheet`.

use super::new::PaperName;
use super::whole::{Existing, write_whole};
use super::{FAILED, shown, survey_of, trouble};
use crate::answers::{check, check_on_frame};
use crate::report::{self, Paper};
use crate::units::System;
use clap::{ValueEnum, ValueHint};
use std::io::{self, Write};

#[derive(clap::Args)]
pub(super) struct SheetArguments {
    /// A survey file; - is standard input.
    #[arg(value_name = "SURVEY", value_hint = ValueHint::FilePath)]
    survey: String,
    /// Whom it is for.
    #[arg(long = "for", value_enum, value_name = "WHOM")]
    whom: Whom,
    /// Posts and rails also worked as one frame, on feet that do not give and on soft ones: of that and of hand statics the
    /// worse counts.
    #[arg(long)]
    frame: bool,
    /// What it is printed on; left out: letter for surveys in feet, a4 for surveys in metres.
    #[arg(long, value_enum)]
    paper: Option<PaperName>,
    /// Where it is written; left out or -, standard output.
    #[arg(long, value_name = "FILE", value_hint = ValueHint::FilePath)]
    out: Option<String>,
    /// Write over a file that is there.
    #[arg(long, requires = "out")]
    force: bool,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Whom {
    /// The client: a caution sheet of one page.
    Client,
    /// The engineer who reviews: every step of the governing post of each run, with its clause.
    Engineer,
}

/// Writes the sheet of a survey.
pub(super) fn sheet(arguments: &SheetArguments, out: &mut impl Write) -> io::Result<u8> {
    let name = shown(&arguments.survey);
    let checked = if arguments.frame { check_on_frame } else { check };
    let answer = survey_of(&arguments.survey)
        .and_then(|survey| checked(survey).map_err(|error| format!("{name}: {error}")));
    let answer = match answer {
        Ok(answer) => answer,
        Err(text) => {
            trouble(&text);
            return Ok(FAILED);
        }
    };
    let paper = match (arguments.paper, answer.survey.units) {
        (Some(paper), _) => paper.paper(),
        (None, System::Us) => Paper::Letter,
        (None, System::Si) => Paper::A4,
    };
    let document = match arguments.whom {
        Whom::Client => report::client_sheet(&answer, paper),
        Whom::Engineer => match report::engineer_sheet(&answer, paper) {
            Ok(document) => document,
            Err(error) => {
                trouble(&format!("{name}: {error}"));
                return Ok(FAILED);
            }
        },
    };
    let code = report::exit_code(answer.flag, answer.flag_of_checked);
    match arguments.out.as_deref() {
        None | Some("-") => report::html(&document, out)?,
        Some(file) => {
            let mut text = Vec::new();
            report::html(&document, &mut text)?;
            let existing = if arguments.force { Existing::Replaced } else { Existing::Kept };
            if let Err(told) = write_whole(file, &text, existing) {
                trouble(&told);
                return Ok(FAILED);
            }
        }
    }
    Ok(code)
}
