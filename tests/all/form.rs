//! The blank form: every key a crew fills in, on pages that load nothing and print in black.

use crate::support::{Output, run};
use fencegust::caution::MEASURING;
use std::collections::BTreeSet;
use std::fs;
use tempfile::tempdir;

/// What a crew fills in once for a site, as the survey file names it.
pub const SITE_KEYS: &[&str] = &[
    "units",
    "job.title",
    "job.prepared_for",
    "job.measured_by",
    "job.date",
    "job.note",
    "site.wind_code",
    "site.wind_speed",
    "site.wind_speed_source",
    "site.exposure",
    "site.risk_category",
    "site.ground_elevation",
    "site.topographic_factor",
    "site.hill",
    "site.hill.shape",
    "site.hill.height",
    "site.hill.half_length",
    "site.hill.distance",
    "site.hill.side",
    "site.soil",
    "site.soil.lateral_bearing",
    "site.soil.class",
    "site.note",
    "post.girth",
    "post.diameter",
    "post.width",
    "post.nominal_wall",
    "post.measured_wall",
    "post.seamless",
    "post.section",
    "post.modulus",
    "post.moment",
    "post.moment_is",
    "post.face_width",
    "post.timber",
    "post.species",
    "post.grade",
    "post.service",
    "post.incised",
    "post.yield",
    "post.rust_at_grade",
    "post.from",
    "post.note",
    "order.end_gap",
    "order.joint_gap",
    "order.top_gap",
    "order.longest_panel",
    "order.hem_allowance",
    "order.spares",
    "order.lacing",
    "order.knot_end",
    "order.rope_waste",
    "order.currency",
    "order.cloth_price",
    "order.tie_price",
    "order.rope_price",
    "order.grommet_price",
    "order.crew_time",
    "order.service_life",
    "order.warranty",
    "order.note",
];
/// What a crew fills in for each run.
pub const RUN_KEYS: &[&str] = &[
    "run.name",
    "run.court",
    "run.faces",
    "run.bays",
    "run.start",
    "run.finish",
    "run.height",
    "run.base_above_ground",
    "run.top_rail",
    "run.top_rail.diameter",
    "run.top_rail.nominal_wall",
    "run.top_rail.yield",
    "run.mid_rail",
    "run.mid_rail.diameter",
    "run.mid_rail.nominal_wall",
    "run.mid_rail.yield",
    "run.bottom_rail",
    "run.bottom_rail.diameter",
    "run.bottom_rail.nominal_wall",
    "run.bottom_rail.yield",
    "run.chain_link",
    "run.chain_link.mesh",
    "run.chain_link.wire",
    "run.chain_link.face",
    "run.footing",
    "run.footing.shape",
    "run.footing.width",
    "run.footing.depth",
    "run.line_post",
    "run.end_post",
    "run.corner_post",
    "run.gate_post",
    "run.other_posts",
    "run.other_posts.numbers",
    "run.other_posts.post",
    "run.guy",
    "run.guy.posts",
    "run.guy.kind",
    "run.guy.height",
    "run.guy.back",
    "run.guy.side",
    "run.guy.diameter",
    "run.guy.nominal_wall",
    "run.guy.yield",
    "run.guy.allowed",
    "run.screen",
    "run.screen.cloth",
    "run.screen.solidity",
    "run.screen.density",
    "run.screen.colour",
    "run.screen.bottom",
    "run.screen.height",
    "run.screen.top",
    "run.screen.weight",
    "run.screen.condition",
    "run.screen.face",
    "run.screen.bays",
    "run.screen.fastening",
    "run.screen.fastening.kind",
    "run.screen.fastening.strength",
    "run.screen.fastening.rope",
    "run.screen.fastening.spacing",
    "run.screen.fastening.rows",
    "run.screen.vents",
    "run.screen.vents.width",
    "run.screen.vents.height",
    "run.screen.vents.per_bay",
    "run.from",
    "run.note",
];

fn form(arguments: &[&str]) -> String {
    let out = run(&[&["form"], arguments].concat());
    assert_eq!((out.code, out.err.as_str()), (0, ""));
    out.text
}

