//! Movement of the head: a published case, closed forms, properties.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::*;
use crate::contract::{CheckStatus, Verdict};
use crate::examples::{request, through};
use crate::helix::{DirectionMovement, HeadMovementFindings, WorkingLoadSource};
use crate::quantity::{AreaUnit, ForceUnit, LengthUnit, SpringUnit};

fn example(name: &str) -> Answer<Outcome> {
    let text = request::<HelixCapacity>(name);
    through::<HelixCapacity>(&text, Trace::on()).unwrap().1
}

fn found(a: &Answer<Outcome>) -> &HeadMovementFindings {
    a.result.head_movement.as_ref().expect("a movement")
}

fn pushed(a: &Answer<Outcome>) -> &DirectionMovement {
    found(a).compression.as_ref().expect("compression")
}

fn pulled(a: &Answer<Outcome>) -> &DirectionMovement {
    found(a).tension.as_ref().expect("tension")
}

fn walled(list: &[(f64, f64)]) -> Json {
    json!({
        "shaft": { "round": { "outside_diameter": q(88.9, "mm"), "wall_thickness": q(5.5, "mm") } },
        "helices": helices(list),
    })
}

/// LT-04: 73.0 x 5.51 mm, 6 m, 200 GPa, 100 kN: 1168.264 mm2 and 2.5679 mm. P L/(A E),
/// verified by arithmetic. One helix, so that the shaft carries all of it all the way.
#[test]
fn lt_04_elastic_shortening() {
    let a = example("lt-04");
    near(found(&a).steel_area.get(AreaUnit::Mm2), 1168.264, 1e-4);
    let at = pushed(&a).at_working_load.as_ref().unwrap();
    near(at.elastic_line.get(LengthUnit::Mm), 2.5679, 0.05);
    near(at.shaft_part.get(LengthUnit::Mm), 2.5679, 0.05);
    assert_eq!(pushed(&a).working_load_from, WorkingLoadSource::Request);
}

/// One helix has a closed form: s = P/Q, z = z_u s (1 - R)/(1 - R s), w = z + P L/(A E). Half
/// of the ultimate is at a fifth of z_u: 1 % of the helix in clay, 2 % in sand.
#[test]
fn one_helix_has_a_closed_form() {
    for (ground, share) in [(clay(100.0), 0.05), (sand(34.0), 0.10)] {
        let a = answer(json!({
            "soil": soil(&[(20.0, 18.0, ground)]), "pile": walled(&[(0.4, 5.0)]),
            "head_movement": { "head_height": q(0.5, "m") },
        }));
        for (m, r) in [(pushed(&a), compression(&a)), (pulled(&a), tension(&a))] {
            let at = m.at_working_load.as_ref().unwrap();
            assert_eq!(m.working_load_from, WorkingLoadSource::HalfOfUltimate);
            near(at.load.si(), r.ultimate.si() / 2.0, 1e-12);
            near(at.helix_part.si(), 0.4 * share / 5.0, 1e-9);
            let ae = std::f64::consts::PI * 0.0055 * (0.0889 - 0.0055) * 200e9;
            near(at.shaft_part.si(), at.load.si() * 5.5 / ae, 1e-9);
            near(
                at.movement.si(),
                at.shaft_part.si() + at.helix_part.si(),
                1e-12,
            );
            near(
                at.secant_stiffness.unwrap().si(),
                at.load.si() / at.movement.si(),
                1e-12,
            );
            near(at.helices[0].load.si(), at.load.si(), 1e-9);
        }
        assert!(warns(&a, "working_load_assumed") && warns(&a, "head_movement_is_estimate"));
    }
}

