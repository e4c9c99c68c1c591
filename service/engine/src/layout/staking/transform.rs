//! From the plan to the site grid and back: a turn, one factor, a shift. Which points fix
//! them is read in `fix`.

use crate::layout::outcome::{SiteStake, StakingGrid};
use crate::layout::request::{PlanPoint, SitePoint, SiteUnit};
use crate::math::{atan2, cos, sin};
use crate::quantity::{Angle, Length};
use crate::source::SITE_GRID;
use crate::tape::decimal;
use crate::trace::Trace;

/// Distance of two points.
///
/// d = sqrt((x_2 - x_1)^2 + (y_2 - y_1)^2); coordinates east and north (m); any value.
/// Source: geometry.
pub(super) fn distance(dx: Length, dy: Length, trace: &mut Trace) -> Length {
    let d = (dx.si() * dx.si() + dy.si() * dy.si()).sqrt();
    trace.step(
        "d",
        "sqrt(dx^2 + dy^2)",
        Length::from_si(d),
        [("dx", dx.into()), ("dy", dy.into())],
        &SITE_GRID,
    )
}

/// The turn of the plan in the grid, from a line that is known in both.
///
/// r = atan2(dx dN - dy dE, dx dE + dy dN); dx, dy along the line on the plan (m), dE, dN on
/// site (m), neither of no length; -180 to 180 degrees, anticlockwise from the grid's east to
/// the plan's x. Source: geometry.
pub(super) fn rotation(plan: [Length; 2], site: [Length; 2], trace: &mut Trace) -> Angle {
    let ([dx, dy], [de, dn]) = (plan.map(Length::si), site.map(Length::si));
    trace.step(
        "r",
        "atan2(dx dN - dy dE, dx dE + dy dN)",
        Angle::from_si(atan2(dx * dn - dy * de, dx * de + dy * dn)),
        [
            ("dx", plan[0].into()),
            ("dy", plan[1].into()),
            ("dE", site[0].into()),
            ("dN", site[1].into()),
        ],
        &SITE_GRID,
    )
}

/// Easting of a point of the plan.
///
/// E = E_a + k (cos r dx - sin r dy); anchor E_a on site (m), dx, dy from the anchor on the
/// plan (m), k grid distance per plan distance, r turn of the plan, anticlockwise. Source:
/// geometry.
fn easting(grid: &StakingGrid, dx: Length, dy: Length, trace: &mut Trace) -> Length {
    let (s, c) = (sin(grid.rotation.si()), cos(grid.rotation.si()));
    let along = Length::from_si(c * dx.si() - s * dy.si()) * grid.combined_factor;
    trace.step(
        "E",
        "E_a + k (cos r dx - sin r dy)",
        grid.anchor.site.easting + along,
        [
            ("E_a", grid.anchor.site.easting.into()),
            ("k", grid.combined_factor.into()),
            ("r", grid.rotation.into()),
            ("dx", dx.into()),
            ("dy", dy.into()),
        ],
        &SITE_GRID,
    )
}

/// Northing of a point of the plan.
///
/// N = N_a + k (sin r dx + cos r dy); as for the easting. Source: geometry.
fn northing(grid: &StakingGrid, dx: Length, dy: Length, trace: &mut Trace) -> Length {
    let (s, c) = (sin(grid.rotation.si()), cos(grid.rotation.si()));
    let along = Length::from_si(s * dx.si() + c * dy.si()) * grid.combined_factor;
    trace.step(
        "N",
        "N_a + k (sin r dx + cos r dy)",
        grid.anchor.site.northing + along,
        [
            ("N_a", grid.anchor.site.northing.into()),
            ("k", grid.combined_factor.into()),
            ("r", grid.rotation.into()),
            ("dx", dx.into()),
            ("dy", dy.into()),
        ],
        &SITE_GRID,
    )
}

impl StakingGrid {
    /// Where a point of the plan lies on site, with its texts.
    pub fn site_of(&self, point: &PlanPoint) -> SiteStake {
        self.shown(point, &mut Trace::off())
    }

    pub(super) fn shown(&self, point: &PlanPoint, trace: &mut Trace) -> SiteStake {
        let dx = point.x - self.anchor.plan.x;
        let dy = point.y - self.anchor.plan.y;
        let site = SitePoint {
            easting: easting(self, dx, dy, trace),
            northing: northing(self, dx, dy, trace),
        };
        stake(&site, self.unit)
    }
}

/// A point of the grid with its texts.
pub(super) fn stake(site: &SitePoint, unit: SiteUnit) -> SiteStake {
    SiteStake {
        northing: site.northing,
        easting: site.easting,
        northing_text: text(site.northing, unit),
        easting_text: text(site.easting, unit),
    }
}

/// A coordinate or an elevation in the unit of the grid.
pub(super) fn text(length: Length, unit: SiteUnit) -> String {
    let decimals = match unit {
        SiteUnit::M => 4,
        SiteUnit::Ft | SiteUnit::FtUsSurvey => 3,
    };
    decimal(length.get(unit.length_unit()), decimals)
}
