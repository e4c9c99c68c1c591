//! Names of areas and lines on a plan: inside where there is room, else beside with a line
//! that leads there.

use bearwell_engine::math;

use crate::place::{Room, best};
use crate::plan::shape::{Shape, Spot, clipped};
use crate::svg::{Anchor, LINE, Rect, SMALL, Style, Svg, fitted, width};

/// Longest line, mm.
pub const NAME_ROOM: f64 = 34.0;

/// Writes lines of text in a shape with a hatch, where that still shows around them, or beside
/// it with a line that leads there; whether there was room.
pub fn write(svg: &mut Svg, room: &mut Room, field: Rect, shape: &Shape, texts: &[&str]) -> bool {
    let lines = Lines::of(texts);
    let inside = lines.inside(room, field, shape, (1.5, 2.0));
    let rect = match inside {
        Some(rect) => {
            room.take_text(rect);
            Some(rect)
        }
        None => beside(svg, room, field, shape, lines.size),
    };
    rect.map(|rect| lines.put(svg, room, rect)).is_some()
}

/// Writes lines of text in a shape where they cross nothing; whether there was room.
pub fn write_inside(
    svg: &mut Svg,
    room: &mut Room,
    field: Rect,
    shape: &Shape,
    texts: &[&str],
) -> bool {
    let lines = Lines::of(texts);
    let rect = lines.inside(room, field, shape, (1.0, 1.0));
    match rect.filter(|r| room.crossed(r) == 0) {
        Some(rect) => {
            room.take_text(rect);
            lines.put(svg, room, rect);
            true
        }
        None => false,
    }
}

/// Writes lines of text beside a shape with a line that leads there from a dot inside of it;
/// whether there was room.
pub fn write_led(
    svg: &mut Svg,
    room: &mut Room,
    field: Rect,
    shape: &Shape,
    texts: &[&str],
) -> bool {
    // the first gap would go without a line and is none that is ever free
    const GAPS: [f64; 5] = [1e6, 4.0, 8.0, 13.0, 19.0];
    const DOT: f64 = 0.45;
    let lines = Lines::of(texts);
    let Some(seen) = shape.seen(field) else {
        return false;
    };
    for spot in spots(shape, seen) {
        let dot = Rect {
            x: spot.0 - 1.3,
            y: spot.1 - 1.3,
            w: 2.6,
            h: 2.6,
        };
        if !room.free(&dot) || room.crossed(&dot) > 0 {
            continue;
        }
        let Some(place) = room.label_at(spot, DOT, lines.size, (0.0, -1.0), &GAPS) else {
            continue;
        };
        if let Some((from, to)) = place.leader {
            svg.line(from, to, "stroke=\"#000\" stroke-width=\"0.2\"");
        }
        svg.circle(spot, DOT, "fill=\"#333\"");
        room.take(dot.grown(-0.8));
        lines.put(svg, room, place.rect);
        return true;
    }
    false
}

/// Places in what is seen of a shape, those near its middle first.
fn spots(shape: &Shape, seen: Rect) -> Vec<Spot> {
    const PARTS: i32 = 16;
    let middle = (seen.x + seen.w / 2.0, seen.y + seen.h / 2.0);
    let part = |n: i32| f64::from(n) / f64::from(PARTS);
    let mut spots: Vec<Spot> = (1..PARTS)
        .flat_map(|i| (1..PARTS).map(move |j| (i, j)))
        .map(|(i, j)| (seen.x + part(i) * seen.w, seen.y + part(j) * seen.h))
        .filter(|s| shape.holds(*s))
        .collect();
    let off = |s: &Spot| math::hypot(s.0 - middle.0, s.1 - middle.1);
    spots.sort_by(|a, b| off(a).total_cmp(&off(b)));
    spots
}

/// Lines of text one below the other.
struct Lines {
    texts: Vec<String>,
    size: Spot,
}

impl Lines {
    const STYLE: Style = Style::PLAIN.at(Anchor::Middle);

    fn of(texts: &[&str]) -> Self {
        let texts: Vec<String> = texts
            .iter()
            .map(|t| fitted(t, NAME_ROOM, Self::STYLE))
            .collect();
        let widths = texts.iter().map(|t| width(t, Self::STYLE));
        let size = (
            widths.fold(0.0, f64::max) + 1.2,
            texts.len() as f64 * LINE * SMALL + 0.4,
        );
        Self { texts, size }
    }

    /// The free place in a shape nearest to its middle that crosses the fewest lines, where
    /// the shape is so many times as large.
    fn inside(&self, room: &Room, field: Rect, shape: &Shape, times: Spot) -> Option<Rect> {
        let (w, h) = self.size;
        let seen = shape.seen(field)?;
        if !shape.closed || seen.w < times.0 * w || seen.h < times.1 * h {
            return None;
        }
        let around = |at: Spot| Rect {
            x: at.0 - w / 2.0,
            y: at.1 - h / 2.0,
            w,
            h,
        };
        best(room, spots(shape, seen).into_iter().map(around))
    }

    fn put(&self, svg: &mut Svg, room: &Room, rect: Rect) {
        if room.crossed(&rect) > 0 {
            svg.rect(rect, "fill=\"#fff\"");
        }
        for (i, text) in self.texts.iter().enumerate() {
            let y = rect.y + 0.2 + (i as f64 + 0.76) * LINE * SMALL;
            svg.text(rect.x + rect.w / 2.0, y, text, Self::STYLE);
        }
    }
}

/// A place beside a shape, with the line that leads there.
fn beside(svg: &mut Svg, room: &mut Room, field: Rect, shape: &Shape, size: Spot) -> Option<Rect> {
    const GAPS: [f64; 4] = [1.0, 4.0, 8.0, 13.0];
    let seen = shape.seen(field)?;
    let small = shape.closed && seen.w.max(seen.h) < 12.0;
    let mut feet: Vec<Spot> = if small {
        vec![(seen.x + seen.w / 2.0, seen.y + seen.h / 2.0)]
    } else {
        Vec::new()
    };
    for (a, b) in shape.sides().filter_map(|l| clipped(field, l)) {
        for t in [0.5, 0.25, 0.75, 0.1, 0.9] {
            feet.push((a.0 + t * (b.0 - a.0), a.1 + t * (b.1 - a.1)));
        }
    }
    feet.truncate(60);
    for foot in feet {
        let radius = if small { seen.w.max(seen.h) / 2.0 } else { 0.3 };
        let outward = (0.0, -1.0);
        if let Some(place) = room.label_at(foot, radius, size, outward, &GAPS) {
            if let Some((from, to)) = place.leader {
                svg.line(from, to, "stroke=\"#000\" stroke-width=\"0.2\"");
            }
            return Some(place.rect);
        }
    }
    None
}
