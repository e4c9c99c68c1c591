//! What the sheet reads out of a request and its answer: limits of torque and advance, the
//! depth from which the ground was fresh. Reads, and calculates nothing.

use bearwell_engine::contract::{Answer, Check};
use bearwell_engine::quantity::{Length, Size, System, Torque};
use bearwell_engine::record::{Outcome, Request};
use bearwell_engine::soil::SoilProfile;
use bearwell_engine::torque::conditions::LEAST_ADVANCE;

use super::steps::Step;

/// Everything a sheet is drawn from.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// What was asked.
    pub request: &'a Request,
    /// What was answered.
    pub answer: &'a Answer<Outcome>,
    /// Units of the sheet.
    pub system: System,
    /// The ground from final grade, where a profile was sent.
    pub profile: Option<&'a SoilProfile>,
    /// The readings as steps.
    pub steps: &'a [Step],
}

/// A torque that is a line down the field.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TorqueLine {
    /// What the pile must reach.
    Required,
    /// The same by the reduced factor in tension.
    Reduced,
    /// What shaft, couplings and bolts may take.
    ShaftLimit,
}

impl<'a> Subject<'a> {
    /// The result.
    pub fn outcome(&self) -> &'a Outcome {
        &self.answer.result
    }

    /// The torques that are lines down the field.
    pub fn torque_lines(&self) -> Vec<(TorqueLine, Torque)> {
        let required = self.outcome().required.as_ref();
        let limits = self.request.limits;
        [
            (TorqueLine::Required, required.map(|r| r.torque)),
            (
                TorqueLine::Reduced,
                required.and_then(|r| r.by_reduced_factor),
            ),
            (TorqueLine::ShaftLimit, limits.and_then(|l| l.shaft_torque)),
        ]
        .into_iter()
        .filter_map(|(line, torque)| Some((line, torque?)))
        .collect()
    }

    /// Greatest torque that was read.
    pub fn greatest(&self) -> Torque {
        let rows = self.outcome().rows.iter();
        rows.filter_map(|r| r.torque)
            .fold(Torque::ZERO, Torque::max)
    }

    /// Greatest depth of the tip.
    pub fn deepest(&self) -> Length {
        let rows = self.outcome().rows.iter();
        rows.map(|r| r.depth).fold(Length::ZERO, Length::max)
    }

    /// Diameter of the largest helix.
    pub fn largest_helix(&self) -> Size {
        let helices = self.outcome().helices.iter();
        helices.map(|h| h.diameter).fold(Size::ZERO, Size::max)
    }

    /// Whether any row has an advance over pitch.
    pub fn advances(&self) -> bool {
        let mut rows = self.outcome().rows.iter();
        rows.any(|r| r.advance_ratio.is_some())
    }

    /// Least advance over pitch: what was sent, or else the default of the rule.
    pub fn least_advance(&self) -> f64 {
        let sent = self.request.limits.and_then(|l| l.least_advance_ratio);
        sent.unwrap_or(LEAST_ADVANCE.value)
    }

    /// A check by its id.
    pub fn check(&self, id: &str) -> Option<&'a Check> {
        self.answer.checks.iter().find(|c| c.id == id)
    }
}
