//! Torsional strength of the bare shaft section: an estimate that never stands in for
//! the supplier's rating. Axial strength and buckling are not here.

use super::codes::{methods, refusals, warnings};
use super::equipment::{ShaftTorsion, ShaftTorsionSection};
use super::outcome::TorsionSectionOutcome;
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Issue, Work};
use crate::math::PI;
use crate::quantity::{LengthUnit, Size, SteelStress, StressUnit, Torque, round9};
use crate::shaft::{Shaft, SquareShaft};
use crate::source::{
    AISC_360_DESIGN_WALL, AISC_360_H3_1, AISC_360_SHEAR_YIELD, STEEL_MODULUS, Sourced,
    TORSION_ELASTIC, TORSION_SQUARE,
};
use crate::trace::Trace;

/// Yield in shear over yield in tension.
pub static SHEAR_YIELD_RATIO: Sourced<f64> =
    Sourced::new("shear_yield_ratio", 0.6, &AISC_360_SHEAR_YIELD);
/// Design wall over nominal wall.
pub static DESIGN_WALL: Sourced<f64> =
    Sourced::new("design_wall_ratio", 0.93, &AISC_360_DESIGN_WALL);
/// Elastic modulus of steel.
pub static MODULUS: Sourced<SteelStress> = Sourced::new(
    "steel_elastic_modulus",
    SteelStress::new(29_000.0, StressUnit::Ksi),
    &STEEL_MODULUS,
);
/// Elastic torsion modulus of a square over its side cubed.
pub static SQUARE_MODULUS: Sourced<f64> =
    Sourced::new("square_torsion_modulus", 0.208, &TORSION_SQUARE);

/// Shear stress at which steel is taken to yield.
///
/// tau_y = 0.6 F_y
///
/// F_y yield strength, Pa. Source: AISC 360, from memory. Positive.
pub fn shear_yield(yield_strength: SteelStress, trace: &mut Trace) -> SteelStress {
    trace.step(
        "tau_y",
        "0.6 F_y",
        yield_strength * SHEAR_YIELD_RATIO.value,
        [("F_y", yield_strength.into())],
        &AISC_360_SHEAR_YIELD,
    )
}

/// Torque at first yield of a round tube.
///
/// T = tau_y J / (D/2), J = pi (D4 - d4)/32, d = D - 2t
///
/// tau_y yield in shear, Pa; D outside diameter, m; t wall, m, at most D/2. Source: elastic
/// torsion of a circular section. Positive.
pub fn elastic_round(d: Size, wall: Size, tau_y: SteelStress, trace: &mut Trace) -> Torque {
    let outer = d.si();
    let inner = outer - 2.0 * wall.si();
    let polar = PI * (outer * outer * outer * outer - inner * inner * inner * inner) / 32.0;
    trace.step(
        "T_el",
        "tau_y J / (D/2), J = pi (D4 - (D - 2t)4)/32",
        Torque::from_si(tau_y.si() * polar / (outer / 2.0)),
        [("D", d.into()), ("t", wall.into()), ("tau_y", tau_y.into())],
        &TORSION_ELASTIC,
    )
}

/// Nominal torsional strength of a round tube, thin-wall form.
///
/// T_n = F_cr C, C = pi (D - t)2 t / 2, F_cr = 0.60 E / (D/t)^1.5 but at most tau_y = 0.6 F_y
///
/// D outside diameter, m; t wall, m; E elastic modulus, Pa. The alternative for F_cr with the
/// length is left out: it can only raise F_cr. Source: AISC 360 H3.1, from memory. Positive.
pub fn thin_round(d: Size, wall: Size, tau_y: SteelStress, trace: &mut Trace) -> Torque {
    let slenderness = d / wall;
    let buckling = 0.60 * MODULUS.value.si() / (slenderness * slenderness.sqrt());
    let critical = SteelStress::from_si(buckling).min(tau_y);
    let mean = d.si() - wall.si();
    trace.step(
        "T_n",
        "F_cr pi (D - t)2 t / 2, F_cr = min(0.60 E / (D/t)^1.5, tau_y)",
        Torque::from_si(critical.si() * PI * mean * mean * wall.si() / 2.0),
        [
            ("D", d.into()),
            ("t", wall.into()),
            ("F_cr", critical.into()),
        ],
        &AISC_360_H3_1,
    )
}

/// Torque at first yield of a solid square bar.
///
/// T = 0.208 a3 tau_y
///
/// a side, m, corners sharp; tau_y yield in shear, Pa. Source: Civil Engineering Formulas,
/// Fig. 2.1; Saint-Venant's series gives 0.20817. Positive.
pub fn elastic_square(side: Size, tau_y: SteelStress, trace: &mut Trace) -> Torque {
    let a = side.si();
    trace.step(
        "T_el",
        "0.208 a3 tau_y",
        Torque::from_si(SQUARE_MODULUS.value * a * a * a * tau_y.si()),
        [("a", side.into()), ("tau_y", tau_y.into())],
        &TORSION_SQUARE,
    )
}

