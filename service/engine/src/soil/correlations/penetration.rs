//! Corrections of blow counts of the standard penetration test.

use super::ATMOSPHERE;
use crate::quantity::SoilStress;
use crate::source::{
    LIAO_WHITMAN_1986, OVERBURDEN_CAP_PRACTICE, SPT_ENERGY, SPT_ENERGY_ASSUMED, SPT_RANGE,
    SPT_SILTY_SAND, Sourced,
};
use crate::trace::Trace;

/// Energy ratio that N_60 stands for, and that is taken where none is sent.
pub static ENERGY_RATIO: Sourced<f64> = Sourced::new("spt_energy_ratio", 0.60, &SPT_ENERGY_ASSUMED);
/// Largest correction for overburden.
pub static OVERBURDEN_CAP: Sourced<f64> =
    Sourced::new("overburden_cap_factor", 1.7, &OVERBURDEN_CAP_PRACTICE);
/// Count from which silty sand below water is corrected.
pub static SILTY_SAND_FROM: Sourced<f64> =
    Sourced::new("spt_silty_sand_from", 15.0, &SPT_SILTY_SAND);
/// Largest count in the relations for friction angles.
pub static FRICTION_COUNT_LIMIT: Sourced<f64> =
    Sourced::new("spt_friction_count_limit", 60.0, &SPT_RANGE);
/// Largest count in the relation for undrained strength.
pub static UNDRAINED_COUNT_LIMIT: Sourced<f64> =
    Sourced::new("spt_undrained_count_limit", 100.0, &SPT_RANGE);

/// Corrections of a raw count.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RawCorrections {
    /// Energy ratio.
    pub energy: f64,
    /// For the diameter of the borehole.
    pub borehole: f64,
    /// For the length of the rods.
    pub rod: f64,
    /// For the sampler.
    pub sampler: f64,
}

/// Blow count at 60 % energy.
///
/// N_60 = N (eta_H/0.60) eta_B eta_R eta_S; N raw count, eta_H energy ratio, eta_B borehole,
/// eta_R rod and eta_S sampler correction. Range: any. Source: as told by Ameratunga,
/// Sivakugan and Das 2016. Sign: none.
pub fn n60(count: f64, c: &RawCorrections, trace: &mut Trace) -> f64 {
    trace.step(
        "N_60",
        "N (eta_H/0.60) eta_B eta_R eta_S",
        count * (c.energy / ENERGY_RATIO.value) * c.borehole * c.rod * c.sampler,
        [
            ("N", count.into()),
            ("eta_H", c.energy.into()),
            ("eta_B", c.borehole.into()),
            ("eta_R", c.rod.into()),
            ("eta_S", c.sampler.into()),
        ],
        &SPT_ENERGY,
    )
}

/// Blow count of very fine or silty sand below water.
///
/// N' = 15 + 0.5 (N_60 - 15) above 15, N_60 below. Range: saturated sand. Source: UFC
/// 3-220-10, eq. 8-1. Sign: none.
pub fn silty_sand_count(n60: f64, trace: &mut Trace) -> f64 {
    let from = SILTY_SAND_FROM.value;
    let value = if n60 > from {
        from + 0.5 * (n60 - from)
    } else {
        n60
    };
    trace.step(
        "N'",
        "15 + 0.5 (N_60 - 15) above 15",
        value,
        [("N_60", n60.into())],
        &SPT_SILTY_SAND,
    )
}

/// Correction of a blow count for overburden.
///
/// C_N = sqrt(p_a/s'_v), at most the cap; p_a 100 kPa, s'_v vertical effective stress at the
/// test (Pa). Range: sand. Source: Liao and Whitman 1986, the cap by common practice. Sign:
/// none.
pub fn overburden_factor(stress: SoilStress, cap: f64, trace: &mut Trace) -> f64 {
    let free = (ATMOSPHERE.value / stress).sqrt();
    trace.step(
        "C_N",
        "sqrt(p_a/s'_v), at most the cap",
        free.min(cap),
        [
            ("p_a", ATMOSPHERE.value.into()),
            ("s'_v", stress.into()),
            ("cap", cap.into()),
        ],
        &LIAO_WHITMAN_1986,
    )
}

/// Blow count at 60 % energy and an overburden of 100 kPa.
///
/// (N_1)_60 = C_N N_60. Range: sand. Source: Liao and Whitman 1986. Sign: none.
pub fn n1_60(n60: f64, cn: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "(N_1)_60",
        "C_N N_60",
        cn * n60,
        [("C_N", cn.into()), ("N_60", n60.into())],
        &LIAO_WHITMAN_1986,
    )
}
