//! NDS 2018: strength of timber posts, allowable stress and, beside it, load and resistance factors.

use super::timber::TimberPost;
use crate::rule;
use crate::source::{Catalogue, CatalogueError, Clause, Document, Seen, Stated};
use crate::units::{
    Area, Dimension, Force, Length, Moment, Pressure, Pure, Quantity, SectionModulus, Unit, inches, ksi,
};
use crate::workings::{Ledger, Listed, OutOfRange, within};
use std::sync::LazyLock;

/// The document.
pub static DOCUMENT: Document = Document {
    short: "NDS 2018",
    title: "ANSI/AWC NDS-2018, National Design Specification for Wood Construction",
    seen: Seen::SecondHand("two open libraries and worked examples of courses and guides"),
};

/// Bending by allowable stress.
pub const BENDING: Clause = DOCUMENT.at("3.3.1 and Table 4.3.1");
/// Shear by allowable stress.
pub const SHEAR: Clause = DOCUMENT.at("3.4.2, Eq. 3.4-2");
const FACTORS: Clause = DOCUMENT.at("Table 4.3.1");
const SIZE_4A: Clause = DOCUMENT.at("Supplement, Table 4A, pieces 4 in thick").from_memory();
const SIZE_4B: Clause = DOCUMENT.at("Supplement, Table 4B, pieces 4 in thick and wide");
const SIZE_4D: Clause = DOCUMENT.at("4.3.6.2 and Supplement, Table 4D");
const SLENDER: Clause = DOCUMENT.at("4.4.1.2").from_memory();
const LRFD: Clause = DOCUMENT.at("Tables 4.3.1 and N1 to N3");

/// Load duration factor under wind.
pub const WIND_DURATION: Stated<f64> =
    Stated { value: 1.6, because: "NDS 2018 Table 2.3.2: wind, ten minutes" };
const ORDINARY_TEMPERATURE: Stated<f64> =
    Stated { value: 1.0, because: "NDS 2018 Table 2.3.3: no hotter than 100 °F for long (from memory)" };
const SQUARE_IS_STABLE: Stated<f64> =
    Stated { value: 1.0, because: "NDS 2018 3.3.3.1: no deeper than broad (from memory)" };
const DEPTH_IS_STABLE: Stated<f64> =
    Stated { value: 1.0, because: "NDS 2018 4.4.1.2: no deeper than twice the breadth (from memory)" };
const NOT_FLAT: Stated<f64> = Stated {
    value: 1.0,
    because: "NDS 2018 4.3.7: not laid flat; where it is, the factor of at least 1 is not counted (from memory)",
};
const NOT_INCISED: Stated<f64> = Stated { value: 1.0, because: "NDS 2018 4.3.8: not incised" };
const INCISED: Stated<f64> = Stated {
    value: 0.80,
    because: "NDS 2018 Table 4.3.8: incised. It is written for dimension lumber; taken for larger posts too (ours)",
};
const INCISED_ELASTIC: Stated<f64> = Stated {
    value: 0.95,
    because: "NDS 2018 Table 4.3.8: incised. It is written for dimension lumber; taken for larger posts too (ours)",
};
const ALONE: Stated<f64> =
    Stated { value: 1.0, because: "NDS 2018 4.3.9: a post alone, not one of three joined members" };
const DRY: Stated<f64> =
    Stated { value: 1.0, because: "NDS 2018 4.1.4: dry, no more than 19 % moisture (from memory)" };
const WET_TIMBER: Stated<f64> = Stated { value: 1.0, because: "NDS 2018 Supplement, Table 4D: wet, bending" };
const WET_TIMBER_BESIDE: Stated<f64> = Stated {
    value: 1.0,
    because: "NDS 2018 Supplement, Table 4D: wet, shear and modulus of elasticity (from memory)",
};
const WET_WEAK: Stated<f64> = Stated {
    value: 1.0,
    because: "NDS 2018 Supplement, Tables 4A and 4B: wet, but F_b C_F no more than 1150 psi",
};
const WET_BENDING: Stated<f64> =
    Stated { value: 0.85, because: "NDS 2018 Supplement, Tables 4A and 4B: wet, bending" };
