//! A number as nine significant digits, from the digits themselves: what the shortest text of the
//! rounded number would be, without making that number.

use super::round::{Nine, nine};

/// Exponents of the first digit for which it is written without an exponent and fits.
const FIXED: std::ops::RangeInclusive<i32> = -5..=8;

/// Eight bytes, all of them `0`.
const NILS: u64 = 0x3030_3030_3030_3030;

/// Writes `size` rounded to nine digits; false, and nothing written, where it is written with an
/// exponent, is larger than nine digits or not above nil.
pub(super) fn put(out: &mut Vec<u8>, size: f64) -> bool {
    let Some(Nine { digits, exponent }) = nine(size) else {
        return false;
    };
    if !FIXED.contains(&exponent) {
        return false;
    }
    let (first, others) = (digits / 100_000_000, eight(digits % 100_000_000));
    // how many there are up to the last one that is not nil
    let used = match others {
        0 => 1,
        _ => 9 - others.leading_zeros() as usize / 8,
    };
    // the first digit in the lowest byte
    let text = u128::from(first | u32::from(b'0')) | (u128::from(others | NILS) << 8);
    let (text, length) = if exponent < 0 {
        let nils = exponent.unsigned_abs() as usize;
        let behind = u128::from(NILS) & !(u128::MAX << (8 * (nils - 1)));
        let before = (behind << 16) | (u128::from(b'.') << 8) | u128::from(b'0');
        ((text << (8 * (nils + 1))) | before, used + nils + 1)
    } else {
        let whole = exponent as usize + 1;
        if used <= whole {
            (text, whole)
        } else {
            let below = !(u128::MAX << (8 * whole));
            let point = u128::from(b'.') << (8 * whole);
            ((text & below) | point | ((text & !below) << 8), used + 1)
        }
    };
    // all sixteen bytes, because a length that is known beforehand takes no call
    let end = out.len() + length;
    out.extend_from_slice(&text.to_le_bytes());
    out.truncate(end);
    true
}

/// The eight digits of a number below 1e8, a byte each, the first one lowest.
fn eight(number: u32) -> u64 {
    let number = u64::from(number);
    // two numbers of four digits, four of two, eight of one
    let fours = (number / 10_000) | ((number % 10_000) << 32);
    let hundreds = ((fours * 10_486) >> 20) & 0x7f_0000_007f;
    let twos = hundreds | ((fours - 100 * hundreds) << 16);
    let tens = ((twos * 103) >> 10) & 0x000f_000f_000f_000f;
    tens | ((twos - 10 * tens) << 8)
}

#[cfg(test)]
mod tests {
    use super::super::round9;
    use super::*;
    use proptest::prelude::*;

    /// The shortest text of the rounded number, whole numbers without a fraction.
    fn shortest(size: f64) -> String {
        let rounded = round9(size);
        if rounded == rounded.trunc() {
            format!("{rounded:.0}")
        } else {
            zmij::Buffer::new().format_finite(rounded).to_owned()
        }
    }

    fn holds(size: f64) {
        let mut text = b"0".to_vec();
        if put(&mut text, size) {
            let text = String::from_utf8(text).unwrap();
            assert_eq!(text[1..], shortest(size), "{size:e}");
        } else {
            assert_eq!(text, b"0");
            assert!(!(1e-5..999_999_999.4).contains(&size), "{size:e}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20_000))]
        #[test]
        fn is_the_shortest_text(m in 1.0f64..10.0, e in -7i32..11, cut in 0i32..12) {
            let size = m * crate::math::pow(10.0, f64::from(e));
            holds(size);
            // few digits
            let step = crate::math::pow(10.0, f64::from(cut));
            holds((m * step).round() / step);
            holds((size * step).round() / step);
        }
    }

    #[test]
    fn every_four_digits_in_both_halves() {
        for four in 0..10_000 {
            let number = 10_000 * four + (9_999 - four);
            let text = (eight(number) | NILS).to_le_bytes();
            assert_eq!(std::str::from_utf8(&text).unwrap(), format!("{number:08}"));
        }
    }

    #[test]
    fn at_powers_of_ten() {
        for e in -6..10 {
            let ten: f64 = format!("1e{e}").parse().unwrap();
            for v in [ten.next_down(), ten, ten.next_up(), 9.0 * ten, 1.1 * ten] {
                holds(v);
            }
        }
    }
}
