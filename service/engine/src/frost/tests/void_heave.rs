//! The heave over a void form by the ways of `ground-heave`, and what the form passes on to
//! beam and pile. Figures are own arithmetic, beside the code.

use serde_json::{Value as Json, json};

use super::{answer, ask, close, pile, q, statuses, warned, with};
use crate::contract::CheckStatus::{Fail, NotEvaluated, Pass};
use crate::contract::{Answer, Verdict, Work};
use crate::examples::{request, through};
use crate::frost::void_heave;
use crate::frost::{
    CrushStatement, FrostEmbedment, HeaveCause, HeavePrediction, Outcome, VoidFormOutcome,
};
use crate::quantity::{AreaLoad, ForceUnit, Length, LengthUnit, LineLoadUnit, StressUnit};
use crate::random::Random;
use crate::trace::Trace;

fn example(name: &str) -> Answer<Outcome> {
    through::<FrostEmbedment>(&request::<FrostEmbedment>(name), Trace::on())
        .expect(name)
        .1
}

fn form_of(answer: &Answer<Outcome>) -> &VoidFormOutcome {
    answer.result.void_form.as_ref().unwrap()
}

/// A form of a thickness in mm over a heave, under 1.2 m of frost.
fn over(nominal_mm: f64, heave: Json) -> Json {
    with(
        pile(88.9, &[(0.3, 3.0)], 1.2),
        "void_form",
        json!({
            "nominal_thickness": q(nominal_mm, "mm"), "heave": heave,
            "residual": { "share": { "residual_ratio": 0.4 } }
        }),
    )
}

/// Over the official 1.2 m: 0.0906 x 0.45 x 0.9 x 1.2 = 44.03 mm and 1.09 x 1e-9 x 2 x 500 x
/// 86,400 / 1.2 = 78.48 mm; with 20 mm of margin 237.5 mm nominal are needed, 250 are there.
#[test]
fn frost_heave_is_calculated_over_the_frost_depth_in_use() {
    let a = example("void-form-frost-calculated");
    let form = form_of(&a);
    let frost = form.frost_heave.as_ref().unwrap();
    close(frost.frost_depth.si(), 1.2, 1e-12);
    close(
        frost.in_situ.as_ref().unwrap().movement.si(),
        0.044_031_6,
        1e-9,
    );
    close(
        frost.segregation.as_ref().unwrap().movement.si(),
        0.078_48,
        1e-9,
    );
    close(form.design_heave.si(), 0.122_511_6, 1e-9);
    close(
        form.required_nominal_thickness.get(LengthUnit::Mm),
        237.519_333,
        1e-8,
    );
    assert_eq!(form.heave_governed_by, HeaveCause::Frost);
    assert_eq!(statuses(&a, "void_form_clearance"), [Pass]);
    // in a crawl space that is dug out the ground freezes as deep from its floor
    let heave = json!({ "frost": { "calculated": { "in_situ": { "porosity_ratio": 0.5, "saturation_ratio": 1.0 } } } });
    let mut dug = over(100.0, heave);
    dug["frost"]["cold_surface_depth"] = q(0.6, "m");
    let dug = answer(dug);
    close(form_of(&dug).design_heave.si(), 0.0906 * 0.5 * 1.2, 1e-12);
}

/// A screening counts with its upper end, says so, and accepts nothing.
#[test]
fn the_upper_end_of_a_range_counts_and_leaves_the_verdict_open() {
    let a = example("void-form-swell-screening");
    let form = form_of(&a);
    let range = form.swell.as_ref().unwrap().range.as_ref().unwrap();
    assert_eq!(form.design_heave, range.upper);
    assert_eq!(form.heave_is_upper_end, Some(true));
    assert_eq!(form.heave_governed_by, HeaveCause::Swell);
    assert_eq!(statuses(&a, "void_form_clearance"), [Pass]);
    assert!(
        a.verdict_reasons
            .iter()
            .any(|r| r.code == "swell_by_index_only")
    );
    assert_eq!(a.verdict, Verdict::Provisional);
}

