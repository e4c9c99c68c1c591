//! What every answer that is not 2xx says (RFC 9457), and the list of the kinds there
//! are. What can be wrong inside a request is the engine's list of refusals.

use std::borrow::Cow;

use bearwell_engine::contract::{Issue, Refusal, sort_issues};
use serde::Serialize;
use utoipa::ToSchema;

/// A kind of problem.
#[derive(Debug, PartialEq)]
pub struct Kind {
    /// Stable code; the last part of the problem's `type`.
    pub slug: &'static str,
    /// Status of the response.
    pub status: u16,
    /// The stage at which the request was refused.
    pub stage: Option<Stage>,
    /// One line.
    pub title: &'static str,
    /// What it means and what to do.
    pub text: &'static str,
}

/// Stage at which a request was refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Stage {
    /// The body is not JSON, or not CSV where that is read.
    Syntax,
    /// It is JSON, but not a request.
    Shape,
    /// It is a request, but a value is out of range.
    Values,
    /// It is in range, but cannot be calculated.
    Physics,
}

macro_rules! kinds {
    ($($name:ident = $slug:literal, $status:literal, $stage:expr, $title:literal, $text:literal;)+) => {
        $(#[doc = $text] pub static $name: Kind = Kind {
            slug: $slug, status: $status, stage: $stage, title: $title, text: $text,
        };)+
        /// Every kind of problem.
        pub static KINDS: &[&Kind] = &[$(&$name),+];
    };
}

kinds! {
    MALFORMED_BODY = "malformed_body", 400, Some(Stage::Syntax), "The body is not JSON.",
        "The body could not be read as one JSON value. The detail names the line and column.";
    MALFORMED_CSV = "malformed_csv", 400, Some(Stage::Syntax), "The body cannot be read as CSV.",
        "The lines with `#` are not one JSON object, or what follows is not CSV with a header. The details name the lines.";
    UNKNOWN_PATH = "unknown_path", 404, None, "There is nothing at this path.",
        "Calculations stand at /v1/<name>; the API document at /openapi.json lists every path.";
    METHOD_NOT_ALLOWED = "method_not_allowed", 405, None, "The method is not allowed here.",
        "The header `Allow` lists the methods of this path.";
    NOT_ACCEPTABLE = "not_acceptable", 406, None, "None of the accepted media types can be had here.",
        "The header `Accept` asks only for media types that this path does not have; the detail lists those it has.";
    BODY_TOO_LARGE = "body_too_large", 413, None, "The body is larger than is accepted.",
        "`GET /v1/limits` lists the limits; larger work can be split or sent as a batch.";
    UNSUPPORTED_MEDIA_TYPE = "unsupported_media_type", 415, None, "The body has a media type that is not read here.",
        "Send the body in a media type that the detail lists (`application/json` is read everywhere), in UTF-8 and without content coding.";
    INVALID_REQUEST = "invalid_request", 422, Some(Stage::Shape), "The body is JSON, but not a request of this calculation.",
        "Members, types, units or choices are not those of the API document. Every fault is listed with its place.";
    VALUES_OUT_OF_RANGE = "values_out_of_range", 422, Some(Stage::Values), "Values lie outside the accepted range.",
        "The request can be read, but values or lengths of lists lie outside what is accepted. Every fault is listed with its limit.";
    NOT_COMPUTABLE = "not_computable", 422, Some(Stage::Physics), "The request cannot be calculated.",
        "A method does not apply to what was sent, or its parts contradict each other. Nothing is extrapolated; the faults say what would be needed.";
    INTERNAL_ERROR = "internal_error", 500, None, "The service failed.",
        "This is a fault of the service, not of the request. Please report it with the request id of the response.";
    OVERLOADED = "overloaded", 503, None, "The service is busy.",
        "More work is waiting than is accepted. Send the same request again after the seconds in `Retry-After`.";
    DEADLINE_EXCEEDED = "deadline_exceeded", 503, None, "The calculation took too long.",
        "The work was stopped at the service's deadline; no partial answer is given. Try again later, or send a smaller request.";
    NOT_READY = "not_ready", 503, None, "The service is shutting down.",
        "Requests in flight are finished; send new ones elsewhere.";
}

