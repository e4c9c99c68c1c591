//! Bearing of one soil by one helix: which law, which factor, what stress; compression in
//! full, tension handed to `uplift_bearing.rs`. Factors of the theories are in
//! `crate::bearing`; averaging over the soils of a zone is in `individual.rs`.

use super::law::{DrainedLaw, Law};
use super::methods::{DrainedBearing, ShapeDepthFactors, UndrainedBearing, WidthTerm};
use super::outcome::BearingLaw;
use super::pile::AxialDirection;
use super::settings::Settings;
use super::uplift_bearing::{tension_in_clay, tension_in_sand};
use crate::bearing::{factors, shape_depth};
use crate::quantity::{Size, SoilStress, UnitWeight};
use crate::source::{DEEP_CLAY_NINE, PRANDTL_REISSNER, SKEMPTON_1951, Sourced, WIDTH_SHAPE};
use crate::trace::Trace;

/// Shape factor of the width term for a circle.
pub static WIDTH_SHAPE_FACTOR: Sourced<f64> = Sourced::new("width_shape_factor", 0.6, &WIDTH_SHAPE);

/// A helix as the laws of bearing see it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Seat {
    /// Diameter.
    pub diameter: Size,
    /// Depth over diameter.
    pub depth_ratio: f64,
    /// Embedment over diameter, embedment counted from the lowest soil above without credit.
    pub embedment_ratio: f64,
    /// Vertical effective stress at the helix.
    pub stress: SoilStress,
    /// The same under the limit of the N_q term.
    pub limited_stress: SoilStress,
    /// Mean effective unit weight within one diameter below the helix.
    pub unit_weight: UnitWeight,
}

/// Bearing of one soil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SoilBearing {
    pub law: BearingLaw,
    pub factor: f64,
    /// N_c of cohesion, where there is any.
    pub cohesion_factor: Option<f64>,
    pub stress: SoilStress,
}

impl SoilBearing {
    /// No credit.
    pub const NONE: Self = Self {
        law: BearingLaw::NoCredit,
        factor: 0.0,
        cohesion_factor: None,
        stress: SoilStress::ZERO,
    };
}

/// Bearing of a soil on the load side of a helix.
pub(crate) fn soil_bearing(
    law: &Law,
    seat: &Seat,
    direction: AxialDirection,
    s: &Settings,
    trace: &mut Trace,
) -> SoilBearing {
    match (law, direction) {
        (Law::Undrained { su }, AxialDirection::Compression) => {
            compression_in_clay(*su, seat, s, trace)
        }
        (Law::Undrained { su }, AxialDirection::Tension) => tension_in_clay(*su, seat, s, trace),
        (Law::Drained(law), AxialDirection::Compression) => {
            compression_in_sand(law, seat, s, trace)
        }
        (Law::Drained(law), AxialDirection::Tension) => tension_in_sand(law, seat, s, trace),
        (Law::None, _) => SoilBearing::NONE,
    }
}

fn compression_in_clay(
    su: SoilStress,
    seat: &Seat,
    s: &Settings,
    trace: &mut Trace,
) -> SoilBearing {
    let nc = match s.undrained_bearing {
        UndrainedBearing::Skempton1951 => factors::nc_skempton(seat.depth_ratio, trace),
        UndrainedBearing::FixedNine => trace.step("N_c", "9", 9.0, [], &DEEP_CLAY_NINE),
        UndrainedBearing::CavityExpansion(c) => factors::nc_cavity(c.reduced_rigidity_ratio, trace),
    };
    SoilBearing {
        law: BearingLaw::UndrainedBearing,
        factor: nc,
        cohesion_factor: None,
        stress: undrained_bearing(su, nc, trace),
    }
}

/// Net bearing of clay.
///
/// q = s_u N_c; s_u undrained strength (Pa), N_c bearing factor. Range: undrained loading.
/// Source: Skempton 1951. Sign: net of the overburden, against the load.
pub fn undrained_bearing(su: SoilStress, nc: f64, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q",
        "s_u N_c",
        su * nc,
        [("s_u", su.into()), ("N_c", nc.into())],
        &SKEMPTON_1951,
    )
}

