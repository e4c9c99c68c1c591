//! The plan as a whole: layouts of the runs put together, analysed with what they bring
//! to shared piles and on spring supports, and mended where they fail together.

use super::Task;
use super::enumerate::Budget;
use super::line::guess;
use super::stack::{Line, used};
use super::start::shifted;
use crate::contract::{Refusal, Work, utilisation};
use crate::layout::analysis::{Solved, beam_envelopes};
use crate::layout::frame::Frame;
use crate::layout::plan::Place;
use crate::layout::report::NOISE;
use crate::layout::site::nearest;
use crate::quantity::round9;

/// Steps of a move, in places.
const STEPS: [usize; 4] = [8, 4, 2, 1];

/// The layout of all runs.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Whole {
    /// Places chosen on every run.
    pub chosen: Vec<Vec<usize>>,
    /// Highest utilisation over piles, beams and distances.
    pub worst: f64,
    /// Runs that touch where it is highest.
    pub at: Vec<usize>,
    /// Piles that were added to what the runs need each for itself.
    pub added: bool,
}

impl Whole {
    pub fn keeps(&self) -> bool {
        round9(self.worst) <= 1.0
    }
}

/// Puts the layouts together and mends them within the work limit.
pub(super) fn mend(
    task: &Task<'_>,
    lines: &[Line],
    chosen: Vec<Vec<usize>>,
    budget: &mut Budget,
    work: &Work,
) -> Result<Whole, Refusal> {
    let mut whole = Whole {
        chosen,
        worst: f64::INFINITY,
        at: Vec::new(),
        added: false,
    };
    rate(task, lines, &mut whole, budget, work)?;
    while !whole.keeps() && budget.left() {
        let before = whole.worst;
        move_piles(task, lines, &mut whole, budget, work)?;
        if whole.keeps() || (whole.worst < 0.999 * before && whole.worst < 1.05) {
            continue;
        }
        if !add_pile(task, lines, &mut whole, budget, work)? {
            break;
        }
    }
    Ok(whole)
}

/// Places of all piles, those where runs meet once.
pub(super) fn places(frame: &Frame, lines: &[Line], chosen: &[Vec<usize>]) -> Vec<Place> {
    let mut out = Vec::new();
    let mut stands = vec![false; frame.plan.meetings.len()];
    for (line, own) in lines.iter().zip(chosen) {
        for i in own {
            let p = &line.places;
            match p.meeting[*i] {
                Some(m) if stands[m] => {}
                Some(m) => {
                    stands[m] = true;
                    let (run, at) = frame.plan.meetings[m].on[0];
                    out.push(Place {
                        run,
                        at,
                        meeting: Some(m),
                    });
                }
                None => out.push(Place {
                    run: p.run,
                    at: p.at[*i],
                    meeting: None,
                }),
            }
        }
    }
    out
}

