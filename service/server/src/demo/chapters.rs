//! The chapters of the demo: what each answer says, in sentences. Nothing is calculated
//! here but the choice of what to print.

use std::io::{self, Write};

use bearwell_engine::contract::{Answer, CheckStatus, Verdict};
use bearwell_engine::frost::FrostEmbedment;
use bearwell_engine::helix::{AxialResistance, GoverningMode, HelixCapacity};
use bearwell_engine::layout::{LayoutPile, PileLayout};
use bearwell_engine::quantity::System;
use bearwell_engine::torque::TorqueCapacity;

use super::Told;
use super::text::{bare, item, paragraph, section, show};

/// Decimals of a force: whole pounds, tenths of a kilonewton.
fn tenths(system: System) -> usize {
    match system {
        System::Si => 1,
        System::UsCustomary => 0,
    }
}

/// Decimals of a torque: whole foot-pounds, hundredths of a kilonewton metre.
fn fine(system: System) -> usize {
    match system {
        System::Si => 2,
        System::UsCustomary => 0,
    }
}

/// What the soil gives.
pub fn ground(out: &mut impl Write, s: System, all: &[Told<HelixCapacity>]) -> io::Result<()> {
    section(out, "1. What does the ground give one pile?  (helix-capacity)")?;
    all.iter().try_for_each(|told| one_pile(out, s, told))
}

fn one_pile(out: &mut impl Write, s: System, told: &Told<HelixCapacity>) -> io::Result<()> {
    let result = &told.answer.result;
    for (name, resistance) in [
        ("Compression", &result.compression),
        ("Tension", &result.tension),
    ] {
        if let Some(r) = resistance {
            direction(out, s, name, r)?;
        }
    }
    judged(out, s, &told.answer)
}

fn direction(out: &mut impl Write, s: System, name: &str, r: &AxialResistance) -> io::Result<()> {
    let mode = match r.governing_mode {
        GoverningMode::IndividualBearing => "each helix bearing for itself",
        GoverningMode::CylindricalShear => "the cylinder between the helices",
    };
    let mut text = format!(
        "{name}: ultimate {}, governed by {mode}",
        show(r.ultimate, s, tenths(s))
    );
    if let Some(design) = &r.design {
        let kind = match design.kind {
            bearwell_engine::helix::DesignCapacityKind::Allowable => "allowable",
            bearwell_engine::helix::DesignCapacityKind::Factored => "factored",
        };
        text.push_str(&format!(
            "; {kind} {}",
            show(design.capacity, s, tenths(s))
        ));
    }
    text.push_str(". By helix: ");
    let helices: Vec<_> = r
        .individual_bearing
        .helices
        .iter()
        .map(|h| {
            format!(
                "{} at {} gives {} on {}",
                show(h.diameter, s, 0),
                show(h.depth, s, 2),
                show(h.resistance, s, tenths(s)),
                show(h.area, s, 4)
            )
        })
        .collect();
    item(out, &format!("{text}{}.", helices.join("; ")))
}

/// What the gauge must show.
pub fn gauge(out: &mut impl Write, s: System, told: &Told<TorqueCapacity>) -> io::Result<()> {
    section(out, "2. What must the gauge show?  (torque-capacity)")?;
    let result = &told.answer.result;
    let factors = result.torque_factor.iter();
    for (name, used) in factors.flat_map(|f| [("compression", &f.compression), ("tension", &f.tension)]) {
        if let Some(used) = used {
            item(
                out,
                &format!("Torque factor in {name}: {}.", show(used.factor, s, 2)),
            )?;
        }
    }
    target(out, s, told)?;
    if let Some(drive) = result.drive.as_ref().and_then(|d| d.for_required.as_ref()) {
        item(
            out,
            &format!(
                "On the pressure gauge that is {} of difference.",
                show(drive.differential_pressure, s, fine(s))
            ),
        )?;
    }
    if let Some(rating) = result.torsion.as_ref().and_then(|t| t.rating) {
        item(
            out,
            &format!("The shaft is rated for {}.", show(rating, s, fine(s))),
        )?;
    }
    judged(out, s, &told.answer)
}

