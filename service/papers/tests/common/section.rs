//! Piles in ground to draw, answered by the engine; the curve over depth and the least
//! depth are put together here from one answer for each depth.
#![allow(dead_code)]

use bearwell_engine::answer_table::{AnswerColumn, AnswerTable, Cell};
use bearwell_engine::contract::{Answer, Call, Paper, Refusal, Verdict, Work, run};
use bearwell_engine::helix::{
    AtDepthFindings, AxialResistance, CurveSummary, DepthAndUltimate, DepthCurveFindings,
    DepthRange, HelixCapacity, MinimumDepthFindings, Outcome, Request,
};
use bearwell_engine::quantity::{Force, Length, System};
use bearwell_engine::trace::Trace;
use bearwell_papers::helix_svg;
use serde_json::{Value, json};

/// A request with its answer.
pub type Drawn = (Request, Answer<Outcome>);

/// The answer of the engine to a request.
pub fn asked(request: &Request) -> Result<Answer<Outcome>, Refusal> {
    let call = Call::from(request.clone());
    run::<HelixCapacity>(&call, Work::new(Trace::off(), None))
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
    helix_svg(request, answer, system, paper)
}

fn q(value: f64, unit: &str) -> Value {
    json!({"value": value, "unit": unit})
}

/// A layer by label, bottom and top (m), and what it is.
pub fn layer(label: &str, top: f64, bottom: f64, soil: Value) -> Value {
    json!({"label": label, "top": q(top, "m"), "bottom": q(bottom, "m"),
           "unit_weight": q(18.5, "kN_per_m3"), "soil": soil})
}

pub fn clay(kpa: f64) -> Value {
    json!({"clay": {"undrained_strength": q(kpa, "kPa")}})
}

pub fn silt(kpa: f64) -> Value {
    json!({"silt": {"undrained_strength": q(kpa, "kPa")}})
}

pub fn sand(degrees: f64) -> Value {
    json!({"sand": {"friction_angle": q(degrees, "deg")}})
}

/// A request: layers, helices (label, diameter and depth in m) on a shaft of 89 mm.
pub fn request(layers: Vec<Value>, water: Option<f64>, helices: &[(&str, f64, f64)]) -> Value {
    let plates: Vec<Value> = helices
        .iter()
        .map(|(label, diameter, depth)| {
            json!({"label": label, "diameter": q(*diameter, "m"), "depth": q(*depth, "m")})
        })
        .collect();
    let mut request = json!({
        "soil": {"layers": layers},
        "pile": {"label": "T1", "shaft": {"round": {"outside_diameter": q(88.9, "mm")}},
                 "helices": plates},
    });
    if let Some(depth) = water {
        request["soil"]["water_depth"] = q(depth, "m");
    }
    request
}

/// Loads to be judged: allowable, kN.
pub fn loaded(mut request: Value, down: f64, up: f64) -> Value {
    request["design_basis"] = json!({"allowable_stress": {}});
    request["demand"] =
        json!({"level": "allowable", "compression": q(down, "kN"), "tension": q(up, "kN")});
    request
}

/// The pile with its lowest helix at another depth.
fn moved(request: &Request, lowest: f64) -> Request {
    let deepest = deepest(request);
    let mut moved = request.clone();
    for helix in &mut moved.pile.helices {
        helix.depth = Length::from_si(helix.depth.si() - deepest + lowest);
    }
    moved
}

fn deepest(request: &Request) -> f64 {
    let depths = request.pile.helices.iter().map(|h| h.depth.si());
    depths.fold(0.0, f64::max)
}

