//! From an outside form line to the beams along it: which side is the inside, widths and
//! insets, centre lines and inner faces, labels and loads. Ends are joined elsewhere.

use super::measure::moved_along;
use super::offset::{Fault, REACH_MAX, Sides, left_of, scaled, signed_area};
use super::{Origin, Strip};
use crate::contract::Issue;
use crate::layout::codes::refusals;
use crate::layout::outcome::{LayoutOutline, LayoutOutlineSide};
use crate::layout::plan::{Point, TOLERANCE, line_faults};
use crate::layout::request::{
    BeamLineLoad, GradeBeam, Outline, OutlineInside, OutlineLength, OutlineSide, PlanPoint,
};
use crate::quantity::{Area, Length, Size, in_both_systems};
use crate::text::Label;
use crate::trace::Trace;

/// Most sides of which the working is shown.
const STEPS_MAX: usize = 200;

/// What came of one outline.
pub(super) struct Derived {
    pub beams: Vec<GradeBeam>,
    pub origins: Vec<Origin>,
    /// Empty where the outline is at fault.
    pub strips: Vec<Strip>,
    /// None where the outline is at fault.
    pub report: Option<LayoutOutline>,
}

/// The beams of an outline. Where it is at fault its beams lie on the form line, so that
/// the rest of the request can still be looked through.
pub(super) fn derive(
    index: usize,
    outline: &Outline,
    label: &str,
    trace: &mut Trace,
    issues: &mut Vec<Issue>,
) -> Derived {
    let before = issues.len();
    let path = format!("/outlines/{index}");
    let points: Vec<Point> = outline.points.iter().map(Point::of).collect();
    line_faults(
        &format!("{path}/points"),
        &points,
        (
            &refusals::OUTLINE_SIDE_ZERO_LENGTH,
            &refusals::OUTLINE_CROSSES_ITSELF,
        ),
        issues,
    );
    let last = points.len() - 1;
    let ring = last > 1 && points[0].distance(points[last]) <= TOLERANCE;
    let form = Sides {
        points: if ring {
            points[..last].to_vec()
        } else {
            points
        },
        ring,
    };
    let entries = entries(&path, outline, form.count(), issues);
    let inside = inside(&path, outline, &form, issues);
    let across: Vec<Across> = (0..form.count())
        .map(|side| Across::of(&path, outline, entries[side], issues))
        .collect();
    let lines = match inside {
        Some(sign) if issues.len() == before => Lines::of(&path, &form, sign, &across, issues),
        _ => None,
    };
    let mut out = Derived {
        beams: Vec::new(),
        origins: Vec::new(),
        strips: Vec::new(),
        report: None,
    };
    let mut sides = Vec::new();
    for side in 0..form.count() {
        let entry = entries[side].map(|e| &outline.sides.as_deref().unwrap_or_default()[e]);
        let own = entry.and_then(|e| e.label.clone());
        let beam_label = own.unwrap_or_else(|| Label(format!("{label}-{}", side + 1)));
        let (a, b) = form.ends(side);
        let centre = lines.as_ref().map_or((a, b), |l| l.centre.ends(side));
        let form_length = a.distance(b);
        let centre_length = centre.0.distance(centre.1);
        let from = form.direction(side).dot(a.to(centre.0));
        if let Some(l) = &lines {
            out.strips.push(Strip {
                outline: index,
                beam: 0,
                form: (a, b),
                centre,
                inner: l.inner.ends(side),
            });
            if trace.is_on() && side < STEPS_MAX {
                trace.about(|| format!("side {}", beam_label.as_str()));
                let end = form_length - from - centre_length;
                super::equations::centre_length(
                    Length::from_si(form_length),
                    Length::from_si(from),
                    Length::from_si(end),
                    trace,
                );
                trace.about(String::new);
            }
        }
        sides.push(LayoutOutlineSide {
            beam: beam_label.as_str().to_owned(),
            form_length: Length::from_si(form_length),
            centre_length: Length::from_si(centre_length),
            centre_from: Length::from_si(from),
            inset: Size::from_si(across[side].inset),
        });
        let mut beam = side_beam(
            outline,
            entry,
            beam_label,
            centre,
            form_length / centre_length,
        );
        beam.width = Some(Size::from_si(across[side].width));
        let origin = Origin {
            outline: index,
            side,
            entry: entries[side],
            corners: form.points.len(),
        };
        if lines.is_some() && entry.and_then(|e| e.measured_along) == Some(OutlineLength::FormLine)
        {
            let mut found = Vec::new();
            moved_along("", &mut beam, -from, centre_length, &mut found);
            issues.extend(found.into_iter().map(|mut issue| {
                issue.pointer = origin.pointer(outline, &issue.pointer);
                issue
            }));
        }
        out.beams.push(beam);
        out.origins.push(origin);
    }
    out.report = lines.map(|l| report(outline, label, &form, &l, sides));
    out
}

