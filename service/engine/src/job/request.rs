//! What `installation-job` is asked: the logs of a job and the rules of its lot. No equation
//! is here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::load_test::LoadTestDirection;
use crate::record;
use crate::text::{Label, Tags, reference_text};

/// The piles of one job, judged one by one from their logs and then together.
///
/// A pile whose log cannot be judged does not lose the others: it stands in the answer with
/// what is wrong with it, and leaves the verdict `provisional`. Only a request that cannot be
/// read, or one of whose piles none can be judged, is refused.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = InstallationJobRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Name of the job; echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// The piles in the order they were turned in, each as `installation-record` takes it and
    /// with a `label` of its own; 1 to 60. Which pile is next to which is taken from this
    /// order.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 60))]
    pub piles: Vec<record::Request>,
    /// Rules of the lot, which all these piles make up. Left out, no tests are asked for, and
    /// the answer warns.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub lot: Option<LotRules>,
}

/// Rules of a lot of piles.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LotRules {
    /// Share of the piles to be proof-tested; 0 to 1, the count rounded up. There is no
    /// default: for micropiles 2 to 5 % is quoted, for helical piles no published share was
    /// found. Left out, no tests are asked for, and the answer warns.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub proof_test_ratio: Option<f64>,
    /// Load tests of these piles; up to 120, one for each pile and direction.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 120))]
    pub load_tests: Option<Vec<JobLoadTest>>,
    /// How far the depth of a pile may differ from that of a tested pile, as a part of the
    /// latter; 0 to 1, 0.25 when left out. It is held against the tested pile that it differs
    /// from least. More is for the engineer to decide on; it never changes the verdict. Needs
    /// `load_tests`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub length_tolerance_ratio: Option<f64>,
    /// Piles next to it that a failed pile asks to be tested or turned again; 0 to 60, 2 when
    /// left out, a choice of this service: codes leave the number to the engineer.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(max = 60))]
    #[cfg_attr(feature = "openapi", schema(maximum = 60))]
    pub failed_pile_retest_count: Option<usize>,
}

/// A load test of a pile of the job, with what came out. How one is read is in `load-test`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct JobLoadTest {
    /// Label of the pile.
    #[validate(nested)]
    pub pile: Label,
    /// Direction of the test load.
    pub direction: LoadTestDirection,
    /// What came out.
    pub result: JobTestResult,
    /// Report of the test, 1 to 200 characters; echoed, never interpreted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub reference: Option<String>,
}

/// What came out of a load test.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum JobTestResult {
    /// It carried what it was asked for.
    Passed,
    /// It did not.
    Failed,
}
