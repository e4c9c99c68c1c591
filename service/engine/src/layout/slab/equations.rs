//! The equations of slabs that an answer shows as steps.

use crate::quantity::{Area, AreaLoad, Force};
use crate::source::{DERIVED, SLAB_TRIBUTARY, STATICS_CLOSURE};
use crate::trace::Trace;

/// Area of a slab.
///
/// A = 1/2 |sum(x_i y_(i+1) - x_(i+1) y_i)|; x, y of its corners in order (m). Range: a
/// polygon that does not cross itself. Source: geometry. Sign: none.
pub(super) fn slab_area(area: f64, corners: usize, trace: &mut Trace) -> Area {
    trace.step(
        "A",
        "1/2 |sum(x_i y_(i+1) - x_(i+1) y_i)|",
        Area::from_si(area),
        [("n_corners", (corners as f64).into())],
        &DERIVED,
    )
}

/// Area of a slab that goes to a beam.
///
/// A_b = integral of w ds; w width that goes to the beam at s along it (m): to the nearest
/// edge, or half a strip. Range: any. Source: geometry of the partition. Sign: none.
pub(super) fn area_on_beam(area: f64, whole: Area, trace: &mut Trace) -> Area {
    trace.step(
        "A_b",
        "integral of w ds",
        Area::from_si(area),
        [("A", whole.into())],
        &SLAB_TRIBUTARY,
    )
}

/// Load of a slab on an area.
///
/// W = q A; q load on the area (Pa), A area (m2). Range: any. Source: statics. Sign:
/// downwards positive.
pub(super) fn load_on_area(load: AreaLoad, area: Area, trace: &mut Trace) -> Force {
    trace.step(
        "W",
        "q A",
        Force::from_si(load.si() * area.si()),
        [("q", load.into()), ("A", area.into())],
        &STATICS_CLOSURE,
    )
}
