//! Cloth laced to a rail or post: how much rope an edge takes, and the tension in it.
//!
//! The rope goes round the rail and through a grommet, once for each pitch: a belt round the rail with two straight
//! parts that meet in the grommet. Along the edge it is a spiral; locked, it takes two more turns at each grommet.

use super::rope::{Left, left};
use super::{Checked, FasteningError, Part, above_nought, checked, not_below_nought};
use crate::rule;
use crate::source::{Clause, OURS, STATICS, Stated};
use crate::units::{Force, Length, Powers, Pure};
use crate::workings::{Ledger, Listed};
use std::f64::consts::PI;

const BELT: Clause = STATICS.at("belt round a rail and through a grommet");
const SPIRAL: Clause = STATICS.at("spiral along an edge");
const LOCKED: Clause = OURS.at("two more turns at each grommet");

/// Rope that is cut off and thrown away, as a share of what is laced.
pub const WASTE: Stated<f64> = Stated { value: 0.1, because: "ours: a tenth for cutting and for taking up" };

rule! {
    /// Radius at which the middle of a rope lies round a rail.
    WrapRadius, "fastening/wrap-radius", BELT;
    /// outside diameter of the rail
    rail: Length as Small = "D";
    /// diameter of the rope
    rope: Length as Small = "d";
    radius "R": Length as Small = 0.5 * (rail + rope)
}
rule! {
    /// Length of rope round a rail and through a grommet, seen along the rail.
    ///
    /// # Checked by
    /// `reference-cases/fastening/rope-path-2026-wrap.toml`
    WrapLength, "fastening/wrap-length", BELT;
    /// radius of the rope's middle round the rail
    radius: Length as Small = "R";
    /// from the rope's middle on the rail to its middle in the grommet
    offset: Length as Small = "a";
    wrap "C": Length as Small = 2.0 * ((radius + offset).squared() - radius.squared()).sqrt()
        + 2.0 * radius * (PI - (radius / (radius + offset)).pure().acos())
}
rule! {
    /// Rope for each length of edge laced in a plain spiral.
    ///
    /// # Checked by
    /// `reference-cases/fastening/rope-path-2026-plain.toml`
    PlainLacing, "fastening/lacing-plain", SPIRAL;
    /// from grommet to grommet
    spacing: Length as Small = "s";
    /// length of one wrap, seen along the rail
    wrap: Length as Small = "C";
    rope "r": f64 = ((spacing.squared() + wrap.squared()).sqrt() / spacing).pure()
}
rule! {
    /// Rope for each length of edge laced in a spiral and locked at each grommet by two more turns.
    LockedLacing, "fastening/lacing-locked", LOCKED;
    /// from grommet to grommet
    spacing: Length as Small = "s";
    /// length of one wrap, seen along the rail
    wrap: Length as Small = "C";
    rope "r": f64 = (((spacing.squared() + wrap.squared()).sqrt() + 2.0 * wrap) / spacing).pure()
}
rule! {
    /// Rope for each length of edge, from the rail, the rope, the grommet's distance and the spacing.
    LacingOfRail, "fastening/lacing-of-rail", SPIRAL;
    /// outside diameter of the rail
    rail: Length as Small = "D";
    /// diameter of the rope
    rope: Length as Small = "d";
    /// from the rope's middle on the rail to its middle in the grommet
    offset: Length as Small = "a";
    /// from grommet to grommet
    spacing: Length as Small = "s";
    per_length "r": f64
}
impl LacingOfRail {
    /// Works the wrap, then the plain spiral.
    ///
    /// # Errors
    /// None; the signature is that of every rule worked by hand.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, crate::workings::OutOfRange> {
        let Self { rail, rope, offset, spacing } = self;
        let radius = WrapRadius { rail, rope }.work(ledger);
        let wrap = WrapLength { radius, offset }.work(ledger);
        let per_length = PlainLacing { spacing, wrap }.work(ledger);
        Ok(self.keep(ledger, per_length))
    }
}
rule! {
    /// Tension of a lacing rope from the pull of one grommet: two parts of it share the pull, aslant.
    ///
    /// The rope runs free through the grommets; what rubs there holds back some of it.
    LacingTension, "fastening/lacing-tension", STATICS.at("two parts of rope at a grommet");
    /// pull of one grommet, square to the edge
    pull: Force = "F";
    /// from grommet to grommet
    spacing: Length as Small = "s";
    /// length of one wrap, seen along the rail
    wrap: Length as Small = "C";
    /// radius of the rope's middle round the rail
    radius: Length as Small = "R";
    /// from the rope's middle on the rail to its middle in the grommet
    offset: Length as Small = "a";
    tension "T": Force = 0.5 * pull * ((spacing.squared() + wrap.squared()).sqrt() / wrap).pure()
        * ((radius + offset) / ((radius + offset).squared() - radius.squared()).sqrt()).pure()
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<WrapRadius>(),
    Listed::of::<WrapLength>(),
    Listed::of::<PlainLacing>(),
    Listed::of::<LockedLacing>(),
    Listed::of::<LacingOfRail>(),
    Listed::of::<LacingTension>(),
];

