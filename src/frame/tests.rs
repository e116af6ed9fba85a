//! What a frame must do whatever it is, and a second opinion on small ones.

use super::*;
use crate::units::{
    Area, Force, Length, LineLoad, Moment, Pure, Quantity, SecondMoment, feet, inches, ksi, metres,
    millimetres, newton_metres, newtons, newtons_per_metre, pascals, pounds,
};
use approx::assert_relative_eq;
use nalgebra::{DMatrix, DVector, Matrix3, Rotation3, SMatrix, Vector3};
use proptest::prelude::*;
use std::f64::consts::PI;

fn at(x: f64, y: f64, z: f64) -> Triple<Length> {
    Triple { x: metres(x), y: metres(y), z: metres(z) }
}

fn place(v: Vector3<f64>) -> Triple<Length> {
    Triple::from_si(v)
}

fn force(x: f64, y: f64, z: f64) -> Action {
    Action { force: Triple { x: newtons(x), y: newtons(y), z: newtons(z) }, ..Action::none() }
}

/// Steel tube of 60.3 × 3.2 mm, roughly.
fn tube() -> Beam {
    Beam::of(
        Section::round(Area::from_si(5.74e-4), SecondMoment::from_si(2.347e-7)),
        Material { elastic: pascals(210e9), shear: pascals(81e9) },
    )
}

/// Unlike about its two axes.
fn channel() -> Beam {
    let section = Section {
        area: Area::from_si(8e-4),
        about_y: SecondMoment::from_si(1.2e-7),
        about_z: SecondMoment::from_si(7.5e-7),
        torsion: SecondMoment::from_si(3.1e-8),
    };
    Beam::of(section, Material { elastic: pascals(200e9), shear: pascals(77e9) })
}

fn vector(triple: Triple<impl Quantity>) -> Vector3<f64> {
    triple.si()
}

/// A post along z, clamped at its foot.
fn post(height: f64) -> (FrameBuilder, Joint, Joint, Member) {
    let mut builder = FrameBuilder::new();
    let foot = builder.joint(at(0.0, 0.0, 0.0));
    let top = builder.joint(at(0.0, 0.0, height));
    builder.fix(foot, Freedoms::ALL);
    let member = builder.beam(foot, top, tube());
    (builder, foot, top, member)
}

const EI: f64 = 210e9 * 2.347e-7;

// --- a frame at random -------------------------------------------------------------------------------------------

/// A frame of a chain of joints in space with some more members across, springs, releases and a joint held to another.
#[derive(Debug, Clone)]
struct Random {
    joints: Vec<[f64; 3]>,
    loads: Vec<[f64; 6]>,
    spread: [f64; 6],
    point: [f64; 6],
    share: f64,
    released: bool,
    held: bool,
    facing: [f64; 3],
}

fn random() -> impl Strategy<Value = Random> {
    let offsets = prop::collection::vec(prop::array::uniform3(-0.6..0.6_f64), 5);
    let loads = prop::collection::vec(prop::array::uniform6(-900.0..900.0_f64), 5);
    (
        offsets,
        loads,
        prop::array::uniform6(-400.0..400.0_f64),
        prop::array::uniform6(-500.0..500.0_f64),
        0.1..0.9_f64,
        any::<bool>(),
        any::<bool>(),
        prop::array::uniform3(0.2..1.0_f64),
    )
        .prop_map(|(offsets, loads, spread, point, share, released, held, facing)| Random {
            joints: offsets
                .into_iter()
                .enumerate()
                .map(|(at, [x, y, z])| [1.5 * at as f64 + x, y, 2.0 * (at % 2) as f64 + z])
                .collect(),
            loads,
            spread,
            point,
            share,
            released,
            held,
            facing,
        })
}

struct Made {
    frame: Frame,
    joints: Vec<Joint>,
    members: Vec<Member>,
    places: Vec<Vector3<f64>>,
}

impl Random {
    /// The frame as seen after the whole of it is turned.
    fn made(&self, turn: &Rotation3<f64>) -> Made {
        let mut builder = FrameBuilder::new();
        let places: Vec<Vector3<f64>> =
            self.joints.iter().map(|joint| turn * Vector3::from(*joint)).collect();
        let joints: Vec<Joint> = places.iter().map(|at| builder.joint(place(*at))).collect();
        builder.fix(joints[0], Freedoms::ALL);
        let facing = Some(Triple::from_si(turn * Vector3::from(self.facing)));
        let plain = Beam { facing, ..channel() };
        let mut ends = joints.clone();
        if self.held {
            // The second member begins at a joint of its own, held to the first one's in movement alone.
            ends[1] = builder.joint(place(places[1]));
            builder.hold(joints[1], ends[1], Freedoms::MOVING);
        }
        let mut members = vec![builder.beam(joints[0], joints[1], plain)];
        for at in 1..4 {
            members.push(builder.beam(ends[at], joints[at + 1], plain));
        }
        let across = if self.released {
            Beam {
                released_at_start: Freedoms::TURNING,
                released_at_finish: Freedoms::of(&[Freedom::AboutY, Freedom::AboutZ]),
                ..plain
            }
        } else {
            plain
        };
        members.push(builder.beam(joints[0], joints[2], across));
        members.push(builder.beam(joints[1], joints[3], plain));
        members.push(builder.bar(
            joints[0],
            joints[4],
            Bar { area: Area::from_si(1e-4), elastic: pascals(200e9), tension_only: false },
        ));
        for axis in [Axis::X, Axis::Y, Axis::Z] {
            builder.spring(joints[4], axis, newtons_per_metre(4e5));
            builder.turning_spring(joints[4], axis, newton_metres(3e4));
        }
        Made { frame: builder.build().unwrap(), joints, members, places }
    }

    fn borne(&self, made: &Made, turn: &Rotation3<f64>, times: f64) -> Loads {
        let mut loads = Loads::new();
        let turned = |x: f64, y: f64, z: f64| turn * Vector3::new(x, y, z) * times;
        for (joint, [fx, fy, fz, mx, my, mz]) in made.joints.iter().zip(&self.loads) {
            let action = Action {
                force: Triple::from_si(turned(*fx, *fy, *fz)),
                moment: Triple::from_si(turned(*mx, *my, *mz)),
            };
            loads.on_joint(*joint, action);
        }
        let [ax, ay, az, bx, by, bz] = self.spread;
        let length = |member: usize| self.length(made, member);
        let part = MemberLoad::Part {
            from: metres(0.2 * length(1)),
            to: metres(length(1) * (0.2 + 0.8 * self.share)),
            at_from: Triple::from_si(turned(ax, ay, az)),
            at_to: Triple::from_si(turned(bx, by, bz)),
            axes: Axes::Frame,
        };
        let own = Triple::from_si(Vector3::new(ax, ay, az) * times);
        let [px, py, pz, qx, qy, qz] = self.point;
        let point = MemberLoad::Point {
            at: metres(length(4) * self.share),
            force: Triple::from_si(turned(px, py, pz)),
            moment: Triple::from_si(turned(qx, qy, qz)),
            axes: Axes::Frame,
        };
        loads
            .on_member(made.members[1], part)
            .on_member(made.members[2], MemberLoad::Even { load: own, axes: Axes::Member })
            .on_member(made.members[4], point);
        loads
    }

    fn length(&self, made: &Made, member: usize) -> f64 {
        let ends = [(0, 1), (1, 2), (2, 3), (3, 4), (0, 2), (1, 3), (0, 4)];
        let (start, finish) = ends[member];
        (made.places[finish] - made.places[start]).norm()
    }

    /// All applied forces and their moment about the origin, from the loads themselves.
    fn applied(&self, made: &Made, loads: &Loads) -> (Vector3<f64>, Vector3<f64>) {
        let (mut whole, mut about) = (Vector3::zeros(), Vector3::zeros());
        for (joint, action) in &loads.joints {
            let force = vector(action.force);
            whole += force;
            about += vector(action.moment) + made.places[joint.0].cross(&force);
        }
        for (member, load) in &loads.members {
            let element = &made.frame.elements[member.0];
            let start = made.frame.joints[element.start];
            let along = element.axes.row(0).transpose();
            match *load {
                MemberLoad::Even { load, .. } => {
                    let force = element.axes.transpose() * vector(load) * element.length;
                    whole += force;
                    about += (start + along * (0.5 * element.length)).cross(&force);
                }
                MemberLoad::Part { from, to, at_from, at_to, .. } => {
                    // An even part and a triangle that falls from where the load begins.
                    let (from, to) = (from.si(), to.si());
                    let (even, falling) = (vector(at_to), vector(at_from) - vector(at_to));
                    let even_force = even * (to - from);
                    let falling_force = falling * (0.5 * (to - from));
                    whole += even_force + falling_force;
                    about += (start + along * (0.5 * (from + to))).cross(&even_force);
                    about += (start + along * (from + (to - from) / 3.0)).cross(&falling_force);
                }
                MemberLoad::Point { at, force, moment, .. } => {
                    whole += vector(force);
                    about += vector(moment) + (start + along * at.si()).cross(&vector(force));
                }
            }
        }
        (whole, about)
    }
}

