//! What `load-test` answers. Only types: the equations stand in `line.rs`, `shape.rs`,
//! `fit.rs` and `site.rs`.

use serde::{Deserialize, Serialize};

use super::request::{LoadTestDirection, LoadTestProcedure};
use crate::quantity::{
    Area, Force, Length, Size, SpringStiffness, SteelStress, Torque, TorqueFactor,
};
use crate::source::SourceNote;
use crate::text::{Label, Tags};

/// A load test as it was read. A member is left out where it was not asked for or does not
/// exist.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = LoadTestOutcome))]
pub struct Outcome {
    /// Name of the pile, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub label: Option<Label>,
    /// Codes, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Direction of the test load, as sent.
    pub direction: LoadTestDirection,
    /// How the load was applied, as sent.
    pub procedure: LoadTestProcedure,
    /// The curve that the criteria are read on.
    pub curve: LoadTestCurve,
    /// The elastic line.
    pub elastic: ElasticLine,
    /// Every criterion, those that do not hold for this curve included.
    pub criteria: Vec<CriterionOutcome>,
    /// The load taken as the failure load.
    pub failure: FailureLoad,
    /// The torque factor of the tested pile; left out where the failure load is not determined.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_factor: Option<SiteTorqueFactor>,
    /// The torque factors of the site; left out where no other tests were sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub site_factors: Option<SiteTorqueFactors>,
    /// Factor of the design basis.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design_basis: Option<LoadTestBasisOutcome>,
    /// Movement of the head under the load in `demand`, where that is a service load the test
    /// reached.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub displacement_at_demand: Option<Size>,
}

/// The first loading, as straight lines between its points.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LoadTestCurve {
    /// Rows that make up the curve.
    pub point_count: usize,
    /// Rows after it: unloading, or load that fell while the pile moved on.
    pub later_row_count: usize,
    /// Between the points the curve is a straight line; beyond the last there is none.
    pub interpolation: CurveInterpolation,
    /// Largest load.
    pub largest_load: Force,
    /// Displacement where the largest load was first reached.
    pub displacement_at_largest_load: Size,
    /// Largest displacement of the curve.
    pub largest_displacement: Size,
    /// Largest step of load between two points over the largest load.
    pub largest_step_ratio: f64,
    /// Displacement left after full unloading, where the last row is at zero load.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub permanent_displacement: Option<Size>,
    /// The load fell for good while the pile moved on: the largest load is a peak.
    pub peak_passed: bool,
}

/// How the curve runs between two points.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CurveInterpolation {
    /// In straight lines.
    Linear,
}

/// Shortening (or stretching) of the shaft as a column with the same load over its length.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ElasticLine {
    /// Steel area.
    pub area: Area,
    /// Elastic modulus used.
    pub elastic_modulus: SteelStress,
    /// Loaded length, as sent.
    pub loaded_length: Length,
    /// Load over shortening, A E / L.
    pub stiffness: SpringStiffness,
    /// Shortening under the largest load.
    pub shortening_at_largest_load: Size,
}

/// A criterion by its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LoadTestCriterion {
    /// Davisson, with the diameter of the shaft.
    DavissonShaft,
    /// Davisson, with the diameter of the largest helix.
    DavissonHelix,
    /// Movement of 5 % of the largest helix, gross.
    #[serde(rename = "helix_5_percent_gross")]
    Helix5PercentGross,
    /// Movement of 8 % of the largest helix beside the elastic line, net.
    #[serde(rename = "helix_8_percent_net")]
    Helix8PercentNet,
    /// Movement of 10 % of the average helix beside the elastic line, net.
    #[serde(rename = "helix_10_percent_net")]
    Helix10PercentNet,
    /// Movement of 10 % of the average helix, gross.
    #[serde(rename = "helix_10_percent_gross")]
    Helix10PercentGross,
    /// Brinch Hansen, 80 %.
    #[serde(rename = "brinch_hansen_80")]
    BrinchHansen80,
    /// Brinch Hansen, 90 %.
    #[serde(rename = "brinch_hansen_90")]
    BrinchHansen90,
    /// Chin.
    Chin,
    /// Butler and Hoy.
    ButlerHoy,
    /// De Beer.
    DeBeer,
}

/// Whether a criterion holds for this curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CriterionStatus {
    /// It gives a load.
    Valid,
    /// It gives none; `reason` says why.
    NotValid,
}

/// Why a criterion gives no load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CriterionReason {
    /// It lies beyond the last point of the curve; nothing is extrapolated.
    NotCarriedFarEnough,
    /// The load fell while the pile moved on before it was met.
    PeakPassedBefore,
    /// The curve has fewer points than it needs.
    TooFewPoints,
    /// The curve is softer from the start than the tangent it asks for.
    TooSoftFromTheStart,
    /// The curve has no marked break.
    NoBreak,
    /// The points do not follow the law it rests on.
    PoorFit,
}

/// Whether the load of a criterion was reached in the test.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CriterionKind {
    /// Read on the measured curve.
    Measured,
    /// A load that a fitted law tends to; never taken as the failure load.
    Extrapolated,
}

/// Standing of a criterion with the International Building Code.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CodeStanding {
    /// Named in the code.
    NamedByCode,
    /// Needs the approval of the building official.
    NeedsApproval,
}

