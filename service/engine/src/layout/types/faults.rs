//! Faults of pile types, soil zones and forbidden stretches, and of what refers to them.

use super::area::{fault, overlap};
use super::offers::{Capacity, Offers};
use super::trace::Stretch;
use super::{Zone, inside};
use crate::catalogue::RefusalDef;
use crate::catalogue::refusals::LIST_TOO_LONG;
use crate::contract::{Issue, list_length};
use crate::layout::codes::refusals;
use crate::layout::plan::{Plan, Point, TOLERANCE};
use crate::layout::request::{
    KeepOutShape, PilePlacement, PileSearch, Request, SearchObjective, SoilZone,
};
use crate::layout::site::labels;
use crate::limits::{
    AREA_POINTS, FORBIDDEN_STRETCHES, KEEP_OUTS, PILE_TYPES, PLAN_AREA_POINTS, SOIL_ZONES,
};
use crate::quantity::in_both_systems;

/// Lengths of the lists.
pub(in crate::layout) fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    if let Some(t) = &request.pile_types {
        list_length(issues, "/pile_types/types", t.types.len(), 1, PILE_TYPES);
    }
    let zones = request.soil_zones.as_deref().unwrap_or_default();
    list_length(issues, "/soil_zones", zones.len(), 0, SOIL_ZONES);
    let mut points = 0;
    for (i, z) in zones.iter().enumerate() {
        points += z.corners.len();
        let pointer = format!("/soil_zones/{i}/corners");
        list_length(issues, pointer, z.corners.len(), 3, AREA_POINTS);
        let pointer = format!("/soil_zones/{i}/capacities");
        list_length(issues, pointer, z.capacities.len(), 1, PILE_TYPES);
    }
    let keep_outs = request.keep_outs.as_deref().unwrap_or_default();
    list_length(issues, "/keep_outs", keep_outs.len(), 0, KEEP_OUTS);
    for (i, k) in keep_outs.iter().enumerate() {
        let (member, count, least) = match &k.shape {
            KeepOutShape::Polygon(a) => ("polygon/corners", a.corners.len(), 3),
            KeepOutShape::Lot(a) => ("lot/corners", a.corners.len(), 3),
            KeepOutShape::Line(l) => ("line/points", l.points.len(), 2),
            KeepOutShape::Circle(_) | KeepOutShape::Boundary(_) => continue,
        };
        points += count;
        let pointer = format!("/keep_outs/{i}/shape/{member}");
        list_length(issues, pointer, count, least, AREA_POINTS);
    }
    if points > PLAN_AREA_POINTS {
        issues.push(
            Issue::new(
                "",
                &LIST_TOO_LONG,
                format!(
                    "{points} points of zones and keep-outs in all, at most {PLAN_AREA_POINTS} accepted"
                ),
            )
            .limit(PLAN_AREA_POINTS.to_string()),
        );
    }
    if let PilePlacement::Search(s) = &request.piles {
        let count = s.forbidden.as_ref().map_or(0, Vec::len);
        list_length(
            issues,
            "/piles/search/forbidden",
            count,
            0,
            FORBIDDEN_STRETCHES,
        );
    }
}

