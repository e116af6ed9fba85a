//! Inner forces and deflections along one member.

use super::column::{Plane, Side, State};
use super::element::{OnMember, Vector12};
use super::error::FrameError;
use super::model::{Element, Kind, Member, Triple};
use crate::units::{Force, Length, Moment, Quantity};
use nalgebra::Vector3;

/// Each piece between loads is searched in so many steps for where a quantity turns.
const STEPS: usize = 16;
/// Halvings that end at the last bit.
const HALVINGS: usize = 60;

/// Inner forces at one place; signs as in [`crate::frame`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InnerForces {
    /// Tension.
    pub axial: Force,
    /// Along its y. In second order across the undeflected axis.
    pub shear_y: Force,
    /// Along its z. In second order across the undeflected axis.
    pub shear_z: Force,
    /// About its x.
    pub torsion: Moment,
    /// In the plane of x and z.
    pub moment_y: Moment,
    /// In the plane of x and y.
    pub moment_z: Moment,
}

impl InnerForces {
    /// Both shears as one, which is what a round section takes.
    #[must_use]
    pub fn shear(&self) -> Force {
        Force::from_si(self.shear_y.si().hypot(self.shear_z.si()))
    }
    /// Both bending moments as one, which is what a round section takes.
    #[must_use]
    pub fn moment(&self) -> Moment {
        Moment::from_si(self.moment_y.si().hypot(self.moment_z.si()))
    }
}

/// A value and the place where it stands, from the member's start.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extreme<Q> {
    /// The value.
    pub value: Q,
    /// The place.
    pub at: Length,
}

/// The least and the greatest of a quantity along a member, by sign.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range<Q> {
    /// The least.
    pub least: Extreme<Q>,
    /// The greatest.
    pub greatest: Extreme<Q>,
}

impl<Q: Quantity> Range<Q> {
    /// The one that lies further from nought.
    #[must_use]
    pub fn largest(&self) -> Extreme<Q> {
        if self.least.value.si().abs() > self.greatest.value.si().abs() { self.least } else { self.greatest }
    }
}

/// What stands at one of several places along a member.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// The place, from the member's start.
    pub at: Length,
    /// The inner forces.
    pub forces: InnerForces,
    /// How far it has moved, along the axes of the frame.
    pub shift: Triple<Length>,
}

/// What stands along one member.
#[derive(Debug, Clone)]
pub struct AlongMember<'s> {
    member: Member,
    element: &'s Element,
    /// Of its ends, in its own axes.
    movements: Vector12,
    /// On its ends, in its own axes.
    forces: Vector12,
    on: &'s OnMember,
    planes: Option<[Plane; 2]>,
}

impl<'s> AlongMember<'s> {
    pub(super) fn new(
        member: Member,
        element: &'s Element,
        [movements, forces]: [Vector12; 2],
        on: &'s OnMember,
        thrust: f64,
    ) -> Self {
        Self { member, element, movements, forces, on, planes: element.planes(thrust) }
    }

    /// How long it is.
    #[must_use]
    pub fn length(&self) -> Length {
        Length::from_si(self.element.length)
    }

    /// The inner forces at a place; where a load stands at that very place, beyond it.
    ///
    /// # Errors
    /// If the place is off the member.
    pub fn forces(&self, at: Length) -> Result<InnerForces, FrameError> {
        let (place, side) = self.place(at)?;
        let [in_xy, in_xz] = self.states(place, side);
        Ok(InnerForces {
            axial: Force::from_si(self.axial(place, side)),
            shear_y: Force::from_si(in_xy.shear),
            shear_z: Force::from_si(in_xz.shear),
            torsion: Moment::from_si(self.torsion(place, side)),
            moment_y: Moment::from_si(in_xz.moment),
            moment_z: Moment::from_si(in_xy.moment),
        })
    }

    /// How far a place has moved, along the axes of the frame.
    ///
    /// # Errors
    /// If the place is off the member.
    pub fn shift(&self, at: Length) -> Result<Triple<Length>, FrameError> {
        let (place, side) = self.place(at)?;
        let [in_xy, in_xz] = self.states(place, side);
        let own = Vector3::new(self.stretched(place), in_xy.deflection, in_xz.deflection);
        Ok(Triple::from_si(self.element.axes.transpose() * own))
    }

