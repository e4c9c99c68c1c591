//! Two whole projects and their variants: a house in US units by allowable stress, and a
//! raised cabin in metric by limit states. Figures are own arithmetic from the inputs
//! shown, worked by hand beside the code.

use serde_json::{Value as Json, json};

use super::{answer, checks, close, pile, q, statuses, warned, with};
use crate::contract::CheckStatus::{Fail, Pass, Warn};
use crate::contract::Verdict;
use crate::frost::{EmbedmentRuleId, FrostFormat, FrostStage, HeaveCause};
use crate::quantity::{ForceUnit, LengthUnit, StressUnit};

/// 2.875 in shaft, 100 kPa over the whole frost depth: 3,930 lbf at 30 in of frost, 6,288
/// lbf at 48 in; the top helix must go down with it.
#[test]
fn frost_of_30_against_48_inches() {
    for (frost, force, required) in [
        (30.0, 3930.0, 60.0),
        (48.0, 6288.0, 60.0),
        (60.0, 7860.0, 72.0),
    ] {
        let a = answer(json!({
            "pile": {
                "shaft": { "round": { "outside_diameter": q(2.875, "in") } },
                "helices": [{ "diameter": q(12.0, "in"), "depth": q(14.0, "ft") }]
            },
            "frost": { "official_depth": q(frost, "in") },
            "embedment": { "frost_margin": q(12.0, "in") },
            "beam": { "above_ground": {} },
            "uplift": { "bond": { "fine": {} } }
        }));
        let up = a.result.uplift.as_ref().unwrap();
        for stage in &up.stages {
            close(stage.frozen_length.get(LengthUnit::In), frost, 1e-12);
            close(stage.design.shaft_force.get(ForceUnit::Lbf), force, 2e-4);
        }
        close(
            a.result
                .embedment
                .required_top_helix_depth
                .get(LengthUnit::In),
            required,
            1e-12,
        );
    }
}

/// The cabin's pile with what holds it down sent as a number: 188.5 kN ultimate.
fn cabin(dead_kn: f64, frost_m: f64, bond: Json, construction: Json) -> Json {
    with(
        pile(88.9, &[(0.4, 5.0), (0.35, 6.05)], frost_m),
        "uplift",
        json!({
            "bond": bond,
            "construction": construction,
            "resistance": {
                "design_basis": { "limit_states": {} },
                "dead_load": q(dead_kn, "kN"),
                "tension": { "given": { "ultimate": q(188.5, "kN"), "by": "analysis", "reference": "bearing of both helices" } }
            }
        }),
    )
}

/// 1.8 m of frost on 88.9 mm at 100 kPa: F 50.3 kN; N = 1.25 F - 0.9 D; required ultimate
/// N / 0.3. Against 0.3 x 188.5 = 56.6 kN the outer interior pile passes (52.0) and the
/// corner (57.4), the end of the centre line (59.3) and the unloaded pile (62.8) fail.
#[test]
fn cabin_pile_by_pile() {
    for (dead, net, required, passes) in [
        (12.0, 52.0, 173.4, true),
        (6.0, 57.4, 191.4, false),
        (3.9, 59.3, 197.7, false),
        (0.0, 62.8, 209.5, false),
    ] {
        let a = answer(cabin(
            dead,
            1.8,
            json!({ "fine": {} }),
            json!({ "loaded_before_winter": {} }),
        ));
        let up = a.result.uplift.as_ref().unwrap();
        let factors = up.factors.as_ref().unwrap();
        assert_eq!(factors.format, FrostFormat::LimitStates);
        assert_eq!(factors.frost_load_factor, 1.25);
        assert_eq!(factors.dead_load_factor, 0.9);
        assert_eq!(factors.tension_resistance_factor, Some(0.3));
        assert_eq!(up.stages.len(), 1);
        let design = &up.stages[0].design;
        close(design.frost_force.get(ForceUnit::KN), 50.3, 1e-3);
        close(
            design.net_frost_tension.unwrap().get(ForceUnit::KN),
            net,
            1e-3,
        );
        close(
            design.required_ultimate_tension.unwrap().get(ForceUnit::KN),
            required,
            4e-4,
        );
        close(
            up.tension.as_ref().unwrap().design.get(ForceUnit::KN),
            56.55,
            1e-9,
        );
        let want = if passes { Pass } else { Fail };
        assert_eq!(statuses(&a, "frost_uplift"), [want], "D {dead} kN");
        assert!(warned(&a, "construction_stage_left_out"));
    }
}

