//! How fast a standing post sways by itself: a lower bound of its first frequency, from what hangs on it and from how
//! its foot gives.
//!
//! Every weight is let pull sideways at its own place, alone; the leans of all places, each by its own weight, are added
//! up, and a mass on a spring that sags so far under its weight has this frequency. It is never above the true first
//! frequency: by 1.5 % below it for an even post, equal to it for one weight on a light post.
//!
//! Not counted: air that moves along with cloth, which lowers the frequency; rails that tie a post to others, which
//! raise it.

use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{
    Acceleration, Force, Frequency, Length, LineLoad, Moment, Powers, Pressure, Quantity, STANDARD_GRAVITY,
    SecondMoment, metres,
};
use crate::workings::{Ledger, Listed, OutOfRange, within};
use std::f64::consts::PI;

static DOCUMENT: Document = Document {
    short: "Dunkerley 1894",
    title: "S. Dunkerley, On the whirling and vibration of shafts, Philosophical Transactions of the Royal Society A, \
            volume 185, 1894: the rule of adding up; the leans are plain statics",
    seen: Seen::Memory,
};
const SUM: Clause = DOCUMENT.at("frequencies of each mass alone, added up");

const GRAVITY: Stated<Acceleration> = Stated {
    value: STANDARD_GRAVITY,
    because: "standard gravity, by definition: it turns weights into masses",
};

rule! {
    /// Lean of a post at a weight that pulls sideways there, by its own bending.
    WeightBend, "sway/weight-bend", SUM;
    /// weight
    weight: Force = "W";
    /// height of it over the foot
    height: Length as Distance = "z";
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// second moment of area
    second_moment: SecondMoment = "I";
    lean "y": Length as Small = weight * height.cubed() / (3.0 * elastic * second_moment)
}
rule! {
    /// Lean of a post at a weight that pulls sideways there, by the give of its foot.
    WeightTurn, "sway/weight-turn", SUM;
    /// weight
    weight: Force = "W";
    /// height of it over the foot
    height: Length as Distance = "z";
    /// moment that turns the foot by one radian
    stiffness: Moment as RotationalStiffness = "k";
    lean "y": Length as Small = weight * height.squared() / stiffness
}
rule! {
    /// Leans of a post at an even weight that pulls sideways, each piece alone, added up: by its own bending.
    EvenBend, "sway/even-bend", SUM;
    /// weight for each height
    weight: LineLoad = "w";
    /// where it begins, from the foot
    from: Length as Distance = "a";
    /// where it ends
    to: Length as Distance = "b";
    /// modulus of elasticity
    elastic: Pressure as Stress = "E";
    /// second moment of area
    second_moment: SecondMoment = "I";
    lean "y": Length as Small =
        weight * (to.to_the_fourth() - from.to_the_fourth()) / (12.0 * elastic * second_moment)
}
rule! {
    /// Leans of a post at an even weight that pulls sideways, each piece alone, added up: by the give of its foot.
    EvenTurn, "sway/even-turn", SUM;
    /// weight for each height
    weight: LineLoad = "w";
    /// where it begins, from the foot
    from: Length as Distance = "a";
    /// where it ends
    to: Length as Distance = "b";
    /// moment that turns the foot by one radian
    stiffness: Moment as RotationalStiffness = "k";
    lean "y": Length as Small = weight * (to.cubed() - from.cubed()) / (3.0 * stiffness)
}
rule! {
    /// First frequency, at least, from the leans of all weights.
    FirstFrequency, "sway/first-frequency", SUM;
    /// gravity
    gravity: Acceleration = "g";
    /// leans of all weights, added up
    lean: Length as Small = "Σy";
    frequency "n_1": Frequency = (gravity / lean).sqrt() / (2.0 * PI)
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<WeightBend>(),
    Listed::of::<WeightTurn>(),
    Listed::of::<EvenBend>(),
    Listed::of::<EvenTurn>(),
    Listed::of::<FirstFrequency>(),
];

/// Something that sways along with a post.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Hung {
    /// A weight at one height over the foot.
    At {
        /// The weight.
        weight: Force,
        /// The height.
        height: Length,
    },
    /// A weight spread evenly over a stretch of height.
    Even {
        /// The weight for each height.
        weight: LineLoad,
        /// Where it begins.
        from: Length,
        /// Where it ends.
        to: Length,
    },
}

/// A post that sways: how it bends, and how its foot gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Swaying {
    /// Modulus of elasticity.
    pub elastic: Pressure,
    /// Second moment of area for the way it sways.
    pub second_moment: SecondMoment,
    /// The moment that turns its foot by one radian; nothing where the foot is taken as clamped.
    pub foot: Option<Moment>,
}