const WET_SHEAR: Stated<f64> =
    Stated { value: 0.97, because: "NDS 2018 Supplement, Tables 4A and 4B: wet, shear" };
const WET_ELASTIC: Stated<f64> =
    Stated { value: 0.90, because: "NDS 2018 Supplement, Tables 4A and 4B: wet, modulus of elasticity" };
const SIZE_IN_VALUE: Stated<f64> =
    Stated { value: 1.0, because: "NDS 2018 Supplement, Table 4B: the size is in the value" };
const SIZE_TO_A_FOOT: Stated<f64> =
    Stated { value: 1.0, because: "NDS 2018 Supplement, Table 4D: no deeper than 12 in" };

const CONVERSION_BENDING: Stated<f64> = Stated {
    value: 2.54,
    because: "NDS 2018 Table N1: format conversion in bending (a course's solved problem, a help page)",
};
const CONVERSION_SHEAR: Stated<f64> = Stated {
    value: 2.88,
    because: "NDS 2018 Table N1: format conversion in shear (a course's solved problem, a help page)",
};
const RESISTANCE_BENDING: Stated<f64> = Stated {
    value: 0.85,
    because: "NDS 2018 Table N2: resistance factor in bending (a course's solved problem, a help page)",
};
const RESISTANCE_SHEAR: Stated<f64> = Stated {
    value: 0.75,
    because: "NDS 2018 Table N2: resistance factor in shear (a course's solved problem, a help page)",
};
const TIME_EFFECT: Stated<f64> =
    Stated { value: 1.0, because: "NDS 2018 Table N3: time effect under wind (from memory)" };

rule! {
    /// Size factor of posts and timbers deeper than 12 in.
    SizeFactor, "nds-2018/size-factor", SIZE_4D;
    /// depth of 12 in
    foot: Length as Small = "d_12";
    /// depth
    depth: Length as Small = "d";
    factor "C_F": f64 as Coefficient = (foot / depth).pure().powf(1.0 / 9.0)
}
rule! {
    /// Bending stress allowed.
    AllowableBending, "nds-2018/allowable-bending-stress", FACTORS;
    /// reference design value
    reference: Pressure as Stress = "F_b";
    /// load duration factor
    duration: f64 = "C_D";
    /// wet service factor
    wet: f64 = "C_M";
    /// temperature factor
    temperature: f64 = "C_t";
    /// beam stability factor
    stability: f64 = "C_L";
    /// size factor
    size: f64 = "C_F";
    /// flat use factor
    flat: f64 = "C_fu";
    /// incising factor
    incising: f64 = "C_i";
    /// repetitive member factor
    repetitive: f64 = "C_r";
    stress "F_b′": Pressure as Stress =
        reference * duration * wet * temperature * stability * size * flat * incising * repetitive
}
rule! {
    /// Shear stress allowed, along the grain.
    AllowableShearStress, "nds-2018/allowable-shear-stress", FACTORS;
    /// reference design value
    reference: Pressure as Stress = "F_v";
    /// load duration factor
    duration: f64 = "C_D";
    /// wet service factor
    wet: f64 = "C_M";
    /// temperature factor
    temperature: f64 = "C_t";
    /// incising factor
    incising: f64 = "C_i";
    stress "F_v′": Pressure as Stress = reference * duration * wet * temperature * incising
}
rule! {
    /// Modulus of elasticity as it is worked.
    AdjustedElastic, "nds-2018/adjusted-elastic-modulus", FACTORS;
    /// reference design value
    reference: Pressure as Stress = "E";
    /// wet service factor
    wet: f64 = "C_M";
    /// temperature factor
    temperature: f64 = "C_t";
    /// incising factor
    incising: f64 = "C_i";
    modulus "E′": Pressure as Stress = reference * wet * temperature * incising
}
rule! {
    /// Bending moment of a stress in the outermost fibre.
    FibreMoment, "nds-2018/moment", BENDING;
    /// stress
    stress: Pressure as Stress = "F_b′";
    /// elastic section modulus
    modulus: SectionModulus = "S";
    moment "M′": Moment = stress * modulus
}
rule! {
    /// Shear force of a greatest shear stress in a rectangle.
    RectangleShear, "nds-2018/shear", SHEAR;
    /// stress
    stress: Pressure as Stress = "F_v′";
    /// area
    area: Area = "b d";
    shear "V′": Force = 2.0 / 3.0 * stress * area
}
rule! {
    /// Bending stress by load and resistance factors.
    FactoredBending, "nds-2018/lrfd-bending-stress", LRFD;
    /// reference design value
    reference: Pressure as Stress = "F_b";
    /// product of the factors of wet service, temperature, stability, size, flat use, incising and repetitive use
    factors: f64 as Coefficient = "ΠC";
    /// format conversion factor
    conversion: f64 = "K_F";
    /// resistance factor
    resistance: f64 = "φ";
    /// time effect factor
    time: f64 = "λ";
    stress "F_b′": Pressure as Stress = reference * factors * conversion * resistance * time
}
rule! {
    /// Shear stress by load and resistance factors.
    FactoredShear, "nds-2018/lrfd-shear-stress", LRFD;
    /// reference design value
    reference: Pressure as Stress = "F_v";
    /// product of the factors of wet service, temperature and incising
    factors: f64 as Coefficient = "ΠC";
    /// format conversion factor
    conversion: f64 = "K_F";
    /// resistance factor
    resistance: f64 = "φ";
    /// time effect factor
    time: f64 = "λ";
    stress "F_v′": Pressure as Stress = reference * factors * conversion * resistance * time
}

