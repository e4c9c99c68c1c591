//! Sheets of jobs keep the rules of a drawing from one pile to sixty, and say what the answer
//! says.

mod common;

use bearwell_engine::contract::{Paper, Verdict};
use bearwell_engine::quantity::System;
use common::job::{Drawn, asked, job, pile, sheet};
use common::record::Log;
use common::strokes::judge_strokes;
use common::{Sheet, judge};

const PAPERS: [Paper; 2] = [Paper::Letter, Paper::A4];
const SYSTEMS: [System; 2] = [System::Si, System::UsCustomary];

fn judged(name: &str, drawn: &Drawn, system: System, paper: Paper) -> Sheet {
    let svg = sheet(drawn, system, paper);
    if let Some(folder) = std::env::var_os("BEARWELL_DRAWN") {
        let file = format!("job-{name}-{system:?}-{paper:?}.svg");
        std::fs::write(std::path::Path::new(&folder).join(file), &svg).expect("a picture");
    }
    let read = judge(name, &svg);
    judge_strokes(name, &svg, &read);
    read
}

fn of(count: usize) -> Drawn {
    let logs: Vec<Log> = (0..count).map(pile).collect();
    let mut request = job(&logs);
    request["lot"] = serde_json::json!({"proof_test_ratio": 0.05});
    asked(request).unwrap_or_else(|refusal| panic!("refused: {refusal:?}"))
}

fn all_text(sheet: &Sheet) -> String {
    let texts: Vec<&str> = sheet.texts.iter().map(|t| t.text.as_str()).collect();
    texts.join("\n")
}

#[test]
fn every_number_of_piles_keeps_the_rules() {
    for count in (1..=12).chain([20, 24, 37, 48, 59, 60]) {
        let drawn = of(count);
        for system in SYSTEMS {
            for paper in PAPERS {
                judged(&count.to_string(), &drawn, system, paper);
            }
        }
    }
}

#[test]
fn every_pile_has_a_cell_with_its_label_and_mark() {
    let drawn = of(60);
    let read = judged("60", &drawn, System::UsCustomary, Paper::Letter);
    let text = all_text(&read);
    for one in &drawn.0.piles {
        let label = one.label.as_ref().map_or("", |l| l.as_str());
        assert!(read.texts.iter().any(|t| t.text == label), "{label}");
    }
    let counts = &drawn.1.result.counts;
    // 8, 25 and 42 have no torque; 59 stands on debris
    assert_eq!(counts.not_evaluated_count, 3, "{counts:?}");
    assert_eq!(counts.pile_count, 60);
    let rejected = drawn.1.result.piles.iter();
    let rejected = rejected
        .filter(|p| p.verdict == Some(Verdict::Reject))
        .count();
    assert!(rejected >= 8, "{rejected}");
    for told in [
        format!("reject: {rejected}"),
        "not judged: 3".into(),
        format!("continue: {}", counts.continue_count),
        "not judged:".into(),
        "log no".into(),
        "Job Linnet: 60 piles, 57 judged.".into(),
        "a line each 2,000".into(),
        "Every cell: torque in ft-lbf,".into(),
        "Proof tests: 0 of 3 done.".into(),
    ] {
        assert!(text.contains(&told), "{told}: {text}");
    }
    // a black diamond for each that is rejected, one in the legend, and the two of the frame;
    // those of the column come on top
    let failing = read.black_paths;
    assert!(failing >= rejected + 3, "{failing}");
}

/// The scales are the same in every cell: one torque stands equally far from the left edge of
/// each, whatever else is in it.
#[test]
fn all_cells_have_one_scale() {
    let drawn = of(24);
    let svg = sheet(&drawn, System::UsCustomary, Paper::A4);
    let doc = roxmltree::Document::parse(&svg).expect("well-formed XML");
    let number = |n: &roxmltree::Node, name: &str| -> f64 {
        n.attribute(name)
            .and_then(|v| v.parse().ok())
            .expect("a number")
    };
    // the required torque, 2,778 ft-lbf of 6,000
    let lines = doc
        .descendants()
        .filter(|n| n.attribute("stroke-dasharray") == Some("2 0.7"));
    let frames: Vec<(f64, f64)> = doc
        .descendants()
        .filter(|n| n.tag_name().name() == "rect" && n.attribute("stroke-width") == Some("0.25"))
        .map(|n| (number(&n, "x"), number(&n, "width")))
        .collect();
    let mut seen = 0;
    for line in lines {
        let x = number(&line, "x1");
        let Some((left, wide)) = frames.iter().find(|f| f.0 < x && x < f.0 + f.1) else {
            continue;
        };
        // the sample of the legend stands beside no frame of a cell
        if number(&line, "y2") - number(&line, "y1") > 5.0 {
            assert!(
                ((x - left) / wide - 2778.0 / 6000.0).abs() < 2e-3,
                "{x} {left} {wide}"
            );
            seen += 1;
        }
    }
    assert_eq!(seen, drawn.1.result.depths.pile_count);
}

#[test]
fn a_label_is_never_markup() {
    let logs = [Log {
        label: "<b>&\"1\"</b>".into(),
        ..pile(0)
    }];
    let drawn = asked(job(&logs)).expect("an answer");
    let svg = sheet(&drawn, System::Si, Paper::A4);
    judge("markup", &svg);
    assert!(!svg.contains("<b>") && svg.contains("&lt;b&gt;&amp;"));
}
