//! Beams by statics: cantilevers, equal spans, and what an axial force adds.

use crate::rule;
use crate::source::{Clause, STATICS};
use crate::units::{Force, Length, LineLoad, Moment, Powers, Pressure, Pure, Quantity, SecondMoment};
use crate::workings::{Ledger, Listed, OutOfRange, within};
use std::f64::consts::PI;

const CANTILEVER: Clause = STATICS.at("cantilever");
const EQUAL_SPANS: Clause = STATICS.at("equation of three moments, equal spans under an even load");
const ELASTIC_LINE: Clause = STATICS.at("elastic line of a cantilever under an axial force");

rule! {
    /// Deflection of the tip of a cantilever under an even load.
    EvenTip, "beam/cantilever-even-tip", CANTILEVER;
    /// load for each length
    load: LineLoad = "w";
    /// length
    length: Length as Distance = "L";
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// second moment of area
    second_moment: SecondMoment = "I";
    deflection "δ": Length as Small = load * length.to_the_fourth() / (8.0 * elastic * second_moment)
}
rule! {
    /// Moment at the foot of a cantilever under a load that grows from nothing at the foot to the tip.
    GrowingMoment, "beam/cantilever-growing-moment", CANTILEVER;
    /// load for each length at the tip
    load: LineLoad = "w";
    /// length
    length: Length as Distance = "L";
    moment "M": Moment = load * length.squared() / 3.0
}
rule! {
    /// Deflection of the tip of a cantilever under a load that grows from nothing at the foot to the tip.
    GrowingTip, "beam/cantilever-growing-tip", CANTILEVER;
    /// load for each length at the tip
    load: LineLoad = "w";
    /// length
    length: Length as Distance = "L";
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// second moment of area
    second_moment: SecondMoment = "I";
    deflection "δ": Length as Small =
        11.0 * load * length.to_the_fourth() / (120.0 * elastic * second_moment)
}
rule! {
    /// Moment at the foot of a cantilever under a load that falls from the foot to nothing at the tip.
    FallingMoment, "beam/cantilever-falling-moment", CANTILEVER;
    /// load for each length at the foot
    load: LineLoad = "w";
    /// length
    length: Length as Distance = "L";
    moment "M": Moment = load * length.squared() / 6.0
}
rule! {
    /// Deflection of the tip of a cantilever under a load that falls from the foot to nothing at the tip.
    FallingTip, "beam/cantilever-falling-tip", CANTILEVER;
    /// load for each length at the foot
    load: LineLoad = "w";
    /// length
    length: Length as Distance = "L";
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// second moment of area
    second_moment: SecondMoment = "I";
    deflection "δ": Length as Small = load * length.to_the_fourth() / (30.0 * elastic * second_moment)
}
rule! {
    /// Moment at the foot of a cantilever under an even load on a part of it.
    PartMoment, "beam/cantilever-part-moment", CANTILEVER;
    /// load for each length
    load: LineLoad = "w";
    /// where the load begins, from the foot
    from: Length as Distance = "a";
    /// where it ends
    to: Length as Distance = "b";
    moment "M": Moment = load * (to.squared() - from.squared()) / 2.0
}
rule! {
    /// Deflection of the tip of a cantilever under an even load on a part of it.
    PartTip, "beam/cantilever-part-tip", CANTILEVER;
    /// load for each length
    load: LineLoad = "w";
    /// where the load begins, from the foot
    from: Length as Distance = "a";
    /// where it ends
    to: Length as Distance = "b";
    /// length
    length: Length as Distance = "L";
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// second moment of area
    second_moment: SecondMoment = "I";
    deflection "δ": Length as Small = load / (elastic * second_moment)
        * (length * (to.cubed() - from.cubed()) / 6.0 - (to.to_the_fourth() - from.to_the_fourth()) / 24.0)
}
rule! {
    /// Moment at the foot of a cantilever under a load that goes straight from one value to another.
    TrapezoidMoment, "beam/cantilever-trapezoid-moment", CANTILEVER;
    /// load for each length at the foot
    foot: LineLoad = "w_1";
    /// load for each length at the tip
    tip: LineLoad = "w_2";
    /// length
    length: Length as Distance = "L";
    moment "M": Moment = length.squared() * (foot + 2.0 * tip) / 6.0
}
rule! {
    /// Deflection of the tip of a cantilever under a load that goes straight from one value to another.
    TrapezoidTip, "beam/cantilever-trapezoid-tip", CANTILEVER;
    /// load for each length at the foot
    foot: LineLoad = "w_1";
    /// load for each length at the tip
    tip: LineLoad = "w_2";
    /// length
    length: Length as Distance = "L";
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// second moment of area
    second_moment: SecondMoment = "I";
    deflection "δ": Length as Small =
        length.to_the_fourth() * (4.0 * foot + 11.0 * tip) / (120.0 * elastic * second_moment)
}
rule! {
    /// Deflection of the tip of a cantilever with what the give of its foot adds.
    SpringTip, "beam/cantilever-spring-tip", CANTILEVER;
    /// deflection of the tip with a foot that does not turn
    fixed: Length as Small = "δ_f";
    /// moment at the foot
    moment: Moment = "M";
    /// length
    length: Length as Distance = "L";
    /// moment that turns the foot by one radian
    stiffness: Moment = "k";
    deflection "δ": Length as Small = fixed + moment * length / stiffness
}
rule! {
    /// Axial force at which a straight member buckles.
    EulerLoad, "beam/euler-load", STATICS.at("Euler");
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// second moment of area
    second_moment: SecondMoment = "I";
    /// effective length factor: 1 for pinned ends, 2 for a cantilever
    factor: f64 = "K";
    /// length
    length: Length as Distance = "L";
    force "P_cr": Force = PI.squared() * elastic * second_moment / (factor * length).squared()
}
rule! {
    /// By what an axial force multiplies the deflection of a cantilever.
    ///
    /// # Departure
    /// Exact for a shape of a quarter sine; for an even or tip load it is within 1.5 % up to two thirds of P_cr.
    Growth, "beam/p-delta-growth", STATICS.at("P-delta, first term of the series");
    /// axial force
    force: Force = "P";
    /// axial force at which it buckles
    buckling: Force = "P_cr";
    factor "B": f64
}
impl Growth {
    /// Works 1/(1 − P/P_cr).
    ///
    /// # Errors
    /// If the force is P_cr or more, or below 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { force, buckling } = self;
        within("axial force", ELASTIC_LINE, force, Force::from_si(0.0), buckling)?;
        let share = (force / buckling).pure();
        within("P/P_cr", ELASTIC_LINE, share, 0.0, 1.0 - f64::EPSILON)?;
        Ok(self.keep(ledger, 1.0 / (1.0 - share)))
    }
}
rule! {
    /// Moment at the foot of a cantilever with what an axial force on its tip adds.
    SecondOrderMoment, "beam/p-delta-moment", STATICS.at("equilibrium of the bent cantilever");
    /// moment at the foot without it
    moment: Moment = "M_0";
    /// axial force on the tip
    force: Force = "P";
    /// deflection of the tip, grown
    deflection: Length as Small = "δ";
    total "M": Moment = moment + force * deflection
}
rule! {
    /// Moment at the foot of a cantilever under a side load and an axial force on its tip, by the elastic line.
    TipLoadMoment, "beam/p-delta-tip-load-moment", ELASTIC_LINE;
    /// side load on the tip
    side: Force = "H";
    /// axial force on the tip
    force: Force = "P";
    /// length
    length: Length as Distance = "L";
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// second moment of area
    second_moment: SecondMoment = "I";
    moment "M": Moment
}
impl TipLoadMoment {
    /// Works H L tan α / α with α = L √(P/(E I)).
    ///
    /// # Errors
    /// If the axial force is not above 0 or not below that at which the cantilever buckles.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Moment, OutOfRange> {
        let Self { side, force, length, elastic, second_moment } = self;
        let angle = bent_angle(force, length, elastic, second_moment)?;
        Ok(self.keep(ledger, side * length * (angle.tan() / angle)))
    }
}
rule! {
    /// Deflection of the tip of a cantilever under a side load and an axial force on it, by the elastic line.
    TipLoadDeflection, "beam/p-delta-tip-load-deflection", ELASTIC_LINE;
    /// side load on the tip
    side: Force = "H";
    /// axial force on the tip
    force: Force = "P";
    /// length
    length: Length as Distance = "L";
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// second moment of area
    second_moment: SecondMoment = "I";
    deflection "δ": Length as Small
}
impl TipLoadDeflection {
    /// Works H L/P (tan α / α − 1) with α = L √(P/(E I)).
    ///
    /// # Errors
    /// If the axial force is not above 0 or not below that at which the cantilever buckles.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { side, force, length, elastic, second_moment } = self;
        let angle = bent_angle(force, length, elastic, second_moment)?;
        Ok(self.keep(ledger, length * ((side / force).pure() * (angle.tan() / angle - 1.0))))
    }
}

