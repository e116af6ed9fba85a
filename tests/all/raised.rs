//! A fence on a bank or a wall: the wind is that of its height above the lower ground, the arms are the posts' own.

use crate::command::vector;
use crate::support::{court_fabric, fence, json_of, lb_ft, round_tube, run_with, site, site_by};
use fencegust::fence::{End, Fence, Rail, Rails, Section, Wall};
use fencegust::loads::{Dress, RunLoads, run_loads};
use fencegust::units::{Pure, Quantity, feet, inches, pounds};
use fencegust::wind::{Case, Code, Event};

const COURT: &str = r#"{ mesh = "1-3/4 in", wire = "9 gauge" }"#;

fn raised(mut fence: Fence, base: f64) -> Fence {
    for run in &mut fence.runs {
        run.base_above_ground = feet(base);
    }
    fence
}

fn court(bays: &[f64], bottom: f64, top: f64, solidity: f64) -> Fence {
    let mut fence = fence(bays, 10.0, solidity);
    fence.runs[0].chain_link = Some(court_fabric());
    fence.runs[0].rails = Rails { top: Some(Rail::of(inches(1.660))), middle: None, bottom: None };
    let screen = fence.runs[0].screen.as_mut().unwrap();
    (screen.bottom, screen.top) = (feet(bottom), feet(top));
    fence
}

fn loads(fence: &Fence, code: Code) -> RunLoads {
    run_loads(fence, 0, Dress::AsHung, &site_by(code, 115.0, 1), Event::Design).unwrap()
}

#[test]
fn solid_cloth_on_a_bank_as_high_as_itself_is_worked_by_hand() {
    // h 20 ft, s 10 ft: s/h 0.5, B/s 12, C_f 1.70; K_z 0.901 885, q 25.954 095 psf; 37.503 667 psf on 100 ft² with the
    // resultant in the middle, 5 ft above the foot of the post.
    let loads = loads(&raised(fence(&[10.0; 12], 10.0, 1.0), 10.0), Code::Asce7_16);
    let square = loads.cases.iter().find(|one| one.case == Case::Square).unwrap();
    assert!((lb_ft(square.moments[6]) - 18_751.834).abs() < 1e-3, "{}", lb_ft(square.moments[6]));
    assert!(((square.shears[6] / pounds(1.0)).pure() - 3_750.366_7).abs() < 1e-3);
    // On level ground q 24.428 849 psf, C_f 1.30, the resultant at 5.5 ft.
    let level = run_loads(&fence(&[10.0; 12], 10.0, 1.0), 0, Dress::AsHung, &site(115.0, 1), Event::Design);
    assert!((lb_ft(level.unwrap().posts[6].moment) - 14_846.633).abs() < 1e-3);
}

#[test]
fn a_bare_fence_on_a_bank_takes_the_wind_of_its_height_on_its_own_arms() {
    // Solid area at 5.359 640 ft above the foot, 15.359 640 ft above the ground: 27.128 860 psf where level ground has
    // 26.993 878; the same areas and arms as on level ground.
    let court = court(&[10.0; 12], 0.0, 10.0, 1.0);
    let bare = |base: f64| {
        let fence = raised(court.clone(), base);
        let loads = run_loads(&fence, 0, Dress::Bare, &site(115.0, 1), Event::Design).unwrap();
        lb_ft(loads.posts[6].moment)
    };
    assert!((bare(10.0) - 2730.6132).abs() < 1e-3, "{}", bare(10.0));
    assert!((bare(0.0) - 2717.0268).abs() < 1e-3);
}

/// Runs with what hangs on them: bays in feet, lower edge and top of the cloth.
const RUNS: &[(&[f64], f64, f64)] = &[
    (&[10.0; 12], 0.0, 10.0),
    (&[10.0; 12], 1.0, 10.0),
    (&[10.0; 12], 0.0, 6.0),
    (&[10.0; 40], 3.0, 10.0),
    (&[10.0; 6], 0.0, 10.0),
    (&[10.0; 4], 0.0, 10.0),
    (&[10.0; 2], 1.0, 10.0),
    (&[10.0], 0.0, 10.0),
    (&[7.0, 7.0, 7.0, 3.5], 0.0, 6.0),
];

#[test]
fn in_every_case_a_higher_bank_takes_no_force_off_a_post() {
    for code in Code::ALL {
        for (bays, bottom, top) in RUNS {
            for solidity in [1.0, 0.5, 0.2] {
                for end in [End::Free, End::Return(feet(20.0))] {
                    let mut court = court(bays, *bottom, *top, solidity);
                    (court.runs[0].start, court.runs[0].finish) = (end, end);
                    let (mut before, mut rises) = (loads(&court, *code), 0);
                    for quarter in 1..=80 {
                        let now = loads(&raised(court.clone(), f64::from(quarter) / 4.0), *code);
                        assert_eq!(now.cases.len(), before.cases.len());
                        for (one, other) in now.cases.iter().zip(&before.cases) {
                            for (now, before) in one.shears.iter().zip(&other.shears) {
                                assert!(now.si() >= before.si() * (1.0 - 1e-12), "{:?}, {bays:?}", one.case);
                                rises += usize::from(now > before);
                            }
                        }
                        before = now;
                    }
                    assert!(rises > 0);
                }
            }
        }
    }
}

