//! A section by CSA A23.3:19: the equations in their order. The equations are in `csa`.

use super::codes::refusals;
use super::constants::{AGGREGATE_SIZE, CSA_FACTORS, CsaFactors};
use super::outcome::{FlexuralStrength, OneWayShear, SectionStrength};
use super::request::{ReinforcedRectangle, SectionRigidity};
use super::section::Face;
use super::{csa, flexure};
use crate::contract::{Issue, Work};
use crate::quantity::{FlexuralRigidity, Force, Moment, Size, SteelArea, SteelStress, round9};
use crate::source::CSA_A23_3_19_FLEXURE;
use crate::trace::Trace;

pub(super) fn strength(
    section: &ReinforcedRectangle,
    pointer: &str,
    (bottom, top): (Size, Size),
    work: &mut Work,
) -> Result<SectionStrength, Vec<Issue>> {
    let factors = work.take_table(&CSA_FACTORS);
    let trace = &mut work.trace;
    let mut issues = Vec::new();
    let sagging = face(section, &factors, Face::Bottom, bottom, trace);
    let hogging = face(section, &factors, Face::Top, top, trace);
    let limit = csa::greatest_axis_ratio(section.steel_yield, trace);
    for (face, own) in [(Face::Bottom, &sagging), (Face::Top, &hogging)] {
        let ratio = round9(own.neutral_axis_depth / own.effective_depth);
        if ratio > round9(limit) {
            issues.push(
                Issue::new(
                    format!("{pointer}/{}/area", face.name()),
                    &refusals::SECTION_OVER_REINFORCED,
                    format!("neutral axis at {ratio} of the effective depth"),
                )
                .limit(format!("at most {}", round9(limit)))
                .source(&CSA_A23_3_19_FLEXURE),
            );
        }
    }
    if !issues.is_empty() {
        return Err(issues);
    }
    let light = section.lightweight_factor.unwrap_or(1.0);
    let (fc, b, h) = (section.concrete_strength, section.width, section.depth);
    let on_concrete = (factors.concrete_factor, light);
    let shear = shear(section, &factors, bottom.min(top), work);
    let trace = &mut work.trace;
    let threshold = csa::torsion_threshold(on_concrete, fc, b, h, trace);
    let modulus = match section.concrete_unit_weight {
        Some(weight) => csa::elastic_modulus_by_weight(fc, weight, trace),
        None => csa::elastic_modulus(fc, trace),
    };
    let gross = flexure::gross_rigidity(modulus, b, h, trace);
    let mut cracked = |area: SteelArea, d: Size| -> FlexuralRigidity {
        flexure::cracked_rigidity(modulus, factors.steel_modulus, area, b, d, trace)
    };
    let cracked = cracked(section.bottom.area, bottom).min(cracked(section.top.area, top));
    let rigidity = match &section.rigidity {
        None | Some(SectionRigidity::Cracked(_)) => cracked,
        Some(SectionRigidity::Gross(_)) => gross,
        Some(SectionRigidity::Effective(e)) => {
            let stress = csa::cracking_stress(light, fc, trace);
            let cracking = flexure::cracking_moment(stress, b, h, trace);
            csa::effective_rigidity((e.service_moment, cracking), (cracked, gross), trace)
        }
    };
    Ok(SectionStrength {
        code: section.code,
        sagging,
        hogging,
        shear,
        torsion_threshold: threshold,
        elastic_modulus: modulus,
        gross_rigidity: gross,
        cracked_rigidity: cracked,
        rigidity,
    })
}

fn block(section: &ReinforcedRectangle, factors: &CsaFactors, trace: &mut Trace) -> SteelStress {
    let alpha = csa::block_stress_ratio(section.concrete_strength, trace);
    alpha * factors.concrete_factor * section.concrete_strength
}

fn face(
    section: &ReinforcedRectangle,
    factors: &CsaFactors,
    face: Face,
    depth: Size,
    trace: &mut Trace,
) -> FlexuralStrength {
    let steel = face.steel(section);
    let tension = Force::from_si(factors.steel_factor * steel.si() * section.steel_yield.si());
    let stress = block(section, factors, trace);
    let a = flexure::stress_block(tension, stress, section.width, trace);
    let axis = a / csa::block_ratio(section.concrete_strength, trace);
    FlexuralStrength {
        effective_depth: depth,
        stress_block_depth: a,
        neutral_axis_depth: axis,
        steel_strain_ratio: flexure::steel_strain(factors.concrete_strain, depth, axis, trace),
        strength_reduction_factor: None,
        moment: flexure::block_moment(tension, depth, a, trace),
        minimum_steel: csa::minimum_steel(
            section.concrete_strength,
            section.steel_yield,
            section.width,
            section.depth,
            trace,
        ),
    }
}

fn shear(
    section: &ReinforcedRectangle,
    factors: &CsaFactors,
    effective: Size,
    work: &mut Work,
) -> OneWayShear {
    let light = section.lightweight_factor.unwrap_or(1.0);
    let (fc, b) = (section.concrete_strength, section.width);
    let on_concrete = factors.concrete_factor;
    let trace = &mut work.trace;
    let d = csa::shear_depth(effective, section.depth, trace);
    let most = csa::greatest_shear(on_concrete, fc, b, d, trace);
    let counted = section.stirrups.as_ref().map(|s| {
        let least = csa::minimum_stirrup(fc, s.steel_yield, b, s.spacing, trace);
        let area = (s.area, s.spacing);
        let given = csa::stirrup_shear(factors.steel_factor, area, s.steel_yield, d, trace);
        (least, (round9(least / s.area) <= 1.0).then_some(given))
    });
    if let Some((least, Some(given))) = counted {
        let share = csa::shear_share_with_stirrups(trace);
        let concrete = csa::concrete_shear((on_concrete, light, share), fc, (b, d), trace);
        let shear = (concrete + given).min(most);
        let spacing = csa::greatest_spacing(shear, (on_concrete, light), fc, (b, d), trace);
        return OneWayShear {
            depth: d,
            concrete,
            stirrups: Some(given),
            shear,
            minimum_stirrup: Some(least),
            greatest_spacing: Some(spacing),
        };
    }
    let aggregate = section
        .aggregate_size
        .unwrap_or_else(|| work.take(&AGGREGATE_SIZE));
    let trace = &mut work.trace;
    let share = csa::shear_share_without_stirrups(d, aggregate, trace);
    let concrete = csa::concrete_shear((on_concrete, light, share), fc, (b, d), trace);
    let shear = concrete.min(most);
    OneWayShear {
        depth: d,
        concrete,
        stirrups: None,
        shear,
        minimum_stirrup: counted.map(|c| c.0),
        greatest_spacing: counted
            .map(|_| csa::greatest_spacing(shear, (on_concrete, light), fc, (b, d), trace)),
    }
}

/// Steel that a factored moment needs.
pub(super) fn steel_for(
    section: &ReinforcedRectangle,
    own: &FlexuralStrength,
    moment: Moment,
    trace: &mut Trace,
) -> Option<SteelArea> {
    let factors = &CSA_FACTORS.value;
    let stress = block(section, factors, trace);
    let (b, d) = (section.width, own.effective_depth);
    let tension = flexure::tension_for(moment, stress, b, d, trace)?;
    let usable = factors.steel_factor * section.steel_yield.si();
    Some(SteelArea::from_si(tension.si() / usable))
}
