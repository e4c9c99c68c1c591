//! Sheets of piles made here keep the rules of a drawing, whatever the ground, the pile and
//! their labels, and say what the answer says.

mod common;

use bearwell_engine::contract::Paper;
use bearwell_engine::quantity::System;
use common::section::{
    Drawn, clay, crowded, drawn, layer, loaded, request, sand, sheet, silt, with_curve,
    with_least_depth,
};
use common::strokes::judge_strokes;
use common::{Sheet, judge};
use serde_json::json;

const PAPERS: [Paper; 2] = [Paper::Letter, Paper::A4];
const SYSTEMS: [System; 2] = [System::Si, System::UsCustomary];

fn judged(name: &str, pile: &Drawn, system: System, paper: Paper) -> Sheet {
    let svg = sheet(pile, system, paper);
    let read = judge(name, &svg);
    judge_strokes(name, &svg, &read);
    read
}

/// Fill, a crust and soft clay in which two helices stand.
fn plain() -> Drawn {
    let layers = vec![
        layer("fill", 0.0, 1.0, json!({"fill": {}})),
        layer("crust", 1.0, 4.0, clay(80.0)),
        layer("sand", 4.0, 9.0, sand(33.0)),
    ];
    let helices = [("upper", 0.3, 2.5), ("lower", 0.35, 3.4)];
    drawn(loaded(request(layers, Some(2.0), &helices), 40.0, 20.0))
}

