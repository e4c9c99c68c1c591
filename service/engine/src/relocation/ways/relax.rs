//! Where nothing works: which limit, relaxed alone, would do with the least, and the outcome then.

use super::bench::{Best, Seeker, Tried};
use super::{rows, shift};
use crate::contract::{Check, Refusal, Relation};
use crate::layout::bench::Along;
use crate::quantity::{Length, LengthUnit, Shown, Size};
use crate::relocation::moved;
use crate::relocation::outcome::{LimitToRelax, WayOutKind};

/// Farthest offset that is tried beyond the limit.
const OFF_MAX: Size = Size::new(12.0, LengthUnit::In);

/// The limits, the smallest excess first.
pub(super) fn limits(
    seeker: &mut Seeker<'_, '_>,
    full: bool,
) -> Result<Vec<LimitToRelax>, Refusal> {
    let near = std::mem::take(&mut seeker.near);
    let mut out = Vec::new();
    for (_, best) in near.iter().filter(|(name, _)| !name.is_empty()) {
        out.extend(of_check(seeker, best, full)?);
    }
    out.extend(farther_along(seeker, full)?);
    out.extend(farther_off(seeker, full)?);
    if out.is_empty() {
        // none alone: the worst check of what is nearest
        for (_, best) in &near {
            out.extend(of_check(seeker, best, full)?);
        }
    }
    let excess = |l: &LimitToRelax| l.excess_ratio.unwrap_or(f64::INFINITY);
    out.sort_by(|a, b| excess(a).total_cmp(&excess(b)));
    Ok(out)
}

/// The check that is missed most.
fn of_check(
    seeker: &mut Seeker<'_, '_>,
    best: &Best,
    full: bool,
) -> Result<Option<LimitToRelax>, Refusal> {
    let miss = |c: &Check| c.utilisation_ratio.unwrap_or(f64::INFINITY);
    let mut worst: Option<&Check> = None;
    for check in &best.judged.failed {
        if worst.is_none_or(|w| miss(check) > miss(w)) {
            worst = Some(check);
        }
    }
    let Some(check) = worst else {
        return Ok(None);
    };
    // the limit is the side that the caller set
    let (from, to) = match check.relation {
        Relation::AtMost => (check.capacity.clone(), check.demand.clone()),
        Relation::AtLeast => (check.demand.clone(), check.capacity.clone()),
    };
    let row = rows::row(seeker, (best.kind, 1), best, &Tried::default(), full)?;
    Ok(row.map(|option| LimitToRelax {
        limit: check.id.to_string(),
        subject: check.subject.as_ref().map(|s| s.label.clone()),
        from,
        to,
        excess_ratio: check.utilisation_ratio.map(|u| u - 1.0),
        option,
    }))
}

/// The nearest place along a beam beyond `max_along` where nothing fails.
fn farther_along(seeker: &mut Seeker<'_, '_>, full: bool) -> Result<Option<LimitToRelax>, Refusal> {
    let Some(most) = seeker.ways.max_along.map(|m| m.si()) else {
        return Ok(None);
    };
    let step = seeker.step();
    let mut nearest: Option<(f64, Best)> = None;
    for on in seeker.drawn.clone() {
        for side in [-1.0, 1.0] {
            let found = first_beyond(seeker, (on, side), (step, most))?;
            if let Some((by, best)) = found
                && nearest.as_ref().is_none_or(|n| by < n.0)
            {
                nearest = Some((by, best));
            }
        }
    }
    let Some((by, best)) = nearest else {
        return Ok(None);
    };
    let shown = |v: f64| Shown::from(Length::from_si(v));
    member(
        seeker,
        "max_along",
        (most, by),
        (shown(most), shown(by)),
        (WayOutKind::ShiftAlong, &best),
        full,
    )
}

fn first_beyond(
    seeker: &mut Seeker<'_, '_>,
    (on, side): (Along, f64),
    (step, most): (f64, f64),
) -> Result<Option<(f64, Best)>, Refusal> {
    for (by, point) in seeker.grid(on, step, side, f64::INFINITY) {
        if by.abs() <= most {
            continue;
        }
        let Some(candidate) = shift::put_along(seeker, on, by, point) else {
            continue;
        };
        let mut tried = Tried::default();
        if let Some((true, _)) = seeker.attempt(candidate, &mut tried)? {
            return Ok(tried.best.map(|best| (by.abs(), best)));
        }
    }
    Ok(None)
}

/// The least offset beyond `max_off_line` where nothing fails.
fn farther_off(seeker: &mut Seeker<'_, '_>, full: bool) -> Result<Option<LimitToRelax>, Refusal> {
    seeker.kind = WayOutKind::ShiftOff;
    let allowed = moved::allowance(seeker.request).0;
    let most = seeker.ways.max_off_line.unwrap_or(allowed).si();
    if !seeker.stands() && seeker.obstacle.is_none() {
        return Ok(None);
    }
    // from the limit outwards, a step on either side at a time
    let step = seeker.step();
    let mut reach = most;
    while reach < OFF_MAX.si() {
        let next = reach + step;
        let mut tried = Tried::default();
        shift::off_within(seeker, &mut tried, reach, next)?;
        if let Some(best) = tried.best.filter(|b| b.judged.feasible()) {
            let shown = |v: f64| Shown::from(Size::from_si(v));
            let by = best.candidate.movement;
            let shown = (shown(most), shown(by));
            return member(
                seeker,
                "max_off_line",
                (most, by),
                shown,
                (WayOutKind::ShiftOff, &best),
                full,
            );
        }
        reach = next;
    }
    Ok(None)
}

fn member(
    seeker: &mut Seeker<'_, '_>,
    name: &str,
    (most, by): (f64, f64),
    (from, to): (Shown, Shown),
    (kind, best): (WayOutKind, &Best),
    full: bool,
) -> Result<Option<LimitToRelax>, Refusal> {
    let row = rows::row(seeker, (kind, 1), best, &Tried::default(), full)?;
    Ok(row.map(|option| LimitToRelax {
        limit: name.to_owned(),
        subject: None,
        from: Some(from),
        to: Some(to),
        excess_ratio: (most > 0.0).then(|| by / most - 1.0),
        option,
    }))
}