/// Which entry of `sides` belongs to each side.
fn entries(
    path: &str,
    outline: &Outline,
    count: usize,
    issues: &mut Vec<Issue>,
) -> Vec<Option<usize>> {
    let mut found: Vec<Option<usize>> = vec![None; count];
    for (e, entry) in outline.sides.iter().flatten().enumerate() {
        let pointer = format!("{path}/sides/{e}/side");
        let number = entry.side as usize;
        match found.get_mut(number.wrapping_sub(1)) {
            None => issues.push(
                Issue::new(
                    pointer,
                    &refusals::OUTLINE_SIDE_UNKNOWN,
                    format!("side {number}; the outline has {count}"),
                )
                .limit(format!("1 to {count}")),
            ),
            Some(Some(first)) => issues.push(Issue::new(
                pointer,
                &refusals::OUTLINE_SIDE_TWICE,
                format!("side {number} is number {first} of the list already"),
            )),
            Some(free) => *free = Some(e),
        }
    }
    found
}

/// 1 where the inside is left of the line, -1 where it is right of it.
fn inside(path: &str, outline: &Outline, form: &Sides, issues: &mut Vec<Issue>) -> Option<f64> {
    let detail = match (form.ring, outline.inside) {
        (true, None) => return Some(if form.area() > 0.0 { 1.0 } else { -1.0 }),
        (false, Some(OutlineInside::Left)) => return Some(1.0),
        (false, Some(OutlineInside::Right)) => return Some(-1.0),
        (true, Some(_)) => "the line is a ring, its inside is within it: leave `inside` out",
        (false, None) => {
            "the line is open: say whether the building is `left` or `right` of it, or end it at its first point"
        }
    };
    let pointer = if form.ring {
        format!("{path}/inside")
    } else {
        path.to_owned()
    };
    issues.push(Issue::new(
        pointer,
        &refusals::OUTLINE_INSIDE_UNCLEAR,
        detail,
    ));
    None
}

/// Width and inset of one side, m.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Across {
    width: f64,
    inset: f64,
}

impl Across {
    fn of(path: &str, outline: &Outline, entry: Option<usize>, issues: &mut Vec<Issue>) -> Self {
        let own = entry.map(|e| &outline.sides.as_deref().unwrap_or_default()[e]);
        let own_width = own.and_then(|s| s.beam_width);
        let own_inset = own.and_then(|s| s.pile_inset);
        let width = own_width.unwrap_or(outline.beam_width).si();
        let shared = outline.pile_inset.filter(|_| own_width.is_none());
        let inset = own_inset.or(shared).map_or(0.5 * width, |d| d.si());
        if inset >= width {
            let pointer = match (entry, own_inset) {
                (Some(e), Some(_)) => format!("{path}/sides/{e}/pile_inset"),
                _ => format!("{path}/pile_inset"),
            };
            issues.push(
                Issue::new(
                    pointer,
                    &refusals::OUTLINE_INSET_OUTSIDE,
                    format!("{} from the form line", shown(inset)),
                )
                .limit(format!("less than the width, {}", shown(width))),
            );
        }
        Self { width, inset }
    }
}

fn shown(size: f64) -> String {
    Size::ROLE.in_both_systems(size)
}

/// Centre line and inner faces of an outline.
struct Lines {
    centre: Sides,
    inner: Sides,
}

impl Lines {
    fn of(
        path: &str,
        form: &Sides,
        sign: f64,
        across: &[Across],
        issues: &mut Vec<Issue>,
    ) -> Option<Self> {
        let mut made = Vec::new();
        let insets = |a: &Across| a.inset;
        let widths = |a: &Across| a.width;
        for (what, get) in [
            ("centre line", &insets as &dyn Fn(&Across) -> f64),
            ("inner face", &widths),
        ] {
            let by: Vec<f64> = across.iter().map(|a| sign * get(a)).collect();
            let mut faults = Vec::new();
            let moved = form.moved(&by, &mut faults);
            if faults.is_empty() {
                form.compare(&moved, &mut faults);
            }
            if !faults.is_empty() {
                issues.extend(faults.iter().map(|f| issue(path, form, what, &by, f)));
                return None;
            }
            made.push(moved);
        }
        let inner = made.pop()?;
        Some(Self {
            centre: made.pop()?,
            inner,
        })
    }
}

fn issue(path: &str, form: &Sides, what: &str, by: &[f64], fault: &Fault) -> Issue {
    let at = |point: usize| format!("{path}/points/{point}");
    match *fault {
        Fault::Sharp { point } => Issue::new(
            at(point),
            &refusals::OUTLINE_CORNER_TOO_SHARP,
            format!("the corner of the {what} would be too far from that of the form line"),
        )
        .limit(format!(
            "{REACH_MAX} times the distance between the lines (a corner of 14.4 degrees)"
        )),
        Fault::Step { point } => Issue::new(
            at(point),
            &refusals::OUTLINE_SIDES_STEP,
            format!("the {what}s of the two sides do not meet near their common point"),
        )
        .limit(format!("{REACH_MAX} times the distance between the lines")),
        Fault::Vanishes { side, left } => Issue::new(
            at(side),
            &refusals::OUTLINE_SIDE_VANISHES,
            format!(
                "side {} is {} long on the form line; {} from it its {what} would be {} long: it is too short by {}",
                side + 1,
                in_both_systems(form.length(side), "m"),
                shown(by[side].abs()),
                in_both_systems(left, "m"),
                in_both_systems(TOLERANCE - left, "m"),
            ),
        )
        .limit(format!("more than {}", in_both_systems(TOLERANCE, "m"))),
        Fault::Meet { one, other } => {
            let ((a, b), (c, d)) = (form.ends(one), form.ends(other));
            let apart = crate::layout::plan::segment_distance(a, b, c, d);
            Issue::new(
                at(other),
                &refusals::OUTLINE_TOO_NARROW,
                format!(
                    "the {what}s of sides {} and {} would meet; their form lines are {} apart where they are nearest",
                    one + 1,
                    other + 1,
                    in_both_systems(apart, "m"),
                ),
            )
            .limit(format!(
                "more than {} and {}",
                shown(by[one].abs()),
                shown(by[other].abs())
            ))
        }
    }
}

