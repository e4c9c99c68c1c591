//! Swell of the ground by each of its ways. Shared with the void form of
//! `frost-embedment`.

use super::codes::{methods, refusals, warnings};
use super::constants::{
    DEPTH_OF_A_TENTH, SEED_COEFFICIENT, SEED_EXPONENT, SEED_RANGE, SEED_UPPER, unit_heave,
};
use super::equations;
use super::outcome::{DesignHeave, HeaveCause, SwellHeave, SwellLayer, SwellMethod, SwellRange};
use super::swell_request::{
    DepthSwell, ExpansiveLayer, IndexSwell, OedometerIndex, OedometerLayer, OedometerSwell,
    SwellSource,
};
use crate::contract::{Issue, SubjectKind, Work, list_length, utilisation};
use crate::limits;
use crate::quantity::{Length, Size};
use crate::soil::codes::refusals as soil;
use crate::source::{CALLER, NELSON_OEDOMETER, Reference, SEED_1962, VAN_DER_MERWE_1964};
use crate::text::Label;

/// Faults in the lengths of lists; `at` points to the swell.
pub fn lengths(at: &str, swell: &SwellSource, issues: &mut Vec<Issue>) {
    let (tag, count) = match swell {
        SwellSource::Oedometer(sent) => ("oedometer", sent.layers.len()),
        SwellSource::VanDerMerwe(sent) => ("van_der_merwe", sent.layers.len()),
        _ => return,
    };
    let pointer = format!("{at}/{tag}/layers");
    list_length(issues, pointer, count, 1, limits::LAYERS);
}

/// Every fault of a swell; `at` points to it.
pub fn faults(at: &str, swell: &SwellSource) -> Vec<Issue> {
    match swell {
        SwellSource::Oedometer(sent) => missing(&format!("{at}/oedometer/layers"), &sent.layers),
        SwellSource::VanDerMerwe(sent) => {
            out_of_order(&format!("{at}/van_der_merwe/layers"), &sent.layers)
        }
        SwellSource::IndexScreening(sent) => outside(&format!("{at}/index_screening"), sent),
        SwellSource::Given(_) | SwellSource::PotentialVerticalRise(_) => Vec::new(),
    }
}

/// What the layers of an oedometer swell lack.
fn missing(at: &str, layers: &[OedometerLayer]) -> Vec<Issue> {
    let mut issues = Vec::new();
    for (i, layer) in layers.iter().enumerate() {
        let lacks: Vec<_> = [
            ("index", layer.index.is_none()),
            (
                "initial_effective_stress",
                layer.initial_effective_stress.is_none(),
            ),
            ("swell_pressure", layer.swell_pressure.is_none()),
        ]
        .into_iter()
        .filter(|(_, absent)| *absent)
        .map(|(name, _)| format!("`{name}`"))
        .collect();
        if !lacks.is_empty() {
            issues.push(
                Issue::new(
                    format!("{at}/{i}"),
                    &refusals::SWELL_DATA_MISSING,
                    format!("send {}", lacks.join(", ")),
                )
                .source(&NELSON_OEDOMETER),
            );
        }
    }
    issues
}

/// Whether `depth` is at least `limit`, by the one rule for limits.
fn reaches(limit: Length, depth: Length) -> bool {
    utilisation(limit.si(), depth.si()).1
}

/// Layers that do not follow one another downwards from depth 0.
fn out_of_order(at: &str, layers: &[ExpansiveLayer]) -> Vec<Issue> {
    let shown = |depth: Length| Length::ROLE.in_both_systems(depth.si());
    let mut issues = Vec::new();
    let mut above = Length::ZERO;
    for (i, layer) in layers.iter().enumerate() {
        if reaches(layer.bottom, layer.top) {
            issues.push(Issue::new(
                format!("{at}/{i}/bottom"),
                &soil::LAYER_INVERTED,
                format!(
                    "from {} to {}; the bottom must be below the top",
                    shown(layer.top),
                    shown(layer.bottom)
                ),
            ));
        }
        let (def, detail) = match (reaches(above, layer.top), reaches(layer.top, above)) {
            (true, true) => {
                above = layer.bottom;
                continue;
            }
            (true, false) => (
                &soil::LAYER_GAP,
                format!(
                    "nothing is said of the ground from {} to {}; where it does not swell say `low`",
                    shown(above),
                    shown(layer.top)
                ),
            ),
            _ => (
                &soil::LAYER_OVERLAP,
                format!(
                    "the layer above goes down to {}, this one begins at {}",
                    shown(above),
                    shown(layer.top)
                ),
            ),
        };
        issues.push(Issue::new(format!("{at}/{i}/top"), def, detail));
        above = layer.bottom;
    }
    issues
}

