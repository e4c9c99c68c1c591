//! What the loads of one line do to its spans and its cantilevers, case by case. No
//! movements here.

use super::Line;
use super::cases::LineCases;
use super::element::SpanLoad;

/// Loads of a line by piece, by span, and on its cantilevers.
#[derive(Debug, Clone)]
pub(super) struct LineLoads {
    pub cut: LineCases,
    /// One row a span, one column a case.
    pub spans: Vec<SpanLoad>,
    /// Load and moment at the first node of what lies before it.
    pub before: Vec<(f64, f64)>,
    /// Load and moment at the last node of what lies after it.
    pub after: Vec<(f64, f64)>,
}

impl LineLoads {
    pub fn new(line: &Line, cases: usize) -> Self {
        let cut = LineCases::new(line, cases);
        let mut spans = vec![SpanLoad::default(); line.rigidity.len() * cases];
        for (i, row) in spans.chunks_mut(cases.max(1)).enumerate() {
            span_loads(&cut, line, i, row);
        }
        let (first, last) = (
            cut.node_station.first().copied().unwrap_or(0),
            cut.node_station.last().copied().unwrap_or(0),
        );
        let end = cut.stations.len() - 1;
        let before = (0..cases)
            .map(|c| cut.resultant_between(0, first, true, false, c, cut.stations[first]))
            .collect();
        let after = (0..cases)
            .map(|c| cut.resultant_between(last, end, false, true, c, cut.stations[last]))
            .collect();
        Self {
            cut,
            spans,
            before,
            after,
        }
    }
}

fn span_loads(cut: &LineCases, line: &Line, i: usize, row: &mut [SpanLoad]) {
    let (a, b) = (line.nodes[i].at, line.nodes[i + 1].at);
    let length = b - a;
    let (first, last) = (cut.node_station[i], cut.node_station[i + 1]);
    for s in first..last {
        let x = cut.stations[s] - a;
        let l = cut.stations[s + 1] - cut.stations[s];
        for (c, span) in row.iter_mut().enumerate() {
            let at = s * cut.cases + c;
            if s > first {
                if cut.force[at] != 0.0 {
                    span.force(cut.force[at], x, length);
                }
                if cut.couple[at] != 0.0 {
                    span.couple(cut.couple[at], x, length);
                }
            }
            span.spread(cut.start[at], cut.end[at], x, l, length);
        }
    }
}
