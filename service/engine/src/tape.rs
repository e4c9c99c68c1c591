//! Distances as they are read on site: feet, inches and sixteenths, whole millimetres, and
//! numbers with a fixed count of decimals. Text only; nothing is calculated with them.

use crate::quantity::{Length, LengthUnit};

/// Sixteenths of an inch in a foot.
const FOOT: i64 = 192;
/// Powers of ten.
const TENS: [f64; 7] = [1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6];

/// Feet, inches and the nearest sixteenth of an inch: `44'-4 7/8"`, `0'-0 1/2"`, `-3'-0"`.
///
/// n = round(16 l/in), half away from zero; feet, inches and sixteenths are parts of that
/// whole number, so that 11 31/32 in is `1'-0"`; the fraction is reduced. l at most 1e7 m.
/// Source: arithmetic.
pub fn feet_inches(length: Length) -> String {
    let n = nearest(16.0 * length.get(LengthUnit::In));
    let sign = if n < 0 { "-" } else { "" };
    let (feet, rest) = (n.abs() / FOOT, n.abs() % FOOT);
    let (inches, mut part) = (rest / 16, rest % 16);
    if part == 0 {
        return format!("{sign}{feet}'-{inches}\"");
    }
    let mut whole = 16;
    while part % 2 == 0 {
        part /= 2;
        whole /= 2;
    }
    format!("{sign}{feet}'-{inches} {part}/{whole}\"")
}

/// Whole millimetres, half away from zero: `13535 mm`. At most 1e7 m. Source: arithmetic.
pub fn millimetres(length: Length) -> String {
    format!("{} mm", nearest(length.get(LengthUnit::Mm)))
}

/// A number with `decimals` decimals (at most 6), half away from zero, never `-0`. At most
/// 1e11 without its decimals. Source: arithmetic.
pub fn decimal(value: f64, decimals: usize) -> String {
    let places = decimals.min(TENS.len() - 1);
    let n = nearest(value * TENS[places]);
    let sign = if n < 0 { "-" } else { "" };
    let digits = format!("{:0width$}", n.abs(), width = places + 1);
    let (whole, part) = digits.split_at(digits.len() - places);
    if part.is_empty() {
        format!("{sign}{whole}")
    } else {
        format!("{sign}{whole}.{part}")
    }
}

