//! AISI S100-16: bending of a cold-formed shape whose section modulus is given by its maker.
//!
//! Roll-formed C, H and hat posts buckle in ways that only their maker's tests or a section analysis can tell; the
//! modulus given must already be the effective one. Twist is not worked: the load of a screen misses the shear centre
//! of an open post.

use super::Format;
use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{Moment, Pressure, SectionModulus};
use crate::workings::{Ledger, Listed};

/// The document.
pub static DOCUMENT: Document = Document {
    short: "AISI S100-16",
    title: "AISI S100-16, North American Specification for the Design of Cold-Formed Steel Structural Members",
    seen: Seen::Memory,
};

/// Where first yield stands.
pub const FIRST_YIELD: Clause = DOCUMENT.at("F2.1, initiation of yielding").from_memory();

const RESISTANCE: Stated<f64> =
    Stated { value: 0.90, because: "AISI S100-16 F1, from memory: resistance factor in bending" };
const SAFETY: Stated<f64> =
    Stated { value: 1.67, because: "AISI S100-16 F1, from memory: safety factor in bending" };

rule! {
    /// Bending strength at first yield of a shape with its effective section modulus.
    FirstYield, "aisi-s100-16/first-yield", FIRST_YIELD;
    /// effective section modulus
    modulus: SectionModulus = "S_e";
    /// yield strength
    yield_strength: Pressure as Stress = "F_y";
    moment "M_n": Moment = modulus * yield_strength
}
rule! {
    /// Bending strength with its resistance factor.
    DesignMoment, "aisi-s100-16/design-moment", DOCUMENT.at("F1").from_memory();
    /// resistance factor
    resistance: f64 = "φ_b";
    /// nominal strength
    nominal: Moment = "M_n";
    moment "φM_n": Moment = resistance * nominal
}
rule! {
    /// Bending strength over its safety factor.
    AllowableMoment, "aisi-s100-16/allowable-moment", DOCUMENT.at("F1").from_memory();
    /// nominal strength
    nominal: Moment = "M_n";
    /// safety factor
    safety: f64 = "Ω_b";
    moment "M_n/Ω": Moment = nominal / safety
}

/// The rules of this edition by name.
pub const RULES: &[Listed] =
    &[Listed::of::<FirstYield>(), Listed::of::<DesignMoment>(), Listed::of::<AllowableMoment>()];

/// Bending strength of a shape with its factor.
pub fn available_moment(
    modulus: SectionModulus,
    yield_strength: Pressure,
    format: Format,
    ledger: &mut impl Ledger,
) -> Moment {
    let nominal = FirstYield { modulus, yield_strength }.work(ledger);
    match format {
        Format::Lrfd => {
            let resistance = ledger.judge("φ_b", RESISTANCE);
            DesignMoment { resistance, nominal }.work(ledger)
        }
        Format::Asd => {
            let safety = ledger.judge("Ω_b", SAFETY);
            AllowableMoment { nominal, safety }.work(ledger)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Pure, Quantity};
    use crate::units::{SectionModulus, ksi, pound_feet};
    use crate::workings::Blank;

    #[test]
    fn one_cubic_inch_of_36_ksi_yields_at_3000_pound_feet_and_the_formats_part_by_their_factors() {
        let inch = 0.0254_f64.powi(3);
        let one = SectionModulus::from_si(inch);
        let at = |format| (available_moment(one, ksi(36.0), format, &mut Blank) / pound_feet(1.0)).pure();
        assert!((at(Format::Lrfd) - 2700.0).abs() < 1e-9);
        assert!((at(Format::Asd) * 1.67 - 3000.0).abs() < 1e-9);
    }
}
