//! Every fault of a request whose members are each in range.

use super::codes::refusals;
use super::conduction::BAND;
use super::ground::{holds_water, name, saturation_of};
use super::insulation::place;
use super::layer_request::{FreezingLayer, FreezingMaterial, FreezingSoil, SoilTexture};
use super::methods::chart_faults;
use super::request::{
    CorrectionFactors, FreezingIndexDefinition, FreezingIndexSource, FreezingWinters,
    FrostDepthMethod, FrostSurface, FrostWinter, InsulationFor, Request,
};
use super::winter::{MEAN_WINTERS, factor_of, index_of_winters, winters_of};
use crate::catalogue::refusals::{ABOVE_MAXIMUM, BELOW_MINIMUM, DUPLICATE_LABEL, MISSING_MEMBER};
use crate::contract::{Issue, utilisation};
use crate::quantity::{
    FreezingIndex, FreezingIndexUnit, Length, Temperature, TemperatureDifference,
    TemperatureDifferenceUnit, TemperatureUnit, round9,
};
use crate::source::{
    BEARWELL_CHOICE, DERIVED, FREEZING_INDEX_DESIGN, GRAIN_DENSITY, KERSTEN_LIMITS,
    MODIFIED_BERGGREN_EQUATION, NOAA_FREEZING_INDEX_100, SURFACE_N_FACTORS,
};
use crate::trace::Trace;

/// Coldest mean of a surface over a season.
const COLDEST: TemperatureDifference =
    TemperatureDifference::new(60.0, TemperatureDifferenceUnit::K);
/// Range of an index of a winter.
const INDEX_MAX: FreezingIndex = FreezingIndex::new(5000.0, FreezingIndexUnit::CDay);
/// Least index that a depth is computed from.
const INDEX_MIN: FreezingIndex = FreezingIndex::new(1.0, FreezingIndexUnit::CDay);
/// Least water by mass of the conductivity of fine soil.
const FINE_WATER: f64 = 0.07;
/// Least water by mass of the conductivity of coarse soil.
const COARSE_WATER: f64 = 0.01;

/// Every fault of a request that stands at `at`, a pointer; empty where it is the whole request.
pub fn faults(request: &Request, at: &str) -> Vec<Issue> {
    let mut issues = Vec::new();
    asked(request, at, &mut issues);
    if let Some(winter) = &request.winter {
        winter_faults(winter, request.surface.as_ref(), at, &mut issues);
    }
    if let Some(layers) = &request.layers {
        layer_faults(layers, at, &mut issues);
        snow_faults(layers, request.surface.as_ref(), at, &mut issues);
    }
    if let (Some(asked), Some(layers)) = (&request.insulation_for, &request.layers) {
        insulation_faults(asked, layers, request.method, at, &mut issues);
    }
    if let Some(asked) = &request.correction_factors {
        issues.extend(correction_faults(asked, at));
    }
    issues
}

/// What goes together must be sent together.
fn asked(request: &Request, at: &str, issues: &mut Vec<Issue>) {
    let needs = [
        (request.winter.is_some(), "winter"),
        (request.layers.is_some(), "layers"),
        (request.surface.is_some(), "surface"),
        (request.method.is_some(), "method"),
        (request.solids_heat.is_some(), "solids_heat"),
        (request.official_depth.is_some(), "official_depth"),
        (request.insulation_for.is_some(), "insulation_for"),
    ];
    let sent: Vec<_> = needs.iter().filter(|n| n.0).map(|n| n.1).collect();
    if sent.is_empty() {
        if request.correction_factors.is_none() {
            let told = "send `winter` and `layers` for a frost depth, or `correction_factors`";
            issues.push(Issue::new(at, &refusals::NOTHING_ASKED, told));
        }
        return;
    }
    for (there, member) in [
        (request.winter.is_some(), "winter"),
        (request.layers.is_some(), "layers"),
    ] {
        if !there {
            let told = format!("`{member}` is needed with `{}`", sent.join("`, `"));
            issues.push(Issue::new(at, &MISSING_MEMBER, told));
        }
    }
}

