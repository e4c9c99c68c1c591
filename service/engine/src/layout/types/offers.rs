//! Types of pile in the order of preference, and what each carries at a place. One
//! `pile_capacity` is a catalogue of one type without a name.

use crate::layout::request::Request;
use crate::quantity::round9;

/// What a pile carries, N.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::layout) struct Capacity {
    pub compression: f64,
    pub tension: f64,
}

/// What a pile has to carry over all combinations and support models, N.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(in crate::layout) struct Demand {
    pub compression: f64,
    pub tension: f64,
}

impl Demand {
    /// Takes in a reaction, positive in compression; tension up to `floor` is rounding.
    pub fn add(&mut self, reaction: f64, floor: f64) {
        self.compression = self.compression.max(reaction);
        if -reaction > floor {
            self.tension = self.tension.max(-reaction);
        }
    }
}

impl Capacity {
    /// Utilisation by a demand.
    pub fn used(&self, demand: Demand) -> f64 {
        let up = if demand.tension > 0.0 {
            demand.tension / self.tension
        } else {
            0.0
        };
        (demand.compression / self.compression).max(up)
    }

    /// Whether it carries a demand; what prints as 1 passes.
    pub fn carries(&self, demand: Demand) -> bool {
        round9(self.used(demand)) <= 1.0
    }

    /// The lower of two.
    pub fn lower(self, other: Self) -> Self {
        Self {
            compression: self.compression.min(other.compression),
            tension: self.tension.min(other.tension),
        }
    }
}

/// A type of pile.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::layout) struct Offer {
    /// Its number in the request.
    pub index: usize,
    pub label: String,
    /// Away from every zone.
    pub capacity: Capacity,
    pub stiffness: Option<f64>,
    pub cost: Option<f64>,
    pub helix: Option<f64>,
}

/// The types in the order of preference.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::layout) struct Offers {
    pub types: Vec<Offer>,
    /// From `pile_types`, not one `pile_capacity`.
    pub named: bool,
}

impl Offers {
    /// Reads them; none where the request has no capacity at all.
    pub fn of(request: &Request) -> Option<Self> {
        if let Some(c) = &request.pile_capacity {
            return Some(Self {
                types: vec![Offer {
                    index: 0,
                    label: String::new(),
                    capacity: Capacity {
                        compression: c.compression.si(),
                        tension: c.tension.si(),
                    },
                    stiffness: request.pile_stiffness.map(|k| k.si()),
                    cost: None,
                    helix: None,
                }],
                named: false,
            });
        }
        let catalogue = request.pile_types.as_ref()?;
        let mut types: Vec<Offer> = catalogue
            .types
            .iter()
            .enumerate()
            .map(|(index, t)| Offer {
                index,
                label: t.label.as_str().to_owned(),
                capacity: Capacity {
                    compression: t.compression.si(),
                    tension: t.tension.si(),
                },
                stiffness: t.stiffness.or(request.pile_stiffness).map(|k| k.si()),
                cost: t.cost,
                helix: t.largest_helix.map(|d| d.si()),
            })
            .collect();
        types.sort_by(|a, b| {
            let cost = |o: &Offer| o.cost.unwrap_or(0.0);
            cost(a)
                .total_cmp(&cost(b))
                .then(a.capacity.compression.total_cmp(&b.capacity.compression))
                .then(a.capacity.tension.total_cmp(&b.capacity.tension))
                .then(a.index.cmp(&b.index))
        });
        Some(Self { types, named: true })
    }

    /// Rank of a type by its label.
    pub fn rank(&self, label: &str) -> Option<usize> {
        self.types
            .iter()
            .position(|t| self.named && t.label == label)
    }

    /// Greatest helix of any type.
    pub fn largest_helix(&self) -> Option<f64> {
        let all = self.types.iter().filter_map(|t| t.helix);
        all.fold(None, |most, d| Some(most.map_or(d, |m: f64| m.max(d))))
    }
}

/// What every type carries at places of one kind of ground.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::layout) struct Class {
    /// One entry a type, in the order of preference.
    pub each: Vec<Capacity>,
    /// Cost of every type.
    costs: Vec<f64>,
    /// Greatest compression that any type carries.
    pub compression: f64,
    /// Greatest tension that any type carries.
    pub tension: f64,
    /// Cost of the cheapest type.
    pub cost: f64,
}

impl Class {
    /// A class with these capacities.
    pub fn of(offers: &Offers, each: Vec<Capacity>) -> Self {
        let costs: Vec<f64> = offers.types.iter().map(|t| t.cost.unwrap_or(0.0)).collect();
        let most = |get: fn(&Capacity) -> f64| each.iter().map(get).fold(0.0, f64::max);
        Self {
            compression: most(|c| c.compression),
            tension: most(|c| c.tension),
            cost: costs.iter().copied().fold(f64::INFINITY, f64::min),
            costs,
            each,
        }
    }

    /// Utilisation of the type that a demand uses least.
    pub fn least_used(&self, demand: Demand) -> f64 {
        let all = self.each.iter().map(|c| c.used(demand));
        all.fold(f64::INFINITY, f64::min)
    }

    /// Compression and cost of every type.
    pub fn priced(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        let compressions = self.each.iter().map(|c| c.compression);
        compressions.zip(self.costs.iter().copied())
    }

    /// Cost of the type that is taken for a demand; infinite where none carries it.
    pub fn cost_for(&self, demand: Demand) -> f64 {
        let first = self.each.iter().position(|c| c.carries(demand));
        first.map_or(f64::INFINITY, |i| self.costs[i])
    }

    /// Least cost of a type that may carry at least these demands, with room for rounding.
    pub fn least_cost(&self, demand: Demand, room: f64) -> f64 {
        let may = |c: &Capacity| {
            demand.compression <= c.compression * (1.0 + 1e-8) + room
                && demand.tension <= c.tension * (1.0 + 1e-8) + room
        };
        let able = self.each.iter().zip(&self.costs).filter(|(c, _)| may(c));
        able.map(|(_, cost)| *cost).fold(f64::INFINITY, f64::min)
    }
}

/// The first that carries a demand, else the one used least.
pub(in crate::layout) fn choose(each: &[Capacity], demand: Demand) -> usize {
    if let Some(i) = each.iter().position(|c| c.carries(demand)) {
        return i;
    }
    let mut best = (f64::INFINITY, 0);
    for (i, c) in each.iter().enumerate() {
        let used = c.used(demand);
        if used < best.0 {
            best = (used, i);
        }
    }
    best.1
}
