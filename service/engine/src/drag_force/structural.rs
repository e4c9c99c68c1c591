//! The steel against permanent load and drag.

use super::asked::DragStructural;
use super::codes::{checks, methods};
use super::constants::{DRAG_LOAD, PERMANENT_LOAD};
use super::equations::{factored_strength, least_factor, structural_load};
use super::outcome::{DragAt, DragFormat, DragStructuralOutcome};
use crate::contract::{Check, SubjectKind, Work};
use crate::quantity::Force;
use crate::source::{BEARWELL_CHOICE, UFC_DOWNDRAG};

/// Judges the steel; the check is not evaluated where its strength or the neutral plane is
/// missing.
pub(super) fn judge(
    sent: Option<&DragStructural>,
    load: Force,
    plane: Option<&DragAt>,
    label: &str,
    work: &mut Work,
) -> Option<DragStructuralOutcome> {
    let (sent, plane) = match (sent, plane) {
        (Some(sent), Some(plane)) => (sent, plane),
        (sent, _) => {
            let reason = match sent {
                Some(_) => "no_neutral_plane",
                None => "no_strength_of_steel",
            };
            let check = Check::not_evaluated(&checks::DRAG_STRUCTURAL, reason, &UFC_DOWNDRAG);
            work.check(check.subject(SubjectKind::Pile, label));
            return None;
        }
    };
    work.trace.about(|| "steel".to_owned());
    let outcome = match sent {
        DragStructural::LimitStates(steel) => {
            work.method(&methods::DRAG_STRUCTURAL_LIMIT_STATES);
            let gamma_q = steel
                .permanent_load_factor
                .unwrap_or_else(|| work.take(&PERMANENT_LOAD));
            let gamma_df = steel
                .drag_load_factor
                .unwrap_or_else(|| work.take(&DRAG_LOAD));
            let trace = &mut work.trace;
            let factors = [gamma_q, gamma_df];
            let asked = structural_load(factors, load, plane.drag_force, &UFC_DOWNDRAG, trace);
            DragStructuralOutcome {
                format: DragFormat::LimitStates,
                permanent_load_factor: gamma_q,
                drag_load_factor: gamma_df,
                load: asked,
                strength: factored_strength(
                    steel.resistance_factor,
                    steel.nominal_resistance,
                    trace,
                ),
                least_resistance_factor: Some(least_factor(asked, steel.nominal_resistance, trace)),
            }
        }
        DragStructural::AllowableStress(steel) => {
            work.method(&methods::DRAG_STRUCTURAL_ALLOWABLE_STRESS);
            let trace = &mut work.trace;
            DragStructuralOutcome {
                format: DragFormat::AllowableStress,
                permanent_load_factor: 1.0,
                drag_load_factor: 1.0,
                load: structural_load([1.0, 1.0], load, plane.drag_force, &BEARWELL_CHOICE, trace),
                strength: steel.allowable_strength,
                least_resistance_factor: None,
            }
        }
    };
    work.trace.about(String::new);
    let source = match outcome.format {
        DragFormat::LimitStates => &UFC_DOWNDRAG,
        DragFormat::AllowableStress => &BEARWELL_CHOICE,
    };
    let check = Check::at_most(
        &checks::DRAG_STRUCTURAL,
        outcome.load,
        outcome.strength,
        source,
    );
    work.check(check.subject(SubjectKind::Pile, label));
    Some(outcome)
}
