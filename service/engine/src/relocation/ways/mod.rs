//! Ways out for one pile: every place and set within the limits is tried on the plan, analysed and
//! judged in full, and the best of each kind is told.

mod bench;
mod kinds;
mod larger;
mod pair;
mod rank;
mod relax;
mod rows;
mod shift;

use self::bench::{Best, Seeker, Tried};
use super::codes::{methods, refusals, warnings};
use super::outcome::{TriedKind, WayOut, WayOutKind, WaysOutReport};
use super::request::{OptionDetail, RelocationEvent, Request, WaysOut};
use super::standing::{Applied, given};
use crate::contract::{Issue, Refusal, Work};
use crate::layout::bench::Bench;
use crate::layout::{Outcome, PlanPoint};
use crate::text::Label;

/// Analyses after which the search stops.
pub(super) const WORK_LIMIT: u64 = 20_000;

/// The pile for which ways out are sought, and faults of what is asked of them.
pub(super) struct Asked {
    /// Its place among the tracked piles.
    pile: usize,
    /// Where it was drawn.
    drawn: PlanPoint,
}

/// Reads what is asked; faults go to `issues`.
pub(super) fn asked(
    request: &Request,
    ways: &WaysOut,
    applied: &Applied,
    bench: &Bench<'_>,
    issues: &mut Vec<Issue>,
) -> Option<Asked> {
    let piles = &applied.standing.piles;
    let pile = match &ways.pile {
        Some(wanted) => {
            let found = piles.iter().position(|p| p.label == wanted.as_str());
            if found.is_none() {
                let detail = format!("`{wanted}` is none of {} piles", piles.len());
                let pointer = "/ways_out/pile";
                issues.push(Issue::new(pointer, &refusals::UNKNOWN_PILE, detail));
            }
            found
        }
        None => {
            let named = request.events.iter().rev().find_map(of_pile);
            if named.is_none() {
                let detail = "send `pile`";
                let pointer = "/ways_out";
                issues.push(Issue::new(pointer, &refusals::NO_PILE_FOR_WAYS_OUT, detail));
            }
            // a label that is not there has its fault at the event
            named.and_then(|l| piles.iter().position(|p| p.label == l.as_str()))
        }
    }?;
    let own = &piles[pile];
    let drawn = match (own.before, own.after) {
        (Some(before), _) => given(&request.layout)[before].at,
        (None, Some(after)) => applied.standing.positions[after].at,
        (None, None) => return None,
    };
    if let Some(sent) = &ways.obstruction {
        let pointer = "/ways_out/obstruction";
        let count = issues.len();
        let obstacle = bench.obstacle(sent, pointer, issues);
        let free = |on: &crate::layout::bench::Along| shift::any_free(bench, *on, &obstacle);
        let beams = bench.along_at(&drawn);
        if issues.len() == count && !beams.is_empty() && !beams.iter().any(free) {
            let labels = beams.iter().map(|b| bench.beam_labels()[b.beam].as_str());
            let labels: Vec<&str> = labels.collect();
            issues.push(Issue::new(
                pointer,
                &refusals::OBSTRUCTION_COVERS_BEAMS,
                format!("{} all along", labels.join(", ")),
            ));
        }
    }
    twice(ways, issues);
    Some(Asked { pile, drawn })
}

fn of_pile(event: &RelocationEvent) -> Option<&Label> {
    match event {
        RelocationEvent::Moved(m) => Some(&m.pile),
        RelocationEvent::StoppedShort(s) => Some(&s.pile),
        RelocationEvent::Replaced(r) => Some(&r.pile),
        RelocationEvent::Omitted(o) => Some(&o.pile),
        RelocationEvent::Added(a) => a.pile.label.as_ref(),
        RelocationEvent::Strengthened(_) => None,
    }
}

/// Two larger piles of one name.
fn twice(ways: &WaysOut, issues: &mut Vec<Issue>) {
    let larger = ways.larger_piles.as_deref().unwrap_or_default();
    for (i, pile) in larger.iter().enumerate() {
        if let Some(first) = larger[..i].iter().position(|p| p.label == pile.label) {
            issues.push(Issue::new(
                format!("/ways_out/larger_piles/{i}/label"),
                &crate::catalogue::refusals::DUPLICATE_LABEL,
                format!("as number {first} of the list"),
            ));
        }
    }
}

