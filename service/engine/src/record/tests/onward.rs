//! What the layout is told of a pile: which verdict tells it what, and that the request handed
//! on can be sent as it is.

use super::*;
use crate::examples::{request as example, requests};
use crate::quantity::{Again, Force, ForceUnit, In, LengthUnit, Presentation, System};
use crate::relocation::{PileRelocation, PileStoppedShort, RelocationEvent};

fn example_answer(name: &str) -> (Json, Answer<Outcome>) {
    let request: Json = serde_json::from_str(&example::<InstallationRecord>(name)).expect("JSON");
    let answer = answer(&request);
    (request, answer)
}

fn told(answer: &Answer<Outcome>) -> &RecordRelocationOutcome {
    answer.result.relocation.as_ref().expect("it was asked for")
}

fn stopped(answer: &Answer<Outcome>) -> &PileStoppedShort {
    match told(answer).event.as_deref() {
        Some(RelocationEvent::StoppedShort(event)) => event,
        other => panic!("{other:?}"),
    }
}

/// 20 ft of log whose last 3 ft have these torques, with 20 ft the greatest depth allowed.
fn ending(last: [f64; 3], more: Json) -> Json {
    let mut torques = GOOD;
    torques[14..17].copy_from_slice(&[2300.0, 2350.0, 2400.0]);
    torques[17..].copy_from_slice(&last);
    let deepest = json!({ "depths": { "maximum_tip_depth": q(20.0, "ft") }, "relocation": {} });
    with(with(linnet(&torques), deepest), more)
}

/// 5,500 ft lbf at 5.0 ft stand for 24.75 kip, and nothing of it may be counted on. The request
/// handed on is answered as it is.
#[test]
fn a_refusal_in_debris_leaves_nothing() {
    let (request, answer) = example_answer("linnet-c4-for-the-layout");
    assert_eq!(answer.verdict, Verdict::Reject);
    let capacity = answer.result.capacity.as_ref().expect("a capacity");
    assert!(capacity.indicative_only);
    let by_final = capacity.by_final_torque.and_then(|c| c.compression_design);
    let kip = by_final.expect("a capacity").get(ForceUnit::Kip);
    assert!((kip - 24.75).abs() < 1e-6, "{kip}");
    let event = stopped(&answer);
    assert_eq!(event.pile.as_str(), "C4");
    assert_eq!(event.residual, None);
    let depth = event.depth.expect("a depth").get(LengthUnit::Ft);
    assert!((depth - 5.0).abs() < 1e-9);
    assert_eq!(told(&answer).counts, PileCounts::Nothing);
    for code in [
        "record_obstruction",
        "record_refusal_short",
        "record_helix_below_frost",
    ] {
        assert!(
            told(&answer).withheld_for.iter().any(|c| c == code),
            "{code}"
        );
    }
    let next = answer.result.next_request.as_ref().expect("a request");
    assert_eq!(
        next.events,
        [told(&answer).event.clone().expect("an event").0]
    );
    let sent = request["relocation"]["layout"].clone();
    let sent: crate::layout::Request = serde_json::from_value(sent).expect("a layout");
    assert_eq!(next.layout, sent);
    // as it is printed and read by a stranger
    let form = Presentation::Printed(System::UsCustomary);
    let text = In(form, &answer.result.next_request).text().expect("JSON");
    let next: Call<crate::relocation::Request> = serde_json::from_str(&text).expect("a request");
    assert_eq!(next.request.layout, sent);
    next.request.validate().expect("within its ranges");
    let moved = run::<PileRelocation>(&next, Work::new(Trace::off(), None)).expect("an answer");
    assert_eq!(moved.verdict, Verdict::Reject);
    // without the layout the event alone, the same one
    let (_, alone) = example_answer("linnet-c4-event-alone");
    assert_eq!(told(&alone), told(&answer));
    assert_eq!(alone.result.next_request, None);
}

/// The last 3 ft have 2,550, 2,600 and 2,650 ft lbf, 2,600 in the mean: 2,600 x 9 / 2 = 11.7 kip
/// where 12.5 are asked for. It is short and nothing else, so that much may be counted on.
#[test]
fn a_torque_that_is_short_counts_for_what_it_is() {
    let (_, answer) = example_answer("linnet-e3-short-of-torque");
    assert_eq!(failed(&answer), ["record_torque"]);
    assert_eq!(answer.verdict, Verdict::Reject);
    assert_eq!(told(&answer).counts, PileCounts::ByTorque);
    assert!(told(&answer).withheld_for.is_empty());
    let event = stopped(&answer);
    // named as the layout knows it
    assert_eq!(event.pile.as_str(), "E3");
    let residual = event.residual.expect("a capacity");
    let kip = residual.compression.get(ForceUnit::Kip);
    assert!((kip - 11.7).abs() < 1e-9, "{kip}");
    // no tension was asked of it, so none was judged
    assert_eq!(residual.tension, Force::ZERO);
    assert!(answer.result.next_request.is_some());
}

