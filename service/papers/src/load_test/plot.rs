//! Load against displacement: the measured curve, what was read after it, the elastic line,
//! the line of the criterion in force, a mark for each criterion, the failure load.

use bearwell_engine::load_test::{CodeStanding, FailureLoadKind};

use super::reading::{Pair, Subject, name, net};
use crate::chart::{Chart, Edge, Span};
use crate::panel::PITCH;
use crate::place::{Placed, Room};
use crate::svg::{Rect, SMALL, Style, Svg, width};
use crate::words;

/// Stroke of the first loading.
pub const LOADING: &str = "stroke=\"#000\" stroke-width=\"0.55\" stroke-linejoin=\"round\"";
/// Stroke of what was read after it.
pub const LATER: &str = "stroke=\"#000\" stroke-width=\"0.3\" stroke-dasharray=\"1.5 0.9\"";
/// Stroke of the elastic line.
pub const ELASTIC: &str = "stroke=\"#000\" stroke-width=\"0.3\" stroke-dasharray=\"4 0.8 0.6 0.8\"";
/// Stroke of the line of the criterion in force.
pub const OFFSET: &str = "stroke=\"#000\" stroke-width=\"0.35\" stroke-dasharray=\"3 1.2\"";
/// Stroke from the failure load to the axes.
pub const FAILURE: &str = "stroke=\"#000\" stroke-width=\"0.3\" stroke-dasharray=\"0.4 0.8\"";
/// Radius of the mark of a criterion, mm.
const MARK: f64 = 1.0;
/// Radius of the ring around the failure load, mm.
const RING: f64 = 1.9;
/// Least distance of two points that are both marked, mm.
const DOTS: f64 = 1.3;
/// How far beyond the rows the line of a criterion may stretch the axis.
const STRETCH: f64 = 3.0;

/// Gaps between a mark and its label, mm; the first one needs no line to it.
const GAPS: [f64; 8] = [0.9, 3.5, 7.0, 11.0, 15.0, 20.0, 26.0, 33.0];

/// How often the labels are placed anew where some find no room.
const TRIES: usize = 6;

/// Draws the chart; returns the letters of the criteria whose points found no room for a
/// label.
pub fn draw(svg: &mut Svg, s: Subject, frame: Rect) -> Vec<char> {
    let (first, later) = s.rows();
    let chart = chart(s, &first, &later, frame);
    let mut room = Room::new(chart.field.grown(-0.5));
    chart.draw(svg);
    lines(svg, s, &chart, &mut room);
    let way: Vec<_> = later.iter().map(|p| chart.at(*p)).collect();
    if way.len() > 1 {
        svg.polyline(&way, LATER);
        keep_off(&mut room, &way);
        dots(&way[1..], |at| cross(svg, at));
    }
    let way: Vec<_> = first.iter().map(|p| chart.at(*p)).collect();
    svg.polyline(&way, LOADING);
    keep_off(&mut room, &way);
    dots(&way[1..], |at| dot(svg, at));
    failure(svg, s, &chart, &mut room);
    criteria(svg, s, &chart, &mut room)
}

fn chart(s: Subject, first: &[Pair], later: &[Pair], frame: Rect) -> Chart {
    let both = || first.iter().chain(later);
    let widest = both().fold(0.0, |most: f64, p| most.max(p.0));
    let greatest = both().fold(0.0, |most: f64, p| most.max(p.1));
    // so far that the line of the criterion comes to the largest load
    let reach = s
        .lined()
        .and_then(|c| c.offset.map(|x| (x.si(), net(c.criterion))));
    let reach = reach.map_or(0.0, |(x, net)| {
        x + if net { greatest / s.stiffness() } else { 0.0 }
    });
    let reach = if reach <= STRETCH * widest {
        reach
    } else {
        0.0
    };
    let x = format!("displacement, {}", words::size_unit(s.system));
    let y = format!("load, {}", words::force_unit(s.system));
    Chart::new(
        frame,
        Edge::Bottom,
        Span {
            title: &x,
            least: 0.0,
            most: 1.02 * widest.max(reach),
            factor: words::size_factor(s.system),
            reversed: false,
        },
        Span {
            title: &y,
            least: 0.0,
            most: 1.03 * greatest,
            factor: words::force_factor(s.system),
            reversed: false,
        },
    )
}

