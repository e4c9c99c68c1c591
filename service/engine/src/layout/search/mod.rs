//! The fewest piles: every straight run for itself first, then the plan as a whole.
//!
//! A pile stands wherever runs meet, so that on rigid piles the runs do not influence each
//! other except through what they bring to shared piles. The fewest piles of a run with
//! shared piles left unlimited therefore bound the plan from below.

mod bare;
mod barred;
mod bending;
mod bounds;
mod claim;
mod climb;
mod close;
mod corner_cost;
mod cost;
mod enumerate;
mod explain;
mod held;
mod joined;
mod joint;
mod line;
mod lists;
mod loads;
mod mirror;
mod name;
mod open;
mod parts;
mod pattern;
mod places;
mod proof;
mod relax;
mod runs;
mod stack;
mod start;
mod symmetric;
mod whole;

pub(super) use barred::meetings as barred_meetings;
pub(super) use claim::cost as claim_cost;
pub(super) use relax::{Unmet, infeasible};

use close::{PART_WORK, Parts, close, without_pile};
use enumerate::Budget;
use open::start;
use proof::report;
use relax::{RELAX_WORK, relax};
use runs::{lines, solve};
use stack::Line;
use symmetric::{SYMMETRY_WORK, symmetric};
use whole::{Whole, mend};

use super::analysis::Solved;
use super::codes::{refusals, warnings};
use super::combine::Combination;
use super::frame::Frame;
use super::outcome::{SearchReport, SymmetryReason};
use super::plan::{Faults, Place, Plan};
use super::request::{PileSearch, Request, SearchObjective};
use super::site::Pile;
use super::types::{Class, Models, Open, Stretch, Terrain, models};
use crate::beam::Fault;
use crate::contract::{Issue, Refusal, Work};
use crate::limits::PILES;

/// Counted steps for the runs of a plan; part of the method's version.
const RUN_WORK: u64 = 10_000_000;
/// Counted steps that each run has at least.
const RUN_WORK_MIN: u64 = 10_000;
/// Counted steps for mending the whole plan; part of the method's version.
const WHOLE_WORK: u64 = 5_000_000;
/// What a search may take in all.
const EFFORTS: Efforts = Efforts {
    run: RUN_WORK,
    run_each: RUN_WORK_MIN,
    whole: WHOLE_WORK,
    part: PART_WORK,
};

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

    /// Stiffness of every pile, where there is one type with one.
    pub fn stiffness(&self) -> Option<f64> {
        let offers = self.terrain.offers.as_ref()?;
        offers.types[0]
            .stiffness
            .filter(|_| offers.types.len() == 1)
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
    /// What would have to give, where no layout was found that keeps the limits.
    pub unmet: Option<Unmet>,
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
            pointer: &|| format!("/piles/search/forced/{i}"),
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

/// Counted steps that the stages of a search may take.
struct Efforts {
    /// For all runs.
    run: u64,
    /// For each run at least.
    run_each: u64,
    /// For mending the plan.
    whole: u64,
    /// For parts as a whole.
    part: u64,
}

/// What a search found before piles have names.
struct Core {
    lines: Vec<Line>,
    whole: Whole,
    report: SearchReport,
    /// No layout keeps the limits, and that is proven.
    impossible: bool,
    /// No layout costs less than this; only where costs count.
    least_cost: Option<f64>,
    spent: u64,
    limit: u64,
}

/// Searches within the efforts.
fn core(task: &Task<'_>, efforts: &Efforts, work: &mut Work) -> Result<Core, Refusal> {
    let parts = Parts::of(task);
    let base = lines(task, work)?;
    let mut lines = start(task, &base)?;
    let (layouts, mut spent, mut limit) = solve(&lines, efforts, work)?;
    let mut budget = Budget {
        spent: 0,
        limit: efforts.whole,
    };
    let chosen = layouts.iter().map(|l| l.best.chosen.clone()).collect();
    let fewest: Vec<usize> = layouts.iter().map(|l| l.lower).collect();
    let mut whole = mend(task, &lines, chosen, &fewest, &mut budget, work)?;
    whole.proven.retain(|p| !parts.coupled[p.0[0]]);
    let mut least_cost = if task.costed() && !parts.any() {
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
    let mut report = report(task, &parts, &lines, &layouts, &whole, work);
    let mut budget = Budget {
        spent: 0,
        limit: efforts.part,
    };
    let closed = close(
        task,
        &parts,
        &base,
        &mut lines,
        &layouts,
        &mut whole,
        &mut report,
        &mut budget,
        work,
    )?;
    if closed.is_some() {
        spent += budget.spent;
        limit += budget.limit;
    }
    if parts.any() {
        // each pile costs at least as much as the cheapest
        let cheapest = lines.iter().flat_map(|l| l.classes.iter().map(|c| c.cost));
        let cheapest = cheapest.fold(f64::INFINITY, f64::min);
        least_cost = task
            .costed()
            .then(|| f64::from(report.lower_bound_count) * cheapest);
    }
    Ok(Core {
        impossible: closed.unwrap_or(false),
        lines,
        whole,
        report,
        least_cost,
        spent,
        limit,
    })
}

/// Finds the fewest piles.
pub(super) fn fewest(task: &Task<'_>, work: &mut Work) -> Result<Found, Refusal> {
    let Core {
        lines,
        mut whole,
        mut report,
        impossible,
        least_cost,
        mut spent,
        mut limit,
    } = core(task, &EFFORTS, work)?;
    if let Some(wish) = &task.limits.symmetry {
        let mut budget = Budget {
            spent: 0,
            limit: SYMMETRY_WORK,
        };
        let told = symmetric(task, wish, &lines, &mut whole, &mut budget, work)?;
        report.utilisation_searched_exhaustively &= told.reason != SymmetryReason::Preferred;
        report.symmetry = Some(told);
        spent += budget.spent;
        limit += budget.limit;
    }
    let unmet = if report.feasible {
        None
    } else {
        let (unmet, steps) = relax(task, impossible, work)?;
        spent += steps;
        limit += RELAX_WORK;
        Some(unmet)
    };
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
    report.without_pile = without_pile(task, &lines);
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
        unmet,
    })
}
