//! A fence with its cloth taken off: wire, rail and posts as one open frame.

use crate::support::{court_fabric, fence, lb_ft, round_tube, site};
use fencegust::fence::{Fence, Rail, Rails, Section, Wall};
use fencegust::loads::{Dress, RunLoads, run_loads};
use fencegust::units::{Pure, feet, inches, pounds};
use fencegust::verdict::run_verdict;
use fencegust::wind::{Case, Event};

/// Twelve bays of 10 ft, 10 ft high: wire of 1.75 in mesh, a top rail of 1.660 in, posts of 2.875 in.
fn court() -> Fence {
    let mut fence = fence(&[10.0; 12], 10.0, 0.95);
    fence.runs[0].chain_link = Some(court_fabric());
    fence.runs[0].rails = Rails { top: Some(Rail::of(inches(1.660))), middle: None, bottom: None };
    fence
}

fn bare(fence: &Fence, speed: f64) -> RunLoads {
    run_loads(fence, 0, Dress::Bare, &site(speed, 1), Event::Design).unwrap()
}

#[test]
fn a_bare_fence_loads_its_posts_by_wire_and_rail_and_their_own_face() {
    let loads = bare(&court(), 115.0);
    let cases: Vec<Case> = loads.cases.iter().map(|one| one.case).collect();
    assert_eq!(cases, [Case::Open, Case::Least]);
    // End post, second post, inner post. Wire 40.456 6 lb/ft at 5 ft, rail 3.734 2 lb/ft at its axis 9.930 8 ft, face
    // 64.672 8 lb at 5 ft; least pressure 16 psf on the same areas.
    let moments = [[1520.1955, 2717.0268, 2717.0268], [901.0609, 1610.4551, 1610.4551]];
    let shears = [[285.6266, 506.5804, 506.5804], [169.2986, 300.2639, 300.2639]];
    for (one, (moments, shears)) in loads.cases.iter().zip(moments.iter().zip(shears)) {
        for (at, (moment, shear)) in [0, 1, 6].into_iter().zip(moments.iter().zip(shears)) {
            for post in [at, 12 - at] {
                let place = format!("{:?}, post {}", one.case, post + 1);
                assert!(
                    (lb_ft(one.moments[post]) - moment).abs() < 1e-4,
                    "{place}: {}",
                    lb_ft(one.moments[post])
                );
                let ours = (one.shears[post] / pounds(1.0)).pure();
                assert!((ours - shear).abs() < 1e-4, "{place}: {ours}");
            }
        }
    }
    for post in &loads.posts {
        assert_eq!(post.case, Case::Open);
    }
}

#[test]
fn in_a_light_wind_the_least_pressure_governs_a_bare_fence() {
    for post in &bare(&court(), 60.0).posts {
        assert_eq!(post.case, Case::Least);
    }
}

#[test]
fn taking_the_cloth_off_leaves_the_fence_that_never_had_any() {
    let (dressed, mut never) = (court(), court());
    never.runs[0] = dressed.runs[0].bare();
    let hung = run_loads(&never, 0, Dress::AsHung, &site(115.0, 1), Event::Design).unwrap();
    assert_eq!(bare(&dressed, 115.0), hung);
    assert_ne!(run_loads(&dressed, 0, Dress::AsHung, &site(115.0, 1), Event::Design).unwrap(), hung);
}

#[test]
fn a_post_between_cloth_and_bare_bays_shows_half_its_face_to_each() {
    // Four bays, cloth from 0 to 6 ft on the first two; wire everywhere, so that the pressure on solid areas is
    // 26.993 878 psf in the strip above the cloth and in the bare bays alike.
    let open = |diameter: f64| {
        let mut fence = fence(&[10.0; 4], 10.0, 0.95);
        fence.runs[0].chain_link = Some(court_fabric());
        fence.kinds[0].section = Section::Tube(round_tube(inches(diameter), Wall::Nominal(inches(0.203))));
        let screen = fence.runs[0].screen.as_mut().unwrap();
        (screen.top, screen.end_bay) = (feet(6.0), 2);
        let loads = run_loads(&fence, 0, Dress::AsHung, &site(115.0, 1), Event::Design).unwrap();
        loads.cases.into_iter().find(|one| one.case == Case::Open).unwrap()
    };
    let (with, without) = (open(2.875), open(0.0));
    let for_each_foot = 26.993_877_675 * 2.875 / 12.0;
    let (strip, bare) = ((4.0, 8.0), (10.0, 5.0));
    for (post, faces) in [
        (0, &[(strip, 1.0)][..]),
        (1, &[(strip, 1.0)]),
        (2, &[(strip, 0.5), (bare, 0.5)]),
        (3, &[(bare, 1.0)]),
        (4, &[(bare, 1.0)]),
    ] {
        let shear: f64 = faces.iter().map(|((height, _), share)| for_each_foot * height * share).sum();
        let moment: f64 =
            faces.iter().map(|((height, arm), share)| for_each_foot * height * share * arm).sum();
        let ours = ((with.shears[post] - without.shears[post]) / pounds(1.0)).pure();
        assert!((ours - shear).abs() < 1e-6, "post {}: {ours} for {shear}", post + 1);
        let ours = lb_ft(with.moments[post]) - lb_ft(without.moments[post]);
        assert!((ours - moment).abs() < 1e-5, "post {}: {ours} for {moment}", post + 1);
    }
}

#[test]
fn the_verdict_sets_the_fence_with_its_cloth_beside_the_bare_one() {
    let verdict = run_verdict(&court(), 0, &site(115.0, 1)).unwrap();
    for (post, hung, bare) in
        [(0, 17_735.277, 1520.1955), (1, 29_282.075, 2717.0268), (6, 14_716.507, 2717.0268)]
    {
        let post = &verdict.posts[post];
        assert!((lb_ft(post.bare_design.unwrap().moment) - bare).abs() < 1e-4);
        assert!((post.times_bare / (hung / bare) - 1.0).abs() < 1e-5, "{}", post.times_bare);
        // The same post, the same strength: gusts go with the root of the moments.
        let gusts = (post.bare_limit_gust / post.limit_gust).pure();
        assert!((gusts * gusts / post.times_bare - 1.0).abs() < 1e-12);
    }
    assert!((verdict.times_bare - 17_735.277 / 1520.1955).abs() < 1e-3);
}
