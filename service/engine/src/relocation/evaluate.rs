//! The course of the calculation: the plan is read once, analysed as it was and as it now stands,
//! compared and judged.

use super::apply::apply;
use super::codes::methods;
use super::compare::{self, Spans};
use super::faults;
use super::judge;
use super::moved;
use super::notes;
use super::outcome::{Outcome, SpanToPile};
use super::request::Request;
use super::standing::{Applied, given};
use super::ways;
use crate::contract::{Calculation, Issue, Refusal, Work, list_length};
use crate::layout::bench::{self, Bench, Probed};
use crate::layout::{self, PileLayout, PlanPoint};
use crate::limits::{LARGER_PILES, RELOCATION_EVENTS};
use crate::quantity::Again;
use crate::trace::Trace;

/// Lengths of the lists, those of the plan included.
pub(super) fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    let mut of_layout = Vec::new();
    PileLayout::lengths(&request.layout, &mut of_layout);
    issues.extend(of_layout.into_iter().map(faults::in_layout));
    list_length(
        issues,
        "/events",
        request.events.len(),
        1,
        RELOCATION_EVENTS,
    );
    let Some(ways) = &request.ways_out else {
        return;
    };
    if let Some(larger) = &ways.larger_piles {
        let pointer = "/ways_out/larger_piles";
        list_length(issues, pointer, larger.len(), 1, LARGER_PILES);
    }
    if let Some(obstruction) = &ways.obstruction {
        faults::obstruction_lengths(obstruction, issues);
    }
}

/// The calculation.
pub(super) fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
    let mut issues = Vec::new();
    faults::of_request(request, &mut issues);
    work.method(&methods::RELOCATION);
    let opened = bench::open(&request.layout, work, |bench, work| {
        Ok(relocated(request, bench, std::mem::take(&mut issues), work))
    });
    match opened {
        Ok(answer) => answer,
        Err(refusal) if refusal.interrupted => Err(refusal),
        Err(refusal) => {
            issues.extend(refusal.issues.into_iter().map(faults::in_layout));
            Err(Refusal::of(issues))
        }
    }
}

/// Faults of a request, as far as they show before an analysis.
pub(crate) fn faults_of(request: &Request) -> Vec<Issue> {
    let mut issues = Vec::new();
    faults::of_request(request, &mut issues);
    let mut aside = Work::new(Trace::off(), None);
    let opened = bench::open(&request.layout, &mut aside, |bench, _| {
        if bench.given().is_some() {
            apply(request, bench, &mut issues);
        }
        Ok(())
    });
    if let Err(refusal) = opened {
        issues.extend(refusal.issues.into_iter().map(faults::in_layout));
    }
    issues
}

/// The plan as it now stands, or why it does not.
struct After {
    outcome: layout::Outcome,
    moments: Vec<Probed>,
}

