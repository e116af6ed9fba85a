//! A fence on the frame that its rails make, beside hand statics.

use crate::support::{fence, json_of, round_tube, run_with, site};
use fencegust::fence::{
    CornerTo, End, Face, Fence, Footing, FootingShape, Guy, GuyKind, Rail, Rails, Role, Section, Shared, Wall,
};
use fencegust::footing::base_stiffness::{SandDensity, base_stiffness};
use fencegust::frame::Order;
use fencegust::loads::frame::{Base, FrameRun, Loading, OnFrame, Way, frame_loads};
use fencegust::loads::{CaseLoads, Dress, run_loads};
use fencegust::units::{Force, Moment, Pure, Quantity, feet, inches, metres, newton_metres, pound_feet};
use fencegust::verdict::{on_frame, run_verdict};
use fencegust::wind::{Case, Event};
use fencegust::workings::Blank;

/// Posts 2.875 x 0.203 in and a top rail 1.660 x 0.140 in, as labels have them, with cloth over all of it. It stands on a
/// wall, so that the code lets the wind act at the middle of the cloth.
fn railed(bays: usize) -> Fence {
    let mut fence = fence(&vec![10.0; bays], 10.0, 1.0);
    let diameter = inches(1.66);
    let tube = Some(round_tube(diameter, Wall::Nominal(inches(0.14))));
    let run = &mut fence.runs[0];
    run.rails.top = Some(Rail { tube, ..Rail::of(diameter) });
    run.base_above_ground = feet(5.0);
    fence
}

/// The same in medium sand with footings so deep that each foot takes this moment for a radian, at the soft end.
fn on_springs(bays: usize, stiffness: Moment) -> Fence {
    sprung(railed(bays), stiffness)
}

fn sprung(mut fence: Fence, stiffness: Moment) -> Fence {
    fence.ground.density = Some(SandDensity::Medium);
    let modulus = fence.ground.modulus("a test", &mut Blank).unwrap();
    // The wind acts at half the height.
    let arm = fence.runs[0].height * 0.5;
    let softest = |depth: f64| {
        (base_stiffness(inches(depth), arm, modulus, &mut Blank).unwrap().softest / stiffness).pure()
    };
    let (mut low, mut high) = (1.0, 200.0);
    for _ in 0..80 {
        let middle = 0.5 * (low + high);
        if softest(middle) < 1.0 { low = middle } else { high = middle }
    }
    fence.footings.push(Footing {
        name: "footing".into(),
        shape: FootingShape::Round,
        width: Some(inches(12.0)),
        depth: Some(inches(high)),
        is_held: false,
        is_isolated: false,
    });
    for post in &mut fence.runs[0].posts {
        post.footing = Some(0);
    }
    fence
}

fn worked(fence: &Fence, order: Order) -> FrameRun {
    frame_loads(fence, &site(115.0, 1), Event::Design, order).remove(0).unwrap()
}

/// Case A, which is even along the run, by hand statics.
fn by_hand(fence: &Fence) -> CaseLoads {
    let loads = run_loads(fence, 0, Dress::AsHung, &site(115.0, 1), Event::Design).unwrap();
    loads.cases.into_iter().find(|one| one.case == Case::Square).unwrap()
}

fn even(found: &FrameRun, base: Base, way: Way) -> &Loading {
    let wanted = |one: &&Loading| one.case == Case::Square && one.base == base && one.way == way;
    found.loadings.iter().find(wanted).unwrap()
}

/// Under an even load, the moment at each foot over that by hand statics, without the weight of the posts.
fn over_hand(fence: &Fence, base: Base, way: Way) -> Vec<f64> {
    let (found, hand) = (worked(fence, Order::First), by_hand(fence).moments);
    let posts = even(&found, base, way).posts.iter().zip(hand);
    posts.map(|(post, hand)| (post.base_moment / hand).pure()).collect()
}

fn near(found: f64, wanted: f64) {
    assert!((found / wanted - 1.0).abs() < 2e-5, "{found} {wanted}");
}

/// Where the weight of the posts, which those figures leave out, shortens them by a hair.
fn nearly(found: f64, wanted: f64) {
    assert!((found / wanted - 1.0).abs() < 1e-3, "{found} {wanted}");
}

#[test]
fn four_posts_and_a_rail_meet_the_figures_of_two_independent_solvers() {
    // Four posts of 2.875 x 0.93 (0.203) in, 10 ft apart and high, rail 1.660 x 0.93 (0.140) in, 200 lb/ft on inner posts and
    // 100 on end posts: 62,085.2 and 117,915 lb-in where 60,000 and 120,000 stand by hand; the end post's top 5.39671 in, the
    // inner one's 10.0764 in. On springs of 5e5 lb-in/rad 66,621.9, 113,378, 21.9059 and 36.7672.
    let fence = on_springs(3, pound_feet(5e5 / 12.0));
    let found = worked(&fence, Order::First);
    let hand = by_hand(&fence).moments;
    for (base, moments, tops) in [
        (Base::Rigid, [62_085.2, 117_915.0], [5.396_71, 10.076_4]),
        (Base::Soft, [66_621.9, 113_378.0], [21.905_9, 36.767_2]),
    ] {
        let posts = &even(&found, base, Way::Posts).posts;
        for (post, by_hand) in [60_000.0, 120_000.0].into_iter().enumerate() {
            near((posts[post].base_moment / hand[post]).pure(), moments[post] / by_hand);
            // The load is not that of those figures: both go with it.
            let load = (hand[0] / pound_feet(5_000.0)).pure();
            near((posts[post].top / inches(1.0)).pure(), tops[post] * load);
            assert_eq!((posts[post].greatest, posts[post].at), (posts[post].base_moment, feet(0.0)));
        }
        // The rail bends with 2,085.19 and 6,621.89 lb-in at the second post.
        let rail = even(&found, base, Way::Posts).rails.iter().find(|rail| rail.bay == 1).unwrap();
        let wanted = if base == Base::Rigid { 2_085.19 } else { 6_621.89 };
        near((rail.moment / hand[0]).pure(), wanted / 60_000.0);
    }
}

