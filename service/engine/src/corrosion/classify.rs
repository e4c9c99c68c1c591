//! How aggressive the ground is: what each source says of the tests, and the class in force.

use super::codes::{methods, warnings};
use super::outcome::{
    CorrosionFigure, CorrosionSoilOutcome, CorrosionSourceOutcome, CorrosionSourceSays,
    CorrosionTrigger,
};
use super::soil_request::{CorrosionClass, CorrosionSoil, CorrosionTests};
use super::thresholds::{AASHTO, AC358, GEC11, GEC12, MICROPILE, Thresholds};
use crate::contract::Work;
use crate::quantity::{Shown, round9};
use crate::source::Sourced;

/// The class of a soil that has no faults.
pub fn classify(soil: &CorrosionSoil, work: &mut Work) -> CorrosionSoilOutcome {
    match soil {
        CorrosionSoil::Stated(stated) => CorrosionSoilOutcome {
            class: stated.class,
            stated: true,
            missing: Vec::new(),
            sources: Vec::new(),
            sources_agree: None,
        },
        CorrosionSoil::Tests(tests) => of_tests(tests, work),
    }
}

fn of_tests(tests: &CorrosionTests, work: &mut Work) -> CorrosionSoilOutcome {
    work.method(&methods::CORROSION_SOIL_CLASS);
    let all = [&AC358, &AASHTO, &GEC12, &MICROPILE, &GEC11];
    let sources: Vec<_> = all.iter().map(|source| says(tests, source, work)).collect();
    let missing = missing(tests);
    let [ac358, aashto, .., limits] = [0, 1, 2, 3, 4].map(|i: usize| sources[i].says);
    let class = if [ac358, aashto].contains(&CorrosionSourceSays::Aggressive) {
        CorrosionClass::Aggressive
    } else if limits == CorrosionSourceSays::NotAggressive && missing.is_empty() {
        CorrosionClass::Mild
    } else {
        CorrosionClass::TestMore
    };
    let judged = sources
        .iter()
        .filter(|s| s.says != CorrosionSourceSays::NotJudged);
    let mut words: Vec<_> = judged.map(|s| s.says).collect();
    words.dedup();
    let agree = words.len() <= 1;
    if !agree {
        let each = sources
            .iter()
            .map(|s| format!("{}: {}", s.source.id, name(s.says)));
        let told: Vec<_> = each.collect();
        work.warn(&warnings::CORROSION_SOURCES_DISAGREE, told.join("; "));
    }
    if !missing.is_empty() && class != CorrosionClass::Aggressive {
        let names: Vec<_> = missing.iter().map(|f| figure_name(*f)).collect();
        work.warn(
            &warnings::CORROSION_FIGURES_MISSING,
            format!("not sent: {}", names.join(", ")),
        );
    }
    CorrosionSoilOutcome {
        class,
        stated: false,
        missing,
        sources,
        sources_agree: Some(agree),
    }
}

/// The five figures that a mild class needs and that were not sent.
fn missing(tests: &CorrosionTests) -> Vec<CorrosionFigure> {
    let each = [
        (CorrosionFigure::Resistivity, tests.resistivity.is_none()),
        (CorrosionFigure::Ph, tests.ph.is_none()),
        (CorrosionFigure::Sulfates, tests.sulfates.is_none()),
        (CorrosionFigure::Chlorides, tests.chlorides.is_none()),
        (CorrosionFigure::Organics, tests.organics.is_none()),
    ];
    let gone = each.into_iter().filter(|(_, gone)| *gone);
    gone.map(|(figure, _)| figure).collect()
}

/// Collects what a source takes exception to, and whether it could judge anything.
struct Judge {
    triggers: Vec<CorrosionTrigger>,
    judged: bool,
}

impl Judge {
    fn below(&mut self, figure: CorrosionFigure, value: Shown, limit: Shown) {
        self.judged = true;
        if round9(value.value() / limit.value()) < 1.0 {
            self.triggers.push(CorrosionTrigger {
                figure,
                value: Some(value),
                below: Some(limit),
                above: None,
            });
        }
    }

    fn above(&mut self, figure: CorrosionFigure, value: Shown, limit: Shown) {
        self.judged = true;
        if round9(value.value() / limit.value()) > 1.0 {
            self.triggers.push(CorrosionTrigger {
                figure,
                value: Some(value),
                below: None,
                above: Some(limit),
            });
        }
    }

