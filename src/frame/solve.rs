//! Putting the members together and solving: rounds, balance, results.

use super::along::AlongMember;
use super::element::{Condensed, Loose, OnMember, UNLOADED, Vector12};
use super::error::FrameError;
use super::load::{Action, Axes, Loads, MemberLoad};
use super::model::{Element, FIXED, Frame, Freedom, Joint, Kind, Member, Triple};
use crate::numerics::{NoPivot, Profile};
use crate::units::{Force, Length, Quantity, Value};
use nalgebra::Vector3;

/// A pivot that keeps no more than this share of its diagonal is nought but for rounding.
const PIVOT: f64 = 1e-12;
/// Balance worse than this is mended once by solving for what is left.
const MEND: f64 = 1e-12;
/// Axial forces that change by less than this share of the greatest are settled.
const SETTLED: f64 = 1e-10;
/// A bar is slack, or taut again, by more than this share of the greatest axial force.
const SLACK: f64 = 1e-9;
/// For so many rounds all bars change over at once, later one at a time: that ends for certain.
const ALL_AT_ONCE: usize = 10;
/// −ψ = T L²/EI beyond which a member is a string: bending reaches a twentieth of the length from its ends.
const STRING: f64 = 400.0;

/// Whether axial forces soften or stiffen bending.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Order {
    /// They do not.
    First,
    /// They do: sway and bow under thrust, P-Δ and P-δ.
    Second,
}

/// How long and how well to solve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// The greatest number of rounds for slack bars and axial forces to settle in.
    pub rounds: usize,
    /// The greatest force out of balance, as a share of the greatest force.
    pub residual: f64,
}

impl Default for Limits {
    fn default() -> Self {
        Self { rounds: 60, residual: 1e-8 }
    }
}

/// How a joint moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Movement {
    /// Along the axes.
    pub shift: Triple<Length>,
    /// About the axes, in radians.
    pub turn: Triple<f64>,
}

/// What is kept of the ends of a member, in its own axes; the forces on them follow from it.
#[derive(Debug, Clone)]
struct Ends {
    movements: Vector12,
    /// The mean of its compression at both.
    thrust: f64,
}

/// What a frame does under its loads.
#[derive(Debug, Clone)]
pub struct Solution<'f> {
    frame: &'f Frame,
    order: Order,
    on_members: Vec<Option<Box<OnMember>>>,
    trial: Trial,
    answer: Answer,
    rounds: usize,
}

/// What a round starts from: the thrust of each member, and the bars that are slack.
#[derive(Debug, Clone)]
struct Trial {
    thrusts: Vec<f64>,
    slack: Vec<bool>,
}

#[derive(Debug, Clone)]
struct Answer {
    /// Six a joint.
    movements: Vec<f64>,
    reactions: Vec<f64>,
    ends: Vec<Ends>,
    residual: f64,
}

/// The loads as plain numbers.
struct Borne {
    /// Six a joint.
    joints: Vec<f64>,
    members: Vec<Option<Box<OnMember>>>,
}

