//! Shapes, section properties, strengths by edition, beams by statics, and the catalogues of pipe and timber.

pub mod aisc360_16;
pub mod aisi_s100_16;
pub mod beam;
pub mod en1993_1_1_2005;
pub mod listing;
pub mod nds_2018;
pub mod pipe;
pub mod shapes;
pub mod square;
pub mod stiffness;
pub mod sway;
pub mod timber;
mod tube;

pub use aisc360_16::Format;
pub use square::{SquareSizes, SquareTube};
pub use stiffness::Stiffness;
pub use timber::{TimberPost, TimberSizes};
pub use tube::{
    ElasticModulus, GirthDiameter, InnerDiameter, MemberError, PlasticModulus, RULES, RadiusOfGyration,
    RoundTube, RustedDiameter, RustedWall, RustedWidth, SecondMomentOfArea, SectionArea, TorsionalConstant,
    TorsionalModulus, TubeSection, TubeSizes, TubeWeight,
};
