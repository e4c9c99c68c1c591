//! What a plan offers its piles: the types of pile to choose from, what each carries in
//! which soil zone, and what piles keep away from. Searches nothing and judges nothing.

mod area;
mod assign;
mod faults;
mod judge;
mod keep_outs;
mod offers;
mod outcome;
mod spacing;
mod trace;

use std::collections::BTreeMap;

pub(super) use assign::{Models, Open, assign, models};
pub(super) use faults::{lengths, pile_type, stretches};
pub(super) use judge::distances;
pub(super) use keep_outs::Barrier;
pub(super) use offers::{Capacity, Class, Demand, Offers};
pub(super) use outcome::{counts, money, total};
pub(super) use spacing::Spacing;
pub(super) use trace::{Along, Stretch};

use super::plan::{Point, TOLERANCE};
use super::request::{PlanPoint, Request};
use crate::contract::{Issue, Work};
use area::to_area;

/// A point of the request in the plan's own axes.
fn inside(corner: Point, p: &PlanPoint) -> Point {
    Point {
        x: p.x.si() - corner.x,
        y: p.y.si() - corner.y,
    }
}

/// A soil zone.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Zone {
    pub label: String,
    corners: Vec<Point>,
    /// One entry a type, in the order of preference.
    each: Vec<Capacity>,
}

impl Zone {
    /// Distance to its border, negative inside.
    fn distance(&self, p: Point) -> f64 {
        to_area(p, &self.corners)
    }
}

/// Types, zones and keep-outs of a plan.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Terrain {
    /// None where the request has no capacity.
    pub offers: Option<Offers>,
    pub zones: Vec<Zone>,
    pub barriers: Vec<Barrier>,
    /// Currency of the costs.
    pub currency: Option<String>,
}

/// The zones at a point.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(super) struct Here {
    /// Zones that hold the point or have it on their border, ascending.
    pub zones: Vec<usize>,
    /// On the border of exactly one zone, so that what is outside counts too.
    pub outside: bool,
}

impl Terrain {
    /// Reads a request; faults go to `issues`. `corner` is where the plan's own corner lies.
    pub fn read(request: &Request, corner: Point, issues: &mut Vec<Issue>) -> Self {
        let offers = Offers::of(request);
        faults::catalogue(request, issues);
        let zones = faults::zones(request, offers.as_ref(), corner, issues);
        Self {
            zones,
            barriers: keep_outs::read(request, corner, issues),
            currency: request
                .pile_types
                .as_ref()
                .and_then(|t| t.currency.as_ref())
                .map(|c| c.as_str().to_owned()),
            offers,
        }
    }

    /// The zones at a point.
    pub fn here(&self, p: Point) -> Here {
        let near = self.zones.iter().enumerate();
        let hits = near.map(|(z, zone)| (z, zone.distance(p)));
        Self::gather(hits.filter(|(_, d)| *d <= TOLERANCE))
    }

    /// Zones with the distance to their border, those that are near or around a point.
    fn gather(hits: impl Iterator<Item = (usize, f64)>) -> Here {
        let mut here = Here::default();
        let mut border = true;
        for (z, d) in hits {
            here.zones.push(z);
            border &= d >= -TOLERANCE;
        }
        here.outside = border && here.zones.len() == 1;
        here
    }

    /// What every type carries at a point.
    pub fn capacities(&self, here: &Here) -> Vec<Capacity> {
        let Some(offers) = &self.offers else {
            return Vec::new();
        };
        let outside = |rank: usize| offers.types[rank].capacity;
        (0..offers.types.len())
            .map(|rank| {
                let zones = here.zones.iter().map(|z| self.zones[*z].each[rank]);
                let lowest = zones.reduce(Capacity::lower);
                match lowest {
                    None => outside(rank),
                    Some(c) if here.outside => c.lower(outside(rank)),
                    Some(c) => c,
                }
            })
            .collect()
    }

    /// Label of a type by its place in the order of preference.
    pub fn type_label(&self, rank: usize) -> Option<String> {
        let offers = self.offers.as_ref().filter(|o| o.named)?;
        offers.types.get(rank).map(|t| t.label.clone())
    }

    /// Whether every type has a cost.
    pub fn costed(&self) -> bool {
        let all = |o: &Offers| o.named && o.types.iter().all(|t| t.cost.is_some());
        self.offers.as_ref().is_some_and(all)
    }
}

/// Faults that have nothing to do with the beams, where those make no plan.
pub(super) fn without_plan(request: &Request, work: &mut Work, issues: &mut Vec<Issue>) {
    let terrain = Terrain::read(request, Point { x: 0.0, y: 0.0 }, issues);
    Spacing::of(request, terrain.offers.as_ref(), work, issues);
}

/// The kinds of ground that places of a plan are on, each once.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Classes {
    pub list: Vec<Class>,
    known: BTreeMap<Here, usize>,
}

impl Classes {
    /// The class of a kind of ground.
    pub fn of(&mut self, terrain: &Terrain, here: &Here) -> usize {
        if let Some(class) = self.known.get(here) {
            return *class;
        }
        let class = self.list.len();
        if let Some(offers) = &terrain.offers {
            self.list.push(Class::of(offers, terrain.capacities(here)));
            self.known.insert(here.clone(), class);
        }
        class
    }
}
