//! The equations of form lines and openings that an answer shows as steps.

use crate::quantity::{Force, Length};
use crate::source::{FORM_LINE_GEOMETRY, HEADER_STATICS};
use crate::trace::Trace;

/// Length of the centre line of a side.
///
/// L_c = L_f - a - b; L_f length along the form line (m), a and b how far the corners of the
/// centre line lie within those of the form line, along the side (m), each
/// (d_o - d cos t)/sin t with d the inset of this side and d_o that of the next (m), t the turn
/// towards the inside; d tan(t/2) where both are alike; negative at a re-entrant corner, 0 at an
/// open end. L_c above 3 mm. Source: geometry.
pub(super) fn centre_length(form: Length, a: Length, b: Length, trace: &mut Trace) -> Length {
    trace.step(
        "L_c",
        "L_f - a - b",
        form - a - b,
        [("L_f", form.into()), ("a", a.into()), ("b", b.into())],
        &FORM_LINE_GEOMETRY,
    )
}

/// What a header brings to its two jambs.
///
/// R_to = F e/l, R_from = F - R_to; F load over the opening (N, downwards positive), F e its
/// moment about the jamb where the opening begins (N m), l width of the opening (m), l > 0.
/// Source: statics of the simple beam.
pub(in crate::layout) fn jamb_loads(
    force: Force,
    arm: Length,
    width: Length,
    trace: &mut Trace,
) -> (Force, Force) {
    let to = trace.step(
        "R_to",
        "F e/l",
        force * (arm / width),
        [("F", force.into()), ("e", arm.into()), ("l", width.into())],
        &HEADER_STATICS,
    );
    let from = trace.step(
        "R_from",
        "F - R_to",
        force - to,
        [("F", force.into()), ("R_to", to.into())],
        &HEADER_STATICS,
    );
    (from, to)
}
