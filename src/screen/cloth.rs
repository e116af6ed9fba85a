//! The catalogue of cloths, by generic names.

use crate::source::{Catalogue, CatalogueError};
use crate::units::{Dimension, Pressure, Quantity, Unit};
use crate::workings::nearest;
use std::sync::LazyLock;

const FILE: &str = include_str!("catalogue/cloths-2026.csv");

/// A cloth of the catalogue.
#[derive(Debug, Clone, PartialEq)]
pub struct Cloth {
    /// Its generic name.
    pub name: String,
    /// The least solidity it is sold with.
    pub solidity_low: f64,
    /// The greatest.
    pub solidity_high: f64,
    /// How well that is known.
    pub known: String,
}

static CLOTHS: LazyLock<Vec<Cloth>> = LazyLock::new(|| {
    let read = || -> Result<Vec<Cloth>, CatalogueError> {
        Catalogue::read(FILE)?
            .rows
            .iter()
            .map(|row| {
                Ok(Cloth {
                    name: row.text("name")?.to_owned(),
                    solidity_low: row.number("solidity_low")?,
                    solidity_high: row.number("solidity_high")?,
                    known: row.text("known")?.to_owned(),
                })
            })
            .collect()
    };
    read().expect("the catalogue in the program is read by a test")
});

/// What cloth of a generic name weighs.
#[derive(Debug, Clone, PartialEq)]
pub struct ClothWeight {
    /// The generic name.
    pub name: String,
    /// The least, for each area.
    pub low: Pressure,
    /// The greatest.
    pub high: Pressure,
    /// How well that is known.
    pub known: String,
}

static WEIGHTS: LazyLock<Vec<ClothWeight>> = LazyLock::new(|| {
    let read = || -> Result<Vec<ClothWeight>, CatalogueError> {
        let catalogue = Catalogue::read(include_str!("catalogue/cloth-weights-2026.csv"))?;
        let ounces = |number| {
            let si = Unit::in_si(number, "oz/yd²", Dimension::WeightPerArea);
            Pressure::from_si(si.expect("the unit stands in the list"))
        };
        let row = |row: &crate::source::Row| {
            Ok(ClothWeight {
                name: row.text("name")?.to_owned(),
                low: ounces(row.number("weight_low_oz_per_yd2")?),
                high: ounces(row.number("weight_high_oz_per_yd2")?),
                known: catalogue.known.clone(),
            })
        };
        catalogue.rows.iter().map(row).collect()
    };
    read().expect("the catalogue in the program is read by a test")
});

/// What cloth of this name weighs, where the catalogue says so.
#[must_use]
pub fn weight_of(name: &str) -> Option<&'static ClothWeight> {
    WEIGHTS.iter().find(|cloth| cloth.name.eq_ignore_ascii_case(name.trim()))
}

/// Every cloth of the catalogue.
#[must_use]
pub fn cloths() -> &'static [Cloth] {
    &CLOTHS
}

/// The cloth of a name.
#[must_use]
pub fn named(name: &str) -> Option<&'static Cloth> {
    cloths().iter().find(|cloth| cloth.name.eq_ignore_ascii_case(name.trim()))
}

/// The name nearest to what somebody wrote.
#[must_use]
pub fn nearest_name(written: &str) -> Option<&'static str> {
    nearest(written, cloths().iter().map(|cloth| cloth.name.as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_cloth_has_a_solidity_between_nought_and_one() {
        assert!(cloths().len() >= 3);
        for cloth in cloths() {
            assert!(
                0.0 < cloth.solidity_low
                    && cloth.solidity_low <= cloth.solidity_high
                    && cloth.solidity_high <= 1.0
            );
        }
        for cloth in cloths().iter().filter(|cloth| cloth.name != "solid") {
            let weight = weight_of(&cloth.name).unwrap();
            assert!(0.0 < weight.low.si() && weight.low < weight.high);
            assert!(weight.known.starts_with("from memory"));
        }
        // 6 oz/yd² is 203 g/m², the page's 200 rounded.
        let grams = weight_of("closed mesh").unwrap().low.si() / 9.806_65e-3;
        assert!((grams - 203.4).abs() < 0.05, "{grams}");
        assert_eq!(weight_of("solid"), None);
        assert_eq!(nearest_name("closd mesh"), Some("closed mesh"));
    }
}
