//! Shape and depth factors of the classical theories for a vertical, central load on a level
//! base below level ground, one equation each. The bearing factors are in `factors.rs`.
//! B/L is the width over the length: 0 for a strip, 1 for a square or a circle.

use crate::math;
use crate::math::PI;
use crate::quantity::{Angle, AngleUnit};
use crate::source::{
    HANSEN_SHAPE_DEPTH, MEYERHOF_SHAPE_DEPTH, SKEMPTON_1951, TERZAGHI_SHAPE, VESIC_SHAPE_DEPTH,
};
use crate::trace::Trace;

/// A depth this close below the width, over the width, is the width (rounding of units).
const SAME_RATIO: f64 = 1e-9;

/// Above this angle Meyerhof's factors of overburden and width differ from 1, degrees.
const MEYERHOF_FROM_DEG: f64 = 10.0 + 1e-9;

/// Whether Meyerhof's factors of overburden and width differ from 1.
pub fn meyerhof_in_range(phi: Angle) -> bool {
    phi.get(AngleUnit::Deg) > MEYERHOF_FROM_DEG
}

/// Shape factor of the cohesion term by Terzaghi.
///
/// s_c = 1 + 0.3 B/L; square and circle 1.3. Range: B/L 0 to 1. Source: Terzaghi 1943, as
/// UFC 3-220-20 table 5-5; rectangles in proportion. Sign: none.
pub fn sc_terzaghi(ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "s_c",
        "1 + 0.3 B/L",
        1.0 + 0.3 * ratio,
        [("B/L", ratio.into())],
        &TERZAGHI_SHAPE,
    )
}

/// Shape factor of the width term by Terzaghi, rectangles.
///
/// s_gamma = 1 - 0.2 B/L; square 0.8. Range: B/L 0 to 1; a circle has its own. Source:
/// Terzaghi 1943, as UFC 3-220-20 table 5-5; rectangles in proportion. Sign: none.
pub fn sgamma_terzaghi(ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "s_gamma",
        "1 - 0.2 B/L",
        1.0 - 0.2 * ratio,
        [("B/L", ratio.into())],
        &TERZAGHI_SHAPE,
    )
}

/// Shape factor of the width term by Terzaghi, circle.
///
/// s_gamma = 0.6; B is the diameter. Range: circle. Source: Terzaghi 1943, as UFC 3-220-20
/// table 5-5. Sign: none.
pub fn sgamma_terzaghi_circle(trace: &mut Trace) -> f64 {
    trace.step("s_gamma", "0.6", 0.6, [], &TERZAGHI_SHAPE)
}

/// Coefficient of passive pressure.
///
/// K_p = tan^2(45 deg + phi/2); phi friction angle. Range: 0 to 50 deg. Source: Rankine, as
/// in Meyerhof 1963. Sign: none.
fn kp(phi: Angle) -> f64 {
    let root = math::tan(PI / 4.0 + phi.si() / 2.0);
    root * root
}

/// Shape factor of the cohesion term by Meyerhof.
///
/// s_c = 1 + 0.2 K_p B/L; K_p = tan^2(45 deg + phi/2), phi friction angle. Range: 0 to
/// 50 deg, B/L 0 to 1. Source: Meyerhof 1963, as UFC 3-220-20 table 5-6. Sign: none.
pub fn sc_meyerhof(phi: Angle, ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "s_c",
        "1 + 0.2 tan^2(45 deg + phi/2) B/L",
        1.0 + 0.2 * kp(phi) * ratio,
        [("phi", phi.into()), ("B/L", ratio.into())],
        &MEYERHOF_SHAPE_DEPTH,
    )
}

/// Shape factor of the overburden and width terms by Meyerhof.
///
/// s_q = s_gamma = 1 + 0.1 K_p B/L; K_p = tan^2(45 deg + phi/2), phi friction angle. Range:
/// above 10 deg, B/L 0 to 1; 1 at phi = 0. Source: Meyerhof 1963, as UFC 3-220-20 table 5-6.
/// Sign: none.
pub fn sq_meyerhof(phi: Angle, ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "s_q",
        "1 + 0.1 tan^2(45 deg + phi/2) B/L",
        1.0 + 0.1 * kp(phi) * ratio,
        [("phi", phi.into()), ("B/L", ratio.into())],
        &MEYERHOF_SHAPE_DEPTH,
    )
}

/// Depth factor of the cohesion term by Meyerhof.
///
/// d_c = 1 + 0.2 tan(45 deg + phi/2) min(D/B, 1); D depth and B width (m), phi friction
/// angle. Range: 0 to 50 deg; meant for D up to B, so it is held from there on. Source:
/// Meyerhof 1963, as UFC 3-220-20 table 5-6. Sign: none.
pub fn dc_meyerhof(phi: Angle, depth_ratio: f64, trace: &mut Trace) -> f64 {
    let held = depth_ratio.min(1.0);
    trace.step(
        "d_c",
        "1 + 0.2 tan(45 deg + phi/2) min(D/B, 1)",
        1.0 + 0.2 * math::tan(PI / 4.0 + phi.si() / 2.0) * held,
        [("phi", phi.into()), ("D/B", depth_ratio.into())],
        &MEYERHOF_SHAPE_DEPTH,
    )
}

