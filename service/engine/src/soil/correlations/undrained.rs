//! Undrained strength of clay and silt from blow counts, cones, stress history and
//! plasticity.

use super::ATMOSPHERE;
use crate::math;
use crate::quantity::SoilStress;
use crate::source::{CONE_FACTOR_UFC, LADD_FOOTT_1974, SALGADO_2008, SKEMPTON_1957, Sourced};
use crate::trace::Trace;

/// Plasticity indices (ratios) between which strength is known from blow counts.
pub static PLASTICITY_RANGE: Sourced<(f64, f64)> =
    Sourced::new("spt_plasticity_range", (0.15, 0.60), &SALGADO_2008);
/// alpha' by plasticity index (ratio).
pub static SALGADO_ROWS: Sourced<[(f64, f64); 6]> = Sourced::new(
    "spt_strength_factors",
    [
        (0.15, 0.068),
        (0.20, 0.055),
        (0.25, 0.048),
        (0.30, 0.045),
        (0.40, 0.044),
        (0.60, 0.043),
    ],
    &SALGADO_2008,
);
/// Cone factor N_kt.
pub static CONE_FACTOR: Sourced<f64> = Sourced::new("cone_factor", 15.0, &CONE_FACTOR_UFC);
/// Strength over effective stress of normally consolidated clay, S.
pub static NORMAL_STRENGTH_RATIO: Sourced<f64> =
    Sourced::new("normal_strength_ratio", 0.22, &LADD_FOOTT_1974);
/// Exponent on the overconsolidation ratio, m.
pub static OVERCONSOLIDATION_EXPONENT: Sourced<f64> =
    Sourced::new("overconsolidation_exponent", 0.8, &LADD_FOOTT_1974);

/// Factor between blow count and undrained strength.
///
/// alpha' by plasticity index: 0.068, 0.055, 0.048, 0.045, 0.044, 0.043 at 15, 20, 25, 30, 40,
/// 60 %, linear between. Range: 15 to 60 %. Source: Salgado 2008. Sign: none.
pub fn salgado_factor(plasticity: f64, trace: &mut Trace) -> f64 {
    let rows = &SALGADO_ROWS.value;
    let above = rows.iter().position(|row| plasticity <= row.0);
    let factor = match above {
        Some(0) => rows[0].1,
        Some(i) => {
            let (a, b) = (rows[i - 1], rows[i]);
            a.1 + (b.1 - a.1) * ((plasticity - a.0) / (b.0 - a.0))
        }
        None => rows[rows.len() - 1].1,
    };
    trace.step(
        "alpha'",
        "by plasticity index",
        factor,
        [("PI", plasticity.into())],
        &SALGADO_2008,
    )
}

/// Undrained strength from a blow count.
///
/// s_u = alpha' p_a N_60; alpha' factor by plasticity index, p_a 100 kPa, N_60 blow count.
/// Range: N_60 up to 100. Source: Salgado 2008. Sign: none.
pub fn salgado(n60: f64, factor: f64, trace: &mut Trace) -> SoilStress {
    trace.step(
        "s_u",
        "alpha' p_a N_60",
        ATMOSPHERE.value * (factor * n60),
        [
            ("alpha'", factor.into()),
            ("p_a", ATMOSPHERE.value.into()),
            ("N_60", n60.into()),
        ],
        &SALGADO_2008,
    )
}

/// Undrained strength from a cone.
///
/// s_u = (q_t - s_v)/N_kt; q_t total resistance and s_v vertical total stress (Pa), N_kt cone
/// factor. Range: q_t above s_v. Source: UFC 3-220-10, 8-3.3. Sign: none.
pub fn cone_strength(
    total: SoilStress,
    overburden: SoilStress,
    factor: f64,
    trace: &mut Trace,
) -> SoilStress {
    trace.step(
        "s_u",
        "(q_t - s_v)/N_kt",
        (total - overburden) / factor,
        [
            ("q_t", total.into()),
            ("s_v", overburden.into()),
            ("N_kt", factor.into()),
        ],
        &CONE_FACTOR_UFC,
    )
}

/// Strength over effective stress of normally consolidated clay by plasticity.
///
/// S = 0.11 + 0.37 PI; PI plasticity index as a ratio. Range: 10 to 100 %. Source: Skempton
/// 1957. Sign: none.
pub fn skempton_ratio(plasticity: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "S",
        "0.11 + 0.37 PI",
        0.11 + 0.37 * plasticity,
        [("PI", plasticity.into())],
        &SKEMPTON_1957,
    )
}

/// Undrained strength from stress history.
///
/// s_u = s'_v S OCR^m; s'_v vertical effective stress (Pa), S strength over effective stress of
/// the normally consolidated soil, OCR overconsolidation ratio, m exponent. Range: OCR from 1.
/// Source: Ladd and Foott 1974. Sign: none.
pub fn shansep(stress: SoilStress, s: f64, ocr: f64, m: f64, trace: &mut Trace) -> SoilStress {
    trace.step(
        "s_u",
        "s'_v S OCR^m",
        stress * (s * math::pow(ocr, m)),
        [
            ("s'_v", stress.into()),
            ("S", s.into()),
            ("OCR", ocr.into()),
            ("m", m.into()),
        ],
        &LADD_FOOTT_1974,
    )
}
