//! A group pushed down: bearing of the base of its block, and shear on the sides.

use super::bearing::{BLOCK_KNOWN_RATIO, BLOCK_REACH_RATIO, base_bearing};
use super::evaluate::GroupStart;
use super::outcome::{BlockPlan, CompressionBlock};
use super::request::BlockShearHeight;
use super::sides::{sides, sum_of_sides};
use crate::contract::Work;
use crate::helix::codes::warnings;
use crate::helix::plates::told;
use crate::quantity::{Area, Force, Length, SoilStress};
use crate::source::BLOCK_COMPRESSION;
use crate::trace::Trace;

/// The block; none without a base or where the soil below it is not known.
pub(super) fn compression_block(
    start: &GroupStart,
    plan: &BlockPlan,
    work: &mut Work,
) -> Option<CompressionBlock> {
    let base = start.base?;
    if !soil_is_known(start, plan, base, work) {
        return None;
    }
    let ground = &start.ground;
    let trace = &mut work.trace;
    let found = base_bearing(ground, plan, base, trace)?;
    trace.about(|| "block in compression".to_owned());
    let at_base = base_resistance(plan.area, found.bearing, trace);
    let top = match start.shear_height() {
        BlockShearHeight::BetweenHelices => start.top.unwrap_or(base),
        BlockShearHeight::FullDepth => Length::ZERO,
    };
    let sides = sides(ground, plan.perimeter, top, base, trace);
    let shear = sum_of_sides(&sides);
    trace.about(|| "block in compression".to_owned());
    Some(CompressionBlock {
        base_depth: base,
        bearing: found.bearing,
        bearing_layer: ground.strata.label(found.layer).to_owned(),
        base: at_base,
        shear,
        sides,
        total: block_total(at_base, shear, trace),
    })
}

/// Whether the soil is known as far below the block as it must be; rock ends the look.
fn soil_is_known(start: &GroupStart, plan: &BlockPlan, base: Length, work: &mut Work) -> bool {
    let strata = start.ground.strata;
    let rock = strata
        .layers
        .iter()
        .any(|l| l.strength == crate::soil::Strength::Rock);
    let below = strata.depth() - base;
    let wanted = plan.breadth * work.take(&BLOCK_REACH_RATIO);
    let needed = plan.breadth * work.take(&BLOCK_KNOWN_RATIO);
    if rock || below.si() >= wanted.si() * (1.0 - 1e-9) {
        return true;
    }
    let known = below.si() >= needed.si() * (1.0 - 1e-9);
    work.warn(
        &warnings::PROFILE_ENDS_NEAR_BLOCK,
        format!(
            "the soil is known to {} below the base of the block; {} would be looked at and {} is needed{}",
            told(below),
            told(wanted),
            told(needed),
            if known { "" } else { ", so the block is not computed in compression" }
        ),
    );
    known
}

/// Resistance of the base of a block.
///
/// Q_b = A q; A area in plan (m2), q bearing of the base (Pa). Range: any. Source: UFC 3-220-20
/// eq. 6-38. Sign: against the load.
pub fn base_resistance(area: Area, bearing: SoilStress, trace: &mut Trace) -> Force {
    trace.step(
        "Q_b",
        "A q",
        Force::from_si(area.si() * bearing.si()),
        [("A", area.into()), ("q", bearing.into())],
        &BLOCK_COMPRESSION,
    )
}

/// Ultimate compression of a block.
///
/// Q_block = Q_b + T; bearing of the base and shear on the sides (N). Range: any. Source:
/// Terzaghi and Peck, UFC 3-220-20 eq. 6-38. Sign: against the load.
pub fn block_total(base: Force, shear: Force, trace: &mut Trace) -> Force {
    trace.step(
        "Q_block",
        "Q_b + T",
        base + shear,
        [("Q_b", base.into()), ("T", shear.into())],
        &BLOCK_COMPRESSION,
    )
}
