//! Where piles may stand along one run: the staking grid, the places that are fixed, and
//! which place can follow which within the spacing limits.

use std::collections::VecDeque;

use super::Task;
use crate::contract::{Issue, utilisation};
use crate::layout::codes::refusals;
use crate::layout::plan::{Place, Run, TOLERANCE};
use crate::quantity::{in_both_systems, round9};

/// Most places along one run.
pub(super) const PLACES_MAX: usize = 20_000;

/// No way to the end of the run.
const NEVER: u32 = u32::MAX;

/// The places along one run.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Places {
    pub run: usize,
    /// Places in ascending order.
    pub at: Vec<f64>,
    /// Whether a pile must stand here.
    pub forced: Vec<bool>,
    /// The meeting here, where piles carry other runs too.
    pub meeting: Vec<Option<usize>>,
    /// Places that can follow each: from, up to but not including.
    pub next: Vec<(usize, usize)>,
    /// Places that can be the first: up to but not including.
    pub first: usize,
    /// Places that can be the last: from.
    pub last: usize,
    /// Fewest piles from here to the end, this one included.
    pub fewest: Vec<u32>,
    /// Most piles from here to the end, this one included.
    pub most: Vec<u32>,
}

/// A place that is fixed.
#[derive(Debug, Clone, Copy)]
struct Fixed {
    at: f64,
    meeting: Option<usize>,
}

impl Places {
    /// The places of a run; where the limits cannot be met, an issue says where and why.
    pub fn of(task: &Task<'_>, run: usize, issues: &mut Vec<Issue>) -> Option<Self> {
        let r = &task.frame.plan.runs[run];
        let overhang = task.limits.max_overhang.map_or(0.0, |o| o.si());
        let snap = task.limits.snap.si();
        let steps = (r.length / snap + 1e-9).floor();
        if steps > PLACES_MAX as f64 {
            issues.push(
                Issue::new(
                    "/piles/search/snap",
                    &refusals::TOO_MANY_PLACES,
                    format!("{steps} places along beam {} of the list", r.parts[0].beam),
                )
                .limit(PLACES_MAX.to_string()),
            );
            return None;
        }
        let fixed = fixed(task, run, r, overhang);
        let (mut at, mut forced, mut meeting) = (Vec::new(), Vec::new(), Vec::new());
        let mut put = |x: f64, m: Option<Fixed>| {
            at.push(x);
            forced.push(m.is_some());
            meeting.push(m.and_then(|f| f.meeting));
        };
        let mut waiting = fixed.iter().copied().peekable();
        for k in 0..=steps as usize {
            let x = (snap * k as f64).min(r.length);
            while let Some(f) = waiting.next_if(|f| f.at <= x + TOLERANCE) {
                put(f.at, Some(f));
            }
            if fixed.iter().all(|f| (f.at - x).abs() > TOLERANCE) {
                put(x, None);
            }
        }
        for f in waiting {
            put(f.at, Some(f));
        }
        let mut places = Self {
            run,
            first: at.len(),
            last: 0,
            next: vec![(0, 0); at.len()],
            fewest: vec![NEVER; at.len()],
            most: vec![0; at.len()],
            at,
            forced,
            meeting,
        };
        places.link(task, r.length, overhang);
        places.count();
        if !places.reaches_end() {
            places.explain(task, r, issues);
            return None;
        }
        Some(places)
    }

    fn link(&mut self, task: &Task<'_>, length: f64, overhang: f64) {
        let (min, max) = (task.limits.min_spacing.si(), task.limits.max_spacing.si());
        let n = self.at.len();
        let at = &self.at;
        let mut fixed_next = n;
        for i in (0..n).rev() {
            let from = i + at[i..].partition_point(|x| !utilisation(min, x - at[i]).1);
            let to = i + at[i..].partition_point(|x| utilisation(x - at[i], max).1);
            self.next[i] = (from.max(i + 1), to.min(fixed_next.saturating_add(1)).min(n));
            if self.forced[i] {
                fixed_next = i;
            }
        }
        let ends = |over: f64| over == 0.0 || (overhang > 0.0 && utilisation(over, overhang).1);
        let first_fixed = self.forced.iter().position(|f| *f).unwrap_or(n);
        let last_fixed = self.forced.iter().rposition(|f| *f).unwrap_or(0);
        self.first = self
            .at
            .partition_point(|x| ends(*x))
            .min(first_fixed.saturating_add(1));
        self.last = self
            .at
            .partition_point(|x| !ends(length - x))
            .max(last_fixed);
    }

