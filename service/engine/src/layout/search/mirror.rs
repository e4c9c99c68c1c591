//! Whether a plan with its loads is its own mirror image, and which place of which run is
//! the image of which. Chooses no layout.

use super::Task;
use super::loads::SpanTerms;
use super::stack::Line;
use crate::layout::plan::{Point, TOLERANCE};
use crate::layout::request::{PlanPoint, SymmetryWish};
use crate::math;
use crate::quantity::Length;

/// Loads and stiffnesses nearer than this share of the greatest are alike.
const ALIKE: f64 = 1e-9;
/// Places nearer than this are one place, m.
const SAME: f64 = 1e-6;

/// A mirror line in the plan's own axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Mirror {
    through: Point,
    normal: Point,
}

/// The image of a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Image {
    pub run: usize,
    /// Whether its start is the image of the end.
    pub reversed: bool,
}

impl Mirror {
    /// The mirror line of a wish.
    pub fn of(task: &Task<'_>, wish: &SymmetryWish) -> Self {
        let plan = &task.frame.plan;
        let direction = wish.direction.si();
        Self {
            through: match &wish.through {
                Some(p) => Point {
                    x: p.x.si() - plan.corner.x,
                    y: p.y.si() - plan.corner.y,
                },
                None => middle(task),
            },
            normal: Point {
                x: -math::sin(direction),
                y: math::cos(direction),
            },
        }
    }

    /// The point of the line that was used, in the caller's axes.
    pub fn shown(&self, task: &Task<'_>) -> PlanPoint {
        let p = task.frame.plan.outside(self.through);
        PlanPoint {
            x: Length::from_si(p.x),
            y: Length::from_si(p.y),
        }
    }

    fn image(&self, p: Point) -> Point {
        let off = self.through.to(p).dot(self.normal);
        p.along(self.normal, -2.0 * off)
    }

    /// The image of every run, or why there is none.
    pub fn images(&self, task: &Task<'_>, lines: &[Line]) -> Result<Vec<Image>, String> {
        let plan = &task.frame.plan;
        let mut out = Vec::with_capacity(lines.len());
        for (r, run) in plan.runs.iter().enumerate() {
            let (a, b) = (self.image(run.start), self.image(run.point(run.length)));
            let name = || task.beam_labels[run.parts[0].beam].clone();
            let found =
                [(a, b, false), (b, a, true)]
                    .into_iter()
                    .find_map(|(start, end, reversed)| {
                        let from = plan
                            .runs
                            .partition_point(|o| o.start.x < start.x - TOLERANCE);
                        let near = plan.runs[from..]
                            .iter()
                            .take_while(|o| o.start.x <= start.x + TOLERANCE);
                        let at = near.enumerate().find(|(_, o)| {
                            o.start.distance(start) <= TOLERANCE
                                && o.point(o.length).distance(end) <= TOLERANCE
                        });
                        at.map(|(i, _)| Image {
                            run: from + i,
                            reversed,
                        })
                    });
            let Some(image) = found else {
                return Err(format!("beam {} has no mirror image", name()));
            };
            if !alike(&lines[r], &lines[image.run], image.reversed) {
                return Err(format!(
                    "the loads, stiffness or strength of beam {} differ from those of its mirror image",
                    name()
                ));
            }
            out.push(image);
        }
        Ok(out)
    }
}

fn middle(task: &Task<'_>) -> Point {
    let ends = || {
        let runs = task.frame.plan.runs.iter();
        runs.flat_map(|r| [r.start, r.point(r.length)])
    };
    let half = |get: fn(&Point) -> f64| {
        let lo = ends().map(|p| get(&p)).fold(f64::INFINITY, f64::min);
        let hi = ends().map(|p| get(&p)).fold(f64::NEG_INFINITY, f64::max);
        0.5 * (lo + hi)
    };
    Point {
        x: half(|p| p.x),
        y: half(|p| p.y),
    }
}

/// Whether two runs carry the same and are made the same, one perhaps the other way round.
fn alike(a: &Line, b: &Line, reversed: bool) -> bool {
    let length = a.length;
    let over = |x: f64| {
        if reversed { (length - x).max(0.0) } else { x }
    };
    let mut marks: Vec<f64> = a.loads.stations().to_vec();
    marks.extend(b.loads.stations().iter().map(|x| over(*x)));
    marks.extend(a.rigidity.iter().map(|r| r.0));
    marks.extend(b.rigidity.iter().map(|r| over(r.0)));
    marks.sort_by(f64::total_cmp);
    marks.dedup_by(|x, y| (*x - *y).abs() <= TOLERANCE);
    let n = a.loads.count;
    let size = (0..n)
        .map(|c| a.floor[c].max(b.floor[c]))
        .fold(0.0, f64::max)
        * 1e12;
    let same = |x: f64, y: f64, scale: f64| (x - y).abs() <= ALIKE * scale.max(x.abs());
    let forces = marks.iter().all(|x| {
        let at = nearest(b.loads.stations(), over(*x));
        let own = nearest(a.loads.stations(), *x);
        (0..n).all(|c| same(a.loads.on(own, c), b.loads.on(at, c), size))
    });
    let (mut s, mut t) = (SpanTerms::default(), SpanTerms::default());
    forces
        && marks.windows(2).all(|m| {
            let (from, to) = (over(m[0]).min(over(m[1])), over(m[0]).max(over(m[1])));
            a.loads.span(m[0], m[1], false, &mut s);
            b.loads.span(from, to, false, &mut t);
            let loads = (0..n).all(|c| {
                let right = if reversed {
                    t.total[c] - t.right[c]
                } else {
                    t.right[c]
                };
                same(s.total[c], t.total[c], size) && same(s.right[c], right, size)
            });
            let (x, y) = (0.5 * (m[0] + m[1]), 0.5 * (from + to));
            let made = |l: &Line, x: f64| {
                let i = l.strength.partition_point(|s| s.to <= x);
                let s = l.strength[i.min(l.strength.len() - 1)];
                [l.rigidity_after(x), s.sagging, s.hogging, s.shear]
            };
            let alike = made(a, x)
                .into_iter()
                .zip(made(b, y))
                .all(|(v, w)| v == w || same(v, w, v.abs()));
            loads && alike
        })
}

/// The value of an ascending list next to `x`, where one is near; else `x`.
fn nearest(list: &[f64], x: f64) -> f64 {
    let i = list.partition_point(|v| *v < x - TOLERANCE);
    match list.get(i) {
        Some(v) if (v - x).abs() <= TOLERANCE => *v,
        _ => x,
    }
}

/// Index of the place on the image run for every place; none where no pile may stand there.
pub(super) fn over(from: &Line, to: &Line, reversed: bool) -> Vec<Option<usize>> {
    let at = &to.places.at;
    from.places
        .at
        .iter()
        .map(|x| {
            let wanted = if reversed { from.length - x } else { *x };
            let i = at.partition_point(|v| *v < wanted - SAME);
            (i < at.len() && at[i] <= wanted + SAME).then_some(i)
        })
        .collect()
}
