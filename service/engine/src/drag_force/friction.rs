//! Friction along the shaft as stretches in which it is a straight line over depth, and its
//! sums; from layers or from a table of shaft resistance.

use super::constants::beta_of;
use super::equations::{effective_stress, pore_pressure, stretch_friction, unit_friction};
use super::friction_request::{
    DEPTH, DragFriction, DragLayer, DragLayers, RESISTANCE, ShaftResistanceTable,
};
use super::outcome::DragLayerOutcome;
use crate::contract::Work;
use crate::quantity::{Force, Length, Quantity, Size, SoilStress, UnitWeight};
use crate::soil::WATER_UNIT_WEIGHT;
use crate::source::{CALLER, SourceNote};
use crate::text::Label;

/// Upper or lower friction.
#[derive(Debug, Clone, Copy)]
pub(super) enum Side {
    Upper = 0,
    Lower = 1,
}

/// Part of the shaft in which both frictions are straight lines over depth.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stretch {
    pub top: f64,
    pub bottom: f64,
    /// Friction in a length of shaft at top and bottom, N/m; upper, then lower.
    pub ends: [[f64; 2]; 2],
    /// Friction over the stretch, N; upper, then lower.
    pub force: [f64; 2],
}

impl Stretch {
    /// Friction from its top down to `x` below it.
    fn part(&self, side: Side, x: f64) -> f64 {
        let [f_1, f_2] = self.ends[side as usize];
        let h = self.bottom - self.top;
        if x >= h {
            return self.force[side as usize];
        }
        (f_1 + (f_2 - f_1) * x / (2.0 * h)) * x
    }
}

/// Friction along the shaft.
#[derive(Debug)]
pub(super) struct Friction {
    pub stretches: Vec<Stretch>,
    /// Friction summed above the first stretch, N, the same for both sides.
    pub above: f64,
    pub layers: Vec<DragLayerOutcome>,
}

impl Friction {
    /// Where the stretches begin.
    pub fn top(&self) -> f64 {
        self.stretches.first().map_or(0.0, |s| s.top)
    }

    /// Where they end.
    pub fn bottom(&self) -> f64 {
        self.stretches.last().map_or(0.0, |s| s.bottom)
    }

    /// Friction summed down to a depth; nil above the stretches where nothing lies above.
    pub fn down_to(&self, side: Side, depth: f64) -> f64 {
        let parts = self.stretches.iter().take_while(|s| s.top < depth);
        parts.fold(self.above, |sum, s| sum + s.part(side, depth - s.top))
    }

    /// Friction over all of the shaft.
    pub fn whole(&self, side: Side) -> f64 {
        let each = self.stretches.iter();
        each.fold(self.above, |sum, s| sum + s.force[side as usize])
    }
}

/// From a table without faults.
pub(super) fn of_table(table: &ShaftResistanceTable) -> Friction {
    let number = |row, column, of: fn(&ShaftResistanceTable, usize, usize) -> Option<f64>| {
        of(table, row, column).unwrap_or(0.0)
    };
    let depth = |row| number(row, DEPTH, cell::<Length>);
    let sum = |row| number(row, RESISTANCE, cell::<Force>);
    let stretches = (1..table.len()).map(|row| {
        let (top, bottom) = (depth(row - 1), depth(row));
        let force = sum(row) - sum(row - 1);
        let line = force / (bottom - top);
        Stretch {
            top,
            bottom,
            ends: [[line; 2]; 2],
            force: [force; 2],
        }
    });
    Friction {
        stretches: stretches.collect(),
        above: sum(0),
        layers: Vec::new(),
    }
}

/// A cell in base SI.
fn cell<Q: Quantity>(table: &ShaftResistanceTable, row: usize, column: usize) -> Option<f64> {
    table.value::<Q>(row, column).map(Q::si)
}

/// Factors of a layer.
struct Factors {
    upper: f64,
    lower: f64,
    source: SourceNote,
    /// Undrained strength, where friction follows it and not the stress.
    strength: Option<SoilStress>,
}

fn factors(friction: &DragFriction, work: &mut Work) -> Factors {
    match friction {
        DragFriction::BetaBySoil(by) => {
            let range = beta_of(by.soil);
            let [lower, upper] = work.take_table(range);
            Factors {
                upper,
                lower,
                source: range.reference.into(),
                strength: None,
            }
        }
        DragFriction::Beta(beta) => Factors {
            upper: beta.upper_factor,
            lower: beta.lower_factor,
            source: (&CALLER).into(),
            strength: None,
        },
        DragFriction::Alpha(alpha) => Factors {
            upper: alpha.upper_factor,
            lower: alpha.lower_factor.unwrap_or(alpha.upper_factor),
            source: (&CALLER).into(),
            strength: Some(alpha.undrained_strength),
        },
    }
}

/// Ground above a depth and what presses on it.
struct Ground {
    water: UnitWeight,
    water_depth: Option<Length>,
}

/// A layer with the stress on its top.
struct Here<'a> {
    ground: &'a Ground,
    layer: &'a DragLayer,
    top: Length,
    total_top: SoilStress,
    factors: Factors,
    perimeter: Size,
}

