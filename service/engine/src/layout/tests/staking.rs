//! Setting out: coordinates, string lines, diagonals and the faults of control points.
//! Expected figures are worked beside each test; the transforms back are written here anew.

use proptest::prelude::*;

use super::{FT, answer, answered, close, example};
use crate::contract::Call;
use crate::examples::codes;
use crate::layout::outcome::{LineSide, SiteStake, StakingOutcome};
use crate::layout::request::{GridFix, PlanPoint, Request, SitePoint, SiteUnit, Staking};
use crate::quantity::{Angle, AngleUnit, Length, LengthUnit};

/// One sixteenth of an inch, m.
const SIXTEENTH: f64 = 0.0254 / 16.0;
/// One US survey foot, m.
const SURVEY_FT: f64 = 1200.0 / 3937.0;

fn staked(call: &Call<Request>) -> StakingOutcome {
    let answer = answer(call).unwrap_or_else(|e| panic!("{}", codes(&e)));
    answer.result.staking.expect("a staking")
}

fn staking(call: &mut Call<Request>) -> &mut Staking {
    call.request.staking.as_mut().expect("a staking")
}

fn refused(call: &Call<Request>) -> (String, String) {
    let refusal = answer(call).expect_err("a refusal");
    (codes(&refusal), format!("{:?}", refusal.issues))
}

/// East and north of the texts, in the unit of the grid.
fn read(site: &SiteStake) -> (f64, f64) {
    let number = |t: &str| t.parse::<f64>().expect("a number");
    (number(&site.easting_text), number(&site.northing_text))
}

#[test]
fn a_turned_house_reads_back_from_its_texts() {
    // the plan's origin at 5120.44 east, 8260.15 north, turned by 31.5 degrees; the control
    // points were rounded to 0.001 ft, so the turn is found to 0.001 in 85 ft
    let staking = staked(&example("linnet-staking"));
    let grid = staking.grid.as_ref().expect("a grid");
    assert_eq!(grid.unit, SiteUnit::Ft);
    assert!((grid.rotation.get(AngleUnit::Deg) - 31.5).abs() < 1e-3);
    assert_eq!(staking.points.len(), 24);
    let (s, c) = ((31.5f64).to_radians()).sin_cos_by_series();
    for point in &staking.points {
        let (e, n) = read(point.site.as_ref().expect("on site"));
        let (de, dn) = (e - 5120.44, n - 8260.15);
        let x = (c * de + s * dn) * FT;
        let y = (c * dn - s * de) * FT;
        let off = (x - point.at.x.si()).abs().max((y - point.at.y.si()).abs());
        assert!(off < SIXTEENTH, "{}: {off}", point.label);
        // the rounding of the points and of the text: half of 0.001 ft each
        assert!(off < 1.2e-3 * FT, "{}: {off}", point.label);
    }
    // A1 is the plan's origin; its stake is the origin's to the rounding of the points
    let (e, n) = read(staking.points[0].site.as_ref().expect("on site"));
    assert!((e - 5120.44).abs() < 1.5e-3 && (n - 8260.15).abs() < 1.5e-3);
    // tops: one for all, B2 by itself
    for point in &staking.points {
        let want = if point.label == "B2" {
            "98.250"
        } else {
            "98.500"
        };
        assert_eq!(point.elevation_text.as_deref(), Some(want));
    }
}

/// Sine and cosine by their series, as a second way beside the engine's.
trait BySeries {
    fn sin_cos_by_series(self) -> (f64, f64);
}

impl BySeries for f64 {
    fn sin_cos_by_series(self) -> (f64, f64) {
        let (mut s, mut c, mut term) = (0.0, 0.0, 1.0);
        for k in 0..40 {
            match k % 4 {
                0 => c += term,
                1 => s += term,
                2 => c -= term,
                _ => s -= term,
            }
            term *= self / f64::from(k + 1);
        }
        (s, c)
    }
}

