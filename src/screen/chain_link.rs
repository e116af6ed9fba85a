//! Chain link: solidity by the three definitions in use, wire by its gauge, and the catalogue of what is woven.

use super::PROJECTION;
use crate::rule;
use crate::source::{Catalogue, CatalogueError, Clause, Document, Seen};
use crate::units::{Length, Powers, Pressure, PressurePerDepth, Pure, inches};
use crate::workings::{Blank, Ledger, Listed, OutOfRange, within};
use std::f64::consts::PI;
use std::sync::LazyLock;

const FILE: &str = include_str!("catalogue/chain-link-2026.csv");

/// Steel wire gauges of chain link.
const GAUGES: Clause = Clause {
    document: &Document {
        short: "ASTM F668-99a",
        title: "ASTM F668-99a, polymer-coated chain-link fabric, Table 2",
        seen: Seen::SecondHand("a mirror of its Table 2 and two vendor pages"),
    },
    place: "Table 2, core wire",
    seen: Seen::SecondHand("a mirror of its Table 2 and two vendor pages"),
};
const CENTRES: Clause = PROJECTION.at("two families of wires, mesh from centre to centre");
const TWICE: Clause = PROJECTION.at("two families of wires, each crossing counted twice");
const SPREAD: Clause = PROJECTION.at("definitions of the mesh");

rule! {
    /// Solidity of chain link from its mesh, measured clear between parallel wires, and its wire.
    ChainLinkSolidity, "screen/chain-link-solidity", PROJECTION.at("two families of wires");
    /// mesh, clear between parallel wires
    mesh: Length as Small = "M";
    /// wire over its coating
    wire: Length as Small = "d";
    solidity "s": f64 as Coefficient = 1.0 - (mesh / (mesh + wire)).pure().squared()
}
rule! {
    /// Solidity of chain link if its mesh were measured from centre to centre of parallel wires.
    CentreSolidity, "screen/chain-link-solidity-centres", CENTRES;
    /// mesh, from centre to centre of parallel wires
    mesh: Length as Small = "M";
    /// wire over its coating
    wire: Length as Small = "d";
    solidity "s_c": f64 as Coefficient = 1.0 - (1.0 - (wire / mesh).pure()).squared()
}
rule! {
    /// Solidity of chain link as calculations in use have it: twice wire over mesh, every crossing counted twice.
    TwiceSolidity, "screen/chain-link-solidity-twice", TWICE;
    /// mesh
    mesh: Length as Small = "M";
    /// wire over its coating
    wire: Length as Small = "d";
    solidity "s_2": f64 as Coefficient = 2.0 * (wire / mesh).pure()
}
rule! {
    /// By what share the greatest of the three definitions of a mesh's solidity lies above the least.
    ///
    /// The clear opening is what the standards' wording means, from memory, and what is worked with; the others are
    /// heavier by this share on bare chain link, and by next to nothing behind cloth.
    DefinitionSpread, "screen/chain-link-definitions", SPREAD;
    /// solidity by the clear opening
    clear: f64 as Coefficient = "s";
    /// solidity by centre to centre
    centres: f64 as Coefficient = "s_c";
    /// solidity by twice wire over mesh
    twice: f64 as Coefficient = "s_2";
    spread "Δs": f64 as Percent = clear.max(centres).max(twice) / clear.min(centres).min(twice) - 1.0
}
rule! {
    /// Weight of chain link for each area: two families of straight wires; bends and knuckles come on top.
    ChainLinkWeight, "screen/chain-link-weight", PROJECTION.at("two families of wires, their volume");
    /// mesh, clear between parallel wires
    mesh: Length as Small = "M";
    /// wire over its coating
    wire: Length as Small = "d";
    /// weight of the wire for each volume
    unit_weight: PressurePerDepth = "γ";
    weight "g_m": Pressure = unit_weight * PI * wire.squared() / (2.0 * (mesh + wire))
}
rule! {
    /// Wire of a steel wire gauge, bare: for wind its coating comes on top.
    ///
    /// # Range
    /// Gauges 6, 9, 11 and 11-1/2.
    WireOfGauge, "screen/wire-of-gauge", GAUGES;
    /// steel wire gauge
    gauge: f64 = "G";
    wire "d": Length as Small
}
impl WireOfGauge {
    /// Looks the gauge up.
    ///
    /// # Errors
    /// If it is no gauge of chain link.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let next = WIRES.iter().find(|(gauge, _)| *gauge >= self.gauge).or(WIRES.last());
        let (listed, wire) = *next.expect("the list of gauges is not empty");
        within(LISTED, GAUGES, self.gauge, listed, listed)?;
        Ok(self.keep(ledger, inches(wire)))
    }
}
/// The rules of this part by name.
pub(super) const RULES: &[Listed] = &[
    Listed::of::<ChainLinkSolidity>(),
    Listed::of::<CentreSolidity>(),
    Listed::of::<TwiceSolidity>(),
    Listed::of::<DefinitionSpread>(),
    Listed::of::<ChainLinkWeight>(),
    Listed::of::<WireOfGauge>(),
];

