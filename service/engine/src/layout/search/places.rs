//! Where piles may stand along one run: the staking grid, the places that are fixed, and
//! which place can follow which within the spacing limits.

use std::collections::VecDeque;

use super::Task;
use crate::contract::{Issue, utilisation};
use crate::layout::codes::refusals;
use crate::layout::plan::{Place, Run, TOLERANCE};
use crate::layout::types::{Along, Classes};

/// Most places along one run.
pub(super) const PLACES_MAX: usize = 20_000;

/// No way to the end of the run.
pub(super) const NEVER: u32 = u32::MAX;

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
    /// The kind of ground here, a number in the list of the plan.
    pub class: Vec<usize>,
    /// Whether places were left out or the ground differs along the run.
    pub uneven: bool,
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

/// Collects places in ascending order, those where a pile may stand.
struct Gather<'a> {
    along: Along<'a>,
    barred: &'a [Option<String>],
    at: Vec<f64>,
    forced: Vec<bool>,
    meeting: Vec<Option<usize>>,
    class: Vec<usize>,
    left_out: bool,
}

impl Gather<'_> {
    fn put(&mut self, x: f64, fixed: Option<Fixed>, task: &Task<'_>, classes: &mut Classes) {
        let meeting = fixed.and_then(|f| f.meeting);
        let open = match meeting {
            Some(m) => self.barred[m].is_none(),
            None => self.along.open(x),
        };
        if !open {
            self.left_out = true;
            return;
        }
        // a meeting is one place, whichever run is asked
        let here = match meeting.map(|m| task.frame.plan.meetings[m].on[0]) {
            Some((run, at)) => {
                let p = task.frame.plan.runs[run].point(at);
                task.terrain.here(p)
            }
            None => self.along.here(x),
        };
        self.class.push(classes.of(task.terrain, &here));
        self.at.push(x);
        self.forced.push(fixed.is_some());
        self.meeting.push(meeting);
    }
}

impl Places {
    /// The places of a run; where the limits cannot be met, an issue says where and why.
    pub fn of(
        task: &Task<'_>,
        run: usize,
        classes: &mut Classes,
        issues: &mut Vec<Issue>,
    ) -> Option<Self> {
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
        let mut found = Gather {
            along: Along::new(task.terrain, run, r, task.stretches),
            barred: task.barred,
            at: Vec::new(),
            forced: Vec::new(),
            meeting: Vec::new(),
            class: Vec::new(),
            left_out: false,
        };
        let mut put = |x: f64, f: Option<Fixed>| found.put(x, f, task, classes);
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
        let Gather {
            at,
            forced,
            meeting,
            class,
            left_out,
            ..
        } = found;
        let mut places = Self {
            run,
            first: at.len(),
            last: 0,
            next: vec![(0, 0); at.len()],
            fewest: vec![NEVER; at.len()],
            most: vec![0; at.len()],
            uneven: left_out || class.windows(2).any(|c| c[0] != c[1]),
            at,
            forced,
            meeting,
            class,
        };
        let barred = |m: usize| task.barred[m].is_some();
        let ends = super::bare::ends(task, run, &barred);
        places.relink(task, r.length, ends);
        let empty = || super::bare::may_be_empty(task, &places, &barred);
        if !places.can_be_met() && !empty() && super::open::ways(task, &places).is_none() {
            super::explain::explain(&places, task, r, issues);
            return None;
        }
        Some(places)
    }

    /// The places that pass, to be linked anew.
    pub fn keep(&self, pass: impl Fn(usize) -> bool) -> Self {
        let kept: Vec<usize> = (0..self.at.len()).filter(|i| pass(*i)).collect();
        Self {
            run: self.run,
            at: kept.iter().map(|i| self.at[*i]).collect(),
            forced: kept.iter().map(|i| self.forced[*i]).collect(),
            meeting: kept.iter().map(|i| self.meeting[*i]).collect(),
            class: kept.iter().map(|i| self.class[*i]).collect(),
            uneven: self.uneven,
            next: vec![(0, 0); kept.len()],
            first: kept.len(),
            last: 0,
            fewest: vec![NEVER; kept.len()],
            most: vec![0; kept.len()],
        }
    }

    /// Finds which place can follow which; `ends` is how far the first and the last pile
    /// may be from the ends of the run.
    pub fn relink(&mut self, task: &Task<'_>, length: f64, ends: [f64; 2]) {
        self.link(task, length, ends);
        self.count();
    }

    fn link(&mut self, task: &Task<'_>, length: f64, ends: [f64; 2]) {
        let (min, max) = (task.min_spacing, task.limits.max_spacing.si());
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
        let within =
            |over: f64, most: f64| over == 0.0 || (most > 0.0 && utilisation(over, most).1);
        let first_fixed = self.forced.iter().position(|f| *f).unwrap_or(n);
        let last_fixed = self.forced.iter().rposition(|f| *f).unwrap_or(0);
        self.first = self
            .at
            .partition_point(|x| within(*x, ends[0]))
            .min(first_fixed.saturating_add(1));
        self.last = self
            .at
            .partition_point(|x| !within(length - x, ends[1]))
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

    /// Whether any layout keeps the spacing.
    pub fn can_be_met(&self) -> bool {
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
