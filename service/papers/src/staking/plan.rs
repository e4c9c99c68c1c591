//! The plan as DXF, in its own coordinates or in those of the site grid.

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::layout::{
    ControlResidual, KeepOut, KeepOutShape, Outcome, PlanPoint, Request, SiteStake, StakingGrid,
};
use bearwell_engine::quantity::{Length, LengthUnit, System};

use super::dxf::{At, Drawing, DrawingUnit};
use super::layers::{self, Layer};
use super::lists::type_of;
use super::marks::MARKS;
use super::text::{name, number};

/// Height of the labels, m.
const LABEL: f64 = 0.15;
/// From a pile to its label, m.
const BESIDE: f64 = 0.18;

/// Draws the plan as DXF in its own coordinates, in m or ft as the units of the answer are.
pub fn plan_dxf(request: &Request, answer: &Answer<Outcome>, system: System, _: Paper) -> String {
    let unit = match system {
        System::Si => unit_of(LengthUnit::M),
        System::UsCustomary => unit_of(LengthUnit::Ft),
    };
    let place = move |p: &PlanPoint| {
        let unit = Length::ROLE.unit(system);
        At {
            x: number(unit.printed(p.x.si())),
            y: number(unit.printed(p.y.si())),
        }
    };
    let axes = "Plan coordinates: x east, y north.";
    draw(request, answer, unit, axes, place)
}

/// Draws the plan as DXF in the coordinates and the unit of the site grid, x the easting and
/// y the northing. Without a site grid the drawing holds nothing but a note that says so.
pub fn site_dxf(request: &Request, answer: &Answer<Outcome>, system: System, _: Paper) -> String {
    let Some(grid) = grid_of(&answer.result) else {
        return nothing(system);
    };
    let unit = unit_of(grid.unit.length_unit());
    let axes = "Site grid: x easting, y northing.";
    draw(request, answer, unit, axes, |p| on_site(&grid.site_of(p)))
}

fn grid_of(outcome: &Outcome) -> Option<&StakingGrid> {
    outcome.staking.as_ref()?.grid.as_ref()
}

fn nothing(system: System) -> String {
    let unit = match system {
        System::Si => LengthUnit::M,
        System::UsCustomary => LengthUnit::Ft,
    };
    let note = "No site grid was sent in `staking`, so nothing has site coordinates.";
    let mut drawing = Drawing::new(unit_of(unit), &[note]);
    let at = At {
        x: number(0.0),
        y: number(0.0),
    };
    drawing.text(layers::NOTE, &at, LABEL, note);
    drawing.finish()
}

fn on_site(site: &SiteStake) -> At {
    At {
        x: site.easting_text.clone(),
        y: site.northing_text.clone(),
    }
}

/// How a drawing names a unit.
fn unit_of(unit: LengthUnit) -> DrawingUnit {
    let (code, metric) = match unit {
        LengthUnit::Ft => (2, false),
        LengthUnit::FtUsSurvey => (21, false),
        _ => (6, true),
    };
    DrawingUnit {
        name: unit.def().name,
        code,
        metric,
        factor: unit.def().factor,
    }
}

fn draw(
    request: &Request,
    answer: &Answer<Outcome>,
    unit: DrawingUnit,
    axes: &str,
    place: impl Fn(&PlanPoint) -> At,
) -> String {
    let units = format!("Units: {}.", unit.name);
    let marks = "Marks are pile centres on the centre lines of beams.";
    let mut drawing = Drawing::new(unit, &[&units, axes, marks]);
    let outcome = &answer.result;
    for beam in &outcome.beams {
        line(&mut drawing, layers::BEAM_CENTRE, &beam.points, &place);
        for part in beam.edges.iter().flatten() {
            line(&mut drawing, layers::BEAM_EDGE, &part.left, &place);
            line(&mut drawing, layers::BEAM_EDGE, &part.right, &place);
        }
    }
    for outline in outcome.outlines.iter().flatten() {
        line(&mut drawing, layers::FORM_LINE, &outline.points, &place);
    }
    if let Some(staking) = &outcome.staking {
        for string in &staking.string_lines {
            if let Some(o) = &string.offset {
                let ends = [o.from.at, o.to.at];
                line(&mut drawing, layers::STRING_LINE, &ends, &place);
            }
        }
        let control = staking.grid.as_ref().and_then(|g| g.control.as_ref());
        for point in control.map_or(&[][..], |c| &c.points) {
            control_point(&mut drawing, point, &place);
        }
    }
    for thing in request.keep_outs.iter().flatten() {
        keep_out(&mut drawing, thing, &place);
    }
    piles(&mut drawing, outcome, &place);
    notes(&mut drawing, &[&units, axes, marks]);
    drawing.finish()
}

