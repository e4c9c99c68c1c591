//! Sets of helices, each taken to its own least depth, and the lightest of those that work.

use super::codes::{methods, refusals};
use super::depths::Movable;
use super::findings::{HelixSetFindings, HelixSetsFindings};
use super::minimum::{minimum_depth, search_range};
use super::pile::{AxialDirection, HelixPlate};
use super::plates::{from_the_top, plate_faults};
use super::questions::{HelixSet, HelixSets, MinimumDepth};
use super::rules::DepthRules;
use super::settings::Settings;
use crate::catalogue::refusals::DUPLICATE_LABEL;
use crate::contract::{Issue, Refusal, Work};
use crate::math::PI;
use crate::quantity::{Length, Mass, Size};
use crate::shaft::Shaft;
use crate::soil::Strata;
use crate::source::{STEEL_DENSITY, Sourced};

/// Density of steel, kg/m3.
pub static STEEL_KG_PER_M3: Sourced<f64> = Sourced::new("steel_density", 7850.0, &STEEL_DENSITY);

/// A set put on its shaft, the lowest helix at a depth that leaves the others below ground.
pub(crate) struct Candidate<'a> {
    set: &'a HelixSet,
    pub shaft: &'a Shaft,
    pub helices: Vec<HelixPlate>,
}

/// The sets on their shafts; faults are added at `/helix_sets`.
pub(crate) fn candidates<'a>(
    asked: &'a HelixSets,
    shaft: &'a Shaft,
    issues: &mut Vec<Issue>,
) -> Vec<Candidate<'a>> {
    let mut found: Vec<Candidate> = Vec::new();
    for (i, set) in asked.sets.iter().enumerate() {
        let at = format!("/helix_sets/sets/{i}");
        if asked.sets[..i].iter().any(|s| s.label == set.label) {
            issues.push(Issue::new(
                format!("{at}/label"),
                &DUPLICATE_LABEL,
                format!("two sets are called `{}`", set.label.0),
            ));
        }
        let heights = || set.helices.iter().map(|h| h.above_lowest);
        let least = heights().reduce(Length::min).unwrap_or(Length::ZERO);
        if least > Length::ZERO {
            issues.push(Issue::new(
                format!("{at}/helices"),
                &refusals::HELIX_SET_INCOMPLETE,
                format!("the least height of set `{}` is above 0", set.label.0),
            ));
            continue;
        }
        let span = heights().fold(Length::ZERO, Length::max);
        let lowest = span + super::depths::LEAST_HELIX_DEPTH;
        let helices: Vec<_> = set
            .helices
            .iter()
            .map(|h| HelixPlate {
                label: None,
                tags: None,
                diameter: h.diameter,
                depth: lowest - h.above_lowest,
            })
            .collect();
        let own = set.shaft.as_ref().unwrap_or(shaft);
        // faults name `depth`, which a set has not
        issues.extend(
            plate_faults(own, &helices, &at)
                .into_iter()
                .map(|issue| Issue {
                    pointer: issue.pointer.replace("/depth", "/above_lowest"),
                    ..issue
                }),
        );
        found.push(Candidate {
            set,
            shaft: own,
            helices,
        });
    }
    found
}

/// What every set is held against.
pub(crate) struct Trial<'a> {
    pub strata: &'a Strata,
    pub settings: &'a Settings,
    pub directions: &'a [AxialDirection],
    pub rules: &'a DepthRules<'a>,
    pub search: &'a MinimumDepth,
}

