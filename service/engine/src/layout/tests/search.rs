//! Searched piles: the worked plans, the published case, and what the answer claims.

use super::{FT, LBF, answer, answered, close, example};
use crate::contract::{CheckStatus, Verdict};
use crate::layout::{PlacedBy, ProofKind};

/// ST-LAY-1 (computed by exhaustive enumeration of 13,300 layouts with 6 piles and all 10
/// with 5): 6 piles at least, although spacing and load ask for 5; lowest greatest
/// reaction 22.1394 kip.
#[test]
fn the_published_minimum_is_found_and_proven() {
    let a = answered("st-lay-1");
    let report = a.result.search.as_ref().unwrap();
    assert_eq!(report.how.len(), 1);
    assert_eq!(report.how[0].by, ProofKind::Enumeration);
    assert!(
        report.how[0]
            .detail
            .starts_with("at least 5 piles by spacing and 5 by load")
    );
    assert_eq!((report.lower_bound_count, report.gap_count), (6, 0));
    assert!(report.feasible && report.proven_minimal && report.utilisation_searched_exhaustively);
    assert_eq!(a.result.pile_count, 6);
    let most = a
        .result
        .piles
        .iter()
        .map(|p| p.rigid.max.si())
        .fold(0.0, f64::max);
    close(most / (1e3 * LBF), 22.1394, 1e-5);
    close(
        a.result.max_utilisation_ratio.unwrap(),
        22.1394 / 25.0,
        1e-5,
    );
    assert_eq!(a.verdict, Verdict::Accept);
    assert_eq!(a.result.piles[0].placed_by, PlacedBy::ForcedPoint);
    let over = a.checks.iter().find(|c| c.id == "pile_overhang").unwrap();
    assert_eq!(over.status, CheckStatus::Pass);
}

/// The worked plan: 24 piles in all with spans of at most 10 ft, six on line A, none
/// above 12.5 kip. Six at 0, 7.25, 13.75, 22.25, 28.75, 36 ft give 11,853 lb; the search
/// must not be worse.
#[test]
fn linnet_needs_24_piles() {
    let a = answered("linnet-search");
    let report = a.result.search.as_ref().unwrap();
    assert!(report.feasible && report.proven_minimal);
    assert_eq!((a.result.pile_count, report.lower_bound_count), (24, 24));
    assert_eq!(a.verdict, Verdict::Accept);
    for line in ["A", "C"] {
        let own: Vec<_> = a
            .result
            .piles
            .iter()
            .filter(|p| p.label.starts_with(line))
            .collect();
        assert_eq!(own.len(), 6);
        let proof = report.how.iter().find(|h| h.beams == [line]).unwrap();
        assert_eq!(
            (proof.by, proof.lower_bound_count),
            (ProofKind::Enumeration, 6)
        );
        let most = own
            .iter()
            .map(|p| p.rigid.max.si() / LBF)
            .fold(0.0, f64::max);
        assert!(most <= 11_853.5, "{most}");
        for pair in own.windows(2) {
            let span = (pair[1].at.x.si() - pair[0].at.x.si()) / FT;
            assert!((3.0 - 1e-9..=10.0 + 1e-9).contains(&span), "{span}");
            let quarters = pair[1].at.x.si() / (0.25 * FT);
            assert!((quarters - quarters.round()).abs() < 1e-9);
        }
    }
    let corner = a
        .result
        .piles
        .iter()
        .filter(|p| p.placed_by == PlacedBy::Corner)
        .count();
    let junction = a
        .result
        .piles
        .iter()
        .filter(|p| p.placed_by == PlacedBy::Junction)
        .count();
    assert_eq!((corner, junction), (6, 4));
    let mut names: Vec<&str> = a.result.piles.iter().map(|p| p.label.as_str()).collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), 24);
}

/// With spans of up to 14 ft the middle of the 14 ft line needs no pile and lines W and E
/// less; the west junction, though, then carries 1.25 x 13 ft x 893.75 lb/ft = 14,523 lb
/// from line W alone, so W keeps one pile more than it needs for itself: 22 piles, one
/// above the sum of the runs, and proven.
#[test]
fn linnet_with_longer_spans_needs_22() {
    let mut call = example("linnet-search");
    if let crate::layout::PilePlacement::Search(s) = &mut call.request.piles {
        s.max_spacing = crate::quantity::Length::from_si(14.0 * FT);
    }
    let a = answer(&call).unwrap();
    let report = a.result.search.as_ref().unwrap();
    assert!(report.feasible && report.proven_minimal);
    assert_eq!((a.result.pile_count, report.gap_count), (22, 0));
    let shared = report
        .how
        .iter()
        .find(|h| h.by == ProofKind::SharedPile)
        .unwrap();
    assert_eq!(shared.beams, ["B", "W"]);
    assert_eq!(shared.lower_bound_count, 22);
}