/// The torque that a load needs.
fn target(out: &mut impl Write, s: System, told: &Told<TorqueCapacity>) -> io::Result<()> {
    let Some(required) = &told.answer.result.required else {
        return Ok(());
    };
    for (name, r) in [
        ("compression", &required.compression),
        ("tension", &required.tension),
    ] {
        if let Some(r) = r {
            item(
                out,
                &format!(
                    "{} of {name} needs {} ultimate, so {}.",
                    show(r.demand, s, tenths(s)),
                    show(r.ultimate, s, tenths(s)),
                    show(r.torque, s, fine(s))
                ),
            )?;
        }
    }
    item(
        out,
        &format!(
            "For the cab, rounded up: {} {} or {} {}.",
            bare(required.cab.si.clone(), System::Si, 2),
            "kN_m",
            bare(required.cab.us_customary.clone(), System::UsCustomary, 0),
            "ft_lbf"
        ),
    )
}

/// Frost and embedment.
pub fn winter(out: &mut impl Write, s: System, told: &Told<FrostEmbedment>) -> io::Result<()> {
    section(out, "3. Does frost reach it?  (frost-embedment)")?;
    let result = &told.answer.result;
    let e = &result.embedment;
    item(
        out,
        &format!(
            "The ground freezes to {}; the top helix is at {} and must be at {}; the tip is at {}.",
            show(result.frost.base_depth, s, 2),
            show(e.top_helix_depth, s, 2),
            show(e.required_top_helix_depth, s, 2),
            show(e.tip_depth, s, 2)
        ),
    )?;
    for stage in result.uplift.iter().flat_map(|u| &u.stages) {
        let d = &stage.design;
        let mut text = format!(
            "Frost pulls with {} on {} of shaft, stage {}",
            show(d.frost_force, s, tenths(s)),
            show(stage.frozen_length, s, 2),
            stage.stage.name()
        );
        if let (Some(net), Some(needed)) = (d.net_frost_tension, d.required_ultimate_tension) {
            text.push_str(&format!(
                "; {} is left to tension, which needs {} ultimate",
                show(net, s, tenths(s)),
                show(needed, s, tenths(s))
            ));
        }
        item(out, &format!("{text}."))?;
    }
    if let Some(v) = &result.void_form {
        item(
            out,
            &format!(
                "A void form of {} leaves {} free for a heave of {}.",
                show(v.nominal_thickness, s, 1),
                show(v.usable_thickness, s, 1),
                show(v.design_heave, s, 1)
            ),
        )?;
    }
    judged(out, s, &told.answer)
}

/// The plan: given piles, then the fewest.
pub fn plan(
    out: &mut impl Write,
    s: System,
    given: &Told<PileLayout>,
    search: &Told<PileLayout>,
) -> io::Result<()> {
    section(out, "4. Where do the piles go?  (pile-layout)")?;
    let result = &given.answer.result;
    item(
        out,
        &format!(
            "As drawn: {} piles. Continuous beams give these reactions; the tributary lengths \
             beside them are what a ruler gives.",
            result.pile_count
        ),
    )?;
    table(out, s, &result.piles)?;
    judged(out, s, &given.answer)?;
    let found = &search.answer.result;
    let mut text = format!("Searched: {} piles", found.pile_count);
    if let Some(report) = &found.search {
        text.push_str(match report.proven_minimal {
            true => ", proven to be the fewest",
            false => ", not proven to be the fewest",
        });
        text.push_str(&format!(
            " (no plan within the limits has fewer than {})",
            report.lower_bound_count
        ));
    }
    if let Some(u) = found.max_utilisation_ratio {
        text.push_str(&format!("; highest utilisation {}", show(u, s, 3)));
    }
    item(out, &format!("{text}."))?;
    let places: Vec<_> = found
        .piles
        .iter()
        .map(|p| format!("{} ({}, {})", p.label, bare(p.at.x, s, 2), bare(p.at.y, s, 2)))
        .collect();
    item(out, &format!("At {}.", places.join(" ")))?;
    judged(out, s, &search.answer)
}

