//! Posts, rails and feet of runs that meet at corners, as joints and members.

use super::why::FrameWhy;
use crate::fence::{CornerTo, End, Face, Fence, Guy, GuyKind, PostKind, Rail, RailPlace, Run};
use crate::frame::{
    Axis, Bar, Beam, Frame, FrameBuilder, Freedom, Freedoms, Joint, Material, Member, Section, Triple,
};
use crate::member::stiffness::Stiffness;
use crate::units::{Length, LineLoad, Moment, Pure, Quantity};
use crate::workings::Blank;

/// Runs that meet at corners, in the order of their corners from the left.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Group {
    pub(super) runs: Vec<usize>,
    /// Whether the last meets the first again.
    is_ring: bool,
}

/// What a joint is of.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spot {
    pub(super) run: usize,
    pub(super) post: usize,
    pub(super) part: &'static str,
}

/// What a member is.
#[derive(Debug, Clone, Copy)]
pub(super) enum MemberIs {
    Post { run: usize, post: usize },
    Rail { run: usize, bay: usize, place: RailPlace },
    Guy { run: usize, post: usize, name: &'static str },
}

/// A post from its foot up.
#[derive(Debug, Clone)]
pub(super) struct Column {
    pub(super) foot: Joint,
    pub(super) top: Joint,
    /// Its members with the heights they stand between.
    pub(super) parts: Vec<(Member, Length, Length)>,
    pub(super) weight: LineLoad,
}

/// A post with its joints from below and its place in plan.
#[derive(Debug, Clone)]
struct Built {
    column: Column,
    joints: Vec<Joint>,
    at: [f64; 2],
}

/// A rail of one bay, and how much longer it is than the bay is wide: a ring that does not quite close is closed.
#[derive(Debug, Clone, Copy)]
pub(super) struct RailOf {
    pub(super) place: RailPlace,
    pub(super) member: Member,
    pub(super) stretch: f64,
}

/// A back brace or guy.
#[derive(Debug, Clone, Copy)]
pub(super) struct GuyOf {
    pub(super) member: Member,
    pub(super) foot: Joint,
    pub(super) column: usize,
}

/// A run in the model.
#[derive(Debug, Clone)]
pub(super) struct LaidRun {
    pub(super) run: usize,
    /// Towards the outside, in plan.
    pub(super) across: [f64; 2],
    /// The column of each of its posts.
    pub(super) columns: Vec<usize>,
    /// The rails of each bay that hold it up, from below; none of a gate.
    pub(super) rails: Vec<Vec<RailOf>>,
    /// Its back braces and guys, in the order of the run.
    pub(super) guys: Vec<GuyOf>,
}

impl LaidRun {
    /// The same with the wind from the other side.
    pub(super) fn turned(&self) -> Self {
        Self { across: self.across.map(|along| -along), ..self.clone() }
    }
}

/// A group as a frame, on one kind of feet.
#[derive(Debug, Clone)]
pub(super) struct Model {
    pub(super) frame: Frame,
    pub(super) columns: Vec<Column>,
    pub(super) runs: Vec<LaidRun>,
    pub(super) spots: Vec<Spot>,
    pub(super) members: Vec<MemberIs>,
}

/// What the feet do.
#[derive(Debug, Clone)]
pub(super) enum Feet {
    /// They do not give.
    Rigid,
    /// They turn: so much moment for each radian, post by post of each run of the group.
    Soft(Vec<Vec<Moment>>),
}

/// Heights that differ by less are one.
const SAME_PLACE: f64 = 1e-6;
/// A ring is closed over a gap of this share of its last bay.
const CLOSES: f64 = 0.1;

/// The rails that hold up the mesh and pass load from post to post: one along the ground lies at the feet.
const BEARING_RAILS: [RailPlace; 2] = [RailPlace::Middle, RailPlace::Top];

pub(super) fn rail_height(run: &Run, place: RailPlace) -> Length {
    match place {
        RailPlace::Top => run.height,
        RailPlace::Middle => run.height * 0.5,
        RailPlace::Bottom => Length::from_si(0.0),
    }
}

/// The run that this one meets with its finish, if that one meets it with its start.
fn next(fence: &Fence, run: usize) -> Option<usize> {
    let End::Corner(CornerTo { run: other, at_its_start: true }) = fence.runs[run].finish else {
        return None;
    };
    let back = End::Corner(CornerTo { run, at_its_start: false });
    (other != run && fence.runs.get(other)?.start == back).then_some(other)
}

fn before(fence: &Fence, run: usize) -> Option<usize> {
    let End::Corner(CornerTo { run: other, at_its_start: false }) = fence.runs[run].start else {
        return None;
    };
    (next(fence, other) == Some(run)).then_some(other)
}

/// Every run of the fence in one group.
pub(super) fn groups(fence: &Fence) -> Vec<Group> {
    let mut seen = vec![false; fence.runs.len()];
    let mut groups = Vec::new();
    for one in 0..fence.runs.len() {
        if seen[one] {
            continue;
        }
        let mut first = one;
        while let Some(earlier) = before(fence, first) {
            first = earlier;
            if first == one {
                break;
            }
        }
        let mut runs = vec![first];
        seen[first] = true;
        let mut last = first;
        while let Some(later) = next(fence, last) {
            if later == first {
                break;
            }
            runs.push(later);
            seen[later] = true;
            last = later;
        }
        let is_ring = runs.len() == 4 && next(fence, last) == Some(first) && closes(fence, &runs);
        groups.push(Group { runs, is_ring });
    }
    groups
}

/// Corners are right angles, so that a ring has four runs.
fn closes(fence: &Fence, runs: &[usize]) -> bool {
    let length = |at: usize| fence.runs[runs[at]].length();
    let last = fence.runs[runs[3]].bays.last().map_or(0.0, |bay| bay.width.si());
    let gap = (length(0) - length(2)).si().hypot((length(1) - length(3)).si());
    gap <= CLOSES * last
}

/// How a run lies in plan: where its first post stands, which way it goes, which way it looks.
struct Plan {
    origin: [f64; 2],
    along: [f64; 2],
}

impl Plan {
    fn at(&self, place: Length) -> [f64; 2] {
        [self.origin[0] + self.along[0] * place.si(), self.origin[1] + self.along[1] * place.si()]
    }
    fn across(&self) -> [f64; 2] {
        [-self.along[1], self.along[0]]
    }
    /// Standing inside, the next run goes to the right.
    fn round_the_corner(&self, length: Length) -> Self {
        Self { origin: self.at(length), along: [self.along[1], -self.along[0]] }
    }
}

/// The frame as it grows.
struct Maker<'f> {
    fence: &'f Fence,
    feet: &'f Feet,
    builder: FrameBuilder,
    spots: Vec<Spot>,
    members: Vec<MemberIs>,
    kinds: Vec<Option<Stiffness>>,
}

