//! The curve of a load test: which rows are its first loading, what is wrong with them, and
//! reading it. Straight lines between the points; nothing beyond the last.

use super::codes::refusals;
use super::points::{DISPLACEMENT, LOAD, LoadTestPoints};
use crate::contract::Issue;
use crate::quantity::{Force, Size, in_both_systems};
use crate::source::{BEARWELL_CHOICE, Sourced};

/// Largest dip below the largest load so far that is still part of the first loading. A pump
/// lets the load sag by a few per cent while a pile plunges; more is unloading.
pub static DIP: Sourced<f64> = Sourced::new("load_test_dip_ratio", 0.05, &BEARWELL_CHOICE);
/// Movement beyond the last point of the first loading, as a share of it, from which a pile is
/// said to move on under a falling load; less is the gauge or the last of the creep.
pub static MOVED_ON: Sourced<f64> =
    Sourced::new("load_test_moved_on_ratio", 0.05, &BEARWELL_CHOICE);
/// Fewest points with load and displacement; the least that any criterion is read on.
pub static FEWEST_POINTS: Sourced<usize> =
    Sourced::new("load_test_fewest_points", 3, &BEARWELL_CHOICE);

/// A point of the curve, base SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Load, N.
    pub load: f64,
    /// Displacement, m.
    pub displacement: f64,
}

impl Point {
    /// The point that lies `share` of the way from here to `other`.
    pub fn towards(self, other: Point, share: f64) -> Point {
        Point {
            load: self.load + share * (other.load - self.load),
            displacement: self.displacement + share * (other.displacement - self.displacement),
        }
    }
}

/// The first loading of a test, from zero.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// Its points in order; the first is the origin, the displacement never goes back.
    pub points: Vec<Point>,
    /// Rows that made it up.
    pub row_count: usize,
    /// Rows after it.
    pub later_row_count: usize,
    /// The origin was not among the rows.
    pub origin_added: bool,
    /// Rows whose load dips below an earlier one, and the largest dip over the load before it.
    pub dip_count: usize,
    /// Largest dip as a share of the largest load so far.
    pub largest_dip: f64,
    /// The load fell for good while the pile moved on.
    pub peak_passed: bool,
    /// Displacement after full unloading, m.
    pub permanent: Option<f64>,
}

impl Curve {
    /// The curve through the rows, or what is wrong with them.
    pub fn through(rows: &LoadTestPoints) -> Result<Self, Vec<Issue>> {
        let all: Vec<Point> = (0..rows.len()).filter_map(|row| point(rows, row)).collect();
        let mut issues = Vec::new();
        let end = first_loading(&all);
        turns(&all, end, rows, &mut issues);
        if let Some(first) = all.first()
            && first.load == 0.0
            && first.displacement > 0.0
        {
            issues.push(Issue::new(
                format!("/points{}", rows.cell_pointer(0, DISPLACEMENT)),
                &refusals::ZERO_NOT_SET,
                Size::ROLE.in_both_systems(first.displacement),
            ));
        }
        let moved = |p: &&Point| p.load > 0.0 && p.displacement > 0.0;
        let useful = all[..end].iter().filter(moved).count();
        if useful == 0 {
            let told = "the largest load or the largest displacement of the first loading is zero";
            issues.push(Issue::new("/points/rows", &refusals::NO_LOAD, told));
        } else if useful < FEWEST_POINTS.value {
            let told = format!("{useful} points of the first loading have load and displacement");
            let issue = Issue::new("/points/rows", &refusals::TOO_FEW_POINTS, told);
            issues.push(issue.limit(FEWEST_POINTS.value.to_string()));
        }
        if issues.is_empty() {
            Ok(Self::of(&all, end))
        } else {
            Err(issues)
        }
    }

    fn of(all: &[Point], end: usize) -> Self {
        let origin = Point {
            load: 0.0,
            displacement: 0.0,
        };
        let mut points = vec![origin];
        let (mut largest, mut dip_count, mut largest_dip) = (0.0_f64, 0, 0.0_f64);
        for p in &all[..end] {
            if p.load < largest {
                dip_count += 1;
                largest_dip = largest_dip.max(1.0 - p.load / largest);
            }
            largest = largest.max(p.load);
            if points.last() != Some(p) {
                points.push(*p);
            }
        }
        let later = &all[end..];
        let last = points[points.len() - 1].displacement;
        let unloaded = later.last().filter(|p| p.load == 0.0);
        Self {
            points,
            row_count: end,
            later_row_count: later.len(),
            origin_added: all[0] != origin,
            dip_count,
            largest_dip,
            peak_passed: later
                .iter()
                .any(|p| p.displacement > last * (1.0 + MOVED_ON.value)),
            permanent: unloaded.map(|p| p.displacement),
        }
    }

