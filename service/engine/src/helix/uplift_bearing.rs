//! Uplift bearing of one soil above one helix: breakout against deep bearing, in clay
//! and in sand. Breakout factors and critical ratios are in `uplift.rs`.

use super::bearing::{Seat, SoilBearing, nq};
use super::law::DrainedLaw;
use super::outcome::BearingLaw;
use super::settings::{DEEP_CLAY_TENSION, Settings};
use super::uplift::{self, BREAKOUT_KU, CLAY_BREAKOUT_GROWTH};
use crate::quantity::SoilStress;
use crate::source::{
    BREAKOUT_FORM, CLAY_UPLIFT, DEEP_CLAY_NINE, PRANDTL_REISSNER, TANG_PHOON_2020,
};
use crate::trace::Trace;

/// Uplift of clay or silt: the lesser of breakout and deep bearing.
pub(crate) fn tension_in_clay(
    su: SoilStress,
    seat: &Seat,
    s: &Settings,
    trace: &mut Trace,
) -> SoilBearing {
    let fc = uplift::breakout_factor_clay(seat.embedment_ratio, CLAY_BREAKOUT_GROWTH.value, trace);
    let breakout = clay_breakout(su, fc, seat.stress, trace);
    let deep_factor = s.clay_tension_factor * DEEP_CLAY_TENSION.value;
    let deep = clay_deep_uplift(su, s.clay_tension_factor, trace);
    let q = trace.step(
        "q",
        "min(q_breakout, q_deep)",
        breakout.min(deep),
        [("q_breakout", breakout.into()), ("q_deep", deep.into())],
        &CLAY_UPLIFT,
    );
    if breakout < deep {
        SoilBearing {
            law: BearingLaw::UndrainedBreakout,
            factor: fc,
            cohesion_factor: None,
            stress: q,
        }
    } else {
        SoilBearing {
            law: BearingLaw::UndrainedBearing,
            factor: deep_factor,
            cohesion_factor: None,
            stress: q,
        }
    }
}

/// Uplift of clay that breaks out to the surface.
///
/// q_breakout = F_c s_u + s'_v; F_c breakout factor, s_u undrained strength and s'_v vertical
/// effective stress at the helix (Pa). Range: circular plate. Source: Meyerhof and Adams 1968
/// (memory), with the effective for the total stress below water. Sign: against uplift.
pub fn clay_breakout(su: SoilStress, fc: f64, stress: SoilStress, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_breakout",
        "F_c s_u + s'_v",
        su * fc + stress,
        [
            ("F_c", fc.into()),
            ("s_u", su.into()),
            ("s'_v", stress.into()),
        ],
        &CLAY_UPLIFT,
    )
}

/// Uplift of deep clay.
///
/// q_deep = k_t 9 s_u; k_t share kept in tension, s_u undrained strength (Pa). Range: deep
/// circular plate. Source: Skempton 1951. Sign: against uplift.
pub fn clay_deep_uplift(su: SoilStress, share: f64, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_deep",
        "k_t 9 s_u",
        su * (share * DEEP_CLAY_TENSION.value),
        [("k_t", share.into()), ("s_u", su.into())],
        &DEEP_CLAY_NINE,
    )
}

/// Uplift of sand: the lesser of breakout and deep bearing, or a share of the latter.
pub(crate) fn tension_in_sand(
    law: &DrainedLaw,
    seat: &Seat,
    s: &Settings,
    trace: &mut Trace,
) -> SoilBearing {
    let row = law.breakout;
    let (ratio, ku) = (seat.embedment_ratio, BREAKOUT_KU.value);
    let fq = uplift::breakout_factor_sand(law.friction, ratio, row, ku, trace);
    let breakout = sand_breakout(seat.stress, fq, trace);
    let nq = nq(law, seat, s, trace);
    let share = s.sand_tension_factor.unwrap_or(1.0);
    let deep = sand_deep_uplift(seat.limited_stress, nq, share, trace);
    // with a share of N_q, depth beyond the critical ratio frees it from the breakout cap
    let beyond = seat.embedment_ratio >= row.critical * (1.0 - 1e-9);
    let capped = s.sand_tension_factor.is_none() || !beyond;
    if capped && breakout < deep {
        SoilBearing {
            law: BearingLaw::DrainedBreakout,
            factor: fq,
            cohesion_factor: None,
            stress: trace.step(
                "q",
                "min(q_breakout, q_deep)",
                breakout,
                [("q_breakout", breakout.into()), ("q_deep", deep.into())],
                &BREAKOUT_FORM,
            ),
        }
    } else {
        SoilBearing {
            law: BearingLaw::DrainedBearing,
            factor: share * nq,
            cohesion_factor: None,
            stress: deep,
        }
    }
}

/// Uplift of sand that breaks out.
///
/// q_breakout = F_q s'_v; F_q breakout factor, s'_v vertical effective stress at the helix
/// (Pa), which is gamma' H in uniform sand. Range: circular plate. Source: Meyerhof and Adams
/// 1968. Sign: against uplift, weight of the soil included.
pub fn sand_breakout(stress: SoilStress, fq: f64, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_breakout",
        "F_q s'_v",
        stress * fq,
        [("F_q", fq.into()), ("s'_v", stress.into())],
        &BREAKOUT_FORM,
    )
}

/// Uplift of deep sand by the bearing factor of compression.
///
/// q_deep = k_t s'_v N_q; k_t share kept in tension (1 where the breakout factor caps it), s'_v
/// vertical effective stress at the helix (Pa), N_q bearing factor. Range: deep plate.
/// Source: Prandtl 1921, Reissner 1924; a share below 1 by the ratio of uplift to compression
/// of Tang and Phoon 2020. Sign: against uplift.
pub fn sand_deep_uplift(stress: SoilStress, nq: f64, share: f64, trace: &mut Trace) -> SoilStress {
    trace.step(
        "q_deep",
        "k_t s'_v N_q",
        stress * (share * nq),
        [
            ("k_t", share.into()),
            ("s'_v", stress.into()),
            ("N_q", nq.into()),
        ],
        if share < 1.0 {
            &TANG_PHOON_2020
        } else {
            &PRANDTL_REISSNER
        },
    )
}