#[test]
fn every_way_to_a_swell_is_open_to_the_form() {
    // 20/ln(10) ft of PE (10^(-t/20) - 10^(-b/20)): 0.5 over 0 to 4 ft, 0.25 over 4 to 10 ft
    let share = |t: f64, b: f64| {
        let tenth = |d: f64| crate::math::pow(10.0, -d / 20.0);
        8.685_889_638 * (tenth(t) - tenth(b)) * 25.4
    };
    let by_depth = 0.5 * share(0.0, 4.0) + 0.25 * share(4.0, 10.0);
    for (name, heave_mm, passes) in [
        ("void-form-swell-by-depth", by_depth, true),
        ("void-form-swell-tested", 120.154_5, false),
        ("void-form-potential-rise", 50.0, true),
    ] {
        let a = example(name);
        let form = form_of(&a);
        close(form.design_heave.get(LengthUnit::Mm), heave_mm, 1e-6);
        assert_eq!(form.heave_governed_by, HeaveCause::Swell, "{name}");
        assert!(form.heave_is_upper_end.is_none(), "{name}");
        assert!(form.swell.is_some(), "{name}");
        let want = if passes { Pass } else { Fail };
        let free = form.nominal_thickness.get(LengthUnit::Mm) * 0.6;
        assert_eq!(free >= heave_mm, passes, "{name}");
        assert_eq!(statuses(&a, "void_form_clearance"), [want], "{name}");
        assert!(warned(&a, "swell_moisture_unknown"), "{name}");
        assert_eq!(warned(&a, "void_form_closes"), !passes, "{name}");
    }
}

/// 500 psf on 16 in is 666.7 plf; on 7.2 ft of beam 4,800 lbf. 375 psf of concrete are
/// carried. A form of 300 psf cannot carry them.
#[test]
fn a_form_passes_its_crush_pressure_on() {
    let a = example("linnet-void-form-crushed");
    let crush = form_of(&a).crush.as_ref().unwrap();
    assert_eq!(crush.stated_as, CrushStatement::Tested);
    close(
        crush.transmitted_pressure.get(StressUnit::Psf),
        500.0,
        1e-12,
    );
    close(
        crush.line_load.unwrap().get(LineLoadUnit::Plf),
        2000.0 / 3.0,
        1e-12,
    );
    close(
        crush.pile_tension.unwrap().get(ForceUnit::Lbf),
        4800.0,
        1e-12,
    );
    assert_eq!(statuses(&a, "void_form_crush_strength"), [Pass]);
    assert!(!warned(&a, "void_form_pressure_not_counted"));
    let weak = example("linnet-void-form-too-weak");
    assert_eq!(statuses(&weak, "void_form_crush_strength"), [Fail]);
    assert_eq!(weak.verdict, Verdict::Reject);
    let soft = example("linnet-void-form-softened");
    let crush = form_of(&soft).crush.as_ref().unwrap();
    assert_eq!(crush.pile_tension.unwrap().si(), 0.0);
    assert_eq!(crush.stated_as, CrushStatement::Softened);
    assert!(statuses(&soft, "void_form_crush_strength").is_empty());
    assert!(!warned(&soft, "void_form_pressure_not_counted"));
}

