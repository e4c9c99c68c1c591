//! What is wrong with a request: lengths of lists first, then everything that needs more
//! than one member. All faults are found at once.

use super::codes::refusals;
use super::options::{FootingAction, FootingBasis, FootingMethod};
use super::request::{FactorTable, Footing, FootingShape, Request};
use super::soil::{FootingSoil, FootingStrength};
use crate::basis::DemandLevel;
use crate::catalogue::RefusalDef;
use crate::catalogue::refusals::{ABOVE_MAXIMUM, BASIS_MIXED, BELOW_MINIMUM, MISSING_MEMBER};
use crate::contract::{Issue, Refusal, list_length, none_of};
use crate::limits;
use crate::quantity::{Angle, AngleUnit, UnitWeight};
use crate::soil::WATER_UNIT_WEIGHT;
use crate::soil::codes::refusals as soil_refusals;
use crate::source::{SKEMPTON_1951, Sourced, UFC_SHALLOW_DEPTH};

/// Depth over width to which a footing is shallow.
pub static SHALLOW_DEPTH_RATIO: Sourced<f64> =
    Sourced::new("footing_shallow_depth_ratio", 5.0, &UFC_SHALLOW_DEPTH);
/// Largest friction angle in a table, degrees.
const ANGLE_MAX_DEG: f64 = 45.0;
/// Largest depth over width in a table.
const RATIO_MAX: f64 = 50.0;
/// Two values closer than this, in proportion, are one (rounding of units).
const SAME: f64 = 1e-9;

/// Faults in the lengths of lists.
pub(super) fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    if let Some(methods) = &request.methods {
        list_length(issues, "/methods", methods.len(), 1, 5);
    }
    let Some(table) = &request.factor_table else {
        return;
    };
    let rows = limits::FACTOR_ROWS;
    if let Some(angles) = &table.friction_angles {
        let at = "/factor_table/friction_angles";
        list_length(issues, at, angles.len(), 1, rows);
    }
    if let Some(ratios) = &table.depth_ratios {
        let at = "/factor_table/depth_ratios";
        list_length(issues, at, ratios.len(), 1, rows);
    }
}

/// Every other fault.
pub(super) fn faults(request: &Request) -> Result<(), Refusal> {
    let mut issues = Vec::new();
    if request.footing.is_none() && request.soil.is_none() && request.factor_table.is_none() {
        issues.push(Issue::new(
            "",
            &refusals::FOOTING_NOTHING_ASKED,
            "neither a footing nor a table is asked",
        ));
    }
    missing(request, &mut issues);
    repeated(request, &mut issues);
    if let Some(footing) = &request.footing {
        shape(footing, &mut issues);
        depth(footing, request, &mut issues);
    }
    if let Some(soil) = &request.soil {
        strength(soil, request, &mut issues);
        weights(soil, &mut issues);
    }
    load(request, &mut issues);
    if let Some(table) = &request.factor_table {
        rows(table, &mut issues);
        tables(table, request, &mut issues);
    }
    none_of(issues)
}

/// Members that need each other.
fn missing(request: &Request, issues: &mut Vec<Issue>) {
    let mut lack = |without: bool, detail: &str| {
        if without {
            issues.push(Issue::new("", &MISSING_MEMBER, detail));
        }
    };
    let (footing, soil) = (request.footing.is_some(), request.soil.is_some());
    let demand = request.demand.is_some();
    lack(footing && !soil, "`footing` needs `soil`");
    lack(soil && !footing, "`soil` needs `footing`");
    lack(demand && !footing, "`demand` needs `footing`");
    lack(
        demand && request.design_basis.is_none(),
        "`demand` needs `design_basis`",
    );
    lack(
        request.design_basis.is_some() && !footing,
        "`design_basis` needs `footing`",
    );
}

fn repeated(request: &Request, issues: &mut Vec<Issue>) {
    let methods = request.methods.as_deref().unwrap_or_default();
    for (i, method) in methods.iter().enumerate() {
        if methods[..i].contains(method) {
            issues.push(Issue::new(
                format!("/methods/{i}"),
                &refusals::FOOTING_METHOD_TWICE,
                format!("`{}` stands before", method.name()),
            ));
        }
    }
}

