//! Reference cases, each also an example named after it.

use super::*;
use crate::examples::{request as example, through};
use crate::quantity::{
    ConductivityUnit, FreezingIndexUnit, TemperatureDifferenceUnit, ThermalConductivity,
};

fn shown(name: &str) -> Outcome {
    let text = example::<FrostPenetration>(name);
    let answered = through::<FrostPenetration>(&text, Trace::off());
    answered
        .unwrap_or_else(|e| panic!("{name}: {e:?}"))
        .1
        .result
}

fn frost_of(name: &str) -> ComputedFrost {
    shown(name).frost.expect("a frost depth")
}

fn terms(frost: &ComputedFrost) -> BerggrenTerms {
    assert_eq!(frost.depths[0].method, FrostDepthMethod::ModifiedBerggren);
    frost.depths[0].berggren.expect("terms")
}

fn feet(depth: Length) -> f64 {
    depth.get(LengthUnit::Ft)
}

fn us(conductivity: ThermalConductivity) -> f64 {
    conductivity.get(ConductivityUnit::BtuPerHFtF)
}

/// FR-LAM-A, -B, -D, -F: ordinates read from Figure 1 of Aldrich and Paynter (1966); within 1 %.
/// Beside them the roots computed by the author of the cases, to the printed digit.
#[test]
fn fr_lam_the_chart_of_aldrich_and_paynter() {
    let chart: [(&str, &[f64], &[f64]); 4] = [
        (
            "fr-lam-a",
            &[
                0.986, 0.959, 0.933, 0.906, 0.882, 0.859, 0.803, 0.75, 0.658, 0.593, 0.531, 0.479,
                0.437,
            ],
            &[
                0.9855, 0.9572, 0.93, 0.9039, 0.8788, 0.8548, 0.7987, 0.7481, 0.6605, 0.5883,
                0.5281, 0.4777, 0.4351,
            ],
        ),
        (
            "fr-lam-b",
            &[
                0.98, 0.943, 0.912, 0.883, 0.854, 0.827, 0.762, 0.702, 0.604, 0.534, 0.473, 0.423,
                0.382,
            ],
            &[
                0.9795, 0.9447, 0.9118, 0.8805, 0.8509, 0.8227, 0.7584, 0.7016, 0.6067, 0.5314,
                0.4708, 0.4213, 0.3805,
            ],
        ),
        (
            "fr-lam-d",
            &[
                0.97, 0.923, 0.882, 0.843, 0.809, 0.776, 0.701, 0.635, 0.534, 0.459, 0.399,
            ],
            &[
                0.9681, 0.9231, 0.8814, 0.8425, 0.8064, 0.7727, 0.6979, 0.6345, 0.5335, 0.4575,
                0.399,
            ],
        ),
        (
            "fr-lam-f",
            &[
                0.971, 0.925, 0.883, 0.848, 0.812, 0.78, 0.7, 0.64, 0.54, 0.463, 0.405,
            ],
            &[
                0.969, 0.9247, 0.8835, 0.8452, 0.8095, 0.7762, 0.7021, 0.639, 0.5382, 0.4622,
                0.4034,
            ],
        ),
    ];
    for (name, read, roots) in chart {
        let outcome = shown(name);
        assert!(outcome.frost.is_none());
        let factors = outcome.correction_factors.expect("factors");
        assert_eq!(factors.len(), read.len(), "{name}");
        for ((factor, read), root) in factors.iter().zip(read).zip(roots) {
            let alpha = factor.thermal_ratio;
            near(factor.correction_factor, *read, 0.01);
            let off = (factor.correction_factor - root).abs();
            assert!(off <= 5.1e-5, "{name} {alpha}: {off}");
            // the closed form of some programs is far away where the ground is warm
            let closed = 1.0 / (1.0 + factor.fusion_ratio * (alpha + 0.5)).sqrt();
            if alpha >= 1.0 {
                assert!((closed / read - 1.0).abs() > 0.08, "{name} {alpha}");
            }
        }
    }
}

/// FR-MB-1, informational: the example of UFC 3-130-06, 3-3, is remembered, not seen.
#[test]
fn fr_mb_1_ground_of_one_kind() {
    let frost = frost_of("fr-mb-1");
    assert_eq!(frost.method, FrostDepthMethod::ModifiedBerggren);
    let kelvin = TemperatureDifferenceUnit::R;
    near(frost.surface_cold.get(kelvin), 15.625, 1e-9);
    near(frost.ground_warmth.get(kelvin), 5.2, 1e-9);
    near(frost.thermal_ratio, 0.3328, 1e-9);
    let layer = &frost.layers[0];
    near(us(layer.mean_conductivity), 0.76, 1e-9);
    near(layer.latent_heat.get(HeatUnit::BtuPerFt3), 2160.0, 1e-9);
    let capacity = layer.heat_capacity.get(HeatCapacityUnit::BtuPerFt3F);
    near(capacity, 28.25, 1e-9);
    let terms = terms(&frost);
    near(terms.fusion_ratio, 0.2044, 3e-4);
    near(terms.correction_factor, 0.8956, 1e-4);
    near(feet(frost.depth), 5.819, 1e-4);
    near(feet(frost.depth), 5.8, 0.02);
    // Stefan's equation uses the frozen conductivity: sqrt(48 x 0.80 x 2500 / 2160)
    let stefan = by(&frost, FrostDepthMethod::Stefan).unwrap() / 0.3048;
    near(stefan, 6.666_667, 1e-6);
}

