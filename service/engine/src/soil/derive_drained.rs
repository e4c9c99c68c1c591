//! Friction angles that were not sent: from blow counts, cones and relative density. The
//! equations are in `correlations`.

use super::codes::{methods, refusals, warnings};
use super::correlations::ATMOSPHERE;
use super::correlations::cone::{
    kulhawy_mayne_cpt, kulhawy_mayne_resistance, robertson_campanella,
};
use super::correlations::friction::{
    FRICTION_LIMIT, MEAN_STRESS_LEAST, MEAN_STRESS_POWER, bearing_mean_stress, bolton,
    dilatancy_index, hatanaka_uchida, kulhawy_mayne_spt, peck_hanson_thornburn_wolff,
    shioi_fukui_buildings, shioi_fukui_roads,
};
use super::correlations::penetration::{
    FRICTION_COUNT_LIMIT, OVERBURDEN_CAP, SILTY_SAND_FROM, n1_60, overburden_factor,
    silty_sand_count,
};
use super::cpt::{ConeFriction, FrictionFromCpt};
use super::derive::{Behaviour, Derivation, Finding, Found, SentCorrections, Spot};
use super::derived::{DerivedDensity, DerivedPenetration, DerivedStrength};
use super::spt::{FrictionFromSpt, SptFriction};
use super::strata::Strength;
use super::strength::FrictionFromIndex;
use super::strength_faults::on_n1_60;
use crate::catalogue::MethodDef;
use crate::contract::{Issue, Work};
use crate::quantity::{Angle, AngleUnit, SoilStress};
use crate::source::{
    BOLTON_1986, HATANAKA_UCHIDA_1996, KULHAWY_MAYNE_CPT, KULHAWY_MAYNE_SPT, PECK_HANSON_THORNBURN,
    ROBERTSON_CAMPANELLA_1983, Reference, SHIOI_FUKUI_1982, SPT_SILTY_SAND,
};

const SCATTER_SPT: &str = "No figure of scatter was seen with the relations. At (N_1)_60 = N_60 = 20 and an effective stress of 100 kPa the five of them lie between 32.3 and 40.3 degrees (own arithmetic).";
const SCATTER_CPT: &str = "No figure of scatter was seen with the relations, which rest on calibration chambers with clean quartz sand. At q_t of 5 MPa and an effective stress of 50 kPa the two of them give 37.9 and 40.5 degrees (own arithmetic).";
const SCATTER_DENSITY: &str = "Fitted to triaxial tests on sands; no figure of scatter was seen. At p' of 150 kPa a relative density that is 10 % off moves the angle by 1.5 degrees (own arithmetic).";

