//! The catalogue of fence pipe, and what the trade calls each size.

use super::shapes::shapes;
use crate::source::{Catalogue, CatalogueError, Stated};
use crate::units::{Dimension, Length, Pressure, Pure, Quantity, Unit, inches, ksi};
use std::sync::LazyLock;

const FILES: &[(&str, &str)] = &[
    ("astm-f1083-2018.csv", include_str!("catalogue/astm-f1083-2018.csv")),
    ("astm-f1043-2022.csv", include_str!("catalogue/astm-f1043-2022.csv")),
    ("light-fence-tube-trade.csv", include_str!("catalogue/light-fence-tube-trade.csv")),
];

/// One pipe of the catalogue.
#[derive(Debug, Clone, PartialEq)]
pub struct Pipe {
    /// Its name here.
    pub name: String,
    /// Outside diameter.
    pub diameter: Length,
    /// Nominal wall.
    pub wall: Length,
    /// Weight of a foot in pounds-force, for the check of the catalogue.
    pub pounds_per_foot: f64,
    /// The lower yield it is sold with.
    pub yield_low: Pressure,
    /// The higher yield it is sold with.
    pub yield_high: Pressure,
    /// The publication.
    pub title: String,
    /// How well its values are known.
    pub known: String,
}

static PIPES: LazyLock<Vec<Pipe>> = LazyLock::new(|| {
    let read = || -> Result<Vec<Pipe>, CatalogueError> {
        let mut pipes = Vec::new();
        for (_, text) in FILES {
            let catalogue = Catalogue::read(text)?;
            for row in &catalogue.rows {
                let si = |column, dimension| {
                    let (number, unit) = row.quantity(column)?;
                    Ok(Unit::in_si(number, unit, dimension).unwrap_or(f64::NAN))
                };
                let length = |column| si(column, Dimension::Length).map(Length::from_si);
                let stress = |column| si(column, Dimension::Pressure).map(Pressure::from_si);
                pipes.push(Pipe {
                    name: row.text("name")?.to_owned(),
                    diameter: length("diameter_in")?,
                    wall: length("wall_in")?,
                    pounds_per_foot: row.number("weight_lb_per_ft")?,
                    yield_low: stress("yield_ksi")?,
                    yield_high: stress("yield_high_ksi")?,
                    title: catalogue.title.clone(),
                    known: catalogue.known.clone(),
                });
            }
        }
        Ok(pipes)
    };
    read().expect("the catalogue in the program is read by a test")
});

/// The yields a fence post of unknown grade may have.
pub const UNKNOWN_YIELD: (Stated<Pressure>, Stated<Pressure>) = (
    Stated {
        value: ksi(30.0),
        because: "grade unknown: regular fence pipe (ASTM F1083), 30 ksi from memory",
    },
    Stated { value: ksi(50.0), because: "grade unknown: at best high-strength fence pipe, 50 ksi" },
);

/// The same for square tube.
pub const UNKNOWN_YIELD_OF_SQUARE: (Stated<Pressure>, Stated<Pressure>) = (
    Stated {
        value: ksi(30.0),
        because: "grade unknown: 30 ksi, the lower yield of fence pipe, is taken for square tube too (ours)",
    },
    Stated {
        value: ksi(50.0),
        because: "grade unknown: at best 50 ksi, as for high-strength fence pipe (ours for square tube)",
    },
);

/// How far a measured diameter may lie off a catalogue size: 1 % by a distributor's sheet for schedule 40.
const TOLERANCE: f64 = 0.01;

/// Every fence pipe: what a post whose wall is not known may be. Pipe of buildings stands apart, in
/// [`shapes`](crate::member::shapes): a fence is made of it only where somebody says so by its name.
#[must_use]
pub fn all() -> &'static [Pipe] {
    &PIPES
}

/// Whether a measured diameter may be that of a pipe.
pub(super) fn is_near(of_pipe: Length, measured: Length) -> bool {
    ((of_pipe - measured) / of_pipe).pure().abs() <= TOLERANCE
}

/// The fence pipes of a diameter, within the tolerance of pipe.
pub fn of_diameter(diameter: Length) -> impl Iterator<Item = &'static Pipe> {
    all().iter().filter(move |pipe| is_near(pipe.diameter, diameter))
}

/// The pipe of a name: fence pipe, or else pipe of buildings such as `pipe 2-1/2 xs`.
#[must_use]
pub fn named(name: &str) -> Option<&'static Pipe> {
    with_a_name().find(|pipe| pipe.name == name)
}

/// Every name that [`named`] knows, each once, fence pipe first.
pub fn names() -> impl Iterator<Item = &'static str> {
    let fence = || all().iter().map(|pipe| pipe.name.as_str());
    let others = shapes().iter().map(|shape| shape.pipe.name.as_str());
    fence().chain(others.filter(move |name| !fence().any(|known| known == *name)))
}

