//! The plan as builders draw it: form lines become beams, ends are joined, openings are
//! looked through. What comes out is a request with beams only; faults found in it are
//! pointed back at what was sent.

mod derive;
mod edges;
mod equations;
mod join;
mod measure;
mod offset;
mod openings;

#[cfg(test)]
mod tests;

use std::borrow::Cow;
use std::collections::BTreeSet;

pub(super) use openings::{acting, gaps, places, point_at};

use super::codes::methods;
use super::outcome::{BeamEdges, JoinedEnd, LayoutOutline};
use super::plan::{Point, TOLERANCE};
use super::request::{Outline, Request};
use crate::catalogue::refusals::DUPLICATE_LABEL;
use crate::contract::{Issue, Refusal, Work};
use crate::quantity::Length;
use crate::text::Label;

/// A request whose beams are all there is.
pub(super) struct Form<'a> {
    sent: &'a Request,
    /// The request with the beams of outlines after its own, ends joined.
    pub request: Cow<'a, Request>,
    /// Faults of outlines, joined ends and openings; with any, the beams cannot be used.
    pub issues: Vec<Issue>,
    origins: Vec<Origin>,
    edges: Vec<Option<Vec<BeamEdges>>>,
    outlines: Vec<LayoutOutline>,
    joined: Vec<join::Joined>,
}

/// Where the beam of a side comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Origin {
    outline: usize,
    side: usize,
    /// The entry of `sides` that belongs to it.
    entry: Option<usize>,
    /// Corners of the outline.
    corners: usize,
}

/// A beam of an outline in plan, from its first corner to its second.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Strip {
    outline: usize,
    beam: usize,
    form: (Point, Point),
    centre: (Point, Point),
    inner: (Point, Point),
}

/// Reads outlines, joined ends and openings.
pub(super) fn read<'a>(request: &'a Request, work: &mut Work) -> Form<'a> {
    let mut form = Form {
        sent: request,
        request: Cow::Borrowed(request),
        issues: Vec::new(),
        origins: Vec::new(),
        edges: Vec::new(),
        outlines: Vec::new(),
        joined: Vec::new(),
    };
    let outlines = request.outlines.as_deref().unwrap_or_default();
    let own = request.beams.len();
    let news = |b: &super::request::GradeBeam| {
        b.width.is_some() || b.joins_outline == Some(true) || b.openings.is_some()
    };
    if outlines.is_empty() && !request.beams.iter().any(news) {
        return form;
    }
    let issues = &mut form.issues;
    let mut beams = request.beams.clone();
    let mut strips = Vec::new();
    let mut asked: Vec<join::Asked> = Vec::new();
    for (b, beam) in beams.iter().enumerate() {
        if beam.joins_outline == Some(true) {
            asked.push(join::Asked {
                beam: b,
                first: true,
                last: true,
                of_outline: None,
            });
        }
    }
    if !outlines.is_empty() {
        work.method(&methods::FORM_LINE);
    }
    let mut sound = true;
    for (o, (outline, label)) in outlines
        .iter()
        .zip(outline_labels(outlines, issues))
        .enumerate()
    {
        let first = beams.len();
        let derived = derive::derive(o, outline, &label, &mut work.trace, issues);
        sound &= derived.report.is_some();
        strips.extend(derived.strips.into_iter().enumerate().map(|(i, s)| Strip {
            beam: first + i,
            ..s
        }));
        beams.extend(derived.beams);
        form.origins.extend(derived.origins);
        form.outlines.extend(derived.report);
        if outline.joins_outline == Some(true) {
            ends_asked(o, outline, first, beams.len() - 1, &mut asked, issues);
        }
    }
    unlike(&mut beams, own, &form.origins, outlines, issues);
    // joined to all outlines or to none, so that nothing is said of one that is not there
    let mut grown = Vec::new();
    if sound {
        (form.joined, grown) = join::join(&mut beams, &asked, &strips, issues);
    }
    for (b, beam) in beams.iter().enumerate() {
        if sound || b < own {
            openings::check(b, beam, issues);
        }
    }
    if beams.iter().any(|b| b.openings.is_some()) {
        work.method(&methods::WALL_OPENINGS);
    }
    form.edges = (0..beams.len())
        .map(|b| {
            let pair = if b < own {
                edges::of_beam(b, &beams[b], issues)?
            } else {
                let strip = strips.iter().find(|s| s.beam == b)?;
                let (first, last) = grown
                    .iter()
                    .find(|g| g.0 == b)
                    .map_or((0.0, 0.0), |g| (g.1, g.2));
                let [left, right] = strip.edges_moved(first, last);
                edges::Pair {
                    left: vec![left.0, left.1],
                    right: vec![right.0, right.1],
                }
            };
            Some(edges::parts(&beams[b], &pair))
        })
        .collect();
    form.request = Cow::Owned(Request {
        beams,
        ..request.clone()
    });
    form
}

