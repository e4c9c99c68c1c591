//! The events carried out on the plan: the request as it then stands, where each of its piles
//! comes from, and every fault of the events.

use super::codes::refusals;
use super::outcome::PileFate;
use super::request::{
    BeamStrengthened, PileAdded, PileMoved, PileReplaced, RelocationEvent, Request,
    ResidualCapacity,
};
use crate::catalogue::RefusalDef;
use crate::catalogue::refusals::{DUPLICATE_LABEL, MISSING_MEMBER};
use crate::contract::Issue;
use crate::layout::bench::{Along, Bench};
use crate::layout::{self, GivenPile, GivenPiles, GradeBeam, PilePlacement, PlanPoint};
use crate::quantity::{Force, Length, LengthUnit, Size, round9};
use crate::text::Label;

/// A pile of before, of after, or of both.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Tracked {
    pub label: String,
    pub fate: PileFate,
    /// The event that is about it.
    pub event: Option<usize>,
    /// Its number before.
    pub before: Option<usize>,
    /// Its number after.
    pub after: Option<usize>,
    /// The beam along which it moved, how far, and how far off that line it stands.
    pub moved: Option<(usize, f64, f64)>,
}

/// The piles as they stand after events.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Standing {
    /// Every pile of before in order, then those added.
    pub piles: Vec<Tracked>,
    /// Those that stand.
    pub positions: Vec<GivenPile>,
}

/// The plan with the events.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Applied {
    /// Without its piles, see `with`.
    layout: layout::Request,
    pub standing: Standing,
    /// Beams that are stronger, by their number, with the event.
    pub stronger: Vec<(usize, usize)>,
}

impl Applied {
    /// The beams as they are now.
    pub fn beams(&self) -> &[GradeBeam] {
        &self.layout.beams
    }

    /// The plan on these piles.
    pub fn with(&self, positions: &[GivenPile]) -> layout::Request {
        let mut layout = self.layout.clone();
        fill(&mut layout, positions.to_vec());
        layout
    }

    /// The plan as it now stands.
    pub fn into_layout(self) -> layout::Request {
        let mut layout = self.layout;
        fill(&mut layout, self.standing.positions);
        layout
    }
}

fn fill(layout: &mut layout::Request, positions: Vec<GivenPile>) {
    if let PilePlacement::Given(given) = &mut layout.piles {
        given.positions = positions;
    }
}

impl Standing {
    /// The pile with a number of after.
    pub fn after(&self, number: usize) -> Option<&Tracked> {
        self.piles.iter().find(|p| p.after == Some(number))
    }

    /// Takes a pile away.
    pub fn remove(&mut self, pile: usize) {
        let Some(gone) = self.piles[pile].after.take() else {
            return;
        };
        self.positions.remove(gone);
        for other in &mut self.piles {
            if let Some(after) = &mut other.after
                && *after > gone
            {
                *after -= 1;
            }
        }
    }

    /// Adds a pile with its label; `moved` says off which line it stands.
    pub fn add(&mut self, pile: GivenPile, event: usize, moved: Option<(usize, f64, f64)>) {
        self.piles.push(Tracked {
            label: pile.label.as_ref().map_or("", Label::as_str).to_owned(),
            fate: PileFate::Added,
            event: Some(event),
            before: None,
            after: Some(self.positions.len()),
            moved,
        });
        self.positions.push(pile);
    }
}

/// The given piles of a plan; none where they are searched.
pub(super) fn given(layout: &layout::Request) -> &[GivenPile] {
    match &layout.piles {
        PilePlacement::Given(g) => &g.positions,
        PilePlacement::Search(_) => &[],
    }
}

