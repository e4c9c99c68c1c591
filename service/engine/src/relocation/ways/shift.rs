//! The pile, or one in its stead, at another place: along its beams, beside the line, or as one
//! more. Every place on the grid within the limits is analysed.

use super::bench::{Candidate, Seeker, Tried};
use crate::contract::Refusal;
use crate::layout::PlanPoint;
use crate::layout::bench::{Along, Bench, Obstacle};
use crate::quantity::{Length, LengthUnit, Size};
use crate::relocation::compare::same_place;
use crate::relocation::moved;
use crate::relocation::outcome::{FeasibleOffset, FeasibleStretch, PileFate};
use crate::relocation::places::{shifted, tidy};
use crate::relocation::request::{PileAdded, PileMoved, RelocationEvent};
use crate::text::Label;

/// Places that are looked at along one beam.
const PLACES_MAX: usize = 20_000;
/// Distance of places along a beam where none was sent.
const STEP: Length = Length::new(0.25, LengthUnit::In);

impl Seeker<'_, '_> {
    /// Distance of places along a beam, m.
    pub fn step(&self) -> f64 {
        self.ways.step.unwrap_or(STEP).si()
    }

    /// Places on the grid along a beam from where the pile was drawn, nearest first: how far, and
    /// the point. Only those between the next piles and clear of the obstruction.
    pub fn grid(&mut self, on: Along, step: f64, side: f64, most: f64) -> Vec<(f64, PlanPoint)> {
        let but = self.pile().after;
        // beams that do not stand on these piles are no fault here
        self.bench.put(&self.applied.standing.positions).ok();
        let reach = self.bench.reach(on, but);
        let room = if side < 0.0 {
            on.at - reach.from
        } else {
            reach.to - on.at
        };
        let end = if side < 0.0 {
            reach.from == 0.0
        } else {
            reach.to == self.bench.beam_length(on.beam)
        };
        let mut out = Vec::new();
        for k in 1.. {
            let by = k as f64 * step;
            // the place of a next pile is taken, the end of a beam is free
            let inside = if end {
                by <= room + 1e-9
            } else {
                by < room - 1e-9
            };
            if by > most * (1.0 + 1e-12) || !inside {
                break;
            }
            if k > PLACES_MAX {
                self.complete = false;
                break;
            }
            let by = tidy(Length::from_si(side * by));
            if let Some(point) = shifted(self.bench, on, by.si())
                && self.clear(&point)
            {
                out.push((by.si(), point));
            }
        }
        out
    }

    fn most_along(&self) -> f64 {
        self.ways.max_along.map_or(f64::INFINITY, |m| m.si())
    }
}

/// Whether a pile may stand anywhere along a beam beside an obstacle.
pub(super) fn any_free(bench: &Bench<'_>, on: Along, obstacle: &Obstacle) -> bool {
    let length = bench.beam_length(on.beam);
    let step = f64::max(STEP.si(), length / PLACES_MAX as f64);
    let count = (length / step) as usize;
    let places = (0..=count).map(|k| k as f64 * step).chain([length]);
    places
        .filter_map(|at| bench.point_along(Along { at, ..on }))
        .any(|(point, _)| bench.clear_of(obstacle, &point))
}

/// The pile at a place along a beam, or one in its stead; none where it stands there now.
pub(super) fn put_along(
    seeker: &Seeker<'_, '_>,
    on: Along,
    by: f64,
    point: PlanPoint,
) -> Option<Candidate> {
    // where it now stands along that beam; it may stand on another one
    let here = seeker.now().and_then(|now| {
        let mut all = seeker.bench.along_at(&now.at).into_iter();
        Some((now, all.find(|a| a.beam == on.beam)?))
    });
    let Some((now, from)) = here.filter(|_| !seeker.anew_elsewhere()) else {
        if by == 0.0 {
            return None;
        }
        let mut out = seeker.without();
        let pile = seeker.anew("a", point);
        out.standing.add(pile.clone(), seeker.next_event(), None);
        out.events
            .push(RelocationEvent::Added(PileAdded { pile, why: None }));
        (out.extra, out.movement) = (1, by.abs());
        return Some(out);
    };
    let along = tidy(Length::from_si(on.at + by - from.at));
    let off = now.off_line.is_some_and(|o| o != Size::ZERO);
    if along.si() == 0.0 && !off {
        return None;
    }
    let at = if along.si() == 0.0 {
        now.at
    } else {
        shifted(seeker.bench, from, along.si())?
    };
    let mut out = seeker.nothing();
    let own = &mut out.standing.piles[seeker.asked.pile];
    own.fate = PileFate::Moved;
    own.event = Some(seeker.next_event());
    own.moved = Some((on.beam, by, 0.0));
    if let Some(after) = own.after {
        out.standing.positions[after].at = at;
        out.standing.positions[after].off_line = None;
    }
    out.events.push(RelocationEvent::Moved(PileMoved {
        pile: Label(seeker.label().to_owned()),
        along: Some(along),
        beam: Some(Label(seeker.bench.beam_labels()[on.beam].clone())),
        off_line: off.then_some(Size::ZERO),
        residual: None,
        unintended: None,
        why: None,
    }));
    out.movement = by.abs();
    Some(out)
}

