//! What a section is refused for, and how its detailing is judged.

use super::*;

#[test]
fn lightweight_concrete_has_less_and_needs_its_weight() {
    let mut light = aci();
    light.lightweight_factor = Some(0.75);
    let codes = refused(&light);
    assert_eq!(
        codes,
        [("/s".to_owned(), "section_unit_weight_needed".to_owned())]
    );
    light.concrete_unit_weight = Some(UnitWeight::new(115.0, UnitWeightUnit::Pcf));
    let s = strong(&light);
    close(
        s.shear.concrete.si(),
        0.75 * strong(&aci()).shear.concrete.si(),
        1e-12,
    );
    // 33 x 115^1.5 sqrt(4000) = 2,573,894 psi
    close(s.elastic_modulus.get(StressUnit::Psi), 2_573_894.4, 1e-6);
    let mut strong_concrete = csa();
    strong_concrete.concrete_strength = mpa(45.0);
    assert_eq!(refused(&strong_concrete)[0].1, "section_unit_weight_needed");
    strong_concrete.concrete_unit_weight = Some(UnitWeight::new(23.5, UnitWeightUnit::KNPerM3));
    // (3300 sqrt(45) + 6900) (2396.333/2300)^1.5 = 30,880.32 MPa
    let s = strong(&strong_concrete);
    close(s.elastic_modulus.get(StressUnit::MPa), 30_880.325, 1e-7);
}

#[test]
fn all_faults_of_a_section_come_at_once() {
    let mut s = aci();
    s.top.place = BarPlace::EffectiveDepth(BarEffectiveDepth { depth: inch(31.0) });
    s.bottom.place = BarPlace::EffectiveDepth(BarEffectiveDepth { depth: inch(14.0) });
    s.concrete_strength = psi(2_000.0);
    s.steel_yield = psi(90_000.0);
    s.stirrups.as_mut().unwrap().steel_yield = psi(75_000.0);
    let found = refused(&s);
    let at = |pointer: &str| found.iter().find(|f| f.0 == pointer).map(|f| f.1.as_str());
    assert_eq!(at("/s/top/place"), Some("section_bars_outside"));
    assert_eq!(at("/s/bottom/place"), Some("section_bars_outside"));
    assert_eq!(at("/s/concrete_strength"), Some("section_outside_code"));
    assert_eq!(at("/s/steel_yield"), Some("section_outside_code"));
    assert_eq!(at("/s/stirrups/steel_yield"), Some("section_outside_code"));
    assert_eq!(found.len(), 5);
}

#[test]
fn a_section_that_would_fail_before_its_bars_yield_is_refused() {
    // tension-controlled up to c = 0.003 d/(0.003 + 0.002069 + 0.003) = 0.37179 d: 10.131 in,
    // a = 8.6117 in, A_s = 0.85 x 4000 x 16 x 8.6117/60,000 = 7.808 in2
    for (area, fine) in [(7.80, true), (7.82, false)] {
        let mut s = aci();
        s.bottom.area = SteelArea::new(area, AreaUnit::In2);
        let result = section::strength(&s, "/s", &mut Work::default());
        assert_eq!(result.is_ok(), fine, "{area}");
    }
    let mut s = aci();
    s.top.area = SteelArea::new(9.0, AreaUnit::In2);
    let over = (
        "/s/top/area".to_owned(),
        "section_over_reinforced".to_owned(),
    );
    assert_eq!(refused(&s), [over]);
    // c/d = 700/1100: c = 336.6 mm, a = 301.26 mm, A_s = 0.805 x 0.65 x 30 x 300 x 301.26/340
    // = 4172.7 mm2
    for (area, fine) in [(4_172.0, true), (4_173.5, false)] {
        let mut s = csa();
        s.top.area = SteelArea::new(area, AreaUnit::Mm2);
        let result = section::strength(&s, "/s", &mut Work::default());
        assert_eq!(result.is_ok(), fine, "{area}");
    }
}

