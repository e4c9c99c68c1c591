//! Everyday questions with the figure a practitioner checks: the dug strip and pad instead of
//! piles, reaction cribs, design basis, defaults. Expected numbers are own arithmetic.

use super::*;
use crate::contract::{CheckStatus, Verdict};
use crate::footing::{FootingMethod, FootingPressureKind};
use crate::quantity::{ForceUnit, LineLoadUnit};

fn psf(stress: SoilStress) -> f64 {
    stress.get(StressUnit::Psf)
}

/// A 20 in strip on clay of 500 psf, below fill, so without depth factors: 5 x 500 = 2,500
/// psf net, over 3 is 833.3 psf or 1,388.9 plf; 1,574.75 plf makes 944.85 psf: 1.134. At 24 in
/// 787.4 psf: 0.945.
#[test]
fn linnet_dug_strip() {
    let answer = example("linnet");
    let c = &answer.result.capacities[0];
    near(psf(c.ultimate_net), 2500.0, 1e-9);
    near(psf(c.ultimate_gross), 3050.0, 1e-9);
    let design = c.design.unwrap();
    near(psf(design.net), 833.333333, 1e-6);
    let line = design.load.net_line.unwrap().get(LineLoadUnit::Plf);
    near(line, 1388.88889, 1e-6);
    near(psf(answer.result.demand_pressure.unwrap()), 944.85, 1e-6);
    near(answer.checks[0].utilisation_ratio.unwrap(), 1.13382, 1e-4);
    assert_eq!(answer.checks[0].status, CheckStatus::Fail);
    assert_eq!(answer.verdict, Verdict::Reject);

    let wider = example("linnet-wider-strip");
    near(wider.checks[0].utilisation_ratio.unwrap(), 0.94485, 1e-4);
    assert_eq!(wider.verdict, Verdict::Accept);
}

/// A pad of 0.9 m on silt of 40 kPa at 1.9 m: Skempton 5 x 1.2 x 40 = 240 kPa net, 274.2
/// gross with 34.2 of total overburden; half of it less the overburden is 102.9; 58.2 kN make
/// 71.85: 0.698. Lowest of five theories.
#[test]
fn sizerin_dug_pad() {
    let answer = example("sizerin");
    near(kpa(answer.result.base.unwrap().overburden), 34.2, 1e-9);
    let lowest = answer.result.lowest.unwrap();
    assert_eq!(lowest.method, FootingMethod::Skempton1951);
    near(kpa(lowest.ultimate_gross), 274.2, 1e-9);
    // Terzaghi is the highest: 1.3 (1.5 pi + 1) 40 + 34.2
    near(lowest.spread_ratio, 331.244 / 274.2, 1e-3);
    near(
        kpa(answer.result.capacities[0].design.unwrap().net),
        102.9,
        1e-9,
    );
    near(answer.checks[0].utilisation_ratio.unwrap(), 0.698269, 1e-3);
    assert_eq!(answer.verdict, Verdict::Accept);
    assert!(warns(&answer, "default_from_memory"));
    let used = answer.result.design_basis.unwrap();
    assert_eq!(used.resistance_factor, Some(0.5));
    assert_eq!(used.applied_to, FootingPressureKind::Gross);
    assert_eq!(
        answer.checks[0].source.id,
        "canada_resistance_factor_shallow"
    );
}

/// A crib of 1.2 x 2.4 m on clay of 60 kPa at 0.3 m, gross: Skempton 5 x 1.1 x 60 + 5.4 =
/// 335.4 kPa; over 2.5 it is 134.16 kPa or 386.4 kN for 300 kN: 0.776.
#[test]
fn reaction_crib() {
    let answer = example("reaction-crib");
    let c = &answer.result.capacities[0];
    near(kpa(c.ultimate_gross), 335.4, 1e-9);
    let design = c.design.unwrap();
    near(kpa(design.gross), 134.16, 1e-9);
    near(
        design.load.gross.unwrap().get(ForceUnit::KN),
        386.3808,
        1e-9,
    );
    near(answer.checks[0].utilisation_ratio.unwrap(), 0.776436, 1e-3);
    assert_eq!(answer.verdict, Verdict::Accept);
}

/// Safety on the gross or on the net pressure: of 240 + 34.2 kPa with F = 3, gross 91.4 and
/// net 57.2, or net 80 and gross 114.2.
#[test]
fn safety_on_gross_or_net() {
    let ask = |applied_to: Option<&str>, safety: f64| {
        let mut basis = json!({ "safety_factor": safety });
        if let Some(kind) = applied_to {
            basis["applied_to"] = json!(kind);
        }
        let request = json!({
            "footing": { "shape": { "square": { "width": q(0.9, "m") } }, "depth": q(1.9, "m") },
            "depth_factors": "leave_out",
            "soil": { "strength": { "undrained": { "undrained_strength": q(40.0, "kPa") } },
                      "unit_weight": q(18.0, "kN_per_m3") },
            "design_basis": { "allowable_stress": basis },
        });
        let answer = answer(request);
        let design = answer.result.capacities[0].design.unwrap();
        (kpa(design.gross), kpa(design.net))
    };
    let both = |(gross, net): (f64, f64), expected: (f64, f64)| {
        near(gross, expected.0, 1e-9);
        near(net, expected.1, 1e-9);
    };
    both(ask(None, 3.0), (91.4, 57.2));
    both(ask(Some("gross"), 3.0), (91.4, 57.2));
    both(ask(Some("net"), 3.0), (114.2, 80.0));
    // where the overburden uses up the gross figure nothing is left, and nothing negative
    assert_eq!(ask(None, 10.0).1, 0.0);
}