/// A plasticity index that the relation does not know.
fn outside(at: &str, sent: &IndexSwell) -> Vec<Issue> {
    let (least, most) = SEED_RANGE.value;
    let index = sent.plasticity_index_ratio;
    if utilisation(least, index).1 && utilisation(index, most).1 {
        return Vec::new();
    }
    vec![
        Issue::new(
            format!("{at}/plasticity_index_ratio"),
            &refusals::SWELL_INDEX_OUTSIDE,
            format!("{index} was sent; send a swell of your own or tests instead"),
        )
        .limit(format!("{least} to {most}"))
        .source(&SEED_1962),
    ]
}

/// The swell of a source that has no faults.
pub fn swell(source: &SwellSource, work: &mut Work) -> SwellHeave {
    work.trace.about(|| "swell".to_owned());
    let found = match source {
        SwellSource::Given(given) => {
            work.method(&methods::SWELL_SENT);
            sent(SwellMethod::Given, given.movement, given.reference.clone())
        }
        SwellSource::PotentialVerticalRise(rise) => {
            work.method(&methods::SWELL_SENT);
            work.warn(
                &warnings::SWELL_RISE_CONDITIONS,
                "confirm that the rise was made for the driest moisture of the site, for the load that will stand on the ground and for the whole active depth",
            );
            warn_of_moisture(work);
            sent(
                SwellMethod::PotentialVerticalRise,
                rise.movement,
                Some(rise.reference.clone()),
            )
        }
        SwellSource::Oedometer(tests) => by_oedometer(tests, work),
        SwellSource::VanDerMerwe(layers) => by_depth(layers, work),
        SwellSource::IndexScreening(index) => by_index(index, work),
    };
    work.trace.about(String::new);
    found
}

fn warn_of_moisture(work: &mut Work) {
    work.warn(
        &warnings::SWELL_MOISTURE_UNKNOWN,
        "ground that is drier at the time of building swells more than was predicted, ground that is wet less",
    );
}

fn warn_of_load(work: &mut Work) {
    work.warn(
        &warnings::SWELL_LOAD_LEFT_OUT,
        "load on the ground lessens swell; the method does not know it",
    );
}

/// A swell without range and layers.
fn plain(method: SwellMethod, movement: Size, source: &'static Reference) -> SwellHeave {
    SwellHeave {
        method,
        source: source.into(),
        reference: None,
        movement,
        range: None,
        layers: Vec::new(),
    }
}

fn sent(method: SwellMethod, movement: Size, reference: Option<Label>) -> SwellHeave {
    SwellHeave {
        reference,
        ..plain(method, movement, &CALLER)
    }
}

/// The label of a layer, or its number from the top.
fn name(label: Option<&Label>, index: usize) -> String {
    label.map_or_else(|| (index + 1).to_string(), |l| l.0.clone())
}

fn by_oedometer(tests: &OedometerSwell, work: &mut Work) -> SwellHeave {
    work.method(&methods::SWELL_OEDOMETER);
    warn_of_moisture(work);
    let mut layers = Vec::new();
    for (i, layer) in tests.layers.iter().enumerate() {
        let label = name(layer.label.as_ref(), i);
        work.trace.about(|| format!("swell of layer {label}"));
        let movement = of_test(layer, &label, work).unwrap_or(Size::ZERO);
        layers.push(SwellLayer {
            label,
            thickness: layer.thickness,
            movement,
        });
    }
    work.trace.about(|| "swell".to_owned());
    let movement = equations::swell_sum(layers.iter().map(|l| l.movement), &mut work.trace);
    SwellHeave {
        layers,
        ..plain(SwellMethod::Oedometer, movement, &NELSON_OEDOMETER)
    }
}

