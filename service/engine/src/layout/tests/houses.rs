//! Searches on random houses: what the report claims and what the checks say must agree,
//! with springs, strengths, wind and forced points.

use serde_json::{Value, json};

use super::answer;
use crate::contract::{Call, CheckStatus, Verdict};
use crate::layout::Request;

struct Dice(u64);

impl Dice {
    fn roll(&mut self, from: u64, to: u64) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1);
        (from + (self.0 >> 33) % (to - from + 1)) as f64
    }
}

fn m(v: f64) -> Value {
    json!({"value": v, "unit": "m"})
}

fn at(x: f64, y: f64) -> Value {
    json!({"x": m(x), "y": m(y)})
}

/// An L-shaped house with an inner wall, sizes in tenths of a metre.
fn house(dice: &mut Dice) -> Call<Request> {
    let (w, d) = (dice.roll(80, 130) / 10.0, dice.roll(70, 100) / 10.0);
    let (a, b) = (dice.roll(30, 50) / 10.0, dice.roll(30, 40) / 10.0);
    let outline = [
        (0.0, 0.0),
        (w, 0.0),
        (w, d - b),
        (w - a, d - b),
        (w - a, d),
        (0.0, d),
        (0.0, 0.0),
    ];
    let mut walls: Vec<Vec<(f64, f64)>> = outline.windows(2).map(<[_]>::to_vec).collect();
    walls.push(vec![(0.0, d - b), (w - a, d - b)]);
    let springs = dice.roll(0, 2) == 0.0;
    let strong = dice.roll(0, 1) == 0.0;
    let beams: Vec<Value> = walls
        .iter()
        .enumerate()
        .map(|(i, p)| {
            let mut beam = json!({
                "label": format!("{}", (b'A' + i as u8) as char),
                "points": [at(p[0].0, p[0].1), at(p[1].0, p[1].1)],
                "line_loads": [
                    {"kind": "dead", "load": {"value": dice.roll(8, 20), "unit": "kN_per_m"}},
                    {"kind": "live", "load": {"value": dice.roll(2, 12), "unit": "kN_per_m"}},
                    {"kind": "wind", "load": {"value": -dice.roll(0, 20), "unit": "kN_per_m"}},
                ],
            });
            if springs {
                beam["flexural_rigidity"] = json!({"value": 60_000, "unit": "kN_m2"});
            }
            if strong {
                beam["moment_capacity"] = json!({
                    "sagging": {"value": 25, "unit": "kN_m"}, "hogging": {"value": 30, "unit": "kN_m"}});
                beam["shear_capacity"] = json!({"value": 70, "unit": "kN"});
            }
            beam
        })
        .collect();
    let mut request = json!({
        "design_basis": {"allowable_stress": {"combinations": {"published": {"edition": "asce_7_16"}}}},
        "beams": beams,
        "point_loads": [{"kind": "live", "at": at(1.0 + dice.roll(0, 50) / 10.0, 0.0),
            "load": {"value": dice.roll(5, 50), "unit": "kN"}}],
        "pile_capacity": {"level": "allowable",
            "compression": {"value": dice.roll(50, 110), "unit": "kN"},
            "tension": {"value": dice.roll(0, 15), "unit": "kN"}},
        "piles": {"search": {"max_spacing": m(dice.roll(20, 35) / 10.0),
            "min_spacing": m(0.9), "snap": m(0.1), "forced": [at(2.0, 0.0)]}},
    });
    if springs {
        request["pile_stiffness"] =
            json!({"value": dice.roll(5, 60) * 1_000.0, "unit": "kN_per_m"});
    }
    serde_json::from_value(request).unwrap()
}

#[test]
fn the_report_and_the_checks_agree() {
    let mut dice = Dice(7);
    let (mut feasible, mut proven) = (0, 0);
    for i in 0..30 {
        let call = house(&mut dice);
        let a = answer(&call).unwrap();
        let report = a.result.search.as_ref().unwrap();
        let failed = a.checks.iter().any(|c| c.status == CheckStatus::Fail);
        assert_eq!(report.feasible, !failed, "{i}: {:?}", a.verdict_reasons);
        assert_eq!(a.verdict == Verdict::Accept, report.feasible, "{i}");
        assert!(!report.proven_minimal || report.feasible);
        assert_eq!(
            report.proven_minimal,
            report.feasible && report.lower_bound_count == a.result.pile_count
        );
        if report.feasible {
            assert!(report.lower_bound_count <= a.result.pile_count);
        }
        feasible += usize::from(report.feasible);
        proven += usize::from(report.proven_minimal);
        // the same request again: the same answer
        if i % 10 == 0 {
            assert_eq!(answer(&call).unwrap(), a);
        }
    }
    // these plans are hard on purpose; most of them can be met, and then the count is proven
    assert!(feasible >= 20, "{feasible} feasible");
    assert!(proven * 10 >= feasible * 9, "{proven} of {feasible} proven");
}
