//! Every part solved by itself, some at a time, and the worst sums of them.

use super::beams::BeamParts;
use super::parts::Part;
use super::piles::PileEnvelope;
use crate::beam::{Fault, Load, Shape, Support};
use crate::contract::{Refusal, Work};
use crate::layout::analysis::{BeamEnvelope, Solved};
use crate::layout::combine::Combination;
use crate::layout::frame::Frame;
use crate::layout::outcome::SupportModel;
use crate::layout::plan::Place;

/// Parts that are solved at a time.
const TOGETHER: usize = 32;

/// A plan on its piles with the parts that may be absent.
pub(in crate::layout) struct Asked<'a> {
    pub frame: &'a Frame,
    pub places: &'a [Place],
    pub combinations: &'a [Combination],
    pub parts: &'a [Part],
    /// Whether the beams are asked for too.
    pub beams: bool,
}

/// The worst sums on one support model.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::layout) struct Enveloped {
    pub piles: PileEnvelope,
    /// Extremes of every beam; none where they were not asked for.
    pub beams: Option<Vec<BeamEnvelope>>,
}

/// Why there is no envelope.
pub(in crate::layout) enum Stopped {
    Fault(Fault),
    Refusal(Refusal),
}

/// The worst sums of parts on the supports of `base`, which holds all loads everywhere.
pub(in crate::layout) fn enveloped(
    asked: &Asked<'_>,
    base: &Solved,
    work: &Work,
) -> Result<Enveloped, Stopped> {
    let mut unit = asked.frame.clone();
    let own = base.network.supports.iter().take(asked.places.len());
    // a pile on rock stays where it is among springs
    let springs: Option<Vec<f64>> = (base.supports == SupportModel::Spring).then(|| {
        own.map(|s| match s {
            Support::Spring(k) => *k,
            Support::Rigid | Support::Free => f64::INFINITY,
        })
        .collect()
    });
    let stations: Vec<Vec<Load>> = base
        .solution
        .lines
        .iter()
        .map(|line| line.loads.stations.iter().map(|at| nothing(*at)).collect())
        .collect();
    let mut piles = PileEnvelope::new(asked, base);
    let mut beams = asked.beams.then(|| BeamParts::new(base));
    for (block, parts) in asked.parts.chunks(TOGETHER).enumerate() {
        work.go_on().map_err(Stopped::Refusal)?;
        unit.cases = parts.len();
        // every line is cut where the base is
        unit.loads.clone_from(&stations);
        for (case, part) in parts.iter().enumerate() {
            let loads = part.shapes.iter().map(|shape| Load {
                case,
                shape: *shape,
            });
            unit.loads[part.run].extend(loads);
        }
        let solved = Solved::of(&unit, asked.places, springs.as_deref()).map_err(Stopped::Fault)?;
        for (case, part) in parts.iter().enumerate() {
            piles.add(asked, part, |pile| {
                solved.solution.reaction[pile * parts.len() + case]
            });
            if let Some(beams) = &mut beams {
                beams.add(&solved, case, block * TOGETHER + case);
            }
        }
    }
    Ok(Enveloped {
        piles,
        beams: beams.map(|b| b.envelopes(asked, base)),
    })
}

fn nothing(at: f64) -> Load {
    Load {
        case: 0,
        shape: Shape::Point { at, force: 0.0 },
    }
}
