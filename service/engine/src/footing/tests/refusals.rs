//! Refusals in detail: pointers, several faults at once, limits that are met exactly.

use super::*;

/// Pointer and code of each fault.
fn faults(request: Json) -> Vec<(String, String)> {
    let refusal = refusable(request).expect_err("a refusal");
    let issues = refusal.issues.into_iter();
    issues.map(|i| (i.pointer, i.code.into_owned())).collect()
}

fn pairs(all: &[(String, String)]) -> Vec<(&str, &str)> {
    all.iter().map(|(p, c)| (p.as_str(), c.as_str())).collect()
}

fn square(depth: f64, strength: Json) -> Json {
    json!({
        "footing": { "shape": { "square": { "width": q(1.0, "m") } }, "depth": q(depth, "m") },
        "soil": { "strength": strength, "unit_weight": q(18.0, "kN_per_m3") },
    })
}

fn sand() -> Json {
    json!({ "drained": { "friction_angle": q(30.0, "deg") } })
}

fn clay() -> Json {
    json!({ "undrained": { "undrained_strength": q(50.0, "kPa") } })
}

#[test]
fn all_faults_are_found_at_once() {
    let mut request = square(6.0, sand());
    request["methods"] = json!(["skempton_1951", "vesic_1973", "vesic_1973"]);
    request["soil"]["saturated_unit_weight"] = q(26.0, "kN_per_m3");
    request["soil"]["unit_weight"] = q(14.0, "kN_per_m3");
    request["demand"] = json!({ "level": "allowable", "counted": "gross",
        "action": { "line_load": { "intensity": q(10.0, "kN_per_m") } } });
    let all = faults(request);
    assert_eq!(
        pairs(&all),
        [
            ("", "missing_member"),
            ("/demand/action/line_load", "footing_load_of_other_shape"),
            ("/footing/depth", "footing_too_deep"),
            ("/methods/0", "footing_method_undrained_only"),
            ("/methods/2", "footing_method_twice"),
            ("/soil/saturated_unit_weight", "layer_saturated_too_heavy"),
        ]
    );
}

/// Exactly five widths is answered, also from two units; Skempton has no such limit.
#[test]
fn five_widths_are_shallow() {
    assert!(refusable(square(5.0, sand())).is_ok());
    assert_eq!(
        pairs(&faults(square(5.001, sand()))),
        [("/footing/depth", "footing_too_deep")]
    );
    assert!(refusable(square(8.0, clay())).is_ok());
    let mut others = square(8.0, clay());
    others["methods"] = json!(["skempton_1951", "meyerhof_1963"]);
    let refusal = refusable(others).unwrap_err();
    assert_eq!(
        refusal.issues[0].detail,
        "depth is 8 widths; asked of meyerhof_1963"
    );
    assert_eq!(refusal.issues[0].limit.as_deref(), Some("5 widths"));
    let feet = json!({
        "footing": { "shape": { "square": { "width": q(7.0, "in") } }, "depth": q(35.0 / 12.0, "ft") },
        "soil": { "strength": sand(), "unit_weight": q(18.0, "kN_per_m3") },
    });
    assert!(refusable(feet).is_ok());
}

/// A friction angle without cohesion, or cohesion without friction, is enough.
#[test]
fn one_strength_is_enough() {
    let drained = |phi: f64, c: f64| json!({ "drained": { "friction_angle": q(phi, "deg"), "cohesion": q(c, "kPa") } });
    assert!(refusable(square(0.5, drained(0.0, 20.0))).is_ok());
    assert!(refusable(square(0.5, drained(20.0, 0.0))).is_ok());
    assert_eq!(
        pairs(&faults(square(0.5, drained(0.0, 0.0)))),
        [("/soil/strength/drained", "footing_without_strength")]
    );
}

#[test]
fn a_factored_resistance_meets_no_service_load() {
    let mut request = square(0.5, sand());
    request["design_basis"] = json!({ "limit_states": { "resistance_factor": 0.5 } });
    request["demand"] = json!({ "level": "allowable", "counted": "net",
        "action": { "load": { "force": q(10.0, "kN") } } });
    assert_eq!(
        pairs(&faults(request.clone())),
        [("/demand/level", "basis_mixed")]
    );
    request["demand"]["level"] = json!("factored");
    assert!(refusable(request).is_ok());
}

/// Members that go together, named from both sides.
#[test]
fn members_that_go_together() {
    let whole = square(0.5, sand());
    let mut soil_only = whole.clone();
    soil_only.as_object_mut().unwrap().remove("footing");
    let refusal = refusable(soil_only).unwrap_err();
    assert_eq!(refusal.issues[0].detail, "`soil` needs `footing`");
    let basis_only = json!({
        "design_basis": { "allowable_stress": {} },
        "factor_table": { "friction_angles": [q(30.0, "deg")] },
    });
    let refusal = refusable(basis_only).unwrap_err();
    assert_eq!(refusal.issues[0].detail, "`design_basis` needs `footing`");
}

/// The table by depth is that of one method, the table by angle that of the others.
#[test]
fn tables_belong_to_methods() {
    let ask = |methods: Json, table: Json| json!({ "methods": methods, "factor_table": table });
    let angles = json!({ "friction_angles": [q(30.0, "deg")] });
    assert_eq!(
        pairs(&faults(ask(json!(["skempton_1951"]), angles.clone()))),
        [(
            "/factor_table/friction_angles",
            "footing_table_without_method"
        )]
    );
    let both = json!({ "friction_angles": [q(30.0, "deg")], "depth_ratios": [1.0] });
    let answer = answer(ask(json!(["skempton_1951", "hansen_1970"]), both));
    assert_eq!(answer.result.factor_tables.len(), 1);
    assert_eq!(answer.result.depth_table.len(), 1);
    let outside = json!({ "friction_angles": [q(-1.0, "deg")], "depth_ratios": [51.0] });
    let all = faults(json!({ "factor_table": outside }));
    assert_eq!(
        pairs(&all),
        [
            ("/factor_table/depth_ratios/0", "above_maximum"),
            ("/factor_table/friction_angles/0", "below_minimum"),
        ]
    );
}

/// One hundred rows are read, one more is not.
#[test]
fn length_of_a_table() {
    use crate::contract::Calculation;
    let lengths = |n: usize| {
        let request: Request = serde_json::from_value(json!({
            "factor_table": { "depth_ratios": vec![1.0; n] }
        }))
        .unwrap();
        let mut issues = Vec::new();
        FootingBearing::lengths(&request, &mut issues);
        issues.len()
    };
    assert_eq!((lengths(1), lengths(100)), (0, 0));
    assert_eq!((lengths(0), lengths(101)), (1, 1));
}