fn winter_faults(
    winter: &FrostWinter,
    surface: Option<&FrostSurface>,
    at: &str,
    issues: &mut Vec<Issue>,
) {
    let mean = winter.mean_annual_temperature;
    let freezing = Temperature::new(0.0, TemperatureUnit::DegC);
    // as at freezing too where the warmth is lost in the band over which water freezes
    if (mean - freezing).si() <= 10.0 * BAND {
        issues.push(
            Issue::new(
                format!("{at}/winter/mean_annual_temperature"),
                &refusals::PERMAFROST,
                format!(
                    "{} is at or below freezing",
                    Temperature::ROLE.in_both_systems(mean.si())
                ),
            )
            .limit(format!(
                "above {}",
                Temperature::ROLE.in_both_systems(freezing.si())
            ))
            .source(&MODIFIED_BERGGREN_EQUATION),
        );
    }
    let index = match &winter.freezing_index {
        FreezingIndexSource::Given(given) => Some(given.value),
        FreezingIndexSource::Winters(winters) => {
            let found = winters_faults(winters, &format!("{at}/winter/freezing_index"));
            let fine = found.is_empty();
            issues.extend(found);
            fine.then(|| {
                let looked_at = winters_of(winters.definition);
                index_of_winters(&winters.values, looked_at, &mut Trace::off()).0
            })
        }
    };
    let Some(index) = index else { return };
    if index < INDEX_MIN {
        issues.push(range(
            format!("{at}/winter/freezing_index"),
            &BELOW_MINIMUM,
            index,
            INDEX_MIN,
        ));
        return;
    }
    let cold = index.si() * factor_of(surface) / winter.season_length.si();
    if !utilisation(cold, COLDEST.si()).1 {
        issues.push(
            Issue::new(
                format!("{at}/winter/season_length"),
                &refusals::SEASON_TOO_COLD,
                format!(
                    "the surface would be {} below freezing on average",
                    TemperatureDifference::ROLE.in_both_systems(cold)
                ),
            )
            .limit(TemperatureDifference::ROLE.in_both_systems(COLDEST.si()))
            .source(&BEARWELL_CHOICE),
        );
    }
}

fn range(
    pointer: String,
    code: &'static crate::catalogue::RefusalDef,
    value: FreezingIndex,
    limit: FreezingIndex,
) -> Issue {
    let told = FreezingIndex::ROLE.in_both_systems(value.si());
    Issue::new(pointer, code, told).limit(FreezingIndex::ROLE.in_both_systems(limit.si()))
}

fn winters_faults(winters: &FreezingWinters, at: &str) -> Vec<Issue> {
    let mut issues = Vec::new();
    let at = format!("{at}/winters");
    for (index, value) in winters.values.iter().enumerate() {
        let pointer = || format!("{at}/values/{index}");
        if *value < FreezingIndex::ZERO {
            let limit = FreezingIndex::ZERO;
            issues.push(range(pointer(), &BELOW_MINIMUM, *value, limit));
        }
        if *value > INDEX_MAX {
            issues.push(range(pointer(), &ABOVE_MAXIMUM, *value, INDEX_MAX));
        }
    }
    if winters.definition == FreezingIndexDefinition::Return100 {
        let told = "it asks for a fit of the extremes, which is made here by nobody";
        let pointer = format!("{at}/definition");
        issues.push(
            Issue::new(pointer, &refusals::RETURN_100_FROM_WINTERS, told)
                .source(&NOAA_FREEZING_INDEX_100),
        );
        return issues;
    }
    let least = winters_of(winters.definition).map_or(MEAN_WINTERS, |(latest, _)| latest);
    if winters.values.len() < least {
        let source = if winters.definition == FreezingIndexDefinition::Mean {
            &BEARWELL_CHOICE
        } else {
            &FREEZING_INDEX_DESIGN
        };
        let told = format!(
            "`{}` asks for {least} winters, {} were sent",
            winters.definition.name(),
            winters.values.len()
        );
        let pointer = format!("{at}/values");
        issues.push(
            Issue::new(pointer, &refusals::TOO_FEW_WINTERS, told)
                .limit(least.to_string())
                .source(source),
        );
    }
    issues
}

fn layer_faults(layers: &[FreezingLayer], at: &str, issues: &mut Vec<Issue>) {
    let last = layers.len().saturating_sub(1);
    for (index, layer) in layers.iter().enumerate() {
        let pointer = format!("{at}/layers/{index}");
        let own = name(layer, index);
        let twice = |(i, other): (usize, &FreezingLayer)| name(other, i) == own;
        if layers[..index].iter().enumerate().any(twice) {
            let told = format!("`{own}` names another layer too");
            issues.push(Issue::new(&pointer, &DUPLICATE_LABEL, told));
        }
        match layer.thickness {
            None if index < last => {
                let told = "`thickness` is needed of every layer but the last";
                issues.push(Issue::new(&pointer, &MISSING_MEMBER, told));
            }
            Some(_) if index == last => {
                let told = "the last layer goes on down";
                let at = format!("{pointer}/thickness");
                issues.push(Issue::new(at, &refusals::LAST_LAYER_HAS_THICKNESS, told));
            }
            _ => {}
        }
        if index == last && !holds_water(layer) {
            let told = "below it there is nothing that could stop the frost";
            let at = format!("{pointer}/material");
            issues.push(Issue::new(at, &refusals::LAST_LAYER_HOLDS_NO_WATER, told));
        }
        match &layer.material {
            FreezingMaterial::Soil(soil) => {
                soil_faults(soil, &format!("{pointer}/material/soil"), issues);
            }
            FreezingMaterial::Insulation(board) => {
                let sent = [board.conductivity.is_some(), board.resistance.is_some()];
                if sent[0] == sent[1] {
                    let told = "send `conductivity` or `resistance`";
                    let at = format!("{pointer}/material/insulation");
                    issues.push(Issue::new(at, &refusals::INSULATION_CONTRADICTS, told));
                }
            }
            _ => {}
        }
    }
}