fn bent_angle(
    force: Force,
    length: Length,
    elastic: Pressure,
    second_moment: SecondMoment,
) -> Result<f64, OutOfRange> {
    let buckling =
        EulerLoad { elastic, second_moment, factor: 2.0, length }.work(&mut crate::workings::Blank);
    let least = Force::from_si(f64::MIN_POSITIVE);
    within("axial force", ELASTIC_LINE, force, least, buckling * (1.0 - f64::EPSILON))?;
    Ok((force / (elastic * second_moment) * length * length).pure().sqrt())
}

rule! {
    /// Hogging moment over a support of equal spans under an even load, as a share of w L².
    SupportMoment, "beam/equal-spans-support-moment", EQUAL_SPANS;
    /// number of spans
    spans: f64 = "n";
    /// number of the support, the end one being 1
    support: f64 = "i";
    coefficient "m_i": f64 as Coefficient
}
impl SupportMoment {
    /// Works it.
    ///
    /// # Errors
    /// If there are no spans, more than a thousand, or no such support.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let spans = EqualSpans::of(whole("spans", self.spans, 1, MOST_SPANS)?);
        let support = whole("support", self.support, 1, spans.count + 1)?;
        Ok(self.keep(ledger, spans.support_moments[support - 1]))
    }
}
rule! {
    /// Shear at the left end of a span under an even load, as a share of w L, from the moments over its supports.
    SpanShear, "beam/equal-spans-shear", STATICS.at("span under an even load and end moments");
    /// hogging moment over the left support, as a share of w L²
    left: f64 as Coefficient = "m_l";
    /// hogging moment over the right support, as a share of w L²
    right: f64 as Coefficient = "m_r";
    coefficient "v_l": f64 as Coefficient = 0.5 + left - right
}
rule! {
    /// Greatest sagging moment of a span, as a share of w L².
    SagMoment, "beam/equal-spans-sag", STATICS.at("span under an even load and end moments");
    /// shear at the left end, as a share of w L; also where the greatest moment is, as a share of L
    shear: f64 as Coefficient = "v_l";
    /// hogging moment over the left support, as a share of w L²
    left: f64 as Coefficient = "m_l";
    coefficient "m": f64 as Coefficient = shear.squared() / 2.0 - left
}
rule! {
    /// Greatest sagging moment in a span of equal ones under an even load, as a share of w L².
    SpanMoment, "beam/equal-spans-span-moment", EQUAL_SPANS;
    /// number of spans
    spans: f64 = "n";
    /// number of the span, the end one being 1
    span: f64 = "j";
    coefficient "m": f64 as Coefficient
}
impl SpanMoment {
    /// Works it.
    ///
    /// # Errors
    /// If there are no spans, more than a thousand, or no such span.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let spans = EqualSpans::of(whole("spans", self.spans, 1, MOST_SPANS)?);
        let span = whole("span", self.span, 1, spans.count)?;
        let sag = spans.span_moment(span, ledger);
        Ok(self.keep(ledger, sag))
    }
}
rule! {
    /// Reaction of a support of equal spans under an even load, as a share of w L.
    Reaction, "beam/equal-spans-reaction", EQUAL_SPANS;
    /// number of spans
    spans: f64 = "n";
    /// number of the support, the end one being 1
    support: f64 = "i";
    coefficient "r_i": f64 as Coefficient
}
impl Reaction {
    /// Works it.
    ///
    /// # Errors
    /// If there are no spans, more than a thousand, or no such support.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let spans = EqualSpans::of(whole("spans", self.spans, 1, MOST_SPANS)?);
        let support = whole("support", self.support, 1, spans.count + 1)?;
        Ok(self.keep(ledger, spans.reaction(support)))
    }
}
rule! {
    /// Moment of a span from its coefficient.
    LoadMoment, "beam/load-moment", STATICS.at("coefficient of w L²");
    /// coefficient
    coefficient: f64 as Coefficient = "m";
    /// load for each length
    load: LineLoad = "w";
    /// span
    span: Length as Distance = "L";
    moment "M": Moment = coefficient * load * span.squared()
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<EvenTip>(),
    Listed::of::<GrowingMoment>(),
    Listed::of::<GrowingTip>(),
    Listed::of::<FallingMoment>(),
    Listed::of::<FallingTip>(),
    Listed::of::<PartMoment>(),
    Listed::of::<PartTip>(),
    Listed::of::<TrapezoidMoment>(),
    Listed::of::<TrapezoidTip>(),
    Listed::of::<SpringTip>(),
    Listed::of::<EulerLoad>(),
    Listed::of::<Growth>(),
    Listed::of::<SecondOrderMoment>(),
    Listed::of::<TipLoadMoment>(),
    Listed::of::<TipLoadDeflection>(),
    Listed::of::<SupportMoment>(),
    Listed::of::<SpanShear>(),
    Listed::of::<SagMoment>(),
    Listed::of::<SpanMoment>(),
    Listed::of::<Reaction>(),
    Listed::of::<LoadMoment>(),
];

