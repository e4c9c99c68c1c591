//! Deflections of the plan as a whole. Layouts of runs are sought without them, which leaves
//! bounds from below valid; what they ask for in addition is found here.

use super::Task;
use crate::layout::analysis::Solved;
use crate::layout::strength::worst_deflections;

/// Combinations in which deflections are limited; none where nothing limits them.
pub(super) fn combinations(task: &Task<'_>) -> usize {
    let mut beams = task.request.beams.iter();
    match task.service {
        Some(service) if beams.any(|b| b.deflection_limit.is_some()) => service.len(),
        _ => 0,
    }
}

/// Deflections over their limits with the run that each is on.
pub(super) fn rate(task: &Task<'_>, solved: &[Solved]) -> Vec<(f64, usize)> {
    let service = task.service.unwrap_or_default();
    worst_deflections(task.request, task.frame, service, solved)
        .into_iter()
        .flatten()
        .map(|w| (w.used, w.run))
        .collect()
}
