//! The course of the calculation: faults first, then the numbers, then the rules, then what can
//! be done.

use super::codes::{cautions as own_cautions, checks, methods, refusals};
use super::found::Found;
use super::ground::GroundKnown;
use super::outcome::*;
use super::request::Request;
use super::torque_side::{self, TorqueSide};
use super::{
    advice, completeness, judge_depth, judge_ground, judge_proofs, judge_torque, onward, rows,
};
use crate::catalogue::cautions;
use crate::contract::{CheckStatus, Issue, Refusal, Work, list_length, none_of};
use crate::quantity::{Length, RotationalSpeed, Size, Torque, round9};
use crate::torque::torsion::shaft_faults;

/// Lengths of the lists.
pub(super) fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    request.log.lengths("/log", issues);
    let helices = request.pile.helices.len();
    list_length(issues, "/pile/helices", helices, 1, crate::limits::HELICES);
    if let Some(notes) = &request.notes {
        list_length(issues, "/notes", notes.len(), 0, crate::limits::LOG_ROWS);
    }
    completeness::lengths(request, issues);
    if let Some(GroundKnown::Profile(profile)) = &request.ground {
        profile.lengths("/ground/profile", issues);
    }
    onward::lengths(request, issues);
}

/// The calculation.
pub(crate) fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
    let mut issues = Vec::new();
    faults(request, &mut issues);
    let torque = torque_side::ask(request, work, &mut issues);
    none_of(issues)?;
    cautions_of(request, work);
    for method in [
        &methods::READINGS,
        &methods::EFFECTIVE,
        &methods::ACCEPTANCE,
    ] {
        work.method(method);
    }
    let log = rows::read(request);
    let found = Found::new(request, &log, torque.required.as_ref(), work);
    judge_torque::judge(&found, work);
    judge_depth::judge(&found, work);
    judge_proofs::judge(&found, work);
    let ground = judge_ground::judge(&found, &torque, work);
    let rows = log_rows(&found);
    let window_from = found.effective.as_ref().map(|e| e.window_from);
    let completeness = completeness::judge(request, &rows, window_from, work);
    let next_steps = advice::steps(&found, work);
    Ok(outcome(
        &found,
        torque.clone(),
        ground,
        completeness,
        next_steps,
        rows,
        work,
    ))
}

fn outcome(
    found: &Found,
    torque: TorqueSide,
    ground: Option<GroundOutcome>,
    completeness: Option<super::Completeness>,
    next_steps: Vec<super::NextStep>,
    rows: Vec<LogRow>,
    work: &mut Work,
) -> Outcome {
    let request = found.request;
    let last = found.log.final_torque().map(|(_, t)| Torque::from_si(t));
    let capacity = capacity(found, last, work);
    let (relocation, next_request) = onward::tell(request, found.tip(), capacity.as_ref(), work);
    let (factor, basis) = match torque.answer {
        Some(answer) => (answer.torque_factor, answer.design_basis),
        None => (None, None),
    };
    Outcome {
        label: request.label.clone(),
        tags: request.tags.clone(),
        tip_depth: found.tip(),
        helices: found.helices.clone(),
        required: torque.required,
        effective: found.effective.clone(),
        final_torque: last,
        greatest_torque: found.log.greatest_torque().map(|(_, t)| Torque::from_si(t)),
        advance: advance(found),
        capacity,
        torque_factor: factor,
        design_basis: basis,
        ground,
        completeness,
        next_steps,
        relocation,
        next_request,
        rows,
    }
}

fn cautions_of(request: &Request, work: &mut Work) {
    for caution in [
        &cautions::ENGINEER_OF_RECORD,
        &cautions::LOCAL_CODE,
        &cautions::LOCATE_UTILITIES,
        &cautions::TORQUE_IS_EMPIRICAL,
        &cautions::GAUGE,
        &cautions::PRODUCT_STRENGTH,
        &cautions::SOIL_PROFILE,
        &cautions::SITE_SAFETY,
        &own_cautions::RECORD_IS_NO_APPROVAL,
    ] {
        work.caution(caution);
    }
    if request.torque_factor.is_some() {
        work.caution(&cautions::NOT_COVERED);
    }
}

