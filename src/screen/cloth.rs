//! The catalogue of cloths, by generic names.

use crate::source::{Catalogue, CatalogueError};
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
        assert_eq!(nearest_name("closd mesh"), Some("closed mesh"));
    }
}
