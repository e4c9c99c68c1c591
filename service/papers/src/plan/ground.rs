//! What lies in the ground of a plan: things that piles keep away from, hatched or ticked,
//! with their clearance as a dashed line, and parts where piles carry something else, under
//! sparse marks. Names are placed by the figure before anything here is drawn.

use bearwell_engine::layout::{BoundarySide, KeepOutShape, PlanPoint, Request};
use bearwell_engine::math;

use crate::page::View;
use crate::place::{Line, Room};
use crate::plan::shape::{Shape, Spot, clipped};
use crate::plan::tags::{NAME_ROOM, write};
use crate::svg::{Rect, Style, Svg, fitted, mm, wrapped};

/// What an area or a line of the ground is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum What {
    /// Piles stay outside.
    Area,
    /// Piles stay away on both sides.
    Line,
    /// Piles stay on the side where the place is.
    Boundary(Spot),
    /// Piles stay inside.
    Lot,
    /// Piles carry something else; its turn among the zones.
    Zone(usize),
}

/// Something in the ground.
#[derive(Debug, Clone)]
pub struct Part {
    /// What it is.
    pub what: What,
    /// Its name, and what it is or why.
    pub name: Vec<String>,
    /// Where it lies on paper.
    pub shape: Shape,
    /// Clearance on paper, mm.
    pub clearance: f64,
}

/// Least clearance that is drawn, mm.
const CLEARANCE_LEAST: f64 = 0.5;
/// Clear edge around what stands on the plan, mm.
const CLEAR: f64 = 0.35;

/// Points of the plan that belong to things in the ground, for the extent of the plan.
pub fn points(request: &Request) -> Vec<PlanPoint> {
    let mut all = Vec::new();
    for zone in request.soil_zones.iter().flatten() {
        all.extend(&zone.corners);
    }
    for keep_out in request.keep_outs.iter().flatten() {
        match &keep_out.shape {
            KeepOutShape::Polygon(p) | KeepOutShape::Lot(p) => all.extend(&p.corners),
            KeepOutShape::Line(l) => all.extend(&l.points),
            KeepOutShape::Boundary(b) => all.extend([&b.from, &b.to]),
            KeepOutShape::Circle(c) => {
                for side in [c.radius, c.radius * -1.0] {
                    all.push(PlanPoint {
                        x: c.centre.x + side,
                        y: c.centre.y + side,
                    });
                }
            }
        }
    }
    all
}

/// Everything in the ground, on paper.
pub fn parts(request: &Request, view: &View, field: Rect) -> Vec<Part> {
    let on_paper = |points: &[PlanPoint], closed: bool| Shape {
        points: points.iter().map(|p| view.at(p)).collect(),
        closed,
    };
    let zones = request.soil_zones.iter().flatten().enumerate();
    let zones = zones.map(|(i, zone)| Part {
        what: What::Zone(i),
        name: vec![zone.label.as_str().to_owned()],
        shape: on_paper(&zone.corners, true),
        clearance: 0.0,
    });
    let keep_outs = request.keep_outs.iter().flatten().map(|k| {
        let mut clearance = k.clearance.si() * view.factor;
        let (what, shape) = match &k.shape {
            KeepOutShape::Polygon(p) => (What::Area, on_paper(&p.corners, true)),
            KeepOutShape::Lot(p) => (What::Lot, on_paper(&p.corners, true)),
            KeepOutShape::Line(l) => (What::Line, on_paper(&l.points, false)),
            KeepOutShape::Circle(c) => {
                // a point shows too; the line around it stays where it is
                let radius = c.radius.si() * view.factor;
                let drawn = radius.max(0.4);
                clearance = (clearance + radius - drawn).max(0.0);
                (What::Area, Shape::round(view.at(&c.centre), drawn))
            }
            KeepOutShape::Boundary(b) => {
                let left = b.piles_on == BoundarySide::Left;
                endless(view.at(&b.from), view.at(&b.to), left, field)
            }
        };
        let why = k.why.as_ref().filter(|w| w.as_str() != k.label.as_str());
        Part {
            what,
            name: told(k.label.as_str(), why.map(|w| w.as_str())),
            shape,
            clearance,
        }
    });
    zones.chain(keep_outs).collect()
}

