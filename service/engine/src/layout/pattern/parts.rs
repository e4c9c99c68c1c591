//! The loads that may be absent, cut at the piles into the parts that are there or not.

use std::collections::BTreeMap;

use super::PARTS_MAX;
use crate::beam::{Load, Shape};
use crate::contract::{Issue, Refusal};
use crate::layout::codes::refusals;
use crate::layout::frame::Frame;
use crate::layout::plan::Place;
use crate::layout::site::along_runs;

/// A part: one load case on one span, or over one pile.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::layout) struct Part {
    pub run: usize,
    pub case: usize,
    pub shapes: Vec<Shape>,
    /// Sum of the sizes of its loads.
    pub size: f64,
}

/// All parts, run by run.
pub(in crate::layout) type Parts = Vec<Part>;

/// Cuts the loads of these cases at the piles; too many parts are a fault.
pub(in crate::layout) fn parts(
    frame: &Frame,
    places: &[Place],
    cases: &[usize],
) -> Result<Parts, Refusal> {
    let mut out = Vec::new();
    for (run, own) in along_runs(&frame.plan, places).iter().enumerate() {
        let piles: Vec<f64> = own.iter().map(|p| p.0).collect();
        // twice the span, and one more over the pile after it
        let mut found: BTreeMap<(usize, usize), Vec<Shape>> = BTreeMap::new();
        for load in frame.loads[run].iter().filter(|l| cases.contains(&l.case)) {
            cut(&piles, load, |key, shape| {
                found.entry((key, load.case)).or_default().push(shape);
            });
        }
        for ((_, case), shapes) in found {
            let size = shapes.iter().map(size).sum();
            if size > 0.0 {
                out.push(Part {
                    run,
                    case,
                    shapes,
                    size,
                });
            }
        }
    }
    if out.len() > PARTS_MAX {
        return Err(Issue::new(
            "/pattern_load",
            &refusals::PATTERN_TOO_LARGE,
            format!(
                "{} loaded spans, counted once for each load case",
                out.len()
            ),
        )
        .limit(PARTS_MAX.to_string())
        .into());
    }
    Ok(out)
}

fn cut(piles: &[f64], load: &Load, mut put: impl FnMut(usize, Shape)) {
    let span = |at: f64| {
        let i = piles.partition_point(|p| *p < at);
        if piles.get(i) == Some(&at) {
            2 * i + 1
        } else {
            2 * i
        }
    };
    match load.shape {
        Shape::Point { at, .. } | Shape::Couple { at, .. } => put(span(at), load.shape),
        Shape::Spread {
            from,
            to,
            start,
            end,
        } => {
            let q = |x: f64| {
                if x == to {
                    end
                } else {
                    start + (end - start) * (x - from) / (to - from)
                }
            };
            let mut a = from;
            while a < to {
                let i = piles.partition_point(|p| *p <= a);
                let b = piles.get(i).map_or(to, |p| p.min(to));
                let part = Shape::Spread {
                    from: a,
                    to: b,
                    start: q(a),
                    end: q(b),
                };
                put(2 * i, part);
                a = b;
            }
        }
    }
}

fn size(shape: &Shape) -> f64 {
    match *shape {
        Shape::Point { force, .. } => force.abs(),
        Shape::Couple { moment, .. } => moment.abs(),
        Shape::Spread {
            from,
            to,
            start,
            end,
        } => 0.5 * (start.abs() + end.abs()) * (to - from),
    }
}
