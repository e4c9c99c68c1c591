//! Published tables and worked examples, each run as its example request. Expected numbers
//! are those printed in the sources, or marked as computed.

use super::*;
use crate::footing::FrictionFactorRow;
use crate::quantity::AngleUnit;

/// Rows of the one table of an example.
fn rows(name: &str) -> Vec<FrictionFactorRow> {
    let tables = example(name).result.factor_tables;
    assert_eq!(tables.len(), 1, "{name}");
    tables.into_iter().next().unwrap().rows
}

/// Within `percent`, or within 0.06 where the printed number is below 5 (one decimal).
#[track_caller]
fn printed(got: f64, expected: f64, percent: f64) {
    let allowed = if expected < 5.0 {
        0.06
    } else {
        expected * percent / 100.0
    };
    assert!(
        (got - expected).abs() <= allowed,
        "{got} against {expected} within {allowed}"
    );
}

/// Compares a table with printed rows phi, N_c, N_q, N_gamma.
#[track_caller]
fn table(name: &str, expected: &[[f64; 4]], percent: f64) {
    let rows = rows(name);
    assert_eq!(rows.len(), expected.len(), "{name}");
    for (row, [phi, nc, nq, ngamma]) in rows.iter().zip(expected) {
        near(row.friction_angle.get(AngleUnit::Deg), *phi, 1e-9);
        assert_eq!(row.friction_angle, row.used_friction_angle);
        printed(row.cohesion_factor, *nc, percent);
        printed(row.overburden_factor, *nq, percent);
        printed(row.width_factor, *ngamma, percent);
    }
}

/// BF-01: Terzaghi's factors as tabulated (verified). N_gamma is that table, so its column is
/// read back to the last digit and no row of it is interpolated.
#[test]
fn bf_01_terzaghi() {
    let expected = [
        [0.0, 5.7, 1.0, 0.0],
        [5.0, 7.3, 1.6, 0.5],
        [10.0, 9.6, 2.7, 1.2],
        [15.0, 12.9, 4.4, 2.5],
        [20.0, 17.7, 7.4, 5.0],
        [25.0, 25.1, 12.7, 9.7],
        [30.0, 37.2, 22.5, 19.7],
        [34.0, 52.6, 36.5, 35.0],
        [35.0, 57.8, 41.4, 42.4],
        [40.0, 95.7, 81.3, 100.4],
        [45.0, 172.3, 173.3, 297.5],
    ];
    table("bf-01", &expected, 1.0);
    for (row, [_, _, _, ngamma]) in rows("bf-01").iter().zip(expected) {
        assert_eq!(row.width_factor, ngamma);
        assert!(!row.width_factor_interpolated);
    }
}

/// BF-02: factors of Meyerhof as tabulated (verified). N_c at 34 degrees is printed 42.4; the
/// closed form gives 42.16, within the tolerance.
#[test]
fn bf_02_meyerhof() {
    let expected = [
        [0.0, 5.14, 1.0, 0.0],
        [5.0, 6.5, 1.6, 0.07],
        [10.0, 8.3, 2.5, 0.37],
        [15.0, 11.0, 3.9, 1.1],
        [20.0, 14.8, 6.4, 2.9],
        [25.0, 20.7, 10.7, 6.8],
        [30.0, 30.1, 18.4, 15.7],
        [32.0, 35.5, 23.2, 22.0],
        [34.0, 42.4, 29.4, 31.2],
        [36.0, 50.6, 37.7, 44.4],
        [38.0, 61.4, 48.9, 64.1],
        [40.0, 75.3, 64.2, 93.7],
        [42.0, 93.7, 85.4, 139.3],
        [44.0, 118.4, 115.3, 211.4],
    ];
    table("bf-02", &expected, 1.5);
}

/// BF-03: factors of Vesic as tabulated (verified).
#[test]
fn bf_03_vesic() {
    let expected = [
        [0.0, 5.14, 1.0, 0.0],
        [5.0, 6.5, 1.6, 0.5],
        [10.0, 8.3, 2.5, 1.2],
        [15.0, 11.0, 3.9, 2.6],
        [20.0, 14.8, 6.4, 5.4],
        [25.0, 20.7, 10.7, 10.8],
        [30.0, 30.1, 18.4, 22.4],
        [32.0, 35.5, 23.2, 30.2],
        [34.0, 42.4, 29.4, 41.1],
        [36.0, 50.6, 37.7, 56.3],
        [38.0, 61.4, 48.9, 78.0],
        [40.0, 75.3, 64.2, 109.4],
        [42.0, 93.7, 85.4, 155.6],
        [44.0, 118.4, 115.3, 224.6],
    ];
    table("bf-03", &expected, 1.5);
}

