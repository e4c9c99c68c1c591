//! Reads a sheet back as a stranger would, by an XML parser, and judges it: size of text,
//! everything on the page, no text on text. And plans to draw, made here.
#![allow(dead_code)]

pub mod decision;
pub mod frost;
pub mod job;
pub mod random_log;
pub mod record;
pub mod section;
pub mod strokes;

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::layout::{Outcome, Request};
use bearwell_engine::quantity::System;
use bearwell_papers::{layout_numbers_svg, layout_svg};
use serde_json::{Map, Value, json};

/// A text on the sheet with the room it takes.
#[derive(Debug, Clone)]
pub struct Text {
    pub text: String,
    pub size: f64,
    pub left: f64,
    pub right: f64,
    pub top: f64,
    pub bottom: f64,
}

/// What was read from a sheet.
#[derive(Debug)]
pub struct Sheet {
    pub width: f64,
    pub height: f64,
    pub texts: Vec<Text>,
    pub circles: usize,
    /// Paths that are filled black without a stroke: diamonds and the north arrow.
    pub black_paths: usize,
}

fn number(node: roxmltree::Node, name: &str) -> f64 {
    node.attribute(name)
        .and_then(|v| v.trim_end_matches("mm").parse().ok())
        .unwrap_or_else(|| panic!("{name} of {node:?}"))
}

/// Advances of the printable ASCII characters in DejaVu Sans, thousandths of the size: the
/// widest of the usual sans-serif fonts, read from its own table, apart from the drawing's.
const ADVANCES: [u16; 95] = [
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636,
    636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632,
    575, 775, 752, 295, 295, 656, 557, 863, 748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685,
    611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579,
    278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
];

/// Width of a text, mm.
fn width(text: &str, size: f64, bold: bool) -> f64 {
    let ems: f64 = text
        .chars()
        .map(|c| match c {
            ' '..='~' => f64::from(ADVANCES[c as usize - 32]) / 1000.0,
            '\u{b0}' => 0.5,
            _ => 1.0,
        })
        .sum();
    ems * size * if bold { 1.1 } else { 1.0 }
}

/// Reads a sheet; panics when it is not well-formed XML.
pub fn read(svg: &str) -> Sheet {
    let doc = roxmltree::Document::parse(svg).expect("well-formed XML");
    let root = doc.root_element();
    assert_eq!(root.tag_name().name(), "svg");
    let (w, h) = (number(root, "width"), number(root, "height"));
    let view: Vec<f64> = root
        .attribute("viewBox")
        .expect("viewBox")
        .split(' ')
        .map(|v| v.parse().expect("a number"))
        .collect();
    assert_eq!(view, [0.0, 0.0, w, h], "one user unit is one millimetre");
    let mut sheet = Sheet {
        width: w,
        height: h,
        texts: Vec::new(),
        circles: 0,
        black_paths: 0,
    };
    for node in root.descendants().filter(|n| n.is_element()) {
        match node.tag_name().name() {
            "text" => sheet.texts.push(text(node)),
            "circle" => sheet.circles += 1,
            "path" if node.attribute("fill") == Some("#000") => sheet.black_paths += 1,
            "svg" | "g" | "title" | "rect" | "line" | "polyline" | "path" => {}
            other => panic!("unexpected element {other}"),
        }
        inside(&sheet, node);
    }
    sheet
}

fn text(node: roxmltree::Node) -> Text {
    assert!(node.children().all(|c| c.is_text()), "no markup in a text");
    let text: String = node.text().unwrap_or_default().to_owned();
    let size = number(node, "font-size");
    let w = width(&text, size, node.attribute("font-weight").is_some());
    let (x, y) = (number(node, "x"), number(node, "y"));
    let left = match node.attribute("text-anchor") {
        None => x,
        Some("middle") => x - w / 2.0,
        Some("end") => x - w,
        Some(other) => panic!("anchor {other}"),
    };
    Text {
        text,
        size,
        left,
        right: left + w,
        top: y - 0.74 * size,
        bottom: y + 0.22 * size,
    }
}

/// Every coordinate of a shape lies on the page.
fn inside(sheet: &Sheet, node: roxmltree::Node) {
    for (names, limit) in [
        (["x", "x1", "x2", "cx"], sheet.width),
        (["y", "y1", "y2", "cy"], sheet.height),
    ] {
        for name in names {
            if node.attribute(name).is_some() {
                let v = number(node, name);
                assert!((0.0..=limit).contains(&v), "{name} = {v} of {node:?}");
            }
        }
    }
    if let Some(points) = node.attribute("points") {
        for pair in points.split(' ') {
            let (x, y) = pair.split_once(',').expect("x,y");
            let (x, y): (f64, f64) = (x.parse().expect("x"), y.parse().expect("y"));
            assert!((0.0..=sheet.width).contains(&x) && (0.0..=sheet.height).contains(&y));
        }
    }
}

