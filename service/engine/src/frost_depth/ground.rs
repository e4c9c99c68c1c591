//! The layers of a request with their thermal properties, and the same ground as slabs for the
//! methods: neighbours of one kind are one slab.

use super::constants::{
    CONCRETE_CONDUCTIVITY, CONCRETE_HEAT_CAPACITY, GRAIN_DENSITY_RATIO, LATENT_BTU_PER_LB,
    SOLIDS_0_17, SOLIDS_0_20, WATER,
};
use super::kersten::{
    coarse_frozen, coarse_unfrozen, fine_frozen, fine_unfrozen, heat_capacity, latent_heat,
    saturation_water,
};
use super::layer_request::{
    FreezingConcrete, FreezingLayer, FreezingMaterial, FreezingSoil, InsulationBoard, SoilTexture,
};
use super::request::SolidsHeat;
use crate::contract::Work;
use crate::quantity::{HeatCapacity, LatentHeat, Length, ThermalConductivity};
use crate::source::{
    BOARD_HEAT_CAPACITY, CALLER, DRY_CONCRETE_THERMAL, KERSTEN_1949, Reference, Sourced,
};
use crate::text::Label;
use crate::trace::Trace;

/// Ground of one kind between two depths, base SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slab {
    /// Depth of its top, m.
    pub top: f64,
    /// Its thickness, m; infinite for the last.
    pub thickness: f64,
    /// Conductivity frozen, W/m K.
    pub frozen_conductivity: f64,
    /// Conductivity, mean of frozen and unfrozen, W/m K.
    pub conductivity: f64,
    /// Heat capacity, J/m3 K.
    pub capacity: f64,
    /// Latent heat, J/m3.
    pub latent: f64,
}

impl Slab {
    fn of_one_kind(&self, other: &Self) -> bool {
        self.frozen_conductivity == other.frozen_conductivity
            && self.conductivity == other.conductivity
            && self.capacity == other.capacity
            && self.latent == other.latent
    }
}

/// A layer with its thermal properties.
#[derive(Debug, Clone)]
pub struct Layer {
    /// Its label, or its number from the top.
    pub label: String,
    /// Depth of its top, m.
    pub top: f64,
    /// Its thickness, m; infinite for the last.
    pub thickness: f64,
    /// Its thermal properties.
    pub thermal: Thermal,
}

/// Thermal properties of a layer and where they come from.
#[derive(Debug, Clone)]
pub struct Thermal {
    /// Conductivity frozen.
    pub frozen: ThermalConductivity,
    /// Conductivity unfrozen.
    pub unfrozen: ThermalConductivity,
    /// Heat capacity.
    pub capacity: HeatCapacity,
    /// Latent heat.
    pub latent: LatentHeat,
    /// Water that saturates it.
    pub saturation: Option<f64>,
    /// Where they come from.
    pub source: &'static Reference,
    /// The caller's own reference.
    pub reference: Option<Label>,
}

impl Thermal {
    fn dry(
        conductivity: ThermalConductivity,
        capacity: HeatCapacity,
        source: &'static Reference,
    ) -> Self {
        Self {
            frozen: conductivity,
            unfrozen: conductivity,
            capacity,
            latent: LatentHeat::ZERO,
            saturation: None,
            source,
            reference: None,
        }
    }

    /// Mean conductivity.
    pub fn mean(&self) -> ThermalConductivity {
        (self.frozen + self.unfrozen) * 0.5
    }
}

/// Whether a layer holds water that freezes.
pub fn holds_water(layer: &FreezingLayer) -> bool {
    match &layer.material {
        FreezingMaterial::Soil(soil) => soil.water_content_ratio > 0.0,
        FreezingMaterial::Given(given) => given.latent_heat > LatentHeat::ZERO,
        FreezingMaterial::Concrete(_)
        | FreezingMaterial::Insulation(_)
        | FreezingMaterial::Snow(_) => false,
    }
}

/// Name of a layer: its label, or its number from the top.
pub fn name(layer: &FreezingLayer, index: usize) -> String {
    match &layer.label {
        Some(label) => label.0.clone(),
        None => (index + 1).to_string(),
    }
}

