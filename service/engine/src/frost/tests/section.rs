//! The section: every level of the request, and every force with the depths between which
//! it acts.

use super::{answer, example};
use crate::frost::{FrostSection, FrostStage, SectionForceKind};
use crate::quantity::{Length, LengthUnit};

fn section(name: &str) -> FrostSection {
    answer(example(name)).result.section
}

fn ft(value: f64) -> Length {
    Length::new(value, LengthUnit::Ft)
}

fn near(a: Length, b: Length) -> bool {
    (a.si() - b.si()).abs() < 1e-9
}

#[test]
fn levels_beam_and_pile_are_all_there() {
    let s = section("swelling-alpha-share");
    assert!(near(s.official_frost_base_depth, ft(20.0 / 12.0)));
    assert!(near(s.active_depth.unwrap(), ft(12.0)));
    let beam = s.beam.unwrap();
    assert!(near(beam.top_depth.unwrap(), ft(-1.0)));
    assert!(near(beam.underside_depth, ft(1.5)));
    let form = s.void_form.unwrap();
    assert!(near(form.top_depth.unwrap(), ft(1.5)));
    assert!((form.crushed_thickness.get(LengthUnit::In) - 3.0).abs() < 1e-9);
    assert!(near(s.pile.head_depth, ft(1.5)) && near(s.pile.tip_depth, ft(20.0)));
    assert!(s.pile.helices.iter().all(|h| !h.in_moving_ground));
    let caught = section("helix-in-active-zone");
    assert!(caught.pile.helices[0].in_moving_ground);
    assert!(section("linnet").active_depth.is_none());
    assert!(near(section("linnet").fill_depth.unwrap(), ft(4.5)));
    assert!(near(
        section("linnet-collapsing-soil").collapse_depth.unwrap(),
        ft(11.0)
    ));
}

#[test]
fn each_force_has_its_depths() {
    use SectionForceKind as Kind;
    let s = section("swelling-beam-sides-gripped");
    let spans: Vec<_> = s
        .forces
        .iter()
        .filter(|f| f.stage == FrostStage::Service)
        .map(|f| (f.kind, f.top_depth, f.bottom_depth))
        .collect();
    let want = [
        (Kind::ShaftAdfreeze, 1.5, 20.0 / 12.0),
        (Kind::BeamAdfreeze, 0.0, 1.5),
        (Kind::DeadLoad, 1.5, 1.5),
        (Kind::ShaftSwell, 2.0, 12.0),
        (Kind::BeamSwell, 0.0, 1.5),
        (Kind::TensionResistance, 17.0, 19.5),
    ];
    for (kind, top, bottom) in want {
        let found = spans.iter().find(|(k, _, _)| *k == kind);
        let (_, a, b) = found.unwrap_or_else(|| panic!("{kind:?} in {spans:?}"));
        assert!(near(*a, ft(top)) && near(*b, ft(bottom)), "{kind:?}");
    }
    assert!(s.forces.iter().all(|f| f.force.si() > 0.0));
    let first_later = s.forces.iter().position(|f| f.stage != FrostStage::Service);
    let tail = &s.forces[first_later.unwrap()..];
    assert!(tail.iter().all(|f| f.stage == FrostStage::Construction));
    let kinds = |name: &str| {
        section(name)
            .forces
            .iter()
            .map(|f| f.kind)
            .collect::<Vec<_>>()
    };
    assert!(kinds("linnet-void-form-crush").contains(&Kind::VoidForm));
    assert!(kinds("swelling-beam-on-ground").contains(&Kind::BeamUndersideSwell));
    assert!(kinds("linnet-downdrag").contains(&Kind::Drag));
    let sleeved = kinds("sizerin-corner-sleeve");
    assert!(!sleeved.contains(&Kind::ShaftAdfreeze), "{sleeved:?}");
}

/// Drag is on the steel only: every other part of the answer is as without it.
#[test]
fn drag_touches_nothing_else() {
    let (plain, drag) = (
        answer(example("linnet")),
        answer(example("linnet-downdrag")),
    );
    assert_eq!(plain.result.uplift, drag.result.uplift);
    assert_eq!(plain.result.governing_uplift, drag.result.governing_uplift);
    let found = drag.result.downdrag.unwrap();
    assert!(found.governing.unwrap().drag_force.si() > 0.0);
    assert!(drag.checks.len() > plain.checks.len());
    assert!(
        drag.checks
            .iter()
            .all(|c| c.id != "frost_uplift" || plain.checks.contains(c))
    );
}
