//! A group in plan: distances between its piles, and the block they enclose.

use super::outcome::BlockPlan;
use super::request::{GroupArray, GroupPlan};
use crate::math;
use crate::quantity::{Area, Length, Size};
use crate::source::GROUP_READING;
use crate::trace::Trace;

/// A group as geometry: what its centres enclose, without the width of the helices.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Centres {
    pub count: u32,
    pub least_spacing: Length,
    /// Least width of their outline, m.
    width: f64,
    /// Extent of their outline across the least width, m.
    extent: f64,
    /// Area within their outline, m2.
    area: f64,
    /// Length of their outline, m; twice the distance for a row.
    outline: f64,
}

impl Centres {
    /// The centres of a plan; fewer than two have no distance.
    pub fn of(plan: &GroupPlan) -> Option<Self> {
        match plan {
            GroupPlan::Array(array) => of_array(array),
            GroupPlan::Positions(list) => {
                let points: Vec<Point> = list.piles.iter().map(|p| (p.x.si(), p.y.si())).collect();
                of_points(&points)
            }
        }
    }

    /// The block in plan.
    ///
    /// B = w + D, L = e + D, A = A_c + P_c D/2 + D2, P = P_c + 4 D; w least width of the
    /// outline of the centres, e its extent across that, A_c its area (m2), P_c its length, D
    /// largest helix (m). For rows and columns this is the rectangle to the outer edges of
    /// the helices. Range: two piles or more. Source: reading of this service. Sign: none.
    pub fn block(&self, diameter: Size, trace: &mut Trace) -> BlockPlan {
        let d = diameter.si();
        let plan = BlockPlan {
            breadth: Length::from_si(self.width + d),
            length: Length::from_si(self.extent + d),
            area: Area::from_si(self.area + self.outline * d / 2.0 + d * d),
            perimeter: Length::from_si(self.outline + 4.0 * d),
        };
        let given = [
            ("P_c", Length::from_si(self.outline).into()),
            ("D", diameter.into()),
        ];
        trace.step("P", "P_c + 4 D", plan.perimeter, given, &GROUP_READING);
        trace.step(
            "A",
            "A_c + P_c D/2 + D2",
            plan.area,
            [
                ("A_c", Area::from_si(self.area).into()),
                ("P_c", Length::from_si(self.outline).into()),
                ("D", diameter.into()),
            ],
            &GROUP_READING,
        );
        plan
    }
}

fn of_array(array: &GroupArray) -> Option<Centres> {
    let side = |count: u32, spacing: Option<Length>| {
        spacing.filter(|_| count > 1).map_or(0.0, |s| s.si()) * f64::from(count.max(1) - 1)
    };
    let deep = side(array.row_count, array.row_spacing);
    let wide = side(array.column_count, array.column_spacing);
    let spacings = [
        (array.row_count, array.row_spacing),
        (array.column_count, array.column_spacing),
    ];
    let least_spacing = spacings
        .into_iter()
        .filter(|(count, _)| *count > 1)
        .filter_map(|(_, spacing)| spacing)
        .reduce(Length::min)?;
    Some(Centres {
        count: array.row_count * array.column_count,
        least_spacing,
        width: deep.min(wide),
        extent: deep.max(wide),
        area: deep * wide,
        outline: 2.0 * (deep + wide),
    })
}

type Point = (f64, f64);

fn of_points(points: &[Point]) -> Option<Centres> {
    let mut least = f64::INFINITY;
    for (i, a) in points.iter().enumerate() {
        for b in &points[i + 1..] {
            least = least.min(distance(*a, *b));
        }
    }
    if !least.is_finite() {
        return None;
    }
    let hull = hull(points);
    let edges = || (0..hull.len()).map(|i| (hull[i], hull[(i + 1) % hull.len()]));
    let (width, extent) = edges()
        .map(|(a, b)| extents(&hull, a, b))
        .reduce(|best, found| if found.0 < best.0 { found } else { best })?;
    let twice: f64 = edges().map(|(a, b)| a.0 * b.1 - a.1 * b.0).sum();
    Some(Centres {
        count: points.len() as u32,
        least_spacing: Length::from_si(least),
        width,
        extent,
        area: (twice / 2.0).max(0.0),
        outline: edges().map(|(a, b)| distance(a, b)).sum(),
    })
}

fn distance(a: Point, b: Point) -> f64 {
    math::hypot(b.0 - a.0, b.1 - a.1)
}

