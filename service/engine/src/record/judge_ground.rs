//! The log against what is known of the ground: where the helices stand, the torque in each
//! layer, and whether the strength of the ground explains the torque at the end.

use super::codes::{checks, warnings};
use super::found::Found;
use super::ground::GroundKnown;
use super::outcome::{ExpectedAtDepth, GroundOutcome, LayerTorque};
use super::torque_side::TorqueSide;
use crate::contract::{Calculation, Check, Work, utilisation};
use crate::helix::{
    AxialDirections, ExpectedTorque, HelixCapacity, HelixPile, HelixPlate, Request as HelixRequest,
};
use crate::quantity::{Force, Length, SoilStress, Torque, round9};
use crate::soil::{SoilKind, SoilProfile};
use crate::source::{
    BEARWELL_CHOICE, HOYT_CLEMENCE_SCATTER, IBC_1810_3_3_1_9, TORQUE_AT_OBSTRUCTION,
};
use crate::trace::Trace;

/// All of it.
pub(super) fn judge(found: &Found, torque: &TorqueSide, work: &mut Work) -> Option<GroundOutcome> {
    let profile = match &found.request.ground {
        Some(GroundKnown::Profile(profile)) => profile,
        Some(GroundKnown::Report(_)) => return None,
        Some(GroundKnown::NoReport(_)) | None => {
            let why = "no_soil_profile: neither a profile nor a report was named; how deep a pile must go here cannot be said";
            found.open(&checks::GROUND, why, &BEARWELL_CHOICE, work);
            return None;
        }
    };
    let (graded, _) = profile.at_final_grade();
    helix_ground(found, &graded, work);
    time_effects(found, &graded, work);
    let (expected_torque, not_expected) = match expected(found, profile, work) {
        Ok(expected) => (expected, None),
        Err(why) => (None, Some(why)),
    };
    if let Some(expected) = &expected_torque {
        explained(found, expected, work);
        if let Some(needed) = torque.needed_ultimate() {
            enough(found, needed, expected, work);
        }
    }
    Some(GroundOutcome {
        layers: layers(found, &graded),
        expected_torque,
        not_expected,
    })
}

/// Whether a torque in this ground may be correlated at all.
fn correlates(kind: SoilKind) -> bool {
    match kind {
        SoilKind::Clay
        | SoilKind::Silt
        | SoilKind::Sand
        | SoilKind::Gravel
        | SoilKind::EngineeredFill => true,
        SoilKind::Fill | SoilKind::Organic | SoilKind::Rock | SoilKind::Frozen => false,
    }
}

fn layer_at(profile: &SoilProfile, depth: Length) -> Option<usize> {
    let holds = |at: &usize| {
        let layer = &profile.layers[*at];
        let depth = round9(depth.si());
        round9(layer.top.si()) <= depth && depth < round9(layer.bottom.si())
    };
    (0..profile.layers.len()).find(holds)
}

fn helix_ground(found: &Found, profile: &SoilProfile, work: &mut Work) {
    let mut bad = Vec::new();
    for helix in &found.helices {
        let shown = Length::ROLE.in_both_systems(helix.depth.si());
        let Some(at) = layer_at(profile, helix.depth) else {
            let why = if helix.depth < Length::ZERO {
                bad.push(format!("the helix at {shown} is above grade"));
                continue;
            } else {
                format!("the profile ends above the helix at {shown}")
            };
            return found.open(&checks::HELIX_GROUND, &why, &BEARWELL_CHOICE, work);
        };
        let layer = &profile.layers[at];
        let hazard = layer.hazards.as_ref().is_some_and(|h| !h.is_empty());
        if hazard || !correlates(layer.soil.kind()) {
            bad.push(format!(
                "the helix at {shown} stands in {}{}",
                layer.soil.kind().told(),
                if hazard { " with a noted hazard" } else { "" }
            ));
        }
    }
    let count = bad.len() as f64;
    let check = Check::at_most(&checks::HELIX_GROUND, count, 0.0, &TORQUE_AT_OBSTRUCTION);
    let check = if bad.is_empty() {
        check
    } else {
        check.reason(bad.join("; "))
    };
    found.put_deeper(check, work);
}

/// Soils whose strength changes after installation.
fn time_effects(found: &Found, profile: &SoilProfile, work: &mut Work) {
    let Some(lowest) = found.helices.last() else {
        return;
    };
    let Some(at) = layer_at(profile, lowest.depth) else {
        return;
    };
    let wet = profile.strata().pore_pressure(lowest.depth) > SoilStress::ZERO;
    let label = profile.label(at);
    let waited = found.request.retorque.is_some();
    match profile.layers[at].soil.kind() {
        SoilKind::Clay if torque_short(found) => {
            work.warn(
                &warnings::SET_UP_POSSIBLE,
                format!("clay of layer `{label}`"),
            );
        }
        kind @ (SoilKind::Silt | SoilKind::Sand) if wet && !waited => {
            let detail = format!("{} of layer `{label}` below water", kind.told());
            work.warn(&warnings::RELAXATION_POSSIBLE, detail);
        }
        _ => {}
    }
}

