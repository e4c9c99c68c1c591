//! Openings: where they may lie, which parts of a beam they leave, and what becomes of the
//! loads over them.

use super::equations::jamb_loads;
use crate::contract::Issue;
use crate::layout::codes::refusals;
use crate::layout::plan::{Point, TOLERANCE, point_distance};
use crate::layout::request::{BeamLineLoad, BeamOpening, GradeBeam, OpeningKind};
use crate::quantity::{Force, Length, in_both_systems};
use crate::trace::Trace;

/// Places that differ by less than this are equal (rounding of units), m.
const SAME: f64 = 1e-9;

/// A line load as it acts: where it goes on, and what headers bring to the jambs.
#[derive(Debug, Clone, PartialEq, Default)]
pub(in crate::layout) struct Acting {
    /// Parts along the beam, ascending.
    pub ranges: Vec<(f64, f64)>,
    /// Loads of jambs.
    pub jambs: Vec<Jamb>,
}

/// What a header brings to one jamb.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::layout) struct Jamb {
    /// Place along the beam.
    pub at: f64,
    /// The force, N, downwards positive.
    pub force: f64,
    /// The opening begins here, so the part of the beam before it carries the jamb.
    pub before: bool,
}

/// Faults of the openings of a beam, and loads over places without a beam.
pub(super) fn check(b: usize, beam: &GradeBeam, issues: &mut Vec<Issue>) {
    let Some(openings) = beam.openings.as_deref().filter(|o| !o.is_empty()) else {
        return;
    };
    let points: Vec<Point> = beam.points.iter().map(Point::of).collect();
    let length = places(&points).last().copied().unwrap_or(0.0);
    let before = issues.len();
    for (i, opening) in openings.iter().enumerate() {
        off_beam(b, i, opening, &points, length, issues);
    }
    let mut sorted: Vec<usize> = (0..openings.len()).collect();
    sorted.sort_by(|i, j| openings[*i].from.si().total_cmp(&openings[*j].from.si()));
    for pair in sorted.windows(2) {
        let (one, other) = (&openings[pair[0]], &openings[pair[1]]);
        let room = other.from.si() - one.to.si();
        let both = one.kind == OpeningKind::NoBeam && other.kind == OpeningKind::NoBeam;
        if room < -SAME || (both && room <= TOLERANCE) {
            issues.push(
                Issue::new(
                    format!("/beams/{b}/openings/{}", pair[1]),
                    &refusals::OPENINGS_OVERLAP,
                    format!(
                        "it begins {} after the end of number {} of the list",
                        in_both_systems(room, "m"),
                        pair[0]
                    ),
                )
                .limit(if both {
                    format!("more than {}", in_both_systems(TOLERANCE, "m"))
                } else {
                    "0 or more".to_owned()
                }),
            );
        }
    }
    if issues.len() == before {
        for (i, load) in beam.line_loads.iter().flatten().enumerate() {
            over_nothing(b, i, load, openings, length, issues);
        }
    }
}

fn off_beam(
    b: usize,
    i: usize,
    opening: &BeamOpening,
    points: &[Point],
    length: f64,
    issues: &mut Vec<Issue>,
) {
    let (from, to) = (opening.from.si(), opening.to.si());
    let pointer = format!("/beams/{b}/openings/{i}");
    let mut fault = |detail: String, limit: String| {
        issues.push(Issue::new(pointer.clone(), &refusals::OPENING_OFF_BEAM, detail).limit(limit));
    };
    let stated = format!(
        "from {} to {}",
        in_both_systems(from, "m"),
        in_both_systems(to, "m")
    );
    if to > length + TOLERANCE || from >= to - SAME {
        fault(stated, format!("0 to {}", in_both_systems(length, "m")));
        return;
    }
    let ends = from <= TOLERANCE || to >= length - TOLERANCE;
    if opening.kind == OpeningKind::NoBeam && ends {
        fault(
            format!("{stated}: no beam would be left on one side of it"),
            format!(
                "more than {} inside 0 to {}",
                in_both_systems(TOLERANCE, "m"),
                in_both_systems(length, "m")
            ),
        );
        return;
    }
    let (a, d) = (point_at(points, from), point_at(points, to));
    for (j, at) in places(points).iter().enumerate() {
        if *at > from + SAME && *at < to - SAME && point_distance(points[j], a, d) > TOLERANCE {
            fault(
                format!(
                    "{stated}: a corner of the beam, point {j}, lies {} along it",
                    in_both_systems(*at, "m")
                ),
                "between two corners".to_owned(),
            );
            return;
        }
    }
}

