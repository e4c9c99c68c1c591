//! Requests for decision to draw, put together here as the service would: a plan as it stands,
//! what became of its piles, ways out.
#![allow(dead_code)]

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::quantity::System;
use bearwell_engine::relocation::{Outcome, Request};
use bearwell_papers::decision_svg;
use serde_json::{Value, json};

use super::{Plan, at};

/// A way out to draw.
#[derive(Debug, Clone)]
pub struct Way {
    pub kind: &'static str,
    pub verdict: &'static str,
    pub events: Vec<Value>,
    /// Stretches of the first beam: from, to, ft.
    pub stretches: Vec<(f64, f64)>,
    pub failed: Vec<Value>,
    pub cost: Option<(f64, String)>,
}

/// A decision to draw.
#[derive(Debug, Clone, Default)]
pub struct Decision {
    /// As it stands.
    pub plan: Plan,
    pub events: Vec<Value>,
    /// Piles that are lost: label and place, ft.
    pub lost: Vec<(String, f64, f64)>,
    /// Piles that moved: their turn in the plan, where they were, how far off the line, ft.
    pub moved: Vec<(usize, (f64, f64), f64)>,
    pub options: Vec<Way>,
    /// Limits that could be relaxed: what the limit is.
    pub relax: Vec<String>,
    pub obstruction: Option<Value>,
    /// Beams no longer stand.
    pub fallen: bool,
}

pub fn ft(v: f64) -> Value {
    json!({"value": v, "unit": "ft"})
}

/// A check of a way out that fails or is open.
pub fn governing(check: &str, about: &str, ratio: Option<f64>) -> Value {
    let mut value = json!({"check": check, "subject": {"kind": "pile", "label": about},
        "combination": "D+0.75L+0.75S", "source": "caller"});
    if let Some(ratio) = ratio {
        value["utilisation_ratio"] = json!(ratio);
    }
    value
}

impl Decision {
    /// A point of the first beam, ft along it.
    fn along(&self, s: f64) -> Value {
        let line = &self.plan.beams[0].1;
        let mut left = s;
        for pair in line.windows(2) {
            let (a, b) = (pair[0], pair[1]);
            let long = ((b.0 - a.0) * (b.0 - a.0) + (b.1 - a.1) * (b.1 - a.1)).sqrt();
            if left <= long {
                let t = left / long;
                return at(a.0 + t * (b.0 - a.0), a.1 + t * (b.1 - a.1));
            }
            left -= long;
        }
        let end = line[line.len() - 1];
        at(end.0, end.1)
    }

    fn option(&self, rank: usize, o: &Way) -> Value {
        let stretches: Vec<Value> = o
            .stretches
            .iter()
            .map(|(from, to)| {
                json!({"beam": self.plan.beams[0].0, "from": ft(*from), "to": ft(*to),
                       "from_point": self.along(*from), "to_point": self.along(*to)})
            })
            .collect();
        let mut way = json!({
            "rank": rank, "kind": o.kind, "feasible": o.failed.is_empty(), "verdict": o.verdict,
            "events": o.events, "stretches": stretches, "pile_utilisation_ratio": 0.954,
            "beam_utilisation_ratio": 0.613, "utilisation_ratio": 0.954, "failed": o.failed,
            "open": [], "extra_pile_count": 1, "larger_pile_count": 0, "change_count": 1,
            "movement": ft(0.75), "neighbours": [], "reinforcement": [],
        });
        if let Some((value, currency)) = &o.cost {
            way["cost"] = json!({"value": value, "currency": currency});
        }
        way
    }

    fn piles(&self) -> Vec<Value> {
        let lbf = |v: f64| json!({"value": v, "unit": "lbf"});
        let force = |before: f64, after: f64| json!({"before": lbf(before), "after": lbf(after), "change_ratio": after / before - 1.0});
        let stand = self.plan.piles.iter().enumerate().map(|(i, p)| {
            let moved = self.moved.iter().find(|m| m.0 == i);
            let before = moved.map_or(at(p.1, p.2), |m| at(m.1.0, m.1.1));
            let change = if i % 3 == 0 { 1.05 } else { 1.0 };
            json!({"label": p.0, "fate": if moved.is_some() { "moved" } else { "unchanged" },
                "at_before": before, "at": at(p.1, p.2),
                "compression": force(p.3.max(1.0) / change, p.3.max(1.0)),
                "tension": {}, "rigid": {}, "tributary": force(p.3.max(1.0), p.3.max(1.0))})
        });
        let lost = self.lost.iter().map(|(label, x, y)| {
            json!({"label": label, "fate": "lost", "at_before": at(*x, *y),
                   "compression": {"before": lbf(11_338.0)}, "tension": {}, "rigid": {}})
        });
        stand.chain(lost).collect()
    }

