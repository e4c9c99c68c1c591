//! What must hold for any pile: more dead load never makes uplift worse, deeper frost
//! never weaker, deeper helices never less acceptable, and units never matter.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::{answer, q};
use crate::contract::CheckStatus;
use crate::frost::Outcome;
use crate::quantity::{ForceUnit, LengthUnit, StressUnit};

/// A pile in base SI, sent in any units.
#[derive(Debug, Clone)]
struct Pile {
    outside: f64,
    diameters: Vec<f64>,
    top: f64,
    frost: f64,
    cold: f64,
    underside: f64,
    tributary: f64,
    bond: f64,
    dead: f64,
    ultimate: f64,
    limit_states: bool,
    heave: f64,
    void: f64,
}

/// Units to send it in.
#[derive(Clone, Copy)]
struct Units {
    long: (&'static str, LengthUnit),
    small: (&'static str, LengthUnit),
    force: (&'static str, ForceUnit),
    stress: (&'static str, StressUnit),
}

const METRIC: Units = Units {
    long: ("m", LengthUnit::M),
    small: ("mm", LengthUnit::Mm),
    force: ("kN", ForceUnit::KN),
    stress: ("kPa", StressUnit::KPa),
};
const CUSTOMARY: Units = Units {
    long: ("ft", LengthUnit::Ft),
    small: ("in", LengthUnit::In),
    force: ("lbf", ForceUnit::Lbf),
    stress: ("psi", StressUnit::Psi),
};

impl Pile {
    fn request(&self, units: Units) -> Json {
        let long = |v: f64| q(v / units.long.1.def().factor, units.long.0);
        let small = |v: f64| q(v / units.small.1.def().factor, units.small.0);
        let force = |v: f64| q(v / units.force.1.def().factor, units.force.0);
        let stress = |v: f64| q(v / units.stress.1.def().factor, units.stress.0);
        let mut depth = self.top;
        let mut helices = Vec::new();
        for d in &self.diameters {
            helices.push(json!({ "diameter": small(*d), "depth": long(depth) }));
            depth += 3.0 * d;
        }
        let basis = if self.limit_states {
            json!({ "limit_states": {} })
        } else {
            json!({ "allowable_stress": {} })
        };
        json!({
            "pile": {
                "shaft": { "round": { "outside_diameter": small(self.outside) } },
                "helices": helices
            },
            "frost": { "official_depth": long(self.frost), "cold_surface_depth": long(self.cold) },
            "beam": { "in_soil": {
                "underside_depth": long(self.underside), "tributary_length": long(self.tributary)
            } },
            "uplift": {
                "bond": { "given": { "stress": stress(self.bond), "reference": "any" } },
                "resistance": {
                    "design_basis": basis,
                    "dead_load": force(self.dead),
                    "tension": { "given": {
                        "ultimate": force(self.ultimate), "by": "analysis", "reference": "any"
                    } }
                }
            },
            "void_form": {
                "nominal_thickness": small(self.void),
                "heave": { "frost": { "given": { "movement": small(self.heave) } } }
            }
        })
    }

    fn outcome(&self) -> Outcome {
        answer(self.request(METRIC)).result
    }
}

fn any_pile() -> impl Strategy<Value = Pile> {
    (
        (
            0.04..0.12_f64,
            prop::collection::vec(0.2..0.5_f64, 1..5),
            2.5..9.0_f64,
            0.1..2.0_f64,
            0.0..0.4_f64,
            0.05..1.5_f64,
        ),
        (
            0.5..6.0_f64,
            0.0..400e3_f64,
            0.0..200e3_f64,
            1e3..600e3_f64,
            any::<bool>(),
            0.0..0.2_f64,
            0.05..0.3_f64,
        ),
    )
        .prop_map(|(ground, loads)| {
            let (outside, diameters, top, frost, cold, underside) = ground;
            let (tributary, bond, dead, ultimate, limit_states, heave, void) = loads;
            Pile {
                outside,
                diameters,
                top,
                frost,
                cold,
                underside,
                tributary,
                bond,
                dead,
                ultimate,
                limit_states,
                heave,
                void,
            }
        })
}

/// Every number of an outcome, in order.
fn numbers(value: &Json, out: &mut Vec<f64>) {
    match value {
        Json::Number(n) => out.push(n.as_f64().unwrap()),
        Json::Array(list) => list.iter().for_each(|v| numbers(v, out)),
        Json::Object(map) => map.values().for_each(|v| numbers(v, out)),
        _ => {}
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn more_dead_load_never_makes_uplift_worse(pile in any_pile(), more in 0.0..300e3_f64) {
        let mut heavier = pile.clone();
        heavier.dead += more;
        let (a, b) = (pile.outcome().uplift.unwrap(), heavier.outcome().uplift.unwrap());
        for (light, heavy) in a.stages.iter().zip(&b.stages) {
            prop_assert!(heavy.design.utilisation_ratio <= light.design.utilisation_ratio);
            prop_assert!(heavy.severe.utilisation_ratio <= light.severe.utilisation_ratio);
            prop_assert!(heavy.design.required_ultimate_tension <= light.design.required_ultimate_tension);
        }
    }

    #[test]
    fn deeper_frost_never_pulls_less(pile in any_pile(), more in 0.0..0.3_f64) {
        let mut colder = pile.clone();
        // the base of frost stays above the shallowest tip
        colder.frost = (pile.frost + more).min(2.0);
        let (a, b) = (pile.outcome(), colder.outcome());
        prop_assert!(b.embedment.required_top_helix_depth >= a.embedment.required_top_helix_depth);
        let (a, b) = (a.uplift.unwrap(), b.uplift.unwrap());
        for (mild, cold) in a.stages.iter().zip(&b.stages) {
            prop_assert!(cold.design.shaft_force >= mild.design.shaft_force);
            prop_assert!(cold.design.frost_force >= mild.design.frost_force);
            prop_assert!(cold.design.utilisation_ratio >= mild.design.utilisation_ratio);
        }
    }

    #[test]
    fn deeper_frost_never_leaves_more_to_hold_by(pile in any_pile(), more in 0.0..1.5_f64, su in 20.0..150.0_f64) {
        let at = |frost: f64| {
            let mut here = pile.clone();
            here.frost = frost;
            let mut request = here.request(METRIC);
            request["uplift"]["resistance"]["tension"] = json!({ "from_soil": { "profile": {
                "layers": [{
                    "top": q(0.0, "m"), "bottom": q(25.0, "m"), "unit_weight": q(19.0, "kN_per_m3"),
                    "soil": { "clay": { "undrained_strength": q(su, "kPa") } }
                }],
                "water_depth": q(2.0, "m")
            } } });
            answer(request).result.uplift.unwrap()
        };
        let (mild, cold) = (at(pile.frost), at((pile.frost + more).min(2.0)));
        let of = |up: &crate::frost::UpliftOutcome| up.tension.as_ref().unwrap().ultimate.unwrap().si();
        prop_assert!(of(&cold) <= of(&mild) * (1.0 + 1e-12));
    }

    #[test]
    fn the_severe_line_is_never_milder(pile in any_pile()) {
        let up = pile.outcome().uplift.unwrap();
        prop_assert!(up.severe_bond_stress >= up.bond_stress);
        for stage in &up.stages {
            prop_assert!(stage.severe.frost_force >= stage.design.frost_force);
            prop_assert!(stage.severe.utilisation_ratio >= stage.design.utilisation_ratio);
        }
        let worst = up.stages.iter().map(|s| s.design.net_frost_tension.unwrap().si());
        prop_assert_eq!(up.tension_path_demand.unwrap().si(), worst.fold(0.0, f64::max));
    }

    #[test]
    fn deeper_helices_never_fail_what_shallower_ones_pass(
        pile in any_pile(), top in 2.45..2.6_f64, more in 0.0..5.0_f64,
        fill in 0.0..4.0_f64, active in 0.0..4.0_f64, torque in any::<bool>(),
    ) {
        let at = |top: f64| {
            let mut here = pile.clone();
            here.top = top;
            let mut request = here.request(METRIC);
            request["fill_depth"] = q(fill, "m");
            request["active_depth"] = q(active, "m");
            request["embedment"] = json!({ "tension_by_torque": torque });
            answer(request)
        };
        let (shallow, deep) = (at(top), at(top + more));
        prop_assert_eq!(shallow.checks.len(), deep.checks.len());
        for (a, b) in shallow.checks.iter().zip(&deep.checks) {
            prop_assert_eq!(&a.id, &b.id);
            prop_assert!(a.status != CheckStatus::Pass || b.status == CheckStatus::Pass, "{}", a.id);
        }
        prop_assert_eq!(
            shallow.result.embedment.required_top_helix_depth,
            deep.result.embedment.required_top_helix_depth
        );
        prop_assert!(deep.result.embedment.shortfall <= shallow.result.embedment.shortfall);
    }

    #[test]
    fn units_do_not_matter(pile in any_pile()) {
        let of = |units| {
            let a = answer(pile.request(units));
            let mut all = Vec::new();
            numbers(&serde_json::to_value(&a.result).unwrap(), &mut all);
            (all, a.verdict, a.checks.iter().map(|c| c.status).collect::<Vec<_>>())
        };
        let (a, b) = (of(METRIC), of(CUSTOMARY));
        prop_assert_eq!(a.0.len(), b.0.len());
        for (x, y) in a.0.iter().zip(&b.0) {
            // differences of nearly equal depths and forces: 1e-9 of a metre or a kilonewton
            let slack = 1e-9 * x.abs().max(y.abs()) + if x.abs() > 1.0 { 1e-6 } else { 1e-12 };
            prop_assert!((x - y).abs() <= slack, "{} {}", x, y);
        }
        prop_assert_eq!(a.1, b.1);
        prop_assert_eq!(a.2, b.2);
    }

    #[test]
    fn the_order_of_helices_does_not_matter(pile in any_pile()) {
        let forward = pile.request(METRIC);
        let mut backward = forward.clone();
        backward["pile"]["helices"].as_array_mut().unwrap().reverse();
        let (a, b) = (answer(forward), answer(backward));
        prop_assert_eq!(a.result, b.result);
        prop_assert_eq!(a.checks, b.checks);
    }
}
