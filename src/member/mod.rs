//! Shapes, section properties, materials, strengths by edition, and the catalogue of fence pipe.

pub mod aisc360_16;
pub mod pipe;
mod tube;

pub use tube::{
    ElasticModulus, GirthDiameter, InnerDiameter, MemberError, PlasticModulus, RULES, RadiusOfGyration,
    RoundTube, RustedDiameter, RustedWall, SecondMomentOfArea, SectionArea, TubeSection, TubeSizes,
    TubeWeight,
};
