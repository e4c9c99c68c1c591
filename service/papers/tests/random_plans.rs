//! Random plans with everything that may lie on them, with labels of any characters: no sheet
//! ever breaks the rules of a drawing.

mod common;

use bearwell_engine::contract::Paper;
use bearwell_engine::quantity::System;
use common::strokes::judge_strokes;
use common::{Plan, at, judge};
use proptest::prelude::*;
use serde_json::{Map, Value, json};

/// Names as callers send them: plain, markup, wide and strange characters.
fn label() -> impl Strategy<Value = String> {
    prop_oneof![
        4 => "[a-zA-Z0-9 ]{1,12}",
        1 => "[<>&\"'/a-z!\\[\\]-]{1,64}",
        1 => "[WM\u{6f22}\u{5b57}\u{1f600}]{1,64}",
        1 => "\\PC{1,64}",
    ]
    .prop_filter("a label has a character", |l| !l.is_empty())
}

type Share = (f64, f64);

fn share() -> impl Strategy<Value = Share> {
    (-0.3..1.3_f64, -0.3..1.3_f64)
}

/// Something in the ground, its places as shares of the plan.
#[derive(Debug, Clone)]
enum Thing {
    Polygon(Vec<Share>),
    Lot(Vec<Share>),
    Circle(Share, f64),
    Line(Vec<Share>),
    Boundary(Share, Share, bool),
}

fn thing() -> impl Strategy<Value = Thing> {
    let many = || prop::collection::vec(share(), 3..8);
    prop_oneof![
        many().prop_map(Thing::Polygon),
        many().prop_map(Thing::Lot),
        (share(), 0.0..0.4_f64).prop_map(|(c, r)| Thing::Circle(c, r)),
        prop::collection::vec(share(), 2..6).prop_map(Thing::Line),
        (share(), share(), any::<bool>()).prop_map(|(a, b, l)| Thing::Boundary(a, b, l)),
    ]
}

#[derive(Debug, Clone)]
struct Case {
    origin: (f64, f64),
    extent: f64,
    beams: Vec<(Vec<Share>, String)>,
    piles: Vec<(f64, f64, f64, String)>,
    width: Option<f64>,
    types: Vec<(String, f64)>,
    things: Vec<(Thing, f64, String, Option<String>)>,
    zones: Vec<(Vec<Share>, String)>,
    slabs: Vec<(Share, Share, f64, bool, String)>,
    openings: Vec<(f64, f64, bool)>,
    form: Vec<Share>,
    search: Option<(bool, bool)>,
}

fn case() -> impl Strategy<Value = Case> {
    let plan = (
        (-1e6..1e6_f64, -1e6..1e6_f64),
        0.0..4.0_f64,
        prop::collection::vec(
            (
                prop::collection::vec((0.0..1.0_f64, 0.0..1.0_f64), 2..5),
                label(),
            ),
            1..6,
        ),
        prop::collection::vec(
            (
                0.0..1.0_f64,
                0.0..20_000.0_f64,
                -3_000.0..3_000.0_f64,
                label(),
            ),
            1..70,
        ),
        prop::option::of(0.001..0.08_f64),
    );
    let more = (
        prop::collection::vec((label(), 500.0..20_000.0_f64), 0..9),
        prop::collection::vec(
            (thing(), 0.0..0.2_f64, label(), prop::option::of(label())),
            0..8,
        ),
        prop::collection::vec((prop::collection::vec(share(), 3..7), label()), 0..6),
        prop::collection::vec(
            (
                share(),
                (0.05..0.6_f64, 0.05..0.6_f64),
                0.0..3.1_f64,
                any::<bool>(),
                label(),
            ),
            0..4,
        ),
        prop::collection::vec((0.0..0.9_f64, 0.0..0.4_f64, any::<bool>()), 0..4),
        prop::collection::vec(share(), 0..6),
        prop::option::of((any::<bool>(), any::<bool>())),
    );
    (plan, more).prop_map(
        |(
            (origin, log, beams, piles, width),
            (types, things, zones, slabs, openings, form, search),
        )| Case {
            origin,
            extent: bearwell_engine::math::pow(10.0, log),
            beams,
            piles,
            width,
            types,
            things,
            zones,
            slabs,
            openings,
            form,
            search,
        },
    )
}

fn ft(v: f64) -> Value {
    json!({"value": v, "unit": "ft"})
}

fn named(mut labels: Vec<(String, f64)>) -> Vec<(String, f64)> {
    for (i, (label, _)) in labels.iter_mut().enumerate() {
        *label = format!("{i}{}", label.chars().take(60).collect::<String>());
    }
    labels
}

impl Case {
    fn spot(&self, s: Share) -> (f64, f64) {
        (
            self.origin.0 + s.0 * self.extent,
            self.origin.1 + s.1 * self.extent,
        )
    }

    fn at(&self, s: Share) -> Value {
        let (x, y) = self.spot(s);
        at(x, y)
    }

    fn all(&self, shares: &[Share]) -> Vec<Value> {
        shares.iter().map(|s| self.at(*s)).collect()
    }

