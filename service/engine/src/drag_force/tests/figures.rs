//! Figures worked by hand: limits and water, steel, collapse, screening, helices; and what is
//! decided on the limit.

use super::*;
use crate::contract::CheckStatus::{Fail, NotEvaluated, Pass};
use crate::contract::Verdict;
use crate::drag_force::{CollapseClass, DragMethod, DragTrigger, NeutralPlanePosition};
use crate::examples::{request, through};
use crate::quantity::{ForceUnit, LengthUnit, StressUnit};

fn base() -> Json {
    json!({
        "shaft": { "square": { "side": q(100.0, "mm") } }, "toe_depth": q(8.0, "m"),
        "helices": [{ "depth": q(8.0, "m") }],
        "drag": {
            "permanent_load": q(40.0, "kN"),
            "friction": { "layers": { "layers": [{
                "thickness": q(8.0, "m"), "unit_weight": q(20.0, "kN_per_m3"),
                "friction": { "beta": { "lower_factor": 0.2, "upper_factor": 0.4 } },
                "friction_limit": q(24.0, "kPa")
            }], "water_depth": q(2.0, "m"), "surcharge": q(10.0, "kPa") } },
            "settling": { "depth": q(4.0, "m"), "cause": { "fill": {} } }
        }
    })
}

/// By hand, p = 0.4 m: stress 10 kPa at grade, 50 at 2 m, then 10.19 more a metre. Upper f 4 and
/// 20 kPa; the limit of 24 is met at 60 kPa, 0.98135 m below 2 m. Down to 4 m: 24 + 21.590 +
/// 24.447 = 70.038 kN/m of width.
#[test]
fn friction_with_water_and_limit() {
    let a = answer(base());
    let drag = &a.result.drag;
    assert_eq!(drag.method, DragMethod::FillBase);
    let met = 10.0 / 10.19;
    let want = 0.4 * (24.0 + (20.0 + 24.0) / 2.0 * met + 24.0 * (2.0 - met));
    let plane = drag.governing.expect("a plane");
    close(plane.drag_force.get(ForceUnit::KN), want, 1e-12);
    close(plane.maximum_load.get(ForceUnit::KN), 40.0 + want, 1e-12);
    let layer = &drag.layers[0];
    close(
        layer.effective_stress_bottom.get(StressUnit::KPa),
        170.0 - 9.81 * 6.0,
        1e-12,
    );
    // the lower friction meets its limit at 120 kPa, 70 / 10.19 m below 2 m: not on this shaft
    let lower = 0.4 * 0.2 * (60.0 + (50.0 + 111.14) / 2.0 * 6.0);
    close(layer.lower_force.get(ForceUnit::KN), lower, 1e-12);
    assert_eq!(statuses(&a, "drag_structural"), [NotEvaluated]);
    assert_eq!(statuses(&a, "drag_helix_below_settling"), [Pass]);
    assert_eq!(a.verdict, Verdict::Provisional);
}

/// A head below grade takes contact away, not stress.
#[test]
fn a_head_below_grade() {
    let mut request = base();
    request["head_depth"] = q(1.0, "m");
    let drag = answer(request).result.drag;
    let layer = &drag.layers[0];
    close(layer.top.si(), 1.0, 1e-12);
    close(layer.effective_stress_top.get(StressUnit::KPa), 30.0, 1e-12);
    let above = answer(base())
        .result
        .drag
        .governing
        .expect("one")
        .drag_force;
    let lost = 0.4 * (4.0 + 12.0) / 2.0;
    let got = drag.governing.expect("one").drag_force;
    close((above - got).get(ForceUnit::KN), lost, 1e-9);
    // standing above grade it touches soil from grade
    let mut request = base();
    request["head_depth"] = q(-0.6, "m");
    assert_eq!(answer(request).result.drag.layers[0].top.si(), 0.0);
}

