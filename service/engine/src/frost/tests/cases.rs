//! Cases with a published or an independently computed result. Each names its origin and
//! how far that was checked; those from memory show agreement with recall and no more.

use serde_json::json;

use super::{answer, close, pile, q, statuses, warned, with};
use crate::contract::CheckStatus::{Fail, Pass};
use crate::frost::EmbedmentRuleId::{Diameters, FrostMargin, TorqueDiameters};
use crate::quantity::{ForceUnit, LengthUnit, StressUnit};
use crate::source::Status;

/// AD-1 (memory, informational): Canadian Foundation Engineering Manual (2006): 65 kPa fine
/// soil on wood or concrete, 100 kPa fine soil on steel, 150 kPa saturated gravel on steel.
#[test]
fn ad_1_design_bond_by_soil() {
    let base = with(
        pile(88.9, &[(0.3, 3.0)], 1.2),
        "beam",
        json!({ "in_soil": { "underside_depth": q(0.5, "m"), "tributary_length": q(2.0, "m") } }),
    );
    for (bond, kpa) in [("fine", 100.0), ("gravel", 150.0)] {
        let a = answer(with(
            base.clone(),
            "uplift",
            json!({ "bond": { bond: {} } }),
        ));
        let up = a.result.uplift.as_ref().unwrap();
        assert_eq!(up.bond_stress.get(StressUnit::KPa), kpa);
        assert_eq!(up.bond_source.status, Status::Memory);
        assert!(warned(&a, "default_from_memory"));
        let grip = up.beam_grip.as_ref().unwrap();
        assert_eq!(grip.bond_stress.get(StressUnit::KPa), 65.0);
        // 65 kPa x 2 sides x 0.5 m x 2 m, by hand
        close(grip.force.get(ForceUnit::KN), 130.0, 1e-12);
    }
}

/// AD-2 (abstract seen): Domaschuk (1982), 150 to 350 kPa on a steel angle in silt. The
/// bound is a choice of the caller, and the severe line is never milder than what decides.
#[test]
fn ad_2_laboratory_peak() {
    let base = pile(88.9, &[(0.3, 3.0)], 1.2);
    let peak = answer(with(
        base.clone(),
        "uplift",
        json!({ "bond": { "laboratory_peak": {} } }),
    ));
    let up = peak.result.uplift.unwrap();
    assert_eq!(up.bond_stress.get(StressUnit::KPa), 350.0);
    assert_eq!(up.bond_source.status, Status::Verified);
    assert_eq!(up.severe_bond_stress.get(StressUnit::KPa), 350.0);
    let severe = answer(with(base, "uplift", json!({ "bond": { "severe": {} } })));
    let up = severe.result.uplift.unwrap();
    assert_eq!(up.bond_stress.get(StressUnit::KPa), 275.0);
    let measured = 150.0..=350.0;
    assert!(measured.contains(&up.bond_stress.get(StressUnit::KPa)));
}

/// AD-3 (force seen in the abstract, pipe and depth assumed): Crory and Reed (1965), 50,000
/// lbf; on 8.625 in of pipe and 5 ft of frost that is 30.75 psi or 212 kPa.
#[test]
fn ad_3_back_figured_bond() {
    let request = json!({
        "pile": {
            "shaft": { "round": { "outside_diameter": q(8.625, "in") } },
            "helices": [{ "diameter": q(16.0, "in"), "depth": q(12.0, "ft") }]
        },
        "frost": { "official_depth": q(5.0, "ft") },
        "beam": { "above_ground": {} },
        "uplift": { "bond": { "given": { "stress": q(1.0, "psi"), "reference": "unit stress" } } }
    });
    let a = answer(request);
    let up = a.result.uplift.as_ref().unwrap();
    let stage = &up.stages[0];
    assert_eq!(stage.frozen_length.get(LengthUnit::Ft), 5.0);
    let implied_psi = 50_000.0 / stage.design.shaft_force.get(ForceUnit::Lbf);
    close(implied_psi, 30.75, 2e-4);
    close(implied_psi * 6.894_757_293, 212.0, 1e-3);
    assert!(warned(&a, "bond_stress_low"));
}