#[test]
fn the_control_points_close_and_say_by_how_much() {
    let staking = staked(&example("linnet-staking"));
    let fit = staking.grid.expect("a grid").control.expect("control");
    // 70 by 49 ft on the plan
    close(
        fit.plan_distance.si(),
        (70.0f64 * 70.0 + 49.0 * 49.0).sqrt() * FT,
        1e-12,
    );
    let names: Vec<_> = fit.points.iter().map(|p| p.label.as_str()).collect();
    assert_eq!(names, ["CP 1", "CP 2", "CP 3"]);
    for point in &fit.points {
        assert!(point.residual.si() < 1e-3 * FT, "{:?}", point.residual);
    }
    // the difference is shared by both ends
    let metric = staked(&example("sizerin-staking"));
    let fit = metric.grid.expect("a grid").control.expect("control");
    // sqrt(9.531^2 + 15.970^2) = 18.59787 m against 18.6 m
    close(fit.difference.si(), -0.002_127_5, 1e-4);
    for point in &fit.points {
        close(point.residual.si(), 0.5 * 0.002_127_5, 1e-4);
    }
}

#[test]
fn survey_feet_and_international_feet_are_four_feet_apart_at_two_million() {
    let mut call = example("staking-survey-feet");
    let first = |call: &Call<Request>| {
        let staking = staked(call);
        let corner = staking
            .points
            .iter()
            .find(|p| p.at.x.si() == 0.0 && p.at.y.si() == 0.0);
        corner.expect("a corner").site.clone().expect("on site")
    };
    let survey = first(&call);
    assert_eq!(survey.easting_text, "2000000.000");
    assert_eq!(survey.northing_text, "410250.500");
    close(survey.easting.si(), 2_000_000.0 * SURVEY_FT, 1e-15);
    staking(&mut call).grid.as_mut().expect("a grid").unit = SiteUnit::Ft;
    let international = first(&call);
    // 2,000,000 x 1200/3937/0.3048 = 2,000,004.000008
    assert_eq!(international.easting_text, "2000004.000");
    assert_eq!(international.northing_text, "410251.321");
    staking(&mut call).grid.as_mut().expect("a grid").unit = SiteUnit::M;
    // 2,000,000 x 1200/3937 = 609601.21920
    assert_eq!(first(&call).easting_text, "609601.2192");
}

#[test]
fn the_combined_factor_and_a_clockwise_turn_are_taken_as_stated() {
    // 14 ft along x by -17.25 degrees and 0.99991:
    // 14 x 0.3048/(1200/3937) survey ft x 0.99991 x cos 17.25 = 13.36905; x sin = 4.15119 south
    let staking = staked(&example("staking-survey-feet"));
    let corner = staking
        .points
        .iter()
        .find(|p| p.at.x.get(LengthUnit::Ft) > 13.9 && p.at.y.si() == 0.0)
        .expect("the corner");
    let (e, n) = read(corner.site.as_ref().expect("on site"));
    assert!((e - 2_000_013.368_9).abs() < 6e-4, "{e}");
    assert!((n - (410_250.5 - 4.151_2)).abs() < 6e-4, "{n}");
}

#[test]
fn diagonals_are_those_a_tape_reads() {
    let staking = staked(&example("linnet-staking"));
    let texts: Vec<Vec<&str>> = staking
        .frames
        .iter()
        .map(|f| {
            f.diagonals
                .iter()
                .map(|d| d.distance_text.as_str())
                .collect()
        })
        .collect();
    // 36 by 26 ft: 44.407 ft; 10 by 14 ft: sqrt(296) = 17.2046505 ft, 2.4558 in
    assert_eq!(
        texts,
        [
            vec!["44'-4 7/8\"", "44'-4 7/8\""],
            vec!["17'-2 7/16\"", "17'-2 7/16\""]
        ]
    );
    assert!(staking.frames.iter().all(|f| f.rectangle));
    close(
        staking.frames[0].diagonals[0].distance.get(LengthUnit::Ft),
        1972f64.sqrt(),
        1e-12,
    );
    let ends: Vec<_> = staking.frames[0]
        .diagonals
        .iter()
        .map(|d| (d.from_pile.as_deref(), d.to_pile.as_deref()))
        .collect();
    assert_eq!(ends, [(Some("A1"), Some("C6")), (Some("A6"), Some("C1"))]);
}

