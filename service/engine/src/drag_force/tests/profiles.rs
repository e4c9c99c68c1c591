//! Random layered profiles against a numeric integration of the definitions, and what must hold
//! for any profile.

use super::*;
use crate::drag_force::{DragOutcome, NeutralPlanePosition};
use crate::math::PI;
use crate::random::Random;

/// A layer in metres, kN/m3, kPa.
#[derive(Debug, Clone)]
struct Layer {
    thickness: f64,
    weight: f64,
    lower: f64,
    upper: f64,
    strength: Option<f64>,
    limit: Option<f64>,
}

#[derive(Debug, Clone)]
struct Profile {
    layers: Vec<Layer>,
    water: Option<f64>,
    surcharge: f64,
    diameter: f64,
    head: f64,
    toe: f64,
    load: f64,
    resistance: f64,
    settling: f64,
}

impl Profile {
    fn random(random: &mut Random) -> Self {
        let count = 1 + random.below(6);
        let layers: Vec<_> = (0..count)
            .map(|_| {
                let upper = random.between(0.15, 0.9);
                let by_strength = random.below(4) == 0;
                Layer {
                    thickness: random.between(0.4, 5.0),
                    weight: random.between(14.0, 22.0),
                    lower: upper * random.between(0.2, 1.0),
                    upper,
                    strength: by_strength.then(|| random.between(10.0, 120.0)),
                    limit: (random.below(3) == 0).then(|| random.between(5.0, 40.0)),
                }
            })
            .collect();
        let reach: f64 = layers.iter().map(|l| l.thickness).sum();
        let toe = reach * random.between(0.6, 1.0);
        Self {
            layers,
            water: (random.below(3) > 0).then(|| reach * random.between(0.0, 0.9)),
            surcharge: if random.below(2) == 0 {
                0.0
            } else {
                random.between(0.0, 60.0)
            },
            diameter: random.between(0.06, 0.3),
            head: toe * random.between(-0.1, 0.3).max(-1.0),
            toe,
            load: random.between(5.0, 120.0),
            resistance: random.between(30.0, 300.0),
            settling: toe * random.between(0.1, 0.99),
        }
    }

    fn request(&self) -> Json {
        let layers: Vec<_> = self
            .layers
            .iter()
            .map(|l| {
                let friction = match l.strength {
                    Some(strength) => json!({ "alpha": {
                        "lower_factor": l.lower, "upper_factor": l.upper,
                        "undrained_strength": q(strength, "kPa")
                    } }),
                    None => json!({ "beta": { "lower_factor": l.lower, "upper_factor": l.upper } }),
                };
                json!({
                    "thickness": q(l.thickness, "m"), "unit_weight": q(l.weight, "kN_per_m3"),
                    "friction": friction, "friction_limit": l.limit.map(|f| q(f, "kPa")),
                })
            })
            .collect();
        json!({
            "shaft": { "round": { "outside_diameter": q(self.diameter, "m") } },
            "head_depth": q(self.head, "m"), "toe_depth": q(self.toe, "m"),
            "drag": {
                "permanent_load": q(self.load, "kN"),
                "friction": { "layers": {
                    "layers": layers, "water_depth": self.water.map(|z| q(z, "m")),
                    "surcharge": q(self.surcharge, "kPa"),
                } },
                "toe": { "resistance": { "given": { "ultimate": q(self.resistance, "kN") } } },
                "settling": { "depth": q(self.settling, "m"), "cause": { "fill": {} } },
                "method": "neutral_plane",
            }
        })
    }

    fn drag(&self) -> DragOutcome {
        answer(self.request()).result.drag
    }

    /// Unit friction at a depth in a layer that begins at `top` under a total stress.
    fn friction(&self, layer: &Layer, total: f64, depth: f64, factor: f64) -> f64 {
        let pore = self.water.map_or(0.0, |w| 9.81 * (depth - w).max(0.0));
        let f = factor * layer.strength.unwrap_or(total - pore);
        layer.limit.map_or(f, |limit| f.min(limit))
    }