/// Analyses the plan and notes where it is used most.
fn rate(
    task: &Task<'_>,
    lines: &[Line],
    whole: &mut Whole,
    budget: &mut Budget,
    work: &Work,
) -> Result<(), Refusal> {
    work.go_on()?;
    let frame = task.frame;
    let places = places(frame, lines, &whole.chosen);
    let stiffness = task
        .request
        .pile_stiffness
        .map(|k| vec![k.si(); places.len()]);
    let models = if stiffness.is_some() { 5 } else { 1 };
    budget.take((places.len() * task.combinations.len() * models) as u64);
    let mut worst = (0.0f64, Vec::new());
    let mut note = |u: f64, runs: &dyn Fn() -> Vec<usize>| {
        if u > worst.0 {
            worst = (u, runs());
        }
    };
    let touching = |p: &Place| match p.meeting {
        Some(m) => frame.plan.meetings[m].on.iter().map(|o| o.0).collect(),
        None => vec![p.run],
    };
    let mut solved = Vec::new();
    for springs in [None, stiffness.as_deref()]
        .into_iter()
        .take(1 + usize::from(stiffness.is_some()))
    {
        match Solved::of(frame, &places, springs) {
            Ok(s) => solved.push(s),
            Err(_) => {
                (whole.worst, whole.at) = (f64::INFINITY, Vec::new());
                return Ok(());
            }
        }
    }
    let capacity = (lines[0].compression, lines[0].tension);
    for s in &solved {
        for c in task.combinations {
            let floor = NOISE * frame.total_load(&c.factors).1;
            for (p, place) in places.iter().enumerate() {
                let r = s.reaction(p, &c.factors);
                let u = used(r, capacity.0, capacity.1, floor);
                note(u, &|| touching(place));
            }
        }
    }
    if lines.iter().any(|l| l.judge_beam) {
        for (beam, e) in
            task.request
                .beams
                .iter()
                .zip(beam_envelopes(frame, &solved, task.combinations))
        {
            if let Some(m) = &beam.moment_capacity {
                note(e.sagging.value / m.sagging.si(), &|| vec![e.sagging.run]);
                note(e.hogging.value / m.hogging.si(), &|| vec![e.hogging.run]);
            }
            if let Some(v) = beam.shear_capacity {
                note(e.shear.value / v.si(), &|| vec![e.shear.run]);
            }
        }
    }
    let min = task.limits.min_spacing.si();
    let points: Vec<_> = places.iter().map(|p| frame.plan.point_of(p)).collect();
    for (p, n) in nearest(&points).into_iter().enumerate() {
        if let Some((other, d)) = n {
            let u = utilisation(min, d).0.unwrap_or(f64::INFINITY);
            if round9(u) > 1.0 {
                note(u, &|| {
                    let mut runs = touching(&places[p]);
                    runs.extend(touching(&places[other]));
                    runs
                });
            }
        }
    }
    (whole.worst, whole.at) = worst;
    whole.at.sort_unstable();
    whole.at.dedup();
    Ok(())
}

/// Moves single piles of the runs where it is worst, as long as that helps.
fn move_piles(
    task: &Task<'_>,
    lines: &[Line],
    whole: &mut Whole,
    budget: &mut Budget,
    work: &Work,
) -> Result<(), Refusal> {
    let mut again = true;
    while again && !whole.keeps() && budget.left() {
        again = false;
        'moves: for run in whole.at.clone() {
            for i in 0..whole.chosen[run].len() {
                for (step, up) in STEPS.iter().flat_map(|s| [(*s, false), (*s, true)]) {
                    if !budget.left() {
                        return Ok(());
                    }
                    let Some(moved) = shifted(&lines[run], &whole.chosen[run], i, step, up) else {
                        continue;
                    };
                    let mut next = whole.clone();
                    next.chosen[run] = moved;
                    rate(task, lines, &mut next, budget, work)?;
                    if next.worst < whole.worst * (1.0 - 1e-6) {
                        *whole = next;
                        again = true;
                        break 'moves;
                    }
                }
            }
        }
    }
    Ok(())
}

/// Adds a pile to one of the runs where it is worst: the one where that helps most.
fn add_pile(
    task: &Task<'_>,
    lines: &[Line],
    whole: &mut Whole,
    budget: &mut Budget,
    work: &Work,
) -> Result<bool, Refusal> {
    let mut best: Option<Whole> = None;
    for run in whole.at.clone() {
        let Some(layout) = guess(&lines[run], whole.chosen[run].len() + 1, budget) else {
            continue;
        };
        let mut next = whole.clone();
        next.chosen[run] = layout.chosen;
        next.added = true;
        rate(task, lines, &mut next, budget, work)?;
        if best.as_ref().is_none_or(|b| next.worst < b.worst) {
            best = Some(next);
        }
    }
    match best {
        Some(next) if next.worst < whole.worst * (1.0 - 1e-3) => {
            *whole = next;
            Ok(true)
        }
        _ => Ok(false),
    }
}
