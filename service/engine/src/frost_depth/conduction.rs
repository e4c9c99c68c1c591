//! Conduction of heat with freezing in layered ground, solved implicitly in fixed cells. Knows
//! layers and numbers only.
//!
//! The equations of one time step, C T + L f(T) + dt A T = known, have one solution: f is the
//! unfrozen share, rising from 0 to 1 over a narrow band about freezing, and A an M-matrix. Split
//! into two convex parts they are solved by a nested Newton iteration that ends after finitely
//! many linear solves and cannot run in circles (Casulli and Zanolli, 2010, for a like system).

use super::berggren::{Cold, DEEPEST, NoFront, sums};
use super::ground::Slab;
use crate::contract::{Refusal, Work};

/// Thickness of the first cell, m.
const FIRST_CELL: f64 = 0.01;
/// Growth of a cell by its depth.
const GROWTH: f64 = 0.025;
/// Depth of the cells, m: four times as deep as a season's temperature reaches.
const BOTTOM: f64 = 30.0;
/// Time steps over the season; they grow with their number.
const TIME_STEPS: u32 = 200;
/// Half of the band of temperature over which water freezes, K.
pub(super) const BAND: f64 = 1e-6;
/// Linear solves in each of both iterations; over 300,000 random steps, some far outside the ranges
/// of a request, none took more than 12 of one and 10 of the other.
const SOLVES: usize = 100;

/// The ground in cells, base SI, per square metre of surface.
struct Cells {
    /// Heat to warm it by 1 K.
    capacity: Vec<f64>,
    /// Latent heat over the band of freezing, per K.
    slope: Vec<f64>,
    /// Conductance to the cell above, the surface for the first.
    conductance: Vec<f64>,
}

impl Cells {
    /// Heat capacity and latent heat of a cell are those of what it holds; the resistance
    /// between two middles is that of the layers between them.
    fn of(slabs: &[Slab]) -> Self {
        let mut cells = Self {
            capacity: Vec::new(),
            slope: Vec::new(),
            conductance: Vec::new(),
        };
        let (mut top, mut size) = (0.0, FIRST_CELL);
        let mut above = sums(slabs, 0.0, |slab| slab.conductivity);
        let mut middle_above = above.resistance;
        while top < BOTTOM {
            let middle = sums(slabs, top + 0.5 * size, |slab| slab.conductivity);
            top += size;
            size = FIRST_CELL + GROWTH * top;
            let below = sums(slabs, top, |slab| slab.conductivity);
            cells.capacity.push(below.capacity - above.capacity);
            cells
                .slope
                .push((below.latent - above.latent) / (2.0 * BAND));
            cells
                .conductance
                .push(1.0 / (middle.resistance - middle_above));
            (above, middle_above) = (below, middle.resistance);
        }
        cells
    }

    fn count(&self) -> usize {
        self.capacity.len()
    }

    /// Heat in a cell over that of frozen ground at freezing.
    fn heat(&self, i: usize, temperature: f64) -> f64 {
        self.capacity[i] * temperature + self.slope[i] * (temperature + BAND).clamp(0.0, 2.0 * BAND)
    }

    /// Latent heat that has been given up.
    fn frozen(&self, temperature: &[f64]) -> f64 {
        (0..self.count())
            .map(|i| self.slope[i] * (BAND - temperature[i]).clamp(0.0, 2.0 * BAND))
            .sum()
    }

    /// One implicit step: the temperatures after `dt` from those before it.
    fn step(&self, temperature: &mut [f64], dt: f64, surface: f64, lines: &mut Lines) {
        let n = self.count();
        for (i, known) in lines.known.iter_mut().enumerate() {
            *known = self.heat(i, temperature[i]);
        }
        lines.known[0] += dt * self.conductance[0] * surface;
        // the convex parts: from the band's lower edge on, less from its upper edge on
        lines.upper[..n].fill(false);
        lines.lower[..n].fill(false);
        for _ in 0..SOLVES {
            for _ in 0..SOLVES {
                self.solve(temperature, dt, lines);
                if !marked(&mut lines.lower, temperature, -BAND) {
                    break;
                }
            }
            if !marked(&mut lines.upper, temperature, BAND) {
                break;
            }
        }
    }

