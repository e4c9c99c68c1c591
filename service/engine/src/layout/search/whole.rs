//! The plan as a whole: layouts of the runs put together, analysed with what they bring
//! to shared piles and on spring supports, and mended where they fail together.

use super::Task;
use super::bending;
use super::enumerate::Budget;
use super::joint::{Conflict, Shares, resolve};
use super::line::guess;
use super::pattern;
use super::stack::{Line, used};
use super::start::shifted;
use crate::contract::{Refusal, Work, utilisation};
use crate::layout::analysis::{Solved, beam_envelopes};
use crate::layout::frame::Frame;
use crate::layout::outcome::SupportModel;
use crate::layout::plan::Place;
use crate::layout::report::NOISE;
use crate::layout::site::nearest;
use crate::layout::types::{Class, Demand};
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
    /// Where it is highest.
    pub at: Spot,
    /// Piles that were added to what the runs need each for itself.
    pub added: bool,
    /// Runs that meet at a shared pile and the piles they are proven to need in addition.
    pub proven: Vec<(Vec<usize>, usize)>,
}

/// Where a plan is used most.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Spot {
    /// Runs that touch it.
    pub runs: Vec<usize>,
    /// The meeting, combination and direction, where it is a shared pile on rigid supports.
    pub shared: Option<(usize, usize, bool)>,
}

impl Whole {
    pub fn keeps(&self) -> bool {
        round9(self.worst) <= 1.0
    }
}

