//! Runs, bays, posts, gates and screens as data: every value is known here or left out.
//!
//! Posts share kinds by index, so that a changed wall recomputes one section.

mod brace;
mod fastening;
mod footing;
mod guy;
mod post;
mod rail;

pub use brace::{Brace, TrussRod};
pub use fastening::{ClothStiffness, Face, Fastening, FasteningKind, TiedTo};
pub use footing::{Footing, FootingShape};
pub use guy::{Guy, GuyKind, GuyStrength};
pub use post::{PostError, PostKind, PostStrength, Section, Shape, Tube, Wall};
pub use rail::{Rail, RailPlace, Rails, Splice};

use crate::footing::{Ground, Method};
use crate::numerics::{ROUNDING, on_bound};
use crate::screen::{ChainLink, CombinedSolidity};
use crate::source::Stated;
use crate::units::{Area, Length, Quantity};
use crate::workings::{Blank, Ledger};

/// A fence of one or more runs.
#[derive(Debug, Clone, PartialEq)]
pub struct Fence {
    /// The kinds of posts.
    pub kinds: Vec<PostKind>,
    /// The runs.
    pub runs: Vec<Run>,
    /// What posts stand in.
    pub footings: Vec<Footing>,
    /// The ground about them, as far as it is known.
    pub ground: Ground,
    /// The method by which footings are worked, where one is asked for.
    pub footing_method: Option<Method>,
}

/// A straight side of fence.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// Its name.
    pub name: String,
    /// Height of the fence above the foot of its posts.
    pub height: Length,
    /// How far the foot of its posts stands above the ground of the upwind side, on a bank or a wall.
    pub base_above_ground: Length,
    /// The steel mesh, if any.
    pub chain_link: Option<ChainLink>,
    /// The rails there are.
    pub rails: Rails,
    /// From left to right, standing inside.
    pub bays: Vec<Bay>,
    /// One more than bays.
    pub posts: Vec<Post>,
    /// The cloth, if any.
    pub screen: Option<Screen>,
    /// What stands at the left end.
    pub start: End,
    /// What stands at the right end.
    pub finish: End,
    /// The back braces and guys of its posts; they count on the frame alone.
    pub guys: Vec<Guy>,
    /// The braces of its end, corner and gate posts; they count on the frame alone.
    pub braces: Vec<Brace>,
}

/// Between two neighbouring posts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bay {
    /// Width, centre to centre.
    pub width: Length,
    /// Whether it is a gate.
    pub gate: bool,
    /// Whether the gate has two leaves that meet in the middle.
    pub double: bool,
}

impl Bay {
    /// A bay without a gate.
    #[must_use]
    pub const fn of(width: Length) -> Self {
        Self { width, gate: false, double: false }
    }

    /// How many leaves its gate has; none where it is no gate.
    #[must_use]
    pub const fn leaves(&self) -> usize {
        match (self.gate, self.double) {
            (false, _) => 0,
            (true, false) => 1,
            (true, true) => 2,
        }
    }
}

/// One post of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Post {
    /// Its place from the start of the run.
    pub at: Length,
    /// What it does.
    pub role: Role,
    /// Its kind by index.
    pub kind: usize,
    /// What it stands in by index, if that is known.
    pub footing: Option<usize>,
    /// The post of another run that is the same post.
    pub shared_with: Option<Shared>,
}

/// A post of another run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Shared {
    /// The run by index.
    pub run: usize,
    /// The post by index.
    pub post: usize,
}

/// What a post does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// Between two bays.
    Line,
    /// At a free end, without a gate beside it.
    End,
    /// Where the fence turns a corner, with or without a gate beside it.
    Corner,
    /// Beside a gate.
    Gate,
}

impl Role {
    /// In one word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Line => "line",
            Self::End => "end",
            Self::Corner => "corner",
            Self::Gate => "gate",
        }
    }
}

/// Cloth on a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Screen {
    /// Its name.
    pub name: String,
    /// Solid area over gross area of the cloth alone, dry.
    pub solidity: f64,
    /// The same where it is reckoned as the return of another run, if it is not known to be that one.
    pub solidity_as_return: Option<f64>,
    /// What it is in.
    pub condition: Condition,
    /// The solidity of cloths hung over it, as wide and as high as it.
    pub over: Vec<f64>,
    /// Lower edge above the foot of the posts.
    pub bottom: Length,
    /// Top above the foot of the posts.
    pub top: Length,
    /// The first bay it hangs on, by index.
    pub first_bay: usize,
    /// One past the last bay it hangs on.
    pub end_bay: usize,
    /// Windows cut in, if any.
    pub windows: Option<Windows>,
    /// The side of the fence it hangs on, if known.
    pub face: Option<Face>,
    /// What holds it, if known.
    pub fastening: Option<Fastening>,
}

