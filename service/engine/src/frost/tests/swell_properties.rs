//! What must hold of uplift by swelling soil for any pile: more dead load never makes it
//! worse, more swell pressure or active depth never better; a sleeve never hurts; units never
//! matter.

use serde_json::{Value as Json, json};

use super::{answer, q};
use crate::frost::Outcome;
use crate::random::Random;

/// A pile in base SI.
#[derive(Debug, Clone)]
struct Pile {
    outside: f64,
    top: f64,
    frost: f64,
    active: f64,
    underside: f64,
    tributary: f64,
    pressure: f64,
    strength: f64,
    dead: f64,
    method: usize,
    limit_states: bool,
    together: bool,
}

/// Names and sizes of the units it is sent in.
type Units = [(&'static str, f64); 4];

const METRIC: Units = [("m", 1.0), ("mm", 1e-3), ("kN", 1e3), ("kPa", 1e3)];
const CUSTOMARY: Units = [
    ("ft", 0.3048),
    ("in", 0.0254),
    ("lbf", 4.448_221_615_260_5),
    ("psf", 47.880_258_980_335_84),
];

impl Pile {
    fn drawn(random: &mut Random) -> Self {
        Self {
            outside: random.between(0.05, 0.12),
            top: random.between(3.0, 7.0),
            frost: random.between(0.2, 1.8),
            active: random.between(0.5, 6.0),
            underside: random.between(0.1, 1.2),
            tributary: random.between(0.5, 4.0),
            pressure: random.between(0.0, 400e3),
            strength: random.between(20e3, 120e3),
            dead: random.between(0.0, 120e3),
            method: random.below(4),
            limit_states: random.below(2) == 0,
            together: random.below(2) == 0,
        }
    }

    fn request(&self, [long, small, force, stress]: Units) -> Json {
        let of = |value: f64, (name, size): (&str, f64)| q(value / size, name);
        let adhesion = match self.method {
            0 => json!({ "alpha_share": { "swell_pressure": of(self.pressure, stress) } }),
            1 => json!({ "alpha_share": {
                "swell_pressure": of(self.pressure, stress),
                "undrained_strength": of(self.strength, stress)
            } }),
            2 => json!({ "alpha_range": { "swell_pressure": of(self.pressure, stress) } }),
            _ => {
                json!({ "given": { "adhesion": of(self.pressure / 4.0, stress), "reference": "any" } })
            }
        };
        let basis = if self.limit_states {
            json!({ "limit_states": {} })
        } else {
            json!({ "allowable_stress": {} })
        };
        json!({
            "pile": {
                "shaft": { "round": { "outside_diameter": of(self.outside, small) } },
                "helices": [
                    { "diameter": of(0.3, small), "depth": of(self.top, long) },
                    { "diameter": of(0.25, small), "depth": of(self.top + 0.9, long) }
                ]
            },
            "frost": { "official_depth": of(self.frost, long) },
            "active_depth": of(self.active, long),
            "beam": { "in_soil": {
                "underside_depth": of(self.underside, long), "tributary_length": of(self.tributary, long)
            } },
            "uplift": {
                "bond": { "fine": {} },
                "resistance": {
                    "design_basis": basis,
                    "dead_load": of(self.dead, force),
                    "tension": { "from_soil": { "profile": { "layers": [{
                        "top": of(0.0, long), "bottom": of(20.0, long),
                        "unit_weight": q(19.0, "kN_per_m3"),
                        "soil": { "clay": { "undrained_strength": of(self.strength, stress) } }
                    }] } } }
                }
            },
            "swelling": { "adhesion": adhesion, "peaks_with_frost": self.together }
        })
    }

    fn outcome(&self) -> Outcome {
        answer(self.request(METRIC)).result
    }
}

/// Utilisations of swelling, of both together, and of the worst; infinite on no resistance.
fn ranks(outcome: &Outcome) -> Vec<f64> {
    let rank = |ratio: Option<f64>| ratio.unwrap_or(f64::INFINITY);
    let swell = outcome.swelling.as_ref().unwrap();
    let mut all: Vec<_> = swell
        .stages
        .iter()
        .map(|s| rank(s.design.utilisation_ratio))
        .collect();
    if let Some(both) = &outcome.combined_uplift {
        all.extend(both.stages.iter().map(|s| rank(s.utilisation_ratio)));
    }
    all.push(rank(
        outcome.governing_uplift.as_ref().unwrap().utilisation_ratio,
    ));
    all
}

/// No rank of `better` is above that of `worse`.
#[track_caller]
fn ordered(better: &Outcome, worse: &Outcome) {
    let (a, b) = (ranks(better), ranks(worse));
    assert_eq!(a.len(), b.len());
    for (low, high) in a.iter().zip(&b) {
        assert!(*low <= high * (1.0 + 1e-12), "{a:?} {b:?}");
    }
}

#[test]
fn load_pressure_and_depth_act_one_way() {
    let mut random = Random(0x5eed_0511);
    for _ in 0..150 {
        let pile = Pile::drawn(&mut random);
        let base = pile.outcome();
        let changed = |change: &dyn Fn(&mut Pile)| {
            let mut other = pile.clone();
            change(&mut other);
            other.outcome()
        };
        let more = random.between(0.0, 1.0);
        ordered(&changed(&|p| p.dead += more * 100e3), &base);
        ordered(&base, &changed(&|p| p.pressure += more * 200e3));
        ordered(&base, &changed(&|p| p.active += more * 3.0));
        if pile.together {
            ordered(&base, &changed(&|p| p.frost += more * 0.5));
        }
    }
}

#[test]
fn the_worst_of_all_is_never_below_a_part() {
    let mut random = Random(0x5eed_0512);
    for _ in 0..100 {
        let outcome = Pile::drawn(&mut random).outcome();
        let worst = outcome.governing_uplift.as_ref().unwrap();
        let frost = outcome.uplift.as_ref().unwrap();
        let rank = |ratio: Option<f64>| ratio.unwrap_or(f64::INFINITY);
        for stage in &frost.stages {
            assert!(rank(stage.design.utilisation_ratio) <= rank(worst.utilisation_ratio));
            assert!(stage.design.net_frost_tension.unwrap() <= worst.coupling_demand);
        }
        for stage in &outcome.swelling.as_ref().unwrap().stages {
            assert!(stage.design.net_swell_tension.unwrap() <= worst.coupling_demand);
            if let Some(lower) = &stage.lower {
                assert!(lower.swell_force <= stage.design.swell_force);
            }
        }
        assert!(worst.head_demand <= worst.coupling_demand);
    }
}

#[test]
fn units_do_not_matter() {
    fn numbers(value: &Json, out: &mut Vec<f64>) {
        match value {
            Json::Number(n) => out.push(n.as_f64().unwrap()),
            Json::Array(list) => list.iter().for_each(|v| numbers(v, out)),
            Json::Object(map) => map.values().for_each(|v| numbers(v, out)),
            _ => {}
        }
    }
    let mut random = Random(0x5eed_0513);
    for _ in 0..60 {
        let pile = Pile::drawn(&mut random);
        let of = |units| {
            let a = answer(pile.request(units));
            let mut all = Vec::new();
            numbers(&serde_json::to_value(&a.result).unwrap(), &mut all);
            (
                all,
                a.verdict,
                a.checks.iter().map(|c| c.status).collect::<Vec<_>>(),
            )
        };
        let (a, b) = (of(METRIC), of(CUSTOMARY));
        assert_eq!((a.0.len(), a.1, &a.2), (b.0.len(), b.1, &b.2));
        for (x, y) in a.0.iter().zip(&b.0) {
            let slack = 1e-9 * x.abs().max(y.abs()) + if x.abs() > 1.0 { 1e-6 } else { 1e-12 };
            assert!((x - y).abs() <= slack, "{x} {y}");
        }
    }
}
