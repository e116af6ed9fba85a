//! Bending of a straight member in one plane, with the axial force that stands in it: exact end stiffness, shape and
//! inner forces, from one differential equation, EI v⁗ + P v″ = q with P compression.
//!
//! Everything is written by the functions c₀ to c₃ of ψ = P L²/EI, which run smoothly from compression (sines) through
//! nought (the cubic of plain bending) to tension (hyperbolic), so that there is one formula and no limit to take.

use crate::numerics::six_points;

/// c₀ to c₃, c_k(ψ) = Σ (−ψ)^j / (2j + k)!: cos √ψ, sin √ψ / √ψ, (1 − c₀)/ψ, (1 − c₁)/ψ.
pub(super) fn c(psi: f64) -> [f64; 4] {
    if psi == 0.0 {
        return [1.0, 1.0, 0.5, 1.0 / 6.0];
    }
    if psi.abs() < 1.0 {
        let mut sums = [0.0; 4];
        let mut terms = [1.0, 1.0, 0.5, 1.0 / 6.0];
        for j in 0..10 {
            for (k, (sum, term)) in sums.iter_mut().zip(&mut terms).enumerate() {
                *sum += *term;
                let n = (2 * j + k) as f64;
                *term *= -psi / ((n + 1.0) * (n + 2.0));
            }
        }
        return sums;
    }
    let root = psi.abs().sqrt();
    let (c0, c1) =
        if psi > 0.0 { (root.cos(), root.sin() / root) } else { (root.cosh(), root.sinh() / root) };
    [c0, c1, (1.0 - c0) / psi, (1.0 - c1) / psi]
}

/// The value of ψ at which a member clamped at both ends buckles: (2π)².
pub(super) const CLAMPED: f64 = 4.0 * std::f64::consts::PI * std::f64::consts::PI;

/// A member in one plane. Ends are told as v and θ = v′ at the start, then at the finish.
#[derive(Debug, Clone, Copy)]
pub(super) struct Plane {
    pub(super) length: f64,
    /// E I.
    pub(super) bending: f64,
    /// Compression.
    pub(super) thrust: f64,
    psi: f64,
    c: [f64; 4],
    /// c₂² − c₁ c₃: nought where the clamped member buckles.
    spread: f64,
}

/// Load across the member, straight from one place to another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spread {
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) at_from: f64,
    pub(super) at_to: f64,
}

/// A force across the member, and a moment in the plane, from v towards θ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spot {
    pub(super) at: f64,
    pub(super) force: f64,
    pub(super) moment: f64,
}

/// What stands at one place: deflection, slope, moment E I v″, force across the undeflected axis E I v‴ + P v′.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct State {
    pub(super) deflection: f64,
    pub(super) slope: f64,
    pub(super) moment: f64,
    pub(super) shear: f64,
}

/// Which side of a place: a force there counts beyond it only.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    Before,
    Beyond,
}

impl Spread {
    pub(super) fn at(&self, place: f64) -> f64 {
        let share = (place - self.from) / (self.to - self.from);
        self.at_from * (1.0 - share) + self.at_to * share
    }

    /// The whole of it between its beginning and a place, and its moment about that place.
    pub(super) fn until(&self, place: f64) -> (f64, f64) {
        let to = self.to.min(place);
        if to <= self.from {
            return (0.0, 0.0);
        }
        let (length, end) = (to - self.from, self.at(to));
        let whole = 0.5 * length * (self.at_from + end);
        let about_end = length * length * (2.0 * self.at_from + end) / 6.0;
        (whole, about_end + whole * (place - to))
    }
}

impl Plane {
    pub(super) fn new(length: f64, bending: f64, thrust: f64) -> Self {
        let psi = thrust * length * length / bending;
        let c = c(psi);
        // Two forms of one thing: the first loses digits in strong tension, the second near nought.
        let spread = if psi.abs() < 1.0 {
            c[2] * c[2] - c[1] * c[3]
        } else {
            (2.0 - 2.0 * c[0] - psi * c[1]) / (psi * psi)
        };
        Self { length, bending, thrust, psi, c, spread }
    }

    pub(super) const fn psi(&self) -> f64 {
        self.psi
    }

