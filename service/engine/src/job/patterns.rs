//! What the piles of a job show only together. Each is a warning: it says what the logs have in
//! common and judges nothing.

use super::codes::warnings;
use super::piles::Judged;
use super::request::Request;
use crate::contract::{CheckStatus, Work};
use crate::record::codes::checks as log;

/// Piles that make a pattern.
const SEVERAL: usize = 2;

/// All of them.
pub(super) fn warn(request: &Request, judged: &[Judged], work: &mut Work) {
    stopped_short(judged, work);
    calibration(judged, work);
    operators(request, judged, work);
}

fn named<'a>(piles: impl IntoIterator<Item = &'a Judged>) -> String {
    let names: Vec<&str> = piles
        .into_iter()
        .map(|one| one.pile.label.as_str())
        .collect();
    names.join(", ")
}

/// Piles next to each other that could not be turned to their least depth.
fn stopped_short(judged: &[Judged], work: &mut Work) {
    for run in judged.chunk_by(|a, b| short(a) == short(b)) {
        if run.len() >= SEVERAL && short(&run[0]) {
            work.warn(&warnings::STOPPED_SHORT_TOGETHER, named(run));
        }
    }
}

fn short(one: &Judged) -> bool {
    one.failed(&log::REFUSAL_SHORT)
}

/// Piles whose indicator was out of date, as against those of which no date was sent.
fn calibration(judged: &[Judged], work: &mut Work) {
    let out_of_date = |one: &&Judged| {
        let mut checks = one.checks.iter();
        checks.any(|c| {
            c.id == log::CALIBRATION.id
                && c.status == CheckStatus::NotEvaluated
                && c.demand.is_some()
        })
    };
    let piles: Vec<&Judged> = judged.iter().filter(out_of_date).collect();
    if piles.len() >= SEVERAL {
        let told = format!(
            "{} of {} piles: {}",
            piles.len(),
            judged.len(),
            named(piles.iter().copied())
        );
        work.warn(&warnings::CALIBRATION_OF_MANY, told);
    }
}

/// Whether a pile advances too little in a turn; none where that was not judged.
fn spins(one: &Judged) -> Option<bool> {
    if one.failed(&log::ADVANCE) || one.failed(&log::ADVANCE_IN_WINDOW) {
        return Some(true);
    }
    one.stands(&log::ADVANCE, CheckStatus::Pass)
        .then_some(false)
}

/// Operators all of whose piles spin while no pile of another does. They are told by their
/// piles and not by their names.
fn operators(request: &Request, judged: &[Judged], work: &mut Work) {
    // `judged` holds the piles of the request one by one
    let told = request.piles.iter().zip(judged).filter_map(|(pile, one)| {
        let operator = pile.documents.as_ref()?.operator.as_deref()?.trim();
        Some((operator, one, spins(one)?))
    });
    let all: Vec<(&str, &Judged, bool)> = told.collect();
    let mut seen: Vec<&str> = Vec::new();
    for (operator, _, _) in &all {
        if seen.contains(operator) {
            continue;
        }
        seen.push(operator);
        let (own, others): (Vec<_>, Vec<_>) = all.iter().partition(|(name, _, _)| name == operator);
        let every_own = own.iter().all(|(_, _, spins)| *spins);
        let no_other = others.iter().all(|(_, _, spins)| !spins);
        if own.len() >= SEVERAL && others.len() >= SEVERAL && every_own && no_other {
            let piles = named(own.iter().map(|(_, one, _)| *one));
            let told = format!("{piles}; {} piles of others do not", others.len());
            work.warn(&warnings::OPERATOR_SPINS, told);
        }
    }
}