const MOST_SPANS: usize = 1000;

/// A whole number between two others.
fn whole(what: &'static str, number: f64, least: usize, greatest: usize) -> Result<usize, OutOfRange> {
    let count = |number: usize| f64::from(u32::try_from(number).unwrap_or(u32::MAX));
    within(what, EQUAL_SPANS, number, count(least), count(greatest))?;
    // A number between two whole ones is told by the next below.
    within(what, EQUAL_SPANS, number, number.floor(), number.floor())?;
    Ok((least..=greatest).find(|candidate| count(*candidate) == number).unwrap_or(greatest))
}

/// A beam over equal spans under an even load: a rail that runs through.
///
/// # Range
/// Supports that do not give, the same section throughout, the rail whole over every support. Rails of chain link
/// are sleeved: beside a splice a span is to be taken as w L²/8.
#[derive(Debug, Clone, PartialEq)]
pub struct EqualSpans {
    count: usize,
    support_moments: Vec<f64>,
}

impl EqualSpans {
    /// So many spans, 1 at least; the moments over the supports come from the equation of three moments, which for
    /// equal spans under an even load is m₋ + 4 m + m₊ = ½.
    #[must_use]
    pub fn of(spans: usize) -> Self {
        let inner = spans.saturating_sub(1);
        // Down: each diagonal less what the row above leaves; up: the moments.
        let (mut diagonal, mut right) = (vec![4.0_f64; inner], vec![0.5_f64; inner]);
        for row in 1..inner {
            diagonal[row] -= 1.0 / diagonal[row - 1];
            right[row] -= right[row - 1] / diagonal[row - 1];
        }
        let mut support_moments = vec![0.0; spans + 1];
        for row in (0..inner).rev() {
            support_moments[row + 1] = (right[row] - support_moments[row + 2]) / diagonal[row];
        }
        Self { count: spans, support_moments }
    }

