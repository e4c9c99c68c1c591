//! Cards for the cab made here keep the rules of a drawing, whatever target, limit, steps and
//! gears, and say what the answer says; so does their table.

mod common;

use bearwell_engine::contract::{Answer, Call, Paper, Work, run};
use bearwell_engine::quantity::System;
use bearwell_engine::torque::{Outcome, Request, TorqueCapacity};
use bearwell_engine::trace::Trace;
use bearwell_papers::{cab_card_csv, cab_card_svg};
use common::strokes::judge_strokes;
use common::{Sheet, judge};
use proptest::prelude::*;
use serde_json::{Value, json};

fn q(value: f64, unit: &str) -> Value {
    json!({ "value": value, "unit": unit })
}

fn answered(request: Value) -> (Request, Answer<Outcome>) {
    let request: Request = serde_json::from_value(request).expect("a request");
    let call = Call::from(request.clone());
    let answer = run::<TorqueCapacity>(&call, Work::new(Trace::off(), None));
    (request, answer.unwrap_or_else(|r| panic!("refused: {r:?}")))
}

/// Two gears, 2,627 psi at the target of 2,777.78 ft lbf, a limit of 5,500.
fn two_gears() -> Value {
    json!({
        "label": "A2", "shaft": { "round": { "outside_diameter": q(2.875, "in") } },
        "torque_factor": { "listed_shaft": {} },
        "demand": { "level": "allowable", "compression": q(12.5, "kip") },
        "design_basis": { "allowable_stress": {} },
        "drive": { "displacement": q(100.0, "in3_per_rev"), "fast_displacement": q(50.0, "in3_per_rev"),
            "displacement_includes_gear": true, "mechanical_efficiency_ratio": 0.9,
            "working_pressures": { "inlet": q(5200.0, "psi"), "return_line": q(150.0, "psi"),
                "no_load": q(150.0, "psi") },
            "flow": q(12.0, "gal_per_min"), "volumetric_efficiency_ratio": 0.95,
            "helix_pitch": q(3.0, "in") },
        "torsion": { "rating": q(5500.0, "ft_lbf") }, "cab_card": {},
    })
}

fn judged(
    name: &str,
    (request, answer): &(Request, Answer<Outcome>),
    system: System,
    paper: Paper,
) -> Sheet {
    let svg = cab_card_svg(request, answer, system, paper);
    let sheet = judge(name, &svg);
    judge_strokes(name, &svg, &sheet);
    sheet
}

fn all_text(sheet: &Sheet) -> String {
    let texts: Vec<&str> = sheet.texts.iter().map(|t| t.text.as_str()).collect();
    texts.join("\n")
}

#[test]
fn the_card_tells_target_and_limit_in_both_systems() {
    let card = answered(two_gears());
    let us = all_text(&judged("us", &card, System::UsCustomary, Paper::Letter));
    // 24 pi x 2,777.78 / 90 + 300 = 2,627.1 psi = 18.113 MPa; 24 pi x 5,500 / 90 + 300 = 4,907.7
    for told in [
        "Card for the cab, pile A2",
        "2,780 ft-lbf",
        "3.77 kN m",
        "slow gear 2,630 psi (18.2 MPa)",
        "fast gear 4,960 psi (34.2 MPa)",
        "5,500 ft-lbf",
        "7.45 kN m",
        "cut off slow gear 4,900 psi (33.8 MPa)",
        "TARGET",
        "LIMIT",
        "50 %\n1,389\n1,464\n2,627",
        "Turning 26.3 rpm, 6.58 ft a minute",
        "Calculation, not design.",
    ] {
        assert!(us.contains(told), "{told}: {us}");
    }
    let si = all_text(&judged("si", &card, System::Si, Paper::A4));
    for told in [
        "3.77 kN m",
        "2,780 ft-lbf",
        "slow gear 18.2 MPa (2,630 psi)",
        "50 %\n1.88\n10.1",
    ] {
        assert!(si.contains(told), "{told}: {si}");
    }
}

