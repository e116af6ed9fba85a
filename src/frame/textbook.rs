//! Frames of the textbooks as rules by name, so that printed answers can be held against the solver.
//!
//! Each family is one frame that is built, loaded and solved here; each rule of it reads one figure off the solution.
//! Where a figure stands at several places or along several axes, an input picks it by its number. Yes and no are 1
//! and 0.

use super::load::{Action, Axes, Loads, MemberLoad};
use super::model::{
    Axis, Bar, Beam, Frame, FrameBuilder, Freedom, Freedoms, Joint, Material, Member, Section, Triple,
};
use super::solve::{Order, Solution};
use super::{Extreme, FrameError};
use crate::rule;
use crate::source::{Clause, STATICS};
use crate::units::{
    Area, Force, Length, LineLoad, Moment, Powers, Pressure, Quantity, SecondMoment, Value, metres, newtons,
    newtons_per_metre, pascals,
};
use crate::workings::{Ledger, Listed, OutOfRange, within};
use std::f64::consts::PI;

const CANTILEVER: Clause = STATICS.at("stiffness method: cantilever under a straight load");
const CANTILEVER_THRUST: Clause = STATICS.at("stiffness method, second order: cantilever under thrust");
const BEAM_THRUST: Clause = STATICS.at("stiffness method, second order: simple beam under thrust");
const CONTINUOUS: Clause = STATICS.at("stiffness method: equal spans under an even load");
const CORNER: Clause = STATICS.at("stiffness method: three members that meet in space");
const ELBOW: Clause = STATICS.at("stiffness method: two members that meet in a plane");
const CHAIN: Clause = STATICS.at("stiffness method: three members in a chain");
const ROW: Clause =
    STATICS.at("stiffness method: cantilevers joined by a rail that passes no moment and no torsion");
const BRACED: Clause = STATICS.at("stiffness method: cantilever with a brace");

