//! Figures as text.

/// A number to so many decimals, thousands set apart by a comma from 10,000 on.
#[must_use]
pub fn number(value: f64, decimals: usize) -> String {
    let plain = format!("{value:.decimals$}");
    let (sign, digits) = plain.strip_prefix('-').map_or(("", plain.as_str()), |rest| ("-", rest));
    if digits.chars().all(|c| matches!(c, '0' | '.')) {
        return digits.to_owned();
    }
    let (whole, rest) = digits.split_once('.').map_or((digits, None), |(whole, rest)| (whole, Some(rest)));
    let mut grouped = String::new();
    for (at, digit) in whole.chars().enumerate() {
        if at > 0 && (whole.len() - at) % 3 == 0 && whole.len() > 4 {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    match rest {
        Some(rest) => format!("{sign}{grouped}.{rest}"),
        None => format!("{sign}{grouped}"),
    }
}

/// A number to at most so many decimals, without trailing zeros.
#[must_use]
pub fn trimmed(value: f64, decimals: usize) -> String {
    let text = number(value, decimals);
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

/// Feet as a tape reads them, to the sixteenth of an inch; decimal where that is not what it is.
pub(super) fn feet_and_inches(feet: f64) -> String {
    let sixteenths = feet * 192.0;
    let rounded = sixteenths.round();
    if (sixteenths - rounded).abs() > 1e-6 || !(0.0..1e9).contains(&rounded) {
        return format!("{} ft", trimmed(feet, 2));
    }
    let (whole_feet, rest) = ((rounded / 192.0).floor(), rounded % 192.0);
    let (inches, sixteenths) = ((rest / 16.0).floor(), rest % 16.0);
    let mut text = Vec::new();
    if whole_feet > 0.0 || rest == 0.0 {
        text.push(format!("{} ft", number(whole_feet, 0)));
    }
    if rest > 0.0 {
        let (mut over, mut under) = (sixteenths, 16.0);
        while over > 0.0 && over % 2.0 == 0.0 {
            over /= 2.0;
            under /= 2.0;
        }
        text.push(match (inches > 0.0, over > 0.0) {
            (true, true) => format!("{inches:.0}-{over:.0}/{under:.0} in"),
            (false, true) => format!("{over:.0}/{under:.0} in"),
            _ => format!("{inches:.0} in"),
        });
    }
    text.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tape_reading_comes_back_as_it_was_written() {
        for text in ["10 ft", "9 ft 8 in", "11 ft 1 in", "6 ft 4-1/2 in", "3/16 in", "7 in"] {
            let metres = crate::units::read(text, crate::units::Dimension::Length).unwrap();
            assert_eq!(crate::units::Measure::Length.write(metres, crate::units::System::Us), text);
        }
    }

    #[test]
    fn what_no_tape_reads_is_written_in_decimals() {
        for (feet, text) in [
            (0.0, "0 ft"),
            (10.001, "10 ft"),
            (9.99, "9.99 ft"),
            (-3.0, "-3 ft"),
            (2.0 + 1.0 / 192.0, "2 ft 1/16 in"),
            (2.0 + 0.5 / 192.0, "2 ft"),
            (5e6, "5,000,000 ft"),
            (6e6, "6,000,000 ft"),
            (1.0 + 11.9375 / 12.0, "1 ft 11-15/16 in"),
            (12_345.0 + 1.0 / 12.0, "12,345 ft 1 in"),
        ] {
            assert_eq!(feet_and_inches(feet), text, "{feet}");
        }
    }

    #[test]
    fn a_figure_is_grouped_by_three_from_the_point_and_keeps_its_sign() {
        for (value, decimals, text) in [
            (0.0, 0, "0"),
            (-0.0, 1, "0.0"),
            (9999.0, 0, "9999"),
            (10_000.0, 0, "10,000"),
            (100_000.0, 1, "100,000.0"),
            (1_000_000.0, 0, "1,000,000"),
            (-9999.6, 0, "-10,000"),
            (-1.25, 1, "-1.2"),
        ] {
            assert_eq!(number(value, decimals), text);
        }
        for (value, decimals, text) in [(100.0, 0, "100"), (100.0, 2, "100"), (0.50, 2, "0.5"), (0.0, 2, "0")]
        {
            assert_eq!(trimmed(value, decimals), text);
        }
    }

    #[test]
    fn thousands_are_set_apart_from_ten_thousand_on() {
        assert_eq!(number(3070.4, 0), "3070");
        assert_eq!(number(17735.2, 0), "17,735");
        assert_eq!(number(-1_234_567.891, 2), "-1,234,567.89");
        assert_eq!(number(-0.0001, 2), "0.00");
        assert_eq!(trimmed(2.500, 3), "2.5");
    }
}
