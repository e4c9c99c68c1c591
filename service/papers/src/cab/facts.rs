//! The large figures beside the scale: target and limit in both unit systems with the
//! pressures of each gear, and what they rest on.

use bearwell_engine::quantity::{Displacement, PenetrationRate, Pressure, RotationalSpeed, System};
use bearwell_engine::torque::{CabCardOutcome, CabGear, CabMark, CabTargetOf, PileSpeed};

use super::Subject;
use super::reading::{
    gear_name, other, pressure_figure, pressure_unit, step_torque, torque_figure,
};
use super::scale::eight_sided;
use crate::svg::{LINE, Rect, Style, Svg, fitted, width, wrapped};
use crate::words;

/// The figure to be read from the seat, as a part of the width of its frame.
const LARGE: f64 = 0.138;
/// Figures below it.
const MEDIUM: Style = Style::PLAIN.sized(4.6);
/// Notes.
const NOTE: Style = Style::PLAIN.sized(3.2);

/// Draws target, limit and notes from the top of the area.
pub fn draw(svg: &mut Svg, s: Subject, card: &CabCardOutcome, area: Rect) {
    let mut y = area.y + 1.0;
    y = plate(svg, s, card, &card.target, Rect { y, ..area }) + 4.0;
    if let Some(limit) = &card.shaft_limit {
        y = plate(svg, s, card, limit, Rect { y, ..area }) + 4.0;
    }
    let pitch = LINE * NOTE.size;
    let room = ((area.bottom() - y) / pitch).floor().max(0.0) as usize;
    let lines: Vec<(String, bool)> = notes(s, card)
        .into_iter()
        .flat_map(|(text, heavy)| {
            let style = Style {
                bold: heavy,
                ..NOTE
            };
            wrapped(&text, area.w, style)
                .into_iter()
                .map(move |l| (l, heavy))
        })
        .collect();
    for (i, (line, heavy)) in lines.iter().take(room).enumerate() {
        let style = Style {
            bold: *heavy,
            ..NOTE
        };
        svg.text(area.x, y + (i as f64 + 0.76) * pitch, line, style);
    }
}

/// Target or limit in its frame; returns its lower edge.
fn plate(svg: &mut Svg, s: Subject, card: &CabCardOutcome, mark: &CabMark, area: Rect) -> f64 {
    let limit = card.shaft_limit.as_ref() == Some(mark);
    let inner = area.w - 10.0;
    let gears: Vec<String> = mark
        .gears
        .iter()
        .map(|gear| {
            let name = gear_name(gear, mark.gears.len());
            let gap = if name.is_empty() { "" } else { " " };
            if !limit && gear.reached == Some(false) {
                return format!("{name}{gap}does not reach it");
            }
            let off = if limit { "cut off " } else { "" };
            let far = other(s.system);
            format!(
                "{off}{name}{gap}{} {} ({} {})",
                pressure_figure(&gear.cab, s.system),
                pressure_unit(s.system),
                pressure_figure(&gear.cab, far),
                pressure_unit(far)
            )
        })
        .collect();
    let pitch = LINE * MEDIUM.size;
    let size = LARGE * area.w;
    let height = 12.6 + size + (gears.len() + 1) as f64 * pitch;
    let frame = Rect { h: height, ..area };
    if limit {
        eight_sided(svg, frame, 5.0, "stroke=\"#000\" stroke-width=\"0.7\"");
        let within = frame.grown(-1.6);
        eight_sided(svg, within, 4.3, "stroke=\"#000\" stroke-width=\"0.4\"");
    } else {
        svg.rect(frame, "stroke=\"#000\" stroke-width=\"1.4\"");
    }
    let x = area.x + 5.0;
    let above = card
        .shaft_limit
        .as_ref()
        .is_some_and(|l| l.torque < card.target.torque);
    let head = match (limit, above) {
        (true, _) => "SHAFT LIMIT, never past it",
        (false, true) => "TARGET, above the limit",
        (false, false) => "TARGET, reach it",
    };
    let heading = Style::BOLD.sized(4.2);
    svg.text(x, area.y + 6.6, head, heading);
    let large = format!(
        "{} {}",
        torque_figure(&mark.cab, s.system),
        words::torque_unit(s.system)
    );
    let base = area.y + 7.6 + size;
    let style = Style::BOLD.sized(size);
    let fits = (inner / width(&large, style)).min(1.0);
    svg.text(x, base, &large, style.sized(size * fits));
    let far = other(s.system);
    let second = format!(
        "{} {}",
        torque_figure(&mark.cab, far),
        words::torque_unit(far)
    );
    for (i, line) in [second].into_iter().chain(gears).enumerate() {
        let wide = width(&line, MEDIUM);
        let size = (MEDIUM.size * (inner / wide).min(1.0)).max(crate::svg::SMALL);
        let style = MEDIUM.sized(size);
        let y = base + 1.6 + (i as f64 + 1.0) * pitch;
        svg.text(x, y, &fitted(&line, inner, style), style);
    }
    frame.bottom()
}

