//! Each helix bearing for itself: its stress, its zone, what the soils of the zone give
//! together, and whether weaker soil lies close.

use super::bearing::{Seat, SoilBearing, soil_bearing};
use super::codes::warnings;
use super::methods::BearingZoneRule;
use super::outcome::{HelixBearing, NoCreditReason, StressLimits, ZoneBearing};
use super::pile::AxialDirection;
use super::plates::{Plate, SAME_DEPTH_M, bearing_area};
use super::settings::{DENSE_LIMIT_RATIO, LOOSE_LIMIT_RATIO, Settings};
use super::zone::{ZonePart, credit_base, load_side, without_credit};
use crate::contract::{SubjectKind, Work};
use crate::quantity::{Area, Force, Length, SoilStress, UnitWeight};
use crate::shaft::Shaft;
use crate::soil::{Soil, SoilProfile};
use crate::source::{BEARING_ZONE, DERIVED, IBC_1810_3_3_1_9, Sourced, WEAK_LAYER_NEAR};
use crate::trace::Trace;

/// Share of the bearing below which a layer close by is called weak.
pub static WEAK_LAYER_SHARE: Sourced<f64> = Sourced::new("weak_layer_share", 0.6, &WEAK_LAYER_NEAR);
/// Reach of that look, helix diameters.
pub static WEAK_LAYER_REACH: Sourced<f64> = Sourced::new("weak_layer_reach", 3.0, &WEAK_LAYER_NEAR);

/// A pile in its ground, loaded in one direction.
pub(crate) struct Ground<'a> {
    pub profile: &'a SoilProfile,
    pub shaft: &'a Shaft,
    pub plates: &'a [Plate<'a>],
    pub direction: AxialDirection,
    pub settings: &'a Settings,
}

