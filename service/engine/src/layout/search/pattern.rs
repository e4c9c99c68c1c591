//! The plan as a whole with loads that may be absent on single spans. Layouts of runs are
//! sought with all loads everywhere, whose demands are never greater: bounds from below
//! hold, and what the worst spans ask for in addition is found here.

use super::Task;
use super::enumerate::Budget;
use super::stack::used;
use super::whole::touching;
use crate::contract::{Refusal, Work};
use crate::layout::analysis::{BeamEnvelope, Governing, Solved};
use crate::layout::pattern::{Asked, Stopped, enveloped, parts};
use crate::layout::plan::Place;
use crate::layout::report::NOISE;
use crate::layout::strength::BeamStrength;

/// Counted steps that one part costs at one pile.
const PART_COST: usize = 4;

/// Utilisations with the runs that they are on; none where the plan cannot be solved.
pub(super) type Rated = Option<Vec<(f64, Vec<usize>)>>;

/// Utilisations of piles, each with its pair of capacities, and of beams with the worst
/// spans loaded; nothing where no load may be absent.
pub(super) fn rate(
    task: &Task<'_>,
    places: &[Place],
    solved: &[Solved],
    capacities: &[(f64, f64)],
    budget: &mut Budget,
    work: &Work,
) -> Result<Rated, Refusal> {
    let mut out = Vec::new();
    let Some(cases) = task.absent.as_deref() else {
        return Ok(Some(out));
    };
    let parts = parts(task.frame, places, cases)?;
    budget.take((PART_COST * solved.len() * places.len() * parts.len()) as u64);
    let beams = &task.frame.strength;
    let asked = Asked {
        frame: task.frame,
        places,
        combinations: task.combinations,
        parts: &parts,
        beams: beams
            .iter()
            .any(|b| b.limits().iter().any(|l| l.is_finite())),
    };
    for base in solved {
        let found = match enveloped(&asked, base, work) {
            Ok(found) => found,
            Err(Stopped::Refusal(refusal)) => return Err(refusal),
            Err(Stopped::Fault(_)) => return Ok(None),
        };
        for (c, combination) in task.combinations.iter().enumerate() {
            let floor = NOISE * task.frame.total_load(&combination.factors).1;
            for (p, (place, &(compression, tension))) in places.iter().zip(capacities).enumerate() {
                let most = found.piles.most(c, p).max(0.0);
                let least = found.piles.least(c, p).min(0.0);
                let u = used(most, compression, tension, floor).max(used(
                    least,
                    compression,
                    tension,
                    floor,
                ));
                out.push((u, touching(task.frame, place)));
            }
        }
        for (beam, e) in beams.iter().zip(found.beams.iter().flatten()) {
            out.extend(strained(beam, e));
        }
    }
    Ok(Some(out))
}

fn strained(own: &BeamStrength, e: &BeamEnvelope) -> Vec<(f64, Vec<usize>)> {
    let mut out = Vec::new();
    let mut note = |g: &Governing, capacity: f64| out.push((g.value / capacity, vec![g.run]));
    let [sagging, hogging, shear] = own.limits();
    note(&e.sagging, sagging);
    note(&e.hogging, hogging);
    note(&e.shear, shear);
    out
}
