//! What `torque-capacity` says of this pile: the torque its load needs, and the capacity that a
//! torque stands for. Nothing of it is calculated here a second time.

use super::found::Found;
use super::outcome::{CapacityOfTorque, RecordRequired};
use super::request::{Request, TorqueTarget};
use crate::contract::{Calculation, Issue, Work};
use crate::quantity::{Force, Length, Torque};
use crate::source::CALLER;
use crate::torque::codes::{checks as torque_checks, warnings as torque_warnings};
use crate::torque::correlation::capacity_by_torque;
use crate::torque::{
    CapacityByTorque, GaugeReading, InstalledTorque, Outcome as TorqueOutcome,
    Request as TorqueRequest, TorqueCapacity, TorqueDirection, TorqueEmbedment, TorqueReading,
};
use crate::trace::Trace;

/// The torque that was to be reached, with what the torque calculation says of the pile.
#[derive(Debug, Clone, Default)]
pub(super) struct TorqueSide {
    /// The torque that was to be reached.
    pub required: Option<RecordRequired>,
    /// Factor and basis.
    pub answer: Option<TorqueOutcome>,
}

impl TorqueSide {
    /// Ultimate capacity in compression that the pile needs: of its load, or what the stated
    /// torque stands for.
    pub fn needed_ultimate(&self) -> Option<Force> {
        let answer = self.answer.as_ref()?;
        match &answer.required {
            Some(required) => required.compression.map(|c| c.ultimate),
            None => {
                let factor = answer.torque_factor.as_ref()?.compression.as_ref()?.factor;
                let torque = self.required.as_ref()?.torque;
                Some(capacity_by_torque(factor, torque, &mut Trace::off()))
            }
        }
    }
}

/// What is asked of the torque calculation; nothing where neither a load nor a torque factor was
/// sent.
fn question(request: &Request) -> Option<TorqueRequest> {
    let from_demand = match &request.target {
        Some(TorqueTarget::FromDemand(from)) => Some(from),
        _ => None,
    };
    if from_demand.is_none() && request.torque_factor.is_none() {
        return None;
    }
    Some(TorqueRequest {
        label: request.label.clone(),
        shaft: request.pile.shaft,
        torque_factor: request.torque_factor.clone(),
        demand: from_demand.map(|from| from.demand),
        design_basis: from_demand.map(|from| from.design_basis),
        ..TorqueRequest::default()
    })
}

/// Asks for the required torque; what is wrong with the question is added at its place in this
/// request.
pub(super) fn ask(request: &Request, work: &mut Work, issues: &mut Vec<Issue>) -> TorqueSide {
    let Some(question) = question(request) else {
        return TorqueSide {
            required: stated(request),
            answer: None,
        };
    };
    let mut aside = Work::new(std::mem::take(&mut work.trace), None);
    let answer = TorqueCapacity::evaluate(&question, &mut aside);
    work.trace = std::mem::take(&mut aside.trace);
    match answer {
        Ok(answer) => {
            carry_over(aside, work);
            TorqueSide {
                required: stated(request).or_else(|| from_demand(&answer)),
                answer: Some(answer),
            }
        }
        Err(refusal) => {
            issues.extend(refusal.issues.into_iter().map(moved));
            TorqueSide::default()
        }
    }
}

/// An issue of the torque calculation at its place in this request.
pub(super) fn moved(issue: Issue) -> Issue {
    let at = &issue.pointer;
    let of_pile = at.is_empty() && issue.detail.starts_with("`shaft`");
    let pointer = if at.starts_with("/shaft") || of_pile {
        format!("/pile{at}")
    } else if at.starts_with("/demand") || at.starts_with("/design_basis") {
        format!("/target/from_demand{at}")
    } else {
        at.clone()
    };
    Issue { pointer, ..issue }
}

/// Methods and warnings that hold for this answer too.
fn carry_over(aside: Work, work: &mut Work) {
    // the other ultimate capacities that were sent are judged there
    let others = torque_checks::OTHER_ULTIMATES.id;
    work.checks
        .extend(aside.checks.into_iter().filter(|c| c.id == others));
    let of_reading = [
        torque_warnings::CONDITIONS_NOT_STATED.id,
        torque_warnings::TENSION_DEPTH_NOT_STATED.id,
    ];
    for warning in aside.warnings {
        let here = of_reading.contains(&&*warning.code) || work.warnings.contains(&warning);
        if !here {
            work.warnings.push(warning);
        }
    }
    work.take_over(Vec::new(), aside.methods, aside.defaults);
}

fn stated(request: &Request) -> Option<RecordRequired> {
    let Some(TorqueTarget::Stated(stated)) = &request.target else {
        return None;
    };
    Some(RecordRequired {
        torque: stated.torque,
        tension: stated.tension == Some(true),
        governing: None,
        by_reduced_factor: None,
        by_least_site_factor: None,
        source: (&CALLER).into(),
    })
}

fn from_demand(answer: &TorqueOutcome) -> Option<RecordRequired> {
    let required = answer.required.as_ref()?;
    let factor = answer.torque_factor.as_ref()?;
    let down = required.compression.map_or(Torque::ZERO, |c| c.torque);
    let used = match required.governing {
        TorqueDirection::Compression => &factor.compression,
        TorqueDirection::Tension => &factor.tension,
    };
    let sides = [&required.compression, &required.tension];
    let greatest = sides
        .into_iter()
        .flatten()
        .filter_map(|s| s.torque_greatest);
    Some(RecordRequired {
        torque: required.torque,
        tension: required.tension.is_some_and(|t| t.demand.si() > 0.0),
        governing: Some(required.governing),
        by_reduced_factor: required.tension_reduced.map(|t| t.torque.max(down)),
        by_least_site_factor: greatest.reduce(Torque::max),
        source: used.as_ref()?.source.clone(),
    })
}

/// Capacity of a torque; nothing without a torque factor.
pub(super) fn capacity(found: &Found, torque: Torque) -> Option<CapacityOfTorque> {
    let mut question = question(found.request)?;
    question.demand = None;
    // too shallow a top helix has no tension by torque
    question.embedment = Some(TorqueEmbedment {
        top_helix_depth: found.top_helix().max(Length::ZERO),
        largest_helix_diameter: found.largest_helix,
    });
    question.installed = Some(InstalledTorque {
        reading: TorqueReading::Gauge(GaugeReading { torque }),
        gauge_accuracy_ratio: None,
        conditions: None,
    });
    let mut aside = Work::new(Trace::off(), None);
    let answer = TorqueCapacity::evaluate(&question, &mut aside).ok()?;
    let installed = answer.installed?;
    let ultimate = |side: &Option<CapacityByTorque>| side.as_ref().map(|c| c.ultimate);
    let design = |side: &Option<CapacityByTorque>| side.as_ref().and_then(|c| c.design);
    Some(CapacityOfTorque {
        torque,
        compression_ultimate: ultimate(&installed.compression),
        compression_design: design(&installed.compression),
        tension_ultimate: ultimate(&installed.tension),
        tension_design: design(&installed.tension),
    })
}
