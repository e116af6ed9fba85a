//! Square tube: rust, and section properties with rounded corners.

use super::MemberError;
use crate::rule;
use crate::source::{Clause, Document, STATICS, Seen};
use crate::units::{Area, Length, Powers, Quantity, SecondMoment, SectionModulus};
use crate::workings::{Ledger, Listed, OutOfRange, within};
use std::f64::consts::PI;

static GEOMETRY: Document =
    Document { short: "geometry", title: "Geometry of the rounded square", seen: Seen::FirstHand };
static MANUAL: Document = Document {
    short: "AISC Manual",
    title: "AISC, Steel Construction Manual, 15th edition, Part 1: dimensions and properties of HSS",
    seen: Seen::Memory,
};
const ROUNDED_SQUARE: Clause = GEOMETRY.at("rounded square");
const SQUARE_TUBE: Clause = GEOMETRY.at("square tube");

rule! {
    /// Outer corner radius that section properties take where none was measured.
    ///
    /// # Checked by
    /// `section/aisc-shapes-v15-0-square-*.toml`: the listed areas and moduli come back with it.
    AssumedCorner, "section/square-tube-corner", MANUAL.at("Part 1, HSS");
    /// wall
    wall: Length as Small = "t";
    corner "r_o": Length as Small = 2.0 * wall
}
rule! {
    /// Corner radius left when rust has taken a thickness off the outside.
    RustedCorner, "section/rusted-corner", STATICS.at("rust off the outside");
    /// outer corner radius as made
    corner: Length as Small = "r_o0";
    /// thickness lost to rust
    rust: Length as Small = "r";
    left "r_o": Length as Small = corner - rust
}
rule! {
    /// Inner width of a square tube.
    InnerWidth, "section/square-tube-inner-width", SQUARE_TUBE;
    /// outside width
    width: Length as Small = "B";
    /// wall
    wall: Length as Small = "t";
    inner "B_i": Length as Small = width - 2.0 * wall
}
rule! {
    /// Inner corner radius of a square tube.
    InnerCorner, "section/square-tube-inner-corner", SQUARE_TUBE;
    /// outer corner radius
    corner: Length as Small = "r_o";
    /// wall
    wall: Length as Small = "t";
    inner "r_i": Length as Small = corner - wall
}
rule! {
    /// Straight part of the side of a rounded square.
    StraightSide, "section/rounded-square-straight-side", ROUNDED_SQUARE;
    /// side
    side: Length as Small = "a";
    /// corner radius
    radius: Length as Small = "r";
    straight "f": Length as Small = side - 2.0 * radius
}
rule! {
    /// Area of a rounded square.
    RoundedSquareArea, "section/rounded-square-area", ROUNDED_SQUARE;
    /// side
    side: Length as Small = "a";
    /// straight part of the side
    straight: Length as Small = "f";
    /// corner radius
    radius: Length as Small = "r";
    area "A_a": Area = side * straight + 2.0 * straight * radius + PI * radius.squared()
}
rule! {
    /// Second moment of area of a rounded square.
    RoundedSquareSecondMoment, "section/rounded-square-second-moment", ROUNDED_SQUARE;
    /// side
    side: Length as Small = "a";
    /// straight part of the side
    straight: Length as Small = "f";
    /// corner radius
    radius: Length as Small = "r";
    second_moment "I_a": SecondMoment = side * straight.cubed() / 12.0
        + straight * radius.cubed() / 6.0
        + straight * radius * (side - radius).squared() / 2.0
        + PI / 4.0 * radius.squared() * (radius.squared() + straight.squared())
        + 4.0 / 3.0 * radius.cubed() * straight
}
rule! {
    /// Plastic section modulus of a rounded square.
    RoundedSquarePlasticModulus, "section/rounded-square-plastic-modulus", ROUNDED_SQUARE;
    /// side
    side: Length as Small = "a";
    /// straight part of the side
    straight: Length as Small = "f";
    /// corner radius
    radius: Length as Small = "r";
    modulus "Z_a": SectionModulus = side * straight.squared() / 4.0
        + straight * radius * (side - radius)
        + PI / 2.0 * radius.squared() * straight
        + 4.0 / 3.0 * radius.cubed()
}
rule! {
    /// Area of a square tube.
    SquareTubeArea, "section/square-tube-area", SQUARE_TUBE;
    /// area within the outside
    outer: Area = "A_o";
    /// area within the inside
    inner: Area = "A_i";
    area "A": Area = outer - inner
}
rule! {
    /// Second moment of area of a square tube.
    SquareTubeSecondMoment, "section/square-tube-second-moment", SQUARE_TUBE;
    /// second moment of what lies within the outside
    outer: SecondMoment = "I_o";
    /// second moment of what lies within the inside
    inner: SecondMoment = "I_i";
    second_moment "I": SecondMoment = outer - inner
}
rule! {
    /// Elastic section modulus of a square tube.
    SquareTubeElasticModulus, "section/square-tube-elastic-modulus", SQUARE_TUBE;
    /// second moment of area
    second_moment: SecondMoment = "I";
    /// outside width
    width: Length as Small = "B";
    modulus "S": SectionModulus = 2.0 * second_moment / width
}
rule! {
    /// Plastic section modulus of a square tube.
    SquareTubePlasticModulus, "section/square-tube-plastic-modulus", SQUARE_TUBE;
    /// plastic modulus of what lies within the outside
    outer: SectionModulus = "Z_o";
    /// plastic modulus of what lies within the inside
    inner: SectionModulus = "Z_i";
    modulus "Z": SectionModulus = outer - inner
}
rule! {
    /// Radius of gyration of a square tube.
    SquareTubeRadiusOfGyration, "section/square-tube-radius-of-gyration", SQUARE_TUBE;
    /// second moment of area
    second_moment: SecondMoment = "I";
    /// area
    area: Area = "A";
    radius "r": Length as Small = (second_moment / area).sqrt()
}
rule! {
    /// Width of a square tube to the middle of its wall.
    MidlineWidth, "section/square-tube-midline-width", SQUARE_TUBE;
    /// outside width
    width: Length as Small = "B";
    /// wall
    wall: Length as Small = "t";
    midline "B_m": Length as Small = width - wall
}
rule! {
    /// Corner radius of a square tube to the middle of its wall.
    MidlineCorner, "section/square-tube-midline-corner", SQUARE_TUBE;
    /// outer corner radius
    corner: Length as Small = "r_o";
    /// wall
    wall: Length as Small = "t";
    midline "r_m": Length as Small = corner - wall / 2.0
}
rule! {
    /// Length of the outline of a rounded square.
    RoundedSquareOutline, "section/rounded-square-outline", ROUNDED_SQUARE;
    /// straight part of the side
    straight: Length as Small = "f";
    /// corner radius
    radius: Length as Small = "r";
    outline "p": Length as Small = 4.0 * straight + 2.0 * PI * radius
}
rule! {
    /// Torsional constant of a square tube, as of any thin closed wall.
    SquareTubeTorsionalConstant, "section/square-tube-torsional-constant", STATICS.at("thin closed wall, Bredt");
    /// area within the middle of the wall
    enclosed: Area = "A_m";
    /// length of the middle of the wall
    midline: Length as Small = "p_m";
    /// wall
    wall: Length as Small = "t";
    constant "J": SecondMoment = 4.0 * enclosed.squared() * wall / midline
}

