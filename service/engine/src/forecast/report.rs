//! What is told of a forecast: depths and pieces of each pile, totals, and the check of what is
//! there.

use super::codes::{checks, methods, refusals};
use super::evaluate::{CONFIDENCE, Class, place};
use super::field::Place;
use super::job::{Need, pieces, total};
use super::mixture::Depth;
use super::outcome::*;
use super::pieces::{Assembly, assemblies, reach};
use super::request::*;
use crate::contract::{Check, Issue, Refusal, SubjectKind, Work};
use crate::math::hypot;
use crate::quantity::Length;
use crate::source::{FORECAST_PRIORS, ONE_FACTOR};

/// Probability of the total depth that is told.
const P90: f64 = 0.9;
/// Probability beyond which no assembly is thought of.
const BEYOND: f64 = 1e-6;
/// Probability from which on, and up to one less that, an assembly is told.
const MATTERS: f64 = 1e-3;

/// The outcome.
pub(super) fn report(
    request: &Request,
    classes: &[Class],
    positions: bool,
    averaging_length: Length,
    work: &mut Work,
) -> Result<Outcome, Refusal> {
    let confidence = match request.confidence_ratio {
        Some(own) => own,
        None => work.take(&CONFIDENCE),
    };
    // the piles in the order they were sent, each by its own torque
    let mut own: Vec<usize> = vec![0; request.planned.len()];
    for (at, class) in classes.iter().enumerate() {
        class.members.iter().for_each(|pile| own[*pile] = at);
    }
    let of = |pile: usize| &classes[own[pile]];
    let count = request.planned.len();
    let depths: Vec<Depth> = (0..count)
        .map(|i| of(i).posterior.depths[i].clone())
        .collect();
    let shared: Vec<f64> = (0..count).map(|i| of(i).loadings[i]).collect();
    let mut piles = Vec::with_capacity(count);
    for (i, depth) in depths.iter().enumerate() {
        work.go_on()?;
        piles.push(pile(request, i, of(i), depth, confidence, positions));
    }
    let extensions = match &request.pieces {
        None => None,
        Some(sent) => {
            work.method(&methods::PIECES);
            let all = set(request, sent, &depths)?;
            for (pile, depth) in piles.iter_mut().zip(&depths) {
                pile.pieces = Some(pile_pieces(sent, &all, depth, pile.at_confidence));
            }
            trace_reach(sent, &piles, work);
            Some(totals(sent, &all, &depths, &shared, confidence, work)?)
        }
    };
    work.go_on()?;
    let total = total(&depths, &shared, P90);
    let total_depth = TotalDepth {
        mean: work.trace.step(
            "E(sum d)",
            "sum of the expected final depths",
            Length::from_si(total.mean),
            [],
            &FORECAST_PRIORS,
        ),
        p90_by_model: Length::from_si(total.by_model),
        p90_independent: Length::from_si(total.independent),
        p90_fully_correlated: Length::from_si(total.fully_correlated.max(total.by_model)),
    };
    Ok(Outcome {
        label: request.label.clone(),
        tags: request.tags.clone(),
        confidence_ratio: confidence,
        averaging_length,
        uses_positions: positions,
        torques: classes.iter().map(|c| torque(c, work)).collect(),
        piles,
        total_depth,
        extensions,
    })
}

fn torque(class: &Class, work: &mut Work) -> TorqueForecast {
    let count = |status| class.logs.iter().filter(|log| log.status == status).count();
    let posterior = &class.posterior;
    let (mean, sd) = posterior.average;
    TorqueForecast {
        required_torque: class.torque,
        met_count: count(LogStatus::Met),
        not_met_count: count(LogStatus::NotMet),
        logs: class.logs.clone(),
        average_depth: work.trace.step(
            "E(y)",
            "weighted mean over the grounds of the average depth of the torque",
            Length::from_si(mean),
            [("T_req", class.torque.into())],
            &FORECAST_PRIORS,
        ),
        average_standard_deviation: Length::from_si(sd),
        pile_standard_deviation: Length::from_si(posterior.scatter),
        own_variance_ratio: posterior.length.map(|_| posterior.own_share),
        correlation_length: posterior.length.map(Length::from_si),
        prior_holds_ratio: posterior.widths.first().copied(),
        ground_count: posterior.ground_count,
    }
}

fn pile(
    request: &Request,
    at: usize,
    class: &Class,
    depth: &Depth,
    confidence: f64,
    positions: bool,
) -> PileForecast {
    let sent = &request.planned[at];
    let q = |p: f64| Length::from_si(depth.quantile(p));
    let band = |p: f64| DepthBand {
        from: q(0.5 - 0.5 * p),
        to: q(0.5 + 0.5 * p),
    };
    PileForecast {
        label: sent.label.clone(),
        tags: sent.tags.clone(),
        required_torque: class.torque,
        minimum_depth: sent.minimum_depth,
        driven_depth: depth.passed.map(Length::from_si),
        nearest_log: positions
            .then(|| nearest(request, class, place(&sent.position)))
            .flatten()
            .map(Length::from_si),
        median: q(0.5),
        band_50: band(0.5),
        band_80: band(0.8),
        band_90: band(0.9),
        at_confidence: q(confidence),
        minimum_governs_ratio: depth.not_deeper(depth.least),
        pieces: None,
    }
}

