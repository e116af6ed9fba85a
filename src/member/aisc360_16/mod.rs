//! ANSI/AISC 360-16: strength of round and square tube. Clause numbers are those of the 2022 edition too.

mod combined;
mod compression;
mod round_flexure;
mod shear;
mod square_flexure;
mod tension;
mod torsion;

pub use combined::{
    Actions, H1_1A, H1_1B, H3_6, Interaction, LargeAxial, ResultantMoment, SmallAxial, WithTorsion,
    interaction,
};
pub use compression::{
    ADVISED_SLENDERNESS, AllowableCompression, Column, Compression, CompressionInBothFormats,
    DesignCompression, E3_2, E3_3, E7_7, ElasticBuckling, FREE_STANDING, InelasticBuckling, InelasticLimit,
    LengthRatio, NominalCompression, RoundEffectiveArea, RoundSlenderLimit, SlenderBuckling,
    nominal_compression, square_compression,
};
pub use round_flexure::{
    CompactLimit, F8_1, F8_2, F8_3, Noncompact, NoncompactLimit, Plastic, Slender, TubeMoment,
    YieldingInBothFormats, design_moment, nominal_moment,
};
pub use shear::{
    G4_1, G5_1, NominalShear, Shear, ShearStress, SquareShear, SquareTubeShear, WebArea,
    WebCoefficientBuckled, WebCoefficientBuckling, WebInelasticLimit, WebYieldingLimit, design_shear,
    nominal_shear, square_shear,
};
pub use square_flexure::{
    EffectiveSecondMoment, EffectiveWidth, F7_1, F7_2, F7_3, F7_6, FlangeCompactLimit, FlangeNoncompactLimit,
    FlatWidth, FlatWidthOfCorner, FlexureInBothFormats, SquareNoncompactFlange, SquareNoncompactWeb,
    SquarePlastic, SquareSlenderFlange, SquareTubeInBothFormats, SquareTubeMoment, WebCompactLimit,
    WebNoncompactLimit, flat_width, square_moment,
};
pub use tension::{AllowableTension, D2_1, DesignTension, TensileYield};
pub use torsion::{
    AllowableTorsion, ClosedForm, DesignTorsion, GreaterStress, H3_2, H3_3, H3_4, NominalTorsion,
    RectangularConstant, RectangularTorsionInBothFormats, RoundStress, RoundStressOfLength,
    RoundTorsionInBothFormats, Torsion, WallElastic, WallInelastic, WallYielding, nominal_torsion,
    square_torsion,
};

use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{Force, Length, Moment, Pressure, ksi};
use crate::workings::{Ledger, Listed};

/// The document.
pub static DOCUMENT: Document = Document {
    short: "AISC 360-16",
    title: "ANSI/AISC 360-16, Specification for Structural Steel Buildings",
    seen: Seen::SecondHand(
        "public verification pages of its design examples, and Brockenbrough, Structural Steel \
Designer's Handbook, 5.5.6",
    ),
};

const B4_2: Clause = DOCUMENT.at("B4.2");

/// Young's modulus of steel, as the specification's equations take it.
pub const ELASTIC_MODULUS: Pressure = ksi(29_000.0);

/// Shear modulus of steel, as the specification's list of symbols has it.
pub const SHEAR_MODULUS: Pressure = ksi(11_200.0);

const MOMENT_RESISTANCE: Stated<f64> =
    Stated { value: 0.90, because: "AISC 360-16 F1: resistance factor in bending" };
const MOMENT_SAFETY: Stated<f64> =
    Stated { value: 1.67, because: "AISC 360-16 F1: safety factor in bending" };
const SHEAR_RESISTANCE: Stated<f64> =
    Stated { value: 0.90, because: "AISC 360-16 G1: resistance factor in shear" };
const SHEAR_SAFETY: Stated<f64> = Stated { value: 1.67, because: "AISC 360-16 G1: safety factor in shear" };
const COMPRESSION_RESISTANCE: Stated<f64> =
    Stated { value: 0.90, because: "AISC 360-16 E1: resistance factor in compression" };
const COMPRESSION_SAFETY: Stated<f64> =
    Stated { value: 1.67, because: "AISC 360-16 E1: safety factor in compression" };
const TENSION_RESISTANCE: Stated<f64> = Stated {
    value: 0.90,
    because: "AISC 360-16 D2(a), from memory: resistance factor for yielding in tension",
};
const TENSION_SAFETY: Stated<f64> =
    Stated { value: 1.67, because: "AISC 360-16 D2(a), from memory: safety factor for yielding in tension" };
const TORSION_RESISTANCE: Stated<f64> =
    Stated { value: 0.90, because: "AISC 360-16 H3.1: resistance factor in torsion" };
const TORSION_SAFETY: Stated<f64> =
    Stated { value: 1.67, because: "AISC 360-16 H3.1: safety factor in torsion" };

