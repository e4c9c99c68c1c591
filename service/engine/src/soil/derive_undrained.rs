//! Undrained strengths that were not sent: from blow counts, cones, stress history and
//! plasticity. The equations are in `correlations`.

use super::codes::{methods, refusals};
use super::correlations::ATMOSPHERE;
use super::correlations::penetration::UNDRAINED_COUNT_LIMIT;
use super::correlations::undrained::{
    CONE_FACTOR, NORMAL_STRENGTH_RATIO, OVERCONSOLIDATION_EXPONENT, SALGADO_ROWS, cone_strength,
    salgado, salgado_factor, shansep, skempton_ratio,
};
use super::cpt::UndrainedFromCpt;
use super::derive::{Behaviour, Derivation, Finding, Found, SentCorrections};
use super::derived::{DerivedStrength, DerivedStressHistory};
use super::spt::{SptClayForm, SptForm, UndrainedFromSpt};
use super::strata::Strength;
use super::strength::{FromStressHistory, UndrainedFromIndex};
use crate::catalogue::MethodDef;
use crate::contract::{Issue, Work};
use crate::quantity::{SoilStress, StressUnit};
use crate::source::{CONE_FACTOR_UFC, LADD_FOOTT_1974, SALGADO_2008, SKEMPTON_1957};

/// Undrained strengths that are accepted when they are sent, kPa.
const STRENGTH_KPA: (f64, f64) = (1.0, 1000.0);

const SCATTER_SPT: &str = "No figure of scatter was seen with the relation. Its factor falls by a third between plasticity indices of 15 and 30 %.";
const SCATTER_CPT: &str = "The strength goes with 1/N_kt: N_kt of 14 to 16 is common, 10 to 20 is accepted, so that at 15 the strength may be 0.75 to 1.5 times this one. By definition of N_kt.";
const SCATTER_HISTORY: &str = "S of 0.22 to 0.23 and m of about 0.8 are quoted as usual; no figure of scatter was seen. The strength of the whole layer is that at one depth.";
const SCATTER_INDEX: &str = "Fitted to normally consolidated clays; no figure of scatter was seen. The strength of the whole layer is that at one depth.";

