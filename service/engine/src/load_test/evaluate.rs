//! The course of the calculation: faults, curve, elastic line, criteria, failure load, torque
//! factor. Factors of the design basis and the verdict are in `judge.rs`.

use super::codes::{methods, warnings};
use super::criteria::{self, Pile, name_of, named_by_code};
use super::curve::{Curve, Point};
use super::judge;
use super::line::{MODULUS, elastic_shortening, elastic_stiffness};
use super::outcome::*;
use super::request::*;
use super::{run, scatter, site};
use crate::catalogue::cautions;
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Issue, Refusal, Work};
use crate::helix::codes::refusals::HELIX_NOT_WIDER_THAN_SHAFT;
use crate::quantity::{Area, Force, Size, round9};
use crate::source::{BEARWELL_CHOICE, Sourced};

/// Step of load between two points over the largest load from which a load read between them
/// is called coarse.
pub static COARSE_STEP: Sourced<f64> =
    Sourced::new("load_test_coarse_step_ratio", 0.10, &BEARWELL_CHOICE);

/// The calculation.
pub(super) fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
    let mut issues = Vec::new();
    pile_faults(request, &mut issues);
    judge::faults(request, &mut issues);
    run::faults(request, &mut issues);
    scatter::faults(request, &mut issues);
    let curve = Curve::through(&request.points);
    let (curve, area) = match (curve, request.shaft.steel_area()) {
        (Ok(curve), Some(area)) if issues.is_empty() => (curve, area),
        (curve, _) => {
            issues.extend(curve.err().unwrap_or_default());
            return Err(Refusal::of(issues));
        }
    };
    work.method(&methods::CURVE);
    cautions_of(request, work);
    warn_of_curve(&curve, request, work);
    let elastic = elastic(request, area, &curve, work);
    let pile = pile(request, &elastic);
    let mut criteria = criteria::all(&curve, &pile, work);
    let factor = judge::factor(request, work);
    let failure = failure(request, &curve, &criteria, factor.as_ref(), work);
    let torque_factor = site::factor(request, &failure, &mut criteria, work);
    let site_factors = scatter::factors(request, torque_factor.as_ref(), work);
    warn_of_criteria(request, &curve, &criteria, &failure, work);
    let outcome = Outcome {
        label: request.label.clone(),
        tags: request.tags.clone(),
        direction: request.direction,
        procedure: request.procedure,
        curve: told(&curve),
        elastic,
        criteria,
        failure,
        torque_factor,
        site_factors,
        design_basis: factor.as_ref().map(judge::Factor::outcome),
        displacement_at_demand: judge::service_load(request)
            .and_then(|load| curve.displacement_at(load.si()))
            .map(Size::from_si),
    };
    judge::judge(request, &outcome, factor.as_ref(), work);
    run::check(request, &curve, &outcome.failure, work);
    Ok(outcome)
}

fn pile_faults(request: &Request, issues: &mut Vec<Issue>) {
    issues.extend(crate::helix::shaft_faults(&request.shaft, ""));
    if request.shaft.steel_area().is_none() {
        let told = "`wall_thickness` is needed: the elastic line comes from the steel area";
        issues.push(Issue::new("/shaft/round", &MISSING_MEMBER, told));
    }
    let width = request.shaft.effective_diameter();
    for (at, helix) in request.helices.iter().enumerate() {
        if helix.diameter.si() <= width.si() * (1.0 + 1e-9) {
            let told = Size::ROLE.in_both_systems(helix.diameter.si());
            let pointer = format!("/helices/{at}/diameter");
            let issue = Issue::new(pointer, &HELIX_NOT_WIDER_THAN_SHAFT, told);
            issues.push(issue.limit(Size::ROLE.in_both_systems(width.si())));
        }
    }
}

fn cautions_of(request: &Request, work: &mut Work) {
    work.caution(&cautions::ENGINEER_OF_RECORD);
    work.caution(&cautions::LOCAL_CODE);
    work.caution(&cautions::SOIL_PROFILE);
    work.caution(&cautions::PRODUCT_STRENGTH);
    work.caution(&cautions::NOT_COVERED);
    work.caution(&cautions::SITE_SAFETY);
    if request.torque.is_some() {
        work.caution(&cautions::TORQUE_IS_EMPIRICAL);
        work.caution(&cautions::GAUGE);
    }
}

