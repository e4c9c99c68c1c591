//! Corners and junctions without a pile, layouts that mirror, limits that give way, and
//! searches that are too large to finish.

use super::{FT, answer, answered, close, example};
use crate::contract::{Call, CheckStatus, Verdict};
use crate::layout::{
    JunctionPiles, PilePlacement, PileSearch, ProofKind, RelaxedLimit, Request, SymmetryReason,
};
use crate::quantity::{Force, Length};

fn search(call: &mut Call<Request>) -> &mut PileSearch {
    match &mut call.request.piles {
        PilePlacement::Search(s) => s,
        PilePlacement::Given(_) => panic!("no search"),
    }
}

/// The boulder under the south-west corner bars all places within 2.5 ft of it. Piles stand
/// on both sides, at most the overhang of 3 ft away, and the two tips hold each other.
#[test]
fn a_corner_on_rock_is_bridged() {
    let a = answered("rock-at-the-corner");
    let report = a.result.search.as_ref().unwrap();
    assert!(report.feasible);
    assert_eq!(a.verdict, Verdict::Accept);
    let bare = report.without_pile.as_ref().unwrap();
    assert_eq!(bare.len(), 1);
    assert_eq!((bare[0].x.si(), bare[0].y.si()), (0.0, 0.0));
    let near = |p: &&crate::layout::LayoutPile| {
        let (x, y) = (p.at.x.si() / FT, p.at.y.si() / FT);
        let d = (x * x + y * y).sqrt();
        assert!(d >= 2.5 - 1e-9, "{d}");
        d <= 3.0 + 1e-9
    };
    let beside: Vec<_> = a.result.piles.iter().filter(near).collect();
    assert_eq!(beside.len(), 2, "one on each side");
    // as many as with the corner, of which 23 at least are proven
    assert_eq!(a.result.pile_count, 24);
    assert_eq!(report.lower_bound_count, 23);
    assert!(report.how.iter().any(|h| h.by == ProofKind::WorkLimit));
    assert!(report.lower_bound_count <= a.result.pile_count);
    assert_eq!(
        report.proven_minimal,
        report.lower_bound_count == a.result.pile_count
    );
}

/// Beams that end on one that goes on need no pile there.
#[test]
fn junctions_without_a_pile_save_piles() {
    let a = answered("junction-free");
    let report = a.result.search.as_ref().unwrap();
    assert!(report.feasible && report.proven_minimal, "{report:?}");
    assert_eq!(a.verdict, Verdict::Accept);
    assert!(report.without_pile.is_some());
    let mut with = example("junction-free");
    search(&mut with).junction_piles = Some(JunctionPiles::Required);
    let b = answer(&with).unwrap();
    let other = b.result.search.as_ref().unwrap();
    assert!(other.feasible && other.without_pile.is_none());
    assert!(a.result.pile_count < b.result.pile_count);
    // the order and the direction of beams make no difference
    let mut turned = example("junction-free");
    turned.request.beams.reverse();
    for beam in &mut turned.request.beams {
        beam.points.reverse();
    }
    let c = answer(&turned).unwrap();
    assert_eq!(a.result.piles, c.result.piles);
    let work = |a: &crate::contract::Answer<crate::layout::Outcome>| {
        a.result.search.as_ref().unwrap().work_count
    };
    assert_eq!(work(&a), work(&c));
}

#[test]
fn the_plan_of_both_halves_mirrors() {
    let a = answered("symmetric");
    let told = a.result.search.as_ref().unwrap().symmetry.as_ref().unwrap();
    assert!(told.symmetric, "{told:?}");
    close(told.through.y.si(), 13.0 * FT, 1e-12);
    let mut own: Vec<(i64, i64)> = Vec::new();
    let mut image: Vec<(i64, i64)> = Vec::new();
    for p in &a.result.piles {
        let mm = |v: f64| (v * 1e6).round() as i64;
        own.push((mm(p.at.x.si()), mm(p.at.y.si())));
        image.push((mm(p.at.x.si()), mm(26.0 * FT - p.at.y.si())));
    }
    own.sort_unstable();
    image.sort_unstable();
    assert_eq!(own, image);
    assert_eq!(a.result.pile_count, 24);
    // one more load on one side and it mirrors no more
    let mut call = example("symmetric");
    let load = &mut call.request.beams[0].line_loads.as_mut().unwrap()[0].load;
    *load = *load * 1.01;
    let b = answer(&call).unwrap();
    let told = b.result.search.as_ref().unwrap().symmetry.as_ref().unwrap();
    assert_eq!(
        (told.symmetric, told.reason),
        (false, SymmetryReason::PlanNotSymmetric)
    );
    assert!(told.detail.contains("beam A"), "{}", told.detail);
}