    /// Fewest and most piles from every place to the end: the best of a window that only
    /// ever slides to the left.
    fn count(&mut self) {
        let (mut low, mut high) = (VecDeque::new(), VecDeque::new());
        let mut entered = self.at.len();
        for i in (0..self.at.len()).rev() {
            let (from, to) = self.next[i];
            while entered > from {
                entered -= 1;
                let j = entered;
                if self.fewest[j] != NEVER {
                    while low
                        .back()
                        .is_some_and(|b| self.fewest[*b] >= self.fewest[j])
                    {
                        low.pop_back();
                    }
                    low.push_back(j);
                    while high.back().is_some_and(|b| self.most[*b] <= self.most[j]) {
                        high.pop_back();
                    }
                    high.push_back(j);
                }
            }
            for queue in [&mut low, &mut high] {
                while queue.front().is_some_and(|f| *f >= to) {
                    queue.pop_front();
                }
            }
            if i >= self.last {
                (self.fewest[i], self.most[i]) = (1, 1);
            }
            if let (Some(l), Some(h)) = (low.front(), high.front()) {
                self.fewest[i] = self.fewest[i].min(self.fewest[*l] + 1);
                self.most[i] = self.most[i].max(self.most[*h] + 1);
            }
        }
    }

    fn reaches_end(&self) -> bool {
        self.fewest[..self.first].iter().any(|f| *f != NEVER)
    }

    /// Whether the end can be reached from a place.
    pub fn reaches(&self, i: usize) -> bool {
        self.fewest[i] != NEVER
    }

    /// Fewest and most piles on the run.
    pub fn range(&self) -> (usize, usize) {
        let starts = 0..self.first;
        let fewest = starts.clone().map(|i| self.fewest[i]).min();
        let most = starts.map(|i| self.most[i]).max();
        (fewest.unwrap_or(1) as usize, most.unwrap_or(1) as usize)
    }

    /// Names the stretch between fixed places that no spacing fits, and by how much.
    fn explain(&self, task: &Task<'_>, run: &Run, issues: &mut Vec<Issue>) {
        let before = issues.len();
        let mut anchors: Vec<usize> = (0..self.at.len()).filter(|i| self.forced[*i]).collect();
        if self.first > 0 && anchors.first().is_none_or(|a| *a >= self.first) {
            anchors.insert(0, self.first - 1);
        }
        if anchors.last().is_none_or(|a| *a < self.last) && self.last < self.at.len() {
            anchors.push(self.last);
        }
        for pair in anchors.windows(2) {
            if !self.joined(pair[0], pair[1]) {
                issues.push(self.cannot(task, run, self.at[pair[0]], self.at[pair[1]]));
            }
        }
        if issues.len() == before {
            issues.push(self.cannot(task, run, 0.0, run.length));
        }
    }

    /// Whether piles within the spacing limits lead from one place to another.
    fn joined(&self, a: usize, b: usize) -> bool {
        let mut on = vec![false; b + 1];
        on[a] = true;
        for i in a..b {
            if on[i] {
                let (from, to) = self.next[i];
                for slot in &mut on[from.min(b + 1)..to.min(b + 1)] {
                    *slot = true;
                }
            }
        }
        on[b]
    }

    fn cannot(&self, task: &Task<'_>, run: &Run, from: f64, to: f64) -> Issue {
        let (min, max) = (task.limits.min_spacing.si(), task.limits.max_spacing.si());
        let d = to - from;
        let plan = &task.frame.plan;
        let (p, q) = (plan.outside(run.point(from)), plan.outside(run.point(to)));
        let long = |v: f64| in_both_systems(round9(v), "m");
        let count = (d / max).ceil().max(1.0);
        let (what, member) = if d < min {
            (
                format!("is {} below the least spacing", long(min - d)),
                "min_spacing",
            )
        } else if d / count < min {
            let one_less = (count - 1.0).max(1.0);
            (
                format!(
                    "{count} spans are {} each, {} below the least spacing; {one_less} are {} each, {} above the greatest",
                    long(d / count),
                    long(min - d / count),
                    long(d / one_less),
                    long(d / one_less - max)
                ),
                "max_spacing",
            )
        } else {
            (
                format!("no multiples of the staking increment make {count} spans or more"),
                "snap",
            )
        };
        Issue::new(
            format!("/piles/search/{member}"),
            &refusals::SPACING_CANNOT_BE_MET,
            format!(
                "from ({}, {}) to ({}, {}) m the distance is {}: {what}",
                round9(p.x),
                round9(p.y),
                round9(q.x),
                round9(q.y),
                long(d)
            ),
        )
        .limit(format!("{} to {}", long(min), long(max)))
    }
}

/// Fixed places of a run in ascending order: meetings, joints, forced points, and its ends
/// where no overhang is allowed.
fn fixed(task: &Task<'_>, index: usize, run: &Run, overhang: f64) -> Vec<Fixed> {
    let mut out: Vec<Fixed> = run
        .meetings
        .iter()
        .map(|m| Fixed {
            at: m.at,
            meeting: Some(m.meeting),
        })
        .collect();
    let mut add = |at: f64| {
        if out.iter().all(|f| (f.at - at).abs() > TOLERANCE) {
            out.push(Fixed { at, meeting: None });
        }
    };
    if overhang == 0.0 {
        add(0.0);
        add(run.length);
    }
    run.joints().for_each(&mut add);
    let own = |p: &&Place| p.run == index && p.meeting.is_none();
    task.forced.iter().filter(own).for_each(|p| add(p.at));
    out.sort_by(|a, b| a.at.total_cmp(&b.at));
    out
}
