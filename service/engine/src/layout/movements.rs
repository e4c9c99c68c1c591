//! Settlements on spring supports: the greatest, and where they differ most along a beam.
//! Judges nothing.

use super::analysis::above;
use super::equations::angular_distortion;
use super::outcome::{DifferentialSettlement, TotalSettlement};
use super::plan::Place;
use super::report::{Analysis, spans};
use crate::quantity::{Length, Size};
use crate::trace::Trace;

impl Analysis<'_> {
    /// The pile that settles most, over all combinations.
    pub fn total_settlement(&self) -> Option<TotalSettlement> {
        let springs = self.solved.get(1)?;
        let mut worst: Option<(f64, usize, usize)> = None;
        for (c, combination) in self.loading.combinations.iter().enumerate() {
            for p in 0..self.piles.len() {
                let w = springs.settlement(p, &combination.factors);
                if worst.is_none_or(|b| above(w, b.0)) {
                    worst = Some((w, p, c));
                }
            }
        }
        worst.map(|(w, p, c)| TotalSettlement {
            pile: self.piles[p].label.clone(),
            settlement: Size::from_si(w),
            combination: self.loading.combinations[c].name.clone(),
        })
    }

    /// The neighbouring piles with the greatest difference for their distance.
    pub fn differential_settlement(&self, trace: &mut Trace) -> Option<DifferentialSettlement> {
        let springs = self.solved.get(1)?;
        let places: Vec<Place> = self.piles.iter().map(|p| p.place).collect();
        let spans = spans(&self.frame.plan, &places);
        let mut worst: Option<(f64, usize, usize, f64, f64, usize)> = None;
        for (c, combination) in self.loading.combinations.iter().enumerate() {
            for s in &spans {
                let (a, b) = s.piles;
                let gap = springs.settlement(a, &combination.factors)
                    - springs.settlement(b, &combination.factors);
                let ratio = gap.abs() / s.length;
                if worst.is_none_or(|w| above(ratio, w.0)) {
                    let (from, to) = if gap < 0.0 { (b, a) } else { (a, b) };
                    worst = Some((ratio, from, to, gap.abs(), s.length, c));
                }
            }
        }
        let (_, from, to, gap, length, c) = worst?;
        let (difference, distance) = (Size::from_si(gap), Length::from_si(length));
        let label = |p: usize| self.piles[p].label.clone();
        let name = &self.loading.combinations[c].name;
        trace.about(|| format!("pile {} and {}, {name}", label(from), label(to)));
        let ratio = angular_distortion(difference, distance, trace);
        trace.about(String::new);
        Some(DifferentialSettlement {
            from: label(from),
            to: label(to),
            difference,
            distance,
            angular_distortion_ratio: ratio,
            combination: name.clone(),
        })
    }
}
