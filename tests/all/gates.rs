//! Gates: what a gate post takes with the gate shut, gates of two leaves, gates at the ends of a run.

use crate::command::vector;
use crate::support::{fence, json_of, lb_ft, run_with, site};
use fencegust::fence::{Fence, Role};
use fencegust::loads::{Dress, run_loads};
use fencegust::survey::Survey;
use fencegust::units::{Pure, feet, pounds};
use fencegust::wind::{Case, Event};

/// A run of bays as the survey writes them, with cloth over all of it and two kinds of posts besides the line posts.
fn court(bays: &str, ends: &str) -> String {
    vector("BAYS", "1.0", "\"none\"")
        .replace("\"BAYS\"", bays)
        .replace(
            "ends = \"free\"",
            &format!("{ends}\nline_post = \"line\"\nend_post = \"end\"\ngate_post = \"gate\""),
        )
        .replace(
            "[[run]]",
            "[post.end]\ndiameter = \"4 in\"\nnominal_wall = \"0.226 in\"\nyield = \"30 ksi\"\n\
             [post.gate]\ndiameter = \"6.625 in\"\nnominal_wall = \"0.280 in\"\nyield = \"30 ksi\"\n[[run]]",
        )
}

fn read(text: &str) -> Survey {
    Survey::read(text, "survey").unwrap_or_else(|mistakes| panic!("{mistakes}"))
}

/// Role and kind of each post.
fn posts(text: &str) -> Vec<(Role, String)> {
    let survey = read(text);
    let run = &survey.runs[0].run;
    run.posts.iter().map(|post| (post.role, survey.posts[post.kind].name.clone())).collect()
}

fn named(all: &[(Role, &str)]) -> Vec<(Role, String)> {
    all.iter().map(|(role, kind)| (*role, (*kind).to_owned())).collect()
}

#[test]
fn a_gate_post_takes_half_the_leaf_and_half_the_bay_beside_it() {
    let with = |gate: bool| -> Fence {
        let mut fence = fence(&[10.0, 4.0, 10.0, 10.0], 10.0, 1.0);
        fence.runs[0].bays[1].gate = gate;
        fence
    };
    let loads = |fence: &Fence| run_loads(fence, 0, Dress::AsHung, &site(115.0, 1), Event::Design).unwrap();
    let square = loads(&with(true)).cases.into_iter().find(|one| one.case == Case::Square).unwrap();
    // Case A at s/h 1, B/s 3.4: between 1.40 and 1.35 at 2 and 4, C_f 1.365; 24.428 849 × 0.85 × 1.365 = 28.343 572 psf
    // over 10 ft of height; 5 ft + 2 ft of it at the gate posts, with an arm of 5.5 ft.
    for post in [1, 2] {
        let shear = (square.shears[post] / pounds(1.0)).pure();
        assert!((shear - 1984.0500).abs() < 1e-3, "post {}: {shear}", post + 1);
        assert!((lb_ft(square.moments[post]) - 10_912.275).abs() < 1e-2);
    }
    // Cloth on a leaf loads as on a bay of that width.
    assert_eq!(loads(&with(true)), loads(&with(false)));
}

#[test]
fn a_double_gate_loads_its_posts_as_one_of_the_same_width_and_is_told_as_such() {
    let of = |gate: &str| {
        json_of(&court(&format!("\"3 x 10 ft\", \"{gate}\", \"3 x 10 ft\""), "ends = \"free\"")).0
    };
    let (one, two) = (of("gate 8 ft"), of("double gate 8 ft"));
    assert_eq!(one["runs"][0]["posts"], two["runs"][0]["posts"]);
    let bay = |answer: &serde_json::Value| {
        let bay = &answer["runs"][0]["bays"][3];
        (bay["gate"].as_bool().unwrap(), bay["leaves"].as_u64().unwrap())
    };
    assert_eq!((bay(&one), bay(&two)), ((true, 1), (true, 2)));
    assert_eq!(two["runs"][0]["bays"][0]["leaves"], 0);
    let text = run_with(&["check", "-"], &court("\"10 ft\", \"double gate 8 ft\"", "ends = \"free\"")).text;
    assert!(text.contains("8 ft, double gate"), "{text}");
}

