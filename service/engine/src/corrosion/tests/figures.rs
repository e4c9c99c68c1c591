//! Figures worked by hand: faces, edges, thin zinc, compacted fill, rates of the engineer; and
//! what must hold for any section.

use super::*;
use crate::corrosion::CorrodedOutcome;
use crate::quantity::{AreaUnit, DurationUnit, ForceUnit, LengthUnit};
use crate::random::Random;

fn one(request: Json) -> CorrodedOutcome {
    answer(request).result.sections.remove(0)
}

fn zinced(years: f64, um: f64) -> CorrodedOutcome {
    one(plate(
        years,
        json!({ "sections": [{
        "form": { "plate": { "thickness": q(10.0, "mm") } },
        "coating": { "zinc": { "thickness": q(um, "um") } }
    }] }),
    ))
}

/// 20 um go in 20/15 years; 30 um in 2; 0 steel is lost before, and that is told.
#[test]
fn thin_zinc_and_short_lives() {
    let year = |s: &CorrodedOutcome| s.zinc_life.expect("zinc").get(DurationUnit::Year);
    close(year(&zinced(50.0, 20.0)), 20.0 / 15.0, 1e-12);
    close(year(&zinced(50.0, 30.0)), 2.0, 1e-12);
    close(year(&zinced(50.0, 34.0)), 3.0, 1e-12);
    close(
        zinced(50.0, 86.0).loss_each_face.get(LengthUnit::Um),
        34.0 * 12.0,
        1e-12,
    );
    assert_eq!(zinced(10.0, 86.0).loss_each_face.si(), 0.0);
    let a = answer(plate(
        10.0,
        json!({ "sections": [{
        "form": { "plate": { "thickness": q(10.0, "mm") } },
        "coating": { "zinc": { "thickness": q(86.0, "um") } }
    }] }),
    ));
    assert!(warned(&a, "corrosion_no_loss"));
}

/// The edge of a plate loses from the start: 50 x 12 um.
#[test]
fn edges_get_no_credit_for_zinc() {
    let plate = zinced(50.0, 86.0);
    close(
        plate.edge_loss.expect("an edge").get(LengthUnit::Um),
        600.0,
        1e-12,
    );
    let a = example("linnet");
    let helix = &a.result.sections[1];
    close(
        helix.edge_loss.expect("an edge").get(LengthUnit::Um),
        600.0,
        1e-12,
    );
    assert_eq!(a.result.sections[0].edge_loss, None);
}

/// Linnet: 75 um of zinc on a wall of 0.203 in last 13.25 years; 36.75 x 12 = 441 um are lost on
/// the outer face of 2.875 in.
#[test]
fn the_shaft_of_linnet() {
    let a = example("linnet");
    let shaft = &a.result.sections[0];
    close(
        shaft.zinc_thickness.expect("zinc").get(LengthUnit::Um),
        75.0,
        1e-12,
    );
    close(shaft.loss_each_face.get(LengthUnit::Um), 441.0, 1e-12);
    assert_eq!(shaft.exposed_face_count, 1);
    let (d, t) = (73.025 - 0.882, 5.1562 - 0.441);
    let area = crate::math::PI * t * (d - t);
    close(
        shaft.area_after.expect("one").get(AreaUnit::Mm2),
        area,
        1e-12,
    );
    let kip = area / 645.16 * 50.0;
    close(
        shaft.nominal_strength.expect("one").get(ForceUnit::Kip),
        kip,
        1e-9,
    );
    assert_eq!(shaft.factored_strength, None);
    // in its fill: 1.2 mm, zinc or not; compacted half
    let in_fill = example("linnet-in-fill");
    close(
        in_fill.result.sections[0]
            .loss_each_face
            .get(LengthUnit::Mm),
        1.2,
        1e-12,
    );
    assert!(warned(&in_fill, "corrosion_zinc_not_credited"));
    let compacted = example("linnet-in-compacted-fill");
    close(
        compacted.result.sections[0]
            .loss_each_face
            .get(LengthUnit::Mm),
        0.6,
        1e-12,
    );
    assert!(warned(&compacted, "default_from_memory"));
}