rule! {
    /// Design wall of electric-resistance-welded tube from its nominal wall.
    DesignWall, "aisc360-16/design-wall", B4_2;
    /// nominal wall
    nominal: Length as Small = "t_nom";
    wall "t": Length as Small = 0.93 * nominal
}
rule! {
    /// Bending strength with its resistance factor.
    DesignMoment, "aisc360-16/design-moment", DOCUMENT.at("F1");
    /// resistance factor
    resistance: f64 = "φ";
    /// nominal strength
    nominal: Moment = "M_n";
    moment "φM_n": Moment = resistance * nominal
}
rule! {
    /// Bending strength allowed by the other format of the specification, beside.
    AllowableMoment, "aisc360-16/allowable-moment", DOCUMENT.at("F1");
    /// nominal strength
    nominal: Moment = "M_n";
    /// safety factor
    safety: f64 = "Ω";
    moment "M_n/Ω": Moment = nominal / safety
}
rule! {
    /// Shear strength with its resistance factor.
    DesignShear, "aisc360-16/design-shear", DOCUMENT.at("G1");
    /// resistance factor
    resistance: f64 = "φ";
    /// nominal strength
    nominal: Force = "V_n";
    shear "φV_n": Force = resistance * nominal
}
rule! {
    /// Shear strength allowed by the other format of the specification.
    AllowableShear, "aisc360-16/allowable-shear", DOCUMENT.at("G1");
    /// nominal strength
    nominal: Force = "V_n";
    /// safety factor
    safety: f64 = "Ω";
    shear "V_n/Ω": Force = nominal / safety
}

/// The rules of this edition by name.
pub const RULES: &[Listed] = &[
    Listed::of::<DesignWall>(),
    Listed::of::<CompactLimit>(),
    Listed::of::<NoncompactLimit>(),
    Listed::of::<Plastic>(),
    Listed::of::<Noncompact>(),
    Listed::of::<Slender>(),
    Listed::of::<TubeMoment>(),
    Listed::of::<DesignMoment>(),
    Listed::of::<AllowableMoment>(),
    Listed::of::<YieldingInBothFormats>(),
    Listed::of::<ShearStress>(),
    Listed::of::<Shear>(),
    Listed::of::<DesignShear>(),
    Listed::of::<AllowableShear>(),
    Listed::of::<FlatWidth>(),
    Listed::of::<FlatWidthOfCorner>(),
    Listed::of::<FlangeCompactLimit>(),
    Listed::of::<FlangeNoncompactLimit>(),
    Listed::of::<WebCompactLimit>(),
    Listed::of::<WebNoncompactLimit>(),
    Listed::of::<SquarePlastic>(),
    Listed::of::<SquareNoncompactFlange>(),
    Listed::of::<EffectiveWidth>(),
    Listed::of::<EffectiveSecondMoment>(),
    Listed::of::<SquareSlenderFlange>(),
    Listed::of::<SquareNoncompactWeb>(),
    Listed::of::<SquareTubeMoment>(),
    Listed::of::<FlexureInBothFormats>(),
    Listed::of::<SquareTubeInBothFormats>(),
    Listed::of::<WebArea>(),
    Listed::of::<WebYieldingLimit>(),
    Listed::of::<WebInelasticLimit>(),
    Listed::of::<WebCoefficientBuckling>(),
    Listed::of::<WebCoefficientBuckled>(),
    Listed::of::<SquareShear>(),
    Listed::of::<SquareTubeShear>(),
    Listed::of::<LengthRatio>(),
    Listed::of::<ElasticBuckling>(),
    Listed::of::<InelasticLimit>(),
    Listed::of::<InelasticBuckling>(),
    Listed::of::<SlenderBuckling>(),
    Listed::of::<RoundSlenderLimit>(),
    Listed::of::<RoundEffectiveArea>(),
    Listed::of::<Compression>(),
    Listed::of::<DesignCompression>(),
    Listed::of::<AllowableCompression>(),
    Listed::of::<CompressionInBothFormats>(),
    Listed::of::<TensileYield>(),
    Listed::of::<DesignTension>(),
    Listed::of::<AllowableTension>(),
    Listed::of::<ClosedForm>(),
    Listed::of::<RectangularConstant>(),
    Listed::of::<RoundStressOfLength>(),
    Listed::of::<RoundStress>(),
    Listed::of::<GreaterStress>(),
    Listed::of::<WallYielding>(),
    Listed::of::<WallInelastic>(),
    Listed::of::<WallElastic>(),
    Listed::of::<Torsion>(),
    Listed::of::<DesignTorsion>(),
    Listed::of::<AllowableTorsion>(),
    Listed::of::<RoundTorsionInBothFormats>(),
    Listed::of::<RectangularTorsionInBothFormats>(),
    Listed::of::<ResultantMoment>(),
    Listed::of::<LargeAxial>(),
    Listed::of::<SmallAxial>(),
    Listed::of::<WithTorsion>(),
];

/// A nominal moment and the equation that gave it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NominalMoment {
    /// The strength without its factor.
    pub nominal: Moment,
    /// The equation that governs.
    pub clause: Clause,
}

