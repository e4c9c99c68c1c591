//! Measures and parts of the pile: fine against gravel, sleeve, coating, own weight, tension
//! path, levels of resistance, purposes. Expected numbers are worked by hand beside the code.

use serde_json::{Value as Json, json};

use super::{answer, ask, checks, close, example, pile, q, statuses, warned, with};
use crate::contract::CheckStatus::{Fail, NotEvaluated, Pass};
use crate::frost::{EmbedmentRuleId, PilePurpose, SleeveFault, UpliftOutcome};
use crate::quantity::{ForceUnit, LengthUnit};
use crate::source::Status;

fn uplift(request: Json) -> UpliftOutcome {
    answer(request).result.uplift.unwrap()
}

/// 150 kPa of saturated gravel against 100 kPa of fine soil: half as much again in every stage.
#[test]
fn gravel_grips_more_than_fine_soil() {
    let (fine, gravel) = (
        uplift(example("sizerin")),
        uplift(example("sizerin-gravel")),
    );
    for (a, b) in fine.stages.iter().zip(&gravel.stages) {
        close(
            b.design.frost_force.si(),
            1.5 * a.design.frost_force.si(),
            1e-12,
        );
        assert_eq!(a.severe, b.severe);
    }
    assert_eq!(gravel.bond_source.status, Status::Memory);
}

/// A sleeve to the base of frost that can heave freely takes the bond away; the severe line
/// stays as if it had jammed. Exactly at the base of frost it reaches it.
#[test]
fn a_sleeve_counts_below_frost_and_free() {
    let request = example("sizerin-corner-sleeve");
    let bare = uplift(example("sizerin-corner"));
    for depth in [1.9, 1.8] {
        let mut request = request.clone();
        request["uplift"]["sleeve"]["bottom_depth"] = q(depth, "m");
        let a = answer(request);
        let up = a.result.uplift.as_ref().unwrap();
        let sleeve = up.sleeve.as_ref().unwrap();
        assert!(sleeve.credited && sleeve.not_credited.is_empty());
        assert_eq!(up.stages[0].design.shaft_force.si(), 0.0);
        assert_eq!(up.stages[0].severe, bare.stages[0].severe);
        assert_eq!(statuses(&a, "frost_uplift"), [Pass]);
        assert!(!warned(&a, "sleeve_not_credited"));
    }
}

#[test]
fn a_sleeve_without_either_condition_counts_nothing() {
    let free = json!({ "reference": "detail 4" });
    let bare = uplift(example("sizerin-corner"));
    for (depth, stated, faults) in [
        (1.7, Some(&free), &[SleeveFault::EndsInFrost][..]),
        (1.9, None, &[SleeveFault::NotStatedFree]),
        (
            1.7,
            None,
            &[SleeveFault::EndsInFrost, SleeveFault::NotStatedFree],
        ),
    ] {
        let mut request = example("sizerin-corner");
        request["uplift"]["sleeve"] = json!({ "bottom_depth": q(depth, "m") });
        if let Some(stated) = stated {
            request["uplift"]["sleeve"]["free_to_heave"] = stated.clone();
        }
        let a = answer(request);
        let up = a.result.uplift.as_ref().unwrap();
        let sleeve = up.sleeve.as_ref().unwrap();
        assert_eq!(sleeve.not_credited, faults);
        assert!(!sleeve.credited);
        assert_eq!(up.stages, bare.stages);
        let said = a
            .warnings
            .iter()
            .filter(|w| w.code == "sleeve_not_credited");
        assert_eq!(said.count(), faults.len());
    }
}

#[test]
fn a_coating_counts_nothing() {
    let mut request = example("sizerin-corner");
    request["uplift"]["coating"] = json!("hot-dip zinc");
    let a = answer(request);
    assert!(warned(&a, "coating_not_credited"));
    assert_eq!(a.result.uplift.unwrap(), uplift(example("sizerin-corner")));
}

/// 2.875 x 0.203 in, head at 1.5 and tip at 17 ft: 1.70405 in2 of steel over 15.5 ft, 490.06
/// less 62.45 lbf/ft3: 78.4 lbf. It counts like dead load, in both stages.
#[test]
fn own_weight_holds_the_pile_down() {
    let bare = uplift(example("linnet"));
    let a = answer(example("linnet-tension-path"));
    let weight = a.result.pile_weight.unwrap();
    close(weight.get(ForceUnit::Lbf), 78.43, 5e-4);
    let up = a.result.uplift.as_ref().unwrap();
    for (with_it, without) in up.stages.iter().zip(&bare.stages) {
        let (dead, before) = (with_it.dead_load.unwrap(), without.dead_load.unwrap());
        close(dead.si(), (before + weight).si(), 1e-12);
    }
    let net = up.stages[1].design.net_frost_tension.unwrap();
    close(
        net.si(),
        bare.stages[1].design.frost_force.si() - 0.6 * weight.si(),
        1e-12,
    );
    // the coupling by the pile before the house, head and anchor by the house on it: nil
    let coupling = checks(&a, "tension_path_coupling")[0];
    close(coupling.demand.as_ref().unwrap().value(), net.si(), 1e-12);
    for id in ["tension_path_head", "tension_path_beam_anchor"] {
        assert_eq!(checks(&a, id)[0].demand.as_ref().unwrap().value(), 0.0);
    }
}

