//! What to order for cloth of some length: panels, ties and grommets, cloth, hem and rope.
//!
//! Ties stand evenly, no further apart than the spacing. A tie where a row and an upright edge meet holds both and is
//! counted once, with the row: the upright edges count the ties between the rows only. A middle row shares its two end
//! ties with the sides only where these have one at half the height.

use super::lacing::{Style, WASTE, Wrap};
use super::ties::{Hold, Panel, Row, Rows};
use super::{FasteningError, above_nought, not_below_nought};
use crate::numerics::on_bound;
use crate::rule;
use crate::source::{Clause, Document, OURS, STATICS, Seen, Stated};
use crate::units::{Area, Length, Pure, Quantity, feet, inches};
use crate::workings::{Ledger, Listed, OutOfRange, within};

static SCREEN_SHEET: Document = Document {
    short: "maker's sheet",
    title: "A screen maker's sheet on how to measure, in two versions; maker not named here",
    seen: Seen::SecondHand("the sheet as it stands on the web"),
};

const EVENLY: Clause = STATICS.at("ties evenly along an edge");
const SHARED: Clause = OURS.at("a tie at a corner is counted once, with the row");
const PANELS: Clause = SCREEN_SHEET.at("no panel over 60 ft");

/// The longest panel, unless another is told.
pub const LONGEST: Stated<Length> = Stated {
    value: feet(60.0),
    because: "no panel over 60 ft: a screen maker's sheet, two versions; second-hand",
};
/// What is left free between the cloth and each upright.
pub const END_GAP: Stated<Length> =
    Stated { value: inches(6.0), because: "6 in off each end: a screen maker's sheet; second-hand" };
/// Ties to order beyond those counted, as a share.
pub const SPARES: Stated<f64> = Stated { value: 0.1, because: "ours: 5 to 10 % more for those that break" };

/// What is left free between two panels that meet at a post.
pub const JOINT: Stated<Length> =
    Stated { value: inches(0.0), because: "ours: two panels meet at a post edge to edge" };
/// What is left free between the cloth and the top rail it hangs from.
pub const TOP_GAP: Stated<Length> =
    Stated { value: inches(0.0), because: "ours: the survey has the height of the cloth as it hangs" };
/// Rope for one knot, at each end of a piece.
pub const KNOT: Stated<Length> = Stated { value: inches(12.0), because: "ours: about a foot for each knot" };
/// How lacing goes on, where nobody says.
pub const STYLE: (Style, &str) = (Style::Locked, "ours: of the two styles the one that takes more rope");

/// More than any edge has; what is beyond it is a slip of a unit.
const MOST: f64 = 1e6;

