//! Zones and keep-outs along a straight run, place by place from its start. A distance
//! changes by no more than the way, so far from a border nothing is measured.

use super::{Here, Terrain};
use crate::layout::plan::{Point, Run, TOLERANCE};

/// A distance that is left to be sure, m.
const SURE: f64 = 1e-6;

/// A stretch of a run where no pile may stand.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::layout) struct Stretch {
    pub run: usize,
    pub from: f64,
    pub to: f64,
    /// Its number in the request.
    pub index: usize,
}

impl Stretch {
    /// Whether a place lies between its ends.
    pub fn holds(&self, at: f64) -> bool {
        at > self.from + 1e-9 && at < self.to - 1e-9
    }
}

/// What was found of one zone or keep-out, and up to where that holds.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Found {
    distance: f64,
    until: f64,
}

const UNKNOWN: Found = Found {
    distance: 0.0,
    until: f64::NEG_INFINITY,
};

/// Walks along a run.
pub(in crate::layout) struct Along<'a> {
    terrain: &'a Terrain,
    run: &'a Run,
    stretches: Vec<&'a Stretch>,
    zones: Vec<Found>,
    barriers: Vec<Found>,
}

impl<'a> Along<'a> {
    /// At the start of a run.
    pub fn new(terrain: &'a Terrain, index: usize, run: &'a Run, stretches: &'a [Stretch]) -> Self {
        Self {
            terrain,
            run,
            stretches: stretches.iter().filter(|s| s.run == index).collect(),
            zones: vec![UNKNOWN; terrain.zones.len()],
            barriers: vec![UNKNOWN; terrain.barriers.len()],
        }
    }

    /// The keep-out that bars a place, by its number; places in ascending order.
    pub fn barrier(&mut self, at: f64) -> Option<usize> {
        let p = self.run.point(at);
        let mut hit = None;
        for (k, found) in self.barriers.iter_mut().enumerate() {
            let b = &self.terrain.barriers[k];
            if at > found.until {
                let d = b.distance(p);
                *found = Found {
                    distance: d,
                    until: at + (d - b.clearance).abs() - SURE,
                };
            }
            if hit.is_none() && !b.allows(found.distance) {
                hit = Some(k);
            }
        }
        hit
    }

    /// The stretch that bars a place.
    pub fn stretch(&self, at: f64) -> Option<&'a Stretch> {
        self.stretches.iter().find(|s| s.holds(at)).copied()
    }

    /// Whether a pile may stand at a place; places in ascending order.
    pub fn open(&mut self, at: f64) -> bool {
        self.barrier(at).is_none() && self.stretch(at).is_none()
    }

    /// The zones at a place; places in ascending order.
    pub fn here(&mut self, at: f64) -> Here {
        let p: Point = self.run.point(at);
        for (z, found) in self.zones.iter_mut().enumerate() {
            if at > found.until {
                let d = self.terrain.zones[z].distance(p);
                *found = Found {
                    distance: d,
                    until: at + (d.abs() - TOLERANCE) - SURE,
                };
            }
        }
        let all = self.zones.iter().enumerate().map(|(z, f)| (z, f.distance));
        Terrain::gather(all.filter(|(_, d)| *d <= TOLERANCE))
    }
}