fn pages(form: &str) -> Vec<&str> {
    form.split("<section class=\"page\">").skip(1).collect()
}

/// How often a page has a place for a key that is labelled with its name.
fn places(page: &str, key: &str) -> usize {
    let name = key.rsplit('.').next().unwrap();
    page.split(&format!("data-key=\"{key}\""))
        .skip(1)
        .filter(|rest| {
            let label =
                rest.split_once('>').unwrap().1.trim_start_matches("<th>").trim_start_matches("<code>");
            label.strip_prefix(name).is_some_and(|rest| rest.starts_with(['<', ' ']))
        })
        .count()
}

#[test]
fn every_key_a_crew_fills_in_has_one_place_under_its_own_name() {
    let form = form(&["--runs", "2"]);
    let pages = pages(&form);
    assert_eq!(pages.len(), 3);
    for key in SITE_KEYS {
        assert_eq!(places(pages[0], key), 1, "{key}");
    }
    for page in &pages[1..] {
        for key in RUN_KEYS {
            assert_eq!(places(page, key), 1, "{key}");
        }
    }
    assert_eq!(places(pages[0], "post.nominal_wal"), 0);
    assert_eq!(places(&pages[0].replace("<code>girth</code>", "<code>gird</code>"), "post.girth"), 0);
}

#[test]
fn a_run_has_a_page_and_the_site_has_one() {
    for runs in [1, 4, 9] {
        let form = form(&["--runs", &runs.to_string()]);
        assert_eq!(pages(&form).len(), runs + 1);
        assert!(form.contains(&format!("Run {runs} of {runs}")));
        assert!(form.contains(&format!("page {0} of {0}", runs + 1)));
    }
    assert_eq!(pages(&form(&[])).len(), 5);
}

#[test]
fn it_loads_nothing_and_runs_nothing() {
    let form = form(&[]);
    for never in ["http", "<script", "<link", "<iframe", "src=", "href", "@import", "url(", "javascript"] {
        assert!(!form.contains(never), "{never}");
    }
    let tags: Vec<&str> = form.split('<').skip(1).map(|rest| rest.split('>').next().unwrap()).collect();
    assert!(tags.len() > 500);
    for tag in tags {
        assert!(!tag.split_whitespace().any(|part| part.starts_with("on") && part.contains('=')), "{tag}");
    }
    assert!(form.starts_with("<!DOCTYPE html><html lang=\"en\">"));
}

/// Every colour written as a number in a text.
fn colours(text: &str) -> Vec<&str> {
    text.match_indices('#')
        .map(|(at, _)| {
            let digits = text[at + 1..].find(|letter: char| !letter.is_ascii_hexdigit()).unwrap_or(0);
            &text[at + 1..at + 1 + digits]
        })
        .collect()
}

#[test]
fn it_is_black_on_white_with_greys_and_no_colour() {
    let form = form(&[]);
    let colours = colours(&form);
    assert!(colours.len() > 100, "found only {} colours", colours.len());
    for colour in colours {
        let grey = match colour.len() {
            3 => colour.chars().all(|digit| colour.starts_with(digit)),
            6 => colour[..2] == colour[2..4] && colour[2..4] == colour[4..],
            _ => false,
        };
        assert!(grey, "#{colour}");
    }
    for word in ["green", "rgb(", "hsl(", "lime", "teal"] {
        assert!(!form.contains(word), "{word}");
    }
}

#[test]
fn each_sketch_is_an_image_with_a_title_and_a_description() {
    let form = form(&["--runs", "3"]);
    let sketches: Vec<&str> = form.split("<svg ").skip(1).collect();
    assert_eq!(sketches.len(), 3 + 3 * 5);
    let mut names = BTreeSet::new();
    for sketch in &sketches {
        let sketch = sketch.split_once("</svg>").unwrap().0;
        assert!(sketch.contains("role=\"img\""));
        let labelled = sketch.split_once("aria-labelledby=\"").unwrap().1.split_once('"').unwrap().0;
        for (id, element) in labelled.split(' ').zip(["title", "desc"]) {
            let open = format!("<{element} id=\"{id}\">");
            let text = sketch.split_once(&open).unwrap().1.split_once('<').unwrap().0;
            assert!(text.len() > 10, "{id}: {text}");
            assert!(names.insert(id.to_owned()), "{id} stands twice");
        }
    }
    for shown in ["girth", "measured_wall", "rust_at_grade", "tension bar to tension bar", "you, inside,"] {
        assert!(form.contains(shown), "{shown}");
    }
}

