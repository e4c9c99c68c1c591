//! Widths of a slab that go to each of its sides when it spans in strips side by side.

use super::shape::{Outline, Side};
use super::widths::Width;
use crate::layout::plan::Point;

/// Corners nearer than this across the strips are on one strip (rounding of units), m.
const SAME: f64 = 1e-9;

/// Widths of a slab that go to each side, half of every strip to either end.
///
/// w = 1/2 l |dt/ds|; l length of the strip (m), t across the strips and s along the side
/// (m). A strip that leaves the slab and enters it again is two. Sides along the strips get
/// nothing. Range: any slab that does not cross itself. Source: statics of simple beams.
pub(super) fn half_to_each_end(outline: &Outline, direction: Point) -> Vec<Vec<Width>> {
    let sides = &outline.sides;
    let across = Point {
        x: -direction.y,
        y: direction.x,
    };
    let places = settled(sides.iter().map(|s| s.start.dot(across)).collect());
    let n = sides.len();
    let ends = |i: usize| (places[i], places[(i + 1) % n]);
    let mut cuts = places.clone();
    cuts.sort_by(f64::total_cmp);
    cuts.dedup();
    let mut out: Vec<Vec<Width>> = vec![Vec::new(); n];
    for pair in cuts.windows(2) {
        let (t0, t1) = (pair[0], pair[1]);
        let mut met: Vec<Crossing> = (0..n)
            .filter(|i| {
                let (a, b) = ends(*i);
                a.min(b) <= t0 && a.max(b) >= t1
            })
            .map(|i| Crossing::of(&sides[i], i, ends(i), direction, (t0, t1)))
            .collect();
        met.sort_by(|a, b| a.middle().total_cmp(&b.middle()));
        for strip in met.chunks_exact(2) {
            let length = (
                strip[1].along.0 - strip[0].along.0,
                strip[1].along.1 - strip[0].along.1,
            );
            for end in strip {
                out[end.side].push(end.width(length, t1 - t0));
            }
        }
    }
    for own in &mut out {
        own.sort_by(|a, b| a.from.total_cmp(&b.from));
    }
    // corners that were put on one strip leave the area to rounding
    let found: f64 = out.iter().flatten().map(area).sum();
    for w in out.iter_mut().flatten() {
        w.start *= outline.area / found;
        w.end *= outline.area / found;
    }
    out
}

fn area(w: &Width) -> f64 {
    0.5 * (w.start + w.end) * (w.to - w.from)
}

/// Puts places nearer than rounding onto the first of them.
fn settled(mut places: Vec<f64>) -> Vec<f64> {
    let mut order: Vec<usize> = (0..places.len()).collect();
    order.sort_by(|a, b| places[*a].total_cmp(&places[*b]));
    for pair in order.windows(2) {
        if places[pair[1]] - places[pair[0]] <= SAME {
            places[pair[1]] = places[pair[0]];
        }
    }
    places
}

/// A side where the strips between two places across them meet it.
struct Crossing {
    side: usize,
    /// Places along the side.
    on: (f64, f64),
    /// Places along the strips.
    along: (f64, f64),
}

impl Crossing {
    fn of(side: &Side, index: usize, ends: (f64, f64), direction: Point, t: (f64, f64)) -> Self {
        let place = |t: f64| side.length * ((t - ends.0) / (ends.1 - ends.0));
        let (from, by) = (side.start.dot(direction), side.direction.dot(direction));
        let on = (place(t.0), place(t.1));
        Self {
            side: index,
            on,
            along: (from + by * on.0, from + by * on.1),
        }
    }

    fn middle(&self) -> f64 {
        self.along.0 + self.along.1
    }

    /// The width that half of the strips come to along the side.
    fn width(&self, length: (f64, f64), across: f64) -> Width {
        let slope = 0.5 * across / (self.on.1 - self.on.0).abs();
        let (a, b) = (slope * length.0.max(0.0), slope * length.1.max(0.0));
        if self.on.0 < self.on.1 {
            Width {
                from: self.on.0,
                to: self.on.1,
                start: a,
                end: b,
            }
        } else {
            Width {
                from: self.on.1,
                to: self.on.0,
                start: b,
                end: a,
            }
        }
    }
}
