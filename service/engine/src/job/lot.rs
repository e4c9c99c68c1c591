//! The piles of a job as a lot: proof tests, load tests, depths against those of tested piles,
//! and what a pile that failed asks of the others.

use std::borrow::Cow;

use super::codes::{checks, warnings};
use super::lot_outcome::*;
use super::piles::Judged;
use super::request::{JobTestResult, LotRules};
use crate::catalogue::CheckDef;
use crate::contract::{Check, CheckStatus, SubjectKind, Verdict, Work, utilisation};
use crate::quantity::{Length, round9};
use crate::record::codes::{checks as log, warnings as log_warnings};
use crate::source::{BEARWELL_CHOICE, CALLER, NYC_SITE_TESTS, Reference, Sourced};
use crate::text::Label;
use crate::torque::codes::warnings::SITE_FACTOR_BAND;

/// How far a depth may differ from a tested one, as a part of it.
pub static LENGTH_TOLERANCE: Sourced<f64> =
    Sourced::new("length_tolerance_ratio", 0.25, &NYC_SITE_TESTS);
/// Piles next to it that a failed pile asks for: the one before and the one behind.
pub static RETEST_COUNT: Sourced<usize> =
    Sourced::new("failed_pile_retest_count", 2, &BEARWELL_CHOICE);

/// Checks of a log that say something of the ground the other piles bear in.
static OF_THE_GROUND: &[&CheckDef] = &[
    &log::TORQUE,
    &log::LEAST_TORQUE,
    &log::FALLING,
    &log::ADVANCE,
    &log::ADVANCE_IN_WINDOW,
    &log::SPUN_OUT,
    &log::TENSION_TOP_TORQUE,
    &log::HELIX_GROUND,
    &log::EXPLAINED,
    &log::RETORQUE,
];

/// Checks of a log that leave its torque unproven where they are open.
static OF_THE_TORQUE: &[&CheckDef] = &[
    &log::TORQUE,
    &log::ROW_SPACING,
    &log::CALIBRATION,
    &log::ADVANCE,
    &log::TENSION_TOP_TORQUE,
    &log::HELIX_GROUND,
    &log::EXPLAINED,
    &log::GROUND_CAPACITY,
];

/// The rules of the lot.
pub(super) fn judge(rules: &LotRules, judged: &[Judged], work: &mut Work) -> JobLot {
    load_tests(judged, work);
    let proof_tests = proof_tests(rules, judged, work);
    let missing = proof_tests
        .as_ref()
        .map_or(0, |p| p.required_count.saturating_sub(p.done_count));
    let length_tolerance = lengths(rules, judged, work);
    let each = rules
        .failed_pile_retest_count
        .unwrap_or_else(|| work.take_table(&RETEST_COUNT));
    let failures = failures(judged, each);
    JobLot {
        proof_tests,
        candidates: candidates(judged, missing),
        length_tolerance,
        retests: retests(rules, judged, each, &failures, work),
        failures,
    }
}

fn tested(one: &Judged) -> bool {
    !one.pile.load_tests.is_empty()
}

fn failed_tests(one: &Judged) -> usize {
    let failed = |t: &&super::request::JobLoadTest| t.result == JobTestResult::Failed;
    one.pile.load_tests.iter().filter(failed).count()
}

fn load_tests(judged: &[Judged], work: &mut Work) {
    for one in judged.iter().filter(|one| tested(one)) {
        let failed = failed_tests(one) as f64;
        let check = Check::at_most(&checks::LOAD_TEST, failed, 0.0, &CALLER);
        work.check(check.subject(SubjectKind::Pile, one.pile.label.as_str()));
    }
}

/// Piles to be proof-tested.
///
/// n = ceil(r N)
///
/// r share asked for; N piles of the lot. Source: arithmetic; the share is the caller's.
fn proof_test_count(ratio: f64, piles: usize) -> usize {
    // 0.05 x 60 is a last bit above 3
    round9(ratio * piles as f64).ceil() as usize
}

