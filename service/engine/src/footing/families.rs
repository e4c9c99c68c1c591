//! The theories side by side: which bearing, shape and depth factors each uses, and the
//! ultimate pressure they add up to. The factors themselves are in `crate::bearing`.

use super::codes::methods;
use super::ground::Seat;
use super::options::{FootingFactorUse, FootingMethod};
use super::outcome::{FootingCapacity, FootingLoads, FootingSettings, FootingTerm};
use crate::bearing::factors::*;
use crate::bearing::shape_depth::*;
use crate::bearing::terzaghi_width::{TabledWidthFactor, ngamma_terzaghi};
use crate::catalogue::MethodDef;
use crate::contract::Work;
use crate::quantity::{Angle, Area, Force, Length, LineLoad, SoilStress, UnitWeight};
use crate::source::{DERIVED, SKEMPTON_1951, UFC_ALLOWABLE_PRESSURE, UFC_BEARING_EQUATION};
use crate::trace::Trace;

/// At or below this angle, in radians, the forms for phi = 0 hold.
const NIL: f64 = 1e-9;

impl FootingMethod {
    /// Its entry in the catalogue.
    pub(super) const fn def(self) -> &'static MethodDef {
        match self {
            Self::Terzaghi1943 => &methods::FOOTING_TERZAGHI,
            Self::Meyerhof1963 => &methods::FOOTING_MEYERHOF,
            Self::Hansen1970 => &methods::FOOTING_HANSEN,
            Self::Vesic1973 => &methods::FOOTING_VESIC,
            Self::Skempton1951 => &methods::FOOTING_SKEMPTON,
        }
    }
}

/// Bearing factors N_c, N_q, N_gamma.
#[derive(Debug, Clone, Copy)]
pub(super) struct BearingFactors {
    pub cohesion: f64,
    pub overburden: f64,
    pub width: f64,
    pub interpolated: bool,
}

/// Bearing factors of a theory at a friction angle.
pub(super) fn bearing_factors(
    method: FootingMethod,
    phi: Angle,
    trace: &mut Trace,
) -> BearingFactors {
    let (cohesion, overburden) = match method {
        FootingMethod::Terzaghi1943 => (nc_terzaghi(phi, trace), nq_terzaghi(phi, trace)),
        FootingMethod::Skempton1951 => (nc_skempton_strip(trace), 1.0),
        _ => (nc_prandtl(phi, trace), nq_prandtl(phi, trace)),
    };
    let closed = |value| TabledWidthFactor {
        value,
        interpolated: false,
    };
    let width = match method {
        FootingMethod::Terzaghi1943 => ngamma_terzaghi(phi, trace),
        FootingMethod::Meyerhof1963 => closed(ngamma_meyerhof(overburden, phi, trace)),
        FootingMethod::Hansen1970 => closed(ngamma_hansen(overburden, phi, trace)),
        FootingMethod::Vesic1973 => closed(ngamma_vesic(overburden, phi, trace)),
        FootingMethod::Skempton1951 => closed(0.0),
    };
    BearingFactors {
        cohesion,
        overburden,
        width: width.value,
        interpolated: width.interpolated,
    }
}

/// Bearing factor of a strip at the surface of clay by Skempton.
///
/// N_c = 5. Range: phi = 0. Source: Skempton 1951, as UFC 3-220-20 eq. 6-39. Sign: none.
fn nc_skempton_strip(trace: &mut Trace) -> f64 {
    trace.step("N_c", "5", 5.0, [], &SKEMPTON_1951)
}

/// Factors of the three terms: cohesion, overburden, width.
#[derive(Debug, Clone, Copy)]
struct Triple {
    c: f64,
    q: f64,
    gamma: f64,
}

/// No correction.
const ONES: Triple = Triple {
    c: 1.0,
    q: 1.0,
    gamma: 1.0,
};

/// Friction angles between the two ranges Meyerhof's factors were published for.
pub(super) fn between_meyerhof_ranges(phi: Angle) -> bool {
    phi.si() > NIL && !meyerhof_in_range(phi)
}

