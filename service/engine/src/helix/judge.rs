//! What a design basis makes of the ultimate resistances: the factors in force, the
//! capacities that may be used, and the loads judged against them. The equations are in
//! `design.rs` and `crate::basis`.

use super::basis::HelixBasis;
use super::codes::{checks, methods};
use super::design::{Factor, design_capacity, factor, least_ultimate, ultimates};
use super::outcome::{AxialResistance, HelixFactor, UltimateItem};
use super::pile::AxialDirection;
use super::request::Request;
use crate::basis::AxialDemand;
use crate::contract::{Check, SubjectKind, Work};

/// Factors and ultimate loads of both directions, as the answer carries them.
#[derive(Default)]
pub(super) struct UsableCapacities {
    pub factors: Vec<HelixFactor>,
    pub ultimates: Vec<UltimateItem>,
}

impl UsableCapacities {
    /// Fills in the design capacity of a resistance and judges the load against it.
    pub fn add(&mut self, request: &Request, resistance: &mut AxialResistance, work: &mut Work) {
        let basis = request.design_basis.as_ref();
        if resistance.direction == AxialDirection::Compression {
            self.ultimates = ultimates(resistance.ultimate, basis);
        }
        if let Some(basis) = basis {
            let used = self.design(resistance, basis, work);
            if let Some(demand) = &request.demand {
                judge(request.pile.name(), demand, resistance, &used, work);
            }
        }
    }

    /// Fills in the design capacity of a resistance.
    fn design(
        &mut self,
        resistance: &mut AxialResistance,
        basis: &HelixBasis,
        work: &mut Work,
    ) -> Factor {
        work.method(match basis {
            HelixBasis::AllowableStress(_) => &methods::ALLOWABLE_STRESS,
            HelixBasis::LimitStates(_) => &methods::LIMIT_STATES,
        });
        let used = factor(basis, resistance.direction, work);
        self.factors.push(used.outcome());
        let direction = resistance.direction;
        work.trace.about(|| format!("pile in {}", direction.name()));
        let least_of = matches!(basis, HelixBasis::AllowableStress(_))
            && direction == AxialDirection::Compression;
        let ultimate = if least_of {
            least_ultimate(&self.ultimates, &mut work.trace)
        } else {
            resistance.ultimate
        };
        resistance.design = Some(design_capacity(ultimate, basis, &used, &mut work.trace));
        work.trace.about(String::new);
        used
    }
}

/// The load against the capacity.
fn judge(
    pile: &str,
    demand: &AxialDemand,
    resistance: &AxialResistance,
    used: &Factor,
    work: &mut Work,
) {
    let (def, load) = match resistance.direction {
        AxialDirection::Compression => (&checks::COMPRESSION, demand.compression),
        AxialDirection::Tension => (&checks::TENSION, demand.tension),
    };
    if let (Some(load), Some(design)) = (load, &resistance.design) {
        let check = Check::at_most(def, load, design.capacity, used.source)
            .subject(SubjectKind::Pile, pile);
        let less = design.from_ultimate < resistance.ultimate;
        work.check(check.reason(if less {
            "another ultimate load of the pile is less than the bearing of the soil".to_owned()
        } else {
            format!("{} governs", resistance.governing_mode.name())
        }));
    }
}
