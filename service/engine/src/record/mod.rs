//! `installation-record`: the log of a pile as it is turned in, judged; whether its record is
//! complete. Torque and capacity of a single reading are in `torque`.

pub mod codes;
mod completeness_outcome;
mod documents;
mod ground;
mod history;
mod limits;
mod log;
mod outcome;
mod proofs;
mod relocation;
mod request;
mod steps;

#[cfg(feature = "compute")]
mod advice;
#[cfg(feature = "compute")]
mod completeness;
#[cfg(feature = "compute")]
mod evaluate;
#[cfg(feature = "compute")]
mod fields;
#[cfg(feature = "compute")]
mod found;
#[cfg(feature = "compute")]
mod judge_depth;
#[cfg(feature = "compute")]
mod judge_ground;
#[cfg(feature = "compute")]
mod judge_proofs;
#[cfg(feature = "compute")]
mod judge_torque;
#[cfg(feature = "compute")]
mod onward;
#[cfg(feature = "compute")]
mod rows;
#[cfg(feature = "compute")]
pub mod spikes;
#[cfg(feature = "compute")]
mod torque_side;
#[cfg(feature = "compute")]
pub mod window;

pub use completeness_outcome::*;
pub use documents::*;
pub use ground::*;
pub use history::*;
pub use limits::*;
pub use log::*;
pub use outcome::*;
pub use proofs::*;
pub use relocation::*;
pub use request::*;
#[cfg(feature = "compute")]
pub use rows::FIRST_READING;
pub use steps::*;

use crate::contract::Noun;

/// The calculation `installation-record`.
#[derive(Debug)]
pub struct InstallationRecord;

impl Noun for InstallationRecord {
    const NAME: &'static str = "installation-record";
    const SUMMARY: &'static str = "The log of a pile as it was turned in: may it stay, must it go deeper, what is missing of its record.";
    type Request = Request;
    type Outcome = Outcome;
}

#[cfg(feature = "compute")]
impl crate::contract::Calculation for InstallationRecord {
    fn lengths(request: &Request, issues: &mut Vec<crate::contract::Issue>) {
        evaluate::lengths(request, issues);
    }

    fn evaluate(
        request: &Request,
        work: &mut crate::contract::Work,
    ) -> Result<Outcome, crate::contract::Refusal> {
        evaluate::evaluate(request, work)
    }
}

#[cfg(all(test, feature = "compute"))]
mod tests;