fn warn_of_curve(curve: &Curve, request: &Request, work: &mut Work) {
    if curve.origin_added {
        work.warn(
            &warnings::ORIGIN_ADDED,
            "a line from zero to the first row is part of the curve",
        );
    }
    if curve.dip_count > 0 {
        let told = format!(
            "{} rows, at most {} % below the largest load before them",
            curve.dip_count,
            round9((curve.largest_dip * 1e4).round() / 100.0)
        );
        work.warn(&warnings::LOAD_DIPS, told);
    }
    if request.direction == LoadTestDirection::Tension {
        work.warn(
            &warnings::TENSION_BY_ANALOGY,
            "Davisson, Brinch Hansen, Butler and Hoy, De Beer were made for piles in compression",
        );
    }
    if request.procedure == LoadTestProcedure::Maintained {
        work.warn(
            &warnings::BUTLER_HOY_MAINTAINED,
            "read `butler_hoy` with care",
        );
    }
}

fn elastic(request: &Request, area: Area, curve: &Curve, work: &mut Work) -> ElasticLine {
    let elastic_modulus = match request.elastic_modulus {
        Some(own) => own,
        None => work.take(&MODULUS),
    };
    let length = request.loaded_length;
    let stiffness = elastic_stiffness(area, elastic_modulus, length, &mut work.trace);
    let largest = Force::from_si(curve.peak().load);
    ElasticLine {
        area,
        elastic_modulus,
        loaded_length: length,
        stiffness,
        shortening_at_largest_load: elastic_shortening(largest, stiffness, &mut work.trace),
    }
}

fn pile(request: &Request, elastic: &ElasticLine) -> Pile {
    let diameters = request.helices.iter().map(|h| h.diameter);
    let count = request.helices.len() as f64;
    Pile {
        shaft: request.shaft.width(),
        largest_helix: diameters.clone().fold(Size::ZERO, Size::max),
        average_helix: diameters.sum::<Size>() / count,
        stiffness: elastic.stiffness,
    }
}

fn told(curve: &Curve) -> LoadTestCurve {
    let peak = curve.peak();
    LoadTestCurve {
        point_count: curve.row_count,
        later_row_count: curve.later_row_count,
        interpolation: CurveInterpolation::Linear,
        largest_load: Force::from_si(peak.load),
        displacement_at_largest_load: Size::from_si(peak.displacement),
        largest_displacement: Size::from_si(curve.last().displacement),
        largest_step_ratio: curve.largest_step(),
        permanent_displacement: curve.permanent.map(Size::from_si),
        peak_passed: curve.peak_passed,
    }
}

/// The criterion of Davisson with the diameter that is in force.
fn davisson(request: &Request) -> LoadTestCriterion {
    match request.davisson_diameter {
        Some(DavissonDiameter::Helix) => LoadTestCriterion::DavissonHelix,
        _ => LoadTestCriterion::DavissonShaft,
    }
}

/// The criteria whose least load is the failure load.
fn asked(request: &Request) -> Vec<LoadTestCriterion> {
    use LoadTestCriterion as C;
    let one = match request
        .failure_criterion
        .unwrap_or(FailureCriterion::Davisson)
    {
        FailureCriterion::LeastNamedByCode => {
            return vec![davisson(request), C::BrinchHansen90, C::ButlerHoy];
        }
        FailureCriterion::Davisson => davisson(request),
        FailureCriterion::BrinchHansen90 => C::BrinchHansen90,
        FailureCriterion::ButlerHoy => C::ButlerHoy,
        FailureCriterion::Helix5PercentGross => C::Helix5PercentGross,
        FailureCriterion::Helix8PercentNet => C::Helix8PercentNet,
        FailureCriterion::Helix10PercentNet => C::Helix10PercentNet,
        FailureCriterion::Helix10PercentGross => C::Helix10PercentGross,
        FailureCriterion::BrinchHansen80 => C::BrinchHansen80,
        FailureCriterion::DeBeer => C::DeBeer,
    };
    vec![one]
}

/// Whether the load of a criterion that was not met may lie below the largest load. A point
/// beyond the end of the curve cannot; the meets of two lines beside it can.
fn may_lie_below(criterion: LoadTestCriterion) -> bool {
    use LoadTestCriterion as C;
    matches!(criterion, C::ButlerHoy | C::DeBeer)
}

