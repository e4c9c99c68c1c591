//! Tables of the bearing factors by friction angle, and in clay by depth.

use super::codes::{methods, warnings};
use super::families::bearing_factors;
use super::options::{FootingLocalShear, FootingMethod};
use super::outcome::{DepthFactorRow, FrictionFactorRow, FrictionFactorTable};
use crate::bearing::factors::local_shear_angle;
use crate::bearing::shape_depth::{dc_skempton, sc_skempton};
use crate::contract::Work;
use crate::quantity::{Angle, AngleUnit};
use crate::source::SKEMPTON_1951;

/// Factors of one theory by friction angle.
pub(super) fn by_friction(
    method: FootingMethod,
    angles: &[Angle],
    local_shear: FootingLocalShear,
    work: &mut Work,
) -> FrictionFactorTable {
    work.method(method.def());
    if local_shear == FootingLocalShear::TwoThirds {
        work.method(&methods::FOOTING_LOCAL_SHEAR);
    }
    let rows = angles
        .iter()
        .map(|&angle| {
            let trace = &mut work.trace;
            trace.about(|| {
                let degrees = crate::quantity::round9(angle.get(AngleUnit::Deg));
                format!("{} at {degrees} deg", method.name())
            });
            let used = match local_shear {
                FootingLocalShear::None => angle,
                FootingLocalShear::TwoThirds => local_shear_angle(angle, trace),
            };
            let n = bearing_factors(method, used, trace);
            FrictionFactorRow {
                friction_angle: angle,
                used_friction_angle: used,
                cohesion_factor: n.cohesion,
                overburden_factor: n.overburden,
                width_factor: n.width,
                width_factor_interpolated: n.interpolated,
            }
        })
        .collect::<Vec<_>>();
    let read = rows.iter().filter(|r| r.width_factor_interpolated).count();
    if read > 0 {
        work.warn(
            &warnings::FOOTING_WIDTH_FACTOR_TABLE,
            format!("{read} of {} rows of the table of factors", rows.len()),
        );
    }
    FrictionFactorTable { method, rows }
}

/// Factor in clay by depth.
///
/// N_c = 5 s_c d_c; s_c shape and d_c depth factor of Skempton. Range: phi = 0. Source:
/// Skempton 1951, as UFC 3-220-20 eq. 6-39. Sign: none.
pub(super) fn by_depth(ratios: &[f64], shape: f64, work: &mut Work) -> Vec<DepthFactorRow> {
    work.method(&methods::FOOTING_SKEMPTON);
    let trace = &mut work.trace;
    ratios
        .iter()
        .map(|&ratio| {
            trace.about(|| format!("clay at {} widths", crate::quantity::round9(ratio)));
            let s = sc_skempton(shape, trace);
            let d = dc_skempton(ratio, trace);
            DepthFactorRow {
                depth_ratio: ratio,
                shape_factor: s,
                depth_factor: d,
                cohesion_factor: trace.step(
                    "N_c",
                    "5 s_c d_c",
                    5.0 * s * d,
                    [("s_c", s.into()), ("d_c", d.into())],
                    &SKEMPTON_1951,
                ),
            }
        })
        .collect()
}
