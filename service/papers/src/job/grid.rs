//! How many columns and rows of cells a number of piles takes on a field of the paper.

use crate::svg::Rect;

/// Gap between cells, mm.
const GAP: f64 = 1.8;
/// Width of a cell over its height that reads best.
const SHAPE: f64 = 0.85;
/// Greatest height of a cell, mm.
const TALL: f64 = 110.0;

/// Cells in rows from the upper left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    area: Rect,
    columns: usize,
    /// Size of a cell.
    size: (f64, f64),
}

impl Grid {
    /// The grid whose cells are largest in the shape that reads best.
    pub fn new(count: usize, area: Rect) -> Self {
        let mut best: Option<(f64, Self)> = None;
        for columns in 1..=count.max(1) {
            let rows = count.max(1).div_ceil(columns);
            let share = |whole: f64, n: usize| (whole - GAP * (n - 1) as f64) / n as f64;
            let (w, h) = (share(area.w, columns), share(area.h, rows));
            let good = w.min(SHAPE * h);
            if best.is_none_or(|(b, _)| good > b + 1e-9) {
                let h = h.min(TALL);
                let size = (w.min(1.1 * h), h);
                let grid = Self {
                    area,
                    columns,
                    size,
                };
                best = Some((good, grid));
            }
        }
        // there is always one with a single column
        best.map_or(
            Self {
                area,
                columns: 1,
                size: (area.w, area.h),
            },
            |(_, grid)| grid,
        )
    }

    /// The place of a cell.
    pub fn cell(&self, i: usize) -> Rect {
        let (column, row) = (i % self.columns, i / self.columns);
        let (w, h) = self.size;
        Rect {
            x: self.area.x + column as f64 * (w + GAP),
            y: self.area.y + row as f64 * (h + GAP),
            w,
            h,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const AREA: Rect = Rect {
        x: 9.0,
        y: 9.0,
        w: 199.0,
        h: 170.0,
    };

    #[test]
    fn every_number_of_cells_fits_and_none_covers_another() {
        for count in 1..=60 {
            let grid = Grid::new(count, AREA);
            let cells: Vec<Rect> = (0..count).map(|i| grid.cell(i)).collect();
            for (i, cell) in cells.iter().enumerate() {
                assert!(AREA.grown(1e-6).holds(cell), "{count}: {cell:?}");
                assert!(cell.w > 17.0 && cell.h > 20.0, "{count}: {cell:?}");
                assert!(cells[i + 1..].iter().all(|c| !c.overlaps(cell)));
            }
        }
    }
}
