//! Paths of the API document, with the executed example of every operation, and the
//! responses and headers they share.

use bearwell_engine::catalogue::refusals;
use bearwell_engine::contract::Issue;
use serde_json::{Map, Value, json};

use super::answers::stem;
use crate::batch::{self, Batch};
use crate::examples;
use crate::pages::{self, PAGES, Page};
use crate::problem::{self, Kind, Problem};
use crate::schemas::reference;
use crate::service::Service;
use crate::table::{Ask, CSV, Entry, JSON, Names};

/// The media type of one item a line.
const NDJSON: &str = "application/x-ndjson";
/// Name of the example every calculation has.
const EXAMPLE: &str = "linnet";

/// Every path.
pub fn paths(service: &Service) -> Value {
    let mut paths = Map::new();
    for (entry, names) in service.entries.iter().zip(&service.names) {
        let one = json!({ "post": calculation(service, entry, names) });
        let many = json!({ "post": calculation_batch(service, entry, names) });
        paths.insert(format!("/v1/{}", entry.name), one);
        paths.insert(format!("/v1/{}/batch", entry.name), many);
    }
    for page in PAGES {
        paths.insert(page.path.to_owned(), json!({ "get": get(page) }));
    }
    paths.insert(
        "/problems/{code}".to_owned(),
        json!({ "get": problem_page() }),
    );
    paths.insert(
        "/openapi.json".to_owned(),
        json!({ "get": this_document() }),
    );
    paths.into()
}

fn calculation(service: &Service, entry: &Entry, names: &Names) -> Value {
    let mut content = Map::new();
    content.insert(
        JSON.to_owned(),
        json!({ "schema": reference(&format!("{}Answer", stem(names))) }),
    );
    let mut request = json!({ "schema": reference(&names.request) });
    if let Some(body) = examples::request(entry.name, EXAMPLE) {
        request["examples"] = example(parsed(body));
        let ask = Ask {
            body,
            csv: None,
            schemas: &service.schemas,
            media: JSON,
            form: None,
            stop: None,
        };
        if let Ok(reply) = service.answer(entry, &ask) {
            content[JSON]["examples"] = example(parsed(&reply.body));
        }
    }
    let mut forms = String::new();
    for sheet in (entry.sheets)() {
        content.insert(
            sheet.media.to_owned(),
            json!({ "schema": { "type": "string" } }),
        );
        forms += &format!(
            "\n\n`{}`, form `{}`: {}",
            sheet.media, sheet.form, sheet.about
        );
    }
    let mut content_read = Map::new();
    content_read.insert(JSON.to_owned(), request);
    if let Some(csv) = entry.csv {
        let body = super::csv::body(service, entry, csv, EXAMPLE);
        content_read.insert(CSV.to_owned(), body);
    }
    let about = service.schemas.get(&names.request);
    let about = about.and_then(|schema| schema["description"].as_str());
    json!({
        "operationId": operation(entry.name),
        "tags": ["calculations"],
        "summary": entry.summary,
        "description": format!("{}{forms}", about.unwrap_or(entry.summary)),
        "requestBody": { "required": true, "content": content_read },
        "responses": responses("The answer.", content, &[400, 406, 413, 415, 422, 500, 503]),
    })
}

fn calculation_batch(service: &Service, entry: &Entry, names: &Names) -> Value {
    let stem = stem(names);
    let mut request = json!({ "schema": reference(&format!("{stem}BatchRequest")) });
    let mut answer = json!({ "schema": reference(&format!("{stem}BatchAnswer")) });
    if let Some(body) = examples::shortest(entry.name) {
        let sent = json!({ "items": [
            { "id": "lot-31", "request": parsed(body) },
            { "id": "lot-32", "request": {} },
        ] });
        let body = sent.to_string();
        let batch = Batch::from_json(body.as_bytes(), service, entry).ok();
        let replied =
            batch.and_then(|b| batch::answer_json(&b, service, entry, &Default::default()));
        request["examples"] = example(sent);
        if let Some(bytes) = replied {
            answer["examples"] = example(parsed(&bytes));
        }
    }
    let lines = json!({ "schema": { "type": "string" } });
    let mut content = Map::new();
    content.insert(JSON.to_owned(), answer);
    content.insert(NDJSON.to_owned(), lines.clone());
    json!({
        "operationId": format!("{}_batch", operation(entry.name)),
        "tags": ["batches"],
        "summary": format!("Many at once: {}", entry.summary),
        "description": format!(
            "Up to {} items, answered in order. Once the envelope can be read the status is 200, and each item carries \
    its own answer or problem. With `Accept: {NDJSON}` each item is sent as a `{stem}BatchResult` a line as soon as it is done; the last \
    line holds `counts` and, as `content_digest`, the SHA-256 of all lines before it. A stream without that line is incomplete. \
    With `Content-Type: {NDJSON}` each line of the body is a `{stem}BatchItem`; places then count the lines from 0.",
            batch::most_items(entry)
        ),
        "requestBody": { "required": true, "content": { JSON: request, NDJSON: lines } },
        "responses": responses("What became of every item.", content, &[400, 406, 413, 415, 422, 500, 503]),
    })
}

fn get(page: &Page) -> Value {
    let mut named = Vec::new();
    let name = (page.schema)(&mut named);
    let mut content = Map::new();
    let mut body = json!({ "schema": reference(&name) });
    body["example"] = parsed(&(page.body)());
    content.insert(JSON.to_owned(), body);
    let mut statuses = vec![406, 500];
    match page.path {
        "/problems" => {
            content.insert(
                "text/html".to_owned(),
                json!({ "schema": { "type": "string" } }),
            );
        }
        "/health/ready" => statuses.push(503),
        _ => {}
    }
    json!({
        "operationId": page.operation,
        "tags": [page.tag],
        "summary": page.summary,
        "description": page.about,
        "responses": responses(page.summary, content, &statuses),
    })
}

