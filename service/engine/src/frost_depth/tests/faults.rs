//! Faults beside those of the refused examples: all at once, with their places; limits exactly
//! met; the same under another pointer.

use super::*;

fn refused(request: &Json) -> Vec<(String, String)> {
    let refusal = ask(request).expect_err("refused");
    let each = refusal.issues.into_iter();
    each.map(|i| (i.pointer, i.code.into_owned())).collect()
}

fn soil(texture: &str, pcf: f64, water: f64) -> Json {
    json!({ "material": { "soil": {
        "texture": texture, "dry_unit_weight": q(pcf, "pcf"), "water_content_ratio": water,
    } } })
}

#[test]
fn all_faults_come_at_once() {
    let text = crate::examples::requests::<FrostPenetration>("refused");
    let several = text.iter().find(|(name, _)| name == "several-faults");
    let request: Json = serde_json::from_str(&several.expect("there").1).unwrap();
    let pairs = refused(&request);
    let expected = [
        ("/insulation_for/on_top_of", "insulation_layer_unknown"),
        ("/layers/0", "missing_member"),
        ("/layers/0/material/insulation", "insulation_given_twice"),
        (
            "/layers/1/material/soil/water_content_ratio",
            "moisture_below_correlation",
        ),
        ("/layers/1/thickness", "last_layer_has_thickness"),
        ("/method", "frost_method_not_for_insulation"),
        ("/winter/freezing_index/winters/values", "too_few_winters"),
        ("/winter/mean_annual_temperature", "permafrost"),
    ];
    let expected: Vec<_> = expected
        .iter()
        .map(|(p, c)| ((*p).to_owned(), (*c).to_owned()))
        .collect();
    assert_eq!(pairs, expected);
}

#[test]
fn faults_of_a_member_carry_its_pointer() {
    let request = json!({ "winter": winter(1000.0, -1.0, 120.0), "layers": [] });
    let request: Request = serde_json::from_value(request).unwrap();
    let mut issues = Vec::new();
    lengths(&request, "/frost/computed", &mut issues);
    assert_eq!(issues[0].pointer, "/frost/computed/layers");
    let refusal = computed(&request, "/frost/computed", &mut Work::default()).unwrap_err();
    let pointers: Vec<_> = refusal.issues.iter().map(|i| i.pointer.as_str()).collect();
    assert_eq!(pointers, ["/frost/computed/winter/mean_annual_temperature"]);
    // factors alone are no frost depth
    let alone = json!({ "correction_factors": { "fusion_ratio": 0.2, "thermal_ratios": [1.0] } });
    let alone: Request = serde_json::from_value(alone).unwrap();
    let refusal = computed(&alone, "/frost/computed", &mut Work::default()).unwrap_err();
    assert_eq!(refusal.issues[0].pointer, "/frost/computed");
    assert_eq!(refusal.issues[0].code, "missing_member");
}

#[test]
fn on_a_limit_passes() {
    let w = winter(900.0, 6.0, 120.0);
    // 62.4 / 100 - 1 / 2.70
    let full = 0.624 - 1.0 / 2.7;
    for soil_of in [soil("fine", 100.0, 0.07), soil("fine", 100.0, full)] {
        assert!(depth(&request(w.clone(), vec![soil_of])) > 0.3);
    }
    let dry = request(w.clone(), vec![soil("coarse", 120.0, 0.01)]);
    assert!(refused(&dry)[0].1 == "berggren_outside_chart");
    for (pcf, water, code) in [
        (100.0, 0.0699, "moisture_below_correlation"),
        (100.0, full + 1e-4, "water_beyond_saturation"),
    ] {
        let request = request(w.clone(), vec![soil("fine", pcf, water)]);
        assert_eq!(refused(&request)[0].1, code);
    }
    // alpha exactly 7: 14 K of warmth on 2 K of cold
    let seven = request(
        winter(120.0, 14.0, 60.0),
        vec![given(None, (1.5, 1.5), 2.0, 80.0)],
    );
    near(frost(&seven).thermal_ratio, 7.0, 1e-12);
    let more = request(
        winter(120.0, 14.001, 60.0),
        vec![given(None, (1.5, 1.5), 2.0, 80.0)],
    );
    assert_eq!(refused(&more)[0].1, "berggren_outside_chart");
}

/// A method that does not hold beside the chosen one says why and does not refuse.
#[test]
fn a_method_beside_that_does_not_hold_says_so() {
    let text = crate::examples::request::<FrostPenetration>("warm-ground-above-chart");
    let frost = frost(&serde_json::from_str(&text).unwrap());
    assert_eq!(frost.method, FrostDepthMethod::HeatConduction);
    let line = &frost.depths[0];
    assert!(line.depth.is_none() && line.berggren.is_none());
    assert!(line.reason.as_deref().unwrap().contains("alpha is 8"));
    assert_eq!(
        by(&frost, FrostDepthMethod::HeatConduction),
        Some(frost.depth.si())
    );
}

#[test]
fn unlabelled_layers_have_numbers_and_these_are_names_too() {
    let mut first = given(Some(0.4), (1.5, 1.5), 2.0, 60.0);
    let second = given(None, (1.2, 1.2), 2.1, 90.0);
    let w = winter(900.0, 6.0, 120.0);
    assert_eq!(
        frost(&request(w.clone(), vec![first.clone(), second.clone()]))
            .ends_in
            .as_str(),
        "2"
    );
    first["label"] = json!("2");
    let pairs = refused(&request(w, vec![first, second]));
    assert_eq!(
        pairs,
        [("/layers/1".to_owned(), "duplicate_label".to_owned())]
    );
}
