//! The fewest piles: every straight run for itself first, then the plan as a whole.
//!
//! A pile stands wherever runs meet, so that on rigid piles the runs do not influence each
//! other except through what they bring to shared piles. The fewest piles of a run with
//! shared piles left unlimited therefore bound the plan from below.

mod barred;
mod bending;
mod bounds;
mod claim;
mod corner_cost;
mod cost;
mod enumerate;
mod explain;
mod joint;
mod line;
mod loads;
mod name;
mod pattern;
mod places;
mod proof;
mod stack;
mod start;
mod whole;

use std::collections::BTreeMap;
use std::rc::Rc;

pub(super) use barred::meetings as barred_meetings;
pub(super) use claim::cost as claim_cost;

use enumerate::Budget;
use line::RunLayout;
use loads::RunLoads;
use places::Places;
use proof::{detail, plan_load_bound, shared_pile_bound};
use stack::{Known, Line, Strength};
use whole::{Whole, mend};

use super::analysis::Solved;
use super::codes::{refusals, warnings};
use super::combine::Combination;
use super::frame::Frame;
use super::outcome::{ProofKind, ProofStep, SearchReport};
use super::plan::{Faults, Place, Plan};
use super::report::NOISE;
use super::request::{PileSearch, Request, SearchObjective};
use super::site::Pile;
use super::types::{Class, Classes, Models, Open, Stretch, Terrain, models};
use crate::beam::Fault;
use crate::contract::{Issue, Refusal, Work, none_of};
use crate::limits::PILES;
use crate::quantity::round9;

/// Counted steps for the runs of a plan; part of the method's version.
const RUN_WORK: u64 = 10_000_000;
/// Counted steps that each run has at least.
const RUN_WORK_MIN: u64 = 10_000;
/// Counted steps for mending the whole plan; part of the method's version.
const WHOLE_WORK: u64 = 5_000_000;
/// Most places in a plan.
const PLAN_PLACES_MAX: usize = 2_000_000;

/// What is to be found.
pub(super) struct Task<'a> {
    pub request: &'a Request,
    pub limits: &'a PileSearch,
    pub frame: &'a Frame,
    pub combinations: &'a [Combination],
    /// Combinations of service loads, where they are known.
    pub service: Option<&'a [Combination]>,
    pub beam_labels: &'a [String],
    pub forced: &'a [Place],
    pub terrain: &'a Terrain,
    /// Stretches of the runs where no pile may stand.
    pub stretches: &'a [Stretch],
    /// Why no pile may stand at each meeting; none where one may.
    pub barred: &'a [Option<String>],
    /// Least distance between any two piles, m.
    pub min_spacing: f64,
    /// Load cases that may be absent on single spans.
    pub absent: Option<Vec<usize>>,
}

impl Task<'_> {
    /// Whether the cost of the piles is to be least.
    pub fn costed(&self) -> bool {
        self.limits.objective == Some(SearchObjective::LeastCost)
    }

    /// Whether piles are modelled as springs too.
    pub fn springs(&self) -> bool {
        let offers = self.terrain.offers.as_ref();
        offers.is_some_and(|o| o.types.iter().all(|t| t.stiffness.is_some()))
    }

    /// The support models with the type that each pile takes.
    pub fn typed(&self, places: &[Place], classes: &[&Class]) -> Result<Models, Fault> {
        let open: Vec<Open> = classes
            .iter()
            .map(|c| Open {
                each: c.each.clone(),
                fixed: None,
                stiffness: None,
            })
            .collect();
        models(self.terrain, self.frame, self.combinations, places, &open)
    }

    /// The support models of piles at these places, each on its kind of ground.
    pub fn solve(&self, places: &[Place], classes: &[&Class]) -> Result<Vec<Solved>, Fault> {
        let offers = self.terrain.offers.as_ref();
        if offers.is_some_and(|o| o.named) && self.springs() {
            return self.typed(places, classes).map(|m| m.solved);
        }
        let mut solved = vec![Solved::of(self.frame, places, None)?];
        if let Some(k) = offers.and_then(|o| o.types[0].stiffness)
            && self.springs()
        {
            let all = vec![k; places.len()];
            solved.push(Solved::of(self.frame, places, Some(&all))?);
        }
        Ok(solved)
    }
}

/// What was found.
pub(super) struct Found {
    pub piles: Vec<Pile>,
    pub report: SearchReport,
    /// No layout costs less than this; only where costs count.
    pub least_cost: Option<f64>,
}

/// Faults of the limits themselves.
pub(super) fn limits(request: &Request, issues: &mut Vec<Issue>) {
    if request.pile_capacity.is_none() && request.pile_types.is_none() {
        issues.push(Issue::new(
            "",
            &refusals::CAPACITY_NEEDED,
            "a search needs `pile_capacity` or `pile_types`",
        ));
    }
}

/// Places of the forced points.
pub(super) fn forced(
    search: &PileSearch,
    plan: &Plan,
    terrain: &Terrain,
    stretches: &[Stretch],
    barred: &[Option<String>],
    issues: &mut Vec<Issue>,
) -> Vec<Place> {
    let mut out = Vec::new();
    for (i, p) in search.forced.iter().flatten().enumerate() {
        let faults = Faults {
            pointer: format!("/piles/search/forced/{i}"),
            code: &refusals::FORCED_POINT_OFF_BEAM,
            issues,
        };
        if let Some(place) = plan.locate(p, faults) {
            let why = barred::why(plan, terrain, stretches, barred, &place);
            if let Some(why) = why {
                let pointer = format!("/piles/search/forced/{i}");
                issues.push(Issue::new(pointer, &refusals::FORCED_POINT_BARRED, why));
            }
            out.push(place);
        }
    }
    out
}

