//! The scale of the card: torque upwards on one line for each gear, its pressure beside it,
//! target and limit by their form. The large figures are in `facts.rs`.

use bearwell_engine::quantity::{System, Torque};
use bearwell_engine::torque::{CabCardOutcome, CabMark, PressureOfTorque};

use super::Subject;
use super::reading::{
    Row, gear_name, pressure_figure, pressure_unit, rows, step_pressure, step_torque,
    torque_figure, torque_in,
};
use crate::svg::{Anchor, Rect, Style, Svg, mm, width};
use crate::words;

/// Height of the heads of the columns, mm.
const HEADS: f64 = 12.0;
/// Width of the parts of the target, mm.
const PARTS: f64 = 17.0;
/// Width of the torques, mm.
const TORQUES: f64 = 36.0;
/// Width of a line with its ticks, mm.
const LINE: f64 = 11.0;
/// Least distance of two lines of figures, mm.
const PITCH: f64 = 6.0;
/// Height of the frames of target and limit, mm.
const FRAME: f64 = 8.6;
/// Room above the highest mark for the hatching, mm.
const ABOVE: f64 = 14.0;
/// Figures of the steps.
const STEP: Style = Style::PLAIN.sized(4.2);
/// Figures of target and limit.
const MARK: Style = Style::BOLD.sized(5.0);
const THIN: &str = "stroke=\"#000\" stroke-width=\"0.25\"";

/// Where things stand.
struct Frame {
    area: Rect,
    /// Torque at the top of the scale, below the hatching.
    top: Torque,
    /// Places of the lines, one for each gear, at least one.
    lines: Vec<f64>,
    /// Width of the pressures beside a line.
    pressures: f64,
}

impl Frame {
    fn of(card: &CabCardOutcome, area: Rect) -> Self {
        let gears = card.target.gears.len();
        let limit = card.shaft_limit.as_ref().map_or(Torque::ZERO, |l| l.torque);
        let first = area.x + PARTS + TORQUES + LINE / 2.0;
        let room = area.right() - first - LINE / 2.0;
        let each = room / gears.max(1) as f64;
        Self {
            area: Rect {
                y: area.y + HEADS,
                h: area.h - HEADS - 2.0,
                ..area
            },
            top: card.target.torque.max(limit),
            lines: (0..gears.max(1)).map(|i| first + i as f64 * each).collect(),
            pressures: (each - LINE).min(46.0),
        }
    }

    fn y(&self, torque: Torque) -> f64 {
        let part = torque / self.top;
        self.area.bottom() - part * (self.area.h - ABOVE)
    }

    /// Left edge of the figures right of a line.
    fn right_of(&self, line: f64) -> f64 {
        line + LINE / 2.0
    }
}

/// A mark of the scale: a torque, its figures, the height of its frame.
struct Mark<'a> {
    mark: &'a CabMark,
    /// Middle of its frame.
    y: f64,
    is_limit: bool,
}

/// Draws the scale into its area.
pub fn draw(svg: &mut Svg, s: Subject, card: &CabCardOutcome, area: Rect) {
    let frame = Frame::of(card, area);
    heads(svg, s, card, &frame);
    lines(svg, s, card, &frame);
    let marks = marks(card, &frame);
    steps(svg, s, card, &frame, &marks);
    for mark in &marks {
        draw_mark(svg, s, mark, &frame);
    }
}

fn heads(svg: &mut Svg, s: Subject, card: &CabCardOutcome, frame: &Frame) {
    let bold = Style::BOLD.sized(3.6);
    let (upper, lower) = (frame.area.y - 7.6, frame.area.y - 3.2);
    let end = frame.area.x + PARTS + TORQUES;
    svg.text(
        frame.area.x + PARTS - 2.0,
        upper,
        "part",
        bold.at(Anchor::End),
    );
    svg.text(end, upper, "torque", bold.at(Anchor::End));
    svg.text(
        end,
        lower,
        words::torque_unit(s.system),
        Style::PLAIN.sized(3.6).at(Anchor::End),
    );
    let inlet = card.target.gears.iter().all(|g| g.inlet_pressure.is_some());
    for (gear, line) in card.target.gears.iter().zip(&frame.lines) {
        let x = frame.right_of(*line);
        let name = match gear_name(gear, card.target.gears.len()) {
            "" => "pressure",
            name => name,
        };
        svg.text(x, upper, name, bold);
        let kind = if inlet { "at the inlet" } else { "difference" };
        let unit = format!("{}, {kind}", pressure_unit(s.system));
        svg.text(x, lower, &unit, Style::PLAIN.sized(3.6));
    }
}

