//! Round tube: from girth to diameter, rust, and section properties.

use crate::rule;
use crate::source::{Clause, Document, STATICS, Seen};
use crate::units::{
    Area, Length, LineLoad, Measure, Powers, PressurePerDepth, Quantity, SecondMoment, SectionModulus,
    System, Value,
};
use crate::workings::{Ledger, Listed, OutOfRange, within};
use std::f64::consts::PI;
use std::fmt;

static GEOMETRY: Document =
    Document { short: "geometry", title: "Geometry of the circle and the round tube", seen: Seen::FirstHand };
const ROUND_TUBE: Clause = GEOMETRY.at("round tube");

rule! {
    /// Diameter from a tape round the post.
    GirthDiameter, "section/girth-diameter", GEOMETRY.at("circle");
    /// girth
    girth: Length as Small = "g";
    diameter "D": Length as Small = girth / PI
}
rule! {
    /// Diameter left when rust has taken a thickness off the outside.
    RustedDiameter, "section/rusted-diameter", STATICS.at("rust off the outside");
    /// diameter as made
    diameter: Length as Small = "D_0";
    /// thickness lost to rust
    rust: Length as Small = "r";
    left "D": Length as Small = diameter - 2.0 * rust
}
rule! {
    /// Wall left when rust has taken a thickness off the outside.
    RustedWall, "section/rusted-wall", STATICS.at("rust off the outside");
    /// wall as made
    wall: Length as Small = "t_0";
    /// thickness lost to rust
    rust: Length as Small = "r";
    left "t": Length as Small = wall - rust
}
rule! {
    /// Width left when rust has taken a thickness off the outside of a square tube.
    RustedWidth, "section/rusted-width", STATICS.at("rust off the outside");
    /// width as made
    width: Length as Small = "B_0";
    /// thickness lost to rust
    rust: Length as Small = "r";
    left "B": Length as Small = width - 2.0 * rust
}
rule! {
    /// Inner diameter of a round tube.
    InnerDiameter, "section/tube-inner-diameter", GEOMETRY.at("round tube");
    /// outside diameter
    diameter: Length as Small = "D";
    /// wall
    wall: Length as Small = "t";
    inner "d": Length as Small = diameter - 2.0 * wall
}
rule! {
    /// Area of a round tube.
    SectionArea, "section/tube-area", GEOMETRY.at("round tube");
    /// outside diameter
    diameter: Length as Small = "D";
    /// inner diameter
    inner: Length as Small = "d";
    area "A": Area = PI / 4.0 * (diameter.squared() - inner.squared())
}
rule! {
    /// Weight of a round tube, plain and bare, for each length.
    TubeWeight, "section/tube-weight", GEOMETRY.at("round tube");
    /// outside diameter
    diameter: Length as Small = "D";
    /// wall
    wall: Length as Small = "t";
    /// weight of the steel for each volume
    unit_weight: PressurePerDepth = "γ";
    weight "w": LineLoad = unit_weight * PI * (diameter - wall) * wall
}
rule! {
    /// Second moment of area of a round tube.
    SecondMomentOfArea, "section/tube-second-moment", GEOMETRY.at("round tube");
    /// outside diameter
    diameter: Length as Small = "D";
    /// inner diameter
    inner: Length as Small = "d";
    second_moment "I": SecondMoment = PI / 64.0 * (diameter.to_the_fourth() - inner.to_the_fourth())
}
rule! {
    /// Elastic section modulus of a round tube.
    ElasticModulus, "section/tube-elastic-modulus", GEOMETRY.at("round tube");
    /// outside diameter
    diameter: Length as Small = "D";
    /// inner diameter
    inner: Length as Small = "d";
    modulus "S": SectionModulus = PI / 32.0 * (diameter.to_the_fourth() - inner.to_the_fourth()) / diameter
}
rule! {
    /// Plastic section modulus of a round tube.
    PlasticModulus, "section/tube-plastic-modulus", GEOMETRY.at("round tube");
    /// outside diameter
    diameter: Length as Small = "D";
    /// inner diameter
    inner: Length as Small = "d";
    modulus "Z": SectionModulus = (diameter.cubed() - inner.cubed()) / 6.0
}
rule! {
    /// Radius of gyration of a round tube.
    RadiusOfGyration, "section/tube-radius-of-gyration", GEOMETRY.at("round tube");
    /// outside diameter
    diameter: Length as Small = "D";
    /// inner diameter
    inner: Length as Small = "d";
    radius "r": Length as Small = (diameter.squared() + inner.squared()).sqrt() / 4.0
}
rule! {
    /// Torsional constant of a round tube.
    TorsionalConstant, "section/tube-torsional-constant", GEOMETRY.at("round tube");
    /// outside diameter
    diameter: Length as Small = "D";
    /// inner diameter
    inner: Length as Small = "d";
    constant "J": SecondMoment = PI / 32.0 * (diameter.to_the_fourth() - inner.to_the_fourth())
}
rule! {
    /// Torsional section modulus of a round tube.
    TorsionalModulus, "section/tube-torsional-modulus", GEOMETRY.at("round tube");
    /// torsional constant
    constant: SecondMoment = "J";
    /// outside diameter
    diameter: Length as Small = "D";
    modulus "C": SectionModulus = constant / (diameter / 2.0)
}

