//! Piles that let go against every subset of piles, tried one by one: exactly one of them
//! pushes everywhere without a beam below a pile's head, and it is the one that is found.

use serde_json::{Value, json};

use super::answer;
use crate::beam::{Line, LineNode, Load, Network, Shape, Support, solve};
use crate::contract::Call;
use crate::layout::Request;

struct Dice(u64);

impl Dice {
    fn between(&mut self, a: f64, b: f64) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        a + (b - a) * ((self.0 >> 11) as f64 / (1u64 << 53) as f64)
    }
}

/// A line of 12 m with piles and forces, and the stiffness of the piles.
struct Strip {
    piles: Vec<f64>,
    even: f64,
    forces: Vec<(f64, f64)>,
    stiffness: f64,
}

const LENGTH: f64 = 12.0;
const RIGIDITY: f64 = 3e7;

fn strip(dice: &mut Dice) -> Strip {
    let count = 3 + (dice.between(0.0, 4.0) as usize);
    let step = LENGTH / count as f64;
    Strip {
        piles: (0..count)
            .map(|i| step * i as f64 + dice.between(0.1, step - 0.3))
            .collect(),
        even: dice.between(1e3, 8e3),
        forces: (0..3)
            .map(|_| (dice.between(0.0, LENGTH), dice.between(-40e3, 60e3)))
            .collect(),
        stiffness: dice.between(2e6, 4e7),
    }
}

impl Strip {
    fn request(&self) -> Call<Request> {
        let m = |v: f64| json!({"value": v, "unit": "m"});
        let at = |x: f64| json!({"x": m(x), "y": m(0.0)});
        let forces: Vec<Value> = self
            .forces
            .iter()
            .map(|f| json!({"kind": "other", "at": at(f.0), "load": {"value": f.1, "unit": "N"}}))
            .collect();
        let piles: Vec<Value> = self.piles.iter().map(|x| json!({"at": at(*x)})).collect();
        serde_json::from_value(json!({
            "design_basis": {"allowable_stress": {"combinations": {"own": {"list": [
                {"name": "all", "factors": [{"kind": "other", "factor": 1}]},
                {"name": "half", "factors": [{"kind": "other", "factor": 0.5}]}]}}}},
            "beams": [{"points": [at(0.0), at(LENGTH)],
                "flexural_rigidity": {"value": RIGIDITY, "unit": "N_m2"},
                "line_loads": [{"kind": "other", "load": {"value": self.even, "unit": "N_per_m"}}]}],
            "point_loads": forces,
            "pile_stiffness": {"value": self.stiffness, "unit": "N_per_m"},
            "tension_connection": "lifts_off",
            "piles": {"given": {"positions": piles}},
        }))
        .unwrap()
    }

    /// Reactions of the sets of piles that do, each set as bits.
    fn sets_that_do(&self, spring: bool) -> Vec<Vec<f64>> {
        let mut out = Vec::new();
        for set in 0u32..1 << self.piles.len() {
            let held = |i: usize| set & (1 << i) != 0;
            let hold = if spring {
                Support::Spring(self.stiffness)
            } else {
                Support::Rigid
            };
            let all = 0..self.piles.len();
            let load = |shape| Load { case: 0, shape };
            let even = Shape::Spread {
                from: 0.0,
                to: LENGTH,
                start: self.even,
                end: self.even,
            };
            let forces = self.forces.iter().map(|f| Shape::Point {
                at: f.0,
                force: f.1,
            });
            let network = Network {
                supports: all
                    .clone()
                    .map(|i| if held(i) { hold } else { Support::Free })
                    .collect(),
                lines: vec![Line {
                    length: LENGTH,
                    nodes: all
                        .clone()
                        .map(|node| LineNode {
                            node,
                            at: self.piles[node],
                        })
                        .collect(),
                    rigidity: vec![RIGIDITY; self.piles.len() - 1],
                    loads: std::iter::once(even).chain(forces).map(load).collect(),
                }],
                cases: 1,
                torsion: None,
            };
            let Ok(s) = solve(&network) else {
                continue;
            };
            let fits = |i: usize| {
                if held(i) {
                    s.reaction[i] >= 0.0
                } else {
                    s.deflection[i] <= 0.0
                }
            };
            if all.clone().all(fits) {
                let own = |i: usize| if held(i) { s.reaction[i] } else { 0.0 };
                out.push(all.map(own).collect());
            }
        }
        out
    }
}

#[test]
fn the_only_set_of_piles_that_pushes_is_found() {
    let mut dice = Dice(5);
    let (mut lifted, mut refused) = (0, 0);
    for _ in 0..200 {
        let strip = strip(&mut dice);
        let found = answer(&strip.request());
        let models = [strip.sets_that_do(false), strip.sets_that_do(true)];
        let Ok(a) = found else {
            let refusal = found.unwrap_err();
            assert!(
                refusal
                    .issues
                    .iter()
                    .all(|i| i.code == "lift_off_no_equilibrium")
            );
            // both models and both combinations, which differ by a factor only
            assert_eq!(refusal.issues.len(), 4);
            assert!(models.iter().all(Vec::is_empty));
            refused += 1;
            continue;
        };
        lifted += usize::from(!a.result.lift_off.as_ref().unwrap().is_empty());
        for (model, sets) in models.iter().enumerate() {
            assert_eq!(sets.len(), 1, "{:?}", strip.piles);
            for (p, want) in a.result.piles.iter().zip(&sets[0]) {
                let rows = p.reactions.as_ref().unwrap();
                for (row, factor) in rows.iter().zip([1.0, 0.5]) {
                    let got = if model == 0 {
                        row.rigid
                    } else {
                        row.spring.unwrap()
                    };
                    assert!((got.si() - factor * want).abs() <= 1e-3, "{got:?} {want}");
                }
            }
        }
        assert!(a.result.statics_residual_ratio <= 1e-9);
    }
    assert!(lifted > 40 && refused > 5, "{lifted} {refused}");
}
