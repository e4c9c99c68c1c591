//! The winter and the surface: freezing index by its definition, surface factor.

use super::berggren::{Cold, ground_warmth, surface_cold, surface_index, thermal_ratio};
use super::codes::methods;
use super::constants::{
    N_ASPHALT, N_BARE_SOIL, N_CONCRETE, N_SAND_GRAVEL, N_SNOW, N_TREES, N_TURF, N_WIND_SCOURED,
};
use super::outcome::FreezingIndexOutcome;
use super::request::{
    FreezingIndexDefinition, FreezingIndexSource, FreezingWinters, FrostSurface, FrostWinter,
};
use crate::contract::Work;
use crate::quantity::{FreezingIndex, TemperatureDifference};
use crate::source::{CALLER, FREEZING_INDEX_DESIGN, Reference, Sourced};
use crate::trace::Trace;

/// The winter as the methods need it.
#[derive(Debug, Clone)]
pub struct Winter {
    /// The freezing index and how it was found.
    pub index: FreezingIndexOutcome,
    /// Surface factor.
    pub factor: f64,
    /// Where it comes from.
    pub factor_source: &'static Reference,
    /// Freezing index of the surface.
    pub surface_index: FreezingIndex,
    /// Mean cold of the surface.
    pub cold: TemperatureDifference,
    /// Warmth of the ground.
    pub warmth: TemperatureDifference,
    /// Thermal ratio.
    pub alpha: f64,
    /// The same in base SI.
    pub si: Cold,
}

/// Winters that a definition looks at and asks for, and how many of them it takes; none for
/// all of them.
pub fn winters_of(definition: FreezingIndexDefinition) -> Option<(usize, usize)> {
    match definition {
        FreezingIndexDefinition::Mean | FreezingIndexDefinition::Return100 => None,
        FreezingIndexDefinition::Design3In30 => Some((30, 3)),
        FreezingIndexDefinition::ColdestIn10 => Some((10, 1)),
    }
}

/// Least count of winters for a mean.
pub const MEAN_WINTERS: usize = 10;

/// Surface factor of a request that has no faults, with where it comes from.
pub fn factor(surface: Option<&FrostSurface>, work: &mut Work) -> (f64, &'static Reference) {
    let named: &'static Sourced<f64> = match surface {
        None | Some(FrostSurface::WindScouredBeam(_)) => &N_WIND_SCOURED,
        Some(FrostSurface::Snow(_)) => &N_SNOW,
        Some(FrostSurface::ConcretePavement(_)) => &N_CONCRETE,
        Some(FrostSurface::AsphaltPavement(_)) => &N_ASPHALT,
        Some(FrostSurface::BareSandGravel(_)) => &N_SAND_GRAVEL,
        Some(FrostSurface::BareSoil(_)) => &N_BARE_SOIL,
        Some(FrostSurface::TurfUnderSnow(_)) => &N_TURF,
        Some(FrostSurface::TreesBrushMoss(_)) => &N_TREES,
        Some(FrostSurface::Given(given)) => return (given.factor, &CALLER),
    };
    (work.take(named), named.reference)
}

/// The surface factor by itself.
pub fn factor_of(surface: Option<&FrostSurface>) -> f64 {
    factor(surface, &mut Work::default()).0
}

/// Freezing index from the indices of single winters, the latest last.
///
/// F = mean of all; or mean of the m largest of the latest N (3 of 30, 1 of 10); F_i index of a
/// winter (K s). Range: from 10 winters, from N. Source: permafrost glossary, UFC 3-250-01. Below
/// freezing positive.
pub fn index_of_winters(
    winters: &[FreezingIndex],
    latest_and_taken: Option<(usize, usize)>,
    trace: &mut Trace,
) -> (FreezingIndex, Option<Vec<FreezingIndex>>) {
    let Some((latest, taken)) = latest_and_taken else {
        let mean = winters.iter().copied().sum::<FreezingIndex>() / winters.len() as f64;
        let mean = trace.step("F", "mean of all", mean, [], &FREEZING_INDEX_DESIGN);
        return (mean, None);
    };
    let mut latest = winters[winters.len().saturating_sub(latest)..].to_vec();
    latest.sort_by(|a, b| b.si().total_cmp(&a.si()));
    latest.truncate(taken);
    let mean = latest.iter().copied().sum::<FreezingIndex>() / latest.len() as f64;
    let text = if taken == 1 {
        "largest of the latest 10"
    } else {
        "mean of the 3 largest of the latest 30"
    };
    let mean = trace.step("F", text, mean, [], &FREEZING_INDEX_DESIGN);
    (mean, Some(latest))
}

fn of_winters(sent: &FreezingWinters, work: &mut Work) -> FreezingIndexOutcome {
    work.method(&methods::FREEZING_INDEX_FROM_WINTERS);
    let looked_at = winters_of(sent.definition);
    let (value, coldest) = index_of_winters(&sent.values, looked_at, &mut work.trace);
    let count = looked_at.map_or(sent.values.len(), |(latest, _)| latest);
    FreezingIndexOutcome {
        definition: sent.definition,
        value,
        source: (&FREEZING_INDEX_DESIGN).into(),
        reference: None,
        winter_count: Some(count as u32),
        coldest,
    }
}

/// The freezing index of a winter that has no faults.
pub fn index(source: &FreezingIndexSource, work: &mut Work) -> FreezingIndexOutcome {
    match source {
        FreezingIndexSource::Given(given) => FreezingIndexOutcome {
            definition: given.definition,
            value: given.value,
            source: (&CALLER).into(),
            reference: Some(given.reference.clone()),
            winter_count: None,
            coldest: None,
        },
        FreezingIndexSource::Winters(winters) => of_winters(winters, work),
    }
}

/// The winter of a request that has no faults.
pub fn of(winter: &FrostWinter, surface: Option<&FrostSurface>, work: &mut Work) -> Winter {
    let index = index(&winter.freezing_index, work);
    let (factor, factor_source) = factor(surface, work);
    let trace = &mut work.trace;
    let surface_index = surface_index(factor, index.value, trace);
    let cold = surface_cold(surface_index, winter.season_length, trace);
    let warmth = ground_warmth(winter.mean_annual_temperature, trace);
    Winter {
        index,
        factor,
        factor_source,
        surface_index,
        cold,
        warmth,
        alpha: thermal_ratio(warmth, cold, trace),
        si: Cold {
            v_s: cold.si(),
            v_o: warmth.si(),
            t: winter.season_length.si(),
        },
    }
}
