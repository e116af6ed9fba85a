//! EN 1993-1-1:2005: classes and resistances of hollow sections.

use super::{RoundTube, SquareTube, TubeSizes};
use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{
    Area, Force, Length, Moment, Powers, Pressure, Pure, Quantity, SectionModulus, megapascals,
};
use crate::workings::{Ledger, Listed, OutOfRange, within};
use std::f64::consts::PI;

/// The document.
pub static DOCUMENT: Document = Document {
    short: "EN 1993-1-1:2005",
    title: "EN 1993-1-1:2005, Eurocode 3: Design of steel structures, Part 1-1: General rules and rules for buildings",
    seen: Seen::SecondHand("a public capacity sheet and the parameters of an open library (eurocodepy)"),
};

/// Bending.
pub const BENDING: Clause = DOCUMENT.at("6.2.5, (6.13), (6.14)");
/// Shear.
pub const SHEAR: Clause = DOCUMENT.at("6.2.6, (6.18)");
/// Compression.
pub const COMPRESSION: Clause = DOCUMENT.at("6.2.4, (6.10)");
const ROUND_CLASS: Clause = DOCUMENT.at("Table 5.2, sheet 3");
const SQUARE_CLASS: Clause = DOCUMENT.at("Table 5.2, sheet 1").from_memory();

/// The yield strength that ε is reckoned from.
pub const REFERENCE_YIELD: Pressure = megapascals(235.0);

/// Partial factor of the resistance of sections, as recommended; a national annex may set another.
pub const PARTIAL_FACTOR: Stated<f64> = Stated {
    value: 1.0,
    because: "EN 1993-1-1:2005 6.1: γ_M0 recommended, a national annex may set another",
};