fn compression_in_sand(
    law: &DrainedLaw,
    seat: &Seat,
    s: &Settings,
    trace: &mut Trace,
) -> SoilBearing {
    let plain = nq(law, seat, s, trace);
    let (nq, nc) = match s.shape_depth_factors {
        ShapeDepthFactors::None => (plain, law.nc),
        ShapeDepthFactors::Published => {
            let (dq, dc) = depth_factors(law, seat, s, trace);
            let (sq, sc) = law.shape;
            (plain * sq * dq, law.nc * sc * dc)
        }
    };
    let overburden = drained_bearing(seat.limited_stress, nq, trace);
    let mut q = overburden;
    if law.cohesion > SoilStress::ZERO {
        q = q + cohesion_bearing(law.cohesion, nc, trace);
    }
    if s.width_term == WidthTerm::Include {
        q = q + width_bearing(seat.unit_weight, seat.diameter, law.ngamma, trace);
    }
    if q > overburden {
        q = trace.step(
            "q",
            "q_q + q_c + q_gamma",
            q,
            [("q_q", overburden.into())],
            &WIDTH_SHAPE,
        );
    }
    SoilBearing {
        law: BearingLaw::DrainedBearing,
        factor: nq,
        cohesion_factor: (nc > 0.0).then_some(nc),
        stress: q,
    }
}

/// Published depth factors on the N_q and N_c terms, beside the d_q that is in `nq`.
fn depth_factors(law: &DrainedLaw, seat: &Seat, s: &Settings, trace: &mut Trace) -> (f64, f64) {
    match s.drained_bearing {
        DrainedBearing::Vesic1973 | DrainedBearing::Hansen1970 => {
            let k = shape_depth::k_hansen(seat.depth_ratio, trace);
            let dc = if law.nc > 0.0 {
                shape_depth::dc_hansen(k, trace)
            } else {
                1.0
            };
            (shape_depth::dq_hansen(law.reduced, k, trace), dc)
        }
        DrainedBearing::Meyerhof1963 if law.nc > 0.0 => {
            let dc = shape_depth::dc_meyerhof(law.reduced, seat.depth_ratio, trace);
            (1.0, dc)
        }
        DrainedBearing::Meyerhof1963 | DrainedBearing::Terzaghi1943 | DrainedBearing::Own(_) => {
            (1.0, 1.0)
        }
    }
}

/// N_q of the method in force, its depth factor included.
pub(crate) fn nq(law: &DrainedLaw, seat: &Seat, s: &Settings, trace: &mut Trace) -> f64 {
    match s.drained_bearing {
        DrainedBearing::Vesic1973 | DrainedBearing::Hansen1970 | DrainedBearing::Terzaghi1943 => {
            law.nq
        }
        DrainedBearing::Own(_) => law.nq,
        DrainedBearing::Meyerhof1963 => {
            law.nq * factors::dq_meyerhof(law.reduced, seat.depth_ratio, trace)
        }
    }
}

/// Bearing of cohesion in sand and gravel.
///
/// q_c = c' N_c; c' effective cohesion (Pa), N_c bearing factor. Range: drained loading in
/// compression. Source: Prandtl 1921. Sign: against the load.
pub fn cohesion_bearing(cohesion: SoilStress, nc: f64, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_c",
        "c' N_c",
        cohesion * nc,
        [("c'", cohesion.into()), ("N_c", nc.into())],
        &PRANDTL_REISSNER,
    )
}

/// Bearing of sand.
///
/// q = s'_v N_q; s'_v vertical effective stress at the helix (Pa), N_q bearing factor (with
/// d_q where the method has one). Range: drained loading. Source: Prandtl 1921, Reissner 1924.
/// Sign: against the load.
pub fn drained_bearing(stress: SoilStress, nq: f64, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q",
        "s'_v N_q",
        stress * nq,
        [("s'_v", stress.into()), ("N_q", nq.into())],
        &PRANDTL_REISSNER,
    )
}

/// Bearing of sand by the width of the plate.
///
/// q_gamma = 0.5 gamma' D N_gamma 0.6; gamma' effective unit weight within one diameter
/// below the helix (N/m3), D diameter (m), 0.6 shape factor of a circle. Range: drained
/// loading in compression. Source: Vesic 1973. Sign: against the load.
pub fn width_bearing(
    unit_weight: UnitWeight,
    diameter: Size,
    ngamma: f64,
    trace: &mut Trace,
) -> SoilStress {
    let q = 0.5 * unit_weight.si() * diameter.si() * ngamma * WIDTH_SHAPE_FACTOR.value;
    trace.step(
        "q_gamma",
        "0.5 gamma' D N_gamma 0.6",
        SoilStress::from_si(q),
        [
            ("gamma'", unit_weight.into()),
            ("D", diameter.into()),
            ("N_gamma", ngamma.into()),
        ],
        &WIDTH_SHAPE,
    )
}