/// Where nothing of a kind does, the best of it is tried with larger piles in the stead of those
/// that fail.
fn with_larger(
    seeker: &mut Seeker<'_, '_>,
    kind: WayOutKind,
    found: &mut Tried,
) -> Result<(), Refusal> {
    let places = [
        WayOutKind::ShiftAlong,
        WayOutKind::ShiftOff,
        WayOutKind::ExtraPile,
        WayOutKind::StraddlingPair,
    ];
    if found.feasible_count > 0 || !places.contains(&kind) || seeker.ways.larger_piles.is_none() {
        return Ok(());
    }
    if let Some(best) = &found.best
        && let Some(larger) = larger::enlarged(seeker, best.candidate.clone())?
    {
        seeker.attempt(larger, found)?;
    }
    Ok(())
}

/// Seeks the ways out.
pub(super) fn seek(
    request: &Request,
    ways: &WaysOut,
    applied: &Applied,
    asked: &Asked,
    (before, longest_before): (&Outcome, &[Option<f64>]),
    bench: &mut Bench<'_>,
    work: &mut Work,
) -> Result<WaysOutReport, Refusal> {
    work.method(&methods::WAYS_OUT);
    let mut seeker = Seeker::new(
        request,
        ways,
        applied,
        asked,
        (before, longest_before),
        bench,
        work,
    );
    if !seeker.stands() && ways.obstruction.is_none() {
        let detail = seeker.label().to_owned();
        seeker.work.warn(&warnings::NO_OBSTRUCTION, detail);
    }
    let mut tried = Vec::new();
    for (kind, go) in kinds::ALL {
        let mut found = Tried::default();
        seeker.kind = *kind;
        go(&mut seeker, &mut found)?;
        with_larger(&mut seeker, *kind, &mut found)?;
        tried.push((*kind, found));
    }
    let feasible = tried.iter().any(|(_, t)| t.feasible_count > 0);
    let mut best: Vec<(WayOutKind, Best, usize)> = Vec::new();
    for (i, (kind, found)) in tried.iter_mut().enumerate() {
        if let Some(own) = found.best.take() {
            best.push((*kind, own, i));
        }
    }
    best.sort_by(|a, b| rank::order((a.0, &a.1), (b.0, &b.1)));
    let full = ways.option_detail == Some(OptionDetail::Full);
    let mut options: Vec<WayOut> = Vec::with_capacity(best.len());
    for (rank, (kind, own, i)) in best.into_iter().enumerate() {
        let found = &tried[i].1;
        let row = rows::row(&mut seeker, (kind, rank as u32 + 1), &own, found, full)?;
        options.extend(row);
    }
    let relax = if feasible {
        None
    } else {
        Some(relax::limits(&mut seeker, full)?)
    };
    let may_stand = tried
        .iter()
        .filter(|(kind, _)| *kind == WayOutKind::ShiftAlong)
        .flat_map(|(_, t)| t.stretches.clone())
        .collect();
    if !seeker.complete {
        let detail = format!("{WORK_LIMIT} analyses");
        seeker.work.warn(&warnings::WAYS_OUT_INCOMPLETE, detail);
    }
    let report = WaysOutReport {
        pile: seeker.label().to_owned(),
        drawn_at: asked.drawn,
        stands: seeker.stands(),
        may_stand,
        feasible_count: options.iter().filter(|o| o.feasible).count() as u32,
        options,
        tried: tried
            .into_iter()
            .map(|(kind, t)| TriedKind {
                kind,
                tried_count: t.tried_count,
                feasible_count: t.feasible_count,
                reason: t.reason,
            })
            .collect(),
        relax,
        work_count: seeker.count,
        work_limit_count: WORK_LIMIT,
        complete: seeker.complete,
    };
    seeker.bench.put(&applied.standing.positions).ok();
    Ok(report)
}