/// Left standing over winter, the pile that passes with the house on it fails before:
/// 62.8 kN of tension whatever the house will weigh.
#[test]
fn cabin_left_standing_over_winter() {
    let a = answer(cabin(
        12.0,
        1.8,
        json!({ "fine": {} }),
        json!({ "standing_over_winter": {} }),
    ));
    let up = a.result.uplift.as_ref().unwrap();
    assert_eq!(statuses(&a, "frost_uplift"), [Pass, Fail]);
    assert_eq!(a.verdict, Verdict::Reject);
    assert_eq!(up.governing_stage, FrostStage::Construction);
    close(
        up.tension_path_demand.unwrap().get(ForceUnit::KN),
        62.8,
        1e-3,
    );
    let failed = checks(&a, "frost_uplift")[1];
    assert_eq!(failed.combination.as_deref(), Some("construction"));
    assert!(failed.governing);
}

/// 1.2 m of frost gives 33.5 kN, and 65 kPa of bond 32.7 kN with a warning.
#[test]
fn cabin_shallower_frost_and_weaker_bond() {
    let built = json!({ "loaded_before_winter": {} });
    let force = |frost, bond| {
        let a = answer(cabin(12.0, frost, bond, built.clone()));
        let f = a.result.uplift.as_ref().unwrap().stages[0]
            .design
            .frost_force;
        (f.get(ForceUnit::KN), warned(&a, "bond_stress_low"))
    };
    let (shallow, warned_shallow) = force(1.2, json!({ "fine": {} }));
    close(shallow, 33.5, 1e-3);
    assert!(!warned_shallow);
    let weak = json!({ "given": { "stress": q(65.0, "kPa"), "reference": "caller" } });
    let (weak, warned_weak) = force(1.8, weak);
    close(weak, 32.7, 1e-3);
    assert!(warned_weak);
}

/// Allowable stress by its defaults: F - 0.6 D against R / 3 by analysis, R / 2 by load
/// test; severe bond only warns.
#[test]
fn allowable_stress_by_hand() {
    for (by, safety) in [("analysis", 3.0), ("torque", 3.0), ("load_test", 2.0)] {
        let a = answer(with(
            pile(88.9, &[(0.4, 5.0), (0.35, 6.05)], 1.8),
            "uplift",
            json!({
                "bond": { "fine": {} },
                "construction": { "standing_over_winter": { "dead_load": q(1.5, "kN") } },
                "resistance": {
                    "design_basis": { "allowable_stress": {} },
                    "dead_load": q(20.0, "kN"),
                    "tension": { "given": { "ultimate": q(150.0, "kN"), "by": by, "reference": "report" } }
                }
            }),
        ));
        let up = a.result.uplift.as_ref().unwrap();
        // 100 kPa x pi x 0.0889 m x 1.8 m
        let force = 100e3 * std::f64::consts::PI * 0.0889 * 1.8;
        let [service, construction] = [&up.stages[0], &up.stages[1]];
        close(
            service.design.net_frost_tension.unwrap().si(),
            force - 12e3,
            1e-12,
        );
        close(
            construction.design.net_frost_tension.unwrap().si(),
            force - 0.9e3,
            1e-12,
        );
        close(
            construction.design.required_ultimate_tension.unwrap().si(),
            safety * (force - 0.9e3),
            1e-12,
        );
        // 12 diameters of 0.4 m where the number comes from torque
        let rules = &a.result.embedment.rules;
        let torque = rules
            .iter()
            .find(|r| r.rule == EmbedmentRuleId::TorqueDiameters);
        assert_eq!(torque.is_some(), by == "torque");
        if let Some(rule) = torque {
            close(rule.required_depth.si(), 4.8, 1e-12);
        }
        let factors = up.factors.as_ref().unwrap();
        assert_eq!(factors.tension_safety_factor, Some(safety));
        assert_eq!(
            (factors.frost_load_factor, factors.dead_load_factor),
            (1.0, 0.6)
        );
        close(
            up.tension.as_ref().unwrap().design.si(),
            150e3 / safety,
            1e-12,
        );
        let passes = |net: f64| if net <= 150e3 / safety { Pass } else { Fail };
        assert_eq!(
            statuses(&a, "frost_uplift"),
            [passes(force - 12e3), passes(force - 0.9e3)]
        );
        assert_eq!(statuses(&a, "frost_uplift_severe"), [Warn, Warn]);
    }
}

