//! How aggressive soil is: each threshold of each source on its limit and beyond it, the class
//! in force, and where sources disagree.

use super::*;
use crate::contract::Verdict;
use crate::corrosion::CorrosionSourceSays::{
    self, Aggressive, NotAggressive, NotJudged, OutsideLimits, TestMore,
};
use crate::corrosion::{CorrosionClass, CorrosionFigure, CorrosionSoilOutcome};

fn soil(tests: Json) -> CorrosionSoilOutcome {
    let ground = json!({ "kind": "undisturbed_natural" });
    let more = json!({ "soil": { "tests": tests }, "ground": ground });
    answer(plate(50.0, more)).result.soil
}

/// What the five say: acceptance criteria, AASHTO, driven piles, micropiles, limits of use.
fn say(tests: Json) -> [CorrosionSourceSays; 5] {
    let soil = soil(tests);
    [0, 1, 2, 3, 4].map(|i: usize| soil.sources[i].says)
}

#[test]
fn each_threshold_of_each_source() {
    let no = NotAggressive;
    let r = |ohm_cm: f64| json!({ "resistivity": q(ohm_cm, "ohm_cm") });
    assert_eq!(
        say(r(999.9)),
        [
            Aggressive,
            Aggressive,
            Aggressive,
            Aggressive,
            OutsideLimits
        ]
    );
    assert_eq!(
        say(r(1000.0)),
        [no, Aggressive, Aggressive, Aggressive, OutsideLimits]
    );
    assert_eq!(say(r(2000.0)), [no, no, TestMore, no, OutsideLimits]);
    assert_eq!(say(r(3000.0)), [no, no, TestMore, no, no]);
    assert_eq!(say(r(5000.0)), [no, no, no, no, no]);
    let ph = |ph: f64| json!({ "ph": ph });
    assert_eq!(
        say(ph(4.49)),
        [
            Aggressive,
            Aggressive,
            Aggressive,
            Aggressive,
            OutsideLimits
        ]
    );
    assert_eq!(
        say(ph(4.5)),
        [Aggressive, Aggressive, no, no, OutsideLimits]
    );
    assert_eq!(say(ph(5.0)), [Aggressive, Aggressive, no, no, no]);
    assert_eq!(say(ph(5.5)), [no, no, no, no, no]);
    assert_eq!(say(ph(10.0)), [no, no, no, no, no]);
    assert_eq!(say(ph(10.1)), [no, no, no, no, OutsideLimits]);
    let sulfates = |ppm: f64| json!({ "sulfates": q(ppm, "ppm") });
    assert_eq!(say(sulfates(200.0)), [no, no, no, no, no]);
    assert_eq!(
        say(sulfates(201.0)),
        [no, no, Aggressive, Aggressive, OutsideLimits]
    );
    assert_eq!(
        say(sulfates(1001.0)),
        [
            Aggressive,
            Aggressive,
            Aggressive,
            Aggressive,
            OutsideLimits
        ]
    );
    let chlorides = |ppm: f64| json!({ "chlorides": q(ppm, "mg_per_kg") });
    assert_eq!(say(chlorides(100.0)), [NotJudged, no, no, no, no]);
    assert_eq!(
        say(chlorides(101.0)),
        [NotJudged, no, Aggressive, Aggressive, OutsideLimits]
    );
    assert_eq!(
        say(chlorides(501.0)),
        [NotJudged, Aggressive, Aggressive, Aggressive, OutsideLimits]
    );
    let organics = |percent: f64| json!({ "organics": q(percent, "percent") });
    let none = [NotJudged; 4];
    assert_eq!(say(organics(1.0))[..4], none);
    assert_eq!(say(organics(1.0))[4], no);
    assert_eq!(say(organics(1.1))[4], OutsideLimits);
}

#[test]
fn statements_of_the_ground() {
    let ph = |ph: f64| json!({ "ph": ph, "organic_soil": true });
    assert_eq!(say(ph(7.0))[..3], [Aggressive, Aggressive, NotAggressive]);
    assert_eq!(say(ph(8.5))[..2], [Aggressive, Aggressive]);
    assert_eq!(say(ph(8.6))[..2], [Aggressive, NotAggressive]);
    let waste = json!({ "landfill_or_mine_waste": true });
    assert_eq!(say(waste)[..2], [Aggressive, NotJudged]);
    let drainage = json!({ "mine_or_industrial_drainage": true });
    assert_eq!(say(drainage)[..2], [NotJudged, Aggressive]);
}