#[test]
fn running_distances_and_gaps_follow_the_beam() {
    let staking = staked(&example("linnet-staking"));
    let line = staking
        .string_lines
        .iter()
        .find(|l| l.beams == ["A"])
        .expect("a line");
    assert_eq!(line.length_text, "36'-0\"");
    assert_eq!(line.from.pile.as_deref(), Some("A1"));
    assert_eq!(line.to.pile.as_deref(), Some("A6"));
    let running: Vec<_> = line
        .piles
        .iter()
        .map(|p| p.from_start_text.as_str())
        .collect();
    let want = [
        "0'-0\"", "7'-3\"", "13'-9\"", "22'-3\"", "28'-9\"", "36'-0\"",
    ];
    assert_eq!(running, want);
    let gaps: Vec<_> = line
        .piles
        .iter()
        .map(|p| p.from_previous_text.as_deref())
        .collect();
    let want = [
        None,
        Some("7'-3\""),
        Some("6'-6\""),
        Some("8'-6\""),
        Some("6'-6\""),
        Some("7'-3\""),
    ];
    assert_eq!(gaps, want);
    // every pile of the plan stands on a line
    let mut named: Vec<_> = staking
        .string_lines
        .iter()
        .flat_map(|l| l.piles.iter().map(|p| p.label.as_str()))
        .collect();
    named.sort_unstable();
    named.dedup();
    assert_eq!(named.len(), 24);
}

#[test]
fn offset_lines_lie_outside_the_house() {
    let staking = staked(&example("linnet-staking"));
    // the middle of each line in ft, by beam: 3 ft beyond its wall
    for (beam, side, x, y) in [
        ("A", LineSide::Right, 18.0, -3.0),
        ("C", LineSide::Left, 18.0, 29.0),
        ("W", LineSide::Left, -3.0, 13.0),
        ("M", LineSide::Right, 49.0, 13.0),
        ("N1", LineSide::Right, 41.0, 3.0),
        ("N2", LineSide::Left, 41.0, 23.0),
    ] {
        let line = staking.string_lines.iter().find(|l| l.beams == [beam]);
        let offset = line.and_then(|l| l.offset.as_ref()).expect("an offset");
        assert!(offset.outside, "{beam}");
        assert_eq!(offset.side, side, "{beam}");
        assert_eq!(offset.distance_text, "3'-0\"");
        let middle = |a: Length, b: Length| 0.5 * (a + b).get(LengthUnit::Ft);
        assert!(
            (middle(offset.from.at.x, offset.to.at.x) - x).abs() < 1e-9,
            "{beam}"
        );
        assert!(
            (middle(offset.from.at.y, offset.to.at.y) - y).abs() < 1e-9,
            "{beam}"
        );
    }
    let inner = staking.string_lines.iter().find(|l| l.beams == ["B"]);
    assert!(!inner.and_then(|l| l.offset.as_ref()).expect("one").outside);
}

#[test]
fn ties_fix_every_corner_of_a_plan_of_parallel_beams() {
    // three lines of 9.6 m, 3.6 m apart, that nothing joins: no frame, but ties
    let staking = staked(&example("sizerin-staking"));
    assert!(staking.frames.is_empty());
    let ties = staking.corner_ties.expect("ties");
    assert_eq!(ties.base.distance_text, "9600 mm");
    assert_eq!(ties.ties.len(), 4);
    for tie in &ties.ties {
        // where two tapes of that length meet: x from the difference of the squares
        let (a, b, l) = (
            tie.from_start.si(),
            tie.from_end.si(),
            ties.base.distance.si(),
        );
        let x = (a * a - b * b + l * l) / (2.0 * l);
        let y = (a * a - x * x).sqrt();
        close(x + ties.base.from.x.si(), tie.at.x.si(), 1e-9);
        close(y, (tie.at.y.si() - ties.base.from.y.si()).abs(), 1e-9);
    }
    // 9.6 by 7.2 m: 12 m
    let far = ties.ties.iter().find(|t| t.from_start_text == "12000 mm");
    assert_eq!(far.expect("a diagonal").pile.as_deref(), Some("P35"));
}