/// A name, and below it what it is in at most two lines.
fn told(label: &str, why: Option<&str>) -> Vec<String> {
    let mut lines = wrapped(why.unwrap_or(""), NAME_ROOM, Style::PLAIN);
    if lines.len() > 2 {
        lines.truncate(2);
        lines[1] = fitted(&format!("{} \u{2026}", lines[1]), NAME_ROOM, Style::PLAIN);
    }
    lines.insert(0, label.to_owned());
    lines
}

/// A boundary without end, as far as a sheet is wide, and a place on the side of the piles.
fn endless(from: Spot, to: Spot, left: bool, field: Rect) -> (What, Shape) {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let long = math::hypot(dx, dy).max(1e-9);
    let d = (dx / long, dy / long);
    let middle = (field.x + field.w / 2.0, field.y + field.h / 2.0);
    // the place on the line that is nearest to the middle of the field
    let along = (middle.0 - from.0) * d.0 + (middle.1 - from.1) * d.1;
    let near = (from.0 + along * d.0, from.1 + along * d.1);
    let far = 2.0 * (field.w + field.h);
    // y of the paper is down, so left of the line is where y is less
    let n = if left { (d.1, -d.0) } else { (-d.1, d.0) };
    let shape = Shape {
        points: vec![
            (near.0 - far * d.0, near.1 - far * d.1),
            (near.0 + far * d.0, near.1 + far * d.1),
        ],
        closed: false,
    };
    (What::Boundary((near.0 + n.0, near.1 + n.1)), shape)
}

impl Part {
    /// Whether anything of it is in the field.
    pub fn seen(&self, field: Rect) -> bool {
        let outline = self.shape.sides().any(|l| clipped(field, l).is_some());
        outline
            || self
                .shape
                .holds((field.x + field.w / 2.0, field.y + field.h / 2.0))
    }

    /// Notes its outline as a line that labels keep off.
    pub fn avoid(&self, room: &mut Room, field: Rect) {
        for line in self.shape.sides() {
            if let Some((from, to)) = clipped(field, line) {
                room.avoid(from, to);
            }
        }
    }

    /// Writes its name where there is room; whether there was.
    pub fn tell(&self, svg: &mut Svg, room: &mut Room, field: Rect) -> bool {
        let lines: Vec<&str> = self.name.iter().map(String::as_str).collect();
        // the name of a lot belongs to its boundary
        let shape = Shape {
            closed: self.shape.closed && self.what != What::Lot,
            points: self.shape.points.clone(),
        };
        write(svg, room, field, &shape, &lines) || write(svg, room, field, &shape, &lines[..1])
    }

    /// Draws it around all that stands on the plan.
    pub fn draw(&self, svg: &mut Svg, room: &Room, field: Rect) {
        let outline = || self.shape.sides();
        let shape = &self.shape;
        let put = |svg: &mut Svg, lines: Vec<Line>, pen: &str| strokes(svg, room, &lines, pen);
        let (thin, heavy) = (
            "stroke=\"#000\" stroke-width=\"0.15\"",
            "stroke=\"#000\" stroke-width=\"0.4\"",
        );
        let sides: Vec<Line> = outline().filter_map(|l| clipped(field, l)).collect();
        match self.what {
            What::Area => {
                put(svg, shape.hatch(field, 1.5), thin);
                put(svg, sides, "stroke=\"#000\" stroke-width=\"0.3\"");
            }
            What::Line => {
                put(svg, sides.clone(), heavy);
                put(svg, crosses(&sides), "stroke=\"#000\" stroke-width=\"0.2\"");
            }
            What::Boundary(piles) => {
                let forbidden = |p: Spot| !same_side(shape, p, piles);
                put(svg, sides, heavy);
                put(svg, shape.ticks(field, 2.4, forbidden), thin);
            }
            What::Lot => {
                put(svg, sides, heavy);
                put(svg, shape.ticks(field, 2.4, |p| !shape.holds(p)), thin);
            }
            What::Zone(turn) => {
                let pen = "stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"3.4 1\"";
                put(svg, sides, pen);
                sparse(svg, room, shape, turn, field);
            }
        }
        if self.clearance >= CLEARANCE_LEAST {
            let allowed = |p: Spot| match self.what {
                What::Area => !shape.holds(p),
                What::Lot => shape.holds(p),
                What::Boundary(piles) => same_side(shape, p, piles),
                What::Line | What::Zone(_) => true,
            };
            let dashes = shape.beside(self.clearance, field, (1.1, 0.9), allowed);
            put(svg, dashes, "stroke=\"#000\" stroke-width=\"0.2\"");
        }
    }
}

