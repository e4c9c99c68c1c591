//! Equations of uplift by swelling soil, one function each. They judge nothing; what they
//! mean for a pile is in `swell`, `combined` and `underside`.

use crate::quantity::{Force, Length, Size, SoilStress};
use crate::source::{BURKE_2022, DERIVED, Reference};
use crate::trace::Trace;

/// Adhesion as a share of the swell pressure.
///
/// f = alpha sigma_s; alpha share (1), sigma_s swell pressure at constant volume (Pa). Range:
/// alpha 0 to 1. Source: the method's own. Never negative.
pub fn adhesion_share(
    alpha: f64,
    pressure: SoilStress,
    source: &'static Reference,
    trace: &mut Trace,
) -> SoilStress {
    trace.step(
        "f",
        "alpha sigma_s",
        pressure * alpha,
        [("alpha", alpha.into()), ("sigma_s", pressure.into())],
        source,
    )
}

/// The same, at most the undrained strength.
///
/// f = min(alpha sigma_s, s_u); alpha share (1), sigma_s swell pressure (Pa), s_u undrained
/// strength of the wetted soil (Pa). Range: alpha 0 to 1. Source: the method's own. Never
/// negative.
pub fn adhesion_share_capped(
    alpha: f64,
    pressure: SoilStress,
    strength: SoilStress,
    source: &'static Reference,
    trace: &mut Trace,
) -> SoilStress {
    trace.step(
        "f",
        "min(alpha sigma_s, s_u)",
        (pressure * alpha).min(strength),
        [
            ("alpha", alpha.into()),
            ("sigma_s", pressure.into()),
            ("s_u", strength.into()),
        ],
        source,
    )
}

/// Adhesion by undrained strength.
///
/// f = a s_u; a adhesion factor (1), s_u undrained strength of the wetted soil (Pa). Range: a
/// 0 to 1. Source: da Silva Burke et al. 2022, the limiting branch. Never negative.
pub fn adhesion_by_strength(factor: f64, strength: SoilStress, trace: &mut Trace) -> SoilStress {
    trace.step(
        "f",
        "a s_u",
        strength * factor,
        [("a", factor.into()), ("s_u", strength.into())],
        &BURKE_2022,
    )
}

/// Length of shaft in soil that swells.
///
/// h = max(min(z_a, z_t) - z_c, 0); z_a active depth (m), z_t depth of the tip (m), z_c depth
/// from which the shaft touches soil (m). Range: any. Source: geometry. Never negative.
pub fn swelling_length(
    active: Length,
    tip: Length,
    contact_top: Length,
    trace: &mut Trace,
) -> Length {
    trace.step(
        "h",
        "max(min(z_a, z_t) - z_c, 0)",
        (active.min(tip) - contact_top).max(Length::ZERO),
        [
            ("z_a", active.into()),
            ("z_t", tip.into()),
            ("z_c", contact_top.into()),
        ],
        &DERIVED,
    )
}

/// Uplift on the shaft by swelling soil.
///
/// U_s = f p h; f adhesion (Pa), p perimeter of the shaft (m), h length in soil that swells
/// (m). Range: all from 0. Source: statics. Upward positive.
pub fn shaft_swell(
    adhesion: SoilStress,
    perimeter: Size,
    length: Length,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "U_s",
        "f p h",
        Force::from_si(adhesion.si() * perimeter.si() * length.si()),
        [
            ("f", adhesion.into()),
            ("p", perimeter.into()),
            ("h", length.into()),
        ],
        &DERIVED,
    )
}

/// Uplift on the sides of a beam by swelling soil.
///
/// U_b = f_b n h_b L; f_b adhesion on the sides (Pa), n sides (1), h_b depth of side in soil
/// that swells (m), L length of beam the pile carries (m). Range: all from 0. Source:
/// statics. Upward positive.
pub fn beam_swell(
    adhesion: SoilStress,
    sides: u32,
    depth: Length,
    tributary: Length,
    trace: &mut Trace,
) -> Force {
    let n = f64::from(sides);
    trace.step(
        "U_b",
        "f_b n h_b L",
        Force::from_si(adhesion.si() * n * depth.si() * tributary.si()),
        [
            ("f_b", adhesion.into()),
            ("n", n.into()),
            ("h_b", depth.into()),
            ("L", tributary.into()),
        ],
        &DERIVED,
    )
}

/// Force of swelling soil on shaft, beam and void form together.
///
/// U = U_s + U_b + U_v; on the shaft, the beam's sides and through the void form (N). Range:
/// all from 0. Source: statics. Upward positive.
pub fn swell_force(shaft: Force, beam: Force, void_form: Force, trace: &mut Trace) -> Force {
    trace.step(
        "U",
        "U_s + U_b + U_v",
        shaft + beam + void_form,
        [
            ("U_s", shaft.into()),
            ("U_b", beam.into()),
            ("U_v", void_form.into()),
        ],
        &DERIVED,
    )
}

/// Tension that is left of the force of swelling soil once dead load has been counted.
///
/// N = max(gamma_U U - gamma_D D, 0); U force of swelling soil (N), D dead load (N), gamma
/// their factors (1). Range: gamma_U from 1, gamma_D 0 to 1. Source: statics; the factors are
/// choices. Tension positive, never negative.
pub fn net_swell_tension(
    swell_factor: f64,
    swell: Force,
    dead_factor: f64,
    dead: Force,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "N",
        "max(gamma_U U - gamma_D D, 0)",
        (swell * swell_factor - dead * dead_factor).max(Force::ZERO),
        [
            ("gamma_U", swell_factor.into()),
            ("U", swell.into()),
            ("gamma_D", dead_factor.into()),
            ("D", dead.into()),
        ],
        &DERIVED,
    )
}

/// Force of frost and of swelling soil at one time.
///
/// F = F_f + U - F_v; F_f all of frost (N), U all of swelling soil (N), F_v the void form,
/// which both contain (N). Range: all from 0. Source: statics; an upper bound where both grip
/// the same shaft. Upward positive.
pub fn combined_force(frost: Force, swell: Force, void_form: Force, trace: &mut Trace) -> Force {
    trace.step(
        "F",
        "F_f + U - F_v",
        frost + swell - void_form,
        [
            ("F_f", frost.into()),
            ("U", swell.into()),
            ("F_v", void_form.into()),
        ],
        &DERIVED,
    )
}

/// Uplift under a beam that bears on swelling soil.
///
/// U_0 = sigma_s b L; sigma_s swell pressure (Pa), b width of the beam (m), L length of beam
/// the pile carries (m). Range: all from 0. Source: statics. Upward positive.
pub fn underside_swell(
    pressure: SoilStress,
    width: Length,
    tributary: Length,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "U_0",
        "sigma_s b L",
        Force::from_si(pressure.si() * width.si() * tributary.si()),
        [
            ("sigma_s", pressure.into()),
            ("b", width.into()),
            ("L", tributary.into()),
        ],
        &DERIVED,
    )
}
