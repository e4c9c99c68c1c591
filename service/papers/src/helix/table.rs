//! The table of helices: bearing and resistance in each direction, and what they add up to.

use bearwell_engine::helix::{AxialDirection, AxialResistance, HelixBearing};

use super::reading::{PlateReading, Subject, told};
use crate::grid::{self, Column, LABEL_LEAST, Row, Table};
use crate::svg::{Rect, Svg};
use crate::words;

/// Draws as many rows as there is room for; returns the lower edge.
pub fn draw(svg: &mut Svg, s: Subject, area: Rect) -> f64 {
    let plates = s.plates();
    if plates.is_empty() {
        return area.y;
    }
    let mut rows: Vec<Row> = plates.iter().map(|p| Row::plain(p.label)).collect();
    rows.extend(["sum", "cylinder", "ultimate"].map(Row::plain));
    rows[plates.len()].ruled = true;
    let mut columns = columns(s, &plates);
    if grid::width(&columns) + LABEL_LEAST > area.w {
        columns.retain(|c| c.unit == words::force_unit(s.system));
    }
    let table = Table {
        about: "helix",
        rows,
        columns,
    };
    grid::draw(svg, &table, LABEL_LEAST, area)
}

/// Bearing and resistance of each direction, helices first, then the sums.
fn columns(s: Subject, plates: &[PlateReading]) -> Vec<Column> {
    let mut all = Vec::new();
    for r in s.resistances() {
        let of = |p: &PlateReading| -> Option<HelixBearing> {
            match r.direction {
                AxialDirection::Compression => p.down.cloned(),
                AxialDirection::Tension => p.up.cloned(),
            }
        };
        let helices: Vec<Option<HelixBearing>> = plates.iter().map(of).collect();
        let stress = helices.iter().map(|h| {
            h.as_ref()
                .map_or(String::new(), |h| words::stress(h.bearing, s.system))
        });
        all.push(Column {
            head: "bears",
            unit: words::stress_unit(s.system),
            cells: stress.chain([(); 3].map(|()| String::new())).collect(),
        });
        let force = helices.iter().map(|h| {
            h.as_ref()
                .map_or(String::new(), |h| words::force(h.resistance, s.system))
        });
        all.push(Column {
            head: told(r.direction),
            unit: words::force_unit(s.system),
            cells: force.chain(sums(s, r)).collect(),
        });
    }
    all
}

/// The sum of the helices, the cylinder, and the ultimate resistance.
fn sums(s: Subject, r: &AxialResistance) -> [String; 3] {
    let force = |f| words::force(f, s.system);
    let cylinder = r.cylindrical_shear.as_ref().map(|c| force(c.total));
    [
        force(r.individual_bearing.total),
        cylinder.unwrap_or_else(|| "-".to_owned()),
        force(r.ultimate),
    ]
}