    /// Hogging moments over the supports from end to end, as shares of w L².
    #[must_use]
    pub fn support_moments(&self) -> &[f64] {
        &self.support_moments
    }

    /// The greatest sagging moment of a span, the end one being 1, as a share of w L².
    fn span_moment(&self, span: usize, ledger: &mut impl Ledger) -> f64 {
        let (left, right) = (self.support_moments[span - 1], self.support_moments[span]);
        let shear = SpanShear { left, right }.work(ledger);
        SagMoment { shear, left }.work(ledger)
    }

    /// The reaction of a support, the end one being 1, as a share of w L.
    fn reaction(&self, support: usize) -> f64 {
        let moment = |at: usize| self.support_moments[at - 1];
        let before = if support > 1 { 0.5 - moment(support - 1) + moment(support) } else { 0.0 };
        let after = if support <= self.count { 0.5 + moment(support) - moment(support + 1) } else { 0.0 };
        before + after
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{feet, inches, ksi, newtons_per_metre, pounds};
    use crate::workings::Blank;
    use proptest::prelude::*;

    const INCH_4: f64 = 0.0254 * 0.0254 * 0.0254 * 0.0254;

    fn post() -> (Pressure, SecondMoment, Length) {
        (ksi(29_000.0), SecondMoment::from_si(1.4441 * INCH_4), inches(120.0))
    }

    /// A second way: shear, moment, slope and deflection summed strip by strip from the tip and the foot.
    fn by_strips(load: impl Fn(f64) -> f64) -> (f64, f64) {
        let (elastic, second_moment, length) = post();
        let (strips, length) = (20_000, length.si());
        let step = length / f64::from(strips);
        let moment_at = |x: f64, strips: u32| {
            let step = (length - x) / f64::from(strips);
            (0..strips)
                .map(|strip| (f64::from(strip) + 0.5) * step)
                .map(|ahead| load(x + ahead) * ahead * step)
                .sum::<f64>()
        };
        let foot = moment_at(0.0, 20_000);
        // Tip deflection is ∫ M(x) (L − x) dx / EI; moments by their own sums, coarser.
        let mut tip = 0.0;
        for strip in (0..strips).step_by(50) {
            let x = (f64::from(strip) + 25.0) * step;
            tip += moment_at(x, 400) * (length - x) * step * 50.0;
        }
        (foot, tip / (elastic.si() * second_moment.si()))
    }

    #[test]
    fn cantilevers_agree_with_sums_over_strips() {
        let (elastic, second_moment, length) = post();
        let load = newtons_per_metre(1459.0);
        let w = load.si();
        let l = length.si();
        let same = |name: &str, ours: (Option<Moment>, Length), strips: (f64, f64)| {
            if let Some(moment) = ours.0 {
                assert!((moment.si() / strips.0 - 1.0).abs() < 1e-4, "{name}: {moment:?} {strips:?}");
            }
            assert!((ours.1.si() / strips.1 - 1.0).abs() < 1e-3, "{name}: {:?} {strips:?}", ours.1);
        };
        let even = EvenTip { load, length, elastic, second_moment }.work(&mut Blank);
        same("even", (None, even), by_strips(|_| w));
        let growing = (
            Some(GrowingMoment { load, length }.work(&mut Blank)),
            GrowingTip { load, length, elastic, second_moment }.work(&mut Blank),
        );
        same("growing", growing, by_strips(|x| w * x / l));
        let falling = (
            Some(FallingMoment { load, length }.work(&mut Blank)),
            FallingTip { load, length, elastic, second_moment }.work(&mut Blank),
        );
        same("falling", falling, by_strips(|x| w * (1.0 - x / l)));
        let (from, to) = (feet(1.0), feet(9.0));
        let part = (
            Some(PartMoment { load, from, to }.work(&mut Blank)),
            PartTip { load, from, to, length, elastic, second_moment }.work(&mut Blank),
        );
        same("part", part, by_strips(|x| if (from.si()..to.si()).contains(&x) { w } else { 0.0 }));
        let (foot, tip) = (load * 0.6, load);
        let trapezoid = (
            Some(TrapezoidMoment { foot, tip, length }.work(&mut Blank)),
            TrapezoidTip { foot, tip, length, elastic, second_moment }.work(&mut Blank),
        );
        same("trapezoid", trapezoid, by_strips(|x| w * (0.6 + 0.4 * x / l)));
    }

    #[test]
    fn a_part_load_over_the_whole_is_the_even_load_and_a_stiff_foot_adds_nothing() {
        let (elastic, second_moment, length) = post();
        let load = newtons_per_metre(1000.0);
        let even = EvenTip { load, length, elastic, second_moment }.work(&mut Blank);
        let part = PartTip { load, from: feet(0.0), to: length, length, elastic, second_moment };
        assert!((part.work(&mut Blank) / even - 1.0.into()).pure().abs() < 1e-12);
        let spring = |stiffness| {
            SpringTip {
                fixed: even,
                moment: Moment::from_si(1.0),
                length,
                stiffness: Moment::from_si(stiffness),
            }
            .work(&mut Blank)
        };
        assert!((spring(1e30) / even).pure() == 1.0);
        assert!(((spring(2.0) - even).si() - length.si() / 2.0).abs() < 1e-12);
    }

    /// A second way: the deflection of the cantilever with its axial force, bent again and again until it stays.
    #[test]
    fn the_elastic_line_is_where_bending_again_and_again_ends() {
        let (elastic, second_moment, length) = post();
        let buckling = EulerLoad { elastic, second_moment, factor: 2.0, length }.work(&mut Blank);
        let (side, force) = (pounds(100.0), buckling * 0.4);
        let stations = 2000_usize;
        let step = length.si() / 2000.0;
        let stiffness = elastic.si() * second_moment.si();
        let mut line = vec![0.0_f64; stations + 1];
        for _ in 0..200 {
            let tip = line[stations];
            let moment: Vec<f64> = line
                .iter()
                .scan(0.0, |x, y| {
                    let here = side.si() * (length.si() - *x) + force.si() * (tip - y);
                    *x += step;
                    Some(here)
                })
                .collect();
            let (mut slope, mut next) = (0.0, vec![0.0]);
            for pair in moment.windows(2) {
                let before = slope;
                slope += (pair[0] + pair[1]) / 2.0 * step / stiffness;
                next.push(next.last().copied().unwrap() + (before + slope) / 2.0 * step);
            }
            line = next;
        }
        let asked = TipLoadDeflection { side, force, length, elastic, second_moment };
        let ours = asked.work(&mut Blank).unwrap();
        assert!((ours.si() / line[stations] - 1.0).abs() < 1e-5, "{ours:?} {}", line[stations]);
        let moment = TipLoadMoment { side, force, length, elastic, second_moment }.work(&mut Blank).unwrap();
        let by_equilibrium = SecondOrderMoment { moment: side * length, force, deflection: ours };
        assert!((moment / by_equilibrium.work(&mut Blank) - 1.0.into()).pure().abs() < 1e-12);
    }

    #[test]
    fn the_growth_factor_is_near_the_elastic_line_and_refuses_a_buckled_post() {
        let (elastic, second_moment, length) = post();
        let buckling = EulerLoad { elastic, second_moment, factor: 2.0, length }.work(&mut Blank);
        let side = pounds(100.0);
        let first = (side * length * length * length / (3.0 * elastic * second_moment)).si();
        for share in [0.05, 0.2, 0.4, 0.66] {
            let force = buckling * share;
            let growth = Growth { force, buckling }.work(&mut Blank).unwrap();
            let line = TipLoadDeflection { side, force, length, elastic, second_moment };
            let exact = line.work(&mut Blank).unwrap().si() / first;
            assert!((growth / exact - 1.0).abs() < 0.015, "{share}: {growth} {exact}");
        }
        for force in [buckling, buckling * 1.1, Force::from_si(-1.0)] {
            assert!(Growth { force, buckling }.work(&mut Blank).is_err());
            assert!(
                TipLoadMoment { side, force: force.min(buckling) * 1.1, length, elastic, second_moment }
                    .work(&mut Blank)
                    .is_err()
            );
        }
        assert_eq!(Growth { force: Force::from_si(0.0), buckling }.work(&mut Blank).unwrap(), 1.0);
    }

    #[test]
    fn numbers_of_spans_that_are_none_are_refused() {
        let support = |spans, support| SupportMoment { spans, support }.work(&mut Blank);
        assert!(support(3.0, 2.0).is_ok() && support(1000.0, 1001.0).is_ok());
        for (spans, number) in
            [(0.0, 1.0), (2.5, 1.0), (3.0, 5.0), (3.0, 0.0), (1001.0, 1.0), (f64::NAN, 1.0)]
        {
            assert!(support(spans, number).is_err(), "{spans} {number}");
        }
        assert!(SpanMoment { spans: 3.0, span: 4.0 }.work(&mut Blank).is_err());
        assert!(Reaction { spans: 3.0, support: 4.0 }.work(&mut Blank).is_ok());
    }

    /// Two spans: M = w L²/8 over the middle; the shear ⅜ w L of an end sags the span by ⅜²/2. Three spans: w L²/10,
    /// so 0.4²/2 in the end spans and 1/8 − 1/10 in the middle one.
    #[test]
    fn two_and_three_spans_by_hand() {
        let sag = |spans, span| SpanMoment { spans, span }.work(&mut Blank).unwrap();
        let reaction = |spans, support| Reaction { spans, support }.work(&mut Blank).unwrap();
        for (found, by_hand) in [
            (sag(1.0, 1.0), 1.0 / 8.0),
            (sag(2.0, 1.0), 9.0 / 128.0),
            (sag(2.0, 2.0), 9.0 / 128.0),
            (sag(3.0, 1.0), 0.08),
            (sag(3.0, 2.0), 0.025),
            (reaction(1.0, 2.0), 0.5),
            (reaction(2.0, 1.0), 0.375),
            (reaction(2.0, 2.0), 1.25),
            (reaction(3.0, 1.0), 0.4),
            (reaction(3.0, 3.0), 1.1),
        ] {
            assert!((found - by_hand).abs() < 1e-12, "{found} {by_hand}");
        }
    }

    proptest! {
        /// A second way: the slopes of neighbouring spans over each support are equal, and the reactions carry the
        /// load evenly about the middle.
        #[test]
        fn spans_meet_without_a_kink_and_in_equilibrium(spans in 1..40_usize) {
            let beam = EqualSpans::of(spans);
            let m = beam.support_moments();
            prop_assert_eq!((m[0], m[spans]), (0.0, 0.0));
            for support in 1..spans {
                // Slope at an end of a span of 1/24 less what the end moments hold back, by Mohr.
                let left = 1.0 / 24.0 - m[support - 1] / 6.0 - m[support] / 3.0;
                let right = 1.0 / 24.0 - m[support] / 3.0 - m[support + 1] / 6.0;
                prop_assert!((left + right).abs() < 1e-12);
            }
            let reactions: Vec<f64> = (1..=spans + 1).map(|support| beam.reaction(support)).collect();
            let count = f64::from(u32::try_from(spans).unwrap());
            prop_assert!((reactions.iter().sum::<f64>() - count).abs() < 1e-9);
            for support in 0..=spans {
                prop_assert!((reactions[support] - reactions[spans - support]).abs() < 1e-9);
            }
        }
    }
}
