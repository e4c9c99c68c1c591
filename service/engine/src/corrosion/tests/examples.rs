//! Every example request under `openapi/examples/corrosion-loss`: what must be answered comes to
//! its verdict, what must be refused stops where it should.

use super::*;
use crate::contract::Verdict::{self, Accept, Provisional, Reject};
use crate::examples::{refused_as, requests};

#[test]
fn every_example_comes_to_its_verdict() {
    let expected: &[(&str, Verdict)] = &[
        ("co-1", Accept),
        ("co-2", Accept),
        ("co-2-polluted", Accept),
        ("co-3", Accept),
        ("co-3-fill", Accept),
        ("co-3-peat", Accept),
        ("co-4", Accept),
        ("co-5", Accept),
        ("co-6", Accept),
        ("co-7", Reject),
        ("figures-missing", Accept),
        ("given-both-faces", Accept),
        ("linnet", Accept),
        ("linnet-aggressive", Provisional),
        ("linnet-aggressive-given", Accept),
        ("linnet-in-compacted-fill", Accept),
        ("linnet-in-fill", Accept),
        ("organic-soil", Provisional),
        ("rg-10", Accept),
        ("sizerin", Accept),
        ("sizerin-in-fill", Accept),
        ("sources-disagree", Accept),
    ];
    let mut found = Vec::new();
    for (name, text) in requests::<CorrosionLoss>("") {
        let (_, answer) = through::<CorrosionLoss>(&text, Trace::on())
            .unwrap_or_else(|e| panic!("{name} is refused: {e:?}"));
        let (_, silent) = through::<CorrosionLoss>(&text, Trace::off()).unwrap();
        assert_eq!(silent.result, answer.result, "{name}");
        found.push((name, answer.verdict));
    }
    let found: Vec<_> = found.iter().map(|(n, v)| (n.as_str(), *v)).collect();
    assert_eq!(found, expected);
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    let outside = "corrosion_method_outside_limits";
    refused_as::<CorrosionLoss>(&[
        ("aggressive-by-fhwa", "physics", outside),
        ("aggressive-by-table", "physics", outside),
        (
            "class-without-reference",
            "shape",
            "missing field `reference`",
        ),
        (
            "compacted-natural-ground",
            "physics",
            "corrosion_compacted_not_fill",
        ),
        (
            "life-below-table",
            "physics",
            "corrosion_life_outside_table",
        ),
        (
            "life-outside-table",
            "physics",
            "corrosion_life_outside_table",
        ),
        ("method-not-named", "physics", "corrosion_method_not_named"),
        ("no-sections", "lengths", "list_too_short"),
        ("ph-of-15", "values", "ph"),
        ("rate-of-which-face", "shape", "missing field `counts`"),
        ("rates-outside-limits", "physics", outside),
        (
            "several-faults",
            "physics",
            "corrosion_without_soil_class corrosion_compacted_not_fill shaft_wall_too_thick",
        ),
        ("strength-of-a-plate", "physics", "missing_member"),
        ("table-without-ground", "physics", "missing_member"),
        (
            "tests-of-nothing",
            "physics",
            "corrosion_without_soil_class",
        ),
        ("two-sections-of-one-name", "physics", "duplicate_label"),
        ("unknown-unit", "shape", "write `ohm_cm`"),
        ("wall-too-thick", "physics", "shaft_wall_too_thick"),
        (
            "without-soil-class",
            "physics",
            "corrosion_without_soil_class",
        ),
    ]);
}
