//! Every example request under `openapi/examples/helix-capacity`: those that must be
//! answered are, those that must be refused are refused where they should be.

use super::{compression, helix, near, tension, warns};
use crate::contract::{Answer, Verdict, Work, run};
use crate::examples::{request, requests, through};
use crate::helix::{HelixCapacity, Outcome};
use crate::quantity::{ForceUnit, StressUnit};
use crate::trace::Trace;

pub(super) fn answer_to(wanted: &str) -> Answer<Outcome> {
    let text = request::<HelixCapacity>(wanted);
    through::<HelixCapacity>(&text, Trace::on()).unwrap().1
}

#[test]
fn every_example_is_answered_and_printed() {
    for (name, text) in requests::<HelixCapacity>("") {
        let (call, _) = through::<HelixCapacity>(&text, Trace::off())
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        let trace = if call.options.steps() {
            Trace::on()
        } else {
            Trace::off()
        };
        let answer = run::<HelixCapacity>(&call, Work::new(trace, None))
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        let judged = call.request.is_judged();
        assert_eq!(answer.verdict != Verdict::NotAsked, judged, "{name}");
        assert_eq!(!answer.checks.is_empty(), judged, "{name}");
        assert!(
            !answer.methods.is_empty() && !answer.cautions.is_empty(),
            "{name}"
        );
        assert_eq!(answer.steps.is_some(), call.options.steps(), "{name}");
        // the plain form reads back as the same answer: what a client relies on
        let plain = serde_json::to_string(&answer.result).unwrap();
        let back: Outcome = serde_json::from_str(&plain).unwrap();
        assert_eq!(back, answer.result, "{name}");
    }
}

#[test]
fn the_named_examples_come_to_their_verdicts() {
    for (name, expected) in [
        ("linnet", Verdict::Accept),
        ("linnet-uplift", Verdict::Accept),
        ("linnet-upper-helix-in-fill", Verdict::Reject),
        ("sizerin", Verdict::Reject),
        ("sizerin-larger-helices", Verdict::Accept),
        ("sizerin-static-test", Verdict::Accept),
        ("hb-04", Verdict::Accept),
        ("hb-05", Verdict::Accept),
        ("up-09", Verdict::Reject),
        ("cd-01", Verdict::Accept),
        ("cd-02", Verdict::Reject),
        ("cd-02-helical-clause", Verdict::Accept),
        ("cd-06", Verdict::Accept),
        ("shallow-uplift-fails", Verdict::Reject),
        ("weak-layer-below", Verdict::Accept),
        ("hb-02", Verdict::NotAsked),
    ] {
        assert_eq!(answer_to(name).verdict, expected, "{name}");
    }
}

/// Numbers of the cases the examples are named after; origins beside the tests of the cases.
#[test]
fn the_examples_named_after_cases_give_their_numbers() {
    // factor of the first soil under the (last) helix
    for (name, factor, percent) in [
        ("bf-01", 22.5, 1.0),
        ("bf-03", 18.4, 1.5),
        ("bf-04", 18.4, 1.5),
        ("bf-05", 29.44, 0.3),
        ("bf-07", 33.29609, 0.001),
        ("bf-08", 3.875274, 0.001),
        ("uc-02", 10.0444, 0.01),
        ("uc-03", 9.0, 0.01),
    ] {
        let a = answer_to(name);
        near(
            helix(compression(&a), 0).zone[0].bearing_factor,
            factor,
            percent,
        );
    }
    let uc = answer_to("uc-01");
    for (i, nc) in [(0, 7.2), (1, 9.0)] {
        near(helix(compression(&uc), i).zone[0].bearing_factor, nc, 0.01);
    }
    for (name, fq) in [
        ("up-02", 39.5),
        ("up-06", 7.9846),
        ("up-07", 15.97),
        ("up-05", 3.5433),
    ] {
        near(
            helix(tension(&answer_to(name)), 0).zone[0].bearing_factor,
            fq,
            0.5,
        );
    }
    for (name, kn) in [("up-05", 14.043), ("up-06", 9.0564), ("up-07", 90.794)] {
        near(
            tension(&answer_to(name)).ultimate.get(ForceUnit::KN),
            kn,
            0.1,
        );
    }
    let up3 = answer_to("up-03");
    let cylinder = tension(&up3).cylindrical_shear.as_ref().unwrap();
    near(
        cylinder.gaps[0].parts[0].lateral_stress_ratio.unwrap(),
        0.9,
        0.3,
    );
    let up4 = answer_to("up-04");
    near(
        tension(&up4).embedment.as_ref().unwrap().critical_ratio,
        5.175,
        0.1,
    );
    let hb2 = answer_to("hb-02");
    near(compression(&hb2).ultimate.get(ForceUnit::KN), 96.869, 0.05);
    let hb5 = answer_to("hb-05");
    near(compression(&hb5).ultimate.get(ForceUnit::KN), 112.096, 0.05);
    let hb7 = answer_to("hb-07");
    near(
        helix(compression(&hb7), 0).bearing.get(StressUnit::KPa) / 9.0,
        53.333,
        0.01,
    );
    let cd1 = answer_to("cd-01");
    near(
        compression(&cd1)
            .design
            .as_ref()
            .unwrap()
            .capacity
            .get(ForceUnit::KN),
        89.0,
        0.01,
    );
    // AL-01: psi is 1 at 5 m, where s'_v = 10 z = 50 kPa = s_u
    let al = answer_to("al-01");
    let steps = al.steps.as_ref().unwrap();
    let at_one = steps
        .iter()
        .filter(|s| s.symbol == "alpha")
        .any(|s| (s.shown.value() - 0.5).abs() < 0.01);
    assert!(at_one);
    let sb = answer_to("sb-02");
    let d_q = sb
        .steps
        .as_ref()
        .unwrap()
        .iter()
        .find(|s| s.symbol == "d_q")
        .unwrap();
    // own arithmetic: 1 + 0.1 tan 62 deg x 0.375
    near(d_q.shown.value(), 1.070_527, 1e-3);
}

#[test]
fn the_examples_with_something_to_tell_tell_it() {
    for (name, code) in [
        ("linnet-upper-helix-in-fill", "helix_without_credit"),
        ("weak-layer-below", "weak_layer_near_helix"),
        ("steep-friction", "friction_angle_above_40"),
        ("close-helices", "helices_close"),
        ("sizerin-static-test", "factor_rests_on_test"),
        ("cd-02", "uplift_clauses_disagree"),
        ("up-07", "default_from_memory"),
    ] {
        assert!(warns(&answer_to(name), code), "{name}: {code}");
    }
    assert!(!warns(
        &answer_to("linnet-uplift"),
        "uplift_clauses_disagree"
    ));
}