/// The layers with their properties, from the top. They have no faults.
pub fn layers(sent: &[FreezingLayer], solids: Option<SolidsHeat>, work: &mut Work) -> Vec<Layer> {
    let mut top = 0.0;
    let mut layers = Vec::with_capacity(sent.len());
    for (index, layer) in sent.iter().enumerate() {
        let label = name(layer, index);
        work.trace.about(|| format!("layer {label}"));
        let thickness = layer.thickness.map_or(f64::INFINITY, Length::si);
        let thermal = thermal(layer, solids, work);
        layers.push(Layer {
            label,
            top,
            thickness,
            thermal,
        });
        top += thickness;
    }
    work.trace.about(String::new);
    layers
}

fn thermal(layer: &FreezingLayer, solids: Option<SolidsHeat>, work: &mut Work) -> Thermal {
    match &layer.material {
        FreezingMaterial::Soil(soil) => of_soil(soil, solids, work),
        FreezingMaterial::Given(given) => Thermal {
            frozen: given.frozen_conductivity,
            unfrozen: given.unfrozen_conductivity,
            capacity: given.heat_capacity,
            latent: given.latent_heat,
            saturation: None,
            source: &CALLER,
            reference: Some(given.reference.clone()),
        },
        FreezingMaterial::Concrete(concrete) => of_concrete(concrete, work),
        FreezingMaterial::Insulation(board) => Thermal::dry(
            conductivity_of(board, layer.thickness.unwrap_or(Length::ZERO)),
            HeatCapacity::ZERO,
            &BOARD_HEAT_CAPACITY,
        ),
        FreezingMaterial::Snow(snow) => Thermal {
            reference: Some(snow.reference.clone()),
            ..Thermal::dry(snow.conductivity, snow.heat_capacity, &CALLER)
        },
    }
}

fn of_soil(soil: &FreezingSoil, solids: Option<SolidsHeat>, work: &mut Work) -> Thermal {
    let solids: &'static Sourced<f64> = match solids {
        None => {
            work.take(&SOLIDS_0_17);
            &SOLIDS_0_17
        }
        Some(SolidsHeat::C017) => &SOLIDS_0_17,
        Some(SolidsHeat::C020) => &SOLIDS_0_20,
    };
    let grains = match soil.grain_density_ratio {
        Some(own) => own,
        None => work.take(&GRAIN_DENSITY_RATIO),
    };
    let (dry, water) = (soil.dry_unit_weight, soil.water_content_ratio);
    let trace = &mut work.trace;
    let (frozen, unfrozen) = conductivities(soil, trace);
    Thermal {
        frozen,
        unfrozen,
        capacity: heat_capacity(dry, solids.value, water, solids.reference, trace),
        latent: latent_heat(dry, water, LATENT_BTU_PER_LB.value, trace),
        saturation: Some(saturation_water(dry, WATER, grains, trace)),
        source: &KERSTEN_1949,
        reference: None,
    }
}

fn conductivities(
    soil: &FreezingSoil,
    trace: &mut Trace,
) -> (ThermalConductivity, ThermalConductivity) {
    let (dry, water) = (soil.dry_unit_weight, soil.water_content_ratio);
    match soil.texture {
        SoilTexture::Fine => (
            fine_frozen(dry, water, trace),
            fine_unfrozen(dry, water, trace),
        ),
        SoilTexture::Coarse => (
            coarse_frozen(dry, water, trace),
            coarse_unfrozen(dry, water, trace),
        ),
    }
}

/// Water that saturates a soil.
pub fn saturation_of(soil: &FreezingSoil) -> f64 {
    let grains = soil
        .grain_density_ratio
        .unwrap_or(GRAIN_DENSITY_RATIO.value);
    saturation_water(soil.dry_unit_weight, WATER, grains, &mut Trace::off())
}

