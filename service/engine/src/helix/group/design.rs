//! What a design basis makes of a group, and the load on it judged. Design levels never mix:
//! the sum is that of capacities of the pile on the same basis, and the block has the rule of
//! the code, the factor of the pile, or none.

use super::outcome::{GroupDesign, GroupMode, UpliftBlockFindings};
use super::together::lesser;
use crate::basis::{ResistanceProof, UpliftClause, allowable, group_uplift_safety};
use crate::catalogue::CheckDef;
use crate::contract::{Check, Work};
use crate::helix::basis::{HelixAllowableStress, HelixBasis};
use crate::helix::codes::{methods, warnings};
use crate::helix::rule::DesignRule;
use crate::quantity::Force;
use crate::source::{
    BLOCK_COMPRESSION, BLOCK_SAME_FACTOR, GROUP_SPACING_3D, IBC_1810_3_3_1_6, Reference, Sourced,
};
use crate::trace::Trace;

/// Share of the weight and of the shear of a block that may be used in tension.
pub static BLOCK_UPLIFT_SHARE: Sourced<f64> =
    Sourced::new("block_uplift_share", 2.0 / 3.0, &IBC_1810_3_3_1_6);

/// A direction of a group on a design basis.
pub(super) struct DirectionOf<'a> {
    pub basis: Option<&'a HelixBasis>,
    pub rule: Option<&'a DesignRule>,
    /// Number of piles times efficiency.
    pub piles: f64,
    /// Ultimate resistance of one pile.
    pub of_one: Force,
}

/// A capacity of the block, with the rule it is by.
type Block = (Force, &'static Reference);

/// A capacity of a group, with the rule of what governs it.
pub(super) type Designed = (GroupDesign, &'static Reference);

/// Whether the block counts in tension: close piles; in New York City any; by EN 1997-1 those
/// within its own distance too.
pub(super) fn block_counts(of: &DirectionOf, close: bool, close_by_eurocode: bool) -> bool {
    match of.basis {
        Some(HelixBasis::AllowableStress(a)) => {
            close || a.uplift_clause == Some(UpliftClause::NewYorkCity)
        }
        Some(HelixBasis::Eurocode7(_)) => close || close_by_eurocode,
        _ => close,
    }
}

/// Capacity of a group in compression; none without a basis, where the block is not known,
/// or where the basis has no rule for it.
pub(super) fn design_compression(
    of: &DirectionOf,
    block: Option<Force>,
    unknown: bool,
    work: &mut Work,
) -> Option<Designed> {
    if unknown {
        return None;
    }
    let block = match block {
        None => None,
        Some(total) => Some(by_factor_of_pile(of, total, work)?),
    };
    together(of, block, work)
}

/// Capacity of a group in tension, of the block that counts.
pub(super) fn design_tension(
    of: &DirectionOf,
    block: Option<&UpliftBlockFindings>,
    work: &mut Work,
) -> Option<Designed> {
    let block = match (block, of.basis) {
        (None, _) => None,
        (Some(b), Some(HelixBasis::AllowableStress(a))) => Some(allowable_block(a, b, work)),
        (Some(b), _) => Some(by_factor_of_pile(of, b.total, work)?),
    };
    together(of, block, work)
}

fn allowable_block(
    a: &HelixAllowableStress,
    block: &UpliftBlockFindings,
    work: &mut Work,
) -> Block {
    let tested = a.proof == Some(ResistanceProof::LoadTest);
    let own = a.uplift_clause.and_then(|c| group_uplift_safety(c, tested));
    if let Some(factor) = own {
        work.method(&methods::GROUP_UPLIFT_NEW_YORK);
        let safety = work.take(factor);
        let capacity = allowable(block.total, safety, factor.reference, &mut work.trace);
        return (capacity, factor.reference);
    }
    work.method(&methods::GROUP_UPLIFT_IBC);
    let share = work.take(&BLOCK_UPLIFT_SHARE);
    let (weight, shear) = (block.effective_weight, block.shear);
    let capacity = block_allowable(weight, shear, share, &mut work.trace);
    (capacity, &IBC_1810_3_3_1_6)
}

/// Allowable uplift of a block.
///
/// P_block = 2/3 W' + 2/3 T; W' effective weight of the group and of the soil within the
/// block, T ultimate shear along it (N). Range: allowable-stress design. Source: IBC
/// 1810.3.3.1.6. Sign: against the load.
pub fn block_allowable(weight: Force, shear: Force, share: f64, trace: &mut Trace) -> Force {
    trace.step(
        "P_block",
        "2/3 W' + 2/3 T",
        weight * share + shear * share,
        [("W'", weight.into()), ("T", shear.into())],
        &IBC_1810_3_3_1_6,
    )
}

/// The block by the factor of the pile; none where the basis has no such factor.
fn by_factor_of_pile(of: &DirectionOf, total: Force, work: &mut Work) -> Option<Block> {
    let rule = of.rule?;
    match rule.on_block(total, &mut work.trace) {
        Some(capacity) => Some((capacity, &BLOCK_SAME_FACTOR)),
        None => {
            work.warn(
                &warnings::NO_RULE_FOR_BLOCK,
                "factors of this basis hold for a pile of known kind and number of profiles; the block of the group is left to the engineer",
            );
            None
        }
    }
}

fn together(of: &DirectionOf, block: Option<Block>, work: &mut Work) -> Option<Designed> {
    let of_one = of.rule?.design(of.of_one, &mut work.trace);
    let piles = work.trace.step(
        "P_n",
        "n eta P",
        of_one.capacity * of.piles,
        [("n eta", of.piles.into()), ("P", of_one.capacity.into())],
        &GROUP_SPACING_3D,
    );
    let (governing, capacity) = lesser(piles, block.map(|b| b.0), &mut work.trace);
    let source = match (governing, block) {
        (GroupMode::Block, Some((_, rule))) => rule,
        _ => &GROUP_SPACING_3D,
    };
    let design = GroupDesign {
        kind: of_one.kind,
        piles,
        block: block.map(|b| b.0),
        capacity,
        governing,
        block_rule: block.map(|b| b.1.into()),
    };
    Some((design, source))
}

/// The load on the group against its capacity.
pub(super) fn judge(
    def: &'static CheckDef,
    load: Option<Force>,
    designed: Option<&Designed>,
    unknown: bool,
    work: &mut Work,
) {
    let Some(load) = load else {
        return;
    };
    work.check(match designed {
        Some((design, source)) => {
            Check::at_most(def, load, design.capacity, source).reason(match design.governing {
                GroupMode::Piles => "the piles together govern",
                GroupMode::Block => "the block governs",
            })
        }
        None => Check::not_evaluated(
            def,
            if unknown {
                "the soil below the block is not known"
            } else {
                "the design basis has no rule for the block"
            },
            &BLOCK_COMPRESSION,
        ),
    });
}