/// Carries out the events. Where one has a fault it is left undone.
pub(super) fn apply(request: &Request, bench: &Bench<'_>, issues: &mut Vec<Issue>) -> Applied {
    let labels: Vec<String> = bench.pile_labels().map(str::to_owned).collect();
    let mut doing = Doing {
        bench,
        piles: labels
            .iter()
            .enumerate()
            .map(|(i, label)| Tracked {
                label: label.clone(),
                fate: PileFate::Unchanged,
                event: None,
                before: Some(i),
                after: None,
                moved: None,
            })
            .collect(),
        positions: given(&request.layout)
            .iter()
            .zip(&labels)
            .map(|(p, label)| {
                Some(GivenPile {
                    label: Some(Label(label.clone())),
                    ..p.clone()
                })
            })
            .collect(),
        layout: without_piles(&request.layout),
        stronger: Vec::new(),
        issues,
    };
    for (e, event) in request.events.iter().enumerate() {
        doing.one(e, event);
    }
    doing.finish()
}

struct Doing<'a> {
    bench: &'a Bench<'a>,
    piles: Vec<Tracked>,
    positions: Vec<Option<GivenPile>>,
    layout: layout::Request,
    stronger: Vec<(usize, usize)>,
    issues: &'a mut Vec<Issue>,
}

