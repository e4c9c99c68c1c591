//! One candidate on the plan: what it changes, its analysis, how it is judged.

use super::rank;
use super::{Asked, WORK_LIMIT};
use crate::contract::{Check, CheckStatus, Refusal, Verdict, Work, verdict_so_far};
use crate::layout::bench::{Along, Bench, Obstacle};
use crate::layout::codes::checks as plan;
use crate::layout::{GivenPile, GradeBeam, Outcome, PlanPoint};
use crate::relocation::compare::{Spans, of_beam, used};
use crate::relocation::outcome::{FeasibleOffset, FeasibleStretch, PileFate, WayOutKind};
use crate::relocation::request::{OptionDetail, RelocationEvent, Request, WaysOut};
use crate::relocation::standing::{Applied, Standing, Tracked, given};
use crate::relocation::{judge, moved};
use crate::text::Label;

/// Something that may be done.
#[derive(Debug, Clone)]
pub(super) struct Candidate {
    pub events: Vec<RelocationEvent>,
    pub standing: Standing,
    /// Beams with the strengths they get.
    pub stronger: Vec<(usize, GradeBeam)>,
    pub extra: u32,
    pub larger: u32,
    /// Farthest distance of a pile from where it was drawn, m.
    pub movement: f64,
    pub cost: Option<f64>,
}

/// A candidate that was judged.
#[derive(Debug, Clone)]
pub(super) struct Judged {
    pub verdict: Verdict,
    /// Highest utilisation of piles and beams; infinite where one has no capacity for its load.
    pub used: Option<f64>,
    /// The highest of a check that fails; nil where none does.
    pub missed: f64,
    pub pile_used: Option<f64>,
    pub beam_used: Option<f64>,
    pub failed: Vec<Check>,
    pub open: Vec<Check>,
}

impl Judged {
    /// Whether nothing fails.
    pub fn feasible(&self) -> bool {
        self.failed.is_empty()
    }
}

/// A candidate with how it was judged.
#[derive(Debug, Clone)]
pub(super) struct Best {
    pub kind: WayOutKind,
    pub candidate: Candidate,
    pub judged: Judged,
}

/// What became of the candidates of one kind.
#[derive(Debug, Default)]
pub(super) struct Tried {
    pub tried_count: u32,
    pub feasible_count: u32,
    pub best: Option<Best>,
    pub stretches: Vec<FeasibleStretch>,
    pub offsets: Vec<FeasibleOffset>,
    pub reason: Option<String>,
}

/// The search for one pile.
pub(super) struct Seeker<'a, 'b> {
    pub request: &'a Request,
    pub ways: &'a WaysOut,
    pub applied: &'a Applied,
    pub asked: &'a Asked,
    pub before: &'a Outcome,
    longest_before: &'a [Option<f64>],
    pub bench: &'a mut Bench<'b>,
    pub work: &'a mut Work,
    pub obstacle: Option<Obstacle>,
    /// Beams on which the pile was drawn.
    pub drawn: Vec<Along>,
    /// The kind that is tried now.
    pub kind: WayOutKind,
    pub count: u64,
    pub complete: bool,
    /// For each check that alone keeps a candidate from being feasible, the one nearest to it; and
    /// the one nearest where several do.
    pub near: Vec<(String, Best)>,
}

impl<'a, 'b> Seeker<'a, 'b> {
    pub fn new(
        request: &'a Request,
        ways: &'a WaysOut,
        applied: &'a Applied,
        asked: &'a Asked,
        (before, longest_before): (&'a Outcome, &'a [Option<f64>]),
        bench: &'a mut Bench<'b>,
        work: &'a mut Work,
    ) -> Self {
        let sent = ways.obstruction.as_ref();
        let obstacle = sent.map(|o| bench.obstacle(o, "/ways_out/obstruction", &mut Vec::new()));
        let drawn = bench.along_at(&asked.drawn);
        Self {
            request,
            ways,
            applied,
            asked,
            before,
            longest_before,
            bench,
            work,
            obstacle,
            drawn,
            kind: WayOutKind::LeaveOut,
            count: 0,
            complete: true,
            near: Vec::new(),
        }
    }

