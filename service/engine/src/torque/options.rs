//! Request types of the engineering choices: where the torque factor comes from, and
//! the design basis with its factors. The published numbers stand beside the equations.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::basis::{AxialLimitStates, ResistanceProof, UpliftClause};
use crate::choice::validate_choice;
use crate::quantity::{Force, ForceUnit, PerLengthUnit, TorqueFactor};
use crate::text::reference_text;

/// Where the torque factor (ultimate capacity over installation torque) comes from.
/// Published factors hold only for the shafts they were published for; others are refused.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum TorqueFactorChoice {
    /// Acceptance criteria AC358, listed shafts, looked up by dimension to within 0.5 mm: 10
    /// per ft for 1.5 and 1.75 in square; 9, 8, 7 per ft for 2.875, 3.0, 3.5 in round.
    ListedShaft(NoFactorOptions),
    /// Acceptance criteria AC358, other shafts: 22.285 d_eff^-0.9195 (in, per ft), d_eff the
    /// outside diameter or the diagonal between opposite corners; square 1.5 to 3.0 in, round
    /// 2.375 to 4.5 in. For a listed shaft the lower of this and the listed value is used.
    EffectiveDiameter(NoFactorOptions),
    /// Livneh and El Naggar (2008): 33 per m in compression, 24 per m in tension, from 19
    /// full-scale tests; slender solid square shafts, here 1.5 to 1.75 in.
    #[serde(rename = "livneh_2008")]
    Livneh2008(NoFactorOptions),
    /// Hoyt and Clemence (1989), from tension tests: 33 per m for square shafts (1.5 to 2.0
    /// in) and round ones below 89 mm, 23 per m for 89 mm, 9.8 per m for 219 mm. From memory:
    /// the answer warns.
    #[serde(rename = "hoyt_clemence_1989")]
    HoytClemence1989(NoFactorOptions),
    /// Perko (2009): 1433 d_eff^-0.92 (mm, per m), within the range of `effective_diameter`.
    /// From memory: the answer warns.
    #[serde(rename = "perko_2009")]
    Perko2009(NoFactorOptions),
    /// The caller's own, from load tests, with its reference. Any shaft.
    Own(OwnTorqueFactor),
    /// From load tests on this site, with the band they leave open: what `load-test` answers as
    /// `torque_factor`. Any shaft like that of the tests.
    SiteTests(SiteTestsTorqueFactor),
}

validate_choice!(TorqueFactorChoice {
    ListedShaft = "listed_shaft", EffectiveDiameter = "effective_diameter", Livneh2008 = "livneh_2008",
    HoytClemence1989 = "hoyt_clemence_1989", Perko2009 = "perko_2009", Own = "own",
    SiteTests = "site_tests"
});

/// Torque factor in tension where the published choice gives one for both directions
/// (`listed_shaft`, `effective_diameter`, `perko_2009`).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum TensionFactor {
    /// That of compression, as the acceptance criteria list it. The reduced one is shown beside
    /// it, and a verdict that hangs on the difference is `provisional`.
    SameAsCompression,
    /// That of compression times 24/33, the only published ratio seen (Livneh and El Naggar
    /// 2008). It is the factor used; nothing is held back for it.
    Reduced,
}

/// A choice without members of its own.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct NoFactorOptions {}

/// The caller's own torque factors. A direction without a factor is not answered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnTorqueFactor {
    /// Factor in compression; 1 to 150 per m (0.3 to 45.7 per ft).
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TorqueFactor::new(1.0, PerLengthUnit::PerM), max = TorqueFactor::new(150.0, PerLengthUnit::PerM)))]
    pub compression: Option<TorqueFactor>,
    /// Factor in tension; 1 to 150 per m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TorqueFactor::new(1.0, PerLengthUnit::PerM), max = TorqueFactor::new(150.0, PerLengthUnit::PerM)))]
    pub tension: Option<TorqueFactor>,
    /// The tests or the report the factors come from, 1 to 200 characters; echoed, never
    /// interpreted.
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub reference: String,
}

/// Torque factors from load tests on the site. A direction that was not tested has no factor
/// and is not answered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SiteTestsTorqueFactor {
    /// From the tests in compression.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub compression: Option<SiteFactorBand>,
    /// From the tests in tension.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tension: Option<SiteFactorBand>,
    /// How many piles were tested; 1 to 100. The answer tells it: one test is one place.
    #[validate(range(min = 1, max = 100))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 100))]
    pub test_count: u32,
    /// The tests or their report, 1 to 200 characters; echoed, never interpreted.
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub reference: String,
}

/// A torque factor of the site with its band; the names are those of `load-test`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SiteFactorBand {
    /// Factor to be used; 1 to 150 per m (0.3 to 45.7 per ft).
    #[validate(range(min = TorqueFactor::new(1.0, PerLengthUnit::PerM), max = TorqueFactor::new(150.0, PerLengthUnit::PerM)))]
    pub factor: TorqueFactor,
    /// Least factor the tests leave open, at most `factor`; 1 to 150 per m. A verdict that
    /// would turn between it and `factor_high` is `provisional`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TorqueFactor::new(1.0, PerLengthUnit::PerM), max = TorqueFactor::new(150.0, PerLengthUnit::PerM)))]
    pub factor_low: Option<TorqueFactor>,
    /// Greatest factor the tests leave open, at least `factor`; 1 to 150 per m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TorqueFactor::new(1.0, PerLengthUnit::PerM), max = TorqueFactor::new(150.0, PerLengthUnit::PerM)))]
    pub factor_high: Option<TorqueFactor>,
}

/// Format of the design and its factors. An allowable capacity is never compared with a
/// factored load, nor a factored resistance with a service load.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum TorqueBasis {
    /// Allowable-stress design: ultimate over a safety factor, against service loads.
    AllowableStress(TorqueAllowableStress),
    /// Limit-states design: ultimate times a resistance factor, against factored loads.
    LimitStates(AxialLimitStates),
}

validate_choice!(TorqueBasis { AllowableStress = "allowable_stress", LimitStates = "limit_states" });

/// Factors of allowable-stress design.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TorqueAllowableStress {
    /// Safety factor in compression; 1 to 10; 2 when left out (IBC 1810.3.3.1.9, Pa = 0.5
    /// Pu).
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 10.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10))]
    pub compression_safety_factor: Option<f64>,
    /// Safety factor in tension; 1 to 10. Left out, it follows from `uplift_clause` and
    /// `proof`; not together with `uplift_clause`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 10.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10))]
    pub tension_safety_factor: Option<f64>,
    /// Clause the safety factor in tension is taken from; `general` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uplift_clause: Option<UpliftClause>,
    /// What the ultimate capacity rests on; `analysis` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub proof: Option<ResistanceProof>,
    /// The other ultimate capacities in compression of which Pu is the least, beside the
    /// torque correlation (IBC 1810.3.3.1.9). What is left out is not considered, and the
    /// answer says what was.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub other_ultimates: Option<CompressionUltimates>,
}

/// Ultimate capacities in compression from elsewhere, each 0 to 20,000 kN.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CompressionUltimates {
    /// Sum of helix areas times ultimate bearing of the soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub soil_bearing: Option<Force>,
    /// From load tests.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub load_test: Option<Force>,
    /// Axial capacity of the shaft.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub shaft: Option<Force>,
    /// Axial capacity of the shaft couplings.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub couplings: Option<Force>,
    /// Sum of the axial capacities of the helix plates.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub helix_plates: Option<Force>,
}
