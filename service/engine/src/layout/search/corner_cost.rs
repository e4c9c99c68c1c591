//! Cost of piles that runs share: what a cheaper plan would have to spare them, which
//! either cannot be done, and then the bound rises, or shows a cheaper plan.

use super::Task;
use super::bounds::Bounds;
use super::claim::{Least, price};
use super::enumerate::{Aim, Budget, End, Target, Wanted, cheaper, enumerate};
use super::line::RunLayout;
use super::stack::{Line, Stack};
use super::whole::{Whole, classes, places, rate};
use crate::contract::{Refusal, Work};
use crate::layout::types::Demand;

/// Rounds of looking for a cheaper plan.
const ROUNDS: usize = 8;
/// Runs that may meet at a shared pile for this to be worth its work.
const RUNS_MAX: usize = 6;
/// Share of the work that one run may take.
const PART: u64 = 4;

/// Cost of a plan with what its shared piles carry.
struct Priced {
    sum: f64,
    /// At each meeting: cost of its pile, and the combination and direction that use it most.
    shared: Vec<Option<(f64, usize, bool)>>,
}

/// Makes a plan cheaper where that is found, and returns what no plan costs less than.
pub(super) fn tighten(
    task: &Task<'_>,
    lines: &[Line],
    layouts: &[RunLayout],
    whole: &mut Whole,
    budget: &mut Budget,
    work: &Work,
) -> Result<f64, Refusal> {
    let mut least = Least::of(task, lines, layouts);
    if !whole.keeps() {
        return Ok(least.sum());
    }
    for _ in 0..ROUNDS {
        let Some(priced) = priced(task, lines, whole) else {
            break;
        };
        let mut better = false;
        for m in 0..priced.shared.len() {
            let Some((cost, combination, tension)) = priced.shared[m] else {
                continue;
            };
            let gap = priced.sum - least.sum();
            if !cheaper(least.sum(), priced.sum) {
                return Ok(priced.sum);
            }
            if !cheaper(least.shared[m], cost) || !budget.left() {
                continue;
            }
            let looked = Spare {
                meeting: m,
                combination,
                tension,
                gap,
            };
            match looked.least(task, lines, &least, budget, work)? {
                Found::Bound(p) => least.shared[m] = least.shared[m].max(p),
                Found::Layouts(options) => {
                    better = adopt(task, lines, whole, options, priced.sum, budget, work)?;
                }
                Found::Unknown => {}
            }
            if better {
                break;
            }
        }
        if !better {
            break;
        }
    }
    let sum = priced(task, lines, whole).map_or(f64::INFINITY, |p| p.sum);
    Ok(least.sum().min(sum))
}

/// A pile that runs share, in the combination that uses it most; a cheaper plan has runs
/// that cost less than their bound and the gap.
struct Spare {
    meeting: usize,
    combination: usize,
    tension: bool,
    gap: f64,
}

/// What was found of it.
enum Found {
    /// In every cheaper plan the pile costs at least this.
    Bound(f64),
    /// Layouts of the runs that bring it least.
    Layouts(Vec<(usize, Vec<usize>)>),
    /// The work limit came first.
    Unknown,
}

impl Spare {
    fn least(
        &self,
        task: &Task<'_>,
        lines: &[Line],
        least: &Least,
        budget: &mut Budget,
        work: &Work,
    ) -> Result<Found, Refusal> {
        let on = &task.frame.plan.meetings[self.meeting].on;
        if on.len() > RUNS_MAX {
            return Ok(Found::Unknown);
        }
        let mut sum = 0.0;
        let mut options = Vec::new();
        let mut ground = None;
        for (run, _) in on {
            let line = &lines[*run];
            let mut meets = line.places.meeting.iter();
            let Some(place) = meets.position(|m| *m == Some(self.meeting)) else {
                return Ok(Found::Unknown);
            };
            ground = Some((line, place));
            let below = least.own[*run] + self.gap;
            match self.share(line, place, below, budget, work)? {
                Share::Least(chosen, value) => {
                    sum += value;
                    options.push((*run, chosen));
                }
                Share::None => return Ok(Found::Bound(f64::INFINITY)),
                Share::Unknown => return Ok(Found::Unknown),
            }
        }
        let Some((line, place)) = ground else {
            return Ok(Found::Unknown);
        };
        let mut demand = Demand::default();
        if self.tension {
            demand.tension = sum.max(0.0);
        } else {
            demand.compression = sum.max(0.0);
        }
        let price = price(line, place, demand);
        Ok(if cheaper(least.shared[self.meeting], price) {
            Found::Bound(price)
        } else {
            Found::Layouts(options)
        })
    }

