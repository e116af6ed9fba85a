//! Joints, members and what holds them: the door, where quantities become plain numbers in SI.

use super::column::CLAMPED;
use super::error::FrameError;
use crate::units::{Area, Force, Length, LineLoad, Measure, Moment, Pressure, Quantity, SecondMoment, Value};
use nalgebra::{Matrix3, Vector3};
use std::fmt;

/// Three components of one thing, along x, y and z.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Triple<Q> {
    /// Along x.
    pub x: Q,
    /// Along y.
    pub y: Q,
    /// Along z.
    pub z: Q,
}

impl<Q: Quantity> Triple<Q> {
    /// Nothing along any axis.
    #[must_use]
    pub fn none() -> Self {
        Self::from_si(Vector3::zeros())
    }
    /// So much along x alone.
    #[must_use]
    pub fn along_x(x: Q) -> Self {
        Self { x, ..Self::none() }
    }
    /// So much along y alone.
    #[must_use]
    pub fn along_y(y: Q) -> Self {
        Self { y, ..Self::none() }
    }
    /// So much along z alone.
    #[must_use]
    pub fn along_z(z: Q) -> Self {
        Self { z, ..Self::none() }
    }
    pub(super) fn from_si(si: Vector3<f64>) -> Self {
        Self { x: Q::from_si(si.x), y: Q::from_si(si.y), z: Q::from_si(si.z) }
    }
    pub(super) fn si(self) -> Vector3<f64> {
        Vector3::new(self.x.si(), self.y.si(), self.z.si())
    }
}

/// An axis of the frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Axis {
    X,
    Y,
    Z,
}

/// One way in which a joint, or the end of a member, can move.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Freedom {
    AlongX,
    AlongY,
    AlongZ,
    AboutX,
    AboutY,
    AboutZ,
}

impl Freedom {
    /// All six, in order.
    pub const ALL: [Self; 6] =
        [Self::AlongX, Self::AlongY, Self::AlongZ, Self::AboutX, Self::AboutY, Self::AboutZ];

    /// As "move along x" or "turn about z".
    #[must_use]
    pub const fn in_words(self) -> &'static str {
        match self {
            Self::AlongX => "move along x",
            Self::AlongY => "move along y",
            Self::AlongZ => "move along z",
            Self::AboutX => "turn about x",
            Self::AboutY => "turn about y",
            Self::AboutZ => "turn about z",
        }
    }
}

/// A set of freedoms.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Freedoms([bool; 6]);

impl Freedoms {
    /// None.
    pub const NONE: Self = Self([false; 6]);
    /// All six.
    pub const ALL: Self = Self([true; 6]);
    /// Along the three axes.
    pub const MOVING: Self = Self([true, true, true, false, false, false]);
    /// About the three axes.
    pub const TURNING: Self = Self([false, false, false, true, true, true]);

    /// Those named.
    #[must_use]
    pub const fn of(freedoms: &[Freedom]) -> Self {
        let mut set = [false; 6];
        let mut at = 0;
        while at < freedoms.len() {
            set[freedoms[at] as usize] = true;
            at += 1;
        }
        Self(set)
    }

    /// Whether one is among them.
    #[must_use]
    pub const fn has(self, freedom: Freedom) -> bool {
        self.0[freedom as usize]
    }
}

/// A joint of a frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Joint(pub(super) usize);

/// A member of a frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Member(pub(super) usize);

/// An end of a member.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// Where its x begins.
    Start,
    /// Where its x ends.
    Finish,
}

impl Joint {
    /// Its number, from 1 in the order of making.
    #[must_use]
    pub const fn number(self) -> usize {
        self.0 + 1
    }
}

impl Member {
    /// Its number, from 1 in the order of making.
    #[must_use]
    pub const fn number(self) -> usize {
        self.0 + 1
    }
}

impl fmt::Display for Joint {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "joint {}", self.number())
    }
}

impl fmt::Display for Member {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "member {}", self.number())
    }
}

impl fmt::Display for End {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Start => "start",
            Self::Finish => "finish",
        })
    }
}

/// A section of a beam.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Section {
    /// Area.
    pub area: Area,
    /// Second moment about its y: bending in the plane of x and z.
    pub about_y: SecondMoment,
    /// Second moment about its z: bending in the plane of x and y.
    pub about_z: SecondMoment,
    /// Torsion constant.
    pub torsion: SecondMoment,
}

impl Section {
    /// A round section, alike about every axis; its torsion constant is twice its second moment.
    #[must_use]
    pub fn round(area: Area, second_moment: SecondMoment) -> Self {
        Self { area, about_y: second_moment, about_z: second_moment, torsion: second_moment * 2.0 }
    }
}

/// What a member is made of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Material {
    /// Modulus of elasticity.
    pub elastic: Pressure,
    /// Shear modulus.
    pub shear: Pressure,
}

