//! A part of a plan for a drawing to a larger scale: beams cut at the edges of a window, the
//! piles inside of it. What is drawn of that is in `figure.rs`.

use bearwell_engine::layout::{BeamEdges, LayoutBeam, Outcome, PlanPoint, Request};
use bearwell_engine::quantity::Length;

use crate::plan::shape::shares;
use crate::svg::Rect;

/// The window: west, south, east and north edge, m.
pub type Window = [f64; 4];

/// What of an answer lies in a window.
pub fn outcome(whole: &Outcome, window: Window) -> Outcome {
    let inside = |p: &PlanPoint| {
        let (x, y) = (p.x.si(), p.y.si());
        window[0] <= x && x <= window[2] && window[1] <= y && y <= window[3]
    };
    let piles: Vec<_> = whole
        .piles
        .iter()
        .filter(|p| inside(&p.at))
        .cloned()
        .collect();
    let beams = whole.beams.iter().flat_map(|b| pieces(b, window)).collect();
    // piles of the part are no nearer to each other than those of the whole
    let mut part = whole.clone();
    part.piles = piles.into();
    part.beams = beams;
    part.outlines = None;
    part.joined_ends = None;
    part.slabs = None;
    part
}

/// The request beside such a part: what is told along whole beams is left out.
pub fn request(whole: &Request) -> Request {
    let mut part = whole.clone();
    part.outlines = None;
    part.slabs = None;
    for beam in &mut part.beams {
        beam.openings = None;
    }
    part
}

/// The pieces of a beam in a window.
fn pieces(beam: &LayoutBeam, window: Window) -> Vec<LayoutBeam> {
    let edges: Vec<BeamEdges> = beam
        .edges
        .iter()
        .flatten()
        .flat_map(|e| strips(e, window))
        .collect();
    runs(&beam.points, window)
        .into_iter()
        .map(|points| LayoutBeam {
            points,
            edges: beam.edges.is_some().then(|| edges.clone()),
            ..beam.clone()
        })
        .collect()
}

/// The parts of a line of points in a window.
fn runs(points: &[PlanPoint], window: Window) -> Vec<Vec<PlanPoint>> {
    let mut all: Vec<Vec<PlanPoint>> = Vec::new();
    let mut open = false;
    for pair in points.windows(2) {
        let Some((enter, leave)) = cut(&pair[0], &pair[1], window) else {
            open = false;
            continue;
        };
        let to = between(&pair[0], &pair[1], leave);
        match all.last_mut() {
            Some(run) if open && enter == 0.0 => run.push(to),
            _ => all.push(vec![between(&pair[0], &pair[1], enter), to]),
        }
        open = leave == 1.0;
    }
    all.retain(|run| run.windows(2).any(|p| p[0] != p[1]));
    all
}

/// The edges of a beam between its points, each straight piece cut alike on both sides.
fn strips(edges: &BeamEdges, window: Window) -> Vec<BeamEdges> {
    let sides = edges.left.windows(2).zip(edges.right.windows(2));
    sides
        .filter_map(|(l, r)| {
            let (enter, leave) = match (cut(&l[0], &l[1], window), cut(&r[0], &r[1], window)) {
                (Some(a), Some(b)) => (a.0.min(b.0), a.1.max(b.1)),
                (Some(a), None) | (None, Some(a)) => a,
                (None, None) => return None,
            };
            let part = |side: &[PlanPoint]| {
                vec![
                    between(&side[0], &side[1], enter),
                    between(&side[0], &side[1], leave),
                ]
            };
            Some(BeamEdges {
                left: part(l),
                right: part(r),
            })
        })
        .collect()
}

/// The shares of a straight line at which it enters and leaves a window.
fn cut(from: &PlanPoint, to: &PlanPoint, window: Window) -> Option<(f64, f64)> {
    let field = Rect {
        x: window[0],
        y: window[1],
        w: window[2] - window[0],
        h: window[3] - window[1],
    };
    let at = |p: &PlanPoint| (p.x.si(), p.y.si());
    shares(field, (at(from), at(to)))
}

fn between(from: &PlanPoint, to: &PlanPoint, t: f64) -> PlanPoint {
    if t == 0.0 {
        return *from;
    }
    if t == 1.0 {
        return *to;
    }
    let mix = |a: Length, b: Length| Length::from_si(a.si() + t * (b.si() - a.si()));
    PlanPoint {
        x: mix(from.x, to.x),
        y: mix(from.y, to.y),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(x: f64, y: f64) -> PlanPoint {
        PlanPoint {
            x: Length::from_si(x),
            y: Length::from_si(y),
        }
    }

    #[test]
    fn a_line_is_cut_where_it_leaves_the_window() {
        let corner = [at(-5.0, 0.0), at(0.0, 0.0), at(0.0, 8.0)];
        let found = runs(&corner, [-2.0, -1.0, 3.0, 4.0]);
        assert_eq!(found, [vec![at(-2.0, 0.0), at(0.0, 0.0), at(0.0, 4.0)]]);
        // out of it and back in again: two pieces
        let bow = [at(0.0, 0.0), at(0.0, 9.0), at(2.0, 9.0), at(2.0, 0.0)];
        let found = runs(&bow, [-1.0, -1.0, 3.0, 4.0]);
        assert_eq!(
            found,
            [
                vec![at(0.0, 0.0), at(0.0, 4.0)],
                vec![at(2.0, 4.0), at(2.0, 0.0)]
            ]
        );
        assert!(runs(&bow, [5.0, 5.0, 6.0, 6.0]).is_empty());
    }

    #[test]
    fn both_edges_of_a_beam_are_cut_alike() {
        let edges = BeamEdges {
            left: vec![at(-5.0, 0.2), at(5.0, 0.2)],
            right: vec![at(-5.0, -0.2), at(5.0, -0.2)],
        };
        // the right edge lies outside of the window
        let found = strips(&edges, [-1.0, 0.0, 1.0, 1.0]);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].left, [at(-1.0, 0.2), at(1.0, 0.2)]);
        assert_eq!(found[0].right, [at(-1.0, -0.2), at(1.0, -0.2)]);
    }
}