    /// Solves the linear equations of the states that are marked, by elimination.
    fn solve(&self, temperature: &mut [f64], dt: f64, lines: &mut Lines) {
        let n = self.count();
        let mut above = 0.0;
        for i in 0..n {
            let up = dt * self.conductance[i];
            let down = self.conductance.get(i + 1).map_or(0.0, |c| dt * c);
            let slope = self.slope[i];
            let mut diagonal = self.capacity[i] + up + down;
            let mut right = lines.known[i];
            match (lines.lower[i], lines.upper[i]) {
                (false, false) => {}
                (true, false) => {
                    diagonal += slope;
                    right -= slope * BAND;
                }
                // the first part rises with the second and both slopes cancel; marks of the
                // upper edge are a part of those of the lower
                (_, true) => right -= slope * (2.0 * BAND),
            }
            if i > 0 {
                let factor = up / lines.diagonal[i - 1];
                diagonal -= factor * above;
                right += factor * temperature[i - 1];
            }
            lines.diagonal[i] = diagonal;
            temperature[i] = right;
            above = down;
        }
        for i in (0..n).rev() {
            let below = match temperature.get(i + 1) {
                Some(next) => dt * self.conductance[i + 1] * next,
                None => 0.0,
            };
            temperature[i] = (temperature[i] + below) / lines.diagonal[i];
        }
    }
}

/// Marks the cells warmer than `edge`; whether a mark has changed.
fn marked(marks: &mut [bool], temperature: &[f64], edge: f64) -> bool {
    let mut changed = false;
    for (mark, t) in marks.iter_mut().zip(temperature) {
        changed |= *mark != (*t > edge);
        *mark = *t > edge;
    }
    changed
}

/// Room for the equations of a step.
struct Lines {
    known: Vec<f64>,
    diagonal: Vec<f64>,
    lower: Vec<bool>,
    upper: Vec<bool>,
}

/// Frost depth by conduction of heat with freezing.
///
/// C dT/dt + L df/dt = d/dz (k dT/dz), T(0, t) = -v_s, T(z, 0) = v_o, freezing at 0; C heat
/// capacity (J/m3 K), L latent heat (J/m3), k conductivity (W/m K), each the mean of frozen and
/// unfrozen and by layer; v_s, v_o in K, t in s. The depth (m) is the one down to which the
/// layers hold the latent heat that has frozen. Range: any layers. Source: balance of heat.
/// Depth down.
pub fn frost_depth(
    slabs: &[Slab],
    cold: Cold,
    work: &Work,
) -> Result<Result<f64, NoFront>, Refusal> {
    let cells = Cells::of(slabs);
    let n = cells.count();
    let mut temperature = vec![cold.v_o; n];
    let mut lines = Lines {
        known: vec![0.0; n],
        diagonal: vec![0.0; n],
        lower: vec![false; n],
        upper: vec![false; n],
    };
    let whole = f64::from(TIME_STEPS) * f64::from(TIME_STEPS);
    let mut before = 0.0;
    for step in 1..=TIME_STEPS {
        work.go_on()?;
        let now = cold.t * f64::from(step) * f64::from(step) / whole;
        cells.step(&mut temperature, now - before, -cold.v_s, &mut lines);
        before = now;
    }
    Ok(depth_of(slabs, cells.frozen(&temperature)))
}

/// Depth down to which the layers hold this much latent heat.
fn depth_of(slabs: &[Slab], frozen: f64) -> Result<f64, NoFront> {
    if frozen <= 0.0 {
        return Err(NoFront::WaterNotReached);
    }
    let mut left = frozen;
    for slab in slabs.iter().filter(|slab| slab.latent > 0.0) {
        let holds = slab.latent * slab.thickness;
        if left <= holds {
            let depth = slab.top + left / slab.latent;
            return if depth <= DEEPEST {
                Ok(depth)
            } else {
                Err(NoFront::TooDeep)
            };
        }
        left -= holds;
    }
    Err(NoFront::TooDeep)
}