impl Frame {
    /// Solves for one case of loads.
    ///
    /// # Errors
    /// A load off its member, a mechanism, buckling, what does not settle, forces that do not balance.
    pub fn solve(&self, loads: &Loads, order: Order) -> Result<Solution<'_>, FrameError> {
        self.solve_within(loads, order, Limits::default())
    }

    /// The same within limits of the caller's.
    ///
    /// # Errors
    /// As for [`Self::solve`].
    pub fn solve_within(
        &self,
        loads: &Loads,
        order: Order,
        limits: Limits,
    ) -> Result<Solution<'_>, FrameError> {
        let borne = self.borne(loads)?;
        let count = self.elements.len();
        let mut trial = Trial { thrusts: vec![0.0; count], slack: vec![false; count] };
        // Slack bars settle first, so that no thrust is taken from a round that is far off.
        let mut softened = false;
        let mut last = 0;
        for round in 1..=limits.rounds {
            let answer = self.round(&borne, &trial)?;
            let next = self.next(&trial, &answer, round);
            let changed = next.slack.iter().zip(&trial.slack).position(|(one, other)| one != other);
            let (most, moved) = drift(&trial.thrusts, &next.thrusts);
            let settled = match (order, softened) {
                (Order::First, _) => true,
                (Order::Second, true) => moved.1 <= SETTLED * most,
                (Order::Second, false) => most == 0.0,
            };
            if changed.is_none() && settled {
                if answer.residual > limits.residual || answer.residual.is_nan() {
                    return Err(FrameError::Unbalanced { residual: answer.residual, limit: limits.residual });
                }
                let on_members = borne.members;
                return Ok(Solution { frame: self, order, on_members, trial, answer, rounds: round });
            }
            last = changed.unwrap_or(moved.0);
            softened |= order == Order::Second && changed.is_none();
            trial.slack = next.slack;
            if softened {
                trial.thrusts = next.thrusts;
            }
        }
        Err(FrameError::NotSettled { rounds: limits.rounds, member: Member(last) })
    }

    /// What the next round starts from.
    fn next(&self, trial: &Trial, answer: &Answer, round: usize) -> Trial {
        let pulled = |element: &Element, ends: &Ends| {
            element.axial() / element.length * (ends.movements[6] - ends.movements[0])
        };
        let thrusts: Vec<f64> = answer.ends.iter().map(|ends| ends.thrust).collect();
        let greatest = thrusts.iter().fold(0.0_f64, |most, thrust| most.max(thrust.abs()));
        let mut slack = trial.slack.clone();
        for (at, (element, ends)) in self.elements.iter().zip(&answer.ends).enumerate() {
            if !matches!(element.kind, Kind::Bar { tension_only: true, .. }) {
                continue;
            }
            let pull = pulled(element, ends);
            let wrong = if trial.slack[at] { pull > SLACK * greatest } else { pull < -SLACK * greatest };
            if wrong {
                slack[at] = !trial.slack[at];
                if round > ALL_AT_ONCE {
                    break;
                }
            }
        }
        Trial { thrusts, slack }
    }

    /// One linear solution.
    fn round(&self, borne: &Borne, trial: &Trial) -> Result<Answer, FrameError> {
        let mut matrix = Profile::new(self.firsts.clone());
        let mut right = vec![0.0; matrix.rows()];
        for (own, load) in borne.joints.iter().enumerate() {
            if self.equations[own] != FIXED {
                right[self.equations[own]] += load;
            }
        }
        for (own, stiffness) in &self.springs {
            if self.equations[*own] != FIXED {
                matrix.add(self.equations[*own], self.equations[*own], *stiffness);
            }
        }
        let mut loose = Vec::with_capacity(self.elements.len());
        for (at, element) in self.elements.iter().enumerate() {
            self.within_limits(at, trial.thrusts[at])?;
            let part = element
                .condensed(trial.thrusts[at], borne.members[at].as_deref())
                .map_err(|_| self.buckled_member(at, trial.thrusts[at]))?;
            if !trial.slack[at] {
                self.put_in(element, &part, &mut matrix, &mut right);
            }
            loose.push(part.loose);
        }
        self.settle_idle(&mut matrix, &right)?;
        let factors = matrix.factor(PIVOT, &mut right).map_err(|stopped| self.unstable(&stopped, trial))?;
        let (mut answer, mut left) = self.recover(borne, trial, &loose, &right);
        if answer.residual > MEND {
            factors.solve(&mut left);
            for (value, more) in right.iter_mut().zip(&left) {
                *value -= more;
            }
            let (mended, _) = self.recover(borne, trial, &loose, &right);
            if mended.residual < answer.residual {
                answer = mended;
            }
        }
        Ok(answer)
    }

    fn within_limits(&self, at: usize, thrust: f64) -> Result<(), FrameError> {
        let element = &self.elements[at];
        let Some(planes) = element.planes(thrust) else { return Ok(()) };
        if element.clamped().is_some_and(|clamped| thrust >= clamped) {
            return Err(self.buckled_member(at, thrust));
        }
        if let Some(plane) = planes.iter().find(|plane| plane.psi() < -STRING) {
            return Err(FrameError::TooTaut {
                member: Member(at),
                tension: Force::from_si(-thrust),
                limit: Force::from_si(STRING * plane.bending / (plane.length * plane.length)),
            });
        }
        Ok(())
    }

    fn buckled_member(&self, at: usize, thrust: f64) -> FrameError {
        FrameError::BuckledMember {
            member: Member(at),
            compression: Force::from_si(thrust),
            clamped: Force::from_si(self.elements[at].clamped().unwrap_or(0.0)),
        }
    }

    fn put_in(&self, element: &Element, part: &Condensed, matrix: &mut Profile, right: &mut [f64]) {
        let stiffness = element.matrix_to_frame(&part.stiffness);
        let handed = element.to_frame(&part.handed);
        let equations = self.ends_of(element).map(|own| self.equations[own]);
        for (row, own) in equations.into_iter().enumerate() {
            if own == FIXED {
                continue;
            }
            right[own] += handed[row];
            for (column, other) in equations.into_iter().enumerate() {
                // Both halves of the member's matrix meet in the one half that is kept; two freedoms of a member that
                // share an equation meet on its diagonal.
                if other != FIXED && (other < own || (other == own && column <= row)) {
                    let twice = if other == own && column < row { 2.0 } else { 1.0 };
                    matrix.add(own, other, twice * stiffness[(row, column)]);
                }
            }
        }
    }

    /// The freedoms of the joints at both ends.
    fn ends_of(&self, element: &Element) -> [usize; 12] {
        std::array::from_fn(
            |end| {
                if end < 6 { 6 * element.start + end } else { 6 * element.finish + end - 6 }
            },
        )
    }

    /// A turn that no member feels and no moment asks for, such as that of a joint of bars, is left out.
    fn settle_idle(&self, matrix: &mut Profile, right: &[f64]) -> Result<(), FrameError> {
        for (equation, own) in self.spokesmen.iter().enumerate() {
            if matrix.diagonal()[equation] == 0.0 {
                if own % 6 < 3 || right[equation] != 0.0 {
                    return Err(self.mechanism(*own));
                }
                matrix.add(equation, equation, 1.0);
            }
        }
        Ok(())
    }

    fn mechanism(&self, own: usize) -> FrameError {
        let (joint, at, freedom) = self.named(own);
        FrameError::Mechanism { joint, at, freedom }
    }

    fn named(&self, own: usize) -> (Joint, Triple<Length>, Freedom) {
        (Joint(own / 6), Triple::from_si(self.joints[own / 6]), Freedom::ALL[own % 6])
    }

    /// Names what moves most in the shape that meets no resistance; of what moves alike, the first, and a shift before
    /// a turn.
    fn unstable(&self, stopped: &NoPivot, trial: &Trial) -> FrameError {
        let size = |equation: usize, moved: f64| {
            let turn = self.spokesmen[equation] % 6 >= 3;
            moved.abs() * if turn { 0.1 * self.size } else { 1.0 }
        };
        let sizes: Vec<f64> =
            stopped.shape.iter().enumerate().map(|(equation, moved)| size(equation, *moved)).collect();
        let most = sizes.iter().fold(0.0_f64, |most, size| most.max(*size));
        let first = sizes.iter().position(|size| *size >= 0.999_999 * most).unwrap_or(stopped.row);
        let own = self.spokesmen[first];
        if trial.thrusts.iter().all(|thrust| *thrust == 0.0) {
            return self.mechanism(own);
        }
        let (joint, at, freedom) = self.named(own);
        FrameError::Buckled { joint, at, freedom }
    }

    /// Movements, end forces, reactions and balance from the solved equations; and what is out of balance, equation by
    /// equation.
    fn recover(
        &self,
        borne: &Borne,
        trial: &Trial,
        loose: &[Option<Box<Loose>>],
        solved: &[f64],
    ) -> (Answer, Vec<f64>) {
        let moved = |own: usize| match self.equations[own] {
            FIXED => 0.0,
            equation => solved[equation],
        };
        let movements: Vec<f64> = (0..self.equations.len()).map(moved).collect();
        let mut left = vec![0.0; solved.len()];
        let mut reactions = vec![0.0; movements.len()];
        let (mut force, mut moment) = (0.0_f64, 0.0_f64);
        let mut meet = |own: usize, size: f64, reactions: &mut [f64]| {
            match self.equations[own] {
                FIXED => reactions[self.bearers[own]] += size,
                equation => left[equation] += size,
            }
            if own % 6 < 3 { force = force.max(size.abs()) } else { moment = moment.max(size.abs()) }
        };
        let mut ends = Vec::with_capacity(self.elements.len());
        for (at, element) in self.elements.iter().enumerate() {
            let owns = self.ends_of(element);
            let of_joints = element.to_own(&Vector12::from_fn(|end, _| movements[owns[end]]));
            let loose = loose[at].as_deref();
            let own_ends = loose.map_or(of_joints, |loose| loose.own_ends(of_joints));
            let forces = if trial.slack[at] {
                Vector12::zeros()
            } else {
                let handed = loose.map_or_else(Vector12::zeros, |loose| loose.handed);
                element.rigid(trial.thrusts[at]) * own_ends - handed
            };
            for (own, size) in owns.into_iter().zip(element.to_frame(&forces).iter()) {
                meet(own, *size, &mut reactions);
            }
            ends.push(Ends { movements: own_ends, thrust: 0.5 * (forces[0] - forces[6]) });
        }
        for (own, load) in borne.joints.iter().enumerate() {
            meet(own, -load, &mut reactions);
        }
        for (own, stiffness) in &self.springs {
            if self.equations[*own] != FIXED {
                let size = stiffness * movements[*own];
                meet(*own, size, &mut reactions);
                reactions[*own] -= size;
            }
        }
        let scale = force.max(moment / self.size);
        let worst = left.iter().zip(&self.spokesmen).fold(0.0_f64, |worst, (left, own)| {
            worst.max(left.abs() / if own % 6 < 3 { 1.0 } else { self.size })
        });
        let residual = if worst == 0.0 { 0.0 } else { worst / scale };
        (Answer { movements, reactions, ends, residual }, left)
    }

    /// The loads as plain numbers, those on members in the members' axes.
    fn borne(&self, loads: &Loads) -> Result<Borne, FrameError> {
        let mut joints = vec![0.0; self.equations.len()];
        for (joint, Action { force, moment }) in &loads.joints {
            if joint.0 >= self.joints.len() {
                return Err(FrameError::UnknownJoint { joint: *joint });
            }
            let what = || format!("load on {joint}");
            finite(what, [Value::of(force.x), Value::of(force.y), Value::of(force.z)])?;
            finite(what, [Value::of(moment.x), Value::of(moment.y), Value::of(moment.z)])?;
            let (force, moment) = (force.si(), moment.si());
            for axis in 0..3 {
                joints[6 * joint.0 + axis] += force[axis];
                joints[6 * joint.0 + 3 + axis] += moment[axis];
            }
        }
        let mut members: Vec<Option<Box<OnMember>>> = vec![None; self.elements.len()];
        for (member, load) in &loads.members {
            let element = self.elements.get(member.0).ok_or(FrameError::UnknownMember { member: *member })?;
            if matches!(element.kind, Kind::Bar { .. }) {
                return Err(FrameError::LoadOnBar { member: *member });
            }
            element.bear(*member, load, members[member.0].get_or_insert_default())?;
        }
        Ok(Borne { joints, members })
    }
}