/// Puts the layouts together and mends them within the work limit. `fewest` is the lower
/// bound of every run.
pub(super) fn mend(
    task: &Task<'_>,
    lines: &[Line],
    chosen: Vec<Vec<usize>>,
    fewest: &[usize],
    budget: &mut Budget,
    work: &Work,
) -> Result<Whole, Refusal> {
    let mut whole = Whole {
        chosen,
        worst: f64::INFINITY,
        at: Spot::default(),
        added: false,
        proven: Vec::new(),
    };
    rate(task, lines, &mut whole, budget, work)?;
    let mut shares = Shares::new();
    let mut seen = Vec::new();
    while !whole.keeps() && budget.left() {
        let before = whole.worst;
        if let Some(conflict) = conflict(task, lines, &whole)
            && !seen.contains(&conflict)
        {
            seen.push(conflict.clone());
            let found = resolve(&conflict, lines, fewest, &mut shares, budget, work)?;
            let runs = conflict.on.iter().map(|o| o.0).collect();
            whole.proven.push((runs, found.extra));
            for option in found.options {
                try_option(task, lines, &mut whole, option, budget, work)?;
            }
        }
        if whole.keeps() || whole.worst < 0.999 * before {
            continue;
        }
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

/// The shared pile that is worst, if it is one that runs can spare.
fn conflict(task: &Task<'_>, lines: &[Line], whole: &Whole) -> Option<Conflict> {
    let (meeting, combination, tension) = whole.at.shared?;
    let place = |run: usize| {
        lines[run]
            .places
            .meeting
            .iter()
            .position(|m| *m == Some(meeting))
    };
    let on: Option<Vec<(usize, usize)>> = task.frame.plan.meetings[meeting]
        .on
        .iter()
        .map(|(run, _)| place(*run).map(|p| (*run, p)))
        .collect();
    Some(Conflict {
        meeting,
        combination,
        tension,
        on: on?,
    })
}

/// Tries layouts that spare a shared pile, where no run loses piles by them.
fn try_option(
    task: &Task<'_>,
    lines: &[Line],
    whole: &mut Whole,
    option: Vec<(usize, Vec<usize>)>,
    budget: &mut Budget,
    work: &Work,
) -> Result<(), Refusal> {
    if whole.keeps() || option.iter().any(|(r, c)| c.len() < whole.chosen[*r].len()) {
        return Ok(());
    }
    let mut next = whole.clone();
    let mut gentle = whole.clone();
    for (run, chosen) in option {
        if chosen.len() > whole.chosen[run].len() {
            next.added = true;
            gentle.added = true;
            if let Some(layout) = guess(&lines[run], chosen.len(), budget) {
                gentle.chosen[run] = layout.chosen;
            }
        }
        next.chosen[run] = chosen;
    }
    for mut candidate in [gentle, next] {
        rate(task, lines, &mut candidate, budget, work)?;
        if !candidate.keeps() {
            move_piles(task, lines, &mut candidate, budget, work)?;
        }
        let fewer = candidate.keeps() && !whole.keeps();
        if fewer || (!whole.keeps() && candidate.worst < whole.worst * (1.0 - 1e-3)) {
            *whole = candidate;
        }
    }
    Ok(())
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

/// The kind of ground of every pile, in the order of `places`.
pub(super) fn classes<'a>(
    frame: &Frame,
    lines: &'a [Line],
    chosen: &[Vec<usize>],
) -> Vec<&'a Class> {
    let mut out = Vec::new();
    let mut stands = vec![false; frame.plan.meetings.len()];
    for (line, own) in lines.iter().zip(chosen) {
        for i in own {
            let first =
                line.places.meeting[*i].is_none_or(|m| !std::mem::replace(&mut stands[m], true));
            if first {
                out.push(line.class(*i));
            }
        }
    }
    out
}

/// The highest utilisation and where it is.
struct Worst {
    value: f64,
    at: Spot,
}

impl Worst {
    fn note(&mut self, value: f64, at: impl FnOnce() -> Spot) {
        if value > self.value {
            self.value = value;
            self.at = at();
        }
    }
}

/// Analyses the plan and notes where it is used most.
pub(super) fn rate(
    task: &Task<'_>,
    lines: &[Line],
    whole: &mut Whole,
    budget: &mut Budget,
    work: &Work,
) -> Result<(), Refusal> {
    work.go_on()?;
    let places = places(task.frame, lines, &whole.chosen);
    let models = if task.springs() { 5 } else { 1 };
    budget.take((places.len() * task.combinations.len() * models) as u64);
    let mut worst = Worst {
        value: 0.0,
        at: Spot::default(),
    };
    let classes = classes(task.frame, lines, &whole.chosen);
    let Ok(solved) = task.solve(&places, &classes) else {
        (whole.worst, whole.at) = (f64::INFINITY, Spot::default());
        return Ok(());
    };
    if lines[0].several {
        rate_types(task, &classes, &places, &solved, &mut worst);
    } else {
        rate_piles(task, &classes, &places, &solved, &mut worst);
    }
    if lines.iter().any(|l| l.judge_beam) {
        rate_beams(task, &solved, &mut worst);
    }
    let bent = bending::combinations(task);
    if bent > 0 {
        budget.take((places.len() * bent * models) as u64);
        for (value, run) in bending::rate(task, &solved) {
            let runs = vec![run];
            worst.note(value, || Spot { runs, shared: None });
        }
    }
    let capacities: Vec<(f64, f64)> = classes.iter().map(|c| (c.compression, c.tension)).collect();
    match pattern::rate(task, &places, &solved, &capacities, budget, work)? {
        Some(rated) => {
            for (value, runs) in rated {
                worst.note(value, || Spot { runs, shared: None });
            }
        }
        None => worst.note(f64::INFINITY, Spot::default),
    }
    rate_distances(task, &places, &mut worst);
    (whole.worst, whole.at) = (worst.value, worst.at);
    Ok(())
}

/// What a layout asks of its limits.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Needs {
    /// Greatest compression and tension of a pile, N.
    pub compression: f64,
    pub tension: f64,
    /// Highest utilisation of a beam.
    pub strength: f64,
}

/// What a layout asks of its limits; nothing where it cannot be analysed.
pub(super) fn needs(task: &Task<'_>, lines: &[Line], whole: &Whole) -> Needs {
    let places = places(task.frame, lines, &whole.chosen);
    let classes = classes(task.frame, lines, &whole.chosen);
    let Ok(solved) = task.solve(&places, &classes) else {
        return Needs::default();
    };
    let mut demand = Demand::default();
    for s in &solved {
        for combination in task.combinations {
            let floor = NOISE * task.frame.total_load(&combination.factors).1;
            for p in 0..places.len() {
                demand.add(s.reaction(p, &combination.factors), floor);
            }
        }
    }
    let mut worst = Worst {
        value: 0.0,
        at: Spot::default(),
    };
    rate_beams(task, &solved, &mut worst);
    Needs {
        compression: demand.compression,
        tension: demand.tension,
        strength: worst.value,
    }
}

