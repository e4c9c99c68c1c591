//! The factors a design basis puts on the capacities of this calculation. Their values are
//! in `crate::basis`, torque factors in `factor.rs`.

use super::codes::methods;
use super::correlation::{ultimate_for_factored, ultimate_for_service};
use super::options::{TorqueAllowableStress, TorqueBasis};
use super::outcome::{TorqueBasisFormat, TorqueBasisOutcome, TorqueDirection, TorqueSafetyUsed};
use crate::basis::codes::warnings::UPLIFT_CLAUSES_DISAGREE;
use crate::basis::{
    AxialLimitStates, HELICAL_SAFETY, ResistanceProof, UpliftClause, allowable, factored,
    resistance_factor, tell_of_test, uplift,
};
use crate::contract::Work;
use crate::quantity::Force;
use crate::source::{CALLER, Reference, Sourced};
use crate::trace::Trace;

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
    let tested = basis.proof == Some(ResistanceProof::LoadTest);
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
            tell_of_test("tension_safety_factor", work);
        }
    }
    pair(TorqueBasisFormat::AllowableStress, compression, up)
}

fn limit_states(basis: &AxialLimitStates, tension: bool, work: &mut Work) -> Factors {
    let tested = basis.proof == Some(ResistanceProof::LoadTest);
    let (down, up) = (
        resistance_factor(false, tested),
        resistance_factor(true, tested),
    );
    let unsent = basis.compression_resistance_factor.is_none()
        || tension && basis.tension_resistance_factor.is_none();
    if tested && unsent {
        tell_of_test("the resistance factor", work);
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
