//! What is asked about a reinforced section: concrete, bars, stirrups and the code it is
//! judged by. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::quantity::{
    AreaUnit, LengthUnit, Moment, MomentUnit, Size, SteelArea, SteelStress, StressUnit, UnitWeight,
    UnitWeightUnit,
};

const WIDTH_MIN: Size = Size::new(100.0, LengthUnit::Mm);
const WIDTH_MAX: Size = Size::new(2_000.0, LengthUnit::Mm);
const DEPTH_MIN: Size = Size::new(150.0, LengthUnit::Mm);
const DEPTH_MAX: Size = Size::new(3_000.0, LengthUnit::Mm);
const AREA_MIN: SteelArea = SteelArea::new(10.0, AreaUnit::Mm2);
const AREA_MAX: SteelArea = SteelArea::new(100_000.0, AreaUnit::Mm2);
const CONCRETE_MIN: SteelStress = SteelStress::new(10.0, StressUnit::MPa);
const CONCRETE_MAX: SteelStress = SteelStress::new(100.0, StressUnit::MPa);
const YIELD_MIN: SteelStress = SteelStress::new(200.0, StressUnit::MPa);
const YIELD_MAX: SteelStress = SteelStress::new(700.0, StressUnit::MPa);
const COVER_MIN: Size = Size::new(10.0, LengthUnit::Mm);
const COVER_MAX: Size = Size::new(300.0, LengthUnit::Mm);
const BAR_MIN: Size = Size::new(5.0, LengthUnit::Mm);
const BAR_MAX: Size = Size::new(60.0, LengthUnit::Mm);
const SPACING_MIN: Size = Size::new(25.0, LengthUnit::Mm);
const SPACING_MAX: Size = Size::new(2_000.0, LengthUnit::Mm);
const WEIGHT_MIN: UnitWeight = UnitWeight::new(14.1, UnitWeightUnit::KNPerM3);
const WEIGHT_MAX: UnitWeight = UnitWeight::new(25.2, UnitWeightUnit::KNPerM3);
const MOMENT_MIN: Moment = Moment::new(0.001, MomentUnit::KNM);
const MOMENT_MAX: Moment = Moment::new(1e6, MomentUnit::KNM);

/// A rectangular section of reinforced concrete. Bars in compression are not counted.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ReinforcedRectangle {
    /// Code by which it is judged.
    pub code: ConcreteCode,
    /// Width; 100 to 2,000 mm.
    #[validate(range(min = WIDTH_MIN, max = WIDTH_MAX))]
    pub width: Size,
    /// Overall depth; 150 to 3,000 mm.
    #[validate(range(min = DEPTH_MIN, max = DEPTH_MAX))]
    pub depth: Size,
    /// Bars at the bottom, in tension between piles.
    #[validate(nested)]
    pub bottom: BarLayer,
    /// Bars at the top, in tension over piles.
    #[validate(nested)]
    pub top: BarLayer,
    /// Specified compressive strength of the concrete; 10 to 100 MPa, within the range of the
    /// code (ACI 318-19: 2,500 to 10,000 psi; CSA A23.3:19: 20 to 60 MPa).
    #[validate(range(min = CONCRETE_MIN, max = CONCRETE_MAX))]
    pub concrete_strength: SteelStress,
    /// Specified yield strength of the bars; 200 to 700 MPa, within the range of the code
    /// (ACI 318-19: up to 80 ksi; CSA A23.3:19 with its simplified shear: up to 400 MPa).
    #[validate(range(min = YIELD_MIN, max = YIELD_MAX))]
    pub steel_yield: SteelStress,
    /// Stirrups; without them only the concrete takes shear.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub stirrups: Option<BeamStirrups>,
    /// Factor for lightweight concrete; 0.75 to 1, 1 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.75, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.75, maximum = 1.0))]
    pub lightweight_factor: Option<f64>,
    /// Unit weight of the concrete; 14.1 to 25.2 kN/m3. Left out, the modulus of elasticity is
    /// that of normal-weight concrete; lightweight concrete, and by CSA A23.3 concrete above 40
    /// MPa, needs it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = WEIGHT_MIN, max = WEIGHT_MAX))]
    pub concrete_unit_weight: Option<UnitWeight>,
    /// Largest size of the aggregate; 5 to 60 mm, 20 mm when left out. Only CSA A23.3 uses it,
    /// for shear without stirrups.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = BAR_MIN, max = BAR_MAX))]
    pub aggregate_size: Option<Size>,
    /// Which flexural rigidity the analysis takes where `flexural_rigidity` is not sent;
    /// `cracked` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub rigidity: Option<SectionRigidity>,
}

