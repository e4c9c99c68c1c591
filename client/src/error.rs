//! What can go wrong between a call and its answer.

use std::fmt;

use bearwell_engine::contract::Issue;
use serde::Deserialize;

/// Why there is no answer.
#[derive(Debug)]
pub enum Error {
    /// The service says what is wrong.
    Problem(Box<Problem>),
    /// The service could not be reached, or the connection broke.
    Transport(reqwest::Error),
    /// The call could not be written as JSON.
    Unwritable(serde_json::Error),
    /// What came back is neither an answer nor a problem of this service; perhaps a proxy
    /// answered, or the service is newer than this client.
    Unreadable {
        /// Status of the response.
        status: u16,
        /// Why it could not be read.
        reason: String,
    },
}

impl Error {
    /// The problem, where the service said one.
    pub fn problem(&self) -> Option<&Problem> {
        match self {
            Self::Problem(problem) => Some(problem),
            _ => None,
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        match self {
            Self::Problem(p) => write!(f, "{} {}: {}", p.status, p.title, p.detail),
            Self::Transport(e) => write!(f, "the service could not be reached: {e}"),
            Self::Unwritable(e) => write!(f, "the call could not be written: {e}"),
            Self::Unreadable { status, reason } => {
                write!(f, "an unreadable response with status {status}: {reason}")
            }
        }
    }
}

impl std::error::Error for Error {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            Self::Transport(e) => Some(e),
            Self::Unwritable(e) => Some(e),
            _ => None,
        }
    }
}

impl From<reqwest::Error> for Error {
    fn from(error: reqwest::Error) -> Self {
        Self::Transport(error)
    }
}

/// A problem (RFC 9457) as the service says it.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub struct Problem {
    /// Path of a page that explains this kind of problem.
    #[serde(rename = "type")]
    pub about: String,
    /// The kind of problem in one line.
    pub title: String,
    /// Status of the response.
    pub status: u16,
    /// What is wrong with this request.
    pub detail: String,
    /// Stage at which the request was refused: `syntax`, `shape`, `values` or `physics`.
    #[serde(default)]
    pub stage: Option<String>,
    /// Every fault that this stage found, sorted by place.
    #[serde(default)]
    pub errors: Vec<Issue>,
}

impl Problem {
    /// Stable code of the kind of problem.
    pub fn code(&self) -> &str {
        self.about.rsplit('/').next().unwrap_or_default()
    }

    /// Whether a fault of this code was found.
    pub fn has(&self, code: &str) -> bool {
        self.errors.iter().any(|issue| issue.code == code)
    }
}
