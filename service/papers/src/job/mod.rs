//! The sheet of `installation-job`: every pile in a cell of its own, torque over depth, all of
//! them to the same two scales. The reading of the answer is beside.

mod cell;
mod facts;
mod grid;
mod legend;
mod scales;
mod table;

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::job::{JobPile, Outcome, Request};
use bearwell_engine::quantity::System;
use bearwell_engine::record;

use crate::page::{self, MARGIN};
use crate::record::steps::{Step, steps};
use crate::svg::{Rect, Svg};
use crate::{foot, panel, words};
use grid::Grid;
use scales::Scales;

pub use table::job_csv;

/// Width of the reading column, mm.
const SIDE: f64 = 60.0;
/// Gap between cells and reading column, mm.
const GAP: f64 = 4.0;

/// A pile with what its cell is drawn from.
#[derive(Debug)]
pub struct Drawn<'a> {
    /// What was asked of it.
    pub request: &'a record::Request,
    /// What was answered.
    pub pile: &'a JobPile,
    /// Its readings as steps.
    pub steps: Vec<Step>,
}

impl<'a> Drawn<'a> {
    fn new(request: &'a record::Request, pile: &'a JobPile) -> Self {
        let outcome = pile.record.as_ref();
        Self {
            request,
            pile,
            steps: outcome.map_or(Vec::new(), |o| steps(request, o)),
        }
    }

    /// The result of its log.
    pub fn outcome(&self) -> Option<&'a record::Outcome> {
        self.pile.record.as_ref()
    }
}

/// Everything a sheet is drawn from.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// What was answered.
    pub answer: &'a Answer<Outcome>,
    /// The piles in order.
    pub piles: &'a [Drawn<'a>],
    /// Units of the sheet.
    pub system: System,
}

/// Draws the piles of a job as an SVG sheet of small cells in the given units, on the given
/// paper.
///
/// Landscape sheet, in millimetres. All cells have the same scales of torque and of depth,
/// which the sheet states once. Black on white: verdicts, readings and limits are told apart
/// by their form. A pile whose log could not be judged has an empty cell with the reason.
/// Labels are escaped. The same answer gives the same bytes.
pub fn job_svg(
    request: &Request,
    answer: &Answer<Outcome>,
    system: System,
    paper: Paper,
) -> String {
    let sheet = page::sheet(paper);
    let inner = sheet.grown(-MARGIN);
    let piles: Vec<Drawn> = request
        .piles
        .iter()
        .zip(&answer.result.piles)
        .map(|(request, pile)| Drawn::new(request, pile))
        .collect();
    let s = Subject {
        answer,
        piles: &piles,
        system,
    };
    let (heading, _) = words::verdict(answer.verdict);
    let title = format!("Installation of {} piles: {heading}", piles.len());
    let mut svg = Svg::new(sheet.w, sheet.h, &title);

    let foot = foot::lines(&answer.cautions, inner.w);
    let foot_height = panel::height(foot.len()) + 1.6;
    let above = Rect {
        h: inner.h - foot_height,
        ..inner
    };
    let area = Rect {
        w: above.w - SIDE - GAP,
        h: above.h - legend::HEIGHT - 1.6,
        ..above
    };
    let scales = Scales::of(s);
    let grid = Grid::new(piles.len(), area);
    for (i, pile) in piles.iter().enumerate() {
        cell::draw(&mut svg, s, &scales, pile, grid.cell(i));
    }
    let strip = Rect {
        y: above.bottom() - legend::HEIGHT,
        h: legend::HEIGHT,
        ..area
    };
    legend::draw(&mut svg, s, strip);
    let side = Rect {
        x: inner.right() - SIDE,
        w: SIDE,
        h: above.h - 1.0,
        ..above
    };
    facts::draw(&mut svg, s, &scales, page::sheet_name(paper), side);
    let below = Rect {
        y: above.bottom(),
        h: foot_height,
        ..inner
    };
    foot::draw(&mut svg, &foot, below);
    svg.finish()
}
