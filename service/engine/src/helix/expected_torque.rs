//! The installation torque that goes with a capacity of the soil, with its band.

use super::codes::methods;
use super::depths::AtDepth;
use super::findings::{ExpectedTorqueFindings, TorqueBand};
use super::pile::AxialDirection;
use super::questions::ExpectedTorque;
use crate::contract::{Issue, Work};
use crate::quantity::{Force, Torque, TorqueFactor};
use crate::shaft::Shaft;
use crate::source::{DERIVED, HOYT_CLEMENCE_SCATTER, SourceNote, Sourced};
use crate::torque::{NoFactorOptions, TorqueFactorChoice, factor_of_shaft};
use crate::trace::Trace;

/// Scatter of measured over computed capacity by torque.
pub static TORQUE_BAND: Sourced<f64> =
    Sourced::new("expected_torque_band", 0.4, &HOYT_CLEMENCE_SCATTER);

/// From an ultimate resistance to a torque.
#[derive(Debug, Clone)]
pub(crate) struct TorqueLaw {
    direction: AxialDirection,
    factor: TorqueFactor,
    source: SourceNote,
    band_ratio: f64,
}

impl TorqueLaw {
    /// The law of a question, for the direction that is computed; faults are added.
    pub fn new(
        asked: &ExpectedTorque,
        shaft: &Shaft,
        direction: AxialDirection,
        work: &mut Work,
        issues: &mut Vec<Issue>,
    ) -> Option<Self> {
        let listed = TorqueFactorChoice::ListedShaft(NoFactorOptions {});
        let formula = TorqueFactorChoice::EffectiveDiameter(NoFactorOptions {});
        let default = if crate::torque::factor::find_listed(shaft).is_some() {
            listed
        } else {
            formula
        };
        let choice = asked.torque_factor.as_ref().unwrap_or(&default);
        let tension = direction == AxialDirection::Tension;
        let mut faults = Vec::new();
        let used = factor_of_shaft(choice, shaft, tension, work, &mut faults);
        issues.extend(faults.into_iter().map(|issue| Issue {
            pointer: match issue.pointer.strip_prefix("/shaft") {
                Some(rest) => format!("/pile/shaft{rest}"),
                None => "/expected_torque/torque_factor".to_owned(),
            },
            ..issue
        }));
        let (factor, source) = used?;
        let band_ratio = match asked.band_ratio {
            Some(ratio) => ratio,
            None => work.take(&TORQUE_BAND),
        };
        Some(Self {
            direction,
            factor,
            source,
            band_ratio,
        })
    }

    /// The torque at a depth.
    pub fn at(&self, at: &AtDepth) -> TorqueBand {
        let solution = match self.direction {
            AxialDirection::Compression => at.compression,
            AxialDirection::Tension => at.tension,
        };
        let ultimate = solution.map_or(Force::ZERO, |s| s.ultimate);
        self.of(ultimate, &mut Trace::off())
    }

    /// What goes into the answer for an ultimate resistance.
    pub fn findings(&self, ultimate: Force, work: &mut Work) -> ExpectedTorqueFindings {
        work.method(&methods::EXPECTED_TORQUE);
        work.trace.about(|| "expected torque".to_owned());
        let torque = self.of(ultimate, &mut work.trace);
        work.trace.about(String::new);
        ExpectedTorqueFindings {
            from_direction: self.direction,
            from_ultimate: ultimate,
            torque_factor: self.factor,
            source: self.source.clone(),
            band_ratio: self.band_ratio,
            torque,
        }
    }

    fn of(&self, ultimate: Force, trace: &mut Trace) -> TorqueBand {
        let expected = expected_torque(ultimate, self.factor, trace);
        TorqueBand {
            expected,
            low: expected * (1.0 - self.band_ratio),
            high: expected * (1.0 + self.band_ratio),
        }
    }
}

/// Torque to expect.
///
/// T = Q_ult / K_t; Q_ult ultimate resistance of the soil (N), K_t torque factor (1/m). Range:
/// shafts the factor holds for, away from rock and obstructions. Source: the torque correlation
/// turned round. Sign: positive.
pub fn expected_torque(ultimate: Force, factor: TorqueFactor, trace: &mut Trace) -> Torque {
    trace.step(
        "T",
        "Q_ult / K_t",
        Torque::from_si(ultimate.si() / factor.si()),
        [("Q_ult", ultimate.into()), ("K_t", factor.into())],
        &DERIVED,
    )
}