/// Refuses a load that is no number.
fn finite(what: impl Fn() -> String, values: [Value; 3]) -> Result<(), FrameError> {
    match values.into_iter().find(|value| !value.si.is_finite()) {
        Some(value) => Err(FrameError::BadValue { what: what(), value }),
        None => Ok(()),
    }
}

/// The greatest of the new values, and which changed most by how much.
fn drift(before: &[f64], after: &[f64]) -> (f64, (usize, f64)) {
    let most = after.iter().fold(0.0_f64, |most, value| most.max(value.abs()));
    let moved = before
        .iter()
        .zip(after)
        .map(|(one, other)| (one - other).abs())
        .enumerate()
        .fold((0, 0.0), |most, this| if this.1 > most.1 { this } else { most });
    (most, moved)
}

impl Element {
    /// Puts a load down in its own axes.
    fn bear(&self, member: Member, load: &MemberLoad, on: &mut OnMember) -> Result<(), FrameError> {
        let own = |axes: Axes, load: Vector3<f64>| match axes {
            Axes::Frame => self.axes * load,
            Axes::Member => load,
        };
        let what = || format!("load on {member}");
        // A place that sums of quantities put a last bit off the end is the end.
        let place = |at: Length| {
            let slack = 1e-9 * self.length;
            if (-slack..=self.length + slack).contains(&at.si()) {
                Ok(at.si().clamp(0.0, self.length))
            } else {
                Err(FrameError::OffMember { member, at, length: Length::from_si(self.length) })
            }
        };
        match *load {
            MemberLoad::Even { load, axes } => {
                finite(what, [Value::of(load.x), Value::of(load.y), Value::of(load.z)])?;
                let load = own(axes, load.si());
                on.spread(0.0, self.length, load, load);
            }
            MemberLoad::Part { from, to, at_from, at_to, axes } => {
                for load in [at_from, at_to] {
                    finite(what, [Value::of(load.x), Value::of(load.y), Value::of(load.z)])?;
                }
                let (from, to) = (place(from)?, place(to)?);
                let (at_from, at_to) = (own(axes, at_from.si()), own(axes, at_to.si()));
                if from < to {
                    on.spread(from, to, at_from, at_to);
                } else if to < from {
                    on.spread(to, from, at_to, at_from);
                }
            }
            MemberLoad::Point { at, force, moment, axes } => {
                finite(what, [Value::of(force.x), Value::of(force.y), Value::of(force.z)])?;
                finite(what, [Value::of(moment.x), Value::of(moment.y), Value::of(moment.z)])?;
                on.spot(place(at)?, own(axes, force.si()), own(axes, moment.si()));
            }
        }
        Ok(())
    }
}

