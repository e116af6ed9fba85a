//! The command `catalogue`.

use super::{FAILED, Format, trouble};
use crate::report::{
    Asked, CATALOGUES, CatalogueAnswer, Held, ask_catalogue, catalogue_csv, catalogue_json, catalogue_text,
};
use crate::units::{Dimension, Length, Quantity, read};
use clap::builder::{PossibleValue, PossibleValuesParser};
use std::io::{self, Write};

/// Nothing of the kind stands in the catalogue.
const NOTHING: u8 = 1;

#[derive(clap::Args)]
pub(super) struct CatalogueArguments {
    /// Which catalogue; left out: all of them.
    #[arg(value_name = "WHAT", value_parser = names())]
    what: Option<String>,
    /// Only this: an outside diameter of pipe, such as "2-7/8 in", or words of a name.
    #[arg(value_name = "SIZE", allow_hyphen_values = true)]
    size: Option<String>,
    /// Only the pipe of this girth, a tape round the post, such as "9-1/16 in".
    #[arg(long, value_name = "GIRTH", allow_hyphen_values = true, conflicts_with = "size")]
    girth: Option<String>,
    /// How it is written: figures in both systems of units as text and CSV, in SI as JSON.
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
}

fn names() -> PossibleValuesParser {
    CATALOGUES.iter().map(|held| PossibleValue::new(held.name).help(held.about)).collect::<Vec<_>>().into()
}

pub(super) fn catalogue(arguments: &CatalogueArguments, out: &mut impl Write) -> io::Result<u8> {
    match answers(arguments) {
        Ok(answers) => {
            match arguments.format {
                Format::Text => catalogue_text(&answers, out)?,
                Format::Json => catalogue_json(&answers, out)?,
                Format::Csv => catalogue_csv(&answers, out)?,
            }
            Ok(if answers.iter().all(CatalogueAnswer::is_empty) { NOTHING } else { 0 })
        }
        Err(told) => {
            trouble(&told);
            Ok(FAILED)
        }
    }
}

fn answers(arguments: &CatalogueArguments) -> Result<Vec<CatalogueAnswer>, String> {
    // A girth is a tape round a post: without another word it asks for pipe.
    let what = arguments.what.as_deref().or(arguments.girth.as_ref().map(|_| "pipe"));
    let held: Vec<&Held> =
        CATALOGUES.iter().filter(|held| what.is_none_or(|what| what == held.name)).collect();
    let girth = arguments.girth.as_ref().map(|written| match read(written, Dimension::Length) {
        Ok(girth) if girth > 0.0 => Ok(Asked::of_girth(written, Length::from_si(girth))),
        Ok(_) => Err(format!("--girth {written}: it must be above 0")),
        Err(error) => Err(format!("--girth: {error}")),
    });
    let girth = girth.transpose()?;
    held.into_iter()
        .map(|held| {
            let asked = match (&girth, &arguments.size) {
                (Some(girth), _) => girth.clone(),
                (None, Some(size)) => Asked::read(held, size).map_err(|error| error.to_string())?,
                (None, None) => Asked::All,
            };
            ask_catalogue(held, &asked).map_err(|error| error.to_string())
        })
        .collect()
}
