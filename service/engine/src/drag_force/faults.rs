//! Everything that is wrong with a request whose members are each in range.

use super::asked::{DragAsked, DragMethod};
use super::codes::refusals;
use super::friction_request::{
    DEPTH, DragFriction, DragFrictionSource, DragLayer, DragLayers, RESISTANCE,
    ShaftResistanceTable,
};
use super::judge::DragPile;
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Issue, list_length, utilisation};
use crate::frost::codes::refusals::DEPTHS_OUT_OF_ORDER;
use crate::limits;
use crate::quantity::{Force, Length, in_both_systems, round9};
use crate::source::{DERIVED, GEC12_BETA};

/// Lengths of the lists of what is asked, below the pointer `at`.
pub fn lengths(asked: &DragAsked, at: &str, issues: &mut Vec<Issue>) {
    match &asked.friction {
        DragFrictionSource::Layers(sent) => list_length(
            issues,
            format!("{at}/friction/layers/layers"),
            sent.layers.len(),
            1,
            limits::LAYERS,
        ),
        DragFrictionSource::Cumulative(sent) => sent
            .table
            .lengths(&format!("{at}/friction/cumulative/table"), issues),
    }
}

/// Every fault of what is asked of a pile, below the pointer `at`.
pub fn faults(asked: &DragAsked, pile: &DragPile, at: &str) -> Vec<Issue> {
    let mut issues = Vec::new();
    match asked.method() {
        DragMethod::NeutralPlane if asked.toe.is_none() => issues.push(Issue::new(
            at,
            &MISSING_MEMBER,
            "the neutral plane needs the resistance at the toe: send `toe`, or `settling` with the method `fill_base`",
        )),
        DragMethod::FillBase if asked.settling.is_none() => issues.push(Issue::new(
            at,
            &MISSING_MEMBER,
            "`fill_base` needs the depth of the settling ground: send `settling`",
        )),
        _ => {}
    }
    if let Some(settling) = &asked.settling
        && settling.depth >= pile.toe
    {
        issues.push(
            Issue::new(
                format!("{at}/settling/depth"),
                &refusals::DRAG_SETTLES_BELOW_TOE,
                format!(
                    "the ground settles to {}, the toe is at {}",
                    told(settling.depth),
                    told(pile.toe)
                ),
            )
            .limit(told(pile.toe))
            .source(&DERIVED),
        );
    }
    match &asked.friction {
        DragFrictionSource::Layers(sent) => {
            if pile.perimeter.is_none() {
                issues.push(Issue::new(
                    "",
                    &MISSING_MEMBER,
                    "friction by layers needs the perimeter: send `shaft`",
                ));
            }
            layer_faults(
                asked,
                sent,
                pile,
                &format!("{at}/friction/layers"),
                &mut issues,
            );
        }
        DragFrictionSource::Cumulative(sent) => {
            let at = format!("{at}/friction/cumulative/table");
            table_faults(asked, &sent.table, pile, &at, &mut issues);
        }
    }
    issues
}

fn told(depth: Length) -> String {
    in_both_systems(depth.si(), "m")
}

/// Depth to which friction is needed.
fn needed(asked: &DragAsked, pile: &DragPile) -> Length {
    match (&asked.toe, &asked.settling, asked.method()) {
        (None, Some(settling), DragMethod::FillBase) => settling.depth,
        _ => pile.toe,
    }
}

