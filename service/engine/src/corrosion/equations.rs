//! Equations of loss and of the section after it, one function each. They judge nothing.

use super::constants::{PowerLaw, TABLE_YEARS};
use crate::math::{PI, pow};
use crate::quantity::{
    Coat, DurationUnit, Force, LengthUnit, Lifetime, LossRate, Size, SteelArea, SteelStress,
};
use crate::source::{
    AC358_CORROSION, CALLER, DERIVED, EN_1993_5_NA, EN_1993_5_NOTES, FHWA_CORROSION, Reference,
};
use crate::trace::Trace;

/// Time until the zinc on a face is gone.
///
/// t_l = t_z / r_1 for t_z <= r_1 t_1, else t_1 + (t_z - r_1 t_1) / r_2; t_z zinc (m), r_1 its
/// loss in the first time t_1 (m/s, s), r_2 after it (m/s); s. Range: t_z from 0. Source:
/// FHWA-NHI-10-025, E4.
pub fn zinc_life(
    zinc: Coat,
    first: LossRate,
    first_time: Lifetime,
    later: LossRate,
    trace: &mut Trace,
) -> Lifetime {
    let early = first.si() * first_time.si();
    let given = [
        ("t_z", zinc.into()),
        ("r_1", first.into()),
        ("t_1", first_time.into()),
        ("r_2", later.into()),
    ];
    if zinc.si() <= early {
        let life = Lifetime::from_si(zinc.si() / first.si());
        trace.step("t_l", "t_z / r_1", life, given, &FHWA_CORROSION)
    } else {
        let life = first_time + Lifetime::from_si((zinc.si() - early) / later.si());
        let text = "t_1 + (t_z - r_1 t_1) / r_2";
        trace.step("t_l", text, life, given, &FHWA_CORROSION)
    }
}

/// Steel lost at a steady rate after a time.
///
/// s = r max(t - t_0, 0); r rate (m/s), t life (s), t_0 time before the loss begins (s); m.
/// Range: from 0. Source: definition of the rate. What it counts is that of the rate.
pub fn steady_loss(
    rate: LossRate,
    life: Lifetime,
    delay: Lifetime,
    source: &'static Reference,
    trace: &mut Trace,
) -> Coat {
    let time = (life - delay).max(Lifetime::ZERO);
    trace.step(
        "s",
        "r max(t - t_0, 0)",
        Coat::from_si(rate.si() * time.si()),
        [
            ("r", rate.into()),
            ("t", life.into()),
            ("t_0", delay.into()),
        ],
        source,
    )
}

/// Loss by a table of lives, linear between two of them.
///
/// s = s_1 + (s_2 - s_1)(t - t_1)/(t_2 - t_1); s_1, s_2 losses at the lives t_1, t_2 on either
/// side (mm, years); m for each face. Range: t 5 to 125 years. Source: UK National Annex to BS
/// EN 1993-5, Table 4.1.
pub fn table_loss(row: &[f64; 6], life: Lifetime, trace: &mut Trace) -> Coat {
    let years = life.get(DurationUnit::Year);
    let last = TABLE_YEARS.len() - 2;
    let at = (0..last)
        .find(|i| years <= TABLE_YEARS[i + 1])
        .unwrap_or(last);
    let (t_1, t_2) = (TABLE_YEARS[at], TABLE_YEARS[at + 1]);
    let (s_1, s_2) = (row[at], row[at + 1]);
    let loss = s_1 + (s_2 - s_1) * (years - t_1) / (t_2 - t_1);
    let mm = |value| Coat::new(value, LengthUnit::Mm);
    let year = |value| Lifetime::new(value, DurationUnit::Year);
    trace.step(
        "s",
        "s_1 + (s_2 - s_1) (t - t_1) / (t_2 - t_1)",
        mm(loss),
        [
            ("s_1", mm(s_1).into()),
            ("s_2", mm(s_2).into()),
            ("t", life.into()),
            ("t_1", year(t_1).into()),
            ("t_2", year(t_2).into()),
        ],
        &EN_1993_5_NA,
    )
}

/// Loss in compacted fill. s_c = k s; k factor (1), s loss in other fill (m). Range: k 0 to 1.
/// Source: EN 1993-5, notes to Table 4-1 (from memory).
pub fn compacted_loss(factor: f64, loss: Coat, trace: &mut Trace) -> Coat {
    trace.step(
        "s_c",
        "k s",
        loss * factor,
        [("k", factor.into()), ("s", loss.into())],
        &EN_1993_5_NOTES,
    )
}

