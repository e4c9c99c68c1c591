//! What a CSV file is: its encoding, the lines with `#` before the header, and records quoted
//! as RFC 4180 says. The crate that takes the fields apart accepts anything, so what the RFC
//! does not allow is found here first. Nothing is known of requests.

use bearwell_engine::catalogue::{RefusalDef, refusals};
use bearwell_engine::contract::Issue;
use csv::{ReaderBuilder, StringRecord};

use super::{blank, is_number};
use crate::problem::{self, Problem};

/// Faults after which a file is not read on: it is something else than CSV.
const MOST_FAULTS: usize = 100;

/// A file, taken apart.
pub struct File {
    /// What the lines with `#` hold, the mark a blank, so that places in it are those of the
    /// file.
    pub head: String,
    /// Line that follows them.
    pub first_line: usize,
    /// The records, the header first.
    pub records: Vec<Record>,
    /// What is not as it ought to be; then the records are of no use.
    pub faults: Vec<Issue>,
}

/// A record with the line it begins in.
#[derive(Debug)]
pub struct Record {
    pub line: usize,
    pub fields: StringRecord,
}

/// Takes a body apart.
pub fn file(body: &[u8]) -> Result<File, Problem> {
    let text = std::str::from_utf8(body).map_err(|error| {
        let before = &body[..error.valid_up_to()];
        let line = 1 + before.iter().filter(|byte| **byte == b'\n').count();
        let detail = format!("not UTF-8 after byte {}", before.len());
        let fault = fault(line, &refusals::NOT_CSV, &detail);
        Problem::of(&problem::MALFORMED_CSV, vec![fault])
    })?;
    let mut rest = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut head = String::new();
    let mut first_line = 1;
    while rest.starts_with('#') {
        let end = rest.find('\n').map_or(rest.len(), |end| end + 1);
        head.push(' ');
        head.push_str(&rest[1..end]);
        rest = &rest[end..];
        first_line += 1;
    }
    let (starts, faults) = scan(rest, first_line);
    let mut records = Vec::new();
    if faults.is_empty() {
        let reader = ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .from_reader(rest.as_bytes());
        for (line, fields) in starts.iter().zip(reader.into_records()) {
            let fields = fields.map_err(|error| {
                tracing::error!(%error, "a file was scanned and cannot be read");
                Problem::internal()
            })?;
            records.push(Record {
                line: *line,
                fields,
            });
        }
        debug_assert_eq!(starts.len(), records.len());
    }
    Ok(File {
        head,
        first_line,
        records,
        faults,
    })
}

/// Adds what makes the first record no header; `first_line` is where it ought to be.
pub fn header(first: Option<&Record>, first_line: usize, faults: &mut Vec<Issue>) {
    // where the file could not be taken apart there is no first record either
    let Some(Record { line, fields }) = first else {
        if faults
            .iter()
            .all(|fault| fault.code == refusals::NOT_JSON.id)
        {
            let detail = "a header is expected, and the file ends";
            faults.push(fault(first_line, &refusals::NOT_CSV, detail));
        }
        return;
    };
    let begin = blank(&fields[0]);
    let sign = [(';', "semicolons"), ('\t', "tabs")];
    let sign = sign.iter().find(|(sign, _)| begin.contains(*sign));
    if let (1, Some((_, signs))) = (fields.len(), sign) {
        let detail = format!(
            "the header is one field with {signs} in it; separate the fields by commas and write \
             decimals with a point: whether a comma is a decimal mark here is not guessed"
        );
        faults.push(fault(*line, &refusals::CSV_SEPARATOR, &detail));
    } else if begin.starts_with('#') {
        let detail =
            "a line with `#` stands in quotation marks or behind blanks; send it as it was";
        faults.push(fault(*line, &refusals::NOT_CSV, detail));
    } else if fields.iter().all(|f| is_number(blank(f))) {
        let detail = "a header is expected, and numbers stand there";
        faults.push(fault(*line, &refusals::NOT_CSV, detail));
    }
}

/// Where a reader of the text is.
#[derive(Clone, Copy, PartialEq)]
enum At {
    /// At the beginning of a record.
    Record,
    /// At the beginning of another field.
    Field,
    /// In a field without quotation marks.
    Bare,
    /// Between the marks of a field.
    Quoted,
    /// Behind a mark that closes, or that is the first of two.
    Closed,
    /// In a line with a fault.
    Fault,
}

/// The line each record begins in, and every fault.
fn scan(text: &str, first_line: usize) -> (Vec<usize>, Vec<Issue>) {
    let (mut starts, mut faults) = (Vec::new(), Vec::new());
    let (mut at, mut line, mut opened, mut empty) = (At::Record, first_line, 0, None);
    let bytes = text.as_bytes();
    for (i, byte) in bytes.iter().enumerate() {
        if faults.len() >= MOST_FAULTS {
            return (starts, faults);
        }
        let wrong = |what| Some(fault(line, &refusals::NOT_CSV, what));
        let ends = *byte == b'\n' || *byte == b'\r' && bytes.get(i + 1) == Some(&b'\n');
        if at == At::Record && !ends {
            // blank lines may only stand at the end
            if let Some(empty) = empty.take() {
                faults.push(fault(
                    empty,
                    &refusals::NOT_CSV,
                    "a blank line before a record",
                ));
            }
            starts.push(line);
        }
        let (next, found) = match (at, *byte) {
            (At::Quoted, b'"') => (At::Closed, None),
            (At::Quoted, _) => (At::Quoted, None),
            (At::Fault, b'\n') => (At::Record, None),
            (At::Fault, _) => (At::Fault, None),
            (at, b'\r') if ends => (at, None),
            (_, b'\r') => (At::Fault, wrong("a carriage return without a line feed")),
            (At::Record, b'\n') => {
                empty = empty.or(Some(line));
                (At::Record, None)
            }
            (_, b'\n') => (At::Record, None),
            (_, b',') => (At::Field, None),
            (At::Record | At::Field, b'"') => {
                opened = line;
                (At::Quoted, None)
            }
            (At::Closed, b'"') => (At::Quoted, None),
            (At::Closed, _) => (At::Fault, wrong("text behind a quotation mark that closes")),
            (At::Bare, b'"') => (
                At::Fault,
                wrong("a quotation mark within a field that does not begin with one"),
            ),
            (At::Record | At::Field | At::Bare, _) => (At::Bare, None),
        };
        faults.extend(found);
        at = next;
        line += usize::from(*byte == b'\n');
    }
    if at == At::Quoted {
        let detail = "a quotation mark is opened and never closed";
        faults.push(fault(opened, &refusals::NOT_CSV, detail));
    }
    (starts, faults)
}

fn fault(line: usize, code: &'static RefusalDef, detail: &str) -> Issue {
    Issue::new("", code, format!("line {line}: {detail}"))
}
