//! Properties of any pile in any layered profile: units do not matter, stronger or drier
//! soil never carries less, order does not matter, a helix more never bears less.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::*;

/// A layer of a random profile.
#[derive(Debug, Clone)]
pub struct CaseLayer {
    pub bottom: f64,
    pub weight: f64,
    pub saturated: f64,
    pub is_sand: bool,
    /// kPa, or degrees in sand.
    pub strength: f64,
}

/// A random pile in a random profile, metres and kilonewtons.
#[derive(Debug, Clone)]
pub struct Case {
    pub layers: Vec<CaseLayer>,
    pub water: f64,
    pub shaft: f64,
    pub helices: Vec<(f64, f64)>,
}

impl Case {
    pub fn soil(&self) -> Json {
        let mut top = 0.0;
        let layers: Vec<Json> = self
            .layers
            .iter()
            .map(|l| {
                let layer = json!({
                    "top": q(top, "m"), "bottom": q(l.bottom, "m"),
                    "unit_weight": q(l.weight, "kN_per_m3"),
                    "saturated_unit_weight": q(l.saturated, "kN_per_m3"),
                    "soil": if l.is_sand { sand(l.strength) } else { clay(l.strength) },
                });
                top = l.bottom;
                layer
            })
            .collect();
        json!({ "layers": layers, "water_depth": q(self.water, "m") })
    }

    pub fn pile(&self) -> Json {
        pile(self.shaft, &self.helices)
    }

    fn request(&self) -> Json {
        json!({ "soil": self.soil(), "pile": self.pile() })
    }

    /// Ultimate compression and tension, N.
    fn ultimates(&self) -> [f64; 2] {
        ultimates(&answer(self.request()))
    }
}

fn ultimates(a: &Answer<Outcome>) -> [f64; 2] {
    [compression(a).ultimate.si(), tension(a).ultimate.si()]
}

fn layer() -> impl Strategy<Value = (f64, f64, f64, bool, f64)> {
    (0.8..5.0, 15.0..20.0, 0.0..4.0, any::<bool>(), 0.0..1.0)
        .prop_map(|(h, w, s, is_sand, t)| (h, w, s, is_sand, t))
}

/// Any pile of 1 to 6 helices in 1 to 5 layers, the last one deep.
pub fn case() -> impl Strategy<Value = Case> {
    let helix = (0.2..0.45, 0.35..1.6);
    (
        prop::collection::vec(layer(), 1..=5),
        0.0..20.0,
        0.06..0.12,
        0.7..5.0,
        prop::collection::vec(helix, 1..=6),
    )
        .prop_map(|(layers, water, shaft, first, helices)| {
            let mut bottom = 0.0;
            let last = layers.len() - 1;
            let layers = layers
                .into_iter()
                .enumerate()
                .map(|(i, (height, weight, more, is_sand, t))| {
                    bottom += if i == last { 30.0 } else { height };
                    CaseLayer {
                        bottom,
                        weight,
                        saturated: weight + more,
                        is_sand,
                        strength: if is_sand {
                            16.0 + 29.0 * t
                        } else {
                            10.0 + 240.0 * t
                        },
                    }
                })
                .collect();
            let mut z = first;
            let helices = helices
                .into_iter()
                .map(|(d, gap)| {
                    let here = z;
                    z += gap;
                    (d, here)
                })
                .collect();
            Case {
                layers,
                water,
                shaft,
                helices,
            }
        })
}

/// The same request in other units.
pub fn in_us_units(value: &mut Json) {
    if let Json::Object(map) = value
        && let (Some(v), Some(unit)) = (map.get("value").and_then(Json::as_f64), map.get("unit"))
    {
        let (v, unit) = match unit.as_str().unwrap() {
            "m" if v < 1.0 => (v / 0.0254, "in"),
            "m" => (v / 0.3048, "ft"),
            "kPa" => (v / 0.047_880_258_980_335_84, "psf"),
            "kN_per_m3" => (v / 0.157_087_463_846_246_2, "pcf"),
            "deg" => (v * std::f64::consts::PI / 180.0, "rad"),
            other => (v, other),
        };
        *value = q(v, unit);
        return;
    }
    match value {
        Json::Object(map) => map.values_mut().for_each(in_us_units),
        Json::Array(list) => list.iter_mut().for_each(in_us_units),
        _ => {}
    }
}

