//! Rails under cloth and bare: their load by statics, their strength, and that they never touch a post.

use crate::support::{court_fabric, fence, json_of, lb_ft, round_tube, run_on, run_with, site};
use fencegust::fastening::ties::{Age, Row, Rows};
use fencegust::fence::{
    Bay, Fastening, FasteningKind, Fence, Rail, RailPlace, Rails, Section, Splice, TiedTo, Wall,
};
use fencegust::loads::{Push, cloth_peaks};
use fencegust::member::Format;
use fencegust::units::{Pressure, Pure, feet, inches, pounds, pounds_per_foot, psf};
use fencegust::verdict::{Flag, PartKind, RailCheck, RailsVerdict, run_verdict};
use fencegust::wind::Event;
use proptest::prelude::*;
use serde_json::Value;

/// 1.66 x 0.140 in of 30 ksi.
fn rail() -> Rail {
    let diameter = inches(1.66);
    Rail { tube: Some(round_tube(diameter, Wall::Nominal(inches(0.140)))), ..Rail::of(diameter) }
}

fn tied(rows: &[Row], to: TiedTo) -> Fastening {
    Fastening {
        kind: FasteningKind::Ties { declared: Some(pounds(50.0)), age: Age::New },
        rows: Rows::try_new(rows).unwrap(),
        spacing: Some(inches(12.0)),
        to,
        panel: None,
        grommet: None,
        cloth: None,
    }
}

/// Solid cloth over the whole of a fence with rails along top and bottom, tied to both.
fn court(bays: usize, height: f64) -> Fence {
    let mut fence = fence(&vec![10.0; bays], height, 1.0);
    let run = &mut fence.runs[0];
    run.rails = Rails { top: Some(rail()), middle: None, bottom: Some(rail()) };
    run.screen.as_mut().unwrap().fastening = Some(tied(&[Row::Top, Row::Bottom], TiedTo::Rails));
    fence
}

/// The same 9 ft high on a bank of 3 ft, where the code has the resultant in the middle of the cloth.
fn on_a_bank(bays: usize) -> Fence {
    let mut fence = court(bays, 9.0);
    fence.runs[0].base_above_ground = feet(3.0);
    fence
}

fn rails(fence: &Fence) -> RailsVerdict {
    run_verdict(fence, 0, &site(115.0, 1)).unwrap().rails
}

fn peak(fence: &Fence, bay: usize) -> Pressure {
    cloth_peaks(fence, 0, &site(115.0, 1), Event::Design).unwrap()[bay].unwrap().0
}

fn found(rails: &RailsVerdict, place: RailPlace, bay: usize, push: Push) -> &RailCheck {
    rails.checks.iter().find(|one| (one.place, one.bay, one.push) == (place, bay, push)).unwrap()
}

/// Load in lb/ft and moment in lb-ft for each 10 psf of the largest pressure on the cloth of the bay.
fn at_10_psf(fence: &Fence, place: RailPlace, bay: usize, push: Push) -> (f64, f64) {
    let rails = rails(fence);
    let design = found(&rails, place, bay, push).design.unwrap();
    let times = (psf(10.0) / peak(fence, bay)).pure();
    (times * (design.line.load / pounds_per_foot(1.0)).pure().abs(), times * lb_ft(design.moment))
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() < 1e-9 * other.abs()
}

#[test]
fn nine_feet_of_cloth_under_10_psf_bend_two_rails_over_10_ft_with_562_and_a_half_lb_ft() {
    let fence = on_a_bank(6);
    for bay in 0..6 {
        for place in [RailPlace::Top, RailPlace::Bottom] {
            for push in [Push::Onto, Push::Off] {
                let (load, moment) = at_10_psf(&fence, place, bay, push);
                assert!(near(load, 45.0) && near(moment, 562.5), "{bay} {place:?} {push:?}: {load} {moment}");
            }
        }
    }
}

