//! Wind from either side of the cloth: what holds it, who goes first, and that no tie relieves a post.

use crate::support::{json_of, run, run_on};
use serde_json::Value;

const TIES: &str = "kind = \"ties\", strength = \"50 lbf\", age = \"new\", spacing = \"12 in\", rows = [\"top\", \"bottom\"]";

/// Two ends of a court with closed mesh from 1 ft to 10 ft, held so.
fn survey(fastening: &str) -> String {
    format!(
        r#"survey = 1
[site]
wind_code = "asce7-16"
wind_speed = "115 mph"
exposure = "C"
[post.line]
diameter = "2.875 in"
nominal_wall = "0.203 in"
yield = "30 ksi"
[[run]]
name = ["north end", "south end"]
court = "one"
faces = ["north", "south"]
height = "10 ft"
top_rail = {{ diameter = "1.660 in" }}
chain_link = {{ mesh = "1-3/4 in", wire = "9 gauge" }}
bays = ["12 x 10 ft"]
ends = "free"
screen = {{ solidity = 0.95, bottom = "1 ft", height = "9 ft", face = "inside", fastening = {{ {fastening} }} }}
"#
    )
}

fn first_run(fastening: &str) -> Value {
    json_of(&survey(fastening)).0["runs"][0].clone()
}

fn goes(fastening: &str) -> f64 {
    first_run(fastening)["fastening"]["goes_gust_m_s"].as_f64().unwrap()
}

fn in_one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_tie_holds_its_spacing_by_half_the_cloth_at_the_largest_pressure_of_its_bay() {
    let run = first_run(TIES);
    let pressure = run["bays"][0]["pressure_pa"].as_f64().unwrap();
    // The first zone of 9 ft ends within the first bay of 10 ft: the peak lies above the bay's mean.
    let pull = run["fastening"]["pull_n"].as_f64().unwrap();
    let square_metre = 0.3048_f64 * 0.3048;
    let peak = pull / (1.0 * 4.5 * square_metre);
    assert!(peak > pressure && peak < 1.05 * pressure, "{peak} {pressure}");
    assert!((run["fastening"]["twice_pull_n"].as_f64().unwrap() / pull - 2.0).abs() < 1e-12);
    // Ratio and gust hold the identity of a part that follows the pressure.
    let gust = goes(TIES) / (115.0 * 0.44704);
    let ratio = pull / (50.0 * 4.448_221_615_260_5);
    assert!((gust * gust * ratio - 0.85).abs() < 1e-9, "{gust} {ratio}");
}

#[test]
fn a_stronger_tie_never_goes_earlier_and_a_wider_spacing_never_later() {
    let with = |strength: f64, spacing: f64| {
        goes(&TIES.replace("50 lbf", &format!("{strength} lbf")).replace("12 in", &format!("{spacing} in")))
    };
    let strengths: Vec<f64> = [18.0, 50.0, 120.0, 175.0, 250.0].map(|strength| with(strength, 12.0)).into();
    assert!(strengths.windows(2).all(|two| two[0] < two[1]), "{strengths:?}");
    let spacings: Vec<f64> = [6.0, 12.0, 18.0, 24.0, 48.0].map(|spacing| with(50.0, spacing)).into();
    assert!(spacings.windows(2).all(|two| two[0] > two[1]), "{spacings:?}");
    // A row in the middle halves the strip of the others.
    let three = goes(&TIES.replace("\"top\", \"bottom\"", "\"top\", \"middle\", \"bottom\""));
    assert!(three > with(50.0, 12.0) * 0.999);
}

#[test]
fn ties_never_touch_the_check_of_a_post() {
    let posts = |fastening: &str| {
        let mut run = first_run(fastening);
        for post in run["posts"].as_array_mut().unwrap() {
            post["parts"].as_array_mut().unwrap().retain(|part| part["part"] != "ties and lacing");
            for key in ["flag", "flag_of_checked", "flag_best"] {
                post.as_object_mut().unwrap().remove(key);
            }
        }
        (run["posts"].clone(), run["limit_gust_m_s"].clone(), run["own_ratio"].clone())
    };
    let weak = posts(&TIES.replace("50 lbf", "18 lbf"));
    assert_eq!(weak, posts(TIES));
    assert_eq!(weak, posts(&TIES.replace("50 lbf", "5000 lbf")));
}

