//! A group pulled up: the weight of the block of soil it lifts, with straight sides or with
//! sides that lean out, and the shear on its sides.

use super::evaluate::GroupStart;
use super::outcome::{BlockPlan, BlockSide, UpliftBlockFindings};
use super::request::UpliftBlock;
use super::sides::{sides, sum_of_sides};
use crate::helix::ground::Ground;
use crate::quantity::{Force, Length, Volume};
use crate::soil::Strata;
use crate::source::{BLOCK_LEANING, BLOCK_UPLIFT};
use crate::trace::Trace;

/// The block, as sent or as computed; none without a base.
pub(super) fn uplift_block(
    start: &GroupStart,
    plan: &BlockPlan,
    trace: &mut Trace,
) -> Option<UpliftBlockFindings> {
    if let UpliftBlock::Given(given) = start.uplift_block() {
        let (weight, shear) = (given.effective_weight, given.ultimate_shear);
        return Some(UpliftBlockFindings {
            from_request: true,
            base_depth: None,
            volume: None,
            effective_weight: weight,
            shear,
            sides: Vec::new(),
            total: uplift_total(weight, shear, trace),
        });
    }
    let base = start.base?;
    let ground = &start.ground;
    trace.about(|| "block in tension".to_owned());
    let leaning = start.uplift_block() == UpliftBlock::LeaningSides;
    let (volume, weight, sides) = if leaning {
        let volume = leaning_volume(plan, base, trace);
        let weight = leaning_weight(ground.strata, plan, base, trace);
        (volume, weight, Vec::new())
    } else {
        straight(ground, plan, base, trace)
    };
    let shear = sum_of_sides(&sides);
    trace.about(|| "block in tension".to_owned());
    Some(UpliftBlockFindings {
        from_request: false,
        base_depth: Some(base),
        volume: Some(volume),
        effective_weight: weight,
        shear,
        sides,
        total: uplift_total(weight, shear, trace),
    })
}

fn straight(
    ground: &Ground,
    plan: &BlockPlan,
    base: Length,
    trace: &mut Trace,
) -> (Volume, Force, Vec<BlockSide>) {
    let volume = Volume::from_si(plan.area.si() * base.si());
    let weight = straight_weight(ground.strata, plan, base, trace);
    let sides = sides(ground, plan.perimeter, Length::ZERO, base, trace);
    (volume, weight, sides)
}

/// Effective weight of a block with straight sides.
///
/// W' = A s'_v; A area in plan (m2), s'_v vertical effective stress at the base (Pa), which is
/// the sum of gamma dz above water and of the buoyant weight below it. Range: any. Source: UFC
/// 3-220-20 eq. 6-42. Sign: down.
pub fn straight_weight(
    strata: &Strata,
    plan: &BlockPlan,
    base: Length,
    trace: &mut Trace,
) -> Force {
    let stress = strata.effective_stress(base);
    trace.step(
        "W'",
        "A s'_v",
        Force::from_si(plan.area.si() * stress.si()),
        [("A", plan.area.into()), ("s'_v", stress.into())],
        &BLOCK_UPLIFT,
    )
}

/// Volume of a block whose sides lean out by 1 for 4 up.
///
/// V = A Z + P Z2/8 + Z3/12; A area and P perimeter at the base, Z height (m); for a rectangle
/// B L Z + (B + L) Z2/4 + Z3/12. Range: any. Source: integrated over the height; the slope is
/// that of UFC 3-220-20 eq. 6-41. Sign: none.
pub fn leaning_volume(plan: &BlockPlan, height: Length, trace: &mut Trace) -> Volume {
    let (a, p, z) = (plan.area.si(), plan.perimeter.si(), height.si());
    trace.step(
        "V",
        "A Z + P Z2/8 + Z3/12",
        Volume::from_si(a * z + p * z * z / 8.0 + z * z * z / 12.0),
        [
            ("A", plan.area.into()),
            ("P", plan.perimeter.into()),
            ("Z", height.into()),
        ],
        &BLOCK_LEANING,
    )
}

/// Effective weight of a block whose sides lean out by 1 for 4 up.
///
/// W' = integral of a ds'_v = A s'_v(Z) + integral of s'_v (P + 8 t)/4 dz, t = (Z - z)/4; a =
/// A + P t + 4 t2 area at a depth z (m2), s'_v vertical effective stress (Pa), Z depth of the
/// base (m). Exact by two points of Gauss between the depths at which the growth of s'_v
/// changes. Range: any. Source: integrated; slope of UFC 3-220-20 eq. 6-41. Sign: down.
pub fn leaning_weight(strata: &Strata, plan: &BlockPlan, base: Length, trace: &mut Trace) -> Force {
    let (z_base, perimeter) = (base.si(), plan.perimeter.si());
    let at_base = strata.effective_stress(base);
    let mut cuts: Vec<f64> = strata
        .stress_breaks()
        .filter(|z| *z > 0.0 && *z < z_base)
        .collect();
    cuts.push(z_base);
    let mut weight = plan.area.si() * at_base.si();
    let mut top = 0.0;
    for bottom in cuts {
        let (middle, half) = ((top + bottom) / 2.0, (bottom - top) / 2.0);
        for sign in [-1.0, 1.0] {
            let z = middle + sign * half / 3.0_f64.sqrt();
            let growth = (perimeter + 2.0 * (z_base - z)) / 4.0;
            weight += strata.effective_stress(Length::from_si(z)).si() * growth * half;
        }
        top = bottom;
    }
    trace.step(
        "W'",
        "A s'_v + integral of s'_v (P + 2 (Z - z))/4 dz",
        Force::from_si(weight),
        [
            ("A", plan.area.into()),
            ("P", plan.perimeter.into()),
            ("Z", base.into()),
            ("s'_v", at_base.into()),
        ],
        &BLOCK_LEANING,
    )
}

/// Ultimate uplift of a block.
///
/// R = W' + T; W' effective weight of the soil within, T shear on the sides (N). Range: any.
/// Source: UFC 3-220-20 eq. 6-43. Sign: against the load.
pub fn uplift_total(weight: Force, shear: Force, trace: &mut Trace) -> Force {
    trace.step(
        "R_block",
        "W' + T",
        weight + shear,
        [("W'", weight.into()), ("T", shear.into())],
        &BLOCK_UPLIFT,
    )
}
