//! A request whose long table comes as CSV: lines that begin with `#` hold the rest of it as
//! JSON, a header names columns with their units. Here it is written as the JSON request it
//! stands for, which the reader of JSON judges; `tell.rs` puts the faults in the words of the
//! file, `lines.rs` knows what a CSV file is.

#[cfg(test)]
mod fault_tests;
mod lines;
mod tell;
#[cfg(test)]
mod tests;

use std::collections::BTreeMap;

use bearwell_engine::catalogue::refusals;
use bearwell_engine::contract::Issue;
use bearwell_engine::limits::NESTING;
use bearwell_engine::quantity::{RATIO, ROLES, Role};
use serde::de::IgnoredAny;
use serde_json::{Value, json};

use self::lines::Record;
use crate::problem::{self, Problem};
use crate::schemas::Schemas;

/// Name of the column that holds text.
pub const NOTE: &str = "note";
/// Most columns of a file: more than any table has, few enough to compare each with each.
const MOST_COLUMNS: usize = 100;

/// What a CSV body holds of a request.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CsvBody {
    /// The member that is the table.
    pub table: &'static str,
    /// The member that takes the texts of a column `note`, as a list of
    /// `{"row": <from 0>, "text": "..."}`; none where there is no such column.
    pub notes: Option<&'static str>,
}

/// A CSV body with the JSON request it stands for.
#[derive(Debug)]
pub struct Sheet {
    rules: CsvBody,
    json: String,
    /// Line of the header.
    header: usize,
    heads: Vec<Head>,
    /// For each column of the table, its place among the heads.
    numbers: Vec<usize>,
    rows: Vec<Record>,
    most_rows: usize,
    /// For each note, its row.
    noted: Vec<usize>,
}

/// A field of the header.
#[derive(Debug)]
struct Head {
    name: String,
    unit: Option<String>,
    /// It holds text.
    note: bool,
    /// What its numbers are; none where the table has no such column.
    role: Option<&'static Role>,
    /// Its name stood before.
    again: bool,
}

impl Sheet {
    /// Reads a body; `root` is the schema of the request.
    pub fn read(
        body: &[u8],
        rules: CsvBody,
        schemas: &Schemas,
        root: &Value,
    ) -> Result<Self, Problem> {
        let table = schemas.resolve(&root["properties"][rules.table]).0;
        let mut file = lines::file(body)?;
        let begin = object(&file.head, &mut file.faults)?;
        lines::header(file.records.first(), file.first_line, &mut file.faults);
        if !file.faults.is_empty() {
            return Err(Problem::of(&problem::MALFORMED_CSV, file.faults));
        }
        let Some(begin) = begin else {
            let detail = "the lines with `#` hold another JSON value than an object";
            return Err(not_a_request("", &refusals::WRONG_TYPE, detail.to_owned()));
        };
        let mut records = file.records.into_iter();
        let (header, fields) = match records.next() {
            Some(first) => (first.line, first.fields),
            None => return Err(Problem::internal()),
        };
        if fields.len() > MOST_COLUMNS {
            let pointer = format!("/{}/columns", rules.table);
            let detail = format!(
                "line {header}: {} columns, at most {MOST_COLUMNS} are looked at",
                fields.len()
            );
            return Err(not_a_request(&pointer, &refusals::LIST_TOO_LONG, detail));
        }
        let heads = heads(fields.iter(), rules, &table["x-table"]);
        let numbers = (0..heads.len()).filter(|at| !heads[*at].note).collect();
        let most_rows = table["properties"]["rows"]["maxItems"].as_u64();
        let mut sheet = Self {
            rules,
            json: String::with_capacity(2 * body.len() + 256),
            header,
            heads,
            numbers,
            rows: records.collect(),
            most_rows: most_rows.map_or(usize::MAX, |most| most as usize),
            noted: Vec::new(),
        };
        sheet.write(begin);
        Ok(sheet)
    }

    /// The JSON request.
    pub fn json(&self) -> &[u8] {
        self.json.as_bytes()
    }

    /// Writes the request. What is at fault in the file is written so that it is at fault in
    /// the JSON too. The members of the file come first, so that it is the others that stand
    /// there again.
    fn write(&mut self, begin: Begin) {
        let columns: Vec<Value> = self
            .numbers
            .iter()
            .map(|at| self.heads[*at].json())
            .collect();
        let mut out = std::mem::take(&mut self.json);
        out += &format!("{{{}:{{\"columns\":", json!(self.rules.table));
        out += &json!(columns).to_string();
        out += ",\"rows\":[";
        // of a table of a wild length no cell is looked at; one row too many says it all
        let wild = self.rows.len() > self.most_rows;
        let written = self.rows.len().min(self.most_rows.saturating_add(1));
        for (at, row) in self.rows[..written].iter().enumerate() {
            out += if at == 0 { "[" } else { ",[" };
            if wild {
                out += &vec!["0"; self.numbers.len()].join(",");
            } else {
                self.write_row(row, &mut out);
            }
            out.push(']');
        }
        out += "]}";
        if let Some(member) = self.rules.notes.filter(|_| !wild) {
            let again = begin.members.contains_key(member)
                || self.heads.iter().any(|head| head.note && head.again);
            for column in (0..self.heads.len()).filter(|at| self.heads[*at].note) {
                let (noted, notes) = self.notes(column);
                if again || !notes.is_empty() {
                    out += &format!(",{}:{}", json!(member), json!(notes));
                    self.noted = noted;
                }
            }
        }
        if !begin.rest.trim_ascii_start().starts_with('}') {
            out.push(',');
        }
        out += begin.rest;
        self.json = out;
    }

