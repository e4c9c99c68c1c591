//! Sheets of plans made here keep the rules of a drawing, whatever the plan and its labels.

mod common;

use bearwell_engine::contract::Paper;
use bearwell_engine::quantity::System;
use common::{Plan, judge};

const PAPERS: [Paper; 2] = [Paper::Letter, Paper::A4];
const SYSTEMS: [System; 2] = [System::Si, System::UsCustomary];

/// Piles along a beam, `load` growing by 1 % of itself from one to the next.
fn row(prefix: &str, from: (f64, f64), step: (f64, f64), count: usize, load: f64) -> Plan {
    let place = |i: usize| (from.0 + i as f64 * step.0, from.1 + i as f64 * step.1);
    let end = place(count - 1);
    Plan {
        beams: vec![(prefix.to_owned(), vec![from, end])],
        piles: (0..count)
            .map(|i| {
                let (x, y) = place(i);
                let load = load * (1.0 + 0.01 * i as f64);
                (format!("{prefix}{}", i + 1), x, y, load, 0.0)
            })
            .collect(),
        capacity: Some(12_500.0),
        cautions: 4,
        ..Plan::default()
    }
}

fn all(plans: Vec<Plan>) -> Plan {
    let mut sum = Plan {
        capacity: Some(12_500.0),
        cautions: 5,
        ..Plan::default()
    };
    for plan in plans {
        sum.beams.extend(plan.beams);
        sum.piles.extend(plan.piles);
    }
    sum
}

/// Six rows of ten, far from the origin, the last of them over their limit.
fn sixty() -> Plan {
    all((0..6)
        .map(|j| {
            let y = 500_000.0 + 7.0 * f64::from(j);
            row(
                &format!("R{}-", j + 1),
                (2_000_000.0, y),
                (6.0, 0.0),
                10,
                6_500.0 + 1_200.0 * f64::from(j),
            )
        })
        .collect())
}

fn l_shaped() -> Plan {
    let corners = [
        (0.0, 0.0),
        (30.0, 0.0),
        (30.0, 12.0),
        (14.0, 12.0),
        (14.0, 28.0),
        (0.0, 28.0),
    ];
    let mut ring = corners.to_vec();
    ring.push(corners[0]);
    Plan {
        beams: vec![("Ring".into(), ring)],
        piles: corners
            .iter()
            .chain(&[(10.0, 0.0), (20.0, 0.0), (22.0, 12.0), (0.0, 14.0)])
            .enumerate()
            .map(|(i, (x, y))| (format!("P{}", i + 1), *x, *y, 8_000.0, 300.0))
            .collect(),
        capacity: Some(12_500.0),
        cautions: 6,
        ..Plan::default()
    }
}

fn plans() -> Vec<(&'static str, Plan)> {
    vec![
        ("one beam", row("P", (0.0, 0.0), (8.0, 0.0), 4, 9_000.0)),
        ("one pile", row("P", (0.0, 0.0), (0.0, 0.0), 1, 9_000.0)),
        ("upright", row("N", (-3.0, -40.0), (0.0, 9.0), 9, 9_000.0)),
        ("slanting", row("S", (0.0, 0.0), (5.0, 3.7), 9, 9_000.0)),
        ("crowded", row("Q", (0.0, 0.0), (1.0, 0.5), 90, 6_000.0)),
        ("L-shaped", l_shaped()),
        ("sixty piles", sixty()),
    ]
}

#[test]
fn every_sheet_keeps_the_rules() {
    for (name, plan) in plans() {
        for system in SYSTEMS {
            for paper in PAPERS {
                judge(name, &plan.sheet(system, paper));
            }
        }
    }
}

#[test]
fn every_pile_has_its_mark_and_those_over_a_limit_another_one() {
    for (name, plan) in plans() {
        let sheet = judge(name, &plan.sheet(System::UsCustomary, Paper::Letter));
        let over = plan.fails().len();
        // legend and verdict frame show marks too: one dial, and three diamonds if any
        let diamonds = if over > 0 { over + 3 } else { 0 };
        assert_eq!(sheet.black_paths, 1 + diamonds, "{name}: diamonds");
        let dials = plan.piles.len() - over + 1;
        assert!(sheet.circles >= dials, "{name}: dials");
        // a ring around each that is pulled at
        let rings = if plan.piles.iter().any(|p| p.4 > 0.0) {
            plan.piles.iter().filter(|p| p.4 > 0.0).count() + 2
        } else {
            0
        };
        assert!(sheet.circles <= 2 * dials + rings, "{name}: dials");
    }
}

#[test]
fn all_loads_stand_beside_their_piles_where_there_is_room() {
    for plan in [l_shaped(), sixty()] {
        let sheet = judge("loads", &plan.sheet(System::UsCustomary, Paper::Letter));
        for pile in &plan.piles {
            assert!(sheet.texts.iter().any(|t| t.text == pile.0), "{}", pile.0);
        }
        assert!(
            sheet.texts.iter().all(|t| !t.text.contains("want of room")),
            "every pile has its loads"
        );
    }
}

#[test]
fn what_finds_no_room_is_told() {
    let plan = row("Q", (0.0, 0.0), (1.0, 0.5), 200, 6_000.0);
    let sheet = judge("crowded", &plan.sheet(System::Si, Paper::A4));
    let all: Vec<_> = sheet.texts.iter().map(|t| t.text.as_str()).collect();
    let joined = all.join(" ");
    assert!(joined.contains("are drawn without loads for want of room"));
    assert!(joined.contains("further piles in the answer"));
}