/// Faults of the shaft that need more than one member to be seen.
pub(crate) fn shaft_faults(
    shaft: Option<&Shaft>,
    torsion: Option<&ShaftTorsion>,
    issues: &mut Vec<Issue>,
) {
    let section = torsion.is_some_and(|t| t.section.is_some());
    match shaft {
        None if section => issues.push(Issue::new(
            "",
            &MISSING_MEMBER,
            "`shaft` is needed: `torsion.section` depends on it",
        )),
        None => {}
        Some(Shaft::Round(round)) => match round.wall_thickness {
            None if section => issues.push(Issue::new(
                "/shaft/round",
                &MISSING_MEMBER,
                "`wall_thickness` is needed: `torsion.section` depends on it",
            )),
            Some(wall) if round9(2.0 * wall.si() / round.outside_diameter.si()) > 1.0 => issues
                .push(
                    Issue::new(
                        "/shaft/round/wall_thickness",
                        &refusals::SHAFT_WALL_TOO_THICK,
                        format!("{} mm", round9(wall.get(LengthUnit::Mm))),
                    )
                    .limit(format!(
                        "{} mm, half the outside diameter",
                        round9(round.outside_diameter.get(LengthUnit::Mm) / 2.0)
                    )),
                ),
            _ => {}
        },
        Some(Shaft::Square(square)) => diagonal_fault(square, issues),
    }
}

/// A diagonal between the side (a circle) and side x sqrt 2 (sharp corners), 0.5 mm aside.
fn diagonal_fault(square: &SquareShaft, issues: &mut Vec<Issue>) {
    let Some(diagonal) = square.diagonal else {
        return;
    };
    let sharp = square.side * std::f64::consts::SQRT_2;
    let slack = super::factor::WIDTH_TOLERANCE.value;
    if round9(diagonal / square.side) < 1.0 || diagonal > sharp + slack {
        issues.push(
            Issue::new(
                "/shaft/square/diagonal",
                &refusals::SHAFT_DIAGONAL_IMPOSSIBLE,
                format!("{} mm", round9(diagonal.get(LengthUnit::Mm))),
            )
            .limit(format!(
                "{} to {} mm",
                round9(square.side.get(LengthUnit::Mm)),
                round9(sharp.get(LengthUnit::Mm))
            )),
        );
    }
}

/// Estimate of the bare section. The wall of a round shaft has been seen to be there.
pub(super) fn section(
    steel: &ShaftTorsionSection,
    shaft: &Shaft,
    work: &mut Work,
) -> TorsionSectionOutcome {
    work.trace.about(|| "shaft section".to_owned());
    work.take(&SHEAR_YIELD_RATIO);
    let tau_y = shear_yield(steel.yield_strength, &mut work.trace);
    let out = match shaft {
        Shaft::Square(square) => {
            work.method(&methods::SECTION_SQUARE);
            work.take(&SQUARE_MODULUS);
            let elastic = elastic_square(square.side, tau_y, &mut work.trace);
            TorsionSectionOutcome {
                design_wall: None,
                shear_yield: tau_y,
                elastic,
                thin_wall: None,
                estimate: elastic,
                source: (&TORSION_SQUARE).into(),
            }
        }
        Shaft::Round(round) => {
            work.method(&methods::SECTION_ROUND);
            work.take(&MODULUS);
            let solid = round.outside_diameter / 2.0;
            let nominal = round.wall_thickness.unwrap_or(solid);
            let ratio = match steel.design_wall_ratio {
                Some(own) => own,
                // a solid bar has no wall to be rolled thin
                None if round9(nominal / solid) >= 1.0 => 1.0,
                None => work.take(&DESIGN_WALL),
            };
            let wall = nominal * ratio;
            let elastic = elastic_round(round.outside_diameter, wall, tau_y, &mut work.trace);
            let thin = thin_round(round.outside_diameter, wall, tau_y, &mut work.trace);
            TorsionSectionOutcome {
                design_wall: Some(wall),
                shear_yield: tau_y,
                elastic,
                thin_wall: Some(thin),
                estimate: elastic.min(thin),
                source: if elastic <= thin {
                    (&TORSION_ELASTIC).into()
                } else {
                    (&AISC_360_H3_1).into()
                },
            }
        }
    };
    work.trace.about(String::new);
    out
}

/// Warns where the rating is above what the bare section bears.
pub(super) fn compare(
    rating: Option<Torque>,
    section: Option<&TorsionSectionOutcome>,
    work: &mut Work,
) {
    if let (Some(rating), Some(section)) = (rating, section)
        && round9(rating / section.estimate) > 1.0
    {
        work.warn(
            &warnings::RATING_ABOVE_SECTION,
            format!(
                "rating {} N m, section {} N m",
                round9(rating.si()),
                round9(section.estimate.si())
            ),
        );
    }
}
