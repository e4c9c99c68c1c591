//! Every criterion on one curve, in the order they are listed: its load, or why there is
//! none. The criteria themselves are in `line.rs`, `shape.rs` and `fit.rs`.

use super::codes::methods;
use super::curve::{Curve, Point};
use super::fit::{self, FitRange, Fitted, NoFit};
use super::line::{self, davisson_offset, first_on_line, helix_movement};
use super::outcome::*;
use super::shape::{self, NoTangent, Shares};
use crate::contract::Work;
use crate::quantity::{Force, Size, SpringStiffness, round9};
use crate::source::{
    BRINCH_HANSEN_1963, BUTLER_HOY_1976, CHIN_1971, DAVISSON_OFFSET, DE_BEER_1968, Reference,
    Sourced,
};

/// What the criteria need of the pile.
pub(super) struct Pile {
    pub shaft: Size,
    pub largest_helix: Size,
    pub average_helix: Size,
    pub stiffness: SpringStiffness,
}

/// All criteria in order.
pub(super) fn all(curve: &Curve, pile: &Pile, work: &mut Work) -> Vec<CriterionOutcome> {
    use LoadTestCriterion::*;
    let mut found = Vec::new();
    work.method(&methods::DAVISSON);
    for (name, diameter) in [
        (DavissonShaft, pile.shaft),
        (DavissonHelix, pile.largest_helix),
    ] {
        about(name, work);
        let offset = davisson_offset(diameter, &mut work.trace);
        let elastic = Some(pile.stiffness);
        let line = (name, diameter, offset, elastic, &DAVISSON_OFFSET);
        found.push(on_line(curve, line, work));
    }
    work.method(&methods::MOVEMENT);
    let (largest, average, elastic) =
        (pile.largest_helix, pile.average_helix, Some(pile.stiffness));
    for (name, share, diameter, elastic) in [
        (Helix5PercentGross, &line::SHARE_5_GROSS, largest, None),
        (Helix8PercentNet, &line::SHARE_8_NET, largest, elastic),
        (Helix10PercentNet, &line::SHARE_10_NET, average, elastic),
        (Helix10PercentGross, &line::SHARE_10_GROSS, average, None),
    ] {
        about(name, work);
        work.take(share);
        let offset = helix_movement(share, diameter, &mut work.trace);
        let line = (name, diameter, offset, elastic, share.reference);
        found.push(on_line(curve, line, work));
    }
    work.method(&methods::BRINCH_HANSEN);
    for (name, criterion) in [
        (BrinchHansen80, &shape::HANSEN_80),
        (BrinchHansen90, &shape::HANSEN_90),
    ] {
        about(name, work);
        found.push(brinch_hansen(curve, name, criterion, work));
    }
    for (name, method, read) in [
        (
            Chin,
            &methods::CHIN,
            chin as fn(&Curve, &mut Work) -> CriterionOutcome,
        ),
        (ButlerHoy, &methods::BUTLER_HOY, butler_hoy),
        (DeBeer, &methods::DE_BEER, de_beer),
    ] {
        work.method(method);
        about(name, work);
        found.push(read(curve, work));
    }
    work.trace.about(String::new);
    found
}

fn about(criterion: LoadTestCriterion, work: &mut Work) {
    work.trace
        .about(|| format!("criterion {}", name_of(criterion)));
}

/// Its name on the wire.
pub fn name_of(criterion: LoadTestCriterion) -> &'static str {
    use LoadTestCriterion::*;
    match criterion {
        DavissonShaft => "davisson_shaft",
        DavissonHelix => "davisson_helix",
        Helix5PercentGross => "helix_5_percent_gross",
        Helix8PercentNet => "helix_8_percent_net",
        Helix10PercentNet => "helix_10_percent_net",
        Helix10PercentGross => "helix_10_percent_gross",
        BrinchHansen80 => "brinch_hansen_80",
        BrinchHansen90 => "brinch_hansen_90",
        Chin => "chin",
        ButlerHoy => "butler_hoy",
        DeBeer => "de_beer",
    }
}