#[test]
fn the_same_in_metres_meets_its_figures_too() {
    // Posts 60.3 x 3.2 mm, rail 42.4 x 3 mm, 3 m by 3 m, 500 Pa: 3,625.73 and 6,499.27 N m where 3,375 and 6,750 stand by
    // hand, and 2,333.58 and 4,416.42 N of 2,250 and 4,500; on springs of 100 kN m/rad 3,753.53 and 6,371.47 N m.
    let mut fence = fence(&[3.0 / 0.3048; 3], 3.0 / 0.3048, 1.0);
    let tube = |diameter: f64, wall: f64| round_tube(metres(diameter), Wall::Measured(metres(wall)));
    fence.kinds[0].section = Section::Tube(tube(0.0603, 0.0032));
    let run = &mut fence.runs[0];
    run.rails.top = Some(Rail { tube: Some(tube(0.0424, 0.003)), ..Rail::of(metres(0.0424)) });
    run.base_above_ground = metres(1.5);
    // Those figures are for E of 210 GPa; here it is 29,000 ksi, and springs count beside E I.
    let fence = sprung(fence, newton_metres(100e3 * 199.947_96 / 210.0));
    let found = worked(&fence, Order::First);
    let hand = by_hand(&fence);
    for (base, moments, shears) in [
        (Base::Rigid, [3_625.73, 6_499.27], [2_333.58, 4_416.42]),
        (Base::Soft, [3_753.53, 6_371.47], [2_376.18, 4_373.82]),
    ] {
        let posts = &even(&found, base, Way::Posts).posts;
        for (post, (moment, shear)) in [(3_375.0, 2_250.0), (6_750.0, 4_500.0)].into_iter().enumerate() {
            near((posts[post].base_moment / hand.moments[post]).pure(), moments[post] / moment);
            near((posts[post].base_shear / hand.shears[post]).pure(), shears[post] / shear);
        }
    }
}

#[test]
fn end_posts_take_87_to_111_percent_of_hand_statics_and_their_neighbours_88_to_107() {
    let mut seen = [(f64::MAX, 0.0_f64); 3];
    for bays in [3, 12] {
        for stiffness in [3e6, 1e6, 5e5] {
            let fence = on_springs(bays, pound_feet(stiffness / 12.0));
            for base in [Base::Rigid, Base::Soft] {
                for way in Way::ALL {
                    let all = over_hand(&fence, base, way);
                    for (post, times) in all.iter().enumerate() {
                        let (least, most) = &mut seen[post.min(bays - post).min(2)];
                        (*least, *most) = (least.min(*times), most.max(*times));
                    }
                }
            }
        }
    }
    let [ends, first_inner, others] = seen;
    let within = |(least, most): (f64, f64), bounds: [f64; 2]| least >= bounds[0] && most <= bounds[1];
    assert!(within(ends, [0.864, 1.111]), "{ends:?}");
    assert!(within(first_inner, [0.88, 1.07]), "{first_inner:?}");
    assert!(within(others, [0.97, 1.10]), "{others:?}");
    // Both ends of the range of end posts are reached: the least with rigid feet and load through the rails, the greatest
    // with soft feet and load on the posts.
    assert!((ends.0 - 0.87).abs() < 0.01 && (ends.1 - 1.11).abs() < 0.01, "{ends:?}");
    assert!((first_inner.1 - 1.07).abs() < 0.01, "{first_inner:?}");
}

#[test]
fn the_ends_of_two_bays_take_a_sixth_more_than_by_hand_on_soft_feet() {
    // Two spans of rail are one of 240 in over the end posts, pushed in the middle by P: the middle top moves 2 y − P f, the
    // end ones y + P f/2, and the rail sags P 240³/48 EI. With y = 8.3333 × 120⁴/(8 × 4.1879e7) + 8.3333 × 120³/(2 × 5e5) =
    // 19.558 in, f = 120³/(3 × 4.1879e7) + 120²/5e5 = 0.042554 in/lb and 240³/(48 × 5.3473e6) = 0.053859 in/lb it is
    // P = 19.558/(1.5 × 0.042554 + 0.053859) = 166.18 lb; half of it at 120 in to 60,000 lb-in is 16.62 %.
    let ends = over_hand(&on_springs(2, pound_feet(5e5 / 12.0)), Base::Soft, Way::Posts);
    assert!((ends[0] - 1.1662).abs() < 1e-4 && (ends[1] - (1.0 - 0.1662)).abs() < 1e-4, "{ends:?}");
}

#[test]
fn the_feet_give_back_the_whole_load_and_its_moment_however_it_gets_in() {
    let mut fence = on_springs(5, pound_feet(8e4));
    fence.runs[0].base_above_ground = feet(0.0);
    fence.runs[0].rails.middle = fence.runs[0].rails.top;
    let found = worked(&fence, Order::First);
    assert!(found.residual < 1e-9 && found.out_of_balance < 1e-9, "{found:?}");
    let hand = by_hand(&fence);
    let whole = |of: fn(&OnFrame) -> f64, loading: &Loading| loading.posts.iter().map(of).sum::<f64>();
    let moment: f64 = hand.moments.iter().map(|moment| moment.si()).sum();
    for base in [Base::Rigid, Base::Soft] {
        for way in Way::ALL {
            let loading = even(&found, base, way);
            near(whole(|post| post.base_shear.si(), loading), hand.force.si());
            near(whole(|post| post.base_moment.si(), loading), moment);
        }
    }
}

#[test]
fn turning_the_bays_round_turns_the_posts_round() {
    let widths = [8.0, 10.0, 12.0, 9.0, 10.0, 6.0];
    let of = |widths: &[f64]| {
        let mut fence = on_springs(widths.len(), pound_feet(8e4));
        let mut at = feet(0.0);
        for (bay, width) in widths.iter().enumerate() {
            fence.runs[0].bays[bay].width = feet(*width);
            at += feet(*width);
            fence.runs[0].posts[bay + 1].at = at;
        }
        let found = worked(&fence, Order::Second);
        let posts = 0..fence.runs[0].posts.len();
        posts.map(|post| found.post_load(&fence, post).unwrap().moment.si()).collect::<Vec<_>>()
    };
    let turned: Vec<f64> = widths.into_iter().rev().collect();
    let (one, other) = (of(&widths), of(&turned));
    for (one, other) in one.iter().zip(other.iter().rev()) {
        assert!((one / other - 1.0).abs() < 1e-9, "{one} {other}");
    }
}

