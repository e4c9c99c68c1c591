//! Parts of a plan that no beam connects: each is searched as a whole by itself. Only
//! distances between piles tie them together.

use super::stack::Line;
use crate::layout::frame::Frame;
use crate::layout::plan::{BeamPart, Mark, Meeting, Plan};

/// A connected part of the plan, as a plan of its own.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Part {
    pub frame: Frame,
    /// Its runs, as the whole plan counts them.
    pub runs: Vec<usize>,
    /// Its meetings, as the whole plan counts them.
    pub meetings: Vec<usize>,
}

/// All parts, in the order of their first runs.
pub(super) fn split(frame: &Frame) -> Vec<Part> {
    let set = frame.plan.connected();
    let mut roots = set.clone();
    roots.sort_unstable();
    roots.dedup();
    roots
        .into_iter()
        .map(|root| {
            let runs = (0..set.len()).filter(|r| set[*r] == root).collect();
            part(frame, runs)
        })
        .collect()
}

fn part(frame: &Frame, runs: Vec<usize>) -> Part {
    let plan = &frame.plan;
    let own = |run: usize| runs.binary_search(&run).ok();
    let meetings: Vec<usize> = (0..plan.meetings.len())
        .filter(|m| own(plan.meetings[*m].on[0].0).is_some())
        .collect();
    let met = |m: usize| meetings.binary_search(&m).unwrap_or(0);
    let at_home = |(run, at): &(usize, f64)| own(*run).map(|r| (r, *at));
    let nothing = BeamPart {
        from: 0.0,
        to: 0.0,
        run: 0,
        run_from: 0.0,
        run_to: 0.0,
    };
    Part {
        frame: Frame {
            plan: Plan {
                corner: plan.corner,
                runs: runs
                    .iter()
                    .map(|r| {
                        let mut run = plan.runs[*r].clone();
                        for mark in &mut run.meetings {
                            *mark = Mark {
                                at: mark.at,
                                meeting: met(mark.meeting),
                            };
                        }
                        run
                    })
                    .collect(),
                meetings: meetings
                    .iter()
                    .map(|m| Meeting {
                        on: plan.meetings[*m].on.iter().filter_map(at_home).collect(),
                        corner: plan.meetings[*m].corner,
                    })
                    .collect(),
                called: plan.called.clone(),
                beam_length: plan.beam_length.clone(),
                beam_parts: plan
                    .beam_parts
                    .iter()
                    .map(|parts| {
                        let mut kept: Vec<BeamPart> = parts
                            .iter()
                            .filter_map(|p| own(p.run).map(|run| BeamPart { run, ..*p }))
                            .collect();
                        if kept.is_empty() {
                            kept.push(nothing);
                        }
                        kept
                    })
                    .collect(),
            },
            loads: runs.iter().map(|r| frame.loads[*r].clone()).collect(),
            rigidity: frame.rigidity.clone(),
            cases: frame.cases,
            torsion: frame.torsion.clone(),
            strength: frame.strength.clone(),
        },
        runs,
        meetings,
    }
}

impl Part {
    /// The lines of this part, counted as it counts.
    pub fn lines(&self, lines: &[Line]) -> Vec<Line> {
        self.runs
            .iter()
            .enumerate()
            .map(|(r, run)| {
                let mut line = lines[*run].clone();
                line.places.run = r;
                for m in line.places.meeting.iter_mut().flatten() {
                    *m = self.meetings.binary_search(m).unwrap_or(0);
                }
                line
            })
            .collect()
    }
}