    /// What stands at evenly spaced places, both ends among them: one more than there are parts.
    #[must_use]
    pub fn stations(&self, parts: usize) -> Vec<Station> {
        (0..=parts)
            .map(|at| {
                let at = self.length() * (at as f64 / parts.max(1) as f64);
                let on = "a share of the length is on the member";
                Station { at, forces: self.forces(at).expect(on), shift: self.shift(at).expect(on) }
            })
            .collect()
    }

    /// The extremes of the axial force, tension positive.
    #[must_use]
    pub fn axial_range(&self) -> Range<Force> {
        let slope = |x: f64| -self.on.spreads[0].iter().map(|load| within(load, x)).sum::<f64>();
        self.range(|x, side| self.axial(x, side), slope)
    }
    /// The extremes of the shear along its y.
    #[must_use]
    pub fn shear_y_range(&self) -> Range<Force> {
        self.range(|x, side| self.states(x, side)[0].shear, |x| self.load_across(0, x))
    }
    /// The extremes of the shear along its z.
    #[must_use]
    pub fn shear_z_range(&self) -> Range<Force> {
        self.range(|x, side| self.states(x, side)[1].shear, |x| self.load_across(1, x))
    }
    /// The extremes of the torsion.
    #[must_use]
    pub fn torsion_range(&self) -> Range<Moment> {
        self.range(|x, side| self.torsion(x, side), |_| 0.0)
    }
    /// The extremes of the moment in the plane of x and z.
    #[must_use]
    pub fn moment_y_range(&self) -> Range<Moment> {
        self.range(|x, side| self.states(x, side)[1].moment, |x| self.moment_slope(1, x))
    }
    /// The extremes of the moment in the plane of x and y.
    #[must_use]
    pub fn moment_z_range(&self) -> Range<Moment> {
        self.range(|x, side| self.states(x, side)[0].moment, |x| self.moment_slope(0, x))
    }
    /// The extremes of the movement along its y.
    #[must_use]
    pub fn deflection_y_range(&self) -> Range<Length> {
        self.range(|x, side| self.states(x, side)[0].deflection, |x| self.states(x, Side::Beyond)[0].slope)
    }
    /// The extremes of the movement along its z.
    #[must_use]
    pub fn deflection_z_range(&self) -> Range<Length> {
        self.range(|x, side| self.states(x, side)[1].deflection, |x| self.states(x, Side::Beyond)[1].slope)
    }
    /// The greatest of both bending moments taken as one, which is what a round section takes.
    #[must_use]
    pub fn greatest_moment(&self) -> Extreme<Moment> {
        let size = |x: f64, side: Side| {
            let [in_xy, in_xz] = self.states(x, side);
            in_xy.moment.hypot(in_xz.moment)
        };
        let slope = |x: f64| {
            let states = self.states(x, Side::Beyond);
            (0..2).map(|plane| states[plane].moment * self.moment_slope(plane, x)).sum::<f64>()
        };
        self.range(size, slope).greatest
    }

    fn place(&self, at: Length) -> Result<(f64, Side), FrameError> {
        let (length, reach) = (self.element.length, 1e-9 * self.element.length);
        if !(-reach..=length + reach).contains(&at.si()) {
            return Err(FrameError::OffMember { member: self.member, at, length: self.length() });
        }
        let place = at.si().clamp(0.0, length);
        Ok((place, if place < length { Side::Beyond } else { Side::Before }))
    }

    /// In the plane of x and y, and in that of x and z.
    fn states(&self, place: f64, side: Side) -> [State; 2] {
        let (moved, forces) = (&self.movements, &self.forces);
        let Some(planes) = &self.planes else {
            // A bar stays straight between its joints.
            let share = place / self.element.length;
            return [1, 2].map(|axis| State {
                deflection: moved[axis] * (1.0 - share) + moved[axis + 6] * share,
                slope: (moved[axis + 6] - moved[axis]) / self.element.length,
                moment: 0.0,
                shear: forces[axis],
            });
        };
        let state = |plane: usize, across: usize, turn: usize, sign: f64| {
            let start = State {
                deflection: moved[across],
                slope: sign * moved[turn],
                moment: -sign * forces[turn],
                shear: forces[across],
            };
            let finish = State {
                deflection: moved[across + 6],
                slope: sign * moved[turn + 6],
                moment: sign * forces[turn + 6],
                shear: -forces[across + 6],
            };
            let (spreads, spots) = (&self.on.spreads[plane + 1], &self.on.spots[plane]);
            planes[plane].state([start, finish], spreads, spots, place, side)
        };
        [state(0, 1, 5, 1.0), state(1, 2, 4, -1.0)]
    }

