//! The stiffness of piles that was not sent as a number.

use serde_json::json;

use super::{LBF, answer, answered, close, example};
use crate::contract::run;
use crate::helix::HelixCapacity;
use crate::layout::{StiffnessSource, SupportLoadSource, SupportModel};

const KIP_PER_IN: f64 = 1_000.0 * LBF / 0.0254;

/// The Linnet pile at 12.5 kip: the head moves 0.13768917 in, shaft 0.0457233566, helices
/// 0.0919658132 (estimate of `helix-capacity` for the same pile and ground).
#[test]
fn the_linnet_pile_as_a_spring() {
    let a = answered("springs-from-soil");
    let s = a.result.pile_support.as_ref().unwrap();
    assert_eq!(s.pile_stiffness_source, StiffnessSource::Estimated);
    assert_eq!(s.working_load_from, SupportLoadSource::AllowableCapacity);
    close(s.working_load.si() / LBF, 12_500.0, 1e-12);
    close(s.movement.si() / 0.0254, 0.13768917, 1e-8);
    let e = s.estimate.as_ref().unwrap();
    close(
        e.shaft_stiffness.si() / KIP_PER_IN,
        12.5 / 0.0457233566,
        1e-8,
    );
    close(
        e.helix_stiffness.si() / KIP_PER_IN,
        12.5 / 0.0919658132,
        1e-8,
    );
    close(e.ultimate.si() / LBF, 27914.6154, 1e-8);
    close(s.stiffness.si() / KIP_PER_IN, 90.7841918, 1e-8);
    let series = 1.0 / (1.0 / e.shaft_stiffness.si() + 1.0 / e.helix_stiffness.si());
    close(s.stiffness.si(), series, 1e-12);
    assert_eq!(
        a.result.supports,
        [SupportModel::Rigid, SupportModel::Spring]
    );
    assert!(
        a.warnings
            .iter()
            .any(|w| w.code == "pile_stiffness_estimated")
    );
    assert!(
        a.warnings
            .iter()
            .all(|w| w.code != "pile_stiffness_unusual")
    );
    assert!(a.checks.iter().all(|c| c.id != "spring_support"));
    assert!(a.methods.iter().any(|m| m.id == "pile_support"));
    // the shaft shortens by less than P L/(A E), for the upper helix takes its part off it
    assert!(e.shaft_stiffness.si() > 12_500.0 * LBF / (0.0500704882 * 0.0254));
}

/// The same numbers as with the stiffness sent by the caller.
#[test]
fn the_same_plan_as_with_that_number() {
    let found = answered("springs-from-soil");
    let mut call = example("springs-from-soil");
    call.request.pile_support = None;
    call.request.pile_stiffness = Some(found.result.pile_support.as_ref().unwrap().stiffness);
    let sent = answer(&call).unwrap();
    assert_eq!(sent.result.piles, found.result.piles);
    assert_eq!(sent.result.beams, found.result.beams);
    assert!(sent.result.pile_support.is_none());
}

/// The band: helices that move twice and half as far, as `helix-capacity` with doubled and
/// halved ratios finds, and the plan solved with each.
#[test]
fn both_ends_of_the_band() {
    let a = answered("springs-from-soil");
    let e = a
        .result
        .pile_support
        .as_ref()
        .unwrap()
        .estimate
        .clone()
        .unwrap();
    let text = crate::examples::request::<HelixCapacity>("head-movement-linnet");
    for (ratio, end) in [(0.1, &e.soft), (0.025, &e.stiff)] {
        let mut call: crate::contract::Call<crate::helix::Request> =
            serde_json::from_str(&text).unwrap();
        call.request
            .head_movement
            .as_mut()
            .unwrap()
            .fine_movement_ratio = Some(ratio);
        let found = run::<HelixCapacity>(&call, crate::contract::Work::default()).unwrap();
        let at = found.result.head_movement.unwrap().compression.unwrap();
        let k = at.at_working_load.unwrap().secant_stiffness.unwrap();
        close(end.stiffness.si(), k.si(), 1e-12);
        let mut call = example("springs-from-soil");
        call.request.pile_support = None;
        call.request.pile_stiffness = Some(k);
        let plan = answer(&call).unwrap();
        let most = plan.result.piles.iter().map(|p| {
            let spring = p.spring.as_ref().unwrap();
            (spring.max.si(), p.label.clone())
        });
        let most = most.fold((0.0, String::new()), |b, p| if p.0 > b.0 { p } else { b });
        close(end.compression.si(), most.0, 1e-12);
        assert_eq!(end.pile, most.1);
    }
    assert!(e.soft.stiffness < e.stiff.stiffness);
    // the warning stands where an end of the band has more than any pile is judged by
    let judged = a.result.piles.iter().map(|p| p.compression.demand.si());
    let judged = judged.fold(0.0, f64::max);
    let told = a
        .warnings
        .iter()
        .filter(|w| w.code == "stiffness_band_governs");
    let more = [&e.soft, &e.stiff]
        .into_iter()
        .filter(|b| b.compression.si() > judged * (1.0 + 1e-9));
    assert_eq!(told.count(), more.count());
}

