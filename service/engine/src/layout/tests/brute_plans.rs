//! What the search claims on random small plans of every shape, against the separate
//! program in `grid`: corners and junctions with and without piles, springs, uplift,
//! columns, overhangs.

use serde_json::{Value, json};

use super::answer;
use super::grid::{At, Beam, Grid, RIGIDITY};
use crate::contract::Call;
use crate::layout::Request;

/// A small generator of whole numbers, so that every run sees the same plans.
pub(super) struct Dice(pub u64);

impl Dice {
    pub fn roll(&mut self, from: i64, to: i64) -> i64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        from + ((self.0 >> 33) % (to - from + 1) as u64) as i64
    }

    fn one_in(&mut self, n: i64) -> bool {
        self.roll(1, n) == 1
    }
}

/// Ends of the beams of a shape.
fn shape(kind: i64, dice: &mut Dice) -> Vec<(At, At)> {
    let (w, h) = (dice.roll(5, 8), dice.roll(4, 7));
    match kind {
        0 => vec![((0, 0), (w + 3, 0))],
        1 => vec![((0, 0), (w, 0)), ((0, 0), (0, h))],
        2 => {
            let t = dice.roll(2, w - 2);
            vec![((0, 0), (w, 0)), ((t, 0), (t, h))]
        }
        3 => {
            let (x, y) = (dice.roll(2, w - 2), dice.roll(2, h - 2));
            vec![((0, y), (w, y)), ((x, 0), (x, h))]
        }
        4 => vec![((0, 0), (w, 0)), ((0, 0), (0, h)), ((w, 0), (w, h))],
        _ => {
            let (w, h) = (dice.roll(4, 6), dice.roll(4, 6));
            let y = dice.roll(2, h - 2);
            vec![
                ((0, 0), (w, 0)),
                ((0, h), (w, h)),
                ((0, 0), (0, h)),
                ((w, 0), (w, h)),
                ((0, y), (w, y)),
            ]
        }
    }
}

fn plan(dice: &mut Dice) -> (i64, Grid) {
    // closed rings take longest to try in full, so they are fewer
    let kind = if dice.one_in(12) { 5 } else { dice.roll(0, 4) };
    let beams: Vec<Beam> = shape(kind, dice)
        .into_iter()
        .map(|(from, to)| {
            let length = to.0 - from.0 + to.1 - from.1;
            Beam {
                from,
                to,
                dead: dice.roll(4, 20) as f64,
                up: if dice.one_in(3) {
                    dice.roll(2, 24) as f64
                } else {
                    0.0
                },
                column: dice
                    .one_in(3)
                    .then(|| (dice.roll(1, length - 1), dice.roll(5, 40) as f64)),
            }
        })
        .collect();
    let blocked = if dice.one_in(4) {
        let beam = &beams[dice.roll(0, beams.len() as i64 - 1) as usize];
        vec![beam.point(dice.roll(0, beam.length()))]
    } else {
        Vec::new()
    };
    let wide = beams.len() > 2;
    let grid = Grid {
        beams,
        // with three beams and more, piles 0.5 m apart are too many choices to try
        min: dice.roll(if wide { 2 } else { 1 }, 3),
        max: dice.roll(5, 8),
        overhang: dice.one_in(3).then(|| dice.roll(1, 2)),
        where_needed: dice.one_in(2),
        blocked,
        compression: dice.roll(25, 80) as f64,
        tension: if dice.one_in(2) {
            0.0
        } else {
            dice.roll(5, 30) as f64
        },
        stiffness: dice.one_in(3).then(|| dice.roll(2, 40) as f64 * 1_000.0),
    };
    (kind, grid)
}

fn half(v: i64) -> Value {
    json!({"value": v as f64 * 0.5, "unit": "m"})
}

fn at(p: At) -> Value {
    json!({"x": half(p.0), "y": half(p.1)})
}

