//! The course of the calculation: faults, winter, layers, the methods side by side, the
//! comparison, insulation; and correction factors by themselves.

use super::FrostPenetration;
use super::berggren::{correction_factor, sums};
use super::codes::{checks, methods as codes, warnings};
use super::faults::faults;
use super::ground::{self, Layer, Slab};
use super::insulation::{self, Sought};
use super::layer_request::FreezingMaterial;
use super::methods::{chosen, depth, line, note};
use super::outcome::*;
use super::request::{FreezingIndexDefinition, FrostDepthMethod, FrostWinter, Request};
use super::winter::{self, Winter};
use crate::catalogue::cautions;
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{
    Calculation, Check, Issue, Refusal, Work, list_length, none_of, utilisation,
};
use crate::limits;
use crate::quantity::{Length, ThermalResistance, round9};
use crate::source::{FROST_DEPTH_OFFICIAL, KERSTEN_1949};
use crate::text::Label;

impl Calculation for FrostPenetration {
    fn lengths(request: &Request, issues: &mut Vec<Issue>) {
        lengths(request, "", issues);
    }

    fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
        none_of(faults(request, ""))?;
        for def in [
            &cautions::ENGINEER_OF_RECORD,
            &cautions::LOCAL_CODE,
            &cautions::SOIL_PROFILE,
            &cautions::NOT_COVERED,
        ] {
            work.caution(def);
        }
        let frost = match &request.winter {
            Some(_) => Some(computed(request, "", work)?),
            None => None,
        };
        Ok(Outcome {
            label: request.label.clone(),
            tags: request.tags.clone(),
            frost,
            correction_factors: correction_factors(request, work),
        })
    }
}

/// Faults in the lengths of lists of a request that stands at `at`, a pointer.
pub fn lengths(request: &Request, at: &str, issues: &mut Vec<Issue>) {
    use super::request::FreezingIndexSource::Winters;
    let winter = request.winter.as_ref().map(|w| &w.freezing_index);
    if let Some(Winters(winters)) = winter {
        let pointer = format!("{at}/winter/freezing_index/winters/values");
        list_length(
            issues,
            pointer,
            winters.values.len(),
            1,
            limits::FROST_WINTERS,
        );
    }
    if let Some(layers) = &request.layers {
        let pointer = format!("{at}/layers");
        list_length(issues, pointer, layers.len(), 1, limits::LAYERS);
    }
    if let Some(asked) = &request.correction_factors {
        let pointer = format!("{at}/correction_factors/thermal_ratios");
        let most = limits::CORRECTION_FACTORS;
        list_length(issues, pointer, asked.thermal_ratios.len(), 1, most);
    }
}

/// The computed frost depth with everything it came from, of a request that stands at `at`, a
/// pointer: for this calculation, and for others that take one as a member. Refused with all
/// faults, `winter` and `layers` that are absent among them.
pub fn computed(request: &Request, at: &str, work: &mut Work) -> Result<ComputedFrost, Refusal> {
    let mut issues = faults(request, at);
    let (Some(sent), Some(layers)) = (&request.winter, &request.layers) else {
        if issues.is_empty() {
            let told = "`winter` and `layers` are needed for a frost depth";
            issues.push(Issue::new(at, &MISSING_MEMBER, told));
        }
        return Err(Refusal::of(issues));
    };
    none_of(issues)?;
    let winter = winter::of(sent, request.surface.as_ref(), work);
    let layers = ground::layers(layers, request.solids_heat, work);
    let slabs = ground::slabs(&layers);
    let method = chosen(request.method, &slabs);
    let (frost, depths) = side_by_side(method, &slabs, &winter, at, work)?;
    methods_of_properties(&layers, work);
    warn(request, method, &slabs, frost, &winter, work);
    let insulation = match &request.insulation_for {
        Some(asked) => {
            let sought = Sought {
                layers: &layers,
                slabs: &slabs,
                winter: &winter,
                method: request.method,
                at,
            };
            Some(insulation::find(asked, &sought, work)?)
        }
        None => None,
    };
    let official = request
        .official_depth
        .map(|official| compare(frost, official, work));
    Ok(told(Found {
        sent,
        winter,
        layers: &layers,
        frost,
        method,
        depths,
        official,
        insulation,
    }))
}

