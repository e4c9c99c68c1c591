//! The identity of a request: SHA-256 of its plain form.

use serde::Serialize;
use sha2::{Digest, Sha256};

use crate::quantity::{In, Presentation};

/// Bytes of a request of usual size.
const PLAIN_BYTES: usize = 4096;

/// SHA-256, hexadecimal, of the compact JSON of the parsed request: base SI, declared
/// order, absent members left out, without tags and without the shared members.
pub fn request_digest<R: Serialize>(request: &R) -> String {
    // at once and not piece by piece: JSON comes in pieces of a few bytes
    let mut plain = Vec::with_capacity(PLAIN_BYTES);
    // writing into memory cannot fail, and a request holds nothing JSON cannot carry
    let written = serde_json::to_writer(&mut plain, &In(Presentation::Digest, request));
    debug_assert!(written.is_ok());
    Sha256::digest(&plain)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}
