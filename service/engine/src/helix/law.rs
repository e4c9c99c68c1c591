//! What of the laws of bearing depends on a layer alone: factors of its friction angle,
//! made once per layer and direction. What a helix makes of them is in `bearing.rs`.

use super::cylinder::at_rest_shear_ratio;
use super::methods::{DrainedBearing, LocalShear, WidthTerm};
use super::pile::AxialDirection;
use super::settings::Settings;
use super::uplift::{AngleRow, BREAKOUT_ROWS, CYLINDER_ROWS, Friction, row_at};
use crate::bearing::factors;
use crate::quantity::{Angle, SoilStress};
use crate::soil::{Strata, Strength};
use crate::trace::Trace;

/// Law of a layer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Law {
    /// Clay and silt.
    Undrained { su: SoilStress },
    /// Sand and gravel.
    Drained(DrainedLaw),
    /// Fill, organic and frozen soil, and rock.
    None,
}

/// Factors of sand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct DrainedLaw {
    /// The friction angle as it is.
    pub friction: Friction,
    /// The friction angle in the bearing factors.
    pub reduced: Angle,
    /// Effective cohesion in the bearing factors.
    pub cohesion: SoilStress,
    /// N_q without depth factor.
    pub nq: f64,
    /// N_c; 0 where it is not needed.
    pub nc: f64,
    /// N_gamma; 0 where it is not needed.
    pub ngamma: f64,
    /// Row of the breakout factor.
    pub breakout: AngleRow,
    /// Row of K_u on the cylinder.
    pub cylinder: AngleRow,
    /// K tan phi on the cylinder at rest.
    pub at_rest: f64,
}

/// The laws of all layers in one direction. Factors are recorded for the layers that reach
/// between `from` and `to`, m.
pub(crate) fn laws(
    strata: &Strata,
    direction: AxialDirection,
    s: &Settings,
    (from, to): (f64, f64),
    trace: &mut Trace,
) -> Vec<Law> {
    let mut off = Trace::off();
    strata
        .layers
        .iter()
        .map(|layer| match layer.strength {
            Strength::Undrained { su } => Law::Undrained { su },
            Strength::Drained { phi, cohesion } => {
                let touched = layer.bottom.si() > from && layer.top.si() < to;
                let trace = if touched { &mut *trace } else { &mut off };
                trace.about(|| format!("layer {} in {}", layer.label, direction.name()));
                Law::Drained(drained(phi, cohesion, direction, s, trace))
            }
            Strength::NoCredit | Strength::Rock => Law::None,
        })
        .collect()
}

fn drained(
    phi: Angle,
    cohesion: SoilStress,
    direction: AxialDirection,
    s: &Settings,
    trace: &mut Trace,
) -> DrainedLaw {
    let pushed = direction == AxialDirection::Compression;
    let cohesive = pushed && cohesion > SoilStress::ZERO;
    let (reduced, cohesion) = match s.local_shear {
        LocalShear::None => (phi, cohesion),
        LocalShear::TwoThirds if cohesive => (
            factors::local_shear_angle(phi, trace),
            factors::local_shear_cohesion(cohesion, trace),
        ),
        LocalShear::TwoThirds => (factors::local_shear_angle(phi, trace), cohesion),
    };
    let terzaghi = s.drained_bearing == DrainedBearing::Terzaghi1943;
    let nq = if terzaghi {
        factors::nq_terzaghi(reduced, trace)
    } else {
        factors::nq_prandtl(reduced, trace)
    };
    let nc = match (cohesive, terzaghi) {
        (false, _) => 0.0,
        (true, true) => factors::nc_terzaghi(reduced, trace),
        (true, false) => factors::nc_prandtl(reduced, trace),
    };
    // d_q stays out of N_gamma: the factors of the width term are those of the plain N_q
    let ngamma = match (
        pushed && s.width_term == WidthTerm::Include,
        s.drained_bearing,
    ) {
        (false, _) => 0.0,
        (true, DrainedBearing::Hansen1970) => factors::ngamma_hansen(nq, reduced, trace),
        (true, DrainedBearing::Meyerhof1963) => factors::ngamma_meyerhof(nq, reduced, trace),
        (true, DrainedBearing::Vesic1973 | DrainedBearing::Terzaghi1943) => {
            factors::ngamma_vesic(nq, reduced, trace)
        }
    };
    DrainedLaw {
        friction: Friction::of(phi),
        reduced,
        cohesion,
        nq,
        nc,
        ngamma,
        breakout: row_at(BREAKOUT_ROWS.value, phi),
        cylinder: row_at(CYLINDER_ROWS.value, phi),
        at_rest: at_rest_shear_ratio(phi, &mut Trace::off()),
    }
}