/// An independent way to the movements: textbook matrices of 12 × 12 written out, put together densely, and solved by
/// LU. Loads on members are left to joints as the solver's own clamped-end forces are tested elsewhere: joint loads
/// alone.
fn by_dense_lu(made: &Made, random: &Random, loads: &Loads) -> DVector<f64> {
    let places = &made.places;
    let (e, g) = (200e9, 77e9);
    let (area, iy, iz, j) = (8e-4, 1.2e-7, 7.5e-7, 3.1e-8);
    // Joints 0 to 4; the held joint's own turns come last.
    let freedoms = 33;
    let mut whole = DMatrix::<f64>::zeros(freedoms, freedoms);
    let own = |joint: usize| -> Vec<usize> { (6 * joint..6 * joint + 6).collect() };
    let held: Vec<usize> = vec![6, 7, 8, 30, 31, 32];
    let ends: [(Vec<usize>, Vec<usize>, usize, usize); 6] = [
        (own(0), own(1), 0, 1),
        (if random.held { held } else { own(1) }, own(2), 1, 2),
        (own(2), own(3), 2, 3),
        (own(3), own(4), 3, 4),
        (own(0), own(2), 0, 2),
        (own(1), own(3), 1, 3),
    ];
    for (at, (start, finish, a, b)) in ends.iter().enumerate() {
        let along = places[*b] - places[*a];
        let l = along.norm();
        let x = along / l;
        let facing = Vector3::from(random.facing);
        let y = (facing - x * facing.dot(&x)).normalize();
        let z = x.cross(&y);
        let mut k = SMatrix::<f64, 12, 12>::zeros();
        let mut set = |i: usize, j: usize, value: f64| {
            k[(i, j)] = value;
            k[(j, i)] = value;
        };
        for (i, value) in [(0, e * area / l), (3, g * j / l)] {
            set(i, i, value);
            set(i + 6, i + 6, value);
            set(i, i + 6, -value);
        }
        let (bz, by) = (e * iz / l.powi(3), e * iy / l.powi(3));
        for (i, value) in [(1, 12.0 * bz), (2, 12.0 * by)] {
            set(i, i, value);
            set(i + 6, i + 6, value);
            set(i, i + 6, -value);
        }
        for (i, value) in [(5, 4.0 * bz * l * l), (4, 4.0 * by * l * l)] {
            set(i, i, value);
            set(i + 6, i + 6, value);
            set(i, i + 6, 0.5 * value);
        }
        for (i, j, value) in [
            (1, 5, 6.0 * bz * l),
            (1, 11, 6.0 * bz * l),
            (7, 5, -6.0 * bz * l),
            (7, 11, -6.0 * bz * l),
            (2, 4, -6.0 * by * l),
            (2, 10, -6.0 * by * l),
            (8, 4, 6.0 * by * l),
            (8, 10, 6.0 * by * l),
        ] {
            set(i, j, value);
        }
        if at == 4 && random.released {
            // The start's turns and the finish's bending turns carry nothing: taken out by the inverse of their part.
            let out = [3, 4, 5, 10, 11];
            let kept: Vec<usize> = (0..12).filter(|i| !out.contains(i)).collect();
            let part = |rows: &[usize], columns: &[usize]| {
                DMatrix::from_fn(rows.len(), columns.len(), |i, j| k[(rows[i], columns[j])])
            };
            let inner = part(&out, &out).try_inverse().unwrap();
            let left = part(&kept, &kept) - part(&kept, &out) * inner * part(&out, &kept);
            let mut condensed = SMatrix::<f64, 12, 12>::zeros();
            for (i, row) in kept.iter().enumerate() {
                for (j, column) in kept.iter().enumerate() {
                    condensed[(*row, *column)] = left[(i, j)];
                }
            }
            k = condensed;
        }
        let axes = Matrix3::from_rows(&[x.transpose(), y.transpose(), z.transpose()]);
        let mut t = SMatrix::<f64, 12, 12>::zeros();
        for block in 0..4 {
            t.fixed_view_mut::<3, 3>(3 * block, 3 * block).copy_from(&axes);
        }
        let global = t.transpose() * k * t;
        let all: Vec<usize> = start.iter().chain(finish).copied().collect();
        for (i, row) in all.iter().enumerate() {
            for (j, column) in all.iter().enumerate() {
                whole[(*row, *column)] += global[(i, j)];
            }
        }
    }
    let bar = places[4] - places[0];
    let stiffness = 200e9 * 1e-4 / bar.norm();
    let x = bar.normalize();
    for i in 0..3 {
        for j in 0..3 {
            whole[(24 + i, 24 + j)] += stiffness * x[i] * x[j];
        }
    }
    for i in 0..3 {
        whole[(24 + i, 24 + i)] += 4e5;
        whole[(27 + i, 27 + i)] += 3e4;
    }
    let mut right = DVector::zeros(freedoms);
    for (joint, action) in &loads.joints {
        for i in 0..3 {
            right[6 * joint.0 + i] += vector(action.force)[i];
            right[6 * joint.0 + 3 + i] += vector(action.moment)[i];
        }
    }
    let free: Vec<usize> = (6..if random.held { 33 } else { 30 }).collect();
    let matrix = DMatrix::from_fn(free.len(), free.len(), |i, j| whole[(free[i], free[j])]);
    let right = DVector::from_fn(free.len(), |i, _| right[free[i]]);
    matrix.lu().solve(&right).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn movements_are_those_of_a_dense_lu_of_matrices_written_out(random in random()) {
        let made = random.made(&Rotation3::identity());
        let mut loads = random.borne(&made, &Rotation3::identity(), 1.0);
        loads.members.clear();
        let expected = by_dense_lu(&made, &random, &loads);
        let solution = made.frame.solve(&loads, Order::First).unwrap();
        let scale = expected.amax();
        for (at, joint) in made.joints.iter().enumerate().skip(1) {
            let Movement { shift, turn } = solution.movement(*joint).unwrap();
            for axis in 0..3 {
                prop_assert!((vector(shift)[axis] - expected[6 * at - 6 + axis]).abs() < 1e-9 * scale);
                prop_assert!((vector(turn)[axis] - expected[6 * at - 3 + axis]).abs() < 1e-9 * scale);
            }
        }
    }

    #[test]
    fn reactions_balance_every_load(random in random()) {
        let made = random.made(&Rotation3::identity());
        let loads = random.borne(&made, &Rotation3::identity(), 1.0);
        let solution = made.frame.solve(&loads, Order::First).unwrap();
        let (mut whole, mut about) = random.applied(&made, &loads);
        let (forces, moments) = (whole.norm().max(100.0), about.norm().max(100.0));
        for (joint, at) in made.joints.iter().zip(&made.places) {
            let reaction = solution.reaction(*joint).unwrap();
            whole += vector(reaction.force);
            about += vector(reaction.moment) + at.cross(&vector(reaction.force));
        }
        prop_assert!(whole.norm() < 1e-8 * forces, "{whole}");
        prop_assert!(about.norm() < 1e-8 * moments.max(10.0 * forces), "{about}");
        prop_assert!(solution.residual() < 1e-10);
    }

    #[test]
    fn a_frame_that_is_turned_as_a_whole_answers_turned(random in random(), angles in prop::array::uniform3(-3.0..3.0_f64)) {
        let turn = Rotation3::from_euler_angles(angles[0], angles[1], angles[2]);
        let (plain, turned) = (random.made(&Rotation3::identity()), random.made(&turn));
        // In second order lightly loaded, since some of these frames are slender enough to buckle.
        for (order, times) in [(Order::First, 1.0), (Order::Second, 0.02)] {
            let loads = random.borne(&plain, &Rotation3::identity(), times);
            let loads_turned = random.borne(&turned, &turn, times);
            let one = plain.frame.solve(&loads, order).unwrap();
            let other = turned.frame.solve(&loads_turned, order).unwrap();
            let scale = plain.joints.iter().map(|joint| vector(one.movement(*joint).unwrap().shift).norm()).fold(0.0, f64::max);
            for joint in &plain.joints {
                let (one, other) = (one.movement(*joint).unwrap(), other.movement(*joint).unwrap());
                prop_assert!((turn * vector(one.shift) - vector(other.shift)).norm() < 1e-7 * scale);
                prop_assert!((turn * vector(one.turn) - vector(other.turn)).norm() < 1e-7 * scale);
            }
            for member in &plain.members {
                let (one, other) = (one.along(*member).unwrap(), other.along(*member).unwrap());
                let (one, other) = (one.greatest_moment().value.si(), other.greatest_moment().value.si());
                prop_assert!((one - other).abs() < 1e-6 * one.abs().max(1.0), "{one} {other}");
            }
        }
    }

    #[test]
    fn twice_the_loads_and_one_more_case_add_up(random in random(), other in random()) {
        let made = random.made(&Rotation3::identity());
        let identity = Rotation3::identity();
        let one = random.borne(&made, &identity, 2.0);
        let more = Random { loads: other.loads.clone(), spread: other.spread, point: other.point, ..random.clone() }
            .borne(&made, &identity, 1.0);
        let mut both = one.clone();
        both.joints.extend(more.joints.iter().copied());
        both.members.extend(more.members.iter().copied());
        let once = random.borne(&made, &identity, 1.0);
        let solve = |loads: &Loads| made.frame.solve(loads, Order::First).unwrap();
        let (one, more, both, once) = (solve(&one), solve(&more), solve(&both), solve(&once));
        for member in made.members.iter().take(6) {
            let middle = one.along(*member).unwrap().length() * 0.37;
            let of = |solution: &Solution<'_>| {
                let along = solution.along(*member).unwrap();
                let forces = along.forces(middle).unwrap();
                [
                    forces.axial.si(), forces.shear_y.si(), forces.shear_z.si(), forces.torsion.si(),
                    forces.moment_y.si(), forces.moment_z.si(), 1e6 * along.shift(middle).unwrap().x.si(),
                ]
            };
            let (one, more, both, once) = (of(&one), of(&more), of(&both), of(&once));
            let scale = both.iter().chain(&one).fold(1.0_f64, |most, value| most.max(value.abs()));
            for at in 0..7 {
                prop_assert!((one[at] + more[at] - both[at]).abs() < 1e-8 * scale);
                prop_assert!((2.0 * once[at] - one[at]).abs() < 1e-8 * scale);
            }
        }
    }

    /// Maxwell and Betti: what a unit load at one freedom does at another, the other does at the one.
    #[test]
    fn what_one_freedom_does_to_another_the_other_does_to_it(random in random(), from in 0..24_usize, to in 0..24_usize) {
        let made = random.made(&Rotation3::identity());
        let joint = |freedom: usize| made.joints[1 + freedom / 6];
        let unit = |freedom: usize| {
            let mut axis = Vector3::zeros();
            axis[freedom % 3] = 1.0;
            if freedom % 6 < 3 {
                Action { force: Triple::from_si(axis), ..Action::none() }
            } else {
                Action { moment: Triple::from_si(axis), ..Action::none() }
            }
        };
        let moved = |loaded: usize, read: usize| {
            let mut loads = Loads::new();
            loads.on_joint(joint(loaded), unit(loaded));
            let solution = made.frame.solve(&loads, Order::First).unwrap();
            let Movement { shift, turn } = solution.movement(joint(read)).unwrap();
            if read % 6 < 3 { vector(shift)[read % 3] } else { vector(turn)[read % 3] }
        };
        let (there, back) = (moved(from, to), moved(to, from));
        let own = moved(from, from).max(moved(to, to));
        prop_assert!((there - back).abs() < 1e-9 * own, "{there} {back}");
    }

    /// Inner forces at any place balance the part of the member before it: ends, loads and all.
    #[test]
    fn inner_forces_balance_the_part_before_them(random in random(), share in 0.0..1.0_f64) {
        let made = random.made(&Rotation3::identity());
        let loads = random.borne(&made, &Rotation3::identity(), 1.0);
        let solution = made.frame.solve(&loads, Order::First).unwrap();
        for member in made.members.iter().take(6) {
            let along = solution.along(*member).unwrap();
            let step = 1e-4 * along.length();
            let here = along.length() * (0.001 + 0.997 * share);
            let (one, other) = (along.forces(here).unwrap(), along.forces(here + step).unwrap());
            // The slope of a moment is its shear, but for a load that stands between.
            let mean = |one: Force, other: Force| 0.5 * (one + other);
            let scale = along.greatest_moment().value.si().abs().max(1.0);
            let jump = (one.torsion - other.torsion).si().abs() > 0.0
                || (one.shear_y - other.shear_y).si().abs() > 0.01 * scale;
            if !jump {
                let gained = (other.moment_z - one.moment_z - mean(one.shear_y, other.shear_y) * step).si();
                prop_assert!(gained.abs() < 1e-6 * scale, "{gained}");
                let gained = (other.moment_y - one.moment_y - mean(one.shear_z, other.shear_z) * step).si();
                prop_assert!(gained.abs() < 1e-6 * scale, "{gained}");
            }
        }
    }
}

