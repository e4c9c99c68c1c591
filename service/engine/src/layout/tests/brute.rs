//! Counts that the search calls proven, against a separate program that tries everything:
//! other code for the places, the beam (three-moment equation, dense) and the choice.

use serde_json::{Value, json};

use super::answer;
use crate::beam::Shape;
use crate::beam::three_moment::rigid_line;
use crate::contract::Call;

/// A small generator of whole numbers, so that every run sees the same plans.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, from: u64, to: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        from + (self.0 >> 33) % (to - from + 1)
    }
}

/// A straight run: ends in half metres, dead load and uplift in kN/m, a column or none.
#[derive(Debug, Clone)]
struct Beam {
    ends: [(u64, u64); 2],
    dead: u64,
    up: u64,
    column: Option<(u64, u64)>,
}

#[derive(Debug, Clone)]
struct Small {
    beams: Vec<Beam>,
    min: u64,
    max: u64,
    compression: u64,
    tension: u64,
}

fn small(dice: &mut Dice) -> Small {
    let mut beam = |a: (u64, u64), b: (u64, u64)| {
        let length = (b.0 - a.0) + (b.1 - a.1);
        Beam {
            ends: [a, b],
            dead: dice.roll(4, 20),
            up: if dice.roll(0, 2) == 0 {
                dice.roll(2, 24)
            } else {
                0
            },
            column: (dice.roll(0, 2) == 0).then(|| (dice.roll(1, length - 1), dice.roll(5, 40))),
        }
    };
    let shape = beam((0, 0), (9, 0)).dead % 3;
    let mut dice2 =
        Dice(u64::from(beam((0, 0), (9, 0)).dead as u32) * 77 + beam((0, 0), (9, 0)).up);
    let (l, h) = (dice2.roll(6, 10), dice2.roll(6, 9));
    let beams = match shape {
        0 => vec![beam((0, 0), (l, 0))],
        1 => vec![beam((0, 0), (l, 0)), beam((0, 0), (0, h))],
        _ => {
            let t = dice2.roll(3, l - 3);
            vec![beam((0, 0), (l, 0)), beam((t, 0), (t, h))]
        }
    };
    Small {
        beams,
        min: dice.roll(1, 3),
        max: dice.roll(5, 8),
        compression: dice.roll(18, 70),
        tension: if dice.roll(0, 1) == 0 {
            0
        } else {
            dice.roll(5, 30)
        },
    }
}

fn half(v: u64) -> Value {
    json!({"value": v as f64 * 0.5, "unit": "m"})
}

fn request(plan: &Small) -> Call<crate::layout::Request> {
    let mut points = Vec::new();
    let mut beams = Vec::new();
    for (i, b) in plan.beams.iter().enumerate() {
        let at = |p: (u64, u64)| json!({"x": half(p.0), "y": half(p.1)});
        let mut loads =
            vec![json!({"kind": "dead", "load": {"value": b.dead, "unit": "kN_per_m"}})];
        if b.up > 0 {
            loads.push(
                json!({"kind": "wind", "load": {"value": -(b.up as f64), "unit": "kN_per_m"}}),
            );
        }
        if let Some((s, p)) = b.column {
            let (dx, dy) = if b.ends[0].1 == b.ends[1].1 {
                (s, 0)
            } else {
                (0, s)
            };
            points.push(json!({
                "kind": "dead",
                "at": at((b.ends[0].0 + dx, b.ends[0].1 + dy)),
                "load": {"value": p, "unit": "kN"},
            }));
        }
        beams.push(json!({
            "label": format!("{}", ['A', 'B'][i]),
            "points": [at(b.ends[0]), at(b.ends[1])],
            "line_loads": loads,
        }));
    }
    let request = json!({
        "design_basis": {"allowable_stress": {"combinations": {"own": {"list": [
            {"name": "D", "factors": [{"kind": "dead", "factor": 1}]},
            {"name": "0.6D+0.6W", "factors": [
                {"kind": "dead", "factor": 0.6}, {"kind": "wind", "factor": 0.6}]},
        ]}}}},
        "beams": beams,
        "point_loads": points,
        "pile_capacity": {
            "level": "allowable",
            "compression": {"value": plan.compression, "unit": "kN"},
            "tension": {"value": plan.tension, "unit": "kN"},
        },
        "piles": {"search": {
            "max_spacing": half(plan.max), "min_spacing": half(plan.min),
            "snap": {"value": 0.5, "unit": "m"},
        }},
    });
    serde_json::from_value(request).unwrap()
}

/// One layout of one run: how many piles are its own, and the reactions in both
/// combinations at the place that it shares.
struct Layout {
    own: usize,
    shared: [f64; 2],
}

