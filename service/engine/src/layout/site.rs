//! Piles as the analysis sees them: place, capacity, stiffness, name; and the distances
//! between them. Given piles are read here; searched ones come from `search`.

use std::collections::{BTreeMap, BTreeSet};

use super::codes::refusals;
use super::outcome::PlacedBy;
use super::plan::{Faults, Place, Plan, Point, TOLERANCE};
use super::request::{GivenPiles, Request};
use super::types::{Terrain, pile_type};
use crate::catalogue::refusals::DUPLICATE_LABEL;
use crate::contract::Issue;
use crate::quantity::in_both_systems;
use crate::text::{Label, Tags};

/// A pile.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Pile {
    pub label: String,
    pub tags: Option<Tags>,
    pub place: Place,
    pub placed_by: PlacedBy,
    /// Capacity in compression, N.
    pub compression: Option<f64>,
    /// Capacity in tension, N.
    pub tension: Option<f64>,
    /// Stiffness, N/m.
    pub stiffness: Option<f64>,
    /// Its type, by the order of preference.
    pub offer: Option<usize>,
    /// It does not move where the others are springs.
    pub on_rock: bool,
}

impl Pile {
    /// Stiffness in the spring model; infinite on rock.
    pub fn spring(&self) -> Option<f64> {
        if self.on_rock {
            Some(f64::INFINITY)
        } else {
            self.stiffness
        }
    }
}

/// Labels for a list: the caller's, or a letter and the number in the list; faults for
/// labels that stand twice.
pub(super) fn labels<'a>(
    given: impl Iterator<Item = Option<&'a Label>> + Clone,
    letter: &str,
    pointer: &str,
    issues: &mut Vec<Issue>,
) -> Vec<String> {
    let mut first: BTreeMap<&str, usize> = BTreeMap::new();
    for (i, label) in given.clone().enumerate() {
        if let Some(label) = label {
            if let Some(other) = first.get(label.as_str()) {
                issues.push(Issue::new(
                    format!("{pointer}/{i}/label"),
                    &DUPLICATE_LABEL,
                    format!("as number {other} of the list"),
                ));
            } else {
                first.insert(label.as_str(), i);
            }
        }
    }
    given
        .enumerate()
        .map(|(i, label)| match label {
            Some(label) => label.as_str().to_owned(),
            None => {
                let mut own = String::with_capacity(letter.len() + 5);
                own.push_str(letter);
                own.push_str(itoa::Buffer::new().format(i + 1));
                while first.contains_key(own.as_str()) {
                    own.push('_');
                }
                own
            }
        })
        .collect()
}

/// The piles of a request that gives them.
pub(super) fn given(
    request: &Request,
    given: &GivenPiles,
    plan: &Plan,
    terrain: &Terrain,
    issues: &mut Vec<Issue>,
) -> Vec<Pile> {
    let pointer = "/piles/given/positions";
    let names = labels(
        given.positions.iter().map(|p| p.label.as_ref()),
        "P",
        pointer,
        issues,
    );
    let mut piles = Vec::with_capacity(names.len());
    for (i, (p, label)) in given.positions.iter().zip(names).enumerate() {
        let faults = Faults {
            pointer: &|| format!("{pointer}/{i}/at"),
            code: &refusals::PILE_OFF_BEAM,
            issues,
        };
        let place = plan.locate(&p.at, faults);
        let offer = p.pile_type.as_ref().and_then(|t| {
            let pointer = format!("{pointer}/{i}");
            pile_type(t.as_str(), terrain.offers.as_ref(), &pointer, issues)
        });
        let own = (p.compression.map(|v| v.si()), p.tension.map(|v| v.si()));
        let (compression, tension) = match (&terrain.offers, place) {
            // the type comes later, with the load
            (Some(offers), _) if offers.named => own,
            (Some(_), Some(place)) => {
                let here = terrain.capacities(&terrain.here(plan.point_of(&place)))[0];
                (
                    Some(own.0.unwrap_or(here.compression)),
                    Some(own.1.unwrap_or(here.tension)),
                )
            }
            (Some(_), None) => (None, None),
            (None, _) => {
                for (own, member) in [(&p.compression, "compression"), (&p.tension, "tension")] {
                    if own.is_some() {
                        issues.push(Issue::new(
                            format!("{pointer}/{i}/{member}"),
                            &refusals::CAPACITY_NEEDED,
                            "its level is that of `pile_capacity` or `pile_types`, which were not sent",
                        ));
                    }
                }
                (None, None)
            }
        };
        if p.founded_on_rock == Some(true) && p.stiffness.is_some() {
            issues.push(Issue::new(
                format!("{pointer}/{i}/stiffness"),
                &refusals::STIFFNESS_ON_ROCK,
                "leave out `stiffness` or `founded_on_rock`",
            ));
        }
        if let Some(place) = place {
            piles.push(Pile {
                label,
                tags: p.tags.clone(),
                place,
                placed_by: PlacedBy::Given,
                compression,
                tension,
                stiffness: p.stiffness.map(|k| k.si()).or_else(|| {
                    let by_type = terrain.offers.as_ref().is_some_and(|o| o.named);
                    let whole = own.0.is_some() && own.1.is_some();
                    let untyped = !by_type || (whole && p.pile_type.is_none());
                    request.pile_stiffness.filter(|_| untyped).map(|k| k.si())
                }),
                offer,
                on_rock: p.founded_on_rock == Some(true),
            });
        }
    }
    if piles.len() == given.positions.len() {
        coincide(plan, &piles, issues);
        stiffness_everywhere(&piles, terrain, issues);
    }
    piles
}

