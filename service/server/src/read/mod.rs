//! From the bytes of a body to a request: syntax, shape, values. Physics is the engine's.
//! Each stage reports everything it finds, sorted by place.

mod csv;
mod located;
mod near;
mod pointer;
mod ranges;
mod strict;
mod table;
#[cfg(test)]
mod table_tests;
#[cfg(test)]
mod tests;
mod tree;
mod walk;

use bearwell_engine::catalogue::refusals;
use bearwell_engine::contract::{
    CALCULATION_BASIS, Calculation, Call, Issue, Options, sort_issues,
};
use bearwell_engine::limits::NESTING;
use serde::Deserialize;
use serde::de::IgnoredAny;
use serde_json::Value;

pub use csv::{CsvBody, Sheet};
pub use near::hint;
pub use pointer::Pointer;

use crate::problem::{self, Problem};
use crate::schemas::Schemas;

/// What a body ought to be.
#[derive(Clone, Copy)]
pub struct Shape<'a> {
    /// Where the schemas are.
    pub schemas: &'a Schemas,
    /// Schema of the whole body.
    pub root: &'a Value,
    /// Depth of nesting accepted.
    pub nesting: usize,
}

/// Reads a request and looks at its ranges. `more` adds faults of the shared members that
/// depend on what was asked besides the body.
pub fn request<C: Calculation>(
    body: &[u8],
    schemas: &Schemas,
    more: impl FnOnce(&Options) -> Option<Issue>,
) -> Result<Call<C::Request>, Problem> {
    let name = <C::Request as utoipa::ToSchema>::name();
    let shape = Shape {
        schemas,
        root: schemas.get(&name).unwrap_or(&Value::Null),
        nesting: NESTING,
    };
    let call: Call<C::Request> = parse(body, shape)?;
    let mut issues = Vec::new();
    C::lengths(&call.request, &mut issues);
    // lists of a wild length are refused before their elements are looked at
    if issues.is_empty() {
        issues.extend(ranges::ranges(&call.request, schemas, shape.root));
        issues.extend(other_basis(&call.options));
        issues.extend(more(&call.options));
    }
    if issues.is_empty() {
        return Ok(call);
    }
    Err(Problem::of(&problem::VALUES_OUT_OF_RANGE, issues))
}

fn other_basis(options: &Options) -> Option<Issue> {
    let wanted = options.require_basis.as_ref()?;
    (wanted != CALCULATION_BASIS).then(|| {
        let detail = format!("this service computes on `{CALCULATION_BASIS}`");
        Issue::new("/require_basis", &refusals::BASIS_DIFFERS, detail).limit(CALCULATION_BASIS)
    })
}

/// Reads a body as a `T`.
pub fn parse<'a, T: Deserialize<'a>>(body: &'a [u8], shape: Shape) -> Result<T, Problem> {
    let text = std::str::from_utf8(body)
        .map_err(|e| not_json(format!("not UTF-8 after byte {}", e.valid_up_to())))?;
    let mut json = serde_json::Deserializer::from_str(text);
    let read = T::deserialize(strict::Strict(&mut json));
    match read.and_then(|value| json.end().map(|()| value)) {
        Ok(value) => Ok(value),
        Err(error) => {
            let mut issues = explain(text, shape)?;
            if issues.is_empty() {
                issues.extend(located::located::<T>(text));
            }
            if issues.is_empty() {
                return Err(not_json(error.to_string()));
            }
            Err(Problem::of(&problem::INVALID_REQUEST, issues))
        }
    }
}

/// Every fault of the shape of a refused text, or why it is not even JSON.
fn explain(text: &str, shape: Shape) -> Result<Vec<Issue>, Problem> {
    if nested(text) > shape.nesting {
        return Err(too_deep(shape.nesting));
    }
    serde_json::from_str::<IgnoredAny>(text).map_err(|e| not_json(e.to_string()))?;
    let node = tree::tree(text).map_err(not_json)?;
    let mut issues = walk::walk(&node, shape.schemas, shape.root);
    sort_issues(&mut issues);
    Ok(issues)
}

fn too_deep(most: usize) -> Problem {
    let detail = format!("nested deeper than {most}");
    let issue = Issue::new("", &refusals::NESTED_TOO_DEEP, detail).limit(most.to_string());
    Problem::of(&problem::INVALID_REQUEST, vec![issue])
}

fn not_json(detail: String) -> Problem {
    let issue = Issue::new("", &refusals::NOT_JSON, detail);
    Problem::of(&problem::MALFORMED_BODY, vec![issue])
}

/// How deep lists and objects stand in each other, texts left out.
fn nested(text: &str) -> usize {
    let (mut depth, mut deepest, mut inside, mut escaped) = (0_usize, 0, false, false);
    for byte in text.bytes() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if inside => escaped = true,
            b'"' => inside = !inside,
            _ if inside => {}
            b'{' | b'[' => {
                depth += 1;
                deepest = deepest.max(depth);
            }
            b'}' | b']' => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    deepest
}