/// FR-K-1: 0.80 read from the chart, within 3 %; both equations as computed for the case.
#[test]
fn fr_k_1_fine_soil() {
    let layer = &frost_of("fr-k-1").layers[0];
    near(us(layer.frozen_conductivity), 0.8, 0.03);
    near(us(layer.frozen_conductivity), 0.8025, 1e-4);
    near(us(layer.unfrozen_conductivity), 0.7154, 1e-4);
    // 100 (0.17 + 0.75 x 0.15) and 144 x 100 x 0.15
    let capacity = layer.heat_capacity.get(HeatCapacityUnit::BtuPerFt3F);
    near(capacity, 28.25, 1e-9);
    near(layer.latent_heat.get(HeatUnit::BtuPerFt3), 2160.0, 1e-9);
}

/// FR-K-3: the chart reads 1.8, the equation gives 1.61: 12 % less, which the reference states.
#[test]
fn fr_k_3_coarse_frozen_soil_disagrees_with_its_chart() {
    let layer = &frost_of("fr-k-3").layers[0];
    near(us(layer.frozen_conductivity), 1.607, 3e-4);
    near(us(layer.frozen_conductivity), 1.8, 0.15);
    assert!(us(layer.frozen_conductivity) < 1.8 * 0.9);
    for text in [
        crate::source::KERSTEN_1949.note,
        codes::methods::SOIL_CONDUCTIVITY_KERSTEN.text,
    ] {
        assert!(text.contains("1.61") && text.contains("1.8") && text.contains("12 %"));
    }
}

/// FR-K-4: the SI form as transcribed, within 0.5 %.
#[test]
fn fr_k_4_the_form_in_si() {
    let frost = frost_of("fr-k-4");
    let (fine, coarse) = (&frost.layers[0], &frost.layers[1]);
    near(fine.unfrozen_conductivity.si(), 1.3965, 0.005);
    near(fine.frozen_conductivity.si(), 1.7706, 0.005);
    near(coarse.unfrozen_conductivity.si(), 2.285, 0.005);
    near(coarse.frozen_conductivity.si(), 2.3708, 0.005);
}

/// FR-L-1: 8,986 Btu for a cubic foot of water; 104 lbf/ft3 with 20 % hold a third of it.
#[test]
fn fr_l_1_latent_heat_of_water() {
    let layer = &frost_of("fr-l-1").layers[0];
    let water = 3.0 * layer.latent_heat.get(HeatUnit::BtuPerFt3);
    near(water, 8985.6, 1e-9);
    assert_eq!(water.round(), 8986.0);
}

/// FR-DFI-1: 1,310, 1,250 and 1,190 of the 30 winters, mean 1,250.
#[test]
fn fr_dfi_1_three_coldest_in_thirty() {
    let index = frost_of("fr-dfi-1").freezing_index;
    near(index.value.get(FreezingIndexUnit::CDay), 1250.0, 1e-12);
    assert_eq!(index.winter_count, Some(30));
    let coldest = index.coldest.expect("listed");
    let each: Vec<_> = coldest
        .iter()
        .map(|w| w.get(FreezingIndexUnit::CDay).round())
        .collect();
    assert_eq!(each, [1310.0, 1250.0, 1190.0]);
    // 24 winters, the largest of the latest 10 is the 18th, 1,110
    let index = frost_of("coldest-in-10").freezing_index;
    near(index.value.get(FreezingIndexUnit::CDay), 1110.0, 1e-12);
    // 14 winters, mean of 12,550
    let index = frost_of("mean-of-winters").freezing_index;
    near(
        index.value.get(FreezingIndexUnit::CDay),
        12_550.0 / 14.0,
        1e-12,
    );
}

/// RG-1: 1.7738 m, 5.8194 ft, lambda 0.895589 in SI.
#[test]
fn rg_1_si_equals_us() {
    let frost = frost_of("rg-1");
    near(terms(&frost).correction_factor, 0.895_589, 1e-5);
    near(frost.depth.si(), 1.7738, 5e-5);
    near(feet(frost.depth), 5.8194, 2e-5);
}

/// RG-2: the soil of FR-MB-1 split at 1 and 3 ft freezes as deep, to 1e-9, by every method.
#[test]
fn rg_2_splitting_changes_nothing() {
    let (one, split) = (frost_of("fr-mb-1"), frost_of("rg-2"));
    near(feet(split.depth), 5.8194, 2e-5);
    near(terms(&split).correction_factor, 0.89559, 1e-5);
    assert_eq!(split.ends_in.as_str(), "lower");
    for method in FrostDepthMethod::ALL {
        near(by(&split, method).unwrap(), by(&one, method).unwrap(), 1e-9);
    }
}

/// RG-3: slab, base and silt by the layered form: lambda 0.87629, mu 0.2652, 6.9006 ft. The last
/// is printed 2e-5 too large: bisected in US units the equation comes to 6.900452 ft, with that
/// same lambda and mu.
#[test]
fn rg_3_layered_form() {
    let frost = frost_of("rg-3");
    assert_eq!(frost.method, FrostDepthMethod::ModifiedBerggren);
    near(terms(&frost).fusion_ratio, 0.2652, 2e-4);
    near(terms(&frost).correction_factor, 0.87629, 1e-5);
    near(feet(frost.depth), 6.9006, 3e-5);
    near(feet(frost.depth), 6.900_451_6, 1e-7);
    assert_eq!(frost.ends_in.as_str(), "silt");
    // the default is conduction, here 1 % deeper: 2.1315 m by an explicit solution in C with
    // cells of 6 mm
    let other = frost_of("rg-3-heat-conduction");
    assert_eq!(other.method, FrostDepthMethod::HeatConduction);
    near(other.depth.si(), 2.1315, 1e-3);
}
