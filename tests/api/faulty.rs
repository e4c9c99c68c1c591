//! Two calculations that misbehave on request, so that the faults of the service itself
//! can be seen from outside: one runs where it arrives, one on the pool.

use std::sync::OnceLock;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;

use bearwell::service::Service;
use bearwell::table::{Entry, JsonOnly};
use bearwell_engine::contract::{Calculation, Issue, Noun, Refusal, Work};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use validator::Validate;

/// How it misbehaves.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[schema(as = FaultyHow)]
#[serde(rename_all = "snake_case")]
pub enum How {
    /// Not at all.
    Well,
    /// With a long text.
    AtLength,
    /// With a number that is none.
    NotANumber,
    /// With a panic.
    Panic,
    /// Without end, until it is stopped.
    Forever,
}

/// What is asked.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate, ToSchema)]
#[schema(as = FaultyRequest)]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// How to misbehave.
    pub how: How,
}

/// What is answered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[schema(as = FaultyOutcome)]
pub struct Outcome {
    /// A number.
    pub share_ratio: f64,
    /// A text.
    pub text: String,
}

/// Times that either was asked for a long text.
pub static AT_LENGTH: AtomicUsize = AtomicUsize::new(0);
/// Bytes of a long text.
pub const LENGTH: usize = 1 << 20;

macro_rules! faulty {
    ($name:ident = $path:literal) => {
        /// Misbehaves.
        pub struct $name;

        impl Noun for $name {
            const NAME: &'static str = $path;
            const SUMMARY: &'static str = "How does it misbehave?";
            type Request = Request;
            type Outcome = Outcome;
        }

        impl Calculation for $name {
            fn lengths(_: &Request, _: &mut Vec<Issue>) {}

            fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
                evaluate(request, work)
            }
        }
    };
}

faulty!(Inline = "faulty");
faulty!(Pooled = "faulty-and-long");

fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
    let mut outcome = Outcome {
        share_ratio: 0.5,
        text: String::new(),
    };
    match request.how {
        How::Well => {}
        How::AtLength => {
            AT_LENGTH.fetch_add(1, Ordering::SeqCst);
            outcome.text = "x".repeat(LENGTH);
        }
        How::NotANumber => outcome.share_ratio = f64::NAN,
        How::Panic => panic!("the secret of the house"),
        How::Forever => loop {
            work.go_on()?;
            std::thread::sleep(Duration::from_millis(1));
        },
    }
    Ok(outcome)
}

static TABLE: &[Entry] = &[
    Entry::of::<Inline, JsonOnly>(),
    Entry::of::<Pooled, JsonOnly>().heavy(),
];

/// A service of these two.
pub fn service() -> &'static Service {
    static ONCE: OnceLock<Service> = OnceLock::new();
    ONCE.get_or_init(|| Service::new(TABLE))
}

/// A request.
pub fn how(how: &str) -> String {
    format!(r#"{{"how": "{how}"}}"#)
}
