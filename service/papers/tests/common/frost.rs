//! Piles in ground that moves, answered by the engine: a plain one, and random ones with every
//! part of a request there or not.
#![allow(dead_code)]

use bearwell_engine::contract::{Answer, Call, Paper, Refusal, Work, run};
use bearwell_engine::frost::{FrostEmbedment, Outcome, Request};
use bearwell_engine::quantity::System;
use bearwell_engine::trace::Trace;
use bearwell_papers::frost_svg;
use proptest::prelude::*;
use serde_json::{Value, json};

use super::Sheet;
use super::strokes::judge_strokes;

/// A request with its answer.
pub type Drawn = (Request, Answer<Outcome>);

/// The answer of the engine to a request.
pub fn asked(request: &Request) -> Result<Answer<Outcome>, Refusal> {
    run::<FrostEmbedment>(&Call::from(request.clone()), Work::new(Trace::off(), None))
}

/// The answer of the engine to a request in JSON.
#[track_caller]
pub fn drawn(request: Value) -> Drawn {
    let request: Request = serde_json::from_value(request).expect("a request");
    let answer = asked(&request).unwrap_or_else(|refusal| panic!("refused: {refusal:?}"));
    (request, answer)
}

/// The sheet of a pile.
pub fn sheet((request, answer): &Drawn, system: System, paper: Paper) -> String {
    frost_svg(request, answer, system, paper)
}

/// The sheet of a pile, judged.
pub fn judged(name: &str, pile: &Drawn, system: System, paper: Paper) -> Sheet {
    let svg = sheet(pile, system, paper);
    let read = super::judge(name, &svg);
    judge_strokes(name, &svg, &read);
    read
}

/// A quantity.
pub fn q(value: f64, unit: &str) -> Value {
    json!({"value": value, "unit": unit})
}

pub fn m(value: f64) -> Value {
    q(value, "m")
}

pub fn kn(value: f64) -> Value {
    q(value, "kN")
}

/// Helices by label, diameter and depth (m) on a shaft of 89 mm; frost to a depth (m).
pub fn request(helices: &[(&str, f64, f64)], official: f64) -> Value {
    let plates: Vec<Value> = helices
        .iter()
        .map(|(label, diameter, depth)| {
            json!({"label": label, "diameter": m(*diameter), "depth": m(*depth)})
        })
        .collect();
    json!({
        "pile": {"label": "T1", "shaft": {"round": {"outside_diameter": q(88.9, "mm")}},
                 "helices": plates},
        "frost": {"official_depth": m(official)},
    })
}

/// What holds a pile: a given ultimate tension by analysis, and dead load, kN.
pub fn held(dead: f64, ultimate: f64) -> Value {
    json!({"design_basis": {"allowable_stress": {}}, "dead_load": kn(dead),
           "tension": {"given": {"ultimate": kn(ultimate), "by": "analysis",
                                 "reference": "report"}}})
}

/// A beam in soil down to a depth (m), with its width and height.
pub fn beam(underside: f64) -> Value {
    json!({"in_soil": {"underside_depth": m(underside), "tributary_length": m(2.0),
                       "width": m(0.3), "height": m(0.7)}})
}

/// A void form of a nominal thickness for a heave, mm, with its crush pressure.
pub fn form(nominal: f64, heave: f64) -> Value {
    json!({"nominal_thickness": q(nominal, "mm"),
           "heave": {"swell": {"given": {"movement": q(heave, "mm")}}},
           "crush": {"pressure": {"given": {"pressure": q(8.0, "kPa")}},
                     "beam_width": m(0.3), "tributary_length": m(2.0)}})
}

/// A computed frost depth in one soil, for a freezing index (C day).
pub fn computed(index: f64) -> Value {
    let soil = json!({"texture": "fine", "dry_unit_weight": q(14.5, "kN_per_m3"),
                      "water_content_ratio": 0.26});
    json!({"winter": {"freezing_index": {"given": {"definition": "design_3_in_30",
                          "value": q(index, "C_day"), "reference": "a record"}},
                      "mean_annual_temperature": q(7.0, "degC"), "season_length": q(110.0, "day")},
           "layers": [{"material": {"soil": soil}}]})
}

/// Fill that settles down to a depth (m) under a permanent load (kN), over clay.
pub fn settling(depth: f64, load: f64) -> Value {
    let layer = |label: &str, thick: f64, soil: &str| {
        json!({"label": label, "thickness": m(thick), "unit_weight": q(18.0, "kN_per_m3"),
               "friction": {"beta_by_soil": {"soil": soil}}})
    };
    json!({"permanent_load": kn(load),
           "friction": {"layers": {"layers": [
               layer("fill", depth, "gravel"), layer("clay", 90.0, "clay")]}},
           "settling": {"depth": m(depth), "cause": {"fill": {}}}})
}

