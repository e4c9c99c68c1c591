//! The tables of the reading column: what each rule asks of the top helix, and the uplift by
//! cause and stage.

use bearwell_engine::frost::{FrostStage, UpliftCause};
use bearwell_engine::quantity::Force;

use super::levels;
use super::reading::Subject;
use crate::grid::{self, Column, Row, Table};
use crate::panel::PITCH;
use crate::svg::{Rect, Svg};
use crate::words;

/// Height of a table with its heading, mm.
pub fn height(table: &Table) -> f64 {
    match table.rows.len() {
        0 => 0.0,
        rows => (rows.max(2) as f64 + 2.0) * PITCH + 1.8,
    }
}

/// Draws a table, without its first columns where its labels need their room; returns the
/// lower edge.
pub fn draw(svg: &mut Svg, mut table: Table, area: Rect) -> f64 {
    let labels = grid::labels(&table.rows);
    let room = |columns: &[Column]| area.w - grid::width(columns);
    while table.columns.len() > 1 && room(&table.columns) < labels {
        table.columns.remove(0);
    }
    let least = labels.min(room(&table.columns));
    grid::draw(svg, &table, least, area)
}

/// What each rule asks for; the one that governs is heavy.
pub fn rules(s: Subject) -> Table {
    let embedment = &s.outcome().embedment;
    let governs = |rule| rule == embedment.governed_by;
    let rows = embedment.rules.iter().map(|r| Row {
        heavy: governs(r.rule),
        ..Row::plain(levels::rule(r.rule))
    });
    let there = words::depth(embedment.top_helix_depth, s.system);
    let figures = |cells: Vec<String>, head, unit| Column { head, unit, cells };
    let all = &embedment.rules;
    let length = words::length_unit(s.system);
    Table {
        about: "top helix by",
        rows: rows.collect(),
        columns: vec![
            figures(
                all.iter()
                    .map(|r| words::depth(r.required_depth, s.system))
                    .collect(),
                "at least",
                length,
            ),
            figures(vec![there; all.len()], "is at", length),
            figures(
                all.iter()
                    .map(|r| if governs(r.rule) { "governs" } else { "" }.to_owned())
                    .collect(),
                "",
                "",
            ),
        ],
    }
}

/// One line of the uplift.
struct Line {
    label: String,
    heavy: bool,
    force: Force,
    dead: Option<Force>,
    net: Option<Force>,
    used: Option<f64>,
}

/// Force, dead load, net tension and utilisation by cause and stage.
pub fn uplift(s: Subject) -> Table {
    let lines = lines(s);
    let force = |f: Option<Force>| f.map_or("-".to_owned(), |f| words::force(f, s.system));
    let unit = words::force_unit(s.system);
    let column = |head, unit, cells: Vec<String>| Column { head, unit, cells };
    let each = |cell: &dyn Fn(&Line) -> String| lines.iter().map(cell).collect::<Vec<_>>();
    Table {
        about: "pulls",
        columns: vec![
            column("dead", unit, each(&|l| force(l.dead))),
            column("force", unit, each(&|l| force(Some(l.force)))),
            column("net", unit, each(&|l| force(l.net))),
            column(
                "used",
                "",
                each(&|l| l.used.map_or("-".to_owned(), words::utilisation)),
            ),
        ],
        rows: lines
            .into_iter()
            .map(|l| Row {
                heavy: l.heavy,
                ..Row::plain(l.label)
            })
            .collect(),
    }
}

fn lines(s: Subject) -> Vec<Line> {
    let outcome = s.outcome();
    let governs = |cause, stage| {
        let worst = outcome.governing_uplift.as_ref();
        worst.is_some_and(|g| (g.cause, g.stage) == (cause, stage))
    };
    let label = |c, stage: FrostStage| format!("{}, {}", cause(c), short(stage));
    let mut all = Vec::new();
    for stage in outcome.uplift.iter().flat_map(|u| &u.stages) {
        let d = &stage.design;
        all.push(Line {
            label: label(UpliftCause::Frost, stage.stage),
            heavy: governs(UpliftCause::Frost, stage.stage),
            force: d.frost_force,
            dead: stage.dead_load,
            net: d.net_frost_tension,
            used: d.utilisation_ratio,
        });
    }
    for stage in outcome.swelling.iter().flat_map(|u| &u.stages) {
        let d = &stage.design;
        all.push(Line {
            label: label(UpliftCause::Swell, stage.stage),
            heavy: governs(UpliftCause::Swell, stage.stage),
            force: d.swell_force,
            dead: stage.dead_load,
            net: d.net_swell_tension,
            used: d.utilisation_ratio,
        });
    }
    for stage in outcome.combined_uplift.iter().flat_map(|u| &u.stages) {
        all.push(Line {
            label: label(UpliftCause::FrostAndSwell, stage.stage),
            heavy: governs(UpliftCause::FrostAndSwell, stage.stage),
            force: stage.force,
            dead: stage.dead_load,
            net: stage.net_tension,
            used: stage.utilisation_ratio,
        });
    }
    all
}

/// A cause in words.
pub fn cause(cause: UpliftCause) -> &'static str {
    match cause {
        UpliftCause::Frost => "frost",
        UpliftCause::Swell => "swelling",
        UpliftCause::FrostAndSwell => "both",
    }
}

/// A stage in one word.
fn short(stage: FrostStage) -> &'static str {
    match stage {
        FrostStage::Service => "built",
        FrostStage::Construction => "before",
    }
}
