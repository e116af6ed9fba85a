//! Back braces and guys: what holds a post from the side.

use super::fastening::Face;
use super::post::{PostError, Shape, Tube};
use crate::member::aisc360_16::{
    Column, D2_1, ELASTIC_MODULUS, TensileYield, nominal_compression, square_compression,
};
use crate::member::{Format, RoundTube, SquareSizes, SquareTube, TubeSizes};
use crate::source::{Clause, SURVEY, Stated};
use crate::units::{Area, Force, Length, Pressure, Quantity};
use crate::workings::Ledger;

/// A back brace or a guy of one post, square to the run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Guy {
    /// The post by index.
    pub post: usize,
    /// The height above the foot of the post at which it holds the post.
    pub height: Length,
    /// How far back from the post it meets the ground.
    pub back: Length,
    /// The side of the fence it stands on.
    pub side: Face,
    /// What it is.
    pub kind: GuyKind,
    /// The format its steel is checked in.
    pub format: Format,
}

/// What holds a post from the side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum GuyKind {
    /// A tube that takes tension and compression, free to turn at both ends.
    BackBrace(Tube),
    /// A wire, strand or rod, which takes tension alone.
    Guy {
        /// Its diameter.
        diameter: Length,
        /// The pull that its maker allows, if that is known.
        allowed: Option<Force>,
    },
}

/// What a back brace or a guy can carry along itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GuyStrength {
    /// Pressed, with its rule; nothing for a guy, which goes slack.
    pub compression: Option<(Force, Clause)>,
    /// Pulled, with its rule; nothing where it is not known.
    pub tension: Option<(Force, Clause)>,
}

/// Held by pins at both ends.
const PINNED: Stated<f64> =
    Stated { value: 1.0, because: "AISC 360-16 E2: both ends held in place and free to turn" };
const SOLID: Stated<f64> = Stated {
    value: 1.0,
    because: "ours: a guy stretches as a solid steel rod of its diameter; strand stretches more, and the post then takes \
              more than is told",
};
const ALLOWED: Clause = SURVEY
    .at("pull on the guy, as its maker allows it, against 0.6 of the wind where a code is at strength level");

impl GuyKind {
    /// Its name.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            Self::BackBrace(_) => "back brace",
            Self::Guy { .. } => "guy",
        }
    }
}

impl Guy {
    /// From the post to the ground.
    #[must_use]
    pub fn length(&self) -> Length {
        Length::from_si(self.height.si().hypot(self.back.si()))
    }

    /// Area and modulus, for how far it stretches.
    ///
    /// # Errors
    /// If its sizes are no tube.
    pub fn axial(&self, ledger: &mut impl Ledger) -> Result<(Area, Pressure), PostError> {
        match self.kind {
            GuyKind::BackBrace(tube) => {
                tube.stiffness(ledger).map(|stiffness| (stiffness.area, stiffness.elastic))
            }
            GuyKind::Guy { diameter, .. } => {
                let fill = ledger.judge("c_A", SOLID);
                Ok((diameter * diameter * (fill * std::f64::consts::FRAC_PI_4), ELASTIC_MODULUS))
            }
        }
    }

    /// What it can carry along itself.
    ///
    /// # Errors
    /// If its sizes are no tube, or it lies outside the range of the rule.
    pub fn strength(&self, ledger: &mut impl Ledger) -> Result<GuyStrength, PostError> {
        let tube = match self.kind {
            GuyKind::BackBrace(tube) => tube,
            GuyKind::Guy { allowed, .. } => {
                let tension = allowed.map(|allowed| (allowed, ALLOWED));
                return Ok(GuyStrength { compression: None, tension });
            }
        };
        let (wall, yield_strength) = (tube.design_wall(ledger), tube.yield_strength);
        let column = Column { factor: ledger.judge("K", PINNED), length: self.length() };
        let (pressed, area) = match tube.shape {
            Shape::Round { diameter, .. } => {
                let tube = RoundTube::try_new(TubeSizes { diameter, wall })?;
                (nominal_compression(tube, yield_strength, column, ledger)?, tube.area(ledger))
            }
            Shape::Square { width } => {
                let tube = SquareTube::try_new(SquareSizes { width, wall, corner: None })?;
                (square_compression(tube, yield_strength, column, ledger)?, tube.area(ledger))
            }
        };
        let compression = self.format.available_compression(pressed.nominal, ledger);
        let pulled = TensileYield { yield_strength, area }.work(ledger);
        let tension = self.format.available_tension(pulled, ledger);
        Ok(GuyStrength { compression: Some((compression, pressed.clause)), tension: Some((tension, D2_1)) })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fence::Wall;
    use crate::units::{Pure, feet, inches, ksi, pounds};
    use crate::workings::Blank;

    #[test]
    fn a_back_brace_of_1_66_in_pipe_eight_feet_and_four_long_carries_little_pressed_and_much_pulled() {
        let shape = Shape::Round { girth: None, diameter: inches(1.66) };
        let wall = Wall::Nominal(inches(0.14));
        let tube = Tube { shape, wall, yield_strength: ksi(30.0), rust: inches(0.0) };
        let guy = Guy {
            post: 0,
            height: inches(80.0),
            back: feet(5.0),
            side: Face::Outside,
            kind: GuyKind::BackBrace(tube),
            format: Format::Lrfd,
        };
        // By hand: 100 in long, A 0.6257 in², I 0.18439 in⁴, r 0.54284 in, L/r 184.22, F_e 8.434 ksi, 0.877 F_e 7.396 ksi,
        // 4.628 kip, 0.9 of it 4165 lbf; pulled 0.9 × 30 × 0.6257 = 16,895 lbf.
        assert!((guy.length() - inches(100.0)).si().abs() < 1e-12);
        let found = guy.strength(&mut Blank).unwrap();
        let in_pounds = |force: Option<(Force, Clause)>| (force.unwrap().0 / pounds(1.0)).pure();
        assert!((in_pounds(found.compression) / 4165.0 - 1.0).abs() < 1e-3);
        assert!((in_pounds(found.tension) / 16_895.0 - 1.0).abs() < 1e-3);
    }

    #[test]
    fn a_guy_takes_no_compression_and_the_pull_its_maker_allows() {
        let kind = GuyKind::Guy { diameter: inches(0.25), allowed: Some(pounds(1400.0)) };
        let guy = Guy {
            post: 0,
            height: feet(7.0),
            back: feet(5.0),
            side: Face::Inside,
            kind,
            format: Format::Asd,
        };
        let found = guy.strength(&mut Blank).unwrap();
        assert!(found.compression.is_none());
        assert_eq!(found.tension.map(|(force, _)| force), Some(pounds(1400.0)));
        let area = guy.axial(&mut Blank).unwrap().0;
        // π/4 of 0.0625 in².
        assert!(((area / (inches(1.0) * inches(1.0))).pure() - 0.049_087_39).abs() < 1e-8);
    }
}