impl Maker<'_> {
    fn joint(&mut self, [x, y]: [f64; 2], z: Length, spot: Spot) -> Joint {
        self.spots.push(spot);
        self.builder.joint(Triple { x: Length::from_si(x), y: Length::from_si(y), z })
    }

    fn beam(&mut self, start: Joint, finish: Joint, stiff: &Stiffness, is: MemberIs) -> Member {
        self.members.push(is);
        let section = Section {
            area: stiff.area,
            about_y: stiff.second_moment,
            about_z: stiff.second_moment,
            torsion: stiff.torsion,
        };
        let material = Material { elastic: stiff.elastic, shear: stiff.shear_modulus };
        self.builder.beam(start, finish, Beam::of(section, material))
    }

    /// A back brace or guy from its post to the ground, to a joint of its own.
    fn guy(
        &mut self,
        guy: &Guy,
        held: Joint,
        [x, y]: [f64; 2],
        (run, across): (usize, [f64; 2]),
    ) -> Result<(Member, Joint), FrameWhy> {
        let name = &self.fence.runs[run].name;
        let told = |error| FrameWhy::Guy {
            guy: format!("{} of post {} of run \"{name}\"", guy.kind.name(), guy.post + 1),
            error,
        };
        let (area, elastic) = guy.axial(&mut Blank).map_err(told)?;
        let out = match guy.side {
            Face::Outside => guy.back.si(),
            Face::Inside => -guy.back.si(),
        };
        let at = [x + across[0] * out, y + across[1] * out];
        let spot = Spot { run, post: guy.post, part: "the foot of the brace or guy" };
        let foot = self.joint(at, Length::from_si(0.0), spot);
        self.builder.fix(foot, Freedoms::ALL);
        let tension_only = matches!(guy.kind, GuyKind::Guy { .. });
        self.members.push(MemberIs::Guy { run, post: guy.post, name: guy.kind.name() });
        Ok((self.builder.bar(held, foot, Bar { area, elastic, tension_only }), foot))
    }

    fn kind(&mut self, kind: usize) -> Result<Stiffness, FrameWhy> {
        if let Some(known) = self.kinds[kind] {
            return Ok(known);
        }
        let this: &PostKind = &self.fence.kinds[kind];
        let told = |error| FrameWhy::Post { kind: this.name.clone(), error };
        Ok(*self.kinds[kind].insert(this.stiffness(&mut Blank).map_err(told)?))
    }

    /// A post with joints at these heights above its foot, the last its top.
    fn column(
        &mut self,
        at: [f64; 2],
        levels: &[f64],
        (run, post): (usize, usize),
        foot_turns: Option<Moment>,
    ) -> Result<(Column, Vec<Joint>), FrameWhy> {
        let stiff = self.kind(self.fence.runs[run].posts[post].kind)?;
        let ground = Length::from_si(0.0);
        let foot = self.joint(at, ground, Spot { run, post, part: "the foot" });
        match foot_turns {
            None => _ = self.builder.fix(foot, Freedoms::ALL),
            Some(stiffness) => {
                let held = [Freedom::AlongX, Freedom::AlongY, Freedom::AlongZ, Freedom::AboutZ];
                self.builder.fix(foot, Freedoms::of(&held));
                self.builder.turning_spring(foot, Axis::X, stiffness);
                self.builder.turning_spring(foot, Axis::Y, stiffness);
            }
        }
        let (mut below, mut from) = (foot, ground);
        let (mut parts, mut joints) = (Vec::new(), Vec::new());
        for (number, level) in levels.iter().enumerate() {
            let part = if number + 1 == levels.len() { "the top" } else { "a point half way up" };
            let to = Length::from_si(*level);
            let joint = self.joint(at, to, Spot { run, post, part });
            parts.push((self.beam(below, joint, &stiff, MemberIs::Post { run, post }), from, to));
            joints.push(joint);
            (below, from) = (joint, to);
        }
        Ok((Column { foot, top: below, parts, weight: stiff.weight_per_length }, joints))
    }
}