#[test]
fn a_rail_without_a_splice_over_four_bays_or_more_of_one_width_bends_a_seventh_less() {
    let moment = |bays: &[f64], gate: bool| {
        let mut fence = on_a_bank(bays.len());
        let run = &mut fence.runs[0];
        run.bays = bays.iter().map(|width| Bay::of(feet(*width))).collect();
        for at in 0..bays.len() {
            run.posts[at + 1].at = run.posts[at].at + run.bays[at].width;
        }
        run.bays[2].gate = gate;
        run.rails.top = Some(Rail { splice: Splice::Whole, ..rail() });
        at_10_psf(&fence, RailPlace::Top, 0, Push::Onto).1
    };
    assert!(near(moment(&[10.0; 4], false), 0.107 * 4500.0));
    assert!(near(moment(&[10.0; 3], false), 562.5));
    // Bays of other widths, and a gate between, do not let it go on.
    assert!(near(moment(&[10.0, 10.0, 10.0, 8.0], false), 562.5));
    assert!(near(moment(&[10.0; 6], true), 562.5));
}

#[test]
fn cloth_from_ground_to_top_bends_the_top_rail_by_the_heavier_upper_half() {
    // Straight from 0.7 p below to 1.3 p above: 1.15 p over the upper half, 0.85 p over the lower.
    let fence = court(6, 10.0);
    let load = |place| at_10_psf(&fence, place, 0, Push::Onto).0;
    assert!(near(load(RailPlace::Top), 57.5), "{}", load(RailPlace::Top));
    assert!(near(load(RailPlace::Bottom), 42.5));
}

#[test]
fn what_bears_on_the_rails_together_is_all_that_bears_on_the_cloth() {
    for middle in [None, Some(rail())] {
        for rows in [
            vec![Row::Top],
            vec![Row::Top, Row::Bottom],
            vec![Row::Top, Row::Middle, Row::Bottom],
            vec![Row::Middle],
        ] {
            for to in [TiedTo::Rails, TiedTo::ChainLink] {
                let mut fence = court(5, 10.0);
                fence.runs[0].rails.middle = middle;
                fence.runs[0].screen.as_mut().unwrap().fastening = Some(tied(&rows, to));
                for push in [Push::Onto, Push::Off] {
                    let places =
                        RailPlace::ALL.into_iter().filter(|place| fence.runs[0].rails.at(*place).is_some());
                    // The end bay: one case is the largest for every rail.
                    let whole: f64 = places.map(|place| at_10_psf(&fence, place, 0, push).0).sum();
                    assert!(near(whole, 100.0), "{rows:?} {to:?} {push:?}: {whole}");
                }
            }
        }
    }
}

#[test]
fn a_row_without_its_rail_hangs_on_the_mesh_between_two_and_is_shared_by_the_lever() {
    // Cloth 1 to 9 ft on a bank, held at its top alone, tied to the mesh: 9 of 10 parts go to the top rail.
    let mut fence = court(5, 10.0);
    let run = &mut fence.runs[0];
    run.base_above_ground = feet(10.0);
    // What the wind sees of rails beside the cloth is left out of this sum.
    let unseen = Some(Rail { diameter: inches(0.0), ..rail() });
    run.rails = Rails { top: unseen, middle: None, bottom: unseen };
    let screen = run.screen.as_mut().unwrap();
    (screen.bottom, screen.top) = (feet(1.0), feet(9.0));
    screen.fastening = Some(tied(&[Row::Top], TiedTo::ChainLink));
    let load = |fence: &Fence, place| at_10_psf(fence, place, 2, Push::Off).0;
    assert!(near(load(&fence, RailPlace::Top), 72.0) && near(load(&fence, RailPlace::Bottom), 8.0));
    // Tied to the rail it is all the rail's.
    fence.runs[0].screen.as_mut().unwrap().fastening = Some(tied(&[Row::Top], TiedTo::Rails));
    assert!(near(load(&fence, RailPlace::Top), 80.0));
}