#[test]
fn control_points_that_do_not_fit_are_refused_with_the_figures() {
    let mut call = example("linnet-staking");
    let set = |call: &mut Call<Request>, change: fn(&mut SitePoint)| {
        let grid = staking(call).grid.as_mut().expect("a grid");
        let GridFix::ControlPoints(c) = &mut grid.fix else {
            panic!("control points");
        };
        change(&mut c.second.site);
    };
    // metres typed for feet
    set(&mut call, |s| {
        s.easting = Length::new(5148.99, LengthUnit::M)
    });
    let (found, detail) = refused(&call);
    assert_eq!(found, "control_distances_disagree");
    assert!(
        detail.contains("on site") && detail.contains("combined_factor"),
        "{detail}"
    );
    // both faults of one request at once
    set(&mut call, |s| {
        s.easting = Length::new(5148.0, LengthUnit::Ft)
    });
    staking(&mut call).pile_tops.as_mut().expect("tops")[0].pile = crate::text::Label("B9".into());
    assert_eq!(
        refused(&call).0,
        "control_distances_disagree pile_top_unknown_pile"
    );
}

#[test]
fn the_tolerance_decides_by_what_is_printed() {
    // along x: 20 m on the plan, on site more by `over` mm
    let at = |over: f64, tolerance: f64| {
        let mut call = example("sizerin-staking");
        let grid = staking(&mut call).grid.as_mut().expect("a grid");
        let GridFix::ControlPoints(c) = &mut grid.fix else {
            panic!("control points");
        };
        let site = |e: f64| SitePoint {
            northing: Length::ZERO,
            easting: Length::from_si(e),
        };
        let plan = |x: f64| PlanPoint {
            x: Length::from_si(x),
            y: Length::ZERO,
        };
        (c.first.plan, c.first.site) = (plan(0.0), site(1000.0));
        (c.second.plan, c.second.site) = (plan(20.0), site(1020.0 + over * 1e-3));
        c.tolerance = (tolerance > 0.0).then(|| Length::from_si(tolerance * 1e-3).into());
        answer(&call)
    };
    assert!(at(4.0, 4.0).is_ok());
    assert!(at(-4.0, 4.0).is_ok());
    assert!(at(4.001, 4.0).is_err());
    // 3 mm where nothing is said, and the answer lists that
    let answer = at(3.0, 0.0).unwrap_or_else(|e| panic!("{}", codes(&e)));
    assert!(
        answer
            .defaults
            .iter()
            .any(|d| d.name == "control_point_tolerance")
    );
    assert!(at(3.1, 0.0).is_err());
    let asked = at(3.0, 5.0).unwrap_or_else(|e| panic!("{}", codes(&e)));
    assert!(
        asked
            .defaults
            .iter()
            .all(|d| d.name != "control_point_tolerance")
    );
}

#[test]
fn an_exchange_of_northing_and_easting_is_told() {
    let text = crate::examples::requests::<super::PileLayout>("refused");
    let (_, text) = text
        .iter()
        .find(|(name, _)| name == "staking-check-point-off")
        .expect("the example");
    let call: Call<Request> = serde_json::from_str(text).expect("a request");
    let (found, detail) = refused(&call);
    assert_eq!(found, "control_check_off");
    assert!(
        detail.contains("with northing and easting exchanged"),
        "{detail}"
    );
    // a blunder of another kind is not explained so
    let mut call = example("linnet-staking");
    let grid = staking(&mut call).grid.as_mut().expect("a grid");
    let GridFix::ControlPoints(c) = &mut grid.fix else {
        panic!("control points");
    };
    let check = c.check.as_mut().expect("a check point");
    check.site.easting = check.site.easting + Length::new(1.0, LengthUnit::Ft);
    let (found, detail) = refused(&call);
    assert_eq!(found, "control_check_off");
    assert!(!detail.contains("exchanged"), "{detail}");
}