/// Tenth of the helix, one helix in sand: the net movement is that of the helix, which then
/// carries all it can; gross, w = z + P L/(A E) = 40 mm in closed form.
#[test]
fn loads_at_a_tenth_of_the_helix() {
    let a = answer(json!({
        "soil": soil(&[(20.0, 18.0, sand(34.0))]), "pile": walled(&[(0.4, 5.0)]),
        "directions": "compression", "head_movement": {},
    }));
    let (m, ultimate) = (pushed(&a).at_tenth_of_helix, compression(&a).ultimate.si());
    near(m.movement.si(), 0.04, 1e-12);
    near(m.net.si(), ultimate, 1e-9);
    let ae = std::f64::consts::PI * 0.0055 * (0.0889 - 0.0055) * 200e9;
    let p = m.gross.si();
    let s = p / ultimate;
    near(
        0.04 * s * 0.25 / (1.0 - 0.75 * s) + p * 5.0 / ae,
        0.04,
        1e-7,
    );
    assert!(p < ultimate);
}

/// Where the cylinder governs, all helices have the same share, so that they add up to it.
#[test]
fn the_curve_ends_at_the_governing_ultimate() {
    let a = answer(json!({
        "soil": soil(&[(20.0, 18.0, clay(60.0))]),
        "pile": walled(&[(0.4, 4.0), (0.4, 4.4), (0.4, 4.8)]),
        "directions": "compression",
        "methods": { "shaft_adhesion": { "alpha": {} } },
        "head_movement": { "point_count": 5, "working_load": { "compression": q(120.0, "kN") } },
    }));
    let r = compression(&a);
    assert_eq!(r.governing_mode.name(), "cylindrical_shear");
    let m = pushed(&a);
    let cylinder = r.cylindrical_shear.as_ref().unwrap().total.si();
    near(
        m.share_factor,
        cylinder / r.individual_bearing.total.si(),
        1e-9,
    );
    assert!(m.share_factor < 1.0 && r.shaft_adhesion.si() > 0.0);
    let rows = &m.points.as_ref().unwrap().rows;
    assert_eq!(rows.len(), 5);
    near(rows[4][0].value(), r.ultimate.si(), 1e-9);
    assert_eq!((rows[0][0].value(), rows[0][1].value()), (0.0, 0.0));
    let at = m.at_working_load.as_ref().unwrap();
    let carried: f64 = at.helices.iter().map(|h| h.load.si()).sum();
    near(carried + at.adhesion.si(), 120e3, 1e-9);
    // 5 mm of movement bring all of the adhesion
    assert!(at.movement.si() > 0.005);
    near(at.adhesion.si(), r.shaft_adhesion.si(), 1e-9);
    // the uppermost helix moves most, and each gap stretches by what is left below it
    assert!(at.helices[0].movement > at.helices[2].movement);
}

/// Which load the movement is asked at.
#[test]
fn a_factored_load_is_never_taken_for_a_working_load() {
    let ask = |basis: Json, demand: Option<Json>| {
        let mut r = json!({
            "soil": soil(&[(20.0, 18.0, clay(100.0))]), "pile": walled(&[(0.4, 5.0)]),
            "directions": "compression", "design_basis": basis, "head_movement": {},
        });
        if let Some(d) = demand {
            r["demand"] = d;
        }
        let a = answer(r);
        (
            pushed(&a).working_load_from,
            pushed(&a).working_load.get(ForceUnit::KN),
            compression(&a).ultimate.get(ForceUnit::KN),
        )
    };
    let (from, load, _) = ask(
        json!({ "allowable_stress": {} }),
        Some(json!({ "level": "allowable", "compression": q(30.0, "kN") })),
    );
    assert_eq!(from, WorkingLoadSource::Demand);
    near(load, 30.0, 1e-9);
    let (from, load, u) = ask(
        json!({ "allowable_stress": { "compression_safety_factor": 2.5 } }),
        None,
    );
    assert_eq!(from, WorkingLoadSource::AllowableCapacity);
    near(load, u / 2.5, 1e-9);
    let (from, load, u) = ask(
        json!({ "limit_states": {} }),
        Some(json!({ "level": "factored", "compression": q(30.0, "kN") })),
    );
    assert_eq!(from, WorkingLoadSource::HalfOfUltimate);
    near(load, u / 2.0, 1e-9);
}

