//! The forecast for one required torque: every ground that the logs allow with its weight, and
//! under each the depths of the planned piles. How piles hang together is in `field.rs`, logs
//! that did not meet their torque in `censored.rs`.

use super::censored::Truncated;
use super::field::{Field, Place};
use super::hyper::{PRIOR_WIDTHS, scatters, textures};
use super::matrix::dot;
use super::mixture::{Depth, Part};
use crate::contract::{Refusal, Work};
use crate::math::{PI, exp, ln};

/// Least weight of a ground over that of the likeliest for it to be looked at.
const LEAST_WEIGHT: f64 = 1e-9;

/// What is known and asked, all depths in m.
#[derive(Debug, Clone, Default)]
pub struct Evidence {
    /// Places in plan are used.
    pub places: bool,
    /// Logs that met the torque: where, and at what depth.
    pub met: Vec<(Place, f64)>,
    /// Logs that did not: where, and to what depth.
    pub not_met: Vec<(Place, f64)>,
    /// Planned piles.
    pub planned: Vec<Planned>,
    /// Mean and standard deviation of the mean depth, as stated beforehand.
    pub prior: Option<(f64, f64)>,
}

/// A pile to come.
#[derive(Debug, Clone, Copy)]
pub struct Planned {
    /// Where.
    pub place: Place,
    /// Its least final depth.
    pub least: f64,
    /// Which of the logs in `not_met` is its own, where it is being driven.
    pub driven: Option<usize>,
}

/// What is known of the piles to come.
#[derive(Debug)]
pub struct Posterior {
    /// Depth of each planned pile.
    pub depths: Vec<Depth>,
    /// Mean and variance of the torque depth of each, its own limit left out.
    pub moments: Vec<(f64, f64)>,
    /// Sum of its covariances with all other planned piles.
    pub together: Vec<f64>,
    /// Mean and standard deviation of the average torque depth of the planned piles.
    pub average: (f64, f64),
    /// Mean of the scatter of a single pile, m.
    pub scatter: f64,
    /// Mean share of the variance that is a pile's own.
    pub own_share: f64,
    /// Mean correlation length, m; none without places.
    pub length: Option<f64>,
    /// Probability of each width of the stated prior.
    pub widths: Vec<f64>,
    /// Grounds that were summed over.
    pub ground_count: usize,
}

/// A texture with all that does not depend on the scatter.
struct Sheet {
    field: Field,
    /// Covariances of the logs that did not meet their torque, row by row, for a scatter of one.
    limits: Vec<f64>,
    /// Those of each planned pile with them.
    across: Vec<Vec<f64>>,
    own: Vec<f64>,
    sums: Vec<f64>,
    sums_across: Vec<f64>,
}

/// One ground: a texture, a scatter, a width of the prior.
struct Ground {
    sheet: usize,
    scatter: f64,
    width: usize,
    mean: f64,
    mean_variance: f64,
    log_weight: f64,
    limits: Option<Truncated>,
}

/// Mean depth after the logs that met their torque, its variance, and how likely these logs are.
///
/// flat: m = m_V, var = s^2 / I; stated (mu, tau): 1/var = I / s^2 + 1 / tau^2, m = var (I m_V /
/// s^2 + mu / tau^2)
///
/// log L = -(n - 1) ln s - (ln |V| + ln I) / 2 - S / (2 s^2), and with a stated mean in
/// addition the logarithm of the normal density of m_V about mu with variance tau^2 + s^2 / I
///
/// m_V = 1' V^-1 y / I; I = 1' V^-1 1; S = (y - m_V)' V^-1 (y - m_V); n logs; s scatter, m.
/// Source: generalised least squares.
fn level(field: &Field, count: usize, s: f64, prior: Option<(f64, f64)>) -> (f64, f64, f64) {
    let free = s * s / field.information;
    let likely = -(count as f64 - 1.0) * ln(s)
        - 0.5 * (field.log_determinant + ln(field.information))
        - 0.5 * field.squares / (s * s);
    let Some((mu, tau)) = prior else {
        return (field.mean, free, likely);
    };
    let variance = 1.0 / (1.0 / free + 1.0 / (tau * tau));
    let mean = variance * (field.mean / free + mu / (tau * tau));
    let (off, both) = (field.mean - mu, free + tau * tau);
    let agrees = -0.5 * off * off / both - 0.5 * ln(2.0 * PI * both);
    (mean, variance, likely + agrees)
}