#[test]
fn warnings_stand_where_the_work_can_hurt_somebody() {
    let form = form(&["--runs", "2"]);
    let pages = pages(&form);
    let says = |page: &str, id: &str| {
        let caution = MEASURING.iter().find(|caution| caution.id == id).unwrap();
        page.contains(&format!("{}</b> {}", caution.word, caution.text))
    };
    for id in ["no-measuring-in-wind", "do-not-climb", "cut-steel"] {
        assert!(says(pages[0], id), "{id}");
    }
    for page in &pages[1..] {
        for id in ["no-measuring-in-wind", "do-not-climb", "utilities-before-digging"] {
            assert!(says(page, id), "{id}");
        }
        assert!(page.contains("You stand inside the court, facing the fence: post 1 is at your left"));
    }
}

#[test]
fn the_paper_is_the_one_asked_for_and_another_names_those_there_are() {
    assert!(form(&[]).contains("size: letter;"));
    assert!(form(&["--paper", "a4"]).contains("size: A4;"));
    let legal = run(&["form", "--paper", "legal"]);
    assert_eq!((legal.code, legal.text.as_str()), (2, ""));
    assert!(legal.err.contains("letter") && legal.err.contains("a4"), "{}", legal.err);
    for runs in ["0", "-1", "201", "many"] {
        assert_eq!(run(&["form", "--runs", runs]).code, 2, "{runs}");
    }
}

#[test]
fn a_crew_with_a_metric_tape_gets_metric_units() {
    let units = |form: &str| -> BTreeSet<String> {
        form.split("<small class=\"unit\">")
            .skip(1)
            .map(|rest| rest.split('<').next().unwrap().to_owned())
            .collect()
    };
    let (us, si) = (units(&form(&["--units", "us"])), units(&form(&["--units", "si"])));
    for unit in ["ft in", "in", "mph", "lbf", "psf/ft"] {
        assert!(us.contains(unit) && !si.contains(unit), "{unit}: {us:?} {si:?}");
    }
    for unit in ["m", "mm", "m/s", "N", "kPa/m"] {
        assert!(si.contains(unit) && !us.contains(unit), "{unit}: {us:?} {si:?}");
    }
}

#[test]
fn it_goes_into_a_file_whole_or_not_at_all() {
    let folder = tempdir().unwrap();
    let path = folder.path().join("form.html");
    let to = |path: &str| -> Output { run(&["form", "--runs", "1", "--out", path]) };
    let out = to(path.to_str().unwrap());
    assert_eq!((out.code, out.text.as_str(), out.err.as_str()), (0, "", ""));
    assert_eq!(fs::read_to_string(&path).unwrap(), form(&["--runs", "1"]));
    assert_eq!(form(&["--runs", "1", "--out", "-"]), form(&["--runs", "1"]));

    let nowhere = folder.path().join("no/such/folder/form.html");
    let out = to(nowhere.to_str().unwrap());
    assert_eq!(out.code, 2);
    assert!(out.err.contains("there is no folder"), "{}", out.err);
    let out = to(folder.path().to_str().unwrap());
    assert_eq!(out.code, 2);
    assert!(out.err.contains("this is a directory"), "{}", out.err);
    let long = folder.path().join("x".repeat(300));
    let out = to(long.to_str().unwrap());
    assert_eq!(out.code, 2);
    assert!(out.err.contains("could not be written"), "{}", out.err);
    let names: Vec<_> =
        fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    assert_eq!(names, ["form.html"], "something was left behind");
}
