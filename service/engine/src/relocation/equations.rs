//! The equations of a pile off its line, as an answer shows them.

use crate::math;
use crate::quantity::{
    FlexuralRigidity, Force, Length, Moment, Pressure, RotationalStiffness, Size,
};
use crate::source::{HEAD_ROTATION, STATICS_CLOSURE, UNIFORM_TORSION};
use crate::trace::Trace;

/// Moment of a pile off its line about the axis of the beam.
///
/// M = R |e|; R greatest compression of the pile (N), e its distance off the line (m); not
/// negative. Source: statics.
pub(super) fn eccentric_moment(reaction: Force, off: Size, trace: &mut Trace) -> Moment {
    trace.step(
        "M",
        "R |e|",
        Moment::from_si(reaction.si() * off.si().abs()),
        [("R", reaction.into()), ("e", off.into())],
        &STATICS_CLOSURE,
    )
}

/// Length over which a shaft and the ground share a movement.
///
/// R = (E I/k)^(1/4); E I flexural rigidity of the shaft (N m2), k force of the ground on a unit
/// length for a unit of movement (Pa), both above 0; positive. Source: beam on an elastic
/// foundation.
pub(super) fn relative_length(
    rigidity: FlexuralRigidity,
    subgrade: Pressure,
    trace: &mut Trace,
) -> Length {
    trace.step(
        "R_rel",
        "(E I/k)^(1/4)",
        Length::from_si(math::pow(rigidity.si() / subgrade.si(), 0.25)),
        [("E I", rigidity.into()), ("k", subgrade.into())],
        &HEAD_ROTATION,
    )
}

/// Moment on the head of a long shaft for a unit of its rotation, where the head does not move
/// sideways.
///
/// k_p = sqrt(2) E I/R_rel; E I flexural rigidity of the shaft (N m2), R_rel relative length (m);
/// the shaft longer than about 4 R_rel; positive. Source: beam on an elastic foundation.
pub(super) fn head_stiffness(
    rigidity: FlexuralRigidity,
    length: Length,
    trace: &mut Trace,
) -> RotationalStiffness {
    trace.step(
        "k_p",
        "sqrt(2) E I/R_rel",
        RotationalStiffness::from_si(std::f64::consts::SQRT_2 * rigidity.si() / length.si()),
        [("E I", rigidity.into()), ("R_rel", length.into())],
        &HEAD_ROTATION,
    )
}

/// Torque of a beam for a unit of its rotation at a pile, held by the next piles.
///
/// k_b = sum over sides of 1/(sum of l/(G J)); l lengths of the beams from the pile to the next
/// one (m), G J their torsional rigidity (N m2); positive. Source: uniform torsion.
pub(super) fn beam_stiffness(sides: &[f64], trace: &mut Trace) -> RotationalStiffness {
    trace.step(
        "k_b",
        "sum over sides of 1/(sum of l/(G J))",
        RotationalStiffness::from_si(sides.iter().sum()),
        [("n_sides", (sides.len() as f64).into())],
        &UNIFORM_TORSION,
    )
}

/// What the head of the pile takes of the moment.
///
/// M_p = M k_p/(k_p + k_b); M moment (N m), k_p stiffness of the head, k_b of the beam (N m/rad),
/// k_p above 0; not negative. Source: one rotation for both.
pub(super) fn pile_share(
    moment: Moment,
    pile: RotationalStiffness,
    beam: RotationalStiffness,
    trace: &mut Trace,
) -> Moment {
    trace.step(
        "M_p",
        "M k_p/(k_p + k_b)",
        moment * (pile.si() / (pile.si() + beam.si())),
        [
            ("M", moment.into()),
            ("k_p", pile.into()),
            ("k_b", beam.into()),
        ],
        &STATICS_CLOSURE,
    )
}

/// Distance from the edge of a head plate to the form.
///
/// c = b/2 - |e| - w/2; b width of the beam, e offset of the pile, w width of the plate (m);
/// negative where the plate stands out of the form. Source: geometry.
pub(super) fn plate_to_form(width: Size, off: Size, plate: Size, trace: &mut Trace) -> Size {
    trace.step(
        "c",
        "b/2 - |e| - w/2",
        Size::from_si(0.5 * width.si() - off.si().abs() - 0.5 * plate.si()),
        [("b", width.into()), ("e", off.into()), ("w", plate.into())],
        &STATICS_CLOSURE,
    )
}
