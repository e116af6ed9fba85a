//! The pull on one tie or grommet of cloth held in rows, and what a tie carries.

use super::{FasteningError, above_nought, not_below_nought};
use crate::rule;
use crate::source::{Catalogue, CatalogueError, Clause, Document, OURS, STATICS, Seen, Stated};
use crate::units::{Force, Length, Pressure, Quantity, pounds};
use crate::workings::{Blank, Ledger, Listed};
use std::sync::LazyLock;

static BS8410: Document = Document {
    short: "BS 8410:2007",
    title: "BS 8410:2007, on containment nets, title not recorded",
    seen: Seen::SecondHand("an extract of the standard on the web"),
};
static CABLE_TIES: Document = Document {
    short: "UL/IEC 62275",
    title: "UL/IEC 62275, cable ties for electrical installations",
    seen: Seen::SecondHand("a tie seller's note on its types"),
};

/// Where ties that hold a net on a flexible frame carry twice their share.
pub const TWICE: Clause = BS8410.at("6.1.2");
const KEPT: Clause = CABLE_TIES.at("types 1 and 2");
const TRIBUTARY: Clause = STATICS.at("half the distance to the next row on each side");
const SIDES: Clause = OURS.at("sides of cloth that is held in rows");

rule! {
    /// Strip of cloth that a row holds: half the distance to the next row on each side, and the loose cloth beyond it.
    RowStrip, "fastening/row-strip", TRIBUTARY;
    /// distance to the next row above, 0 for none
    above: Length = "d_a";
    /// distance to the next row below, 0 for none
    below: Length = "d_b";
    /// loose cloth beyond the row where there is none
    loose: Length = "e";
    strip "b": Length = 0.5 * (above + below) + loose
}
rule! {
    /// Strip of cloth that the ties of an upright edge hold beside rows that hold it too.
    ///
    /// Cloth spans the shorter way: no further in than half its length, nor than the rows themselves reach. The rows
    /// are not relieved by the sides.
    SideStrip, "fastening/side-strip", SIDES;
    /// length of the cloth from side to side
    length: Length = "L";
    /// the furthest that a row reaches up or down
    reach: Length = "r";
    strip "b": Length = (0.5 * length).min(reach)
}
rule! {
    /// Pull on one tie or grommet.
    TiePull, "fastening/tie-pull", STATICS.at("pressure on the cloth of one tie");
    /// pressure that pulls the cloth off
    pressure: Pressure = "p";
    /// from tie to tie
    spacing: Length = "s";
    /// strip of cloth the row holds
    strip: Length = "b";
    pull "F": Force = pressure * (spacing * strip)
}
rule! {
    /// Load of a tie that holds a porous net on a frame that gives: twice its nominal share.
    ///
    /// # Checked by
    /// `reference-cases/fastening/bs8410-2007-6-1-2.toml`
    TwiceNominal, "fastening/bs8410-tie", TWICE;
    /// pull by its share of the cloth
    nominal: Force = "F";
    twice "2F": Force = 2.0 * nominal
}
rule! {
    /// Strength that is left of a tie.
    KeptStrength, "fastening/kept-strength", KEPT;
    /// strength it was declared with
    declared: Force = "R_0";
    /// share of it that is kept
    kept: f64 as Percent = "k";
    strength "R": Force = kept * declared
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<RowStrip>(),
    Listed::of::<SideStrip>(),
    Listed::of::<TiePull>(),
    Listed::of::<TwiceNominal>(),
    Listed::of::<KeptStrength>(),
];

/// A row at which cloth is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Row {
    /// Along the upper edge.
    Top,
    /// At half the height.
    Middle,
    /// Along the lower edge.
    Bottom,
    /// Along both upright edges.
    Sides,
}

impl Row {
    /// Every row there is, from above, the sides last.
    pub const ALL: [Self; 4] = [Self::Top, Self::Middle, Self::Bottom, Self::Sides];

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Top => "top",
            Self::Middle => "middle",
            Self::Bottom => "bottom",
            Self::Sides => "sides",
        }
    }

    /// The row of a name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|row| row.name() == name)
    }
}

/// The rows at which one cloth is held: one at least, none twice.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rows {
    rows: Vec<Row>,
}

