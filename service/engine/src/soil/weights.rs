//! Unit weights of a layer: as sent, or from the dry soil, its water and its grains; and
//! the faults they can have.

use super::codes::refusals;
use super::profile::{Layer, SoilProfile};
use crate::contract::Issue;
use crate::quantity::{UnitWeight, UnitWeightUnit};
use crate::source::{DERIVED, Sourced};
use crate::trace::Trace;

/// Unit weight of water, 9.81 kN/m3: 1000 kg/m3 x 9.81 m/s2.
pub static WATER_UNIT_WEIGHT: Sourced<UnitWeight> = Sourced::new(
    "water_unit_weight",
    UnitWeight::new(9.81, UnitWeightUnit::KNPerM3),
    &DERIVED,
);

impl SoilProfile {
    /// Unit weight of water in force.
    pub fn water(&self) -> UnitWeight {
        self.water_unit_weight.unwrap_or(WATER_UNIT_WEIGHT.value)
    }
}

impl Layer {
    /// Unit weight where the pore pressure is zero; none where it was not sent whole.
    pub(super) fn moist(&self, trace: &mut Trace) -> Option<UnitWeight> {
        match (
            self.unit_weight,
            self.dry_unit_weight,
            self.water_content_ratio,
        ) {
            (Some(weight), ..) => Some(weight),
            (None, Some(dry), Some(w)) => Some(moist_unit_weight(dry, w, trace)),
            _ => None,
        }
    }

    /// Unit weight where the pore pressure is above zero; none where it is not known.
    pub(super) fn saturated(&self, water: UnitWeight, trace: &mut Trace) -> Option<UnitWeight> {
        let of_grains = || Some((self.dry_unit_weight?, self.specific_gravity_ratio?));
        match (self.saturated_unit_weight, of_grains()) {
            (Some(weight), _) => Some(weight),
            (None, Some((dry, gs))) => Some(saturated_unit_weight(dry, gs, water, trace)),
            (None, None) => self.unit_weight,
        }
    }

    /// Faults of the unit weights; `here` is the pointer of the layer, `wet` whether there is
    /// water in it.
    pub(super) fn weight_faults(&self, water: UnitWeight, wet: bool, here: &str) -> Vec<Issue> {
        let mut issues = self.member_faults(here);
        if !issues.is_empty() {
            return issues;
        }
        issues.extend(self.grain_fault(water, here));
        let off = &mut Trace::off();
        let Some(moist) = self.moist(off) else {
            return issues;
        };
        if let Some(saturated) = self.saturated_unit_weight {
            issues.extend(saturated_faults(moist, saturated, water, here));
        }
        match self.saturated(water, off) {
            None if wet => issues.push(Issue::new(
                here,
                &refusals::SATURATED_WEIGHT_UNKNOWN,
                "there is water in the layer, and neither `saturated_unit_weight` nor `specific_gravity_ratio` is sent with `dry_unit_weight`",
            )),
            Some(saturated) if wet && saturated.si() <= water.si() => {
                let member = match (self.saturated_unit_weight, self.unit_weight) {
                    (Some(_), _) => "saturated_unit_weight",
                    (None, Some(_)) => "unit_weight",
                    (None, None) => "dry_unit_weight",
                };
                issues.push(Issue::new(
                    format!("{here}/{member}"),
                    &refusals::LAYER_LIGHTER_THAN_WATER,
                    format!(
                        "{} below the water table is not above {} of water",
                        told(saturated),
                        told(water)
                    ),
                ));
            }
            _ => {}
        }
        issues
    }

    /// Members that are missing or do not go together.
    fn member_faults(&self, here: &str) -> Vec<Issue> {
        let mut issues = Vec::new();
        let dry = self.dry_unit_weight.is_some();
        let moisture = self.water_content_ratio.is_some();
        let grains = self.specific_gravity_ratio.is_some();
        if self.unit_weight.is_some() == dry {
            let found = if dry { "both are" } else { "neither is" };
            issues.push(Issue::new(
                here,
                &refusals::UNIT_WEIGHT_NOT_ONE,
                format!("of `unit_weight` and `dry_unit_weight` {found} sent"),
            ));
        }
        if dry != moisture || (grains && !dry) {
            let text = match (dry, moisture) {
                (true, false) => "`dry_unit_weight` is sent without `water_content_ratio`",
                (false, true) => "`water_content_ratio` is sent without `dry_unit_weight`",
                _ => "`specific_gravity_ratio` is sent without `dry_unit_weight`",
            };
            issues.push(Issue::new(here, &refusals::DRY_WEIGHT_UNPAIRED, text));
        }
        if grains && self.saturated_unit_weight.is_some() {
            issues.push(Issue::new(
                format!("{here}/specific_gravity_ratio"),
                &refusals::SATURATED_WEIGHT_TWICE,
                "`saturated_unit_weight` is sent too",
            ));
        }
        issues
    }

