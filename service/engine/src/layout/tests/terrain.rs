//! Counts and costs that the search calls proven, with types of pile, soil zones, keep-outs
//! and forbidden stretches, against a separate program that tries everything: other code
//! for the places, the ground, the beam (three-moment equation, dense) and the choice.

use serde_json::{Value, json};

use super::answer;
use crate::beam::Shape;
use crate::beam::three_moment::rigid_line;
use crate::contract::{Call, CheckStatus};

struct Dice(u64);

impl Dice {
    fn roll(&mut self, from: u64, to: u64) -> i64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (from + (self.0 >> 33) % (to - from + 1)) as i64
    }

    fn one_in(&mut self, n: u64) -> bool {
        self.roll(1, n) == 1
    }
}

/// Capacity in kN.
#[derive(Debug, Clone, Copy)]
struct Carries {
    compression: i64,
    tension: i64,
}

#[derive(Debug, Clone, Copy)]
struct Type {
    carries: Carries,
    cost: i64,
}

/// A rectangle in quarter metres with what the types carry in it.
#[derive(Debug, Clone)]
struct Band {
    x: (i64, i64),
    y: (i64, i64),
    each: Vec<Carries>,
}

/// A round keep-out: centre in quarter metres, radius and clearance in hundredths.
#[derive(Debug, Clone, Copy)]
struct Tree {
    at: (i64, i64),
    radius: i64,
    clearance: i64,
}

/// A run from the origin along x, and one along y where there are two; lengths in half
/// metres, loads in kN/m, a stretch of the first in half metres where no pile may stand.
#[derive(Debug, Clone)]
struct Small {
    lengths: Vec<i64>,
    dead: Vec<i64>,
    up: i64,
    types: Vec<Type>,
    band: Option<Band>,
    trees: Vec<Tree>,
    stretch: Option<(i64, i64)>,
    min: i64,
    max: i64,
    overhang: i64,
    cheapest: bool,
}

fn carries(dice: &mut Dice) -> Carries {
    Carries {
        compression: dice.roll(15, 75),
        tension: if dice.one_in(2) { 0 } else { dice.roll(4, 30) },
    }
}

fn small(dice: &mut Dice, cheapest: bool) -> Small {
    let runs = if dice.one_in(2) { 2 } else { 1 };
    let types: Vec<Type> = (0..dice.roll(1, 3))
        .map(|_| Type {
            carries: carries(dice),
            cost: dice.roll(3, 30) * 25,
        })
        .collect();
    let band = (!dice.one_in(3)).then(|| {
        let from = dice.roll(1, 9);
        Band {
            x: (from, from + dice.roll(2, 12)),
            y: (-4, if dice.one_in(2) { 4 } else { 30 }),
            each: types.iter().map(|_| carries(dice)).collect(),
        }
    });
    let trees = (0..dice.roll(0, 2))
        .map(|_| Tree {
            at: (dice.roll(6, 22), dice.roll(0, 3)),
            radius: dice.roll(0, 40),
            clearance: dice.roll(10, 60),
        })
        .collect();
    let stretch = dice.one_in(3).then(|| {
        let from = dice.roll(1, 5);
        (from, from + dice.roll(1, 3))
    });
    Small {
        lengths: (0..runs).map(|_| dice.roll(8, 10)).collect(),
        dead: (0..runs).map(|_| dice.roll(4, 20)).collect(),
        up: if dice.one_in(3) { dice.roll(2, 24) } else { 0 },
        types,
        band,
        trees,
        stretch,
        min: dice.roll(1, 3),
        max: dice.roll(5, 8),
        overhang: dice.roll(0, 2),
        cheapest,
    }
}

fn m(v: f64) -> Value {
    json!({"value": v, "unit": "m"})
}

fn kn(v: i64) -> Value {
    json!({"value": v, "unit": "kN"})
}

fn at(x: f64, y: f64) -> Value {
    json!({"x": m(x), "y": m(y)})
}