fn failure(
    request: &Request,
    curve: &Curve,
    criteria: &[CriterionOutcome],
    factor: Option<&judge::Factor>,
    work: &mut Work,
) -> FailureLoad {
    work.method(&methods::FAILURE_LOAD);
    let measured = |c: &&CriterionOutcome| c.kind == CriterionKind::Measured;
    let loads = || criteria.iter().filter(measured).filter_map(|c| c.load);
    let names = asked(request);
    let held = criteria.iter().filter(|c| names.contains(&c.criterion));
    let mut least: Option<(LoadTestCriterion, Point)> = None;
    for c in held {
        if let (Some(load), Some(displacement)) = (c.load, c.displacement)
            && least.is_none_or(|(_, p)| load.si() < p.load)
        {
            let (load, displacement) = (load.si(), displacement.si());
            least = Some((c.criterion, Point { load, displacement }));
        }
    }
    let (kind, at) = match least {
        Some((_, point)) => (FailureLoadKind::Criterion, point),
        None if names.iter().any(|name| may_lie_below(*name)) => {
            (FailureLoadKind::NotDetermined, curve.peak())
        }
        None if curve.peak_passed => (FailureLoadKind::Peak, curve.peak()),
        None => (FailureLoadKind::LowerBound, curve.peak()),
    };
    let load = Force::from_si(at.load);
    let accuracy = request.load_accuracy_ratio;
    FailureLoad {
        kind,
        criterion: least.map(|(name, _)| name),
        load,
        displacement: Size::from_si(at.displacement),
        load_low: accuracy.map(|a| load * (1.0 - a)),
        load_high: accuracy.map(|a| load * (1.0 + a)),
        design: factor
            .filter(|_| kind != FailureLoadKind::NotDetermined)
            .map(|f| f.design(load, &mut work.trace)),
        least_by_criteria: loads().reduce(Force::min),
        greatest_by_criteria: loads().reduce(Force::max),
    }
}

fn warn_of_criteria(
    request: &Request,
    curve: &Curve,
    criteria: &[CriterionOutcome],
    failure: &FailureLoad,
    work: &mut Work,
) {
    let force = |f: Force| Force::ROLE.in_both_systems(f.si());
    let load_of = |name| criteria.iter().find(|c| c.criterion == name)?.load;
    if request.davisson_diameter.is_none() {
        let told = |name| load_of(name).map_or("no load".to_owned(), force);
        work.warn(
            &warnings::DAVISSON_DIAMETER_NOT_CHOSEN,
            format!(
                "{} with the shaft, {} with the largest helix; send `davisson_diameter`",
                told(LoadTestCriterion::DavissonShaft),
                told(LoadTestCriterion::DavissonHelix)
            ),
        );
    }
    if let (Some(least), Some(most)) = (failure.least_by_criteria, failure.greatest_by_criteria)
        && round9(least.si()) < round9(most.si())
    {
        let told = format!(
            "from {} to {} among those that hold",
            force(least),
            force(most)
        );
        work.warn(&warnings::CRITERIA_DISAGREE, told);
    }
    match (failure.kind, failure.criterion) {
        (FailureLoadKind::Criterion, Some(name)) if !named_by_code(name) => {
            work.warn(&warnings::CRITERION_NOT_NAMED, name_of(name));
        }
        (FailureLoadKind::Peak, _) => work.warn(&warnings::PEAK_PASSED, force(failure.load)),
        (FailureLoadKind::LowerBound, _) => {
            work.warn(&warnings::NOT_TO_FAILURE, force(failure.load));
        }
        (FailureLoadKind::NotDetermined, _) => {
            let told = format!("the largest load is {}", force(failure.load));
            work.warn(&warnings::NOT_DETERMINED, told);
        }
        _ => {}
    }
    let limit = work.take(&COARSE_STEP);
    let measured = criteria
        .iter()
        .filter(|c| c.kind == CriterionKind::Measured);
    let coarse: Vec<_> = measured
        .filter(|c| {
            c.load
                .is_some_and(|q| round9(curve.step_around(q.si())) > limit)
        })
        .map(|c| name_of(c.criterion))
        .collect();
    if !coarse.is_empty() {
        let told = format!(
            "over more than {} % of the largest load: {}",
            limit * 100.0,
            coarse.join(", ")
        );
        work.warn(&warnings::STEPS_COARSE, told);
    }
}
