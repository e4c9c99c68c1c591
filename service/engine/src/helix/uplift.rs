//! Uplift of a plate: breakout in sand and clay, critical depth ratios, and the lists
//! they rest on. One equation each.

use crate::math;
use crate::quantity::{Angle, AngleUnit, SoilStress, StressUnit};
use crate::source::{
    BREAKOUT_FORM, BREAKOUT_LISTS, CLAY_CRITICAL_DAS, CLAY_CRITICAL_FOUR, CLAY_UPLIFT,
    MITSCH_CLEMENCE_KU, Sourced, TANG_PHOON_2020,
};
use crate::trace::Trace;

/// A friction angle with its tangent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Friction {
    /// The angle.
    pub angle: Angle,
    /// Its tangent.
    pub tangent: f64,
}

impl Friction {
    /// The pair of an angle.
    pub fn of(angle: Angle) -> Self {
        Self {
            angle,
            tangent: math::tan(angle.si()),
        }
    }
}

/// Values listed by friction angle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AngleRow {
    /// Friction angle, degrees.
    pub degrees: f64,
    /// Growth m of the coefficient with the depth ratio.
    pub growth: f64,
    /// Critical depth ratio.
    pub critical: f64,
}

const fn row(degrees: f64, growth: f64, critical: f64) -> AngleRow {
    AngleRow {
        degrees,
        growth,
        critical,
    }
}

/// m and critical depth ratio of the breakout factor of a circular plate in sand.
pub static BREAKOUT_ROWS: Sourced<&[AngleRow]> = Sourced::new(
    "breakout_sand_rows",
    &[
        row(20.0, 0.05, 2.5),
        row(25.0, 0.10, 3.0),
        row(30.0, 0.15, 4.0),
        row(35.0, 0.25, 5.0),
        row(40.0, 0.35, 7.0),
        row(45.0, 0.50, 9.0),
        row(48.0, 0.60, 11.0),
    ],
    &BREAKOUT_LISTS,
);

/// Uplift coefficient K_u of the breakout factor.
pub static BREAKOUT_KU: Sourced<f64> = Sourced::new("breakout_sand_ku", 0.95, &BREAKOUT_LISTS);

/// m and critical depth ratio of K_u on the cylinder between helices.
pub static CYLINDER_ROWS: Sourced<&[AngleRow]> = Sourced::new(
    "cylinder_ku_rows",
    &[
        row(25.0, 0.033, 3.0),
        row(30.0, 0.075, 4.0),
        row(35.0, 0.18, 5.0),
        row(40.0, 0.25, 7.0),
        row(45.0, 0.289, 9.0),
    ],
    &MITSCH_CLEMENCE_KU,
);

/// Growth of the breakout factor in clay with the depth ratio.
pub static CLAY_BREAKOUT_GROWTH: Sourced<f64> =
    Sourced::new("clay_breakout_growth", 1.2, &CLAY_UPLIFT);

/// Critical depth ratio in clay: slope per kPa, intercept, cap.
pub static CLAY_CRITICAL: Sourced<(f64, f64, f64)> = Sourced::new(
    "clay_critical_embedment",
    (0.107, 2.5, 7.0),
    &CLAY_CRITICAL_DAS,
);

/// Share of the compression bearing that deep sand keeps in tension.
pub static SAND_TENSION_FACTOR: Sourced<f64> =
    Sourced::new("sand_tension_factor", 0.7, &TANG_PHOON_2020);

/// A row between the listed ones.
///
/// m and (H/D)_cr linear in phi between the listed angles, held at the ends; phi friction
/// angle. Range: up to the last row. Source: the list. Sign: none.
pub fn row_at(rows: &[AngleRow], phi: Angle) -> AngleRow {
    let degrees = phi.get(AngleUnit::Deg);
    let (first, last) = (rows[0], rows[rows.len() - 1]);
    if degrees <= first.degrees {
        return AngleRow { degrees, ..first };
    }
    for pair in rows.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        if degrees <= b.degrees {
            let t = (degrees - a.degrees) / (b.degrees - a.degrees);
            return AngleRow {
                degrees,
                growth: a.growth + t * (b.growth - a.growth),
                critical: a.critical + t * (b.critical - a.critical),
            };
        }
    }
    AngleRow { degrees, ..last }
}

