//! Adhesion of clay and silt to a round shaft above the top helix, where it is asked for.

use super::ground::{Disc, Ground};
use super::law::Law;
use super::solve::Witness;
use super::zone::parts_between;
use crate::math;
use crate::quantity::{Force, Length, Size, SoilStress};
use crate::source::ALPHA_API;
use crate::trace::Trace;

/// Greatest height over which alpha is taken at mid-height, m.
const SLICE_M: f64 = 0.25;

/// Adhesion on the shaft from the ignored depth to one diameter above the top helix; nil
/// where it is not asked for.
pub(crate) fn adhesion(
    ground: &Ground,
    discs: &[Disc],
    trace: &mut Trace,
    witness: &mut impl Witness,
) -> Force {
    let (Some(ignored), Some(top)) = (ground.settings.adhesion_ignored_depth, discs.first()) else {
        return Force::ZERO;
    };
    let from = ignored.max(ground.settings.no_credit_above);
    let to = top.depth - Length::from(top.diameter);
    let perimeter = ground.shaft.perimeter();
    let mut total = Force::ZERO;
    for part in parts_between(ground.strata, from, to, Length::ZERO) {
        let Law::Undrained { su } = ground.laws[part.layer] else {
            continue;
        };
        witness.adheres(part.layer, trace);
        // the last bit of a converted depth must not add a slice
        let slices = (part.height() / SLICE_M - 1e-9).ceil().max(1.0);
        let height = Length::from_si(part.height() / slices);
        for i in 0..slices as usize {
            let middle = part.top + height * (i as f64 + 0.5);
            let stress = ground.strata.effective_stress(middle);
            let alpha = alpha_api(su, stress, trace);
            total = total + slice_adhesion(perimeter, height, su, alpha, trace);
        }
    }
    total
}

/// Share of the undrained strength that adheres to a shaft.
///
/// alpha = 0.5 psi^-0.5 for psi up to 1, 0.5 psi^-0.25 above, at most 1; psi = s_u/s'_v, s_u
/// undrained strength and s'_v vertical effective stress (Pa). Range: s'_v above 0. Source: API
/// RP 2A. Sign: none.
pub fn alpha_api(su: SoilStress, stress: SoilStress, trace: &mut Trace) -> f64 {
    let psi = su.si() / stress.si();
    let alpha = if psi <= 1.0 {
        0.5 * math::pow(psi, -0.5)
    } else {
        0.5 * math::pow(psi, -0.25)
    };
    trace.step(
        "alpha",
        "0.5 psi^-0.5 (psi <= 1) or 0.5 psi^-0.25, at most 1; psi = s_u/s'_v",
        alpha.min(1.0),
        [("s_u", su.into()), ("s'_v", stress.into())],
        &ALPHA_API,
    )
}

/// Adhesion on a slice of shaft.
///
/// Q = alpha s_u p h; alpha share, s_u undrained strength (Pa), p perimeter and h height (m).
/// Range: round shaft. Source: API RP 2A. Sign: against the load.
fn slice_adhesion(
    perimeter: Size,
    height: Length,
    su: SoilStress,
    alpha: f64,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "Q_slice",
        "alpha s_u p h",
        Force::from_si(alpha * su.si() * perimeter.si() * height.si()),
        [
            ("alpha", alpha.into()),
            ("s_u", su.into()),
            ("p", perimeter.into()),
            ("h", height.into()),
        ],
        &ALPHA_API,
    )
}
