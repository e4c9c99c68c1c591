//! From the ultimate pressure to the one that may be used, on the design basis of the
//! request. Judging a load by it is in `judge.rs`.

use super::codes::methods;
use super::families::loads;
use super::ground::Seat;
use super::options::{FootingBasis, FootingPressureKind};
use super::outcome::{FootingBasisUsed, FootingCapacity, FootingDesign, FootingDesignKind};
use crate::contract::Work;
use crate::quantity::SoilStress;
use crate::source::{
    CALLER, CANADA_PHI_SHALLOW, Reference, SAFETY_ON_NET, Sourced, UFC_ALLOWABLE_PRESSURE,
    UFC_FOOTING_SAFETY,
};
use crate::trace::Trace;

/// Safety factor against failure of the soil.
pub static FOOTING_SAFETY: Sourced<f64> =
    Sourced::new("footing_safety_factor", 3.0, &UFC_FOOTING_SAFETY);
/// Resistance factor of bearing.
pub static FOOTING_RESISTANCE: Sourced<f64> =
    Sourced::new("footing_resistance_factor", 0.5, &CANADA_PHI_SHALLOW);

/// The factor in force.
#[derive(Debug, Clone, Copy)]
pub(super) struct Factor {
    pub kind: FootingDesignKind,
    value: f64,
    applied_to: FootingPressureKind,
    pub source: &'static Reference,
}

/// The factor of a design basis, defaults taken.
pub(super) fn factor(basis: &FootingBasis, work: &mut Work) -> Factor {
    let (kind, sent, applied_to, default) = match basis {
        FootingBasis::AllowableStress(a) => {
            work.method(&methods::FOOTING_ALLOWABLE);
            let kind = FootingDesignKind::Allowable;
            (kind, a.safety_factor, a.applied_to, &FOOTING_SAFETY)
        }
        FootingBasis::LimitStates(l) => {
            work.method(&methods::FOOTING_LIMIT_STATES);
            let kind = FootingDesignKind::Factored;
            (kind, l.resistance_factor, l.applied_to, &FOOTING_RESISTANCE)
        }
    };
    let (value, source) = match sent {
        Some(value) => (value, &CALLER),
        None => (work.take(default), default.reference),
    };
    Factor {
        kind,
        value,
        applied_to: applied_to.unwrap_or(FootingPressureKind::Gross),
        source,
    }
}

impl Factor {
    /// As the answer carries it.
    pub fn used(&self) -> FootingBasisUsed {
        let divides = self.kind == FootingDesignKind::Allowable;
        FootingBasisUsed {
            safety_factor: divides.then_some(self.value),
            resistance_factor: (!divides).then_some(self.value),
            applied_to: self.applied_to,
            source: self.source.into(),
        }
    }

    /// Pressures that may be used of one capacity.
    pub fn design(
        &self,
        capacity: &FootingCapacity,
        seat: &Seat,
        work: &mut Work,
    ) -> FootingDesign {
        let trace = &mut work.trace;
        trace.about(|| capacity.method.name().to_owned());
        let overburden = seat.base.overburden;
        let (gross, net) = match self.applied_to {
            FootingPressureKind::Gross => {
                let gross = self.on(capacity.ultimate_gross, &UFC_ALLOWABLE_PRESSURE, trace);
                (gross, less_overburden(gross, overburden, trace))
            }
            FootingPressureKind::Net => {
                let net = self.on(capacity.ultimate_net, &SAFETY_ON_NET, trace);
                (with_overburden(net, overburden, trace), net)
            }
        };
        FootingDesign {
            kind: self.kind,
            gross,
            net,
            load: loads(gross, net, seat.base.area, seat.base.width, trace),
        }
    }

    fn on(
        &self,
        ultimate: SoilStress,
        source: &'static Reference,
        trace: &mut Trace,
    ) -> SoilStress {
        match self.kind {
            FootingDesignKind::Allowable => allowable(ultimate, self.value, source, trace),
            FootingDesignKind::Factored => factored(ultimate, self.value, source, trace),
        }
    }
}

/// Allowable pressure.
///
/// q_a = q / F; q ultimate pressure, gross or net (Pa), F safety factor. Range: F from 1.
/// Source: UFC 3-220-20 eq. 5-13 (gross); common practice (net). Sign: positive.
fn allowable(q: SoilStress, f: f64, source: &'static Reference, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_a",
        "q / F",
        q / f,
        [("q", q.into()), ("F", f.into())],
        source,
    )
}

/// Factored resistance.
///
/// q_r = phi_r q; q ultimate pressure, gross or net (Pa), phi_r resistance factor. Range:
/// phi_r up to 1. Source: limit-states design. Sign: positive.
fn factored(q: SoilStress, phi: f64, source: &'static Reference, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_r",
        "phi_r q",
        q * phi,
        [("q", q.into()), ("phi_r", phi.into())],
        source,
    )
}

/// Net pressure that may be used, from the gross one.
///
/// q_n = q_g - s_v, at least 0; q_g gross pressure that may be used, s_v overburden (Pa).
/// Range: from 0. Source: UFC 3-220-20 eq. 5-14. Sign: positive.
fn less_overburden(gross: SoilStress, overburden: SoilStress, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_n",
        "max(q_g - s_v, 0)",
        SoilStress::from_si((gross - overburden).si().max(0.0)),
        [("q_g", gross.into()), ("s_v", overburden.into())],
        &UFC_ALLOWABLE_PRESSURE,
    )
}

/// Gross pressure that may be used, from the net one.
///
/// q_g = q_n + s_v; q_n net pressure that may be used, s_v overburden (Pa). Range: from 0.
/// Source: UFC 3-220-20 eq. 5-2. Sign: positive.
fn with_overburden(net: SoilStress, overburden: SoilStress, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_g",
        "q_n + s_v",
        net + overburden,
        [("q_n", net.into()), ("s_v", overburden.into())],
        &UFC_ALLOWABLE_PRESSURE,
    )
}
