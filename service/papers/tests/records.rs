//! Sheets of logs made here keep the rules of a drawing, and say what the answer says.

mod common;

use bearwell_engine::contract::Paper;
use bearwell_engine::quantity::System;
use common::record::Log;
use common::section::{clay, layer, sand};
use common::strokes::judge_strokes;
use common::{Sheet, judge};
use serde_json::{Value, json};

const PAPERS: [Paper; 2] = [Paper::Letter, Paper::A4];
const SYSTEMS: [System; 2] = [System::Si, System::UsCustomary];

fn judged(name: &str, log: &Log, system: System, paper: Paper) -> Sheet {
    let svg = log.sheet(system, paper);
    if let Some(folder) = std::env::var_os("BEARWELL_DRAWN") {
        let file = format!("{}-{system:?}-{paper:?}.svg", name.replace(' ', "-"));
        std::fs::write(std::path::Path::new(&folder).join(file), &svg).expect("a picture");
    }
    let read = judge(name, &svg);
    judge_strokes(name, &svg, &read);
    read
}

/// Soft ground, then torque that grows to 3,000 ft-lbf over the last feet.
fn accepted() -> Log {
    let torques: Vec<f64> = (1..=19)
        .map(|ft| match ft {
            1..=4 => 500.0,
            5..=11 => 700.0 + 40.0 * f64::from(ft),
            _ => 1500.0 + 210.0 * f64::from(ft - 11),
        })
        .collect();
    Log {
        effective: Some((2970.0, 16.0, 19.0)),
        capacity: true,
        ..Log::by_the_foot("B2", &torques)
    }
}

/// Stopped on debris at 5 ft with all the torque there is.
fn refused() -> Log {
    let mut log = Log::by_the_foot("C4", &[350.0, 600.0, 900.0, 1400.0, 5500.0]);
    log.rows[4].2 = "unconfirmed";
    log.rows[4].3 = Some(0.2);
    Log {
        verdict: "reject",
        stop: Some("obstruction"),
        capacity: true,
        warnings: 1,
        checks: vec![
            ("record_obstruction", "fail", Some((1.0, 0.0, "1")),
             "what it stands on is a question of rock or of a load test, not of torque".into()),
            ("record_refusal_short", "fail", Some((17.0, 5.0, "ft")), "stopped on an obstruction".into()),
            ("record_helix_below_frost", "fail", Some((4.984, 2.0, "ft")), String::new()),
            ("record_helix_below_fill", "fail", Some((4.5, 2.0, "ft")), String::new()),
            ("record_rise_held", "fail", Some((3.0, 1.0, "ft")), "a rise in row 4 alone".into()),
            ("record_advance", "fail", Some((2.55, 0.6, "in")), String::new()),
            ("record_calibration", "not_evaluated", None, "no indicator was sent".into()),
            ("record_ground", "not_evaluated", None, "nothing is known of the ground".into()),
            ("record_position_along", "not_evaluated", None, "no position was sent".into()),
            ("record_rotation_speed", "warn", Some((30.0, 34.0, "rpm")), String::new()),
        ],
        next: vec![
            ("pre_drill", "back out and pre-drill through the debris, then start again; torque counts only below the hole".into(), Some(17.0)),
            ("extract_and_move", "take it out, dig the obstruction away or move; a new layout is needed".into(), None),
            ("ask_engineer", "with the log and the options".into(), None),
        ],
        margin: None,
        missing: 3,
        ..log
    }
}

fn one_row() -> Log {
    Log {
        verdict: "provisional",
        ..Log::by_the_foot("E2", &[1200.0])
    }
}

fn long() -> Log {
    let mut log = Log::by_the_foot("P31", &[]);
    log.rows = (0..400)
        .map(|i| {
            let depth = 0.2 * f64::from(i + 1);
            let torque = 400.0 + 30.0 * depth + 260.0 * f64::from((i * 7919) % 13) / 13.0;
            (
                depth,
                Some(torque),
                "counts",
                Some(0.8 + 0.3 * f64::from((i * 31) % 17) / 17.0),
            )
        })
        .collect();
    log.effective = Some((2850.0, 77.0, 80.0));
    log
}

