//! Timber posts: dressed sizes and the properties of the rectangle.

use super::MemberError;
use crate::rule;
use crate::source::{Document, Seen};
use crate::units::{Area, Length, Powers, Pure, Quantity, SecondMoment, SectionModulus, inches};
use crate::workings::{Ledger, Listed};

static GEOMETRY: Document =
    Document { short: "geometry", title: "Geometry of the rectangle", seen: Seen::FirstHand };

rule! {
    /// Area of a rectangle.
    RectangleArea, "section/rectangle-area", GEOMETRY.at("rectangle");
    /// breadth, across the load
    breadth: Length as Small = "b";
    /// depth, along the load
    depth: Length as Small = "d";
    area "A": Area = breadth * depth
}
rule! {
    /// Second moment of area of a rectangle.
    RectangleSecondMoment, "section/rectangle-second-moment", GEOMETRY.at("rectangle");
    /// breadth, across the load
    breadth: Length as Small = "b";
    /// depth, along the load
    depth: Length as Small = "d";
    second_moment "I": SecondMoment = breadth * depth.cubed() / 12.0
}
rule! {
    /// Elastic section modulus of a rectangle.
    RectangleModulus, "section/rectangle-elastic-modulus", GEOMETRY.at("rectangle");
    /// breadth, across the load
    breadth: Length as Small = "b";
    /// depth, along the load
    depth: Length as Small = "d";
    modulus "S": SectionModulus = breadth * depth.squared() / 6.0
}

static ROARK: Document = Document {
    short: "Roark",
    title: "Roark's Formulas for Stress and Strain, torsion of a solid rectangle",
    seen: Seen::Memory,
};

rule! {
    /// Torsional constant of a rectangle.
    RectangleTorsionalConstant, "section/rectangle-torsional-constant", ROARK.at("torsion of a solid rectangle");
    /// longer side
    long: Length as Small = "a";
    /// shorter side
    short: Length as Small = "b";
    constant "J": SecondMoment = long * short.cubed()
        * (1.0 / 3.0 - 0.21 * (short / long).pure() * (1.0 - (short / long).pure().to_the_fourth() / 12.0))
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<RectangleArea>(),
    Listed::of::<RectangleSecondMoment>(),
    Listed::of::<RectangleModulus>(),
    Listed::of::<RectangleTorsionalConstant>(),
];

/// A timber post of rectangular section, by its dressed sizes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TimberPost {
    breadth: Length,
    depth: Length,
}

/// The sizes a timber post is made from: as it measures, not as it is called.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TimberSizes {
    /// Breadth, across the load.
    pub breadth: Length,
    /// Depth, along the load.
    pub depth: Length,
}

/// Names of square posts and what they measure dressed.
///
/// # Source
/// 5-1/2 in for 6x6 in an article of a builder of post-frame buildings; 3-1/2 in for 4x4 from memory of NDS
/// Supplement, Table 1A.
const DRESSED: [(&str, Length); 2] = [("4x4", inches(3.5)), ("6x6", inches(5.5))];

impl TimberPost {
    /// A post of these sizes.
    ///
    /// # Errors
    /// If a size is not above 0.
    pub fn try_new(sizes: TimberSizes) -> Result<Self, MemberError> {
        let TimberSizes { breadth, depth } = sizes;
        for (what, length) in [("breadth", breadth), ("depth", depth)] {
            if length.si().is_nan() || length.si() <= 0.0 {
                return Err(MemberError::NotPositive { what, metres: length.si() });
            }
        }
        Ok(Self { breadth, depth })
    }

    /// The post that goes by a name of the trade, dressed: `4x4` measures 3-1/2 in.
    #[must_use]
    pub fn dressed(name: &str) -> Option<Self> {
        DRESSED
            .iter()
            .find(|(known, _)| *known == name)
            .map(|(_, side)| Self { breadth: *side, depth: *side })
    }

    /// Breadth, across the load.
    #[must_use]
    pub const fn breadth(self) -> Length {
        self.breadth
    }
    /// Depth, along the load.
    #[must_use]
    pub const fn depth(self) -> Length {
        self.depth
    }
    /// Area.
    pub fn area(self, ledger: &mut impl Ledger) -> Area {
        RectangleArea { breadth: self.breadth, depth: self.depth }.work(ledger)
    }
    /// Second moment of area.
    pub fn second_moment(self, ledger: &mut impl Ledger) -> SecondMoment {
        RectangleSecondMoment { breadth: self.breadth, depth: self.depth }.work(ledger)
    }
    /// Elastic modulus.
    pub fn elastic_modulus(self, ledger: &mut impl Ledger) -> SectionModulus {
        RectangleModulus { breadth: self.breadth, depth: self.depth }.work(ledger)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Pure;
    use crate::workings::Blank;

    #[test]
    fn a_post_by_name_measures_less_than_its_name() {
        let post = TimberPost::dressed("4x4").unwrap();
        assert!((post.depth() / inches(3.5)).pure() == 1.0 && post.depth() == post.breadth());
        assert!(TimberPost::dressed("4 x 4").is_none() && TimberPost::dressed("5x5").is_none());
    }

    #[test]
    fn sizes_not_above_nought_are_refused() {
        for (breadth, depth) in [(0.0, 3.5), (3.5, -1.0), (f64::NAN, 3.5)] {
            let sizes = TimberSizes { breadth: inches(breadth), depth: inches(depth) };
            assert!(matches!(TimberPost::try_new(sizes), Err(MemberError::NotPositive { .. })), "{sizes:?}");
        }
    }

    #[test]
    fn a_rectangle_by_its_strips() {
        let post = TimberPost::try_new(TimberSizes { breadth: inches(3.5), depth: inches(5.5) }).unwrap();
        let (inch, strips) = (0.0254_f64, 20_000);
        let step = 5.5 / f64::from(strips);
        let second: f64 = (0..strips)
            .map(|strip| -2.75 + (f64::from(strip) + 0.5) * step)
            .map(|y| 3.5 * y * y * step)
            .sum();
        assert!((post.second_moment(&mut Blank).si() / inch.powi(4) / second - 1.0).abs() < 1e-7);
        assert!((post.elastic_modulus(&mut Blank).si() / inch.powi(3) / (second / 2.75) - 1.0).abs() < 1e-7);
        assert!((post.area(&mut Blank).si() / inch.powi(2) - 19.25).abs() < 1e-12);
    }
}