/// Codes for concrete. Neither text was seen; the answer warns.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum ConcreteCode {
    /// ACI 318-19, in its inch-pound equations.
    #[serde(rename = "aci_318_19")]
    Aci31819,
    /// CSA A23.3:19, with the simplified method for shear.
    #[serde(rename = "csa_a23_3_19")]
    CsaA23319,
}

/// Bars of one face.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BarLayer {
    /// Area of all bars of this face; 10 to 100,000 mm2.
    #[validate(range(min = AREA_MIN, max = AREA_MAX))]
    pub area: SteelArea,
    /// Where the bars are.
    #[validate(nested)]
    pub place: BarPlace,
}

/// Where bars are in the section.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum BarPlace {
    /// By their effective depth.
    EffectiveDepth(BarEffectiveDepth),
    /// In one layer, by the cover outside the stirrups.
    Cover(BarCover),
}

validate_choice!(BarPlace { EffectiveDepth = "effective_depth", Cover = "cover" });

/// Bars by their effective depth.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BarEffectiveDepth {
    /// From the face in compression to the centre of the bars; between half of the overall
    /// depth and all of it.
    #[validate(range(min = COVER_MIN, max = DEPTH_MAX))]
    pub depth: Size,
}

/// Bars in one layer by their cover.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BarCover {
    /// Clear cover of the outermost steel, stirrups included; 10 to 300 mm.
    #[validate(range(min = COVER_MIN, max = COVER_MAX))]
    pub cover: Size,
    /// Diameter of the bars; 5 to 60 mm.
    #[validate(range(min = BAR_MIN, max = BAR_MAX))]
    pub bar_diameter: Size,
    /// Diameter of the stirrups between cover and bars; none when left out. 5 to 60 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = BAR_MIN, max = BAR_MAX))]
    pub stirrup_diameter: Option<Size>,
    /// What this face meets; the cover is judged where it is sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub exposure: Option<CoverExposure>,
}

/// What a face of the concrete meets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CoverExposure {
    /// Cast against the ground and always in contact with it.
    CastAgainstGround,
    /// Formed (a void form is a form), exposed to ground or weather.
    Formed,
}

/// Vertical stirrups.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BeamStirrups {
    /// Area of all legs of one stirrup; 10 to 100,000 mm2.
    #[validate(range(min = AREA_MIN, max = AREA_MAX))]
    pub area: SteelArea,
    /// Distance along the beam; 25 to 2,000 mm.
    #[validate(range(min = SPACING_MIN, max = SPACING_MAX))]
    pub spacing: Size,
    /// Specified yield strength; 200 to 700 MPa, within the range of the code (ACI 318-19: up to
    /// 60 ksi or 420 MPa; CSA A23.3:19: up to 500 MPa).
    #[validate(range(min = YIELD_MIN, max = YIELD_MAX))]
    pub steel_yield: SteelStress,
}

/// Which flexural rigidity of a section is taken along the whole beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SectionRigidity {
    /// Fully cracked: the lesser of the two faces, a lower bound of what the beam has.
    Cracked(CrackedRigidity),
    /// Uncracked, bars left out.
    Gross(GrossRigidity),
    /// Between the two, by a service moment: ACI 318-19 after Bischoff, CSA A23.3:19 after
    /// Branson.
    Effective(EffectiveRigidity),
}

validate_choice!(SectionRigidity { Cracked = "cracked", Gross = "gross", Effective = "effective" });

/// The cracked section.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CrackedRigidity {}

/// The uncracked section.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GrossRigidity {}

/// The section as it is cracked by a moment.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct EffectiveRigidity {
    /// Greatest moment that the beam has had in service; 0.001 to 1,000,000 kN m.
    #[validate(range(min = MOMENT_MIN, max = MOMENT_MAX))]
    pub service_moment: Moment,
}
