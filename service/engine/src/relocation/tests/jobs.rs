//! Jobs from a fixed seed: what is handed back is what `pile-layout` and the next call say.

use super::plans::job;
use super::*;
use crate::layout::{self, PileLayout};
use crate::quantity::{In, Presentation, System};
use crate::random::Random;

fn fresh(layout: &layout::Request) -> String {
    let call = Call::from(layout.clone());
    let answer = run::<PileLayout>(&call, Work::new(Trace::off(), None));
    let answer = answer.unwrap_or_else(|r| panic!("{:?}", r.issues));
    serde_json::to_string(&answer.result).expect("it prints")
}

/// A part of an answer as a client reads it.
fn read_back<T: serde::Serialize + serde::de::DeserializeOwned>(part: &T) -> T {
    let form = In(Presentation::Printed(System::UsCustomary), part);
    let text = form.text().expect("it prints");
    serde_json::from_str(&text).expect("it reads")
}

#[test]
fn every_option_of_two_hundred_jobs_is_what_a_fresh_call_says() {
    let mut random = Random(7);
    let (mut options, mut feasible, mut fallen, mut nothing) = (0, 0, 0, 0);
    let mut kinds = std::collections::BTreeSet::new();
    for number in 0..200 {
        let sent = job(&mut random);
        let answered = ask(&sent).unwrap_or_else(|r| panic!("job {number}: {:?}", r.issues));
        let out = &answered.result;
        let now = read_back(&out.layout);
        match &out.result {
            Some(result) => {
                assert!(
                    fresh(&now) == serde_json::to_string(result).unwrap(),
                    "{number}"
                );
            }
            None => fallen += 1,
        }
        let ways = out.ways_out.as_ref().expect("ways out");
        assert!(ways.complete);
        nothing += usize::from(ways.feasible_count == 0);
        assert_eq!(ways.feasible_count == 0, ways.relax.is_some());
        let relaxed = ways.relax.iter().flatten().map(|r| &r.option);
        for option in ways.options.iter().chain(relaxed) {
            let place = format!("job {number}, {:?}", option.kind);
            let layout = read_back(option.layout.as_ref().expect("full"));
            let result = option.result.as_ref().expect("full");
            assert!(
                fresh(&layout) == serde_json::to_string(result).unwrap(),
                "{place}"
            );
            options += 1;
            if option.feasible {
                feasible += 1;
                kinds.insert(option.kind);
                assert!(option.failed.is_empty() && option.verdict != Verdict::Reject);
            } else {
                assert!(!option.failed.is_empty() && option.verdict == Verdict::Reject);
            }
            let events = read_back(&option.events).0;
            if events.is_empty() {
                continue;
            }
            // sent with the plan as it stands, the events bring about the same plan
            let next = Request {
                layout: now.0.clone(),
                events,
                ways_out: None,
                ..sent.clone()
            };
            let again = match ask(&next) {
                Ok(again) => again,
                // a plan that does not stand is none to begin with
                Err(_) if out.result.is_none() => continue,
                Err(refusal) => panic!("{place}: {:?}", refusal.issues),
            };
            assert_eq!(again.result.layout.0, layout.0, "{place}");
            let same = again.verdict == option.verdict;
            assert!(same, "{place}: {:?}", again.verdict_reasons);
        }
    }
    assert!(options > 600 && feasible > 200, "{options} {feasible}");
    assert!(fallen > 3 && nothing > 3, "{fallen} {nothing}");
    assert_eq!(kinds.len(), 7, "{kinds:?}");
}
