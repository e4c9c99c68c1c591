//! What a drawing or a table says of a layer beside its strength: its kind and its unit
//! weights. What a layer carries is in `strata.rs`.

#[cfg(feature = "compute")]
use super::profile::Layer;
use super::profile::Soil;
#[cfg(feature = "compute")]
use crate::quantity::UnitWeight;
#[cfg(feature = "compute")]
use crate::trace::Trace;

/// Kinds of ground, as a drawing tells them apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum SoilKind {
    /// Clay.
    Clay,
    /// Silt.
    Silt,
    /// Sand.
    Sand,
    /// Gravel.
    Gravel,
    /// Fill without credit.
    Fill,
    /// Fill that was placed and tested, with a strength.
    EngineeredFill,
    /// Peat or organic soil.
    Organic,
    /// Rock.
    Rock,
    /// Frozen soil.
    Frozen,
}

impl SoilKind {
    /// Every kind.
    pub const ALL: [SoilKind; 9] = [
        SoilKind::Clay,
        SoilKind::Silt,
        SoilKind::Sand,
        SoilKind::Gravel,
        SoilKind::Fill,
        SoilKind::EngineeredFill,
        SoilKind::Organic,
        SoilKind::Rock,
        SoilKind::Frozen,
    ];

    /// How it is called in a sentence.
    pub const fn told(self) -> &'static str {
        match self {
            SoilKind::Clay => "clay",
            SoilKind::Silt => "silt",
            SoilKind::Sand => "sand",
            SoilKind::Gravel => "gravel",
            SoilKind::Fill => "fill",
            SoilKind::EngineeredFill => "engineered fill",
            SoilKind::Organic => "organic soil",
            SoilKind::Rock => "rock",
            SoilKind::Frozen => "frozen soil",
        }
    }
}

impl Soil {
    /// Its kind.
    pub fn kind(&self) -> SoilKind {
        match self {
            Soil::Clay(_) => SoilKind::Clay,
            Soil::Silt(_) => SoilKind::Silt,
            Soil::Sand(_) => SoilKind::Sand,
            Soil::Gravel(_) => SoilKind::Gravel,
            Soil::Fill(fill) if fill.engineered.is_some() => SoilKind::EngineeredFill,
            Soil::Fill(_) => SoilKind::Fill,
            Soil::Organic(_) => SoilKind::Organic,
            Soil::Rock(_) => SoilKind::Rock,
            Soil::Frozen(_) => SoilKind::Frozen,
        }
    }
}

#[cfg(feature = "compute")]
impl Layer {
    /// Unit weight above water and, where it is another one, below; for show only. `water` is
    /// the unit weight of water in force.
    pub fn shown_weights(&self, water: UnitWeight) -> (UnitWeight, Option<UnitWeight>) {
        let off = &mut Trace::off();
        let moist = self.moist(off).unwrap_or(UnitWeight::ZERO);
        let wet = self.saturated(water, off);
        (moist, wet.filter(|wet| *wet != moist))
    }
}
