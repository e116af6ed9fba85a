//! What every form of an order list says in the same words.

pub(super) use crate::answers::tape;
use crate::answers::{Amount, Cost, Item, OrderList, SiteOrder, What};
use crate::caution::{Caution, HANGING, LADDERS, NO_DIGGING};
use crate::units::{Measure, Quantity, System, Time, number};
use crate::verdict::Flag;

use super::figures::listed;

/// The cautions of an order list.
pub(super) const ORDER_CAUTIONS: [Caution; 3] = [HANGING, LADDERS, NO_DIGGING];

/// What an order list is not.
pub(super) const NO_APPROVAL: &str = "This list says what to order, not whether the fence carries it. Run fencegust check and read all it says; a \
     licensed engineer decides before anything is hung.";

/// How panels, ties and rope were counted.
pub(super) const HOW_COUNTED: &[&str] = &[
    "Panels end at posts: as few as may be, none longer than the longest, as equal as the bays allow (ours). A gate has \
     its own.",
    "A length is finished, between the faces of the posts at which the cloth ends, where the tension bars are taken to \
     stand (ours), less a gap at each end: measure it from tension bar to tension bar before the cloth is made. A height \
     is as the survey has the cloth hang below the top rail, less the gap there.",
    "Ties and grommets stand evenly along each edge, no further apart than the spacing; one where a row meets an upright \
     edge counts once.",
    "Rope is one piece a bay along each row and one each side, so that one cut frees one bay.",
    "The hem runs round each panel, and along a middle row. Panels come finished; cloth, hem and grommets are for whoever \
     makes them.",
];

/// An amount: its figure in the unit of the list, and that unit.
pub(super) fn figure(amount: Amount, system: System) -> (f64, &'static str) {
    match (amount, system) {
        (Amount::Count(count), _) => (count as f64, "each"),
        (Amount::Area(area), _) => {
            (Measure::LargeArea.in_unit(area.si(), system), Measure::LargeArea.printed(system).0)
        }
        (Amount::Length(length), _) => {
            (Measure::Length.in_unit(length.si(), system), Measure::Length.printed(system).0)
        }
    }
}

/// An amount with its unit.
pub(super) fn amount(amount: Amount, system: System) -> String {
    let (figure, unit) = figure(amount, system);
    match amount {
        Amount::Count(_) => number(figure, 0),
        _ => format!("{} {unit}", number(figure, usize::from(system == System::Si))),
    }
}

/// Money as it is printed.
pub(super) fn money(cost: &Cost) -> String {
    let currency = cost.currency.as_deref().unwrap_or("(currency not said)");
    format!("{currency} {}", number(cost.money, 2))
}

/// A time in hours and minutes.
pub(super) fn hours(time: Time) -> String {
    let minutes = (time.si() / 60.0).round();
    let (hours, rest) = ((minutes / 60.0).floor(), minutes % 60.0);
    if hours > 0.0 { format!("{hours:.0} h {rest:.0} min") } else { format!("{rest:.0} min") }
}

/// What an item is called for programs and in a table.
pub(super) const fn kind(what: &What) -> &'static str {
    match what {
        What::Panel { .. } => "panel",
        What::Cloth { .. } => "cloth",
        What::Hem { .. } => "hem",
        What::Grommets => "grommets",
        What::Ties => "ties",
        What::Rope { .. } => "rope",
    }
}

/// Of what it is: the cloth or the rope.
pub(super) fn of(what: &What) -> Option<&str> {
    match what {
        What::Panel { cloth, .. } | What::Cloth { cloth } | What::Hem { cloth } => Some(cloth),
        What::Rope { rope, .. } => Some(rope),
        What::Grommets | What::Ties => None,
    }
}

/// What an item is, in words.
pub(super) fn words(item: &Item, system: System) -> String {
    let mut text = match &item.what {
        What::Panel { cloth, size } => format!(
            "panel{} of {cloth}, {} long, {} high, finished",
            if item.amount == Amount::Count(1) { "" } else { "s" },
            tape(size.length, system),
            tape(size.height, system)
        ),
        What::Cloth { cloth } => format!("{cloth}, area"),
        What::Hem { cloth } => format!("hem of {cloth}"),
        What::Grommets => "grommets".to_owned(),
        What::Ties => "ties".to_owned(),
        What::Rope { rope, row } => format!("rope, {rope}, row {}", row.name()),
    };
    if let Some(needed) = item.needed {
        text.push_str(&format!(": {} and spares", number(needed as f64, 0)));
    }
    if let Some((pieces, longest)) = item.pieces {
        text.push_str(&format!(": {pieces} pieces, the longest {} with its knots", tape(longest, system)));
    }
    if let Some((low, high)) = item.weight {
        let (unit, decimals) = Measure::Weight.printed(system);
        let figure = |si| number(Measure::Weight.in_unit(si, system), decimals);
        let (low, high) = (figure(low.si()), figure(high.si()));
        let spread = if low == high { high } else { format!("{low} to {high}") };
        text.push_str(&format!(", weighs {spread} {unit}"));
    }
    if let Some(cost) = &item.cost {
        text.push_str(&format!(" · {}", money(cost)));
    }
    text
}

/// What the check says of the runs with cloth, the loudest first.
pub(super) fn verdicts(site: &SiteOrder) -> Vec<String> {
    let Some(flags) = site.flags() else {
        let error = site.check.as_ref().err().map(ToString::to_string).unwrap_or_default();
        return vec![format!("◇ NOT CHECKED: the check of this fence could not be worked: {error}")];
    };
    let mut lines = Vec::new();
    for flag in [Flag::Over, Flag::Depends, Flag::NotChecked, Flag::NearLimit, Flag::Within] {
        let names: Vec<&str> = flags.iter().filter(|(_, own)| *own == flag).map(|(name, _)| *name).collect();
        if names.is_empty() {
            continue;
        }
        let names = listed(&names);
        lines.push(match flag {
            Flag::Over => format!(
                "■ DO NOT HANG this cloth on {names}: by fencegust check posts or what holds the cloth are OVER their \
                 limit at the design wind. An engineer decides before anything is ordered."
            ),
            Flag::Depends => format!(
                "◐ DO NOT HANG YET on {names}: by fencegust check it depends on what is not known. Measure that before \
                 anything is ordered."
            ),
            Flag::NotChecked => {
                format!("◇ DO NOT HANG YET on {names}: NOT CHECKED at a design wind.")
            }
            Flag::NearLimit => {
                format!("▲ {names}: by fencegust check near the limit at the design wind; an engineer decides.")
            }
            Flag::Within => format!(
                "● {names}: what fencegust check checked stays within its limit at the design wind; what it did not \
                 check is not known."
            ),
        });
    }
    lines
}

/// What the check says of one run, in a word.
pub(super) fn flag_word(site: &SiteOrder, at: usize) -> &'static str {
    site.flags().and_then(|flags| flags.get(at).map(|(_, flag)| flag.word())).unwrap_or("not checked")
}

/// The kinds of items without a price, where others have one.
pub(super) fn without_price(list: &OrderList) -> Vec<&'static str> {
    let mut kinds = Vec::new();
    for item in &list.sums {
        // A panel is paid by its cloth, and a hem by whoever makes it.
        let priced = matches!(item.what, What::Panel { .. } | What::Hem { .. });
        if item.cost.is_none() && !priced && !kinds.contains(&kind(&item.what)) {
            kinds.push(kind(&item.what));
        }
    }
    kinds
}
