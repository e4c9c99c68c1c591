//! Meetings that may go without a pile: which they are, what bounds the count then, and a
//! good layout from one with all piles by taking away what is not needed. Proves only the
//! bounds.

use super::Task;
use super::bare::{may_be_bare, may_be_empty, valid, without};
use super::enumerate::Budget;
use super::line::guess;
use super::places::Places;
use super::stack::Line;
use super::whole::{Whole, move_piles, places, rate};
use crate::contract::{Refusal, Work, none_of};
use crate::layout::request::JunctionPiles;
use crate::quantity::round9;

/// Open meetings of one run that are looked at when its spacing cannot be met.
const WAYS_MAX: usize = 8;

/// Meetings of a plan that the search may leave without a pile.
pub(super) fn open(task: &Task<'_>, bare: &[bool]) -> Vec<usize> {
    if task.limits.junction_piles != Some(JunctionPiles::WhereNeeded) {
        return Vec::new();
    }
    let forced = |m: usize| task.forced.iter().any(|p| p.meeting == Some(m));
    (0..task.frame.plan.meetings.len())
        .filter(|m| !bare[*m] && !forced(*m) && may_be_bare(task, *m))
        .collect()
}

/// The fewest open meetings of a run that must go bare for its spacing limits to be met;
/// none where that does not help.
pub(super) fn ways(task: &Task<'_>, places: &Places) -> Option<Vec<usize>> {
    let barred = |m: usize| task.barred[m].is_some();
    let bare: Vec<bool> = (0..task.barred.len()).map(barred).collect();
    let own: Vec<usize> = open(task, &bare)
        .into_iter()
        .filter(|m| places.meeting.contains(&Some(*m)))
        .take(WAYS_MAX)
        .collect();
    let length = task.frame.plan.runs[places.run].length;
    let mut best: Option<Vec<usize>> = None;
    for ways in 1..1usize << own.len() {
        let gone: Vec<usize> = (0..own.len())
            .filter(|i| ways >> i & 1 == 1)
            .map(|i| own[i])
            .collect();
        if best.as_ref().is_some_and(|b| b.len() <= gone.len()) {
            continue;
        }
        let is_bare = |m: usize| barred(m) || gone.contains(&m);
        let mut left = places.keep(|i| !places.meeting[i].is_some_and(is_bare));
        left.relink(task, length, super::bare::ends(task, places.run, &is_bare));
        if left.can_be_met() || may_be_empty(task, places, &is_bare) {
            best = Some(gone);
        }
    }
    best
}

/// Meetings that go bare at the start, so that every run has a layout within the spacing;
/// the lines with it.
pub(super) fn start(task: &Task<'_>, base: &[Line]) -> Result<Vec<Line>, Refusal> {
    let barred = |m: usize| task.barred[m].is_some();
    let mut bare: Vec<bool> = (0..task.barred.len()).map(barred).collect();
    let mut changed = false;
    for line in base {
        let p = &line.places;
        if !p.can_be_met() && !may_be_empty(task, p, &barred) {
            for m in ways(task, p).into_iter().flatten() {
                (bare[m], changed) = (true, true);
            }
        }
    }
    if !changed {
        return Ok(base.to_vec());
    }
    let mut issues = Vec::new();
    let mut out = Vec::with_capacity(base.len());
    for line in base {
        match without(task, line, &bare) {
            Some(line) => out.push(line),
            None => {
                let run = &task.frame.plan.runs[line.places.run];
                super::explain::explain(&line.places, task, run, &mut issues);
            }
        }
    }
    none_of(issues)?;
    Ok(out)
}

/// Fewest piles of a part by the spacing along its runs, where each run has its share of
/// the piles that runs have in common.
pub(super) fn spacing_bound(
    task: &Task<'_>,
    lines: &[Line],
    bare: &[bool],
    open: &[usize],
) -> usize {
    let plan = &task.frame.plan;
    let all: Vec<bool> = (0..bare.len())
        .map(|m| bare[m] || open.contains(&m))
        .collect();
    let mut sum = 0.0;
    for line in lines {
        let p = &line.places;
        let mut loose = p.keep(|_| true);
        for i in 0..loose.at.len() {
            if loose.meeting[i].is_some_and(|m| all[m]) {
                loose.forced[i] = false;
            }
        }
        loose.relink(
            task,
            line.length,
            super::bare::ends(task, p.run, &|m| all[m]),
        );
        let weight =
            |i: usize| loose.meeting[i].map_or(1.0, |m| 1.0 / plan.meetings[m].on.len() as f64);
        let least = lightest(&loose.next, loose.first, loose.last, weight);
        let least = if may_be_empty(task, p, &|m| all[m]) {
            0.0
        } else {
            least
        };
        sum += if least.is_finite() { least } else { 0.0 };
    }
    (round9(sum) - 1e-9).ceil().max(1.0) as usize
}

