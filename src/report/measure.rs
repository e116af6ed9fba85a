//! How much room a text takes, and how it is cut to the room there is.
//!
//! No font is at hand where a page is made, so widths are those of a wide sans-serif face, rounded up: with the
//! reader's own face a text takes this much or less.

use unicode_segmentation::UnicodeSegmentation;
use unicode_width::UnicodeWidthChar;

/// Stands where a text was cut.
const ELLIPSIS: &str = "…";
/// Bold letters are so much wider.
pub(super) const BOLD: f64 = 1.12;
/// Marks over and under one letter that are kept; more of them run into the lines above and below.
const MARKS: usize = 4;

/// A text as it can be shown: no control characters, no marks that turn the text after it round, no heaps of
/// marks on one letter. What is not shown leaves a sign in its place; line ends and tabs are spaces.
pub(super) fn shown(text: &str) -> String {
    let mut marks = 0;
    let mut shown = String::with_capacity(text.len());
    for letter in text.trim().chars() {
        if letter.is_whitespace() {
            marks = 0;
            shown.push(' ');
            continue;
        }
        let turns = matches!(letter, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
        if letter.is_control() || turns {
            marks = 0;
            shown.push('\u{fffd}');
            continue;
        }
        marks = if letter.width() == Some(0) { marks + 1 } else { 0 };
        if marks <= MARKS {
            shown.push(letter);
        }
    }
    shown
}

/// Widths of the letters from space to tilde in thousandths of an em.
const LETTERS: [u16; 95] = [
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636,
    636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295,
    295, 656, 557, 863, 748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838,
    500, 500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521,
    392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
];

/// The width of one letter in em.
fn letter_width(letter: char) -> f64 {
    match letter {
        ' '..='~' => f64::from(LETTERS[letter as usize - ' ' as usize]) / 1000.0,
        '·' => 0.32,
        '–' => 0.5,
        '“' | '”' => 0.52,
        '…' | '■' | '●' | '▲' | '◇' | '◐' | '—' => 1.0,
        // One letter for a whole sentence.
        '\u{fdfd}' => 12.0,
        // Scripts with letters wider than high, and the rare ones beyond the first plane.
        '\u{0b80}'..='\u{0dff}' | '\u{1000}'..='\u{109f}' | '\u{1780}'..='\u{17ff}' => 1.4,
        '\u{a980}'..='\u{a9df}' => 2.0,
        '\u{12000}'..='\u{1254f}' => 6.0,
        _ => match letter.width() {
            Some(0) | None => 0.0,
            // Latin with marks, Greek and Cyrillic; Hebrew, Arabic, the scripts of India, Thai: on the average.
            Some(1) if letter < '\u{530}' => 0.72,
            Some(1) if matches!(letter, '\u{590}'..='\u{aff}' | '\u{e00}'..='\u{eff}') => 0.76,
            Some(1) if letter < '\u{10000}' => 0.95,
            Some(1) => 2.0,
            Some(_) => 1.05,
        },
    }
}

/// The width of a text in em.
pub(super) fn width(text: &str) -> f64 {
    text.chars().map(letter_width).sum()
}

/// A text cut to a width in em, with an ellipsis where it was cut; letters stay whole with their marks.
pub(super) fn clipped(text: &str, room: f64) -> String {
    if width(text) <= room {
        return text.to_owned();
    }
    let mut taken = width(ELLIPSIS);
    let mut kept = String::new();
    for whole in text.graphemes(true) {
        taken += width(whole);
        if taken > room {
            break;
        }
        kept.push_str(whole);
    }
    format!("{}{ELLIPSIS}", kept.trim_end())
}

/// How many lines a text takes in a width in em.
pub(super) fn lines(text: &str, room: f64) -> usize {
    lines_of(std::iter::once((text, 1.0)), room)
}

/// How many lines stretches of text take one after the other, each with how many times its letters are wider.
pub(super) fn lines_of<'t>(stretches: impl Iterator<Item = (&'t str, f64)>, room: f64) -> usize {
    let (mut count, mut used) = (1, 0.0_f64);
    for (text, wider) in stretches {
        // Where lines may be broken: after spaces and beside wide letters; never before a full stop or comma.
        for piece in text.split_inclusive(' ').flat_map(breakable) {
            let whole = width(piece.trim_end()) * wider;
            if used + whole <= room {
                used += width(piece) * wider;
            } else if whole <= room {
                count += 1;
                used = width(piece) * wider;
            } else {
                // A word longer than a line is broken anywhere.
                for letter in piece.chars() {
                    let wide = letter_width(letter) * wider;
                    if used + wide > room {
                        count += 1;
                        used = 0.0;
                    }
                    used += wide;
                }
            }
        }
    }
    count
}

/// A word as it is, or letter by letter where its script is broken anywhere.
fn breakable(word: &str) -> Vec<&str> {
    if word.chars().any(|letter| letter.width() == Some(2)) {
        word.graphemes(true).collect()
    } else {
        vec![word]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_is_cut_to_its_room_with_an_ellipsis_and_a_short_one_is_left_alone() {
        assert_eq!(clipped("north end", 20.0), "north end");
        let cut = clipped(&"north end ".repeat(40), 10.0);
        assert!(cut.ends_with('…') && width(&cut) <= 10.0, "{cut}");
        assert!(width(&cut) > 8.5, "{cut}");
    }

    #[test]
    fn a_letter_keeps_its_marks_where_a_text_is_cut() {
        let cut = clipped(&"e\u{301}".repeat(50), 5.0);
        assert!(cut.trim_end_matches('…').ends_with('\u{301}'), "{cut:?}");
    }

    #[test]
    fn wide_letters_take_twice_the_room() {
        assert!(width("北側") > 1.5 * width("no"));
        assert_eq!(lines(&"北".repeat(100), 10.6), 10);
    }

    #[test]
    fn control_characters_and_turned_text_leave_a_sign_and_line_ends_are_spaces() {
        assert_eq!(shown("a\u{0}b\nc\u{202e}d"), "a\u{fffd}b c\u{fffd}d");
        assert_eq!(shown(&format!("e{}x", "\u{301}".repeat(100))).chars().count(), 2 + MARKS);
    }

    #[test]
    fn words_go_to_the_next_line_whole_and_long_ones_are_broken() {
        let em = width("a");
        assert_eq!(lines("aaa aaa aaa", 3.01 * em), 3);
        assert_eq!(lines(&"a".repeat(30), 10.01 * em), 3);
        assert_eq!(lines("", 10.0), 1);
        assert_eq!(lines_of([("aaa ", 1.0), ("aaa", 1.3)].into_iter(), 7.0 * em), 2);
    }
}
