//! An order list as JSON: SI figures, the unit in the key.

use super::order::{HOW_COUNTED, NO_APPROVAL, ORDER_CAUTIONS, flag_word, kind, of, verdicts};
use super::ordered::Json;
use crate::answers::{Amount, Item, OrderList, ScreenOrder, SiteOrder, What};
use crate::units::{Quantity, System};
use std::io::{self, Write};

/// Writes an order list as JSON.
///
/// # Errors
/// If the writer fails.
pub fn order_json(list: &OrderList, out: &mut impl Write) -> io::Result<()> {
    let costs = list.costs().into_iter().map(|cost| {
        Json::keys([("money", Json::Figure(cost.money)), ("currency", any(cost.currency.as_deref()))])
    });
    let cautions = ORDER_CAUTIONS.iter().map(|caution| {
        Json::keys([("id", caution.id.into()), ("word", caution.word.into()), ("text", caution.text.into())])
    });
    let json = Json::keys([
        ("format", "order".into()),
        ("version", Json::Count(1)),
        ("program", format!("fencegust {}", env!("CARGO_PKG_VERSION")).into()),
        ("not_an_approval", NO_APPROVAL.into()),
        ("surveys", Json::List(list.sites.iter().map(|site| site_json(site, list.system)).collect())),
        ("sums", Json::List(list.sums.iter().map(item_json).collect())),
        ("costs", Json::List(costs.collect())),
        ("crew_time_s", figure(list.crew_time().map(Quantity::si))),
        ("how_counted", Json::words(HOW_COUNTED.iter().copied())),
        ("cautions", Json::List(cautions.collect())),
    ]);
    serde_json::to_writer_pretty(&mut *out, &json)?;
    writeln!(out)
}

fn any(words: Option<&str>) -> Json {
    words.map_or(Json::Null, Json::from)
}

fn figure(figure: Option<f64>) -> Json {
    figure.map_or(Json::Null, Json::Figure)
}

fn site_json(site: &SiteOrder, system: System) -> Json {
    let survey = &site.survey;
    let allowances = site.allowances.iter().map(|allowance| {
        Json::keys([
            ("key", allowance.key.into()),
            ("value", allowance.written.as_str().into()),
            ("is", if allowance.because.is_none() { "by the survey" } else { "taken" }.into()),
            ("taken_because", any(allowance.because)),
        ])
    });
    let screens = site.screens.iter().enumerate().map(|(at, screen)| screen_json(site, at, screen, system));
    Json::keys([
        ("survey", site.file.as_str().into()),
        ("title", any(survey.job.title.as_deref())),
        ("survey_hash", survey.hash.as_str().into()),
        ("check_says", Json::words(verdicts(site))),
        ("allowances", Json::List(allowances.collect())),
        ("screens", Json::List(screens.collect())),
        ("service_life", any(survey.order.service_life.as_deref())),
        ("warranty", any(survey.order.warranty.as_deref())),
        ("note", any(survey.order.note.as_deref())),
    ])
}

fn screen_json(site: &SiteOrder, at: usize, screen: &ScreenOrder, system: System) -> Json {
    let panels = screen.panels.iter().map(|panel| {
        Json::keys([
            ("first_bay", Json::Count(panel.first_bay as u64 + 1)),
            ("last_bay", Json::Count(panel.end_bay as u64)),
            ("from_m", Json::Figure(panel.from.si())),
            ("length_m", Json::Figure(panel.size.length.si())),
            ("height_m", Json::Figure(panel.size.height.si())),
        ])
    });
    let notes = screen
        .notes
        .iter()
        .map(|note| Json::keys([("id", note.id().into()), ("text", note.text(system).into())]));
    Json::keys([
        ("run", screen.name.as_str().into()),
        ("flag_of_checked", flag_word(site, at).into()),
        ("cloth", screen.cloth.as_str().into()),
        ("panels", Json::List(panels.collect())),
        ("items", Json::List(screen.items.iter().map(item_json).collect())),
        ("crew_time_s", figure(screen.crew_time.map(Quantity::si))),
        ("notes", Json::List(notes.collect())),
    ])
}

fn item_json(item: &Item) -> Json {
    let mut keys: Vec<(String, Json)> = Vec::new();
    let mut add = |key: &str, value: Json| keys.push((key.to_owned(), value));
    add("item", kind(&item.what).into());
    if let Some(of) = of(&item.what) {
        add("of", of.into());
    }
    match &item.what {
        What::Panel { size, .. } => {
            add("length_m", Json::Figure(size.length.si()));
            add("height_m", Json::Figure(size.height.si()));
        }
        What::Rope { row, .. } => add("row", row.name().into()),
        _ => {}
    }
    match item.amount {
        Amount::Count(count) => add("quantity", Json::Count(count)),
        Amount::Area(area) => add("quantity_m2", Json::Figure(area.si())),
        Amount::Length(length) => add("quantity_m", Json::Figure(length.si())),
    }
    if let Some(needed) = item.needed {
        add("needed", Json::Count(needed));
    }
    if let Some((pieces, longest)) = item.pieces {
        add("pieces", Json::Count(pieces));
        add("longest_piece_m", Json::Figure(longest.si()));
    }
    if matches!(item.what, What::Cloth { .. }) {
        add("weight_least_n", figure(item.weight.map(|(low, _)| low.si())));
        add("weight_most_n", figure(item.weight.map(|(_, high)| high.si())));
    }
    add("cost", figure(item.cost.as_ref().map(|cost| cost.money)));
    if let Some(currency) = item.cost.as_ref().and_then(|cost| cost.currency.as_deref()) {
        add("currency", currency.into());
    }
    Json::Keys(keys)
}