fn stiffness_everywhere(piles: &[Pile], terrain: &Terrain, issues: &mut Vec<Issue>) {
    // a pile takes the stiffness of its type, unless it has capacities of its own only
    let typed = terrain.offers.as_ref().filter(|o| o.named);
    let by_type = typed.is_some_and(|o| o.types.iter().all(|t| t.stiffness.is_some()));
    let has = |p: &Pile| {
        let of_type = p.offer.is_some() || p.compression.is_none() || p.tension.is_none();
        p.spring().is_some() || (by_type && of_type)
    };
    if piles.iter().any(has) {
        for (i, _) in piles.iter().enumerate().filter(|p| !has(p.1)) {
            issues.push(Issue::new(
                format!("/piles/given/positions/{i}"),
                &refusals::STIFFNESS_NEEDED,
                "send `stiffness` here or `pile_stiffness` for all",
            ));
        }
    }
}

fn coincide(plan: &Plan, piles: &[Pile], issues: &mut Vec<Issue>) {
    let points: Vec<Point> = piles.iter().map(|p| plan.point_of(&p.place)).collect();
    let near = nearest(&points);
    let mut reported = BTreeSet::new();
    for (i, n) in near.iter().enumerate() {
        if let Some((j, distance)) = n {
            let (low, high) = (i.min(*j), i.max(*j));
            if *distance <= TOLERANCE && reported.insert(high) {
                issues.push(
                    Issue::new(
                        format!("/piles/given/positions/{high}/at"),
                        &refusals::PILES_COINCIDE,
                        format!("with number {low} of the list"),
                    )
                    .limit(format!("more than {}", in_both_systems(TOLERANCE, "m"))),
                );
            }
        }
    }
}

/// The nearest other point of every point, with its distance; the first in the list
/// among equals.
pub(super) fn nearest(points: &[Point]) -> Vec<Option<(usize, f64)>> {
    let span = |get: fn(&Point) -> f64| {
        let lo = points.iter().map(get).fold(f64::INFINITY, f64::min);
        let hi = points.iter().map(get).fold(f64::NEG_INFINITY, f64::max);
        hi - lo
    };
    let by_x = span(|p| p.x) >= span(|p| p.y);
    let along = points.iter().map(|p| if by_x { p.x } else { p.y });
    let mut sorted: Vec<(f64, usize)> = along.zip(0..).collect();
    sorted.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut out: Vec<Option<(usize, f64)>> = vec![None; points.len()];
    for (rank, (here, i)) in sorted.iter().enumerate() {
        let mut best: Option<(usize, f64)> = None;
        let mut look = |(there, j): (f64, usize)| -> bool {
            if let Some((_, d)) = best
                && (there - here).abs() > d
            {
                return false;
            }
            let d = points[*i].distance(points[j]);
            if best.is_none_or(|(k, other)| d < other || (d == other && j < k)) {
                best = Some((j, d));
            }
            true
        };
        for other in sorted[..rank].iter().rev() {
            if !look(*other) {
                break;
            }
        }
        for other in &sorted[rank + 1..] {
            if !look(*other) {
                break;
            }
        }
        out[*i] = best;
    }
    out
}

/// Piles along a run, in ascending order of place: (place, pile).
pub(super) fn along_runs(plan: &Plan, places: &[Place]) -> Vec<Vec<(f64, usize)>> {
    let mut out: Vec<Vec<(f64, usize)>> = vec![Vec::new(); plan.runs.len()];
    for (p, place) in places.iter().enumerate() {
        match place.meeting {
            Some(m) => {
                for (run, at) in &plan.meetings[m].on {
                    out[*run].push((*at, p));
                }
            }
            None => out[place.run].push((place.at, p)),
        }
    }
    for own in &mut out {
        own.sort_by(|a, b| a.0.total_cmp(&b.0));
    }
    out
}