/// Adds a curve of `count` depths, answered one by one.
#[track_caller]
pub fn with_curve((request, mut answer): Drawn, from: f64, to: f64, count: u32) -> Drawn {
    let force = |name| AnswerColumn::of(name, Force::ROLE);
    let mut columns = vec![AnswerColumn::of("depth", Length::ROLE)];
    let (down, up) = (&answer.result.compression, &answer.result.tension);
    if down.is_some() {
        columns.extend([force("compression_ultimate"), force("compression_punching")]);
    }
    if up.is_some() {
        columns.push(force("tension_ultimate"));
    }
    let depth = |k: u32| from + (to - from) * f64::from(k) / f64::from(count - 1);
    let rows: Vec<Vec<Cell>> = (0..count)
        .map(|k| {
            let there = asked(&moved(&request, depth(k))).expect("an answer at every depth");
            let mut row = vec![Cell::of(Length::from_si(depth(k)))];
            if let Some(r) = &there.result.compression {
                row.push(Cell::of(r.ultimate));
                row.push(Cell::of(r.ultimate_by_punching.unwrap_or(r.ultimate)));
            }
            row.extend(there.result.tension.map(|r| Cell::of(r.ultimate)));
            row
        })
        .collect();
    let summary = |r: &Option<AxialResistance>| {
        r.as_ref().map(|r| {
            let here = DepthAndUltimate {
                depth: Length::from_si(from),
                ultimate: r.ultimate,
            };
            CurveSummary {
                least: here,
                greatest: here,
            }
        })
    };
    answer.result.depth_curve = Some(DepthCurveFindings {
        from: Length::from_si(from),
        to: Length::from_si(to),
        depth_count: count,
        compression: summary(down),
        tension: summary(up),
        points: Some(AnswerTable { columns, rows }),
    });
    (request, answer)
}

/// Adds the least depth, found by going down in steps of 5 cm.
#[track_caller]
pub fn with_least_depth((request, mut answer): Drawn, from: f64, to: f64) -> Drawn {
    let steps = ((to - from) / 0.05).floor() as u32;
    let passes =
        |depth: f64| asked(&moved(&request, depth)).is_ok_and(|a| a.verdict == Verdict::Accept);
    let depths = (0..=steps).map(|k| from + 0.05 * f64::from(k));
    let mut passing: Vec<DepthRange> = Vec::new();
    let mut before = false;
    for depth in depths {
        let here = Length::from_si(depth);
        let good = passes(depth);
        match passing.last_mut() {
            Some(range) if good && before => range.to = here,
            _ if good => passing.push(DepthRange {
                from: here,
                to: here,
            }),
            _ => {}
        }
        before = good;
    }
    let least = passing.first().map(|r| r.from);
    answer.result.minimum_depth = Some(MinimumDepthFindings {
        searched_from: Length::from_si(from),
        searched_to: Length::from_si(to),
        depth: least,
        governed_by: vec!["helix_compression".into()],
        passing,
        at: AtDepthFindings {
            depth: least.unwrap_or(Length::from_si(to)),
            top_helix_depth: Length::from_si(1.0),
            rules: Vec::new(),
            compression_ultimate: None,
            tension_ultimate: None,
            torque: None,
        },
    });
    (request, answer)
}

/// A pile among many thin layers down to a depth (m), its `helices` from 9 m up.
pub fn crowded(layers: usize, depth: f64, helices: usize) -> Value {
    let step = depth / layers as f64;
    let soil = |i: usize| match i % 4 {
        0 => clay(40.0 + 3.0 * i as f64),
        1 => sand(28.0 + (i % 10) as f64),
        2 => silt(30.0 + 2.0 * i as f64),
        _ => clay(90.0 + i as f64),
    };
    let list = (0..layers)
        .map(|i| {
            layer(
                &format!(
                    "unit {} of the long name of the deposit of the valley",
                    i + 1
                ),
                step * i as f64,
                step * (i + 1) as f64,
                if i == 0 { json!({"fill": {}}) } else { soil(i) },
            )
        })
        .collect();
    let plates: Vec<(String, f64, f64)> = (0..helices)
        .map(|i| {
            let depth = 9.0 - 0.9 * (helices - 1 - i) as f64;
            (
                format!("helix no. {} from the top of the lead", i + 1),
                0.35,
                depth,
            )
        })
        .collect();
    let plates: Vec<(&str, f64, f64)> = plates
        .iter()
        .map(|(l, d, z)| (l.as_str(), *d, *z))
        .collect();
    request(list, Some(2.5), &plates)
}
