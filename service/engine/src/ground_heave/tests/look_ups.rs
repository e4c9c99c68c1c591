//! Look-ups: classes at and around each boundary, the disagreement of the schemes, and the
//! rule for expansive soil.

use serde_json::{Value as Json, json};

use super::{answer, q, warned};
use crate::ground_heave::susceptibility::{by_20_um, by_75_um, by_heave_rate, by_potential};
use crate::ground_heave::{
    ExpansiveAnswer, ExpansiveProperty, ExpansiveRule, FrostGroup, FrostSoil, HeaveRateClass,
    SegregationClass,
};
use crate::quantity::{HeaveRate, SegregationPotential, SegregationUnit, VelocityUnit};

/// HV-2: boundaries at 0.5, 1, 2, 4 and 8 mm/day. A rate on a boundary goes up, except 8,
/// above which `very high` is printed.
#[test]
fn hv_2_classes_by_heave_rate() {
    use HeaveRateClass::*;
    for (rate, class) in [
        (0.0, Negligible),
        (0.49, Negligible),
        (0.5, VeryLow),
        (0.99, VeryLow),
        (1.0, Low),
        (1.99, Low),
        (2.0, Medium),
        (3.99, Medium),
        (4.0, High),
        (8.0, High),
        (8.01, VeryHigh),
    ] {
        let sent = HeaveRate::new(rate, VelocityUnit::MmPerDay);
        assert_eq!(by_heave_rate(sent), class, "{rate}");
    }
    // 4 mm/day in inches must not fall below its boundary by a last bit
    let sent = HeaveRate::new(4.0 / 25.4, VelocityUnit::InPerDay);
    assert_eq!(by_heave_rate(sent), High);
}

#[test]
fn groups_by_both_schemes() {
    use FrostGroup::*;
    use FrostSoil::*;
    for (soil, percent, group) in [
        (Gravel, 1.4, Nfs),
        (Gravel, 1.5, Pfs),
        (Gravel, 3.0, S1),
        (Gravel, 6.0, F1),
        (Gravel, 10.0, F2),
        (Gravel, 20.0, F2),
        (Gravel, 20.1, F3),
        (Sand, 2.9, Nfs),
        (Sand, 3.0, Pfs),
        (Sand, 10.0, F2),
        (Sand, 15.1, F3),
        (SandWithFines, 2.9, Nfs),
        (SandWithFines, 3.0, S2),
        (SandWithFines, 6.0, F2),
        (SandWithFines, 15.0, F2),
        (SandWithFines, 15.1, F3),
        (VeryFineSiltySand, 15.0, F2),
        (VeryFineSiltySand, 15.1, F4),
        (Silt, 0.0, F4),
        (VarvedClay, 90.0, F4),
    ] {
        assert_eq!(
            by_20_um(soil, percent / 100.0, 0.0),
            group,
            "{soil:?} {percent}"
        );
    }
    assert_eq!(by_20_um(Clay, 0.5, 0.12), F4);
    assert_eq!(by_20_um(Clay, 0.5, 0.121), F3);
    for (soil, percent, group) in [
        (Gravel, 2.9, BelowGroups),
        (Gravel, 3.0, F1),
        (Gravel, 20.0, F1),
        (Gravel, 20.1, F2),
        (Sand, 2.9, BelowGroups),
        (Sand, 3.0, F2),
        (SandWithFines, 40.0, F2),
        (VeryFineSiltySand, 15.0, F2),
        (VeryFineSiltySand, 15.1, F3),
    ] {
        assert_eq!(
            by_75_um(soil, Some(percent / 100.0)),
            Some(group),
            "{soil:?} {percent}"
        );
        assert_eq!(by_75_um(soil, None), None);
    }
    assert_eq!(by_75_um(Silt, None), Some(F3));
    assert_eq!(by_75_um(Clay, None), Some(F3));
    assert_eq!(by_75_um(VarvedClay, None), Some(F4));
}