fn line(
    drawing: &mut Drawing,
    layer: &str,
    points: &[PlanPoint],
    place: &impl Fn(&PlanPoint) -> At,
) {
    let mut all: Vec<At> = points.iter().map(place).collect();
    let ring = all.len() > 3 && all.first() == all.last();
    if ring {
        all.pop();
    }
    if all.len() > 1 {
        drawing.polyline(layer, &all, ring);
    }
}

/// What piles keep away from, by its own shape without the clearance. Of a boundary without
/// end the part between the two points that were sent.
fn keep_out(drawing: &mut Drawing, thing: &KeepOut, place: &impl Fn(&PlanPoint) -> At) {
    let (points, closed) = match &thing.shape {
        KeepOutShape::Polygon(area) | KeepOutShape::Lot(area) => (area.corners.clone(), true),
        KeepOutShape::Line(line) => (line.points.clone(), false),
        KeepOutShape::Boundary(b) => (vec![b.from, b.to], false),
        KeepOutShape::Circle(c) => {
            let at = place(&c.centre);
            if c.radius.si() > 0.0 {
                drawing.circle(layers::KEEP_OUT, &at, c.radius.si());
            } else {
                drawing.point(layers::KEEP_OUT, &at);
            }
            (vec![c.centre], false)
        }
    };
    let all: Vec<At> = points.iter().map(place).collect();
    if all.len() > 1 {
        drawing.polyline(layers::KEEP_OUT, &all, closed);
    }
    if let Some(first) = all.first() {
        drawing.text(layers::KEEP_OUT, first, LABEL, thing.label.as_str());
    }
}

fn control_point(
    drawing: &mut Drawing,
    point: &ControlResidual,
    place: &impl Fn(&PlanPoint) -> At,
) {
    let at = place(&point.plan);
    drawing.point(layers::CONTROL, &at);
    let beside = moved(drawing, &at, BESIDE, BESIDE);
    drawing.text(layers::CONTROL, &beside, LABEL, &point.label);
}

fn piles(drawing: &mut Drawing, outcome: &Outcome, place: &impl Fn(&PlanPoint) -> At) {
    let mut kinds: Vec<&str> = Vec::new();
    for pile in &outcome.piles {
        let kind = type_of(pile);
        let index = kind.map(|k| match kinds.iter().position(|other| *other == k) {
            Some(found) => found,
            None => {
                kinds.push(k);
                kinds.len() - 1
            }
        });
        let layer = match (kind, index) {
            (Some(kind), Some(i)) => layer_of(drawing, kind, i),
            _ => layers::PILE.to_owned(),
        };
        let at = place(&pile.at);
        let mark = index.unwrap_or(0).min(MARKS.len() - 1);
        drawing.mark(&layer, mark, &at);
        let beside = moved(drawing, &at, BESIDE, BESIDE);
        drawing.text(layers::PILE_LABEL, &beside, LABEL, &pile.label);
    }
}

/// The layer of a type of pile; its number keeps apart what is alike in plain letters.
fn layer_of(drawing: &mut Drawing, kind: &str, index: usize) -> String {
    let layer = format!("PILE_{}_{}", index + 1, name(kind));
    drawing.layer(Layer {
        name: layer.clone().into(),
        colour: 1 + (index as u32) % 6,
    });
    layer
}

/// A place beside another, by lengths in metres.
fn moved(drawing: &Drawing, at: &At, right: f64, up: f64) -> At {
    let by = |text: &str, metres: f64| {
        let value = text.parse::<f64>().unwrap_or_default();
        number(value + drawing.size(metres))
    };
    At {
        x: by(&at.x, right),
        y: by(&at.y, up),
    }
}

/// The notes, below what is drawn.
fn notes(drawing: &mut Drawing, notes: &[&str]) {
    let (x, y) = drawing.corner();
    let (height, pitch) = (LABEL, 1.8 * LABEL);
    for (i, note) in notes.iter().enumerate() {
        let down = drawing.size(2.0 * pitch + i as f64 * pitch);
        let at = At {
            x: number(x),
            y: number(y - down),
        };
        drawing.text(layers::NOTE, &at, height, note);
    }
}
