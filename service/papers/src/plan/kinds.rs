//! Types of pile on a plan: each that is used has a mark of its own, or a number where there
//! are more of them than marks.

use std::collections::BTreeSet;

use bearwell_engine::layout::LayoutPile;
use bearwell_engine::math;

use crate::marks;
use crate::panel::Subject;
use crate::plan::shape::Spot;
use crate::svg::{Svg, mm};
use crate::words;

/// The outline of a mark, around its dial.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// The dial alone.
    Round,
    /// A square.
    Square,
    /// A triangle with its point up.
    Up,
    /// A triangle with its point down.
    Down,
    /// Four spokes outwards.
    Spokes,
}

/// Forms in the order in which types take them; the last one is for all further types.
const FORMS: [Form; 5] = [
    Form::Round,
    Form::Square,
    Form::Up,
    Form::Down,
    Form::Spokes,
];

impl Form {
    /// How far it reaches from its middle, for a dial of radius 1.
    pub fn reach(self) -> f64 {
        match self {
            Form::Round => 1.0,
            Form::Square => 1.15,
            Form::Up | Form::Down => 1.75,
            Form::Spokes => 1.6,
        }
    }

    /// Draws it around a dial of radius `r`.
    pub fn draw(self, svg: &mut Svg, at: Spot, r: f64, utilisation: Option<f64>) {
        let pen = "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.3\"";
        let (x, y) = at;
        match self {
            Form::Round => {}
            Form::Square => {
                let half = 1.15 * r;
                let d = format!(
                    "M{} {}h{s}v{s}h-{s}Z",
                    mm(x - half),
                    mm(y - half),
                    s = mm(2.0 * half)
                );
                svg.path(&d, pen);
            }
            Form::Up | Form::Down => {
                let way = if self == Form::Up { -1.0 } else { 1.0 };
                let (tip, base, half) = (1.75 * r, 1.05 * r, 1.65 * r);
                let d = format!(
                    "M{} {}L{} {}H{}Z",
                    mm(x),
                    mm(y + way * tip),
                    mm(x + half),
                    mm(y - way * base),
                    mm(x - half)
                );
                svg.path(&d, pen);
            }
            Form::Spokes => {
                let (near, far) = (r, 1.6 * r);
                let d = format!(
                    "M{a} {y}H{b}M{c} {y}H{e}M{x} {f}V{g}M{x} {h}V{i}",
                    a = mm(x - far),
                    b = mm(x - near),
                    c = mm(x + near),
                    e = mm(x + far),
                    f = mm(y - far),
                    g = mm(y - near),
                    h = mm(y + near),
                    i = mm(y + far),
                    x = mm(x),
                    y = mm(y)
                );
                svg.path(&d, "stroke=\"#000\" stroke-width=\"0.5\"");
            }
        }
        let inner = match self {
            Form::Up | Form::Down => 0.85 * r,
            _ => r,
        };
        marks::dial(svg, at, inner, utilisation);
    }
}

/// A type that is on the sheet.
#[derive(Debug, Clone)]
pub struct Kind {
    /// Its label.
    pub label: String,
    /// Its mark.
    pub form: Form,
    /// Its number, where the mark alone does not tell it or is not drawn.
    pub number: usize,
    /// What it is, for the key.
    pub about: String,
}

/// The types that are on the sheet, in the order of the request.
#[derive(Debug, Clone, Default)]
pub struct Kinds {
    all: Vec<Kind>,
}

impl Kinds {
    /// Those of an answer.
    pub fn of(s: Subject) -> Self {
        let piles = &s.answer.result.piles;
        let used: BTreeSet<&str> = piles
            .iter()
            .filter_map(|p| p.pile_type.as_deref())
            .collect();
        let Some(types) = &s.request.pile_types else {
            return Self::default();
        };
        let unit = words::force_unit(s.system);
        let known = types
            .types
            .iter()
            .filter(|t| used.contains(t.label.as_str()));
        let all = known.enumerate().map(|(i, t)| {
            let of_it = |p: &&LayoutPile| p.pile_type.as_deref() == Some(t.label.as_str());
            let count = piles.iter().filter(of_it).count();
            Kind {
                label: t.label.as_str().to_owned(),
                form: FORMS[i.min(FORMS.len() - 1)],
                number: i + 1,
                about: format!(
                    "{}: {} {unit} down, {} up; {} pile{}",
                    t.label.as_str(),
                    words::force(t.compression, s.system),
                    words::force(t.tension, s.system),
                    words::count(count),
                    if count == 1 { "" } else { "s" }
                ),
            }
        });
        Self { all: all.collect() }
    }

    /// All of them.
    pub fn all(&self) -> &[Kind] {
        &self.all
    }

    /// Whether a mark needs a number beside it.
    pub fn numbered(&self) -> bool {
        self.all.len() > FORMS.len()
    }

    fn kind(&self, pile: &LayoutPile) -> Option<&Kind> {
        let label = pile.pile_type.as_deref()?;
        self.all.iter().find(|k| k.label == label)
    }

    /// The mark of a pile.
    pub fn form(&self, pile: &LayoutPile) -> Form {
        self.kind(pile).map_or(Form::Round, |k| k.form)
    }

    /// The number of a pile's type, where there is more than one.
    pub fn number(&self, pile: &LayoutPile) -> Option<usize> {
        let kind = self.kind(pile)?;
        (self.all.len() > 1).then_some(kind.number)
    }

    /// The label of a pile, with the number of its type where the mark does not tell it:
    /// it is over a limit, or its type shares a mark.
    pub fn name(&self, pile: &LayoutPile, over: bool) -> String {
        match self.number(pile) {
            Some(n) if over || (self.numbered() && n >= FORMS.len()) => {
                format!("{} [{n}]", pile.label)
            }
            None if !self.all.is_empty() && pile.pile_type.is_none() => {
                format!("{} [-]", pile.label)
            }
            _ => pile.label.clone(),
        }
    }
}

/// A ring around a mark: the pile is pulled at in some combination.
pub fn uplift(svg: &mut Svg, at: Spot, reach: f64) {
    svg.circle(at, reach + RING, "stroke=\"#000\" stroke-width=\"0.25\"");
}

/// How far the ring of uplift stands off a mark, mm.
pub const RING: f64 = 0.55;

/// Radius of a ring around the corners of a form.
pub fn ring_reach(form: Form, r: f64) -> f64 {
    match form {
        Form::Square => 1.15 * r * math::hypot(1.0, 1.0),
        Form::Up | Form::Down => 2.0 * r,
        other => other.reach() * r,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_form_looks_different() {
        let mut seen: Vec<String> = Vec::new();
        for form in FORMS {
            let mut svg = Svg::new(20.0, 20.0, "");
            form.draw(&mut svg, (10.0, 10.0), 1.8, Some(0.4));
            let text = svg.finish();
            assert!(!seen.contains(&text), "{form:?}");
            seen.push(text);
        }
    }
}