/// A member that bends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Beam {
    /// Its section.
    pub section: Section,
    /// What it is made of.
    pub material: Material,
    /// The direction its own y faces, as near as it can; by default z, or y where the member stands along z.
    pub facing: Option<Triple<f64>>,
    /// What its start does not take from its joint, in its own axes.
    pub released_at_start: Freedoms,
    /// What its finish does not take from its joint, in its own axes.
    pub released_at_finish: Freedoms,
}

impl Beam {
    /// A beam that faces as by default and is rigidly joined at both ends.
    #[must_use]
    pub const fn of(section: Section, material: Material) -> Self {
        Self {
            section,
            material,
            facing: None,
            released_at_start: Freedoms::NONE,
            released_at_finish: Freedoms::NONE,
        }
    }
}

/// A member that takes axial force alone: a rod, a wire, a guy.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bar {
    /// Area.
    pub area: Area,
    /// Modulus of elasticity.
    pub elastic: Pressure,
    /// Whether it goes slack instead of taking compression.
    pub tension_only: bool,
}

#[derive(Debug, Clone, Copy)]
enum Made {
    Beam(Beam),
    Bar(Bar),
}

/// Puts a frame together. Ids are handed out as things are added; what is wrong is told by [`Self::build`].
#[derive(Debug, Clone, Default)]
pub struct FrameBuilder {
    joints: Vec<Triple<Length>>,
    members: Vec<(Joint, Joint, Made)>,
    fixed: Vec<(Joint, Freedoms)>,
    springs: Vec<(Joint, Freedom, Value)>,
    held: Vec<(Joint, Joint, Freedoms)>,
}

/// A member as it is reckoned with: plain SI.
#[derive(Debug, Clone)]
pub(super) struct Element {
    pub(super) start: usize,
    pub(super) finish: usize,
    pub(super) length: f64,
    /// Its own axes as rows.
    pub(super) axes: Matrix3<f64>,
    pub(super) kind: Kind,
}

#[derive(Debug, Clone)]
pub(super) enum Kind {
    Beam {
        /// E A.
        axial: f64,
        /// E I about its y.
        about_y: f64,
        /// E I about its z.
        about_z: f64,
        /// G J.
        torsion: f64,
        /// What either end is released of, start first.
        released: [bool; 12],
    },
    Bar {
        axial: f64,
        tension_only: bool,
    },
}

impl Element {
    pub(super) const fn axial(&self) -> f64 {
        match self.kind {
            Kind::Beam { axial, .. } | Kind::Bar { axial, .. } => axial,
        }
    }

    /// The load at which it buckles with both ends clamped, in its weaker plane; a bar has no bending to lose.
    pub(super) fn clamped(&self) -> Option<f64> {
        match self.kind {
            Kind::Beam { about_y, about_z, .. } => {
                Some(CLAMPED * about_y.min(about_z) / (self.length * self.length))
            }
            Kind::Bar { .. } => None,
        }
    }
}

/// No equation: the freedom is fixed.
pub(super) const FIXED: usize = usize::MAX;

/// A frame that can be solved for any number of loads.
#[derive(Debug, Clone)]
pub struct Frame {
    pub(super) joints: Vec<Vector3<f64>>,
    pub(super) elements: Vec<Element>,
    /// The equation of each freedom of each joint, six a joint.
    pub(super) equations: Vec<usize>,
    /// The first freedom that has each equation.
    pub(super) spokesmen: Vec<usize>,
    /// Where each row of the matrix begins.
    pub(super) firsts: Vec<usize>,
    /// The freedom that takes the reaction of each fixed freedom: itself, or that of the joint it is held to.
    pub(super) bearers: Vec<usize>,
    pub(super) springs: Vec<(usize, f64)>,
    /// The mean length of the members.
    pub(super) size: f64,
}

impl FrameBuilder {
    /// Nothing yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a joint. Number joints along the run, all those of one place together: see the module on cost.
    pub fn joint(&mut self, at: Triple<Length>) -> Joint {
        self.joints.push(at);
        Joint(self.joints.len() - 1)
    }

    /// Adds a member that bends.
    pub fn beam(&mut self, start: Joint, finish: Joint, beam: Beam) -> Member {
        self.members.push((start, finish, Made::Beam(beam)));
        Member(self.members.len() - 1)
    }

    /// Adds a member that takes axial force alone.
    pub fn bar(&mut self, start: Joint, finish: Joint, bar: Bar) -> Member {
        self.members.push((start, finish, Made::Bar(bar)));
        Member(self.members.len() - 1)
    }

    /// Holds a joint fast in these freedoms.
    pub fn fix(&mut self, joint: Joint, freedoms: Freedoms) -> &mut Self {
        self.fixed.push((joint, freedoms));
        self
    }

