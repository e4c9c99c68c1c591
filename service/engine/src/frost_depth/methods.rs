//! The frost depth by each method, with what keeps one from holding.

use super::berggren::{
    ALPHA_MAX, DEEPEST, MU_MAX, NoFront, berggren_depth, correction_factor, fusion_ratio,
    layered_depth, stefan, sums,
};
use super::codes::{methods, refusals};
use super::conduction;
use super::ground::Slab;
use super::outcome::{BerggrenTerms, FrostDepthByMethod};
use super::request::FrostDepthMethod;
use super::winter::Winter;
use crate::contract::{Issue, Refusal, Work, utilisation};
use crate::quantity::{HeatCapacity, LatentHeat, Length, ThermalConductivity};
use crate::source::{BERGGREN_LAMBDA_CHART, FROST_HEAT_CONDUCTION, LAYERED_BERGGREN};

/// A depth with its terms, or every reason why the method does not hold.
pub type Found = Result<(Length, Option<BerggrenTerms>), Vec<Issue>>;

/// The method in force.
pub fn chosen(asked: Option<FrostDepthMethod>, slabs: &[Slab]) -> FrostDepthMethod {
    asked.unwrap_or(if slabs.len() > 1 {
        FrostDepthMethod::HeatConduction
    } else {
        FrostDepthMethod::ModifiedBerggren
    })
}

/// The depth by one method. `at` points to the request that is computed.
pub fn depth(
    method: FrostDepthMethod,
    slabs: &[Slab],
    winter: &Winter,
    at: &str,
    work: &mut Work,
) -> Result<Found, Refusal> {
    Ok(match method {
        FrostDepthMethod::ModifiedBerggren => berggren(slabs, winter, at, work),
        FrostDepthMethod::HeatConduction => by_conduction(slabs, winter, at, work)?,
        FrostDepthMethod::Stefan => match stefan(slabs, winter.surface_index, &mut work.trace) {
            Some(depth) => Ok((depth, None)),
            None => Err(vec![too_deep(at)]),
        },
    })
}

/// One line of the methods side by side.
pub fn line(method: FrostDepthMethod, found: &Found) -> FrostDepthByMethod {
    let (depth, berggren, reason) = match found {
        Ok((depth, terms)) => (Some(*depth), *terms, None),
        Err(issues) => {
            let each: Vec<_> = issues.iter().map(|issue| issue.detail.as_str()).collect();
            (None, None, Some(each.join("; ")))
        }
    };
    FrostDepthByMethod {
        method,
        depth,
        berggren,
        reason,
    }
}

/// Notes a method as used.
pub fn note(method: FrostDepthMethod, work: &mut Work) {
    work.method(match method {
        FrostDepthMethod::ModifiedBerggren => &methods::MODIFIED_BERGGREN,
        FrostDepthMethod::HeatConduction => &methods::HEAT_CONDUCTION,
        FrostDepthMethod::Stefan => &methods::STEFAN,
    });
}

/// Whether alpha and mu are within the chart; every one that is not.
pub fn chart_faults(alpha: (f64, String), mu: (f64, String)) -> Vec<Issue> {
    let outside = |name: &str, (value, pointer): (f64, String), from: &str, limit: f64| {
        let inside = utilisation(value, limit).1 && value >= 0.0 && (value > 0.0 || from == "0");
        (!inside).then(|| {
            let value = crate::quantity::round9(value);
            Issue::new(
                pointer,
                &refusals::BERGGREN_OUTSIDE_CHART,
                format!("{name} is {value}, the chart goes from {from} to {limit}"),
            )
            .limit(limit.to_string())
            .source(&BERGGREN_LAMBDA_CHART)
        })
    };
    let alpha = outside("the thermal ratio alpha", alpha, "0", ALPHA_MAX);
    let mu = outside("the fusion parameter mu", mu, "above 0", MU_MAX);
    alpha.into_iter().chain(mu).collect()
}

fn berggren(slabs: &[Slab], winter: &Winter, at: &str, work: &mut Work) -> Found {
    let whole = match slabs {
        [one] => Some((one.capacity, one.latent)),
        _ => None,
    };
    let depth = match whole {
        Some(_) => None,
        None => {
            Some(layered_depth(slabs, winter.si).map_err(|why| vec![no_front(why, slabs, at)])?)
        }
    };
    let (capacity, latent) = whole.unwrap_or_else(|| {
        let depth = depth.unwrap_or(DEEPEST);
        let sums = sums(slabs, depth, |slab| slab.conductivity);
        (sums.capacity / depth, sums.latent / depth)
    });
    let heat_capacity = HeatCapacity::from_si(capacity);
    let latent_heat = LatentHeat::from_si(latent);
    let mu = fusion_ratio(winter.cold, heat_capacity, latent_heat, &mut work.trace);
    let outside = chart_faults(
        (winter.alpha, format!("{at}/winter")),
        (mu, format!("{at}/layers")),
    );
    if !outside.is_empty() {
        return Err(outside);
    }
    let factor = correction_factor(winter.alpha, mu, &mut work.trace);
    let depth = match (depth, slabs) {
        (None, [one]) => {
            let conductivity = ThermalConductivity::from_si(one.conductivity);
            let index = winter.surface_index;
            berggren_depth(factor, conductivity, index, latent_heat, &mut work.trace)
        }
        (depth, _) => work.trace.step(
            "X",
            "sum L_n d_n (R_1 + ... + R_(n-1) + R_n / 2) = lambda^2 F_s",
            Length::from_si(depth.unwrap_or(DEEPEST)),
            [
                ("lambda", factor.into()),
                ("F_s", winter.surface_index.into()),
            ],
            &LAYERED_BERGGREN,
        ),
    };
    if depth.si() > DEEPEST {
        return Err(vec![too_deep(at)]);
    }
    let terms = BerggrenTerms {
        heat_capacity,
        latent_heat,
        fusion_ratio: mu,
        correction_factor: factor,
    };
    Ok((depth, Some(terms)))
}

fn by_conduction(
    slabs: &[Slab],
    winter: &Winter,
    at: &str,
    work: &mut Work,
) -> Result<Found, Refusal> {
    let depth = match conduction::frost_depth(slabs, winter.si, work)? {
        Ok(depth) => depth,
        Err(why) => return Ok(Err(vec![no_front(why, slabs, at)])),
    };
    let depth = work.trace.step(
        "X_h",
        "depth that holds the latent heat frozen by C dT/dt + L df/dt = d/dz (k dT/dz)",
        Length::from_si(depth),
        [
            ("v_s", winter.cold.into()),
            ("v_o", winter.warmth.into()),
            ("t", crate::quantity::Season::from_si(winter.si.t).into()),
        ],
        &FROST_HEAT_CONDUCTION,
    );
    Ok(Ok((depth, None)))
}

fn no_front(why: NoFront, slabs: &[Slab], at: &str) -> Issue {
    if why == NoFront::TooDeep {
        return too_deep(at);
    }
    let wet = slabs.iter().find(|slab| slab.latent > 0.0);
    let told = Length::ROLE.in_both_systems(wet.map_or(0.0, |slab| slab.top));
    Issue::new(
        format!("{at}/layers"),
        &refusals::FROST_ENDS_WITHOUT_WATER,
        format!("the first water that freezes is at {told} and the frost does not reach it"),
    )
    .limit(told)
}

fn too_deep(at: &str) -> Issue {
    let told = Length::ROLE.in_both_systems(DEEPEST);
    Issue::new(
        format!("{at}/winter"),
        &refusals::FROST_TOO_DEEP,
        format!("the frost would be deeper than {told}"),
    )
    .limit(told)
}
