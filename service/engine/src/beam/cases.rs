//! The loads of one line cut into pieces between stations, case by case: within a piece
//! every load varies evenly, forces and couples stand at stations. No stiffness here.

use super::{Line, Shape};

/// Loads of a line by station and piece. Row-major: one row a station or piece, one
/// column a case.
#[derive(Debug, Clone, PartialEq)]
pub struct LineCases {
    /// Stations in ascending order: ends, nodes, and wherever a load changes.
    pub stations: Vec<f64>,
    /// Station of every node of the line.
    pub node_station: Vec<usize>,
    pub(super) cases: usize,
    pub(super) start: Vec<f64>,
    pub(super) end: Vec<f64>,
    pub(super) force: Vec<f64>,
    pub(super) couple: Vec<f64>,
}

impl LineCases {
    /// Cuts the loads of a line.
    pub fn new(line: &Line, cases: usize) -> Self {
        let mut stations: Vec<f64> = vec![0.0];
        stations.extend(line.nodes.iter().map(|n| n.at));
        stations.push(line.length);
        // nodes come in their order and loads often do, each where the one before it ends: without
        // what stands there already these are two ascending lists, which are soon sorted
        let mut add = |at: f64| {
            if at != 0.0 && at != line.length && stations.last() != Some(&at) {
                stations.push(at);
            }
        };
        for load in &line.loads {
            match load.shape {
                Shape::Spread { from, to, .. } => [from, to].into_iter().for_each(&mut add),
                Shape::Point { at, .. } | Shape::Couple { at, .. } => add(at),
            }
        }
        stations.sort_by(f64::total_cmp);
        stations.dedup();
        let rows = stations.len();
        let pieces = rows.saturating_sub(1);
        let mut out = Self {
            node_station: line
                .nodes
                .iter()
                .map(|n| station_of(&stations, n.at))
                .collect(),
            stations,
            cases,
            start: vec![0.0; pieces * cases],
            end: vec![0.0; pieces * cases],
            force: vec![0.0; rows * cases],
            couple: vec![0.0; rows * cases],
        };
        for load in &line.loads {
            out.add(load.case, load.shape);
        }
        out
    }

    fn add(&mut self, case: usize, shape: Shape) {
        match shape {
            Shape::Point { at, force } => {
                let row = station_of(&self.stations, at);
                self.force[row * self.cases + case] += force;
            }
            Shape::Couple { at, moment } => {
                let row = station_of(&self.stations, at);
                self.couple[row * self.cases + case] += moment;
            }
            Shape::Spread {
                from,
                to,
                start,
                end,
            } => {
                let slope = (end - start) / (to - from);
                for p in station_of(&self.stations, from)..station_of(&self.stations, to) {
                    let (a, b) = (self.stations[p], self.stations[p + 1]);
                    let at = p * self.cases + case;
                    if start == end {
                        self.start[at] += start;
                        self.end[at] += start;
                    } else {
                        self.start[at] += start + slope * (a - from);
                        self.end[at] += start + slope * (b - from);
                    }
                }
            }
        }
    }

    /// Load where a piece begins and where it ends, in a case.
    pub fn piece(&self, piece: usize, case: usize) -> (f64, f64) {
        let at = piece * self.cases + case;
        (self.start[at], self.end[at])
    }

    /// Force at a station in a case.
    pub fn force_at(&self, station: usize, case: usize) -> f64 {
        self.force[station * self.cases + case]
    }

    /// Total load of a case and its moment about the line's start.
    pub fn resultant(&self, case: usize) -> (f64, f64) {
        self.resultant_between(0, self.stations.len() - 1, true, true, case, 0.0)
    }

    /// Load between two stations and its moment `sum of force x (place - about) + couples`,
    /// which loads at the first and the last station included or not.
    pub(super) fn resultant_between(
        &self,
        first: usize,
        last: usize,
        with_first: bool,
        with_last: bool,
        case: usize,
        about: f64,
    ) -> (f64, f64) {
        let (mut total, mut moment) = (0.0, 0.0);
        for s in first..=last {
            if (s > first || with_first) && (s < last || with_last) {
                let p = self.force_at(s, case);
                total += p;
                moment += p * (self.stations[s] - about) + self.couple[s * self.cases + case];
            }
            if s < last {
                let (a, b) = (self.stations[s], self.stations[s + 1]);
                let (q0, q1) = (
                    self.start[s * self.cases + case],
                    self.end[s * self.cases + case],
                );
                let l = b - a;
                let w = 0.5 * (q0 + q1) * l;
                total += w;
                moment += w * (a - about) + l * l * (q0 + 2.0 * q1) / 6.0;
            }
        }
        (total, moment)
    }
}

/// The station at a place that is one.
fn station_of(stations: &[f64], at: f64) -> usize {
    stations.partition_point(|s| *s < at)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::beam::{LineNode, Load};

    #[test]
    fn a_sloping_load_keeps_its_total_and_its_centre_when_it_is_cut() {
        let line = Line {
            length: 9.0,
            nodes: [0.0, 2.5, 9.0]
                .iter()
                .enumerate()
                .map(|(node, at)| LineNode { node, at: *at })
                .collect(),
            rigidity: vec![1.0, 1.0],
            loads: vec![
                Load {
                    case: 0,
                    shape: Shape::Spread {
                        from: 1.0,
                        to: 7.0,
                        start: 0.0,
                        end: 12.0,
                    },
                },
                Load {
                    case: 1,
                    shape: Shape::Point {
                        at: 4.0,
                        force: 5.0,
                    },
                },
            ],
        };
        let cut = LineCases::new(&line, 2);
        assert_eq!(cut.stations, vec![0.0, 1.0, 2.5, 4.0, 7.0, 9.0]);
        assert_eq!(cut.node_station, vec![0, 2, 5]);
        // triangle: 6 m x 12 / 2 = 36 N, centre at 1 + 2/3 x 6 = 5 m
        let (total, moment) = cut.resultant(0);
        assert!((total - 36.0).abs() < 1e-12 && (moment - 180.0).abs() < 1e-12);
        assert_eq!(cut.resultant(1), (5.0, 20.0));
    }
}
