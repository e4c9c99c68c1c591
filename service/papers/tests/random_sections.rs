//! Random ground and piles, with labels of any characters: no sheet ever breaks the rules
//! of a drawing.

mod common;

use std::collections::BTreeSet;

use bearwell_engine::answer_table::{AnswerColumn, AnswerTable, Cell};
use bearwell_engine::contract::Paper;
use bearwell_engine::helix::{
    AtDepthFindings, DepthCurveFindings, DepthRange, MinimumDepthFindings, Request,
};
use bearwell_engine::quantity::{Force, Length, System};
use common::judge;
use common::section::{Drawn, asked, clay, layer, loaded, request, sand, sheet, silt};
use common::strokes::judge_strokes;
use proptest::prelude::*;
use serde_json::{Value, json};

/// Names as callers send them: plain, markup, wide and strange characters.
fn label() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-zA-Z0-9 ]{1,20}",
        "[<>&\"'/a-z!\\[\\]-]{1,64}",
        "[WM\u{6f22}\u{5b57}\u{1f600}]{1,64}",
        "\\PC{1,64}",
    ]
    .prop_filter("a label has a character", |l| !l.is_empty())
}

fn soil() -> impl Strategy<Value = Value> {
    prop_oneof![
        (2.0..900.0_f64).prop_map(clay),
        (2.0..500.0_f64).prop_map(silt),
        (20.0..44.0_f64).prop_map(sand),
        Just(json!({"fill": {}})),
        Just(json!({"organic": {}})),
        Just(json!({"frozen": {}})),
        (20.0..44.0_f64, 0.0..50.0_f64).prop_map(|(phi, c)| json!({"gravel": {
            "friction_angle": {"value": phi, "unit": "deg"},
            "cohesion": {"value": c, "unit": "kPa"}}})),
        (2.0..500.0_f64).prop_map(|su| json!({"fill": {"engineered": {
            "record": "as placed", "clay": {"undrained_strength": {"value": su, "unit": "kPa"}}}}})),
        (5..60_u32).prop_map(|n| json!({"clay": {"from_spt": {
            "blow_count": n, "form": "n60", "plasticity_index_ratio": 0.25}}})),
    ]
}

/// Thicknesses that vary by a factor of a thousand, and what they are of.
fn layers() -> impl Strategy<Value = Vec<(f64, Value, String)>> {
    let one = (0.0..3.0_f64, soil(), label());
    prop::collection::vec(one, 1..=60).prop_map(|all| {
        all.into_iter()
            .map(|(log, soil, label)| (0.01 * bearwell_engine::math::pow(10.0, log), soil, label))
            .collect()
    })
}

/// What stands in the ground: shares of the depth and of the diameters. Two helices of one
/// label are refused; of those that chance gives one label only the first stays.
fn helices() -> impl Strategy<Value = Vec<(f64, f64, String)>> {
    prop::collection::vec((0.02..1.0_f64, 0.0..1.0_f64, label()), 1..=8).prop_map(|mut all| {
        let mut labels = BTreeSet::new();
        all.retain(|helix| labels.insert(helix.2.clone()));
        all
    })
}

#[derive(Debug, Clone)]
struct Case {
    layers: Vec<(f64, Value, String)>,
    helices: Vec<(f64, f64, String)>,
    water: Option<f64>,
    pressures: Vec<f64>,
    rock: bool,
    raise: Option<f64>,
    directions: &'static str,
    load: Option<(f64, f64)>,
    no_credit: f64,
    curve: Vec<(f64, f64)>,
    passing: Vec<(f64, f64)>,
}

fn case() -> impl Strategy<Value = Case> {
    let load = prop::option::of((0.0..3000.0_f64, 0.0..3000.0_f64));
    let parts = (
        layers(),
        helices(),
        (
            prop::option::of(0.0..1.2_f64),
            prop::collection::vec(prop_oneof![Just(0.0), 0.0..1.0_f64], 0..20),
            any::<bool>(),
            prop::option::of(0.0..5.0_f64),
        ),
        prop::sample::select(vec!["both", "compression", "tension"]),
        load,
        prop_oneof![Just(0.0), 0.0..0.5_f64],
    );
    let found = (
        prop::collection::vec((0.0..9e6_f64, 0.0..9e6_f64), 0..80),
        prop::collection::vec((0.0..1.0_f64, 0.0..0.2_f64), 0..4),
    );
    (parts, found).prop_map(
        |(
            (layers, helices, (water, pressures, rock, raise), directions, load, no_credit),
            (curve, passing),
        )| Case {
            layers,
            helices,
            water,
            pressures,
            rock,
            raise,
            directions,
            load,
            no_credit,
            curve,
            passing,
        },
    )
}

