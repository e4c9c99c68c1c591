//! Friction angles of sand from blow counts and from relative density. Angles as found;
//! that they are held at 45 degrees is for `derive.rs`.

use super::ATMOSPHERE;
use crate::bearing::factors::nq_prandtl;
use crate::math;
use crate::quantity::{Angle, AngleUnit, SoilStress, StressUnit};
use crate::source::{
    BEARING_MEAN_STRESS, BOLTON_1986, BOLTON_1987, FRICTION_ANGLE_45, HATANAKA_UCHIDA_1996,
    KULHAWY_MAYNE_SPT, PECK_HANSON_THORNBURN, SHIOI_FUKUI_1982, Sourced,
};
use crate::trace::Trace;

/// Largest friction angle that is used, degrees.
pub static FRICTION_LIMIT: Sourced<f64> =
    Sourced::new("friction_angle_limit", 45.0, &FRICTION_ANGLE_45);
/// Least mean stress in the relation with relative density.
pub static MEAN_STRESS_LEAST: Sourced<SoilStress> = Sourced::new(
    "mean_stress_least",
    SoilStress::new(150.0, StressUnit::KPa),
    &BOLTON_1987,
);
/// Power of N_q in the mean stress under a base: p'/s'_v = N_q^0.5.
pub static MEAN_STRESS_POWER: Sourced<f64> =
    Sourced::new("bearing_mean_stress_power", 0.5, &BEARING_MEAN_STRESS);

fn degrees(value: f64) -> Angle {
    Angle::new(value, AngleUnit::Deg)
}

/// Friction angle by Peck, Hanson and Thornburn as fitted by Wolff.
///
/// phi' = 27.1 + 0.3 N - 0.00054 N^2 degrees; N = (N_1)_60. Range: N up to 60, clean sand.
/// Source: UFC 3-220-10, eq. 8-5. Sign: none.
pub fn peck_hanson_thornburn_wolff(n1_60: f64, trace: &mut Trace) -> Angle {
    trace.step(
        "phi'",
        "27.1 + 0.3 N - 0.00054 N^2",
        degrees(27.1 + 0.3 * n1_60 - 0.00054 * (n1_60 * n1_60)),
        [("N", n1_60.into())],
        &PECK_HANSON_THORNBURN,
    )
}

/// Friction angle by Kulhawy and Mayne.
///
/// phi' = atan{\[N_60/(12.2 + 20.3 s'_v/p_a)\]^0.34}; N_60 blow count, s'_v vertical effective
/// stress (Pa), p_a 100 kPa. Range: N_60 up to 60, clean sand. Source: UFC 3-220-10, eq. 8-4.
/// Sign: none.
pub fn kulhawy_mayne_spt(n60: f64, stress: SoilStress, trace: &mut Trace) -> Angle {
    let inner = n60 / (12.2 + 20.3 * (stress / ATMOSPHERE.value));
    trace.step(
        "phi'",
        "atan{[N_60/(12.2 + 20.3 s'_v/p_a)]^0.34}",
        Angle::from_si(math::atan(math::pow(inner, 0.34))),
        [
            ("N_60", n60.into()),
            ("s'_v", stress.into()),
            ("p_a", ATMOSPHERE.value.into()),
        ],
        &KULHAWY_MAYNE_SPT,
    )
}

/// Friction angle by Hatanaka and Uchida.
///
/// phi' = sqrt(15.4 N) + 20 degrees; N = (N_1)_60. Range: N up to 60, clean sand. Source: UFC
/// 3-220-10, eq. 8-6. Sign: none.
pub fn hatanaka_uchida(n1_60: f64, trace: &mut Trace) -> Angle {
    trace.step(
        "phi'",
        "sqrt(15.4 N) + 20",
        degrees((15.4 * n1_60).sqrt() + 20.0),
        [("N", n1_60.into())],
        &HATANAKA_UCHIDA_1996,
    )
}