fn request(plan: &Small) -> Call<crate::layout::Request> {
    let end = |run: usize| {
        let l = plan.lengths[run] as f64 * 0.5;
        if run == 0 { at(l, 0.0) } else { at(0.0, l) }
    };
    let beams: Vec<Value> = (0..plan.lengths.len())
        .map(|run| {
            json!({
                "label": if run == 0 { "A" } else { "B" },
                "points": [at(0.0, 0.0), end(run)],
                "line_loads": [
                    {"kind": "dead", "load": {"value": plan.dead[run], "unit": "kN_per_m"}},
                    {"kind": "wind", "load": {"value": -plan.up, "unit": "kN_per_m"}},
                ],
            })
        })
        .collect();
    let mut request = json!({
        "design_basis": {"allowable_stress": {"combinations": {"own": {"list": [
            {"name": "D", "factors": [{"kind": "dead", "factor": 1}]},
            {"name": "0.6D+0.6W", "factors": [
                {"kind": "dead", "factor": 0.6}, {"kind": "wind", "factor": 0.6}]},
        ]}}}},
        "beams": beams,
        "pile_types": {"level": "allowable", "currency": "crowns", "types":
            plan.types.iter().enumerate().map(|(i, t)| json!({
                "label": format!("T{i}"), "cost": t.cost,
                "compression": kn(t.carries.compression), "tension": kn(t.carries.tension),
            })).collect::<Vec<_>>()},
        "keep_outs": plan.trees.iter().enumerate().map(|(i, t)| json!({
            "label": format!("K{i}"), "clearance": m(t.clearance as f64 * 0.01),
            "shape": {"circle": {"centre": at(t.at.0 as f64 * 0.25, t.at.1 as f64 * 0.25),
                "radius": m(t.radius as f64 * 0.01)}},
        })).collect::<Vec<_>>(),
        "piles": {"search": {
            "max_spacing": m(plan.max as f64 * 0.5), "min_spacing": m(plan.min as f64 * 0.5),
            "snap": m(0.5),
            "objective": if plan.cheapest { "least_cost" } else { "fewest_piles" },
        }},
    });
    if let Some(b) = &plan.band {
        let (x0, x1) = (b.x.0 as f64 * 0.25, b.x.1 as f64 * 0.25);
        let (y0, y1) = (b.y.0 as f64 * 0.25, b.y.1 as f64 * 0.25);
        request["soil_zones"] = json!([{
            "label": "soft",
            "corners": [at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)],
            "capacities": b.each.iter().enumerate().map(|(i, c)| json!({
                "pile_type": format!("T{i}"),
                "compression": kn(c.compression), "tension": kn(c.tension),
            })).collect::<Vec<_>>(),
        }]);
    }
    let search = &mut request["piles"]["search"];
    if plan.overhang > 0 {
        search["max_overhang"] = m(plan.overhang as f64 * 0.5);
    }
    if let Some((from, to)) = plan.stretch {
        search["forbidden"] =
            json!([{"beam": "A", "from": m(from as f64 * 0.5), "to": m(to as f64 * 0.5)}]);
    }
    serde_json::from_value(request).unwrap()
}

/// What the types carry at a place, in half metres along a run.
fn ground(plan: &Small, run: usize, s: i64) -> Vec<Carries> {
    // quarter metres
    let (x, y) = if run == 0 { (2 * s, 0) } else { (0, 2 * s) };
    let outside: Vec<Carries> = plan.types.iter().map(|t| t.carries).collect();
    let Some(b) = &plan.band else {
        return outside;
    };
    let within = |v: i64, r: (i64, i64)| (r.0..=r.1).contains(&v);
    let deep = |v: i64, r: (i64, i64)| r.0 < v && v < r.1;
    if !within(x, b.x) || !within(y, b.y) {
        return outside;
    }
    if deep(x, b.x) && deep(y, b.y) {
        return b.each.clone();
    }
    let lower = |(a, b): (&Carries, &Carries)| Carries {
        compression: a.compression.min(b.compression),
        tension: a.tension.min(b.tension),
    };
    outside.iter().zip(&b.each).map(lower).collect()
}

