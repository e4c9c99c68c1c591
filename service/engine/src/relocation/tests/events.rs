//! Events one by one: what they make of the plan, in sequence, and what they refuse.

use super::*;
use crate::layout::{GivenPile, PilePlacement};
use crate::quantity::{In, LengthUnit, Presentation, System};

fn positions(outcome: &Outcome) -> &[GivenPile] {
    match &outcome.layout.piles {
        PilePlacement::Given(g) => &g.positions,
        PilePlacement::Search(_) => &[],
    }
}

#[test]
fn the_plan_as_it_stands_names_its_piles_and_reads_back_the_same() {
    let sent = shown("three-refused-in-a-row");
    let sent = Request {
        ways_out: None,
        ..sent
    };
    let answered = answer(&sent);
    let stand = positions(&answered.result);
    assert_eq!(stand.len(), 23);
    assert!(stand.iter().all(|p| p.label.is_some()));
    let find = |label: &str| {
        stand
            .iter()
            .find(|p| p.label.as_ref().unwrap().as_str() == label)
    };
    assert!(find("A4").is_none());
    let short = find("A3").expect("it carries what is left");
    near(short.compression.unwrap().get(ForceUnit::Kip), 9.0, 1e-12);
    // printed in either system it is the same plan, and has the same answer, to the last bit
    let fresh = |layout: &crate::layout::Request| {
        let call = Call::from(layout.clone());
        let answer = run::<crate::layout::PileLayout>(&call, Work::new(Trace::off(), None));
        serde_json::to_string(&answer.expect("an answer").result).unwrap()
    };
    let own = serde_json::to_string(answered.result.result.as_ref().unwrap()).unwrap();
    for system in [System::Si, System::UsCustomary] {
        let form = Presentation::Printed(system);
        let text = In(form, &answered.result.layout).text().unwrap();
        let back: crate::layout::Request = serde_json::from_str(&text).unwrap();
        assert_eq!(back, answered.result.layout.0);
        assert!(fresh(&back) == own);
    }
}

/// What is accepted becomes the base of the next: all at once, or one after the other.
#[test]
fn events_in_sequence_come_to_the_same_plan() {
    let sent = Request {
        ways_out: None,
        ..shown("three-refused-in-a-row")
    };
    let at_once = answer(&sent);
    let mut layout = sent.layout.clone();
    for event in &sent.events {
        let one = Request {
            layout,
            events: vec![event.clone()],
            ..sent.clone()
        };
        layout = answer(&one).result.layout.0;
    }
    assert_eq!(layout, at_once.result.layout.0);
}

#[test]
fn a_pile_follows_the_corners_of_its_beam() {
    let text = r#"{"layout":{
        "design_basis":{"allowable_stress":{"combinations":{"published":{"edition":"asce_7_16"}}}},
        "beams":[{"label":"L","points":[
            {"x":{"value":0,"unit":"m"},"y":{"value":0,"unit":"m"}},
            {"x":{"value":6,"unit":"m"},"y":{"value":0,"unit":"m"}},
            {"x":{"value":6,"unit":"m"},"y":{"value":5,"unit":"m"}}],
            "line_loads":[{"kind":"dead","load":{"value":10,"unit":"kN_per_m"}}]}],
        "piles":{"given":{"positions":[
            {"label":"a","at":{"x":{"value":0,"unit":"m"},"y":{"value":0,"unit":"m"}}},
            {"label":"b","at":{"x":{"value":3,"unit":"m"},"y":{"value":0,"unit":"m"}}},
            {"label":"c","at":{"x":{"value":5.5,"unit":"m"},"y":{"value":0,"unit":"m"}}},
            {"label":"d","at":{"x":{"value":6,"unit":"m"},"y":{"value":3,"unit":"m"}}},
            {"label":"e","at":{"x":{"value":6,"unit":"m"},"y":{"value":5,"unit":"m"}}}]}}},
        "events":[{"moved":{"pile":"c","along":{"value":1.2,"unit":"m"},"off_line":{"value":50,"unit":"mm"}}}]}"#;
    let answered = answer(&request(text));
    let row = pile(&answered.result, "c");
    let at = row.at.unwrap();
    near(at.x.si(), 6.0, 1e-9);
    near(at.y.si(), 0.7, 1e-9);
    // left of the beam, which runs north there, is west
    let centre = answered.result.moved[0].centre;
    near(centre.x.si(), 5.95, 1e-9);
    near(centre.y.si(), 0.7, 1e-9);
}