rule! {
    /// Cloth to be cut for an opening, with a gap at each end.
    CutLength, "fastening/cut-length", SCREEN_SHEET.at("6 in off each end");
    /// width of the opening, from tension bar to tension bar
    opening: Length = "L_o";
    /// gap at each end
    gap: Length = "g";
    cut "L": Length = opening - 2.0 * gap
}
rule! {
    /// Spaces between ties along an edge: the least number of equal ones that are no wider than the spacing.
    Spaces, "fastening/spaces", EVENLY;
    /// length of the edge
    edge: Length = "L";
    /// spacing of the ties, at most
    spacing: Length = "s";
    spaces "n": f64
}
impl Spaces {
    /// Counts them.
    ///
    /// # Errors
    /// If the edge is shorter than the spacing, or takes more than a million.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let spaces = rounded_up((self.edge / self.spacing).pure());
        within("length of the edge over the spacing", EVENLY, spaces, 1.0, MOST)?;
        Ok(self.keep(ledger, spaces))
    }
}
rule! {
    /// Ties of a panel, those that a row and an upright edge share counted once.
    ///
    /// # Checked by
    /// `reference-cases/fastening/ties-on-a-grid-2026-four-edges.toml`
    TieCount, "fastening/tie-count", SHARED;
    /// level rows
    rows: f64 = "n_r";
    /// spaces along a row
    along: f64 = "n_a";
    /// upright edges that are tied
    uprights: f64 = "n_u";
    /// spaces up an upright edge
    up: f64 = "n_h";
    /// ties of one upright edge that belong to rows
    shared: f64 = "n_s";
    ties "n": f64 = rows * (along + 1.0) + uprights * (up + 1.0 - shared)
}
rule! {
    /// Ties of a panel tied along all four edges.
    FourEdges, "fastening/ties-on-four-edges", SHARED;
    /// length of the panel
    length: Length = "L";
    /// height of the panel
    height: Length = "h";
    /// spacing of the ties, at most
    spacing: Length = "s";
    ties "n": f64
}
impl FourEdges {
    /// Counts the spaces of both edges, then the ties.
    ///
    /// # Errors
    /// If an edge is shorter than the spacing.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { length, height, spacing } = self;
        let along = Spaces { edge: length, spacing }.work(ledger)?;
        let up = Spaces { edge: height, spacing }.work(ledger)?;
        let ties = TieCount { rows: 2.0, along, uprights: 2.0, up, shared: 2.0 }.work(ledger);
        Ok(self.keep(ledger, ties))
    }
}
rule! {
    /// Panels that cloth of some length is made in: the least number of equal ones that are no longer than the longest.
    PanelCount, "fastening/panel-count", PANELS;
    /// length of all the cloth
    length: Length = "L";
    /// longest panel
    longest: Length = "L_p";
    panels "n": f64
}
impl PanelCount {
    /// Counts them.
    ///
    /// # Errors
    /// If a length is not above 0, or there are more than a million.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let panels = rounded_up((self.length / self.longest).pure());
        within("length of the cloth over that of a panel", PANELS, panels, 1.0, MOST)?;
        Ok(self.keep(ledger, panels))
    }
}
rule! {
    /// Length of one of several equal panels.
    PanelLength, "fastening/panel-length", STATICS.at("equal parts");
    /// length of all the cloth
    length: Length = "L";
    /// panels
    panels: f64 = "n";
    panel "L_n": Length = length / panels
}
rule! {
    /// Area of cloth.
    ClothArea, "fastening/cloth-area", STATICS.at("rectangle");
    /// length
    length: Length = "L";
    /// height
    height: Length = "h";
    area "A": Area as LargeArea = length * height
}
rule! {
    /// Hem of a panel on its four edges, and a band along each row between them.
    HemLength, "fastening/hem-length", STATICS.at("rectangle");
    /// length of the panel
    length: Length = "L";
    /// height of the panel
    height: Length = "h";
    /// rows between the edges
    bands: f64 = "n_b";
    hem "L_h": Length = 2.0 * (length + height) + bands * length
}
rule! {
    /// Rope to order for laced edges.
    RopeLength, "fastening/rope-length", STATICS.at("rope along edges, knots and waste");
    /// length of all laced edges
    edges: Length = "L_e";
    /// rope for each length of edge
    per_length: f64 = "r";
    /// loose ends, two for each piece
    ends: f64 = "n_e";
    /// length of one loose end, for its knot
    tail: Length = "t";
    /// waste, as a share
    waste: f64 as Percent = "v";
    rope "L_r": Length = (1.0 + waste) * (per_length * edges + ends * tail)
}
rule! {
    /// A count and its spares.
    WithSpares, "fastening/with-spares", OURS.at("spares");
    /// how many are needed
    count: f64 = "n";
    /// spares, as a share
    spares: f64 as Percent = "v";
    ordered "n_o": f64
}
impl WithSpares {
    /// Counts them up to a whole number.
    ///
    /// # Errors
    /// If the count or the share is below 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        within("count", OURS.at("spares"), self.count, 0.0, f64::MAX)?;
        within("spares", OURS.at("spares"), self.spares, 0.0, f64::MAX)?;
        let ordered = rounded_up(self.count * (1.0 + self.spares));
        Ok(self.keep(ledger, ordered))
    }
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<CutLength>(),
    Listed::of::<Spaces>(),
    Listed::of::<TieCount>(),
    Listed::of::<FourEdges>(),
    Listed::of::<PanelCount>(),
    Listed::of::<PanelLength>(),
    Listed::of::<ClothArea>(),
    Listed::of::<HemLength>(),
    Listed::of::<RopeLength>(),
    Listed::of::<WithSpares>(),
];

/// Up to a whole number, one that is whole but for rounding being itself.
fn rounded_up(value: f64) -> f64 {
    on_bound(value, &[value.round()]).ceil()
}

/// How the cloth is fixed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fixing {
    /// By ties, one at each grommet.
    Ties,
    /// Laced.
    Lacing {
        /// Outside diameter of what it is laced to.
        rail: Length,
        /// Diameter of the rope.
        rope: Length,
        /// From the rope's middle on the rail to its middle in the grommet.
        offset: Length,
        /// How it goes on from grommet to grommet.
        style: Style,
        /// Edge that one piece of rope laces; one cut frees so much.
        piece: Length,
        /// Length of a loose end, for its knot.
        tail: Length,
    },
}

