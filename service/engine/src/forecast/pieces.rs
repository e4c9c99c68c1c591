//! Which pieces make up a pile of a given depth: the lead, and as few extensions as reach. How
//! many a whole job needs is in `job.rs`.

use crate::quantity::Length;
use crate::trace::Trace;

/// Most extensions on one pile.
pub const MOST_EXTENSIONS: usize = 40;

/// A lead with extensions.
#[derive(Debug, Clone, PartialEq)]
pub struct Assembly {
    /// Depth its tip reaches, m.
    pub reach: f64,
    /// Number of each extension, in the order they were sent.
    pub counts: Vec<usize>,
}

/// Depth a tip reaches.
///
/// d = L_1 + sum(n_j L_j) - s
///
/// L_1 lead, L_j extensions, n_j their numbers, s stick-up above grade, all lengths m. Source:
/// geometry. Depth down.
pub fn reach(lead: Length, extensions: Length, stick_up: Length, trace: &mut Trace) -> Length {
    trace.step(
        "d",
        "L_1 + sum(n_j L_j) - s",
        lead + extensions - stick_up,
        [
            ("L_1", lead.into()),
            ("sum(n_j L_j)", extensions.into()),
            ("s", stick_up.into()),
        ],
        &crate::source::FORECAST_PIECES,
    )
}

/// Every assembly that is the rule's for some depth, from the lead alone until one reaches
/// `to`; none where the most extensions do not.
///
/// Rule: as few extensions as reach, of those the set with the least steel, of equal ones that
/// with more of the longest.
pub fn assemblies(lead: f64, extensions: &[f64], stick_up: f64, to: f64) -> Option<Vec<Assembly>> {
    let mut order: Vec<usize> = (0..extensions.len()).collect();
    order.sort_by(|a, b| extensions[*b].total_cmp(&extensions[*a]));
    let longest = extensions[order[0]];
    let alone = Assembly {
        reach: lead - stick_up,
        counts: vec![0; extensions.len()],
    };
    let mut all = vec![alone];
    for pieces in 1..=MOST_EXTENSIONS {
        if all.last().is_some_and(|last| last.reach >= to) {
            return Some(all);
        }
        let fewer_reach = lead + (pieces - 1) as f64 * longest - stick_up;
        let mut found = Vec::new();
        let mut counts = vec![0; extensions.len()];
        sets(&order, pieces, &mut counts, &mut |counts| {
            let added = counts.iter().zip(extensions).map(|(n, l)| *n as f64 * l);
            let reach = lead + added.sum::<f64>() - stick_up;
            if reach > fewer_reach + SAME {
                found.push(Assembly {
                    reach,
                    counts: counts.to_vec(),
                });
            }
        });
        // stable: of equal reach the one with more of the longest came first
        found.sort_by(|a, b| a.reach.total_cmp(&b.reach));
        for assembly in found {
            if all
                .last()
                .is_none_or(|last| assembly.reach > last.reach + SAME)
            {
                all.push(assembly);
            }
        }
    }
    all.last()
        .is_some_and(|last| last.reach >= to)
        .then_some(all)
}

/// Lengths that differ by less are one, m.
const SAME: f64 = 1e-9;

/// Every way to take a number of pieces, more of the earlier ones first.
fn sets(order: &[usize], left: usize, counts: &mut [usize], take: &mut impl FnMut(&[usize])) {
    let Some((first, rest)) = order.split_first() else {
        return;
    };
    if rest.is_empty() {
        counts[*first] = left;
        take(counts);
        counts[*first] = 0;
        return;
    }
    for of_first in (0..=left).rev() {
        counts[*first] = of_first;
        sets(rest, left - of_first, counts, take);
    }
    counts[*first] = 0;
}
