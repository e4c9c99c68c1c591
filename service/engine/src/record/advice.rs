//! What can be done with a pile that is not accepted, the thing that costs and harms least
//! first, with the numbers it would need. The checks have been judged before.

use super::codes::{checks, methods, warnings};
use super::found::Found;
use super::history::PileStop;
use super::judge_ground::torque_short;
use super::steps::{NextStep, NextStepKind};
use crate::catalogue::CheckDef;
use crate::contract::{CheckStatus, Work};
use crate::math::PI;
use crate::quantity::{Area, Length, Size, Torque, round9};

/// The steps, ranked.
pub(super) fn steps(found: &Found, work: &mut Work) -> Vec<NextStep> {
    let judged = Judged { work };
    let mut out = Vec::new();
    if judged.nothing_open() {
        return out;
    }
    inspect(found, &judged, &mut out);
    deeper(found, &judged, &mut out);
    wait(found, &judged, &mut out);
    larger_helix(found, &judged, &mut out);
    past_the_stop(found, &judged, &mut out);
    load_test(found, &judged, &mut out);
    complete(&judged, &mut out);
    ask(&judged, &mut out);
    work.method(&methods::ADVICE);
    out
}

/// The checks as they stand.
struct Judged<'a> {
    work: &'a Work,
}

impl Judged<'_> {
    fn failed(&self, def: &CheckDef) -> bool {
        self.has(def, CheckStatus::Fail)
    }

    fn has(&self, def: &CheckDef, status: CheckStatus) -> bool {
        let mut all = self.work.checks.iter();
        all.any(|c| c.id == def.id && c.status == status)
    }

    fn any_failed(&self) -> bool {
        self.work
            .checks
            .iter()
            .any(|c| c.status == CheckStatus::Fail)
    }

    fn unproven(&self) -> impl Iterator<Item = &str> {
        let open = |c: &&crate::contract::Check| c.status == CheckStatus::NotEvaluated && c.needed;
        self.work.checks.iter().filter(open).map(|c| &*c.id)
    }

    fn nothing_open(&self) -> bool {
        !self.any_failed() && self.unproven().next().is_none() && self.work.hold_backs.is_empty()
    }

    /// What is missing to the limit of a failed check of a depth or length, m.
    fn missing(&self, def: &CheckDef) -> Option<f64> {
        let failed = |c: &&crate::contract::Check| c.id == def.id && c.status == CheckStatus::Fail;
        let check = self.work.checks.iter().find(failed)?;
        let (demand, capacity) = (check.demand.as_ref()?, check.capacity.as_ref()?);
        (demand.unit() == "m").then(|| demand.value() - capacity.value())
    }
}

fn step(kind: NextStepKind, needs: impl Into<String>) -> NextStep {
    NextStep {
        step: kind,
        needs: needs.into(),
        deeper_by: None,
        to_tip_depth: None,
        torque: None,
        helix_area: None,
        added_helix_diameter: None,
    }
}

fn inspect(found: &Found, judged: &Judged, out: &mut Vec<NextStep>) {
    let warned = judged.work.warnings.iter();
    let turned = warned
        .filter(|w| w.code == warnings::INSPECT_AFTER.id)
        .count()
        > 0;
    if turned {
        let limit = found.request.limits.and_then(|l| l.shaft_torque);
        out.push(NextStep {
            torque: limit,
            ..step(
                NextStepKind::InspectShaft,
                "look at the twist of the shaft, couplings, bolts and what can be seen of the welds before any more torque goes in",
            )
        });
    }
}

/// Depths and lengths are exact; for a torque only the ground can say how deep.
fn deeper(found: &Found, judged: &Judged, out: &mut Vec<NextStep>) {
    if found.stuck.is_some() || !judged.any_failed() {
        return;
    }
    if judged.failed(&checks::ADVANCE) || judged.failed(&checks::ADVANCE_IN_WINDOW) {
        out.push(step(
            NextStepKind::RestoreAdvance,
            "more crowd and a slower turn; torque counts again once the pile has gone down its pitch in a turn over the averaging length",
        ));
    }
    let lengths = [
        &checks::TIP_DEPTH,
        &checks::FROST,
        &checks::FILL,
        &checks::ACTIVE_ZONE,
        &checks::TENSION_DEPTH,
        &checks::PLATEAU,
        &checks::RISE_HELD,
    ];
    let by_length = lengths
        .into_iter()
        .filter_map(|def| judged.missing(def))
        .reduce(f64::max);
    let by_torque = [
        &checks::TORQUE,
        &checks::LEAST_TORQUE,
        &checks::FALLING,
        &checks::TENSION_TOP_TORQUE,
        &checks::RETORQUE,
    ]
    .into_iter()
    .any(|def| judged.failed(def));
    if by_length.is_none() && !by_torque {
        if judged.failed(&checks::HELIX_GROUND) {
            out.push(step(
                NextStepKind::DriveDeeper,
                "until every helix stands in ground that bears",
            ));
        }
        return;
    }
    let window = Length::ROLE.in_both_systems(found.log.windows.longer);
    let needs = match (by_torque, found.required) {
        (true, Some(required)) => format!(
            "until {} holds over {window}; how deep that is only the ground can say",
            Torque::ROLE.in_both_systems(required.torque.si())
        ),
        _ => "the depth and length that are missing".to_owned(),
    };
    let to = by_length.map(|by| found.tip() + Length::from_si(by));
    let most = found.request.depths.maximum_tip_depth;
    let out_of_reach = to
        .zip(most)
        .is_some_and(|(to, most)| round9(to / most) > 1.0);
    if out_of_reach {
        return;
    }
    out.push(NextStep {
        deeper_by: by_length.map(Length::from_si),
        to_tip_depth: to,
        torque: found.required.filter(|_| by_torque).map(|r| r.torque),
        ..step(NextStepKind::DriveDeeper, needs)
    });
}

