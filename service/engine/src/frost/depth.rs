//! The frost depth that is used: the jurisdiction's, or a computed one that is deeper. How a
//! depth is computed is in `frost_depth`.

use super::codes::{methods, refusals, warnings};
use super::ground::Ground;
use super::outcome::{FrostDepth, FrostDepthSource};
use super::request::{FrostDesignBy, FrostGround, Request};
use crate::contract::{Issue, Refusal, Work, utilisation};
use crate::frost_depth::{self, ComputedFrost, DeeperFrost};
use crate::quantity::Length;
use crate::source::FROST_DEPTH_OFFICIAL;

/// Pointer of the computed depth.
const AT: &str = "/frost/computed";

/// Faults in the lengths of lists.
pub fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    if let Some(asked) = &request.frost.computed {
        frost_depth::lengths(asked, AT, issues);
    }
}

/// What of a question to `frost-depth` cannot stand here.
pub fn faults(request: &Request) -> Vec<Issue> {
    let mut issues = Vec::new();
    let Some(asked) = &request.frost.computed else {
        return issues;
    };
    let same = |a: Length, b: Length| utilisation(a.si(), b.si()).1;
    let official = request.frost.official_depth;
    if let Some(sent) = asked.official_depth
        && !(same(sent, official) && same(official, sent))
    {
        let shown = |depth: Length| Length::ROLE.in_both_systems(depth.si());
        issues.push(
            Issue::new(
                format!("{AT}/official_depth"),
                &refusals::OFFICIAL_DEPTHS_DIFFER,
                format!("{} here, {} of `frost`", shown(sent), shown(official)),
            )
            .limit(shown(official))
            .source(&FROST_DEPTH_OFFICIAL),
        );
    }
    if asked.correction_factors.is_some() {
        issues.push(Issue::new(
            format!("{AT}/correction_factors"),
            &refusals::NOT_PART_OF_COMPUTED_DEPTH,
            "ask `frost-depth` for correction factors by themselves",
        ));
    }
    issues
}

/// The computed depth beside the official one; `None` where none was asked for. Refused with
/// all faults of the question.
pub fn computed(request: &Request, work: &mut Work) -> Result<Option<ComputedFrost>, Refusal> {
    let Some(asked) = &request.frost.computed else {
        return Ok(None);
    };
    let beside = frost_depth::Request {
        official_depth: Some(request.frost.official_depth),
        ..asked.clone()
    };
    frost_depth::computed(&beside, AT, work).map(Some)
}

/// Whether a computed depth counts.
pub fn counts(frost: &FrostGround) -> bool {
    frost.design_by != Some(FrostDesignBy::Official)
}

/// The depths for the answer, with a warning where the deeper one is not used.
pub fn of(
    request: &Request,
    ground: &Ground,
    computed: Option<ComputedFrost>,
    work: &mut Work,
) -> FrostDepth {
    let compared = computed.as_ref().and_then(|c| c.official.as_ref());
    let deeper = compared.map(|c| c.deeper);
    let used = deeper == Some(DeeperFrost::Computed) && counts(&request.frost);
    if computed.is_some() {
        work.method(&methods::FROST_DESIGN_DEPTH);
    }
    if let Some(compared) = compared.filter(|c| c.deeper == DeeperFrost::Computed && !used) {
        work.warn(
            &warnings::COMPUTED_FROST_NOT_USED,
            format!(
                "the computed frost depth is deeper by {}; `design_by` is `official`",
                Length::ROLE.in_both_systems(compared.difference.si())
            ),
        );
    }
    FrostDepth {
        official_depth: request.frost.official_depth,
        computed_depth: computed.as_ref().map(|c| c.depth),
        deeper,
        difference: compared.map(|c| c.difference),
        design_by: computed.as_ref().map(|_| {
            request
                .frost
                .design_by
                .unwrap_or(FrostDesignBy::DeeperOfBoth)
        }),
        design_depth: match &computed {
            Some(found) if used => found.depth,
            _ => request.frost.official_depth,
        },
        governed_by: if used {
            FrostDepthSource::Computed
        } else {
            FrostDepthSource::Official
        },
        cold_surface_depth: ground.cold_surface,
        base_depth: ground.base,
        computed,
    }
}
