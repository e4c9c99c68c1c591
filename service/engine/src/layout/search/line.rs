//! The fewest piles on one run: from the lower bounds upwards, each number either shown to
//! be too few or met by a layout, which is then made as good as the work limit allows.

use super::bounds::Bounds;
use super::cost::cheapest;
use super::enumerate::{Aim, Best, Budget, End, run};
use super::stack::{Line, Rating, Stack};
use super::start::{descend, equal, rated};
use crate::contract::{Refusal, Work};
use crate::layout::outcome::ProofKind;
use crate::quantity::round9;

/// Numbers of piles without any gain after which a run counts as hopeless.
const PATIENCE: usize = 3;

/// What was found on one run.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct RunLayout {
    pub best: Best,
    /// No layout of the run has fewer piles.
    pub lower: usize,
    pub by: ProofKind,
    /// Every layout with that many piles was compared.
    pub exhaustive: bool,
    /// Fewest piles by spacing and by load.
    pub bounds: (usize, usize),
    /// Most piles that were tried.
    pub tried: usize,
    /// No layout of the run costs less than this for its own piles, and whether the one
    /// found costs just that; only where costs count.
    pub cost: Option<(f64, bool)>,
}

impl RunLayout {
    /// Whether the run itself keeps all limits.
    pub fn keeps(&self) -> bool {
        round9(self.best.rating.own) <= 1.0
    }
}

/// Solves one run.
pub(super) fn solve(line: &Line, budget: &mut Budget, work: &Work) -> Result<RunLayout, Refusal> {
    let bounds = Bounds::of(line);
    let (fewest, most) = line.places.range();
    let by_load = bounds.by_load(line, 1, most + 1).min(most);
    let mut state = State {
        line,
        bounds: &bounds,
        lower: fewest.max(by_load),
        by: if by_load > fewest {
            ProofKind::LoadBound
        } else {
            ProofKind::SpacingBound
        },
        proving: true,
        best: None,
    };
    let mut count = state.lower;
    let mut idle = 0;
    let mut found = false;
    let mut tried = count;
    while count <= most {
        work.go_on()?;
        tried = count;
        let before = state.utilisation();
        found = state.attempt(count, budget, work)?;
        if found {
            break;
        }
        let gained = state.best.is_none() || state.utilisation() < 0.999 * before;
        idle = if gained { 0 } else { idle + 1 };
        if idle > PATIENCE {
            break;
        }
        // past the work limit only good guesses are left, so the steps grow
        count += if budget.left() { 1 } else { 1 + count / 64 };
    }
    let mut exhaustive = false;
    let mut cost = None;
    if line.costed {
        let at_hand = state.best.clone();
        let found = cheapest(line, &bounds, state.lower, at_hand, budget, work)?;
        cost = Some((found.lower, found.proven));
        state.best = found.best.or(state.best);
    } else if found {
        exhaustive = state.improve(budget, work)?;
    }
    let best = match state.best {
        Some(best) => best,
        None => any(line, fewest, budget),
    };
    Ok(RunLayout {
        lower: state.lower,
        by: state.by,
        best,
        exhaustive,
        bounds: (fewest, by_load),
        tried,
        cost,
    })
}

/// A run that hangs between others, where no pile of its own can stand.
pub(super) fn without_piles(line: &Line) -> RunLayout {
    let nothing = Rating {
        all: 0.0,
        own: 0.0,
        cost: 0.0,
    };
    RunLayout {
        best: Best::of(line, Vec::new(), nothing),
        lower: 0,
        cost: line.costed.then_some((0.0, false)),
        by: ProofKind::SpacingBound,
        exhaustive: false,
        bounds: (0, 0),
        tried: 0,
    }
}

struct State<'a> {
    line: &'a Line,
    bounds: &'a Bounds,
    lower: usize,
    by: ProofKind,
    /// Every number so far was shown to be too few.
    proving: bool,
    best: Option<Best>,
}

impl State<'_> {
    fn utilisation(&self) -> f64 {
        self.best.as_ref().map_or(f64::INFINITY, |b| b.rating.all)
    }

    /// Tries a number of piles; true where a layout keeps the run's own limits.
    fn attempt(&mut self, count: usize, budget: &mut Budget, work: &Work) -> Result<bool, Refusal> {
        let guess = guess(self.line, count, budget);
        if let Some(guess) = guess {
            if round9(guess.rating.all) <= 1.0 {
                self.best = Some(guess);
                return Ok(true);
            }
            self.keep(guess);
        }
        if !self.proving {
            return Ok(false);
        }
        match run(self.line, self.bounds, count, Aim::Any, None, budget, work)? {
            End::All(_) => {
                self.lower = count + 1;
                self.by = ProofKind::Enumeration;
                Ok(false)
            }
            End::Found(layout) => {
                self.best = Some(descend(self.line, layout, budget));
                Ok(true)
            }
            End::Spent(_) => {
                self.proving = false;
                self.by = ProofKind::WorkLimit;
                Ok(false)
            }
        }
    }

    /// Keeps the lowest utilisation so far; more piles must gain something.
    fn keep(&mut self, guess: Best) {
        let better = self
            .best
            .as_ref()
            .is_none_or(|b| guess.rating.all < 0.999 * b.rating.all);
        if better {
            self.best = Some(guess);
        }
    }

    /// Makes the layout as good as the work limit allows; true where nothing better is
    /// left.
    fn improve(&mut self, budget: &mut Budget, work: &Work) -> Result<bool, Refusal> {
        let Some(best) = self.best.take() else {
            return Ok(false);
        };
        let count = best.chosen.len();
        let end = run(
            self.line,
            self.bounds,
            count,
            Aim::Best,
            Some(best.clone()),
            budget,
            work,
        )?;
        let (found, all) = match end {
            End::All(found) => (found, true),
            End::Found(found) => (Some(found), false),
            End::Spent(found) => (found, false),
        };
        self.best = Some(found.unwrap_or(best));
        Ok(all)
    }
}

/// A good layout with so many piles.
pub(super) fn guess(line: &Line, count: usize, budget: &mut Budget) -> Option<Best> {
    let chosen = equal(line, count)?;
    let mut stack = Stack::new(count, line.loads.count);
    let start = rated(line, chosen, &mut stack, budget);
    Some(descend(line, start, budget))
}

/// Any layout at all: from the first place on always the farthest next one.
fn any(line: &Line, count: usize, budget: &mut Budget) -> Best {
    let p = &line.places;
    let mut chosen = Vec::with_capacity(count);
    let mut here = (0..p.first)
        .find(|i| p.fewest[*i] as usize == count)
        .unwrap_or(0);
    chosen.push(here);
    while p.fewest[here] > 1 {
        let (from, to) = p.next[here];
        let next = (from..to).find(|j| p.reaches(*j) && p.fewest[*j] + 1 == p.fewest[here]);
        match next {
            Some(j) => here = j,
            None => break,
        }
        chosen.push(here);
    }
    let mut stack = Stack::new(chosen.len(), line.loads.count);
    rated(line, chosen, &mut stack, budget)
}
