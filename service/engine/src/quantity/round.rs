//! Rounding to the nine significant digits that are printed. Nothing inside the
//! engine is rounded; only what leaves it, and the comparison of a check.

/// Powers of ten that a double holds exactly.
const EXACT: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
];

/// `value` rounded to nine significant digits, half away from zero on the scaled
/// number; zero and non-finite values unchanged, -0 becomes 0.
///
/// Range: exact scaling for 1e-13 < |value| < 1e22, text rounding outside.
pub fn round9(value: f64) -> f64 {
    if value == 0.0 {
        return 0.0;
    }
    if !value.is_finite() {
        return value;
    }
    match nine(value.abs()) {
        Some(nine) => scale(f64::from(nine.digits), nine.exponent - 8).copysign(value),
        None => format!("{value:.8e}").parse().unwrap_or(value),
    }
}

/// Nine significant digits: a whole number of that many digits, and the power of ten of the first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Nine {
    pub digits: u32,
    pub exponent: i32,
}

/// The nine digits to which a number is rounded; None outside of 1e-13 <= size < 1e22.
pub(super) fn nine(size: f64) -> Option<Nine> {
    if !(1e-13..1e22).contains(&size) {
        return None;
    }
    // decimal exponent e with 10^e <= size < 10^(e+1), from the binary one
    let binary = (size.to_bits() >> 52) as i32 - 1023;
    let mut exponent: i32 = if size >= 1.0 {
        // log10(2) a little low
        let mut e = (binary * 1233) >> 12;
        while EXACT.get(e as usize + 1).is_some_and(|p| *p <= size) {
            e += 1;
        }
        e
    } else {
        let mut e = (((binary + 1) * 1233) >> 12).min(-1);
        while e > -14 && size * EXACT[(-e) as usize] < 1.0 {
            e -= 1;
        }
        e
    };
    let mut digits = nearest(scale(size, 8 - exponent));
    if digits >= 1_000_000_000 {
        exponent += 1;
        digits = nearest(scale(size, 8 - exponent));
    }
    Some(Nine { digits, exponent })
}

/// The nearest whole number, halves up; for 1 <= x < 4e9, where the sum is exact or far from a
/// whole number.
fn nearest(x: f64) -> u32 {
    (x + 0.5) as i64 as u32
}

fn scale(x: f64, by: i32) -> f64 {
    if by >= 0 {
        x * EXACT[by as usize]
    } else {
        x / EXACT[(-by) as usize]
    }
}

#[cfg(test)]
mod tests {
    use super::round9;
    use proptest::prelude::*;

    fn by_text(v: f64) -> f64 {
        format!("{v:.8e}").parse().unwrap()
    }

    proptest! {
        #[test]
        fn agrees_with_text_to_one_unit_of_the_ninth_digit(m in 1.0f64..10.0, e in -30i32..40) {
            let v = m * crate::math::pow(10.0, f64::from(e));
            let (a, b) = (round9(v), by_text(v));
            prop_assert!((a - b).abs() <= 1.0000001e-8 * b.abs(), "{v:e}: {a:e} {b:e}");
            // what was rounded once stays as it is
            prop_assert_eq!(round9(a), a);
        }
    }

    #[test]
    fn at_powers_of_ten_and_of_two() {
        let tens = (-13..22).map(|e| format!("1e{e}").parse().unwrap());
        let twos = (-43..73).map(|e| crate::math::pow(2.0, f64::from(e)));
        for v in tens.chain(twos) {
            for v in [f64::next_down(v), v, f64::next_up(v)] {
                let (a, b) = (round9(v), by_text(v));
                assert!((a - b).abs() <= 1.0000001e-8 * b, "{v:e}: {a:e} {b:e}");
            }
        }
    }

    #[test]
    fn edges() {
        assert_eq!(round9(0.0), 0.0);
        assert!(round9(-0.0).is_sign_positive());
        assert_eq!(round9(0.1 + 0.2), 0.3);
        assert_eq!(round9(0.0762 / 0.3048), 0.25);
        assert_eq!(round9(999_999_999.9), 1e9);
        assert_eq!(round9(-123.456_789_012), -123.456_789);
        assert_eq!(round9(1e-13), 1e-13);
        assert_eq!(round9(1e22), 1e22);
        assert!(round9(f64::NAN).is_nan());
    }
}