#[test]
fn a_limit_on_the_movement_is_judged() {
    let ask = |load: f64, limit: f64| {
        answer(json!({
            "soil": soil(&[(20.0, 18.0, clay(100.0))]), "pile": walled(&[(0.4, 5.0)]),
            "directions": "compression",
            "head_movement": {
                "working_load": { "compression": q(load, "kN") }, "limit": q(limit, "mm"),
            },
        }))
    };
    // 900 kPa on 0.1194 m2: 107.5 kN. At 50 kN: 3.57 mm of helix and 0.87 mm of shaft
    let a = ask(50.0, 5.0);
    assert_eq!(
        (a.verdict, a.checks[0].status),
        (Verdict::Accept, CheckStatus::Pass)
    );
    let a = ask(50.0, 4.0);
    assert_eq!(
        (a.verdict, a.checks[0].status),
        (Verdict::Reject, CheckStatus::Fail)
    );
    // above the ultimate no movement holds it
    let a = ask(150.0, 400.0);
    assert!(pushed(&a).at_working_load.is_none());
    assert_eq!(
        (a.verdict, a.checks[0].status),
        (Verdict::Reject, CheckStatus::Fail)
    );
    let idle = ask(0.0, 5.0);
    let at = pushed(&idle).at_working_load.as_ref().unwrap();
    assert_eq!((at.movement.si(), at.secant_stiffness), (0.0, None));
}

/// A limit is judged where there is a load; a demand in tension alone says nothing of
/// compression.
#[test]
fn a_limit_is_judged_in_the_directions_that_have_a_load() {
    let ask = |demand: Option<Json>| {
        let mut r = json!({
            "soil": soil(&[(20.0, 18.0, clay(100.0))]), "pile": walled(&[(0.4, 5.0)]),
            "design_basis": { "allowable_stress": {} }, "head_movement": { "limit": q(30.0, "mm") },
        });
        if let Some(d) = demand {
            r["demand"] = d;
        }
        let a = answer(r);
        a.checks.iter().filter(|c| c.id == "head_movement").count()
    };
    assert_eq!(ask(None), 2);
    assert_eq!(
        ask(Some(
            json!({ "level": "allowable", "tension": q(20.0, "kN") })
        )),
        1
    );
    // no factor in tension, so no load to judge at
    let a = answer(json!({
        "soil": soil(&[(20.0, 18.0, clay(100.0))]), "pile": walled(&[(0.4, 5.0)]),
        "directions": "tension",
        "design_basis": { "own_factors": {
            "level": "allowable", "compression": { "divisor": { "safety_factor": 2.0 } },
            "reference": "own",
        } },
        "head_movement": { "limit": q(30.0, "mm") },
    }));
    assert_eq!(a.checks[0].status, CheckStatus::NotEvaluated);
    assert_eq!(a.verdict, Verdict::Provisional);
}

#[test]
fn nothing_that_carries_has_no_movement() {
    let a = answer(json!({
        "soil": soil(&[(20.0, 18.0, fill())]), "pile": walled(&[(0.4, 5.0)]),
        "directions": "compression", "design_basis": { "allowable_stress": {} },
        "head_movement": { "limit": q(10.0, "mm") },
    }));
    assert!(found(&a).compression.is_none() && warns(&a, "head_movement_not_found"));
    let check = a.checks.iter().find(|c| c.id == "head_movement").unwrap();
    assert_eq!(check.status, CheckStatus::NotEvaluated);
}