#[test]
fn cover_serves_bars_and_stirrups_both() {
    let bars = |cover: f64, bar: f64, stirrup: Option<f64>| BarCover {
        cover: inch(cover),
        bar_diameter: inch(bar),
        stirrup_diameter: stirrup.map(inch),
        exposure: None,
    };
    let rule = &constants::ACI_COVER.value;
    for (bar, stirrup, exposure, want) in [
        // No. 6 within No. 3: 2 in less the stirrup is 1.625, the stirrup itself asks for 1.5
        (0.75, Some(0.375), CoverExposure::Formed, 1.625),
        (0.625, Some(0.375), CoverExposure::Formed, 1.5),
        (0.75, None, CoverExposure::Formed, 2.0),
        (0.75, Some(0.375), CoverExposure::CastAgainstGround, 3.0),
    ] {
        let got = judge::least_cover(rule, exposure, &bars(2.0, bar, stirrup));
        close(got.get(LengthUnit::In), want, 1e-12);
    }
}

#[test]
fn detailing_is_judged_and_least_steel_is_waived_by_a_small_moment() {
    let run = |section: &ReinforcedRectangle, moment: Option<f64>| {
        let mut work = Work::default();
        let s = section::strength(section, "/s", &mut work).expect("a strength");
        let m = moment.map(|kip_ft| Moment::new(kip_ft, MomentUnit::KipFt));
        crate::concrete::judge(section, &s, m.map(|m| (m, m)), "A", &mut work);
        work.checks
    };
    let of = |checks: &[crate::contract::Check], id: &str| -> Vec<CheckStatus> {
        checks
            .iter()
            .filter(|c| c.id == id)
            .map(|c| c.status)
            .collect()
    };
    use CheckStatus::{Fail, NotEvaluated, Pass, Warn};
    // 1.32 in2 of 1.4533: a third more than needed up to 119 kip ft
    let open = run(&aci(), None);
    assert_eq!(
        of(&open, "beam_minimum_steel"),
        [NotEvaluated, NotEvaluated]
    );
    assert_eq!(of(&open, "beam_cover"), [Pass, Pass]);
    assert_eq!(of(&open, "beam_minimum_stirrups"), [Pass]);
    assert_eq!(of(&open, "beam_stirrup_spacing"), [Pass]);
    for (kip_ft, want) in [(0.0, Pass), (118.0, Pass), (120.0, Fail), (1e6, Fail)] {
        let checks = run(&aci(), Some(kip_ft));
        assert_eq!(of(&checks, "beam_minimum_steel"), [want, want], "{kip_ft}");
    }
    let mut wide = aci();
    wide.stirrups.as_mut().unwrap().spacing = inch(16.0);
    let checks = run(&wide, None);
    assert_eq!(of(&checks, "beam_stirrup_spacing"), [Fail]);
    wide.stirrups.as_mut().unwrap().area = SteelArea::new(0.11, AreaUnit::In2);
    let checks = run(&wide, None);
    assert_eq!(of(&checks, "beam_minimum_stirrups"), [Warn]);
    let mut bare = csa();
    bare.stirrups = None;
    let depth = BarPlace::EffectiveDepth(BarEffectiveDepth { depth: mm(540.0) });
    (bare.bottom.place, bare.top.place) = (depth.clone(), depth);
    let checks = run(&bare, None);
    assert_eq!(of(&checks, "beam_minimum_stirrups"), [Pass]);
    assert_eq!(of(&checks, "beam_cover"), [NotEvaluated]);
    let depth = BarPlace::EffectiveDepth(BarEffectiveDepth { depth: mm(740.0) });
    (bare.bottom.place, bare.top.place) = (depth.clone(), depth);
    bare.depth = mm(800.0);
    let checks = run(&bare, None);
    assert_eq!(of(&checks, "beam_minimum_stirrups"), [Fail]);
}