impl Swaying {
    /// Its first frequency, at least.
    ///
    /// # Errors
    /// If its stiffness is not above 0, a weight or a height lies below 0, a stretch runs downwards, or nothing has weight.
    pub fn first_frequency(&self, hung: &[Hung], ledger: &mut impl Ledger) -> Result<Frequency, OutOfRange> {
        let Self { elastic, second_moment, foot } = *self;
        let least = f64::MIN_POSITIVE;
        within("modulus of elasticity", SUM, elastic, Pressure::from_si(least), Pressure::from_si(f64::MAX))?;
        within(
            "second moment of area",
            SUM,
            second_moment,
            SecondMoment::from_si(least),
            SecondMoment::from_si(f64::MAX),
        )?;
        if let Some(stiffness) = foot {
            within(
                "stiffness of the foot",
                SUM,
                stiffness,
                Moment::from_si(least),
                Moment::from_si(f64::MAX),
            )?;
        }
        let (ground, sky) = (metres(0.0), metres(f64::MAX));
        let mut lean = metres(0.0);
        for one in hung {
            match *one {
                Hung::At { weight, height } => {
                    within("weight", SUM, weight, Force::from_si(0.0), Force::from_si(f64::MAX))?;
                    within("height of a weight", SUM, height, ground, sky)?;
                    lean += WeightBend { weight, height, elastic, second_moment }.work(ledger);
                    if let Some(stiffness) = foot {
                        lean += WeightTurn { weight, height, stiffness }.work(ledger);
                    }
                }
                Hung::Even { weight, from, to } => {
                    within("weight", SUM, weight, LineLoad::from_si(0.0), LineLoad::from_si(f64::MAX))?;
                    within("foot of an even weight", SUM, from, ground, sky)?;
                    within("top of an even weight", SUM, to, from, sky)?;
                    lean += EvenBend { weight, from, to, elastic, second_moment }.work(ledger);
                    if let Some(stiffness) = foot {
                        lean += EvenTurn { weight, from, to, stiffness }.work(ledger);
                    }
                }
            }
        }
        within("leans of all weights", SUM, lean, Length::from_si(least), sky)?;
        let gravity = ledger.judge("g", GRAVITY);
        Ok(FirstFrequency { gravity, lean }.work(ledger))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::root;
    use crate::units::{feet, inches, ksi, pounds, pounds_per_foot};
    use crate::workings::Blank;
    use proptest::prelude::*;

    const INCH_4: f64 = 0.0254 * 0.0254 * 0.0254 * 0.0254;

    fn post(foot: Option<f64>) -> Swaying {
        Swaying {
            elastic: ksi(29_000.0),
            second_moment: SecondMoment::from_si(1.4441 * INCH_4),
            foot: foot.map(Moment::from_si),
        }
    }

    fn hertz(post: &Swaying, hung: &[Hung]) -> f64 {
        post.first_frequency(hung, &mut Blank).unwrap().si()
    }

    #[test]
    fn one_weight_on_a_light_post_is_a_mass_on_a_spring() {
        // k = 3 E I / L³ and m = W / g, in inches and pounds: 3 × 29e6 × 1.4441 / 120³ = 72.706 lb/in.
        let spring = 3.0 * 29e6 * 1.4441 / (120.0_f64 * 120.0 * 120.0);
        let wanted = (spring / (50.0 / 386.0886)).sqrt() / (2.0 * PI);
        let ours = hertz(&post(None), &[Hung::At { weight: pounds(50.0), height: inches(120.0) }]);
        assert!((ours / wanted - 1.0).abs() < 1e-6, "{ours} {wanted}");
    }

    #[test]
    fn a_stiff_post_on_a_foot_that_gives_is_a_pendulum_upside_down() {
        // ω² = k / (m H²), gravity's own moment left out.
        let (stiffness, weight, height) = (50_000.0, pounds(50.0), feet(10.0));
        let stiff = Swaying { second_moment: SecondMoment::from_si(1.0), ..post(Some(stiffness)) };
        let mass = weight.si() / 9.806_65;
        let wanted = (stiffness / (mass * height.si() * height.si())).sqrt() / (2.0 * PI);
        let ours = hertz(&stiff, &[Hung::At { weight, height }]);
        assert!((ours / wanted - 1.0).abs() < 1e-3, "{ours} {wanted}");
    }

    #[test]
    fn an_even_post_lies_1_5_percent_below_the_root_of_its_own_equation() {
        // cos x cosh x = −1 has its first root at 1.8751; ω = x² √(E I / m L⁴).
        let x = root(|x| x.cos() * x.cosh() + 1.0, 1.5, 2.5).unwrap().at;
        assert!((x - 1.8751).abs() < 1e-4);
        let (weight, height) = (pounds_per_foot(5.79), feet(10.0));
        let post = post(None);
        let stiffness = post.elastic.si() * post.second_moment.si();
        let mass = weight.si() / 9.806_65;
        let exact = x * x * (stiffness / (mass * height.si().powi(4))).sqrt() / (2.0 * PI);
        let ours = hertz(&post, &[Hung::Even { weight, from: feet(0.0), to: height }]);
        // √12 against 1.8751².
        assert!((ours / exact - 0.98520).abs() < 1e-4, "{}", ours / exact);
    }

    /// A second way: the first frequency of a chain of masses, by turning the crank of its flexibility matrix.
    fn by_masses(post: &Swaying, hung: &[Hung]) -> f64 {
        let stiffness = post.elastic.si() * post.second_moment.si();
        let mut masses: Vec<(f64, f64)> = Vec::new();
        for one in hung {
            match *one {
                Hung::At { weight, height } => masses.push((height.si(), weight.si() / 9.806_65)),
                Hung::Even { weight, from, to } => {
                    let step = (to - from).si() / 60.0;
                    masses.extend(
                        (0..60).map(|at| {
                            (from.si() + (f64::from(at) + 0.5) * step, weight.si() * step / 9.806_65)
                        }),
                    );
                }
            }
        }
        let give = |at: f64, load: f64| {
            let (low, high) = (at.min(load), at.max(load));
            low * low * (3.0 * high - low) / (6.0 * stiffness)
                + post.foot.map_or(0.0, |foot| at * load / foot.si())
        };
        let mut shape: Vec<f64> = masses.iter().map(|(height, _)| *height).collect();
        let mut turned = 0.0;
        for _ in 0..60 {
            let next: Vec<f64> = masses
                .iter()
                .map(|(at, _)| {
                    masses.iter().zip(&shape).map(|((load, mass), y)| mass * y * give(*at, *load)).sum()
                })
                .collect();
            let largest = next.iter().copied().fold(0.0, f64::max);
            turned = largest / shape.iter().copied().fold(0.0, f64::max);
            shape = next.into_iter().map(|y| y / largest).collect();
        }
        (1.0 / turned).sqrt() / (2.0 * PI)
    }

    proptest! {
        #[test]
        fn it_is_never_above_the_first_frequency_of_a_chain_of_masses_and_not_far_below(
            weight in 1.0..20.0_f64,
            mesh in 0.1..30.0_f64,
            top in 0.1..60.0_f64,
            low in 0.0..9.0_f64,
            foot in prop::option::of(5e3..5e6_f64),
        ) {
            let post = post(foot);
            let hung = [
                Hung::Even { weight: pounds_per_foot(weight), from: feet(0.0), to: feet(10.0) },
                Hung::Even { weight: pounds_per_foot(mesh), from: feet(low), to: feet(10.0) },
                Hung::At { weight: pounds(top), height: feet(10.0) },
            ];
            let (ours, exact) = (hertz(&post, &hung), by_masses(&post, &hung));
            // The chain of sixty masses is itself up to 0.1 % off.
            prop_assert!(ours < exact * 1.001, "{} {}", ours, exact);
            prop_assert!(ours > exact * 0.97, "{} {}", ours, exact);
        }

        #[test]
        fn a_softer_foot_more_weight_or_a_higher_place_never_sways_faster(
            foot in 5e3..5e6_f64, weight in 1.0..50.0_f64, height in 2.0..12.0_f64, more in 1.0..2.0_f64,
        ) {
            let at = |weight, height| [Hung::At { weight: pounds(weight), height: feet(height) }];
            let one = hertz(&post(Some(foot)), &at(weight, height));
            prop_assert!(hertz(&post(Some(foot / more)), &at(weight, height)) <= one);
            prop_assert!(hertz(&post(Some(foot)), &at(weight * more, height)) <= one);
            prop_assert!(hertz(&post(Some(foot)), &at(weight, height * more)) <= one);
            prop_assert!(hertz(&post(None), &at(weight, height)) >= one);
        }
    }

    #[test]
    fn what_cannot_sway_is_refused() {
        let hung = [Hung::At { weight: pounds(50.0), height: feet(10.0) }];
        let refused = |post: Swaying, hung: &[Hung]| post.first_frequency(hung, &mut Blank).unwrap_err().what;
        assert_eq!(refused(post(Some(0.0)), &hung), "stiffness of the foot");
        assert_eq!(refused(Swaying { elastic: ksi(0.0), ..post(None) }, &hung), "modulus of elasticity");
        let flat = Swaying { second_moment: SecondMoment::from_si(0.0), ..post(None) };
        assert_eq!(refused(flat, &hung), "second moment of area");
        assert_eq!(refused(post(None), &[]), "leans of all weights");
        let even = |from, to| [Hung::Even { weight: pounds_per_foot(1.0), from: feet(from), to: feet(to) }];
        assert_eq!(refused(post(None), &even(5.0, 4.0)), "top of an even weight");
        assert_eq!(refused(post(None), &even(-1.0, 4.0)), "foot of an even weight");
        let at = |weight, height| [Hung::At { weight: pounds(weight), height: feet(height) }];
        assert_eq!(refused(post(None), &at(-1.0, 4.0)), "weight");
        assert_eq!(refused(post(None), &at(1.0, -4.0)), "height of a weight");
    }
}