/// Time helps ground that was disturbed, not a pile that something stopped.
fn wait(found: &Found, judged: &Judged, out: &mut Vec<NextStep>) {
    let stopped = matches!(
        found.request.stop,
        Some(PileStop::Obstruction | PileStop::DriveStalled | PileStop::SpinOut)
    );
    if stopped || judged.failed(&checks::REFUSAL_SHORT) {
        return;
    }
    let warned = |code: &str| judged.work.warnings.iter().any(|w| w.code == code);
    if warned(warnings::RELAXATION_POSSIBLE.id) || warned(warnings::SET_UP_POSSIBLE.id) {
        out.push(NextStep {
            torque: found.required.map(|r| r.torque),
            ..step(
                NextStepKind::WaitAndRetorque,
                "turn the pile again after a wait and send `retorque`; capacity from set-up needs a load test",
            )
        });
    }
}

/// In the same ground the torque grows with the area of the helices.
fn larger_helix(found: &Found, judged: &Judged, out: &mut Vec<NextStep>) {
    let obstructed = matches!(
        found.request.stop,
        Some(PileStop::Obstruction | PileStop::DriveStalled)
    );
    if obstructed || !torque_short(found) || judged.failed(&checks::SHAFT_TORQUE) {
        return;
    }
    let (Some(effective), Some(required)) = (&found.effective, found.required) else {
        return;
    };
    if effective.torque <= Torque::ZERO {
        return;
    }
    let shaft = found.request.pile.shaft;
    let taken = shaft.map_or(0.0, |s| s.gross_area().si());
    let net = |d: Size| PI * d.si() * d.si() / 4.0 - taken;
    let now: f64 = found.helices.iter().map(|h| net(h.diameter)).sum();
    let needed = now * (required.torque / effective.torque);
    let added = 2.0 * ((needed - now + taken) / PI).sqrt();
    out.push(NextStep {
        helix_area: Some(Area::from_si(needed)),
        added_helix_diameter: Some(Size::from_si(added)),
        torque: Some(required.torque),
        ..step(
            NextStepKind::LargerHelix,
            "as an estimate: torque and capacity grow with the net area of the helices in the same ground; the torque limit of shaft and drive head must allow it",
        )
    });
}

/// What gets a stopped pile past what stopped it.
fn past_the_stop(found: &Found, judged: &Judged, out: &mut Vec<NextStep>) {
    let short = judged.failed(&checks::REFUSAL_SHORT);
    if !short && !judged.failed(&checks::OBSTRUCTION) {
        return;
    }
    let target = found.request.depths.minimum_tip_depth;
    let missing = judged.missing(&checks::REFUSAL_SHORT).map(Length::from_si);
    out.push(NextStep {
        deeper_by: missing,
        to_tip_depth: target.filter(|_| short),
        ..step(
            NextStepKind::PreDrill,
            "a pilot hole no wider than the shaft through what stopped the pile; torque counts only below it",
        )
    });
    out.push(step(
        NextStepKind::ExtractAndMove,
        "take the pile out, inspect it, dig the obstruction away or move the pile; what its neighbours then carry is for the layout",
    ));
}

fn load_test(found: &Found, judged: &Judged, out: &mut Vec<NextStep>) {
    let obstruction = judged.failed(&checks::OBSTRUCTION);
    if !obstruction && !torque_short(found) {
        return;
    }
    out.push(step(
        NextStepKind::LoadTest,
        "a static test of this pile to the ultimate capacity it needs; a torque that is short or against an obstruction proves nothing",
    ));
}

fn complete(judged: &Judged, out: &mut Vec<NextStep>) {
    let open: Vec<&str> = judged.unproven().collect();
    if !open.is_empty() {
        let needs = format!("send what is missing for {}", open.join(", "));
        out.push(step(NextStepKind::CompleteRecord, needs));
    }
}

fn ask(judged: &Judged, out: &mut Vec<NextStep>) {
    let for_good = |c: &&crate::contract::Check| c.status == CheckStatus::Fail && !c.deeper_may_do;
    let failed: Vec<&str> = judged
        .work
        .checks
        .iter()
        .filter(for_good)
        .map(|c| &*c.id)
        .collect();
    let held: Vec<&str> = judged.work.hold_backs.iter().map(|h| &*h.code).collect();
    let all: Vec<&str> = failed.into_iter().chain(held).collect();
    if !all.is_empty() {
        let needs = format!("a decision of the engineer of record on {}", all.join(", "));
        out.push(step(NextStepKind::AskEngineer, needs));
    }
}