#[test]
fn a_gate_breaks_the_rails_so_that_nothing_is_handed_across_it() {
    let beyond = |last: f64| {
        let mut fence = railed(6);
        fence.runs[0].bays[3].gate = true;
        fence.runs[0].bays[5].width = feet(last);
        fence.runs[0].posts[6].at = feet(50.0 + last);
        over_hand(&fence, Base::Rigid, Way::Posts)
    };
    let (one, other) = (beyond(10.0), beyond(16.0));
    for post in 0..=3 {
        near(one[post], other[post]);
    }
    assert!((one[5] / other[5] - 1.0).abs() > 0.01);
}

#[test]
fn four_runs_round_a_court_stand_in_one_frame_that_is_the_same_from_each_side() {
    let mut court = railed(4);
    let run = court.runs.remove(0);
    for at in 0..4 {
        let mut run = run.clone();
        run.name = format!("side {}", at + 1);
        let (before, after) = ((at + 3) % 4, (at + 1) % 4);
        run.start = End::Corner(CornerTo { run: before, at_its_start: false });
        run.finish = End::Corner(CornerTo { run: after, at_its_start: true });
        run.posts[0].role = Role::Corner;
        run.posts[4].role = Role::Corner;
        run.posts[0].shared_with = Some(Shared { run: before, post: 4 });
        run.posts[4].shared_with = Some(Shared { run: after, post: 0 });
        court.runs.push(run);
    }
    let all = frame_loads(&court, &site(115.0, 1), Event::Design, Order::First);
    let first = all[0].as_ref().unwrap();
    assert_eq!(first.with, [0, 1, 2, 3]);
    for found in &all {
        let found = found.as_ref().unwrap();
        assert!(found.out_of_balance < 1e-9);
        for post in 0..=4 {
            let load = found.post_load(&court, post).unwrap();
            let mirrored = first.post_load(&court, 4 - post).unwrap();
            near(load.moment.si(), first.post_load(&court, post).unwrap().moment.si());
            near(load.moment.si(), mirrored.moment.si());
        }
    }
    // The run round the corner holds a corner post, so that less comes to its foot than by hand; hand statics counts.
    let hand = run_verdict(&court, 0, &site(115.0, 1)).unwrap();
    let corner = first.worst(&court, 0, None, Some(Way::Posts)).unwrap().1;
    assert!(corner.base_moment < hand.posts[0].design.unwrap().moment * 0.6);
    let hands = (0..4).map(|run| run_verdict(&court, run, &site(115.0, 1)).unwrap()).collect();
    let both = on_frame(&court, &site(115.0, 1), hands).unwrap();
    assert_eq!(both[0].posts[0].parts[0], hand.posts[0].parts[0]);
}

#[test]
fn of_frame_and_hand_statics_the_worse_counts_part_by_part() {
    let fence = on_springs(3, pound_feet(5e5 / 12.0));
    let hand = run_verdict(&fence, 0, &site(115.0, 1)).unwrap();
    let both = on_frame(&fence, &site(115.0, 1), vec![hand.clone()]).unwrap().remove(0);
    assert!(both.frame.as_ref().unwrap().is_ok());
    for (post, (hand, both)) in hand.posts.iter().zip(&both.posts).enumerate() {
        let found = both.frame.as_ref().unwrap();
        let (least, most) = found.times_hand().unwrap();
        assert!(least < most);
        let ratio = both.parts[0].ratio.unwrap() / hand.parts[0].ratio.unwrap();
        near(ratio, most.max(1.0));
        // The gust goes with the root, in either wind.
        near((hand.limit_gust / both.limit_gust).pure().powi(2), most.max(1.0));
        assert!((both.limit_gust < hand.limit_gust) == (most > 1.0), "post {}", post + 1);
    }
    // An end post on such feet: 11 % by its rails and one by its own weight.
    let times = both.posts[0].frame.as_ref().unwrap().times_hand().unwrap().1;
    assert!((1.10..1.16).contains(&times), "{times}");
}

#[test]
fn a_rail_or_post_of_unknown_stiffness_is_not_worked_and_says_what_to_measure() {
    let mut fence = railed(3);
    fence.runs[0].rails.top = Some(Rail::of(inches(1.66)));
    let why = frame_loads(&fence, &site(115.0, 1), Event::Design, Order::First).remove(0).unwrap_err();
    assert_eq!(
        why.to_string(),
        "top rail of run \"run\": the wall of the rail is not known: measure it with a caliper at an open end"
    );
    let mut fence = railed(3);
    fence.kinds[0].section = Section::Moment {
        face: inches(2.875),
        moment: pound_feet(3000.0),
        format: fencegust::member::Format::Lrfd,
    };
    let why = frame_loads(&fence, &site(115.0, 1), Event::Design, Order::First).remove(0).unwrap_err();
    assert!(why.to_string().starts_with("posts \"posts\": only the moment of the post is given"), "{why}");
}

const SURVEY: &str = "survey = 1\n[site]\nwind_code = \"asce7-16\"\nwind_speed = \"115 mph\"\nexposure = \"C\"\n\
     SOIL\n[post.line]\ndiameter = \"2.875 in\"\nnominal_wall = \"0.203 in\"\nyield = \"30 ksi\"\n[[run]]\nname = \"north\"\n\
     height = \"10 ft\"\nbays = [\"6 x 10 ft\"]\nends = \"free\"\nchain_link = \"none\"\n\
     screen = { solidity = 0.9, bottom = \"1 ft\", height = \"9 ft\" }\n\
     footing = { shape = \"round\", width = \"12 in\", depth = \"42 in\" }\n";

fn survey(soil: &str, more: &str) -> String {
    SURVEY.replace("SOIL", soil) + more
}

fn on_the_frame(survey: &str, format: &str) -> (String, i32) {
    let out = run_with(&["check", "-", "--frame", "--format", format], survey);
    assert!(out.err.is_empty(), "{}", out.err);
    (out.text, out.code)
}