/// Faults of the catalogue of types and of the names of zones and keep-outs.
pub(super) fn catalogue(request: &Request, issues: &mut Vec<Issue>) {
    let names = request.soil_zones.iter().flatten().map(|z| Some(&z.label));
    labels(names, "Z", "/soil_zones", issues);
    let names = request.keep_outs.iter().flatten().map(|k| Some(&k.label));
    labels(names, "K", "/keep_outs", issues);
    let costs_wanted = matches!(&request.piles, PilePlacement::Search(s)
        if s.objective == Some(SearchObjective::LeastCost));
    let Some(catalogue) = &request.pile_types else {
        if costs_wanted {
            issues.push(Issue::new(
                "/piles/search/objective",
                &refusals::COSTS_NEEDED,
                "`least_cost` needs `pile_types` with costs",
            ));
        }
        return;
    };
    if request.pile_capacity.is_some() {
        issues.push(Issue::new(
            "/pile_types",
            &refusals::CAPACITY_TWICE,
            "beside `pile_capacity`",
        ));
    }
    let names = catalogue.types.iter().map(|t| Some(&t.label));
    labels(names, "T", "/pile_types/types", issues);
    let some = catalogue.types.iter().any(|t| t.cost.is_some());
    let springs =
        catalogue.types.iter().any(|t| t.stiffness.is_some()) && request.pile_stiffness.is_none();
    for (i, t) in catalogue.types.iter().enumerate() {
        if t.cost.is_none() && (some || costs_wanted) {
            issues.push(Issue::new(
                format!("/pile_types/types/{i}"),
                &refusals::COSTS_NEEDED,
                if some {
                    "other types have a cost"
                } else {
                    "`least_cost` is asked for"
                },
            ));
        }
        if springs && t.stiffness.is_none() {
            issues.push(Issue::new(
                format!("/pile_types/types/{i}"),
                &refusals::STIFFNESS_NEEDED,
                "other types have one; send `stiffness` here or `pile_stiffness` for all",
            ));
        }
    }
}

/// The soil zones, with their faults.
pub(super) fn zones(
    request: &Request,
    offers: Option<&Offers>,
    corner: Point,
    issues: &mut Vec<Issue>,
) -> Vec<Zone> {
    let given = request.soil_zones.as_deref().unwrap_or_default();
    let mut out = Vec::with_capacity(given.len());
    let mut sound = Vec::with_capacity(given.len());
    for (i, zone) in given.iter().enumerate() {
        let corners: Vec<Point> = zone.corners.iter().map(|p| inside(corner, p)).collect();
        let wrong = fault(&corners);
        sound.push(wrong.is_none());
        if let Some(detail) = wrong {
            issues.push(Issue::new(
                format!("/soil_zones/{i}/corners"),
                &refusals::AREA_NOT_SIMPLE,
                detail,
            ));
        }
        let each = match offers {
            Some(offers) => capacities(i, zone, offers, issues),
            None => {
                issues.push(Issue::new(
                    format!("/soil_zones/{i}/capacities"),
                    &refusals::CAPACITY_NEEDED,
                    "its level and what piles carry elsewhere are those of `pile_capacity` or `pile_types`",
                ));
                Vec::new()
            }
        };
        out.push(Zone {
            label: zone.label.as_str().to_owned(),
            corners,
            each,
        });
    }
    for i in 0..out.len() {
        for j in 0..i {
            if sound[i]
                && sound[j]
                && let Some(p) = overlap(&out[i].corners, &out[j].corners)
            {
                let point = |v: f64| in_both_systems(v, "m");
                issues.push(Issue::new(
                    format!("/soil_zones/{i}/corners"),
                    &refusals::ZONES_OVERLAP,
                    format!(
                        "with number {j} of the list, at x {}, y {}",
                        point(p.x + corner.x),
                        point(p.y + corner.y)
                    ),
                ));
            }
        }
    }
    out
}