impl Rows {
    /// Rows in any order.
    ///
    /// # Errors
    /// If none is named, or one twice.
    pub fn try_new(named: &[Row]) -> Result<Self, FasteningError> {
        if named.is_empty() {
            return Err(FasteningError::NoRows);
        }
        if let Some(row) = Row::ALL.into_iter().find(|row| named.iter().filter(|one| *one == row).count() > 1)
        {
            return Err(FasteningError::RowTwice { row });
        }
        Ok(Self { rows: Row::ALL.into_iter().filter(|row| named.contains(row)).collect() })
    }

    /// The rows from above, the sides last.
    pub fn iter(&self) -> impl Iterator<Item = Row> + '_ {
        self.rows.iter().copied()
    }

    /// Whether the cloth is held there.
    #[must_use]
    pub fn has(&self, row: Row) -> bool {
        self.rows.contains(&row)
    }

    /// Whether the cloth is held at its upright edges and nowhere else: then it is a [`super::membrane::Strip`].
    #[must_use]
    pub fn is_sides_only(&self) -> bool {
        self.rows == [Row::Sides]
    }

    /// The level rows from above.
    pub fn level(&self) -> impl Iterator<Item = Row> + '_ {
        self.iter().filter(|row| *row != Row::Sides)
    }
}

/// A panel of cloth as it hangs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Panel {
    /// From side to side.
    pub length: Length,
    /// From its lower edge to its upper.
    pub height: Length,
}

impl Panel {
    /// The length of one edge along a row.
    #[must_use]
    pub const fn edge(self, row: Row) -> Length {
        match row {
            Row::Top | Row::Middle | Row::Bottom => self.length,
            Row::Sides => self.height,
        }
    }
}

/// A panel held in rows by ties or grommets at one spacing.
#[derive(Debug, Clone, PartialEq)]
pub struct Hold {
    panel: Panel,
    rows: Rows,
    spacing: Length,
}

/// The pull at one row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RowPull {
    /// The row.
    pub row: Row,
    /// The pressure it was worked with.
    pub pressure: Pressure,
    /// The strip of cloth the row holds.
    pub strip: Length,
    /// The pull on one tie by its share of the cloth.
    pub nominal: Force,
    /// Twice that, after BS 8410:2007 6.1.2.
    pub twice: Force,
}

impl Hold {
    /// A panel, its rows and their spacing.
    ///
    /// # Errors
    /// If a size is not above 0, or the spacing wider than an edge along which the cloth is held.
    pub fn try_new(panel: Panel, rows: Rows, spacing: Length) -> Result<Self, FasteningError> {
        above_nought("the length of the cloth", panel.length)?;
        above_nought("the height of the cloth", panel.height)?;
        above_nought("the spacing of the ties", spacing)?;
        for row in rows.iter() {
            let edge = panel.edge(row);
            if spacing > edge * (1.0 + crate::numerics::ROUNDING) {
                return Err(FasteningError::SpacingWiderThanEdge { row, spacing, edge });
            }
        }
        Ok(Self { panel, rows, spacing })
    }

    /// The panel.
    #[must_use]
    pub const fn panel(&self) -> Panel {
        self.panel
    }

    /// Its rows.
    #[must_use]
    pub const fn rows(&self) -> &Rows {
        &self.rows
    }

    /// From tie to tie.
    #[must_use]
    pub const fn spacing(&self) -> Length {
        self.spacing
    }

    /// The span over which the cloth bows where it is held at two opposite edges only: then each tie pulls harder than
    /// its share, by the [`super::membrane::Strip`] of that span.
    #[must_use]
    pub fn span_of_two_edges(&self) -> Option<Length> {
        if self.rows.is_sides_only() {
            Some(self.panel.length)
        } else {
            self.rows.iter().eq([Row::Top, Row::Bottom]).then_some(self.panel.height)
        }
    }

    /// How high a level row lies above the lower edge.
    fn level_of(&self, row: Row) -> Length {
        match row {
            Row::Top => self.panel.height,
            Row::Middle => 0.5 * self.panel.height,
            Row::Bottom | Row::Sides => Length::from_si(0.0),
        }
    }

