//! Each pile of a job by its own log: the whole answer of `installation-record`, what of it the
//! lot looks at, and the check that follows its verdict.

use super::codes::checks;
use super::outcome::JobPile;
use super::request::{JobLoadTest, Request};
use crate::catalogue::CheckDef;
use crate::contract::{
    Answer, Call, Check, CheckStatus, Issue, Refusal, SubjectKind, Verdict, Work, run,
};
use crate::quantity::Force;
use crate::record::{self, InstallationRecord, RecordCapacity, TorqueTarget};
use crate::source::DERIVED;
use crate::text::Label;

/// A pile of the job with the checks of its log.
pub(super) struct Judged {
    pub pile: JobPile,
    /// Those of its log; empty where that could not be judged.
    pub checks: Vec<Check>,
}

impl Judged {
    /// Whether a check of its log failed.
    pub fn failed(&self, def: &CheckDef) -> bool {
        self.stands(def, CheckStatus::Fail)
    }

    /// Whether a check of its log stands so.
    pub fn stands(&self, def: &CheckDef, status: CheckStatus) -> bool {
        self.checks
            .iter()
            .any(|c| c.id == def.id && c.status == status)
    }

    /// Whether its log could be judged.
    pub fn evaluated(&self) -> bool {
        self.pile.verdict.is_some()
    }

    /// Whether it stays where it is: what fails would be replaced or driven on.
    pub fn stays(&self) -> bool {
        matches!(
            self.pile.verdict,
            Some(Verdict::Accept | Verdict::Provisional)
        )
    }
}

/// An issue of a pile at its place in the request of the job.
pub(super) fn moved(at: usize, issue: Issue) -> Issue {
    Issue {
        pointer: format!("/piles/{at}{}", issue.pointer),
        ..issue
    }
}

/// All piles, in order. A log that cannot be judged does not lose the others.
pub(super) fn judge(request: &Request, work: &mut Work) -> Result<Vec<Judged>, Refusal> {
    let mut all = Vec::new();
    for (at, pile) in request.piles.iter().enumerate() {
        work.go_on()?;
        let Some(label) = &pile.label else {
            continue;
        };
        let blank = blank(label, tests_of(request, label));
        let judged = match run::<InstallationRecord>(&Call::from(pile.clone()), work.beside()) {
            Ok(answer) => judged(pile, blank, answer, work),
            Err(refusal) if refusal.interrupted => return Err(refusal),
            Err(refusal) => Judged {
                pile: JobPile {
                    issues: refusal.issues.into_iter().map(|i| moved(at, i)).collect(),
                    ..blank
                },
                checks: Vec::new(),
            },
        };
        work.check(check(&judged));
        all.push(judged);
    }
    Ok(all)
}

fn tests_of(request: &Request, label: &Label) -> Vec<JobLoadTest> {
    let tests = request.lot.as_ref().and_then(|l| l.load_tests.as_deref());
    let of_pile = tests.unwrap_or_default().iter();
    of_pile.filter(|t| t.pile == *label).cloned().collect()
}

fn blank(label: &Label, load_tests: Vec<JobLoadTest>) -> JobPile {
    JobPile {
        label: label.clone(),
        verdict: None,
        reasons: Vec::new(),
        issues: Vec::new(),
        warnings: Vec::new(),
        tip_depth: None,
        required_torque: None,
        effective_torque: None,
        torque_utilisation_ratio: None,
        capacity_utilisation_ratio: None,
        next_step_count: 0,
        first_step: None,
        record_complete: None,
        load_tests,
        record: None,
    }
}

fn judged(
    request: &record::Request,
    blank: JobPile,
    answer: Answer<record::Outcome>,
    work: &mut Work,
) -> Judged {
    if let Some(steps) = answer.steps {
        let part = format!("pile {}", blank.label);
        work.trace.append(&part, steps);
    }
    work.take_over(answer.cautions, answer.methods, answer.defaults);
    let result = answer.result;
    let of_torque = |c: &&Check| c.id == record::codes::checks::TORQUE.id;
    let torque = answer.checks.iter().find(of_torque);
    let pile = JobPile {
        verdict: Some(answer.verdict),
        reasons: answer.verdict_reasons,
        warnings: answer.warnings,
        tip_depth: Some(result.tip_depth),
        required_torque: result.required.as_ref().map(|r| r.torque),
        effective_torque: result.effective.as_ref().map(|e| e.torque),
        torque_utilisation_ratio: torque.and_then(|c| c.utilisation_ratio),
        capacity_utilisation_ratio: result
            .capacity
            .as_ref()
            .and_then(|c| capacity_utilisation(request, c)),
        next_step_count: result.next_steps.len(),
        first_step: result.next_steps.first().map(|s| s.step),
        record_complete: result.completeness.as_ref().map(|c| c.complete),
        record: Some(result),
        ..blank
    };
    Judged {
        pile,
        checks: answer.checks,
    }
}

/// Load over the capacity that the torque stands for.
///
/// u = max(P_c / R_c, P_t / R_t)
///
/// P_c, P_t load in compression and tension, N; R_c, R_t allowable capacity or factored
/// resistance by the torque that counts, N. None where no load was sent, where a capacity is
/// missing or nil, and where it is indicative only. Source: arithmetic. Positive.
fn capacity_utilisation(request: &record::Request, capacity: &RecordCapacity) -> Option<f64> {
    let Some(TorqueTarget::FromDemand(from)) = &request.target else {
        return None;
    };
    let by_torque = capacity
        .by_effective_torque
        .filter(|_| !capacity.indicative_only)?;
    let pairs = [
        (from.demand.compression, by_torque.compression_design),
        (from.demand.tension, by_torque.tension_design),
    ];
    let mut greatest = None;
    for (load, design) in pairs {
        let Some(load) = load else { continue };
        let design = design.filter(|d| *d > Force::ZERO)?;
        greatest = Some(f64::max(greatest.unwrap_or(0.0), load / design));
    }
    greatest
}

/// The check that follows the verdict of a pile: what failed, or is open, against none.
fn check(judged: &Judged) -> Check {
    let pile = &judged.pile;
    let of_verdict = |word: &str| {
        let mut codes: Vec<&str> = Vec::new();
        for reason in &pile.reasons {
            if !codes.contains(&&*reason.code) {
                codes.push(&reason.code);
            }
        }
        let check = Check::at_most(&checks::PILE, pile.reasons.len() as f64, 0.0, &DERIVED);
        check.reason(format!("{word}: {}", codes.join(", ")))
    };
    let check = match pile.verdict {
        Some(Verdict::Accept) => Check::at_most(&checks::PILE, 0.0, 0.0, &DERIVED),
        Some(Verdict::Reject) => of_verdict("reject"),
        Some(Verdict::Continue) => of_verdict("continue").deeper_may_do(),
        Some(Verdict::Provisional) => of_verdict("provisional").unproven(),
        Some(Verdict::NotAsked) => {
            Check::not_evaluated(&checks::PILE, "nothing was asked of it", &DERIVED)
        }
        None => {
            let codes: Vec<&str> = pile.issues.iter().map(|i| &*i.code).collect();
            let why = format!("its log cannot be judged: {}", codes.join(", "));
            Check::not_evaluated(&checks::PILE, why, &DERIVED)
        }
    };
    check.subject(SubjectKind::Pile, pile.label.as_str())
}