/// The rules every sheet keeps.
pub fn judge(name: &str, svg: &str) -> Sheet {
    let sheet = read(svg);
    for t in &sheet.texts {
        // capitals are 0.716 of the size or more: 2.8 mm text has capitals of 2 mm
        assert!(t.size >= 2.8, "{name}: {t:?} is too small");
        assert!(!t.text.is_empty(), "{name}: an empty text");
        assert!(
            t.left >= 5.0
                && t.right <= sheet.width - 5.0
                && t.top >= 5.0
                && t.bottom <= sheet.height - 5.0,
            "{name}: {t:?} leaves the page"
        );
    }
    for (i, a) in sheet.texts.iter().enumerate() {
        for b in &sheet.texts[i + 1..] {
            let apart = a.right <= b.left + 0.01
                || b.right <= a.left + 0.01
                || a.bottom <= b.top + 0.01
                || b.bottom <= a.top + 0.01;
            assert!(apart, "{name}: {a:?} covers {b:?}");
        }
    }
    sheet
}

/// A pile to draw: label, x and y in feet, compression and tension in pounds-force.
pub type Pile = (String, f64, f64, f64, f64);

/// A plan to draw.
#[derive(Debug, Clone, Default)]
pub struct Plan {
    pub beams: Vec<(String, Vec<(f64, f64)>)>,
    pub piles: Vec<Pile>,
    /// Of every pile, lbf; none leaves the piles unjudged.
    pub capacity: Option<f64>,
    pub cautions: usize,
    /// Further members of the request and of the outcome.
    pub asked: Map<String, Value>,
    pub found: Map<String, Value>,
    /// Width of every beam, ft, drawn square to each straight run.
    pub width: Option<f64>,
    /// Openings of the first beam: from, to, ft along it, whether there is no beam.
    pub openings: Vec<(f64, f64, bool)>,
    /// Types of pile, taken in turn by the piles: label and capacity, lbf.
    pub types: Vec<(String, f64)>,
}

/// Edges of a straight run of beam.
fn edges(from: (f64, f64), to: (f64, f64), width: f64) -> Value {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let long = (dx * dx + dy * dy).sqrt().max(1e-9);
    let n = (-dy / long * width / 2.0, dx / long * width / 2.0);
    let edge = |side: f64| [from, to].map(|p| at(p.0 + side * n.0, p.1 + side * n.1));
    json!({"left": edge(1.0), "right": edge(-1.0)})
}

fn merge(into: &mut Value, members: &Map<String, Value>) {
    let object = into.as_object_mut().expect("an object");
    object.extend(members.clone());
}

pub fn at(x: f64, y: f64) -> Value {
    json!({"x": {"value": x, "unit": "ft"}, "y": {"value": y, "unit": "ft"}})
}

fn lbf(v: f64) -> Value {
    json!({"value": v, "unit": "lbf"})
}

impl Plan {
    /// Request and answer as the service would put them together.
    pub fn answer(&self) -> (Request, Answer<Outcome>) {
        let beams: Vec<_> = self
            .beams
            .iter()
            .map(|(label, points)| {
                json!({"label": label,
                       "points": points.iter().map(|p| at(p.0, p.1)).collect::<Vec<_>>()})
            })
            .collect();
        let given: Vec<_> = self
            .piles
            .iter()
            .map(|p| json!({"label": p.0, "at": at(p.1, p.2)}))
            .collect();
        let mut request = json!({
            "design_basis": {"allowable_stress": {"combinations": {"published": {"edition": "asce_7_16"}}}},
            "beams": beams,
            "piles": {"given": {"positions": given}},
        });
        if let Some(c) = self.capacity {
            request["pile_capacity"] =
                json!({"level": "allowable", "compression": lbf(c), "tension": lbf(c)});
        }
        if !self.types.is_empty() {
            let types: Vec<_> = self
                .types
                .iter()
                .map(|(label, c)| json!({"label": label, "compression": lbf(*c), "tension": lbf(*c)}))
                .collect();
            request["pile_types"] = json!({"level": "allowable", "types": types});
            request
                .as_object_mut()
                .expect("an object")
                .remove("pile_capacity");
        }
        let openings: Vec<_> = self
            .openings
            .iter()
            .map(|(from, to, no_beam)| {
                let kind = if *no_beam { "no_beam" } else { "load_free" };
                let ft = |v: f64| json!({"value": v, "unit": "ft"});
                json!({"from": ft(*from), "to": ft(*to), "kind": kind})
            })
            .collect();
        if !openings.is_empty() {
            request["beams"][0]["openings"] = json!(openings);
        }
        merge(&mut request, &self.asked);
        let answer = json!({
            "verdict": if self.fails().is_empty() { "accept" } else { "reject" },
            "verdict_reasons": self.fails().iter().map(|label| json!({
                "code": "compression", "subject": {"kind": "pile", "label": label},
                "detail": "utilisation above 1"})).collect::<Vec<_>>(),
            "result": self.outcome(&beams),
            "checks": self.fails().iter().map(|label| json!({
                "id": "compression", "subject": {"kind": "pile", "label": label},
                "status": "fail", "relation": "at_most", "governing": false,
                "source": {"id": "statics", "cite": "statics", "status": "derived"}})).collect::<Vec<_>>(),
            "warnings": [],
            "cautions": (0..self.cautions).map(|_| json!({"code": "local_code",
                "text": "The local code, its adopted edition and the building official's rulings govern; this service knows only what was sent."})).collect::<Vec<_>>(),
            "methods": [],
            "provenance": {"calculation_basis": "2026.1", "request_digest": "0123456789abcdef0123"},
        });
        (
            serde_json::from_value(request).expect("a request"),
            serde_json::from_value(answer).expect("an answer"),
        )
    }

