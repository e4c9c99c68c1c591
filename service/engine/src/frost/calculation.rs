//! The calculation itself: faults first, then embedment, uplift and void form.

use super::ground::{self, Ground};
use super::outcome::{FrostDepth, FrostDepthSource, Outcome};
use super::request::Request;
use super::{FrostEmbedment, embedment, tension, uplift, void_form};
use crate::catalogue::cautions;
use crate::contract::{Calculation, Issue, Refusal, Work, list_length, none_of};
use crate::limits;
use crate::text::Label;

impl Calculation for FrostEmbedment {
    fn lengths(request: &Request, issues: &mut Vec<Issue>) {
        list_length(
            issues,
            "/pile/helices",
            request.pile.helices.len(),
            1,
            limits::HELICES,
        );
        tension::lengths(request, issues);
        if let Some(form) = &request.void_form {
            void_form::lengths(form, issues);
        }
    }

    fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
        work.trace.about(|| "base of frost".to_owned());
        let ground = Ground::of(request, &mut work.trace);
        work.trace.about(String::new);
        none_of(faults(request, &ground))?;
        caution(request, work);
        let embedment = embedment::judge(request, &ground, work);
        let uplift = match &request.uplift {
            Some(sent) => Some(uplift::judge(request, sent, &ground, work)?),
            None => {
                uplift::not_evaluated(request, "no_uplift_data", work);
                None
            }
        };
        let void_form = request
            .void_form
            .as_ref()
            .and_then(|form| void_form::judge(request, form, &ground, work));
        Ok(Outcome {
            label: Label(request.pile.name().to_owned()),
            tags: request.pile.tags.clone(),
            frost: FrostDepth {
                official_depth: request.frost.official_depth,
                design_depth: request.frost.official_depth,
                governed_by: FrostDepthSource::Official,
                cold_surface_depth: ground.cold_surface,
                base_depth: ground.base,
            },
            embedment,
            uplift,
            void_form,
        })
    }
}

/// Everything that is wrong with a request whose members are each in range.
fn faults(request: &Request, ground: &Ground) -> Vec<Issue> {
    let mut issues = ground::faults(request, ground);
    issues.extend(tension::faults(request));
    if let Some(form) = &request.void_form {
        issues.extend(void_form::faults(request, form, ground));
    }
    issues
}

fn caution(request: &Request, work: &mut Work) {
    for def in [
        &cautions::ENGINEER_OF_RECORD,
        &cautions::LOCAL_CODE,
        &cautions::LOCATE_UTILITIES,
        &cautions::NOT_COVERED,
        &cautions::CORROSION,
    ] {
        work.caution(def);
    }
    if request
        .uplift
        .as_ref()
        .is_some_and(|u| u.resistance.is_some())
    {
        work.caution(&cautions::PRODUCT_STRENGTH);
    }
}
