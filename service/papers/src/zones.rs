//! Zones of the ground that reach from its surface to a depth, drawn as bars beside a section
//! and told apart by the form of their marks.

use bearwell_engine::quantity::Length;
use bearwell_engine::soil::SoilKind;

use crate::depths::Depths;
use crate::hatch::hatch;
use crate::svg::{Rect, Svg, mm};

/// Width of the bar of a zone, mm.
const BAR: f64 = 3.4;
/// Gap before a bar, mm.
const GAP: f64 = 0.7;

/// A zone of the ground.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Zone {
    /// Ground that freezes.
    Frost,
    /// Fill.
    Fill,
    /// Ground that swells and shrinks.
    Active,
    /// Ground that collapses when it is wetted.
    Collapse,
    /// A hole that was drilled or dug.
    PreDrilled,
    /// Ground that a pile went through before.
    Disturbed,
}

impl Zone {
    /// How it is called.
    pub const fn told(self) -> &'static str {
        match self {
            Zone::Frost => "frost",
            Zone::Fill => "fill",
            Zone::Active => "active zone",
            Zone::Collapse => "collapsing ground",
            Zone::PreDrilled => "pre-drilled",
            Zone::Disturbed => "disturbed before",
        }
    }

    /// Draws a sample of it.
    pub fn sample(self, svg: &mut Svg, r: Rect) {
        let x = r.x + (r.w - BAR) / 2.0;
        self.fill(svg, Rect { x, w: BAR, ..r });
    }

    fn fill(self, svg: &mut Svg, r: Rect) {
        match self {
            Zone::Frost => hatch(svg, SoilKind::Frozen, r),
            Zone::Fill => hatch(svg, SoilKind::Fill, r),
            Zone::Active => waves(svg, r),
            Zone::Collapse => wedges(svg, r),
            Zone::Disturbed => rungs(svg, r),
            Zone::PreDrilled => {}
        }
        svg.rect(r, "stroke=\"#000\" stroke-width=\"0.25\"");
    }
}

/// The bar of a zone beside a section.
#[derive(Debug, Clone, Copy)]
pub struct ZoneBar {
    /// Which zone.
    pub zone: Zone,
    /// Where it begins.
    pub top: Length,
    /// Where it ends.
    pub base: Length,
    /// Left edge on paper.
    pub x: f64,
    /// Right edge on paper.
    pub right: f64,
}

/// Bars of zones (which, from, to) side by side from an edge rightwards.
pub fn bars(zones: impl IntoIterator<Item = (Zone, Length, Length)>, edge: f64) -> Vec<ZoneBar> {
    let mut right = edge;
    let mut all = Vec::new();
    for (zone, top, base) in zones {
        let x = right + GAP;
        right += GAP + BAR;
        all.push(ZoneBar {
            zone,
            top,
            base,
            x,
            right,
        });
    }
    all
}

/// Draws bars as far down as the drawing shows.
pub fn draw(svg: &mut Svg, depths: &Depths, bars: &[ZoneBar]) {
    for bar in bars {
        let (top, base) = (bar.top.si(), bar.base.si().min(depths.end));
        let r = Rect {
            x: bar.x,
            y: depths.at(top),
            w: BAR,
            h: depths.at(base) - depths.at(top),
        };
        bar.zone.fill(svg, r);
    }
}

/// Waves down a bar: ground that swells and shrinks.
fn waves(svg: &mut Svg, r: Rect) {
    let count = (r.h / 1.5).floor().max(1.0);
    let step = r.h / count;
    let mut d = String::new();
    for i in 0..count as usize {
        let y = r.y + i as f64 * step;
        let (left, right) = (r.x + 0.15 * r.w, r.x + 0.85 * r.w);
        let (from, to) = if i % 2 == 0 {
            (left, right)
        } else {
            (right, left)
        };
        if i == 0 {
            d += &format!("M{} {}", mm(from), mm(y));
        }
        d += &format!("L{} {}", mm(to), mm(y + step));
    }
    svg.path(&d, "stroke=\"#000\" stroke-width=\"0.2\"");
}

/// Rungs across a bar: a hole that a pile went through before.
fn rungs(svg: &mut Svg, r: Rect) {
    let count = (r.h / 1.8).floor().max(1.0) as usize;
    let mut d = String::new();
    for i in 0..count {
        let y = r.y + (i as f64 + 0.5) * r.h / count as f64;
        d += &format!("M{} {}H{}", mm(r.x), mm(y), mm(r.right()));
    }
    svg.path(&d, "stroke=\"#000\" stroke-width=\"0.2\"");
}

/// Wedges with their points down along a bar: ground that gives way.
fn wedges(svg: &mut Svg, r: Rect) {
    let count = (r.h / 2.2).floor().max(1.0);
    let step = r.h / count;
    let mut d = String::new();
    for i in 0..count as usize {
        let y = r.y + (i as f64 + 0.22) * step;
        let (left, right) = (r.x + 0.2 * r.w, r.x + 0.8 * r.w);
        let (middle, point) = (mm(r.x + 0.5 * r.w), mm(y + 0.56 * step));
        d += &format!(
            "M{} {}L{middle} {point}L{} {}",
            mm(left),
            mm(y),
            mm(right),
            mm(y)
        );
    }
    svg.path(&d, "stroke=\"#000\" stroke-width=\"0.2\"");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_zone_has_its_own_marks_also_where_it_is_thin() {
        let zones = [
            Zone::Frost,
            Zone::Fill,
            Zone::Active,
            Zone::Collapse,
            Zone::PreDrilled,
            Zone::Disturbed,
        ];
        for h in [0.9, 3.0, 30.0] {
            let mut seen: Vec<String> = Vec::new();
            for zone in zones {
                let mut svg = Svg::new(50.0, 50.0, "");
                let (x, y, w) = (5.0, 5.0, 8.0);
                zone.sample(&mut svg, Rect { x, y, w, h });
                let text = svg.finish();
                assert!(!seen.contains(&text), "{zone:?} at {h}");
                seen.push(text);
            }
        }
    }

    #[test]
    fn bars_stand_side_by_side() {
        let to = |m: f64| Length::from_si(m);
        let two = [
            (Zone::Frost, to(0.5), to(1.7)),
            (Zone::Fill, to(0.0), to(1.0)),
        ];
        let all = bars(two, 40.0);
        assert!(all[0].x > 40.0 && all[1].x > all[0].right);
        assert_eq!((all[0].top, all[0].base), (to(0.5), to(1.7)));
    }
}
