//! Slabs as the caller reads them: areas, loads, and what goes to each beam.

use super::equations::{area_on_beam, load_on_area, slab_area};
use super::{Laid, OnRun};
use crate::layout::combine::Loading;
use crate::layout::outcome::{LayoutSlab, SlabCaseLoad, SlabOnBeam};
use crate::layout::request::Request;
use crate::quantity::{Angle, Area, AreaLoad, Length};
use crate::trace::Trace;

/// Rows of all slabs; none where none was sent.
pub(in crate::layout) fn rows(
    request: &Request,
    laid: &[Laid],
    loading: &Loading,
    beam_labels: &[String],
    trace: &mut Trace,
) -> Option<Vec<LayoutSlab>> {
    let sent = request.slabs.as_ref()?;
    let rows = laid.iter().map(|slab| {
        let asked = &sent[slab.index];
        trace.about(|| format!("slab {}", slab.label));
        let area = slab_area(slab.area, asked.corners.len(), trace);
        let row = LayoutSlab {
            label: slab.label.clone(),
            tags: asked.tags.clone(),
            area,
            spanning: slab.spanning,
            strips_from_east: slab.strips.map(half_turn),
            loads: loads(slab, area, loading, trace),
            beams: beams(slab, loading, beam_labels, trace),
        };
        trace.about(String::new);
        row
    });
    Some(rows.collect())
}

/// A direction without sense, from -90 (not included) to 90 degrees.
fn half_turn(radians: f64) -> Angle {
    let half = crate::math::PI;
    let mut a = radians;
    if a > 0.5 * half + 1e-12 {
        a -= half;
    } else if a <= -0.5 * half + 1e-12 {
        a += half;
    }
    Angle::from_si(a)
}

fn loads(slab: &Laid, area: Area, loading: &Loading, trace: &mut Trace) -> Vec<SlabCaseLoad> {
    slab.cases
        .iter()
        .map(|(case, q)| SlabCaseLoad {
            kind: loading.cases[*case].kind,
            case: loading.cases[*case].name.clone(),
            load: load_on_area(AreaLoad::from_si(*q), area, trace),
        })
        .collect()
}

/// Beams in order of the request.
fn beams(
    slab: &Laid,
    loading: &Loading,
    beam_labels: &[String],
    trace: &mut Trace,
) -> Vec<SlabOnBeam> {
    let mut order: Vec<usize> = slab.on.iter().map(|w| w.beam).collect();
    order.sort_unstable();
    order.dedup();
    order
        .into_iter()
        .map(|beam| {
            let own: Vec<&OnRun> = slab.on.iter().filter(|w| w.beam == beam).collect();
            trace.about(|| format!("slab {} on beam {}", slab.label, beam_labels[beam]));
            let sum = own
                .iter()
                .map(|w| 0.5 * (w.start + w.end) * (w.to - w.from))
                .sum();
            let area = area_on_beam(sum, Area::from_si(slab.area), trace);
            SlabOnBeam {
                beam: beam_labels[beam].clone(),
                area,
                length: Length::from_si(own.iter().map(|w| w.to - w.from).sum()),
                widest: Length::from_si(own.iter().fold(0.0, |m, w| m.max(w.start).max(w.end))),
                loads: loads(slab, area, loading, trace),
            }
        })
        .collect()
}
