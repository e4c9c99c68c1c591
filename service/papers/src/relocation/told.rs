//! Events, places and changes in words, for the table and for the column beside the drawings.

use bearwell_engine::quantity::{Force, Length, Moment, Shown, Size, System};
use bearwell_engine::relocation::{
    FeasibleOffset, FeasibleStretch, ForceChange, RelocationEvent, ResidualCapacity, WayOutKind,
};

use crate::words;

/// A length with its unit.
pub fn length(l: Length, system: System) -> String {
    format!(
        "{} {}",
        words::length(l, system),
        words::length_unit(system)
    )
}

/// A moment with its unit.
pub fn moment(m: Moment, system: System) -> String {
    let decimals = match system {
        System::Si => 2,
        System::UsCustomary => 0,
    };
    let unit = Moment::ROLE.unit(system);
    let name = match system {
        System::Si => "kN m",
        System::UsCustomary => "ft-lbf",
    };
    format!("{} {name}", words::grouped(m.si() / unit.factor, decimals))
}

/// A part as a change in percent, with its sign.
pub fn change(ratio: f64) -> String {
    let percent = words::grouped(100.0 * ratio, 1);
    let sign = if percent.starts_with('-') { "" } else { "+" };
    format!("{sign}{percent} %")
}

/// A force before and after with the unit as given; nothing where neither is there.
pub fn forces(f: &ForceChange, unit: &str, system: System) -> Option<String> {
    let shown = |f: Force| words::force(f, system);
    Some(match (f.before, f.after) {
        (Some(before), Some(after)) => {
            let by = f
                .change_ratio
                .map_or(String::new(), |c| format!(" ({})", change(c)));
            format!("{} to {}{unit}{by}", shown(before), shown(after))
        }
        (Some(before), None) => format!("{}{unit} to nothing", shown(before)),
        (None, Some(after)) => format!("now {}{unit}", shown(after)),
        (None, None) => return None,
    })
}

/// What happened, or is to be done.
pub fn event(event: &RelocationEvent, system: System) -> String {
    match event {
        RelocationEvent::Moved(e) => {
            let mut parts = Vec::new();
            if let Some(along) = e.along.filter(|a| a.si() != 0.0) {
                let beam = e
                    .beam
                    .as_ref()
                    .map_or(String::new(), |b| format!(" {}", b.as_str()));
                let way = if along.si() < 0.0 { "back " } else { "" };
                parts.push(format!(
                    "{} {way}along{beam}",
                    length(Length::from_si(along.si().abs()), system)
                ));
            }
            parts.extend(e.off_line.map(|off| beside(off, system)));
            if let Some(r) = &e.residual {
                parts.push(residual(r, system));
            }
            if parts.is_empty() {
                parts.push("where it is".to_owned());
            }
            format!("{} moved: {}", e.pile.as_str(), parts.join(", "))
        }
        RelocationEvent::StoppedShort(e) => {
            let depth = e.depth.map_or(String::new(), |d| {
                format!(" at {}", words::depth_told(d, system))
            });
            let left = match &e.residual {
                Some(r) => residual(r, system),
                None => "nothing to count on".to_owned(),
            };
            format!("{} stopped short{depth}: {left}", e.pile.as_str())
        }
        RelocationEvent::Replaced(e) => {
            let mut parts = Vec::new();
            if let Some(kind) = &e.pile_type {
                parts.push(kind.as_str().to_owned());
            }
            if let Some(c) = e.compression {
                parts.push(format!("{} down", words::force_told(c, system)));
            }
            if let Some(t) = e.tension {
                parts.push(format!("{} up", words::force_told(t, system)));
            }
            if parts.is_empty() {
                parts.push("another stiffness".to_owned());
            }
            format!("{} replaced: {}", e.pile.as_str(), parts.join(", "))
        }
        RelocationEvent::Omitted(e) => format!("{} left out", e.pile.as_str()),
        RelocationEvent::Added(e) => {
            let label = e.pile.label.as_ref().map_or("a pile", |l| l.as_str());
            let (x, y) = (e.pile.at.x, e.pile.at.y);
            let off = e
                .pile
                .off_line
                .filter(|o| o.si() != 0.0)
                .map_or(String::new(), |o| format!(", {}", beside(o, system)));
            format!(
                "{label} added at {}, {} {}{off}",
                words::length(x, system),
                words::length(y, system),
                words::length_unit(system)
            )
        }
        RelocationEvent::Strengthened(e) => {
            let mut parts = Vec::new();
            if let Some(m) = &e.moment_capacity {
                parts.push(format!(
                    "{} sagging, {} hogging",
                    moment(m.sagging, system),
                    moment(m.hogging, system)
                ));
            }
            if let Some(v) = e.shear_capacity {
                parts.push(format!("{} shear", words::force_told(v, system)));
            }
            if let Some(t) = e.torsion_capacity {
                parts.push(format!("{} torsion", moment(t, system)));
            }
            format!("beam {} made for {}", e.beam.as_str(), parts.join(", "))
        }
    }
}

