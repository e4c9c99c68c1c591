//! Loads that may be absent on single spans: against every way to load them, one by one.

use serde_json::{Value, json};

use super::{answer, answered, close};
use crate::contract::{Answer, Call};
use crate::layout::{Outcome, Request};

/// A small generator, so that every run sees the same plans.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, from: f64, to: f64) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        from + (to - from) * ((self.0 >> 33) as f64 / (1u64 << 31) as f64)
    }
}

fn m(v: f64) -> Value {
    json!({"value": v, "unit": "m"})
}

fn at(x: f64, y: f64) -> Value {
    json!({"x": m(x), "y": m(y)})
}

/// A continuous beam with a stem that stands on it without a pile at the junction.
struct Plan {
    /// Piles along the beam, and its length.
    piles: Vec<f64>,
    length: f64,
    /// Where the stem begins, its length and the pile on it.
    stem: (f64, f64, f64),
    dead: f64,
    /// Live load where it begins and where it ends.
    live: (f64, f64),
    stem_live: f64,
    /// A live force and its place.
    force: (f64, f64),
    springs: bool,
}

impl Plan {
    fn of(dice: &mut Dice, springs: bool) -> Self {
        let mut x = dice.roll(0.0, 1.0);
        let mut piles = vec![x];
        for _ in 0..4 {
            x += dice.roll(1.5, 4.0);
            piles.push(x);
        }
        let length = x + dice.roll(0.2, 1.5);
        let stem = 0.5 * (piles[1] + piles[2]);
        Self {
            stem: (stem, 4.0, dice.roll(2.0, 3.5)),
            dead: dice.roll(1.0, 8.0),
            live: (dice.roll(2.0, 9.0), dice.roll(2.0, 9.0)),
            stem_live: dice.roll(2.0, 9.0),
            force: (dice.roll(5.0, 20.0), piles[3] + 0.4),
            springs,
            length,
            piles,
        }
    }

    /// Spans of the beam: ends and piles.
    fn cuts(&self) -> Vec<f64> {
        let mut cuts = vec![0.0];
        cuts.extend(&self.piles);
        cuts.push(self.length);
        cuts.dedup();
        cuts
    }

    /// How many parts there are: spans and overhangs of the beam, of the stem before and
    /// beyond its pile.
    fn parts(&self) -> usize {
        self.cuts().len() - 1 + 2
    }

    /// The request with the parts of a mask loaded; all of them, and some absent, without.
    fn request(&self, mask: Option<usize>) -> Call<Request> {
        let there = |part: usize| mask.is_none_or(|m| m >> part & 1 == 1);
        let q = |x: f64| self.live.0 + (self.live.1 - self.live.0) * x / self.length;
        let load = |a: f64, b: f64, from: f64, to: f64| {
            json!({"kind": "live",
                "load": {"value": a, "unit": "kN_per_m"}, "load_at_end": {"value": b, "unit": "kN_per_m"},
                "from": m(from), "to": m(to)})
        };
        let dead = json!({"kind": "dead", "load": {"value": self.dead, "unit": "kN_per_m"}});
        let cuts = self.cuts();
        let mut main = vec![dead.clone()];
        let mut points = Vec::new();
        if mask.is_none() {
            // one load over the beam: the engine cuts it
            main.push(load(self.live.0, self.live.1, 0.0, self.length));
        }
        for (part, pair) in cuts.windows(2).enumerate() {
            let within = self.force.1 > pair[0] && self.force.1 < pair[1];
            if there(part) && within {
                points.push(json!({"kind": "live", "at": at(self.force.1, 0.0),
                    "load": {"value": self.force.0, "unit": "kN"}}));
            }
            if mask.is_some() && there(part) {
                main.push(load(q(pair[0]), q(pair[1]), pair[0], pair[1]));
            }
        }
        let mut stem = vec![dead];
        let own = [(0.0, self.stem.2), (self.stem.2, self.stem.1)];
        for (i, (from, to)) in own.into_iter().enumerate() {
            if there(cuts.len() - 1 + i) {
                stem.push(load(self.stem_live, self.stem_live, from, to));
            }
        }
        let mut positions: Vec<Value> = self
            .piles
            .iter()
            .map(|x| json!({"at": at(*x, 0.0)}))
            .collect();
        positions.push(json!({"at": at(self.stem.0, self.stem.2)}));
        let rigidity = json!({"value": 20_000.0, "unit": "kN_m2"});
        let mut request = json!({
            "design_basis": {"allowable_stress": {"combinations": {"own": {"list": [
                {"name": "1.2D+1.6L", "factors": [
                    {"kind": "dead", "factor": 1.2}, {"kind": "live", "factor": 1.6}]},
                {"name": "0.9D-0.3L", "factors": [
                    {"kind": "dead", "factor": 0.9}, {"kind": "live", "factor": -0.3}]},
            ]}}}},
            "beams": [
                {"label": "A", "points": [at(0.0, 0.0), at(self.length, 0.0)],
                 "flexural_rigidity": rigidity, "line_loads": main},
                {"label": "B", "points": [at(self.stem.0, 0.0), at(self.stem.0, self.stem.1)],
                 "flexural_rigidity": rigidity, "line_loads": stem},
            ],
            "point_loads": points,
            "piles": {"given": {"positions": positions}},
        });
        if self.springs {
            request["pile_stiffness"] = json!({"value": 9_000.0, "unit": "kN_per_m"});
        }
        if mask.is_none() {
            request["pattern_load"] = json!({});
        }
        serde_json::from_value(request).unwrap()
    }
}

