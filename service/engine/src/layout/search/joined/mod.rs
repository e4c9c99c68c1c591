//! All layouts of a connected part of the plan with a given number of piles: choices of
//! every run put together, with what they bring to each other and to shared piles. Cuts
//! only what statics rule out; the full analysis decides about what is left.

mod walk;

use std::collections::BTreeMap;

use walk::Walk;

use super::Task;
use super::bare::{may_be_empty, without};
use super::enumerate::Budget;
use super::held::{Held, Joint};
use super::lists::choices;
use super::stack::{Line, used};
use crate::contract::{Refusal, Work, utilisation};
use crate::layout::plan::{Point, root};
use crate::quantity::round9;

/// What is above 1 by more than this breaks a limit in the full analysis too.
const REJECT: f64 = 1.0 + 1e-7;
/// Reactions below this share of the load are rounding, as far as cutting goes.
const SLACK: f64 = 1e-9;

/// One layout of one run.
#[derive(Debug)]
struct Item {
    chosen: Vec<usize>,
    held: Held,
    /// Piles that stand at no meeting.
    points: Vec<Point>,
    squares: f64,
}

/// A part with the meetings that go without a pile.
pub(super) struct Pattern<'a> {
    task: &'a Task<'a>,
    pub bare: Vec<bool>,
    pub lines: Vec<Line>,
    joints: Vec<Vec<Joint>>,
    /// Runs that move together on rigid piles, in order.
    groups: Vec<Vec<usize>>,
    /// The group after which nothing more comes to a meeting.
    complete: Vec<usize>,
    standing: Vec<Point>,
    lists: BTreeMap<(usize, usize), Option<Vec<Item>>>,
    /// Fewest and most piles of each run that stand at no meeting.
    range: Vec<(usize, usize)>,
    size: Vec<f64>,
    /// What a pile carries in compression and in tension at each meeting.
    capacity: Vec<(f64, f64)>,
    /// Stiffness of every pile, where all have the same.
    stiffness: Option<f64>,
}

/// How a number of piles was tried.
#[derive(Debug, PartialEq)]
pub(super) enum Tried {
    /// Every layout; the best that keeps the limits, if any.
    All(Option<Layout>),
    /// The work limit came first; the best so far.
    Spent(Option<Layout>),
}

/// A layout of a part that keeps the limits.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Layout {
    pub bare: Vec<bool>,
    pub lines: Vec<Line>,
    pub chosen: Vec<Vec<usize>>,
    pub worst: f64,
    squares: f64,
}

impl Layout {
    /// Lower utilisation, then more equal spans; else the one found first, which is the
    /// first in order of position.
    fn beats(&self, other: &Self) -> bool {
        let (u, v) = (round9(self.worst), round9(other.worst));
        if u != v {
            return u < v;
        }
        self.squares < other.squares * (1.0 - 1e-9)
    }
}

impl<'a> Pattern<'a> {
    /// A part with these meetings bare; none where the spacing leaves no layout.
    pub fn of(task: &'a Task<'a>, base: &[Line], bare: Vec<bool>) -> Option<Self> {
        let plan = &task.frame.plan;
        let lines: Option<Vec<Line>> = base.iter().map(|l| without(task, l, &bare)).collect();
        let lines = lines?;
        let standing: Vec<Point> = (0..plan.meetings.len())
            .filter(|m| !bare[*m])
            .map(|m| {
                let (run, at) = plan.meetings[m].on[0];
                plan.runs[run].point(at)
            })
            .collect();
        let close = |i: usize, p: &Point| standing[..i].iter().any(|q| too_near(task, *p, *q));
        if standing.iter().enumerate().any(|(i, p)| close(i, p)) {
            return None;
        }
        let joints = plan
            .runs
            .iter()
            .map(|r| {
                let moving = r.meetings.iter().filter(|m| bare[m.meeting]);
                moving
                    .map(|m| Joint {
                        meeting: m.meeting,
                        at: m.at,
                    })
                    .collect()
            })
            .collect();
        let range = base
            .iter()
            .zip(&lines)
            .map(|(old, line)| {
                let shared = line.places.meeting.iter().filter(|m| m.is_some()).count();
                let (fewest, most) = if line.places.can_be_met() {
                    line.places.range()
                } else {
                    (0, 0)
                };
                let fewest = if may_be_empty(task, &old.places, &|m| bare[m]) {
                    shared
                } else {
                    fewest
                };
                (fewest.saturating_sub(shared), most.saturating_sub(shared))
            })
            .collect();
        let groups = groups(task, &bare);
        let complete = (0..plan.meetings.len())
            .map(|m| {
                let last =
                    |(r, _): &(usize, f64)| groups.iter().position(|g| g.contains(r)).unwrap_or(0);
                plan.meetings[m].on.iter().map(last).max().unwrap_or(0)
            })
            .collect();
        let size = task
            .combinations
            .iter()
            .map(|c| SLACK * task.frame.total_load(&c.factors).1)
            .collect();
        Some(Self {
            task,
            bare,
            lines,
            joints,
            groups,
            complete,
            standing,
            lists: BTreeMap::new(),
            range,
            size,
            capacity: capacities(base, plan.meetings.len()),
            stiffness: task.stiffness().filter(|_| !base.iter().any(|l| l.several)),
        })
    }

    /// Fewest and most piles that the spacing allows.
    pub fn limits(&self) -> (usize, usize) {
        let stand = self.bare.iter().filter(|b| !**b).count();
        self.range
            .iter()
            .fold((stand, stand), |(a, b), (fewest, most)| {
                (a + fewest, b + most)
            })
    }