#[test]
fn chain_link_alone_bends_its_top_rail_by_the_upper_half_of_the_mesh_and_its_own_face() {
    let mut fence = court(4, 10.0);
    let run = &mut fence.runs[0];
    run.screen = None;
    run.chain_link = Some(court_fabric());
    run.rails.bottom = None;
    let rails = rails(&fence);
    assert!(rails.checks.iter().all(|one| one.push == Push::Either && one.why.is_none()));
    let load = found(&rails, RailPlace::Top, 1, Push::Either).design.unwrap().line.load;
    // By hand: the load of a bay is that of mesh and rail over its height, shared out as half the mesh and all the rail.
    let bay = run_verdict(&fence, 0, &site(115.0, 1)).unwrap().bays.unwrap()[1];
    let mesh = court_fabric().solidity(&mut fencegust::workings::Blank);
    let solid = 10.0 * mesh + 1.66 / 12.0;
    let share = (5.0 * mesh + 1.66 / 12.0) / solid;
    let by_hand = bay.pressure * feet(10.0) * share;
    assert!(((load / by_hand).pure() - 1.0).abs() < 1e-9);
}

#[test]
fn the_ratio_is_the_moment_over_what_the_pipe_carries_and_the_least_gust_has_ratio_one() {
    let fence = on_a_bank(6);
    let rails = rails(&fence);
    let check = found(&rails, RailPlace::Top, 0, Push::Onto);
    let design = check.design.unwrap();
    // φM_n 0.9 × 30 ksi × 0.30544 in³ = 687.2 lb-ft; moments stand in lb-ft.
    assert!((design.ratio - lb_ft(design.moment) / 687.24).abs() < 1e-4 * design.ratio);
    let times = check.limit_gust.unwrap() / fencegust::units::mph(115.0);
    assert!(near(times.pure().powi(2) * design.ratio, 0.85));
    assert_eq!(check.flag(), Flag::of(design.ratio));
}

#[test]
fn the_limit_gust_of_a_rail_does_not_move_with_the_design_wind() {
    let fence = court(6, 10.0);
    let gusts = |speed| -> Vec<f64> {
        let rails = run_verdict(&fence, 0, &site(speed, 1)).unwrap().rails;
        rails.checks.iter().map(|check| check.limit_gust.unwrap().value).collect()
    };
    let (slow, fast) = (gusts(90.0), gusts(150.0));
    assert!(slow.len() == 24 && slow.iter().zip(&fast).all(|(one, other)| near(*one, *other)));
}

#[test]
fn a_rail_never_touches_the_limit_gust_of_a_post_and_its_part_is_the_worst_beside_the_post() {
    let mut fence = court(4, 10.0);
    fence.runs[0].bays[3].width = feet(6.0);
    fence.runs[0].posts[4].at = feet(36.0);
    let site = site(115.0, 1);
    let strong = run_verdict(&fence, 0, &site).unwrap();
    fence.runs[0].rails.top =
        Some(Rail { tube: Some(round_tube(inches(1.66), Wall::Nominal(inches(0.05)))), ..rail() });
    let weak = run_verdict(&fence, 0, &site).unwrap();
    for (one, other) in strong.posts.iter().zip(&weak.posts) {
        assert_eq!((one.limit_gust, one.ratio(), one.is_at_most()), (other.limit_gust, other.ratio(), true));
    }
    let ratio_of = |bay: usize| {
        let of_bay = weak.rails.checks.iter().filter(|check| check.bay == bay);
        of_bay.filter_map(RailCheck::ratio).fold(0.0, f64::max)
    };
    for (at, post) in weak.posts.iter().enumerate() {
        let part = post.parts.iter().find(|part| part.kind == PartKind::Rails).unwrap();
        let beside = [at.checked_sub(1), (at < 4).then_some(at)].into_iter().flatten();
        assert_eq!(part.ratio.unwrap(), beside.map(ratio_of).fold(0.0, f64::max), "post {}", at + 1);
        assert_eq!(part.flag, Flag::Over);
        assert!(part.rule.unwrap().to_string().starts_with("AISC 360-16 F8"), "{:?}", part.rule);
    }
}