/// What is asked for.
#[derive(Debug, Clone, PartialEq)]
pub struct Asked {
    /// Length of all the cloth.
    pub length: Length,
    /// Its height.
    pub height: Length,
    /// The rows it is held at.
    pub rows: Rows,
    /// From grommet to grommet, at most.
    pub spacing: Length,
    /// How it is fixed.
    pub fixing: Fixing,
    /// The longest panel, if other than 60 ft.
    pub longest: Option<Length>,
}

/// What to order.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Order {
    /// How many panels.
    pub panels: u32,
    /// Each of them.
    pub panel: Panel,
    /// Grommets of all panels.
    pub grommets: u32,
    /// Ties of all panels; none where it is laced.
    pub ties: u32,
    /// The ties and their spares.
    pub ties_with_spares: u32,
    /// Cloth of all panels, without what the hems turn in.
    pub area: Area,
    /// Hem of all panels.
    pub hem: Length,
    /// Rope of all panels; nothing where it is tied.
    pub rope: Option<Length>,
}

/// A whole number out of one that was counted as a measure; the rules keep it far below the greatest there is.
fn whole(count: f64) -> u32 {
    count as u32
}

/// Counts what cloth of some length takes.
///
/// # Errors
/// If a size is not above 0, or the spacing wider than an edge along which the cloth is held.
pub fn order(asked: &Asked, ledger: &mut impl Ledger) -> Result<Order, FasteningError> {
    let length = above_nought("the length of the cloth", asked.length)?;
    let height = above_nought("the height of the cloth", asked.height)?;
    let longest = match asked.longest {
        Some(longest) => above_nought("the longest panel", longest)?,
        None => ledger.judge("L_p", LONGEST),
    };
    let panels = PanelCount { length, longest }.work(ledger)?;
    let panel = Panel { length: PanelLength { length, panels }.work(ledger), height };
    let hold = Hold::try_new(panel, asked.rows.clone(), asked.spacing)?;
    let grommets = panels * grommets(&hold, ledger)?;
    within("grommets", SHARED, grommets, 1.0, f64::from(u32::MAX) / 2.0)?;
    let (ties, ties_with_spares, rope) = match asked.fixing {
        Fixing::Ties => {
            let spares = ledger.judge("v", SPARES);
            (grommets, WithSpares { count: grommets, spares }.work(ledger)?, None)
        }
        Fixing::Lacing { .. } => (0.0, 0.0, Some(panels * rope(&hold, asked.fixing, ledger)?)),
    };
    let bands = if asked.rows.has(Row::Middle) { 1.0 } else { 0.0 };
    let hem = HemLength { length: panel.length, height, bands }.work(ledger);
    Ok(Order {
        panels: whole(panels),
        panel,
        grommets: whole(grommets),
        ties: whole(ties),
        ties_with_spares: whole(ties_with_spares),
        area: ClothArea { length, height }.work(ledger),
        hem: panels * hem,
        rope,
    })
}

/// The grommets of one panel: a tie each where it is tied.
///
/// # Errors
/// If there are more than a million along one edge.
pub fn grommets(hold: &Hold, ledger: &mut impl Ledger) -> Result<f64, FasteningError> {
    let (panel, rows, spacing) = (hold.panel(), hold.rows(), hold.spacing());
    let level = rows.level().count();
    let along = if level == 0 { 0.0 } else { Spaces { edge: panel.length, spacing }.work(ledger)? };
    let sides = rows.has(Row::Sides);
    let up = if sides { Spaces { edge: panel.height, spacing }.work(ledger)? } else { 0.0 };
    // An upright edge meets a middle row in a tie of its own only where it has one at half the height.
    let meets = |row: &Row| *row != Row::Middle || up % 2.0 == 0.0;
    let shared = rows.level().filter(meets).count();
    let number = |count: usize| f64::from(u8::try_from(count).unwrap_or(u8::MAX));
    let uprights = if sides { 2.0 } else { 0.0 };
    let rule = TieCount { rows: number(level), along, uprights, up, shared: number(shared) };
    Ok(rule.work(ledger))
}