#[test]
fn a_row_that_is_built_backwards_answers_backwards() {
    let build = |backwards: bool| {
        let mut builder = FrameBuilder::new();
        let mut tops = Vec::new();
        let mut loads = Loads::new();
        let mut before = None;
        for at_post in 0..5 {
            let at_post = if backwards { 4 - at_post } else { at_post };
            let x = 3.0 * f64::from(at_post);
            let foot = builder.joint(at(x, 0.0, 0.0));
            let top = builder.joint(at(x, 0.0, 2.5));
            builder.fix(foot, Freedoms::ALL);
            let post = builder.beam(foot, top, tube());
            let load = Triple::along_y(newtons_per_metre(300.0 + 100.0 * f64::from(at_post)));
            loads.on_member(post, MemberLoad::Even { load, axes: Axes::Frame });
            if let Some(before) = before {
                builder.beam(before, top, tube());
            }
            before = Some(top);
            tops.push(top);
        }
        if backwards {
            tops.reverse();
        }
        let frame = builder.build().unwrap();
        let solution = frame.solve(&loads, Order::First).unwrap();
        tops.iter().map(|top| solution.movement(*top).unwrap().shift.y.si()).collect::<Vec<_>>()
    };
    for (one, other) in build(false).into_iter().zip(build(true)) {
        assert_relative_eq!(one, other, max_relative = 1e-11);
    }
}

#[test]
fn a_symmetric_frame_under_a_symmetric_load_is_symmetric() {
    let mut builder = FrameBuilder::new();
    let places = [(0.0, 0.0), (0.0, 3.0), (2.0, 4.0), (4.0, 3.0), (4.0, 0.0)];
    let joints = places.map(|(x, z)| builder.joint(at(x, 0.0, z)));
    builder.fix(joints[0], Freedoms::ALL).fix(joints[4], Freedoms::ALL);
    for ends in joints.windows(2) {
        builder.beam(ends[0], ends[1], channel());
    }
    let frame = builder.build().unwrap();
    let mut loads = Loads::new();
    loads.on_joint(joints[2], force(0.0, 700.0, -5000.0));
    for order in [Order::First, Order::Second] {
        let solution = frame.solve(&loads, order).unwrap();
        let shift = |at: usize| vector(solution.movement(joints[at]).unwrap().shift);
        assert!(shift(2).x.abs() < 1e-12);
        assert_relative_eq!(shift(1).x, -shift(3).x, max_relative = 1e-8);
        assert_relative_eq!(shift(1).y, shift(3).y, max_relative = 1e-8);
        assert_relative_eq!(shift(1).z, shift(3).z, max_relative = 1e-8);
    }
}

// --- the door ----------------------------------------------------------------------------------------------------

#[test]
fn the_same_frame_told_in_either_system_of_units_answers_the_same() {
    let answer = |us: bool| {
        // By definition: the pound-force and the inch in SI.
        let (pound, inch) = (0.453_592_37 * 9.806_65, 0.0254);
        let mut builder = FrameBuilder::new();
        let (height, length) = if us { (feet(10.0), feet(8.0)) } else { (metres(3.048), metres(2.4384)) };
        let pipe = if us {
            let inch = inches(1.0);
            (inch * inch * 1.59, inch * inch * inch * inch * 1.444, ksi(29_000.0), ksi(11_200.0))
        } else {
            let mm = millimetres(1.0);
            (
                mm * mm * (1.59 * 645.16),
                mm * mm * mm * mm * (1.444 * 645.16 * 645.16),
                pascals(29e6 * pound / (inch * inch)),
                pascals(11.2e6 * pound / (inch * inch)),
            )
        };
        let (area, second_moment, elastic, shear) = pipe;
        let beam = Beam::of(Section::round(area, second_moment), Material { elastic, shear });
        let zero = metres(0.0);
        let foot = builder.joint(Triple::none());
        let top = builder.joint(Triple::along_z(height));
        let far = builder.joint(Triple { x: length, y: zero, z: height });
        let (spring, turning): (LineLoad, Moment) = if us {
            (pounds(20.0) / inches(1.0), pounds(1000.0) * feet(20.0))
        } else {
            (newtons_per_metre(20.0 * pound / inch), newton_metres(20_000.0 * pound * 12.0 * inch))
        };
        builder.fix(foot, Freedoms::MOVING).fix(far, Freedoms::of(&[Freedom::AlongZ, Freedom::AboutX]));
        for axis in [Axis::X, Axis::Y, Axis::Z] {
            builder.turning_spring(foot, axis, turning).spring(far, axis, spring);
        }
        let members = [builder.beam(foot, top, beam), builder.beam(top, far, beam)];
        let mut loads = Loads::new();
        let line: LineLoad =
            if us { pounds(30.0) / feet(1.0) } else { newtons_per_metre(30.0 * pound / (12.0 * inch)) };
        let push = if us { pounds(100.0) } else { newtons(100.0 * pound) };
        loads
            .on_member(
                members[0],
                MemberLoad::Part {
                    from: if us { feet(1.0) } else { metres(0.3048) },
                    to: if us { feet(9.0) } else { metres(2.7432) },
                    at_from: Triple::along_y(line),
                    at_to: Triple::along_y(line * 0.5),
                    axes: Axes::Frame,
                },
            )
            .on_joint(far, Action { force: Triple { x: push, y: push, z: push }, ..Action::none() });
        let frame = builder.build().unwrap();
        let solution = frame.solve(&loads, Order::Second).unwrap();
        let reaction = solution.reaction(foot).unwrap();
        let movement = solution.movement(far).unwrap();
        let forces = solution.along(members[0]).unwrap().forces(height * 0.5).unwrap();
        [
            reaction.force.y / pounds(1.0),
            reaction.moment.x / (pounds(1.0) * feet(1.0)),
            movement.shift.x / inches(1.0),
            movement.shift.y / inches(1.0),
            forces.moment() / (pounds(1.0) * feet(1.0)),
            forces.axial / pounds(1.0),
        ]
        .map(Pure::pure)
    };
    for (us, si) in answer(true).into_iter().zip(answer(false)) {
        assert_relative_eq!(us, si, max_relative = 1e-11);
    }
}

// --- along a member ----------------------------------------------------------------------------------------------

#[test]
fn extremes_stand_where_the_handbooks_say() {
    // A simple beam of 6 m under 1 kN/m over its first 2 m: R = 5/3 and 1/3 kN; the greatest moment where the shear
    // is nought, 5/3 m from the start, (5/3)²/2.
    let mut builder = FrameBuilder::new();
    let (start, finish) = (builder.joint(at(0.0, 0.0, 0.0)), builder.joint(at(6.0, 0.0, 0.0)));
    builder.fix(start, Freedoms::of(&[Freedom::AlongX, Freedom::AlongY, Freedom::AlongZ, Freedom::AboutX]));
    builder.fix(finish, Freedoms::of(&[Freedom::AlongY, Freedom::AlongZ]));
    let beam = builder.beam(start, finish, tube());
    let frame = builder.build().unwrap();
    let mut loads = Loads::new();
    let down = Triple::along_z(newtons_per_metre(-1000.0));
    loads.on_member(
        beam,
        MemberLoad::Part {
            from: metres(0.0),
            to: metres(2.0),
            at_from: down,
            at_to: down,
            axes: Axes::Frame,
        },
    );
    let solution = frame.solve(&loads, Order::First).unwrap();
    let along = solution.along(beam).unwrap();
    let range = along.moment_z_range();
    assert_relative_eq!(
        range.greatest.value.si(),
        1000.0 * (5.0_f64 / 3.0).powi(2) / 2.0,
        max_relative = 1e-12
    );
    assert_relative_eq!(range.greatest.at.si(), 5.0 / 3.0, max_relative = 1e-9);
    assert!(range.least.value.si().abs() < 1e-9);
    let shear = along.shear_y_range();
    assert_relative_eq!(shear.greatest.value.si(), 5000.0 / 3.0, max_relative = 1e-12);
    assert_relative_eq!(shear.least.value.si(), -1000.0 / 3.0, max_relative = 1e-12);
    assert_eq!(shear.greatest.at, metres(0.0));
    assert_relative_eq!(along.greatest_moment().value.si(), range.greatest.value.si(), max_relative = 1e-12);
    let stations = along.stations(12);
    assert_eq!(stations.len(), 13);
    for station in stations {
        let x = station.at.si();
        let loaded = x.min(2.0);
        let expected = 5000.0 / 3.0 * x - 1000.0 * loaded * (x - 0.5 * loaded);
        assert!((station.forces.moment_z.si() - expected).abs() < 1e-9 * 2000.0, "{x}");
    }
}