/// Crawl space dug out 0.8 m, frost 1.2 m from there: base at 2.0 m. The beam goes down to
/// 0.9 m and is gripped on one side: 50 kPa x 0.9 m x 2.4 m = 108 kN.
#[test]
fn frost_counts_from_the_surface_that_is_cold() {
    let mut request = pile(88.9, &[(0.3, 3.5)], 1.2);
    request["frost"]["cold_surface_depth"] = q(0.8, "m");
    request["head_depth"] = q(0.8, "m");
    request["beam"] = json!({ "in_soil": {
        "underside_depth": q(0.9, "m"), "tributary_length": q(2.4, "m"), "side_count": 1,
        "sides": { "bonded": { "bond_stress": q(50.0, "kPa") } }
    } });
    request["uplift"] = json!({
        "bond": { "fine": {} },
        "construction": { "standing_over_winter": { "dead_load": q(8.0, "kN") } },
        "resistance": {
            "design_basis": { "limit_states": {} },
            "dead_load": q(40.0, "kN"),
            "tension": { "given": { "ultimate": q(600.0, "kN"), "by": "analysis", "reference": "report" } }
        }
    });
    let a = answer(request.clone());
    close(a.result.frost.base_depth.si(), 2.0, 1e-12);
    let e = &a.result.embedment;
    close(e.required_top_helix_depth.si(), 2.3, 1e-12);
    close(e.rules[1].required_depth.si(), 0.8 + 5.0 * 0.3, 1e-12);
    close(e.minimum_pile_length.si(), 2.3 - 0.8, 1e-12);
    let up = a.result.uplift.as_ref().unwrap();
    let [service, construction] = [&up.stages[0], &up.stages[1]];
    close(service.frozen_length.si(), 1.1, 1e-12);
    close(construction.frozen_length.si(), 1.2, 1e-12);
    close(service.design.beam_force.get(ForceUnit::KN), 108.0, 1e-12);
    assert_eq!(construction.design.beam_force.si(), 0.0);
    let perimeter = std::f64::consts::PI * 0.0889;
    let force = 100e3 * perimeter * 1.1 + 108e3;
    close(
        service.design.net_frost_tension.unwrap().si(),
        1.25 * force - 0.9 * 40e3,
        1e-12,
    );
    assert!(warned(&a, "beam_grip_exceeds_dead_load"));
    // with the beam cast by then, frost grips it before the house stands too
    request["uplift"]["construction"]["standing_over_winter"]["beam_cast"] = json!(true);
    let a = answer(request.clone());
    let construction = &a.result.uplift.as_ref().unwrap().stages[1];
    close(construction.design.frost_force.si(), force, 1e-12);
    assert_eq!(
        a.result.uplift.as_ref().unwrap().governing_stage,
        FrostStage::Construction
    );
    // a bond break takes the grip away
    request["beam"]["in_soil"]["sides"] = json!({ "bond_break": { "reference": "sheet S-2" } });
    let a = answer(request);
    assert_eq!(
        a.result.uplift.as_ref().unwrap().stages[0]
            .design
            .beam_force
            .si(),
        0.0
    );
    assert!(!warned(&a, "beam_grip_exceeds_dead_load"));
}