/// The rope of one panel.
fn rope(hold: &Hold, fixing: Fixing, ledger: &mut impl Ledger) -> Result<Length, FasteningError> {
    let nought = Length::from_si(0.0);
    let Fixing::Lacing { rail, rope, offset, style, piece, tail } = fixing else { return Ok(nought) };
    let piece = above_nought("the edge that one piece of rope laces", piece)?;
    let tail = not_below_nought("the loose end of a piece of rope", tail)?;
    let wrap = Wrap { rail, rope, offset, spacing: hold.spacing() };
    let per_length = wrap.rope_per_length(style, ledger)?;
    let (mut edges, mut ends) = (nought, 0.0);
    for row in hold.rows().iter() {
        let edge = hold.panel().edge(row);
        let times = if row == Row::Sides { 2.0 } else { 1.0 };
        edges += times * edge;
        ends += times * 2.0 * rounded_up((edge / piece).pure());
    }
    let waste = ledger.judge("v", WASTE);
    Ok(RopeLength { edges, per_length, ends, tail, waste }.work(ledger))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{metres, millimetres};
    use crate::workings::{Blank, Entry};
    use proptest::prelude::*;

    fn asked(length: f64, height: f64, spacing: f64, rows: &[Row]) -> Asked {
        Asked {
            length: feet(length),
            height: feet(height),
            rows: Rows::try_new(rows).unwrap(),
            spacing: inches(spacing),
            fixing: Fixing::Ties,
            longest: None,
        }
    }

    const EDGES: [Row; 3] = [Row::Top, Row::Bottom, Row::Sides];

    fn count(asked: &Asked) -> u32 {
        order(asked, &mut Blank).unwrap().ties
    }

    #[test]
    fn sixty_feet_of_nine_foot_cloth_at_12_inches_on_four_edges_take_138_ties_before_spares() {
        let found = order(&asked(60.0, 9.0, 12.0, &EDGES), &mut Blank).unwrap();
        assert_eq!((found.panels, found.ties, found.grommets), (1, 138, 138));
        assert_eq!(found.ties_with_spares, 152);
        assert!(((found.area / (feet(60.0) * feet(9.0))).pure() - 1.0).abs() < 1e-12);
        assert!(((found.hem / feet(138.0)).pure() - 1.0).abs() < 1e-12);
        assert_eq!(found.rope, None);
    }

    /// The ties one by one: their places, those that two edges name thrown out.
    fn places(length: f64, height: f64, spacing: f64, rows: &[Row]) -> usize {
        let evenly = |edge: f64| {
            let spaces = (edge * 12.0 / spacing - 1e-9).ceil();
            (0..=spaces as u32).map(move |at| edge * f64::from(at) / spaces)
        };
        let mut found: Vec<(i64, i64)> = Vec::new();
        let mut put = |x: f64, y: f64| {
            let place = ((x * 1e6).round() as i64, (y * 1e6).round() as i64);
            if !found.contains(&place) {
                found.push(place);
            }
        };
        for row in rows {
            match row {
                Row::Top => evenly(length).for_each(|x| put(x, height)),
                Row::Middle => evenly(length).for_each(|x| put(x, 0.5 * height)),
                Row::Bottom => evenly(length).for_each(|x| put(x, 0.0)),
                Row::Sides => evenly(height).for_each(|y| {
                    put(0.0, y);
                    put(length, y);
                }),
            }
        }
        found.len()
    }

    #[test]
    fn ties_are_counted_as_they_stand() {
        use Row::{Bottom, Middle, Sides, Top};
        for rows in [
            &[Top][..],
            &[Top, Bottom],
            &[Sides],
            &[Top, Sides],
            &EDGES,
            &[Top, Middle, Bottom],
            &[Middle, Sides],
            &[Top, Middle, Bottom, Sides],
        ] {
            for (length, height, spacing) in [
                (60.0, 9.0, 12.0),
                (60.0, 9.0, 18.0),
                (40.0, 6.0, 24.0),
                (20.0, 12.0, 12.0),
                (13.0, 5.5, 7.0),
            ] {
                let ours = count(&asked(length, height, spacing, rows)) as usize;
                assert_eq!(
                    ours,
                    places(length, height, spacing, rows),
                    "{rows:?} {length} {height} {spacing}"
                );
            }
        }
    }

    #[test]
    fn a_court_side_of_120_feet_is_two_panels_and_61_feet_are_two_as_well() {
        for (length, panels) in [(60.0, 1), (60.1, 2), (120.0, 2), (121.0, 3)] {
            let found = order(&asked(length, 9.0, 12.0, &EDGES), &mut Blank).unwrap();
            assert_eq!(found.panels, panels, "{length}");
            assert!(((found.panel.length * f64::from(panels) / feet(length)).pure() - 1.0).abs() < 1e-12);
        }
        // Sixty feet that were measured in metres are sixty feet.
        let metric = Asked { length: metres(18.288), ..asked(60.0, 9.0, 12.0, &EDGES) };
        assert_eq!(order(&metric, &mut Blank).unwrap().panels, 1);
        let told = Asked { longest: Some(feet(130.0)), ..asked(120.0, 9.0, 12.0, &EDGES) };
        let mut ledger = Vec::new();
        assert_eq!(order(&told, &mut ledger).unwrap().panels, 1);
        assert!(!ledger.iter().any(|entry| matches!(entry, Entry::Judged { symbol: "L_p", .. })));
    }

    fn laced(rows: &[Row]) -> Asked {
        let fixing = Fixing::Lacing {
            rail: inches(1.66),
            rope: inches(0.25),
            offset: inches(1.0),
            style: Style::Plain,
            piece: feet(10.0),
            tail: inches(12.0),
        };
        Asked { fixing, ..asked(60.0, 9.0, 12.0, rows) }
    }

    #[test]
    fn laced_cloth_takes_rope_by_its_edges_and_no_ties() {
        let found = order(&laced(&EDGES), &mut Blank).unwrap();
        assert_eq!((found.ties, found.ties_with_spares, found.grommets), (0, 0, 138));
        // 138 ft of edge at 1.174 ft a foot; 6 + 6 + 1 + 1 pieces with two ends of a foot; a tenth more.
        let rope = (found.rope.unwrap() / feet(1.0)).pure();
        assert!((rope - 1.1 * (138.0 * 1.17426 + 28.0)).abs() < 0.01, "{rope}");
    }

    #[test]
    fn bad_questions_are_errors_with_their_data() {
        let wide = order(&asked(60.0, 9.0, 120.0, &EDGES), &mut Blank).unwrap_err();
        assert!(matches!(wide, FasteningError::SpacingWiderThanEdge { row: Row::Sides, .. }), "{wide}");
        for wrong in [
            Asked { spacing: inches(0.0), ..asked(60.0, 9.0, 12.0, &EDGES) },
            Asked { length: feet(0.0), ..asked(60.0, 9.0, 12.0, &EDGES) },
            Asked { height: feet(f64::NAN), ..asked(60.0, 9.0, 12.0, &EDGES) },
            Asked { longest: Some(feet(-1.0)), ..asked(60.0, 9.0, 12.0, &EDGES) },
        ] {
            let error = order(&wrong, &mut Blank).unwrap_err();
            assert!(matches!(error, FasteningError::NotAboveNought { .. }), "{error}");
        }
        let slip = Asked { spacing: millimetres(0.001), ..asked(60.0, 9.0, 12.0, &EDGES) };
        assert!(matches!(order(&slip, &mut Blank), Err(FasteningError::OutOfRange(_))));
        let mut lacing = laced(&EDGES);
        if let Fixing::Lacing { piece, .. } = &mut lacing.fixing {
            *piece = feet(0.0);
        }
        assert!(order(&lacing, &mut Blank).is_err());
    }

    #[test]
    fn six_inches_come_off_each_end() {
        let cut = CutLength { opening: feet(61.0), gap: END_GAP.value }.work(&mut Blank);
        assert!(((cut / feet(60.0)).pure() - 1.0).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn closer_ties_are_never_fewer_and_never_further_apart_than_asked(
            length in 10.0..200.0_f64, height in 4.0..20.0_f64, spacing in 4.0..40.0_f64, closer in 0.5..1.0_f64
        ) {
            let here = count(&asked(length, height, spacing, &EDGES));
            prop_assert!(count(&asked(length, height, spacing * closer, &EDGES)) >= here);
            let spaces = Spaces { edge: feet(length), spacing: inches(spacing) }.work(&mut Blank).unwrap();
            prop_assert!(length * 12.0 / spaces <= spacing * (1.0 + 1e-9));
            prop_assert!(length * 12.0 / spacing > spaces - 1.0 - 1e-6);
        }

        #[test]
        fn the_same_in_either_unit(feet_long in 10..200_u32, height in 4..20_u32, spacing in 4..40_u32) {
            let us = asked(f64::from(feet_long), f64::from(height), f64::from(spacing), &EDGES);
            let si = Asked {
                length: metres(f64::from(feet_long) * 0.3048),
                height: metres(f64::from(height) * 0.3048),
                spacing: millimetres(f64::from(spacing) * 25.4),
                ..us.clone()
            };
            let (one, other) = (order(&us, &mut Blank).unwrap(), order(&si, &mut Blank).unwrap());
            prop_assert_eq!((one.panels, one.ties, one.grommets), (other.panels, other.ties, other.grommets));
        }
    }
}
