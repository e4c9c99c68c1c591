//! Every example request under `openapi/examples/pile-relocation`: those that must be answered
//! are, with their verdicts; those that must be refused are refused where they should be.

use super::*;
use crate::examples::{refused_as, requests, through};

#[test]
fn every_example_is_answered_and_comes_to_its_verdict() {
    use Verdict::*;
    let expected = [("linnet", Reject)];
    let mut found = Vec::new();
    for (name, text) in requests::<PileRelocation>("") {
        let answered = through::<PileRelocation>(&text, Trace::on());
        let (_, answer) = answered.unwrap_or_else(|e| panic!("{name}: {e:?}"));
        assert!(answer.steps.is_some_and(|s| !s.is_empty()), "{name}");
        if let Some(ways) = &answer.result.ways_out {
            for o in &ways.options {
                println!(
                    "   {} {:?} {} {:?} u {:?} cost {:?} ch {} mv {:.3} fails {:?}",
                    o.rank,
                    o.kind,
                    o.feasible,
                    o.verdict,
                    o.utilisation_ratio,
                    o.cost.as_ref().map(|c| c.value),
                    o.change_count,
                    o.movement.si(),
                    o.failed
                        .iter()
                        .map(|f| format!(
                            "{} {}",
                            f.check,
                            f.subject.as_ref().map_or("", |s| &s.label)
                        ))
                        .collect::<Vec<_>>()
                );
            }
            println!(
                "   {:?} work {} {:?}",
                ways.tried,
                ways.work_count,
                ways.may_stand
                    .iter()
                    .map(|s| (s.from.si() / 0.3048, s.to.si() / 0.3048))
                    .collect::<Vec<_>>()
            );
            for r in ways.relax.iter().flatten() {
                println!(
                    "   relax {} {:?} {:?} {:?} {:?}",
                    r.limit, r.subject, r.from, r.to, r.excess_ratio
                );
            }
        }
        println!(
            "(\"{name}\", {:?}), {:?}",
            answer.verdict,
            answer
                .verdict_reasons
                .iter()
                .map(|r| format!(
                    "{} {} {}",
                    r.code,
                    r.subject.as_ref().map_or("", |s| &s.label),
                    r.detail
                ))
                .collect::<Vec<_>>()
        );
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