/// Gears whose working pressures do not reach the target.
fn unreached(card: &CabCardOutcome) -> impl Iterator<Item = &CabGear> {
    card.target
        .gears
        .iter()
        .filter(|g| g.reached == Some(false))
}

/// What the figures rest on, what is amiss first; with whether it is heavy.
fn notes(s: Subject, card: &CabCardOutcome) -> Vec<(String, bool)> {
    let outcome = &s.answer.result;
    let mut out = Vec::new();
    let far_above = card
        .shaft_limit
        .as_ref()
        .is_some_and(|l| l.torque < card.target.torque);
    if far_above {
        out.push((
            "The target lies above the shaft limit: do not drive.".to_owned(),
            true,
        ));
    } else if s
        .answer
        .warnings
        .iter()
        .any(|w| w.code == "cab_card_without_room")
    {
        out.push((
            "Rounded, target and limit leave no room: ask the engineer.".to_owned(),
            true,
        ));
    }
    if card.shaft_limit.is_none() {
        out.push((
            "No shaft limit was sent: ask for it before driving.".to_owned(),
            true,
        ));
    }
    for gear in unreached(card) {
        let name = match gear_name(gear, card.target.gears.len()) {
            "" => "drive head",
            name => name,
        };
        out.push((
            format!("The {name} does not reach the target at the working pressures."),
            true,
        ));
    }
    if let Some(gear) = card.target.gears.first() {
        out.push(match gear.inlet_pressure {
            Some(inlet) => {
                let back = inlet - gear.differential_pressure;
                let shown = Pressure::ROLE.unit(s.system);
                let value = words::trimmed(shown.printed(back.si()), 2);
                let text = format!(
                    "Pressures are those at the inlet, with {value} {} for return line and no load.",
                    shown.name
                );
                (text, false)
            }
            None => (
                "Pressures are differences: return line and no load are not known, and a gauge at \
                 the inlet reads more."
                    .to_owned(),
                true,
            ),
        });
    }
    let torque = format!(
        "{} {}",
        step_torque(card.target.torque, s.system),
        words::torque_unit(s.system)
    );
    let aim = match card.target_of {
        CabTargetOf::Required => "what the load needs",
        CabTargetOf::TargetTorque => "the target torque sent",
    };
    out.push((
        format!("Target: {aim}, {torque}, rounded up. Limit: the rating, rounded down."),
        false,
    ));
    if let (Some(drive), Some(outcome)) = (s.request.drive, outcome.drive) {
        let unit = Displacement::ROLE.unit(s.system);
        let volume = |v: Displacement| words::trimmed(unit.printed(v.si()), 1);
        let mut volumes = volume(outcome.displacement_per_pile_turn);
        if let Some(fast) = outcome.fast {
            volumes = format!("{volumes} and {}", volume(fast.displacement_per_pile_turn));
        }
        let unit = match s.system {
            System::Si => "cm3",
            System::UsCustomary => "in3",
        };
        out.push((
            format!(
                "Drive head: {volumes} {unit} for a turn of the pile, efficiency {}.",
                words::trimmed(drive.mechanical_efficiency_ratio, 3)
            ),
            false,
        ));
        let speeds = [outcome.speed, outcome.fast.and_then(|f| f.speed)];
        let told: Vec<String> = speeds
            .iter()
            .flatten()
            .map(|v| speed(v, s.system))
            .collect();
        if !told.is_empty() {
            out.push((
                format!("Turning {}.", told.join("; in the fast gear ")),
                false,
            ));
        }
    }
    out.push((
        "A torque alone accepts no pile: depth, advance a turn and ground count too.".to_owned(),
        false,
    ));
    out
}

/// Turns a minute and, where the pitch is known, the way down.
fn speed(speed: &PileSpeed, system: System) -> String {
    let rpm = RotationalSpeed::ROLE
        .unit(system)
        .printed(speed.rotational_speed.si());
    let turns = format!("{} rpm", words::trimmed(rpm, 1));
    let Some(rate) = speed.penetration_rate else {
        return turns;
    };
    let down = words::trimmed(PenetrationRate::ROLE.unit(system).printed(rate.si()), 2);
    match system {
        System::Si => format!("{turns}, {down} m a minute"),
        System::UsCustomary => format!("{turns}, {down} ft a minute"),
    }
}

#[cfg(test)]
mod tests {
    use bearwell_engine::quantity::{MomentUnit, Torque};

    use super::*;

    #[test]
    fn a_step_reads_in_the_units_of_the_sheet() {
        let torque = Torque::new(2777.78, MomentUnit::FtLbf);
        assert_eq!(step_torque(torque, System::UsCustomary), "2,778");
        assert_eq!(step_torque(torque, System::Si), "3.77");
    }
}
