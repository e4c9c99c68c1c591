//! The equations that an answer shows as steps. Each is called with the numbers that the
//! analysis uses; the beam solver itself is in `beam`.

use crate::quantity::{Force, Length, Size};
use crate::source::{
    EULER_BERNOULLI, GROUP_SPACING_3D, LAYOUT_ENUMERATION, PATTERN_SUPERPOSITION, STATICS_CLOSURE,
    TRIBUTARY_PRACTICE,
};
use crate::trace::Trace;

/// Total of one load case.
///
/// W_i = sum(q l) + sum(P); q line loads (N/m) on lengths l (m), P point loads (N),
/// downwards positive; any value. Source: statics.
pub(super) fn case_load(total: f64, loads: usize, trace: &mut Trace) -> Force {
    trace.step(
        "W_i",
        "sum(q l) + sum(P)",
        Force::from_si(total),
        [("n_loads", (loads as f64).into())],
        &STATICS_CLOSURE,
    )
}

/// Load of one combination.
///
/// W = sum(gamma_i W_i); gamma_i factor of load case i, W_i its total (N), downwards
/// positive; any value. Source: statics.
pub(super) fn combined_load(totals: &[f64], factors: &[f64], trace: &mut Trace) -> Force {
    let sum = totals.iter().zip(factors).map(|(w, f)| w * f).sum();
    trace.step(
        "W",
        "sum(gamma_i W_i)",
        Force::from_si(sum),
        [("n_cases", (totals.len() as f64).into())],
        &STATICS_CLOSURE,
    )
}

/// Angular distortion between two piles.
///
/// beta = delta/l; delta difference of their settlements (m), l their distance (m); l > 0.
/// Source: geometry.
pub(super) fn angular_distortion(difference: Size, distance: Length, trace: &mut Trace) -> f64 {
    trace.step(
        "beta",
        "delta/l",
        difference.si() / distance.si(),
        [("delta", difference.into()), ("l", distance.into())],
        &STATICS_CLOSURE,
    )
}

/// Reaction of a pile on the beams that pass over it or end on it.
///
/// R = sum over beams of (V_right - V_left) + P; shears beside the pile (N), P force on
/// the pile itself (N); positive in compression. Source: equilibrium of the node, shears
/// by the direct stiffness method.
pub(super) fn pile_reaction(left: Force, right: Force, force: Force, trace: &mut Trace) -> Force {
    trace.step(
        "R",
        "V_right - V_left + P",
        right - left + force,
        [
            ("V_right", right.into()),
            ("V_left", left.into()),
            ("P", force.into()),
        ],
        &EULER_BERNOULLI,
    )
}

/// Greatest reaction of a pile over all ways to load the spans.
///
/// R_max = R - sum of min(0, gamma r_i); R with all loads everywhere, r_i that of part i
/// alone (N), gamma factor of its load case; any value, positive in compression. Source:
/// superposition.
pub(super) fn pattern_reaction(full: Force, most: Force, trace: &mut Trace) -> Force {
    trace.step(
        "R_max",
        "R - sum of min(0, gamma r_i)",
        most,
        [("R", full.into()), ("taken away", (full - most).into())],
        &PATTERN_SUPERPOSITION,
    )
}

/// Tributary load against the reaction of the continuous beam.
///
/// d = R_t/R - 1; R_t by half spans (N), R continuous beam (N), R not 0. Source: common
/// practice against statics.
pub(super) fn tributary_difference(tributary: Force, reaction: Force, trace: &mut Trace) -> f64 {
    trace.step(
        "d",
        "R_t/R - 1",
        tributary / reaction - 1.0,
        [("R_t", tributary.into()), ("R", reaction.into())],
        &TRIBUTARY_PRACTICE,
    )
}

/// Fewest piles that can carry a load.
///
/// n >= W/P_a; W total load of a combination (N), P_a capacity of a pile (N), P_a > 0.
/// Upward reactions only raise it. Source: statics.
pub(super) fn load_bound(load: Force, capacity: Force, trace: &mut Trace) -> f64 {
    trace.step(
        "n",
        "W/P_a",
        load / capacity,
        [("W", load.into()), ("P_a", capacity.into())],
        &LAYOUT_ENUMERATION,
    )
}

/// Least distance between piles by their helices.
///
/// s_min = n D; n diameters from centre to centre (3), D diameter of the largest helix
/// (m), D > 0. Source: practice of evaluations, no reduction of a group from there on.
pub(super) fn helix_spacing(helix: Size, ratio: f64, trace: &mut Trace) -> Length {
    trace.step(
        "s_min",
        "n D",
        Length::from(helix) * ratio,
        [("n", ratio.into()), ("D", helix.into())],
        &GROUP_SPACING_3D,
    )
}
