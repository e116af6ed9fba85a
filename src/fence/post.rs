//! A kind of post: what it is made of, what the wind sees of it, and what it can carry at grade.

use crate::member::aisc360_16::DesignWall;
use crate::member::nds_2018::TimberInService;
use crate::member::stiffness::{Stiffness, of_round_steel, of_square_steel, of_timber};
use crate::member::{
    Format, GirthDiameter, MemberError, RoundTube, SquareSizes, SquareTube, TubeSizes, aisc360_16,
    aisi_s100_16, nds_2018,
};
use crate::source::{Clause, SURVEY};
use crate::units::{Force, Length, Moment, Pressure, SectionModulus};
use crate::workings::{Ledger, OutOfRange};
use std::fmt;

/// A kind of post.
#[derive(Debug, Clone, PartialEq)]
pub struct PostKind {
    /// Its name.
    pub name: String,
    /// What it is made of.
    pub section: Section,
    /// The format its steel is checked in.
    pub format: Format,
}

/// What a post is made of.
#[derive(Debug, Clone, PartialEq)]
pub enum Section {
    /// Steel tube.
    Tube(Tube),
    /// A steel shape of which the section modulus is given.
    Modulus {
        /// What the wind sees of it.
        face: Length,
        /// For wind square on the fence.
        modulus: SectionModulus,
        /// Yield strength.
        yield_strength: Pressure,
    },
    /// A post of which the moment it may carry is given.
    Moment {
        /// What the wind sees of it.
        face: Length,
        /// For wind square on the fence.
        moment: Moment,
        /// The format that moment belongs to.
        format: Format,
    },
    /// A square timber.
    Timber(TimberInService),
}

/// Steel tube as it was made and as it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tube {
    /// Round or square.
    pub shape: Shape,
    /// Wall as made.
    pub wall: Wall,
    /// Yield strength.
    pub yield_strength: Pressure,
    /// Thickness that rust has taken off the outside at grade.
    pub rust: Length,
}

/// The shape of a tube, with its size as made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shape {
    /// Round.
    Round {
        /// The tape round it, where the diameter comes from that.
        girth: Option<Length>,
        /// Outside diameter.
        diameter: Length,
    },
    /// Square.
    Square {
        /// Outside width.
        width: Length,
    },
}

/// A wall, and what it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wall {
    /// By the label of welded pipe: the mill may make it thinner.
    Nominal(Length),
    /// By the label of seamless pipe.
    Seamless(Length),
    /// Measured on this post.
    Measured(Length),
}

/// What a kind of post can carry at grade.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PostStrength {
    /// Bending, with its factor.
    pub moment: Moment,
    /// The rule of bending.
    pub moment_clause: Clause,
    /// Shear with its factor and its rule; or why there is none.
    pub shear: Result<(Force, Clause), &'static str>,
    /// The format of both, which says the level of the wind they are held against.
    pub format: Format,
    /// Whether it bends alike whichever way it is pushed.
    pub is_round: bool,
}

const SHEAR_OF_MODULUS: &str = "only the modulus of the post is given, and shear asks for more";
const SHEAR_OF_MOMENT: &str = "only the moment of the post is given, and shear asks for more";
const STIFFNESS_OF_MODULUS: &str =
    "only the section modulus of the post is given, and stiffness asks for more";
const STIFFNESS_OF_MOMENT: &str = "only the moment of the post is given, and stiffness asks for more";

/// Where a moment that the survey gives stands.
const GIVEN: Clause = SURVEY.at("moment of the post, as its maker or an engineer gave it");

impl PostKind {
    /// What the wind sees of it: its width as made.
    #[must_use]
    pub const fn face(&self) -> Length {
        match &self.section {
            Section::Tube(tube) => match tube.shape {
                Shape::Round { diameter, .. } => diameter,
                Shape::Square { width } => width,
            },
            Section::Modulus { face, .. } | Section::Moment { face, .. } => *face,
            Section::Timber(timber) => timber.post.breadth(),
        }
    }

    /// What it can carry at grade; `height` is that of the fence it stands in.
    ///
    /// # Errors
    /// If its sizes are no tube, rust leaves nothing, or it lies outside the range of the rule.
    pub fn strength(&self, height: Length, ledger: &mut impl Ledger) -> Result<PostStrength, PostError> {
        match &self.section {
            Section::Tube(tube) => tube.strength(self.format, height, ledger),
            Section::Modulus { modulus, yield_strength, .. } => {
                let moment = aisi_s100_16::available_moment(*modulus, *yield_strength, self.format, ledger);
                Ok(PostStrength {
                    moment,
                    moment_clause: aisi_s100_16::FIRST_YIELD,
                    shear: Err(SHEAR_OF_MODULUS),
                    format: self.format,
                    is_round: false,
                })
            }
            Section::Moment { moment, format, .. } => Ok(PostStrength {
                moment: *moment,
                moment_clause: GIVEN,
                shear: Err(SHEAR_OF_MOMENT),
                format: *format,
                is_round: false,
            }),
            // Timber is held against service loads in either format of the steel; the other format stands beside.
            Section::Timber(timber) => {
                let moment = timber.allowable_moment(ledger)?;
                let shear = timber.allowable_shear(ledger);
                let _ = timber.design_moment(ledger)?;
                Ok(PostStrength {
                    moment,
                    moment_clause: nds_2018::BENDING,
                    shear: Ok((shear, nds_2018::SHEAR)),
                    format: Format::Asd,
                    is_round: false,
                })
            }
        }
    }
}

