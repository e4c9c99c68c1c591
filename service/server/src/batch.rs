//! Many requests of one calculation in one body: reading the envelope, merging defaults,
//! answering in order. Streaming is not here.

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::fmt;
use std::ops::ControlFlow;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use bearwell_engine::catalogue::refusals;
use bearwell_engine::contract::{Issue, list_length};
use bearwell_engine::limits::{BATCH_ITEMS, BATCH_PLANS, NESTING};
use bearwell_engine::text::Label;
use serde::de::{MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use serde_json::value::RawValue;
use serde_json::{Value, json};
use utoipa::ToSchema;
use validator::Validate;

use crate::problem::{self, Problem};
use crate::read::{self, Shape};
use crate::service::Service;
use crate::table::{Ask, Entry, JSON};

/// A batch as it was read.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Batch<'a> {
    #[serde(borrow)]
    defaults: Option<Members<'a>>,
    #[serde(borrow)]
    items: Vec<Item<'a>>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Item<'a> {
    id: Label,
    #[serde(borrow)]
    request: &'a RawValue,
}

/// Members of an object, unread and in order.
#[derive(Debug, Default)]
struct Members<'a>(Vec<(Cow<'a, str>, &'a RawValue)>);

/// How many items came to what.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, ToSchema)]
#[schema(as = BatchCounts)]
pub struct Counts {
    /// Items in the batch.
    pub item_count: usize,
    /// Items with an answer.
    pub answer_count: usize,
    /// Items with a problem.
    pub problem_count: usize,
}

/// Most items in a batch of this calculation.
pub fn most_items(entry: &Entry) -> usize {
    if entry.heavy {
        BATCH_PLANS
    } else {
        BATCH_ITEMS
    }
}

impl<'a> Batch<'a> {
    /// Reads the envelope of a JSON body; the requests in it stay unread.
    pub fn from_json(body: &'a [u8], service: &Service, entry: &Entry) -> Result<Self, Problem> {
        let root = envelope();
        let shape = Shape {
            schemas: &service.schemas,
            root: &root,
            // object, list and item stand around each request
            nesting: NESTING + 3,
        };
        let batch: Self = read::parse(body, shape)?;
        batch.checked(entry, |at| format!("/items/{at}"), "/items")
    }

    /// Reads one item a line. Places count the lines from 0.
    pub fn from_lines(body: &'a [u8], service: &Service, entry: &Entry) -> Result<Self, Problem> {
        let root = item();
        let shape = Shape {
            schemas: &service.schemas,
            root: &root,
            nesting: NESTING + 1,
        };
        let mut items = Vec::new();
        for (at, line) in body.split(|byte| *byte == b'\n').enumerate() {
            if line.trim_ascii().is_empty() {
                continue;
            }
            let read = read::parse(line, shape).map_err(|mut problem| {
                for issue in &mut problem.errors {
                    issue.pointer = format!("/{at}{}", issue.pointer);
                }
                problem.detail = format!("line {}: {}", at + 1, problem.detail);
                problem
            })?;
            items.push(read);
        }
        let batch = Self {
            defaults: None,
            items,
        };
        batch.checked(entry, |at| format!("/{at}"), "")
    }

    fn checked(
        self,
        entry: &Entry,
        place: impl Fn(usize) -> String,
        list: &str,
    ) -> Result<Self, Problem> {
        let mut issues = Vec::new();
        list_length(&mut issues, list, self.items.len(), 1, most_items(entry));
        let mut seen = BTreeSet::new();
        for (at, item) in self.items.iter().enumerate() {
            let pointer = || format!("{}/id", place(at));
            if item.id.validate().is_err() {
                let detail = "1 to 64 characters without control characters";
                issues.push(Issue::new(pointer(), &refusals::TEXT_LENGTH, detail));
            } else if !seen.insert(item.id.as_str()) {
                let detail = format!("`{}` stands twice", item.id);
                issues.push(Issue::new(pointer(), &refusals::DUPLICATE_LABEL, detail));
            }
        }
        if issues.is_empty() {
            Ok(self)
        } else {
            Err(Problem::of(&problem::VALUES_OUT_OF_RANGE, issues))
        }
    }

    /// Answers item by item, in order; `each` takes an item as JSON and says whether to go
    /// on. `None` when it was told not to, or stopped.
    pub fn answer(
        &self,
        service: &Service,
        entry: &Entry,
        stop: &Arc<AtomicBool>,
        mut each: impl FnMut(Vec<u8>) -> ControlFlow<()>,
    ) -> Option<Counts> {
        let mut counts = Counts::default();
        for item in &self.items {
            let body = self.body(item);
            let reply = service.answer(
                entry,
                &Ask {
                    body: body.as_bytes(),
                    csv: None,
                    schemas: &service.schemas,
                    media: JSON,
                    form: None,
                    stop: Some(stop.clone()),
                },
            );
            if stop.load(Ordering::Relaxed) {
                return None;
            }
            counts.item_count += 1;
            let (key, value) = match reply {
                Ok(reply) => {
                    counts.answer_count += 1;
                    ("answer", reply.body)
                }
                Err(problem) => {
                    counts.problem_count += 1;
                    ("problem", serde_json::to_vec(&problem).unwrap_or_default())
                }
            };
            let mut out = Vec::with_capacity(value.len() + 32);
            out.extend_from_slice(b"{\"id\":");
            out.extend(serde_json::to_vec(&item.id).unwrap_or_default());
            out.extend_from_slice(b",\"");
            out.extend_from_slice(key.as_bytes());
            out.extend_from_slice(b"\":");
            out.extend(value);
            out.push(b'}');
            if each(out).is_break() {
                return None;
            }
        }
        Some(counts)
    }

    /// The request of an item, with the defaults it does not set itself. Absent and null
    /// are the same.
    fn body(&self, item: &Item<'a>) -> Cow<'a, str> {
        let raw = item.request.get();
        let Some(defaults) = &self.defaults else {
            return raw.into();
        };
        // what is no object is refused as it stands
        let Ok(own) = serde_json::from_str::<Members>(raw) else {
            return raw.into();
        };
        let given = own.0.iter().filter(|(name, value)| {
            value.get() != "null" || !defaults.0.iter().any(|(d, _)| d == name)
        });
        let filled = defaults.0.iter().filter(|(name, _)| {
            !own.0
                .iter()
                .any(|(o, value)| o == name && value.get() != "null")
        });
        let mut text = String::with_capacity(raw.len() + 64);
        for (name, value) in given.chain(filled) {
            text.push(if text.is_empty() { '{' } else { ',' });
            text.push_str(&json!(name).to_string());
            text.push(':');
            text.push_str(value.get());
        }
        if text.is_empty() {
            text.push('{');
        }
        text.push('}');
        text.into()
    }
}

/// The whole answer of a batch; `None` when it was stopped.
pub fn answer_json(
    batch: &Batch,
    service: &Service,
    entry: &Entry,
    stop: &Arc<AtomicBool>,
) -> Option<Vec<u8>> {
    let mut out = b"{\"items\":[".to_vec();
    let counts = batch.answer(service, entry, stop, |item| {
        if !out.ends_with(b"[") {
            out.push(b',');
        }
        out.extend(item);
        ControlFlow::Continue(())
    })?;
    out.extend_from_slice(b"],\"counts\":");
    out.extend(serde_json::to_vec(&counts).unwrap_or_default());
    out.extend_from_slice(b"}\n");
    Some(out)
}

/// Schema of an item whose request is not looked at.
fn item() -> Value {
    json!({
        "type": "object",
        "required": ["id", "request"],
        "properties": { "id": { "type": "string" }, "request": {} },
        "additionalProperties": false
    })
}

/// Schema of the envelope.
fn envelope() -> Value {
    json!({
        "type": "object",
        "required": ["items"],
        "properties": {
            "defaults": { "type": ["object", "null"] },
            "items": { "type": "array", "items": item() }
        },
        "additionalProperties": false
    })
}

impl<'de: 'a, 'a> Deserialize<'de> for Members<'a> {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        struct All;
        impl<'de> Visitor<'de> for All {
            type Value = Members<'de>;
            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("an object")
            }
            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Members<'de>, A::Error> {
                let mut all = Vec::new();
                while let Some(member) = map.next_entry()? {
                    all.push(member);
                }
                Ok(Members(all))
            }
        }
        d.deserialize_map(All)
    }
}
