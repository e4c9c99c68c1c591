//! A second, separately written solution of one line on rigid supports by the
//! three-moment equation, for tests only. Dense elimination, closed integrals.

use super::Shape;

/// Reactions and support moments of a line of constant rigidity on rigid supports.
///
/// M_l L_l + 2 M_c (L_l + L_r) + M_r L_r = -T_l - T_r with T the integrals of
/// q t (L2 - t2)/L, t from the far support. Source: three-moment equation.
pub(crate) fn rigid_line(length: f64, supports: &[f64], loads: &[Shape]) -> (Vec<f64>, Vec<f64>) {
    let n = supports.len();
    let mut moments = vec![0.0; n];
    // cantilevers
    let over = |from: f64, to: f64, about: f64| -> f64 {
        loads.iter().map(|s| part(s, from, to, about).1).sum()
    };
    moments[0] = over(0.0, supports[0], supports[0]);
    moments[n - 1] = -over(supports[n - 1], length, supports[n - 1]);
    let inner = n.saturating_sub(2);
    let mut a = vec![vec![0.0; inner + 1]; inner];
    for i in 0..inner {
        let (l, c, r) = (supports[i], supports[i + 1], supports[i + 2]);
        let mut right = 0.0;
        for load in loads {
            right -= lever(load, l, c, l) + lever(load, c, r, r);
        }
        a[i][i] = 2.0 * (r - l);
        if i > 0 {
            a[i][i - 1] = c - l;
        } else {
            right -= moments[0] * (c - l);
        }
        if i + 1 < inner {
            a[i][i + 1] = r - c;
        } else {
            right -= moments[n - 1] * (r - c);
        }
        a[i][inner] = right;
    }
    eliminate(&mut a);
    for i in 0..inner {
        moments[i + 1] = a[i][inner];
    }
    let mut reactions = vec![0.0; n];
    for i in 0..n - 1 {
        let (l, r) = (supports[i], supports[i + 1]);
        let (w, m) = loads.iter().fold((0.0, 0.0), |(w, m), s| {
            let (dw, dm) = part(s, l, r, l);
            (w + dw, m + dm)
        });
        let end = m / (r - l) - (moments[i + 1] - moments[i]) / (r - l);
        reactions[i] += w - end;
        reactions[i + 1] += end;
    }
    let outside =
        |from: f64, to: f64| -> f64 { loads.iter().map(|s| part(s, from, to, 0.0).0).sum() };
    reactions[0] += outside(0.0, supports[0]);
    reactions[n - 1] += outside(supports[n - 1], length);
    // a force exactly on a support belongs to no open span
    for (r, x) in reactions.iter_mut().zip(supports) {
        for load in loads {
            if let Shape::Point { at, force } = load
                && at == x
            {
                *r += force;
            }
        }
    }
    (reactions, moments)
}

/// Load strictly between two places and its moment about a third.
fn part(shape: &Shape, from: f64, to: f64, about: f64) -> (f64, f64) {
    match *shape {
        Shape::Point { at, force } if at > from && at < to => (force, force * (at - about)),
        // beyond a support the ends of the line belong to the cantilever
        Shape::Point { .. } | Shape::Couple { .. } => (0.0, 0.0),
        Shape::Spread { .. } => clip(shape, from, to).map_or((0.0, 0.0), |(a, b, q0, q1)| {
            let w = (q0 + q1) / 2.0 * (b - a);
            let centre = if q0 + q1 == 0.0 {
                0.0
            } else {
                a + (b - a) * (q0 + 2.0 * q1) / (3.0 * (q0 + q1))
            };
            (w, w * (centre - about))
        }),
    }
}

fn clip(shape: &Shape, lo: f64, hi: f64) -> Option<(f64, f64, f64, f64)> {
    let Shape::Spread {
        from,
        to,
        start,
        end,
    } = *shape
    else {
        return None;
    };
    let (a, b) = (from.max(lo), to.min(hi));
    if b <= a {
        return None;
    }
    let q = |x: f64| start + (end - start) * (x - from) / (to - from);
    Some((a, b, q(a), q(b)))
}

/// The load term of the span from `l` to `r`, its lever measured from `far`.
fn lever(shape: &Shape, l: f64, r: f64, far: f64) -> f64 {
    let length = r - l;
    match *shape {
        Shape::Point { at, force } if at > l && at < r => {
            let t = (at - far).abs();
            force * t * (length * length - t * t) / length
        }
        Shape::Spread { .. } => clip(shape, l, r).map_or(0.0, |(a, b, q0, q1)| {
            let (t0, t1) = ((a - far).abs(), (b - far).abs());
            let slope = (q1 - q0) / (t1 - t0);
            let base = q0 - slope * t0;
            let f = |t: f64| {
                let (t2, l2) = (t * t, length * length);
                base * (t2 * l2 / 2.0 - t2 * t2 / 4.0)
                    + slope * (t2 * t * l2 / 3.0 - t2 * t2 * t / 5.0)
            };
            let value = (f(t1) - f(t0)) / length;
            if t1 > t0 { value } else { -value }
        }),
        Shape::Point { .. } | Shape::Couple { .. } => 0.0,
    }
}

fn eliminate(a: &mut [Vec<f64>]) {
    let n = a.len();
    for k in 0..n {
        let pivot = a[k].clone();
        for (i, row) in a.iter_mut().enumerate() {
            if i != k {
                let f = row[k] / pivot[k];
                for (v, p) in row.iter_mut().zip(&pivot) {
                    *v -= f * p;
                }
            }
        }
    }
    for (k, row) in a.iter_mut().enumerate() {
        let d = row[k];
        for v in row.iter_mut() {
            *v /= d;
        }
    }
}
