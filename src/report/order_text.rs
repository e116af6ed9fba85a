//! An order list as text for the van: what to order in one glance, then screen by screen.

use super::figures::listed;
use super::order::{
    HOW_COUNTED, NO_APPROVAL, ORDER_CAUTIONS, amount, hours, money, tape, verdicts, without_price, words,
};
use super::text::{rule, wrapped};
use crate::answers::{Item, OrderList, ScreenOrder, SiteOrder};
use crate::units::System;
use std::io::{self, Write};

/// Writes an order list as text.
///
/// # Errors
/// If the writer fails.
pub fn order_text(list: &OrderList, out: &mut impl Write) -> io::Result<()> {
    let several = list.sites.len() > 1;
    for site in &list.sites {
        head(site, several, out)?;
    }
    writeln!(out)?;
    wrapped(out, "", NO_APPROVAL)?;
    writeln!(out)?;
    if list.sites.iter().all(|site| site.screens.is_empty()) {
        return wrapped(out, "", "NOTHING TO ORDER: no bay of cloth is surveyed.");
    }
    rule(out, "ORDER, all screens together")?;
    items(&list.sums, list.system, out)?;
    for cost in list.costs() {
        wrapped(out, "  ", &format!("{} in all, by the prices of the survey", money(&cost)))?;
    }
    let without = without_price(list);
    if !list.costs().is_empty() && !without.is_empty() {
        wrapped(out, "  ", &format!("without a price, and not in it: {}", listed(&without)))?;
    }
    if let Some(time) = list.crew_time() {
        wrapped(out, "  ", &format!("crew: {}, by the survey's time for one panel", hours(time)))?;
    }
    for (name, note) in not_counted(list) {
        wrapped(out, "  ◇ ", &format!("{name}: {note}"))?;
    }
    for site in &list.sites {
        if !site.screens.is_empty() {
            writeln!(out)?;
            rule(
                out,
                &if several { format!("Screen by screen, {}", site.file) } else { "Screen by screen".into() },
            )?;
            for screen in &site.screens {
                screen_text(screen, list.system, out)?;
            }
            terms(site, out)?;
        }
    }
    writeln!(out)?;
    rule(out, "How it was counted")?;
    for line in HOW_COUNTED {
        wrapped(out, "- ", line)?;
    }
    writeln!(out)?;
    rule(out, "Cautions")?;
    for caution in ORDER_CAUTIONS {
        wrapped(out, &format!("{} ", caution.word), caution.text)?;
    }
    Ok(())
}

fn head(site: &SiteOrder, several: bool, out: &mut impl Write) -> io::Result<()> {
    let job = &site.survey.job;
    let title = job.title.as_deref().unwrap_or("Fence survey");
    let file = if several { format!(" ({})", site.file) } else { String::new() };
    wrapped(out, "ORDER LIST · ", &format!("{title}{file}"))?;
    let mut about = Vec::new();
    about.extend(job.prepared_for.as_ref().map(|who| format!("for {who}")));
    about.extend(job.date.as_ref().map(|date| format!("surveyed {date}")));
    about.extend(job.measured_by.as_ref().map(|who| format!("by {who}")));
    if !about.is_empty() {
        wrapped(out, "", &about.join(" · "))?;
    }
    for line in verdicts(site) {
        wrapped(out, "", &line)?;
    }
    Ok(())
}

/// What is not counted, told with the sums: an order without ties is not a whole one.
fn not_counted(list: &OrderList) -> Vec<(String, String)> {
    let mut told = Vec::new();
    for screen in list.sites.iter().flat_map(|site| &site.screens) {
        for note in &screen.notes {
            let text = note.text(list.system);
            if text.contains("NOT COUNTED") {
                told.push((screen.name.clone(), text));
            }
        }
    }
    told
}

fn items(items: &[Item], system: System, out: &mut impl Write) -> io::Result<()> {
    for item in items {
        wrapped(out, &format!("  {:>12}  ", amount(item.amount, system)), &words(item, system))?;
    }
    Ok(())
}

fn screen_text(screen: &ScreenOrder, system: System, out: &mut impl Write) -> io::Result<()> {
    wrapped(out, "", &format!("{}: {}", screen.name, screen.cloth))?;
    for (at, panel) in screen.panels.iter().enumerate() {
        let bays = if panel.first_bay + 1 == panel.end_bay {
            format!("bay {}", panel.end_bay)
        } else {
            format!("bays {} to {}", panel.first_bay + 1, panel.end_bay)
        };
        wrapped(
            out,
            &format!("  panel {:<4}   ", at + 1),
            &format!(
                "{bays}: {} long, {} high",
                tape(panel.size.length, system),
                tape(panel.size.height, system)
            ),
        )?;
    }
    items(&screen.items, system, out)?;
    if let Some(time) = screen.crew_time {
        wrapped(out, "  ", &format!("crew: {}", hours(time)))?;
    }
    for note in &screen.notes {
        wrapped(out, "  - ", &note.text(system))?;
    }
    writeln!(out)
}

/// The allowances, and what the survey notes of the cloth.
fn terms(site: &SiteOrder, out: &mut impl Write) -> io::Result<()> {
    wrapped(out, "", "Allowances, by the survey or taken:")?;
    for allowance in &site.allowances {
        let why = allowance.because.map_or_else(|| "by the survey".to_owned(), |why| format!("TAKEN, {why}"));
        wrapped(out, "  - ", &format!("{} {}: {why}", allowance.key, allowance.written))?;
    }
    let order = &site.survey.order;
    for (name, text) in
        [("service life", &order.service_life), ("warranty", &order.warranty), ("note", &order.note)]
    {
        if let Some(text) = text {
            wrapped(out, "  - ", &format!("{name}, as the survey has it: {text}"))?;
        }
    }
    if order.prices == crate::survey::Prices::default() {
        wrapped(out, "  - ", "costs: none; the survey has no prices")?;
    }
    Ok(())
}
