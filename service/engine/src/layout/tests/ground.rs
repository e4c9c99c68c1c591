//! Types of pile, soil zones, keep-outs and the spacing of helices on worked plans.

use super::{FT, LBF, answer, answered, close, example};
use crate::contract::{Answer, CheckStatus, Verdict};
use crate::layout::{Outcome, PilePlacement, ProofKind};
use crate::quantity::{Length, LengthUnit};

const IN: f64 = FT / 12.0;

fn far(dx: f64, dy: f64) -> f64 {
    (dx * dx + dy * dy).sqrt()
}

fn checks<'a>(
    a: &'a Answer<Outcome>,
    id: &'a str,
) -> impl Iterator<Item = &'a crate::contract::Check> + 'a {
    a.checks.iter().filter(move |c| c.id == id)
}

/// Rows 14 in apart and 36 in between centres: the stagger is at least
/// root(36^2 - 14^2) = 33.166 in, so 33.25 passes and 33.125 does not.
#[test]
fn two_rows_keep_three_diameters() {
    let a = answered("two-rows");
    assert_eq!(a.verdict, Verdict::Accept);
    let spacing: Vec<_> = checks(&a, "pile_spacing").collect();
    assert_eq!(spacing.len(), 4);
    for c in &spacing {
        assert_eq!(c.status, CheckStatus::Pass);
        close(c.demand.as_ref().unwrap().value(), 36.0 * IN, 1e-12);
        let d = (33.25f64 * 33.25 + 14.0 * 14.0).sqrt() * IN;
        close(c.capacity.as_ref().unwrap().value(), d, 1e-12);
    }
    assert!(
        a.defaults.iter().any(|d| d.name == "group_spacing_ratio"),
        "the three diameters are told"
    );
    let b = answered("two-rows-too-near");
    assert_eq!(b.verdict, Verdict::Reject);
    assert!(checks(&b, "pile_spacing").all(|c| c.status == CheckStatus::Fail));
    // the caller's own distance counts where it is greater, and says so
    let mut call = example("two-rows");
    if let PilePlacement::Given(g) = &mut call.request.piles {
        g.min_spacing = Some(Length::new(36.25, LengthUnit::In));
    }
    let c = answer(&call).unwrap();
    let first = checks(&c, "pile_spacing").next().unwrap();
    assert_eq!(
        (first.status, first.source.id.as_ref()),
        (CheckStatus::Fail, "caller")
    );
}

/// A wall with three types: 8, 12.5 and 18 kip at 310, 390 and 545.
#[test]
fn least_cost_is_proven_and_adds_up() {
    let a = answered("pile-types-least-cost");
    let report = a.result.search.as_ref().unwrap();
    let cost = report.cost.as_ref().unwrap();
    assert!(report.feasible && report.proven_minimal, "{report:?}");
    assert_eq!(cost.gap_cost.value, 0.0);
    assert_eq!(cost.total_cost.currency.as_deref(), Some("USD"));
    let counts = a.result.type_counts.as_ref().unwrap();
    let labels: Vec<&str> = counts.iter().map(|c| c.pile_type.as_str()).collect();
    assert_eq!(labels, ["light", "standard", "heavy"]);
    let sum: f64 = counts
        .iter()
        .zip([310.0, 390.0, 545.0])
        .map(|(c, each)| f64::from(c.pile_count) * each)
        .sum();
    assert_eq!(cost.total_cost.value, sum);
    assert_eq!(a.result.total_cost.as_ref().unwrap().value, sum);
    let piles: u32 = counts.iter().map(|c| c.pile_count).sum();
    assert_eq!(piles, a.result.pile_count);
    // every pile has the first type that carries it
    for p in &a.result.piles {
        let kip = p.compression.demand.si() / (1e3 * LBF);
        let want = match kip {
            k if k <= 8.0 => "light",
            k if k <= 12.5 => "standard",
            _ => "heavy",
        };
        assert_eq!(p.pile_type.as_deref(), Some(want), "{kip}");
    }
    assert!(
        report
            .how
            .iter()
            .any(|h| h.by == ProofKind::CostEnumeration)
    );
    assert_eq!(a.verdict, Verdict::Accept);
    // the order of the list changes nothing but the order of the counts
    let mut call = example("pile-types-least-cost");
    call.request.pile_types.as_mut().unwrap().types.reverse();
    let b = answer(&call).unwrap();
    assert_eq!(b.result.piles, a.result.piles);
    // fewest piles may cost more, never less
    let mut call = example("pile-types-least-cost");
    if let PilePlacement::Search(s) = &mut call.request.piles {
        s.objective = None;
    }
    let c = answer(&call).unwrap();
    assert!(c.result.pile_count <= a.result.pile_count);
    assert!(c.result.total_cost.as_ref().unwrap().value >= sum);
    assert!(c.result.search.as_ref().unwrap().cost.is_none());
}

