//! The calculations in this process, without a service: the same equations, checks and
//! refusals. Numbers are not rounded, and an answer's plain values are in base SI.

use bearwell_engine::contract::{Answer, Calculation, Call, Issue, Refusal, Work, run};
use bearwell_engine::trace::Trace;
use validator::{Validate, ValidationErrors};

/// Why there is no answer.
#[derive(Debug)]
pub enum Refused {
    /// A list is too short or too long.
    Lengths(Vec<Issue>),
    /// Values lie outside the accepted range.
    Values(ValidationErrors),
    /// It cannot be calculated.
    Physics(Refusal),
}

/// Runs a calculation.
pub fn calculate<C: Calculation>(
    call: &Call<C::Request>,
) -> Result<Answer<C::Outcome>, Box<Refused>> {
    let mut issues = Vec::new();
    C::lengths(&call.request, &mut issues);
    if !issues.is_empty() {
        return Err(Box::new(Refused::Lengths(issues)));
    }
    call.request
        .validate()
        .map_err(|errors| Box::new(Refused::Values(errors)))?;
    let trace = if call.options.steps() {
        Trace::on()
    } else {
        Trace::off()
    };
    run::<C>(call, Work::new(trace, None)).map_err(|refusal| Box::new(Refused::Physics(refusal)))
}