#[test]
fn keep_outs_are_measured_from_the_pile_itself() {
    let answered = answer(&shown("pipe-beside-the-beam"));
    let own = check(&answered, "keep_out", "C3");
    // the line is 3 in from the beam's line; the pile stands 2.5 in further away
    assert_eq!(own.status, CheckStatus::Pass);
    near(own.capacity.as_ref().unwrap().value() / 0.0254, 5.5, 1e-9);
    // on the line it would be too near
    let mut on_line = shown("pipe-beside-the-beam");
    on_line.events = events(r#"[{"moved":{"pile":"C3","along":{"value":1,"unit":"in"}}}]"#);
    let answered = answer(&on_line);
    assert_eq!(check(&answered, "keep_out", "C3").status, CheckStatus::Fail);
}

#[test]
fn strength_that_is_not_known_leaves_the_verdict_open_where_a_span_grows() {
    let sent = shown("along-and-off");
    let mut lost = sent.clone();
    // 6.5 ft to 9.75 ft: the span between W1 and W3 grows without W2
    lost.events = events(r#"[{"omitted":{"pile":"M2"}}]"#);
    let answered = answer(&lost);
    let open = check(&answered, "relocation_beam_strength", "M");
    assert_eq!(open.status, CheckStatus::NotEvaluated);
    let beam = answered
        .result
        .beams
        .iter()
        .find(|b| b.label == "M")
        .unwrap();
    near(beam.span_before.unwrap().get(LengthUnit::Ft), 7.0, 1e-9);
    near(beam.span_after.unwrap().get(LengthUnit::Ft), 14.0, 1e-9);
    // within a tenth nothing is said
    let answered = answer(&sent);
    assert!(
        answered
            .checks
            .iter()
            .all(|c| c.id != "relocation_beam_strength")
    );
}

#[test]
fn a_beam_with_too_few_piles_fails_and_ways_out_are_told() {
    let answered = answer(&shown("beam-no-longer-stands"));
    assert_eq!(answered.verdict, Verdict::Reject);
    assert_eq!(
        check(&answered, "relocation_plan_stands", "S").status,
        CheckStatus::Fail
    );
    assert!(answered.result.after.is_none() && answered.result.result.is_none());
    let ways = answered.result.ways_out.expect("ways out");
    assert!(!ways.may_stand.is_empty(), "{:?}", ways.tried);
}

fn refused(sent: &Request) -> Vec<(String, String)> {
    let issues = ask(sent).expect_err("refused").issues;
    let pairs = issues.into_iter().map(|i| (i.pointer, i.code.to_string()));
    pairs.collect()
}

#[test]
fn faults_stand_where_they_are_and_all_at_once() {
    let found = refused(&shown_refused("all-faults-at-once"));
    let expected = [
        ("/events/0/omitted/pile", "relocation_unknown_pile"),
        ("/events/1/moved/along", "relocation_moved_off_beam"),
        ("/events/2/added/pile/label", "duplicate_label"),
        ("/events/3/moved/beam", "relocation_unknown_beam"),
    ];
    let found: Vec<_> = found
        .iter()
        .map(|(p, c)| (p.as_str(), c.as_str()))
        .collect();
    assert_eq!(found, expected);
    for (name, pointer, code) in [
        (
            "added-off-the-beams",
            "/events/0/added/pile/at",
            "pile_off_beam",
        ),
        (
            "moved-onto-another",
            "/events/0/moved/along",
            "piles_coincide",
        ),
        (
            "two-events-on-one-pile",
            "/events/1/stopped_short/pile",
            "relocation_event_twice",
        ),
        (
            "rock-with-stiffness",
            "/events/0/stopped_short/residual",
            "stiffness_on_rock",
        ),
    ] {
        let found = refused(&shown_refused(name));
        assert_eq!(found, [(pointer.to_owned(), code.to_owned())], "{name}");
    }
}

fn shown_refused(name: &str) -> Request {
    let mut all = crate::examples::requests::<PileRelocation>("refused").into_iter();
    request(&all.find(|(n, _)| n == name).expect("an example").1)
}