fn spiked() -> Log {
    let mut log = accepted();
    log.label = "A3".into();
    log.rows[8].1 = Some(5100.0);
    log.rows[8].2 = "spike";
    log.rows[13].1 = Some(4800.0);
    log.rows[13].2 = "spike";
    log.rows[14].1 = Some(4900.0);
    log.rows[14].2 = "spike";
    log.warnings = 1;
    log
}

/// Pre-drilled through fill, backed out once on the way.
fn pre_drilled() -> Log {
    let mut log = accepted();
    log.label = "C4b".into();
    log.history = vec![("pre_drilled_depth", 6.5)];
    for row in log.rows.iter_mut().take(6) {
        row.1 = Some(150.0);
        row.2 = "not_fresh";
    }
    log.rows.splice(
        12..12,
        [
            (10.0, Some(600.0), "not_fresh", None),
            (11.5, Some(800.0), "not_fresh", Some(0.9)),
        ],
    );
    log
}

fn linnet_ground() -> Value {
    json!({"layers": [
        layer("brick and concrete debris", 0.0, 1.3716, json!({"fill": {}})),
        layer("silty clay", 1.3716, 3.3528, clay(24.0)),
        layer("stiff clay", 3.3528, 9.144, clay(120.0)),
    ]})
}

fn with_ground() -> Log {
    Log {
        profile: Some(linnet_ground()),
        layers: vec![
            ("brick and concrete debris".into(), 0.0, 500.0),
            ("silty clay".into(), 4.5, 980.0),
            ("stiff clay".into(), 11.0, 2340.0),
        ],
        ..accepted()
    }
}

/// Metric ground of 60 thin layers.
fn many_layers() -> Log {
    let layers: Vec<Value> = (0..60)
        .map(|i| {
            let soil = if i % 2 == 0 { clay(50.0) } else { sand(31.0) };
            layer(
                &format!("unit {i} of the old river"),
                0.1 * f64::from(i),
                0.1 * f64::from(i + 1),
                soil,
            )
        })
        .collect();
    Log {
        profile: Some(json!({"layers": layers})),
        ..accepted()
    }
}

fn tension() -> Log {
    Log {
        label: "P11".into(),
        helices: vec![(14.0, 4.0), (16.0, 0.5)],
        square: true,
        required: Some(5570.0),
        reduced: Some(7630.0),
        limit: Some(9000.0),
        depths: vec![
            ("minimum_tip_depth", 15.0),
            ("maximum_tip_depth", 24.0),
            ("frost_depth", 5.9),
            ("active_depth", 7.5),
        ],
        margin: Some(6.89),
        verdict: "provisional",
        effective: Some((6200.0, 15.0, 19.0)),
        rows: accepted()
            .rows
            .iter()
            .map(|r| (r.0, r.1.map(|t| 2.1 * t), r.2, r.3))
            .collect(),
        ..accepted()
    }
}

/// Every zone at once, a limit far beyond the axis, a least depth far below the log.
fn all_levels() -> Log {
    Log {
        label: String::new(),
        no_shaft: true,
        limit: Some(60_000.0),
        reduced: Some(3600.0),
        depths: vec![
            ("minimum_tip_depth", 100.0),
            ("maximum_tip_depth", 300.0),
            ("frost_depth", 4.0),
            ("fill_depth", 4.1),
            ("active_depth", 4.2),
        ],
        history: vec![("pre_drilled_depth", 4.05), ("disturbed_depth", 4.15)],
        ..accepted()
    }
}

fn logs() -> Vec<(&'static str, Log)> {
    vec![
        ("accepted", accepted()),
        ("refused", refused()),
        ("one row", one_row()),
        ("400 rows", long()),
        ("spiked", spiked()),
        ("pre-drilled", pre_drilled()),
        ("with ground", with_ground()),
        ("many layers", many_layers()),
        ("tension", tension()),
        ("all levels", all_levels()),
    ]
}