fn of_concrete(concrete: &FreezingConcrete, work: &mut Work) -> Thermal {
    let source = match (concrete.conductivity, concrete.heat_capacity) {
        (Some(_), Some(_)) => &CALLER,
        _ => &DRY_CONCRETE_THERMAL,
    };
    let conductivity = concrete
        .conductivity
        .unwrap_or_else(|| work.take(&CONCRETE_CONDUCTIVITY));
    let capacity = concrete
        .heat_capacity
        .unwrap_or_else(|| work.take(&CONCRETE_HEAT_CAPACITY));
    Thermal::dry(conductivity, capacity, source)
}

fn conductivity_of(board: &InsulationBoard, thickness: Length) -> ThermalConductivity {
    match (board.conductivity, board.resistance) {
        (Some(conductivity), _) => conductivity,
        (None, Some(resistance)) => ThermalConductivity::from_si(thickness.si() / resistance.si()),
        (None, None) => ThermalConductivity::ZERO,
    }
}

/// The same ground for the methods.
pub fn slabs(layers: &[Layer]) -> Vec<Slab> {
    let each = layers.iter().map(|layer| Slab {
        top: layer.top,
        thickness: layer.thickness,
        frozen_conductivity: layer.thermal.frozen.si(),
        conductivity: layer.thermal.mean().si(),
        capacity: layer.thermal.capacity.si(),
        latent: layer.thermal.latent.si(),
    });
    joined(each)
}

/// Neighbours of one kind made one, with their tops put in order.
pub fn joined(slabs: impl Iterator<Item = Slab>) -> Vec<Slab> {
    let mut all: Vec<Slab> = Vec::new();
    let mut top = 0.0;
    for slab in slabs {
        match all.last_mut() {
            Some(last) if last.of_one_kind(&slab) => last.thickness += slab.thickness,
            _ => all.push(Slab { top, ..slab }),
        }
        top += slab.thickness;
    }
    all
}

/// The ground with a board laid on a depth.
pub fn with_board(slabs: &[Slab], depth: f64, conductivity: f64, thickness: f64) -> Vec<Slab> {
    let board = Slab {
        top: depth,
        thickness,
        frozen_conductivity: conductivity,
        conductivity,
        capacity: 0.0,
        latent: 0.0,
    };
    let above = slabs.iter().filter(|s| s.top < depth).map(|s| Slab {
        thickness: s.thickness.min(depth - s.top),
        ..*s
    });
    let below = slabs
        .iter()
        .filter(|s| s.top + s.thickness > depth)
        .map(|s| Slab {
            thickness: s.thickness - (depth - s.top).max(0.0),
            ..*s
        });
    joined(above.chain([board]).chain(below))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_board_is_laid_into_a_slab() {
        let soil = |top, thickness, latent| Slab {
            top,
            thickness,
            frozen_conductivity: 2.0,
            conductivity: 1.5,
            capacity: 2e6,
            latent,
        };
        let ground = [soil(0.0, 1.0, 5e7), soil(1.0, f64::INFINITY, 9e7)];
        let on = |depth| {
            let laid = with_board(&ground, depth, 0.03, 0.1);
            let each = laid.iter().map(|s| (s.top, s.thickness, s.latent));
            each.collect::<Vec<_>>()
        };
        let end = f64::INFINITY;
        assert_eq!(on(0.0), [(0.0, 0.1, 0.0), (0.1, 1.0, 5e7), (1.1, end, 9e7)]);
        assert_eq!(on(1.0), [(0.0, 1.0, 5e7), (1.0, 0.1, 0.0), (1.1, end, 9e7)]);
        assert_eq!(
            on(0.25),
            [
                (0.0, 0.25, 5e7),
                (0.25, 0.1, 0.0),
                (0.35, 0.75, 5e7),
                (1.1, end, 9e7)
            ]
        );
    }

    #[test]
    fn neighbours_of_one_kind_are_one() {
        let soil = |thickness| Slab {
            top: 0.0,
            thickness,
            frozen_conductivity: 2.0,
            conductivity: 1.5,
            capacity: 2e6,
            latent: 9e7,
        };
        let one = joined([soil(0.3), soil(0.6), soil(f64::INFINITY)].into_iter());
        assert_eq!(one, [soil(f64::INFINITY)]);
    }
}
