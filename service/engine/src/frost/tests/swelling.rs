//! Uplift by swelling soil: each method, the beam, the stages, frost beside it and together
//! with it. Expected numbers are worked by hand beside the code.

use serde_json::{Value as Json, json};

use super::{answer, ask, checks, close, example, q, statuses, warned};
use crate::contract::CheckStatus::{Fail, NotEvaluated, Pass};
use crate::contract::Verdict;
use crate::frost::{BeamSupport, FrostStage, Outcome, SwellOutcome, UpliftCause};
use crate::ground_heave::HeaveCause;
use crate::quantity::{ForceUnit, LengthUnit, StressUnit};
use crate::source::Status;

/// Perimeter of a 2.875 in shaft, ft.
const PERIMETER: f64 = std::f64::consts::PI * 2.875 / 12.0;

fn swelling(name: &str) -> SwellOutcome {
    answer(example(name)).result.swelling.unwrap()
}

/// RG-7 (own arithmetic): 0.15 x 200 kPa on an 89 mm shaft over 3 m is 25.16 kN.
#[test]
fn rg_7_expansive_uplift() {
    let a = answer(example("rg-7"));
    let swell = a.result.swelling.as_ref().unwrap();
    close(swell.adhesion.get(StressUnit::KPa), 30.0, 1e-12);
    for stage in &swell.stages {
        close(stage.swelling_length.si(), 3.0, 1e-12);
        close(stage.design.shaft_force.get(ForceUnit::KN), 25.16, 2e-4);
        close(
            stage.design.shaft_force.si(),
            0.15 * 200e3 * std::f64::consts::PI * 0.089 * 3.0,
            1e-12,
        );
    }
    assert_eq!(swell.adhesion_source.status, Status::Memory);
    assert!(warned(&a, "default_from_memory") && warned(&a, "swell_methods_differ"));
    assert!(!warned(&a, "swell_uplift_not_covered"));
    assert_eq!(statuses(&a, "swell_uplift"), [NotEvaluated]);
}

/// 0.15 x 4,000 psf = 600 psf, below s_u; shaft in soil from the beam's underside at 1.5 ft to
/// 12 ft; N = U - 0.6 x 7,585 lbf; before the house from grade without any load.
#[test]
fn alpha_share_by_hand() {
    let a = answer(example("swelling-alpha-share"));
    let swell = a.result.swelling.as_ref().unwrap();
    close(swell.adhesion.get(StressUnit::Psf), 600.0, 1e-12);
    assert_eq!(swell.adhesion_factor, Some(0.15));
    assert_eq!(swell.capped_by_strength, Some(false));
    let [service, before] = [&swell.stages[0], &swell.stages[1]];
    let force = 600.0 * PERIMETER * 10.5;
    close(service.design.swell_force.get(ForceUnit::Lbf), force, 1e-12);
    let net = service.design.net_swell_tension.unwrap();
    close(net.get(ForceUnit::Lbf), force - 0.6 * 7585.0, 1e-9);
    close(before.swelling_length.get(LengthUnit::Ft), 12.0, 1e-12);
    let net = before.design.net_swell_tension.unwrap();
    close(net.get(ForceUnit::Lbf), 600.0 * PERIMETER * 12.0, 1e-12);
    assert_eq!(swell.governing_stage, FrostStage::Construction);
    let factors = swell.factors.as_ref().unwrap();
    assert_eq!(
        (factors.dead_load_factor, factors.tension_safety_factor),
        (0.6, Some(3.0))
    );
    let tension = swell.tension.as_ref().unwrap();
    close(
        tension.no_credit_above.unwrap().get(LengthUnit::Ft),
        12.0,
        1e-12,
    );
    assert_eq!(tension.counted_helix_count, Some(2));
    // frost is held by more: nothing above 20 in is left out there
    let frost = a.result.uplift.as_ref().unwrap().tension.as_ref().unwrap();
    assert!(frost.ultimate.unwrap() >= tension.ultimate.unwrap());
    assert_eq!(statuses(&a, "swell_uplift"), [Pass, Pass]);
}

