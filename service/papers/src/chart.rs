//! A field with two linear axes: round ticks, the way from values to paper, frame, grid,
//! figures and titles. Knows nothing of what is drawn in it.

use crate::page;
use crate::panel::PITCH;
use crate::svg::{Anchor, Rect, SMALL, Style, Svg, fitted, width};
use crate::words;

/// Length of a tick outside of the field, mm.
const TICK: f64 = 1.0;
/// Least gap between two figures of a horizontal axis, mm.
const GAP: f64 = 2.5;
/// Least distance of two figures of a vertical axis, mm.
const APART: f64 = 8.0;
/// Most ticks of an axis.
const TICKS: f64 = 12.0;

/// Edge of the field where the figures of the horizontal axis stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Edge {
    /// Above it.
    Top,
    /// Below it.
    Bottom,
}

/// What an axis is to show.
#[derive(Debug, Clone, Copy)]
pub struct Span<'a> {
    /// What it is, with its unit, as written beside it.
    pub title: &'a str,
    /// Least value, base SI.
    pub least: f64,
    /// Greatest value, base SI.
    pub most: f64,
    /// Base SI in one unit of the reader.
    pub factor: f64,
    /// Grows to the left or downwards instead of to the right or upwards.
    pub reversed: bool,
}

/// An axis on paper: from a round value to a round value in round steps.
#[derive(Debug, Clone, PartialEq)]
pub struct Axis {
    /// Steps to its first value.
    first: f64,
    /// Steps from its first value to its last.
    count: u32,
    /// A step, in the reader's unit.
    step: f64,
    factor: f64,
    /// Where its first and its last value stand on paper.
    ends: (f64, f64),
}

impl Axis {
    /// The axis with the finest ticks whose figures keep apart: `horizontal`, or upright.
    pub fn new(span: Span, ends: (f64, f64), horizontal: bool) -> Self {
        let (least, most) = (span.least / span.factor, span.most / span.factor);
        let long = (ends.1 - ends.0).abs();
        let mut step = page::round_step((most - least) / TICKS);
        loop {
            let first = (least / step + 1e-9).floor();
            let last = (most / step - 1e-9).ceil().max(first + 1.0);
            let axis = Self {
                first,
                count: (last - first) as u32,
                step,
                factor: span.factor,
                ends: if span.reversed {
                    (ends.1, ends.0)
                } else {
                    ends
                },
            };
            let needed = if horizontal {
                axis.widest() + GAP
            } else {
                APART
            };
            if axis.count <= 1 || long / f64::from(axis.count) >= needed {
                return axis;
            }
            step = page::round_step(1.5 * step);
        }
    }

    /// A value (base SI) on paper; one beyond the axis lies beyond its ends.
    pub fn at(&self, si: f64) -> f64 {
        let share = (si / self.factor / self.step - self.first) / f64::from(self.count);
        self.ends.0 + share * (self.ends.1 - self.ends.0)
    }

    /// Least and greatest value on it, base SI.
    pub fn range(&self) -> (f64, f64) {
        let unit = self.step * self.factor;
        (
            self.first * unit,
            (self.first + f64::from(self.count)) * unit,
        )
    }

