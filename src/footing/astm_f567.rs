//! ASTM F567: the hole of a line post of chain-link fence, by the fence's height and the post's diameter.
//!
//! A rule of installation, for bare fence: it knows no wind and no soil, and a hole that keeps to it proves nothing for a
//! fence with cloth.

use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{Length, Measure, Quantity, feet, inches};
use crate::workings::{Ledger, Listed, OutOfRange, within};

static DOCUMENT: Document = Document {
    short: "ASTM F567",
    title: "ASTM F567, Standard Practice for Installation of Chain-Link Fence",
    seen: Seen::SecondHand("public specifications and ordinances that print its holes"),
};
const DEPTH: Clause = DOCUMENT.at("5.1, depth of the hole");
const WIDTH: Clause = DOCUMENT.at("5.1, diameter of the hole");

const LEAST_DEPTH: Stated<Length> =
    Stated { value: inches(24.0), because: "ASTM F567 5.1: the hole of a fence up to 4 ft high" };
const LOW_FENCE: Stated<Length> =
    Stated { value: feet(4.0), because: "ASTM F567 5.1: up to here the least depth" };
const DEEPER: Stated<f64> = Stated { value: 0.25, because: "ASTM F567 5.1: 3 in for each foot above 4 ft" };
const SMALL_POST: Length = inches(4.0);

rule! {
    /// Depth of the hole.
    DepthOverLow, "footing/hole-depth-by-height", DEPTH;
    /// height of the fence
    height: Length = "h";
    /// depth up to a fence of that height
    least: Length as Small = "d_0";
    /// height up to which the least depth stands
    low: Length = "h_0";
    /// deeper for each height above
    deeper: f64 = "m";
    depth "d": Length as Small = least + deeper * (height.max(low) - low)
}
rule! {
    /// Depth of the hole by the standard's own figures.
    HoleDepth, "footing/hole-depth", DEPTH;
    /// height of the fence
    height: Length = "h";
    depth "d": Length as Small
}
impl HoleDepth {
    /// Works the depth.
    ///
    /// # Errors
    /// If the height is not above 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { height } = self;
        within(
            "height of the fence",
            DEPTH,
            height,
            Length::from_si(f64::MIN_POSITIVE),
            Length::from_si(f64::MAX),
        )?;
        let least = ledger.judge_as(Measure::Small, "d_0", LEAST_DEPTH);
        let low = ledger.judge("h_0", LOW_FENCE);
        let deeper = ledger.judge("m", DEEPER);
        let depth = DepthOverLow { height, least, low, deeper }.work(ledger);
        Ok(self.keep(ledger, depth))
    }
}
rule! {
    /// Diameter of the hole: so many times that of the post.
    TimesPost, "footing/hole-diameter-of-post", WIDTH;
    /// outside diameter of the post
    post: Length as Small = "D";
    /// so many times
    times: f64 = "n";
    diameter "b": Length as Small = times * post
}
rule! {
    /// Diameter of the hole: four times that of a post up to 4 in, three times that of a thicker one.
    ///
    /// A post a little above 4 in gets a smaller hole than one of 4 in; the standard has it so.
    HoleDiameter, "footing/hole-diameter", WIDTH;
    /// outside diameter of the post
    post: Length as Small = "D";
    diameter "b": Length as Small
}
impl HoleDiameter {
    /// Works the diameter.
    ///
    /// # Errors
    /// If the post's diameter is not above 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Length, OutOfRange> {
        let Self { post } = self;
        within(
            "diameter of the post",
            WIDTH,
            post,
            Length::from_si(f64::MIN_POSITIVE),
            Length::from_si(f64::MAX),
        )?;
        let times = ledger.judge("n", if post > SMALL_POST { THICK } else { THIN });
        let diameter = TimesPost { post, times }.work(ledger);
        Ok(self.keep(ledger, diameter))
    }
}
const THIN: Stated<f64> = Stated { value: 4.0, because: "ASTM F567 5.1: a post up to 4 in" };
const THICK: Stated<f64> = Stated { value: 3.0, because: "ASTM F567 5.1: a post above 4 in" };

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<DepthOverLow>(),
    Listed::of::<HoleDepth>(),
    Listed::of::<TimesPost>(),
    Listed::of::<HoleDiameter>(),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Pure;
    use crate::workings::Blank;
    use proptest::prelude::*;

    fn depth(height: f64) -> f64 {
        (HoleDepth { height: feet(height) }.work(&mut Blank).unwrap() / inches(1.0)).pure()
    }

    fn diameter(post: f64) -> f64 {
        (HoleDiameter { post: inches(post) }.work(&mut Blank).unwrap() / inches(1.0)).pure()
    }

    #[test]
    fn a_court_fence_of_ten_feet_stands_in_forty_two_inches() {
        for (height, wanted) in
            [(3.0, 24.0), (4.0, 24.0), (5.0, 27.0), (6.0, 30.0), (8.0, 36.0), (10.0, 42.0), (12.0, 48.0)]
        {
            assert!((depth(height) - wanted).abs() < 1e-9, "{height}");
        }
        assert!(HoleDepth { height: feet(0.0) }.work(&mut Blank).is_err());
    }

    #[test]
    fn a_post_of_four_inches_has_the_wider_hole() {
        for (post, wanted) in [(2.375, 9.5), (4.0, 16.0), (4.5, 13.5), (6.625, 19.875)] {
            assert!((diameter(post) - wanted).abs() < 1e-9, "{post}");
        }
        assert!(HoleDiameter { post: inches(0.0) }.work(&mut Blank).is_err());
    }

    proptest! {
        #[test]
        fn a_higher_fence_never_stands_shallower(height in 0.1..30.0_f64, more in 0.0..5.0_f64) {
            prop_assert!(depth(height + more) >= depth(height));
        }
    }
}