/// Finds the fewest piles.
pub(super) fn fewest(task: &Task<'_>, work: &mut Work) -> Result<Found, Refusal> {
    let lines = lines(task, work)?;
    let (layouts, mut spent, mut limit) = solve_runs(&lines, work)?;
    let mut budget = Budget {
        spent: 0,
        limit: WHOLE_WORK,
    };
    let chosen = layouts.iter().map(|l| l.best.chosen.clone()).collect();
    let fewest: Vec<usize> = layouts.iter().map(|l| l.lower).collect();
    let mut whole = mend(task, &lines, chosen, &fewest, &mut budget, work)?;
    let least_cost = if task.costed() {
        let whole = &mut whole;
        Some(corner_cost::tighten(
            task,
            &lines,
            &layouts,
            whole,
            &mut budget,
            work,
        )?)
    } else {
        None
    };
    spent += budget.spent;
    limit += budget.limit;
    let places = whole::places(task.frame, &lines, &whole.chosen);
    if places.len() > PILES {
        return Err(Issue::new(
            "/piles/search",
            &refusals::TOO_MANY_PILES,
            format!("{} piles", places.len()),
        )
        .limit(PILES.to_string())
        .into());
    }
    let mut report = report(task, &lines, &layouts, &whole, work);
    (report.work_count, report.work_limit_count) = (spent, limit);
    if report.feasible && !report.proven_minimal && !task.costed() {
        work.warn(
            &warnings::SEARCH_NOT_PROVEN,
            format!(
                "{} piles found, at least {} are needed",
                places.len(),
                report.lower_bound_count
            ),
        );
    }
    let mut piles = name::piles(task, &places);
    if let Some(offers) = task.terrain.offers.as_ref().filter(|o| !o.named) {
        for pile in &mut piles {
            let here = task.terrain.here(task.frame.plan.point_of(&pile.place));
            let capacity = task.terrain.capacities(&here)[0];
            pile.compression = Some(capacity.compression);
            pile.tension = Some(capacity.tension);
            pile.stiffness = offers.types[0].stiffness;
        }
    }
    Ok(Found {
        piles,
        report,
        least_cost,
    })
}

/// Every run with its places, loads and limits.
fn lines(task: &Task<'_>, work: &Work) -> Result<Vec<Line>, Refusal> {
    let mut issues = Vec::new();
    let mut all = Vec::new();
    let mut count = 0;
    let mut classes = Classes::default();
    barred::refuse(task, &mut issues);
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
fn solve_runs(lines: &[Line], work: &Work) -> Result<(Vec<RunLayout>, u64, u64), Refusal> {
    let keys: Vec<Vec<i64>> = lines.iter().map(key).collect();
    let mut known: BTreeMap<&[i64], Option<RunLayout>> =
        keys.iter().map(|k| (k.as_slice(), None)).collect();
    let each = (RUN_WORK / known.len().max(1) as u64).max(RUN_WORK_MIN);
    let (mut spent, mut limit) = (0, 0);
    let mut out = Vec::with_capacity(lines.len());
    for (line, key) in lines.iter().zip(&keys) {
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
    for v in [p.at.len(), p.first, p.last, p.class[0]] {
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

/// What can be claimed.
fn report(
    task: &Task<'_>,
    lines: &[Line],
    layouts: &[RunLayout],
    whole: &Whole,
    work: &mut Work,
) -> SearchReport {
    let places = whole::places(task.frame, lines, &whole.chosen);
    let count = places.len();
    let mut how = Vec::new();
    let mut own = 0;
    for (line, layout) in lines.iter().zip(layouts) {
        let p = &line.places;
        let shared = p.meeting.iter().filter(|m| m.is_some()).count();
        own += layout.lower - shared.min(layout.lower);
        how.push(ProofStep {
            by: layout.by,
            beams: task.frame.plan.runs[p.run]
                .beams()
                .into_iter()
                .map(|b| task.beam_labels[b].clone())
                .collect(),
            pile_count: whole.chosen[p.run].len() as u32,
            lower_bound_count: layout.lower as u32,
            detail: detail(layout),
        });
        how.extend(claim::step(task, line, layout, whole.chosen[p.run].len()));
    }
    let mut lower = own + task.frame.plan.meetings.len();
    lower += shared_pile_bound(task, whole, lower, count, &mut how);
    let by_load = plan_load_bound(task, lines, work);
    if by_load > lower {
        lower = by_load;
        how.push(ProofStep {
            by: ProofKind::LoadBound,
            beams: Vec::new(),
            pile_count: count as u32,
            lower_bound_count: by_load as u32,
            detail: format!("the load of the plan needs {by_load} piles at their capacity"),
        });
    }
    let feasible = whole.keeps();
    if whole.added && count > lower {
        how.push(ProofStep {
            by: ProofKind::WholePlan,
            beams: Vec::new(),
            pile_count: count as u32,
            lower_bound_count: lower as u32,
            detail: "piles were added for what runs bring to shared piles, for spring supports or for distances between runs; it is not proven that fewer cannot do".to_owned(),
        });
    }
    SearchReport {
        feasible,
        proven_minimal: feasible && count == lower,
        how,
        lower_bound_count: lower as u32,
        gap_count: count.saturating_sub(lower) as u32,
        work_count: 0,
        work_limit_count: 0,
        utilisation_searched_exhaustively: layouts.iter().all(|l| l.exhaustive)
            && !whole.added
            && task.absent.is_none(),
        cost: None,
        without_pile: None,
        symmetry: None,
        infeasible: None,
    }
}
