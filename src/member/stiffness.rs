//! How stiff a member is and what it weighs: what a frame or a reckoning of sway asks of it.

use super::aisc360_16::{ELASTIC_MODULUS, SHEAR_MODULUS};
use super::nds_2018::TimberInService;
use super::square::SquareTube;
use super::timber::RectangleTorsionalConstant;
use super::tube::RoundTube;
use crate::rule;
use crate::source::{OURS, STATICS, Stated};
use crate::units::{
    Area, LineLoad, MassPerLength, Pressure, PressurePerDepth, STANDARD_GRAVITY, SecondMoment, psf_per_foot,
};
use crate::workings::{Ledger, Listed};

/// Weight of steel for each volume.
pub const STEEL_WEIGHT: Stated<PressurePerDepth> = Stated {
    value: psf_per_foot(490.0),
    because: "490 lb a cubic foot of steel: a pipe page and a permit sheet's table of weights use it",
};
const TIMBER_WEIGHT: Stated<PressurePerDepth> = Stated {
    value: psf_per_foot(35.0),
    because: "ours, from memory: 35 lb a cubic foot of softwood; a post that is wet or treated weighs more",
};
const TIMBER_MODULI: Stated<f64> = Stated {
    value: 16.0,
    because: "ours, from memory: wood is about a sixteenth as stiff in shear as along the grain",
};

rule! {
    /// Weight of a member of one section for each length.
    SectionWeight, "section/weight", STATICS.at("weight of a prism");
    /// weight of the material for each volume
    unit_weight: PressurePerDepth = "γ";
    /// area of its section
    area: Area = "A";
    weight "w": LineLoad = unit_weight * area
}
rule! {
    /// Shear modulus of wood from its modulus of elasticity along the grain.
    TimberShearModulus, "section/timber-shear-modulus", OURS.at("shear modulus of wood");
    /// modulus of elasticity
    elastic: Pressure as Stress = "E′";
    /// modulus of elasticity over shear modulus
    ratio: f64 = "E/G";
    modulus "G": Pressure as Stress = elastic / ratio
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[Listed::of::<SectionWeight>(), Listed::of::<TimberShearModulus>()];

/// How stiff a member is and what it weighs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stiffness {
    /// Area of its section.
    pub area: Area,
    /// Second moment of area, for bending square on the fence and along it.
    pub second_moment: SecondMoment,
    /// Torsional constant.
    pub torsion: SecondMoment,
    /// Modulus of elasticity.
    pub elastic: Pressure,
    /// Shear modulus.
    pub shear_modulus: Pressure,
    /// Weight for each length.
    pub weight_per_length: LineLoad,
}

impl Stiffness {
    /// Mass for each length.
    #[must_use]
    pub fn mass_per_length(&self) -> MassPerLength {
        self.weight_per_length / STANDARD_GRAVITY
    }
}

/// Round steel tube: stiff by the wall it is reckoned with, heavy by the wall it was made with.
pub fn of_round_steel(reckoned: RoundTube, made: RoundTube, ledger: &mut impl Ledger) -> Stiffness {
    let torsion = reckoned.torsional_constant(ledger);
    of_steel(reckoned.area(ledger), reckoned.second_moment(ledger), torsion, made.area(ledger), ledger)
}

/// Square steel tube, in the same way.
pub fn of_square_steel(reckoned: SquareTube, made: SquareTube, ledger: &mut impl Ledger) -> Stiffness {
    let torsion = reckoned.torsional_constant(ledger);
    of_steel(reckoned.area(ledger), reckoned.second_moment(ledger), torsion, made.area(ledger), ledger)
}

fn of_steel(
    area: Area,
    second_moment: SecondMoment,
    torsion: SecondMoment,
    made: Area,
    ledger: &mut impl Ledger,
) -> Stiffness {
    let unit_weight = ledger.judge("γ", STEEL_WEIGHT);
    let weight_per_length = SectionWeight { unit_weight, area: made }.work(ledger);
    let (elastic, shear_modulus) = (ELASTIC_MODULUS, SHEAR_MODULUS);
    Stiffness { area, second_moment, torsion, elastic, shear_modulus, weight_per_length }
}

