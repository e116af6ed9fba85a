//! Symmetric matrices by their profile, and their factors L D Lᵀ.
//!
//! Each row is kept from its first entry to the diagonal. Factors fill nothing outside that profile, so that cost and
//! memory grow with the sum of the rows' lengths: in line with the number of rows where neighbours are numbered near
//! each other, and by one long row for each link that closes a ring.

/// The lower half of a symmetric matrix, row by row from the first entry to the diagonal.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// The first column of each row.
    firsts: Vec<usize>,
    /// Where the entries of each row end in `entries`.
    ends: Vec<usize>,
    /// Below the diagonal.
    entries: Vec<f64>,
    diagonal: Vec<f64>,
}

/// A row at which the factors stop: what comes before it leaves it with too little, or less than nothing.
#[derive(Debug, Clone, PartialEq)]
pub struct NoPivot {
    /// The row, from 0.
    pub row: usize,
    /// What is left of its diagonal.
    pub pivot: f64,
    /// Its diagonal.
    pub diagonal: f64,
    /// The shape that meets no resistance, row by row up to this one, where it is 1.
    pub shape: Vec<f64>,
}

/// The factors of a matrix: L below the diagonal, D on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Factors {
    profile: Profile,
}

impl Profile {
    /// A matrix of noughts whose rows begin at these columns.
    ///
    /// # Panics
    /// If a row begins beyond its diagonal.
    #[must_use]
    pub fn new(firsts: Vec<usize>) -> Self {
        let mut ends = Vec::with_capacity(firsts.len());
        let mut stored = 0;
        for (row, first) in firsts.iter().enumerate() {
            assert!(*first <= row, "row {row} begins at column {first}");
            stored += row - first;
            ends.push(stored);
        }
        // Written, not only asked for: pages that are first read and then written are fetched twice.
        let mut entries = Vec::with_capacity(stored);
        entries.extend(std::iter::repeat_n(0.0, stored));
        let diagonal = vec![0.0; firsts.len()];
        Self { firsts, ends, entries, diagonal }
    }

    /// How many rows there are.
    #[must_use]
    pub fn rows(&self) -> usize {
        self.firsts.len()
    }

    /// How many numbers are kept.
    #[must_use]
    pub fn stored(&self) -> usize {
        self.entries.len() + self.diagonal.len()
    }

    /// The entries of a row before its diagonal.
    fn before(&self, row: usize) -> &[f64] {
        let end = self.ends[row];
        &self.entries[end + self.firsts[row] - row..end]
    }

    /// What stands on the diagonal, row by row.
    #[must_use]
    pub fn diagonal(&self) -> &[f64] {
        &self.diagonal
    }

    /// Adds to an entry and so to the one across the diagonal.
    ///
    /// # Panics
    /// If the entry lies outside the profile.
    pub fn add(&mut self, one: usize, other: usize, value: f64) {
        if one == other {
            self.diagonal[one] += value;
            return;
        }
        let (row, column) = (one.max(other), one.min(other));
        assert!(column >= self.firsts[row], "row {row} does not reach to column {column}");
        let at = self.ends[row] + column - row;
        self.entries[at] += value;
    }

    /// The matrix times a vector.
    #[must_use]
    pub fn times(&self, vector: &[f64]) -> Vec<f64> {
        let mut product: Vec<f64> = self.diagonal.iter().zip(vector).map(|(on, value)| on * value).collect();
        for row in 0..self.rows() {
            let first = self.firsts[row];
            let before = self.before(row);
            product[row] += dot(before, &vector[first..row]);
            for (entry, above) in before.iter().zip(&mut product[first..row]) {
                *above += entry * vector[row];
            }
        }
        product
    }

