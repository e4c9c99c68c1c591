//! The cabin of 15 piles in 1.8 m of frost, pile by pile: not the typical pile but each one
//! decides, with the house on it and before. Figures are own arithmetic, by hand beside the
//! code.

use serde_json::{Value as Json, json};

use super::{answer, close, example, q, statuses};
use crate::contract::CheckStatus::{Fail, Pass};
use crate::contract::Verdict;
use crate::frost::{FrostStage, UpliftCause};
use crate::quantity::ForceUnit;

/// Dead load by place, kN: lines y = 0 and 7.2 m carry 5.01 kN/m, the centre line 3.26 kN/m,
/// over 2.4 m or at ends 1.2 m; rounded to 0.1 kN.
fn piles() -> Vec<(String, f64)> {
    let mut piles = Vec::new();
    for line in 1..=3 {
        for place in 1..=5 {
            let end = place == 1 || place == 5;
            let dead = match (line == 2, end) {
                (false, false) => 12.0,
                (false, true) => 6.0,
                (true, false) => 7.8,
                (true, true) => 3.9,
            };
            piles.push((format!("P{line}{place}"), dead));
        }
    }
    piles
}

fn at(label: &str, dead_kn: f64, construction: Json) -> Json {
    let mut request = example("sizerin");
    request["pile"]["label"] = json!(label);
    request["uplift"]["construction"] = construction;
    request["uplift"]["resistance"]["dead_load"] = q(dead_kn, "kN");
    request
}

/// F = 100 kPa x pi x 88.9 mm x 1.8 m = 50.27 kN; N = 1.25 F - 0.9 D; required ultimate N / 0.3
/// against 188.5 kN by helix theory, of which 0.3 is 56.6 kN. The typical outer pile needs 52.0
/// and 173.5 kN, the corner 57.4 and 191.5, the end of the centre line 59.3 and 197.8.
#[test]
fn each_pile_with_the_house_on_it() {
    let mut failing = Vec::new();
    for (label, dead) in piles() {
        let a = answer(at(&label, dead, json!({ "loaded_before_winter": {} })));
        let up = a.result.uplift.as_ref().unwrap();
        let design = up.tension.as_ref().unwrap().design.get(ForceUnit::KN);
        close(design, 56.56, 1e-3);
        let (net, required) = match dead {
            12.0 => (52.0, 173.5),
            6.0 => (57.4, 191.5),
            7.8 => (55.8, 186.1),
            _ => (59.3, 197.8),
        };
        let got = &up.stages[0].design;
        let printed = |force: Option<crate::quantity::Force>| {
            (force.unwrap().get(ForceUnit::KN) * 10.0).round() / 10.0
        };
        assert_eq!(printed(got.net_frost_tension), net, "{label}");
        assert_eq!(printed(got.required_ultimate_tension), required, "{label}");
        let passes = net <= design;
        let want = if passes { Pass } else { Fail };
        assert_eq!(statuses(&a, "frost_uplift"), [want], "{label}");
        if !passes {
            assert_eq!(a.verdict, Verdict::Reject, "{label}");
            failing.push(label);
        }
    }
    assert_eq!(failing, ["P11", "P15", "P21", "P25", "P31", "P35"]);
}

/// Before the house stands every pile is alike: 62.8 kN, 209.5 kN of ultimate tension, and
/// none passes; that stage governs over service in each.
#[test]
fn each_pile_before_the_house() {
    for (label, dead) in piles() {
        let a = answer(at(&label, dead, json!({ "standing_over_winter": {} })));
        let up = a.result.uplift.as_ref().unwrap();
        let before = &up.stages[1].design;
        let printed = |force: Option<crate::quantity::Force>| {
            (force.unwrap().get(ForceUnit::KN) * 10.0).round() / 10.0
        };
        assert_eq!(printed(before.net_frost_tension), 62.8, "{label}");
        assert_eq!(printed(before.required_ultimate_tension), 209.5, "{label}");
        assert_eq!(statuses(&a, "frost_uplift")[1], Fail, "{label}");
        assert_eq!(up.governing_stage, FrostStage::Construction, "{label}");
        let worst = a.result.governing_uplift.as_ref().unwrap();
        assert_eq!(worst.cause, UpliftCause::Frost);
        assert_eq!(worst.stage, FrostStage::Construction);
        assert_eq!(Some(worst.net_tension), up.tension_path_demand);
        assert_eq!(worst.coupling_demand, worst.net_tension);
        // no beam is on the pile by then: head and anchor carry what service asks
        assert_eq!(
            Some(worst.head_demand),
            up.stages[0].design.net_frost_tension
        );
    }
}
