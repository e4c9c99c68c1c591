//! What must hold for every plan: units, mirror, order and direction of beams, more load,
//! and closure.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::answer;
use crate::contract::Call;
use crate::layout::{LayoutPile, Request};

/// A rectangle with an inner wall and a porch beam, piles anywhere along the walls.
#[derive(Debug, Clone)]
struct House {
    width: f64,
    depth: f64,
    inner: f64,
    loads: Vec<(f64, f64)>,
    column: (f64, f64),
    piles: Vec<f64>,
    stiffness: f64,
}

prop_compose! {
    fn house()(
        width in 6.0f64..14.0,
        depth in 5.0f64..10.0,
        inner in 0.3f64..0.7,
        loads in proptest::collection::vec((2.0f64..20.0, -4.0f64..12.0), 6),
        column in (0.05f64..0.95, 5.0f64..60.0),
        piles in proptest::collection::vec(0.15f64..0.85, 6),
        stiffness in 3.0f64..6.0,
    ) -> House {
        House { width, depth, inner, loads, column, piles, stiffness: crate::math::pow(10.0, stiffness) }
    }
}

impl House {
    /// Walls, in metres: south, north, west, east, inner wall, porch.
    fn walls(&self) -> [[(f64, f64); 2]; 6] {
        let (w, d, i) = (self.width, self.depth, self.inner * self.depth);
        [
            [(0.0, 0.0), (w, 0.0)],
            [(0.0, d), (w, d)],
            [(0.0, 0.0), (0.0, d)],
            [(w, 0.0), (w, d)],
            [(0.0, i), (w, i)],
            [(w, i), (w + 2.5, i)],
        ]
    }

    /// Corners and junctions, then one pile on every wall.
    fn places(&self) -> Vec<(f64, f64)> {
        let (w, d, i) = (self.width, self.depth, self.inner * self.depth);
        let mut out = vec![(0.0, 0.0), (w, 0.0), (0.0, d), (w, d), (0.0, i), (w, i)];
        for (wall, t) in self.walls().iter().zip(&self.piles) {
            let (a, b) = (wall[0], wall[1]);
            let p = (a.0 + (b.0 - a.0) * t, a.1 + (b.1 - a.1) * t);
            // not on the inner wall's ends
            if out
                .iter()
                .all(|q| (q.0 - p.0).abs() + (q.1 - p.1).abs() > 0.2)
            {
                out.push(p);
            }
        }
        out
    }

    /// The request, with every length times `unit.1` in the unit `unit.0`, mirrored in x,
    /// walls reversed in order and direction.
    fn request(&self, feet: bool, mirror: bool, turned: bool) -> Call<Request> {
        let (length, line, force) = if feet {
            (
                ("ft", 1.0 / 0.3048),
                ("plf", 0.3048 / 4.448_221_615_260_5 * 1e3),
                ("kip", 1.0 / 4.448_221_615_260_5),
            )
        } else {
            (("m", 1.0), ("kN_per_m", 1.0), ("kN", 1.0))
        };
        let at = |p: (f64, f64)| {
            let x = if mirror { -p.0 } else { p.0 };
            json!({"x": {"value": x * length.1, "unit": length.0},
                   "y": {"value": p.1 * length.1, "unit": length.0}})
        };
        let mut beams: Vec<Value> = self
            .walls()
            .iter()
            .zip(&self.loads)
            .enumerate()
            .map(|(i, (wall, (dead, snow)))| {
                let (a, b) = if turned {
                    (wall[1], wall[0])
                } else {
                    (wall[0], wall[1])
                };
                json!({
                    "label": format!("W{i}"),
                    "points": [at(a), at(b)],
                    "flexural_rigidity": {"value": 40_000.0, "unit": "kN_m2"},
                    "line_loads": [
                        {"kind": "dead", "load": {"value": dead * line.1, "unit": line.0}},
                        {"kind": "snow", "load": {"value": snow * line.1, "unit": line.0}},
                    ],
                })
            })
            .collect();
        if turned {
            beams.reverse();
        }
        let piles: Vec<Value> = self
            .places()
            .iter()
            .enumerate()
            .map(|(i, p)| json!({"label": format!("{i}"), "at": at(*p)}))
            .collect();
        let column = (self.column.0 * self.width, 0.0);
        serde_json::from_value(json!({
            "design_basis": {"allowable_stress": {"combinations": {"published": {"edition": "asce_7_16"}}}},
            "beams": beams,
            "point_loads": [{"kind": "live", "at": at(column),
                "load": {"value": self.column.1 * force.1, "unit": force.0}}],
            "pile_stiffness": {"value": self.stiffness, "unit": "kN_per_m"},
            "piles": {"given": {"positions": piles}},
        }))
        .unwrap()
    }
}

