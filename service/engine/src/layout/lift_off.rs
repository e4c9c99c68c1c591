//! Piles that push and do not pull: each combination solved for itself, until no pile pulls
//! and no beam lies below the head of a pile that was let go. Judges nothing.

use super::analysis::Solved;
use super::codes::refusals;
use super::combine::{Combination, Loading};
use super::frame::Frame;
use super::outcome::{LiftedPile, SupportModel};
use super::site::Pile;
use crate::beam::{Fault, Load, Network, Shape, Solution, Support, solve};
use crate::contract::{Issue, Refusal, Work, none_of};

/// Forces below this share of the load, and movements below this share of the greatest,
/// are nil.
const NIL: f64 = 1e-10;

/// Rounds after which a combination is given up.
const ROUNDS_MAX: usize = 400;

/// Stiffness of a pile that is let go, by that of the stiffest part of the plan, where the
/// rest alone would be a mechanism: it shows which of these piles the beams come down on.
const SOFT: f64 = 1e-7;

/// The same plan with every combination as a load case of its own.
pub(super) fn expanded(frame: &Frame, loading: &Loading) -> (Frame, Loading) {
    let count = loading.combinations.len();
    let mut own = frame.clone();
    own.cases = count;
    for (to, from) in own.loads.iter_mut().zip(&frame.loads) {
        to.clear();
        for (c, combination) in loading.combinations.iter().enumerate() {
            for load in from {
                let f = combination.factors[load.case];
                if f != 0.0 {
                    let shape = times(&load.shape, f);
                    to.push(Load { case: c, shape });
                }
            }
        }
        // stations without a load are kept, whatever their case
        let mark = |l: &&Load| matches!(l.shape, Shape::Point { force, .. } if force == 0.0);
        to.extend(from.iter().filter(mark).map(|l| Load { case: 0, ..*l }));
    }
    let combinations = loading.combinations.iter().enumerate();
    let unit = |c: usize| (0..count).map(|k| if k == c { 1.0 } else { 0.0 }).collect();
    let acting = Loading {
        cases: loading.cases.clone(),
        combinations: combinations
            .map(|(c, combination)| Combination {
                name: combination.name.clone(),
                factors: unit(c),
            })
            .collect(),
        service: None,
    };
    (own, acting)
}

fn times(shape: &Shape, f: f64) -> Shape {
    match *shape {
        Shape::Spread {
            from,
            to,
            start,
            end,
        } => Shape::Spread {
            from,
            to,
            start: start * f,
            end: end * f,
        },
        Shape::Point { at, force } => Shape::Point {
            at,
            force: force * f,
        },
        Shape::Couple { at, moment } => Shape::Couple {
            at,
            moment: moment * f,
        },
    }
}

/// Lets go what would pull, in every combination and support model; `frame` is an
/// [`expanded`] one. The piles that lift off.
pub(super) fn release(
    frame: &Frame,
    loading: &Loading,
    piles: &[Pile],
    solved: &mut [Solved],
    work: &Work,
) -> Result<Vec<LiftedPile>, Refusal> {
    let mut out = Vec::new();
    let mut issues = Vec::new();
    for model in solved {
        let mut lifted: Vec<Vec<String>> = vec![Vec::new(); piles.len()];
        for (c, combination) in loading.combinations.iter().enumerate() {
            work.go_on()?;
            let (_, size) = frame.total_load(&combination.factors);
            let mut state = Held::new(model, c, piles.len(), NIL * size);
            match state.settle(work)? {
                Ok(None) => {}
                Ok(Some(column)) => {
                    model.solution.put(c, &column);
                    for (pile, _) in state.held.iter().enumerate().filter(|h| !h.1) {
                        lifted[pile].push(combination.name.to_string());
                    }
                }
                Err(why) => issues.push(Issue::new(
                    "/tension_connection",
                    &refusals::LIFT_OFF_NO_EQUILIBRIUM,
                    format!(
                        "combination `{}` on {} supports: {why}",
                        combination.name,
                        name(model.supports)
                    ),
                )),
            }
        }
        let rows = lifted.into_iter().zip(piles).filter(|l| !l.0.is_empty());
        out.extend(rows.map(|(combinations, pile)| LiftedPile {
            pile: pile.label.clone(),
            supports: model.supports,
            combinations,
        }));
    }
    none_of(issues)?;
    Ok(out)
}

fn name(model: SupportModel) -> &'static str {
    match model {
        SupportModel::Rigid => "rigid",
        SupportModel::Spring => "spring",
    }
}

