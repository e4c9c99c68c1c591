//! The identity of a request: SHA-256 of its plain form.

use serde::Serialize;
use sha2::{Digest, Sha256};

use crate::quantity::{In, Presentation};

/// Bytes of a request of usual size; one that grows is copied.
const PLAIN_BYTES: usize = 64 << 10;

/// SHA-256, hexadecimal, of the compact JSON of the parsed request: base SI, declared
/// order, absent members left out, without tags and without the shared members.
pub fn request_digest<R: Serialize>(request: &R) -> String {
    // at once and not piece by piece: JSON comes in pieces of a few bytes
    let mut plain = Vec::with_capacity(PLAIN_BYTES);
    // writing into memory cannot fail, and a request holds nothing JSON cannot carry
    let written = In(Presentation::Digest, request).write(&mut plain);
    debug_assert!(written.is_ok());
    const DIGITS: &[u8; 16] = b"0123456789abcdef";
    let half = |bits: u8| char::from(DIGITS[usize::from(bits)]);
    let bytes = Sha256::digest(&plain);
    let each = bytes.iter();
    each.flat_map(|byte| [half(byte >> 4), half(byte & 15)])
        .collect()
}