fn inside() -> Json {
    json!({
        "resistivity": q(3000.0, "ohm_cm"), "ph": 7.0, "sulfates": q(200.0, "ppm"),
        "chlorides": q(100.0, "ppm"), "organics": q(1.0, "percent")
    })
}

#[test]
fn the_class_in_force() {
    let mild = soil(inside());
    assert_eq!(mild.class, CorrosionClass::Mild);
    assert_eq!((mild.sources_agree, mild.missing.len()), (Some(true), 0));
    // every figure is needed
    for figure in ["resistivity", "ph", "sulfates", "chlorides", "organics"] {
        let mut tests = inside();
        tests.as_object_mut().expect("members").remove(figure);
        let soil = soil(tests);
        assert_eq!(soil.class, CorrosionClass::TestMore, "{figure}");
        assert_eq!(soil.missing.len(), 1);
        let named = serde_json::to_value(soil.missing[0]).expect("a name");
        assert_eq!(named, figure);
    }
    // outside the limits of use, and by two sources aggressive, but not by those that decide
    let mut tests = inside();
    tests["sulfates"] = q(900.0, "ppm");
    let test_more = soil(tests);
    assert_eq!(test_more.class, CorrosionClass::TestMore);
    assert_eq!(test_more.sources_agree, Some(false));
    let trigger = &test_more.sources[2].triggers[0];
    assert_eq!(trigger.figure, CorrosionFigure::Sulfates);
    let above = trigger.above.as_ref().expect("a limit");
    close(above.value(), 200e-6, 1e-12);
    // one of the two that decide is enough
    let mut tests = inside();
    tests["chlorides"] = q(600.0, "ppm");
    assert_eq!(soil(tests).class, CorrosionClass::Aggressive);
}

#[test]
fn aggressive_soil_has_no_number_but_the_engineers() {
    let a = example("linnet-aggressive");
    assert_eq!(a.verdict, Verdict::Provisional);
    assert!(a.result.loss_by.is_none() && a.result.sections.is_empty());
    assert_eq!(a.result.soil.class, CorrosionClass::Aggressive);
    assert!(warned(&a, "corrosion_sources_disagree"));
    let a = example("linnet-aggressive-given");
    // 2 mil a year over 45 years on one face of a sealed shaft
    let lost = a.result.sections[0].loss_in_all;
    close(lost.get(crate::quantity::LengthUnit::Mil), 90.0, 1e-9);
    for method in ["fhwa", "eurocode", "flat_rate", "acceptance_criteria"] {
        let stated = json!({ "stated": { "class": "aggressive", "reference": "any" } });
        let more = json!({
            "soil": stated, "method": { method: {} }, "ground": { "kind": "aggressive_natural" }
        });
        let expected = (
            "/method".to_owned(),
            "corrosion_method_outside_limits".to_owned(),
        );
        assert_eq!(faults(plate(50.0, more)), [expected], "{method}");
    }
}

#[test]
fn the_default_method_by_ground_coating_and_class() {
    use crate::corrosion::LossMethod::{Eurocode, Fhwa};
    let zinc = json!([{
        "form": { "plate": { "thickness": q(10.0, "mm") } }, "coating": { "zinc_astm_a123": {} }
    }]);
    let of = |class: &str, ground: Option<&str>, zinced: bool| {
        let mut more = json!({ "soil": { "stated": { "class": class, "reference": "any" } } });
        if let Some(kind) = ground {
            more["ground"] = json!({ "kind": kind });
        }
        if zinced {
            more["sections"] = zinc.clone();
        }
        ask(plate(50.0, more)).map(|a| a.result.loss_by.map(|by| by.method))
    };
    assert_eq!(of("mild", None, true).expect("one"), Some(Fhwa));
    let natural = Some("undisturbed_natural");
    assert_eq!(of("mild", natural, true).expect("one"), Some(Fhwa));
    assert_eq!(of("mild", natural, false).expect("one"), Some(Eurocode));
    assert_eq!(of("mild", Some("fill"), true).expect("one"), Some(Eurocode));
    assert_eq!(of("test_more", natural, true).expect("one"), Some(Eurocode));
    assert_eq!(of("aggressive", natural, true).expect("one"), None);
    for (class, zinced) in [("mild", false), ("test_more", true)] {
        let refusal = of(class, None, zinced).expect_err("a refusal");
        assert_eq!(refusal.issues[0].code, "corrosion_method_not_named");
    }
}
