//! The runs of a plan as lines with their places, loads and limits, each solved by itself,
//! equal ones once.

use std::collections::BTreeMap;
use std::rc::Rc;

use super::enumerate::Budget;
use super::line::{self, RunLayout};
use super::loads::RunLoads;
use super::places::Places;
use super::stack::{Known, Line, Strength};
use super::{Efforts, Task};
use crate::contract::{Issue, Refusal, Work, none_of};
use crate::layout::codes::refusals;
use crate::layout::report::NOISE;
use crate::layout::types::{Class, Classes};
use crate::quantity::round9;

/// Most places in a plan.
const PLAN_PLACES_MAX: usize = 2_000_000;

/// Every run with its places, loads and limits.
pub(super) fn lines(task: &Task<'_>, work: &Work) -> Result<Vec<Line>, Refusal> {
    let mut issues = Vec::new();
    let mut all = Vec::new();
    let mut count = 0;
    let mut classes = Classes::default();
    for run in 0..task.frame.plan.runs.len() {
        work.go_on()?;
        if let Some(places) = Places::of(task, run, &mut classes, &mut issues) {
            count += places.at.len();
            all.push(places);
        }
        if count > PLAN_PLACES_MAX {
            issues.push(
                Issue::new(
                    "/piles/search/snap",
                    &refusals::TOO_MANY_PLACES,
                    "on all beams together",
                )
                .limit(PLAN_PLACES_MAX.to_string()),
            );
            break;
        }
    }
    none_of(issues)?;
    let floor: Vec<f64> = task
        .combinations
        .iter()
        .map(|c| NOISE * task.frame.total_load(&c.factors).1)
        .collect();
    let classes = Rc::new(classes.list);
    Ok(all
        .into_iter()
        .map(|places| line_of(task, &classes, places, &floor))
        .collect())
}

fn line_of(task: &Task<'_>, classes: &Rc<Vec<Class>>, places: Places, floor: &[f64]) -> Line {
    let run = &task.frame.plan.runs[places.run];
    let strength: Vec<Strength> = run
        .parts
        .iter()
        .map(|part| {
            let [sagging, hogging, shear] = task.frame.strength[part.beam].limits();
            Strength {
                to: part.to,
                sagging,
                hogging,
                shear,
            }
        })
        .collect();
    let judged = |s: &Strength| s.sagging.is_finite() || s.shear.is_finite();
    let loads = RunLoads::of(task.frame, places.run, task.combinations);
    Line {
        known: Known::of(&places, &loads),
        loads,
        rigidity: run
            .parts
            .iter()
            .map(|p| (p.to, task.frame.rigidity[p.beam]))
            .collect(),
        judge_beam: strength.iter().any(judged),
        strength,
        length: run.length,
        classes: Rc::clone(classes),
        several: task.costed() || classes.iter().any(|c| c.each.len() > 1),
        costed: task.costed(),
        floor: floor.to_vec(),
        places,
    }
}

/// Solves the runs, equal ones once.
pub(super) fn solve(
    lines: &[Line],
    efforts: &Efforts,
    work: &Work,
) -> Result<(Vec<RunLayout>, u64, u64), Refusal> {
    let keys: Vec<Vec<i64>> = lines.iter().map(key).collect();
    let mut known: BTreeMap<&[i64], Option<RunLayout>> =
        keys.iter().map(|k| (k.as_slice(), None)).collect();
    let each = (efforts.run / known.len().max(1) as u64).max(efforts.run_each);
    let (mut spent, mut limit) = (0, 0);
    let mut out = Vec::with_capacity(lines.len());
    for (line, key) in lines.iter().zip(&keys) {
        if !line.places.can_be_met() {
            out.push(line::without_piles(line));
            continue;
        }
        if let Some(Some(layout)) = known.get(key.as_slice()) {
            out.push(layout.clone());
            continue;
        }
        let mut budget = Budget {
            spent: 0,
            limit: each,
        };
        let layout = line::solve(line, &mut budget, work)?;
        spent += budget.spent;
        limit += each;
        known.insert(key.as_slice(), Some(layout.clone()));
        out.push(layout);
    }
    Ok((out, spent, limit))
}

/// What a run's layout depends on, to nine digits.
fn key(line: &Line) -> Vec<i64> {
    let mut out = Vec::new();
    let mut put = |v: f64| out.push(round9(v).to_bits() as i64);
    let p = &line.places;
    put(line.length);
    for i in 0..p.at.len() {
        if p.forced[i] {
            put(i as f64);
            put(p.at[i]);
            put(f64::from(u8::from(p.meeting[i].is_some())));
        }
    }
    for v in [
        p.at.len(),
        p.first,
        p.last,
        p.class.first().copied().unwrap_or(0),
    ] {
        put(v as f64);
    }
    if p.uneven {
        for (at, class) in p.at.iter().zip(&p.class) {
            put(*at);
            put(*class as f64);
        }
    }
    line.loads.each(&mut put);
    for (to, rigidity) in &line.rigidity {
        put(*to);
        put(*rigidity);
    }
    for s in &line.strength {
        for v in [s.to, s.sagging, s.hogging, s.shear] {
            put(v);
        }
    }
    out
}
