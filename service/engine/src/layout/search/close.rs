//! What the runs by themselves leave open: parts whose beams meet without a pile, gaps
//! between count and bound, and parts where nothing was found. Each connected part is
//! searched as a whole; the plan is put together again at the end.

use super::Task;
use super::bare::may_be_empty;
use super::climb::{Climbed, climb};
use super::enumerate::Budget;
use super::line::RunLayout;
use super::open::{open, spacing_bound, thin};
use super::parts::{Part, split};
use super::stack::Line;
use super::whole::{Spot, Whole, mend, places, rate};
use crate::contract::{Refusal, Work};
use crate::layout::outcome::{ProofKind, ProofStep, SearchReport};
use crate::layout::plan::Point;
use crate::layout::report::NOISE;
use crate::layout::request::PlanPoint;
use crate::quantity::{Length, round9};

/// Counted steps for searching parts as a whole; part of the method's version.
pub(super) const PART_WORK: u64 = 3_000_000;

/// What is known of the parts of a plan.
pub(super) struct Parts {
    /// Meetings that have no pile in any case.
    pub bare: Vec<bool>,
    /// Runs of parts where a meeting has no pile or may have none.
    pub coupled: Vec<bool>,
}

impl Parts {
    /// Finds the runs that cannot be searched one by one.
    pub fn of(task: &Task<'_>) -> Self {
        let bare: Vec<bool> = task.barred.iter().map(Option::is_some).collect();
        let plan = &task.frame.plan;
        let set = plan.connected();
        let mut loose = open(task, &bare);
        loose.extend((0..bare.len()).filter(|m| bare[*m]));
        let mut coupled = vec![false; plan.runs.len()];
        for m in loose {
            let root = set[plan.meetings[m].on[0].0];
            for (run, c) in coupled.iter_mut().enumerate() {
                *c |= set[run] == root;
            }
        }
        Self { bare, coupled }
    }

    /// Whether there are such runs.
    pub fn any(&self) -> bool {
        self.coupled.iter().any(|c| *c)
    }

    /// Meetings of parts whose runs can be searched one by one.
    pub fn plain_meetings(&self, task: &Task<'_>) -> usize {
        let meetings = &task.frame.plan.meetings;
        meetings.iter().filter(|m| !self.coupled[m.on[0].0]).count()
    }
}

/// Searches parts as a whole where something is open, and brings the report up to date;
/// whether it is shown that no layout keeps the limits, where that was asked.
#[allow(clippy::too_many_arguments)]
pub(super) fn close(
    task: &Task<'_>,
    parts: &Parts,
    base: &[Line],
    lines: &mut Vec<Line>,
    layouts: &[RunLayout],
    whole: &mut Whole,
    report: &mut SearchReport,
    budget: &mut Budget,
    work: &Work,
) -> Result<Option<bool>, Refusal> {
    let plain = !parts.any();
    if plain && (report.proven_minimal || task.costed()) {
        return Ok(None);
    }
    let all = split(task.frame);
    let mut sum = 0;
    let mut impossible = layouts
        .iter()
        .zip(&*lines)
        .zip(&parts.coupled)
        .any(|((l, line), c)| !c && l.lower > line.places.range().1);
    let mut compared = true;
    let count = all.len();
    for (i, part) in all.into_iter().enumerate() {
        let mut own = Budget {
            spent: 0,
            limit: (budget.limit.saturating_sub(budget.spent)) / (count - i) as u64,
        };
        let mut closing = Closing::of(task, parts, part, (base, lines), whole, layouts);
        closing.run(&mut own, work, &mut report.how)?;
        budget.take(own.spent);
        sum += closing.lower;
        impossible |= closing.impossible;
        compared &= closing.compared;
        closing.put_back(lines, whole);
    }
    rate(task, lines, whole, budget, work)?;
    if !whole.keeps() {
        let fewest = vec![0; lines.len()];
        let mut own = Budget {
            spent: 0,
            limit: budget
                .limit
                .saturating_sub(budget.spent)
                .max(budget.limit / 8),
        };
        let mended = mend(task, lines, whole.chosen.clone(), &fewest, &mut own, work)?;
        budget.take(own.spent);
        if mended.worst < whole.worst {
            *whole = Whole {
                proven: whole.proven.clone(),
                ..mended
            };
        }
    }
    let found = places(task.frame, lines, &whole.chosen).len();
    report.lower_bound_count = report.lower_bound_count.max(sum as u32);
    let lower = report.lower_bound_count as usize;
    report.feasible = whole.keeps();
    report.proven_minimal = report.feasible && found == lower;
    report.gap_count = found.saturating_sub(lower) as u32;
    if !plain || report.proven_minimal {
        report.how.retain(|h| h.by != ProofKind::WholePlan);
    }
    if !plain {
        // the load of the whole plan says less than its parts
        let told = |h: &ProofStep| !h.beams.is_empty() || h.lower_bound_count == lower as u32;
        report.how.retain(told);
        let whole = report.how.iter_mut().filter(|h| h.beams.is_empty());
        whole.for_each(|h| h.pile_count = found as u32);
    }
    if report.gap_count > 0 && report.feasible && !report.how.iter().any(unsure) {
        report.how.push(ProofStep {
            by: ProofKind::WholePlan,
            beams: Vec::new(),
            pile_count: found as u32,
            lower_bound_count: lower as u32,
            detail: "it is not proven that fewer cannot do".to_owned(),
        });
    }
    report.utilisation_searched_exhaustively &= compared;
    Ok(Some(impossible && !report.feasible))
}

