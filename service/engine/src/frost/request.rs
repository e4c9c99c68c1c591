//! What is asked: the ground's depths, the pile, and how embedment is judged. Beam,
//! uplift by frost and by swelling, tension path and void form have their own files.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::beam_request::FrostBeam;
use super::path_request::{PileWeight, TensionPath};
use super::swell_request::SwellUplift;
use super::uplift_request::FrostUplift;
use super::void_request::FrostVoidForm;
use crate::drag_force::DragAsked;
use crate::frost_depth;
use crate::helix::HelixPile;
use crate::quantity::{Length, LengthUnit};

/// One pile in ground that moves: is it deep enough, does frost or swelling soil pull it
/// out, and does the void form under the beam leave room for heave.
///
/// The frost depth is the caller's and is never inferred from a place. All depths count
/// down from final grade. Embedment is always judged; uplift by adfreeze, uplift by swelling
/// soil and the void form are judged where `uplift`, `swelling` and `void_form` are sent.
/// Where the ground freezes and the data for uplift by frost are missing the verdict is at best
/// `provisional`.
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
    /// Depth to the base of soil that collapses when it is wetted, below final grade; 0 to
    /// 30 m. Left out, there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub collapse_depth: Option<Length>,
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
    /// Uplift by swelling soil that grips the shaft, over the active depth. Judged by itself:
    /// it is not added to the uplift by frost unless the caller says that both can peak
    /// together.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub swelling: Option<SwellUplift>,
    /// The pile's own weight, which holds it down beside the dead load. Left out, it is not
    /// counted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub pile_weight: Option<PileWeight>,
    /// What coupling, head and the anchor into the beam carry in tension. Left out, the
    /// tension they must carry is answered and not judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tension_path: Option<TensionPath>,
    /// Drag of settling ground on the shaft: fill, soil that collapses, a water table drawn
    /// down. A check of the steel only, added to no other demand.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub downdrag: Option<DragAsked>,
    /// The void form under the beam; refused without the predicted heave.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub void_form: Option<FrostVoidForm>,
}

/// How deep the ground freezes, and from which surface.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
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
    /// A second opinion: the frost depth computed from a freezing index, from the same
    /// surface; a request of `frost-depth`. Insulation asked for there is information and
    /// never makes the depth used here shallower.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub computed: Option<frost_depth::Request>,
    /// Which depth is used where a computed one is asked for; `deeper_of_both` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub design_by: Option<FrostDesignBy>,
}

/// Which frost depth is used. A computed one never makes it shallower than the official one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FrostDesignBy {
    /// The deeper of the jurisdiction's and the computed one.
    DeeperOfBoth,
    /// The jurisdiction's, even where the computed one is deeper; the answer warns then.
    Official,
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
    /// What the pile is for, which decides how many diameters the top helix must be deep: 12
    /// where tension capacity is taken from torque, else `diameters_factor`. When left out:
    /// by `tension_by_torque` and by how the tension resistances sent were found.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub purpose: Option<PilePurpose>,
    /// Whether tension capacity will be taken from installation torque, which asks for 12
    /// diameters; `false` when left out. Holds by itself where `uplift` or `swelling` gives a
    /// tension resistance by torque. `true` beside another `purpose` is refused.
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
    /// Depth of the top helix below the base of soil that collapses; 0 to 10 m, 0 when left
    /// out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(10.0, LengthUnit::M)))]
    pub collapse_margin: Option<Length>,
}

/// What a pile is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PilePurpose {
    /// It carries compression; no load pulls on it beside the moving ground.
    CompressionOnly,
    /// It carries tension by an analysis of the ground or a load test.
    TensionByAnalysis,
    /// It carries tension by installation torque.
    TensionByTorque,
}