rule! {
    /// Every section property of a round tube from its diameter and wall, the plastic modulus last.
    TubeSection, "section/round-tube", ROUND_TUBE;
    /// outside diameter
    diameter: Length as Small = "D";
    /// wall
    wall: Length as Small = "t";
    modulus "Z": SectionModulus
}
impl TubeSection {
    /// Works area, second moment, elastic modulus, radius of gyration, torsional and plastic modulus in turn.
    ///
    /// # Errors
    /// If the sizes are no tube: a wall not above 0 or thicker than the radius.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<SectionModulus, OutOfRange> {
        let Self { diameter, wall } = self;
        let (least, greatest) = (Length::from_si(f64::MIN_POSITIVE), Length::from_si(f64::MAX));
        within("diameter", ROUND_TUBE, diameter, least, greatest)?;
        within("wall", ROUND_TUBE, wall, least, diameter / 2.0)?;
        let inner = InnerDiameter { diameter, wall }.work(ledger);
        let _ = SectionArea { diameter, inner }.work(ledger);
        let _ = SecondMomentOfArea { diameter, inner }.work(ledger);
        let _ = ElasticModulus { diameter, inner }.work(ledger);
        let _ = RadiusOfGyration { diameter, inner }.work(ledger);
        let constant = TorsionalConstant { diameter, inner }.work(ledger);
        let _ = TorsionalModulus { constant, diameter }.work(ledger);
        let plastic = PlasticModulus { diameter, inner }.work(ledger);
        Ok(self.keep(ledger, plastic))
    }
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<GirthDiameter>(),
    Listed::of::<RustedDiameter>(),
    Listed::of::<RustedWall>(),
    Listed::of::<RustedWidth>(),
    Listed::of::<InnerDiameter>(),
    Listed::of::<SectionArea>(),
    Listed::of::<TubeWeight>(),
    Listed::of::<SecondMomentOfArea>(),
    Listed::of::<ElasticModulus>(),
    Listed::of::<PlasticModulus>(),
    Listed::of::<RadiusOfGyration>(),
    Listed::of::<TorsionalConstant>(),
    Listed::of::<TorsionalModulus>(),
    Listed::of::<TubeSection>(),
];

/// Why a tube cannot be.
#[derive(Debug, Clone, PartialEq)]
pub enum MemberError {
    /// A size that is not above 0.
    NotPositive {
        /// Which.
        what: &'static str,
        /// Its value in metres.
        metres: f64,
    },
    /// A wall thicker than the radius.
    WallTooThick {
        /// The wall.
        wall: Length,
        /// The outside diameter.
        diameter: Length,
    },
    /// A wall thicker than half the width of a square tube.
    SquareWallTooThick {
        /// The wall.
        wall: Length,
        /// The outside width.
        width: Length,
    },
    /// Corners that are below 0 or do not fit in a square tube.
    CornerDoesNotFit {
        /// The outer corner radius.
        corner: Length,
        /// The outside width.
        width: Length,
        /// Whether the radius was assumed from the wall.
        assumed: bool,
    },
    /// Nothing is left of the wall.
    RustedThrough {
        /// The wall before.
        wall: Length,
        /// What rust has taken.
        rust: Length,
    },
}