/// Labels of the outlines: the caller's, or F and a number.
fn outline_labels(outlines: &[Outline], issues: &mut Vec<Issue>) -> Vec<String> {
    super::site::labels(
        outlines.iter().map(|o| o.label.as_ref()),
        "F",
        "/outlines",
        issues,
    )
}

/// The two ends of an open outline.
fn ends_asked(
    o: usize,
    outline: &Outline,
    first: usize,
    last: usize,
    asked: &mut Vec<join::Asked>,
    issues: &mut Vec<Issue>,
) {
    let ends = [
        &outline.points[0],
        &outline.points[outline.points.len() - 1],
    ]
    .map(Point::of);
    if ends[0].distance(ends[1]) <= TOLERANCE {
        issues.push(Issue::new(
            format!("/outlines/{o}/joins_outline"),
            &super::codes::refusals::JOIN_NOTHING,
            "only an open line has ends",
        ));
        return;
    }
    if first == last {
        asked.push(join::Asked {
            beam: first,
            first: true,
            last: true,
            of_outline: Some(o),
        });
        return;
    }
    for (beam, is_first) in [(first, true), (last, false)] {
        asked.push(join::Asked {
            beam,
            first: is_first,
            last: !is_first,
            of_outline: Some(o),
        });
    }
}

/// Beams of sides must have labels that no other beam has; those made here give way.
fn unlike(
    beams: &mut [super::request::GradeBeam],
    own: usize,
    origins: &[Origin],
    outlines: &[Outline],
    issues: &mut Vec<Issue>,
) {
    let mut taken: BTreeSet<String> = beams[..own]
        .iter()
        .filter_map(|b| b.label.as_ref().map(|l| l.as_str().to_owned()))
        .collect();
    let named = |origin: &Origin| {
        let list = outlines[origin.outline]
            .sides
            .as_deref()
            .unwrap_or_default();
        origin.entry.is_some_and(|e| list[e].label.is_some())
    };
    for pass in [true, false] {
        for (beam, origin) in beams[own..].iter_mut().zip(origins) {
            if named(origin) != pass {
                continue;
            }
            let mut text = beam.label.as_ref().map_or("", |l| l.as_str()).to_owned();
            if pass && taken.contains(&text) {
                let entry = origin.entry.unwrap_or(0);
                issues.push(Issue::new(
                    format!("/outlines/{}/sides/{entry}/label", origin.outline),
                    &DUPLICATE_LABEL,
                    "another beam has it",
                ));
            }
            while taken.contains(&text) {
                text.push('_');
            }
            taken.insert(text.clone());
            beam.label = Some(Label(text));
        }
    }
}

