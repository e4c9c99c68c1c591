//! Structural slabs that span to the beams: their corners as a polygon, the widths that go
//! to each edge, the beams the edges lie on, and the loads that follow. Knows no piles.

mod bearing;
mod equations;
mod report;
mod shape;
mod strips;
#[cfg(test)]
mod tests;
mod widths;

pub(super) use report::rows;

use super::codes::{methods, refusals};
use super::combine::Loading;
use super::outcome::SpanningUsed;
use super::plan::Plan;
use super::request::{Request, SlabLoad, SlabSpanning, StructuralSlab};
use super::sent_loads::CASES_MAX;
use super::site;
use crate::beam::{Load, Shape};
use crate::contract::{Issue, Work, list_length};
use crate::limits::{SLAB_CORNERS, SLABS};
use crate::quantity::round9;
use crate::source::{SLAB_ONE_WAY, Sourced};
use bearing::{OnRun, Seats};
use shape::{Outline, outline};

/// Length over width of the smallest rectangle about a slab from which it is taken to span
/// one way.
static ONE_WAY_FROM: Sourced<f64> = Sourced::new("one_way_slab_ratio", 2.0, &SLAB_ONE_WAY);

/// A slab laid onto the beams.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Laid {
    /// Its place in the request.
    pub index: usize,
    pub label: String,
    /// m2.
    pub area: f64,
    pub spanning: SpanningUsed,
    /// Direction of the strips, radians from east.
    pub strips: Option<f64>,
    /// Widths along the runs.
    pub on: Vec<OnRun>,
    /// Load of each load case that it has, Pa, in order of cases.
    pub cases: Vec<(usize, f64)>,
}

/// Faults in the lengths of lists; how many loads the slabs put along beams, one for each
/// load and corner.
pub(super) fn lengths(request: &Request, issues: &mut Vec<Issue>) -> usize {
    let slabs = request.slabs.as_deref().unwrap_or_default();
    list_length(issues, "/slabs", slabs.len(), 0, SLABS);
    for (i, slab) in slabs.iter().enumerate() {
        let (corners, loads) = (slab.corners.len(), slab.loads.len());
        list_length(
            issues,
            format!("/slabs/{i}/corners"),
            corners,
            3,
            SLAB_CORNERS,
        );
        list_length(issues, format!("/slabs/{i}/loads"), loads, 1, CASES_MAX);
    }
    slabs.iter().map(|s| s.corners.len() * s.loads.len()).sum()
}

/// Lays every slab onto the beams; faults go to `issues`.
pub(super) fn lay(
    request: &Request,
    plan: &Plan,
    loading: &Loading,
    beam_labels: &[String],
    work: &mut Work,
    issues: &mut Vec<Issue>,
) -> Vec<Laid> {
    let slabs = request.slabs.as_deref().unwrap_or_default();
    let names = slabs.iter().map(|s| s.label.as_ref());
    let labels = site::labels(names, "S", "/slabs", issues);
    let mut out = Vec::with_capacity(slabs.len());
    for ((index, slab), label) in slabs.iter().enumerate().zip(labels) {
        let Some(outline) = outline(slab, index, plan, issues) else {
            continue;
        };
        let seats = Seats::of(request, plan, &outline);
        let Some((spanning, strips)) =
            spanning(slab, index, &outline, &seats, beam_labels, work, issues)
        else {
            continue;
        };
        let widths = match strips {
            None => {
                work.method(&methods::SLAB_TWO_WAY);
                widths::nearest_edge(&outline)
            }
            Some(direction) => {
                work.method(&methods::SLAB_ONE_WAY);
                strips::half_to_each_end(&outline, direction)
            }
        };
        let on = seats.carry(&outline, &widths, plan, index, issues);
        out.push(Laid {
            index,
            label,
            area: outline.area,
            spanning,
            strips: strips.map(|d| crate::math::atan2(d.y, d.x)),
            on,
            cases: cases(&slab.loads, loading),
        });
    }
    out
}

/// Way in which a slab spans; the direction of its strips where it has some.
fn spanning(
    slab: &StructuralSlab,
    index: usize,
    outline: &Outline,
    seats: &Seats,
    beam_labels: &[String],
    work: &mut Work,
    issues: &mut Vec<Issue>,
) -> Option<(SpanningUsed, Option<super::plan::Point>)> {
    let two_way = |issues: &mut Vec<Issue>| {
        if outline.convex {
            return Some((SpanningUsed::TwoWay, None));
        }
        issues.push(Issue::new(
            format!("/slabs/{index}/corners"),
            &refusals::SLAB_NOT_CONVEX,
            "split it into convex slabs, or let it span `one_way`",
        ));
        None
    };
    match &slab.spanning {
        Some(SlabSpanning::TwoWay(_)) => two_way(issues),
        Some(SlabSpanning::OneWay(asked)) => {
            let pointer = format!("/slabs/{index}/spanning/one_way/strips");
            let direction = seats.strips(&asked.strips, beam_labels, &pointer, issues)?;
            Some((SpanningUsed::OneWay, Some(direction)))
        }
        None => {
            let (ratio, short) = outline.smallest_rectangle();
            if round9(ratio) >= work.take(&ONE_WAY_FROM) {
                Some((SpanningUsed::OneWay, Some(short)))
            } else {
                two_way(issues)
            }
        }
    }
}

/// Loads by load case, those of one case together.
fn cases(loads: &[SlabLoad], loading: &Loading) -> Vec<(usize, f64)> {
    let mut out: Vec<(usize, f64)> = Vec::new();
    for l in loads {
        let Some(case) = loading.case(l.kind, l.case.as_ref().map(|c| c.as_str())) else {
            continue;
        };
        match out.iter_mut().find(|c| c.0 == case) {
            Some(own) => own.1 += l.load.si(),
            None => out.push((case, l.load.si())),
        }
    }
    out.sort_by_key(|c| c.0);
    out
}

/// The loads of slabs along the runs.
pub(super) fn loads(laid: &[Laid]) -> impl Iterator<Item = (usize, Load)> + '_ {
    laid.iter().flat_map(|slab| {
        slab.on.iter().flat_map(|w| {
            slab.cases.iter().map(|(case, q)| {
                let shape = Shape::Spread {
                    from: w.from,
                    to: w.to,
                    start: q * w.start,
                    end: q * w.end,
                };
                (w.run, Load { case: *case, shape })
            })
        })
    })
}