rule! {
    /// Yield strength against that of steel of 235 MPa.
    Epsilon, "en1993-1-1/epsilon", DOCUMENT.at("Table 5.2");
    /// yield strength of 235 MPa
    reference: Pressure as Stress = "f_235";
    /// yield strength
    yield_strength: Pressure as Stress = "f_y";
    epsilon "ε": f64 = (reference / yield_strength).pure().sqrt()
}
rule! {
    /// Greatest d/t of a round tube of class 1.
    RoundClass1, "en1993-1-1/round-class-1", ROUND_CLASS;
    /// √(235 MPa / f_y)
    epsilon: f64 = "ε";
    limit "(d/t)_1": f64 = 50.0 * epsilon.squared()
}
rule! {
    /// Greatest d/t of a round tube of class 2.
    RoundClass2, "en1993-1-1/round-class-2", ROUND_CLASS;
    /// √(235 MPa / f_y)
    epsilon: f64 = "ε";
    limit "(d/t)_2": f64 = 70.0 * epsilon.squared()
}
rule! {
    /// Greatest d/t of a round tube of class 3.
    RoundClass3, "en1993-1-1/round-class-3", ROUND_CLASS.from_memory();
    /// √(235 MPa / f_y)
    epsilon: f64 = "ε";
    limit "(d/t)_3": f64 = 90.0 * epsilon.squared()
}
rule! {
    /// Class of a round tube: 1, 2 or 3.
    RoundClass, "en1993-1-1/round-class", ROUND_CLASS;
    /// outside diameter
    diameter: Length as Small = "d";
    /// wall
    wall: Length as Small = "t";
    /// yield strength
    yield_strength: Pressure as Stress = "f_y";
    class "class": f64
}
impl RoundClass {
    /// Works it.
    ///
    /// # Errors
    /// If the sizes are no tube, or the tube is of class 4, which EN 1993-1-6 is for.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { diameter, wall, yield_strength } = self;
        let class = round_class(round_tube(diameter, wall)?, yield_strength, ledger)?;
        Ok(self.keep(ledger, class.number()))
    }
}
rule! {
    /// Bending resistance of a section of class 1 or 2.
    PlasticBending, "en1993-1-1/6-13", DOCUMENT.at("6.2.5, (6.13)");
    /// plastic section modulus
    modulus: SectionModulus = "W_pl";
    /// yield strength
    yield_strength: Pressure as Stress = "f_y";
    /// partial factor
    partial: f64 = "γ_M0";
    moment "M_c,Rd": Moment = modulus * yield_strength / partial
}
rule! {
    /// Bending resistance of a section of class 3.
    ElasticBending, "en1993-1-1/6-14", DOCUMENT.at("6.2.5, (6.14)");
    /// elastic section modulus
    modulus: SectionModulus = "W_el";
    /// yield strength
    yield_strength: Pressure as Stress = "f_y";
    /// partial factor
    partial: f64 = "γ_M0";
    moment "M_c,Rd": Moment = modulus * yield_strength / partial
}
rule! {
    /// Shear area of a round tube.
    RoundShearArea, "en1993-1-1/round-shear-area", DOCUMENT.at("6.2.6(3)");
    /// area
    area: Area = "A";
    shear_area "A_v": Area = 2.0 * area / PI
}
rule! {
    /// Shear area of a square tube.
    SquareShearArea, "en1993-1-1/square-shear-area", DOCUMENT.at("6.2.6(3)").from_memory();
    /// area
    area: Area = "A";
    shear_area "A_v": Area = area / 2.0
}
rule! {
    /// Shear resistance.
    PlasticShear, "en1993-1-1/6-18", SHEAR;
    /// shear area
    area: Area = "A_v";
    /// yield strength
    yield_strength: Pressure as Stress = "f_y";
    /// partial factor
    partial: f64 = "γ_M0";
    shear "V_pl,Rd": Force = area * (yield_strength / 3.0_f64.sqrt()) / partial
}
rule! {
    /// Resistance of a section to compression.
    SectionCompression, "en1993-1-1/6-10", COMPRESSION;
    /// area
    area: Area = "A";
    /// yield strength
    yield_strength: Pressure as Stress = "f_y";
    /// partial factor
    partial: f64 = "γ_M0";
    force "N_c,Rd": Force = area * yield_strength / partial
}
rule! {
    /// Share of the yield strength lost to shear above half the shear resistance.
    ShearLoss, "en1993-1-1/6-29", DOCUMENT.at("6.2.8(3), (6.29)").from_memory();
    /// shear over shear resistance
    shear: f64 = "V_Ed/V_pl,Rd";
    share "ρ": f64 as Coefficient = (2.0 * shear - 1.0).squared()
}
rule! {
    /// Bending resistance of a round tube, with its class, shear resistance and resistance to compression beside.
    RoundResistance, "en1993-1-1/round-tube", DOCUMENT.at("6.2.4 to 6.2.6");
    /// outside diameter
    diameter: Length as Small = "d";
    /// wall
    wall: Length as Small = "t";
    /// yield strength
    yield_strength: Pressure as Stress = "f_y";
    moment "M_c,Rd": Moment
}
impl RoundResistance {
    /// Works it, with the recommended partial factor.
    ///
    /// # Errors
    /// If the sizes are no tube, or the tube is of class 4.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Moment, OutOfRange> {
        let Self { diameter, wall, yield_strength } = self;
        let tube = round_tube(diameter, wall)?;
        let _ = section_compression(tube.area(ledger), yield_strength, PARTIAL_FACTOR, ledger);
        let _ = shear_resistance(tube, yield_strength, PARTIAL_FACTOR, ledger);
        let moment = bending_resistance(tube, yield_strength, PARTIAL_FACTOR, ledger)?;
        Ok(self.keep(ledger, moment.design))
    }
}

/// The rules of this edition by name.
pub const RULES: &[Listed] = &[
    Listed::of::<Epsilon>(),
    Listed::of::<RoundClass1>(),
    Listed::of::<RoundClass2>(),
    Listed::of::<RoundClass3>(),
    Listed::of::<RoundClass>(),
    Listed::of::<PlasticBending>(),
    Listed::of::<ElasticBending>(),
    Listed::of::<RoundShearArea>(),
    Listed::of::<SquareShearArea>(),
    Listed::of::<PlasticShear>(),
    Listed::of::<SectionCompression>(),
    Listed::of::<ShearLoss>(),
    Listed::of::<RoundResistance>(),
];

fn round_tube(diameter: Length, wall: Length) -> Result<RoundTube, OutOfRange> {
    let (least, greatest) = (Length::from_si(f64::MIN_POSITIVE), Length::from_si(f64::MAX));
    within("diameter", ROUND_CLASS, diameter, least, greatest)?;
    within("wall", ROUND_CLASS, wall, least, diameter / 2.0)?;
    Ok(RoundTube::try_new(TubeSizes { diameter, wall }).expect("a wall of half the diameter is a tube"))
}

