//! Single limits that make an impossible plan possible when they give way, by as little as
//! searching again under them shows. Tries limits and judges nothing.

use super::enumerate::Budget;
use super::whole::Needs;
use super::{Core, Efforts, Task, core};
use crate::contract::{Check, CheckStatus, Refusal, Work};
use crate::layout::frame::Frame;
use crate::layout::outcome::{Infeasible, Relaxation, RelaxedLimit};
use crate::layout::request::{PilePlacement, PileSearch, Request};
use crate::layout::types::Terrain;
use crate::quantity::{Force, Length, Shown};

/// Counted steps for all trials; part of the method's version.
pub(super) const RELAX_WORK: u64 = 1_000_000;
/// What one trial may take.
const TRIAL: Efforts = Efforts {
    run: 100_000,
    run_each: 500,
    whole: 5_000,
    part: 40_000,
};
/// Trials for one limit.
const TRIALS_MAX: usize = 16;
/// Share by which a trial goes below what did.
const BELOW: f64 = 1e-6;
/// Greatest capacity that may be sent, N.
const FORCE_MAX: f64 = 1e7;
/// Greatest factor on the strength of beams that is tried.
const FACTOR_MAX: f64 = 1e4;
/// Greatest distance that may be sent, m.
const FAR: f64 = 100.0;
/// Least spacing that may be sent, m.
const NEAR: f64 = 0.05;

/// What would have to give.
#[derive(Debug, Clone, PartialEq, Default)]
pub(in crate::layout) struct Unmet {
    pub proven: bool,
    pub relaxations: Vec<Relaxation>,
    pub not_alone: Vec<RelaxedLimit>,
}

/// What is told of a plan that keeps no limits: the check that fails most, and what would
/// have to give.
pub(in crate::layout) fn infeasible(unmet: Unmet, checks: &[Check]) -> Infeasible {
    let failed = checks.iter().filter(|c| c.status == CheckStatus::Fail);
    let size = |c: &Check| c.utilisation_ratio.unwrap_or(f64::INFINITY);
    let worst = failed.fold(None, |worst: Option<&Check>, c| match worst {
        Some(w) if size(w) >= size(c) => Some(w),
        _ => Some(c),
    });
    Infeasible {
        proven: unmet.proven,
        check: worst.map_or_else(String::new, |c| c.id.to_string()),
        subject: worst.and_then(|c| c.subject.clone()),
        combination: worst.and_then(|c| c.combination.clone()),
        demand: worst.and_then(|c| c.demand.clone()),
        capacity: worst.and_then(|c| c.capacity.clone()),
        utilisation_ratio: worst.and_then(|c| c.utilisation_ratio),
        relaxations: unmet.relaxations,
        not_alone: unmet.not_alone,
    }
}

/// The ground with another capacity of its piles.
fn terrain(task: &Task<'_>, limit: RelaxedLimit, value: f64) -> Terrain {
    let mut out = task.terrain.clone();
    for offer in out.offers.iter_mut().flat_map(|o| &mut o.types) {
        match limit {
            RelaxedLimit::PileCompression => offer.capacity.compression = value,
            RelaxedLimit::PileTension => offer.capacity.tension = value,
            _ => {}
        }
    }
    out
}

/// The plan with stronger beams.
fn strengthened(task: &Task<'_>, limit: RelaxedLimit, value: f64) -> Frame {
    let mut out = task.frame.clone();
    if limit == RelaxedLimit::BeamStrength {
        for beam in &mut out.strength {
            if let Some(m) = &mut beam.moment {
                m.sagging = m.sagging * value;
                m.hogging = m.hogging * value;
            }
            beam.shear = beam.shear.map(|v| v * value);
        }
    }
    out
}

/// A plan under another limit.
struct Trial {
    count: usize,
    needs: Needs,
}

/// How trials go.
struct Trials<'a, 'w> {
    task: &'a Task<'a>,
    /// No layout keeps the limits as sent, and that is proven.
    impossible: bool,
    budget: Budget,
    work: &'w mut Work,
}

/// Tries every limit alone; the counted steps with it.
pub(super) fn relax(
    task: &Task<'_>,
    impossible: bool,
    work: &mut Work,
) -> Result<(Unmet, u64), Refusal> {
    let mut trials = Trials {
        task,
        impossible,
        budget: Budget {
            spent: 0,
            limit: RELAX_WORK,
        },
        work,
    };
    let mut out = Unmet {
        proven: impossible,
        ..Unmet::default()
    };
    for limit in [
        RelaxedLimit::BeamStrength,
        RelaxedLimit::PileCompression,
        RelaxedLimit::PileTension,
        RelaxedLimit::MaxSpacing,
        RelaxedLimit::MinSpacing,
        RelaxedLimit::MaxOverhang,
    ] {
        if trials.applies(limit) {
            match trials.give(limit)? {
                Some(found) => out.relaxations.push(found),
                None => out.not_alone.push(limit),
            }
        }
    }
    Ok((out, trials.budget.spent))
}