    /// The forces that act on the ends for each movement of an end by one.
    pub(super) fn stiffness(&self) -> [[f64; 4]; 4] {
        let (length, [_, c1, c2, c3]) = (self.length, self.c);
        let unit = self.bending / (length * self.spread);
        let across = unit * c1 / (length * length);
        let mixed = unit * c2 / length;
        let (near, far) = (unit * (c2 - c3), unit * c3);
        [
            [across, mixed, -across, mixed],
            [mixed, near, -mixed, far],
            [-across, -mixed, across, -mixed],
            [mixed, far, -mixed, near],
        ]
    }

    /// Deflection and slope at a place for each movement of an end by one.
    fn shape(&self, place: f64) -> ([f64; 4], [f64; 4]) {
        // Hyperbolic functions grow from the end they begin at: begin at the nearer one.
        if place > 0.5 * self.length {
            let ([v0, t0, v1, t1], [v0s, t0s, v1s, t1s]) = self.shape_from_start(self.length - place);
            return ([v1, -t1, v0, -t0], [-v1s, t1s, -v0s, t0s]);
        }
        self.shape_from_start(place)
    }

    fn shape_from_start(&self, place: f64) -> ([f64; 4], [f64; 4]) {
        let (length, [_, c1, c2, c3]) = (self.length, self.c);
        let x = place / length;
        let [_, d1, d2, d3] = c(self.psi * x * x);
        // Of each end's movement: the start's deflection and slope, and what is then missing at the finish.
        let of = |start: f64, slope: f64, missing: f64, missing_slope: f64| {
            let second = (c2 * missing - c3 * missing_slope) / self.spread;
            let third = (c2 * missing_slope - c1 * missing) / self.spread;
            (
                start + slope * x + second * x * x * d2 + third * x * x * x * d3,
                (slope + second * x * d1 + third * x * x * d2) / length,
            )
        };
        let parts = [
            of(1.0, 0.0, -1.0, 0.0),
            of(0.0, length, -length, -length),
            of(0.0, 0.0, 1.0, 0.0),
            of(0.0, 0.0, 0.0, length),
        ];
        (parts.map(|part| part.0), parts.map(|part| part.1))
    }

    /// What a load hands to the clamped ends, as forces on them: by reciprocity the load times the shape.
    pub(super) fn handed_by(&self, load: &Spread) -> [f64; 4] {
        let mut handed = [0.0; 4];
        for (place, weight) in self.points(load.from, load.to) {
            let whole = weight * load.at(place);
            for (sum, shape) in handed.iter_mut().zip(self.shape(place).0) {
                *sum += whole * shape;
            }
        }
        handed
    }

    /// The same of a force and a moment at one place.
    pub(super) fn handed_by_spot(&self, spot: &Spot) -> [f64; 4] {
        let (deflection, slope) = self.shape(spot.at);
        std::array::from_fn(|end| spot.force * deflection[end] + spot.moment * slope[end])
    }

    /// Places and weights to integrate by, close enough to be exact to rounding.
    fn points(&self, from: f64, to: f64) -> impl Iterator<Item = (f64, f64)> + use<> {
        let waves = self.psi.abs().sqrt() * (to - from) / self.length;
        let count = waves.ceil().max(1.0) as usize;
        let step = (to - from) / count as f64;
        (0..count).flat_map(move |at| six_points(from + step * at as f64, from + step * (at + 1) as f64))
    }

    /// What stands at a place, from what stands at the start or the finish, whichever is nearer.
    pub(super) fn state(
        &self,
        [start, finish]: [State; 2],
        spreads: &[Spread],
        spots: &[Spot],
        place: f64,
        side: Side,
    ) -> State {
        if place <= 0.5 * self.length {
            return self.carried(start, spreads, spots, place, side);
        }
        // Seen from the other end slopes and shears change their sign, deflections and moments do not.
        let turned = |state: State| State { slope: -state.slope, shear: -state.shear, ..state };
        let mirror = |at: f64| self.length - at;
        let spreads: Vec<Spread> = spreads
            .iter()
            .map(|load| Spread {
                from: mirror(load.to),
                to: mirror(load.from),
                at_from: load.at_to,
                at_to: load.at_from,
            })
            .collect();
        let spots: Vec<Spot> =
            spots.iter().map(|spot| Spot { at: mirror(spot.at), moment: -spot.moment, ..*spot }).collect();
        let side = if side == Side::Before { Side::Beyond } else { Side::Before };
        turned(self.carried(turned(finish), &spreads, &spots, mirror(place), side))
    }

