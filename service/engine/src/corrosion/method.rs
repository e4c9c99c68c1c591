//! Which method finds the loss, whether it holds for the ground, and the loss by it.

use super::coating::OnSteel;
use super::codes::{methods, refusals, warnings};
use super::constants::{
    COMPACTED, FLAT, LAW_BARE, LAW_POWDER, LAW_ZINC, STEEL, TABLE_YEARS, ZINC_FIRST,
    ZINC_FIRST_YEARS, ZINC_LATER, row_of,
};
use super::equations::{compacted_loss, power_loss, steady_loss, table_loss, zinc_life};
use super::outcome::{LossBy, LossMethod};
use super::request::{
    CorrosionGround, CorrosionMethod, EurocodeTable, FhwaRates, LossCounts, Request,
};
use super::section_request::SteelCoating;
use super::soil_request::CorrosionClass;
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Issue, Refusal, Work};
use crate::quantity::{Coat, DurationUnit, Lifetime, round9};
use crate::source::{
    AC358_CORROSION, CALLER, EN_1993_5_NA, FHWA_CORROSION, FLAT_LOSS, GEC11_USE_LIMITS, Reference,
};

/// The method of a request in a soil of a class; none in aggressive soil without the engineer's
/// rate.
pub(super) fn choose(
    request: &Request,
    class: CorrosionClass,
) -> Result<Option<CorrosionMethod>, Refusal> {
    let chosen = match &request.method {
        Some(CorrosionMethod::Given(given)) => {
            return Ok(Some(CorrosionMethod::Given(given.clone())));
        }
        Some(method) => {
            holds(method, class)?;
            method.clone()
        }
        None if class == CorrosionClass::Aggressive => return Ok(None),
        None => by_default(request, class)?,
    };
    if let CorrosionMethod::Eurocode(_) = chosen {
        table_holds(request)?;
    }
    Ok(Some(chosen))
}

/// Whether a method other than the engineer's own holds for a class.
fn holds(method: &CorrosionMethod, class: CorrosionClass) -> Result<(), Refusal> {
    let outside = |detail: &str, source: &'static Reference| {
        Issue::new(
            "/method",
            &refusals::CORROSION_METHOD_OUTSIDE_LIMITS,
            detail,
        )
        .source(source)
    };
    match (method, class) {
        (_, CorrosionClass::Aggressive) => Err(outside(
            "the soil is aggressive: send the rate of your engineer as `given`",
            &AC358_CORROSION,
        )
        .into()),
        (CorrosionMethod::Fhwa(_), CorrosionClass::TestMore) => Err(outside(
            "the soil is not shown to be inside the electrochemical limits of these rates",
            &GEC11_USE_LIMITS,
        )
        .limit(GEC11_USE_LIMITS.note)
        .into()),
        _ => Ok(()),
    }
}

fn by_default(request: &Request, class: CorrosionClass) -> Result<CorrosionMethod, Refusal> {
    let zinc = request.sections.iter().all(|section| {
        matches!(
            section.coating,
            Some(SteelCoating::Zinc(_) | SteelCoating::ZincAstmA123(_))
        )
    });
    match &request.ground {
        Some(ground) if ground.kind.is_fill() => Ok(CorrosionMethod::Eurocode(EurocodeTable {})),
        _ if zinc && class == CorrosionClass::Mild => Ok(CorrosionMethod::Fhwa(FhwaRates {})),
        Some(_) => Ok(CorrosionMethod::Eurocode(EurocodeTable {})),
        None => Err(Issue::new(
            "",
            &refusals::CORROSION_METHOD_NOT_NAMED,
            "`fhwa` is the default for zinc-coated sections in mild soil, `eurocode` where `ground` is sent",
        )
        .into()),
    }
}

/// Whether the table by kind of ground can be read.
fn table_holds(request: &Request) -> Result<(), Refusal> {
    if request.ground.is_none() {
        let detail = "the method `eurocode` needs the kind of ground: send `ground`";
        return Err(Issue::new("", &MISSING_MEMBER, detail).into());
    }
    let years = round9(request.life.get(DurationUnit::Year));
    if (TABLE_YEARS[0]..=TABLE_YEARS[5]).contains(&years) {
        return Ok(());
    }
    let detail = format!("a life of {years} years");
    Err(
        Issue::new("/life", &refusals::CORROSION_LIFE_OUTSIDE_TABLE, detail)
            .limit("5 to 125 years")
            .source(&EN_1993_5_NA)
            .into(),
    )
}

