//! Answers as text, JSON, CSV and sheets: one file a format, each written to a given writer, all from one answer.

mod as_read;
mod ask;
mod catalogue;
mod chart;
mod compare;
mod compare_footings;
pub mod document;
mod draft;
pub mod drawing;
pub mod elevation;
mod engineer;
mod fields;
mod figures;
mod footings;
mod form;
mod frame;
mod html;
mod json;
mod measure;
mod order;
mod order_csv;
mod order_json;
mod order_text;
mod ordered;
mod posts_csv;
mod rules;
mod schema;
mod sheet;
mod sketches;
mod spreadsheet;
pub mod svg;
mod text;
mod told;
mod workings;

pub use as_read::as_read;
pub use ask::{INTRODUCTION, Interview, Question};
pub use catalogue::{
    Answer as CatalogueAnswer, Asked, CATALOGUES, Held, NothingHeld, ask as ask_catalogue, catalogue_csv,
    catalogue_json, catalogue_text,
};
pub use chart::{ChartError, compared_limit_gusts, limit_gusts, ours_over_printed};
pub use compare::{compare_csv, compare_json, compare_text, highest_text, levers_text};
pub use compare_footings::{footings_csv, footings_json, footings_text};
pub use document::Paper;
pub use draft::{Draft, draft};
pub use engineer::engineer_sheet;
pub use form::{Form, form};
pub use html::html;
pub use json::{check as json, list as json_list, value as json_value};
pub use order_csv::order_csv;
pub use order_json::order_json;
pub use order_text::order_text;
pub use posts_csv::{csv, csv_columns};
pub use rules::{rule_card, rule_worked, rules_list};
pub use schema::schema;
pub use sheet::client_sheet;
pub use text::{Detail, check as text};
pub use workings::workings;

use crate::verdict::Flag;

/// The exit code that goes with a flag: 0 nothing over and nothing unchecked, 1 something over, near its limit or
/// depending, 3 none of these but parts not checked.
#[must_use]
pub fn exit_code(flag: Flag, of_checked: Option<Flag>) -> u8 {
    let worst_checked = of_checked.unwrap_or(Flag::Within);
    if flag == Flag::Over || matches!(worst_checked, Flag::Over | Flag::Depends | Flag::NearLimit) {
        1
    } else if flag == Flag::NotChecked {
        3
    } else {
        0
    }
}