    /// Least that a run brings, over all numbers of piles that cost less than `below`.
    fn share(
        &self,
        line: &Line,
        place: usize,
        below: f64,
        budget: &mut Budget,
        work: &Work,
    ) -> Result<Share, Refusal> {
        let bounds = Bounds::of(line);
        let (fewest, most) = line.places.range();
        let target = Target {
            place,
            combination: self.combination,
            tension: self.tension,
        };
        let mut own = Budget {
            spent: 0,
            limit: budget.limit.saturating_sub(budget.spent) / PART,
        };
        let mut best: Option<(Vec<usize>, f64)> = None;
        for count in fewest..=most {
            work.go_on()?;
            let floor = bounds.least_cost(line, 0, count, |c| line.loads.total[c]);
            if !cheaper(floor, below) {
                continue;
            }
            let wanted = Wanted {
                line,
                bounds: &bounds,
                count,
                aim: Aim::Share(target),
                below,
            };
            let End::All(found) = enumerate(wanted, None, &mut own, work)? else {
                budget.take(own.spent);
                return Ok(Share::Unknown);
            };
            if let Some(found) = found {
                let value = brought(line, &found.chosen, target);
                if best.as_ref().is_none_or(|b| value < b.1) {
                    best = Some((found.chosen, value));
                }
            }
        }
        budget.take(own.spent);
        Ok(best.map_or(Share::None, |(chosen, value)| Share::Least(chosen, value)))
    }
}

enum Share {
    Least(Vec<usize>, f64),
    /// No layout costs so little.
    None,
    Unknown,
}

fn brought(line: &Line, chosen: &[usize], target: Target) -> f64 {
    let mut stack = Stack::new(chosen.len(), line.loads.count);
    for place in chosen {
        stack.push(line, *place);
    }
    let r = stack.reaction_at(line, target.place, target.combination);
    if target.tension { -r } else { r }
}

/// Cost of a plan; none where it cannot be analysed.
fn priced(task: &Task<'_>, lines: &[Line], whole: &Whole) -> Option<Priced> {
    let places = places(task.frame, lines, &whole.chosen);
    let classes = classes(task.frame, lines, &whole.chosen);
    let models = task.typed(&places, &classes).ok()?;
    let types = &task.terrain.offers.as_ref()?.types;
    let mut out = Priced {
        sum: 0.0,
        shared: vec![None; task.barred.len()],
    };
    for (p, place) in places.iter().enumerate() {
        let cost = types[models.ranks[p]].cost?;
        out.sum += cost;
        if let Some(m) = place.meeting {
            let class = classes[p];
            let mut most = (f64::NEG_INFINITY, 0, false);
            for (c, combination) in task.combinations.iter().enumerate() {
                let r = models.solved[0].reaction(p, &combination.factors);
                for (used, tension) in [(r / class.compression, false), (-r / class.tension, true)]
                {
                    if used > most.0 {
                        most = (used, c, tension);
                    }
                }
            }
            out.shared[m] = Some((cost, most.1, most.2));
        }
    }
    Some(out)
}

/// Takes other layouts of some runs where the plan then keeps its limits and costs less.
fn adopt(
    task: &Task<'_>,
    lines: &[Line],
    whole: &mut Whole,
    options: Vec<(usize, Vec<usize>)>,
    sum: f64,
    budget: &mut Budget,
    work: &Work,
) -> Result<bool, Refusal> {
    let mut next = whole.clone();
    for (run, chosen) in options {
        next.chosen[run] = chosen;
    }
    rate(task, lines, &mut next, budget, work)?;
    let better = next.keeps() && priced(task, lines, &next).is_some_and(|p| cheaper(p.sum, sum));
    if better {
        *whole = next;
    }
    Ok(better)
}
