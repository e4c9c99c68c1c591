//! The reading column: verdict, the checks with their numbers, what was compared, then the
//! tables of the rules and of the uplift.

use bearwell_engine::frost::{FrostDepthSource, FrostFactors, FrostFormat, FrostTensionOutcome};
use bearwell_engine::quantity::Length;
use bearwell_engine::shaft::Shaft;

use super::reading::{Subject, told};
use super::tables;
use crate::checks;
use crate::column::{self, Item, Lead};
use crate::svg::{Rect, Svg};
use crate::{panel, words};

/// Height of the field for the engineer of record, mm.
const SEAL: f64 = 12.0;
/// Gap above a table, mm.
const GAP: f64 = 1.6;

/// Draws the column from top to bottom.
pub fn draw(svg: &mut Svg, s: Subject, scales: &[String; 2], area: Rect) {
    let seal = Rect {
        y: area.bottom() - SEAL,
        h: SEAL,
        ..area
    };
    panel::seal(svg, seal);
    let y = panel::verdict(svg, "Frost embedment", s.answer.verdict, area) + 1.4;
    let tables = [tables::rules(s), tables::uplift(s)];
    let taken: f64 = tables.iter().map(|t| tables::height(t) + GAP).sum();
    let rest = Rect {
        y,
        h: seal.y - 1.6 - y - taken,
        ..area
    };
    let mut y = column::draw(svg, &items(s, scales), rest);
    for table in tables {
        y += GAP;
        let rest = Rect {
            y,
            h: tables::height(&table),
            ..area
        };
        y = tables::draw(svg, table, rest);
    }
}

fn items(s: Subject, scales: &[String; 2]) -> Vec<Item> {
    let mut all = vec![Item::plain(pile(s))];
    let open = checks::items(&s.answer.checks, "", s.system);
    if !open.is_empty() {
        all.push(Item::heading("Fails, is open or advises"));
        all.extend(open);
    }
    all.extend(checks::passed(&s.answer.checks, "").map(Item::plain));
    all.extend(depth(s).into_iter().map(Item::plain));
    all.extend(uplift(s).into_iter().map(Item::plain));
    all.extend(drag(s).map(Item::plain));
    all.extend(beam(s).into_iter().map(Item::plain));
    all.extend(panel::warned(&s.answer.warnings).map(|text| Item {
        lead: Lead::Warn,
        ..Item::plain(text)
    }));
    all.extend(scales.iter().map(Item::plain));
    all.push(Item::plain(panel::provenance(&s.answer.provenance)));
    all
}

fn pile(s: Subject) -> String {
    let (form, size) = match &s.request.pile.shaft {
        Shaft::Round(r) => ("round", r.outside_diameter),
        Shaft::Square(q) => ("square", q.side),
    };
    let helices = s.section().pile.helices.iter();
    let helices: Vec<String> = helices
        .map(|h| words::size_told(h.diameter, s.system))
        .collect();
    let name = match &s.request.pile.label {
        Some(label) => format!("Pile {}", label.as_str()),
        None => "The pile".to_owned(),
    };
    format!(
        "{name}: {form} shaft {}, helices {}.",
        words::size_told(size, s.system),
        helices.join(", ")
    )
}

/// Base of frost, and what the embedment lacks.
fn depth(s: Subject) -> Vec<String> {
    let depth = |l| words::depth_told(l, s.system);
    let (section, embedment) = (s.section(), &s.outcome().embedment);
    let mut texts = Vec::new();
    if let Some(computed) = section.computed_frost_base_depth {
        let by = match s.outcome().frost.governed_by {
            FrostDepthSource::Official => "official",
            FrostDepthSource::Computed => "computed",
        };
        texts.push(format!(
            "Frost to {} official, {} computed; {by} governs.",
            depth(section.official_frost_base_depth),
            depth(computed)
        ));
    }
    if embedment.shortfall > Length::ZERO {
        texts.push(format!(
            "Top helix {} too shallow: tip at {} or lower, pile {} long.",
            depth(embedment.shortfall),
            depth(embedment.required_tip_depth),
            depth(embedment.minimum_pile_length)
        ));
    }
    texts
}