fn shape(method: FootingMethod, seat: &Seat, n: &BearingFactors, trace: &mut Trace) -> Triple {
    let (phi, ratio) = (seat.friction_angle, seat.base.width_to_length_ratio);
    match method {
        FootingMethod::Terzaghi1943 => Triple {
            c: sc_terzaghi(ratio, trace),
            q: 1.0,
            gamma: if seat.circle {
                sgamma_terzaghi_circle(trace)
            } else {
                sgamma_terzaghi(ratio, trace)
            },
        },
        FootingMethod::Meyerhof1963 => {
            let c = sc_meyerhof(phi, ratio, trace);
            let q = if meyerhof_in_range(phi) {
                sq_meyerhof(phi, ratio, trace)
            } else {
                1.0
            };
            Triple { c, q, gamma: q }
        }
        FootingMethod::Hansen1970 => Triple {
            c: sc_general(seat, n, trace),
            q: sq_hansen(phi, ratio, trace),
            gamma: sgamma_de_beer(ratio, trace),
        },
        FootingMethod::Vesic1973 => Triple {
            c: sc_general(seat, n, trace),
            q: sq_vesic(phi, ratio, trace),
            gamma: sgamma_de_beer(ratio, trace),
        },
        FootingMethod::Skempton1951 => Triple {
            c: sc_skempton(ratio, trace),
            ..ONES
        },
    }
}

fn sc_general(seat: &Seat, n: &BearingFactors, trace: &mut Trace) -> f64 {
    let ratio = seat.base.width_to_length_ratio;
    if seat.friction_angle.si() > NIL {
        sc_de_beer(n.overburden, n.cohesion, ratio, trace)
    } else {
        sc_hansen_undrained(ratio, trace)
    }
}

fn depth(method: FootingMethod, seat: &Seat, trace: &mut Trace) -> Triple {
    let (phi, ratio) = (seat.friction_angle, seat.base.depth_ratio);
    match method {
        FootingMethod::Terzaghi1943 => ONES,
        FootingMethod::Meyerhof1963 => {
            let c = dc_meyerhof(phi, ratio, trace);
            let q = if meyerhof_in_range(phi) {
                dq_meyerhof(phi, ratio, trace)
            } else {
                1.0
            };
            Triple { c, q, gamma: q }
        }
        FootingMethod::Hansen1970 | FootingMethod::Vesic1973 => {
            let k = k_hansen(ratio, trace);
            Triple {
                c: dc_hansen(k, trace),
                q: dq_hansen(phi, k, trace),
                gamma: 1.0,
            }
        }
        FootingMethod::Skempton1951 => Triple {
            c: dc_skempton(ratio, trace),
            ..ONES
        },
    }
}

/// Shape and depth factor of the cohesion term taken together.
fn together(method: FootingMethod, seat: &Seat, s: f64, d: f64) -> f64 {
    let added = matches!(method, FootingMethod::Hansen1970 | FootingMethod::Vesic1973)
        && seat.friction_angle.si() <= NIL;
    if added { s + d - 1.0 } else { s * d }
}

/// Capacity by one theory.
pub(super) fn capacity(
    method: FootingMethod,
    seat: &Seat,
    settings: &FootingSettings,
    work: &mut Work,
) -> FootingCapacity {
    work.method(method.def());
    let trace = &mut work.trace;
    trace.about(|| method.name().to_owned());
    let n = bearing_factors(method, seat.friction_angle, trace);
    let s = match settings.shape_factors {
        FootingFactorUse::Include => shape(method, seat, &n, trace),
        FootingFactorUse::LeaveOut => ONES,
    };
    let d = match settings.depth_factors {
        FootingFactorUse::Include => depth(method, seat, trace),
        FootingFactorUse::LeaveOut => ONES,
    };
    let term = |bearing_factor, shape_factor, depth_factor, correction_factor| FootingTerm {
        bearing_factor,
        shape_factor,
        depth_factor,
        correction_factor,
        pressure: SoilStress::ZERO,
    };
    let mut cohesion_term = term(n.cohesion, s.c, d.c, together(method, seat, s.c, d.c));
    let mut overburden_term = term(n.overburden, s.q, d.q, s.q * d.q);
    let mut width_term = term(n.width, s.gamma, d.gamma, s.gamma * d.gamma);
    cohesion_term.pressure = cohesion_pressure(seat.cohesion, &cohesion_term, trace);
    overburden_term.pressure = overburden_pressure(seat.base.overburden, &overburden_term, trace);
    if let Some(weight) = seat.base.unit_weight_below {
        width_term.pressure = width_pressure(weight, seat.base.width, &width_term, trace);
    }
    let gross = ultimate(
        cohesion_term.pressure,
        overburden_term.pressure,
        width_term.pressure,
        trace,
    );
    let net = net_of(gross, seat.base.overburden, trace);
    FootingCapacity {
        method,
        friction_angle: seat.friction_angle,
        cohesion: seat.cohesion,
        cohesion_term,
        overburden_term,
        width_term,
        width_factor_interpolated: n.interpolated,
        ultimate_gross: gross,
        ultimate_net: net,
        ultimate_load: loads(gross, net, seat.base.area, seat.base.width, trace),
        design: None,
    }
}

