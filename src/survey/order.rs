//! What an order list is asked for beside the fence: allowances, spares, prices and the crew's time.

use super::file::File;
use super::keys::*;
use super::layers::{Key, Layers, Missing, Reader, Sign};
use super::reading::Reading;
use crate::fastening::lacing::Style;
use crate::units::{Dimension, Length, Measure, Quantity, Time, Unit, read_number};
use toml::de::DeValue;

/// What `[order]` says; nothing where it says nothing.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct OrderSurvey {
    /// What is left free between the cloth and each upright it ends at.
    pub end_gap: Option<Length>,
    /// What is left free between two panels that meet at a post.
    pub joint_gap: Option<Length>,
    /// What is left free between the cloth and the top rail.
    pub top_gap: Option<Length>,
    /// The longest panel that is made.
    pub longest_panel: Option<Length>,
    /// What a hem or seam turns in at each edge of cloth that is cut.
    pub hem_allowance: Option<Length>,
    /// Ties beyond those counted, as a share.
    pub spares: Option<f64>,
    /// How lacing goes on from grommet to grommet.
    pub lacing: Option<Style>,
    /// Rope for one knot.
    pub knot_end: Option<Length>,
    /// Rope that is cut off and thrown away, as a share.
    pub rope_waste: Option<f64>,
    /// What things cost.
    pub prices: Prices,
    /// The crew's time for one panel.
    pub crew_time: Option<Time>,
    /// How long the cloth is said to last.
    pub service_life: Option<String>,
    /// What its maker warrants.
    pub warranty: Option<String>,
    /// A note.
    pub note: Option<String>,
}

/// What things cost, as far as the survey says.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Prices {
    /// In which money, in the survey's own words.
    pub currency: Option<String>,
    /// Cloth by its area.
    pub cloth: Option<Price>,
    /// One tie.
    pub tie: Option<Price>,
    /// Rope by its length.
    pub rope: Option<Price>,
    /// One grommet.
    pub grommet: Option<Price>,
}

/// A price: so much money for one piece, or for one of a unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Price {
    /// So much money, in the survey's own currency.
    pub money: f64,
    /// For one of this unit; nothing for one piece.
    pub unit: Option<&'static Unit>,
}

impl Price {
    /// What so many pieces cost.
    #[must_use]
    pub fn of_pieces(self, pieces: u64) -> f64 {
        self.money * pieces as f64
    }

    /// What so much of a quantity costs.
    #[must_use]
    pub fn of(self, quantity: impl Quantity) -> f64 {
        self.money * quantity.si() / self.unit.map_or(1.0, |unit| unit.si)
    }
}

const fn allowance(key: &'static str, about: &'static str, example: &'static str) -> Key {
    Key { key, measure: Measure::Small, about, example, sign: Sign::NotNegative, open: false }
}

/// More money than any one thing on a fence costs.
const MOST_MONEY: f64 = 1e9;

impl<'t> File<'t> {
    /// What is asked of an order list; nothing where it is wrong.
    pub(super) fn order(&self, reader: &mut Reader) -> Option<OrderSurvey> {
        if !self.top.contains_key("order") {
            return Some(OrderSurvey::default());
        }
        let (table, span) = self.table("order", reader)?;
        reader.check_keys(
            table,
            ORDER_KEYS,
            "[order]",
            &[(&["spacing", "rows", "rope", "panel"], "to the fastening of a screen", "write it there")],
            &[],
        );
        let layers = self.layers(table, "[order]", "order", span);
        let mut small = |key: Key| point(reader.quantity::<Length>(&layers, key, Missing::IsFine));
        let end_gap = small(allowance(
            "end_gap",
            "what is left free between the cloth and each upright it ends at",
            "\"6 in\"",
        ));
        let joint_gap = small(allowance(
            "joint_gap",
            "what is left free between two panels that meet at a post",
            "\"1 in\"",
        ));
        let top_gap = small(allowance(
            "top_gap",
            "what is left free between the cloth and the underside of the top rail",
            "\"1 in\"",
        ));
        let hem_allowance = small(allowance(
            "hem_allowance",
            "what a hem or seam turns in at each edge, where the cloth is cut",
            "\"2 in\"",
        ));
        let knot_end = small(allowance("knot_end", "rope for one knot, at each end of a piece", "\"12 in\""));
        let longest_panel = small(length(
            "longest_panel",
            "the longest panel that is made, as it hangs; left out: 60 ft",
            "\"60 ft\"",
        ));
        let spares = self.share(&layers, "spares", "ties beyond those counted, as a share", reader);
        let rope_waste =
            self.share(&layers, "rope_waste", "rope that is cut off and thrown away, as a share", reader);
        let lacing = reader
            .choice(
                &layers,
                "lacing",
                &["plain", "locked"],
                "plain: a spiral; locked: two more turns at each grommet",
                Missing::IsFine,
            )
            .map(|at| [Style::Plain, Style::Locked][at]);
        let mut text = |key, about| reader.text(&layers, key, about, Missing::IsFine).map(|(text, _)| text);
        let currency = text("currency", "in which money the prices are");
        let service_life = text("service_life", "how long the cloth is said to last, and by whom");
        let warranty = text("warranty", "what its maker warrants");
        let note = text("note", "a line of text");
        let prices = Prices {
            currency,
            cloth: price(&layers, "cloth_price", Some(Dimension::Area), "\"1.20 per ft2\"", reader),
            tie: price(&layers, "tie_price", None, "\"0.15 each\"", reader),
            rope: price(&layers, "rope_price", Some(Dimension::Length), "\"0.10 per ft\"", reader),
            grommet: price(&layers, "grommet_price", None, "\"0.40 each\"", reader),
        };
        let crew_time = point(reader.quantity::<Time>(
            &layers,
            Key {
                key: "crew_time",
                measure: Measure::Time,
                about: "the crew's time to hang one panel",
                example: "\"45 min\"",
                sign: Sign::Positive,
                open: false,
            },
            Missing::IsFine,
        ));
        Some(OrderSurvey {
            end_gap,
            joint_gap,
            top_gap,
            longest_panel,
            hem_allowance,
            spares,
            lacing,
            knot_end,
            rope_waste,
            prices,
            crew_time,
            service_life,
            warranty,
            note,
        })
    }

