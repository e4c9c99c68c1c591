//! The events carried out on the plan: the request as it then stands, where each of its piles
//! comes from, and every fault of the events.

use super::codes::refusals;
use super::outcome::PileFate;
use super::places::shifted;
use super::request::{
    BeamStrengthened, PileAdded, PileMoved, PileReplaced, RelocationEvent, Request,
    ResidualCapacity,
};
use super::standing::{Applied, Standing, Tracked, given, without_piles};
use crate::catalogue::RefusalDef;
use crate::catalogue::refusals::{DUPLICATE_LABEL, MISSING_MEMBER};
use crate::contract::Issue;
use crate::layout::bench::{Along, Bench};
use crate::layout::{self, GivenPile};
use crate::quantity::{Force, Length, Size, round9};
use crate::text::Label;

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
