//! From torque to capacity and back: one line of arithmetic each way, and the least of
//! several ultimate capacities. Factors come from `factor.rs` and `safety.rs`.

use super::options::CompressionUltimates;
use super::outcome::UltimateBy;
use crate::quantity::{Force, Torque, TorqueFactor};
use crate::source::{AC358_KT_LISTED, IBC_1810_3_3_1_9, Reference};
use crate::trace::Trace;

/// Ultimate capacity that an installation torque stands for.
///
/// Q = K_t T
///
/// Q ultimate capacity, N; K_t torque factor, 1/m; T installation torque, N m. For helical
/// piles turned steadily into soil; empirical. Source: the form is common to all torque
/// factors (AC358). Positive.
pub fn capacity_by_torque(factor: TorqueFactor, torque: Torque, trace: &mut Trace) -> Force {
    trace.step(
        "Q",
        "K_t T",
        Force::from_si(factor.si() * torque.si()),
        [("K_t", factor.into()), ("T", torque.into())],
        &AC358_KT_LISTED,
    )
}

/// Installation torque that an ultimate capacity needs.
///
/// T = Q / K_t
///
/// T torque, N m; Q required ultimate capacity, N; K_t torque factor, 1/m, above nil. Inverse
/// of [`capacity_by_torque`]. Positive.
pub fn torque_for_capacity(ultimate: Force, factor: TorqueFactor, trace: &mut Trace) -> Torque {
    trace.step(
        "T_req",
        "Q_req / K_t",
        Torque::from_si(ultimate.si() / factor.si()),
        [("Q_req", ultimate.into()), ("K_t", factor.into())],
        &AC358_KT_LISTED,
    )
}

/// Ultimate capacity that a service load needs.
///
/// P_u,req = P FS
///
/// Inverse of [`allowable`]: P service load, N; FS safety factor. Positive.
pub fn ultimate_for_service(
    load: Force,
    safety: f64,
    source: &'static Reference,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "Q_req",
        "P FS",
        load * safety,
        [("P", load.into()), ("FS", safety.into())],
        source,
    )
}

/// Ultimate capacity that a factored load needs.
///
/// R_u,req = P_f / phi
///
/// Inverse of [`factored`]: P_f factored load, N; phi resistance factor, above 0. Positive.
pub fn ultimate_for_factored(
    load: Force,
    phi: f64,
    source: &'static Reference,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "Q_req",
        "P_f / phi",
        load / phi,
        [("P_f", load.into()), ("phi", phi.into())],
        source,
    )
}

/// The least of the ultimate capacities considered; the first of equals.
///
/// P_u = min(P_u,i)
///
/// P_u,i torque correlation and whichever others were sent, N; an absent one is not considered.
/// Source: IBC 1810.3.3.1.9 items 1 to 6. Positive.
pub fn least_ultimate(items: &[(UltimateBy, Force)], trace: &mut Trace) -> (UltimateBy, Force) {
    let mut least = items[0];
    for item in &items[1..] {
        if item.1 < least.1 {
            least = *item;
        }
    }
    if items.len() > 1 {
        trace.step(
            "P_u",
            "least of the ultimate capacities considered",
            least.1,
            [("P_u,torque", items[0].1.into())],
            &IBC_1810_3_3_1_9,
        );
    }
    least
}

/// The other ultimate capacities that were sent, in the order of the clause.
pub(super) fn sent(others: &CompressionUltimates) -> Vec<(UltimateBy, Force)> {
    [
        (UltimateBy::SoilBearing, others.soil_bearing),
        (UltimateBy::LoadTest, others.load_test),
        (UltimateBy::Shaft, others.shaft),
        (UltimateBy::Couplings, others.couplings),
        (UltimateBy::HelixPlates, others.helix_plates),
    ]
    .into_iter()
    .filter_map(|(item, force)| force.map(|f| (item, f)))
    .collect()
}
