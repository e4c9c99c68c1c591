//! Classes of frost susceptibility by every scheme, with their disagreement. A class is
//! never turned into a heave.

use super::codes::{methods, refusals, warnings};
use super::constants::{HEAVE_RATES, SEGREGATION_BOUNDS, THREE_PERCENT};
use super::outcome::{FrostGroup, HeaveRateClass, SegregationClass, SusceptibilityOutcome};
use super::soil_request::{FrostSoil, FrostSusceptibility};
use crate::contract::{Issue, Work};
use crate::quantity::{HeaveRate, SegregationPotential, SegregationUnit, VelocityUnit, round9};
use crate::source::{NHI_FROST_GROUPS, UFC_FROST_GROUPS};

/// Every fault of what was sent of the soil; `at` points to it.
pub(super) fn faults(at: &str, sent: &FrostSusceptibility) -> Vec<Issue> {
    let mut issues = Vec::new();
    let lacks = match sent.soil {
        FrostSoil::Gravel
        | FrostSoil::Sand
        | FrostSoil::SandWithFines
        | FrostSoil::VeryFineSiltySand => sent
            .finer_than_20_um_ratio
            .is_none()
            .then_some("finer_than_20_um_ratio"),
        FrostSoil::Clay => sent
            .plasticity_index_ratio
            .is_none()
            .then_some("plasticity_index_ratio"),
        FrostSoil::Silt | FrostSoil::VarvedClay => None,
    };
    if let Some(name) = lacks {
        issues.push(
            Issue::new(
                at,
                &refusals::SUSCEPTIBILITY_DATA_MISSING,
                format!("send `{name}`"),
            )
            .source(&UFC_FROST_GROUPS),
        );
    }
    if let (Some(fine), Some(coarse)) = (sent.finer_than_20_um_ratio, sent.finer_than_75_um_ratio)
        && fine > coarse
    {
        issues.push(
            Issue::new(
                format!("{at}/finer_than_20_um_ratio"),
                &refusals::FINES_CONTRADICT,
                format!("{fine} finer than 0.02 mm, {coarse} finer than 0.075 mm"),
            )
            .limit(coarse.to_string()),
        );
    }
    issues
}

/// The classes of a soil without faults; `potential` where one was sent.
pub(super) fn classes(
    sent: &FrostSusceptibility,
    potential: Option<SegregationPotential>,
    work: &mut Work,
) -> SusceptibilityOutcome {
    work.method(&methods::FROST_SUSCEPTIBILITY);
    let fine = sent.finer_than_20_um_ratio.unwrap_or_default();
    let plasticity = sent.plasticity_index_ratio.unwrap_or_default();
    let group = by_20_um(sent.soil, fine, plasticity);
    let other_group = by_75_um(sent.soil, sent.finer_than_75_um_ratio);
    let groups_agree = other_group.map(|other| other == group);
    let disagreement = match other_group {
        Some(other) if other != group => Some(told(group, other)),
        _ => None,
    };
    if let Some(text) = &disagreement {
        work.warn(&warnings::FROST_GROUPS_DISAGREE, text.clone());
    }
    SusceptibilityOutcome {
        group,
        group_source: (&UFC_FROST_GROUPS).into(),
        other_group,
        other_group_source: (&NHI_FROST_GROUPS).into(),
        groups_agree,
        disagreement,
        three_percent_met: sent
            .finer_than_20_um_ratio
            .map(|share| from(share, work.take(&THREE_PERCENT))),
        laboratory_heave_rate: sent.laboratory_heave_rate,
        laboratory_class: sent.laboratory_heave_rate.map(|rate| {
            let _ = work.take_table(&HEAVE_RATES);
            by_heave_rate(rate)
        }),
        potential_class: potential.map(|potential| {
            let _ = work.take_table(&SEGREGATION_BOUNDS);
            by_potential(potential)
        }),
    }
}

fn told(group: FrostGroup, other: FrostGroup) -> String {
    format!(
        "{} in the scheme of the share finer than 0.02 mm, {} in that of the share finer than 0.075 mm",
        title(group),
        title(other)
    )
}