#[test]
fn a_plan_that_no_layout_can_carry_is_a_result() {
    let a = answered("too-weak-piles");
    assert_eq!(a.verdict, Verdict::Reject);
    let report = a.result.search.as_ref().unwrap();
    assert!(!report.feasible && !report.proven_minimal);
    assert_eq!(report.gap_count, 0);
    assert!(
        report.how[0]
            .detail
            .contains("no layout with up to 9 piles was found that keeps the limits"),
        "{}",
        report.how[0].detail
    );
    assert!(
        a.verdict_reasons
            .iter()
            .all(|r| r.code == "pile_compression")
    );
}

/// Same limits, other order and direction of beams: the same piles.
#[test]
fn searching_does_not_depend_on_order_or_direction() {
    let call = example("linnet-search");
    let mut turned = call.clone();
    turned.request.beams.reverse();
    for beam in &mut turned.request.beams {
        beam.points.reverse();
    }
    let (a, b) = (answer(&call).unwrap(), answer(&turned).unwrap());
    assert_eq!(a.result.piles, b.result.piles);
    assert_eq!(
        a.result.search.as_ref().unwrap().work_count,
        b.result.search.as_ref().unwrap().work_count
    );
}

/// A stop from outside ends the search without an answer.
#[test]
fn the_search_can_be_stopped() {
    let stop = std::sync::Arc::new(std::sync::atomic::AtomicBool::new(true));
    let work = crate::contract::Work::new(crate::trace::Trace::off(), Some(stop));
    let refusal =
        crate::contract::run::<crate::layout::PileLayout>(&example("linnet-search"), work);
    assert!(refusal.unwrap_err().interrupted);
}

/// On springs the search judges the worse of both models.
#[test]
fn springs_are_part_of_the_search() {
    let mut call = example("linnet-search");
    call.request.pile_stiffness = example("linnet-springs").request.pile_stiffness;
    let rigidity = example("linnet-springs").request.beams[0].flexural_rigidity;
    for beam in &mut call.request.beams {
        beam.flexural_rigidity = rigidity;
    }
    let a = answer(&call).unwrap();
    let report = a.result.search.as_ref().unwrap();
    println!(
        "{} {:?} {:?}",
        a.result.pile_count, a.result.max_utilisation_ratio, report
    );
    assert!(report.feasible);
    assert_eq!(a.verdict, Verdict::Accept);
    assert!(report.lower_bound_count >= 24);
    assert_eq!(report.proven_minimal, report.gap_count == 0);
    assert!(a.result.piles.iter().all(|p| p.spring.is_some()));
}

/// The plan with every length in inches, and mirrored: the same piles, or as many with the
/// same highest utilisation.
#[test]
fn units_and_mirrors_find_the_same() {
    let text = std::fs::read_to_string(super::folder().join("linnet-search.json")).unwrap();
    let mut inches: serde_json::Value = serde_json::from_str(&text).unwrap();
    convert(&mut inches);
    let inches: crate::contract::Call<crate::layout::Request> =
        serde_json::from_value(inches).unwrap();
    let a = answered("linnet-search");
    let b = answer(&inches).unwrap();
    assert_eq!(a.result.pile_count, b.result.pile_count);
    for (p, q) in a.result.piles.iter().zip(&b.result.piles) {
        assert_eq!(p.label, q.label);
        close(q.rigid.max.si(), p.rigid.max.si(), 1e-9);
        let (dx, dy) = (p.at.x.si() - q.at.x.si(), p.at.y.si() - q.at.y.si());
        assert!(dx.abs() < 1e-9 && dy.abs() < 1e-9);
    }
    let mut call = example("linnet-search");
    for point in call
        .request
        .beams
        .iter_mut()
        .flat_map(|b| b.points.iter_mut())
    {
        point.x = -point.x;
    }
    let c = answer(&call).unwrap();
    assert_eq!(a.result.pile_count, c.result.pile_count);
    let (u, v) = (
        a.result.max_utilisation_ratio,
        c.result.max_utilisation_ratio,
    );
    close(v.unwrap(), u.unwrap(), 1e-9);
}

fn convert(value: &mut serde_json::Value) {
    match value {
        serde_json::Value::Object(map) => {
            if map.get("unit").is_some_and(|u| u == "ft") {
                let feet = map["value"].as_f64().unwrap();
                map["value"] = serde_json::json!(feet * 12.0);
                map["unit"] = serde_json::json!("in");
            }
            map.values_mut().for_each(convert);
        }
        serde_json::Value::Array(list) => list.iter_mut().for_each(convert),
        _ => {}
    }
}

/// The working of a search shows the load bound of the plan.
#[test]
fn a_search_shows_its_bound() {
    let mut call = example("st-lay-1");
    call.options.include = Some(vec![crate::contract::Include::Steps]);
    let steps = answer(&call).unwrap().steps.unwrap();
    let n = steps.iter().find(|s| s.symbol == "n").unwrap();
    // 40 ft x 2.5 kip/ft + 10 kip over 25 kip
    close(n.shown.value(), 110.0 / 25.0, 1e-12);
    let has = |symbol: &str| steps.iter().any(|s| s.symbol == symbol);
    assert!(has("W_i") && has("W") && has("R") && has("d"));
}