/// The nearest whole number, half away from zero. What is a half but for the last bits of a
/// double counts as a half: 0.3 ft less 0.2 ft is not below 0.1 ft.
fn nearest(value: f64) -> i64 {
    let size = value.abs();
    let n = (size + 0.5 + 8.0 * f64::EPSILON * size).floor() as i64;
    if value < 0.0 { -n } else { n }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn feet(value: f64) -> String {
        feet_inches(Length::new(value, LengthUnit::Ft))
    }

    fn inches(value: f64) -> String {
        feet_inches(Length::new(value, LengthUnit::In))
    }

    /// Reads a text of `feet_inches` back, in sixteenths; faults by a panic.
    fn read(text: &str) -> i64 {
        let (sign, rest) = match text.strip_prefix('-') {
            Some(rest) => (-1, rest),
            None => (1, text),
        };
        let (feet, rest) = rest.split_once("'-").expect("feet");
        let rest = rest.strip_suffix('"').expect("inches");
        let (inches, part) = match rest.split_once(' ') {
            Some((inches, part)) => (inches, part),
            None => (rest, "0/16"),
        };
        let (over, under) = part.split_once('/').expect("a fraction");
        let number = |t: &str| t.parse::<i64>().expect("a number");
        let (inches, over, under) = (number(inches), number(over), number(under));
        assert!((0..12).contains(&inches), "{text}");
        assert!(over < under && 16 % under == 0, "{text}");
        assert!(over == 0 || over % 2 == 1, "not reduced: {text}");
        let n = sign * (192 * number(feet) + 16 * inches + over * 16 / under);
        assert!(sign > 0 || n < 0, "a negative nothing: {text}");
        n
    }

    #[test]
    fn worked_figures() {
        // 36 by 26 ft: root of 1972 is 44.40720662 ft, 0.40720662 ft are 4.88647944 in,
        // 0.88647944 in are 14.18 sixteenths
        assert_eq!(feet(44.407_206_62), "44'-4 7/8\"");
        // 0.08 ft are 0.96 in, 15.36 sixteenths
        assert_eq!(feet(0.08), "0'-0 15/16\"");
        // 7.2 ft are 7 ft 2.4 in, 6.4 sixteenths
        assert_eq!(feet(7.2), "7'-2 3/8\"");
        assert_eq!(feet(36.0), "36'-0\"");
        assert_eq!(inches(30.5), "2'-6 1/2\"");
    }

    #[test]
    fn rounding_carries_into_inches_and_feet() {
        // on the limit of a thirty-second, and a hair below it
        assert_eq!(inches(11.0 + 31.0 / 32.0), "1'-0\"");
        assert_eq!(inches(11.0 + 31.0 / 32.0 - 1e-6), "0'-11 15/16\"");
        assert_eq!(inches(3.0 + 31.0 / 32.0), "0'-4\"");
        assert_eq!(inches(-(11.0 + 31.0 / 32.0)), "-1'-0\"");
        assert_eq!(inches(23.99), "2'-0\"");
        assert_eq!(inches(1.0 / 32.0), "0'-0 1/16\"");
        assert_eq!(inches(-1.0 / 33.0), "0'-0\"");
        assert_eq!(feet(-0.0), "0'-0\"");
        assert_eq!(feet(-0.5), "-0'-6\"");
    }

    #[test]
    fn a_half_that_a_double_misses_counts_as_a_half() {
        // 0.1 ft less 0.0974 in in doubles is not quite 1 3/32 in
        let sum = Length::new(1.0, LengthUnit::In) + Length::new(0.09375, LengthUnit::In);
        assert_eq!(feet_inches(sum), "0'-1 1/8\"");
        assert_eq!(decimal(1.0005, 3), "1.001");
        assert_eq!(decimal(2_000_000.000_5, 3), "2000000.001");
        assert_eq!(decimal(-1.0005, 3), "-1.001");
    }

    #[test]
    fn decimals_are_fixed() {
        for (value, decimals, text) in [
            (0.0, 3, "0.000"),
            (-0.0, 3, "0.000"),
            (-0.0004, 3, "0.000"),
            (0.9996, 3, "1.000"),
            (-12.5, 0, "-13"),
            (609_601.219_202_438, 4, "609601.2192"),
            (2_000_000.0, 3, "2000000.000"),
            (0.05, 4, "0.0500"),
        ] {
            assert_eq!(decimal(value, decimals), text);
        }
        assert_eq!(millimetres(Length::from_si(13.535_35)), "13535 mm");
        assert_eq!(millimetres(Length::from_si(-0.0004)), "0 mm");
        assert_eq!(millimetres(Length::from_si(0.9995)), "1000 mm");
    }

    proptest! {
        #[test]
        fn feet_and_inches_read_back_within_a_thirty_second(value in -1e5f64..1e5) {
            let length = Length::new(value, LengthUnit::In);
            let n = read(&feet_inches(length)) as f64;
            prop_assert!((n / 16.0 - value).abs() <= 1.0 / 32.0 + 1e-9, "{value}: {n}");
        }

        #[test]
        fn every_sixteenth_reads_back_as_itself(n in -5_000_000i64..5_000_000) {
            let length = Length::new(n as f64 / 16.0, LengthUnit::In);
            prop_assert_eq!(read(&feet_inches(length)), n);
        }

        #[test]
        fn what_is_written_never_falls_as_the_length_grows(a in 0.0f64..1e4, by in 0.0f64..1.0) {
            let text = |v| read(&feet_inches(Length::new(v, LengthUnit::In)));
            prop_assert!(text(a) <= text(a + by));
        }

        #[test]
        fn decimals_read_back_within_half_of_the_last(value in -1e7f64..1e7, places in 0usize..5) {
            let text = decimal(value, places);
            let back: f64 = text.parse().expect("a number");
            prop_assert!((back - value).abs() <= 0.5 / TENS[places] + 1e-8);
            let after = text.split_once('.').map_or(0, |t| t.1.len());
            prop_assert_eq!(after, places);
            prop_assert!(!text.starts_with("-0") || back < 0.0, "{}", text);
        }
    }
}
