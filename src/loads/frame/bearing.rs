//! Stretches of load along a run, put down on the posts or on the rails of a frame.

use super::Way;
use super::model::{Column, LaidRun, Model, rail_height, share};
use crate::fence::{RailPlace, Run};
use crate::frame::{Action, Axes, Loads, MemberLoad, Triple};
use crate::loads::pieces::{Piece, Pieces};
use crate::units::{Force, Length, LineLoad, Moment, Quantity};
use crate::workings::Blank;

/// Heights that differ by less are one.
const THIN: f64 = 1e-9;

/// A load spread straight over some heights: what it is at a height for each unit of the whole, its resultant at `arm`.
#[derive(Clone, Copy)]
struct Spread {
    low: f64,
    high: f64,
    arm: f64,
}

impl Spread {
    fn of((low, high): (Length, Length), arm: Length) -> Self {
        Self { low: low.si(), high: high.si(), arm: arm.si() }
    }
    fn is_at_one_height(&self) -> bool {
        self.high - self.low < THIN
    }
    /// Straight, 1/s in the middle: with its resultant e above the middle 1/s (1 ± 6 e/s) at its edges.
    fn at(&self, z: f64) -> f64 {
        let (height, middle) = (self.high - self.low, 0.5 * (self.low + self.high));
        (1.0 + 12.0 * (self.arm - middle) * (z - middle) / (height * height)) / height
    }
    /// What each of some supports takes of the whole by the lever rule between neighbours; supports rise from the ground.
    fn shares(&self, supports: &[f64]) -> Vec<f64> {
        let mut shares = vec![0.0; supports.len()];
        for (at, pair) in supports.windows(2).enumerate() {
            let reach = |first: bool, own: f64, far: f64| if first { far } else { own };
            let low = self.low.max(reach(at == 0, pair[0], f64::NEG_INFINITY));
            let high = self.high.min(reach(at + 2 == supports.len(), pair[1], f64::INFINITY));
            let upper = |z: f64| (z - pair[0]) / (pair[1] - pair[0]);
            if self.is_at_one_height() {
                let here = self.arm >= reach(at == 0, pair[0], f64::NEG_INFINITY)
                    && self.arm < reach(at + 2 == supports.len(), pair[1], f64::INFINITY);
                if here {
                    shares[at] += 1.0 - upper(self.arm);
                    shares[at + 1] += upper(self.arm);
                }
                continue;
            }
            if high <= low {
                continue;
            }
            // Straight load times straight lever: Simpson's rule is exact.
            let middle = 0.5 * (low + high);
            let over = |of: &dyn Fn(f64) -> f64| (high - low) / 6.0 * (of(low) + 4.0 * of(middle) + of(high));
            shares[at] += over(&|z| self.at(z) * (1.0 - upper(z)));
            shares[at + 1] += over(&|z| self.at(z) * upper(z));
        }
        shares
    }
}

fn across<Q: Quantity>(laid: &LaidRun, size: Q) -> Triple<Q> {
    Triple {
        x: Q::from_si(size.si() * laid.across[0]),
        y: Q::from_si(size.si() * laid.across[1]),
        z: Q::from_si(0.0),
    }
}

fn on_column(loads: &mut Loads, laid: &LaidRun, column: &Column, force: Force, spread: &Spread) {
    if force.si() == 0.0 {
        return;
    }
    for (member, from, to) in &column.parts {
        if spread.is_at_one_height() {
            let last = column.parts.last().is_some_and(|part| part.0 == *member);
            if spread.arm >= from.si() && (spread.arm < to.si() || last) {
                let at = Length::from_si(spread.arm.min(to.si())) - *from;
                let point = MemberLoad::Point {
                    at,
                    force: across(laid, force),
                    moment: Triple::none(),
                    axes: Axes::Frame,
                };
                loads.on_member(*member, point);
            }
            continue;
        }
        let (low, high) = (spread.low.max(from.si()), spread.high.min(to.si()));
        if high <= low {
            continue;
        }
        let load = |z: f64| across(laid, LineLoad::from_si(force.si() * spread.at(z)));
        let part = MemberLoad::Part {
            from: Length::from_si(low) - *from,
            to: Length::from_si(high) - *from,
            at_from: load(low),
            at_to: load(high),
            axes: Axes::Frame,
        };
        loads.on_member(*member, part);
    }
}