#[test]
fn strength_caps_the_share() {
    let swell = swelling("swelling-alpha-share-capped");
    // 0.15 x 9,000 = 1,350 psf is more than 1,200 psf
    close(swell.adhesion.get(StressUnit::Psf), 1200.0, 1e-12);
    assert_eq!(swell.capped_by_strength, Some(true));
    let mut own = example("swelling-alpha-share-capped");
    own["swelling"]["adhesion"]["alpha_share"]["alpha_factor"] = json!(0.1);
    let swell = answer(own).result.swelling.unwrap();
    close(swell.adhesion.get(StressUnit::Psf), 900.0, 1e-12);
    assert_eq!(swell.adhesion_source.id, "caller");
}

/// 0.10 and 0.25 of 4,000 psf: both shown, the upper decides; with the caller's 0.9 D and
/// safety factor 2.
#[test]
fn a_range_shows_both_ends_and_the_upper_decides() {
    let a = answer(example("swelling-alpha-range"));
    let swell = a.result.swelling.as_ref().unwrap();
    close(swell.adhesion.get(StressUnit::Psf), 1000.0, 1e-12);
    close(
        swell.lower_adhesion.unwrap().get(StressUnit::Psf),
        400.0,
        1e-12,
    );
    let service = &swell.stages[0];
    let net = |d: &crate::frost::SwellDemand| d.net_swell_tension.unwrap().get(ForceUnit::Lbf);
    close(
        net(&service.design),
        1000.0 * PERIMETER * 10.5 - 0.9 * 7585.0,
        1e-9,
    );
    assert_eq!(net(service.lower.as_ref().unwrap()), 0.0);
    let check = checks(&a, "swell_uplift")[0];
    close(
        check.demand.as_ref().unwrap().value(),
        service.design.net_swell_tension.unwrap().si(),
        1e-12,
    );
}

#[test]
fn the_other_methods() {
    let full = swelling("swelling-full-pressure");
    close(full.adhesion.get(StressUnit::Psf), 4000.0, 1e-12);
    let capped = swelling("swelling-with-frost");
    close(capped.adhesion.get(StressUnit::Psf), 0.4 * 1200.0, 1e-12);
    let given = swelling("swelling-beam-sides-gripped");
    close(given.adhesion.get(StressUnit::Psf), 600.0, 1e-12);
    assert_eq!(given.adhesion_source.id, "caller");
    // exactly 10 and 20 ft are within what is published
    for ft in [10.0, 20.0] {
        let mut request = example("swelling-full-pressure");
        request["active_depth"] = q(ft, "ft");
        assert!(ask(request).is_ok(), "{ft}");
    }
}

/// 400 psf on two sides of 1.5 ft over 7.2 ft: 8,640 lbf on the beam, which hangs on the pile
/// before the house too as it is cast by then.
#[test]
fn swelling_grips_the_beam() {
    let a = answer(example("swelling-beam-sides-gripped"));
    let swell = a.result.swelling.as_ref().unwrap();
    let grip = swell.beam_grip.as_ref().unwrap();
    close(grip.force.get(ForceUnit::Lbf), 8640.0, 1e-12);
    let shaft = 600.0 * PERIMETER * 10.0;
    for (stage, dead) in swell.stages.iter().zip([7585.0, 500.0]) {
        let net = stage.design.net_swell_tension.unwrap().get(ForceUnit::Lbf);
        close(net, 8640.0 + shaft - 0.6 * dead, 1e-12);
        assert!(stage.beam_in_place);
    }
    // tested: safety factor 2
    close(
        swell.tension.as_ref().unwrap().design.get(ForceUnit::Kip),
        19.0,
        1e-12,
    );
    // without a word on the sides the adhesion on the shaft holds there
    let mut request = example("swelling-beam-sides-gripped");
    request["beam"]["in_soil"]
        .as_object_mut()
        .unwrap()
        .remove("sides");
    let grip = answer(request).result.swelling.unwrap().beam_grip.unwrap();
    close(
        grip.force.get(ForceUnit::Lbf),
        600.0 * 2.0 * 1.5 * 7.2,
        1e-12,
    );
    // and a bond break takes it away
    let free = swelling("swelling-alpha-share").beam_grip.unwrap();
    assert_eq!(free.force.si(), 0.0);
}