/// BF-04: factors of Hansen as tabulated (verified), without the misprinted row of BF-09.
#[test]
fn bf_04_hansen() {
    let expected = [
        [0.0, 5.14, 1.0, 0.0],
        [10.0, 8.3, 2.5, 0.39],
        [16.0, 11.63, 4.34, 1.43],
        [20.0, 14.8, 6.4, 2.95],
        [26.0, 22.25, 11.85, 7.94],
        [30.0, 30.1, 18.4, 15.07],
        [32.0, 35.5, 23.2, 20.79],
        [34.0, 42.4, 29.4, 28.77],
        [36.0, 50.6, 37.7, 40.05],
        [38.0, 61.4, 48.9, 56.17],
        [40.0, 75.3, 64.2, 79.54],
        [42.0, 93.7, 85.4, 113.95],
        [44.0, 118.4, 115.3, 165.48],
    ];
    table("bf-04", &expected, 1.5);
}

/// BF-05: factors of the Vesic family to two decimals (verified); 0.3 %, or half a unit of
/// the last digit and a little where that is more.
#[test]
fn bf_05_two_decimals() {
    let expected = [
        [5.0, 6.5, 1.57, 0.45],
        [10.0, 8.35, 2.47, 1.22],
        [15.0, 10.98, 3.94, 2.65],
        [20.0, 14.83, 6.4, 5.39],
        [25.0, 20.72, 10.66, 10.88],
        [30.0, 30.14, 18.4, 22.4],
        [32.0, 35.49, 23.18, 30.22],
        [34.0, 42.16, 29.44, 41.06],
        [36.0, 50.59, 37.75, 56.31],
        [38.0, 61.35, 48.93, 78.03],
        [40.0, 75.31, 64.2, 109.41],
    ];
    let rows = rows("bf-05");
    assert_eq!(rows.len(), expected.len());
    for (row, [_, nc, nq, ngamma]) in rows.iter().zip(expected) {
        for (got, expected) in [
            (row.cohesion_factor, nc),
            (row.overburden_factor, nq),
            (row.width_factor, ngamma),
        ] {
            let allowed = (expected * 0.003_f64).max(0.0055);
            assert!(
                (got - expected).abs() <= allowed,
                "{got} against {expected}"
            );
        }
    }
}

/// BF-07: closed forms to many digits (verified: independent computation and a general
/// library); Vesic and Meyerhof side by side in one request. Hansen is own arithmetic:
/// 0.75 (N_q - 1)/(N_q + 1) of Vesic.
#[test]
fn bf_07_closed_forms() {
    let nq = [10.66214, 18.40112, 33.29609, 64.19521];
    let nc = [20.72053, 30.13963, 46.1236, 75.31311];
    let vesic = [10.87629, 22.40249, 48.02876, 109.41055];
    let meyerhof = [6.7655, 15.66804, 37.1524, 93.69075];
    let tables = example("bf-07").result.factor_tables;
    assert_eq!(tables.len(), 3);
    for i in 0..4 {
        for table in &tables {
            near(table.rows[i].overburden_factor, nq[i], 0.001);
            near(table.rows[i].cohesion_factor, nc[i], 0.001);
        }
        near(tables[0].rows[i].width_factor, vesic[i], 0.001);
        near(tables[1].rows[i].width_factor, meyerhof[i], 0.001);
        let hansen = 0.75 * vesic[i] * (nq[i] - 1.0) / (nq[i] + 1.0);
        near(tables[2].rows[i].width_factor, hansen, 0.002);
    }
}

/// BF-08: local shear by Terzaghi (verified: output of a published package). Its N_gamma,
/// 1.784438, is another approximation; the table between 10 and 15 degrees gives 2.047 (own
/// arithmetic: 1.2 (2.5/1.2)^0.727808).
#[test]
fn bf_08_local_shear() {
    let answer = example("bf-08");
    let row = answer.result.factor_tables[0].rows[0];
    near(row.used_friction_angle.get(AngleUnit::Deg), 13.63904, 0.001);
    near(row.overburden_factor, 3.875274, 0.001);
    near(row.cohesion_factor, 11.84963, 0.001);
    near(row.width_factor, 2.0473, 0.01);
    assert!(row.width_factor_interpolated);
    assert!(warns(&answer, "footing_width_factor_table"));
}