impl Form<'_> {
    /// Faults with pointers into the request as it was sent.
    pub fn as_sent(&self, refusal: Refusal) -> Refusal {
        if self.origins.is_empty() || refusal.interrupted {
            return refusal;
        }
        let own = self.sent.beams.len();
        let outlines = self.sent.outlines.as_deref().unwrap_or_default();
        let issues = refusal.issues.into_iter().map(|mut issue| {
            let at = issue.pointer.strip_prefix("/beams/").and_then(|rest| {
                let (index, member) = rest.split_at(rest.find('/').unwrap_or(rest.len()));
                let beam: usize = index.parse().ok()?;
                let origin = self.origins.get(beam.checked_sub(own)?)?;
                Some(origin.pointer(&outlines[origin.outline], member))
            });
            if let Some(at) = at {
                issue.pointer = at;
            }
            issue
        });
        Refusal::of(issues.collect())
    }

    /// How messages call a beam: its number in the list, or the label of a side's.
    pub fn called(&self) -> Vec<String> {
        let own = self.sent.beams.len();
        let beams = self.request.beams.iter().enumerate();
        beams
            .map(|(b, beam)| match &beam.label {
                Some(label) if b >= own => format!("`{label}`"),
                _ => format!("{b} of the list"),
            })
            .collect()
    }

    /// The edges of a beam.
    pub fn edges(&self, beam: usize) -> Option<Vec<BeamEdges>> {
        self.edges.get(beam).cloned().flatten()
    }

    /// What became of the outlines.
    pub fn outlines(&self, labels: &[String]) -> Option<Vec<LayoutOutline>> {
        self.sent.outlines.as_ref()?;
        let mut out = self.outlines.clone();
        let own = self.sent.beams.len();
        let sides = out.iter_mut().flat_map(|o| o.sides.iter_mut());
        for (side, label) in sides.zip(&labels[own..]) {
            side.beam.clone_from(label);
        }
        Some(out)
    }

    /// The ends that were moved.
    pub fn joined(&self, labels: &[String]) -> Option<Vec<JoinedEnd>> {
        let asked = |j: Option<bool>| j == Some(true);
        let outlines = self.sent.outlines.iter().flatten();
        if !self.sent.beams.iter().any(|b| asked(b.joins_outline))
            && !outlines.into_iter().any(|o| asked(o.joins_outline))
        {
            return None;
        }
        let ends = self.joined.iter().map(|j| JoinedEnd {
            beam: labels[j.beam].clone(),
            end: j.end,
            onto: labels[j.onto].clone(),
            from: j.from,
            to: j.to,
            longer_by: Length::from_si(j.longer),
        });
        Some(ends.collect())
    }
}

impl Origin {
    /// Where in the request a member of a side's beam comes from.
    fn pointer(&self, outline: &Outline, member: &str) -> String {
        let whole = format!("/outlines/{}", self.outline);
        let name = member.split('/').nth(1).unwrap_or("");
        if name == "points" {
            let rest = member.trim_start_matches("/points");
            let point = rest.trim_start_matches('/').parse::<usize>().unwrap_or(0);
            return format!("{whole}/points/{}", (self.side + point) % self.corners);
        }
        let Some((entry, side)) = self
            .entry
            .and_then(|e| Some((e, outline.sides.as_ref()?.get(e)?)))
        else {
            return match name {
                "width" => format!("{whole}/beam_width"),
                "label" if outline.label.is_none() => whole,
                _ => format!("{whole}{member}"),
            };
        };
        let own = format!("{whole}/sides/{entry}");
        let here = match name {
            "" | "openings" => true,
            "label" => side.label.is_some(),
            "tags" => side.tags.is_some(),
            "width" => side.beam_width.is_some(),
            "line_loads" => side.line_loads.is_some(),
            "flexural_rigidity" => side.flexural_rigidity.is_some(),
            "torsional_rigidity" => side.torsional_rigidity.is_some(),
            "torsion_capacity" => side.torsion_capacity.is_some(),
            "moment_capacity" => side.moment_capacity.is_some(),
            "shear_capacity" => side.shear_capacity.is_some(),
            "section" => side.section.is_some(),
            "deflection_limit" => side.deflection_limit.is_some(),
            "wall_width" => side.wall_width.is_some(),
            _ => false,
        };
        match (here, name) {
            (true, "width") => format!("{own}/beam_width"),
            (false, "width") => format!("{whole}/beam_width"),
            (true, _) => format!("{own}{member}"),
            (false, _) => format!("{whole}{member}"),
        }
    }
}
