//! Piles that were moved or stand off their line: their spans, the moment off the line and who
//! takes it, and what is judged of each.

use super::codes::{checks, methods};
use super::equations;
use super::outcome::{EccentricMoment, MovedPile, SpanToPile};
use super::request::{EccentricHead, Request};
use super::standing::{Standing, Tracked};
use crate::contract::{Check, SubjectKind, Work};
use crate::layout::bench::{Along, Bench};
use crate::layout::{self, PlanPoint};
use crate::quantity::{Length, LengthUnit, Moment, Size};
use crate::source::{BEARWELL_CHOICE, CALLER, DERIVED, IBC_1810_3_1_3, Sourced};

/// Distance off the line for which IBC has piles designed at least.
static ALLOWANCE: Sourced<Size> = Sourced::new(
    "mislocation_allowance",
    Size::new(3.0, LengthUnit::In),
    &IBC_1810_3_1_3,
);

/// A pile off its line or moved along it, as it now stands.
pub(super) struct Spot<'a> {
    pub pile: &'a Tracked,
    pub after: usize,
    pub event: usize,
    pub beam: usize,
    pub along: f64,
    /// Positive to the left of the beam.
    pub off: f64,
    pub centre: PlanPoint,
}

/// The piles that an event moved or put off their line, as the bench now has them.
pub(super) fn spots<'a>(standing: &'a Standing, bench: &Bench<'_>) -> Vec<Spot<'a>> {
    let mut out = Vec::new();
    for pile in &standing.piles {
        let (Some(after), Some(event)) = (pile.after, pile.event) else {
            continue;
        };
        let position = &standing.positions[after];
        let stands = bench.stands_on(after);
        let off = position.off_line.map_or(0.0, |o| o.si());
        let (beam, along) = match pile.moved {
            Some((beam, along, _)) => (beam, along),
            None if off != 0.0 => match stands.first() {
                Some(first) => (first.beam, 0.0),
                None => continue,
            },
            None => continue,
        };
        let on = stands.iter().find(|s| s.beam == beam).copied();
        let centre = on.map_or(position.at, |on| centre(bench, on, off, position.at));
        out.push(Spot {
            pile,
            after,
            event,
            beam,
            along,
            off,
            centre,
        });
    }
    out
}

/// Where the centre of a pile off its line is.
pub(super) fn centre(bench: &Bench<'_>, on: Along, off: f64, at: PlanPoint) -> PlanPoint {
    let Some((_, left)) = bench.point_along(on) else {
        return at;
    };
    PlanPoint {
        x: at.x + Length::from_si(off * left.0),
        y: at.y + Length::from_si(off * left.1),
    }
}

/// The piles next to one along its beams.
pub(super) fn spans(bench: &Bench<'_>, pile: usize) -> Vec<SpanToPile> {
    let labels: Vec<&str> = bench.pile_labels().collect();
    let all = bench.neighbours(pile).into_iter();
    all.map(|n| SpanToPile {
        beam: bench.beam_labels()[n.beam].clone(),
        to: n.pile.map(|p| labels[p].to_owned()),
        distance: Length::from_si(n.distance),
    })
    .collect()
}