/// The heights at which something meets a post of a run, its top among them.
fn levels_of(run: &Run) -> Vec<f64> {
    let mut levels = vec![run.height.si()];
    if run.rails.middle.is_some() {
        levels.push(rail_height(run, RailPlace::Middle).si());
    }
    levels
}

impl Model {
    /// A group on its feet.
    ///
    /// # Errors
    /// A post or rail whose stiffness is not known.
    pub(super) fn try_new(fence: &Fence, group: &Group, feet: &Feet) -> Result<Self, FrameWhy> {
        let mut maker = Maker {
            fence,
            feet,
            builder: FrameBuilder::new(),
            spots: Vec::new(),
            members: Vec::new(),
            kinds: vec![None; fence.kinds.len()],
        };
        let (owners, columns_of) = shared_columns(fence, group);
        let mut levels: Vec<Vec<f64>> = vec![Vec::new(); owners.len()];
        for (number, run) in group.runs.iter().enumerate() {
            for column in &columns_of[number] {
                levels[*column].extend(levels_of(&fence.runs[*run]));
            }
            for guy in &fence.runs[*run].guys {
                levels[columns_of[number][guy.post]].push(guy.height.si());
            }
        }
        for heights in &mut levels {
            heights.sort_by(f64::total_cmp);
            heights.dedup_by(|one, other| (*one - *other).abs() < SAME_PLACE);
        }
        let mut built: Vec<Option<Built>> = vec![None; owners.len()];
        let mut plan = Plan { origin: [0.0, 0.0], along: [1.0, 0.0] };
        let mut runs = Vec::new();
        for (number, run) in group.runs.iter().enumerate() {
            let this = &fence.runs[*run];
            let rails = bearing_rails(this)?;
            let mut laid = LaidRun {
                run: *run,
                across: plan.across(),
                columns: columns_of[number].clone(),
                rails: Vec::with_capacity(this.bays.len()),
                guys: Vec::new(),
            };
            let mut guys: Vec<Option<GuyOf>> = vec![None; this.guys.len()];
            // Of each rail, the joint where the bay before left it.
            let mut open: Vec<Option<Joint>> = vec![None; rails.len()];
            for (post, column) in columns_of[number].iter().enumerate() {
                if built[*column].is_none() {
                    let turns = match maker.feet {
                        Feet::Rigid => None,
                        Feet::Soft(springs) => Some(springs[number][post]),
                    };
                    let at = plan.at(this.posts[post].at);
                    let (column_made, joints) = maker.column(at, &levels[*column], (*run, post), turns)?;
                    built[*column] = Some(Built { column: column_made, joints, at });
                }
                for (guy, made) in this.guys.iter().zip(&mut guys).filter(|(guy, _)| guy.post == post) {
                    let Some((held, at)) = held_at(&built, &levels, *column, guy.height) else { continue };
                    let (member, foot) = maker.guy(guy, held, at, (*run, laid.across))?;
                    *made = Some(GuyOf { member, foot, column: *column });
                }
                let Some(bay) = post.checked_sub(1) else { continue };
                let mut here = Vec::new();
                if !this.bays[bay].gate {
                    for (which, (place, stiff)) in rails.iter().enumerate() {
                        let ends = [columns_of[number][bay], *column];
                        let hung =
                            ends.map(|column| held_at(&built, &levels, column, rail_height(this, *place)));
                        let [Some((from, start_at)), Some((to, finish_at))] = hung else { continue };
                        let height = rail_height(this, *place);
                        let spot = |post| Spot { run: *run, post, part: "the rail at the top" };
                        let start = match open[which] {
                            Some(joint) => joint,
                            None => {
                                let joint = maker.joint(start_at, height, spot(bay));
                                maker.builder.hold(from, joint, Freedoms::MOVING);
                                // A rail is not kept from spinning by posts that pass it no torsion.
                                let spin =
                                    if plan.along[0].abs() > 0.5 { Freedom::AboutX } else { Freedom::AboutY };
                                maker.builder.fix(joint, Freedoms::of(&[spin]));
                                joint
                            }
                        };
                        let finish = maker.joint(finish_at, height, spot(post));
                        maker.builder.hold(to, finish, Freedoms::MOVING);
                        let is = MemberIs::Rail { run: *run, bay, place: *place };
                        let member = maker.beam(start, finish, stiff, is);
                        let long = (finish_at[0] - start_at[0]).hypot(finish_at[1] - start_at[1]);
                        let stretch = long / this.bays[bay].width.si();
                        here.push(RailOf { place: *place, member, stretch });
                        open[which] = Some(finish);
                    }
                } else {
                    open.fill(None);
                }
                laid.rails.push(here);
            }
            laid.guys = guys.into_iter().flatten().collect();
            runs.push(laid);
            plan = plan.round_the_corner(this.length());
        }
        let columns = built.into_iter().flatten().map(|built| built.column).collect::<Vec<_>>();
        let frame = maker.builder.build().map_err(|error| FrameWhy::Unsolved { error })?;
        Ok(Self { frame, columns, runs, spots: maker.spots, members: maker.members })
    }
}

