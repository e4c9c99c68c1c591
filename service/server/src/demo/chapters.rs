//! The chapters of the demo: what each answer says, in sentences. Nothing is calculated
//! here but the choice of what to print.

use std::io::{self, Write};

use bearwell_engine::contract::{Answer, Check, CheckStatus, Verdict};
use bearwell_engine::frost::FrostEmbedment;
use bearwell_engine::helix::{AxialResistance, DesignCapacityKind, GoverningMode, HelixCapacity};
use bearwell_engine::layout::{LayoutPile, PileLayout};
use bearwell_engine::quantity::System;
use bearwell_engine::torque::TorqueCapacity;

use super::Told;
use super::text::{bare, cut, item, paragraph, section, show};

/// What the soil gives, for each set of helices.
pub fn ground(out: &mut impl Write, s: System, all: &[Told<HelixCapacity>]) -> io::Result<()> {
    section(
        out,
        "1. What does the ground give one pile?  (helix-capacity)",
    )?;
    for told in all {
        let result = &told.answer.result;
        let directions = [
            ("Compression", &result.compression),
            ("Tension", &result.tension),
        ];
        if let Some(r) = directions.iter().find_map(|(_, r)| r.as_ref()) {
            helices(out, s, r)?;
        }
        for (name, resistance) in directions {
            if let Some(r) = resistance {
                direction(out, s, name, r)?;
            }
        }
        judged(out, s, &told.answer)?;
    }
    Ok(())
}

fn helices(out: &mut impl Write, s: System, r: &AxialResistance) -> io::Result<()> {
    let all: Vec<_> = (r.individual_bearing.helices.iter())
        .map(|h| {
            format!(
                "{} at {} ({} bears)",
                show(h.diameter, s),
                show(h.depth, s),
                show(h.area, s)
            )
        })
        .collect();
    paragraph(out, "  ", &format!("Helices of {}:", all.join(" and ")))
}

fn direction(out: &mut impl Write, s: System, name: &str, r: &AxialResistance) -> io::Result<()> {
    let mode = match r.governing_mode {
        GoverningMode::IndividualBearing => "each helix bearing for itself",
        GoverningMode::CylindricalShear => "the cylinder between the helices",
    };
    let ultimate = show(r.ultimate, s);
    let mut text = format!("{name}: {ultimate} ultimate, governed by {mode}");
    if let Some(design) = &r.design {
        let kind = match design.kind {
            DesignCapacityKind::Allowable => "allowable",
            DesignCapacityKind::Factored => "factored",
        };
        text.push_str(&format!("; {} {kind}", show(design.capacity, s)));
    }
    item(out, &format!("{text}."))
}

/// What the gauge must show.
pub fn gauge(out: &mut impl Write, s: System, told: &Told<TorqueCapacity>) -> io::Result<()> {
    section(out, "2. What must the gauge show?  (torque-capacity)")?;
    let result = &told.answer.result;
    if let Some(used) = result
        .torque_factor
        .as_ref()
        .and_then(|f| f.compression.as_ref())
    {
        let factor = show(used.factor, s);
        item(
            out,
            &format!("Capacity over torque, in compression: {factor}."),
        )?;
    }
    target(out, s, "", told)?;
    if let Some(drive) = result.drive.as_ref().and_then(|d| d.for_required.as_ref()) {
        let pressure = show(drive.differential_pressure, s);
        item(
            out,
            &format!("On the pressure gauge that is {pressure} of difference."),
        )?;
    }
    if let Some(rating) = result.torsion.as_ref().and_then(|t| t.rating) {
        item(out, &format!("The shaft is rated for {}.", show(rating, s)))?;
    }
    judged(out, s, &told.answer)
}

/// The torque that a load needs.
fn target(
    out: &mut impl Write,
    s: System,
    about: &str,
    told: &Told<TorqueCapacity>,
) -> io::Result<()> {
    let Some(required) = &told.answer.result.required else {
        return Ok(());
    };
    for (name, r) in [
        ("compression", &required.compression),
        ("tension", &required.tension),
    ] {
        if let Some(r) = r {
            let text = format!(
                "{about}{} in {name} needs {} ultimate, so a torque of {}.",
                show(r.demand, s),
                show(r.ultimate, s),
                show(r.torque, s)
            );
            item(out, &text)?;
        }
    }
    Ok(())
}

/// The torque for the operator, rounded up by the service.
fn cab(told: &Told<TorqueCapacity>, s: System) -> Option<String> {
    let cab = &told.answer.result.required.as_ref()?.cab;
    Some(match s {
        System::Si => show(cab.si.clone(), s),
        System::UsCustomary => show(cab.us_customary.clone(), s),
    })
}