#[test]
fn without_rails_the_frame_is_hand_statics_and_the_weight_of_the_posts() {
    let soil = "soil = { density = \"medium\", lateral_bearing = \"150 psf/ft\" }";
    let text = on_the_frame(&survey(soil, ""), "json").0;
    let found: serde_json::Value = serde_json::from_str(&text).unwrap();
    let run = &found["runs"][0];
    assert_eq!((found["by_frame"].as_bool(), run["frame"]["soft_feet"].as_bool()), (Some(true), Some(true)));
    for post in run["posts"].as_array().unwrap() {
        let frame = &post["frame"];
        let times = [frame["times_hand_least"].as_f64().unwrap(), frame["times_hand"].as_f64().unwrap()];
        assert!(times[0] >= 1.0 && times[1] < 1.02, "{times:?}");
        near(frame["hand_moment_n_m"].as_f64().unwrap(), post["base_moment_n_m"].as_f64().unwrap());
        assert!(frame["soft"]["top_moves_m"].as_f64() > frame["rigid"]["top_moves_m"].as_f64());
    }
}

#[test]
fn what_was_not_asked_or_not_worked_is_told() {
    let soil = "soil = { density = \"medium\" }";
    let rail = "top_rail = { diameter = \"1.660 in\" }\n";
    let (plain, _) = json_of(&survey(soil, rail));
    assert!(plain["runs"][0].get("frame").is_none() && plain["runs"][0]["posts"][0].get("frame").is_none());
    let told = |check: &serde_json::Value| {
        let remarks = check["remarks"].as_array().unwrap();
        remarks.iter().any(|remark| remark["id"] == "hand-statics")
    };
    assert!(told(&plain));
    // Soil that is not known leaves soft feet out, which is no pass.
    let (text, _) = on_the_frame(&survey("", ""), "json");
    let found: serde_json::Value = serde_json::from_str(&text).unwrap();
    let run = &found["runs"][0];
    assert!(!told(&found));
    assert_eq!(
        (run["frame"]["worked"].as_bool(), run["frame"]["soft_feet"].as_bool()),
        (Some(true), Some(false))
    );
    assert!(run["frame"]["why"].as_str().unwrap().contains("how dense the sand lies"));
    assert!(run["posts"][0]["frame"]["soft"].is_null());
    let (text, _) = on_the_frame(&survey("", ""), "text");
    assert!(text.contains("FRAME: posts and rails also as one frame"), "{text}");
    let brief = text.split("Post by post").next().unwrap();
    assert!(brief.lines().all(|line| line.chars().count() <= 72), "{brief}");
    // A rail of unknown wall.
    let (text, code) = on_the_frame(&survey(soil, rail), "text");
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("FRAME: ◇ not on the frame: top rail: the wall"), "{text}");
    assert_ne!(code, 0);
}

#[test]
fn what_was_not_checked_is_never_an_empty_list() {
    let soil = "soil = { class = \"sand\", density = \"medium\" }";
    let rail = "{ diameter = \"1.66 in\", nominal_wall = \"0.14 in\", yield = \"30 ksi\" }";
    let known = format!("top_rail = {rail}\nbottom_rail = {rail}\n");
    let held = "height = \"9 ft\", fastening = { kind = \"ties\", strength = \"50 lbf\", age = \"new\", spacing = \"12 in\", \
                rows = [\"top\", \"bottom\"] } }";
    let (text, _) = on_the_frame(&survey(soil, &known).replace("height = \"9 ft\" }", held), "text");
    let line = text.lines().find(|line| line.contains("NOT CHECKED:")).unwrap();
    assert!(line.starts_with("◇ NOT CHECKED: the cloth itself, its hem and grommets"), "{line}");
}

/// Two posts without rails, each held at two thirds of its height by this, five feet out.
fn held(kind: GuyKind) -> Fence {
    let mut fence = railed(1);
    fence.runs[0].rails = Rails::default();
    let guy = |post| Guy {
        post,
        height: inches(80.0),
        back: inches(60.0),
        side: Face::Outside,
        kind,
        format: fencegust::member::Format::Lrfd,
    };
    fence.runs[0].guys = vec![guy(0), guy(1)];
    fence
}

fn brace() -> GuyKind {
    GuyKind::BackBrace(round_tube(inches(1.66), Wall::Nominal(inches(0.14))))
}

fn pushed(found: &FrameRun, base: Base, pushes: Face) -> &Loading {
    let wanted = |one: &&Loading| one.case == Case::Square && one.base == base && one.pushes == pushes;
    found.loadings.iter().find(wanted).unwrap()
}

#[test]
fn a_back_brace_meets_the_figures_of_the_force_method_pressed_and_pulled() {
    // A post of 10 ft under 100 lb/ft, braced at 80 in to a foot 60 in out: brace 1175.25 lb, at the foot of the post
    // 294.848 lb and 3587.84 lb-in, where 1000 lb and 60,000 lb-in stand without it; its top moves 0.128814 in.
    let fence = held(brace());
    let (found, hand) = (worked(&fence, Order::First), by_hand(&fence));
    let load = (hand.shears[0] / fencegust::units::pounds(1000.0)).pure();
    for (pushes, sign) in [(Face::Outside, -1.0), (Face::Inside, 1.0)] {
        let loading = pushed(&found, Base::Rigid, pushes);
        let (post, guy) = (loading.posts[0], loading.guys[0]);
        nearly((guy.axial / hand.shears[0]).pure(), sign * 1.175_25);
        nearly((post.base_shear / hand.shears[0]).pure(), 0.294_848);
        nearly((post.base_moment / hand.moments[0]).pure(), 3_587.84 / 60_000.0);
        nearly((post.top / inches(1.0)).pure(), 0.128_814 * load);
        // The largest moment has moved up to where the brace holds: half of 100 lb/ft over 40 in.
        nearly((post.greatest / hand.moments[0]).pure(), 6_666.667 / 60_000.0);
        nearly((post.at / inches(80.0)).pure(), 1.0);
        // Upright four fifths of the brace, at its own foot and, the other way, at that of the post.
        nearly((guy.foot_uplift / guy.axial).pure(), 0.8);
        assert!(!guy.is_slack);
    }
    assert!(found.out_of_balance < 1e-9);
}