/// Term of cohesion.
///
/// q_c = c N_c psi_c; c cohesion or undrained strength (Pa), psi_c shape and depth factor
/// together. Range: from 0. Source: UFC 3-220-20 eq. 5-15, 5-17. Sign: against the load.
fn cohesion_pressure(c: SoilStress, term: &FootingTerm, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_c",
        "c N_c psi_c",
        c * (term.bearing_factor * term.correction_factor),
        [
            ("c", c.into()),
            ("N_c", term.bearing_factor.into()),
            ("psi_c", term.correction_factor.into()),
        ],
        &UFC_BEARING_EQUATION,
    )
}

/// Term of overburden.
///
/// q_q = s_v N_q psi_q; s_v overburden at the base, effective if drained (Pa), psi_q shape
/// and depth factor together. Range: from 0. Source: UFC 3-220-20 eq. 5-15, 5-17. Sign:
/// against the load.
fn overburden_pressure(q: SoilStress, term: &FootingTerm, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_q",
        "s_v N_q psi_q",
        q * (term.bearing_factor * term.correction_factor),
        [
            ("s_v", q.into()),
            ("N_q", term.bearing_factor.into()),
            ("psi_q", term.correction_factor.into()),
        ],
        &UFC_BEARING_EQUATION,
    )
}

/// Term of width.
///
/// q_gamma = 0.5 gamma' B N_gamma psi_gamma; gamma' mean effective unit weight below the base
/// (N/m3), B width (m), psi_gamma shape and depth factor together. Range: drained. Source:
/// UFC 3-220-20 eq. 5-15. Sign: against the load.
fn width_pressure(
    weight: UnitWeight,
    width: Length,
    term: &FootingTerm,
    trace: &mut Trace,
) -> SoilStress {
    let factor = term.bearing_factor * term.correction_factor;
    trace.step(
        "q_gamma",
        "0.5 gamma' B N_gamma psi_gamma",
        SoilStress::from_si(0.5 * weight.si() * width.si() * factor),
        [
            ("gamma'", weight.into()),
            ("B", width.into()),
            ("N_gamma", term.bearing_factor.into()),
            ("psi_gamma", term.correction_factor.into()),
        ],
        &UFC_BEARING_EQUATION,
    )
}

/// Ultimate gross pressure.
///
/// q_ult = q_c + q_q + q_gamma; terms of cohesion, overburden and width (Pa). Range: from 0.
/// Source: UFC 3-220-20 eq. 5-15. Sign: against the load.
fn ultimate(c: SoilStress, q: SoilStress, gamma: SoilStress, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_ult",
        "q_c + q_q + q_gamma",
        c + q + gamma,
        [
            ("q_c", c.into()),
            ("q_q", q.into()),
            ("q_gamma", gamma.into()),
        ],
        &UFC_BEARING_EQUATION,
    )
}

/// Ultimate net pressure.
///
/// q_net = q_ult - s_v; s_v overburden at the base (Pa). Range: q_ult from s_v. Source:
/// UFC 3-220-20 eq. 5-2. Sign: against the load.
fn net_of(gross: SoilStress, overburden: SoilStress, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_net",
        "q_ult - s_v",
        gross - overburden,
        [("q_ult", gross.into()), ("s_v", overburden.into())],
        &UFC_ALLOWABLE_PRESSURE,
    )
}

/// Loads of a base under a gross and a net pressure.
pub(super) fn loads(
    gross: SoilStress,
    net: SoilStress,
    area: Option<Area>,
    width: Length,
    trace: &mut Trace,
) -> FootingLoads {
    match area {
        Some(area) => FootingLoads {
            gross: Some(load(gross, area, trace)),
            net: Some(load(net, area, trace)),
            gross_line: None,
            net_line: None,
        },
        None => FootingLoads {
            gross: None,
            net: None,
            gross_line: Some(line_load(gross, width, trace)),
            net_line: Some(line_load(net, width, trace)),
        },
    }
}

/// Load of a base.
///
/// Q = q A; q pressure (Pa), A area (m2). Range: from 0. Source: definition. Sign: positive.
fn load(q: SoilStress, area: Area, trace: &mut Trace) -> Force {
    trace.step(
        "Q",
        "q A",
        Force::from_si(q.si() * area.si()),
        [("q", q.into()), ("A", area.into())],
        &DERIVED,
    )
}

/// Load on a length of strip.
///
/// Q = q B; q pressure (Pa), B width (m). Range: from 0. Source: definition. Sign: positive.
fn line_load(q: SoilStress, width: Length, trace: &mut Trace) -> LineLoad {
    trace.step(
        "Q",
        "q B",
        LineLoad::from_si(q.si() * width.si()),
        [("q", q.into()), ("B", width.into())],
        &DERIVED,
    )
}