/// How load and strength are brought together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Format {
    /// Load and resistance factors: factored load against φ times the nominal strength.
    #[default]
    Lrfd,
    /// Allowable strength: service load against the nominal strength over Ω. With wind of 1.0 W and 0.6 W a member
    /// comes out 10 % lower by it than by the other: 0.90 × 1.67 × 0.6 is 0.902.
    Asd,
}

impl Format {
    /// Both, as a survey lists them.
    pub const ALL: [Self; 2] = [Self::Lrfd, Self::Asd];

    /// Its name where one is asked for.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Lrfd => "lrfd",
            Self::Asd => "asd",
        }
    }

    /// The bending strength that a load is held against.
    pub fn available_moment(self, nominal: Moment, ledger: &mut impl Ledger) -> Moment {
        match self {
            Self::Lrfd => {
                let resistance = ledger.judge("φ", MOMENT_RESISTANCE);
                DesignMoment { resistance, nominal }.work(ledger)
            }
            Self::Asd => {
                let safety = ledger.judge("Ω", MOMENT_SAFETY);
                AllowableMoment { nominal, safety }.work(ledger)
            }
        }
    }

    /// The shear strength that a load is held against.
    pub fn available_shear(self, nominal: Force, ledger: &mut impl Ledger) -> Force {
        match self {
            Self::Lrfd => {
                let resistance = ledger.judge("φ", SHEAR_RESISTANCE);
                DesignShear { resistance, nominal }.work(ledger)
            }
            Self::Asd => {
                let safety = ledger.judge("Ω", SHEAR_SAFETY);
                AllowableShear { nominal, safety }.work(ledger)
            }
        }
    }

    /// The tensile strength that a load is held against.
    pub fn available_tension(self, nominal: Force, ledger: &mut impl Ledger) -> Force {
        match self {
            Self::Lrfd => {
                let resistance = ledger.judge("φ", TENSION_RESISTANCE);
                DesignTension { resistance, nominal }.work(ledger)
            }
            Self::Asd => {
                let safety = ledger.judge("Ω", TENSION_SAFETY);
                AllowableTension { nominal, safety }.work(ledger)
            }
        }
    }

    /// The compressive strength that a load is held against.
    pub fn available_compression(self, nominal: Force, ledger: &mut impl Ledger) -> Force {
        match self {
            Self::Lrfd => {
                let resistance = ledger.judge("φ", COMPRESSION_RESISTANCE);
                DesignCompression { resistance, nominal }.work(ledger)
            }
            Self::Asd => {
                let safety = ledger.judge("Ω", COMPRESSION_SAFETY);
                AllowableCompression { nominal, safety }.work(ledger)
            }
        }
    }

    /// The torsional strength that a load is held against.
    pub fn available_torsion(self, nominal: Moment, ledger: &mut impl Ledger) -> Moment {
        match self {
            Self::Lrfd => {
                let resistance = ledger.judge("φ", TORSION_RESISTANCE);
                DesignTorsion { resistance, nominal }.work(ledger)
            }
            Self::Asd => {
                let safety = ledger.judge("Ω", TORSION_SAFETY);
                AllowableTorsion { nominal, safety }.work(ledger)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Pure, pound_feet, pounds};
    use crate::workings::{Blank, Entry};

    #[test]
    fn the_two_formats_lie_eleven_per_cent_apart_under_wind() {
        let (moment, shear) = (pound_feet(1000.0), pounds(1000.0));
        let lrfd = Format::Lrfd.available_moment(moment, &mut Blank) / moment;
        let asd = Format::Asd.available_moment(moment, &mut Blank) / moment;
        let apart = (lrfd / (asd / 0.6)).pure();
        assert!((1.0 / apart - 1.109).abs() < 5e-4, "{apart}");
        let shears =
            [Format::Lrfd, Format::Asd].map(|format| format.available_shear(shear, &mut Blank) / shear);
        assert_eq!(shears.map(Pure::pure), [lrfd.pure(), asd.pure()]);
    }

    #[test]
    fn every_factor_is_written_down_as_a_judgement() {
        for (format, symbol) in [(Format::Lrfd, "φ"), (Format::Asd, "Ω")] {
            let mut ledger: Vec<Entry> = Vec::new();
            format.available_moment(pound_feet(1.0), &mut ledger);
            format.available_shear(pounds(1.0), &mut ledger);
            format.available_compression(pounds(1.0), &mut ledger);
            format.available_torsion(pound_feet(1.0), &mut ledger);
            let judged: Vec<_> = ledger
                .iter()
                .filter_map(|entry| match entry {
                    Entry::Judged { symbol, because, .. } => Some((*symbol, *because)),
                    _ => None,
                })
                .collect();
            assert_eq!(judged.len(), 4);
            assert!(
                judged.iter().all(|(found, because)| *found == symbol && because.contains("AISC 360-16"))
            );
        }
    }
}