/// Faults that need more than one member to be seen.
fn faults(request: &Request, issues: &mut Vec<Issue>) {
    rows::faults(request, issues);
    completeness::faults(request, issues);
    onward::faults(request, issues);
    let helices = &request.pile.helices;
    for (i, helix) in helices.iter().enumerate() {
        let same = |other: &super::RecordedHelix| {
            round9(other.above_tip.si()) == round9(helix.above_tip.si())
        };
        if helices[..i].iter().any(same) {
            let shown = Length::ROLE.in_both_systems(helix.above_tip.si());
            let pointer = format!("/pile/helices/{i}/above_tip");
            let detail = format!("another helix stands {shown} above the tip");
            issues.push(Issue::new(pointer, &refusals::HELIX_TWICE, detail));
        }
    }
    let depths = request.depths;
    if let (Some(least), Some(most)) = (depths.minimum_tip_depth, depths.maximum_tip_depth)
        && round9(least.si()) > round9(most.si())
    {
        let shown = |l: Length| Length::ROLE.in_both_systems(l.si());
        let detail = format!("{} is above the least depth", shown(most));
        let issue = Issue::new(
            "/depths/maximum_tip_depth",
            &refusals::DEPTHS_CROSSED,
            detail,
        );
        issues.push(issue.limit(format!("at least {}", shown(least))));
    }
    if let Some(GroundKnown::Profile(profile)) = &request.ground {
        issues.extend(profile.faults("/ground/profile"));
    }
    // with a torque factor the torque calculation sees them
    if request.torque_factor.is_none() {
        let mut of_shaft = Vec::new();
        shaft_faults(request.pile.shaft.as_ref(), None, &mut of_shaft);
        issues.extend(of_shaft.into_iter().map(torque_side::moved));
    }
    if let Some(drive) = &request.drive {
        crate::torque::hydraulics::faults(drive, issues);
    }
}

fn advance(found: &Found) -> Option<AdvanceOutcome> {
    let pitch = found.request.pile.helix_pitch?;
    let ratio = found.final_advance?;
    let least = judge_torque::least_advance_in_window(found);
    Some(AdvanceOutcome {
        at_final_torque: pitch * ratio,
        final_ratio: ratio,
        least_ratio_in_window: least.map(|a| Size::from_si(a) / pitch),
    })
}

/// Capacity of the torques, with what stands against it.
fn capacity(found: &Found, last: Option<Torque>, work: &Work) -> Option<RecordCapacity> {
    let of = |torque: Option<Torque>| torque_side::capacity(found, torque?);
    let by_final_torque = of(last)?;
    let against = [
        checks::OBSTRUCTION.id,
        checks::SPUN_OUT.id,
        checks::LEFT_DEEPEST.id,
        checks::GROUND_CAPACITY.id,
        checks::REFUSAL_SHORT.id,
        checks::SHAFT_TORQUE.id,
        checks::RISE_HELD.id,
        checks::PLATEAU.id,
        checks::LEAST_TORQUE.id,
        checks::ADVANCE.id,
        checks::ADVANCE_IN_WINDOW.id,
        checks::FILL.id,
        checks::HELIX_GROUND.id,
        checks::CALIBRATION.id,
        checks::TENSION_DEPTH.id,
    ];
    let open = |status| matches!(status, CheckStatus::Fail | CheckStatus::NotEvaluated);
    // a limit that was never sent says nothing against the correlation
    let stands = |c: &&crate::contract::Check| {
        against.contains(&&*c.id)
            && open(c.status)
            && !(c.id == checks::SHAFT_TORQUE.id && c.demand.is_none())
    };
    let withheld_for: Vec<_> = work
        .checks
        .iter()
        .filter(stands)
        .map(|c| c.id.clone())
        .collect();
    Some(RecordCapacity {
        indicative_only: !withheld_for.is_empty(),
        withheld_for,
        by_effective_torque: of(found.effective.as_ref().map(|e| e.torque)),
        by_final_torque: Some(by_final_torque),
    })
}

fn log_rows(found: &Found) -> Vec<LogRow> {
    let pitch = found.request.pile.helix_pitch;
    let row = |r: &rows::Row| LogRow {
        depth: Length::from_si(r.depth),
        torque: r.torque.map(Torque::from_si),
        standing: r.standing,
        advance_ratio: pitch
            .zip(r.advance)
            .map(|(pitch, a)| Size::from_si(a) / pitch),
        rotation_speed: r.speed.map(RotationalSpeed::from_si),
    };
    found.log.rows.iter().map(row).collect()
}