/// Distance to the nearest log that says something of the torque, m.
pub(super) fn nearest(request: &Request, class: &Class, from: Place) -> Option<f64> {
    let from = from?;
    let used = request.installed.iter().zip(&class.logs);
    let places = used
        .filter(|(_, log)| log.status != LogStatus::NotUsable)
        .filter_map(|(pile, _)| place(&pile.position));
    places
        .map(|(x, y)| hypot(x - from.0, y - from.1))
        .reduce(f64::min)
}

/// The assemblies that the piles may need.
fn set(
    request: &Request,
    sent: &ForecastPieces,
    depths: &[Depth],
) -> Result<Vec<Assembly>, Refusal> {
    let deep = depths.iter().map(|d| d.quantile(1.0 - BEYOND));
    let to = deep.fold(0.0, f64::max);
    let lengths: Vec<f64> = sent.extensions.iter().map(|e| e.length.si()).collect();
    let (lead, above) = (sent.lead_length.si(), sent.stick_up.si());
    assemblies(lead, &lengths, above, to).ok_or_else(|| {
        let told = format!(
            "one of {} piles may go to {}",
            request.planned.len(),
            Length::ROLE.in_both_systems(to)
        );
        Issue::new("/pieces/extensions", &refusals::PIECES_DO_NOT_REACH, told).into()
    })
}

fn steel(sent: &ForecastPieces, counts: &[usize]) -> Length {
    let each = sent.extensions.iter().zip(counts);
    each.fold(sent.lead_length, |sum, (e, n)| sum + e.length * *n as f64)
}

fn pile_pieces(
    sent: &ForecastPieces,
    all: &[Assembly],
    depth: &Depth,
    at_confidence: Length,
) -> PilePieces {
    // what reaches to the last printed digit reaches
    let reaches = |a: &&Assembly| a.reach >= at_confidence.si() * (1.0 - 1e-9);
    let chosen = all.iter().find(reaches).unwrap_or(&all[all.len() - 1]);
    let deeper = all.iter().map(|a| (a, 1.0 - depth.not_deeper(a.reach)));
    let options = deeper
        .filter(|(_, p)| (MATTERS..=1.0 - MATTERS).contains(p))
        .map(|(a, p)| PileAssembly {
            extension_counts: a.counts.clone(),
            reach: Length::from_si(a.reach),
            deeper_probability_ratio: p,
        });
    PilePieces {
        extension_counts: chosen.counts.clone(),
        length: steel(sent, &chosen.counts),
        options: options.collect(),
    }
}

fn trace_reach(sent: &ForecastPieces, piles: &[PileForecast], work: &mut Work) {
    for pile in piles {
        let Some(pieces) = pile.pieces.as_ref().filter(|_| work.trace.is_on()) else {
            return;
        };
        work.trace.about(|| format!("pile {}", pile.label));
        let added = pieces.length - sent.lead_length;
        reach(sent.lead_length, added, sent.stick_up, &mut work.trace);
    }
    work.trace.about(String::new);
}

/// The extensions of the whole job, and the check of those there are.
fn totals(
    sent: &ForecastPieces,
    all: &[Assembly],
    depths: &[Depth],
    shared: &[f64],
    confidence: f64,
    work: &mut Work,
) -> Result<Vec<ExtensionTotal>, Refusal> {
    let steps: Vec<Vec<(usize, f64)>> = depths.iter().map(|d| needed(all, d)).collect();
    let mut out = Vec::new();
    for (kind, extension) in sent.extensions.iter().enumerate() {
        work.go_on()?;
        let need = |steps: &Vec<(usize, f64)>| Need {
            steps: steps
                .iter()
                .map(|(a, p)| (all[*a].counts[kind], *p))
                .collect(),
        };
        let needs: Vec<Need> = steps.iter().map(need).collect();
        let found = pieces(&needs, shared, confidence);
        if let Some(available) = extension.available_count {
            let required = found.by_model as f64;
            let check = Check::at_least(
                &checks::EXTENSIONS_AVAILABLE,
                required,
                f64::from(available),
                &ONE_FACTOR,
            );
            let length = Length::ROLE.in_both_systems(extension.length.si());
            let told = format!(
                "{} extensions of {length} with all piles deep at once",
                found.fully_correlated
            );
            let label = extension.label.as_ref().map_or(length, |l| l.0.clone());
            work.check(check.subject(SubjectKind::Plan, label).reason(told));
        }
        out.push(ExtensionTotal {
            label: extension.label.clone(),
            length: extension.length,
            mean_count: found.mean,
            by_model_count: found.by_model,
            independent_count: found.independent,
            fully_correlated_count: found.fully_correlated.max(found.by_model),
            available_count: extension.available_count,
        });
    }
    Ok(out)
}

/// The assemblies one pile may need, each with the probability that it or a shorter one does;
/// the last with one.
fn needed(all: &[Assembly], depth: &Depth) -> Vec<(usize, f64)> {
    let mut steps = Vec::new();
    for (at, assembly) in all.iter().enumerate() {
        let p = depth.not_deeper(assembly.reach);
        if p >= 1.0 - BEYOND || at + 1 == all.len() {
            steps.push((at, 1.0));
            return steps;
        }
        if p > BEYOND {
            steps.push((at, p));
        }
    }
    steps
}
