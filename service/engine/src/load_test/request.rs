//! What `load-test` is asked: the points, the pile, the torque it was installed with, the
//! load it must carry. No equation is here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::conduct::LoadTestConduct;
use super::points::LoadTestPoints;
use crate::basis::{AxialDemand, UpliftClause};
use crate::choice::validate_choice;
use crate::quantity::{
    Length, LengthUnit, MomentUnit, PerLengthUnit, Size, SteelStress, StressUnit, Torque,
    TorqueFactor,
};
use crate::shaft::Shaft;
use crate::text::{Label, Tags, reference_text};

/// A static axial load test of one helical pile. The curve is made of straight lines between
/// the points and is never extrapolated: a criterion that the test did not reach is reported
/// as not reached. With `torque` also the torque factor of the site; with `demand` and
/// `design_basis` a verdict.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = LoadTestRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Name of the pile; echoed and used as the subject of checks.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Direction of the test load.
    pub direction: LoadTestDirection,
    /// How the load was applied.
    pub procedure: LoadTestProcedure,
    /// Load and displacement of the head; 3 to 400 rows.
    #[validate(nested)]
    pub points: LoadTestPoints,
    /// Shaft of the pile. A round one needs its wall: the elastic line comes from the steel
    /// area.
    #[validate(nested)]
    pub shaft: Shaft,
    /// Length of shaft under the test load, from where the displacement is read down to the
    /// helices; 0.3 to 100 m. The load is taken as constant over it (nothing goes to the soil
    /// beside the shaft).
    #[validate(range(min = Length::new(0.3, LengthUnit::M), max = Length::new(100.0, LengthUnit::M)))]
    pub loaded_length: Length,
    /// Elastic modulus of the shaft; 50 to 250 GPa; 200 GPa when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SteelStress::new(50e3, StressUnit::MPa), max = SteelStress::new(250e3, StressUnit::MPa)))]
    pub elastic_modulus: Option<SteelStress>,
    /// Helices of the pile, in any order; 1 to 8.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 8))]
    pub helices: Vec<TestedHelix>,
    /// Diameter in the offset of Davisson. It changes the answer; no published rule says which
    /// one holds for a helical pile. `shaft` when left out, which is the lower load, and the
    /// answer warns. Both loads are among the criteria.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub davisson_diameter: Option<DavissonDiameter>,
    /// Criterion whose load is taken as the failure load; `davisson` when left out. Where the
    /// test did not reach it, the largest load is a lower bound, but not by `butler_hoy`,
    /// `de_beer` and `least_named_by_code`: then nothing is judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub failure_criterion: Option<FailureCriterion>,
    /// Accuracy of the test load as a part of it: 0.02 for plus or minus 2 %; 0 to 0.5. A
    /// verdict that would turn inside this band is `provisional`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 0.5))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 0.5))]
    pub load_accuracy_ratio: Option<f64>,
    /// Torque the tested pile was installed with. With it the torque factor is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub torque: Option<TestedTorque>,
    /// Earlier tests on the site with the same shaft, in the same direction and read by the same
    /// criterion; 1 to 20. With them the answer gives the mean, the scatter and, from three
    /// tests on, a lower value of the torque factor. Needs `torque`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 20))]
    pub other_tests: Option<Vec<OtherSiteTest>>,
    /// How the test was run, to be checked against what test standards ask.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub conduct: Option<LoadTestConduct>,
    /// Load the pile must carry, in the direction of the test only. Without it nothing is
    /// judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub demand: Option<AxialDemand>,
    /// Format and factor of safety. Needed with `demand`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub design_basis: Option<LoadTestBasis>,
}

/// Direction of a test load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LoadTestDirection {
    /// Pushed down.
    Compression,
    /// Pulled up.
    Tension,
}

/// How a test load was applied.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LoadTestProcedure {
    /// In many small steps of a few minutes each.
    Quick,
    /// In few steps, each held until the movement has nearly come to rest.
    Maintained,
}

/// A helix of the tested pile.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TestedHelix {
    /// Its diameter; 100 to 1,500 mm.
    #[validate(range(min = Size::new(100.0, LengthUnit::Mm), max = Size::new(1500.0, LengthUnit::Mm)))]
    pub diameter: Size,
}

/// Diameter in the offset of Davisson.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum DavissonDiameter {
    /// Outside diameter of a round shaft, side of a square one.
    Shaft,
    /// Diameter of the largest helix.
    Helix,
}

/// Criterion whose load is taken as the failure load. The hyperbola of Chin is no choice: its
/// load is an extrapolation.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FailureCriterion {
    /// Davisson with the diameter of `davisson_diameter`.
    Davisson,
    /// Brinch Hansen, 90 %.
    #[serde(rename = "brinch_hansen_90")]
    BrinchHansen90,
    /// Butler and Hoy.
    ButlerHoy,
    /// The least of the criteria a building code names (the three above) that hold for this
    /// curve.
    LeastNamedByCode,
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
    /// De Beer.
    DeBeer,
}

/// Torque the tested pile was installed with.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TestedTorque {
    /// Final installation torque, the mean over the last part of the penetration and not a
    /// last spike; 0.01 to 1,000 kN m.
    #[validate(range(min = Torque::new(0.01, MomentUnit::KNM), max = Torque::new(1000.0, MomentUnit::KNM)))]
    pub final_torque: Torque,
    /// Accuracy of the torque as a part of it; 0 to 0.5.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 0.5))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 0.5))]
    pub gauge_accuracy_ratio: Option<f64>,
}

/// An earlier test on the site.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OtherSiteTest {
    /// Name of the tested pile.
    #[validate(nested)]
    pub label: Label,
    /// Torque factor that the test gave; 1 to 150 per m (0.3 to 45.7 per ft).
    #[validate(range(min = TorqueFactor::new(1.0, PerLengthUnit::PerM), max = TorqueFactor::new(150.0, PerLengthUnit::PerM)))]
    pub factor: TorqueFactor,
    /// Report of the test, 1 to 200 characters; echoed, never interpreted.
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub reference: String,
}

/// Format of the design and its factor, for a capacity proven by load test.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum LoadTestBasis {
    /// Allowable-stress design: failure load over a safety factor, against a service load.
    AllowableStress(LoadTestAllowableStress),
    /// Limit-states design: failure load times a resistance factor, against a factored load.
    LimitStates(LoadTestLimitStates),
}

validate_choice!(LoadTestBasis { AllowableStress = "allowable_stress", LimitStates = "limit_states" });

/// Safety factor of a capacity proven by load test.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LoadTestAllowableStress {
    /// Safety factor; 1 to 10. Left out: 2 in compression (Pa = 0.5 Pu), in tension by
    /// `uplift_clause`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 10.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10))]
    pub safety_factor: Option<f64>,
    /// Clause of the safety factor in tension, by load test: `general` 2 (when left out),
    /// `general_wind_seismic` 1.5, `helical` 2, `new_york_city` 2. For a tension test only, and
    /// not together with `safety_factor`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uplift_clause: Option<UpliftClause>,
}

/// Resistance factor of a capacity proven by load test.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LoadTestLimitStates {
    /// Resistance factor; 0.1 to 1. Left out: 0.6 in compression, 0.4 in tension, by static
    /// test.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.1, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 1))]
    pub resistance_factor: Option<f64>,
}