/// Breakout factor of a circular plate in sand.
///
/// F_q = 1 + 2 (1 + m R) R K_u tan phi with R = min(H/D, (H/D)_cr); H embedment and D
/// diameter (m), m and (H/D)_cr of `BREAKOUT_ROWS`, K_u 0.95. Range: phi up to 48 deg.
/// Source: Meyerhof and Adams 1968; the form verified, the lists from memory. Sign: uplift
/// resistance is F_q s'_v, weight of the soil included.
pub fn breakout_factor_sand(
    friction: Friction,
    embedment_ratio: f64,
    row: AngleRow,
    ku: f64,
    trace: &mut Trace,
) -> f64 {
    let r = embedment_ratio.min(row.critical);
    trace.step(
        "F_q",
        "1 + 2 (1 + m R) R K_u tan phi, R = min(H/D, (H/D)_cr)",
        1.0 + 2.0 * (1.0 + row.growth * r) * r * ku * friction.tangent,
        [
            ("H/D", embedment_ratio.into()),
            ("(H/D)_cr", row.critical.into()),
            ("m", row.growth.into()),
            ("K_u", ku.into()),
            ("phi", friction.angle.into()),
        ],
        &BREAKOUT_FORM,
    )
}

/// Breakout factor of a circular plate in clay.
///
/// F_c = min(1.2 H/D, 9); H embedment and D diameter (m). Range: H/D from 0. Source:
/// Meyerhof and Adams 1968 (memory). Sign: uplift resistance is F_c s_u + s'_v.
pub fn breakout_factor_clay(embedment_ratio: f64, growth: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "F_c",
        "min(1.2 H/D, 9)",
        (growth * embedment_ratio).min(9.0),
        [("H/D", embedment_ratio.into())],
        &CLAY_UPLIFT,
    )
}

/// Critical depth ratio in clay by Das.
///
/// (H/D)_cr = min(0.107 s_u + 2.5, 7), s_u in kPa. Range: s_u from 0. Source: Das 1978,
/// 1980 (memory). Sign: none.
pub fn critical_ratio_das(su: SoilStress, trace: &mut Trace) -> f64 {
    let (slope, intercept, cap) = CLAY_CRITICAL.value;
    trace.step(
        "(H/D)_cr",
        "min(0.107 s_u/kPa + 2.5, 7)",
        (slope * su.get(StressUnit::KPa) + intercept).min(cap),
        [("s_u", su.into())],
        &CLAY_CRITICAL_DAS,
    )
}

/// Critical depth ratio in clay from model screw piles.
///
/// (H/D)_cr = 4. Range: clay. Source: Narasimha Rao, quoted by Tappenden and Sego 2007. Sign:
/// none.
pub fn critical_ratio_four(trace: &mut Trace) -> f64 {
    trace.step("(H/D)_cr", "4", 4.0, [], &CLAY_CRITICAL_FOUR)
}

/// Lateral stress coefficient on the cylinder between helices in sand in tension.
///
/// K_u = 0.6 + m min(H/D, (H/D)_cr); H embedment and D diameter of the top helix (m), m and
/// (H/D)_cr of `CYLINDER_ROWS`. Range: phi 25 to 45 deg; below 25 deg the growth is not
/// counted, K_u = 0.6. Source: Mitsch and Clemence 1985 (memory). Sign: none.
pub fn ku_cylinder(embedment_ratio: f64, row: AngleRow, trace: &mut Trace) -> f64 {
    // at the lower end of the list, with room for the last bit of a converted angle
    let growth = if row.degrees < 25.0 - 1e-9 {
        0.0
    } else {
        row.growth
    };
    trace.step(
        "K_u",
        "0.6 + m min(H/D, (H/D)_cr)",
        0.6 + growth * embedment_ratio.min(row.critical),
        [
            ("m", growth.into()),
            ("H/D", embedment_ratio.into()),
            ("(H/D)_cr", row.critical.into()),
        ],
        &MITSCH_CLEMENCE_KU,
    )
}