/// The depth by every method; what the chosen one does not hold for is refused.
fn side_by_side(
    method: FrostDepthMethod,
    slabs: &[Slab],
    winter: &Winter,
    at: &str,
    work: &mut Work,
) -> Result<(Length, Vec<FrostDepthByMethod>), Refusal> {
    let mut lines = Vec::new();
    let mut frost = Length::ZERO;
    for each in FrostDepthMethod::ALL {
        work.trace.about(|| each.name().to_owned());
        let found = depth(each, slabs, winter, at, work)?;
        lines.push(line(each, &found));
        if found.is_ok() {
            note(each, work);
        }
        if each == method {
            frost = found.map_err(Refusal::of)?.0;
        }
    }
    work.trace.about(String::new);
    Ok((frost, lines))
}

fn methods_of_properties(layers: &[Layer], work: &mut Work) {
    if layers.iter().any(|l| l.thermal.saturation.is_some()) {
        work.method(&codes::SOIL_CONDUCTIVITY_KERSTEN);
        work.method(&codes::SOIL_HEAT);
    }
}

fn warn(
    request: &Request,
    method: FrostDepthMethod,
    slabs: &[Slab],
    frost: Length,
    winter: &Winter,
    work: &mut Work,
) {
    let layers = request.layers.iter().flatten();
    if winter.index.definition == FreezingIndexDefinition::Mean {
        let told = "the index is the mean of all winters";
        work.warn(&warnings::HALF_OF_WINTERS_DEEPER, told);
    }
    let mut soil = false;
    let mut snow = false;
    for layer in layers {
        soil |= matches!(layer.material, FreezingMaterial::Soil(_));
        snow |= matches!(layer.material, FreezingMaterial::Snow(_));
    }
    if soil {
        let told = format!(
            "+/-25 % of conductivity is about +12 % and -13 % of frost depth ({})",
            KERSTEN_1949.document
        );
        work.warn(&warnings::CONDUCTIVITY_BAND, told);
    }
    if snow {
        let told = "a layer of snow was counted";
        work.warn(&warnings::SNOW_MAY_BE_MISSING, told);
    }
    if method == FrostDepthMethod::Stefan {
        let told = "compare the depth by `heat_conduction` or `modified_berggren` beside it";
        work.warn(&warnings::STEFAN_OVER_PREDICTS, told);
    }
    let better = frozen_over_mean(slabs, frost);
    if method != FrostDepthMethod::Stefan && better > BETTER_FROZEN {
        let told = format!(
            "frozen conductivity is up to {} % above the mean; with frozen and unfrozen properties apart fine soils froze 3 to 10 % deeper",
            round9((better * 1e3).round() / 10.0)
        );
        work.warn(&warnings::MEAN_PROPERTIES, told);
    }
    let part = dry_part(slabs, frost);
    if method == FrostDepthMethod::ModifiedBerggren && part > DRY_PART {
        let told = format!(
            "{} % of the resistance down to the frost lies in layers without water",
            round9((part * 1e3).round() / 10.0)
        );
        work.warn(&warnings::LAYERED_BERGGREN_INSULATED, told);
    }
}

/// Frozen conductivity over the mean, less 1, from which the mean is warned of.
const BETTER_FROZEN: f64 = 0.05;

/// The most by which a layer that freezes conducts better frozen than in the mean.
fn frozen_over_mean(slabs: &[Slab], frost: Length) -> f64 {
    let frozen = slabs.iter().filter(|slab| slab.top < frost.si());
    let each = frozen.map(|slab| slab.frozen_conductivity / slab.conductivity - 1.0);
    each.fold(0.0, f64::max)
}

/// Part of the resistance in layers without water from which the layered form is warned of.
const DRY_PART: f64 = 0.15;