/// 9 kip east of a slanted border, 12.5 kip west of it.
#[test]
fn piles_carry_what_their_ground_lets_them() {
    let a = answered("soil-zones");
    let report = a.result.search.as_ref().unwrap();
    assert!(report.feasible && report.proven_minimal);
    let mut soft = 0;
    for p in &a.result.piles {
        // the border runs from (20, -6) to (26, 30): x = 21 at y = 0
        let inside = p.at.x.si() > 21.0 * FT;
        soft += usize::from(inside);
        let check = checks(&a, "pile_compression")
            .find(|c| c.subject.as_ref().unwrap().label == p.label)
            .unwrap();
        let want = if inside { 9.0 } else { 12.5 };
        close(
            check.capacity.as_ref().unwrap().value(),
            want * 1e3 * LBF,
            1e-12,
        );
        let zones = p.soil_zones.as_ref().map(|z| z[0].as_str());
        assert_eq!(zones, inside.then_some("brick fill"));
    }
    assert!(soft >= 3);
    // without the zone fewer piles do
    let mut call = example("soil-zones");
    call.request.soil_zones = None;
    assert!(answer(&call).unwrap().result.pile_count < a.result.pile_count);
    // a pile on the border has the lower capacity
    let mut call = example("soil-zones");
    let place = |x: f64| {
        serde_json::json!({"at": {
        "x": {"value": x, "unit": "ft"}, "y": {"value": 0, "unit": "ft"}}})
    };
    let all: Vec<_> = [0.0, 7.0, 14.0, 21.0, 28.0, 36.0]
        .into_iter()
        .map(place)
        .collect();
    call.request.piles =
        serde_json::from_value(serde_json::json!({"given": {"positions": all}})).unwrap();
    let b = answer(&call).unwrap();
    let capacities: Vec<f64> = checks(&b, "pile_compression")
        .map(|c| (c.capacity.as_ref().unwrap().value() / LBF).round())
        .collect();
    assert_eq!(
        capacities,
        [12_500.0, 12_500.0, 12_500.0, 9_000.0, 9_000.0, 9_000.0]
    );
}