#[test]
fn what_is_not_there_or_not_known_is_not_checked_and_says_why() {
    let said = |change: &dyn Fn(&mut Fence)| {
        let mut fence = court(4, 10.0);
        // So that nothing is over.
        fence.runs[0].rails.top =
            Some(Rail { tube: Some(round_tube(inches(8.625), Wall::Seamless(inches(0.5)))), ..rail() });
        fence.runs[0].rails.bottom = fence.runs[0].rails.top;
        change(&mut fence);
        let verdict = run_verdict(&fence, 0, &site(60.0, 1)).unwrap();
        let part = verdict.posts[1].parts.iter().find(|part| part.kind == PartKind::Rails).unwrap();
        (part.flag, part.why.unwrap_or_default())
    };
    assert_eq!(said(&|_| {}), (Flag::Within, ""));
    let run = |fence: &mut Fence, change: &dyn Fn(&mut fencegust::fence::Run)| change(&mut fence.runs[0]);
    for (change, why) in [
        (&|one: &mut Fence| one.runs[0].rails.bottom = None as Option<Rail>) as &dyn Fn(&mut Fence),
        &|one| run(one, &|run| run.rails.top = None),
        &|one| run(one, &|run| run.rails = Rails::default()),
        &|one| run(one, &|run| run.rails.top = Some(Rail::of(inches(1.66)))),
        &|one| run(one, &|run| run.bays[1].gate = true),
        &|one| run(one, &|run| run.screen.as_mut().unwrap().fastening = None),
    ]
    .into_iter()
    .zip([
        "no bottom rail: the lower part of the cloth hangs on a wire",
        "no top rail: the upper part of the cloth hangs on a wire",
        "no top rail",
        "the wall of the rail is not known: measure it",
        "a gate: the frame of its own leaf",
        "what the cloth is tied to is not known",
    ]) {
        let (flag, told) = said(change);
        assert!(flag == Flag::NotChecked && told.starts_with(why), "{flag} {told:?} is not {why:?}");
    }
}

#[test]
fn allowable_stress_design_comes_out_a_tenth_lower() {
    let lrfd = rails(&court(4, 10.0));
    let mut fence = court(4, 10.0);
    let asd = Some(Rail { format: Format::Asd, ..rail() });
    fence.runs[0].rails = Rails { top: asd, middle: None, bottom: asd };
    for (one, other) in lrfd.checks.iter().zip(&rails(&fence).checks) {
        assert!(near(other.ratio().unwrap() / one.ratio().unwrap(), 0.9 * 1.67 * 0.6));
    }
}

