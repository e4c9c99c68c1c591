//! AS 2159: basic reduction factors by risk and redundancy, the benefit of load tests, and
//! the design geotechnical strength.

use super::PileRedundancy;
use crate::quantity::Force;
use crate::source::{AS_2159_LOWEST, AS_2159_ROWS, AS_2159_TESTING, Reference, Sourced};
use crate::trace::Trace;

/// Highest rating of the lowest row, and its factors with low and high redundancy.
pub static LOWEST_RISK: Sourced<(f64, f64, f64)> =
    Sourced::new("as_2159_lowest_risk", (1.5, 0.67, 0.76), &AS_2159_LOWEST);
/// The other rows: highest rating, factors with low and high redundancy. The last row is
/// also that of any higher rating.
pub static HIGHER_RISK: Sourced<[(f64, f64, f64); 7]> = Sourced::new(
    "as_2159_higher_risk",
    [
        (2.0, 0.61, 0.70),
        (2.5, 0.56, 0.64),
        (3.0, 0.52, 0.60),
        (3.5, 0.48, 0.56),
        (4.0, 0.45, 0.53),
        (4.5, 0.42, 0.50),
        (5.0, 0.40, 0.47),
    ],
    &AS_2159_ROWS,
);

/// Where a basic reduction factor comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RiskRow {
    /// The lowest row.
    Lowest(f64),
    /// One of the others.
    Higher(f64),
}

/// Basic reduction factor of a rating; on a limit between two rows that of the lower risk.
pub fn basic_reduction(rating: f64, redundancy: PileRedundancy) -> RiskRow {
    let of = |(_, low, high): (f64, f64, f64)| match redundancy {
        PileRedundancy::Low => low,
        PileRedundancy::High => high,
    };
    if rating <= LOWEST_RISK.value.0 {
        return RiskRow::Lowest(of(LOWEST_RISK.value));
    }
    let rows = &HIGHER_RISK.value;
    let row = rows.iter().find(|(limit, _, _)| rating <= *limit);
    RiskRow::Higher(of(*row.unwrap_or(&rows[rows.len() - 1])))
}

/// Reduction factor with load tests.
///
/// phi_g = phi_gb + (phi_tf - phi_gb) K, at least phi_gb
///
/// phi_g geotechnical strength reduction factor; phi_gb basic factor; phi_tf intrinsic test
/// factor, 0.1 to 1; K benefit factor, 0 to 1. Source: AS 2159-2009, remembered. Positive.
pub fn tested_reduction(basic: f64, intrinsic: f64, benefit: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "phi_g",
        "phi_gb + (phi_tf - phi_gb) K, at least phi_gb",
        (basic + (intrinsic - basic) * benefit).max(basic),
        [
            ("phi_gb", basic.into()),
            ("phi_tf", intrinsic.into()),
            ("K", benefit.into()),
        ],
        &AS_2159_TESTING,
    )
}

/// Design geotechnical strength.
///
/// R_d,g = phi_g R_d,ug
///
/// R_d,g design geotechnical strength, N; phi_g reduction factor, 0 to 1; R_d,ug ultimate
/// geotechnical strength, N. Source: AS 2159-2009. Positive.
pub fn design_strength(
    ultimate: Force,
    phi: f64,
    source: &'static Reference,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "R_d,g",
        "phi_g R_d,ug",
        ultimate * phi,
        [("R_d,ug", ultimate.into()), ("phi_g", phi.into())],
        source,
    )
}
