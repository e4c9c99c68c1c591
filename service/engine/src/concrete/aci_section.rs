//! A section by ACI 318-19: the equations in their order. The equations are in `aci`.

use super::codes::refusals;
use super::constants::{ACI_FACTORS, AciFactors};
use super::outcome::{FlexuralStrength, OneWayShear, SectionStrength};
use super::request::{ReinforcedRectangle, SectionRigidity};
use super::section::Face;
use super::{aci, flexure};
use crate::contract::{Issue, Work};
use crate::quantity::{FlexuralRigidity, Force, Moment, Size, SteelArea, SteelStress, round9};
use crate::source::ACI_318_19_FLEXURE;
use crate::trace::Trace;

/// Stress of the block over the strength of the concrete, by definition of the block.
const BLOCK: f64 = 0.85;

pub(super) fn strength(
    section: &ReinforcedRectangle,
    pointer: &str,
    (bottom, top): (Size, Size),
    work: &mut Work,
) -> Result<SectionStrength, Vec<Issue>> {
    let factors = work.take_table(&ACI_FACTORS);
    let trace = &mut work.trace;
    let mut issues = Vec::new();
    let sagging = face(section, &factors, Face::Bottom, bottom, trace);
    let hogging = face(section, &factors, Face::Top, top, trace);
    let limit = aci::tension_controlled_strain(section.steel_yield, factors.steel_modulus, trace);
    for (face, own) in [(Face::Bottom, &sagging), (Face::Top, &hogging)] {
        if round9(own.steel_strain_ratio) < round9(limit) {
            issues.push(
                Issue::new(
                    format!("{pointer}/{}/area", face.name()),
                    &refusals::SECTION_OVER_REINFORCED,
                    format!(
                        "strain of the bars at failure {}",
                        round9(own.steel_strain_ratio)
                    ),
                )
                .limit(format!("at least {}", round9(limit)))
                .source(&ACI_318_19_FLEXURE),
            );
        }
    }
    if !issues.is_empty() {
        return Err(issues);
    }
    let light = section.lightweight_factor.unwrap_or(1.0);
    let (fc, b, h) = (section.concrete_strength, section.width, section.depth);
    let shear = shear(section, &factors, (bottom, top), trace);
    let threshold = aci::torsion_threshold((factors.shear, light), fc, b, h, trace);
    let modulus = match section.concrete_unit_weight {
        Some(weight) => aci::elastic_modulus_by_weight(fc, weight, trace),
        None => aci::elastic_modulus(fc, trace),
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
            let rupture = aci::rupture_stress(light, fc, trace);
            let cracking = flexure::cracking_moment(rupture, b, h, trace);
            aci::effective_rigidity((e.service_moment, cracking), (cracked, gross), trace)
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

fn block(section: &ReinforcedRectangle) -> SteelStress {
    BLOCK * section.concrete_strength
}

fn face(
    section: &ReinforcedRectangle,
    factors: &AciFactors,
    face: Face,
    depth: Size,
    trace: &mut Trace,
) -> FlexuralStrength {
    let tension = Force::from_si(face.steel(section).si() * section.steel_yield.si());
    let a = flexure::stress_block(tension, block(section), section.width, trace);
    let axis = a / aci::block_ratio(section.concrete_strength, trace);
    let strain = flexure::steel_strain(factors.concrete_strain, depth, axis, trace);
    let at_yield = section.steel_yield / factors.steel_modulus;
    let phi = aci::strength_reduction(strain, at_yield, trace);
    let nominal = flexure::block_moment(tension, depth, a, trace);
    FlexuralStrength {
        effective_depth: depth,
        stress_block_depth: a,
        neutral_axis_depth: axis,
        steel_strain_ratio: strain,
        strength_reduction_factor: Some(phi),
        moment: phi * nominal,
        minimum_steel: aci::minimum_steel(
            section.concrete_strength,
            section.steel_yield,
            section.width,
            depth,
            trace,
        ),
    }
}

/// Shear by the face with the lesser effective depth and the lesser share of steel.
fn shear(
    section: &ReinforcedRectangle,
    factors: &AciFactors,
    (bottom, top): (Size, Size),
    trace: &mut Trace,
) -> OneWayShear {
    let light = section.lightweight_factor.unwrap_or(1.0);
    let (fc, b, phi) = (section.concrete_strength, section.width, factors.shear);
    let d = bottom.min(top);
    let counted = section.stirrups.as_ref().map(|s| {
        let least = aci::minimum_stirrup(fc, s.steel_yield, b, s.spacing, trace);
        let counts = round9(least / s.area) <= 1.0;
        let given = aci::stirrup_shear((s.area, s.spacing), s.steel_yield, fc, (b, d), trace);
        (least, counts.then_some(given), given)
    });
    let spacing = counted.map(|(_, _, given)| aci::greatest_spacing(given, fc, b, d, trace));
    if let Some((least, Some(given), _)) = counted {
        let concrete = aci::concrete_shear_with_stirrups(light, fc, b, d, trace);
        return OneWayShear {
            depth: d,
            concrete: phi * concrete,
            stirrups: Some(phi * given),
            shear: phi * (concrete + given),
            minimum_stirrup: Some(least),
            greatest_spacing: spacing,
        };
    }
    let size = aci::size_factor(d, trace);
    let ratio = |area: SteelArea, d: Size| area.si() / (b.si() * d.si());
    let steel = ratio(section.bottom.area, bottom).min(ratio(section.top.area, top));
    let concrete = aci::concrete_shear_without_stirrups((light, size), steel, fc, (b, d), trace);
    let usable = if section.depth > factors.shallow {
        concrete.min(aci::shear_without_stirrups_limit(light, fc, b, d, trace))
    } else {
        concrete
    };
    OneWayShear {
        depth: d,
        concrete: phi * concrete,
        stirrups: None,
        shear: phi * usable,
        minimum_stirrup: counted.map(|c| c.0),
        greatest_spacing: spacing,
    }
}

/// Steel that a factored moment needs.
pub(super) fn steel_for(
    section: &ReinforcedRectangle,
    own: &FlexuralStrength,
    moment: Moment,
    trace: &mut Trace,
) -> Option<SteelArea> {
    let nominal = moment / own.strength_reduction_factor?;
    let tension = flexure::tension_for(
        nominal,
        block(section),
        section.width,
        own.effective_depth,
        trace,
    )?;
    Some(SteelArea::from_si(tension.si() / section.steel_yield.si()))
}
