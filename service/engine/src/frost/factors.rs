//! Factors of the uplift comparison: the caller's, or the defaults, each with its source.

use super::constants::{ASD_DEAD_LOAD, LSD_DEAD_LOAD, LSD_FROST};
use super::equations::{allowable_tension, factored_tension, required_by_phi, required_by_safety};
use super::resistance_request::{FrostBasis, TensionBy};
use super::uplift_outcome::{FrostFactors, FrostFormat};
use crate::basis::{UpliftClause, resistance_factor, uplift};
use crate::contract::Work;
use crate::quantity::Force;
use crate::source::{CALLER, DERIVED, SourceNote, Sourced};
use crate::trace::Trace;

/// Factors in force.
pub struct Factors {
    /// On the force of the moving ground.
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
    /// What was sent is a design resistance already.
    Sent,
}

impl TensionFactor {
    /// Design resistance of an ultimate one.
    pub fn design(self, ultimate: Force, trace: &mut Trace) -> Force {
        match self {
            TensionFactor::Safety(fs) => allowable_tension(ultimate, fs, trace),
            TensionFactor::Resistance(phi) => factored_tension(ultimate, phi, trace),
            TensionFactor::Sent => ultimate,
        }
    }

    /// Ultimate resistance that a net tension asks for, where there is a factor to say so.
    pub fn required(self, net: Force, trace: &mut Trace) -> Option<Force> {
        match self {
            TensionFactor::Safety(fs) => Some(required_by_safety(net, fs, trace)),
            TensionFactor::Resistance(phi) => Some(required_by_phi(net, phi, trace)),
            TensionFactor::Sent => None,
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

/// Factors of a basis; those on tension follow from how it was found, and there are none
/// where it is not `ultimate`.
pub fn of(basis: &FrostBasis, by: TensionBy, ultimate: bool, work: &mut Work) -> Factors {
    let tested = by == TensionBy::LoadTest;
    match basis {
        FrostBasis::AllowableStress(own) => {
            let (dead, dead_load_source) = pick(own.dead_load_factor, &ASD_DEAD_LOAD, work);
            let (safety, tension_source) = ultimate
                .then(|| {
                    let default = uplift(UpliftClause::General, tested);
                    pick(own.tension_safety_factor, default, work)
                })
                .map_or((None, (&CALLER).into()), |(fs, source)| (Some(fs), source));
            Factors {
                frost: 1.0,
                dead,
                tension: safety.map_or(TensionFactor::Sent, TensionFactor::Safety),
                shown: FrostFactors {
                    format: FrostFormat::AllowableStress,
                    frost_load_factor: 1.0,
                    frost_load_source: (&DERIVED).into(),
                    dead_load_factor: dead,
                    dead_load_source,
                    tension_safety_factor: safety,
                    tension_resistance_factor: None,
                    tension_source,
                },
            }
        }
        FrostBasis::LimitStates(own) => {
            let (frost, frost_load_source) = pick(own.frost_load_factor, &LSD_FROST, work);
            let (dead, dead_load_source) = pick(own.dead_load_factor, &LSD_DEAD_LOAD, work);
            let (phi, tension_source) = ultimate
                .then(|| {
                    let default = resistance_factor(true, tested);
                    pick(own.tension_resistance_factor, default, work)
                })
                .map_or((None, (&CALLER).into()), |(phi, source)| {
                    (Some(phi), source)
                });
            Factors {
                frost,
                dead,
                tension: phi.map_or(TensionFactor::Sent, TensionFactor::Resistance),
                shown: FrostFactors {
                    format: FrostFormat::LimitStates,
                    frost_load_factor: frost,
                    frost_load_source,
                    dead_load_factor: dead,
                    dead_load_source,
                    tension_safety_factor: None,
                    tension_resistance_factor: phi,
                    tension_source,
                },
            }
        }
    }
}
