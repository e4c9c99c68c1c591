//! The walk over the runs of a connected part: one layout after the other from their lists, cut
//! as soon as statics rule it out, the full analysis at the end of each.

use std::collections::BTreeMap;

use super::super::enumerate::Budget;
use super::super::held::{Held, Joint, settle};
use super::super::stack::{Line, used};
use super::super::whole::{Spot, Whole, rate};
use super::{Item, Layout, Pattern, REJECT, too_near};
use crate::contract::{Refusal, Work};

/// Steps that the full analysis costs more than it counts for itself, for each pile in each
/// combination.
const FULL: u64 = 30;

/// Depth first over the runs.
pub(super) struct Walk<'p, 'a, 'b> {
    pub(super) pattern: &'p Pattern<'a>,
    pub(super) order: Vec<usize>,
    /// Fewest and most piles of the runs from here on.
    pub(super) later: Vec<(usize, usize)>,
    pub(super) best: Option<Layout>,
    /// Number of own piles and index in its list, by run.
    pub(super) picks: Vec<Option<(usize, usize)>>,
    /// Runs held at every meeting with springs under them.
    pub(super) springs: BTreeMap<(usize, usize, usize), Option<Held>>,
    pub(super) budget: &'b mut Budget,
    pub(super) work: &'b Work,
}

impl Walk<'_, '_, '_> {
    /// Tries every layout of the runs from `depth` on; false once the work limit is reached.
    pub(super) fn down(
        &mut self,
        depth: usize,
        left: usize,
        worst: f64,
        sums: &[f64],
    ) -> Result<bool, Refusal> {
        let pattern = self.pattern;
        let Some(run) = self.order.get(depth).copied() else {
            return self.leaf();
        };
        let group = pattern
            .groups
            .iter()
            .position(|g| g.contains(&run))
            .unwrap_or(0);
        let closes = pattern.groups[group].last() == Some(&run);
        let (least, most) = pattern.range[run];
        let (fewest, at_most) = self.later[depth + 1];
        for own in least..=most.min(left) {
            if left - own < fewest || left - own > at_most {
                continue;
            }
            let Some(Some(items)) = pattern.lists.get(&(run, own)) else {
                continue;
            };
            for (i, item) in items.iter().enumerate() {
                self.work.go_on()?;
                if !self.budget.take(1 + item.points.len() as u64) {
                    return Ok(false);
                }
                if self.crowds(depth, item) {
                    continue;
                }
                self.picks[run] = Some((own, i));
                let all = if closes {
                    let mut sums = sums.to_vec();
                    match self.group(group, worst, &mut sums) {
                        Some(w) => self.down(depth + 1, left - own, w, &sums)?,
                        None => true,
                    }
                } else {
                    self.down(depth + 1, left - own, worst, sums)?
                };
                self.picks[run] = None;
                if !all {
                    return Ok(false);
                }
            }
        }
        Ok(true)
    }

    fn item(&self, run: usize) -> Option<&Item> {
        let (own, i) = self.picks[run]?;
        self.pattern.lists.get(&(run, own))?.as_ref()?.get(i)
    }

    /// Whether a pile stands too near to one of an earlier run.
    fn crowds(&self, depth: usize, item: &Item) -> bool {
        self.order[..depth].iter().any(|run| {
            self.item(*run).is_some_and(|other| {
                item.points.iter().any(|p| {
                    other
                        .points
                        .iter()
                        .any(|q| too_near(self.pattern.task, *p, *q))
                })
            })
        })
    }

    /// The utilisation that must not be exceeded.
    fn limit(&self) -> f64 {
        self.best
            .as_ref()
            .map_or(REJECT, |b| (b.worst * (1.0 + 1e-8)).min(REJECT))
    }

    /// Highest utilisation with this group on rigid piles, where it keeps the limit; adds
    /// what it brings to shared piles.
    fn group(&mut self, group: usize, worst: f64, sums: &mut [f64]) -> Option<f64> {
        let pattern = self.pattern;
        let runs: Vec<(&Line, &Held)> = pattern.groups[group]
            .iter()
            .filter_map(|r| self.item(*r).map(|i| (&pattern.lines[*r], &i.held)))
            .collect();
        let n = pattern.task.combinations.len();
        let piles: usize = runs.iter().map(|r| r.1.piles.len()).sum();
        let limit = self.limit();
        let found = carried(&runs, &[], &pattern.size, worst, limit, |m, c, r| {
            sums[m * n + c] += r;
        });
        self.budget.spent += (piles * n) as u64;
        let (mut worst, _) = found?;
        for m in (0..pattern.bare.len()).filter(|m| !pattern.bare[*m]) {
            if pattern.complete[m] != group {
                continue;
            }
            let (compression, tension) = pattern.capacity[m];
            for c in 0..n {
                let u = used(sums[m * n + c], compression, tension, pattern.size[c]);
                worst = worst.max(u);
            }
        }
        (worst <= limit).then_some(worst)
    }

    /// A layout of the whole part: on springs, then by the full analysis.
    fn leaf(&mut self) -> Result<bool, Refusal> {
        let pattern = self.pattern;
        let task = pattern.task;
        if let Some(k) = pattern.stiffness
            && !self.keeps_on_springs(k)
        {
            return Ok(self.budget.left());
        }
        let picked: Option<Vec<&Item>> = (0..pattern.lines.len()).map(|r| self.item(r)).collect();
        let Some(picked) = picked else {
            return Ok(true);
        };
        let mut whole = Whole {
            chosen: picked.iter().map(|i| i.chosen.clone()).collect(),
            worst: f64::INFINITY,
            at: Spot::default(),
            added: false,
            proven: Vec::new(),
        };
        let squares = picked.iter().map(|i| i.squares).sum();
        let piles: usize = whole.chosen.iter().map(Vec::len).sum();
        self.budget.spent += FULL * (piles * task.combinations.len()) as u64;
        rate(task, &pattern.lines, &mut whole, self.budget, self.work)?;
        if whole.keeps() {
            let found = Layout {
                bare: pattern.bare.clone(),
                lines: Vec::new(),
                chosen: whole.chosen,
                worst: whole.worst,
                squares,
            };
            if self.best.as_ref().is_none_or(|b| found.beats(b)) {
                self.best = Some(Layout {
                    lines: pattern.lines.clone(),
                    ..found
                });
            }
        }
        Ok(self.budget.left())
    }

    fn keeps_on_springs(&mut self, stiffness: f64) -> bool {
        let pattern = self.pattern;
        let plan = &pattern.task.frame.plan;
        let mut keys = Vec::new();
        for run in 0..pattern.lines.len() {
            let Some((own, i)) = self.picks[run] else {
                return false;
            };
            let key = (run, own, i);
            if !self.springs.contains_key(&key) {
                let joints: Vec<Joint> = plan.runs[run]
                    .meetings
                    .iter()
                    .map(|m| Joint {
                        meeting: m.meeting,
                        at: m.at,
                    })
                    .collect();
                let held = self.item(run).and_then(|item| {
                    Held::of(&pattern.lines[run], &item.chosen, &joints, Some(stiffness))
                });
                self.springs.insert(key, held);
            }
            keys.push(key);
        }
        let mut runs = Vec::new();
        for key in &keys {
            match self.springs.get(key) {
                Some(Some(held)) => runs.push((&pattern.lines[key.0], held)),
                _ => return false,
            }
        }
        let under: Vec<f64> = pattern
            .bare
            .iter()
            .map(|b| if *b { 0.0 } else { stiffness })
            .collect();
        let n = pattern.task.combinations.len();
        let piles: usize = runs.iter().map(|r| r.1.piles.len() + r.1.on.len()).sum();
        self.budget.spent += (piles * n) as u64;
        let limit = self.limit();
        let none = |_: usize, _: usize, _: f64| {};
        let found = carried(&runs, &under, &pattern.size, 0.0, limit, none);
        found.is_some_and(|(_, moved)| {
            moved.iter().all(|(m, c, r)| {
                let (compression, tension) = pattern.capacity[*m];
                used(*r, compression, tension, pattern.size[*c]) <= limit
            })
        })
    }
}