rule! {
    /// Every section property of a square tube whose corners were not measured, the plastic modulus last.
    SquareTubeSection, "section/square-tube", SQUARE_TUBE;
    /// outside width
    width: Length as Small = "B";
    /// wall
    wall: Length as Small = "t";
    modulus "Z": SectionModulus
}
impl SquareTubeSection {
    /// Works area, second moment, radius of gyration, elastic and plastic modulus in turn.
    ///
    /// # Errors
    /// If the sizes are no tube: a wall not above 0 or thicker than a quarter of the width, in which
    /// [`AssumedCorner`] finds no room.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<SectionModulus, OutOfRange> {
        let Self { width, wall } = self;
        let (least, greatest) = (Length::from_si(f64::MIN_POSITIVE), Length::from_si(f64::MAX));
        within("width", SQUARE_TUBE, width, least, greatest)?;
        within("wall", SQUARE_TUBE, wall, least, width / 4.0)?;
        let tube = SquareTube::try_new(SquareSizes { width, wall, corner: None })
            .expect("a wall of a quarter of the width is a tube");
        let outline = tube.outline(ledger);
        let area = outline.area(ledger);
        let second_moment = outline.second_moment(ledger);
        let _ = SquareTubeRadiusOfGyration { second_moment, area }.work(ledger);
        let _ = SquareTubeElasticModulus { second_moment, width }.work(ledger);
        let plastic = outline.plastic_modulus(ledger);
        Ok(self.keep(ledger, plastic))
    }
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<AssumedCorner>(),
    Listed::of::<RustedCorner>(),
    Listed::of::<InnerWidth>(),
    Listed::of::<InnerCorner>(),
    Listed::of::<StraightSide>(),
    Listed::of::<RoundedSquareArea>(),
    Listed::of::<RoundedSquareSecondMoment>(),
    Listed::of::<RoundedSquarePlasticModulus>(),
    Listed::of::<SquareTubeArea>(),
    Listed::of::<SquareTubeSecondMoment>(),
    Listed::of::<SquareTubeElasticModulus>(),
    Listed::of::<SquareTubePlasticModulus>(),
    Listed::of::<SquareTubeRadiusOfGyration>(),
    Listed::of::<MidlineWidth>(),
    Listed::of::<MidlineCorner>(),
    Listed::of::<RoundedSquareOutline>(),
    Listed::of::<SquareTubeTorsionalConstant>(),
    Listed::of::<SquareTubeSection>(),
];