/// How lacing goes on from grommet to grommet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Style {
    /// A plain spiral: one cut frees the rope to its next knot.
    Plain,
    /// Locked at each grommet by two more turns.
    Locked,
}

/// What a wrap goes round and through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wrap {
    /// Outside diameter of the rail or post.
    pub rail: Length,
    /// Diameter of the rope.
    pub rope: Length,
    /// From the rope's middle on the rail to its middle in the grommet.
    pub offset: Length,
    /// From grommet to grommet.
    pub spacing: Length,
}

impl Wrap {
    fn sound(self) -> Result<Self, FasteningError> {
        above_nought("the diameter of the rail", self.rail)?;
        above_nought("the diameter of the rope", self.rope)?;
        above_nought("the distance of the grommet from the rail", self.offset)?;
        above_nought("the spacing of the grommets", self.spacing)?;
        Ok(self)
    }

    /// Rope for each length of edge.
    ///
    /// # Errors
    /// If a size is not above 0.
    pub fn rope_per_length(self, style: Style, ledger: &mut impl Ledger) -> Result<f64, FasteningError> {
        let Self { rail, rope, offset, spacing } = self.sound()?;
        let radius = WrapRadius { rail, rope }.work(ledger);
        let wrap = WrapLength { radius, offset }.work(ledger);
        Ok(match style {
            Style::Plain => PlainLacing { spacing, wrap }.work(ledger),
            Style::Locked => LockedLacing { spacing, wrap }.work(ledger),
        })
    }

    /// The tension of the rope when each grommet pulls so much square to the edge.
    ///
    /// # Errors
    /// If a size is not above 0, or the pull below it.
    pub fn tension(self, pull: Force, ledger: &mut impl Ledger) -> Result<Force, FasteningError> {
        let Self { rail, rope, offset, spacing } = self.sound()?;
        let pull = not_below_nought("the pull on a grommet", pull)?;
        let radius = WrapRadius { rail, rope }.work(ledger);
        let wrap = WrapLength { radius, offset }.work(ledger);
        Ok(LacingTension { pull, spacing, wrap, radius, offset }.work(ledger))
    }

