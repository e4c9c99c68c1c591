//! Events of the invented house: a pile moved along and off its line.

use super::*;
use crate::examples::request as example;
use crate::quantity::{ForceUnit, LengthUnit, MomentUnit};

#[test]
fn a_pile_nine_inches_along_and_three_off() {
    let answer = answer(&request(&example::<PileRelocation>("linnet")));
    let pile = |label: &str| {
        let mut all = answer.result.piles.iter();
        all.find(|p| p.label == label).expect("a pile").clone()
    };
    let lbf = |f: crate::quantity::Force| f.get(ForceUnit::Lbf);
    // tributary lengths: 1,574.75 plf over half spans of 7.2 and 7.95 ft, and of 7.95 and 6.45 ft
    let far = pile("A2").tributary.expect("a tributary load");
    assert!((lbf(far.before.unwrap()) - 11_338.2).abs() < 0.05);
    assert!((lbf(far.after.unwrap()) - 11_928.73).abs() < 0.05);
    assert!((far.change_ratio.unwrap() - 0.0521).abs() < 1e-4);
    // continuous: 12,830 before, 13,635 after
    let far = pile("A2").rigid;
    assert!((lbf(far.before.unwrap()) - 12_830.07).abs() < 0.05);
    assert!((lbf(far.after.unwrap()) - 13_634.99).abs() < 0.05);
    let near = pile("A4").tributary.expect("a tributary load");
    assert!((lbf(near.after.unwrap()) - 10_747.67).abs() < 0.05);
    let moved = &answer.result.moved[0];
    let spans: Vec<f64> = moved
        .spans_after
        .iter()
        .map(|s| s.distance.get(LengthUnit::Ft))
        .collect();
    assert!((spans[0] - 7.95).abs() < 1e-9 && (spans[1] - 6.45).abs() < 1e-9);
    let moment = moved.eccentricity.as_ref().expect("a moment");
    let told = moment.by_tributary.expect("one").get(MomentUnit::FtLbf);
    assert!((told - 2_834.55).abs() < 0.05, "{told}");
    assert_eq!(answer.verdict, Verdict::Reject);
    println!("{}", serde_json::to_string_pretty(&answer.checks).unwrap());
}
