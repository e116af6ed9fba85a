//! The worked vectors and the five checks by which a wrong program would be found out.

use crate::support::{court_fabric, fence, lb_ft, site};
use fencegust::loads::{Dress, run_loads};
use fencegust::units::{Pure, mph};
use fencegust::verdict::run_verdict;
use fencegust::wind::{Case, Event, From};

#[test]
fn twenty_bays_of_solid_cloth_give_the_worked_moments() {
    let loads =
        run_loads(&fence(&[10.0; 20], 10.0, 1.0), 0, Dress::AsHung, &site(115.0, 1), Event::Design).unwrap();
    for (post, printed) in [(0, 18_573.0), (1, 30_400.0), (2, 20_914.0), (3, 16_288.0), (10, 14_847.0)] {
        assert!((lb_ft(loads.posts[post].moment) - printed).abs() <= 0.5, "post {}", post + 1);
    }
}

#[test]
fn twelve_bays_of_closed_mesh_give_the_worked_moments_ratios_and_gusts() {
    let mut fence = fence(&[10.0; 12], 10.0, 0.95);
    fence.runs[0].chain_link = Some(court_fabric());
    let verdict = run_verdict(&fence, 0, &site(115.0, 1)).unwrap();
    for (post, printed) in [(0, 17_735.0), (1, 29_282.0), (2, 20_377.0), (3, 14_792.0), (6, 14_717.0)] {
        assert!(
            (lb_ft(verdict.posts[post].design.unwrap().moment) - printed).abs() <= 0.5,
            "post {}",
            post + 1
        );
    }
    let up = |ratio: f64| (ratio * 100.0).ceil() / 100.0;
    for (post, printed) in [(0, 5.78), (1, 9.54), (6, 4.80)] {
        assert!((up(verdict.posts[post].ratio().unwrap()) - printed).abs() < 1e-9);
    }
    let gust = |post: usize| (verdict.posts[post].limit_gust / mph(1.0)).pure();
    assert_eq!((gust(1).round(), gust(6).round()), (34.0, 48.0));
}

#[test]
fn zones_along_a_run_share_out_to_the_posts_as_worked_by_hand() {
    for (height, printed) in [
        (6.0, &[15.317, 21.237, 13.596][..]),
        (10.0, &[15.667, 25.867, 18.000, 13.067, 10.133, 8.533, 7.333][..]),
    ] {
        let loads =
            run_loads(&fence(&[10.0; 12], height, 1.0), 0, Dress::AsHung, &site(115.0, 1), Event::Design)
                .unwrap();
        let along = loads.cases.iter().find(|case| case.case == Case::Along(From::Start)).unwrap();
        // Pressure with a coefficient of 1 on the height: q G s.
        let unit = 24.428_849 * 0.85 * height * 4.448_221_615_260_5;
        for (post, coefficient_feet) in printed.iter().enumerate() {
            let ours = along.shears[post].value / unit;
            assert!((ours - coefficient_feet).abs() <= 5.1e-4, "{height} ft, post {}: {ours}", post + 1);
        }
    }
}