/// Reactions with their tributary counterparts.
fn table(out: &mut impl Write, s: System, piles: &[LayoutPile]) -> io::Result<()> {
    let unit = match s {
        System::Si => "kN",
        System::UsCustomary => "lbf",
    };
    let up = piles.iter().any(|p| p.tension.demand.si() > 0.0);
    let up_head = if up { format!("{:>10}", "up") } else { String::new() };
    writeln!(
        out,
        "      {:<8}{:>10}{up_head}{:>12}{:>8}   {unit}",
        "pile", "down", "tributary", "used"
    )?;
    for p in piles {
        let up = if up {
            format!("{:>10}", bare(p.tension.demand, s, tenths(s)))
        } else {
            String::new()
        };
        let tributary = p.tributary.map_or("-".into(), |t| bare(t, s, tenths(s)));
        let used = p.utilisation_ratio.map_or("-".into(), |u| bare(u, s, 3));
        let over = if p.utilisation_ratio.is_some_and(|u| u > 1.0) { " over" } else { "" };
        writeln!(
            out,
            "      {:<8}{:>10}{up}{tributary:>12}{used:>8}{over}",
            p.label,
            bare(p.compression.demand, s, tenths(s))
        )?;
    }
    Ok(())
}

/// The torque of the most loaded pile of the plan.
pub fn worst_pile(out: &mut impl Write, s: System, told: &Told<TorqueCapacity>) -> io::Result<()> {
    section(
        out,
        "5. And the most loaded pile of that plan?  (torque-capacity again)",
    )?;
    target(out, s, told)?;
    judged(out, s, &told.answer)
}

/// Verdict, what decided it, and what is worth knowing.
fn judged<O>(out: &mut impl Write, s: System, answer: &Answer<O>) -> io::Result<()> {
    let governing = answer
        .checks
        .iter()
        .filter(|c| c.status == CheckStatus::Pass || c.status == CheckStatus::Fail)
        .filter(|c| c.governing);
    for check in governing {
        let about = check.subject.as_ref().map_or(String::new(), |s| format!(" {}", s.label));
        let (Some(demand), Some(capacity)) = (&check.demand, &check.capacity) else {
            continue;
        };
        let decimals = if demand.unit() == "m" { 2 } else { tenths(s).max(1) };
        let outcome = if check.passed() { "passes" } else { "FAILS" };
        let used = check
            .utilisation_ratio
            .map_or(String::new(), |u| format!(", {}", show(u, s, 3)));
        item(
            out,
            &format!(
                "Check {}{about} {outcome}: {} against {}{used}.",
                check.id,
                show(demand.clone(), s, decimals),
                show(capacity.clone(), s, decimals)
            ),
        )?;
    }
    paragraph(out, "  ", &format!("Verdict: {}.", words(answer.verdict)))?;
    let mut codes: Vec<(&str, usize)> = Vec::new();
    for warning in &answer.warnings {
        match codes.iter_mut().find(|(code, _)| *code == warning.code) {
            Some((_, count)) => *count += 1,
            None => codes.push((&warning.code, 1)),
        }
    }
    for (code, count) in codes {
        let first = answer.warnings.iter().find(|w| w.code == code);
        let detail = first.map_or("", |w| w.detail.as_str());
        let more = if count > 1 { format!(" (and {} more)", count - 1) } else { String::new() };
        item(out, &format!("Warning {code}: {detail}{more}"))?;
    }
    Ok(())
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

/// A verdict with what is to be done about it.
pub fn verdict<O>(name: &'static str, answer: &Answer<O>) -> (&'static str, Verdict, Vec<String>) {
    let reasons = answer.verdict_reasons.iter().map(|r| {
        let about = r.subject.as_ref().map_or(String::new(), |s| format!(" {}", s.label));
        format!("{}{about}: {}", r.code, r.detail)
    });
    (name, answer.verdict, reasons.collect())
}

/// What stands at the end, and what to do next.
pub fn next(
    out: &mut impl Write,
    verdicts: &[(&'static str, Verdict, Vec<String>)],
) -> io::Result<()> {
    section(out, "What to do next")?;
    for (name, verdict, reasons) in verdicts {
        let mut text = format!("{name}: {}", words(*verdict));
        text.push_str(match verdict {
            Verdict::Accept => ". Put it before the engineer of record as it is",
            Verdict::Reject => ". Change it and ask again",
            Verdict::Provisional => ". Supply what is missing and ask again",
            Verdict::Continue | Verdict::NotAsked => "",
        });
        for (i, reason) in reasons.iter().take(4).enumerate() {
            text.push_str(if i == 0 { ": " } else { "; " });
            text.push_str(reason);
        }
        if reasons.len() > 4 {
            text.push_str(&format!("; and {} more", reasons.len() - 4));
        }
        item(out, &format!("{text}."))?;
    }
    Ok(())
}