    /// The point of the largest load, the first of equals.
    pub fn peak(&self) -> Point {
        let mut peak = self.points[0];
        for p in &self.points {
            if p.load > peak.load {
                peak = *p;
            }
        }
        peak
    }

    /// The last point.
    pub fn last(&self) -> Point {
        self.points[self.points.len() - 1]
    }

    /// Displacement at which the curve first reaches a load, m; none above the largest.
    pub fn displacement_at(&self, load: f64) -> Option<f64> {
        let reached = self.points.iter().position(|p| p.load >= load)?;
        let Some(before) = reached.checked_sub(1).map(|at| self.points[at]) else {
            return Some(self.points[reached].displacement);
        };
        let after = self.points[reached];
        let share = (load - before.load) / (after.load - before.load);
        Some(before.towards(after, share).displacement)
    }

    /// Load just before and just after the curve passes a displacement, N: two loads differ
    /// where the load grew without movement. Within the curve only.
    pub fn loads_at(&self, displacement: f64) -> Option<(f64, f64)> {
        let from = self
            .points
            .iter()
            .position(|p| p.displacement >= displacement)?;
        let to = self
            .points
            .iter()
            .rposition(|p| p.displacement <= displacement)?;
        if from <= to {
            return Some((self.points[from].load, self.points[to].load));
        }
        let (before, after) = (self.points[to], self.points[from]);
        let share =
            (displacement - before.displacement) / (after.displacement - before.displacement);
        let load = before.towards(after, share).load;
        Some((load, load))
    }

    /// Largest step of load from one point to the next over the largest load.
    pub fn largest_step(&self) -> f64 {
        let steps = self
            .points
            .windows(2)
            .map(|w| (w[1].load - w[0].load).abs());
        steps.fold(0.0, f64::max) / self.peak().load
    }

    /// Step of load around a load of the curve over the largest load.
    pub fn step_around(&self, load: f64) -> f64 {
        let reached = self.points.iter().position(|p| p.load >= load).unwrap_or(0);
        let before = reached
            .checked_sub(1)
            .map_or(0.0, |at| self.points[at].load);
        (self.points[reached].load - before) / self.peak().load
    }
}

fn point(rows: &LoadTestPoints, row: usize) -> Option<Point> {
    let load: Force = rows.value(row, LOAD)?;
    let displacement: Size = rows.value(row, DISPLACEMENT)?;
    Some(Point {
        load: load.si(),
        displacement: displacement.si(),
    })
}

/// How many of the rows are the first loading: the displacement does not go back and the load
/// stays within the accepted dip below the largest so far.
fn first_loading(all: &[Point]) -> usize {
    let mut largest = 0.0_f64;
    for (at, p) in all.iter().enumerate() {
        let back = at > 0 && p.displacement < all[at - 1].displacement;
        if back || p.load < (1.0 - DIP.value) * largest {
            return at;
        }
        largest = largest.max(p.load);
    }
    all.len()
}

/// The first place where the pile goes back without being unloaded, or is loaded again: the
/// load rises by more than an accepted dip above the least since it fell.
fn turns(all: &[Point], end: usize, rows: &LoadTestPoints, issues: &mut Vec<Issue>) {
    let largest = all[..end].iter().fold(0.0, |most: f64, p| most.max(p.load));
    let mut least = largest;
    for at in end..all.len() {
        let (before, here) = (all[at - 1], all[at]);
        let at_cell = |column| format!("/points{}", rows.cell_pointer(at, column));
        let (pointer, told) = if at == end && here.load >= before.load {
            let told = format!(
                "{} after {}, and the load does not fall",
                Size::ROLE.in_both_systems(here.displacement),
                Size::ROLE.in_both_systems(before.displacement),
            );
            (at_cell(DISPLACEMENT), told)
        } else if here.load > least + DIP.value * largest {
            let told = format!(
                "{} after {}: loaded again after the load fell",
                in_both_systems(here.load, "N"),
                in_both_systems(least, "N"),
            );
            (at_cell(LOAD), told)
        } else {
            least = least.min(here.load);
            continue;
        };
        issues.push(Issue::new(pointer, &refusals::NOT_MONOTONE, told));
        return;
    }
}