    fn load_across(&self, plane: usize, place: f64) -> f64 {
        self.on.spreads[plane + 1].iter().map(|load| within(load, place)).sum()
    }

    fn moment_slope(&self, plane: usize, place: f64) -> f64 {
        let state = self.states(place, Side::Beyond)[plane];
        let thrust = self.planes.map_or(0.0, |planes| planes[plane].thrust);
        state.shear - thrust * state.slope
    }

    fn axial(&self, place: f64, side: Side) -> f64 {
        let spread: f64 = self.on.spreads[0].iter().map(|load| load.until(place).0).sum();
        -self.forces[0] - spread - passed(&self.on.axial_spots, place, side)
    }

    fn torsion(&self, place: f64, side: Side) -> f64 {
        -self.forces[3] - passed(&self.on.twists, place, side)
    }

    /// How far it has moved along itself.
    fn stretched(&self, place: f64) -> f64 {
        let spread: f64 = self.on.spreads[0].iter().map(|load| load.until(place).1).sum();
        let spots: f64 = self.on.axial_spots.iter().map(|(at, force)| force * (place - at).max(0.0)).sum();
        let axial = match self.element.kind {
            // Slack, it hangs between its joints: told as if it were stretched evenly.
            Kind::Bar { .. } => {
                let moved = &self.movements;
                return moved[0] + (moved[6] - moved[0]) * place / self.element.length;
            }
            Kind::Beam { axial, .. } => axial,
        };
        self.movements[0] + (-self.forces[0] * place - spread - spots) / axial
    }

    /// Where loads begin, end or stand, and the ends of the member.
    fn breaks(&self) -> Vec<f64> {
        let spreads = self.on.spreads.iter().flatten().flat_map(|load| [load.from, load.to]);
        let spots = self.on.spots.iter().flatten().map(|spot| spot.at);
        let others = self.on.axial_spots.iter().chain(&self.on.twists).map(|(at, _)| *at);
        let mut breaks: Vec<f64> =
            [0.0, self.element.length].into_iter().chain(spreads).chain(spots).chain(others).collect();
        breaks.sort_by(f64::total_cmp);
        breaks.dedup();
        breaks
    }

    fn range<Q: Quantity>(&self, value: impl Fn(f64, Side) -> f64, slope: impl Fn(f64) -> f64) -> Range<Q> {
        let breaks = self.breaks();
        let mut found: Vec<(f64, f64)> = Vec::new();
        for (at, place) in breaks.iter().enumerate() {
            if at > 0 {
                found.push((*place, value(*place, Side::Before)));
            }
            if at + 1 < breaks.len() {
                found.push((*place, value(*place, Side::Beyond)));
            }
        }
        for pair in breaks.windows(2) {
            let step = (pair[1] - pair[0]) / STEPS as f64;
            // A slope just before the next load is that of this piece; two steps share the place between them, so that
            // no turn falls between.
            let place =
                |at: usize| if at < STEPS { pair[0] + step * at as f64 } else { pair[1] - 1e-9 * step };
            let mut before = slope(place(0)) > 0.0;
            for at in 0..STEPS {
                let rising = before;
                before = slope(place(at + 1)) > 0.0;
                if before == rising {
                    continue;
                }
                let (mut low, mut high) = (place(at), place(at + 1));
                for _ in 0..HALVINGS {
                    let middle = 0.5 * (low + high);
                    if (slope(middle) > 0.0) == rising { low = middle } else { high = middle }
                }
                found.push((low, value(low, Side::Beyond)));
            }
        }
        let extreme = |(at, value): (f64, f64)| Extreme { value: Q::from_si(value), at: Length::from_si(at) };
        let pick = |better: fn(f64, f64) -> bool| {
            found.iter().copied().reduce(|best, this| if better(this.1, best.1) { this } else { best })
        };
        let some = "a member has two ends";
        Range {
            least: extreme(pick(|one, other| one < other).expect(some)),
            greatest: extreme(pick(|one, other| one > other).expect(some)),
        }
    }
}

/// A line load at a place, nothing outside it.
fn within(load: &super::column::Spread, place: f64) -> f64 {
    if (load.from..load.to).contains(&place) { load.at(place) } else { 0.0 }
}

/// The sum of what stands before a place.
fn passed(spots: &[(f64, f64)], place: f64, side: Side) -> f64 {
    spots
        .iter()
        .filter(|(at, _)| *at < place || (*at == place && side == Side::Beyond))
        .map(|(_, size)| size)
        .sum()
}
