//! How answers and problems become responses.

use std::fmt;

use actix_web::body::BoxBody;
use actix_web::http::StatusCode;
use actix_web::http::header::{ACCEPT, CONTENT_TYPE, RETRY_AFTER, VARY};
use actix_web::{HttpRequest, HttpResponse, ResponseError};

use super::accept;
use super::content::Content;
use crate::problem::{self, Problem};

/// Seconds after which a refused client may come back.
const RETRY_SECONDS: &str = "1";

/// The media type the client wants of those offered.
pub fn media<'a>(request: &HttpRequest, offered: &[&'a str]) -> Result<&'a str, Problem> {
    let mut ranges = String::new();
    for value in request.headers().get_all(ACCEPT) {
        if !ranges.is_empty() {
            ranges.push(',');
        }
        ranges.push_str(value.to_str().unwrap_or_default());
    }
    // without the header everything is acceptable
    if !request.headers().contains_key(ACCEPT) {
        ranges.push_str("*/*");
    }
    choose(&ranges, offered)
}

/// The media type that a list of ranges asks for.
pub fn choose<'a>(ranges: &str, offered: &[&'a str]) -> Result<&'a str, Problem> {
    accept::choose(ranges, offered).ok_or_else(|| {
        let detail = format!("available here: {}", offered.join(", "));
        Problem::new(&problem::NOT_ACCEPTABLE, detail)
    })
}

/// A response with short content: its digest is taken here.
pub fn short(media: &str, bytes: Vec<u8>) -> HttpResponse {
    content(media, Content::new(bytes))
}

/// A response with content and its digest.
pub fn content(media: &str, content: Content) -> HttpResponse {
    let mut response = HttpResponse::Ok();
    response
        .insert_header((CONTENT_TYPE, media))
        .insert_header((VARY, "Accept"))
        .insert_header(("content-digest", content.digest()));
    if media == "image/svg+xml" {
        // labels are the caller's; a drawing runs nothing and fetches nothing
        let policy = "default-src 'none'; style-src 'unsafe-inline'";
        response.insert_header(("content-security-policy", policy));
    }
    response.body(content.into_body())
}

/// A response that says what is wrong.
pub fn problem(problem: &Problem) -> HttpResponse {
    let status = StatusCode::from_u16(problem.status).unwrap_or(StatusCode::INTERNAL_SERVER_ERROR);
    let mut response = HttpResponse::build(status);
    response.insert_header((CONTENT_TYPE, "application/problem+json"));
    if status == StatusCode::SERVICE_UNAVAILABLE {
        response.insert_header((RETRY_AFTER, RETRY_SECONDS));
    }
    response.body(problem.to_bytes())
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        write!(f, "{} {}: {}", self.status, self.title, self.detail)
    }
}

impl ResponseError for Problem {
    fn status_code(&self) -> StatusCode {
        StatusCode::from_u16(self.status).unwrap_or(StatusCode::INTERNAL_SERVER_ERROR)
    }

    fn error_response(&self) -> HttpResponse<BoxBody> {
        problem(self)
    }
}