#[test]
fn what_is_missing_for_the_pressure_is_said() {
    let heave = json!({ "frost": { "given": { "movement": q(60.0, "mm") } } });
    let detail = |a: &Answer<Outcome>| {
        let found = a
            .warnings
            .iter()
            .find(|w| w.code == "void_form_pressure_not_counted");
        found.map(|w| w.detail.clone())
    };
    let none = answer(over(200.0, heave.clone()));
    let told = detail(&none).unwrap();
    assert!(
        told.contains("`crush`") && told.contains("`beam_width`"),
        "{told}"
    );
    assert!(form_of(&none).crush.is_none());
    // where nothing heaves nothing is crushed, and nothing is missing
    let still = answer(over(
        200.0,
        json!({ "frost": { "given": { "movement": q(0.0, "mm") } } }),
    ));
    assert!(!detail(&still).unwrap().contains("send"));
    let mut sent = over(200.0, heave);
    let given = json!({ "given": { "pressure": q(25.0, "kPa") } });
    for (crush, missing, tension) in [
        (json!({ "pressure": given }), Some("`beam_width`"), None),
        (
            json!({ "pressure": given, "beam_width": q(0.4, "m") }),
            Some("`tributary_length`"),
            None,
        ),
        (
            json!({ "pressure": given, "beam_width": q(0.4, "m"), "tributary_length": q(2.5, "m") }),
            None,
            Some(25.0),
        ),
    ] {
        sent["void_form"]["crush"] = crush;
        let a = answer(sent.clone());
        let found = form_of(&a).crush.as_ref().unwrap();
        assert_eq!(found.pile_tension.map(|t| t.get(ForceUnit::KN)), tension);
        match (detail(&a), missing) {
            (Some(told), Some(name)) => assert!(told.contains(name), "{told}"),
            (None, None) => {}
            other => panic!("{other:?}"),
        }
        // no concrete was sent, so there is nothing to carry
        assert!(statuses(&a, "void_form_crush_strength").is_empty());
    }
    sent["void_form"]["heave"] = json!({ "frost": { "given": { "movement": q(0.0, "mm") } } });
    let still = answer(sent);
    let found = form_of(&still).crush.as_ref().unwrap();
    assert_eq!(found.transmitted_pressure, AreaLoad::ZERO);
    assert_eq!(found.pile_tension.unwrap().si(), 0.0);
}

#[test]
fn contradictions_of_the_crush_pressure_are_all_refused_at_once() {
    let text = request::<FrostEmbedment>("linnet-void-form-crushed");
    let mut sent: Json = serde_json::from_str(&text).unwrap();
    sent.as_object_mut().unwrap().remove("include");
    sent["void_form"]["crush"]["pressure"]["tested"]["pressure"] = q(399.0, "psf");
    sent["void_form"]["crush"]["tributary_length"] = q(7.3, "ft");
    sent["void_form"]["heave"]["swell"] =
        json!({ "index_screening": { "plasticity_index_ratio": 0.09, "thickness": q(2.0, "m") } });
    sent["void_form"]["heave"]["frost"] = json!({ "calculated": {} });
    let refusal = ask(sent).expect_err("a refusal");
    let found: Vec<_> = refusal
        .issues
        .iter()
        .map(|i| (i.pointer.as_str(), i.code.as_ref()))
        .collect();
    assert_eq!(
        found,
        [
            (
                "/void_form/crush/tributary_length",
                "tributary_lengths_differ"
            ),
            (
                "/void_form/heave/frost/calculated",
                "frost_heave_data_missing"
            ),
            (
                "/void_form/heave/swell/index_screening/plasticity_index_ratio",
                "swell_index_outside"
            ),
            (
                "/void_form/wet_concrete/rated_load",
                "rated_load_above_crush"
            ),
        ]
    );
}

/// The same length of beam in other units is no contradiction, and a load equal to the crush
/// pressure is carried.
#[test]
fn equal_in_other_units_is_equal() {
    let text = request::<FrostEmbedment>("linnet-void-form-crushed");
    let mut sent: Json = serde_json::from_str(&text).unwrap();
    for member in ["include", "output_units"] {
        sent.as_object_mut().unwrap().remove(member);
    }
    sent["void_form"]["crush"]["tributary_length"] = q(7.2 * 304.8, "mm");
    sent["void_form"]["crush"]["pressure"]["tested"]["pressure"] = q(375.0 / 144.0, "psi");
    sent["void_form"]["wet_concrete"]["rated_load"] = q(0.375, "ksf");
    let a = answer(sent);
    assert_eq!(statuses(&a, "void_form_crush_strength"), [Pass]);
    assert_eq!(statuses(&a, "void_form_concrete_load"), [Pass]);
    let without = {
        let mut sent: Json = serde_json::from_str(&text).unwrap();
        for member in ["include", "output_units"] {
            sent.as_object_mut().unwrap().remove(member);
        }
        let concrete = &mut sent["void_form"]["wet_concrete"];
        concrete.as_object_mut().unwrap().remove("rated_load");
        answer(sent)
    };
    assert_eq!(
        statuses(&without, "void_form_concrete_load"),
        [NotEvaluated]
    );
}

