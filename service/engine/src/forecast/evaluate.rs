//! The course of the calculation: faults, what each log says of each torque, the forecast for
//! each torque, the piles together. The model is in `posterior.rs`; what is told of it in
//! `report.rs`.

use super::codes::{methods, refusals};
use super::crossing::{Crossing, crossing, readings};
use super::faults::{SAME, class_of, faults, torque_of, torques};
use super::field::Place;
use super::job::loadings;
use super::outcome::{LogReading, LogStatus, Outcome};
use super::posterior::{Evidence, Planned, Posterior, forecast};
use super::request::*;
use super::{report, warn};
use crate::catalogue::cautions;
use crate::contract::{Issue, Refusal, Work};
use crate::quantity::{Length, Torque};
use crate::source::{AC358_AVERAGING_3_FT, BEARWELL_CHOICE, FORECAST_PRIORS, Sourced};
use crate::torque::conditions::AVERAGING_LEAST;

/// Fewest logs that met the torque.
pub static FEWEST_LOGS: Sourced<usize> = Sourced::new("forecast_fewest_logs", 3, &FORECAST_PRIORS);
/// Probability with which depths and pieces suffice, where none is sent.
pub static CONFIDENCE: Sourced<f64> =
    Sourced::new("forecast_confidence_ratio", 0.9, &BEARWELL_CHOICE);

/// One required torque with what the logs say of it.
pub(super) struct Class {
    /// The torque.
    pub torque: Torque,
    /// What each log says.
    pub logs: Vec<LogReading>,
    /// Which planned piles must meet it.
    pub members: Vec<usize>,
    /// The forecast for all planned piles, as if all had to.
    pub posterior: Posterior,
    /// What each planned pile shares with all others.
    pub loadings: Vec<f64>,
}

/// The calculation.
pub(super) fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
    crate::contract::none_of(faults(request))?;
    let averaging_length = request
        .averaging_length
        .unwrap_or_else(|| work.take(&AVERAGING_LEAST));
    let positions = positions(request);
    let torques = torques(request);
    let read: Vec<Vec<LogReading>> = torques
        .iter()
        .map(|torque| logs(request, *torque, averaging_length, work))
        .collect();
    complete(request, &torques, &read)?;
    too_few(request, &torques, &read)?;
    let mut classes = Vec::new();
    for (at, (torque, logs)) in torques.iter().zip(read).enumerate() {
        let mine = |pile: &PlannedPile| {
            torque_of(request, pile).is_some_and(|t| class_of(&torques, t) == at)
        };
        let piles = request.planned.iter().enumerate();
        let posterior = forecast(&evidence(request, &logs, positions), work)?;
        classes.push(Class {
            torque: *torque,
            members: piles.filter(|(_, p)| mine(p)).map(|(i, _)| i).collect(),
            loadings: loadings(&posterior.moments, &posterior.together),
            logs,
            posterior,
        });
    }
    for method in [&methods::CRITERION, &methods::MODEL, &methods::TOTALS] {
        work.method(method);
    }
    cautions_of(work);
    warn::warn(request, &classes, positions, work);
    report::report(request, &classes, positions, averaging_length, work)
}

fn cautions_of(work: &mut Work) {
    work.caution(&cautions::ENGINEER_OF_RECORD);
    work.caution(&cautions::LOCATE_UTILITIES);
    work.caution(&cautions::TORQUE_IS_EMPIRICAL);
    work.caution(&cautions::SOIL_PROFILE);
    work.caution(&cautions::GAUGE);
}

/// Whether every pile has a place in plan.
fn positions(request: &Request) -> bool {
    request.planned.iter().all(|p| p.position.is_some())
        && request.installed.iter().all(|p| p.position.is_some())
}

/// What each log says of a torque.
fn logs(request: &Request, torque: Torque, length: Length, work: &mut Work) -> Vec<LogReading> {
    let each = request.installed.iter().map(|pile| {
        let (found, reason) = read(request, pile, torque.si(), length.si());
        let (status, depth, reason) = match found {
            Crossing::Met(depth) => (LogStatus::Met, Some(depth), reason),
            Crossing::NotMet(depth) => (LogStatus::NotMet, Some(depth), reason),
            Crossing::Silent(why) => (LogStatus::NotUsable, None, Some(why)),
        };
        if let (LogStatus::Met, Some(depth)) = (status, depth) {
            work.trace.about(|| format!("pile {}", pile.label));
            work.trace.step(
                "y",
                "least depth from which on T_m >= T_req",
                Length::from_si(depth),
                [("T_req", torque.into()), ("L_avg", length.into())],
                &AC358_AVERAGING_3_FT,
            );
        }
        LogReading {
            label: pile.label.clone(),
            status,
            depth: depth.map(Length::from_si),
            reason,
        }
    });
    let all = each.collect();
    work.trace.about(String::new);
    all
}

