//! The API document (OpenAPI 3.1), built from the types and the table of calculations.
//! Schemas come from `schemas`; here stand the paths, and the answers' envelopes.

mod answers;
mod csv;
mod operations;
#[cfg(test)]
mod tests;

use serde_json::{Value, json};

pub use answers::answers;

use crate::service::Service;

/// The document as it is served: pretty JSON with a line end.
pub fn document(service: &Service) -> String {
    let document = json!({
        "openapi": "3.1.0",
        "info": info(),
        "servers": [{ "url": "/", "description": "This service." }],
        "tags": [
            { "name": "calculations", "description": "One question, one answer. Nothing is stored; every call may be repeated." },
            { "name": "batches", "description": "Many questions of one kind in one call." },
            { "name": "catalogues", "description": "Every code, unit, reference and limit, with its text." },
            { "name": "service", "description": "What the service says of itself." },
        ],
        "paths": operations::paths(service),
        "components": {
            "schemas": service.schemas.all(),
            "responses": operations::problems(),
            "headers": operations::headers(),
        },
    });
    let mut text = serde_json::to_string_pretty(&document).expect("the document is JSON");
    text.push('\n');
    text
}

fn info() -> Value {
    json!({
        "title": "Bearwell",
        "version": crate::VERSION,
        "summary": "Calculations of helical pile foundations.",
        "description": "Every dimensional number is `{\"value\": 30, \"unit\": \"in\"}`; SI and US customary units may be mixed. \
    Answers are printed in `output_units` to nine significant digits. The same request gives the same bytes. \
    Absent and null are the same; unknown members are refused with the nearest known name. \
    Whatever is not 2xx is a problem (RFC 9457, `application/problem+json`) with every fault of a stage and its place. \
    Members and codes may be added to answers; ignore what you do not know. \
    These are calculations, not a design: a licensed engineer of record reviews and seals, and the local code and its officials govern.",
        "license": { "name": "Apache-2.0", "identifier": "Apache-2.0" },
        "contact": { "name": "The Bearwell contributors" },
    })
}
