//! The plan as straight runs of beam that meet at nodes. Corners and junctions are found
//! here; stiffness, loads in combinations and piles are not known.
//!
//! Everything is put in a canonical order and direction, so that the order and the
//! direction in which beams are sent make no difference.

mod locate;
mod meet;
mod runs;
mod segments;

pub(super) use locate::{Faults, Place};
pub(super) use segments::{doubles_back, line_faults, point_distance, segment_distance};

use super::request::{GradeBeam, PlanPoint};
use crate::contract::Issue;

/// Points nearer than this are one point, m.
pub(super) const TOLERANCE: f64 = 0.003;

/// A point or a vector of the plan, m, from the plan's own corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Point {
    pub x: f64,
    pub y: f64,
}

impl Point {
    /// A point of the request, in the caller's axes.
    pub fn of(p: &PlanPoint) -> Self {
        Self {
            x: p.x.si(),
            y: p.y.si(),
        }
    }
    pub fn to(self, other: Self) -> Self {
        Self {
            x: other.x - self.x,
            y: other.y - self.y,
        }
    }
    pub fn along(self, direction: Self, by: f64) -> Self {
        Self {
            x: self.x + direction.x * by,
            y: self.y + direction.y * by,
        }
    }
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }
    pub fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }
    pub fn length(self) -> f64 {
        self.dot(self).sqrt()
    }
    pub fn distance(self, other: Self) -> f64 {
        self.to(other).length()
    }
    /// Order by x, then y.
    pub fn order(self, other: Self) -> std::cmp::Ordering {
        self.x.total_cmp(&other.x).then(self.y.total_cmp(&other.y))
    }
}

/// The plan.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Plan {
    /// Where the plan's own corner lies in the caller's axes.
    pub corner: Point,
    /// Straight runs in canonical order.
    pub runs: Vec<Run>,
    /// Where runs meet; each is on two runs or more.
    pub meetings: Vec<Meeting>,
    /// Length of every beam.
    pub beam_length: Vec<f64>,
    /// Parts of every beam in the order of its points.
    pub beam_parts: Vec<Vec<BeamPart>>,
    /// How messages call every beam.
    pub called: Vec<String>,
}

/// A straight run of beam.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Run {
    pub start: Point,
    pub direction: Point,
    pub length: f64,
    /// Parts of beams it is made of, in ascending order.
    pub parts: Vec<RunPart>,
    /// Meetings on it, by place in ascending order.
    pub meetings: Vec<Mark>,
}

/// A meeting as a run sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Mark {
    pub at: f64,
    pub meeting: usize,
}

/// The part of a run that one beam makes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct RunPart {
    pub beam: usize,
    pub from: f64,
    pub to: f64,
}

/// The part of a beam that lies on one run; `run_from` belongs to `from`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct BeamPart {
    pub from: f64,
    pub to: f64,
    pub run: usize,
    pub run_from: f64,
    pub run_to: f64,
}

/// A place where runs meet.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Meeting {
    /// The runs with the place on each, in order of runs.
    pub on: Vec<(usize, f64)>,
    /// Two runs that both end here.
    pub corner: bool,
}

impl Run {
    /// The point at a place along the run.
    pub fn point(&self, at: f64) -> Point {
        self.start.along(self.direction, at)
    }

    /// Places where one beam ends and another goes on.
    pub fn joints(&self) -> impl Iterator<Item = f64> + '_ {
        self.parts
            .windows(2)
            .filter(|p| p[0].beam != p[1].beam)
            .map(|p| p[0].to)
    }

    /// The beam at a place; the earlier one at a joint.
    pub fn beam_at(&self, at: f64) -> usize {
        let i = self.parts.partition_point(|p| p.to < at);
        self.parts[i.min(self.parts.len() - 1)].beam
    }

    /// The beam just beyond a place; the later one at a joint.
    pub fn beam_after(&self, at: f64) -> usize {
        let i = self.parts.partition_point(|p| p.to <= at);
        self.parts[i.min(self.parts.len() - 1)].beam
    }

    /// Beams of the run, each once, in order.
    pub fn beams(&self) -> Vec<usize> {
        let mut out: Vec<usize> = self.parts.iter().map(|p| p.beam).collect();
        out.dedup();
        out
    }
}

impl Plan {
    /// Builds the plan of beams, which messages call as said; faults of geometry go to
    /// `issues`, and then there is none.
    pub fn build(beams: &[GradeBeam], called: &[String], issues: &mut Vec<Issue>) -> Option<Self> {
        let before = issues.len();
        let (corner, segments) = segments::of(beams, issues);
        if issues.len() > before {
            return None;
        }
        let mut plan = runs::of(corner, &segments, called, issues);
        if issues.len() > before {
            return None;
        }
        meet::find(&mut plan, issues);
        (issues.len() == before).then_some(plan)
    }

    /// A point in the caller's axes.
    pub fn outside(&self, p: Point) -> Point {
        Point {
            x: p.x + self.corner.x,
            y: p.y + self.corner.y,
        }
    }

    /// Sets of runs that are connected; the set of every run.
    pub fn connected(&self) -> Vec<usize> {
        let mut set: Vec<usize> = (0..self.runs.len()).collect();
        for meeting in &self.meetings {
            let first = meeting.on[0].0;
            for (run, _) in &meeting.on[1..] {
                let (a, b) = (root(&mut set, first), root(&mut set, *run));
                set[a.max(b)] = a.min(b);
            }
        }
        (0..self.runs.len()).map(|r| root(&mut set, r)).collect()
    }
}

impl BeamPart {
    /// Place on the run of a place along the beam.
    pub fn on_run(&self, at: f64) -> (usize, f64) {
        let share = (at - self.from) / (self.to - self.from);
        let place = if share <= 0.0 {
            self.run_from
        } else if share >= 1.0 {
            self.run_to
        } else {
            self.run_from + (self.run_to - self.run_from) * share
        };
        (self.run, place)
    }
}

/// The representative of a set; paths are shortened on the way.
pub(super) fn root(set: &mut [usize], mut i: usize) -> usize {
    while set[i] != i {
        set[i] = set[set[i]];
        i = set[i];
    }
    i
}