/// A problem: what every response that is not 2xx carries.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Problem {
    /// Path of a page that explains this kind of problem.
    #[serde(rename = "type")]
    pub about: String,
    /// The kind of problem in one line.
    pub title: Cow<'static, str>,
    /// Status of the response.
    pub status: u16,
    /// What is wrong with this request.
    pub detail: String,
    /// Stage at which the request was refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stage: Option<Stage>,
    /// Every fault that this stage found, sorted by place; empty where the fault lies in
    /// no single place.
    pub errors: Vec<Issue>,
}

impl Problem {
    /// A problem of a kind with a sentence about this case.
    pub fn new(kind: &'static Kind, detail: impl Into<String>) -> Self {
        Self {
            about: format!("/problems/{}", kind.slug),
            title: kind.title.into(),
            status: kind.status,
            detail: detail.into(),
            stage: kind.stage,
            errors: Vec::new(),
        }
    }

    /// A problem with all the faults found.
    pub fn of(kind: &'static Kind, mut errors: Vec<Issue>) -> Self {
        sort_issues(&mut errors);
        let detail = match &errors[..] {
            [] => kind.title.to_owned(),
            [one] if one.pointer.is_empty() => one.detail.clone(),
            [one] => format!("{}: {}", one.pointer, one.detail),
            [first, rest @ ..] => format!(
                "{} faults, the first at `{}`: {}",
                rest.len() + 1,
                first.pointer,
                first.detail
            ),
        };
        Self {
            errors,
            ..Self::new(kind, detail)
        }
    }

    /// The same problem with its faults told in other words.
    pub fn told(self, tell: impl FnMut(Issue) -> Issue) -> Self {
        let kind = KINDS.iter().find(|kind| self.is(kind));
        match kind {
            Some(kind) if !self.errors.is_empty() => {
                Self::of(kind, self.errors.into_iter().map(tell).collect())
            }
            _ => self,
        }
    }

    fn is(&self, kind: &Kind) -> bool {
        self.about.strip_prefix("/problems/") == Some(kind.slug)
    }

    /// What the service says when it is its own fault. Nothing of the cause leaks.
    pub fn internal() -> Self {
        Self::new(
            &INTERNAL_ERROR,
            "the calculation did not give a usable answer",
        )
    }

    /// The compact JSON of the problem with a line end, as it is sent.
    pub fn to_bytes(&self) -> Vec<u8> {
        let mut bytes = serde_json::to_vec(self).unwrap_or_default();
        bytes.push(b'\n');
        bytes
    }
}

impl From<Refusal> for Problem {
    fn from(refusal: Refusal) -> Self {
        if refusal.interrupted {
            return Self::new(&DEADLINE_EXCEEDED, "the work was stopped before it ended");
        }
        Self::of(&NOT_COMPUTABLE, refusal.issues)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use bearwell_engine::catalogue;
    use std::collections::BTreeSet;

    #[test]
    fn slugs_are_codes_and_stand_nowhere_else() {
        let mut codes: BTreeSet<&str> = BTreeSet::new();
        codes.extend(catalogue::all_checks().iter().map(|d| d.id));
        codes.extend(catalogue::all_warnings().iter().map(|d| d.id));
        codes.extend(catalogue::all_cautions().iter().map(|d| d.id));
        codes.extend(catalogue::all_refusals().iter().map(|d| d.id));
        codes.extend(catalogue::all_methods().iter().map(|d| d.id));
        for kind in KINDS {
            assert!(codes.insert(kind.slug), "`{}` stands twice", kind.slug);
            let plain = |b: u8| b.is_ascii_lowercase() || b == b'_';
            assert!(kind.slug.bytes().all(plain), "{}", kind.slug);
        }
    }
}
