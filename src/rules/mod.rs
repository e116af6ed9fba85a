//! Every rule by name, and the reference cases held against it.

pub mod case;
pub mod embedded;
pub mod examples;
mod printed;
pub mod verify;
mod wrong;

pub use case::Case;
pub use printed::{Printed, PrintedError};
pub use wrong::{CaseError, CaseMistake, Wrong};

use crate::fastening;
use crate::footing;
use crate::frame;
use crate::loads;
use crate::member;
use crate::rule;
use crate::screen;
use crate::source::{Clause, OURS, STATICS};
use crate::units::{Length, Quantity};
use crate::verdict;
use crate::wind;
use crate::wind::asce7_16::OpeningsFactor;
use crate::workings::{Ledger, Listed, OutOfRange, nearest, within};

const OPENINGS: Clause = OURS.at("change of the code's openings factor");

rule! {
    /// A length as it is read, from text in any unit; the reader itself is held against a value by it.
    ReadLength, "units/length", STATICS.at("definitions of the units of length");
    /// the length as it is written
    reading: Length = "L";
    length "L": Length = reading
}

rule! {
    /// What windows cut in cloth change in the openings factor of the wall rule.
    ///
    /// # Range
    /// Solidity above 0 and up to 1; the windows of a bay together no larger than its cloth.
    OpeningsChange, "windows/openings-change", OPENINGS;
    /// solidity of the cloth before
    solidity: f64 as Coefficient = "s";
    /// width of one window
    window_width: Length as Small = "b_w";
    /// height of one window
    window_height: Length as Small = "h_w";
    /// windows in a bay
    windows_per_bay: f64 = "n";
    /// width of the bay
    bay_width: Length = "b";
    /// height of the cloth
    cloth_height: Length = "s_c";
    change "Δf/f": f64 as Percent
}
impl OpeningsChange {
    /// Works the share cut away, the solidity left, and the openings factor before and after.
    ///
    /// # Errors
    /// If there is no solidity, no cloth, or more is cut away than there is.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let least = Length::from_si(f64::MIN_POSITIVE);
        let greatest = Length::from_si(f64::MAX);
        within("solidity", OPENINGS, self.solidity, f64::MIN_POSITIVE, 1.0)?;
        for (what, length) in [
            ("window width", self.window_width),
            ("window height", self.window_height),
            ("bay width", self.bay_width),
            ("cloth height", self.cloth_height),
        ] {
            within(what, OPENINGS, length, least, greatest)?;
        }
        let share = screen::WindowShare {
            window: self.window_width * self.window_height,
            count: self.windows_per_bay,
            cloth: self.bay_width * self.cloth_height,
        }
        .work(ledger);
        within("share cut away", OPENINGS, share, 0.0, 1.0)?;
        let before = OpeningsFactor { solidity: self.solidity }.work(ledger);
        let left = screen::WindowedSolidity { solidity: self.solidity, share }.work(ledger);
        let after = OpeningsFactor { solidity: left }.work(ledger);
        Ok(self.keep(ledger, after / before - 1.0))
    }
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[Listed::of::<ReadLength>(), Listed::of::<OpeningsChange>()];

/// Every rule that can be asked by name.
pub fn all() -> impl Iterator<Item = &'static Listed> {
    wind::Code::ALL
        .iter()
        .flat_map(|code| code.rules())
        .chain(wind::climate::RULES)
        .chain(wind::gust::RULES)
        .chain(screen::RULES)
        .chain(screen::CHAIN_LINK_RULES)
        .chain(screen::loss::RULES)
        .chain(member::RULES)
        .chain(member::square::RULES)
        .chain(member::timber::RULES)
        .chain(member::stiffness::RULES)
        .chain(member::beam::RULES)
        .chain(member::sway::RULES)
        .chain(member::aisc360_16::RULES)
        .chain(member::aisi_s100_16::RULES)
        .chain(member::en1993_1_1_2005::RULES)
        .chain(member::nds_2018::RULES)
        .chain(fastening::ties::RULES)
        .chain(fastening::unzip::RULES)
        .chain(fastening::membrane::RULES)
        .chain(fastening::rope::RULES)
        .chain(fastening::lacing::RULES)
        .chain(fastening::wire::RULES)
        .chain(fastening::rail::RULES)
        .chain(fastening::order::RULES)
        .chain(fastening::RULES)
        .chain(footing::astm_f567::RULES)
        .chain(footing::RULES)
        .chain(footing::ibc_1807_3::RULES)
        .chain(footing::broms::RULES)
        .chain(footing::brinch_hansen::RULES)
        .chain(footing::nzbc_b1_vm4::RULES)
        .chain(footing::pd_6547::RULES)
        .chain(footing::asabe_ep486::RULES)
        .chain(footing::base_stiffness::RULES)
        .chain(footing::driven::RULES)
        .chain(footing::socket::RULES)
        .chain(frame::RULES)
        .chain(loads::RULES)
        .chain(loads::FACTOR_RULES)
        .chain(verdict::RULES)
        .chain(RULES)
}

/// The rule of this name.
///
/// # Errors
/// The name nearest to it, if any is near.
pub fn named(name: &str) -> Result<&'static Listed, Option<&'static str>> {
    all().find(|listed| listed.card.name == name).ok_or_else(|| nearest_name(name))
}