    /// What lies above and below a level row, as the rule of its strip asks for it.
    fn around(&self, row: Row) -> RowStrip {
        let nought = Length::from_si(0.0);
        let own = self.level_of(row);
        let to = |other: Row| self.level_of(other) - own;
        let above = self.rows.level().map(to).filter(|away| *away > nought).min_by(order);
        let below = self.rows.level().map(|other| -to(other)).filter(|away| *away > nought).min_by(order);
        let loose = |next: Option<Length>, edge: Length| if next.is_some() { nought } else { edge };
        RowStrip {
            above: above.unwrap_or(nought),
            below: below.unwrap_or(nought),
            loose: loose(above, self.panel.height - own) + loose(below, own),
        }
    }

    /// The furthest that a level row reaches up or down; nothing where there is none.
    fn reach(&self) -> Option<Length> {
        self.rows
            .level()
            .flat_map(|row| {
                let RowStrip { above, below, loose } = self.around(row);
                [0.5 * above, 0.5 * below, loose]
            })
            .max_by(order)
    }

    /// The strip of cloth that a row holds.
    ///
    /// # Errors
    /// If the cloth is not held there.
    pub fn strip(&self, row: Row, ledger: &mut impl Ledger) -> Result<Length, FasteningError> {
        if !self.rows.has(row) {
            return Err(FasteningError::RowNotHeld { row });
        }
        Ok(match row {
            Row::Top | Row::Middle | Row::Bottom => self.around(row).work(ledger),
            Row::Sides => {
                let length = self.panel.length;
                SideStrip { length, reach: self.reach().unwrap_or(0.5 * length) }.work(ledger)
            }
        })
    }

    /// The pull on one tie of a row under the largest pressure that pulls off there.
    ///
    /// # Range
    /// Cloth held at its upright edges only is pulled harder than this: it is a [`super::membrane::Strip`].
    ///
    /// # Errors
    /// If the cloth is not held there, or the pressure is below 0.
    pub fn pull(
        &self,
        row: Row,
        pressure: Pressure,
        ledger: &mut impl Ledger,
    ) -> Result<RowPull, FasteningError> {
        let pressure = not_below_nought("the pressure that pulls the cloth off", pressure)?;
        let strip = self.strip(row, ledger)?;
        let nominal = TiePull { pressure, spacing: self.spacing, strip }.work(ledger);
        let twice = TwiceNominal { nominal }.work(ledger);
        Ok(RowPull { row, pressure, strip, nominal, twice })
    }

    /// The pulls of all rows, each under the pressure that is largest there.
    ///
    /// # Errors
    /// If a pressure is below 0.
    pub fn pulls(
        &self,
        pressure: impl Fn(Row) -> Pressure,
        ledger: &mut impl Ledger,
    ) -> Result<Vec<RowPull>, FasteningError> {
        self.rows.iter().map(|row| self.pull(row, pressure(row), ledger)).collect()
    }
}

fn order(one: &Length, other: &Length) -> std::cmp::Ordering {
    one.si().total_cmp(&other.si())
}

/// How a tie has aged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Age {
    /// New.
    New,
    /// Aged, of type 1, or of a type that nobody knows.
    Aged,
    /// Aged, of type 2.
    AgedOfType2,
}

impl Age {
    /// The share of its declared strength that a tie keeps.
    #[must_use]
    pub const fn kept(self) -> Stated<f64> {
        match self {
            Self::New => Stated { value: 1.0, because: "a new tie has the strength it is declared with" },
            Self::Aged => Stated {
                value: 0.5,
                because: "UL/IEC 62275 type 1: half of the declared strength is left after ageing, second-hand; taken \
                          for a tie whose type is not known (ours)",
            },
            Self::AgedOfType2 => Stated {
                value: 1.0,
                because: "UL/IEC 62275 type 2: the declared strength is left after ageing, second-hand",
            },
        }
    }
}