/// A pile that its load sinks has no neutral plane: it is an answer, and a rejection.
#[test]
fn a_load_that_nothing_holds() {
    let mut request = base();
    request["drag"]["method"] = json!("neutral_plane");
    request["drag"]["toe"] = json!({ "resistance": { "given": { "ultimate": q(10.0, "kN") } } });
    request["drag"]["structural"] =
        json!({ "allowable_stress": { "allowable_strength": q(100.0, "kN") } });
    let lower = 0.4 * 0.2 * (60.0 + (50.0 + 111.14) / 2.0 * 6.0);
    let mut with = |load: f64| {
        request["drag"]["permanent_load"] = q(load, "kN");
        answer(request.clone())
    };
    let sinks = with(10.0 + lower + 0.001);
    let balance = sinks.result.drag.balance.as_ref().expect("one");
    assert_eq!(balance.position, NeutralPlanePosition::None);
    assert_eq!(statuses(&sinks, "drag_permanent_load_held"), [Fail]);
    assert_eq!(statuses(&sinks, "drag_structural"), [NotEvaluated]);
    assert_eq!(sinks.verdict, Verdict::Reject);
    assert!(sinks.result.drag.structural.is_none());
    // exactly held: the plane is at the top and nothing drags
    let held = with(10.0 + lower);
    let plane = held.result.drag.governing.expect("a plane");
    assert!(
        plane.depth.si() < 1e-6 && plane.drag_force.si() < 1e-3,
        "{plane:?}"
    );
    assert_eq!(statuses(&held, "drag_permanent_load_held"), [Pass]);
}

/// Drag is in no check but that of the steel.
#[test]
fn drag_is_no_geotechnical_load() {
    let mut request = base();
    request["drag"]["toe"] = json!({ "resistance": { "given": { "ultimate": q(60.0, "kN") } } });
    let a = answer(request);
    let held = a.checks.iter().find(|c| c.id == "drag_permanent_load_held");
    let demand = held.and_then(|c| c.demand.as_ref()).expect("a demand");
    assert_eq!(demand.value(), 40e3);
    assert!(a.cautions.iter().any(|c| c.code == "drag_is_structural"));
}

#[test]
fn every_helix_is_held_against_the_settling_depth() {
    let mut request = base();
    request["helices"] = json!([
        { "depth": q(3.99, "m") }, { "depth": q(4.0, "m") }, { "depth": q(8.0, "m") }
    ]);
    let a = answer(request.clone());
    assert_eq!(
        statuses(&a, "drag_helix_below_settling"),
        [Fail, Pass, Pass]
    );
    assert_eq!(a.verdict, Verdict::Reject);
    request
        .as_object_mut()
        .expect("an object")
        .remove("helices");
    assert_eq!(
        statuses(&answer(request), "drag_helix_below_settling"),
        [NotEvaluated]
    );
}

/// Classes on their limits, from memory of the standard; settlement by hand.
#[test]
fn collapse_potential() {
    for (potential, class) in [
        (0.0, CollapseClass::Slight),
        (0.02, CollapseClass::Slight),
        (0.0201, CollapseClass::Moderate),
        (0.06, CollapseClass::Moderate),
        (0.061, CollapseClass::ModeratelySevere),
        (0.10, CollapseClass::ModeratelySevere),
        (0.11, CollapseClass::Severe),
    ] {
        let mut request = base();
        request["drag"]["settling"]["cause"] =
            json!({ "collapse_on_wetting": { "collapse_potential_ratio": potential } });
        let a = answer(request);
        let found = a.result.drag.collapse.as_ref().expect("a class");
        assert_eq!(found.class, class, "{potential}");
        close(found.settlement.si(), potential * 4.0, 1e-12);
        assert!(warned(&a, "default_from_memory"));
    }
    let mut request = base();
    request["drag"]["settling"]["cause"] = json!({ "collapse_on_wetting": {} });
    assert!(answer(request).result.drag.collapse.is_none());
}

