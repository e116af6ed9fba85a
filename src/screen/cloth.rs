//! The catalogue of cloths, by generic names.

use crate::source::{Catalogue, CatalogueError};
use crate::units::{Pressure, ounces_per_square_yard};
use crate::workings::nearest;
use std::sync::LazyLock;

const FILE: &str = include_str!("catalogue/cloths-2026.csv");

/// A cloth of the catalogue.
#[derive(Debug, Clone, PartialEq)]
pub struct Cloth {
    /// Its generic name.
    pub name: String,
    /// Whether it is made for court fences.
    pub usual: bool,
    /// The least solidity it is sold with.
    pub solidity_low: f64,
    /// The greatest.
    pub solidity_high: f64,
    /// How well that is known.
    pub known: String,
    /// How it is made.
    pub construction: String,
    /// The least and the greatest weight it is sold with, and how well that is known.
    pub weight: Option<(Pressure, Pressure, String)>,
}

/// A cloth that is sold by a name which says nothing of its solidity.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unmeasured {
    /// Its generic name.
    pub name: String,
    /// What is known of it.
    pub known: String,
    /// How it is made.
    pub construction: String,
}

#[derive(Default)]
struct Cloths {
    usual: Vec<Cloth>,
    other: Vec<Cloth>,
    unmeasured: Vec<Unmeasured>,
}

static CLOTHS: LazyLock<Cloths> = LazyLock::new(|| {
    let read = || -> Result<Cloths, CatalogueError> {
        let mut all = Cloths::default();
        for row in &Catalogue::read(FILE)?.rows {
            let text = |column| row.text(column).map(str::to_owned);
            let (name, known, construction) = (text("name")?, text("known")?, text("construction")?);
            if row.text("solidity_low")?.is_empty() {
                all.unmeasured.push(Unmeasured { name, known, construction });
                continue;
            }
            let ounces = |column| row.number(column).map(ounces_per_square_yard);
            let weight = if row.text("weight_low_oz_per_yd2")?.is_empty() {
                None
            } else {
                let (low, high) = (ounces("weight_low_oz_per_yd2")?, ounces("weight_high_oz_per_yd2")?);
                Some((low, high, text("weight_known")?))
            };
            let usual = row.text("usual")? == "yes";
            let cloth = Cloth {
                name,
                usual,
                solidity_low: row.number("solidity_low")?,
                solidity_high: row.number("solidity_high")?,
                known,
                construction,
                weight,
            };
            if usual { &mut all.usual } else { &mut all.other }.push(cloth);
        }
        Ok(all)
    };
    read().expect("the catalogue in the program is read by a test")
});

/// The cloths made for court fences.
#[must_use]
pub fn cloths() -> &'static [Cloth] {
    &CLOTHS.usual
}

/// Every cloth of the catalogue that has a solidity, those made for court fences first.
pub fn all_cloths() -> impl Iterator<Item = &'static Cloth> {
    CLOTHS.usual.iter().chain(&CLOTHS.other)
}

/// The cloth of a name.
#[must_use]
pub fn named(name: &str) -> Option<&'static Cloth> {
    all_cloths().find(|cloth| cloth.name.eq_ignore_ascii_case(name.trim()))
}

/// The cloth of a name that says nothing of its solidity.
#[must_use]
pub fn unmeasured(name: &str) -> Option<&'static Unmeasured> {
    CLOTHS.unmeasured.iter().find(|cloth| cloth.name.eq_ignore_ascii_case(name.trim()))
}

/// The name nearest to what somebody wrote.
#[must_use]
pub fn nearest_name(written: &str) -> Option<&'static str> {
    nearest(written, all_cloths().map(|cloth| cloth.name.as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Quantity;

    #[test]
    fn each_cloth_has_a_solidity_between_nought_and_one() {
        assert!(cloths().iter().all(|cloth| cloth.usual) && all_cloths().count() > cloths().len());
        for cloth in all_cloths() {
            assert!(
                0.0 < cloth.solidity_low
                    && cloth.solidity_low <= cloth.solidity_high
                    && cloth.solidity_high <= 1.0
            );
        }
        assert_eq!(named("solid").unwrap().weight, None);
        assert_eq!(nearest_name("closd mesh"), Some("closed mesh"));
    }

    #[test]
    fn each_name_stands_once_and_what_is_said_to_be_known_is_said_how() {
        let mut names: Vec<String> = all_cloths().map(|cloth| cloth.name.to_lowercase()).collect();
        names.extend(CLOTHS.unmeasured.iter().map(|cloth| cloth.name.to_lowercase()));
        let before = names.len();
        names.sort();
        names.dedup();
        assert_eq!(names.len(), before);
        let ways = ["second-hand: ", "from memory: ", "by definition: "];
        for cloth in all_cloths() {
            assert!(ways.iter().any(|way| cloth.known.starts_with(way)), "{}", cloth.known);
            assert!(!cloth.construction.is_empty());
        }
        for name in ["debris netting", "shade cloth"] {
            assert!(unmeasured(name).unwrap().known.starts_with("second-hand: ") && named(name).is_none());
        }
    }

    #[test]
    fn cloth_weighs_between_the_lightest_knit_and_the_heaviest_sheet() {
        let weights: Vec<_> = all_cloths().filter_map(|cloth| cloth.weight.clone()).collect();
        assert!(weights.len() >= 8);
        for (low, high, known) in weights {
            // 5 oz/yd² is 170 g/m² and 18 oz/yd² 610 g/m², as weights.
            assert!(1.66 < low.si() && low <= high && high.si() < 6.0, "{low:?} {high:?}");
            assert_eq!(known, "from memory");
        }
    }

    #[test]
    fn the_cloths_made_for_courts_keep_their_solidities() {
        let of: Vec<_> = cloths()
            .iter()
            .map(|cloth| (cloth.name.as_str(), cloth.solidity_low, cloth.solidity_high))
            .collect();
        assert_eq!(
            of,
            [
                ("open mesh", 0.75, 0.80),
                ("closed mesh", 0.95, 0.95),
                ("knitted mesh", 0.70, 0.90),
                ("coated open mesh", 0.70, 0.80),
                ("solid", 1.00, 1.00)
            ]
        );
    }
}
