//! Every example request under `openapi/examples/pile-relocation`: those that must be answered
//! are, with their verdicts; those that must be refused are refused where they should be.

use super::*;
use crate::examples::{refused_as, requests, through};

#[test]
fn every_example_is_answered_and_comes_to_its_verdict() {
    use Verdict::*;
    let expected = [
        ("along-and-off", Accept),
        ("beam-made-stronger", Accept),
        ("beam-no-longer-stands", Reject),
        ("beam-of-unknown-width", Provisional),
        ("corner-bridged", Reject),
        ("deliberate-move-not-overloaded", Reject),
        ("eccentric-head", Accept),
        ("eccentric-head-unknown-torsion", Provisional),
        ("full-detail", Reject),
        ("head-plate", Reject),
        ("linnet", Reject),
        ("nothing-works", Reject),
        ("nothing-works-within-reach", Reject),
        ("off-line-beyond-allowance", Provisional),
        ("pipe-beside-the-beam", Accept),
        ("pipe-through-the-beam", Reject),
        ("refused-and-redesigned", Reject),
        ("rock-at-the-corner", Reject),
        ("short-and-softer", Accept),
        ("sizerin", Provisional),
        ("st-fem-d_moved_pile3_plus1.5", Provisional),
        ("staked-plan", Reject),
        ("stronger-beam", Reject),
        ("stronger-beam-and-larger-piles", Reject),
        ("summary-detail", Reject),
        ("three-refused-in-a-row", Reject),
        ("types-and-springs", Reject),
        ("unintended-beside-a-redesign", Reject),
        ("unintended-overload", Accept),
    ];
    let mut found = Vec::new();
    for (name, text) in requests::<PileRelocation>("") {
        let answered = through::<PileRelocation>(&text, Trace::on());
        let (_, answer) = answered.unwrap_or_else(|e| panic!("{name}: {e:?}"));
        assert!(answer.steps.is_some_and(|s| !s.is_empty()), "{name}");
        found.push((name, answer.verdict));
    }
    let found: Vec<_> = found.iter().map(|(n, v)| (n.as_str(), *v)).collect();
    assert_eq!(found, expected);
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    refused_as::<PileRelocation>(&[
        ("added-off-the-beams", "physics", "pile_off_beam"),
        ("added-without-label", "physics", "missing_member"),
        ("all-faults-at-once", "physics", "relocation_unknown_pile"),
        ("beam-needed", "physics", "relocation_beam_needed"),
        ("capacity-raised", "physics", "relocation_capacity_raised"),
        ("fault-in-the-plan", "physics", "beam_segment_zero_length"),
        ("label-clash", "physics", "duplicate_label"),
        ("moved-off-the-beam", "physics", "relocation_moved_off_beam"),
        ("moved-onto-another", "physics", "piles_coincide"),
        ("no-events", "lengths", "list_too_short"),
        (
            "no-pile-for-ways-out",
            "physics",
            "relocation_no_pile_for_ways_out",
        ),
        ("no-pile-left", "physics", "relocation_no_pile_left"),
        ("not-on-that-beam", "physics", "relocation_not_on_beam"),
        ("nothing-changes", "physics", "relocation_nothing_changes"),
        (
            "obstruction-covers-the-beam",
            "physics",
            "relocation_obstruction_covers_beams",
        ),
        (
            "overload-with-factored-loads",
            "physics",
            "relocation_overload_with_factored",
        ),
        ("piles-searched", "physics", "relocation_piles_not_given"),
        ("residual-without-capacity", "physics", "capacity_needed"),
        ("rock-with-stiffness", "physics", "stiffness_on_rock"),
        (
            "section-strengthened",
            "physics",
            "relocation_not_strengthened",
        ),
        ("short-obstruction", "lengths", "list_too_short"),
        ("too-far-along", "values", "along"),
        (
            "two-events-on-one-pile",
            "physics",
            "relocation_event_twice",
        ),
        ("type-not-offered", "physics", "relocation_type_not_offered"),
        ("unknown-beam", "physics", "relocation_unknown_beam"),
        ("unknown-pile", "physics", "relocation_unknown_pile"),
        (
            "ways-out-of-unknown-pile",
            "physics",
            "relocation_unknown_pile",
        ),
    ]);
}

fn ways(name: &str) -> WaysOutReport {
    let answered = answer(&shown(name));
    answered.result.ways_out.expect("ways out")
}

/// The kinds that are offered, in their order, and whether each does.
fn ranked(report: &WaysOutReport) -> Vec<(WayOutKind, bool)> {
    let all = report.options.iter();
    all.map(|o| (o.kind, o.feasible)).collect()
}