/// What a method is in an answer.
pub(super) fn told(method: &CorrosionMethod) -> LossBy {
    let of = |method, counts, source: &'static Reference| LossBy {
        method,
        counts,
        source: source.into(),
    };
    match method {
        CorrosionMethod::Fhwa(_) => of(LossMethod::Fhwa, LossCounts::EachFace, &FHWA_CORROSION),
        CorrosionMethod::Eurocode(_) => {
            of(LossMethod::Eurocode, LossCounts::EachFace, &EN_1993_5_NA)
        }
        CorrosionMethod::FlatRate(_) => of(
            LossMethod::FlatRate,
            LossCounts::BothFacesTogether,
            &FLAT_LOSS,
        ),
        CorrosionMethod::AcceptanceCriteria(_) => of(
            LossMethod::AcceptanceCriteria,
            LossCounts::BothFacesTogether,
            &AC358_CORROSION,
        ),
        CorrosionMethod::Given(given) => of(LossMethod::Given, given.counts, &CALLER),
    }
}

/// Notes the method, and warns once of what holds for all sections.
pub(super) fn note(method: &CorrosionMethod, life: Lifetime, work: &mut Work) {
    work.method(match method {
        CorrosionMethod::Fhwa(_) => &methods::CORROSION_FHWA,
        CorrosionMethod::Eurocode(_) => &methods::CORROSION_EUROCODE,
        CorrosionMethod::FlatRate(_) => &methods::CORROSION_FLAT_RATE,
        CorrosionMethod::AcceptanceCriteria(_) => &methods::CORROSION_ACCEPTANCE_CRITERIA,
        CorrosionMethod::Given(_) => &methods::CORROSION_GIVEN_RATE,
    });
    let years = round9(life.get(DurationUnit::Year));
    match method {
        CorrosionMethod::AcceptanceCriteria(_) => work.warn(
            &warnings::CORROSION_NET_OF_MEMBER,
            "net for the member as recalled, half on each side; not seen, confirm it",
        ),
        CorrosionMethod::Eurocode(_) if years > TABLE_YEARS[1] => work.warn(
            &warnings::CORROSION_LONG_LIFE_EXTRAPOLATED,
            format!("{years} years; measured are 5 and 25, as remembered of the standard"),
        ),
        _ => {}
    }
}

/// Steel lost, as the method counts it, with the life of the zinc where it has one.
pub(super) fn loss(
    method: &CorrosionMethod,
    ground: Option<&CorrosionGround>,
    life: Lifetime,
    on: OnSteel,
    work: &mut Work,
) -> (Coat, Option<Lifetime>) {
    match method {
        CorrosionMethod::Fhwa(_) => {
            let zinc = match on {
                OnSteel::Zinc(zinc) => {
                    let (first, time) = (work.take(&ZINC_FIRST), work.take(&ZINC_FIRST_YEARS));
                    let later = work.take(&ZINC_LATER);
                    Some(zinc_life(zinc, first, time, later, &mut work.trace))
                }
                OnSteel::Bare | OnSteel::Powder => None,
            };
            let rate = work.take(&STEEL);
            let delay = zinc.unwrap_or(Lifetime::ZERO);
            let lost = steady_loss(rate, life, delay, &FHWA_CORROSION, &mut work.trace);
            (lost, zinc)
        }
        CorrosionMethod::Eurocode(_) => (by_table(ground, life, work), None),
        CorrosionMethod::FlatRate(_) => {
            let rate = work.take(&FLAT);
            let trace = &mut work.trace;
            let lost = steady_loss(rate, life, Lifetime::ZERO, &FLAT_LOSS, trace);
            (lost, None)
        }
        CorrosionMethod::AcceptanceCriteria(_) => {
            let law = work.take_table(match on {
                OnSteel::Zinc(_) => &LAW_ZINC,
                OnSteel::Bare => &LAW_BARE,
                OnSteel::Powder => &LAW_POWDER,
            });
            (power_loss(&law, life, &mut work.trace), None)
        }
        CorrosionMethod::Given(given) => {
            let delay = given.starts_after.unwrap_or(Lifetime::ZERO);
            let trace = &mut work.trace;
            let lost = steady_loss(given.loss_rate, life, delay, &CALLER, trace);
            (lost, None)
        }
    }
}

fn by_table(ground: Option<&CorrosionGround>, life: Lifetime, work: &mut Work) -> Coat {
    let Some(ground) = ground else {
        return Coat::ZERO;
    };
    let row = work.take_table(row_of(ground.kind));
    let lost = table_loss(&row, life, &mut work.trace);
    if ground.compacted == Some(true) {
        let factor = work.take(&COMPACTED);
        compacted_loss(factor, lost, &mut work.trace)
    } else {
        lost
    }
}
