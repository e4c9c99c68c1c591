//! Setting out on plans from form lines: how far the faces of beams are from a string line.

use super::{answer, close, example};
use crate::examples::codes;
use crate::layout::outcome::LineSide;
use crate::layout::request::{Staking, TapeText};
use crate::quantity::Length;

#[test]
fn the_form_line_lies_where_the_outline_has_it() {
    for name in ["l-shaped-house", "bayed-front", "linnet-form-line"] {
        let mut call = example(name);
        call.request.staking = Some(Staking {
            tape: TapeText::Millimetres,
            grid: None,
            pile_top: None,
            pile_tops: None,
            string_line_offset: Some(Length::from_si(1.0)),
        });
        let answer = answer(&call).unwrap_or_else(|e| panic!("{name}: {}", codes(&e)));
        let staking = answer.result.staking.as_ref().expect("a staking");
        let mut seen = 0;
        for side in answer
            .result
            .outlines
            .iter()
            .flatten()
            .flat_map(|o| &o.sides)
        {
            let line = staking
                .string_lines
                .iter()
                .find(|l| l.beams == [side.beam.as_str()]);
            let Some(line) = line else {
                continue;
            };
            let faces = line
                .faces
                .as_ref()
                .unwrap_or_else(|| panic!("{name}: {}", side.beam));
            let beam = answer.result.beams.iter().find(|b| b.label == side.beam);
            let width = beam.and_then(|b| b.width).expect("a width");
            close((faces.left + faces.right).si(), width.si(), 1e-9);
            // the outer face is the form line: on the side of a free string line, at the inset
            let offset = line.offset.as_ref().expect("an offset");
            if offset.outside {
                let outer = match offset.side {
                    LineSide::Left => faces.left,
                    LineSide::Right => faces.right,
                };
                close(outer.si(), side.inset.si(), 1e-9);
                seen += 1;
            }
        }
        assert!(seen >= 4, "{name}: {seen}");
    }
}