/// The sets at their least depths, ranked by mass.
pub(crate) fn lightest(
    asked: &HelixSets,
    candidates: &[Candidate],
    trial: &Trial,
    work: &mut Work,
) -> Result<HelixSetsFindings, Refusal> {
    work.method(&methods::HELIX_SETS);
    let mut sets: Vec<HelixSetFindings> = Vec::new();
    for (i, candidate) in candidates.iter().enumerate() {
        sets.push(one(asked, candidate, trial, i, work)?);
    }
    let mut order: Vec<usize> = (0..sets.len()).filter(|i| sets[*i].works).collect();
    let unknown = order.iter().any(|i| sets[*i].steel_mass.is_none());
    order.retain(|i| sets[*i].steel_mass.is_some());
    let mass = |i: &usize| sets[*i].steel_mass.map_or(f64::INFINITY, Mass::si);
    order.sort_by(|a, b| mass(a).total_cmp(&mass(b)));
    let lightest_first: Vec<_> = order.iter().map(|i| sets[*i].label.clone()).collect();
    let first = if unknown {
        None
    } else {
        lightest_first.first()
    };
    Ok(HelixSetsFindings {
        lightest: first.cloned(),
        lightest_first,
        sets,
    })
}

fn one(
    asked: &HelixSets,
    candidate: &Candidate,
    trial: &Trial,
    i: usize,
    work: &mut Work,
) -> Result<HelixSetFindings, Refusal> {
    let mut pile = Movable::new(
        trial.strata,
        candidate.shaft,
        from_the_top(&candidate.helices),
        trial.directions.iter().copied(),
        trial.settings,
    );
    let mut issues = Vec::new();
    let at = format!("/helix_sets/sets/{i}");
    let range = search_range(trial.search, &pile, &at, &mut issues);
    let Some(range) = range else {
        return Err(Refusal::of(issues));
    };
    let found = minimum_depth(range, &mut pile, trial.rules, None, work)?;
    let shaft_length = found.depth.map(|depth| {
        let head = asked.head_height.unwrap_or(Length::ZERO);
        depth + head + asked.tip_length.unwrap_or(Length::ZERO)
    });
    Ok(HelixSetFindings {
        label: candidate.set.label.0.clone(),
        tags: candidate.set.tags.clone(),
        works: found.depth.is_some(),
        steel_mass: shaft_length.and_then(|length| steel_mass(candidate, length, work)),
        shaft_length,
        minimum_depth: found,
    })
}

/// Mass of the steel of a set with its shaft of a length.
fn steel_mass(candidate: &Candidate, length: Length, work: &mut Work) -> Option<Mass> {
    let density = STEEL_KG_PER_M3.value;
    let set = candidate.set;
    let per_metre = match set.shaft_mass_per_metre {
        Some(mass) => mass.si(),
        None => candidate.shaft.steel_area()?.si() * density,
    };
    let plates = match (set.plate_mass, set.plate_thickness) {
        (Some(mass), _) => mass.si(),
        (None, Some(thickness)) => {
            let hub = candidate.shaft.gross_area().si();
            let rings = set.helices.iter().map(|h| ring_area(h.diameter) - hub);
            rings.sum::<f64>() * thickness.si() * density
        }
        (None, None) => return None,
    };
    work.trace.about(|| format!("set {}", set.label.0));
    let mass = pile_mass(per_metre, length, plates, &mut work.trace);
    work.trace.about(String::new);
    Some(mass)
}

fn ring_area(diameter: Size) -> f64 {
    PI * diameter.si() * diameter.si() / 4.0
}

/// Mass of a pile.
///
/// M = m L + M_plates; m mass of the shaft for each metre (kg/m), L length of the shaft (m),
/// M_plates mass of the plates (kg). Range: couplings and head not counted. Source: geometry,
/// steel of 7,850 kg/m3. Sign: positive.
fn pile_mass(per_metre: f64, length: Length, plates: f64, trace: &mut crate::trace::Trace) -> Mass {
    trace.step(
        "M",
        "m L + M_plates",
        Mass::from_si(per_metre * length.si() + plates),
        [
            ("m", Mass::from_si(per_metre).into()),
            ("L", length.into()),
            ("M_plates", Mass::from_si(plates).into()),
        ],
        &STEEL_DENSITY,
    )
}
