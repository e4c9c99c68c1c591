//! What the sheet of a load test is drawn from: rows, criteria by their names, and the line of
//! the criterion in force. Nothing is drawn here.

use bearwell_engine::contract::Answer;
use bearwell_engine::load_test::{
    CriterionOutcome, CriterionReason, DISPLACEMENT, DavissonDiameter, FailureCriterion, LOAD,
    LoadTestCriterion, Outcome, Request,
};
use bearwell_engine::quantity::{Force, Size, System};

/// A pair of displacement and load, base SI.
pub type Pair = (f64, f64);

/// Everything the sheet is drawn from.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// What was asked.
    pub request: &'a Request,
    /// What was answered.
    pub answer: &'a Answer<Outcome>,
    /// Units of the sheet.
    pub system: System,
}

impl<'a> Subject<'a> {
    /// The result.
    pub fn outcome(&self) -> &'a Outcome {
        &self.answer.result
    }

    /// The rows of the first loading, from zero, and those after it, from its last one on.
    pub fn rows(&self) -> (Vec<Pair>, Vec<Pair>) {
        let points = &self.request.points;
        let all: Vec<Pair> = (0..points.len())
            .filter_map(|row| {
                let load: Force = points.value(row, LOAD)?;
                let displacement: Size = points.value(row, DISPLACEMENT)?;
                Some((displacement.si(), load.si()))
            })
            .collect();
        let end = self.outcome().curve.point_count.min(all.len());
        let mut first = vec![(0.0, 0.0)];
        first.extend(all[..end].iter().filter(|p| **p != (0.0, 0.0)));
        let mut later = Vec::new();
        if end < all.len() {
            later.extend(first.last());
            later.extend(&all[end..]);
        }
        (first, later)
    }

    /// The criterion whose line is drawn: the one in force, or that of Davisson where it has no
    /// line.
    pub fn lined(&self) -> Option<&'a CriterionOutcome> {
        let outcome = self.outcome();
        let of = |name| outcome.criteria.iter().find(|c| c.criterion == name);
        let davisson = match self.request.davisson_diameter {
            Some(DavissonDiameter::Helix) => LoadTestCriterion::DavissonHelix,
            _ => LoadTestCriterion::DavissonShaft,
        };
        let asked = match self.request.failure_criterion {
            Some(FailureCriterion::Helix5PercentGross) => LoadTestCriterion::Helix5PercentGross,
            Some(FailureCriterion::Helix8PercentNet) => LoadTestCriterion::Helix8PercentNet,
            Some(FailureCriterion::Helix10PercentNet) => LoadTestCriterion::Helix10PercentNet,
            Some(FailureCriterion::Helix10PercentGross) => LoadTestCriterion::Helix10PercentGross,
            _ => davisson,
        };
        of(asked).filter(|c| c.offset.is_some())
    }

    /// Newtons per metre of the elastic line.
    pub fn stiffness(&self) -> f64 {
        self.outcome().elastic.stiffness.si()
    }
}

/// Whether the line of a criterion runs beside the elastic line.
pub fn net(criterion: LoadTestCriterion) -> bool {
    use LoadTestCriterion::{DavissonHelix, DavissonShaft, Helix8PercentNet, Helix10PercentNet};
    matches!(
        criterion,
        DavissonShaft | DavissonHelix | Helix8PercentNet | Helix10PercentNet
    )
}

/// A criterion in words.
pub fn name(criterion: LoadTestCriterion) -> &'static str {
    use LoadTestCriterion::*;
    match criterion {
        DavissonShaft => "Davisson, shaft",
        DavissonHelix => "Davisson, helix",
        Helix5PercentGross => "5 % helix, gross",
        Helix8PercentNet => "8 % helix, net",
        Helix10PercentNet => "10 % helices, net",
        Helix10PercentGross => "10 % helices, gross",
        BrinchHansen80 => "Brinch Hansen 80 %",
        BrinchHansen90 => "Brinch Hansen 90 %",
        Chin => "Chin, extrapolated",
        ButlerHoy => "Butler and Hoy",
        DeBeer => "De Beer",
    }
}

/// Why a criterion gives no load, in words.
pub fn reason(reason: CriterionReason) -> &'static str {
    use CriterionReason::*;
    match reason {
        NotCarriedFarEnough => "the test was not carried far enough",
        PeakPassedBefore => "the load fell before it was met",
        TooFewPoints => "too few points",
        TooSoftFromTheStart => "softer than its tangent from the start",
        NoBreak => "the curve has no marked break",
        PoorFit => "the points do not follow its law",
    }
}