#[test]
fn a_point_load_steps_the_shear_a_moment_the_moment_and_a_twist_the_torsion() {
    let mut builder = FrameBuilder::new();
    let (start, finish) = (builder.joint(at(0.0, 0.0, 0.0)), builder.joint(at(4.0, 0.0, 0.0)));
    builder.fix(start, Freedoms::ALL).fix(finish, Freedoms::ALL);
    let beam = builder.beam(start, finish, channel());
    let frame = builder.build().unwrap();
    let mut loads = Loads::new();
    loads.on_member(
        beam,
        MemberLoad::Point {
            at: metres(1.0),
            force: Triple { x: newtons(500.0), y: newtons(200.0), z: newtons(-300.0) },
            moment: Triple { x: newton_metres(40.0), y: newton_metres(50.0), z: newton_metres(60.0) },
            axes: Axes::Member,
        },
    );
    let solution = frame.solve(&loads, Order::First).unwrap();
    let along = solution.along(beam).unwrap();
    let (before, beyond) = (along.forces(metres(1.0 - 1e-9)).unwrap(), along.forces(metres(1.0)).unwrap());
    let step = |one: f64, other: f64, by: f64| assert!((other - one - by).abs() < 1e-5, "{one} {other} {by}");
    // Signs by the free body of the slice that bears the load.
    step(before.axial.si(), beyond.axial.si(), -500.0);
    step(before.shear_y.si(), beyond.shear_y.si(), 200.0);
    step(before.shear_z.si(), beyond.shear_z.si(), -300.0);
    step(before.torsion.si(), beyond.torsion.si(), -40.0);
    step(before.moment_z.si(), beyond.moment_z.si(), -60.0);
    step(before.moment_y.si(), beyond.moment_y.si(), 50.0);
    // A quarter of the way along, three quarters of a force along it and of a twist go to the nearer end.
    assert_relative_eq!(along.axial_range().greatest.value.si(), 375.0, max_relative = 1e-12);
    assert_relative_eq!(along.axial_range().least.value.si(), -125.0, max_relative = 1e-12);
    assert_relative_eq!(along.torsion_range().largest().value.si(), 30.0, max_relative = 1e-12);
}

/// Table 2.1 of "Civil Engineering Formulas" writes the moments over the supports and the shears beside them as
/// fractions, which no decimal of a case file can hold.
#[test]
fn equal_spans_meet_the_fractions_of_the_table() {
    use crate::workings::Blank;
    let over = |spans: f64, at: f64| {
        textbook::ContinuousMoment { spans, loaded_from: 1.0, loaded_to: spans, clamped: 0.0, at }
            .work(&mut Blank)
            .unwrap()
    };
    let reaction = |spans: f64, at: f64| {
        textbook::ContinuousReaction { spans, loaded_from: 1.0, loaded_to: spans, clamped: 0.0, at }
            .work(&mut Blank)
            .unwrap()
    };
    for (spans, moments, shears) in [
        (1.0, vec![0.0], vec![0.5]),
        (2.0, vec![0.0, 1.0 / 8.0], vec![3.0 / 8.0, 2.0 * 5.0 / 8.0]),
        (3.0, vec![0.0, 1.0 / 10.0], vec![4.0 / 10.0, 6.0 / 10.0 + 5.0 / 10.0]),
        (
            4.0,
            vec![0.0, 3.0 / 28.0, 2.0 / 28.0],
            vec![11.0 / 28.0, 17.0 / 28.0 + 15.0 / 28.0, 2.0 * 13.0 / 28.0],
        ),
        (
            5.0,
            vec![0.0, 4.0 / 38.0, 3.0 / 38.0],
            vec![15.0 / 38.0, 23.0 / 38.0 + 20.0 / 38.0, 18.0 / 38.0 + 19.0 / 38.0],
        ),
        (
            6.0,
            vec![0.0, 11.0 / 104.0, 8.0 / 104.0, 9.0 / 104.0],
            vec![41.0 / 104.0, 63.0 / 104.0 + 55.0 / 104.0, 49.0 / 104.0 + 51.0 / 104.0, 2.0 * 53.0 / 104.0],
        ),
        (
            7.0,
            vec![0.0, 15.0 / 142.0, 11.0 / 142.0, 12.0 / 142.0],
            vec![
                56.0 / 142.0,
                86.0 / 142.0 + 75.0 / 142.0,
                67.0 / 142.0 + 70.0 / 142.0,
                72.0 / 142.0 + 71.0 / 142.0,
            ],
        ),
    ] {
        for (at, moment) in moments.iter().enumerate() {
            assert!((over(spans, at as f64 + 1.0) + moment).abs() < 1e-12, "{spans} {at}");
            // From the other end it is the same.
            assert!((over(spans, spans + 1.0 - at as f64) + moment).abs() < 1e-12, "{spans} {at}");
        }
        for (at, shear) in shears.iter().enumerate() {
            assert!((reaction(spans, at as f64 + 1.0) - shear).abs() < 1e-12, "{spans} {at}");
        }
    }
}

#[test]
fn rules_of_the_textbooks_refuse_what_they_cannot_be_asked() {
    use crate::workings::Blank;
    let span = textbook::ContinuousSpanMoment {
        spans: 3.0,
        loaded_from: 1.0,
        loaded_to: 3.0,
        clamped: 0.0,
        at: 2.0,
    };
    assert!((span.work(&mut Blank).unwrap() - 0.025).abs() < 1e-12);
    for (wrong, what) in [
        (textbook::ContinuousSpanMoment { at: 4.0, ..span }, "number that picks the figure"),
        (textbook::ContinuousSpanMoment { at: 1.5, ..span }, "number of a span or a support"),
        (textbook::ContinuousSpanMoment { loaded_to: 4.0, ..span }, "last span under load"),
        (textbook::ContinuousSpanMoment { loaded_from: 0.0, ..span }, "first span under load"),
        (textbook::ContinuousSpanMoment { spans: f64::NAN, ..span }, "number of spans"),
    ] {
        assert_eq!(wrong.work(&mut Blank).unwrap_err().what, what);
    }
    let leaning = textbook::CantileverThrustMoment {
        length: feet(28.0),
        modulus: ksi(29_000.0),
        second_moment: SecondMoment::from_si(484.0 * 0.0254_f64.powi(4)),
        force: pounds(1000.0),
        thrust: pounds(310_000.0),
    };
    let error = leaning.work(&mut Blank).unwrap_err();
    assert_eq!((error.what, error.above), ("thrust", true));
    // Euler's load of a cantilever: π² 29,000 × 484 / (4 × 336²) kip.
    assert_relative_eq!(error.limit.si / pounds(1000.0).si(), 306.764_1, max_relative = 1e-6);
    let short = textbook::CantileverThrustMoment { length: feet(0.0), ..leaning };
    assert_eq!(short.work(&mut Blank).unwrap_err().what, "length");
}

/// Rigid pole in soil whose springs stiffen with depth, n_h z: y₀ = (18 V + 24 M/d)/(n_h d²),
/// θ = (24 V d + 36 M)/(n_h d⁴), derived; three springs by Simpson's rule stand for the soil exactly, since the pole
/// stays straight.
#[test]
fn a_rigid_pole_on_springs_meets_its_closed_form() {
    let (depth, rate) = (inches(36.0).si(), 92.5 * 4.448_221_615_260_5 / 0.0254_f64.powi(3));
    let (shear, moment) = (pounds(600.0).si(), (pounds(600.0) * inches(60.0)).si());
    let mut builder = FrameBuilder::new();
    let joints = [0.0, 0.5, 1.0].map(|share| builder.joint(at(0.0, 0.0, -depth * share)));
    let stiff = Beam::of(
        Section::round(Area::from_si(1.0), SecondMoment::from_si(2.0)),
        Material { elastic: pascals(210e9), shear: pascals(81e9) },
    );
    for ends in joints.windows(2) {
        builder.beam(ends[0], ends[1], stiff);
    }
    let held = [Freedom::AlongX, Freedom::AlongZ, Freedom::AboutY, Freedom::AboutZ];
    builder.fix(joints[0], Freedoms::of(&held));
    for (joint, share, weight) in [(joints[1], 0.5, 4.0 / 6.0), (joints[2], 1.0, 1.0 / 6.0)] {
        builder.spring(joint, Axis::Y, newtons_per_metre(rate * depth * share * depth * weight));
    }
    let frame = builder.build().unwrap();
    let mut loads = Loads::new();
    loads.on_joint(
        joints[0],
        Action { force: Triple::along_y(newtons(shear)), moment: Triple::along_x(newton_metres(-moment)) },
    );
    let solution = frame.solve(&loads, Order::First).unwrap();
    let ground = solution.movement(joints[0]).unwrap();
    let expected = (18.0 * shear + 24.0 * moment / depth) / (rate * depth * depth);
    let turned = (24.0 * shear * depth + 36.0 * moment) / (rate * depth.powi(4));
    assert_relative_eq!(ground.shift.y.si(), expected, max_relative = 1e-6);
    assert_relative_eq!(-ground.turn.x, turned, max_relative = 1e-6);
    // What another program's finite springs came to, 0.290035 in and 0.0116694 rad, lies within a thousandth.
    assert_relative_eq!((ground.shift.y / inches(1.0)).pure(), 0.290_035, max_relative = 1e-3);
    assert_relative_eq!(-ground.turn.x, 0.011_669_4, max_relative = 1e-3);
}