/// Squares along a way that no text may cover.
fn keep_off(room: &mut Room, way: &[(f64, f64)]) {
    for pair in way.windows(2) {
        let ((x, y), (to_x, to_y)) = (pair[0], pair[1]);
        let long = f64::max((to_x - x).abs(), (to_y - y).abs());
        let count = (long / 0.7).ceil().max(1.0) as u32;
        for i in 0..=count {
            let share = f64::from(i) / f64::from(count);
            room.take(square(
                (x + share * (to_x - x), y + share * (to_y - y)),
                0.5,
            ));
        }
    }
}

fn square((x, y): (f64, f64), reach: f64) -> Rect {
    Rect {
        x: x - reach,
        y: y - reach,
        w: 2.0 * reach,
        h: 2.0 * reach,
    }
}

/// Each point of a way that is far enough from the one marked before it.
fn dots(way: &[(f64, f64)], mut mark: impl FnMut((f64, f64))) {
    let mut before: Option<(f64, f64)> = None;
    for at in way {
        let near = |b: (f64, f64)| f64::max((at.0 - b.0).abs(), (at.1 - b.1).abs()) < DOTS;
        if !before.is_some_and(near) {
            mark(*at);
            before = Some(*at);
        }
    }
}

/// A point of the first loading.
pub fn dot(svg: &mut Svg, at: (f64, f64)) {
    svg.circle(at, 0.5, "fill=\"#000\"");
}

/// A point read after it.
pub fn cross(svg: &mut Svg, (x, y): (f64, f64)) {
    let look = "stroke=\"#000\" stroke-width=\"0.25\"";
    svg.line((x - 0.7, y - 0.7), (x + 0.7, y + 0.7), look);
    svg.line((x - 0.7, y + 0.7), (x + 0.7, y - 0.7), look);
}

/// The mark of a criterion: full where the building code names it.
pub fn mark(svg: &mut Svg, standing: CodeStanding, at: (f64, f64)) {
    let fill = match standing {
        CodeStanding::NamedByCode => "#000",
        CodeStanding::NeedsApproval => "#fff",
    };
    let look = format!("fill=\"{fill}\" stroke=\"#000\" stroke-width=\"0.35\"");
    svg.circle(at, MARK, &look);
}

/// What stands for a criterion, by its place in the list.
pub fn letter(place: usize) -> char {
    // eleven criteria, so far from the last letter
    (b'A'..=b'Z').nth(place).map_or('?', char::from)
}

/// The ring around the failure load.
pub fn ring(svg: &mut Svg, at: (f64, f64), radius: f64) {
    svg.circle(at, radius, "stroke=\"#000\" stroke-width=\"0.45\"");
}

/// The elastic line and the line of the criterion in force, as far as the field goes.
fn lines(svg: &mut Svg, s: Subject, chart: &Chart, room: &mut Room) {
    let far = 2.0 * chart.y.range().1;
    let elastic = far / s.stiffness();
    let mut draw = |from: Pair, to: Pair, look: &str| {
        if let Some((a, b)) = chart.clipped(from, to) {
            svg.line(a, b, look);
            keep_off(room, &[a, b]);
        }
    };
    draw((0.0, 0.0), (elastic, far), ELASTIC);
    if let Some(line) = s.lined()
        && let Some(x) = line.offset
    {
        let lean = if net(line.criterion) { elastic } else { 0.0 };
        draw((x.si(), 0.0), (x.si() + lean, far), OFFSET);
    }
}

/// The failure load: a ring and lines to the axes.
fn failure(svg: &mut Svg, s: Subject, chart: &Chart, room: &mut Room) {
    let failure = &s.outcome().failure;
    let (x, y) = chart.at((failure.displacement.si(), failure.load.si()));
    let r = chart.field;
    let mut draw = |from: (f64, f64), to: (f64, f64)| {
        svg.line(from, to, FAILURE);
        keep_off(room, &[from, to]);
    };
    if x - r.x > RING {
        draw((x - RING, y), (r.x, y));
    }
    if r.bottom() - y > RING {
        draw((x, y + RING), (x, r.bottom()));
    }
    ring(svg, (x, y), RING);
    room.take(square((x, y), RING));
}