/// 5 in of swell over a 4 in form that keeps 40 %: 2.4 in are free, short by 2.6 in, 8.33 in
/// needed; if the form vanished it would be short by 1 in. 30 in of concrete at 150 pcf
/// weigh 375 psf.
#[test]
fn void_form_too_thin() {
    let form = |extra: Json| {
        let mut form = json!({
            "nominal_thickness": q(4.0, "in"),
            "heave": {
                "frost": { "given": { "movement": q(3.0, "in") } },
                "swell": { "given": { "movement": q(5.0, "in") } }
            },
            "wet_concrete": { "depth": q(30.0, "in"), "unit_weight": q(150.0, "pcf"), "rated_load": q(375.0, "psf") }
        });
        for (key, value) in extra.as_object().unwrap() {
            form[key] = value.clone();
        }
        answer(with(pile(73.0, &[(0.3, 4.0)], 1.2), "void_form", form))
    };
    let a = form(json!({}));
    let got = a.result.void_form.as_ref().unwrap();
    assert_eq!(got.heave_governed_by, HeaveCause::Swell);
    close(got.usable_thickness.get(LengthUnit::In), 2.4, 1e-12);
    close(got.shortfall.get(LengthUnit::In), 2.6, 1e-12);
    close(
        got.required_nominal_thickness.get(LengthUnit::In),
        25.0 / 3.0,
        1e-12,
    );
    close(
        got.concrete_load.unwrap().get(StressUnit::Psf),
        375.0,
        1e-12,
    );
    assert_eq!(statuses(&a, "void_form_clearance"), [Fail]);
    assert_eq!(statuses(&a, "void_form_concrete_load"), [Pass]);
    assert!(warned(&a, "void_form_residual_untested"));
    assert_eq!(a.verdict, Verdict::Reject);
    let vanishing = form(json!({ "residual": { "share": { "residual_ratio": 0.0 } } }));
    let got = vanishing.result.void_form.as_ref().unwrap();
    close(got.shortfall.get(LengthUnit::In), 1.0, 1e-12);
    // tested: 1 in remains of 4; margin of half an inch
    let tested = form(json!({
        "residual": { "tested": { "crushed_thickness": q(1.0, "in"), "reference": "test report" } },
        "margin": q(0.5, "in")
    }));
    let got = tested.result.void_form.as_ref().unwrap();
    close(got.residual_ratio, 0.25, 1e-12);
    close(got.shortfall.get(LengthUnit::In), 2.5, 1e-12);
    close(
        got.required_nominal_thickness.get(LengthUnit::In),
        5.5 / 0.75,
        1e-12,
    );
}

/// Fill, active zone and torque each ask for their own depth; the deepest governs and all
/// are listed.
#[test]
fn the_deepest_rule_governs() {
    let mut request = pile(73.0, &[(0.2, 2.0), (0.3, 2.9)], 1.2);
    request["tip_depth"] = q(3.1, "m");
    request["fill_depth"] = q(1.5, "m");
    request["active_depth"] = q(3.0, "m");
    request["embedment"] = json!({
        "fill_margin": q(0.9, "m"), "active_margin": q(0.25, "m"), "tension_by_torque": true
    });
    let a = answer(request);
    let e = &a.result.embedment;
    let depths: Vec<_> = e.rules.iter().map(|r| r.required_depth.si()).collect();
    for (got, want) in depths.iter().zip([1.5, 1.5, 3.6, 2.4, 3.25]) {
        close(*got, want, 1e-12);
    }
    assert_eq!(e.governed_by, EmbedmentRuleId::TorqueDiameters);
    close(e.shortfall.si(), 1.6, 1e-12);
    close(e.required_tip_depth.si(), 3.6 + 1.1, 1e-12);
    assert_eq!(statuses(&a, "top_helix_below_fill"), [Fail]);
    assert_eq!(statuses(&a, "top_helix_below_active_zone"), [Fail]);
    assert_eq!(statuses(&a, "tip_frost_margin"), [Pass]);
    assert!(warned(&a, "swell_uplift_not_covered"));
}
