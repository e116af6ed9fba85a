//! What follows when a tie of a row fails: its load goes to its neighbours, and they may follow it.
//!
//! The cloth of ties that are gone hangs on the next tie that holds on each side. By statics each takes half of it, so
//! that the neighbour of one lost tie carries 1.5 times its own; let go at once it may for a moment take the whole, 2
//! times its own. At the end of a row there is one neighbour, and it takes the whole.
//!
//! More lost never unloads a tie that holds. What is left at the end therefore does not hang on the order in which they
//! go, and the same row always ends the same way.

use super::{FasteningError, above_nought, not_below_nought};
use crate::numerics::ROUNDING;
use crate::rule;
use crate::source::{Clause, OURS, STATICS, Stated};
use crate::units::{Force, Pure, Quantity};
use crate::workings::{Blank, Ledger, Listed, within};

const NEIGHBOURS: Clause = OURS.at("neighbours of a lost tie");

/// The load of the neighbour of one lost tie over its own, by statics.
pub const LEAST: Stated<f64> =
    Stated { value: 1.5, because: "ours: each neighbour takes half of what a lost tie held, by statics" };
/// The same where the tie lets go at once.
pub const GREATEST: Stated<f64> = Stated {
    value: 2.0,
    because: "ours: let go at once, a load counts twice, so that each neighbour takes the whole of what a lost tie held",
};

rule! {
    /// Load of a tie beside a gap.
    NeighbourLoad, "fastening/neighbour-load", NEIGHBOURS;
    /// its own pull
    own: Force = "F";
    /// load of the neighbour of one lost tie over its own
    spread: f64 = "m";
    /// pulls of the ties that are gone between it and the next that holds, on both sides
    lost: Force = "ΣF_g";
    load "F'": Force = own + (spread - 1.0) * lost
}

rule! {
    /// By what a pull can be multiplied until the tie is at its strength.
    Multiplier, "fastening/pull-to-strength", STATICS.at("quotient");
    /// pull
    pull: Force = "F";
    /// strength
    strength: Force = "R";
    multiplier "R/F": f64 = (strength / pull).pure()
}
rule! {
    /// Pull when the wind on all ties is multiplied.
    MultipliedPull, "fastening/multiplied-pull", STATICS.at("product");
    /// pull
    pull: Force = "F";
    /// by what it is multiplied
    multiplier: f64 = "m_w";
    multiplied "F_m": Force = multiplier * pull
}

/// The rules of this module by name.
pub const RULES: &[Listed] =
    &[Listed::of::<NeighbourLoad>(), Listed::of::<Multiplier>(), Listed::of::<MultipliedPull>()];

/// One tie of a row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tie {
    /// The pull on it while all hold.
    pub pull: Force,
    /// What it carries.
    pub strength: Force,
}

/// The tie that goes first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct First {
    /// Its number along the row, the first being 0.
    pub tie: usize,
    /// By what all pulls can be multiplied until it is at its strength; below 1 it is past it already.
    pub at: f64,
}

/// How a row ends.
#[derive(Debug, Clone, PartialEq)]
pub struct Unzipped {
    /// The load of the neighbour of one lost tie over its own that was reckoned with.
    pub spread: f64,
    /// The ties that went, round by round; within a round along the row.
    pub rounds: Vec<Vec<usize>>,
    /// The loads of those that hold, nothing for those that are gone.
    pub loads: Vec<Option<Force>>,
}

impl Unzipped {
    /// The ties that are gone, along the row.
    pub fn gone(&self) -> impl Iterator<Item = usize> + '_ {
        self.loads.iter().enumerate().filter(|(_, load)| load.is_none()).map(|(at, _)| at)
    }

    /// Whether every tie of the row is gone.
    #[must_use]
    pub fn runs_out(&self) -> bool {
        self.loads.iter().all(Option::is_none)
    }

    /// Whether all hold.
    #[must_use]
    pub fn all_hold(&self) -> bool {
        self.rounds.is_empty()
    }
}

fn sound(ties: &[Tie]) -> Result<(), FasteningError> {
    if ties.is_empty() {
        return Err(FasteningError::NoTies);
    }
    for tie in ties {
        not_below_nought("the pull on a tie", tie.pull)?;
        above_nought("the strength of a tie", tie.strength)?;
    }
    Ok(())
}