impl Ground<'_> {
    /// Embedment of a helix: depth below the lowest soil above it without credit.
    pub fn embedment(&self, plate: &Plate) -> Length {
        plate.depth - credit_base(self.profile, plate.depth, self.settings.no_credit_above)
    }

    /// Everything the laws of bearing need of a helix.
    fn seat(&self, plate: &Plate, trace: &mut Trace) -> Seat {
        let stress = trace.step(
            "s'_v",
            "sum of gamma dz, less water below the water table",
            self.profile.effective_stress(plate.depth),
            [("z", plate.depth.into())],
            &DERIVED,
        );
        let limited_stress = match self.settings.stress_limit_ratio() {
            Some(ratio) => stress.min(self.stress_at_ratio(plate, ratio)),
            None => stress,
        };
        let diameter = Length::from(plate.diameter);
        let below = self.profile.effective_stress(plate.depth + diameter);
        Seat {
            diameter: plate.diameter,
            depth_ratio: plate.depth_ratio(),
            embedment_ratio: self.embedment(plate).si() / plate.diameter.si(),
            stress,
            limited_stress,
            unit_weight: UnitWeight::from_si((below.si() - stress.si()) / diameter.si()),
        }
    }

    fn stress_at_ratio(&self, plate: &Plate, ratio: f64) -> SoilStress {
        self.profile
            .effective_stress(Length::from(plate.diameter) * ratio)
    }

    /// What limits on the effective stress would be, where they would bind.
    fn stress_limits(&self, plate: &Plate, zone: &[ZonePart]) -> Option<StressLimits> {
        let sand = |p: &ZonePart| matches!(self.profile.layers[p.layer].soil, Soil::Sand(_));
        if !zone.iter().any(sand) {
            return None;
        }
        let at =
            |ratio: f64| (plate.depth_ratio() > ratio).then(|| self.stress_at_ratio(plate, ratio));
        let limits = StressLimits {
            loose: at(LOOSE_LIMIT_RATIO),
            dense: at(DENSE_LIMIT_RATIO),
        };
        limits.loose.is_some().then_some(limits)
    }

    /// Why a helix is given no credit, if it is not.
    fn no_credit(&self, plate: &Plate, zone: &[ZonePart]) -> Option<NoCreditReason> {
        if plate.depth.si() <= self.settings.no_credit_above.si() + SAME_DEPTH_M
            && self.settings.no_credit_above.si() > 0.0
        {
            return Some(NoCreditReason::AboveCreditDepth);
        }
        let dead = |p: &ZonePart| without_credit(&self.profile.layers[p.layer].soil);
        // soil above the depth of credit counts nothing anyway, whatever it is
        let counted = |p: &&ZonePart| !p.above_credit;
        let touching = self
            .profile
            .layer_at(plate.depth, self.direction == AxialDirection::Compression)
            .is_some_and(|i| without_credit(&self.profile.layers[i].soil));
        (touching || zone.iter().filter(counted).any(dead)).then_some(NoCreditReason::FillOrOrganic)
    }

    /// One helix bearing for itself.
    pub fn helix(&self, plate: &Plate, work: &mut Work) -> HelixBearing {
        let s = self.settings;
        work.trace
            .about(|| format!("helix {} in {}", plate.label, self.direction.name()));
        let lowest = self.plates.last().is_some_and(|p| p.index == plate.index);
        let area = bearing_area(
            plate,
            lowest,
            self.shaft,
            self.direction,
            s.helix_area,
            &mut work.trace,
        );
        let seat = self.seat(plate, &mut work.trace);
        let parts = load_side(
            self.profile,
            plate,
            s.bearing_zone_ratio,
            self.direction,
            s.no_credit_above,
        );
        let no_credit = self.no_credit(plate, &parts);
        let zone: Vec<_> = parts
            .iter()
            .map(|part| self.part(part, plate, &seat, no_credit.is_some(), work))
            .collect();
        work.trace
            .about(|| format!("helix {} in {}", plate.label, self.direction.name()));
        let bearing = if no_credit.is_some() {
            SoilStress::ZERO
        } else {
            together(&zone, s.bearing_zone_rule, &mut work.trace)
        };
        match no_credit {
            Some(reason) => self.tell_no_credit(plate, reason, work),
            None => self.look_for_weak_layer(plate, &seat, bearing, work),
        }
        HelixBearing {
            label: plate.label.clone(),
            tags: plate.tags.clone(),
            diameter: plate.diameter,
            depth: plate.depth,
            depth_ratio: plate.depth_ratio(),
            area,
            effective_stress: seat.stress,
            stress_limits: self.stress_limits(plate, &parts),
            bearing,
            resistance: helix_resistance(area, bearing, &mut work.trace),
            no_credit,
            zone,
        }
    }

    fn part(
        &self,
        part: &ZonePart,
        plate: &Plate,
        seat: &Seat,
        dead: bool,
        work: &mut Work,
    ) -> ZoneBearing {
        let layer = &self.profile.layers[part.layer];
        let label = self.profile.label(part.layer);
        let found = if dead || part.above_credit {
            SoilBearing::NONE
        } else {
            work.trace.about(|| {
                let direction = self.direction.name();
                format!("helix {} in {direction}, layer {label}", plate.label)
            });
            soil_bearing(
                &layer.soil,
                seat,
                self.direction,
                self.settings,
                &mut work.trace,
            )
        };
        ZoneBearing {
            layer: label,
            top: part.top,
            bottom: part.bottom,
            law: found.law,
            bearing_factor: found.factor,
            undrained_strength: match &layer.soil {
                Soil::Clay(u) | Soil::Silt(u) => Some(u.undrained_strength),
                _ => None,
            },
            bearing: found.stress,
        }
    }

    fn tell_no_credit(&self, plate: &Plate, reason: NoCreditReason, work: &mut Work) {
        let direction = self.direction.name();
        let detail = match reason {
            NoCreditReason::FillOrOrganic => format!(
                "in {direction} helix {} bears in fill or organic soil, or its zone reaches it; it is given nothing",
                plate.label
            ),
            NoCreditReason::AboveCreditDepth => format!(
                "in {direction} helix {} is not below the depth from which soil is credited; it is given nothing",
                plate.label
            ),
        };
        work.warn_about(
            &warnings::HELIX_WITHOUT_CREDIT,
            SubjectKind::Helix,
            &plate.label,
            detail,
        );
    }

    /// Warns of soil within three diameters on the load side that is much weaker than what
    /// the helix bears on.
    fn look_for_weak_layer(
        &self,
        plate: &Plate,
        seat: &Seat,
        bearing: SoilStress,
        work: &mut Work,
    ) {
        let direction = self.direction.name();
        let reach = WEAK_LAYER_REACH.value;
        let wide = load_side(
            self.profile,
            plate,
            reach,
            self.direction,
            self.settings.no_credit_above,
        );
        let own = |part: &ZonePart| {
            let soil = &self.profile.layers[part.layer].soil;
            let mut off = Trace::off();
            soil_bearing(soil, seat, self.direction, self.settings, &mut off).stress
        };
        let counted: Vec<_> = wide.iter().filter(|p| !p.above_credit).collect();
        let nearest = match self.direction {
            AxialDirection::Compression => counted.first(),
            AxialDirection::Tension => counted.last(),
        };
        let reference = nearest.map_or(bearing, |p| own(p).max(bearing));
        for part in &counted {
            let q = own(part);
            let rock = matches!(self.profile.layers[part.layer].soil, Soil::Rock(_));
            if !rock && q.si() < WEAK_LAYER_SHARE.value * reference.si() * (1.0 - 1e-9) {
                work.warn_about(
                    &warnings::WEAK_LAYER_NEAR_HELIX,
                    SubjectKind::Helix,
                    &plate.label,
                    format!(
                        "in {direction} layer {} within {reach} diameters of helix {} bears {:.0} % of what the helix bears on",
                        self.profile.label(part.layer),
                        plate.label,
                        100.0 * q.si() / reference.si()
                    ),
                );
            }
        }
        let end = plate.depth.si() + reach * plate.diameter.si();
        if self.direction == AxialDirection::Compression
            && end > self.profile.depth().si() + SAME_DEPTH_M
        {
            work.warn_about(
                &warnings::PROFILE_ENDS_NEAR_HELIX,
                SubjectKind::Helix,
                &plate.label,
                format!(
                    "the profile ends within {reach} diameters below helix {}; whether weaker soil follows is not known",
                    plate.label
                ),
            );
        }
    }
}

