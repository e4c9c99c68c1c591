//! What the beams can bear and how stiff they are: as the caller gives it, or from their
//! sections. Judge and search ask here, so that both hold beams against the same strengths.

mod curve;
mod deflection;
mod judge;

pub(super) use deflection::{report, worst_deflections};
pub(super) use judge::{deflections, detailing, strengths as judge_strengths};

use super::basis::{LayoutBasis, LimitStatesCombinations, LimitStatesEdition};
use super::codes::{refusals, warnings};
use super::frame::Frame;
use super::request::{BeamMomentCapacity, BeamSection, GradeBeam, Request};
use crate::catalogue::refusals::BASIS_MIXED;
use crate::concrete::{self, ConcreteCode, ReinforcedRectangle, SectionStrength};
use crate::contract::{Issue, SubjectKind, Work};
use crate::quantity::Force;
use crate::source::{CALLER, Reference};

/// What a beam is held against.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct BeamStrength {
    pub moment: Option<BeamMomentCapacity>,
    pub shear: Option<Force>,
    /// Where moment and shear come from.
    pub source: (&'static Reference, &'static Reference),
    /// What brings the analysed moments and shears to the level of the strength; none where
    /// that may not be done.
    pub factor: Option<f64>,
    /// The section, where the strength is that of one.
    pub section: Option<SectionStrength>,
}

impl BeamStrength {
    /// Sagging and hogging moment and shear at the level of the analysis, N m and N; infinite
    /// where they are not judged.
    pub fn limits(&self) -> [f64; 3] {
        let Some(factor) = self.factor else {
            return [f64::INFINITY; 3];
        };
        let of = |v: Option<f64>| v.map_or(f64::INFINITY, |v| v / factor);
        [
            of(self.moment.map(|m| m.sagging.si())),
            of(self.moment.map(|m| m.hogging.si())),
            of(self.shear.map(|v| v.si())),
        ]
    }
}

/// Whether the rigidity of a beam is known.
pub(super) fn rigidity_known(beam: &GradeBeam) -> bool {
    beam.flexural_rigidity.is_some() || beam.section.is_some()
}

/// The section of a beam.
fn section_of(beam: &GradeBeam) -> Option<&ReinforcedRectangle> {
    beam.section
        .as_ref()
        .map(|BeamSection::ReinforcedRectangle(r)| r)
}

/// The strength of every beam; faults go to `issues`.
pub(super) fn strengths(
    request: &Request,
    labels: &[String],
    work: &mut Work,
    issues: &mut Vec<Issue>,
) -> Vec<BeamStrength> {
    let factor = match (&request.design_basis, &request.strength_check) {
        (LayoutBasis::AllowableStress(_), check) => check.map(|c| c.load_factor),
        (LayoutBasis::LimitStates(_), None) => Some(1.0),
        (LayoutBasis::LimitStates(_), Some(_)) => {
            issues.push(Issue::new(
                "/strength_check",
                &BASIS_MIXED,
                "loads of `limit_states` are factored already",
            ));
            Some(1.0)
        }
    };
    if request.strength_check.is_some() && request.beams.iter().all(|b| b.section.is_none()) {
        issues.push(Issue::new(
            "/strength_check",
            &refusals::STRENGTH_CHECK_WITHOUT_SECTION,
            "no beam has a `section`",
        ));
    }
    let mut known: Vec<(&ReinforcedRectangle, SectionStrength)> = Vec::new();
    let mut out = Vec::with_capacity(request.beams.len());
    for (b, (beam, label)) in request.beams.iter().zip(labels).enumerate() {
        let Some(section) = section_of(beam) else {
            out.push(given(beam));
            continue;
        };
        twice(beam, b, issues);
        other_country(request, section.code, label, work);
        let same = known.iter().find(|k| k.0 == section).map(|k| k.1.clone());
        let strength = match same {
            Some(strength) => Some(strength),
            None => {
                work.trace.about(|| format!("section of beam {label}"));
                let pointer = format!("/beams/{b}/section/reinforced_rectangle");
                match concrete::strength(section, &pointer, work) {
                    Ok(strength) => {
                        known.push((section, strength.clone()));
                        Some(strength)
                    }
                    Err(faults) => {
                        issues.extend(faults);
                        None
                    }
                }
            }
        };
        out.push(BeamStrength {
            moment: strength.as_ref().map(|s| BeamMomentCapacity {
                sagging: s.sagging.moment,
                hogging: s.hogging.moment,
            }),
            shear: strength.as_ref().map(|s| s.shear.shear),
            source: concrete::references(section.code),
            factor,
            section: strength,
        });
    }
    work.trace.about(String::new);
    out
}

/// What a beam without a section is held against.
pub(super) fn given(beam: &GradeBeam) -> BeamStrength {
    BeamStrength {
        moment: beam.moment_capacity,
        shear: beam.shear_capacity,
        source: (&CALLER, &CALLER),
        factor: Some(1.0),
        section: None,
    }
}

fn twice(beam: &GradeBeam, b: usize, issues: &mut Vec<Issue>) {
    for (sent, member) in [
        (beam.moment_capacity.is_some(), "moment_capacity"),
        (beam.shear_capacity.is_some(), "shear_capacity"),
    ] {
        if sent {
            issues.push(Issue::new(
                format!("/beams/{b}/{member}"),
                &refusals::STRENGTH_GIVEN_TWICE,
                "the beam has a `section`",
            ));
        }
    }
}

/// Load factors of one country with strength reductions of another.
fn other_country(request: &Request, code: ConcreteCode, label: &str, work: &mut Work) {
    let LayoutBasis::LimitStates(loads) = &request.design_basis else {
        return;
    };
    let LimitStatesCombinations::Published(set) = &loads.combinations else {
        return;
    };
    let fits = match set.edition {
        LimitStatesEdition::Asce716 | LimitStatesEdition::Asce722 => ConcreteCode::Aci31819,
        LimitStatesEdition::Nbc2020 => ConcreteCode::CsaA23319,
    };
    if code != fits {
        work.warn_about(
            &warnings::CONCRETE_CODE_DIFFERS,
            SubjectKind::Beam,
            label,
            "load factors and strength reductions are made for each other; these are of two countries",
        );
    }
}

impl Frame {
    /// Takes the strengths over, and rigidities where none was sent.
    pub fn take_strengths(&mut self, request: &Request, strengths: Vec<BeamStrength>) {
        let beams = request.beams.iter().zip(&strengths);
        for ((beam, own), rigidity) in beams.zip(&mut self.rigidity) {
            if let (None, Some(section)) = (beam.flexural_rigidity, &own.section) {
                *rigidity = section.rigidity.si();
            }
        }
        self.strength = strengths;
    }
}
