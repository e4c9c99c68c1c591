//! `footing-bearing`: bearing capacity of a dug footing, pad or crib on one soil by the
//! classical theories side by side, and tables of their factors. The factors themselves are
//! in `bearing`; settlement, structure of the footing and layered ground are not here.

pub mod codes;
mod options;
mod outcome;
mod request;
mod soil;

#[cfg(feature = "compute")]
mod design;
#[cfg(feature = "compute")]
mod evaluate;
#[cfg(feature = "compute")]
mod families;
#[cfg(feature = "compute")]
mod faults;
#[cfg(feature = "compute")]
mod ground;
#[cfg(feature = "compute")]
mod judge;
#[cfg(feature = "compute")]
mod tables;

#[cfg(all(test, feature = "compute"))]
mod tests;

pub use options::*;
pub use outcome::*;
pub use request::*;
pub use soil::*;

use crate::contract::Noun;

/// The calculation `footing-bearing`.
#[derive(Debug)]
pub struct FootingBearing;

impl Noun for FootingBearing {
    const NAME: &'static str = "footing-bearing";
    const SUMMARY: &'static str =
        "What the soil under a dug footing, pad or crib bears, by the classical theories.";
    type Request = Request;
    type Outcome = Outcome;
}

#[cfg(feature = "compute")]
impl crate::contract::Calculation for FootingBearing {
    fn lengths(request: &Request, issues: &mut Vec<crate::contract::Issue>) {
        faults::lengths(request, issues);
    }

    fn evaluate(
        request: &Request,
        work: &mut crate::contract::Work,
    ) -> Result<Outcome, crate::contract::Refusal> {
        evaluate::evaluate(request, work)
    }
}