#[test]
fn one_wind_pulls_the_cloth_off_one_end_and_presses_it_onto_the_other() {
    let (json, _) = json_of(&survey(TIES));
    let of = |run: usize, key: &str| json["runs"][run]["fastening"][key].as_str().unwrap().to_owned();
    assert_eq!((of(0, "off_wind_from"), of(0, "onto_wind_from")), ("the north".into(), "the south".into()));
    assert_eq!((of(1, "off_wind_from"), of(1, "onto_wind_from")), ("the south".into(), "the north".into()));
    assert_eq!(of(0, "opposite_run"), "south end");
    let text = in_one_line(&run_on("-", &survey(TIES)).text);
    assert!(text.contains("no tie will relieve the fence from that side"), "{text}");
    assert!(
        text.contains("from the north it pulls the cloth off north end and presses it onto south end"),
        "{text}"
    );
    // Hung on the outside it is the other way round.
    let outside = survey(TIES).replace("face = \"inside\"", "face = \"outside\"");
    assert_eq!(json_of(&outside).0["runs"][0]["fastening"]["off_wind_from"], "the south");
}

#[test]
fn the_three_examples_say_who_goes_first() {
    for (file, first, says) in [
        ("ties-first", "the ties", "first to go the ties: 31 to 32 mph against 113 to 114 mph"),
        (
            "posts-first",
            "the posts",
            "first to go the posts: 24 mph against 63 mph for the ties, which save nothing",
        ),
        (
            "laced",
            "the posts",
            "first to go the posts: 34 mph against 105 mph for the lacing, which saves nothing",
        ),
    ] {
        let path = format!("examples/{file}.toml");
        let out = run(&["check", &path, "--format", "json"]);
        assert_eq!((out.code, out.err.as_str()), (1, ""));
        let json: Value = serde_json::from_str(&out.text).unwrap();
        for run in json["runs"].as_array().unwrap() {
            assert_eq!(run["fastening"]["goes_first"], first, "{file}");
        }
        let text = in_one_line(&run(&["check", &path, "--brief"]).text);
        assert!(text.contains(says), "{text}");
    }
    let text = in_one_line(&run(&["check", "examples/ties-first.toml", "--brief"]).text);
    assert!(
        text.contains("is over its strength at the design wind: pulled off the fence it starts to go"),
        "{text}"
    );
}

#[test]
fn what_is_not_known_of_the_cloth_is_not_checked_and_says_what_to_ask() {
    let unknown = first_run(&TIES.replace("50 lbf", "unknown"));
    assert_eq!(unknown["fastening"]["goes_first"], "not known");
    assert!(unknown["fastening"]["goes_gust_m_s"].is_null());
    // What it has to carry is known all the same.
    assert!(unknown["fastening"]["pull_n"].as_f64().unwrap() > 1000.0);
    let part = unknown["posts"][1]["parts"][4].clone();
    assert_eq!(part["part"], "ties and lacing");
    assert_eq!((part["flag"].clone(), part["ratio"].is_null()), ("not checked".into(), true));
    assert!(part["why"].as_str().unwrap().contains("loop strength"), "{part}");
    let asks = unknown["fastening"]["not_checked"].as_array().unwrap();
    assert!(
        asks.iter().any(|ask| ask["part"] == "grommet" && ask["ask"].as_str().unwrap().contains("tears out"))
    );
    // A grommet that its maker tested is no longer asked about, and the weaker of the two goes first.
    let both = first_run(&format!("{TIES}, grommet = \"20 lbf\""));
    assert_eq!(both["fastening"]["part"], "grommet");
    assert!(both["fastening"]["goes_gust_m_s"].as_f64().unwrap() < goes(TIES));
    // A rope that no table lists is not checked until its maker is asked.
    let rope = first_run(
        "kind = \"lacing\", rope = \"0.26 in nylon\", spacing = \"12 in\", rows = [\"top\", \"bottom\"]",
    );
    assert_eq!(
        (&rope["fastening"]["goes_first"], &rope["fastening"]["not_checked"][0]["part"]),
        (&"not known".into(), &"rope".into())
    );
    // The age of a tie nobody knows: half at worst, all of it at best.
    let aged = first_run(&TIES.replace("age = \"new\", ", ""));
    let (worst, best) = (
        aged["fastening"]["goes_gust_m_s"].as_f64().unwrap(),
        aged["fastening"]["goes_gust_best_m_s"].as_f64().unwrap(),
    );
    assert!((best / worst - 2.0_f64.sqrt()).abs() < 1e-9 && (best - goes(TIES)).abs() < 1e-9);
}