fn shape(footing: &Footing, issues: &mut Vec<Issue>) {
    if let FootingShape::Rectangle(r) = &footing.shape
        && r.length.si() < r.width.si() * (1.0 - SAME)
    {
        let role = crate::quantity::Length::ROLE;
        issues.push(
            Issue::new(
                "/footing/shape/rectangle/length",
                &refusals::FOOTING_LENGTH_BELOW_WIDTH,
                format!(
                    "{} long, {} wide",
                    role.in_both_systems(r.length.si()),
                    role.in_both_systems(r.width.si())
                ),
            )
            .limit(role.in_both_systems(r.width.si())),
        );
    }
}

fn depth(footing: &Footing, request: &Request, issues: &mut Vec<Issue>) {
    let ratio = footing.depth / footing.shape.width();
    let limit = SHALLOW_DEPTH_RATIO.value;
    if ratio <= limit * (1.0 + SAME) {
        return;
    }
    let shallow: Vec<&str> = match &request.soil {
        Some(soil) => super::evaluate::methods_of(request, soil)
            .into_iter()
            .filter(|m| *m != FootingMethod::Skempton1951)
            .map(FootingMethod::name)
            .collect(),
        None => Vec::new(),
    };
    if !shallow.is_empty() {
        issues.push(
            Issue::new(
                "/footing/depth",
                &refusals::FOOTING_TOO_DEEP,
                format!(
                    "depth is {} widths; asked of {}",
                    crate::quantity::round9(ratio),
                    shallow.join(", ")
                ),
            )
            .limit(format!("{limit} widths"))
            .source(SHALLOW_DEPTH_RATIO.reference),
        );
    }
}

fn strength(soil: &FootingSoil, request: &Request, issues: &mut Vec<Issue>) {
    let FootingStrength::Drained(drained) = &soil.strength else {
        return;
    };
    if drained.friction_angle.si() <= 0.0 && drained.cohesion.is_none_or(|c| c.si() <= 0.0) {
        issues.push(Issue::new(
            "/soil/strength/drained",
            &refusals::FOOTING_WITHOUT_STRENGTH,
            "neither friction nor cohesion",
        ));
    }
    let methods = request.methods.as_deref().unwrap_or_default();
    if let Some(i) = methods
        .iter()
        .position(|m| *m == FootingMethod::Skempton1951)
    {
        issues.push(
            Issue::new(
                format!("/methods/{i}"),
                &refusals::FOOTING_METHOD_UNDRAINED_ONLY,
                "`skempton_1951` is for an undrained soil, and the soil sent is drained",
            )
            .source(&SKEMPTON_1951),
        );
    }
}

/// Faults of the unit weights: those of a layer of a profile.
fn weights(soil: &FootingSoil, issues: &mut Vec<Issue>) {
    let say = |w: UnitWeight| UnitWeight::ROLE.in_both_systems(w.si());
    let water = soil.water_unit_weight.unwrap_or(WATER_UNIT_WEIGHT.value);
    let above = soil.unit_weight;
    let mut fault = |member: &str, code: &'static RefusalDef, detail: String| {
        issues.push(Issue::new(format!("/soil/{member}"), code, detail));
    };
    if let Some(below) = soil.saturated_unit_weight {
        if below.si() < above.si() * (1.0 - SAME) {
            fault(
                "saturated_unit_weight",
                &soil_refusals::LAYER_SATURATED_LIGHTER,
                format!("{} saturated, {} above water", say(below), say(above)),
            );
        }
        if below.si() > (above.si() + water.si()) * (1.0 + SAME) {
            fault(
                "saturated_unit_weight",
                &soil_refusals::LAYER_SATURATED_TOO_HEAVY,
                format!(
                    "{} saturated is more than {} above water and {} of water",
                    say(below),
                    say(above),
                    say(water)
                ),
            );
        }
    }
    let below = soil.saturated_unit_weight.unwrap_or(above);
    if soil.water_depth.is_some() && below.si() <= water.si() {
        let member = match soil.saturated_unit_weight {
            Some(_) => "saturated_unit_weight",
            None => "unit_weight",
        };
        fault(
            member,
            &soil_refusals::LAYER_LIGHTER_THAN_WATER,
            format!(
                "{} below the water table is not above {} of water",
                say(below),
                say(water)
            ),
        );
    }
}