impl Doing<'_> {
    fn fault(&mut self, pointer: String, code: &'static RefusalDef, detail: impl Into<String>) {
        self.issues.push(Issue::new(pointer, code, detail));
    }

    fn one(&mut self, e: usize, event: &RelocationEvent) {
        let path = format!("/events/{e}/{}", event.tag());
        let pile = match event {
            RelocationEvent::Added(a) => return self.added(e, a, &path),
            RelocationEvent::Strengthened(s) => return self.strengthened(e, s, &path),
            RelocationEvent::Moved(m) => &m.pile,
            RelocationEvent::StoppedShort(s) => &s.pile,
            RelocationEvent::Replaced(r) => &r.pile,
            RelocationEvent::Omitted(o) => &o.pile,
        };
        let pointer = format!("{path}/pile");
        let found = self.piles.iter().position(|p| p.label == pile.as_str());
        let Some(i) = found else {
            return self.fault(pointer, &refusals::UNKNOWN_PILE, self.nearest(pile));
        };
        if let Some(first) = self.piles[i].event {
            let detail = match self.piles[i].before {
                Some(_) => format!(
                    "event {first} is about it; a pile that was moved and then stopped short is `moved` with its `residual`"
                ),
                None => format!("event {first} adds it; send it there as it now stands"),
            };
            return self.fault(pointer, &refusals::EVENT_TWICE, detail);
        }
        self.piles[i].event = Some(e);
        match event {
            RelocationEvent::Moved(m) => self.moved(i, m, &path),
            RelocationEvent::StoppedShort(s) => match &s.residual {
                Some(residual) => {
                    self.residual(i, residual, s.why.is_some(), &path);
                    self.piles[i].fate = PileFate::Residual;
                }
                None => {
                    self.positions[i] = None;
                    self.piles[i].fate = PileFate::Lost;
                }
            },
            RelocationEvent::Replaced(r) => self.replaced(i, r, &path),
            RelocationEvent::Omitted(_) => {
                self.positions[i] = None;
                self.piles[i].fate = PileFate::Omitted;
            }
            RelocationEvent::Added(_) | RelocationEvent::Strengthened(_) => {}
        }
    }

    /// Says which labels there are.
    fn nearest(&self, wanted: &Label) -> String {
        let lower = wanted.as_str().to_lowercase();
        let alike = self.piles.iter().find(|p| p.label.to_lowercase() == lower);
        match alike {
            Some(p) => format!("`{wanted}` is none; `{}` is", p.label),
            None => format!("`{wanted}` is none of {} piles", self.piles.len()),
        }
    }

    fn moved(&mut self, i: usize, m: &PileMoved, path: &str) {
        if m.along.is_none() && m.off_line.is_none() && m.residual.is_none() {
            let detail = "send `along`, `off_line` or `residual`";
            return self.fault(path.to_owned(), &refusals::NOTHING_CHANGES, detail);
        }
        if let Some(residual) = &m.residual {
            self.residual(i, residual, m.why.is_some(), path);
        }
        let stands = self.bench.stands_on(i);
        let by = m.along.map_or(0.0, |a| a.si());
        let Some(on) = self.beam_of(m, &stands, by != 0.0, path) else {
            return;
        };
        let Some(pile) = &mut self.positions[i] else {
            return;
        };
        if let Some(off) = m.off_line {
            pile.off_line = (off != Size::ZERO).then_some(off);
        }
        let off = pile.off_line.map_or(0.0, |o| o.si());
        if by != 0.0 {
            match shifted(self.bench, on, by) {
                Some(point) => pile.at = point,
                None => {
                    let told = |v: f64| Length::ROLE.in_both_systems(v);
                    let length = self.bench.beam_length(on.beam);
                    let (back, forth) = (on.at, length - on.at);
                    self.issues.push(
                        Issue::new(
                            format!("{path}/along"),
                            &refusals::MOVED_OFF_BEAM,
                            format!(
                                "beam {} is {} long, and the pile stands at {}",
                                self.bench.beam_labels()[on.beam],
                                told(length),
                                told(on.at)
                            ),
                        )
                        .limit(format!(
                            "{} back to {} forth, openings without a beam left out",
                            told(back),
                            told(forth)
                        )),
                    );
                    return;
                }
            }
        }
        self.piles[i].fate = PileFate::Moved;
        self.piles[i].moved = Some((on.beam, by, off));
    }

    /// The beam along which a pile moves.
    fn beam_of(
        &mut self,
        m: &PileMoved,
        stands: &[Along],
        goes: bool,
        path: &str,
    ) -> Option<Along> {
        let names = |of: &Self| -> Vec<String> {
            let all = stands.iter();
            all.map(|s| of.bench.beam_labels()[s.beam].clone())
                .collect()
        };
        if let Some(wanted) = &m.beam {
            let labels = self.bench.beam_labels();
            let Some(beam) = labels.iter().position(|l| l == wanted.as_str()) else {
                let detail = format!("`{wanted}` is none of {} beams", labels.len());
                self.fault(format!("{path}/beam"), &refusals::UNKNOWN_BEAM, detail);
                return None;
            };
            let found = stands.iter().find(|s| s.beam == beam).copied();
            if found.is_none() {
                let detail = format!("it stands on {}", names(self).join(", "));
                self.fault(format!("{path}/beam"), &refusals::NOT_ON_BEAM, detail);
            }
            return found;
        }
        let off = m.off_line.is_some_and(|o| o != Size::ZERO);
        if stands.len() > 1 && (goes || off) {
            let detail = format!("send `beam`, one of {}", names(self).join(", "));
            self.fault(path.to_owned(), &refusals::BEAM_NEEDED, detail);
            return None;
        }
        stands.first().copied()
    }

    fn residual(&mut self, i: usize, residual: &ResidualCapacity, why: bool, path: &str) {
        let path = format!("{path}/residual");
        for (now, member, had) in [
            (
                residual.compression,
                "compression",
                self.bench.capacity(i).0,
            ),
            (residual.tension, "tension", self.bench.capacity(i).1),
        ] {
            self.raised(Some(now), had, why, format!("{path}/{member}"));
        }
        if let Some(pile) = &mut self.positions[i] {
            pile.compression = Some(residual.compression);
            pile.tension = Some(residual.tension);
            if residual.stiffness.is_some() {
                pile.stiffness = residual.stiffness;
                pile.founded_on_rock = None;
            }
            if residual.founded_on_rock == Some(true) {
                pile.founded_on_rock = Some(true);
                // both sent is a fault of the plan
                pile.stiffness = residual.stiffness;
            }
        }
    }

    /// A capacity above what the pile had needs a reason.
    fn raised(&mut self, now: Option<Force>, had: Option<f64>, why: bool, pointer: String) {
        let (Some(now), Some(had)) = (now, had) else {
            return;
        };
        if !why && round9(now.si() / had.max(f64::MIN_POSITIVE)) > 1.0 {
            let told = Force::ROLE.in_both_systems(had);
            self.issues.push(
                Issue::new(
                    pointer,
                    &refusals::CAPACITY_RAISED,
                    format!("the pile had {told}; say why in `why`"),
                )
                .limit(told),
            );
        }
    }

    fn replaced(&mut self, i: usize, r: &PileReplaced, path: &str) {
        let new = [
            r.pile_type.is_some(),
            r.compression.is_some(),
            r.tension.is_some(),
            r.stiffness.is_some(),
        ];
        if !new.contains(&true) {
            let detail = "send `pile_type`, `compression`, `tension` or `stiffness`";
            return self.fault(path.to_owned(), &refusals::NOTHING_CHANGES, detail);
        }
        let (had, why) = (self.bench.capacity(i), r.why.is_some());
        self.raised(r.compression, had.0, why, format!("{path}/compression"));
        self.raised(r.tension, had.1, why, format!("{path}/tension"));
        if r.pile_type.is_some() && self.layout.pile_types.is_none() {
            let detail = "the plan has none";
            self.fault(
                format!("{path}/pile_type"),
                &refusals::TYPE_NOT_OFFERED,
                detail,
            );
        }
        if let Some(pile) = &mut self.positions[i] {
            if r.pile_type.is_some() {
                pile.pile_type.clone_from(&r.pile_type);
                (pile.compression, pile.tension, pile.stiffness) = (None, None, None);
            }
            pile.compression = r.compression.or(pile.compression);
            pile.tension = r.tension.or(pile.tension);
            if r.stiffness.is_some() {
                pile.stiffness = r.stiffness;
                pile.founded_on_rock = None;
            }
        }
        self.piles[i].fate = PileFate::Replaced;
    }

    fn added(&mut self, e: usize, added: &PileAdded, path: &str) {
        let Some(label) = &added.pile.label else {
            let detail = "`label` is needed: a pile is named by it";
            return self.fault(format!("{path}/pile"), &MISSING_MEMBER, detail);
        };
        let taken = self.piles.iter().find(|p| p.label == label.as_str());
        if let Some(other) = taken {
            let detail = match (other.before, other.event) {
                (Some(_), Some(_)) => "a pile of the plan has it, or had it before an event",
                (Some(_), None) => "a pile of the plan has it",
                (None, _) => "a pile that is added has it",
            };
            return self.fault(format!("{path}/pile/label"), &DUPLICATE_LABEL, detail);
        }
        self.piles.push(Tracked {
            label: label.as_str().to_owned(),
            fate: PileFate::Added,
            event: Some(e),
            before: None,
            after: None,
            moved: None,
        });
        if added.pile.pile_type.is_some() && self.layout.pile_types.is_none() {
            let detail = "the plan has none";
            let pointer = format!("{path}/pile/pile_type");
            self.fault(pointer, &refusals::TYPE_NOT_OFFERED, detail);
        }
        self.positions.push(Some(added.pile.clone()));
    }

    fn strengthened(&mut self, e: usize, s: &BeamStrengthened, path: &str) {
        let pointer = format!("{path}/beam");
        let labels = self.bench.beam_labels();
        let Some(b) = labels.iter().position(|l| l == s.beam.as_str()) else {
            let detail = format!("`{}` is none of {} beams", s.beam, labels.len());
            return self.fault(pointer, &refusals::UNKNOWN_BEAM, detail);
        };
        if let Some((_, first)) = self.stronger.iter().find(|(beam, _)| *beam == b) {
            let detail = format!("event {first} is about it");
            return self.fault(pointer, &refusals::EVENT_TWICE, detail);
        }
        self.stronger.push((b, e));
        let Some(beam) = self.layout.beams.get_mut(b) else {
            let detail = "it is the side of an outline; send its strength in `layout`";
            return self.fault(pointer, &refusals::NOT_STRENGTHENED, detail);
        };
        let bends = s.moment_capacity.is_some() || s.shear_capacity.is_some();
        if !bends && s.torsion_capacity.is_none() {
            let detail = "send `moment_capacity`, `shear_capacity` or `torsion_capacity`";
            return self.fault(path.to_owned(), &refusals::NOTHING_CHANGES, detail);
        }
        if beam.section.is_some() && bends {
            let detail = "its strength is that of its `section`; send another one in `layout`";
            return self.fault(pointer, &refusals::NOT_STRENGTHENED, detail);
        }
        beam.moment_capacity = s.moment_capacity.or(beam.moment_capacity);
        beam.shear_capacity = s.shear_capacity.or(beam.shear_capacity);
        beam.torsion_capacity = s.torsion_capacity.or(beam.torsion_capacity);
    }

    fn finish(self) -> Applied {
        let Self {
            mut piles,
            positions,
            mut layout,
            stronger,
            issues,
            ..
        } = self;
        let mut stand = Vec::with_capacity(positions.len());
        for (pile, position) in piles.iter_mut().zip(positions) {
            if let Some(position) = position {
                pile.after = Some(stand.len());
                stand.push(position);
            }
        }
        if stand.is_empty() {
            let detail = "leave one, or add one";
            issues.push(Issue::new("/events", &refusals::NO_PILE_LEFT, detail));
        }
        drop_tops(&mut layout, &piles);
        Applied {
            layout,
            standing: Standing {
                piles,
                positions: stand,
            },
            stronger,
        }
    }
}