/// Linnet: 12.5 kip on 2.875 x 0.203 in. By hand A = pi 0.203 (2.875 - 0.203) = 1.70404 in2,
/// P L/(A E) = 12.5 x 198 / (1.70404 x 29007.55 ksi) = 0.050071 in over 16.5 ft.
#[test]
fn the_linnet_pile_moves_less_than_half_an_inch() {
    let a = example("head-movement-linnet");
    let at = pushed(&a).at_working_load.as_ref().unwrap();
    near(at.elastic_line.get(LengthUnit::In), 0.050_071, 0.01);
    assert!(at.shaft_part < at.elastic_line);
    assert!((0.1..0.3).contains(&at.movement.get(LengthUnit::In)));
    assert!(at.secant_stiffness.unwrap().get(SpringUnit::KipPerIn) > 40.0);
    assert_eq!(a.verdict, Verdict::Accept);
    assert_eq!(example("head-movement").verdict, Verdict::Accept);
}

fn moved(load: f64, modulus: f64, is_sand: bool, t: f64) -> Answer<Outcome> {
    let soft = if is_sand {
        sand(22.0 + 16.0 * t)
    } else {
        clay(40.0 + 150.0 * t)
    };
    answer(json!({
        "soil": soil(&[(3.5, 18.0, clay(80.0)), (20.0, 18.0, soft)]),
        "pile": walled(&[(0.35, 3.0), (0.3, 4.1), (0.25, 5.2)]),
        "head_movement": {
            "working_load": { "compression": q(load, "kN"), "tension": q(load, "kN") },
            "elastic_modulus": q(modulus, "MPa"),
        },
    }))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Units do not matter.
    #[test]
    fn movement_is_the_same_in_other_units(case in super::properties::case()) {
        let mut pile = case.pile();
        pile["shaft"]["round"]["wall_thickness"] = q(0.006, "m");
        let mut request = json!({ "soil": case.soil(), "pile": pile, "head_movement": {} });
        let metric = answer(request.clone());
        super::properties::in_us_units(&mut request);
        let us = answer(request);
        for pick in [pushed, pulled] {
            let (a, b) = (pick(&metric), pick(&us));
            let all = |m: &DirectionMovement| {
                let at = m.at_working_load.as_ref().unwrap();
                [at.movement.si(), at.helix_part.si(), m.at_tenth_of_helix.gross.si(), m.at_tenth_of_helix.net.si()]
            };
            for (x, y) in all(a).into_iter().zip(all(b)) {
                prop_assert!((x - y).abs() <= 1e-7 * x.abs(), "{x} {y}");
            }
        }
    }

    /// More load moves the head further, a stiffer shaft less; the parts add up, and what the
    /// helices carry is the load.
    #[test]
    fn movement_grows_with_load_and_falls_with_stiffness(
        load in 1.0..40.0, more in 0.1..10.0, modulus in 60_000.0..200_000.0, stiffer in 100.0..40_000.0,
        is_sand in any::<bool>(), t in 0.0..1.0,
    ) {
        let base = moved(load, modulus, is_sand, t);
        let loaded = moved(load + more, modulus, is_sand, t);
        let stiff = moved(load, modulus + stiffer, is_sand, t);
        for pick in [pushed, pulled] {
            let Some(at) = pick(&base).at_working_load.as_ref() else { continue };
            if let Some(further) = pick(&loaded).at_working_load.as_ref() {
                prop_assert!(further.movement > at.movement);
            }
            let less = pick(&stiff).at_working_load.as_ref().unwrap();
            prop_assert!(less.movement < at.movement);
            near(at.helices.iter().map(|h| h.load.si()).sum(), load * 1e3, 1e-9);
            near((at.shaft_part + at.helix_part).si(), at.movement.si(), 1e-9);
            prop_assert!(at.shaft_part <= at.elastic_line * (1.0 + 1e-9));
            let tenth = pick(&base).at_tenth_of_helix;
            prop_assert!(tenth.gross <= tenth.net && tenth.net.si() <= pick(&base).ultimate.si() * (1.0 + 1e-12));
        }
    }
}