#[test]
fn cloth_held_at_its_sides_only_pulls_its_posts_together_and_goes_at_a_gust_of_its_own() {
    const SIDES: &str = "kind = \"ties\", strength = \"1500 lbf\", age = \"new\", spacing = \"12 in\", \
                         rows = [\"sides\"], panel = \"10 ft\", stiffness = \"5000 lb/ft\", slack = \"1 %\"";
    let run = first_run(SIDES);
    let held = &run["fastening"];
    assert!(held["in_plane_pull_n"].as_f64().unwrap() > held["pull_n"].as_f64().unwrap());
    // Above the least pressure of the code; at the gust found the pull is the strength of the tie: the survey's wind set to it, K_d apart.
    let gust = held["goes_gust_m_s"].as_f64().unwrap();
    let there = survey(SIDES).replace("115 mph", &format!("{} m/s", gust / 0.85_f64.sqrt()));
    let pull = json_of(&there).0["runs"][0]["fastening"]["pull_n"].as_f64().unwrap();
    assert!((pull / (1500.0 * 4.448_221_615_260_5) - 1.0).abs() < 1e-6, "{pull}");
    let without = first_run(&SIDES.replace(", stiffness = \"5000 lb/ft\", slack = \"1 %\"", ""));
    assert!(without["fastening"]["why"].as_str().unwrap().contains("stiffness"));
}

#[test]
fn each_mistake_in_what_holds_the_cloth_is_told_once() {
    for (from, to, says) in [
        ("\"top\", \"bottom\"", "\"top\", \"top\"", "the row \"top\" is named twice"),
        ("\"top\", \"bottom\"", "\"top\", \"botom\"", "perhaps \"bottom\""),
        ("12 in", "9 ft\", panel = \"8 ft", "do not fit the row"),
        ("age = \"new\"", "age = \"old\"", "none of new, aged, aged type 2, unknown"),
        ("age = \"new\"", "years = 2", "years does not go with ties"),
        ("kind = \"ties\"", "kind = \"rope\"", "none of ties, lacing"),
        ("strength = \"50 lbf\"", "strength = \"50 psf\"", "strength:"),
        ("strength = \"50 lbf\"", "slack = \"1 %\"", "has slack and no stiffness"),
        ("strength = \"50 lbf\"", "grommit = \"50 lbf\"", "perhaps grommet"),
        (
            "kind = \"ties\", strength = \"50 lbf\", age = \"new\"",
            "kind = \"lacing\", rope = \"thick\"",
            "then its fibre (polypropylene, nylon, manila)",
        ),
    ] {
        assert!(TIES.contains(from), "{from}");
        let out = run_on("-", &survey(&TIES.replacen(from, to, 1)));
        let told = in_one_line(&out.err);
        assert_eq!((out.code, out.text.as_str()), (2, ""), "{to}: {told}");
        assert!(told.contains(says), "{to}\ndoes not say \"{says}\":\n{told}");
        assert_eq!(out.err.matches("standard input").count(), 1, "{to}\n{told}");
    }
    let laced =
        survey(&TIES.replace("kind = \"ties\", strength = \"50 lbf\", age = \"new\"", "kind = \"lacing\""))
            .replace("top_rail = { diameter = \"1.660 in\" }\n", "");
    let out = run_on("-", &laced);
    assert!(in_one_line(&out.err).contains("there is no rail to lace it to"), "{}", out.err);
}

#[test]
fn cloth_tied_to_the_mesh_alone_and_pull_along_the_fence_are_told() {
    let said = |fastening: &str| in_one_line(&run_on("-", &survey(fastening)).text);
    let mesh = said(&format!("{TIES}, tied_to = \"chain link\""));
    assert!(mesh.contains("tied to the chain link alone") && mesh.contains("tie to it"), "{mesh}");
    // The pull on a tie every foot is the load on a foot of row.
    let pull = first_run(TIES)["fastening"]["pull_n"].as_f64().unwrap() / 4.448_221_615_260_5;
    assert!(mesh.contains(&format!("up to {pull:.0} lb/ft")), "{pull} {mesh}");
    assert!(!said(TIES).contains("chain link alone"));
    let sides = said(
        "kind = \"ties\", strength = \"1500 lbf\", spacing = \"12 in\", rows = [\"sides\"], panel = \"10 ft\", \
         stiffness = \"5000 lb/ft\", slack = \"1 %\"",
    );
    assert!(sides.contains("pulls the posts there towards each other with"), "{sides}");
}
