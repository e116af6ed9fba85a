//! Footings through the command: depths by method, load level, limit gust, what is printed, what is refused.

use crate::support::{json_of, run, run_on, run_with};
use serde_json::Value;

const ROUND: &str = "shape = \"round\"\nwidth = \"1 ft\"\ndepth = \"6 ft\"";
const BEARING: &str = "lateral_bearing = \"150 psf/ft\"";
const EXAMPLE: &str = "examples/footings.toml";

/// Six bays of ten feet under solid cloth from the ground to their top, 100 mph, the posts in one kind of footing.
fn survey(soil: &str, footing: &str) -> String {
    format!(
        "survey = 1\nunits = \"us\"\n[site]\nwind_code = \"asce7-16\"\nwind_speed = \"100 mph\"\nexposure = \"C\"\n\
         soil = {{ {soil} }}\n[post.line]\ndiameter = \"4 in\"\nnominal_wall = \"0.226 in\"\nyield = \"50 ksi\"\n\
         [footing.pier]\n{footing}\n[[run]]\nname = \"north\"\nheight = \"10 ft\"\nchain_link = \"none\"\n\
         bays = [\"6 x 10 ft\"]\nends = \"free\"\nline_post = \"line\"\nfooting = \"pier\"\n\
         screen = {{ solidity = 1.0, bottom = \"0 ft\", height = \"10 ft\" }}\n"
    )
}

fn with_method(survey: &str, method: &str) -> String {
    survey.replace("exposure = \"C\"", &format!("exposure = \"C\"\nfooting_method = \"{method}\""))
}

fn part<'a>(post: &'a Value, name: &str) -> &'a Value {
    post["parts"].as_array().unwrap().iter().find(|part| part["part"] == name).unwrap()
}

