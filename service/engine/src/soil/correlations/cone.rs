//! Readings of a cone: total resistance, normalised resistance, friction angle, and the
//! index that tells what kind of soil the cone passed.

use super::ATMOSPHERE;
use crate::math;
use crate::quantity::{Angle, AngleUnit, SoilStress};
use crate::source::{
    CONE_TOTAL_RESISTANCE, KULHAWY_MAYNE_CPT, ROBERTSON_CAMPANELLA_1983, ROBERTSON_WRIDE_1998,
    Sourced,
};
use crate::trace::Trace;

/// Behaviour indices below which soil is sand-like and above which it is clay-like.
pub static BEHAVIOUR_LIMITS: Sourced<(f64, f64)> =
    Sourced::new("behaviour_index_limits", (2.5, 2.7), &ROBERTSON_WRIDE_1998);

/// Resistance of a cone corrected for the pore pressure behind it.
///
/// q_t = q_c + u_2 (1 - a); q_c measured resistance and u_2 pore pressure behind the cone (Pa),
/// a net area ratio. Range: any. Source: Lunne, Robertson and Powell 1997. Sign: none.
pub fn total_resistance(
    measured: SoilStress,
    pore: SoilStress,
    area_ratio: f64,
    trace: &mut Trace,
) -> SoilStress {
    trace.step(
        "q_t",
        "q_c + u_2 (1 - a)",
        measured + pore * (1.0 - area_ratio),
        [
            ("q_c", measured.into()),
            ("u_2", pore.into()),
            ("a", area_ratio.into()),
        ],
        &CONE_TOTAL_RESISTANCE,
    )
}

/// Normalised resistance of Kulhawy and Mayne.
///
/// q_t1 = (q_t/p_a)/sqrt(s'_v/p_a); q_t total resistance and s'_v vertical effective stress
/// (Pa), p_a 100 kPa. Range: s'_v above 0. Source: UFC 3-220-10, eq. 8-7. Sign: none.
pub fn kulhawy_mayne_resistance(total: SoilStress, stress: SoilStress, trace: &mut Trace) -> f64 {
    let pa = ATMOSPHERE.value;
    trace.step(
        "q_t1",
        "(q_t/p_a)/sqrt(s'_v/p_a)",
        (total / pa) / (stress / pa).sqrt(),
        [
            ("q_t", total.into()),
            ("s'_v", stress.into()),
            ("p_a", pa.into()),
        ],
        &KULHAWY_MAYNE_CPT,
    )
}

/// Friction angle by Kulhawy and Mayne.
///
/// phi' = 17.6 + 11 log10 q_t1 degrees; q_t1 normalised resistance. Range: clean sand. Source:
/// UFC 3-220-10, eq. 8-7. Sign: none.
pub fn kulhawy_mayne_cpt(normalised: f64, trace: &mut Trace) -> Angle {
    trace.step(
        "phi'",
        "17.6 + 11 log10 q_t1",
        Angle::new(17.6 + 11.0 * math::log10(normalised), AngleUnit::Deg),
        [("q_t1", normalised.into())],
        &KULHAWY_MAYNE_CPT,
    )
}

/// Friction angle by Robertson and Campanella.
///
/// tan phi' = \[log10(q_t/s'_v) + 0.29\]/2.68; the ratio of total resistance to vertical
/// effective stress. Range: uncemented quartz sand. Source: Robertson and Campanella 1983.
/// Sign: none.
pub fn robertson_campanella(ratio: f64, trace: &mut Trace) -> Angle {
    let tan = (math::log10(ratio) + 0.29) / 2.68;
    trace.step(
        "phi'",
        "atan{[log10(q_t/s'_v) + 0.29]/2.68}",
        Angle::from_si(math::atan(tan)),
        [("q_t/s'_v", ratio.into())],
        &ROBERTSON_CAMPANELLA_1983,
    )
}

/// Soil behaviour type index of a cone.
///
/// I_c = sqrt\[(3.47 - log10 Q_tn)^2 + (log10 F_r + 1.22)^2\], Q_tn = \[(q_t - s_v)/p_a\]
/// (p_a/s'_v)^n, F_r = 100 f_s/(q_t - s_v), n = 0.381 I_c + 0.05 s'_v/p_a - 0.15 up to 1;
/// stresses in Pa. Range: q_t above s_v, I_c from 1 to 4, held there. Source: Robertson and Wride 1998,
/// exponent of Zhang et al. 2002. Sign: none.
pub fn behaviour_index(
    total: SoilStress,
    sleeve: SoilStress,
    overburden: SoilStress,
    stress: SoilStress,
    trace: &mut Trace,
) -> f64 {
    let pa = ATMOSPHERE.value;
    let net = total - overburden;
    let friction = math::log10(100.0 * (sleeve / net)) + 1.22;
    let index = |n: f64| {
        let normalised = (net / pa) * math::pow(pa / stress, n);
        math::hypot(3.47 - math::log10(normalised), friction).clamp(1.0, 4.0)
    };
    // n moves by at most 0.381 |log10(p_a/s'_v)| of its last change
    let mut n = 1.0;
    for _ in 0..60 {
        n = (0.381 * index(n) + 0.05 * (stress / pa) - 0.15).min(1.0);
    }
    trace.step(
        "I_c",
        "sqrt[(3.47 - log10 Q_tn)^2 + (log10 F_r + 1.22)^2]",
        index(n),
        [
            ("q_t", total.into()),
            ("f_s", sleeve.into()),
            ("s_v", overburden.into()),
            ("s'_v", stress.into()),
            ("n", n.into()),
        ],
        &ROBERTSON_WRIDE_1998,
    )
}
