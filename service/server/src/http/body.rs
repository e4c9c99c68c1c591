//! Takes the body of a request off the wire, within its limit and only in a media type
//! that is read.

use actix_web::HttpRequest;
use actix_web::http::header::{CONTENT_ENCODING, CONTENT_LENGTH, CONTENT_TYPE};
use actix_web::web::{Bytes, Payload};
use bearwell_engine::catalogue::refusals;
use bearwell_engine::contract::Issue;

use crate::problem::{self, Problem};

/// The body with its media type, one of `read`.
pub async fn take<'a>(
    request: &HttpRequest,
    payload: Payload,
    limit: usize,
    read: &[&'a str],
) -> Result<(&'a str, Bytes), Problem> {
    let media = media(request, read)?;
    let length = header(request, CONTENT_LENGTH).and_then(|l| l.parse::<usize>().ok());
    if length.is_some_and(|length| length > limit) {
        return Err(too_large(limit));
    }
    match payload.to_bytes_limited(limit).await {
        Ok(Ok(bytes)) => Ok((media, bytes)),
        Ok(Err(_)) => {
            let issue = Issue::new("", &refusals::NOT_JSON, "the body ended before its time");
            Err(Problem::of(&problem::MALFORMED_BODY, vec![issue]))
        }
        Err(_) => Err(too_large(limit)),
    }
}

fn too_large(limit: usize) -> Problem {
    Problem::new(&problem::BODY_TOO_LARGE, format!("at most {limit} bytes"))
}

fn header(request: &HttpRequest, name: impl actix_web::http::header::AsHeaderName) -> Option<&str> {
    request.headers().get(name)?.to_str().ok()
}

/// The media type of the body.
fn media<'a>(request: &HttpRequest, read: &[&'a str]) -> Result<&'a str, Problem> {
    let coding = header(request, CONTENT_ENCODING).unwrap_or("identity");
    if !coding.eq_ignore_ascii_case("identity") {
        return Err(unread(
            format!("content coding `{coding}` is not read"),
            read,
        ));
    }
    match header(request, CONTENT_TYPE) {
        Some(given) => media_of(given, read),
        None => Err(unread("no `Content-Type` was sent".to_owned(), read)),
    }
}

/// The one of the media types in `read` that is given. The only parameter that counts is
/// `charset`, which may be `utf-8`.
pub fn media_of<'a>(given: &str, read: &[&'a str]) -> Result<&'a str, Problem> {
    let mut parts = given.split(';').map(str::trim);
    let name = parts.next().unwrap_or_default();
    let utf8 = parts.all(|p| match p.split_once('=') {
        Some((key, charset)) if key.eq_ignore_ascii_case("charset") => {
            charset.trim_matches('"').eq_ignore_ascii_case("utf-8")
        }
        _ => true,
    });
    match read.iter().find(|media| media.eq_ignore_ascii_case(name)) {
        Some(media) if utf8 => Ok(media),
        _ => {
            let given: String = given.chars().take(100).collect();
            Err(unread(format!("`{given}` is not read"), read))
        }
    }
}

fn unread(what: String, read: &[&str]) -> Problem {
    let detail = format!("{what}; read here: {}", read.join(", "));
    Problem::new(&problem::UNSUPPORTED_MEDIA_TYPE, detail)
}