/// The line of each gear: dashed above what the working pressures reach, hatched above the
/// limit.
fn lines(svg: &mut Svg, s: Subject, card: &CabCardOutcome, frame: &Frame) {
    let zero = frame.area.bottom();
    let above = frame.area.y;
    for (i, x) in frame.lines.iter().enumerate() {
        let end = card
            .shaft_limit
            .as_ref()
            .map_or(above, |l| frame.y(l.torque));
        let reach = available(s, i).map_or(end, |a| frame.y(a.torque).max(end));
        let heavy = "stroke=\"#000\" stroke-width=\"0.9\"";
        svg.line((*x, zero), (*x, reach), heavy);
        if reach > end {
            svg.line(
                (*x, reach),
                (*x, end),
                "stroke=\"#000\" stroke-width=\"0.5\" stroke-dasharray=\"1.6 1.6\"",
            );
            svg.line((x - 2.6, reach), (x + 2.6, reach), heavy);
        }
        if card.shaft_limit.is_some() {
            hatch(svg, *x, above, end);
        }
    }
}

/// What the working pressures give in a gear.
fn available(s: Subject, gear: usize) -> Option<PressureOfTorque> {
    let drive = s.answer.result.drive?;
    match gear {
        0 => drive.available,
        _ => drive.fast?.available,
    }
}

/// Slanting strokes between two heights: not to be entered.
fn hatch(svg: &mut Svg, x: f64, top: f64, bottom: f64) {
    let (left, right) = (x - 3.2, x + 3.2);
    svg.line(
        (left, bottom),
        (right, bottom),
        "stroke=\"#000\" stroke-width=\"1.4\"",
    );
    let frame = Rect {
        x: left,
        y: top,
        w: right - left,
        h: (bottom - top).max(0.0),
    };
    svg.rect(frame, "stroke=\"#000\" stroke-width=\"0.3\"");
    let slant = right - left;
    let mut y = bottom;
    while y - slant >= top {
        svg.line(
            (left, y),
            (right, y - slant),
            "stroke=\"#000\" stroke-width=\"0.5\"",
        );
        y -= 2.2;
    }
}

/// Target and limit with the heights of their frames, which keep apart.
fn marks<'a>(card: &'a CabCardOutcome, frame: &Frame) -> Vec<Mark<'a>> {
    let mut all = vec![Mark {
        mark: &card.target,
        y: frame.y(card.target.torque),
        is_limit: false,
    }];
    if let Some(limit) = &card.shaft_limit {
        all.push(Mark {
            mark: limit,
            y: frame.y(limit.torque),
            is_limit: true,
        });
        // the higher torque first; on a tie the limit lies above
        all.sort_by(|a, b| a.y.total_cmp(&b.y).then(b.is_limit.cmp(&a.is_limit)));
        let lack = all[0].y + FRAME + 0.9 - all[1].y;
        if lack > 0.0 {
            // there is room above the scale
            all[0].y -= lack;
        }
    }
    all
}

/// The steps that find room: a tick each, figures at every so many, counted from the target.
fn steps(svg: &mut Svg, s: Subject, card: &CabCardOutcome, frame: &Frame, marks: &[Mark]) {
    let all = rows(card);
    let Some(least) = gap(&all, frame) else {
        return;
    };
    let every = (PITCH / least).ceil().max(1.0) as usize;
    let at_target = all.iter().position(|r| r.target).unwrap_or(0);
    let inlet = card.target.gears.iter().all(|g| g.inlet_pressure.is_some());
    let limit = card
        .shaft_limit
        .as_ref()
        .map(|l| torque_in(&l.cab, s.system).value());
    for (i, row) in all.iter().enumerate() {
        if row.target || row.limit || over(row, limit, s.system) {
            continue;
        }
        let y = frame.y(row.torque);
        let clear = marks.iter().all(|m| (m.y - y).abs() >= FRAME / 2.0 + 2.9);
        let shown = clear && i.abs_diff(at_target) % every == 0;
        let half = if shown { 2.2 } else { 1.2 };
        if shown || least >= 1.0 {
            for x in &frame.lines {
                svg.line((x - half, y), (x + half, y), THIN);
            }
        }
        if shown {
            figures(svg, s, row, y, inlet, frame);
        }
    }
    let zero = frame.area.bottom();
    for x in &frame.lines {
        svg.line((x - 3.2, zero), (x + 3.2, zero), THIN);
    }
}

/// Least distance of two steps on paper.
fn gap(all: &[Row], frame: &Frame) -> Option<f64> {
    let steps: Vec<&Row> = all.iter().filter(|r| !r.limit).collect();
    let first = frame.area.bottom() - frame.y(all.first()?.torque);
    let pairs = steps
        .windows(2)
        .map(|p| (p[1].part - p[0].part) / all[0].part * first);
    Some(pairs.fold(first, f64::min).max(0.02))
}

/// A step above the limit as the operator reads it, which is rounded down.
fn over(row: &Row, limit: Option<f64>, system: System) -> bool {
    let torque = Torque::ROLE.unit(system).printed(row.torque.si());
    limit.is_some_and(|limit| torque > limit)
}

