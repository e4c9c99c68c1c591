//! Sheets of piles in ground that moves keep the rules of a drawing, are to scale, and say
//! what the answer says.

mod common;

use bearwell_engine::contract::{Paper, Verdict};
use bearwell_engine::quantity::{Length, System};
use common::frost::{
    Drawn, beam, computed, drawn, everything, form, held, judged, kn, m, q, request, settling,
    sheet,
};
use common::{Sheet, judge};
use serde_json::json;

const PAPERS: [Paper; 2] = [Paper::Letter, Paper::A4];
const SYSTEMS: [System; 2] = [System::Si, System::UsCustomary];

/// One helix in ground that freezes to 1.2 m.
fn bare() -> Drawn {
    drawn(request(&[("a", 0.3, 2.5)], 1.2))
}

fn piles() -> Vec<(&'static str, Drawn)> {
    let eight: Vec<(String, f64, f64)> = (0..8)
        .map(|i| (format!("helix {}", i + 1), 0.3, 3.0 + 0.2 * f64::from(i)))
        .collect();
    let eight: Vec<(&str, f64, f64)> = eight.iter().map(|h| (h.0.as_str(), h.1, h.2)).collect();
    let mut far = request(&[("a", 0.3, 1.0)], 0.4);
    far["active_depth"] = m(29.0);
    far["fill_depth"] = m(30.0);
    let mut high = request(&[("a", 0.3, 2.0)], 1.0);
    high["head_depth"] = m(-5.0);
    high["beam"] = json!({"above_ground": {}});
    let mut wide = everything();
    wide["beam"]["in_soil"]["width"] = m(3.0);
    wide["beam"]["in_soil"]["height"] = m(5.0);
    wide["void_form"]["crush"]["beam_width"] = m(3.0);
    let mut thick = request(&[("a", 0.3, 0.6)], 0.3);
    thick["beam"] = beam(0.5);
    thick["void_form"] = form(1000.0, 50.0);
    vec![
        ("bare", bare()),
        ("a void form below the pile", drawn(thick)),
        ("everything", drawn(everything())),
        ("eight helices", drawn(request(&eight, 1.2))),
        ("zones far below", drawn(far)),
        ("a head far above", drawn(high)),
        ("a wide and high beam", drawn(wide)),
        ("very deep", drawn(request(&[("a", 0.4, 99.0)], 5.0))),
        ("very short", drawn(request(&[("a", 0.9, 0.3)], 0.0))),
    ]
}

#[test]
fn every_sheet_keeps_the_rules() {
    for (name, pile) in piles() {
        for system in SYSTEMS {
            for paper in PAPERS {
                judged(name, &pile, system, paper);
            }
        }
    }
}

fn all_text(sheet: &Sheet) -> String {
    let texts: Vec<&str> = sheet.texts.iter().map(|t| t.text.as_str()).collect();
    texts.join("\n")
}

