//! The example requests under `openapi/examples/frost-embedment`: each that should be
//! answered is, and what is printed is sound; each that should be refused is.

use serde_json::Value as Json;

use crate::contract::{CheckStatus, Verdict};
use crate::examples::{refused_as, request, requests, through};
use crate::frost::FrostEmbedment;
use crate::quantity::StressUnit;
use crate::trace::Trace;

#[test]
fn every_example_is_answered_and_printed() {
    let examples = requests::<FrostEmbedment>("");
    assert!(examples.len() >= 20, "{}", examples.len());
    for (name, text) in examples {
        let (_, answer) = through::<FrostEmbedment>(&text, Trace::on())
            .unwrap_or_else(|e| panic!("{name} is refused: {e:?}"));
        assert!(
            !answer.checks.is_empty() && answer.verdict != Verdict::NotAsked,
            "{name}"
        );
        assert!(
            answer.steps.as_ref().is_some_and(|s| !s.is_empty()),
            "{name}"
        );
        // recording the working changes nothing
        let (_, silent) = through::<FrostEmbedment>(&text, Trace::off()).unwrap();
        assert_eq!(silent.result, answer.result, "{name}");
    }
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    let stages = [
        ("absurd-depth", "values", "official_depth"),
        (
            "allowable-tension-with-safety-factor",
            "physics",
            "basis_mixed",
        ),
        ("bare-lb", "shape", "a pound is a mass here"),
        ("beam-below-helix", "physics", "depths_out_of_order"),
        ("beam-widths-differ", "physics", "beam_widths_differ"),
        (
            "bond-without-reference",
            "shape",
            "missing field `reference`",
        ),
        (
            "computed-official-differs",
            "physics",
            "official_depths_differ",
        ),
        ("computed-permafrost", "physics", "permafrost"),
        (
            "computed-with-factors",
            "physics",
            "not_part_of_computed_depth",
        ),
        ("computed-without-winter", "physics", ""),
        (
            "contact-above-cold-surface",
            "physics",
            "depths_out_of_order",
        ),
        ("duplicate-member", "shape", "duplicate field `frost`"),
        (
            "factored-tension-in-allowable-stress",
            "physics",
            "basis_mixed",
        ),
        ("frost-below-tip", "physics", "frost_below_tip"),
        ("head-below-helix", "physics", "depths_out_of_order"),
        ("heave-stated-twice", "physics", "heave_stated_twice"),
        ("helices-at-one-depth", "physics", "helices_coincide"),
        ("helix-below-profile", "physics", "helix_below_profile"),
        ("negative-depth", "values", "official_depth"),
        ("no-frost", "shape", "missing field `frost`"),
        ("no-frost-depth", "shape", "missing field `official_depth`"),
        ("no-helices", "lengths", "list_too_short"),
        ("not-a-number", "shape", "expected value"),
        ("number-overflow", "shape", "number out of range"),
        ("pile-weight-without-wall", "physics", "missing_member"),
        ("predicted-heave-empty", "physics", "missing_member"),
        ("profile-gap", "physics", "layer_gap"),
        ("purpose-contradicted", "physics", "purpose_contradicted"),
        ("sleeve-below-helix", "physics", "depths_out_of_order"),
        (
            "swelling-contact-below-helix",
            "physics",
            "depths_out_of_order",
        ),
        ("swelling-full-pressure-deep", "physics", "above_maximum"),
        ("swelling-full-pressure-shallow", "physics", "below_minimum"),
        ("swelling-peaks-without-frost", "physics", "missing_member"),
        ("swelling-two-methods", "shape", ""),
        (
            "swelling-without-active-depth",
            "physics",
            "swell_uplift_without_data",
        ),
        (
            "swelling-without-adhesion",
            "physics",
            "swell_uplift_without_data",
        ),
        (
            "swelling-without-pressure",
            "physics",
            "swell_uplift_without_data",
        ),
        (
            "swelling-without-strength",
            "physics",
            "swell_uplift_without_data",
        ),
        ("tension-path-empty", "physics", "missing_member"),
        ("tension-path-of-another-level", "physics", "basis_mixed"),
        ("tip-above-helix", "physics", "depths_out_of_order"),
        ("too-many-helices", "lengths", "list_too_long"),
        ("two-bases", "shape", ""),
        ("two-formats", "physics", "basis_mixed"),
        ("unknown-member", "shape", "unknown field `offical_depth`"),
        (
            "void-form-hardly-crushed",
            "physics",
            "crushed_not_below_nominal",
        ),
        (
            "void-form-heave-empty",
            "physics",
            "void_form_without_heave",
        ),
        (
            "void-form-no-frost-depth",
            "physics",
            "segregation_without_frost_depth",
        ),
        (
            "void-form-no-segregation-potential",
            "physics",
            "segregation_potential_missing",
        ),
        (
            "void-form-rated-above-crush",
            "physics",
            "rated_load_above_crush",
        ),
        ("void-form-swell-no-layers", "lengths", "list_too_short"),
        (
            "void-form-tributary-differs",
            "physics",
            "tributary_lengths_differ",
        ),
        (
            "void-form-without-heave",
            "physics",
            "void_form_without_heave",
        ),
        ("wrong-unit", "shape", "unknown unit `kPa`"),
    ];
    refused_as::<FrostEmbedment>(&stages);
}

