//! The table of piles: label, type, place, loads and utilisation. Where one column has no
//! room for all of them it becomes two or three without places; where that is not enough, the piles
//! whose loads stand nowhere else come first.

use bearwell_engine::layout::LayoutPile;
use bearwell_engine::quantity::System;

use crate::figure::{Figure, Notes};
use crate::panel::{PITCH, Subject};
use crate::plan::kinds::Kinds;
use crate::svg::{Anchor, Rect, Style, Svg, fitted, width};
use crate::words;

/// Text of a cell.
type Cell<'a> = Box<dyn Fn(&LayoutPile, System) -> String + 'a>;

/// One column of the table.
struct Column<'a> {
    head: &'static str,
    unit: &'static str,
    /// Whether it tells the place of the pile.
    place: bool,
    cell: Cell<'a>,
}

fn column<'a>(
    head: &'static str,
    unit: &'static str,
    cell: impl Fn(&LayoutPile, System) -> String + 'a,
) -> Column<'a> {
    Column {
        head,
        unit,
        place: false,
        cell: Box::new(cell),
    }
}

fn columns<'a>(s: Subject<'a>, kinds: &'a Kinds, notes: Notes) -> Vec<Column<'a>> {
    let (length, force) = (words::length_unit(s.system), words::force_unit(s.system));
    let mut all = Vec::new();
    if kinds.all().len() > 1 {
        all.push(column("type", "", |p, _| {
            kinds.number(p).map_or("-".into(), |n| format!("[{n}]"))
        }));
    }
    for (head, cell) in [
        (
            "east",
            (|p, u| words::length(p.at.x, u)) as fn(&LayoutPile, System) -> String,
        ),
        ("north", |p, u| words::length(p.at.y, u)),
    ] {
        all.push(Column {
            place: true,
            ..column(head, length, cell)
        });
    }
    if notes == Notes::Numbers {
        return all;
    }
    all.push(column("down", force, |p, u| {
        words::force(p.compression.demand, u)
    }));
    let piles = &s.answer.result.piles;
    if piles.iter().any(|p| p.tension.demand.si() > 0.0) {
        all.push(column("up", force, |p, u| {
            words::force(p.tension.demand, u)
        }));
    }
    if piles.iter().any(|p| p.utilisation_ratio.is_some()) {
        all.push(column("used", "", |p, _| {
            p.utilisation_ratio.map_or("-".into(), words::utilisation)
        }));
    }
    all
}

/// Gap between columns, mm.
const GAP: f64 = 1.8;
/// Gap between columns of the narrow table.
const NARROW: f64 = 1.3;
/// Gap between the parts of the narrow table.
const BETWEEN: f64 = 4.0;
/// Least room for the label of a pile, mm.
const LABEL_LEAST: f64 = 8.0;
/// Most room for it where the table has parts.
const LABEL_MOST: f64 = 16.0;
/// Piles from which on the sheet makes room for a further part.
const MANY: usize = 25;
/// Greatest width of a part, mm.
const WIDEST: f64 = 43.0;
/// Most parts.
const PARTS: usize = 3;

/// The table of some piles, whole or in parts side by side.
struct Table<'a> {
    s: Subject<'a>,
    figure: &'a Figure,
    columns: Vec<Column<'a>>,
    order: Vec<&'a LayoutPile>,
    widths: Vec<f64>,
    label_room: f64,
}

impl<'a> Table<'a> {
    fn measure(&self, gap: f64) -> Vec<f64> {
        measure(&self.columns, &self.order, self.s.system, gap)
    }

    /// Widens the columns to the room.
    fn spread(&mut self, room: f64, least: f64) {
        // what is left over goes between the columns
        let left_over = room - least - self.widths.iter().sum::<f64>();
        let spread = (left_over / self.columns.len().max(1) as f64 / 2.0).clamp(0.0, 4.0);
        self.widths.iter_mut().for_each(|w| *w += spread);
        self.label_room = (room - self.widths.iter().sum::<f64>()).max(least);
    }

