//! Safety and resistance factors with their sources, and what they do to an ultimate
//! resistance. When each is taken is for the calculation.

use super::codes::warnings::FACTOR_RESTS_ON_TEST;
use super::{OwnDesignFactor, UpliftClause};
use crate::contract::Work;
use crate::quantity::Force;
use crate::source::{
    CALLER, CANADA_PHI, CANADA_PHI_TENSION, IBC_1810_3_3_1_5, IBC_1810_3_3_1_9, NYC_1810_3_4,
    Reference, Sourced,
};
use crate::trace::Trace;

/// Helical piles: Pa = 0.5 Pu.
pub static HELICAL_SAFETY: Sourced<f64> =
    Sourced::new("helical_safety_factor", 2.0, &IBC_1810_3_3_1_9);
/// Uplift by analysis.
pub static UPLIFT_ANALYSIS: Sourced<f64> =
    Sourced::new("uplift_safety_factor_analysis", 3.0, &IBC_1810_3_3_1_5);
/// Uplift by load test.
pub static UPLIFT_TEST: Sourced<f64> =
    Sourced::new("uplift_safety_factor_load_test", 2.0, &IBC_1810_3_3_1_5);
/// Wind or seismic uplift by analysis.
pub static UPLIFT_WIND_ANALYSIS: Sourced<f64> =
    Sourced::new("uplift_safety_factor_wind_analysis", 2.0, &IBC_1810_3_3_1_5);
/// Wind or seismic uplift by load test.
pub static UPLIFT_WIND_TEST: Sourced<f64> = Sourced::new(
    "uplift_safety_factor_wind_load_test",
    1.5,
    &IBC_1810_3_3_1_5,
);
/// Compression by analysis.
pub static PHI_COMPRESSION_ANALYSIS: Sourced<f64> =
    Sourced::new("resistance_factor_compression_analysis", 0.4, &CANADA_PHI);
/// Compression by static load test.
pub static PHI_COMPRESSION_TEST: Sourced<f64> =
    Sourced::new("resistance_factor_compression_load_test", 0.6, &CANADA_PHI);
/// Tension by analysis.
pub static PHI_TENSION_ANALYSIS: Sourced<f64> = Sourced::new(
    "resistance_factor_tension_analysis",
    0.3,
    &CANADA_PHI_TENSION,
);
/// Tension by static load test.
pub static PHI_TENSION_TEST: Sourced<f64> = Sourced::new(
    "resistance_factor_tension_load_test",
    0.4,
    &CANADA_PHI_TENSION,
);

/// New York City, uplift by analysis.
pub static NEW_YORK_ANALYSIS: Sourced<f64> =
    Sourced::new("new_york_uplift_safety_factor_analysis", 3.0, &NYC_1810_3_4);
/// New York City, uplift by load test.
pub static NEW_YORK_TEST: Sourced<f64> =
    Sourced::new("new_york_uplift_safety_factor_test", 2.0, &NYC_1810_3_4);
/// New York City, uplift by analysis of a group.
pub static NEW_YORK_GROUP: Sourced<f64> = Sourced::new(
    "new_york_uplift_safety_factor_group_analysis",
    2.5,
    &NYC_1810_3_4,
);

/// Safety factor against uplift of a group of deep-foundation elements analysed as one;
/// none where the clause gives none.
///
/// FS = 2.5 in New York City by analysis, 2 by load test. Source: New York City Building
/// Code 1810.3.4.
pub fn group_uplift_safety(clause: UpliftClause, tested: bool) -> Option<&'static Sourced<f64>> {
    match (clause, tested) {
        (UpliftClause::NewYorkCity, false) => Some(&NEW_YORK_GROUP),
        (UpliftClause::NewYorkCity, true) => Some(&NEW_YORK_TEST),
        _ => None,
    }
}