/// Two helices under a beam on a void form: frost, fill, swelling and collapsing ground.
pub fn everything() -> Value {
    let mut all = request(&[("upper", 0.3, 4.0), ("lower", 0.25, 4.8)], 1.2);
    all["tip_depth"] = m(5.0);
    all["head_depth"] = m(0.3);
    all["fill_depth"] = m(0.9);
    all["active_depth"] = m(2.4);
    all["collapse_depth"] = m(3.1);
    all["beam"] = beam(0.5);
    all["uplift"] = json!({"bond": {"fine": {}}, "resistance": held(20.0, 150.0)});
    all["swelling"] = json!({"adhesion": {"alpha_share": {"swell_pressure": q(100.0, "kPa")}},
                             "resistance": held(20.0, 140.0)});
    all["void_form"] = form(150.0, 50.0);
    all
}

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

/// Shares from 0 to 1, the ends more often than by chance.
fn share() -> impl Strategy<Value = f64> {
    prop_oneof![1 => Just(0.0), 1 => Just(1.0), 6 => 0.0..1.0_f64]
}

/// Dead load and tension as shares, and whether the tension comes from a profile.
type Hold = (f64, f64, bool);
/// Bond, contact, sleeve, what holds the pile, and the stage before the building.
type Uplift = (f64, Option<f64>, Option<f64>, Option<Hold>, u8);
/// Swell pressure, whether it peaks with frost, dead load and tension.
type Swelling = (f64, bool, Option<(f64, f64)>);

/// A random pile, by shares of what its request may say.
#[derive(Debug, Clone)]
pub struct Case {
    helices: Vec<(f64, f64, String)>,
    deepest: f64,
    /// Tip below the deepest helix, head, cold surface, frost, fill, active zone, collapse.
    depths: [Option<f64>; 7],
    beam: Option<(u8, f64, Option<f64>, Option<f64>)>,
    uplift: Option<Uplift>,
    swelling: Option<Swelling>,
    form: Option<(f64, f64, f64, f64, bool)>,
    layers: Vec<(f64, String)>,
    /// Freezing index of a computed depth.
    index: Option<f64>,
    /// Depth of settling ground as a share, and the permanent load.
    drag: Option<(f64, f64)>,
}

/// Random piles.
pub fn case() -> impl Strategy<Value = Case> {
    use prop::option::of;
    let pile = (
        prop::collection::vec((share(), share(), label()), 1..=8),
        prop_oneof![0.5..3.0_f64, 1.0..12.0_f64, 1.0..60.0_f64],
        (
            of(share()),
            of(share()),
            of(share()),
            of(share()),
            of(share()),
            of(share()),
            of(share()),
        ),
        of((0..5_u8, share(), of(share()), of(share()))),
    );
    let hold = of((share(), share(), any::<bool>()));
    let force = (
        of((share(), of(share()), of(share()), hold, 0..4_u8)),
        of((share(), any::<bool>(), of((share(), share())))),
        of((share(), share(), share(), share(), any::<bool>())),
        prop::collection::vec((share(), label()), 1..12),
        of(100.0..1500.0_f64),
        of((share(), 1.0..900.0_f64)),
    );
    (pile, force).prop_map(
        |((helices, deepest, d, beam), (uplift, swelling, form, layers, index, drag))| Case {
            helices,
            deepest,
            depths: [d.0, d.1, d.2, d.3, d.4, d.5, d.6],
            beam,
            uplift,
            swelling,
            form,
            layers,
            index,
            drag,
        },
    )
}

impl Case {
    /// Helices by label, diameter and depth, from the top down and apart.
    fn plates(&self) -> Vec<(&str, f64, f64)> {
        let top = 0.3 * self.deepest;
        let step = (self.deepest - top) / self.helices.len() as f64;
        let each = self.helices.iter().enumerate();
        each.map(|(i, (at, size, label))| {
            let depth = self.deepest - step * (self.helices.len() - 1 - i) as f64;
            let lift = 0.6 * step * at;
            let last = i + 1 == self.helices.len();
            let depth = if last { depth } else { depth - lift };
            (label.as_str(), 0.1 + 0.7 * size, depth)
        })
        .collect()
    }

    /// The request in JSON; the engine may still refuse it.
    pub fn request(&self) -> Value {
        let plates = self.plates();
        let top = plates[0].2;
        let [tip, head, cold, frost, fill, active, collapse] = self.depths;
        let tip_depth = self.deepest + tip.unwrap_or(0.0);
        let cold_depth = cold.unwrap_or(0.0) * top.min(1.5);
        let official = (frost.unwrap_or(0.6) * 0.95 * (tip_depth - cold_depth)).min(4.9);
        let mut all = request(&plates, official);
        all["pile"]["label"] = json!(self.helices[0].2);
        if self.helices.len().is_multiple_of(2) {
            all["pile"]["shaft"] = json!({"square": {"side": q(45.0, "mm")}});
        }
        if tip.is_some() {
            all["tip_depth"] = m(tip_depth);
        }
        if let Some(head) = head {
            all["head_depth"] = m((head * (top + 5.0) - 5.0).min(10.0));
        }
        if cold.is_some() {
            all["frost"]["cold_surface_depth"] = m(cold_depth);
        }
        if let Some(index) = self.index {
            all["frost"]["computed"] = computed(index);
        }
        if let Some((share, load)) = self.drag {
            all["downdrag"] = settling(0.2 + share * (self.deepest - 0.2), load);
        }
        for (name, share) in [
            ("fill_depth", fill),
            ("active_depth", active),
            ("collapse_depth", collapse),
        ] {
            if let Some(share) = share {
                all[name] = m((share * 2.5 * self.deepest).min(30.0));
            }
        }
        self.beam_in(&mut all, top);
        self.uplift_in(&mut all, top, cold_depth);
        self.swelling_in(&mut all);
        self.form_in(&mut all);
        all
    }

