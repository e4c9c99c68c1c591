//! `bearwell demo`: two invented houses told from soil to plan and to the first piles, by the same calculations
//! that the service answers with. Every number printed comes out of an answer.

use std::io::{self, Write};

use bearwell_engine::catalogue::cautions::DEMO_DATA;
use bearwell_engine::contract::{
    Answer, Calculation, Call, Caution, Verdict, Work, run as calculate,
};
use bearwell_engine::frost::FrostEmbedment;
use bearwell_engine::helix::HelixCapacity;
use bearwell_engine::layout::PileLayout;
use bearwell_engine::quantity::{Force, System};
use bearwell_engine::record::InstallationRecord;
use bearwell_engine::torque::TorqueCapacity;
use bearwell_engine::trace::Trace;

mod chapters;
mod rig;
mod text;

/// The example requests of one house.
struct House {
    title: &'static str,
    setting: &'static str,
    system: System,
    helix: &'static [&'static str],
    torque: &'static str,
    frost: &'static str,
    layout: &'static str,
    search: &'static str,
    logs: &'static [&'static str],
}

macro_rules! example {
    ($path:literal) => {
        include_str!(concat!("../../../openapi/examples/", $path, ".json"))
    };
}

const HOUSES: [House; 2] = [
    House {
        title: "Linnet, lot 31, Alder Bend",
        setting: "A single storey with a mudroom on a filled lot: brick and concrete debris over \
                  clay. US units, allowable stress, frost by the county.",
        system: System::UsCustomary,
        helix: &[example!("helix-capacity/linnet")],
        torque: example!("torque-capacity/linnet"),
        frost: example!("frost-embedment/linnet"),
        layout: example!("pile-layout/linnet"),
        search: example!("pile-layout/linnet-search"),
        logs: &[
            example!("installation-record/linnet"),
            example!("installation-record/linnet-stopped-on-debris"),
        ],
    },
    House {
        title: "Sizerin, lot 8, Baie-aux-Tamaracs",
        setting: "A raised cabin on wood beams above open, cold ground: organic silt over stiff \
                  clay. Metric units, limit states, deep frost.",
        system: System::Si,
        helix: &[
            example!("helix-capacity/sizerin"),
            example!("helix-capacity/sizerin-larger-helices"),
        ],
        torque: example!("torque-capacity/sizerin"),
        frost: example!("frost-embedment/sizerin"),
        layout: example!("pile-layout/sizerin"),
        search: example!("pile-layout/sizerin-search"),
        logs: &[
            example!("installation-record/sizerin"),
            example!("installation-record/sizerin-rock-at-2-m"),
        ],
    },
];

/// Tells both houses.
pub fn run(out: &mut impl Write) -> io::Result<()> {
    text::paragraph(out, "", DEMO_DATA.text)?;
    for house in &HOUSES {
        tell(out, house)?;
    }
    Ok(())
}

/// A calculation with its request.
struct Told<C: Calculation> {
    request: C::Request,
    answer: Answer<C::Outcome>,
}

/// Runs one example.
fn told<C: Calculation>(example: &str) -> io::Result<Told<C>> {
    let call: Call<C::Request> = serde_json::from_str(example)?;
    ask::<C>(call.request)
}

fn ask<C: Calculation>(request: C::Request) -> io::Result<Told<C>> {
    let call = Call::from(request);
    let answer = calculate::<C>(&call, Work::new(Trace::off(), None)).map_err(|refusal| {
        let details: Vec<_> = refusal.issues.iter().map(|i| i.detail.as_str()).collect();
        io::Error::other(format!("{}: {}", C::NAME, details.join("; ")))
    })?;
    Ok(Told {
        request: call.request,
        answer,
    })
}