fn same(a: &[LayoutPile], b: &[LayoutPile], relative: f64) {
    let scale = a.iter().map(|p| p.rigid.max.si().abs()).fold(1.0, f64::max);
    assert_eq!(a.len(), b.len());
    for (p, q) in a.iter().zip(b) {
        assert_eq!(p.label, q.label);
        let rows = p
            .reactions
            .as_ref()
            .unwrap()
            .iter()
            .zip(q.reactions.as_ref().unwrap());
        for (x, y) in rows {
            assert_eq!(x.combination, y.combination);
            assert!(
                (x.rigid.si() - y.rigid.si()).abs() <= relative * scale,
                "{x:?} {y:?}"
            );
            let (s, t) = (x.spring.unwrap().si(), y.spring.unwrap().si());
            assert!((s - t).abs() <= relative * scale, "{s} {t}");
        }
        let (s, t) = (p.tributary.unwrap().si(), q.tributary.unwrap().si());
        assert!((s - t).abs() <= relative * scale, "{s} {t}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn other_units_give_the_same(house in house()) {
        let a = answer(&house.request(false, false, false)).unwrap();
        let b = answer(&house.request(true, false, false)).unwrap();
        same(&a.result.piles, &b.result.piles, 1e-9);
    }

    #[test]
    fn a_mirrored_plan_has_mirrored_reactions(house in house()) {
        let a = answer(&house.request(false, false, false)).unwrap();
        let b = answer(&house.request(false, true, false)).unwrap();
        same(&a.result.piles, &b.result.piles, 1e-9);
        for (x, y) in a.result.beams.iter().zip(&b.result.beams) {
            let (m, n) = (x.hogging.moment.si(), y.hogging.moment.si());
            prop_assert!((m - n).abs() <= 1e-9 * m.abs().max(1.0));
        }
    }

    /// To the last bit: the plan is put in order before anything is computed.
    #[test]
    fn order_and_direction_of_beams_make_no_difference(house in house()) {
        let a = answer(&house.request(false, false, false)).unwrap();
        let b = answer(&house.request(false, false, true)).unwrap();
        prop_assert_eq!(&a.result.piles, &b.result.piles);
        prop_assert_eq!(a.result.statics_residual_ratio, b.result.statics_residual_ratio);
    }

    #[test]
    fn statics_close_and_the_envelope_covers_both_models(house in house()) {
        let a = answer(&house.request(false, false, false)).unwrap();
        prop_assert!(a.result.statics_residual_ratio <= 1e-9);
        for c in &a.result.combinations {
            let gap = (c.total_reaction.si() - c.total_load.si()).abs();
            prop_assert!(gap <= 1e-9 * c.total_load.si().abs());
        }
        for p in &a.result.piles {
            let spring = p.spring.as_ref().unwrap();
            let most = p.rigid.max.si().max(spring.max.si()).max(0.0);
            prop_assert!((p.compression.demand.si() - most).abs() <= 1e-9 * most.max(1.0));
            let least = (-p.rigid.min.si()).max(-spring.min.si()).max(0.0);
            prop_assert!((p.tension.demand.si() - least).abs() <= 1e-9 * least.max(1.0));
            let shares: f64 = p.by_beam.iter().map(|s| s.reaction.si()).sum();
            prop_assert!((shares - p.rigid.max.si()).abs() <= 1e-9 * most.max(1.0));
        }
    }
}