/// The tie that goes first as the wind rises, and by what all pulls must be multiplied; of several alike the first
/// along the row.
///
/// # Errors
/// If there are no ties, a pull is below 0 or a strength not above it.
pub fn first(ties: &[Tie]) -> Result<First, FasteningError> {
    sound(ties)?;
    let mut found = First { tie: 0, at: f64::INFINITY };
    for (tie, Tie { pull, strength }) in ties.iter().enumerate() {
        let at = Multiplier { pull: *pull, strength: *strength }.work(&mut Blank);
        if at < found.at {
            found = First { tie, at };
        }
    }
    Ok(found)
}

/// Whether a load is past a strength by more than rounding: a tie just at its strength holds, in any unit.
fn is_past(load: Force, strength: Force) -> bool {
    load > strength * (1.0 + ROUNDING)
}

/// The loads of the ties that hold, with their gaps shared out.
fn loads(ties: &[Tie], gone: &[bool], spread: f64) -> Vec<Option<NeighbourLoad>> {
    (0..ties.len())
        .map(|tie| {
            if gone[tie] {
                return None;
            }
            let before: Force = nought_or_sum(ties[..tie].iter().zip(&gone[..tie]).rev());
            let after: Force = nought_or_sum(ties[tie + 1..].iter().zip(&gone[tie + 1..]));
            // A gap that reaches the end of the row has one neighbour, which takes it whole.
            let weight = |other_side: bool| if other_side { 1.0 } else { 1.0 / (spread - 1.0) };
            let holds = |side: &[bool]| side.iter().any(|gone| !gone);
            let lost = weight(holds(&gone[..tie])) * before + weight(holds(&gone[tie + 1..])) * after;
            Some(NeighbourLoad { own: ties[tie].pull, spread, lost })
        })
        .collect()
}

/// The pulls of the ties that are gone up to the next that holds.
fn nought_or_sum<'t>(towards: impl Iterator<Item = (&'t Tie, &'t bool)>) -> Force {
    towards.take_while(|(_, gone)| **gone).fold(Force::from_si(0.0), |sum, (tie, _)| sum + tie.pull)
}

/// Lets a row of ties fail, each that is loaded past its strength, and hands their load on until it stops.
///
/// # Errors
/// If there are no ties, a pull is below 0, a strength not above it, or the spread not between 1.5 and 2.
pub fn unzip(ties: &[Tie], spread: f64, ledger: &mut impl Ledger) -> Result<Unzipped, FasteningError> {
    run(ties, spread, None, ledger)
}

/// The same, with one tie taken out before: cut, or worn through.
///
/// # Errors
/// As for [`unzip`], or if there is no such tie.
pub fn unzip_without(
    ties: &[Tie],
    lost: usize,
    spread: f64,
    ledger: &mut impl Ledger,
) -> Result<Unzipped, FasteningError> {
    if lost >= ties.len() {
        return Err(FasteningError::NoSuchTie { tie: lost, ties: ties.len() });
    }
    run(ties, spread, Some(lost), ledger)
}

/// What follows at the wind at which the first tie goes, the pulls of all multiplied by what brings it to its strength.
///
/// # Errors
/// As for [`unzip`].
pub fn after_the_first(
    ties: &[Tie],
    spread: f64,
    ledger: &mut impl Ledger,
) -> Result<(First, Unzipped), FasteningError> {
    let first = first(ties)?;
    if first.at.is_infinite() {
        return Ok((first, run(ties, spread, None, ledger)?));
    }
    let Tie { pull, strength } = ties[first.tie];
    let multiplier = Multiplier { pull, strength }.work(ledger);
    let at = |tie: &Tie| MultipliedPull { pull: tie.pull, multiplier }.work(&mut Blank);
    let there: Vec<Tie> = ties.iter().map(|tie| Tie { pull: at(tie), ..*tie }).collect();
    Ok((first, run(&there, spread, Some(first.tie), ledger)?))
}

/// A row at both ends of the range of what neighbours take: 1.5 and 2 times.
///
/// # Errors
/// As for [`unzip`].
pub fn at_both_ends(ties: &[Tie], ledger: &mut impl Ledger) -> Result<[Unzipped; 2], FasteningError> {
    let least = ledger.judge("m", LEAST);
    let low = unzip(ties, least, ledger)?;
    let greatest = ledger.judge("m", GREATEST);
    Ok([low, unzip(ties, greatest, ledger)?])
}