/// Boundaries from memory: agreement with the recall only.
#[test]
fn classes_by_segregation_potential() {
    use SegregationClass::*;
    for (value, class) in [
        (0.0, NotSusceptible),
        (0.49, NotSusceptible),
        (0.5, Low),
        (1.5, Medium),
        (3.0, Medium),
        (3.1, Strong),
    ] {
        let sent = SegregationPotential::new(value, SegregationUnit::Mm2PerHK);
        assert_eq!(by_potential(sent), class, "{value}");
    }
}

#[test]
fn the_schemes_disagree_on_silt_and_no_class_gives_a_heave() {
    let a = answer(json!({ "frost": {
        "frost_depth": q(1.2, "m"),
        "susceptibility": { "soil": "silt", "finer_than_20_um_ratio": 0.02, "laboratory_heave_rate": q(9.0, "mm_per_day") }
    } }));
    let found = a.result.susceptibility.as_ref().unwrap();
    assert_eq!(found.group, FrostGroup::F4);
    assert_eq!(found.other_group, Some(FrostGroup::F3));
    assert_eq!(found.groups_agree, Some(false));
    assert_eq!(found.three_percent_met, Some(false));
    assert_eq!(found.laboratory_class, Some(HeaveRateClass::VeryHigh));
    let told = found.disagreement.as_ref().unwrap();
    assert!(told.contains("F4") && told.contains("F3"), "{told}");
    assert!(warned(&a, "frost_groups_disagree"));
    assert!(warned(&a, "susceptible_without_segregation"));
    assert!(a.result.frost.is_none() && a.result.design.is_none());
    // gravel without the coarser share: one scheme only, and nothing to disagree on
    let a = answer(json!({ "frost": {
        "frost_depth": q(1.2, "m"),
        "susceptibility": { "soil": "gravel", "finer_than_20_um_ratio": 0.01 }
    } }));
    let found = a.result.susceptibility.as_ref().unwrap();
    assert_eq!((found.group, found.other_group), (FrostGroup::Nfs, None));
    assert_eq!(found.groups_agree, None);
    assert!(!warned(&a, "susceptible_without_segregation"));
}

/// The rule for expansive soil (EX-3): plasticity index from 15 %, fines and clay size above
/// 10 %, all three; the expansion index above 20 alone decides where it is known.
#[test]
fn ex_3_expansive_soil() {
    use ExpansiveAnswer::*;
    let ask = |soil: Json| answer(json!({ "expansive_soil": soil }));
    for (pi, fines, clay, want) in [
        (Some(0.15), Some(0.101), Some(0.101), Yes),
        (Some(0.149), Some(0.6), Some(0.3), No),
        (Some(0.3), Some(0.10), Some(0.3), No),
        (Some(0.3), Some(0.6), Some(0.10), No),
        (Some(0.3), Some(0.6), None, NotKnown),
        (Some(0.1), None, None, No),
        (Some(0.3), None, None, NotKnown),
    ] {
        let a = ask(json!({
            "plasticity_index_ratio": pi, "passing_75_um_ratio": fines, "finer_than_5_um_ratio": clay
        }));
        let found = a.result.expansive_soil.as_ref().unwrap();
        assert_eq!(found.expansive, want, "{pi:?} {fines:?} {clay:?}");
        assert_eq!(found.decided_by, ExpansiveRule::IndexProperties);
        assert_eq!(warned(&a, "expansive_without_swell"), want == Yes);
        let sent = [pi, fines, clay].iter().flatten().count();
        assert_eq!(found.met.len() + found.not_met.len(), sent);
        assert_eq!(!found.missing.is_empty(), want == NotKnown);
    }
    for (index, want) in [(20.0, No), (20.1, Yes)] {
        let found = ask(json!({ "plasticity_index_ratio": 0.1, "expansion_index_factor": index }))
            .result
            .expansive_soil
            .unwrap();
        assert_eq!(found.expansive, want);
        assert_eq!(found.decided_by, ExpansiveRule::ExpansionIndex);
        assert!(found.not_met.contains(&ExpansiveProperty::PlasticityIndex));
    }
}