/// Whether the building code names it.
pub(super) fn named_by_code(criterion: LoadTestCriterion) -> bool {
    use LoadTestCriterion::*;
    matches!(
        criterion,
        DavissonShaft | DavissonHelix | BrinchHansen90 | ButlerHoy
    )
}

fn blank(criterion: LoadTestCriterion, source: &'static Reference) -> CriterionOutcome {
    let measured = criterion != LoadTestCriterion::Chin;
    CriterionOutcome {
        criterion,
        status: CriterionStatus::NotValid,
        load: None,
        displacement: None,
        torque_factor: None,
        reason: None,
        detail: None,
        kind: if measured {
            CriterionKind::Measured
        } else {
            CriterionKind::Extrapolated
        },
        code_standing: if named_by_code(criterion) {
            CodeStanding::NamedByCode
        } else {
            CodeStanding::NeedsApproval
        },
        diameter: None,
        offset: None,
        fits: Vec::new(),
        source: source.into(),
    }
}

impl CriterionOutcome {
    fn at(self, point: Point) -> Self {
        Self {
            status: CriterionStatus::Valid,
            load: Some(Force::from_si(point.load)),
            displacement: Some(Size::from_si(point.displacement)),
            ..self
        }
    }

    fn without(self, reason: CriterionReason, detail: String) -> Self {
        Self {
            reason: Some(reason),
            detail: Some(detail),
            ..self
        }
    }

    /// Not met before the end of the curve.
    fn not_met(self, curve: &Curve, detail: String) -> Self {
        let reason = if curve.peak_passed {
            CriterionReason::PeakPassedBefore
        } else {
            CriterionReason::NotCarriedFarEnough
        };
        self.without(reason, detail)
    }
}

fn size(metres: f64) -> String {
    Size::ROLE.in_both_systems(metres)
}

fn force(newtons: f64) -> String {
    Force::ROLE.in_both_systems(newtons)
}

fn per_cent(ratio: f64) -> String {
    format!("{} %", round9((ratio * 1000.0).round() / 10.0))
}

type Line = (
    LoadTestCriterion,
    Size,
    Size,
    Option<SpringStiffness>,
    &'static Reference,
);

fn on_line(curve: &Curve, line: Line, work: &mut Work) -> CriterionOutcome {
    let (criterion, diameter, offset, elastic, source) = line;
    let outcome = CriterionOutcome {
        diameter: Some(diameter),
        offset: Some(offset),
        ..blank(criterion, source)
    };
    if let Some(point) = first_on_line(curve, offset, elastic, source, &mut work.trace) {
        return outcome.at(point);
    }
    let last = curve.last();
    let asked = offset.si() + elastic.map_or(0.0, |k| last.load / k.si());
    let told = format!(
        "{} is asked for at the last point of the curve, {} was reached",
        size(asked),
        size(last.displacement)
    );
    outcome.not_met(curve, told)
}

fn brinch_hansen(
    curve: &Curve,
    criterion: LoadTestCriterion,
    shares: &Sourced<Shares>,
    work: &mut Work,
) -> CriterionOutcome {
    let outcome = blank(criterion, &BRINCH_HANSEN_1963);
    if let Some(point) = shape::brinch_hansen(curve, shares, &mut work.trace) {
        return outcome.at(point);
    }
    let last = curve.last();
    let asked = shares.value;
    let early = curve.loads_at(asked.displacement * last.displacement);
    let early = early.map_or(0.0, |loads| loads.0);
    let told = format!(
        "at {} of the largest displacement the load is {} of the last, not {} coming from less",
        per_cent(asked.displacement),
        per_cent(early / last.load),
        per_cent(asked.load)
    );
    outcome.not_met(curve, told)
}

fn fitted((line, range): (Fitted, FitRange), log: bool) -> CriterionFit {
    CriterionFit {
        point_count: range.count,
        from_load: Force::from_si(range.first.load),
        to_load: Force::from_si(range.last.load),
        determination_ratio: line.determination,
        log_slope_ratio: log.then_some(line.slope),
    }
}