#[test]
fn screening_triggers_are_passed_above_them_only() {
    let mut request = base();
    request["drag"]["screening"] = json!({
        "ground_settlement": q(4.0, "in"), "settlement_after_construction": q(0.41, "in"),
        "fill_height": q(6.0, "ft"), "compressible_thickness": q(31.0, "ft"),
        "water_drawdown": q(12.0, "ft")
    });
    let a = answer(request);
    let found: Vec<_> = a
        .result
        .drag
        .screening
        .iter()
        .map(|t| (t.trigger, t.exceeded))
        .collect();
    assert_eq!(
        found,
        [
            (DragTrigger::GroundSettlement, false),
            (DragTrigger::SettlementAfterConstruction, true),
            (DragTrigger::FillHeight, false),
            (DragTrigger::CompressibleThickness, true),
            (DragTrigger::WaterDrawdown, false),
        ]
    );
    let told = a
        .warnings
        .iter()
        .filter(|w| w.code == "drag_trigger_exceeded");
    assert_eq!(told.count(), 2);
}

/// By hand, Linnet: p = pi 2.875/12 ft; 0.8 x 110 pcf over 1.5 to 4.5 ft: 596.1 lbf on 7,585.
/// Sizerin: p = pi 88.9 mm; 0.5 (5 + 16 z) over 1.2 m with 5 kPa on top, and 0.9 x 300 kN.
#[test]
fn the_two_houses() {
    let of = |name: &str| {
        let text = request::<DragForce>(name);
        through::<DragForce>(&text, Trace::off()).expect(name).1
    };
    let linnet = of("linnet").result.drag;
    let plane = linnet.governing.expect("a plane");
    let perimeter = crate::math::PI * 2.875 / 12.0;
    let want = perimeter * 0.8 * 110.0 * (4.5 * 4.5 - 1.5 * 1.5) / 2.0;
    close(plane.drag_force.get(ForceUnit::Lbf), want, 1e-9);
    close(want, 596.1, 1e-4);
    close(plane.depth.get(LengthUnit::Ft), 4.5, 1e-12);
    let deep = of("linnet-neutral-plane");
    assert!(deep.result.drag.governing.expect("one").drag_force > plane.drag_force);
    assert!(warned(&deep, "drag_below_settling_ground"));
    let sizerin = of("sizerin").result.drag;
    let want = crate::math::PI * 0.0889 * 0.5 * (5.0 + 5.0 + 16.0 * 1.2) / 2.0 * 1.2;
    let drag = sizerin
        .governing
        .expect("a plane")
        .drag_force
        .get(ForceUnit::KN);
    close(drag, want, 1e-9);
    let steel = sizerin.structural.expect("steel");
    close(
        steel.load.get(ForceUnit::KN),
        1.25 * 12.0 + 1.1 * want,
        1e-9,
    );
    close(steel.strength.get(ForceUnit::KN), 270.0, 1e-12);
}

#[test]
fn all_faults_are_found_at_once() {
    let mut request = base();
    request["toe_depth"] = q(9.0, "m");
    request["drag"]["settling"]["depth"] = q(9.5, "m");
    request["drag"]["method"] = json!("neutral_plane");
    request["helices"] = json!([{ "depth": q(9.1, "m") }]);
    request["drag"]["friction"]["layers"]["layers"][0]["friction"] =
        json!({ "beta": { "lower_factor": 0.5, "upper_factor": 0.4 } });
    request.as_object_mut().expect("an object").remove("shaft");
    let found = faults(request);
    let found: Vec<_> = found
        .iter()
        .map(|(p, c)| (p.as_str(), c.as_str()))
        .collect();
    assert_eq!(
        found,
        [
            ("", "missing_member"),
            ("/drag", "missing_member"),
            ("/drag/friction/layers/layers", "drag_layers_too_short"),
            (
                "/drag/friction/layers/layers/0/friction/beta/lower_factor",
                "drag_lower_above_upper"
            ),
            ("/drag/settling/depth", "drag_settles_below_toe"),
            ("/helices/0/depth", "depths_out_of_order"),
        ]
    );
}