#[test]
fn a_boulder_under_the_corner() {
    use WayOutKind::*;
    let report = ways("rock-at-the-corner");
    assert!(!report.stands && report.complete && report.relax.is_none());
    // two piles and a larger one beside them are accepted; one pile 2 ft from the corner for 1,450,
    // or three larger ones for 420, 420 and 760, leave spans whose beams are of unknown strength
    let kinds = ranked(&report);
    let expected = [
        (StraddlingPair, true),
        (ShiftAlong, true),
        (LargerPiles, true),
    ];
    assert_eq!(kinds[..3], expected, "{kinds:?}");
    let verdicts: Vec<_> = report.options.iter().map(|o| o.verdict).collect();
    assert_eq!(
        verdicts[..3],
        [Verdict::Accept, Verdict::Provisional, Verdict::Provisional]
    );
    let costs: Vec<f64> = report.options[1..3]
        .iter()
        .map(|o| o.cost.as_ref().expect("a cost").value)
        .collect();
    assert_eq!(costs, [1_450.0, 1_600.0]);
    for o in &report.options {
        let expected: f64 = o
            .events
            .iter()
            .map(|e| match e {
                RelocationEvent::Added(_) => 1_450.0,
                RelocationEvent::Replaced(r) if r.why.as_ref().unwrap().as_str() == "10+12+14" => {
                    420.0
                }
                RelocationEvent::Replaced(_) => 760.0,
                _ => 0.0,
            })
            .sum();
        assert_eq!(o.cost.as_ref().map(|c| c.value), Some(expected));
    }
    // each tells where bars are asked for: the top over every new place
    let first = &report.options[0];
    let over = first.reinforcement.iter();
    let over = over.filter(|n| n.place == ReinforcementPlace::TopOverNewSupport);
    assert_eq!(over.count(), 2, "{:?}", first.reinforcement);
    // clear of the boulder by half a foot: no place within 2 ft of the corner
    for stretch in &report.may_stand {
        assert!(stretch.from.get(crate::quantity::LengthUnit::Ft) >= 2.0 - 1e-9);
    }
}

#[test]
fn nothing_works_names_the_limit_to_relax_and_what_it_would_do() {
    let report = ways("nothing-works-within-reach");
    assert_eq!(report.feasible_count, 0);
    let relax = report.relax.expect("limits");
    // 6 in along does where 5 in were allowed
    let first = &relax[0];
    assert_eq!(first.limit, "max_along");
    near(first.excess_ratio.unwrap(), 0.2, 1e-9);
    near(first.to.as_ref().unwrap().value() / 0.0254, 6.0, 1e-9);
    assert!(first.option.feasible);
    let excess: Vec<_> = relax.iter().map(|r| r.excess_ratio.unwrap()).collect();
    assert!(excess.windows(2).all(|w| w[0] <= w[1]), "{excess:?}");
    // nothing within reach at all: the check that is missed most, with all that fails
    let report = ways("nothing-works");
    let relax = report.relax.expect("limits");
    assert_eq!(relax[0].limit, "pile_compression");
    near(relax[0].excess_ratio.unwrap(), 0.6839, 5e-5);
    let fails: Vec<&str> = relax[0]
        .option
        .failed
        .iter()
        .map(|f| f.check.as_str())
        .collect();
    assert!(fails.contains(&"pile_span") && fails.contains(&"pile_compression"));
}

#[test]
fn a_beam_is_made_as_strong_as_it_has_to_be() {
    let report = ways("stronger-beam");
    let option = report
        .options
        .iter()
        .find(|o| o.kind == WayOutKind::StrongerBeam);
    let option = option.expect("an option");
    assert!(option.feasible && option.verdict == Verdict::Accept);
    near(option.beam_utilisation_ratio.unwrap(), 1.0, 1e-9);
    // 250 and 38 a foot over 40 ft
    assert_eq!(option.cost.as_ref().unwrap().value, 1_770.0);
    let needed = &option.needed_strengths.as_ref().unwrap()[0];
    let kip_ft = |m: crate::quantity::Moment| m.get(crate::quantity::MomentUnit::KipFt);
    // 1.49150522 of 22 kip-ft hogging
    near(
        kip_ft(needed.moment_capacity.unwrap().hogging),
        32.813,
        1e-3,
    );
    let both = ways("stronger-beam-and-larger-piles");
    let option = &both.options[0];
    assert_eq!(option.kind, WayOutKind::StrongerBeam);
    assert!(option.feasible && option.larger_pile_count == 2);
}