/// An open tube loses inside too: pi/4 ((88.9 - 2 s)^2 - (75.9 + 2 s)^2), s = 44 x 12 um.
#[test]
fn the_open_shaft_of_sizerin() {
    let shaft = &example("sizerin").result.sections[0];
    let s = 0.528;
    close(shaft.loss_each_face.get(LengthUnit::Mm), s, 1e-12);
    close(
        shaft.thickness_after.get(LengthUnit::Mm),
        6.5 - 2.0 * s,
        1e-12,
    );
    let (outer, inner) = (88.9 - 2.0 * s, 75.9 + 2.0 * s);
    let area = crate::math::PI / 4.0 * (outer * outer - inner * inner);
    close(
        shaft.area_after.expect("one").get(AreaUnit::Mm2),
        area,
        1e-12,
    );
    close(
        shaft.factored_strength.expect("one").get(ForceUnit::KN),
        0.9 * 0.35 * area,
        1e-12,
    );
}

/// 2 mil a year for both faces: half on each of a plate, all on the one of a sealed shaft.
#[test]
fn a_rate_for_both_faces() {
    let a = example("given-both-faces");
    let [shaft, helix] = [0, 1].map(|i| &a.result.sections[i]);
    close(shaft.loss_each_face.get(LengthUnit::Mil), 90.0, 1e-9);
    close(helix.loss_each_face.get(LengthUnit::Mil), 45.0, 1e-9);
    close(helix.loss_in_all.get(LengthUnit::Mil), 90.0, 1e-9);
}

/// A longer life never leaves more, thicker zinc never less; unit systems do not matter; a bar
/// all round loses twice the face.
#[test]
fn more_time_never_leaves_more() {
    let mut random = Random(11);
    for _ in 0..60 {
        let outside = random.between(40.0, 200.0);
        let wall = random.between(4.0, 15.0);
        let (years, zinc) = (random.between(5.0, 100.0), random.between(10.0, 150.0));
        let sealed = random.below(2) == 0;
        let of = |years: f64, zinc: f64, inches: bool| {
            let size = |mm: f64| {
                if inches {
                    q(mm / 25.4, "in")
                } else {
                    q(mm, "mm")
                }
            };
            one(plate(
                years,
                json!({ "sections": [{
                "form": { "round_tube": {
                    "outside_diameter": size(outside), "wall_thickness": size(wall),
                    "sealed_interior": sealed
                } },
                "coating": { "zinc": { "thickness": q(zinc, "um") } }
            }] }),
            ))
        };
        let plain = of(years, zinc, false);
        assert!(of(years + 10.0, zinc, false).area_after <= plain.area_after);
        assert!(of(years, zinc + 20.0, false).area_after >= plain.area_after);
        let inches = of(years, zinc, true);
        close(inches.remaining_ratio, plain.remaining_ratio, 1e-12);
        let faces = if sealed { 1.0 } else { 2.0 };
        close(
            plain.loss_in_all.si(),
            faces * plain.loss_each_face.si(),
            1e-12,
        );
        assert!(plain.remaining_ratio <= 1.0 && plain.remaining_ratio > 0.0);
    }
    let bar = |form: Json| {
        one(plate(
            50.0,
            json!({
                "sections": [{ "form": form }], "ground": { "kind": "undisturbed_natural" }
            }),
        ))
    };
    let square = bar(json!({ "square_bar": { "side": q(40.0, "mm") } }));
    close(
        square.area_after.expect("one").get(AreaUnit::Mm2),
        38.8 * 38.8,
        1e-12,
    );
    let round = bar(json!({ "round_bar": { "diameter": q(40.0, "mm") } }));
    close(round.remaining_ratio, 38.8 * 38.8 / 1600.0, 1e-12);
}

/// The powder law begins after 16 years.
#[test]
fn powder_before_its_time() {
    let of = |years: f64| {
        one(plate(
            years,
            json!({
                "method": { "acceptance_criteria": {} },
                "sections": [{ "form": { "plate": { "thickness": q(10.0, "mm") } }, "coating": { "powder": {} } }]
            }),
        ))
    };
    assert_eq!(of(16.0).loss_in_all.si(), 0.0);
    close(of(17.0).loss_in_all.get(LengthUnit::Um), 40.0, 1e-9);
}

#[test]
fn lives_outside_the_table() {
    for (years, refused) in [(4.99, true), (5.0, false), (125.0, false), (125.01, true)] {
        let more = json!({ "ground": { "kind": "undisturbed_natural" } });
        assert_eq!(ask(plate(years, more)).is_err(), refused, "{years}");
    }
}