/// An 8 in helix at 9 ft in an active zone of 10 ft: inside it, and nothing holds the pile.
#[test]
fn a_helix_in_the_active_zone_fails() {
    let a = answer(example("helix-in-active-zone"));
    assert_eq!(statuses(&a, "top_helix_below_active_zone"), [Fail]);
    close(a.result.embedment.shortfall.get(LengthUnit::Ft), 1.0, 1e-9);
    let swell = a.result.swelling.as_ref().unwrap();
    assert_eq!(swell.tension.as_ref().unwrap().counted_helix_count, Some(0));
    assert_eq!(statuses(&a, "swell_uplift"), [Fail, Fail]);
    // the shaft ends at 9 ft: no more than that is gripped
    close(
        swell.stages[0].swelling_length.get(LengthUnit::Ft),
        9.0,
        1e-12,
    );
    assert_eq!(a.result.governing_uplift.unwrap().utilisation_ratio, None);
}

fn together(peaks: bool) -> Outcome {
    let mut request = example("swelling-with-frost");
    request["frost"]["official_depth"] = q(5.0, "ft");
    request["uplift"]["resistance"]["dead_load"] = q(1000.0, "lbf");
    request["uplift"]["construction"] = json!({ "standing_over_winter": {} });
    request["swelling"]["before_loading"] = json!({ "unloaded": {} });
    request["swelling"]["peaks_with_frost"] = json!(peaks);
    answer(request).result
}

/// Frost and swelling are judged beside each other, the worse governs; only at the caller's
/// word they are added.
#[test]
fn frost_and_swelling_are_added_at_the_callers_word_alone() {
    let apart = together(false);
    assert!(apart.combined_uplift.is_none());
    let worst = apart.governing_uplift.unwrap();
    let frost = 100e3 / 47.880_258_98 * PERIMETER * 5.0;
    let swell = 480.0 * PERIMETER * 12.0;
    assert!(frost > swell);
    assert_eq!(worst.cause, UpliftCause::Frost);
    close(worst.coupling_demand.get(ForceUnit::Lbf), frost, 1e-9);
    let both = together(true);
    let combined = both.combined_uplift.unwrap();
    close(
        combined.stages[1].force.get(ForceUnit::Lbf),
        frost + swell,
        1e-9,
    );
    let service = &combined.stages[0];
    let held = frost * 3.5 / 5.0 + swell * 10.5 / 12.0 - 600.0;
    close(service.net_tension.unwrap().get(ForceUnit::Lbf), held, 1e-9);
    assert_eq!(
        both.governing_uplift.unwrap().cause,
        UpliftCause::FrostAndSwell
    );
    assert_eq!(both.uplift, apart.uplift);
    assert_eq!(both.swelling, apart.swelling);
}