#[test]
fn on_a_foot_that_turns_freely_the_brace_takes_what_statics_gives_it() {
    // M about the foot: 1000 lb × 60 in over 80 in × 60/100 is 1250 lb; 250 lb are left for the foot.
    let fence = sprung(held(brace()), pound_feet(1e-6));
    let (found, hand) = (worked(&fence, Order::First), by_hand(&fence));
    let loading = pushed(&found, Base::Soft, Face::Outside);
    near((loading.guys[0].axial / hand.shears[0]).pure(), -1.25);
    near((loading.posts[0].base_shear / hand.shears[0]).pure(), 0.25);
}

#[test]
fn a_guy_pulls_in_one_wind_and_is_slack_in_the_other_where_the_post_stands_alone() {
    let allowed = fencegust::units::pounds(500.0);
    let fence = held(GuyKind::Guy { diameter: inches(0.25), allowed: Some(allowed) });
    let (found, hand) = (worked(&fence, Order::First), by_hand(&fence));
    let (pulled, slack) =
        (pushed(&found, Base::Rigid, Face::Inside), pushed(&found, Base::Rigid, Face::Outside));
    assert!(pulled.guys[0].axial > Force::from_si(0.0) && !pulled.guys[0].is_slack);
    assert!(pulled.posts[0].base_moment < hand.moments[0] * 0.5);
    assert!(slack.guys[0].is_slack && slack.guys[0].axial == Force::from_si(0.0));
    near((slack.posts[0].base_moment / hand.moments[0]).pure(), 1.0);
    let hands = vec![run_verdict(&fence, 0, &site(115.0, 1)).unwrap()];
    let both = on_frame(&fence, &site(115.0, 1), hands).unwrap().remove(0);
    let guy = both.frame.unwrap().unwrap().guys[0];
    assert_eq!((guy.slack, guy.pressed), (Some(Face::Outside), None));
    near(guy.ratio.unwrap(), (guy.pulled / allowed).pure());
}

#[test]
fn a_braced_post_is_judged_on_the_frame_with_its_brace_and_never_as_checked_through() {
    let fence = held(brace());
    let hand = run_verdict(&fence, 0, &site(115.0, 1)).unwrap();
    let both = on_frame(&fence, &site(115.0, 1), vec![hand.clone()]).unwrap().remove(0);
    let (post, guy) = (&both.posts[0], both.frame.as_ref().unwrap().as_ref().unwrap().guys[0]);
    // Bending falls to a ninth of what it is without the brace, and the brace goes first.
    assert!(post.parts[0].ratio.unwrap() < hand.posts[0].parts[0].ratio.unwrap() / 8.0);
    assert!(post.limit_gust > hand.posts[0].limit_gust);
    assert!(post.limit_gust <= guy.limit_gust.unwrap() && post.is_at_most());
    // 4165 lbf pressed, 0.9 × 30 ksi × 0.6257 in² pulled.
    near(guy.ratio.unwrap(), (guy.pressed.unwrap() / guy.compression.unwrap().0).pure());
    assert!((guy.compression.unwrap().0 / fencegust::units::pounds(4165.0)).pure() - 1.0 < 1e-3);
    assert!(post.flag >= fencegust::verdict::Flag::NotChecked);
}

#[test]
fn braces_that_hold_nothing_reach_above_the_fence_or_lack_a_size_are_told_each_with_its_line() {
    let soil = "soil = { density = \"medium\" }";
    let guy = |posts: &str, height: &str, more: &str| {
        let guy = format!(
            "guy = [{{ posts = {posts}, height = \"{height}\", back = \"5 ft\", side = \"outside\", \
             diameter = \"1.66 in\", {more} }}]\n"
        );
        let out = run_with(&["check", "-", "--frame"], &survey(soil, &guy));
        assert_eq!(out.code, 2, "{}", out.text);
        out.err
    };
    let tube = "kind = \"back brace\", nominal_wall = \"0.14 in\", yield = \"30 ksi\"";
    for (told, wanted) in [
        (guy("[9]", "6 ft", tube), "has posts 1 to 7, seen from inside"),
        (guy("[]", "6 ft", tube), "guy has no posts"),
        (guy("[1, 1]", "6 ft", tube), "names post 1 twice"),
        (guy("[1]", "11 ft", tube), "holds its post 11 ft (3.353 m) up, above the fence of 10 ft (3.048 m)"),
        (guy("[1]", "6 ft", "kind = \"back brace\", yield = \"30 ksi\""), "has no nominal_wall"),
        (guy("[1]", "6 ft", "kind = \"back brase\""), "perhaps \"back brace\""),
        (guy("[1]", "6 ft", "kind = \"guy\", nominal_wall = \"0.14 in\""), "belongs to a back brace"),
        (guy("\"1\"", "6 ft", tube), "guy has no posts"),
    ] {
        assert!(told.contains(wanted) && told.contains("line "), "{wanted}: {told}");
    }
}

#[test]
fn back_braces_are_told_with_their_force_both_ways_and_the_uplift_nobody_checked() {
    let soil = "soil = { density = \"medium\", lateral_bearing = \"150 psf/ft\" }";
    let guys = "guy = [{ posts = [1, 7], kind = \"back brace\", height = \"7 ft\", back = \"5 ft\", side = \"outside\", \
                diameter = \"1.66 in\", nominal_wall = \"0.14 in\", yield = \"30 ksi\" }]\n";
    let (text, _) = on_the_frame(&survey(soil, guys), "json");
    let found: serde_json::Value = serde_json::from_str(&text).unwrap();
    let told = found["runs"][0]["frame"]["guys"].as_array().unwrap();
    assert_eq!(told.len(), 2);
    assert!(told[0]["pressed_n"].as_f64() > Some(0.0) && told[0]["pulled_n"].as_f64() > Some(0.0));
    assert!(
        told[0]["foot_uplift_n"].as_f64() > Some(0.0) && told[0]["rule"].as_str().unwrap().contains("E3")
    );
    let (text, _) = on_the_frame(&survey(soil, guys), "text");
    assert!(text.contains("back brace           posts 1, 7: "), "{text}");
    let brief = text.split("Post by post").next().unwrap();
    assert!(brief.lines().all(|line| line.chars().count() <= 72), "{brief}");
    assert!(brief.split_whitespace().collect::<Vec<_>>().join(" ").contains("pulls its own footing up with"));
    // By hand statics they do not count, which is told.
    let (plain, _) = json_of(&survey(soil, guys));
    let remarks = plain["remarks"].as_array().unwrap();
    assert!(remarks.iter().any(|remark| remark["id"] == "guys-not-counted"));
}

