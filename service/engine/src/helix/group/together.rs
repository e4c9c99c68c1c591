//! The piles of a group together, the lesser of them and the block, and how what the sources
//! leave open was read.

use std::borrow::Cow;

use super::outcome::GroupMode;
use super::request::{BlockShearHeight, PileGroup};
use crate::quantity::Force;
use crate::source::{DERIVED, GROUP_SPACING_3D};
use crate::trace::Trace;

/// The piles of a group together.
///
/// Q_n = n eta Q; n number of piles, eta efficiency (1 where none is known), Q ultimate
/// resistance of one (N). Range: two piles or more. Source: evaluation practice under AC358.
/// Sign: against the load.
pub fn sum_of_piles(of_one: Force, count: u32, efficiency: f64, trace: &mut Trace) -> Force {
    trace.step(
        "Q_n",
        "n eta Q",
        of_one * (f64::from(count) * efficiency),
        [
            ("n", f64::from(count).into()),
            ("eta", efficiency.into()),
            ("Q", of_one.into()),
        ],
        &GROUP_SPACING_3D,
    )
}

/// The lesser of the piles and the block, where there is one.
pub(super) fn lesser(piles: Force, block: Option<Force>, trace: &mut Trace) -> (GroupMode, Force) {
    let Some(block) = block else {
        return (GroupMode::Piles, piles);
    };
    let mode = if block < piles {
        GroupMode::Block
    } else {
        GroupMode::Piles
    };
    let least = trace.step(
        "Q_g",
        "min(Q_n, Q_block)",
        piles.min(block),
        [("Q_n", piles.into()), ("Q_block", block.into())],
        &DERIVED,
    );
    (mode, least)
}

/// How what the sources leave open was read.
pub(super) fn readings(group: &PileGroup, pushed: bool, pulled: bool) -> Vec<Cow<'static, str>> {
    let mut list: Vec<Cow<'static, str>> = vec![
        "The least horizontal dimension of a pile is the diameter of its largest helix.".into(),
        "The block reaches to the outer edges of the largest helix and has square corners.".into(),
    ];
    if pushed {
        list.push(match group.shear_height.unwrap_or_default() {
            BlockShearHeight::BetweenHelices => {
                "In compression the block shears from the top helix to the lowest.".into()
            }
            BlockShearHeight::FullDepth => {
                "In compression the block shears from the depth of credit to the lowest helix."
                    .into()
            }
        });
    }
    if pulled {
        list.push(
            "In tension the length of the element is the depth of its lowest helix in credit, and the piles weigh as the soil they displace."
                .into(),
        );
    }
    list
}