    /// The factors, row by row; a pivot must keep more than `share` of its diagonal. A right side is taken along and
    /// solved for on the way, in place.
    ///
    /// # Errors
    /// [`NoPivot`] at the first row that does not.
    pub fn factor(mut self, share: f64, right: &mut [f64]) -> Result<Factors, NoPivot> {
        for row in 0..self.rows() {
            let first = self.firsts[row];
            let (done, this) = self.entries.split_at_mut(self.ends[row] + first - row);
            let this = &mut this[..row - first];
            for column in first..row {
                let begin = self.firsts[column].max(first);
                let end = self.ends[column];
                let sum = dot(&this[begin - first..column - first], &done[end + begin - column..end]);
                this[column - first] -= sum;
            }
            let whole = self.diagonal[row];
            let mut pivot = whole;
            for (entry, above) in this.iter_mut().zip(&self.diagonal[first..row]) {
                let raw = *entry;
                *entry = raw / above;
                pivot -= raw * *entry;
            }
            // Not ≤, so that what is no number stops here too.
            let holds = pivot > share * whole.abs();
            self.diagonal[row] = pivot;
            if !holds {
                return Err(NoPivot { row, pivot, diagonal: whole, shape: self.shape(row) });
            }
            right[row] -= dot(this, &right[first..row]);
        }
        let factors = Factors { profile: self };
        factors.carry_back(right);
        Ok(factors)
    }

    /// The shape that leaves the rows before `row` without force while it moves by 1.
    fn shape(&self, row: usize) -> Vec<f64> {
        let mut shape = vec![0.0; row + 1];
        shape[row] = 1.0;
        for (at, entry) in shape[self.firsts[row]..row].iter_mut().zip(self.before(row)) {
            *at = -entry;
        }
        for above in (0..row).rev() {
            let moved = shape[above];
            for (at, entry) in shape[self.firsts[above]..above].iter_mut().zip(self.before(above)) {
                *at -= entry * moved;
            }
        }
        shape
    }
}

impl Factors {
    /// Solves for another right side, in place.
    pub fn solve(&self, right: &mut [f64]) {
        for row in 0..self.profile.rows() {
            right[row] -= dot(self.profile.before(row), &right[self.profile.firsts[row]..row]);
        }
        self.carry_back(right);
    }

    fn carry_back(&self, right: &mut [f64]) {
        for (value, on) in right.iter_mut().zip(&self.profile.diagonal) {
            *value /= on;
        }
        for row in (0..self.profile.rows()).rev() {
            let value = right[row];
            let above = &mut right[self.profile.firsts[row]..row];
            for (above, entry) in above.iter_mut().zip(self.profile.before(row)) {
                *above -= entry * value;
            }
        }
    }
}

/// The sum of products, four at a time, since the order of one sum would hold the processor up.
fn dot(one: &[f64], other: &[f64]) -> f64 {
    let mut sums = [0.0; 4];
    let (fours, fours_other) = (one.chunks_exact(4), other.chunks_exact(4));
    let rest: f64 = fours.remainder().iter().zip(fours_other.remainder()).map(|(a, b)| a * b).sum();
    for (a, b) in fours.zip(fours_other) {
        for at in 0..4 {
            sums[at] += a[at] * b[at];
        }
    }
    (sums[0] + sums[1]) + (sums[2] + sums[3]) + rest
}

#[cfg(test)]
mod tests {
    use super::*;
    use nalgebra::{DMatrix, DVector};
    use proptest::prelude::*;

    fn dense(matrix: &Profile) -> DMatrix<f64> {
        let rows = matrix.rows();
        let mut dense = DMatrix::zeros(rows, rows);
        for row in 0..rows {
            dense[(row, row)] = matrix.diagonal[row];
            for (column, value) in (matrix.firsts[row]..row).zip(matrix.before(row)) {
                dense[(row, column)] = *value;
                dense[(column, row)] = *value;
            }
        }
        dense
    }

    /// A matrix with a random profile and entries, made positive by a heavy diagonal.
    fn random(rows: usize, reach: &[usize], values: &[f64]) -> Profile {
        let firsts = (0..rows).map(|row| row - reach[row].min(row)).collect();
        let mut matrix = Profile::new(firsts);
        let mut values = values.iter().cycle();
        for row in 0..rows {
            for column in matrix.firsts[row]..row {
                matrix.add(row, column, *values.next().unwrap());
            }
            matrix.add(row, row, 2.0 * rows as f64);
        }
        matrix
    }

