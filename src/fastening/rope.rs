//! Fibre rope: breaking loads of the catalogue, what knots and the sun leave of them.

use super::{FasteningError, above_nought, not_below_nought};
use crate::rule;
use crate::source::{Catalogue, CatalogueError, Document, PRACTICE, STATICS, Seen, Stated};
use crate::units::{
    Dimension, Force, Length, Measure, Powers, Pressure, Pure, Quantity, Unit, Value, ksi, pounds,
};
use crate::workings::{Ledger, Listed, OutOfRange, within};
use std::f64::consts::PI;
use std::sync::LazyLock;

static KNOTS: Document = Document {
    short: "rope notes",
    title: "Notes on knots and on rope outdoors: an arborist's, a rope maker's and a book of knots",
    seen: Seen::SecondHand("the notes as they stand on the web, and a page of the book"),
};
static SEAMANSHIP: Document = Document {
    short: "marlinespike seamanship",
    title: "Breaking strength of line by its girth, as taught for the licence examinations of the US Coast Guard",
    seen: Seen::SecondHand("three boating pages with one text"),
};

const FILES: [&str; 3] = [
    include_str!("catalogue/fibre-rope-engineering-reference-undated.csv"),
    include_str!("catalogue/fibre-rope-supplier-undated.csv"),
    include_str!("catalogue/fibre-rope-arborist-note-undated.csv"),
];

/// What a knot takes of the strength of a rope.
pub const KNOT_LOSS: Stated<f64> = Stated {
    value: 0.5,
    because: "half is lost at a knot: 35 to 60 % by rope notes, 25 to 55 % by a book of knots; second-hand",
};
/// What the sun takes of polypropylene rope in a year, at least.
pub const SUN_LEAST: Stated<f64> =
    Stated { value: 0.1, because: "10 to 20 % a year outdoors, by one rope maker's note; second-hand" };
/// What it takes at most.
pub const SUN_GREATEST: Stated<f64> =
    Stated { value: 0.2, because: "10 to 20 % a year outdoors, by one rope maker's note; second-hand" };
/// Breaking strength of manila line over the square of its girth.
pub const MANILA_BY_GIRTH: Stated<Pressure> =
    Stated { value: ksi(0.9), because: "900 lb times the square of the girth in inches, taught to seamen" };

rule! {
    /// Strength of a rope with a knot in it.
    KnottedStrength, "fastening/knotted-rope", KNOTS.at("knots");
    /// breaking load without a knot
    breaking: Force = "R_0";
    /// share lost at the knot
    loss: f64 as Percent = "k";
    left "R": Force = breaking * (1.0 - loss)
}
rule! {
    /// Strength of a rope after years in the sun.
    WeatheredStrength, "fastening/weathered-rope", KNOTS.at("sun");
    /// strength when new
    breaking: Force = "R_0";
    /// share lost in a year
    loss: f64 as Percent = "u";
    /// years outdoors
    years: f64 as Years = "n";
    left "R": Force = breaking * (1.0 - loss).powf(years)
}
rule! {
    /// Load a rope is worked with: its breaking load over a factor.
    ///
    /// # Checked by
    /// `reference-cases/fastening/engineering-reference-undated-polypropylene-safe-load.toml`
    WorkingLoad, "fastening/rope-working-load", PRACTICE.at("safety factor of rope");
    /// breaking load
    breaking: Force = "R";
    /// factor
    factor: f64 = "n";
    load "R/n": Force = breaking / factor
}
rule! {
    /// Breaking strength of line of which there is no table, by its girth.
    ///
    /// A rule to be set beside a maker's figure, not in its place: it makes 0.55 to 1.08 of what the tables of the
    /// catalogue have, the least for thin polypropylene rope.
    StrengthByGirth, "fastening/rope-by-girth", SEAMANSHIP.at("comparison factors");
    /// strength of manila over its girth squared
    manila: Pressure as Stress = "u";
    /// times as strong as manila: nylon 2.5, polypropylene 1.4
    comparison: f64 = "c";
    /// girth
    girth: Length as Small = "C";
    breaking "R": Force = comparison * manila * girth.squared()
}
rule! {
    /// Girth of a rope.
    RopeGirth, "fastening/rope-girth", STATICS.at("circle");
    /// diameter
    diameter: Length as Small = "d";
    girth "C": Length as Small = PI * diameter
}
rule! {
    /// Least breaking load of new polypropylene rope in the tables of the catalogue.
    PolypropyleneRope, "fastening/polypropylene-rope", PRACTICE.at("tables of fibre rope");
    /// diameter
    diameter: Length as Small = "d";
    breaking "R": Force
}
rule! {
    /// Least breaking load of new manila rope in the tables of the catalogue.
    ManilaRope, "fastening/manila-rope", PRACTICE.at("tables of fibre rope");
    /// diameter
    diameter: Length as Small = "d";
    breaking "R": Force
}
rule! {
    /// Least breaking load of new nylon rope in the tables of the catalogue.
    NylonRope, "fastening/nylon-rope", PRACTICE.at("tables of fibre rope");
    /// diameter
    diameter: Length as Small = "d";
    breaking "R": Force
}

