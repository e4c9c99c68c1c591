//! Drag on a pile that has no faults: friction, neutral plane, steel, helices.

use super::asked::{DragAsked, DragMethod, DragToeResistance};
use super::codes::{cautions, checks, methods, warnings};
use super::constants::MOBILISED;
use super::curve::curve;
use super::equations::mobilised_toe;
use super::faults::above_first_row;
use super::friction::{self, Friction};
use super::friction_request::DragFrictionSource;
use super::outcome::{DragAt, DragBalance, DragOutcome, NeutralPlanePosition};
use super::plane;
use super::{screening, structural};
use crate::contract::{Check, Refusal, SubjectKind, Work};
use crate::quantity::{Length, Size, in_both_systems};
use crate::source::{DERIVED, UFC_DOWNDRAG};

/// What drag needs of a pile.
#[derive(Debug, Clone)]
pub struct DragPile {
    /// Its name.
    pub label: String,
    /// Perimeter of its shaft, where it is known.
    pub perimeter: Option<Size>,
    /// Depth from which the shaft touches soil.
    pub contact_top: Length,
    /// Depth of its toe.
    pub toe: Length,
    /// Name and depth of each helix that bears.
    pub helices: Vec<(String, Length)>,
}

/// Judges drag on a pile; `at` is the pointer to what is asked. The faults of both are looked
/// for before.
pub fn judge(
    asked: &DragAsked,
    pile: &DragPile,
    at: &str,
    work: &mut Work,
) -> Result<DragOutcome, Refusal> {
    work.caution(&cautions::DRAG_IS_STRUCTURAL);
    let friction = friction_of(asked, pile, work);
    let load = asked.permanent_load;
    let balance = balance(asked, &friction, at, work)?;
    let fill_base = asked.settling.as_ref().map(|settling| {
        work.method(&methods::DRAG_FILL_BASE);
        work.trace
            .about(|| "base of the settling ground".to_owned());
        let found = plane::drag_at(&friction, settling.depth, load, &mut work.trace);
        work.trace.about(String::new);
        found
    });
    let method = asked.method();
    let governing = match method {
        DragMethod::NeutralPlane => balance.as_ref().and_then(|b| b.neutral_plane),
        DragMethod::FillBase => fill_base,
    };
    if let Some(balance) = &balance {
        let capacity = balance.toe_resistance + balance.shaft_resistance;
        let check = Check::at_most(&checks::DRAG_PERMANENT_LOAD_HELD, load, capacity, &DERIVED);
        work.check(check.subject(SubjectKind::Pile, &pile.label));
    }
    let steel = asked.structural.as_ref();
    let structural = structural::judge(steel, load, governing.as_ref(), &pile.label, work);
    helices(asked, pile, work);
    warn(asked, pile, balance.as_ref(), method, work);
    let toe = balance.as_ref().map(|b| b.toe_resistance);
    let smooth = matches!(asked.friction, DragFrictionSource::Layers(_));
    Ok(DragOutcome {
        method,
        permanent_load: load,
        governing,
        fill_base,
        structural,
        collapse: asked
            .settling
            .as_ref()
            .and_then(|ground| screening::collapse(ground, work)),
        screening: match &asked.screening {
            Some(sent) => screening::triggers(sent, work),
            None => Vec::new(),
        },
        curve: curve(&friction, load, toe, governing.as_ref(), smooth),
        layers: friction.layers,
        balance,
    })
}

fn friction_of(asked: &DragAsked, pile: &DragPile, work: &mut Work) -> Friction {
    match &asked.friction {
        DragFrictionSource::Layers(sent) => {
            work.method(&methods::DRAG_UNIT_FRICTION);
            let perimeter = pile.perimeter.unwrap_or(Size::ZERO);
            friction::of_layers(sent, perimeter, pile.contact_top, pile.toe, work)
        }
        DragFrictionSource::Cumulative(sent) => {
            work.method(&methods::DRAG_CUMULATIVE_FRICTION);
            friction::of_table(&sent.table)
        }
    }
}

/// The balance of forces, where a toe was sent.
fn balance(
    asked: &DragAsked,
    friction: &Friction,
    at: &str,
    work: &mut Work,
) -> Result<Option<DragBalance>, Refusal> {
    let Some(toe) = &asked.toe else {
        return Ok(None);
    };
    work.method(&methods::DRAG_NEUTRAL_PLANE);
    let DragToeResistance::Given(given) = &toe.resistance;
    let ratio = toe.mobilised_ratio.unwrap_or_else(|| work.take(&MOBILISED));
    let resistance = mobilised_toe(ratio, given.ultimate, &mut work.trace);
    match plane::balance(friction, asked.permanent_load, resistance, &mut work.trace) {
        Ok(found) => Ok(Some(found)),
        Err(()) => {
            let DragFrictionSource::Cumulative(sent) = &asked.friction else {
                return Ok(None);
            };
            let at = format!("{at}/friction/cumulative/table");
            Err(above_first_row(&at, &sent.table, Length::ZERO).into())
        }
    }
}

/// Every helix that bears against the depth of the settling ground.
fn helices(asked: &DragAsked, pile: &DragPile, work: &mut Work) {
    let Some(settling) = &asked.settling else {
        return;
    };
    let def = &checks::DRAG_HELIX_BELOW_SETTLING;
    if pile.helices.is_empty() {
        let check = Check::not_evaluated(def, "no_helices", &UFC_DOWNDRAG);
        work.check(check.subject(SubjectKind::Pile, &pile.label));
    }
    for (label, depth) in &pile.helices {
        let check = Check::at_least(def, settling.depth, *depth, &UFC_DOWNDRAG);
        work.check(check.subject(SubjectKind::Helix, label));
    }
}

fn warn(
    asked: &DragAsked,
    pile: &DragPile,
    balance: Option<&DragBalance>,
    method: DragMethod,
    work: &mut Work,
) {
    let Some(balance) = balance else {
        return;
    };
    let Some(DragAt { depth, .. }) = balance.neutral_plane else {
        return;
    };
    let told = |z: Length| in_both_systems(z.si(), "m");
    if balance.position == NeutralPlanePosition::AtToe {
        work.warn(
            &warnings::DRAG_NEUTRAL_PLANE_AT_TOE,
            format!(
                "permanent load and drag over the whole shaft, {}, are below the mobilised toe, {}",
                in_both_systems((asked.permanent_load + balance.greatest_drag).si(), "N"),
                in_both_systems(balance.toe_resistance.si(), "N")
            ),
        );
    }
    let above = pile.helices.iter().filter(|(_, at)| *at < depth);
    if let Some((label, at)) = above.min_by(|a, b| a.1.si().total_cmp(&b.1.si())) {
        work.warn(
            &warnings::DRAG_NEUTRAL_PLANE_BELOW_HELIX,
            format!(
                "neutral plane at {}, helix {label} at {}",
                told(depth),
                told(*at)
            ),
        );
    }
    if let Some(settling) = &asked.settling
        && method == DragMethod::NeutralPlane
        && depth > settling.depth
    {
        work.warn(
            &warnings::DRAG_BELOW_SETTLING_GROUND,
            format!(
                "neutral plane at {}, the ground settles down to {}",
                told(depth),
                told(settling.depth)
            ),
        );
    }
}