    /// Adds a spring along an axis: so much force for each length.
    pub fn spring(&mut self, joint: Joint, along: Axis, stiffness: LineLoad) -> &mut Self {
        self.springs.push((joint, Freedom::ALL[along as usize], Value::of(stiffness)));
        self
    }

    /// Adds a spring about an axis: so much moment for each radian.
    pub fn turning_spring(&mut self, joint: Joint, about: Axis, stiffness: Moment) -> &mut Self {
        self.springs.push((joint, Freedom::ALL[3 + about as usize], Value::of(stiffness)));
        self
    }

    /// Makes two joints move as one in these freedoms and independently in the others: with [`Freedoms::MOVING`] one
    /// is held to the other and passes it neither bending nor torsion.
    pub fn hold(&mut self, one: Joint, other: Joint, freedoms: Freedoms) -> &mut Self {
        self.held.push((one, other, freedoms));
        self
    }

    /// The frame, ready to be solved.
    ///
    /// # Errors
    /// The first thing that is wrong: an id of another frame, a value that is not above 0, a member without length or
    /// facing along itself, joints held together that stand apart, releases that leave a member loose.
    pub fn build(&self) -> Result<Frame, FrameError> {
        let joints = self.placed()?;
        let elements =
            (0..self.members.len()).map(|at| self.element(at, &joints)).collect::<Result<Vec<_>, _>>()?;
        let leaders = self.leaders(&joints)?;
        let freedoms = leaders.len();
        // A freedom that is fixed anywhere is fixed for all that are held to it.
        let mut bearers = vec![FIXED; freedoms];
        for (joint, fixed) in &self.fixed {
            self.known(*joint)?;
            for freedom in Freedom::ALL.into_iter().filter(|freedom| fixed.has(*freedom)) {
                let own = 6 * joint.0 + freedom as usize;
                let bearer = &mut bearers[leaders[own]];
                if *bearer == FIXED {
                    *bearer = own;
                }
            }
        }
        let bearers: Vec<usize> = leaders.iter().map(|leader| bearers[*leader]).collect();
        let (mut equations, mut spokesmen) = (vec![FIXED; freedoms], Vec::new());
        for own in 0..freedoms {
            if bearers[own] != FIXED {
                continue;
            }
            if leaders[own] == own {
                spokesmen.push(own);
                equations[own] = spokesmen.len() - 1;
            } else {
                equations[own] = equations[leaders[own]];
            }
        }
        let mut firsts: Vec<usize> = (0..spokesmen.len()).collect();
        for element in &elements {
            let own = |joint: usize| equations[6 * joint..6 * joint + 6].iter().copied();
            let of_ends = || own(element.start).chain(own(element.finish)).filter(|at| *at != FIXED);
            let Some(least) = of_ends().min() else { continue };
            for equation in of_ends() {
                firsts[equation] = firsts[equation].min(least);
            }
        }
        let mut springs = Vec::with_capacity(self.springs.len());
        for (joint, freedom, stiffness) in &self.springs {
            self.known(*joint)?;
            if !(stiffness.si >= 0.0 && stiffness.si.is_finite()) {
                let what = format!("spring that lets {joint} {}", freedom.in_words());
                return Err(FrameError::BadValue { what, value: *stiffness });
            }
            springs.push((6 * joint.0 + *freedom as usize, stiffness.si));
        }
        let lengths: f64 = elements.iter().map(|element| element.length).sum();
        let size = if elements.is_empty() { 1.0 } else { lengths / elements.len() as f64 };
        Ok(Frame { joints, elements, equations, spokesmen, firsts, bearers, springs, size })
    }

    fn known(&self, joint: Joint) -> Result<(), FrameError> {
        if joint.0 < self.joints.len() { Ok(()) } else { Err(FrameError::UnknownJoint { joint }) }
    }

    fn placed(&self) -> Result<Vec<Vector3<f64>>, FrameError> {
        let mut joints = Vec::with_capacity(self.joints.len());
        for (at, place) in self.joints.iter().enumerate() {
            for (axis, length) in [("x", place.x), ("y", place.y), ("z", place.z)] {
                if !length.si().is_finite() {
                    let what = format!("{axis} of {}", Joint(at));
                    return Err(FrameError::BadValue { what, value: Value::of(length) });
                }
            }
            joints.push(place.si());
        }
        Ok(joints)
    }