    /// The best layout with so many piles.
    pub fn with(
        &mut self,
        count: usize,
        best: Option<Layout>,
        budget: &mut Budget,
        work: &Work,
    ) -> Result<Tried, Refusal> {
        let (fewest, most) = self.limits();
        if count < fewest || count > most {
            return Ok(Tried::All(best));
        }
        let spare = count - fewest;
        for run in 0..self.lines.len() {
            let (least, most) = self.range[run];
            for own in least..=most.min(least + spare) {
                if !self.list(run, own, budget, work)? {
                    return Ok(Tried::Spent(best));
                }
            }
        }
        let plan = &self.task.frame.plan;
        let order: Vec<usize> = self.groups.iter().flatten().copied().collect();
        let mut later = vec![(0, 0); order.len() + 1];
        for (d, run) in order.iter().enumerate().rev() {
            let (a, b) = self.range[*run];
            later[d] = (later[d + 1].0 + a, later[d + 1].1 + b);
        }
        let mut walk = Walk {
            pattern: self,
            order,
            later,
            best,
            picks: vec![None; plan.runs.len()],
            springs: BTreeMap::new(),
            budget,
            work,
        };
        let sums = vec![0.0; plan.meetings.len() * self.task.combinations.len()];
        let own = count - self.bare.iter().filter(|b| !**b).count();
        let whole = walk.down(0, own, 0.0, &sums)?;
        let best = walk.best;
        Ok(if whole {
            Tried::All(best)
        } else {
            Tried::Spent(best)
        })
    }

    /// Makes the list of a run with so many piles at no meeting; false where there are too
    /// many.
    fn list(
        &mut self,
        run: usize,
        own: usize,
        budget: &mut Budget,
        work: &Work,
    ) -> Result<bool, Refusal> {
        if let Some(known) = self.lists.get(&(run, own)) {
            return Ok(known.is_some());
        }
        let line = &self.lines[run];
        let shared = line.places.meeting.iter().filter(|m| m.is_some()).count();
        let all = if own + shared == 0 {
            Some(vec![Vec::new()])
        } else if line.places.can_be_met() {
            choices(&line.places, own + shared, budget, work)?
        } else {
            Some(Vec::new())
        };
        let Some(all) = all else {
            self.lists.insert((run, own), None);
            return Ok(false);
        };
        let mut items = Vec::new();
        for chosen in all {
            let steps = (chosen.len() + 1) * line.loads.count;
            if !budget.take(steps as u64) {
                self.lists.insert((run, own), None);
                return Ok(false);
            }
            items.extend(self.item(run, chosen));
        }
        self.lists.insert((run, own), Some(items));
        Ok(true)
    }

    /// A layout of a run, unless it breaks a limit by itself.
    fn item(&self, run: usize, chosen: Vec<usize>) -> Option<Item> {
        let line = &self.lines[run];
        let r = &self.task.frame.plan.runs[run];
        let points: Vec<Point> = chosen
            .iter()
            .filter(|i| line.places.meeting[**i].is_none())
            .map(|i| r.point(line.places.at[*i]))
            .collect();
        let close = |p: &Point| self.standing.iter().any(|q| too_near(self.task, *p, *q));
        if points.iter().any(close) {
            return None;
        }
        let held = Held::of(line, &chosen, &self.joints[run], None)?;
        if held.on.is_empty() {
            for (p, place) in held.piles.iter().enumerate() {
                if line.places.meeting[*place].is_some() {
                    continue;
                }
                for c in 0..line.loads.count {
                    let r = held.own[p * line.loads.count + c];
                    let class = line.class(*place);
                    if used(r, class.compression, class.tension, self.size[c]) > REJECT {
                        return None;
                    }
                }
            }
        }
        let squares = chosen
            .windows(2)
            .map(|p| {
                let l = line.places.at[p[1]] - line.places.at[p[0]];
                l * l
            })
            .sum();
        Some(Item {
            chosen,
            held,
            points,
            squares,
        })
    }
}

/// What a pile carries at each meeting.
fn capacities(lines: &[Line], meetings: usize) -> Vec<(f64, f64)> {
    let mut out = vec![(0.0, 0.0); meetings];
    for line in lines {
        for (i, m) in line.places.meeting.iter().enumerate() {
            if let Some(m) = m {
                out[*m] = (line.class(i).compression, line.class(i).tension);
            }
        }
    }
    out
}

/// Whether two piles are nearer than the least spacing.
pub(super) fn too_near(task: &Task<'_>, a: Point, b: Point) -> bool {
    let u = utilisation(task.min_spacing, a.distance(b)).0;
    round9(u.unwrap_or(f64::INFINITY)) > 1.0
}

/// Runs that bare meetings tie together.
fn groups(task: &Task<'_>, bare: &[bool]) -> Vec<Vec<usize>> {
    let plan = &task.frame.plan;
    let mut set: Vec<usize> = (0..plan.runs.len()).collect();
    for (meeting, _) in plan.meetings.iter().zip(bare).filter(|m| *m.1) {
        for pair in meeting.on.windows(2) {
            let (a, b) = (root(&mut set, pair[0].0), root(&mut set, pair[1].0));
            set[a.max(b)] = a.min(b);
        }
    }
    let mut out: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for run in 0..plan.runs.len() {
        out.entry(root(&mut set, run)).or_default().push(run);
    }
    out.into_values().collect()
}
