//! The interactive page of the API document. Everything it needs is in the program; it
//! works without network.

use std::sync::Arc;

use actix_web::web::{self, Path, ServiceConfig};
use actix_web::{HttpRequest, HttpResponse};
use utoipa_swagger_ui::Config;

use super::content::Content;
use super::get::resource;
use super::respond;
use crate::problem::{self, Problem};

/// Adds the routes.
pub fn routes(config: &mut ServiceConfig) {
    let settings = Arc::new(Config::from("/openapi.json"));
    resource(config, "/docs", |route| route.to(to_folder));
    resource(config, "/docs/{file:.*}", |route| {
        let settings = settings.clone();
        route.to(move |path| file(settings.clone(), path))
    });
}

/// The page finds its parts beside itself, so its address ends with a slash.
async fn to_folder(_: HttpRequest) -> HttpResponse {
    HttpResponse::PermanentRedirect()
        .insert_header(("location", "/docs/"))
        .finish()
}

async fn file(settings: Arc<Config<'static>>, path: Path<String>) -> Result<HttpResponse, Problem> {
    match utoipa_swagger_ui::serve(&path, settings) {
        Ok(Some(file)) => {
            // megabytes of script
            let content = web::block(move || Content::new(file.bytes.into_owned()))
                .await
                .map_err(|_| Problem::internal())?;
            Ok(respond::content(&file.content_type, content))
        }
        Ok(None) => Err(Problem::new(&problem::UNKNOWN_PATH, "no such file")),
        Err(_) => Err(Problem::internal()),
    }
}