impl fmt::Display for MemberError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let small = |length: Length| Value::new(length, Measure::Small).written(System::Us);
        match self {
            Self::NotPositive { what, metres } => {
                write!(f, "the {what} is {}: it must be above 0", small(Length::from_si(*metres)))
            }
            Self::WallTooThick { wall, diameter } => write!(
                f,
                "a wall of {} does not fit in a tube of {}: it can be half of it at most",
                small(*wall),
                small(*diameter)
            ),
            Self::SquareWallTooThick { wall, width } => write!(
                f,
                "a wall of {} does not fit in a square tube of {}: it can be half of it at most",
                small(*wall),
                small(*width)
            ),
            Self::CornerDoesNotFit { corner, width, assumed } => write!(
                f,
                "an outer corner radius of {} does not fit in a square tube of {}: it can be from 0 to half of it{}",
                small(*corner),
                small(*width),
                if *assumed {
                    "; it was taken as twice the wall, so give the radius or measure the wall again"
                } else {
                    ""
                }
            ),
            Self::RustedThrough { wall, rust } => write!(
                f,
                "rust of {} leaves nothing of a wall of {}: a post rusted through carries nothing",
                small(*rust),
                small(*wall)
            ),
        }
    }
}

impl std::error::Error for MemberError {}

/// A round tube as it is worked: the wall is the one strength is reckoned with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoundTube {
    diameter: Length,
    wall: Length,
}

/// The sizes a tube is made from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TubeSizes {
    /// Outside diameter.
    pub diameter: Length,
    /// Wall that strength is reckoned with.
    pub wall: Length,
}

impl RoundTube {
    /// A tube of these sizes.
    ///
    /// # Errors
    /// If a size is not above 0 or the wall is thicker than the radius.
    pub fn try_new(sizes: TubeSizes) -> Result<Self, MemberError> {
        let TubeSizes { diameter, wall } = sizes;
        for (what, length) in [("diameter", diameter), ("wall", wall)] {
            if length.si().is_nan() || length.si() <= 0.0 {
                return Err(MemberError::NotPositive { what, metres: length.si() });
            }
        }
        if wall * 2.0 > diameter {
            return Err(MemberError::WallTooThick { wall, diameter });
        }
        Ok(Self { diameter, wall })
    }

    /// What is left when rust has taken a thickness off the outside.
    ///
    /// # Errors
    /// If nothing is left.
    pub fn rusted(self, rust: Length, ledger: &mut impl Ledger) -> Result<Self, MemberError> {
        if rust.si() <= 0.0 {
            return Ok(self);
        }
        if rust >= self.wall {
            return Err(MemberError::RustedThrough { wall: self.wall, rust });
        }
        let diameter = RustedDiameter { diameter: self.diameter, rust }.work(ledger);
        let wall = RustedWall { wall: self.wall, rust }.work(ledger);
        Ok(Self { diameter, wall })
    }