#[test]
fn bays_are_read_with_gates_however_they_are_spaced() {
    let survey = read(&court(
        "\"10 ft\", \"Gate 4 ft\", \"2 x gate 1.2 m\", \"double  gate 8'\", \"2 x double gate 96 in\"",
        "ends = \"free\"",
    ));
    let bays: Vec<_> = survey.runs[0].run.bays.iter().map(|bay| (bay.width, bay.leaves())).collect();
    let double = (feet(8.0), 2);
    assert_eq!(bays.len(), 7);
    assert_eq!((bays[0], bays[1]), ((feet(10.0), 0), (feet(4.0), 1)));
    assert_eq!((bays[2].1, bays[3].1), (1, 1));
    for bay in &bays[4..] {
        assert!((bay.0 - double.0).value.abs() < 1e-12 && bay.1 == double.1);
    }
}

#[test]
fn posts_on_both_sides_of_a_gate_are_gate_posts_and_at_a_free_end_too() {
    let free = "ends = \"free\"";
    assert_eq!(
        posts(&court("\"10 ft\", \"gate 4 ft\", \"2 x 10 ft\"", free)),
        named(&[
            (Role::End, "end"),
            (Role::Gate, "gate"),
            (Role::Gate, "gate"),
            (Role::Line, "line"),
            (Role::End, "end")
        ])
    );
    for gate in ["gate 4 ft", "double gate 8 ft"] {
        assert_eq!(
            posts(&court(&format!("\"{gate}\", \"2 x 10 ft\", \"{gate}\""), free)),
            named(&[
                (Role::Gate, "gate"),
                (Role::Gate, "gate"),
                (Role::Line, "line"),
                (Role::Gate, "gate"),
                (Role::Gate, "gate"),
            ])
        );
    }
    // Without a kind of its own a gate post is as the end posts.
    let plain = court("\"gate 4 ft\", \"10 ft\"", free).replace("gate_post = \"gate\"\n", "");
    assert_eq!(posts(&plain), named(&[(Role::Gate, "end"), (Role::Gate, "end"), (Role::End, "end")]));
}

#[test]
fn a_corner_post_beside_a_gate_is_asked_about_where_its_two_kinds_differ() {
    let gate_first =
        court("\"gate 4 ft\", \"2 x 10 ft\"", "start = { return = \"60 ft\" }\nfinish = \"free\"");
    let told = Survey::read(&gate_first, "survey").unwrap_err();
    assert_eq!(told.mistakes.len(), 1, "{told}");
    let told = told.to_string();
    for said in [
        "line 22",
        "post 1 of run \"run\"",
        "\"end\" as a corner post",
        "\"gate\" as a gate post",
        "numbers = [1]",
    ] {
        assert!(told.contains(said), "does not say {said}:\n{told}");
    }
    for kind in ["end", "gate"] {
        let named_so = gate_first.replace(
            "gate_post",
            &format!("other_posts = [{{ numbers = [1], post = \"{kind}\" }}]\ngate_post"),
        );
        assert_eq!(posts(&named_so)[0], (Role::Corner, kind.to_owned()));
    }
    // One kind for both is no question.
    let same = gate_first.replace("gate_post = \"gate\"", "gate_post = \"end\"");
    assert_eq!(posts(&same)[0], (Role::Corner, "end".to_owned()));
}

#[test]
fn an_open_leaf_and_cloth_on_a_gate_are_told() {
    let remarks = |text: &str| -> Vec<(String, String)> {
        let answer = json_of(text).0;
        let all = answer["remarks"].as_array().unwrap();
        let of = |one: &serde_json::Value, key: &str| one[key].as_str().unwrap().to_owned();
        all.iter().map(|one| (of(one, "id"), of(one, "text"))).collect()
    };
    let gate = court("\"10 ft\", \"gate 4 ft\", \"10 ft\"", "ends = \"free\"");
    let told = remarks(&gate);
    let of = |told: &[(String, String)], id: &str| {
        told.iter().find(|(name, _)| name == id).map(|(_, text)| text.clone())
    };
    let open = of(&told, "open-gate").unwrap();
    assert!(
        open.contains("with the gate shut") && open.contains("An open leaf") && open.contains("not checked")
    );
    assert!(of(&told, "cloth-on-gate").unwrap().contains("hinges and latch: not checked"));
    // Cloth that ends before the gate does not hang on it.
    let before = remarks(&gate.replace("bottom = \"0 ft\"", "bays = \"1\", bottom = \"0 ft\""));
    assert!(of(&before, "open-gate").is_some() && of(&before, "cloth-on-gate").is_none());
    let none = remarks(&court("\"3 x 10 ft\"", "ends = \"free\""));
    assert!(of(&none, "open-gate").is_none());
}