impl Trials<'_, '_> {
    fn applies(&self, limit: RelaxedLimit) -> bool {
        let request = self.task.request;
        let plain = request.pile_capacity.is_some() && request.soil_zones.is_none();
        match limit {
            RelaxedLimit::BeamStrength => {
                let all = self.task.frame.strength.iter();
                let mut limits = all.flat_map(|s| s.limits());
                limits.any(f64::is_finite)
            }
            RelaxedLimit::PileCompression | RelaxedLimit::PileTension => plain,
            RelaxedLimit::MinSpacing => self
                .task
                .limits
                .min_spacing
                .is_some_and(|m| m.si() == self.task.min_spacing && m.si() > NEAR),
            RelaxedLimit::MaxSpacing | RelaxedLimit::MaxOverhang => true,
        }
    }

    /// The least give of a limit that makes the plan possible.
    fn give(&mut self, limit: RelaxedLimit) -> Result<Option<Relaxation>, Refusal> {
        match limit {
            RelaxedLimit::BeamStrength
            | RelaxedLimit::PileCompression
            | RelaxedLimit::PileTension => self.capacity(limit),
            _ => self.distance(limit),
        }
    }

    /// From the greatest value down: each layout shows what it needs, and the next trial
    /// goes just below that.
    fn capacity(&mut self, limit: RelaxedLimit) -> Result<Option<Relaxation>, Refusal> {
        let from = self.sent(limit);
        let most = match limit {
            RelaxedLimit::BeamStrength => FACTOR_MAX,
            _ => FORCE_MAX,
        };
        let need = |t: &Trial| match limit {
            RelaxedLimit::BeamStrength => t.needs.strength,
            RelaxedLimit::PileCompression => t.needs.compression,
            _ => t.needs.tension,
        };
        let Ok(first) = self.at(limit, most)? else {
            return Ok(None);
        };
        let mut best = (most, first);
        let mut exact = false;
        for _ in 0..TRIALS_MAX {
            // what a layout needs is a value that it keeps
            let needed = need(&best.1).max(from);
            if needed < best.0 {
                match self.at(limit, needed)? {
                    Ok(t) => best = (needed, t),
                    Err(_) => break,
                }
            }
            let below = best.0 * (1.0 - BELOW);
            if below <= from {
                exact = self.impossible;
                break;
            }
            match self.at(limit, below)? {
                Ok(t) => best = (below, t),
                Err(proven) => {
                    exact = proven;
                    break;
                }
            }
            if !self.budget.left() {
                break;
            }
        }
        Ok(Some(self.told(limit, from, best.0, best.1.count, exact)))
    }

    /// By halves over whole staking increments: what is possible stays so as a distance
    /// gives way.
    fn distance(&mut self, limit: RelaxedLimit) -> Result<Option<Relaxation>, Refusal> {
        let from = self.sent(limit);
        let snap = self.task.limits.snap.si();
        let longest = self.task.frame.plan.runs.iter().map(|r| r.length);
        let end = longest.fold(0.0, f64::max).min(FAR);
        let (sign, reach) = match limit {
            RelaxedLimit::MinSpacing => (-1.0, from - NEAR),
            _ => (1.0, end - from),
        };
        let most = (reach / snap + 1e-9).floor();
        if most < 1.0 {
            return Ok(None);
        }
        let value = |k: f64| from + sign * k * snap;
        let Ok(trial) = self.at(limit, value(most))? else {
            return Ok(None);
        };
        let (mut no, mut yes) = (0.0, (most, trial));
        let mut proven = self.impossible;
        while yes.0 - no > 1.5 && self.budget.left() {
            let middle = (0.5 * (no + yes.0)).floor();
            match self.at(limit, value(middle))? {
                Ok(t) => yes = (middle, t),
                Err(p) => (no, proven) = (middle, p),
            }
        }
        let exact = proven && yes.0 - no < 1.5;
        Ok(Some(self.told(
            limit,
            from,
            value(yes.0),
            yes.1.count,
            exact,
        )))
    }

    /// Searches with a limit at a value; where nothing is found, whether nothing can be.
    fn at(&mut self, limit: RelaxedLimit, value: f64) -> Result<Result<Trial, bool>, Refusal> {
        self.work.go_on()?;
        if !self.budget.left() {
            return Ok(Err(false));
        }
        let request = changed(self.task.request, limit, value);
        let PilePlacement::Search(search) = &request.piles else {
            return Ok(Err(false));
        };
        let found = self.search(&request, search, limit, value);
        match found {
            Ok(found) => {
                self.budget.take(found.spent);
                Ok(if found.report.feasible {
                    Ok(Trial {
                        count: found.report.pile_count,
                        needs: found.needs,
                    })
                } else {
                    Err(found.impossible)
                })
            }
            Err(refusal) if refusal.interrupted => Err(refusal),
            Err(_) => Ok(Err(false)),
        }
    }