fn soil_faults(soil: &FreezingSoil, at: &str, issues: &mut Vec<Issue>) {
    let water = soil.water_content_ratio;
    let (least, which) = match soil.texture {
        SoilTexture::Fine => (FINE_WATER, "fine"),
        SoilTexture::Coarse => (COARSE_WATER, "coarse"),
    };
    let pointer = format!("{at}/water_content_ratio");
    if !utilisation(least, water).1 {
        let told = format!(
            "{} of water; the conductivity of {which} soil is known from {least}",
            round9(water)
        );
        let issue = Issue::new(&pointer, &refusals::MOISTURE_BELOW_CORRELATION, told);
        issues.push(issue.limit(least.to_string()).source(&KERSTEN_LIMITS));
    }
    let most = saturation_of(soil);
    if !utilisation(water, most).1 {
        let (own, source) = match soil.grain_density_ratio {
            Some(own) => (own, &DERIVED),
            None => (super::constants::GRAIN_DENSITY_RATIO.value, &GRAIN_DENSITY),
        };
        let most = round9(most.max(0.0));
        let told = format!(
            "{} of water; with grains of {own} times the weight of water the soil is full at {most}",
            round9(water)
        );
        let issue = Issue::new(&pointer, &refusals::WATER_BEYOND_SATURATION, told);
        issues.push(issue.limit(most.to_string()).source(source));
    }
}

fn snow_faults(
    layers: &[FreezingLayer],
    surface: Option<&FrostSurface>,
    at: &str,
    issues: &mut Vec<Issue>,
) {
    let counted = matches!(
        surface,
        Some(FrostSurface::TurfUnderSnow(_) | FrostSurface::TreesBrushMoss(_))
    );
    let snow = |layer: &FreezingLayer| matches!(layer.material, FreezingMaterial::Snow(_));
    let mut top = true;
    for (index, layer) in layers.iter().enumerate() {
        let pointer = format!("{at}/layers/{index}/material/snow");
        if snow(layer) && !top {
            let told = "something that is no snow lies above it";
            issues.push(Issue::new(&pointer, &refusals::SNOW_NOT_ON_TOP, told));
        }
        if snow(layer) && counted {
            let told = "leave the layer of snow out, or choose the surface `snow`";
            let issue = Issue::new(&pointer, &refusals::SNOW_COUNTED_TWICE, told);
            issues.push(issue.source(&SURFACE_N_FACTORS));
        }
        top &= snow(layer);
    }
}

fn insulation_faults(
    asked: &InsulationFor,
    layers: &[FreezingLayer],
    method: Option<FrostDepthMethod>,
    at: &str,
    issues: &mut Vec<Issue>,
) {
    if method == Some(FrostDepthMethod::Stefan) {
        let told = "leave `method` out, or choose `heat_conduction`";
        let pointer = format!("{at}/method");
        let code = &refusals::FROST_METHOD_NOT_FOR_INSULATION;
        issues.push(Issue::new(pointer, code, told));
    }
    let mut top = 0.0;
    let mut tops = Vec::new();
    let mut wet = None;
    for (index, layer) in layers.iter().enumerate() {
        tops.push((name(layer, index), top));
        if wet.is_none() && holds_water(layer) {
            wet = Some(top);
        }
        top += layer.thickness.map_or(0.0, Length::si);
    }
    let Some(board) = place(asked, &tops) else {
        let told = "no layer has that label";
        let pointer = format!("{at}/insulation_for/on_top_of");
        let code = &refusals::INSULATION_LAYER_UNKNOWN;
        issues.push(Issue::new(pointer, code, told));
        return;
    };
    let least = board.max(wet.unwrap_or(0.0));
    if asked.depth.si() <= least * (1.0 + 1e-9) {
        let told = if board >= wet.unwrap_or(0.0) {
            "the board would lie below the frost that is wanted"
        } else {
            "down to there nothing holds water that freezes, so that no frost depth ends in it"
        };
        let least = Length::ROLE.in_both_systems(least);
        let pointer = format!("{at}/insulation_for/depth");
        let issue = Issue::new(pointer, &refusals::INSULATION_CANNOT_HELP, told);
        issues.push(issue.limit(format!("above {least}")).source(&DERIVED));
    }
}

fn correction_faults(asked: &CorrectionFactors, at: &str) -> Vec<Issue> {
    let at = format!("{at}/correction_factors");
    let mut issues = Vec::new();
    for (index, alpha) in asked.thermal_ratios.iter().enumerate() {
        issues.extend(chart_faults(
            (*alpha, format!("{at}/thermal_ratios/{index}")),
            (asked.fusion_ratio, format!("{at}/fusion_ratio")),
        ));
    }
    issues
}