/// Friction angle by Shioi and Fukui, for roads and bridges.
///
/// phi' = sqrt(15 N_60) + 15 degrees. Range: N_60 up to 60, clean sand. Source: UFC 3-220-10,
/// eq. 8-2. Sign: none.
pub fn shioi_fukui_roads(n60: f64, trace: &mut Trace) -> Angle {
    trace.step(
        "phi'",
        "sqrt(15 N_60) + 15",
        degrees((15.0 * n60).sqrt() + 15.0),
        [("N_60", n60.into())],
        &SHIOI_FUKUI_1982,
    )
}

/// Friction angle by Shioi and Fukui, for buildings.
///
/// phi' = 0.3 N_60 + 27 degrees. Range: N_60 up to 60, clean sand. Source: UFC 3-220-10, eq.
/// 8-3. Sign: none.
pub fn shioi_fukui_buildings(n60: f64, trace: &mut Trace) -> Angle {
    trace.step(
        "phi'",
        "0.3 N_60 + 27",
        degrees(0.3 * n60 + 27.0),
        [("N_60", n60.into())],
        &SHIOI_FUKUI_1982,
    )
}

/// Relative dilatancy index of sand.
///
/// I_R = I_D (10 - ln p') - 1, held between 0 and 4; I_D relative density, p' mean effective
/// stress at failure in kPa. Range: p' from 150 kPa. Source: Bolton 1986. Sign: none.
pub fn dilatancy_index(density: f64, mean: SoilStress, trace: &mut Trace) -> f64 {
    let free = density * (10.0 - math::ln(mean.get(StressUnit::KPa))) - 1.0;
    trace.step(
        "I_R",
        "I_D (10 - ln p') - 1, between 0 and 4; p' in kPa",
        free.clamp(0.0, 4.0),
        [("I_D", density.into()), ("p'", mean.into())],
        &BOLTON_1986,
    )
}

/// Friction angle of sand that dilates.
///
/// phi' = phi_cv + 3 I_R degrees; phi_cv friction angle at constant volume, I_R relative
/// dilatancy index. Range: I_R of 0 to 4, triaxial strain. Source: Bolton 1986. Sign: none.
pub fn bolton(critical: Angle, dilatancy: f64, trace: &mut Trace) -> Angle {
    trace.step(
        "phi'",
        "phi_cv + 3 I_R",
        critical + degrees(3.0 * dilatancy),
        [("phi_cv", critical.into()), ("I_R", dilatancy.into())],
        &BOLTON_1986,
    )
}

/// Mean effective stress at failure under a base in sand.
///
/// p' = s'_v sqrt(N_q), at least 150 kPa; s'_v vertical effective stress (Pa), N_q bearing
/// factor of the friction angle that p' itself gives. Range: bearing at depth. Source: Fleming
/// et al., Piling Engineering (memory); the least by the discussion of Bolton 1986. Sign: none.
pub fn bearing_mean_stress(
    density: f64,
    critical: Angle,
    stress: SoilStress,
    trace: &mut Trace,
) -> SoilStress {
    let off = &mut Trace::off();
    let least = MEAN_STRESS_LEAST.value.si();
    // p' lowers the angle and with it N_q: one root, found by halving
    let mut follows = |mean: f64| {
        let index = dilatancy_index(density, SoilStress::from_si(mean), off);
        let phi = bolton(critical, index, off).min(degrees(FRICTION_LIMIT.value));
        (stress.si() * nq_prandtl(phi, off).sqrt()).max(least)
    };
    let (mut low, mut high) = (least, follows(least));
    for _ in 0..100 {
        let middle = 0.5 * (low + high);
        if follows(middle) > middle {
            low = middle;
        } else {
            high = middle;
        }
    }
    trace.step(
        "p'",
        "s'_v sqrt(N_q) with the N_q of the angle that p' gives, at least 150 kPa",
        SoilStress::from_si(0.5 * (low + high)),
        [
            ("s'_v", stress.into()),
            ("I_D", density.into()),
            ("phi_cv", critical.into()),
        ],
        &BEARING_MEAN_STRESS,
    )
}
