//! The marks of a plan: piles and beams, told apart by shape alone.

use bearwell_engine::contract::Verdict;
use bearwell_engine::math;

use crate::svg::{Rect, Svg, mm};

/// A pile within its limits: a dial whose dark sector, clockwise from the top, is its
/// utilisation; a dot where nothing was judged.
pub fn dial(svg: &mut Svg, at: (f64, f64), r: f64, utilisation: Option<f64>) {
    let stroke = "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.3\"";
    svg.circle(at, r, stroke);
    match utilisation {
        None => svg.circle(at, 0.3 * r, "fill=\"#000\""),
        Some(u) if u >= 0.9995 => svg.circle(at, r, "fill=\"#333\""),
        Some(u) if u > 0.0 => {
            let angle = 2.0 * math::PI * u;
            let to = (at.0 + r * math::sin(angle), at.1 - r * math::cos(angle));
            let large = i32::from(u > 0.5);
            let d = format!(
                "M{} {}V{}A{} {} 0 {large} 1 {} {}Z",
                mm(at.0),
                mm(at.1),
                mm(at.1 - r),
                mm(r),
                mm(r),
                mm(to.0),
                mm(to.1)
            );
            svg.path(&d, "fill=\"#333\"");
        }
        Some(_) => {}
    }
}

/// A pile over a limit: a black diamond with a white cross.
pub fn over_limit(svg: &mut Svg, at: (f64, f64), radius: f64) {
    let (x, y, r) = (at.0, at.1, 1.45 * radius);
    let d = format!(
        "M{} {}L{} {}L{} {}L{} {}Z",
        mm(x),
        mm(y - r),
        mm(x + r),
        mm(y),
        mm(x),
        mm(y + r),
        mm(x - r),
        mm(y)
    );
    svg.path(&d, "fill=\"#000\"");
    let c = 0.42 * r;
    let white = "stroke=\"#fff\" stroke-width=\"0.35\"";
    svg.line((x - c, y - c), (x + c, y + c), white);
    svg.line((x - c, y + c), (x + c, y - c), white);
}

/// The mark of a verdict, 2.6 mm high: a tick, a broken square, an arrow on, a black diamond
/// with a cross; a ring where none was given.
pub fn verdict(svg: &mut Svg, verdict: Option<Verdict>, (x, y): (f64, f64)) {
    let heavy = "stroke=\"#000\" stroke-width=\"0.55\" stroke-linejoin=\"round\"";
    match verdict {
        Some(Verdict::Accept) => {
            let d = format!("M{} {}l0.8 1l1.6 -2.2", mm(x - 1.2), mm(y));
            svg.path(&d, heavy);
        }
        Some(Verdict::Provisional) => svg.rect(
            Rect {
                x: x - 1.1,
                y: y - 1.1,
                w: 2.2,
                h: 2.2,
            },
            "stroke=\"#000\" stroke-width=\"0.4\" stroke-dasharray=\"0.7 0.4\"",
        ),
        Some(Verdict::Continue) => {
            let d = format!(
                "M{} {}v2.4M{} {}l1.1 1.2l1.1 -1.2",
                mm(x),
                mm(y - 1.2),
                mm(x - 1.1),
                mm(y)
            );
            svg.path(&d, heavy);
        }
        Some(Verdict::Reject) => over_limit(svg, (x, y), 0.95),
        Some(Verdict::NotAsked) | None => {
            svg.circle((x, y), 1.0, "stroke=\"#000\" stroke-width=\"0.4\"");
        }
    }
}

/// An arrow of 2.6 mm with its middle at `at`, down (1) or up (-1).
pub fn upright_arrow(svg: &mut Svg, (x, y): (f64, f64), way: f64) {
    let tip = y + 1.3 * way;
    let d = format!(
        "M{} {}V{}M{} {}L{} {}L{} {}",
        mm(x),
        mm(y - 1.3 * way),
        mm(tip),
        mm(x - 0.7),
        mm(tip - 0.9 * way),
        mm(x),
        mm(tip),
        mm(x + 0.7),
        mm(tip - 0.9 * way)
    );
    svg.path(&d, "stroke=\"#000\" stroke-width=\"0.3\"");
}

/// An arrow of 2.6 mm to the right with its middle at `at`.
pub fn right_arrow(svg: &mut Svg, (x, y): (f64, f64)) {
    let tip = x + 1.3;
    let d = format!(
        "M{} {}H{}M{} {}L{} {}L{} {}",
        mm(x - 1.3),
        mm(y),
        mm(tip),
        mm(tip - 0.9),
        mm(y - 0.7),
        mm(tip),
        mm(y),
        mm(tip - 0.9),
        mm(y + 0.7)
    );
    svg.path(&d, "stroke=\"#000\" stroke-width=\"0.3\"");
}

/// A short piece of beam for the legend.
pub fn beam_sample(svg: &mut Svg, (x, y): (f64, f64)) {
    let ends = ((x - 2.4, y), (x + 2.4, y));
    svg.line(ends.0, ends.1, "stroke=\"#d8d8d8\" stroke-width=\"2.2\"");
    svg.line(
        ends.0,
        ends.1,
        "stroke=\"#000\" stroke-width=\"0.2\" stroke-dasharray=\"1.8 0.6 0.5 0.6\"",
    );
}