/// A square tube as it is worked: the wall is the one strength is reckoned with.
///
/// # Departure
/// Section properties take rounded corners: sharp ones would make a tube of a sixteenth to a quarter of an inch 2 to
/// 6 % too strong. Where no radius was measured the outer one is 2 t, as the published tables of hollow sections
/// take it, and the flat width that slenderness is reckoned with is B − 3 t, as the specification says; the two
/// do not belong to one radius there either. Rust takes its thickness off the outer radius and leaves the inner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SquareTube {
    width: Length,
    wall: Length,
    corner: Corner,
}

/// The outer corner radius.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Corner {
    /// As measured, less rust.
    Known(Length),
    /// Not measured: of the wall as made, less what rust has taken.
    NotKnown { wall_as_made: Length },
}

/// The sizes a square tube is made from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SquareSizes {
    /// Outside width.
    pub width: Length,
    /// Wall that strength is reckoned with.
    pub wall: Length,
    /// Outer corner radius, where it is known; 0 for sharp corners.
    pub corner: Option<Length>,
}

impl SquareTube {
    /// A tube of these sizes.
    ///
    /// # Errors
    /// If a size is not above 0, the wall is thicker than half the width, or the corners do not fit.
    pub fn try_new(sizes: SquareSizes) -> Result<Self, MemberError> {
        let SquareSizes { width, wall, corner } = sizes;
        for (what, length) in [("width", width), ("wall", wall)] {
            if length.si().is_nan() || length.si() <= 0.0 {
                return Err(MemberError::NotPositive { what, metres: length.si() });
            }
        }
        if wall * 2.0 > width {
            return Err(MemberError::SquareWallTooThick { wall, width });
        }
        let radius = corner.unwrap_or(wall * 2.0);
        if radius.si().is_nan() || radius.si() < 0.0 || radius * 2.0 > width {
            return Err(MemberError::CornerDoesNotFit { corner: radius, width, assumed: corner.is_none() });
        }
        let corner = match corner {
            Some(radius) => Corner::Known(radius),
            None => Corner::NotKnown { wall_as_made: wall },
        };
        Ok(Self { width, wall, corner })
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
        let width = super::RustedWidth { width: self.width, rust }.work(ledger);
        let wall = super::RustedWall { wall: self.wall, rust }.work(ledger);
        let corner = match self.corner {
            Corner::Known(corner) if corner > rust => {
                Corner::Known(RustedCorner { corner, rust }.work(ledger))
            }
            Corner::Known(_) => Corner::Known(Length::from_si(0.0)),
            not_known @ Corner::NotKnown { .. } => not_known,
        };
        Ok(Self { width, wall, corner })
    }