/// Every layout of a run whose own piles keep the limits.
fn layouts(plan: &Small, b: &Beam, shared: Option<u64>) -> Vec<Layout> {
    let length = (b.ends[1].0 - b.ends[0].0) + (b.ends[1].1 - b.ends[0].1);
    let mut out = Vec::new();
    for mask in 0u64..1 << (length - 1) {
        let stands: Vec<u64> = (0..=length)
            .filter(|s| *s == 0 || *s == length || mask >> (s - 1) & 1 == 1)
            .collect();
        let spaced = stands
            .windows(2)
            .all(|p| (plan.min..=plan.max).contains(&(p[1] - p[0])));
        if !spaced || shared.is_some_and(|s| !stands.contains(&s)) {
            continue;
        }
        let mut layout = Layout {
            own: stands.len() - usize::from(shared.is_some()),
            shared: [0.0; 2],
        };
        let fits = (0..2).all(|c| {
            let reactions = reactions(b, &stands, c);
            stands.iter().zip(reactions).all(|(s, r)| {
                if Some(*s) == shared {
                    layout.shared[c] = r;
                    true
                } else {
                    within(plan, r)
                }
            })
        });
        if fits {
            out.push(layout);
        }
    }
    out
}

fn reactions(b: &Beam, stands: &[u64], c: usize) -> Vec<f64> {
    let length = (b.ends[1].0 - b.ends[0].0) + (b.ends[1].1 - b.ends[0].1);
    let places: Vec<f64> = stands.iter().map(|s| *s as f64 * 0.5).collect();
    let (dead, wind) = if c == 0 { (1.0, 0.0) } else { (0.6, 0.6) };
    let q = dead * b.dead as f64 - wind * b.up as f64;
    let to = length as f64 * 0.5;
    let mut loads = vec![Shape::Spread {
        from: 0.0,
        to,
        start: q,
        end: q,
    }];
    if let Some((s, p)) = b.column {
        loads.push(Shape::Point {
            at: s as f64 * 0.5,
            force: dead * p as f64,
        });
    }
    rigid_line(to, &places, &loads).0
}

fn within(plan: &Small, r: f64) -> bool {
    r <= plan.compression as f64 * (1.0 + 1e-9) && -r <= plan.tension as f64 + 1e-9
}

/// Fewest piles by trying everything.
fn fewest(plan: &Small) -> Option<usize> {
    let a = &plan.beams[0];
    let Some(b) = plan.beams.get(1) else {
        return layouts(plan, a, None).iter().map(|l| l.own).min();
    };
    // the second beam begins on the first
    let first = layouts(plan, a, Some(b.ends[0].0));
    let second = layouts(plan, b, Some(0));
    let mut best = None;
    for x in &first {
        for y in &second {
            let count = x.own + y.own + 1;
            let fits = (0..2).all(|c| within(plan, x.shared[c] + y.shared[c]));
            if fits && best.is_none_or(|b| count < b) {
                best = Some(count);
            }
        }
    }
    best
}

#[test]
fn proven_counts_are_the_fewest() {
    let mut dice = Dice(20_261_125);
    let (mut possible, mut proven, mut found, mut wide) = (0, 0, 0, 0);
    for i in 0..400 {
        let plan = small(&mut dice);
        let truth = fewest(&plan);
        let a = match answer(&request(&plan)) {
            Ok(a) => a,
            Err(refusal) => {
                // only where no spacing fits, and then nothing is possible
                assert!(
                    refusal
                        .issues
                        .iter()
                        .all(|i| i.code == "spacing_cannot_be_met")
                );
                assert_eq!(truth, None, "{i}: {plan:?}");
                continue;
            }
        };
        let report = a.result.search.as_ref().unwrap();
        let count = a.result.pile_count as usize;
        let Some(truth) = truth else {
            assert!(!report.feasible && !report.proven_minimal, "{i}: {plan:?}");
            continue;
        };
        possible += 1;
        assert!(report.lower_bound_count as usize <= truth, "{i}: {plan:?}");
        if report.feasible {
            found += 1;
            assert!(count >= truth, "{i}: {plan:?}");
            wide += usize::from(count > truth + 1);
        }
        if report.proven_minimal {
            proven += 1;
            assert_eq!(count, truth, "{i}: {plan:?}");
        }
    }
    assert!(possible > 100);
    assert!(
        proven * 100 >= possible * 95,
        "{proven} of {possible} proven"
    );
    assert!(found * 100 >= possible * 98, "{found} of {possible} found");
    assert_eq!(wide, 0);
}