/// One case of loads on a frame, its whole force along its run's own way, and the weight of its posts.
pub(super) struct Borne {
    pub(super) loads: Loads,
    pub(super) force: Force,
}

/// Puts one case of a run down; nothing where that way needs rails and there are none.
pub(super) fn put_down(
    model: &Model,
    laid: &LaidRun,
    run: &Run,
    pieces: &Pieces<'_>,
    way: Way,
) -> Option<Borne> {
    if way == Way::Rails && !laid.rails.iter().flatten().any(|rail| rail.place == RailPlace::Top) {
        return None;
    }
    let mut borne = Borne { loads: Loads::new(), force: Force::from_si(0.0) };
    for column in &model.columns {
        for (member, ..) in &column.parts {
            let load = Triple::along_z(LineLoad::from_si(-column.weight.si()));
            borne.loads.on_member(*member, MemberLoad::Even { load, axes: Axes::Frame });
        }
    }
    for piece in &pieces.pieces {
        let spread = Spread::of(piece.over, piece.arm);
        let through_rails =
            way == Way::Rails && laid.rails[piece.bay].iter().any(|rail| rail.place == RailPlace::Top);
        let to_feet = if through_rails { on_rails(&mut borne.loads, laid, run, piece, &spread) } else { 0.0 };
        for (post, force) in pieces.shares(piece, &mut Blank) {
            borne.force += force;
            let column = &model.columns[laid.columns[post]];
            if through_rails {
                let action = Action {
                    force: across(laid, Force::from_si(force.si() * to_feet)),
                    moment: Triple::<Moment>::none(),
                };
                borne.loads.on_joint(column.foot, action);
            } else {
                on_column(&mut borne.loads, laid, column, force, &spread);
            }
        }
    }
    for point in &pieces.points {
        let force = point.face.work(&mut Blank);
        borne.force += force;
        let column = &model.columns[laid.columns[point.post]];
        on_column(&mut borne.loads, laid, column, force, &Spread::of(point.over, point.arm));
    }
    Some(borne)
}

/// Puts a stretch on the rails of its bay; what is left for the feet, as a share.
fn on_rails(loads: &mut Loads, laid: &LaidRun, run: &Run, piece: &Piece, spread: &Spread) -> f64 {
    let rails = &laid.rails[piece.bay];
    let mut supports = vec![0.0];
    supports.extend(rails.iter().map(|rail| rail_height(run, rail.place).si()));
    let shares = spread.shares(&supports);
    let (start, width) = (run.posts[piece.bay].at, run.bays[piece.bay].width);
    for (rail, taken) in rails.iter().zip(&shares[1..]) {
        let long = width * rail.stretch;
        let place = |at: Length| long * share(at - start, width);
        let load = |load: LineLoad| across(laid, load * (*taken / rail.stretch));
        let part = MemberLoad::Part {
            from: place(piece.from),
            to: place(piece.to),
            at_from: load(piece.load_from),
            at_to: load(piece.load_to),
            axes: Axes::Frame,
        };
        loads.on_member(rail.member, part);
    }
    shares[0]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::feet;

    /// Nine feet of cloth from one to ten feet with its resultant at 5.5 ft + 0.45 ft.
    const CLOTH: Spread = Spread { low: 1.0, high: 10.0, arm: 5.95 };

    #[test]
    fn cloth_with_its_resultant_a_twentieth_above_the_middle_goes_from_0_7_to_1_3_of_its_mean() {
        assert!((CLOTH.at(1.0) * 9.0 - 0.7).abs() < 1e-12 && (CLOTH.at(10.0) * 9.0 - 1.3).abs() < 1e-12);
    }

    #[test]
    fn supports_take_all_of_a_load_and_its_moment() {
        for supports in [vec![0.0, 10.0], vec![0.0, 5.0, 10.0]] {
            let rail = Spread { low: 9.9, high: 9.9, arm: 9.9 };
            for spread in [CLOTH, rail] {
                let shares = spread.shares(&supports);
                let moment: f64 = shares.iter().zip(&supports).map(|(share, at)| share * at).sum();
                assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-12, "{shares:?}");
                assert!((moment - spread.arm).abs() < 1e-12, "{shares:?}");
            }
        }
        // An even load between two supports: half each.
        let even = Spread::of((feet(0.0), feet(10.0)), feet(5.0));
        let shares = even.shares(&[0.0, feet(10.0).si()]);
        assert!(shares.iter().all(|share| (share - 0.5).abs() < 1e-12));
    }
}
