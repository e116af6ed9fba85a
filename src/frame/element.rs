//! One member by itself: its end stiffness, what its loads hand to its ends, and its releases.

use super::column::{Plane, Spot, Spread};
use super::model::{Element, Kind};
use nalgebra::{Matrix3, SMatrix, SVector, Vector3};

pub(super) type Matrix12 = SMatrix<f64, 12, 12>;
pub(super) type Vector12 = SVector<f64, 12>;

/// The ends' freedoms in the plane of x and y, and in that of x and z; seen along y the slope of z turns against the
/// right hand.
const IN_XY: [(usize, f64); 4] = [(1, 1.0), (5, 1.0), (7, 1.0), (11, 1.0)];
const IN_XZ: [(usize, f64); 4] = [(2, 1.0), (4, -1.0), (8, 1.0), (10, -1.0)];

/// Less than this share of its diagonal left, and a release meets no resistance.
const LOOSE: f64 = 1e-12;

/// The loads on one member in its own axes.
#[derive(Debug, Clone, Default)]
pub(super) struct OnMember {
    /// Along x, y, z.
    pub(super) spreads: [Vec<Spread>; 3],
    /// In the plane of x and y, and in that of x and z.
    pub(super) spots: [Vec<Spot>; 2],
    /// Along x and about x.
    pub(super) axial_spots: Vec<(f64, f64)>,
    pub(super) twists: Vec<(f64, f64)>,
}

/// Nothing.
pub(super) static UNLOADED: OnMember = OnMember {
    spreads: [Vec::new(), Vec::new(), Vec::new()],
    spots: [Vec::new(), Vec::new()],
    axial_spots: Vec::new(),
    twists: Vec::new(),
};

impl OnMember {
    pub(super) fn spread(&mut self, from: f64, to: f64, at_from: Vector3<f64>, at_to: Vector3<f64>) {
        for (axis, spreads) in self.spreads.iter_mut().enumerate() {
            if at_from[axis] != 0.0 || at_to[axis] != 0.0 {
                spreads.push(Spread { from, to, at_from: at_from[axis], at_to: at_to[axis] });
            }
        }
    }

    pub(super) fn spot(&mut self, at: f64, force: Vector3<f64>, moment: Vector3<f64>) {
        let [in_xy, in_xz] = &mut self.spots;
        if force.y != 0.0 || moment.z != 0.0 {
            in_xy.push(Spot { at, force: force.y, moment: moment.z });
        }
        if force.z != 0.0 || moment.y != 0.0 {
            in_xz.push(Spot { at, force: force.z, moment: -moment.y });
        }
        if force.x != 0.0 {
            self.axial_spots.push((at, force.x));
        }
        if moment.x != 0.0 {
            self.twists.push((at, moment.x));
        }
    }
}

/// A member's ends with its releases taken out.
pub(super) struct Condensed {
    pub(super) stiffness: Matrix12,
    /// What its loads hand to its joints.
    pub(super) handed: Vector12,
    /// Nothing where it is neither loaded nor released: then its ends are its joints.
    pub(super) loose: Option<Box<Loose>>,
}

/// What is kept of a member to find its ends from its joints.
pub(super) struct Loose {
    /// What its loads hand to its ends if nothing is released.
    pub(super) handed: Vector12,
    /// What was taken out, in order: the freedom, its row, what its loads handed to it.
    taken: Vec<(usize, Vector12, f64)>,
}

impl Loose {
    /// The movements of the ends themselves, from those of the joints.
    pub(super) fn own_ends(&self, mut ends: Vector12) -> Vector12 {
        for (freedom, row, handed) in self.taken.iter().rev() {
            ends[*freedom] = 0.0;
            ends[*freedom] = (handed - row.dot(&ends)) / row[*freedom];
        }
        ends
    }
}

impl Element {
    /// Its two planes of bending under an axial force; none for a bar.
    pub(super) fn planes(&self, thrust: f64) -> Option<[Plane; 2]> {
        match self.kind {
            Kind::Beam { about_y, about_z, .. } => {
                Some([Plane::new(self.length, about_z, thrust), Plane::new(self.length, about_y, thrust)])
            }
            Kind::Bar { .. } => None,
        }
    }