    /// Outside diameter.
    #[must_use]
    pub const fn diameter(self) -> Length {
        self.diameter
    }
    /// Wall.
    #[must_use]
    pub const fn wall(self) -> Length {
        self.wall
    }
    /// Inner diameter.
    pub fn inner(self, ledger: &mut impl Ledger) -> Length {
        InnerDiameter { diameter: self.diameter, wall: self.wall }.work(ledger)
    }
    /// Area.
    pub fn area(self, ledger: &mut impl Ledger) -> Area {
        SectionArea { diameter: self.diameter, inner: self.inner(ledger) }.work(ledger)
    }
    /// Elastic modulus.
    pub fn elastic_modulus(self, ledger: &mut impl Ledger) -> SectionModulus {
        ElasticModulus { diameter: self.diameter, inner: self.inner(ledger) }.work(ledger)
    }
    /// Plastic modulus.
    pub fn plastic_modulus(self, ledger: &mut impl Ledger) -> SectionModulus {
        PlasticModulus { diameter: self.diameter, inner: self.inner(ledger) }.work(ledger)
    }
    /// Second moment of area.
    pub fn second_moment(self, ledger: &mut impl Ledger) -> SecondMoment {
        SecondMomentOfArea { diameter: self.diameter, inner: self.inner(ledger) }.work(ledger)
    }
    /// Radius of gyration.
    pub fn radius_of_gyration(self, ledger: &mut impl Ledger) -> Length {
        RadiusOfGyration { diameter: self.diameter, inner: self.inner(ledger) }.work(ledger)
    }
    /// Torsional constant.
    pub fn torsional_constant(self, ledger: &mut impl Ledger) -> SecondMoment {
        TorsionalConstant { diameter: self.diameter, inner: self.inner(ledger) }.work(ledger)
    }
    /// Torsional modulus, 2 J/D.
    pub fn torsional_modulus(self, ledger: &mut impl Ledger) -> SectionModulus {
        let constant = self.torsional_constant(ledger);
        TorsionalModulus { constant, diameter: self.diameter }.work(ledger)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::inches;
    use crate::workings::Blank;
    use proptest::prelude::*;

    fn tube(diameter: f64, wall: f64) -> Result<RoundTube, MemberError> {
        RoundTube::try_new(TubeSizes { diameter: inches(diameter), wall: inches(wall) })
    }

    #[test]
    fn a_wall_thicker_than_the_radius_and_sizes_not_above_nought_are_refused() {
        assert!(matches!(tube(2.0, 1.01), Err(MemberError::WallTooThick { .. })));
        assert!(tube(2.0, 1.0).is_ok());
        assert!(matches!(tube(0.0, 0.1), Err(MemberError::NotPositive { .. })));
        assert!(matches!(tube(2.0, -0.1), Err(MemberError::NotPositive { .. })));
        assert!(matches!(tube(f64::NAN, 0.1), Err(MemberError::NotPositive { .. })));
        let rusted = tube(2.875, 0.2).unwrap().rusted(inches(0.2), &mut Blank);
        assert!(matches!(rusted, Err(MemberError::RustedThrough { .. })));
    }

    #[test]
    fn the_section_rule_refuses_what_is_no_tube() {
        let section = |d: f64, t: f64| TubeSection { diameter: inches(d), wall: inches(t) }.work(&mut Blank);
        assert!(section(2.0, 1.0).is_ok());
        for (diameter, wall) in
            [(2.0, 1.01), (2.0, 0.0), (0.0, 0.0), (-4.0, -1.0), (2.0, -0.1), (f64::NAN, 0.1)]
        {
            assert!(section(diameter, wall).is_err(), "{diameter} x {wall}");
        }
    }

    proptest! {
        /// A second way: sum of thin rings (area, second moment) and half-rings (plastic modulus).
        #[test]
        fn section_properties_agree_with_a_sum_over_rings(diameter in 1.0..9.0_f64, share in 0.02..1.0_f64) {
            let wall = diameter / 2.0 * share;
            let tube = tube(diameter, wall).unwrap();
            let (rings, inner) = (4000, diameter / 2.0 - wall);
            let step = wall / f64::from(rings);
            let (mut area, mut second, mut plastic) = (0.0, 0.0, 0.0);
            for ring in 0..rings {
                let radius = inner + (f64::from(ring) + 0.5) * step;
                area += 2.0 * PI * radius * step;
                second += PI * radius.powi(3) * step;
                plastic += 4.0 * radius * radius * step;
            }
            let inch = 0.0254_f64;
            let near = |ours: f64, theirs: f64| (ours / theirs - 1.0).abs() < 1e-5;
            prop_assert!(near(tube.area(&mut Blank).si() / inch.powi(2), area));
            prop_assert!(near(tube.plastic_modulus(&mut Blank).si() / inch.powi(3), plastic));
            prop_assert!(near(tube.elastic_modulus(&mut Blank).si() / inch.powi(3), second / (diameter / 2.0)));
        }

        #[test]
        fn more_rust_never_leaves_a_stronger_tube(wall in 0.05..0.4_f64, rust in 0.0..0.9_f64) {
            let tube = tube(2.875, wall).unwrap();
            let modulus = |share: f64| tube.rusted(inches(wall * share), &mut Blank).unwrap().plastic_modulus(&mut Blank);
            prop_assert!(modulus(rust) <= modulus(rust * 0.9));
        }
    }
}
