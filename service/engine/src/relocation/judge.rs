//! What is judged of the plan as it now stands beyond what `pile-layout` judges: keep-outs at the
//! centre of piles off their line, the overload by mislocation, beams whose strength is not known.

use super::codes::{checks, warnings};
use super::compare::Spans;
use super::moved::{self, Spot, allowance};
use super::outcome::PileFate;
use super::request::{RelocationEvent, Request};
use super::standing::{Standing, given};
use crate::contract::{Check, CheckStatus, Refusal, SubjectKind, Work, utilisation};
use crate::layout::bench::Bench;
use crate::layout::codes::checks::{KEEP_OUT, PILE_COMPRESSION, PILE_SPACING};
use crate::layout::{GivenPile, Outcome};
use crate::quantity::{Force, Length, Size, round9};
use crate::source::{BEARWELL_CHOICE, CALLER, IBC_1810_3_1_3, STATICS_CLOSURE, Sourced};

/// Piles named in one warning.
const NAMED_MAX: usize = 24;

/// What a pile may carry of its allowable compression where a mislocation overloads it.
static OVERLOAD: Sourced<f64> = Sourced::new("mislocation_overload_factor", 1.1, &IBC_1810_3_1_3);

/// Growth of a span above which the strength of the beam has to be known.
static GROWTH: Sourced<f64> = Sourced::new("span_growth_without_strength", 0.1, &BEARWELL_CHOICE);

/// Beams that no longer stand.
pub(super) fn fallen(beams: &[(String, String)], work: &mut Work) {
    for (label, why) in beams {
        work.check(
            Check::at_most(&checks::PLAN_STANDS, 1.0, 0.0, &STATICS_CLOSURE)
                .subject(SubjectKind::Beam, label.as_str())
                .reason(why.as_str()),
        );
    }
}

