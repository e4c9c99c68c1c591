//! Logs to draw, with answers put together here: how each row stands, what fails and what is
//! next are said by the test.
#![allow(dead_code)]

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::quantity::System;
use bearwell_engine::record::{Outcome, Request};
use bearwell_papers::record_svg;
use serde_json::{Map, Value, json};

/// A number with its unit.
pub fn q(value: f64, unit: &str) -> Value {
    json!({"value": value, "unit": unit})
}

/// A row: depth (ft), torque (ft lbf), how it stands, advance over pitch.
pub type Row = (f64, Option<f64>, &'static str, Option<f64>);

/// A check: id, status, demand, capacity and their unit, reason.
pub type Judged = (
    &'static str,
    &'static str,
    Option<(f64, f64, &'static str)>,
    String,
);

/// A log to draw.
#[derive(Debug, Clone, Default)]
pub struct Log {
    pub label: String,
    pub rows: Vec<Row>,
    /// Diameter (in) and height above the tip (ft).
    pub helices: Vec<(f64, f64)>,
    pub square: bool,
    pub no_shaft: bool,
    /// Required torque and that by the reduced factor, ft lbf.
    pub required: Option<f64>,
    pub reduced: Option<f64>,
    pub limit: Option<f64>,
    /// Torque that counts with its window: ft lbf, ft, ft.
    pub effective: Option<(f64, f64, f64)>,
    pub depths: Vec<(&'static str, f64)>,
    pub history: Vec<(&'static str, f64)>,
    pub margin: Option<f64>,
    pub stop: Option<&'static str>,
    pub profile: Option<Value>,
    /// Label of a layer, its top (ft) and the mean torque in it (ft lbf).
    pub layers: Vec<(String, f64, f64)>,
    pub checks: Vec<Judged>,
    pub next: Vec<(&'static str, String, Option<f64>)>,
    pub capacity: bool,
    pub missing: usize,
    pub cautions: usize,
    pub warnings: usize,
    pub verdict: &'static str,
    pub notes: Vec<(usize, String)>,
}

impl Log {
    /// Rows one foot apart that all count and go down their pitch.
    pub fn by_the_foot(label: &str, torques: &[f64]) -> Self {
        let row = |(i, t): (usize, &f64)| ((i + 1) as f64, Some(*t), "counts", Some(0.95));
        Self {
            label: label.to_owned(),
            rows: torques.iter().enumerate().map(row).collect(),
            helices: vec![(10.0, 3.0), (12.0, 0.5)],
            required: Some(2778.0),
            limit: Some(5500.0),
            depths: vec![
                ("minimum_tip_depth", 17.0),
                ("frost_depth", 4.0),
                ("fill_depth", 4.5),
            ],
            margin: Some(4.984),
            verdict: "accept",
            cautions: 4,
            ..Self::default()
        }
    }

    pub fn request_json(&self) -> Value {
        let rows: Vec<Value> = self
            .rows
            .iter()
            .map(|(depth, torque, _, advance)| json!([depth, torque, advance.map(|a| 3.0 * a)]))
            .collect();
        let helices: Vec<Value> = self
            .helices
            .iter()
            .map(|(d, z)| json!({"diameter": q(*d, "in"), "above_tip": q(*z, "ft")}))
            .collect();
        let members = |pairs: &[(&'static str, f64)]| -> Map<String, Value> {
            let all = pairs.iter();
            all.map(|(k, v)| ((*k).to_owned(), q(*v, "ft"))).collect()
        };
        let mut request = json!({
            "pile": {"helices": helices, "helix_pitch": q(3.0, "in")},
            "log": {"columns": [{"name": "depth", "unit": "ft"}, {"name": "torque", "unit": "ft_lbf"},
                                {"name": "advance_per_turn", "unit": "in"}],
                    "rows": rows},
            "depths": members(&self.depths),
        });
        if !self.label.is_empty() {
            request["label"] = json!(self.label);
        }
        if !self.no_shaft {
            request["pile"]["shaft"] = match self.square {
                true => json!({"square": {"side": q(1.75, "in")}}),
                false => json!({"round": {"outside_diameter": q(2.875, "in")}}),
            };
        }
        if !self.history.is_empty() {
            request["history"] = Value::Object(members(&self.history));
        }
        if let Some(torque) = self.required {
            request["target"] = json!({"stated": {"torque": q(torque, "ft_lbf")}});
        }
        if let Some(limit) = self.limit {
            request["limits"] =
                json!({"shaft_torque": q(limit, "ft_lbf"), "least_advance_ratio": 0.85});
        }
        if let Some(stop) = self.stop {
            request["stop"] = json!(stop);
        }
        if let Some(profile) = &self.profile {
            request["ground"] = json!({"profile": profile});
        }
        if !self.notes.is_empty() {
            let notes = self.notes.iter();
            request["notes"] = notes
                .map(|(row, text)| json!({"row": row, "text": text}))
                .collect();
        }
        request
    }

    fn outcome(&self) -> Value {
        let tip = self.rows.last().map_or(0.0, |r| r.0);
        let mut helices = self.helices.clone();
        helices.sort_by(|a, b| b.1.total_cmp(&a.1));
        let rows = self.rows.iter().map(|(depth, torque, standing, advance)| {
            let mut row = json!({"depth": q(*depth, "ft"), "standing": standing});
            if let Some(t) = torque {
                row["torque"] = q(*t, "ft_lbf");
            }
            if let Some(a) = advance {
                row["advance_ratio"] = json!(a);
            }
            row
        });
        let next = self.next.iter().map(|(step, needs, to)| {
            let mut next = json!({"step": step, "needs": needs});
            if let Some(to) = to {
                next["to_tip_depth"] = q(*to, "ft");
            }
            next
        });
        let mut outcome = json!({
            "tip_depth": q(tip, "ft"),
            "helices": helices.iter().map(|(d, z)|
                json!({"diameter": q(*d, "in"), "depth": q(tip - z, "ft")})).collect::<Vec<_>>(),
            "rows": rows.collect::<Vec<_>>(),
            "next_steps": next.collect::<Vec<_>>(),
        });
        if let Some(torque) = self.required {
            outcome["required"] = json!({"torque": q(torque, "ft_lbf"), "tension": self.reduced.is_some(), "source": source()});
            if let Some(reduced) = self.reduced {
                outcome["required"]["by_reduced_factor"] = q(reduced, "ft_lbf");
            }
        }
        if let Some((torque, from, to)) = self.effective {
            outcome["effective"] = json!({
                "definition": "lower_of_two_windows", "torque": q(torque, "ft_lbf"),
                "torque_low": q(0.95 * torque, "ft_lbf"), "torque_high": q(1.05 * torque, "ft_lbf"),
                "source": source(), "by_definition": [],
                "window_from": q(from, "ft"), "window_to": q(to, "ft"),
                "least": q(0.9 * torque, "ft_lbf"), "greatest": q(1.1 * torque, "ft_lbf"),
                "reading_count": 3});
        }
        let mut torques = self.rows.iter().filter_map(|r| r.1);
        if let Some(last) = torques.clone().next_back() {
            outcome["final_torque"] = q(last, "ft_lbf");
            let greatest = torques.by_ref().fold(0.0, f64::max);
            outcome["greatest_torque"] = q(greatest, "ft_lbf");
        }
        if self.capacity {
            let of = json!({"torque": q(5500.0, "ft_lbf"), "compression_ultimate": q(49500.0, "lbf"),
                            "compression_design": q(24750.0, "lbf"), "tension_ultimate": q(49500.0, "lbf")});
            outcome["capacity"] = json!({"indicative_only": self.verdict == "reject",
                "withheld_for": [], "by_effective_torque": of, "by_final_torque": of});
        }
        if self.missing > 0 {
            let missing = (0..self.missing).map(|_| {
                json!({"field": "rotation_speed", "clause": "item 1.5",
                "member": "log.rotation_speed", "source": source()})
            });
            outcome["completeness"] = json!({"complete": false, "required_count": 12,
                "present_count": 12 - self.missing.min(12), "missing": missing.collect::<Vec<_>>()});
        }
        if !self.layers.is_empty() {
            let layers = self.layers.iter().map(|(label, top, mean)| {
                json!({"label": label, "ground": "clay", "top": q(*top, "ft"), "bottom": q(top + 1.0, "ft"),
                       "mean_torque": q(*mean, "ft_lbf"), "greatest_torque": q(*mean, "ft_lbf")})
            });
            outcome["ground"] = json!({"layers": layers.collect::<Vec<_>>(),
                "expected_torque": {"ultimate": q(27900.0, "lbf"), "expected": q(3100.0, "ft_lbf"),
                                    "low": q(2200.0, "ft_lbf"), "high": q(4400.0, "ft_lbf")}});
        }
        outcome
    }

    /// Request and answer as the service would put them together.
    pub fn answer(&self) -> (Request, Answer<Outcome>) {
        let mut checks: Vec<Value> = self
            .checks
            .iter()
            .map(|(id, status, numbers, reason)| {
                let mut check = json!({"id": id, "status": status, "relation": "at_least",
                    "governing": true, "source": source()});
                if let Some((demand, capacity, unit)) = numbers {
                    check["demand"] = q(*demand, unit);
                    check["capacity"] = q(*capacity, unit);
                }
                if !reason.is_empty() {
                    check["reason"] = json!(reason);
                }
                check
            })
            .collect();
        if let Some(margin) = self.margin {
            checks.push(json!({"id": "record_helix_below_frost", "status": "pass",
                "relation": "at_least", "demand": q(margin * 0.3048, "m"),
                "capacity": q(3.0, "m"), "governing": true, "source": source()}));
        }
        let warnings = (0..self.warnings)
            .map(|_| json!({"code": "record_spikes_left_out", "detail": "row 3 of 17 left out"}));
        let cautions = (0..self.cautions).map(
            |_| json!({"code": "torque_is_empirical", "text": "The correlation is empirical."}),
        );
        let answer = json!({
            "verdict": self.verdict,
            "verdict_reasons": [{"code": "record_gauge_band", "detail": "torque from 2,500 to 3,056"}],
            "result": self.outcome(),
            "checks": checks,
            "warnings": warnings.collect::<Vec<_>>(),
            "cautions": cautions.collect::<Vec<_>>(),
            "methods": [],
            "provenance": {"calculation_basis": "2026.1", "request_digest": "0123456789abcdef0123"},
        });
        (
            serde_json::from_value(self.request_json()).expect("a request"),
            serde_json::from_value(answer).expect("an answer"),
        )
    }

    /// The sheet of this log.
    pub fn sheet(&self, system: System, paper: Paper) -> String {
        let (request, answer) = self.answer();
        record_svg(&request, &answer, system, paper)
    }
}

fn source() -> Value {
    json!({"id": "bearwell_choice", "cite": "a choice of this service", "status": "derived"})
}
