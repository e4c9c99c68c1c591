//! Plans from a fixed seed, for tests.

use super::*;
use crate::random::Random;

fn metres(v: f64) -> String {
    format!(r#"{{"value":{v},"unit":"m"}}"#)
}

fn point(x: f64, y: f64) -> String {
    format!(r#"{{"x":{},"y":{}}}"#, metres(x), metres(y))
}

/// A beam with its strength and its loads.
fn beam(label: &str, ends: [(f64, f64); 2], load: f64, strength: f64) -> String {
    format!(
        r#"{{"label":"{label}","points":[{},{}],"width":{{"value":400,"unit":"mm"}},
        "flexural_rigidity":{{"value":30000,"unit":"kN_m2"}},
        "moment_capacity":{{"sagging":{{"value":{strength},"unit":"kN_m"}},"hogging":{{"value":{strength},"unit":"kN_m"}}}},
        "shear_capacity":{{"value":{},"unit":"kN"}},
        "line_loads":[{{"kind":"dead","load":{{"value":{load},"unit":"kN_per_m"}}}},
                      {{"kind":"snow","load":{{"value":{},"unit":"kN_per_m"}}}}]}}"#,
        point(ends[0].0, ends[0].1),
        point(ends[1].0, ends[1].1),
        2.0 * strength,
        0.4 * load,
    )
}

/// The plan of a job: one line, two that meet at a corner, or a T.
pub(super) fn plan(random: &mut Random) -> (String, Vec<(f64, f64)>) {
    let load = (random.between(8.0, 20.0) * 4.0).round() / 4.0;
    let span = (random.between(1.8, 2.8) * 20.0).round() / 20.0;
    let count = 2 + random.below(4);
    let strength = (load * span * span / 4.5).round();
    let length = span * (count - 1) as f64;
    let mut beams = vec![beam("A", [(0.0, 0.0), (length, 0.0)], load, strength)];
    let mut piles: Vec<(f64, f64)> = (0..count).map(|i| (span * i as f64, 0.0)).collect();
    match random.below(3) {
        _ if count == 2 => {}
        0 => {}
        1 => {
            beams.push(beam("B", [(0.0, 0.0), (0.0, 2.0 * span)], load, strength));
            piles.extend([(0.0, span), (0.0, 2.0 * span)]);
        }
        _ => {
            let at = span * (1 + random.below(count - 2)) as f64;
            beams.push(beam("B", [(at, 0.0), (at, 2.0 * span)], load, strength));
            piles.extend([(at, span), (at, 2.0 * span)]);
        }
    }
    let capacity = (load * 1.4 * span * random.between(0.95, 2.3)).round();
    let springs = match random.below(3) {
        0 => r#""pile_stiffness":{"value":12000,"unit":"kN_per_m"},"#,
        _ => "",
    };
    let rows: Vec<String> = piles
        .iter()
        .enumerate()
        .map(|(i, (x, y))| format!(r#"{{"label":"P{}","at":{}}}"#, i + 1, point(*x, *y)))
        .collect();
    let text = format!(
        r#"{{"design_basis":{{"allowable_stress":{{"combinations":{{"published":{{"edition":"asce_7_16"}}}}}}}},
        "beams":[{}],{springs}
        "pile_capacity":{{"level":"allowable","compression":{{"value":{capacity},"unit":"kN"}},"tension":{{"value":20,"unit":"kN"}}}},
        "piles":{{"given":{{"positions":[{}],"min_spacing":{{"value":0.5,"unit":"m"}}}}}}}}"#,
        beams.join(","),
        rows.join(",")
    );
    (text, piles)
}

/// A job: a plan, what became of one or two piles, and what is asked.
pub(super) fn job(random: &mut Random) -> Request {
    let (plan, piles) = plan(random);
    let first = random.below(piles.len());
    let second = (first + 1 + random.below(piles.len() - 1)) % piles.len();
    let by = (random.between(-0.4, 0.4) * 40.0).round() / 40.0;
    let beam = if piles[first].1 > 0.0 { "B" } else { "A" };
    // from the end of a beam it goes inwards only
    let by = match beam {
        "A" if piles[first].0 == 0.0 => by.abs(),
        "A" if piles.iter().all(|p| p.0 <= piles[first].0) => -by.abs(),
        "B" if piles.iter().all(|p| p.1 <= piles[first].1) => -by.abs(),
        _ => by,
    };
    let mut list = vec![match random.below(4) {
        0 => format!(r#"{{"stopped_short":{{"pile":"P{}"}}}}"#, first + 1),
        1 => format!(
            r#"{{"stopped_short":{{"pile":"P{}","residual":{{"compression":{{"value":15,"unit":"kN"}},"tension":{{"value":0,"unit":"kN"}}}}}}}}"#,
            first + 1
        ),
        _ => format!(
            r#"{{"moved":{{"pile":"P{}","beam":"{beam}","along":{},"off_line":{{"value":{},"unit":"mm"}}}}}}"#,
            first + 1,
            metres(by),
            (random.between(-70.0, 70.0)).round()
        ),
    }];
    if random.below(3) == 0 {
        let other = format!(
            r#"{{"replaced":{{"pile":"P{}","compression":{{"value":10,"unit":"kN"}}}}}}"#,
            second + 1
        );
        list.insert(0, other);
    }
    let (x, y) = piles[first];
    let obstruction = match random.below(3) {
        0 => String::new(),
        _ => format!(
            r#""obstruction":{{"label":"rock","shape":{{"circle":{{"centre":{},"radius":{}}}}},"clearance":{}}},"#,
            point(x, y + 0.02),
            metres(0.05),
            metres((random.between(0.0, 0.3) * 100.0).round() / 100.0)
        ),
    };
    let larger = match random.below(3) {
        0 => "",
        _ => {
            r#""larger_piles":[{"label":"large","compression":{"value":150,"unit":"kN"},"tension":{"value":60,"unit":"kN"}},
              {"label":"middle","compression":{"value":80,"unit":"kN"},"tension":{"value":30,"unit":"kN"}}],"#
        }
    };
    let text = format!(
        r#"{{"layout":{plan},"events":[{}],
        "ways_out":{{{obstruction}"pile":"P{}","step":{},"pair_step_count":2,"max_along":{},"max_off_line":{{"value":300,"unit":"mm"}},
        {larger}"option_detail":"full"}}}}"#,
        list.join(","),
        first + 1,
        metres(0.15),
        metres(0.9)
    );
    request(&text)
}