fn proof_tests(rules: &LotRules, judged: &[Judged], work: &mut Work) -> Option<ProofTests> {
    let Some(asked_ratio) = rules.proof_test_ratio else {
        work.warn(
            &warnings::NO_PROOF_TESTS_ASKED,
            "send `lot.proof_test_ratio` as the engineer sets it",
        );
        return None;
    };
    let required_count = proof_test_count(asked_ratio, judged.len());
    let done_count = judged.iter().filter(|one| tested(one)).count();
    let check = Check::at_least(
        &checks::PROOF_TESTS,
        required_count as f64,
        done_count as f64,
        &CALLER,
    );
    work.check(check.unproven());
    Some(ProofTests {
        asked_ratio,
        required_count,
        done_count,
        source: (&CALLER).into(),
    })
}

/// Whether a pile is provisional for a reason that has to do with its torque.
fn provisional_by_torque(one: &Judged) -> bool {
    let doubt = |code: &str| {
        OF_THE_TORQUE.iter().any(|def| def.id == code)
            || code == log_warnings::GAUGE_BAND.id
            || code == log_warnings::TENSION_FACTOR_IN_DOUBT.id
            || code == SITE_FACTOR_BAND.id
    };
    one.pile.verdict == Some(Verdict::Provisional)
        && one.pile.reasons.iter().any(|r| doubt(&r.code))
}

/// Piles that stay and were not tested, the least margin of torque first; one without a torque
/// that counts has none.
fn candidates(judged: &[Judged], missing: usize) -> Vec<ProofTestCandidate> {
    let mut all: Vec<ProofTestCandidate> = judged
        .iter()
        .filter(|one| one.stays() && !tested(one))
        .map(|one| ProofTestCandidate {
            pile: one.pile.label.clone(),
            torque_utilisation_ratio: one.pile.torque_utilisation_ratio,
            provisional_by_torque: provisional_by_torque(one),
        })
        .collect();
    let margin = |c: &ProofTestCandidate| c.torque_utilisation_ratio.map_or(f64::INFINITY, round9);
    // stable: piles with one margin keep the order of the job
    all.sort_by(|a, b| margin(b).total_cmp(&margin(a)));
    let chosen = |(at, c): (usize, ProofTestCandidate)| {
        (at < missing || c.provisional_by_torque).then_some(c)
    };
    all.into_iter().enumerate().filter_map(chosen).collect()
}

/// Difference of a depth from a tested one.
///
/// d = |L - L_t| / L_t
///
/// L depth of the tip, m; L_t that of the tested pile, m. Source: arithmetic. Positive.
fn difference(depth: Length, tested: Length) -> f64 {
    ((depth - tested) / tested).abs()
}

fn lengths(rules: &LotRules, judged: &[Judged], work: &mut Work) -> Option<LengthTolerance> {
    let depth = |one: &Judged| one.pile.tip_depth.filter(|d| *d > Length::ZERO);
    let known: Vec<(&Label, Length)> = judged
        .iter()
        .filter(|one| tested(one))
        .filter_map(|one| Some((&one.pile.label, depth(one)?)))
        .collect();
    let (tolerance_ratio, source): (f64, &'static Reference) = match rules.length_tolerance_ratio {
        _ if known.is_empty() => return None,
        Some(own) => (own, &CALLER),
        None => (work.take(&LENGTH_TOLERANCE), LENGTH_TOLERANCE.reference),
    };
    let mut greatest_ratio: Option<f64> = None;
    let mut outside = Vec::new();
    for one in judged.iter().filter(|one| one.stays() && !tested(one)) {
        let Some(tip_depth) = one.pile.tip_depth else {
            continue;
        };
        let mut nearest: Option<(&Label, Length, f64)> = None;
        for (pile, tested) in &known {
            let ratio = difference(tip_depth, *tested);
            if nearest.is_none_or(|(_, _, least)| ratio < least) {
                nearest = Some((pile, *tested, ratio));
            }
        }
        let Some((pile, tested_depth, difference_ratio)) = nearest else {
            continue;
        };
        greatest_ratio = Some(greatest_ratio.unwrap_or(0.0).max(difference_ratio));
        if !utilisation(difference_ratio, tolerance_ratio).1 {
            outside.push(LengthOutside {
                pile: one.pile.label.clone(),
                tip_depth,
                tested_pile: pile.clone(),
                tested_depth,
                difference_ratio,
            });
        }
    }
    if let Some(greatest) = greatest_ratio {
        let check = Check::at_most(&checks::LENGTHS, greatest, tolerance_ratio, source);
        let check = if outside.is_empty() {
            check
        } else {
            let piles: Vec<&str> = outside.iter().map(|o| o.pile.as_str()).collect();
            check.reason(format!(
                "{}: the engineer decides on more tests",
                piles.join(", ")
            ))
        };
        work.check(check.advisory());
    }
    Some(LengthTolerance {
        tolerance_ratio,
        greatest_ratio,
        outside,
        source: source.into(),
    })
}

