//! Groups of piles: a recomputation by slices, and properties. Cases are in `groups.rs`.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::groups::{array, group, pulled, pushed, with};
use super::*;
use crate::helix::GroupMode;
use crate::quantity::{ForceUnit, VolumeUnit};

/// Weight of a block with leaning sides by 40,000 slices, written without the engine.
#[test]
fn the_weight_of_a_leaning_block_by_slices() {
    let mut ground = soil(&[
        (1.5, 17.0, sand(30.0)),
        (4.0, 18.0, sand(33.0)),
        (30.0, 19.0, sand(35.0)),
    ]);
    ground["water_depth"] = q(2.7, "m");
    let a = answer(json!({
        "soil": ground, "pile": pile(0.0889, &[(0.5, 5.3)]), "directions": "tension",
        "group": with(array(2, 3, 1.3, 1.1), "uplift_block", json!("leaning_sides")),
    }));
    let (b, l, z_base) = (1.3 + 0.5, 2.2 + 0.5, 5.3);
    let n = 40_000;
    let (mut weight, mut volume) = (0.0, 0.0);
    for i in 0..n {
        let z = z_base * (f64::from(i) + 0.5) / f64::from(n);
        let grow = (z_base - z) / 2.0;
        let area = (b + grow) * (l + grow);
        let gamma = if z < 1.5 {
            17.0
        } else if z < 4.0 {
            18.0
        } else {
            19.0
        };
        let buoyant = if z > 2.7 { gamma - 9.81 } else { gamma };
        weight += buoyant * area * z_base / f64::from(n);
        volume += area * z_base / f64::from(n);
    }
    let block = pulled(&a).block.as_ref().unwrap();
    near(block.effective_weight.get(ForceUnit::KN), weight, 1e-2);
    near(block.volume.unwrap().get(VolumeUnit::M3), volume, 1e-4);
}

fn in_uniform(is_sand: bool, t: f64, water: f64, spacing: f64, n: u32) -> Answer<Outcome> {
    let ground = if is_sand {
        sand(20.0 + 20.0 * t)
    } else {
        clay(20.0 + 150.0 * t)
    };
    let mut ground = soil(&[(60.0, 18.0, ground)]);
    ground["water_depth"] = q(water, "m");
    answer(json!({
        "soil": ground, "pile": pile(0.0889, &[(0.35, 4.0), (0.3, 5.0)]),
        "group": array(n, n, spacing, spacing),
    }))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Far apart a group is its piles.
    #[test]
    fn piles_far_apart_are_so_many_times_one(
        is_sand in any::<bool>(), t in 0.0..1.0, water in 0.0..10.0, n in 2_u32..6, apart in 3.0..6.0,
    ) {
        let a = in_uniform(is_sand, t, water, apart, n);
        let count = f64::from(n * n);
        prop_assert_eq!(pushed(&a).governing, GroupMode::Piles);
        near(pushed(&a).ultimate.si(), count * compression(&a).ultimate.si(), 1e-9);
        near(pulled(&a).ultimate.si(), count * tension(&a).ultimate.si(), 1e-9);
        near(group(&a).efficiency.as_ref().unwrap().efficiency_factor, 1.0, 0.0);
    }

    /// A wider block carries no less, and never less than nothing.
    #[test]
    fn a_wider_block_carries_no_less(
        is_sand in any::<bool>(), t in 0.0..1.0, water in 0.0..10.0, n in 2_u32..6,
        spacing in 0.4..2.0, more in 0.01..1.0,
    ) {
        let narrow = in_uniform(is_sand, t, water, spacing, n);
        let wide = in_uniform(is_sand, t, water, spacing + more, n);
        let down = |a: &Answer<Outcome>| pushed(a).block.as_ref().unwrap().total.si();
        let up = |a: &Answer<Outcome>| pulled(a).block.as_ref().unwrap().total.si();
        prop_assert!(down(&narrow) > 0.0 && down(&wide) >= down(&narrow));
        prop_assert!(up(&narrow) > 0.0 && up(&wide) >= up(&narrow));
    }

    /// Units do not matter.
    #[test]
    fn a_group_is_the_same_in_other_units(
        case in super::properties::case(), n in 2_u32..5, spacing in 0.5..3.0, more in 0.0..1.0,
    ) {
        let mut request = json!({
            "soil": case.soil(), "pile": case.pile(), "group": array(n, 2, spacing, spacing + more),
        });
        let metric = answer(request.clone());
        super::properties::in_us_units(&mut request);
        let us = answer(request);
        let all = |a: &Answer<Outcome>| {
            let down = pushed(a).block.as_ref();
            [
                pushed(a).ultimate.si(), pulled(a).ultimate.si(),
                down.map_or(0.0, |b| b.total.si()),
                pulled(a).block.as_ref().map_or(0.0, |b| b.total.si()),
            ]
        };
        for (x, y) in all(&metric).into_iter().zip(all(&us)) {
            prop_assert!((x - y).abs() <= 1e-9 * x.abs(), "{x} {y}");
        }
    }

    /// Rows and columns and the same piles by their places are one group, turned or not.
    #[test]
    fn an_array_and_its_positions_are_one_group(
        rows in 1_u32..5, columns in 2_u32..5, a in 0.5..2.0, b in 0.5..2.0, turn in 0.0..6.3,
    ) {
        let places: Vec<Json> = (0..rows).flat_map(|r| (0..columns).map(move |c| {
            let (x, y) = (f64::from(c) * b, f64::from(r) * a);
            let (s, c) = (crate::math::sin(turn), crate::math::cos(turn));
            json!({ "x": q(x * c - y * s + 30.0, "m"), "y": q(x * s + y * c - 70.0, "m") })
        })).collect();
        let ask = |group: Json| answer(json!({
            "soil": soil(&[(60.0, 18.0, clay(50.0))]), "pile": pile(0.0889, &[(0.35, 4.0), (0.3, 5.0)]),
            "group": group,
        }));
        let array = ask(array(rows, columns, a, b));
        let listed = ask(json!({ "plan": { "positions": { "piles": places } } }));
        let (x, y) = (group(&array), group(&listed));
        near(y.least_spacing.si(), x.least_spacing.si(), 1e-7);
        near(y.block_plan.breadth.si(), x.block_plan.breadth.si(), 1e-7);
        near(y.block_plan.area.si(), x.block_plan.area.si(), 1e-7);
        near(pushed(&listed).block.as_ref().unwrap().total.si(), pushed(&array).block.as_ref().unwrap().total.si(), 1e-7);
        near(pulled(&listed).block.as_ref().unwrap().total.si(), pulled(&array).block.as_ref().unwrap().total.si(), 1e-7);
    }
}
