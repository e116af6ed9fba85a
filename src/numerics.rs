//! Plain numbers only: interpolation that refuses outside its table, roots, factors of symmetric matrices by their
//! profile, integrals.

mod profile;

pub use profile::{Factors, NoPivot, Profile};

use nalgebra::SMatrix;

/// A value outside a table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outside {
    /// The value asked for.
    pub value: f64,
    /// The least in the table.
    pub least: f64,
    /// The greatest in the table.
    pub greatest: f64,
}

/// The interval of a rising axis that holds a value, and how far into it the value lies (0 to 1).
///
/// # Errors
/// [`Outside`] if the value is beyond either end, or no number.
pub fn bracket(axis: &[f64], value: f64) -> Result<(usize, f64), Outside> {
    let (least, greatest) = (axis[0], axis[axis.len() - 1]);
    if !(least..=greatest).contains(&value) {
        return Err(Outside { value, least, greatest });
    }
    let mut at = 0;
    while at + 2 < axis.len() && value >= axis[at + 1] {
        at += 1;
    }
    Ok((at, (value - axis[at]) / (axis[at + 1] - axis[at])))
}

/// What sums and quotients of measures lose at most, as a share of the value.
pub const ROUNDING: f64 = 1e-9;

/// A value that is one of the bounds but for the rounding of sums and quotients, as that bound; any other as it is.
///
/// Thirty feet over six are 4.999…9 when both were feet once and are metres now, and yet they are five.
#[must_use]
pub fn on_bound(value: f64, bounds: &[f64]) -> f64 {
    bounds.iter().copied().find(|bound| (value - bound).abs() <= ROUNDING * bound.abs()).unwrap_or(value)
}

/// Between two values, `share` of the way from the first to the second; exact at both ends.
#[must_use]
pub fn between(first: f64, second: f64, share: f64) -> f64 {
    first * (1.0 - share) + second * share
}

/// Linear interpolation in one variable.
///
/// # Errors
/// [`Outside`] if the value is beyond either end of the axis.
pub fn linear(axis: &[f64], values: &[f64], value: f64) -> Result<f64, Outside> {
    let (at, share) = bracket(axis, value)?;
    Ok(between(values[at], values[at + 1], share))
}

/// Linear interpolation in two variables.
///
/// # Errors
/// [`Outside`] for the first variable that is beyond either end of its axis.
pub fn bilinear<const R: usize, const C: usize>(
    rows: &[f64; R],
    columns: &[f64; C],
    table: &SMatrix<f64, R, C>,
    row: f64,
    column: f64,
) -> Result<f64, Outside> {
    let (i, down) = bracket(rows, row)?;
    let (j, across) = bracket(columns, column)?;
    let cell = |di: usize, dj: usize| table[(i + di, j + dj)];
    Ok(between(between(cell(0, 0), cell(0, 1), across), between(cell(1, 0), cell(1, 1), across), down))
}

/// Where a function meets nought, and in how many rounds it was found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Root {
    /// The place.
    pub at: f64,
    /// How often the function was asked.
    pub rounds: usize,
}

/// The root of a function that has one sign at `low` and the other at `high`, to the last bits.
///
/// Inverse quadratic interpolation where it is safe and halving elsewhere, after T. R. Chandrupatla, Advances in
/// Engineering Software 28 (1997) 145-149, from memory; the tests hold it against roots known otherwise.
///
/// None where the signs at both ends are one, or the function gives no number.
pub fn root(function: impl Fn(f64) -> f64, low: f64, high: f64) -> Option<Root> {
    const MOST: usize = 200;
    let (mut newest, mut other) = (high, low);
    let (mut at_newest, mut at_other) = (function(newest), function(other));
    if at_other == 0.0 {
        return Some(Root { at: other, rounds: 2 });
    }
    if at_newest == 0.0 {
        return Some(Root { at: newest, rounds: 2 });
    }
    // No number has no sign: the comparison fails for it too.
    if (at_newest * at_other.signum()).partial_cmp(&0.0) != Some(std::cmp::Ordering::Less) {
        return None;
    }
    let mut share = 0.5;
    for rounds in 3..MOST {
        let tried = newest + share * (other - newest);
        let at_tried = function(tried);
        if at_tried.is_nan() {
            return None;
        }
        let (before, at_before);
        if at_tried.signum() == at_newest.signum() {
            (before, at_before) = (newest, at_newest);
        } else {
            (before, at_before) = (other, at_other);
            (other, at_other) = (newest, at_newest);
        }
        (newest, at_newest) = (tried, at_tried);
        let best = if at_newest.abs() < at_other.abs() { newest } else { other };
        let least = f64::EPSILON * best.abs() / (other - newest).abs();
        if at_newest == 0.0 {
            return Some(Root { at: newest, rounds });
        }
        if least >= 0.5 || other == newest {
            return Some(Root { at: best, rounds });
        }
        let place = (newest - other) / (before - other);
        let value = (at_newest - at_other) / (at_before - at_other);
        share = if value * value < place && (1.0 - value) * (1.0 - value) < 1.0 - place {
            at_newest / (at_other - at_newest) * at_before / (at_other - at_before)
                + (before - newest) / (other - newest) * at_newest / (at_before - at_newest) * at_other
                    / (at_before - at_other)
        } else {
            0.5
        };
        share = share.clamp(least, 1.0 - least);
    }
    None
}

