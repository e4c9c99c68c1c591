//! The equations of a pile as a spring.

use crate::quantity::{Force, Size, SpringStiffness};
use crate::source::{DERIVED, SPRINGS_IN_SERIES};
use crate::trace::Trace;

/// Load over movement.
///
/// k = P/w; P load (N), w movement of the head under it (m). Range: both above 0. Source:
/// definition of a secant. Sign: positive downwards.
pub(super) fn secant(load: Force, movement: Size, trace: &mut Trace) -> SpringStiffness {
    trace.step(
        "k",
        "P/w",
        SpringStiffness::from_si(load.si() / movement.si()),
        [("P", load.into()), ("w", movement.into())],
        &DERIVED,
    )
}

/// Shaft and helices one after the other.
///
/// k = 1/(1/k_s + 1/k_h); k_s load over shortening of the shaft (A E/L with the load that is
/// left in it), k_h load over movement of the lowest helix (N/m). Range: both above 0.
/// Source: springs in series.
pub(super) fn in_series(
    shaft: SpringStiffness,
    helix: SpringStiffness,
    trace: &mut Trace,
) -> SpringStiffness {
    let k = 1.0 / (1.0 / shaft.si() + 1.0 / helix.si());
    trace.step(
        "k",
        "1/(1/k_s + 1/k_h)",
        SpringStiffness::from_si(k),
        [("k_s", shaft.into()), ("k_h", helix.into())],
        &SPRINGS_IN_SERIES,
    )
}