/// Shape factor of the cohesion term by Hansen and Vesic.
///
/// s_c = 1 + (N_q/N_c) B/L; N_q and N_c of Prandtl and Reissner. Range: phi above 0, B/L 0
/// to 1. Source: De Beer 1970, Vesic 1973; for Hansen as UFC 3-220-20 table 5-8. Sign: none.
pub fn sc_de_beer(nq: f64, nc: f64, ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "s_c",
        "1 + (N_q/N_c) B/L",
        1.0 + nq / nc * ratio,
        [
            ("N_q", nq.into()),
            ("N_c", nc.into()),
            ("B/L", ratio.into()),
        ],
        &VESIC_SHAPE_DEPTH,
    )
}

/// Shape factor of the cohesion term at phi = 0 by Hansen.
///
/// s_c = 1 + 0.2 B/L; added to d_c, not multiplied by it. Range: phi = 0, B/L 0 to 1.
/// Source: Hansen 1970, as UFC 3-220-20 table 5-7. Sign: none.
pub fn sc_hansen_undrained(ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "s_c",
        "1 + 0.2 B/L",
        1.0 + 0.2 * ratio,
        [("B/L", ratio.into())],
        &HANSEN_SHAPE_DEPTH,
    )
}

/// Shape factor of the overburden term by Hansen.
///
/// s_q = 1 + sin(phi) B/L; phi friction angle. Range: 0 to 50 deg, B/L 0 to 1. Source:
/// Hansen 1970. Sign: none.
pub fn sq_hansen(phi: Angle, ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "s_q",
        "1 + sin(phi) B/L",
        1.0 + math::sin(phi.si()) * ratio,
        [("phi", phi.into()), ("B/L", ratio.into())],
        &HANSEN_SHAPE_DEPTH,
    )
}

/// Shape factor of the overburden term by Vesic.
///
/// s_q = 1 + tan(phi) B/L; phi friction angle. Range: 0 to 50 deg, B/L 0 to 1. Source:
/// De Beer 1970, Vesic 1973. Sign: none.
pub fn sq_vesic(phi: Angle, ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "s_q",
        "1 + tan(phi) B/L",
        1.0 + math::tan(phi.si()) * ratio,
        [("phi", phi.into()), ("B/L", ratio.into())],
        &VESIC_SHAPE_DEPTH,
    )
}

/// Shape factor of the width term by Hansen and Vesic.
///
/// s_gamma = 1 - 0.4 B/L; square and circle 0.6. Range: B/L 0 to 1. Source: De Beer 1970,
/// Hansen 1970, Vesic 1973. Sign: none.
pub fn sgamma_de_beer(ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "s_gamma",
        "1 - 0.4 B/L",
        1.0 - 0.4 * ratio,
        [("B/L", ratio.into())],
        &VESIC_SHAPE_DEPTH,
    )
}

/// Measure of depth by Hansen and Vesic.
///
/// k = D/B where D < B, else atan(D/B) in radians; D depth, B width (m). Falls from 1 to
/// 0.785 at D = B, as published. Range: D/B from 0. Source: Hansen 1970, as UFC 3-220-20
/// table 5-7. Sign: none.
pub fn k_hansen(depth_ratio: f64, trace: &mut Trace) -> f64 {
    let k = if depth_ratio < 1.0 - SAME_RATIO {
        depth_ratio
    } else {
        math::atan(depth_ratio)
    };
    trace.step(
        "k",
        "D/B where D < B, else atan(D/B)",
        k,
        [("D/B", depth_ratio.into())],
        &HANSEN_SHAPE_DEPTH,
    )
}

/// Depth factor of the cohesion term by Hansen and Vesic.
///
/// d_c = 1 + 0.4 k; k measure of depth. Range: k from 0. Source: Hansen 1970. Sign: none.
pub fn dc_hansen(k: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "d_c",
        "1 + 0.4 k",
        1.0 + 0.4 * k,
        [("k", k.into())],
        &HANSEN_SHAPE_DEPTH,
    )
}

/// Depth factor of the overburden term by Hansen and Vesic.
///
/// d_q = 1 + 2 tan(phi) (1 - sin phi)^2 k; phi friction angle, k measure of depth. Range: 0
/// to 50 deg. Source: Hansen 1970. Sign: none.
pub fn dq_hansen(phi: Angle, k: f64, trace: &mut Trace) -> f64 {
    let rest = 1.0 - math::sin(phi.si());
    trace.step(
        "d_q",
        "1 + 2 tan(phi) (1 - sin phi)^2 k",
        1.0 + 2.0 * math::tan(phi.si()) * (rest * rest) * k,
        [("phi", phi.into()), ("k", k.into())],
        &HANSEN_SHAPE_DEPTH,
    )
}

/// Shape factor in clay by Skempton.
///
/// s_c = 1 + 0.2 B/L; square and circle 1.2. Range: phi = 0, B/L 0 to 1. Source: Skempton
/// 1951, as UFC 3-220-20 eq. 6-39. Sign: none.
pub fn sc_skempton(ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "s_c",
        "1 + 0.2 B/L",
        1.0 + 0.2 * ratio,
        [("B/L", ratio.into())],
        &SKEMPTON_1951,
    )
}

/// Depth factor in clay by Skempton.
///
/// d_c = 1 + 0.2 D/B, at most 1.5 (from D/B = 2.5 on); D depth, B width (m). Range: phi = 0.
/// Source: Skempton 1951, as UFC 3-220-20 eq. 6-39. Sign: none.
pub fn dc_skempton(depth_ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "d_c",
        "min(1 + 0.2 D/B, 1.5)",
        (1.0 + 0.2 * depth_ratio).min(1.5),
        [("D/B", depth_ratio.into())],
        &SKEMPTON_1951,
    )
}