    fn element(&self, at: usize, joints: &[Vector3<f64>]) -> Result<Element, FrameError> {
        let (start, finish, made) = self.members[at];
        let member = Member(at);
        self.known(start)?;
        self.known(finish)?;
        let along = joints[finish.0] - joints[start.0];
        let length = along.norm();
        if length <= 0.0 {
            return Err(FrameError::NoLength { member });
        }
        let above_nought = |what: &str, value: Value| {
            if value.si > 0.0 && value.si.is_finite() {
                Ok(value.si)
            } else {
                Err(FrameError::BadValue { what: format!("{what} of {member}"), value })
            }
        };
        let stress = |pressure: Pressure| Value::new(pressure, Measure::Stress);
        let x = along / length;
        let (facing, kind) = match made {
            Made::Beam(beam) => {
                let Section { area, about_y, about_z, torsion } = beam.section;
                let elastic = above_nought("modulus of elasticity", stress(beam.material.elastic))?;
                let shear = above_nought("shear modulus", stress(beam.material.shear))?;
                let released: [bool; 12] = std::array::from_fn(|end| {
                    let of = if end < 6 { beam.released_at_start } else { beam.released_at_finish };
                    of.has(Freedom::ALL[end % 6])
                });
                let kind = Kind::Beam {
                    axial: elastic * above_nought("area", Value::of(area))?,
                    about_y: elastic * above_nought("second moment about y", Value::of(about_y))?,
                    about_z: elastic * above_nought("second moment about z", Value::of(about_z))?,
                    torsion: shear * above_nought("torsion constant", Value::of(torsion))?,
                    released,
                };
                (beam.facing, kind)
            }
            Made::Bar(bar) => {
                let elastic = above_nought("modulus of elasticity", stress(bar.elastic))?;
                let axial = elastic * above_nought("area", Value::of(bar.area))?;
                (None, Kind::Bar { axial, tension_only: bar.tension_only })
            }
        };
        let axes = axes(x, facing).ok_or(FrameError::FacingAlong { member })?;
        let element = Element { start: start.0, finish: finish.0, length, axes, kind };
        match element.stiffness(0.0) {
            Ok(_) => Ok(element),
            Err(loose) => Err(FrameError::LooseMember {
                member,
                end: if loose < 6 { End::Start } else { End::Finish },
                freedom: Freedom::ALL[loose % 6],
            }),
        }
    }

    /// For each freedom the first of those that move as one with it.
    fn leaders(&self, joints: &[Vector3<f64>]) -> Result<Vec<usize>, FrameError> {
        fn leader(leaders: &[usize], mut of: usize) -> usize {
            while leaders[of] != of {
                of = leaders[of];
            }
            of
        }
        let mut leaders: Vec<usize> = (0..6 * joints.len()).collect();
        for (one, other, freedoms) in &self.held {
            self.known(*one)?;
            self.known(*other)?;
            let distance = (joints[one.0] - joints[other.0]).norm();
            // What sums of quantities lose in rounding is no distance.
            let reach = joints[one.0].norm().max(joints[other.0].norm());
            let moves = Freedom::ALL[..3].iter().any(|freedom| freedoms.has(*freedom));
            if moves && distance > 1e-9 * reach {
                let distance = Length::from_si(distance);
                return Err(FrameError::HeldApart { one: *one, other: *other, distance });
            }
            for freedom in Freedom::ALL.into_iter().filter(|freedom| freedoms.has(*freedom)) {
                let of = |joint: &Joint| leader(&leaders, 6 * joint.0 + freedom as usize);
                let (first, second) = (of(one).min(of(other)), of(one).max(of(other)));
                leaders[second] = first;
            }
        }
        Ok((0..leaders.len()).map(|own| leader(&leaders, own)).collect())
    }
}

/// The axes of a member along x as rows; nothing if it faces along itself.
fn axes(x: Vector3<f64>, facing: Option<Triple<f64>>) -> Option<Matrix3<f64>> {
    /// Sines of angles below this are nought.
    const ALONG: f64 = 1e-6;
    let across = |facing: Vector3<f64>| {
        let size = facing.norm();
        let y = facing - x * facing.dot(&x);
        (size > 0.0 && y.norm() > ALONG * size).then(|| y.normalize())
    };
    let y = match facing {
        Some(facing) => across(facing.si())?,
        None => across(Vector3::z()).or_else(|| across(Vector3::y()))?,
    };
    let z = x.cross(&y);
    Some(Matrix3::from_rows(&[x.transpose(), y.transpose(), z.transpose()]))
}

impl Frame {
    /// How many equations are solved.
    #[must_use]
    pub fn freedoms(&self) -> usize {
        self.spokesmen.len()
    }

    /// How many numbers the matrix keeps, by its profile.
    #[must_use]
    pub fn stored(&self) -> usize {
        self.firsts.iter().enumerate().map(|(row, first)| row - first + 1).sum()
    }

    /// The compression under which a member would buckle with both ends clamped, four times Euler's load for pinned
    /// ends; nothing for a bar.
    ///
    /// # Errors
    /// If the member is none of this frame's.
    pub fn clamped_buckling_load(&self, member: Member) -> Result<Option<Force>, FrameError> {
        let element = self.elements.get(member.0).ok_or(FrameError::UnknownMember { member })?;
        Ok(element.clamped().map(Force::from_si))
    }
}