// --- second order ------------------------------------------------------------------------------------------------

#[test]
fn the_foot_of_a_leaning_post_carries_its_force_times_arm_and_its_thrust_times_lean() {
    let (builder, foot, top, member) = post(3.0);
    let frame = builder.build().unwrap();
    let critical = PI * PI * EI / (4.0 * 9.0);
    for share in [0.0, 0.1, 0.5, 0.9, 0.99] {
        let mut loads = Loads::new();
        loads.on_joint(top, force(0.0, 100.0, -share * critical));
        let solution = frame.solve(&loads, Order::Second).unwrap();
        let lean = solution.movement(top).unwrap().shift.y.si();
        let moment = solution.reaction(foot).unwrap().moment.x.si();
        assert_relative_eq!(moment, 300.0 + share * critical * lean, max_relative = 1e-9);
        // Timoshenko: δ = H L³/3EI × 3 (tan u − u)/u³.
        if share > 0.0 {
            let u = (share * critical * 9.0 / EI).sqrt();
            let expected = 100.0 * 27.0 / (3.0 * EI) * 3.0 * (u.tan() - u) / u.powi(3);
            assert_relative_eq!(lean, expected, max_relative = 1e-8);
        }
        let along = solution.along(member).unwrap();
        assert_relative_eq!(along.greatest_moment().value.si(), moment, max_relative = 1e-9);
    }
}

/// The thrust at which a frame buckles, between which it is solved and refused, by halving.
fn critical(thrust_to: impl Fn(f64) -> Result<(), FrameError>, from: f64, to: f64) -> f64 {
    let (mut low, mut high) = (from, to);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        match thrust_to(middle) {
            Ok(()) => low = middle,
            Err(FrameError::Buckled { .. } | FrameError::BuckledMember { .. }) => high = middle,
            Err(error) => panic!("{error}"),
        }
    }
    low
}

#[test]
fn columns_buckle_at_eulers_loads() {
    let length = 3.0;
    let euler = PI * PI * EI / (length * length);
    let across = Freedoms::of(&[Freedom::AlongX, Freedom::AlongY]);
    let pinned = Freedoms::of(&[Freedom::AlongX, Freedom::AlongY, Freedom::AlongZ, Freedom::AboutZ]);
    let turning = Freedoms::of(&[Freedom::AboutX, Freedom::AboutY]);
    let both = Freedoms::of(&[Freedom::AlongX, Freedom::AlongY, Freedom::AboutX, Freedom::AboutY]);
    // Foot, head, Euler's load times this; the root of tan u = u is 4.493 409 457 909 064.
    for (foot, head, factor) in [
        (Freedoms::ALL, Freedoms::NONE, 0.25),
        (pinned, across, 1.0),
        (Freedoms::ALL, across, (4.493_409_457_909_064_f64 / PI).powi(2)),
        (Freedoms::ALL, turning, 1.0),
        (Freedoms::ALL, both, 4.0),
    ] {
        let mut builder = FrameBuilder::new();
        let joints = [builder.joint(at(0.0, 0.0, 0.0)), builder.joint(at(0.0, 0.0, length))];
        builder.fix(joints[0], foot).fix(joints[1], head);
        builder.beam(joints[0], joints[1], tube());
        let frame = builder.build().unwrap();
        let thrust_to = |thrust: f64| {
            let mut loads = Loads::new();
            loads.on_joint(joints[1], force(0.0, 0.0, -thrust));
            frame.solve(&loads, Order::Second).map(|_| ())
        };
        let found = critical(thrust_to, 0.5 * factor * euler, 1.5 * factor * euler);
        assert_relative_eq!(found, factor * euler, max_relative = 1e-6);
    }
}

/// A post with a bar beside it that leans on it by a rod: only the bar is loaded, and pulls the post over as −P/L
/// beside 3EI/L³ and the rod.
#[test]
fn a_post_carries_what_leans_on_it() {
    let length = 2.5;
    let (mut builder, _, top, _) = post(length);
    let foot = builder.joint(at(0.0, 1.0, 0.0));
    let head = builder.joint(at(0.0, 1.0, length));
    builder.fix(foot, Freedoms::MOVING).fix(head, Freedoms::of(&[Freedom::AlongX]));
    let bar = Bar { area: Area::from_si(1e-3), elastic: pascals(200e9), tension_only: false };
    builder.bar(foot, head, bar);
    builder.bar(top, head, Bar { area: Area::from_si(1e-4), ..bar });
    let frame = builder.build().unwrap();
    let thrust_to = |thrust: f64| {
        let mut loads = Loads::new();
        loads.on_joint(head, force(0.0, 0.0, -thrust));
        frame.solve(&loads, Order::Second).map(|_| ())
    };
    // The post and the rod that links them, one after the other.
    let (post, link) = (3.0 * EI / length.powi(3), 200e9 * 1e-4);
    let expected = length * post * link / (post + link);
    assert_relative_eq!(critical(thrust_to, 0.5 * expected, 1.5 * expected), expected, max_relative = 1e-6);
}

/// A joint more along a member changes nothing, under thrust or tension and any load between.
#[test]
fn a_member_in_two_pieces_is_the_member_in_one() {
    let length = 4.0;
    let answer = |cut: Option<f64>, thrust: f64| {
        let mut builder = FrameBuilder::new();
        let mut places = vec![0.0, length];
        if let Some(cut) = cut {
            places.insert(1, cut);
        }
        let joints: Vec<Joint> = places.iter().map(|x| builder.joint(at(*x, 0.0, 0.0))).collect();
        let finish = joints[joints.len() - 1];
        builder.fix(joints[0], Freedoms::ALL);
        builder.fix(finish, Freedoms::of(&[Freedom::AlongY]));
        builder.spring(finish, Axis::Z, newtons_per_metre(4000.0));
        let members: Vec<Member> =
            joints.windows(2).map(|ends| builder.beam(ends[0], ends[1], channel())).collect();
        let frame = builder.build().unwrap();
        let mut loads = Loads::new();
        loads.on_joint(finish, force(-thrust, 0.0, 150.0));
        // A load that rises from 0.5 m to 3.2 m, cut where the member is; and a force with a moment at 2.5 m.
        let rising = |x: f64| Vector3::new(0.0, 100.0 + 60.0 * x, -250.0 + 30.0 * x);
        for (piece, member) in places.windows(2).zip(&members) {
            let (from, to) = (piece[0].max(0.5), piece[1].min(3.2));
            if from < to {
                loads.on_member(
                    *member,
                    MemberLoad::Part {
                        from: metres(from - piece[0]),
                        to: metres(to - piece[0]),
                        at_from: Triple::from_si(rising(from)),
                        at_to: Triple::from_si(rising(to)),
                        axes: Axes::Frame,
                    },
                );
            }
            if (piece[0]..piece[1]).contains(&2.5) {
                loads.on_member(
                    *member,
                    MemberLoad::Point {
                        at: metres(2.5 - piece[0]),
                        force: Triple::along_y(newtons(300.0)),
                        moment: Triple::along_y(newton_metres(120.0)),
                        axes: Axes::Frame,
                    },
                );
            }
        }
        let solution = frame.solve(&loads, Order::Second).unwrap();
        let read = |x: f64| {
            let piece = places.windows(2).position(|piece| x <= piece[1]).unwrap();
            let along = solution.along(members[piece]).unwrap();
            let place = metres(x - places[piece]);
            let (forces, shift) = (along.forces(place).unwrap(), along.shift(place).unwrap());
            [
                forces.moment_y.si(),
                forces.moment_z.si(),
                forces.shear_y.si(),
                forces.shear_z.si(),
                1e4 * shift.y.si(),
                1e4 * shift.z.si(),
            ]
        };
        [0.2, 0.9, 1.7, 2.2, 2.9, 3.9].map(read)
    };
    // Euler's load of the weaker plane is 15 kN here; the clamped and propped member buckles at about twice that.
    for thrust in [-60_000.0, -3000.0, 0.0, 8000.0, 20_000.0] {
        let whole = answer(None, thrust);
        for cut in [0.7, 2.0, 3.5] {
            for (one, other) in whole.iter().flatten().zip(answer(Some(cut), thrust).iter().flatten()) {
                assert!((one - other).abs() < 1e-7 * (1.0 + one.abs()), "{thrust} {cut}: {one} {other}");
            }
        }
    }
}

#[test]
fn tension_stiffens_and_a_member_that_is_a_string_is_refused() {
    let (builder, _, top, _) = post(3.0);
    let frame = builder.build().unwrap();
    let lean = |pull: f64| {
        let mut loads = Loads::new();
        loads.on_joint(top, force(0.0, 100.0, pull));
        frame.solve(&loads, Order::Second).map(|solution| solution.movement(top).unwrap().shift.y.si())
    };
    let u = (20_000.0 * 9.0 / EI).sqrt();
    let expected = 100.0 * 27.0 / EI * (u - u.tanh()) / u.powi(3);
    assert_relative_eq!(lean(20_000.0).unwrap(), expected, max_relative = 1e-9);
    let refused = lean(401.0 * EI / 9.0).unwrap_err();
    assert!(matches!(refused, FrameError::TooTaut { .. }), "{refused}");
    assert!(lean(399.0 * EI / 9.0).is_ok());
}

/// A post buckles under its own weight at q L = 7.837 EI/L² (Timoshenko and Gere, from memory). In one piece, under the
/// mean of its thrust, it does so earlier; cut into pieces it comes near.
#[test]
fn a_post_under_its_own_weight_is_reckoned_to_the_heavy_side_and_in_pieces_comes_near() {
    let length = 3.0;
    let found = |pieces: usize| {
        let mut builder = FrameBuilder::new();
        let joints: Vec<Joint> = (0..=pieces)
            .map(|piece| builder.joint(at(0.0, 0.0, length * piece as f64 / pieces as f64)))
            .collect();
        builder.fix(joints[0], Freedoms::ALL);
        let members: Vec<Member> =
            joints.windows(2).map(|ends| builder.beam(ends[0], ends[1], tube())).collect();
        let frame = builder.build().unwrap();
        let weight_to = |weight: f64| {
            let mut loads = Loads::new();
            for member in &members {
                let load = Triple::along_z(newtons_per_metre(-weight / length));
                loads.on_member(*member, MemberLoad::Even { load, axes: Axes::Frame });
            }
            frame.solve(&loads, Order::Second).map(|_| ())
        };
        critical(weight_to, EI / 9.0, 20.0 * EI / 9.0) / (EI / 9.0)
    };
    assert_relative_eq!(found(1), PI * PI / 2.0, max_relative = 1e-6);
    let near = found(16);
    assert!((near / 7.837 - 1.0).abs() < 2e-3, "{near}");
}