const LISTED: &str = "steel wire gauge (6, 9, 11 and 11-1/2 are listed)";
/// Gauges of chain link and their wires in inches.
const WIRES: &[(f64, f64)] = &[(6.0, 0.192), (9.0, 0.148), (11.0, 0.120), (11.5, 0.113)];

/// The wire of a steel wire gauge: 6, 9, 11 or 11-1/2, and where it stands.
#[must_use]
pub fn wire_of_gauge(gauge: f64) -> Option<(Length, Clause)> {
    Some((WireOfGauge { gauge }.work(&mut Blank).ok()?, GAUGES))
}

/// Chain link as it is worked: mesh and wire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChainLink {
    /// Mesh, clear between parallel wires.
    pub mesh: Length,
    /// Wire over its coating.
    pub wire: Length,
}

impl ChainLink {
    /// Its solidity.
    pub fn solidity(self, ledger: &mut impl Ledger) -> f64 {
        ChainLinkSolidity { mesh: self.mesh, wire: self.wire }.work(ledger)
    }

    /// By what share the three definitions of its solidity differ.
    pub fn definitions(self, ledger: &mut impl Ledger) -> f64 {
        let Self { mesh, wire } = self;
        let clear = self.solidity(&mut Blank);
        let centres = CentreSolidity { mesh, wire }.work(ledger);
        let twice = TwiceSolidity { mesh, wire }.work(ledger);
        DefinitionSpread { clear, centres, twice }.work(ledger)
    }
}

/// A chain link of the catalogue.
#[derive(Debug, Clone, PartialEq)]
pub struct Woven {
    /// Mesh and wire gauge in words.
    pub name: String,
    /// Mesh and wire over its coating.
    pub link: ChainLink,
    /// How it is coated.
    pub coat: String,
}

static WOVEN: LazyLock<Vec<Woven>> = LazyLock::new(|| {
    let read = || -> Result<Vec<Woven>, CatalogueError> {
        let rows = Catalogue::read(FILE)?.rows;
        rows.iter()
            .map(|row| {
                let number = |column: &str| row.number(column);
                let (wire, _) = wire_of_gauge(number("gauge")?).ok_or_else(|| {
                    CatalogueError::Row(format!("no wire for {}", row.text("name").unwrap_or("")))
                })?;
                Ok(Woven {
                    name: row.text("name")?.to_owned(),
                    link: ChainLink {
                        mesh: inches(number("mesh_in")?),
                        wire: wire + inches(2.0 * number("coat_in")?),
                    },
                    coat: row.text("coat")?.to_owned(),
                })
            })
            .collect()
    };
    read().expect("the catalogue in the program is read by a test")
});

