//! Piles of a plan: their marks, what stands beside them, the distances between them.

use bearwell_engine::layout::{LayoutPile, Outcome, PlanPoint};
use bearwell_engine::math;
use bearwell_engine::quantity::{Length, System};

use crate::figure::{Figure, Notes};
use crate::marks;
use crate::page::View;
use crate::panel::Subject;
use crate::place::{Placed, Room};
use crate::plan::beams::{BAND, Beam, LABEL_ROOM, direction, halves, widest};
use crate::plan::kinds::{Form, Kinds, RING, ring_reach, uplift};
use crate::svg::{Anchor, LINE, Rect, SMALL, Style, Svg, fitted, width};
use crate::words;

/// Most piles or straight runs with distances written beside them; a sheet has no room
/// for more.
const DISTANCES_UP_TO: usize = 400;

/// How often labels are placed anew, those without room first.
const TRIES: usize = 5;

/// Radius of the marks: smaller where piles stand close on paper.
pub fn radius(outcome: &Outcome, view: &View, kinds: &Kinds) -> f64 {
    let nearest = outcome.spacing.nearest_piles.as_ref();
    let gap = nearest.map_or(f64::MAX, |p| p.distance.si() * view.factor);
    let share = if kinds.all().len() > 1 { 0.28 } else { 0.42 };
    (share * gap).clamp(0.3, 1.8)
}

/// Whether a pile is pulled at.
pub fn pulled(pile: &LayoutPile) -> bool {
    pile.tension.demand.si() > 0.0
}

/// Half the room that the mark of a pile takes.
fn reach(figure: &Figure, pile: &LayoutPile) -> f64 {
    let r = figure.radius;
    let form = form(figure, pile);
    let own = if figure.failed.contains(&pile.label) {
        1.45 * r
    } else {
        form.reach() * r
    };
    if pulled(pile) {
        own.max(ring(figure, pile) + RING)
    } else {
        own
    }
}

fn form(figure: &Figure, pile: &LayoutPile) -> Form {
    if figure.failed.contains(&pile.label) {
        Form::Round
    } else {
        figure.kinds.form(pile)
    }
}

/// Radius around the mark inside of its ring.
fn ring(figure: &Figure, pile: &LayoutPile) -> f64 {
    if figure.failed.contains(&pile.label) {
        1.45 * figure.radius
    } else {
        ring_reach(figure.kinds.form(pile), figure.radius)
    }
}

/// Draws the marks and takes their room.
pub fn draw(svg: &mut Svg, outcome: &Outcome, view: &View, figure: &Figure, room: &mut Room) {
    for pile in &outcome.piles {
        let at = view.at(&pile.at);
        let reach = reach(figure, pile);
        room.take(Rect {
            x: at.0 - reach,
            y: at.1 - reach,
            w: 2.0 * reach,
            h: 2.0 * reach,
        });
        if figure.failed.contains(&pile.label) {
            marks::over_limit(svg, at, figure.radius);
        } else {
            let form = figure.kinds.form(pile);
            form.draw(svg, at, figure.radius, pile.utilisation_ratio);
        }
        if pulled(pile) {
            uplift(svg, at, ring(figure, pile));
        }
    }
}

/// The lines of text of a pile, label first.
fn lines(pile: &LayoutPile, system: System, figure: &Figure) -> Vec<(String, Style)> {
    let bold = Style::BOLD.at(Anchor::Middle);
    let plain = Style::PLAIN.at(Anchor::Middle);
    let name = figure.kinds.name(pile, figure.failed.contains(&pile.label));
    let mut lines = vec![(fitted(&name, LABEL_ROOM, bold), bold)];
    if figure.notes == Notes::Numbers {
        return lines;
    }
    lines.push((words::force(pile.compression.demand, system), plain));
    if pulled(pile) {
        lines.push((
            format!("up {}", words::force(pile.tension.demand, system)),
            plain,
        ));
    }
    if let Some(u) = pile.utilisation_ratio {
        lines.push((format!("({})", words::utilisation(u)), plain));
    }
    lines
}

/// A pile with the lines that are to stand beside it.
type Wanted<'a> = (&'a LayoutPile, Vec<(String, Style)>);

/// What of a pile found room: how many of its lines, and where.
type Found = (usize, Option<Placed>);

/// Places the lines of all piles in their order: all lines where there is room, else the
/// label; or labels alone.
fn place(
    order: &[Wanted],
    off: &dyn Fn(&LayoutPile) -> f64,
    view: &View,
    alone: bool,
    room: &mut Room,
) -> Vec<Found> {
    order
        .iter()
        .map(|(pile, all)| {
            let at = view.at(&pile.at);
            let outward = direction((view.paper.0, view.paper.1), at);
            let wanted = if alone { vec![1] } else { vec![all.len(), 1] };
            let found = wanted.into_iter().find_map(|count| {
                let lines = &all[..count];
                let w = lines.iter().map(|(t, s)| width(t, *s)).fold(0.0, f64::max) + 1.6;
                let h = lines.len() as f64 * LINE * SMALL;
                // a lone label far away tells little, but more than none
                let leader = lines.len() > 1 || alone;
                Some((count, room.label(at, off(pile), (w, h), outward, leader)?))
            });
            found.map_or((0, None), |(count, placed)| (count, Some(placed)))
        })
        .collect()
}

