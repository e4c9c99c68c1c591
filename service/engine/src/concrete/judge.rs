//! Detailing of a section: least steel, cover, stirrups. Strengths are judged by whoever has the
//! moments.

use super::codes::checks;
use super::constants::{ACI_COVER, CSA_COVER, CSA_FACTORS, CoverRule};
use super::outcome::SectionStrength;
use super::request::{BarCover, BarPlace, ConcreteCode, CoverExposure, ReinforcedRectangle};
use super::section::{Face, steel_for};
use crate::contract::{Check, SubjectKind, Work};
use crate::quantity::{Moment, Size};
use crate::source::{
    ACI_318_19_COVER, ACI_318_19_MINIMUM_STEEL, ACI_318_19_MINIMUM_STIRRUPS,
    ACI_318_19_STIRRUP_SPACING, BEARWELL_CHOICE, CSA_A23_1_COVER, CSA_A23_3_19_MINIMUM_STEEL,
    CSA_A23_3_19_STIRRUPS,
};

/// How much more steel than a moment needs waives the least steel.
const WAIVER: f64 = 4.0 / 3.0;

/// Checks the detailing of the beam of this label. `factored` holds the greatest sagging and
/// hogging moments at factored level where they are known; without them it stays open whether too
/// little steel is waived.
pub(crate) fn judge(
    section: &ReinforcedRectangle,
    strength: &SectionStrength,
    factored: Option<(Moment, Moment)>,
    label: &str,
    work: &mut Work,
) {
    minimum_steel(section, strength, factored, label, work);
    stirrups(section, strength, label, work);
    covers(section, label, work);
}

fn minimum_steel(
    section: &ReinforcedRectangle,
    strength: &SectionStrength,
    factored: Option<(Moment, Moment)>,
    label: &str,
    work: &mut Work,
) {
    let source = match section.code {
        ConcreteCode::Aci31819 => &ACI_318_19_MINIMUM_STEEL,
        ConcreteCode::CsaA23319 => &CSA_A23_3_19_MINIMUM_STEEL,
    };
    for face in Face::BOTH {
        let (least, moment) = match face {
            Face::Bottom => (strength.sagging.minimum_steel, factored.map(|f| f.0)),
            Face::Top => (strength.hogging.minimum_steel, factored.map(|f| f.1)),
        };
        let needed = moment
            .and_then(|m| steel_for(section, strength, face, m, &mut work.trace))
            .map(|needed| WAIVER * needed);
        let (asked, why) = match needed {
            Some(more) if more < least => (more, ", a third more than the moment needs"),
            _ => (least, ""),
        };
        let check = Check::at_least(
            &checks::BEAM_MINIMUM_STEEL,
            asked,
            face.steel(section),
            source,
        )
        .subject(SubjectKind::Beam, label)
        .reason(format!("{}{why}", face.name()));
        let open = moment.is_none() && !check.passed();
        work.check(if open {
            let name = face.name();
            check.unproven().reason(format!(
                "{name}: whether it is a third more than needed is open without moments at factored level"
            ))
        } else {
            check
        });
    }
}

fn stirrups(
    section: &ReinforcedRectangle,
    strength: &SectionStrength,
    label: &str,
    work: &mut Work,
) {
    let (least_by, spacing_by) = match section.code {
        ConcreteCode::Aci31819 => (&ACI_318_19_MINIMUM_STIRRUPS, &ACI_318_19_STIRRUP_SPACING),
        ConcreteCode::CsaA23319 => (&CSA_A23_3_19_STIRRUPS, &CSA_A23_3_19_STIRRUPS),
    };
    let shear = &strength.shear;
    if let (Some(s), Some(least), Some(most)) = (
        &section.stirrups,
        shear.minimum_stirrup,
        shear.greatest_spacing,
    ) {
        let least = Check::at_least(&checks::BEAM_MINIMUM_STIRRUPS, least, s.area, least_by)
            .subject(SubjectKind::Beam, label);
        let spacing = Check::at_most(&checks::BEAM_STIRRUP_SPACING, s.spacing, most, spacing_by)
            .subject(SubjectKind::Beam, label);
        let deep =
            section.code == ConcreteCode::CsaA23319 && section.depth > CSA_FACTORS.value.deep;
        let idle = "not counted in shear, and up to the strength without them not required";
        for check in [least, spacing] {
            work.check(if shear.stirrups.is_none() && !deep {
                check.reason(idle).advisory()
            } else {
                check
            });
        }
    } else if section.code == ConcreteCode::CsaA23319 {
        let deep = CSA_FACTORS.value.deep;
        let check = Check::at_most(
            &checks::BEAM_MINIMUM_STIRRUPS,
            section.depth,
            deep,
            least_by,
        );
        work.check(
            check
                .subject(SubjectKind::Beam, label)
                .reason("without stirrups: the depth of the beam"),
        );
    }
}

fn covers(section: &ReinforcedRectangle, label: &str, work: &mut Work) {
    let mut judged = false;
    for (face, layer) in [(Face::Bottom, &section.bottom), (Face::Top, &section.top)] {
        let BarPlace::Cover(cover) = &layer.place else {
            continue;
        };
        let Some(exposure) = cover.exposure else {
            continue;
        };
        judged = true;
        let (rule, source) = match section.code {
            ConcreteCode::Aci31819 => (work.take_table(&ACI_COVER), &ACI_318_19_COVER),
            ConcreteCode::CsaA23319 => (work.take_table(&CSA_COVER), &CSA_A23_1_COVER),
        };
        work.check(
            Check::at_least(
                &checks::BEAM_COVER,
                least_cover(&rule, exposure, cover),
                cover.cover,
                source,
            )
            .subject(SubjectKind::Beam, label)
            .reason(face.name()),
        );
    }
    if !judged {
        work.check(
            Check::not_evaluated(
                &checks::BEAM_COVER,
                "no_exposure: send `exposure` beside `cover`",
                &BEARWELL_CHOICE,
            )
            .subject(SubjectKind::Beam, label)
            .advisory(),
        );
    }
}

/// Least clear cover of the outermost steel, so that stirrups and bars both have theirs.
///
/// c = max(c(d_s), c(d_b) - d_s); c(d) least cover of a bar of diameter d by its exposure, d_s
/// diameter of the stirrups (0 without), d_b of the bars (m). Source: geometry with the cover of
/// the code.
pub(super) fn least_cover(rule: &CoverRule, exposure: CoverExposure, bars: &BarCover) -> Size {
    let of = |diameter: Size| match exposure {
        CoverExposure::CastAgainstGround => rule.against_ground,
        CoverExposure::Formed if diameter <= rule.thin => rule.formed_thin,
        CoverExposure::Formed => rule.formed,
    };
    match bars.stirrup_diameter {
        Some(stirrup) => of(stirrup).max(of(bars.bar_diameter) - stirrup),
        None => of(bars.bar_diameter),
    }
}