/// Frost and embedment.
pub fn winter(out: &mut impl Write, s: System, told: &Told<FrostEmbedment>) -> io::Result<()> {
    section(out, "3. Does frost reach it?  (frost-embedment)")?;
    let result = &told.answer.result;
    let e = &result.embedment;
    let text = format!(
        "The ground freezes to {}. The top helix must be at {} and is at {}; the tip is at {}.",
        show(result.frost.base_depth, s),
        show(e.required_top_helix_depth, s),
        show(e.top_helix_depth, s),
        show(e.tip_depth, s)
    );
    item(out, &text)?;
    for stage in result.uplift.iter().flat_map(|u| &u.stages) {
        let d = &stage.design;
        let mut text = format!(
            "Frost, stage {}: pulls with {} on {} of shaft",
            stage.stage.name(),
            show(d.frost_force, s),
            show(stage.frozen_length, s)
        );
        if let (Some(net), Some(needed)) = (d.net_frost_tension, d.required_ultimate_tension) {
            let (net, needed) = (show(net, s), show(needed, s));
            text.push_str(&format!("; net tension {net}, needs {needed} ultimate"));
        }
        item(out, &format!("{text}."))?;
    }
    if let Some(v) = &result.void_form {
        let text = format!(
            "A void form of {} leaves {} free for a heave of {}.",
            show(v.nominal_thickness, s),
            show(v.usable_thickness, s),
            show(v.design_heave, s)
        );
        item(out, &text)?;
    }
    judged(out, s, &told.answer)
}

/// The plan: piles as given, then the fewest.
pub fn plan(
    out: &mut impl Write,
    s: System,
    given: &Told<PileLayout>,
    search: &Told<PileLayout>,
) -> io::Result<()> {
    section(out, "4. Where do the piles go?  (pile-layout)")?;
    let result = &given.answer.result;
    let text = format!(
        "As drawn: {} piles. Down: reactions of continuous beams. Beside them: what tributary \
         lengths would say.",
        result.pile_count
    );
    item(out, &text)?;
    table(out, s, &result.piles)?;
    judged(out, s, &given.answer)?;
    let found = &search.answer.result;
    let mut text = format!("Searched: {} piles", found.pile_count);
    if let Some(report) = &found.search {
        text.push_str(match report.proven_minimal {
            true => ", proven to be the fewest within the limits",
            false => ", not proven to be the fewest",
        });
    }
    if let Some(u) = found.max_utilisation_ratio {
        text.push_str(&format!("; the most used at {}", show(u, s)));
    }
    item(out, &format!("{text}."))?;
    let places: Vec<_> = (found.piles.iter())
        .map(|p| format!("{} ({}, {})", p.label, bare(p.at.x, s), bare(p.at.y, s)))
        .collect();
    item(out, &format!("They stand at {}.", places.join(" ")))?;
    judged(out, s, &search.answer)
}

/// Reactions with their tributary counterparts.
fn table(out: &mut impl Write, s: System, piles: &[LayoutPile]) -> io::Result<()> {
    let zero = bearwell_engine::quantity::Force::ZERO;
    let unit = show(zero, s)
        .split(' ')
        .next_back()
        .unwrap_or_default()
        .to_owned();
    let up = piles.iter().any(|p| p.tension.demand > zero);
    let column = |text: String| {
        if up {
            format!("{text:>10}")
        } else {
            String::new()
        }
    };
    let head = column("up".into());
    writeln!(
        out,
        "      {:<8}{:>10}{head}{:>12}{:>8}   ({unit})",
        "pile", "down", "tributary", "used"
    )?;
    for p in piles {
        let tributary = p.tributary.map_or("-".into(), |t| bare(t, s));
        let used = p.utilisation_ratio.map_or("-".into(), |u| bare(u, s));
        let over = if p.utilisation_ratio.is_some_and(|u| u > 1.0) {
            "  over"
        } else {
            ""
        };
        writeln!(
            out,
            "      {:<8}{:>10}{}{tributary:>12}{used:>8}{over}",
            p.label,
            bare(p.compression.demand, s),
            column(bare(p.tension.demand, s))
        )?;
    }
    Ok(())
}

/// The torque for the largest reaction of each plan, and for frost.
pub fn worst_piles(
    out: &mut impl Write,
    s: System,
    drawn: &Told<TorqueCapacity>,
    searched: &Told<TorqueCapacity>,
) -> io::Result<()> {
    section(
        out,
        "5. And for the largest reaction and frost?  (torque-capacity again)",
    )?;
    target(out, s, "As drawn: ", drawn)?;
    judged(out, s, &drawn.answer)?;
    target(out, s, "As searched: ", searched)?;
    judged(out, s, &searched.answer)
}