/// One frame, and the rules that read its figures.
macro_rules! readings {
    (
        $(#[doc = $of:literal])+ $family:ident $inputs:tt at $place:expr;
        $( $(#[doc = $about:literal])+ $name:ident, $id:literal;
            $key:ident $symbol:literal: $output:ty $(as $to:ident)? = $read:expr; )+
    ) => {
        readings! { @family $(#[doc = $of])+ $family $inputs }
        $( readings! { @reading $family $inputs $place; $(#[doc = $about])+ $name, $id;
            $key $symbol: $output $(as $to)? = $read; } )+
    };
    (@family $(#[doc = $of:literal])+ $family:ident {
        $( $(#[doc = $given:literal])+ $field:ident: $type:ty $(as $measure:ident)? = $symbol:literal; )*
    }) => {
        $(#[doc = $of])+
        #[derive(Debug, Clone, Copy)]
        struct $family { $( $field: $type, )* }
    };
    (@reading $family:ident {
        $( $(#[doc = $given:literal])+ $field:ident: $type:ty $(as $measure:ident)? = $of:literal; )*
    } $place:expr; $(#[doc = $about:literal])+ $name:ident, $id:literal;
        $key:ident $symbol:literal: $output:ty $(as $to:ident)? = $read:expr;
    ) => {
        rule! {
            $(#[doc = $about])+
            $name, $id, $place;
            $( $(#[doc = $given])+ $field: $type $(as $measure)? = $of; )*
            $key $symbol: $output $(as $to)?
        }
        impl $name {
            /// Builds the frame, solves it and reads the figure.
            ///
            /// # Errors
            /// If a size is not above 0, a number picks nothing, or the frame cannot be solved.
            pub fn work(self, ledger: &mut impl Ledger) -> Result<$output, OutOfRange> {
                let Self { $($field),* } = self;
                let family = $family { $($field),* };
                let read: fn(&$family) -> Result<$output, OutOfRange> = $read;
                let figure = read(&family)?;
                Ok(self.keep(ledger, figure))
            }
        }
    };
}

/// What must be above 0.
fn positive<Q: Quantity>(what: &'static str, place: Clause, value: Q) -> Result<(), OutOfRange> {
    within(what, place, value, Q::from_si(f64::MIN_POSITIVE), Q::from_si(f64::MAX))
}

/// A frame that cannot be solved is a range that was left.
fn refused(place: Clause) -> impl Fn(FrameError) -> OutOfRange {
    move |error| {
        let (what, value, limit, above) = match error {
            FrameError::Unbalanced { residual, limit } => ("force out of balance", residual, limit, true),
            FrameError::TooTaut { .. } => ("tension beside the bending stiffness", 1.0, 1.0, true),
            // Every other way a frame of these families can fail is that something has no stiffness left.
            _ => ("stiffness left", 0.0, f64::MIN_POSITIVE, false),
        };
        OutOfRange { what, value: Value::of(value), limit: Value::of(limit), above, clause: place }
    }
}

/// What counts is a whole number.
fn whole(what: &'static str, place: Clause, number: f64) -> Result<(), OutOfRange> {
    within(what, place, number, number.floor(), number.floor())
}

/// The thing with this number, from 1.
fn pick<T: Copy>(place: Clause, things: &[T], number: f64) -> Result<T, OutOfRange> {
    within("number that picks the figure", place, number, 1.0, things.len() as f64)?;
    whole("number that picks the figure", place, number)?;
    Ok(things[number as usize - 1])
}

/// A round section of this second moment; its area enters nothing here but must be above 0.
fn slender(second_moment: SecondMoment, length: Length) -> Section {
    // A radius of gyration of a hundredth of the length.
    Section::round(second_moment * 1e4 / length.squared(), second_moment)
}

fn steel_like(elastic: Pressure) -> Material {
    Material { elastic, shear: elastic * 0.4 }
}

fn components<Q: Copy>(triple: Triple<Q>) -> [Q; 3] {
    [triple.x, triple.y, triple.z]
}

/// A foot that is clamped, or turns about x on a spring, or on nothing.
fn foot(builder: &mut FrameBuilder, joint: Joint, turns: f64, spring: Option<Moment>) {
    if turns == 0.0 {
        builder.fix(joint, Freedoms::ALL);
        return;
    }
    let held = Freedom::ALL.into_iter().filter(|freedom| *freedom != Freedom::AboutX);
    builder.fix(joint, Freedoms::of(&held.collect::<Vec<_>>()));
    if let Some(stiffness) = spring {
        builder.turning_spring(joint, Axis::X, stiffness);
    }
}

readings! {
    /// A cantilever that stands along z under a straight load along y.
    Cantilever {
        /// length
        length: Length as Distance = "L";
        /// modulus of elasticity
        modulus: Pressure as Stress = "E";
        /// second moment of area
        second_moment: SecondMoment = "I";
        /// where the load begins, from the foot
        from: Length as Distance = "a";
        /// where the load ends, from the foot
        to: Length as Distance = "b";
        /// load where it begins
        load_from: LineLoad = "w_a";
        /// load where it ends
        load_to: LineLoad = "w_b";
        /// 1 if the foot turns on a spring, 0 if it is clamped
        turns: f64 = "n_t";
        /// moment for each radian of the spring; not read if the foot is clamped
        turning_stiffness: Moment = "k_θ";
    } at CANTILEVER;
    /// Shear at the foot of a cantilever under a straight load.
    CantileverShear, "frame/cantilever-shear";
    shear "V": Force = |family| family.solved(|solution, foot, _| Ok(-solution.reaction(foot)?.force.y));
    /// Moment at the foot of a cantilever under a straight load.
    CantileverMoment, "frame/cantilever-moment";
    moment "M": Moment = |family| family.solved(|solution, foot, _| Ok(solution.reaction(foot)?.moment.x));
    /// Deflection at the free end of a cantilever under a straight load.
    CantileverDeflection, "frame/cantilever-deflection";
    deflection "δ": Length as Small = |family| family.solved(|solution, _, top| Ok(solution.movement(top)?.shift.y));
    /// Slope at the free end of a cantilever under a straight load.
    CantileverSlope, "frame/cantilever-slope";
    slope "θ": f64 as Angle = |family| family.solved(|solution, _, top| Ok(-solution.movement(top)?.turn.x));
}

impl Cantilever {
    fn solved<Q>(
        &self,
        read: impl Fn(&Solution<'_>, Joint, Joint) -> Result<Q, FrameError>,
    ) -> Result<Q, OutOfRange> {
        positive("length", CANTILEVER, self.length)?;
        positive("modulus of elasticity", CANTILEVER, self.modulus)?;
        positive("second moment", CANTILEVER, self.second_moment)?;
        within("where the load begins", CANTILEVER, self.from, metres(0.0), self.length)?;
        within("where the load ends", CANTILEVER, self.to, self.from, self.length)?;
        if self.turns != 0.0 {
            positive("stiffness of the foot", CANTILEVER, self.turning_stiffness)?;
        }
        let mut builder = FrameBuilder::new();
        let base = builder.joint(Triple::none());
        let top = builder.joint(Triple::along_z(self.length));
        foot(&mut builder, base, self.turns, Some(self.turning_stiffness));
        let section = slender(self.second_moment, self.length);
        let post = builder.beam(base, top, Beam::of(section, steel_like(self.modulus)));
        let mut loads = Loads::new();
        loads.on_member(
            post,
            MemberLoad::Part {
                from: self.from,
                to: self.to,
                at_from: Triple::along_y(self.load_from),
                at_to: Triple::along_y(self.load_to),
                axes: Axes::Frame,
            },
        );
        let solve = || -> Result<Q, FrameError> {
            let frame = builder.build()?;
            read(&frame.solve(&loads, Order::First)?, base, top)
        };
        solve().map_err(refused(CANTILEVER))
    }
}

readings! {
    /// A cantilever that stands along z, with a force across and a thrust at its free end.
    CantileverUnderThrust {
        /// length
        length: Length as Distance = "L";
        /// modulus of elasticity
        modulus: Pressure as Stress = "E";
        /// second moment of area
        second_moment: SecondMoment = "I";
        /// force across at the free end
        force: Force = "H";
        /// thrust at the free end
        thrust: Force = "P";
    } at CANTILEVER_THRUST;
    /// Moment at the foot of a cantilever with a force across and a thrust at its free end, in second order.
    CantileverThrustMoment, "frame/cantilever-p-delta";
    moment "M": Moment = |family| family.solved(|solution, foot, _| Ok(solution.reaction(foot)?.moment.x));
    /// Deflection at the free end of a cantilever with a force across and a thrust there, in second order.
    CantileverThrustDeflection, "frame/cantilever-p-delta-deflection";
    deflection "δ": Length as Small = |family| family.solved(|solution, _, top| Ok(solution.movement(top)?.shift.y));
}

/// Euler's load of a bar with pinned ends.
fn euler(modulus: Pressure, second_moment: SecondMoment, length: Length) -> Force {
    PI * PI * modulus * second_moment / length.squared()
}

impl CantileverUnderThrust {
    fn solved<Q>(
        &self,
        read: impl Fn(&Solution<'_>, Joint, Joint) -> Result<Q, FrameError>,
    ) -> Result<Q, OutOfRange> {
        positive("length", CANTILEVER_THRUST, self.length)?;
        positive("modulus of elasticity", CANTILEVER_THRUST, self.modulus)?;
        positive("second moment", CANTILEVER_THRUST, self.second_moment)?;
        let limit = euler(self.modulus, self.second_moment, self.length) / 4.0;
        within("thrust", CANTILEVER_THRUST, self.thrust, newtons(0.0), limit)?;
        let mut builder = FrameBuilder::new();
        let base = builder.joint(Triple::none());
        let top = builder.joint(Triple::along_z(self.length));
        builder.fix(base, Freedoms::ALL);
        let section = slender(self.second_moment, self.length);
        builder.beam(base, top, Beam::of(section, steel_like(self.modulus)));
        let mut loads = Loads::new();
        let force = Triple { x: newtons(0.0), y: self.force, z: -self.thrust };
        loads.on_joint(top, Action { force, ..Action::none() });
        let solve = || -> Result<Q, FrameError> {
            let frame = builder.build()?;
            read(&frame.solve(&loads, Order::Second)?, base, top)
        };
        solve().map_err(refused(CANTILEVER_THRUST))
    }
}

readings! {
    /// A simple beam along x under an even load and a thrust.
    BeamUnderThrust {
        /// span
        length: Length as Distance = "L";
        /// modulus of elasticity
        modulus: Pressure as Stress = "E";
        /// second moment of area
        second_moment: SecondMoment = "I";
        /// load
        load: LineLoad = "w";
        /// thrust
        thrust: Force = "P";
    } at BEAM_THRUST;
    /// Moment in the middle of a simple beam under an even load and a thrust, in second order.
    BeamThrustMoment, "frame/beam-p-delta";
    moment "M": Moment = |family| family.solved(|solution, beam, middle| {
        Ok(solution.along(beam)?.forces(middle)?.moment_z)
    });
    /// Deflection in the middle of a simple beam under an even load and a thrust, in second order.
    BeamThrustDeflection, "frame/beam-p-delta-deflection";
    deflection "δ": Length as Small = |family| family.solved(|solution, beam, middle| {
        Ok(-solution.along(beam)?.shift(middle)?.z)
    });
}

impl BeamUnderThrust {
    fn solved<Q>(
        &self,
        read: impl Fn(&Solution<'_>, Member, Length) -> Result<Q, FrameError>,
    ) -> Result<Q, OutOfRange> {
        positive("span", BEAM_THRUST, self.length)?;
        positive("modulus of elasticity", BEAM_THRUST, self.modulus)?;
        positive("second moment", BEAM_THRUST, self.second_moment)?;
        let limit = euler(self.modulus, self.second_moment, self.length);
        within("thrust", BEAM_THRUST, self.thrust, newtons(0.0), limit)?;
        let mut builder = FrameBuilder::new();
        let start = builder.joint(Triple::none());
        let finish = builder.joint(Triple::along_x(self.length));
        let about_its_axis = Freedom::AboutX;
        let [x, y, z] = [Freedom::AlongX, Freedom::AlongY, Freedom::AlongZ];
        builder.fix(start, Freedoms::of(&[x, y, z, about_its_axis]));
        builder.fix(finish, Freedoms::of(&[y, z]));
        let section = slender(self.second_moment, self.length);
        let beam = builder.beam(start, finish, Beam::of(section, steel_like(self.modulus)));
        let mut loads = Loads::new();
        loads.on_member(beam, MemberLoad::Even { load: Triple::along_z(-self.load), axes: Axes::Frame });
        loads.on_joint(finish, Action { force: Triple::along_x(-self.thrust), ..Action::none() });
        let solve = || -> Result<Q, FrameError> {
            let frame = builder.build()?;
            read(&frame.solve(&loads, Order::Second)?, beam, self.length * 0.5)
        };
        solve().map_err(refused(BEAM_THRUST))
    }
}

readings! {
    /// Equal spans on knife edges under an even load on some of them next to each other.
    ContinuousBeam {
        /// how many spans
        spans: f64 = "n";
        /// the first span under load, from 1
        loaded_from: f64 = "n_1";
        /// the last span under load
        loaded_to: f64 = "n_2";
        /// 1 if the beam is clamped at its first support, 0 if it rests on it
        clamped: f64 = "n_c";
        /// the number of the support or the span that is asked for, from 1
        at: f64 = "i";
    } at CONTINUOUS;
    /// Moment over a support of equal spans, as a share of wL²; hogging is negative.
    ContinuousMoment, "frame/continuous-beam-support";
    moment "M/wL²": f64 as Coefficient = |family| family.solved(|solution, beams, _| {
        // Over the last support the end of the last span, over any other the beginning of the span beyond it.
        let span = (family.at as usize).min(beams.len());
        let along = solution.along(beams[span - 1])?;
        let place = if family.at as usize > span { along.length() } else { metres(0.0) };
        Ok(along.forces(place)?.moment_z.si())
    }, 1);
    /// Reaction of a support of equal spans, as a share of wL.
    ContinuousReaction, "frame/continuous-beam-reaction";
    reaction "R/wL": f64 as Coefficient = |family| family.solved(|solution, _, supports| {
        Ok(solution.reaction(supports[family.at as usize - 1])?.force.z.si())
    }, 1);
    /// Greatest sagging moment in a span of equal spans, as a share of wL².
    ContinuousSpanMoment, "frame/continuous-beam";
    moment "M/wL²": f64 as Coefficient = |family| family.sagging().map(|extreme| extreme.value.si());
    /// Where the greatest sagging moment stands in a span of equal spans, from its left support, as a share of L.
    ContinuousSpanPlace, "frame/continuous-beam-place";
    place "x/L": f64 as Coefficient = |family| family.sagging().map(|extreme| extreme.at.si());
    /// Greatest deflection downwards in a span of equal spans, as a share of wL⁴/EI.
    ContinuousDeflection, "frame/continuous-beam-deflection";
    deflection "δEI/wL⁴": f64 as Coefficient = |family| family.sinking().map(|extreme| -extreme.value.si());
    /// Where the greatest deflection stands in a span of equal spans, from its left support, as a share of L.
    ContinuousDeflectionPlace, "frame/continuous-beam-deflection-place";
    place "x/L": f64 as Coefficient = |family| family.sinking().map(|extreme| extreme.at.si());
}

impl ContinuousBeam {
    fn sagging(&self) -> Result<Extreme<Moment>, OutOfRange> {
        self.solved(
            |solution, beams, _| Ok(solution.along(beams[self.at as usize - 1])?.moment_z_range().greatest),
            0,
        )
    }

    fn sinking(&self) -> Result<Extreme<Length>, OutOfRange> {
        self.solved(
            |solution, beams, _| Ok(solution.along(beams[self.at as usize - 1])?.deflection_y_range().least),
            0,
        )
    }

    /// Length, load and bending stiffness are 1; `more` is how many more of what is asked for there are than spans.
    fn solved<Q>(
        &self,
        read: impl Fn(&Solution<'_>, &[Member], &[Joint]) -> Result<Q, FrameError>,
        more: usize,
    ) -> Result<Q, OutOfRange> {
        within("number of spans", CONTINUOUS, self.spans, 1.0, 1000.0)?;
        for number in [self.spans, self.loaded_from, self.loaded_to, self.at] {
            whole("number of a span or a support", CONTINUOUS, number)?;
        }
        let spans = self.spans as usize;
        within("first span under load", CONTINUOUS, self.loaded_from, 1.0, self.spans)?;
        within("last span under load", CONTINUOUS, self.loaded_to, self.loaded_from, self.spans)?;
        within("number that picks the figure", CONTINUOUS, self.at, 1.0, (spans + more) as f64)?;
        let mut builder = FrameBuilder::new();
        let supports: Vec<Joint> =
            (0..=spans).map(|at| builder.joint(Triple::along_x(metres(at as f64)))).collect();
        for support in &supports {
            builder.fix(*support, Freedoms::of(&[Freedom::AlongY, Freedom::AlongZ]));
        }
        builder.fix(supports[0], Freedoms::of(&[Freedom::AlongX, Freedom::AboutX]));
        if self.clamped != 0.0 {
            builder.fix(supports[0], Freedoms::ALL);
        }
        let section = slender(SecondMoment::from_si(1.0), metres(1.0));
        let beams: Vec<Member> = supports
            .windows(2)
            .map(|ends| builder.beam(ends[0], ends[1], Beam::of(section, steel_like(pascals(1.0)))))
            .collect();
        let mut loads = Loads::new();
        let load = MemberLoad::Even { load: Triple::along_z(newtons_per_metre(-1.0)), axes: Axes::Frame };
        for beam in &beams[self.loaded_from as usize - 1..self.loaded_to as usize] {
            loads.on_member(*beam, load);
        }
        let solve = || -> Result<Q, FrameError> {
            let frame = builder.build()?;
            read(&frame.solve(&loads, Order::First)?, &beams, &supports)
        };
        solve().map_err(refused(CONTINUOUS))
    }
}

readings! {
    /// Three members along the axes from clamped far ends to one joint at the origin.
    Corner {
        /// far end of the member along x, on the x axis
        end_x: Length as Distance = "x_1";
        /// far end of the member along y, on the y axis
        end_y: Length as Distance = "y_2";
        /// far end of the member along z, on the z axis
        end_z: Length as Distance = "z_3";
        /// roll of the member along x: its y axis lies this far from y towards the right hand about itself
        roll_x: f64 as Angle = "ψ_1";
        /// roll of the member along y: its y axis lies this far from −x, or from x if it comes from above
        roll_y: f64 as Angle = "ψ_2";
        /// roll of the member along z: its y axis lies this far from y
        roll_z: f64 as Angle = "ψ_3";
        /// modulus of elasticity
        modulus: Pressure as Stress = "E";
        /// shear modulus
        shear_modulus: Pressure as Stress = "G";
        /// area
        area: Area = "A";
        /// second moment about the member's y
        second_moment_y: SecondMoment = "I_y";
        /// second moment about the member's z
        second_moment_z: SecondMoment = "I_z";
        /// torsion constant
        torsion: SecondMoment = "J";
        /// even load along y on the member along x
        load: LineLoad = "w";
        /// force along x at the corner
        force_x: Force = "F_x";
        /// force along y at the corner
        force_y: Force = "F_y";
        /// force along z at the corner
        force_z: Force = "F_z";
        /// moment about x at the corner
        moment_x: Moment = "M_x";
        /// moment about y at the corner
        moment_y: Moment = "M_y";
        /// moment about z at the corner
        moment_z: Moment = "M_z";
        /// 1 to 3 for x, y, z; of reactions 1 to 3 at the member along x, 4 to 6 at that along y, 7 to 9 along z
        number: f64 = "i";
    } at CORNER;
    /// Movement of the joint where three members meet in space.
    CornerMovement, "frame/corner-movement";
    movement "u": Length as Small = |family| family.solved(|solution, corner, _| {
        Ok(components(solution.movement(corner)?.shift).to_vec())
    });
    /// Turn of the joint where three members meet in space.
    CornerTurn, "frame/corner-turn";
    turn "θ": f64 as Angle = |family| family.solved(|solution, corner, _| {
        Ok(components(solution.movement(corner)?.turn).to_vec())
    });
    /// Force at a clamped far end of three members that meet in space.
    CornerForce, "frame/corner-force";
    force "R": Force = |family| family.solved(|solution, _, ends| {
        forces_of(solution, &ends)
    });
    /// Moment at a clamped far end of three members that meet in space.
    CornerMoment, "frame/corner-moment";
    moment "M": Moment = |family| family.solved(|solution, _, ends| {
        moments_of(solution, &ends)
    });
}

fn forces_of(solution: &Solution<'_>, joints: &[Joint]) -> Result<Vec<Force>, FrameError> {
    let mut found = Vec::new();
    for joint in joints {
        found.extend(components(solution.reaction(*joint)?.force));
    }
    Ok(found)
}

fn moments_of(solution: &Solution<'_>, joints: &[Joint]) -> Result<Vec<Moment>, FrameError> {
    let mut found = Vec::new();
    for joint in joints {
        found.extend(components(solution.reaction(*joint)?.moment));
    }
    Ok(found)
}

impl Corner {
    fn solved<Q: Copy>(
        &self,
        read: impl Fn(&Solution<'_>, Joint, [Joint; 3]) -> Result<Vec<Q>, FrameError>,
    ) -> Result<Q, OutOfRange> {
        for end in [self.end_x, self.end_y, self.end_z] {
            positive("length of a member", CORNER, end.abs())?;
        }
        positive("modulus of elasticity", CORNER, self.modulus)?;
        positive("shear modulus", CORNER, self.shear_modulus)?;
        positive("area", CORNER, self.area)?;
        for second_moment in [self.second_moment_y, self.second_moment_z, self.torsion] {
            positive("second moment", CORNER, second_moment)?;
        }
        let mut builder = FrameBuilder::new();
        let places = [Triple::along_x(self.end_x), Triple::along_y(self.end_y), Triple::along_z(self.end_z)];
        let ends = places.map(|place| builder.joint(place));
        let corner = builder.joint(Triple::none());
        let section = Section {
            area: self.area,
            about_y: self.second_moment_y,
            about_z: self.second_moment_z,
            torsion: self.torsion,
        };
        let material = Material { elastic: self.modulus, shear: self.shear_modulus };
        let towards = |end: Length| if end.si() < 0.0 { 1.0 } else { -1.0 };
        let (x, y, z) = (towards(self.end_x), towards(self.end_y), towards(self.end_z));
        let turned = |roll: f64, from: [f64; 3], to: [f64; 3]| {
            let of = |axis: usize| from[axis] * roll.cos() + to[axis] * roll.sin();
            Triple { x: of(0), y: of(1), z: of(2) }
        };
        // From an axis across the member, and the one a right-handed quarter turn about the member beyond it.
        let facings = [
            turned(self.roll_x, [0.0, 1.0, 0.0], [0.0, 0.0, x]),
            turned(self.roll_y, [-y, 0.0, 0.0], [0.0, 0.0, 1.0]),
            turned(self.roll_z, [0.0, 1.0, 0.0], [-z, 0.0, 0.0]),
        ];
        let mut beams = Vec::with_capacity(3);
        for (end, facing) in ends.into_iter().zip(facings) {
            builder.fix(end, Freedoms::ALL);
            beams.push(builder.beam(
                end,
                corner,
                Beam { facing: Some(facing), ..Beam::of(section, material) },
            ));
        }
        let mut loads = Loads::new();
        loads
            .on_member(beams[0], MemberLoad::Even { load: Triple::along_y(self.load), axes: Axes::Frame })
            .on_joint(
                corner,
                Action {
                    force: Triple { x: self.force_x, y: self.force_y, z: self.force_z },
                    moment: Triple { x: self.moment_x, y: self.moment_y, z: self.moment_z },
                },
            );
        let solve = || -> Result<Vec<Q>, FrameError> {
            let frame = builder.build()?;
            read(&frame.solve(&loads, Order::First)?, corner, ends)
        };
        pick(CORNER, &solve().map_err(refused(CORNER))?, self.number)
    }
}

readings! {
    /// Two members in the plane of x and y: from the origin to a knee, and on to a clamped end.
    Elbow {
        /// x of the knee
        knee_x: Length as Distance = "x_B";
        /// y of the knee
        knee_y: Length as Distance = "y_B";
        /// x of the clamped end
        end_x: Length as Distance = "x_C";
        /// y of the clamped end
        end_y: Length as Distance = "y_C";
        /// 1 if the origin is held along y alone, 0 if it is clamped
        rolls: f64 = "n_r";
        /// modulus of elasticity
        modulus: Pressure as Stress = "E";
        /// area
        area: Area = "A";
        /// second moment of area
        second_moment: SecondMoment = "I";
        /// force along x at the knee
        force_x: Force = "F_x";
        /// force along y at the knee
        force_y: Force = "F_y";
        /// moment about z at the knee
        moment: Moment = "M_z";
        /// 1 and 2 for x and y at the origin, 3 and 4 at the second place; turns and moments 1 and 2
        number: f64 = "i";
    } at ELBOW;
    /// Movement of the origin and of the knee of two members in a plane.
    ElbowMovement, "frame/elbow-movement";
    movement "u": Length as Small = |family| family.solved(|solution, [origin, knee, _]| {
        let (origin, knee) = (solution.movement(origin)?.shift, solution.movement(knee)?.shift);
        Ok(vec![origin.x, origin.y, knee.x, knee.y])
    });
    /// Turn of the origin and of the knee of two members in a plane.
    ElbowTurn, "frame/elbow-turn";
    turn "θ": f64 as Angle = |family| family.solved(|solution, [origin, knee, _]| {
        Ok(vec![solution.movement(origin)?.turn.z, solution.movement(knee)?.turn.z])
    });
    /// Force at the origin and at the clamped end of two members in a plane.
    ElbowForce, "frame/elbow-force";
    force "R": Force = |family| family.solved(|solution, [origin, _, end]| {
        let (origin, end) = (solution.reaction(origin)?.force, solution.reaction(end)?.force);
        Ok(vec![origin.x, origin.y, end.x, end.y])
    });
    /// Moment at the origin and at the clamped end of two members in a plane.
    ElbowMoment, "frame/elbow-moment";
    moment_found "M": Moment = |family| family.solved(|solution, [origin, _, end]| {
        Ok(vec![solution.reaction(origin)?.moment.z, solution.reaction(end)?.moment.z])
    });
}

impl Elbow {
    fn solved<Q: Copy>(
        &self,
        read: impl Fn(&Solution<'_>, [Joint; 3]) -> Result<Vec<Q>, FrameError>,
    ) -> Result<Q, OutOfRange> {
        positive("modulus of elasticity", ELBOW, self.modulus)?;
        positive("area", ELBOW, self.area)?;
        positive("second moment", ELBOW, self.second_moment)?;
        let knee = Triple { x: self.knee_x, y: self.knee_y, z: metres(0.0) };
        let end = Triple { x: self.end_x, y: self.end_y, z: metres(0.0) };
        let mut builder = FrameBuilder::new();
        let joints = [Triple::none(), knee, end].map(|place| builder.joint(place));
        let out_of_plane = Freedoms::of(&[Freedom::AlongZ, Freedom::AboutX, Freedom::AboutY]);
        for joint in joints {
            builder.fix(joint, out_of_plane);
        }
        let origin = if self.rolls == 0.0 { Freedoms::ALL } else { Freedoms::of(&[Freedom::AlongY]) };
        builder.fix(joints[0], origin).fix(joints[2], Freedoms::ALL);
        let beam = Beam::of(Section::round(self.area, self.second_moment), steel_like(self.modulus));
        for ends in joints.windows(2) {
            builder.beam(ends[0], ends[1], beam);
        }
        let mut loads = Loads::new();
        let force = Triple { x: self.force_x, y: self.force_y, z: newtons(0.0) };
        loads.on_joint(joints[1], Action { force, moment: Triple::along_z(self.moment) });
        let solve = || -> Result<Vec<Q>, FrameError> {
            let frame = builder.build()?;
            read(&frame.solve(&loads, Order::First)?, joints)
        };
        pick(ELBOW, &solve().map_err(refused(ELBOW))?, self.number)
    }
}

readings! {
    /// Three round members one after the other in space, from the origin to a last joint, both clamped.
    Chain {
        /// x of the second joint
        x_2: Length as Distance = "x_2";
        /// y of the second joint
        y_2: Length as Distance = "y_2";
        /// z of the second joint
        z_2: Length as Distance = "z_2";
        /// x of the third joint
        x_3: Length as Distance = "x_3";
        /// y of the third joint
        y_3: Length as Distance = "y_3";
        /// z of the third joint
        z_3: Length as Distance = "z_3";
        /// x of the last joint
        x_4: Length as Distance = "x_4";
        /// y of the last joint
        y_4: Length as Distance = "y_4";
        /// z of the last joint
        z_4: Length as Distance = "z_4";
        /// modulus of elasticity
        modulus: Pressure as Stress = "E";
        /// shear modulus
        shear_modulus: Pressure as Stress = "G";
        /// area
        area: Area = "A";
        /// second moment of the first and the last member
        second_moment: SecondMoment = "I";
        /// second moment of the middle member
        middle_second_moment: SecondMoment = "I_m";
        /// torsion constant
        torsion: SecondMoment = "J";
        /// force along x at the second joint
        force_x: Force = "F_x";
        /// force along y at the third joint
        force_y: Force = "F_y";
        /// moment about z at the third joint
        moment_z: Moment = "M_z";
        /// 1 to 3 for x, y, z at the second joint, 4 to 6 at the third; of reactions at the first and the last
        number: f64 = "i";
    } at CHAIN;
    /// Movement of the inner joints of three members in a chain.
    ChainMovement, "frame/chain-movement";
    movement "u": Length as Small = |family| family.solved(|solution, [_, second, third, _], _| {
        let (second, third) = (solution.movement(second)?.shift, solution.movement(third)?.shift);
        Ok([components(second), components(third)].concat())
    });
    /// Turn of the inner joints of three members in a chain.
    ChainTurn, "frame/chain-turn";
    turn "θ": f64 as Angle = |family| family.solved(|solution, [_, second, third, _], _| {
        let (second, third) = (solution.movement(second)?.turn, solution.movement(third)?.turn);
        Ok([components(second), components(third)].concat())
    });
    /// Force at the clamped ends of three members in a chain.
    ChainForce, "frame/chain-force";
    force "R": Force = |family| family.solved(|solution, [first, .., last], _| {
        forces_of(solution, &[first, last])
    });
    /// Moment at the clamped ends of three members in a chain.
    ChainMoment, "frame/chain-moment";
    moment "M": Moment = |family| family.solved(|solution, [first, .., last], _| {
        moments_of(solution, &[first, last])
    });
    /// Size of the bending moment at the ends of the members of a chain: 1 and 2 of the first, 3 and 4 of the middle,
    /// 5 and 6 of the last.
    ChainEndMoment, "frame/chain-end-moment";
    moment "|M|": Moment = |family| family.solved(|solution, _, beams| {
        let mut found = Vec::new();
        for beam in beams {
            let along = solution.along(beam)?;
            found.push(along.forces(metres(0.0))?.moment());
            found.push(along.forces(along.length())?.moment());
        }
        Ok(found)
    });
}

impl Chain {
    fn solved<Q: Copy>(
        &self,
        read: impl Fn(&Solution<'_>, [Joint; 4], [Member; 3]) -> Result<Vec<Q>, FrameError>,
    ) -> Result<Q, OutOfRange> {
        positive("modulus of elasticity", CHAIN, self.modulus)?;
        positive("shear modulus", CHAIN, self.shear_modulus)?;
        positive("area", CHAIN, self.area)?;
        for second_moment in [self.second_moment, self.middle_second_moment, self.torsion] {
            positive("second moment", CHAIN, second_moment)?;
        }
        let mut builder = FrameBuilder::new();
        let joints = [
            Triple::none(),
            Triple { x: self.x_2, y: self.y_2, z: self.z_2 },
            Triple { x: self.x_3, y: self.y_3, z: self.z_3 },
            Triple { x: self.x_4, y: self.y_4, z: self.z_4 },
        ]
        .map(|place| builder.joint(place));
        builder.fix(joints[0], Freedoms::ALL).fix(joints[3], Freedoms::ALL);
        let material = Material { elastic: self.modulus, shear: self.shear_modulus };
        let mut member = |start: usize, second_moment: SecondMoment| {
            let section = Section {
                area: self.area,
                about_y: second_moment,
                about_z: second_moment,
                torsion: self.torsion,
            };
            builder.beam(joints[start], joints[start + 1], Beam::of(section, material))
        };
        let beams = [
            member(0, self.second_moment),
            member(1, self.middle_second_moment),
            member(2, self.second_moment),
        ];
        let mut loads = Loads::new();
        loads
            .on_joint(joints[1], Action { force: Triple::along_x(self.force_x), ..Action::none() })
            .on_joint(
                joints[2],
                Action { force: Triple::along_y(self.force_y), moment: Triple::along_z(self.moment_z) },
            );
        let solve = || -> Result<Vec<Q>, FrameError> {
            let frame = builder.build()?;
            read(&frame.solve(&loads, Order::First)?, joints, beams)
        };
        pick(CHAIN, &solve().map_err(refused(CHAIN))?, self.number)
    }
}

readings! {
    /// Like cantilevers along z in a row along x, loaded along y, their tops joined by one rail.
    Row {
        /// how many cantilevers
        uprights: f64 = "n";
        /// their height
        height: Length as Distance = "h";
        /// from one to the next
        spacing: Length as Distance = "b";
        /// modulus of elasticity
        modulus: Pressure as Stress = "E";
        /// second moment of a cantilever
        second_moment: SecondMoment = "I";
        /// second moment of the rail
        rail_second_moment: SecondMoment = "I_r";
        /// even load on the first and the last
        end_load: LineLoad = "w_e";
        /// even load on each of the others
        inner_load: LineLoad = "w_i";
        /// 1 if each foot turns on a spring, 0 if it is clamped
        turns: f64 = "n_t";
        /// moment for each radian of that spring; not read if the feet are clamped
        turning_stiffness: Moment = "k_θ";
        /// the number of the cantilever that is asked for, from 1
        number: f64 = "i";
    } at ROW;
    /// Shear at the foot of one of several cantilevers joined by a rail.
    RowShear, "frame/row-shear";
    shear "V": Force = |family| family.solved(|solution, upright| Ok(-solution.reaction(upright.foot)?.force.y));
    /// Moment at the foot of one of several cantilevers joined by a rail.
    RowMoment, "frame/row-moment";
    moment "M": Moment = |family| family.solved(|solution, upright| Ok(solution.reaction(upright.foot)?.moment.x));
    /// Deflection at the top of one of several cantilevers joined by a rail.
    RowDeflection, "frame/row-deflection";
    deflection "δ": Length as Small = |family| family.solved(|solution, upright| {
        Ok(solution.movement(upright.top)?.shift.y)
    });
    /// Moment of the rail at one of the cantilevers it joins, positive where it stretches the side away from the load.
    RowRailMoment, "frame/row-rail-moment";
    moment "M_r": Moment = |family| family.solved(|solution, upright| {
        let along = solution.along(upright.rail)?;
        let place = if upright.is_last { along.length() } else { metres(0.0) };
        // Its y faces the way of the load, and what stretches the side away from y is positive.
        Ok(-along.forces(place)?.moment_z)
    });
    /// Force along the load that the rail gives to the top of one of the cantilevers it joins.
    RowRailForce, "frame/row-rail-force";
    force "F": Force = |family| family.solved(|solution, upright| {
        let along = solution.along(upright.post)?;
        Ok(-along.forces(along.length())?.shear_y)
    });
}

/// One cantilever of a row, and the rail beyond it, or before it if it is the last.
#[derive(Debug, Clone, Copy)]
struct Upright {
    foot: Joint,
    top: Joint,
    post: Member,
    rail: Member,
    is_last: bool,
}

impl Row {
    fn frame(&self, count: usize) -> Result<(Frame, Vec<Upright>, Loads), FrameError> {
        let mut builder = FrameBuilder::new();
        let mut loads = Loads::new();
        let posts = Beam::of(slender(self.second_moment, self.height), steel_like(self.modulus));
        let rails = Beam {
            facing: Some(Triple::along_y(1.0)),
            ..Beam::of(slender(self.rail_second_moment, self.spacing), steel_like(self.modulus))
        };
        let mut uprights: Vec<Upright> = Vec::with_capacity(count);
        let mut rail_before: Option<Joint> = None;
        let mut rail_members = Vec::with_capacity(count);
        for at in 0..count {
            let x = self.spacing * at as f64;
            let place = |z: Length| Triple { x, y: metres(0.0), z };
            let base = builder.joint(place(metres(0.0)));
            let top = builder.joint(place(self.height));
            let rail = builder.joint(place(self.height));
            foot(&mut builder, base, self.turns, Some(self.turning_stiffness));
            // The rail is held to the tops in translation only: no moment and no torsion passes.
            builder.hold(top, rail, Freedoms::MOVING);
            let post = builder.beam(base, top, posts);
            match rail_before {
                None => {
                    // Nothing else keeps the rail from spinning about itself.
                    builder.fix(rail, Freedoms::of(&[Freedom::AboutX]));
                }
                Some(before) => rail_members.push(builder.beam(before, rail, rails)),
            }
            rail_before = Some(rail);
            let is_end = at == 0 || at + 1 == count;
            let load = if is_end { self.end_load } else { self.inner_load };
            loads.on_member(post, MemberLoad::Even { load: Triple::along_y(load), axes: Axes::Frame });
            uprights.push(Upright { foot: base, top, post, rail: post, is_last: at + 1 == count });
        }
        for (at, upright) in uprights.iter_mut().enumerate() {
            upright.rail = rail_members[at.min(count - 2)];
        }
        Ok((builder.build()?, uprights, loads))
    }

    fn solved<Q>(
        &self,
        read: impl Fn(&Solution<'_>, &Upright) -> Result<Q, FrameError>,
    ) -> Result<Q, OutOfRange> {
        within("number of cantilevers", ROW, self.uprights, 2.0, 1000.0)?;
        for number in [self.uprights, self.number] {
            whole("number of a cantilever", ROW, number)?;
        }
        within("number that picks the figure", ROW, self.number, 1.0, self.uprights)?;
        for length in [self.height, self.spacing] {
            positive("length of a member", ROW, length)?;
        }
        positive("modulus of elasticity", ROW, self.modulus)?;
        for second_moment in [self.second_moment, self.rail_second_moment] {
            positive("second moment", ROW, second_moment)?;
        }
        if self.turns != 0.0 {
            positive("stiffness of a foot", ROW, self.turning_stiffness)?;
        }
        let solve = || -> Result<Q, FrameError> {
            let (frame, uprights, loads) = self.frame(self.uprights as usize)?;
            read(&frame.solve(&loads, Order::First)?, &uprights[self.number as usize - 1])
        };
        solve().map_err(refused(ROW))
    }
}

readings! {
    /// A post along z under an even load along y, with a brace in its lee.
    Braced {
        /// height of the post
        height: Length as Distance = "h";
        /// height at which the brace meets it
        brace_height: Length as Distance = "a";
        /// distance of the brace's foot
        brace_foot: Length as Distance = "d";
        /// modulus of elasticity
        modulus: Pressure as Stress = "E";
        /// area of the post
        area: Area = "A";
        /// second moment of the post
        second_moment: SecondMoment = "I";
        /// area of the brace
        brace_area: Area = "A_b";
        /// even load on the post
        load: LineLoad = "w";
        /// 1 if the foot of the post is a hinge, 0 if it is clamped
        turns: f64 = "n_t";
    } at BRACED;
    /// Compression of the brace of a post under an even load.
    BracedForce, "frame/braced-force";
    force "F": Force = |family| family.solved(|solution, braced| {
        Ok(-solution.along(braced.brace)?.forces(metres(0.0))?.axial)
    });
    /// Shear at the foot of a braced post under an even load.
    BracedShear, "frame/braced-shear";
    shear "V": Force = |family| family.solved(|solution, braced| Ok(-solution.reaction(braced.foot)?.force.y));
    /// Moment at the foot of a braced post under an even load.
    BracedMoment, "frame/braced-moment";
    moment "M": Moment = |family| family.solved(|solution, braced| Ok(solution.reaction(braced.foot)?.moment.x));
    /// Deflection of a post where its brace meets it.
    BracedDeflection, "frame/braced-deflection";
    deflection "δ_a": Length as Small = |family| family.solved(|solution, braced| {
        Ok(solution.movement(braced.meeting)?.shift.y)
    });
    /// Deflection at the top of a braced post.
    BracedTopDeflection, "frame/braced-top-deflection";
    deflection "δ": Length as Small = |family| family.solved(|solution, braced| {
        Ok(solution.movement(braced.top)?.shift.y)
    });
}

/// The joints of a braced post, and its brace.
struct BracedPost {
    foot: Joint,
    meeting: Joint,
    top: Joint,
    brace: Member,
}

impl Braced {
    fn solved<Q>(
        &self,
        read: impl Fn(&Solution<'_>, &BracedPost) -> Result<Q, FrameError>,
    ) -> Result<Q, OutOfRange> {
        positive("height where the brace meets the post", BRACED, self.brace_height)?;
        positive("height above the brace", BRACED, self.height - self.brace_height)?;
        positive("distance of the brace's foot", BRACED, self.brace_foot)?;
        positive("modulus of elasticity", BRACED, self.modulus)?;
        positive("second moment", BRACED, self.second_moment)?;
        for area in [self.area, self.brace_area] {
            positive("area", BRACED, area)?;
        }
        let mut builder = FrameBuilder::new();
        let base = builder.joint(Triple::none());
        let meeting = builder.joint(Triple::along_z(self.brace_height));
        let top = builder.joint(Triple::along_z(self.height));
        let ground = builder.joint(Triple::along_y(self.brace_foot));
        foot(&mut builder, base, self.turns, None);
        builder.fix(ground, Freedoms::MOVING);
        let post = Beam::of(Section::round(self.area, self.second_moment), steel_like(self.modulus));
        let posts = [builder.beam(base, meeting, post), builder.beam(meeting, top, post)];
        let bar = Bar { area: self.brace_area, elastic: self.modulus, tension_only: false };
        let brace = builder.bar(ground, meeting, bar);
        let mut loads = Loads::new();
        for post in posts {
            loads.on_member(post, MemberLoad::Even { load: Triple::along_y(self.load), axes: Axes::Frame });
        }
        let solve = || -> Result<Q, FrameError> {
            let frame = builder.build()?;
            let braced = BracedPost { foot: base, meeting, top, brace };
            read(&frame.solve(&loads, Order::First)?, &braced)
        };
        solve().map_err(refused(BRACED))
    }
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<CantileverShear>(),
    Listed::of::<CantileverMoment>(),
    Listed::of::<CantileverDeflection>(),
    Listed::of::<CantileverSlope>(),
    Listed::of::<CantileverThrustMoment>(),
    Listed::of::<CantileverThrustDeflection>(),
    Listed::of::<BeamThrustMoment>(),
    Listed::of::<BeamThrustDeflection>(),
    Listed::of::<ContinuousMoment>(),
    Listed::of::<ContinuousReaction>(),
    Listed::of::<ContinuousSpanMoment>(),
    Listed::of::<ContinuousSpanPlace>(),
    Listed::of::<ContinuousDeflection>(),
    Listed::of::<ContinuousDeflectionPlace>(),
    Listed::of::<CornerMovement>(),
    Listed::of::<CornerTurn>(),
    Listed::of::<CornerForce>(),
    Listed::of::<CornerMoment>(),
    Listed::of::<ElbowMovement>(),
    Listed::of::<ElbowTurn>(),
    Listed::of::<ElbowForce>(),
    Listed::of::<ElbowMoment>(),
    Listed::of::<ChainMovement>(),
    Listed::of::<ChainTurn>(),
    Listed::of::<ChainForce>(),
    Listed::of::<ChainMoment>(),
    Listed::of::<ChainEndMoment>(),
    Listed::of::<RowShear>(),
    Listed::of::<RowMoment>(),
    Listed::of::<RowDeflection>(),
    Listed::of::<RowRailMoment>(),
    Listed::of::<RowRailForce>(),
    Listed::of::<BracedForce>(),
    Listed::of::<BracedShear>(),
    Listed::of::<BracedMoment>(),
    Listed::of::<BracedDeflection>(),
    Listed::of::<BracedTopDeflection>(),
];
