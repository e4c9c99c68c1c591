//! The computed frost depth beside the official one: which is used, by how much they differ,
//! and that a computed one never makes it shallower.

use serde_json::{Value as Json, json};

use super::{answer, ask, close, example, q, statuses, warned};
use crate::contract::CheckStatus::{Fail, Pass};
use crate::frost::{FrostDepth, FrostDepthSource, FrostDesignBy};
use crate::frost_depth::DeeperFrost;
use crate::random::Random;

fn depth(request: Json) -> FrostDepth {
    answer(request).result.frost
}

/// The computed depth is that of `frost-depth`, and deeper than 24 in: it is used, everywhere.
#[test]
fn a_deeper_computed_depth_is_used() {
    let a = answer(example("computed-frost-deeper"));
    let frost = &a.result.frost;
    let computed = frost.computed_depth.unwrap();
    close(frost.official_depth.si(), 24.0 * 0.0254, 1e-12);
    assert!(computed > frost.official_depth);
    assert_eq!(frost.design_depth, computed);
    assert_eq!(frost.base_depth, computed);
    assert_eq!(frost.governed_by, FrostDepthSource::Computed);
    assert_eq!(frost.deeper, Some(DeeperFrost::Computed));
    close(
        frost.difference.unwrap().si(),
        (computed - frost.official_depth).si(),
        1e-12,
    );
    let up = a.result.uplift.as_ref().unwrap();
    close(up.stages[1].frozen_length.si(), computed.si(), 1e-12);
    let margin = a.result.embedment.rules[0].required_depth;
    close(margin.si(), computed.si() + 0.3048, 1e-12);
    let section = &a.result.section;
    assert_eq!(section.computed_frost_base_depth, Some(computed));
    assert_eq!(section.official_frost_base_depth, frost.official_depth);
}

/// The official depth by the caller's word, with a warning; all else as without a second
/// opinion.
#[test]
fn the_official_depth_by_the_callers_word() {
    let a = answer(example("computed-frost-not-used"));
    let frost = &a.result.frost;
    assert_eq!(frost.design_depth, frost.official_depth);
    assert_eq!(frost.governed_by, FrostDepthSource::Official);
    assert_eq!(frost.design_by, Some(FrostDesignBy::Official));
    assert_eq!(frost.deeper, Some(DeeperFrost::Computed));
    assert!(warned(&a, "computed_frost_not_used"));
    let mut plain = example("computed-frost-not-used");
    plain["frost"] = json!({ "official_depth": q(24.0, "in") });
    let plain = answer(plain);
    assert_eq!(plain.result.uplift, a.result.uplift);
    assert_eq!(plain.result.embedment, a.result.embedment);
    assert!(!warned(&plain, "computed_frost_not_used"));
}

/// Insulation brings the computed depth up, never the one that is used.
#[test]
fn insulation_never_reduces_the_official_depth() {
    let frost = depth(example("sizerin-insulated-ground"));
    assert!(frost.computed_depth.unwrap() < frost.official_depth);
    assert_eq!(frost.design_depth, frost.official_depth);
    assert_eq!(frost.governed_by, FrostDepthSource::Official);
    assert_eq!(frost.deeper, Some(DeeperFrost::Official));
    let plain = answer(example("sizerin")).result;
    let insulated = answer(example("sizerin-insulated-ground")).result;
    assert_eq!(plain.uplift, insulated.uplift);
    assert_eq!(plain.embedment, insulated.embedment);
}

/// Both depths count from the surface that is exposed to the cold.
#[test]
fn the_computed_depth_counts_from_the_cold_surface() {
    let mut request = example("computed-frost-deeper");
    request["frost"]["cold_surface_depth"] = q(1.0, "ft");
    let frost = depth(request);
    let computed = frost.computed_depth.unwrap();
    close(frost.base_depth.si(), 0.3048 + computed.si(), 1e-12);
    close(frost.design_depth.si(), computed.si(), 1e-12);
}

/// More freezing never makes the depth that is used shallower, and it is never above either.
#[test]
fn the_depth_used_is_never_above_the_official() {
    let mut random = Random(0x5eed_0514);
    for _ in 0..20 {
        let at = |index: f64, official: f64| {
            let mut request = example("computed-frost-deeper");
            request["frost"]["official_depth"] = q(official, "m");
            request["frost"]["computed"]["winter"]["freezing_index"]["given"]["value"] =
                q(index, "F_day");
            depth(request)
        };
        let (index, official) = (random.between(300.0, 900.0), random.between(0.2, 1.4));
        let (mild, cold) = (at(index, official), at(index * 1.2, official));
        for frost in [&mild, &cold] {
            assert!(frost.design_depth >= frost.official_depth);
            assert!(frost.design_depth >= frost.computed_depth.unwrap());
        }
        assert!(cold.design_depth >= mild.design_depth);
    }
}

/// All faults at once: those of the question to `frost-depth` and those of the pile.
#[test]
fn faults_of_both_are_found_at_once() {
    let mut request = example("linnet-computed-frost");
    request["frost"]["computed"]["winter"]["mean_annual_temperature"] = q(30.0, "degF");
    request["frost"]["computed"]["official_depth"] = q(42.0, "in");
    request["tip_depth"] = q(16.0, "ft");
    let issues = ask(request).expect_err("a refusal").issues;
    let codes: Vec<_> = issues.iter().map(|i| i.code.as_ref()).collect();
    for code in [
        "permafrost",
        "official_depths_differ",
        "depths_out_of_order",
    ] {
        assert!(codes.contains(&code), "{codes:?}");
    }
    assert!(
        issues
            .iter()
            .any(|i| i.pointer.starts_with("/frost/computed/winter"))
    );
}

/// A pile that freezes in by the computed depth alone is refused there.
#[test]
fn frozen_in_by_the_computed_depth() {
    let mut request = example("computed-frost-deeper");
    request["pile"]["helices"] = json!([{ "diameter": q(8.0, "in"), "depth": q(26.0, "in") }]);
    request["tip_depth"] = q(26.0, "in");
    for member in ["uplift", "beam", "void_form", "fill_depth"] {
        request.as_object_mut().unwrap().remove(member);
    }
    let issues = ask(request.clone()).expect_err("a refusal").issues;
    assert_eq!(issues[0].code, "frost_below_tip");
    assert_eq!(issues[0].pointer, "/frost/computed");
    request["frost"]["design_by"] = json!("official");
    let a = answer(request);
    assert_eq!(statuses(&a, "helix_below_frost"), [Pass]);
    assert_eq!(statuses(&a, "top_helix_frost_margin"), [Fail]);
}
