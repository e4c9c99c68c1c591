//! What marks, lines, bars and arrows of the sheet mean; only those that are on it.

use bearwell_engine::frost::FrostBeam;
use bearwell_engine::soil::SoilKind;

use super::detail;
use super::forces::Look;
use super::frame::Frame;
use super::levels::{self, Level};
use super::pile::{self, CONCRETE, SLEEVE};
use super::reading::Subject;
use crate::key::{self, Key, key, line};
use crate::marks;
use crate::panel::PITCH;
use crate::svg::{Rect, Svg};

/// Rows of the legend.
const ROWS: usize = 5;
/// Height of the legend, mm.
pub const HEIGHT: f64 = ROWS as f64 * PITCH + 1.0;

/// Draws the legend.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame, area: Rect) {
    key::draw(svg, &keys(s, frame), ROWS, area);
}

fn keys(s: Subject, frame: &Frame) -> Vec<Key<'static>> {
    let mut all = Vec::new();
    for (level, depth) in levels::levels(s) {
        if let Some(stroke) = level.stroke()
            && frame.depths.shows(depth)
            && level.zone().is_none()
        {
            all.push(key(level.told(), line(stroke)));
        }
        if level == Level::Sleeve {
            all.push(key(level.told(), line(SLEEVE)));
        }
    }
    for bar in &frame.bars {
        let zone = bar.zone;
        all.push(key(
            zone.told(),
            Box::new(move |svg, r| zone.sample(svg, r)),
        ));
    }
    all.extend(ground(s));
    if s.section().beam.is_some() {
        all.push(key("grade beam", Box::new(|svg, r| svg.rect(r, CONCRETE))));
    } else if matches!(s.request.beam, Some(FrostBeam::AboveGround(_))) {
        let sample = |svg: &mut Svg, r| svg.rect(r, pile::UNPLACED);
        all.push(key("beam, place unknown", Box::new(sample)));
    }
    if s.section().void_form.is_some() {
        let sample = |svg: &mut Svg, r: Rect| pile::crushed_form(svg, r, 0.6 * r.h);
        all.push(key("void form, crushed part", Box::new(sample)));
        all.push(key("heave that goes into it", Box::new(detail::heaving)));
    }
    let mut looks: Vec<Look> = s.forces().iter().map(|f| Look::of(f.kind)).collect();
    looks.sort();
    looks.dedup();
    for look in looks {
        let sample = move |svg: &mut Svg, r: Rect| {
            let x = r.x + r.w / 2.0;
            let ends = if look.down() {
                (r.y - 0.1, r.bottom() - 0.1)
            } else {
                (r.bottom() - 0.1, r.y - 0.1)
            };
            look.arrow(svg, x, ends);
        };
        all.push(key(look.told(), Box::new(sample)));
    }
    let helices = &s.section().pile.helices;
    if helices.iter().any(|h| s.fails(h.label.as_str())) {
        let sample = |svg: &mut Svg, r: Rect| {
            marks::over_limit(svg, (r.x + r.w / 2.0, r.y + r.h / 2.0), 0.95);
        };
        all.push(key("helix that fails", Box::new(sample)));
    }
    all
}

/// Kinds of ground in the section; frozen ground where no other is known.
fn ground(s: Subject) -> Vec<Key<'static>> {
    let Some(profile) = s.profile else {
        return vec![key("ground that freezes", key::ground(SoilKind::Frozen))];
    };
    let mut kinds: Vec<SoilKind> = profile.layers.iter().map(|l| l.soil.kind()).collect();
    kinds.sort();
    kinds.dedup();
    let each = kinds.into_iter();
    each.map(|k| key(k.told(), key::ground(k))).collect()
}
