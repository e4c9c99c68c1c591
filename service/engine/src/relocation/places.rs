//! Where a pile comes to when it moves along a beam.

use crate::layout::PlanPoint;
use crate::layout::bench::{Along, Bench};
use crate::quantity::{Length, LengthUnit, round9};

/// The point that a place along a beam comes to; a ring goes on over its first point.
pub(super) fn shifted(bench: &Bench<'_>, from: Along, by: f64) -> Option<PlanPoint> {
    let length = bench.beam_length(from.beam);
    let end = |at: f64| bench.point_along(Along { at, ..from }).map(|p| p.0);
    let ring = match (end(0.0), end(length)) {
        (Some(a), Some(b)) => (a.x - b.x).si().abs() <= 0.003 && (a.y - b.y).si().abs() <= 0.003,
        _ => false,
    };
    let mut at = from.at + by;
    if ring && at < 0.0 {
        at += length;
    } else if ring && at > length {
        at -= length;
    }
    end(at).map(|p| PlanPoint {
        x: tidy(p.x),
        y: tidy(p.y),
    })
}

/// A length without the dust of its calculation: the number with the fewest digits, in m or ft,
/// within a nanometre.
pub(super) fn tidy(length: Length) -> Length {
    let digits = |v: f64| {
        format!("{:e}", v.abs())
            .split('e')
            .next()
            .map_or(0, str::len)
    };
    let mut best: Option<(usize, Length)> = None;
    for unit in [LengthUnit::M, LengthUnit::Ft, LengthUnit::In] {
        let shown = round9(length.get(unit));
        let clean = Length::new(shown, unit);
        let near = (clean - length).si().abs() <= 1e-9;
        if near && best.is_none_or(|(count, _)| digits(shown) < count) {
            best = Some((digits(shown), clean));
        }
    }
    best.map_or(length, |(_, clean)| clean)
}
