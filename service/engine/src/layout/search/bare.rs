//! Lines whose beams meet without a pile: the places that are left, and what counts as an
//! end then. Decides nothing about which meetings go without.

use super::Task;
use super::places::Places;
use super::stack::{Known, Line};
use crate::contract::utilisation;
use crate::layout::plan::Plan;

/// How far the last pile of a run may be from its end at a meeting without a pile.
///
/// Where another run goes through, the beam rests on it and the distance is a span;
/// where all end, it is an overhang.
fn reach(task: &Task<'_>, run: usize, meeting: usize) -> f64 {
    let plan = &task.frame.plan;
    if goes_through(plan, meeting, run) {
        task.limits.max_spacing.si()
    } else {
        task.limits.max_overhang.map_or(0.0, |o| o.si())
    }
}

/// Whether another run than this one goes on beyond a meeting.
fn goes_through(plan: &Plan, meeting: usize, run: usize) -> bool {
    plan.meetings[meeting]
        .on
        .iter()
        .any(|(r, at)| *r != run && *at > 0.0 && *at < plan.runs[*r].length)
}

/// The line of a run where these meetings have no pile; none where the spacing limits then
/// leave no layout. A run that needs no pile of its own may be left without places.
pub(super) fn without(task: &Task<'_>, line: &Line, bare: &[bool]) -> Option<Line> {
    let p = &line.places;
    let gone = |m: &Option<usize>| m.is_some_and(|m| bare[m]);
    let is_bare = |m: usize| bare[m];
    if !p.meeting.iter().any(gone) {
        let fits = p.can_be_met() || may_be_empty(task, p, &is_bare);
        return fits.then(|| line.clone());
    }
    let mut places = p.keep(|i| !gone(&p.meeting[i]));
    places.relink(task, line.length, ends(task, p.run, &is_bare));
    let fits = places.can_be_met() || may_be_empty(task, p, &is_bare);
    fits.then(|| Line {
        known: Known::of(&places, &line.loads),
        places,
        ..line.clone()
    })
}

/// Whether a run ends on one that goes on, at a meeting without a pile.
pub(super) fn rests(task: &Task<'_>, run: usize, end: f64, bare: &dyn Fn(usize) -> bool) -> bool {
    let plan = &task.frame.plan;
    let own = plan.runs[run].meetings.iter();
    own.filter(|m| m.at == end)
        .any(|m| bare(m.meeting) && goes_through(plan, m.meeting, run))
}

/// How far the first and the last pile may be from the ends of a run.
pub(super) fn ends(task: &Task<'_>, run: usize, bare: &dyn Fn(usize) -> bool) -> [f64; 2] {
    let r = &task.frame.plan.runs[run];
    let over = task.limits.max_overhang.map_or(0.0, |o| o.si());
    [0.0, r.length].map(|end| {
        r.meetings
            .iter()
            .find(|m| m.at == end && bare(m.meeting))
            .map_or(over, |m| reach(task, run, m.meeting))
    })
}

/// Whether a run may hang between two beams that go through, with no pile at all.
pub(super) fn may_be_empty(task: &Task<'_>, places: &Places, bare: &dyn Fn(usize) -> bool) -> bool {
    let run = places.run;
    let r = &task.frame.plan.runs[run];
    let must = |i: usize| places.forced[i] && !places.meeting[i].is_some_and(bare);
    [0.0, r.length]
        .iter()
        .all(|end| rests(task, run, *end, bare))
        && utilisation(r.length, task.limits.max_spacing.si()).1
        && !(0..places.at.len()).any(must)
}

/// Whether a meeting may go without a pile as far as its own runs are concerned: at a
/// corner only where an overhang is allowed.
pub(super) fn may_be_bare(task: &Task<'_>, meeting: usize) -> bool {
    let plan = &task.frame.plan;
    let on = &plan.meetings[meeting].on;
    let ends_here = |(run, at): &(usize, f64)| *at == 0.0 || *at == plan.runs[*run].length;
    on.iter()
        .filter(|o| ends_here(o))
        .all(|(run, _)| reach(task, *run, meeting) > 0.0)
}

/// Whether a choice of places keeps the spacing along its line.
pub(super) fn valid(places: &Places, chosen: &[usize]) -> bool {
    let (Some(first), Some(last)) = (chosen.first(), chosen.last()) else {
        return false;
    };
    *first < places.first
        && *last >= places.last
        && chosen
            .windows(2)
            .all(|p| places.next[p[0]].0 <= p[1] && p[1] < places.next[p[0]].1)
}