/// One house from soil to plan.
fn tell(out: &mut impl Write, house: &House) -> io::Result<()> {
    let helix: Vec<_> = (house.helix.iter())
        .map(|example| told::<HelixCapacity>(example))
        .collect::<io::Result<_>>()?;
    let torque = told::<TorqueCapacity>(house.torque)?;
    let frost = told::<FrostEmbedment>(house.frost)?;
    let layout = told::<PileLayout>(house.layout)?;
    let search = told::<PileLayout>(house.search)?;
    let logs: Vec<_> = (house.logs.iter())
        .map(|example| told::<InstallationRecord>(example))
        .collect::<io::Result<_>>()?;
    let drawn = most_loaded(&torque, &layout, &frost)?;
    let searched = most_loaded(&torque, &search, &frost)?;

    text::heading(out, house.title)?;
    text::paragraph(out, "", house.setting)?;
    let s = house.system;
    chapters::ground(out, s, &helix)?;
    chapters::gauge(out, s, &torque)?;
    chapters::winter(out, s, &frost)?;
    chapters::plan(out, s, &layout, &search)?;
    chapters::worst_piles(out, s, &drawn, &searched)?;
    rig::rig(out, s, &logs)?;

    let mut outcomes: Vec<_> = (helix.iter().zip(HELICES))
        .map(|(told, name)| chapters::outcome(name, &told.answer))
        .collect();
    outcomes.extend([
        chapters::outcome("the torque target", &torque.answer),
        chapters::outcome("embedment and frost", &frost.answer),
        chapters::outcome("the piles as drawn", &layout.answer),
        chapters::outcome("the piles as searched", &search.answer),
    ]);
    // the plan that may be built asks for the torque
    let plan = if layout.answer.verdict == Verdict::Accept {
        &drawn
    } else {
        &searched
    };
    outcomes.push(chapters::outcome(
        "their torque, frost counted",
        &plan.answer,
    ));
    chapters::next(out, s, &outcomes, larger(&torque, plan), &frost)?;
    let mut cautions: Vec<&Caution> = Vec::new();
    for caution in (helix.iter().flat_map(|told| &told.answer.cautions))
        .chain(&torque.answer.cautions)
        .chain(&frost.answer.cautions)
        .chain(&layout.answer.cautions)
        .chain(logs.iter().flat_map(|told| &told.answer.cautions))
    {
        if cautions.iter().all(|c| c.code != caution.code) {
            cautions.push(caution);
        }
    }
    text::section(out, "Cautions")?;
    for caution in cautions {
        text::item(out, &caution.text)?;
    }
    text::item(out, DEMO_DATA.text)
}

/// How the sets of helices of one house are called at the end.
const HELICES: [&str; 2] = ["the helices asked for first", "the helices asked for last"];

/// The torque question once more, with the largest reaction of a plan and the largest net
/// tension of frost for its loads.
fn most_loaded(
    torque: &Told<TorqueCapacity>,
    layout: &Told<PileLayout>,
    frost: &Told<FrostEmbedment>,
) -> io::Result<Told<TorqueCapacity>> {
    let mut request = torque.request.clone();
    let piles = &layout.answer.result.piles;
    let down = piles.iter().map(|p| p.compression.demand);
    let up = piles.iter().map(|p| p.tension.demand);
    let stages = frost.answer.result.uplift.iter().flat_map(|u| &u.stages);
    let frozen = stages.filter_map(|stage| stage.design.net_frost_tension);
    if let Some(demand) = &mut request.demand {
        demand.compression = Some(down.fold(Force::ZERO, Force::max));
        let tension = up.chain(frozen).fold(Force::ZERO, Force::max);
        demand.tension = (tension > Force::ZERO).then_some(tension);
    }
    ask::<TorqueCapacity>(request)
}

/// The one that needs the larger torque.
fn larger<'a>(
    a: &'a Told<TorqueCapacity>,
    b: &'a Told<TorqueCapacity>,
) -> &'a Told<TorqueCapacity> {
    let torque = |told: &Told<TorqueCapacity>| {
        let required = told.answer.result.required.as_ref();
        required.map_or(0.0, |r| r.torque.si())
    };
    if torque(b) > torque(a) { b } else { a }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told_text() -> String {
        let mut out = Vec::new();
        run(&mut out).expect("the examples answer");
        String::from_utf8(out).expect("text")
    }

    #[test]
    fn both_houses_are_told_and_the_data_are_called_invented() {
        let text = told_text();
        for house in &HOUSES {
            assert!(text.contains(house.title));
        }
        assert!(text.matches(DEMO_DATA.text).count() > HOUSES.len());
        assert!(text.lines().all(|line| line.chars().count() <= 78));
        // every chapter of both houses ends with a verdict: two or three sets and plans,
        // two logs
        assert!(text.matches("Verdict: ").count() >= 2 * 7);
    }

    #[test]
    fn the_numbers_are_those_of_the_answers() {
        let text = told_text();
        let torque = told::<TorqueCapacity>(HOUSES[0].torque).expect("an answer");
        let required = torque.answer.result.required.expect("a requirement");
        assert!(text.contains(&text::show(required.torque, System::UsCustomary)));
        let plan = told::<PileLayout>(HOUSES[1].layout).expect("an answer");
        for pile in &plan.answer.result.piles {
            let reaction = text::bare(pile.compression.demand, System::Si);
            let row = format!("{:<8}{reaction:>10}", pile.label);
            assert!(text.contains(&row), "{row}");
        }
    }

    #[test]
    fn it_reads_the_same_every_time() {
        assert_eq!(told_text(), told_text());
    }
}