/// A group as its scheme prints it.
fn title(group: FrostGroup) -> &'static str {
    match group {
        FrostGroup::BelowGroups => "below the groups",
        FrostGroup::Nfs => "NFS",
        FrostGroup::Pfs => "PFS",
        FrostGroup::S1 => "S1",
        FrostGroup::S2 => "S2",
        FrostGroup::F1 => "F1",
        FrostGroup::F2 => "F2",
        FrostGroup::F3 => "F3",
        FrostGroup::F4 => "F4",
    }
}

/// Whether a value is at or above a boundary, as it is printed.
fn from(value: f64, boundary: f64) -> bool {
    round9(value) >= boundary
}

/// Whether a value is above a boundary, as it is printed.
fn above(value: f64, boundary: f64) -> bool {
    round9(value) > boundary
}

/// Group by the share finer than 0.02 mm. A boundary belongs to the more susceptible group,
/// except the last one, which the table prints as `above`.
pub(super) fn by_20_um(soil: FrostSoil, fine: f64, plasticity: f64) -> FrostGroup {
    use FrostGroup::*;
    match soil {
        FrostSoil::Gravel if above(fine, 0.20) => F3,
        FrostSoil::Gravel if from(fine, 0.10) => F2,
        FrostSoil::Gravel if from(fine, 0.06) => F1,
        FrostSoil::Gravel if from(fine, 0.03) => S1,
        FrostSoil::Gravel if from(fine, 0.015) => Pfs,
        FrostSoil::VeryFineSiltySand if above(fine, 0.15) => F4,
        FrostSoil::Sand | FrostSoil::SandWithFines if above(fine, 0.15) => F3,
        FrostSoil::Sand if from(fine, 0.10) => F2,
        FrostSoil::Sand if from(fine, 0.03) => Pfs,
        FrostSoil::SandWithFines | FrostSoil::VeryFineSiltySand if from(fine, 0.06) => F2,
        FrostSoil::SandWithFines | FrostSoil::VeryFineSiltySand if from(fine, 0.03) => S2,
        FrostSoil::Gravel
        | FrostSoil::Sand
        | FrostSoil::SandWithFines
        | FrostSoil::VeryFineSiltySand => Nfs,
        FrostSoil::Clay if above(plasticity, 0.12) => F3,
        FrostSoil::Clay | FrostSoil::Silt | FrostSoil::VarvedClay => F4,
    }
}

/// Group by the share finer than 0.075 mm; `None` where that share is needed and absent.
pub(super) fn by_75_um(soil: FrostSoil, fine: Option<f64>) -> Option<FrostGroup> {
    use FrostGroup::*;
    match soil {
        FrostSoil::Silt | FrostSoil::Clay => return Some(F3),
        FrostSoil::VarvedClay => return Some(F4),
        _ => {}
    }
    let fine = fine?;
    Some(match soil {
        FrostSoil::Gravel if above(fine, 0.20) => F2,
        FrostSoil::Gravel if from(fine, 0.03) => F1,
        FrostSoil::VeryFineSiltySand if above(fine, 0.15) => F3,
        FrostSoil::Gravel => BelowGroups,
        _ if from(fine, 0.03) => F2,
        _ => BelowGroups,
    })
}

/// Class by the heave rate of a freezing test.
pub(super) fn by_heave_rate(rate: HeaveRate) -> HeaveRateClass {
    use HeaveRateClass::*;
    let rate = rate.get(VelocityUnit::MmPerDay);
    let [b1, b2, b3, b4, b5] = HEAVE_RATES.value;
    match rate {
        r if above(r, b5) => VeryHigh,
        r if from(r, b4) => High,
        r if from(r, b3) => Medium,
        r if from(r, b2) => Low,
        r if from(r, b1) => VeryLow,
        _ => Negligible,
    }
}

/// Class by the segregation potential.
pub(super) fn by_potential(potential: SegregationPotential) -> SegregationClass {
    let potential = potential.get(SegregationUnit::Mm2PerHK);
    let [b1, b2, b3] = SEGREGATION_BOUNDS.value;
    match potential {
        p if above(p, b3) => SegregationClass::Strong,
        p if from(p, b2) => SegregationClass::Medium,
        p if from(p, b1) => SegregationClass::Low,
        _ => SegregationClass::NotSusceptible,
    }
}

/// Whether ice lenses are to be expected in a group.
pub(super) fn is_susceptible(group: FrostGroup) -> bool {
    group > FrostGroup::Pfs
}
