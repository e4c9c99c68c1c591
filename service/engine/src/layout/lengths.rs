//! Lengths of the lists that make a plan: beams, outlines, points, loads, openings.

use super::request::{BeamOpening, LoadKind, Outline, Request};
use super::slab;
use crate::catalogue::refusals::LIST_TOO_LONG;
use crate::contract::{Issue, list_length};
use crate::limits::{BEAM_POINTS, BEAMS, LOADS, OPENINGS, OUTLINES, PLAN_POINTS};

/// Kinds of load that there are.
const KINDS: usize = LoadKind::Other as usize + 1;

/// Lists of the plan that are too short or too long.
pub(super) fn plan_lengths(request: &Request, issues: &mut Vec<Issue>) {
    let outlines = request.outlines.as_deref().unwrap_or_default();
    list_length(issues, "/outlines", outlines.len(), 0, OUTLINES);
    let least = usize::from(outlines.is_empty());
    list_length(issues, "/beams", request.beams.len(), least, BEAMS);
    for (b, beam) in request.beams.iter().enumerate() {
        let pointer = format!("/beams/{b}/points");
        list_length(issues, pointer, beam.points.len(), 2, BEAM_POINTS);
        openings(&format!("/beams/{b}"), beam.openings.as_deref(), issues);
    }
    for (o, outline) in outlines.iter().enumerate() {
        let path = format!("/outlines/{o}");
        let points = outline.points.len();
        list_length(issues, format!("{path}/points"), points, 2, BEAM_POINTS);
        let listed = outline.sides.as_ref().map_or(0, Vec::len);
        list_length(issues, format!("{path}/sides"), listed, 0, BEAM_POINTS);
        for (s, side) in outline.sides.iter().flatten().enumerate() {
            openings(
                &format!("{path}/sides/{s}"),
                side.openings.as_deref(),
                issues,
            );
        }
    }
    let sides: usize = outlines.iter().map(sides).sum();
    let beams = request.beams.iter();
    let points = beams.map(|b| b.points.len()).sum::<usize>()
        + outlines.iter().map(|o| o.points.len()).sum::<usize>();
    let loads = request
        .beams
        .iter()
        .map(|b| b.line_loads.as_ref().map_or(0, Vec::len))
        .sum::<usize>()
        + outlines.iter().map(loads).sum::<usize>()
        + request.point_loads.as_ref().map_or(0, Vec::len)
        + request.point_moments.as_ref().map_or(0, Vec::len)
        + slab::lengths(request, issues);
    let beams = request.beams.len() + sides;
    for (what, count, max) in [
        ("beams and sides of outlines", beams, BEAMS),
        ("points", points, PLAN_POINTS),
        ("loads", loads, LOADS),
    ] {
        // a list that is too long by itself is filed there
        if count > max && request.beams.len() <= BEAMS {
            issues.push(
                Issue::new(
                    "",
                    &LIST_TOO_LONG,
                    format!("{count} {what} in all, at most {max} accepted"),
                )
                .limit(max.to_string()),
            );
        }
    }
}

fn sides(outline: &Outline) -> usize {
    outline.points.len().saturating_sub(1)
}

/// Loads along the sides of an outline: its own on every side, or those of the side.
fn loads(outline: &Outline) -> usize {
    let shared = outline.line_loads.as_ref().map_or(0, Vec::len);
    let own = outline.sides.iter().flatten();
    shared * sides(outline)
        + own
            .map(|s| s.line_loads.as_ref().map_or(0, Vec::len))
            .sum::<usize>()
}

fn openings(path: &str, list: Option<&[BeamOpening]>, issues: &mut Vec<Issue>) {
    let list = list.unwrap_or_default();
    list_length(issues, format!("{path}/openings"), list.len(), 0, OPENINGS);
    for (i, opening) in list.iter().enumerate() {
        if let Some(kinds) = &opening.kinds {
            let pointer = format!("{path}/openings/{i}/kinds");
            list_length(issues, pointer, kinds.len(), 1, KINDS);
        }
    }
}
