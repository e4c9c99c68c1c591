//! The bytes that are written: texts and numbers of JSON. Whole numbers and doubles go by the
//! printers that `serde_json` prints them with, a text that needs an escape by itself.

use serde::ser::Error as _;
use serde_json::Error;

use super::decimal;
use super::macros::{Role, UnitDef};
use super::{role_of, round9};

/// What is written, at the end of what was there.
pub(super) struct Out {
    pub bytes: Vec<u8>,
    /// The unit of the last number for which one was chosen.
    pub chosen: Option<&'static UnitDef>,
    roles: [(&'static str, Option<&'static Role>); ROLES_KEPT],
}

/// An answer has a few roles and many numbers of each.
const ROLES_KEPT: usize = 8;

impl Out {
    pub fn after(bytes: Vec<u8>) -> Self {
        Self {
            bytes,
            chosen: None,
            roles: [("", None); ROLES_KEPT],
        }
    }

    /// [`role_of`], remembered by where the mark stands: marks are texts of the code, and one that
    /// stands at the same place with the same length is the same.
    #[inline]
    pub fn role_of(&mut self, mark: &'static str) -> Option<&'static Role> {
        let kept = &mut self.roles[(mark.as_ptr().addr() ^ mark.len()) % ROLES_KEPT];
        if !std::ptr::eq(kept.0, mark) {
            *kept = (mark, role_of(mark));
        }
        kept.1
    }

    #[inline]
    pub fn put(&mut self, bytes: &[u8]) {
        self.bytes.extend_from_slice(bytes);
    }

    #[inline]
    pub fn byte(&mut self, byte: u8) {
        self.bytes.push(byte);
    }

    pub fn text(&mut self, text: &str) -> Result<(), Error> {
        if plain(text.as_bytes()) {
            self.known(text);
        } else {
            self.put(serde_json::to_string(text)?.as_bytes());
        }
        Ok(())
    }

    /// A text that needs no escape.
    pub fn known(&mut self, text: &str) {
        debug_assert!(plain(text.as_bytes()), "{text}");
        self.byte(b'"');
        self.put(text.as_bytes());
        self.byte(b'"');
    }

    pub fn whole<N: itoa::Integer>(&mut self, number: N) {
        self.put(itoa::Buffer::new().format(number).as_bytes());
    }

    /// Every bit of a number; what is none becomes `null`, as in `serde_json`.
    pub fn double(&mut self, number: f64) {
        if !number.is_finite() {
            self.put(b"null");
            return;
        }
        match whole_number(number) {
            Some(whole) => {
                self.whole(whole);
                self.put(b".0");
            }
            None => self.put(zmij::Buffer::new().format_finite(number).as_bytes()),
        }
    }

    /// Every bit of a number that must be finite; a whole one without a fraction.
    pub fn finite(&mut self, number: f64) -> Result<(), Error> {
        if !number.is_finite() {
            return Err(Error::custom("a result is not a finite number"));
        }
        match whole_number(number) {
            Some(whole) => self.whole(whole),
            None => self.double(number),
        }
        Ok(())
    }

    /// A number that must be finite, rounded to nine digits.
    pub fn nine_digits(&mut self, number: f64) -> Result<(), Error> {
        if number == 0.0 {
            self.byte(b'0');
            return Ok(());
        }
        let start = self.bytes.len();
        if number < 0.0 {
            self.byte(b'-');
        }
        if decimal::put(&mut self.bytes, number.abs()) {
            return Ok(());
        }
        self.bytes.truncate(start);
        self.finite(round9(number))
    }
}

/// A number without a fraction, but for one of more than fifteen digits and the nil that is
/// negative.
fn whole_number(number: f64) -> Option<i64> {
    let whole = number as i64;
    let is_whole = number.abs() < 1e15 && whole as f64 == number;
    (is_whole && (whole != 0 || number.is_sign_positive())).then_some(whole)
}

/// Whether a text stands in JSON as it is: no control character, quotation mark or backslash.
pub(super) fn plain(text: &[u8]) -> bool {
    const ONES: u64 = u64::MAX / 255;
    // high bit of a byte below `than`, right up to the first; what is above 127 is not below
    let below = |word: u64, than: u8| word.wrapping_sub(ONES * u64::from(than)) & !word;
    let eight = |word: u64| {
        let mark = below(word ^ (ONES * u64::from(b'"')), 1);
        let slash = below(word ^ (ONES * u64::from(b'\\')), 1);
        (below(word, 0x20) | mark | slash) & (ONES << 7) == 0
    };
    let one = |b: &u8| *b >= 0x20 && *b != b'"' && *b != b'\\';
    let (words, rest) = text.as_chunks::<8>();
    words.iter().all(|w| eight(u64::from_le_bytes(*w))) && rest.iter().all(one)
}
