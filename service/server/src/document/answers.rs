//! Schemas of the envelopes that hold for every calculation: answers and batches.

use bearwell_engine::contract::{
    Caution, Check, DefaultUsed, MethodUse, Provenance, Verdict, VerdictReason, Warning,
};
use bearwell_engine::text::Label;
use bearwell_engine::trace::Step;
use serde_json::{Value, json};

use crate::batch::Counts;
use crate::pages::PAGES;
use crate::problem::Problem;
use crate::schemas::{Schemas, collect, reference};
use crate::table::Names;

/// Name shared by all schemas of a calculation: `HelixCapacity` for
/// `HelixCapacityRequest`.
pub fn stem(names: &Names) -> &str {
    let request = &names.request;
    request.strip_suffix("Request").unwrap_or(request)
}

/// Adds the schemas of answers, batches, problems and pages.
pub fn answers(schemas: &mut Schemas, names: &[Names]) {
    let mut named = Vec::new();
    collect::<Verdict>(&mut named);
    collect::<VerdictReason>(&mut named);
    collect::<Check>(&mut named);
    collect::<Warning>(&mut named);
    collect::<Caution>(&mut named);
    collect::<MethodUse>(&mut named);
    collect::<DefaultUsed>(&mut named);
    collect::<Provenance>(&mut named);
    collect::<Step>(&mut named);
    collect::<Problem>(&mut named);
    collect::<Counts>(&mut named);
    collect::<Label>(&mut named);
    for page in PAGES {
        (page.schema)(&mut named);
    }
    schemas.add(named);
    for names in names {
        let stem = stem(names);
        schemas.put(format!("{stem}Answer"), answer(&names.outcome));
        schemas.put(format!("{stem}BatchRequest"), batch_request(&names.request));
        schemas.put(format!("{stem}BatchItem"), batch_item(&names.request));
        schemas.put(format!("{stem}BatchAnswer"), batch_answer(stem));
        schemas.put(format!("{stem}BatchResult"), batch_result(stem));
    }
}

fn with(schema: Value, text: &str) -> Value {
    let mut schema = schema;
    schema["description"] = text.into();
    schema
}

fn list(name: &str, text: &str) -> Value {
    json!({ "type": "array", "items": reference(name), "description": text })
}

fn answer(outcome: &str) -> Value {
    json!({
        "type": "object",
        "description": "The answer: a verdict with its reasons, the numbers, every check, and what they rest on.",
        "required": ["verdict", "verdict_reasons", "result", "checks", "warnings", "cautions", "methods", "defaults", "provenance"],
        "properties": {
            "verdict": with(reference("Verdict"), "Whether it may be used as asked."),
            "verdict_reasons": list("VerdictReason", "What decided the verdict."),
            "result": with(reference(outcome), "The numbers."),
            "checks": list("Check", "Every demand against its capacity."),
            "warnings": list("Warning", "Worth knowing; changes no verdict by itself."),
            "cautions": list("Caution", "To be shown to the reader."),
            "methods": list("MethodUse", "Methods used, with their versions."),
            "defaults": list("DefaultUsed", "Published or customary values taken because the request left them out."),
            "provenance": with(reference("Provenance"), "What the answer rests on."),
            "steps": list("Step", "The working, in order, where `include` asked for `steps`."),
        },
    })
}

fn id() -> Value {
    with(
        reference("Label"),
        "Name of the item; no two alike; echoed.",
    )
}

fn batch_request(request: &str) -> Value {
    let stem = request.strip_suffix("Request").unwrap_or(request);
    json!({
        "type": "object",
        "description": "Many requests of one calculation.",
        "required": ["items"],
        "properties": {
            "defaults": {
                "type": ["object", "null"],
                "description": "Members of the request that every item takes over as a whole unless it sets them itself.",
            },
            "items": {
                "type": "array",
                "items": reference(&format!("{stem}BatchItem")),
                "minItems": 1,
                "description": "The requests. An item that cannot be answered gets its own problem; the others are not touched.",
            },
        },
        "additionalProperties": false,
    })
}

fn batch_item(request: &str) -> Value {
    json!({
        "type": "object",
        "description": "One request of a batch; also one line of `application/x-ndjson`.",
        "required": ["id", "request"],
        "properties": {
            "id": id(),
            "request": {
                "description": format!("The request; with the defaults, a `{request}`. Whatever is wrong with it is said in its own problem."),
                "anyOf": [reference(request), {}],
            },
        },
        "additionalProperties": false,
    })
}

fn batch_result(stem: &str) -> Value {
    json!({
        "type": "object",
        "description": "What became of one item: an answer or a problem; also one line of `application/x-ndjson`.",
        "required": ["id"],
        "properties": {
            "id": { "type": "string", "description": "Name of the item." },
            "answer": reference(&format!("{stem}Answer")),
            "problem": with(reference("Problem"), "Why there is no answer; places are relative to the request of the item."),
        },
    })
}

fn batch_answer(stem: &str) -> Value {
    json!({
        "type": "object",
        "description": "What became of every item, in the order of the request.",
        "required": ["items", "counts"],
        "properties": {
            "items": list(&format!("{stem}BatchResult"), "One for each item, in order."),
            "counts": with(reference("BatchCounts"), "How many items came to what."),
        },
    })
}
