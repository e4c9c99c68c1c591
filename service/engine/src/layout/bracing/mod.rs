//! Single rows of piles without lateral bracing: a clause over half the width of the wall, the
//! offset of a pile from it, storeys and height. Other calculations that move or survey piles ask
//! the two functions at the top.

use super::codes::{checks, methods, warnings};
use super::outcome::Outcome;
use super::report::Analysis;
use super::request::{BracedBuilding, PilePlacement, SingleRowBracing};
use crate::contract::{Check, SubjectKind, Work};
use crate::quantity::{Length, LengthUnit, Moment, Size};
use crate::source::{IBC_1810_2_2, IBC_1810_2_2_LIMITS, Sourced};

/// Piles named in one warning.
const NAMED_MAX: usize = 24;

/// Most storeys above grade plane over an unbraced single row.
pub(crate) static STOREYS_MAX: Sourced<f64> =
    Sourced::new("single_row_storeys", 2.0, &IBC_1810_2_2_LIMITS);

/// Greatest height of a building over an unbraced single row.
pub(crate) static HEIGHT_MAX: Sourced<Length> = Sourced::new(
    "single_row_height",
    Length::new(35.0, LengthUnit::Ft),
    &IBC_1810_2_2_LIMITS,
);

/// Whether the centre of a pile lies within the width of the wall.
///
/// |e| <= b/2; e offset of the pile from the centre line of the wall, b/2 half the width of the
/// wall (m). Source: IBC 1810.2.2, exception for single rows.
pub(crate) fn within_wall(half_width: Size, offset: Size, pile: &str) -> Check {
    let offset = Size::from_si(offset.si().abs());
    Check::at_most(
        &checks::PILE_WITHIN_WALL_WIDTH,
        offset,
        half_width,
        &IBC_1810_2_2,
    )
    .subject(SubjectKind::Pile, pile)
}

/// Whether the building is one over which a single row may stand unbraced: its kind, storeys and
/// height, each a check.
pub(crate) fn building(kind: BracedBuilding, storey_count: u32, height: Length, work: &mut Work) {
    work.method(&methods::SINGLE_ROW_BRACING);
    if kind == BracedBuilding::Other {
        work.check(
            Check::not_evaluated(
                &checks::SINGLE_ROW_BUILDING,
                "bracing_needed: only dwellings of one or two families and light construction may stand on an unbraced single row; show how the piles are braced in all directions",
                &IBC_1810_2_2,
            )
            .subject(SubjectKind::Plan, "plan"),
        );
    }
    let storeys = work.take(&STOREYS_MAX);
    let most = work.take(&HEIGHT_MAX);
    let count = f64::from(storey_count);
    for check in [
        Check::at_most(
            &checks::SINGLE_ROW_STOREYS,
            count,
            storeys,
            &IBC_1810_2_2_LIMITS,
        ),
        Check::at_most(
            &checks::SINGLE_ROW_HEIGHT,
            height,
            most,
            &IBC_1810_2_2_LIMITS,
        ),
    ] {
        work.check(check.subject(SubjectKind::Plan, "plan"));
    }
}

/// Checks the plan where it is asked, and warns of piles off their line.
pub(super) fn judge(analysis: &Analysis<'_>, outcome: &Outcome, work: &mut Work) {
    off_line(analysis, outcome, work);
    let Some(bracing) = &analysis.request.bracing else {
        return;
    };
    building(bracing.building, bracing.storey_count, bracing.height, work);
    for (p, pile) in analysis.piles.iter().enumerate() {
        let half = 0.5 * wall_width(analysis, bracing, p);
        work.check(within_wall(half, offset(analysis, p), &pile.label));
    }
}

/// Offset of a pile from the centre line; nil where it was searched.
fn offset(analysis: &Analysis<'_>, pile: usize) -> Size {
    match &analysis.request.piles {
        PilePlacement::Given(g) => g.positions[pile].off_line.unwrap_or(Size::ZERO),
        PilePlacement::Search(_) => Size::ZERO,
    }
}

/// Width of the narrowest wall over a pile.
fn wall_width(analysis: &Analysis<'_>, bracing: &SingleRowBracing, pile: usize) -> Size {
    let plan = &analysis.frame.plan;
    let place = &analysis.piles[pile].place;
    let own = [(place.run, place.at)];
    let touched: &[(usize, f64)] = match place.meeting {
        Some(m) => &plan.meetings[m].on,
        None => &own,
    };
    touched
        .iter()
        .flat_map(|(run, at)| {
            let run = &plan.runs[*run];
            [run.beam_at(*at), run.beam_after(*at)]
        })
        .map(|b| {
            let own = analysis.request.beams[b].wall_width;
            own.unwrap_or(bracing.wall_width)
        })
        .reduce(Size::min)
        .unwrap_or(bracing.wall_width)
}

/// Names piles off their line with the moment about the beam's axis that this makes.
///
/// M = R |e|; R greatest compression (N), e offset (m). Source: statics.
fn off_line(analysis: &Analysis<'_>, outcome: &Outcome, work: &mut Work) {
    let mut named = Vec::new();
    for (p, row) in outcome.piles.iter().enumerate() {
        let offset = offset(analysis, p).si().abs();
        if offset > 0.0 {
            let moment = row.compression.demand.si() * offset;
            named.push(format!(
                "{} {}",
                row.label,
                Moment::ROLE.in_both_systems(moment)
            ));
        }
    }
    if named.is_empty() {
        return;
    }
    let more = named.len().saturating_sub(NAMED_MAX);
    named.truncate(NAMED_MAX);
    let tail = if more > 0 {
        format!(" and {more} more")
    } else {
        String::new()
    };
    work.warn(
        &warnings::PILE_OFF_LINE,
        format!(
            "greatest compression times offset: {}{tail}",
            named.join(", ")
        ),
    );
}
