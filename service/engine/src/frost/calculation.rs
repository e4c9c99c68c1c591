//! The calculation itself: faults first, then embedment, uplift by frost and by swelling,
//! beam and void form.

use super::governing::{self, All};
use super::ground::Ground;
use super::outcome::Outcome;
use super::request::Request;
use super::section::{self, Parts};
use super::{
    FrostEmbedment, combined, depth, drag, embedment, ground_faults, swell, swell_faults, tension,
    underside, uplift, void_crush, void_form, weight,
};
use crate::catalogue::cautions;
use crate::contract::{Calculation, Issue, Refusal, Work, list_length, none_of};
use crate::limits;
use crate::quantity::Force;
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
        depth::lengths(request, issues);
        tension::lengths(request, issues);
        underside::lengths(request, issues);
        drag::lengths(request, issues);
        if let Some(form) = &request.void_form {
            void_form::lengths(form, issues);
        }
    }

    fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
        let (computed, mut issues) = match depth::computed(request, work) {
            Ok(found) => (found, Vec::new()),
            Err(refusal) if refusal.interrupted => return Err(refusal),
            Err(refusal) => (None, refusal.issues),
        };
        work.trace.about(|| "base of frost".to_owned());
        let by_index = computed.as_ref().map(|c| c.depth);
        let ground = Ground::of(request, by_index, &mut work.trace);
        work.trace.about(String::new);
        issues.extend(faults(request, &ground));
        none_of(issues)?;
        caution(request, work);
        let embedment = embedment::judge(request, &ground, work);
        let pile_weight = weight::of(request, &ground, work);
        let crushed = Some(void_crush::tension_on_pile(request, &ground));
        let from_above = (
            pile_weight.unwrap_or(Force::ZERO),
            crushed.filter(|force| *force > Force::ZERO),
        );
        let frost = match &request.uplift {
            Some(sent) => Some(uplift::judge(request, sent, &ground, from_above, work)?),
            None => {
                // where nothing freezes there is nothing to evaluate
                if ground.base > ground.cold_surface {
                    uplift::not_evaluated(request, "no_uplift_data", work);
                }
                None
            }
        };
        let swelling = match &request.swelling {
            Some(sent) => swell::judge(request, sent, &ground, from_above, work)?,
            None => None,
        };
        let both = match (&request.swelling, &frost, &swelling) {
            (Some(sent), Some(cold), Some(wet)) => {
                let outcomes = (&cold.outcome, &wet.outcome);
                combined::judge(request, sent, outcomes, &ground, work)?
            }
            _ => None,
        };
        let governing_uplift = governing::of(&All {
            frost: frost.as_ref(),
            swell: swelling.as_ref(),
            both: both.as_ref(),
        });
        if let Some(path) = &request.tension_path {
            governing::path(request, path, governing_uplift.as_ref(), work);
        }
        let beam_underside = underside::judge(request, &ground, work);
        let void_form = request
            .void_form
            .as_ref()
            .and_then(|form| void_form::judge(request, form, &ground, work));
        let downdrag = drag::judge(request, &ground, work)?;
        let frost_depth = depth::of(request, &ground, computed, work);
        let section = section::of(
            request,
            &ground,
            &Parts {
                frost: frost.as_ref().map(|j| &j.outcome),
                swell: swelling.as_ref().map(|j| &j.outcome),
                underside: beam_underside.as_ref(),
                void_form: void_form.as_ref(),
                drag: downdrag.as_ref(),
            },
        );
        Ok(Outcome {
            label: Label(request.pile.name().to_owned()),
            tags: request.pile.tags.clone(),
            frost: frost_depth,
            embedment,
            uplift: frost.map(|j| j.outcome),
            swelling: swelling.map(|j| j.outcome),
            combined_uplift: both.map(|j| j.outcome),
            governing_uplift,
            pile_weight,
            beam_underside,
            downdrag,
            void_form,
            section,
        })
    }
}

/// Everything that is wrong with a request whose members are each in range.
fn faults(request: &Request, ground: &Ground) -> Vec<Issue> {
    let mut issues = ground_faults::of(request, ground);
    issues.extend(depth::faults(request));
    issues.extend(tension::faults(request));
    issues.extend(swell_faults::of(request));
    issues.extend(weight::faults(request));
    issues.extend(underside::faults(request, ground));
    issues.extend(drag::faults(request, ground));
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
    let frost = request.uplift.as_ref().and_then(|u| u.resistance.as_ref());
    let swell = request
        .swelling
        .as_ref()
        .and_then(|s| s.resistance.as_ref());
    if frost.or(swell).is_some() || request.tension_path.is_some() {
        work.caution(&cautions::PRODUCT_STRENGTH);
    }
}