    /// Each tick: where it is on paper, and its figure.
    pub fn ticks(&self) -> impl Iterator<Item = (f64, String)> + '_ {
        (0..=self.count).map(|i| {
            let share = f64::from(i) / f64::from(self.count);
            let at = self.ends.0 + share * (self.ends.1 - self.ends.0);
            (at, self.figure(i))
        })
    }

    /// Draws a horizontal axis at an edge of its field: grid, ticks and figures, none of them
    /// beyond `right`; returns the base line of the figures.
    pub fn draw(&self, svg: &mut Svg, r: Rect, edge: Edge, right: f64) -> f64 {
        let thin = "stroke=\"#000\" stroke-width=\"0.1\"";
        let fine = "stroke=\"#000\" stroke-width=\"0.25\"";
        // the edge, away from the field, and the base line of its figures
        let (edge, out, base) = match edge {
            Edge::Top => (r.y, -TICK, r.y - TICK - 0.8),
            Edge::Bottom => (r.bottom(), TICK, r.bottom() + TICK + 0.4 + 0.76 * PITCH),
        };
        for (x, figure) in self.ticks() {
            if x > r.x + 0.1 && x < r.right() - 0.1 {
                svg.line((x, r.y), (x, r.bottom()), thin);
            }
            svg.line((x, edge), (x, edge + out), fine);
            let half = width(&figure, Style::PLAIN) / 2.0;
            let x = x.min(right - half);
            svg.text(x, base, &figure, Style::PLAIN.at(Anchor::Middle));
        }
        base
    }

    fn figure(&self, tick: u32) -> String {
        let decimals = [1.0, 0.1, 0.01].iter().position(|d| self.step >= *d);
        let value = (self.first + f64::from(tick)) * self.step;
        words::grouped(value, decimals.unwrap_or(3))
    }

    /// Width of the widest figure, mm.
    fn widest(&self) -> f64 {
        let figures = (0..=self.count).map(|i| width(&self.figure(i), Style::PLAIN));
        figures.fold(0.0, f64::max)
    }
}

/// A field with its axes.
#[derive(Debug, Clone)]
pub struct Chart {
    /// The field itself.
    pub field: Rect,
    /// The horizontal axis.
    pub x: Axis,
    /// The vertical axis.
    pub y: Axis,
    frame: Rect,
    edge: Edge,
    titles: [String; 2],
}

impl Chart {
    /// A chart that fills `frame` with figures and titles; the figures of the horizontal axis
    /// stand at `edge`, those of the vertical one left of the field, its title above it.
    pub fn new(frame: Rect, edge: Edge, x: Span, y: Span) -> Self {
        let figures = 2.0 * PITCH + TICK + 0.6;
        let above = PITCH
            + 1.0
            + if edge == Edge::Top {
                figures
            } else {
                SMALL / 2.0
            };
        let below = if edge == Edge::Top {
            SMALL / 2.0
        } else {
            figures
        };
        let mut field = Rect {
            y: frame.y + above,
            h: frame.h - above - below,
            ..frame
        };
        let upright = Axis::new(y, (field.bottom(), field.y), false);
        let beside = upright.widest() + TICK + 1.2;
        field.x += beside;
        field.w -= beside;
        // half of the last figure hangs over
        let whole = Axis::new(x, (field.x, field.right()), true);
        field.w -= whole.widest() / 2.0;
        Self {
            x: Axis::new(x, (field.x, field.right()), true),
            y: upright,
            titles: [x.title, y.title].map(str::to_owned),
            field,
            frame,
            edge,
        }
    }

    /// A pair of values (base SI) on paper.
    pub fn at(&self, (x, y): (f64, f64)) -> (f64, f64) {
        (self.x.at(x), self.y.at(y))
    }

    /// The part of a straight line between two pairs of values that lies in the field, on
    /// paper.
    pub fn clipped(&self, from: (f64, f64), to: (f64, f64)) -> Option<((f64, f64), (f64, f64))> {
        let (a, b) = (self.at(from), self.at(to));
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
        for (along, room) in [
            (-dx, a.0 - self.field.x),
            (dx, self.field.right() - a.0),
            (-dy, a.1 - self.field.y),
            (dy, self.field.bottom() - a.1),
        ] {
            if along == 0.0 {
                if room < 0.0 {
                    return None;
                }
            } else if along < 0.0 {
                enter = enter.max(room / along);
            } else {
                leave = leave.min(room / along);
            }
        }
        let on = |t: f64| (a.0 + t * dx, a.1 + t * dy);
        (enter < leave).then(|| (on(enter), on(leave)))
    }