/// Loss by a power of time.
///
/// s = a max(t - t_0, 0)^n; a loss in the first year (m), t life (years), t_0 time before the
/// loss begins (years), n exponent (1); m, both faces together. Range: any. Source: acceptance
/// criteria AC358, 3.9 (from memory).
pub fn power_loss(law: &PowerLaw, life: Lifetime, trace: &mut Trace) -> Coat {
    let years = (life.get(DurationUnit::Year) - law.delay).max(0.0);
    trace.step(
        "s",
        "a max(t - t_0, 0)^n",
        law.first * pow(years, law.exponent),
        [
            ("a", law.first.into()),
            ("t", life.into()),
            ("t_0", Lifetime::new(law.delay, DurationUnit::Year).into()),
            ("n", law.exponent.into()),
        ],
        &AC358_CORROSION,
    )
}

/// Loss of each face, from a loss for both together.
///
/// s_f = s / n; s loss (m), n faces exposed (1). Range: n 1 or 2. Source: definition; the whole
/// on a face exposed alone is on the safe side.
pub fn share_of_face(loss: Coat, faces: u32, trace: &mut Trace) -> Coat {
    let n = f64::from(faces);
    trace.step(
        "s_f",
        "s / n",
        loss / n,
        [("s", loss.into()), ("n", n.into())],
        &DERIVED,
    )
}

/// Thickness that is left. t_r = max(t - s, 0); t thickness, diameter or side (m), s loss over
/// all its faces (m). Range: any. Source: geometry.
pub fn thickness_left(before: Size, loss: Coat, trace: &mut Trace) -> Size {
    trace.step(
        "t_r",
        "max(t - s, 0)",
        (before - Size::from(loss)).max(Size::ZERO),
        [("t", before.into()), ("s", loss.into())],
        &DERIVED,
    )
}

/// Steel area of a tube. A = pi t (d - t); d outside diameter (m), t wall (m). Range: t up to
/// d/2. Source: geometry.
pub fn tube_area(outside: Size, wall: Size, trace: &mut Trace) -> SteelArea {
    trace.step(
        "A",
        "pi t (d - t)",
        SteelArea::from_si(PI * wall.si() * (outside.si() - wall.si())),
        [("t", wall.into()), ("d", outside.into())],
        &DERIVED,
    )
}

/// Area of a round bar. A = pi d2 / 4; d diameter (m). Range: any. Source: geometry.
pub fn round_area(diameter: Size, trace: &mut Trace) -> SteelArea {
    trace.step(
        "A",
        "pi d2 / 4",
        SteelArea::from_si(PI * diameter.si() * diameter.si() / 4.0),
        [("d", diameter.into())],
        &DERIVED,
    )
}

/// Area of a rectangle of steel. A = b t; b width or side (m), t thickness or side (m). Range:
/// any. Source: geometry.
pub fn flat_area(width: Size, thickness: Size, trace: &mut Trace) -> SteelArea {
    trace.step(
        "A",
        "b t",
        SteelArea::from_si(width.si() * thickness.si()),
        [("b", width.into()), ("t", thickness.into())],
        &DERIVED,
    )
}

/// Strength of a section in tension. T_n = F_y A; F_y yield strength (Pa), A area (m2); N.
/// Range: any. Source: statics. Tension positive.
pub fn nominal_strength(yield_strength: SteelStress, area: SteelArea, trace: &mut Trace) -> Force {
    trace.step(
        "T_n",
        "F_y A",
        Force::from_si(yield_strength.si() * area.si()),
        [("F_y", yield_strength.into()), ("A", area.into())],
        &DERIVED,
    )
}

/// Factored strength of a section. T_r = phi T_n; phi resistance factor (1), T_n nominal
/// strength (N). Range: phi 0 to 1. Source: limit states design. Tension positive.
pub fn factored_strength(phi: f64, nominal: Force, trace: &mut Trace) -> Force {
    trace.step(
        "T_r",
        "phi T_n",
        nominal * phi,
        [("phi", phi.into()), ("T_n", nominal.into())],
        &CALLER,
    )
}
