//! What is wrong with a request: everything that needs more than one member to be seen. Too
//! few logs are told in `evaluate.rs`, once each log has been read.

use std::collections::BTreeMap;

use super::codes::refusals;
use super::crossing::readings;
use super::request::*;
use crate::catalogue::refusals::{DUPLICATE_LABEL, MISSING_MEMBER};
use crate::contract::Issue;
use crate::limits::FORECAST_TORQUES;
use crate::quantity::{Length, Torque};

/// Two torques, or two lengths, that differ by less are one.
pub const SAME: f64 = 1e-9;

/// The torque of a planned pile.
pub fn torque_of(request: &Request, pile: &PlannedPile) -> Option<Torque> {
    pile.required_torque.or(request.required_torque)
}

/// The different torques of the planned piles, the least first.
pub fn torques(request: &Request) -> Vec<Torque> {
    let each = request.planned.iter().filter_map(|p| torque_of(request, p));
    let mut all: Vec<f64> = each.map(Torque::si).collect();
    all.sort_by(f64::total_cmp);
    all.dedup_by(|b, a| *b <= *a * (1.0 + SAME));
    all.into_iter().map(Torque::from_si).collect()
}

/// Which of the torques is the one of a pile.
pub fn class_of(torques: &[Torque], torque: Torque) -> usize {
    let below = |t: &&Torque| t.si() <= torque.si() * (1.0 + SAME);
    torques.iter().filter(below).count().max(1) - 1
}

/// All faults.
pub fn faults(request: &Request) -> Vec<Issue> {
    let mut issues = Vec::new();
    labels(
        "/planned",
        request.planned.iter().map(|p| p.label.as_str()),
        &mut issues,
    );
    labels(
        "/installed",
        request.installed.iter().map(|p| p.label.as_str()),
        &mut issues,
    );
    for (at, pile) in request.planned.iter().enumerate() {
        if torque_of(request, pile).is_none() {
            needs_torque(format!("/planned/{at}"), &mut issues);
        }
    }
    for (at, pile) in request.installed.iter().enumerate() {
        let pointer = format!("/installed/{at}/record");
        let (tag, torque) = match &pile.record {
            ForecastRecord::Log(log) => {
                downward(log, &format!("{pointer}/log/readings"), &mut issues);
                continue;
            }
            ForecastRecord::Met(met) => ("met", met.required_torque),
            ForecastRecord::NotMet(not_met) => ("not_met", not_met.required_torque),
        };
        if torque.or(request.required_torque).is_none() {
            needs_torque(format!("{pointer}/{tag}"), &mut issues);
        }
    }
    let torques = torques(request).len();
    if torques > FORECAST_TORQUES {
        let told = format!("{torques} different torques");
        let issue = Issue::new("/planned", &refusals::TOO_MANY_TORQUES, told);
        issues.push(issue.limit(FORECAST_TORQUES.to_string()));
    }
    if torques > 1 && matches!(request.prior, ForecastPrior::Stated(_)) {
        let told = format!("{torques} different torques and one expected depth");
        issues.push(Issue::new(
            "/prior/stated",
            &refusals::PRIOR_OF_ONE_TORQUE,
            told,
        ));
    }
    if let Some(pieces) = &request.pieces {
        pieces_faults(pieces, &mut issues);
    }
    issues
}

fn needs_torque(pointer: String, issues: &mut Vec<Issue>) {
    let told = "`required_torque` is needed here or for all piles";
    issues.push(Issue::new(pointer, &MISSING_MEMBER, told));
}

fn labels<'a>(list: &str, labels: impl Iterator<Item = &'a str>, issues: &mut Vec<Issue>) {
    let mut seen = BTreeMap::new();
    for (at, label) in labels.enumerate() {
        if let Some(first) = seen.insert(label, at) {
            let told = format!("`{label}` is the label of {list}/{first} too");
            issues.push(Issue::new(
                format!("{list}/{at}/label"),
                &DUPLICATE_LABEL,
                told,
            ));
            seen.insert(label, first);
        }
    }
}

fn downward(log: &LoggedPile, pointer: &str, issues: &mut Vec<Issue>) {
    for pair in readings(&log.readings).windows(2) {
        if pair[1].depth <= pair[0].depth {
            let cell = log
                .readings
                .cell_pointer(pair[1].row, super::logs::LOG_DEPTH);
            let told = format!(
                "{} after {}",
                Length::ROLE.in_both_systems(pair[1].depth),
                Length::ROLE.in_both_systems(pair[0].depth)
            );
            let pointer = format!("{pointer}{cell}");
            issues.push(Issue::new(pointer, &refusals::LOG_NOT_DOWNWARD, told));
        }
    }
}

fn pieces_faults(pieces: &ForecastPieces, issues: &mut Vec<Issue>) {
    if pieces.lead_length <= pieces.stick_up {
        let told = Length::ROLE.in_both_systems(pieces.lead_length.si());
        let issue = Issue::new("/pieces/lead_length", &refusals::LEAD_TOO_SHORT, told);
        let above = Length::ROLE.in_both_systems(pieces.stick_up.si());
        issues.push(issue.limit(format!("more than the stick-up of {above}")));
    }
    for (at, extension) in pieces.extensions.iter().enumerate() {
        let same = |e: &ForecastExtension| (e.length - extension.length).si().abs() <= SAME;
        if let Some(first) = pieces.extensions[..at].iter().position(same) {
            let pointer = format!("/pieces/extensions/{at}/length");
            let told = format!("as /pieces/extensions/{first}");
            issues.push(Issue::new(pointer, &refusals::EXTENSION_TWICE, told));
        }
    }
}