/// Whether two places lie on the same side of the first line of a shape.
fn same_side(shape: &Shape, a: Spot, b: Spot) -> bool {
    let (p, q) = (shape.points[0], shape.points[1]);
    let side = |s: Spot| (q.0 - p.0) * (s.1 - p.1) - (q.1 - p.1) * (s.0 - p.0);
    (side(a) > 0.0) == (side(b) > 0.0)
}

/// Small crosses along lines: a thing in the ground that is not to be touched.
fn crosses(lines: &[Line]) -> Vec<Line> {
    const STEP: f64 = 7.0;
    const HALF: f64 = 0.8;
    let mut all = Vec::new();
    for (a, b) in lines {
        let long = math::hypot(b.0 - a.0, b.1 - a.1);
        let count = (long / STEP) as usize;
        for i in 0..count {
            let t = (i as f64 + 0.5) / count as f64;
            let (x, y) = (a.0 + t * (b.0 - a.0), a.1 + t * (b.1 - a.1));
            all.push(((x - HALF, y - HALF), (x + HALF, y + HALF)));
            all.push(((x - HALF, y + HALF), (x + HALF, y - HALF)));
        }
    }
    all
}

/// Draws lines around all that is taken, as one path.
pub fn strokes(svg: &mut Svg, room: &Room, lines: &[Line], pen: &str) {
    let mut d = String::new();
    for line in lines {
        for (a, b) in room.around(*line, CLEAR) {
            d += &format!("M{} {}L{} {}", mm(a.0), mm(a.1), mm(b.0), mm(b.1));
        }
    }
    if !d.is_empty() {
        svg.path(&d, pen);
    }
}

/// The mark of a zone, as strokes around (0, 0).
pub fn zone_mark(turn: usize) -> &'static [[f64; 4]] {
    const MARKS: [&[[f64; 4]]; 4] = [
        &[[-0.6, 0.0, 0.6, 0.0], [0.0, -0.6, 0.0, 0.6]],
        &[[-0.6, -0.4, 0.0, 0.5], [0.0, 0.5, 0.6, -0.4]],
        &[[-0.7, 0.0, 0.7, 0.0]],
        &[
            [-0.6, 0.5, 0.6, 0.5],
            [0.6, 0.5, 0.0, -0.5],
            [0.0, -0.5, -0.6, 0.5],
        ],
    ];
    MARKS[turn % MARKS.len()]
}

/// Sparse marks over a zone, where nothing else stands.
fn sparse(svg: &mut Svg, room: &Room, shape: &Shape, turn: usize, field: Rect) {
    const STEP: (f64, f64) = (5.6, 4.4);
    const HALF: f64 = 0.9;
    let Some(seen) = shape.seen(field.grown(-1.0)) else {
        return;
    };
    let mut d = String::new();
    let (columns, rows) = ((seen.w / STEP.0) as i64 + 1, (seen.h / STEP.1) as i64 + 1);
    for row in 0..=rows {
        for column in 0..=columns {
            let x = seen.x + (column as f64 + 0.25 + 0.5 * (row % 2) as f64) * STEP.0;
            let y = seen.y + (row as f64 + 0.5) * STEP.1;
            let around = Rect {
                x: x - HALF,
                y: y - HALF,
                w: 2.0 * HALF,
                h: 2.0 * HALF,
            };
            let inside = shape.holds((x, y)) && shape.distance((x, y)) > HALF;
            if inside && room.free(&around) && room.crossed(&around) == 0 {
                for [a, b, c, e] in zone_mark(turn) {
                    d += &format!("M{} {}L{} {}", mm(x + a), mm(y + b), mm(x + c), mm(y + e));
                }
            }
        }
    }
    if !d.is_empty() {
        svg.path(&d, "stroke=\"#000\" stroke-width=\"0.2\"");
    }
}
