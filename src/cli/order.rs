//! The command `order`.

use super::{FAILED, shown, survey_of, trouble, worse};
use crate::answers::order as order_of;
use crate::report;
use clap::ValueEnum;
use std::io::{self, Write};

#[derive(clap::Args)]
#[command(after_long_help = HELP)]
pub(super) struct OrderArguments {
    /// Survey files; several make one list with sums; - is standard input.
    #[arg(required = true, value_name = "SURVEY")]
    surveys: Vec<String>,
    /// How the list is written.
    #[arg(long, value_enum, default_value = "text")]
    format: OrderFormat,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum OrderFormat {
    /// To print and take along.
    Text,
    /// For programs: SI figures, the unit in the key.
    Json,
    /// For a spreadsheet: a row an item of each screen.
    Csv,
}

const HELP: &str =
    "What is not about the fence stands in the table [order] of the survey, all of it optional:

  end_gap, joint_gap, top_gap    left free at an upright, between panels, below the top rail
  longest_panel                  as it is made; left out: 60 ft
  hem_allowance                  turned in at each edge, where the cloth is cut
  spares                         ties beyond those counted, like \"10 %\"
  lacing                         plain, or locked at each grommet
  knot_end, rope_waste           rope for one knot; a share cut off
  currency                       in any words
  cloth_price, rope_price        like \"1.20 per ft2\" and \"0.10 per ft\"
  tie_price, grommet_price       like \"0.15 each\"
  crew_time                      to hang one panel, like \"45 min\"
  service_life, warranty, note   printed as they stand

Costs and crew time come from these alone. The weight of cloth is its own key weight in its [screen].";

/// Writes the order list of surveys.
pub(super) fn order(arguments: &OrderArguments, out: &mut impl Write) -> io::Result<u8> {
    let mut surveys = Vec::new();
    let mut failed = false;
    for name in &arguments.surveys {
        match survey_of(name) {
            Ok(survey) => surveys.push((shown(name).to_owned(), survey)),
            Err(text) => {
                trouble(&text);
                failed = true;
            }
        }
    }
    // Half a list would be taken for a whole one.
    if failed {
        return Ok(FAILED);
    }
    let list = match order_of(surveys) {
        Ok(list) => list,
        Err((name, error)) => {
            trouble(&format!("{name}: {error}"));
            return Ok(FAILED);
        }
    };
    match arguments.format {
        OrderFormat::Text => report::order_text(&list, out)?,
        OrderFormat::Json => report::order_json(&list, out)?,
        OrderFormat::Csv => report::order_csv(&list, out)?,
    }
    let code = list.sites.iter().fold(None, |code, site| {
        // A check that could not be worked leaves the fence unchecked.
        let own = site.check.as_ref().map_or(3, |check| report::exit_code(check.flag, check.flag_of_checked));
        worse(code, own)
    });
    Ok(code.unwrap_or(FAILED))
}
