//! Bearwell as a service: bodies in, answers or problems out, over HTTP and on the
//! command line. Calculates nothing itself; that is the engine's.
#![warn(missing_docs)]

pub mod app;
pub mod batch;
pub mod command;
pub mod demo;
pub mod document;
pub mod examples;
mod http;
pub mod pages;
pub mod pool;
#[cfg(test)]
mod probe;
pub mod problem;
pub mod read;
pub mod schemas;
pub mod selfcheck;
pub mod service;
pub mod sheets;
pub mod table;

/// Version of the program.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");