impl Derivation<'_> {
    pub(super) fn undrained_from_spt(
        &self,
        spt: &UndrainedFromSpt,
        at: &str,
        work: &mut Work,
    ) -> Finding {
        let spot = self.spot(spt.test_depth);
        let form = match spt.form {
            SptClayForm::Raw => SptForm::Raw,
            SptClayForm::N60 => SptForm::N60,
        };
        let sent = SentCorrections {
            energy: spt.energy_ratio,
            borehole: spt.borehole_factor,
            rod: spt.rod_factor,
            sampler: spt.sampler_factor,
        };
        let (n60, mut told) = self.n60(spt.blow_count, form, &sent, work);
        let limit = work.take(&UNDRAINED_COUNT_LIMIT);
        let count = self.held_count(n60.unwrap_or(spt.blow_count), limit, work);
        work.take_table(&SALGADO_ROWS);
        work.take(&ATMOSPHERE);
        let plasticity = spt.plasticity_index_ratio.unwrap_or_default();
        let factor = salgado_factor(plasticity, &mut work.trace);
        let su = salgado(count, factor, &mut work.trace);
        told.used_count = count;
        told.plasticity_index_ratio = Some(plasticity);
        told.strength_factor = Some(factor);
        let method = &methods::UNDRAINED_SPT;
        let mut entry = self.entry(method, &spot, SCATTER_SPT, &SALGADO_2008);
        entry.penetration = Some(told);
        self.undrained_found(su, method, entry, at, work)
    }

    pub(super) fn undrained_from_cpt(
        &self,
        cpt: &UndrainedFromCpt,
        at: &str,
        work: &mut Work,
    ) -> Finding {
        let spot = self.spot(cpt.test_depth);
        let mut told = self.cone(&cpt.reading, &spot, Behaviour::Clay, at, work)?;
        let factor = cpt.cone_factor.unwrap_or_else(|| work.take(&CONE_FACTOR));
        let su = cone_strength(told.total_resistance, spot.total(), factor, &mut work.trace);
        told.cone_factor = Some(factor);
        let method = &methods::UNDRAINED_CPT;
        let mut entry = self.entry(method, &spot, SCATTER_CPT, &CONE_FACTOR_UFC);
        entry.cone = Some(told);
        self.undrained_found(su, method, entry, at, work)
    }

    pub(super) fn undrained_from_history(
        &self,
        history: &FromStressHistory,
        at: &str,
        work: &mut Work,
    ) -> Finding {
        let spot = self.spot(history.reference_depth);
        let told = DerivedStressHistory {
            plasticity_index_ratio: None,
            strength_ratio: history
                .strength_ratio
                .unwrap_or_else(|| work.take(&NORMAL_STRENGTH_RATIO)),
            overconsolidation_ratio: history.overconsolidation_ratio,
            exponent_factor: history
                .exponent_factor
                .unwrap_or_else(|| work.take(&OVERCONSOLIDATION_EXPONENT)),
        };
        let su = of_history(&told, spot.effective, work);
        let method = &methods::UNDRAINED_SHANSEP;
        let mut entry = self.entry(method, &spot, SCATTER_HISTORY, &LADD_FOOTT_1974);
        entry.stress_history = Some(told);
        self.undrained_found(su, method, entry, at, work)
    }

    pub(super) fn undrained_from_index(
        &self,
        index: &UndrainedFromIndex,
        at: &str,
        work: &mut Work,
    ) -> Finding {
        let spot = self.spot(index.reference_depth);
        let told = DerivedStressHistory {
            plasticity_index_ratio: Some(index.plasticity_index_ratio),
            strength_ratio: skempton_ratio(index.plasticity_index_ratio, &mut work.trace),
            overconsolidation_ratio: index.overconsolidation_ratio,
            exponent_factor: index
                .exponent_factor
                .unwrap_or_else(|| work.take(&OVERCONSOLIDATION_EXPONENT)),
        };
        let su = of_history(&told, spot.effective, work);
        let method = &methods::UNDRAINED_PLASTICITY;
        let mut entry = self.entry(method, &spot, SCATTER_INDEX, &SKEMPTON_1957);
        entry.stress_history = Some(told);
        self.undrained_found(su, method, entry, at, work)
    }

    /// The strength in its entry, where it is within what is accepted.
    fn undrained_found(
        &self,
        su: SoilStress,
        method: &'static MethodDef,
        mut entry: DerivedStrength,
        at: &str,
        work: &mut Work,
    ) -> Finding {
        let kpa = su.get(StressUnit::KPa);
        let told = |s: SoilStress| SoilStress::ROLE.in_both_systems(s.si());
        let (least, most) = STRENGTH_KPA;
        if kpa < least * (1.0 - 1e-9) || kpa > most * (1.0 + 1e-9) {
            let limit = |kpa| told(SoilStress::new(kpa, StressUnit::KPa));
            return Err(vec![
                Issue::new(
                    at,
                    &refusals::DERIVED_STRENGTH_OUTSIDE,
                    format!(
                        "layer {}: an undrained strength of {} is found by `{}`",
                        self.label,
                        told(su),
                        method.id
                    ),
                )
                .limit(format!("{} to {}", limit(least), limit(most))),
            ]);
        }
        self.note(method, &format!("undrained strength {}", told(su)), work);
        entry.undrained_strength = Some(su);
        Ok(Found {
            strength: Strength::Undrained { su },
            derived: Some(entry),
        })
    }
}

fn of_history(told: &DerivedStressHistory, stress: SoilStress, work: &mut Work) -> SoilStress {
    shansep(
        stress,
        told.strength_ratio,
        told.overconsolidation_ratio,
        told.exponent_factor,
        &mut work.trace,
    )
}