fn over_nothing(
    b: usize,
    i: usize,
    load: &BeamLineLoad,
    openings: &[BeamOpening],
    length: f64,
    issues: &mut Vec<Issue>,
) {
    if load.follows_beam == Some(true) {
        return;
    }
    let (from, to) = (
        load.from.map_or(0.0, |v| v.si()),
        load.to.map_or(length, |v| v.si()),
    );
    for (o, opening) in openings.iter().enumerate() {
        let over = to.min(opening.to.si()) - from.max(opening.from.si());
        if opening.kind == OpeningKind::NoBeam && !carried(load, opening) && over > SAME {
            issues.push(Issue::new(
                format!("/beams/{b}/line_loads/{i}"),
                &refusals::LOAD_OVER_NO_BEAM,
                format!(
                    "over {} of opening {o}, from {} to {}: end it there, let a header carry its kind (`kinds` of the opening), or say `follows_beam`",
                    in_both_systems(over, "m"),
                    in_both_systems(opening.from.si(), "m"),
                    in_both_systems(opening.to.si(), "m"),
                ),
            ));
        }
    }
}

/// Whether a header over this opening carries the load.
fn carried(load: &BeamLineLoad, opening: &BeamOpening) -> bool {
    if load.follows_beam == Some(true) {
        return false;
    }
    match (&opening.kinds, opening.kind) {
        (Some(kinds), _) => kinds.contains(&load.kind),
        (None, OpeningKind::LoadFree) => true,
        (None, OpeningKind::NoBeam) => false,
    }
}

/// How a line load from one place of its beam to another acts; `q` is the load at a place.
pub(in crate::layout) fn acting(
    beam: &GradeBeam,
    load: &BeamLineLoad,
    (from, to): (f64, f64),
    q: impl Fn(f64) -> f64,
    trace: &mut Trace,
) -> Acting {
    let mut openings: Vec<&BeamOpening> = beam.openings.iter().flatten().collect();
    openings.sort_by(|a, b| a.from.si().total_cmp(&b.from.si()));
    let mut out = Acting::default();
    let mut here = from;
    for opening in openings {
        let (a, b) = (opening.from.si(), opening.to.si());
        let (s, t) = (from.max(a), to.min(b));
        let by_header = carried(load, opening);
        if t - s <= SAME || !(by_header || opening.kind == OpeningKind::NoBeam) {
            continue;
        }
        if s - here > SAME {
            out.ranges.push((here, s));
        }
        here = t;
        if by_header {
            let (q0, q1, l) = (q(s), q(t), t - s);
            let force = 0.5 * (q0 + q1) * l;
            // moment about the jamb where the opening begins
            let moment = force * (s - a) + l * l * (q0 + 2.0 * q1) / 6.0;
            let (first, last) = if force == 0.0 {
                (-moment / (b - a), moment / (b - a))
            } else {
                let (arm, width) = (Length::from_si(moment / force), Length::from_si(b - a));
                let (first, last) = jamb_loads(Force::from_si(force), arm, width, trace);
                (first.si(), last.si())
            };
            for (at, force, before) in [(a, first, true), (b, last, false)] {
                out.jambs.push(Jamb { at, force, before });
            }
        }
    }
    if to - here > SAME {
        out.ranges.push((here, to));
    }
    out
}

/// Places along a beam where there is none, ascending.
pub(in crate::layout) fn gaps(beam: &GradeBeam) -> Vec<(f64, f64)> {
    let mut found: Vec<(f64, f64)> = beam
        .openings
        .iter()
        .flatten()
        .filter(|o| o.kind == OpeningKind::NoBeam)
        .map(|o| (o.from.si(), o.to.si()))
        .collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    found
}

/// Place of every point along its line.
pub(in crate::layout) fn places(points: &[Point]) -> Vec<f64> {
    let mut out = vec![0.0];
    for pair in points.windows(2) {
        out.push(out[out.len() - 1] + pair[0].distance(pair[1]));
    }
    out
}

/// The point at a place along a line.
pub(in crate::layout) fn point_at(points: &[Point], at: f64) -> Point {
    let along = places(points);
    let i = along
        .partition_point(|p| *p <= at)
        .clamp(1, points.len() - 1);
    let share = (at - along[i - 1]) / (along[i] - along[i - 1]);
    points[i - 1].along(points[i - 1].to(points[i]), share)
}