fn open(plan: &Small, run: usize, s: i64) -> bool {
    let (x, y) = if run == 0 {
        (s as f64 * 0.5, 0.0)
    } else {
        (0.0, s as f64 * 0.5)
    };
    let clear = plan.trees.iter().all(|t| {
        let (dx, dy) = (x - t.at.0 as f64 * 0.25, y - t.at.1 as f64 * 0.25);
        (dx * dx + dy * dy).sqrt() - t.radius as f64 * 0.01 >= t.clearance as f64 * 0.01 - 1e-9
    });
    let off = plan
        .stretch
        .is_none_or(|(from, to)| run == 1 || s <= from || s >= to);
    clear && off
}

/// Greatest compression and tension of a pile in kN.
fn worst(reactions: [f64; 2]) -> (f64, f64) {
    (
        reactions[0].max(reactions[1]).max(0.0),
        (-reactions[0]).max(-reactions[1]).max(0.0),
    )
}

/// Cost of the cheapest type that carries both; none where no type does.
fn price(plan: &Small, each: &[Carries], reactions: [f64; 2]) -> Option<i64> {
    let (c, t) = worst(reactions);
    plan.types
        .iter()
        .zip(each)
        .filter(|(_, e)| c <= e.compression as f64 * (1.0 + 1e-9) && t <= e.tension as f64 + 1e-9)
        .map(|(t, _)| t.cost)
        .min()
}

/// A layout of one run: its own piles, what they cost, the reactions at the corner.
struct Layout {
    own: i64,
    cost: i64,
    corner: [f64; 2],
}

fn layouts(plan: &Small, run: usize) -> Vec<Layout> {
    let length = plan.lengths[run];
    let corner = plan.lengths.len() == 2;
    let mut out = Vec::new();
    for mask in 0u64..1 << (length + 1) {
        let stands: Vec<i64> = (0..=length).filter(|s| mask >> s & 1 == 1).collect();
        let spaced = stands
            .windows(2)
            .all(|p| (plan.min..=plan.max).contains(&(p[1] - p[0])));
        let (Some(first), Some(last)) = (stands.first(), stands.last()) else {
            continue;
        };
        let ends =
            length - last <= plan.overhang && *first <= if corner { 0 } else { plan.overhang };
        if !spaced || !ends || !stands.iter().all(|s| open(plan, run, *s)) {
            continue;
        }
        let by_case: Vec<Vec<f64>> = (0..2).map(|c| reactions(plan, run, &stands, c)).collect();
        let mut layout = Layout {
            own: 0,
            cost: 0,
            corner: [0.0; 2],
        };
        let carried = stands.iter().enumerate().all(|(i, s)| {
            let r = [by_case[0][i], by_case[1][i]];
            if corner && *s == 0 {
                layout.corner = r;
                return true;
            }
            match price(plan, &ground(plan, run, *s), r) {
                Some(cost) => {
                    layout.own += 1;
                    layout.cost += cost;
                    true
                }
                None => false,
            }
        });
        if carried {
            out.push(layout);
        }
    }
    out
}

fn reactions(plan: &Small, run: usize, stands: &[i64], c: usize) -> Vec<f64> {
    let places: Vec<f64> = stands.iter().map(|s| *s as f64 * 0.5).collect();
    let (dead, wind) = if c == 0 { (1.0, 0.0) } else { (0.6, 0.6) };
    let q = dead * plan.dead[run] as f64 - wind * plan.up as f64;
    let to = plan.lengths[run] as f64 * 0.5;
    let load = Shape::Spread {
        from: 0.0,
        to,
        start: q,
        end: q,
    };
    rigid_line(to, &places, &[load]).0
}

