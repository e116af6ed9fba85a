//! Cloth hung at the top with a gap below loads the post as much as cloth over the whole height, or more.

use crate::support::{court_fabric, fence, lb_ft, round_tube, site};
use fencegust::fence::{Fence, Rail, Rails, Section, Wall};
use fencegust::loads::{Dress, RunLoads, run_loads};
use fencegust::units::{feet, inches};
use fencegust::wind::{Case, Event};

/// What is hung on the bays beside the cloth.
#[derive(Clone, Copy)]
enum Beside {
    /// Wire and a top rail, and the posts' own faces.
    WireAndRail,
    /// Nothing, and posts too thin to see: the cloth alone.
    Nothing,
}

fn court(count: usize, bottom: f64, top: f64, solidity: f64, beside: Beside) -> Fence {
    let mut fence = fence(&vec![10.0; count], 10.0, solidity);
    match beside {
        Beside::WireAndRail => {
            fence.runs[0].chain_link = Some(court_fabric());
            fence.runs[0].rails = Rails { top: Some(Rail::of(inches(1.660))), middle: None, bottom: None };
        }
        Beside::Nothing => {
            fence.kinds[0].section = Section::Tube(round_tube(inches(0.0), Wall::Nominal(inches(0.203))));
        }
    }
    let screen = fence.runs[0].screen.as_mut().unwrap();
    (screen.bottom, screen.top) = (feet(bottom), feet(top));
    fence
}

fn loads(fence: &Fence) -> RunLoads {
    run_loads(fence, 0, Dress::AsHung, &site(115.0, 1), Event::Design).unwrap()
}

/// Governing moments with the cloth from `bottom` to `top` over those with cloth from 0 to 10 ft.
fn over_full(count: usize, (bottom, top): (f64, f64), solidity: f64, beside: Beside) -> Vec<f64> {
    let hung = loads(&court(count, bottom, top, solidity, beside));
    let full = loads(&court(count, 0.0, 10.0, solidity, beside));
    hung.posts.iter().zip(&full.posts).map(|(hung, full)| lb_ft(hung.moment) / lb_ft(full.moment)).collect()
}

fn first_posts_are(ours: &[f64], printed: &[f64]) {
    assert!(ours.len() >= printed.len());
    for (post, (ours, printed)) in ours.iter().zip(printed).enumerate() {
        assert!((ours - printed).abs() < 5.1e-6, "post {}: {ours} for {printed}", post + 1);
    }
}

#[test]
fn by_statics_9_ft_at_the_top_take_0_99_and_9_ft_at_the_bottom_0_81() {
    // The open-frame case has one pressure at every height up to 15 ft and its resultant in the middle: 9 × 5.5 ÷
    // (10 × 5) and 9 × 4.5 ÷ (10 × 5).
    for (edges, printed) in [((1.0, 10.0), 0.99), ((0.0, 9.0), 0.81)] {
        let open = |(bottom, top): (f64, f64)| {
            let loads = loads(&court(12, bottom, top, 1.0, Beside::Nothing));
            loads.cases.into_iter().find(|one| one.case == Case::Open).unwrap().moments
        };
        for (hung, full) in open(edges).into_iter().zip(open((0.0, 10.0))) {
            assert!((lb_ft(hung) / lb_ft(full) - printed).abs() < 1e-12);
        }
    }
}

#[test]
fn inside_a_run_of_12_bays_or_more_the_code_gives_1_01() {
    for count in 12..=60 {
        let middle = count / 2;
        // Case A far inside, 1.40 ÷ 1.30 × 9 × 5.725 ÷ (10 × 5.5) = 1.00888.
        let cloth = over_full(count, (1.0, 10.0), 1.0, Beside::Nothing)[middle];
        assert!((cloth - 1.008_881).abs() < 5.1e-7, "{count} bays: {cloth}");
        let all = over_full(count, (1.0, 10.0), 1.0, Beside::WireAndRail)[middle];
        assert!((all - 1.010_46).abs() < 5.1e-6, "{count} bays: {all}");
    }
}

#[test]
fn at_the_end_of_60_bays_of_10_ft_the_code_gives_1_05() {
    first_posts_are(&over_full(60, (1.0, 10.0), 1.0, Beside::Nothing), &[1.049_63]);
    first_posts_are(&over_full(60, (1.0, 10.0), 1.0, Beside::WireAndRail), &[1.050_31]);
}

#[test]
fn twelve_and_twenty_bays_take_what_a_second_working_gives_post_by_post() {
    let twelve = [1.073_41, 1.028_70, 1.016_06, 1.040_96, 1.008_88, 1.008_88, 1.008_88];
    let twenty = [1.055_43, 1.007_71, 0.994_63, 0.997_03, 1.008_88, 1.008_88, 1.008_88, 1.008_88];
    for solidity in [1.0, 0.957_49] {
        first_posts_are(&over_full(12, (1.0, 10.0), solidity, Beside::Nothing), &twelve);
        first_posts_are(&over_full(20, (1.0, 10.0), solidity, Beside::Nothing), &twenty);
    }
    // The strip below the cloth counted: wire and the posts' faces from 0 to 1 ft.
    first_posts_are(
        &over_full(12, (1.0, 10.0), 1.0, Beside::WireAndRail),
        &[1.074_15, 1.029_49, 1.017_20, 1.042_53, 1.010_46, 1.010_46, 1.010_46],
    );
    first_posts_are(
        &over_full(20, (1.0, 10.0), 1.0, Beside::WireAndRail),
        &[1.056_15, 1.008_48, 0.995_75, 0.998_47, 1.010_46, 1.010_46, 1.010_46, 1.010_46],
    );
}