/// Safety factor against uplift of one deep-foundation element.
///
/// FS = 3 by analysis, 2 by load test; for wind or seismic uplift 2 and 1.5; by the clause of
/// helical piles 2; in New York City 3 and 2.
///
/// Source: IBC 1810.3.3.1.5 with its exception, IBC 1810.3.3.1.9, New York City Building Code
/// 1810.3.4.
pub fn uplift(clause: UpliftClause, tested: bool) -> &'static Sourced<f64> {
    match (clause, tested) {
        (UpliftClause::General, false) => &UPLIFT_ANALYSIS,
        (UpliftClause::General, true) => &UPLIFT_TEST,
        (UpliftClause::GeneralWindSeismic, false) => &UPLIFT_WIND_ANALYSIS,
        (UpliftClause::GeneralWindSeismic, true) => &UPLIFT_WIND_TEST,
        (UpliftClause::NewYorkCity, false) => &NEW_YORK_ANALYSIS,
        (UpliftClause::NewYorkCity, true) => &NEW_YORK_TEST,
        (UpliftClause::Helical, _) => &HELICAL_SAFETY,
    }
}

/// Resistance factor of limit-states design.
///
/// phi = 0.4 in compression by analysis and 0.6 by static load test; in tension 0.3 and 0.4.
///
/// Source: National Building Code of Canada, structural commentary; tension from memory.
pub fn resistance_factor(tension: bool, tested: bool) -> &'static Sourced<f64> {
    match (tension, tested) {
        (false, false) => &PHI_COMPRESSION_ANALYSIS,
        (false, true) => &PHI_COMPRESSION_TEST,
        (true, false) => &PHI_TENSION_ANALYSIS,
        (true, true) => &PHI_TENSION_TEST,
    }
}

/// Warns that a factor holds only with load tests; `what` names the factor.
pub(crate) fn tell_of_test(what: &str, work: &mut Work) {
    work.warn(
        &FACTOR_RESTS_ON_TEST,
        format!(
            "{what} is that of a resistance borne out by load tests on this site; by analysis alone it is less favourable"
        ),
    );
}

/// Allowable capacity.
///
/// P_a = P_u / FS
///
/// P_a allowable capacity, N; P_u ultimate capacity, N; FS safety factor, at least 1; with
/// FS = 2 this is P_a = 0.5 P_u. Source: IBC 1810.3.3.1.9, eq. 18-4 (FS 2). Positive.
pub fn allowable(
    ultimate: Force,
    safety: f64,
    source: &'static Reference,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "P_a",
        "P_u / FS",
        ultimate / safety,
        [("P_u", ultimate.into()), ("FS", safety.into())],
        source,
    )
}

/// Factored resistance.
///
/// R_f = phi R_u
///
/// R_f factored resistance, N; phi resistance factor, 0 to 1; R_u ultimate capacity, N.
/// Source: limit-states format of the National Building Code of Canada. Positive.
pub fn factored(ultimate: Force, phi: f64, source: &'static Reference, trace: &mut Trace) -> Force {
    trace.step(
        "R_f",
        "phi R_u",
        ultimate * phi,
        [("R_u", ultimate.into()), ("phi", phi.into())],
        source,
    )
}

/// Capacity by the caller's own factor.
///
/// P_d = P_u / f, or P_d = P_u f
///
/// P_d capacity of the level the caller states, N; P_u ultimate capacity, N; f divisor, at
/// least 1, or multiplier, at most 1. Source: the caller. Positive.
pub fn own_capacity(ultimate: Force, factor: OwnDesignFactor, trace: &mut Trace) -> Force {
    let (equation, value, f) = match factor {
        OwnDesignFactor::Divisor(d) => ("P_u / f", ultimate / d.safety_factor, d.safety_factor),
        OwnDesignFactor::Multiplier(m) => {
            ("P_u f", ultimate * m.resistance_factor, m.resistance_factor)
        }
    };
    trace.step(
        "P_d",
        equation,
        value,
        [("P_u", ultimate.into()), ("f", f.into())],
        &CALLER,
    )
}