    /// The heading of the table and its rule.
    fn head(&self, svg: &mut Svg, area: Rect) {
        let end = Style::BOLD.at(Anchor::End);
        svg.text(area.x, area.y + 0.76 * PITCH, "pile", Style::BOLD);
        let mut x = area.right() - self.widths.iter().sum::<f64>();
        for (column, w) in self.columns.iter().zip(&self.widths) {
            x += w;
            svg.text(x, area.y + 0.76 * PITCH, column.head, end);
            if !column.unit.is_empty() {
                svg.text(
                    x,
                    area.y + 1.76 * PITCH,
                    column.unit,
                    Style::PLAIN.at(Anchor::End),
                );
            }
        }
        let y = area.y + 2.0 * PITCH + 0.6;
        svg.line(
            (area.x, y),
            (area.right(), y),
            "stroke=\"#000\" stroke-width=\"0.35\"",
        );
    }

    /// Heading and rows; returns the lower edge.
    fn draw(&self, svg: &mut Svg, piles: &[&LayoutPile], area: Rect) -> f64 {
        self.head(svg, area);
        let mut y = area.y + 2.0 * PITCH + 1.2;
        for pile in piles {
            y += PITCH;
            let base = y - 0.24 * PITCH;
            let style = if self.figure.failed.contains(&pile.label) {
                Style::BOLD
            } else {
                Style::PLAIN
            };
            let label = fitted(&pile.label, self.label_room, style);
            svg.text(area.x, base, &label, style);
            let mut x = area.right() - self.widths.iter().sum::<f64>();
            for (column, w) in self.columns.iter().zip(&self.widths) {
                x += w;
                let text = (column.cell)(pile, self.s.system);
                svg.text(x, base, &text, Style::PLAIN.at(Anchor::End));
            }
        }
        y
    }
}

/// Widths of columns.
fn measure(columns: &[Column], piles: &[&LayoutPile], system: System, gap: f64) -> Vec<f64> {
    let cells = |c: &Column| {
        let longest = piles
            .iter()
            .map(|p| width(&(c.cell)(p, system), Style::PLAIN));
        longest
            .chain([width(c.head, Style::BOLD), width(c.unit, Style::PLAIN)])
            .fold(0.0, f64::max)
    };
    columns.iter().map(|c| cells(c) + gap).collect()
}

/// Room for the labels in a table of parts.
fn label_least(piles: &[&LayoutPile]) -> f64 {
    let widths = piles.iter().map(|p| width(&p.label, Style::BOLD));
    widths.fold(0.0, f64::max).clamp(LABEL_LEAST, LABEL_MOST) + 0.4
}

/// Width that the table of many piles asks for in so many parts; 0 where there are fewer
/// piles than that, or where it would be too wide.
pub fn wanted(s: Subject, notes: Notes, parts: usize) -> f64 {
    let piles: Vec<&LayoutPile> = s.answer.result.piles.iter().collect();
    if piles.len() <= (parts - 1) * MANY {
        return 0.0;
    }
    let kinds = Kinds::of(s);
    let mut columns = columns(s, &kinds, notes);
    if notes == Notes::Loads {
        columns.retain(|c| !c.place);
    }
    let widths = measure(&columns, &piles, s.system, NARROW);
    let part = label_least(&piles) + widths.iter().sum::<f64>();
    if part > WIDEST {
        return 0.0;
    }
    parts as f64 * (part + BETWEEN) - BETWEEN + 0.1
}