/// How far a section can bend before its walls buckle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Class {
    /// Plastic, and able to turn.
    One,
    /// Plastic.
    Two,
    /// Elastic up to yield.
    Three,
}

impl Class {
    /// As it is written.
    #[must_use]
    pub const fn number(self) -> f64 {
        match self {
            Self::One => 1.0,
            Self::Two => 2.0,
            Self::Three => 3.0,
        }
    }
}

/// A bending resistance, with the class of the section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BendingResistance {
    /// The resistance with its partial factor.
    pub design: Moment,
    /// The class.
    pub class: Class,
}

/// The class of a round tube in bending.
///
/// # Departure
/// The edition of 2022 lets class 3 in bending reach 140 ε² (from memory); it is not used.
///
/// # Errors
/// If it is of class 4: d/t above 90 ε².
pub fn round_class(
    tube: RoundTube,
    yield_strength: Pressure,
    ledger: &mut impl Ledger,
) -> Result<Class, OutOfRange> {
    let slenderness = (tube.diameter() / tube.wall()).pure();
    let epsilon = Epsilon { reference: REFERENCE_YIELD, yield_strength }.work(ledger);
    if slenderness <= (RoundClass1 { epsilon }).work(ledger) {
        return Ok(Class::One);
    }
    if slenderness <= (RoundClass2 { epsilon }).work(ledger) {
        return Ok(Class::Two);
    }
    let limit = RoundClass3 { epsilon }.work(ledger);
    within("d/t", ROUND_CLASS.from_memory(), slenderness, 0.0, limit)?;
    Ok(Class::Three)
}

/// The class of a square tube in bending, by its flange: c/t of 33, 38 and 42 ε with c = B − 3 t.
///
/// # Errors
/// If it is of class 4.
pub fn square_class(
    tube: SquareTube,
    yield_strength: Pressure,
    ledger: &mut impl Ledger,
) -> Result<Class, OutOfRange> {
    let slenderness = ((tube.width() - 3.0 * tube.wall()) / tube.wall()).pure();
    let epsilon = Epsilon { reference: REFERENCE_YIELD, yield_strength }.work(ledger);
    for (class, times) in [(Class::One, 33.0), (Class::Two, 38.0)] {
        if slenderness <= times * epsilon {
            return Ok(class);
        }
    }
    within("c/t", SQUARE_CLASS, slenderness, f64::MIN, 42.0 * epsilon)?;
    Ok(Class::Three)
}

fn bending(
    class: Class,
    moduli: (SectionModulus, SectionModulus),
    yield_strength: Pressure,
    partial: f64,
    ledger: &mut impl Ledger,
) -> BendingResistance {
    let (plastic, elastic) = moduli;
    let design = match class {
        Class::One | Class::Two => PlasticBending { modulus: plastic, yield_strength, partial }.work(ledger),
        Class::Three => ElasticBending { modulus: elastic, yield_strength, partial }.work(ledger),
    };
    BendingResistance { design, class }
}

/// Bending resistance of a round tube.
///
/// # Errors
/// If it is of class 4.
pub fn bending_resistance(
    tube: RoundTube,
    yield_strength: Pressure,
    partial: Stated<f64>,
    ledger: &mut impl Ledger,
) -> Result<BendingResistance, OutOfRange> {
    let class = round_class(tube, yield_strength, ledger)?;
    let moduli = (tube.plastic_modulus(ledger), tube.elastic_modulus(ledger));
    let partial = ledger.judge("γ_M0", partial);
    Ok(bending(class, moduli, yield_strength, partial, ledger))
}

/// Bending resistance of a square tube about an axis along a side.
///
/// # Errors
/// If it is of class 4.
pub fn square_bending_resistance(
    tube: SquareTube,
    yield_strength: Pressure,
    partial: Stated<f64>,
    ledger: &mut impl Ledger,
) -> Result<BendingResistance, OutOfRange> {
    let class = square_class(tube, yield_strength, ledger)?;
    let outline = tube.outline(ledger);
    let moduli = (outline.plastic_modulus(ledger), outline.elastic_modulus(ledger));
    let partial = ledger.judge("γ_M0", partial);
    Ok(bending(class, moduli, yield_strength, partial, ledger))
}