/// Bearing of the soils of a zone taken together.
///
/// q = sum q_i h_i / sum h_i, or the least q_i; q_i bearing of each soil by its own law (Pa),
/// h_i height of its part of the zone (m). Range: at least one part; a zone of no height is
/// its one soil. Source: UFC 3-220-20, 6-5.4.3.2; depth of the zone by choice. Sign: none.
fn together(zone: &[ZoneBearing], rule: BearingZoneRule, trace: &mut Trace) -> SoilStress {
    match rule {
        BearingZoneRule::Weakest => {
            let counted = zone.iter().map(|p| p.bearing.si());
            let least = counted.fold(f64::INFINITY, f64::min);
            let least = if least.is_finite() { least } else { 0.0 };
            trace.step(
                "q_zone",
                "least q of the zone",
                SoilStress::from_si(least),
                [],
                &BEARING_ZONE,
            )
        }
        BearingZoneRule::ThicknessMean => {
            let (mut sum, mut height) = (0.0, 0.0);
            for part in zone {
                let h = part.bottom.si() - part.top.si();
                sum += part.bearing.si() * h;
                height += h;
            }
            let mean = match (zone, height > 0.0) {
                ([], _) => 0.0,
                ([only], _) | ([only, ..], false) => only.bearing.si(),
                (_, true) => sum / height,
            };
            trace.step(
                "q_zone",
                "sum of q h over the zone / height of the zone",
                SoilStress::from_si(mean),
                [("height", Length::from_si(height).into())],
                &BEARING_ZONE,
            )
        }
    }
}

/// Resistance of a helix.
///
/// Q = A q; A area that bears (m2), q bearing (Pa). Range: any. Source: IBC 1810.3.3.1.9 item
/// 1. Sign: against the load.
fn helix_resistance(area: Area, bearing: SoilStress, trace: &mut Trace) -> Force {
    trace.step(
        "Q",
        "A q_zone",
        Force::from_si(area.si() * bearing.si()),
        [("A", area.into()), ("q_zone", bearing.into())],
        &IBC_1810_3_3_1_9,
    )
}