#[test]
fn what_is_amiss_is_told() {
    let mut weak = two_gears();
    weak["drive"]["working_pressures"]["inlet"] = q(2800.0, "psi");
    let text = all_text(&judged(
        "weak",
        &answered(weak),
        System::UsCustomary,
        Paper::Letter,
    ));
    assert!(
        text.contains("The fast gear does not reach the target"),
        "{text}"
    );
    assert!(
        text.contains("not reached") && !text.contains("4,960"),
        "{text}"
    );
    let mut bare = two_gears();
    bare["drive"]
        .as_object_mut()
        .unwrap()
        .remove("working_pressures");
    bare.as_object_mut().unwrap().remove("torsion");
    let text = all_text(&judged(
        "bare",
        &answered(bare),
        System::UsCustomary,
        Paper::Letter,
    ));
    assert!(
        text.contains("psi, difference") && text.contains("No shaft limit was sent"),
        "{text}"
    );
    let mut above = two_gears();
    above["drive"]["target_torque"] = q(6000.0, "ft_lbf");
    let text = all_text(&judged(
        "above",
        &answered(above),
        System::UsCustomary,
        Paper::Letter,
    ));
    assert!(
        text.contains("The target lies above the shaft limit"),
        "{text}"
    );
    assert!(text.contains("TARGET, above the limit"), "{text}");
    let mut close = two_gears();
    close["torsion"]["rating"] = q(2779.0, "ft_lbf");
    let text = all_text(&judged(
        "close",
        &answered(close),
        System::UsCustomary,
        Paper::A4,
    ));
    assert!(text.contains("leave no room"), "{text}");
    // the limit as the operator reads it is below the target's figure
    assert!(
        text.contains("2,770 ft-lbf") && text.contains("2,780 ft-lbf"),
        "{text}"
    );
    let mut none = two_gears();
    none.as_object_mut().unwrap().remove("cab_card");
    let text = all_text(&judged("none", &answered(none), System::Si, Paper::A4));
    assert!(text.contains("No card was asked for"), "{text}");
}

/// 12.5 kip on 2.875 in: the rows of the table as they are, then what the operator reads.
#[test]
fn the_table_marks_its_rows() {
    let mut asked = two_gears();
    asked["label"] = json!("=A2");
    asked["cab_card"] = json!({ "step_ratio": 0.5 });
    let (request, answer) = answered(asked);
    let text = cab_card_csv(&request, &answer, System::UsCustomary, Paper::Letter);
    let lines: Vec<&str> = text.split("\r\n").collect();
    assert_eq!(
        lines[0],
        "pile,kind,part_of_target [1],torque [ft_lbf],slow_differential_pressure [psi],slow_inlet_pressure [psi],\
         fast_differential_pressure [psi],fast_inlet_pressure [psi]"
    );
    let starts = [
        "'=A2,step,0.5,1388.88889,1163.5",
        "'=A2,target,1,2777.77778,2327.1",
        "'=A2,step,1.5,4166.66667,",
        "'=A2,shaft_limit,1.98,5500,4607.6",
    ];
    for (line, start) in lines[1..].iter().zip(starts) {
        assert!(line.starts_with(start), "{line} {start}");
    }
    assert_eq!(lines[5], "'=A2,target_rounded_up,,2780,,2630,,4960");
    assert_eq!(lines[6], "'=A2,shaft_limit_rounded_down,,5500,,4900,,9510");
    assert_eq!(lines[7..], [""]);
    let si = cab_card_csv(&request, &answer, System::Si, Paper::A4);
    assert!(
        si.contains("target_rounded_up,,3.77,,18.2,,34.2\r\n"),
        "{si}"
    );
    let mut plain = two_gears();
    plain.as_object_mut().unwrap().remove("cab_card");
    let (request, answer) = answered(plain);
    let text = cab_card_csv(&request, &answer, System::Si, Paper::A4);
    assert_eq!(text, "pile,kind,part_of_target [1],torque [kN_m]\r\n");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(160))]

    #[test]
    fn any_card_keeps_the_rules(
        target in 1.0..900_000.0f64, over in 0.3..8.0f64, step in 0.01..0.5f64,
        volume in 1.0..10_000.0f64, fast in 0.01..0.99f64, inlet in 500.0..14_000.0f64,
        kind in 0..4u8, label in "\\PC{1,64}", us in any::<bool>(), letter in any::<bool>(),
    ) {
        prop_assume!(over / step < 190.0);
        let rating = (target * over).clamp(10.0, 700_000.0);
        prop_assume!(rating / (target.min(700_000.0) * step) < 195.0);
        let mut drive = json!({ "displacement": q(volume.max(1.0), "in3_per_rev"),
            "mechanical_efficiency_ratio": 0.85, "target_torque": q(target.min(700_000.0), "ft_lbf") });
        if kind % 2 == 1 {
            drive["fast_displacement"] = q((volume * fast).max(0.0611), "in3_per_rev");
        }
        if kind >= 2 {
            drive["working_pressures"] = json!({ "inlet": q(inlet, "psi"), "no_load": q(200.0, "psi") });
        }
        prop_assume!(volume * fast > 0.07);
        let card = answered(json!({ "label": label, "drive": drive,
            "torsion": { "rating": q(rating, "ft_lbf") }, "cab_card": { "step_ratio": step } }));
        let system = if us { System::UsCustomary } else { System::Si };
        let paper = if letter { Paper::Letter } else { Paper::A4 };
        judged("random", &card, system, paper);
        let csv = cab_card_csv(&card.0, &card.1, system, paper);
        let rows = card.1.result.cab_card.as_ref().unwrap().table.rows.len();
        prop_assert!(csv.matches("\r\n").count() >= rows + 3);
    }
}
