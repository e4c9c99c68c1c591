//! Shapes on paper: what of a line lies in the field, hatches, lines at a distance from a
//! shape, ticks along it. Knows nothing of what they stand for.

use bearwell_engine::math;

use crate::place::Line;
use crate::svg::Rect;

/// A place on paper, mm.
pub type Spot = (f64, f64);

/// A shape on paper.
#[derive(Debug, Clone)]
pub struct Shape {
    /// Its points in order, the first not repeated.
    pub points: Vec<Spot>,
    /// Whether it goes back from the last to the first.
    pub closed: bool,
}

impl Shape {
    /// A polygon that stands for a circle.
    pub fn round(centre: Spot, radius: f64) -> Self {
        const CORNERS: i32 = 64;
        let turn = |i: i32| 2.0 * math::PI * f64::from(i) / f64::from(CORNERS);
        let points = (0..CORNERS)
            .map(|i| {
                let angle = turn(i);
                (
                    centre.0 + radius * math::cos(angle),
                    centre.1 + radius * math::sin(angle),
                )
            })
            .collect();
        Self {
            points,
            closed: true,
        }
    }

    /// Its straight sides.
    pub fn sides(&self) -> impl Iterator<Item = Line> {
        let again = self.closed.then(|| self.points.first()).flatten();
        let next = self.points.iter().skip(1).chain(again);
        self.points.iter().zip(next).map(|(a, b)| (*a, *b))
    }

    /// Whether a place lies inside (even and odd).
    pub fn holds(&self, at: Spot) -> bool {
        if !self.closed {
            return false;
        }
        let crossed = self.sides().filter(|(a, b)| {
            (a.1 > at.1) != (b.1 > at.1) && at.0 < a.0 + (at.1 - a.1) / (b.1 - a.1) * (b.0 - a.0)
        });
        crossed.count() % 2 == 1
    }

    /// Distance of a place from its sides.
    pub fn distance(&self, at: Spot) -> f64 {
        let alone = self
            .points
            .iter()
            .map(|p| math::hypot(at.0 - p.0, at.1 - p.1));
        let sides = self.sides().map(|(a, b)| {
            let (dx, dy) = (b.0 - a.0, b.1 - a.1);
            let square = dx * dx + dy * dy;
            let t = if square < 1e-12 {
                0.0
            } else {
                (((at.0 - a.0) * dx + (at.1 - a.1) * dy) / square).clamp(0.0, 1.0)
            };
            math::hypot(at.0 - a.0 - t * dx, at.1 - a.1 - t * dy)
        });
        alone.chain(sides).fold(f64::MAX, f64::min)
    }

    /// The part of its smallest upright rectangle that lies in the field.
    pub fn seen(&self, field: Rect) -> Option<Rect> {
        let edge = |pick: fn(&Spot) -> f64, worst: f64, of: fn(f64, f64) -> f64| {
            self.points.iter().map(pick).fold(worst, of)
        };
        let left = edge(|p| p.0, f64::MAX, f64::min).max(field.x);
        let right = edge(|p| p.0, f64::MIN, f64::max).min(field.right());
        let top = edge(|p| p.1, f64::MAX, f64::min).max(field.y);
        let bottom = edge(|p| p.1, f64::MIN, f64::max).min(field.bottom());
        (left <= right && top <= bottom).then_some(Rect {
            x: left,
            y: top,
            w: right - left,
            h: bottom - top,
        })
    }