/// No less, but for rounding.
fn no_less(after: [f64; 2], before: [f64; 2]) -> bool {
    (0..2).all(|i| after[i] >= before[i] * (1.0 - 1e-12))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn the_same_physics_in_other_units_gives_the_same_answer(case in case()) {
        let mut request = case.request();
        let metric = answer(request.clone());
        in_us_units(&mut request);
        let us = answer(request);
        let (a, b) = (ultimates(&metric), ultimates(&us));
        for i in 0..2 {
            prop_assert!((a[i] - b[i]).abs() <= 1e-9 * a[i], "{} {}", a[i], b[i]);
        }
        prop_assert_eq!(compression(&metric).governing_mode, compression(&us).governing_mode);
        prop_assert_eq!(tension(&metric).governing_mode, tension(&us).governing_mode);
    }

    #[test]
    fn stronger_clay_never_carries_less(case in case(), by in 1.0..3.0) {
        let before = case.ultimates();
        let mut after = case.clone();
        for layer in after.layers.iter_mut().filter(|l| !l.is_sand) {
            layer.strength *= by;
        }
        prop_assert!(no_less(after.ultimates(), before));
    }

    #[test]
    fn one_stronger_layer_never_carries_less(case in case(), pick in 0usize..5, share in 0.0..1.0) {
        let before = case.ultimates();
        let mut after = case.clone();
        let at = pick % after.layers.len();
        let layer = &mut after.layers[at];
        let most = if layer.is_sand { 45.0 } else { 900.0 };
        layer.strength += share * (most - layer.strength);
        prop_assert!(no_less(after.ultimates(), before), "{:?} {:?}", after.ultimates(), before);
    }

    #[test]
    fn a_deeper_water_table_never_carries_less(case in case(), down in 0.0..10.0) {
        let before = case.ultimates();
        let after = Case { water: case.water + down, ..case };
        prop_assert!(no_less(after.ultimates(), before));
    }

    #[test]
    fn order_of_the_helices_does_not_matter(case in case(), seed in 0usize..720) {
        let a = answer(case.request());
        let mut shuffled = case.clone();
        let n = shuffled.helices.len();
        shuffled.helices.rotate_left(seed % n);
        if seed % 2 == 0 {
            shuffled.helices.reverse();
        }
        let b = answer(shuffled.request());
        prop_assert_eq!(a.result, b.result);
    }

    #[test]
    fn a_helix_more_never_lowers_the_sum_of_bearing(
        case in case(), d in 0.2..0.45, z in 0.7..12.0f64,
    ) {
        prop_assume!(case.helices.iter().all(|h| (h.1 - z).abs() > 0.02));
        let sums = |c: &Case| {
            let a = answer(c.request());
            [
                compression(&a).individual_bearing.total.si(),
                tension(&a).individual_bearing.total.si(),
            ]
        };
        let mut more = case.clone();
        more.helices.push((d, z));
        prop_assert!(no_less(sums(&more), sums(&case)));
    }

    #[test]
    fn uplift_is_continuous_in_depth(case in case(), z in 1.0..8.0f64) {
        // in one soil and with the default methods: no jump within a millimetre beyond the
        // slope of stress and factors
        let at = |z: f64| {
            let mut c = case.clone();
            c.layers = vec![c.layers.last().unwrap().clone()];
            c.helices = vec![(c.helices[0].0, z)];
            c.ultimates()[1]
        };
        let (a, b) = (at(z), at(z + 1e-6));
        prop_assert!((b - a).abs() <= 1e-4 * a, "{a} {b}");
    }

    #[test]
    fn every_number_is_finite_and_the_lesser_governs(case in case()) {
        let a = answer(case.request());
        for r in [compression(&a), tension(&a)] {
            prop_assert!(r.ultimate.si().is_finite() && r.ultimate.si() > 0.0);
            let individual = r.individual_bearing.total.si();
            let cylinder = r.cylindrical_shear.as_ref().map_or(f64::INFINITY, |c| c.total.si());
            prop_assert_eq!(r.ultimate.si(), individual.min(cylinder));
        }
    }
}

#[test]
fn the_ends_of_every_range_give_finite_numbers() {
    for (strength, weight, d, z) in [
        (sand(45.0), 26.0, 1.5, 90.0),
        (sand(15.0), 10.0, 0.1, 0.1),
        (clay(1000.0), 26.0, 1.5, 90.0),
        (clay(1.0), 10.0, 0.1, 0.1),
    ] {
        for water in [0.0, 100.0] {
            let mut ground = soil(&[(100.0, weight, strength.clone())]);
            ground["water_depth"] = q(water, "m");
            let a = answer(json!({
                "soil": ground, "pile": pile(0.02, &[(d, z), (d, z + 0.5)]),
                "methods": { "width_term": "include", "local_shear": "two_thirds",
                    "shaft_adhesion": { "alpha": { "ignored_depth": q(0.0, "m") } } },
            }));
            for force in ultimates(&a) {
                assert!(force.is_finite() && force > 0.0);
            }
        }
    }
}
