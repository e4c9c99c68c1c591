//! The course of the calculation: each log by itself, the lot, what the piles show together.

use super::codes::{methods, refusals};
use super::outcome::{JobCounts, JobDepths, Outcome};
use super::piles::Judged;
use super::request::{LotRules, Request};
use super::{lot, patterns, piles};
use crate::catalogue::refusals::{DUPLICATE_LABEL, MISSING_MEMBER};
use crate::contract::{Calculation, Issue, Refusal, Verdict, Work, list_length, none_of};
use crate::limits::{JOB_LOAD_TESTS, JOB_PILES};
use crate::quantity::Length;
use crate::record::InstallationRecord;

/// Lengths of the lists, those of each pile included.
pub(super) fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    list_length(issues, "/piles", request.piles.len(), 1, JOB_PILES);
    for (at, pile) in request.piles.iter().enumerate() {
        let mut of_pile = Vec::new();
        InstallationRecord::lengths(pile, &mut of_pile);
        issues.extend(of_pile.into_iter().map(|issue| piles::moved(at, issue)));
    }
    if let Some(tests) = request.lot.as_ref().and_then(|l| l.load_tests.as_ref()) {
        list_length(issues, "/lot/load_tests", tests.len(), 0, JOB_LOAD_TESTS);
    }
}

/// The calculation.
pub(super) fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
    let mut issues = Vec::new();
    label_faults(request, &mut issues);
    if let Some(rules) = &request.lot {
        lot_faults(request, rules, &mut issues);
    }
    none_of(issues)?;
    let judged = piles::judge(request, work)?;
    let Some(depths) = depths(&judged) else {
        let all = judged.into_iter().flat_map(|j| j.pile.issues);
        return Err(Refusal::of(all.collect()));
    };
    work.method(&methods::LOT);
    let rules = request.lot.clone().unwrap_or_default();
    let lot = lot::judge(&rules, &judged, work);
    patterns::warn(request, &judged, work);
    Ok(Outcome {
        label: request.label.clone(),
        tags: request.tags.clone(),
        counts: counts(&judged),
        depths,
        lot,
        piles: judged.into_iter().map(|j| j.pile).collect(),
    })
}

/// Each pile has a name of its own.
fn label_faults(request: &Request, issues: &mut Vec<Issue>) {
    for (at, pile) in request.piles.iter().enumerate() {
        let Some(label) = &pile.label else {
            let told = "`label` is needed: a pile of a job is named by it";
            issues.push(Issue::new(format!("/piles/{at}"), &MISSING_MEMBER, told));
            continue;
        };
        let before = &request.piles[..at];
        if let Some(first) = before.iter().position(|p| p.label.as_ref() == Some(label)) {
            issues.push(Issue::new(
                format!("/piles/{at}/label"),
                &DUPLICATE_LABEL,
                format!("pile {first} has it already"),
            ));
        }
    }
}

fn lot_faults(request: &Request, rules: &LotRules, issues: &mut Vec<Issue>) {
    let tests = rules.load_tests.as_deref().unwrap_or_default();
    for (at, test) in tests.iter().enumerate() {
        let label = Some(&test.pile);
        if request.piles.iter().all(|p| p.label.as_ref() != label) {
            issues.push(Issue::new(
                format!("/lot/load_tests/{at}/pile"),
                &refusals::TEST_OF_UNKNOWN_PILE,
                "no pile of `piles` has this label",
            ));
        }
        let same =
            |t: &super::request::JobLoadTest| t.pile == test.pile && t.direction == test.direction;
        if let Some(first) = tests[..at].iter().position(same) {
            issues.push(Issue::new(
                format!("/lot/load_tests/{at}"),
                &refusals::TEST_TWICE,
                format!("test {first} is of the same pile in the same direction"),
            ));
        }
    }
    if rules.length_tolerance_ratio.is_some() && tests.is_empty() {
        issues.push(Issue::new(
            "/lot/length_tolerance_ratio",
            &refusals::TOLERANCE_WITHOUT_TESTS,
            "leave it out, or send `load_tests`",
        ));
    }
}

fn counts(judged: &[Judged]) -> JobCounts {
    let mut counts = JobCounts {
        pile_count: judged.len(),
        ..JobCounts::default()
    };
    for one in judged {
        let count = match one.pile.verdict {
            Some(Verdict::Accept) => &mut counts.accept_count,
            Some(Verdict::Provisional) => &mut counts.provisional_count,
            Some(Verdict::Continue) => &mut counts.continue_count,
            Some(Verdict::Reject) => &mut counts.reject_count,
            Some(Verdict::NotAsked) | None => &mut counts.not_evaluated_count,
        };
        *count += 1;
    }
    counts
}

/// Depths of the piles that could be judged; none where no pile could.
fn depths(judged: &[Judged]) -> Option<JobDepths> {
    let tip = |j: &Judged| Some((j.pile.tip_depth?, j.pile.label.clone()));
    let all: Vec<_> = judged.iter().filter_map(tip).collect();
    let mut least = all.first()?;
    let mut greatest = least;
    for one in &all {
        if one.0 < least.0 {
            least = one;
        }
        if one.0 > greatest.0 {
            greatest = one;
        }
    }
    let total: Length = all.iter().map(|(depth, _)| *depth).sum();
    Some(JobDepths {
        pile_count: all.len(),
        total,
        mean: total / all.len() as f64,
        least: least.0,
        least_pile: least.1.clone(),
        greatest: greatest.0,
        greatest_pile: greatest.1.clone(),
    })
}
