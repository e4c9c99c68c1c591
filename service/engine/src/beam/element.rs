//! The Hermite beam element: stiffness, fixed-end moments and simple-beam reactions.
//! Nothing here knows more than one span.

/// Stiffness of a span in `[w1, t1, w2, t2]`.
///
/// K = EI/L3 [12, 6L, -12, 6L; 6L, 4L2, -6L, 2L2; -12, -6L, 12, -6L; 6L, 2L2, -6L, 4L2];
/// EI flexural rigidity (N m2), L length (m); L > 0. Source: Euler-Bernoulli beam theory.
/// Sign: w downwards, t = dw/dx.
pub(super) fn stiffness(rigidity: f64, length: f64) -> [[f64; 4]; 4] {
    let b = rigidity / length;
    let s = 6.0 * b / length;
    let f = 2.0 * s / length;
    [
        [f, s, -f, s],
        [s, 4.0 * b, -s, 2.0 * b],
        [-f, -s, f, -s],
        [s, 2.0 * b, -s, 4.0 * b],
    ]
}

/// What the loads on one span do to it as a simple beam and as a fixed one.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct SpanLoad {
    /// Shear at the start as a simple beam.
    pub simple: f64,
    /// Total load.
    pub total: f64,
    /// Moment at the start with both ends fixed, as a load on the node (positive `dw/dx`).
    pub fixed_start: f64,
    /// Moment at the end with both ends fixed, as a load on the node.
    pub fixed_end: f64,
}

impl SpanLoad {
    /// Adds a force `p` at `x` from the start.
    ///
    /// V = P b/L; m1 = P a b2/L2, m2 = -P a2 b/L2; a = x, b = L - x. Source: work
    /// equivalence with the Hermite functions.
    pub fn force(&mut self, p: f64, x: f64, length: f64) {
        let (a, b) = (x / length, 1.0 - x / length);
        self.total += p;
        self.simple += p * b;
        self.fixed_start += p * length * a * b * b;
        self.fixed_end -= p * length * a * a * b;
    }

    /// Adds a couple `m` at `x` from the start.
    ///
    /// V = -m/L; m1 = m (1 - 4 a/L + 3 a2/L2), m2 = m (3 a2/L2 - 2 a/L). Source: work
    /// equivalence with the slopes of the Hermite functions.
    pub fn couple(&mut self, m: f64, x: f64, length: f64) {
        let a = x / length;
        self.simple -= m / length;
        self.fixed_start += m * (1.0 - 4.0 * a + 3.0 * a * a);
        self.fixed_end += m * (3.0 * a * a - 2.0 * a);
    }

    /// Adds a load from `x` over `l`, varying evenly from `q0` to `q1`.
    ///
    /// The integrals of [`SpanLoad::force`] by three Gauss points, exact for the quartic
    /// that a linear load gives.
    pub fn spread(&mut self, q0: f64, q1: f64, x: f64, l: f64, length: f64) {
        if q0 == 0.0 && q1 == 0.0 {
            return;
        }
        for (t, weight) in GAUSS {
            let p = (q0 + (q1 - q0) * t) * weight * l;
            self.force(p, x + t * l, length);
        }
    }
}

/// Points and weights of the three-point rule on 0 to 1: (1 -+ sqrt(3/5))/2 with 5/18,
/// and 1/2 with 8/18.
const GAUSS: [(f64, f64); 3] = [
    (0.112_701_665_379_258_3, 5.0 / 18.0),
    (0.5, 8.0 / 18.0),
    (0.887_298_334_620_741_7, 5.0 / 18.0),
];

#[cfg(test)]
mod tests {
    use super::*;

    fn close(a: f64, b: f64) {
        assert!((a - b).abs() <= 1e-14 * b.abs().max(1.0), "{a} {b}");
    }

    #[test]
    fn textbook_fixed_end_moments() {
        let mut s = SpanLoad::default();
        s.spread(3.0, 3.0, 0.0, 6.0, 6.0); // w L2/12, w L/2
        close(s.fixed_start, 9.0);
        close(s.fixed_end, -9.0);
        close(s.simple, 9.0);
        close(s.total, 18.0);

        let mut s = SpanLoad::default();
        s.spread(0.0, 3.0, 0.0, 6.0, 6.0); // triangle: w L2/30 and w L2/20
        close(s.fixed_start, 3.6);
        close(s.fixed_end, -5.4);
        close(s.simple, 3.0);

        let mut s = SpanLoad::default();
        s.force(10.0, 3.0, 6.0); // P L/8
        close(s.fixed_start, 7.5);
        close(s.fixed_end, -7.5);

        let mut s = SpanLoad::default();
        s.couple(8.0, 3.0, 6.0); // at midspan both ends take m/4
        close(s.fixed_start, -2.0);
        close(s.fixed_end, -2.0);
        close(s.simple, -8.0 / 6.0);
    }

    #[test]
    fn a_rigid_movement_costs_nothing() {
        let k = stiffness(2.0e7, 3.0);
        let w = [0.2, 0.05, 0.2 + 3.0 * 0.05, 0.05];
        for row in k {
            let f: f64 = row.iter().zip(w).map(|(a, b)| a * b).sum();
            assert!(f.abs() < 1e-7, "{f}");
        }
    }
}