/// The forecast.
pub fn forecast(evidence: &Evidence, work: &Work) -> Result<Posterior, Refusal> {
    let (limited, asked) = (evidence.not_met.len(), asked(evidence));
    let mut places: Vec<Place> = evidence.not_met.iter().map(|log| log.0).collect();
    let own = evidence.planned.iter().filter(|p| p.driven.is_none());
    places.extend(own.map(|p| p.place));
    let textures = textures(evidence.places);
    let mut sheets = Vec::new();
    for texture in &textures {
        work.go_on()?;
        // positive definite by construction: every pile has a variance of its own
        let Some(field) = Field::of(texture, &evidence.met, &places) else {
            continue;
        };
        sheets.push((Sheet::of(field, limited, &asked), *texture));
    }
    let grounds = grounds(evidence, &sheets, work)?;
    let mut all = Sums::new(evidence.planned.len());
    for ground in &grounds {
        work.go_on()?;
        all.add(ground, &sheets[ground.sheet].0, evidence, &asked);
    }
    let share = |of: &dyn Fn(&Ground) -> f64| {
        grounds
            .iter()
            .fold(0.0, |sum, g| sum + exp(g.log_weight) * of(g))
    };
    let widths = match evidence.prior {
        None => Vec::new(),
        Some(_) => (0..PRIOR_WIDTHS.value.len())
            .map(|w| share(&|g| f64::from(u8::from(g.width == w))))
            .collect(),
    };
    let length = |g: &Ground| sheets[g.sheet].1.length.unwrap_or(0.0);
    Ok(Posterior {
        scatter: share(&|g| g.scatter),
        own_share: share(&|g| sheets[g.sheet].1.own_share),
        length: evidence.places.then(|| share(&length)),
        widths,
        ground_count: grounds.len(),
        ..all.finish(evidence)
    })
}

/// For each planned pile its number among the asked ones.
fn asked(evidence: &Evidence) -> Vec<usize> {
    let mut next = evidence.not_met.len();
    let number = |pile: &Planned| match pile.driven {
        Some(log) => log,
        None => {
            next += 1;
            next - 1
        }
    };
    evidence.planned.iter().map(number).collect()
}

impl Sheet {
    fn of(field: Field, limited: usize, asked: &[usize]) -> Self {
        let mut limits = Vec::with_capacity(limited * limited);
        for i in 0..limited {
            limits.extend((0..limited).map(|j| field.covariance(i, j)));
        }
        let across = |i: &usize| (0..limited).map(|j| field.covariance(*i, j)).collect();
        let sums = field.sums(asked);
        Self {
            across: asked.iter().map(across).collect(),
            own: asked.iter().map(|&i| field.covariance(i, i)).collect(),
            sums_across: sums[..limited].to_vec(),
            sums: asked.iter().map(|&i| sums[i]).collect(),
            limits,
            field,
        }
    }
}

/// Every ground of some weight; the weights sum to one.
fn grounds(
    evidence: &Evidence,
    sheets: &[(Sheet, super::hyper::Texture)],
    work: &Work,
) -> Result<Vec<Ground>, Refusal> {
    let widths: Vec<(f64, f64)> = match evidence.prior {
        None => vec![(1.0, 1.0)],
        Some(_) => PRIOR_WIDTHS.value.to_vec(),
    };
    let limits: Vec<f64> = evidence.not_met.iter().map(|log| log.1).collect();
    let negligible = ln(LEAST_WEIGHT);
    let mut all: Vec<Ground> = Vec::new();
    let mut best = f64::NEG_INFINITY;
    for (at, (sheet, texture)) in sheets.iter().enumerate() {
        for (scatter, likely) in scatters() {
            work.go_on()?;
            for (width, (factor, weight)) in widths.iter().enumerate() {
                let prior = evidence.prior.map(|(mu, tau)| (mu, tau * factor));
                let count = evidence.met.len();
                let (mean, mean_variance, log) = level(&sheet.field, count, scatter, prior);
                let mut ground = Ground {
                    sheet: at,
                    scatter,
                    width,
                    mean,
                    mean_variance,
                    log_weight: log + ln(texture.weight * likely * weight),
                    limits: None,
                };
                // limits can only make a ground less likely
                if ground.log_weight < best + negligible {
                    continue;
                }
                if !limits.is_empty() {
                    let Some(truncated) = ground.truncated(sheet, &limits) else {
                        continue;
                    };
                    ground.log_weight += truncated.log_probability;
                    ground.limits = Some(truncated);
                }
                best = best.max(ground.log_weight);
                all.push(ground);
            }
        }
    }
    all.retain(|ground| ground.log_weight >= best + negligible);
    let total = all
        .iter()
        .fold(0.0, |sum, g| sum + exp(g.log_weight - best));
    for ground in &mut all {
        ground.log_weight -= best + ln(total);
    }
    Ok(all)
}

impl Ground {
    fn before_limits(&self, sheet: &Sheet, i: usize) -> f64 {
        sheet.field.base[i] + sheet.field.share[i] * self.mean
    }

