//! The depths of all piles given how they hang together in plan: what the logs that met their
//! torque say of the others, for a scatter of one. The scatter itself, the mean depth and logs
//! that did not meet their torque come in `posterior.rs`.

use super::hyper::Texture;
use super::matrix::{Factor, dot};
use crate::math::{exp, hypot};

/// A place in plan, m; none where places are not used.
pub type Place = Option<(f64, f64)>;

/// Correlation of the depths of two piles.
///
/// rho = 1 for a pile with itself; (1 - w) exp(-h / l) for two piles, 0 without places
///
/// h distance in plan, m; l correlation length, m; w share of the variance that is a pile's
/// own. Source: choice of this service (the exponential function is rough at short distance,
/// as soil is, and over a long length it is a random slope). Between 0 and 1.
pub fn correlation(texture: &Texture, a: Place, b: Place) -> f64 {
    let (Some(length), Some(a), Some(b)) = (texture.length, a, b) else {
        return 0.0;
    };
    (1.0 - texture.own_share) * exp(-hypot(a.0 - b.0, a.1 - b.1) / length)
}

/// The piles that are asked about, given the depths of those that are known.
#[derive(Debug)]
pub struct Field {
    /// For each asked pile its correlations with the known ones, through the factor.
    through: Vec<Vec<f64>>,
    places: Vec<Place>,
    texture: Texture,
    /// Depth of each asked pile for a mean depth of nil.
    pub base: Vec<f64>,
    /// How much of the mean depth goes into each.
    pub share: Vec<f64>,
    /// Information of the known depths on the mean, 1' V^-1 1.
    pub information: f64,
    /// Generalised least-squares mean of the known depths.
    pub mean: f64,
    /// Sum of squares about it.
    pub squares: f64,
    /// Logarithm of the determinant of the correlations of the known.
    pub log_determinant: f64,
}

impl Field {
    /// From the known piles (place and depth, m) and the asked ones.
    pub fn of(texture: &Texture, known: &[(Place, f64)], asked: &[Place]) -> Option<Self> {
        let factor = Factor::of(known.len(), |i, j| {
            if i == j {
                1.0
            } else {
                correlation(texture, known[i].0, known[j].0)
            }
        })?;
        let depths: Vec<f64> = known.iter().map(|k| k.1).collect();
        let z = factor.forward(&depths);
        let u = factor.forward(&vec![1.0; known.len()]);
        let row = |place: &Place| {
            let row: Vec<f64> = known
                .iter()
                .map(|k| correlation(texture, *place, k.0))
                .collect();
            factor.forward(&row)
        };
        let through: Vec<Vec<f64>> = asked.iter().map(row).collect();
        let information = dot(&u, &u);
        let mean = dot(&u, &z) / information;
        let left: Vec<f64> = z.iter().zip(&u).map(|(z, u)| z - mean * u).collect();
        Some(Self {
            base: through.iter().map(|a| dot(a, &z)).collect(),
            share: through.iter().map(|a| 1.0 - dot(a, &u)).collect(),
            places: asked.to_vec(),
            texture: *texture,
            information,
            mean,
            squares: dot(&left, &left),
            log_determinant: factor.log_determinant(),
            through,
        })
    }

    /// Covariance of two asked piles given the known ones and the mean, for a scatter of one.
    pub fn covariance(&self, i: usize, j: usize) -> f64 {
        let before = if i == j {
            1.0
        } else {
            correlation(&self.texture, self.places[i], self.places[j])
        };
        before - dot(&self.through[i], &self.through[j])
    }

    /// For each asked pile the sum of its covariances with the listed ones.
    pub fn sums(&self, listed: &[usize]) -> Vec<f64> {
        let known = self.through.first().map_or(0, Vec::len);
        let mut total = vec![0.0; known];
        for at in listed {
            for (sum, part) in total.iter_mut().zip(&self.through[*at]) {
                *sum += part;
            }
        }
        let sum = |i: usize| {
            let before = listed.iter().fold(0.0, |sum, &j| {
                sum + if i == j {
                    1.0
                } else {
                    correlation(&self.texture, self.places[i], self.places[j])
                }
            });
            before - dot(&self.through[i], &total)
        };
        (0..self.through.len()).map(sum).collect()
    }
}
