//! Which share of a code's wind a strength rule is held against.

use crate::member::Format;
use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{Force, Moment};
use crate::wind::Level;
use crate::workings::{Ledger, Listed};

static COMBINATIONS: Document = Document {
    short: "ASCE 7 chapter 2",
    title: "ASCE/SEI 7-10, 7-16 and 7-22, chapter 2, combinations of loads",
    seen: Seen::Memory,
};
const ALLOWABLE: Clause = COMBINATIONS.at("2.4.1");

const SERVICE: Stated<f64> = Stated {
    value: 0.6,
    because: "ASCE 7 2.4.1, from memory: allowable stress design is held against 0.6 of the wind",
};

rule! {
    /// Moment at the level of allowable stress design.
    ServiceMoment, "loads/service-moment", ALLOWABLE;
    /// factor of the wind
    factor: f64 = "f_W";
    /// moment from the whole wind
    moment: Moment = "M_W";
    service "M": Moment = factor * moment
}
rule! {
    /// Shear at the level of allowable stress design.
    ServiceShear, "loads/service-shear", ALLOWABLE;
    /// factor of the wind
    factor: f64 = "f_W";
    /// shear from the whole wind
    shear: Force = "V_W";
    service "V": Force = factor * shear
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[Listed::of::<ServiceMoment>(), Listed::of::<ServiceShear>()];

/// Moment and shear of a code's wind at the level that a strength of this format is held against.
pub fn at_level(
    level: Level,
    format: Format,
    (moment, shear): (Moment, Force),
    ledger: &mut impl Ledger,
) -> (Moment, Force) {
    match (level, format) {
        (Level::Strength, Format::Lrfd) => (moment, shear),
        (Level::Strength, Format::Asd) => {
            let factor = ledger.judge("f_W", SERVICE);
            (ServiceMoment { factor, moment }.work(ledger), ServiceShear { factor, shear }.work(ledger))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{pound_feet, pounds};
    use crate::workings::Blank;

    #[test]
    fn strength_design_takes_the_whole_wind_and_allowable_stress_design_six_tenths() {
        let whole = (pound_feet(1000.0), pounds(200.0));
        let at = |format| at_level(Level::Strength, format, whole, &mut Blank);
        assert_eq!(at(Format::Lrfd), whole);
        let (moment, shear) = at(Format::Asd);
        assert!(
            (moment - pound_feet(600.0)).value.abs() < 1e-9 && (shear - pounds(120.0)).value.abs() < 1e-9
        );
    }
}
