//! From pressure to the foot of a post, as rules.

use crate::rule;
use crate::source::{OURS, STATICS};
use crate::units::{Area, Force, Length, LineLoad, Moment, Pressure, Pure};
use crate::workings::Listed;

rule! {
    /// Load of cloth for each length of run.
    ClothLoad, "loads/cloth", STATICS.at("pressure times height");
    /// net pressure on the gross area
    pressure: Pressure = "p";
    /// height of the cloth
    height: Length as Distance = "s";
    load "w": LineLoad = pressure * height
}
rule! {
    /// Load of chain link for each length of run.
    MeshLoad, "loads/chain-link", STATICS.at("pressure times solid area");
    /// pressure on the solid area
    pressure: Pressure = "p_s";
    /// solidity of the chain link
    solidity: f64 as Coefficient = "s";
    /// height of the strip
    height: Length as Distance = "Δz";
    load "w": LineLoad = pressure * solidity * height
}
rule! {
    /// Load of a rail for each length of run.
    RailLoad, "loads/rail", STATICS.at("pressure times solid area");
    /// pressure on the solid area
    pressure: Pressure = "p_s";
    /// diameter of the rail
    diameter: Length as Small = "D_r";
    load "w": LineLoad = pressure * diameter
}
rule! {
    /// Pressure on cloth at a height: straight from edge to edge, so that its resultant stands where the code has it.
    ///
    /// A resultant at 0.55 of the height makes 0.7 of the mean below and 1.3 of it above.
    PressureAtHeight, "loads/pressure-at-height", OURS.at("straight over the cloth, with the code's resultant");
    /// mean pressure
    mean: Pressure = "p";
    /// resultant above the middle of the cloth
    eccentricity: Length as Distance = "e";
    /// height of the cloth
    height: Length as Distance = "s";
    /// above the middle of the cloth, below it negative
    above: Length as Distance = "z_c";
    pressure "p_z": Pressure = mean * (1.0 + 12.0 * (eccentricity / height).pure() * (above / height).pure())
}
rule! {
    /// What a rail takes of a row of cloth that is tied between two supports: the nearer it is, the more.
    RowShare, "loads/row-share", STATICS.at("lever rule between two supports");
    /// from the row to the other support
    to_other: Length as Distance = "z_o";
    /// from support to support
    apart: Length as Distance = "Δz";
    share "n": f64 as Coefficient = (to_other / apart).pure()
}
rule! {
    /// Load of cloth that a rail takes a share of.
    SharedLoad, "loads/shared-row", STATICS.at("pressure on the strip of a row");
    /// pressure
    pressure: Pressure = "p";
    /// strip of cloth
    strip: Length as Distance = "b";
    /// share of it
    share: f64 as Coefficient = "n";
    load "w": LineLoad = share * pressure * strip
}
rule! {
    /// Load on the post's own face in an open strip.
    PostFace, "loads/post-face", STATICS.at("pressure times solid area");
    /// pressure on the solid area
    pressure: Pressure = "p_s";
    /// diameter of the post
    diameter: Length as Small = "D";
    /// height of the strip
    height: Length as Distance = "Δz";
    /// share of the face in this strip
    share: f64 = "n";
    force "F": Force = pressure * diameter * height * share
}
rule! {
    /// What a post takes of a stretch of load in one of its bays: ∫ w(x) (1 − x/b) dx, w straight.
    PostShare, "statics/post-share", STATICS.at("lever rule over a bay");
    /// distance of the stretch's near end from the post
    near: Length as Distance = "x_1";
    /// distance of its far end
    far: Length as Distance = "x_2";
    /// load at the near end
    load_near: LineLoad = "w_1";
    /// load at the far end
    load_far: LineLoad = "w_2";
    /// width of the bay
    bay: Length as Distance = "b";
    share "R": Force = (far - near) * ((load_near + load_far) / 2.0
        - (load_near * (2.0 * near + far) + load_far * (near + 2.0 * far)) / (6.0 * bay))
}
rule! {
    /// Moment at grade of a force at a height.
    BaseMoment, "statics/base-moment", STATICS.at("force times arm");
    /// force
    force: Force = "R";
    /// height above grade
    arm: Length as Distance = "z_r";
    moment "M": Moment = force * arm
}
rule! {
    /// Moment at the foot of a cantilever under an even load from the ground up.
    CantileverMoment, "statics/cantilever-moment", STATICS.at("cantilever under an even load");
    /// load for each length
    load: LineLoad = "w";
    /// height
    height: Length as Distance = "h";
    moment "M": Moment = load * height * height / 2.0
}
rule! {
    /// Shear at the foot of a cantilever under an even load from the ground up.
    CantileverShear, "statics/cantilever-shear", STATICS.at("cantilever under an even load");
    /// load for each length
    load: LineLoad = "w";
    /// height
    height: Length = "h";
    shear "V": Force = load * height
}
rule! {
    /// Load on a post that takes a bay of open mesh and its own face, as some fence sheets reckon it.
    ///
    /// One coefficient stands on the mesh over the bay and on the post.
    MeshAndPostLoad, "loads/mesh-and-post", STATICS.at("pressure times solid area");
    /// velocity pressure
    pressure: Pressure = "q";
    /// force coefficient
    coefficient: f64 = "C_f";
    /// solidity of the mesh
    solidity: f64 = "s";
    /// width of the bay
    bay: Length as Distance = "b";
    /// diameter of the post
    diameter: Length as Small = "D";
    load "w": LineLoad = pressure * coefficient * (solidity * bay + diameter)
}

rule! {
    /// Force of an even pressure on an area, as sign sheets reckon it.
    AreaForce, "loads/area-force", STATICS.at("pressure times area");
    /// net pressure on the area
    pressure: Pressure = "p";
    /// area
    area: Area as LargeArea = "A";
    force "F": Force = pressure * area
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<ClothLoad>(),
    Listed::of::<MeshLoad>(),
    Listed::of::<RailLoad>(),
    Listed::of::<PressureAtHeight>(),
    Listed::of::<RowShare>(),
    Listed::of::<SharedLoad>(),
    Listed::of::<PostFace>(),
    Listed::of::<PostShare>(),
    Listed::of::<BaseMoment>(),
    Listed::of::<CantileverMoment>(),
    Listed::of::<CantileverShear>(),
    Listed::of::<MeshAndPostLoad>(),
    Listed::of::<AreaForce>(),
];