    fn share(
        &self,
        layers: &Layers<'t>,
        key: &'static str,
        about: &'static str,
        reader: &mut Reader,
    ) -> Option<f64> {
        let asked = Key {
            key,
            measure: Measure::Percent,
            about,
            example: "\"10 %\"",
            sign: Sign::NotNegative,
            open: false,
        };
        let share = point(reader.quantity::<f64>(layers, asked, Missing::IsFine))?;
        if share > 1.0 {
            let at = layers.tables[0].0.get(key).map_or(layers.place.clone(), toml::Spanned::span);
            reader.mistake(at, format!("{key} of [order] is a share of 1 at most"), "like \"10 %\" or 0.1");
            return None;
        }
        Some(share)
    }
}

fn point<Q: Copy>(reading: Option<Reading<Q>>) -> Option<Q> {
    reading.and_then(|reading| reading.low())
}

/// A price such as "1.20 per ft2" or "0.15 each"; a bare number is a price each.
fn price(
    layers: &Layers<'_>,
    key: &str,
    wanted: Option<Dimension>,
    example: &str,
    reader: &mut Reader,
) -> Option<Price> {
    let (value, origin) = reader.find(layers, key)?;
    let at = value.span();
    let write = format!("like {example}");
    let per = wanted.map_or_else(
        || "is so much each".to_owned(),
        |wanted| format!("is so much for {} ({})", wanted.in_words(), Unit::accepted(wanted)),
    );
    let text = match value.get_ref() {
        DeValue::String(text) => text.trim().to_owned(),
        DeValue::Integer(number) => number.to_string(),
        DeValue::Float(number) => number.to_string(),
        _ => {
            reader.mistake(at, format!("{key} of [order] {per}"), write);
            return None;
        }
    };
    reader.note(layers, key, text.clone(), origin);
    let (money, unit) = match text.split_once(" per ").or_else(|| text.split_once('/')) {
        Some((money, unit)) => (money, Some(unit.trim())),
        None => text.split_once(" each").map_or((text.as_str(), None), |(money, _)| (money, None)),
    };
    let money = match read_number(money) {
        Ok(_) if text.contains('%') => {
            reader.mistake(at, format!("{key} is {text}: a price is money, no share"), write);
            return None;
        }
        Ok(money) if (0.0..=MOST_MONEY).contains(&money) => money,
        Ok(_) => {
            reader.mistake(at, format!("{key} is {text}: it must be 0 or more"), write);
            return None;
        }
        Err(error) => {
            reader.mistake(at, format!("{key}: {error}; the currency stands in its own key"), write);
            return None;
        }
    };
    match (wanted, unit) {
        (None, None) => Some(Price { money, unit: None }),
        (Some(wanted), Some(unit)) => {
            let found = Unit::named(unit).filter(|unit| unit.dimension == wanted);
            if found.is_none() {
                reader.mistake(at, format!("{key} {per}, and \"{unit}\" is none"), write);
            }
            found.map(|unit| Price { money, unit: Some(unit) })
        }
        _ => {
            reader.mistake(at, format!("{key} of [order] {per}"), write);
            None
        }
    }
}