macro_rules! listed_rope {
    ($($rule:ident => $fibre:ident),+) => { $(
        impl $rule {
            /// Looks it up.
            ///
            /// # Errors
            /// If no table has this diameter.
            pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
                let Some(rope) = listed(Fibre::$fibre, self.diameter) else {
                    return Err(outside(Fibre::$fibre, self.diameter));
                };
                Ok(self.keep(ledger, rope.least))
            }
        }
    )+ };
}
listed_rope!(PolypropyleneRope => Polypropylene, ManilaRope => Manila, NylonRope => Nylon);

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<KnottedStrength>(),
    Listed::of::<WeatheredStrength>(),
    Listed::of::<WorkingLoad>(),
    Listed::of::<StrengthByGirth>(),
    Listed::of::<RopeGirth>(),
    Listed::of::<PolypropyleneRope>(),
    Listed::of::<ManilaRope>(),
    Listed::of::<NylonRope>(),
];

/// What a rope is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Fibre {
    /// Polypropylene.
    Polypropylene,
    /// Nylon.
    Nylon,
    /// Manila.
    Manila,
}

impl Fibre {
    /// Every fibre there is.
    pub const ALL: [Self; 3] = [Self::Polypropylene, Self::Nylon, Self::Manila];

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Polypropylene => "polypropylene",
            Self::Nylon => "nylon",
            Self::Manila => "manila",
        }
    }

    /// The fibre of a name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|fibre| fibre.name().eq_ignore_ascii_case(name.trim()))
    }
}

/// One row of a table of ropes.
#[derive(Debug, Clone, PartialEq)]
struct Entry {
    fibre: Fibre,
    diameter: Length,
    breaking: Force,
    title: String,
    known: String,
}

static ROPES: LazyLock<Vec<Entry>> = LazyLock::new(|| {
    let read = || -> Result<Vec<Entry>, CatalogueError> {
        let mut ropes = Vec::new();
        for text in FILES {
            let catalogue = Catalogue::read(text)?;
            for row in &catalogue.rows {
                let fibre = row.text("fibre")?;
                let (diameter, unit) = row.quantity("diameter_in")?;
                ropes.push(Entry {
                    fibre: Fibre::named(fibre).ok_or_else(|| CatalogueError::Row(fibre.to_owned()))?,
                    diameter: Unit::in_si(diameter, unit, Dimension::Length)
                        .map(Length::from_si)
                        .ok_or_else(|| CatalogueError::Row(unit.to_owned()))?,
                    breaking: pounds(row.number("breaking_lbf")?),
                    title: catalogue.title.clone(),
                    known: catalogue.known.clone(),
                });
            }
        }
        Ok(ropes)
    };
    read().expect("the catalogue in the program is read by a test")
});

/// How far a diameter may lie off that of a table: 8 mm are 5/16 in to 0.8 %.
const TOLERANCE: f64 = 0.01;

/// What the tables say of one rope, new and without a knot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Breaking {
    /// The least breaking load of any of them.
    pub least: Force,
    /// The greatest.
    pub greatest: Force,
    /// How many tables have it.
    pub tables: usize,
}

fn listed(fibre: Fibre, diameter: Length) -> Option<Breaking> {
    let near = |rope: &&Entry| {
        rope.fibre == fibre && ((rope.diameter - diameter) / rope.diameter).pure().abs() <= TOLERANCE
    };
    let loads: Vec<f64> = ROPES.iter().filter(near).map(|rope| rope.breaking.si()).collect();
    let fold = |pick: fn(f64, f64) -> f64| loads.iter().copied().reduce(pick).map(Force::from_si);
    Some(Breaking { least: fold(f64::min)?, greatest: fold(f64::max)?, tables: loads.len() })
}