    /// The forces on its ends for each movement of them, without its releases.
    pub(super) fn rigid(&self, thrust: f64) -> Matrix12 {
        let mut matrix = Matrix12::zeros();
        let mut pair = |one: usize, other: usize, stiffness: f64| {
            matrix[(one, one)] += stiffness;
            matrix[(other, other)] += stiffness;
            matrix[(one, other)] -= stiffness;
            matrix[(other, one)] -= stiffness;
        };
        pair(0, 6, self.axial() / self.length);
        match self.kind {
            Kind::Beam { torsion, .. } => pair(3, 9, torsion / self.length),
            Kind::Bar { .. } => {
                // A string: its tension holds its ends in line.
                pair(1, 7, -thrust / self.length);
                pair(2, 8, -thrust / self.length);
            }
        }
        for (plane, ends) in self.planes(thrust).iter().flatten().zip([IN_XY, IN_XZ]) {
            let stiffness = plane.stiffness();
            for (i, (row, sign)) in ends.into_iter().enumerate() {
                for (j, (column, other)) in ends.into_iter().enumerate() {
                    matrix[(row, column)] += sign * other * stiffness[i][j];
                }
            }
        }
        matrix
    }

    /// What its loads hand to its ends if nothing is released.
    pub(super) fn handed(&self, thrust: f64, on: &OnMember) -> Vector12 {
        let mut handed = Vector12::zeros();
        let length = self.length;
        for load in &on.spreads[0] {
            let (whole, about_finish) = load.until(length);
            handed[0] += about_finish / length;
            handed[6] += whole - about_finish / length;
        }
        for (spots, start) in [(&on.axial_spots, 0), (&on.twists, 3)] {
            for (at, size) in spots {
                handed[start] += size * (1.0 - at / length);
                handed[start + 6] += size * at / length;
            }
        }
        for (at, plane) in self.planes(thrust).iter().flatten().enumerate() {
            let ends = [IN_XY, IN_XZ][at];
            let of_spreads = on.spreads[at + 1].iter().map(|load| plane.handed_by(load));
            let of_spots = on.spots[at].iter().map(|spot| plane.handed_by_spot(spot));
            for part in of_spreads.chain(of_spots) {
                for ((freedom, sign), force) in ends.into_iter().zip(part) {
                    handed[freedom] += sign * force;
                }
            }
        }
        handed
    }

    /// Its stiffness and what its loads hand over, with its releases taken out; or the release that meets no
    /// resistance, or less than none.
    pub(super) fn condensed(&self, thrust: f64, on: Option<&OnMember>) -> Result<Condensed, usize> {
        let (mut stiffness, mut taken) = (self.rigid(thrust), Vec::new());
        let whole_handed = on.map_or_else(Vector12::zeros, |on| self.handed(thrust, on));
        let mut handed = whole_handed;
        if let Kind::Beam { released, .. } = self.kind {
            let whole = stiffness.diagonal();
            for freedom in (0..12).filter(|freedom| released[*freedom]) {
                let row: Vector12 = stiffness.column(freedom).into();
                let (pivot, own) = (row[freedom], handed[freedom]);
                let resists = pivot > LOOSE * whole[freedom].abs();
                if !resists {
                    return Err(freedom);
                }
                stiffness -= row * row.transpose() / pivot;
                handed -= row * (own / pivot);
                stiffness.row_mut(freedom).fill(0.0);
                stiffness.column_mut(freedom).fill(0.0);
                handed[freedom] = 0.0;
                taken.push((freedom, row, own));
            }
        }
        let is_loose = on.is_some() || !taken.is_empty();
        let loose = is_loose.then(|| Box::new(Loose { handed: whole_handed, taken }));
        Ok(Condensed { stiffness, handed, loose })
    }

    /// Its stiffness with its releases taken out, unloaded; or the release that meets no resistance.
    pub(super) fn stiffness(&self, thrust: f64) -> Result<Matrix12, usize> {
        self.condensed(thrust, None).map(|condensed| condensed.stiffness)
    }

    /// From the frame's axes to its own.
    pub(super) fn to_own(&self, ends: &Vector12) -> Vector12 {
        self.turned(&self.axes, ends)
    }

    /// From its own axes to the frame's.
    pub(super) fn to_frame(&self, ends: &Vector12) -> Vector12 {
        self.turned(&self.axes.transpose(), ends)
    }

    fn turned(&self, axes: &Matrix3<f64>, ends: &Vector12) -> Vector12 {
        let mut turned = Vector12::zeros();
        for at in [0, 3, 6, 9] {
            let part = axes * ends.fixed_rows::<3>(at);
            turned.fixed_rows_mut::<3>(at).copy_from(&part);
        }
        turned
    }

    /// A stiffness in its own axes, in those of the frame.
    pub(super) fn matrix_to_frame(&self, matrix: &Matrix12) -> Matrix12 {
        let mut turned = Matrix12::zeros();
        for row in [0, 3, 6, 9] {
            for column in [0, 3, 6, 9] {
                let block = self.axes.transpose() * matrix.fixed_view::<3, 3>(row, column) * self.axes;
                turned.fixed_view_mut::<3, 3>(row, column).copy_from(&block);
            }
        }
        turned
    }
}
