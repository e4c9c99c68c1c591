//! Equations of what a void form passes on to beam and pile, one function each.

use crate::quantity::{AreaLoad, Force, Length, LineLoad};
use crate::source::DERIVED;
use crate::trace::Trace;

/// Load of a form along the beam while it is crushed.
///
/// w_v = p_c b; p_c crush pressure (Pa), b width of the beam (m); N/m. Range: p_c from 0.
/// Source: statics. Upward positive.
pub fn crush_line_load(pressure: AreaLoad, width: Length, trace: &mut Trace) -> LineLoad {
    trace.step(
        "w_v",
        "p_c b",
        LineLoad::from_si(pressure.si() * width.si()),
        [("p_c", pressure.into()), ("b", width.into())],
        &DERIVED,
    )
}

/// Tension that a form puts on one pile while it is crushed.
///
/// T_v = w_v L; w_v load along the beam (N/m), L tributary length (m); N. Range: both from 0.
/// Source: statics of a beam on its tributary length. Tension positive.
pub fn crush_tension(line_load: LineLoad, tributary: Length, trace: &mut Trace) -> Force {
    trace.step(
        "T_v",
        "w_v L",
        Force::from_si(line_load.si() * tributary.si()),
        [("w_v", line_load.into()), ("L", tributary.into())],
        &DERIVED,
    )
}
