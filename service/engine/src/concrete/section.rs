//! From a section to its strength, by the code that was chosen.

use super::flexure::effective_depth;
use super::outcome::SectionStrength;
use super::request::{BarPlace, ConcreteCode, ReinforcedRectangle};
use super::{aci_section, codes::methods, csa_section, faults};
use crate::contract::{Issue, Work};
use crate::quantity::{Moment, Size, SteelArea};
use crate::source::{
    ACI_318_19_FLEXURE, ACI_318_19_SHEAR, CSA_A23_3_19_FLEXURE, CSA_A23_3_19_SIMPLIFIED_SHEAR,
    Reference,
};
use crate::trace::Trace;

/// The faces of a section that can be in tension.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Face {
    Bottom,
    Top,
}

impl Face {
    pub const BOTH: [Self; 2] = [Self::Bottom, Self::Top];

    pub const fn name(self) -> &'static str {
        match self {
            Self::Bottom => "bottom",
            Self::Top => "top",
        }
    }

    /// Its bars.
    pub const fn steel(self, section: &ReinforcedRectangle) -> SteelArea {
        match self {
            Self::Bottom => section.bottom.area,
            Self::Top => section.top.area,
        }
    }
}

/// Strength of a section, or every fault of it with pointers that begin with `pointer`.
pub(crate) fn strength(
    section: &ReinforcedRectangle,
    pointer: &str,
    work: &mut Work,
) -> Result<SectionStrength, Vec<Issue>> {
    let bottom = depth_of(&section.bottom.place, section.depth, &mut work.trace);
    let top = depth_of(&section.top.place, section.depth, &mut work.trace);
    let issues = faults::faults(section, pointer, (bottom, top));
    if !issues.is_empty() {
        return Err(issues);
    }
    match section.code {
        ConcreteCode::Aci31819 => {
            work.method(&methods::REINFORCED_SECTION_ACI_318_19);
            aci_section::strength(section, pointer, (bottom, top), work)
        }
        ConcreteCode::CsaA23319 => {
            work.method(&methods::REINFORCED_SECTION_CSA_A23_3_19);
            csa_section::strength(section, pointer, (bottom, top), work)
        }
    }
}

/// The sources of strength in bending and in shear by this code.
pub(crate) fn references(code: ConcreteCode) -> (&'static Reference, &'static Reference) {
    match code {
        ConcreteCode::Aci31819 => (&ACI_318_19_FLEXURE, &ACI_318_19_SHEAR),
        ConcreteCode::CsaA23319 => (&CSA_A23_3_19_FLEXURE, &CSA_A23_3_19_SIMPLIFIED_SHEAR),
    }
}

/// Steel that a factored moment needs at a face; none where no steel would do.
pub(super) fn steel_for(
    section: &ReinforcedRectangle,
    strength: &SectionStrength,
    face: Face,
    moment: Moment,
    trace: &mut Trace,
) -> Option<SteelArea> {
    let own = match face {
        Face::Bottom => &strength.sagging,
        Face::Top => &strength.hogging,
    };
    match section.code {
        ConcreteCode::Aci31819 => aci_section::steel_for(section, own, moment, trace),
        ConcreteCode::CsaA23319 => csa_section::steel_for(section, own, moment, trace),
    }
}

fn depth_of(place: &BarPlace, depth: Size, trace: &mut Trace) -> Size {
    match place {
        BarPlace::EffectiveDepth(d) => d.depth,
        BarPlace::Cover(c) => effective_depth(
            depth,
            c.cover,
            c.stirrup_diameter.unwrap_or(Size::ZERO),
            c.bar_diameter,
            trace,
        ),
    }
}
