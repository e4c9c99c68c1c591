//! Settlements on spring supports: the greatest, and where they differ most along a beam.
//! Judges nothing.

use super::analysis::above;
use super::equations::angular_distortion;
use super::outcome::{DifferentialSettlement, TotalSettlement};
use super::plan::Place;
use super::report::Analysis;
use super::spans::spans;
use crate::quantity::{Length, Size};
use crate::trace::Trace;

impl Analysis<'_> {
    /// The pile that settles most, over all combinations; `settlements` on springs, one row a
    /// pile and one column a combination.
    pub fn total_settlement(&self, settlements: Option<&[f64]>) -> Option<TotalSettlement> {
        let (settlements, n) = (settlements?, self.loading.combinations.len());
        let mut worst: Option<(f64, usize, usize)> = None;
        for c in 0..n {
            for p in 0..self.piles.len() {
                let w = settlements[p * n + c];
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

    /// The neighbouring piles with the greatest difference for their distance; `settlements` as
    /// in [`Analysis::total_settlement`].
    pub fn differential_settlement(
        &self,
        settlements: Option<&[f64]>,
        trace: &mut Trace,
    ) -> Option<DifferentialSettlement> {
        let (settlements, n) = (settlements?, self.loading.combinations.len());
        let places: Vec<Place> = self.piles.iter().map(|p| p.place).collect();
        let spans = spans(&self.frame.plan, &places);
        let mut worst: Option<(f64, usize, usize, f64, f64, usize)> = None;
        for c in 0..n {
            for s in &spans {
                let (a, b) = s.piles;
                let gap = settlements[a * n + c] - settlements[b * n + c];
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
