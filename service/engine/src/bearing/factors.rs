//! Bearing factors of the classical theories, one equation each. How they are put
//! together is for the calculations: `helix` for a helix, `footing` for a dug footing.

use crate::math;
use crate::math::PI;
use crate::quantity::{Angle, SoilStress};
use crate::source::{
    HANSEN_1970, MEYERHOF_1963, MEYERHOF_DEPTH, PRANDTL_REISSNER, SKEMPTON_1951, Sourced,
    TERZAGHI_1943, TERZAGHI_LOCAL_SHEAR, VESIC_1973, VESIC_CAVITY,
};
use crate::trace::Trace;

/// Below this angle, in radians, `(N_q - 1) cot phi` is taken at its limit.
const NIL: f64 = 1e-9;

/// Bearing factor for overburden.
///
/// N_q = exp(pi tan phi) tan^2(45 deg + phi/2); phi friction angle. Range: 0 to 50 deg.
/// Source: Prandtl 1921, Reissner 1924. Shared by Vesic, Meyerhof and Hansen. Sign: none.
pub fn nq_prandtl(phi: Angle, trace: &mut Trace) -> f64 {
    let t = math::tan(PI / 4.0 + phi.si() / 2.0);
    let nq = math::exp(PI * math::tan(phi.si())) * (t * t);
    trace.step(
        "N_q",
        "exp(pi tan phi) tan^2(45 deg + phi/2)",
        nq,
        [("phi", phi.into())],
        &PRANDTL_REISSNER,
    )
}

/// Bearing factor for cohesion.
///
/// N_c = (N_q - 1) cot phi, 2 + pi at phi = 0; N_q of `nq_prandtl`, phi friction angle.
/// Range: 0 to 50 deg. Source: Prandtl 1921. Sign: none.
pub fn nc_prandtl(phi: Angle, trace: &mut Trace) -> f64 {
    let nc = if phi.si() < NIL {
        2.0 + PI
    } else {
        (nq_prandtl(phi, trace) - 1.0) / math::tan(phi.si())
    };
    trace.step(
        "N_c",
        "(N_q - 1) cot phi",
        nc,
        [("phi", phi.into())],
        &PRANDTL_REISSNER,
    )
}

/// Bearing factor for overburden by Terzaghi (rough base).
///
/// N_q = exp[2 (3 pi/4 - phi/2) tan phi] / [2 cos^2(45 deg + phi/2)]; phi friction angle.
/// Range: 0 to 50 deg. Source: Terzaghi 1943. Sign: none.
pub fn nq_terzaghi(phi: Angle, trace: &mut Trace) -> f64 {
    let c = math::cos(PI / 4.0 + phi.si() / 2.0);
    let exponent = 2.0 * (0.75 * PI - phi.si() / 2.0) * math::tan(phi.si());
    let nq = math::exp(exponent) / (2.0 * c * c);
    trace.step(
        "N_q",
        "exp[2 (3 pi/4 - phi/2) tan phi] / [2 cos^2(45 deg + phi/2)]",
        nq,
        [("phi", phi.into())],
        &TERZAGHI_1943,
    )
}

/// Bearing factor for cohesion by Terzaghi (rough base).
///
/// N_c = (N_q - 1) cot phi, 3 pi/2 + 1 at phi = 0; N_q of `nq_terzaghi`, phi friction angle.
/// Range: 0 to 50 deg. Source: Terzaghi 1943. Sign: none.
pub fn nc_terzaghi(phi: Angle, trace: &mut Trace) -> f64 {
    let nc = if phi.si() < NIL {
        1.5 * PI + 1.0
    } else {
        (nq_terzaghi(phi, trace) - 1.0) / math::tan(phi.si())
    };
    trace.step(
        "N_c",
        "(N_q - 1) cot phi",
        nc,
        [("phi", phi.into())],
        &TERZAGHI_1943,
    )
}

/// Bearing factor for width by Vesic.
///
/// N_gamma = 2 (N_q + 1) tan phi; N_q of `nq_prandtl`, phi friction angle. Range: 0 to
/// 50 deg. Source: Vesic 1973. Sign: none.
pub fn ngamma_vesic(nq: f64, phi: Angle, trace: &mut Trace) -> f64 {
    trace.step(
        "N_gamma",
        "2 (N_q + 1) tan phi",
        2.0 * (nq + 1.0) * math::tan(phi.si()),
        [("N_q", nq.into()), ("phi", phi.into())],
        &VESIC_1973,
    )
}