fn relocated(
    request: &Request,
    bench: &mut Bench<'_>,
    mut issues: Vec<Issue>,
    work: &mut Work,
) -> Result<Outcome, Refusal> {
    if bench.given().is_none() {
        return Err(Refusal::of(issues));
    }
    let applied = apply(request, bench, &mut issues);
    let stood: Vec<PlanPoint> = given(&request.layout).iter().map(|p| p.at).collect();
    let places = notes::places(&applied.standing, &stood, bench);
    let probes = notes::probes(&places);
    let mut first = work.beside();
    let before = match bench.tried_with(&probes, &mut first) {
        Ok(before) => before,
        Err(refusal) if refusal.interrupted => return Err(refusal),
        Err(refusal) => {
            let found = bench.as_sent(refusal).issues.into_iter();
            issues.extend(found.map(faults::in_layout));
            return Err(Refusal::of(issues));
        }
    };
    let state_before = compare::state(&before.0, &mut first);
    if let Some(steps) = first.trace.into_steps() {
        work.trace.append("before", steps);
    }
    let spans_before: Vec<Vec<SpanToPile>> = (0..stood.len())
        .map(|i| match applied.standing.piles[i].moved {
            Some(_) => moved::spans(bench, i),
            None => Vec::new(),
        })
        .collect();
    let longest_before = bench.longest_spans();
    for (beam, _) in &applied.stronger {
        if let Some(by) = applied.beams().get(*beam) {
            bench.strengthen(*beam, by);
        }
    }
    let ways_out = request.ways_out.as_ref();
    let asked = ways_out.and_then(|w| ways::asked(request, w, &applied, bench, &mut issues));
    let mut fallen = Vec::new();
    let after = put(
        request,
        &applied,
        bench,
        &probes,
        (&mut issues, &mut fallen),
        work,
    )?;
    if !issues.is_empty() {
        return Err(Refusal::of(issues));
    }
    let state_after = after.as_ref().map(|a| compare::state(&a.outcome, work));
    let spans = Spans {
        before: longest_before,
        after: match &after {
            Some(_) => bench.longest_spans(),
            None => vec![None; bench.beam_labels().len()],
        },
    };
    let spots = match &after {
        Some(_) => moved::spots(&applied.standing, bench),
        None => Vec::new(),
    };
    judge::fallen(&fallen, work);
    judge::keep_outs(&applied.standing, &spots, bench, work);
    let new = after.as_ref().map(|a| &a.outcome);
    let rows = moved::rows(request, &spots, &spans_before, bench, new, work);
    judge::warn(request, &applied.standing, &spots, work);
    judge::strengths(bench, &spans, work);
    let corners = new.and_then(|new| compare::corners(bench, &before.0, new));
    if corners.is_some() {
        work.method(&methods::BRIDGED_CORNER);
    }
    let beams = compare::beams(bench, &before.0, new, &spans);
    judge::overload(request, &applied.standing, bench, work)?;
    let ways_out = match (ways_out, &asked) {
        (Some(sent), Some(asked)) => {
            let drawn = (&before.0, &*spans.before);
            Some(ways::seek(
                request, sent, &applied, asked, drawn, bench, work,
            )?)
        }
        _ => None,
    };
    let nothing = vec![Probed::default(); places.len()];
    let moments = after.as_ref().map_or(&nothing, |a| &a.moments);
    let reinforcement = match new {
        Some(_) => notes::notes(places, &before.1, moments, &before.0),
        None => Vec::new(),
    };
    Ok(Outcome {
        before: state_before,
        after: state_after,
        piles: compare::piles(&applied.standing, &before.0, new),
        beams,
        moved: rows,
        bridged_corners: corners,
        reinforcement,
        ways_out,
        layout: Again(applied.into_layout()),
        result: after.map(|a| a.outcome),
    })
}

/// Puts the piles as they now stand onto the plan and analyses it. None where it has faults or
/// beams no longer stand; both are told.
fn put(
    request: &Request,
    applied: &Applied,
    bench: &mut Bench<'_>,
    probes: &[bench::Probe],
    (issues, fallen): (&mut Vec<Issue>, &mut Vec<(String, String)>),
    work: &mut Work,
) -> Result<Option<After>, Refusal> {
    let found = bench.put(&applied.standing.positions).and_then(|()| {
        // faults of events are told without an analysis
        if issues.is_empty() {
            bench.answered_with(probes, work).map(Some)
        } else {
            Ok(None)
        }
    });
    let refusal = match found {
        Ok(found) => {
            return Ok(found.map(|(outcome, moments)| After { outcome, moments }));
        }
        Err(refusal) if refusal.interrupted => return Err(refusal),
        Err(refusal) => refusal,
    };
    for issue in &refusal.issues {
        if let Some(beam) = faults::too_few_piles(issue) {
            fallen.push((bench.beam_labels()[beam].clone(), issue.detail.clone()));
        }
    }
    let other = Refusal {
        issues: refusal
            .issues
            .into_iter()
            .filter(|i| faults::too_few_piles(i).is_none())
            .collect(),
        interrupted: false,
    };
    let found = bench.as_sent(other).issues.into_iter();
    issues.extend(found.map(|issue| faults::in_events(request, &applied.standing, issue)));
    Ok(None)
}
