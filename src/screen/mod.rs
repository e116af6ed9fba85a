//! Cloth and chain link: solidity, layers, windows cut in, what they hold back of a wall's load, and the catalogue of
//! cloths.

mod cloth;
pub mod loss;

pub use cloth::{Cloth, ClothWeight, cloths, named, nearest_name, weight_of};

use crate::rule;
use crate::source::{Clause, Document, STATICS, Seen};
use crate::units::{Area, Length, Powers, Pure, inches};
use crate::workings::{Ledger, Listed};

static PROJECTION: Document = Document {
    short: "geometry",
    title: "Solid area of two families of parallel wires; mesh is the clear opening (ASTM wording from memory)",
    seen: Seen::FirstHand,
};
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
    /// Solidity of two layers one behind the other.
    CombinedSolidity, "screen/combined-solidity", PROJECTION.at("random overlay of two layers");
    /// solidity of the first layer
    first: f64 as Coefficient = "s_1";
    /// solidity of the second layer
    second: f64 as Coefficient = "s_2";
    solidity "ε": f64 as Coefficient = 1.0 - (1.0 - first) * (1.0 - second)
}
rule! {
    /// Share of the cloth that windows cut away.
    WindowShare, "screen/window-share", STATICS.at("areas");
    /// area of one window
    window: Area as LargeArea = "A_w";
    /// windows in a bay
    count: f64 = "n";
    /// area of the cloth in a bay
    cloth: Area as LargeArea = "A_c";
    share "a": f64 as Coefficient = count * (window / cloth).pure()
}
rule! {
    /// Solidity of cloth with windows cut in.
    WindowedSolidity, "screen/windowed-solidity", STATICS.at("areas");
    /// solidity before
    solidity: f64 as Coefficient = "s";
    /// share cut away
    share: f64 as Coefficient = "a";
    left "s'": f64 as Coefficient = solidity * (1.0 - share)
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<ChainLinkSolidity>(),
    Listed::of::<CombinedSolidity>(),
    Listed::of::<WindowShare>(),
    Listed::of::<WindowedSolidity>(),
];

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
}

/// The wire of a steel wire gauge: 6, 9, 11 or 11-1/2, and where it stands.
#[must_use]
pub fn wire_of_gauge(gauge: f64) -> Option<(Length, Clause)> {
    let wire = match gauge {
        6.0 => 0.192,
        9.0 => 0.148,
        11.0 => 0.120,
        11.5 => 0.113,
        _ => return None,
    };
    Some((inches(wire), GAUGES))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workings::Blank;
    use proptest::prelude::*;

    #[test]
    fn the_usual_court_fabric_and_closed_mesh_make_0_95749() {
        let (wire, _) = wire_of_gauge(9.0).unwrap();
        let second = ChainLink { mesh: inches(1.75), wire }.solidity(&mut Blank);
        let combined = CombinedSolidity { first: 0.95, second }.work(&mut Blank);
        assert!((combined - 0.95749).abs() < 5e-6, "{combined}");
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

        #[test]
        fn a_second_layer_never_opens_the_first(first in 0.0..=1.0_f64, second in 0.0..=1.0_f64) {
            let both = CombinedSolidity { first, second }.work(&mut Blank);
            prop_assert!(both >= first - 1e-15 && both >= second - 1e-15 && both <= 1.0);
        }
    }
}