/// The rules of this edition by name.
pub const RULES: &[Listed] = &[
    Listed::of::<SizeFactor>(),
    Listed::of::<AllowableBending>(),
    Listed::of::<AllowableShearStress>(),
    Listed::of::<AdjustedElastic>(),
    Listed::of::<FibreMoment>(),
    Listed::of::<RectangleShear>(),
    Listed::of::<FactoredBending>(),
    Listed::of::<FactoredShear>(),
];

/// The table of the Supplement that a reference value stands in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SizeClass {
    /// Table 4A, dimension lumber; here of 4 in thickness only.
    Dimension,
    /// Table 4B, Southern Pine dimension lumber; here 4 in thick and 2 to 4 in wide only.
    SouthernPine,
    /// Table 4D, posts and timbers, 5 by 5 in and larger.
    PostsAndTimbers,
}

impl SizeClass {
    fn of_key(key: &str) -> Option<Self> {
        match key {
            "4a" => Some(Self::Dimension),
            "4b" => Some(Self::SouthernPine),
            "4d" => Some(Self::PostsAndTimbers),
            _ => None,
        }
    }
}

/// Reference design values of a species and grade.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReferenceValues {
    /// Bending, F_b.
    pub bending: Pressure,
    /// Shear along the grain, F_v.
    pub shear: Pressure,
    /// Modulus of elasticity, E.
    pub elastic: Pressure,
    /// Modulus of elasticity for stability, E_min.
    pub elastic_min: Pressure,
    /// The table they stand in.
    pub class: SizeClass,
}

/// One row of the catalogue.
#[derive(Debug, Clone, PartialEq)]
pub struct Timber {
    /// Species.
    pub species: String,
    /// Grade.
    pub grade: String,
    /// Its values.
    pub values: ReferenceValues,
    /// How well they are known.
    pub known: String,
}