/// No pile stands nearer than the clearance to any of five things, or within 29 to 32 ft.
#[test]
fn piles_keep_away() {
    let a = answered("keep-outs");
    let report = a.result.search.as_ref().unwrap();
    assert!(report.feasible && report.proven_minimal, "{report:?}");
    assert_eq!(a.verdict, Verdict::Accept);
    assert!(checks(&a, "keep_out").count() >= a.result.piles.len());
    let to_segment = |p: (f64, f64), a: (f64, f64), b: (f64, f64)| {
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let t = (((p.0 - a.0) * dx + (p.1 - a.1) * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
        far(p.0 - a.0 - t * dx, p.1 - a.1 - t * dy)
    };
    for p in &a.result.piles {
        let (x, y) = (p.at.x.si() / FT, p.at.y.si() / FT);
        let pipe = [(13.0, -10.0), (14.4, 0.0), (16.0, 12.0)];
        let pipe = to_segment((x, y), pipe[0], pipe[1]).min(to_segment((x, y), pipe[1], pipe[2]));
        assert!(pipe >= 1.5 - 1e-9, "pipe: {x} {y}");
        assert!(
            far(x - 22.0, y - 0.5) - 1.25 >= 0.75 - 1e-9,
            "boulder: {x} {y}"
        );
        assert!(far(x + 3.0, y - 9.0) - 2.0 >= 2.5 - 1e-9, "tree: {x} {y}");
        assert!(
            x > 0.0 || !(15.0 + 1e-9..=19.0 - 1e-9).contains(&y),
            "cistern: {x} {y}"
        );
        assert!(x <= 35.0 + 1e-9, "east line: {x} {y}");
        assert!(
            y > 0.0 || !(29.0 + 1e-9..32.0 - 1e-9).contains(&x),
            "stretch: {x} {y}"
        );
    }
    let nearest = a.result.spacing.nearest_piles.as_ref().unwrap();
    assert!(nearest.distance.si() >= 3.0 * FT * (1.0 - 1e-9));
    for c in checks(&a, "pile_spacing") {
        close(c.demand.as_ref().unwrap().value(), 3.0 * FT, 1e-12);
    }
}

/// Types of given piles: told, found, and a pile with capacities of its own.
#[test]
fn given_piles_take_types() {
    let a = answered("given-types");
    let types: Vec<Option<&str>> = a
        .result
        .piles
        .iter()
        .map(|p| p.pile_type.as_deref())
        .collect();
    assert_eq!(types[1], Some("350+400"), "told");
    assert_eq!(types[4], None, "of its own");
    // the ends carry less and take the cheaper type
    assert_eq!(types[0], Some("300+350"));
    assert_eq!(types[2], Some("350+400"));
    let zones: Vec<bool> = a
        .result
        .piles
        .iter()
        .map(|p| p.soil_zones.is_some())
        .collect();
    assert_eq!(zones, [false, false, false, true, true]);
    let counted: u32 = a
        .result
        .type_counts
        .as_ref()
        .unwrap()
        .iter()
        .map(|c| c.pile_count)
        .sum();
    assert_eq!(counted, 4);
    // the pipe passes 4.48 m from the west end; P13 stands 0.32 m from it
    let failed: Vec<_> = checks(&a, "keep_out")
        .filter(|c| c.status == CheckStatus::Fail)
        .collect();
    assert_eq!(failed.len(), 1);
    assert_eq!(failed[0].subject.as_ref().unwrap().label, "P13");
    let d = 0.32 * 10.0 / (0.7f64 * 0.7 + 100.0).sqrt();
    close(failed[0].capacity.as_ref().unwrap().value(), d, 1e-9);
    assert_eq!(a.verdict, Verdict::Reject);
    assert!(a.result.piles.iter().all(|p| p.spring.is_some()));
}

/// What bars a forced point, a beam end or a stretch is named with its distance.
#[test]
fn refusals_name_what_bars_and_by_how_much() {
    let refused = |name: &str| {
        let issues = answer(&example(&format!("refused/{name}")))
            .unwrap_err()
            .issues;
        issues
            .into_iter()
            .map(|i| i.detail.to_string())
            .collect::<Vec<_>>()
    };
    let forced = refused("forced-point-barred");
    assert_eq!(forced.len(), 1);
    assert!(
        forced[0].contains("sewer (lateral)") && forced[0].contains("0.1524 m"),
        "{forced:?}"
    );
    let end = refused("beam-end-barred");
    // the nearest place is 1.5 ft from the end
    assert!(
        end[0].contains("sewer") && end[0].contains("0.4572 m"),
        "{end:?}"
    );
    let wide = refused("pipe-too-wide");
    // from 12 to 24 ft: 12 ft, 2 ft above 10 ft
    assert!(
        wide[0].contains("sewer") && wide[0].contains("0.6096 m"),
        "{wide:?}"
    );
    // a beam that is none hides nothing of the rest
    let mut call = example("refused/zones-overlap");
    call.request.beams[0].points[1] = call.request.beams[0].points[0];
    if let PilePlacement::Search(s) = &mut call.request.piles {
        s.min_spacing = None;
    }
    let issues = answer(&call).unwrap_err().issues;
    let codes: Vec<&str> = issues.iter().map(|i| i.code.as_ref()).collect();
    assert_eq!(
        codes,
        [
            "beam_segment_zero_length",
            "min_spacing_needed",
            "zones_overlap"
        ]
    );
    assert_eq!(refused("forbidden-stretch-off-beam").len(), 3);
    assert_eq!(refused("zone-capacities-differ").len(), 2);
    assert_eq!(refused("area-crosses-itself").len(), 2);
}