/// The strength of a tie at its age; nothing where the maker has not said what it is.
///
/// # Errors
/// If the declared strength is not above 0.
pub fn strength(
    declared: Option<Force>,
    age: Age,
    ledger: &mut impl Ledger,
) -> Result<Option<Force>, FasteningError> {
    let Some(declared) = declared else { return Ok(None) };
    let declared = above_nought("the strength of a tie", declared)?;
    let kept = ledger.judge("k", age.kept());
    Ok(Some(KeptStrength { declared, kept }.work(ledger)))
}

/// A class of ties.
#[derive(Debug, Clone, PartialEq)]
pub struct TieClass {
    /// Its name here.
    pub name: String,
    /// The loop strength it is declared with.
    pub strength: Force,
    /// How well that is known.
    pub known: String,
}

static CLASSES: LazyLock<Vec<TieClass>> = LazyLock::new(|| {
    let read = || -> Result<Vec<TieClass>, CatalogueError> {
        let catalogue = Catalogue::read(include_str!("catalogue/cable-tie-classes-trade-undated.csv"))?;
        let known = &catalogue.known;
        catalogue
            .rows
            .iter()
            .map(|row| {
                Ok(TieClass {
                    name: row.text("name")?.to_owned(),
                    strength: pounds(row.number("strength_lbf")?),
                    known: known.clone(),
                })
            })
            .collect()
    };
    read().expect("the catalogue in the program is read by a test")
});

/// The classes of ties the trade lists, the weakest first.
#[must_use]
pub fn classes() -> &'static [TieClass] {
    &CLASSES
}