/// What may close the openings of cloth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Condition {
    /// Nothing.
    #[default]
    Dry,
    /// Ice, or water that froze in it.
    Iced,
}

impl Condition {
    /// Both, the one with the lighter load first.
    pub const ALL: [Self; 2] = [Self::Dry, Self::Iced];

    /// In one word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Dry => "dry",
            Self::Iced => "iced",
        }
    }
}

const ICED: Stated<f64> =
    Stated { value: 1.0, because: "ours: iced or wet-frozen cloth lets no wind through and counts as solid" };

impl Screen {
    /// Solid area over gross area of all cloth, the chain link apart, in the condition it is in.
    pub fn own_solidity(&self, ledger: &mut impl Ledger) -> f64 {
        match self.condition {
            Condition::Dry => {
                let mut all = self.solidity;
                for second in &self.over {
                    all = CombinedSolidity { first: all, second: *second }.work(ledger);
                }
                all
            }
            Condition::Iced => ledger.judge("ε_c", ICED),
        }
    }
}

/// Windows cut in the cloth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Windows {
    /// Width of one.
    pub width: Length,
    /// Height of one.
    pub height: Length,
    /// How many in a bay.
    pub per_bay: f64,
}

impl Windows {
    /// Area of one.
    #[must_use]
    pub fn area(&self) -> Area {
        self.width * self.height
    }
}

/// What stands at an end of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum End {
    /// It stops in the open.
    Free,
    /// The fence turns a corner and its cloth goes on for so long, as high as here.
    Return(Length),
    /// The fence turns a corner into a run of this fence.
    Corner(CornerTo),
}

impl End {
    /// Whether it ends in the same manner, whichever run stands round the corner.
    #[must_use]
    pub fn is_like(self, other: Self) -> bool {
        match (self, other) {
            (Self::Return(one), Self::Return(other)) => one == other,
            (one, other) => std::mem::discriminant(&one) == std::mem::discriminant(&other),
        }
    }
}

/// The run round a corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CornerTo {
    /// The run by index.
    pub run: usize,
    /// Whether that run meets the corner with its start.
    pub at_its_start: bool,
}

/// A return counts as one from this solidity of all its layers on: the wall rule's own bound on openings.
const RETURN_SOLIDITY: f64 = 0.70;

impl Run {
    /// Its length, first post to last.
    #[must_use]
    pub fn length(&self) -> Length {
        self.posts.last().map_or_else(|| Length::from_si(0.0), |post| post.at)
    }

    /// Solidity of all layers where the cloth hangs.
    pub fn solidity(&self, ledger: &mut impl Ledger) -> Option<f64> {
        let own = self.screen.as_ref()?.own_solidity(ledger);
        Some(self.all_layers(own, ledger))
    }

    /// Solidity of all layers where cloth of this solidity hangs.
    pub fn all_layers(&self, cloth: f64, ledger: &mut impl Ledger) -> f64 {
        match self.chain_link {
            Some(link) => CombinedSolidity { first: cloth, second: link.solidity(ledger) }.work(ledger),
            None => cloth,
        }
    }

    /// Solidity of all layers that counts where the cloth is the return of another run.
    fn solidity_as_return(&self) -> Option<f64> {
        let screen = self.screen.as_ref()?;
        let own = screen.solidity_as_return.unwrap_or_else(|| screen.own_solidity(&mut Blank));
        Some(self.all_layers(own, &mut Blank))
    }

    /// The top of the fence above the ground of the upwind side.
    #[must_use]
    pub fn top_above_ground(&self) -> Length {
        self.base_above_ground + self.height
    }

    /// Where the cloth begins and ends along the run.
    #[must_use]
    pub fn screened(&self) -> Option<(Length, Length)> {
        let screen = self.screen.as_ref()?;
        Some((self.posts[screen.first_bay].at, self.posts[screen.end_bay].at))
    }

    /// Whether cloth hangs on a bay.
    #[must_use]
    pub fn has_cloth(&self, bay: usize) -> bool {
        self.screen.as_ref().is_some_and(|screen| (screen.first_bay..screen.end_bay).contains(&bay))
    }

    /// The same run with its cloth taken off.
    #[must_use]
    pub fn bare(&self) -> Self {
        Self { screen: None, ..self.clone() }
    }
}

