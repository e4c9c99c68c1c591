//! Routes that are only read: the pages, the API document, the page of one problem.

use std::sync::atomic::Ordering;

use actix_web::web::{self, Data, Path, ServiceConfig};
use actix_web::{HttpRequest, HttpResponse, Route};

use super::content::Content;
use super::{State, only, respond};
use crate::pages::{self, PAGES, Page, ProblemEntry};
use crate::problem::{self, Problem};
use crate::table::JSON;

const HTML: &str = "text/html; charset=utf-8";

/// Adds the routes.
pub fn routes(config: &mut ServiceConfig) {
    for page in PAGES {
        resource(config, page.path, |route| match page.path {
            "/problems" => route.to(problems),
            "/health/ready" => route.to(move |request, state| ready(page, request, state)),
            _ => route.to(move |request| plain(page, request)),
        });
    }
    resource(config, "/openapi.json", |route| route.to(document));
    resource(config, "/problems/{code}", |route| route.to(one_problem));
}

/// A resource that answers GET, and HEAD without the content.
pub fn resource(config: &mut ServiceConfig, path: &str, answer: impl Fn(Route) -> Route) {
    config.service(
        web::resource(path)
            .route(answer(web::get()))
            .route(answer(web::head()))
            .default_service(web::to(|| only("GET, HEAD"))),
    );
}

async fn plain(page: &'static Page, request: HttpRequest) -> Result<HttpResponse, Problem> {
    let media = respond::media(&request, &[JSON])?;
    Ok(respond::short(media, (page.body)()))
}

async fn ready(
    page: &'static Page,
    request: HttpRequest,
    state: Data<State>,
) -> Result<HttpResponse, Problem> {
    if !state.ready.load(Ordering::Relaxed) {
        return Err(Problem::new(&problem::NOT_READY, "no new requests, please"));
    }
    plain(page, request).await
}

/// The document is made once; that takes long enough to be done elsewhere.
async fn document(request: HttpRequest, state: Data<State>) -> Result<HttpResponse, Problem> {
    let media = respond::media(&request, &[JSON])?;
    let service = state.service;
    let content = web::block(move || Content::new(service.document().as_bytes().to_vec()))
        .await
        .map_err(|_| Problem::internal())?;
    Ok(respond::content(media, content))
}

async fn problems(request: HttpRequest) -> Result<HttpResponse, Problem> {
    if respond::media(&request, &[JSON, "text/html"])? == JSON {
        let page = PAGES.iter().find(|page| page.path == "/problems");
        let body = page.map(|page| (page.body)()).unwrap_or_default();
        return Ok(respond::short(JSON, body));
    }
    let list: String = pages::all_problems()
        .iter()
        .map(|p| {
            let (code, text) = (p.code, escaped(p.title));
            format!("<li><a href=\"/problems/{code}\"><code>{code}</code></a> {text}</li>\n")
        })
        .collect();
    Ok(html("Problems and refusals", &format!("<ul>\n{list}</ul>")))
}

async fn one_problem(request: HttpRequest, code: Path<String>) -> Result<HttpResponse, Problem> {
    let media = respond::media(&request, &[JSON, "text/html"])?;
    let code: String = code.chars().take(100).collect();
    let Some(entry) = pages::all_problems().into_iter().find(|p| p.code == code) else {
        let detail = format!("no problem is called `{code}`; /problems lists them");
        return Err(Problem::new(&problem::UNKNOWN_PATH, detail));
    };
    if media == JSON {
        return Ok(respond::short(JSON, pages::line(&entry)));
    }
    Ok(html(entry.code, &in_words(&entry)))
}

fn in_words(entry: &ProblemEntry) -> String {
    format!(
        "<p>Status {}</p>\n<p><strong>{}</strong></p>\n<p>{}</p>\n<p><a href=\"/problems\">All</a></p>",
        entry.status,
        escaped(entry.title),
        escaped(entry.text)
    )
}

fn html(title: &str, content: &str) -> HttpResponse {
    let page = format!(
        "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>{title}</title></head>\n\
         <body><h1>{title}</h1>\n{content}\n</body></html>\n"
    );
    respond::short(HTML, page.into_bytes())
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}
