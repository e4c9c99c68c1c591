//! The worst of all uplift, and the tension that coupling, head and anchor must carry by it.

use super::codes::{checks, methods};
use super::path_request::TensionPath;
use super::request::Request;
use super::resist::Resistance;
use super::swell_outcome::{GoverningUplift, UpliftCause};
use super::uplift_outcome::FrostStage;
use super::{combined, swell, uplift};
use crate::catalogue::CheckDef;
use crate::contract::{Check, SubjectKind, Work};
use crate::quantity::Force;
use crate::source::CALLER;

/// One cause in one stage.
struct Pull {
    cause: UpliftCause,
    stage: FrostStage,
    net: Force,
    design: Force,
    utilisation: Option<f64>,
    beam_in_place: bool,
}

impl Pull {
    /// By what pulls are ranked: a pull on no resistance is the worst.
    fn rank(&self) -> f64 {
        self.utilisation.unwrap_or(f64::INFINITY)
    }
}

/// All that was judged, in the order of the answer.
pub struct All<'a> {
    /// By frost.
    pub frost: Option<&'a uplift::Judged>,
    /// By swelling soil.
    pub swell: Option<&'a swell::Judged>,
    /// By both.
    pub both: Option<&'a combined::Judged>,
}

/// The worst of what was judged; `None` where nothing was compared.
pub fn of(all: &All) -> Option<GoverningUplift> {
    let pulls = pulls(all);
    let mut worst = pulls.first()?;
    for pull in &pulls[1..] {
        if pull.rank() > worst.rank() {
            worst = pull;
        }
    }
    let most = |asked: &dyn Fn(&Pull) -> bool| {
        let nets = pulls.iter().filter(|p| asked(p)).map(|p| p.net);
        nets.fold(Force::ZERO, Force::max)
    };
    Some(GoverningUplift {
        cause: worst.cause,
        stage: worst.stage,
        net_tension: worst.net,
        design_tension: worst.design,
        utilisation_ratio: worst.utilisation,
        coupling_demand: most(&|_| true),
        head_demand: most(&|p| p.beam_in_place),
    })
}

fn pulls(all: &All) -> Vec<Pull> {
    let mut pulls = Vec::new();
    let mut add = |cause, stage, net: Option<Force>, held: Option<&Resistance>, ratio, beam| {
        if let (Some(net), Some(held)) = (net, held) {
            pulls.push(Pull {
                cause,
                stage,
                net,
                design: held.design,
                utilisation: ratio,
                beam_in_place: beam,
            });
        }
    };
    if let Some(frost) = all.frost {
        for s in &frost.outcome.stages {
            let d = &s.design;
            let held = frost.resistance.as_ref();
            let (net, ratio) = (d.net_frost_tension, d.utilisation_ratio);
            add(
                UpliftCause::Frost,
                s.stage,
                net,
                held,
                ratio,
                s.beam_in_place,
            );
        }
    }
    if let Some(swell) = all.swell {
        for s in &swell.outcome.stages {
            let d = &s.design;
            let held = swell.resistance.as_ref();
            let (net, ratio) = (d.net_swell_tension, d.utilisation_ratio);
            add(
                UpliftCause::Swell,
                s.stage,
                net,
                held,
                ratio,
                s.beam_in_place,
            );
        }
    }
    if let Some(both) = all.both {
        for s in &both.outcome.stages {
            let held = both.resistance.as_ref();
            let (net, ratio) = (s.net_tension, s.utilisation_ratio);
            let cause = UpliftCause::FrostAndSwell;
            add(cause, s.stage, net, held, ratio, s.beam_in_place);
        }
    }
    pulls
}

/// Judges coupling, head and anchor by the worst of all uplift.
pub fn path(
    request: &Request,
    path: &TensionPath,
    worst: Option<&GoverningUplift>,
    work: &mut Work,
) {
    work.method(&methods::TENSION_PATH);
    let mut judge = |def: &'static CheckDef, capacity: Option<Force>, demand: Option<Force>| {
        let Some(capacity) = capacity else { return };
        let check = match demand {
            Some(demand) => Check::at_most(def, demand, capacity, &CALLER),
            None => Check::not_evaluated(def, "no_resistance", &CALLER),
        };
        work.check(check.subject(SubjectKind::Pile, request.pile.name()));
    };
    let coupling = worst.map(|w| w.coupling_demand);
    let head = worst.map(|w| w.head_demand);
    judge(&checks::TENSION_PATH_COUPLING, path.coupling, coupling);
    judge(&checks::TENSION_PATH_HEAD, path.head, head);
    judge(&checks::TENSION_PATH_BEAM_ANCHOR, path.beam_anchor, head);
}