impl Case {
    /// The request: at most 100 m of ground, with room below the lowest helix.
    fn request(&self) -> Value {
        let thick: f64 = self.layers.iter().map(|l| l.0).sum();
        let shrink = (90.0 / thick).min(1.0);
        let mut top = 0.0;
        let mut layers: Vec<Value> = Vec::new();
        for (i, (height, soil, label)) in self.layers.iter().enumerate() {
            // the last one takes what the pile needs below it
            let last = i + 1 == self.layers.len();
            let bottom = top + height * shrink + if last { 3.0 } else { 0.0 };
            layers.push(layer(label, top, bottom, soil.clone()));
            top = bottom;
        }
        let known = top - 2.9;
        if self.rock && layers.len() < 60 {
            layers.push(layer("bedrock", top, top + 2.0, json!({"rock": {}})));
        }
        let widest = 0.1 + 0.8 * (known / 30.0).min(1.0);
        let mut depths: Vec<f64> = self
            .helices
            .iter()
            .map(|h| (h.0 * known).max(0.1))
            .collect();
        depths.sort_by(f64::total_cmp);
        depths.dedup_by(|b, a| *b - *a < 0.011);
        let plates: Vec<(&str, f64, f64)> = depths
            .iter()
            .zip(&self.helices)
            .map(|(depth, (_, share, label))| {
                (label.as_str(), 0.1 + share * (widest - 0.1), *depth)
            })
            .collect();
        let mut request = request(layers, self.water.map(|w| w * known), &plates);
        if self.water.is_none() && !self.pressures.is_empty() {
            request["soil"]["pore_pressures"] = self.pore_pressures(known);
        }
        if let Some(height) = self.raise {
            request["soil"]["grade_change"] = json!({"raise": {
                "height": {"value": height, "unit": "m"},
                "unit_weight": {"value": 17, "unit": "kN_per_m3"}}});
        }
        request["pile"]["label"] = json!(self.helices[0].2);
        request["pile"]["shaft"]["round"]["outside_diameter"] = json!({"value": 60, "unit": "mm"});
        request["directions"] = json!(self.directions);
        request["methods"] = json!({
            "no_credit_above": {"value": (self.no_credit * known).min(30.0), "unit": "m"}});
        if let Some((down, up)) = self.load {
            request = loaded(request, down, up);
            let demand = request["demand"].as_object_mut().expect("a demand");
            match self.directions {
                "compression" => demand.remove("tension"),
                "tension" => demand.remove("compression"),
                _ => None,
            };
        }
        request
    }

    /// Pressures at equal steps of depth, at most those of water up to the surface; the
    /// first of them is nil.
    fn pore_pressures(&self, known: f64) -> Value {
        let step = known / (self.pressures.len() + 1) as f64;
        let points = self.pressures.iter().enumerate().map(|(i, share)| {
            let depth = step * i as f64;
            json!({"depth": {"value": depth, "unit": "m"},
                   "pressure": {"value": 9.0 * depth * share, "unit": "kPa"}})
        });
        points.collect()
    }

    /// Answered by the engine. Curve and depths are made up.
    fn drawn(&self) -> Drawn {
        let request: Request = serde_json::from_value(self.request()).expect("a request");
        let mut answer = asked(&request).expect("an answer");
        let deepest = request.soil.depth().si();
        let at = |share: f64| Length::from_si(share * deepest);
        if self.curve.len() > 1 {
            let force = |name| AnswerColumn::of(name, Force::ROLE);
            let last = (self.curve.len() - 1) as f64;
            let rows = self.curve.iter().enumerate().map(|(i, (down, up))| {
                let depth = Length::from_si(0.1 + (deepest - 0.1) * i as f64 / last);
                let (down, up) = (Force::from_si(*down), Force::from_si(*up));
                vec![
                    Cell::of(depth),
                    Cell::of(down),
                    Cell::of(down * 0.9),
                    Cell::of(up),
                ]
            });
            answer.result.depth_curve = Some(DepthCurveFindings {
                from: Length::from_si(0.1),
                to: Length::from_si(deepest),
                depth_count: self.curve.len() as u32,
                compression: None,
                tension: None,
                points: Some(AnswerTable {
                    columns: vec![
                        AnswerColumn::of("depth", Length::ROLE),
                        force("compression_ultimate"),
                        force("compression_punching"),
                        force("tension_ultimate"),
                    ],
                    rows: rows.collect(),
                }),
            });
        }
        if !self.passing.is_empty() {
            let passing: Vec<DepthRange> = self
                .passing
                .iter()
                .map(|(from, more)| DepthRange {
                    from: at(*from),
                    to: at((from + more).min(1.0)),
                })
                .collect();
            answer.result.minimum_depth = Some(MinimumDepthFindings {
                searched_from: at(0.0),
                searched_to: at(1.0),
                depth: passing.first().map(|r| r.from),
                governed_by: vec!["helix_embedment".into()],
                at: AtDepthFindings {
                    depth: at(0.5),
                    top_helix_depth: at(0.2),
                    rules: Vec::new(),
                    compression_ultimate: None,
                    tension_ultimate: None,
                    torque: None,
                },
                passing,
            });
        }
        (request, answer)
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_sheet_breaks_the_rules(case in case()) {
        let pile = case.drawn();
        for (system, paper) in [
            (System::Si, Paper::A4),
            (System::UsCustomary, Paper::Letter),
        ] {
            let svg = sheet(&pile, system, paper);
            let read = judge("random", &svg);
            judge_strokes("random", &svg, &read);
        }
    }
}