/// Places and weights of Gauss' rule of six points on −1 to 1: half of them, the rest by symmetry.
///
/// M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, Table 25.4, from memory; a test holds them
/// against the integrals of powers.
const GAUSS: [(f64, f64); 3] = [
    (0.238_619_186_083_196_9, 0.467_913_934_572_691_05),
    (0.661_209_386_466_264_5, 0.360_761_573_048_138_6),
    (0.932_469_514_203_152, 0.171_324_492_379_170_36),
];

/// Places and weights that sum up the integral of a smooth function: exact for polynomials to the eleventh power.
#[must_use]
pub fn six_points(from: f64, to: f64) -> [(f64, f64); 6] {
    let (middle, half) = (0.5 * (from + to), 0.5 * (to - from));
    std::array::from_fn(|at| {
        let (place, weight) = GAUSS[at / 2];
        let side = if at % 2 == 0 { -half } else { half };
        (middle + side * place, half * weight)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_root_is_found_to_the_last_bits_in_few_rounds_and_an_upright_one_by_halving() {
        for (function, low, high, known, most) in [
            ((|x: f64| x * x - 2.0) as fn(f64) -> f64, 0.0, 2.0, std::f64::consts::SQRT_2, 12),
            (|x| x.cos(), 0.0, 3.0, std::f64::consts::FRAC_PI_2, 12),
            (|x| 8.0 - x.powi(3), 0.0, 1e3, 2.0, 30),
            (|x| (x - 1e-9).cbrt(), -1.0, 1.0, 1e-9, 100),
        ] {
            let root = root(function, low, high).unwrap();
            assert!((root.at / known - 1.0).abs() <= 4.0 * f64::EPSILON, "{root:?} {known}");
            assert!(root.rounds <= most, "{root:?}");
        }
    }

    #[test]
    fn a_root_at_an_end_is_that_end_and_no_change_of_sign_is_none() {
        assert_eq!(root(|x| x, 0.0, 1.0).unwrap().at, 0.0);
        assert_eq!(root(|x| x - 1.0, 0.0, 1.0).unwrap().at, 1.0);
        assert_eq!(root(|x| x + 1.0, 0.0, 1.0), None);
        assert_eq!(root(|_| f64::NAN, 0.0, 1.0), None);
        assert_eq!(root(|x| if x < 0.5 { -1.0 } else { f64::NAN }, 0.0, 1.0), None);
    }

    proptest! {
        #[test]
        fn the_root_of_a_cubic_is_its_linear_factor(at in 0.01..100.0_f64, b in -0.9..10.0_f64) {
            // (x − a)(x² + b x + 1) with b above −2 has the one root a.
            let found = root(|x| (x - at) * (x * x + b * x + 1.0), 0.0, 1000.0).unwrap();
            prop_assert!((found.at / at - 1.0).abs() < 1e-14, "{:?}", found);
        }
    }

    #[test]
    fn powers_up_to_the_eleventh_are_integrated_exactly_and_the_twelfth_is_not() {
        let off = |power: i32| {
            let exact = (3.0_f64.powi(power + 1) - 1.0) / f64::from(power + 1);
            let sum: f64 = six_points(1.0, 3.0).iter().map(|(x, weight)| weight * x.powi(power)).sum();
            (sum / exact - 1.0).abs()
        };
        for power in 0..=11 {
            assert!(off(power) < 2e-15, "{power}: {}", off(power));
        }
        assert!(off(12) > 1e-12, "{}", off(12));
    }

    #[test]
    fn a_table_is_met_at_its_points_and_refuses_beyond_them() {
        let (axis, values) = ([0.0, 1.0, 3.0], [10.0, 20.0, 0.0]);
        for (x, y) in axis.iter().zip(values) {
            assert_eq!(linear(&axis, &values, *x), Ok(y));
        }
        assert_eq!(linear(&axis, &values, 2.0), Ok(10.0));
        assert!(linear(&axis, &values, 3.0001).is_err());
        assert!(linear(&axis, &values, -0.0001).is_err());
        assert!(linear(&axis, &values, f64::NAN).is_err());
    }

    #[test]
    fn a_value_a_last_bit_off_a_bound_is_the_bound_and_any_other_is_itself() {
        let bounds = [2.0, 5.0];
        assert_eq!(on_bound(5.0 - f64::EPSILON * 4.0, &bounds), 5.0);
        assert_eq!(on_bound(2.0 + f64::EPSILON * 2.0, &bounds), 2.0);
        for value in [1.999_999, 2.000_001, 4.0, 0.0] {
            assert_eq!(on_bound(value, &bounds), value);
        }
        assert!(on_bound(f64::NAN, &bounds).is_nan());
        // A share of the bound, be it large or small.
        for bound in [1e-6, 1e6] {
            assert_eq!(on_bound(bound * (1.0 - 0.5 * ROUNDING), &[bound]), bound);
            let beside = bound * (1.0 + 2.0 * ROUNDING);
            assert_eq!(on_bound(beside, &[bound]), beside);
        }
    }

    #[test]
    fn a_plane_is_reproduced_by_bilinear_interpolation() {
        let (rows, columns) = ([0.0, 2.0], [0.0, 1.0, 4.0]);
        let table = SMatrix::<f64, 2, 3>::new(0.0, 1.0, 4.0, 20.0, 21.0, 24.0);
        for (r, c) in [(0.5, 0.5), (1.9, 3.0), (2.0, 4.0)] {
            assert!((bilinear(&rows, &columns, &table, r, c).unwrap() - (10.0 * r + c)).abs() < 1e-12);
        }
        assert!(bilinear(&rows, &columns, &table, 2.1, 0.0).is_err());
    }
}