fn problem_page() -> Value {
    let kind = &problem::NOT_COMPUTABLE;
    let mut content = Map::new();
    let all = pages::all_problems();
    let example = serde_json::to_value(all.iter().find(|p| p.code == kind.slug));
    content.insert(
        JSON.to_owned(),
        json!({ "schema": reference("ProblemEntry"), "example": example.unwrap_or_default() }),
    );
    content.insert(
        "text/html".to_owned(),
        json!({ "schema": { "type": "string" } }),
    );
    json!({
        "operationId": "problem",
        "tags": ["service"],
        "summary": "One problem or refusal",
        "description": "The page that the `type` of a problem points at; also one for each code of a refusal.",
        "parameters": [{
            "name": "code",
            "in": "path",
            "required": true,
            "description": "Code of a problem or of a refusal.",
            "schema": { "type": "string" },
            "example": kind.slug,
        }],
        "responses": responses("What it means and what to do.", content, &[404, 406, 500]),
    })
}

fn this_document() -> Value {
    let mut content = Map::new();
    content.insert(
        JSON.to_owned(),
        json!({ "schema": { "type": "object" }, "example": { "openapi": "3.1.0" } }),
    );
    json!({
        "operationId": "openapi",
        "tags": ["service"],
        "summary": "This document",
        "description": "The API document. It is the same file as in the sources of this version.",
        "responses": responses("The document.", content, &[406, 500]),
    })
}

fn operation(name: &str) -> String {
    name.replace('-', "_")
}

fn parsed(bytes: &[u8]) -> Value {
    serde_json::from_slice(bytes).unwrap_or_default()
}

fn example(value: Value) -> Value {
    json!({ EXAMPLE: { "value": value } })
}

fn responses(text: &str, content: Map<String, Value>, problems: &[u16]) -> Value {
    let header = |name: &str| json!({ "$ref": format!("#/components/headers/{name}") });
    let mut all = Map::new();
    all.insert(
        "200".to_owned(),
        json!({
            "description": text,
            "headers": {
                "Content-Digest": header("Content-Digest"),
                "Vary": header("Vary"),
                "Bearwell-Version": header("Bearwell-Version"),
                "X-Request-Id": header("X-Request-Id"),
            },
            "content": content,
        }),
    );
    for status in problems {
        let target = format!("#/components/responses/{}", response_name(*status));
        all.insert(status.to_string(), json!({ "$ref": target }));
    }
    all.into()
}

/// Headers of the responses.
pub fn headers() -> Value {
    let header = |text: &str| json!({ "description": text, "schema": { "type": "string" } });
    json!({
        "Content-Digest": header("SHA-256 of the content (RFC 9530). Left out where the content is streamed."),
        "Vary": header("`Accept`: the media type depends on it."),
        "Bearwell-Version": header("Version of the program."),
        "X-Request-Id": header("The request id that was sent, or a new one."),
        "Retry-After": header("Seconds after which to send the same request again."),
    })
}

fn response_name(status: u16) -> &'static str {
    match status {
        400 => "BadRequest",
        404 => "NotFound",
        406 => "NotAcceptable",
        413 => "ContentTooLarge",
        415 => "UnsupportedMediaType",
        422 => "UnprocessableContent",
        503 => "ServiceUnavailable",
        _ => "InternalServerError",
    }
}

/// The responses that are problems, one for each status.
pub fn problems() -> Value {
    let faults = |pointer: &str, code, detail: &str| vec![Issue::new(pointer, code, detail)];
    let shown: [(&'static Kind, Problem); 8] = [
        (
            &problem::MALFORMED_BODY,
            Problem::of(
                &problem::MALFORMED_BODY,
                faults("", &refusals::NOT_JSON, "expected value at line 1 column 9"),
            ),
        ),
        named(&problem::UNKNOWN_PATH, "nothing at `/v1/helix`"),
        named(&problem::NOT_ACCEPTABLE, "available here: application/json"),
        named(&problem::BODY_TOO_LARGE, "at most 2097152 bytes"),
        named(
            &problem::UNSUPPORTED_MEDIA_TYPE,
            "read here: application/json",
        ),
        (
            &problem::INVALID_REQUEST,
            Problem::of(
                &problem::INVALID_REQUEST,
                faults(
                    "/shaft/round/outside_diameter/unit",
                    &refusals::UNKNOWN_UNIT,
                    "unknown unit `inch`: write `in`",
                ),
            ),
        ),
        (&problem::INTERNAL_ERROR, Problem::internal()),
        named(&problem::OVERLOADED, "too many calculations are waiting"),
    ];
    let mut all = Map::new();
    for (kind, example) in shown {
        let mut response = json!({
            "description": format!("{} {}", kind.title, kind.text),
            "content": { "application/problem+json": { "schema": reference("Problem"), "example": example } },
        });
        if kind.status == 503 {
            response["headers"] =
                json!({ "Retry-After": { "$ref": "#/components/headers/Retry-After" } });
        }
        all.insert(response_name(kind.status).to_owned(), response);
    }
    all.into()
}

fn named(kind: &'static Kind, detail: &str) -> (&'static Kind, Problem) {
    (kind, Problem::new(kind, detail))
}