/// The swell of one tested layer; `None` where something is missing for it.
fn of_test(layer: &OedometerLayer, label: &str, work: &mut Work) -> Option<Size> {
    let (pressure, stress) = (layer.swell_pressure?, layer.initial_effective_stress?);
    let index = match layer.index.as_ref()? {
        OedometerIndex::HeaveIndex(index) => index.index_ratio,
        OedometerIndex::SwellIndex(index) => {
            equations::strain_index(index.index_ratio, index.void_ratio, &mut work.trace)
        }
    };
    if stress >= pressure {
        work.warn_about(
            &warnings::SWELL_LAYER_STAYS,
            SubjectKind::Layer,
            label,
            "the stress on the layer is at least its swell pressure; it counts as nil, not as settling",
        );
    }
    let trace = &mut work.trace;
    Some(equations::oedometer_swell(
        layer.thickness,
        index,
        pressure,
        stress,
        trace,
    ))
}

fn by_depth(sent: &DepthSwell, work: &mut Work) -> SwellHeave {
    work.method(&methods::SWELL_VAN_DER_MERWE);
    warn_of_moisture(work);
    warn_of_load(work);
    let tenth = work.take(&DEPTH_OF_A_TENTH);
    let mut layers = Vec::new();
    for (i, layer) in sent.layers.iter().enumerate() {
        let label = name(layer.label.as_ref(), i);
        let strain = work.take(unit_heave(layer.potential_expansiveness));
        work.trace.about(|| format!("swell of layer {label}"));
        let trace = &mut work.trace;
        let movement = equations::depth_swell(strain, tenth, layer.top, layer.bottom, trace);
        layers.push(SwellLayer {
            label,
            thickness: layer.bottom - layer.top,
            movement,
        });
    }
    work.trace.about(|| "swell".to_owned());
    let movement = equations::swell_sum(layers.iter().map(|l| l.movement), &mut work.trace);
    SwellHeave {
        layers,
        ..plain(SwellMethod::VanDerMerwe, movement, &VAN_DER_MERWE_1964)
    }
}

fn by_index(sent: &IndexSwell, work: &mut Work) -> SwellHeave {
    work.method(&methods::SWELL_INDEX_SCREENING);
    warn_of_moisture(work);
    warn_of_load(work);
    work.warn(
        &warnings::SWELL_BY_INDEX_ONLY,
        "send swell tests, a potential vertical rise or a swell of your own before anything is built on it",
    );
    let (coefficient, exponent) = (work.take(&SEED_COEFFICIENT), work.take(&SEED_EXPONENT));
    let scatter = work.take(&SEED_UPPER);
    let trace = &mut work.trace;
    let strain = equations::index_strain(sent.plasticity_index_ratio, coefficient, exponent, trace);
    let relation = equations::strain_swell(strain, 0.0, sent.thickness, trace);
    let upper = equations::strain_swell(strain, scatter, sent.thickness, trace);
    SwellHeave {
        range: Some(SwellRange {
            relation_ratio: strain,
            relation,
            lower: Size::ZERO,
            upper,
            reasons: REASONS.map(str::to_owned).to_vec(),
        }),
        ..plain(SwellMethod::IndexScreening, upper, &SEED_1962)
    }
}

/// Why a swell by the plasticity index is a range.
const REASONS: [&str; 4] = [
    "lower end nil: ground that is wet at the time of building, or under load, hardly swells",
    "upper end: the relation and a third more, its scatter as remembered",
    "the relation is of compacted samples under nearly no load, taken over the whole thickness without falling off with depth",
    "dry natural clay can lie above the upper end: another table gives 20 to 30 % at a plasticity index of 35 %",
];

/// The larger of frost heave and swell, not their sum; `None` where there is neither.
pub fn larger(frost: Option<Size>, swell: Option<&SwellHeave>) -> Option<DesignHeave> {
    let by_frost = frost.map(|movement| DesignHeave {
        movement,
        governed_by: HeaveCause::Frost,
        is_upper_end: false,
    });
    let by_swell = swell.map(|s| DesignHeave {
        movement: s.movement,
        governed_by: HeaveCause::Swell,
        is_upper_end: s.range.is_some(),
    });
    match (by_frost, by_swell) {
        (Some(frost), Some(swell)) if swell.movement > frost.movement => Some(swell),
        (Some(frost), _) => Some(frost),
        (None, swell) => swell,
    }
}
