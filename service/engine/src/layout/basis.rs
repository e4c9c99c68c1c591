//! The design basis of `pile-layout`: published load combinations or the caller's own.
//! Types only; the factors of the published sets are in `published`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::request::LoadKind;
use crate::choice::validate_choice;
use crate::text::Label;

/// Format of the safety margin.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum LayoutBasis {
    /// Service loads against allowable capacities.
    AllowableStress(AllowableStressLoads),
    /// Factored loads against factored resistances.
    LimitStates(LimitStatesLoads),
}

validate_choice!(LayoutBasis {
    AllowableStress = "allowable_stress", LimitStates = "limit_states"
});

/// Combinations of service loads.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct AllowableStressLoads {
    /// A published set or the caller's own.
    #[validate(nested)]
    pub combinations: AllowableStressCombinations,
}

/// Combinations of factored loads.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LimitStatesLoads {
    /// A published set or the caller's own.
    #[validate(nested)]
    pub combinations: LimitStatesCombinations,
}

/// Where the combinations of service loads come from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum AllowableStressCombinations {
    /// As published.
    Published(AllowableStressSet),
    /// The caller's own.
    Own(OwnCombinations),
}

validate_choice!(AllowableStressCombinations { Published = "published", Own = "own" });

/// Where the combinations of factored loads come from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum LimitStatesCombinations {
    /// As published.
    Published(LimitStatesSet),
    /// The caller's own.
    Own(OwnCombinations),
}

validate_choice!(LimitStatesCombinations { Published = "published", Own = "own" });

/// A published set of combinations of service loads.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct AllowableStressSet {
    /// Standard and edition.
    pub edition: AllowableStressEdition,
}

/// A published set of combinations of factored loads.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LimitStatesSet {
    /// Standard and edition.
    pub edition: LimitStatesEdition,
}

/// Editions with combinations of service loads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum AllowableStressEdition {
    /// ASCE 7-16, section 2.4.
    #[serde(rename = "asce_7_16")]
    Asce716,
    /// ASCE 7-22, section 2.4 (snow at strength level; factors from memory, the answer
    /// warns).
    #[serde(rename = "asce_7_22")]
    Asce722,
}

/// Editions with combinations of factored loads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum LimitStatesEdition {
    /// ASCE 7-16, section 2.3.
    #[serde(rename = "asce_7_16")]
    Asce716,
    /// ASCE 7-22, section 2.3 (snow at strength level; factors from memory, the answer
    /// warns).
    #[serde(rename = "asce_7_22")]
    Asce722,
    /// National Building Code of Canada 2020, table 4.1.3.2.-A (from memory, the answer
    /// warns).
    #[serde(rename = "nbc_2020")]
    Nbc2020,
}

/// The caller's own combinations.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnCombinations {
    /// The combinations; 1 to 64.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 64))]
    pub list: Vec<OwnCombination>,
}

/// A combination of loads.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnCombination {
    /// Its name, such as `1.25D+1.5S+1.0L`; no two alike.
    #[validate(nested)]
    pub name: Label,
    /// A factor for each kind of load that takes part; 1 to 64.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 64))]
    pub factors: Vec<OwnFactor>,
}

/// A factor on the loads of one kind.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnFactor {
    /// Kind of load.
    pub kind: LoadKind,
    /// One case of that kind. Left out where the kind has cases, the combination is
    /// formed once with each of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub case: Option<Label>,
    /// The factor; -10 to 10.
    #[validate(range(min = -10.0, max = 10.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = -10.0, maximum = 10.0))]
    pub factor: f64,
}
