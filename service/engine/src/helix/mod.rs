//! `helix-capacity`: what the soil around the helices of a pile carries, in compression
//! and in tension. Steel, torque, settlement and groups are not here.

mod basis;
pub mod codes;
mod methods;
mod outcome;
mod pile;
mod request;

pub use basis::*;
pub use methods::*;
pub use outcome::*;
pub use pile::*;
pub use request::*;

use crate::contract::Noun;

/// The calculation `helix-capacity`.
#[derive(Debug)]
pub struct HelixCapacity;

impl Noun for HelixCapacity {
    const NAME: &'static str = "helix-capacity";
    const SUMMARY: &'static str =
        "What the soil around a pile's helices carries in compression and tension.";
    type Request = Request;
    type Outcome = Outcome;
}
