//! Relations between answers that hold whatever the numbers are: layers split, helices far
//! apart, modes that cross where algebra says, depth that is continuous or told to jump.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::properties::{Case, case};
use super::*;

/// Relative difference, of what is not nil.
#[track_caller]
fn same(a: f64, b: f64, relative: f64) {
    let most = a.abs().max(b.abs());
    assert!((a - b).abs() <= relative * most, "{a} against {b}");
}

fn request(case: &Case) -> Json {
    json!({ "soil": case.soil(), "pile": case.pile() })
}

/// Everything about a resistance that a split of layers must leave alone.
fn figures(r: &AxialResistance) -> Vec<f64> {
    let helices = &r.individual_bearing.helices;
    let mut all = vec![r.ultimate.si(), r.individual_bearing.total.si()];
    all.extend(
        r.cylindrical_shear
            .iter()
            .flat_map(|c| [c.total.si(), c.shear.si()]),
    );
    all.extend(
        helices
            .iter()
            .flat_map(|h| [h.bearing.si(), h.effective_stress.si()]),
    );
    all.extend(r.embedment.iter().map(|e| e.embedment_ratio));
    all
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// A layer cut in two carries what it carried: 1e-12.
    #[test]
    fn splitting_a_layer_changes_nothing(
        case in case(), pick in 0usize..5, share in 0.05..0.95_f64, width in any::<bool>()
    ) {
        let mut whole = request(&case);
        if width {
            whole["methods"] = json!({ "width_term": "include" });
        }
        let mut split = whole.clone();
        let layers = split["soil"]["layers"].as_array_mut().unwrap();
        let at = pick % layers.len();
        let depth = |l: &Json, end: &str| l[end]["value"].as_f64().unwrap();
        let (top, bottom) = (depth(&layers[at], "top"), depth(&layers[at], "bottom"));
        let cut = top + share * (bottom - top);
        let mut lower = layers[at].clone();
        layers[at]["bottom"] = q(cut, "m");
        lower["top"] = q(cut, "m");
        layers.insert(at + 1, lower);
        let (before, after) = (answer(whole), answer(split));
        for (a, b) in [
            (compression(&before), compression(&after)),
            (tension(&before), tension(&after)),
        ] {
            let (a, b) = (figures(a), figures(b));
            prop_assert_eq!(a.len(), b.len());
            for (x, y) in a.into_iter().zip(b) {
                same(x, y, 1e-12);
            }
        }
    }

    /// The datum of the profile does not matter: from existing grade with a cut or a fill, or
    /// from final grade with what is left or added.
    #[test]
    fn moving_the_datum_changes_nothing(case in case(), by in 0.05..0.95_f64) {
        let from_final = request(&case);
        // a cut: one more layer above, taken away again; a fill: its own first layer as fill
        let h = 3.0 * by;
        let mut cut = from_final.clone();
        for layer in cut["soil"]["layers"].as_array_mut().unwrap() {
            for end in ["top", "bottom"] {
                let z = layer[end]["value"].as_f64().unwrap();
                layer[end] = q(z + h, "m");
            }
        }
        let above = json!({
            "top": q(0.0, "m"), "bottom": q(h, "m"), "unit_weight": q(17.0, "kN_per_m3"),
            "soil": sand(33.0),
        });
        cut["soil"]["layers"].as_array_mut().unwrap().insert(0, above);
        cut["soil"]["water_depth"] = q(case.water + h, "m");
        cut["soil"]["grade_change"] = json!({ "cut": { "depth": q(h, "m") } });
        let mut raised = from_final.clone();
        let mut with_fill = cut.clone();
        with_fill["soil"].as_object_mut().unwrap().remove("grade_change");
        with_fill["soil"]["layers"][0]["soil"] = fill();
        raised["soil"]["grade_change"] = json!({
            "raise": { "height": q(h, "m"), "unit_weight": q(17.0, "kN_per_m3") },
        });
        for request in [&mut raised, &mut with_fill] {
            for helix in request["pile"]["helices"].as_array_mut().unwrap() {
                let z = helix["depth"]["value"].as_f64().unwrap();
                helix["depth"] = q(z + h, "m");
            }
        }
        for (one, other) in [(from_final, cut), (with_fill, raised)] {
            let (a, b) = (answer(one), answer(other));
            for (a, b) in [
                (compression(&a), compression(&b)),
                (tension(&a), tension(&b)),
            ] {
                for (x, y) in figures(a).into_iter().zip(figures(b)) {
                    same(x, y, 1e-9);
                }
            }
        }
    }

    /// Two equal helices far apart in deep clay carry twice what one does.
    #[test]
    fn two_helices_far_apart_are_twice_one(
        su in 10.0..200.0_f64, d in 0.2..0.45_f64, apart in 4.0..12.0_f64
    ) {
        let ground = soil(&[(60.0, 18.0, clay(su))]);
        let with = |list: &[(f64, f64)]| {
            answer(json!({ "soil": ground, "pile": pile(0.073, list) }))
        };
        let (z, gap) = (12.0 * d, apart * d);
        let one = with(&[(d, z)]);
        let two = with(&[(d, z), (d, z + gap)]);
        same(compression(&two).ultimate.si(), 2.0 * compression(&one).ultimate.si(), 1e-12);
        same(tension(&two).ultimate.si(), 2.0 * tension(&one).ultimate.si(), 1e-12);
    }

    /// Uniform clay, n equal helices: n 9 su A = 9 su A + (n - 1) pi D S su gives
    /// S/D = 9 A / (pi D^2), whatever n and su are. Below it the cylinder governs.
    #[test]
    fn the_modes_cross_where_algebra_says(
        su in 10.0..200.0_f64, d in 0.2..0.45_f64, n in 2usize..6, off in 0.001..0.3_f64
    ) {
        let hub = 0.073_f64;
        let area = std::f64::consts::PI / 4.0 * (d * d - hub * hub);
        let crossing = 9.0 * area / (std::f64::consts::PI * d * d);
        let ground = soil(&[(60.0, 18.0, clay(su))]);
        let governing = |ratio: f64| {
            let list: Vec<_> = (0..n).map(|i| (d, 6.0 + ratio * d * i as f64)).collect();
            let a = answer(json!({ "soil": ground, "pile": pile(hub, &list) }));
            let r = compression(&a);
            let total = r.cylindrical_shear.as_ref().unwrap().total;
            (r.governing_mode, total - r.individual_bearing.total)
        };
        prop_assert_eq!(governing(crossing * (1.0 - off)).0, GoverningMode::CylindricalShear);
        prop_assert_eq!(governing(crossing * (1.0 + off)).0, GoverningMode::IndividualBearing);
        let (_, apart) = governing(crossing);
        prop_assert!(apart.si().abs() < 1e-9 * 9.0 * su * 1e3 * area * n as f64);
    }

    /// The ultimate resistance follows depth without a jump, across shallow and deep and
    /// across layers, where every soil has credit and the method is continuous.
    #[test]
    fn capacity_is_continuous_in_depth(case in case()) {
        let deepest = case.helices.iter().map(|h| h.1).fold(0.0, f64::max);
        let first = case.helices[0].1;
        let mut request = request(&case);
        request["depth_curve"] = json!({
            "from": q(deepest - first + 0.5, "m"), "to": q(deepest + 6.0, "m"),
            "depth_count": 2, "points": true,
        });
        let step = 2e-7;
        let at = |from: f64| {
            let mut request = request.clone();
            request["depth_curve"]["from"] = q(from, "m");
            request["depth_curve"]["to"] = q(from + step, "m");
            let a = serde_json::to_value(answer(request)).unwrap();
            let rows = a["result"]["depth_curve"]["points"]["rows"].clone();
            [1, 5].map(|c| [0, 1].map(|r| rows[r][c].as_f64().unwrap()))
        };
        // at every change of the ground that a helix or its zone can meet, and between
        for layer in &case.layers {
            for helix in &case.helices {
                for reach in [0.0, 2.0 * helix.0, -2.0 * helix.0] {
                    let z = layer.bottom - reach + (deepest - helix.1);
                    if z > deepest - first + 0.6 && z < deepest + 5.9 {
                        for [above, below] in at(z - step / 2.0) {
                            same(above, below, 1e-4);
                        }
                    }
                }
            }
        }
        let a = answer(request);
        prop_assert!(!warns(&a, "capacity_jumps"));
    }
}

/// With a share of N_q the uplift of sand jumps at the critical ratio; it is told, with the
/// depth: (H/D)_cr = 4 at 30 degrees, so D = 0.3 m jumps at 1.2 m.
#[test]
fn a_method_that_is_not_continuous_is_told() {
    let mut request = json!({
        "soil": soil(&[(20.0, 18.0, sand(30.0))]), "pile": pile(0.073, &[(0.3, 5.0)]),
        "methods": { "uplift_sand": { "nq_tension": {} } },
        "depth_curve": { "from": q(0.5, "m"), "to": q(6.0, "m"), "depth_count": 4 },
    });
    let a = answer(request.clone());
    let told: Vec<_> = a
        .warnings
        .iter()
        .filter(|w| w.code == "capacity_jumps")
        .collect();
    assert_eq!(told.len(), 1);
    assert!(told[0].detail.contains("tension") && told[0].detail.contains("passes 1.2 m"));
    request["methods"] = json!({});
    assert!(!warns(&answer(request), "capacity_jumps"));
}
