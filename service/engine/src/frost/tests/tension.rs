//! Tension resistance by helix theory below frost: what counts, what does not, and that
//! nothing holds a pile in fill. Expected numbers are worked by hand beside the code.

use serde_json::{Value as Json, json};

use super::{answer, close, pile, q, statuses, with};
use crate::contract::CheckStatus::{Fail, Pass};
use crate::quantity::ForceUnit;

/// A profile of one clay.
fn clay(su_kpa: f64) -> Json {
    json!({ "from_soil": { "profile": {
        "layers": [{
            "top": q(0.0, "m"), "bottom": q(15.0, "m"), "unit_weight": q(19.0, "kN_per_m3"),
            "soil": { "clay": { "undrained_strength": q(su_kpa, "kPa") } }
        }],
        "water_depth": q(1.5, "m")
    } } })
}

fn held_by(helices: &[(f64, f64)], frost_m: f64, tension: Json) -> Json {
    with(
        pile(88.9, helices, frost_m),
        "uplift",
        json!({
            "bond": { "fine": {} },
            "construction": { "loaded_before_winter": {} },
            "resistance": {
                "design_basis": { "limit_states": {} }, "dead_load": q(12.0, "kN"), "tension": tension
            }
        }),
    )
}

/// Tension by theory: 350 and 400 mm in clay of 100 kPa hold 9 s_u on 0.2095 m2 net, 188.5
/// kN, of which 0.3 is 56.6 kN.
#[test]
fn tension_of_both_helices_below_frost() {
    let a = answer(held_by(&[(0.4, 5.0), (0.35, 6.05)], 1.8, clay(100.0)));
    let tension = a.result.uplift.unwrap().tension.unwrap();
    let quarter_pi = std::f64::consts::PI / 4.0;
    let net = quarter_pi * (0.4 * 0.4 + 0.35 * 0.35 - 2.0 * 0.0889 * 0.0889);
    close(tension.ultimate.unwrap().si(), 900e3 * net, 1e-12);
    close(tension.ultimate.unwrap().get(ForceUnit::KN), 188.5, 3e-4);
    close(tension.design.get(ForceUnit::KN), 56.6, 1e-3);
    assert_eq!(tension.counted_helix_count, Some(2));
}

/// A helix in frozen ground, or exactly at its base, holds nothing; embedment of the other
/// counts from the base of frost: 1.2 x 1.0 m / 0.3 m x 100 kPa and the overburden.
#[test]
fn a_frozen_helix_holds_nothing() {
    for upper in [1.0, 1.5] {
        let a = answer(held_by(&[(0.4, upper), (0.3, 2.5)], 1.5, clay(100.0)));
        let tension = a.result.uplift.as_ref().unwrap().tension.as_ref().unwrap();
        assert_eq!(tension.counted_helix_count, Some(1));
        let net = std::f64::consts::PI / 4.0 * (0.3 * 0.3 - 0.0889 * 0.0889);
        let overburden = 19e3 * 2.5 - 9.81e3 * 1.0;
        close(
            tension.ultimate.unwrap().si(),
            net * (1.2 / 0.3 * 100e3 + overburden),
            1e-12,
        );
        let frozen = upper < 1.5;
        let want = if frozen { Fail } else { Pass };
        assert_eq!(statuses(&a, "helix_below_frost"), [want, Pass]);
    }
}

/// A caller's own depth of no credit counts where it is deeper than frost, and no other
/// default is touched.
#[test]
fn a_deeper_depth_of_no_credit_is_kept() {
    let with_depth = |depth: f64| {
        let mut tension = clay(100.0);
        tension["from_soil"]["methods"] = json!({ "no_credit_above": q(depth, "m") });
        let a = answer(held_by(&[(0.3, 2.5), (0.3, 4.0)], 1.5, tension));
        a.result.uplift.unwrap().tension.unwrap()
    };
    assert_eq!(with_depth(0.5).counted_helix_count, Some(2));
    assert_eq!(with_depth(3.0).counted_helix_count, Some(1));
    let plain = answer(held_by(&[(0.3, 2.5), (0.3, 4.0)], 1.5, clay(100.0)));
    assert_eq!(
        with_depth(0.5).ultimate,
        plain.result.uplift.unwrap().tension.unwrap().ultimate
    );
}

/// With every helix in fill nothing holds the pile, and a demand on nothing fails.
#[test]
fn a_pile_in_fill_is_not_held() {
    let tension = json!({ "from_soil": { "profile": { "layers": [{
        "top": q(0.0, "m"), "bottom": q(8.0, "m"), "unit_weight": q(17.0, "kN_per_m3"),
        "soil": { "fill": {} }
    }] } } });
    let a = answer(held_by(&[(0.3, 3.0)], 1.5, tension));
    let up = a.result.uplift.as_ref().unwrap();
    assert_eq!(up.tension.as_ref().unwrap().ultimate.unwrap().si(), 0.0);
    assert_eq!(up.tension.as_ref().unwrap().counted_helix_count, Some(0));
    assert_eq!(up.stages[0].design.utilisation_ratio, None);
    assert_eq!(statuses(&a, "frost_uplift"), [Fail]);
}