fn unsure(step: &ProofStep) -> bool {
    matches!(step.by, ProofKind::WorkLimit | ProofKind::WholePlan)
}

/// Where beams meet without a pile.
pub(super) fn without_pile(task: &Task<'_>, lines: &[Line]) -> Option<Vec<PlanPoint>> {
    let plan = &task.frame.plan;
    let out: Vec<PlanPoint> = plan
        .meetings
        .iter()
        .enumerate()
        .filter(|(m, meeting)| {
            let (run, _) = meeting.on[0];
            !lines[run].places.meeting.contains(&Some(*m))
        })
        .map(|(_, meeting)| {
            let (run, at) = meeting.on[0];
            let p: Point = plan.outside(plan.runs[run].point(at));
            PlanPoint {
                x: Length::from_si(p.x),
                y: Length::from_si(p.y),
            }
        })
        .collect();
    (!out.is_empty()).then_some(out)
}

/// One part while it is closed.
struct Closing<'a> {
    part: Part,
    outer: &'a Task<'a>,
    coupled: bool,
    bare: Vec<bool>,
    base: Vec<Line>,
    lines: Vec<Line>,
    whole: Whole,
    lower: usize,
    /// Fewest piles of each run that was searched by itself.
    fewest: Vec<usize>,
    impossible: bool,
    compared: bool,
}

impl<'a> Closing<'a> {
    fn of(
        task: &'a Task<'a>,
        parts: &Parts,
        part: Part,
        (base, lines): (&[Line], &[Line]),
        whole: &Whole,
        layouts: &[RunLayout],
    ) -> Self {
        let own = part.lines(lines);
        let coupled = parts.coupled[part.runs[0]];
        let piles = |run: &usize| {
            let shared = lines[*run].places.meeting.iter().filter(|m| m.is_some());
            let shared = shared.count();
            layouts[*run].lower - shared.min(layouts[*run].lower)
        };
        let shared: usize = super::proof::disjoint(&whole.proven)
            .into_iter()
            .filter(|p| part.runs.contains(&p.0[0]))
            .map(|p| p.1)
            .sum();
        let lower = part.runs.iter().map(piles).sum::<usize>() + part.meetings.len() + shared;
        Self {
            whole: Whole {
                chosen: part.runs.iter().map(|r| whole.chosen[*r].clone()).collect(),
                worst: f64::INFINITY,
                at: Spot::default(),
                added: false,
                proven: Vec::new(),
            },
            bare: part.meetings.iter().map(|m| parts.bare[*m]).collect(),
            base: part.lines(base),
            lines: own,
            lower: if coupled { 0 } else { lower },
            fewest: part.runs.iter().map(|r| layouts[*r].lower).collect(),
            outer: task,
            coupled,
            impossible: false,
            compared: true,
            part,
        }
    }

    fn run(
        &mut self,
        budget: &mut Budget,
        work: &Work,
        how: &mut Vec<ProofStep>,
    ) -> Result<(), Refusal> {
        let frame = self.part.frame.clone();
        let task = Task {
            frame: &frame,
            forced: &[],
            barred: &[],
            stretches: &[],
            absent: self.outer.absent.clone(),
            ..*self.outer
        };
        rate(&task, &self.lines, &mut self.whole, budget, work)?;
        let forced = self.forced_meetings();
        let open: Vec<usize> = open(&task, &self.bare)
            .into_iter()
            .filter(|m| !forced[*m])
            .collect();
        let mut bounds = String::new();
        let mut by = ProofKind::SpacingBound;
        if self.coupled {
            let by_spacing = spacing_bound(&task, &self.base, &self.bare, &open);
            let by_load = self.load_bound(&task);
            let by_runs = if open.is_empty() {
                self.by_runs(&task)
            } else {
                0
            };
            self.lower = by_spacing.max(by_load).max(by_runs);
            bounds = format!("at least {by_spacing} piles by spacing and {by_load} by load");
            if by_runs > by_spacing.max(by_load) {
                bounds = format!("{bounds}, {by_runs} by what its runs need");
                by = ProofKind::Enumeration;
            } else if by_load > by_spacing {
                by = ProofKind::LoadBound;
            }
            if self.whole.keeps() {
                let mut own = Budget {
                    spent: 0,
                    limit: budget.limit / 4,
                };
                let stands = |m: &usize| {
                    let on = self.lines.iter().flat_map(|l| &l.places.meeting);
                    on.flatten().any(|other| other == m)
                };
                let mut bare: Vec<bool> = (0..self.bare.len()).map(|m| !stands(&m)).collect();
                thin(
                    &task,
                    &self.base,
                    &mut self.lines,
                    &mut bare,
                    &open,
                    &mut self.whole,
                    &mut own,
                    work,
                )?;
                budget.take(own.spent);
            }
        }
        let count = places(&frame, &self.lines, &self.whole.chosen).len();
        let keeps = self.whole.keeps();
        if keeps && count <= self.lower {
            if self.coupled {
                how.push(self.step(by, count, bounds));
            }
            return Ok(());
        }
        if !self.worth_it() {
            return Ok(());
        }
        let below = keeps.then_some(count);
        let climbed = climb(
            &task, &self.base, &self.bare, &open, self.lower, below, budget, work,
        )?;
        self.take(climbed, below, &bounds, how);
        Ok(())
    }