/// BF-09: the row of 6 degrees in a table of Hansen's factors is misprinted with N_q 1.23
/// (verified); its own N_c and N_gamma contradict it. Computed: 1.716, 6.813, 0.113.
#[test]
fn bf_09_misprinted_row() {
    let row = rows("bf-09")[0];
    near(row.overburden_factor, 1.716, 0.2);
    near(row.cohesion_factor, 6.813, 0.2);
    near(row.width_factor, 0.113, 0.2);
    // the printed N_c and N_gamma lead back to N_q: 1 + N_c tan phi, 1 + N_gamma/(1.5 tan phi)
    let tan = crate::math::tan(6_f64.to_radians());
    near(1.0 + 6.81 * tan, row.overburden_factor, 0.1);
    near(1.0 + 0.11 / (1.5 * tan), row.overburden_factor, 2.0);
    assert!((1.23 - row.overburden_factor).abs() > 0.4);
}

/// SB-01: square of 2 m at 1 m, phi 35, 17 kN/m3, Vesic: 1,574.8 kPa (secondary: Gunaratne
/// 2006 as quoted).
#[test]
fn sb_01_vesic_square() {
    let answer = example("sb-01");
    let c = &answer.result.capacities[0];
    near(c.cohesion_term.bearing_factor, 46.1, 0.1);
    near(c.overburden_term.bearing_factor, 33.3, 0.1);
    near(c.width_term.bearing_factor, 48.0, 0.1);
    near(c.width_term.shape_factor, 0.6, 1e-9);
    near(kpa(c.ultimate_gross), 1574.8, 0.1);
}

/// SB-02 (a): strip of 4 m at 1.5 m, phi 34, 18 kN/m3, water at 20 m, Meyerhof: 2,056 kPa
/// (secondary: a lecture problem as quoted); the same by hand is 2,051.
#[test]
fn sb_02_meyerhof_strip() {
    let answer = example("sb-02");
    let c = &answer.result.capacities[0];
    near(kpa(c.ultimate_gross), 2056.0, 1.0);
    near(kpa(c.ultimate_gross), 2051.0, 0.1);
    near(kpa(answer.result.base.unwrap().overburden), 27.0, 1e-9);
}

/// SB-05: strip of 4 m at 1.5 m in clay of 90 kPa, 19 kN/m3, Meyerhof: 526 kPa (secondary:
/// as quoted); by hand 90 x 5.14 x 1.075 + 28.5 = 525.8.
#[test]
fn sb_05_undrained_strip() {
    let answer = example("sb-05");
    let c = &answer.result.capacities[0];
    near(c.cohesion_term.depth_factor, 1.075, 1e-9);
    near(kpa(c.overburden_term.pressure), 28.5, 1e-9);
    near(kpa(c.ultimate_gross), 526.0, 0.1);
    near(kpa(c.ultimate_net), 497.5, 0.1);
}

/// UC-01: N_c of a circle in clay at 0, 1, 2.5 and 10 widths: 6.0, 7.2, 9.0, 9.0 (verified
/// limit of Skempton 1951).
#[test]
fn uc_01_clay_by_depth() {
    let table = example("uc-01").result.depth_table;
    let got: Vec<f64> = table.iter().map(|row| row.cohesion_factor).collect();
    for (got, expected) in got.iter().zip([6.0, 7.2, 9.0, 9.0]) {
        near(*got, expected, 0.01);
    }
    assert_eq!(got.len(), 4);
}

/// UC-03: 9 s_u at depth: 75 kPa bears 675 kPa net (verified).
#[test]
fn uc_03_nine_su() {
    let answer = example("uc-03");
    let c = &answer.result.capacities[0];
    let factor = c.cohesion_term.bearing_factor * c.cohesion_term.correction_factor;
    near(factor, 9.0, 0.01);
    near(kpa(c.ultimate_net), 675.0, 0.01);
    near(kpa(c.ultimate_gross), 675.0 + 54.0, 0.01);
}