/// The verdict, the check that comes closest to its limit, and the warnings.
pub fn judged<O>(out: &mut impl Write, s: System, answer: &Answer<O>) -> io::Result<()> {
    let governing = || answer.checks.iter().filter(|c| c.governing);
    for check in governing().filter(|c| c.status == CheckStatus::Fail) {
        item(out, &format!("FAILS: {}.", sentence(check, s)))?;
    }
    let used = |c: &Check| c.utilisation_ratio.unwrap_or(0.0);
    let closest = governing()
        .filter(|c| c.passed())
        .max_by(|a, b| used(a).total_cmp(&used(b)));
    if let Some(check) = closest {
        let count = answer.checks.iter().filter(|c| c.passed()).count();
        let text = sentence(check, s);
        item(
            out,
            &format!("Checks passed: {count}; the closest is {text}."),
        )?;
    }
    for (code, count) in warnings(answer) {
        let first = answer.warnings.iter().find(|w| w.code == code);
        let detail = first.map_or("", |w| w.detail.as_str());
        let more = match count {
            1 => String::new(),
            _ => format!(" (and {} more of this kind)", count - 1),
        };
        item(out, &format!("Warning {code}: {}{more}", cut(detail, 150)))?;
    }
    paragraph(out, "  ", &format!("Verdict: {}.", words(answer.verdict)))
}

/// A check in words: what against what.
fn sentence(check: &Check, s: System) -> String {
    let about = check.subject.as_ref();
    let about = about.map_or(String::new(), |subject| format!(" of {}", subject.label));
    let mut text = format!("{}{about}", check.id);
    if let (Some(demand), Some(capacity)) = (&check.demand, &check.capacity) {
        let (demand, capacity) = (show(demand.clone(), s), show(capacity.clone(), s));
        text.push_str(&format!(", {demand} against {capacity}"));
    }
    if let Some(u) = check.utilisation_ratio {
        text.push_str(&format!(" ({})", show(u, s)));
    }
    text
}

/// Codes of the warnings with their number.
fn warnings<O>(answer: &Answer<O>) -> Vec<(&str, usize)> {
    let mut codes: Vec<(&str, usize)> = Vec::new();
    for warning in &answer.warnings {
        match codes.iter_mut().find(|(code, _)| *code == warning.code) {
            Some((_, count)) => *count += 1,
            None => codes.push((&warning.code, 1)),
        }
    }
    codes
}

fn words(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Accept => "accept",
        Verdict::Provisional => "provisional",
        Verdict::Reject => "reject",
        Verdict::Continue => "continue",
        Verdict::NotAsked => "not asked",
    }
}

/// A verdict with what decided it, for the last chapter.
pub fn outcome<O>(name: &'static str, answer: &Answer<O>) -> (&'static str, Verdict, Vec<String>) {
    let reasons = (answer.verdict_reasons.iter())
        .map(|r| match &r.subject {
            Some(subject) => format!("{} of {}", r.code, subject.label),
            None => r.code.to_string(),
        })
        .collect();
    (name, answer.verdict, reasons)
}

/// What to do next, as far as the answers tell.
pub fn next(
    out: &mut impl Write,
    s: System,
    outcomes: &[(&'static str, Verdict, Vec<String>)],
    torque: &Told<TorqueCapacity>,
    frost: &Told<FrostEmbedment>,
) -> io::Result<()> {
    section(out, "What to do next")?;
    for (name, verdict, reasons) in outcomes {
        let text = match verdict {
            Verdict::Accept => continue,
            Verdict::Reject => format!("Not {name}: {}.", reasons.join(", ")),
            Verdict::Provisional => {
                format!("Complete {name} and ask again: {}.", reasons.join(", "))
            }
            Verdict::Continue | Verdict::NotAsked => format!("{name}: nothing was judged."),
        };
        item(out, &text)?;
    }
    let accepted: Vec<_> = (outcomes.iter())
        .filter(|o| o.1 == Verdict::Accept)
        .map(|o| o.0)
        .collect();
    let text = format!("Before the engineer of record: {}.", accepted.join("; "));
    item(out, &text)?;
    if let Some(cab) = cab(torque, s) {
        let rating = torque.answer.result.torsion.as_ref().and_then(|t| t.rating);
        let most = rating.map_or(String::new(), |r| format!(", never above {}", show(r, s)));
        let deep = show(frost.answer.result.embedment.tip_depth, s);
        let text = format!(
            "For the cab: at least {cab}{most}, held while the pile still advances by its pitch, \
             with the tip at {deep} or deeper as judged above. Torque alone accepts no pile."
        );
        item(out, &text)?;
    }
    Ok(())
}
