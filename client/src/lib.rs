//! Client of the Bearwell calculation service: one async method for each calculation,
//! typed answers, typed problems. Takes the engine's types; calculates nothing itself
//! unless the feature `offline` is on.
//!
//! ```no_run
//! # async fn ask(request: bearwell_client::engine::torque::Request) -> Result<(), bearwell_client::Error> {
//! let client = bearwell_client::Client::new("http://127.0.0.1:8080")?;
//! let answer = client.torque_capacity(request).await?;
//! println!("{:?}", answer.verdict);
//! # Ok(())
//! # }
//! ```
#![warn(missing_docs)]

mod batch;
mod client;
mod error;
#[cfg(feature = "offline")]
pub mod offline;

pub use batch::{BatchItem, Outcome};
pub use bearwell_engine as engine;
pub use bearwell_engine::contract::{Answer, Call, Issue, Noun, Options, Verdict};
pub use client::{Builder, Client};
pub use error::{Error, Problem};