fn neighbours(fibre: Fibre, diameter: Length) -> (Option<Length>, Option<Length>) {
    let of_fibre = || ROPES.iter().filter(move |rope| rope.fibre == fibre).map(|rope| rope.diameter);
    let order = |one: &Length, other: &Length| one.si().total_cmp(&other.si());
    (
        of_fibre().filter(|other| *other < diameter).max_by(order),
        of_fibre().filter(|other| *other > diameter).min_by(order),
    )
}

/// The limit of the tables that a diameter passes, or the nearest size where it lies between two.
fn outside(fibre: Fibre, diameter: Length) -> OutOfRange {
    let (below, above) = neighbours(fibre, diameter);
    let limit = below.or(above).unwrap_or(diameter);
    let place = match (below, above) {
        (Some(_), Some(_)) => "tables of fibre rope below this size",
        _ => "tables of fibre rope",
    };
    OutOfRange {
        what: "diameter of rope",
        value: Value::new(diameter, Measure::Small),
        limit: Value::new(limit, Measure::Small),
        above: below.is_some(),
        clause: PRACTICE.at(place),
    }
}

/// The breaking load of a new rope by the tables of the catalogue.
///
/// # Errors
/// If the diameter is not above 0, or no table has it: the nearest sizes are named.
pub fn breaking(fibre: Fibre, diameter: Length) -> Result<Breaking, FasteningError> {
    let diameter = above_nought("the diameter of the rope", diameter)?;
    listed(fibre, diameter).ok_or_else(|| {
        let (below, above) = neighbours(fibre, diameter);
        FasteningError::RopeNotListed { fibre, diameter, below, above }
    })
}

/// The titles of the tables and how well each is known.
#[must_use]
pub fn tables() -> Vec<(&'static str, &'static str)> {
    let mut told: Vec<(&str, &str)> = Vec::new();
    for rope in ROPES.iter() {
        if !told.iter().any(|(title, _)| *title == rope.title) {
            told.push((&rope.title, &rope.known));
        }
    }
    told
}

/// What is left of a rope with a knot after years outdoors, at the worse and at the better end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Left {
    /// With the sun taking the most.
    pub least: Force,
    /// With the sun taking the least.
    pub greatest: Force,
}