    /// Dry soil that leaves no room for pores, or for the water in them.
    fn grain_fault(&self, water: UnitWeight, here: &str) -> Option<Issue> {
        let (dry, gs) = (self.dry_unit_weight?, self.specific_gravity_ratio?);
        let w = self.water_content_ratio?;
        let full = void_ratio(dry, gs, water) / gs;
        (full <= 0.0 || w > full * (1.0 + 1e-9)).then(|| {
            let detail = if full <= 0.0 {
                format!(
                    "{} is not below {} of the grains",
                    told(dry),
                    told(water * gs)
                )
            } else {
                format!("the pores are full at a water content of {full:.4}; {w} is sent")
            };
            Issue::new(
                format!("{here}/dry_unit_weight"),
                &refusals::DRY_WEIGHT_IMPOSSIBLE,
                detail,
            )
            .source(&DERIVED)
        })
    }
}

/// A saturated unit weight, as sent, beside the moist one.
fn saturated_faults(
    moist: UnitWeight,
    saturated: UnitWeight,
    water: UnitWeight,
    here: &str,
) -> Option<Issue> {
    let pointer = format!("{here}/saturated_unit_weight");
    if saturated.si() < moist.si() * (1.0 - 1e-9) {
        return Some(Issue::new(
            pointer,
            &refusals::LAYER_SATURATED_LIGHTER,
            format!("{} saturated, {} above water", told(saturated), told(moist)),
        ));
    }
    // water fills pores only: gamma_sat - gamma is at most the unit weight of water, so that
    // a deeper water table never lowers an effective stress
    (saturated.si() > (moist.si() + water.si()) * (1.0 + 1e-9)).then(|| {
        Issue::new(
            pointer,
            &refusals::LAYER_SATURATED_TOO_HEAVY,
            format!(
                "{} saturated is more than {} above water and {} of water",
                told(saturated),
                told(moist),
                told(water)
            ),
        )
    })
}

fn told(weight: UnitWeight) -> String {
    UnitWeight::ROLE.in_both_systems(weight.si())
}

/// Void ratio of the soil: volume of pores over volume of grains.
///
/// e = G_s gamma_w/gamma_d - 1; gamma_d dry unit weight and gamma_w that of water (N/m3), G_s
/// specific gravity of the grains. Range: above 0. Source: definition. Sign: none.
fn void_ratio(dry: UnitWeight, gs: f64, water: UnitWeight) -> f64 {
    gs * water.si() / dry.si() - 1.0
}

/// Unit weight of moist soil.
///
/// gamma = gamma_d (1 + w); gamma_d dry unit weight (N/m3), w weight of water over weight of
/// dry soil. Range: any. Source: definition. Sign: none.
pub fn moist_unit_weight(dry: UnitWeight, w: f64, trace: &mut Trace) -> UnitWeight {
    trace.step(
        "gamma",
        "gamma_d (1 + w)",
        dry * (1.0 + w),
        [("gamma_d", dry.into()), ("w", w.into())],
        &DERIVED,
    )
}

/// Unit weight of saturated soil.
///
/// gamma_sat = gamma_d (1 - 1/G_s) + gamma_w; gamma_d dry unit weight and gamma_w that of
/// water (N/m3), G_s specific gravity of the grains. Range: void ratio above 0. Source:
/// definition, with pores of volume 1 - gamma_d/(G_s gamma_w) full of water. Sign: none.
pub fn saturated_unit_weight(
    dry: UnitWeight,
    gs: f64,
    water: UnitWeight,
    trace: &mut Trace,
) -> UnitWeight {
    trace.step(
        "gamma_sat",
        "gamma_d (1 - 1/G_s) + gamma_w",
        dry * (1.0 - 1.0 / gs) + water,
        [
            ("gamma_d", dry.into()),
            ("G_s", gs.into()),
            ("gamma_w", water.into()),
        ],
        &DERIVED,
    )
}
