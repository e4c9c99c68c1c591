//! Every example request under `openapi/examples/frost-depth`.

use super::*;
use crate::contract::Verdict;
use crate::examples::{refused_as, request as example, requests, through};

fn shown(name: &str) -> Answer<Outcome> {
    let text = example::<FrostPenetration>(name);
    through::<FrostPenetration>(&text, Trace::off()).unwrap().1
}

fn warned(answer: &Answer<Outcome>) -> Vec<&str> {
    answer.warnings.iter().map(|w| w.code.as_ref()).collect()
}

#[test]
fn every_example_is_answered_and_printed() {
    for (name, text) in requests::<FrostPenetration>("") {
        let (call, answer) = through::<FrostPenetration>(&text, Trace::on())
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        assert_eq!(answer.verdict, Verdict::NotAsked, "{name}");
        let told = !answer.methods.is_empty() && !answer.cautions.is_empty();
        assert!(
            told && answer.steps.is_some_and(|s| !s.is_empty()),
            "{name}"
        );
        let asked = call.request.official_depth.is_some();
        assert_eq!(answer.checks.len(), usize::from(asked), "{name}");
    }
}

#[test]
fn both_houses_beside_their_official_depth() {
    let linnet = shown("linnet");
    let frost = linnet.result.frost.as_ref().unwrap();
    let official = frost.official.unwrap();
    assert_eq!(official.deeper, DeeperFrost::Official);
    near(
        frost.depth.si() + official.difference.si(),
        48.0 * 0.0254,
        1e-12,
    );
    // 940, 900 and 850 F day of the 30 winters
    let index = frost.freezing_index.value;
    near(
        index.get(crate::quantity::FreezingIndexUnit::FDay),
        2690.0 / 3.0,
        1e-12,
    );
    assert_eq!(linnet.defaults[0].name, "surface_factor_wind_scoured_beam");

    let shallow = shown("linnet-frost-30-in").result.frost.unwrap();
    let official = shallow.official.unwrap();
    assert_eq!(official.deeper, DeeperFrost::Computed);
    near(
        shallow.depth.si() - official.difference.si(),
        30.0 * 0.0254,
        1e-12,
    );

    let sizerin = shown("sizerin");
    assert!(warned(&sizerin).contains(&"insulation_index_not_return_100"));
    let hundred = shown("sizerin-return-100");
    assert!(!warned(&hundred).contains(&"insulation_index_not_return_100"));
    let thickness = |a: &Answer<Outcome>| {
        let frost = a.result.frost.as_ref().unwrap();
        frost.insulation.as_ref().unwrap().thickness.si()
    };
    assert!(thickness(&hundred) > thickness(&sizerin));
    assert!((0.02..0.2).contains(&thickness(&sizerin)));
}

#[test]
fn warnings_stand_where_they_should() {
    for (name, code) in [
        ("mean-of-winters", "half_of_winters_deeper"),
        ("mean-given", "half_of_winters_deeper"),
        ("stefan", "stefan_over_predicts"),
        ("snow-cover", "snow_may_be_missing"),
        ("layered-berggren-insulated", "layered_berggren_insulated"),
        ("insulation-on-the-surface", "insulation_for_information"),
        ("fr-k-1", "soil_conductivity_band"),
        ("surface-bare-soil", "default_from_memory"),
        ("insulated-slab", "default_from_memory"),
        ("fr-mb-1", "frost_mean_properties"),
    ] {
        let answer = shown(name);
        assert!(warned(&answer).contains(&code), "{name}");
    }
    for (name, code) in [
        ("fr-dfi-1", "half_of_winters_deeper"),
        ("fr-mb-1", "soil_conductivity_band"),
        ("rg-3", "layered_berggren_insulated"),
        ("rg-3", "frost_mean_properties"),
        ("stefan", "frost_mean_properties"),
        ("fr-mb-1", "default_from_memory"),
    ] {
        assert!(!warned(&shown(name)).contains(&code), "{name}");
    }
}

/// The factors of frost.md's table are those of TM 5-852-6 and Lunardini from memory.
#[test]
fn each_surface_has_its_factor() {
    for (name, factor) in [
        ("snow-cover", 1.0),
        ("insulated-slab", 0.75),
        ("surface-asphalt-pavement", 0.70),
        ("surface-bare-sand-gravel", 0.90),
        ("surface-bare-soil", 0.70),
        ("surface-turf-under-snow", 0.50),
        ("surface-trees-brush-moss", 0.30),
        ("linnet", 1.0),
    ] {
        let frost = shown(name).result.frost.unwrap();
        assert_eq!(frost.surface_factor, factor, "{name}");
        let index = frost.freezing_index.value * factor;
        assert_eq!(frost.surface_freezing_index, index, "{name}");
    }
}

