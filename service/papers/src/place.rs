//! Places labels so that none covers another, a pile mark or the edge: each label takes
//! the best of a fixed list of places around its point. Deterministic, order as given.

use bearwell_engine::math;

use crate::plan::shape;
use crate::svg::Rect;

/// Side of a cell of the look-up grid, mm.
const CELL: f64 = 8.0;

/// A straight line on paper.
pub type Line = ((f64, f64), (f64, f64));

/// What already takes room on a field of the sheet.
#[derive(Debug, Clone)]
pub struct Room {
    field: Rect,
    columns: usize,
    rows: usize,
    /// Rectangles that nothing may cover.
    taken: Vec<Rect>,
    /// Which of them hold a text.
    texts: Vec<bool>,
    taken_in: Vec<Vec<usize>>,
    /// Leaders, which nothing may cover either.
    leaders: Vec<Line>,
    leaders_in: Vec<Vec<usize>>,
    /// Lines that are better not covered.
    lines: Vec<Line>,
    lines_in: Vec<Vec<usize>>,
}

/// A place found for a label.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placed {
    /// Where it stands.
    pub rect: Rect,
    /// Where it is far away, the line that leads to it from the mark.
    pub leader: Option<Line>,
    /// How many lines it covers.
    pub covers: usize,
}

impl Room {
    /// An empty field.
    pub fn new(field: Rect) -> Self {
        let columns = (field.w / CELL).ceil().max(1.0) as usize;
        let rows = (field.h / CELL).ceil().max(1.0) as usize;
        Self {
            field,
            columns,
            rows,
            taken: Vec::new(),
            texts: Vec::new(),
            taken_in: vec![Vec::new(); columns * rows],
            leaders: Vec::new(),
            leaders_in: vec![Vec::new(); columns * rows],
            lines: Vec::new(),
            lines_in: vec![Vec::new(); columns * rows],
        }
    }

    /// Marks a rectangle as taken by a mark.
    pub fn take(&mut self, rect: Rect) {
        self.take_by(rect, false);
    }

    /// Marks a rectangle as taken by a text: no leader runs through it, not even from a mark
    /// that lies under it.
    pub fn take_text(&mut self, rect: Rect) {
        self.take_by(rect, true);
    }

    fn take_by(&mut self, rect: Rect, text: bool) {
        let at = self.taken.len();
        self.taken.push(rect);
        self.texts.push(text);
        for cell in self.cells(&rect) {
            self.taken_in[cell].push(at);
        }
    }

    /// Notes a line that labels should keep off.
    pub fn avoid(&mut self, from: (f64, f64), to: (f64, f64)) {
        let at = self.lines.len();
        self.lines.push((from, to));
        for cell in self.cells(&reach((from, to))) {
            if crosses(&self.cell(cell), from, to) {
                self.lines_in[cell].push(at);
            }
        }
    }

    /// Whether nothing stands there and it lies in the field.
    pub fn free(&self, rect: &Rect) -> bool {
        self.field.holds(rect)
            && self.cells(rect).all(|cell| {
                let mut taken = self.taken_in[cell].iter();
                let mut leaders = self.leaders_in[cell].iter();
                taken.all(|i| !self.taken[*i].overlaps(rect))
                    && leaders.all(|i| !runs_through(self.leaders[*i], rect))
            })
    }

    /// What of a line runs beside all that is taken, with a clear edge around that.
    pub fn around(&self, (from, to): Line, clear: f64) -> Vec<Line> {
        let mut covered: Vec<(f64, f64)> = Vec::new();
        for cell in self.cells(&reach((from, to)).grown(clear)) {
            for i in &self.taken_in[cell] {
                covered.extend(shape::shares(self.taken[*i].grown(clear), (from, to)));
            }
        }
        covered.sort_by(|a, b| a.0.total_cmp(&b.0));
        let at = |t: f64| (from.0 + t * (to.0 - from.0), from.1 + t * (to.1 - from.1));
        let mut free = Vec::new();
        let mut done = 0.0;
        for (enter, leave) in covered {
            if enter > done {
                free.push((at(done), at(enter)));
            }
            done = f64::max(done, leave);
        }
        if done < 1.0 {
            free.push((at(done), to));
        }
        free
    }

