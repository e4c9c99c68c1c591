//! Bearing of the base of a block: each soil within its reach under the load spread down to
//! it, of which the least counts.

use super::outcome::BlockPlan;
use crate::helix::bearing::{cohesion_bearing, drained_bearing, undrained_bearing};
use crate::helix::ground::Ground;
use crate::helix::law::{DrainedLaw, Law};
use crate::quantity::{Length, SoilStress};
use crate::soil::Strength;
use crate::source::{BLOCK_BEARING_FACTOR, BLOCK_REACH, SPREAD_TWO_TO_ONE, Sourced};
use crate::trace::Trace;

/// Depth of soil below the base that is looked at, breadths of the block.
pub static BLOCK_REACH_RATIO: Sourced<f64> = Sourced::new("block_reach_ratio", 2.0, &BLOCK_REACH);
/// Depth of soil below the base that must be known, breadths of the block.
pub static BLOCK_KNOWN_RATIO: Sourced<f64> = Sourced::new("block_known_ratio", 1.0, &BLOCK_REACH);

/// Depths closer than this are the same place.
const SAME_DEPTH_M: f64 = 1e-6;

/// Bearing of a base.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct BaseBearing {
    /// The layer that takes the least.
    pub layer: usize,
    pub bearing: SoilStress,
}

/// The least that a soil below the base takes, soil to two breadths below it. Rock is taken
/// to bear no less than the soil above it.
pub(super) fn base_bearing(
    ground: &Ground,
    plan: &BlockPlan,
    base: Length,
    trace: &mut Trace,
) -> Option<BaseBearing> {
    let end = base.si() + plan.breadth.si() * BLOCK_REACH_RATIO.value;
    let mut least: Option<BaseBearing> = None;
    for (i, layer) in ground.strata.layers.iter().enumerate() {
        if layer.bottom.si() <= base.si() + SAME_DEPTH_M {
            continue;
        }
        let top = layer.top.max(base);
        if layer.strength == Strength::Rock || top.si() >= end - SAME_DEPTH_M {
            break;
        }
        trace.about(|| format!("base of the block, layer {}", layer.label));
        let bearing = taken_by(ground, plan, base, i, top, trace);
        if least.is_none_or(|l| bearing < l.bearing) {
            least = Some(BaseBearing { layer: i, bearing });
        }
    }
    least
}

/// What the layer takes of the base, its top at a depth.
fn taken_by(
    ground: &Ground,
    plan: &BlockPlan,
    base: Length,
    layer: usize,
    top: Length,
    trace: &mut Trace,
) -> SoilStress {
    let down = top - base;
    let (breadth, length) = (plan.breadth + down, plan.length + down);
    let hazardous = !ground.strata.layers[layer].hazards.is_empty();
    let bearing = match &ground.laws[layer] {
        _ if hazardous => SoilStress::ZERO,
        Law::Undrained { su } => {
            let nc = nc_rectangle(breadth, length, top, trace);
            undrained_bearing(*su, nc, trace)
        }
        Law::Drained(law) => in_sand(ground, law, breadth, top, trace),
        Law::None => SoilStress::ZERO,
    };
    if down.si() <= SAME_DEPTH_M {
        return bearing;
    }
    spread_to_base(bearing, plan, down, trace)
}

fn in_sand(
    ground: &Ground,
    law: &DrainedLaw,
    breadth: Length,
    depth: Length,
    trace: &mut Trace,
) -> SoilStress {
    let counted = match ground.settings.stress_limit_ratio() {
        Some(ratio) => depth.min(breadth * ratio),
        None => depth,
    };
    let stress = ground.strata.effective_stress(counted);
    let q = drained_bearing(stress.max(SoilStress::ZERO), law.nq, trace);
    if law.cohesion > SoilStress::ZERO {
        q + cohesion_bearing(law.cohesion, law.nc, trace)
    } else {
        q
    }
}

/// Bearing factor of a deep rectangle in clay.
///
/// N_c = 5 (1 + 0.2 B/L)(1 + 0.2 z/B), z/B at most 2.5; B breadth, L length at least B, z depth
/// of the base (m). Range: undrained loading; from 5 to 9. Source: Skempton 1951, UFC 3-220-20
/// eq. 6-39, whose cap of 9 is met for any B/L by holding z/B. Sign: none.
pub fn nc_rectangle(breadth: Length, length: Length, depth: Length, trace: &mut Trace) -> f64 {
    let deep = (depth.si() / breadth.si()).min(2.5);
    trace.step(
        "N_c",
        "5 (1 + 0.2 B/L)(1 + 0.2 z/B), z/B at most 2.5",
        5.0 * (1.0 + 0.2 * breadth.si() / length.si()) * (1.0 + 0.2 * deep),
        [
            ("B", breadth.into()),
            ("L", length.into()),
            ("z", depth.into()),
        ],
        &BLOCK_BEARING_FACTOR,
    )
}

/// Bearing of the base that a layer below it takes.
///
/// q_b = q_l (B + h)(L + h)/(B L); q_l bearing of the layer under the spread load (Pa), h
/// distance down to it, B and L breadth and length of the block (m): the load spreads by one
/// across for two down on every side. Range: h above 0. Source: spread of load 2:1. Sign:
/// against the load.
pub fn spread_to_base(
    bearing: SoilStress,
    plan: &BlockPlan,
    down: Length,
    trace: &mut Trace,
) -> SoilStress {
    let (b, l, h) = (plan.breadth.si(), plan.length.si(), down.si());
    trace.step(
        "q_b",
        "q_l (B + h)(L + h)/(B L)",
        bearing * ((b + h) * (l + h) / (b * l)),
        [
            ("q_l", bearing.into()),
            ("B", plan.breadth.into()),
            ("L", plan.length.into()),
            ("h", down.into()),
        ],
        &SPREAD_TWO_TO_ONE,
    )
}