impl Derivation<'_> {
    pub(super) fn friction_from_spt(
        &self,
        spt: &FrictionFromSpt,
        cohesion: SoilStress,
        at: &str,
        work: &mut Work,
    ) -> Finding {
        let spot = self.spot(spt.test_depth);
        let correlation = spt.correlation.unwrap_or_default();
        let told = self.sand_count(spt, correlation, &spot, at, work)?;
        let count = told.used_count;
        let trace = &mut work.trace;
        let (method, phi, source): (_, _, &'static Reference) = match correlation {
            SptFriction::PeckHansonThornburnWolff => (
                &methods::FRICTION_SPT_PECK,
                peck_hanson_thornburn_wolff(count, trace),
                &PECK_HANSON_THORNBURN,
            ),
            SptFriction::KulhawyMayne1990 => (
                &methods::FRICTION_SPT_KULHAWY,
                kulhawy_mayne_spt(count, spot.effective, trace),
                &KULHAWY_MAYNE_SPT,
            ),
            SptFriction::HatanakaUchida1996 => (
                &methods::FRICTION_SPT_HATANAKA,
                hatanaka_uchida(count, trace),
                &HATANAKA_UCHIDA_1996,
            ),
            SptFriction::ShioiFukui1982Roads => (
                &methods::FRICTION_SPT_SHIOI_ROADS,
                shioi_fukui_roads(count, trace),
                &SHIOI_FUKUI_1982,
            ),
            SptFriction::ShioiFukui1982Buildings => (
                &methods::FRICTION_SPT_SHIOI_BUILDINGS,
                shioi_fukui_buildings(count, trace),
                &SHIOI_FUKUI_1982,
            ),
        };
        let mut entry = self.entry(method, &spot, SCATTER_SPT, source);
        entry.penetration = Some(told);
        self.friction_found(phi, cohesion, method, entry, work)
    }

    /// The count the relation is used with, and how it came to that.
    fn sand_count(
        &self,
        spt: &FrictionFromSpt,
        correlation: SptFriction,
        spot: &Spot,
        at: &str,
        work: &mut Work,
    ) -> Result<DerivedPenetration, Vec<Issue>> {
        let sent = SentCorrections {
            energy: spt.energy_ratio,
            borehole: spt.borehole_factor,
            rod: spt.rod_factor,
            sampler: spt.sampler_factor,
        };
        let (n60, mut told) = self.n60(spt.blow_count, spt.form, &sent, work);
        let mut count = n60.unwrap_or(spt.blow_count);
        if spt.silty_below_water == Some(true) {
            if spot.pore.si() <= 0.0 {
                return Err(vec![
                    Issue::new(
                        format!("{at}/silty_below_water"),
                        &refusals::SPT_SILTY_ABOVE_WATER,
                        "the pore pressure at the test is zero",
                    )
                    .source(&SPT_SILTY_SAND),
                ]);
            }
            work.method(&methods::SPT_SILTY);
            work.take(&SILTY_SAND_FROM);
            count = silty_sand_count(count, &mut work.trace);
            told.silty_sand_count = Some(count);
        }
        if on_n1_60(correlation) {
            if n60.is_some() {
                let cap = spt
                    .overburden_cap_factor
                    .unwrap_or_else(|| work.take(&OVERBURDEN_CAP));
                work.method(&methods::SPT_OVERBURDEN);
                work.take(&ATMOSPHERE);
                let cn = overburden_factor(spot.effective, cap, &mut work.trace);
                count = n1_60(count, cn, &mut work.trace);
                told.overburden_factor = Some(cn);
            }
            told.n1_60_count = Some(count);
        }
        let limit = work.take(&FRICTION_COUNT_LIMIT);
        told.used_count = self.held_count(count, limit, work);
        Ok(told)
    }

    pub(super) fn friction_from_cpt(
        &self,
        cpt: &FrictionFromCpt,
        cohesion: SoilStress,
        at: &str,
        work: &mut Work,
    ) -> Finding {
        let spot = self.spot(cpt.test_depth);
        let mut told = self.cone(&cpt.reading, &spot, Behaviour::Sand, at, work)?;
        let total = told.total_resistance;
        let trace = &mut work.trace;
        let (method, ratio, phi, source): (_, _, _, &'static Reference) =
            match cpt.correlation.unwrap_or_default() {
                ConeFriction::KulhawyMayne1990 => {
                    let ratio = kulhawy_mayne_resistance(total, spot.effective, trace);
                    (
                        &methods::FRICTION_CPT_KULHAWY,
                        ratio,
                        kulhawy_mayne_cpt(ratio, trace),
                        &KULHAWY_MAYNE_CPT,
                    )
                }
                ConeFriction::RobertsonCampanella1983 => {
                    let ratio = total / spot.effective;
                    (
                        &methods::FRICTION_CPT_ROBERTSON,
                        ratio,
                        robertson_campanella(ratio, trace),
                        &ROBERTSON_CAMPANELLA_1983,
                    )
                }
            };
        told.normalised_resistance_ratio = Some(ratio);
        let mut entry = self.entry(method, &spot, SCATTER_CPT, source);
        entry.cone = Some(told);
        self.friction_found(phi, cohesion, method, entry, work)
    }

    pub(super) fn friction_from_index(
        &self,
        index: &FrictionFromIndex,
        cohesion: SoilStress,
        work: &mut Work,
    ) -> Finding {
        let spot = self.spot(index.reference_depth);
        let density = index.relative_density_ratio;
        let critical = index.critical_friction_angle;
        let mean = index.mean_stress.unwrap_or_else(|| {
            work.take(&MEAN_STRESS_LEAST);
            work.take(&MEAN_STRESS_POWER);
            bearing_mean_stress(density, critical, spot.effective, &mut work.trace)
        });
        let dilatancy = dilatancy_index(density, mean, &mut work.trace);
        let phi = bolton(critical, dilatancy, &mut work.trace);
        let method = &methods::FRICTION_DENSITY;
        let mut entry = self.entry(method, &spot, SCATTER_DENSITY, &BOLTON_1986);
        entry.density = Some(DerivedDensity {
            relative_density_ratio: density,
            critical_friction_angle: critical,
            mean_stress: mean,
            dilatancy_ratio: dilatancy,
        });
        self.friction_found(phi, cohesion, method, entry, work)
    }

    /// The angle in its entry, held at 45 degrees. None of the relations gives less than the 6
    /// degrees of one blow under 100 m of soil, so that there is no lower end to watch.
    fn friction_found(
        &self,
        phi: Angle,
        cohesion: SoilStress,
        method: &'static MethodDef,
        mut entry: DerivedStrength,
        work: &mut Work,
    ) -> Finding {
        let told = |a: Angle| Angle::ROLE.in_both_systems(a.si());
        let limit = Angle::new(work.take(&FRICTION_LIMIT), AngleUnit::Deg);
        if phi.si() > limit.si() * (1.0 + 1e-12) {
            self.warn(
                &warnings::FRICTION_ANGLE_HELD,
                format!(
                    "layer {}: {} is held at {}",
                    self.label,
                    told(phi),
                    told(limit)
                ),
                work,
            );
            entry.friction_angle_before_limit = Some(phi);
        }
        let phi = phi.min(limit);
        self.note(method, &format!("friction angle {}", told(phi)), work);
        entry.friction_angle = Some(phi);
        Ok(Found {
            strength: Strength::Drained { phi, cohesion },
            derived: Some(entry),
        })
    }
}
