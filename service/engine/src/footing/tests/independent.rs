//! Independent recomputation: the formulas of each theory written anew in kPa, kN/m3 and m,
//! without the equations of this crate and in another form (K_p from the sine), against the
//! cases and random footings.

use proptest::prelude::*;

use super::properties::{Case, case};
use super::*;
use crate::math;

/// A footing in plain numbers: kPa, kN/m3, m, radians.
#[derive(Debug, Clone, Copy)]
struct Plain {
    phi: f64,
    c: f64,
    b: f64,
    l: f64,
    d: f64,
    /// Overburden, effective if drained.
    q: f64,
    /// Effective unit weight below the base; nil undrained.
    g: f64,
    circle: bool,
}

fn kp(phi: f64) -> f64 {
    (1.0 + math::sin(phi)) / (1.0 - math::sin(phi))
}

fn prandtl(phi: f64) -> (f64, f64) {
    let nq = kp(phi) * math::exp(math::PI * math::tan(phi));
    let nc = if phi == 0.0 {
        math::PI + 2.0
    } else {
        (nq - 1.0) / math::tan(phi)
    };
    (nc, nq)
}

fn vesic_or_hansen(p: &Plain, vesic: bool) -> f64 {
    let (nc, nq) = prandtl(p.phi);
    let (sin, tan) = (math::sin(p.phi), math::tan(p.phi));
    let ratio = p.b / p.l;
    let k = if p.d < p.b {
        p.d / p.b
    } else {
        math::atan2(p.d, p.b)
    };
    if p.phi == 0.0 {
        return nc * p.c * (1.0 + 0.2 * ratio + 0.4 * k) + p.q;
    }
    let ngamma = if vesic {
        2.0 * (nq + 1.0) * tan
    } else {
        1.5 * (nq - 1.0) * tan
    };
    let sq = if vesic { tan } else { sin };
    p.c * nc * (1.0 + ratio * nq / nc) * (1.0 + 0.4 * k)
        + p.q * nq * (1.0 + ratio * sq) * (1.0 + 2.0 * tan * (1.0 - sin) * (1.0 - sin) * k)
        + p.g * p.b / 2.0 * ngamma * (1.0 - 0.4 * ratio)
}

fn meyerhof(p: &Plain) -> f64 {
    let (nc, nq) = prandtl(p.phi);
    let (ratio, depth) = (p.b / p.l, (p.d / p.b).min(1.0));
    let root = kp(p.phi).sqrt();
    let tenth = if p.phi.to_degrees() > 10.000_001 {
        (1.0 + 0.1 * kp(p.phi) * ratio) * (1.0 + 0.1 * root * depth)
    } else {
        1.0
    };
    p.c * nc * (1.0 + 0.2 * kp(p.phi) * ratio) * (1.0 + 0.2 * root * depth)
        + p.q * nq * tenth
        + p.g * p.b / 2.0 * (nq - 1.0) * math::tan(1.4 * p.phi) * tenth
}

/// N_gamma by the table, between its rows by powers.
fn terzaghi_ngamma(degrees: f64) -> f64 {
    let rows = [
        (0.0, 0.0),
        (5.0, 0.5),
        (10.0, 1.2),
        (15.0, 2.5),
        (20.0, 5.0),
        (25.0, 9.7),
        (30.0, 19.7),
        (34.0, 35.0),
        (35.0, 42.4),
        (40.0, 100.4),
        (45.0, 297.5),
    ];
    for pair in rows.windows(2) {
        let ((a, na), (b, nb)) = (pair[0], pair[1]);
        if degrees <= b {
            let t = (degrees - a) / (b - a);
            return if na == 0.0 {
                nb * t
            } else {
                na * math::pow(nb / na, t)
            };
        }
    }
    297.5
}

