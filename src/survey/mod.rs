//! The survey: what a crew measured, with what it does not know; its file, with all its mistakes told at once;
//! and the way from it to a fence.

mod at_posts;
mod brace;
mod cloth;
mod corners;
mod fastening;
mod file;
mod ground;
mod guy;
mod keys;
mod layers;
mod mistake;
mod order;
mod other_code;
mod post;
mod rail;
mod reading;
mod run;
mod settle;
mod site;
mod timber;
mod tube;

pub(crate) use guy::KINDS as GUY_KINDS;
pub(crate) use keys::RUN_KEYS;
pub use mistake::{Mistake, Mistakes};
pub use order::{OrderSurvey, Price, Prices};
pub use other_code::{OtherCode, Recoded};
pub use reading::{Extreme, Reading};
pub use settle::{OpenKey, Settled};

use crate::caution::Remark;
use crate::fastening::rope::Fibre;
use crate::fastening::ties::{Age, Rows};
use crate::fence::{ClothStiffness, Condition, FootingShape, TiedTo};
use crate::footing::{GroundQuality, Method, SandDensity, SoilClass};
use crate::member::Format;
use crate::member::nds_2018::Timber;
use crate::screen::loss::PermeabilityTest;
use crate::units::{Force, Length, Moment, Pressure, PressurePerDepth, SectionModulus, System, Velocity};
use crate::wind::Code;

/// A survey as it was read.
#[derive(Debug, Clone, PartialEq)]
pub struct Survey {
    /// How results are written.
    pub units: System,
    /// What it is for.
    pub job: Job,
    /// Where it stands.
    pub site: SiteSurvey,
    /// The kinds of posts.
    pub posts: Vec<PostSurvey>,
    /// What posts stand in: the kinds that runs name, and what runs write in place.
    pub footings: Vec<FootingSurvey>,
    /// The runs, left to right as they stand in the file.
    pub runs: Vec<RunSurvey>,
    /// What is asked of an order list.
    pub order: OrderSurvey,
    /// Every value with the place it came from.
    pub as_read: Vec<AsRead>,
    /// Notes of the tables within a run, its cloth and the site, each with what it is of.
    pub notes: Vec<(String, String)>,
    /// What was told of how a thing was found.
    pub found: Vec<(String, Found)>,
    /// What reading it raised.
    pub remarks: Vec<Remark>,
    /// The first sixteen hexadecimal digits of the SHA-256 of its text.
    pub hash: String,
}

/// What a survey is for.
#[derive(Debug, Clone, PartialEq, Default)]
#[allow(missing_docs)]
pub struct Job {
    pub title: Option<String>,
    pub prepared_for: Option<String>,
    pub measured_by: Option<String>,
    pub date: Option<String>,
    pub note: Option<String>,
}

/// How a thing was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Found {
    /// Measured with a tape.
    Tape,
    /// Measured with a caliper.
    Caliper,
    /// Read from a drawing.
    Drawing,
    /// Told by somebody.
    Told,
    /// Guessed.
    Guess,
}

impl Found {
    /// Each of them, in the order of the words a survey may hold.
    pub const ALL: [Self; 5] = [Self::Tape, Self::Caliper, Self::Drawing, Self::Told, Self::Guess];

    /// What stands in a survey.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Tape => "tape",
            Self::Caliper => "caliper",
            Self::Drawing => "drawing",
            Self::Told => "told",
            Self::Guess => "guess",
        }
    }
}

/// A value with the key under which it stands, so that it can be asked about one at a time.
#[derive(Debug, Clone, PartialEq)]
pub struct Open<T> {
    /// Where it stands, such as `post.newer.yield`.
    pub key: String,
    /// As far as it is known.
    pub reading: Reading<T>,
}

/// The site as surveyed.
#[derive(Debug, Clone, PartialEq)]
pub struct SiteSurvey {
    /// The wind code chosen.
    pub code: Code,
    /// The design wind speed as the code defines it.
    pub wind_speed: Open<Velocity>,
    /// Where it was looked up.
    pub wind_speed_source: Option<String>,
    /// The risk category it was looked up for.
    pub risk_category: Option<String>,
    /// Whether hurricanes make its strongest winds; nothing if that was not said.
    pub hurricane_coast: Option<bool>,
    /// The format steel is checked in.
    pub format: Format,
    /// The code's own keys, in its order, those of tables in the place of the table.
    pub values: Vec<Open<SiteReading>>,
    /// The soil about the posts.
    pub soil: SoilSurvey,
    /// The method by which footings are worked, where one is asked for.
    pub footing_method: Option<Method>,
    /// A note.
    pub note: Option<String>,
}

