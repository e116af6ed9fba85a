//! A braced post under the pull of the cloth along the fence: post, rail, rod and the next post as a plane frame.
//!
//! The cloth pulls the post into the bay at the middle of its own height. The rail passes that on to the next post, whose
//! head the rod holds back to the foot of the braced post; the next post is a strut between them.

use crate::fence::{Brace, Fence};
use crate::frame::{
    Action, Bar, Beam, FrameBuilder, FrameError, Freedom, Freedoms, Joint, Loads, Material, Order, Section,
    Triple,
};
use crate::member::stiffness::Stiffness;
use crate::source::Stated;
use crate::units::{Area, Force, Length, Moment, Pressure, Quantity};
use crate::workings::Blank;

/// How firm the foot of a braced post is held along the fence.
pub const TWO_FEET: Stated<f64> = Stated {
    value: 2.0,
    because: "ours: a brace is worked on a foot that does not turn and on one that turns freely, and the worse counts: any \
              foot lies between",
};
/// What takes the pull along the fence.
pub const ALONE: Stated<f64> = Stated {
    value: 1.0,
    because: "ours: post and brace take the whole pull along the fence: a top rail may carry some of it to the other end, \
              but its sleeves and its own buckling are not known",
};

/// What the foot of a braced post does along the fence.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FootAlong {
    /// It does not turn.
    Stiff,
    /// It turns freely.
    Hinge,
}

/// The pull of the cloth on one post, along the fence.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pull {
    /// The pull.
    pub force: Force,
    /// The height at which it acts.
    pub at: Length,
}

/// What a braced post and its brace do under a pull.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnBrace {
    /// How hard the rail is pressed.
    pub rail: Force,
    /// How hard the rod is pulled.
    pub rod: Force,
    /// The moment of the post at its foot, along the fence.
    pub foot_moment: Moment,
    /// Its greatest moment along the fence anywhere.
    pub greatest: Moment,
    /// How hard the rod pulls the foot of the post up.
    pub uplift: Force,
    /// How hard the rod presses the foot of the next post down.
    pub press: Force,
    /// How the plane frame was solved.
    pub method: &'static str,
    /// The rounds that took.
    pub rounds: usize,
    /// The greatest force out of balance, as a share of the greatest force.
    pub residual: f64,
}

/// The pull on a post that has cloth in one bay beside it and, in the other, none, a gate or nothing.
#[must_use]
pub fn pull_into(fence: &Fence, run: usize, (post, bay): (usize, usize), force: Force) -> Option<Pull> {
    let this = &fence.runs[run];
    let screen = this.screen.as_ref()?;
    let hung = |bay: usize| {
        (screen.first_bay..screen.end_bay).contains(&bay) && this.bays.get(bay).is_some_and(|bay| !bay.gate)
    };
    let other = if bay == post { post.checked_sub(1) } else { Some(post) };
    let one_sided = hung(bay) && !other.is_some_and(hung);
    one_sided.then(|| Pull { force, at: (screen.bottom + screen.top) * 0.5 })
}

/// Heights that differ by less are one.
const SAME_PLACE: f64 = 1e-6;
/// What a plane frame does not do.
const ACROSS: [Freedom; 3] = [Freedom::AlongY, Freedom::AboutX, Freedom::AboutZ];

