//! More wind, more cloth or a higher fence never takes load off a post, but where the code itself lets it fall.

use crate::support::{fence, lb_ft, site};
use fencegust::fence::{End, Fence};
use fencegust::loads::{Dress, run_loads};
use fencegust::units::feet;
use fencegust::wind::Event;

/// Governing base moments in lb-ft, post by post.
fn moments(fence: &Fence, speed: f64) -> Vec<f64> {
    let loads = run_loads(fence, 0, Dress::AsHung, &site(speed, 1), Event::Design).unwrap();
    loads.posts.iter().map(|post| lb_ft(post.moment)).collect()
}

/// A run of so many feet in bays of one width; what is left over is a bay of its own.
fn bays(length: f64, width: f64) -> Vec<f64> {
    let whole = (length / width + 1e-9).floor();
    let mut bays = vec![width; whole as usize];
    let rest = length - whole * width;
    if rest > 1e-6 {
        bays.push(rest);
    }
    bays
}

/// Where a post's moment falls from one value to the next: before, after, post (from 1), by how much per cent.
type Fall = (f64, f64, usize, f64);

fn falls(values: impl Iterator<Item = f64>, moments: impl Fn(f64) -> Vec<f64>) -> Vec<Fall> {
    let (mut falls, mut rises) = (Vec::new(), 0);
    let mut before: Option<(f64, Vec<f64>)> = None;
    for value in values {
        let now = moments(value);
        if let Some((value_before, before)) = &before {
            assert_eq!(before.len(), now.len());
            for (post, (before, now)) in before.iter().zip(&now).enumerate() {
                let change = now / before - 1.0;
                if change < -1e-12 {
                    falls.push((*value_before, value, post + 1, 100.0 * change));
                }
                rises += usize::from(change > 0.0);
            }
        }
        before = Some((value, now));
    }
    assert!(rises > 0, "a sweep that changes nothing shows nothing");
    falls
}

fn steps(from: u32, to: u32, per_unit: f64) -> impl Iterator<Item = f64> {
    (from..=to).map(move |step| f64::from(step) / per_unit)
}

#[test]
fn no_post_is_relieved_by_a_stronger_wind() {
    for run in [&[10.0; 12][..], &[10.0], &[7.0, 7.0, 3.5], &[8.0; 30]] {
        for solidity in [0.2, 0.5, 0.95] {
            let fence = fence(run, 10.0, solidity);
            assert_eq!(falls(steps(60, 180, 1.0), |speed| moments(&fence, speed)), []);
        }
    }
}

#[test]
fn no_post_is_relieved_by_denser_cloth_on_a_run_of_any_length() {
    for width in [10.0, 7.0, 4.5] {
        // B/s from 0.5 to 60 on a height of 10 ft, closely where the cases and the zones change.
        for length in steps(10, 30, 2.0).chain(steps(16, 40, 1.0)).chain(steps(5, 60, 0.1)) {
            let mut fence = fence(&bays(length, width), 10.0, 1.0);
            let sweep = |solidity, fence: &mut Fence| {
                fence.runs[0].screen.as_mut().unwrap().solidity = solidity;
                moments(fence, 115.0)
            };
            let mut before = sweep(0.30, &mut fence);
            for solidity in [0.31, 0.40, 0.50, 0.60, 0.699, 0.70, 0.701, 0.80, 0.90, 1.00] {
                let now = sweep(solidity, &mut fence);
                for (post, (before, now)) in before.iter().zip(&now).enumerate() {
                    assert!(now > before, "post {} of {length} ft in {width} ft: {solidity}", post + 1);
                }
                before = now;
            }
        }
    }
}

/// Heights from 3 to 20 ft by 0.05, cloth over the whole height; `end` is what stands at both ends.
#[test]
fn no_post_is_relieved_by_a_denser_cloth_over_its_cloth() {
    for run in [&[10.0; 12][..], &[10.0], &[7.0, 7.0, 3.5]] {
        for first in [0.35, 0.75, 0.95] {
            let bare = fence(run, 10.0, first);
            let under = |second: f64| {
                let mut fence = bare.clone();
                fence.runs[0].screen.as_mut().unwrap().over = vec![second];
                moments(&fence, 115.0)
            };
            assert_eq!(falls(steps(0, 20, 20.0), under), []);
            for (alone, with_none) in moments(&bare, 115.0).iter().zip(under(0.0)) {
                assert!((with_none / alone - 1.0).abs() < 1e-12, "{first}");
            }
        }
    }
}

fn by_height(run: &[f64], solidity: f64, end: End) -> Vec<Fall> {
    falls(steps(60, 400, 20.0), |height| {
        let mut fence = fence(run, height, solidity);
        (fence.runs[0].start, fence.runs[0].finish) = (end, end);
        moments(&fence, 115.0)
    })
}

/// Where a post is relieved by a higher fence: bays in feet, height before and after, post, by how much per cent.
///
/// Below a length of twice the height the code has no zones any more: Case B takes the place of Case C, whose first
/// zone, up to an inner post, is the heavier there.
const RELIEVED: &[(&[f64], f64, f64, usize, f64)] = &[
    (&[10.0; 2], 10.0, 10.05, 2, -5.6975),
    (&[7.0; 2], 7.0, 7.05, 2, -5.2806),
    (&[7.0; 4], 14.0, 14.05, 3, -5.9749),
    (&[5.0; 4], 10.0, 10.05, 3, -5.6975),
    (&[6.0; 6], 18.0, 18.05, 4, -6.0740),
    (&[5.0, 8.0, 5.0, 6.0], 12.0, 12.05, 3, -6.9332),
    (&[8.0, 8.0, 8.0, 3.0, 12.0], 19.5, 19.55, 4, -3.6551),
];

#[test]
fn a_post_in_the_middle_is_relieved_where_the_length_falls_below_twice_the_height() {
    for (run, before, after, post, printed) in RELIEVED {
        let length: f64 = run.iter().sum();
        assert!(length / before >= 2.0 && length / after < 2.0);
        for solidity in [1.0, 0.8, 0.6, 0.4] {
            for end in [End::Free, End::Return(feet(20.0))] {
                let found = by_height(run, solidity, end);
                assert_eq!(found.len(), 1, "{run:?}, {solidity}: {found:?}");
                let (from, to, at, change) = found[0];
                assert_eq!((from, to, at), (*before, *after, *post), "{run:?}, {solidity}");
                assert!((change - printed).abs() < 5.1e-5, "{run:?}, {solidity}: {change}");
            }
        }
    }
}

#[test]
fn no_post_is_relieved_by_a_higher_fence_anywhere_else() {
    let mut runs: Vec<Vec<f64>> = vec![
        vec![7.0, 7.0, 7.0, 3.5],
        vec![10.0, 4.0],
        vec![10.0, 10.0, 10.0, 2.5],
        vec![6.0, 9.0, 6.0],
        vec![12.0, 3.0],
        vec![10.0; 20],
    ];
    for count in [1, 2, 3, 4, 6, 12] {
        runs.extend([vec![10.0; count], vec![7.0; count]]);
    }
    runs.retain(|run| RELIEVED.iter().all(|(named, ..)| named != run));
    assert_eq!(runs.len(), 15);
    for run in runs {
        for (solidity, end) in [(1.0, End::Free), (0.8, End::Return(feet(20.0)))] {
            assert_eq!(by_height(&run, solidity, end), [], "{run:?}, {solidity}");
        }
    }
}