/// The soil as surveyed; of each value the weaker end is the lesser.
#[derive(Debug, Clone, PartialEq)]
#[allow(missing_docs)]
pub struct SoilSurvey {
    pub class: Open<SoilClass>,
    pub lateral_bearing: Open<PressurePerDepth>,
    pub undrained_strength: Open<Pressure>,
    pub friction: Open<f64>,
    pub cohesion: Open<Pressure>,
    pub unit_weight: Open<PressurePerDepth>,
    pub quality: Open<GroundQuality>,
    pub ground_factor: Open<PressurePerDepth>,
    pub density: Open<SandDensity>,
    pub under_water: Open<bool>,
    pub note: Option<String>,
}

/// What posts stand in, as surveyed.
#[derive(Debug, Clone, PartialEq)]
pub struct FootingSurvey {
    /// Its name, or the run it was written at.
    pub name: String,
    /// Concrete, as seen from above, or none.
    pub shape: FootingShape,
    /// Across the concrete.
    pub width: Open<Length>,
    /// From the ground to its bottom.
    pub depth: Open<Length>,
    /// Whether a slab or beam holds the post at the ground.
    pub is_held: bool,
    /// Whether the soil may count twice, as about an isolated pole.
    pub is_isolated: bool,
    /// A note.
    pub note: Option<String>,
}

/// One end of a site key's reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SiteReading {
    /// The place in the list of choices.
    Choice(usize),
    /// A quantity in SI units.
    Quantity(f64),
    /// Its table was left out.
    Absent,
}

/// A kind of post as surveyed.
#[derive(Debug, Clone, PartialEq)]
pub struct PostSurvey {
    /// Its name.
    pub name: String,
    /// What it is made of, by the key that says its size.
    pub section: SectionSurvey,
    /// A note.
    pub note: Option<String>,
}

/// What a post is made of, as far as it is known.
#[derive(Debug, Clone, PartialEq)]
pub enum SectionSurvey {
    /// Round or square steel tube.
    Tube(TubeSurvey),
    /// A steel shape of which the section modulus is given.
    Modulus(ModulusSurvey),
    /// A post of which the moment it may carry is given.
    Moment(MomentSurvey),
    /// A square timber.
    Timber(TimberSurvey),
}

/// Steel tube as surveyed.
#[derive(Debug, Clone, PartialEq)]
pub struct TubeSurvey {
    /// Whether it is square.
    pub is_square: bool,
    /// The tape round it, where it was measured so.
    pub girth: Option<Reading<Length>>,
    /// Outside diameter, or outside width of a square one.
    pub across: Open<Length>,
    /// What the wall is.
    pub basis: WallBasis,
    /// The wall.
    pub wall: Open<Length>,
    /// Yield strength.
    pub yield_strength: Open<Pressure>,
    /// Rust at grade.
    pub rust: Open<Length>,
}

/// A shape given by its section modulus, as surveyed.
#[derive(Debug, Clone, PartialEq)]
pub struct ModulusSurvey {
    /// What the wind sees of it.
    pub face: Length,
    /// The section modulus for wind square on the fence.
    pub modulus: Open<SectionModulus>,
    /// Yield strength.
    pub yield_strength: Open<Pressure>,
}

/// A post given by the moment it may carry, as surveyed.
#[derive(Debug, Clone, PartialEq)]
pub struct MomentSurvey {
    /// What the wind sees of it.
    pub face: Length,
    /// The moment for wind square on the fence.
    pub moment: Open<Moment>,
    /// Whether it is an allowable moment or a design strength.
    pub format: Format,
}

/// A timber post as surveyed.
#[derive(Debug, Clone, PartialEq)]
pub struct TimberSurvey {
    /// Its side, dressed or measured.
    pub side: Open<Length>,
    /// Where species and grade are asked for.
    pub key: String,
    /// The rows of the catalogue it may be, by species and grade.
    pub candidates: Vec<&'static Timber>,
    /// Whether it stands wet.
    pub wet: Open<bool>,
    /// Whether it was incised for treatment.
    pub incised: Open<bool>,
}

/// What a wall is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WallBasis {
    /// By the label of welded pipe.
    Nominal,
    /// By the label of seamless pipe.
    Seamless,
    /// Measured.
    Measured,
}

