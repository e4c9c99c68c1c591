//! What is wrong with a section before its strength is asked: bars outside, properties the code
//! does not cover, a missing unit weight.

use super::codes::refusals;
use super::constants::{ACI_FACTORS, CSA_FACTORS};
use super::request::{ConcreteCode, ReinforcedRectangle};
use crate::contract::Issue;
use crate::quantity::{Size, SteelStress};
use crate::source::{
    ACI_318_19_FLEXURE, CSA_A23_3_19_FLEXURE, CSA_A23_3_19_SIMPLIFIED_SHEAR, Reference,
};

/// Every fault of a section with its bars at these effective depths.
pub(super) fn faults(
    section: &ReinforcedRectangle,
    pointer: &str,
    (bottom, top): (Size, Size),
) -> Vec<Issue> {
    let mut issues = Vec::new();
    let told = |s: Size| Size::ROLE.in_both_systems(s.si());
    for (face, depth) in [("bottom", bottom), ("top", top)] {
        if depth >= section.depth || depth <= 0.5 * section.depth {
            issues.push(
                Issue::new(
                    format!("{pointer}/{face}/place"),
                    &refusals::SECTION_BARS_OUTSIDE,
                    format!("effective depth {}", told(depth)),
                )
                .limit(format!(
                    "above {} and below {}",
                    told(0.5 * section.depth),
                    told(section.depth)
                )),
            );
        }
    }
    let (concrete, bars, stirrups, on_bars): (_, _, _, &'static Reference) = match section.code {
        ConcreteCode::Aci31819 => {
            let f = &ACI_FACTORS.value;
            (f.concrete, f.bars, f.stirrups, &ACI_318_19_FLEXURE)
        }
        ConcreteCode::CsaA23319 => {
            let f = &CSA_FACTORS.value;
            (
                f.concrete,
                f.bars,
                f.stirrups,
                &CSA_A23_3_19_SIMPLIFIED_SHEAR,
            )
        }
    };
    let on_concrete: &'static Reference = match section.code {
        ConcreteCode::Aci31819 => &ACI_318_19_FLEXURE,
        ConcreteCode::CsaA23319 => &CSA_A23_3_19_FLEXURE,
    };
    let mut outside = |member: &str, symbol: &str, value, limits, source| {
        if let Some(issue) = outside(format!("{pointer}/{member}"), symbol, value, limits, source) {
            issues.push(issue);
        }
    };
    let none = SteelStress::ZERO;
    outside(
        "concrete_strength",
        "f'c",
        section.concrete_strength,
        concrete,
        on_concrete,
    );
    outside(
        "steel_yield",
        "f_y",
        section.steel_yield,
        (none, bars),
        on_bars,
    );
    if let Some(s) = &section.stirrups {
        outside(
            "stirrups/steel_yield",
            "f_yt",
            s.steel_yield,
            (none, stirrups),
            on_concrete,
        );
    }
    let light = section.lightweight_factor.is_some_and(|l| l < 1.0);
    let strong = section.code == ConcreteCode::CsaA23319
        && section.concrete_strength > CSA_FACTORS.value.modulus_by_strength;
    if (light || strong) && section.concrete_unit_weight.is_none() {
        issues.push(Issue::new(
            pointer,
            &refusals::SECTION_UNIT_WEIGHT_NEEDED,
            if light {
                "`lightweight_factor` is below 1"
            } else {
                "the concrete is above 40 MPa"
            },
        ));
    }
    issues
}

fn outside(
    pointer: String,
    symbol: &str,
    value: SteelStress,
    (least, greatest): (SteelStress, SteelStress),
    source: &'static Reference,
) -> Option<Issue> {
    let told = |s: SteelStress| SteelStress::ROLE.in_both_systems(s.si());
    // what was sent in the other system's round figure is on the limit
    let near = 1e-9 * greatest;
    (value < least - near || value > greatest + near).then(|| {
        let limit = if least > SteelStress::ZERO {
            format!("{} to {}", told(least), told(greatest))
        } else {
            format!("at most {}", told(greatest))
        };
        Issue::new(
            pointer,
            &refusals::SECTION_OUTSIDE_CODE,
            format!("{symbol} is {}", told(value)),
        )
        .limit(limit)
        .source(source)
    })
}