static TIMBERS: LazyLock<Vec<Timber>> = LazyLock::new(|| {
    let read = || -> Result<Vec<Timber>, CatalogueError> {
        let catalogue = Catalogue::read(include_str!("catalogue/nds-supplement-2018.csv"))?;
        let mut timbers = Vec::new();
        for row in &catalogue.rows {
            let stress = |column| {
                let (number, unit) = row.quantity(column)?;
                Ok(Pressure::from_si(Unit::in_si(number, unit, Dimension::Pressure).unwrap_or(f64::NAN)))
            };
            let class = row.text("class")?;
            timbers.push(Timber {
                species: row.text("species")?.to_owned(),
                grade: row.text("grade")?.to_owned(),
                values: ReferenceValues {
                    bending: stress("bending_psi")?,
                    shear: stress("shear_psi")?,
                    elastic: stress("elastic_psi")?,
                    elastic_min: stress("elastic_min_psi")?,
                    class: SizeClass::of_key(class)
                        .ok_or_else(|| CatalogueError::Row(format!("no class is called {class}")))?,
                },
                known: row.text("known")?.to_owned(),
            });
        }
        Ok(timbers)
    };
    read().expect("the catalogue in the program is read by a test")
});

/// Every timber of the catalogue.
#[must_use]
pub fn timbers() -> &'static [Timber] {
    &TIMBERS
}

/// The timber of a species and grade that a post of this size is graded by: 5 by 5 in and larger as posts and
/// timbers, less than that as dimension lumber.
#[must_use]
pub fn timber(species: &str, grade: &str, post: TimberPost) -> Option<&'static Timber> {
    let large = post.breadth().min(post.depth()) >= LEAST_TIMBER;
    timbers().iter().find(|timber| {
        timber.species == species
            && timber.grade == grade
            && (timber.values.class == SizeClass::PostsAndTimbers) == large
    })
}

/// The dressed size of 5 in, from which a post is a timber.
const LEAST_TIMBER: Length = inches(4.5);
/// The greatest size of 4 in, rough or dressed.
const GREATEST_LUMBER: Length = inches(4.0);
/// Below it a piece is called 3 in thick, whose size factors are others.
const LEAST_LUMBER: Length = inches(3.0);

/// Whether a post stands wet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Service {
    /// No more than 19 % moisture over time.
    Dry,
    /// More than that: in the ground, in concrete, in the open where it does not dry.
    Wet,
}

/// A timber post and what is known of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TimberInService {
    /// Its sizes.
    pub post: TimberPost,
    /// Its reference values.
    pub values: ReferenceValues,
    /// Whether it stands wet.
    pub service: Service,
    /// Whether it was incised for treatment.
    pub incised: bool,
    /// Load duration factor; [`WIND_DURATION`] for wind.
    pub duration: Stated<f64>,
}

/// The factors on bending that do not depend on the format.
#[derive(Debug, Clone, Copy)]
struct BendingFactors {
    wet: f64,
    temperature: f64,
    stability: f64,
    size: f64,
    flat: f64,
    incising: f64,
    repetitive: f64,
}

impl TimberInService {
    /// The size factor of bending.
    ///
    /// # Range
    /// Table 4A: 4 in thick. Table 4B: 4 in thick and wide. Table 4D: 5 by 5 in and larger, no more than 2 in
    /// deeper or broader than the other side.
    ///
    /// # Errors
    /// If the post is not of the sizes its table is for.
    pub fn size_factor(&self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let (least, greatest) = {
            let (breadth, depth) = (self.post.breadth(), self.post.depth());
            (breadth.min(depth), breadth.max(depth))
        };
        match self.values.class {
            SizeClass::Dimension => {
                within("thickness", SIZE_4A, least, LEAST_LUMBER, GREATEST_LUMBER)?;
                let stated = DIMENSION_SIZES
                    .iter()
                    .find(|(to, _)| greatest <= *to)
                    .map_or(DIMENSION_BEYOND, |(_, stated)| *stated);
                Ok(ledger.judge("C_F", stated))
            }
            SizeClass::SouthernPine => {
                within("thickness", SIZE_4B, least, LEAST_LUMBER, GREATEST_LUMBER)?;
                within("width", SIZE_4B, greatest, LEAST_LUMBER, GREATEST_LUMBER)?;
                Ok(ledger.judge("C_F", SIZE_IN_VALUE))
            }
            SizeClass::PostsAndTimbers => {
                within("thickness", SIZE_4D, least, LEAST_TIMBER, Length::from_si(f64::MAX))?;
                within("width over thickness", SIZE_4D, greatest - least, Length::from_si(0.0), inches(2.0))?;
                let (foot, depth) = (inches(12.0), self.post.depth());
                if depth <= foot {
                    return Ok(ledger.judge("C_F", SIZE_TO_A_FOOT));
                }
                Ok(SizeFactor { foot, depth }.work(ledger))
            }
        }
    }