    fn stated(&mut self, figure: CorrosionFigure, value: Option<Shown>) {
        self.judged = true;
        self.triggers.push(CorrosionTrigger {
            figure,
            value,
            below: None,
            above: None,
        });
    }
}

/// What one source says.
fn says(
    tests: &CorrosionTests,
    source: &'static Sourced<Thresholds>,
    work: &mut Work,
) -> CorrosionSourceOutcome {
    let limits = work.take_table(source);
    let mut judge = Judge {
        triggers: Vec::new(),
        judged: false,
    };
    if let Some(r) = tests.resistivity {
        judge.below(
            CorrosionFigure::Resistivity,
            r.into(),
            limits.resistivity.into(),
        );
    }
    if let Some(ph) = tests.ph {
        acidity(ph, tests, &limits, &mut judge);
    }
    if let Some(sulfates) = tests.sulfates {
        let limit = limits.sulfates;
        judge.above(CorrosionFigure::Sulfates, sulfates.into(), limit.into());
    }
    if let (Some(chlorides), Some(limit)) = (tests.chlorides, limits.chlorides) {
        judge.above(CorrosionFigure::Chlorides, chlorides.into(), limit.into());
    }
    if let (Some(organics), Some(limit)) = (tests.organics, limits.organics) {
        judge.above(CorrosionFigure::Organics, organics.into(), limit.into());
    }
    for (counts, sent, figure) in [
        (
            limits.organic_soil,
            tests.organic_soil,
            CorrosionFigure::OrganicSoil,
        ),
        (
            limits.waste,
            tests.landfill_or_mine_waste,
            CorrosionFigure::LandfillOrMineWaste,
        ),
        (
            limits.drainage,
            tests.mine_or_industrial_drainage,
            CorrosionFigure::MineOrIndustrialDrainage,
        ),
    ] {
        if counts && sent == Some(true) {
            judge.stated(figure, None);
        }
    }
    CorrosionSourceOutcome {
        source: source.reference.into(),
        says: verdict(tests, &limits, &judge),
        triggers: judge.triggers,
    }
}

fn acidity(ph: f64, tests: &CorrosionTests, limits: &Thresholds, judge: &mut Judge) {
    judge.below(CorrosionFigure::Ph, ph.into(), limits.ph_below.into());
    if let Some(limit) = limits.ph_above {
        judge.above(CorrosionFigure::Ph, ph.into(), limit.into());
    }
    if let Some([from, to]) = limits.ph_if_organic
        && tests.organic_soil == Some(true)
        && (from..=to).contains(&ph)
    {
        judge.stated(CorrosionFigure::OrganicSoil, Some(ph.into()));
    }
}

fn verdict(tests: &CorrosionTests, limits: &Thresholds, judge: &Judge) -> CorrosionSourceSays {
    let to_test = |below| {
        let in_doubt = tests.resistivity.is_some_and(|r| round9(r / below) < 1.0);
        in_doubt && (tests.sulfates.is_none() || tests.chlorides.is_none())
    };
    if !judge.judged {
        CorrosionSourceSays::NotJudged
    } else if judge.triggers.is_empty() {
        match limits.test_below {
            Some(below) if to_test(below) => CorrosionSourceSays::TestMore,
            _ => CorrosionSourceSays::NotAggressive,
        }
    } else if limits.of_use {
        CorrosionSourceSays::OutsideLimits
    } else {
        CorrosionSourceSays::Aggressive
    }
}

fn name(says: CorrosionSourceSays) -> &'static str {
    match says {
        CorrosionSourceSays::Aggressive => "aggressive",
        CorrosionSourceSays::OutsideLimits => "outside its limits",
        CorrosionSourceSays::TestMore => "test more",
        CorrosionSourceSays::NotAggressive => "not aggressive",
        CorrosionSourceSays::NotJudged => "not judged",
    }
}

fn figure_name(figure: CorrosionFigure) -> &'static str {
    match figure {
        CorrosionFigure::Resistivity => "resistivity",
        CorrosionFigure::Ph => "pH",
        CorrosionFigure::Sulfates => "sulfates",
        CorrosionFigure::Chlorides => "chlorides",
        CorrosionFigure::Organics => "organics",
        CorrosionFigure::OrganicSoil => "organic soil",
        CorrosionFigure::LandfillOrMineWaste => "landfill or mine waste",
        CorrosionFigure::MineOrIndustrialDrainage => "mine or industrial drainage",
    }
}