// --- slack ---------------------------------------------------------------------------------------------------------

/// A square of hinged members with a rod along each diagonal, pushed at the top.
fn braced(tension_only: [bool; 2], push: f64) -> (Frame, Vec<Member>, Joint, Loads) {
    let mut builder = FrameBuilder::new();
    let places = [(0.0, 0.0), (0.0, 3.0), (3.0, 3.0), (3.0, 0.0)];
    let joints = places.map(|(x, z)| builder.joint(at(x, 0.0, z)));
    let out = Freedoms::of(&[Freedom::AlongY, Freedom::AboutX, Freedom::AboutZ]);
    for joint in joints {
        builder.fix(joint, out);
    }
    builder.fix(joints[0], Freedoms::MOVING).fix(joints[3], Freedoms::MOVING);
    let bar = |tension_only: bool| Bar { area: Area::from_si(8e-5), elastic: pascals(200e9), tension_only };
    for ends in joints.windows(2) {
        builder.bar(ends[0], ends[1], bar(false));
    }
    let rods = vec![
        builder.bar(joints[0], joints[2], bar(tension_only[0])),
        builder.bar(joints[3], joints[1], bar(tension_only[1])),
    ];
    let mut loads = Loads::new();
    loads.on_joint(joints[1], force(push, 0.0, 0.0));
    (builder.build().unwrap(), rods, joints[1], loads)
}

#[test]
fn of_two_rods_the_one_that_is_pushed_goes_slack_and_the_other_takes_all() {
    for (push, taut, slack) in [(1000.0, 0, 1), (-1000.0, 1, 0)] {
        let (frame, rods, _, loads) = braced([true, true], push);
        let solution = frame.solve(&loads, Order::First).unwrap();
        assert_eq!(solution.rounds(), 2);
        assert!(solution.is_slack(rods[slack]).unwrap() && !solution.is_slack(rods[taut]).unwrap());
        let axial = |rod: usize| solution.along(rods[rod]).unwrap().forces(metres(0.0)).unwrap().axial.si();
        // Statics: the taut rod takes the push along a diagonal of a square.
        assert_relative_eq!(axial(taut), 1000.0 * 2.0_f64.sqrt(), max_relative = 1e-9);
        assert_eq!(axial(slack), 0.0);
        // Rods that push as well share it.
        let (frame, rods, _, loads) = braced([false, false], push);
        let solution = frame.solve(&loads, Order::First).unwrap();
        let pushed = solution.along(rods[slack]).unwrap().forces(metres(0.0)).unwrap().axial.si();
        assert!(pushed < -100.0);
    }
}

/// Along x from its start at the origin, clamped there: u = (w (L x − x²/2) + P min(x, a))/EA.
#[test]
fn a_member_pulled_along_itself_stretches_by_what_hangs_beyond_each_place() {
    let mut builder = FrameBuilder::new();
    let (start, finish) = (builder.joint(at(0.0, 0.0, 0.0)), builder.joint(at(2.0, 0.0, 0.0)));
    builder.fix(start, Freedoms::ALL);
    let member = builder.beam(start, finish, tube());
    let frame = builder.build().unwrap();
    let mut loads = Loads::new();
    let (w, point, reach) = (700.0, 900.0, 0.8);
    loads.on_member(
        member,
        MemberLoad::Even { load: Triple::along_x(newtons_per_metre(w)), axes: Axes::Frame },
    );
    let pull = MemberLoad::Point {
        at: metres(reach),
        force: Triple::along_x(newtons(point)),
        moment: Triple::none(),
        axes: Axes::Frame,
    };
    loads.on_member(member, pull);
    let solution = frame.solve(&loads, Order::First).unwrap();
    let along = solution.along(member).unwrap();
    for x in [0.0, 0.5, 0.8, 1.3, 2.0_f64] {
        let by_hand = (w * (2.0 * x - x * x / 2.0) + point * x.min(reach)) / (210e9 * 5.74e-4);
        assert_relative_eq!(
            along.shift(metres(x)).unwrap().x.si(),
            by_hand,
            epsilon = 1e-18,
            max_relative = 1e-9
        );
    }
}

/// Springs of 1 MN/m at both ends and a bar of 2 MN/m between them: of 5 kN at the second, 2 kN pass through the bar.
#[test]
fn a_bar_stays_straight_and_evenly_stretched_between_its_joints() {
    let mut builder = FrameBuilder::new();
    let ends = [0.0, 2.0].map(|x| builder.joint(at(x, 0.0, 0.0)));
    for end in ends {
        for axis in [Axis::X, Axis::Y, Axis::Z] {
            builder.spring(end, axis, newtons_per_metre(1e6));
        }
    }
    let bar = Bar { area: Area::from_si(2e-5), elastic: pascals(200e9), tension_only: false };
    let member = builder.bar(ends[0], ends[1], bar);
    let frame = builder.build().unwrap();
    let mut loads = Loads::new();
    loads.on_joint(ends[0], force(0.0, 1000.0, -3000.0)).on_joint(ends[1], force(5000.0, 4000.0, 2000.0));
    let solution = frame.solve(&loads, Order::First).unwrap();
    let along = solution.along(member).unwrap();
    assert_relative_eq!(along.forces(metres(0.5)).unwrap().axial.si(), 2000.0, max_relative = 1e-9);
    for (x, moved) in [
        (0.0, [2e-3, 1e-3, -3e-3]),
        (0.5, [2.25e-3, 1.75e-3, -1.75e-3]),
        (1.6, [2.8e-3, 3.4e-3, 1e-3]),
        (2.0, [3e-3, 4e-3, 2e-3]),
    ] {
        let found = vector(along.shift(metres(x)).unwrap());
        assert!((found - Vector3::from(moved)).norm() < 1e-12, "{x}: {found}");
    }
}

/// A load that grows from nought at the foot to w at the top: w h/2 in all, its middle two thirds up.
#[test]
fn a_triangle_of_load_bears_on_the_foot_whichever_end_it_is_told_from() {
    let (builder, foot, _, member) = post(3.0);
    let frame = builder.build().unwrap();
    let (none, full) = (Triple::none(), Triple::along_y(newtons_per_metre(600.0)));
    for (from, to, at_from, at_to) in [(0.0, 3.0, none, full), (3.0, 0.0, full, none)] {
        let mut loads = Loads::new();
        let (from, to) = (metres(from), metres(to));
        loads.on_member(member, MemberLoad::Part { from, to, at_from, at_to, axes: Axes::Frame });
        let reaction = frame.solve(&loads, Order::First).unwrap().reaction(foot).unwrap();
        assert_relative_eq!(reaction.force.y.si(), -900.0, max_relative = 1e-9);
        assert_relative_eq!(reaction.moment.x.si().abs(), 1800.0, max_relative = 1e-9);
    }
}

/// A simple beam of 2 m along x.
fn simple_beam() -> (Frame, Member, [Joint; 2]) {
    let mut builder = FrameBuilder::new();
    let ends = [0.0, 2.0].map(|x| builder.joint(at(x, 0.0, 0.0)));
    builder.fix(ends[0], Freedoms::of(&[Freedom::AlongX, Freedom::AlongY, Freedom::AlongZ, Freedom::AboutX]));
    builder.fix(ends[1], Freedoms::of(&[Freedom::AlongY, Freedom::AlongZ]));
    let member = builder.beam(ends[0], ends[1], tube());
    (builder.build().unwrap(), member, ends)
}

/// A load that falls evenly from w to −w: V = w L/6 − w x + w x²/L, so w L/6 at both ends and −w L/12 in the middle.
#[test]
fn the_shear_turns_where_the_load_changes_sign() {
    let (frame, member, _) = simple_beam();
    for axis in [1, 2] {
        let line = |size: f64| {
            let mut load = [0.0; 3];
            load[axis] = size;
            Triple::from_si(Vector3::from(load))
        };
        let mut loads = Loads::new();
        let (from, to) = (metres(0.0), metres(2.0));
        let (at_from, at_to) = (line(600.0), line(-600.0));
        loads.on_member(member, MemberLoad::Part { from, to, at_from, at_to, axes: Axes::Member });
        let solution = frame.solve(&loads, Order::First).unwrap();
        let along = solution.along(member).unwrap();
        let range = if axis == 1 { along.shear_y_range() } else { along.shear_z_range() };
        let (end, middle) = if range.largest() == range.least {
            (range.least, range.greatest)
        } else {
            (range.greatest, range.least)
        };
        assert_relative_eq!(end.value.si().abs(), 200.0, max_relative = 1e-9);
        assert_relative_eq!(middle.value.si(), -0.5 * end.value.si(), max_relative = 1e-9);
        assert_relative_eq!(middle.at.si(), 1.0, max_relative = 1e-6);
    }
}