/// How a pile failed, if it did.
fn failure(one: &Judged) -> Option<LotFailureKind> {
    if failed_tests(one) > 0 {
        return Some(LotFailureKind::LoadTest);
    }
    (one.pile.verdict == Some(Verdict::Reject)).then_some(LotFailureKind::Log)
}

fn concerns_others(one: &Judged, by: LotFailureKind) -> bool {
    let never_there = one.failed(&log::REFUSAL_SHORT) || one.failed(&log::OBSTRUCTION);
    match by {
        LotFailureKind::LoadTest => true,
        LotFailureKind::Log => !never_there && OF_THE_GROUND.iter().any(|def| one.failed(def)),
    }
}

fn failures(judged: &[Judged], each: usize) -> Vec<LotFailure> {
    let mut out = Vec::new();
    for (at, one) in judged.iter().enumerate() {
        let Some(by) = failure(one) else { continue };
        let mut codes: Vec<Cow<'static, str>> = Vec::new();
        for check in &one.checks {
            if check.status == CheckStatus::Fail && !codes.contains(&check.id) {
                codes.push(check.id.clone());
            }
        }
        let concerns_others = concerns_others(one, by);
        let asked = if concerns_others { each } else { 0 };
        out.push(LotFailure {
            pile: one.pile.label.clone(),
            by,
            codes,
            concerns_others,
            retest: nearest(judged, at, asked),
        });
    }
    out
}

/// The piles nearest in the order of the job, the earlier one first at equal distance; those
/// that failed themselves or could not be judged are left out.
fn nearest(judged: &[Judged], at: usize, count: usize) -> Vec<Label> {
    let mut out = Vec::new();
    for distance in 1..judged.len() {
        let both = [at.checked_sub(distance), at.checked_add(distance)];
        for one in both.into_iter().flatten().filter_map(|i| judged.get(i)) {
            if out.len() < count && one.evaluated() && failure(one).is_none() {
                out.push(one.pile.label.clone());
            }
        }
    }
    out
}

fn retests(
    rules: &LotRules,
    judged: &[Judged],
    each_count: usize,
    failures: &[LotFailure],
    work: &mut Work,
) -> Option<LotRetests> {
    let asked_by = |pile: &Label| {
        let label = pile.clone();
        failures.iter().filter(move |f| f.retest.contains(&label))
    };
    let asked: Vec<&Judged> = judged
        .iter()
        .filter(|one| asked_by(&one.pile.label).next().is_some())
        .collect();
    if asked.is_empty() {
        return None;
    }
    let done = |one: &Judged| {
        let by_log = asked_by(&one.pile.label).all(|f| f.by == LotFailureKind::Log);
        tested(one) || by_log && one.stands(&log::RETORQUE, CheckStatus::Pass)
    };
    let open: Vec<Label> = asked
        .iter()
        .filter(|one| !done(one))
        .map(|one| one.pile.label.clone())
        .collect();
    let required_count = asked.len();
    let done_count = required_count - open.len();
    let source = match rules.failed_pile_retest_count {
        Some(_) => &CALLER,
        None => RETEST_COUNT.reference,
    };
    let check = Check::at_least(
        &checks::RETESTS,
        required_count as f64,
        done_count as f64,
        source,
    );
    let check = if open.is_empty() {
        check
    } else {
        let piles: Vec<&str> = open.iter().map(Label::as_str).collect();
        check.reason(format!("open: {}", piles.join(", ")))
    };
    work.check(check.unproven());
    Some(LotRetests {
        each_count,
        required_count,
        done_count,
        open,
        source: source.into(),
    })
}