    /// How many noted lines cross it.
    pub fn crossed(&self, rect: &Rect) -> usize {
        let mut seen: Vec<usize> = Vec::new();
        for cell in self.cells(rect) {
            for i in &self.lines_in[cell] {
                let (from, to) = self.lines[*i];
                if !seen.contains(i) && crosses(rect, from, to) {
                    seen.push(*i);
                }
            }
        }
        seen.len()
    }

    /// Places a label of `w` by `h` around `at`, whose mark has the given radius, best
    /// on the side of `outward`; takes the room. Only near places unless `may_lead`.
    pub fn label(
        &mut self,
        at: (f64, f64),
        radius: f64,
        (w, h): (f64, f64),
        outward: (f64, f64),
        may_lead: bool,
    ) -> Option<Placed> {
        let rings = if may_lead { RINGS.len() } else { 1 };
        self.label_at(at, radius, (w, h), outward, &RINGS[..rings])
    }

    /// The same with the gaps between mark and label given; beyond the first one a leader is
    /// needed.
    pub fn label_at(
        &mut self,
        at: (f64, f64),
        radius: f64,
        size: (f64, f64),
        outward: (f64, f64),
        gaps: &[f64],
    ) -> Option<Placed> {
        let placed = self.spot(at, radius, size, outward, gaps)?;
        self.keep(&placed);
        Some(placed)
    }

    /// Where a label would stand beside its mark, without a leader; takes no room.
    pub fn near(
        &self,
        at: (f64, f64),
        radius: f64,
        size: (f64, f64),
        outward: (f64, f64),
    ) -> Option<Placed> {
        self.spot(at, radius, size, outward, &RINGS[..1])
    }

    /// Takes the room of a label and its leader.
    pub fn keep(&mut self, placed: &Placed) {
        self.take_text(placed.rect);
        let Some(leader) = placed.leader else {
            return;
        };
        beads(leader).for_each(|bead| self.take(bead));
        for cell in self.cells(&reach(leader)) {
            self.leaders_in[cell].push(self.leaders.len());
        }
        self.leaders.push(leader);
    }

    /// Whether a leader keeps clear of all that is taken. Where it leaves its mark it may touch
    /// that, of which it is drawn, but no text.
    fn leads(&self, leader: Line) -> bool {
        let clear = |cell: usize| {
            let mut texts = self.taken_in[cell].iter().filter(|i| self.texts[**i]);
            texts.all(|i| !runs_through(leader, &self.taken[*i]))
        };
        beads(leader).all(|bead| self.free(&bead)) && self.cells(&reach(leader)).all(clear)
    }

    fn spot(
        &self,
        at: (f64, f64),
        radius: f64,
        (w, h): (f64, f64),
        outward: (f64, f64),
        gaps: &[f64],
    ) -> Option<Placed> {
        let mut best: Option<(f64, Placed)> = None;
        for (ring, gap) in gaps.iter().enumerate() {
            for direction in AROUND {
                let rect = beside(at, radius + gap, (w, h), direction);
                if !self.free(&rect) {
                    continue;
                }
                let leader = (ring > 0).then(|| leader_line(at, radius, &rect));
                if leader.is_some_and(|l| !self.leads(l)) {
                    continue;
                }
                let covers = self.crossed(&rect);
                let turned = 1.0 - (direction.0 * outward.0 + direction.1 * outward.1);
                let cost = 9.0 * covers as f64 + 2.5 * ring as f64 + turned;
                if best.is_none_or(|(c, _)| cost < c - 1e-9) {
                    let placed = Placed {
                        rect,
                        leader,
                        covers,
                    };
                    best = Some((cost, placed));
                }
            }
        }
        best.map(|(_, placed)| placed)
    }

    /// Cells that a rectangle touches.
    fn cells(&self, rect: &Rect) -> impl Iterator<Item = usize> + use<> {
        let column = |x: f64| (((x - self.field.x) / CELL).max(0.0) as usize).min(self.columns - 1);
        let row = |y: f64| (((y - self.field.y) / CELL).max(0.0) as usize).min(self.rows - 1);
        let (left, right) = (column(rect.x), column(rect.right()));
        let (top, bottom) = (row(rect.y), row(rect.bottom()));
        let columns = self.columns;
        (top..=bottom).flat_map(move |r| (left..=right).map(move |c| r * columns + c))
    }