fn with_a_name() -> impl Iterator<Item = &'static Pipe> {
    all().iter().chain(shapes().iter().map(|shape| &shape.pipe))
}

/// The catalogue diameters next below and above one that is not in it.
#[must_use]
pub fn neighbours(diameter: Length) -> (Option<Length>, Option<Length>) {
    let below = all().iter().map(|pipe| pipe.diameter).filter(|other| *other < diameter).max_by(order);
    let above = all().iter().map(|pipe| pipe.diameter).filter(|other| *other > diameter).min_by(order);
    (below, above)
}

fn order(one: &Length, other: &Length) -> std::cmp::Ordering {
    one.si().total_cmp(&other.si())
}

/// A name of the trade that is no diameter, and the two pipes that go by it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TradeSize {
    /// The name in inches.
    pub name: &'static str,
    /// The smaller pipe that goes by it.
    pub smaller: Length,
    /// The larger one.
    pub larger: Length,
}

/// Sizes by which the trade names pipes that measure otherwise: 1-7/8 is called 2 in, 2-3/8 is called 2-1/2,
/// 2-7/8 is called 3 (a fence supplier; the habit of rounding up), while the nominal pipe sizes 2, 2-1/2 and 3
/// measure 2-3/8, 2-7/8 and 3-1/2.
const TRADE_SIZES: [(f64, TradeSize); 3] = [
    (2.0, TradeSize { name: "2 in", smaller: inches(1.900), larger: inches(2.375) }),
    (2.5, TradeSize { name: "2-1/2 in", smaller: inches(2.375), larger: inches(2.875) }),
    (3.0, TradeSize { name: "3 in", smaller: inches(2.875), larger: inches(3.500) }),
];

/// The trade name that a diameter is, where it is one and no pipe has it.
#[must_use]
pub fn trade_size(diameter: Length) -> Option<TradeSize> {
    TRADE_SIZES.iter().find(|(size, _)| (diameter - inches(*size)).si().abs() < 1e-6).map(|(_, trade)| *trade)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_pipe_weighs_what_its_diameter_and_wall_make() {
        // 10.69 (D - t) t pounds a foot, D and t in inches (pipe pages; 490 lb a cubic foot of steel).
        for pipe in all() {
            assert!(pipe.yield_low.si() > 0.0, "{}: a unit of the catalogue was not known", pipe.name);
            let (diameter, wall) = ((pipe.diameter / inches(1.0)).pure(), (pipe.wall / inches(1.0)).pure());
            let weight = 10.69 * (diameter - wall) * wall;
            assert!((weight / pipe.pounds_per_foot - 1.0).abs() < 0.006, "{}: {weight}", pipe.name);
            assert!(pipe.yield_low <= pipe.yield_high);
        }
    }

    #[test]
    fn a_tape_round_a_post_finds_its_pipes() {
        let girth = inches(9.0625);
        let found: Vec<_> =
            of_diameter(girth / std::f64::consts::PI).map(|pipe| pipe.name.as_str()).collect();
        assert_eq!(found, ["pipe 2-1/2 std", "light pipe 2-1/2"]);
        assert_eq!(of_diameter(inches(2.6)).count(), 0);
        assert_eq!(neighbours(inches(2.6)), (Some(inches(2.375)), Some(inches(2.875))));
    }

    #[test]
    fn extra_strong_pipe_has_a_name_and_is_no_candidate() {
        let pipe = named("pipe 2-1/2 xs").unwrap();
        assert!((pipe.wall / inches(0.276)).pure() == 1.0);
        assert!(all().iter().all(|pipe| !pipe.name.ends_with(" xs")));
        // A name in both catalogues is that of fence pipe, with its yields.
        let fence = named("pipe 2-1/2 std").unwrap();
        assert!(all().iter().any(|pipe| std::ptr::eq(pipe, fence)));
        assert_eq!(named("pipe 9 xs"), None);
        let names: Vec<_> = names().collect();
        assert_eq!(names.len(), all().len() + 11);
        assert_eq!(names.iter().filter(|name| **name == "pipe 2-1/2 std").count(), 1);
    }

    #[test]
    fn a_trade_size_names_two_pipes_of_the_catalogue() {
        for (size, _) in TRADE_SIZES {
            let trade = trade_size(inches(size)).unwrap();
            assert!(of_diameter(trade.smaller).count() > 0 && of_diameter(trade.larger).count() > 0);
            assert_eq!(of_diameter(inches(size)).count(), 0);
        }
        assert_eq!(trade_size(inches(4.0)), None);
    }
}