    fn beam_in(&self, all: &mut Value, top: f64) {
        let Some((kind, under, width, height)) = self.beam else {
            return;
        };
        if kind == 0 {
            all["beam"] = json!({"above_ground": {}});
            return;
        }
        let underside = (0.02 + under * (top - 0.02)).min(5.0);
        let mut beam = json!({"underside_depth": m(underside), "tributary_length": m(2.5)});
        if let Some(width) = width {
            beam["width"] = m(0.1 + 2.9 * width);
        }
        if let Some(height) = height {
            beam["height"] = m(0.1 + 4.9 * height);
        }
        if kind == 1 {
            beam["sides"] = json!({"bond_break": {"reference": "a detail"}});
        }
        all["beam"] = json!({"in_soil": beam});
    }

    /// Layers down to below the pile.
    fn profile(&self) -> Value {
        let sum: f64 = self.layers.iter().map(|l| 0.02 + l.0).sum();
        let deep = 1.3 * self.deepest + 3.0;
        let mut top = 0.0;
        let mut layers: Vec<Value> = Vec::new();
        for (i, (thick, label)) in self.layers.iter().enumerate() {
            let last = i + 1 == self.layers.len();
            let bottom = if last {
                deep
            } else {
                top + (0.02 + thick) / sum * deep
            };
            let soil = match i % 3 {
                0 => json!({"fill": {}}),
                1 => json!({"clay": {"undrained_strength": q(80.0, "kPa")}}),
                _ => json!({"sand": {"friction_angle": q(32.0, "deg")}}),
            };
            let soil = if last {
                json!({"clay": {"undrained_strength": q(90.0, "kPa")}})
            } else {
                soil
            };
            layers.push(json!({"label": label, "top": m(top), "bottom": m(bottom),
                               "unit_weight": q(18.5, "kN_per_m3"), "soil": soil}));
            top = bottom;
        }
        json!({"layers": layers})
    }

    fn uplift_in(&self, all: &mut Value, top: f64, cold: f64) {
        let Some((bond, contact, sleeve, hold, before)) = &self.uplift else {
            return;
        };
        let mut uplift = json!({"bond": {"given": {"stress": q(400.0 * bond, "kPa"),
                                                   "reference": "a test"}}});
        if let Some(contact) = contact {
            uplift["contact_top_depth"] = m((cold + contact * (top - cold)).min(10.0));
        }
        if let Some(sleeve) = sleeve {
            uplift["sleeve"] = json!({"bottom_depth": m((0.1 + sleeve * top).min(10.0)),
                                      "free_to_heave": {"reference": "a detail"}});
        }
        match before {
            0 => uplift["construction"] = json!({"loaded_before_winter": {}}),
            1 => {
                uplift["construction"] = json!({"standing_over_winter": {
                    "dead_load": kn(1.5), "beam_cast": true}});
            }
            _ => {}
        }
        if let Some((dead, tension, by_profile)) = hold {
            let mut resistance = held(10_000.0 * dead * dead * dead, 19_000.0 * tension * tension);
            if *by_profile {
                resistance["tension"] = json!({"from_soil": {"profile": self.profile()}});
            }
            uplift["resistance"] = resistance;
        }
        all["uplift"] = uplift;
    }

    fn swelling_in(&self, all: &mut Value) {
        let Some((pressure, together, hold)) = &self.swelling else {
            return;
        };
        if self.depths[5].is_none() {
            return;
        }
        let mut swelling = json!({"adhesion": {"alpha_range": {
            "swell_pressure": q(1000.0 * pressure, "kPa")}}});
        if *together && self.uplift.is_some() {
            swelling["peaks_with_frost"] = json!(true);
        }
        if let Some((dead, tension)) = hold {
            swelling["resistance"] = held(3_000.0 * dead, 9_000.0 * tension);
        }
        all["swelling"] = swelling;
    }

    fn form_in(&self, all: &mut Value) {
        let Some((nominal, heave, margin, left, crush)) = self.form else {
            return;
        };
        let thick = 10.0 + 990.0 * nominal * nominal;
        let mut form = json!({
            "nominal_thickness": q(thick, "mm"),
            "heave": {"frost": {"given": {"movement": q(1000.0 * heave * heave, "mm")}}},
            "margin": q(300.0 * margin, "mm"),
            "residual": {"share": {"residual_ratio": 0.95 * left}},
        });
        if crush {
            form["crush"] = json!({"pressure": {"given": {"pressure": q(9.0, "kPa")}},
                                   "beam_width": m(0.4)});
        }
        all["void_form"] = form;
    }
}