/// What the ring says, the longest first.
fn ring_texts(s: Subject) -> Vec<String> {
    let failure = &s.outcome().failure;
    let load = words::force_told(failure.load, s.system);
    match (failure.kind, failure.criterion) {
        (FailureLoadKind::Criterion, Some(criterion)) => {
            let all = s.outcome().criteria.iter();
            let letter = letter(all.take_while(|c| c.criterion != criterion).count());
            vec![
                format!("{letter} {}: failure load {load}", name(criterion)),
                format!("{letter} failure load {load}"),
                format!("{letter} {load}"),
            ]
        }
        (FailureLoadKind::LowerBound, _) => vec![
            format!("largest load {load}; it did not fail"),
            format!("largest load {load}"),
            load,
        ],
        (FailureLoadKind::NotDetermined, _) => vec![
            format!("largest load {load}; failure not determined"),
            format!("largest load {load}"),
            load,
        ],
        _ => vec![format!("failure load {load}, the peak"), load],
    }
}

/// A text on white, so that the grid does not run through it.
fn write(svg: &mut Svg, text: &str, place: Rect, style: Style) {
    svg.rect(place, "fill=\"#fff\"");
    let base = place.y + place.h / 2.0 + 0.36 * SMALL;
    svg.text(place.x + 0.5, base, text, style);
}

/// A label to be placed: what it is of, its texts in order of preference, its mark.
struct Label {
    /// Letter of its criterion; none for the ring.
    letter: Option<char>,
    texts: Vec<String>,
    at: (f64, f64),
    radius: f64,
    style: Style,
}

/// Marks with labels; the letters of those without a label.
fn criteria(svg: &mut Svg, s: Subject, chart: &Chart, room: &mut Room) -> Vec<char> {
    let failure = &s.outcome().failure;
    let at = chart.at((failure.displacement.si(), failure.load.si()));
    let mut labels = vec![Label {
        letter: None,
        texts: ring_texts(s),
        at,
        radius: RING,
        style: Style::BOLD,
    }];
    for (i, c) in s.outcome().criteria.iter().enumerate() {
        let (Some(load), Some(displacement)) = (c.load, c.displacement) else {
            continue;
        };
        let at = chart.at((displacement.si(), load.si()));
        mark(svg, c.code_standing, at);
        room.take(square(at, MARK + 0.2));
        // the ring says what it is of
        if failure.criterion != Some(c.criterion) {
            labels.push(Label {
                letter: Some(letter(i)),
                texts: vec![
                    format!("{} {}", letter(i), name(c.criterion)),
                    letter(i).to_string(),
                ],
                at,
                radius: MARK,
                style: Style::PLAIN,
            });
        }
    }
    // from left to right behind the ring
    labels[1..].sort_by(|a, b| a.at.0.total_cmp(&b.at.0));
    let order: Vec<usize> = (0..labels.len()).collect();
    let placed = best(&labels, order, room);
    for (i, text, place) in &placed {
        if let Some((from, to)) = place.leader {
            svg.line(from, to, "stroke=\"#000\" stroke-width=\"0.15\"");
        }
        write(svg, &labels[*i].texts[*text], place.rect, labels[*i].style);
    }
    let found = |i: &usize| placed.iter().any(|p| p.0 == *i);
    let left = (0..labels.len()).filter(|i| !found(i));
    left.filter_map(|i| labels[i].letter).collect()
}

/// Labels placed: which one, which of its texts, where.
type PlacedLabels = Vec<(usize, usize, Placed)>;

/// The labels in an order that leaves out the fewest: those left out come first the next time.
fn best(labels: &[Label], mut order: Vec<usize>, room: &Room) -> PlacedLabels {
    let mut most = PlacedLabels::new();
    for _ in 0..TRIES {
        let mut room = room.clone();
        let placed: PlacedLabels = order
            .iter()
            .filter_map(|i| {
                let (text, place) = place(&labels[*i], &mut room)?;
                Some((*i, text, place))
            })
            .collect();
        let left = |i: &usize| placed.iter().all(|p| p.0 != *i);
        let (first, rest): (Vec<usize>, Vec<usize>) = order.iter().partition(|i| left(i));
        if placed.len() > most.len() {
            most = placed;
        }
        if first.is_empty() {
            break;
        }
        order = [first, rest].concat();
    }
    most
}

/// A place for one of the texts of a label.
fn place(label: &Label, room: &mut Room) -> Option<(usize, Placed)> {
    label.texts.iter().enumerate().find_map(|(i, text)| {
        let size = (width(text, label.style) + 1.0, PITCH);
        // there is room to the right of a curve and below it
        let placed = room.label_at(label.at, label.radius, size, (0.7, 0.7), &GAPS)?;
        Some((i, placed))
    })
}
