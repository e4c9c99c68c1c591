//! What must hold for any ground: more of what drives heave never makes it less, more load
//! never more; units never matter; the integral is exact; a range holds its relation.

use serde_json::{Value as Json, json};

use super::{answer, close, q};
use crate::ground_heave::{FreezingHeave, SwellHeave};
use crate::math::{exp, pow};
use crate::random::Random;

const CASES: usize = 200;

/// Frozen ground: depth m, porosity, saturation, potential m2/(s K), index C_day, sensitivity
/// 1/MPa, pressure kPa.
type Frozen = [f64; 7];

fn frozen(random: &mut Random) -> Frozen {
    [
        random.between(1.6, 5.0),
        random.uniform(),
        random.uniform(),
        random.between(0.0, 2e-9),
        random.between(0.0, 3000.0),
        random.between(0.0, 20.0),
        random.between(0.0, 200.0),
    ]
}

fn of_frost([x, n, s, sp, f, a, p]: Frozen) -> Json {
    json!({ "frost": {
        "frost_depth": q(x, "m"),
        "in_situ": { "porosity_ratio": n, "saturation_ratio": s },
        "segregation": {
            "potential": q(sp, "m2_per_s_K"), "surface_freezing_index": q(f, "C_day"),
            "load_reduction": { "sensitivity": q(a, "per_MPa"), "pressure": q(p, "kPa") }
        }
    } })
}

fn frost(request: Json) -> FreezingHeave {
    answer(request).result.frost.unwrap()
}

fn swell(request: Json) -> SwellHeave {
    answer(json!({ "swell": request })).result.swell.unwrap()
}

#[test]
fn more_water_cold_and_potential_never_heave_less_and_load_never_more() {
    let mut random = Random(11);
    for _ in 0..CASES {
        let case = frozen(&mut random);
        let heave = frost(of_frost(case)).movement.si();
        assert!(heave >= 0.0 && heave.is_finite());
        for (place, up) in [
            (1, true),
            (2, true),
            (3, true),
            (4, true),
            (5, false),
            (6, false),
        ] {
            let mut more = case;
            more[place] = if place < 3 {
                case[place] + (1.0 - case[place]) * random.uniform()
            } else {
                case[place] * random.between(1.0, 2.0)
            };
            let other = frost(of_frost(more)).movement.si();
            let grows = other >= heave * (1.0 - 1e-12);
            let falls = other <= heave * (1.0 + 1e-12);
            assert!(if up { grows } else { falls }, "{case:?} {place}");
        }
    }
}

/// The integral over the winter against a march in 200,000 days' fractions: the front goes
/// down with the square root of time, and water comes at SP times the gradient.
#[test]
fn lenses_against_a_march_through_the_winter() {
    let mut random = Random(12);
    for _ in 0..20 {
        let [x, _, _, sp, f, a, p] = frozen(&mut random);
        let found = frost(of_frost([x, 0.0, 0.0, sp, f, a, p]));
        let winter = 150.0 * 86_400.0;
        let surface = f * 86_400.0 / winter;
        let left = sp * exp(-(a * 1e-6 * p * 1e3));
        let steps = 200_000;
        let sum: f64 = (0..steps)
            .map(|i| {
                // equal steps of the root of time, so that the first days are not lost
                let (u0, u1) = (f64::from(i), f64::from(i + 1));
                let at = |u: f64| winter * (u / f64::from(steps)) * (u / f64::from(steps));
                let front = x * (u0 + 0.5) / f64::from(steps);
                left * surface / front * (at(u1) - at(u0))
            })
            .sum();
        close(found.movement.si(), 1.09 * sum, 1e-9);
    }
}

#[test]
fn units_of_freezing_never_matter() {
    let mut random = Random(13);
    for _ in 0..CASES {
        let case @ [x, n, s, sp, f, a, p] = frozen(&mut random);
        let metric = frost(of_frost(case));
        let customary = frost(json!({ "frost": {
            "frost_depth": q(x / 0.3048, "ft"),
            "in_situ": { "porosity_ratio": n, "saturation_ratio": s },
            "segregation": {
                "potential": q(sp * 1e6 * 3600.0, "mm2_per_h_K"),
                "surface_freezing_index": q(f * 1.8, "F_day"),
                "load_reduction": {
                    "sensitivity": q(a / 20.885_434_233_150_13, "per_ksf"),
                    "pressure": q(p * 20.885_434_233_150_13, "psf")
                }
            }
        } }));
        close(customary.movement.si(), metric.movement.si(), 1e-12);
    }
}

/// Layers of random thickness and expansiveness from the ground down.
fn layers(random: &mut Random) -> Vec<(f64, f64, usize)> {
    let mut top = 0.0;
    let count = 1 + random.below(6);
    (0..count)
        .map(|_| {
            let bottom = top + random.between(0.05, 3.0);
            let layer = (top, bottom, random.below(4));
            top = bottom;
            layer
        })
        .collect()
}