#[test]
fn the_braced_example_stands_in_one_frame_round_its_corner() {
    let out = run_with(&["check", "examples/braced.toml", "--frame", "--format", "json"], "");
    assert_eq!((out.err.as_str(), out.code), ("", 1));
    let found: serde_json::Value = serde_json::from_str(&out.text).unwrap();
    for run in found["runs"].as_array().unwrap() {
        assert_eq!(run["frame"]["with"], serde_json::json!(["north end", "east side"]));
        assert!(run["frame"]["out_of_balance"].as_f64().unwrap() < 1e-6, "{}", run["frame"]);
        assert_eq!(run["frame"]["guys"].as_array().unwrap().len(), 1);
    }
    // Where the wind is strongest the top rail bends more on the frame, and that is what its ratio is of.
    let rail = &found["runs"][0]["rails"][0];
    let figure = |key: &str| rail[key].as_f64().unwrap();
    assert!(figure("moment_n_m") > figure("hand_moment_n_m"), "{rail}");
    near(figure("ratio"), figure("moment_n_m") / figure("moment_capacity_n_m"));
    // Braced, the end post takes less than a third of what it takes alone.
    let post = &found["runs"][0]["posts"][0];
    assert!(post["frame"]["times_hand"].as_f64() < Some(0.34));
    let told = run_with(&["check", "examples/braced.toml", "--frame", "--workings", "east side/7"], "").text;
    for wanted in [
        "On the frame of north end, east side",
        "The guy of the post",
        "M_f/M",
        "The top rail in bay 6 on the frame",
    ] {
        assert!(told.contains(wanted), "{told}");
    }
}

#[test]
fn feet_too_soft_for_the_weight_of_their_posts_are_told_in_words_of_the_fence() {
    let fence = sprung(railed(1), pound_feet(1e-6));
    let worked = |order| frame_loads(&fence, &site(115.0, 1), Event::Design, order).remove(0);
    assert_eq!(
        worked(Order::Second).unwrap_err().to_string(),
        "post 1 of run \"run\" buckles, or leans without end, under these loads"
    );
    // Only their weight brings them down: without it they stand, however far they lean.
    assert!(worked(Order::First).is_ok());
}

#[test]
fn the_footing_of_a_braced_post_takes_what_comes_to_its_foot() {
    let mut fence = sprung(held(brace()), pound_feet(1e7));
    fence.ground.lateral_bearing = Some(fencegust::units::psf_per_foot(150.0));
    let hand = run_verdict(&fence, 0, &site(115.0, 1)).unwrap();
    let both = on_frame(&fence, &site(115.0, 1), vec![hand]).unwrap().remove(0);
    // 3587.84 lb-in over 294.848 lb is a force 12.17 in up; half the height of the cloth it was without the brace.
    let load = both.posts[0].footing.checked.as_ref().unwrap().demand;
    assert!(((load.height / inches(12.168)).pure() - 1.0).abs() < 0.03, "{:?}", load.height);
}

/// Three bays on feet that give, of which the first alone has cloth: the rails go on into bays where by hand statics
/// nothing bends them.
fn half_hung() -> Fence {
    let mut fence = on_springs(3, pound_feet(5e5 / 12.0));
    fence.runs[0].screen.as_mut().unwrap().end_bay = 1;
    fence
}

#[test]
fn a_rail_is_held_against_the_larger_moment_of_hand_statics_and_frame() {
    let fence = half_hung();
    let hand = run_verdict(&fence, 0, &site(115.0, 1)).unwrap();
    let both = on_frame(&fence, &site(115.0, 1), vec![hand.clone()]).unwrap().remove(0);
    let on_frame = both.frame.as_ref().unwrap().as_ref().unwrap();
    assert_eq!(hand.rails.checks.len(), both.rails.checks.len());
    let (mut by_frame, mut by_hand) = (0, 0);
    for (hand, both) in hand.rails.checks.iter().zip(&both.rails.checks) {
        let (Some(one), Some(other)) = (hand.design, both.design) else { continue };
        let bent =
            on_frame.rails.iter().find(|rail| (rail.bay, rail.place) == (hand.bay, hand.place)).unwrap();
        let framed = (bent.moment / hand.strength.unwrap().moment).pure();
        near(other.ratio, one.ratio.max(framed));
        if framed > one.ratio {
            by_frame += 1;
            near(other.moment.si(), bent.moment.si());
            assert_eq!(both.by_hand, Some(one));
            assert!(hand.limit_gust.is_none_or(|hand| both.limit_gust.unwrap() < hand));
        } else {
            by_hand += 1;
            assert_eq!((both.design, both.by_hand), (hand.design, None));
        }
    }
    assert!(by_frame > 0, "{by_frame} {by_hand}");
    // The posts beside it have the flag of the worse.
    for (at, post) in both.posts.iter().enumerate() {
        let beside = both.rails.checks.iter().filter(|check| check.bay == at || check.bay + 1 == at);
        let worst = beside.map(|check| check.flag()).max().unwrap();
        let part = post.parts.iter().find(|part| part.kind == fencegust::verdict::PartKind::Rails).unwrap();
        assert_eq!(part.flag, worst, "post {}", at + 1);
        assert!(post.flag >= worst);
    }
}

/// The survey with cloth held at its upright edges alone, and this brace.
fn pulled_along(brace: &str) -> String {
    let soil = "soil = { density = \"medium\", lateral_bearing = \"150 psf/ft\" }";
    let held = "height = \"9 ft\", fastening = { kind = \"ties\", strength = \"1500 lbf\", age = \"new\", spacing = \"12 in\", \
                rows = [\"sides\"], panel = \"10 ft\", stiffness = \"5000 lb/ft\", slack = \"1 %\" } }";
    survey(soil, brace).replace("height = \"9 ft\" }", held)
}

fn brace_at(posts: &str, height: &str, more: &str) -> String {
    format!(
        "brace = [{{ posts = {posts}, height = \"{height}\", diameter = \"1.66 in\", nominal_wall = \"0.14 in\", \
         yield = \"30 ksi\", {more} }}]\n"
    )
}

const ROD: &str = "rod = \"3/8 in\", rod_yield = \"36 ksi\"";

