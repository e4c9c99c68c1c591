//! Every example request under `openapi/examples/length-forecast`: those that must be answered
//! are, those that must be refused are refused where they should be.

use super::*;
use crate::contract::Verdict;
use crate::examples::{refused_as, request as example, requests, through};

fn shown(name: &str) -> Answer<Outcome> {
    let text = example::<LengthForecast>(name);
    through::<LengthForecast>(&text, Trace::off()).unwrap().1
}

#[test]
fn every_example_is_answered_and_printed() {
    for (name, text) in requests::<LengthForecast>("") {
        let (call, answer) = through::<LengthForecast>(&text, Trace::on())
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        let sent = call.request.pieces.iter().flat_map(|p| &p.extensions);
        let judged = sent.clone().any(|e| e.available_count.is_some());
        assert_eq!(answer.verdict != Verdict::NotAsked, judged, "{name}");
        let result = &answer.result;
        assert_eq!(result.piles.len(), call.request.planned.len(), "{name}");
        for pile in &result.piles {
            assert!(
                pile.band_90.from >= pile.minimum_depth,
                "{name} {}",
                pile.label
            );
            assert_eq!(pile.pieces.is_some(), call.request.pieces.is_some());
        }
        let total = result.total_depth;
        assert!(total.p90_independent <= total.p90_by_model, "{name}");
        assert!(total.p90_by_model <= total.p90_fully_correlated, "{name}");
        assert!(
            !answer.cautions.is_empty() && answer.methods.len() >= 3,
            "{name}"
        );
    }
}

#[test]
fn the_named_examples_say_what_they_should() {
    for (name, expected) in [
        ("linnet", Verdict::NotAsked),
        ("pieces-on-the-truck", Verdict::Accept),
        ("pieces-run-out", Verdict::Reject),
    ] {
        assert_eq!(shown(name).verdict, expected, "{name}");
    }
    for (name, code) in [
        ("stated-depth-contradicted", "forecast_prior_contradicted"),
        ("one-place-missing", "forecast_positions_missing"),
        ("logs-ended-early", "forecast_many_logs_not_met"),
        ("logs-on-one-side", "forecast_logs_on_one_side"),
        ("logs-on-one-side", "forecast_beyond_logs"),
        ("three-logs", "forecast_few_logs"),
        ("log-begins-deep", "forecast_log_not_used"),
    ] {
        assert!(warns(&shown(name), code), "{name} {code}");
    }
    let linnet = shown("linnet").result;
    assert!(linnet.uses_positions && linnet.torques[0].met_count == 7);
    assert_eq!(shown("two-torques").result.torques.len(), 2);
    assert!(!shown("without-places").result.uses_positions);
    let driven = shown("pile-being-driven").result;
    let own = driven
        .piles
        .iter()
        .find(|p| p.label.as_str() == "E3")
        .unwrap();
    near(own.driven_depth.unwrap().si(), 22.0 * 0.3048, 1e-12);
    assert!(own.band_90.from > own.driven_depth.unwrap());
    let debris = shown("stopped-by-obstruction").result;
    assert_eq!(debris.torques[0].logs[7].status, LogStatus::NotUsable);
}

/// 13 logs placed as the quantiles of a normal distribution about 19 ft with 3 ft (standard
/// deviation 2.6 ft): 24 piles come to 456 ft, and the totals stand in the order of what the
/// piles have in common.
#[test]
fn twenty_four_piles_stand_between_both_totals() {
    let total = shown("twenty-four-piles").result.total_depth;
    let ft = |l: crate::quantity::Length| l.si() / 0.3048;
    near(ft(total.mean), 456.0, 0.5);
    assert!((470.0..482.0).contains(&ft(total.p90_independent)));
    assert!((535.0..560.0).contains(&ft(total.p90_fully_correlated)));
    assert!(total.p90_independent < total.p90_by_model);
    assert!(total.p90_by_model < total.p90_fully_correlated);
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    // name, stage, a code of the fault or a part of the message
    let expected = [
        ("confidence-too-high", "values", "range"),
        ("extension-twice", "physics", "forecast_extension_twice"),
        ("label-twice", "physics", "duplicate_label"),
        ("lead-too-short", "physics", "forecast_lead_too_short"),
        ("log-not-downward", "physics", "forecast_log_not_downward"),
        ("no-logs", "physics", "forecast_too_few_logs"),
        ("no-piles", "lengths", "list_too_short"),
        ("one-row", "lengths", "list_too_short"),
        (
            "pieces-do-not-reach",
            "physics",
            "forecast_pieces_do_not_reach",
        ),
        ("pile-complete", "physics", "forecast_pile_complete"),
        ("prior-missing", "shape", "missing field `prior`"),
        (
            "prior-of-two-torques",
            "physics",
            "forecast_prior_of_one_torque",
        ),
        ("prior-without-basis", "values", "basis"),
        ("too-few-logs", "physics", "forecast_log_not_usable"),
        ("too-many-extensions", "lengths", "list_too_long"),
        ("too-many-torques", "physics", "forecast_too_many_torques"),
        ("torque-missing", "physics", "missing_member"),
        ("unknown-record", "shape", "unknown variant `refusal`"),
    ];
    refused_as::<LengthForecast>(&expected);
    let files = requests::<LengthForecast>("refused");
    let found = files.iter().find(|(name, _)| name == "too-few-logs");
    let mut request: Json = serde_json::from_str(&found.unwrap().1).unwrap();
    request.as_object_mut().unwrap().remove("output_units");
    let told: Vec<_> = refused(request);
    let expected = [
        ("/installed", "forecast_too_few_logs"),
        ("/installed/2", "forecast_log_not_usable"),
        ("/installed/3", "forecast_log_not_usable"),
        ("/installed/4", "forecast_log_not_usable"),
    ];
    assert_eq!(
        told,
        expected.map(|(at, code)| (at.to_owned(), code.to_owned()))
    );
}