/// Bond, adhesion, factors, what holds the pile, and what governs.
fn uplift(s: Subject) -> Vec<String> {
    let stress = |v| words::stress_told(v, s.system);
    let mut texts = Vec::new();
    if let Some(u) = &s.outcome().uplift {
        texts.push(format!(
            "Frost grips the shaft with {}; severe {}.",
            stress(u.bond_stress),
            stress(u.severe_bond_stress)
        ));
        if let Some(sleeve) = &u.sleeve {
            let counts = if sleeve.credited {
                "counts"
            } else {
                "counts nothing"
            };
            texts.push(format!(
                "Sleeve to {} {counts}.",
                words::depth_told(sleeve.bottom_depth, s.system)
            ));
        }
        texts.extend(holds(
            s,
            "below frost",
            u.tension.as_ref(),
            u.factors.as_ref(),
        ));
    }
    if let Some(swell) = &s.outcome().swelling {
        texts.push(format!(
            "Swelling soil grips the shaft with {}.",
            stress(swell.adhesion)
        ));
        texts.extend(holds(
            s,
            "below active zone",
            swell.tension.as_ref(),
            swell.factors.as_ref(),
        ));
    }
    if let Some(g) = &s.outcome().governing_uplift {
        let force = |f| words::force_told(f, s.system);
        texts.push(format!(
            "Worst: {}, {}. Coupling must carry {}, head {}.",
            tables::cause(g.cause),
            told(g.stage),
            force(g.coupling_demand),
            force(g.head_demand)
        ));
    }
    texts
}

/// What holds the pile, with the factors.
fn holds(
    s: Subject,
    place: &str,
    tension: Option<&FrostTensionOutcome>,
    factors: Option<&FrostFactors>,
) -> Option<String> {
    let (tension, factors) = (tension?, factors?);
    let force = |f| words::force_told(f, s.system);
    let number = |v| words::trimmed(v, 3);
    let by = match factors.format {
        FrostFormat::AllowableStress => factors
            .tension_safety_factor
            .map_or("as sent".to_owned(), |f| {
                format!("safety factor {}", number(f))
            }),
        FrostFormat::LimitStates => factors
            .tension_resistance_factor
            .map_or("as sent".to_owned(), |f| {
                format!("resistance factor {}", number(f))
            }),
    };
    let ultimate = tension
        .ultimate
        .map_or(String::new(), |u| format!("ultimate {}, ", force(u)));
    Some(format!(
        "Ground holds {place}: {ultimate}usable {} ({by}; force x {}, dead load x {}).",
        force(tension.design),
        number(factors.frost_load_factor),
        number(factors.dead_load_factor)
    ))
}

/// Drag of settling ground, and what the steel bears with it.
fn drag(s: Subject) -> Option<String> {
    let drag = s.outcome().downdrag.as_ref()?;
    let force = |f| words::force_told(f, s.system);
    let Some(at) = &drag.governing else {
        return Some("No neutral plane: the pile does not hold its load.".to_owned());
    };
    let steel = drag.structural.as_ref().map_or(String::new(), |d| {
        format!("; steel {} of {}", force(d.load), force(d.strength))
    });
    Some(format!(
        "Drag to {}: load in the pile {}{steel}.",
        words::depth_told(at.depth, s.system),
        force(at.maximum_load)
    ))
}

/// What is not drawn of beam and void form.
fn beam(s: Subject) -> Vec<String> {
    let section = s.section();
    let mut texts = Vec::new();
    if let Some(beam) = &section.beam {
        match (beam.width, beam.top_depth) {
            (None, None) => texts.push("Width and top of the beam were not sent.".to_owned()),
            (None, Some(_)) => texts.push("Width of the beam was not sent.".to_owned()),
            (Some(_), None) => texts.push("Top of the beam was not sent.".to_owned()),
            (Some(_), Some(_)) => {}
        }
    }
    if let Some(form) = &s.outcome().void_form
        && form.shortfall.si() > 0.0
    {
        texts.push(format!(
            "The void form needs {} placed.",
            words::size_told(form.required_nominal_thickness, s.system)
        ));
    }
    texts
}
