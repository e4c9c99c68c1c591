//! `length-forecast`: from the logs of the first piles, how deep the others will go, with bands,
//! and which pieces to have on the truck. Judging a single log is in `record`.

pub mod codes;
mod logs;
mod outcome;
mod request;

#[cfg(feature = "compute")]
mod censored;
#[cfg(feature = "compute")]
mod crossing;
#[cfg(feature = "compute")]
mod evaluate;
#[cfg(feature = "compute")]
mod faults;
#[cfg(feature = "compute")]
mod field;
#[cfg(feature = "compute")]
mod hyper;
#[cfg(feature = "compute")]
mod job;
#[cfg(feature = "compute")]
mod matrix;
#[cfg(feature = "compute")]
mod mixture;
#[cfg(feature = "compute")]
mod normal;
#[cfg(feature = "compute")]
mod pieces;
#[cfg(feature = "compute")]
mod posterior;
#[cfg(feature = "compute")]
mod report;
#[cfg(feature = "compute")]
mod warn;

#[cfg(all(test, feature = "compute"))]
mod tests;

pub use logs::*;
pub use outcome::*;
pub use request::*;

use crate::contract::Noun;

/// The calculation `length-forecast`.
#[derive(Debug)]
pub struct LengthForecast;

impl Noun for LengthForecast {
    const NAME: &'static str = "length-forecast";
    const SUMMARY: &'static str = "From the logs of the first piles of a job, how deep the others will go, with bands, and the extensions to have on the truck.";
    type Request = Request;
    type Outcome = Outcome;
}

#[cfg(feature = "compute")]
impl crate::contract::Calculation for LengthForecast {
    fn lengths(request: &Request, issues: &mut Vec<crate::contract::Issue>) {
        use crate::contract::list_length;
        use crate::limits::{FORECAST_EXTENSIONS, FORECAST_LOGS, FORECAST_PILES};
        let (planned, installed) = (request.planned.len(), request.installed.len());
        list_length(issues, "/planned", planned, 1, FORECAST_PILES);
        list_length(issues, "/installed", installed, 0, FORECAST_LOGS);
        for (at, pile) in request.installed.iter().enumerate() {
            if let ForecastRecord::Log(log) = &pile.record {
                let pointer = format!("/installed/{at}/record/log/readings");
                log.readings.lengths(&pointer, issues);
            }
        }
        if let Some(pieces) = &request.pieces {
            let extensions = pieces.extensions.len();
            list_length(
                issues,
                "/pieces/extensions",
                extensions,
                1,
                FORECAST_EXTENSIONS,
            );
        }
    }

    fn evaluate(
        request: &Request,
        work: &mut crate::contract::Work,
    ) -> Result<Outcome, crate::contract::Refusal> {
        evaluate::evaluate(request, work)
    }
}