impl Solution<'_> {
    /// How a joint moves.
    ///
    /// # Errors
    /// If the joint is none of this frame's.
    pub fn movement(&self, joint: Joint) -> Result<Movement, FrameError> {
        let [shift, turn] = self.of_joint(joint, &self.answer.movements)?;
        Ok(Movement { shift: Triple::from_si(shift), turn: Triple::from_si(turn) })
    }

    /// What its supports and springs give a joint; nothing where it has none. Of joints that are held together and
    /// fixed in one freedom, the first that was fixed tells the reaction.
    ///
    /// # Errors
    /// If the joint is none of this frame's.
    pub fn reaction(&self, joint: Joint) -> Result<Action, FrameError> {
        let [force, moment] = self.of_joint(joint, &self.answer.reactions)?;
        Ok(Action { force: Triple::from_si(force), moment: Triple::from_si(moment) })
    }

    fn of_joint(&self, joint: Joint, values: &[f64]) -> Result<[Vector3<f64>; 2], FrameError> {
        let own = values.get(6 * joint.0..6 * joint.0 + 6).ok_or(FrameError::UnknownJoint { joint })?;
        Ok([Vector3::new(own[0], own[1], own[2]), Vector3::new(own[3], own[4], own[5])])
    }

    /// What stands along a member.
    ///
    /// # Errors
    /// If the member is none of this frame's.
    pub fn along(&self, member: Member) -> Result<AlongMember<'_>, FrameError> {
        let element = self.frame.elements.get(member.0).ok_or(FrameError::UnknownMember { member })?;
        let on = self.on_members[member.0].as_deref().unwrap_or(&UNLOADED);
        let (thrust, movements) = (self.trial.thrusts[member.0], self.answer.ends[member.0].movements);
        let forces = if self.trial.slack[member.0] {
            Vector12::zeros()
        } else {
            element.rigid(thrust) * movements - element.handed(thrust, on)
        };
        Ok(AlongMember::new(member, element, [movements, forces], on, thrust))
    }

    /// Whether a bar has gone slack.
    ///
    /// # Errors
    /// If the member is none of this frame's.
    pub fn is_slack(&self, member: Member) -> Result<bool, FrameError> {
        self.trial.slack.get(member.0).copied().ok_or(FrameError::UnknownMember { member })
    }

    /// The greatest force out of balance at any joint, as a share of the greatest force; moments count by the mean
    /// length of the members.
    #[must_use]
    pub const fn residual(&self) -> f64 {
        self.answer.residual
    }

    /// How many rounds it took for slack and axial forces to settle; 1 where there was nothing to settle.
    #[must_use]
    pub const fn rounds(&self) -> usize {
        self.rounds
    }

    /// How it was solved, for whoever reads the calculation.
    #[must_use]
    pub const fn method(&self) -> &'static str {
        match self.order {
            Order::First => "stiffness of all members put together, factored as L D Lᵀ by its profile",
            Order::Second => {
                "stiffness of all members under their axial force (EI v⁗ + P v″ = q), put together, factored as \
                 L D Lᵀ by its profile, axial forces by rounds"
            }
        }
    }
}