#[test]
fn a_run_seen_from_the_other_side_has_its_rails_the_other_way_round() {
    let turned = |widths: [f64; 5]| {
        let mut fence = fence(&widths, 10.0, 0.9);
        fence.runs[0].rails = Rails { top: Some(rail()), middle: Some(rail()), bottom: None };
        fence.runs[0].screen.as_mut().unwrap().fastening =
            Some(tied(&[Row::Top, Row::Middle], TiedTo::Rails));
        rails(&fence)
    };
    let (one, other) = (turned([8.0, 10.0, 12.0, 10.0, 9.0]), turned([9.0, 10.0, 12.0, 10.0, 8.0]));
    for check in one.checks.iter().filter(|check| check.why.is_none()) {
        let mirrored = found(&other, check.place, 4 - check.bay, check.push);
        assert!(near(check.ratio().unwrap(), mirrored.ratio().unwrap()));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn a_longer_bay_a_thinner_wall_or_denser_cloth_is_never_better(
        width in 5.0..12.0_f64, wall in 0.08..0.2_f64, solidity in 0.7..0.99_f64, more in 1.0..1.3_f64,
    ) {
        let least = |width: f64, wall: f64, solidity: f64| {
            let mut fence = fence(&[width; 6], 10.0, solidity.min(1.0));
            let tube = Some(round_tube(inches(1.66), Wall::Nominal(inches(wall))));
            let rail = Some(Rail { tube, ..rail() });
            fence.runs[0].rails = Rails { top: rail, middle: rail, bottom: rail };
            fence.runs[0].screen.as_mut().unwrap().fastening = Some(tied(&[Row::Top, Row::Bottom], TiedTo::Rails));
            rails(&fence).first().unwrap().limit_gust.unwrap().value
        };
        let here = least(width, wall, solidity);
        prop_assert!(least(width * more, wall, solidity) <= here * (1.0 + 1e-12));
        prop_assert!(least(width, wall / more, solidity) <= here * (1.0 + 1e-12));
        prop_assert!(least(width, wall, solidity + (1.0 - solidity) * (more - 1.0)) <= here * (1.0 + 1e-12));
    }
}

/// One run of closed mesh at Tarnwick Green with this along its top and bottom.
fn survey(top: &str, bottom: &str) -> String {
    format!(
        r#"survey = 1
[site]
wind_code = "asce7-16"
wind_speed = "115 mph"
exposure = "C"
[post.line]
diameter = "4 in"
nominal_wall = "0.226 in"
yield = "50 ksi"
[[run]]
name = "north end"
faces = "north"
height = "10 ft"
top_rail = {top}
bottom_rail = {bottom}
chain_link = {{ mesh = "1-3/4 in", wire = "9 gauge" }}
footing = {{ shape = "round", width = "12 in", depth = "4 ft" }}
bays = ["12 x 10 ft"]
ends = "free"
screen = {{ solidity = 0.95, bottom = "1 ft", height = "9 ft", face = "inside", fastening = {{ kind = "ties", strength = "175 lbf", age = "new", spacing = "12 in", rows = ["top", "bottom"] }} }}
"#
    )
}

const KNOWN: &str =
    r#"{ diameter = "1.660 in", nominal_wall = "0.140 in", yield = "30 ksi", splice = "sleeve" }"#;

fn in_one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_survey_in_inches_and_one_in_millimetres_give_the_same_rails() {
    let inches = survey(KNOWN, KNOWN);
    let mut millimetres = inches.clone();
    for (inch, metric) in [
        ("1.660 in", "42.164 mm"),
        ("0.140 in", "3.556 mm"),
        ("12 x 10 ft", "12 x 3.048 m"),
        ("height = \"10 ft\"", "height = \"3.048 m\""),
        ("survey = 1", "survey = 1\nunits = \"si\""),
    ] {
        assert!(millimetres.contains(inch));
        millimetres = millimetres.replace(inch, metric);
    }
    let rails = |survey: &str| json_of(survey).0["runs"][0]["rails"].as_array().unwrap().clone();
    let (one, other) = (rails(&inches), rails(&millimetres));
    assert_eq!((one.len(), other.len()), (48, 48));
    for (one, other) in one.iter().zip(&other) {
        for key in [
            "span_m",
            "load_n_per_m",
            "moment_n_m",
            "shear_n",
            "moment_capacity_n_m",
            "ratio",
            "limit_gust_m_s",
        ] {
            assert!(near(one[key].as_f64().unwrap(), other[key].as_f64().unwrap()), "{key}: {one} {other}");
        }
    }
}

#[test]
fn the_json_has_each_rail_of_each_bay_and_the_post_the_worst_beside_it() {
    let (json, code) = json_of(&survey(KNOWN, KNOWN));
    let run = &json["runs"][0];
    let rail = &run["rails"][0];
    assert_eq!(code, 1);
    assert_eq!(["rail", "wind", "flag"].map(|key| rail[key].as_str().unwrap()), ["top rail", "onto", "over"]);
    let of = |key: &str| rail[key].as_f64().unwrap();
    assert!(near(of("moment_n_m"), of("load_n_per_m") * of("span_m").powi(2) / 8.0));
    assert!(near(of("ratio"), of("moment_n_m") / of("moment_capacity_n_m")));
    let all = run["rails"].as_array().unwrap();
    let least = all.iter().map(|rail| rail["limit_gust_m_s"].as_f64().unwrap()).fold(f64::MAX, f64::min);
    assert_eq!(run["rails_limit_gust_m_s"].as_f64().unwrap(), least);
    let parts = run["posts"][0]["parts"].as_array().unwrap();
    let part = parts.iter().find(|part| part["part"] == "rails").unwrap();
    assert_eq!((part["ratio"].as_f64(), part["unit"].as_str()), (rail["ratio"].as_f64(), Some("N m")));
    assert_eq!(part["rule"], "AISC 360-16 F8, Eq. F8-1");
}

#[test]
fn a_rail_that_goes_first_is_named() {
    let survey = survey(KNOWN, KNOWN);
    let json = json_of(&survey).0;
    let run = &json["runs"][0];
    assert_eq!(run["fastening"]["goes_first"], "the top rail");
    // The rail of bay 1 has the ratio that is told; from it follow both gusts, by hand: V √(0.85 / ratio).
    let ratio = |at: usize| run["rails"][at]["ratio"].as_f64().unwrap();
    let gust = |ratio: f64| (115.0 * (0.85 / ratio).sqrt()).floor();
    let (onto, off) = (ratio(0), ratio(1));
    assert_eq!(
        (&run["rails"][0]["wind"], &run["rails"][1]["wind"]),
        (&Value::from("onto"), &Value::from("off"))
    );
    let text = in_one_line(&run_on("-", &survey).text);
    for told in [
        format!("first to go the top rail: {} mph against", gust(off)),
        format!("the top rail in bays 1 and 12 reaches its limit in a gust of {} mph", gust(onto)),
        format!(
            "■ Rails on north end are over their limit at the design wind, at the worst {:.2} times what they carry: \
             first the top rail, in a gust of {} mph.",
            (onto * 100.0).ceil() / 100.0,
            gust(onto)
        ),
    ] {
        assert!(text.contains(&told), "{told}: {text}");
    }
}

#[test]
fn an_unknown_wall_is_every_pipe_of_its_diameter_and_is_asked_for_only_where_it_may_change_something() {
    let unknown = r#"{ diameter = "1.660 in", nominal_wall = "unknown" }"#;
    let (json, _) = json_of(&survey(unknown, KNOWN));
    let rail = &json["runs"][0]["rails"][0];
    assert!(rail["ratio_best"].as_f64().unwrap() < rail["ratio"].as_f64().unwrap());
    assert!(rail["limit_gust_best_m_s"].as_f64().unwrap() > rail["limit_gust_m_s"].as_f64().unwrap());
    let asked = |json: &Value| -> Vec<String> {
        let asked = json["measure_next"].as_array().unwrap().iter();
        asked
            .map(|next| next["key"].as_str().unwrap().to_owned())
            .filter(|key| key.contains("rail"))
            .collect()
    };
    assert_eq!(asked(&json), ["run.north end.top_rail.wall"]);
    let text = in_one_line(&run_on("-", &survey(unknown, KNOWN)).text);
    assert!(
        text.contains("wall and grade of the top rail on north end: wall with a caliper at an open end"),
        "{text}"
    );
    assert!(
        text.contains("north end: the top rail: wall or grade unknown, so every catalogue pipe"),
        "{text}"
    );
    // Behind a weaker top rail nothing follows from the bottom rail.
    let (json, _) = json_of(&survey(KNOWN, unknown));
    assert_eq!(asked(&json), Vec::<String>::new());
    assert_eq!(json["runs"][0]["rails"][2]["rail"], "bottom rail");
    assert!(json["runs"][0]["rails"][2]["ratio_best"].as_f64().is_some());
}

#[test]
fn a_wall_left_out_leaves_the_rail_unchecked_and_says_what_to_measure() {
    let out = run_on("-", &survey("{ diameter = \"1.660 in\" }", "\"none\""));
    let text = in_one_line(&out.text);
    assert!(
        text.contains("- the rails on north end: wall with a caliper at an open end, and the grade"),
        "{text}"
    );
    assert!(text.contains("NOT CHECKED: footings, rails"), "{text}");
    assert!(!text.contains("the top rail in bays"), "{text}");
    let (json, _) = json_of(&survey("{ diameter = \"1.660 in\" }", "\"none\""));
    let rail = &json["runs"][0]["rails"][0];
    assert!(rail["ratio"].is_null() && rail["limit_gust_m_s"].is_null());
    assert!(rail["why"].as_str().unwrap().starts_with("the wall of the rail is not known"));
    // A wire below stands for no rail.
    assert!(
        text.contains("north end: no bottom rail: the lower part of the cloth hangs on a wire"),
        "{text}"
    );
}

#[test]
fn the_workings_of_a_rail_go_from_the_pressure_to_its_limit_gust() {
    let out = run_with(&["check", "-", "--workings", "north end/1"], &survey(KNOWN, KNOWN));
    for step in [
        "The top rail in bay 1, the cloth pressed onto it, under the largest pressure there",
        "p_z = p × (1 + 12 × e / s × z_c / s)",
        "taken: common practice, no source: pressed on, a rail takes the cloth from halfway to the rail below",
        "Strength of the top rail",
        "M_n = F_y × Z",
        "M = w × L² / 8",
        "V = w × L / 2",
        "Limit gust of the top rail, from a 3-second gust taken as it is",
    ] {
        assert!(out.text.contains(step), "{step}: {}", out.text);
    }
}

#[test]
fn slips_in_a_rail_are_told_with_what_to_write() {
    for (top, says) in [
        (r#"{ diameter = "1.660 in", nominal_wall = "0.9 in" }"#, vec!["top_rail", "wall", "0.9 in"]),
        (r#"{ nominal_wall = "0.140 in" }"#, vec!["has no diameter"]),
        (
            r#"{ diameter = "1.660 in", nominal_wall = "0.140 in", measured_wall = "0.14 in" }"#,
            vec!["top_rail", "has two walls", "keep one"],
        ),
        (r#"{ diameter = "1.660 in", splice = "sleve" }"#, vec!["splice", "sleve", "perhaps \"sleeve\""]),
        (r#"{ diameter = "1.660 in", wall = "0.14 in" }"#, vec!["top_rail has no key wall"]),
        (r#"{ diameter = "1.660 in", nominal_wal = "0.14 in" }"#, vec!["perhaps nominal_wall"]),
        (r#"{ diameter = "1.5 in", nominal_wall = "unknown" }"#, vec!["no pipe of 1.5 in", "next sizes"]),
        (r#"{ diameter = "1.660 in", nominal_wall = "0.14" }"#, vec!["nominal_wall", "unit"]),
        (
            r#"{ diameter = "1.660 in", nominal_wall = "0.01 in .. 0.02 in", yield = "30" }"#,
            vec!["yield", "unit"],
        ),
    ] {
        let out = run_on("-", &survey(top, KNOWN));
        let told = format!("{}{}", out.text, out.err);
        assert_eq!(out.code, 2, "{told}");
        for word in says {
            assert!(told.contains(word), "{word}: {told}");
        }
    }
}

#[test]
fn a_rail_of_a_fence_with_timber_posts_is_checked_too() {
    let mut fence = court(4, 10.0);
    fence.kinds[0].section = Section::Moment {
        face: inches(5.5),
        moment: fencegust::units::pound_feet(2000.0),
        format: Format::Asd,
    };
    assert!(rails(&fence).first().is_some());
    assert!(fence.kinds[0].stiffness(&mut fencegust::workings::Blank).is_err());
}

#[test]
fn posts_that_hold_do_not_let_cloth_be_hung_where_rails_are_over() {
    let strong = survey(KNOWN, KNOWN).replace(
        "diameter = \"4 in\"\nnominal_wall = \"0.226 in\"",
        "diameter = \"8.625 in\"\nnominal_wall = \"0.322 in\"",
    );
    let json = json_of(&strong).0;
    let run = &json["runs"][0];
    let text = in_one_line(&run_on("-", &strong).text);
    assert!(text.contains("at the design wind ● within") && !text.contains("● On north end"), "{text}");
    assert!(
        text.contains(
            "■ DO NOT HANG the cloth as surveyed on north end: its rails are over their limit at the design wind"
        ),
        "{text}"
    );
    assert!(!text.contains("posts are over their limit"), "{text}");
    assert_eq!((run["flag"].as_str(), run["rails_flag_of_checked"].as_str()), (Some("over"), Some("over")));
    // Pressed on it is the rails that go before the posts.
    let onto = run["rails"].as_array().unwrap().iter().filter(|rail| rail["wind"] == "onto");
    let least = onto.map(|rail| rail["limit_gust_m_s"].as_f64().unwrap()).fold(f64::MAX, f64::min);
    let told = format!(
        "no tie will relieve the fence from that side; before the posts goes the top rail, in a gust of {} mph",
        (least / 0.44704).floor()
    );
    assert!(text.contains(&told), "{told}: {text}");
}

#[test]
fn what_is_too_close_to_say_is_told_from_the_least_gust_up() {
    // Ties of 50 lbf go within a tenth of the gust of the top rail, the posts long after.
    let close = survey(KNOWN, KNOWN)
        .replace(
            "diameter = \"4 in\"\nnominal_wall = \"0.226 in\"",
            "diameter = \"8.625 in\"\nnominal_wall = \"0.322 in\"",
        )
        .replace("175 lbf", "50 lbf");
    assert_eq!(json_of(&close).0["runs"][0]["fastening"]["goes_first"], "too close to say");
    let text = in_one_line(&run_on("-", &close).text);
    let from = text.find("too close to say: ").unwrap();
    let told: Vec<&str> = text[from..].split(", ").take(3).collect();
    assert!(told[0].contains("mph for the t") && told[1].contains("mph for the t"), "{told:?}");
    assert!(told[2].contains("for the weakest post"), "{told:?}");
}

#[test]
fn cloth_on_the_mesh_alone_pulls_on_its_own_ties_two_feet_apart() {
    let held = survey(KNOWN, KNOWN).replace("age = \"new\"", "age = \"new\", tied_to = \"chain link\"");
    let json = json_of(&held).0;
    let pull = json["runs"][0]["fastening"]["pull_n"].as_f64().unwrap() / 4.448_221_615_260_5;
    let remarks = json["remarks"].as_array().unwrap();
    let told =
        remarks.iter().find(|remark| remark["id"] == "tied-to-chain-link").unwrap()["text"].as_str().unwrap();
    // Ties of the cloth every 12 in: as much for each foot of its row, twice that on a tie every 24 in.
    for says in [
        format!("each row hands them up to {} lb/ft", pull.round()),
        format!(
            "with a tie every 24 in (the most that a city's code, after ASTM F567, lets along a rail) up to {} lbf",
            (2.0 * pull).round()
        ),
        // 65 ksi on the area of 0.106 in.
        "breaks at 574 lbf at most pulled straight".to_owned(),
    ] {
        assert!(told.contains(&says), "{says}: {told}");
    }
}

#[test]
fn the_engineer_has_a_table_of_rails_and_their_steps() {
    let out = run_with(&["sheet", "-", "--for", "engineer"], &survey(KNOWN, KNOWN));
    for says in [
        "Rails at the design event",
        "<td>bottom rail</td>",
        "<td>pulls off</td>",
        "Limit gust of the top rail",
    ] {
        assert!(out.text.contains(says), "{says}: {}", out.text);
    }
    let unknown = run_with(&["sheet", "-", "--for", "engineer"], &survey("\"none\"", "\"none\""));
    assert!(!unknown.text.contains("Rails at the design event"));
}