fn chin(curve: &Curve, work: &mut Work) -> CriterionOutcome {
    let outcome = blank(LoadTestCriterion::Chin, &CHIN_1971);
    match fit::chin(curve, &mut work.trace) {
        Ok(found) => CriterionOutcome {
            status: CriterionStatus::Valid,
            load: Some(Force::from_si(found.load)),
            fits: vec![fitted((found.line, found.range), false)],
            ..outcome
        },
        Err(why) => no_fit(outcome, why),
    }
}

fn de_beer(curve: &Curve, work: &mut Work) -> CriterionOutcome {
    let outcome = blank(LoadTestCriterion::DeBeer, &DE_BEER_1968);
    match fit::de_beer(curve, &mut work.trace) {
        Ok(found) => CriterionOutcome {
            fits: found.lines.map(|line| fitted(line, true)).to_vec(),
            ..at_load(curve, found.load, outcome)
        },
        Err(why) => no_fit(outcome, why),
    }
}

fn no_fit(outcome: CriterionOutcome, why: NoFit) -> CriterionOutcome {
    use CriterionReason::*;
    let (reason, told) = match why {
        NoFit::TooFew(given, needed) => (
            TooFewPoints,
            format!("{given} points to fit, {needed} needed"),
        ),
        NoFit::Poor(determination, slope) if slope <= 0.0 => (
            PoorFit,
            format!(
                "displacement over load does not grow with the displacement (determination {})",
                round9(determination)
            ),
        ),
        NoFit::Poor(determination, _) => (
            PoorFit,
            format!(
                "displacement over load is no straight line: determination {}, {} needed",
                round9(determination),
                fit::CHIN_DETERMINATION.value
            ),
        ),
        NoFit::NoBreak(first, second) => (
            NoBreak,
            format!(
                "the logarithmic slopes are {} and {}; the second has to be at most {} of the first",
                round9(first),
                round9(second),
                fit::DE_BEER_BREAK.value
            ),
        ),
        NoFit::OneLine(part) => (
            NoBreak,
            format!(
                "two logarithmic lines leave {} of the squares of one, at most {} needed",
                per_cent(part),
                per_cent(fit::DE_BEER_GAIN.value)
            ),
        ),
        NoFit::MeetsOutside => (
            NoBreak,
            "the two logarithmic lines do not meet within the curve".to_owned(),
        ),
        NoFit::TooFarBeyond(load) if load < 1e9 => (
            NotCarriedFarEnough,
            format!(
                "the hyperbola tends to {}, more than {} times the largest load",
                force(load),
                fit::CHIN_REACH.value
            ),
        ),
        NoFit::TooFarBeyond(_) => (
            NotCarriedFarEnough,
            "the curve is straight; no hyperbola bends it".to_owned(),
        ),
    };
    outcome.without(reason, told)
}

fn butler_hoy(curve: &Curve, work: &mut Work) -> CriterionOutcome {
    let outcome = blank(LoadTestCriterion::ButlerHoy, &BUTLER_HOY_1976);
    let steep = SpringStiffness::ROLE.in_both_systems(shape::STEEP_TANGENT.value.si());
    match shape::butler_hoy(curve, &mut work.trace) {
        Ok(load) => at_load(curve, load, outcome),
        Err(NoTangent::NotSteepEnough) => outcome.not_met(
            curve,
            format!("the curve does not become softer than {steep} before its last point"),
        ),
        Err(NoTangent::HardlyLeft(part)) => outcome.not_met(
            curve,
            format!(
                "at its last point the curve has {} of the load of the tangent of {steep}, at most {} needed",
                per_cent(part),
                per_cent(shape::LEFT_TANGENT.value)
            ),
        ),
        Err(NoTangent::TooSoft) => outcome.without(
            CriterionReason::TooSoftFromTheStart,
            format!("the curve is softer than {steep} from the start"),
        ),
    }
}

/// The load of a construction beside the curve, with the displacement of the curve there.
fn at_load(curve: &Curve, load: f64, outcome: CriterionOutcome) -> CriterionOutcome {
    match curve.displacement_at(load) {
        Some(displacement) => outcome.at(Point { load, displacement }),
        None => {
            let told = format!(
                "its load is {}, the largest {}",
                force(load),
                force(curve.peak().load)
            );
            outcome.not_met(curve, told)
        }
    }
}