/// What comes to a meeting in a combination.
type Brought = (usize, usize, f64);

/// Highest utilisation of the piles of runs that move together, where it keeps the limit;
/// `under` is what stands under each meeting, nothing where it is empty. What comes to shared
/// piles is handed out while they do not move, and returned by meeting and combination
/// where they do.
fn carried(
    runs: &[(&Line, &Held)],
    under: &[f64],
    size: &[f64],
    worst: f64,
    limit: f64,
    mut hand: impl FnMut(usize, usize, f64),
) -> Option<(f64, Vec<Brought>)> {
    let n = size.len();
    let mut moving: Vec<usize> = runs.iter().flat_map(|r| r.1.on.iter().copied()).collect();
    moving.sort_unstable();
    moving.dedup();
    let k = moving.len();
    let slot = |m: &usize| moving.binary_search(m).unwrap_or(0);
    let mut matrix = vec![0.0; k * k];
    let mut sunk = vec![0.0; k * n];
    for (_, held) in runs {
        let at: Vec<usize> = held.on.iter().map(slot).collect();
        for (j, a) in at.iter().enumerate() {
            for (other, b) in at.iter().enumerate() {
                matrix[a * k + b] += held.stiffness[j * at.len() + other];
            }
            for c in 0..n {
                sunk[a * n + c] += held.hold[j * n + c];
            }
        }
    }
    for (i, m) in moving.iter().enumerate() {
        matrix[i * k + i] += under.get(*m).copied().unwrap_or(0.0);
    }
    if k > 0 {
        settle(&mut matrix, &mut sunk, k)?;
    }
    let mut worst = worst;
    for (line, held) in runs {
        let at: Vec<usize> = held.on.iter().map(slot).collect();
        for (p, place) in held.piles.iter().enumerate() {
            for c in 0..n {
                let mut r = held.own[p * n + c];
                for (j, a) in at.iter().enumerate() {
                    r += held.influence[p * at.len() + j] * sunk[a * n + c];
                }
                match line.places.meeting[*place] {
                    Some(m) => hand(m, c, r),
                    None => {
                        let class = line.class(*place);
                        worst = worst.max(used(r, class.compression, class.tension, size[c]));
                    }
                }
            }
            if worst > limit {
                return None;
            }
        }
    }
    let mut moved = Vec::new();
    for (i, m) in moving.iter().enumerate() {
        let stiffness = under.get(*m).copied().unwrap_or(0.0);
        if stiffness > 0.0 {
            moved.extend((0..n).map(|c| (*m, c, stiffness * sunk[i * n + c])));
        }
    }
    (worst <= limit).then_some((worst, moved))
}
