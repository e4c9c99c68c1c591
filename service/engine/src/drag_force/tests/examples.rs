//! Every example request under `openapi/examples/drag-force`: what must be answered comes to
//! its verdict, what must be refused stops where it should.

use super::*;
use crate::contract::Verdict::{self, Accept, Provisional, Reject};
use crate::examples::{refused_as, requests, through};

#[test]
fn every_example_comes_to_its_verdict() {
    let expected: &[(&str, Verdict)] = &[
        ("collapse-on-wetting", Accept),
        ("dd-1", Accept),
        ("dd-2", Reject),
        ("dd-2-factor-0-7", Accept),
        ("linnet", Accept),
        ("linnet-helix-in-fill", Reject),
        ("linnet-neutral-plane", Accept),
        ("linnet-pile-sinks", Reject),
        ("linnet-steel-unknown", Provisional),
        ("neutral-plane-at-toe", Accept),
        ("rg-8", Accept),
        ("sizerin", Accept),
        ("sizerin-drawdown", Accept),
        ("sizerin-neutral-plane", Accept),
    ];
    let mut found = Vec::new();
    for (name, text) in requests::<DragForce>("") {
        let (_, answer) = through::<DragForce>(&text, Trace::on())
            .unwrap_or_else(|e| panic!("{name} is refused: {e:?}"));
        assert!(
            answer.steps.as_ref().is_some_and(|s| !s.is_empty()),
            "{name}"
        );
        let (_, silent) = through::<DragForce>(&text, Trace::off()).unwrap();
        assert_eq!(silent.result, answer.result, "{name}");
        found.push((name, answer.verdict));
    }
    let found: Vec<_> = found.iter().map(|(n, v)| (n.as_str(), *v)).collect();
    assert_eq!(found, expected);
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    refused_as::<DragForce>(&[
        ("bare-lb", "shape", "a pound is a mass here"),
        ("head-below-toe", "physics", "depths_out_of_order"),
        ("helix-below-toe", "physics", "depths_out_of_order"),
        ("layers-too-short", "physics", "drag_layers_too_short"),
        ("live-load", "shape", "unknown field `live_load`"),
        ("lower-above-upper", "physics", "drag_lower_above_upper"),
        (
            "lower-alpha-above-upper",
            "physics",
            "drag_lower_above_upper",
        ),
        ("no-layers", "lengths", "list_too_short"),
        (
            "no-permanent-load",
            "shape",
            "missing field `permanent_load`",
        ),
        ("no-settling-depth", "physics", "missing_member"),
        ("no-shaft", "physics", "missing_member"),
        ("no-toe", "physics", "missing_member"),
        ("settles-below-toe", "physics", "drag_settles_below_toe"),
        (
            "several-faults",
            "physics",
            "missing_member drag_layers_too_short drag_settles_below_toe depths_out_of_order",
        ),
        ("square-of-nothing", "values", "side"),
        ("table-begins-above-head", "physics", "depths_out_of_order"),
        (
            "table-begins-below-fill",
            "physics",
            "drag_table_begins_too_deep",
        ),
        (
            "table-begins-too-deep",
            "physics",
            "drag_table_begins_too_deep",
        ),
        (
            "table-ends-elsewhere",
            "physics",
            "drag_table_ends_elsewhere",
        ),
        (
            "table-not-monotone",
            "physics",
            "drag_table_not_monotone drag_table_not_monotone",
        ),
        ("two-frictions", "shape", ""),
        ("wall-too-thick", "physics", "shaft_wall_too_thick"),
    ]);
}