    /// Labels of the piles over their capacity.
    pub fn fails(&self) -> Vec<&str> {
        let over = |p: &&Pile| self.capacity.is_some_and(|c| p.3.max(p.4) > c);
        self.piles.iter().filter(over).map(|p| &*p.0).collect()
    }

    fn outcome(&self, beams: &[Value]) -> Value {
        let ratio = |p: &Pile| self.capacity.map(|c| p.3.max(p.4) / c);
        let piles: Vec<_> = self
            .piles
            .iter()
            .enumerate()
            .map(|(i, p)| {
                let demand = |v| json!({"demand": lbf(v), "combination": "D", "supports": "rigid"});
                let mut pile = json!({"label": p.0, "at": at(p.1, p.2), "placed_by": "given",
                    "compression": demand(p.3), "tension": demand(p.4), "by_beam": [],
                    "rigid": {"max": lbf(p.3), "max_combination": "D",
                              "min": lbf(-p.4), "min_combination": "D"}});
                if !self.types.is_empty() {
                    pile["pile_type"] = json!(self.types[i % self.types.len()].0);
                }
                if let Some(u) = ratio(p) {
                    pile["utilisation_ratio"] = json!(u);
                }
                pile
            })
            .collect();
        let moment = json!({"moment": {"value": 0, "unit": "ft_lbf"}, "at": at(0.0, 0.0),
            "combination": "D", "supports": "rigid"});
        let beams: Vec<_> = beams
            .iter()
            .zip(&self.beams)
            .map(|(b, (_, line))| {
                let mut beam = json!({"label": b["label"], "points": b["points"],
                "length": {"value": 1, "unit": "ft"}, "sagging": moment, "hogging": moment,
                "shear": {"shear": lbf(0.0), "at": at(0.0, 0.0), "combination": "D", "supports": "rigid"}});
                if let Some(w) = self.width {
                    beam["edges"] = line.windows(2).map(|r| edges(r[0], r[1], w)).collect();
                }
                beam
            })
            .collect();
        let mut nearest: Option<f64> = None;
        for (i, a) in self.piles.iter().enumerate() {
            for b in &self.piles[i + 1..] {
                let (dx, dy) = (a.1 - b.1, a.2 - b.2);
                let d = (dx * dx + dy * dy).sqrt();
                nearest = Some(nearest.map_or(d, |n| n.min(d)));
            }
        }
        let total: f64 = self.piles.iter().map(|p| p.3).sum();
        let mut outcome = json!({
            "pile_count": self.piles.len(), "statics_residual_ratio": 0, "supports": ["rigid"],
            "piles": piles, "beams": beams,
            "combinations": [{"name": "D", "factors": [], "total_load": lbf(total), "total_reaction": lbf(total)}],
            "spacing": {"longest_overhang": {"value": 0, "unit": "ft"}},
        });
        if let Some(d) = nearest {
            outcome["spacing"]["nearest_piles"] =
                json!({"distance": {"value": d, "unit": "ft"}, "from": "a", "to": "b"});
        }
        merge(&mut outcome, &self.found);
        if let Some(u) = self.piles.iter().filter_map(ratio).reduce(f64::max) {
            outcome["max_utilisation_ratio"] = json!(u);
        }
        outcome
    }

    /// The sheet of this plan with the numbers of its piles alone.
    pub fn numbers(&self, system: System, paper: Paper) -> String {
        let (request, answer) = self.answer();
        layout_numbers_svg(&request, &answer, system, paper)
    }

    /// The sheet of this plan.
    pub fn sheet(&self, system: System, paper: Paper) -> String {
        let (request, answer) = self.answer();
        layout_svg(&request, &answer, system, paper)
    }
}