/// On the limit passes: a pressure equal to the allowable one, from two units.
#[test]
fn on_the_limit_passes() {
    let ask = |line: f64| {
        answer(json!({
            "footing": { "shape": { "strip": { "width": q(1.5, "ft") } }, "depth": q(0.0, "ft") },
            "soil": { "strength": { "undrained": { "undrained_strength": q(600.0, "psf") } },
                      "unit_weight": q(110.0, "pcf") },
            "design_basis": { "allowable_stress": {} },
            "demand": { "level": "allowable", "counted": "gross",
                        "action": { "line_load": { "intensity": q(line, "plf") } } },
        }))
    };
    assert_eq!(ask(1500.0).verdict, Verdict::Accept);
    assert_eq!(ask(1500.01).verdict, Verdict::Reject);
}

#[test]
fn defaults_follow_the_question() {
    let soil =
        |strength: Json| json!({ "strength": strength, "unit_weight": q(18.0, "kN_per_m3") });
    let ask = |strength: Json| {
        answer(json!({
            "footing": { "shape": { "square": { "width": q(1.0, "m") } }, "depth": q(0.5, "m") },
            "soil": soil(strength),
        }))
    };
    let sand = ask(json!({ "drained": { "friction_angle": q(30.0, "deg") } }));
    assert_eq!(sand.result.capacities[0].method, FootingMethod::Vesic1973);
    assert_eq!(sand.verdict, Verdict::NotAsked);
    assert!(sand.checks.is_empty() && sand.result.design_basis.is_none());
    let clay = ask(json!({ "undrained": { "undrained_strength": q(30.0, "kPa") } }));
    assert_eq!(
        clay.result.capacities[0].method,
        FootingMethod::Skempton1951
    );
    assert!(clay.result.base.unwrap().unit_weight_below.is_none());
    for part in [
        "eccentric_load",
        "inclined_load",
        "layered_ground",
        "settlement",
    ] {
        assert!(sand.result.not_included.iter().any(|n| n == part), "{part}");
    }
    for code in [
        "footing_central_load",
        "footing_one_soil",
        "footing_settlement",
        "footing_soil_above",
    ] {
        assert!(sand.cautions.iter().any(|c| c.code == code), "{code}");
    }
    let table = answer(json!({ "factor_table": { "friction_angles": [q(30.0, "deg")] } }));
    assert_eq!(
        table.result.factor_tables[0].method,
        FootingMethod::Vesic1973
    );
    assert!(table.result.not_included.is_empty() && table.result.base.is_none());
}

/// Steps carry the terms that add up to the answer.
#[test]
fn steps_add_up() {
    let answer = example("theories-side-by-side");
    let last = answer.result.capacities.last().unwrap();
    let sum = step(&answer, "q_c") + step(&answer, "q_q") + step(&answer, "q_gamma");
    near(sum, last.ultimate_gross.si(), 1e-9);
    near(step(&answer, "q_net"), last.ultimate_net.si(), 1e-9);
    let steps = answer.steps.unwrap();
    for capacity in &answer.result.capacities {
        let name = capacity.method.name();
        assert!(
            steps.iter().any(|s| s.subject.as_deref() == Some(name)),
            "{name}"
        );
    }
}

/// Warnings where a theory leaves its ground.
#[test]
fn warnings_tell() {
    assert!(warns(
        &example("steep-friction"),
        "footing_friction_above_40"
    ));
    assert!(!warns(&example("sb-01"), "footing_friction_above_40"));
    assert!(warns(&example("low-friction"), "footing_low_friction"));
    assert!(warns(
        &example("depth-of-one-width"),
        "footing_depth_factor_falls"
    ));
    assert!(warns(
        &example("loose-sand-circle"),
        "footing_width_factor_table"
    ));
    let deep = answer(json!({
        "methods": ["terzaghi_1943", "vesic_1973"],
        "footing": { "shape": { "square": { "width": q(1.0, "m") } }, "depth": q(2.0, "m") },
        "soil": { "strength": { "drained": { "friction_angle": q(30.0, "deg") } },
                  "unit_weight": q(18.0, "kN_per_m3") },
    }));
    let warning = deep
        .warnings
        .iter()
        .find(|w| w.code == "footing_deeper_than_wide");
    assert_eq!(warning.unwrap().detail, "terzaghi_1943: depth is 2 widths");
}
