//! Braces of terminal posts: a rail to the next post, and a rod from there down to the foot.

use super::guy::{GuyStrength, PINNED, tube_strength};
use super::post::{PostError, Tube};
use crate::member::Format;
use crate::member::aisc360_16::{D2_1, ELASTIC_MODULUS, TensileYield};
use crate::source::{Clause, Stated};
use crate::units::{Area, Force, Length, Pressure, Quantity};
use crate::workings::Ledger;

/// A brace of an end, corner or gate post, in the plane of the fence.
///
/// Its rail goes level from the post to the next one, its rod from there down to the foot of the post. Cloth that pulls
/// the post into the bay presses the rail and pulls the rod.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Brace {
    /// The post by index.
    pub post: usize,
    /// The bay it stands in by index.
    pub bay: usize,
    /// The height of its rail above the foot of the post.
    pub height: Length,
    /// Its rail.
    pub rail: Tube,
    /// Its rod, if there is one.
    pub rod: Option<TrussRod>,
    /// The format its steel is checked in.
    pub format: Format,
}

/// The rod of a brace, which takes tension alone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrussRod {
    /// Its diameter.
    pub diameter: Length,
    /// The yield strength of its steel, if that is known.
    pub yield_strength: Option<Pressure>,
}

const WHOLE: Stated<f64> = Stated {
    value: 1.0,
    because: "ours: a truss rod yields over its whole section; its threads, turnbuckle and bands hold less and are not \
              checked",
};

impl TrussRod {
    /// The area of its whole section.
    #[must_use]
    pub fn area(&self, ledger: &mut impl Ledger) -> Area {
        let share = ledger.judge("c_A", WHOLE);
        self.diameter * self.diameter * (share * std::f64::consts::FRAC_PI_4)
    }
}

impl Brace {
    /// Area and modulus of its rail, for how far it shortens.
    ///
    /// # Errors
    /// If its sizes are no tube.
    pub fn axial(&self, ledger: &mut impl Ledger) -> Result<(Area, Pressure), PostError> {
        self.rail.stiffness(ledger).map(|stiffness| (stiffness.area, stiffness.elastic))
    }

    /// Area and modulus of its rod.
    #[must_use]
    pub fn rod_axial(&self, ledger: &mut impl Ledger) -> Option<(Area, Pressure)> {
        self.rod.map(|rod| (rod.area(ledger), ELASTIC_MODULUS))
    }

    /// What its rail, as long as the bay is wide, can carry along itself.
    ///
    /// # Errors
    /// If its sizes are no tube, or it lies outside the range of the rule.
    pub fn rail_strength(&self, bay: Length, ledger: &mut impl Ledger) -> Result<GuyStrength, PostError> {
        tube_strength(&self.rail, bay, self.format, ledger)
    }

    /// How slender its rail is, K L/r.
    ///
    /// # Errors
    /// If its sizes are no tube.
    pub fn slenderness(&self, bay: Length, ledger: &mut impl Ledger) -> Result<f64, PostError> {
        let stiffness = self.rail.stiffness(ledger)?;
        let radius_squared = stiffness.second_moment.si() / stiffness.area.si();
        Ok(PINNED.value * bay.si() / radius_squared.sqrt())
    }

    /// What its rod can carry, and its rule; nothing where there is none or its steel is not known.
    #[must_use]
    pub fn rod_strength(&self, ledger: &mut impl Ledger) -> Option<(Force, Clause)> {
        let rod = self.rod?;
        let yield_strength = rod.yield_strength?;
        let area = rod.area(ledger);
        let pulled = TensileYield { yield_strength, area }.work(ledger);
        Some((self.format.available_tension(pulled, ledger), D2_1))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fence::{Shape, Wall};
    use crate::units::{Pure, feet, inches, ksi, pounds};
    use crate::workings::Blank;

    fn brace(format: Format) -> Brace {
        let shape = Shape::Round { girth: None, diameter: inches(1.66) };
        let wall = Wall::Nominal(inches(0.14));
        let rail = Tube { shape, wall, yield_strength: ksi(30.0), rust: inches(0.0) };
        let rod = TrussRod { diameter: inches(0.375), yield_strength: Some(ksi(36.0)) };
        Brace { post: 0, bay: 0, height: feet(5.0), rail, rod: Some(rod), format }
    }

    #[test]
    fn a_brace_rail_of_ten_feet_and_a_rod_of_three_eighths_carry_what_hand_gives_them() {
        // By hand, as for the back brace of this tube: A 0.6257 in², r 0.54284 in, L/r 120/0.54284 = 221.06,
        // F_e = π² 29,000/221.06² = 5.857 ksi, 0.877 F_e 5.137 ksi, 3.214 kip, 0.9 of it 2893 lbf.
        // Rod: π/4 0.375² = 0.110447 in², 0.9 × 36 ksi of it 3578.5 lbf.
        let brace = brace(Format::Lrfd);
        let rail = brace.rail_strength(feet(10.0), &mut Blank).unwrap().compression.unwrap().0;
        assert!(((rail / pounds(2893.0)).pure() - 1.0).abs() < 1e-3);
        assert!((brace.slenderness(feet(10.0), &mut Blank).unwrap() / 221.06 - 1.0).abs() < 1e-3);
        let rod = brace.rod_strength(&mut Blank).unwrap().0;
        assert!(((rod / pounds(3578.5)).pure() - 1.0).abs() < 1e-4);
    }

    #[test]
    fn a_rod_of_unknown_steel_has_no_strength_and_stretches_all_the_same() {
        let mut brace = brace(Format::Asd);
        brace.rod = Some(TrussRod { yield_strength: None, ..brace.rod.unwrap() });
        assert!(brace.rod_strength(&mut Blank).is_none());
        assert!(brace.rod_axial(&mut Blank).unwrap().0.si() > 0.0);
    }
}