#[test]
fn a_tension_path_that_is_too_weak_fails_and_one_without_demand_is_open() {
    let mut request = example("linnet-tension-path");
    request["tension_path"]["coupling"] = q(6.0, "kip");
    assert_eq!(
        statuses(&answer(request.clone()), "tension_path_coupling"),
        [Fail]
    );
    // a beam cast before winter hangs on head and anchor too
    request["uplift"]["construction"] =
        json!({ "standing_over_winter": { "beam_cast": true, "contact_top_depth": q(0.0, "ft") } });
    let a = answer(request.clone());
    for id in [
        "tension_path_coupling",
        "tension_path_head",
        "tension_path_beam_anchor",
    ] {
        assert_eq!(statuses(&a, id), [Fail], "{id}");
    }
    request["uplift"]
        .as_object_mut()
        .unwrap()
        .remove("resistance");
    assert_eq!(
        statuses(&answer(request), "tension_path_head"),
        [NotEvaluated]
    );
}

/// An allowable resistance is compared as it is: no factor, no required ultimate.
#[test]
fn a_resistance_at_design_level_is_divided_no_further() {
    let a = answer(example("linnet-allowable-tension"));
    let up = a.result.uplift.as_ref().unwrap();
    let tension = up.tension.as_ref().unwrap();
    close(tension.design.get(ForceUnit::Kip), 9.3, 1e-12);
    assert_eq!(tension.ultimate, None);
    let factors = up.factors.as_ref().unwrap();
    assert_eq!(factors.tension_safety_factor, None);
    assert_eq!(factors.tension_source.id, "caller");
    assert_eq!(factors.dead_load_factor, 0.6);
    let service = &up.stages[1].design;
    assert_eq!(service.required_ultimate_tension, None);
    close(service.utilisation_ratio.unwrap(), 6.28796298 / 9.3, 1e-8);
    let taken: Vec<_> = a.defaults.iter().map(|d| d.name.as_ref()).collect();
    assert!(taken.contains(&"frost_asd_dead_load_factor"));
    assert!(
        !taken.iter().any(|name| name.contains("uplift")),
        "{taken:?}"
    );
}

/// The crushed form pushes 450 psf on 16 in over 7.2 ft: 4,320 lbf more in service, and none
/// before the beam is cast.
#[test]
fn a_crushed_void_form_adds_to_service() {
    let (bare, crushed) = (
        uplift(example("linnet")),
        uplift(example("linnet-void-form-crush")),
    );
    let force = crushed.stages[0].design.void_form_force.unwrap();
    close(force.get(ForceUnit::Lbf), 4320.0, 1e-12);
    close(
        crushed.stages[0].design.frost_force.si(),
        bare.stages[0].design.frost_force.si() + force.si(),
        1e-12,
    );
    assert_eq!(crushed.stages[1], bare.stages[1]);
}

/// 12 D where tension comes from torque, else 5 D, whatever the purpose is called.
#[test]
fn purposes_decide_the_rule_of_diameters() {
    let of = |rules: Json| {
        let request = with(pile(88.9, &[(0.3, 4.0)], 1.2), "embedment", rules);
        answer(request).result.embedment
    };
    for purpose in ["compression_only", "tension_by_analysis"] {
        let e = of(json!({ "purpose": purpose }));
        assert!(
            e.rules
                .iter()
                .all(|r| r.rule != EmbedmentRuleId::TorqueDiameters)
        );
    }
    for rules in [
        json!({ "purpose": "tension_by_torque" }),
        json!({ "tension_by_torque": true }),
    ] {
        let e = of(rules);
        assert_eq!(e.purpose, Some(PilePurpose::TensionByTorque));
        let torque = e
            .rules
            .iter()
            .find(|r| r.rule == EmbedmentRuleId::TorqueDiameters);
        close(torque.unwrap().required_depth.si(), 3.6, 1e-12);
    }
    assert_eq!(of(json!({})).purpose, None);
    let mut request = example("linnet-tension-by-torque");
    request["embedment"]["purpose"] = json!("tension_by_analysis");
    let faults = ask(request).expect_err("a refusal").issues;
    assert_eq!(faults[0].code, "purpose_contradicted");
}

/// Debris to 4.5 ft, top helix three diameters of 12 in below it: 7.5 ft. Soil that collapses
/// to 11 ft with 2 ft more: 13 ft, which governs, and the length follows.
#[test]
fn fill_and_collapsing_soil_set_the_least_length() {
    let fill = answer(example("linnet-fill-three-diameters"))
        .result
        .embedment;
    close(
        fill.required_top_helix_depth.get(LengthUnit::Ft),
        7.5,
        1e-12,
    );
    assert_eq!(fill.governed_by, EmbedmentRuleId::Fill);
    let a = answer(example("linnet-collapsing-soil"));
    let e = &a.result.embedment;
    close(e.required_top_helix_depth.get(LengthUnit::Ft), 13.0, 1e-12);
    assert_eq!(e.governed_by, EmbedmentRuleId::CollapsingSoil);
    // tip 3 ft below the top helix, head at 1.5 ft
    close(
        e.minimum_pile_length.get(LengthUnit::Ft),
        13.0 + 3.0 - 1.5,
        1e-12,
    );
    let mut request = example("linnet-collapsing-soil");
    request["collapse_depth"] = q(12.5, "ft");
    assert_eq!(
        statuses(&answer(request), "top_helix_below_collapse"),
        [Fail]
    );
}
