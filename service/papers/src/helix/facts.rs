//! The answer in sentences: the pile, the basis, what governs, what the load uses, the
//! least depth, the torque to expect.

use bearwell_engine::contract::{Check, CheckStatus};
use bearwell_engine::helix::{
    AxialResistance, DesignCapacityKind, HelixBasis, MinimumDepthFindings,
};
use bearwell_engine::shaft::Shaft;
use bearwell_engine::soil::GradeChange;

use super::ground::water;
use super::reading::{Subject, mode, told};
use crate::panel;
use crate::words;

/// All of it in lines of the given width.
pub fn lines(s: Subject, scales: &str, room: f64) -> Vec<String> {
    let mut texts = vec![pile(s)];
    texts.extend(panel::reasons(&s.answer.verdict_reasons));
    texts.push(basis(s));
    texts.extend(s.resistances().flat_map(|r| resistance(s, r)));
    texts.extend(used(s));
    texts.extend(
        s.outcome()
            .minimum_depth
            .as_ref()
            .map(|f| least_depth(s, f)),
    );
    texts.extend(sets(s));
    texts.extend(torque(s));
    texts.extend(no_needed(s));
    texts.extend(ground(s));
    texts.extend(panel::warned(&s.answer.warnings));
    texts.push(scales.to_owned());
    texts.push(panel::provenance(&s.answer.provenance));
    texts
        .iter()
        .flat_map(|text| panel::short(text, room))
        .collect()
}

/// Water that is not told beside the section, strengths that were found, and hazards.
fn ground(s: Subject) -> Vec<String> {
    let soil = &s.request.soil;
    let mut texts = Vec::new();
    if let Some(change) = s.grade_change {
        let (by, told) = match change {
            GradeChange::Cut(cut) => (cut.depth, "below"),
            GradeChange::Raise(raise) => (raise.height, "above"),
        };
        let by = words::depth_told(by, s.system);
        texts.push(format!(
            "Final grade {by} {told} existing grade; depths from final grade."
        ));
    }
    if let Some(points) = &soil.pore_pressures {
        texts.push(format!(
            "Pore pressures as sent, at {} depths.",
            points.len()
        ));
    } else if water(s).is_empty() {
        texts.push("No water within the profile.".to_owned());
    }
    if (0..soil.layers.len()).any(|i| s.found(i)) {
        texts.push("* strength found from a test or an index, not sent.".to_owned());
    }
    for (i, layer) in soil.layers.iter().enumerate() {
        let hazards = layer.hazards.iter().flatten();
        let told: Vec<&str> = hazards.map(|h| h.told()).collect();
        if !told.is_empty() {
            texts.push(format!("Beware, {}: {}.", soil.label(i), told.join(", ")));
        }
    }
    texts
}

fn pile(s: Subject) -> String {
    let pile = &s.request.pile;
    let (form, size) = match &pile.shaft {
        Shaft::Round(r) => ("round", r.outside_diameter),
        Shaft::Square(q) => ("square", q.side),
    };
    let plural = if pile.helices.len() == 1 {
        "helix"
    } else {
        "helices"
    };
    let name = pile.label.as_ref().map_or("", |l| l.as_str());
    let gap = if name.is_empty() { "" } else { " " };
    format!(
        "Pile{gap}{name}: {form} shaft {}, {} {plural}.",
        words::size_told(size, s.system),
        pile.helices.len()
    )
}

/// The format of design with the factors in force.
fn basis(s: Subject) -> String {
    let Some(basis) = &s.request.design_basis else {
        return "No design basis: ultimate values only.".to_owned();
    };
    let name = match basis {
        HelixBasis::AllowableStress(_) => "allowable stress",
        HelixBasis::LimitStates(_) => "limit states",
        HelixBasis::Eurocode7(_) => "EN 1997-1",
        HelixBasis::AustralianStandard2159(_) => "AS 2159",
        HelixBasis::OwnFactors(_) => "own factors",
    };
    let factors: Vec<String> = s
        .outcome()
        .factors
        .iter()
        .map(|f| {
            format!(
                "{} {}",
                f.id.replace('_', " "),
                words::trimmed(f.used_factor, 3)
            )
        })
        .collect();
    match factors.is_empty() {
        true => format!("Basis: {name}."),
        false => format!("Basis: {name}; {}.", factors.join(", ")),
    }
}

