//! How figures stand as text, as patterns: what the reader of figures takes, in any of its units.
//!
//! The patterns keep to what ECMA-262 and most other engines share. They never refuse what the reader takes; what they
//! cannot tell, such as inches before feet, the reader tells.

use crate::units::{Dimension, UNITS};

/// What may stand in place of one figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Open {
    /// One figure.
    No,
    /// One figure or a range.
    Range,
    /// One figure, a range, or "unknown".
    Unknown,
}

/// A number without a fraction.
const PLAIN: &str = r"(?:\d+\.?\d*|\.\d+)(?:[eE][+\-]?\d+)?";
const VULGAR: &str = "[½¼¾⅛⅜⅝⅞]";

/// A number as people write it: 12, 0.154, 1/2, 2-3/8, 2 3/8, 2½.
pub(super) fn number() -> String {
    format!(r"(?:{PLAIN}(?:{VULGAR}|/{PLAIN}|[\-– ]+(?:{VULGAR}|{PLAIN}/{PLAIN}))?|{VULGAR})")
}

/// Words in small letters or capitals.
pub(super) fn in_any_case(words: &str) -> String {
    let mut pattern = String::new();
    for sign in words.chars() {
        let (low, high): (Vec<char>, Vec<char>) =
            (sign.to_lowercase().collect(), sign.to_uppercase().collect());
        match (low.as_slice(), high.as_slice()) {
            ([low], [high]) if low != high => pattern.push_str(&format!("[{high}{low}]")),
            _ if "\\^$.|?*+()[]{}/-".contains(sign) => pattern.push_str(&format!("\\{sign}")),
            _ => pattern.push(sign),
        }
    }
    pattern
}

/// One of some words, in any case.
pub(super) fn one_of<'w>(words: impl IntoIterator<Item = &'w str>) -> String {
    let words: Vec<String> = words.into_iter().map(in_any_case).collect();
    format!("(?:{})", words.join("|"))
}

/// The units of a kind of figure, the longer spellings first.
pub(super) fn units(dimension: Dimension) -> String {
    let mut names: Vec<&str> = UNITS
        .iter()
        .filter(|unit| unit.dimension == dimension)
        .flat_map(|unit| std::iter::once(unit.symbol).chain(unit.also.iter().copied()))
        .collect();
    if dimension == Dimension::Speed {
        names.push("kn");
    }
    if dimension == Dimension::AirPermeability {
        names.push("m/s");
    }
    names.sort_by_key(|name| std::cmp::Reverse(name.chars().count()));
    names.dedup();
    one_of(names)
}

/// One figure with its unit.
pub(super) fn figure(dimension: Dimension) -> String {
    let (number, units) = (number(), units(dimension));
    match dimension {
        // A plain number needs no unit.
        Dimension::Ratio => format!(r"{number}\s*{units}?"),
        // Feet and inches, in parts.
        Dimension::Length => format!(r"{number}\s*{units}(?:\s*[\-–]*\s*{number}\s*{units})*"),
        _ => format!(r"{number}\s*{units}"),
    }
}