/// Fewest piles and least cost by trying everything.
fn truth(plan: &Small) -> Option<(i64, i64)> {
    let first = layouts(plan, 0);
    if plan.lengths.len() == 1 {
        let fewest = first.iter().map(|l| l.own).min()?;
        return first.iter().map(|l| l.cost).min().map(|c| (fewest, c));
    }
    let second = layouts(plan, 1);
    let here = ground(plan, 0, 0);
    let mut best: Option<(i64, i64)> = None;
    for a in &first {
        for b in &second {
            let corner = [a.corner[0] + b.corner[0], a.corner[1] + b.corner[1]];
            if let Some(price) = price(plan, &here, corner) {
                let (count, cost) = (a.own + b.own + 1, a.cost + b.cost + price);
                best = Some(best.map_or((count, cost), |x| (x.0.min(count), x.1.min(cost))));
            }
        }
    }
    best
}

#[derive(Debug, Default)]
struct Tally {
    refused: usize,
    possible: usize,
    found: usize,
    proven: usize,
    uneven: usize,
}

/// Asks for many plans and compares each with the truth.
fn compare(seed: u64, plans: usize, cheapest: bool) -> Tally {
    let mut dice = Dice(seed);
    let mut tally = Tally::default();
    for i in 0..plans {
        let plan = small(&mut dice, cheapest);
        let truth = truth(&plan);
        let a = match answer(&request(&plan)) {
            Ok(a) => a,
            Err(refusal) => {
                let codes = ["spacing_cannot_be_met", "beam_end_barred"];
                assert!(
                    refusal
                        .issues
                        .iter()
                        .all(|i| codes.contains(&i.code.as_ref())),
                    "{i}: {plan:?}: {refusal:?}"
                );
                assert_eq!(truth, None, "{i}: {plan:?}");
                tally.refused += 1;
                continue;
            }
        };
        let report = a.result.search.as_ref().unwrap();
        let failed = a.checks.iter().any(|c| c.status == CheckStatus::Fail);
        assert_eq!(report.feasible, !failed, "{i}: {plan:?}");
        let Some((fewest, least)) = truth else {
            assert!(!report.feasible && !report.proven_minimal, "{i}: {plan:?}");
            continue;
        };
        tally.possible += 1;
        tally.found += usize::from(report.feasible);
        tally.proven += usize::from(report.proven_minimal);
        tally.uneven += usize::from(plan.band.is_some() || !plan.trees.is_empty());
        let count = i64::from(a.result.pile_count);
        assert!(
            i64::from(report.lower_bound_count) <= fewest,
            "{i}: {plan:?}"
        );
        if cheapest {
            let cost = report.cost.as_ref().unwrap();
            assert!(
                cost.lower_bound_cost.value <= least as f64,
                "{i}: {plan:?} {cost:?}"
            );
            let total = a.result.total_cost.as_ref().unwrap().value;
            assert_eq!(total, cost.total_cost.value);
            if report.feasible {
                assert!(total >= least as f64, "{i}: {plan:?}");
            }
            if report.proven_minimal {
                assert_eq!(total, least as f64, "{i}: {plan:?}");
            }
        } else if report.feasible {
            assert!(count >= fewest, "{i}: {plan:?}");
            if report.proven_minimal {
                assert_eq!(count, fewest, "{i}: {plan:?}");
            }
        }
    }
    tally
}

#[test]
fn proven_counts_are_the_fewest_on_uneven_ground() {
    let tally = compare(20_261_128, 250, false);
    assert!(tally.possible > 80 && tally.uneven > 50, "{tally:?}");
    assert!(tally.proven * 100 >= tally.possible * 95, "{tally:?}");
    assert!(tally.found * 100 >= tally.possible * 98, "{tally:?}");
}

#[test]
fn proven_costs_are_the_least() {
    let tally = compare(20_261_129, 250, true);
    assert!(tally.possible > 80 && tally.uneven > 50, "{tally:?}");
    assert!(tally.proven * 100 >= tally.possible * 95, "{tally:?}");
    assert!(tally.found * 100 >= tally.possible * 98, "{tally:?}");
}