/// Ultimate resistance with its mode, and the capacity that may be used.
fn resistance(s: Subject, r: &AxialResistance) -> Vec<String> {
    let force = |f| words::force_told(f, s.system);
    let way = match told(r.direction) {
        "down" => "Down",
        _ => "Up",
    };
    let mut text = format!(
        "{way}: ultimate {}, {} governs",
        force(r.ultimate),
        mode(r.governing_mode)
    );
    if let Some(design) = &r.design {
        let kind = match design.kind {
            DesignCapacityKind::Allowable => "allowable",
            DesignCapacityKind::Factored => "factored",
        };
        text += &format!("; {kind} {}", force(design.capacity));
    }
    text.push('.');
    let mut texts = vec![text];
    if let Some(held) = r.ultimate_by_punching {
        texts.push(format!("Held by weaker soil below: {}.", force(held)));
    }
    texts
}

/// Utilisations, the governing one of each check.
fn used(s: Subject) -> Option<String> {
    let told = |c: &Check| {
        let name =
            c.id.strip_prefix("helix_")
                .unwrap_or(&c.id)
                .replace('_', " ");
        let status = match c.status {
            CheckStatus::Fail => " fails",
            CheckStatus::Warn => " warns",
            CheckStatus::NotEvaluated => " not judged",
            CheckStatus::Pass => "",
        };
        match c.utilisation_ratio {
            Some(u) => format!("{name} {}{status}", words::utilisation(u)),
            None => format!("{name}{status}"),
        }
    };
    let checks = s.answer.checks.iter();
    let all: Vec<String> = checks
        .filter(|c| c.governing || c.status == CheckStatus::NotEvaluated)
        .map(told)
        .collect();
    (!all.is_empty()).then(|| format!("Used, 1 is all: {}.", all.join(", ")))
}

fn least_depth(s: Subject, found: &MinimumDepthFindings) -> String {
    let depth = |l| words::depth_told(l, s.system);
    let by = found
        .governed_by
        .iter()
        .map(|code| {
            code.strip_prefix("helix_")
                .unwrap_or(code)
                .replace('_', " ")
        })
        .collect::<Vec<_>>()
        .join(", ");
    match found.depth {
        None => format!(
            "No depth from {} to {} meets everything; nearest at {}.",
            depth(found.searched_from),
            depth(found.searched_to),
            depth(found.at.depth)
        ),
        Some(least) if by.is_empty() => {
            format!("Least depth {}, the first searched.", depth(least))
        }
        Some(least) => format!("Least depth {}, governed by {by}.", depth(least)),
    }
}

/// The lightest set of helices.
fn sets(s: Subject) -> Option<String> {
    let found = s.outcome().helix_sets.as_ref()?;
    Some(match &found.lightest {
        Some(label) => format!("Lightest set that works, of {}: {label}.", found.sets.len()),
        None => format!(
            "Of {} sets of helices none is known to be lightest.",
            found.sets.len()
        ),
    })
}

/// The torque to expect at the depth as sent.
fn torque(s: Subject) -> Option<String> {
    let band = s.outcome().expected_torque.as_ref()?.torque;
    let torque = |t| words::torque(t, s.system);
    Some(format!(
        "Torque to expect as sent: {} {} ({} to {}).",
        torque(band.expected),
        words::torque_unit(s.system),
        torque(band.low),
        torque(band.high)
    ))
}

/// Why a load has no line on the curve.
fn no_needed(s: Subject) -> Option<String> {
    let judged = |r: &AxialResistance| r.design.is_some() && s.demands(r.direction);
    let open = s
        .resistances()
        .any(|r| judged(r) && s.needed(r.direction).is_none());
    open.then(|| "The load needs no single ultimate by this basis; no line is drawn.".to_owned())
}
