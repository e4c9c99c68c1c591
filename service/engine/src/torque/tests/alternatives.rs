//! Published torque factors side by side. Expected numbers are those of the factors, which
//! `cases.rs` compares with their sources.

use serde_json::json;

use super::*;
use crate::quantity::{ForceUnit, MomentUnit, PerLengthUnit};
use crate::torque::{FactorAlternative, PublishedTorqueFactor};

fn compared(shaft: Json, more: Json) -> (Vec<FactorAlternative>, Answer<Outcome>) {
    let mut request = json!({ "shaft": shaft, "compare_factors": true });
    for (key, value) in more.as_object().unwrap() {
        request[key] = value.clone();
    }
    let found = answer(request);
    (
        found
            .result
            .factor_alternatives
            .clone()
            .expect("the factors"),
        found,
    )
}

fn one(all: &[FactorAlternative], choice: PublishedTorqueFactor) -> FactorAlternative {
    all.iter()
        .find(|a| a.choice == choice)
        .expect("a factor")
        .clone()
}

/// 1.5 in square: 10 per ft listed (of the formula, 11.16, the lower), 33 and 24 per m by
/// Livneh, 33 per m by Hoyt, 1433 x 53.88^-0.92 = 36.6 per m by Perko.
#[test]
fn every_factor_that_holds_stands_with_its_source() {
    let (all, found) = compared(square(1.5), json!({}));
    assert_eq!(all.len(), 5);
    assert!(all.iter().all(|a| a.reason.is_none()));
    let down = |choice| one(&all, choice).compression.unwrap();
    let per_ft = |choice| down(choice).factor.get(PerLengthUnit::PerFt);
    near(per_ft(PublishedTorqueFactor::ListedShaft), 10.0, 1e-10);
    near(
        per_ft(PublishedTorqueFactor::EffectiveDiameter),
        10.0,
        1e-10,
    );
    near(per_ft(PublishedTorqueFactor::Livneh2008), 10.0584, 1e-4);
    near(
        per_ft(PublishedTorqueFactor::HoytClemence1989),
        10.0584,
        1e-4,
    );
    near(
        down(PublishedTorqueFactor::Perko2009).factor.si(),
        36.60,
        0.1,
    );
    let livneh = one(&all, PublishedTorqueFactor::Livneh2008);
    near(livneh.tension.unwrap().factor.si(), 24.0, 1e-10);
    assert!(livneh.tension_reduced.is_none());
    let listed = one(&all, PublishedTorqueFactor::ListedShaft);
    near(
        listed
            .tension_reduced
            .unwrap()
            .factor
            .get(PerLengthUnit::PerFt),
        240.0 / 33.0,
        1e-10,
    );
    assert_eq!(listed.compression.unwrap().source.id, "ac358_kt_listed");
    // nothing is judged, and no factor is the one used
    assert!(found.result.torque_factor.is_none() && found.checks.is_empty());
    assert!(
        found
            .methods
            .iter()
            .any(|m| m.id == "torque_factor_perko_2009")
    );
    assert!(!warns(&found, "default_from_memory"));
}

/// 2.875 in round, 12.5 kip x 2 = 25 kip: 25,000 / 9 and 25,000 / 10.0584 ft lbf; 3,000 ft lbf
/// stand for 27,000 lbf by the list.
#[test]
fn each_has_the_torque_it_needs_and_the_capacity_it_gives() {
    let (all, found) = compared(
        round(2.875),
        json!({
            "torque_factor": { "listed_shaft": {} },
            "installed": { "reading": gauge(3000.0, "ft_lbf") },
            "demand": { "level": "allowable", "compression": q(12.5, "kip") },
            "design_basis": { "allowable_stress": {} },
            "torsion": { "rating": q(5500.0, "ft_lbf") },
        }),
    );
    let side = |choice| one(&all, choice).compression.unwrap();
    let listed = side(PublishedTorqueFactor::ListedShaft);
    near(
        listed.required_torque.unwrap().get(MomentUnit::FtLbf),
        25_000.0 / 9.0,
        1e-10,
    );
    near(
        listed.ultimate.unwrap().get(ForceUnit::Lbf),
        27_000.0,
        1e-10,
    );
    let hoyt = side(PublishedTorqueFactor::HoytClemence1989);
    near(
        hoyt.required_torque.unwrap().get(MomentUnit::FtLbf),
        25_000.0 / 10.0584,
        1e-6,
    );
    near(hoyt.ultimate.unwrap().get(ForceUnit::Lbf), 30_175.2, 1e-6);
    // no load in tension: no torque for it, but a capacity
    let up = one(&all, PublishedTorqueFactor::ListedShaft)
        .tension
        .unwrap();
    assert!(up.required_torque.is_none() && up.ultimate.is_some());
    // one that does not hold says why
    let livneh = one(&all, PublishedTorqueFactor::Livneh2008);
    assert!(livneh.compression.is_none() && livneh.tension.is_none());
    let reason = livneh.reason.unwrap();
    assert!(
        reason.starts_with(
            "round shaft of 73.025 mm (2.875 in) is outside the range; it holds for solid square"
        ),
        "{reason}"
    );
    assert_eq!(found.verdict, crate::contract::Verdict::Accept);
}

/// What is compared changes nothing of the answer itself, and is there only when asked for.
#[test]
fn a_comparison_leaves_the_answer_as_it_is() {
    let plain = planned(
        round(3.5),
        json!({ "torsion": { "rating": q(8000.0, "ft_lbf") } }),
    );
    assert!(plain.result.factor_alternatives.is_none());
    let (_, mut found) = compared(
        round(3.5),
        json!({
            "torque_factor": { "listed_shaft": {} },
            "demand": { "level": "allowable", "compression": q(12.5, "kip") },
            "design_basis": { "allowable_stress": { "compression_safety_factor": 2.0 } },
            "torsion": { "rating": q(8000.0, "ft_lbf") },
        }),
    );
    found.result.factor_alternatives = None;
    assert_eq!((found.result, found.checks), (plain.result, plain.checks));
    assert_eq!(
        (found.verdict, found.warnings),
        (plain.verdict, plain.warnings)
    );
    let off = planned(round(3.5), json!({ "compare_factors": false }));
    assert!(off.result.factor_alternatives.is_none());
    let issue = refusable(json!({ "compare_factors": true }))
        .unwrap_err()
        .issues[0]
        .clone();
    assert_eq!(
        (issue.pointer.as_str(), issue.code.as_ref()),
        ("", "missing_member")
    );
}

/// Too shallow for tension by torque: the factors stay, capacities and torques do not.
#[test]
fn tension_withheld_is_withheld_of_all() {
    let (all, _) = compared(
        round(2.875),
        json!({
            "torque_factor": { "listed_shaft": {} },
            "embedment": { "top_helix_depth": q(6.0, "ft"), "largest_helix_diameter": q(12.0, "in") },
            "installed": { "reading": gauge(3000.0, "ft_lbf") },
        }),
    );
    for side in all.iter().filter_map(|a| a.tension.as_ref()) {
        assert!(side.ultimate.is_none() && side.required_torque.is_none());
    }
    assert!(
        all.iter()
            .any(|a| a.compression.as_ref().is_some_and(|c| c.ultimate.is_some()))
    );
}