    /// Slanting lines over what of it lies in the field, `pitch` apart.
    pub fn hatch(&self, field: Rect, pitch: f64) -> Vec<Line> {
        let step = pitch / std::f64::consts::FRAC_1_SQRT_2;
        let Some(seen) = self.seen(field) else {
            return Vec::new();
        };
        // along a line x + y stays what it is
        let first = ((seen.x + seen.y) / step).ceil() as i64;
        let last = ((seen.right() + seen.bottom()) / step).floor() as i64;
        let mut lines = Vec::new();
        for i in first..=last {
            let sum = i as f64 * step;
            let mut cuts: Vec<f64> = self
                .sides()
                .filter_map(|(a, b)| {
                    let (from, to) = (a.0 + a.1 - sum, b.0 + b.1 - sum);
                    ((from > 0.0) != (to > 0.0)).then(|| a.0 + from / (from - to) * (b.0 - a.0))
                })
                .collect();
            cuts.sort_by(f64::total_cmp);
            for pair in cuts.chunks_exact(2) {
                let line = ((pair[0], sum - pair[0]), (pair[1], sum - pair[1]));
                lines.extend(clipped(field, line));
            }
        }
        lines
    }

    /// Dashes of a line at a distance from it, on both sides, round its corners; those that
    /// `keep` wants.
    pub fn beside(
        &self,
        by: f64,
        field: Rect,
        (dash, gap): (f64, f64),
        keep: impl Fn(Spot) -> bool,
    ) -> Vec<Line> {
        let near = field.grown(1.0);
        let mut lines = Vec::new();
        let mut put = |from: Spot, to: Spot| {
            let middle = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
            let at_distance = |p: Spot| self.distance(p) >= by * 0.999 - 0.01;
            if !within(near, from) && !within(near, to) {
                return;
            }
            if [from, middle, to]
                .into_iter()
                .all(|p| at_distance(p) && keep(p))
            {
                lines.extend(clipped(field, (from, to)));
            }
        };
        for (a, b) in self.sides() {
            let long = math::hypot(b.0 - a.0, b.1 - a.1);
            if long < 1e-9 {
                continue;
            }
            let d = ((b.0 - a.0) / long, (b.1 - a.1) / long);
            for side in [-1.0, 1.0] {
                let off = (-d.1 * by * side, d.0 * by * side);
                let whole = ((a.0 + off.0, a.1 + off.1), (b.0 + off.0, b.1 + off.1));
                let Some((from, to)) = clipped(near, whole) else {
                    continue;
                };
                dashes((from, to), dash, gap).for_each(|(p, q)| put(p, q));
            }
        }
        for p in &self.points {
            // as many as their length on the arc asks for
            let count = (2.0 * math::PI * by / (dash + gap)).clamp(8.0, 4000.0) as i32;
            let part = 2.0 * math::PI / f64::from(count);
            for i in 0..count {
                let at = |angle: f64| (p.0 + by * math::cos(angle), p.1 + by * math::sin(angle));
                let start = f64::from(i) * part;
                put(at(start), at(start + part * dash / (dash + gap)));
            }
        }
        lines
    }

    /// Slanting ticks that stand on its sides every `step`, towards the places that `side`
    /// wants.
    pub fn ticks(&self, field: Rect, step: f64, side: impl Fn(Spot) -> bool) -> Vec<Line> {
        const LONG: f64 = 1.8;
        let mut lines = Vec::new();
        for line in self.sides() {
            let Some((a, b)) = clipped(field, line) else {
                continue;
            };
            let long = math::hypot(b.0 - a.0, b.1 - a.1);
            if long < 1e-9 {
                continue;
            }
            let d = ((b.0 - a.0) / long, (b.1 - a.1) / long);
            for i in 0..(long / step) as usize {
                let along = (i as f64 + 0.5) * step;
                let foot = (a.0 + along * d.0, a.1 + along * d.1);
                for turn in [-1.0, 1.0] {
                    let n = (-d.1 * turn, d.0 * turn);
                    if !side((foot.0 + 0.01 * n.0, foot.1 + 0.01 * n.1)) {
                        continue;
                    }
                    let head = (
                        foot.0 + LONG * 0.7 * (n.0 + d.0),
                        foot.1 + LONG * 0.7 * (n.1 + d.1),
                    );
                    if side(head) {
                        lines.extend(clipped(field, (foot, head)));
                    }
                }
            }
        }
        lines
    }
}

fn within(r: Rect, p: Spot) -> bool {
    r.x <= p.0 && p.0 <= r.right() && r.y <= p.1 && p.1 <= r.bottom()
}