/// Width of an outline square to the edge from `a` to `b`, and its extent along that edge.
fn extents(hull: &[Point], a: Point, b: Point) -> (f64, f64) {
    let length = distance(a, b);
    if length <= 0.0 {
        return (0.0, 0.0);
    }
    let (ux, uy) = ((b.0 - a.0) / length, (b.1 - a.1) / length);
    let (mut low, mut high, mut width) = (0.0_f64, 0.0_f64, 0.0_f64);
    for p in hull {
        let (x, y) = (p.0 - a.0, p.1 - a.1);
        let along = x * ux + y * uy;
        low = low.min(along);
        high = high.max(along);
        width = width.max((y * ux - x * uy).abs());
    }
    (width, high - low)
}

/// Convex outline of points, anticlockwise, by the monotone chain; its two ends for points
/// in a line. Coordinates count from the first point, so that where the plan lies does not
/// matter.
fn hull(points: &[Point]) -> Vec<Point> {
    let origin = points[0];
    let mut sorted: Vec<Point> = points
        .iter()
        .map(|p| (p.0 - origin.0, p.1 - origin.1))
        .collect();
    sorted.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut lower = half_hull(sorted.iter());
    let upper = half_hull(sorted.iter().rev());
    lower.pop();
    lower.extend_from_slice(&upper[..upper.len() - 1]);
    lower
}

fn half_hull<'a>(points: impl Iterator<Item = &'a Point>) -> Vec<Point> {
    let mut chain: Vec<Point> = Vec::new();
    for p in points {
        while let [.., a, b] = chain[..]
            && (b.0 - a.0) * (p.1 - a.1) - (b.1 - a.1) * (p.0 - a.0) <= 0.0
        {
            chain.pop();
        }
        chain.push(*p);
    }
    chain
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::helix::group::request::{GroupPosition, GroupPositions};

    fn near(got: f64, expected: f64) {
        assert!((got - expected).abs() < 1e-9, "{got} against {expected}");
    }

    fn positions(list: &[Point]) -> GroupPlan {
        let m = Length::from_si;
        let piles = list.iter().map(|p| GroupPosition {
            x: m(p.0),
            y: m(p.1),
        });
        GroupPlan::Positions(GroupPositions {
            piles: piles.collect(),
        })
    }

    fn block(plan: &GroupPlan, d: f64) -> BlockPlan {
        let centres = Centres::of(plan).unwrap();
        centres.block(Size::from_si(d), &mut Trace::off())
    }

    /// By hand: 3 x 2 piles 1.0 m and 1.5 m apart, helices 0.4 m: 1.9 m by 2.4 m.
    #[test]
    fn rows_and_columns_are_a_rectangle_to_the_outer_edges() {
        let array = GroupPlan::Array(GroupArray {
            row_count: 2,
            column_count: 3,
            row_spacing: Some(Length::from_si(1.5)),
            column_spacing: Some(Length::from_si(1.0)),
        });
        let plan = block(&array, 0.4);
        near(plan.breadth.si(), 1.9);
        near(plan.length.si(), 2.4);
        near(plan.area.si(), 1.9 * 2.4);
        near(plan.perimeter.si(), 2.0 * (1.9 + 2.4));
        near(Centres::of(&array).unwrap().least_spacing.si(), 1.0);
    }

    /// The same group by its places, turned by the angle of a 3-4-5 triangle and moved.
    #[test]
    fn the_same_piles_by_their_places_are_the_same_block_wherever_they_lie() {
        let mut list = Vec::new();
        for row in 0..2 {
            for column in 0..3 {
                let (x, y) = (f64::from(column), 1.5 * f64::from(row));
                list.push((0.8 * x - 0.6 * y + 400.0, 0.6 * x + 0.8 * y - 250.0));
            }
        }
        let plan = block(&positions(&list), 0.4);
        near(plan.breadth.si(), 1.9);
        near(plan.length.si(), 2.4);
        near(plan.area.si(), 1.9 * 2.4);
        near(plan.perimeter.si(), 8.6);
    }

    /// By hand: a row of three 1 m apart is 0.4 m by 2.4 m; a right triangle with legs 3 m and
    /// 4 m has area 6 m2, outline 12 m and least width 2.4 m across its side of 5 m.
    #[test]
    fn rows_and_triangles() {
        let row = block(&positions(&[(0.0, 0.0), (2.0, 0.0), (1.0, 0.0)]), 0.4);
        near(row.breadth.si(), 0.4);
        near(row.length.si(), 2.4);
        near(row.area.si(), 0.96);
        near(row.perimeter.si(), 5.6);
        let triangle = block(&positions(&[(0.0, 0.0), (4.0, 0.0), (0.0, 3.0)]), 0.5);
        near(triangle.breadth.si(), 2.9);
        near(triangle.length.si(), 5.5);
        near(triangle.area.si(), 6.0 + 12.0 * 0.25 + 0.25);
        near(triangle.perimeter.si(), 14.0);
    }
}