/// Bearing factor for width by Hansen.
///
/// N_gamma = 1.5 (N_q - 1) tan phi; N_q of `nq_prandtl`, phi friction angle. Range: 0 to
/// 50 deg. Source: Hansen 1970. Sign: none.
pub fn ngamma_hansen(nq: f64, phi: Angle, trace: &mut Trace) -> f64 {
    trace.step(
        "N_gamma",
        "1.5 (N_q - 1) tan phi",
        1.5 * (nq - 1.0) * math::tan(phi.si()),
        [("N_q", nq.into()), ("phi", phi.into())],
        &HANSEN_1970,
    )
}

/// Bearing factor for width by Meyerhof.
///
/// N_gamma = (N_q - 1) tan(1.4 phi); N_q of `nq_prandtl`, phi friction angle. Range: 0 to
/// 50 deg. Source: Meyerhof 1963. Sign: none.
pub fn ngamma_meyerhof(nq: f64, phi: Angle, trace: &mut Trace) -> f64 {
    trace.step(
        "N_gamma",
        "(N_q - 1) tan(1.4 phi)",
        (nq - 1.0) * math::tan(1.4 * phi.si()),
        [("N_q", nq.into()), ("phi", phi.into())],
        &MEYERHOF_1963,
    )
}

/// Growth of Meyerhof's depth factor with the depth ratio.
pub static MEYERHOF_DEPTH_GROWTH: Sourced<f64> =
    Sourced::new("meyerhof_depth_growth", 0.1, &MEYERHOF_DEPTH);

/// Depth factor of Meyerhof.
///
/// d_q = 1 + 0.1 tan(45 deg + phi/2) min(z/D, 1); z depth and D width (m), phi friction
/// angle, sqrt(K_p) = tan(45 deg + phi/2). Range: phi above 10 deg; meant for z up to D, so
/// it is held from there on. Source: Meyerhof 1963, as UFC 3-220-20 table 5-6. Sign: none.
pub fn dq_meyerhof(phi: Angle, depth_ratio: f64, trace: &mut Trace) -> f64 {
    let held = depth_ratio.min(1.0);
    trace.step(
        "d_q",
        "1 + 0.1 tan(45 deg + phi/2) min(z/D, 1)",
        1.0 + MEYERHOF_DEPTH_GROWTH.value * math::tan(PI / 4.0 + phi.si() / 2.0) * held,
        [("phi", phi.into()), ("z/D", depth_ratio.into())],
        &MEYERHOF_DEPTH,
    )
}

/// Friction angle reduced for local shear.
///
/// phi_l = atan(2/3 tan phi); phi friction angle. Range: 0 to 50 deg. Source: Terzaghi 1943.
/// Sign: none.
pub fn local_shear_angle(phi: Angle, trace: &mut Trace) -> Angle {
    trace.step(
        "phi_l",
        "atan(2/3 tan phi)",
        Angle::from_si(math::atan(2.0 / 3.0 * math::tan(phi.si()))),
        [("phi", phi.into())],
        &TERZAGHI_LOCAL_SHEAR,
    )
}

/// Cohesion reduced for local shear.
///
/// c_l = 2/3 c; c cohesion or undrained strength (Pa). Range: from 0. Source: Terzaghi 1943.
/// Sign: none.
pub fn local_shear_cohesion(c: SoilStress, trace: &mut Trace) -> SoilStress {
    trace.step(
        "c_l",
        "2/3 c",
        c * (2.0 / 3.0),
        [("c", c.into())],
        &TERZAGHI_LOCAL_SHEAR,
    )
}

/// Bearing factor of a circle in clay by depth.
///
/// N_c = 6 (1 + 0.2 z/D), at most 9; z depth and D diameter (m). Range: z/D from 0. Source:
/// Skempton 1951, 5 (1 + 0.2 B/L)(1 + 0.2 z/B) with B/L = 1. Sign: none.
pub fn nc_skempton(depth_ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "N_c",
        "min(6 (1 + 0.2 z/D), 9)",
        (6.0 * (1.0 + 0.2 * depth_ratio)).min(9.0),
        [("z/D", depth_ratio.into())],
        &SKEMPTON_1951,
    )
}

/// Bearing factor in clay by expansion of a cavity.
///
/// N_c = (4/3)(ln I_rr + 1) + pi/2 + 1; I_rr reduced rigidity index. Range: 10 to 500.
/// Source: Vesic, as UFC 3-220-20 eq. 6-28. Sign: none.
pub fn nc_cavity(rigidity: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "N_c",
        "(4/3)(ln I_rr + 1) + pi/2 + 1",
        4.0 / 3.0 * (math::ln(rigidity) + 1.0) + PI / 2.0 + 1.0,
        [("I_rr", rigidity.into())],
        &VESIC_CAVITY,
    )
}
