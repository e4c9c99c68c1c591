//! `load-test`: the load-displacement points of a static test to failure loads by several
//! criteria, and the torque factor of the site. The correlation itself is in `torque`.

pub mod codes;
mod conduct;
mod outcome;
mod points;
mod request;

#[cfg(feature = "compute")]
mod criteria;
#[cfg(feature = "compute")]
pub mod curve;
#[cfg(feature = "compute")]
mod evaluate;
#[cfg(feature = "compute")]
pub mod fit;
#[cfg(feature = "compute")]
mod judge;
#[cfg(feature = "compute")]
pub mod line;
#[cfg(feature = "compute")]
mod run;
#[cfg(feature = "compute")]
pub mod scatter;
#[cfg(feature = "compute")]
pub mod shape;
#[cfg(feature = "compute")]
mod site;
#[cfg(feature = "compute")]
pub mod steps;

#[cfg(all(test, feature = "compute"))]
mod tests;

pub use conduct::*;
#[cfg(feature = "compute")]
pub use criteria::name_of as criterion_code;
pub use outcome::*;
pub use points::*;
pub use request::*;

use crate::contract::Noun;

/// The calculation `load-test`.
#[derive(Debug)]
pub struct LoadTest;

impl Noun for LoadTest {
    const NAME: &'static str = "load-test";
    const SUMMARY: &'static str = "Failure load of a static load test by several criteria, which of them hold for its curve, and the torque factor of the site.";
    type Request = Request;
    type Outcome = Outcome;
}

#[cfg(feature = "compute")]
impl crate::contract::Calculation for LoadTest {
    fn lengths(request: &Request, issues: &mut Vec<crate::contract::Issue>) {
        use crate::contract::list_length;
        request.points.lengths("/points", issues);
        let helices = request.helices.len();
        list_length(issues, "/helices", helices, 1, crate::limits::HELICES);
        if let Some(tests) = &request.other_tests {
            let most = crate::limits::PILE_RESISTANCES;
            list_length(issues, "/other_tests", tests.len(), 1, most);
        }
        let asked = request.conduct.as_ref().and_then(|c| c.checks.as_ref());
        if let Some(checks) = asked {
            list_length(issues, "/conduct/checks", checks.len(), 1, 5);
        }
    }

    fn evaluate(
        request: &Request,
        work: &mut crate::contract::Work,
    ) -> Result<Outcome, crate::contract::Refusal> {
        evaluate::evaluate(request, work)
    }
}
