//! Factors of the uplift comparison: the caller's, or the defaults, each with its source.

use super::constants::{ASD_DEAD_LOAD, LSD_DEAD_LOAD, LSD_FROST};
use super::equations::{allowable_tension, factored_tension, required_by_phi, required_by_safety};
use super::outcome::{FrostFactors, FrostFormat};
use super::uplift_request::{FrostBasis, TensionBy};
use crate::basis::{UpliftClause, resistance_factor, uplift};
use crate::contract::Work;
use crate::quantity::Force;
use crate::source::{CALLER, DERIVED, SourceNote, Sourced};
use crate::trace::Trace;

/// Factors in force.
pub struct Factors {
    /// On the frost force.
    pub frost: f64,
    /// On the dead load.
    pub dead: f64,
    /// On ultimate tension.
    pub tension: TensionFactor,
    /// The same, with sources, for the answer.
    pub shown: FrostFactors,
}

/// Factor on ultimate tension.
#[derive(Clone, Copy)]
pub enum TensionFactor {
    /// It is divided by this.
    Safety(f64),
    /// It is multiplied by this.
    Resistance(f64),
}

impl TensionFactor {
    /// Design resistance of an ultimate one.
    pub fn design(self, ultimate: Force, trace: &mut Trace) -> Force {
        match self {
            TensionFactor::Safety(fs) => allowable_tension(ultimate, fs, trace),
            TensionFactor::Resistance(phi) => factored_tension(ultimate, phi, trace),
        }
    }

    /// Ultimate resistance that a net tension asks for.
    pub fn required(self, net: Force, trace: &mut Trace) -> Force {
        match self {
            TensionFactor::Safety(fs) => required_by_safety(net, fs, trace),
            TensionFactor::Resistance(phi) => required_by_phi(net, phi, trace),
        }
    }
}

/// The caller's value, or the default.
fn pick(own: Option<f64>, default: &Sourced<f64>, work: &mut Work) -> (f64, SourceNote) {
    match own {
        Some(value) => (value, (&CALLER).into()),
        None => (work.take(default), default.reference.into()),
    }
}

/// Factors of a basis; those on tension follow from how it was found.
pub fn of(basis: &FrostBasis, by: TensionBy, work: &mut Work) -> Factors {
    let tested = by == TensionBy::LoadTest;
    match basis {
        FrostBasis::AllowableStress(own) => {
            let (dead, dead_load_source) = pick(own.dead_load_factor, &ASD_DEAD_LOAD, work);
            let default = uplift(UpliftClause::General, tested);
            let (safety, tension_source) = pick(own.tension_safety_factor, default, work);
            Factors {
                frost: 1.0,
                dead,
                tension: TensionFactor::Safety(safety),
                shown: FrostFactors {
                    format: FrostFormat::AllowableStress,
                    frost_load_factor: 1.0,
                    frost_load_source: (&DERIVED).into(),
                    dead_load_factor: dead,
                    dead_load_source,
                    tension_safety_factor: Some(safety),
                    tension_resistance_factor: None,
                    tension_source,
                },
            }
        }
        FrostBasis::LimitStates(own) => {
            let (frost, frost_load_source) = pick(own.frost_load_factor, &LSD_FROST, work);
            let (dead, dead_load_source) = pick(own.dead_load_factor, &LSD_DEAD_LOAD, work);
            let default = resistance_factor(true, tested);
            let (phi, tension_source) = pick(own.tension_resistance_factor, default, work);
            Factors {
                frost,
                dead,
                tension: TensionFactor::Resistance(phi),
                shown: FrostFactors {
                    format: FrostFormat::LimitStates,
                    frost_load_factor: frost,
                    frost_load_source,
                    dead_load_factor: dead,
                    dead_load_source,
                    tension_safety_factor: None,
                    tension_resistance_factor: Some(phi),
                    tension_source,
                },
            }
        }
    }
}
