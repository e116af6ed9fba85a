//! An order list for a spreadsheet: a row an item of a screen, so that a column's sum is the sum of the list.

use super::order::{figure, flag_word, kind, of};
use super::spreadsheet::{Cell, table};
use crate::answers::{Item, OrderList, ScreenOrder, SiteOrder, What};
use crate::units::{Length, Measure, Quantity, System};
use std::io::{self, Write};

/// Writes an order list as one table, in the units of its first survey.
///
/// # Errors
/// If the writer fails.
pub fn order_csv(list: &OrderList, out: &mut impl Write) -> io::Result<()> {
    let us = list.system == System::Us;
    let length = if us { "ft" } else { "m" };
    let weight = if us { "lbf" } else { "kgf" };
    let head: Vec<String> = [
        "survey".to_owned(),
        "site".to_owned(),
        "run".to_owned(),
        "check_says".to_owned(),
        "item".to_owned(),
        "of".to_owned(),
        "row".to_owned(),
        format!("length_{length}"),
        format!("height_{length}"),
        "quantity".to_owned(),
        "unit".to_owned(),
        "needed".to_owned(),
        "pieces".to_owned(),
        format!("longest_piece_{length}"),
        format!("weight_least_{weight}"),
        format!("weight_most_{weight}"),
        "cost".to_owned(),
        "currency".to_owned(),
        "notes".to_owned(),
    ]
    .into();
    let rows = list.sites.iter().flat_map(|site| {
        site.screens.iter().enumerate().flat_map(move |(at, screen)| {
            screen.items.iter().map(move |item| row(list.system, site, at, screen, item))
        })
    });
    table(&head, rows, out)
}

fn row(system: System, site: &SiteOrder, at: usize, screen: &ScreenOrder, item: &Item) -> Vec<Cell> {
    let length = |length: Length| Cell::Figure(Measure::Length.in_unit(length.si(), system));
    let (quantity, unit) = figure(item.amount, system);
    let (panel, row) = match &item.what {
        What::Panel { size, .. } => (Some(*size), None),
        What::Rope { row, .. } => (None, Some(row.name())),
        _ => (None, None),
    };
    let weight = |si: Option<f64>| Cell::any_figure(si.map(|si| Measure::Weight.in_unit(si, system)));
    let notes: Vec<String> = screen.notes.iter().map(|note| note.text(system)).collect();
    vec![
        Cell::words(site.file.as_str()),
        Cell::any_words(site.survey.job.title.as_deref()),
        Cell::words(screen.name.as_str()),
        Cell::words(flag_word(site, at)),
        Cell::words(kind(&item.what)),
        Cell::any_words(of(&item.what)),
        Cell::any_words(row),
        panel.map_or(Cell::Empty, |size| length(size.length)),
        panel.map_or(Cell::Empty, |size| length(size.height)),
        Cell::Figure(quantity),
        Cell::words(unit),
        Cell::any_figure(item.needed.map(|needed| needed as f64)),
        Cell::any_figure(item.pieces.map(|(pieces, _)| pieces as f64)),
        item.pieces.map_or(Cell::Empty, |(_, longest)| length(longest)),
        weight(item.weight.map(|(low, _)| low.si())),
        weight(item.weight.map(|(_, high)| high.si())),
        Cell::any_figure(item.cost.as_ref().map(|cost| cost.money)),
        Cell::any_words(item.cost.as_ref().and_then(|cost| cost.currency.as_deref())),
        Cell::any_words((!notes.is_empty()).then(|| notes.join("; "))),
    ]
}
