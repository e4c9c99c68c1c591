//! A witness that writes a solution down with names and parts, as the answer carries it.

use super::bearing::SoilBearing;
use super::cylinder::GapPart;
use super::ground::{Disc, Ground};
use super::outcome::{CylinderGap, CylinderPart, HelixBearing, PunchingLimit, ZoneBearing};
use super::plates::Plate;
use super::solve::{Borne, Witness};
use super::zone::ZonePart;
use crate::quantity::{Force, Length};
use crate::soil::Strength;
use crate::trace::Trace;

/// What was witnessed.
pub(crate) struct Record<'a> {
    ground: &'a Ground<'a>,
    plates: &'a [Plate<'a>],
    discs: &'a [Disc],
    zone: Vec<ZoneBearing>,
    /// Helices from the top down, with what was found of each.
    pub helices: Vec<(HelixBearing, Borne)>,
    /// Gaps of the cylinder from the top down.
    pub gaps: Vec<CylinderGap>,
}

impl<'a> Record<'a> {
    /// An empty record.
    pub fn new(ground: &'a Ground<'a>, plates: &'a [Plate<'a>], discs: &'a [Disc]) -> Self {
        Self {
            ground,
            plates,
            discs,
            zone: Vec::new(),
            helices: Vec::new(),
            gaps: Vec::new(),
        }
    }

    fn direction(&self) -> &'static str {
        self.ground.direction.name()
    }
}

impl Witness for Record<'_> {
    fn helix(&mut self, i: usize, trace: &mut Trace) {
        trace.about(|| format!("helix {} in {}", self.plates[i].label, self.direction()));
    }

    fn part(&mut self, i: usize, part: &ZonePart, trace: &mut Trace) {
        trace.about(|| {
            format!(
                "helix {} in {}, layer {}",
                self.plates[i].label,
                self.direction(),
                self.ground.strata.label(part.layer)
            )
        });
    }

    fn bears(&mut self, part: &ZonePart, found: &SoilBearing) {
        let layer = &self.ground.strata.layers[part.layer];
        self.zone.push(ZoneBearing {
            layer: layer.label.clone(),
            top: part.top,
            bottom: part.bottom,
            law: found.law,
            bearing_factor: found.factor,
            cohesion_bearing_factor: found.cohesion_factor,
            undrained_strength: match layer.strength {
                Strength::Undrained { su } => Some(su),
                _ => None,
            },
            bearing: found.stress,
        });
    }

    fn borne(&mut self, i: usize, borne: &Borne) {
        let (plate, disc) = (&self.plates[i], &self.discs[i]);
        let helix = HelixBearing {
            label: plate.label.clone(),
            tags: plate.tags.clone(),
            diameter: disc.diameter,
            depth: disc.depth,
            depth_ratio: disc.depth_ratio(),
            area: disc.area,
            effective_stress: borne.seat.stress,
            stress_limits: self.ground.stress_limits(disc),
            bearing: borne.bearing,
            resistance: borne.resistance,
            no_credit: borne.no_credit,
            punching: borne.punching.map(|p| PunchingLimit {
                layer: self.ground.strata.label(p.layer).to_owned(),
                distance: p.distance,
                spread_diameter: p.spread_diameter,
                layer_bearing: p.bearing,
                bearing_limit: p.limit,
            }),
            zone: std::mem::take(&mut self.zone),
        };
        self.helices.push((helix, *borne));
    }

    fn gap(&mut self, upper: usize, lower: usize, trace: &mut Trace) {
        let (above, below) = (&self.plates[upper], &self.plates[lower]);
        trace.about(|| {
            format!(
                "cylinder from helix {} to {} in {}",
                above.label,
                below.label,
                self.direction()
            )
        });
        let length: Length = below.depth - above.depth;
        self.gaps.push(CylinderGap {
            upper: above.label.clone(),
            lower: below.label.clone(),
            length,
            spacing_ratio: length.si() / below.diameter.si(),
            mean_diameter: (above.diameter + below.diameter) / 2.0,
            shear: Force::ZERO,
            parts: Vec::new(),
        });
    }

    fn shears(&mut self, part: &GapPart) {
        if let Some(gap) = self.gaps.last_mut() {
            gap.mean_diameter = part.mean_diameter;
            gap.shear = gap.shear + part.shear;
            gap.parts.push(CylinderPart {
                layer: self.ground.strata.label(part.layer).to_owned(),
                top: part.top,
                bottom: part.bottom,
                lateral_stress_ratio: part.lateral_stress_ratio,
                mean_shear_stress: part.mean_shear_stress,
                shear: part.shear,
            });
        }
    }

    fn adheres(&mut self, layer: usize, trace: &mut Trace) {
        trace.about(|| {
            format!(
                "shaft in {}, layer {}",
                self.direction(),
                self.ground.strata.label(layer)
            )
        });
    }

    fn whole(&mut self, what: &'static str, trace: &mut Trace) {
        trace.about(|| format!("{what} in {}", self.direction()));
    }
}
