//! A connected part of the plan with more and more piles, every layout of each number,
//! until one keeps the limits or the work limit comes.

use super::Task;
use super::enumerate::Budget;
use super::joined::{Layout, Pattern, Tried};
use super::stack::Line;
use crate::contract::{Refusal, Work};

/// Meetings that may go either way at most, for all ways to be tried.
const OPEN_MAX: usize = 8;

/// What climbing showed.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Climbed {
    /// No layout has fewer piles.
    pub lower: usize,
    pub found: Option<Layout>,
    /// Every layout of the number that was found was compared.
    pub compared: bool,
    /// Every number that the spacing allows was tried in full.
    pub all: bool,
    /// The work limit came first.
    pub spent: bool,
}

/// Tries every number from `from` on, below `below`. `open` are the meetings that may go
/// without a pile, `bare` those that do in any case.
#[allow(clippy::too_many_arguments)]
pub(super) fn climb(
    task: &Task<'_>,
    base: &[Line],
    bare: &[bool],
    open: &[usize],
    from: usize,
    below: Option<usize>,
    budget: &mut Budget,
    work: &Work,
) -> Result<Climbed, Refusal> {
    let mut out = Climbed {
        lower: from,
        found: None,
        compared: false,
        all: false,
        spent: false,
    };
    if open.len() > OPEN_MAX {
        out.spent = true;
        return Ok(out);
    }
    let mut patterns = Vec::new();
    for ways in 0..1usize << open.len() {
        work.go_on()?;
        let mut own = bare.to_vec();
        for (i, m) in open.iter().enumerate() {
            own[*m] |= ways >> i & 1 == 1;
        }
        patterns.extend(Pattern::of(task, base, own));
    }
    let Some(fewest) = patterns.iter().map(|p| p.limits().0).min() else {
        out.all = true;
        return Ok(out);
    };
    let most = patterns.iter().map(|p| p.limits().1).max().unwrap_or(0);
    out.lower = from.max(fewest);
    let end = below.unwrap_or(most + 1);
    while out.lower < end {
        let mut best = None;
        let mut all = true;
        for pattern in &mut patterns {
            match pattern.with(out.lower, best.take(), budget, work)? {
                Tried::All(b) => best = b,
                Tried::Spent(b) => {
                    best = b;
                    all = false;
                }
            }
            if !budget.left() {
                all = false;
                break;
            }
        }
        if best.is_some() {
            (out.found, out.compared) = (best, all);
            return Ok(out);
        }
        if !all {
            out.spent = true;
            return Ok(out);
        }
        out.lower += 1;
    }
    out.all = out.lower > most;
    Ok(out)
}