fn frame_of(survey: &str) -> serde_json::Value {
    let (text, _) = on_the_frame(survey, "json");
    let found: serde_json::Value = serde_json::from_str(&text).unwrap();
    found["runs"][0]["frame"].clone()
}

#[test]
fn a_brace_takes_the_pull_along_the_fence_as_a_triangle_of_pins_takes_it() {
    let plain = frame_of(&pulled_along(""));
    let found = frame_of(&pulled_along(&brace_at("[1, 7]", "7.5 ft", ROD)));
    let (braces, pulled) = (found["braces"].as_array().unwrap(), plain["pulled_posts"].as_array().unwrap());
    assert_eq!((braces.len(), pulled.len()), (2, 2));
    assert!(found["pulled_posts"].as_array().unwrap().is_empty());
    for (at, (brace, alone)) in braces.iter().zip(pulled).enumerate() {
        assert_eq!((&brace["post"], &alone["post"]), (&[1, 7][at].into(), &[1, 7][at].into()));
        assert_eq!((&brace["bay"], &alone["bay"]), (&[1, 6][at].into(), &[1, 6][at].into()));
        let figure = |key: &str| brace[key].as_f64().unwrap();
        let pull = figure("pull_n");
        // The cloth hangs from 1 ft to 10 ft: 5.5 ft over the foot, 5.5/7.5 of the pull in the rail, which stands in the
        // same proportion of 10 ft to 12.5 ft to the rod and to 7.5 ft to what lifts the foot.
        near(figure("rail_pressed_n"), pull * 5.5 / 7.5);
        near(figure("rod_pulled_n"), pull * 5.5 / 7.5 * 1.25);
        near(figure("post_uplift_n"), pull * 5.5 / 7.5 * 0.75);
        near(figure("next_post_pressed_n"), pull * 5.5 / 7.5 * 0.75);
        // Between foot and rail of a hinge 5.5 ft × 2/7.5 of the pull, in metres.
        near(figure("post_moment_n_m"), pull * 5.5 * 2.0 / 7.5 * 0.3048);
        // 2893 lbf in the rail and 3578.5 lbf in the rod, by hand.
        nearly(figure("rail_ratio"), figure("rail_pressed_n") / (2893.0 * 4.448_222));
        nearly(figure("rod_ratio"), figure("rod_pulled_n") / (3578.5 * 4.448_222));
        nearly(figure("rail_slenderness"), 221.06);
        assert!(brace["rail_rule"].as_str().unwrap().contains("E3"));
        assert!(brace["rod_rule"].as_str().unwrap().contains("D2"));
        // Without a brace the post is a cantilever under the same pull.
        near(alone["pull_n"].as_f64().unwrap(), pull);
        near(alone["foot_moment_n_m"].as_f64().unwrap(), pull * 5.5 * 0.3048);
        assert!(figure("post_foot_moment_n_m") < alone["foot_moment_n_m"].as_f64().unwrap() / 3.0);
        assert_eq!(alone["flag"], "not checked");
    }
}

#[test]
fn below_the_pull_a_brace_takes_more_on_a_stiff_foot_than_on_a_hinge_and_that_counts() {
    let found = frame_of(&pulled_along(&brace_at("[1]", "5 ft", ROD)));
    let figure = |key: &str| found["braces"][0][key].as_f64().unwrap();
    let times = figure("rail_pressed_n") / figure("pull_n");
    // 5.5/5 on a hinge; a cantilever propped at a by what does not give, pulled at y: (3 y - a)/2a.
    assert!(times > 5.5 / 5.0 && times < (3.0 * 5.5 - 5.0) / 10.0, "{times}");
}

#[test]
fn a_brace_in_metres_is_the_same_brace() {
    let us = frame_of(&pulled_along(&brace_at("[1]", "7.5 ft", ROD)));
    let si = "brace = [{ posts = [1], height = \"2.286 m\", diameter = \"42.164 mm\", nominal_wall = \"3.556 mm\", \
              yield = \"206.842719 MPa\", rod = \"9.525 mm\", rod_yield = \"248.211263 MPa\" }]\n";
    let si = frame_of(&pulled_along(si));
    for key in ["rail_ratio", "rod_ratio", "post_ratio", "rod_pulled_n", "post_foot_moment_n_m"] {
        near(si["braces"][0][key].as_f64().unwrap(), us["braces"][0][key].as_f64().unwrap());
    }
}

#[test]
fn a_brace_over_its_limit_is_a_post_over_its_limit_and_one_within_it_is_no_pass() {
    let check = |survey: &str| {
        let found: serde_json::Value = serde_json::from_str(&on_the_frame(survey, "json").0).unwrap();
        found["runs"][0].clone()
    };
    // Posts so strong, in footings so deep and wind so light that nothing but a thin rod is over its limit.
    let strong = |more: &str| {
        pulled_along(&brace_at("[1]", "5.5 ft", more))
            .replace(
                "diameter = \"2.875 in\"\nnominal_wall = \"0.203 in\"",
                "diameter = \"8.625 in\"\nnominal_wall = \"0.5 in\"",
            )
            .replace("width = \"12 in\", depth = \"42 in\"", "width = \"24 in\", depth = \"140 in\"")
            .replace("115 mph", "60 mph")
    };
    let thin = check(&strong("rod = \"1/8 in\", rod_yield = \"36 ksi\""));
    let brace = &thin["frame"]["braces"][0];
    assert!(brace["rod_ratio"].as_f64() > Some(1.0) && brace["post_ratio"].as_f64() < Some(0.9), "{brace}");
    assert_eq!((&brace["flag"], &thin["posts"][0]["flag"]), (&"over".into(), &"over".into()));
    let good = check(&strong("rod = \"1 in\", rod_yield = \"36 ksi\""));
    let brace = &good["frame"]["braces"][0];
    assert_eq!(
        (&brace["flag"], &good["posts"][0]["flag"]),
        (&"within".into(), &"not checked".into()),
        "{brace}"
    );
    assert!(brace["why"].as_str().unwrap().contains("along the fence and across it at once"));
}

