//! What a row of cloth asks of the rail it is tied to. What the rail carries is asked of its section.

use super::{FasteningError, above_nought, not_below_nought};
use crate::rule;
use crate::source::{Clause, Document, STATICS, Seen};
use crate::units::{Force, Length, LineLoad, Moment, Powers, Pressure};
use crate::workings::{Ledger, Listed};

static CONTINUOUS: Document = Document {
    short: "continuous beams",
    title: "Civil Engineering Formulas, T. G. Hicks, Table 2.1: uniformly loaded continuous beams over equal spans",
    seen: Seen::SecondHand("a page of the book on the web"),
};

const INSIDE: Clause = CONTINUOUS.at("Table 2.1, 3/28 over the second of five supports");

rule! {
    /// Load of a row of cloth on its rail.
    RailLoad, "fastening/rail-load", STATICS.at("pressure on the strip of a row");
    /// pressure
    pressure: Pressure = "p";
    /// strip of cloth the row holds
    strip: Length = "b";
    load "w": LineLoad = pressure * strip
}
rule! {
    /// Moment of a rail beside a splice: it passes no moment on, and the span stands alone.
    SpliceMoment, "fastening/rail-moment-beside-splice", CONTINUOUS.at("Table 2.1, one span");
    /// load
    load: LineLoad = "w";
    /// from support to support
    span: Length = "L";
    moment "M": Moment = load * span.squared() / 8.0
}
rule! {
    /// Moment of a rail that goes on: the largest of four or more equal spans.
    InsideMoment, "fastening/rail-moment-inside", INSIDE;
    /// load
    load: LineLoad = "w";
    /// from support to support
    span: Length = "L";
    moment "M": Moment = 0.107 * load * span.squared()
}

rule! {
    /// Shear of a rail beside a splice.
    SpliceShear, "fastening/rail-shear-beside-splice", CONTINUOUS.at("Table 2.1, one span");
    /// load
    load: LineLoad = "w";
    /// from support to support
    span: Length = "L";
    shear "V": Force = load * span / 2.0
}
rule! {
    /// Shear of a rail that goes on: the largest of four or more equal spans.
    InsideShear, "fastening/rail-shear-inside", CONTINUOUS.at("Table 2.1, 17/28 beside the second of five supports");
    /// load
    load: LineLoad = "w";
    /// from support to support
    span: Length = "L";
    shear "V": Force = 17.0 / 28.0 * load * span
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<RailLoad>(),
    Listed::of::<SpliceMoment>(),
    Listed::of::<InsideMoment>(),
    Listed::of::<SpliceShear>(),
    Listed::of::<InsideShear>(),
];

/// How a span of rail goes on at its ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Span {
    /// A splice stands at one of its ends, or it ends there.
    BesideSplice,
    /// The rail goes on at both ends, over four spans or more.
    Inside,
}

impl Span {
    /// The largest moment of a rail under an even load.
    pub fn moment(self, load: LineLoad, span: Length, ledger: &mut impl Ledger) -> Moment {
        match self {
            Self::BesideSplice => SpliceMoment { load, span }.work(ledger),
            Self::Inside => InsideMoment { load, span }.work(ledger),
        }
    }

    /// Its largest shear.
    pub fn shear(self, load: LineLoad, span: Length, ledger: &mut impl Ledger) -> Force {
        match self {
            Self::BesideSplice => SpliceShear { load, span }.work(ledger),
            Self::Inside => InsideShear { load, span }.work(ledger),
        }
    }
}

/// The largest moment of a rail under a row of cloth.
///
/// # Errors
/// If the span is not above 0, or the pressure or strip below it.
pub fn moment(
    pressure: Pressure,
    strip: Length,
    span: Length,
    which: Span,
    ledger: &mut impl Ledger,
) -> Result<Moment, FasteningError> {
    let pressure = not_below_nought("the pressure", pressure)?;
    let strip = not_below_nought("the strip of cloth", strip)?;
    let span = above_nought("the span of the rail", span)?;
    let load = RailLoad { pressure, strip }.work(ledger);
    Ok(which.moment(load, span, ledger))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Pure, feet, pound_feet, pounds, psf};
    use crate::workings::Blank;
    use proptest::prelude::*;

    fn pound_foot(which: Span) -> f64 {
        let found = moment(psf(10.0), feet(4.5), feet(10.0), which, &mut Blank).unwrap();
        (found / pound_feet(1.0)).pure()
    }

    #[test]
    fn a_rail_beside_a_splice_bends_a_sixth_more_than_one_that_goes_on() {
        assert!((pound_foot(Span::BesideSplice) - 562.5).abs() < 1e-9);
        assert!((pound_foot(Span::Inside) - 481.5).abs() < 1e-9);
    }

    #[test]
    fn a_rail_beside_a_splice_shears_by_half_its_load_and_one_that_goes_on_by_its_support_moment_more() {
        // 10 psf on 4.5 ft over 10 ft: 450 lb. Four spans have 3/28 w L² over the second support.
        let load = psf(10.0) * feet(4.5);
        let pounds = |which: Span| (which.shear(load, feet(10.0), &mut Blank) / pounds(1.0)).pure();
        assert!((pounds(Span::BesideSplice) - 225.0).abs() < 1e-9);
        assert!((pounds(Span::Inside) - 450.0 * (0.5 + 3.0 / 28.0)).abs() < 1e-9);
    }

    /// Moments over the supports of equal spans by the theorem of three moments, in units of w L².
    fn over_supports(spans: usize) -> Vec<f64> {
        // M₍ᵢ₋₁₎ + 4 Mᵢ + M₍ᵢ₊₁₎ = −½, the outer two 0: solved by sweeping until nothing moves.
        let mut moments = vec![0.0_f64; spans + 1];
        for _ in 0..500 {
            for at in 1..spans {
                moments[at] = (-0.5 - moments[at - 1] - moments[at + 1]) / 4.0;
            }
        }
        moments
    }

    #[test]
    fn no_rail_of_four_spans_or_more_bends_more_than_0_107() {
        let largest = |spans| over_supports(spans).into_iter().fold(0.0_f64, |most, one| most.max(-one));
        assert!((largest(4) - 3.0 / 28.0).abs() < 1e-12);
        for spans in 4..40 {
            assert!(largest(spans) < 0.107_15, "{spans}");
        }
        assert!((largest(2) - 0.125).abs() < 1e-12 && (largest(3) - 0.1).abs() < 1e-12);
    }

    #[test]
    fn spans_that_are_none_are_refused() {
        assert!(moment(psf(1.0), feet(1.0), feet(0.0), Span::Inside, &mut Blank).is_err());
        assert!(moment(psf(-1.0), feet(1.0), feet(1.0), Span::Inside, &mut Blank).is_err());
        assert!(moment(psf(1.0), feet(-1.0), feet(1.0), Span::Inside, &mut Blank).is_err());
    }

    proptest! {
        #[test]
        fn a_longer_span_or_a_wider_strip_never_bends_less(span in 1.0..20.0_f64, strip in 0.1..10.0_f64, more in 1.0..2.0_f64) {
            for which in [Span::Inside, Span::BesideSplice] {
                let of = |span: f64, strip: f64| moment(psf(10.0), feet(strip), feet(span), which, &mut Blank).unwrap();
                prop_assert!(of(span * more, strip) >= of(span, strip));
                prop_assert!(of(span, strip * more) >= of(span, strip));
            }
        }
    }
}
