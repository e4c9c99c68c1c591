//! Properties: same physics in other units, there and back, monotone.

use proptest::prelude::*;
use serde_json::json;

use super::*;
use crate::quantity::{
    Displacement, Force, ForceUnit, LengthUnit, MomentUnit, PerLengthUnit, Pressure, Size, Torque,
    TorqueFactor,
};
use crate::torque::correlation::{capacity_by_torque, torque_for_capacity};
use crate::torque::factor::{factor_by_diameter, factor_by_regression};
use crate::torque::hydraulics::{motor_pressure, motor_torque};
use crate::torque::rounding::{Whole, round_torque};
use crate::trace::Trace;

fn off() -> Trace {
    Trace::off()
}

/// Every number of an answer in SI, in order of its members.
fn numbers(answer: &Answer<Outcome>) -> Vec<f64> {
    fn walk(json: &Json, out: &mut Vec<f64>) {
        match json {
            Json::Number(n) => out.push(n.as_f64().unwrap()),
            Json::Array(list) => list.iter().for_each(|v| walk(v, out)),
            Json::Object(map) => map
                .iter()
                // rounded to whole steps: a last bit may move it by one
                .filter(|(key, _)| *key != "cab")
                .for_each(|(_, v)| walk(v, out)),
            _ => {}
        }
    }
    let mut out = Vec::new();
    walk(&serde_json::to_value(&answer.result).unwrap(), &mut out);
    walk(&serde_json::to_value(&answer.checks).unwrap(), &mut out);
    out
}

/// One request in units of one's choice: (length, force, torque, pressure, displacement).
fn request(v: [f64; 6], si: bool) -> Json {
    let [torque, load, uplift, pressure, volume, wall] = v;
    let size = |inches: f64| {
        if si {
            q(inches * 25.4, "mm")
        } else {
            q(inches, "in")
        }
    };
    let moment = |ft_lbf: f64| {
        if si {
            q(ft_lbf * 1.355_817_948_331_400_4, "N_m")
        } else {
            q(ft_lbf, "ft_lbf")
        }
    };
    let force = |lbf: f64| {
        if si {
            q(lbf * 4.448_221_615_260_5e-3, "kN")
        } else {
            q(lbf * 1e-3, "kip")
        }
    };
    let stress = |psi: f64| {
        if si {
            q(psi * 6.894_757_293_168_361e-3, "MPa")
        } else {
            q(psi, "psi")
        }
    };
    let flow = |in3: f64| {
        if si {
            q(in3 * 16.387_064, "cm3_per_rev")
        } else {
            q(in3, "in3_per_rev")
        }
    };
    let rate = if si {
        q(15.0 * 3.785_411_784, "L_per_min")
    } else {
        q(15.0, "gal_per_min")
    };
    json!({
        "shaft": { "round": { "outside_diameter": size(4.25), "wall_thickness": size(wall) } },
        "torque_factor": { "effective_diameter": {} },
        "embedment": { "top_helix_depth": size(180.0), "largest_helix_diameter": size(14.0) },
        "installed": { "reading": { "gauge": { "torque": moment(torque) } }, "gauge_accuracy_ratio": 0.05,
            "conditions": { "stopped_by_obstruction": false, "advance_per_turn": size(2.9),
                "helix_pitch": size(3.0), "steady_length": size(48.0) } },
        "demand": { "level": "allowable", "compression": force(load), "tension": force(uplift) },
        "design_basis": { "allowable_stress": {} },
        "compare_factors": true, "cab_card": { "step_ratio": 0.5 },
        "drive": { "displacement": flow(volume), "fast_displacement": flow(volume * 0.4),
            "mechanical_efficiency_ratio": 0.9, "flow": rate, "volumetric_efficiency_ratio": 0.93,
            "helix_pitch": size(3.0),
            "working_pressures": { "inlet": stress(pressure), "return_line": stress(100.0) } },
        "torsion": { "rating": moment(15_000.0), "section": { "yield_strength": stress(50_000.0) } },
    })
}

