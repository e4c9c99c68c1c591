//! Bands on simulated jobs: how often the depth of a pile lies in the band that was given
//! before. Seeds are fixed, so the figures are too.

use super::super::job::{loadings, total};
use super::super::mixture::Depth;
use super::super::posterior::{Evidence, Planned, Posterior, forecast};
use super::*;

/// Piles to come of each job.
const TO_COME: usize = 3;

/// How often depths lie in bands.
#[derive(Debug, Default)]
struct Coverage {
    count: usize,
    within: [usize; 3],
    off: f64,
}

const BANDS: [f64; 3] = [0.5, 0.8, 0.9];

impl Coverage {
    fn add(&mut self, depth: &Depth, truth: f64, scatter: f64) {
        let p = depth.not_deeper(truth);
        self.count += 1;
        for (within, band) in self.within.iter_mut().zip(BANDS) {
            *within += usize::from((p - 0.5).abs() <= 0.5 * band);
        }
        self.off += (truth - depth.quantile(0.5)) / scatter;
    }

    /// In per cent.
    fn percent(&self) -> [f64; 3] {
        self.within.map(|n| 100.0 * n as f64 / self.count as f64)
    }

    /// Mean of depth less median over the scatter.
    fn bias(&self) -> f64 {
        self.off / self.count as f64
    }
}

fn known(posterior: &Posterior, at: usize) -> &Depth {
    &posterior.depths[at]
}

/// A simulated job: where each log is censored, which prior is stated for the mean it has.
struct Job {
    logs: usize,
    places: bool,
    texture: Texture,
    scatter: f64,
    mean: f64,
    prior: Option<(f64, f64)>,
    to_come: usize,
}

impl Job {
    fn drawn(random: &mut Random, at: usize, logs: usize) -> Self {
        let places = at.is_multiple_of(2);
        let (texture, scatter) = ground(random, places);
        Self {
            logs,
            places,
            texture,
            scatter,
            mean: random.between(3.0, 15.0),
            prior: None,
            to_come: TO_COME,
        }
    }

    /// Places and depths of logs and piles to come.
    fn piles(&self, random: &mut Random) -> (Vec<Place>, Vec<f64>) {
        let place = |random: &mut Random| {
            let at = (random.between(0.0, 14.0), random.between(0.0, 8.0));
            self.places.then_some(at)
        };
        let places: Vec<Place> = (0..self.logs + self.to_come)
            .map(|_| place(random))
            .collect();
        let depths = depths(random, &places, &self.texture, self.scatter, self.mean);
        (places, depths)
    }

    fn evidence(&self, places: &[Place], met: Vec<(Place, f64)>) -> Evidence {
        let planned = |place: &Place| Planned {
            place: *place,
            least: f64::NEG_INFINITY,
            driven: None,
        };
        Evidence {
            places: self.places,
            met,
            not_met: Vec::new(),
            planned: places[self.logs..].iter().map(planned).collect(),
            prior: self.prior,
        }
    }
}

fn pairs(places: &[Place], depths: &[f64], count: usize) -> Vec<(Place, f64)> {
    let both = places.iter().copied().zip(depths.iter().copied());
    both.take(count).collect()
}

/// Coverage over jobs whose mean and prior `set` settles.
fn simulate(
    seed: u64,
    jobs: usize,
    logs: impl Fn(&mut Random) -> usize,
    set: impl Fn(&mut Random, &mut Job),
) -> Coverage {
    let mut random = Random(seed);
    let mut coverage = Coverage::default();
    for at in 0..jobs {
        let logs = logs(&mut random);
        let mut job = Job::drawn(&mut random, at, logs);
        set(&mut random, &mut job);
        let (places, depths) = job.piles(&mut random);
        let evidence = job.evidence(&places, pairs(&places, &depths, job.logs));
        let posterior = forecast(&evidence, &Work::default()).expect("a forecast");
        for (i, truth) in depths[job.logs..].iter().enumerate() {
            coverage.add(known(&posterior, i), *truth, job.scatter);
        }
    }
    coverage
}

/// 2,000 jobs from the stated model, 3 to 12 logs, half of them with places.
#[test]
fn the_bands_hold_what_they_say_within_the_model() {
    let all = simulate(2026, 2000, |r| 3 + r.below(10), |_, _| {});
    let [half, eighty, ninety] = all.percent();
    println!("within the model: {:?} % of {}", all.percent(), all.count);
    assert!((77.0..=83.0).contains(&eighty), "{eighty}");
    assert!((47.0..=53.0).contains(&half), "{half}");
    assert!((87.5..=92.5).contains(&ninety), "{ninety}");
    assert!(all.bias().abs() < 0.05, "{}", all.bias());
}

/// The stated mean is off by two of its standard deviations, after 8 logs.
#[test]
fn a_stated_mean_that_is_off_is_overruled() {
    let off = simulate(
        7,
        500,
        |_| 8,
        |random, job| {
            let tau = random.between(0.3, 1.3);
            let side = if random.uniform() < 0.5 { -2.0 } else { 2.0 };
            job.prior = Some((job.mean, tau));
            job.mean += side * tau;
        },
    );
    println!("stated mean off: {:?} %", off.percent());
    assert!(off.percent()[1] >= 70.0, "{:?}", off.percent());
}