    /// Depths with the upper and lower friction summed down to them, kN, by the rule of the
    /// midpoint in many thin slices of each layer.
    fn sums(&self) -> Vec<[f64; 3]> {
        const SLICES: usize = 20_000;
        let contact = self.head.max(0.0);
        let mut out = vec![[contact, 0.0, 0.0]];
        let (mut top, mut total) = (0.0, self.surcharge);
        for layer in &self.layers {
            let (from, to) = (
                f64::max(top, contact),
                f64::min(top + layer.thickness, self.toe),
            );
            let h = (to - from) / SLICES as f64;
            for k in 0..if h > 0.0 { SLICES } else { 0 } {
                let z = from + (k as f64 + 0.5) * h;
                let here = total + layer.weight * (z - top);
                let [_, upper, lower] = out[out.len() - 1];
                let area = PI * self.diameter * h;
                out.push([
                    from + (k as f64 + 1.0) * h,
                    upper + area * self.friction(layer, here, z, layer.upper),
                    lower + area * self.friction(layer, here, z, layer.lower),
                ]);
            }
            total += layer.weight * layer.thickness;
            top += layer.thickness;
        }
        out
    }
}

/// Depth and upper friction where Q + S_u = R + S_l(L) - S_l, straight within a slice.
fn crossing(sums: &[[f64; 3]], load: f64, toe: f64) -> Option<(f64, f64)> {
    let whole = sums[sums.len() - 1][2];
    let g = |s: &[f64; 3]| load + s[1] + s[2] - toe - whole;
    let at = sums.iter().position(|s| g(s) >= 0.0)?;
    if at == 0 {
        return Some((sums[0][0], 0.0));
    }
    let (a, b) = (&sums[at - 1], &sums[at]);
    let t = -g(a) / (g(b) - g(a));
    Some((a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])))
}

/// The service against slices, on 60 profiles; every kind of result must be among them.
#[test]
fn sums_and_plane_are_those_of_thin_slices() {
    let mut random = Random(20_261_128);
    let mut seen = [0; 3];
    for _ in 0..60 {
        let profile = Profile::random(&mut random);
        let sums = profile.sums();
        let last = sums[sums.len() - 1];
        let drag = profile.drag();
        let balance = drag.balance.as_ref().expect("a balance");
        close(balance.greatest_drag.si() / 1e3, last[1], 1e-7);
        close(balance.shaft_resistance.si() / 1e3, last[2], 1e-7);
        let held = profile.load <= profile.resistance + last[2];
        match (held, crossing(&sums, profile.load, profile.resistance)) {
            (false, _) => {
                assert_eq!(balance.position, NeutralPlanePosition::None, "{profile:?}");
                assert_eq!((balance.neutral_plane, drag.governing), (None, None));
                seen[0] += 1;
            }
            (true, None) => {
                assert_eq!(balance.position, NeutralPlanePosition::AtToe, "{profile:?}");
                let plane = balance.neutral_plane.expect("a plane");
                close(plane.depth.si(), profile.toe, 1e-12);
                close(plane.drag_force.si() / 1e3, last[1], 1e-7);
                seen[1] += 1;
            }
            (true, Some((depth, force))) => {
                assert_eq!(balance.position, NeutralPlanePosition::AlongShaft);
                let plane = balance.neutral_plane.expect("a plane");
                assert!(
                    (plane.depth.si() - depth).abs() <= 1e-6 * profile.toe,
                    "{profile:?}"
                );
                let slack = 1e-6 * last[1];
                assert!(
                    (plane.drag_force.si() / 1e3 - force).abs() <= slack,
                    "{profile:?}"
                );
                seen[2] += 1;
            }
        }
        // at the base of the settling ground
        let base = drag.fill_base.expect("a base");
        let after = sums
            .iter()
            .position(|s| s[0] >= profile.settling)
            .unwrap_or(0);
        let want = if after == 0 {
            0.0
        } else {
            let (a, b) = (sums[after - 1], sums[after]);
            a[1] + (b[1] - a[1]) * (profile.settling - a[0]) / (b[0] - a[0])
        };
        assert!(
            (base.drag_force.si() / 1e3 - want).abs() <= 1e-6 * last[1],
            "{profile:?}"
        );
    }
    assert!(seen.iter().all(|n| *n > 0), "{seen:?}");
}