/// The weakest class that carries a pull at an age; nothing if none does.
pub fn lightest_class(pull: Force, age: Age, ledger: &mut impl Ledger) -> Option<&'static TieClass> {
    let kept = ledger.judge("k", age.kept());
    let carries =
        |class: &&TieClass| KeptStrength { declared: class.strength, kept }.work(&mut Blank) >= pull;
    let found = classes().iter().find(carries);
    if let Some(class) = found {
        let _ = KeptStrength { declared: class.strength, kept }.work(ledger);
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Pure, feet, inches, metres, pascals, psf};
    use crate::workings::Entry;
    use proptest::prelude::*;

    fn rows(named: &[Row]) -> Rows {
        Rows::try_new(named).unwrap()
    }

    fn hold(length: f64, height: f64, named: &[Row], spacing: f64) -> Hold {
        let panel = Panel { length: feet(length), height: feet(height) };
        Hold::try_new(panel, rows(named), inches(spacing)).unwrap()
    }

    fn alike(one: Force, other: Force) -> bool {
        ((one / other).pure() - 1.0).abs() < 1e-12
    }

    fn in_feet(length: Length) -> f64 {
        (length / feet(1.0)).pure()
    }

    fn pull(hold: &Hold, row: Row, pressure: f64) -> f64 {
        (hold.pull(row, psf(pressure), &mut Blank).unwrap().nominal / pounds(1.0)).pure()
    }

    #[test]
    fn nine_feet_of_cloth_in_two_rows_pull_45_67_5_and_90_pounds() {
        for (spacing, pounds) in [(12.0, 45.0), (18.0, 67.5), (24.0, 90.0)] {
            let hold = hold(60.0, 9.0, &[Row::Top, Row::Bottom], spacing);
            for row in [Row::Top, Row::Bottom] {
                assert!((pull(&hold, row, 10.0) - pounds).abs() < 1e-9, "{spacing}");
            }
        }
    }

    #[test]
    fn rows_share_the_height_out_between_them_whichever_are_there() {
        use Row::{Bottom, Middle, Sides, Top};
        for (named, strips) in [
            (&[Top, Bottom][..], &[4.5, 4.5][..]),
            (&[Top, Middle, Bottom], &[2.25, 4.5, 2.25]),
            (&[Top], &[9.0]),
            (&[Middle], &[9.0]),
            (&[Top, Middle], &[2.25, 6.75]),
            (&[Middle, Bottom], &[6.75, 2.25]),
            (&[Top, Bottom, Sides], &[4.5, 4.5, 4.5]),
            (&[Top, Middle, Bottom, Sides], &[2.25, 4.5, 2.25, 2.25]),
            (&[Top, Sides], &[9.0, 9.0]),
            (&[Sides], &[30.0]),
        ] {
            let hold = hold(60.0, 9.0, named, 12.0);
            let found: Vec<f64> =
                hold.rows().iter().map(|row| in_feet(hold.strip(row, &mut Blank).unwrap())).collect();
            for (found, expected) in found.iter().zip(strips) {
                assert!((found - expected).abs() < 1e-12, "{named:?}: {found:?}");
            }
            let level: f64 =
                hold.rows().level().map(|row| in_feet(hold.strip(row, &mut Blank).unwrap())).sum();
            assert!(hold.rows().is_sides_only() || (level - 9.0).abs() < 1e-12, "{named:?}");
        }
    }

    #[test]
    fn cloth_held_at_two_opposite_edges_only_bows_between_them() {
        use Row::{Bottom, Middle, Sides, Top};
        let span = |named: &[Row]| hold(60.0, 9.0, named, 12.0).span_of_two_edges().map(in_feet);
        assert!((span(&[Bottom, Top]).unwrap() - 9.0).abs() < 1e-12);
        assert!((span(&[Sides]).unwrap() - 60.0).abs() < 1e-12);
        for named in
            [&[Top][..], &[Top, Sides], &[Top, Middle, Bottom], &[Top, Bottom, Sides], &[Top, Middle]]
        {
            assert_eq!(span(named), None, "{named:?}");
        }
    }

    #[test]
    fn on_short_cloth_the_sides_reach_no_further_than_its_middle() {
        let hold = hold(4.0, 9.0, &[Row::Top, Row::Bottom, Row::Sides], 12.0);
        assert!((in_feet(hold.strip(Row::Sides, &mut Blank).unwrap()) - 2.0).abs() < 1e-12);
    }

    #[test]
    fn the_rule_of_twice_stands_beside_and_is_printed() {
        let hold = hold(60.0, 9.0, &[Row::Top, Row::Bottom], 12.0);
        let mut ledger = Vec::new();
        let found =
            hold.pulls(|row| if row == Row::Top { psf(13.0) } else { psf(7.0) }, &mut ledger).unwrap();
        assert_eq!(found.len(), 2);
        assert!(alike(found[0].twice, pounds(117.0)) && alike(found[1].nominal, pounds(31.5)));
        let names: Vec<_> = ledger
            .iter()
            .filter_map(|entry| match entry {
                Entry::Worked { card, .. } => Some(card.name),
                _ => None,
            })
            .collect();
        assert_eq!(names[..3], ["fastening/row-strip", "fastening/tie-pull", "fastening/bs8410-tie"]);
    }

    #[test]
    fn bad_rows_and_spacings_are_errors_with_their_data() {
        use Row::{Bottom, Middle, Sides, Top};
        assert_eq!(Rows::try_new(&[]).unwrap_err(), FasteningError::NoRows);
        let twice = Rows::try_new(&[Top, Bottom, Top]).unwrap_err();
        assert_eq!(twice, FasteningError::RowTwice { row: Top });
        assert_eq!(twice.to_string(), "the row \"top\" is named twice: name it once");
        let panel = Panel { length: feet(60.0), height: feet(9.0) };
        let wide = Hold::try_new(panel, rows(&[Top, Sides]), feet(10.0)).unwrap_err();
        let expected =
            FasteningError::SpacingWiderThanEdge { row: Sides, spacing: feet(10.0), edge: feet(9.0) };
        assert_eq!(wide, expected);
        assert!(
            wide.to_string().starts_with("ties every 10 ft do not fit the row \"sides\", which is 9 ft long")
        );
        assert!(Hold::try_new(panel, rows(&[Top]), feet(10.0)).is_ok());
        for spacing in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            let error = Hold::try_new(panel, rows(&[Top]), feet(spacing)).unwrap_err();
            assert!(matches!(error, FasteningError::NotAboveNought { what: "the spacing of the ties", .. }));
        }
        let flat = Panel { height: feet(0.0), ..panel };
        assert!(Hold::try_new(flat, rows(&[Top]), feet(1.0)).is_err());
        let hold = hold(60.0, 9.0, &[Top], 12.0);
        let error = hold.pull(Middle, psf(1.0), &mut Blank).unwrap_err();
        assert_eq!(error, FasteningError::RowNotHeld { row: Middle });
        assert!(hold.pull(Top, psf(-1.0), &mut Blank).is_err());
        assert_eq!(Row::named("sides"), Some(Sides));
        assert_eq!(Row::named("edges"), None);
    }

    #[test]
    fn a_spacing_that_is_the_edge_but_for_rounding_fits() {
        let panel = Panel { length: metres(0.3048 * 3.0), height: feet(9.0) };
        assert!(Hold::try_new(panel, rows(&[Row::Top]), inches(36.0)).is_ok());
    }

    #[test]
    fn the_classes_rise_and_an_aged_tie_may_keep_half() {
        let strengths: Vec<Force> = classes().iter().map(|class| class.strength).collect();
        assert_eq!(strengths, [18.0, 50.0, 120.0, 175.0, 250.0].map(pounds));
        let mut ledger = Vec::new();
        let aged = strength(Some(pounds(50.0)), Age::Aged, &mut ledger).unwrap().unwrap();
        assert!(alike(aged, pounds(25.0)));
        assert!(matches!(ledger[0], Entry::Judged { symbol: "k", .. }));
        assert_eq!(strength(None, Age::Aged, &mut Blank).unwrap(), None);
        assert!(strength(Some(pounds(0.0)), Age::New, &mut Blank).is_err());
        let lightest = |pull, age| lightest_class(pounds(pull), age, &mut Blank).map(|class| class.strength);
        assert_eq!(lightest(45.0, Age::New), Some(pounds(50.0)));
        assert_eq!(lightest(45.0, Age::Aged), Some(pounds(120.0)));
        assert_eq!(lightest(45.0, Age::AgedOfType2), Some(pounds(50.0)));
        assert_eq!(lightest(125.1, Age::Aged), None);
    }

    proptest! {
        #[test]
        fn more_pressure_wider_spacing_and_higher_cloth_never_pull_less(
            height in 3.0..20.0_f64, spacing in 4.0..36.0_f64, pressure in 0.0..60.0_f64, more in 1.0..2.0_f64
        ) {
            let rows = [Row::Top, Row::Middle, Row::Bottom, Row::Sides];
            let base = hold(60.0, height, &rows, spacing);
            for row in rows {
                let here = pull(&base, row, pressure);
                prop_assert!(pull(&base, row, pressure * more) >= here * (1.0 - 1e-12));
                prop_assert!(pull(&hold(60.0, height * more, &rows, spacing), row, pressure) >= here * (1.0 - 1e-12));
                if spacing * more <= 36.0 {
                    prop_assert!(pull(&hold(60.0, height, &rows, spacing * more), row, pressure) >= here * (1.0 - 1e-12));
                }
            }
        }

        #[test]
        fn the_rows_of_a_foot_of_cloth_carry_what_the_wind_brings(height in 3.0..20.0_f64, pressure in 0.1..60.0_f64, which in 1..8_usize) {
            let named: Vec<Row> = [Row::Top, Row::Middle, Row::Bottom]
                .into_iter()
                .enumerate()
                .filter(|(at, _)| which & (1 << at) != 0)
                .map(|(_, row)| row)
                .collect();
            let hold = hold(60.0, height, &named, 12.0);
            let sum: f64 = named.iter().map(|row| pull(&hold, *row, pressure)).sum();
            prop_assert!((sum / (pressure * height) - 1.0).abs() < 1e-12);
        }

        #[test]
        fn the_same_in_either_unit(height in 3.0..20.0_f64, spacing in 4.0..24.0_f64, pressure in 0.1..60.0_f64) {
            let us = hold(60.0, height, &[Row::Top, Row::Bottom, Row::Sides], spacing);
            let panel = Panel { length: metres(60.0 * 0.3048), height: metres(height * 0.3048) };
            let si = Hold::try_new(panel, us.rows().clone(), metres(spacing * 0.0254)).unwrap();
            for row in [Row::Top, Row::Bottom, Row::Sides] {
                let one = us.pull(row, psf(pressure), &mut Blank).unwrap();
                let other = si.pull(row, pascals(pressure * 47.880_258_980_335_84), &mut Blank).unwrap();
                prop_assert!(alike(one.nominal, other.nominal));
            }
        }
    }
}