/// Measures keep-outs from the centre of piles off their line, in place of the checks at the line.
/// One without an event stands to the left of the first of its beams where its distance is
/// positive.
pub(super) fn keep_outs(
    standing: &Standing,
    spots: &[Spot<'_>],
    bench: &Bench<'_>,
    work: &mut Work,
) {
    let obstacles = bench.obstacles();
    if obstacles.is_empty() {
        return;
    }
    for (number, position) in standing.positions.iter().enumerate() {
        let off = position.off_line.map_or(0.0, |o| o.si());
        let Some(pile) = standing.after(number).filter(|_| off != 0.0) else {
            continue;
        };
        let label = &pile.label;
        let centre = match spots.iter().find(|s| s.after == number) {
            Some(spot) => spot.centre,
            None => match bench.stands_on(number).first() {
                Some(on) => moved::centre(bench, *on, off, position.at),
                None => position.at,
            },
        };
        work.checks.retain(|c| {
            let of_pile = c.subject.as_ref().is_some_and(|s| s.label == *label);
            !(c.id == KEEP_OUT.id && of_pile)
        });
        let all: Vec<(f64, f64, String)> = obstacles
            .iter()
            .map(|o| bench.distance(o, &centre))
            .collect();
        let room = |i: usize| all[i].0 - all[i].1;
        let least = (0..all.len()).min_by(|a, b| room(*a).total_cmp(&room(*b)));
        for (i, (distance, clearance, name)) in all.iter().enumerate() {
            if Some(i) == least || !utilisation(*clearance, *distance).1 {
                let (least, there) = (Length::from_si(*clearance), Length::from_si(*distance));
                work.check(
                    Check::at_least(&KEEP_OUT, least, there, &CALLER)
                        .subject(SubjectKind::Pile, label.as_str())
                        .reason(format!("to {name}, from the centre of the pile")),
                );
            }
        }
    }
}

/// Warns of piles within the allowance, and of a least distance that was not sent.
pub(super) fn warn(request: &Request, standing: &Standing, spots: &[Spot<'_>], work: &mut Work) {
    let (allowed, _) = allowance(request);
    let within = spots.iter().filter(|s| {
        let size = s.off.abs();
        size > 0.0 && utilisation(size, allowed.si()).1
    });
    let told: Vec<String> = within
        .map(|s| {
            let size = Size::ROLE.in_both_systems(s.off.abs());
            format!("{}: {size}", s.pile.label)
        })
        .collect();
    if !told.is_empty() {
        let most = Size::ROLE.in_both_systems(allowed.si());
        work.warn(
            &warnings::OFF_LINE_USED,
            format!("{} of {most}", named(&told)),
        );
    }
    let judged = work.checks.iter().any(|c| c.id == PILE_SPACING.id);
    let new: Vec<String> = standing
        .piles
        .iter()
        .filter(|p| p.after.is_some())
        .filter(|p| p.fate == PileFate::Added || p.moved.is_some_and(|m| m.1 != 0.0))
        .map(|p| p.label.clone())
        .collect();
    if !judged && !new.is_empty() && standing.positions.len() > 1 {
        work.warn(&warnings::SPACING_UNKNOWN, named(&new));
    }
}

/// A list in words, not too long.
pub(super) fn named(all: &[String]) -> String {
    let shown = &all[..all.len().min(NAMED_MAX)];
    match all.len() - shown.len() {
        0 => shown.join(", "),
        more => format!("{} and {more} more", shown.join(", ")),
    }
}

/// Beams without known strength whose longest span grew.
pub(super) fn strengths(bench: &Bench<'_>, spans: &Spans, work: &mut Work) {
    let mut limit = None;
    for (b, label) in bench.beam_labels().iter().enumerate() {
        let (Some(was), Some(is)) = (spans.before[b], spans.after[b]) else {
            continue;
        };
        if bench.strength_known(b) || is <= was {
            continue;
        }
        let most = *limit.get_or_insert_with(|| work.take(&GROWTH));
        if round9(is / was) > 1.0 + most {
            let told = |v: f64| Length::ROLE.in_both_systems(v);
            work.check(
                Check::not_evaluated(
                    &checks::STRENGTH_UNKNOWN,
                    format!(
                        "no_beam_strength: its longest span grows from {} to {}; send `moment_capacity` and `shear_capacity`, or `section`",
                        told(was),
                        told(is)
                    ),
                    GROWTH.reference,
                )
                .subject(SubjectKind::Beam, label.as_str()),
            );
        }
    }
}

/// Judges piles that a mislocation overloads by the rule that was named.
pub(super) fn overload(
    request: &Request,
    standing: &Standing,
    bench: &mut Bench<'_>,
    work: &mut Work,
) -> Result<(), Refusal> {
    let rule = request.mislocation.as_ref().and_then(|m| m.overload);
    let over: Vec<usize> = work
        .checks
        .iter()
        .enumerate()
        .filter(|(_, c)| c.id == PILE_COMPRESSION.id && c.status == CheckStatus::Fail)
        .map(|(i, _)| i)
        .collect();
    if rule.is_none() || over.is_empty() {
        return Ok(());
    }
    let without = without_moves(request, standing, bench, work)?;
    let (mut taken, mut not) = (Vec::new(), Vec::new());
    for i in over {
        let check = &work.checks[i];
        let Some(label) = check.subject.as_ref().map(|s| s.label.clone()) else {
            continue;
        };
        let carries = without.contains(&label);
        let (Some(demand), Some(capacity)) = (&check.demand, &check.capacity) else {
            continue;
        };
        if !carries {
            not.push(label);
            continue;
        }
        let factor = OVERLOAD.value;
        let (demand, capacity) = (
            Force::from_si(demand.value()),
            Force::from_si(capacity.value() * factor),
        );
        let new = Check::at_most(
            &checks::MISLOCATION_OVERLOAD,
            demand,
            capacity,
            OVERLOAD.reference,
        )
        .subject(SubjectKind::Pile, label.as_str())
        .reason(format!("{factor} times the allowable compression"));
        let new = match &check.combination {
            Some(name) => new.combination(name.as_str()),
            None => new,
        };
        work.checks[i] = new;
        taken.push(label);
    }
    if !taken.is_empty() {
        work.take(&OVERLOAD);
        work.warn(&warnings::OVERLOAD_TAKEN, named(&taken));
    }
    if !not.is_empty() {
        let any = request.events.iter().any(unintended);
        let why = if any {
            "overloaded without the moves that nobody meant too"
        } else {
            "no event is `unintended`"
        };
        let detail = format!("{}: {why}", named(&not));
        work.warn(&warnings::OVERLOAD_NOT_TAKEN, detail);
    }
    Ok(())
}

fn unintended(event: &RelocationEvent) -> bool {
    matches!(event, RelocationEvent::Moved(m) if m.unintended == Some(true))
}

/// Labels of the piles that carry their compression without the moves that nobody meant.
fn without_moves(
    request: &Request,
    standing: &Standing,
    bench: &mut Bench<'_>,
    work: &Work,
) -> Result<Vec<String>, Refusal> {
    if !request.events.iter().any(unintended) {
        return Ok(Vec::new());
    }
    let carries = |outcome: &Outcome, checks: &[Check]| -> Vec<String> {
        let fails = |label: &str| {
            checks.iter().any(|c| {
                c.id == PILE_COMPRESSION.id
                    && c.status == CheckStatus::Fail
                    && c.subject.as_ref().is_some_and(|s| s.label == label)
            })
        };
        let all = outcome.piles.iter().map(|p| p.label.clone());
        all.filter(|l| !fails(l)).collect()
    };
    let moved_back: Vec<GivenPile> = standing
        .positions
        .iter()
        .enumerate()
        .map(|(i, position)| {
            let tracked = standing.after(i);
            let back = tracked.and_then(|t| {
                let event = request.events.get(t.event?)?;
                let was = given(&request.layout).get(t.before?)?;
                unintended(event).then_some(was)
            });
            match back {
                Some(was) => GivenPile {
                    at: was.at,
                    off_line: was.off_line,
                    ..position.clone()
                },
                None => position.clone(),
            }
        })
        .collect();
    let mut scratch = work.quietly();
    let found = match bench
        .put(&moved_back)
        .and_then(|()| bench.tried(&mut scratch))
    {
        Ok(outcome) => carries(&outcome, &scratch.checks),
        Err(refusal) if refusal.interrupted => return Err(refusal),
        // it does not even stand without them
        Err(_) => Vec::new(),
    };
    work.go_on()?;
    bench.put(&standing.positions)?;
    Ok(found)
}