#[test]
fn the_answer_stands_on_the_sheet() {
    let pile = drawn(everything());
    let text = all_text(&judged("everything", &pile, System::Si, Paper::A4));
    // 2 sides of 0.5 m by 2 m at 65 kPa; pi 88.9 mm 0.7 m and 1.2 m at 100 kPa; 0.15 of 100 kPa
    // over 1.9 m and 2.4 m of shaft, and on the sides of the beam; 8 kPa on 0.3 m by 2 m
    for told in [
        "frost on beam sides\n130.0 kN\n0.00 to 0.50 m, once built",
        "frost on shaft\n19.6 kN\n0.50 to 1.20 m, once built",
        "frost on shaft\n33.5 kN\n0.00 to 1.20 m, before building",
        "swelling on shaft\n8.0 kN\n0.50 to 2.40 m, once built",
        "swelling on shaft\n10.1 kN\n0.00 to 2.40 m, before building",
        "swelling on beam sides\n30.0 kN",
        "crushed void form\n4.8 kN\nat 0.50 m",
        "holds against frost\n150.0 kN ultimate\n4.00 to 4.80 m",
        "holds against swelling\n140.0 kN ultimate\n4.00 to 4.80 m",
        "dead load 20.0 kN once built",
        "final grade",
        "beam underside 0.50 m",
        "head 0.30 m",
        "fill to 0.90 m",
        "frost, official 1.20 m",
        "active to 2.40 m",
        "collapsing to 3.10 m",
        "top helix from 3.10 m",
        "helix 300 mm at 4.00 m",
        "tip 5.00 m",
        "placed 150 mm\nfree 90 mm\ncrushed 60 mm\nheave 50 mm\nmargin 0 mm\nenough\npresses 8 kPa",
        "collapsing soil\n3.10\n4.00\ngoverns",
        "Calculation, not design.",
        "REJECT",
        "frost uplift, service: 142.35, at most 50",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
    assert_eq!(text.matches("governs").count(), 1, "{text}");
    let us = all_text(&judged("us", &pile, System::UsCustomary, Paper::Letter));
    // 130 kN are 29,225 lbf, 0.5 m are 1.64 ft, 150 mm are 5.906 in
    for told in ["29,225 lbf\n0.00 to 1.64 ft", "placed 5.906 in"] {
        assert!(us.contains(told), "{told}: {us}");
    }
}

#[test]
fn what_was_not_asked_for_is_not_on_the_sheet() {
    let text = all_text(&judged("bare", &bare(), System::Si, Paper::A4));
    for absent in [
        "forces",
        "void form",
        "beam",
        "fill",
        "active",
        "collapsing",
        "dead load",
        "sleeve",
        "computed",
        "pulls",
    ] {
        let told = text.lines().any(|l| l.starts_with(absent));
        assert!(!told, "{absent}: {text}");
    }
    assert!(text.contains("PROVISIONAL"));
}

/// Straight lines across the section with a given stroke: left and right end, and height.
fn strokes(svg: &str, width: &str, dashes: Option<&str>) -> Vec<(f64, f64, f64)> {
    let doc = roxmltree::Document::parse(svg).expect("XML");
    let number = |n: &roxmltree::Node, name: &str| -> f64 {
        n.attribute(name).expect(name).parse().expect("a number")
    };
    doc.descendants()
        .filter(|n| n.has_tag_name("line") && n.attribute("stroke-width") == Some(width))
        .filter(|n| n.attribute("stroke-dasharray") == dashes)
        .filter(|n| n.attribute("y1") == n.attribute("y2"))
        .map(|n| (number(&n, "x1"), number(&n, "x2"), number(&n, "y1")))
        .filter(|(from, to, _)| to - from > 20.0)
        .collect()
}

#[test]
fn depths_are_to_scale() {
    let pile = drawn(everything());
    let svg = sheet(&pile, System::Si, Paper::Letter);
    let text = all_text(&judge("scale", &svg));
    assert!(text.contains("Depths 1:40 on Letter."), "{text}");
    // grade is the heavy line of 0.6, frost that of 0.7, the needed depth is dotted
    let grade = strokes(&svg, "0.6", None)[0].2;
    let frost = strokes(&svg, "0.7", None);
    assert_eq!(frost.len(), 1, "{frost:?}");
    let needed = strokes(&svg, "0.45", Some("1 0.7"));
    for (y, metres) in [(frost[0].2, 1.2), (needed[0].2, 3.1)] {
        assert!((y - grade - metres * 25.0).abs() < 0.02, "{y} {metres}");
    }
    // the void form hangs from the underside, 150 mm of it, 60 of them crushed
    let doc = roxmltree::Document::parse(&svg).expect("XML");
    let heights: Vec<(f64, f64)> = doc
        .descendants()
        .filter(|n| n.has_tag_name("rect"))
        .filter_map(|n| {
            let get = |a| n.attribute(a)?.parse::<f64>().ok();
            Some((get("y")? - grade, get("height")?))
        })
        .collect();
    for (top, height) in [(0.5, 0.15), (0.59, 0.06), (-0.2, 0.7)] {
        let there =
            |(y, h): &(f64, f64)| (y - 25.0 * top).abs() < 0.02 && (h - 25.0 * height).abs() < 0.02;
        assert!(heights.iter().any(there), "{top} {height}: {heights:?}");
    }
}

/// Upright strokes of arrows of frost: height of both ends.
fn arrows(svg: &str) -> Vec<(f64, f64)> {
    let doc = roxmltree::Document::parse(svg).expect("XML");
    let mut all: Vec<(f64, f64)> = doc
        .descendants()
        .filter(|n| n.has_tag_name("line") && n.attribute("x1") == n.attribute("x2"))
        .filter(|n| n.attribute("stroke-width") == Some("0.5"))
        .map(|n| {
            let get = |a| n.attribute(a).expect("a number").parse().expect("a number");
            (get("y1"), get("y2"))
        })
        .collect();
    all.sort_by(|a, b| a.1.total_cmp(&b.1));
    all
}

#[test]
fn an_arrow_reaches_over_the_depths_of_its_force() {
    let mut asked = request(&[("a", 0.3, 2.5)], 1.2);
    asked["beam"] = beam(0.5);
    asked["beam"]["in_soil"]["sides"] = json!({"bond_break": {"reference": "a detail"}});
    asked["uplift"] = json!({"bond": {"fine": {}},
                             "construction": {"loaded_before_winter": {}}});
    let pile = drawn(asked);
    let svg = sheet(&pile, System::Si, Paper::A4);
    let text = all_text(&judge("arrow", &svg));
    let scale: f64 = text
        .lines()
        .find_map(|l| l.strip_prefix("Depths 1:")?.strip_suffix(" on A4."))
        .expect("the scale")
        .parse()
        .expect("a number");
    let grade = strokes(&svg, "0.6", None)[0].2;
    // the one on the sheet and the one in the key
    let all = arrows(&svg);
    assert_eq!(all.len(), 2, "{all:?}");
    let (tail, neck) = all[0];
    let metre = 1000.0 / scale;
    assert!((tail - grade - 1.2 * metre).abs() < 0.02, "{tail}");
    // the head is 1.8 mm long and ends where the shaft meets the soil
    assert!((neck - 1.8 - grade - 0.5 * metre).abs() < 0.02, "{neck}");
}

#[test]
fn a_helix_in_frost_is_marked_and_the_verdict_says_so() {
    let shallow = drawn(request(&[("upper", 0.3, 1.0), ("lower", 0.3, 2.0)], 1.2));
    assert_eq!(shallow.1.verdict, Verdict::Reject);
    let marked = judged("shallow", &shallow, System::Si, Paper::A4);
    let safe = judged("safe", &bare(), System::Si, Paper::A4);
    assert!(marked.black_paths > safe.black_paths);
    let text = all_text(&marked);
    assert!(text.contains("helix that fails"), "{text}");
    assert!(
        text.contains("helix below frost: 1, at least 1.2 m"),
        "{text}"
    );
    assert!(text.contains("Top helix 0.50 m too shallow"), "{text}");
    assert!(!all_text(&safe).contains("helix that fails"));
}

#[test]
fn a_void_form_that_is_too_thin_is_short() {
    let mut asked = request(&[("a", 0.3, 2.5)], 1.2);
    asked["void_form"] = form(100.0, 127.0);
    // without a beam there is only the detail
    let text = all_text(&judged("thin", &drawn(asked), System::Si, Paper::Letter));
    for told in ["free 60 mm", "short 67 mm", "The void form needs 211.7 mm"] {
        assert!(text.contains(told), "{told}: {text}");
    }
}

/// Height of the computed frost line below grade, m, on a sheet of 1:40.
fn computed_line(svg: &str) -> Option<f64> {
    let lines = strokes(svg, "0.7", Some("3 0.8 0.8 0.8"));
    assert!(lines.len() < 2, "{lines:?}");
    let grade = strokes(svg, "0.6", None)[0].2;
    Some((lines.first()?.2 - grade) / 25.0)
}

#[test]
fn both_frost_lines_are_drawn_and_told_apart() {
    let mut asked = everything();
    asked["frost"]["computed"] = computed(300.0);
    let pile = drawn(asked);
    let section = &pile.1.result.section;
    let there = section.computed_frost_base_depth.expect("a computed depth");
    assert!((there - section.official_frost_base_depth).si().abs() > 0.1);
    let svg = sheet(&pile, System::Si, Paper::Letter);
    let text = all_text(&judge("both", &svg));
    let second = format!("frost, computed {:.2} m", there.si());
    for told in [
        "Depths 1:40",
        "frost, official 1.20 m",
        &second,
        "frost line, official",
        "frost line, computed",
        "governs.",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
    let drawn_at = computed_line(&svg).expect("a line");
    assert!((drawn_at - there.si()).abs() < 0.001, "{drawn_at}");
    // one on the other is drawn once, and still told
    let mut near = pile.clone();
    near.1.result.section.computed_frost_base_depth = Some(Length::from_si(1.205));
    let svg = sheet(&near, System::Si, Paper::Letter);
    assert_eq!(computed_line(&svg), None);
    assert!(all_text(&judge("near", &svg)).contains("frost, computed 1.21 m"));
}

#[test]
fn drag_points_down_to_where_the_ground_settles() {
    let mut asked = request(&[("a", 0.3, 2.5)], 1.2);
    asked["fill_depth"] = m(1.5);
    asked["downdrag"] = settling(1.5, 40.0);
    let pile = drawn(asked);
    let at = pile.1.result.downdrag.as_ref().and_then(|d| d.governing);
    let force = at.expect("a neutral plane").drag_force;
    let text = all_text(&judged("drag", &pile, System::Si, Paper::A4));
    let told = format!(
        "drag on shaft\n{:.1} kN\n0.00 to 1.50 m, not with uplift",
        force.si() / 1000.0
    );
    assert!(text.contains(&told), "{told}: {text}");
    assert!(text.contains("Drag to 1.50 m: load in the pile"), "{text}");
}

#[test]
fn a_floor_that_is_dug_out_a_sleeve_and_a_profile_are_shown() {
    let mut asked = request(&[("a", 0.3, 3.5)], 1.0);
    asked["frost"]["cold_surface_depth"] = m(0.6);
    let clay = |label: &str, top: f64, bottom: f64| {
        json!({"label": label, "top": m(top), "bottom": m(bottom),
               "unit_weight": q(18.5, "kN_per_m3"),
               "soil": {"clay": {"undrained_strength": q(80.0, "kPa")}}})
    };
    let mut resistance = held(5.0, 0.0);
    resistance["tension"] = json!({"from_soil": {"profile": {"layers": [
        clay("crust", 0.0, 1.4), clay("lower clay", 1.4, 9.0)]}}});
    asked["uplift"] = json!({"bond": {"fine": {}}, "resistance": resistance,
        "sleeve": {"bottom_depth": m(1.9), "free_to_heave": {"reference": "a detail"}}});
    let pile = drawn(asked);
    let text = all_text(&judged("dug out", &pile, System::Si, Paper::A4));
    for told in [
        "open to cold 0.60 m",
        "frost, official 1.60 m",
        "sleeve to 1.90 m",
        "Sleeve to 1.90 m counts.",
        "crust",
        "lower clay",
        "ground, levels, helices",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
    // nothing grips a shaft in a sleeve that counts
    assert!(!text.contains("frost on shaft"), "{text}");
}

#[test]
fn a_load_that_differs_by_stage_is_told_for_both() {
    let mut asked = request(&[("a", 0.3, 2.5)], 1.2);
    asked["uplift"] = json!({"bond": {"fine": {}}, "resistance": held(20.0, 150.0),
        "construction": {"standing_over_winter": {"dead_load": kn(2.0)}}});
    let text = all_text(&judged("loads", &drawn(asked), System::Si, Paper::A4));
    let told = "dead load 20.0 kN once built, 2.0 kN before building";
    assert!(text.contains(told), "{text}");
    // the same force over the same depths is one arrow
    assert!(text.contains("33.5 kN\n0.00 to 1.20 m, always"), "{text}");
}

#[test]
fn hostile_labels_are_escaped_and_cut() {
    let wide = "W".repeat(64);
    let hostile = [
        "</text><script>alert(1)</script>",
        "\"><image href='http://192.0.2.1/x'/>",
        "\u{202e}drawkcab",
        &wide,
    ];
    let helices: Vec<(&str, f64, f64)> = hostile
        .iter()
        .enumerate()
        .map(|(i, label)| (*label, 0.3, 0.5 + 0.9 * i as f64))
        .collect();
    let mut asked = request(&helices, 1.2);
    asked["pile"]["label"] = json!(hostile[0]);
    let pile = drawn(asked);
    for paper in PAPERS {
        let svg = sheet(&pile, System::UsCustomary, paper);
        let read = judged("hostile", &pile, System::UsCustomary, paper);
        assert!(!svg.contains("<script") && !svg.contains("<image"));
        assert!(!svg.contains('\u{202e}'));
        assert!(all_text(&read).contains("</text>"));
    }
}

#[test]
fn the_same_answer_gives_the_same_bytes() {
    let pile = drawn(everything());
    let once = sheet(&pile, System::Si, Paper::A4);
    assert_eq!(once, sheet(&pile, System::Si, Paper::A4));
    assert_ne!(once, sheet(&pile, System::UsCustomary, Paper::A4));
    assert_ne!(once, sheet(&pile, System::Si, Paper::Letter));
}