/// One criterion on this curve.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CriterionOutcome {
    /// Which one.
    pub criterion: LoadTestCriterion,
    /// Whether it holds for this curve.
    pub status: CriterionStatus,
    /// Its load.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub load: Option<Force>,
    /// Displacement of the curve at that load; of an extrapolation there is none.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub displacement: Option<Size>,
    /// Torque factor with that load; not of an extrapolation.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_factor: Option<TorqueFactor>,
    /// Why it gives no load.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub reason: Option<CriterionReason>,
    /// The same in words, with the numbers.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub detail: Option<String>,
    /// Measured or extrapolated.
    pub kind: CriterionKind,
    /// Standing with the International Building Code.
    pub code_standing: CodeStanding,
    /// Diameter that goes into it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub diameter: Option<Size>,
    /// Displacement it asks for, beside the elastic line or without it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub offset: Option<Size>,
    /// Lines fitted to the points.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub fits: Vec<CriterionFit>,
    /// Where it comes from.
    pub source: SourceNote,
}

/// A straight line fitted to some of the points.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CriterionFit {
    /// How many points.
    pub point_count: usize,
    /// Load of the first of them.
    pub from_load: Force,
    /// Load of the last of them.
    pub to_load: Force,
    /// Coefficient of determination; 1 where all points are on the line.
    pub determination_ratio: f64,
    /// Slope of log load against log displacement; De Beer only.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub log_slope_ratio: Option<f64>,
}

/// What the failure load is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FailureLoadKind {
    /// The load of the criterion.
    Criterion,
    /// The largest load, after which the load fell while the pile moved on.
    Peak,
    /// The largest load of a test that did not reach the criterion: the failure load is not
    /// less.
    LowerBound,
    /// The criterion gives no load, and it is one whose load may lie below the largest: the
    /// largest load is shown, and nothing follows from it.
    NotDetermined,
}

/// The load taken as the failure load.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FailureLoad {
    /// What it is.
    pub kind: FailureLoadKind,
    /// Its criterion; left out where the load is not that of one.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub criterion: Option<LoadTestCriterion>,
    /// The load.
    pub load: Force,
    /// Displacement of the curve at that load.
    pub displacement: Size,
    /// Least load within the stated accuracy.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub load_low: Option<Force>,
    /// Greatest load within the stated accuracy.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub load_high: Option<Force>,
    /// Allowable capacity or factored resistance by the design basis.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design: Option<Force>,
    /// Least load of the measured criteria that hold.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub least_by_criteria: Option<Force>,
    /// Greatest load of the measured criteria that hold.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub greatest_by_criteria: Option<Force>,
}

/// Torque factor of the tested pile: failure load over final torque.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SiteTorqueFactor {
    /// Final torque, as sent.
    pub final_torque: Torque,
    /// Failure load over final torque. From a lower bound of the failure load it is a lower
    /// bound itself.
    pub factor: TorqueFactor,
    /// The failure load is a lower bound.
    pub lower_bound: bool,
    /// Least factor within the stated accuracies of load and torque; left out where neither
    /// was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub factor_low: Option<TorqueFactor>,
    /// Greatest factor within the stated accuracies.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub factor_high: Option<TorqueFactor>,
    /// Factor with the least load of the measured criteria that hold.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub least_by_criteria: Option<TorqueFactor>,
    /// Factor with the greatest load of the measured criteria that hold.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub greatest_by_criteria: Option<TorqueFactor>,
    /// What acceptance criteria AC358 give for this shaft, for comparison; left out where the
    /// shaft is outside them.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub acceptance_criteria: Option<TorqueFactor>,
}

/// The torque factors that the tests of a site give, of one shaft in one direction.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SiteTorqueFactors {
    /// The earlier tests, as sent.
    pub other_tests: Vec<SiteTestNote>,
    /// How many tests are counted.
    pub test_count: usize,
    /// This test is one of them; one whose failure load was not reached or not determined is
    /// not.
    pub this_test_counted: bool,
    /// Mean of the factors.
    pub mean: TorqueFactor,
    /// Least of them.
    pub least: TorqueFactor,
    /// Greatest of them.
    pub greatest: TorqueFactor,
    /// Standard deviation of a sample (n - 1); from two tests on.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub standard_deviation: Option<TorqueFactor>,
    /// Standard deviation over mean; from two tests on.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub variation_ratio: Option<f64>,
    /// Lower value of the mean; from three tests on, where it is above nil.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub lower: Option<SiteTorqueFactorLower>,
}

/// An earlier test, as sent.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SiteTestNote {
    /// Name of the tested pile.
    pub label: Label,
    /// Its torque factor.
    pub factor: TorqueFactor,
    /// Report of the test.
    pub reference: String,
}

/// Lower value of the mean torque factor of a site. It is one of the mean and not of a single
/// pile: the scatter from pile to pile stays with the factor of safety.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SiteTorqueFactorLower {
    /// How it is found.
    pub method: LowerMeanMethod,
    /// Probability that the true mean is above it, where the factors of the site are normally
    /// distributed and the tests are a random choice of its piles.
    pub confidence_ratio: f64,
    /// Quantile of the distribution of Student.
    pub quantile_ratio: f64,
    /// The value.
    pub factor: TorqueFactor,
}

/// How the lower value of a mean is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LowerMeanMethod {
    /// One-sided confidence limit of the mean by the distribution of Student.
    StudentTOneSided,
}

/// Factor of the design basis with its source. One of the two stands.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LoadTestBasisOutcome {
    /// Divides the failure load.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub safety_factor: Option<f64>,
    /// Multiplies the failure load.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub resistance_factor: Option<f64>,
    /// Where it comes from.
    pub source: SourceNote,
}