#[test]
fn unjudged_piles_are_open_and_nothing_is_said_of_utilisation() {
    let plan = Plan {
        capacity: None,
        ..l_shaped()
    };
    let sheet = judge("unjudged", &plan.sheet(System::Si, Paper::Letter));
    assert!(sheet.texts.iter().all(|t| !t.text.contains("tilisation")));
    // a ring and a dot for each pile and in the key, a further ring for what is pulled up
    assert_eq!(sheet.circles, 3 * plan.piles.len() + 4);
}

#[test]
fn hostile_labels_are_escaped_and_cut() {
    let hostile = [
        "</text><script>alert(1)</script>",
        "\"><image href='http://192.0.2.1/x'/>",
        "&lt;&#0;]]>",
        "\u{202e}drawkcab",
        "W".repeat(64).as_str(),
        "\u{6f22}\u{5b57}".repeat(32).as_str(),
        "\u{ffff}",
    ]
    .map(str::to_owned);
    let plan = Plan {
        beams: hostile
            .iter()
            .enumerate()
            .map(|(i, label)| {
                let y = 9.0 * i as f64;
                (label.clone(), vec![(0.0, y), (40.0, y)])
            })
            .collect(),
        piles: hostile
            .iter()
            .enumerate()
            .map(|(i, label)| (label.clone(), 4.0, 9.0 * i as f64, 13_000.0, 0.0))
            .collect(),
        capacity: Some(12_500.0),
        cautions: 2,
        ..Plan::default()
    };
    for paper in PAPERS {
        let svg = plan.sheet(System::UsCustomary, paper);
        let sheet = judge("hostile", &svg);
        assert!(!svg.contains("<script") && !svg.contains("<image"));
        assert!(!svg.contains('\u{202e}') && !svg.contains('\u{ffff}'));
        // read back by a parser, the label is what was sent, as far as it is shown
        assert!(sheet.texts.iter().any(|t| t.text.starts_with("</text>")));
    }
}

#[test]
fn the_same_answer_gives_the_same_bytes_and_labels_change_nothing_else() {
    let plan = sixty();
    let once = plan.sheet(System::Si, Paper::A4);
    assert_eq!(once, plan.sheet(System::Si, Paper::A4));
    assert_ne!(once, plan.sheet(System::UsCustomary, Paper::A4));
    assert_ne!(once, plan.sheet(System::Si, Paper::Letter));
}

#[test]
fn the_plan_is_to_scale() {
    // two piles 40 ft apart at 1:96 (1/8 in = 1 ft) stand 5 in apart on paper
    let plan = row("P", (0.0, 0.0), (40.0, 0.0), 2, 9_000.0);
    let svg = plan.sheet(System::UsCustomary, Paper::Letter);
    let sheet = judge("scale", &svg);
    assert!(sheet.texts.iter().any(|t| t.text == "1/8 in = 1 ft (1:96)"));
    let doc = roxmltree::Document::parse(&svg).expect("XML");
    let mut centres: Vec<f64> = doc
        .descendants()
        .filter(|n| n.has_tag_name("circle"))
        .filter(|n| n.attribute("r") == Some("1.8"))
        .filter_map(|n| n.attribute("cx")?.parse().ok())
        .collect();
    centres.dedup();
    assert_eq!(centres.len(), 2);
    assert!(
        (centres[1] - centres[0] - 127.0).abs() <= 0.01,
        "{centres:?}"
    );
}

/// Sixty piles with more to write than fits beside them.
fn crowded_sixty() -> Plan {
    let mut plan = all((0..6)
        .map(|j| {
            let start = (0.0, 3.1 * f64::from(j));
            row(&format!("R{}-", j + 1), start, (2.6, 0.0), 10, 8_000.0)
        })
        .collect());
    plan.piles.iter_mut().for_each(|p| p.4 = 700.0);
    plan
}

#[test]
fn no_pile_is_dropped_silently() {
    for system in SYSTEMS {
        for paper in PAPERS {
            let plan = crowded_sixty();
            let sheet = judge("crowded sixty", &plan.sheet(system, paper));
            let all: Vec<&str> = sheet.texts.iter().map(|t| t.text.as_str()).collect();
            let joined = all.join(" ");
            for pile in &plan.piles {
                // at its mark and in the table, or what is left out is told
                let shown = all.iter().filter(|t| **t == pile.0).count();
                assert!(
                    shown == 2
                        || (shown == 1 && joined.contains("further piles"))
                        || joined.contains("without a number for want of room"),
                    "{}: {shown} in {joined}",
                    pile.0
                );
            }
        }
    }
}

#[test]
fn the_sheet_of_numbers_has_no_loads() {
    let plan = sixty();
    let sheet = judge("numbers", &plan.numbers(System::UsCustomary, Paper::Letter));
    for pile in &plan.piles {
        assert!(sheet.texts.iter().any(|t| t.text == pile.0), "{}", pile.0);
    }
    assert!(
        sheet
            .texts
            .iter()
            .all(|t| t.text != "6,500" && t.text != "down")
    );
    assert!(sheet.texts.iter().any(|t| t.text == "north"));
}

#[test]
fn types_have_marks_and_numbers() {
    for count in [1_usize, 2, 5, 9, 40] {
        let plan = Plan {
            types: (1..=count)
                .map(|i| (format!("type {i}"), 5_000.0 + 300.0 * i as f64))
                .collect(),
            ..sixty()
        };
        let sheet = judge("types", &plan.sheet(System::UsCustomary, Paper::Letter));
        let text = |wanted: &str| sheet.texts.iter().any(|t| t.text.contains(wanted));
        assert!(text("type 1: 5,300 lbf down"), "{count}");
        assert_eq!(text("[1]"), count > 1, "{count}");
        // beyond the marks the number stands at the pile
        assert_eq!(text("R1-6 [6]"), count > 5, "{count}");
        assert_eq!(text("Entries left out of the key"), count == 40, "{count}");
    }
}
