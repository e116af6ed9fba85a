//! Fences for the tests.

use fencegust::fence::{
    Bay, Condition, End, Fence, Post, PostKind, Rails, Role, Run, Screen, Section, Shape, Tube, Wall,
};
use fencegust::footing::Ground;
use fencegust::member::Format;
use fencegust::screen::ChainLink;
use fencegust::units::{Length, Moment, Pure, feet, inches, ksi, mph, pound_feet};
use fencegust::wind::{Code, KeyKind, Site, SiteValue, SiteValues};

/// ASCE 7-16 at sea level on flat ground; exposure 0 is B, 1 C, 2 D.
pub fn site(speed_mph: f64, exposure: usize) -> Site {
    site_by(Code::Asce7_16, speed_mph, exposure)
}

/// The same by any edition; keys that are given nothing are those of tables left out.
pub fn site_by(code: Code, speed_mph: f64, exposure: usize) -> Site {
    let values = code
        .leaves()
        .map(|leaf| match (leaf.table, leaf.key.kind) {
            (None, KeyKind::Choice(_)) => SiteValue::Choice(exposure),
            (None, KeyKind::Quantity(_, default)) => {
                SiteValue::Quantity(default.map_or(0.0, |default| default.si))
            }
            _ => SiteValue::Absent,
        })
        .collect();
    code.site(&SiteValues { wind_speed: Some(mph(speed_mph)), values })
}

/// A round tube of 30 ksi without rust.
pub fn round_tube(diameter: Length, wall: Wall) -> Tube {
    Tube { shape: Shape::Round { girth: None, diameter }, wall, yield_strength: ksi(30.0), rust: inches(0.0) }
}

/// A fence of one run with free ends, posts 2.875 x nominal 0.203 in of 30 ksi, and cloth over its whole height.
pub fn fence(bays_ft: &[f64], height_ft: f64, solidity: f64) -> Fence {
    let mut posts = vec![Length::default()];
    for width in bays_ft {
        posts.push(posts[posts.len() - 1] + feet(*width));
    }
    let last = posts.len() - 1;
    let posts = posts
        .into_iter()
        .enumerate()
        .map(|(at, place)| Post {
            at: place,
            role: if at == 0 || at == last { Role::End } else { Role::Line },
            kind: 0,
            footing: None,
            shared_with: None,
        })
        .collect();
    Fence {
        footings: Vec::new(),
        ground: Ground::default(),
        footing_method: None,
        kinds: vec![PostKind {
            name: "posts".into(),
            section: Section::Tube(round_tube(inches(2.875), Wall::Nominal(inches(0.203)))),
            format: Format::Lrfd,
        }],
        runs: vec![Run {
            name: "run".into(),
            height: feet(height_ft),
            base_above_ground: feet(0.0),
            chain_link: None,
            rails: Rails::default(),
            bays: bays_ft.iter().map(|width| Bay::of(feet(*width))).collect(),
            posts,
            screen: Some(Screen {
                name: "cloth".into(),
                solidity,
                solidity_as_return: None,
                condition: Condition::Dry,
                over: Vec::new(),
                bottom: feet(0.0),
                top: feet(height_ft),
                first_bay: 0,
                end_bay: bays_ft.len(),
                windows: None,
                face: None,
                fastening: None,
            }),
            start: End::Free,
            finish: End::Free,
            guys: Vec::new(),
            braces: Vec::new(),
        }],
    }
}

/// The court fabric that makes 0.95749 of closed mesh.
pub fn court_fabric() -> ChainLink {
    ChainLink { mesh: inches(1.75), wire: inches(0.148) }
}

pub fn lb_ft(moment: Moment) -> f64 {
    (moment / pound_feet(1.0)).pure()
}

/// What a run of the command printed.
pub struct Output {
    pub text: String,
    pub err: String,
    pub code: i32,
}

/// Runs the command from the root of the project.
pub fn run(arguments: &[&str]) -> Output {
    run_with(arguments, "")
}

/// Checks a survey given on standard input.
pub fn run_on(file: &str, survey: &str) -> Output {
    run_with(&["check", file], survey)
}

/// Runs the command with this on its standard input.
pub fn run_with(arguments: &[&str], input: &str) -> Output {
    let out = assert_cmd::Command::new(assert_cmd::cargo::cargo_bin!("fencegust"))
        .args(arguments)
        .write_stdin(input)
        .output()
        .unwrap();
    Output {
        text: String::from_utf8(out.stdout).unwrap(),
        err: String::from_utf8(out.stderr).unwrap(),
        code: out.status.code().unwrap(),
    }
}

/// The JSON of a survey, and the exit code.
pub fn json_of(survey: &str) -> (serde_json::Value, i32) {
    let out = run_with(&["check", "-", "--format", "json"], survey);
    assert!(out.err.is_empty(), "{}", out.err);
    (serde_json::from_str(&out.text).unwrap(), out.code)
}