/// The piles with place and load, as many as there is room for.
pub fn draw(svg: &mut Svg, s: Subject, figure: &Figure, area: Rect) {
    let piles = &s.answer.result.piles;
    // a heading of two lines, and a rule
    let rows = ((area.h - 2.0 * PITCH - 1.6) / PITCH).floor();
    if rows < 2.0 || piles.is_empty() {
        return;
    }
    let rows = rows as usize;
    let mut table = Table {
        s,
        figure,
        columns: columns(s, &figure.kinds, figure.notes),
        order: piles.iter().collect(),
        widths: Vec::new(),
        label_room: 0.0,
    };
    if piles.len() > rows && in_parts(svg, &mut table, rows, area) {
        return;
    }
    if piles.len() > rows {
        first_of(&mut table.order, figure, rows - 1);
    }
    table.widths = table.measure(GAP);
    if table.widths.iter().sum::<f64>() + LABEL_LEAST > area.w {
        // far from the origin coordinates are too long for the table; they are in the answer
        table.columns.retain(|c| !c.place);
        table.widths = table.measure(GAP);
    }
    table.spread(area.w, LABEL_LEAST);
    let y = table.draw(svg, &table.order, area);
    rest(svg, &table, (area.x, y));
}

/// Draws the table in parts side by side without the places of the piles; false where it is
/// too wide for that.
fn in_parts(svg: &mut Svg, table: &mut Table, rows: usize, area: Rect) -> bool {
    let numbers = table.figure.notes == Notes::Numbers;
    let whole = std::mem::take(&mut table.columns);
    // the plan with numbers alone has nothing but places to tell
    let (places, others): (Vec<Column>, Vec<Column>) = whole.into_iter().partition(|c| c.place);
    let (kept, spared) = if numbers {
        (others.into_iter().chain(places).collect(), Vec::new())
    } else {
        (others, places)
    };
    table.columns = kept;
    let all = table.order.clone();
    table.widths = table.measure(NARROW);
    let least = label_least(&table.order);
    let narrow = table.widths.iter().sum::<f64>() + least;
    let parts = ((area.w + BETWEEN) / (narrow + BETWEEN))
        .floor()
        .min(PARTS as f64) as usize;
    if table.columns.is_empty() || parts < 2 {
        // as it was
        table.order = all;
        let at = usize::from(table.figure.kinds.all().len() > 1 && !numbers);
        table.columns.splice(at..at, spared);
        return false;
    }
    if all.len() > parts * rows {
        first_of(&mut table.order, table.figure, parts * (rows - 1));
    }
    let parts = parts.min(table.order.len().div_ceil(rows)).max(2);
    let wide = (area.w - (parts - 1) as f64 * BETWEEN) / parts as f64;
    table.spread(wide, least);
    let per_part = table.order.len().div_ceil(parts);
    let mut lower = area.y;
    for (i, part) in table.order.chunks(per_part).enumerate() {
        let at = Rect {
            x: area.x + i as f64 * (wide + BETWEEN),
            w: wide,
            ..area
        };
        lower = f64::max(lower, table.draw(svg, part, at));
    }
    rest(svg, table, (area.x, lower));
    true
}

/// Keeps the first piles of those: without loads at their marks, over a limit, most utilised.
fn first_of(order: &mut Vec<&LayoutPile>, figure: &Figure, count: usize) {
    let rank = |p: &LayoutPile| {
        let over = figure.failed.contains(&p.label);
        let short = figure.notes == Notes::Loads && figure.short.contains(&p.label);
        (short, over, p.utilisation_ratio.unwrap_or(0.0))
    };
    order.sort_by(|a, b| {
        let (a, b) = (rank(a), rank(b));
        (b.0, b.1).cmp(&(a.0, a.1)).then(b.2.total_cmp(&a.2))
    });
    order.truncate(count);
}

/// Says what became of the piles that are not in the table.
fn rest(svg: &mut Svg, table: &Table, (x, y): (f64, f64)) {
    let left_out = table.s.answer.result.piles.len() - table.order.len();
    if left_out == 0 {
        return;
    }
    let told = table
        .order
        .iter()
        .filter(|p| table.figure.short.contains(&p.label));
    let text = if table.figure.short.len() == told.count() && table.figure.notes == Notes::Loads {
        format!("{} further piles: at their marks", words::count(left_out))
    } else {
        format!("and {} further piles in the answer", words::count(left_out))
    };
    svg.text(x, y + 0.76 * PITCH, &text, Style::PLAIN);
}