/// One combination on the piles that are held at the moment.
struct Held {
    network: Network,
    /// Supports with every pile held.
    full: Vec<Support>,
    held: Vec<bool>,
    /// Reactions with every pile held.
    reaction: Vec<f64>,
    /// Tension below this is none.
    nil: f64,
    /// What was held in earlier rounds.
    seen: Vec<Vec<bool>>,
    /// Once a set came back, one pile changes at a time, the first of the list.
    singly: bool,
}

/// No set of piles does.
type Why = &'static str;

impl Held {
    fn new(model: &Solved, case: usize, piles: usize, nil: f64) -> Self {
        let mut network = model.network.clone();
        network.cases = 1;
        for line in &mut network.lines {
            line.loads.retain(|l| l.case == case || is_mark(l));
            line.loads.iter_mut().for_each(|l| l.case = 0);
        }
        let m = model.solution.cases;
        Self {
            full: network.supports.clone(),
            network,
            held: vec![true; piles],
            reaction: (0..piles)
                .map(|p| model.solution.reaction[p * m + case])
                .collect(),
            nil,
            seen: Vec::new(),
            singly: false,
        }
    }

    /// Changes what is held until nothing pulls; none where nothing had to change.
    fn settle(&mut self, work: &Work) -> Result<Result<Option<Solution>, Why>, Refusal> {
        let mut wrong: Vec<usize> = (0..self.held.len())
            .filter(|p| self.reaction[*p] < -self.nil)
            .collect();
        let mut last = None;
        for _ in 0..ROUNDS_MAX {
            if wrong.is_empty() {
                return Ok(Ok(last));
            }
            self.change(&wrong);
            work.go_on()?;
            match self.solve(None) {
                Ok(solution) => {
                    wrong = self.wrong(&solution, false);
                    last = Some(self.cleaned(solution));
                }
                Err(Fault::Mechanism { .. }) => {
                    let soft = self.soft();
                    let Ok(solution) = self.solve(Some(soft)) else {
                        return Ok(Err("what is held is a mechanism"));
                    };
                    wrong = self.wrong(&solution, true);
                    if !wrong.iter().any(|p| !self.held[*p]) {
                        return Ok(Err(
                            "a part of the plan lifts off all its piles or tips over",
                        ));
                    }
                }
                Err(Fault::TooLarge) => return Ok(Err("the plan is too interlinked")),
            }
        }
        Ok(Err("no set of piles was found that pushes only"))
    }

    fn change(&mut self, wrong: &[usize]) {
        let mut next = self.held.clone();
        let count = if self.singly { 1 } else { wrong.len() };
        for p in &wrong[..count] {
            next[*p] = !next[*p];
        }
        if self.seen.contains(&next) && !self.singly {
            self.singly = true;
            self.seen.clear();
            return self.change(wrong);
        }
        self.seen.push(next.clone());
        self.held = next;
    }

    fn solve(&mut self, soft: Option<f64>) -> Result<Solution, Fault> {
        for (p, held) in self.held.iter().enumerate() {
            self.network.supports[p] = match (held, soft) {
                (true, _) => self.full[p],
                (false, Some(k)) => Support::Spring(k),
                (false, None) => Support::Free,
            };
        }
        solve(&self.network)
    }

    /// Piles that are held and pull, or let go and under a beam that comes down on them.
    fn wrong(&self, solution: &Solution, soft: bool) -> Vec<usize> {
        let all = solution.deflection.iter();
        let most = all.map(|w| w.abs()).fold(0.0, f64::max);
        let is_wrong = |p: &usize| match (self.held[*p], soft) {
            (true, _) => solution.reaction[*p] < -self.nil,
            (false, true) => solution.reaction[*p] > self.nil,
            (false, false) => solution.deflection[*p] > NIL * most,
        };
        (0..self.held.len()).filter(is_wrong).collect()
    }

    /// Without the rounding that is left where a pile was let go.
    fn cleaned(&self, mut solution: Solution) -> Solution {
        for (p, _) in self.held.iter().enumerate().filter(|h| !h.1) {
            solution.reaction[p] = 0.0;
        }
        solution
    }

    /// A stiffness that hardly holds, for the whole plan.
    fn soft(&self) -> f64 {
        let mut most = 0.0f64;
        for line in &self.network.lines {
            for (pair, rigidity) in line.nodes.windows(2).zip(&line.rigidity) {
                let l = pair[1].at - pair[0].at;
                most = most.max(12.0 * rigidity / (l * l * l));
            }
        }
        SOFT * most
    }
}

fn is_mark(load: &Load) -> bool {
    matches!(load.shape, Shape::Point { force, .. } if force == 0.0)
}