/// Places along a beam with what became of each, in order along it.
struct Judged {
    at: f64,
    point: PlanPoint,
    feasible: bool,
    used: Option<f64>,
}

/// Stretches of places next to each other that are feasible.
fn stretches(beam: &str, places: &[Judged], step: f64) -> Vec<FeasibleStretch> {
    let mut out: Vec<FeasibleStretch> = Vec::new();
    let mut last: Option<f64> = None;
    for p in places {
        if !p.feasible {
            last = None;
            continue;
        }
        let next = last.is_some_and(|l| p.at - l < 1.5 * step);
        last = Some(p.at);
        let finite = p.used.filter(|u| u.is_finite());
        match out.last_mut() {
            Some(open) if next => {
                open.to = Length::from_si(p.at);
                open.to_point = p.point;
                open.to_utilisation_ratio = finite;
            }
            _ => out.push(FeasibleStretch {
                beam: beam.to_owned(),
                from: Length::from_si(p.at),
                to: Length::from_si(p.at),
                from_point: p.point,
                to_point: p.point,
                from_utilisation_ratio: finite,
                to_utilisation_ratio: finite,
            }),
        }
    }
    out
}

type Put = fn(&Seeker<'_, '_>, Along, f64, PlanPoint) -> Option<Candidate>;

/// Tries every place along the beams of the pile.
fn everywhere(seeker: &mut Seeker<'_, '_>, tried: &mut Tried, put: Put) -> Result<(), Refusal> {
    let (step, most) = (seeker.step(), seeker.most_along());
    for on in seeker.drawn.clone() {
        let mut places = Vec::new();
        places.extend(where_drawn(seeker, on, put)?);
        for side in [-1.0, 1.0] {
            for (by, point) in seeker.grid(on, step, side, most) {
                let found = match put(seeker, on, by, point) {
                    Some(candidate) => seeker.attempt(candidate, tried)?,
                    // it stands there now
                    None => {
                        let here = seeker.nothing();
                        let judged = seeker.judge(&here)?;
                        judged.map(|j| (j.feasible(), j.used))
                    }
                };
                places.push(Judged {
                    at: on.at + by,
                    point,
                    feasible: found.is_some_and(|f| f.0),
                    used: found.and_then(|f| f.1),
                });
            }
        }
        places.sort_by(|a, b| a.at.total_cmp(&b.at));
        let label = seeker.bench.beam_labels()[on.beam].clone();
        tried.stretches.extend(stretches(&label, &places, step));
    }
    if tried.tried_count == 0 {
        tried.reason = Some("no place within the limits is clear".to_owned());
    }
    Ok(())
}

/// The place where a pile that stands was drawn: nothing says that it may not stand there, but
/// to say so is no way out.
fn where_drawn(
    seeker: &mut Seeker<'_, '_>,
    on: Along,
    put: Put,
) -> Result<Option<Judged>, Refusal> {
    let point = seeker.asked.drawn;
    // a pile that is short has its own capacity only where it is
    let here = seeker
        .now()
        .is_some_and(|n| !seeker.anew_elsewhere() || same_place(&n.at, &point));
    if !here || !seeker.clear(&point) {
        return Ok(None);
    }
    let candidate = put(seeker, on, 0.0, point).unwrap_or_else(|| seeker.nothing());
    let found = seeker.judge(&candidate)?;
    Ok(found.map(|judged| Judged {
        at: on.at,
        point,
        feasible: judged.feasible(),
        used: judged.used,
    }))
}

/// The pile along its beams.
pub(super) fn along(seeker: &mut Seeker<'_, '_>, tried: &mut Tried) -> Result<(), Refusal> {
    everywhere(seeker, tried, put_along)
}