    fn bending_factors(&self, ledger: &mut impl Ledger) -> Result<BendingFactors, OutOfRange> {
        let (breadth, depth) = (self.post.breadth(), self.post.depth());
        let size = self.size_factor(ledger)?;
        within("depth over breadth", SLENDER, (depth / breadth).pure(), 0.0, 2.0)?;
        let wet = match (self.service, self.values.class) {
            (Service::Dry, _) => DRY,
            (Service::Wet, SizeClass::PostsAndTimbers) => WET_TIMBER,
            (Service::Wet, _) if self.values.bending * size <= ksi(1.150) => WET_WEAK,
            (Service::Wet, _) => WET_BENDING,
        };
        Ok(BendingFactors {
            wet: ledger.judge("C_M", wet),
            temperature: ledger.judge("C_t", ORDINARY_TEMPERATURE),
            stability: ledger.judge("C_L", if depth <= breadth { SQUARE_IS_STABLE } else { DEPTH_IS_STABLE }),
            size,
            flat: ledger.judge("C_fu", NOT_FLAT),
            incising: ledger.judge("C_i", if self.incised { INCISED } else { NOT_INCISED }),
            repetitive: ledger.judge("C_r", ALONE),
        })
    }

    /// Wet service, temperature and incising on shear.
    fn shear_factors(&self, ledger: &mut impl Ledger) -> (f64, f64, f64) {
        let wet = match (self.service, self.values.class) {
            (Service::Dry, _) => DRY,
            (Service::Wet, SizeClass::PostsAndTimbers) => WET_TIMBER_BESIDE,
            (Service::Wet, _) => WET_SHEAR,
        };
        (
            ledger.judge("C_M", wet),
            ledger.judge("C_t", ORDINARY_TEMPERATURE),
            ledger.judge("C_i", if self.incised { INCISED } else { NOT_INCISED }),
        )
    }

    /// Bending stress allowed.
    ///
    /// # Errors
    /// If the post is not of the sizes its table is for, or more than twice as deep as broad.
    pub fn allowable_bending_stress(&self, ledger: &mut impl Ledger) -> Result<Pressure, OutOfRange> {
        let duration = ledger.judge("C_D", self.duration);
        let BendingFactors { wet, temperature, stability, size, flat, incising, repetitive } =
            self.bending_factors(ledger)?;
        let reference = self.values.bending;
        Ok(AllowableBending {
            reference,
            duration,
            wet,
            temperature,
            stability,
            size,
            flat,
            incising,
            repetitive,
        }
        .work(ledger))
    }

    /// Bending moment allowed, to be held against service load (0.6 W).
    ///
    /// # Errors
    /// As for [`Self::allowable_bending_stress`].
    pub fn allowable_moment(&self, ledger: &mut impl Ledger) -> Result<Moment, OutOfRange> {
        let stress = self.allowable_bending_stress(ledger)?;
        Ok(FibreMoment { stress, modulus: self.post.elastic_modulus(ledger) }.work(ledger))
    }

    /// Shear force allowed, to be held against service load (0.6 W).
    pub fn allowable_shear(&self, ledger: &mut impl Ledger) -> Force {
        let duration = ledger.judge("C_D", self.duration);
        let (wet, temperature, incising) = self.shear_factors(ledger);
        let reference = self.values.shear;
        let stress = AllowableShearStress { reference, duration, wet, temperature, incising }.work(ledger);
        RectangleShear { stress, area: self.post.area(ledger) }.work(ledger)
    }