    fn search(
        &mut self,
        request: &Request,
        search: &PileSearch,
        limit: RelaxedLimit,
        value: f64,
    ) -> Result<Found, Refusal> {
        let terrain = terrain(self.task, limit, value);
        let frame = strengthened(self.task, limit, value);
        let task = Task {
            request,
            limits: search,
            terrain: &terrain,
            min_spacing: match limit {
                RelaxedLimit::MinSpacing => value,
                _ => self.task.min_spacing,
            },
            absent: self.task.absent.clone(),
            frame: &frame,
            ..*self.task
        };
        let mut beside = self.work.beside();
        let Core {
            lines,
            whole,
            report,
            impossible,
            spent,
            ..
        } = core(&task, &TRIAL, &mut beside)?;
        let mut needs = if report.feasible {
            super::whole::needs(&task, &lines, &whole)
        } else {
            Needs::default()
        };
        if limit == RelaxedLimit::BeamStrength {
            needs.strength *= value;
        }
        Ok(Found {
            report: Short {
                feasible: report.feasible,
                pile_count: super::whole::places(task.frame, &lines, &whole.chosen).len(),
            },
            needs,
            impossible,
            spent,
        })
    }

    fn sent(&self, limit: RelaxedLimit) -> f64 {
        let (request, limits) = (self.task.request, self.task.limits);
        match limit {
            RelaxedLimit::BeamStrength => 1.0,
            RelaxedLimit::PileCompression => {
                request.pile_capacity.map_or(0.0, |c| c.compression.si())
            }
            RelaxedLimit::PileTension => request.pile_capacity.map_or(0.0, |c| c.tension.si()),
            RelaxedLimit::MaxSpacing => limits.max_spacing.si(),
            RelaxedLimit::MinSpacing => self.task.min_spacing,
            RelaxedLimit::MaxOverhang => limits.max_overhang.map_or(0.0, |o| o.si()),
        }
    }

    fn told(
        &self,
        limit: RelaxedLimit,
        from: f64,
        to: f64,
        count: usize,
        exact: bool,
    ) -> Relaxation {
        let shown = |v: f64| -> Shown {
            match limit {
                RelaxedLimit::BeamStrength => v.into(),
                RelaxedLimit::PileCompression | RelaxedLimit::PileTension => {
                    Force::from_si(v).into()
                }
                _ => Length::from_si(v).into(),
            }
        };
        let pointer = match limit {
            RelaxedLimit::BeamStrength => "/beams",
            RelaxedLimit::PileCompression => "/pile_capacity/compression",
            RelaxedLimit::PileTension => "/pile_capacity/tension",
            RelaxedLimit::MaxSpacing => "/piles/search/max_spacing",
            RelaxedLimit::MinSpacing => "/piles/search/min_spacing",
            RelaxedLimit::MaxOverhang => "/piles/search/max_overhang",
        };
        Relaxation {
            limit,
            pointer: pointer.to_owned(),
            from: shown(from),
            to: shown(to),
            pile_count: count as u32,
            exact,
        }
    }
}

/// What a trial found.
struct Found {
    report: Short,
    needs: Needs,
    impossible: bool,
    spent: u64,
}

/// The count and whether it keeps the limits.
struct Short {
    feasible: bool,
    pile_count: usize,
}

/// The request with one limit at another value.
fn changed(request: &Request, limit: RelaxedLimit, value: f64) -> Request {
    let mut out = request.clone();
    match limit {
        RelaxedLimit::BeamStrength => {}
        RelaxedLimit::PileCompression => {
            if let Some(c) = &mut out.pile_capacity {
                c.compression = Force::from_si(value);
            }
        }
        RelaxedLimit::PileTension => {
            if let Some(c) = &mut out.pile_capacity {
                c.tension = Force::from_si(value);
            }
        }
        RelaxedLimit::MaxSpacing | RelaxedLimit::MinSpacing | RelaxedLimit::MaxOverhang => {
            if let PilePlacement::Search(s) = &mut out.piles {
                let value = Length::from_si(value);
                match limit {
                    RelaxedLimit::MaxSpacing => s.max_spacing = value,
                    RelaxedLimit::MinSpacing => s.min_spacing = Some(value),
                    _ => s.max_overhang = Some(value),
                }
            }
        }
    }
    out
}