/// Every chain link of the catalogue.
#[must_use]
pub fn woven() -> &'static [Woven] {
    &WOVEN
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Quantity;
    use proptest::prelude::*;

    fn of(name: &str) -> &'static Woven {
        woven().iter().find(|one| one.name == name).unwrap()
    }

    /// Worked beforehand with another program: by the clear opening, from centre to centre, twice wire over mesh.
    #[test]
    fn the_three_definitions_of_a_mesh_differ_by_a_tenth_to_a_fifth() {
        for (name, clear, centres, twice) in [
            ("2 in 9 gauge", 0.133, 0.143, 0.148),
            ("2 in 11 gauge", 0.110, 0.116, 0.120),
            ("1-3/4 in 9 gauge", 0.150, 0.162, 0.169),
            ("1-3/4 in 11 gauge", 0.124, 0.132, 0.137),
            ("2 in 6 gauge", 0.168, 0.183, 0.192),
        ] {
            let ChainLink { mesh, wire } = of(name).link;
            let found = [
                ChainLinkSolidity { mesh, wire }.work(&mut Blank),
                CentreSolidity { mesh, wire }.work(&mut Blank),
                TwiceSolidity { mesh, wire }.work(&mut Blank),
            ];
            for (ours, printed) in found.iter().zip([clear, centres, twice]) {
                assert!((ours - printed).abs() < 0.000_51, "{name}: {ours} {printed}");
            }
            let spread = of(name).link.definitions(&mut Blank);
            assert!((spread - (found[2] / found[0] - 1.0)).abs() < 1e-12 && (0.08..0.20).contains(&spread));
        }
    }

    #[test]
    fn a_coat_makes_the_wire_thicker_on_both_sides() {
        let bare = of("2 in 9 gauge").link.wire;
        assert!((of("2 in 9 gauge fused").link.wire - bare - inches(0.014)).si().abs() < 1e-12);
        assert!((of("2 in 9 gauge extruded").link.wire - bare - inches(0.040)).si().abs() < 1e-12);
        let (coated, solidity) = (of("2 in 9 gauge extruded").link.solidity(&mut Blank), 0.1645);
        assert!((coated - solidity).abs() < 5e-5);
        assert_eq!((of("1 in 11 gauge fused").coat.as_str(), woven().len()), ("fused", 36));
    }

    #[test]
    fn a_gauge_that_chain_link_is_not_made_of_is_refused_and_the_next_named() {
        let wrong = |gauge| WireOfGauge { gauge }.work(&mut Blank).unwrap_err().to_string();
        assert!(wrong(10.0).contains("10.000 is below 11.000"), "{}", wrong(10.0));
        assert!(wrong(12.0).contains("12.000 is above 11.500"), "{}", wrong(12.0));
        assert!(wire_of_gauge(f64::NAN).is_none() && wire_of_gauge(9.0).is_some());
    }

    proptest! {
        /// A second way: the share of a diamond's area that two bands of wire cover, by counting points.
        #[test]
        fn solidity_of_chain_link_is_the_share_of_points_covered(mesh in 0.5..3.0_f64, wire in 0.05..0.4_f64) {
            let pitch = mesh + wire;
            let (mut covered, steps) = (0_u32, 400_u32);
            for i in 0..steps {
                for j in 0..steps {
                    let at = |k: u32| (f64::from(k) + 0.5) / f64::from(steps) * pitch;
                    covered += u32::from(at(i) < wire || at(j) < wire);
                }
            }
            let counted = f64::from(covered) / f64::from(steps * steps);
            let ours = ChainLinkSolidity { mesh: inches(mesh), wire: inches(wire) }.work(&mut Blank);
            prop_assert!((ours - counted).abs() < 0.006);
        }

        /// The mesh from centre to centre is the clear mesh and one wire.
        #[test]
        fn the_two_definitions_meet_where_the_meshes_are_the_same_cloth(mesh in 0.5..3.0_f64, wire in 0.05..0.4_f64) {
            let clear = ChainLinkSolidity { mesh: inches(mesh), wire: inches(wire) }.work(&mut Blank);
            let centres = CentreSolidity { mesh: inches(mesh + wire), wire: inches(wire) }.work(&mut Blank);
            prop_assert!((clear - centres).abs() < 1e-12);
        }

        #[test]
        fn the_definition_kept_is_the_least_of_the_three(mesh in 0.8..3.0_f64, wire in 0.05..0.3_f64) {
            let link = ChainLink { mesh: inches(mesh), wire: inches(wire) };
            let least = link.solidity(&mut Blank);
            let (mesh, wire) = (link.mesh, link.wire);
            let centres = CentreSolidity { mesh, wire }.work(&mut Blank);
            let twice = TwiceSolidity { mesh, wire }.work(&mut Blank);
            prop_assert!(centres >= least && twice >= least);
            prop_assert!(link.definitions(&mut Blank) >= 0.0);
        }
    }
}