    /// Bending moment by load and resistance factors under wind, to be held against factored load (1.0 W). It lies
    /// 23 % from what the allowable moment makes of 0.6 W, to the strict side.
    ///
    /// # Errors
    /// As for [`Self::allowable_bending_stress`].
    pub fn design_moment(&self, ledger: &mut impl Ledger) -> Result<Moment, OutOfRange> {
        let BendingFactors { wet, temperature, stability, size, flat, incising, repetitive } =
            self.bending_factors(ledger)?;
        let stress = FactoredBending {
            reference: self.values.bending,
            factors: wet * temperature * stability * size * flat * incising * repetitive,
            conversion: ledger.judge("K_F", CONVERSION_BENDING),
            resistance: ledger.judge("φ", RESISTANCE_BENDING),
            time: ledger.judge("λ", TIME_EFFECT),
        }
        .work(ledger);
        Ok(FibreMoment { stress, modulus: self.post.elastic_modulus(ledger) }.work(ledger))
    }

    /// Shear force by load and resistance factors under wind, to be held against factored load (1.0 W).
    pub fn design_shear(&self, ledger: &mut impl Ledger) -> Force {
        let (wet, temperature, incising) = self.shear_factors(ledger);
        let stress = FactoredShear {
            reference: self.values.shear,
            factors: wet * temperature * incising,
            conversion: ledger.judge("K_F", CONVERSION_SHEAR),
            resistance: ledger.judge("φ", RESISTANCE_SHEAR),
            time: ledger.judge("λ", TIME_EFFECT),
        }
        .work(ledger);
        RectangleShear { stress, area: self.post.area(ledger) }.work(ledger)
    }

    /// Modulus of elasticity as it is worked.
    pub fn elastic_modulus(&self, ledger: &mut impl Ledger) -> Pressure {
        let wet = match (self.service, self.values.class) {
            (Service::Dry, _) => DRY,
            (Service::Wet, SizeClass::PostsAndTimbers) => WET_TIMBER_BESIDE,
            (Service::Wet, _) => WET_ELASTIC,
        };
        AdjustedElastic {
            reference: self.values.elastic,
            wet: ledger.judge("C_M", wet),
            temperature: ledger.judge("C_t", ORDINARY_TEMPERATURE),
            incising: ledger.judge("C_i", if self.incised { INCISED_ELASTIC } else { NOT_INCISED }),
        }
        .work(ledger)
    }
}