/// Part of the resistance down to the frost that lies in layers without water.
fn dry_part(slabs: &[Slab], frost: Length) -> f64 {
    let all = sums(slabs, frost.si(), |slab| slab.conductivity).resistance;
    let dry = slabs.iter().filter(|slab| slab.latent <= 0.0).map(|slab| {
        let thickness = (frost.si() - slab.top).min(slab.thickness).max(0.0);
        thickness / slab.conductivity
    });
    dry.sum::<f64>() / all
}

fn compare(frost: Length, official: Length, work: &mut Work) -> FrostComparison {
    let check = Check::at_most(
        &checks::FROST_DEPTH_OFFICIAL_DEEPER,
        frost,
        official,
        &FROST_DEPTH_OFFICIAL,
    );
    let within = check.passed();
    let reason = "the computed depth, a second opinion, is deeper than that of the jurisdiction";
    let check = if within { check } else { check.reason(reason) };
    work.check(check.advisory());
    let (deeper, difference) = match (within, utilisation(official.si(), frost.si()).1) {
        (true, true) => (DeeperFrost::Equal, Length::ZERO),
        (true, false) => (DeeperFrost::Official, official - frost),
        (false, _) => (DeeperFrost::Computed, frost - official),
    };
    FrostComparison {
        official_depth: official,
        deeper,
        difference,
    }
}

/// What was found, to be told.
struct Found<'a> {
    sent: &'a FrostWinter,
    winter: Winter,
    layers: &'a [Layer],
    frost: Length,
    method: FrostDepthMethod,
    depths: Vec<FrostDepthByMethod>,
    official: Option<FrostComparison>,
    insulation: Option<InsulationOutcome>,
}

fn told(found: Found) -> ComputedFrost {
    let frost = found.frost.si();
    let ends = |layer: &&Layer| utilisation(frost, layer.top + layer.thickness).1;
    let ends_in = found.layers.iter().find(ends);
    ComputedFrost {
        depth: found.frost,
        method: found.method,
        ends_in: Label(ends_in.map_or(String::new(), |layer| layer.label.clone())),
        depths: found.depths,
        freezing_index: found.winter.index,
        surface_factor: found.winter.factor,
        surface_source: found.winter.factor_source.into(),
        surface_freezing_index: found.winter.surface_index,
        season_length: found.sent.season_length,
        surface_cold: found.winter.cold,
        ground_warmth: found.winter.warmth,
        thermal_ratio: found.winter.alpha,
        layers: found.layers.iter().map(|l| layer(l, frost)).collect(),
        official: found.official,
        insulation: found.insulation,
    }
}

fn layer(layer: &Layer, frost: f64) -> FreezingLayerOutcome {
    let frozen = (frost - layer.top).min(layer.thickness).max(0.0);
    let thermal = &layer.thermal;
    let bottom = layer.top + layer.thickness;
    FreezingLayerOutcome {
        label: Label(layer.label.clone()),
        top: Length::from_si(layer.top),
        bottom: bottom.is_finite().then(|| Length::from_si(bottom)),
        frozen_thickness: Length::from_si(frozen),
        frozen_conductivity: thermal.frozen,
        unfrozen_conductivity: thermal.unfrozen,
        mean_conductivity: thermal.mean(),
        heat_capacity: thermal.capacity,
        latent_heat: thermal.latent,
        frozen_resistance: ThermalResistance::from_si(frozen / thermal.mean().si()),
        source: thermal.source.into(),
        reference: thermal.reference.clone(),
        saturation_water_ratio: thermal.saturation,
    }
}

fn correction_factors(request: &Request, work: &mut Work) -> Option<Vec<CorrectionFactor>> {
    let asked = request.correction_factors.as_ref()?;
    work.method(&codes::MODIFIED_BERGGREN);
    let each = asked.thermal_ratios.iter().map(|alpha| CorrectionFactor {
        fusion_ratio: asked.fusion_ratio,
        thermal_ratio: *alpha,
        correction_factor: correction_factor(*alpha, asked.fusion_ratio, &mut work.trace),
    });
    Some(each.collect())
}