fn figures(svg: &mut Svg, s: Subject, row: &Row, y: f64, inlet: bool, frame: &Frame) {
    let base = y + 0.36 * STEP.size;
    let end = STEP.at(Anchor::End);
    let part = format!("{} %", words::trimmed(row.part * 100.0, 1));
    svg.text(frame.area.x + PARTS - 2.0, base, &part, end);
    let torque = step_torque(row.torque, s.system);
    svg.text(frame.area.x + PARTS + TORQUES, base, &torque, end);
    let each = if inlet { 2 } else { 1 };
    for ((gear, line), pressures) in frame
        .lines
        .iter()
        .enumerate()
        .zip(row.pressures.chunks(each))
    {
        // what the working pressures do not reach has no figure
        if available(s, gear).is_some_and(|a| a.torque < row.torque) {
            continue;
        }
        if let Some(pressure) = pressures.last() {
            let text = step_pressure(*pressure, s.system);
            let style = fitting(&text, frame.pressures, STEP);
            svg.text(frame.right_of(*line), base, &text, style);
        }
    }
}

/// The style in the size at which the text fits, not below the smallest.
fn fitting(text: &str, room: f64, style: Style) -> Style {
    let wide = width(text, style);
    let size = (style.size * (room / wide).min(1.0)).max(crate::svg::SMALL);
    style.sized(size)
}

/// A mark: its figures in frames, led to its height on every line.
fn draw_mark(svg: &mut Svg, s: Subject, mark: &Mark, frame: &Frame) {
    let y = frame.y(mark.mark.torque);
    let left = frame.area.x + PARTS - 2.0;
    let torques = Rect {
        x: left,
        y: mark.y - FRAME / 2.0,
        w: TORQUES + 3.0,
        h: FRAME,
    };
    let word = if mark.is_limit { "LIMIT" } else { "TARGET" };
    let torque = torque_figure(&mark.mark.cab, s.system);
    framed(svg, torques, mark.is_limit);
    let base = mark.y + 0.36 * MARK.size;
    let small = Style::BOLD.sized(3.4).at(Anchor::End);
    svg.text(left - 1.2, mark.y + 0.36 * small.size, word, small);
    let style = fitting(&torque, torques.w - 3.6, MARK).at(Anchor::End);
    svg.text(torques.right() - 1.8, base, &torque, style);
    for (i, line) in frame.lines.iter().enumerate() {
        let from = if i == 0 {
            torques.right()
        } else {
            line - LINE / 2.0 + 0.6
        };
        pointer(svg, (from, mark.y), (*line - 0.45, y), mark.is_limit);
        let Some(gear) = mark.mark.gears.get(i) else {
            continue;
        };
        let x = frame.right_of(*line);
        let text = if gear.reached == Some(false) && !mark.is_limit {
            "not reached".to_owned()
        } else {
            pressure_figure(&gear.cab, s.system)
        };
        let style = fitting(&text, frame.pressures - 3.6, MARK);
        let frame_of_text = Rect {
            x: x - 1.8,
            y: torques.y,
            w: width(&text, style) + 3.6,
            h: FRAME,
        };
        framed(svg, frame_of_text, mark.is_limit);
        svg.text(x, base, &text, style);
        pointer(
            svg,
            (frame_of_text.x, mark.y),
            (*line + 0.45, y),
            mark.is_limit,
        );
    }
}

/// The frame of a target is a heavy rectangle, that of a limit eight-sided and double.
fn framed(svg: &mut Svg, r: Rect, limit: bool) {
    if !limit {
        svg.rect(r, "fill=\"#fff\" stroke=\"#000\" stroke-width=\"1\"");
        return;
    }
    eight_sided(svg, r, 2.2, "stroke=\"#000\" stroke-width=\"0.5\"");
    eight_sided(
        svg,
        r.grown(-0.9),
        1.9,
        "stroke=\"#000\" stroke-width=\"0.3\"",
    );
}

/// A rectangle with its corners cut.
pub fn eight_sided(svg: &mut Svg, r: Rect, cut: f64, attributes: &str) {
    let (l, t, e, b) = (r.x, r.y, r.right(), r.bottom());
    let d = format!(
        "M{} {}L{} {}L{} {}L{} {}L{} {}L{} {}L{} {}L{} {}Z",
        mm(l + cut),
        mm(t),
        mm(e - cut),
        mm(t),
        mm(e),
        mm(t + cut),
        mm(e),
        mm(b - cut),
        mm(e - cut),
        mm(b),
        mm(l + cut),
        mm(b),
        mm(l),
        mm(b - cut),
        mm(l),
        mm(t + cut)
    );
    svg.path(&d, attributes);
}

/// From a frame to the line: an arrow for a target, a bare stroke for a limit.
fn pointer(svg: &mut Svg, from: (f64, f64), to: (f64, f64), limit: bool) {
    svg.line(from, to, "stroke=\"#000\" stroke-width=\"0.5\"");
    if limit {
        return;
    }
    let side = if to.0 > from.0 { -1.0 } else { 1.0 };
    let d = format!(
        "M{} {}L{} {}L{} {}Z",
        mm(to.0),
        mm(to.1),
        mm(to.0 + side * 2.8),
        mm(to.1 - 1.7),
        mm(to.0 + side * 2.8),
        mm(to.1 + 1.7)
    );
    svg.path(&d, "fill=\"#000\"");
}
