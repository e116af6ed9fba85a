//! The floors of the house: a module imports only from floors below its own.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// Every module of `src/` and the floor it stands on.
const FLOORS: &[(&str, u8)] = &[
    ("cli", 10),
    ("batch", 9),
    ("page", 9),
    ("report", 8),
    ("answers", 7),
    ("rules", 7),
    ("verdict", 6),
    ("survey", 6),
    ("loads", 5),
    ("fence", 4),
    ("caution", 4),
    ("frame", 3),
    ("footing", 3),
    ("fastening", 3),
    ("wind", 2),
    ("screen", 2),
    ("member", 2),
    ("workings", 1),
    ("numerics", 1),
    ("units", 0),
    ("source", 0),
];

fn floor(module: &str) -> Option<u8> {
    FLOORS.iter().find(|(name, _)| *name == module).map(|(_, floor)| *floor)
}

/// The source files below `src`, each with the top module it belongs to.
fn files() -> Vec<(String, PathBuf)> {
    fn walk(folder: &Path, top: Option<&str>, found: &mut Vec<(String, PathBuf)>) {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
            let top = top.unwrap_or(&name);
            if path.is_dir() {
                walk(&path, Some(top), found);
            } else if path.extension().is_some_and(|end| end == "rs") {
                found.push((top.to_owned(), path));
            }
        }
    }
    let mut found = Vec::new();
    walk(Path::new("src"), None, &mut found);
    found.retain(|(top, _)| top != "lib" && top != "main");
    found
}

/// What is wrong with the imports of one file.
fn wrong_in(module: &str, text: &str) -> Vec<String> {
    let Some(own) = floor(module) else { return vec![format!("{module} has no floor")] };
    let mut wrong = Vec::new();
    for (number, line) in text.lines().enumerate() {
        let code = line.split("//").next().unwrap_or_default();
        let mut tell = |what: String| wrong.push(format!("line {}: {what}", number + 1));
        if code.contains("use crate::{") {
            tell("imports several paths at a time from crate".to_owned());
        }
        if code.contains("super::super") {
            tell("climbs two floors with super::super".to_owned());
        }
        for (at, _) in code.match_indices("crate::") {
            // `$crate::` in the macro of rules names paths of whoever calls it.
            if code[..at].ends_with('$') {
                continue;
            }
            let name: String =
                code[at + 7..].chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
            // A macro stands at the root of the crate.
            if name.is_empty() || name == module || name == "rule" {
                continue;
            }
            match floor(&name) {
                None => tell(format!("{name} has no floor")),
                Some(other) if other >= own => {
                    tell(format!("{module} (floor {own}) imports {name} (floor {other})"));
                }
                Some(_) => {}
            }
        }
    }
    wrong
}

#[test]
fn imports_point_down_and_every_module_has_a_floor() {
    let files = files();
    assert!(files.len() > 20, "the walk found only {} files", files.len());
    let mut wrong = Vec::new();
    for (module, path) in &files {
        for what in wrong_in(module, &fs::read_to_string(path).unwrap()) {
            wrong.push(format!("{}: {what}", path.display()));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_module_that_lib_declares_has_a_floor() {
    let text = fs::read_to_string("src/lib.rs").unwrap();
    let declared: Vec<&str> =
        text.lines().filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';')).collect();
    assert!(declared.len() > 10);
    for module in declared {
        assert!(floor(module).is_some(), "{module} has no floor");
    }
}

#[test]
fn a_module_without_a_floor_and_an_import_upwards_are_found() {
    assert_eq!(wrong_in("attic", ""), ["attic has no floor"]);
    assert_eq!(wrong_in("wind", "use crate::fence::Fence;").len(), 1);
    assert_eq!(wrong_in("wind", "use crate::screen::Cloth;").len(), 1);
    assert_eq!(wrong_in("wind", "use crate::units::Length;").len(), 0);
    assert_eq!(wrong_in("wind", "use crate::attic::Trunk;").len(), 1);
    assert_eq!(wrong_in("wind", "use crate::{units, source};").len(), 1);
    assert_eq!(wrong_in("wind", "use super::super::units;").len(), 1);
}

/// Nothing below the command line prints, reads a clock or opens a file.
#[test]
fn only_the_command_line_touches_files_clocks_and_streams() {
    let forbidden =
        ["println!", "eprintln!", "print!(", "dbg!", "std::fs", "std::time", "SystemTime", "std::thread"];
    let mut wrong: BTreeMap<String, Vec<&str>> = BTreeMap::new();
    for (module, path) in files() {
        if module == "cli" {
            continue;
        }
        let text = fs::read_to_string(&path).unwrap();
        let code = text.split("#[cfg(test)]").next().unwrap_or_default();
        for word in forbidden {
            if code.contains(word) {
                wrong.entry(path.display().to_string()).or_default().push(word);
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:?}");
}