impl Fence {
    /// How long the cloth of a run goes on round the corner at one of its ends: the unbroken screened length
    /// of the return, with a solidity of 0.70 or more over at least this cloth's height; else nothing.
    #[must_use]
    pub fn return_length(&self, run: usize, at_start: bool) -> Length {
        let nothing = Length::from_si(0.0);
        let this = &self.runs[run];
        let Some(screen) = &this.screen else { return nothing };
        let reaches = if at_start { screen.first_bay == 0 } else { screen.end_bay == this.bays.len() };
        if !reaches {
            return nothing;
        }
        match if at_start { this.start } else { this.finish } {
            End::Free => nothing,
            End::Return(length) => length,
            End::Corner(CornerTo { run, at_its_start }) => {
                let other = &self.runs[run];
                let (Some(cloth), Some((from, to))) = (&other.screen, other.screened()) else {
                    return nothing;
                };
                let touches =
                    if at_its_start { cloth.first_bay == 0 } else { cloth.end_bay == other.bays.len() };
                let short = ROUNDING * screen.top.si();
                // Both runs measure from the foot of the post they share.
                let covers =
                    (cloth.bottom - screen.bottom).si() <= short && (screen.top - cloth.top).si() <= short;
                let dense = other
                    .solidity_as_return()
                    .is_some_and(|solidity| on_bound(solidity, &[RETURN_SOLIDITY]) >= RETURN_SOLIDITY);
                if touches && covers && dense { to - from } else { nothing }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Pure, feet, inches};

    /// Three bays of 10 ft with cloth from 1 to 9 ft over the bays from `first` to before `end`.
    fn run(first: usize, end: usize, solidity: f64) -> Run {
        let post = |at: u32| Post {
            at: feet(10.0 * f64::from(at)),
            role: Role::Line,
            kind: 0,
            footing: None,
            shared_with: None,
        };
        Run {
            name: "run".into(),
            height: feet(10.0),
            base_above_ground: feet(2.0),
            chain_link: None,
            rails: Rails::default(),
            bays: vec![Bay::of(feet(10.0)); 3],
            posts: (0..=3).map(post).collect(),
            screen: Some(Screen {
                name: "cloth".into(),
                solidity,
                solidity_as_return: None,
                condition: Condition::Dry,
                over: Vec::new(),
                bottom: feet(1.0),
                top: feet(9.0),
                first_bay: first,
                end_bay: end,
                windows: None,
                face: None,
                fastening: None,
            }),
            start: End::Free,
            finish: End::Free,
            guys: Vec::new(),
            braces: Vec::new(),
        }
    }

    #[test]
    fn a_post_a_gate_a_condition_and_windows_are_told_in_a_word_or_a_figure() {
        let roles = [Role::Line, Role::End, Role::Corner, Role::Gate].map(Role::word);
        assert_eq!(roles, ["line", "end", "corner", "gate"]);
        assert_eq!(Condition::ALL.map(Condition::word), ["dry", "iced"]);
        let leaves = |gate, double| Bay { gate, double, ..Bay::of(feet(10.0)) }.leaves();
        assert_eq!(
            [leaves(false, false), leaves(false, true), leaves(true, false), leaves(true, true)],
            [0, 0, 1, 2]
        );
        let area = Windows { width: inches(12.0), height: inches(6.0), per_bay: 2.0 }.area();
        assert!(((area / (feet(1.0) * feet(0.5))).pure() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn ends_are_alike_in_their_manner_and_returns_in_their_length_too() {
        let corner = |run| End::Corner(CornerTo { run, at_its_start: true });
        assert!(End::Free.is_like(End::Free) && corner(1).is_like(corner(2)));
        assert!(End::Return(feet(5.0)).is_like(End::Return(feet(5.0))));
        assert!(!End::Return(feet(5.0)).is_like(End::Return(feet(6.0))));
        assert!(!End::Free.is_like(corner(1)) && !End::Return(feet(5.0)).is_like(End::Free));
    }

    #[test]
    fn a_run_knows_where_its_cloth_hangs_and_how_high_it_stands() {
        let run = run(1, 3, 0.8);
        assert_eq!(run.length(), feet(30.0));
        assert!((run.top_above_ground() - feet(12.0)).abs() < feet(1e-12));
        assert_eq!(run.screened(), Some((feet(10.0), feet(30.0))));
        assert_eq!([0, 1, 2, 3].map(|bay| run.has_cloth(bay)), [false, true, true, false]);
        let bare = run.bare();
        assert_eq!((bare.screen.is_none(), bare.screened(), bare.has_cloth(1)), (true, None, false));
        assert_eq!(bare.length(), run.length());
        assert_eq!(Run { posts: Vec::new(), ..bare }.length(), feet(0.0));
    }

    #[test]
    fn layers_close_one_anothers_openings_and_ice_closes_all() {
        let mut run = run(0, 3, 0.5);
        let of = |run: &Run| run.solidity(&mut Blank).unwrap();
        assert_eq!(of(&run), 0.5);
        // What is open of two layers is open of both: 1 − 0.5 × 0.6.
        run.screen.as_mut().unwrap().over = vec![0.4];
        assert!((of(&run) - 0.7).abs() < 1e-12);
        let link = ChainLink { mesh: inches(2.0), wire: inches(0.148) };
        run.chain_link = Some(link);
        let both = 1.0 - 0.3 * (1.0 - link.solidity(&mut Blank));
        assert!((of(&run) - both).abs() < 1e-12);
        run.screen.as_mut().unwrap().condition = Condition::Iced;
        assert!((of(&run) - 1.0).abs() < 1e-12);
        assert_eq!(run.bare().solidity(&mut Blank), None);
    }

    fn of_runs(runs: Vec<Run>) -> Fence {
        let (kinds, footings) = (Vec::new(), Vec::new());
        Fence { kinds, runs, footings, ground: Ground::default(), footing_method: None }
    }

    /// The return of the first run's end: the second run, changed.
    fn returned(first: Run, at_start: bool, second: Run, at_its_start: bool) -> Length {
        let mut first = first;
        let end = End::Corner(CornerTo { run: 1, at_its_start });
        if at_start {
            first.start = end
        } else {
            first.finish = end
        }
        of_runs(vec![first, second]).return_length(0, at_start)
    }

    #[test]
    fn cloth_that_reaches_a_corner_goes_on_as_far_as_the_other_run_carries_it() {
        for at_start in [true, false] {
            for at_its_start in [true, false] {
                assert_eq!(returned(run(0, 3, 1.0), at_start, run(0, 3, 1.0), at_its_start), feet(30.0));
                // Its own cloth, and that of the other run, may end short of the corner.
                let short = if at_start { run(1, 3, 1.0) } else { run(0, 2, 1.0) };
                assert_eq!(returned(short, at_start, run(0, 3, 1.0), at_its_start), feet(0.0));
                let (near, far) = (run(0, 2, 1.0), run(1, 3, 1.0));
                let (near, far) = if at_its_start { (near, far) } else { (far, near) };
                assert_eq!(returned(run(0, 3, 1.0), at_start, near, at_its_start), feet(20.0));
                assert_eq!(returned(run(0, 3, 1.0), at_start, far, at_its_start), feet(0.0));
            }
        }
        let fence = |end| of_runs(vec![Run { start: end, ..run(0, 3, 1.0) }]);
        assert_eq!(fence(End::Free).return_length(0, true), feet(0.0));
        assert_eq!(fence(End::Return(feet(7.0))).return_length(0, true), feet(7.0));
        assert_eq!(fence(End::Return(feet(7.0))).return_length(0, false), feet(0.0));
        assert_eq!(returned(run(0, 3, 1.0).bare(), true, run(0, 3, 1.0), true), feet(0.0));
        assert_eq!(returned(run(0, 3, 1.0), true, run(0, 3, 1.0).bare(), true), feet(0.0));
    }

    #[test]
    fn a_return_that_is_lower_starts_higher_or_is_more_open_than_0_70_counts_for_nothing() {
        let with = |change: &dyn Fn(&mut Screen)| {
            let mut second = run(0, 3, 1.0);
            change(second.screen.as_mut().unwrap());
            returned(run(0, 3, 1.0), true, second, true)
        };
        let (whole, none) = (feet(30.0), feet(0.0));
        assert_eq!(with(&|cloth| cloth.top = feet(8.99)), none);
        assert_eq!(with(&|cloth| cloth.top = feet(9.01)), whole);
        assert_eq!(with(&|cloth| cloth.bottom = feet(1.01)), none);
        assert_eq!(with(&|cloth| cloth.bottom = feet(0.5)), whole);
        // The last bits of a sum decide nothing.
        assert_eq!(with(&|cloth| cloth.top = feet(9.0 - 1e-12)), whole);
        assert_eq!(with(&|cloth| cloth.bottom = feet(1.0 + 1e-12)), whole);
        assert_eq!(with(&|cloth| cloth.solidity = 0.70), whole);
        assert_eq!(with(&|cloth| cloth.solidity = 0.699), none);
        assert_eq!(with(&|cloth| cloth.solidity_as_return = Some(0.6)), none);
        assert_eq!(with(&|cloth| (cloth.solidity, cloth.solidity_as_return) = (0.6, Some(0.8))), whole);
    }
}
