//! How the API document tells of a request in CSV, with its executed example.

use serde_json::{Value, json};

use crate::examples;
use crate::service::Service;
use crate::table::{Ask, CsvBody, Entry, JSON};

/// The media type of a request in CSV.
pub fn body(service: &Service, entry: &Entry, csv: CsvBody, example: &str) -> Value {
    let mut body = json!({ "schema": { "type": "string", "description": about(csv) } });
    if let Some(text) = examples::csv(entry.name, example) {
        let ask = Ask {
            body: text,
            csv: Some(csv),
            schemas: &service.schemas,
            media: JSON,
            form: None,
            stop: None,
        };
        // what is shown here is answered
        if service.answer(entry, &ask).is_ok() {
            let text = String::from_utf8_lossy(text);
            body["examples"] = json!({ example: { "value": text } });
        }
    }
    body
}

fn about(csv: CsvBody) -> String {
    let CsvBody { table, notes } = csv;
    let notes = notes.map(|member| {
        format!(
            " A column `note`, without a unit, holds text; it becomes the member `{member}`, a list of \
            `{{\"row\": <from 0>, \"text\": \"...\"}}` of the rows whose note is not empty."
        )
    });
    format!(
        "The same request with its table `{table}` as CSV; the same answer byte for byte, and faults at the same places, \
        told with line and column. UTF-8, with or without a byte order mark. Leading lines that begin with `#` are, without that mark, \
        together one JSON object: the request without `{table}`. Then comes CSV by RFC 4180: fields between commas, lines that \
        end in LF or CRLF. The header names each column with its unit, `name [unit]`, in any order; the unit may be left out for a \
        pure number only. Each further record is a row; its numbers are written as JSON writes them, and an empty field is null.{} \
        Blank lines may stand at the end only. Semicolons and tabs between fields, decimal commas and units in fields are refused.",
        notes.unwrap_or_default()
    )
}
