//! A length, height or solidity that stands exactly on a bound of the code stands on it in any unit: the last bit of
//! a sum or a quotient decides nothing.

use crate::support::{fence, lb_ft, round_tube, site};
use fencegust::fence::{CornerTo, End, Fence, Section, Wall};
use fencegust::loads::{Dress, RunLoads, run_loads};
use fencegust::units::{feet, inches, metres};
use fencegust::wind::{Case, Event, From};

fn loads(fence: &Fence) -> RunLoads {
    run_loads(fence, 0, Dress::AsHung, &site(115.0, 1), Event::Design).unwrap()
}

fn moments(fence: &Fence) -> Vec<f64> {
    loads(fence).posts.iter().map(|post| lb_ft(post.moment)).collect()
}

fn along(fence: &Fence) -> &'static str {
    let loads = loads(fence);
    loads.cases.iter().find(|one| one.case == Case::Along(From::Start)).unwrap().place
}

#[test]
fn three_bays_of_10_ft_are_five_heights_of_6_ft_and_a_return_counts() {
    let mut fence = fence(&[10.0; 3], 6.0, 1.0);
    (fence.runs[0].start, fence.runs[0].finish) = (End::Return(feet(20.0)), End::Return(feet(20.0)));
    for (ours, printed) in moments(&fence).into_iter().zip([3095.701, 5890.121, 5890.121, 3095.701]) {
        assert!((ours - printed).abs() < 6e-4, "{ours} for {printed}");
    }
}

#[test]
fn a_bay_of_10_ft_is_two_heights_of_cloth_from_1_to_6_ft() {
    let mut fence = fence(&[10.0], 6.0, 1.0);
    fence.kinds[0].section = Section::Tube(round_tube(inches(0.0), Wall::Nominal(inches(0.203))));
    fence.runs[0].screen.as_mut().unwrap().bottom = feet(1.0);
    assert_eq!(along(&fence), "Fig. 29.3-1 Case C");
    for ours in moments(&fence) {
        assert!((ours - 3665.560).abs() < 6e-4, "{ours}");
    }
}

#[test]
fn uneven_bays_of_24_ft_are_two_heights_of_12_ft() {
    let fence = fence(&[5.0, 8.0, 5.0, 6.0], 12.0, 1.0);
    let ours = moments(&fence)[2];
    assert!((ours - 16_219.375).abs() < 6e-4, "{ours}");
}

#[test]
fn every_run_of_exactly_two_heights_has_zones_and_of_five_heights_counts_its_return() {
    for count in 1..=40_u32 {
        for width in 20..=140_u32 {
            for heights in [2, 5] {
                let tenths = count * width;
                let height = tenths / heights;
                if tenths % heights != 0 || !(30..=200).contains(&height) {
                    continue;
                }
                let bays = vec![f64::from(width) / 10.0; count as usize];
                let mut fence = fence(&bays, f64::from(height) / 10.0, 1.0);
                assert_eq!(along(&fence), "Fig. 29.3-1 Case C", "{bays:?}, {height} tenths of a foot");
                if heights == 5 {
                    let free = moments(&fence)[0];
                    fence.runs[0].start = End::Return(feet(50.0));
                    assert!(moments(&fence)[0] < 0.99 * free, "{bays:?}, {height} tenths of a foot");
                }
            }
        }
    }
}

#[test]
fn a_return_of_three_tenths_of_the_height_counts_at_every_height() {
    for tenths in 30..=200_u32 {
        let height = f64::from(tenths) / 10.0;
        let mut fence = fence(&[height; 6], height, 1.0);
        let free = moments(&fence)[0];
        fence.runs[0].start = End::Return(feet(f64::from(3 * tenths) / 100.0));
        // The first zone is the first bay: 0.90 of it is left at the first post.
        assert!((moments(&fence)[0] / free - 0.9).abs() < 1e-9, "{height} ft");
    }
}

#[test]
fn a_return_as_high_in_metres_as_the_run_is_in_feet_counts() {
    for tenths in 30..=200_u32 {
        let height = f64::from(tenths) / 10.0;
        let mut both = fence(&[10.0; 12], height, 1.0);
        both.runs.extend(fence(&[10.0; 2], height, 1.0).runs);
        both.runs[0].start = End::Corner(CornerTo { run: 1, at_its_start: true });
        let in_feet = moments(&both);
        // 0.3048 m is a foot: so many ten-thousandths of a metre are a tenth of a foot.
        both.runs[1].screen.as_mut().unwrap().top = metres(f64::from(tenths * 3048) / 100_000.0);
        assert_eq!(moments(&both), in_feet, "{height} ft");
    }
}

#[test]
fn two_layers_of_0_60_and_0_25_are_0_70_solid() {
    // 1 − 0.4 × 0.75, whichever layer stands first.
    let single = moments(&fence(&[10.0; 12], 10.0, 0.70));
    let site = site(30.0, 1);
    for solidity in
        [1.0 - (1.0 - 0.60) * (1.0 - 0.25), 1.0 - (1.0 - 0.25) * (1.0 - 0.60), 0.7 - 1e-16, 0.7 + 1e-16]
    {
        let layered = fence(&[10.0; 12], 10.0, solidity);
        for (ours, printed) in moments(&layered).iter().zip(&single) {
            assert!((ours / printed - 1.0).abs() < 1e-12);
        }
        // In a light wind the least pressure, on the gross area from 0.70 on: 16 psf on 100 ft² at 5.5 ft.
        let loads = run_loads(&layered, 0, Dress::AsHung, &site, Event::Design).unwrap();
        assert!((lb_ft(loads.posts[6].moment) - 8800.0).abs() < 1e-6, "{solidity}");
    }
}