/// Works a brace with a rod, its post as stiff as `post` and the next one, a strut, of this area and modulus.
///
/// # Errors
/// If the equations do not settle.
pub fn pulled(
    brace: &Brace,
    (width, rod): (Length, (Area, Pressure)),
    rail: (Area, Pressure),
    (post, next): (&Stiffness, &Stiffness),
    pull: Pull,
    foot: FootAlong,
) -> Result<OnBrace, FrameError> {
    let mut builder = FrameBuilder::new();
    let nought = Length::from_si(0.0);
    let mut joint = |x: Length, z: Length, held: &[Freedom]| {
        let joint = builder.joint(Triple { x, y: nought, z });
        builder.fix(joint, Freedoms::of(&ACROSS));
        builder.fix(joint, Freedoms::of(held));
        joint
    };
    let pinned = [Freedom::AlongX, Freedom::AlongZ];
    let firm = [Freedom::AlongX, Freedom::AlongZ, Freedom::AboutY];
    let own_foot = joint(nought, nought, if foot == FootAlong::Stiff { &firm } else { &pinned });
    let next_foot = joint(width, nought, &firm);
    // Bars alone meet here, which do not turn it.
    let next_head = joint(width, brace.height, &[Freedom::AboutY]);
    let held = joint(nought, brace.height, &[]);
    let apart = (pull.at - brace.height).si();
    let loaded = if apart.abs() < SAME_PLACE { held } else { joint(nought, pull.at, &[]) };
    let mut upwards: Vec<Joint> = vec![own_foot];
    upwards.extend(if apart < 0.0 { [loaded, held] } else { [held, loaded] });
    upwards.dedup();
    let section = Section {
        area: post.area,
        about_y: post.second_moment,
        about_z: post.second_moment,
        torsion: post.torsion,
    };
    let beam = Beam::of(section, Material { elastic: post.elastic, shear: post.shear_modulus });
    let parts: Vec<_> = upwards.windows(2).map(|ends| builder.beam(ends[0], ends[1], beam)).collect();
    let both_ways = |(area, elastic): (Area, Pressure)| Bar { area, elastic, tension_only: false };
    let rail = builder.bar(held, next_head, both_ways(rail));
    let _ = builder.bar(next_head, next_foot, both_ways((next.area, next.elastic)));
    let rod = builder.bar(next_head, own_foot, Bar { tension_only: true, ..both_ways(rod) });
    let frame = builder.build()?;
    let mut loads = Loads::new();
    loads.on_joint(loaded, Action { force: Triple::along_x(pull.force), moment: Triple::none() });
    let solution = frame.solve(&loads, Order::First)?;
    let axial = |member| Ok::<_, FrameError>(solution.along(member)?.forces(nought)?.axial);
    let mut greatest = Moment::from_si(0.0);
    for part in parts {
        let found = solution.along(part)?.greatest_moment().value;
        if found > greatest {
            greatest = found;
        }
    }
    Ok(OnBrace {
        rail: -axial(rail)?,
        rod: axial(rod)?,
        foot_moment: Moment::from_si(solution.reaction(own_foot)?.moment.y.si().abs()),
        greatest,
        uplift: -solution.reaction(own_foot)?.force.z,
        press: solution.reaction(next_foot)?.force.z,
        method: solution.method(),
        rounds: solution.rounds(),
        residual: solution.residual(),
    })
}