#[test]
fn insulation_is_found_where_it_can_be() {
    for name in [
        "insulation-on-the-surface",
        "insulation-under-a-slab",
        "insulation-by-berggren",
    ] {
        let found = shown(name).result.frost.unwrap().insulation.unwrap();
        assert!(found.thickness.si() > 0.005, "{name}");
        assert!(found.depth_without > found.depth, "{name}");
        assert!((3..=60).contains(&found.search_count), "{name}");
    }
    let none = shown("insulation-not-needed").result.frost.unwrap();
    assert_eq!(none.insulation.unwrap().thickness.si(), 0.0);
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    refused_as::<FrostPenetration>(&[
        ("alpha-outside-chart", "physics", "berggren_outside_chart"),
        ("at-freezing", "physics", "permafrost"),
        ("bare-degrees", "shape", "write `degC`"),
        ("closed-form-as-method", "shape", "unknown variant"),
        (
            "coarse-soil-too-dry",
            "physics",
            "moisture_below_correlation",
        ),
        ("coldest-of-9-winters", "physics", "too_few_winters"),
        ("design-of-29-winters", "physics", "too_few_winters"),
        ("factors-outside-chart", "physics", "berggren_outside_chart"),
        ("fine-soil-too-dry", "physics", "moisture_below_correlation"),
        (
            "frost-stays-in-the-insulation",
            "physics",
            "frost_ends_without_water",
        ),
        ("frost-too-deep", "physics", "frost_too_deep"),
        ("fusion-ratio-nil", "physics", "berggren_outside_chart"),
        (
            "index-without-definition",
            "shape",
            "missing field `definition`",
        ),
        (
            "index-without-reference",
            "shape",
            "missing field `reference`",
        ),
        (
            "insulation-below-the-frost-wanted",
            "physics",
            "insulation_cannot_help",
        ),
        (
            "insulation-by-stefan",
            "physics",
            "frost_method_not_for_insulation",
        ),
        (
            "insulation-cannot-help",
            "physics",
            "insulation_cannot_help",
        ),
        (
            "insulation-given-not-at-all",
            "physics",
            "insulation_given_twice",
        ),
        (
            "insulation-given-twice",
            "physics",
            "insulation_given_twice",
        ),
        (
            "insulation-layer-unknown",
            "physics",
            "insulation_layer_unknown",
        ),
        (
            "insulation-wanted-within-a-slab",
            "physics",
            "insulation_cannot_help",
        ),
        (
            "last-layer-of-concrete",
            "physics",
            "last_layer_holds_no_water",
        ),
        (
            "last-layer-with-thickness",
            "physics",
            "last_layer_has_thickness",
        ),
        ("layer-without-thickness", "physics", "missing_member"),
        ("layers-without-winter", "physics", "missing_member"),
        ("mu-outside-chart", "physics", "berggren_outside_chart"),
        ("negative-thickness", "values", "range"),
        ("nine-winters", "physics", "too_few_winters"),
        ("no-freezing-winters", "physics", "below_minimum"),
        ("no-layers", "lengths", "list_too_short"),
        (
            "no-temperature",
            "shape",
            "missing field `mean_annual_temperature`",
        ),
        ("no-thermal-ratios", "lengths", "list_too_short"),
        ("nothing-asked", "physics", "frost_depth_nothing_asked"),
        ("peat-as-soil", "shape", "unknown variant `peat`"),
        ("permafrost", "physics", "permafrost"),
        (
            "return-100-from-winters",
            "physics",
            "return_100_from_winters",
        ),
        ("season-too-short", "physics", "season_too_cold"),
        (
            "several-faults",
            "physics",
            "frost_method_not_for_insulation",
        ),
        ("snow-counted-twice", "physics", "snow_counted_twice"),
        ("snow-under-soil", "physics", "snow_not_on_top"),
        ("temperature-as-difference", "shape", "unknown unit `R`"),
        ("too-many-layers", "lengths", "list_too_long"),
        ("too-many-thermal-ratios", "lengths", "list_too_long"),
        ("too-many-winters", "lengths", "list_too_long"),
        ("two-layers-of-one-name", "physics", "duplicate_label"),
        ("unknown-definition", "shape", "unknown variant `return_50`"),
        ("unknown-member", "shape", "unknown field `n_factor`"),
        (
            "water-beyond-saturation",
            "physics",
            "water_beyond_saturation",
        ),
        ("winter-below-nil", "physics", "below_minimum"),
        ("winter-too-cold", "physics", "above_maximum"),
        ("winter-without-layers", "physics", "missing_member"),
    ]);
}