pub(super) fn touching(frame: &Frame, place: &Place) -> Vec<usize> {
    match place.meeting {
        Some(m) => frame.plan.meetings[m].on.iter().map(|o| o.0).collect(),
        None => vec![place.run],
    }
}

fn rate_piles(
    task: &Task<'_>,
    classes: &[&Class],
    places: &[Place],
    solved: &[Solved],
    worst: &mut Worst,
) {
    for s in solved {
        for (c, combination) in task.combinations.iter().enumerate() {
            let floor = NOISE * task.frame.total_load(&combination.factors).1;
            for (p, place) in places.iter().enumerate() {
                let r = s.reaction(p, &combination.factors);
                let class = classes[p];
                worst.note(used(r, class.compression, class.tension, floor), || Spot {
                    runs: touching(task.frame, place),
                    shared: place
                        .meeting
                        .filter(|_| s.supports == SupportModel::Rigid)
                        .map(|m| (m, c, r < 0.0)),
                });
            }
        }
    }
}

/// With several types each pile is rated by the one that it uses least, over all
/// combinations and support models together.
fn rate_types(
    task: &Task<'_>,
    classes: &[&Class],
    places: &[Place],
    solved: &[Solved],
    worst: &mut Worst,
) {
    let floors: Vec<f64> = task
        .combinations
        .iter()
        .map(|c| NOISE * task.frame.total_load(&c.factors).1)
        .collect();
    for (p, place) in places.iter().enumerate() {
        let mut demand = Demand::default();
        // the rigid combinations that compress and pull it most
        let (mut down, mut up) = ((0.0, 0), (0.0, 0));
        for s in solved {
            for (c, combination) in task.combinations.iter().enumerate() {
                let r = s.reaction(p, &combination.factors);
                demand.add(r, floors[c]);
                if s.supports == SupportModel::Rigid && r > down.0 {
                    down = (r, c);
                }
                if s.supports == SupportModel::Rigid && -r > up.0 {
                    up = (-r, c);
                }
            }
        }
        let class = classes[p];
        let rigid = down.0 == demand.compression || up.0 == demand.tension;
        worst.note(class.least_used(demand), || {
            let by_tension = up.0 / class.tension > down.0 / class.compression;
            let combination = if by_tension { up.1 } else { down.1 };
            Spot {
                runs: touching(task.frame, place),
                shared: place
                    .meeting
                    .filter(|_| rigid)
                    .map(|m| (m, combination, by_tension)),
            }
        });
    }
}

fn rate_beams(task: &Task<'_>, solved: &[Solved], worst: &mut Worst) {
    let envelopes = beam_envelopes(task.frame, solved, task.combinations);
    for (own, e) in task.frame.strength.iter().zip(envelopes) {
        let mut note = |value: f64, capacity: f64, run: usize| {
            worst.note(value / capacity, || Spot {
                runs: vec![run],
                shared: None,
            });
        };
        let [sagging, hogging, shear] = own.limits();
        note(e.sagging.value, sagging, e.sagging.run);
        note(e.hogging.value, hogging, e.hogging.run);
        note(e.shear.value, shear, e.shear.run);
    }
}

/// Distances below the least one; others are no reason to move anything.
fn rate_distances(task: &Task<'_>, places: &[Place], worst: &mut Worst) {
    let min = task.min_spacing;
    let plan = &task.frame.plan;
    let points: Vec<_> = places.iter().map(|p| plan.point_of(p)).collect();
    for (p, n) in nearest(&points).into_iter().enumerate() {
        let Some((other, d)) = n else {
            continue;
        };
        let u = utilisation(min, d).0.unwrap_or(f64::INFINITY);
        if round9(u) > 1.0 {
            worst.note(u, || {
                let mut runs = touching(task.frame, &places[p]);
                runs.extend(touching(task.frame, &places[other]));
                runs.sort_unstable();
                runs.dedup();
                Spot { runs, shared: None }
            });
        }
    }
}

/// Moves single piles of the runs where it is worst, as long as that helps.
pub(super) fn move_piles(
    task: &Task<'_>,
    lines: &[Line],
    whole: &mut Whole,
    budget: &mut Budget,
    work: &Work,
) -> Result<(), Refusal> {
    let mut again = true;
    while again && !whole.keeps() && budget.left() {
        again = false;
        'moves: for run in whole.at.runs.clone() {
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
    for run in whole.at.runs.clone() {
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