/// A distance off the line, with the side.
fn beside(off: Size, system: System) -> String {
    if off.si() == 0.0 {
        return "on its line".to_owned();
    }
    let side = if off.si() > 0.0 { "left" } else { "right" };
    let by = words::size_told(Size::from_si(off.si().abs()), system);
    format!("{by} {side} of its line")
}

fn residual(r: &ResidualCapacity, system: System) -> String {
    format!(
        "{} down, {} up left",
        words::force_told(r.compression, system),
        words::force_told(r.tension, system)
    )
}

/// Why, in the caller's words.
pub fn why(event: &RelocationEvent) -> Option<&str> {
    let why = match event {
        RelocationEvent::Moved(e) => &e.why,
        RelocationEvent::StoppedShort(e) => &e.why,
        RelocationEvent::Replaced(e) => &e.why,
        RelocationEvent::Omitted(e) => &e.why,
        RelocationEvent::Added(e) => &e.why,
        RelocationEvent::Strengthened(e) => &e.why,
    };
    why.as_ref().map(|w| w.as_str())
}

/// Label of the pile that an event is about.
pub fn pile_of(event: &RelocationEvent) -> Option<&str> {
    match event {
        RelocationEvent::Moved(e) => Some(e.pile.as_str()),
        RelocationEvent::StoppedShort(e) => Some(e.pile.as_str()),
        RelocationEvent::Replaced(e) => Some(e.pile.as_str()),
        RelocationEvent::Omitted(e) => Some(e.pile.as_str()),
        RelocationEvent::Added(e) => e.pile.label.as_ref().map(|l| l.as_str()),
        RelocationEvent::Strengthened(_) => None,
    }
}

/// A kind of way out.
pub fn kind(kind: WayOutKind) -> &'static str {
    match kind {
        WayOutKind::LeaveOut => "Leave it out",
        WayOutKind::ShiftAlong => "Shift along the beam",
        WayOutKind::ShiftOff => "Shift off the line",
        WayOutKind::StraddlingPair => "Two piles in its stead",
        WayOutKind::LargerPiles => "Larger piles",
        WayOutKind::ExtraPile => "One more pile",
        WayOutKind::StrongerBeam => "Stronger beam",
    }
}

/// Stretches along beams, from the first point of each.
pub fn stretches(all: &[FeasibleStretch], system: System) -> Option<String> {
    if all.is_empty() {
        return None;
    }
    let unit = words::length_unit(system);
    let mut before = None;
    let told = all.iter().map(|s| {
        let (from, to) = (words::length(s.from, system), words::length(s.to, system));
        // the beam once for all stretches of it that follow each other
        let beam = if before == Some(&s.beam) {
            String::new()
        } else {
            format!("{} ", s.beam)
        };
        before = Some(&s.beam);
        if from == to {
            format!("{beam}at {from}")
        } else {
            format!("{beam}{from} to {to}")
        }
    });
    Some(format!("{} {unit}", told.collect::<Vec<_>>().join(", ")))
}

/// Ranges beside lines.
pub fn offsets(all: &[FeasibleOffset], system: System) -> Option<String> {
    if all.is_empty() {
        return None;
    }
    let unit = words::size_unit(system);
    let shown = |s: Size| words::trimmed(s.si() / words::size_factor(system), 2);
    let told = all
        .iter()
        .map(|o| format!("{} {} to {}", o.beam, shown(o.from), shown(o.to)));
    Some(format!("{} {unit}", told.collect::<Vec<_>>().join(", ")))
}

/// How many places of beams ask for other bars than drawn; nothing where none does.
pub fn bars(count: usize) -> Option<String> {
    let plural = if count == 1 { "" } else { "s" };
    (count > 0).then(|| format!("Other bars at {} place{plural}.", words::count(count)))
}

/// Why something is open. What is to be sent for it is for the caller and not for this page.
pub fn open(reason: &str) -> String {
    let why = reason.split("; send `").next().unwrap_or(reason);
    format!("\u{2013} {}", why.replace('_', " "))
}

/// A number with its unit.
pub fn shown(value: &Shown, system: System) -> String {
    let (number, unit) = value.printed(system);
    let decimals = match unit {
        "lbf" | "ft_lbf" => 0,
        "kN" => 1,
        _ => 3,
    };
    let number = words::trimmed(number, decimals);
    match unit {
        "1" => number,
        unit => format!("{number} {}", unit.replace('_', " ")),
    }
}