/// One more pile beside one that stands.
pub(super) fn extra(seeker: &mut Seeker<'_, '_>, tried: &mut Tried) -> Result<(), Refusal> {
    if !seeker.stands() {
        let why = "the pile is lost; one in its stead is `shift_along`";
        tried.reason = Some(why.to_owned());
        return Ok(());
    }
    everywhere(seeker, tried, |seeker, _, by, point| {
        if by == 0.0 {
            return None;
        }
        let mut out = seeker.nothing();
        let pile = seeker.anew("a", point);
        out.standing.add(pile.clone(), seeker.next_event(), None);
        out.events
            .push(RelocationEvent::Added(PileAdded { pile, why: None }));
        (out.extra, out.movement) = (1, by.abs());
        Some(out)
    })
}

/// The pile beside its line.
pub(super) fn off(seeker: &mut Seeker<'_, '_>, tried: &mut Tried) -> Result<(), Refusal> {
    if !seeker.stands() && seeker.obstacle.is_none() {
        let why = "the pile is lost and no obstruction was sent to stand beside";
        tried.reason = Some(why.to_owned());
        return Ok(());
    }
    let allowed = moved::allowance(seeker.request).0;
    let most = seeker.ways.max_off_line.unwrap_or(allowed).si();
    off_within(seeker, tried, 0.0, most)
}

/// Offsets beyond one and up to another.
pub(super) fn off_within(
    seeker: &mut Seeker<'_, '_>,
    tried: &mut Tried,
    beyond: f64,
    most: f64,
) -> Result<(), Refusal> {
    let at = seeker.now().map_or(seeker.asked.drawn, |n| n.at);
    let beams = seeker.bench.along_at(&at);
    // at a corner a pile in the stead of a lost one has no line of its own but the first
    let count = if seeker.anew_elsewhere() {
        1
    } else {
        beams.len()
    };
    let step = seeker.step();
    for on in beams.into_iter().take(count) {
        let mut open: Option<FeasibleOffset> = None;
        let most_count = ((most / step) * (1.0 + 1e-12)) as i64;
        let label = seeker.bench.beam_labels()[on.beam].clone();
        for k in -most_count..=most_count {
            let off = tidy(Length::from_si(k as f64 * step)).si();
            if off == 0.0 || off.abs() <= beyond * (1.0 + 1e-12) {
                tried.offsets.extend(open.take());
                continue;
            }
            let centre = moved::centre(seeker.bench, on, off, at);
            let found = match seeker.clear(&centre) {
                true => {
                    let candidate = beside(seeker, on, off, at);
                    seeker.attempt(candidate, tried)?
                }
                false => None,
            };
            if found.is_some_and(|f| f.0) {
                let size = Size::from_si(off);
                let range = open.get_or_insert(FeasibleOffset {
                    beam: label.clone(),
                    from: size,
                    to: size,
                });
                range.to = size;
            } else {
                tried.offsets.extend(open.take());
            }
        }
        tried.offsets.extend(open.take());
    }
    if tried.tried_count == 0 {
        tried.reason = Some("no place beside the line within the limits is clear".to_owned());
    }
    Ok(())
}

fn beside(seeker: &Seeker<'_, '_>, on: Along, off: f64, at: PlanPoint) -> Candidate {
    let size = Size::from_si(off);
    if seeker.anew_elsewhere() {
        let mut out = seeker.without();
        let mut pile = seeker.anew("a", at);
        pile.off_line = Some(size);
        let line = Some((on.beam, 0.0, off));
        out.standing.add(pile.clone(), seeker.next_event(), line);
        out.events
            .push(RelocationEvent::Added(PileAdded { pile, why: None }));
        (out.extra, out.movement) = (1, off.abs());
        return out;
    }
    let mut out = seeker.nothing();
    let own = &mut out.standing.piles[seeker.asked.pile];
    own.fate = PileFate::Moved;
    own.event = Some(seeker.next_event());
    let along = own.moved.map_or(0.0, |m| m.1);
    own.moved = Some((on.beam, along, off));
    if let Some(after) = own.after {
        out.standing.positions[after].off_line = Some(size);
    }
    out.events.push(RelocationEvent::Moved(PileMoved {
        pile: Label(seeker.label().to_owned()),
        along: None,
        beam: Some(Label(seeker.bench.beam_labels()[on.beam].clone())),
        off_line: Some(size),
        residual: None,
        unintended: None,
        why: None,
    }));
    out.movement = off.abs();
    out
}
