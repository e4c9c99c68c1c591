//! `installation-job`: the piles of one job judged together, each by its own log and all of
//! them as a lot. What a single log says is judged in `record`.

pub mod codes;
mod lot_outcome;
mod outcome;
mod request;

#[cfg(feature = "compute")]
mod evaluate;
#[cfg(feature = "compute")]
mod lot;
#[cfg(feature = "compute")]
mod patterns;
#[cfg(feature = "compute")]
mod piles;

#[cfg(all(test, feature = "compute"))]
mod tests;

pub use lot_outcome::*;
pub use outcome::*;
pub use request::*;

use crate::contract::Noun;

/// The calculation `installation-job`.
#[derive(Debug)]
pub struct InstallationJob;

impl Noun for InstallationJob {
    const NAME: &'static str = "installation-job";
    const SUMMARY: &'static str = "The piles of one job together: the verdict on each log, the tests of the lot, and what a pile that failed asks of the others.";
    type Request = Request;
    type Outcome = Outcome;
}

#[cfg(feature = "compute")]
impl crate::contract::Calculation for InstallationJob {
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
