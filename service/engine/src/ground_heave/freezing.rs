//! Heave by freezing from its two parts, for a frost depth that is known. Shared with the
//! void form of `frost-embedment`.

use super::codes::{methods, refusals, warnings};
use super::constants::{ICE_VOLUME, PORE_EXPANSION, SEGREGATION_DEPTH_MIN};
use super::equations::{self, segregation_heave};
use super::outcome::{FreezingHeave, IceSegregationHeave, PoreFreezingHeave};
use super::request::{IceSegregation, PoreFreezing};
use crate::contract::{Issue, Work, utilisation};
use crate::quantity::{Length, SegregationPotential, Size};
use crate::source::{DERIVED, KONRAD_MORGENSTERN_1981, SEGREGATION_INTEGRAL};
use crate::trace::Trace;

/// Every fault of the two parts; `at` points to their parent.
pub fn faults(
    at: &str,
    in_situ: Option<&PoreFreezing>,
    segregation: Option<&IceSegregation>,
    frost_depth: Length,
) -> Vec<Issue> {
    let mut issues = Vec::new();
    if in_situ.is_none() && segregation.is_none() {
        issues.push(Issue::new(
            at,
            &refusals::FROST_HEAVE_DATA_MISSING,
            "send `in_situ` (pores and their water), `segregation` (its potential and the freezing index), or both",
        ));
    }
    if let Some(ice) = segregation {
        issues.extend(of_ice(&format!("{at}/segregation"), ice, frost_depth));
    }
    issues
}

/// What keeps lenses of ice from being calculated.
fn of_ice(at: &str, ice: &IceSegregation, frost_depth: Length) -> Vec<Issue> {
    let mut issues = Vec::new();
    let shown = |depth: f64| Length::ROLE.in_both_systems(depth);
    let is_deep = utilisation(SEGREGATION_DEPTH_MIN.si(), frost_depth.si()).1;
    if !is_deep {
        issues.push(
            Issue::new(
                at,
                &refusals::SEGREGATION_WITHOUT_FROST_DEPTH,
                format!("the ground freezes to {} only", shown(frost_depth.si())),
            )
            .limit(shown(SEGREGATION_DEPTH_MIN.si()))
            .source(&SEGREGATION_INTEGRAL),
        );
    }
    let Some(potential) = ice.potential else {
        issues.push(
            Issue::new(
                at,
                &refusals::SEGREGATION_POTENTIAL_MISSING,
                "send `potential` from a freezing test or from heave that was measured; leave `segregation` out to have the pore water alone",
            )
            .source(&KONRAD_MORGENSTERN_1981),
        );
        return issues;
    };
    let silent = &mut Trace::off();
    let potential = under_load(potential, ice, silent);
    let index = ice.surface_freezing_index;
    let lenses = segregation_heave(ICE_VOLUME.value, potential, index, frost_depth, silent);
    if is_deep && !utilisation(lenses.si(), frost_depth.si()).1 {
        issues.push(
            Issue::new(
                at,
                &refusals::SEGREGATION_BEYOND_FROST_DEPTH,
                format!(
                    "{} of ice in {} of frozen ground",
                    shown(lenses.si()),
                    shown(frost_depth.si())
                ),
            )
            .limit(shown(frost_depth.si()))
            .source(&DERIVED),
        );
    }
    issues
}

/// The potential under the load that was sent.
fn under_load(
    potential: SegregationPotential,
    ice: &IceSegregation,
    trace: &mut Trace,
) -> SegregationPotential {
    match &ice.load_reduction {
        Some(load) => {
            equations::segregation_under_load(potential, load.sensitivity, load.pressure, trace)
        }
        None => potential,
    }
}

/// Heave of parts that have no faults; `None` where neither was sent.
pub fn heave(
    in_situ: Option<&PoreFreezing>,
    segregation: Option<&IceSegregation>,
    frost_depth: Length,
    work: &mut Work,
) -> Option<FreezingHeave> {
    if in_situ.is_none() && segregation.is_none() {
        return None;
    }
    work.trace.about(|| "heave by freezing".to_owned());
    let in_situ = in_situ.map(|pores| of_pores(pores, frost_depth, work));
    let segregation = segregation.and_then(|ice| of_lenses(ice, frost_depth, work));
    let part = |heave: Option<Size>| heave.unwrap_or(Size::ZERO);
    let movement = equations::freezing_heave(
        part(in_situ.as_ref().map(|h| h.movement)),
        part(segregation.as_ref().map(|h| h.movement)),
        &mut work.trace,
    );
    work.trace.about(String::new);
    match (&in_situ, &segregation) {
        (Some(_), None) => work.warn(
            &warnings::FROST_HEAVE_INCOMPLETE,
            "the pore water alone is counted; ice lenses heave susceptible soil several times as far",
        ),
        (None, Some(_)) => work.warn(
            &warnings::FROST_HEAVE_INCOMPLETE,
            "the ice lenses alone are counted; the pore water freezes too",
        ),
        _ => {}
    }
    Some(FreezingHeave {
        frost_depth,
        in_situ,
        segregation,
        movement,
    })
}

fn of_pores(pores: &PoreFreezing, frost_depth: Length, work: &mut Work) -> PoreFreezingHeave {
    work.method(&methods::FROST_HEAVE_IN_SITU);
    let expansion = work.take(&PORE_EXPANSION);
    let volume_increase_ratio = equations::freezing_volume(
        expansion,
        pores.porosity_ratio,
        pores.saturation_ratio,
        &mut work.trace,
    );
    PoreFreezingHeave {
        volume_increase_ratio,
        movement: equations::in_situ_heave(volume_increase_ratio, frost_depth, &mut work.trace),
    }
}

fn of_lenses(
    ice: &IceSegregation,
    frost_depth: Length,
    work: &mut Work,
) -> Option<IceSegregationHeave> {
    let potential = ice.potential?;
    work.method(&methods::FROST_HEAVE_SEGREGATION);
    let ice_volume = work.take(&ICE_VOLUME);
    let potential_under_load = under_load(potential, ice, &mut work.trace);
    Some(IceSegregationHeave {
        potential,
        potential_under_load,
        surface_freezing_index: ice.surface_freezing_index,
        reference: ice.reference.clone(),
        movement: segregation_heave(
            ice_volume,
            potential_under_load,
            ice.surface_freezing_index,
            frost_depth,
            &mut work.trace,
        ),
    })
}