    /// The pile.
    pub fn pile(&self) -> &'a Tracked {
        &self.applied.standing.piles[self.asked.pile]
    }

    pub fn label(&self) -> &'a str {
        &self.pile().label
    }

    /// Whether it is a support.
    pub fn stands(&self) -> bool {
        self.pile().after.is_some()
    }

    /// Whether at another place it would be a new pile: it is lost, or has less to count on than
    /// was drawn, and stays in the ground.
    pub fn anew_elsewhere(&self) -> bool {
        let event = self.pile().event.and_then(|e| self.request.events.get(e));
        let short = match event {
            Some(RelocationEvent::StoppedShort(_)) => true,
            Some(RelocationEvent::Moved(m)) => m.residual.is_some(),
            _ => false,
        };
        short || !self.stands()
    }

    /// The pile as it now stands.
    pub fn now(&self) -> Option<&'a GivenPile> {
        let standing = &self.applied.standing;
        self.pile().after.map(|a| &standing.positions[a])
    }

    /// The pile as it was drawn, under another label.
    pub fn anew(&self, suffix: &str, at: PlanPoint) -> GivenPile {
        let drawn = match self.pile().before {
            Some(before) => given(&self.request.layout).get(before),
            None => self.now(),
        };
        let (mut label, taken) = (format!("{}{suffix}", self.label()), |l: &str| {
            self.applied.standing.piles.iter().any(|p| p.label == l)
        });
        while taken(&label) {
            label.push('_');
        }
        GivenPile {
            label: Some(Label(label)),
            tags: drawn.and_then(|d| d.tags.clone()),
            at,
            off_line: None,
            pile_type: drawn.and_then(|d| d.pile_type.clone()),
            compression: drawn.and_then(|d| d.compression),
            tension: drawn.and_then(|d| d.tension),
            stiffness: drawn.and_then(|d| d.stiffness),
            founded_on_rock: drawn.and_then(|d| d.founded_on_rock),
        }
    }

    /// The number of an event that a way out would be.
    pub fn next_event(&self) -> usize {
        self.request.events.len()
    }

    /// The plan as it now stands, with nothing done yet.
    pub fn nothing(&self) -> Candidate {
        Candidate {
            events: Vec::new(),
            standing: self.applied.standing.clone(),
            stronger: Vec::new(),
            extra: 0,
            larger: 0,
            movement: 0.0,
            cost: None,
        }
    }

    /// The same without the pile, and the event for it.
    pub fn without(&self) -> Candidate {
        let mut out = self.nothing();
        if self.stands() {
            out.standing.remove(self.asked.pile);
            out.standing.piles[self.asked.pile].fate = PileFate::Omitted;
            out.events.push(RelocationEvent::Omitted(
                crate::relocation::request::PileOmitted {
                    pile: Label(self.label().to_owned()),
                    why: None,
                },
            ));
        }
        out
    }

    /// Whether a pile may stand at a point beside the obstruction.
    pub fn clear(&self, at: &PlanPoint) -> bool {
        let obstacle = self.obstacle.as_ref();
        obstacle.is_none_or(|o| self.bench.clear_of(o, at))
    }

    /// Judges a candidate; none where the plan does not stand with it, or at the limit of work.
    pub fn judge(&mut self, c: &Candidate) -> Result<Option<Judged>, Refusal> {
        Ok(self.analyse(c)?.map(|(judged, _)| judged))
    }

    /// The same with its whole result.
    pub fn analyse(&mut self, c: &Candidate) -> Result<Option<(Judged, Outcome)>, Refusal> {
        self.work.go_on()?;
        if self.count >= WORK_LIMIT {
            self.complete = false;
            return Ok(None);
        }
        self.count += 1;
        for (beam, strong) in &c.stronger {
            self.bench.strengthen(*beam, strong);
        }
        let found = self.analysed(c);
        for (beam, _) in &c.stronger {
            if let Some(was) = self.applied.beams().get(*beam) {
                self.bench.strengthen(*beam, was);
            }
        }
        match found {
            Ok(found) => Ok(Some(found)),
            Err(refusal) if refusal.interrupted => Err(refusal),
            Err(_) => Ok(None),
        }
    }

    fn analysed(&mut self, c: &Candidate) -> Result<(Judged, Outcome), Refusal> {
        self.bench.put(&c.standing.positions)?;
        let mut scratch = self.work.quietly();
        // in full it is told as well
        let outcome = match self.ways.option_detail {
            Some(OptionDetail::Full) => self.bench.answered(&mut scratch)?,
            _ => self.bench.tried(&mut scratch)?,
        };
        let spots = moved::spots(&c.standing, self.bench);
        judge::keep_outs(&c.standing, &spots, self.bench, &mut scratch);
        moved::rows(
            self.request,
            &spots,
            &[],
            self.bench,
            Some(&outcome),
            &mut scratch,
        );
        let spans = Spans {
            before: self.longest_before.to_vec(),
            after: self.bench.longest_spans(),
        };
        judge::strengths(self.bench, &spans, &mut scratch);
        let verdict = verdict_so_far(&mut scratch);
        let mut judged = Judged {
            verdict,
            used: None,
            missed: 0.0,
            pile_used: None,
            beam_used: None,
            failed: Vec::new(),
            open: Vec::new(),
        };
        let piles = [plan::PILE_COMPRESSION.id, plan::PILE_TENSION.id];
        let most = |slot: &mut Option<f64>, u: f64| *slot = Some(slot.map_or(u, |s| s.max(u)));
        for check in scratch.checks {
            if check.status == CheckStatus::Warn {
                continue;
            }
            if let Some(u) = used(&check) {
                if of_beam(&check) {
                    most(&mut judged.beam_used, u);
                    most(&mut judged.used, u);
                }
                if piles.contains(&&*check.id) {
                    most(&mut judged.pile_used, u);
                    most(&mut judged.used, u);
                }
                if check.status == CheckStatus::Fail {
                    judged.missed = judged.missed.max(u);
                }
            }
            match check.status {
                CheckStatus::Fail => judged.failed.push(check),
                CheckStatus::NotEvaluated if check.needed => judged.open.push(check),
                _ => {}
            }
        }
        Ok((judged, outcome))
    }

    /// Tries a candidate of a kind and keeps it where it is the best so far; whether nothing
    /// fails, and how far it is used.
    pub fn attempt(
        &mut self,
        mut candidate: Candidate,
        tried: &mut Tried,
    ) -> Result<Option<(bool, Option<f64>)>, Refusal> {
        candidate.cost = rank::cost(self, &candidate);
        let Some(judged) = self.judge(&candidate)? else {
            return Ok(None);
        };
        tried.tried_count += 1;
        let (feasible, used) = (judged.feasible(), judged.used);
        tried.feasible_count += u32::from(feasible);
        let new = Best {
            kind: self.kind,
            candidate,
            judged,
        };
        if !feasible {
            self.note_near(&new);
        }
        let better = tried
            .best
            .as_ref()
            .is_none_or(|best| rank::better(&new, best));
        if better {
            tried.best = Some(new);
        }
        Ok(Some((feasible, used)))
    }

    /// Keeps the candidate that misses a limit least.
    fn note_near(&mut self, new: &Best) {
        let first = &new.judged.failed[0].id;
        let alone = new.judged.failed.iter().all(|c| c.id == *first);
        let name = if alone { first } else { "" };
        match self.near.iter_mut().find(|(id, _)| id == name) {
            Some((_, best)) if rank::misses_less(new, best) => *best = new.clone(),
            Some(_) => {}
            None => self.near.push((name.to_owned(), new.clone())),
        }
    }
}