fn run(
    ties: &[Tie],
    spread: f64,
    lost: Option<usize>,
    ledger: &mut impl Ledger,
) -> Result<Unzipped, FasteningError> {
    sound(ties)?;
    within("load of a neighbour over its own", NEIGHBOURS, spread, LEAST.value, GREATEST.value)?;
    let mut gone = vec![false; ties.len()];
    let mut rounds: Vec<Vec<usize>> = Vec::new();
    let mut going: Vec<usize> = lost.into_iter().collect();
    loop {
        if !going.is_empty() {
            going.iter().for_each(|tie| gone[*tie] = true);
            rounds.push(std::mem::take(&mut going));
        }
        let asked = loads(ties, &gone, spread);
        going = (0..ties.len())
            .filter(|tie| asked[*tie].is_some_and(|load| is_past(load.work(&mut Blank), ties[*tie].strength)))
            .collect();
        if going.is_empty() {
            // The tie nearest to following, if any gave way, is written down.
            let ratio = |tie: &usize| {
                asked[*tie].map_or(0.0, |load| (load.work(&mut Blank) / ties[*tie].strength).pure())
            };
            let nearest = (0..ties.len()).max_by(|one, other| ratio(one).total_cmp(&ratio(other)));
            if let (false, Some(load)) = (rounds.is_empty(), nearest.and_then(|tie| asked[tie])) {
                let _ = load.work(ledger);
            }
            let loads = asked.into_iter().map(|load| load.map(|load| load.work(&mut Blank))).collect();
            return Ok(Unzipped { spread, rounds, loads });
        }
        // What brings the first of a round down is written down.
        if let Some(load) = going.first().and_then(|tie| asked[*tie]) {
            let _ = load.work(ledger);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fastening::ties::{Hold, Panel, Row, Rows};
    use crate::units::{feet, inches, pounds, psf};
    use crate::workings::Entry;
    use proptest::prelude::*;

    fn row(pulls: &[f64], strength: f64) -> Vec<Tie> {
        pulls.iter().map(|pull| Tie { pull: pounds(*pull), strength: pounds(strength) }).collect()
    }

    fn ended(ties: &[Tie], spread: f64) -> Unzipped {
        unzip(ties, spread, &mut Blank).unwrap()
    }

    #[test]
    fn the_neighbour_of_one_lost_tie_carries_once_and_a_half_to_twice_its_own() {
        for (spread, load) in [(1.5, 15.0), (2.0, 20.0)] {
            let end = unzip_without(&row(&[10.0; 7], 50.0), 3, spread, &mut Blank).unwrap();
            assert_eq!(end.gone().collect::<Vec<_>>(), [3]);
            for (tie, held) in end.loads.iter().enumerate() {
                let expected = match tie {
                    3 => None,
                    2 | 4 => Some(load),
                    _ => Some(10.0),
                };
                assert_eq!(held.map(|held| (held / pounds(1.0)).pure().round()), expected, "{tie}");
            }
        }
    }

    #[test]
    fn by_statics_no_load_is_lost_and_at_the_end_of_a_row_one_neighbour_takes_the_whole() {
        for lost in 0..5 {
            let end = unzip_without(&row(&[10.0; 5], 50.0), lost, 1.5, &mut Blank).unwrap();
            let sum: f64 = end.loads.iter().flatten().map(|load| (*load / pounds(1.0)).pure()).sum();
            assert!((sum - 50.0).abs() < 1e-9, "{lost}: {sum}");
        }
        let end = unzip_without(&row(&[10.0; 5], 50.0), 0, 1.5, &mut Blank).unwrap();
        assert!(((end.loads[1].unwrap() / pounds(20.0)).pure() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_weak_end_stops_where_the_pulls_fall_off_and_runs_out_where_they_do_not() {
        // One tie past its strength; half of 60 on 40 makes 70, on 10 makes 40.
        let steep = row(&[10.0, 10.0, 60.0, 10.0, 10.0], 50.0);
        let end = ended(&steep, 1.5);
        assert_eq!(end.rounds, [vec![2]]);
        assert!(!end.runs_out() && !end.all_hold());
        // Let go at once it makes 70, and the whole row follows.
        let end = ended(&steep, 2.0);
        assert_eq!(end.rounds, [vec![2], vec![1, 3], vec![0, 4]]);
        assert!(end.runs_out());
        let flat = row(&[40.0, 40.0, 60.0, 40.0, 40.0], 50.0);
        assert!(ended(&flat, 1.5).runs_out());
        let [low, high] = at_both_ends(&steep, &mut Blank).unwrap();
        assert_eq!((low.spread, high.spread), (1.5, 2.0));
        assert_eq!((low.runs_out(), high.runs_out()), (false, true));
    }

    #[test]
    fn a_row_that_holds_is_left_alone_and_one_at_its_strength_holds() {
        let end = ended(&row(&[50.0; 9], 50.0), 2.0);
        assert!(end.all_hold() && end.gone().next().is_none());
        assert_eq!(end.loads.len(), 9);
    }

    #[test]
    fn with_pulls_all_alike_the_first_takes_the_row_with_it() {
        let (first, end) = after_the_first(&row(&[45.0; 60], 50.0), 1.5, &mut Blank).unwrap();
        assert_eq!(first.tie, 0);
        assert!((first.at - 50.0 / 45.0).abs() < 1e-12);
        assert!(end.runs_out());
        assert_eq!(end.rounds.len(), 60);
    }

    #[test]
    fn ties_as_near_their_strength_as_the_first_do_not_go_by_rounding() {
        for tenths in 1..400_u32 {
            // Ten ties away another with the pull of the first; those between have a fifth of it.
            let pull = f64::from(tenths) / 10.0;
            let mut pulls = [pull / 5.0; 21];
            (pulls[5], pulls[15]) = (pull, pull);
            let (first, end) = after_the_first(&row(&pulls, 50.0), 1.5, &mut Blank).unwrap();
            assert_eq!((first.tie, end.gone().collect::<Vec<_>>()), (5, vec![5]), "{pull}");
        }
    }

    #[test]
    fn at_the_wind_that_takes_the_first_tie_its_neighbours_pull_harder_too() {
        // 40 reaches 50 at 1.25 times the wind. There the neighbour has 1.25 × 25 and half of the 50 let go, 56.25;
        // with its pull of today it would hold: 25 and 20.
        let (first, end) =
            after_the_first(&row(&[10.0, 10.0, 40.0, 25.0, 10.0], 50.0), 1.5, &mut Blank).unwrap();
        assert_eq!(first, First { tie: 2, at: 1.25 });
        assert_eq!(end.rounds[..2], [vec![2], vec![3]]);
    }

    #[test]
    fn calm_pulls_at_nothing_and_the_weakest_tie_is_named() {
        let (first, end) = after_the_first(&row(&[0.0; 3], 50.0), 1.5, &mut Blank).unwrap();
        assert_eq!((first.at, end.all_hold()), (f64::INFINITY, true));
        let mut ties = row(&[10.0; 4], 50.0);
        ties[2].strength = pounds(25.0);
        assert_eq!(super::first(&ties).unwrap(), First { tie: 2, at: 2.5 });
    }

    #[test]
    fn bad_rows_are_errors_with_their_data() {
        assert_eq!(unzip(&[], 1.5, &mut Blank).unwrap_err(), FasteningError::NoTies);
        let ties = row(&[10.0; 3], 50.0);
        let none = unzip_without(&ties, 3, 1.5, &mut Blank).unwrap_err();
        assert_eq!(none, FasteningError::NoSuchTie { tie: 3, ties: 3 });
        for spread in [1.49, 2.01, f64::NAN] {
            assert!(matches!(unzip(&ties, spread, &mut Blank), Err(FasteningError::OutOfRange(_))));
        }
        assert!(first(&row(&[-1.0], 50.0)).is_err() && first(&row(&[1.0], 0.0)).is_err());
    }

    #[test]
    fn what_brings_each_round_down_is_written_and_the_range_is_a_judgement() {
        let mut ledger = Vec::new();
        at_both_ends(&row(&[10.0, 10.0, 60.0, 10.0, 10.0], 50.0), &mut ledger).unwrap();
        let judged = ledger.iter().filter(|entry| matches!(entry, Entry::Judged { symbol: "m", .. })).count();
        let worked = ledger.iter().filter(|entry| matches!(entry, Entry::Worked { .. })).count();
        // 60 alone and the tie nearest to following at 1.5; three rounds at 2.
        assert_eq!((judged, worked), (2, 5));
    }

    /// The same by letting one tie go at a time, the most overloaded first: another order.
    fn one_at_a_time(ties: &[Tie], spread: f64) -> Vec<bool> {
        let mut gone = vec![false; ties.len()];
        loop {
            let asked = loads(ties, &gone, spread);
            let ratio = |tie: usize| {
                asked[tie].map_or(0.0, |load| (load.work(&mut Blank) / ties[tie].strength).pure())
            };
            match (0..ties.len()).max_by(|one, other| ratio(*one).total_cmp(&ratio(*other))) {
                Some(tie) if ratio(tie) > 1.0 + ROUNDING => gone[tie] = true,
                _ => return gone,
            }
        }
    }

    fn ties() -> impl Strategy<Value = Vec<Tie>> {
        prop::collection::vec((0.0..60.0_f64, 20.0..120.0_f64), 1..40).prop_map(|ties| {
            ties.into_iter()
                .map(|(pull, strength)| Tie { pull: pounds(pull), strength: pounds(strength) })
                .collect()
        })
    }

    proptest! {
        #[test]
        fn the_order_in_which_they_go_does_not_matter_nor_the_side_it_is_read_from(ties in ties(), spread in 1.5..=2.0_f64) {
            let end = ended(&ties, spread);
            let gone: Vec<bool> = end.loads.iter().map(Option::is_none).collect();
            prop_assert_eq!(&gone, &one_at_a_time(&ties, spread));
            let mirrored: Vec<Tie> = ties.iter().rev().copied().collect();
            let back: Vec<bool> = ended(&mirrored, spread).loads.iter().rev().map(Option::is_none).collect();
            prop_assert_eq!(gone, back);
        }

        #[test]
        fn stronger_ties_never_go_that_weaker_ones_keep(ties in ties(), spread in 1.5..=2.0_f64, more in 1.0..2.0_f64, which in 0..40_usize) {
            let mut stronger = ties.clone();
            let which = which % ties.len();
            stronger[which].strength *= more;
            let weak: Vec<usize> = ended(&ties, spread).gone().collect();
            prop_assert!(ended(&stronger, spread).gone().all(|tie| weak.contains(&tie)));
            prop_assert!(first(&stronger).unwrap().at >= first(&ties).unwrap().at);
        }

        #[test]
        fn more_pull_and_a_harder_let_go_never_save_a_tie(ties in ties(), spread in 1.5..=2.0_f64, more in 1.0..2.0_f64) {
            let pulled: Vec<Tie> = ties.iter().map(|tie| Tie { pull: tie.pull * more, ..*tie }).collect();
            let after: Vec<usize> = ended(&pulled, spread).gone().collect();
            prop_assert!(ended(&ties, spread).gone().all(|tie| after.contains(&tie)));
            let hard: Vec<usize> = ended(&ties, 2.0).gone().collect();
            prop_assert!(ended(&ties, spread).gone().all(|tie| hard.contains(&tie)));
            prop_assert!(first(&pulled).unwrap().at <= first(&ties).unwrap().at);
        }

        #[test]
        fn a_stronger_tie_never_goes_earlier_and_a_wider_spacing_never_later(
            height in 3.0..20.0_f64, spacing in 4.0..24.0_f64, strength in 18.0..250.0_f64, more in 1.0..1.5_f64
        ) {
            // The pressure at which the first tie of a panel goes, over 10 psf.
            let goes = |spacing: f64, strength: f64| {
                let panel = Panel { length: feet(20.0), height: feet(height) };
                let rows = Rows::try_new(&[Row::Top, Row::Middle, Row::Bottom]).unwrap();
                let hold = Hold::try_new(panel, rows, inches(spacing)).unwrap();
                let pulls = hold.pulls(|_| psf(10.0), &mut Blank).unwrap();
                let ties: Vec<Tie> =
                    pulls.iter().map(|row| Tie { pull: row.nominal, strength: pounds(strength) }).collect();
                first(&ties).unwrap().at
            };
            let here = goes(spacing, strength);
            prop_assert!(goes(spacing, strength * more) >= here);
            prop_assert!(goes(spacing * more, strength) <= here);
        }

        #[test]
        fn by_statics_what_holds_carries_the_whole_row(ties in ties()) {
            let end = ended(&ties, 1.5);
            prop_assume!(!end.runs_out());
            let sum = |forces: &mut dyn Iterator<Item = Force>| forces.map(|force| force.si()).sum::<f64>();
            let before = sum(&mut ties.iter().map(|tie| tie.pull));
            let after = sum(&mut end.loads.iter().flatten().copied());
            prop_assert!((after - before).abs() <= 1e-9 * before);
        }
    }
}