impl PostKind {
    /// How stiff it is and what it weighs, as made: rust at grade takes nothing off the rest of the post.
    ///
    /// # Errors
    /// If its sizes are no tube, or only what it carries is given.
    pub fn stiffness(&self, ledger: &mut impl Ledger) -> Result<Stiffness, PostError> {
        match &self.section {
            Section::Tube(tube) => tube.stiffness(ledger),
            Section::Timber(timber) => Ok(of_timber(timber, ledger)),
            Section::Modulus { .. } => Err(PostError::NotGiven { why: STIFFNESS_OF_MODULUS }),
            Section::Moment { .. } => Err(PostError::NotGiven { why: STIFFNESS_OF_MOMENT }),
        }
    }
}

impl Tube {
    /// The wall that strength and stiffness are reckoned with.
    pub(super) fn design_wall(&self, ledger: &mut impl Ledger) -> Length {
        match self.wall {
            Wall::Nominal(nominal) => DesignWall { nominal }.work(ledger),
            Wall::Seamless(wall) | Wall::Measured(wall) => wall,
        }
    }

    /// How stiff it is by the wall it is reckoned with, and what it weighs by the wall it was made with.
    ///
    /// # Errors
    /// If its sizes are no tube.
    pub fn stiffness(&self, ledger: &mut impl Ledger) -> Result<Stiffness, PostError> {
        let (Wall::Nominal(made) | Wall::Seamless(made) | Wall::Measured(made)) = self.wall;
        let wall = self.design_wall(ledger);
        match self.shape {
            Shape::Round { girth, diameter } => {
                let diameter = girth.map_or(diameter, |girth| GirthDiameter { girth }.work(ledger));
                let tube = |wall| RoundTube::try_new(TubeSizes { diameter, wall });
                Ok(of_round_steel(tube(wall)?, tube(made)?, ledger))
            }
            Shape::Square { width } => {
                let tube = |wall| SquareTube::try_new(SquareSizes { width, wall, corner: None });
                Ok(of_square_steel(tube(wall)?, tube(made)?, ledger))
            }
        }
    }

    /// What it can carry in one format; `height` is that of the fence a post stands in, for a rail half its span: how far
    /// it is from the largest shear to none.
    ///
    /// # Errors
    /// As for [`PostKind::strength`].
    pub fn strength(
        &self,
        format: Format,
        height: Length,
        ledger: &mut impl Ledger,
    ) -> Result<PostStrength, PostError> {
        let wall = self.design_wall(ledger);
        let yield_strength = self.yield_strength;
        let (bending, shear, is_round) = match self.shape {
            Shape::Round { girth, diameter } => {
                let diameter = girth.map_or(diameter, |girth| GirthDiameter { girth }.work(ledger));
                let tube = RoundTube::try_new(TubeSizes { diameter, wall })?.rusted(self.rust, ledger)?;
                let bending = aisc360_16::nominal_moment(tube, yield_strength, ledger)?;
                let moment = format.available_moment(bending.nominal, ledger);
                let shear = aisc360_16::nominal_shear(tube, yield_strength, height, ledger);
                ((moment, bending.clause), shear, true)
            }
            Shape::Square { width } => {
                let sizes = SquareSizes { width, wall, corner: None };
                let tube = SquareTube::try_new(sizes)?.rusted(self.rust, ledger)?;
                let bending = aisc360_16::square_moment(tube, yield_strength, ledger)?;
                let moment = format.available_moment(bending.nominal, ledger);
                let shear = aisc360_16::square_shear(tube, yield_strength, ledger);
                ((moment, bending.clause), shear, false)
            }
        };
        let (moment, moment_clause) = bending;
        let shear = Ok((format.available_shear(shear.nominal, ledger), shear.clause));
        Ok(PostStrength { moment, moment_clause, shear, format, is_round })
    }
}

/// Why a kind of post, or a rail, has no strength or no stiffness.
#[derive(Debug, Clone, PartialEq)]
pub enum PostError {
    /// It is no tube.
    Member(MemberError),
    /// The strength rule refuses.
    OutOfRange(OutOfRange),
    /// Too little is given of it.
    NotGiven {
        /// What is, and what is asked.
        why: &'static str,
    },
}

impl fmt::Display for PostError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Member(error) => error.fmt(f),
            Self::OutOfRange(error) => error.fmt(f),
            Self::NotGiven { why } => f.write_str(why),
        }
    }
}

impl std::error::Error for PostError {}

impl From<MemberError> for PostError {
    fn from(error: MemberError) -> Self {
        Self::Member(error)
    }
}

impl From<OutOfRange> for PostError {
    fn from(error: OutOfRange) -> Self {
        Self::OutOfRange(error)
    }
}
