//! `bearwell selfcheck`: calculates every built-in example in this process and compares
//! it with what was approved. Its last line is one digest over all bytes, so that two
//! builds or two processors can be compared.

use std::io::{self, Write};
use std::process::ExitCode;

use sha2::{Digest, Sha256};

use crate::command::calc;
use crate::examples::{EXAMPLES, Example};
use crate::service::Service;
use crate::table::JSON;

/// Checks every example; ends with 1 when one differs or was never approved.
pub fn run(out: &mut impl Write) -> io::Result<ExitCode> {
    let service = Service::standard();
    let mut digest = Sha256::new();
    let (mut answers, mut drawings, mut different) = (0, 0, 0);
    for example in EXAMPLES {
        let bytes = answer(service, example, JSON);
        digest.update(&bytes);
        answers += 1;
        let said = match example.golden {
            Some(golden) if golden == bytes => None,
            Some(_) => Some("differs from what was approved"),
            None => Some("was never approved"),
        };
        if let Some(said) = said {
            different += 1;
            writeln!(out, "{}/{} {said}", example.noun, example.name)?;
        }
        let Some(entry) = service.entry(example.noun) else {
            continue;
        };
        for media in entry.media().into_iter().skip(1) {
            digest.update(answer(service, example, media));
            drawings += 1;
        }
    }
    let sum: String = digest
        .finalize()
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect();
    writeln!(
        out,
        "{answers} answers and {drawings} drawings, {different} different\nsha256 {sum}"
    )?;
    Ok(ExitCode::from(u8::from(different > 0)))
}

/// The bytes of an answer or of a problem.
fn answer(service: &Service, example: &Example, media: &str) -> Vec<u8> {
    let Some(entry) = service.entry(example.noun) else {
        return Vec::new();
    };
    match calc(service, entry, example.request, media, None) {
        Ok(bytes) => bytes,
        Err(problem) => problem.to_bytes(),
    }
}