    /// The numbers of a row.
    fn write_row(&self, row: &Record, out: &mut String) {
        let mut cells: Vec<String> = Vec::with_capacity(self.numbers.len());
        for at in &self.numbers {
            if let Some(text) = row.fields.get(*at) {
                cells.push(self.heads[*at].cell(text));
            }
        }
        // a row of another length stays one, wherever a column of text stands
        let ragged = row.fields.len() != self.heads.len();
        let short = row.fields.len() < self.heads.len();
        if short && !self.numbers.is_empty() {
            cells.truncate(self.numbers.len() - 1);
        } else if ragged {
            cells.resize(self.numbers.len() + 1, "0".to_owned());
        }
        *out += &cells.join(",");
    }

    /// The rows that have a note, and the notes.
    fn notes(&self, column: usize) -> (Vec<usize>, Vec<Value>) {
        let text = |row: &Record| row.fields.get(column).map(str::to_owned);
        let all = self.rows.iter().map(text).enumerate();
        all.filter_map(|(row, text)| Some((row, text?)))
            .filter(|(_, text)| !blank(text).is_empty())
            .map(|(row, text)| (row, json!({ "row": row, "text": text })))
            .unzip()
    }
}

impl Head {
    fn json(&self) -> Value {
        let pure = |role: &Role| role.units.iter().any(|unit| unit.name == "1");
        match &self.unit {
            Some(unit) => json!({ "name": self.name, "unit": unit }),
            // what an unknown column holds is not asked before it is known
            None if self.role.is_none_or(pure) => json!({ "name": self.name, "unit": "1" }),
            None => json!({ "name": self.name }),
        }
    }

    /// A cell: a number as it is written, null where it is empty, else a text, which is
    /// no number. Cells of a column that cannot be told are not looked at.
    fn cell(&self, text: &str) -> String {
        let text = blank(text);
        match text {
            _ if self.role.is_none() || self.again => "0".to_owned(),
            "" => "null".to_owned(),
            _ if is_number(text) => text.to_owned(),
            _ => json!(text).to_string(),
        }
    }
}

/// The text without blanks around it.
fn blank(text: &str) -> &str {
    text.trim_matches([' ', '\t'])
}

/// Whether a text is a number as JSON writes it.
fn is_number(text: &str) -> bool {
    text.starts_with(|c: char| c == '-' || c.is_ascii_digit())
        && text.ends_with(|c: char| c.is_ascii_digit())
        && serde_json::from_str::<IgnoredAny>(text).is_ok()
}

/// What each field of a header says.
fn heads<'a>(fields: impl Iterator<Item = &'a str>, rules: CsvBody, told: &Value) -> Vec<Head> {
    let mut heads: Vec<Head> = Vec::new();
    for field in fields {
        let field = blank(field);
        let split = field.strip_suffix(']').and_then(|f| f.split_once('['));
        let (name, unit) = match split {
            Some((name, unit)) => (blank(name), Some(blank(unit).to_owned())),
            None => (field, None),
        };
        let note = rules.notes.is_some() && name == NOTE && unit.is_none();
        let column = told.as_array().into_iter().flatten();
        let column = column.into_iter().find(|column| column["name"] == name);
        let role = column.map(|c| {
            let role = ROLES.iter().find(|role| c["quantity"] == role.name);
            role.copied().unwrap_or(RATIO)
        });
        let again = heads
            .iter()
            .any(|head| head.name == name && head.note == note);
        heads.push(Head {
            name: name.to_owned(),
            unit,
            note,
            role,
            again,
        });
    }
    heads
}

/// The JSON before the table.
struct Begin<'a> {
    members: BTreeMap<String, IgnoredAny>,
    /// Its text after the first bracket.
    rest: &'a str,
}

/// The object in the lines with `#`; `None` where they hold something else.
fn object<'a>(head: &'a str, faults: &mut Vec<Issue>) -> Result<Option<Begin<'a>>, Problem> {
    let head = match head.trim_ascii() {
        "" => "{}",
        head => head,
    };
    if super::nested(head) > NESTING {
        return Err(super::too_deep(NESTING));
    }
    if let Err(error) = serde_json::from_str::<IgnoredAny>(head) {
        let detail = format!("the lines with `#` are together no JSON: {error}");
        faults.push(Issue::new("", &refusals::NOT_JSON, detail));
    }
    // a name that cannot be decoded is told by the reader
    let members = serde_json::from_str(head).unwrap_or_default();
    let rest = head.strip_prefix('{');
    Ok(rest.map(|rest| Begin { members, rest }))
}

fn not_a_request(
    pointer: &str,
    code: &'static bearwell_engine::catalogue::RefusalDef,
    detail: String,
) -> Problem {
    let issue = Issue::new(pointer, code, detail);
    Problem::of(&problem::INVALID_REQUEST, vec![issue])
}
