//! What a plan tells of piles that could not stay: where one was, and the stretches beside a
//! beam where one may stand. Which these are is in the answer.

use std::collections::BTreeMap;

use bearwell_engine::contract::Answer;
use bearwell_engine::layout::{Outcome, PlanPoint};
use bearwell_engine::math;

use crate::page::View;
use crate::place::{Line, Room};
use crate::plan::beams::{BAND, direction};
use crate::plan::shape::{Spot, clipped};
use crate::svg::{Anchor, LINE, Rect, SMALL, Style, Svg, fitted, width};

/// How far a stretch stands off the edge of its beam, mm.
const OFF: f64 = 1.2;
/// Half the height of the ticks at its ends, mm.
const TICK: f64 = 0.9;
/// Pen of a stretch.
pub const PEN: &str = "stroke=\"#000\" stroke-width=\"0.6\"";
/// Pen of the ring around a place that was left.
pub const RING: &str = "stroke=\"#000\" stroke-width=\"0.35\" stroke-dasharray=\"0.9 0.6\"";
/// Longest note at such a place, mm.
const NOTE_ROOM: f64 = 26.0;

/// A place where a pile was.
#[derive(Debug, Clone)]
pub struct Was {
    /// The place.
    pub at: PlanPoint,
    /// What became of it.
    pub note: String,
}

/// A stretch of a straight piece of beam where a pile may stand.
#[derive(Debug, Clone)]
pub struct Stretch {
    /// One end.
    pub from: PlanPoint,
    /// The other one; the same where it is a single place.
    pub to: PlanPoint,
    /// Way of the beam, in plan.
    pub along: Spot,
    /// Half the width of the beam, m; nothing where it is not known.
    pub half: f64,
    /// What stands beside it.
    pub name: String,
}

/// What became of piles, beside those that stand.
#[derive(Debug, Clone, Default)]
pub struct Moves {
    /// Places that were left.
    pub was: Vec<Was>,
    /// Stretches that are free.
    pub free: Vec<Stretch>,
    /// Where the centre of a pile is that stands beside its line, by its label.
    pub beside: BTreeMap<String, PlanPoint>,
}

impl Moves {
    /// The answer with piles beside their line where they are; none where all stand on it.
    pub fn placed(&self, answer: &Answer<Outcome>) -> Option<Answer<Outcome>> {
        if self.beside.is_empty() {
            return None;
        }
        let mut placed = answer.clone();
        for pile in placed.result.piles.iter_mut() {
            if let Some(centre) = self.beside.get(&pile.label) {
                pile.at = *centre;
            }
        }
        Some(placed)
    }

    /// Every point of it, for the extent of the plan.
    pub fn points(&self) -> impl Iterator<Item = &PlanPoint> {
        let ends = self.free.iter().flat_map(|s| [&s.from, &s.to]);
        self.was.iter().map(|w| &w.at).chain(ends)
    }

    /// Draws rings and stretches and takes their room.
    pub fn draw(&self, svg: &mut Svg, view: &View, radius: f64, field: Rect, room: &mut Room) {
        for was in &self.was {
            let (x, y) = view.at(&was.at);
            let r = 1.4 * radius;
            svg.circle((x, y), r, RING);
            room.take(around((x, y), r));
        }
        for stretch in &self.free {
            for (from, to) in stretch.strokes(view) {
                let Some((from, to)) = clipped(field, (from, to)) else {
                    continue;
                };
                svg.line(from, to, PEN);
                for bead in beads((from, to)) {
                    room.take(bead);
                }
            }
        }
    }

    /// Notes at the places and names of the stretches, as far as there is room; how many found
    /// none.
    pub fn tell(&self, svg: &mut Svg, view: &View, radius: f64, room: &mut Room) -> usize {
        let style = Style::PLAIN.at(Anchor::Middle);
        let mut untold = 0;
        let mut put = |at: Spot, reach: f64, text: &str, room: &mut Room| {
            let text = fitted(text, NOTE_ROOM, style);
            let size = (width(&text, style) + 1.2, LINE * SMALL);
            let outward = direction(view.paper, at);
            let Some(placed) = room.label(at, reach, size, outward, true) else {
                untold += 1;
                return;
            };
            if let Some((from, to)) = placed.leader {
                svg.line(from, to, "stroke=\"#000\" stroke-width=\"0.2\"");
            }
            let r = placed.rect;
            if placed.covers > 0 {
                svg.rect(r, "fill=\"#fff\"");
            }
            svg.text(r.x + r.w / 2.0, r.y + 0.76 * LINE * SMALL, &text, style);
        };
        for was in &self.was {
            put(view.at(&was.at), 1.4 * radius, &was.note, room);
        }
        for stretch in self.free.iter().filter(|s| !s.name.is_empty()) {
            let (a, b) = stretch.line(view);
            let middle = ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
            put(middle, TICK, &stretch.name, room);
        }
        untold
    }
}

impl Stretch {
    /// Where it stands on paper, beside its beam on the side of the middle of the plan.
    fn line(&self, view: &View) -> Line {
        let (a, b) = (view.at(&self.from), view.at(&self.to));
        // y of the paper is down
        let n = (self.along.1, self.along.0);
        let middle = ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
        let inward = (view.paper.0 - middle.0) * n.0 + (view.paper.1 - middle.1) * n.1;
        let side = if inward < 0.0 { -1.0 } else { 1.0 };
        let by = side * ((self.half * view.factor).max(BAND) + OFF);
        let shift = |p: Spot| (p.0 + by * n.0, p.1 + by * n.1);
        (shift(a), shift(b))
    }

    /// The stretch and the ticks at its ends.
    fn strokes(&self, view: &View) -> [Line; 3] {
        let (a, b) = self.line(view);
        let n = (self.along.1 * TICK, self.along.0 * TICK);
        let tick = |p: Spot| ((p.0 - n.0, p.1 - n.1), (p.0 + n.0, p.1 + n.1));
        [(a, b), tick(a), tick(b)]
    }
}

fn around((x, y): Spot, r: f64) -> Rect {
    Rect {
        x: x - r,
        y: y - r,
        w: 2.0 * r,
        h: 2.0 * r,
    }
}

/// Small squares along a line.
fn beads((a, b): Line) -> Vec<Rect> {
    const EACH: f64 = 1.0;
    let long = math::hypot(b.0 - a.0, b.1 - a.1);
    let count = (long / EACH).ceil().max(1.0) as usize;
    let at = |i: usize| {
        let t = i as f64 / count as f64;
        (a.0 + t * (b.0 - a.0), a.1 + t * (b.1 - a.1))
    };
    (0..=count).map(|i| around(at(i), EACH / 2.0)).collect()
}