/// An even w with a moment of 0.49 w L² that lifts the other end: R = 0.99 w L, so that the moment, −0.49 w L² where it
/// acts, turns 0.99 L from there with 0.99²/2 − 0.49 of w L², a twenty-thousandth, and is nought at the other end.
#[test]
fn a_turn_close_to_either_end_of_a_member_is_found() {
    let (frame, member, ends) = simple_beam();
    for (end, times, turns_at) in [(ends[0], -0.49, 1.98), (ends[1], 0.49, 0.02)] {
        let mut loads = Loads::new();
        let down = Triple::along_z(newtons_per_metre(-1000.0));
        loads.on_member(member, MemberLoad::Even { load: down, axes: Axes::Frame });
        let moment = Triple::along_y(newton_metres(times * 4000.0));
        loads.on_joint(end, Action { moment, ..Action::none() });
        let solution = frame.solve(&loads, Order::First).unwrap();
        let range = solution.along(member).unwrap().moment_z_range();
        let turn = if range.largest() == range.least { range.greatest } else { range.least };
        assert_relative_eq!(range.largest().value.si().abs(), 1960.0, max_relative = 1e-9);
        assert_relative_eq!(turn.value.si().abs(), 0.2, max_relative = 1e-6);
        assert_relative_eq!(turn.at.si(), turns_at, max_relative = 1e-4);
    }
}

/// A joint on springs s along x and z, a rod A from it along −x and a rod B along 0.6 x − 0.8 z. The force (−1, −½) kN
/// pushes both while both act; with A slack B is pulled: 0.2 kN of the force lie along it.
#[test]
fn a_rod_that_went_slack_beside_another_is_pulled_again_once_that_one_is_slack() {
    let mut builder = FrameBuilder::new();
    let places = [(0.0, 0.0), (-1.0, 0.0), (0.6, -0.8), (5.0, 0.0), (6.0, 0.0)];
    let joints = places.map(|(x, z)| builder.joint(at(x, 0.0, z)));
    for (joint, freedoms) in [(0, &[Freedom::AlongY][..]), (4, &[Freedom::AlongY, Freedom::AlongZ])] {
        builder.fix(joints[joint], Freedoms::of(freedoms));
    }
    for joint in [1, 2, 3] {
        builder.fix(joints[joint], Freedoms::MOVING);
    }
    for axis in [Axis::X, Axis::Z] {
        builder.spring(joints[0], axis, newtons_per_metre(1e5));
    }
    let bar = |tension_only| Bar { area: Area::from_si(5e-5), elastic: pascals(200e9), tension_only };
    let [a, b] = [1, 2].map(|other| builder.bar(joints[other], joints[0], bar(true)));
    // Elsewhere, something that carries far more.
    builder.bar(joints[3], joints[4], bar(false));
    let mut loads = Loads::new();
    loads.on_joint(joints[0], force(-1000.0, 0.0, -500.0)).on_joint(joints[4], force(1e6, 0.0, 0.0));
    let frame = builder.build().unwrap();
    let solution = frame.solve(&loads, Order::First).unwrap();
    assert!(solution.is_slack(a).unwrap() && !solution.is_slack(b).unwrap());
    // B has 1e7 N/m beside 1e5 of the springs.
    let pull = solution.along(b).unwrap().forces(metres(0.5)).unwrap().axial.si();
    assert_relative_eq!(pull, 200.0 * 1e7 / (1e7 + 1e5), max_relative = 1e-9);
}

/// A portal whose rail does not bend: of a post with thrust N, clamped below and kept upright above, the push it takes
/// for each metre of sway is N/(2 tan(a h/2)/a − h), a² = N/EI. The sway Δ of both moves thrust from one post to the
/// other: (H h + 2 P Δ)/(2 b).
#[test]
fn thrusts_of_a_portal_are_those_of_its_leaning_shape_not_of_the_upright_one() {
    let (height, width, load, push) = (3.0, 2.0, 25_000.0, 2000.0);
    let mut builder = FrameBuilder::new();
    let feet = [0.0, width].map(|x| builder.joint(at(x, 0.0, 0.0)));
    let tops = [0.0, width].map(|x| builder.joint(at(x, 0.0, height)));
    let stiff = |second_moment: f64| {
        let section = Section::round(Area::from_si(0.1), SecondMoment::from_si(second_moment));
        Beam::of(section, tube().material)
    };
    for (foot, top) in feet.into_iter().zip(tops) {
        builder.fix(foot, Freedoms::ALL);
        builder.fix(top, Freedoms::of(&[Freedom::AlongY, Freedom::AboutX, Freedom::AboutZ]));
        builder.beam(foot, top, stiff(2.347e-7));
    }
    builder.beam(tops[0], tops[1], stiff(1e-2));
    let mut loads = Loads::new();
    loads.on_joint(tops[0], force(push, 0.0, -load)).on_joint(tops[1], force(0.0, 0.0, -load));
    let frame = builder.build().unwrap();
    let solution = frame.solve(&loads, Order::Second).unwrap();

    let stiffness = |thrust: f64| {
        let a = (thrust / EI).sqrt();
        thrust / (2.0 * (a * height / 2.0).tan() / a - height)
    };
    let (mut moved_over, mut sway) = (0.0, 0.0);
    for _ in 0..200 {
        sway = push / (stiffness(load - moved_over) + stiffness(load + moved_over));
        moved_over = (push * height + 2.0 * load * sway) / (2.0 * width);
    }
    // What a round from the upright shape would have moved over is far less.
    assert!(moved_over > 1.5 * push * height / (2.0 * width));
    assert_relative_eq!(solution.movement(tops[0]).unwrap().shift.x.si(), sway, max_relative = 1e-3);
    for (foot, thrust) in feet.into_iter().zip([load - moved_over, load + moved_over]) {
        let reaction = solution.reaction(foot).unwrap().force;
        assert_relative_eq!(reaction.z.si(), thrust, max_relative = 1e-3);
        assert_relative_eq!(reaction.x.si(), -stiffness(thrust) * sway, max_relative = 1e-3);
    }
}

#[test]
fn what_does_not_settle_in_the_rounds_given_is_an_error() {
    let (frame, rods, _, loads) = braced([true, true], 1000.0);
    let limits = Limits { rounds: 1, ..Limits::default() };
    let error = frame.solve_within(&loads, Order::First, limits).unwrap_err();
    assert_eq!(error, FrameError::NotSettled { rounds: 1, member: rods[1] });
    assert!(error.to_string().contains("did not settle in 1 rounds: member 5"), "{error}");
}

/// A mast with eight guys: whichever way it is pushed, those to lee are slack, and those to windward carry the push as
/// if the others were not there.
#[test]
fn guys_round_a_mast_work_one_way_only() {
    let guyed = |keep: &dyn Fn(usize) -> bool, tension_only: bool, push: f64| {
        let mut builder = FrameBuilder::new();
        let foot = builder.joint(at(0.0, 0.0, 0.0));
        let top = builder.joint(at(0.0, 0.0, 6.0));
        builder
            .fix(foot, Freedoms::of(&[Freedom::AlongX, Freedom::AlongY, Freedom::AlongZ, Freedom::AboutZ]));
        builder.beam(foot, top, tube());
        let mut guys = Vec::new();
        for guy in (0..8).filter(|guy| keep(*guy)) {
            let angle = PI / 4.0 * guy as f64;
            let anchor = builder.joint(at(4.0 * angle.cos(), 4.0 * angle.sin(), 0.0));
            builder.fix(anchor, Freedoms::MOVING);
            let bar = Bar { area: Area::from_si(2e-5), elastic: pascals(150e9), tension_only };
            guys.push((guy, builder.bar(anchor, top, bar)));
        }
        let frame = builder.build().unwrap();
        let mut loads = Loads::new();
        loads.on_joint(top, force(push * (0.3_f64).cos(), push * (0.3_f64).sin(), 0.0));
        let solution = frame.solve(&loads, Order::Second).unwrap();
        let slack: Vec<usize> = guys
            .iter()
            .filter(|(_, member)| solution.is_slack(*member).unwrap())
            .map(|(guy, _)| *guy)
            .collect();
        (vector(solution.movement(top).unwrap().shift), slack)
    };
    let (moved, slack) = guyed(&|_| true, true, 800.0);
    // The push goes towards 17°: guys within about a right angle of it are slack, the mast being shortened a little.
    assert!(slack.contains(&0) && slack.contains(&1) && !slack.contains(&4) && !slack.contains(&5));
    let (without, none) = guyed(&|guy| !slack.contains(&guy), false, 800.0);
    assert!(none.is_empty());
    assert!((moved - without).norm() < 1e-9 * moved.norm());
}

// --- what is refused ---------------------------------------------------------------------------------------------

#[test]
fn a_post_on_a_hinge_is_a_mechanism_that_names_its_top() {
    let mut builder = FrameBuilder::new();
    let foot = builder.joint(at(0.0, 0.0, 0.0));
    let top = builder.joint(at(0.0, 0.0, 3.0));
    let others = [Freedom::AlongX, Freedom::AlongY, Freedom::AlongZ, Freedom::AboutZ, Freedom::AboutY];
    builder.fix(foot, Freedoms::of(&others));
    builder.beam(foot, top, tube());
    let frame = builder.build().unwrap();
    let error = frame.solve(&Loads::new(), Order::First).unwrap_err();
    let expected = FrameError::Mechanism { joint: top, at: at(0.0, 0.0, 3.0), freedom: Freedom::AlongY };
    assert_eq!(error, expected);
    let text = error.to_string();
    assert!(text.starts_with("joint 2 at (0.0000 m, 0.0000 m, 3.0000 m) is free to move along y"), "{text}");
}

#[test]
fn a_rail_that_nothing_keeps_from_spinning_is_named_with_its_axis() {
    let mut builder = FrameBuilder::new();
    let mut before = None;
    let mut first = None;
    for at_post in 0..4 {
        let x = 3.0 * f64::from(at_post);
        let foot = builder.joint(at(x, 0.0, 0.0));
        let top = builder.joint(at(x, 0.0, 2.0));
        let rail = builder.joint(at(x, 0.0, 2.0));
        builder.fix(foot, Freedoms::ALL).hold(top, rail, Freedoms::MOVING);
        builder.beam(foot, top, tube());
        if let Some(before) = before {
            builder.beam(before, rail, tube());
        }
        before = Some(rail);
        first = first.or(Some(rail));
    }
    let error = builder.build().unwrap().solve(&Loads::new(), Order::First).unwrap_err();
    let expected =
        FrameError::Mechanism { joint: first.unwrap(), at: at(0.0, 0.0, 2.0), freedom: Freedom::AboutX };
    assert_eq!(error, expected);
}

