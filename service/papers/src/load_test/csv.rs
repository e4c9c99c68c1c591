//! The criteria of a load test as a table, a row for each.

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::load_test::{
    CodeStanding, CriterionKind, CriterionReason, CriterionStatus, Outcome, Request, criterion_code,
};
use bearwell_engine::quantity::{Force, RATIO, Size, System, TorqueFactor};

use crate::csv::{Csv, Field};

/// Writes the criteria of an answer as CSV in the given units: a row for each criterion, those
/// that do not hold with their reason and without a load, and the failure load in the last row.
pub fn load_test_csv(
    request: &Request,
    answer: &Answer<Outcome>,
    system: System,
    _: Paper,
) -> String {
    let mut csv = Csv::new(system);
    csv.text_column("pile");
    csv.text_column("criterion");
    csv.text_column("status");
    csv.column("load", Force::ROLE);
    csv.column("displacement", Size::ROLE);
    csv.column("torque_factor", TorqueFactor::ROLE);
    csv.column("diameter", Size::ROLE);
    csv.column("offset", Size::ROLE);
    csv.column("least_determination", RATIO);
    for name in [
        "kind",
        "code_standing",
        "taken_as_failure_load",
        "reason",
        "detail",
        "source",
    ] {
        csv.text_column(name);
    }
    let pile = request.label.as_ref().map_or("", |l| l.as_str());
    let outcome = &answer.result;
    for c in &outcome.criteria {
        let fits = c.fits.iter().map(|f| f.determination_ratio);
        let taken = outcome.failure.criterion == Some(c.criterion);
        csv.row([
            Field::text(pile),
            Field::text(criterion_code(c.criterion)),
            Field::text(match c.status {
                CriterionStatus::Valid => "valid",
                CriterionStatus::NotValid => "not_valid",
            }),
            Field::maybe(c.load),
            Field::maybe(c.displacement),
            Field::maybe(c.torque_factor),
            Field::maybe(c.diameter),
            Field::maybe(c.offset),
            Field::maybe(fits.reduce(f64::min)),
            Field::text(match c.kind {
                CriterionKind::Measured => "measured",
                CriterionKind::Extrapolated => "extrapolated",
            }),
            Field::text(match c.code_standing {
                CodeStanding::NamedByCode => "named_by_code",
                CodeStanding::NeedsApproval => "needs_approval",
            }),
            Field::text(if taken { "yes" } else { "no" }),
            Field::text(c.reason.map_or("", reason_code)),
            Field::text(c.detail.as_deref().unwrap_or_default()),
            Field::text(c.source.id.as_ref()),
        ]);
    }
    csv.finish()
}

/// A reason as it stands in JSON.
fn reason_code(reason: CriterionReason) -> &'static str {
    match reason {
        CriterionReason::NotCarriedFarEnough => "not_carried_far_enough",
        CriterionReason::PeakPassedBefore => "peak_passed_before",
        CriterionReason::TooFewPoints => "too_few_points",
        CriterionReason::TooSoftFromTheStart => "too_soft_from_the_start",
        CriterionReason::NoBreak => "no_break",
        CriterionReason::PoorFit => "poor_fit",
    }
}