/// Five piles under a strip of 10.1 m have no middle place on whole half metres; under one
/// of 10 m they have.
#[test]
fn the_staking_increment_can_forbid_symmetry() {
    let strip = |length: f64| {
        let mut call = example("sizerin-search");
        call.request.beams.truncate(1);
        call.request.beams[0].points[1].x = Length::from_si(length);
        let s = search(&mut call);
        s.snap = Length::from_si(0.5);
        s.symmetry =
            serde_json::from_value(serde_json::json!({"direction": {"value": 90, "unit": "deg"}}))
                .unwrap();
        answer(&call).unwrap()
    };
    let told = |a: &crate::contract::Answer<crate::layout::Outcome>| {
        a.result.search.as_ref().unwrap().symmetry.clone().unwrap()
    };
    let coarse = told(&strip(10.1));
    assert_eq!(
        (coarse.symmetric, coarse.reason),
        (false, SymmetryReason::NoneKeepsTheLimits)
    );
    assert!(told(&strip(10.0)).symmetric);
}

/// What is told to give way does, and what is called exact is.
#[test]
fn a_plan_that_cannot_be_carried_tells_what_must_give() {
    let call = example("too-weak-piles");
    let a = answer(&call).unwrap();
    let why = a
        .result
        .search
        .as_ref()
        .unwrap()
        .infeasible
        .as_ref()
        .unwrap();
    assert_eq!(why.check, "pile_compression");
    close(
        why.utilisation_ratio.unwrap(),
        a.result.max_utilisation_ratio.unwrap(),
        1e-12,
    );
    assert!(!why.relaxations.is_empty());
    let by = |l: RelaxedLimit| why.relaxations.iter().find(|r| r.limit == l);
    let load = by(RelaxedLimit::PileCompression).expect("stronger piles do");
    assert!(load.to.value() > load.from.value());
    for r in &why.relaxations {
        let with = |value: f64| {
            let mut call = call.clone();
            let capacity = call.request.pile_capacity.as_mut().unwrap();
            match r.limit {
                RelaxedLimit::PileCompression => capacity.compression = Force::from_si(value),
                RelaxedLimit::PileTension => capacity.tension = Force::from_si(value),
                RelaxedLimit::MaxSpacing => search(&mut call).max_spacing = Length::from_si(value),
                RelaxedLimit::MinSpacing => {
                    search(&mut call).min_spacing = Some(Length::from_si(value));
                }
                RelaxedLimit::MaxOverhang => {
                    search(&mut call).max_overhang = Some(Length::from_si(value));
                }
                RelaxedLimit::BeamStrength => panic!("no strength was sent"),
            }
            answer(&call).unwrap()
        };
        let b = with(r.to.value());
        assert!(b.result.search.as_ref().unwrap().feasible, "{r:?}");
        assert_eq!(b.result.pile_count, r.pile_count);
        assert!(b.checks.iter().all(|c| c.status != CheckStatus::Fail));
        if r.exact {
            let nearer = match r.limit {
                RelaxedLimit::PileCompression | RelaxedLimit::PileTension => {
                    r.to.value() * (1.0 - 3e-6)
                }
                RelaxedLimit::MinSpacing => r.to.value() + 0.25 * FT,
                _ => r.to.value() - 0.25 * FT,
            };
            let c = with(nearer);
            assert!(!c.result.search.as_ref().unwrap().feasible, "{r:?}");
        }
    }
}

/// More open junctions than all ways can be tried for: an answer with bound and gap.
#[test]
fn a_search_over_its_work_tells_bound_and_gap() {
    let mut call = example("linnet-search");
    search(&mut call).junction_piles = Some(JunctionPiles::WhereNeeded);
    let a = answer(&call).unwrap();
    let report = a.result.search.as_ref().unwrap();
    assert!(report.feasible && !report.proven_minimal);
    assert!(a.result.pile_count <= 24);
    assert!(report.gap_count > 0);
    assert_eq!(
        report.lower_bound_count + report.gap_count,
        a.result.pile_count
    );
    assert!(report.how.iter().any(|h| h.by == ProofKind::WorkLimit));
    assert!(report.work_count <= report.work_limit_count + 1_000_000);
    assert_eq!(answer(&call).unwrap(), a);
}
