//! A layout of one run as it grows from left to right: the three-moment equations are
//! eliminated pile by pile, so that a further pile costs one step, and a whole layout is
//! rated by going back once.

use std::cell::RefCell;
use std::rc::Rc;

use super::loads::{RunLoads, SpanTerms};
use super::places::Places;
use crate::beam::{Extremes, Piece};
use crate::layout::types::{Class, Demand};

/// Strength of the beam along a part of the run; infinite where it is not judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Strength {
    pub to: f64,
    pub sagging: f64,
    pub hogging: f64,
    pub shear: f64,
}

/// One run with its places, loads, stiffness and limits.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Line {
    pub places: Places,
    pub loads: RunLoads,
    /// Parts of constant rigidity: end of the part, N m2.
    pub rigidity: Vec<(f64, f64)>,
    pub strength: Vec<Strength>,
    pub judge_beam: bool,
    pub length: f64,
    /// The kinds of ground of the plan; the number of each place is in `places`.
    pub classes: Rc<Vec<Class>>,
    /// Whether there are several types of pile.
    pub several: bool,
    /// Whether the cost of the piles is to be least.
    pub costed: bool,
    /// Reactions below this are rounding, in each combination.
    pub floor: Vec<f64>,
    /// Terms of spans that were needed before.
    pub known: Known,
}

/// Terms of spans by their ends, filled as they are needed; empty where they are cheap or
/// too many.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Known {
    first: Vec<usize>,
    terms: RefCell<Vec<Option<SpanTerms>>>,
}

/// Numbers that are kept at most.
const KNOWN_MAX: usize = 4_000_000;

impl Known {
    /// Room for the spans of a run.
    pub fn of(places: &Places, loads: &RunLoads) -> Self {
        let mut first = Vec::with_capacity(places.at.len());
        let mut size = 0;
        for (from, to) in &places.next {
            first.push(size);
            size += to.saturating_sub(*from);
        }
        if loads.even || size * loads.count * 4 > KNOWN_MAX {
            return Self::default();
        }
        Self {
            first,
            terms: RefCell::new(vec![None; size]),
        }
    }
}

impl Line {
    /// What piles carry at a place.
    pub fn class(&self, place: usize) -> &Class {
        &self.classes[self.places.class[place]]
    }

    /// Rigidity of a span that begins here.
    pub fn rigidity_after(&self, at: f64) -> f64 {
        let i = self.rigidity.partition_point(|r| r.0 <= at);
        self.rigidity[i.min(self.rigidity.len() - 1)].1
    }

    /// Terms of the span between two places that can follow each other.
    fn terms(&self, from: usize, to: usize, out: &mut SpanTerms) {
        let p = &self.places;
        let fresh = |out: &mut SpanTerms| self.loads.span(p.at[from], p.at[to], false, out);
        if self.known.first.is_empty() {
            return fresh(out);
        }
        let slot = self.known.first[from] + to - p.next[from].0;
        let mut known = self.known.terms.borrow_mut();
        if let Some(terms) = &known[slot] {
            out.copy(terms);
        } else {
            fresh(out);
            known[slot] = Some(out.clone());
        }
    }
}

/// Highest utilisations of a layout.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Rating {
    /// Over all piles with the share of this run, and the beam.
    pub all: f64,
    /// Without the piles that carry other runs too.
    pub own: f64,
    /// Cost of the piles that carry this run only; without limit where no type carries
    /// one. Only where costs count.
    pub cost: f64,
}

/// The growing layout.
#[derive(Debug, Clone)]
pub(super) struct Stack {
    /// Places of the piles, as indices.
    pub chosen: Vec<usize>,
    /// Span after each pile but the last.
    pub spans: Vec<SpanTerms>,
    pub length: Vec<f64>,
    pub flexibility: Vec<f64>,
    pub rigidity: Vec<f64>,
    /// M(d) = alpha(d) + beta(d) M(d + 1), one row a pile.
    pub alpha: Vec<Vec<f64>>,
    pub beta: Vec<f64>,
    /// Load to the left of each pile.
    pub left: Vec<Vec<f64>>,
    /// Force on each pile itself.
    pub on: Vec<Vec<f64>>,
    moment: Vec<f64>,
    /// What each pile has to carry; only with several types.
    demand: Vec<Demand>,
}

