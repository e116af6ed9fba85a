//! Chapter H: members under several actions at once, H1.1 and H3.2.

use super::DOCUMENT;
use crate::rule;
use crate::source::Clause;
use crate::units::{Moment, Powers};
use crate::workings::{Ledger, OutOfRange, within};

/// Large axial force with bending.
pub const H1_1A: Clause = DOCUMENT.at("H1.1(a), Eq. H1-1a");
/// Small axial force with bending.
pub const H1_1B: Clause = DOCUMENT.at("H1.1(b), Eq. H1-1b");
/// Torsion with the rest.
pub const H3_6: Clause = DOCUMENT.at("H3.2, Eq. H3-6");

rule! {
    /// Moment of a round post that is bent both ways.
    ResultantMoment, "statics/resultant-moment", crate::source::STATICS.at("sum of vectors");
    /// moment one way
    one: Moment = "M_x";
    /// moment the other way
    other: Moment = "M_y";
    moment "M": Moment = (one.squared() + other.squared()).sqrt()
}
rule! {
    /// Ratio of a member under an axial force of a fifth of its strength or more, and bending.
    LargeAxial, "aisc360-16/h1-1a", H1_1A;
    /// axial force over axial strength
    axial: f64 = "P_r/P_c";
    /// moment over bending strength, about one axis
    one: f64 = "M_rx/M_cx";
    /// moment over bending strength, about the other; 0 for round tube, whose moments add as vectors
    other: f64 = "M_ry/M_cy";
    ratio "ρ": f64 = axial + 8.0 / 9.0 * (one + other)
}
rule! {
    /// Ratio of a member under an axial force of less than a fifth of its strength, and bending.
    SmallAxial, "aisc360-16/h1-1b", H1_1B;
    /// axial force over axial strength
    axial: f64 = "P_r/P_c";
    /// moment over bending strength, about one axis
    one: f64 = "M_rx/M_cx";
    /// moment over bending strength, about the other; 0 for round tube, whose moments add as vectors
    other: f64 = "M_ry/M_cy";
    ratio "ρ": f64 = axial / 2.0 + (one + other)
}
rule! {
    /// Ratio of a member under torsion of more than a fifth of its strength and everything else.
    WithTorsion, "aisc360-16/h3-6", H3_6;
    /// axial force over axial strength
    axial: f64 = "P_r/P_c";
    /// moment over bending strength, about both axes together
    bending: f64 = "M_r/M_c";
    /// shear over shear strength
    shear: f64 = "V_r/V_c";
    /// torsion over torsional strength
    torsion: f64 = "T_r/T_c";
    ratio "ρ": f64 = (axial + bending) + (shear + torsion).squared()
}

/// Demands over strengths of one member, all in one format.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Actions {
    /// Axial force over axial strength.
    pub axial: f64,
    /// Moment over bending strength, about one axis.
    pub one: f64,
    /// Moment over bending strength, about the other; 0 for round tube, whose moments add as vectors.
    pub other: f64,
    /// Shear over shear strength.
    pub shear: f64,
    /// Torsion over torsional strength.
    pub torsion: f64,
}

/// A ratio of everything at once and the equation that gave it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interaction {
    /// The ratio, at most 1 where the member holds.
    pub ratio: f64,
    /// The equation that governs.
    pub clause: Clause,
}

/// The ratio of a tube under everything at once: Eq. H1-1a or H1-1b, or Eq. H3-6 once torsion is above a fifth of
/// its strength.
///
/// # Errors
/// If a part is below 0: demands are given without sign.
pub fn interaction(actions: Actions, ledger: &mut impl Ledger) -> Result<Interaction, OutOfRange> {
    let Actions { axial, one, other, shear, torsion } = actions;
    for (what, part) in [
        ("P_r/P_c", axial),
        ("M_rx/M_cx", one),
        ("M_ry/M_cy", other),
        ("V_r/V_c", shear),
        ("T_r/T_c", torsion),
    ] {
        within(what, DOCUMENT.at("H1.1 and H3.2"), part, 0.0, f64::MAX)?;
    }
    Ok(if torsion > 0.2 {
        let ratio = WithTorsion { axial, bending: one + other, shear, torsion }.work(ledger);
        Interaction { ratio, clause: H3_6 }
    } else if axial >= 0.2 {
        Interaction { ratio: LargeAxial { axial, one, other }.work(ledger), clause: H1_1A }
    } else {
        Interaction { ratio: SmallAxial { axial, one, other }.work(ledger), clause: H1_1B }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Quantity;
    use crate::workings::Blank;
    use proptest::prelude::*;

    fn ratio(actions: Actions) -> f64 {
        interaction(actions, &mut Blank).unwrap().ratio
    }

    #[test]
    fn the_two_equations_meet_where_a_member_is_just_full() {
        // At P_r/P_c of 0.2 both reach 1 with M_r/M_c of 0.9.
        let full = Actions { axial: 0.2, one: 0.9, ..Actions::default() };
        assert!((ratio(full) - 1.0).abs() < 1e-12);
        assert_eq!(interaction(full, &mut Blank).unwrap().clause, H1_1A);
        let below = Actions { axial: 0.2 - 1e-12, ..full };
        assert!((ratio(below) - 1.0).abs() < 1e-9);
        assert_eq!(interaction(below, &mut Blank).unwrap().clause, H1_1B);
    }

    #[test]
    fn torsion_up_to_a_fifth_of_its_strength_is_not_counted() {
        let bent = Actions { one: 0.5, shear: 0.1, torsion: 0.2, ..Actions::default() };
        assert_eq!(ratio(bent), 0.5);
        let twisted = interaction(Actions { torsion: 0.21, ..bent }, &mut Blank).unwrap();
        assert!((twisted.ratio - (0.5 + 0.31 * 0.31)).abs() < 1e-12);
        assert_eq!(twisted.clause, H3_6);
    }

    #[test]
    fn demands_with_a_sign_are_refused() {
        assert!(interaction(Actions { axial: -0.1, ..Actions::default() }, &mut Blank).is_err());
        assert!(interaction(Actions { shear: f64::NAN, ..Actions::default() }, &mut Blank).is_err());
    }

    #[test]
    fn moments_of_a_round_post_add_as_vectors() {
        let moment = |value: f64| Moment::from_si(value);
        let both = ResultantMoment { one: moment(3.0), other: moment(-4.0) }.work(&mut Blank);
        assert!((both.si() - 5.0).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn more_of_anything_is_never_a_lesser_ratio(
            axial in 0.0..1.0_f64, one in 0.0..1.0_f64, other in 0.0..1.0_f64, shear in 0.0..0.5_f64
        ) {
            let torsion = 0.3;
            for base in [
                Actions { axial, one, other, shear, torsion: 0.0 },
                Actions { axial, one, other, shear, torsion },
            ] {
                let here = ratio(base);
                for more in [
                    Actions { one: one + 0.01, ..base },
                    Actions { other: other + 0.01, ..base },
                    Actions { shear: shear + 0.01, ..base },
                    Actions { torsion: base.torsion * 1.01, ..base },
                ] {
                    prop_assert!(ratio(more) >= here);
                }
                // Between Eq. H1-1b and H1-1a the ratio of a member that is not full steps up or down by their nature.
                if (axial < 0.2) == (axial + 0.01 < 0.2) {
                    let more = Actions { axial: axial + 0.01, ..base };
                    prop_assert!(ratio(more) >= here);
                }
            }
        }
    }
}
