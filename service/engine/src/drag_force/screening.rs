//! Figures of the site against the usual triggers, and soil that collapses on wetting. Nothing
//! here decides.

use super::asked::{DragScreening, SettlingCause, SettlingGround};
use super::codes::{methods, warnings};
use super::constants::{
    COLLAPSE_CLASSES, COMPRESSIBLE, DRAWDOWN, FILL_HEIGHT, GROUND_SETTLEMENT, SETTLEMENT_AFTER,
};
use super::equations::collapse_settlement;
use super::outcome::{CollapseClass, CollapseOutcome, DragTrigger, DragTriggerOutcome};
use crate::contract::Work;
use crate::quantity::{Quantity, Shown, in_both_systems, round9};
use crate::source::Sourced;

/// Every figure that was sent against its trigger.
pub(super) fn triggers(sent: &DragScreening, work: &mut Work) -> Vec<DragTriggerOutcome> {
    work.method(&methods::DRAG_SCREENING_TRIGGERS);
    let mut all = Vec::new();
    let of = |trigger, figure, constant| (trigger, figure, constant);
    for (trigger, figure, constant) in [
        of(
            DragTrigger::GroundSettlement,
            sent.ground_settlement,
            &GROUND_SETTLEMENT,
        ),
        of(
            DragTrigger::SettlementAfterConstruction,
            sent.settlement_after_construction,
            &SETTLEMENT_AFTER,
        ),
    ] {
        all.extend(figure.map(|f| against(trigger, f, constant, work)));
    }
    for (trigger, figure, constant) in [
        (DragTrigger::FillHeight, sent.fill_height, &FILL_HEIGHT),
        (
            DragTrigger::CompressibleThickness,
            sent.compressible_thickness,
            &COMPRESSIBLE,
        ),
        (DragTrigger::WaterDrawdown, sent.water_drawdown, &DRAWDOWN),
    ] {
        all.extend(figure.map(|f| against(trigger, f, constant, work)));
    }
    all
}

fn against<Q: Quantity + Into<Shown>>(
    trigger: DragTrigger,
    figure: Q,
    constant: &Sourced<Q>,
    work: &mut Work,
) -> DragTriggerOutcome {
    let threshold = work.take(constant);
    let exceeded = round9(figure.si() / threshold.si()) > 1.0;
    if exceeded {
        work.warn(
            &warnings::DRAG_TRIGGER_EXCEEDED,
            format!(
                "{}: {} sent, a look at drag is usual above {}",
                trigger.name(),
                in_both_systems(figure.si(), "m"),
                in_both_systems(threshold.si(), "m")
            ),
        );
    }
    DragTriggerOutcome {
        trigger,
        figure: figure.into(),
        threshold: threshold.into(),
        exceeded,
    }
}

/// Class and settlement of collapsing soil, where its potential was sent. On the limit of two
/// classes the milder one holds.
pub(super) fn collapse(ground: &SettlingGround, work: &mut Work) -> Option<CollapseOutcome> {
    let SettlingCause::CollapseOnWetting(sent) = &ground.cause else {
        return None;
    };
    let potential = sent.collapse_potential_ratio?;
    work.method(&methods::COLLAPSE_POTENTIAL);
    let [slight, moderate, moderately_severe] = work.take_table(&COLLAPSE_CLASSES);
    let above = |limit: f64| round9(potential) > limit;
    let class = if above(moderately_severe) {
        CollapseClass::Severe
    } else if above(moderate) {
        CollapseClass::ModeratelySevere
    } else if above(slight) {
        CollapseClass::Moderate
    } else {
        CollapseClass::Slight
    };
    let thickness = sent.collapsing_thickness.unwrap_or(ground.depth);
    work.trace.about(|| "collapse on wetting".to_owned());
    let settlement = collapse_settlement(potential, thickness, &mut work.trace);
    work.trace.about(String::new);
    work.warn(
        &warnings::DRAG_COLLAPSE_SETTLEMENT,
        format!(
            "{} on wetting of {}",
            in_both_systems(settlement.si(), "m"),
            in_both_systems(thickness.si(), "m")
        ),
    );
    Some(CollapseOutcome {
        class,
        source: COLLAPSE_CLASSES.reference.into(),
        settlement,
    })
}