/// Label, loads and utilisation beside every pile, as far as there is room; piles over a
/// limit choose first. Where that leaves piles without a label, all have labels alone.
pub fn texts(
    svg: &mut Svg,
    s: Subject,
    view: &View,
    beams: &[Beam],
    figure: &mut Figure,
    room: &mut Room,
) {
    let mut piles: Vec<&LayoutPile> = s.answer.result.piles.iter().collect();
    piles.sort_by_key(|p| !figure.failed.contains(&p.label));
    let mut order: Vec<_> = piles
        .into_iter()
        .map(|p| (p, lines(p, s.system, figure)))
        .collect();
    let halves = halves(beams);
    let wide = widest(beams);
    let off = |pile: &LayoutPile| {
        let own = pile
            .by_beam
            .iter()
            .filter_map(|b| halves.get(b.beam.as_str()));
        let half = match pile.by_beam.is_empty() {
            true => wide,
            false => own.fold(0.0_f64, |m, h| m.max(*h)).min(wide),
        };
        // clear of the edges of a beam that is drawn to scale
        reach(figure, pile).max(1.42 * half - 0.6)
    };
    let mut full = room.clone();
    let mut found = place(&order, &off, view, false, &mut full);
    let missing = |found: &[Found]| found.iter().filter(|f| f.0 == 0).count();
    let mut used = full;
    let mut tried = order.clone();
    for _ in 0..TRIES {
        if missing(&found) == 0 {
            break;
        }
        let mut sparse = room.clone();
        let labels = place(&tried, &off, view, true, &mut sparse);
        // who found no room chooses first the next time
        let mut next: Vec<(bool, Wanted)> = tried
            .iter()
            .zip(&labels)
            .map(|(pile, found)| (found.0 > 0, pile.clone()))
            .collect();
        next.sort_by_key(|(told, _)| *told);
        if missing(&labels) < missing(&found) {
            (order, found, used) = (tried, labels, sparse);
        }
        tried = next.into_iter().map(|(_, pile)| pile).collect();
    }
    *room = used;
    for ((pile, all), (count, placed)) in order.iter().zip(&found) {
        if *count < all.len() {
            figure.short.insert(pile.label.clone());
        }
        let Some(placed) = placed else {
            figure.nameless_count += 1;
            continue;
        };
        write(
            svg,
            &all[..*count],
            placed,
            figure.failed.contains(&pile.label),
        );
    }
}

fn write(svg: &mut Svg, lines: &[(String, Style)], placed: &Placed, over: bool) {
    if let Some((from, to)) = placed.leader {
        svg.line(from, to, "stroke=\"#000\" stroke-width=\"0.2\"");
    }
    if over {
        svg.rect(
            placed.rect,
            "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.35\"",
        );
    } else if placed.covers > 0 {
        svg.rect(placed.rect, "fill=\"#fff\"");
    }
    let x = placed.rect.x + placed.rect.w / 2.0;
    for (i, (text, style)) in lines.iter().enumerate() {
        let y = placed.rect.y + (i as f64 + 0.76) * LINE * SMALL;
        svg.text(x, y, text, *style);
    }
}

/// Distances between neighbouring piles along each straight run, where there is room.
pub fn distances(
    svg: &mut Svg,
    outcome: &Outcome,
    view: &View,
    system: System,
    beams: &[Beam],
    room: &mut Room,
) {
    let run_count: usize = outcome.beams.iter().map(|b| b.points.len()).sum();
    if outcome.piles.len() > DISTANCES_UP_TO || run_count > DISTANCES_UP_TO {
        return;
    }
    let style = Style::PLAIN.at(Anchor::Middle);
    let halves = halves(beams);
    for beam in &outcome.beams {
        let half = halves.get(beam.label.as_str()).copied().unwrap_or(BAND);
        for run in beam.points.windows(2) {
            let on_run = stations(&run[0], &run[1], &outcome.piles);
            for pair in on_run.windows(2) {
                let metres = Length::from_si(pair[1] - pair[0]);
                let text = format!(
                    "{} {}",
                    words::length(metres, system),
                    words::length_unit(system)
                );
                let w = width(&text, style);
                let on_paper = metres.si() * view.factor;
                if on_paper < w + 2.0 * 1.8 + 1.0 {
                    continue;
                }
                let (from, to) = (view.at(&run[0]), view.at(&run[1]));
                let d = direction(from, to);
                let middle = (pair[0] + pair[1]) / 2.0 * view.factor;
                let at = (from.0 + d.0 * middle, from.1 + d.1 * middle);
                let size = (w, LINE * SMALL);
                // the side towards the middle of the plan: loads stand on the other one
                let inward = direction(at, view.paper);
                if let Some(place) = room.near(at, half - 0.5, size, inward)
                    && place.covers == 0
                {
                    room.keep(&place);
                    let r = place.rect;
                    svg.text(r.x + r.w / 2.0, r.y + 0.76 * LINE * SMALL, &text, style);
                }
            }
        }
    }
}

/// Distances (m) from the start of a run at which piles stand on it, in order.
fn stations(from: &PlanPoint, to: &PlanPoint, piles: &[LayoutPile]) -> Vec<f64> {
    let (dx, dy) = ((to.x - from.x).si(), (to.y - from.y).si());
    let long = math::hypot(dx, dy);
    if long < 1e-6 {
        return Vec::new();
    }
    let mut at: Vec<f64> = piles
        .iter()
        .filter_map(|p| {
            let (px, py) = ((p.at.x - from.x).si(), (p.at.y - from.y).si());
            let along = (px * dx + py * dy) / long;
            let off = (px * dy - py * dx) / long;
            // as near as a pile may be to a beam that carries it, and a little more
            (off.abs() <= 0.004 && (-0.004..=long + 0.004).contains(&along)).then_some(along)
        })
        .collect();
    at.sort_by(f64::total_cmp);
    at
}
