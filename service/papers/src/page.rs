//! The paper, the scale of a plan on it, and the way from plan to paper.

use bearwell_engine::contract::Paper;
use bearwell_engine::layout::PlanPoint;
use bearwell_engine::quantity::System;

use crate::svg::Rect;
use crate::words;

/// Clear edge of the sheet, mm.
pub const MARGIN: f64 = 9.0;

/// Size of the sheet, landscape, mm.
pub fn sheet(paper: Paper) -> Rect {
    let (w, h) = match paper {
        Paper::Letter => (279.4, 215.9),
        Paper::A4 => (297.0, 210.0),
    };
    Rect {
        x: 0.0,
        y: 0.0,
        w,
        h,
    }
}

/// Name of the sheet.
pub fn sheet_name(paper: Paper) -> &'static str {
    match paper {
        Paper::Letter => "Letter",
        Paper::A4 => "A4",
    }
}

/// A scale of drawing, 1 to `denominator`.
#[derive(Debug, Clone, PartialEq)]
pub struct Scale {
    /// Plan over paper.
    pub denominator: f64,
    /// As written on the sheet.
    pub name: String,
}

/// Scales on a metric rule.
const METRIC: [f64; 12] = [
    10.0, 20.0, 25.0, 50.0, 75.0, 100.0, 125.0, 150.0, 200.0, 250.0, 500.0, 750.0,
];
/// Scales on an architect's rule, inches of paper to one foot.
const ARCHITECT: [(f64, &str); 9] = [
    (12.0, "1"),
    (16.0, "3/4"),
    (24.0, "1/2"),
    (32.0, "3/8"),
    (48.0, "1/4"),
    (64.0, "3/16"),
    (96.0, "1/8"),
    (128.0, "3/32"),
    (192.0, "1/16"),
];
/// Scales on an engineer's rule, feet to one inch of paper.
const ENGINEER: [f64; 6] = [20.0, 30.0, 40.0, 50.0, 60.0, 80.0];

/// Scales of a section, on a metric rule as they are or by ten.
const METRIC_DEPTHS: [f64; 18] = [
    10.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 75.0, 80.0, 100.0, 125.0, 150.0, 200.0, 250.0, 300.0,
    400.0, 500.0, 750.0,
];

/// The largest scale on a common rule that shows `extent` (m) within `room` (mm).
pub fn scale(extent: (f64, f64), room: (f64, f64), system: System) -> Scale {
    scale_of(&METRIC, extent, room, system)
}

/// The same for a section, whose height has more metric scales to choose from.
pub fn depth_scale(extent: (f64, f64), room: (f64, f64), system: System) -> Scale {
    scale_of(&METRIC_DEPTHS, extent, room, system)
}

fn scale_of(metric: &[f64], extent: (f64, f64), room: (f64, f64), system: System) -> Scale {
    let needed = (1000.0 * extent.0 / room.0).max(1000.0 * extent.1 / room.1);
    if system == System::UsCustomary {
        if let Some((denominator, inches)) = ARCHITECT.iter().find(|(d, _)| *d >= needed) {
            return Scale {
                denominator: *denominator,
                name: format!("{inches} in = 1 ft (1:{denominator})"),
            };
        }
    } else if let Some(d) = metric.iter().find(|d| **d >= needed) {
        return Scale {
            denominator: *d,
            name: format!("1:{d}"),
        };
    }
    let mut decade = 1.0;
    loop {
        if system == System::UsCustomary {
            if let Some(feet) = ENGINEER.iter().find(|f| *f * decade * 12.0 >= needed) {
                let feet = feet * decade;
                return Scale {
                    denominator: feet * 12.0,
                    name: format!("1 in = {} ft", words::grouped(feet, 0)),
                };
            }
        } else if let Some(d) = [1000.0, 2000.0, 5000.0]
            .iter()
            .find(|d| *d * decade >= needed)
        {
            return Scale {
                denominator: d * decade,
                name: format!("1:{}", words::grouped(d * decade, 0)),
            };
        }
        // a plan is finite, at most 20,000 km wide
        decade *= 10.0;
    }
}

/// From plan metres to paper millimetres: y of the plan is up, y of the paper is down.
#[derive(Debug, Clone, Copy)]
pub struct View {
    /// Middle of the plan, m.
    pub centre: (f64, f64),
    /// The same place on paper, mm.
    pub paper: (f64, f64),
    /// Paper millimetres for one plan metre.
    pub factor: f64,
}

impl View {
    /// A place on paper.
    pub fn at(&self, p: &PlanPoint) -> (f64, f64) {
        (
            self.paper.0 + (p.x.si() - self.centre.0) * self.factor,
            self.paper.1 - (p.y.si() - self.centre.1) * self.factor,
        )
    }
    /// East on paper, of metres.
    pub fn x(&self, metres: f64) -> f64 {
        self.paper.0 + (metres - self.centre.0) * self.factor
    }
    /// North on paper, of metres.
    pub fn y(&self, metres: f64) -> f64 {
        self.paper.1 - (metres - self.centre.1) * self.factor
    }
}

/// West, south, east and north edge of some points, m; none without points.
pub fn bounds<'a>(points: impl Iterator<Item = &'a PlanPoint>) -> Option<[f64; 4]> {
    points.fold(None, |b: Option<[f64; 4]>, p| {
        let (x, y) = (p.x.si(), p.y.si());
        Some(match b {
            None => [x, y, x, y],
            Some([w, s, e, n]) => [w.min(x), s.min(y), e.max(x), n.max(y)],
        })
    })
}

/// The smallest of 1, 2, 5 x 10^n that is at least `least`.
pub fn round_step(least: f64) -> f64 {
    let mut decade = 1e-3;
    loop {
        for lead in [1.0, 2.0, 5.0] {
            if lead * decade >= least {
                return lead * decade;
            }
        }
        decade *= 10.0;
        if decade > 1e12 {
            return decade;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scale_is_the_largest_that_fits() {
        let room = (150.0, 120.0);
        let us = scale((14.02, 7.92), room, System::UsCustomary);
        assert_eq!(us.denominator, 96.0);
        assert_eq!(us.name, "1/8 in = 1 ft (1:96)");
        let si = scale((9.6, 7.2), room, System::Si);
        assert_eq!(si.denominator, 75.0);
        for extent in [0.001, 1.0, 33.0, 500.0, 12_345.0, 2e7] {
            for system in [System::Si, System::UsCustomary] {
                let s = scale((extent, extent / 3.0), room, system);
                assert!(1000.0 * extent / s.denominator <= room.0 + 1e-9);
                // and uses at least a fifth of the room, unless it is tiny
                if extent >= 1.0 {
                    assert!(
                        1000.0 * extent / s.denominator > room.0 / 5.0,
                        "{extent} {s:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn steps_are_round() {
        assert_eq!(round_step(0.7), 1.0);
        assert_eq!(round_step(3.0), 5.0);
        assert_eq!(round_step(12.0), 20.0);
    }
}
