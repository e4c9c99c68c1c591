//! String lines along the straight runs of beam: where each pile lies along them, and the
//! second line beside them.

use super::{Stakes, TapeText};
use crate::contract::{Refusal, Work};
use crate::layout::outcome::{LineEnd, LineSide, OffsetLine, StringLine, StringPile};
use crate::layout::plan::{Point, Run, TOLERANCE};
use crate::quantity::Length;
use crate::tape;

/// A distance for the tape.
pub(super) fn taped(length: Length, how: TapeText) -> String {
    match how {
        TapeText::FeetInches => tape::feet_inches(length),
        TapeText::Millimetres => tape::millimetres(length),
    }
}

/// A string line for each run.
pub(super) fn lines(
    stakes: &Stakes<'_>,
    offset: Option<Length>,
    work: &Work,
) -> Result<Vec<StringLine>, Refusal> {
    let runs = &stakes.plan.runs;
    (0..runs.len())
        .map(|r| {
            work.go_on()?;
            let run = &runs[r];
            let length = Length::from_si(run.length);
            Ok(StringLine {
                beams: stakes.beams_of(r),
                from: stakes.end(r, 0.0),
                to: stakes.end(r, run.length),
                length,
                length_text: stakes.taped(length),
                faces: stakes.faces(r),
                offset: offset.map(|o| beside(stakes, r, o)),
                piles: along(stakes, r),
            })
        })
        .collect()
}

fn along(stakes: &Stakes<'_>, run: usize) -> Vec<StringPile> {
    let mut previous: Option<f64> = None;
    let own = stakes.along[run].iter();
    own.map(|(at, pile)| {
        let from_start = Length::from_si(*at);
        let gap = previous.map(|p| Length::from_si(at - p));
        previous = Some(*at);
        StringPile {
            label: stakes.piles[*pile].label.clone(),
            from_start,
            from_start_text: stakes.taped(from_start),
            from_previous: gap,
            from_previous_text: gap.map(|g| stakes.taped(g)),
        }
    })
    .collect()
}

/// The line beside a run, on the side on which no other beam stands.
fn beside(stakes: &Stakes<'_>, run: usize, offset: Length) -> OffsetLine {
    let r = &stakes.plan.runs[run];
    let left = Point {
        x: -r.direction.y,
        y: r.direction.x,
    };
    let right = Point {
        x: r.direction.y,
        y: -r.direction.x,
    };
    let middle = r.point(0.5 * r.length);
    let free = |way: Point| {
        !stakes
            .plan
            .runs
            .iter()
            .any(|other| beyond(middle, way, other))
    };
    let (side, way, outside) = match (free(left), free(right)) {
        (false, true) => (LineSide::Right, right, true),
        (left_free, _) => (LineSide::Left, left, left_free),
    };
    let end = |at: f64| LineEnd {
        pile: None,
        ..stakes.place(r.point(at).along(way, offset.si()))
    };
    OffsetLine {
        side,
        outside,
        distance: offset,
        distance_text: stakes.taped(offset),
        from: end(0.0),
        to: end(r.length),
    }
}

/// Whether a run is met by the ray from a point, away from the point itself.
fn beyond(from: Point, way: Point, run: &Run) -> bool {
    let turn = way.cross(run.direction);
    let to = from.to(run.start);
    if turn == 0.0 {
        return to.cross(way).abs() <= TOLERANCE && to.dot(way) > TOLERANCE;
    }
    let ahead = to.cross(run.direction) / turn;
    let at = to.cross(way) / turn;
    ahead > TOLERANCE && at >= -TOLERANCE && at <= run.length + TOLERANCE
}