    /// Piles that the runs need where it is known which meetings have one: each that no
    /// bare meeting touches as it was found by itself, the others by spacing.
    fn by_runs(&self, task: &Task<'_>) -> usize {
        let plan = &self.part.frame.plan;
        let standing = self.bare.iter().filter(|b| !**b).count();
        let own = self.base.iter().zip(&self.fewest).map(|(line, fewest)| {
            let p = &line.places;
            let shared = p.meeting.iter().filter(|m| m.is_some()).count();
            let touched = plan.runs[p.run]
                .meetings
                .iter()
                .any(|m| self.bare[m.meeting]);
            let empty = may_be_empty(task, p, &|m| self.bare[m]);
            let least = match (touched, p.can_be_met() && !empty) {
                (false, _) => *fewest,
                (true, true) => p.range().0,
                (true, false) => 0,
            };
            least.saturating_sub(shared)
        });
        standing + own.sum::<usize>()
    }

    /// A single run on rigid piles was tried in full already.
    fn worth_it(&self) -> bool {
        self.part.runs.len() > 1 || self.outer.springs()
    }

    fn forced_meetings(&self) -> Vec<bool> {
        let forced = |m: &usize| self.outer.forced.iter().any(|p| p.meeting == Some(*m));
        self.part.meetings.iter().map(forced).collect()
    }

    fn load_bound(&self, task: &Task<'_>) -> usize {
        let heaviest = task
            .combinations
            .iter()
            .map(|c| {
                let (total, size) = task.frame.total_load(&c.factors);
                total - NOISE * size
            })
            .fold(0.0, f64::max);
        let most = self
            .base
            .iter()
            .flat_map(|l| (0..l.places.at.len()).map(|i| l.class(i).compression))
            .fold(0.0, f64::max);
        round9(heaviest / most).ceil() as usize
    }

    fn take(
        &mut self,
        climbed: Climbed,
        below: Option<usize>,
        bounds: &str,
        how: &mut Vec<ProofStep>,
    ) {
        let before = self.lower;
        self.lower = climbed.lower;
        self.impossible = climbed.all && below.is_none() && climbed.found.is_none();
        self.compared = climbed.compared;
        let lower = self.lower;
        if let Some(layout) = climbed.found {
            self.whole.worst = layout.worst;
            self.whole.chosen = layout.chosen;
            self.lines = layout.lines;
        }
        let count = places(&self.part.frame, &self.lines, &self.whole.chosen).len();
        let mut detail = bounds.to_owned();
        let mut also = |text: String| {
            if !detail.is_empty() {
                detail.push_str("; ");
            }
            detail.push_str(&text);
        };
        let by = if climbed.spent {
            also(format!(
                "the work limit came before all layouts of these beams together with {lower} piles were tried"
            ));
            ProofKind::WorkLimit
        } else if self.impossible {
            also("every layout of these beams together breaks a limit".to_owned());
            ProofKind::Enumeration
        } else if lower > before {
            also(format!(
                "every layout of these beams together with {} piles breaks a limit",
                lower - 1
            ));
            ProofKind::Enumeration
        } else {
            ProofKind::SpacingBound
        };
        if self.coupled || lower > before || self.impossible {
            how.push(self.step(by, count, detail));
        }
    }

    fn step(&self, by: ProofKind, count: usize, detail: String) -> ProofStep {
        let mut beams: Vec<usize> = self
            .part
            .runs
            .iter()
            .flat_map(|r| self.outer.frame.plan.runs[*r].beams())
            .collect();
        beams.sort_unstable();
        beams.dedup();
        ProofStep {
            by,
            beams: beams
                .into_iter()
                .map(|b| self.outer.beam_labels[b].clone())
                .collect(),
            pile_count: count as u32,
            lower_bound_count: self.lower as u32,
            detail,
        }
    }

    fn put_back(self, lines: &mut [Line], whole: &mut Whole) {
        for (r, run) in self.part.runs.iter().enumerate() {
            let mut line = self.lines[r].clone();
            line.places.run = *run;
            for m in line.places.meeting.iter_mut().flatten() {
                *m = self.part.meetings[*m];
            }
            lines[*run] = line;
            whole.chosen[*run] = self.whole.chosen[r].clone();
        }
    }
}