/// The beam of a side, with what the side says in place of what the outline says.
fn side_beam(
    outline: &Outline,
    side: Option<&OutlineSide>,
    label: Label,
    (a, b): (Point, Point),
    longer: f64,
) -> GradeBeam {
    let scale = match outline.line_loads_per {
        Some(OutlineLength::FormLine) => longer,
        Some(OutlineLength::CentreLine) | None => 1.0,
    };
    let shared = || {
        outline.line_loads.as_ref().map(|list| {
            list.iter()
                .map(|l| BeamLineLoad {
                    kind: l.kind,
                    case: l.case.clone(),
                    load: l.load * scale,
                    load_at_end: None,
                    from: None,
                    to: None,
                    follows_beam: l.follows_beam,
                })
                .collect()
        })
    };
    let own_section = side.is_some_and(|s| s.section.is_some());
    let own_strength =
        side.is_some_and(|s| s.moment_capacity.is_some() || s.shear_capacity.is_some());
    GradeBeam {
        label: Some(label),
        tags: side
            .and_then(|s| s.tags.clone())
            .or_else(|| outline.tags.clone()),
        points: vec![plan_point(a), plan_point(b)],
        flexural_rigidity: side
            .and_then(|s| s.flexural_rigidity)
            .or(outline.flexural_rigidity),
        torsional_rigidity: side
            .and_then(|s| s.torsional_rigidity)
            .or(outline.torsional_rigidity),
        torsion_capacity: side
            .and_then(|s| s.torsion_capacity)
            .or(outline.torsion_capacity),
        moment_capacity: side
            .and_then(|s| s.moment_capacity)
            .or(outline.moment_capacity.filter(|_| !own_section)),
        shear_capacity: side
            .and_then(|s| s.shear_capacity)
            .or(outline.shear_capacity.filter(|_| !own_section)),
        section: side
            .and_then(|s| s.section.clone())
            .or_else(|| outline.section.clone().filter(|_| !own_strength)),
        deflection_limit: side
            .and_then(|s| s.deflection_limit)
            .or(outline.deflection_limit),
        wall_width: side.and_then(|s| s.wall_width).or(outline.wall_width),
        line_loads: side.and_then(|s| s.line_loads.clone()).or_else(shared),
        openings: side.and_then(|s| s.openings.clone()),
        ..GradeBeam::default()
    }
}

pub(super) fn plan_point(p: Point) -> PlanPoint {
    PlanPoint {
        x: Length::from_si(p.x),
        y: Length::from_si(p.y),
    }
}

fn report(
    outline: &Outline,
    label: &str,
    form: &Sides,
    lines: &Lines,
    sides: Vec<LayoutOutlineSide>,
) -> LayoutOutline {
    // form line forwards, inner faces backwards: what lies between them
    let mut between = form.points.clone();
    let mut back = lines.inner.points.clone();
    if form.ring {
        between.push(form.points[0]);
        back.push(back[0]);
    }
    back.reverse();
    between.append(&mut back);
    LayoutOutline {
        label: label.to_owned(),
        tags: outline.tags.clone(),
        points: outline.points.clone(),
        form_length: sides.iter().map(|s| s.form_length).sum(),
        centre_length: sides.iter().map(|s| s.centre_length).sum(),
        form_area: form.ring.then(|| Area::from_si(form.area().abs())),
        beam_area: Area::from_si(signed_area(&between).abs()),
        sides,
    }
}

impl Strip {
    /// The edges of the beam, left and right, in the direction of its centre line.
    pub fn edges(&self) -> [(Point, Point); 2] {
        let (p, q) = self.centre;
        let left = left_of(p.to(q)).dot(p.to(self.form.0)) > 0.0;
        if left {
            [self.form, self.inner]
        } else {
            [self.inner, self.form]
        }
    }

    /// The edges after the ends were moved along the centre line by this much.
    pub fn edges_moved(&self, first: f64, last: f64) -> [(Point, Point); 2] {
        let (p, q) = self.centre;
        let along = scaled(p.to(q), 1.0 / p.distance(q));
        self.edges()
            .map(|(a, b)| (a.along(along, -first), b.along(along, last)))
    }
}
