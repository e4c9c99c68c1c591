//! The card for the cab: steps, pressures in each gear, rounding. Expected numbers are
//! arithmetic: T[ft-lbf] = dp[psi] V[in3] eta / (24 pi).

use proptest::prelude::*;
use serde_json::json;

use super::*;
use crate::answer_table::AnswerTable;
use crate::quantity::{MomentUnit, Pressure, StressUnit, Torque};
use crate::torque::rounding::{Whole, round_pressure, round_torque};
use crate::torque::{CabCardOutcome, CabTargetOf, DriveGear};

fn carded(more: Json) -> Answer<Outcome> {
    let mut request = json!({ "cab_card": {}, "torsion": { "rating": q(5500.0, "ft_lbf") } });
    for (key, value) in more.as_object().unwrap() {
        request[key] = value.clone();
    }
    planned(round(2.875), request)
}

fn card(found: &Answer<Outcome>) -> CabCardOutcome {
    found.result.cab_card.clone().expect("a card")
}

fn column(table: &AnswerTable, name: &str) -> Vec<f64> {
    let at = table.columns.iter().position(|c| c.name == name);
    let at = at.unwrap_or_else(|| panic!("no column {name}"));
    table.rows.iter().map(|row| row[at].value()).collect()
}

/// 100 and 50 in3 a turn, 90 %; 150 psi each of return line and no load.
fn two_speed() -> Json {
    json!({ "displacement": q(100.0, "in3_per_rev"), "fast_displacement": q(50.0, "in3_per_rev"),
        "displacement_includes_gear": true, "mechanical_efficiency_ratio": 0.9,
        "working_pressures": { "inlet": q(2800.0, "psi"), "return_line": q(150.0, "psi"),
            "no_load": q(150.0, "psi") } })
}

/// 2,777.78 ft lbf in tenths; 5,500 is 1.98 of it, so 19 tenths and the limit.
#[test]
fn a_card_of_torques_goes_to_the_target_and_on_to_the_limit() {
    let found = carded(json!({}));
    let card = card(&found);
    assert_eq!(card.target_of, CabTargetOf::Required);
    near(
        card.target.torque.get(MomentUnit::FtLbf),
        25_000.0 / 9.0,
        1e-10,
    );
    assert_eq!(card.target.cab.us_customary.value(), 2780.0);
    assert_eq!(card.target.cab.si.value(), 3.77);
    let limit = card.shaft_limit.unwrap();
    // 5,500 ft lbf = 7.457 kN m
    assert_eq!(limit.cab.us_customary.value(), 5500.0);
    assert_eq!(limit.cab.si.value(), 7.45);
    assert!(card.target.gears.is_empty() && limit.gears.is_empty());
    let parts = column(&card.table, "part_of_target");
    assert_eq!(parts.len(), 20);
    assert_eq!(
        (parts[0], parts[2], parts[9], parts[18]),
        (0.1, 0.3, 1.0, 1.9)
    );
    near(parts[19], 1.98, 1e-8);
    let torques = column(&card.table, "torque");
    near(torques[9], card.target.torque.si(), 1e-12);
    near(torques[19], limit.torque.si(), 1e-12);
    assert_eq!(card.table.columns.len(), 2);
    assert!(found.methods.iter().any(|m| m.id == "cab_card"));
}

/// 24 pi x 2,777.78 / 90 = 2,327.11 psi and 300: 2,627.11, so 2,630; in the fast gear twice
/// 2,327.11 and 300: 4,954.21, beyond the 2,800 at hand. The limit: 4,607.67 and 300, so 4,900.
#[test]
fn pressures_stand_gear_by_gear_with_what_the_line_takes() {
    let found = carded(json!({ "drive": two_speed() }));
    let card = card(&found);
    let [slow, fast] = card.target.gears.as_slice() else {
        panic!("two gears");
    };
    assert_eq!((slow.gear, fast.gear), (DriveGear::Slow, DriveGear::Fast));
    let psi = |p: Pressure| p.get(StressUnit::Psi);
    near(psi(slow.differential_pressure), 2327.106, 1e-4);
    near(psi(slow.inlet_pressure.unwrap()), 2627.106, 1e-4);
    assert_eq!(slow.cab.us_customary.value(), 2630.0);
    // 18.1133 MPa
    assert_eq!(slow.cab.si.value(), 18.2);
    near(psi(fast.inlet_pressure.unwrap()), 4954.211, 1e-4);
    assert_eq!((slow.reached, fast.reached), (Some(true), Some(false)));
    let limit = card.shaft_limit.as_ref().unwrap();
    near(psi(limit.gears[0].inlet_pressure.unwrap()), 4907.67, 1e-4);
    assert_eq!(limit.gears[0].cab.us_customary.value(), 4900.0);
    // 33.8372 MPa
    assert_eq!(limit.gears[0].cab.si.value(), 33.8);
    let names: Vec<_> = card.table.columns.iter().map(|c| c.name.as_ref()).collect();
    assert_eq!(
        names,
        [
            "part_of_target",
            "torque",
            "slow_differential_pressure",
            "slow_inlet_pressure",
            "fast_differential_pressure",
            "fast_inlet_pressure"
        ]
    );
    near(
        column(&card.table, "slow_inlet_pressure")[9],
        slow.inlet_pressure.unwrap().si(),
        1e-12,
    );
    near(
        column(&card.table, "fast_differential_pressure")[4],
        fast.differential_pressure.si() / 2.0,
        1e-10,
    );
    assert!(!warns(&found, "cab_card_difference_only"));
}

