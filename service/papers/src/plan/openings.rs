//! Where openings lie along the beams of an answer. They are sent along a beam or along a
//! side of a form line; on the sheet they stand along the centre line.

use std::collections::BTreeMap;

use bearwell_engine::layout::{
    BeamOpening, OpeningKind, Outcome, OutlineLength, PlanPoint, Request, WhichEnd,
};
use bearwell_engine::math;

/// An opening along the centre line of a beam, m from its first point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Opening {
    /// Where it begins.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// Whether there is no beam.
    pub no_beam: bool,
}

/// The openings by the label of their beam, in order along it.
pub fn by_beam(request: &Request, outcome: &Outcome) -> BTreeMap<String, Vec<Opening>> {
    let mut all: BTreeMap<String, Vec<Opening>> = BTreeMap::new();
    let mut put = |beam: &str, sent: &[BeamOpening], offset: f64| {
        let joined = outcome
            .joined_ends
            .iter()
            .flatten()
            .find(|j| j.beam == beam && j.end == WhichEnd::First);
        let by = offset + joined.map_or(0.0, |j| j.longer_by.si());
        let mut found: Vec<Opening> = sent
            .iter()
            .map(|o| Opening {
                from: o.from.si() + by,
                to: o.to.si() + by,
                no_beam: o.kind == OpeningKind::NoBeam,
            })
            .collect();
        found.sort_by(|a, b| a.from.total_cmp(&b.from));
        if !found.is_empty() {
            all.insert(beam.to_owned(), found);
        }
    };
    for (sent, found) in request.beams.iter().zip(&outcome.beams) {
        put(&found.label, sent.openings.as_deref().unwrap_or(&[]), 0.0);
    }
    let outlines = request.outlines.iter().flatten();
    for (sent, found) in outlines.zip(outcome.outlines.iter().flatten()) {
        for side in sent.sides.iter().flatten() {
            let Some(at) = found.sides.get((side.side as usize).wrapping_sub(1)) else {
                continue;
            };
            let form = side.measured_along == Some(OutlineLength::FormLine);
            let offset = if form { -at.centre_from.si() } else { 0.0 };
            put(&at.beam, side.openings.as_deref().unwrap_or(&[]), offset);
        }
    }
    all
}

/// The part of a line between two places along it; none where it has no length.
pub fn part(points: &[PlanPoint], from: f64, to: f64) -> Vec<PlanPoint> {
    let mut out: Vec<PlanPoint> = Vec::new();
    let mut along = 0.0;
    for pair in points.windows(2) {
        let (dx, dy) = ((pair[1].x - pair[0].x), (pair[1].y - pair[0].y));
        let long = math::hypot(dx.si(), dy.si());
        let (start, end) = (from.max(along), to.min(along + long));
        if end > start && long > 0.0 {
            let at = |s: f64| PlanPoint {
                x: pair[0].x + dx * ((s - along) / long),
                y: pair[0].y + dy * ((s - along) / long),
            };
            if out.is_empty() {
                out.push(at(start));
            }
            out.push(at(end));
        }
        along += long;
    }
    out
}

/// The parts of a line between gaps.
pub fn between(points: &[PlanPoint], gaps: &[Opening]) -> Vec<Vec<PlanPoint>> {
    let mut parts = Vec::new();
    let mut from = 0.0;
    for gap in gaps.iter().filter(|g| g.no_beam) {
        parts.push(part(points, from, gap.from));
        from = gap.to;
    }
    parts.push(part(points, from, f64::MAX));
    parts.retain(|p| p.len() > 1);
    parts
}

#[cfg(test)]
mod tests {
    use super::*;
    use bearwell_engine::quantity::Length;

    #[test]
    fn a_line_is_cut_at_its_gaps() {
        let at = |x: f64, y: f64| PlanPoint {
            x: Length::from_si(x),
            y: Length::from_si(y),
        };
        let line = [at(0.0, 0.0), at(4.0, 0.0), at(4.0, 3.0)];
        let gap = |from, to, no_beam| Opening { from, to, no_beam };
        let parts = between(&line, &[gap(1.0, 2.0, true), gap(3.0, 3.5, false)]);
        assert_eq!(parts.len(), 2);
        assert_eq!(parts[0], vec![at(0.0, 0.0), at(1.0, 0.0)]);
        assert_eq!(parts[1], vec![at(2.0, 0.0), at(4.0, 0.0), at(4.0, 3.0)]);
        assert_eq!(between(&line, &[gap(0.0, 7.0, true)]).len(), 0);
        assert_eq!(part(&line, 3.0, 5.0).len(), 3);
    }
}
