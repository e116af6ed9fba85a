//! Cloth and chain link: solidity, layers, windows cut in, what they hold back of a wall's load, and the catalogue of
//! cloths.

mod chain_link;
mod cloth;
pub mod loss;

pub use chain_link::{
    CentreSolidity, ChainLink, ChainLinkSolidity, ChainLinkWeight, DefinitionSpread, TwiceSolidity,
    WireOfGauge, Woven, wire_of_gauge, woven,
};
pub use cloth::{Cloth, Unmeasured, all_cloths, cloths, named, nearest_name, unmeasured};

use crate::rule;
use crate::source::{Document, STATICS, Seen};
use crate::units::{Area, Pure};
use crate::workings::Listed;

static PROJECTION: Document = Document {
    short: "geometry",
    title: "Solid area of two families of parallel wires; mesh is the clear opening (ASTM wording from memory)",
    seen: Seen::FirstHand,
};

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

/// The rules of chain link by name.
pub const CHAIN_LINK_RULES: &[Listed] = chain_link::RULES;

/// The rules of this module by name.
pub const RULES: &[Listed] =
    &[Listed::of::<CombinedSolidity>(), Listed::of::<WindowShare>(), Listed::of::<WindowedSolidity>()];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::inches;
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
        #[test]
        fn a_second_layer_never_opens_the_first(first in 0.0..=1.0_f64, second in 0.0..=1.0_f64) {
            let both = CombinedSolidity { first, second }.work(&mut Blank);
            prop_assert!(both >= first - 1e-15 && both >= second - 1e-15 && both <= 1.0);
        }
    }
}