fn by_depth(layers: &[(f64, f64, usize)], unit: &str, factor: f64) -> Json {
    let names = ["low", "medium", "high", "very_high"];
    let sent: Vec<_> = layers
        .iter()
        .map(|(top, bottom, kind)| {
            json!({
                "top": q(top / factor, unit), "bottom": q(bottom / factor, unit),
                "potential_expansiveness": names[*kind]
            })
        })
        .collect();
    json!({ "van_der_merwe": { "layers": sent } })
}

#[test]
fn swell_by_depth_is_the_exact_integral() {
    let mut random = Random(14);
    for _ in 0..60 {
        let case = layers(&mut random);
        let found = swell(by_depth(&case, "m", 1.0)).movement.si();
        let steps = 20_000;
        let sum: f64 = case
            .iter()
            .map(|(top, bottom, kind)| {
                let strain = [0.0, 0.25, 0.5, 1.0][*kind] / 12.0;
                let step = (bottom - top) / f64::from(steps);
                (0..steps)
                    .map(|i| {
                        let depth = top + (f64::from(i) + 0.5) * step;
                        strain * pow(10.0, -depth / 6.096) * step
                    })
                    .sum::<f64>()
            })
            .sum();
        assert!((found - sum).abs() <= 1e-8 * sum.max(1e-3), "{found} {sum}");
        // other units, and every layer cut in two, change nothing
        let feet = swell(by_depth(&case, "ft", 0.3048)).movement.si();
        assert!((feet - found).abs() <= 1e-12 * found.max(1e-6));
        let halves: Vec<_> = case
            .iter()
            .flat_map(|(t, b, k)| {
                let middle = t + (b - t) / 2.0;
                [(*t, middle, *k), (middle, *b, *k)]
            })
            .collect();
        let cut = swell(by_depth(&halves, "m", 1.0)).movement.si();
        assert!((cut - found).abs() <= 1e-12 * found.max(1e-6));
        // a more expansive layer never swells less, a layer more never takes away
        let mut worse = case.clone();
        let place = random.below(worse.len());
        worse[place].2 = (worse[place].2 + 1).min(3);
        assert!(swell(by_depth(&worse, "m", 1.0)).movement.si() >= found);
        let last = case[case.len() - 1].1;
        let mut deeper = case.clone();
        deeper.push((last, last + 1.0, 2));
        assert!(swell(by_depth(&deeper, "m", 1.0)).movement.si() > found);
    }
}

fn tested(thickness: f64, index: f64, stress: f64, pressure: f64) -> f64 {
    swell(json!({ "oedometer": { "layers": [{
        "thickness": q(thickness, "m"), "index": { "heave_index": { "index_ratio": index } },
        "initial_effective_stress": q(stress, "kPa"), "swell_pressure": q(pressure, "kPa")
    }] } }))
    .movement
    .si()
}

#[test]
fn swell_by_tests_grows_with_pressure_and_falls_with_stress() {
    let mut random = Random(15);
    for _ in 0..CASES {
        let (z, c) = (random.between(0.1, 5.0), random.between(0.01, 0.3));
        let (stress, pressure) = (random.between(5.0, 400.0), random.between(5.0, 400.0));
        let found = tested(z, c, stress, pressure);
        assert_eq!(found == 0.0, stress >= pressure);
        let more = random.between(1.0, 2.0);
        assert!(tested(z, c, stress, pressure * more) >= found);
        assert!(tested(z, c, stress * more, pressure) <= found);
        assert!(tested(z, c * more, stress, pressure) >= found);
        assert!(tested(z * more, c, stress, pressure) >= found);
        // the swell index over one plus the void ratio is the same index
        let e = random.between(0.3, 1.5);
        let other = swell(json!({ "oedometer": { "layers": [{
            "thickness": q(z / 0.0254, "in"),
            "index": { "swell_index": { "index_ratio": c * (1.0 + e), "void_ratio": e } },
            "initial_effective_stress": q(stress * 1e3, "Pa"), "swell_pressure": q(pressure * 1e-3, "MPa")
        }] } }));
        assert!((other.movement.si() - found).abs() <= 1e-12 * found.max(1e-6));
    }
}

#[test]
fn a_screening_is_a_range_that_holds_its_relation() {
    let mut random = Random(16);
    for _ in 0..CASES {
        let (pi, z) = (random.between(0.1, 0.7), random.between(0.05, 10.0));
        let ask = |pi: f64, z: f64| {
            swell(
                json!({ "index_screening": { "plasticity_index_ratio": pi, "thickness": q(z, "m") } }),
            )
        };
        let found = ask(pi, z);
        let range = found.range.as_ref().unwrap();
        assert!(range.lower <= range.relation && range.relation < range.upper);
        assert_eq!(found.movement, range.upper);
        let more = ask(
            (pi * random.between(1.0, 1.2)).min(0.7),
            z * random.between(1.0, 1.5),
        );
        assert!(more.movement >= found.movement);
    }
    // the ends of the range of the relation are still known
    for pi in [0.1, 0.7] {
        let found = swell(
            json!({ "index_screening": { "plasticity_index_ratio": pi, "thickness": q(1.0, "m") } }),
        );
        assert!(found.movement.si() > 0.0);
    }
}
