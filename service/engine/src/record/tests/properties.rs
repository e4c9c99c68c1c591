//! Properties of the verdict: a stronger pile is never rejected for it, a stone never helps,
//! units change nothing.

use super::*;
use crate::random::Random;

/// A row: depth in ft, torque in ft lbf, advance in in.
type Row = (f64, f64, f64);

/// A log that ends somewhere around the torque asked for, with a stone now and then.
fn random_log(n: &mut Random) -> Vec<Row> {
    let count = 18 + n.below(8);
    let (mut depth, mut torque) = (0.0, n.between(300.0, 800.0));
    let rise = n.between(1.02, 1.16);
    let top = n.between(2400.0, 3600.0);
    let mut rows = Vec::new();
    for _ in 0..count {
        depth += n.between(0.8, 1.2);
        torque = f64::min(top, torque * rise) * n.between(0.96, 1.04);
        let stone = if n.below(25) == 0 {
            n.between(1.4, 2.5)
        } else {
            1.0
        };
        let advance = if n.below(40) == 0 {
            2.3
        } else {
            n.between(2.6, 3.0)
        };
        rows.push((depth, torque * stone, advance));
    }
    rows
}

fn request(rows: &[Row], scale: f64) -> Json {
    let rows = rows.iter().map(|(d, t, a)| json!([d, t * scale, a, 12]));
    with(
        linnet(&GOOD),
        json!({ "log": log_of(rows.collect()), "limits": { "shaft_torque": q(9000.0, "ft_lbf") } }),
    )
}

#[test]
fn a_stronger_pile_is_rejected_for_its_torque_limit_alone() {
    let n = &mut Random(11);
    let (mut accepted, mut over) = (0, 0);
    for _ in 0..400 {
        let rows = random_log(n);
        if answer(&request(&rows, 1.0)).verdict != Verdict::Accept {
            continue;
        }
        accepted += 1;
        let stronger = answer(&request(&rows, n.between(1.0, 4.0)));
        match stronger.verdict {
            Verdict::Accept => {}
            _ => {
                over += 1;
                assert_eq!(failed(&stronger), ["record_shaft_torque"], "{rows:?}");
            }
        }
    }
    assert!(
        accepted > 60 && over > 10,
        "{accepted} accepted, {over} over the limit"
    );
}

#[test]
fn a_stone_never_makes_a_pile_acceptable() {
    let n = &mut Random(23);
    let mut tried = 0;
    for _ in 0..400 {
        let rows = random_log(n);
        let before = answer(&request(&rows, 1.0));
        if before.verdict == Verdict::Accept {
            continue;
        }
        let greatest = rows.iter().map(|r| r.1).fold(0.0, f64::max);
        for _ in 0..4 {
            let at = n.below(rows.len() + 1);
            let above = if at == 0 { 0.0 } else { rows[at - 1].0 };
            let below = rows.get(at).map_or(above + 1.0, |r| r.0);
            let stone = (
                above + (below - above) * n.between(0.2, 0.8),
                greatest * n.between(1.51, 2.2),
                2.8,
            );
            let mut with_stone = rows.clone();
            with_stone.insert(at, stone);
            let after = answer(&request(&with_stone, 1.0));
            tried += 1;
            assert_ne!(after.verdict, Verdict::Accept, "{stone:?} in {rows:?}");
        }
    }
    assert!(tried > 400, "{tried}");
}

#[test]
fn the_unit_system_changes_no_verdict() {
    let n = &mut Random(37);
    let mut verdicts = Vec::new();
    for _ in 0..200 {
        let rows = random_log(n);
        let us = request(&rows, 1.0);
        let metric: Vec<Json> = rows
            .iter()
            .map(|(d, t, a)| json!([a * 25.4, 12, t * 1.355_817_948_331_400_4e-3, d * 304.8]))
            .collect();
        let mut si = us.clone();
        si["log"] = json!({
            "columns": [
                { "name": "advance_per_turn", "unit": "mm" }, { "name": "rotation_speed", "unit": "rpm" },
                { "name": "torque", "unit": "kN_m" }, { "name": "depth", "unit": "mm" },
            ],
            "rows": metric,
        });
        si["depths"]["minimum_tip_depth"] = q(17.0 * 0.3048, "m");
        si["limits"]["shaft_torque"] = q(9000.0 * 1.355_817_948_331_400_4, "N_m");
        si["pile"]["helix_pitch"] = q(76.2, "mm");
        let (us, si) = (answer(&us), answer(&si));
        assert_eq!(us.verdict, si.verdict, "{rows:?}");
        let statuses = |a: &Answer<Outcome>| -> Vec<_> {
            a.checks.iter().map(|c| (c.id.clone(), c.status)).collect()
        };
        assert_eq!(statuses(&us), statuses(&si));
        verdicts.push(us.verdict);
    }
    for verdict in [Verdict::Accept, Verdict::Continue] {
        assert!(verdicts.contains(&verdict), "{verdict:?} was never reached");
    }
}
