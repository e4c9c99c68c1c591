//! What is asked: the ground's depths, the pile, and how embedment is judged. Uplift
//! and void form have their own files.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::uplift_request::FrostUplift;
use super::void_request::FrostVoidForm;
use crate::choice::validate_choice;
use crate::helix::HelixPile;
use crate::quantity::{Length, LengthUnit, SoilStress, StressUnit};
use crate::text::Label;

/// One pile in ground that freezes: is it deep enough, does frost pull it out, and does
/// the void form under the beam leave room for heave.
///
/// The frost depth is the caller's and is never inferred from a place. All depths count
/// down from final grade. Embedment is always judged; uplift by adfreeze and the void
/// form are judged where `uplift` and `void_form` are sent. Without the data for uplift
/// the verdict is at best `provisional`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = FrostEmbedmentRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Shaft and helices.
    #[validate(nested)]
    pub pile: HelixPile,
    /// Depth of the pile's tip below final grade, at or below its deepest helix; 0.1 to
    /// 100 m. The depth of the deepest helix when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(100.0, LengthUnit::M)))]
    pub tip_depth: Option<Length>,
    /// Depth of the pile's head below final grade, negative where it stands above; -5 to
    /// 10 m, 0 when left out. Only the pile length counts from it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(-5.0, LengthUnit::M), max = Length::new(10.0, LengthUnit::M)))]
    pub head_depth: Option<Length>,
    /// How deep the ground freezes.
    #[validate(nested)]
    pub frost: FrostGround,
    /// Depth to the base of fill below final grade; 0 to 30 m. Left out, there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub fill_depth: Option<Length>,
    /// Depth to the base of the zone of seasonal swelling and shrinking below final grade;
    /// 0 to 30 m. Left out, there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub active_depth: Option<Length>,
    /// Margins and multiples of the embedment rules; each has a default.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub embedment: Option<EmbedmentRules>,
    /// The grade beam over the pile. Left out, nothing is known of it and the answer warns.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub beam: Option<FrostBeam>,
    /// Uplift by frozen ground that grips the shaft. Left out, it is not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub uplift: Option<FrostUplift>,
    /// The void form under the beam; refused without the predicted heave.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub void_form: Option<FrostVoidForm>,
}

/// How deep the ground freezes, and from which surface.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrostGround {
    /// Frost depth of the jurisdiction, from the surface that is exposed to the cold; 0 to
    /// 5 m. Never inferred from a place.
    #[validate(range(min = Length::ZERO, max = Length::new(5.0, LengthUnit::M)))]
    pub official_depth: Length,
    /// Depth below final grade of the surface that is exposed to the cold at the pile, such
    /// as the floor of an unheated crawl space that is dug out; 0 to 5 m, 0 when left out.
    /// Frost depth and diameters of embedment count from it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(5.0, LengthUnit::M)))]
    pub cold_surface_depth: Option<Length>,
}

impl FrostGround {
    /// Depth below final grade of the surface that is exposed to the cold.
    pub fn cold_surface(&self) -> Length {
        self.cold_surface_depth.unwrap_or(Length::ZERO)
    }
}

/// Margins and multiples of the embedment rules.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct EmbedmentRules {
    /// Depth of the top helix and of the tip below the base of frost; 0 to 3 m, 0.3 m when
    /// left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(3.0, LengthUnit::M)))]
    pub frost_margin: Option<Length>,
    /// Depth of the top helix below the ground, in diameters of the largest helix; 0 to 20,
    /// 5 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 20.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 20))]
    pub diameters_factor: Option<f64>,
    /// Whether tension capacity will be taken from installation torque, which asks for 12
    /// diameters; `false` when left out. Holds by itself where `uplift` gives a tension
    /// resistance by torque.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tension_by_torque: Option<bool>,
    /// Depth of the top helix below the base of fill; 0 to 10 m, 0 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(10.0, LengthUnit::M)))]
    pub fill_margin: Option<Length>,
    /// Depth of the top helix below the active zone; 0 to 10 m, 0 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(10.0, LengthUnit::M)))]
    pub active_margin: Option<Length>,
}

/// Where the grade beam is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FrostBeam {
    /// Clear of the ground: frost cannot grip it.
    AboveGround(BeamAboveGround),
    /// Its sides stand in soil.
    InSoil(BeamInSoil),
}

validate_choice!(FrostBeam { AboveGround = "above_ground", InSoil = "in_soil" });

/// A beam clear of the ground.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BeamAboveGround {}

/// A beam whose sides stand in soil.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BeamInSoil {
    /// Depth of the beam's underside below final grade; 0.01 to 5 m. The shaft is taken to
    /// touch soil from here down unless `contact_top_depth` says otherwise.
    #[validate(range(min = Length::new(0.01, LengthUnit::M), max = Length::new(5.0, LengthUnit::M)))]
    pub underside_depth: Length,
    /// Length of beam that this pile carries; 0.1 to 30 m.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(30.0, LengthUnit::M)))]
    pub tributary_length: Length,
    /// What is between the sides and the soil; `bonded` when left out, and the grip is then
    /// added to the uplift on the pile.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub sides: Option<BeamSides>,
    /// Sides that touch soil, 1 or 2; 2 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1, max = 2))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 2))]
    pub side_count: Option<u32>,
}

/// What is between the sides of a beam and the soil.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum BeamSides {
    /// Soil that can heave, in touch with the beam.
    Bonded(BondedSides),
    /// A layer that lets the frozen soil slide past; the caller stands for it.
    BondBreak(FreeSides),
    /// Drained backfill that does not heave, over the whole frozen depth; the caller stands
    /// for it.
    NonSusceptibleBackfill(FreeSides),
}

validate_choice!(BeamSides {
    Bonded = "bonded", BondBreak = "bond_break", NonSusceptibleBackfill = "non_susceptible_backfill"
});

/// Sides that frost grips.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BondedSides {
    /// Bond stress of frozen soil on the sides; 0 to 1,000 kPa, 65 kPa (fine soil on
    /// concrete or wood) when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub bond_stress: Option<SoilStress>,
}

/// Sides that frost cannot grip.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FreeSides {
    /// What this rests on, such as a detail of the plans.
    #[validate(nested)]
    pub reference: Label,
}