    fn moved(&self) -> Vec<Value> {
        let those = self.moved.iter().map(|(i, _, off)| {
            let p = &self.plan.piles[*i];
            json!({"label": p.0, "event_index": 0, "beam": self.plan.beams[0].0,
                "along": ft(0.75), "off_line": {"value": off * 12.0, "unit": "in"},
                "centre": at(p.1, p.2 + off), "spans_before": [], "spans_after": [],
                "eccentricity": {"by_reaction": {"value": 2750.0, "unit": "ft_lbf"},
                                 "by_tributary": {"value": 2835.0, "unit": "ft_lbf"}}})
        });
        those.collect()
    }

    /// Request and answer.
    pub fn answer(&self) -> (Request, Answer<Outcome>) {
        let (layout, of_layout) = self.plan.answer();
        let layout = serde_json::to_value(layout).expect("JSON");
        let mut answer = serde_json::to_value(&of_layout).expect("JSON");
        let events = if self.events.is_empty() {
            let pile = self.plan.piles.first().map_or("P", |p| p.0.as_str());
            vec![json!({"moved": {"pile": pile, "along": ft(0.75)}})]
        } else {
            self.events.clone()
        };
        let mut request = json!({"layout": layout, "events": events});
        if let Some(keep_out) = &self.obstruction {
            request["ways_out"] = json!({"obstruction": keep_out});
        }
        let state = json!({"verdict": "reject", "pile_count": self.plan.piles.len(),
            "failed_count": 2, "max_utilisation_ratio": 1.091, "max_beam_utilisation_ratio": 0.587,
            "governing": governing("pile_compression", "A2", Some(1.091))});
        let options: Vec<Value> = self
            .options
            .iter()
            .enumerate()
            .map(|(i, o)| self.option(i + 1, o))
            .collect();
        let pile = self.lost.first().map(|l| l.0.clone());
        let pile = pile.unwrap_or_else(|| self.plan.piles[0].0.clone());
        let drawn_at = self.lost.first().map_or(self.along(0.0), |l| at(l.1, l.2));
        let may_stand: Vec<Value> = options.first().map_or(Vec::new(), |o| {
            o["stretches"].as_array().expect("a list").clone()
        });
        let mut ways = json!({"pile": pile, "drawn_at": drawn_at, "stands": false,
            "may_stand": may_stand, "options": options,
            "feasible_count": self.options.iter().filter(|o| o.failed.is_empty()).count(),
            "tried": [{"kind": "shift_along", "tried_count": 200, "feasible_count": 0}],
            "work_count": 1000, "work_limit_count": 20_000, "complete": true});
        if !self.relax.is_empty() {
            let limits = self.relax.iter().map(|limit| {
                let option = Way {
                    kind: "shift_along",
                    verdict: "reject",
                    events: vec![],
                    stretches: vec![(1.0, 2.0)],
                    failed: vec![governing("pile_compression", "A2", Some(1.2))],
                    cost: None,
                };
                json!({"limit": limit, "subject": "A2", "option": self.option(1, &option),
                    "from": {"value": 12_500.0, "unit": "lbf"},
                    "to": {"value": 13_635.0, "unit": "lbf"}})
            });
            ways["relax"] = limits.collect();
        }
        let mut outcome = json!({"layout": layout, "before": state, "piles": self.piles(),
            "beams": [], "moved": self.moved(), "reinforcement": [], "ways_out": ways});
        if !self.fallen {
            outcome["after"] = state;
            outcome["result"] = answer["result"].clone();
        }
        answer["result"] = outcome;
        (
            serde_json::from_value(request).expect("a request"),
            serde_json::from_value(answer).expect("an answer"),
        )
    }

    /// The sheet.
    pub fn sheet(&self, system: System, paper: Paper) -> String {
        let (request, answer) = self.answer();
        decision_svg(&request, &answer, system, paper)
    }
}