/// Verdicts of the two projects and their variants.
#[test]
fn verdicts_of_the_projects() {
    for (name, verdict, failing) in [
        ("linnet", Verdict::Accept, &[][..]),
        (
            "linnet-beam-sides-gripped",
            Verdict::Reject,
            &["frost_uplift"],
        ),
        (
            "linnet-void-form-too-thin",
            Verdict::Reject,
            &["void_form_clearance"],
        ),
        ("linnet-void-form-crushed", Verdict::Accept, &[]),
        (
            "linnet-void-form-too-weak",
            Verdict::Reject,
            &["void_form_crush_strength"],
        ),
        ("linnet-tension-by-torque", Verdict::Accept, &[]),
        ("sizerin", Verdict::Accept, &[]),
        ("sizerin-corner", Verdict::Reject, &["frost_uplift"]),
        (
            "sizerin-centre-line-end",
            Verdict::Reject,
            &["frost_uplift"],
        ),
        (
            "sizerin-construction-stage",
            Verdict::Reject,
            &["frost_uplift"],
        ),
        ("sizerin-shallow-frost", Verdict::Accept, &[]),
        ("sizerin-bond-65-kpa", Verdict::Accept, &[]),
        ("sizerin-backfilled-shaft", Verdict::Accept, &[]),
        ("helix-at-frost-line", Verdict::Accept, &[]),
        ("linnet-fill-three-diameters", Verdict::Accept, &[]),
        ("linnet-purpose-torque", Verdict::Accept, &[]),
        ("linnet-collapsing-soil", Verdict::Accept, &[]),
        ("linnet-allowable-tension", Verdict::Accept, &[]),
        ("linnet-tension-path", Verdict::Accept, &[]),
        ("linnet-void-form-crush", Verdict::Accept, &[]),
        ("linnet-downdrag", Verdict::Accept, &[]),
        (
            "linnet-beam-on-ground",
            Verdict::Reject,
            &["beam_underside_free"],
        ),
        ("linnet-beam-on-gravel", Verdict::Accept, &[]),
        ("sizerin-corner-sleeve", Verdict::Accept, &[]),
        (
            "sizerin-corner-sleeve-too-short",
            Verdict::Reject,
            &["frost_uplift"],
        ),
        ("sizerin-gravel", Verdict::Reject, &["frost_uplift"]),
        ("sizerin-factored-tension", Verdict::Accept, &[]),
        ("linnet-computed-frost", Verdict::Accept, &[]),
        ("computed-frost-deeper", Verdict::Accept, &[]),
        ("computed-frost-not-used", Verdict::Accept, &[]),
        ("sizerin-insulated-ground", Verdict::Accept, &[]),
        ("rg-7", Verdict::Provisional, &[]),
        ("swelling-alpha-share", Verdict::Accept, &[]),
        (
            "swelling-alpha-share-capped",
            Verdict::Reject,
            &["swell_uplift"],
        ),
        ("swelling-alpha-range", Verdict::Accept, &[]),
        (
            "swelling-full-pressure",
            Verdict::Reject,
            &["swell_uplift", "swell_uplift"],
        ),
        ("swelling-with-frost", Verdict::Accept, &[]),
        (
            "swelling-beam-sides-gripped",
            Verdict::Reject,
            &["frost_uplift"],
        ),
        (
            "swelling-beam-on-ground",
            Verdict::Reject,
            &["beam_underside_free"],
        ),
        (
            "helix-in-active-zone",
            Verdict::Reject,
            &[
                "top_helix_below_active_zone",
                "swell_uplift",
                "swell_uplift",
            ],
        ),
    ] {
        let text = request::<FrostEmbedment>(name);
        let (_, answer) = through::<FrostEmbedment>(&text, Trace::off()).expect(name);
        let failed: Vec<_> = answer
            .checks
            .iter()
            .filter(|c| c.status == CheckStatus::Fail)
            .map(|c| c.id.as_ref())
            .collect();
        assert_eq!(failed, failing, "{name}");
        assert_eq!(answer.verdict, verdict, "{name}");
    }
}

/// By hand: q_t of 16,000 psf less 4.5 x 110 + 3.5 x 115 of soil, over 15: 1,006.83 psf; 26
/// blows x 0.048 x 100 kPa: 124.8 kPa.
#[test]
fn strengths_from_tests_are_told() {
    let text = request::<FrostEmbedment>("soil-from-tests");
    let (_, answer) = through::<FrostEmbedment>(&text, Trace::off()).expect("an answer");
    let uplift = answer.result.uplift.as_ref().expect("uplift");
    let tension = uplift.tension.as_ref().expect("tension");
    let found: Vec<_> = tension.derived_strengths.iter().collect();
    let su = |i: usize| found[i].undrained_strength.expect("a strength");
    assert_eq!(found.len(), 2);
    assert!((su(0).get(StressUnit::Psf) - 1_006.833_333).abs() < 1e-5);
    assert!((su(1).get(StressUnit::KPa) - 124.8).abs() < 1e-9);
    let warned = |code: &str| answer.warnings.iter().filter(|w| w.code == code).count();
    assert_eq!(warned("strength_from_correlation"), 2);
}

/// An example holds nothing but a request: no comment, no stray member.
#[test]
fn examples_are_plain_objects() {
    for (name, text) in requests::<FrostEmbedment>("") {
        let value: Json = serde_json::from_str(&text).expect("JSON");
        assert!(value.is_object() && text.ends_with('\n'), "{name}");
    }
}