impl Stack {
    /// An empty layout with room for so many piles.
    pub fn new(piles: usize, combinations: usize) -> Self {
        let rows = || vec![vec![0.0; combinations]; piles + 1];
        Self {
            chosen: Vec::with_capacity(piles),
            spans: vec![SpanTerms::default(); piles + 1],
            length: vec![0.0; piles + 1],
            flexibility: vec![0.0; piles + 1],
            rigidity: vec![0.0; piles + 1],
            alpha: rows(),
            beta: vec![0.0; piles + 1],
            left: rows(),
            on: rows(),
            moment: vec![0.0; piles + 1],
            demand: vec![Demand::default(); piles + 1],
        }
    }

    /// Adds a pile to the right.
    pub fn push(&mut self, line: &Line, place: usize) {
        let k = self.chosen.len();
        let at = line.places.at[place];
        let n = line.loads.count;
        if k == 0 {
            for c in 0..n {
                let (load, moment) = line.loads.beyond(at, false, c);
                self.alpha[0][c] = moment;
                self.left[0][c] = load;
                self.on[0][c] = line.loads.on(at, c);
            }
            self.beta[0] = 0.0;
        } else {
            let from = line.places.at[self.chosen[k - 1]];
            self.length[k - 1] = at - from;
            self.rigidity[k - 1] = line.rigidity_after(from);
            self.flexibility[k - 1] = (at - from) / self.rigidity[k - 1];
            line.terms(self.chosen[k - 1], place, &mut self.spans[k - 1]);
            if k > 1 {
                self.eliminate(k - 1, n);
            }
            for c in 0..n {
                self.left[k][c] =
                    self.left[k - 1][c] + self.on[k - 1][c] + self.spans[k - 1].total[c];
                self.on[k][c] = line.loads.on(at, c);
            }
        }
        self.chosen.push(place);
    }

    /// Takes the last pile away.
    pub fn pop(&mut self) {
        self.chosen.pop();
    }

    /// Three-moment equation of pile `d`, solved for its moment.
    ///
    /// f_l M_l + 2 (f_l + f_r) M_d + f_r M_r = -(T_l/EI_l + T_r/EI_r), f = L/EI, with
    /// M_l = alpha + beta M_d. Source: three-moment equation.
    fn eliminate(&mut self, d: usize, n: usize) {
        let (fl, fr) = (self.flexibility[d - 1], self.flexibility[d]);
        let pivot = fl * self.beta[d - 1] + 2.0 * (fl + fr);
        for c in 0..n {
            let terms = self.spans[d - 1].at_right[c] / self.rigidity[d - 1]
                + self.spans[d].at_left[c] / self.rigidity[d];
            self.alpha[d][c] = -(terms + fl * self.alpha[d - 1][c]) / pivot;
        }
        self.beta[d] = -fr / pivot;
    }

    /// Rates a layout whose last pile has been placed; none where its own piles are used
    /// more than `limit`, or all of them where `shared` counts them too.
    pub fn rate_below(&mut self, line: &Line, limit: f64, shared: bool) -> Option<Rating> {
        let mut rating = self.rate_piles(line, limit, shared)?;
        if line.judge_beam {
            self.rate_beam(line, &mut rating);
        }
        let used = if shared { rating.all } else { rating.own };
        (used <= limit).then_some(rating)
    }

    /// Rates a layout whose last pile has been placed.
    pub fn rate(&mut self, line: &Line) -> Rating {
        self.rate_below(line, f64::INFINITY, true)
            .unwrap_or(Rating {
                all: f64::INFINITY,
                own: f64::INFINITY,
                cost: f64::INFINITY,
            })
    }

    fn rate_beam(&mut self, line: &Line, rating: &mut Rating) {
        for c in 0..line.loads.count {
            let beyond = self.back(line, c);
            let u = self.beam(line, c, beyond);
            rating.all = rating.all.max(u);
            rating.own = rating.own.max(u);
        }
    }

    /// Moments of a combination from the last pile back; the load beyond that pile.
    fn back(&mut self, line: &Line, c: usize) -> f64 {
        let last = self.chosen.len() - 1;
        let end = line.places.at[self.chosen[last]];
        let (beyond, moment) = line.loads.beyond(end, true, c);
        self.moment[last] = if last == 0 { self.alpha[0][c] } else { moment };
        for d in (0..last).rev() {
            self.moment[d] = self.alpha[d][c] + self.beta[d] * self.moment[d + 1];
        }
        beyond
    }

