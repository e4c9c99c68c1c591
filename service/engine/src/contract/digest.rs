//! The identity of a request: SHA-256 of its plain form.

use serde::Serialize;
use sha2::{Digest, Sha256};

use crate::quantity::{In, Presentation};

/// SHA-256, hexadecimal, of the compact JSON of the parsed request: base SI, declared
/// order, absent members left out, without tags and without the shared members.
pub fn request_digest<R: Serialize>(request: &R) -> String {
    let mut hash = Hashing(Sha256::new());
    // writing into a hash cannot fail, and a request holds nothing JSON cannot carry
    let written = serde_json::to_writer(&mut hash, &In(Presentation::Digest, request));
    debug_assert!(written.is_ok());
    hash.0
        .finalize()
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

struct Hashing(Sha256);

impl std::io::Write for Hashing {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.0.update(bytes);
        Ok(bytes.len())
    }
    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}
