//! The calculation itself: faults first, then drag on the pile.

use super::DragForce;
use super::faults::{faults, lengths};
use super::judge::{DragPile, judge};
use super::outcome::Outcome;
use super::request::Request;
use crate::catalogue::cautions;
use crate::contract::{Calculation, Issue, Refusal, Work, list_length, none_of};
use crate::frost::codes::refusals::DEPTHS_OUT_OF_ORDER;
use crate::helix::shaft_faults;
use crate::limits;
use crate::quantity::{Length, in_both_systems};
use crate::text::Label;

impl Calculation for DragForce {
    fn lengths(request: &Request, issues: &mut Vec<Issue>) {
        if let Some(helices) = &request.helices {
            list_length(issues, "/helices", helices.len(), 1, limits::HELICES);
        }
        lengths(&request.drag, "/drag", issues);
    }

    fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
        let pile = pile(request);
        let mut issues = pile_faults(request, &pile);
        issues.extend(faults(&request.drag, &pile, "/drag"));
        none_of(issues)?;
        for def in [
            &cautions::ENGINEER_OF_RECORD,
            &cautions::LOCAL_CODE,
            &cautions::SOIL_PROFILE,
        ] {
            work.caution(def);
        }
        if request.drag.structural.is_some() {
            work.caution(&cautions::PRODUCT_STRENGTH);
        }
        let drag = judge(&request.drag, &pile, "/drag", work)?;
        Ok(Outcome {
            label: Label(pile.label),
            tags: request.tags.clone(),
            drag,
        })
    }
}

fn pile(request: &Request) -> DragPile {
    let helices = request.helices.iter().flatten().enumerate();
    DragPile {
        label: request
            .label
            .as_ref()
            .map_or("pile", Label::as_str)
            .to_owned(),
        perimeter: request.shaft.as_ref().map(|shaft| shaft.perimeter()),
        contact_top: request.head_depth.unwrap_or(Length::ZERO).max(Length::ZERO),
        toe: request.toe_depth,
        helices: helices
            .map(|(i, helix)| {
                let label = helix.label.as_ref().map(|l| l.as_str().to_owned());
                (label.unwrap_or_else(|| (i + 1).to_string()), helix.depth)
            })
            .collect(),
    }
}

/// Depths of the pile that contradict each other.
fn pile_faults(request: &Request, pile: &DragPile) -> Vec<Issue> {
    let told = |z: Length| in_both_systems(z.si(), "m");
    let mut issues = match &request.shaft {
        Some(shaft) => shaft_faults(shaft, ""),
        None => Vec::new(),
    };
    if pile.contact_top >= pile.toe {
        issues.push(
            Issue::new(
                "/head_depth",
                &DEPTHS_OUT_OF_ORDER,
                format!(
                    "head at {}, toe at {}",
                    told(pile.contact_top),
                    told(pile.toe)
                ),
            )
            .limit(told(pile.toe)),
        );
    }
    for (i, helix) in request.helices.iter().flatten().enumerate() {
        if helix.depth > pile.toe || helix.depth < pile.contact_top {
            issues.push(
                Issue::new(
                    format!("/helices/{i}/depth"),
                    &DEPTHS_OUT_OF_ORDER,
                    format!(
                        "{} is not between the head at {} and the toe at {}",
                        told(helix.depth),
                        told(pile.contact_top),
                        told(pile.toe)
                    ),
                )
                .limit(told(pile.toe)),
            );
        }
    }
    issues
}
