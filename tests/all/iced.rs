//! Iced or wet-frozen cloth counts as solid, whatever it is when dry.

use crate::command::vector;
use crate::support::{json_of, run_with};
use serde_json::Value;

const COURT: &str = r#"{ mesh = "1-3/4 in", wire = "9 gauge" }"#;

fn hung(solidity: &str, condition: &str) -> String {
    let condition =
        if condition.is_empty() { String::new() } else { format!("condition = \"{condition}\", ") };
    vector("12 x 10 ft", solidity, COURT)
        .replace("bottom = \"0 ft\"", &format!("{condition}bottom = \"0 ft\""))
}

fn runs(survey: &str) -> Value {
    json_of(survey).0["runs"].clone()
}

fn remarks(survey: &str) -> Vec<String> {
    let answer = json_of(survey).0;
    let all = answer["remarks"].as_array().unwrap();
    all.iter()
        .filter(|one| one["id"] == "iced-cloth")
        .map(|one| one["text"].as_str().unwrap().to_owned())
        .collect()
}

#[test]
fn iced_cloth_of_any_solidity_loads_as_solid_cloth_does() {
    let solid = runs(&hung("1.0", ""));
    for solidity in ["0.95", "0.3", "0.05"] {
        let iced = runs(&hung(solidity, "iced"));
        assert_eq!(iced[0]["posts"], solid[0]["posts"], "{solidity}");
        assert_eq!((&iced[0]["solidity"], &iced[0]["condition"]), (&1.0.into(), &"iced".into()));
    }
    assert_ne!(runs(&hung("0.95", "dry"))[0]["posts"], solid[0]["posts"]);
}

#[test]
fn cloth_is_dry_unless_it_is_said_and_the_survey_as_read_tells_so() {
    let (dry, said) = (hung("0.95", "dry"), hung("0.95", ""));
    assert_eq!(runs(&dry), runs(&said));
    let as_read = run_with(&["check", "--as-read", "-"], &said).text;
    let line = as_read.lines().find(|line| line.starts_with("run.run.screen.condition")).unwrap();
    assert!(line.contains("dry") && line.ends_with("default"), "{line}");
    assert!(remarks(&said).is_empty());
}

#[test]
fn an_unknown_condition_is_worked_dry_and_iced() {
    let (unknown, dry, iced) =
        (runs(&hung("0.80", "unknown")), runs(&hung("0.80", "dry")), runs(&hung("0.80", "iced")));
    let gust = |runs: &Value, key: &str| runs[0][key].as_f64().unwrap();
    assert_eq!(gust(&unknown, "limit_gust_m_s"), gust(&iced, "limit_gust_m_s"));
    assert_eq!(gust(&unknown, "limit_gust_best_m_s"), gust(&dry, "limit_gust_m_s"));
    let (answer, _) = json_of(&hung("0.80", "unknown"));
    assert_eq!(answer["measure_next"][0]["key"], "run.run.condition");
    let told = remarks(&hung("0.80", "unknown")).remove(0);
    assert!(told.contains("the cloth may be iced") && told.contains("not checked"), "{told}");
    let text = run_with(&["check", "-", "--brief"], &hung("0.80", "unknown")).text;
    assert!(text.contains("dry or iced"), "{text}");
}

#[test]
fn the_remark_says_that_ice_itself_is_not_checked_and_the_workings_say_whose_judgement_it_is() {
    let told = remarks(&hung("0.80", "iced")).remove(0);
    assert!(told.contains("counts as solid (1.00, ours)"), "{told}");
    assert!(told.contains("Ice with wind, its weight, and ice on the steel mesh: not checked"), "{told}");
    let workings = run_with(&["check", "-", "--workings", "run/2"], &hung("0.80", "iced")).text;
    assert!(workings.contains("ours: iced or wet-frozen cloth"), "{workings}");
}

#[test]
fn open_mesh_in_its_place_would_be_iced_as_well_and_does_not_help() {
    let (answer, _) = json_of(&hung("0.95", "iced"));
    let levers = answer["runs"][0]["levers"].as_array().unwrap();
    let open = levers.iter().find(|lever| lever["id"] == "open-mesh").unwrap();
    assert_eq!(open["largest_moment_times"], 1.0);
    let both =
        run_with(&["compare", "-", "--cloth", "open mesh", "--cloth", "closed mesh"], &hung("0.95", "iced"));
    assert!(both.text.contains("the same in all of them"), "{}", both.text);
}

#[test]
fn iced_cloth_is_a_return_and_cloth_that_may_be_iced_is_none_at_the_worst() {
    let court = |condition: &str| {
        vector("12 x 10 ft", "0.95", "\"none\"")
            .replace("ends = \"free\"", "faces = \"north\"\nstart = \"corner\"\nfinish = \"free\"")
            + &format!(
                "[[run]]\nname = \"west\"\nfaces = \"west\"\nheight = \"10 ft\"\nchain_link = \"none\"\nbays = [\"6 x 10 ft\"]\n\
                 start = \"free\"\nfinish = \"corner\"\n\
                 screen = {{ solidity = 0.5, condition = \"{condition}\", bottom = \"0 ft\", height = \"10 ft\" }}\n"
            )
    };
    let returned = |condition: &str| runs(&court(condition))[0]["return_at_start_m"].as_f64().unwrap();
    assert!((returned("iced") - 60.0 * 0.3048).abs() < 1e-9);
    assert_eq!((returned("dry"), returned("unknown")), (0.0, 0.0));
}