/// A plan without its piles.
fn without_piles(layout: &layout::Request) -> layout::Request {
    let piles = match &layout.piles {
        PilePlacement::Given(g) => PilePlacement::Given(GivenPiles {
            positions: Vec::new(),
            max_spacing: g.max_spacing,
            min_spacing: g.min_spacing,
            largest_helix: g.largest_helix,
        }),
        PilePlacement::Search(s) => PilePlacement::Search(s.clone()),
    };
    layout::Request {
        piles,
        ..layout.clone()
    }
}

/// Elevations of piles that are gone go with them.
fn drop_tops(layout: &mut layout::Request, piles: &[Tracked]) {
    let Some(staking) = &mut layout.staking else {
        return;
    };
    if let Some(tops) = &mut staking.pile_tops {
        let gone = |label: &Label| {
            let mut all = piles.iter();
            all.any(|p| p.label == label.as_str() && p.after.is_none())
        };
        tops.retain(|top| !gone(&top.pile));
        if tops.is_empty() {
            staking.pile_tops = None;
        }
    }
}

/// The point that a place along a beam comes to; a ring goes on over its first point.
pub(super) fn shifted(bench: &Bench<'_>, from: Along, by: f64) -> Option<PlanPoint> {
    let length = bench.beam_length(from.beam);
    let end = |at: f64| bench.point_along(Along { at, ..from }).map(|p| p.0);
    let ring = match (end(0.0), end(length)) {
        (Some(a), Some(b)) => (a.x - b.x).si().abs() <= 0.003 && (a.y - b.y).si().abs() <= 0.003,
        _ => false,
    };
    let mut at = from.at + by;
    if ring && at < 0.0 {
        at += length;
    } else if ring && at > length {
        at -= length;
    }
    end(at).map(|p| PlanPoint {
        x: tidy(p.x),
        y: tidy(p.y),
    })
}

/// A length without the dust of its calculation: the number with the fewest digits, in m or ft,
/// within a nanometre.
pub(super) fn tidy(length: Length) -> Length {
    let digits = |v: f64| {
        format!("{:e}", v.abs())
            .split('e')
            .next()
            .map_or(0, str::len)
    };
    let mut best: Option<(usize, Length)> = None;
    for unit in [LengthUnit::M, LengthUnit::Ft, LengthUnit::In] {
        let shown = round9(length.get(unit));
        let clean = Length::new(shown, unit);
        let near = (clean - length).si().abs() <= 1e-9;
        if near && best.is_none_or(|(count, _)| digits(shown) < count) {
            best = Some((digits(shown), clean));
        }
    }
    best.map_or(length, |(_, clean)| clean)
}