/// What a zone says of every type, in the order of preference.
fn capacities(
    index: usize,
    zone: &SoilZone,
    offers: &Offers,
    issues: &mut Vec<Issue>,
) -> Vec<Capacity> {
    let pointer = format!("/soil_zones/{index}/capacities");
    let mut each: Vec<Option<Capacity>> = vec![None; offers.types.len()];
    let mut fault = |i: usize, def: &'static RefusalDef, detail: String| {
        issues.push(Issue::new(format!("{pointer}/{i}"), def, detail));
    };
    for (i, c) in zone.capacities.iter().enumerate() {
        let rank = match &c.pile_type {
            Some(label) => match offers.rank(label.as_str()) {
                Some(rank) => rank,
                None => {
                    let known = types(offers);
                    fault(i, &refusals::UNKNOWN_PILE_TYPE, known);
                    continue;
                }
            },
            None if offers.named => {
                let detail = "`pile_type` is needed beside `pile_types`".to_owned();
                fault(i, &refusals::ZONE_CAPACITIES_DIFFER, detail);
                continue;
            }
            None => 0,
        };
        if each[rank].is_some() {
            let detail = "a second capacity of the same pile".to_owned();
            fault(i, &refusals::ZONE_CAPACITIES_DIFFER, detail);
        }
        each[rank] = Some(Capacity {
            compression: c.compression.si(),
            tension: c.tension.si(),
        });
    }
    let missing: Vec<&str> = offers
        .types
        .iter()
        .zip(&each)
        .filter(|(t, c)| offers.named && !t.label.is_empty() && c.is_none())
        .map(|(t, _)| t.label.as_str())
        .collect();
    if !missing.is_empty() {
        issues.push(Issue::new(
            pointer,
            &refusals::ZONE_CAPACITIES_DIFFER,
            format!("nothing is said of {}", missing.join(", ")),
        ));
    }
    let elsewhere = offers.types.iter().map(|t| t.capacity);
    each.iter()
        .zip(elsewhere)
        .map(|(own, other)| own.unwrap_or(other))
        .collect()
}

fn types(offers: &Offers) -> String {
    if !offers.named {
        return "there are no `pile_types`".to_owned();
    }
    let all: Vec<&str> = offers.types.iter().map(|t| t.label.as_str()).collect();
    format!("the types are {}", all.join(", "))
}

/// Given piles that name a type.
pub(in crate::layout) fn pile_type(
    label: &str,
    offers: Option<&Offers>,
    pointer: &str,
    issues: &mut Vec<Issue>,
) -> Option<usize> {
    let rank = offers.and_then(|o| o.rank(label));
    if rank.is_none() {
        issues.push(Issue::new(
            format!("{pointer}/pile_type"),
            &refusals::UNKNOWN_PILE_TYPE,
            offers.map_or_else(|| "there are no `pile_types`".to_owned(), types),
        ));
    }
    rank
}

/// The forbidden stretches on the runs.
pub(in crate::layout) fn stretches(
    search: &PileSearch,
    plan: &Plan,
    beam_labels: &[String],
    issues: &mut Vec<Issue>,
) -> Vec<Stretch> {
    let mut out = Vec::new();
    for (index, s) in search.forbidden.iter().flatten().enumerate() {
        let pointer = format!("/piles/search/forbidden/{index}");
        let mut fault = |member: &str, detail: String| {
            issues.push(Issue::new(
                format!("{pointer}/{member}"),
                &refusals::FORBIDDEN_STRETCH_OFF_BEAM,
                detail,
            ));
        };
        let Some(beam) = beam_labels.iter().position(|b| b == s.beam.as_str()) else {
            fault("beam", "no beam has this label".to_owned());
            continue;
        };
        let (from, to) = (s.from.si(), s.to.si());
        let length = plan.beam_length[beam];
        if to <= from {
            fault("to", "it does not end after it begins".to_owned());
            continue;
        }
        if to > length + TOLERANCE {
            let long = in_both_systems(length, "m");
            fault("to", format!("the beam is {long} long"));
            continue;
        }
        for part in &plan.beam_parts[beam] {
            let (a, b) = (from.max(part.from), to.min(part.to));
            if a < b {
                let (run, x) = part.on_run(a);
                let (_, y) = part.on_run(b);
                // an end of the stretch inside the beam is open, a corner between two
                // parts of it is not
                let (lo, hi) = (x.min(y), x.max(y));
                let (at_lo, at_hi) = if x <= y { (a, b) } else { (b, a) };
                let reach = |v: f64, away: f64| if v > from && v < to { away } else { 0.0 };
                out.push(Stretch {
                    run,
                    from: lo - reach(at_lo, TOLERANCE),
                    to: hi + reach(at_hi, TOLERANCE),
                    index,
                });
            }
        }
    }
    out
}
