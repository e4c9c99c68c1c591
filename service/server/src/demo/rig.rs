//! The chapter of the demo in which the rig runs: logs of single piles, judged. Nothing is
//! calculated here.

use std::io::{self, Write};

use bearwell_engine::quantity::System;
use bearwell_engine::record::InstallationRecord;

use super::Told;
use super::chapters::judged;
use super::text::{item, paragraph, section, show};

/// What the logs of the piles say.
pub fn rig(out: &mut impl Write, s: System, logs: &[Told<InstallationRecord>]) -> io::Result<()> {
    section(out, "6. The rig runs: may it stop?  (installation-record)")?;
    for told in logs {
        let result = &told.answer.result;
        let name = result.label.as_ref().map_or("pile", |l| l.as_str());
        let tip = show(result.tip_depth, s);
        let mut text = format!("Pile {name}, tip at {tip}:");
        match (&result.effective, &result.final_torque) {
            (Some(e), _) => text.push_str(&format!(" {} over the last stretch", show(e.torque, s))),
            (None, Some(last)) => text.push_str(&format!(" last reading {}", show(*last, s))),
            (None, None) => {}
        }
        if let Some(required) = &result.required {
            text.push_str(&format!(", {} needed", show(required.torque, s)));
        }
        paragraph(out, "  ", &format!("{text}."))?;
        judged(out, s, &told.answer)?;
        if let Some(first) = result.next_steps.first() {
            item(out, &format!("To do first: {}.", first.needs))?;
        }
    }
    Ok(())
}
