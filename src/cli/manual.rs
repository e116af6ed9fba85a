//! What the command says of itself: completions for a shell, pages of the manual.

use super::{Arguments, FAILED, trouble};
use crate::rules::all;
use crate::workings::nearest;
use clap::builder::PossibleValuesParser;
use clap::{Command, CommandFactory};
use clap_complete::Shell;
use clap_mangen::Man;
use std::io::{self, Write};

/// The name of the program.
pub(super) const PROGRAM: &str = "fencegust";

#[derive(clap::Args)]
pub(super) struct CompletionsArguments {
    /// For which shell.
    #[arg(value_enum, value_name = "SHELL")]
    shell: Shell,
}

#[derive(clap::Args)]
pub(super) struct ManualArguments {
    /// The command whose page is wanted; left out: the program's own.
    #[arg(value_name = "COMMAND")]
    command: Option<String>,
}

/// The command line with the words that only the program itself knows, so that a shell can complete them.
fn complete() -> Command {
    let commands: Vec<String> =
        Arguments::command().get_subcommands().map(|command| command.get_name().to_owned()).collect();
    let of_rules = |command: Command| {
        knows(command, "name", PossibleValuesParser::new(all().map(|listed| listed.card.name)))
    };
    Arguments::command()
        .mut_subcommand("manual", |manual| knows(manual, "command", PossibleValuesParser::new(commands)))
        .mut_subcommand("rule", of_rules)
        .mut_subcommand("rules", of_rules)
}

/// A command whose argument takes these words.
fn knows(command: Command, argument: &str, words: PossibleValuesParser) -> Command {
    // All are gone through: an argument changed alone would lose its place among the others.
    command.mut_args(|arg| if arg.get_id() == argument { arg.value_parser(words.clone()) } else { arg })
}

/// Writes the completions of a shell.
pub(super) fn completions(arguments: &CompletionsArguments, out: &mut impl Write) -> io::Result<u8> {
    let mut text = Vec::new();
    clap_complete::generate(arguments.shell, &mut complete(), PROGRAM, &mut text);
    out.write_all(&text)?;
    Ok(0)
}

/// Writes a page of the manual.
pub(super) fn manual(arguments: &ManualArguments, out: &mut impl Write) -> io::Result<u8> {
    let mut program = Arguments::command().disable_help_subcommand(true);
    program.build();
    let page = match &arguments.command {
        None => program,
        Some(name) => match program.find_subcommand(name) {
            Some(command) => command.clone(),
            None => {
                let names: Vec<&str> = program.get_subcommands().map(Command::get_name).collect();
                let write = match nearest(name, names.iter().copied()) {
                    Some(near) => format!("perhaps {near}"),
                    None => format!("there are {}", names.join(", ")),
                };
                trouble(&format!("there is no command \"{name}\": {write}"));
                return Ok(FAILED);
            }
        },
    };
    let version = concat!("fencegust ", env!("CARGO_PKG_VERSION"));
    let mut text = Vec::new();
    Man::new(page).source(version).manual("Wind on screened fences").render(&mut text)?;
    // What stands after the options is notes; the library heads it otherwise.
    let text = String::from_utf8_lossy(&text).replace(".SH EXTRA\n", ".SH NOTES\n");
    out.write_all(text.as_bytes())?;
    Ok(0)
}