/// With tension judged: the top helix stands 3 ft above the tip, at 17 ft, more than 12 x 1 ft;
/// the 3 ft above it read 2,300, 2,350 and 2,400 and ask for 2,777.8, which fails.
#[test]
fn tension_counts_only_where_its_rules_pass() {
    let tension = |kip: f64| json!({ "target": { "from_demand": { "demand": { "tension": q(kip, "kip") } } } });
    let answer = answer(&ending([2550.0, 2600.0, 2650.0], tension(3.0)));
    assert_eq!(
        failed(&answer),
        ["record_torque", "record_tension_top_torque"]
    );
    let residual = stopped(&answer).residual.expect("a capacity");
    assert_eq!(residual.tension, Force::ZERO);
    assert!((residual.compression.get(ForceUnit::Kip) - 11.7).abs() < 1e-9);
    // stronger ground around the top helix than below it
    let mut torques = GOOD;
    torques[12..].copy_from_slice(&[
        2800.0, 2850.0, 2900.0, 2900.0, 2850.0, 2700.0, 2700.0, 2650.0,
    ]);
    let deepest = json!({ "depths": { "maximum_tip_depth": q(20.0, "ft") }, "relocation": {} });
    let answer = super::answer(&with(with(linnet(&torques), deepest), tension(3.0)));
    assert_eq!(failed(&answer), ["record_torque"]);
    let residual = stopped(&answer).residual.expect("a capacity");
    // (2,700 + 2,700 + 2,650) / 3 x 9 / 3, the factor 3 for uplift of other causes than wind
    let kip = residual.tension.get(ForceUnit::Kip);
    assert!((kip - 8.05).abs() < 1e-6, "{kip}");
}

/// Accepted, provisional, or to be driven on: the layout is told nothing.
#[test]
fn only_a_rejected_pile_has_an_event() {
    let asked = json!({ "relocation": {} });
    for (request, verdict, counts) in [
        (linnet(&GOOD), Verdict::Accept, PileCounts::AsDesigned),
        (
            with(linnet(&GOOD), json!({ "ground": null })),
            Verdict::Provisional,
            PileCounts::OnceProven,
        ),
        (
            linnet(&GOOD[..17]),
            Verdict::Continue,
            PileCounts::OnceDeeper,
        ),
    ] {
        let answer = answer(&with(request, asked.clone()));
        assert_eq!(answer.verdict, verdict);
        assert_eq!(told(&answer).counts, counts);
        assert_eq!(told(&answer).event, None);
        assert!(told(&answer).withheld_for.is_empty());
        assert_eq!(answer.result.next_request, None);
    }
}

/// A torque that is short beside something that fails or is open counts for nothing.
#[test]
fn nothing_counts_beside_another_fault() {
    let short = [2550.0, 2600.0, 2650.0];
    for (more, code) in [
        (
            json!({ "position": { "off_line": q(4.0, "in") } }),
            "record_position_off_line",
        ),
        (
            json!({ "indicator": { "driven_on": "2027-09-14" } }),
            "record_calibration",
        ),
        (json!({ "ground": null }), "record_ground"),
        (json!({ "stop": "obstruction" }), "record_obstruction"),
        (
            json!({ "depths": { "fill_depth": q(18.0, "ft") } }),
            "record_helix_below_fill",
        ),
    ] {
        let answer = answer(&ending(short, more));
        assert_eq!(answer.verdict, Verdict::Reject, "{code}");
        assert_eq!(told(&answer).counts, PileCounts::Nothing, "{code}");
        assert_eq!(stopped(&answer).residual, None);
        assert!(
            told(&answer).withheld_for.iter().any(|c| c == code),
            "{code}"
        );
    }
    // the band of the gauge holds for accepted piles too
    let banded = ending(
        [2700.0; 3],
        json!({ "indicator": { "accuracy_ratio": 0.05 } }),
    );
    let answer = answer(&banded);
    assert!(
        answer
            .warnings
            .iter()
            .any(|w| w.code == "record_gauge_band")
    );
    assert_eq!(told(&answer).counts, PileCounts::ByTorque);
    // a stated torque stands for no capacity at the level of a layout
    let stated =
        json!({ "target": { "from_demand": null, "stated": { "torque": q(2778.0, "ft_lbf") } } });
    let answer = super::answer(&ending(short, stated));
    assert_eq!(failed(&answer), ["record_torque"]);
    assert_eq!(told(&answer).counts, PileCounts::Nothing);
    assert!(told(&answer).detail.contains("design basis"));
}

/// Asked for or not, all the rest of an answer is the same; an event is within its ranges.
#[test]
fn the_rest_of_the_answer_does_not_move() {
    let mut events = 0;
    for (name, text) in requests::<InstallationRecord>("") {
        let request: Json = serde_json::from_str(&text).expect("JSON");
        let plain = answer(&with(request.clone(), json!({ "relocation": null })));
        let pile = json!({ "relocation": { "pile": "a pile" } });
        let mut asked = answer(&with(with(request, json!({ "relocation": null })), pile));
        if let Some(Again(event)) = told(&asked).event.clone() {
            events += 1;
            assert_eq!(asked.verdict, Verdict::Reject, "{name}");
            event.validate().unwrap_or_else(|e| panic!("{name}: {e}"));
        }
        asked.result.relocation = None;
        asked.methods.retain(|m| m.id != "record_onward");
        asked.provenance = plain.provenance.clone();
        assert_eq!(asked, plain, "{name}");
    }
    assert!(events > 5, "{events}");
}

/// Faults stand at their place in the request of the record.
#[test]
fn faults_of_the_layout_stand_at_their_place() {
    let (request, _) = example_answer("linnet-c4-for-the-layout");
    for (more, pointer, code) in [
        (json!({ "label": null }), "/relocation", "missing_member"),
        (
            json!({ "label": "Z9" }),
            "/label",
            "relocation_unknown_pile",
        ),
        (
            json!({ "relocation": { "pile": "Z9" } }),
            "/relocation/pile",
            "relocation_unknown_pile",
        ),
        (
            json!({ "relocation": { "layout": { "pile_capacity": { "level": "factored" } } } }),
            "/relocation/layout/pile_capacity/level",
            "basis_mixed",
        ),
    ] {
        let refusal = refused(&with(request.clone(), more));
        let found: Vec<_> = refusal
            .issues
            .iter()
            .map(|i| (i.pointer.as_str(), &*i.code))
            .collect();
        assert_eq!(found, [(pointer, code)]);
    }
}