/// RG-5 (own arithmetic): 100 kPa on a 38.1 mm square over 1.2 m is 18.29 kN.
#[test]
fn rg_5_square_shaft() {
    let mut request = pile(1.0, &[(0.3, 3.0)], 1.2);
    request["pile"]["shaft"] = json!({ "square": { "side": q(38.1, "mm") } });
    request["uplift"] = json!({ "bond": { "fine": {} } });
    let up = answer(request).result.uplift.unwrap();
    close(up.shaft_perimeter.get(LengthUnit::Mm), 152.4, 1e-12);
    close(
        up.stages[0].design.shaft_force.get(ForceUnit::KN),
        18.29,
        3e-4,
    );
    close(
        up.stages[0].design.shaft_force.si(),
        100e3 * 4.0 * 0.0381 * 1.2,
        1e-12,
    );
    // the severe line is always there: 275 / 100 of it
    close(
        up.stages[0].severe.shaft_force.si(),
        275e3 * 4.0 * 0.0381 * 1.2,
        1e-12,
    );
}

/// RG-9 (own arithmetic): 60 mm of heave on a form that keeps 40 %: 100 mm at least.
#[test]
fn rg_9_void_form() {
    for (nominal, usable) in [(100.0, 60.0), (150.0, 90.0)] {
        let a = answer(with(
            pile(88.9, &[(0.3, 3.0)], 1.2),
            "void_form",
            json!({
                "nominal_thickness": q(nominal, "mm"),
                "heave": { "frost": { "given": { "movement": q(60.0, "mm") } } },
                "residual": { "share": { "residual_ratio": 0.4 } }
            }),
        ));
        let form = a.result.void_form.as_ref().unwrap();
        close(form.usable_thickness.get(LengthUnit::Mm), usable, 1e-12);
        close(
            form.required_nominal_thickness.get(LengthUnit::Mm),
            100.0,
            1e-12,
        );
        assert_eq!(form.shortfall.si(), 0.0);
        assert_eq!(statuses(&a, "void_form_clearance"), [Pass]);
        assert!(!warned(&a, "void_form_residual_untested"));
    }
}

/// IN-2 (5 D seen transcribed, 12 in margin common practice): helices of 8, 10 and 12 in
/// under 42 in of frost need 54, 54 and 60 in.
#[test]
fn in_2_uppermost_helix() {
    for (helix, required, rule) in [
        (8.0, 54.0, FrostMargin),
        (10.0, 54.0, FrostMargin),
        (12.0, 60.0, Diameters),
    ] {
        let at = |depth: f64| {
            answer(json!({
                "pile": {
                    "shaft": { "round": { "outside_diameter": q(2.875, "in") } },
                    "helices": [{ "diameter": q(helix, "in"), "depth": q(depth, "in") }]
                },
                "frost": { "official_depth": q(42.0, "in") },
                "embedment": { "frost_margin": q(12.0, "in") }
            }))
        };
        let a = at(required);
        let e = &a.result.embedment;
        assert_eq!(e.rules[0].rule, FrostMargin);
        close(e.rules[0].required_depth.get(LengthUnit::In), 54.0, 1e-12);
        close(
            e.rules[1].required_depth.get(LengthUnit::In),
            5.0 * helix,
            1e-12,
        );
        close(
            e.required_top_helix_depth.get(LengthUnit::In),
            required,
            1e-12,
        );
        assert_eq!(e.governed_by, rule);
        assert_eq!(e.shortfall.si(), 0.0);
        assert!(a.checks.iter().all(|c| c.status != Fail), "{:?}", a.checks);
        let short = at(required - 0.5);
        close(
            short.result.embedment.shortfall.get(LengthUnit::In),
            0.5,
            1e-9,
        );
        assert!(short.checks.iter().any(|c| c.status == Fail));
    }
}

/// UP-09 (seen transcribed): UFC 3-220-20, 6-4.7: 5 D of a 355.6 mm helix is 1.778 m; 12 D
/// where tension comes from torque.
#[test]
fn up_09_least_embedment() {
    let base = pile(88.9, &[(0.3556, 1.778)], 0.6);
    let a = answer(base.clone());
    let e = &a.result.embedment;
    close(e.required_top_helix_depth.si(), 1.778, 1e-12);
    assert_eq!(e.governed_by, Diameters);
    assert_eq!(statuses(&a, "top_helix_diameters"), [Pass]);
    let a = answer(with(
        base,
        "embedment",
        json!({ "tension_by_torque": true }),
    ));
    let e = &a.result.embedment;
    close(e.required_top_helix_depth.si(), 12.0 * 0.3556, 1e-12);
    assert_eq!(e.governed_by, TorqueDiameters);
    assert_eq!(statuses(&a, "top_helix_torque_diameters"), [Fail]);
}