#[test]
fn a_loose_joint_a_hanging_bar_and_a_moment_nobody_takes_are_mechanisms() {
    let (mut builder, ..) = post(3.0);
    let loose = builder.joint(at(1.0, 0.0, 0.0));
    let error = builder.build().unwrap().solve(&Loads::new(), Order::First).unwrap_err();
    assert!(matches!(error, FrameError::Mechanism { joint, freedom: Freedom::AlongX, .. } if joint == loose));

    let (mut builder, _, top, _) = post(3.0);
    let end = builder.joint(at(1.0, 0.0, 3.0));
    builder.bar(top, end, Bar { area: Area::from_si(1e-4), elastic: pascals(2e11), tension_only: false });
    let error = builder.build().unwrap().solve(&Loads::new(), Order::First).unwrap_err();
    assert!(matches!(error, FrameError::Mechanism { joint, .. } if joint == end), "{error}");

    let (frame, _, corner, mut loads) = braced([false, false], 1.0);
    loads.on_joint(corner, Action { moment: Triple::along_y(newton_metres(1.0)), ..Action::none() });
    let error = frame.solve(&loads, Order::First).unwrap_err();
    assert!(
        matches!(error, FrameError::Mechanism { joint, freedom: Freedom::AboutY, .. } if joint == corner),
        "{error}"
    );
}

#[test]
fn buckling_names_what_moves_and_a_member_that_bows_names_itself() {
    let (builder, _, top, _) = post(3.0);
    let mut loads = Loads::new();
    loads.on_joint(top, force(0.0, 0.0, -0.26 * PI * PI * EI / 9.0));
    let frame = builder.build().unwrap();
    let error = frame.solve(&loads, Order::Second).unwrap_err();
    assert!(matches!(error, FrameError::Buckled { joint, .. } if joint == top), "{error}");
    let mut builder = builder.clone();
    builder.fix(top, Freedoms::of(&[Freedom::AlongX, Freedom::AlongY, Freedom::AboutX, Freedom::AboutY]));
    let frame = builder.build().unwrap();
    let mut loads = Loads::new();
    loads.on_joint(top, force(0.0, 0.0, -4.01 * PI * PI * EI / 9.0));
    let error = frame.solve(&loads, Order::Second).unwrap_err();
    assert!(matches!(error, FrameError::BuckledMember { .. }), "{error}");
    let clamped = frame.clamped_buckling_load(Member(0)).unwrap().unwrap();
    assert_relative_eq!(clamped.si(), 4.0 * PI * PI * EI / 9.0, max_relative = 1e-12);
}

#[test]
fn a_stiff_thing_on_a_very_soft_spring_is_out_of_balance_and_says_so() {
    let mut builder = FrameBuilder::new();
    let ends = [builder.joint(at(0.0, 0.0, 0.0)), builder.joint(at(0.3, 0.5, 0.7))];
    for axis in [Axis::X, Axis::Y, Axis::Z] {
        builder.spring(ends[0], axis, newtons_per_metre(30.0));
        builder.turning_spring(ends[0], axis, newton_metres(300.0));
    }
    let stiff = Section::round(Area::from_si(1.0), SecondMoment::from_si(1.0));
    builder.beam(ends[0], ends[1], Beam { section: stiff, ..tube() });
    let frame = builder.build().unwrap();
    let mut loads = Loads::new();
    loads.on_joint(ends[1], force(1.0, 0.6, 0.3));
    let error = frame.solve(&loads, Order::First).unwrap_err();
    let FrameError::Unbalanced { residual, limit } = error else { panic!("{error}") };
    assert!(residual > limit && limit == Limits::default().residual);
    assert!(error.to_string().contains("out of balance"), "{error}");
    // Let through on purpose, it still tells how bad it is.
    let limits = Limits { residual: 1.0, ..Limits::default() };
    assert_eq!(frame.solve_within(&loads, Order::First, limits).unwrap().residual(), residual);
}

#[test]
fn ids_values_and_places_that_cannot_be_are_refused_by_name() {
    let (builder, foot, top, member) = post(3.0);
    let frame = builder.build().unwrap();
    let solved = frame.solve(&Loads::new(), Order::First).unwrap();
    assert_eq!(solved.rounds(), 1);
    let (far, other) = (Joint(9), Member(9));
    assert_eq!(solved.movement(far).unwrap_err(), FrameError::UnknownJoint { joint: far });
    assert_eq!(solved.along(other).unwrap_err(), FrameError::UnknownMember { member: other });
    let along = solved.along(member).unwrap();
    assert!(matches!(along.forces(metres(3.1)), Err(FrameError::OffMember { .. })));
    assert!(along.forces(metres(3.0)).is_ok());
    let refused = |change: &dyn Fn(&mut FrameBuilder)| {
        let mut changed = builder.clone();
        change(&mut changed);
        changed.build().unwrap_err()
    };
    let told = |change: &dyn Fn(&mut FrameBuilder), part: &str| {
        let text = refused(change).to_string();
        assert!(text.contains(part), "{text}");
    };
    told(&|b| _ = b.beam(foot, foot, tube()), "member 2 has no length");
    told(
        &|b| _ = b.beam(foot, top, Beam { facing: Some(Triple::along_z(1.0)), ..tube() }),
        "member 2 faces along itself",
    );
    let thin = |area: f64| Section { area: Area::from_si(area), ..tube().section };
    told(&|b| _ = b.beam(foot, top, Beam { section: thin(0.0), ..tube() }), "area of member 2");
    told(&|b| _ = b.beam(foot, top, Beam { section: thin(f64::NAN), ..tube() }), "area of member 2");
    told(&|b| _ = b.spring(top, Axis::Y, newtons_per_metre(-1.0)), "spring that lets joint 2 move along y");
    told(&|b| _ = b.hold(foot, top, Freedoms::MOVING), "joint 1 and joint 2 are held");
    told(&|b| _ = b.fix(far, Freedoms::ALL), "there is no joint 10");
    told(&|b| _ = b.joint(at(f64::INFINITY, 0.0, 0.0)), "x of joint 3");
    told(
        &|b| {
            let loose = Freedoms::of(&[Freedom::AboutX]);
            b.beam(foot, top, Beam { released_at_start: loose, released_at_finish: loose, ..tube() });
        },
        "leave it free to turn about x",
    );
    let load = |load: MemberLoad| {
        let mut loads = Loads::new();
        loads.on_member(member, load);
        frame.solve(&loads, Order::First).unwrap_err().to_string()
    };
    let off = MemberLoad::Point {
        at: metres(4.0),
        force: Triple::none(),
        moment: Triple::none(),
        axes: Axes::Frame,
    };
    assert!(load(off).contains("is off member 1"));
    let none = MemberLoad::Even { load: Triple::along_x(newtons_per_metre(f64::NAN)), axes: Axes::Frame };
    assert!(load(none).contains("load on member 1"));
    let (frame, rods, _, mut loads) = braced([true, true], 1.0);
    loads.on_member(rods[0], MemberLoad::Even { load: Triple::none(), axes: Axes::Frame });
    assert_eq!(frame.solve(&loads, Order::First).unwrap_err(), FrameError::LoadOnBar { member: rods[0] });
}

// --- cost --------------------------------------------------------------------------------------------------------

/// Posts with two rails along a run, straight or closed to a ring.
fn run(posts: usize, ring: bool) -> Frame {
    let mut builder = FrameBuilder::new();
    let mut before: Option<[Joint; 2]> = None;
    let mut first = None;
    for at_post in 0..posts {
        let place = |z: f64| {
            let along = 3.0 * at_post as f64;
            if ring {
                let radius = 3.0 * posts as f64 / (2.0 * PI);
                at(radius * (along / radius).cos(), radius * (along / radius).sin(), z)
            } else {
                at(along, 0.0, z)
            }
        };
        let joints = [0.0, 1.5, 3.0].map(|z| builder.joint(place(z)));
        builder.fix(joints[0], Freedoms::ALL);
        for ends in joints.windows(2) {
            builder.beam(ends[0], ends[1], tube());
        }
        let here = [joints[1], joints[2]];
        for (one, other) in before.into_iter().flatten().zip(here) {
            builder.beam(one, other, tube());
        }
        before = Some(here);
        first = first.or(Some(here));
    }
    if ring {
        for (one, other) in before.into_iter().flatten().zip(first.into_iter().flatten()) {
            builder.beam(one, other, tube());
        }
    }
    builder.build().unwrap()
}

#[test]
fn what_is_kept_grows_in_line_with_the_run_and_a_ring_adds_long_rows_for_its_last_joints_only() {
    let (short, long) = (run(100, false), run(1000, false));
    assert_eq!(long.freedoms(), 12_000);
    let per_post = (long.stored() - short.stored()) as f64 / 900.0;
    // Each of the twelve rows reaches back to the same joint of the post before.
    assert_eq!(per_post, 2.0 * (6.0 * 13.0 + 15.0));
    let ring = run(1000, true);
    // Twelve rows that reach back to the first post, and nothing else.
    assert!(ring.stored() - long.stored() <= 12 * 12_000);
    assert!(ring.stored() < 2 * long.stored());
}

#[test]
fn a_ring_turns_alike_all_round() {
    let frame = run(24, true);
    let mut loads = Loads::new();
    for at_post in 0..24 {
        let angle = 2.0 * PI * at_post as f64 / 24.0;
        loads.on_joint(Joint(3 * at_post + 2), force(500.0 * angle.cos(), 500.0 * angle.sin(), -200.0));
    }
    let solution = frame.solve(&loads, Order::Second).unwrap();
    let outwards = |at_post: usize| {
        let angle = 2.0 * PI * at_post as f64 / 24.0;
        let shift = vector(solution.movement(Joint(3 * at_post + 2)).unwrap().shift);
        shift.x * angle.cos() + shift.y * angle.sin()
    };
    for at_post in 1..24 {
        assert_relative_eq!(outwards(at_post), outwards(0), max_relative = 1e-9);
    }
    assert!(outwards(0) > 0.0);
}