    fn truncated(&self, sheet: &Sheet, limits: &[f64]) -> Option<Truncated> {
        let (size, variance) = (limits.len(), self.scatter * self.scatter);
        let mean: Vec<f64> = (0..size).map(|i| self.before_limits(sheet, i)).collect();
        let mut covariance = Vec::with_capacity(size * size);
        let share = &sheet.field.share;
        for i in 0..size {
            let cell = |j: usize| {
                variance * sheet.limits[i * size + j] + self.mean_variance * share[i] * share[j]
            };
            covariance.extend((0..size).map(cell));
        }
        Truncated::of(&mean, &covariance, limits)
    }
}

/// Sums over the grounds.
struct Sums {
    parts: Vec<Vec<Part>>,
    mean: Vec<f64>,
    square: Vec<f64>,
    /// Of the covariance with all planned piles, and of the product of the means.
    with_all: Vec<f64>,
    total: f64,
    total_square: f64,
}

impl Sums {
    fn new(count: usize) -> Self {
        Self {
            parts: vec![Vec::new(); count],
            mean: vec![0.0; count],
            square: vec![0.0; count],
            with_all: vec![0.0; count],
            total: 0.0,
            total_square: 0.0,
        }
    }

    fn add(&mut self, ground: &Ground, sheet: &Sheet, evidence: &Evidence, asked: &[usize]) {
        let weight = exp(ground.log_weight);
        let (variance, of_mean) = (ground.scatter * ground.scatter, ground.mean_variance);
        let share = &sheet.field.share;
        let all_share = asked.iter().fold(0.0, |sum, &i| sum + share[i]);
        let row = |unit: &[f64], h: f64| -> Vec<f64> {
            let cell = |(c, u): (usize, &f64)| variance * u + of_mean * h * share[c];
            unit.iter().enumerate().map(cell).collect()
        };
        let limits = ground.limits.as_ref();
        let all_taken = limits.map(|l| l.taken(&row(&sheet.sums_across, all_share)));
        let mut of_piles = Vec::with_capacity(asked.len());
        for (p, &i) in asked.iter().enumerate() {
            let mut mean = ground.before_limits(sheet, i);
            let mut own = variance * sheet.own[p] + of_mean * share[i] * share[i];
            let mut with_all = variance * sheet.sums[p] + of_mean * share[i] * all_share;
            if let (Some(limits), Some(all_taken)) = (limits, &all_taken) {
                let row = row(&sheet.across[p], share[i]);
                let taken = limits.taken(&row);
                mean += dot(&row, &limits.shift);
                own -= dot(&taken, &taken);
                with_all -= dot(&taken, all_taken);
            }
            // rounding must not make a variance negative
            let own = own.max(1e-12 * variance);
            of_piles.push((mean, own, with_all));
            let (mean, sd) = match (evidence.planned[p].driven, limits) {
                (Some(log), Some(limits)) => (limits.cavity_mean[log], limits.cavity_sd[log]),
                _ => (mean, own.sqrt()),
            };
            self.parts[p].push(Part { weight, mean, sd });
        }
        let total = of_piles.iter().fold(0.0, |sum, pile| sum + pile.0);
        let total_variance = of_piles.iter().fold(0.0, |sum, pile| sum + pile.2);
        for (p, (mean, own, with_all)) in of_piles.iter().enumerate() {
            self.mean[p] += weight * mean;
            self.square[p] += weight * (own + mean * mean);
            self.with_all[p] += weight * (with_all + mean * total);
        }
        self.total += weight * total;
        self.total_square += weight * (total_variance + total * total);
    }

    fn finish(self, evidence: &Evidence) -> Posterior {
        let count = evidence.planned.len() as f64;
        let moments: Vec<(f64, f64)> = self
            .mean
            .iter()
            .zip(&self.square)
            .map(|(mean, square)| (*mean, (square - mean * mean).max(0.0)))
            .collect();
        let together = |(p, (mean, variance)): (usize, &(f64, f64))| {
            self.with_all[p] - mean * self.total - variance
        };
        let variance = (self.total_square - self.total * self.total).max(0.0);
        let piles = self.parts.into_iter().zip(&evidence.planned);
        Posterior {
            together: moments.iter().enumerate().map(together).collect(),
            moments,
            average: (self.total / count, variance.sqrt() / count),
            depths: piles
                .map(|(parts, planned)| Depth {
                    parts,
                    passed: planned.driven.map(|log| evidence.not_met[log].1),
                    least: planned.least,
                })
                .collect(),
            scatter: 0.0,
            own_share: 0.0,
            length: None,
            widths: Vec::new(),
            ground_count: 0,
        }
    }
}