    fn keep_out(&self, thing: &Thing) -> Value {
        match thing {
            Thing::Polygon(p) => json!({"polygon": {"corners": self.all(p)}}),
            Thing::Lot(p) => json!({"lot": {"corners": self.all(p)}}),
            Thing::Circle(c, r) => {
                json!({"circle": {"centre": self.at(*c), "radius": ft(r * self.extent)}})
            }
            Thing::Line(p) => json!({"line": {"points": self.all(p)}}),
            Thing::Boundary(a, b, left) => json!({"boundary": {"from": self.at(*a),
                "to": self.at(*b), "piles_on": if *left { "left" } else { "right" }}}),
        }
    }

    fn asked(&self) -> Map<String, Value> {
        let lbf = |v: f64| json!({"value": v, "unit": "lbf"});
        let mut asked = Map::new();
        let things: Vec<Value> = self
            .things
            .iter()
            .map(|(thing, clearance, label, why)| {
                json!({"label": label, "why": why, "shape": self.keep_out(thing),
                       "clearance": ft(clearance * self.extent)})
            })
            .collect();
        asked.insert("keep_outs".into(), json!(things));
        let zones: Vec<Value> = self
            .zones
            .iter()
            .map(|(corners, label)| {
                json!({"label": label, "corners": self.all(corners),
                       "capacities": [{"compression": lbf(9_000.0), "tension": lbf(0.0)}]})
            })
            .collect();
        asked.insert("soil_zones".into(), json!(zones));
        let slabs: Vec<Value> = self
            .slabs
            .iter()
            .map(|(corner, size, ..)| {
                let (x, y) = *corner;
                let corners = [
                    (x, y),
                    (x + size.0, y),
                    (x + size.0, y + size.1),
                    (x, y + size.1),
                ];
                json!({"corners": self.all(&corners),
                       "loads": [{"kind": "dead", "load": {"value": 50, "unit": "psf"}},
                                 {"kind": "live", "load": {"value": 40, "unit": "psf"}}]})
            })
            .collect();
        asked.insert("slabs".into(), json!(slabs));
        asked
    }

    fn found(&self) -> Map<String, Value> {
        let mut found = Map::new();
        let slabs: Vec<Value> = self
            .slabs
            .iter()
            .map(|(_, _, angle, one_way, label)| {
                json!({"label": label, "area": {"value": 1, "unit": "m2"},
                       "spanning": if *one_way { "one_way" } else { "two_way" },
                       "strips_from_east": {"value": angle - 1.5, "unit": "rad"},
                       "loads": [], "beams": []})
            })
            .collect();
        found.insert("slabs".into(), json!(slabs));
        if self.form.len() > 1 {
            let form = json!([{"label": "F", "points": self.all(&self.form), "sides": [],
                "form_length": ft(1.0), "centre_length": ft(1.0),
                "beam_area": {"value": 1, "unit": "m2"}}]);
            found.insert("outlines".into(), form);
        }
        if let Some((proven, feasible)) = self.search {
            let mut search = json!({"feasible": feasible, "proven_minimal": proven && feasible,
                "how": [], "lower_bound_count": 1, "gap_count": 1, "work_count": 1,
                "work_limit_count": 1, "utilisation_searched_exhaustively": true});
            if !feasible {
                let kip = |v: f64| json!({"value": v, "unit": "N"});
                search["infeasible"] = json!({"proven": proven, "check": "pile_compression",
                    "not_alone": ["min_spacing"],
                    "relaxations": (0..3).map(|i| json!({"limit": "pile_compression",
                        "pointer": "/pile_capacity/compression", "from": kip(1e4),
                        "to": kip(2e4), "pile_count": 20 + i, "exact": true})).collect::<Vec<_>>()});
            }
            found.insert("search".into(), search);
        }
        found
    }

    fn plan(&self) -> Plan {
        let beams: Vec<(String, Vec<(f64, f64)>)> = self
            .beams
            .iter()
            .enumerate()
            .map(|(i, (line, label))| {
                let line = line.iter().map(|s| self.spot(*s)).collect();
                let label = label.chars().take(60).collect::<String>();
                (format!("{i}{label}"), line)
            })
            .collect();
        let piles = self
            .piles
            .iter()
            .enumerate()
            .map(|(i, (along, down, up, label))| {
                let line = &beams[i % beams.len()].1;
                let part = along * (line.len() - 1) as f64;
                let k = (part as usize).min(line.len() - 2);
                let (t, a, b) = (part - k as f64, line[k], line[k + 1]);
                let label: String = label.chars().take(58).collect();
                let (x, y) = (a.0 + t * (b.0 - a.0), a.1 + t * (b.1 - a.1));
                (format!("{label}{i}"), x, y, *down, up.max(0.0))
            })
            .collect();
        Plan {
            beams,
            piles,
            capacity: Some(12_500.0),
            cautions: 5,
            asked: self.asked(),
            found: self.found(),
            width: self.width.map(|w| w * self.extent),
            types: named(self.types.clone()),
            openings: self
                .openings
                .iter()
                .map(|(from, long, no_beam)| {
                    (from * self.extent, (from + long) * self.extent, *no_beam)
                })
                .collect(),
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_sheet_breaks_the_rules(case in case()) {
        let plan = case.plan();
        for (system, paper) in [
            (System::Si, Paper::A4),
            (System::UsCustomary, Paper::Letter),
        ] {
            for svg in [plan.sheet(system, paper), plan.numbers(system, paper)] {
                let read = judge("random", &svg);
                judge_strokes("random", &svg, &read);
            }
        }
    }
}