/// The pattern of a figure; below nought only where it may be.
pub(super) fn pattern(dimension: Dimension, open: Open, below_nought: bool) -> String {
    let sign = if below_nought { r"[\-−]?\s*" } else { "" };
    let one = format!(r"\s*{sign}{}\s*", figure(dimension));
    match open {
        Open::No => format!("^{one}$"),
        Open::Range => format!(r"^{one}(?:\.\.{one})?$"),
        Open::Unknown => format!(r"^(?:{one}(?:\.\.{one})?|\s*{}\s*)$", in_any_case("unknown")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::read;
    use proptest::prelude::*;
    use regex_lite::Regex;

    fn every_dimension() -> Vec<Dimension> {
        let mut all: Vec<Dimension> = Vec::new();
        for unit in UNITS {
            if !all.contains(&unit.dimension) {
                all.push(unit.dimension);
            }
        }
        all
    }

    fn takes(pattern: &str, text: &str) -> bool {
        Regex::new(pattern).unwrap().is_match(text)
    }

    #[test]
    fn a_pattern_takes_every_spelling_of_every_unit_and_none_of_another_kind() {
        for wanted in every_dimension() {
            let regex = Regex::new(&pattern(wanted, Open::No, false)).unwrap();
            for unit in UNITS {
                for name in std::iter::once(unit.symbol).chain(unit.also.iter().copied()) {
                    for text in
                        [format!("12 {name}"), format!("12{name}"), format!("12 {}", name.to_uppercase())]
                    {
                        let read = read(&text, wanted).is_ok();
                        assert!(!read || regex.is_match(&text), "{text} as {wanted:?}");
                        // Knots are written like kilonewtons.
                        let is_of_kind = unit.dimension == wanted || read;
                        assert_eq!(regex.is_match(&text), is_of_kind, "{text} as {wanted:?}");
                    }
                }
            }
            assert_eq!(regex.is_match("12"), wanted == Dimension::Ratio);
            for wrong in ["", " ", "ft", "ten ft", "1,250 ft", "12 cubits", "NaN ft"] {
                assert!(!regex.is_match(wrong), "{wrong} as {wanted:?}");
            }
        }
    }

    #[test]
    fn lengths_are_taken_as_people_write_them() {
        let length = pattern(Dimension::Length, Open::No, false);
        for text in [
            "11 ft 1 in",
            "11'-1\"",
            "11' 1\"",
            "11′ 1″",
            "11ft1in",
            "11 feet 1 inch",
            "2-3/8 in",
            "2 3/8 in",
            "2⅜\"",
            "9-1/16 in",
            "6 ft 4-1/2 in",
            "6'-4 1/2\"",
            "½ in",
            ".5 m",
            "3.05 m",
            "1e3 mm",
            " 10 ft ",
        ] {
            assert!(read(text, Dimension::Length).is_ok() && takes(&length, text), "{text}");
        }
        for text in ["-3 ft", "10", "10 ft .. 12 ft", "unknown", "10 psf"] {
            assert!(!takes(&length, text), "{text}");
        }
    }

    #[test]
    fn a_range_and_unknown_stand_where_they_may() {
        let speed = |open| pattern(Dimension::Speed, open, false);
        let range = "110 mph .. 120 mph";
        assert!(takes(&speed(Open::Range), range) && takes(&speed(Open::Unknown), range));
        assert!(!takes(&speed(Open::No), range) && !takes(&speed(Open::Range), "unknown"));
        assert!(takes(&speed(Open::Unknown), "Unknown") && takes(&speed(Open::Unknown), "30 kn"));
        assert!(!takes(&speed(Open::Unknown), "unknown or so") && !takes(&speed(Open::Range), "110 mph .. "));
        assert!(takes(&pattern(Dimension::Length, Open::Range, true), "-100 ft .. 300 ft"));
        assert!(takes(&pattern(Dimension::Ratio, Open::Unknown, false), "75 % .. 0.95"));
    }

    fn written_number() -> impl Strategy<Value = String> {
        let whole = 0..9999_u32;
        prop_oneof![
            whole.clone().prop_map(|one| one.to_string()),
            (whole.clone(), 0..9999_u32).prop_map(|(one, two)| format!("{one}.{two}")),
            (1..64_u32, 1..64_u32).prop_map(|(one, two)| format!("{one}/{two}")),
            (whole.clone(), "[-– ]", 1..64_u32, 1..64_u32)
                .prop_map(|(whole, join, one, two)| format!("{whole}{join}{one}/{two}")),
            (whole, "[½¼¾⅛⅜⅝⅞]").prop_map(|(whole, rest)| format!("{whole}{rest}")),
        ]
    }

    proptest! {
        #[test]
        fn what_the_reader_takes_the_pattern_takes(
            first in written_number(),
            second in written_number(),
            gaps in ("[ ]{0,2}", "( |-| - |)", "[ ]{0,1}"),
            units in (0..UNITS.len(), 0..UNITS.len()),
            parts in 1..3_usize,
        ) {
            let (unit, other) = (&UNITS[units.0], &UNITS[units.1]);
            let mut text = format!("{first}{}{}", gaps.0, unit.symbol);
            if parts == 2 {
                text.push_str(&format!("{}{second}{}{}", gaps.1, gaps.2, other.symbol));
            }
            let wanted = unit.dimension;
            if read(&text, wanted).is_ok() {
                let pattern = pattern(wanted, Open::No, false);
                prop_assert!(takes(&pattern, &text), "{text} as {wanted:?}: {pattern}");
            }
        }
    }
}
