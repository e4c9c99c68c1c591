//! Where a pile may go: every quarter of an inch between the next piles, analysed afresh.

use super::*;
use crate::quantity::{Length, LengthUnit};

/// Whether nothing fails with the pile moved from where it was drawn.
fn does(sent: &Request, pile: &str, beam: &str, by: Length, obstructed: bool) -> bool {
    if obstructed {
        return false;
    }
    let mut one = sent.clone();
    one.ways_out = None;
    one.events = events(&format!(
        r#"[{{"moved":{{"pile":"{pile}","beam":"{beam}","along":{}}}}}]"#,
        serde_json::to_string(&by).unwrap()
    ));
    let answered = answer(&one);
    answered
        .checks
        .iter()
        .all(|c| c.status != CheckStatus::Fail)
}

#[test]
fn the_intervals_are_those_of_every_quarter_inch() {
    // six piles at 8 ft; the third may stand where nothing fails and no rock is: the rock lies 1 ft
    // beyond it with half a foot around
    let mut sent = shown("stronger-beam");
    sent.events = events(r#"[{"moved":{"pile":"P3","along":{"value":2,"unit":"ft"}}}]"#);
    sent.ways_out = serde_json::from_str(
        r#"{"obstruction":{"label":"rock","shape":{"circle":{"centre":{"x":{"value":17,"unit":"ft"},
            "y":{"value":0,"unit":"ft"}},"radius":{"value":0.25,"unit":"ft"}}},"clearance":{"value":0.25,"unit":"ft"}}}"#,
    )
    .unwrap();
    let answered = answer(&sent);
    let ways = answered.result.ways_out.expect("ways out");
    assert!(ways.complete);
    let step = Length::new(0.25, LengthUnit::In);
    let mut changes = 0;
    let mut last = None;
    // strictly between P2 and P4, 8 ft away either way: 384 steps
    for k in -383_i32..=383 {
        let by = f64::from(k) * step;
        let at = 16.0 + by.get(LengthUnit::Ft);
        let obstructed = (at - 17.0).abs() < 0.5 - 1e-9;
        let should = does(&sent, "P3", "S", by, obstructed);
        let told = ways.may_stand.iter().any(|s| {
            let (from, to) = (s.from.get(LengthUnit::Ft), s.to.get(LengthUnit::Ft));
            from - 1e-6 <= at && at <= to + 1e-6
        });
        assert_eq!(told, should, "{at} ft");
        changes += usize::from(last.is_some_and(|l| l != should));
        last = Some(should);
    }
    // there are places that do and places that do not, and the rock cuts them
    assert!(changes >= 4, "{changes}");
    for stretch in &ways.may_stand {
        for used in [stretch.from_utilisation_ratio, stretch.to_utilisation_ratio] {
            assert!(used.expect("it is judged") <= 1.0 + 1e-9);
        }
    }
}