/// Works a brace of a run on both feet.
///
/// # Errors
/// If a tube is none, or the equations do not settle.
pub fn braced(
    fence: &Fence,
    run: usize,
    brace: &Brace,
    pull: Pull,
) -> Result<Option<[(FootAlong, OnBrace); 2]>, super::FrameWhy> {
    let this = &fence.runs[run];
    let Some(rod) = brace.rod_axial(&mut Blank) else { return Ok(None) };
    let told = |error| super::FrameWhy::Guy {
        guy: format!("brace of post {} of run \"{}\"", brace.post + 1, this.name),
        error,
    };
    let rail = brace.axial(&mut Blank).map_err(told)?;
    let next = if brace.bay == brace.post { brace.post + 1 } else { brace.bay };
    let stiff = |post: usize| {
        let kind = &fence.kinds[this.posts[post].kind];
        let told = |error| super::FrameWhy::Post { kind: kind.name.clone(), error };
        kind.stiffness(&mut Blank).map_err(told)
    };
    let (post, next) = (stiff(brace.post)?, stiff(next)?);
    let on = |foot| {
        let wide = (this.bays[brace.bay].width, rod);
        let found = pulled(brace, wide, rail, (&post, &next), pull, foot);
        found.map(|found| (foot, found)).map_err(|error| super::FrameWhy::Unsolved { error })
    };
    Ok(Some([on(FootAlong::Stiff)?, on(FootAlong::Hinge)?]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fence::{Shape, TrussRod, Wall};
    use crate::member::Format;
    use crate::units::{Pure, feet, inches, ksi, metres, newtons, pounds};

    fn tube(diameter: Length, wall: Length) -> crate::fence::Tube {
        let shape = Shape::Round { girth: None, diameter };
        crate::fence::Tube { shape, wall: Wall::Nominal(wall), yield_strength: ksi(30.0), rust: inches(0.0) }
    }

    /// A brace in a bay ten feet wide at a post of 4 x 0.226 in.
    fn under(height: Length, at: Length, force: Force, foot: FootAlong) -> OnBrace {
        let rail = tube(inches(1.66), inches(0.14));
        let rod = TrussRod { diameter: inches(0.375), yield_strength: None };
        let brace = Brace { post: 0, bay: 0, height, rail, rod: Some(rod), format: Format::Lrfd };
        let post = tube(inches(4.0), inches(0.226)).stiffness(&mut Blank).unwrap();
        let next = tube(inches(2.875), inches(0.203)).stiffness(&mut Blank).unwrap();
        let (rail, rod) = (brace.axial(&mut Blank).unwrap(), brace.rod_axial(&mut Blank).unwrap());
        pulled(&brace, (feet(10.0), rod), rail, (&post, &next), Pull { force, at }, foot).unwrap()
    }

    fn near(found: f64, wanted: f64) {
        assert!((found / wanted - 1.0).abs() < 1e-6, "{found} {wanted}");
    }

    #[test]
    fn on_a_hinge_rail_and_rod_are_a_triangle_of_pins() {
        // 1000 lb at 5.5 ft over a foot that turns: 1000 × 5.5/7.5 in the rail at 7.5 ft. The rod is 12.5 ft long over 10,
        // so that it takes 1.25 of the rail's force, and 0.75 of it goes up at the one foot and down at the other.
        let found = under(feet(7.5), feet(5.5), pounds(1000.0), FootAlong::Hinge);
        let in_pounds = |force: Force| (force / pounds(1.0)).pure();
        near(in_pounds(found.rail), 733.333_333);
        near(in_pounds(found.rod), 916.666_667);
        near(in_pounds(found.uplift), 550.0);
        near(in_pounds(found.press), 550.0);
        assert!(found.foot_moment.si().abs() < 1e-6);
        // Between foot and rail: 1000 × 5.5 × 2/7.5.
        near((found.greatest / crate::units::pound_feet(1.0)).pure(), 1_466.666_667);
    }

    #[test]
    fn with_the_pull_above_the_rail_the_post_bends_over_it() {
        // 1000 × 5.5/5 in the rail; 1000 × 0.5 ft of moment where it meets the post.
        let found = under(feet(5.0), feet(5.5), pounds(1000.0), FootAlong::Hinge);
        near((found.rail / pounds(1.0)).pure(), 1_100.0);
        near((found.greatest / crate::units::pound_feet(1.0)).pure(), 500.0);
    }

    #[test]
    fn pull_at_the_rail_itself_goes_into_it_whole() {
        let found = under(feet(5.0), feet(5.0), pounds(1000.0), FootAlong::Hinge);
        near((found.rail / pounds(1.0)).pure(), 1_000.0);
        assert!((found.greatest / crate::units::pound_feet(1.0)).pure().abs() < 1e-6);
    }

    #[test]
    fn on_a_stiff_foot_rail_and_foot_share_the_moment_of_the_pull() {
        for (height, at) in [(7.5, 5.5), (5.0, 5.5)] {
            let found = under(feet(height), feet(at), pounds(1000.0), FootAlong::Stiff);
            let rail = (found.rail / pounds(1.0)).pure();
            let foot = (found.foot_moment / crate::units::pound_feet(1.0)).pure();
            near((1000.0 * at - rail * height).abs(), foot);
            // By a cantilever: it gives P a²(3 l − a)/6EI at the lower of both heights; the propped one takes so much of it
            // as the brace is stiffer than that. EI of this post: 29e6 × 6.74 in⁴ or so.
            let propped = if at < height {
                at * at * (3.0 * height - at) / (2.0 * height * height * height)
            } else {
                (3.0 * at - height) / (2.0 * height)
            };
            assert!(rail < 1000.0 * propped && rail > 800.0 * propped, "{rail} {propped}");
        }
    }

    #[test]
    fn in_metres_and_newtons_it_is_the_same() {
        let us = under(feet(7.5), feet(5.5), pounds(1000.0), FootAlong::Stiff);
        let si = under(metres(2.286), metres(1.6764), newtons(4_448.221_615_260_5), FootAlong::Stiff);
        for (one, other) in [(us.rail, si.rail), (us.rod, si.rod), (us.uplift, si.uplift)] {
            near((one / other).pure(), 1.0);
        }
        near((us.foot_moment / si.foot_moment).pure(), 1.0);
    }
}