/// Without an allowable capacity the stiffness is that at half of the ultimate resistance,
/// and the answer says so; a pile with its own stiffness keeps it.
#[test]
fn at_half_of_the_ultimate_resistance() {
    let a = answered("springs-from-soil-half-ultimate");
    let s = a.result.pile_support.as_ref().unwrap();
    assert_eq!(s.working_load_from, SupportLoadSource::HalfOfUltimate);
    let e = s.estimate.as_ref().unwrap();
    close(s.working_load.si(), e.ultimate.si() / 2.0, 1e-12);
    // half the ultimate: x/(1 - 0.8 + 0.8 x) = 1/2 at x = 1/6 of 0.04 x the diameter, all
    // helices alike but for the shaft between them: the lower one moves 0.0667 in or less
    let lower = s.working_load.si() / e.helix_stiffness.si() / 0.0254;
    assert!(
        lower < 0.4 / 6.0 * 1.2 && lower > 0.4 / 6.0 * 0.9,
        "{lower}"
    );
    assert!(a.warnings.iter().any(|w| w.code == "working_load_assumed"));
    let own = &a.result.piles[2];
    let r = own.spring.as_ref().unwrap().max.si();
    close(own.settlement.unwrap().si(), r / (400.0 * KIP_PER_IN), 1e-9);
}

/// 12.5 kip over 1/16 in is 200 kip/in: more than is usual, and said so.
#[test]
fn from_a_test() {
    let a = answered("springs-from-test");
    let s = a.result.pile_support.as_ref().unwrap();
    assert_eq!(s.pile_stiffness_source, StiffnessSource::Measured);
    close(s.stiffness.si() / KIP_PER_IN, 200.0, 1e-12);
    assert!(s.estimate.is_none());
    let warning = a
        .warnings
        .iter()
        .find(|w| w.code == "pile_stiffness_unusual");
    assert!(warning.unwrap().detail.contains("200 kip_per_in"));
    assert!(
        a.warnings
            .iter()
            .all(|w| w.code != "pile_stiffness_estimated")
    );
}

/// The faults of the ground and of the pile point into the support, and what else is missing
/// is told beside them.
#[test]
fn faults_come_together() {
    let refusal = answer(&example("refused/support-faults")).unwrap_err();
    let found: Vec<(String, String)> = refusal
        .issues
        .iter()
        .map(|i| (i.pointer.clone(), i.code.to_string()))
        .collect();
    for (pointer, code) in [
        ("/beams/0", "rigidity_needed"),
        ("/pile_support/from_soil/pile/shaft/round", "missing_member"),
        (
            "/pile_support/from_soil/pile/helices/0/depth",
            "helix_below_profile",
        ),
        ("/pile_support/from_soil/head_height", "head_below_helix"),
    ] {
        assert!(
            found.contains(&(pointer.to_owned(), code.to_owned())),
            "{pointer} {code} is not in {found:?}"
        );
    }
}

/// A search places piles on the springs found, as on springs sent.
#[test]
fn a_search_on_springs_found() {
    let mut call = example("springs-from-soil");
    call.request.piles = serde_json::from_value(json!({"search": {
        "max_spacing": {"value": 10, "unit": "ft"}, "min_spacing": {"value": 3, "unit": "ft"},
        "snap": {"value": 0.25, "unit": "ft"}}}))
    .unwrap();
    let found = answer(&call).unwrap();
    let k = found.result.pile_support.as_ref().unwrap().stiffness;
    call.request.pile_support = None;
    call.request.pile_stiffness = Some(k);
    let sent = answer(&call).unwrap();
    assert_eq!(sent.result.piles, found.result.piles);
    assert_eq!(sent.result.search, found.result.search);
}