/// The dashes of a line.
pub fn dashes((a, b): Line, dash: f64, gap: f64) -> impl Iterator<Item = Line> {
    let long = math::hypot(b.0 - a.0, b.1 - a.1);
    let count = (long / (dash + gap)).ceil().max(1.0);
    let at = move |t: f64| (a.0 + t * (b.0 - a.0), a.1 + t * (b.1 - a.1));
    (0..count as usize).map(move |i| {
        let from = i as f64 / count;
        (at(from), at(from + dash / (dash + gap) / count))
    })
}

/// What of a line lies in a rectangle.
pub fn clipped(field: Rect, (from, to): Line) -> Option<Line> {
    let (enter, leave) = shares(field, (from, to))?;
    let at = |t: f64| (from.0 + t * (to.0 - from.0), from.1 + t * (to.1 - from.1));
    Some((at(enter), at(leave)))
}

/// The shares of a line at which it enters and leaves a rectangle.
pub fn shares(field: Rect, (from, to): Line) -> Option<(f64, f64)> {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    for (along, room) in [
        (-dx, from.0 - field.x),
        (dx, field.right() - from.0),
        (-dy, from.1 - field.y),
        (dy, field.bottom() - from.1),
    ] {
        if along == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if along < 0.0 {
            enter = enter.max(room / along);
        } else {
            leave = leave.min(room / along);
        }
    }
    (enter <= leave).then_some((enter, leave))
}

#[cfg(test)]
mod tests {
    use super::*;

    const FIELD: Rect = Rect {
        x: 0.0,
        y: 0.0,
        w: 100.0,
        h: 100.0,
    };

    /// An L, 40 by 40 with a notch of 20 by 20.
    fn angle() -> Shape {
        let points = vec![
            (10.0, 10.0),
            (50.0, 10.0),
            (50.0, 30.0),
            (30.0, 30.0),
            (30.0, 50.0),
            (10.0, 50.0),
        ];
        Shape {
            points,
            closed: true,
        }
    }

    #[test]
    fn a_hatch_stays_inside_and_fills_the_shape() {
        let shape = angle();
        let lines = shape.hatch(FIELD, 1.0);
        let mut long = 0.0;
        for (a, b) in &lines {
            let middle = ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
            assert!(shape.holds(middle), "{middle:?}");
            long += math::hypot(b.0 - a.0, b.1 - a.1);
        }
        // lines 1 mm apart are as long as the shape is large: 40 x 40 - 20 x 20
        assert!((long - 1200.0).abs() < 30.0, "{long}");
    }

    #[test]
    fn a_hatch_does_not_leave_the_field() {
        let field = Rect {
            x: 20.0,
            y: 0.0,
            w: 15.0,
            h: 40.0,
        };
        let lines = angle().hatch(field, 2.0);
        assert!(lines.len() > 5);
        for (a, b) in lines {
            for p in [a, b] {
                assert!(field.grown(1e-9).x <= p.0 && p.0 <= field.right() + 1e-9);
                assert!(p.1 <= field.bottom() + 1e-9);
            }
        }
    }

    #[test]
    fn dashes_beside_a_shape_keep_their_distance() {
        let shape = angle();
        let lines = shape.beside(5.0, FIELD, (1.0, 0.8), |p| !shape.holds(p));
        assert!(lines.len() > 60);
        for (a, b) in lines {
            for p in [a, b] {
                let d = shape.distance(p);
                // straight dashes of an arc lie a little inside of it
                assert!((4.9..=5.01).contains(&d), "{p:?} {d}");
                assert!(!shape.holds(p));
            }
        }
    }

    #[test]
    fn ticks_stand_on_one_side() {
        let shape = angle();
        let lines = shape.ticks(FIELD, 2.5, |p| !shape.holds(p));
        assert!(lines.len() > 40);
        let inside = lines.iter().filter(|(_, head)| shape.holds(*head));
        assert_eq!(inside.count(), 0);
    }
}