/// Whether the torque that counts is below the required one.
pub(super) fn torque_short(found: &Found) -> bool {
    match (&found.effective, found.required) {
        (Some(effective), Some(required)) => {
            !utilisation(required.torque.si(), effective.torque.si()).1
        }
        _ => false,
    }
}

/// Torque in each layer that the tip went through.
fn layers(found: &Found, profile: &SoilProfile) -> Vec<LayerTorque> {
    let log = found.log;
    let mut out = Vec::new();
    for (at, layer) in profile.layers.iter().enumerate() {
        let bottom = layer.bottom.min(Length::from_si(log.deepest));
        if bottom <= layer.top {
            break;
        }
        let from = layer.top.si().max(log.counted.start);
        let to = bottom.si().min(log.counted.end().unwrap_or(0.0));
        let mean = (to > from)
            .then(|| log.counted.window(to, to - from))
            .flatten();
        let mut greatest: Option<f64> = None;
        for row in &log.rows {
            let inside = layer.top.si() < row.depth && row.depth <= layer.bottom.si();
            if let (true, Some(torque)) = (inside, row.torque) {
                greatest = Some(greatest.map_or(torque, |g: f64| g.max(torque)));
            }
        }
        out.push(LayerTorque {
            label: profile.label(at),
            ground: layer.soil.kind().told().into(),
            top: layer.top,
            bottom: layer.bottom,
            mean_torque: mean.map(|w| Torque::from_si(w.mean)),
            greatest_torque: greatest.map(Torque::from_si),
        });
    }
    out
}

/// Torque that the strength of the ground gives at this depth, or why there is none.
fn expected(
    found: &Found,
    profile: &SoilProfile,
    work: &mut Work,
) -> Result<Option<ExpectedAtDepth>, String> {
    let request = found.request;
    let (Some(shaft), Some(factor)) = (request.pile.shaft, &request.torque_factor) else {
        return Err("`pile.shaft` and `torque_factor` are needed".to_owned());
    };
    let helix = |place: &super::outcome::HelixPlace| HelixPlate {
        label: None,
        tags: None,
        diameter: place.diameter,
        depth: place.depth,
    };
    if found
        .helices
        .iter()
        .any(|h| h.depth <= Length::from_si(0.1))
    {
        return Err("a helix is less than 0.1 m deep".to_owned());
    }
    let question = HelixRequest {
        soil: profile.clone(),
        pile: HelixPile {
            label: request.label.clone(),
            tags: None,
            shaft,
            helices: found.helices.iter().map(helix).collect(),
        },
        directions: Some(AxialDirections::Compression),
        methods: None,
        design_basis: None,
        demand: None,
        depth_curve: None,
        minimum_depth: None,
        helix_sets: None,
        expected_torque: Some(ExpectedTorque {
            torque_factor: Some(factor.clone()),
            band_ratio: None,
        }),
        reliability: None,
        group: None,
        head_movement: None,
    };
    let mut aside = Work::new(Trace::off(), None);
    let answer = match HelixCapacity::evaluate(&question, &mut aside) {
        Ok(answer) => answer,
        Err(refusal) => {
            let first = refusal.issues.first();
            return Err(first.map_or_else(String::new, |i| format!("{}: {}", i.code, i.detail)));
        }
    };
    for warning in &aside.warnings {
        work.warn(
            &warnings::GROUND_BELOW,
            format!("{}: {}", warning.code, warning.detail),
        );
    }
    work.take_over(Vec::new(), aside.methods, aside.defaults);
    let punching = answer
        .compression
        .as_ref()
        .and_then(|c| c.ultimate_by_punching);
    Ok(answer.expected_torque.map(|e| ExpectedAtDepth {
        ultimate_by_punching: punching,
        ultimate: e.from_ultimate,
        expected: e.torque.expected,
        low: e.torque.low,
        high: e.torque.high,
        measured_ratio: found
            .effective
            .as_ref()
            .filter(|_| e.torque.expected > Torque::ZERO)
            .map(|t| t.torque / e.torque.expected),
    }))
}

/// The capacity of a pile is the least of what torque and soil say.
fn enough(found: &Found, needed: Force, expected: &ExpectedAtDepth, work: &mut Work) {
    let there = match expected.ultimate_by_punching {
        Some(punching) => expected.ultimate.min(punching),
        None => expected.ultimate,
    };
    let check = Check::at_least(&checks::GROUND_CAPACITY, needed, there, &IBC_1810_3_3_1_9);
    let check = if check.passed() {
        check
    } else {
        check
            .reason("the profile and the torque disagree")
            .unproven()
    };
    found.put(check, work);
}

fn explained(found: &Found, expected: &ExpectedAtDepth, work: &mut Work) {
    let Some(effective) = &found.effective else {
        return;
    };
    let source = &HOYT_CLEMENCE_SCATTER;
    let check = Check::at_most(&checks::EXPLAINED, effective.torque, expected.high, source);
    let check = if check.passed() {
        check
    } else {
        check
            .reason("a hard stop, debris, or other ground than the profile says")
            .unproven()
    };
    found.put(check, work);
    if !utilisation(expected.low.si(), effective.torque.si()).1 {
        let detail = format!(
            "{} of the expected torque",
            round9(effective.torque / expected.expected)
        );
        work.warn(&warnings::TORQUE_BELOW_EXPECTED, detail);
    }
}
