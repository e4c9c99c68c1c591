//! Bearwell as a service: bodies in, answers or problems out, over HTTP and on the
//! command line. Calculates nothing itself; that is the engine's.
#![warn(missing_docs)]

#[cfg(test)]
mod probe;
pub mod problem;
pub mod read;
pub mod schemas;