    /// Draws grid, frame, ticks, figures and titles.
    pub fn draw(&self, svg: &mut Svg) {
        let (r, thin) = (self.field, "stroke=\"#000\" stroke-width=\"0.1\"");
        let (fine, style) = ("stroke=\"#000\" stroke-width=\"0.25\"", Style::PLAIN);
        let base = self.x.draw(svg, r, self.edge, self.frame.right());
        for (y, figure) in self.y.ticks() {
            if y > r.y + 0.1 && y < r.bottom() - 0.1 {
                svg.line((r.x, y), (r.right(), y), thin);
            }
            svg.line((r.x - TICK, y), (r.x, y), fine);
            let x = r.x - TICK - 0.8;
            svg.text(x, y + 0.36 * SMALL, &figure, style.at(Anchor::End));
        }
        svg.rect(r, "stroke=\"#000\" stroke-width=\"0.3\"");
        let along = match self.edge {
            Edge::Top => base - PITCH,
            Edge::Bottom => base + PITCH,
        };
        let [x, y] = &self.titles;
        let bold = Style::BOLD;
        let x_title = fitted(x, r.w, bold);
        svg.text(r.x + r.w / 2.0, along, &x_title, bold.at(Anchor::Middle));
        let y_title = fitted(y, self.frame.w, bold);
        svg.text(self.frame.x, self.frame.y + 0.76 * PITCH, &y_title, bold);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const FRAME: Rect = Rect {
        x: 10.0,
        y: 10.0,
        w: 180.0,
        h: 120.0,
    };

    fn span(least: f64, most: f64, factor: f64, reversed: bool) -> Span<'static> {
        Span {
            title: "t",
            least,
            most,
            factor,
            reversed,
        }
    }

    #[test]
    fn ticks_are_round_and_hold_the_span() {
        for (least, most, factor) in [
            (0.0, 126_329.0, 4.448_221_615_260_5),
            (0.0, 0.0367, 0.0254),
            (0.0, 0.0367, 0.001),
            (0.0, 3.0, 1000.0),
            (-2.4, 17.9, 0.3048),
            (0.0, 2e7, 1000.0),
            (0.0, 0.0, 1.0),
        ] {
            for edge in [Edge::Top, Edge::Bottom] {
                let (a, b) = (span(least, most, factor, false), span(0.0, 9.0, 1.0, true));
                let chart = Chart::new(FRAME, edge, a, b);
                let (from, to) = chart.x.range();
                assert!(
                    from <= least + 1e-9 * factor && to >= most - 1e-9 * factor,
                    "{from} {to}"
                );
                // a step is 1, 2 or 5 in some decade
                let step = chart.x.step;
                let lead = [1.0, 2.0, 5.0].iter().any(|lead| {
                    let decade = bearwell_engine::math::log10(step / lead);
                    (decade - decade.round()).abs() < 1e-9
                });
                assert!(lead, "{step}");
                let count = chart.x.ticks().count();
                assert!((2..=20).contains(&count), "{count}");
            }
        }
    }

    #[test]
    fn values_stand_where_their_ticks_are() {
        let (x, y) = (span(0.0, 50.0, 1.0, false), span(0.0, 7.0, 0.3048, true));
        let chart = Chart::new(FRAME, Edge::Top, x, y);
        let (least, most) = chart.y.range();
        assert!(
            (chart.y.at(least) - chart.field.y).abs() < 1e-9,
            "downwards"
        );
        assert!((chart.y.at(most) - chart.field.bottom()).abs() < 1e-9);
        for (at, figure) in chart.x.ticks() {
            let value: f64 = figure.parse().expect("a number");
            assert!((chart.x.at(value) - at).abs() < 1e-9);
        }
        let up = Chart::new(FRAME, Edge::Bottom, x, span(0.0, 7.0, 1.0, false));
        assert!(up.y.at(7.0) < up.y.at(0.0));
    }

    #[test]
    fn a_line_is_cut_at_the_edges() {
        let (x, y) = (span(0.0, 10.0, 1.0, false), span(0.0, 10.0, 1.0, false));
        let chart = Chart::new(FRAME, Edge::Bottom, x, y);
        let (from, to) = chart.clipped((0.0, 0.0), (100.0, 100.0)).expect("inside");
        assert!((from.0 - chart.field.x).abs() < 1e-9);
        assert!((to.0 - chart.field.right()).abs() < 1e-9 && (to.1 - chart.field.y).abs() < 1e-9);
        assert_eq!(chart.clipped((11.0, 0.0), (12.0, 9.0)), None);
    }
}
