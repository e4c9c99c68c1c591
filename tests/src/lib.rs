//! Shared parts of the black-box tests: a service on a free port, requests to it, and the
//! examples on disk. No expectation lives here.

use std::fs;
use std::path::{Path, PathBuf};

use bearwell::app::{Running, Settings};
use bearwell::service::Service;
use reqwest::{Method, RequestBuilder};
use serde_json::Value;

/// A running service and a client for it.
pub struct Door {
    /// The service; ends when dropped.
    pub running: Running,
    http: reqwest::Client,
}

/// A response, read to its end.
#[derive(Debug, Clone)]
pub struct Reply {
    /// Status.
    pub status: u16,
    /// Header names in lower case, with their values.
    pub headers: Vec<(String, String)>,
    /// Content.
    pub bytes: Vec<u8>,
}

impl Reply {
    /// A header by its name in lower case.
    pub fn header(&self, name: &str) -> Option<&str> {
        let found = self.headers.iter().find(|(n, _)| n == name);
        found.map(|(_, value)| value.as_str())
    }

    /// The content as JSON.
    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.bytes)
            .unwrap_or_else(|e| panic!("{e}: {}", String::from_utf8_lossy(&self.bytes)))
    }
}

impl Door {
    /// The service as it is shipped.
    pub fn open() -> Self {
        Self::open_with(Settings::default(), Service::standard())
    }

    /// A service with other settings or calculations; always on a free port.
    pub fn open_with(settings: Settings, service: &'static Service) -> Self {
        let settings = Settings {
            listen: "127.0.0.1:0".to_owned(),
            ..settings
        };
        Self {
            running: Running::start(settings, service).expect("a service starts"),
            http: reqwest::Client::new(),
        }
    }

    /// Where it listens.
    pub fn base(&self) -> String {
        format!("http://{}", self.running.address)
    }

    /// A request to a path.
    pub fn request(&self, method: Method, path: &str) -> RequestBuilder {
        self.http.request(method, format!("{}{path}", self.base()))
    }

    /// GET.
    pub async fn get(&self, path: &str) -> Reply {
        send(self.request(Method::GET, path)).await
    }

    /// POST of a JSON body.
    pub async fn post(&self, path: &str, body: impl Into<Vec<u8>>) -> Reply {
        send(self.json(path, body)).await
    }

    /// POST of a JSON body, not sent yet.
    pub fn json(&self, path: &str, body: impl Into<Vec<u8>>) -> RequestBuilder {
        self.request(Method::POST, path)
            .header("content-type", "application/json")
            .body(body.into())
    }

    /// POST of a CSV body.
    pub async fn csv(&self, path: &str, body: impl Into<Vec<u8>>) -> Reply {
        let request = self.request(Method::POST, path);
        let request = request.header("content-type", "text/csv");
        send(request.body(body.into())).await
    }
}

/// Sends a request and reads the response to its end.
pub async fn send(request: RequestBuilder) -> Reply {
    let response = request.send().await.expect("a response");
    let status = response.status().as_u16();
    let headers = response.headers().iter();
    let headers = headers.map(|(name, value)| {
        let value = value.to_str().expect("a plain header").to_owned();
        (name.as_str().to_owned(), value)
    });
    Reply {
        status,
        headers: headers.collect(),
        bytes: response.bytes().await.expect("the content").to_vec(),
    }
}

/// An example on disk.
#[derive(Debug, Clone)]
pub struct Example {
    /// The calculation it is for.
    pub noun: String,
    /// Its name: the file's without its ending.
    pub name: String,
    /// The request.
    pub request: Vec<u8>,
    /// Where the approved bytes are.
    pub golden: PathBuf,
}

impl Example {
    /// Path of its calculation.
    pub fn path(&self) -> String {
        format!("/v1/{}", self.noun)
    }

    /// What it is called in a message.
    pub fn title(&self) -> String {
        format!("{}/{}", self.noun, self.name)
    }
}

/// The folder of the API document and the examples.
pub fn openapi() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../openapi")
}

/// Every example that is answered.
pub fn answered() -> Vec<Example> {
    examples("", "answer")
}

/// Every example that must be refused.
pub fn refused() -> Vec<Example> {
    examples("refused", "problem")
}

fn examples(within: &str, golden: &str) -> Vec<Example> {
    let mut all = Vec::new();
    for noun in sorted(&openapi().join("examples")) {
        let noun_name = noun.file_name().unwrap().to_string_lossy().into_owned();
        for file in sorted(&noun.join(within)) {
            let file_name = file.file_name().unwrap().to_string_lossy().into_owned();
            let Some(name) = file_name.strip_suffix(".json") else {
                continue;
            };
            if name.ends_with(".answer") || name.ends_with(".problem") {
                continue;
            }
            all.push(Example {
                noun: noun_name.clone(),
                name: name.to_owned(),
                request: fs::read(&file).expect("an example"),
                golden: file.with_file_name(format!("{name}.{golden}.json")),
            });
        }
    }
    all
}

fn sorted(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).into_iter().flatten();
    let mut all: Vec<_> = entries.map(|e| e.expect("an entry").path()).collect();
    all.sort();
    all
}

/// The Rust in README.md compiles as printed.
#[cfg(doctest)]
#[doc = include_str!("../../README.md")]
pub struct Readme;