/// The stated standard deviation is half of the true one, after 8 logs.
#[test]
fn a_stated_spread_that_is_half_the_truth_is_overruled() {
    let half = simulate(
        8,
        500,
        |_| 8,
        |random, job| {
            let tau = random.between(0.3, 1.3);
            job.prior = Some((job.mean, tau));
            job.mean += 2.0 * tau * normal(random);
        },
    );
    println!("stated spread halved: {:?} %", half.percent());
    assert!(half.percent()[1] >= 70.0, "{:?}", half.percent());
}

/// A prior that is right helps: with three logs its bands are narrower and still hold.
#[test]
fn a_stated_mean_that_is_right_holds() {
    let right = simulate(
        9,
        500,
        |_| 3,
        |random, job| {
            let tau = random.between(0.2, 1.0);
            job.prior = Some((job.mean, tau));
            job.mean += tau * normal(random);
        },
    );
    println!("stated mean right: {:?} %", right.percent());
    assert!(
        (76.0..=86.0).contains(&right.percent()[1]),
        "{:?}",
        right.percent()
    );
}

/// The total of 10 piles that is not exceeded with 0.9, over 250 jobs of 3 to 12 logs: by the
/// model it holds; of independent piles it is exceeded twice as often as it says; of piles that
/// are deep together hardly ever.
#[test]
fn the_total_holds_what_it_says() {
    let mut random = Random(77);
    let mut held = [0; 3];
    for at in 0..250 {
        let logs = 3 + random.below(10);
        let mut job = Job::drawn(&mut random, at, logs);
        job.to_come = 10;
        let (places, depths) = job.piles(&mut random);
        let evidence = job.evidence(&places, pairs(&places, &depths, job.logs));
        let posterior = forecast(&evidence, &Work::default()).expect("a forecast");
        let shared = loadings(&posterior.moments, &posterior.together);
        let found = total(&posterior.depths, &shared, 0.9);
        let truth: f64 = depths[job.logs..].iter().sum();
        let bounds = [found.independent, found.by_model, found.fully_correlated];
        for (held, bound) in held.iter_mut().zip(bounds) {
            *held += usize::from(truth <= bound);
        }
    }
    let percent = held.map(|n| 100.0 * n as f64 / 250.0);
    println!("total at 0.9: independent, by model, fully correlated {percent:?} %");
    assert!((85.0..=96.0).contains(&percent[1]), "{percent:?}");
    assert!(percent[0] < 87.0 && percent[2] > 95.0, "{percent:?}");
}

/// Logs of 8 and more that end at a depth about the mean before their torque is met: with them
/// the medians are right and the bands hold, without them the medians are too high up. And the
/// piles whose log ended, driven on, end within the bands given what they had reached.
#[test]
fn logs_that_ended_early_count() {
    let mut random = Random(11);
    let mut with = Coverage::default();
    let mut without = Coverage::default();
    let mut driven = Coverage::default();
    for at in 0..400 {
        let logs = 8 + random.below(5);
        let job = Job::drawn(&mut random, at, logs);
        let (places, depths) = job.piles(&mut random);
        let mut evidence = job.evidence(&places, Vec::new());
        let mut truths = depths[job.logs..].to_vec();
        for i in 0..job.logs {
            // a length of pile that was on the truck: the same whatever the ground
            let limit = job.mean + job.scatter * random.between(-0.2, 0.6);
            if depths[i] <= limit || i < 3 {
                evidence.met.push((places[i], depths[i]));
            } else {
                let own = Planned {
                    place: places[i],
                    least: f64::NEG_INFINITY,
                    driven: Some(evidence.not_met.len()),
                };
                evidence.planned.push(own);
                evidence.not_met.push((places[i], limit));
                truths.push(depths[i]);
            }
        }
        let posterior = forecast(&evidence, &Work::default()).expect("a forecast");
        for (i, truth) in truths.iter().enumerate() {
            let coverage = if i < TO_COME { &mut with } else { &mut driven };
            coverage.add(known(&posterior, i), *truth, job.scatter);
        }
        evidence.not_met.clear();
        evidence.planned.truncate(TO_COME);
        let posterior = forecast(&evidence, &Work::default()).expect("a forecast");
        for (i, truth) in truths[..TO_COME].iter().enumerate() {
            without.add(known(&posterior, i), *truth, job.scatter);
        }
    }
    println!(
        "ended early: with {:?} % bias {}, without {:?} % bias {}, driven on {:?} % bias {}",
        with.percent(),
        with.bias(),
        without.percent(),
        without.bias(),
        driven.percent(),
        driven.bias()
    );
    assert!((76.0..=85.0).contains(&with.percent()[1]));
    assert!((75.0..=88.0).contains(&driven.percent()[1]));
    assert!(with.bias().abs() < 0.1);
    assert!(
        without.bias() > with.bias() + 0.15,
        "left out, they are missed"
    );
}