    /// The rope held against what knots and years outdoors leave of it, at the worse end; without a breaking load it
    /// is not checked.
    ///
    /// # Errors
    /// As for [`Self::tension`] and [`left`].
    pub fn check(
        self,
        pull: Force,
        breaking: Option<Force>,
        years: f64,
        ledger: &mut impl Ledger,
    ) -> Result<Checked, FasteningError> {
        let tension = self.tension(pull, ledger)?;
        let strength = match breaking {
            Some(breaking) => {
                let Left { least, .. } = left(breaking, years, ledger)?;
                Some(least)
            }
            None => None,
        };
        checked(Part::Rope, tension, strength, ledger)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fastening::rope::{Fibre, breaking};
    use crate::units::{Quantity, inches, millimetres, pounds};
    use crate::workings::Blank;
    use proptest::prelude::*;

    fn wrap(rail: f64, rope: f64, spacing: f64) -> Wrap {
        Wrap { rail: inches(rail), rope: inches(rope), offset: inches(1.0), spacing: inches(spacing) }
    }

    fn per_foot(wrap: Wrap, style: Style) -> f64 {
        wrap.rope_per_length(style, &mut Blank).unwrap()
    }

    #[test]
    fn plain_lacing_on_a_rail_of_1_66_inches_takes_1_17_feet_a_foot() {
        let found = per_foot(wrap(1.66, 0.25, 12.0), Style::Plain);
        assert!((found - 1.17).abs() < 0.005, "{found}");
        let locked = per_foot(wrap(1.66, 0.25, 12.0), Style::Locked);
        assert!((locked - 2.405).abs() < 5e-4, "{locked}");
        // A rail sold as 1-5/8 in that measures so takes the same to the hundredth.
        assert!((per_foot(wrap(1.625, 0.25, 12.0), Style::Plain) - 1.17).abs() < 0.005);
    }

    /// The path of the rope in small pieces: from the grommet along the tangent to the rail, round it, and back.
    fn by_pieces(wrap: Wrap) -> f64 {
        let metres = |length: Length| length.si();
        let radius = 0.5 * (metres(wrap.rail) + metres(wrap.rope));
        let grommet = radius + metres(wrap.offset);
        // Points of contact: where the line from the grommet is square to the radius.
        let touch = {
            let (mut low, mut high) = (0.0_f64, PI / 2.0);
            for _ in 0..100 {
                let middle = 0.5 * (low + high);
                let (x, y) = (radius * middle.cos(), radius * middle.sin());
                let square = (grommet - x) * x - y * y;
                if square > 0.0 { low = middle } else { high = middle }
            }
            0.5 * (low + high)
        };
        let mut path = vec![(grommet, 0.0)];
        let pieces = 4000_u32;
        for piece in 0..=pieces {
            let at = touch + (2.0 * PI - 2.0 * touch) * f64::from(piece) / f64::from(pieces);
            path.push((radius * at.cos(), radius * at.sin()));
        }
        path.push((grommet, 0.0));
        path.windows(2).map(|two| (two[1].0 - two[0].0).hypot(two[1].1 - two[0].1)).sum()
    }

    #[test]
    fn a_tension_of_the_rope_balances_the_grommet() {
        // The two parts leave the grommet along its tangents; as vectors, with the slant along the edge.
        let wrap = wrap(1.66, 0.25, 12.0);
        let tension = (wrap.tension(pounds(124.0), &mut Blank).unwrap() / pounds(1.0)).pure();
        let (radius, grommet) = (0.955_f64, 1.955_f64);
        let tangent = (grommet * grommet - radius * radius).sqrt();
        let round = by_pieces(wrap) / 0.0254;
        let slant = round / 12.0_f64.hypot(round);
        let balanced = 2.0 * tension * (tangent / grommet) * slant;
        assert!((balanced - 124.0).abs() < 1e-4, "{balanced}");
        assert!((tension - 135.3).abs() < 0.5, "{tension}");
    }

    #[test]
    fn rope_without_a_breaking_load_is_not_checked_and_with_one_it_is() {
        let wrap = wrap(1.66, 0.25, 12.0);
        let found = wrap.check(pounds(124.0), None, 1.0, &mut Blank).unwrap();
        assert!(matches!(found, Checked::NotChecked { part: Part::Rope, .. }));
        let new = breaking(Fibre::Polypropylene, inches(0.25)).unwrap().least;
        let found = wrap.check(pounds(124.0), Some(new), 1.0, &mut Blank).unwrap();
        // 1125 × ½ × 0.8 is 450.
        let Checked::Against { capacity, .. } = found else { panic!("{found:?}") };
        assert!(((capacity / pounds(450.0)).pure() - 1.0).abs() < 1e-12);
        assert_eq!(found.is_over(), Some(false));
    }

    #[test]
    fn sizes_that_are_none_are_refused() {
        let base = wrap(1.66, 0.25, 12.0);
        for wrong in [
            Wrap { spacing: inches(0.0), ..base },
            Wrap { rail: inches(-1.0), ..base },
            Wrap { rope: inches(f64::NAN), ..base },
            Wrap { offset: inches(0.0), ..base },
        ] {
            assert!(wrong.rope_per_length(Style::Plain, &mut Blank).is_err(), "{wrong:?}");
            assert!(wrong.tension(pounds(1.0), &mut Blank).is_err(), "{wrong:?}");
        }
        assert!(base.tension(pounds(-1.0), &mut Blank).is_err());
    }

    proptest! {
        #[test]
        fn the_wrap_is_as_long_as_its_path(rail in 1.0..5.0_f64, rope in 0.125..0.5_f64, offset in 0.1..3.0_f64) {
            let wrap = Wrap { rail: inches(rail), rope: inches(rope), offset: inches(offset), spacing: inches(12.0) };
            let radius = WrapRadius { rail: wrap.rail, rope: wrap.rope }.work(&mut Blank);
            let ours = WrapLength { radius, offset: wrap.offset }.work(&mut Blank).si();
            prop_assert!((ours / by_pieces(wrap) - 1.0).abs() < 1e-6);
        }

        #[test]
        fn closer_grommets_and_thicker_rails_take_more_rope(
            rail in 1.0..5.0_f64, rope in 0.125..0.5_f64, spacing in 4.0..36.0_f64, more in 1.01..2.0_f64
        ) {
            for style in [Style::Plain, Style::Locked] {
                let here = per_foot(wrap(rail, rope, spacing), style);
                prop_assert!(per_foot(wrap(rail, rope, spacing * more), style) < here);
                prop_assert!(per_foot(wrap(rail * more, rope, spacing), style) > here);
                prop_assert!(here > 1.0);
            }
        }

        #[test]
        fn the_same_in_either_unit(rail in 1.0..5.0_f64, spacing in 4.0..36.0_f64) {
            let us = wrap(rail, 0.25, spacing);
            let si = Wrap {
                rail: millimetres(rail * 25.4),
                rope: millimetres(6.35),
                offset: millimetres(25.4),
                spacing: millimetres(spacing * 25.4),
            };
            prop_assert!((per_foot(us, Style::Plain) / per_foot(si, Style::Plain) - 1.0).abs() < 1e-12);
        }
    }
}