fn layer_faults(
    asked: &DragAsked,
    sent: &DragLayers,
    pile: &DragPile,
    at: &str,
    issues: &mut Vec<Issue>,
) {
    let reach: Length = sent.layers.iter().map(|layer| layer.thickness).sum();
    let needed = needed(asked, pile);
    if !utilisation(needed.si(), reach.si()).1 {
        issues.push(
            Issue::new(
                format!("{at}/layers"),
                &refusals::DRAG_LAYERS_TOO_SHORT,
                format!(
                    "the layers reach {}, friction is needed down to {}",
                    told(reach),
                    told(needed)
                ),
            )
            .limit(told(needed))
            .source(&DERIVED),
        );
    }
    for (i, layer) in sent.layers.iter().enumerate() {
        if let Some((kind, lower, upper)) = inverted(layer) {
            issues.push(
                Issue::new(
                    format!("{at}/layers/{i}/friction/{kind}/lower_factor"),
                    &refusals::DRAG_LOWER_ABOVE_UPPER,
                    format!("lower {lower}, upper {upper}"),
                )
                .limit(upper.to_string())
                .source(&GEC12_BETA),
            );
        }
    }
}

/// Lower and upper factor of a layer, where they are the wrong way round.
fn inverted(layer: &DragLayer) -> Option<(&'static str, f64, f64)> {
    let (kind, lower, upper) = match &layer.friction {
        DragFriction::BetaBySoil(_) => return None,
        DragFriction::Beta(b) => ("beta", b.lower_factor, b.upper_factor),
        DragFriction::Alpha(a) => ("alpha", a.lower_factor?, a.upper_factor),
    };
    (lower > upper).then_some((kind, lower, upper))
}

fn table_faults(
    asked: &DragAsked,
    table: &ShaftResistanceTable,
    pile: &DragPile,
    at: &str,
    issues: &mut Vec<Issue>,
) {
    let depth = |row| table.value::<Length>(row, DEPTH).unwrap_or(Length::ZERO);
    let sum = |row| table.value::<Force>(row, RESISTANCE).unwrap_or(Force::ZERO);
    for row in 1..table.len() {
        if depth(row) <= depth(row - 1) {
            issues.push(Issue::new(
                format!("{at}{}", table.cell_pointer(row, DEPTH)),
                &refusals::DRAG_TABLE_NOT_MONOTONE,
                format!("{} after {}", told(depth(row)), told(depth(row - 1))),
            ));
        }
        if sum(row) < sum(row - 1) {
            let told = |f: Force| in_both_systems(f.si(), "N");
            issues.push(Issue::new(
                format!("{at}{}", table.cell_pointer(row, RESISTANCE)),
                &refusals::DRAG_TABLE_NOT_MONOTONE,
                format!("{} after {}", told(sum(row)), told(sum(row - 1))),
            ));
        }
    }
    let last = table.len().saturating_sub(1);
    if round9(depth(last) / pile.toe) != 1.0 {
        issues.push(
            Issue::new(
                format!("{at}{}", table.cell_pointer(last, DEPTH)),
                &refusals::DRAG_TABLE_ENDS_ELSEWHERE,
                format!(
                    "it ends at {}, the toe is at {}",
                    told(depth(last)),
                    told(pile.toe)
                ),
            )
            .limit(told(pile.toe)),
        );
    }
    if depth(0) < pile.contact_top {
        issues.push(
            Issue::new(
                format!("{at}{}", table.cell_pointer(0, DEPTH)),
                &DEPTHS_OUT_OF_ORDER,
                format!(
                    "the table begins at {}, the shaft touches soil from {}",
                    told(depth(0)),
                    told(pile.contact_top)
                ),
            )
            .limit(told(pile.contact_top)),
        );
    }
    if let Some(settling) = &asked.settling
        && settling.depth < depth(0)
        && sum(0) > Force::ZERO
    {
        issues.push(above_first_row(at, table, settling.depth));
    }
}

/// The refusal of a neutral plane above the first row of a table.
pub(super) fn above_first_row(at: &str, table: &ShaftResistanceTable, plane: Length) -> Issue {
    let first = table.value::<Length>(0, DEPTH).unwrap_or(Length::ZERO);
    Issue::new(
        format!("{at}{}", table.cell_pointer(0, DEPTH)),
        &refusals::DRAG_TABLE_BEGINS_TOO_DEEP,
        format!(
            "the first row is at {}; it is needed from {} or less",
            told(first),
            told(plane)
        ),
    )
    .limit(told(first))
}