    /// Outside width.
    #[must_use]
    pub const fn width(self) -> Length {
        self.width
    }
    /// Wall.
    #[must_use]
    pub const fn wall(self) -> Length {
        self.wall
    }
    /// The outer corner radius, where it is known.
    #[must_use]
    pub const fn known_corner(self) -> Option<Length> {
        match self.corner {
            Corner::Known(corner) => Some(corner),
            Corner::NotKnown { .. } => None,
        }
    }
    /// The outside and the inside, each a rounded square.
    pub fn outline(self, ledger: &mut impl Ledger) -> Outline {
        let Self { width, wall, .. } = self;
        let corner = match self.corner {
            Corner::Known(corner) => corner,
            Corner::NotKnown { wall_as_made } => {
                let corner = AssumedCorner { wall: wall_as_made }.work(ledger);
                let rust = wall_as_made - wall;
                if rust.si() > 0.0 { RustedCorner { corner, rust }.work(ledger) } else { corner }
            }
        };
        let outer = RoundedSquare::of(width, corner, ledger);
        let inner_width = InnerWidth { width, wall }.work(ledger);
        // An outer radius below the wall leaves the inside sharp.
        let inner_corner =
            if corner > wall { InnerCorner { corner, wall }.work(ledger) } else { Length::from_si(0.0) };
        Outline { outer, inner: RoundedSquare::of(inner_width, inner_corner, ledger) }
    }
    /// Area.
    pub fn area(self, ledger: &mut impl Ledger) -> Area {
        self.outline(ledger).area(ledger)
    }
    /// Second moment of area.
    pub fn second_moment(self, ledger: &mut impl Ledger) -> SecondMoment {
        self.outline(ledger).second_moment(ledger)
    }
    /// Elastic modulus.
    pub fn elastic_modulus(self, ledger: &mut impl Ledger) -> SectionModulus {
        let second_moment = self.second_moment(ledger);
        SquareTubeElasticModulus { second_moment, width: self.width }.work(ledger)
    }
    /// Plastic modulus.
    pub fn plastic_modulus(self, ledger: &mut impl Ledger) -> SectionModulus {
        self.outline(ledger).plastic_modulus(ledger)
    }
    /// Torsional constant.
    pub fn torsional_constant(self, ledger: &mut impl Ledger) -> SecondMoment {
        let (width, wall, corner) = (self.width, self.wall, self.outline(ledger).outer.radius);
        let side = MidlineWidth { width, wall }.work(ledger);
        // A sharp corner outside is one in the middle of the wall too.
        let radius = if corner > wall / 2.0 {
            MidlineCorner { corner, wall }.work(ledger)
        } else {
            Length::from_si(0.0)
        };
        let middle = RoundedSquare::of(side, radius, ledger);
        let enclosed = middle.area(ledger);
        let midline = RoundedSquareOutline { straight: middle.straight, radius }.work(ledger);
        SquareTubeTorsionalConstant { enclosed, midline, wall }.work(ledger)
    }
    /// Radius of gyration.
    pub fn radius_of_gyration(self, ledger: &mut impl Ledger) -> Length {
        let outline = self.outline(ledger);
        let (second_moment, area) = (outline.second_moment(ledger), outline.area(ledger));
        SquareTubeRadiusOfGyration { second_moment, area }.work(ledger)
    }
}

/// A square with rounded corners.
#[derive(Debug, Clone, Copy, PartialEq)]
struct RoundedSquare {
    side: Length,
    straight: Length,
    radius: Length,
}

impl RoundedSquare {
    fn of(side: Length, radius: Length, ledger: &mut impl Ledger) -> Self {
        Self { side, straight: StraightSide { side, radius }.work(ledger), radius }
    }
    fn area(self, ledger: &mut impl Ledger) -> Area {
        let Self { side, straight, radius } = self;
        RoundedSquareArea { side, straight, radius }.work(ledger)
    }
    fn second_moment(self, ledger: &mut impl Ledger) -> SecondMoment {
        let Self { side, straight, radius } = self;
        RoundedSquareSecondMoment { side, straight, radius }.work(ledger)
    }
    fn plastic_modulus(self, ledger: &mut impl Ledger) -> SectionModulus {
        let Self { side, straight, radius } = self;
        RoundedSquarePlasticModulus { side, straight, radius }.work(ledger)
    }
}

/// The outside and the inside of a square tube, from which its section properties are differences.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outline {
    outer: RoundedSquare,
    inner: RoundedSquare,
}

