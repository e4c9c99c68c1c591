//! An independent recomputation: the same physics by slices of soil, written anew without
//! the equations of this folder, against random layered profiles.

use proptest::prelude::*;
use serde_json::json;

use super::properties::{Case, case};
use super::*;
use crate::quantity::ForceUnit;

const SLICES: usize = 4000;

/// Strength at a depth: undrained strength, or friction angle in radians.
#[derive(Clone, Copy)]
enum Strength {
    Su(f64),
    Phi(f64),
}

fn strength(case: &Case, z: f64) -> Strength {
    let layer = case
        .layers
        .iter()
        .find(|l| z < l.bottom)
        .unwrap_or(case.layers.last().unwrap());
    if layer.is_sand {
        Strength::Phi(layer.strength.to_radians())
    } else {
        Strength::Su(layer.strength)
    }
}

fn stress(case: &Case, z: f64) -> f64 {
    let mut top = 0.0;
    let mut sum = 0.0;
    for layer in &case.layers {
        let bottom = layer.bottom.min(z);
        if bottom <= top {
            break;
        }
        let dry = (case.water.min(bottom) - top).clamp(0.0, bottom - top);
        sum += layer.weight * dry + (layer.saturated - 9.81) * (bottom - top - dry);
        top = bottom;
    }
    sum
}

fn listed(list: &[(f64, f64)], phi_rad: f64) -> f64 {
    let phi = phi_rad.to_degrees();
    if phi <= list[0].0 {
        return list[0].1;
    }
    for w in list.windows(2) {
        if phi <= w[1].0 {
            return w[0].1 + (w[1].1 - w[0].1) * (phi - w[0].0) / (w[1].0 - w[0].0);
        }
    }
    list[list.len() - 1].1
}

const M: &[(f64, f64)] = &[
    (20.0, 0.05),
    (25.0, 0.1),
    (30.0, 0.15),
    (35.0, 0.25),
    (40.0, 0.35),
    (45.0, 0.5),
];
const CR: &[(f64, f64)] = &[
    (20.0, 2.5),
    (25.0, 3.0),
    (30.0, 4.0),
    (35.0, 5.0),
    (40.0, 7.0),
    (45.0, 9.0),
];
const MU: &[(f64, f64)] = &[
    (25.0, 0.033),
    (30.0, 0.075),
    (35.0, 0.18),
    (40.0, 0.25),
    (45.0, 0.289),
];
const CRU: &[(f64, f64)] = &[
    (25.0, 3.0),
    (30.0, 4.0),
    (35.0, 5.0),
    (40.0, 7.0),
    (45.0, 9.0),
];

#[allow(clippy::disallowed_methods)]
fn bearing(case: &Case, z: f64, d: f64, at: f64, up: bool) -> f64 {
    let sv = stress(case, z);
    let r = z / d;
    match (strength(case, at), up) {
        (Strength::Su(su), false) => su * f64::min(9.0, 6.0 + 1.2 * r),
        (Strength::Su(su), true) => f64::min(9.0 * su, f64::min(9.0, 1.2 * r) * su + sv),
        (Strength::Phi(phi), up) => {
            let s = phi.sin();
            let nq = (std::f64::consts::PI * phi.tan()).exp() * (1.0 + s) / (1.0 - s);
            if !up {
                return sv * nq;
            }
            let r = r.min(listed(CR, phi));
            let fq = 1.0 + 2.0 * r * (1.0 + listed(M, phi) * r) * 0.95 * phi.tan();
            sv * nq.min(fq)
        }
    }
}

#[allow(clippy::disallowed_methods)]
fn shear(case: &Case, z: f64, top_ratio: f64, up: bool) -> f64 {
    match strength(case, z) {
        Strength::Su(su) => su,
        Strength::Phi(phi) if up => {
            let growth = if phi.to_degrees() < 25.0 {
                0.0
            } else {
                listed(MU, phi)
            };
            let k = 0.6 + growth * top_ratio.min(listed(CRU, phi));
            stress(case, z) * k * phi.tan()
        }
        Strength::Phi(phi) => {
            let phi = phi.min(0.618_033_988_75_f64.asin());
            stress(case, z) * (1.0 - phi.sin()) * phi.tan()
        }
    }
}

/// Individual bearing and cylinder by slices, kN.
fn by_slices(case: &Case, up: bool) -> (f64, Option<f64>) {
    let one = |d: f64, z: f64| {
        let (from, to) = if up {
            ((z - 2.0 * d).max(0.0), z)
        } else {
            (z, z + 2.0 * d)
        };
        let mut sum = 0.0;
        for i in 0..SLICES {
            let at = from + (to - from) * (i as f64 + 0.5) / SLICES as f64;
            sum += bearing(case, z, d, at, up);
        }
        let area = std::f64::consts::FRAC_PI_4 * (d * d - case.shaft * case.shaft);
        sum / SLICES as f64 * area
    };
    let mut helices = case.helices.clone();
    helices.sort_by(|a, b| a.1.total_cmp(&b.1));
    let total: f64 = helices.iter().map(|&(d, z)| one(d, z)).sum();
    if helices.len() < 2 {
        return (total, None);
    }
    let end = if up {
        helices[0]
    } else {
        helices[helices.len() - 1]
    };
    let top_ratio = helices[0].1 / helices[0].0;
    let mut cylinder = one(end.0, end.1);
    for w in helices.windows(2) {
        let (from, to) = (w[0].1, w[1].1);
        let d = (w[0].0 + w[1].0) / 2.0;
        for i in 0..SLICES {
            let at = from + (to - from) * (i as f64 + 0.5) / SLICES as f64;
            let h = (to - from) / SLICES as f64;
            cylinder += std::f64::consts::PI * d * h * shear(case, at, top_ratio, up);
        }
    }
    (total, Some(cylinder))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn both_modes_agree_with_slices_of_soil(case in case()) {
        let a = answer(json!({ "soil": case.soil(), "pile": case.pile() }));
        for (up, r) in [(false, compression(&a)), (true, tension(&a))] {
            let (individual, cylinder) = by_slices(&case, up);
            let got = r.individual_bearing.total.get(ForceUnit::KN);
            prop_assert!((got - individual).abs() <= 2e-3 * individual, "{got} {individual}");
            match (&r.cylindrical_shear, cylinder) {
                (Some(c), Some(expected)) => {
                    let got = c.total.get(ForceUnit::KN);
                    prop_assert!((got - expected).abs() <= 2e-3 * expected, "{got} {expected}");
                }
                (None, None) => {}
                other => prop_assert!(false, "{other:?}"),
            }
        }
    }
}