/// The name nearest to what somebody wrote, who may have left out the family.
fn nearest_name(written: &str) -> Option<&'static str> {
    let names = || all().map(|listed| listed.card.name);
    let without_family = |name: &&str| name.split_once('/').is_some_and(|(_, rest)| rest == written);
    names().find(without_family).or_else(|| nearest(written, names()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{feet, inches};
    use crate::workings::{Blank, Formula};
    use proptest::prelude::*;

    fn names<'f>(formula: &'f Formula, found: &mut Vec<&'f str>) {
        match formula {
            Formula::Number(_) => {}
            Formula::Name(name) => found.push(name),
            Formula::Minus(inner) => names(inner, found),
            Formula::Pair(left, _, right) => {
                names(left, found);
                names(right, found);
            }
            Formula::Call(_, parts) => parts.iter().for_each(|part| names(part, found)),
        }
    }

    #[test]
    fn every_formula_can_be_read_and_speaks_of_its_own_inputs_only() {
        let mut formulas = 0;
        for card in all().map(|listed| listed.card) {
            let Some(source) = card.source else { continue };
            let formula = Formula::read(source).unwrap_or_else(|error| panic!("{}: {error}", card.name));
            let mut found = Vec::new();
            names(&formula, &mut found);
            for name in &found {
                let own = card.given.iter().any(|field| field.key == *name) || *name == "PI";
                assert!(own, "{}: {name} is no input", card.name);
            }
            for field in card.given {
                assert!(found.contains(&field.key), "{}: {} is not used", card.name, field.key);
            }
            formulas += 1;
        }
        assert!(formulas > 30, "{formulas}");
    }

    #[test]
    fn no_two_rules_share_a_name_and_each_name_has_a_family() {
        let mut seen = Vec::new();
        for name in all().map(|listed| listed.card.name) {
            assert!(!seen.contains(&name), "{name} stands twice");
            let (family, rest) = name.split_once('/').unwrap_or_else(|| panic!("{name} has no family"));
            assert!(!family.is_empty() && !rest.is_empty() && !rest.contains('/'), "{name}");
            seen.push(name);
        }
    }

    #[test]
    fn no_input_is_called_like_a_column_of_a_case_table() {
        for card in all().map(|listed| listed.card) {
            for field in card.given {
                assert!(!case::OWN_COLUMNS.contains(&field.key), "{}: {}", card.name, field.key);
            }
        }
    }

    #[test]
    fn a_rule_is_found_by_its_name_and_a_slip_finds_the_nearest() {
        assert_eq!(named("units/length").unwrap().card.name, "units/length");
        assert_eq!(named("asce7-16/wall-coeficient").unwrap_err(), Some("asce7-16/wall-coefficient"));
        assert_eq!(named("wall-coefficient").unwrap_err(), Some("asce7-16/wall-coefficient"));
        assert_eq!(named("%%%").unwrap_err(), None);
    }

    fn change(solidity: f64, windows: f64) -> Result<f64, OutOfRange> {
        OpeningsChange {
            solidity,
            window_width: inches(8.0),
            window_height: inches(5.0),
            windows_per_bay: windows,
            bay_width: feet(10.0),
            cloth_height: feet(9.0),
        }
        .work(&mut Blank)
    }

    #[test]
    fn a_quarter_cut_out_of_solid_cloth_takes_an_eighth_off_the_factor() {
        // 1 − (1 − ¾)^1.5 is 7/8 by hand.
        let quarter = OpeningsChange {
            solidity: 1.0,
            window_width: feet(3.0),
            window_height: feet(1.5),
            windows_per_bay: 2.0,
            bay_width: feet(6.0),
            cloth_height: feet(6.0),
        };
        assert!((quarter.work(&mut Blank).unwrap() + 0.125).abs() < 1e-15);
    }

    #[test]
    fn windows_larger_than_the_cloth_and_cloth_of_no_solidity_are_refused() {
        assert!(change(0.95, 324.0).is_ok_and(|change| (change + 1.0).abs() < 1e-12));
        assert!(change(0.95, 324.1).is_err());
        assert!(change(0.95, -1.0).is_err());
        assert!(change(0.0, 2.0).is_err());
        assert!(change(1.01, 2.0).is_err());
        let pair = |one: f64, other: f64| OpeningsChange {
            solidity: 0.9,
            window_width: inches(8.0 * one),
            window_height: inches(5.0 * one),
            windows_per_bay: 1.0,
            bay_width: feet(10.0 * other),
            cloth_height: feet(9.0 * other),
        };
        assert!(pair(1.0, 1.0).work(&mut Blank).is_ok());
        for (wrong, what) in [(pair(-1.0, 1.0), "window width"), (pair(1.0, -1.0), "bay width")] {
            assert_eq!(wrong.work(&mut Blank).unwrap_err().what, what);
        }
        let height = OpeningsChange { cloth_height: feet(0.0), ..pair(1.0, 1.0) };
        assert_eq!(height.work(&mut Blank).unwrap_err().what, "cloth height");
        let height = OpeningsChange { window_height: feet(0.0), ..pair(1.0, 1.0) };
        assert_eq!(height.work(&mut Blank).unwrap_err().what, "window height");
    }

    proptest! {
        #[test]
        fn more_windows_never_load_more_and_relieve_less_than_the_cloth_they_take(solidity in 0.7..=1.0_f64, windows in 0.0..30.0_f64) {
            let here = change(solidity, windows).unwrap();
            prop_assert!(here <= 0.0);
            prop_assert!(change(solidity, windows + 1.0).unwrap() < here);
            let share = windows * 40.0 / (120.0 * 108.0);
            prop_assert!(here >= -share - 1e-12);
        }
    }
}