/// Size factors of Table 4A for bending, 4 in thick, by the greatest width they stand for; 1.5 was seen for 4x4 and
/// 1.3 for 4x8.
const DIMENSION_SIZES: [(Length, Stated<f64>); 6] = [
    (inches(4.0), Stated { value: 1.5, because: "NDS 2018 Supplement, Table 4A: 4 in thick, to 4 in wide" }),
    (
        inches(5.0),
        Stated { value: 1.4, because: "NDS 2018 Supplement, Table 4A: 4 in thick, 5 in wide (from memory)" },
    ),
    (
        inches(6.0),
        Stated { value: 1.3, because: "NDS 2018 Supplement, Table 4A: 4 in thick, 6 in wide (from memory)" },
    ),
    (inches(8.0), Stated { value: 1.3, because: "NDS 2018 Supplement, Table 4A: 4 in thick, 8 in wide" }),
    (
        inches(10.0),
        Stated { value: 1.2, because: "NDS 2018 Supplement, Table 4A: 4 in thick, 10 in wide (from memory)" },
    ),
    (
        inches(12.0),
        Stated { value: 1.1, because: "NDS 2018 Supplement, Table 4A: 4 in thick, 12 in wide (from memory)" },
    ),
];
const DIMENSION_BEYOND: Stated<f64> = Stated {
    value: 1.0,
    because: "NDS 2018 Supplement, Table 4A: 4 in thick, 14 in wide or more (from memory)",
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::member::timber::TimberSizes;
    use crate::units::{pound_feet, pounds};
    use crate::workings::{Blank, Entry};
    use proptest::prelude::*;

    fn of(species: &str, grade: &str, name: &str, service: Service, incised: bool) -> TimberInService {
        let post = TimberPost::dressed(name).unwrap();
        let values = timber(species, grade, post).unwrap().values;
        TimberInService { post, values, service, incised, duration: WIND_DURATION }
    }

    fn pound_inches(moment: Moment) -> f64 {
        (moment / pound_feet(1.0)).pure() * 12.0
    }

    #[test]
    fn the_catalogue_reads_whole_and_each_row_says_how_it_is_known() {
        assert_eq!(timbers().len(), 12);
        for timber in timbers() {
            let ReferenceValues { bending, shear, elastic, elastic_min, class } = timber.values;
            for (value, least, greatest) in [
                (bending, 0.7, 2.4),
                (shear, 0.15, 0.2),
                (elastic, 1100.0, 2000.0),
                (elastic_min, 400.0, 700.0),
            ] {
                assert!(value >= ksi(least) && value <= ksi(greatest), "{timber:?}");
            }
            assert!(!timber.known.is_empty(), "{timber:?}");
            let southern = timber.species == "Southern Pine";
            assert!(class == SizeClass::PostsAndTimbers || (class == SizeClass::SouthernPine) == southern);
        }
    }

    /// NDS Appendix D: E_min is 1.03 E (1 − 1.645 × 0.25) / 1.66, rounded as the tables round.
    #[test]
    fn the_least_modulus_of_each_row_follows_from_its_mean() {
        for timber in timbers() {
            let worked = timber.values.elastic * 1.03 * (1.0 - 1.645 * 0.25) / 1.66;
            let off = ((worked - timber.values.elastic_min) / ksi(1.0)).pure().abs();
            assert!(off < 8.0, "{timber:?}: {off}");
        }
    }

    /// By hand: 1100 × 1.6 × 7.146, 900 × 1.5 × 0.85 × 1.6 × 7.146, 850 × 1.6 × 27.73, 750 × 1.6 × 27.73, and 0.8
    /// of it incised.
    #[test]
    fn allowable_moments_of_the_usual_posts() {
        use Service::{Dry, Wet};
        for (species, grade, name, service, incised, by_hand) in [
            ("Southern Pine", "No.2", "4x4", Wet, false, 12_577.0),
            ("Douglas Fir-Larch", "No.2", "4x4", Wet, false, 13_120.0),
            ("Douglas Fir-Larch", "No.2", "4x4", Wet, true, 10_496.0),
            ("Douglas Fir-Larch", "No.2", "4x4", Dry, false, 15_435.0),
            ("Southern Pine", "No.2", "6x6", Wet, false, 37_712.0),
            ("Douglas Fir-Larch", "No.2", "6x6", Wet, false, 33_275.0),
            ("Douglas Fir-Larch", "No.2", "6x6", Wet, true, 26_620.0),
        ] {
            let moment = of(species, grade, name, service, incised).allowable_moment(&mut Blank).unwrap();
            assert!((pound_inches(moment) / by_hand - 1.0).abs() < 1e-4, "{species} {name}: {moment:?}");
        }
    }

    #[test]
    fn shear_is_two_thirds_of_the_stress_over_the_section() {
        // 2/3 × 175 × 1.6 × 0.97 × 3.5².
        let shear = of("Southern Pine", "No.2", "4x4", Service::Wet, false).allowable_shear(&mut Blank);
        assert!(((shear / pounds(1.0)).pure() - 2_218.0).abs() < 1.0, "{shear:?}");
        let timber = of("Southern Pine", "No.2", "6x6", Service::Wet, false).allowable_shear(&mut Blank);
        assert!(((timber / pounds(1.0)).pure() - 2.0 / 3.0 * 165.0 * 1.6 * 30.25).abs() < 0.1);
    }

    #[test]
    fn the_two_formats_lie_twenty_three_per_cent_apart_under_wind() {
        // Whatever the factors of the timber are: every one of them stands in both formats.
        for post in [
            of("Southern Pine", "No.2", "6x6", Service::Wet, false),
            of("Douglas Fir-Larch", "No.2", "4x4", Service::Wet, true),
            of("Douglas Fir-Larch", "No.2", "6x6", Service::Wet, true),
        ] {
            let allowable = post.allowable_moment(&mut Blank).unwrap() / 0.6;
            let apart = (allowable / post.design_moment(&mut Blank).unwrap()).pure();
            assert!((apart - 1.235).abs() < 5e-4, "{apart}");
            let shear = (post.allowable_shear(&mut Blank) / 0.6 / post.design_shear(&mut Blank)).pure();
            assert!((shear - 1.235).abs() < 5e-4, "{shear}");
        }
    }

    #[test]
    fn every_factor_is_written_down_as_a_judgement_with_its_place() {
        let mut ledger: Vec<Entry> = Vec::new();
        of("Douglas Fir-Larch", "No.1", "4x4", Service::Wet, true).allowable_moment(&mut ledger).unwrap();
        let judged: Vec<_> = ledger
            .iter()
            .filter_map(|entry| match entry {
                Entry::Judged { symbol, because, .. } => Some((*symbol, because.contains("NDS 2018"))),
                _ => None,
            })
            .collect();
        assert_eq!(
            judged,
            ["C_D", "C_F", "C_M", "C_t", "C_L", "C_fu", "C_i", "C_r"].map(|symbol| (symbol, true))
        );
    }

    #[test]
    fn wet_weakens_strong_lumber_only_and_never_timbers() {
        let ratio = |grade: &str, name: &str| {
            let moment = |service| {
                of("Southern Pine", grade, name, service, false).allowable_moment(&mut Blank).unwrap()
            };
            (moment(Service::Wet) / moment(Service::Dry)).pure()
        };
        assert!((ratio("No.1", "4x4") - 0.85).abs() < 1e-12);
        assert_eq!(ratio("No.2", "4x4"), 1.0);
        assert_eq!(ratio("No.1", "6x6"), 1.0);
    }

    #[test]
    fn stiffness_loses_a_tenth_wet_and_a_twentieth_incised() {
        let elastic = |service, incised| {
            let post = of("Douglas Fir-Larch", "No.2", "4x4", service, incised);
            (post.elastic_modulus(&mut Blank) / post.values.elastic).pure()
        };
        assert!((elastic(Service::Wet, true) - 0.9 * 0.95).abs() < 1e-12);
        assert_eq!(elastic(Service::Dry, false), 1.0);
    }

    #[test]
    fn sizes_a_table_is_not_for_are_refused() {
        let with = |species: &str, name: &str, breadth: f64, depth: f64| {
            let sizes = TimberSizes { breadth: inches(breadth), depth: inches(depth) };
            let post = TimberPost::try_new(sizes).unwrap();
            TimberInService { post, ..of(species, "No.2", name, Service::Dry, false) }
                .allowable_moment(&mut Blank)
                .map_err(|error| error.to_string())
        };
        assert!(with("Douglas Fir-Larch", "4x4", 3.5, 5.5).is_ok());
        for (species, name, breadth, depth, told) in [
            ("Douglas Fir-Larch", "4x4", 1.5, 3.5, "Table 4A"),
            ("Douglas Fir-Larch", "4x4", 5.5, 5.5, "Table 4A"),
            ("Douglas Fir-Larch", "4x4", 3.5, 7.25, "4.4.1.2"),
            ("Southern Pine", "4x4", 3.5, 5.5, "Table 4B"),
            ("Southern Pine", "6x6", 3.5, 3.5, "Table 4D"),
            ("Southern Pine", "6x6", 5.5, 9.5, "Table 4D"),
        ] {
            let error = with(species, name, breadth, depth).unwrap_err();
            assert!(error.contains(told), "{error}");
        }
    }

    proptest! {
        #[test]
        fn a_deeper_timber_never_carries_less(side in 4.5..16.0_f64, more in 0.01..0.5_f64) {
            let moment = |side: f64| {
                let post = TimberPost::try_new(TimberSizes { breadth: inches(side), depth: inches(side) }).unwrap();
                TimberInService { post, ..of("Southern Pine", "No.2", "6x6", Service::Wet, false) }
                    .allowable_moment(&mut Blank)
                    .unwrap()
            };
            prop_assert!(moment(side + more) > moment(side));
        }
    }
}
