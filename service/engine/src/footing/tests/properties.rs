//! Properties of any footing: more strength, depth, width or drier soil never carries less;
//! units and the company of other theories do not matter.

use proptest::prelude::*;

use super::*;
use crate::footing::FootingCapacity;

/// A random footing; kPa, kN/m3, m, degrees.
#[derive(Debug, Clone)]
pub struct Case {
    /// 0 strip, 1 rectangle, 2 square, 3 circle.
    pub shape: usize,
    pub width: f64,
    pub length: f64,
    pub depth: f64,
    pub phi: f64,
    pub cohesion: f64,
    /// Undrained strength, for an undrained soil.
    pub su: Option<f64>,
    pub weight: f64,
    /// What the saturated soil weighs more.
    pub soaked: f64,
    pub water: f64,
    pub with_shape: bool,
    pub with_depth: bool,
}

pub const DRAINED: [&str; 4] = [
    "terzaghi_1943",
    "meyerhof_1963",
    "hansen_1970",
    "vesic_1973",
];

impl Case {
    pub fn request(&self) -> Json {
        let length = |v: f64| q(v, "m");
        let shape = match self.shape {
            0 => json!({ "strip": { "width": length(self.width) } }),
            1 => {
                json!({ "rectangle": { "width": length(self.width), "length": length(self.length) } })
            }
            2 => json!({ "square": { "width": length(self.width) } }),
            _ => json!({ "circle": { "diameter": length(self.width) } }),
        };
        let strength = match self.su {
            Some(su) => json!({ "undrained": { "undrained_strength": q(su, "kPa") } }),
            None => json!({ "drained": {
                "friction_angle": q(self.phi, "deg"), "cohesion": q(self.cohesion, "kPa")
            } }),
        };
        let mut methods = DRAINED.to_vec();
        if self.su.is_some() {
            methods.push("skempton_1951");
        }
        let uses = |on: bool| if on { "include" } else { "leave_out" };
        json!({
            "methods": methods,
            "shape_factors": uses(self.with_shape),
            "depth_factors": uses(self.with_depth),
            "footing": { "shape": shape, "depth": length(self.depth) },
            "soil": {
                "strength": strength,
                "unit_weight": q(self.weight, "kN_per_m3"),
                "saturated_unit_weight": q(self.weight + self.soaked, "kN_per_m3"),
                "water_depth": length(self.water),
            },
        })
    }

    pub fn capacities(&self) -> Vec<FootingCapacity> {
        answer(self.request()).result.capacities
    }

    /// The same with one thing changed.
    pub fn with(&self, change: impl FnOnce(&mut Case)) -> Case {
        let mut other = self.clone();
        change(&mut other);
        other
    }

    /// D < B, where the depth factors of Hansen and Vesic are on their first branch.
    fn first_branch(&self) -> bool {
        self.depth < self.width
    }
}

/// Random footings with all factors in force.
pub fn case() -> impl Strategy<Value = Case> {
    let geometry = (0_usize..4, 0.3_f64..4.0, 1.0_f64..20.0, 0.0_f64..4.5);
    let strength = (0.0_f64..45.0, 1.0_f64..60.0, 5.0_f64..300.0, any::<bool>());
    let weights = (14.0_f64..20.0, 0.0_f64..4.0, 0.0_f64..15.0);
    (geometry, strength, weights).prop_map(|(geometry, strength, weights)| {
        let (shape, width, slender, deep) = geometry;
        let (phi, cohesion, su, is_clay) = strength;
        let (weight, soaked, water) = weights;
        Case {
            shape,
            width,
            length: width * slender,
            depth: width * deep,
            phi,
            cohesion,
            su: is_clay.then_some(su),
            weight,
            soaked,
            water,
            with_shape: true,
            with_depth: true,
        }
    })
}

/// Each capacity of `more` is at least that of `less`, by the measure.
fn never_less(
    less: &Case,
    more: &Case,
    measure: fn(&FootingCapacity) -> f64,
) -> Result<(), TestCaseError> {
    for (a, b) in less.capacities().iter().zip(more.capacities()) {
        let (low, high) = (measure(a), measure(&b));
        prop_assert!(
            high >= low * (1.0 - 1e-12),
            "{}: {low} then {high}",
            a.method.name()
        );
    }
    Ok(())
}

fn gross(c: &FootingCapacity) -> f64 {
    c.ultimate_gross.si()
}

fn net(c: &FootingCapacity) -> f64 {
    c.ultimate_net.si()
}

