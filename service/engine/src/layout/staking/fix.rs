//! The site grid from what the request ties the plan to, with the faults of control points.
//! Nothing is scaled to make them fit.

use super::transform::{distance, rotation, stake};
use crate::contract::Issue;
use crate::layout::codes::refusals;
use crate::layout::outcome::{ControlFit, ControlResidual, GridAnchor, StakingGrid};
use crate::layout::plan::TOLERANCE;
use crate::layout::request::{
    ControlPoint, ControlPoints, GridFix, PlanPoint, SiteGrid, SitePoint,
};
use crate::quantity::{Length, LengthUnit, Size, round9};
use crate::source::{BEARWELL_CHOICE, Sourced};
use crate::trace::Trace;

/// What control points may differ by where the request does not say.
pub(super) static CONTROL_TOLERANCE: Sourced<Size> = Sourced::new(
    "control_point_tolerance",
    Size::new(3.0, LengthUnit::Mm),
    &BEARWELL_CHOICE,
);

const AT: &str = "/staking/grid/fix/control_points";

/// The grid, or its faults.
pub(super) fn of(
    grid: &SiteGrid,
    tolerance: Size,
    trace: &mut Trace,
    issues: &mut Vec<Issue>,
) -> Option<StakingGrid> {
    let factor = grid.combined_factor.unwrap_or(1.0);
    match &grid.fix {
        GridFix::Origin(o) => Some(StakingGrid {
            unit: grid.unit,
            rotation: o.rotation,
            combined_factor: factor,
            anchor: GridAnchor {
                plan: o.plan,
                site: stake(&o.site, grid.unit),
            },
            control: None,
        }),
        GridFix::ControlPoints(c) => from_control(grid, c, factor, tolerance, trace, issues),
    }
}

fn from_control(
    grid: &SiteGrid,
    control: &ControlPoints,
    factor: f64,
    tolerance: Size,
    trace: &mut Trace,
    issues: &mut Vec<Issue>,
) -> Option<StakingGrid> {
    let (a, b) = (&control.first, &control.second);
    let plan = [b.plan.x - a.plan.x, b.plan.y - a.plan.y];
    let site = [
        b.site.easting - a.site.easting,
        b.site.northing - a.site.northing,
    ];
    trace.about(|| "control points, on the plan".to_owned());
    let plan_distance = distance(plan[0], plan[1], trace);
    trace.about(|| "control points, on site".to_owned());
    let site_distance = distance(site[0], site[1], trace);
    if !apart(plan_distance, site_distance, issues) {
        return None;
    }
    let difference = Size::from(site_distance - plan_distance * factor);
    if !within(difference, tolerance) {
        issues.push(disagree(plan_distance, site_distance, factor, tolerance));
        return None;
    }
    let mut found = StakingGrid {
        unit: grid.unit,
        rotation: rotation(plan, site, trace),
        combined_factor: factor,
        anchor: GridAnchor {
            plan: PlanPoint {
                x: a.plan.x + plan[0] * 0.5,
                y: a.plan.y + plan[1] * 0.5,
            },
            site: stake(
                &SitePoint {
                    easting: a.site.easting + site[0] * 0.5,
                    northing: a.site.northing + site[1] * 0.5,
                },
                grid.unit,
            ),
        },
        control: None,
    };
    trace.about(String::new);
    let mut points = vec![residual(&found, a, "first"), residual(&found, b, "second")];
    if let Some(check) = &control.check {
        let third = residual(&found, check, "check");
        if !within(third.residual, tolerance) {
            issues.push(off(grid, control, third.residual, tolerance));
            return None;
        }
        points.push(third);
    }
    found.control = Some(ControlFit {
        plan_distance,
        site_distance,
        difference,
        tolerance,
        points,
    });
    Some(found)
}

/// What is printed decides.
fn within(size: Size, tolerance: Size) -> bool {
    round9((size / tolerance).abs()) <= 1.0
}

fn apart(plan: Length, site: Length, issues: &mut Vec<Issue>) -> bool {
    let mut good = true;
    for (length, member, place) in [(plan, "plan", "on the plan"), (site, "site", "on site")] {
        if length.si() <= TOLERANCE {
            good = false;
            issues.push(
                Issue::new(
                    format!("{AT}/second/{member}"),
                    &refusals::CONTROL_POINTS_COINCIDE,
                    format!("{} from the first {place}", in_both(length.into())),
                )
                .limit(format!("more than {}", in_both(Size::from_si(TOLERANCE)))),
            );
        }
    }
    good
}

fn disagree(plan: Length, site: Length, factor: f64, tolerance: Size) -> Issue {
    let lengths = Length::ROLE;
    Issue::new(
        format!("{AT}/second/site"),
        &refusals::CONTROL_DISTANCES_DISAGREE,
        format!(
            "{} on site, {} on the plan times {}: {} apart; {}, if that is what the grid has",
            lengths.in_both_systems(site.si()),
            lengths.in_both_systems(plan.si()),
            round9(factor),
            in_both(Size::from_si((site - plan * factor).si().abs())),
            format_args!(
                "a `combined_factor` of {} would close it",
                round9(site / plan)
            ),
        ),
    )
    .limit(in_both(tolerance))
}

fn off(grid: &SiteGrid, control: &ControlPoints, by: Size, tolerance: Size) -> Issue {
    let mut detail = format!("{} from where the other two put it", in_both(by));
    if let Some(other) = exchanged(grid, control, tolerance) {
        detail = format!(
            "{detail}; with northing and easting exchanged in all three it would be {}",
            in_both(other)
        );
    }
    Issue::new(
        format!("{AT}/check/site"),
        &refusals::CONTROL_CHECK_OFF,
        detail,
    )
    .limit(in_both(tolerance))
}

/// How far the check point is off with northing and easting exchanged, where that fits.
fn exchanged(grid: &SiteGrid, control: &ControlPoints, tolerance: Size) -> Option<Size> {
    let turned = |point: &ControlPoint| ControlPoint {
        site: SitePoint {
            northing: point.site.easting,
            easting: point.site.northing,
        },
        ..point.clone()
    };
    let check = turned(control.check.as_ref()?);
    let two = ControlPoints {
        first: turned(&control.first),
        second: turned(&control.second),
        check: None,
        tolerance: control.tolerance,
    };
    let factor = grid.combined_factor.unwrap_or(1.0);
    let found = from_control(
        grid,
        &two,
        factor,
        tolerance,
        &mut Trace::off(),
        &mut Vec::new(),
    )?;
    let by = residual(&found, &check, "check").residual;
    within(by, tolerance).then_some(by)
}

fn residual(grid: &StakingGrid, point: &ControlPoint, name: &str) -> ControlResidual {
    let put = grid.site_of(&point.plan);
    let (de, dn) = (
        put.easting - point.site.easting,
        put.northing - point.site.northing,
    );
    let label = point.label.as_ref();
    ControlResidual {
        label: label.map_or(name, |l| l.as_str()).to_owned(),
        plan: point.plan,
        site: stake(&point.site, grid.unit),
        residual: distance(de, dn, &mut Trace::off()).into(),
    }
}

fn in_both(size: Size) -> String {
    Size::ROLE.in_both_systems(size.si())
}