/// Greatest and least reactions by model, greatest moments and shears.
#[derive(Debug, Clone)]
struct Worst {
    piles: Vec<[f64; 4]>,
    beams: Vec<[f64; 3]>,
}

fn found(a: &Answer<Outcome>) -> Worst {
    let piles = a.result.piles.iter().map(|p| {
        let spring = p.spring.as_ref().unwrap_or(&p.rigid);
        [
            p.rigid.max.si(),
            -p.rigid.min.si(),
            spring.max.si(),
            -spring.min.si(),
        ]
    });
    let beams = a.result.beams.iter().map(|b| {
        [
            b.sagging.moment.si(),
            b.hogging.moment.si(),
            b.shear.shear.si(),
        ]
    });
    Worst {
        piles: piles.collect(),
        beams: beams.collect(),
    }
}

fn same(got: f64, want: f64, size: f64) {
    assert!((got - want).abs() <= 1e-9 * size, "{got} instead of {want}");
}

/// 2^8 ways to load a beam with overhangs and a stem that leans on it, on rigid piles and on
/// springs: reactions of every pile, moments and shears of every beam.
#[test]
fn every_way_to_load_the_spans() {
    let mut dice = Dice(20_261_128);
    for case in 0..4 {
        let plan = Plan::of(&mut dice, case % 2 == 1);
        assert!(plan.parts() <= 8);
        let mut worst: Option<Worst> = None;
        for mask in 0..1 << plan.parts() {
            let one = found(&answer(&plan.request(Some(mask))).unwrap());
            let all = worst.get_or_insert_with(|| one.clone());
            for (a, b) in all.piles.iter_mut().zip(&one.piles) {
                for (x, y) in a.iter_mut().zip(b) {
                    *x = x.max(*y);
                }
            }
            for (a, b) in all.beams.iter_mut().zip(&one.beams) {
                for (x, y) in a.iter_mut().zip(b) {
                    *x = x.max(*y);
                }
            }
        }
        let worst = worst.unwrap();
        let a = answer(&plan.request(None)).unwrap();
        assert_eq!(
            a.result.pattern.as_ref().unwrap().part_count as usize,
            plan.parts()
        );
        let size = a.result.combinations[0].total_load.si();
        let mut apart = 0;
        for (p, want) in a.result.piles.iter().zip(&worst.piles) {
            let pattern = p.pattern.as_ref().unwrap();
            let spring = pattern.spring.as_ref().unwrap_or(&pattern.rigid);
            same(pattern.rigid.max.si(), want[0], size);
            same(-pattern.rigid.min.si(), want[1], size);
            same(spring.max.si(), want[2], size);
            same(-spring.min.si(), want[3], size);
            same(
                p.compression.demand.si(),
                want[0].max(want[2]).max(0.0),
                size,
            );
            same(p.tension.demand.si(), want[1].max(want[3]).max(0.0), size);
            let full = p
                .spring
                .as_ref()
                .map_or(p.rigid.max, |s| s.max.max(p.rigid.max));
            let more = want[0].max(want[2]) > full.si() + 1e-6 * size;
            assert!(!more || p.compression.pattern_governs == Some(true));
            apart += usize::from(more);
        }
        assert!(apart > 0, "no pile is worse with some spans unloaded");
        for (b, want) in a.result.beams.iter().zip(&worst.beams) {
            same(b.sagging.moment.si(), want[0], size);
            same(b.hogging.moment.si(), want[1], size);
            same(b.shear.shear.si(), want[2], size);
        }
    }
}

