//! Tension of the gross section: chapter D, without holes or welds at its ends.

use super::DOCUMENT;
use crate::rule;
use crate::source::Clause;
use crate::units::{Area, Force, Pressure};

/// Yielding of the gross section.
pub const D2_1: Clause = DOCUMENT.at("D2(a), Eq. D2-1").from_memory();

rule! {
    /// Tensile strength for yielding of the gross section.
    TensileYield, "aisc360-16/d2-1", D2_1;
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    /// gross area
    area: Area = "A_g";
    force "P_n": Force = yield_strength * area
}
rule! {
    /// Tensile strength with its resistance factor.
    DesignTension, "aisc360-16/design-tension", DOCUMENT.at("D2(a)").from_memory();
    /// resistance factor
    resistance: f64 = "φ";
    /// nominal strength
    nominal: Force = "P_n";
    force "φP_n": Force = resistance * nominal
}
rule! {
    /// Tensile strength allowed by the other format of the specification.
    AllowableTension, "aisc360-16/allowable-tension", DOCUMENT.at("D2(a)").from_memory();
    /// nominal strength
    nominal: Force = "P_n";
    /// safety factor
    safety: f64 = "Ω";
    force "P_n/Ω": Force = nominal / safety
}