/// The strength of a knotted rope after years outdoors.
///
/// # Errors
/// If the breaking load is not above 0, or the years are below 0.
pub fn left(breaking: Force, years: f64, ledger: &mut impl Ledger) -> Result<Left, FasteningError> {
    let breaking = above_nought("the breaking load of the rope", breaking)?;
    let years = not_below_nought("the years outdoors", years)?;
    let loss = ledger.judge("k", KNOT_LOSS);
    within("share lost at a knot", KNOTS.at("knots"), loss, 0.0, 1.0)?;
    let knotted = KnottedStrength { breaking, loss }.work(ledger);
    let mut after = |sun: Stated<f64>| {
        let loss = ledger.judge("u", sun);
        WeatheredStrength { breaking: knotted, loss, years }.work(ledger)
    };
    Ok(Left { least: after(SUN_GREATEST), greatest: after(SUN_LEAST) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{inches, millimetres};
    use crate::workings::Blank;
    use proptest::prelude::*;

    fn in_pounds(force: Force) -> f64 {
        (force / pounds(1.0)).pure()
    }

    #[test]
    fn the_least_of_three_tables_is_taken_and_they_lie_within_a_ninth() {
        let quarter = breaking(Fibre::Polypropylene, inches(0.25)).unwrap();
        assert_eq!(quarter.tables, 3);
        assert!((in_pounds(quarter.least) - 1125.0).abs() < 1e-9);
        assert!((in_pounds(quarter.greatest) - 1250.0).abs() < 1e-9);
        for rope in ROPES.iter() {
            let Breaking { least, greatest, .. } = breaking(rope.fibre, rope.diameter).unwrap();
            assert!((greatest / least).pure() < 1.115, "{rope:?}");
        }
        assert_eq!(tables().len(), 3);
    }

    #[test]
    fn in_each_table_a_thicker_rope_is_stronger_and_nylon_beats_polypropylene_beats_manila() {
        for one in ROPES.iter() {
            for other in ROPES.iter().filter(|other| other.title == one.title) {
                if one.fibre == other.fibre && one.diameter < other.diameter {
                    assert!(one.breaking < other.breaking, "{one:?} {other:?}");
                }
                if one.diameter == other.diameter && one.fibre == Fibre::Nylon {
                    assert!(
                        other.fibre == Fibre::Nylon || one.breaking > other.breaking,
                        "{one:?} {other:?}"
                    );
                }
                if one.diameter == other.diameter && one.fibre == Fibre::Manila {
                    assert!(
                        other.fibre == Fibre::Manila || one.breaking < other.breaking,
                        "{one:?} {other:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn a_rope_of_8_mm_is_found_and_one_of_no_table_names_its_neighbours() {
        assert_eq!(
            breaking(Fibre::Polypropylene, millimetres(8.0)).unwrap(),
            breaking(Fibre::Polypropylene, inches(0.3125)).unwrap()
        );
        let error = breaking(Fibre::Polypropylene, inches(0.28)).unwrap_err();
        let text = error.to_string();
        assert!(
            text.contains(
                "no table here has polypropylene rope of 0.28 in: the nearest are 0.25 in and 0.3125 in"
            ),
            "{text}"
        );
        assert!(breaking(Fibre::Nylon, inches(0.0)).is_err());
        let error = NylonRope { diameter: inches(2.0) }.work(&mut Blank).unwrap_err();
        assert!(error.above && error.to_string().contains("above 0.75 in"), "{error}");
        let error = NylonRope { diameter: inches(0.28) }.work(&mut Blank).unwrap_err().to_string();
        assert!(
            error.contains("above 0.25 in") && error.contains("tables of fibre rope below this size"),
            "{error}"
        );
        let error = ManilaRope { diameter: inches(0.1) }.work(&mut Blank).unwrap_err();
        assert!(!error.above && error.to_string().contains("below 0.25 in"), "{error}");
        assert_eq!(Fibre::named(" Manila "), Some(Fibre::Manila));
        assert_eq!(Fibre::named("steel"), None);
    }

    #[test]
    fn a_quarter_inch_rope_with_knots_after_two_years_keeps_a_third_of_itself() {
        let new = breaking(Fibre::Polypropylene, inches(0.25)).unwrap().least;
        let found = left(new, 2.0, &mut Blank).unwrap();
        // 1125 × ½ × 0.8² and × 0.9².
        assert!((in_pounds(found.least) - 360.0).abs() < 1e-9);
        assert!((in_pounds(found.greatest) - 455.625).abs() < 1e-9);
        assert!(left(new, -1.0, &mut Blank).is_err() && left(pounds(0.0), 1.0, &mut Blank).is_err());
    }

    #[test]
    fn the_rule_by_girth_makes_half_to_little_more_than_the_tables() {
        let mut quotients = Vec::new();
        for rope in ROPES.iter() {
            let comparison = match rope.fibre {
                Fibre::Polypropylene => 1.4,
                Fibre::Nylon => 2.5,
                Fibre::Manila => 1.0,
            };
            let girth = RopeGirth { diameter: rope.diameter }.work(&mut Blank);
            let ours = StrengthByGirth { manila: MANILA_BY_GIRTH.value, comparison, girth }.work(&mut Blank);
            quotients.push((ours / rope.breaking).pure());
        }
        let least = quotients.iter().copied().fold(f64::INFINITY, f64::min);
        let greatest = quotients.iter().copied().fold(0.0, f64::max);
        assert!((0.54..0.55).contains(&least) && (1.07..1.08).contains(&greatest), "{least} {greatest}");
    }

    proptest! {
        #[test]
        fn years_and_knots_only_weaken(breaking in 100.0..5000.0_f64, years in 0.0..20.0_f64, more in 0.1..5.0_f64) {
            let here = left(pounds(breaking), years, &mut Blank).unwrap();
            let later = left(pounds(breaking), years + more, &mut Blank).unwrap();
            prop_assert!(later.least < here.least && later.greatest < here.greatest);
            prop_assert!(here.least <= here.greatest && here.greatest < pounds(breaking));
        }
    }
}