/// Three equal spans under w: all spans loaded give 1.1 w l on an inner pile, its two spans
/// alone 1.2 w l; sagging in the first span is 0.1013 w l2 with the outer spans loaded, the
/// least end reaction of live load is -0.05 w l with the middle span alone (unit tables of
/// continuous beams; three-moment equation).
#[test]
fn three_equal_spans() {
    let request = json!({
        "design_basis": {"allowable_stress": {"combinations": {"own": {"list": [
            {"name": "L", "factors": [{"kind": "live", "factor": 1}]}]}}}},
        "beams": [{"points": [at(0.0, 0.0), at(9.0, 0.0)],
            "line_loads": [{"kind": "live", "load": {"value": 10, "unit": "kN_per_m"}}]}],
        "pattern_load": {"kinds": ["live", "snow"]},
        "pile_capacity": {"level": "allowable", "compression": {"value": 35, "unit": "kN"},
            "tension": {"value": 1, "unit": "kN"}},
        "piles": {"given": {"positions": [
            {"at": at(0.0, 0.0)}, {"at": at(3.0, 0.0)}, {"at": at(6.0, 0.0)}, {"at": at(9.0, 0.0)}]}},
    });
    let a = answer(&serde_json::from_value(request).unwrap()).unwrap();
    let wl = 30_000.0;
    let p = &a.result.piles;
    close(p[1].rigid.max.si(), 1.1 * wl, 1e-12);
    close(p[1].compression.demand.si(), 1.2 * wl, 1e-12);
    // the far end span alone lifts it by 0.1 w l, over 1 kN
    close(p[1].tension.demand.si(), 0.1 * wl, 1e-12);
    close(p[1].utilisation_ratio.unwrap(), 3.0, 1e-12);
    close(a.result.max_utilisation_ratio.unwrap(), 3.0, 1e-12);
    close(p[0].compression.demand.si(), 0.45 * wl, 1e-12);
    close(p[0].tension.demand.si(), 0.05 * wl, 1e-12);
    let b = &a.result.beams[0];
    close(b.sagging.moment.si(), 0.45 * 0.45 / 2.0 * wl * 3.0, 1e-12);
    // over an inner pile with its two spans loaded: 7/60 w l2
    close(b.hogging.moment.si(), 7.0 / 60.0 * wl * 3.0, 1e-12);
    close(b.shear.shear.si(), (0.5 + 7.0 / 60.0) * wl, 1e-12);
    let report = a.result.pattern.unwrap();
    assert_eq!((report.part_count, report.governed_pile_count), (3, 4));
    assert_eq!(report.governed_beam_count, 1);
    let without = a.warnings.iter().find(|w| w.code == "pattern_without_load");
    assert_eq!(without.unwrap().detail, "`snow`");
    let check = a
        .checks
        .iter()
        .find(|c| c.id == "pile_compression")
        .unwrap();
    assert_eq!(check.reason.as_deref(), Some("with some spans unloaded"));
}

/// Nothing that may be absent changes nothing but the marks; a beam of one span is loaded
/// most by all of its load.
#[test]
fn nothing_to_leave_out() {
    let a = answered("st-cb-3span");
    let mut call = super::example("st-cb-3span");
    call.request.pattern_load = Some(crate::layout::PatternLoad::default());
    let b = answer(&call).unwrap();
    for (x, y) in a.result.piles.iter().zip(&b.result.piles) {
        close(y.rigid.max.si(), x.rigid.max.si(), 1e-15);
        assert!(y.compression.demand >= x.compression.demand);
    }
    assert!(a.result.pattern.is_none() && a.result.piles[0].pattern.is_none());
}

/// The example with a column over a pile: rigid and spring, checks of beams too.
#[test]
fn a_floor_beam_with_columns() {
    let a = answered("pattern-live-load");
    let report = a.result.pattern.as_ref().unwrap();
    // four spans of A, one of R and its overhang; the columns stand on piles, each a part
    assert_eq!(report.part_count, 8);
    assert!(report.governed_pile_count > 0 && report.governed_beam_count == 2);
    for p in &a.result.piles {
        let pattern = p.pattern.as_ref().unwrap();
        assert!(pattern.rigid.max >= p.rigid.max && pattern.rigid.min <= p.rigid.min);
        let (s, t) = (pattern.spring.as_ref().unwrap(), p.spring.as_ref().unwrap());
        assert!(s.max >= t.max && s.min <= t.min);
    }
    assert!(
        a.steps
            .as_ref()
            .unwrap()
            .iter()
            .any(|s| s.symbol == "R_max")
    );
}

/// A search rates the plan with the worst spans loaded: the answer keeps every limit, and
/// needs more than with all loads everywhere.
#[test]
fn a_search_with_absent_loads() {
    let a = answered("pattern-search");
    let search = a.result.search.as_ref().unwrap();
    assert!(search.feasible);
    assert!(a.result.max_utilisation_ratio.unwrap() <= 1.0);
    assert!(search.lower_bound_count <= a.result.pile_count);
    let mut call = super::example("pattern-search");
    call.request.pattern_load = None;
    let full = answer(&call).unwrap();
    assert!(full.result.pile_count <= a.result.pile_count);
    // the layout of the full loads, judged with absent ones, uses its piles more
    let positions: Vec<Value> = full
        .result
        .piles
        .iter()
        .map(|p| json!({"at": serde_json::to_value(p.at).unwrap()}))
        .collect();
    let mut given = super::example("pattern-search");
    given.request.piles =
        serde_json::from_value(json!({"given": {"positions": positions}})).unwrap();
    let judged = answer(&given).unwrap();
    assert!(
        judged.result.max_utilisation_ratio.unwrap() > full.result.max_utilisation_ratio.unwrap()
    );
}