/// Shear resistance of a round tube.
pub fn shear_resistance(
    tube: RoundTube,
    yield_strength: Pressure,
    partial: Stated<f64>,
    ledger: &mut impl Ledger,
) -> Force {
    let area = RoundShearArea { area: tube.area(ledger) }.work(ledger);
    let partial = ledger.judge("γ_M0", partial);
    PlasticShear { area, yield_strength, partial }.work(ledger)
}

/// Shear resistance of a square tube.
pub fn square_shear_resistance(
    tube: SquareTube,
    yield_strength: Pressure,
    partial: Stated<f64>,
    ledger: &mut impl Ledger,
) -> Force {
    let area = SquareShearArea { area: tube.area(ledger) }.work(ledger);
    let partial = ledger.judge("γ_M0", partial);
    PlasticShear { area, yield_strength, partial }.work(ledger)
}

/// Resistance of a section of classes 1 to 3 to compression, before buckling.
pub fn section_compression(
    area: Area,
    yield_strength: Pressure,
    partial: Stated<f64>,
    ledger: &mut impl Ledger,
) -> Force {
    let partial = ledger.judge("γ_M0", partial);
    SectionCompression { area, yield_strength, partial }.work(ledger)
}

/// Yield strength that is left for bending beside a shear: whole up to half the shear resistance.
///
/// # Errors
/// If the shear is below 0 or above its resistance.
pub fn yield_beside_shear(
    yield_strength: Pressure,
    shear: f64,
    ledger: &mut impl Ledger,
) -> Result<Pressure, OutOfRange> {
    within("V_Ed/V_pl,Rd", DOCUMENT.at("6.2.8"), shear, 0.0, 1.0)?;
    if shear <= 0.5 {
        return Ok(yield_strength);
    }
    let share = ShearLoss { shear }.work(ledger);
    Ok(yield_strength * (1.0 - share))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::member::SquareSizes;
    use crate::units::{millimetres, newton_metres};
    use crate::workings::Blank;
    use proptest::prelude::*;

    fn round(diameter: f64, wall: f64) -> RoundTube {
        RoundTube::try_new(TubeSizes { diameter: millimetres(diameter), wall: millimetres(wall) }).unwrap()
    }

    fn resistance(diameter: f64, wall: f64, yield_mpa: f64) -> Result<BendingResistance, OutOfRange> {
        bending_resistance(round(diameter, wall), megapascals(yield_mpa), PARTIAL_FACTOR, &mut Blank)
    }

    /// Limits of S235, S275 and S355 by hand: 50/70/90, 42.7/59.8/76.9, 33.1/46.3/59.6.
    #[test]
    fn classes_change_at_their_limits() {
        for (yield_mpa, limits) in
            [(235.0, [50.0, 70.0, 90.0]), (275.0, [42.7, 59.8, 76.9]), (355.0, [33.1, 46.3, 59.6])]
        {
            let class =
                |slenderness: f64| resistance(100.0, 100.0 / slenderness, yield_mpa).map(|found| found.class);
            assert_eq!(class(limits[0] - 0.1).unwrap(), Class::One);
            assert_eq!(class(limits[0] + 0.1).unwrap(), Class::Two);
            assert_eq!(class(limits[1] - 0.1).unwrap(), Class::Two);
            assert_eq!(class(limits[1] + 0.1).unwrap(), Class::Three);
            assert_eq!(class(limits[2] - 0.1).unwrap(), Class::Three);
            let error = class(limits[2] + 0.1).unwrap_err().to_string();
            assert!(error.contains("EN 1993-1-1:2005 Table 5.2, sheet 3 (from memory)"), "{error}");
        }
    }

    #[test]
    fn ten_square_centimetres_of_s235_take_235_kilonewtons_of_compression() {
        let found =
            section_compression(Area::from_si(1e-3), megapascals(235.0), PARTIAL_FACTOR, &mut Blank).si();
        assert!((found - 235_000.0).abs() < 1e-6, "{found}");
    }

    #[test]
    fn the_class_of_a_round_tube_is_told_as_its_number() {
        for (slenderness, class) in [(40.0, 1.0), (60.0, 2.0), (80.0, 3.0)] {
            let (diameter, wall) = (millimetres(100.0), millimetres(100.0 / slenderness));
            let asked = RoundClass { diameter, wall, yield_strength: megapascals(235.0) };
            assert_eq!(asked.work(&mut Blank).unwrap(), class);
        }
        let of_wall = |wall: f64| {
            let (diameter, wall) = (millimetres(100.0), millimetres(wall));
            RoundClass { diameter, wall, yield_strength: megapascals(235.0) }.work(&mut Blank)
        };
        // A bar is a tube whose wall is half its diameter; no wall is thicker.
        assert_eq!(of_wall(50.0).unwrap(), 1.0);
        assert!(of_wall(50.1).is_err() && of_wall(0.0).is_err());
    }

    #[test]
    fn class_3_bends_by_its_elastic_modulus_with_a_step_down() {
        let share = |slenderness: f64| {
            let tube = round(100.0, 100.0 / slenderness);
            let found = resistance(100.0, 100.0 / slenderness, 235.0).unwrap();
            (found.design / (tube.plastic_modulus(&mut Blank) * megapascals(235.0))).pure()
        };
        assert!((share(69.9) - 1.0).abs() < 1e-12);
        assert!((share(70.1) - PI / 4.0).abs() < 0.02, "{}", share(70.1));
    }

    #[test]
    fn a_square_tube_is_classed_by_its_flange() {
        let of = |slenderness: f64, yield_mpa: f64| {
            let wall = 100.0 / (slenderness + 3.0);
            let sizes = SquareSizes { width: millimetres(100.0), wall: millimetres(wall), corner: None };
            let tube = SquareTube::try_new(sizes).unwrap();
            square_bending_resistance(tube, megapascals(yield_mpa), PARTIAL_FACTOR, &mut Blank)
                .map(|found| (found.class, found.design))
        };
        let square = |slenderness| of(slenderness, 235.0);
        assert_eq!(square(32.9).unwrap().0, Class::One);
        assert_eq!(square(37.9).unwrap().0, Class::Two);
        assert_eq!(square(41.9).unwrap().0, Class::Three);
        assert!(square(42.1).is_err());
        assert!(square(37.9).unwrap().1 > square(38.1).unwrap().1);
        // Four times 235 MPa halve every limit.
        for (slenderness, class) in [
            (16.4, Class::One),
            (16.6, Class::Two),
            (18.9, Class::Two),
            (19.1, Class::Three),
            (20.9, Class::Three),
        ] {
            assert_eq!(of(slenderness, 940.0).unwrap().0, class, "{slenderness}");
        }
        assert!(of(21.1, 940.0).is_err());
    }

    #[test]
    fn a_square_tube_shears_over_half_its_area() {
        let sizes = SquareSizes { width: millimetres(60.0), wall: millimetres(4.0), corner: None };
        let tube = SquareTube::try_new(sizes).unwrap();
        let shear = square_shear_resistance(tube, megapascals(235.0), PARTIAL_FACTOR, &mut Blank);
        let by_hand = tube.area(&mut Blank).si() / 2.0 * 235e6 / 3.0_f64.sqrt();
        assert!((shear.si() / by_hand - 1.0).abs() < 1e-12);
    }

    #[test]
    fn shear_takes_from_bending_above_half_its_resistance_only() {
        let left = |shear| yield_beside_shear(megapascals(235.0), shear, &mut Blank);
        assert_eq!(left(0.5).unwrap(), megapascals(235.0));
        assert!(((left(0.75).unwrap() / megapascals(235.0 * 0.75)).pure() - 1.0).abs() < 1e-12);
        assert!(left(1.0).unwrap().si().abs() < 1e-6);
        assert!(left(1.01).is_err() && left(-0.01).is_err());
    }

    #[test]
    fn a_national_partial_factor_divides_the_resistance() {
        let with = |value| {
            let partial = Stated { value, because: "a national annex" };
            bending_resistance(round(60.3, 3.2), megapascals(235.0), partial, &mut Blank).unwrap().design
        };
        assert!(((with(1.0) / with(1.1)).pure() - 1.1).abs() < 1e-12);
        assert!((with(1.0) / newton_metres(2454.4) - 1.0.into()).pure().abs() < 1e-4);
    }

    proptest! {
        #[test]
        fn a_thicker_wall_never_weakens(
            diameter in 30.0..200.0_f64, share in 0.024..0.8_f64, yield_mpa in 200.0..275.0_f64
        ) {
            let wall = diameter / 2.0 * share;
            prop_assume!(diameter / wall < 90.0 * 235.0 / yield_mpa);
            let at = |wall: f64| resistance(diameter, wall, yield_mpa).unwrap().design;
            prop_assert!(at(wall * 1.001) >= at(wall));
        }
    }
}