/// Only the difference is known: no inlet pressure, and the card says so.
#[test]
fn without_back_pressures_the_card_is_of_differences() {
    let found = carded(json!({ "drive": { "displacement": q(100.0, "in3_per_rev"),
        "mechanical_efficiency_ratio": 0.9 } }));
    let card = card(&found);
    let gear = &card.target.gears[0];
    assert!(gear.inlet_pressure.is_none() && gear.reached.is_none());
    assert_eq!(gear.cab.us_customary.value(), 2330.0);
    let limit = card.shaft_limit.unwrap();
    assert_eq!(limit.gears[0].cab.us_customary.value(), 4600.0);
    assert_eq!(card.table.columns[2].name, "differential_pressure");
    assert_eq!(card.table.columns.len(), 3);
    assert!(warns(&found, "cab_card_difference_only"));
}

#[test]
fn the_greater_torque_is_the_target_and_no_row_lies_above_the_limit() {
    let with_target = |torque: f64| {
        let mut drive = two_speed();
        drive["target_torque"] = q(torque, "ft_lbf");
        card(&carded(json!({ "drive": drive })))
    };
    assert_eq!(with_target(3000.0).target_of, CabTargetOf::TargetTorque);
    assert_eq!(with_target(2000.0).target_of, CabTargetOf::Required);
    // 6,000 aims above the 5,500 of the shaft: nine tenths are 5,400
    let above = with_target(6000.0);
    let torques = column(&above.table, "torque");
    assert_eq!(torques.len(), 10);
    near(
        torques[9],
        Torque::new(5500.0, MomentUnit::FtLbf).si(),
        1e-12,
    );
    assert!(torques.is_sorted());
    // no rating: up to the target, with a warning
    let mut request = json!({ "cab_card": { "step_ratio": 0.3 } });
    request["drive"] = two_speed();
    let free = planned(round(2.875), request);
    let parts = column(&card(&free).table, "part_of_target");
    assert_eq!(parts, [0.3, 0.6, 0.9, 1.0]);
    assert!(card(&free).shaft_limit.is_none() && warns(&free, "cab_card_without_limit"));
    // steps that miss the target leave it its row, and the limit its own
    let odd = card(&carded(json!({ "cab_card": { "step_ratio": 0.4 } })));
    let parts = column(&odd.table, "part_of_target");
    assert_eq!(parts[..5], [0.4, 0.8, 1.0, 1.2, 1.6]);
    assert_eq!(parts.len(), 6);
}

/// 5,503 ft lbf against 5,508: up 5,510, down 5,500.
#[test]
fn a_target_close_below_the_limit_has_no_room() {
    let at = |target: f64, rating: f64| {
        answer(
            json!({ "cab_card": {}, "torsion": { "rating": q(rating, "ft_lbf") },
            "drive": { "displacement": q(100.0, "in3_per_rev"), "mechanical_efficiency_ratio": 0.9,
                "target_torque": q(target, "ft_lbf") } }),
        )
    };
    assert!(warns(&at(5503.0, 5508.0), "cab_card_without_room"));
    assert!(!warns(&at(5503.0, 5900.0), "cab_card_without_room"));
    assert!(warns(&at(6000.0, 5500.0), "cab_card_without_room"));
    // a target above the limit is no card to drive by, although the load needs less
    let mut drive = two_speed();
    drive["working_pressures"]["inlet"] = q(6000.0, "psi");
    drive["target_torque"] = q(6000.0, "ft_lbf");
    let held = carded(json!({ "drive": drive }));
    assert_eq!(held.verdict, crate::contract::Verdict::Provisional);
    assert_eq!(held.verdict_reasons[0].code, "cab_card_without_room");
}