/// Least sum of weights from a first to a last place.
fn lightest(
    next: &[(usize, usize)],
    first: usize,
    last: usize,
    weight: impl Fn(usize) -> f64,
) -> f64 {
    let n = next.len();
    let mut best = vec![f64::INFINITY; n];
    for i in (0..n).rev() {
        let (from, to) = next[i];
        let mut after = if i >= last { 0.0 } else { f64::INFINITY };
        let to = to.min(n);
        if from < to {
            after = best[from..to].iter().copied().fold(after, f64::min);
        }
        best[i] = after + weight(i);
    }
    best[..first.min(n)]
        .iter()
        .copied()
        .fold(f64::INFINITY, f64::min)
}

/// Takes piles away as long as the limits are kept: at open meetings first, then anywhere.
#[allow(clippy::too_many_arguments)]
pub(super) fn thin(
    task: &Task<'_>,
    base: &[Line],
    lines: &mut Vec<Line>,
    bare: &mut [bool],
    open: &[usize],
    whole: &mut Whole,
    budget: &mut Budget,
    work: &Work,
) -> Result<(), Refusal> {
    let mut again = true;
    while again && budget.left() {
        again = false;
        for m in open {
            if bare[*m] || !budget.left() {
                continue;
            }
            bare[*m] = true;
            match bared(task, base, lines, bare, *m, whole, budget, work)? {
                Some((next, found)) => {
                    (*lines, *whole) = (next, found);
                    again = true;
                }
                None => bare[*m] = false,
            }
        }
        for run in 0..lines.len() {
            let mut i = 0;
            while i < whole.chosen[run].len() && budget.left() {
                if !lines[run].places.forced[whole.chosen[run][i]]
                    && let Some(found) = fewer(task, lines, whole, run, i, budget, work)?
                {
                    *whole = found;
                    again = true;
                } else {
                    i += 1;
                }
            }
        }
    }
    Ok(())
}

/// The layout with a meeting left bare, where that keeps the limits with fewer piles.
#[allow(clippy::too_many_arguments)]
fn bared(
    task: &Task<'_>,
    base: &[Line],
    lines: &[Line],
    bare: &[bool],
    meeting: usize,
    whole: &Whole,
    budget: &mut Budget,
    work: &Work,
) -> Result<Option<(Vec<Line>, Whole)>, Refusal> {
    let count = places(task.frame, lines, &whole.chosen).len();
    let mut next = lines.to_vec();
    let mut found = whole.clone();
    for (run, _) in &task.frame.plan.meetings[meeting].on {
        let Some(line) = without(task, &base[*run], bare) else {
            return Ok(None);
        };
        let at = |i: usize| lines[*run].places.at[i];
        let kept: Vec<usize> = whole.chosen[*run]
            .iter()
            .filter(|i| lines[*run].places.meeting[**i] != Some(meeting))
            .filter_map(|i| line.places.at.iter().position(|x| *x == at(*i)))
            .collect();
        let few = kept.len();
        let chosen = if few == 0 && may_be_empty(task, &base[*run].places, &|m| bare[m]) {
            Some(Vec::new())
        } else if valid(&line.places, &kept) {
            Some(kept)
        } else {
            (few..=few + 1)
                .filter(|n| *n > 0)
                .find_map(|n| guess(&line, n, budget))
                .map(|b| b.chosen)
        };
        let Some(chosen) = chosen else {
            return Ok(None);
        };
        found.chosen[*run] = chosen;
        next[*run] = line;
    }
    if places(task.frame, &next, &found.chosen).len() >= count {
        return Ok(None);
    }
    Ok(settled(task, &next, found, budget, work)?.map(|f| (next, f)))
}

/// The layout with one pile of a run less, where that keeps the limits.
fn fewer(
    task: &Task<'_>,
    lines: &[Line],
    whole: &Whole,
    run: usize,
    i: usize,
    budget: &mut Budget,
    work: &Work,
) -> Result<Option<Whole>, Refusal> {
    let mut found = whole.clone();
    found.chosen[run].remove(i);
    let left = found.chosen[run].len();
    if !valid(&lines[run].places, &found.chosen[run]) {
        if left == 0 {
            return Ok(None);
        }
        let Some(best) = guess(&lines[run], left, budget) else {
            return Ok(None);
        };
        found.chosen[run] = best.chosen;
    }
    settled(task, lines, found, budget, work)
}

fn settled(
    task: &Task<'_>,
    lines: &[Line],
    mut found: Whole,
    budget: &mut Budget,
    work: &Work,
) -> Result<Option<Whole>, Refusal> {
    rate(task, lines, &mut found, budget, work)?;
    if !found.keeps() && found.worst < 1.5 {
        move_piles(task, lines, &mut found, budget, work)?;
    }
    Ok(found.keeps().then_some(found))
}