/// More heave, more margin or more residual never makes a form better; the force is the same
/// in all units.
#[test]
fn a_form_never_gets_better_by_more_heave() {
    let mut random = Random(21);
    for _ in 0..150 {
        let (frost, swell) = (random.between(0.0, 200.0), random.between(0.0, 200.0));
        let (nominal, pressure) = (random.between(50.0, 400.0), random.between(1.0, 60.0));
        let (width, length) = (random.between(0.1, 1.0), random.between(0.5, 5.0));
        let ask = |frost: f64, swell: f64, imperial: bool| {
            let mut sent = over(
                nominal,
                json!({
                    "frost": { "given": { "movement": q(frost, "mm") } },
                    "swell": { "given": { "movement": q(swell, "mm") } }
                }),
            );
            sent["void_form"]["crush"] = if imperial {
                json!({
                    "pressure": { "given": { "pressure": q(pressure * 20.885_434_233_150_13, "psf") } },
                    "beam_width": q(width / 0.0254, "in"), "tributary_length": q(length / 0.3048, "ft")
                })
            } else {
                json!({
                    "pressure": { "given": { "pressure": q(pressure, "kPa") } },
                    "beam_width": q(width, "m"), "tributary_length": q(length, "m")
                })
            };
            answer(sent)
        };
        let a = ask(frost, swell, false);
        let form = form_of(&a);
        close(
            form.design_heave.get(LengthUnit::Mm),
            frost.max(swell),
            1e-12,
        );
        let tension = form.crush.as_ref().unwrap().pile_tension.unwrap();
        close(tension.get(ForceUnit::KN), pressure * width * length, 1e-12);
        let other = ask(frost, swell, true);
        let same = form_of(&other)
            .crush
            .as_ref()
            .unwrap()
            .pile_tension
            .unwrap();
        close(same.si(), tension.si(), 1e-12);
        let worse = ask(frost * 1.5, swell * 1.5, false);
        assert!(form_of(&worse).shortfall >= form.shortfall);
        assert!(form_of(&worse).required_nominal_thickness >= form.required_nominal_thickness);
        let passed = |a: &Answer<Outcome>| statuses(a, "void_form_clearance") == [Pass];
        assert!(passed(&a) || !passed(&worse));
    }
}

/// The prediction by itself, as a beam without a form asks for it.
#[test]
fn a_prediction_stands_by_itself() {
    let heave: HeavePrediction = serde_json::from_value(json!({
        "frost": { "calculated": { "in_situ": { "porosity_ratio": 0.5, "saturation_ratio": 1.0 } } },
        "swell": { "given": { "movement": q(10.0, "mm") } }
    }))
    .unwrap();
    let depth = Length::new(1.0, LengthUnit::M);
    assert!(void_heave::faults("/heave", &heave, depth).is_empty());
    let found = void_heave::predict(&heave, depth, &mut Work::default()).unwrap();
    close(found.design.movement.si(), 0.0453, 1e-12);
    assert_eq!(found.design.governed_by, HeaveCause::Frost);
    assert!(found.freezing.is_some() && found.swell.is_none());
    let none = HeavePrediction::default();
    assert!(void_heave::predict(&none, depth, &mut Work::default()).is_none());
}