    proptest! {
        #[test]
        fn solutions_are_those_of_a_dense_cholesky(
            reach in prop::collection::vec(0..12_usize, 20),
            values in prop::collection::vec(-1.0..1.0_f64, 50),
            right in prop::collection::vec(-1.0..1.0_f64, 20),
        ) {
            let matrix = random(20, &reach, &values);
            let expected = dense(&matrix).cholesky().unwrap().solve(&DVector::from_vec(right.clone()));
            let (mut found, mut again) = (right.clone(), right.clone());
            let factors = matrix.clone().factor(1e-12, &mut found).unwrap();
            factors.solve(&mut again);
            prop_assert_eq!(&found, &again);
            for (one, other) in found.iter().zip(expected.iter()) {
                prop_assert!((one - other).abs() < 1e-13);
            }
            for (one, other) in matrix.times(&found).iter().zip(&right) {
                prop_assert!((one - other).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn factors_fill_nothing_outside_the_profile_and_a_ring_costs_one_long_row() {
        let chain = |rows: usize, ring: bool| {
            let mut firsts: Vec<usize> = (0..rows).map(|row| row.saturating_sub(1)).collect();
            if ring {
                firsts[rows - 1] = 0;
            }
            Profile::new(firsts).stored()
        };
        assert_eq!(chain(1000, false), 1999);
        assert_eq!(chain(1000, true), 1999 + 998);
        assert_eq!(chain(2000, true), 3999 + 1998);
    }

    #[test]
    fn two_weights_on_one_spring_stop_at_the_second_and_move_as_one() {
        // Two bodies and a spring between them, held by nothing.
        let mut matrix = Profile::new(vec![0, 0]);
        for (one, other, value) in [(0, 0, 3.0), (1, 1, 3.0), (0, 1, -3.0)] {
            matrix.add(one, other, value);
        }
        let stopped = matrix.factor(1e-12, &mut [0.0; 2]).unwrap_err();
        assert_eq!((stopped.row, stopped.pivot, stopped.shape), (1, 0.0, vec![1.0, 1.0]));
    }

    #[test]
    fn levers_on_levers_stop_at_the_last_and_move_by_their_arms() {
        // Springs over 2a = b, 2c = 3b and c = 3a hold three levers together and none of them to the ground: they
        // move as 1 : 2 : 3.
        let springs = [[2.0, -1.0, 0.0], [0.0, 3.0, -2.0], [3.0, 0.0, -1.0]];
        let mut matrix = Profile::new(vec![0, 0, 0]);
        for (row, column) in [(0, 0), (1, 0), (1, 1), (2, 0), (2, 1), (2, 2)] {
            matrix.add(row, column, springs.iter().map(|spring| spring[row] * spring[column]).sum());
        }
        let stopped = matrix.factor(1e-12, &mut [0.0; 3]).unwrap_err();
        assert_eq!(stopped.row, 2);
        for (moved, third) in stopped.shape.iter().zip([1.0, 2.0, 3.0]) {
            assert!((moved - third / 3.0).abs() < 1e-12, "{:?}", stopped.shape);
        }
    }

    #[test]
    fn what_was_added_to_a_freedom_itself_stands_on_the_diagonal_row_by_row() {
        let mut matrix = Profile::new(vec![0, 0]);
        matrix.add(0, 0, 2.0);
        matrix.add(1, 0, 7.0);
        matrix.add(1, 1, 3.0);
        matrix.add(1, 1, 1.5);
        assert_eq!(matrix.diagonal(), [2.0, 4.5]);
    }

    #[test]
    fn a_pivot_is_small_beside_its_diagonal_in_whatever_units_both_are() {
        // 1 and 1 joined by all but a share of 1e-6, or of 1e-14.
        for scale in [1e-9, 1.0, 1e9] {
            for (left, holds) in [(1e-6, true), (1e-14, false)] {
                let mut matrix = Profile::new(vec![0, 0]);
                for (row, column, value) in [(0, 0, 1.0), (1, 0, 1.0), (1, 1, 1.0 + left)] {
                    matrix.add(row, column, scale * value);
                }
                assert_eq!(matrix.factor(1e-12, &mut [0.0; 2]).is_ok(), holds, "{scale} {left}");
            }
        }
    }

    #[test]
    fn a_freedom_that_nothing_holds_stops_however_small_a_pivot_is_taken() {
        let stopped = Profile::new(vec![0]).factor(0.0, &mut [0.0]).unwrap_err();
        assert_eq!((stopped.row, stopped.pivot), (0, 0.0));
    }

    #[test]
    fn a_negative_pivot_and_one_that_is_no_number_stop_too() {
        for diagonal in [-1.0, f64::NAN] {
            let mut matrix = Profile::new(vec![0]);
            matrix.add(0, 0, diagonal);
            assert_eq!(matrix.factor(1e-12, &mut [0.0]).unwrap_err().row, 0);
        }
    }
}
