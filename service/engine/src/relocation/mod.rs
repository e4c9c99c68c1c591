//! `pile-relocation`: a plan whose piles could not all go where they were drawn: what changes,
//! whether it may stay, and what else can be done. The analysis is that of `layout`.

pub mod codes;
mod outcome;
mod request;

#[cfg(feature = "compute")]
mod apply;
#[cfg(feature = "compute")]
mod compare;
#[cfg(feature = "compute")]
mod equations;
#[cfg(feature = "compute")]
mod evaluate;
#[cfg(feature = "compute")]
mod faults;
#[cfg(feature = "compute")]
mod judge;
#[cfg(feature = "compute")]
mod moved;
#[cfg(feature = "compute")]
mod notes;
#[cfg(feature = "compute")]
mod places;
#[cfg(feature = "compute")]
mod standing;
#[cfg(feature = "compute")]
mod ways;

#[cfg(all(test, feature = "compute"))]
mod tests;

#[cfg(feature = "compute")]
pub(crate) use evaluate::faults_of;
pub use outcome::*;
pub use request::*;

use crate::contract::Noun;

/// The calculation `pile-relocation`.
#[derive(Debug)]
pub struct PileRelocation;

impl Noun for PileRelocation {
    const NAME: &'static str = "pile-relocation";
    const SUMMARY: &'static str = "What changes when piles cannot go where they were drawn: moved, stopped short, left out or added, with the ways out.";
    type Request = Request;
    type Outcome = Outcome;
}

#[cfg(feature = "compute")]
impl crate::contract::Calculation for PileRelocation {
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