impl Here<'_> {
    fn stress(&self, depth: Length, work: &mut Work) -> SoilStress {
        let own = (depth - self.top).si() * self.layer.unit_weight.si();
        let total = self.total_top + SoilStress::from_si(own);
        let pore = match self.ground.water_depth {
            Some(at) => pore_pressure(self.ground.water, depth, at, &mut work.trace),
            None => SoilStress::ZERO,
        };
        effective_stress(total, pore, &mut work.trace)
    }

    /// Depths between `from` and `to` at which a friction changes its line, with both ends.
    fn breaks(&self, from: Length, to: Length) -> Vec<Length> {
        let mut silent = Work::default();
        let mut all = vec![from, to];
        all.extend(self.ground.water_depth.filter(|at| *at > from && *at < to));
        all.sort_by(|a, b| a.si().total_cmp(&b.si()));
        let (Some(limit), None) = (self.layer.friction_limit, self.factors.strength) else {
            return all;
        };
        let mut met = Vec::new();
        for pair in all.windows(2) {
            let ends = [pair[0], pair[1]].map(|z| self.stress(z, &mut silent).si());
            for factor in [self.factors.upper, self.factors.lower] {
                let [start, end] = ends.map(|s| factor * s - limit.si());
                if start < 0.0 && end > 0.0 {
                    met.push(pair[0] + (pair[1] - pair[0]) * (start / (start - end)));
                }
            }
        }
        all.extend(met);
        all.sort_by(|a, b| a.si().total_cmp(&b.si()));
        all.dedup();
        all
    }

    fn stretch(&self, top: Length, bottom: Length, work: &mut Work) -> Stretch {
        let depths = [top, bottom];
        let stresses = match self.factors.strength {
            Some(strength) => [strength; 2],
            None => depths.map(|z| self.stress(z, work)),
        };
        let sides = [self.factors.upper, self.factors.lower];
        let limit = self.layer.friction_limit;
        let units = sides.map(|c| stresses.map(|s| unit_friction(c, s, limit, &mut work.trace)));
        let h = bottom - top;
        let forces =
            units.map(|ends| stretch_friction(self.perimeter, ends, h, &mut work.trace).si());
        Stretch {
            top: top.si(),
            bottom: bottom.si(),
            ends: units.map(|ends| ends.map(|f| f.si() * self.perimeter.si())),
            force: forces,
        }
    }
}

/// From layers without faults, along the shaft from `contact` down to `toe` or as far as the
/// layers reach.
pub(super) fn of_layers(
    sent: &DragLayers,
    perimeter: Size,
    contact: Length,
    toe: Length,
    work: &mut Work,
) -> Friction {
    let ground = Ground {
        water: match sent.water_depth {
            Some(_) => work.take(&WATER_UNIT_WEIGHT),
            None => WATER_UNIT_WEIGHT.value,
        },
        water_depth: sent.water_depth,
    };
    let mut friction = Friction {
        stretches: Vec::new(),
        above: 0.0,
        layers: Vec::new(),
    };
    let mut top = Length::ZERO;
    let mut total_top = SoilStress::from_si(sent.surcharge.map_or(0.0, |q| q.si()));
    for (i, layer) in sent.layers.iter().enumerate() {
        let bottom = top + layer.thickness;
        let (from, to) = (top.max(contact), bottom.min(toe));
        if from < to {
            let here = Here {
                ground: &ground,
                layer,
                top,
                total_top,
                factors: factors(&layer.friction, work),
                perimeter,
            };
            here.add(i, from, to, &mut friction, work);
        }
        total_top = total_top + SoilStress::from_si(layer.unit_weight.si() * layer.thickness.si());
        top = bottom;
    }
    work.trace.about(String::new);
    friction
}

impl Here<'_> {
    /// Adds the stretches of this layer and what is told of it.
    fn add(&self, i: usize, from: Length, to: Length, friction: &mut Friction, work: &mut Work) {
        let label = match &self.layer.label {
            Some(label) => label.clone(),
            None => Label((i + 1).to_string()),
        };
        work.trace.about(|| format!("layer {label}"));
        let mut forces = [0.0; 2];
        for pair in self.breaks(from, to).windows(2) {
            let stretch = self.stretch(pair[0], pair[1], work);
            for (sum, force) in forces.iter_mut().zip(stretch.force) {
                *sum += force;
            }
            friction.stretches.push(stretch);
        }
        let mut silent = Work::default();
        friction.layers.push(DragLayerOutcome {
            label,
            tags: self.layer.tags.clone(),
            top: from,
            bottom: to,
            effective_stress_top: self.stress(from, &mut silent),
            effective_stress_bottom: self.stress(to, &mut silent),
            upper_factor: self.factors.upper,
            lower_factor: self.factors.lower,
            factor_source: self.factors.source.clone(),
            upper_force: Force::from_si(forces[0]),
            lower_force: Force::from_si(forces[1]),
        });
    }
}