#[test]
fn a_card_without_a_target_or_with_too_many_steps_is_refused() {
    let issue = |request: Json| refusable(request).unwrap_err().issues[0].clone();
    for request in [
        json!({ "shaft": round(2.875), "torque_factor": { "listed_shaft": {} }, "cab_card": {} }),
        json!({ "shaft": round(2.875), "torque_factor": { "listed_shaft": {} }, "cab_card": {},
            "demand": { "level": "allowable", "compression": q(0.0, "kip") },
            "design_basis": { "allowable_stress": {} } }),
    ] {
        let found = issue(request);
        assert_eq!(
            (found.pointer.as_str(), found.code.as_ref()),
            ("/cab_card", "cab_card_without_target")
        );
    }
    let long = |target: f64, step: Option<f64>| {
        let card = step.map_or(json!({}), |s| json!({ "step_ratio": s }));
        refusable(
            json!({ "cab_card": card, "torsion": { "rating": q(5000.0, "ft_lbf") },
            "drive": { "displacement": q(100.0, "in3_per_rev"), "mechanical_efficiency_ratio": 0.9,
                "target_torque": q(target, "ft_lbf") } }),
        )
    };
    let found = long(200.0, None).unwrap_err().issues[0].clone();
    assert_eq!(
        (found.pointer.as_str(), found.code.as_ref()),
        ("/cab_card", "cab_card_too_long")
    );
    assert_eq!(found.limit.as_deref(), Some("200 steps"));
    assert!(long(251.0, None).is_ok());
    let found = long(2400.0, Some(0.01)).unwrap_err().issues[0].clone();
    assert_eq!(found.pointer, "/cab_card/step_ratio");
}

proptest! {
    /// Up is never below, down never above, neither by more than a step; in both systems.
    #[test]
    fn a_target_is_never_rounded_down_nor_a_limit_up(t in 1.0..1e6f64, p in 1e4..1e8f64) {
        let (torque, pressure) = (Torque::from_si(t), Pressure::from_si(p));
        let (up, down) = (round_torque(torque, Whole::Up), round_torque(torque, Whole::Down));
        for (up, down, exact, step) in [
            (up.si, down.si, torque.get(MomentUnit::KNM), 0.01),
            (up.us_customary, down.us_customary, torque.get(MomentUnit::FtLbf), 10.0),
            (
                round_pressure(pressure, Whole::Up).si,
                round_pressure(pressure, Whole::Down).si,
                pressure.get(StressUnit::MPa),
                0.1,
            ),
            (
                round_pressure(pressure, Whole::Up).us_customary,
                round_pressure(pressure, Whole::Down).us_customary,
                pressure.get(StressUnit::Psi),
                10.0,
            ),
        ] {
            let (up, down) = (up.value(), down.value());
            prop_assert!(up >= exact * (1.0 - 1e-8) && down <= exact * (1.0 + 1e-8));
            prop_assert!(up - down <= step * (1.0 + 1e-9) + exact * 1e-8);
        }
    }

    /// Whatever the target, the limit, the steps and the units: rows rise, end at the limit,
    /// hold the target where it is within it, and their pressures rise with the torque.
    #[test]
    fn rows_rise_to_the_limit(
        target in 500.0..8000.0f64, rating in 600.0..9000.0f64, step in 0.01..0.5f64, si in any::<bool>(),
    ) {
        let moment = |ft_lbf: f64| {
            if si { q(ft_lbf * 1.355_817_948_331_400_4, "N_m") } else { q(ft_lbf, "ft_lbf") }
        };
        prop_assume!(rating / target / step < 199.0);
        let mut drive = two_speed();
        drive["target_torque"] = moment(target);
        let found = answer(json!({ "cab_card": { "step_ratio": step },
            "torsion": { "rating": moment(rating) }, "drive": drive }));
        let card = card(&found);
        let torques = column(&card.table, "torque");
        prop_assert!(torques.windows(2).all(|w| w[0] < w[1]));
        let end = Torque::new(rating, MomentUnit::FtLbf).si();
        prop_assert!((torques[torques.len() - 1] / end - 1.0).abs() < 1e-9);
        let aim = Torque::new(target, MomentUnit::FtLbf).si();
        let there = torques.iter().any(|t| (t / aim - 1.0).abs() < 2e-9);
        prop_assert!(there == (target <= rating) || (target / rating - 1.0).abs() < 1e-8);
        for name in ["slow_inlet_pressure", "fast_inlet_pressure"] {
            prop_assert!(column(&card.table, name).windows(2).all(|w| w[0] < w[1]));
        }
    }
}
