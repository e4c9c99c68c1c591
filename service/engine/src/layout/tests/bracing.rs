//! Single rows of piles without lateral bracing.

use serde_json::{Value, json};

use super::answer;
use crate::contract::{Answer, Call, CheckStatus, Verdict};
use crate::layout::bracing::within_wall;
use crate::layout::{Outcome, Request};
use crate::quantity::{LengthUnit, Size};

fn at(x: f64, y: f64) -> Value {
    json!({"x": {"value": x, "unit": "ft"}, "y": {"value": y, "unit": "ft"}})
}

/// Two walls at a corner, 8 in wide and 6 in wide, and a pile off the line of the first.
fn corner(off: f64) -> Value {
    let loads = json!([{"kind": "dead", "load": {"value": 1000, "unit": "plf"}}]);
    json!({
        "design_basis": {"allowable_stress": {"combinations": {"published": {"edition": "asce_7_16"}}}},
        "beams": [
            {"label": "A", "points": [at(0.0, 0.0), at(16.0, 0.0)], "line_loads": loads},
            {"label": "B", "points": [at(0.0, 0.0), at(0.0, 12.0)], "line_loads": loads,
                "wall_width": {"value": 6, "unit": "in"}},
        ],
        "piles": {"given": {"positions": [
            {"label": "P1", "at": at(0.0, 0.0)},
            {"label": "P2", "at": at(8.0, 0.0), "off_line": {"value": off, "unit": "in"}},
            {"label": "P3", "at": at(16.0, 0.0)},
            {"label": "P4", "at": at(0.0, 6.0)},
            {"label": "P5", "at": at(0.0, 12.0)}]}},
        "bracing": {"building": "one_or_two_family_dwelling", "storey_count": 2,
            "height": {"value": 35, "unit": "ft"}, "wall_width": {"value": 8, "unit": "in"}},
    })
}

fn run(request: Value) -> Answer<Outcome> {
    let call: Call<Request> = serde_json::from_value(request).unwrap();
    answer(&call).unwrap()
}

fn statuses(a: &Answer<Outcome>, id: &str) -> Vec<CheckStatus> {
    let of = a.checks.iter().filter(|c| c.id == id);
    of.map(|c| c.status).collect()
}

#[test]
fn a_pile_may_stand_as_far_off_as_half_the_wall_to_either_side() {
    use CheckStatus::{Fail, Pass};
    for (off, want) in [
        (0.0, Pass),
        (4.0, Pass),
        (-4.0, Pass),
        (4.01, Fail),
        (-5.0, Fail),
    ] {
        let a = run(corner(off));
        let found = statuses(&a, "pile_within_wall_width");
        assert_eq!(found, [Pass, want, Pass, Pass, Pass], "{off}");
        let verdict = if want == Pass {
            Verdict::Accept
        } else {
            Verdict::Reject
        };
        assert_eq!(a.verdict, verdict);
        let told: Vec<_> = a
            .warnings
            .iter()
            .filter(|w| w.code == "pile_off_line")
            .collect();
        assert_eq!(told.len(), usize::from(off != 0.0));
    }
    // 3 in off with 8 kip and a quarter more by continuity: about 2,500 ft lbf are told
    let told = run(corner(3.0));
    let warning = told
        .warnings
        .iter()
        .find(|w| w.code == "pile_off_line")
        .unwrap();
    assert!(warning.detail.contains("P2 3.38954"), "{}", warning.detail);
}

#[test]
fn at_a_corner_the_narrower_wall_counts() {
    let mut request = corner(0.0);
    let width = |a: &Answer<Outcome>, label: &str| {
        let of_pile = a
            .checks
            .iter()
            .filter(|c| c.id == "pile_within_wall_width")
            .find(|c| c.subject.as_ref().unwrap().label == label);
        of_pile.unwrap().capacity.as_ref().unwrap().value()
    };
    let a = run(request.clone());
    assert!((width(&a, "P1") - 3.0 * 0.0254).abs() < 1e-12);
    assert!((width(&a, "P2") - 4.0 * 0.0254).abs() < 1e-12);
    assert!((width(&a, "P4") - 3.0 * 0.0254).abs() < 1e-12);
    request["piles"]["given"]["positions"][0]["off_line"] = json!({"value": 3.5, "unit": "in"});
    let a = run(request);
    assert_eq!(statuses(&a, "pile_within_wall_width")[0], CheckStatus::Fail);
}

#[test]
fn storeys_height_and_kind_are_conditions_of_the_clause() {
    use CheckStatus::{Fail, NotEvaluated, Pass};
    let with = |member: &str, value: Value| {
        let mut request = corner(0.0);
        request["bracing"][member] = value;
        run(request)
    };
    let a = run(corner(0.0));
    assert_eq!(statuses(&a, "single_row_storeys"), [Pass]);
    assert_eq!(statuses(&a, "single_row_height"), [Pass]);
    assert!(statuses(&a, "single_row_building").is_empty());
    assert!(a.warnings.iter().any(|w| w.code == "default_from_memory"));
    let a = with("storey_count", json!(3));
    assert_eq!(statuses(&a, "single_row_storeys"), [Fail]);
    let a = with("height", json!({"value": 10.7, "unit": "m"}));
    assert_eq!(statuses(&a, "single_row_height"), [Fail]);
    assert_eq!(a.verdict, Verdict::Reject);
    let a = with("building", json!("light_construction"));
    assert_eq!(a.verdict, Verdict::Accept);
    let a = with("building", json!("other"));
    assert_eq!(statuses(&a, "single_row_building"), [NotEvaluated]);
    assert_eq!(a.verdict, Verdict::Provisional);
}

#[test]
fn without_the_question_nothing_is_judged() {
    let mut request = corner(3.0);
    request.as_object_mut().unwrap().remove("bracing");
    let a = run(request);
    assert_eq!(a.verdict, Verdict::NotAsked);
    assert!(a.warnings.iter().any(|w| w.code == "pile_off_line"));
}

#[test]
fn the_width_is_a_question_of_its_own() {
    let mm = |v| Size::new(v, LengthUnit::Mm);
    assert!(within_wall(mm(75.0), mm(-75.0), "P").passed());
    assert!(!within_wall(mm(75.0), mm(75.1), "P").passed());
}
