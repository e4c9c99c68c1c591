//! What the sheet reads out of a request and its answer: the section, the forces with their
//! arrows, the ground where a profile was sent. Reads, and calculates nothing.

use bearwell_engine::contract::{Answer, CheckStatus};
use bearwell_engine::frost::{
    FrostResistance, FrostSection, FrostStage, FrostTension, FrostTensionOutcome, Outcome, Request,
    SectionForce, SectionForceKind,
};
use bearwell_engine::quantity::{Force, Length, Size, System};
use bearwell_engine::soil::SoilProfile;

use crate::words;

/// Everything a sheet is drawn from.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// What was asked.
    pub request: &'a Request,
    /// What was answered.
    pub answer: &'a Answer<Outcome>,
    /// Units of the sheet.
    pub system: System,
    /// The ground from final grade, where a profile was sent.
    pub profile: Option<&'a SoilProfile>,
}

/// A force as it is drawn: what acts alike in both stages is one of them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Acting {
    /// What force it is.
    pub kind: SectionForceKind,
    /// Its stage; none where it is the same in both.
    pub stage: Option<FrostStage>,
    /// Its size.
    pub force: Force,
    /// Where it begins.
    pub top: Length,
    /// Where it ends.
    pub bottom: Length,
}

/// The profile that a request sends with what holds the pile down.
pub fn profile(request: &Request) -> Option<SoilProfile> {
    let sent = |r: &Option<FrostResistance>| match r.as_ref().map(|r| &r.tension) {
        Some(FrostTension::FromSoil(soil)) => Some(soil.profile.at_final_grade().0),
        _ => None,
    };
    let by_frost = request.uplift.as_ref().and_then(|u| sent(&u.resistance));
    by_frost.or_else(|| request.swelling.as_ref().and_then(|s| sent(&s.resistance)))
}

impl<'a> Subject<'a> {
    /// The result.
    pub fn outcome(&self) -> &'a Outcome {
        &self.answer.result
    }

    /// The section.
    pub fn section(&self) -> &'a FrostSection {
        &self.outcome().section
    }

    /// Diameter of the largest helix.
    pub fn largest_helix(&self) -> Size {
        self.outcome().embedment.largest_helix_diameter
    }

    /// The forces of the section.
    pub fn forces(&self) -> Vec<Acting> {
        let mut all: Vec<Acting> = Vec::new();
        for f in &self.section().forces {
            let twin = all.iter_mut().find(|a| {
                a.stage != Some(f.stage)
                    && (a.kind, a.force, a.top, a.bottom)
                        == (f.kind, f.force, f.top_depth, f.bottom_depth)
            });
            match twin {
                Some(twin) => twin.stage = None,
                None => all.push(acting(f)),
            }
        }
        all
    }

    /// Tension resistance against frost, and against swelling soil.
    pub fn tensions(&self) -> [Option<&'a FrostTensionOutcome>; 2] {
        let outcome = self.outcome();
        let frost = outcome.uplift.as_ref().and_then(|u| u.tension.as_ref());
        let swell = outcome.swelling.as_ref();
        [frost, swell.and_then(|u| u.tension.as_ref())]
    }

    /// Whether any check of a helix fails.
    pub fn fails(&self, helix: &str) -> bool {
        let about = |label: &str| label == helix;
        self.answer.checks.iter().any(|c| {
            c.status == CheckStatus::Fail && c.subject.as_ref().is_some_and(|s| about(&s.label))
        })
    }
}

fn acting(f: &SectionForce) -> Acting {
    Acting {
        kind: f.kind,
        stage: Some(f.stage),
        force: f.force,
        top: f.top_depth,
        bottom: f.bottom_depth,
    }
}

impl Acting {
    /// Whether it acts on the head of the pile.
    pub fn on_head(&self) -> bool {
        self.kind == SectionForceKind::DeadLoad
    }

    /// Whether it pushes the pile down.
    pub fn down(&self) -> bool {
        use SectionForceKind::{DeadLoad, Drag, TensionResistance};
        matches!(self.kind, DeadLoad | Drag | TensionResistance)
    }

    /// How it is called.
    pub fn told(&self, s: Subject) -> &'static str {
        match self.kind {
            SectionForceKind::ShaftAdfreeze => "frost on shaft",
            SectionForceKind::BeamAdfreeze => "frost on beam sides",
            SectionForceKind::ShaftSwell => "swelling on shaft",
            SectionForceKind::BeamSwell => "swelling on beam sides",
            SectionForceKind::VoidForm => "crushed void form",
            SectionForceKind::BeamUndersideSwell => "swelling under beam",
            SectionForceKind::Drag => "drag on shaft",
            SectionForceKind::DeadLoad => "dead load",
            SectionForceKind::TensionResistance => self.holds(s),
        }
    }

    /// Against what the ground holds the pile.
    fn holds(&self, s: Subject) -> &'static str {
        let same = |t: &FrostTensionOutcome| t.ultimate.unwrap_or(t.design) == self.force;
        match s.tensions().map(|t| t.is_some_and(same)) {
            [true, false] => "holds against frost",
            [false, true] => "holds against swelling",
            _ => "ground holds",
        }
    }

    /// Its size in words, of a tension resistance with its level.
    pub fn size(&self, s: Subject) -> String {
        let size = words::force_told(self.force, s.system);
        let ultimate = |t: &FrostTensionOutcome| t.ultimate == Some(self.force);
        match self.kind {
            SectionForceKind::TensionResistance => {
                let ultimate = s.tensions().into_iter().flatten().any(ultimate);
                let level = if ultimate { "ultimate" } else { "usable" };
                format!("{size} {level}")
            }
            _ => size,
        }
    }

    /// In which stage it acts, or beside what.
    pub fn when(&self) -> &'static str {
        match (self.kind, self.stage) {
            (SectionForceKind::TensionResistance, _) => "",
            (SectionForceKind::Drag, _) => "not with uplift",
            (_, Some(stage)) => told(stage),
            (_, None) => "always",
        }
    }
}

/// A stage in words.
pub fn told(stage: FrostStage) -> &'static str {
    match stage {
        FrostStage::Service => "once built",
        FrostStage::Construction => "before building",
    }
}