/// The joint of a column at a height, and where it stands.
fn held_at(
    built: &[Option<Built>],
    levels: &[Vec<f64>],
    column: usize,
    height: Length,
) -> Option<(Joint, [f64; 2])> {
    let Built { joints, at, .. } = built[column].as_ref()?;
    let level = levels[column].iter().position(|level| (level - height.si()).abs() < SAME_PLACE)?;
    Some((joints[level], *at))
}

/// The rails that pass load, from below, with their stiffness.
fn bearing_rails(run: &Run) -> Result<Vec<(RailPlace, Stiffness)>, FrameWhy> {
    let mut rails = Vec::new();
    for place in BEARING_RAILS {
        let Some(rail) = run.rails.at(place) else { continue };
        let stiff = |rail: &Rail| rail.stiffness(&mut Blank);
        let told =
            |error| FrameWhy::Rail { rail: format!("{} of run \"{}\"", place.name(), run.name), error };
        rails.push((place, stiff(&rail).map_err(told)?));
    }
    Ok(rails)
}

/// The run and post that each column stands for first, and the column of each post of each run of the group.
fn shared_columns(fence: &Fence, group: &Group) -> (Vec<(usize, usize)>, Vec<Vec<usize>>) {
    let mut owners = Vec::new();
    let mut all: Vec<Vec<usize>> = Vec::new();
    for (number, run) in group.runs.iter().enumerate() {
        let posts = fence.runs[*run].posts.len();
        let mut own = Vec::with_capacity(posts);
        for post in 0..posts {
            let shared = match post {
                0 => all.last().and_then(|before| before.last().copied()),
                _ if group.is_ring && number + 1 == group.runs.len() && post + 1 == posts => {
                    all.first().and_then(|first| first.first().copied())
                }
                _ => None,
            };
            own.push(shared.unwrap_or_else(|| {
                owners.push((*run, post));
                owners.len() - 1
            }));
        }
        all.push(own);
    }
    (owners, all)
}

/// The share of a length that another is.
pub(super) fn share(part: Length, whole: Length) -> f64 {
    (part / whole).pure()
}