#[test]
fn a_short_baseline_is_warned_of() {
    let has = |call: &Call<Request>| {
        let answer = answer(call).unwrap_or_else(|e| panic!("{}", codes(&e)));
        answer
            .warnings
            .iter()
            .any(|w| w.code == "control_baseline_short")
    };
    let mut call = example("linnet-staking");
    assert!(!has(&call));
    let grid = staking(&mut call).grid.as_mut().expect("a grid");
    let GridFix::ControlPoints(c) = &mut grid.fix else {
        panic!("control points");
    };
    c.check = None;
    // 10 ft along the plan's x, straight in the grid
    let feet = |v: f64| Length::new(v, LengthUnit::Ft);
    c.second.plan = PlanPoint {
        x: c.first.plan.x + feet(10.0),
        y: c.first.plan.y,
    };
    c.second.site = SitePoint {
        northing: c.first.site.northing,
        easting: c.first.site.easting + feet(10.0),
    };
    assert!(has(&call));
}

#[test]
fn elevations_of_strangers_are_refused_after_a_search_too() {
    let mut call = example("staking-survey-feet");
    staking(&mut call).pile_tops = Some(vec![crate::layout::request::PileTop {
        pile: crate::text::Label("nobody".into()),
        elevation: Length::ZERO,
    }]);
    assert_eq!(refused(&call).0, "pile_top_unknown_pile");
}

#[test]
fn nothing_else_of_the_answer_moves() {
    let mut with = answered("linnet-staking");
    let mut call = example("linnet-staking");
    call.request.staking = None;
    let without = answer(&call).expect("an answer");
    assert!(with.result.staking.take().is_some());
    assert_eq!(with.result, without.result);
    assert_eq!(with.checks, without.checks);
    assert_eq!(with.verdict, without.verdict);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Distances on site are the plan's times the factor, angles keep their sense, and the
    /// turn back leads to the plan.
    #[test]
    fn any_grid_keeps_shapes(
        turn in -360.0f64..360.0, factor in 0.99f64..1.01,
        e0 in -1e6f64..1e6, n0 in -1e6f64..1e6, px in -200.0f64..200.0, py in -200.0f64..200.0,
    ) {
        let mut call = example("staking-survey-feet");
        let grid = staking(&mut call).grid.as_mut().expect("a grid");
        grid.combined_factor = Some(factor);
        let GridFix::Origin(o) = &mut grid.fix else {
            panic!("an origin");
        };
        o.rotation = Angle::new(turn, AngleUnit::Deg);
        o.plan = PlanPoint { x: Length::from_si(px), y: Length::from_si(py) };
        o.site = SitePoint { northing: Length::from_si(n0), easting: Length::from_si(e0) };
        let staking = staked(&call);
        let sites: Vec<(f64, f64, f64, f64)> = staking.points.iter().map(|p| {
            let site = p.site.as_ref().expect("on site");
            (p.at.x.si(), p.at.y.si(), site.easting.si(), site.northing.si())
        }).collect();
        let (s, c) = turn.to_radians().sin_cos_by_series();
        for a in &sites {
            let (de, dn) = ((a.2 - e0) / factor, (a.3 - n0) / factor);
            prop_assert!((px + c * de + s * dn - a.0).abs() < 1e-8);
            prop_assert!((py + c * dn - s * de - a.1).abs() < 1e-8);
            for b in &sites {
                let plan = (a.0 - b.0) * (a.0 - b.0) + (a.1 - b.1) * (a.1 - b.1);
                let site = (a.2 - b.2) * (a.2 - b.2) + (a.3 - b.3) * (a.3 - b.3);
                prop_assert!((site - plan * factor * factor).abs() < 1e-7);
            }
        }
    }
}