#[test]
fn what_loads_no_brace_or_is_not_known_of_one_is_told_as_not_checked() {
    let brace = |survey: &str| frame_of(survey)["braces"][0].clone();
    let why = |brace: &serde_json::Value| {
        assert_eq!(brace["flag"], "not checked", "{brace}");
        brace["why"].as_str().unwrap().to_owned()
    };
    // Cloth of which no pull along the fence is known.
    let plain = brace(&survey("soil = { density = \"medium\" }", &brace_at("[1]", "5 ft", ROD)));
    assert!(why(&plain).starts_with("nothing that loads it is known") && plain["rail_pressed_n"].is_null());
    let bare = brace(&pulled_along(&brace_at("[1]", "5 ft", "rod = \"none\"")));
    assert!(why(&bare).starts_with("without a truss rod"));
    // Cloth on other bays than that of the brace.
    let beside = pulled_along(&brace_at("[1]", "5 ft", ROD))
        .replace("bottom = \"1 ft\"", "bays = \"3..4\", bottom = \"1 ft\"");
    assert!(why(&brace(&beside)).starts_with("no cloth pulls its post one way"));
    // It pulls the line posts at its own edges, which have none.
    let found = frame_of(&beside);
    let posts: Vec<_> =
        found["pulled_posts"].as_array().unwrap().iter().map(|post| post["post"].clone()).collect();
    assert_eq!(posts, [3, 5]);
    // The steel of the rod is not known: its rail is checked all the same.
    let rod = brace(&pulled_along(&brace_at("[1]", "5 ft", "rod = \"3/8 in\"")));
    assert!(rod["rod_ratio"].is_null() && rod["rail_ratio"].as_f64() > Some(0.0));
    let text = on_the_frame(&pulled_along(&brace_at("[1]", "5 ft", "rod = \"3/8 in\"")), "text").0;
    let brief = text.split("Post by post").next().unwrap();
    assert!(brief.lines().all(|line| line.chars().count() <= 72), "{brief}");
    let flat = brief.split_whitespace().collect::<Vec<_>>().join(" ");
    for wanted in [
        "brace post 1: ■ over: the cloth pulls the post along the fence with",
        "◇ not checked: the yield strength of its steel is not known; post bent",
        "pull along the fence post 7: ◇ not checked: the cloth pulls with",
    ] {
        assert!(flat.contains(wanted), "{wanted}: {flat}");
    }
    // By hand statics braces do not count, which is told.
    let (plain, _) = json_of(&pulled_along(&brace_at("[1]", "5 ft", ROD)));
    let remarks = plain["remarks"].as_array().unwrap();
    assert!(remarks.iter().any(|remark| remark["id"] == "guys-not-counted"));
}

#[test]
fn a_brace_at_a_gate_post_stands_in_the_bay_away_from_the_gate() {
    let gate = |posts: &str| {
        let with_gate = "bays = [\"3 x 10 ft\", \"gate 4 ft\", \"3 x 10 ft\"]";
        pulled_along(&brace_at(posts, "7.5 ft", ROD)).replace("bays = [\"6 x 10 ft\"]", with_gate)
    };
    let found = frame_of(&gate("[4, 5]"));
    let bays: Vec<_> = found["braces"].as_array().unwrap().iter().map(|brace| brace["bay"].clone()).collect();
    assert_eq!(bays, [3, 5]);
    // An open gate holds no cloth: its posts are pulled one way.
    for brace in found["braces"].as_array().unwrap() {
        near(brace["rail_pressed_n"].as_f64().unwrap(), brace["pull_n"].as_f64().unwrap() * 5.5 / 7.5);
    }
}

#[test]
fn braces_that_stand_nowhere_or_lack_a_size_are_told_each_with_its_line() {
    let told = |brace: &str, bays: &str| {
        let survey = pulled_along(brace).replace("6 x 10 ft", bays);
        let out = run_with(&["check", "-", "--frame"], &survey);
        assert_eq!(out.code, 2, "{}", out.text);
        out.err
    };
    let fence = "6 x 10 ft";
    for (told, wanted) in [
        (told(&brace_at("[9]", "5 ft", ROD), fence), "has posts 1 to 7, seen from inside"),
        (told(&brace_at("[3]", "5 ft", ROD), fence), "post 3 is a line post"),
        (
            told(&brace_at("[1]", "5 ft", ROD), "gate 4 ft"),
            "beside post 1 there is no bay but a gate to stand in",
        ),
        (told(&brace_at("[1, 1]", "5 ft", ROD), fence), "names post 1 twice"),
        (
            told(
                &brace_at("[1]", "5 ft", ROD).replace(
                    "[{",
                    "[{ posts = [1], height = \"4 ft\", diameter = \"1.66 in\", \
                 nominal_wall = \"0.14 in\", yield = \"30 ksi\", rod = \"none\" }, {",
                ),
                fence,
            ),
            "post 1 has another brace",
        ),
        (
            told(&brace_at("[1]", "11 ft", ROD), fence),
            "holds its post 11 ft (3.353 m) up, above the fence of 10 ft (3.048 m)",
        ),
        (
            told(&brace_at("[1]", "5 ft", "note = \"\""), fence),
            "has no rod: across its truss rod, or \"none\"",
        ),
        (
            told(&brace_at("[1]", "5 ft", "rod = \"none\", rod_yield = \"36 ksi\""), fence),
            "belongs to a rod, and it has none",
        ),
        (told(&brace_at("\"1\"", "5 ft", ROD), fence), "brace has no posts"),
        (told(&brace_at("[1]", "5 ft", ROD).replace("nominal_wall", "wall"), fence), "brace has no key wall"),
        (told("brace = \"5 ft\"\n", fence), "brace is a list of tables"),
    ] {
        assert!(told.contains(wanted) && told.contains("line "), "{wanted}: {told}");
    }
}

#[test]
fn the_workings_of_a_braced_post_write_down_its_rail_its_rod_and_itself() {
    let survey = pulled_along(&brace_at("[1]", "7.5 ft", ROD));
    let told = |post: &str| run_with(&["check", "-", "--frame", "--workings", post], &survey).text;
    let braced = told("north/1");
    for wanted in
        ["The rail of its brace", "L_c/r", "The rod of its brace", "The post along the fence alone", "n_f"]
    {
        assert!(braced.contains(wanted), "{wanted}: {braced}");
    }
    assert!(told("north/7").contains("the post has no brace: not checked"));
}