proptest! {
    #[test]
    fn other_units_give_the_same_answer(
        torque in 500.0..20_000.0f64, load in 1_000.0..60_000.0f64, uplift in 0.0..30_000.0f64,
        pressure in 500.0..4_000.0f64, volume in 20.0..400.0f64, wall in 0.15..0.5f64,
    ) {
        let v = [torque, load, uplift, pressure, volume, wall];
        let (us, si) = (answer(request(v, false)), answer(request(v, true)));
        let (a, b) = (numbers(&us), numbers(&si));
        prop_assert_eq!(a.len(), b.len());
        for (x, y) in a.iter().zip(&b) {
            prop_assert!((x - y).abs() <= 1e-9 * x.abs().max(y.abs()).max(1e-3), "{} {}", x, y);
        }
        prop_assert_eq!(us.verdict, si.verdict);
    }

    #[test]
    fn torque_to_capacity_and_back(torque in 1.0..1e6f64, k in 1.0..150.0f64) {
        let (t, k) = (Torque::from_si(torque), TorqueFactor::from_si(k));
        let back = torque_for_capacity(capacity_by_torque(k, t, &mut off()), k, &mut off());
        prop_assert!((back / t - 1.0).abs() <= 1e-12);
    }

    #[test]
    fn pressure_to_torque_and_back(p in 1e4..1e8f64, v in 1e-6..0.2f64, e in 0.5..1.0f64) {
        let (p, v) = (Pressure::from_si(p), Displacement::from_si(v));
        let back = motor_pressure(motor_torque(p, v, e, &mut off()), v, e, &mut off());
        prop_assert!((back / p - 1.0).abs() <= 1e-12);
    }

    #[test]
    fn more_torque_factor_or_pressure_never_gives_less(
        t in 1.0..1e5f64, k in 1.0..150.0f64, p in 1e4..1e8f64, more in 1.0..3.0f64,
    ) {
        let capacity = |k: f64, t: f64| {
            capacity_by_torque(TorqueFactor::from_si(k), Torque::from_si(t), &mut off())
        };
        prop_assert!(capacity(k, t * more) >= capacity(k, t));
        prop_assert!(capacity(k * more, t) >= capacity(k, t));
        let torque = |p: f64| {
            motor_torque(Pressure::from_si(p), Displacement::from_si(1e-3), 0.9, &mut off())
        };
        prop_assert!(torque(p * more) >= torque(p));
        let required = |q: f64, k: f64| {
            torque_for_capacity(Force::from_si(q), TorqueFactor::from_si(k), &mut off())
        };
        prop_assert!(required(t * more, k) >= required(t, k));
        prop_assert!(required(t, k * more) <= required(t, k));
    }

    #[test]
    fn a_larger_diameter_never_has_a_larger_factor(d in 38.0..114.0f64, more in 0.0..40.0f64) {
        let (small, large) = (Size::new(d, LengthUnit::Mm), Size::new(d + more, LengthUnit::Mm));
        prop_assert!(factor_by_diameter(large, &mut off()) <= factor_by_diameter(small, &mut off()));
        prop_assert!(factor_by_regression(large, &mut off()) <= factor_by_regression(small, &mut off()));
    }

    /// Whatever is chosen and wherever the shaft lies in the range: the formula never gives more
    /// than the criteria, listed values included.
    #[test]
    fn the_formula_never_exceeds_the_criteria(d in 60.4..114.3f64) {
        let found = answer(json!({
            "shaft": { "round": { "outside_diameter": q(d, "mm") } },
            "torque_factor": { "effective_diameter": {} },
        }));
        let factor = found.result.torque_factor.unwrap();
        let used = factor.compression.unwrap().factor.get(PerLengthUnit::PerM);
        prop_assert!(used <= factor.acceptance_criteria.unwrap().si());
    }

    /// What reaches the required torque carries the load, and what stays below does not.
    #[test]
    fn the_required_torque_just_carries_the_load(load in 1.0..40.0f64, share in 0.5..1.5f64) {
        let needed = load * 2000.0 / 9.0;
        let found = answer(json!({
            "shaft": round(2.875), "torque_factor": { "listed_shaft": {} },
            "installed": { "reading": gauge(needed * share, "ft_lbf") },
            "demand": { "level": "allowable", "compression": q(load, "kip") },
            "design_basis": { "allowable_stress": {} },
        }));
        let required = found.result.required.as_ref().unwrap().torque;
        prop_assert!((required.get(MomentUnit::FtLbf) / needed - 1.0).abs() < 1e-12);
        let passes = status(&found, "torque_compression_capacity") == crate::contract::CheckStatus::Pass;
        prop_assert_eq!(passes, crate::quantity::round9(1.0 / share) <= 1.0);
        let design = found.result.installed.unwrap().compression.unwrap().design.unwrap();
        prop_assert!((design.get(ForceUnit::Kip) / (load * share) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn rounding_up_never_falls_below_and_stays_within_one_step(t in 0.0..1e6f64) {
        let torque = Torque::from_si(t);
        let cab = round_torque(torque, Whole::Up);
        let (si, us) = (cab.si.value(), cab.us_customary.value());
        let (kn_m, ft_lbf) = (torque.get(MomentUnit::KNM), torque.get(MomentUnit::FtLbf));
        prop_assert!(si >= kn_m * (1.0 - 1e-8) && si < kn_m + 0.01 + 1e-9);
        prop_assert!(us >= ft_lbf * (1.0 - 1e-8) && us < ft_lbf + 10.0 + 1e-6);
    }
}