/// Gross load, of the base or per length of strip.
fn load(c: &FootingCapacity) -> f64 {
    let l = &c.ultimate_load;
    l.gross
        .map(|q| q.si())
        .or(l.gross_line.map(|q| q.si()))
        .unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn stronger_soil_bears_more(case in case(), more in 1.0_f64..1.5) {
        let stronger = case.with(|c| {
            c.phi = (c.phi * more).min(45.0);
            c.cohesion *= more;
            c.su = c.su.map(|su| su * more);
        });
        never_less(&case, &stronger, gross)?;
        never_less(&case, &stronger, net)?;
        let steeper = case.with(|c| c.phi = (c.phi * more).min(45.0));
        never_less(&case, &steeper, gross)?;
        let stickier = case.with(|c| c.cohesion *= more);
        never_less(&case, &stickier, gross)?;
    }

    /// On either side of D = B; across it the factors of Hansen and Vesic fall as published.
    #[test]
    fn deeper_bears_more(case in case(), more in 1.0_f64..1.3) {
        let deeper = case.with(|c| c.depth = (c.depth * more).min(5.0 * c.width));
        if case.first_branch() == deeper.first_branch() {
            never_less(&case, &deeper, gross)?;
        }
        let (a, b) = (case.with(|c| c.with_depth = false), deeper.with(|c| c.with_depth = false));
        never_less(&a, &b, gross)?;
    }

    /// A wider base carries more; its pressure grows only without the depth factors, which
    /// know depth over width.
    #[test]
    fn wider_carries_more(case in case(), more in 1.0_f64..1.5) {
        let wider = case.with(|c| {
            c.width *= more;
            c.length *= more;
        });
        never_less(&case, &wider, load)?;
        let off = |c: &Case| c.with(|c| c.with_depth = false);
        // where water lies below the base a wider one reaches into more of it
        let dry = |c: &Case| off(c).with(|c| c.water = 99.0);
        never_less(&dry(&case), &dry(&wider), gross)?;
        never_less(&off(&case), &off(&wider), load)?;
    }

    #[test]
    fn higher_water_never_helps(case in case(), lower in 0.0_f64..6.0) {
        prop_assume!(case.su.is_none());
        let drier = case.with(|c| c.water += lower);
        never_less(&case, &drier, gross)?;
        never_less(&case, &drier, net)?;
    }

    /// Undrained the net pressure knows no water at all.
    #[test]
    fn water_does_not_touch_undrained_net(case in case(), water in 0.0_f64..20.0) {
        prop_assume!(case.su.is_some());
        let other = case.with(|c| c.water = water);
        for (a, b) in case.capacities().iter().zip(other.capacities()) {
            prop_assert!((net(a) - net(&b)).abs() <= 1e-9 * net(a));
        }
    }

    #[test]
    fn units_do_not_matter(case in case()) {
        fn turn(value: &mut Json) {
            if let Some((number, unit)) = value["value"].as_f64().zip(value["unit"].as_str()) {
                let (factor, unit) = match unit {
                    "m" => (0.3048, "ft"),
                    "kPa" => (0.047_880_258_980_335_84, "psf"),
                    "kN_per_m3" => (0.157_087_463_845_983_6, "pcf"),
                    _ => (1.0, "deg"),
                };
                *value = q(number / factor, unit);
            } else if let Json::Object(members) = value {
                members.values_mut().for_each(turn);
            }
        }
        let mut us = case.request();
        turn(&mut us);
        for (a, b) in case.capacities().iter().zip(answer(us).result.capacities) {
            prop_assert!((gross(a) - gross(&b)).abs() <= 1e-9 * gross(a));
        }
    }

    #[test]
    fn company_does_not_matter(case in case()) {
        let together = answer(case.request());
        let mut lowest = f64::INFINITY;
        for found in &together.result.capacities {
            let mut request = case.request();
            request["methods"] = json!([found.method.name()]);
            let alone = answer(request);
            prop_assert_eq!(&alone.result.capacities[0], found);
            lowest = lowest.min(gross(found));
        }
        let named = together.result.lowest.unwrap();
        prop_assert_eq!(named.ultimate_gross.si(), lowest);
        prop_assert!(named.spread_ratio >= 1.0);
    }

    /// Without factors every shape bears c N_c + q N_q + 0.5 gamma B N_gamma.
    #[test]
    fn factors_left_out_are_one(case in case()) {
        let bare = case.with(|c| (c.with_shape, c.with_depth) = (false, false));
        let answer = answer(bare.request());
        let base = answer.result.base.unwrap();
        for c in &answer.result.capacities {
            for term in [c.cohesion_term, c.overburden_term, c.width_term] {
                prop_assert_eq!((term.shape_factor, term.depth_factor, term.correction_factor), (1.0, 1.0, 1.0));
            }
            let weight = base.unit_weight_below.map_or(0.0, |w| w.si());
            let sum = c.cohesion.si() * c.cohesion_term.bearing_factor
                + base.overburden.si() * c.overburden_term.bearing_factor
                + 0.5 * weight * base.width.si() * c.width_term.bearing_factor;
            prop_assert!((gross(c) - sum).abs() <= 1e-12 * sum);
        }
    }

    #[test]
    fn local_shear_never_helps(case in case()) {
        let mut reduced = case.request();
        reduced["local_shear"] = json!("two_thirds");
        for (full, less) in case.capacities().iter().zip(answer(reduced).result.capacities) {
            prop_assert!(gross(&less) <= gross(full) * (1.0 + 1e-12));
            prop_assert!(less.cohesion.si() < full.cohesion.si());
        }
    }
}