pub(super) fn request(plan: &Grid) -> Call<Request> {
    let mut points = Vec::new();
    let mut beams = Vec::new();
    for (i, b) in plan.beams.iter().enumerate() {
        let mut loads =
            vec![json!({"kind": "dead", "load": {"value": b.dead, "unit": "kN_per_m"}})];
        if b.up > 0.0 {
            loads.push(json!({"kind": "wind", "load": {"value": -b.up, "unit": "kN_per_m"}}));
        }
        if let Some((s, p)) = b.column {
            points.push(json!({
                "kind": "dead", "at": at(b.point(s)), "load": {"value": p, "unit": "kN"}}));
        }
        let mut beam = json!({
            "label": format!("{}", (b'A' + i as u8) as char),
            "points": [at(b.from), at(b.to)],
            "line_loads": loads,
        });
        if plan.stiffness.is_some() {
            beam["flexural_rigidity"] = json!({"value": RIGIDITY, "unit": "kN_m2"});
        }
        beams.push(beam);
    }
    let mut search = json!({
        "max_spacing": half(plan.max), "min_spacing": half(plan.min),
        "snap": {"value": 0.5, "unit": "m"},
    });
    if let Some(o) = plan.overhang {
        search["max_overhang"] = half(o);
    }
    if plan.where_needed {
        search["junction_piles"] = json!("where_needed");
    }
    let mut request = json!({
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
        "piles": {"search": search},
    });
    if let Some(p) = plan.blocked.first() {
        let small = json!({"value": 0.05, "unit": "m"});
        request["keep_outs"] = json!([{
            "label": "rock", "clearance": small,
            "shape": {"circle": {"centre": at(*p), "radius": small}}}]);
    }
    if let Some(k) = plan.stiffness {
        request["pile_stiffness"] = json!({"value": k, "unit": "kN_per_m"});
    }
    serde_json::from_value(request).unwrap()
}

#[derive(Debug, Default)]
struct Tally {
    plans: usize,
    refused: usize,
    possible: usize,
    proven: usize,
    /// Feasible ones that are not proven, by the gap that was reported.
    open: Vec<u32>,
    /// Plans that have a layout where the search found none.
    missed: usize,
    /// Shown to be impossible.
    impossible: usize,
    /// Without a pile where beams meet.
    bare: usize,
}

impl Tally {
    fn add(&mut self, i: usize, plan: &Grid) {
        self.plans += 1;
        let a = match answer(&request(plan)) {
            Ok(a) => a,
            Err(refusal) => {
                let spacing = |i: &crate::contract::Issue| {
                    ["spacing_cannot_be_met", "beam_end_barred"].contains(&i.code.as_ref())
                };
                assert!(refusal.issues.iter().all(spacing), "{i}: {refusal:?}");
                assert_eq!(plan.fewest(usize::MAX), None, "{i}: {plan:?}");
                self.refused += 1;
                return;
            }
        };
        let report = a.result.search.as_ref().unwrap();
        let count = a.result.pile_count as usize;
        let failed = a
            .checks
            .iter()
            .any(|c| c.status == crate::contract::CheckStatus::Fail);
        assert_eq!(
            report.feasible, !failed,
            "{i}: {plan:?} {:?}",
            a.verdict_reasons
        );
        if !report.feasible {
            let truth = plan.fewest(usize::MAX);
            let claimed = report.infeasible.as_ref().is_some_and(|f| f.proven);
            assert!(!(claimed && truth.is_some()), "{i}: {plan:?}");
            assert!(
                truth.is_none_or(|t| report.lower_bound_count as usize <= t),
                "{i}: {truth:?} {plan:?} {report:?}"
            );
            self.impossible += usize::from(truth.is_none());
            self.possible += usize::from(truth.is_some());
            self.missed += usize::from(truth.is_some());
            return;
        }
        self.possible += 1;
        self.bare += usize::from(report.without_pile.is_some());
        let truth = plan.fewest(count).unwrap_or(count);
        assert!(
            report.lower_bound_count as usize <= truth,
            "{i}: {truth} {plan:?} {report:?}"
        );
        assert_eq!(
            report.proven_minimal,
            report.lower_bound_count as usize == count
        );
        if report.proven_minimal {
            self.proven += 1;
            assert_eq!(count, truth, "{i}: {plan:?} {report:?}");
        } else {
            self.open.push(report.gap_count);
        }
    }
}

fn tally(seed: u64, plans: usize) {
    let mut dice = Dice(seed);
    let mut tally = Tally::default();
    for i in 0..plans {
        let (_, plan) = plan(&mut dice);
        tally.add(i, &plan);
    }
    let narrow = tally.open.iter().filter(|g| **g <= 1).count();
    println!("{tally:?}");
    assert!(tally.possible * 2 > plans, "{tally:?}");
    assert!(tally.proven * 100 >= tally.possible * 95, "{tally:?}");
    assert!(narrow * 10 >= tally.open.len() * 9, "{tally:?}");
    assert_eq!(tally.missed, 0, "{tally:?}");
    assert!(tally.bare > 0, "{tally:?}");
}

#[test]
fn claims_hold_on_plans_1_to_125() {
    tally(1, 125);
}

#[test]
fn claims_hold_on_plans_126_to_250() {
    tally(2, 125);
}

#[test]
fn claims_hold_on_plans_251_to_375() {
    tally(3, 125);
}

#[test]
fn claims_hold_on_plans_376_to_500() {
    tally(4, 125);
}