/// At the neutral plane load and resistance are equal, the load in the pile is nowhere larger,
/// and it ends at the mobilised toe.
#[test]
fn the_curve_closes() {
    let mut random = Random(5);
    for _ in 0..100 {
        let profile = Profile::random(&mut random);
        let drag = profile.drag();
        let balance = drag.balance.as_ref().expect("a balance");
        let names: Vec<_> = drag.curve.columns.iter().map(|c| c.name.as_ref()).collect();
        let rows = &drag.curve.rows;
        assert!(rows.windows(2).all(|w| w[0][0].value() < w[1][0].value()));
        let Some(plane) = balance.neutral_plane else {
            assert_eq!(names, ["depth", "load_from_above", "resistance_from_below"]);
            continue;
        };
        assert_eq!(
            names,
            ["depth", "load_from_above", "resistance_from_below", "load"]
        );
        close(
            plane.maximum_load.si(),
            drag.permanent_load.si() + plane.drag_force.si(),
            1e-12,
        );
        let most = rows.iter().map(|r| r[3].value()).fold(0.0, f64::max);
        close(most, plane.maximum_load.si(), 1e-9);
        let last = &rows[rows.len() - 1];
        close(last[0].value(), profile.toe, 1e-9);
        for row in rows {
            let [above, below, load] = [1, 2, 3].map(|i| row[i].value());
            let slack = 1e-9 * most.max(balance.toe_resistance.si());
            assert!(
                (load - above.min(below)).abs() <= slack,
                "{profile:?} {row:?}"
            );
        }
        let sum: f64 = drag.layers.iter().map(|l| l.upper_force.si()).sum();
        close(balance.greatest_drag.si(), sum, 1e-12);
    }
}

/// A layer cut in two, and units, change nothing.
#[test]
fn cutting_a_layer_changes_nothing() {
    let mut random = Random(77);
    for _ in 0..60 {
        let profile = Profile::random(&mut random);
        let mut cut = profile.clone();
        let at = random.below(cut.layers.len());
        let mut second = cut.layers[at].clone();
        let part = random.between(0.1, 0.9);
        second.thickness *= 1.0 - part;
        cut.layers[at].thickness *= part;
        cut.layers.insert(at + 1, second);
        let (a, b) = (profile.drag(), cut.drag());
        let (a, b) = (a.balance.expect("one"), b.balance.expect("one"));
        assert_eq!(a.position, b.position);
        close(b.greatest_drag.si(), a.greatest_drag.si(), 1e-9);
        if let (Some(a), Some(b)) = (a.neutral_plane, b.neutral_plane) {
            assert!((a.depth.si() - b.depth.si()).abs() <= 1e-9 * profile.toe);
            assert!((a.maximum_load - b.maximum_load).si().abs() <= 1e-9 * a.maximum_load.si());
        }
    }
}

/// More load raises the neutral plane and takes drag away; more toe lowers it and adds drag;
/// more of upper friction never makes the largest load smaller.
#[test]
fn load_toe_and_friction_move_the_plane_the_right_way() {
    let mut random = Random(99);
    let mut moved = 0;
    for _ in 0..100 {
        let profile = Profile::random(&mut random);
        let of = |change: &dyn Fn(&mut Profile)| {
            let mut other = profile.clone();
            change(&mut other);
            other.drag().balance.expect("one").neutral_plane
        };
        let Some(plain) = of(&|_| {}) else { continue };
        let slack = 1e-9 * profile.toe;
        if let Some(heavy) = of(&|p| p.load += 10.0) {
            assert!(heavy.depth.si() <= plain.depth.si() + slack);
            assert!(heavy.drag_force.si() <= plain.drag_force.si() + 1e-6);
            moved += 1;
        }
        let firm = of(&|p| p.resistance += 20.0).expect("a plane");
        assert!(firm.depth.si() >= plain.depth.si() - slack);
        assert!(firm.maximum_load.si() >= plain.maximum_load.si() - 1e-6);
        let rough = of(&|p| p.layers.iter_mut().for_each(|l| l.upper *= 1.2)).expect("a plane");
        assert!(rough.depth.si() <= plain.depth.si() + slack);
        assert!(rough.maximum_load.si() >= plain.maximum_load.si() - 1e-6);
    }
    assert!(moved > 20);
}
