//! Equations of drag on a shaft, one function each. They judge nothing.

use crate::quantity::{Force, Length, Size, SoilStress, UnitWeight};
use crate::source::{DERIVED, GEC12_NEUTRAL_PLANE, Reference, UFC_DOWNDRAG};
use crate::trace::Trace;

/// Pore pressure at rest below a water table.
///
/// u = gamma_w max(z - z_w, 0); gamma_w unit weight of water (N/m3), z depth (m), z_w depth of
/// the water table (m); Pa. Range: any. Source: hydrostatics. Depth down.
pub fn pore_pressure(
    water: UnitWeight,
    depth: Length,
    water_depth: Length,
    trace: &mut Trace,
) -> SoilStress {
    let below = (depth - water_depth).max(Length::ZERO);
    trace.step(
        "u",
        "gamma_w max(z - z_w, 0)",
        SoilStress::from_si(water.si() * below.si()),
        [
            ("gamma_w", water.into()),
            ("z", depth.into()),
            ("z_w", water_depth.into()),
        ],
        &DERIVED,
    )
}

/// Vertical effective stress.
///
/// s'_v = s_v - u; s_v total vertical stress with the surcharge (Pa), u pore pressure (Pa).
/// Range: any. Source: definition. Compression positive.
pub fn effective_stress(total: SoilStress, pore: SoilStress, trace: &mut Trace) -> SoilStress {
    trace.step(
        "s'_v",
        "s_v - u",
        total - pore,
        [("s_v", total.into()), ("u", pore.into())],
        &DERIVED,
    )
}

/// Unit friction on the shaft.
///
/// f = c s, at most f_lim; c beta or alpha (1), s vertical effective stress or undrained
/// strength (Pa), f_lim limit (Pa) where there is one. Range: c from 0. Source: UFC 3-220-20,
/// 6-7.4. Never negative.
pub fn unit_friction(
    factor: f64,
    stress: SoilStress,
    limit: Option<SoilStress>,
    trace: &mut Trace,
) -> SoilStress {
    let free = stress * factor;
    match limit {
        None => trace.step(
            "f",
            "c s",
            free,
            [("c", factor.into()), ("s", stress.into())],
            &UFC_DOWNDRAG,
        ),
        Some(limit) => trace.step(
            "f",
            "min(c s, f_lim)",
            free.min(limit),
            [
                ("c", factor.into()),
                ("s", stress.into()),
                ("f_lim", limit.into()),
            ],
            &UFC_DOWNDRAG,
        ),
    }
}

/// Friction over a stretch in which the unit friction is a straight line.
///
/// F = p (f_1 + f_2) h / 2; p perimeter (m), f_1 and f_2 unit friction at its ends (Pa), h its
/// length (m); N. Range: from 0. Source: geometry.
pub fn stretch_friction(
    perimeter: Size,
    ends: [SoilStress; 2],
    length: Length,
    trace: &mut Trace,
) -> Force {
    let [f_1, f_2] = ends;
    trace.step(
        "F",
        "p (f_1 + f_2) h / 2",
        Force::from_si(perimeter.si() * (f_1 + f_2).si() * length.si() / 2.0),
        [
            ("p", perimeter.into()),
            ("f_1", f_1.into()),
            ("f_2", f_2.into()),
            ("h", length.into()),
        ],
        &DERIVED,
    )
}

/// Resistance of the toe that is mobilised.
///
/// R_m = m R_t; m mobilised part (1), R_t ultimate resistance (N). Range: m 0 to 1. Source:
/// definition.
pub fn mobilised_toe(ratio: f64, ultimate: Force, trace: &mut Trace) -> Force {
    trace.step(
        "R_m",
        "m R_t",
        ultimate * ratio,
        [("m", ratio.into()), ("R_t", ultimate.into())],
        &DERIVED,
    )
}