/// The third post of the first run.
fn inner(survey: &str) -> Value {
    json_of(survey).0["runs"][0]["posts"][2].clone()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

fn footing_ratio(survey: &str) -> f64 {
    number(&part(&inner(survey), "footing")["ratio"])
}

#[track_caller]
fn near(found: f64, wanted: f64, share: f64) {
    assert!((found / wanted - 1.0).abs() < share, "{found} is not {wanted}");
}

fn in_one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

// --- the depths of one load by method

/// What 600 lb at 5 ft need by one method in one soil, in feet; those of the IBC by its Eqs. 18-1 and 18-3 worked by
/// hand, those of Broms by UFC 3-220-20 with load × 2.0 and soil × 0.75.
const DEPTHS: [(&str, &str, &str, f64); 5] = [
    ("ibc-1807.3.2.1", BEARING, "", 7.05),
    ("ibc-1807.3.2.1", BEARING, "isolated = \"yes\"", 5.33),
    ("ibc-1807.3.2.2", BEARING, "", 4.40),
    ("broms-ufc-3-220-20", "undrained_strength = \"1000 psf\"", "", 3.84),
    ("broms-ufc-3-220-20", "friction = \"30 °\", unit_weight = \"110 psf/ft\"", "", 4.47),
];

#[test]
fn six_hundred_pounds_at_five_feet_need_the_same_depth_through_a_survey() {
    // The resultant on cloth from the ground stands at 0.55 of its height: 5 ft of 9.0909 ft.
    let high = |text: String| {
        text.replace("\"10 ft\"\nchain", "\"9.090909090909091 ft\"\nchain")
            .replace("height = \"10 ft\" }", "height = \"9.090909090909091 ft\" }")
    };
    for (method, soil, more, depth) in DEPTHS {
        let text = with_method(&high(survey(soil, &format!("{ROUND}\n{more}"))), method);
        let part = |text: &str| part(&json_of(text).0["runs"][0]["posts"][0], "footing").clone();
        let at_100_mph = part(&text);
        near(number(&at_100_mph["load_height_m"]), 5.0 * 0.3048, 1e-9);
        // Load goes with the square of the wind.
        let pounds = number(&at_100_mph["demand"]) / 4.448_221_615_260_5;
        let found = part(&text.replace("100 mph", &format!("{} mph", 100.0 * (600.0 / pounds).sqrt())));
        near(number(&found["demand"]), 600.0 * 4.448_221_615_260_5, 1e-9);
        let needed = number(&found["depth_needed_m"]) / 0.3048;
        assert!((needed - depth).abs() <= 0.005, "{method} {more}: {needed} is not {depth}");
        assert_eq!((&found["method"], &found["load_level"]), (&method.into(), &"W_s".into()));
    }
}

#[test]
fn the_same_depths_come_from_the_rules_by_name() {
    // The factors of UFC 3-220-20 stand in the inputs: 1200 lb, 750 psf, and 0.75 tan 30° = tan 23.4132°.
    for (rule, soil, force, depth) in [
        ("footing/ibc-nonconstrained", &["bearing=150 psf/ft"][..], "600 lbf", 7.05),
        ("footing/ibc-nonconstrained", &["bearing=300 psf/ft"][..], "600 lbf", 5.33),
        ("footing/ibc-constrained", &["bearing=150 psf/ft"][..], "600 lbf", 4.40),
        ("footing/broms-clay", &["strength=750 psf"][..], "1200 lbf", 3.84),
        ("footing/broms-sand", &["angle=23.4132 °", "weight=110 psf/ft"][..], "1200 lbf", 4.47),
    ] {
        let force = format!("force={force}");
        let arguments = [&["rule", rule, &force, "height=5 ft", "width=1 ft"], soil].concat();
        let text = run(&arguments).text;
        let (worked, _) = text.split_once("Sources").unwrap();
        let feet = |line: &str| line.trim().strip_prefix("= ")?.strip_suffix(" ft")?.parse::<f64>().ok();
        let found = worked.lines().filter_map(feet).next_back().unwrap();
        assert!((found - depth).abs() <= 0.0055, "{rule}: {found} is not {depth}");
    }
}

// --- load level, limit gust

#[test]
fn a_footing_by_the_ibc_is_held_against_six_tenths_of_the_wind_at_strength_level() {
    for speed in ["90 mph", "150 mph"] {
        let (json, _) = json_of(&survey(BEARING, ROUND).replace("100 mph", speed));
        for post in json["runs"][0]["posts"].as_array().unwrap() {
            near(number(&part(post, "footing")["demand"]) / number(&post["base_shear_n"]), 0.6, 1e-12);
        }
    }
}

#[test]
fn the_limit_gust_of_a_footing_does_not_move_with_the_design_wind() {
    let at = |mph: f64| inner(&survey(BEARING, ROUND).replace("100 mph", &format!("{mph} mph")));
    let (calm, windy) = (at(90.0), at(150.0));
    for (post, mph) in [(&calm, 90.0), (&windy, 150.0)] {
        assert_eq!(post["limited_by"], "footing");
        // (V_lim ÷ V)² × ratio = K_d, 0.85 for walls (ASCE 7-16 Table 26.6-1).
        let share = number(&post["limit_gust_m_s"]) / (mph * 0.44704);
        near(share * share * number(&part(post, "footing")["ratio"]), 0.85, 1e-9);
    }
    near(number(&calm["limit_gust_m_s"]), number(&windy["limit_gust_m_s"]), 1e-12);
    // Bare there is no wind on a fence without mesh but that on its posts: it goes much higher.
    assert!(number(&calm["bare_limit_gust_m_s"]) > 2.0 * number(&calm["limit_gust_m_s"]));
}

#[test]
fn at_most_falls_away_where_every_part_of_the_post_was_checked() {
    let checked = survey("class = \"sand\", density = \"medium\"", ROUND);
    let footing_open = checked.replace("depth = \"6 ft\"", "depth = \"unknown\"");
    assert_ne!(inner(&checked)["limit_gust_is"], "at most");
    assert_eq!(inner(&footing_open)["limit_gust_is"], "at most");
    assert!(!run_on("-", &checked).text.contains("limit gust, at most"));
    // Without a design wind it stands all the same, and is that of the footing.
    let calm = inner(&checked.replace("100 mph", "unknown"));
    assert_eq!(calm["limit_gust_m_s"], inner(&checked)["limit_gust_m_s"]);
    assert_eq!(
        (&calm["limited_by"], &part(&calm, "footing")["flag"]),
        (&"footing".into(), &"not checked".into())
    );
}

// --- units, order

#[test]
fn feet_and_metres_give_the_same() {
    let us = survey(BEARING, ROUND);
    let mut si = us.replace("units = \"us\"", "units = \"si\"");
    for (feet, metres) in [
        ("100 mph", "44.704 m/s"),
        ("150 psf/ft", "23.56311957694349 kPa/m"),
        ("4 in", "101.6 mm"),
        ("0.226 in", "5.7404 mm"),
        ("50 ksi", "344.7378646584159 MPa"),
        ("1 ft", "304.8 mm"),
        ("6 ft", "1.8288 m"),
        ("6 x 10 ft", "6 x 3.048 m"),
        ("10 ft", "3.048 m"),
    ] {
        assert!(si.contains(feet), "{feet}");
        si = si.replace(&format!("\"{feet}\""), &format!("\"{metres}\""));
    }
    let (us, si) = (json_of(&us).0, json_of(&si).0);
    for (one, other) in
        us["runs"][0]["posts"].as_array().unwrap().iter().zip(si["runs"][0]["posts"].as_array().unwrap())
    {
        near(number(&one["limit_gust_m_s"]), number(&other["limit_gust_m_s"]), 1e-9);
        let (one, other) = (part(one, "footing"), part(other, "footing"));
        for key in
            ["demand", "capacity", "ratio", "load_height_m", "depth_m", "width_m", "dug_by_standard_depth_m"]
        {
            near(number(&one[key]), number(&other[key]), 1e-9);
        }
        // Beside the end it is deeper than the method goes, in either system.
        match (one["depth_needed_m"].as_f64(), other["depth_needed_m"].as_f64()) {
            (Some(one), Some(other)) => near(one, other, 1e-9),
            (one, other) => assert_eq!(one, other),
        }
    }
}

#[test]
fn deeper_wider_or_in_better_soil_is_never_worse() {
    let of = |soil: &str, width: &str, depth: &str| {
        footing_ratio(&survey(soil, &format!("shape = \"round\"\nwidth = \"{width}\"\ndepth = \"{depth}\"")))
    };
    let falls = |ratios: Vec<f64>| assert!(ratios.windows(2).all(|pair| pair[1] < pair[0]), "{ratios:?}");
    falls(["2 ft", "3 ft", "4 ft", "6 ft", "9 ft", "12 ft"].map(|depth| of(BEARING, "1 ft", depth)).to_vec());
    falls(["6 in", "10 in", "12 in", "18 in", "30 in"].map(|width| of(BEARING, width, "4 ft")).to_vec());
    let classes = ["clay", "sand", "gravel", "sedimentary rock", "crystalline bedrock"];
    falls(classes.map(|class| of(&format!("class = \"{class}\""), "1 ft", "4 ft")).to_vec());
    let held = |text: &str| footing_ratio(&survey(BEARING, &format!("{ROUND}\n{text}")));
    falls(["constrained_at_ground = \"no\"", "isolated = \"yes\""].map(held).to_vec());
    falls(["constrained_at_ground = \"no\"", "constrained_at_ground = \"yes\""].map(held).to_vec());
}

#[test]
fn a_square_pier_is_as_wide_as_its_diagonal() {
    let square = survey(BEARING, "shape = \"square\"\nwidth = \"1 ft\"\ndepth = \"6 ft\"");
    let round = survey(BEARING, "shape = \"round\"\nwidth = \"16.97056274847714 in\"\ndepth = \"6 ft\"");
    near(footing_ratio(&square), footing_ratio(&round), 1e-9);
}

#[test]
fn a_corner_post_takes_three_quarters_of_both_faces_at_once() {
    let corner = |shape: &str| {
        let footing = format!("shape = \"{shape}\"\nwidth = \"1 ft\"\ndepth = \"6 ft\"");
        let one = survey(BEARING, &footing);
        let (head, north) = one.split_once("[[run]]").unwrap();
        let north = north.replace(
            "ends = \"free\"",
            "court = \"a\"\nstart = \"free\"\nfinish = \"corner\"\nfaces = \"north\"",
        );
        let east = north
            .replace("\"north\"", "\"east\"")
            .replace("start = \"free\"\nfinish = \"corner\"", "start = \"corner\"\nfinish = \"free\"");
        let json = json_of(&format!("{head}[[run]]{north}[[run]]{east}")).0;
        let posts = json["runs"][0]["posts"].as_array().unwrap();
        let post = posts.last().unwrap().clone();
        assert_eq!(post["kind"], "corner");
        number(&part(&post, "footing")["demand"]) / number(&post["base_shear_n"])
    };
    // Both faces alike: 0.75 √2 of one for a round pier, 0.75 × 2 for a square one.
    near(corner("round"), 0.6 * 0.75 * 2.0_f64.sqrt(), 1e-9);
    near(corner("square"), 0.6 * 0.75 * 2.0, 1e-9);
}

#[test]
fn a_driven_post_bends_most_below_the_ground() {
    let driven = "shape = \"driven\"\ndepth = \"6 ft\"";
    let soil = format!("{BEARING}, friction = \"30 °\", unit_weight = \"110 psf/ft\"");
    let post = inner(&survey(&soil, driven));
    // By hand: the ground gives 3 K_p γ D z with K_p = 3; where it has taken all the shear, f = √(2 V / (3 K_p γ D)), the
    // moment is M + 2/3 V f.
    let (shear, moment) = (number(&post["base_shear_n"]), number(&post["base_moment_n_m"]));
    let soil_per_depth = 3.0 * 3.0 * (110.0 * 47.880_258_980_335_84 / 0.3048) * 0.1016;
    let where_no_shear = (2.0 * shear / soil_per_depth).sqrt();
    near(number(&part(&post, "post bending")["demand"]), moment + shear * where_no_shear * 2.0 / 3.0, 1e-9);
    assert!((number(&part(&post, "footing")["width_m"]) - 0.1016).abs() < 1e-12);

    let unknown = inner(&survey(BEARING, driven).replace("50 ksi", "90 ksi"));
    let bending = part(&unknown, "post bending");
    assert_eq!((&bending["flag"], &bending["ratio"]), (&"not checked".into(), &Value::Null));
    assert!(bending["why"].as_str().unwrap().contains("below the ground"), "{bending}");
    assert_eq!(unknown["limit_gust_is"], "at most");
    let text = in_one_line(&run_on("-", &survey(BEARING, driven).replace("50 ksi", "90 ksi")).text);
    assert!(text.contains("NOT CHECKED: bending of driven posts"), "{text}");
    assert!(
        text.contains("◇ bending of post 1 not checked: a driven post bends most below the ground"),
        "{text}"
    );
}

// --- what is printed

#[test]
fn the_text_tells_posts_and_footings_apart() {
    let soil = "class = \"sand\", density = \"medium\"";
    let told = |footing: &str, strength: &str| {
        in_one_line(&run_on("-", &survey(soil, footing).replace("50 ksi", strength)).text)
    };
    let both = told(ROUND, "30 ksi");
    assert!(both.contains("posts and footings are over their limit, at the worst"), "{both}");
    assert!(both.contains("times what the posts carry and"), "{both}");
    assert!(both.contains("the first footing reaches its limit in a gust of"), "{both}");
    let foot = told(ROUND, "120 ksi");
    assert!(foot.contains("at the design wind footings are over their limit, at the worst"), "{foot}");
    assert!(foot.contains("; the posts themselves come to 0."), "{foot}");
    assert!(foot.contains("posts themselves ● within: ratio 0."), "{foot}");
    assert!(foot.contains("a stronger post alone does not help"), "{foot}");
    let stout = "shape = \"round\"\nwidth = \"6 ft\"\ndepth = \"11 ft\"";
    let post = told(stout, "30 ksi");
    assert!(post.contains("at the design wind posts are over their limit, at the worst"), "{post}");
    assert!(post.contains("; the footings come to 0."), "{post}");
    assert!(post.contains("the first post reaches its limit in a gust of"), "{post}");
    assert!(!post.contains("a stronger post alone does not help"), "{post}");
    let neither = told(stout, "120 ksi");
    assert!(neither.contains("the posts and footings stay within their limit with the cloth"), "{neither}");
    // Nothing of this where no footing is known.
    let open = told(&ROUND.replace("6 ft", "unknown"), "30 ksi");
    assert!(open.contains("at the design wind posts are over their limit, at the worst"), "{open}");
    assert!(!open.contains("posts themselves"), "{open}");
}

#[test]
fn footings_leave_the_list_of_what_was_not_checked_only_once_they_are() {
    let soil = "class = \"sand\", density = \"medium\"";
    let checked = survey(soil, ROUND);
    let open = checked.replace("depth = \"6 ft\"", "depth = \"unknown\"");
    let first = |text: &str| {
        let text = run_on("-", text).text;
        text.split("\n\n").find(|block| block.contains("NOT CHECKED")).map(in_one_line).unwrap()
    };
    let list = |text: &str| first(text).split('.').next().unwrap().to_owned();
    assert_eq!(list(&checked), "◇ NOT CHECKED: rails, ties and lacing");
    assert_eq!(list(&open), "◇ NOT CHECKED: footings, rails, sway in gusts, ties and lacing");
    assert!(
        first(&checked)
            .contains("FOOTINGS: checked, by IBC 1807.3.2.1, free at the ground (0.6 of the wind).")
    );
    assert!(!first(&open).contains("FOOTINGS:"));
    let sheet = |text: &str| run_with(&["sheet", "-", "--for", "client"], text).text;
    assert!(sheet(&open).contains("Footings, rails, sway in gusts, ties and lacing."));
    let sheet = sheet(&checked);
    assert!(sheet.contains("Rails, ties and lacing."), "{sheet}");
    assert!(!sheet.contains("Footings, rails") && sheet.contains("A stronger post alone does not help."));
    assert!(
        in_one_line(&run_on("-", &checked).text)
            .contains("strength of posts by AISC 360-16, of footings by IBC")
    );
}

#[test]
fn an_unknown_depth_is_told_the_depth_it_needs_and_the_one_an_installer_digs() {
    // ASTM F567: 24 in, and 3 in more for each foot over 4 ft: 42 in at 10 ft.
    for (soil, depth_known) in [(BEARING, true), ("note = \"nobody dug\"", false)] {
        let text = survey(soil, &ROUND.replace("6 ft", "unknown"));
        let post = inner(&text);
        let found = part(&post, "footing");
        assert_eq!(
            (&found["flag"], &found["capacity"], &found["ratio"]),
            (&"not checked".into(), &Value::Null, &Value::Null)
        );
        assert_eq!(found["depth_needed_m"].is_number(), depth_known);
        near(number(&found["dug_by_standard_depth_m"]), 42.0 * 0.0254, 1e-12);
        let brief = in_one_line(&run_with(&["check", "-", "--brief"], &text).text);
        assert!(
            brief.contains("An installer digs 42 in deep, 16 in wide (ASTM F567, which knows no wind)"),
            "{brief}"
        );
        assert_eq!(brief.contains("The design wind needs"), depth_known);
        let si = text.replace("units = \"us\"", "units = \"si\"");
        let brief = in_one_line(&run_with(&["check", "-", "--brief"], &si).text);
        assert!(brief.contains("An installer digs 1.07 m deep, 0.41 m wide"), "{brief}");
    }
    // A depth that is known to lie between two is worked at both ends.
    let between = inner(&survey(BEARING, &ROUND.replace("6 ft", "5 ft .. 7 ft")));
    let found = part(&between, "footing");
    near(number(&found["ratio"]), footing_ratio(&survey(BEARING, &ROUND.replace("6 ft", "5 ft"))), 1e-12);
    near(
        number(&found["ratio_best"]),
        footing_ratio(&survey(BEARING, &ROUND.replace("6 ft", "7 ft"))),
        1e-12,
    );
}

// --- what is refused

#[test]
fn a_depth_past_twelve_feet_is_no_check_by_the_ibc_and_says_so() {
    let deep = inner(&survey(BEARING, &ROUND.replace("6 ft", "13 ft")));
    let found = part(&deep, "footing");
    assert_eq!((&found["flag"], &found["ratio"]), (&"not checked".into(), &Value::Null));
    let why = found["why"].as_str().unwrap();
    assert!(
        why.contains("13 ft (3.962 m) is above 12 ft (3.658 m)") && why.contains("IBC 1807.3.2.1"),
        "{why}"
    );
    near(number(&found["depth_m"]), 13.0 * 0.3048, 1e-12);
    // A depth needed that is past it has no figure.
    let weak = survey("lateral_bearing = \"20 psf/ft\"", ROUND);
    let found = part(&inner(&weak), "footing").clone();
    assert!(found["depth_needed_m"].is_null());
    assert!(found["depth_needed_why"].as_str().unwrap().contains("above 12 ft"), "{found}");
    assert!(in_one_line(&run_on("-", &weak).text).contains("the design wind needs more than 144 in"));
}

#[test]
fn ground_without_a_presumptive_value_is_never_given_one() {
    for class in ["mud", "organic", "fill", "sand or mud"] {
        let post = inner(&survey(&format!("class = \"{class}\""), ROUND));
        let found = part(&post, "footing");
        assert_eq!((&found["flag"], &found["depth_needed_m"]), (&"not checked".into(), &Value::Null));
        assert!(found["why"].as_str().unwrap().contains("ask a geotechnical engineer"), "{class}: {found}");
    }
}

#[test]
fn a_method_is_refused_with_what_it_needs_of_the_soil() {
    for (method, needs) in [
        ("broms-one-factor", "undrained strength of clay, or the angle of friction"),
        ("nzbc-b1-vm4", "undrained strength"),
        ("pd-6547", "quality of the ground"),
    ] {
        let found = part(&inner(&with_method(&survey(BEARING, ROUND), method)), "footing").clone();
        assert_eq!((&found["flag"], &found["method"]), (&"not checked".into(), &method.into()));
        assert!(found["why"].as_str().unwrap().contains(needs), "{found}");
    }
    // One that belongs with another wind code is worked only when asked for, and says so.
    let asked = with_method(&survey("quality = \"good\"", ROUND), "pd-6547");
    let json = json_of(&asked).0;
    let remarks = json["remarks"].as_array().unwrap();
    let told = remarks.iter().any(|remark| remark["id"] == "footing-method-of-another-code");
    assert!(told && part(&json["runs"][0]["posts"][2], "footing")["ratio"].is_number(), "{remarks:?}");
}

#[test]
fn slips_of_soil_and_footing_are_told_with_their_line() {
    let good = survey(BEARING, ROUND);
    for (from, to, says) in [
        (BEARING, "class = \"sandd\"", "perhaps \"sand\""),
        (BEARING, "bearing = \"150 psf/ft\"", "soil has no key bearing"),
        (BEARING, "lateral_bearing = \"0 psf/ft\"", "must be above 0"),
        (BEARING, "lateral_bearing = \"150 psf\"", "a pressure per depth belongs here"),
        ("depth = \"6 ft\"", "depth = \"7 ft .. 6 ft\"", "the range of depth runs downwards"),
        ("depth = \"6 ft\"", "depth = \"6\"", "has no unit"),
        ("depth = \"6 ft\"", "", "has no depth"),
        ("width = \"1 ft\"", "width = \"0 in\"", "width is 0 in: it must be above 0"),
        ("\"round\"", "\"oval\"", "none of round, square, driven"),
        ("\"round\"", "\"driven\"", "the post itself is its width"),
        ("footing = \"pier\"", "footing = \"peer\"", "perhaps \"pier\""),
        (
            "exposure = \"C\"",
            "exposure = \"C\"\nfooting_method = \"brom-one-factor\"",
            "perhaps \"broms-one-factor\"",
        ),
    ] {
        assert!(good.contains(from));
        let out = run_on("-", &good.replace(from, to));
        assert_eq!((out.code, out.text.as_str()), (2, ""), "{to}");
        assert!(out.err.contains(says) && out.err.contains("line "), "{to}: {}", out.err);
    }
}

// --- methods side by side

#[test]
fn methods_stand_side_by_side_and_never_mixed() {
    let soil = format!("{BEARING}, undrained_strength = \"1000 psf\", quality = \"average\"");
    let text = survey(&soil, ROUND);
    let out = run_with(&["compare", "-", "--footings", "--format", "json"], &text);
    assert_eq!((out.code, out.err.as_str()), (0, ""));
    let json: Value = serde_json::from_str(&out.text).unwrap();
    let posts = json["posts"].as_array().unwrap();
    assert_eq!(posts.len(), 1);
    let methods = posts[0]["methods"].as_array().unwrap();
    assert_eq!(methods.len(), 9);
    for method in methods {
        assert!(
            method["ratio"].is_number() != method["why"].is_string() || method["depth_needed_m"].is_null(),
            "{method}"
        );
    }
    // Each is what a check by that method finds.
    let number_of = posts[0]["number"].as_u64().unwrap() as usize - 1;
    for method in methods.iter().filter(|method| method["ratio"].is_number()) {
        let key = method["method"].as_str().unwrap();
        let checked = json_of(&with_method(&text, key)).0;
        let found = part(&checked["runs"][0]["posts"][number_of], "footing");
        assert_eq!(
            (&found["ratio"], &found["depth_needed_m"]),
            (&method["ratio"], &method["depth_needed_m"]),
            "{key}"
        );
    }
    let told = in_one_line(&run_with(&["compare", "-", "--footings"], &text).text);
    assert!(told.contains("NEVER MIX: The depths differ threefold from method to method"), "{told}");
    let table = run_with(&["compare", "-", "--footings", "--format", "csv"], &text).text;
    assert_eq!(table.lines().count(), 1 + methods.len());
    assert!(table.starts_with("runs,number,method,"));
    let two = run(&["compare", EXAMPLE, EXAMPLE, "--footings"]);
    assert!(two.code == 2 && two.err.contains("--footings goes with one survey"), "{}", two.err);
}

// --- the example

#[test]
fn the_example_says_of_each_side_what_its_posts_stand_in() {
    let out = run(&["check", EXAMPLE, "--brief"]);
    assert_eq!((out.code, out.err.as_str()), (1, ""));
    for line in out.text.lines() {
        assert!(line.chars().count() <= 72, "{line}");
    }
    let text = in_one_line(&out.text);
    for said in [
        "DO NOT HANG the cloth as surveyed on north end and south end: at the design wind posts and footings are over",
        "it goes 36 in deep, the design wind needs",
        "bending of post 2 not checked: a driven post bends most below the ground",
        "An installer digs 42 in deep, 11.5 in wide (ASTM F567, which knows no wind)",
        "how deep footing \"line\" goes",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    let compared = in_one_line(&run(&["compare", EXAMPLE, "--footings"]).text);
    assert!(compared.contains("ASAE EP486, free at the ground"), "{compared}");
    // The steps to it stand in the workings, and on the engineer's sheet.
    let workings = run(&["check", EXAMPLE, "--workings", "north end/2"]).text;
    assert!(workings.contains("The footing by IBC 1807.3.2.1, free at the ground"), "{workings}");
    let sheet = run(&["sheet", EXAMPLE, "--for", "engineer"]).text;
    assert!(sheet.contains("Footings at the design event") && sheet.contains("ibc-1807.3.2.1"));
}