impl Outline {
    /// Area.
    pub fn area(self, ledger: &mut impl Ledger) -> Area {
        let (outer, inner) = (self.outer.area(ledger), self.inner.area(ledger));
        SquareTubeArea { outer, inner }.work(ledger)
    }
    /// Second moment of area.
    pub fn second_moment(self, ledger: &mut impl Ledger) -> SecondMoment {
        let (outer, inner) = (self.outer.second_moment(ledger), self.inner.second_moment(ledger));
        SquareTubeSecondMoment { outer, inner }.work(ledger)
    }
    /// Elastic modulus.
    pub fn elastic_modulus(self, ledger: &mut impl Ledger) -> SectionModulus {
        let second_moment = self.second_moment(ledger);
        SquareTubeElasticModulus { second_moment, width: self.outer.side }.work(ledger)
    }
    /// Plastic modulus.
    pub fn plastic_modulus(self, ledger: &mut impl Ledger) -> SectionModulus {
        let (outer, inner) = (self.outer.plastic_modulus(ledger), self.inner.plastic_modulus(ledger));
        SquareTubePlasticModulus { outer, inner }.work(ledger)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::inches;
    use crate::workings::Blank;
    use proptest::prelude::*;

    fn tube(width: f64, wall: f64, corner: Option<f64>) -> Result<SquareTube, MemberError> {
        SquareTube::try_new(SquareSizes {
            width: inches(width),
            wall: inches(wall),
            corner: corner.map(inches),
        })
    }

    const INCH: f64 = 0.0254;

    #[test]
    fn walls_of_half_the_width_make_a_solid_bar_and_thicker_ones_none() {
        let bar = tube(2.0, 1.0, Some(0.0)).unwrap();
        let (area, second_moment, plastic) = properties(bar);
        // b², b⁴/12, b³/4.
        for (found, by_hand) in [(area, 4.0), (second_moment, 16.0 / 12.0), (plastic, 2.0)] {
            assert!((found - by_hand).abs() < 1e-12, "{found} {by_hand}");
        }
        assert!(matches!(tube(2.0, 1.001, Some(0.0)), Err(MemberError::SquareWallTooThick { .. })));
    }

    fn properties(tube: SquareTube) -> (f64, f64, f64) {
        (
            tube.area(&mut Blank).si() / INCH.powi(2),
            tube.second_moment(&mut Blank).si() / INCH.powi(4),
            tube.plastic_modulus(&mut Blank).si() / INCH.powi(3),
        )
    }

    /// A second way: strips across the tube, outside less inside.
    fn by_strips(width: f64, wall: f64, corner: f64) -> (f64, f64, f64) {
        let half_width = |side: f64, radius: f64, y: f64| {
            let half = side / 2.0;
            if y > half {
                0.0
            } else if y > half - radius {
                half - radius + (radius.powi(2) - (y - half + radius).powi(2)).max(0.0).sqrt()
            } else {
                half
            }
        };
        let strips = 20_000;
        let face = width / 2.0 - wall;
        let (mut area, mut second, mut first) = (0.0, 0.0, 0.0);
        // No strip lies across the inner face, where the width jumps.
        for (from, to) in [(0.0, face), (face, width / 2.0)] {
            let step = (to - from) / f64::from(strips);
            for strip in 0..strips {
                let y = from + (f64::from(strip) + 0.5) * step;
                let inner = half_width(width - 2.0 * wall, (corner - wall).max(0.0), y);
                let across = 2.0 * (half_width(width, corner, y) - inner) * step;
                area += 2.0 * across;
                second += 2.0 * across * y * y;
                first += 2.0 * across * y;
            }
        }
        (area, second, first)
    }

    #[test]
    fn with_sharp_corners_it_is_one_square_less_another() {
        let (area, second, plastic) = properties(tube(2.5, 0.25, Some(0.0)).unwrap());
        assert!((area - (6.25 - 4.0)).abs() < 1e-12);
        assert!((second - (2.5_f64.powi(4) - 16.0) / 12.0).abs() < 1e-12);
        let elastic = tube(2.5, 0.25, Some(0.0)).unwrap().elastic_modulus(&mut Blank).si() / INCH.powi(3);
        assert!((elastic - (2.5_f64.powi(4) - 16.0) / 15.0).abs() < 1e-12);
        assert!((plastic - (2.5_f64.powi(3) - 8.0) / 4.0).abs() < 1e-12);
    }

    #[test]
    fn with_corners_of_half_the_width_it_is_a_round_tube() {
        let (area, second, plastic) = properties(tube(2.0, 0.2, Some(1.0)).unwrap());
        assert!((area - PI * (1.0 - 0.64)).abs() < 1e-12);
        assert!((second - PI / 4.0 * (1.0 - 0.8_f64.powi(4))).abs() < 1e-12);
        assert!((plastic - (8.0 - 1.6_f64.powi(3)) / 6.0).abs() < 1e-12);
    }

    #[test]
    fn sizes_that_are_no_tube_are_refused() {
        assert!(matches!(tube(0.0, 0.1, None), Err(MemberError::NotPositive { what: "width", .. })));
        assert!(matches!(tube(2.0, f64::NAN, None), Err(MemberError::NotPositive { what: "wall", .. })));
        assert!(matches!(tube(2.0, 1.01, Some(0.0)), Err(MemberError::SquareWallTooThick { .. })));
        assert!(matches!(tube(2.0, 0.51, None), Err(MemberError::CornerDoesNotFit { assumed: true, .. })));
        for corner in [1.01, -0.1, f64::NAN] {
            let wrong = tube(2.0, 0.1, Some(corner));
            assert!(matches!(wrong, Err(MemberError::CornerDoesNotFit { assumed: false, .. })), "{corner}");
        }
        let section =
            |b: f64, t: f64| SquareTubeSection { width: inches(b), wall: inches(t) }.work(&mut Blank);
        assert!(section(2.0, 0.5).is_ok());
        for (width, wall) in [(2.0, 0.51), (2.0, 0.0), (0.0, 0.1), (f64::NAN, 0.1)] {
            assert!(section(width, wall).is_err(), "{width} x {wall}");
        }
        let through = tube(2.0, 0.1, None).unwrap().rusted(inches(0.1), &mut Blank);
        assert!(matches!(through, Err(MemberError::RustedThrough { .. })));
    }

    #[test]
    fn rust_takes_its_thickness_off_the_outer_corner_and_leaves_the_inside() {
        let left = |corner| tube(2.5, 0.2, corner).unwrap().rusted(inches(0.05), &mut Blank).unwrap();
        for (corner, outer) in [(None, 0.35), (Some(0.3), 0.25), (Some(0.02), 0.0)] {
            let (expected, ours) = (by_strips(2.4, 0.15, outer), properties(left(corner)));
            assert!((ours.0 / expected.0 - 1.0).abs() < 1e-4, "{corner:?}");
            assert!((ours.2 / expected.2 - 1.0).abs() < 1e-4, "{corner:?}");
        }
        let whole = tube(2.5, 0.2, None).unwrap();
        assert_eq!(whole.rusted(inches(0.0), &mut Blank).unwrap(), whole);
    }

    proptest! {
        #[test]
        fn section_properties_agree_with_a_sum_over_strips(
            width in 1.0..8.0_f64, share in 0.02..0.24_f64, radius in 0.0..1.0_f64
        ) {
            let wall = width * share;
            let corner = width / 2.0 * radius;
            let ours = properties(tube(width, wall, Some(corner)).unwrap());
            let strips = by_strips(width, wall, corner);
            for (ours, strips) in [(ours.0, strips.0), (ours.1, strips.1), (ours.2, strips.2)] {
                prop_assert!((ours / strips - 1.0).abs() < 2e-5, "{} {}", ours, strips);
            }
        }

        /// Above a fifth of the width corners of 2 t take away more than the wall adds; no tube is made like that.
        #[test]
        fn a_thicker_wall_never_weakens_and_more_rust_never_strengthens(
            width in 1.0..8.0_f64, share in 0.02..0.2_f64, rust in 0.01..0.9_f64
        ) {
            let wall = width * share;
            let whole = tube(width, wall, None).unwrap();
            prop_assert!(properties(tube(width, wall * 1.001, None).unwrap()).2 > properties(whole).2);
            let left = |share: f64| properties(whole.rusted(inches(wall * share), &mut Blank).unwrap()).2;
            prop_assert!(left(rust) < left(rust * 0.9));
        }
    }
}