/// A timber post.
pub fn of_timber(timber: &TimberInService, ledger: &mut impl Ledger) -> Stiffness {
    let post = timber.post;
    let (long, short) = (post.breadth().max(post.depth()), post.breadth().min(post.depth()));
    let (area, elastic) = (post.area(ledger), timber.elastic_modulus(ledger));
    let ratio = ledger.judge("E/G", TIMBER_MODULI);
    let unit_weight = ledger.judge("γ", TIMBER_WEIGHT);
    Stiffness {
        area,
        second_moment: post.second_moment(ledger),
        torsion: RectangleTorsionalConstant { long, short }.work(ledger),
        elastic,
        shear_modulus: TimberShearModulus { elastic, ratio }.work(ledger),
        weight_per_length: SectionWeight { unit_weight, area }.work(ledger),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::member::nds_2018::{Service, WIND_DURATION, timber};
    use crate::member::{SquareSizes, TimberPost, TimberSizes, TubeSizes};
    use crate::units::{Pure, inches, ksi, pounds_per_foot};
    use crate::workings::Blank;

    fn fourth(second_moment: SecondMoment) -> f64 {
        (second_moment / (inches(1.0) * inches(1.0)) / (inches(1.0) * inches(1.0))).pure()
    }

    #[test]
    fn pipe_2_1_2_is_stiff_by_its_design_wall_and_weighs_what_its_label_says() {
        let tube = |wall: f64| {
            RoundTube::try_new(TubeSizes { diameter: inches(2.875), wall: inches(wall) }).unwrap()
        };
        let found = of_round_steel(tube(0.93 * 0.203), tube(0.203), &mut Blank);
        // AISC Shapes Database v15.0, pipe 2-1/2 std, as the catalogue of shapes has it.
        assert!(((found.area / (inches(1.0) * inches(1.0))).pure() - 1.61).abs() < 0.02);
        assert!((fourth(found.second_moment) - 1.45).abs() < 0.01);
        assert!((fourth(found.torsion) - 2.89).abs() < 0.015);
        assert!(((found.weight_per_length / pounds_per_foot(1.0)).pure() - 5.80).abs() < 0.01);
        assert_eq!((found.elastic, found.shear_modulus), (ksi(29_000.0), ksi(11_200.0)));
        // A pound a foot is 1.488 164 kg/m.
        assert!((found.mass_per_length().value - 5.797 * 1.488_164).abs() < 0.01);
    }

    #[test]
    fn square_tube_twists_as_a_thin_closed_wall() {
        let sizes = SquareSizes { width: inches(4.0), wall: inches(0.233), corner: None };
        let tube = SquareTube::try_new(sizes).unwrap();
        // AISC Manual, HSS4x4x1/4: J 12.8 in⁴ (from memory).
        assert!((fourth(tube.torsional_constant(&mut Blank)) - 12.8).abs() < 0.05);
        // With sharp corners outside: a square of 3.767 in to the middle of its wall, J = a³ t.
        let sharp = SquareTube::try_new(SquareSizes { corner: Some(inches(0.0)), ..sizes }).unwrap();
        let by_hand = 3.767_f64.powi(3) * 0.233;
        assert!((fourth(sharp.torsional_constant(&mut Blank)) / by_hand - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_timber_post_takes_its_modulus_from_its_table() {
        let post = TimberPost::try_new(TimberSizes { breadth: inches(5.5), depth: inches(5.5) }).unwrap();
        let row = timber("Douglas Fir-Larch", "No.1", post).unwrap();
        let in_service = TimberInService {
            post,
            values: row.values,
            service: Service::Dry,
            incised: false,
            duration: WIND_DURATION,
        };
        let found = of_timber(&in_service, &mut Blank);
        assert_eq!((found.elastic, found.shear_modulus), (ksi(1600.0), ksi(100.0)));
        assert!((fourth(found.second_moment) / (5.5_f64.powi(4) / 12.0) - 1.0).abs() < 1e-12);
        // Timoshenko and Goodier: 0.1406 a⁴ for a square (from memory).
        assert!((fourth(found.torsion) / (0.1406 * 5.5_f64.powi(4)) - 1.0).abs() < 0.002);
        // 35 lb a cubic foot over 30.25 in².
        assert!(
            ((found.weight_per_length / pounds_per_foot(1.0)).pure() - 35.0 * 30.25 / 144.0).abs() < 1e-9
        );
    }
}