fn load(request: &Request, issues: &mut Vec<Issue>) {
    let Some(demand) = &request.demand else {
        return;
    };
    let mixed = match (&request.design_basis, demand.level) {
        (Some(FootingBasis::AllowableStress(_)), DemandLevel::Factored) => {
            Some("a factored load beside an allowable pressure")
        }
        (Some(FootingBasis::LimitStates(_)), DemandLevel::Allowable) => {
            Some("an unfactored load beside a factored resistance")
        }
        _ => None,
    };
    if let Some(detail) = mixed {
        issues.push(Issue::new("/demand/level", &BASIS_MIXED, detail));
    }
    let Some(footing) = &request.footing else {
        return;
    };
    let strip = matches!(footing.shape, FootingShape::Strip(_));
    let (member, wrong) = match demand.action {
        FootingAction::Pressure(_) => ("pressure", false),
        FootingAction::Load(_) => ("load", strip),
        FootingAction::LineLoad(_) => ("line_load", !strip),
    };
    if wrong {
        let detail = if strip {
            "a force on a strip without length; send `line_load` or `pressure`"
        } else {
            "a load per length on a base of its own length; send `load` or `pressure`"
        };
        issues.push(Issue::new(
            format!("/demand/action/{member}"),
            &refusals::FOOTING_LOAD_OF_OTHER_SHAPE,
            detail,
        ));
    }
}

/// Ranges of the numbers in the lists.
fn rows(table: &FactorTable, issues: &mut Vec<Issue>) {
    let mut outside = |at: String, below: bool, detail: String, limit: String| {
        let code = if below {
            &BELOW_MINIMUM
        } else {
            &ABOVE_MAXIMUM
        };
        let side = if below { "below" } else { "above" };
        issues.push(Issue::new(at, code, format!("{detail} is {side} {limit}")).limit(limit));
    };
    for (i, angle) in table.friction_angles.iter().flatten().enumerate() {
        let degrees = angle.get(AngleUnit::Deg);
        let below = degrees < 0.0;
        if below || degrees > ANGLE_MAX_DEG * (1.0 + SAME) {
            let say = |v: f64| Angle::ROLE.in_both_systems(Angle::new(v, AngleUnit::Deg).si());
            outside(
                format!("/factor_table/friction_angles/{i}"),
                below,
                say(degrees),
                say(if below { 0.0 } else { ANGLE_MAX_DEG }),
            );
        }
    }
    for (i, ratio) in table.depth_ratios.iter().flatten().enumerate() {
        let below = *ratio < 0.0;
        if below || *ratio > RATIO_MAX {
            outside(
                format!("/factor_table/depth_ratios/{i}"),
                below,
                ratio.to_string(),
                if below { 0.0 } else { RATIO_MAX }.to_string(),
            );
        }
    }
}

/// Tables that none of the methods has.
fn tables(table: &FactorTable, request: &Request, issues: &mut Vec<Issue>) {
    if table.friction_angles.is_none() && table.depth_ratios.is_none() {
        issues.push(Issue::new(
            "/factor_table",
            &MISSING_MEMBER,
            "`factor_table` needs `friction_angles` or `depth_ratios`",
        ));
    }
    let Some(methods) = &request.methods else {
        return;
    };
    let skempton = methods.contains(&FootingMethod::Skempton1951);
    let others = methods.iter().any(|m| *m != FootingMethod::Skempton1951);
    let mut lack = |member: &str, detail: &str| {
        issues.push(Issue::new(
            format!("/factor_table/{member}"),
            &refusals::FOOTING_TABLE_WITHOUT_METHOD,
            detail,
        ));
    };
    if table.friction_angles.is_some() && !others {
        lack(
            "friction_angles",
            "`skempton_1951` has no factors by friction angle",
        );
    }
    if table.depth_ratios.is_some() && !skempton {
        lack(
            "depth_ratios",
            "the table by depth is that of `skempton_1951`",
        );
    }
}