fn piles() -> Vec<(&'static str, Drawn)> {
    let deep = vec![layer("clay", 0.0, 100.0, clay(200.0))];
    let wide = vec![layer("silt", 0.0, 12.0, silt(60.0))];
    vec![
        ("plain", plain()),
        ("with a curve", with_curve(plain(), 1.3, 7.5, 60)),
        (
            "with a least depth",
            with_least_depth(with_curve(plain(), 1.3, 7.5, 60), 1.3, 7.5),
        ),
        ("crowded", drawn(loaded(crowded(20, 20.0, 6), 150.0, 60.0))),
        (
            "sixty layers",
            drawn(loaded(crowded(60, 12.0, 8), 150.0, 60.0)),
        ),
        (
            "very deep",
            drawn(request(
                deep,
                Some(0.0),
                &[("a", 0.1, 98.0), ("b", 0.2, 99.0)],
            )),
        ),
        (
            "wide and shallow",
            drawn(request(wide, None, &[("a", 1.5, 0.5)])),
        ),
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
    let pile = plain();
    let down = pile.1.result.compression.as_ref().expect("compression");
    let text = all_text(&judged("plain", &pile, System::Si, Paper::A4));
    let kn = |f: bearwell_engine::quantity::Force| format!("{:.1} kN", f.si() / 1000.0);
    assert!(text.contains(&format!("Down: ultimate {}", kn(down.ultimate))));
    for helix in &down.individual_bearing.helices {
        assert!(
            text.contains(&format!("down {}", kn(helix.resistance))),
            "{text}"
        );
    }
    // 40 kN at a safety factor of 2 and 20 kN at one of 3
    for told in [
        "down needs 80.0 kN",
        "up needs 60.0 kN",
        "water 2.00 m",
        "upper\n300 mm at 2.50 m",
        "lower\n350 mm at 3.40 m",
        "crust",
        "clay, su 80 kPa",
        "sand, friction 33\u{b0}",
        "fill, no credit",
        "18.5 kN/m3",
        "as sent 3.40 m",
        "profile goes on to 9.00 m",
        "Calculation, not design.",
        "No curve was asked for: send",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
    let us = all_text(&judged("plain", &pile, System::UsCustomary, Paper::Letter));
    // 80 kPa is 1670.8 psf, 33.4 m are 109.58 ft, 80 kN are 17,985 lbf
    for told in [
        "clay, su 1,671 psf",
        "down needs 17,985 lbf",
        "as sent 11.15 ft",
    ] {
        assert!(us.contains(told), "{told}: {us}");
    }
}

#[test]
fn a_load_without_utilisation_or_basis_has_no_line() {
    let layers = vec![layer("clay", 0.0, 9.0, clay(80.0))];
    let bare = drawn(request(layers, None, &[("a", 0.3, 3.0)]));
    let text = all_text(&judged("bare", &bare, System::Si, Paper::A4));
    assert!(!text.contains("needs"), "{text}");
    assert!(text.contains("No design basis: ultimate values only."));
    assert!(text.contains("No water within the profile."));
    assert!(text.contains("NOT JUDGED"));
}

#[test]
fn where_other_profiles_have_a_part_no_needed_ultimate_is_made_up() {
    let layers = vec![layer("clay", 0.0, 9.0, clay(80.0))];
    let mut asked = request(layers, None, &[("a", 0.3, 3.0)]);
    let kn = |v: f64| json!({"value": v, "unit": "kN"});
    asked["directions"] = json!("compression");
    asked["design_basis"] = json!({"eurocode_7": {
        "approach": "da2", "pile_kind": "driven",
        "proof": {"ground_tests": {"other_profiles": [{"compression": kn(35.0)}]}},
    }});
    asked["demand"] = json!({"level": "factored", "compression": kn(10.0)});
    let text = all_text(&judged("profiles", &drawn(asked), System::Si, Paper::A4));
    assert!(!text.contains("down needs"), "{text}");
    assert!(text.contains("The load needs no single ultimate"), "{text}");
}

#[test]
fn a_curve_goes_through_its_points_and_marks_tell_directions() {
    let pile = with_curve(plain(), 1.3, 7.5, 60);
    let svg = sheet(&pile, System::Si, Paper::A4);
    let text = all_text(&judged("curve", &pile, System::Si, Paper::A4));
    assert!(!text.contains("No curve"), "{text}");
    let doc = roxmltree::Document::parse(&svg).expect("XML");
    let lines: Vec<Vec<(f64, f64)>> = doc
        .descendants()
        .filter(|n| n.has_tag_name("polyline"))
        .filter_map(|n| n.attribute("points"))
        .map(|points| {
            let pair = |p: &str| {
                let (x, y) = p.split_once(',').expect("x,y");
                (x.parse().expect("x"), y.parse().expect("y"))
            };
            points.split(' ').map(pair).collect()
        })
        .filter(|points: &Vec<(f64, f64)>| points.len() == 60)
        .collect();
    // down and up; nothing here is held by weaker soil
    assert_eq!(lines.len(), 2);
    let points = pile
        .1
        .result
        .depth_curve
        .as_ref()
        .and_then(|c| c.points.as_ref());
    let points = points.expect("points");
    // a straight relation between paper and table, the same for all points
    for (line, column) in [(&lines[0], 1), (&lines[1], 3)] {
        let (a, b) = (&points.rows[0], &points.rows[59]);
        let down = (line[59].1 - line[0].1) / (b[0].value() - a[0].value());
        // the frame of the field starts at no force: 1:75 is 13.33 mm for a metre
        assert!((down - 1000.0 / 75.0).abs() < 0.01, "{down}");
        let most = points
            .rows
            .iter()
            .map(|r| r[column].value())
            .fold(0.0, f64::max);
        let right = line.iter().map(|p| p.0).fold(0.0, f64::max);
        let least = points
            .rows
            .iter()
            .map(|r| r[column].value())
            .fold(most, f64::min);
        let left = line.iter().map(|p| p.0).fold(right, f64::min);
        for (row, at) in points.rows.iter().zip(line) {
            let share = (row[column].value() - least) / (most - least);
            let x = left + share * (right - left);
            assert!((at.0 - x).abs() < 0.03, "{} against {x}", at.0);
        }
    }
    // beside the two marks of the pile as sent and the two of the legend
    let sheet = judge("curve", &svg);
    assert!(sheet.circles >= 6, "{} dots", sheet.circles);
}

#[test]
fn the_section_is_to_scale_both_ways() {
    let pile = plain();
    let svg = sheet(&pile, System::Si, Paper::A4);
    let read = judge("scale", &svg);
    let text = all_text(&read);
    assert!(text.contains("depths 1:40"), "{text}");
    let times: f64 = text
        .lines()
        .find_map(|l| l.strip_prefix("widths of the pile x "))
        .expect("the widths")
        .parse()
        .expect("a number");
    let doc = roxmltree::Document::parse(&svg).expect("XML");
    // plates are paths "Mx yLx y v.7L x yZ": their corners are a diameter apart
    let mut found = Vec::new();
    for d in doc.descendants().filter_map(|n| n.attribute("d")) {
        if let Some(rest) = d.strip_prefix('M')
            && d.contains("v0.7L")
        {
            let (from, to) = rest.split_once('L').expect("L");
            let x = |t: &str| -> f64 { t.split(' ').next().expect("x").parse().expect("x") };
            found.push(x(to) - x(from));
        }
    }
    let per_metre = 1000.0 / 40.0 * times;
    assert_eq!(found.len(), 2);
    for (width, diameter) in found.iter().zip([0.3, 0.35]) {
        assert!((width - diameter * per_metre).abs() < 0.02, "{width}");
    }
}

#[test]
fn least_depth_and_band_are_told() {
    let pile = with_least_depth(with_curve(plain(), 1.3, 7.5, 60), 1.3, 7.5);
    let least = pile.1.result.minimum_depth.as_ref().and_then(|m| m.depth);
    let text = all_text(&judged("least", &pile, System::Si, Paper::A4));
    let told = format!("least depth {:.2} m", least.expect("a depth").si());
    assert!(text.contains(&told), "{told}: {text}");
    assert!(text.contains("depths that pass"));
    let mut none = pile.clone();
    if let Some(found) = &mut none.1.result.minimum_depth {
        found.depth = None;
        found.passing.clear();
    }
    let text = all_text(&judged("none", &none, System::Si, Paper::A4));
    assert!(
        text.contains("No depth from 1.30 m to 7.50 m meets"),
        "{text}"
    );
    assert!(!text.contains("depths that pass"));
}

#[test]
fn layers_that_share_a_cell_are_listed_or_counted() {
    let pile = drawn(loaded(crowded(60, 12.0, 8), 150.0, 60.0));
    let text = all_text(&judged("sixty", &pile, System::Si, Paper::A4));
    assert!(text.contains("Layers that share a cell"), "{text}");
    assert!(text.contains("further layers in the request"), "{text}");
}

#[test]
fn water_that_comes_and_goes_strengths_found_and_hazards_are_told() {
    let found = json!({"clay": {"from_stress_history": {"overconsolidation_ratio": 3}}});
    let layers = vec![
        layer("upper clay", 0.0, 4.0, found),
        layer("lower clay", 4.0, 12.0, clay(70.0)),
    ];
    let mut asked = request(layers, None, &[("a", 0.3, 3.0)]);
    let point = |depth: f64, pressure: f64| {
        json!({"depth": {"value": depth, "unit": "m"},
               "pressure": {"value": pressure, "unit": "kPa"}})
    };
    asked["soil"]["pore_pressures"] = json!([
        point(1.0, 0.0),
        point(1.5, 4.0),
        point(2.0, 0.0),
        point(3.2, 0.0)
    ]);
    asked["soil"]["layers"][1]["hazards"] = json!(["sensitive"]);
    asked["directions"] = json!("tension");
    let text = all_text(&judged("water", &drawn(asked), System::Si, Paper::A4));
    for told in [
        "water from 1.00 m",
        "no water from 2.00 m",
        "water from 3.20 m",
        "Pore pressures as sent, at 4 depths.",
        "* strength found from a test",
        "Beware, lower clay: sensitive soil.",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
    let starred = |t: &str| t.starts_with("clay, su ") && t.ends_with("kPa*");
    assert_eq!(text.lines().filter(|t| starred(t)).count(), 1, "{text}");
}

#[test]
fn a_raised_grade_stands_above_the_ground_as_sent() {
    let layers = vec![
        layer("crust", 0.0, 2.0, clay(80.0)),
        layer(
            "clay",
            2.0,
            9.0,
            json!({"clay": {"from_spt": {
            "blow_count": 12, "form": "n60", "plasticity_index_ratio": 0.25}}}),
        ),
    ];
    let mut asked = request(layers, Some(1.5), &[("a", 0.3, 5.0)]);
    asked["soil"]["grade_change"] = json!({"raise": {
        "height": {"value": 1.0, "unit": "m"},
        "unit_weight": {"value": 17, "unit": "kN_per_m3"}}});
    let text = all_text(&judged("raised", &drawn(asked), System::Si, Paper::A4));
    for told in [
        "new fill",
        "Final grade 1.00 m above existing",
        "water 2.50 m",
        "profile goes on to 10.00 m",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
    // the layer below the crust is the one whose strength was found
    let crust = text.find("crust").expect("the crust");
    let star = text.find("kPa*").expect("a star");
    assert!(star > crust && text.matches("kPa*").count() == 1, "{text}");
}

#[test]
fn hostile_labels_are_escaped_and_cut() {
    let wide = "W".repeat(64);
    let hostile = [
        "</text><script>alert(1)</script>",
        "\"><image href='http://192.0.2.1/x'/>",
        "&lt;&#0;]]>",
        "\u{202e}drawkcab",
        &wide,
        "\u{6f22}\u{5b57}\u{6f22}\u{5b57}\u{6f22}\u{5b57}\u{6f22}\u{5b57}\u{6f22}\u{5b57}\u{6f22}\u{5b57}",
        "\u{ffff}",
    ];
    let layers = hostile
        .iter()
        .enumerate()
        .map(|(i, label)| layer(label, i as f64, (i + 1) as f64, clay(60.0)))
        .collect();
    let helices: Vec<(&str, f64, f64)> = hostile[..4]
        .iter()
        .enumerate()
        .map(|(i, label)| (*label, 0.3, 1.5 + 0.9 * i as f64))
        .collect();
    let mut asked = loaded(request(layers, Some(1.2), &helices), 30.0, 10.0);
    asked["pile"]["label"] = json!(hostile[0]);
    let pile = drawn(asked);
    for paper in PAPERS {
        let svg = sheet(&pile, System::UsCustomary, paper);
        let read = judged("hostile", &pile, System::UsCustomary, paper);
        assert!(!svg.contains("<script") && !svg.contains("<image"));
        assert!(!svg.contains('\u{202e}') && !svg.contains('\u{ffff}'));
        assert!(read.texts.iter().any(|t| t.text.starts_with("</text>")));
    }
}

#[test]
fn the_same_answer_gives_the_same_bytes() {
    let pile = with_curve(plain(), 1.3, 7.5, 60);
    let once = sheet(&pile, System::Si, Paper::A4);
    assert_eq!(once, sheet(&pile, System::Si, Paper::A4));
    assert_ne!(once, sheet(&pile, System::UsCustomary, Paper::A4));
    assert_ne!(once, sheet(&pile, System::Si, Paper::Letter));
}