    fn rate_piles(&mut self, line: &Line, limit: f64, shared: bool) -> Option<Rating> {
        let mut rating = Rating {
            all: 0.0,
            own: 0.0,
            cost: 0.0,
        };
        let last = self.chosen.len() - 1;
        if line.several {
            self.demand[..=last].fill(Demand::default());
        }
        for c in 0..line.loads.count {
            let beyond = self.back(line, c);
            for d in 0..=last {
                let r = self.on[d][c] + self.shear_right(d, c, beyond) - self.shear_left(d, c);
                let class = line.class(self.chosen[d]);
                if line.several {
                    self.demand[d].add(r, line.floor[c]);
                }
                let u = used(r, class.compression, class.tension, line.floor[c]);
                rating.all = rating.all.max(u);
                if line.places.meeting[self.chosen[d]].is_none() {
                    rating.own = rating.own.max(u);
                }
            }
            let used = if shared { rating.all } else { rating.own };
            if used > limit {
                return None;
            }
        }
        if line.several {
            self.rate_types(line, &mut rating);
        }
        Some(rating)
    }

    /// One type has to carry both the compression and the tension of its pile.
    fn rate_types(&self, line: &Line, rating: &mut Rating) {
        for (place, demand) in self.chosen.iter().zip(&self.demand) {
            let class = line.class(*place);
            let u = class.least_used(*demand);
            rating.all = rating.all.max(u);
            if line.places.meeting[*place].is_none() {
                rating.own = rating.own.max(u);
                if line.costed {
                    rating.cost += class.cost_for(*demand);
                }
            }
        }
    }

    /// Reaction of the pile at a place in a combination; nothing where none stands there.
    pub fn reaction_at(&mut self, line: &Line, place: usize, c: usize) -> f64 {
        let beyond = self.back(line, c);
        self.chosen
            .iter()
            .position(|p| *p == place)
            .map_or(0.0, |d| {
                self.on[d][c] + self.shear_right(d, c, beyond) - self.shear_left(d, c)
            })
    }

    /// Shear to the right of a pile: what the next span hangs on it, or the overhang.
    fn shear_right(&self, d: usize, c: usize, beyond: f64) -> f64 {
        if d + 1 == self.chosen.len() {
            return beyond;
        }
        (self.moment[d + 1] - self.moment[d]) / self.length[d] + self.spans[d].total[c]
            - self.spans[d].right[c]
    }

    /// Shear to the left of a pile.
    fn shear_left(&self, d: usize, c: usize) -> f64 {
        if d == 0 {
            return -self.left[0][c];
        }
        (self.moment[d] - self.moment[d - 1]) / self.length[d - 1] - self.spans[d - 1].right[c]
    }

    /// Highest utilisation of the beam in a combination.
    fn beam(&self, line: &Line, c: usize, beyond: f64) -> f64 {
        let last = self.chosen.len() - 1;
        let mut worst = 0.0f64;
        let at = |d: usize| line.places.at[self.chosen[d]];
        let mut walk = |from: f64, to: f64, mut shear: f64, mut moment: f64| {
            line.loads.pieces(from, to, c, |x0, x1, start, end, force| {
                shear -= force;
                let piece = Piece {
                    from: x0,
                    to: x1,
                    shear,
                    moment,
                    start,
                    end,
                };
                worst = worst.max(strained(line, &piece));
                shear = piece.shear_at(x1 - x0);
                moment = piece.moment_at(x1 - x0);
            });
        };
        walk(0.0, at(0), -line.loads.on(0.0, c), 0.0);
        for d in 0..last {
            walk(
                at(d),
                at(d + 1),
                self.shear_right(d, c, beyond),
                self.moment[d],
            );
        }
        walk(at(last), line.length, beyond, self.moment[last]);
        worst
    }
}

/// Utilisation of a pile by a reaction, positive in compression; tension up to `floor` is
/// rounding, and any other load without a capacity is without limit.
pub(super) fn used(reaction: f64, compression: f64, tension: f64, floor: f64) -> f64 {
    if reaction >= 0.0 {
        reaction / compression
    } else if -reaction <= floor {
        0.0
    } else {
        -reaction / tension
    }
}

/// Utilisation of the beam in a piece.
fn strained(line: &Line, piece: &Piece) -> f64 {
    let i = line.strength.partition_point(|s| s.to <= piece.from);
    let strength = &line.strength[i.min(line.strength.len() - 1)];
    let mut found: Option<Extremes> = None;
    piece.widen(piece.at_end(), &mut found);
    found.map_or(0.0, |e| {
        (e.highest_moment.value / strength.sagging)
            .max(-e.lowest_moment.value / strength.hogging)
            .max(e.shear.value.abs() / strength.shear)
    })
}