    fn carried(&self, start: State, spreads: &[Spread], spots: &[Spot], place: f64, side: Side) -> State {
        let per_square = self.thrust / self.bending;
        let c_of = |distance: f64| c(per_square * distance * distance);
        let x = place;
        let [c0, c1, c2, c3] = c_of(x);
        let third = start.shear - self.thrust * start.slope;
        let mut at = State {
            deflection: start.deflection
                + start.slope * x
                + (start.moment * c2 + third * x * c3) * x * x / self.bending,
            slope: start.slope + (start.moment * c1 + third * x * c2) * x / self.bending,
            moment: start.moment * c0 + third * x * c1,
            shear: start.shear,
        };
        for load in spreads {
            let to = load.to.min(x);
            if to <= load.from {
                continue;
            }
            for (from, weight) in self.points(load.from, to) {
                let (d, force) = (x - from, weight * load.at(from));
                let [_, c1, c2, c3] = c_of(d);
                at.deflection += force * d * d * d * c3 / self.bending;
                at.slope += force * d * d * c2 / self.bending;
                at.moment += force * d * c1;
            }
            at.shear += load.until(x).0;
        }
        for spot in spots.iter().filter(|spot| spot.at < x || (spot.at == x && side == Side::Beyond)) {
            let d = x - spot.at;
            let [c0, c1, c2, c3] = c_of(d);
            at.deflection += (spot.force * d * c3 - spot.moment * c2) * d * d / self.bending;
            at.slope += (spot.force * d * c2 - spot.moment * c1) * d / self.bending;
            at.moment += spot.force * d * c1 - spot.moment * c0;
            at.shear += spot.force;
        }
        at
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    #[test]
    fn the_functions_meet_where_series_and_closed_form_change_over() {
        for psi in [1.0_f64, -1.0] {
            let (inside, outside) = (c(psi * (1.0 - 1e-12)), c(psi * (1.0 + 1e-12)));
            for (one, other) in inside.iter().zip(outside) {
                assert_relative_eq!(*one, other, max_relative = 1e-11);
            }
        }
        assert_eq!(c(0.0), [1.0, 1.0, 0.5, 1.0 / 6.0]);
    }

    #[test]
    fn without_thrust_the_stiffness_is_the_textbook_s() {
        let plane = Plane::new(2.0, 3.0, 0.0);
        let (ei, l) = (3.0, 2.0_f64);
        let expected = [12.0 * ei / l.powi(3), 6.0 * ei / l.powi(2), 4.0 * ei / l, 2.0 * ei / l];
        let [first, second, ..] = plane.stiffness();
        for (found, expected) in [first[0], first[1], second[1], second[3]].into_iter().zip(expected) {
            assert_relative_eq!(found, expected, max_relative = 1e-14);
        }
    }

    #[test]
    fn loads_hand_the_clamped_ends_what_the_handbooks_say() {
        // Even load: wL/2 and wL²/12; triangle rising to the finish: 3/20, 1/30, 7/20, 1/20; a force at a third.
        let plane = Plane::new(6.0, 5.0, 0.0);
        let even = plane.handed_by(&Spread { from: 0.0, to: 6.0, at_from: 2.0, at_to: 2.0 });
        let rising = plane.handed_by(&Spread { from: 0.0, to: 6.0, at_from: 0.0, at_to: 2.0 });
        let force = plane.handed_by_spot(&Spot { at: 2.0, force: 3.0, moment: 0.0 });
        let turned = plane.handed_by_spot(&Spot { at: 3.0, force: 0.0, moment: 4.0 });
        let third = 1.0 / 3.0_f64;
        let (a, b) = (2.0, 4.0);
        for (found, expected) in [
            (even, [6.0, 6.0, 6.0, -6.0]),
            (rising, [1.8, 2.4, 4.2, -3.6]),
            (
                force,
                [
                    3.0 * (1.0 - third).powi(2) * (1.0 + 2.0 * third),
                    3.0 * a * b * b / 36.0,
                    3.0 * third * third * (3.0 - 2.0 * third),
                    -3.0 * a * a * b / 36.0,
                ],
            ),
            // A moment at midspan: 3M/2L across, M/4 at both ends.
            (turned, [-1.0, -1.0, 1.0, -1.0]),
        ] {
            for (one, other) in found.iter().zip(expected) {
                assert_relative_eq!(*one, other, max_relative = 1e-13);
            }
        }
    }

    /// A second derivation of the end stiffness under thrust: Timoshenko and Gere's stability functions as they stand
    /// in the textbooks (from memory), s = φ(sin φ − φ cos φ)/(2 − 2 cos φ − φ sin φ), s c = φ(φ − sin φ)/(the same).
    #[test]
    fn under_thrust_the_turning_stiffness_is_that_of_the_stability_functions() {
        for phi in [0.3_f64, 1.2, 3.0, 5.5] {
            let under = 2.0 - 2.0 * phi.cos() - phi * phi.sin();
            let near = phi * (phi.sin() - phi * phi.cos()) / under;
            let far = phi * (phi - phi.sin()) / under;
            let [_, second, ..] = Plane::new(1.0, 1.0, phi * phi).stiffness();
            assert_relative_eq!(second[1], near, max_relative = 1e-9);
            assert_relative_eq!(second[3], far, max_relative = 1e-9);
        }
    }

    #[test]
    fn the_clamped_member_buckles_at_four_times_euler() {
        let spread = |share: f64| Plane::new(1.0, 1.0, CLAMPED * share).spread;
        assert!(spread(0.9999) > 0.0 && spread(1.0001) < 0.0);
    }

    proptest! {
        /// The state carried from the start and that carried from the finish are one in the middle, under any load,
        /// thrust or tension: shape, end forces and inner forces agree.
        #[test]
        fn both_ends_tell_the_same_of_the_middle(
            psi in -300.0..30.0_f64, ends in prop::array::uniform4(-1.0..1.0_f64),
            from in 0.0..0.9_f64, length in 0.05..1.0_f64, at_from in -3.0..3.0_f64, at_to in -3.0..3.0_f64,
            at in 0.0..1.0_f64, force in -2.0..2.0_f64, moment in -2.0..2.0_f64,
        ) {
            let plane = Plane::new(1.0, 1.0, psi);
            let spread = Spread { from, to: (from + length).min(1.0), at_from, at_to };
            let spot = Spot { at, force, moment };
            let (stiffness, handed) = (plane.stiffness(), plane.handed_by(&spread));
            let handed_by_spot = plane.handed_by_spot(&spot);
            let on_end: [f64; 4] = std::array::from_fn(|row| {
                (0..4).map(|k| stiffness[row][k] * ends[k]).sum::<f64>() - handed[row] - handed_by_spot[row]
            });
            let start = State { deflection: ends[0], slope: ends[1], moment: -on_end[1], shear: on_end[0] };
            let finish = State { deflection: ends[2], slope: ends[3], moment: on_end[3], shear: -on_end[2] };
            for place in [0.5, 0.5 * at + 0.25] {
                let from_start = plane.carried(start, &[spread], &[spot], place, Side::Beyond);
                let mirrored = plane.state([start, finish], &[spread], &[spot], place + 1e-9, Side::Beyond);
                if place + 1e-9 > 0.5 && (place - at).abs() > 1e-6 {
                    let scale = 1.0 + on_end.iter().fold(0.0_f64, |most, force| most.max(force.abs()));
                    prop_assert!((from_start.deflection - mirrored.deflection).abs() < 1e-7 * scale);
                    prop_assert!((from_start.slope - mirrored.slope).abs() < 1e-7 * scale);
                    prop_assert!((from_start.moment - mirrored.moment).abs() < 1e-7 * scale);
                    prop_assert!((from_start.shear - mirrored.shear).abs() < 1e-7 * scale);
                }
            }
        }
    }
}