/// The least moment of a post on a bank of up to 20 ft over that on level ground.
fn least_times(court: &Fence) -> f64 {
    let level = loads(court, Code::Asce7_16);
    let mut least = f64::MAX;
    for quarter in 1..=80 {
        let now = loads(&raised(court.clone(), f64::from(quarter) / 4.0), Code::Asce7_16);
        let times = now.posts.iter().zip(&level.posts).map(|(now, level)| (now.moment / level.moment).pure());
        least = times.fold(least, f64::min);
    }
    least
}

#[test]
fn a_raised_fence_carries_no_less_than_a_level_one() {
    for (bays, bottom, top) in RUNS {
        for solidity in [1.0, 0.5, 0.2] {
            let least = least_times(&court(bays, *bottom, *top, solidity));
            assert!(least >= 1.0 - 1e-12, "{bays:?}, {bottom} to {top} ft, {solidity}: {least}");
        }
    }
}

/// The one fall there is: the code raises the resultant by 0.05 h where the cloth stands on the ground and nowhere else
/// (here it comes down between s/h 1 and 0.8). On short cloth the coefficient rises by less than the arm falls.
#[test]
fn short_cloth_and_cloth_just_off_the_ground_lose_a_little_arm_on_a_low_bank() {
    for (bays, bottom, printed) in
        [(&[2.0][..], 0.0, 0.9504), (&[10.0][..], 1.0, 0.9918), (&[10.0; 6][..], 1.0, 0.9998)]
    {
        let mut court = court(bays, bottom, 10.0, 1.0);
        court.runs[0].chain_link = None;
        court.runs[0].rails = Rails::default();
        court.kinds[0].section = Section::Tube(round_tube(inches(0.0), Wall::Nominal(inches(0.203))));
        let least = least_times(&court);
        assert!((least - printed).abs() < 1e-3, "{bays:?}, {bottom} ft: {least}");
    }
}

#[test]
fn no_bank_at_all_changes_nothing_to_the_last_bit() {
    let with = |line: &str| {
        let survey = vector("12 x 10 ft", "0.95", COURT)
            .replace("bottom = \"0 ft\", height = \"10 ft\"", "bottom = \"1 ft\", height = \"8 ft\"");
        let survey = survey.replace("bays = ", &format!("{line}bays = "));
        let mut answer = json_of(&survey).0;
        answer["survey_hash"].take();
        answer
    };
    let without = with("");
    for nothing in ["0 ft", "0 m", "0.0 in"] {
        assert_eq!(with(&format!("base_above_ground = \"{nothing}\"\n")), without, "{nothing}");
    }
    let raised = with("base_above_ground = \"0.1 ft\"\n");
    assert_ne!(raised["runs"][0]["posts"], without["runs"][0]["posts"]);
}

#[test]
fn a_survey_tells_of_the_bank_and_of_what_is_not_checked_there() {
    let survey =
        vector("12 x 10 ft", "1.0", "\"none\"").replace("bays = ", "base_above_ground = \"10 ft\"\nbays = ");
    let (answer, _) = json_of(&survey);
    let run = &answer["runs"][0];
    assert!((run["base_above_ground_m"].as_f64().unwrap() - 3.048).abs() < 1e-12);
    let moment = run["posts"][6]["base_moment_n_m"].as_f64().unwrap();
    assert!((moment / (4.448_221_615_260_5 * 0.3048) - 18_751.834).abs() < 1e-3);
    let remark = answer["remarks"].as_array().unwrap().iter().find(|one| one["id"] == "raised").unwrap();
    assert!(remark["text"].as_str().unwrap().contains("10 ft above the ground"), "{remark}");
    let text = run_with(&["check", "-"], &survey).text.replace('\n', " ");
    assert!(text.contains("posts on a bank or wall 10 ft high"), "{text}");
    let workings = run_with(&["check", "-", "--workings", "run/7"], &survey).text;
    assert!(workings.contains("arms from its own foot, which stands 10 ft (3.048 m) above the ground"));
    assert!(workings.contains("s/h = 0.500"), "{workings}");
    // On level ground nothing is said.
    let (level, _) = json_of(&vector("12 x 10 ft", "1.0", "\"none\""));
    assert!(level["remarks"].as_array().unwrap().iter().all(|one| one["id"] != "raised"));
}
