//! Factors of the design basis: what divides or multiplies an ultimate capacity, with
//! its source. Torque factors are in `factor.rs`.

use super::codes::methods;
use super::correlation::{allowable, factored, ultimate_for_factored, ultimate_for_service};
use super::options::{TorqueAllowableStress, TorqueBasis, TorqueLimitStates, TorqueProof};
use super::outcome::{TorqueBasisFormat, TorqueBasisOutcome, TorqueDirection, TorqueSafetyUsed};
use crate::contract::Work;
use crate::helix::UpliftClause;
use crate::helix::codes::warnings::{FACTOR_RESTS_ON_TEST, UPLIFT_CLAUSES_DISAGREE};
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

/// One factor: divides (allowable stress) or multiplies (limit states).
#[derive(Debug, Clone, Copy)]
pub(super) struct Factor {
    format: TorqueBasisFormat,
    value: f64,
    source: &'static Reference,
}

impl Factor {
    /// Allowable capacity or factored resistance of an ultimate capacity.
    pub fn design(&self, ultimate: Force, trace: &mut Trace) -> Force {
        match self.format {
            TorqueBasisFormat::AllowableStress => {
                allowable(ultimate, self.value, self.source, trace)
            }
            TorqueBasisFormat::LimitStates => factored(ultimate, self.value, self.source, trace),
        }
    }

    /// Ultimate capacity that a load needs.
    pub fn ultimate(&self, load: Force, trace: &mut Trace) -> Force {
        match self.format {
            TorqueBasisFormat::AllowableStress => {
                ultimate_for_service(load, self.value, self.source, trace)
            }
            TorqueBasisFormat::LimitStates => {
                ultimate_for_factored(load, self.value, self.source, trace)
            }
        }
    }

    /// Where it comes from.
    pub const fn source(&self) -> &'static Reference {
        self.source
    }

    fn used(&self) -> TorqueSafetyUsed {
        let divides = self.format == TorqueBasisFormat::AllowableStress;
        TorqueSafetyUsed {
            safety_factor: divides.then_some(self.value),
            resistance_factor: (!divides).then_some(self.value),
            source: self.source.into(),
        }
    }
}

/// The factors of both directions.
#[derive(Debug, Clone, Copy)]
pub(super) struct Factors {
    compression: Factor,
    tension: Factor,
}

impl Factors {
    /// The factor of one direction.
    pub fn of(&self, direction: TorqueDirection) -> &Factor {
        match direction {
            TorqueDirection::Compression => &self.compression,
            TorqueDirection::Tension => &self.tension,
        }
    }

    /// As the answer carries them.
    pub fn outcome(&self) -> TorqueBasisOutcome {
        TorqueBasisOutcome {
            format: self.compression.format,
            compression: self.compression.used(),
            tension: self.tension.used(),
        }
    }
}

/// The factors of a design basis. `tension` says whether tension is asked about, so that a
/// factor from memory warns only where it is used.
pub(super) fn factors(basis: &TorqueBasis, tension: bool, work: &mut Work) -> Factors {
    match basis {
        TorqueBasis::AllowableStress(a) => {
            work.method(&methods::ALLOWABLE_STRESS);
            allowable_stress(a, tension, work)
        }
        TorqueBasis::LimitStates(l) => {
            work.method(&methods::LIMIT_STATES);
            limit_states(l, tension, work)
        }
    }
}

fn allowable_stress(basis: &TorqueAllowableStress, tension: bool, work: &mut Work) -> Factors {
    let by = |constant: &Sourced<f64>| (constant.value, constant.reference);
    let compression = basis
        .compression_safety_factor
        .map_or(by(&HELICAL_SAFETY), |v| (v, &CALLER));
    let clause = basis.uplift_clause.unwrap_or(UpliftClause::General);
    let tested = basis.proof == Some(TorqueProof::LoadTest);
    let up = match basis.tension_safety_factor {
        Some(own) => (own, &CALLER),
        None => by(uplift(clause, tested)),
    };
    if tension && basis.tension_safety_factor.is_none() {
        if matches!(clause, UpliftClause::General | UpliftClause::Helical) {
            work.warn(
                &UPLIFT_CLAUSES_DISAGREE,
                format!(
                    "{} by the general clause, {} by the clause of helical piles; {} is used",
                    uplift(UpliftClause::General, tested).value,
                    HELICAL_SAFETY.value,
                    up.0
                ),
            );
        }
        if tested && clause != UpliftClause::Helical {
            rests_on_test("safety factor in tension", work);
        }
    }
    pair(TorqueBasisFormat::AllowableStress, compression, up)
}

fn rests_on_test(what: &str, work: &mut Work) {
    work.warn(
        &FACTOR_RESTS_ON_TEST,
        format!("{what}: by analysis alone it is less favourable"),
    );
}

fn limit_states(basis: &TorqueLimitStates, tension: bool, work: &mut Work) -> Factors {
    let (down, up) = match basis.proof {
        Some(TorqueProof::LoadTest) => (&PHI_COMPRESSION_TEST, &PHI_TENSION_TEST),
        _ => (&PHI_COMPRESSION_ANALYSIS, &PHI_TENSION_ANALYSIS),
    };
    let tested = basis.proof == Some(TorqueProof::LoadTest);
    let unsent = basis.compression_resistance_factor.is_none()
        || tension && basis.tension_resistance_factor.is_none();
    if tested && unsent {
        rests_on_test("resistance factors", work);
    }
    let compression = basis
        .compression_resistance_factor
        .map_or((down.value, down.reference), |v| (v, &CALLER));
    let tension = match basis.tension_resistance_factor {
        Some(own) => (own, &CALLER),
        None if tension => (work.take(up), up.reference),
        None => (up.value, up.reference),
    };
    pair(TorqueBasisFormat::LimitStates, compression, tension)
}

fn pair(
    format: TorqueBasisFormat,
    compression: (f64, &'static Reference),
    tension: (f64, &'static Reference),
) -> Factors {
    let factor = |(value, source)| Factor {
        format,
        value,
        source,
    };
    Factors {
        compression: factor(compression),
        tension: factor(tension),
    }
}
