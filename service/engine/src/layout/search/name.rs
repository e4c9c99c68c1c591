//! Order, names and reasons of the piles that a search found.

use std::collections::BTreeSet;

use super::Task;
use crate::layout::outcome::PlacedBy;
use crate::layout::plan::Place;
use crate::layout::site::{Pile, along_runs};

/// The piles in their order along the beams, named after them.
///
/// Where every beam has a label, beams are taken in the order of their labels; each has
/// the piles on it that no earlier one has, counted along its runs from west to east (or
/// south to north). A label that ends in a digit is followed by a hyphen. Where a beam has
/// no label, or names would repeat, piles are P1, P2, ... along the runs.
pub(super) fn piles(task: &Task<'_>, places: &[Place]) -> Vec<Pile> {
    let plan = &task.frame.plan;
    let along = along_runs(plan, places);
    let named = task.request.beams.iter().all(|b| b.label.is_some());
    let mut order: Vec<(usize, String)> = Vec::new();
    let mut taken = vec![false; places.len()];
    if named {
        let mut beams: Vec<usize> = (0..task.beam_labels.len()).collect();
        beams.sort_by(|a, b| task.beam_labels[*a].cmp(&task.beam_labels[*b]));
        for beam in beams {
            let label = &task.beam_labels[beam];
            let hyphen = if label.ends_with(|c: char| c.is_ascii_digit()) {
                "-"
            } else {
                ""
            };
            let mut number = 0;
            let mut runs: Vec<usize> = plan.beam_parts[beam].iter().map(|p| p.run).collect();
            runs.sort_unstable();
            runs.dedup();
            for run in runs {
                let parts = plan.runs[run].parts.iter().filter(|p| p.beam == beam);
                let within: Vec<_> = parts.collect();
                for (at, pile) in &along[run] {
                    let on = within.iter().any(|p| p.from <= *at && *at <= p.to);
                    if on && !std::mem::replace(&mut taken[*pile], true) {
                        number += 1;
                        order.push((*pile, format!("{label}{hyphen}{number}")));
                    }
                }
            }
        }
    }
    let names: BTreeSet<&str> = order.iter().map(|o| o.1.as_str()).collect();
    if !named || names.len() < places.len() {
        order = Vec::new();
        taken = vec![false; places.len()];
        for (_, pile) in along.iter().flatten() {
            if !std::mem::replace(&mut taken[*pile], true) {
                order.push((*pile, format!("P{}", order.len() + 1)));
            }
        }
    }
    order
        .into_iter()
        .map(|(pile, label)| Pile {
            label,
            tags: None,
            place: places[pile],
            placed_by: reason(task, &places[pile]),
            compression: None,
            tension: None,
            stiffness: None,
            offer: None,
            on_rock: false,
        })
        .collect()
}

fn reason(task: &Task<'_>, place: &Place) -> PlacedBy {
    if task.forced.contains(place) {
        return PlacedBy::ForcedPoint;
    }
    let plan = &task.frame.plan;
    if let Some(m) = place.meeting {
        return if plan.meetings[m].corner {
            PlacedBy::Corner
        } else {
            PlacedBy::Junction
        };
    }
    let run = &plan.runs[place.run];
    let end = place.at == 0.0 || place.at == run.length || run.joints().any(|j| j == place.at);
    if end {
        PlacedBy::BeamEnd
    } else {
        PlacedBy::Search
    }
}