/// A run as surveyed: all of it known but the solidity and the condition of its cloth.
#[derive(Debug, Clone, PartialEq)]
pub struct RunSurvey {
    /// The court it belongs to.
    pub court: String,
    /// The compass side it looks out to.
    pub faces: Option<String>,
    /// The run with its cloth at the worst end.
    pub run: crate::fence::Run,
    /// Its rails from the top; nothing where there is none.
    pub rails: [Option<RailSurvey>; 3],
    /// Solidity of the cloth when dry, if there is cloth.
    pub solidity: Option<Open<f64>>,
    /// What the cloth is in, if there is cloth.
    pub condition: Option<Open<Condition>>,
    /// What cloth it is.
    pub cloth: Option<String>,
    /// Its maker's test of air permeability.
    pub air_test: Option<AirTest>,
    /// The cloths that hang over it.
    pub over: Vec<OverCloth>,
    /// Weight of its cloth for each area, where it was given.
    pub weight: Option<Reading<Pressure>>,
    /// Notes of the run, its cloth and its footing, each with its name.
    pub notes: Vec<(String, String)>,
    /// What was written of the footing.
    pub footing: Option<String>,
    /// What holds its cloth.
    pub fastening: Option<FasteningSurvey>,
}

/// A rail as surveyed.
#[derive(Debug, Clone, PartialEq)]
pub struct RailSurvey {
    /// Outside diameter.
    pub diameter: Length,
    /// Its tube; nothing where its wall was left out.
    pub tube: Option<TubeSurvey>,
    /// How its lengths are joined.
    pub splice: crate::fence::Splice,
}

/// What holds cloth, as surveyed.
#[derive(Debug, Clone, PartialEq)]
pub struct FasteningSurvey {
    /// In words.
    pub text: String,
    /// Ties or lacing.
    pub by: HeldBy,
    /// Strength of one tie, or breaking load of the rope.
    pub strength: Open<Force>,
    /// Pull at which a grommet tears out.
    pub grommet: Open<Force>,
    /// From tie to tie.
    pub spacing: Open<Length>,
    /// The edges it is held at.
    pub rows: Rows,
    /// What it is tied to.
    pub to: TiedTo,
    /// Length of one cloth, from upright edge to upright edge.
    pub panel: Option<Length>,
    /// How the cloth stretches, if known.
    pub cloth: Option<ClothStiffness>,
}

/// Ties or lacing, as surveyed.
#[derive(Debug, Clone, PartialEq)]
pub enum HeldBy {
    /// Ties.
    Ties {
        /// Their age.
        age: Open<Age>,
    },
    /// Lacing.
    Lacing {
        /// Thickness and fibre of the rope, as far as they are known.
        rope: Option<(Length, Option<Fibre>)>,
        /// Years outdoors.
        years: Open<f64>,
        /// Outside diameter of the rail.
        rail: Length,
        /// From the rail to the grommet.
        offset: Length,
    },
}

/// A cloth that hangs over another.
#[derive(Debug, Clone, PartialEq)]
pub struct OverCloth {
    /// What cloth it is.
    pub cloth: Option<String>,
    /// Its solidity.
    pub solidity: Open<f64>,
    /// Its maker's test of air permeability.
    pub air_test: Option<AirTest>,
}

/// A maker's test of air permeability.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AirTest {
    /// Air that passes, volume for each area and time.
    pub flow: Reading<Velocity>,
    /// Pressure over the cloth.
    pub at: Pressure,
}

impl AirTest {
    /// The test with the least air, which is the worst, or with the most.
    #[must_use]
    pub fn at_end(self, end: Extreme) -> Option<PermeabilityTest> {
        let flow = if end == Extreme::Worst { self.flow.low() } else { self.flow.high() };
        Some(PermeabilityTest { pressure: self.at, flow: flow? })
    }
}

impl RunSurvey {
    /// The compass side it looks out to, in eighths of a turn clockwise from north.
    #[must_use]
    pub fn side(&self) -> Option<usize> {
        self.faces.as_deref().and_then(corners::compass)
    }
}

/// A value and where it came from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AsRead {
    /// Where it stands, such as `run.north end.height`.
    pub key: String,
    /// As written, or as taken where nothing was written.
    pub text: String,
    /// Where it came from.
    pub origin: Origin,
}

/// Where a value came from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Origin {
    /// Written at this place.
    Here,
    /// From `[all_runs]`.
    AllRuns,
    /// From a kind of this name.
    Kind(String),
    /// Nothing was written.
    Default,
}

impl std::fmt::Display for Origin {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Here => f.write_str("as written"),
            Self::AllRuns => f.write_str("all_runs"),
            Self::Kind(name) => write!(f, "kind \"{name}\""),
            Self::Default => f.write_str("default"),
        }
    }
}
