//! What a crew notes and how it found a thing are printed where that thing is.

use crate::command::vector;
use crate::support::{run, run_with};
use std::fs;

fn in_one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The notes of both surveys of every key, with what each is of.
const NOTES: [&[(&str, &str)]; 2] = [
    &[
        ("job", "nothing here was measured"),
        ("site", "houses to the south"),
        ("soil", "wet in spring"),
        ("posts \"girth\"", "flakes at the concrete"),
        ("cloth of north", "sags"),
        ("fastening of north", "new"),
        ("vents of north", "cut last year"),
        ("chain link of north", "old"),
        ("top rail of north", "bent"),
        ("mid rail of north", "straight"),
        ("start of north", "the return stands lower"),
        ("finish of north", "a gate stands in it"),
        ("other posts of north", "put in later"),
        ("run north", "the gate sticks"),
        ("footing of north", "seen at one post"),
        ("ends of west", "with the same cloth"),
    ],
    &[
        ("site", "seen from the road"),
        ("air permeability of cloth of bank", "by its sheet"),
        ("over cloth of bank", "a strip"),
    ],
];

#[test]
fn every_note_is_printed_with_what_it_is_of() {
    for (name, notes) in ["every-key", "every-other-key"].iter().zip(NOTES) {
        let file = format!("tests/surveys/{name}.toml");
        let written = fs::read_to_string(&file).unwrap();
        let text = in_one_line(&run(&["check", &file]).text);
        let engineer = in_one_line(&run(&["sheet", &file, "--for", "engineer"]).text);
        for (of, note) in notes {
            assert!(written.contains(note), "{name}: {note}");
            // Things noted alike are told together: from the things to the note nothing else is noted.
            let line = text.split(" - note, ").find(|line| line.contains(&format!(": {note}")));
            let line = line.unwrap_or_else(|| panic!("{name}: \"{note}\" is not printed: {text}"));
            assert!(line.split(": ").next().unwrap().contains(of), "{name}: {note} is of {of}: {line}");
            assert!(engineer.contains(note), "{name}: {note}");
        }
    }
}

fn told_of(found: &str) -> String {
    let survey = vector("12 x 10 ft", "0.95", "\"none\"")
        .replace("[post.line]", &format!("[post.line]\nfrom = \"{found}\""))
        .replace("solidity = 0.95", "solidity = 0.95, from = \"tape\"");
    in_one_line(&run_with(&["check", "-"], &survey).text)
}

#[test]
fn how_a_thing_was_found_is_printed_and_a_guess_is_the_first_to_measure() {
    for (key, said) in [
        ("tape", "- measured with a tape: posts \"line\"; cloth of run"),
        ("caliper", "- measured with a caliper: posts \"line\""),
        ("drawing", "- from a drawing, not measured: posts \"line\""),
        ("told", "- as somebody told it, not measured: posts \"line\""),
        ("guess", "- GUESSED, not measured: posts \"line\""),
    ] {
        let text = told_of(key);
        assert!(text.contains(said), "{said}: {text}");
        let first = "MEASURE NEXT - what was guessed: posts \"line\"";
        assert_eq!(text.contains(first), key == "guess", "{key}: {text}");
    }
}

#[test]
fn the_clients_sheet_has_the_notes_it_has_room_for_and_the_guess() {
    let survey = vector("12 x 10 ft", "0.95", "\"none\"")
        .replace("[post.line]", "[post.line]\nfrom = \"guess\"\nnote = \"flakes at the concrete\"")
        .replace("ends = \"free\"", "ends = \"free\"\nnote = \"the gate sticks\"");
    let sheet = in_one_line(&run_with(&["sheet", "-", "--for", "client"], &survey).text);
    for said in ["flakes at the concrete", "the gate sticks", "what was guessed: posts"] {
        assert!(sheet.contains(said), "{said}: {sheet}");
    }
}

#[test]
fn a_name_too_long_for_what_to_measure_next_is_cut_within_its_quotes() {
    let long = "the posts that the contractor put in one wet spring";
    let survey = vector("12 x 10 ft", "0.95", "\"none\"")
        .replace("[post.line]", &format!("[post.\"{long}\"]\nfrom = \"guess\""));
    let text = in_one_line(&run_with(&["check", "-"], &survey).text);
    assert!(text.contains("- what was guessed: posts \"the posts that the contractor"), "{text}");
    assert!(text.contains("…\""), "{text}");
}