#[test]
fn every_sheet_keeps_the_rules() {
    for (name, log) in logs() {
        for system in SYSTEMS {
            for paper in PAPERS {
                judged(name, &log, system, paper);
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
    let text = all_text(&judged(
        "refused",
        &refused(),
        System::UsCustomary,
        Paper::A4,
    ));
    for told in [
        "REJECT",
        "Pile C4: helices 10 in, 12 in; tip at 5.00 ft,\nstopped on an obstruction.",
        "refusal short: 5, at least 17 ft: stopped",
        "helix below fill: 2, at least 4.5 ft",
        "calibration: no indicator was sent",
        "Pre-drill (tip to 17.00 ft)",
        "required 2,778 ft-lbf",
        "limit of the shaft 5,500 ft-lbf",
        "helix 10 in at 2.00 ft",
        "frost 4.00 ft",
        "fill 4.50 ft",
        "least tip 17.00 ft",
        "least 0.85",
        "rise not yet held",
        "INDICATIVE ONLY",
        "Calculation, not design.",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
    // 2,778 ft-lbf are 3.766 kN m, 17 ft are 5.18 m
    let si = all_text(&judged("refused", &refused(), System::Si, Paper::Letter));
    for told in [
        "required 3.77 kN m",
        "least tip 5.18 m",
        "helix 254 mm at 0.61 m",
    ] {
        assert!(si.contains(told), "{told}: {si}");
    }
    let text = all_text(&judged(
        "accepted",
        &accepted(),
        System::UsCustomary,
        Paper::Letter,
    ));
    for told in [
        "ACCEPT",
        "counts 2,970 ft-lbf",
        "Last 3,180 ft-lbf, greatest 3,180.",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
    for not in ["Fails, or is open", "INDICATIVE", "spike"] {
        assert!(!text.contains(not), "{not}: {text}");
    }
}

#[test]
fn a_level_far_below_is_told_and_not_drawn() {
    let text = all_text(&judged(
        "all levels",
        &all_levels(),
        System::UsCustomary,
        Paper::Letter,
    ));
    assert!(text.contains("least tip 100.00 ft"), "{text}");
    assert!(text.contains("greatest tip 300.00 ft"), "{text}");
    assert!(text.contains("limit of the shaft 60,000 ft-lbf"), "{text}");
    assert!(
        !text.contains("least tip depth"),
        "no line, no legend: {text}"
    );
}

/// Readings are told apart by form: dots that count, diamonds, squares and rings that do not.
#[test]
fn readings_are_told_apart_by_form() {
    let marks = |log: &Log| {
        let svg = log.sheet(System::Si, Paper::A4);
        let open = svg.matches("<path d=\"M").count();
        (
            judge("marks", &svg).circles,
            open,
            svg.matches("stroke-dasharray=\"1.6 0.7\"").count(),
        )
    };
    let (dots, paths, dashed) = marks(&accepted());
    let (fewer, more, spikes) = marks(&spiked());
    assert_eq!(dashed, 0);
    // three readings are diamonds, and one more stands in the legend
    assert_eq!((dots - fewer, more - paths, spikes), (3, 4, 4));
}

/// With 400 rows every fourth reading or so has a mark; what is too little advance keeps its
/// crosses.
#[test]
fn a_long_log_is_a_line_and_not_a_blot() {
    let sheet = judged("400 rows", &long(), System::Si, Paper::A4);
    assert!((60..200).contains(&sheet.circles), "{}", sheet.circles);
}

#[test]
fn a_label_is_never_markup() {
    let log = Log {
        label: "<script>alert(\"1\")</script>".into(),
        notes: vec![(0, "=1+1".into()), (0, "a \"b\"".into())],
        ..one_row()
    };
    let svg = log.sheet(System::Si, Paper::A4);
    assert!(!svg.contains("<script") && svg.contains("&lt;script&gt;"));
    let (request, answer) = log.answer();
    let csv = bearwell_papers::record_csv(&request, &answer, System::UsCustomary, Paper::A4);
    assert_eq!(
        csv,
        "row [1],depth [ft],torque [ft_lbf],standing,advance_ratio [1],rotation_speed [rpm],note\r\n\
         0,1,1200,counts,0.95,,\"'=1+1; a \"\"b\"\"\"\r\n"
    );
}