fn terzaghi(p: &Plain) -> f64 {
    let tan = math::tan(p.phi);
    let a = math::exp((0.75 * math::PI - p.phi / 2.0) * tan);
    // 2 cos^2(45 + phi/2) = 1 - sin phi
    let nq = a * a / (1.0 - math::sin(p.phi));
    let nc = if p.phi == 0.0 {
        1.5 * math::PI + 1.0
    } else {
        (nq - 1.0) / tan
    };
    let ratio = p.b / p.l;
    let width = if p.circle { 0.3 } else { 0.5 - 0.1 * ratio };
    p.c * nc * (1.0 + 0.3 * ratio)
        + p.q * nq
        + p.g * p.b * width * terzaghi_ngamma(p.phi.to_degrees())
}

fn skempton(p: &Plain) -> f64 {
    let depth = (p.d / p.b).min(2.5);
    5.0 * p.c * (1.0 + p.b / p.l / 5.0) * (1.0 + depth / 5.0) + p.q
}

fn by(method: &str, p: &Plain) -> f64 {
    match method {
        "terzaghi_1943" => terzaghi(p),
        "meyerhof_1963" => meyerhof(p),
        "hansen_1970" => vesic_or_hansen(p, false),
        "vesic_1973" => vesic_or_hansen(p, true),
        "skempton_1951" => skempton(p),
        other => panic!("{other}"),
    }
}

/// SB-01, SB-02 and SB-05 by hand, and the lecture strip with the water at 3.5 m, at the base
/// and at the ground (own arithmetic; gamma_w 9.8).
#[test]
fn the_worked_examples_by_hand() {
    let strip = Plain {
        phi: 34_f64.to_radians(),
        c: 0.0,
        b: 4.0,
        l: f64::INFINITY,
        d: 1.5,
        q: 27.0,
        g: 18.0,
        circle: false,
    };
    let square = Plain {
        phi: 35_f64.to_radians(),
        b: 2.0,
        l: 2.0,
        d: 1.0,
        q: 17.0,
        g: 17.0,
        ..strip
    };
    let clay = Plain {
        phi: 0.0,
        c: 90.0,
        q: 28.5,
        g: 0.0,
        ..strip
    };
    let wet = |q, g| Plain { q, g, ..strip };
    for (name, method, plain, rounded) in [
        ("sb-01", "vesic_1973", square, 1574.8),
        ("sb-02", "meyerhof_1963", strip, 2051.3),
        ("sb-05", "meyerhof_1963", clay, 526.0),
        ("water-below-base", "meyerhof_1963", wet(27.0, 14.1), 1791.2),
        ("water-at-base", "meyerhof_1963", wet(27.0, 10.2), 1531.1),
        ("water-at-ground", "meyerhof_1963", wet(15.3, 10.2), 1162.4),
    ] {
        let answer = example(name);
        let c = &answer.result.capacities[0];
        assert_eq!(c.method.name(), method);
        near(by(method, &plain), rounded, 0.01);
        near(kpa(c.ultimate_gross), by(method, &plain), 1e-9);
    }
}

fn plain(case: &Case) -> Plain {
    let above = case.water.min(case.depth);
    let (drained, below) = (case.su.is_none(), case.weight + case.soaked);
    let weight_of_water = if drained { 9.81 } else { 0.0 };
    let q = case.weight * above + (below - weight_of_water) * (case.depth - above);
    let h = (case.water - case.depth).clamp(0.0, case.width);
    let g = (case.weight * h + (below - 9.81) * (case.width - h)) / case.width;
    Plain {
        phi: if drained { case.phi.to_radians() } else { 0.0 },
        c: case.su.unwrap_or(case.cohesion),
        b: case.width,
        l: match case.shape {
            0 => f64::INFINITY,
            1 => case.length,
            _ => case.width,
        },
        d: case.depth,
        q,
        g: if drained { g } else { 0.0 },
        circle: case.shape == 3,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn random_footings_agree(case in case()) {
        let plain = plain(&case);
        let result = answer(case.request()).result;
        for c in &result.capacities {
            let expected = by(c.method.name(), &plain);
            let got = kpa(c.ultimate_gross);
            prop_assert!((got - expected).abs() <= 1e-9 * expected, "{} {got} {expected}", c.method.name());
            let net = kpa(c.ultimate_net);
            prop_assert!((net - (expected - plain.q)).abs() <= 1e-9 * expected);
        }
    }
}