/// A beam on ground that swells: 3 in of heave fails; 4,000 psf on 16 in over 7.2 ft, 38,400
/// lbf, is told and not added. Frost has no such figure.
#[test]
fn a_beam_on_moving_ground_fails() {
    let a = answer(example("swelling-beam-on-ground"));
    assert_eq!(statuses(&a, "beam_underside_free"), [Fail]);
    let under = a.result.beam_underside.as_ref().unwrap();
    assert_eq!(under.rests_on, BeamSupport::Ground);
    close(
        under.swell_force.unwrap().get(ForceUnit::Lbf),
        38_400.0,
        1e-12,
    );
    let bedded = swelling("swelling-alpha-share");
    assert_eq!(a.result.swelling.as_ref().unwrap().stages, bedded.stages);
    let frost = answer(example("linnet-beam-on-ground"));
    let under = frost.result.beam_underside.as_ref().unwrap();
    assert_eq!(under.heave_governed_by, Some(HeaveCause::Frost));
    assert_eq!(under.swell_force, None);
    assert_eq!(statuses(&frost, "beam_underside_free"), [Fail]);
    let gravel = answer(example("linnet-beam-on-gravel"));
    assert_eq!(statuses(&gravel, "beam_underside_free"), [Pass]);
}

#[test]
fn nothing_known_of_the_underside_is_warned_of() {
    let mut request = example("linnet-beam-on-ground");
    let beam = request["beam"]["in_soil"].as_object_mut().unwrap();
    beam.remove("predicted_heave");
    let a = answer(request.clone());
    assert!(warned(&a, "beam_underside_not_stated"));
    assert!(statuses(&a, "beam_underside_free").is_empty());
    assert_eq!(a.verdict, Verdict::Provisional);
    // an underside at the base of frost or below has nothing under it that freezes
    request["beam"]["in_soil"]["underside_depth"] = q(48.0, "in");
    assert!(!warned(&answer(request), "beam_underside_not_stated"));
    let form = answer(example("linnet"));
    assert!(!warned(&form, "beam_underside_not_stated"));
    assert_eq!(
        form.result.beam_underside.unwrap().rests_on,
        BeamSupport::VoidForm
    );
}

/// Where nothing freezes swelling alone decides; a millimetre of frost and it is open.
#[test]
fn without_frost_swelling_alone_decides() {
    let mut request = example("swelling-alpha-share");
    let resistance = request["uplift"]["resistance"].clone();
    request["swelling"]["resistance"] = resistance;
    request.as_object_mut().unwrap().remove("uplift");
    request["frost"]["official_depth"] = q(0.0, "m");
    let a = answer(request.clone());
    assert!(statuses(&a, "frost_uplift").is_empty());
    assert_eq!(a.verdict, Verdict::Accept);
    assert_eq!(a.result.governing_uplift.unwrap().cause, UpliftCause::Swell);
    request["frost"]["official_depth"] = q(0.001, "m");
    let a = answer(request);
    assert_eq!(statuses(&a, "frost_uplift"), [NotEvaluated]);
    assert_eq!(a.verdict, Verdict::Provisional);
}

/// What is missing is named, all of it at once.
#[test]
fn data_that_are_missing_are_all_named() {
    let mut request = example("swelling-alpha-share");
    request.as_object_mut().unwrap().remove("active_depth");
    request["swelling"] = json!({ "adhesion": { "undrained_cap": {} } });
    let issues = ask(request).expect_err("a refusal").issues;
    let said: Vec<_> = issues
        .iter()
        .map(|i| (i.pointer.as_str(), i.detail.as_str()))
        .collect();
    assert_eq!(issues.len(), 3, "{said:?}");
    assert!(issues.iter().all(|i| i.code == "swell_uplift_without_data"));
    for name in ["active_depth", "adhesion_factor", "undrained_strength"] {
        assert!(
            said.iter().any(|(_, detail)| detail.contains(name)),
            "{name}"
        );
    }
}

/// A resistance that was sent must not count a helix in the active zone.
#[test]
fn a_given_tension_is_warned_of_where_a_helix_is_in_the_active_zone() {
    let mut request = example("helix-in-active-zone");
    let given: Json =
        json!({ "given": { "ultimate": q(30.0, "kip"), "by": "analysis", "reference": "report" } });
    request["swelling"]["resistance"]["tension"] = given;
    let a = answer(request);
    assert!(warned(&a, "given_tension_with_active_helix"));
}
