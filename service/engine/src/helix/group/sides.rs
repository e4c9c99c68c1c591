//! The sides of a block of soil: shear along them, layer by layer.

use super::outcome::BlockSide;
use crate::helix::cylinder::{mean_effective_stress, sand_shear_stress};
use crate::helix::ground::Ground;
use crate::helix::law::Law;
use crate::helix::zone::parts_between;
use crate::quantity::{Force, Length, SoilStress};
use crate::source::BLOCK_UPLIFT;
use crate::trace::Trace;

/// The sides between two depths, from the top down.
pub(super) fn sides(
    ground: &Ground,
    perimeter: Length,
    top: Length,
    bottom: Length,
    trace: &mut Trace,
) -> Vec<BlockSide> {
    parts_between(ground.strata, top, bottom, ground.settings.no_credit_above)
        .map(|part| {
            let label = ground.strata.label(part.layer);
            trace.about(|| format!("block in {}, layer {label}", ground.direction.name()));
            let hazardous = !ground.strata.layers[part.layer].hazards.is_empty();
            let stress = if part.above_credit || hazardous {
                SoilStress::ZERO
            } else {
                match &ground.laws[part.layer] {
                    Law::Undrained { su } => *su,
                    Law::Drained(law) => {
                        let mean =
                            mean_effective_stress(ground.strata, part.top, part.bottom, trace);
                        sand_shear_stress(mean.max(SoilStress::ZERO), law.at_rest, trace)
                    }
                    Law::None => SoilStress::ZERO,
                }
            };
            BlockSide {
                layer: label.to_owned(),
                top: part.top,
                bottom: part.bottom,
                mean_shear_stress: stress,
                shear: side_shear(perimeter, part.bottom - part.top, stress, trace),
            }
        })
        .collect()
}

/// Shear on the sides of a block over a height within one layer.
///
/// T = P h tau; P perimeter and h height (m), tau shear stress, s_u in clay and s'_m K_0 tan
/// phi in sand (Pa). For a rectangle P h = 2 h (B + L). Range: any. Source: UFC 3-220-20 eq.
/// 6-43. Sign: against the load.
pub fn side_shear(
    perimeter: Length,
    height: Length,
    stress: SoilStress,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "T",
        "P h tau",
        Force::from_si(perimeter.si() * height.si() * stress.si()),
        [
            ("P", perimeter.into()),
            ("h", height.into()),
            ("tau", stress.into()),
        ],
        &BLOCK_UPLIFT,
    )
}

/// The sum of the sides.
pub(super) fn sum_of_sides(sides: &[BlockSide]) -> Force {
    sides.iter().map(|s| s.shear).sum()
}