/// How far into a stretch a rising quadratic reaches nil.
///
/// x = -2 g / (b + sqrt(b2 - 4 a g)), the root of g + b x + a x2 = 0 with g < 0 in the form
/// that loses no digits; g at the start of the stretch (N), b its slope there (N/m), a half the
/// change of slope (N/m2), a of either sign as long as the quadratic rises over the stretch.
/// Range: 0 to the length h of the stretch (m), within which it is held. Source: algebra.
pub fn rise_to_nil(g: f64, b: f64, a: f64, h: f64) -> f64 {
    let under = (b * b - 4.0 * a * g).max(0.0);
    let bottom = b + under.sqrt();
    if bottom > 0.0 {
        (-2.0 * g / bottom).clamp(0.0, h)
    } else {
        h
    }
}

/// Depth of the neutral plane, where load and resistance balance.
///
/// z_n: Q + S_u(z) = R_m + S_l(L) - S_l(z); Q permanent load (N), S_u and S_l upper and lower
/// friction summed down to z (N), R_m mobilised resistance of the toe at depth L (N). Range: z
/// along the shaft. Source: FHWA-NHI-16-064, D.17; UFC 3-220-20, 6-7.4. Depth down.
pub fn neutral_plane(
    depth: Length,
    load: Force,
    toe: Force,
    shaft: Force,
    trace: &mut Trace,
) -> Length {
    trace.step(
        "z_n",
        "z where Q + S_u(z) = R_m + S_l(L) - S_l(z)",
        depth,
        [
            ("Q", load.into()),
            ("R_m", toe.into()),
            ("S_l(L)", shaft.into()),
        ],
        &GEC12_NEUTRAL_PLANE,
    )
}

/// Largest load in the pile.
///
/// Q_max = Q + DF; Q permanent load (N), DF drag force (N). Range: from 0. Source: statics.
/// Downward positive.
pub fn maximum_load(load: Force, drag: Force, trace: &mut Trace) -> Force {
    trace.step(
        "Q_max",
        "Q + DF",
        load + drag,
        [("Q", load.into()), ("DF", drag.into())],
        &DERIVED,
    )
}

/// Load that the steel must bear.
///
/// P = gamma_Q Q + gamma_DF DF; Q permanent load (N), DF drag force (N), gamma their factors
/// (1). Range: factors from 1. Source: UFC 3-220-20, 6-7.4; FHWA-NHI-16-064, eq. 7-70.
/// Downward positive.
pub fn structural_load(
    factors: [f64; 2],
    load: Force,
    drag: Force,
    source: &'static Reference,
    trace: &mut Trace,
) -> Force {
    let [gamma_q, gamma_df] = factors;
    trace.step(
        "P",
        "gamma_Q Q + gamma_DF DF",
        load * gamma_q + drag * gamma_df,
        [
            ("gamma_Q", gamma_q.into()),
            ("Q", load.into()),
            ("gamma_DF", gamma_df.into()),
            ("DF", drag.into()),
        ],
        source,
    )
}

/// Factored resistance of the steel. P_r = phi P_n; P_n nominal resistance (N), phi resistance
/// factor (1). Range: phi 0 to 1. Source: limit states design. Compression positive.
pub fn factored_strength(phi: f64, nominal: Force, trace: &mut Trace) -> Force {
    trace.step(
        "P_r",
        "phi P_n",
        nominal * phi,
        [("phi", phi.into()), ("P_n", nominal.into())],
        &DERIVED,
    )
}

/// Resistance factor at which the steel just bears its load. phi_min = P / P_n; P factored load
/// (N), P_n nominal resistance (N). Range: P_n above 0. Source: algebra.
pub fn least_factor(load: Force, nominal: Force, trace: &mut Trace) -> f64 {
    trace.step(
        "phi_min",
        "P / P_n",
        load / nominal,
        [("P", load.into()), ("P_n", nominal.into())],
        &DERIVED,
    )
}

/// Settlement of soil that collapses on wetting. s = CP H; CP collapse potential (1), H
/// thickness that collapses (m). Range: CP 0 to 1. Source: definition of the potential. Down
/// positive.
pub fn collapse_settlement(potential: f64, thickness: Length, trace: &mut Trace) -> Size {
    trace.step(
        "s",
        "CP H",
        Size::from(thickness * potential),
        [("CP", potential.into()), ("H", thickness.into())],
        &DERIVED,
    )
}