    /// The rectangle of a cell; cells at the edge reach outwards without end.
    fn cell(&self, index: usize) -> Rect {
        const FAR: f64 = 1e9;
        let (c, r) = (index % self.columns, index / self.columns);
        let left = if c == 0 {
            -FAR
        } else {
            self.field.x + c as f64 * CELL
        };
        let top = if r == 0 {
            -FAR
        } else {
            self.field.y + r as f64 * CELL
        };
        let right = if c + 1 == self.columns {
            FAR
        } else {
            self.field.x + (c + 1) as f64 * CELL
        };
        let bottom = if r + 1 == self.rows {
            FAR
        } else {
            self.field.y + (r + 1) as f64 * CELL
        };
        Rect {
            x: left,
            y: top,
            w: right - left,
            h: bottom - top,
        }
    }
}

/// The first of the free places that crosses the fewest lines.
pub fn best(room: &Room, places: impl Iterator<Item = Rect>) -> Option<Rect> {
    let mut found: Option<(usize, Rect)> = None;
    for place in places {
        if !room.free(&place) {
            continue;
        }
        let crossed = room.crossed(&place);
        if found.is_none_or(|(least, _)| crossed < least) {
            found = Some((crossed, place));
        }
    }
    found.map(|(_, place)| place)
}

/// Side of the squares along a leader, mm.
const BEAD: f64 = 0.5;

/// Small squares along a leader, clear of its mark and of its label.
fn beads((from, to): Line) -> impl Iterator<Item = Rect> {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let long = math::hypot(dx, dy).max(1e-9);
    // the corner of the square around the mark lies on the way
    let (first, last) = (1.2, long - 0.5);
    let count = ((last - first) / BEAD).max(0.0) as usize;
    (0..=count).map(move |i| {
        let t = (first + i as f64 * BEAD) / long;
        Rect {
            x: from.0 + t * dx - BEAD / 2.0,
            y: from.1 + t * dy - BEAD / 2.0,
            w: BEAD,
            h: BEAD,
        }
    })
}

/// Gaps between mark and label, mm; beyond the first one a leader is needed.
const RINGS: [f64; 4] = [0.9, 3.5, 7.0, 11.0];
/// cos 45 degrees.
const D: f64 = std::f64::consts::FRAC_1_SQRT_2;
/// Eight directions on paper, y down, in order of preference among equals.
const AROUND: [(f64, f64); 8] = [
    (D, -D),
    (D, D),
    (-D, -D),
    (-D, D),
    (0.0, -1.0),
    (0.0, 1.0),
    (1.0, 0.0),
    (-1.0, 0.0),
];

/// The rectangle of a label that stands off `at` by `reach` in a direction.
fn beside(at: (f64, f64), reach: f64, (w, h): (f64, f64), direction: (f64, f64)) -> Rect {
    let side = |d: f64, size: f64| match d {
        d if d > 0.1 => 0.0,
        d if d < -0.1 => -size,
        _ => -size / 2.0,
    };
    Rect {
        x: at.0 + direction.0 * reach + side(direction.0, w),
        y: at.1 + direction.1 * reach + side(direction.1, h),
        w,
        h,
    }
}

/// From the edge of a mark to the nearest place of its label.
fn leader_line(at: (f64, f64), radius: f64, label: &Rect) -> Line {
    let end = (
        at.0.clamp(label.x, label.right()),
        at.1.clamp(label.y, label.bottom()),
    );
    let (dx, dy) = (end.0 - at.0, end.1 - at.1);
    let part = radius / math::hypot(dx, dy).max(1e-9);
    ((at.0 + part * dx, at.1 + part * dy), end)
}

/// Whether a line runs through a rectangle.
fn crosses(rect: &Rect, from: (f64, f64), to: (f64, f64)) -> bool {
    shape::shares(*rect, (from, to)).is_some()
}

/// The same of a leader and a text or a mark, which may touch.
fn runs_through((from, to): Line, rect: &Rect) -> bool {
    const APART: f64 = 0.1;
    crosses(&rect.grown(-APART), from, to)
}

/// The rectangle that a line spans.
fn reach((from, to): Line) -> Rect {
    Rect {
        x: from.0.min(to.0),
        y: from.1.min(to.1),
        w: (from.0 - to.0).abs(),
        h: (from.1 - to.1).abs(),
    }
}

#[cfg(test)]
mod tests;