fn read(
    request: &Request,
    pile: &InstalledPile,
    torque: f64,
    length: f64,
) -> (Crossing, Option<String>) {
    let of = |own: Option<Torque>| own.or(request.required_torque).map_or(torque, Torque::si);
    let shown = |torque| Torque::ROLE.in_both_systems(torque);
    match &pile.record {
        ForecastRecord::Log(log) => {
            let obstruction = log.stopped_by_obstruction == Some(true);
            let found = crossing(&readings(&log.readings), torque, length, obstruction);
            let reason = match (&found, obstruction) {
                (Crossing::NotMet(_), true) => Some("stopped by an obstruction".to_owned()),
                (Crossing::NotMet(_), false) => Some("ended before its torque was met".to_owned()),
                _ => None,
            };
            (found, reason)
        }
        ForecastRecord::Met(met) => {
            let (theirs, depth) = (of(met.required_torque), met.depth.si());
            if (theirs - torque).abs() <= SAME * torque {
                (Crossing::Met(depth), None)
            } else if theirs < torque {
                let told = format!("met {} there and no log says more", shown(theirs));
                (Crossing::NotMet(depth), Some(told))
            } else {
                let told = format!("met {}, which says nothing of less", shown(theirs));
                (Crossing::Silent(told), None)
            }
        }
        ForecastRecord::NotMet(not_met) => {
            let theirs = of(not_met.required_torque);
            if theirs <= torque * (1.0 + SAME) {
                let told = format!("did not meet {} down to there", shown(theirs));
                (Crossing::NotMet(not_met.depth.si()), Some(told))
            } else {
                let told = format!("did not meet {}, which says nothing of less", shown(theirs));
                (Crossing::Silent(told), None)
            }
        }
    }
}

/// Planned piles that have met their torque already.
fn complete(
    request: &Request,
    torques: &[Torque],
    read: &[Vec<LogReading>],
) -> Result<(), Refusal> {
    let mut issues = Vec::new();
    for (at, pile) in request.planned.iter().enumerate() {
        let Some(torque) = torque_of(request, pile) else {
            continue;
        };
        let logs = &read[class_of(torques, torque)];
        let own = logs.iter().find(|log| log.label == pile.label);
        if let Some((LogStatus::Met, Some(depth))) = own.map(|log| (log.status, log.depth)) {
            let told = format!(
                "its torque is met at {}; what is left is its least depth of {}",
                Length::ROLE.in_both_systems(depth.si()),
                Length::ROLE.in_both_systems(pile.minimum_depth.si())
            );
            let pointer = format!("/planned/{at}");
            issues.push(Issue::new(pointer, &refusals::PILE_COMPLETE, told));
        }
    }
    crate::contract::none_of(issues)
}

/// Torques with too few logs, and why each log does not count.
fn too_few(request: &Request, torques: &[Torque], read: &[Vec<LogReading>]) -> Result<(), Refusal> {
    let mut issues = Vec::new();
    for (torque, logs) in torques.iter().zip(read) {
        let met = logs
            .iter()
            .filter(|log| log.status == LogStatus::Met)
            .count();
        if met >= FEWEST_LOGS.value {
            continue;
        }
        let shown = Torque::ROLE.in_both_systems(torque.si());
        let told = format!("{met} of {} logs met {shown}", request.installed.len());
        let issue = Issue::new("/installed", &refusals::TOO_FEW_LOGS, told);
        issues.push(issue.limit(FEWEST_LOGS.value.to_string()));
        for (at, log) in logs.iter().enumerate() {
            if log.status == LogStatus::Met {
                continue;
            }
            let why = log.reason.as_deref().unwrap_or("not met");
            let deep = log.depth.map_or(String::new(), |depth| {
                format!(
                    ", known down to {}",
                    Length::ROLE.in_both_systems(depth.si())
                )
            });
            let told = format!("`{}` and {shown}: {why}{deep}", log.label);
            let pointer = format!("/installed/{at}");
            issues.push(Issue::new(pointer, &refusals::LOG_NOT_USABLE, told));
        }
    }
    crate::contract::none_of(issues)
}

/// A place in plan, m.
pub(super) fn place(position: &Option<crate::layout::PlanPoint>) -> Place {
    position.as_ref().map(|p| (p.x.si(), p.y.si()))
}

fn evidence(request: &Request, logs: &[LogReading], places: bool) -> Evidence {
    let mut all = Evidence {
        places,
        prior: match &request.prior {
            ForecastPrior::None => None,
            ForecastPrior::Stated(s) => Some((s.expected_depth.si(), s.standard_deviation.si())),
        },
        ..Evidence::default()
    };
    let mut driven = Vec::new();
    for (pile, log) in request.installed.iter().zip(logs) {
        let at = if places { place(&pile.position) } else { None };
        match (log.status, log.depth) {
            (LogStatus::Met, Some(depth)) => all.met.push((at, depth.si())),
            (LogStatus::NotMet, Some(depth)) => {
                all.not_met.push((at, depth.si()));
                driven.push(&pile.label);
            }
            _ => {}
        }
    }
    let planned = |pile: &PlannedPile| Planned {
        place: if places { place(&pile.position) } else { None },
        least: pile.minimum_depth.si(),
        driven: driven.iter().position(|label| **label == pile.label),
    };
    all.planned = request.planned.iter().map(planned).collect();
    all
}