/// The rows of moved piles, each with its checks.
pub(super) fn rows(
    request: &Request,
    spots: &[Spot<'_>],
    spans_before: &[Vec<SpanToPile>],
    bench: &Bench<'_>,
    after: Option<&layout::Outcome>,
    work: &mut Work,
) -> Vec<MovedPile> {
    let mut out = Vec::with_capacity(spots.len());
    for spot in spots {
        let label = &spot.pile.label;
        work.trace.about(|| format!("pile {label}"));
        let off = Size::from_si(spot.off);
        if spot.off != 0.0 {
            off_line(request, spot, bench, work);
        }
        let plate_to_form = plate(request, spot, bench, work);
        let row = after.map(|a| &a.piles[spot.after]);
        let eccentricity = row.filter(|_| spot.off != 0.0).map(|row| {
            let moment = equations::eccentric_moment(row.compression.demand, off, &mut work.trace);
            let mut told = EccentricMoment {
                by_reaction: moment,
                by_tributary: row
                    .tributary
                    .map(|t| Moment::from_si(t.si().max(0.0) * spot.off.abs())),
                pile_stiffness: None,
                beam_stiffness: None,
                pile_moment: None,
                beam_torque: None,
            };
            if let (Some(head), Some(after)) = (&request.eccentricity, after) {
                share(head, spot, bench, after, &mut told, work);
            }
            told
        });
        out.push(MovedPile {
            label: label.clone(),
            event_index: spot.event as u32,
            beam: bench.beam_labels()[spot.beam].clone(),
            along: Length::from_si(spot.along),
            off_line: off,
            centre: spot.centre,
            spans_before: spot
                .pile
                .before
                .and_then(|b| spans_before.get(b).cloned())
                .unwrap_or_default(),
            spans_after: spans(bench, spot.after),
            eccentricity,
            plate_to_form,
        });
    }
    work.trace.about(String::new);
    out
}

/// The greatest distance off the line that the design allows for, and where it comes from.
pub(super) fn allowance(request: &Request) -> (Size, &'static crate::source::Reference) {
    let sent = request.mislocation.as_ref().and_then(|m| m.allowance);
    match sent {
        Some(sent) => (sent, &CALLER),
        None => (ALLOWANCE.value, ALLOWANCE.reference),
    }
}

fn off_line(request: &Request, spot: &Spot<'_>, bench: &Bench<'_>, work: &mut Work) {
    let size = Size::from_si(spot.off.abs());
    let (allowed, source) = allowance(request);
    if request
        .mislocation
        .as_ref()
        .and_then(|m| m.allowance)
        .is_none()
    {
        work.take(&ALLOWANCE);
    }
    let label = spot.pile.label.as_str();
    let check = Check::at_most(&checks::OFF_LINE_ALLOWANCE, size, allowed, source);
    let check = match check.passed() {
        true => check,
        false => check
            .unproven()
            .reason("beyond what the design allows for: the engineer of record decides"),
    };
    work.check(check.subject(SubjectKind::Pile, label));
    let width = bench.beams()[spot.beam].width;
    work.check(
        match width {
            Some(width) => Check::at_most(&checks::PILE_WITHIN_BEAM, size, 0.5 * width, &DERIVED),
            None => Check::not_evaluated(
                &checks::PILE_WITHIN_BEAM,
                "no_beam_width: send `width` of the beam",
                &BEARWELL_CHOICE,
            ),
        }
        .subject(SubjectKind::Pile, label),
    );
}

fn plate(request: &Request, spot: &Spot<'_>, bench: &Bench<'_>, work: &mut Work) -> Option<Size> {
    let head = request.head.as_ref()?;
    let label = spot.pile.label.as_str();
    let Some(width) = bench.beams()[spot.beam].width else {
        work.check(
            Check::not_evaluated(
                &checks::HEAD_PLATE_COVER,
                "no_beam_width: send `width` of the beam",
                &BEARWELL_CHOICE,
            )
            .subject(SubjectKind::Pile, label),
        );
        return None;
    };
    let off = Size::from_si(spot.off);
    let there = equations::plate_to_form(width, off, head.plate_width, &mut work.trace);
    work.check(
        Check::at_least(&checks::HEAD_PLATE_COVER, head.cover, there, &CALLER)
            .subject(SubjectKind::Pile, label),
    );
    Some(there)
}

/// Shares the moment between the head of the pile and the beam.
fn share(
    head: &EccentricHead,
    spot: &Spot<'_>,
    bench: &Bench<'_>,
    after: &layout::Outcome,
    told: &mut EccentricMoment,
    work: &mut Work,
) {
    work.method(&methods::ECCENTRIC_HEAD);
    let label = spot.pile.label.as_str();
    let length = equations::relative_length(head.flexural_rigidity, head.subgrade, &mut work.trace);
    let pile = equations::head_stiffness(head.flexural_rigidity, length, &mut work.trace);
    told.pile_stiffness = Some(pile);
    let Some(sides) = bench.torsion_beside(spot.after, spot.beam) else {
        for (def, kind, of) in [
            (&checks::PILE_HEAD_MOMENT, SubjectKind::Pile, label),
            (
                &checks::ECCENTRIC_TORQUE,
                SubjectKind::Beam,
                &bench.beam_labels()[spot.beam],
            ),
        ] {
            let why = "no_torsional_rigidity: how the moment is shared is not known; send `torsional_rigidity` of the beams up to the next piles";
            work.check(Check::not_evaluated(def, why, &BEARWELL_CHOICE).subject(kind, of));
        }
        return;
    };
    let beam = equations::beam_stiffness(&sides, &mut work.trace);
    let taken = equations::pile_share(told.by_reaction, pile, beam, &mut work.trace);
    let stiffest = sides.iter().copied().fold(0.0, f64::max);
    let torque = (told.by_reaction - taken) * (stiffest / beam.si());
    told.beam_stiffness = Some(beam);
    told.pile_moment = Some(taken);
    told.beam_torque = Some(torque);
    work.check(
        Check::at_most(
            &checks::PILE_HEAD_MOMENT,
            taken,
            head.moment_capacity,
            &CALLER,
        )
        .subject(SubjectKind::Pile, label),
    );
    let row = &after.beams[spot.beam];
    let there = row.torsion.as_ref().map_or(Moment::ZERO, |t| t.torque);
    let check = match bench.beams()[spot.beam].torsion_capacity {
        Some(capacity) => {
            Check::at_most(&checks::ECCENTRIC_TORQUE, torque + there, capacity, &CALLER)
                .reason(format!("beside pile {label}"))
        }
        None => Check::not_evaluated(
            &checks::ECCENTRIC_TORQUE,
            "no_torsion_capacity: send `torsion_capacity` of the beam",
            &BEARWELL_CHOICE,
        ),
    };
    work.check(check.subject(SubjectKind::Beam, row.label.as_str()));
}
