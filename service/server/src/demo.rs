//! `bearwell demo`: two invented houses told from soil to plan, by the same calculations
//! that the service answers with. Every number printed comes out of an answer.

use std::io::{self, Write};

use bearwell_engine::catalogue::cautions::DEMO_DATA;
use bearwell_engine::contract::{Answer, Calculation, Call, Caution, Work, run as calculate};
use bearwell_engine::frost::FrostEmbedment;
use bearwell_engine::helix::HelixCapacity;
use bearwell_engine::layout::PileLayout;
use bearwell_engine::quantity::{Force, System};
use bearwell_engine::torque::TorqueCapacity;
use bearwell_engine::trace::Trace;

mod chapters;
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
    let worst = worst_load(&torque, &layout)?;

    text::heading(out, house.title)?;
    text::paragraph(out, "", house.setting)?;
    let s = house.system;
    chapters::ground(out, s, &helix)?;
    chapters::gauge(out, s, &torque)?;
    chapters::winter(out, s, &frost)?;
    chapters::plan(out, s, &layout, &search)?;
    chapters::worst_pile(out, s, &worst)?;

    let mut verdicts: Vec<_> = (helix.iter())
        .map(|told| chapters::verdict("helix-capacity", &told.answer))
        .collect();
    verdicts.extend([
        chapters::verdict("torque-capacity", &torque.answer),
        chapters::verdict("frost-embedment", &frost.answer),
        chapters::verdict("pile-layout, piles as given", &layout.answer),
        chapters::verdict("pile-layout, piles searched", &search.answer),
        chapters::verdict("torque-capacity, most loaded pile", &worst.answer),
    ]);
    chapters::next(out, &verdicts)?;
    let mut cautions: Vec<&Caution> = Vec::new();
    for caution in (helix.iter().flat_map(|told| &told.answer.cautions))
        .chain(&torque.answer.cautions)
        .chain(&frost.answer.cautions)
        .chain(&layout.answer.cautions)
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

/// The torque question once more, with the largest reactions of the plan for its load.
fn worst_load(
    torque: &Told<TorqueCapacity>,
    layout: &Told<PileLayout>,
) -> io::Result<Told<TorqueCapacity>> {
    let mut request = torque.request.clone();
    let piles = &layout.answer.result.piles;
    let largest = |of: fn(&bearwell_engine::layout::LayoutPile) -> Force| {
        piles.iter().map(of).fold(Force::ZERO, Force::max)
    };
    if let Some(demand) = &mut request.demand {
        demand.compression = Some(largest(|p| p.compression.demand));
    }
    ask::<TorqueCapacity>(request)
}
