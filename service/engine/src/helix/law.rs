//! What of the laws of bearing depends on a layer alone: factors of its friction angle,
//! made once per layer and direction. What a helix makes of them is in `bearing.rs`.

use super::cylinder::at_rest_shear_ratio;
use super::methods::{DrainedBearing, LocalShear, ShapeDepthFactors, WidthTerm};
use super::pile::AxialDirection;
use super::settings::Settings;
use super::uplift::{AngleRow, BREAKOUT_ROWS, CYLINDER_ROWS, Friction, row_at};
use crate::bearing::{factors, shape_depth};
use crate::quantity::{Angle, SoilStress};
use crate::soil::{Strata, Strength};
use crate::source::CALLER;
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
    /// Shape factors of the N_q and N_c terms; 1 where none are in force.
    pub shape: (f64, f64),
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
    let nq = match s.drained_bearing {
        DrainedBearing::Terzaghi1943 => factors::nq_terzaghi(reduced, trace),
        DrainedBearing::Own(own) => trace.step("N_q", "as sent", own.bearing_factor, [], &CALLER),
        DrainedBearing::Vesic1973 | DrainedBearing::Hansen1970 | DrainedBearing::Meyerhof1963 => {
            factors::nq_prandtl(reduced, trace)
        }
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
        // the width term is refused where a method has no N_gamma
        (
            true,
            DrainedBearing::Vesic1973 | DrainedBearing::Terzaghi1943 | DrainedBearing::Own(_),
        ) => factors::ngamma_vesic(nq, reduced, trace),
    };
    DrainedLaw {
        friction: Friction::of(phi),
        reduced,
        cohesion,
        nq,
        nc,
        ngamma,
        shape: if pushed && s.shape_depth_factors == ShapeDepthFactors::Published {
            shape(reduced, nq, nc, s, trace)
        } else {
            (1.0, 1.0)
        },
        breakout: row_at(BREAKOUT_ROWS.value, phi),
        cylinder: row_at(CYLINDER_ROWS.value, phi),
        at_rest: at_rest_shear_ratio(phi, &mut Trace::off()),
    }
}

/// Shape factors of a circle on the N_q and N_c terms, by the family in force.
fn shape(phi: Angle, nq: f64, nc: f64, s: &Settings, trace: &mut Trace) -> (f64, f64) {
    // a circle counts as a square
    const CIRCLE: f64 = 1.0;
    let mut of_cohesion = |of: &dyn Fn(&mut Trace) -> f64| if nc > 0.0 { of(trace) } else { 1.0 };
    match s.drained_bearing {
        DrainedBearing::Vesic1973 => {
            let sc = of_cohesion(&|t| shape_depth::sc_de_beer(nq, nc, CIRCLE, t));
            (shape_depth::sq_vesic(phi, CIRCLE, trace), sc)
        }
        DrainedBearing::Hansen1970 => {
            let sc = of_cohesion(&|t| shape_depth::sc_de_beer(nq, nc, CIRCLE, t));
            (shape_depth::sq_hansen(phi, CIRCLE, trace), sc)
        }
        DrainedBearing::Meyerhof1963 => {
            let sc = of_cohesion(&|t| shape_depth::sc_meyerhof(phi, CIRCLE, t));
            let sq = if shape_depth::meyerhof_in_range(phi) {
                shape_depth::sq_meyerhof(phi, CIRCLE, trace)
            } else {
                1.0
            };
            (sq, sc)
        }
        DrainedBearing::Terzaghi1943 => {
            let sc = of_cohesion(&|t| shape_depth::sc_terzaghi(CIRCLE, t));
            (1.0, sc)
        }
        DrainedBearing::Own(_) => (1.0, 1.0),
    }
}
